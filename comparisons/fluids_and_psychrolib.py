"""The air of the place: standard atmosphere by the library fluids, moist air by psychrolib."""

from functools import partial

from calc.physics import house, store, water
from calc.units import FOOT
from comparisons.check import At, Check, Published

FLUIDS = Published(
    "fluids",
    "U.S. Standard Atmosphere 1976",
    "2025",
    "version 1.3.1, ATMOSPHERE_1976",
    "independent library",
)
PSYCHROLIB = Published(
    "psychrolib",
    "ASHRAE Handbook, Fundamentals, chapter Psychrometrics, as coded",
    "2017",
    "version 2.5.0",
    "independent library",
)
ATMOSPHERE = Published(
    "NOAA, NASA and US Air Force", "U.S. Standard Atmosphere, 1976", "1976", "table I, pressure", "from memory"
)


def _fluids_pressure(feet: float) -> float:
    from fluids.atmosphere import ATMOSPHERE_1976

    return float(ATMOSPHERE_1976(feet * FOOT).P)


def _psychrolib_pressure(feet: float) -> float:
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    return float(psychrolib.GetStandardAtmPressure(feet * FOOT))


def _psychrolib_vapour(celsius: float, humidity: float) -> float:
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    return float(psychrolib.GetVapPresFromRelHum(celsius, humidity))


def _psychrolib_air(cubic_feet: float, changes: float, feet: float, fahrenheit: float) -> float:
    """Heat that air takes for each kelvin, with psychrolib's density and 0.2403 Btu/(lb·°F)."""
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    density = psychrolib.GetDryAirDensity((fahrenheit - 32) / 1.8, _psychrolib_pressure(feet))
    return float(cubic_feet * FOOT**3 * changes / 3600 * density * 0.2403 * 4186.8)


def _air_loss(cubic_feet: int, changes: float, feet: int, fahrenheit: int) -> dict[str, str | At]:
    return {
        "house_volume": f"{cubic_feet} ft³",
        "air_changes": f"{changes} /h",
        "site_pressure": At(water.barometer, {"altitude": f"{feet} ft"}),
        "indoor": f"{fahrenheit} °F",
    }


CHECKS = [
    *(
        Check(
            topic="Air pressure by altitude",
            where=f"{feet} ft",
            law=water.barometer,
            given={"altitude": f"{feet} ft"},
            theirs=f"{number} psia",
            within="0.03 %",
            because="the library turns height into geopotential height first, the formula does not",
            source=FLUIDS,
            recompute=partial(_fluids_pressure, feet),
        )
        for feet, number in ((0, "14.696"), (2000, "13.664"), (5000, "12.228"), (7500, "11.127"), (10000, "10.108"))
    ),
    *(
        Check(
            topic="Air pressure by altitude",
            where=f"{feet} ft",
            law=water.barometer,
            given={"altitude": f"{feet} ft"},
            theirs=f"{number} psia",
            within="0.02 %",
            because="the handbook's formula is the same with constants of five digits",
            source=PSYCHROLIB,
            recompute=partial(_psychrolib_pressure, feet),
        )
        for feet, number in ((3000, "13.171"), (8000, "10.916"))
    ),
    Check(
        topic="Air pressure by altitude",
        where="1000 m",
        law=water.barometer,
        given={"altitude": "1000 m"},
        theirs="89.875 kPa",
        within="0.02 %",
        because="the table counts geometric height, the formula geopotential height",
        source=ATMOSPHERE,
    ),
    *(
        Check(
            topic="Vapor pressure in room air",
            where=f"{celsius} °C, {humidity:.0%}",
            law=store.air_vapour,
            given={
                "relative_humidity": f"{humidity:.0%}",
                "saturation": At(water.vapour_pressure, {"temperature": f"{celsius} °C"}),
            },
            theirs=f"{number} kPa",
            within="0.1 %",
            because="the handbook's fit to saturation pressure differs from IAPWS-IF97 by less",
            source=PSYCHROLIB,
            recompute=partial(_psychrolib_vapour, celsius, humidity),
        )
        for celsius, humidity, number in ((20, 0.5, "1.1696"), (10, 0.8, "0.9826"))
    ),
    *(
        Check(
            topic="Heat taken by air change",
            where=f"{cubic_feet} ft³, {changes} an hour, {feet} ft, {fahrenheit} °F",
            law=house.air_change_conductance,
            given=_air_loss(cubic_feet, changes, feet, fahrenheit),
            theirs=f"{number} Btu/(h·°F)",
            within="0.1 %",
            because="heat capacity of air is 0.2403 here and 0.2402 there",
            source=PSYCHROLIB,
            recompute=partial(_psychrolib_air, cubic_feet, changes, feet, fahrenheit),
        )
        for cubic_feet, changes, feet, fahrenheit, number in (
            (16000, 0.5, 0, 70, "143.97"),
            (16000, 0.5, 5000, 70, "119.79"),
            (9000, 0.8, 3000, 60, "118.37"),
        )
    ),
]
