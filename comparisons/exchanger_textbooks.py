"""Exchangers against exercises of heat transfer courses, each worked from its own statement.

Two posted answers to the geothermal exercise differ (109 m and 109.16 m): the second takes one heat capacity for both
waters. The statement's own two give 108.5 m, and that is what stands here.
"""

from calc.law import Law
from calc.physics import exchange
from comparisons.check import At, Check, Published

GEOTHERMAL = Published(
    "Çengel and Ghajar",
    "Heat and Mass Transfer, exercise: water heated by geothermal water in a double pipe",
    "2015",
    "chapter 11; 1.2 kg/s from 20 to 80 °C, 2 kg/s at 160 °C, U 640 W/(m²·K), pipe 1.5 cm: 108.5 m",
    "textbook",
)
NOTEBOOK = Published(
    "open teaching notebook on heat transfer",
    "Variant of the geothermal exercise",
    "undated",
    "1.1 kg/s from 20 to 70 °C, 1.8 kg/s at 150 °C, U 600 W/(m²·K), pipe 1.3 cm: 104.48 m",
    "textbook",
)
OIL_IP = Published(
    "Çengel and Ghajar",
    "Heat and Mass Transfer, exercise in English units: oil cooled by water in a thin-walled double pipe",
    "2015",
    "chapter 11; oil 5 lb/s, 0.525 Btu/(lb·°F), 300 to 105 °F; water 3 lb/s at 70 °F; 5 in × 200 ft: U 152.6, NTU 4.2282",
    "textbook",
)
OIL_SI = Published(
    "Incropera, DeWitt, Bergman and Lavine",
    "Fundamentals of Heat and Mass Transfer, example: oil cooler",
    "2007",
    "chapter 11; oil 0.1 kg/s, 2131 J/(kg·K), 100 to 60 °C; water 0.2 kg/s at 30 °C: 8524 W, 40.2 °C, 43.2 K",
    "textbook",
)

_TOPIC = "Exchangers for tap water"
_ROUNDED = "their intermediate values are rounded"


def _check(law: Law, given: dict[str, str | At], theirs: str, within: str, source: Published, where: str) -> Check:
    return Check(_TOPIC, where, law, given, theirs, within, _ROUNDED, source)


_OIL_STREAMS: dict[str, str | At] = {"primary": "9450 Btu/(h·°F)", "tap_side": "10800 Btu/(h·°F)"}
_OIL_EFFECTIVENESS = At(exchange.counterflow_effectiveness, {"transfer_units": "4.2282", "ratio": "0.875"})

CHECKS = [
    # 640 W/(m²·K) × π × 0.015 m × 108.5 m
    _check(
        exchange.rated_conductance,
        {
            "rated_heat": "300.96 kW",
            "hot_in": "160 °C",
            "hot_out": "125.09 °C",
            "cold_in": "20 °C",
            "cold_out": "80 °C",
        },
        "3272 W/K",
        "0.1 %",
        GEOTHERMAL,
        "conductance of the pipe",
    ),
    # 600 W/(m²·K) × π × 0.013 m × 104.48 m
    _check(
        exchange.rated_conductance,
        {
            "rated_heat": "229.9 kW",
            "hot_in": "150 °C",
            "hot_out": "120.366 °C",
            "cold_in": "20 °C",
            "cold_out": "70 °C",
        },
        "2560.2 W/K",
        "0.1 %",
        NOTEBOOK,
        "conductance of the pipe",
    ),
    # 152.6 Btu/(h·ft²·°F) × π × 5/12 ft × 200 ft
    _check(
        exchange.rated_conductance,
        {
            "rated_heat": "1842750 Btu/h",
            "hot_in": "300 °F",
            "hot_out": "105 °F",
            "cold_in": "70 °F",
            "cold_out": "240.63 °F",
        },
        "39951 Btu/(h·°F)",
        "0.1 %",
        OIL_IP,
        "conductance of the pipe",
    ),
    # 8524 W ÷ 43.2 K
    _check(
        exchange.rated_conductance,
        {"rated_heat": "8524 W", "hot_in": "100 °C", "hot_out": "60 °C", "cold_in": "30 °C", "cold_out": "40.2 °C"},
        "197.3 W/K",
        "0.1 %",
        OIL_SI,
        "conductance of the tube",
    ),
    _check(
        exchange.stream_capacity,
        {"heat": "8524 W", "warm": "100 °C", "cool": "60 °C"},
        "213.1 W/K",
        "0.01 %",
        OIL_SI,
        "oil, 0.1 kg/s × 2131 J/(kg·K)",
    ),
    _check(
        exchange.tap_temperature,
        {"cold": "30 °C", "heat": "8524 W", "tap_side": "835.6 W/K"},
        "40.2 °C",
        "0.005 K",
        OIL_SI,
        "water as it leaves",
    ),
    _check(
        exchange.primary_return,
        {"store": "160 °C", "heat": "300.96 kW", "primary": "8620 W/K"},
        "125.09 °C",
        "0.01 K",
        GEOTHERMAL,
        "geothermal water as it leaves",
    ),
    _check(
        exchange.smaller_stream, _OIL_STREAMS, "9450 Btu/(h·°F)", "0.001 %", OIL_IP, "5 lb/s × 0.525 against 3 lb/s × 1"
    ),
    _check(exchange.stream_ratio, _OIL_STREAMS, "0.875", "0.001 %", OIL_IP, "2.625 over 3"),
    _check(
        exchange.number_of_transfer_units,
        {"conductance": "39957 Btu/(h·°F)", "smaller_stream": "9450 Btu/(h·°F)"},
        "4.2282",
        "0.01 %",
        OIL_IP,
        "the same conductance by transfer units",
    ),
    _check(
        exchange.counterflow_effectiveness,
        {"transfer_units": "4.2282", "ratio": "0.875"},
        "84.783 %",
        "0.01 %",
        OIL_IP,
        "195 °F of 230 °F",
    ),
    _check(
        exchange.heat_passed,
        {"effectiveness": _OIL_EFFECTIVENESS, "smaller_stream": "9450 Btu/(h·°F)", "store": "300 °F", "cold": "70 °F"},
        "1842750 Btu/h",
        "0.02 %",
        OIL_IP,
        "heat of the oil, 511.9 Btu/s",
    ),
    _check(
        exchange.store_needed,
        {
            "tap": "240.63 °F",
            "cold": "70 °F",
            "tap_side": "10800 Btu/(h·°F)",
            "effectiveness": _OIL_EFFECTIVENESS,
            "smaller_stream": "9450 Btu/(h·°F)",
        },
        "300 °F",
        "0.1 F°",
        OIL_IP,
        "oil as it enters, from the water that leaves",
    ),
]
