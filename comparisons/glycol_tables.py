"""Printed tables about glycol: freezing and burst points by volume, and how much makes a mixture by weight."""

from calc.law import Law
from calc.physics import antifreeze
from comparisons.check import At, Check, Published

LINE = Published(
    "By hand", "A straight line between two printed rows", "2026", "Math for HVACR, exercise 5-4", "own arithmetic"
)
TEXTBOOK = Published(
    "Goodheart-Willcox", "Math for HVACR", "2018", "exercise 5-4, table of freezing and burst points", "textbook"
)
GLOSSARY = Published(
    "A trade glossary after ASHRAE Fundamentals 1993",
    "Volume of glycol for a mixture by weight",
    "1993",
    "formula V/(1 + SG(100 - P)/P), worked for 30 %",
    "trade",
)


def _burst(name: str, law: Law, rows: tuple[tuple[int, int], ...]) -> list[Check]:
    return [
        Check(
            topic="Burst point",
            where=f"{name}, {percent} % by volume",
            law=law,
            given={"volume_fraction": f"{percent} %"},
            theirs=f"{fahrenheit} °F",
            within="0.1 F°",
            because="the same printed table, whose shares are whole percents",
            source=TEXTBOOK,
        )
        for percent, fahrenheit in rows
    ]


# The row for -40 °F is printed with two columns swapped (54, 35, 31, 55). Where one share stands for several
# temperatures, the warmest of them is ours: the careful reading.
CHECKS: list[Check] = [
    *_burst(
        "propylene glycol",
        antifreeze.propylene_burst_point,
        ((12, 20), (20, 10), (24, 0), (28, -10), (31, -20), (33, -30), (35, -40), (50, -40)),
    ),
    *_burst(
        "ethylene glycol",
        antifreeze.ethylene_burst_point,
        ((12, 20), (18, 10), (23, 0), (27, -10), (30, -20), (31, -30), (40, -30)),
    ),
    Check(
        topic="Burst point",
        where="propylene glycol, 26 % by volume: half way between 24 % (0 °F) and 28 % (-10 °F)",
        law=antifreeze.propylene_burst_point,
        given={"volume_fraction": "26 %"},
        theirs="-5 °F",
        within="0.1 F°",
        because="a straight line between two printed rows, by hand",
        source=LINE,
    ),
    Check(
        topic="Burst point",
        where="ethylene glycol, 6 % by volume: half way between pure water (32 °F) and 12 % (20 °F)",
        law=antifreeze.ethylene_burst_point,
        given={"volume_fraction": "6 %"},
        theirs="26 °F",
        within="0.1 F°",
        because="a straight line between two printed rows, by hand",
        source=LINE,
    ),
    Check(
        topic="Share by mass from share by volume",
        where="277.6 gal of ethylene glycol in 1,000 gal make 30 % by weight",
        law=antifreeze.ethylene_mass_fraction,
        given={"volume_fraction": "27.76 %"},
        theirs="30 %",
        within="0.5 %",
        because="the glossary takes a specific gravity of 1.1155 against water at 60 °F, we take both at 20 °C",
        source=GLOSSARY,
    ),
    Check(
        topic="Share by mass from share by volume",
        where="propylene glycol, 1/(1 + 1.038 × 70/30) = 29.22 % by volume makes 30 % by weight",
        law=antifreeze.propylene_mass_fraction,
        given={"volume_fraction": "29.22 %"},
        theirs="30 %",
        within="0.5 %",
        because="the glossary's specific gravity of 1.038 against our 1036 and 998.2 kg/m³",
        source=GLOSSARY,
    ),
]

# The same table's freezing points, by volume. Contested: its ethylene glycol freezes up to 10 °F warmer than the pure
# mixture of the reference: what is sold holds inhibitors and water. The worksheet says so and asks for a margin.
for _law, _mass, _within, _rows in (
    (
        antifreeze.propylene_freezing_point,
        antifreeze.propylene_mass_fraction,
        "4 F°",
        ((18, 20), (29, 10), (36, 0), (42, -10), (46, -20), (50, -30)),
    ),
    (
        antifreeze.ethylene_freezing_point,
        antifreeze.ethylene_mass_fraction,
        "12 F°",
        ((17, 20), (26, 10), (35, 0), (41, -10), (46, -20), (50, -30)),
    ),
):
    CHECKS += [
        Check(
            topic="Freezing point by volume",
            where=f"{_percent} % by volume",
            law=_law,
            given={"mass_fraction": At(_mass, {"volume_fraction": f"{_percent} %"})},
            theirs=f"{_fahrenheit} °F",
            within=_within,
            because="printed sets for half ethylene glycol run from -30 °F (this one, inhibited) to -39 °F; whole percents add 2 °F",
            source=TEXTBOOK,
        )
        for _percent, _fahrenheit in _rows
    ]
