"""Fill water: printed guide values, a boiler maker's worked example, and sums on paper."""

from calc.physics import fill_water
from comparisons.check import Check, Published

MANUAL_2005 = Published(
    "VDI, as printed in manuals of three boiler makers",
    "Guide values for fill and make-up water",
    "2005",
    "column up to 20 L/kW, unchanged in the edition of 2021",
    "trade",
)
EDITION_2021 = Published("VDI", "VDI 2035 Part 1", "2021", "table of guide values, from memory", "from memory")
MIXING = Published(
    "A boiler maker's manual",
    "Information on water treatment",
    "2018",
    "example: 20 kW, 800 L, 18 °dH; mixed with desalinated water of 0.1 °dH",
    "trade",
)
WATER_TRADE = Published(
    "Water treatment trade, Germany",
    "Scale and the round of water",
    "2026",
    "20 °dH: 356 g in each cubic meter",
    "trade",
)
PLATES = Published(
    "Makers of plate exchangers",
    "Resistance of plates",
    "2018",
    "chloride content against highest temperature",
    "trade",
)
AUSTRIAN = Published(
    "A boiler maker's manual", "Water hardness by ÖNORM H 5195-1", "2016", "example: 45 kW, 1,500 L", "trade"
)
HAND = Published("By hand", "Sums on paper", "2026", "water times what it holds", "own arithmetic")
_TOPIC = "fill water"


def _limit(where: str, output: str, volume: str, theirs: str, source: Published) -> Check:
    return Check(
        _TOPIC,
        where,
        fill_water.hardness_limit,
        {"water_output": output, "specific_volume": volume},
        theirs,
        "0.01 %",
        "the same number of the same table",
        source,
    )


def _chloride(law: str, hottest: str, theirs: str) -> Check:
    return Check(
        _TOPIC,
        f"stainless steel {law[-3:]} at {hottest}",
        getattr(fill_water, law),
        {"hottest": hottest},
        theirs,
        "0.01 mg/L",
        "the same number of the same table",
        PLATES,
    )


CHECKS = [
    Check(
        _TOPIC,
        "1,000 L of 20 °dH",
        fill_water.scale,
        {"hardness": "20 °dH", "water": "1000 L"},
        "356 g",
        "0.4 %",
        "they count 1.78 g for each degree in 100 L, which is rounded",
        WATER_TRADE,
    ),
    # 2 mmol/L × 500 L = 1 mol of calcium carbonate, 100.09 g
    Check(
        _TOPIC,
        "500 L of 2 mmol/L",
        fill_water.scale,
        {"hardness": "2 mmol/L", "water": "500 L"},
        "100.0869 g",
        "0.001 %",
        "one mole of calcium carbonate, exact on paper",
        HAND,
    ),
    Check(
        _TOPIC,
        "20 L a year for ten years",
        fill_water.make_up_of_years,
        {"make_up": "20 L", "years": "10"},
        "200 L",
        "0.001 %",
        "a product of round numbers",
        HAND,
    ),
    # 1,000 L × 10 mg/L = 10 g of oxygen; × 167.535 ÷ 63.996 = 26.18 g of iron
    Check(
        _TOPIC,
        "1,000 L with 10 mg/L of oxygen",
        fill_water.iron_rusted,
        {"water": "1000 L", "oxygen": "10 mg/L", "iron_for_oxygen": "2.618"},
        "26.18 g",
        "0.01 %",
        "molar masses to five figures",
        HAND,
    ),
    Check(
        _TOPIC,
        "1,500 L for 45 kW",
        fill_water.specific_volume,
        {"system_volume": "1500 L", "water_output": "45 kW"},
        "33.3 L/kW",
        "0.2 %",
        "they print three figures",
        AUSTRIAN,
    ),
    _limit("up to 200 kW, up to 20 L/kW", "120 kW", "15 L/kW", "2 mmol/L", MANUAL_2005),
    _limit("up to 600 kW, up to 20 L/kW", "400 kW", "20 L/kW", "1.5 mmol/L", MANUAL_2005),
    _limit("up to 50 kW, 20 to 40 L/kW", "18 kW", "40 L/kW", "3 mmol/L", EDITION_2021),
    _limit("up to 50 kW, over 40 L/kW", "18 kW", "180 L/kW", "0.05 mmol/L", EDITION_2021),
    _limit("up to 200 kW, 20 to 40 L/kW", "120 kW", "30 L/kW", "1 mmol/L", EDITION_2021),
    _limit("over 600 kW", "700 kW", "10 L/kW", "0.05 mmol/L", EDITION_2021),
    Check(
        _TOPIC,
        "an electric element, up to 50 kW, up to 20 L/kW",
        fill_water.hardness_limit_with_element,
        {"water_output": "18 kW", "specific_volume": "15 L/kW"},
        "3 mmol/L",
        "0.01 %",
        "the same number of the same table",
        MANUAL_2005,
    ),
    Check(
        _TOPIC,
        "an electric element, up to 50 kW, 20 to 40 L/kW",
        fill_water.hardness_limit_with_element,
        {"water_output": "18 kW", "specific_volume": "30 L/kW"},
        "1.5 mmol/L",
        "0.01 %",
        "the same number of the same table",
        EDITION_2021,
    ),
    *(
        Check(
            _TOPIC,
            f"Austrian standard, {output} and {volume}",
            fill_water.hardness_limit_austrian,
            {"water_output": output, "specific_volume": volume},
            theirs,
            "0.01 %",
            "the same number of the same table",
            AUSTRIAN,
        )
        for output, volume, theirs in (
            ("45 kW", "33.3 L/kW", "11.2 °dH"),
            ("45 kW", "19.9 L/kW", "16.8 °dH"),
            ("45 kW", "50 L/kW", "5.6 °dH"),
            ("120 kW", "50 L/kW", "2.8 °dH"),
            ("400 kW", "10 L/kW", "5.6 °dH"),
            ("700 kW", "20 L/kW", "0.6 °dH"),
        )
    ),
    _chloride("chloride_limit_304", "60 °C", "50 mg/L"),
    _chloride("chloride_limit_304", "80 °C", "25 mg/L"),
    _chloride("chloride_limit_304", "81 °C", "10 mg/L"),
    _chloride("chloride_limit_316", "60 °C", "300 mg/L"),
    _chloride("chloride_limit_316", "80 °C", "150 mg/L"),
    _chloride("chloride_limit_316", "120 °C", "80 mg/L"),
    Check(
        _TOPIC,
        "18 °dH where 11.2 °dH is allowed",
        fill_water.treated_share,
        {"hardness": "18 °dH", "hardness_limit": "11.2 °dH", "softened": "0.1 °dH"},
        "38 %",
        "0.5 %",
        "they round to whole percents",
        MIXING,
    ),
    Check(
        _TOPIC,
        "water softer than allowed",
        fill_water.treated_share,
        {"hardness": "0.1 °dH", "hardness_limit": "0.28 °dH", "softened": "0.1 °dH"},
        "0 %",
        "0.001 %",
        "nothing at all has to be treated",
        HAND,
    ),
    Check(
        _TOPIC,
        "38 % of 800 L",
        fill_water.treated_water,
        {"system_volume": "800 L", "share": "38 %"},
        "304 L",
        "0.001 %",
        "a product of round numbers",
        MIXING,
    ),
    Check(
        _TOPIC,
        "1,000 L at 1 L in 100 L",
        fill_water.inhibitor,
        {"water": "1000 L", "dose": "1 L/100 L"},
        "10 L",
        "0.001 %",
        "a product of round numbers",
        HAND,
    ),
]
