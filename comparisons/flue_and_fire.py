"""The fire and its flue: combustion by molar masses, draught by other formulas, air by psychrolib, losses by fluids.

Contested: the dew point of flue gas. Printed values of 58.5, 51.7 and 47.0 °C for wood at 20 % hold for room air of
20 °C and 40 % relative humidity; dry air gives 57.7, 50.5 and 45.4 °C. Wood of 43 instead of 44 % oxygen moves them by
0.3 K. All three are reproduced here, each with its own air and wood, by CoolProp's molar masses and its own saturation.
"""

from functools import partial

from calc.law import Law
from calc.physics import arithmetic, flue, water
from comparisons.check import At, Check, Published

MOLAR = Published("By hand", "Burning of C 50, H 6, O 44 %, by hand", "2025", "molar masses", "own arithmetic")
DEW = Published(
    "CoolProp",
    "Molar masses; saturation of water, IAPWS-95",
    "2025",
    "version 8.0.0",
    "independent library",
)
KUBLER = Published(
    "Wood and Fiber Science",
    "Indicators and significance of air supply in the combustion of wood for heat",
    "1991",
    "abstract: 6 g of air for each gram of oven-dry wood",
    "public body",
)
NEWSPAPER = Published(
    "Bangor Daily News", "Air exchange", "2008", "10 lb of wood an hour draw 1,000 cubic feet of air an hour", "trade"
)
PSYCHROLIB = Published("psychrolib", "ASHRAE psychrometrics", "2017", "version 2.5.0", "independent library")
ASHRAE_DRAFT = Published(
    "ASHRAE",
    "Handbook, HVAC Systems and Equipment: chimney, vent and fireplace systems",
    "2008",
    "theoretical draft 0.2554·B·L·(1/To − 1/Tm), in. of water, in. of mercury, ft, °R",
    "from memory",
)
STACK = Published(
    "Wikipedia",
    "Flue-gas stack: 0.0342·a·h·(1/To − 1/Ti) Pa with a in Pa, h in m, K",
    "undated",
    "draught equation",
    "textbook",
)
VELOCITY_PRESSURE = Published(
    "ACGIH",
    "Industrial Ventilation Manual: V = 4005 × √VP, ft/min and inches of water, standard air 0.075 lb/ft³",
    "undated",
    "as quoted by bams-thinkery.ca",
    "textbook",
)
FLUIDS = Published("fluids", "K_from_f and dP_from_K", "2025", "version 1.3.1", "independent library")
FAN_MAKER = Published(
    "A maker of chimney fans (name withheld)",
    "Specifications, available draft",
    "undated",
    "0.091 in. draft less 0.039 in. loss leaves 0.052 in.; a house at −0.1 in. leaves −0.048 in.",
    "trade",
)
BLOWER_DOOR = Published(
    "Makers of blower doors",
    "Factors for a house that cannot be brought to 50 Pa, exponent 0.65",
    "undated",
    "25 Pa 1.57, 10 Pa 2.85",
    "from memory",
)
LEAKAGE_AREA = Published(
    "ASTM",
    "E779, Air leakage rate by fan pressurization: flow at 4 Pa from flow at 50 Pa, exponent 0.65",
    "2010",
    "0.194",
    "standard",
)
FITTINGS = Published(
    "ASHRAE",
    "Handbook, HVAC Systems and Equipment: chimney, vent and fireplace systems",
    "2008",
    "resistance coefficients: acceleration 1, inlet 0.5, cap 0.5, 90° elbow 0.75",
    "from memory",
)
HAND = Published("By hand", "Worked by hand", "2025", "see the comment at the check", "own arithmetic")
COOLPROP = Published("CoolProp", "Dry air", "2025", "version 8.0.0", "independent library")

_TOPIC = "Chimney and fire"
_ROUNDED = "the last printed digit is rounded"
_WOOD: dict[str, str | At] = {"carbon": "50 %", "hydrogen": "6 %", "oxygen": "44 %"}
_LEAST_AIR = At(flue.least_air, _WOOD)


def _dew_point(moisture: str, ratio: str, oxygen: str, vapour: str | At, barometer: str) -> dict[str, str | At]:
    least = At(flue.least_air, {"carbon": "50 %", "hydrogen": "6 %", "oxygen": oxygen})
    humidity = At(flue.humidity_ratio, {"vapour": vapour, "barometer": barometer})
    steam = At(
        flue.steam,
        {
            "hydrogen": "6 %",
            "moisture": moisture,
            "humidity_ratio": humidity,
            "least_air": least,
            "air_ratio": ratio,
        },
    )
    dry = At(flue.dry_gas, {"carbon": "50 %", "least_air": least, "air_ratio": ratio})
    return {
        "pressure": At(flue.flue_vapour_pressure, {"steam": steam, "dry_gas": dry, "barometer": barometer}),
    }


_ROOM_AIR = At(
    flue.vapour_in_air,
    {"relative_humidity": "40 %", "saturation_pressure": At(water.vapour_pressure, {"temperature": "20 °C"})},
)
# moisture, air ratio, dew point with dry air at sea level
_DRY_AIR = (
    ("0 %", "1", "50.97 °C"),
    ("0 %", "2", "38.74 °C"),
    ("15 %", "1.5", "48.80 °C"),
    ("20 %", "1", "57.72 °C"),
    ("20 %", "1.5", "50.53 °C"),
    ("20 %", "2", "45.43 °C"),
    ("20 %", "3", "38.33 °C"),
    ("30 %", "1.5", "54.15 °C"),
    ("50 %", "3", "50.09 °C"),
)
_OTHER_WOOD = (
    ("10 %", "1", "129.6 °F"),
    ("20 %", "1.5", "122.8 °F"),
    ("20 %", "2.5", "106.5 °F"),
    ("50 %", "2", "134.9 °F"),
)
_HUMID_AIR = (("1", "58.46 °C"), ("1.5", "51.65 °C"), ("2", "46.91 °C"))
_AT_FIVE_THOUSAND = (("1", "53.86 °C"), ("1.5", "46.86 °C"), ("2", "41.89 °C"))


def _vapour(celsius: float, humidity: float) -> float:
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    return float(psychrolib.GetVapPresFromRelHum(celsius, humidity))


def _humidity(celsius: float, humidity: float, pressure: float) -> float:
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    return float(psychrolib.GetHumRatioFromRelHum(celsius, humidity, pressure))


def _dew_by_coolprop(moisture: float, ratio: float, oxygen: float, humid: bool, pressure: float) -> float:
    """Dew point in K of the gas of one kilogram of wood, C 50 %, H 6 %, from CoolProp's molar masses and saturation."""
    from CoolProp.CoolProp import PropsSI

    weight = {gas: PropsSI("M", gas) * 1000 for gas in ("Water", "Hydrogen", "Oxygen", "CarbonDioxide")}
    carbon = 0.5 / (weight["CarbonDioxide"] - weight["Oxygen"])
    hydrogen = 0.06 / weight["Hydrogen"]
    used = carbon + hydrogen / 2 - oxygen / weight["Oxygen"]
    air = used * ratio / 0.2095
    vapour = 0.4 * PropsSI("P", "T", 293.15, "Q", 0, "Water") if humid else 0.0
    steam = hydrogen + moisture / (1 - moisture) / weight["Water"] + air * vapour / (pressure - vapour)
    return float(PropsSI("T", "P", steam / (steam + carbon + air - used) * pressure, "Q", 0, "Water"))


def _flue_loss(factor: float, length: float, bore: float, bends: float, density: float, velocity: float) -> float:
    from fluids.core import K_from_f, dP_from_K

    return float(dP_from_K(K_from_f(factor, length, bore) + bends, density, velocity))


def _air_density(celsius: float, pressure: float) -> float:
    from CoolProp.CoolProp import PropsSI

    return float(PropsSI("D", "T", celsius + 273.15, "P", pressure, "Air"))


def _hand(law: Law, given: dict[str, str | At], theirs: str, where: str, within: str = "0.005 %") -> Check:
    return Check(_TOPIC, where, law, given, theirs, within, "worked to the digits shown", HAND)


def _dew(moisture: str, ratio: str, oxygen: str, humid: bool, barometer: str, theirs: str, within: str) -> Check:
    return Check(
        _TOPIC,
        f"{moisture} moisture, air ratio {ratio}, {oxygen} oxygen, {'humid' if humid else 'dry'} air, {barometer}",
        water.boiling_temperature,
        _dew_point(moisture, ratio, oxygen, _ROOM_AIR if humid else "0 Pa", barometer),
        theirs,
        within,
        "two formulations of water's saturation and of air; rounding",
        DEW,
        partial(
            _dew_by_coolprop,
            float(moisture[:-1]) / 100,
            float(ratio),
            float(oxygen[:-1]) / 100,
            humid,
            float(barometer.removesuffix(" kPa")) * 1000,
        ),
    )


CHECKS = [
    # What burns. 50,000 + 10,000 Btu/h at 75 %.
    _hand(
        flue.fuel_heat,
        {"water_output": "50000 Btu/h", "room_output": "10000 Btu/h", "efficiency": "75 %"},
        "80000 Btu/h",
        "60,000 Btu/h at 75 %",
    ),
    # 80,000 ÷ 6219
    _hand(
        flue.burn_rate,
        {"fuel_heat": "80000 Btu/h", "heating_value": "6219 Btu/lb"},
        "12.8638 lb/h",
        "80,000 Btu/h of wood at 20 %",
    ),
    # 12.8638 × 0.8
    _hand(
        flue.dry_burn_rate,
        {"burn_rate": "12.8638 lb/h", "moisture": "20 %"},
        "10.29104 lb/h",
        "the same, oven-dry",
    ),
    Check(
        _TOPIC,
        "air for a gram of dry wood",
        flue.least_air,
        _WOOD,
        "6",
        "2 %",
        "they print one digit",
        KUBLER,
    ),
    # (50/12.011 + 6/4.032 − 44/31.998) kmol/100 kg × 31.998 ÷ 0.2314
    Check(_TOPIC, "44 % oxygen", flue.least_air, _WOOD, "5.91", "0.1 %", _ROUNDED, MOLAR),
    # 21 % less 7.01 and 10.50 % of oxygen left belong to air ratios of 1.5 and 2.
    *(
        Check(
            _TOPIC,
            f"{oxygen} oxygen in dry flue gas",
            flue.air_ratio_from_oxygen,
            {"oxygen_measured": oxygen},
            ratio,
            "0.4 %",
            "the usual formula takes dry flue gas for air, which is off by 0.3 %",
            MOLAR,
        )
        for oxygen, ratio in (("7.01 %", "1.5"), ("10.50 %", "2"))
    ),
    *(
        Check(
            _TOPIC,
            f"air ratio {ratio}",
            flue.carbon_dioxide_share,
            {
                "carbon": "50 %",
                "dry_gas": At(flue.dry_gas, {"carbon": "50 %", "least_air": _LEAST_AIR, "air_ratio": ratio}),
            },
            theirs,
            "0.06 %",
            _ROUNDED,
            MOLAR,
        )
        for ratio, theirs in (("1", "20.51 %"), ("1.5", "13.65 %"), ("2", "10.23 %"))
    ),
    # 10 lb of wood is 8 lb dry; air 5.91 × 1.75 × 8 = 82.8 lb at 0.075 lb/ft³.
    Check(
        _TOPIC,
        "10 lb of wood an hour",
        flue.volume_flow,
        {
            "mass_flow": At(
                flue.fire_air,
                {
                    "least_air": _LEAST_AIR,
                    "air_ratio": "1.75",
                    "dry_burn_rate": At(flue.dry_burn_rate, {"burn_rate": "10 lb/h", "moisture": "20 %"}),
                },
            ),
            "density": "0.075 lb/ft³",
        },
        "16.67 cfm",
        "15 %",
        "a round figure that names neither moisture nor air ratio",
        NEWSPAPER,
    ),
    # 5.91 × 1.75 × 8
    _hand(
        flue.fire_air,
        {"least_air": "5.91", "air_ratio": "1.75", "dry_burn_rate": "8 lb/h"},
        "82.74 lb/h",
        "8 lb an hour of dry wood",
    ),
    # 82.74 ÷ 0.075 ÷ 60
    _hand(
        flue.volume_flow,
        {"mass_flow": "82.74 lb/h", "density": "0.075 lb/ft³"},
        "18.3867 cfm",
        "82.74 lb an hour of standard air",
    ),
    _hand(flue.peak_burn_rate, {"burn_rate": "10.3 lb/h", "peak_factor": "2.5"}, "25.75 lb/h", "two and a half times"),
    _hand(flue.flue_gas, {"air": "82.74 lb/h", "burn_rate": "10 lb/h"}, "92.74 lb/h", "air and wood"),
    # 0.012 kg/s × 1090
    _hand(flue.gas_capacity, {"mass_flow": "0.012 kg/s"}, "13.08 W/K", "12 g of flue gas a second"),
    # 12.8638 × 6219
    _hand(
        flue.heat_fed,
        {"burn_rate": "12.8638 lb/h", "heating_value": "6219 Btu/lb"},
        "80000 Btu/h",
        "12.9 lb of wood an hour",
    ),
    # 20 + (23,000 − 15,000 − 3,000)/25
    _hand(
        flue.gas_leaving,
        {
            "indoor": "20 °C",
            "fuel_heat": "23 kW",
            "water_output": "15 kW",
            "room_output": "3 kW",
            "gas_capacity": "25 W/K",
        },
        "220 °C",
        "5 kW left in gas of 25 W/K",
        "0.001 K",
    ),
    # 80 + 720·e^(−30/25) = 80 + 720·0.301194
    _hand(
        flue.gas_after_jacket,
        {"entering": "800 °C", "water": "80 °C", "conductance": "30 W/K", "gas_capacity": "25 W/K"},
        "296.86 °C",
        "gas at 800 °C past a jacket of 30 W/K at 80 °C",
        "0.01 K",
    ),
    # 1/(1/8 + 0.4 + 1/23) = 1/0.568478
    _hand(
        flue.flue_u_value,
        {"inside_film": "8 W/(m²·K)", "resistance": "0.4 m²·K/W", "outside_film": "23 W/(m²·K)"},
        "1.75908 W/(m²·K)",
        "insulated flue outdoors",
    ),
    # 1.75908·π·0.15·6/13.08
    _hand(
        flue.cooling_number,
        {"u_value": "1.75908 W/(m²·K)", "diameter": "15 cm", "height": "6 m", "gas_capacity": "13.08 W/K"},
        "0.380253",
        "the same, 15 cm by 6 m",
        "0.01 %",
    ),
    # 5 + 215·e^−0.38 = 5 + 215·0.683861
    _hand(
        flue.gas_at_top,
        {"entering": "220 °C", "surroundings": "5 °C", "cooling_number": "0.38"},
        "152.03 °C",
        "gas from 220 °C",
        "0.005 K",
    ),
    # 5 + 215·(1 − 0.683861)/0.38
    _hand(
        flue.mean_gas,
        {"entering": "220 °C", "surroundings": "5 °C", "cooling_number": "0.38"},
        "183.87 °C",
        "gas from 220 °C",
        "0.005 K",
    ),
    *(
        Check(
            _TOPIC,
            f"air at {celsius} °C, {pressure / 1000} kPa",
            flue.gas_density,
            {"pressure": f"{pressure / 1000} kPa", "temperature": f"{celsius} °C"},
            theirs,
            "0.15 %",
            "real air is within 0.15 % of an ideal gas here",
            COOLPROP,
            partial(_air_density, celsius, pressure),
        )
        for celsius, pressure, theirs in ((-20, 101325, "1.3957 kg/m³"), (200, 84300, "0.62057 kg/m³"))
    ),
    # 0.2554 × 29.92 × 20 × (1/491.67 − 1/859.67) = 0.13306 in. of water: 32 °F outside, 400 °F in the flue.
    Check(
        _TOPIC,
        "20 ft, 400 °F against 32 °F at sea level",
        flue.stack_draught,
        {
            "height": "20 ft",
            "outdoor_density": At(flue.gas_density, {"pressure": "29.92 inHg", "temperature": "32 °F"}),
            "flue_density": At(flue.gas_density, {"pressure": "29.92 inHg", "temperature": "400 °F"}),
        },
        "0.13306 in w.c.",
        "0.3 %",
        "their constant has four digits",
        ASHRAE_DRAFT,
    ),
    # 0.0342 × 84,300 × 6 × (1/263.15 − 1/473.15) = 29.176 Pa
    Check(
        _TOPIC,
        "6 m, 200 °C against −10 °C at 84.3 kPa",
        flue.stack_draught,
        {
            "height": "6 m",
            "outdoor_density": At(flue.gas_density, {"pressure": "84.3 kPa", "temperature": "-10 °C"}),
            "flue_density": At(flue.gas_density, {"pressure": "84.3 kPa", "temperature": "200 °C"}),
        },
        "29.176 Pa",
        "0.2 %",
        "their constant has three digits",
        STACK,
    ),
    # 1 + 0.5 + 0.5 + 2 × 0.75
    Check(
        _TOPIC,
        "entry, cap and two elbows",
        flue.flue_fittings,
        {"bends": "2"},
        "3.5",
        "0.01 %",
        "a sum of printed numbers",
        FITTINGS,
    ),
    _hand(flue.dew_margin, {"gas": "260 °F", "dew_point": "114 °F"}, "146 F°", "gas at 260 °F"),
    _hand(flue.lift_needed, {"least_return": "140 °F", "system_return": "100 °F"}, "40 F°", "100 °F comes back"),
    _hand(
        flue.lift_needed,
        {"least_return": "140 °F", "system_return": "150 °F"},
        "0 F°",
        "150 °F comes back",
        "0 K",
    ),
    _hand(arithmetic.circle_area, {"diameter": "15 cm"}, "0.0176715 m²", "15 cm flue"),
    # 0.012/(0.75 × 0.0176715)
    _hand(
        flue.gas_velocity,
        {"mass_flow": "0.012 kg/s", "density": "0.75 kg/m³", "area": "0.0176715 m²"},
        "0.905413 m/s",
        "12 g a second in 15 cm",
    ),
    Check(
        _TOPIC,
        "6 m of 15 cm, factor 0.04, bends 2.5",
        flue.flue_loss,
        {
            "friction_factor": "0.04",
            "height": "6 m",
            "diameter": "15 cm",
            "loss_coefficient": "2.5",
            "density": "0.75 kg/m³",
            "velocity": "1.2 m/s",
        },
        "2.214 Pa",
        "0.01 %",
        _ROUNDED,
        FLUIDS,
        partial(_flue_loss, 0.04, 6.0, 0.15, 2.5, 0.75, 1.2),
    ),
    # One velocity head of standard air at 4005 ft/min (66.75 ft/s) is one inch of water.
    Check(
        _TOPIC,
        "one velocity head at 4,005 ft/min",
        flue.flue_loss,
        {
            "friction_factor": "0",
            "height": "1 m",
            "diameter": "15 cm",
            "loss_coefficient": "1",
            "density": "0.075 lb/ft³",
            "velocity": "66.75 ft/s",
        },
        "1 in w.c.",
        "0.3 %",
        "4005 is rounded",
        VELOCITY_PRESSURE,
    ),
    *(
        Check(
            _TOPIC,
            f"house at −{house} in. of water",
            flue.draught_left,
            {"stack_draught": "0.091 in w.c.", "flue_loss": "0.039 in w.c.", "depressurization": f"{house} in w.c."},
            theirs,
            "0.001 in w.c.",
            "they print three decimals",
            FAN_MAKER,
        )
        for house, theirs in ((0, "0.052 in w.c."), (0.1, "-0.048 in w.c."))
    ),
    # 29.2 − 2.2 − 4 = 23 Pa
    _hand(
        flue.draught_left,
        {"stack_draught": "29.2 Pa", "flue_loss": "2.2 Pa", "depressurization": "4 Pa"},
        "23 Pa",
        "29.2 Pa less 2.2 and 4",
    ),
    _hand(flue.least_draught, {"draught_left": "23 Pa", "draught_left_peak": "-4 Pa"}, "-4 Pa", "the peak's is less"),
    # 7 an hour × 16,000 ft³ ÷ 60
    _hand(
        flue.leakage_at_fifty,
        {"air_changes_at_fifty": "7 /h", "house_volume": "16000 ft³"},
        "1866.667 cfm",
        "7 air changes of 16,000 ft³",
    ),
    _hand(flue.air_drawn_out, {"fans": "300 cfm", "fire_flow": "20 cfm"}, "320 cfm", "hood and fire"),
    # A house that leaks 1570 cfm at 50 Pa leaks 1000 at 25 Pa.
    *(
        Check(
            _TOPIC,
            f"1,000 cfm from a house that leaks {leak} cfm at 50 Pa",
            flue.depressurization,
            {"drawn_out": "1000 cfm", "leakage_at_fifty": f"{leak} cfm", "leak_exponent": "0.65"},
            theirs,
            "0.6 %",
            "their factors have three digits",
            BLOWER_DOOR,
        )
        for leak, theirs in ((1570, "25 Pa"), (2850, "10 Pa"))
    ),
    Check(
        _TOPIC,
        "194 cfm from a house that leaks 1,000 cfm at 50 Pa",
        flue.depressurization,
        {"drawn_out": "194 cfm", "leakage_at_fifty": "1000 cfm", "leak_exponent": "0.65"},
        "4 Pa",
        "0.5 %",
        "their ratio has three digits",
        LEAKAGE_AREA,
    ),
    Check(
        _TOPIC,
        "400 cfm from a house that leaks 1,000 cfm at 50 Pa, 4 Pa allowed",
        flue.make_up_air,
        {"drawn_out": "400 cfm", "leakage_at_fifty": "1000 cfm", "limit": "4 Pa", "leak_exponent": "0.65"},
        "206 cfm",
        "0.5 %",
        "their ratio has three digits",
        LEAKAGE_AREA,
    ),
    Check(
        _TOPIC,
        "1,500 cfm from a house that leaks 2,850 cfm at 50 Pa, 10 Pa allowed",
        flue.make_up_air,
        {"drawn_out": "1500 cfm", "leakage_at_fifty": "2850 cfm", "limit": "10 Pa", "leak_exponent": "0.65"},
        "500 cfm",
        "0.5 %",
        "their factor has three digits",
        BLOWER_DOOR,
    ),
    # Leaks alone carry 194 cfm at 4 Pa.
    _hand(
        flue.make_up_air,
        {"drawn_out": "150 cfm", "leakage_at_fifty": "1000 cfm", "limit": "4 Pa", "leak_exponent": "0.65"},
        "0 cfm",
        "150 cfm, less than the leaks carry at 4 Pa",
        "0 m³/h",
    ),
    Check(
        _TOPIC,
        "room air of 20 °C at 40 %",
        flue.vapour_in_air,
        dict(_ROOM_AIR.given),
        "0.93556 kPa",
        "0.1 %",
        "psychrolib's own vapor curve differs by 0.05 %",
        PSYCHROLIB,
        partial(_vapour, 20.0, 0.4),
    ),
    Check(
        _TOPIC,
        "room air of 20 °C at 40 %, 84.3 kPa",
        flue.humidity_ratio,
        {"vapour": "935.6 Pa", "barometer": "84.3 kPa"},
        "0.0069793",
        "0.05 %",
        "their ratio of molar masses has six digits",
        PSYCHROLIB,
        partial(_humidity, 20.0, 0.4, 84300.0),
    ),
    # 0.06/2.016 + (0.2/0.8 + 0.006·5.91·2)/18.015
    _hand(
        flue.steam,
        {
            "hydrogen": "6 %",
            "moisture": "20 %",
            "humidity_ratio": "0.006",
            "least_air": "5.91",
            "air_ratio": "2",
        },
        "0.0475757",
        "kilomoles of steam from a kilogram of wood",
        "0.01 %",
    ),
    # 0.5/12.011 + 5.91·0.2314/31.998·(2/0.2095 − 1)
    _hand(
        flue.dry_gas,
        {"carbon": "50 %", "least_air": "5.91", "air_ratio": "2"},
        "0.406904",
        "kilomoles of dry gas from a kilogram of wood",
        "0.01 %",
    ),
    # 0.0475757/(0.0475757 + 0.406904) × 101.325
    _hand(
        flue.flue_vapour_pressure,
        {"steam": "0.0475757", "dry_gas": "0.406904", "barometer": "101.325 kPa"},
        "10.6069 kPa",
        "steam's share of the pressure",
        "0.01 %",
    ),
    *(_dew(moisture, ratio, "44 %", False, "101.325 kPa", theirs, "0.03 K") for moisture, ratio, theirs in _DRY_AIR),
    *(_dew(moisture, ratio, "43 %", False, "101.325 kPa", theirs, "0.1 F°") for moisture, ratio, theirs in _OTHER_WOOD),
    *(_dew("20 %", ratio, "44 %", True, "101.325 kPa", theirs, "0.03 K") for ratio, theirs in _HUMID_AIR),
    *(_dew("20 %", ratio, "44 %", False, "84.306 kPa", theirs, "0.03 K") for ratio, theirs in _AT_FIVE_THOUSAND),
    *(
        _hand(
            flue.least_return,
            {"maker_minimum": maker, "dew_point": dew, "dew_margin": "10 K", "tar_floor": "55 °C"},
            theirs,
            f"maker {maker}, dew point {dew}",
            "0.001 K",
        )
        for maker, dew, theirs in (
            ("60 °C", "47 °C", "60 °C"),
            ("40 °C", "57.5 °C", "67.5 °C"),
            ("40 °C", "40 °C", "55 °C"),
        )
    ),
]
