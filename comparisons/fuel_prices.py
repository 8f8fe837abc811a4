"""Fuels against the EIA, the Forest Products Laboratory and prices worked by hand.

The laboratory's net values already hold an efficiency (83 % for oil, 77 % for a cord). They check heat content times
efficiency here; nobody may multiply them by an efficiency again.
"""

from calc.law import Law
from calc.physics import fuels
from comparisons.check import At, Check, Published

EIA = Published(
    "US Energy Information Administration",
    "Energy units and calculators explained; FAQ 987",
    "2023",
    "approximate heat contents: oil 138,690 (2012), propane 91,452, cord 20 million Btu",
    "public body",
)
FPL = Published(
    "USDA Forest Service, Forest Products Laboratory",
    "Fuel Value Calculator",
    "2004",
    "net heat: oil 115,000 Btu/gal, pellets 13.6 and cord 15.3 million Btu, electricity 3,340 Btu/kWh",
    "public body",
)
HAND = Published(
    "By hand", "Price over heat content and efficiency, by hand", "2025", "see the given values", "own arithmetic"
)

_TOPIC = "Fuels and prices"
_ROUNDED = "the last printed digit is rounded"


def _hand(law: Law, given: dict[str, str | At], theirs: str, where: str) -> Check:
    return Check(_TOPIC, where, law, given, theirs, "0.03 %", _ROUNDED, HAND)


_BY_VOLUME = (
    ("oil", "3.80 $/gal", "138690 Btu/gal", "85 %", "32.234 $/MMBtu"),
    ("oil", "4.00 $/gal", "138500 Btu/gal", "83 %", "34.797 $/MMBtu"),
    ("propane", "2.80 $/gal", "91452 Btu/gal", "90 %", "34.019 $/MMBtu"),
    ("firewood", "300 $/cord", "20 MMBtu/cord", "70 %", "21.429 $/MMBtu"),
    ("firewood", "300 $/cord", "24 MMBtu/cord", "75 %", "16.667 $/MMBtu"),
)
_BY_MASS = (
    ("pellets", "350 $/ton", "16.4 MMBtu/ton", "80 %", "26.677 $/MMBtu"),
    ("pellets", "320 $/ton", "16.5 MMBtu/ton", "80 %", "24.242 $/MMBtu"),
)
_BY_ENERGY = (
    ("resistance heat", "0.16 $/kWh", "100 %", "46.893 $/MMBtu"),
    ("heat pump", "0.20 $/kWh", "260 %", "22.544 $/MMBtu"),
    ("gas", "1.40 $/therm", "85 %", "16.471 $/MMBtu"),
)

CHECKS = [
    # 800 gal × 138,690 Btu
    Check(
        _TOPIC,
        "800 gal of oil",
        fuels.heat_in_volume,
        {"amount": "800 gal", "heat_content": "138690 Btu/gal"},
        "110.952 MMBtu",
        "0.001 %",
        "a product of two printed numbers",
        EIA,
    ),
    Check(
        _TOPIC,
        "6 cords",
        fuels.heat_in_volume,
        {"amount": "6 cord", "heat_content": "20 MMBtu/cord"},
        "120 MMBtu",
        "0.001 %",
        "a product of two printed numbers",
        EIA,
    ),
    # 3 tons × 16.4 million
    _hand(fuels.heat_in_mass, {"amount": "3 ton", "heat_content": "16.4 MMBtu/ton"}, "49.2 MMBtu", "3 tons of pellets"),
    Check(
        _TOPIC,
        "a gallon of oil at 83 %",
        fuels.heat_delivered,
        {
            "heat_in_fuel": At(fuels.heat_in_volume, {"amount": "1 gal", "heat_content": "138500 Btu/gal"}),
            "efficiency": "83 %",
        },
        "115000 Btu",
        "0.1 %",
        "their net value is rounded",
        FPL,
    ),
    # 76.5 million Btu at 15.3 net a cord
    Check(
        _TOPIC,
        "cords for 76.5 million Btu at 76.5 %",
        fuels.volume_needed,
        {"heat": "76.5 MMBtu", "heat_content": "20 MMBtu/cord", "efficiency": "76.5 %"},
        "5 cord",
        "0.01 %",
        "five cords of their net 15.3 million Btu",
        FPL,
    ),
    Check(
        _TOPIC,
        "efficiency of five cords that give 76.5 million Btu",
        fuels.efficiency_of_volume,
        {"heat": "76.5 MMBtu", "volume": "5 cord", "heat_content": "20 MMBtu/cord"},
        "76.5 %",
        "0.01 %",
        "five cords of their net 15.3 million Btu",
        FPL,
    ),
    # 68 million Btu at 13.6 net a ton
    Check(
        _TOPIC,
        "pellets for 68 million Btu at 83 %",
        fuels.mass_needed,
        {"heat": "68 MMBtu", "heat_content": "16.4 MMBtu/ton", "efficiency": "83 %"},
        "5 ton",
        "0.2 %",
        "five tons of their net 13.6 million Btu, rounded",
        FPL,
    ),
    Check(
        _TOPIC,
        "electricity for 3,340 Btu at 98 %",
        fuels.energy_needed,
        {"heat": "3340 Btu", "efficiency": "98 %"},
        "1 kWh",
        "0.2 %",
        "their net value is rounded",
        FPL,
    ),
    *(
        _hand(
            fuels.delivered_price_by_volume,
            {"price": price, "heat_content": content, "efficiency": efficiency},
            theirs,
            f"{name} at {price}, {content}, {efficiency}",
        )
        for name, price, content, efficiency, theirs in _BY_VOLUME
    ),
    *(
        _hand(
            fuels.delivered_price_by_mass,
            {"price": price, "heat_content": content, "efficiency": efficiency},
            theirs,
            f"{name} at {price}, {content}, {efficiency}",
        )
        for name, price, content, efficiency, theirs in _BY_MASS
    ),
    *(
        _hand(
            fuels.delivered_price_by_energy,
            {"price": price, "efficiency": efficiency},
            theirs,
            f"{name} at {price}, {efficiency}",
        )
        for name, price, efficiency, theirs in _BY_ENERGY
    ),
    # 60 h × $20 ÷ 75 million Btu
    _hand(
        fuels.labour_price,
        {"pay": "20 $/h", "time_each_year": "60 h", "heat_each_year": "75 MMBtu"},
        "16 $/MMBtu",
        "60 hours at $20 for 75 million Btu",
    ),
    # (34.80 − 16.00) × 20 × 0.65
    _hand(
        fuels.break_even_price,
        {"other_price": "34.80 $/MMBtu", "labour": "16 $/MMBtu", "heat_content": "20 MMBtu/cord", "efficiency": "65 %"},
        "244.4 $/cord",
        "firewood against oil at $34.80",
    ),
    # 75 × 25
    _hand(fuels.cost_of_heat, {"heat": "75 MMBtu", "delivered_price": "25 $/MMBtu"}, "1875 $", "75 million Btu at $25"),
    _hand(fuels.bill_by_volume, {"amount": "800 gal", "price": "3.80 $/gal"}, "3040 $", "800 gallons at $3.80"),
    _hand(fuels.bill_by_mass, {"amount": "3 ton", "price": "320 $/ton"}, "960 $", "3 tons at $320"),
    _hand(fuels.bill_by_energy, {"amount": "900 therm", "price": "1.40 $/therm"}, "1260 $", "900 therms at $1.40"),
    _hand(
        fuels.price_with_labour,
        {"delivered_price": "21.43 $/MMBtu", "labour": "16 $/MMBtu"},
        "37.43 $/MMBtu",
        "wood at $21.43 and the hours",
    ),
    _hand(
        fuels.saving_each_year,
        {"cost_now": "2600 $", "cost_of_wood": "1100 $"},
        "1500 $",
        "$1,100 of wood in place of $2,600 of oil",
    ),
    # 12,000 ÷ 1,500
    _hand(
        fuels.years_to_repay,
        {"installed_cost": "12000 $", "saving_each_year": "1500 $"},
        "8",
        "$12,000 against $1,500 a year",
    ),
]
