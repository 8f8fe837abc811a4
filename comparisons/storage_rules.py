"""Published sizes of stores: the German ordinance, the European regulation, EN 303-5, and the custom of the trade."""

from calc.law import Law
from calc.physics import store
from comparisons.check import Check, Published

GERMANY = Published(
    "German Federal Government",
    "1. BImSchV, BGBl. I p. 38",
    "2010",
    "section 5(4); an older consolidated text was read",
    "standard",
)
SOLOTHURN = Published(
    "Canton of Solothurn",
    "Guidance page on wood heating, storage for stoves stoked by hand",
    "2010s",
    "55 L/kW",
    "public body",
)
EUROPE = Published(
    "European Commission", "Regulation (EU) 2015/1189, OJ L 193 p. 100", "2015", "Annex II, note 1", "standard"
)
EUROPE_AUTOMATIC = Published(
    "European Commission", "Regulation (EU) 2015/1189, OJ L 193 p. 100", "2015", "Annex II, note 2", "standard"
)
EN_303_5 = Published(
    "CEN",
    "EN 303-5, as quoted with a worked example in an appliance handbook",
    "2012",
    "formula for the storage volume",
    "trade",
)
CUSTOM = Published(
    "Common practice",
    "500 US gallons for each 1,000 square feet of house",
    "undated",
    "no publication",
    "common practice",
)

_EXACT = "a rule of arithmetic; nothing but the printed digits may differ"


def _rule(
    law: Law, source: Published, rows: tuple[tuple[str, str], ...], argument: str = "rated_output"
) -> list[Check]:
    return [
        Check("Size of a store", given, law, {argument: given}, theirs, "0.01 %", _EXACT, source)
        for given, theirs in rows
    ]


CHECKS = [
    *_rule(store.volume_by_firebox, GERMANY, (("150 L", "1800 L"), ("80 L", "960 L")), "firebox_volume"),
    *_rule(store.volume_by_rating, GERMANY, (("25 kW", "1375 L"), ("30 kW", "1650 L"), ("20 kW", "1100 L"))),
    *_rule(store.volume_by_rating, SOLOTHURN, (("30 kW", "1650 L"),)),
    # Switzerland asks for 25 L/kW of automatic stoves where Germany asks for 20: the law is the German one.
    *_rule(store.volume_by_rating_automatic, GERMANY, (("25 kW", "500 L"), ("30 kW", "600 L"))),
    *(
        Check(
            "Size of a store",
            where,
            store.volume_by_german_law,
            {"by_firebox": by_firebox, "by_rating": by_rating},
            theirs,
            "0.01 %",
            _EXACT,
            GERMANY,
        )
        for where, by_firebox, by_rating, theirs in (
            ("fuel chamber of 150 L, 25 kW", "1800 L", "1375 L", "1800 L"),
            ("fuel chamber of 80 L, 30 kW", "960 L", "1650 L", "1650 L"),
        )
    ),
    *_rule(
        store.volume_by_eu_formula,
        EUROPE,
        (
            ("6 kW", "300 L"),
            ("8 kW", "300 L"),
            ("10 kW", "328.5 L"),
            ("12 kW", "418.5 L"),
            ("15 kW", "553.5 L"),
            ("20 kW", "778.5 L"),
            ("25 kW", "1003.5 L"),
            ("40 kW", "1678.5 L"),
        ),
    ),
    # Annex II, note 2: 20 · Pr for boilers stoked automatically.
    *_rule(
        store.volume_by_eu_formula_automatic,
        EUROPE_AUTOMATIC,
        (("15 kW", "300 L"), ("17 kW", "340 L"), ("40 kW", "800 L")),
    ),
    *(
        Check(
            "Size of a store",
            f"{hours} h, {rated} kW, house {house} kW, lowest output {lowest} kW",
            store.volume_by_en_303_5,
            {
                "burn_time": f"{hours} h",
                "rated_output": f"{rated} kW",
                "house_load": f"{house} kW",
                "lowest_output": f"{lowest} kW",
            },
            theirs,
            "0.01 %",
            _EXACT,
            EN_303_5,
        )
        # The first is the handbook's own example ("about 735 L"), the others its formula worked out by hand.
        for hours, rated, house, lowest, theirs in (
            (2, 32, 25, 32, "735 L"),
            (4, 30, 12, 15, "1368 L"),
            (3, 25, 8, 12.5, "909 L"),
            (5, 40, 15, 20, "2325 L"),
        )
    ),
    *_rule(
        store.volume_by_house_area,
        CUSTOM,
        (("1000 ft²", "500 gal"), ("1500 ft²", "750 gal")),
        "heated_area",
    ),
]
