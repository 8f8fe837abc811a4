"""Ducts: exponential cooling along the way, surfaces, walls, leaks, and the way back from rooms to coil.

Both sets of numbers use the same law and agree; one states the loss by U, the other by U and by R without air films.
The films counted here (0.04 m²·K/W inside, 0.13 outside, ISO 6946, from memory) make a bare duct finite and one of R-6
a seventh better; the law of cooling is checked with their U.
"""

from calc.physics import air
from comparisons.check import At, Check, Published

COOLING = Published(
    "By hand",
    "Temperature along a duct, Ta + (T0 − Ta)·exp(−U·P·L/C), with 1.08 × cfm",
    "2026",
    "by hand",
    "own arithmetic",
)
FILMS = Published("ISO", "ISO 6946, Building components", "2017", "surface resistances, from memory", "from memory")
LEDGER = Published("By hand", "Written-out arithmetic", "2026", "this file", "own arithmetic")

TOPIC = "Coils and ducts"

CHECKS = []
# Air in and surroundings °F, U Btu/h·ft²·°F, surface ft², capacity Btu/h·°F, air at the end °F.
for _start, _around, _u, _surface, _capacity, _end in (
    (120, 40, 0.17, 200, 648, 115.911),
    (130, 50, 0.125, 200, 864, 127.718),
    (110, 20, 0.25, 90, 432, 105.432),
    (120, 50, 0.25, 130.900, 432, 114.89),
    (120, 50, 1 / 6, 130.900, 432, 116.55),
):
    _kept = At(
        air.kept_share,
        {
            "duct_u_value": f"{_u:.9f} Btu/(h·ft²·°F)",
            "duct_surface": f"{_surface} ft²",
            "air_capacity": f"{_capacity} Btu/(h·°F)",
        },
    )
    _where = f"{_start} °F air, {_surface} ft² at U {_u:.3g} in {_around} °F"
    CHECKS += [
        Check(
            TOPIC,
            _where,
            air.delivered_air,
            {"duct_surroundings": f"{_around} °F", "air_out": f"{_start} °F", "kept_share": _kept},
            f"{_end} °F",
            "0.006 F°",
            "their last digit is rounded",
            COOLING,
        ),
        Check(
            TOPIC,
            f"{_where}, from the register back to the coil",
            air.needed_air_out,
            {"duct_surroundings": f"{_around} °F", "delivered_air": f"{_end} °F", "kept_share": _kept},
            f"{_start} °F",
            "0.006 F°",
            "their last digit is rounded",
            COOLING,
        ),
    ]

CHECKS += [
    # (115.911 − 40)/(120 − 40) = 0.94889
    Check(
        TOPIC,
        "U 0.17, 200 ft², 600 cfm",
        air.kept_share,
        {"duct_u_value": "0.17 Btu/(h·ft²·°F)", "duct_surface": "200 ft²", "air_capacity": "648 Btu/(h·°F)"},
        "94.889 %",
        "0.002 %",
        "their temperatures have six digits",
        COOLING,
    ),
    Check(
        TOPIC,
        "10 in round, 50 ft",
        air.round_duct_surface,
        {"diameter": "10 in", "length": "50 ft"},
        "130.900 ft²",
        "0.001 %",
        "they print six digits",
        COOLING,
    ),
    Check(
        TOPIC,
        "15 by 9 in, a perimeter of 4 ft, 50 ft long",
        air.rectangular_duct_surface,
        {"width": "15 in", "height": "9 in", "length": "50 ft"},
        "200 ft²",
        "0.001 %",
        "the product is exact",
        COOLING,
    ),
    # 1/(1 + 0.04 + 0.13) = 0.854701
    Check(
        TOPIC,
        "insulation of 1 m²·K/W between two films",
        air.duct_u_value,
        {"insulation": "1 m²·K/W"},
        "0.854701 W/(m²·K)",
        "0.001 %",
        "they print six digits",
        FILMS,
    ),
    # 1/0.17 = 5.88235
    Check(
        TOPIC,
        "bare metal",
        air.duct_u_value,
        {"insulation": "0 m²·K/W"},
        "5.88235 W/(m²·K)",
        "0.001 %",
        "they print six digits",
        FILMS,
    ),
    # 648 · 0.9 · (115.911 − 70) = 26,775
    Check(
        TOPIC,
        "600 cfm at 115.911 °F into rooms at 70 °F, a tenth leaked",
        air.delivered_heat,
        {"air_capacity": "648 Btu/(h·°F)", "leakage": "10 %", "delivered_air": "115.911 °F", "indoor": "70 °F"},
        "26775 Btu/h",
        "0.005 %",
        "they round to 1 Btu/h",
        LEDGER,
    ),
    Check(
        TOPIC,
        "the same turned round",
        air.needed_delivered_air,
        {"indoor": "70 °F", "load": "26775 Btu/h", "air_capacity": "648 Btu/(h·°F)", "leakage": "10 %"},
        "115.911 °F",
        "0.001 F°",
        "they print six digits",
        LEDGER,
    ),
    # 648 · (120 − 70) = 32,400 leave the coil and 648 · (115.911 − 70) = 29,750 arrive: 2,650 lost, 8.18 %.
    Check(
        TOPIC,
        "2,650 of 32,400 Btu/h lost",
        air.duct_loss,
        {"delivered_heat": "29750 Btu/h", "coil_heat": "32400 Btu/h"},
        "8.179 %",
        "0.01 %",
        "they print four digits",
        COOLING,
    ),
    # 32,500/0.8
    Check(
        TOPIC,
        "32,500 Btu/h behind ducts that lose a fifth",
        air.heat_before_ducts,
        {"load": "32500 Btu/h", "duct_loss": "20 %"},
        "40625 Btu/h",
        "0.001 %",
        "the quotient is exact",
        LEDGER,
    ),
    # 40,625 · 0.8
    Check(
        TOPIC,
        "40,625 Btu/h before ducts that lose a fifth",
        air.heat_after_ducts,
        {"coil_heat": "40625 Btu/h", "duct_loss": "20 %"},
        "32500 Btu/h",
        "0.001 %",
        "the product is exact",
        LEDGER,
    ),
]
