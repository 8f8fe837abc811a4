"""What a house loses: fuel bills, surfaces and degree-days worked out by hand and in a textbook's example."""

from calc.law import Law
from calc.physics import emitters, fuels, house
from comparisons.check import At, Check, Published

EIA_BILLS = Published(
    "By hand",
    "US Energy Information Administration: Heat contents of fuels, with a bill worked by hand",
    "2012",
    "FAQ 987",
    "own arithmetic",
)
DENVER = Published(
    "A university's course page (address not kept)",
    "Variable-base degree-days: Denver in May, a textbook's example",
    "undated",
    "57.2 °F, spread 8.7 °F, base 60 °F; the page prints Z with the wrong sign, its answer is right",
    "public body",
)
AIR_RULE = Published(
    "ASHRAE", "Handbook, Fundamentals: infiltration, 0.018 Btu/(ft³·°F)", "2009", "0.075 × 0.24", "common practice"
)
STOCK = Published(
    "By hand",
    "A house of 1,800 ft², surfaces and air added up, from the levels of the US Department of Energy's stock model",
    "2020",
    "1980s: envelope 409, air 107",
    "own arithmetic",
)
_DIGITS = "half the last printed digit"


def _check(
    topic: str, where: str, law: Law, theirs: str, within: str, because: str, place: str, **given: str | At
) -> Check:
    source = Published("By hand", "Worked out with a pocket calculator", "2025", place, "own arithmetic")
    return Check(topic, where, law, given, theirs, within, because, source)


def _rooms(delivered: str | At, tap_share: str = "0 %", other_heat: str = "0 Btu") -> At:
    return At(house.space_heat, {"heat_delivered": delivered, "tap_share": tap_share, "other_heat": other_heat})


def _bill(amount: str, content: str, efficiency: str) -> At:
    held = At(fuels.heat_in_volume, {"amount": amount, "heat_content": content})
    return _rooms(At(fuels.heat_delivered, {"heat_in_fuel": held, "efficiency": efficiency}))


def _surface(area: str, resistance: str) -> At:
    return At(house.surface_conductance, {"area": area, "resistance": resistance})


CHECKS = [
    *(
        Check(
            "Loss for each degree from a fuel bill",
            where,
            house.conductance_from_fuel,
            {"space_heat": heat, "degree_days": degree_days},
            theirs,
            "0.01 %",
            _DIGITS,
            EIA_BILLS,
        )
        for where, heat, degree_days, theirs in (
            (
                "800 gal of oil at 138,690 Btu, 82 %, 7,000 degree-days",
                _bill("800 gal", "138690 Btu/gal", "82 %"),
                "7000 °F·day",
                "541.55 Btu/(h·°F)",
            ),
            (
                "640 gal of oil at 138,500 Btu (60 of 700 made tap water), 80 %, 6,800 degree-days",
                _bill("640 gal", "138500 Btu/gal", "80 %"),
                "6800 °F·day",
                "434.51 Btu/(h·°F)",
            ),
            (
                "900 gal of propane at 91,452 Btu, 85 %, 7,200 degree-days",
                _bill("900 gal", "91452 Btu/gal", "85 %"),
                "7200 °F·day",
                "404.87 Btu/(h·°F)",
            ),
            ("14,000 kWh, 6,000 degree-days", _rooms("14000 kWh"), "6000 °F·day", "331.74 Btu/(h·°F)"),
            (
                "6 cords of 20 million Btu, 60 %, 7,500 degree-days",
                _bill("6 cord", "20 MMBtu/cord", "60 %"),
                "7500 °F·day",
                "400.00 Btu/(h·°F)",
            ),
        )
    ),
    _check(
        "Heat of a year that warmed the rooms",
        "100 million Btu, 20 % to the taps, 10 million from a wood stove",
        house.space_heat,
        "90 MMBtu",
        "0.001 %",
        _DIGITS,
        "100 × 0.8 + 10",
        heat_delivered="100 MMBtu",
        tap_share="20 %",
        other_heat="10 MMBtu",
    ),
    *(
        _check(
            "Loss through one surface",
            f"{area}, R-{resistance}",
            house.surface_conductance,
            theirs,
            "0.01 %",
            _DIGITS,
            "area / R",
            area=area,
            resistance=f"{resistance} ft²·°F·h/Btu",
        )
        for area, resistance, theirs in (
            ("1200 ft²", "19", "63.158 Btu/(h·°F)"),
            ("180 ft²", "3", "60.00 Btu/(h·°F)"),
        )
    ),
    _check(
        "Loss through all surfaces",
        "walls 1200 ft² R-19, windows 180 R-3, doors 40 R-5, ceiling 1000 R-38, floor 1000 R-20",
        house.envelope_conductance,
        "207.474 Btu/(h·°F)",
        "0.001 %",
        _DIGITS,
        "63.158 + 60 + 8 + 26.316 + 50",
        walls=_surface("1200 ft²", "19 ft²·°F·h/Btu"),
        windows=_surface("180 ft²", "3 ft²·°F·h/Btu"),
        doors=_surface("40 ft²", "5 ft²·°F·h/Btu"),
        ceiling=_surface("1000 ft²", "38 ft²·°F·h/Btu"),
        floor=_surface("1000 ft²", "20 ft²·°F·h/Btu"),
    ),
    *(
        Check(
            "Heat taken by air change",
            where,
            house.air_change_conductance,
            {"house_volume": volume, "air_changes": "0.5 /h", "site_pressure": pressure, "indoor": "70 °F"},
            theirs,
            "0.3 %",
            "0.018 is rounded; the exact figure at 70 °F is 0.01799",
            AIR_RULE,
        )
        for where, volume, pressure, theirs in (
            ("16,000 ft³, half a change an hour", "16000 ft³", "14.696 psia", "144.0 Btu/(h·°F)"),
            ("8,000 ft³, half a change an hour", "8000 ft³", "14.696 psia", "72.0 Btu/(h·°F)"),
            ("8,000 ft³ at 5,000 ft: 0.0150", "8000 ft³", "12.228 psia", "59.92 Btu/(h·°F)"),
        )
    ),
    _check(
        "Loss of the whole house",
        "surfaces 207.474, air 72",
        house.house_conductance,
        "279.474 Btu/(h·°F)",
        "0.001 %",
        _DIGITS,
        "207.474 + 72",
        envelope="207.474 Btu/(h·°F)",
        air_change="72 Btu/(h·°F)",
    ),
    Check(
        "Loss by kind of house",
        "1,800 ft² of the 1980s, 0.287 Btu/(h·ft²·°F)",
        house.conductance_by_class,
        {"heated_area": "1800 ft²", "loss_per_area": "0.287 Btu/(h·ft²·°F)"},
        "516 Btu/(h·°F)",
        "0.2 %",
        "the loss for each area is printed to three digits",
        STOCK,
    ),
    *(
        _check(
            "Loss on the coldest day",
            f"{conductance} Btu/(h·°F), 70 °F inside, {outdoor} °F outside",
            house.design_load,
            theirs,
            "0.003 %",
            _DIGITS,
            f"{conductance} × (70 - {outdoor})",
            conductance=f"{conductance} Btu/(h·°F)",
            indoor="70 °F",
            design_outdoor=f"{outdoor} °F",
        )
        for conductance, outdoor, theirs in (
            ("500", "-5", "37500 Btu/h"),
            ("279.474", "0", "19563 Btu/h"),
            ("279.474", "-10", "22358 Btu/h"),
            ("434.51", "0", "30416 Btu/h"),
        )
    ),
    *(
        _check(
            "Loss on any day",
            f"500 Btu/(h·°F), 70 °F inside, {outdoor} °F outside",
            house.load_at,
            theirs,
            "0.001 %",
            _DIGITS,
            place,
            conductance="500 Btu/(h·°F)",
            indoor="70 °F",
            outdoor=f"{outdoor} °F",
        )
        for outdoor, theirs, place in (("30", "20000 Btu/h", "500 × 40"), ("80", "0 Btu/h", "warmer outside than in"))
    ),
    _check(
        "Loss for each degree from the coldest day's",
        "40,616 Btu/h at 75 °F of difference",
        house.conductance_from_load,
        "541.55 Btu/(h·°F)",
        "0.001 %",
        _DIGITS,
        "40,616 / (70 + 5)",
        design_load="40616 Btu/h",
        indoor="70 °F",
        design_outdoor="-5 °F",
    ),
    _check(
        "Heat of a year",
        "541.55 Btu/(h·°F), 7,000 degree-days",
        house.yearly_heat,
        "90.98 MMBtu",
        "0.01 %",
        _DIGITS,
        "541.55 × 7,000 × 24; the oil held 800 × 138,690 × 0.82 = 90.98 million",
        conductance="541.55 Btu/(h·°F)",
        degree_days="7000 °F·day",
    ),
    _check(
        "Gains that a base temperature stands for",
        "500 Btu/(h·°F), 68 °F inside, base 60 °F",
        house.internal_gains,
        "4000 Btu/h",
        "0.001 %",
        _DIGITS,
        "500 × 8",
        conductance="500 Btu/(h·°F)",
        indoor="68 °F",
        base_temperature="60 °F",
    ),
    _check(
        "Mean load of the heating season",
        "90.98 million Btu over 220 days",
        house.average_load,
        "17231 Btu/h",
        "0.003 %",
        _DIGITS,
        "90,980,000 / (220 × 24)",
        yearly_heat="90.98 MMBtu",
        heating_season="220 days",
    ),
    _check(
        "All that the fire makes up",
        "rooms 15,000, taps 2,000, store in a shed 500 Btu/h",
        house.whole_load,
        "17500 Btu/h",
        "0.001 %",
        _DIGITS,
        "15,000 + 2,000 + 500",
        space_load="15000 Btu/h",
        tap_load="2000 Btu/h",
        outside_loss="500 Btu/h",
    ),
    _check(
        "Two kinds of emitter in one house",
        "a quarter of 32,500 Btu/h",
        emitters.own_load,
        "8125 Btu/h",
        "0.001 %",
        _DIGITS,
        "32,500 / 4",
        design_load="32500 Btu/h",
        share="25 %",
    ),
    _check(
        "Two kinds of emitter in one house",
        "a floor for 8,125 of 32,500 Btu/h that takes 9,000 from its water",
        emitters.heat_with_rest,
        "33375 Btu/h",
        "0.001 %",
        _DIGITS,
        "32,500 - 8,125 + 9,000",
        design_load="32500 Btu/h",
        own_load="8125 Btu/h",
        own_heat="9000 Btu/h",
    ),
    Check(
        "Degree-days from a monthly mean",
        "Denver, May, base 60 °F",
        house.month_degree_days,
        {"mean": "57.2 °F", "base": "60 °F", "spread": "8.7 F°", "days": "31"},
        "156.5 °F·day",
        "0.1 °F·day",
        "printed to a tenth",
        DENVER,
    ),
]
