"""Finned-tube baseboard: the allowance inside printed ratings, the fall of output with cooler water, and its flow.

The exponents of baseboard are from memory in both sets of numbers used here (1.31 baseboard and 1.42 convector in a
handbook, 1.4172 in a hydronics textbook's fit): they lie 10 % apart at 110 °F, which is why the exponent is a field.
The factors themselves, for a given exponent, agree between the sets to the last printed digit.
"""

from calc.physics import emitters
from comparisons.check import Check, Published

ALLOWANCE = Published(
    "ASHRAE",
    "Handbook, HVAC Systems and Equipment, as quoted in the trade press",
    "2016",
    "page 36.3, heating effect",
    "trade",
)
JOURNAL = Published(
    "A builders' journal (name not kept)",
    "Baseboard ratings and low-temperature water",
    "2016",
    "divide by 1.15",
    "trade",
)
CURVE = Published(
    "A textbook of hydronics",
    "Finned-tube output against water temperature",
    "2012",
    "exponent from memory",
    "from memory",
)
ARITHMETIC = Published(
    "By hand", "Heat carried by water, 500 × gpm × ΔT", "2026", "10.5 gpm and 3.5 gpm", "own arithmetic"
)
LEDGER = Published("By hand", "Written-out arithmetic", "2026", "this file", "own arithmetic")

TOPIC = "Radiators and baseboard"

CHECKS = [
    Check(
        TOPIC,
        "60 ft of baseboard printed at 580 Btu/h·ft",
        emitters.rating_of_length,
        {"length": "60 ft", "rating_per_length": "580 Btu/(h·ft)"},
        "34800 Btu/h",
        "0.01 %",
        "the product is exact",
        JOURNAL,
    ),
    Check(
        TOPIC,
        "the same, tested",
        emitters.rating_without_allowance,
        {"printed_rating": "34800 Btu/h", "allowance": "15 %"},
        "30261 Btu/h",
        "0.01 %",
        "they round to 1 Btu/h",
        JOURNAL,
    ),
    Check(
        TOPIC,
        "560 Btu/h printed with the allowance",
        emitters.rating_without_allowance,
        {"printed_rating": "560 Btu/h", "allowance": "15 %"},
        "487.0 Btu/h",
        "0.02 %",
        "they round to 0.1 Btu/h",
        ALLOWANCE,
    ),
    Check(
        TOPIC,
        "a rating without the allowance stays",
        emitters.rating_without_allowance,
        {"printed_rating": "504 Btu/h", "allowance": "0 %"},
        "504 Btu/h",
        "0.01 %",
        "nothing is taken off",
        ALLOWANCE,
    ),
]

# Share of the output at 180 °F that is left at cooler mean water, 65 °F air.
_FACTORS = {
    "1.31": {110: 0.2925, 120: 0.3805, 130: 0.4736, 140: 0.5712, 150: 0.6730, 160: 0.7786, 170: 0.8877, 200: 1.2337},
    "1.4": {110: 0.2689, 120: 0.3561, 130: 0.4499, 140: 0.5497, 150: 0.6550, 160: 0.7653, 170: 0.8804, 200: 1.2517},
    "1.4172": {110: 0.2646, 120: 0.3516, 130: 0.4455, 140: 0.5457, 150: 0.6516, 160: 0.7628, 170: 0.8790, 200: 1.2551},
}

for _exponent, _row in _FACTORS.items():
    for _water, _factor in _row.items():
        CHECKS += [
            Check(
                TOPIC,
                f"{_water} °F mean water, exponent {_exponent}",
                emitters.output,
                {
                    "rated_output": "10000 Btu/h",
                    "excess": f"{_water - 65} F°",
                    "rated_excess": "115 F°",
                    "exponent": _exponent,
                },
                f"{_factor * 1e4:.0f} Btu/h",
                "0.03 %",
                "their factor has four digits",
                CURVE,
            ),
            Check(
                TOPIC,
                f"{_factor} of the rating, exponent {_exponent}",
                emitters.needed_excess,
                {
                    "load": f"{_factor * 1e4:.0f} Btu/h",
                    "rated_output": "10000 Btu/h",
                    "rated_excess": "115 F°",
                    "exponent": _exponent,
                },
                f"{_water - 65} F°",
                "0.03 %",
                "their factor has four digits",
                CURVE,
            ),
        ]

# 500 Btu/h for each gpm and degree is 8.33333 Btu for each gallon and degree.
CHECKS += [
    Check(
        TOPIC,
        "99,750 Btu/h in 19 °F",
        emitters.flow_capacity,
        {"design_load": "99750 Btu/h", "water_drop": "19 F°"},
        "5250 Btu/(h·°F)",
        "0.01 %",
        "500 times 10.5 gpm, exact",
        ARITHMETIC,
    ),
    Check(
        TOPIC,
        "its flow",
        emitters.design_flow,
        {"flow_capacity": "5250 Btu/(h·°F)", "heat_capacity": "8.333333 Btu/(gal·°F)"},
        "10.5 gpm",
        "0.01 %",
        "the 500 of the rule is exact here",
        ARITHMETIC,
    ),
    Check(
        TOPIC,
        "3.5 gpm by the 500 rule",
        emitters.capacity_of_flow,
        {"flow": "3.5 gpm", "heat_capacity": "8.333333 Btu/(gal·°F)"},
        "1750 Btu/(h·°F)",
        "0.01 %",
        "the 500 of the rule is exact here",
        ARITHMETIC,
    ),
    Check(
        TOPIC,
        "27,125 Btu/h at 3.5 gpm",
        emitters.drop,
        {"load": "27125 Btu/h", "flow_capacity": "1750 Btu/(h·°F)"},
        "15.5 F°",
        "0.01 %",
        "the 500 of the rule is exact here",
        ARITHMETIC,
    ),
    Check(
        TOPIC,
        "105 °F supply through an exchanger of 8 °F approach: 105 + 8 = 113",
        emitters.lowest_useful,
        {"supply": "105 °F", "exchanger_approach": "8 F°"},
        "113 °F",
        "0.001 F°",
        "the sum is exact",
        LEDGER,
    ),
    Check(
        TOPIC,
        "37,500 Btu/h at −5 °F; at 30 °F, 40 of 75 degrees: 20,000",
        emitters.part_load,
        {"design_load": "37500 Btu/h", "indoor": "70 °F", "outdoor": "30 °F", "design_outdoor": "-5 °F"},
        "20000 Btu/h",
        "0.01 %",
        "the product is exact",
        LEDGER,
    ),
    Check(
        TOPIC,
        "no load when it is warmer outside than in",
        emitters.part_load,
        {"design_load": "37500 Btu/h", "indoor": "70 °F", "outdoor": "75 °F", "design_outdoor": "-5 °F"},
        "0 Btu/h",
        "0.001 Btu/h",
        "warm weather asks nothing",
        LEDGER,
    ),
    Check(
        TOPIC,
        "one and a half times 30,261 Btu/h",
        emitters.scaled_rating,
        {"emitter_factor": "1.5", "rating": "30261 Btu/h"},
        "45391.5 Btu/h",
        "0.001 %",
        "the product is exact",
        LEDGER,
    ),
]
