"""Water by CoolProp: the scientific formulation IAPWS-95, made independently of IAPWS-IF97."""

from functools import partial

from calc.physics import store, water
from calc.units import FAHRENHEIT_DEGREE, GALLON
from comparisons.check import At, Check, Published

COOLPROP = Published(
    "CoolProp",
    "IAPWS-95, the scientific formulation for water",
    "2025",
    "version 8.0.0",
    "independent library",
)


def _kelvin(fahrenheit: float) -> float:
    return (fahrenheit + 459.67) * FAHRENHEIT_DEGREE


def _property(name: str, first: str, first_value: float, second: str, second_value: float) -> float:
    from CoolProp.CoolProp import PropsSI

    return float(PropsSI(name, first, first_value, second, second_value, "Water"))


def _heat(gallons: float, low: float, top: float) -> float:
    """Heat of a tank that stays full, at 0.6 MPa."""
    from scipy.integrate import quad

    def content(at: float) -> float:
        return _property("D", "T", at, "P", 0.6e6) * _property("C", "T", at, "P", 0.6e6)

    return gallons * GALLON * float(quad(content, _kelvin(low), _kelvin(top))[0])


def _boiling(pressure: float) -> float:
    return _property("T", "P", pressure, "Q", 0)


def _vapour_pressure(fahrenheit: float) -> float:
    return _property("P", "T", _kelvin(fahrenheit), "Q", 0)


def _content(low: str, top: str) -> At:
    return At(water.mean_volume_heat_content, {"low": low, "top": top})


CHECKS = [
    *(
        Check(
            topic="Density of water",
            where=f"{celsius} °C, 0.6 MPa",
            law=water.density,
            given={"temperature": f"{celsius} °C"},
            theirs=f"{number} kg/m³",
            within="0.012 %",
            because="a fit within 0.01 %, and the two IAPWS formulations differ by 0.002 %",
            source=COOLPROP,
            recompute=partial(_property, "D", "T", celsius + 273.15, "P", 0.6e6),
        )
        for celsius, number in ((15, "999.33"), (70, "978.00"), (130, "935.01"))
    ),
    *(
        Check(
            topic="Heat capacity of water",
            where=f"{celsius} °C, 0.6 MPa",
            law=water.specific_heat,
            given={"temperature": f"{celsius} °C"},
            theirs=f"{number} kJ/(kg·K)",
            within="0.13 %",
            because="a fit within 0.05 %, and the two IAPWS formulations differ by 0.08 %",
            source=COOLPROP,
            recompute=partial(_property, "C", "T", celsius + 273.15, "P", 0.6e6),
        )
        for celsius, number in ((10, "4.1933"), (60, "4.1838"), (140, "4.2819"))
    ),
    *(
        Check(
            topic="Usable heat of a full store",
            where=f"{gallons} gal, {top} to {low} °F",
            law=store.usable_heat,
            given={
                "volume": f"{gallons} gal",
                "heat_content": _content(f"{low} °F", f"{top} °F"),
                "top": f"{top} °F",
                "low": f"{low} °F",
            },
            theirs=f"{number} kBtu",
            within="0.06 %",
            because="the two IAPWS formulations differ by 0.05 % here; “8.33 lb a gallon” is 1.7 % high",
            source=COOLPROP,
            recompute=partial(_heat, gallons, low, top),
        )
        for gallons, top, low, number in (
            (500, 180, 110, "286.66"),
            (500, 180, 120, "245.43"),
            (500, 190, 140, "203.78"),
            (1000, 180, 110, "573.32"),
            (750, 185, 130, "336.86"),
            (500, 200, 120, "326.42"),
            (120, 160, 120, "39.36"),
        )
    ),
    *(
        Check(
            topic="Boiling temperature by altitude and gauge",
            where=f"{feet} ft, {gauge} psi on the gauge",
            law=water.boiling_temperature,
            given={
                "pressure": At(
                    water.absolute_pressure,
                    {"barometer": At(water.barometer, {"altitude": f"{feet} ft"}), "gauge": f"{gauge} psi"},
                )
            },
            theirs=f"{number} °F",
            within="0.1 F°",
            because="the standard atmosphere's own digits; weather alone moves it by 1 F°",
            source=COOLPROP,
            recompute=partial(_boiling, (barometer + gauge) * 6894.757293168),
        )
        for feet, gauge, barometer, number in (
            (0, 0, 14.696, "211.95"),
            (2000, 0, 13.664, "208.31"),
            (5000, 0, 12.228, "202.83"),
            (5000, 12, 12.228, "238.30"),
            (5000, 30, 12.228, "270.51"),
            (7500, 15, 11.127, "242.49"),
            (10000, 0, 10.108, "193.67"),
            (10000, 30, 10.108, "267.38"),
        )
    ),
    *(
        Check(
            topic="Vapor pressure of water",
            where=f"{fahrenheit} °F",
            law=water.vapour_pressure,
            given={"temperature": f"{fahrenheit} °F"},
            theirs=f"{number} psia",
            within="0.1 %",
            because="the two IAPWS formulations differ by less than that, and four digits are printed",
            source=COOLPROP,
            recompute=partial(_vapour_pressure, fahrenheit),
        )
        for fahrenheit, number in ((70, "0.3633"), (140, "2.893"), (180, "7.519"), (250, "29.84"))
    ),
    Check(
        topic="Absolute pressure where a gauge reads 12 psi",
        where="water that boils at 243.69 °F at sea level",
        law=water.absolute_pressure,
        given={"barometer": "14.696 psia", "gauge": "12 psi"},
        theirs="26.70 psia",
        within="0.1 %",
        because="the boiling temperature was printed to a hundredth of a degree",
        source=COOLPROP,
        recompute=partial(_vapour_pressure, 243.69),
    ),
    Check(
        topic="How far a store is below boiling",
        where="180 °F, open, at 5,000 ft (12.228 psia)",
        law=water.boiling_margin,
        given={"boiling": At(water.boiling_temperature, {"pressure": "12.228 psia"}), "temperature": "180 °F"},
        theirs="22.83 F°",
        within="0.02 F°",
        because="the two IAPWS formulations agree to 0.01 °F",
        source=COOLPROP,
        recompute=lambda: _boiling(12.228 * 6894.757293168) - _kelvin(180),
    ),
    Check(
        topic="Weight of a full tank",
        where="500 gal of water at 60 °F in a tank of 650 lb",
        law=store.full_weight,
        given={"volume": "500 gal", "density": At(water.density, {"temperature": "60 °F"}), "empty_weight": "650 lb"},
        theirs="4819 lb",
        within="0.03 %",
        because="printed to the pound",
        source=COOLPROP,
        recompute=lambda: 500 * GALLON * _property("D", "T", _kelvin(60), "P", 0.6e6) + 650 * 0.45359237,
    ),
]
