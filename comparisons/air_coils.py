"""Coils and air: the exact crossflow effectiveness, the heat that air carries, and whole coils at two altitudes.

Contested: a common approximation, 1 − exp[NTU^0.22/C·(exp(−C·NTU^0.78) − 1)], is 3 % low at C = 1 and NTU 0.5 and
1 % high near NTU 3; one published library example, 0.7632, is the approximation where the exact value is 0.7557. The
exact series is used here, and both independent sets of numbers give it to five digits. They differ in the air's factor
(1.0784 with 0.240 Btu/lb·°F, 1.0802 by CoolProp, 1.0800 by the rule of thumb): 0.2 %.
"""

from functools import partial

from calc.physics import air, water
from comparisons.check import At, Check, Published

SERIES = Published(
    "ht",
    "Heat exchangers: effectiveness and NTU, crossflow both unmixed, by integral",
    "2026",
    "1.2.0",
    "independent library",
)
COOLPROP = Published(
    "CoolProp",
    "Dry air at 70 °F and the standard atmosphere's pressure",
    "2026",
    "version 8.0.0",
    "independent library",
)
ATMOSPHERE = Published(
    "psychrolib", "Pressure of the standard atmosphere over that at sea level", "2026", "2.5.0", "independent library"
)
RULE = Published(
    "hvac-eng.com",
    "Calculating the air volume of an HVAC system",
    "undated",
    "1.08 = 60 min/h × 0.075 lb/ft³ × 0.24 Btu/(lb·°F)",
    "trade",
)
COILS = Published(
    "By hand",
    "Coils worked out with the exact effectiveness, 1.08 and 500",
    "2026",
    "two dozen steps by hand",
    "own arithmetic",
)
SCALING = Published(
    "By hand",
    "Both sides of a coil in series, after Lawrence Berkeley National Laboratory, LBNL-42355",
    "1999",
    "as coded in the open Modelica Buildings library",
    "own arithmetic",
)

TOPIC = "Coils and ducts"
SEA_LEVEL = "14.69595 psia"


def _effectiveness(units: float, ratio: float) -> float:
    import ht

    return float(ht.effectiveness_from_NTU(NTU=units, Cr=ratio, subtype="crossflow"))


def _transfer_units(effectiveness: float, ratio: float) -> float:
    import ht

    return float(ht.NTU_from_effectiveness(effectiveness=effectiveness, Cr=ratio, subtype="crossflow"))


def _pressure_share(altitude: float) -> float:
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.IP)
    return float(psychrolib.GetStandardAtmPressure(altitude) / psychrolib.GetStandardAtmPressure(0))


def _air_capacity(altitude: float) -> float:
    """W/K carried by 1000 cfm of dry air at 70 °F."""
    from CoolProp.CoolProp import PropsSI

    pressure = 101325 * _pressure_share(altitude)
    kelvin = (70 + 459.67) / 1.8
    flow = 1000 * 0.3048**3 / 60
    return float(
        flow * PropsSI("D", "T", kelvin, "P", pressure, "Air") * PropsSI("C", "T", kelvin, "P", pressure, "Air")
    )


_EFFECTIVENESS = {
    "0.5": {"0.25": 0.37509, "0.5": 0.35783, "0.75": 0.34159, "1": 0.32633},
    "1": {"0.25": 0.58801, "0.5": 0.54749, "0.75": 0.51031, "1": 0.47622},
    "2": {"0.25": 0.79742, "0.5": 0.73241, "0.75": 0.67108, "1": 0.61425},
    "3": {"0.25": 0.88846, "0.5": 0.81971, "0.75": 0.74941, "1": 0.68129},
    "5": {"0.25": 0.95907, "0.5": 0.90167, "0.75": 0.82925, "1": 0.75090},
}

CHECKS = []
for _units_text, _row in _EFFECTIVENESS.items():
    for _ratio_text, _reach in _row.items():
        CHECKS += [
            Check(
                TOPIC,
                f"NTU {_units_text}, C {_ratio_text}",
                air.effectiveness,
                {"transfer_units": _units_text, "capacity_ratio": _ratio_text},
                f"{_reach * 100:.3f} %",
                "0.002 %",
                "they print five digits",
                SERIES,
                partial(_effectiveness, float(_units_text), float(_ratio_text)),
            ),
            Check(
                TOPIC,
                f"effectiveness {_reach}, C {_ratio_text}",
                air.transfer_units_for,
                {"rated_effectiveness": f"{_reach * 100:.3f} %", "capacity_ratio": _ratio_text},
                _units_text,
                "0.02 %",
                "an effectiveness of five digits fixes NTU no better",
                SERIES,
                partial(_transfer_units, _reach, float(_ratio_text)),
            ),
        ]
CHECKS += [
    # 1 − e^−1.2 = 0.698806
    Check(
        TOPIC,
        "one stream much the larger: 1 − e^−NTU at NTU 1.2",
        air.effectiveness,
        {"transfer_units": "1.2", "capacity_ratio": "0"},
        "69.8806 %",
        "0.001 %",
        "they print six digits",
        COILS,
    ),
]

for _feet, _pressure in ((2000, "92.98 %"), (5000, "83.20 %"), (7000, "77.16 %"), (10000, "68.77 %")):
    CHECKS.append(
        Check(
            TOPIC,
            f"{_feet:,} ft",
            air.pressure_ratio,
            {"site_pressure": At(water.barometer, {"altitude": f"{_feet} ft"})},
            _pressure,
            "0.03 %",
            "editions of the atmosphere's exponent differ in the fourth digit",
            ATMOSPHERE,
            partial(_pressure_share, _feet),
        )
    )
for _feet, _factor in ((0, 1.0802), (2000, 1.0043), (5000, 0.8985), (7500, 0.8175), (10000, 0.7425)):
    CHECKS.append(
        Check(
            TOPIC,
            f"1000 cfm at 70 °F and {_feet:,} ft",
            air.air_capacity,
            {
                "air_flow": "1000 cfm",
                "site_pressure": At(water.barometer, {"altitude": f"{_feet} ft"}),
                "entering_air": "70 °F",
            },
            f"{_factor * 1000:.1f} Btu/(h·°F)",
            "0.1 %",
            "real air differs from an ideal gas by 0.05 %",
            COOLPROP,
            partial(_air_capacity, _feet),
        )
    )
CHECKS.append(
    Check(
        TOPIC,
        "1000 cfm of standard air",
        air.standard_air_capacity,
        {"standard_flow": "1000 cfm"},
        "1080 Btu/(h·°F)",
        "0.15 %",
        "the rule takes 0.24 Btu/lb·°F, 0.12 % less than 1006 J/kg·K",
        RULE,
    )
)

# UA Btu/h·°F, gpm, cfm, water and air in °F; NTU, C, effectiveness %, heat Btu/h, air and water out °F.
for _ua, _gpm, _cfm, _water, _air, _units, _ratio, _share, _heat, _air_out, _water_out in (
    (800, 5, 800, 150, 65, 0.9259, 0.3456, 54.840, 40274, 111.61, 133.89),
    (1200, 8, 1000, 180, 68, 1.1111, 0.2700, 61.834, 74794, 137.25, 161.30),
    (1000, 6, 1200, 130, 65, 0.7716, 0.4320, 48.216, 40617, 96.34, 116.46),
    (600, 4, 600, 120, 65, 0.9259, 0.3240, 55.168, 19662, 95.34, 110.17),
):
    _where = f"UA {_ua}, {_gpm} gpm at {_water} °F, {_cfm} cfm at {_air} °F"
    _water_capacity, _air_capacity_text = f"{500 * _gpm} Btu/(h·°F)", f"{1.08 * _cfm:g} Btu/(h·°F)"
    _streams: dict[str, str | At] = {"water_capacity": _water_capacity, "air_capacity": _air_capacity_text}
    _least = At(air.least_capacity, _streams)
    _reached = At(
        air.effectiveness,
        {
            "transfer_units": At(
                air.transfer_units, {"coil_conductance": f"{_ua} Btu/(h·°F)", "least_capacity": _least}
            ),
            "capacity_ratio": At(air.capacity_ratio, _streams),
        },
    )
    _given: dict[str, str | At] = {
        "effectiveness": _reached,
        "least_capacity": _least,
        "entering_water": f"{_water} °F",
        "entering_air": f"{_air} °F",
    }
    _digits = "they print four or five digits"
    CHECKS += [
        Check(
            TOPIC,
            _where,
            air.least_capacity,
            _streams,
            _air_capacity_text,
            "0.001 %",
            "here the air's is the smaller",
            COILS,
        ),
        Check(
            TOPIC,
            _where,
            air.transfer_units,
            {"coil_conductance": f"{_ua} Btu/(h·°F)", "least_capacity": _air_capacity_text},
            f"{_units}",
            "0.01 %",
            _digits,
            COILS,
        ),
        Check(TOPIC, _where, air.capacity_ratio, _streams, f"{_ratio}", "0.01 %", _digits, COILS),
        Check(TOPIC, _where, air.coil_heat, _given, f"{_heat} Btu/h", "0.01 %", _digits, COILS),
        Check(
            TOPIC,
            _where,
            air.air_out,
            {"entering_air": f"{_air} °F", "coil_heat": At(air.coil_heat, _given), "air_capacity": _air_capacity_text},
            f"{_air_out} °F",
            "0.01 F°",
            _digits,
            COILS,
        ),
        Check(
            TOPIC,
            _where,
            air.water_out,
            {
                "entering_water": f"{_water} °F",
                "coil_heat": At(air.coil_heat, _given),
                "water_capacity": _water_capacity,
            },
            f"{_water_out} °F",
            "0.01 F°",
            _digits,
            COILS,
        ),
        Check(
            TOPIC,
            f"{_where}, turned round: the water for this heat",
            air.entering_water,
            {
                "entering_air": f"{_air} °F",
                "coil_heat": f"{_heat} Btu/h",
                "effectiveness": f"{_share} %",
                "least_capacity": _air_capacity_text,
            },
            f"{_water} °F",
            "0.02 F°",
            "an effectiveness of five digits leaves 0.01 °F open",
            COILS,
        ),
        Check(
            TOPIC,
            f"{_where}, as a rated point",
            air.rated_effectiveness,
            {
                "rated_heat": f"{_heat} Btu/h",
                "least_capacity": _air_capacity_text,
                "rated_water": f"{_water} °F",
                "rated_air": f"{_air} °F",
            },
            f"{_share} %",
            "0.01 %",
            _digits,
            COILS,
        ),
        Check(
            TOPIC,
            f"{_where}, conductance from the rated point",
            air.coil_conductance,
            {"transfer_units": f"{_units}", "least_capacity": _air_capacity_text},
            f"{_ua} Btu/(h·°F)",
            "0.01 %",
            _digits,
            COILS,
        ),
        Check(
            TOPIC,
            _where,
            air.heat_to_air,
            {"air_capacity": _air_capacity_text, "air_out": f"{_air_out} °F", "entering_air": f"{_air} °F"},
            f"{_heat} Btu/h",
            "0.03 %",
            "air temperatures of 0.01 °F",
            COILS,
        ),
    ]

# With the air by far the larger stream the water's capacity is the smaller one: 500 against 2160.
_WIDE: dict[str, str | At] = {"water_capacity": "500 Btu/(h·°F)", "air_capacity": "2160 Btu/(h·°F)"}
CHECKS += [
    Check(
        TOPIC,
        "1 gpm beside 2000 cfm",
        air.least_capacity,
        _WIDE,
        "500 Btu/(h·°F)",
        "0.001 %",
        "here the water's is the smaller",
        COILS,
    ),
    Check(
        TOPIC,
        "1 gpm beside 2000 cfm: 500/2160",
        air.capacity_ratio,
        _WIDE,
        "0.231481",
        "0.001 %",
        "they print six digits",
        COILS,
    ),
]

# UA 1500, 5 gpm at 160 °F (water as IF97 gives it, 489.5), 1000 cfm of 65 °F air, at sea level and at 7,000 ft.
for _feet, _heat, _air_out in ((0, 66822, 126.9), (7000, 59062, 135.9)):
    _air_stream = At(
        air.air_capacity,
        {
            "air_flow": "1000 cfm",
            "site_pressure": At(water.barometer, {"altitude": f"{_feet} ft"}),
            "entering_air": "65 °F",
        },
    )
    _streams = {"water_capacity": "2447.5 Btu/(h·°F)", "air_capacity": _air_stream}
    _least = At(air.least_capacity, _streams)
    _given = {
        "effectiveness": At(
            air.effectiveness,
            {
                "transfer_units": At(
                    air.transfer_units, {"coil_conductance": "1500 Btu/(h·°F)", "least_capacity": _least}
                ),
                "capacity_ratio": At(air.capacity_ratio, _streams),
            },
        ),
        "least_capacity": _least,
        "entering_water": "160 °F",
        "entering_air": "65 °F",
    }
    _because = "theirs takes 1.08 cfm for the air; at 65 °F it carries 1 % more"
    CHECKS += [
        Check(
            TOPIC,
            f"UA 1500 at {_feet:,} ft",
            air.coil_heat,
            _given,
            f"{_heat} Btu/h",
            "1 %",
            _because,
            COILS,
        ),
        Check(
            TOPIC,
            f"UA 1500 at {_feet:,} ft: air out",
            air.air_out,
            {"entering_air": "65 °F", "coil_heat": At(air.coil_heat, _given), "air_capacity": _air_stream},
            f"{_air_out} °F",
            "0.7 F°",
            _because,
            COILS,
        ),
    ]

# LBNL-42355 gives each side's own conductance: with r = 0.5 a UA of 900 W/K is 1350 (air) and 2700 (water) in series.
# Half the air: 1350 · 0.5^0.8 = 775.37, in series with 2700: 602.38. Half the water: 2700 · 0.5^0.85 = 1497.9, in
# series with 1350: 710.05. At the rated flows: 900.
for _air_ratio, _water_ratio, _conductance in (("0.5", "1", 602.38), ("1", "0.5", 710.05), ("1", "1", 900.0)):
    CHECKS.append(
        Check(
            TOPIC,
            f"UA 900 W/K at {_air_ratio} of the air and {_water_ratio} of the water",
            air.conductance_at_flows,
            {
                "rated_conductance": "900 W/K",
                "air_ratio": _air_ratio,
                "water_ratio": _water_ratio,
                "side_ratio": "0.5",
            },
            f"{_conductance} W/K",
            "0.01 %",
            "they print five digits",
            SCALING,
        )
    )
CHECKS.append(
    Check(
        TOPIC,
        "800 cfm where 1000 was rated",
        air.flow_ratio,
        {"capacity": "864 Btu/(h·°F)", "rated_capacity": "1080 Btu/(h·°F)"},
        "0.8",
        "0.001 %",
        "the quotient is exact",
        SCALING,
    )
)
CHECKS.append(
    Check(
        TOPIC,
        "one and a half times a coil of 800",
        air.scaled_conductance,
        {"emitter_factor": "1.5", "coil_conductance": "800 Btu/(h·°F)"},
        "1200 Btu/(h·°F)",
        "0.001 %",
        "the product is exact",
        COILS,
    )
)
