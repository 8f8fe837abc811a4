"""Steam, relief valves, open vents and flashing: iapws and CoolProp, state boiler rules, standards, and by hand."""

from functools import partial
from typing import Any

from calc.law import Law
from calc.physics import emitters, safety, water
from comparisons.check import At, Check, Published

IAPWS = Published("iapws", "Steam by IAPWS-IF97", "2025", "version 1.5.5", "independent library")
COOLPROP = Published("CoolProp", "Steam by IAPWS-95", "2025", "version 8.0.0", "independent library")
NEW_YORK = Published(
    "New York State",
    "12 NYCRR 4-5.3, Relief valves for low pressure hot water boilers",
    "2024",
    "(a): 10 % over the setting above 30 psi; lb/h of steam is Btu/h over 1000",
    "standard",
)
TABLE = Published(
    "By hand",
    "Relief of 100,000 and 150,000 Btu/h with steam by IAPWS-IF97",
    "2025",
    "lb/h at 0 psi, at 30 psi and at 33 psi gauge",
    "own arithmetic",
)
POLAND = Published(
    "Polish Committee for Standardization",
    "PN-91/B-02413, Open water heating systems",
    "1991",
    "safety pipe, from memory",
    "from memory",
)
BRITAIN = Published(
    "Common practice in Britain",
    "Open vent of a solid fuel boiler in 28 mm tube, bore 26.2 mm",
    "2000",
    "from memory, up to about 35 kW",
    "from memory",
)
HAND = Published(
    "By hand", "Worked by hand for this project", "2025", "the sum is written out in the check", "own arithmetic"
)

POUND, GALLON, FOOT, BTU = 0.45359237, 3.785411784e-3, 0.3048, 1055.05585262


def _saturated(fahrenheit: float, quality: float) -> Any:
    import iapws

    return iapws.IAPWS97(T=(fahrenheit + 459.67) * 5 / 9, x=quality)


def _at_pressure(kilopascals: float, quality: float) -> Any:
    import iapws

    return iapws.IAPWS97(P=kilopascals / 1e3, x=quality)


def _latent(celsius: float) -> float:
    fahrenheit = celsius * 9 / 5 + 32
    return float(_saturated(fahrenheit, 1).h - _saturated(fahrenheit, 0).h) * 1e3


def _latent_95(celsius: float) -> float:
    from CoolProp.CoolProp import PropsSI

    return float(sum(sign * PropsSI("H", "T", celsius + 273.15, "Q", q, "Water") for sign, q in ((1, 1), (-1, 0))))


def _steam_95(kilopascals: float) -> float:
    from CoolProp.CoolProp import PropsSI

    return 1 / float(PropsSI("D", "P", kilopascals * 1e3, "Q", 1, "Water"))


def _steam(kilopascals: float) -> float:
    return float(_at_pressure(kilopascals, 1).v)


def _flash(fahrenheit: float, psia: float) -> float:
    kilopascals = psia * 6.894757293168
    water_, steam = _at_pressure(kilopascals, 0), _at_pressure(kilopascals, 1)
    return float((_saturated(fahrenheit, 0).h - water_.h) / (steam.h - water_.h))


def _flash_95(celsius: float) -> float:
    from CoolProp.CoolProp import PropsSI

    water_, steam = (PropsSI("H", "P", 101325, "Q", quality, "Water") for quality in (0, 1))
    return float((PropsSI("H", "T", celsius + 273.15, "Q", 0, "Water") - water_) / (steam - water_))


def _burst_mass(gallons: float, fahrenheit: float) -> float:
    return gallons * GALLON * float(_saturated(fahrenheit, 0).rho) * _flash(fahrenheit, 101.325 / 6.894757293168)


def _burst_volume(gallons: float, fahrenheit: float) -> float:
    return _burst_mass(gallons, fahrenheit) * _steam(101.325)


def _vent_speed(kilowatts: float, bore_mm: float) -> float:
    from math import pi

    flow = kilowatts * 1e3 / _latent(99.974) * _steam(101.325)
    return flow / (pi / 4 * (bore_mm / 1e3) ** 2)


def _hand(topic: str, where: str, law: Law, given: dict[str, str | At], theirs: str) -> Check:
    return Check(topic, where, law, given, theirs, "0.05 %", "a sum by hand, rounded as printed", HAND)


CHECKS: list[Check] = [
    Check(
        topic="Heat of boiling",
        where=f"{celsius} °C",
        law=safety.latent_heat,
        given={"boiling": f"{celsius} °C"},
        theirs=f"{theirs} MJ/kg",
        within="0.02 %",
        because="our fit stays within 0.01 % of the standard",
        source=source,
        recompute=partial(library, celsius),
    )
    for celsius, theirs, source, library in (
        (60, "2.35769", IAPWS, _latent),
        (80, "2.30807", IAPWS, _latent),
        (95, "2.26952", COOLPROP, _latent_95),
        (100, "2.25647", IAPWS, _latent),
        (130, "2.17370", COOLPROP, _latent_95),
        (160, "2.08186", IAPWS, _latent),
    )
]
CHECKS += [
    Check(
        topic="Volume of steam",
        where=f"{kilopascals} kPa",
        law=safety.steam_volume,
        given={"pressure": f"{kilopascals} kPa"},
        theirs=f"{theirs} m³/kg",
        within="0.3 %",
        because="one power of the pressure stands for the steam table",
        source=source,
        recompute=partial(library, kilopascals),
    )
    for kilopascals, theirs, source, library in (
        (75, "2.2171", IAPWS, _steam),
        (101.325, "1.6733", IAPWS, _steam),
        (150, "1.1593", COOLPROP, _steam_95),
        (400, "0.46238", COOLPROP, _steam_95),
    )
]

# Contested: one set of check values takes the heat of boiling at the setting, the other at 10 % over it. We take the
# second: the pressure at which the valve passes its full flow, and 0.3 % more steam. State rules say 1000 Btu a pound,
# which asks for 3 to 7 % less steam; a valve that is marked in Btu/h has the same thousand in its mark.
CHECKS += [
    Check(
        topic="Steam a relief valve must pass",
        where=where,
        law=safety.relief_steam,
        given={
            "peak_output": f"{btu} Btu/h",
            "latent_heat": At(
                safety.latent_heat,
                {"boiling": At(water.boiling_temperature, {"pressure": f"{psia} psia"})},
            ),
        },
        theirs=f"{theirs} lb/h",
        within="0.05 %",
        because="printed to four or five figures",
        source=TABLE,
    )
    for where, btu, psia, theirs in (
        ("150,000 Btu/h at 0 psi", 150000, 14.696, "154.62"),
        ("150,000 Btu/h at 30 psi", 150000, 44.696, "161.46"),
        ("100,000 Btu/h at 1.1 × 15 psi", 100000, 31.196, "105.97"),
        ("100,000 Btu/h at 1.1 × 50 psi", 100000, 69.696, "110.10"),
    )
]
CHECKS += [
    Check(
        topic="Steam a relief valve must pass",
        where="100,000 Btu/h over 1000 Btu a pound, against the heat of boiling at 1.1 × 30 psi",
        law=safety.relief_steam,
        given={
            "peak_output": "100000 Btu/h",
            "latent_heat": At(
                safety.latent_heat,
                {"boiling": At(water.boiling_temperature, {"pressure": "47.696 psia"})},
            ),
        },
        theirs="100 lb/h",
        within="10 %",
        because="the rule's 1000 is given to one digit; ours asks for more steam",
        source=NEW_YORK,
    ),
    Check(
        topic="Pressure at which a relief valve passes its flow",
        where="set to 50 psi, 10 % over, at 14.7 psia",
        law=safety.relieving_pressure,
        given={"relief_setting": "50 psi", "barometer": "14.7 psia"},
        theirs="69.7 psia",
        within="0.01 %",
        because="exact arithmetic, no rounding",
        source=NEW_YORK,
    ),
    Check(
        topic="Pressure at which a relief valve passes its flow",
        where="set to 30 psi: 33 psi gauge and 14.696 psia",
        law=safety.relieving_pressure,
        given={"relief_setting": "30 psi", "barometer": "14.696 psia"},
        theirs="47.696 psia",
        within="0.01 %",
        because="exact arithmetic, no rounding",
        source=TABLE,
    ),
]

# The vent. Contested: the Polish rule, written for open systems, asks for more than the European one from 18 kW up and
# never less than 25 mm. We follow the larger. All of them are from memory: ask the local code.
CHECKS += [
    Check(
        topic="Bore of an open vent",
        where=where,
        law=safety.open_vent_bore,
        given={"peak_output": f"{kilowatts} kW"},
        theirs=f"{theirs} mm",
        within=within,
        because=because,
        source=source,
    )
    for where, kilowatts, theirs, within, because, source in (
        ("8.08 mm × ∛64", 64, "32.32", "0.01 %", "exact arithmetic with the rule's number", POLAND),
        ("25 mm at least", 12, "25", "0.01 %", "the rule's least bore", POLAND),
        ("28 mm tube", 35, "26.2", "2 %", "the next trade size of tube", BRITAIN),
    )
]
CHECKS += [
    Check(
        topic="Speed of steam in an open vent",
        where="25 kW of steam at sea level in a bore of 26 mm",
        law=safety.vent_steam_velocity,
        given={
            "relief_steam": At(
                safety.relief_steam,
                {"peak_output": "25 kW", "latent_heat": At(safety.latent_heat, {"boiling": "99.974 °C"})},
            ),
            "steam_volume": At(safety.steam_volume, {"pressure": "101.325 kPa"}),
            "bore": "26 mm",
        },
        theirs="34.916 m/s",
        within="0.3 %",
        because="our volume of steam is one power of the pressure",
        source=IAPWS,
        recompute=partial(_vent_speed, 25, 26),
    ),
    _hand(
        "Speed of steam in an open vent",
        "100 lb/h × 26.8 ft³/lb = 0.74444 ft³/s in 0.7854 in² = 0.0054542 ft²",
        safety.vent_steam_velocity,
        {"relief_steam": "100 lb/h", "steam_volume": "26.8 ft³/lb", "bore": "1 in"},
        "136.49 ft/s",
    ),
]


def _flashing(hot: str, pressure: str) -> dict[str, str | At]:
    boiling = At(water.boiling_temperature, {"pressure": pressure})
    return {
        "hot": hot,
        "boiling": boiling,
        "specific_heat": At(
            water.specific_heat, {"temperature": At(emitters.mean_of, {"supply": hot, "return_water": boiling})}
        ),
        "latent_heat": At(safety.latent_heat, {"boiling": boiling}),
    }


CHECKS += [
    Check(
        topic="Water that flashes to steam",
        where=f"{fahrenheit} °F let go at {psia} psia",
        law=safety.flash_fraction,
        given=_flashing(f"{fahrenheit} °F", f"{psia} psia"),
        theirs=f"{theirs} %",
        within="0.3 %",
        because="a mean specific heat stands for the difference of enthalpies",
        source=IAPWS,
        recompute=partial(_flash, fahrenheit, psia),
    )
    for fahrenheit, psia, theirs in (
        (240, 14.696, "2.9212"),
        (250, 14.696, "3.9670"),
        (230, 12.228, "2.8086"),
        (215, 12.228, "1.2565"),
        (210, 10.916, "1.3019"),
    )
]
CHECKS += [
    Check(
        topic="Water that flashes to steam",
        where=f"{celsius} °C let go at 101.325 kPa",
        law=safety.flash_fraction,
        given=_flashing(f"{celsius} °C", "101.325 kPa"),
        theirs=f"{theirs} %",
        within="0.3 %",
        because="a mean specific heat stands for the difference of enthalpies",
        source=COOLPROP,
        recompute=partial(_flash_95, celsius),
    )
    for celsius, theirs in ((105, "0.94024"), (120, "3.7560"), (130, "5.6427"))
]
_BURST = At(safety.flash_fraction, _flashing("250 °F", "101.325 kPa"))
_BURST_STEAM: dict[str, str | At] = {
    "volume": "500 gal",
    "density": At(water.density, {"temperature": "250 °F"}),
    "flash_fraction": _BURST,
}
CHECKS += [
    Check(
        topic="Steam from a tank that bursts",
        where="500 gal of 250 °F water",
        law=safety.flash_steam,
        given=_BURST_STEAM,
        theirs="155.97 lb",
        within="0.3 %",
        because="a mean specific heat stands for the difference of enthalpies",
        source=IAPWS,
        recompute=partial(_burst_mass, 500, 250),
    ),
    Check(
        topic="Space that this steam takes",
        where="500 gal of 250 °F water",
        law=safety.flash_steam_volume,
        given={
            "flash_steam": At(safety.flash_steam, _BURST_STEAM),
            "steam_volume": At(safety.steam_volume, {"pressure": "101.325 kPa"}),
        },
        theirs="118.37 m³",
        within="1 %",
        because="a mean specific heat, and one power of the pressure for the volume of steam",
        source=IAPWS,
        recompute=partial(_burst_volume, 500, 250),
    ),
    _hand(
        "Steam from a tank that bursts",
        "2 m³ × 943 kg/m³ × 0.0375",
        safety.flash_steam,
        {"volume": "2 m³", "density": "943 kg/m³", "flash_fraction": "3.75 %"},
        "70.725 kg",
    ),
    _hand(
        "Space that this steam takes",
        "70.725 kg × 1.673 m³/kg",
        safety.flash_steam_volume,
        {"flash_steam": "70.725 kg", "steam_volume": "1.673 m³/kg"},
        "118.323 m³",
    ),
    _hand(
        "Water that flashes to steam",
        "210 °F water at sea level is not over boiling: exactly none",
        safety.flash_fraction,
        {"hot": "210 °F", "boiling": "211.95 °F", "specific_heat": "4215 J/(kg·K)", "latent_heat": "2.2565 MJ/kg"},
        "0 %",
    ),
]
