"""Units: every row agrees with pint, and every text a person might type is read rightly or refused in a sentence."""

import math

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.units import (
    KINDS,
    SYSTEMS,
    UNITS,
    DryBasis,
    Unit,
    UnitError,
    grouped,
    in_a_sum,
    read_quantity,
    round_to,
    show,
    shown_unit,
    unit_named,
    units_of,
    with_unit,
)

PINT = pint.UnitRegistry()
PINT.define("money = [money]")

# The table's spelling of a unit, written as an expression that pint reads; written by hand, not derived.
EXPRESSIONS = {
    "°F": "degF", "°C": "degC", "K": "kelvin", "F°": "delta_degF", "Btu/h": "Btu_it/hour", "kBtu/h": "1000 * Btu_it/hour",
    "kW": "kilowatt", "W": "watt", "Btu": "Btu_it", "kBtu": "1000 * Btu_it", "MMBtu": "1e6 * Btu_it",
    "therm": "1e5 * Btu_it", "kWh": "kilowatt*hour", "Wh": "watt*hour", "MWh": "megawatt*hour", "MJ": "megajoule",
    "GJ": "gigajoule", "J": "joule", "gal": "gallon", "imp gal": "imperial_gallon", "imp gal/min": "imperial_gallon/minute", "COP": "dimensionless", "L": "liter", "m³": "meter**3", "ft³": "foot**3",
    "cord": "128 * foot**3", "stère": "meter**3", "gal/min": "gallon/minute", "gal/h": "gallon/hour",
    "L/min": "liter/minute", "L/s": "liter/second", "L/h": "liter/hour", "m³/h": "meter**3/hour", "m³/s": "meter**3/second",
    "cfm": "foot**3/minute", "ft": "foot", "in": "inch", "m": "meter", "cm": "centimeter", "mm": "millimeter",
    "yd": "yard", "km": "kilometer", "mi": "mile", "ft²": "foot**2", "m²": "meter**2", "in²": "inch**2", "cm²": "centimeter**2",
    "MMBtu/h": "1e6 * Btu_it/hour", "psi": "pound * standard_gravity / inch**2", "bar": "bar", "mbar": "millibar", "kPa": "kilopascal", "Pa": "pascal",
    "psia": "pound * standard_gravity / inch**2", "inHg": "inHg", "in w.c.": "inch * water * standard_gravity",
    "h": "hour", "min": "minute", "s": "second", "days": "day", "months": "365 * day / 12", "years": "365 * day",
    "lb": "pound", "kg": "kilogram", "ton": "2000 * pound", "t": "1000 * kilogram", "g": "gram", "lb/h": "pound/hour",
    "kg/h": "kilogram/hour", "kg/s": "kilogram/second", "$": "money", "€": "money", "$/gal": "money/gallon",
    "$/cord": "money/(128 * foot**3)", "€/L": "money/liter", "€/m³": "money/meter**3", "$/MMBtu": "money/(1e6 * Btu_it)",
    "$/therm": "money/(1e5 * Btu_it)", "$/kWh": "money/(kilowatt*hour)", "€/kWh": "money/(kilowatt*hour)",
    "€/MWh": "money/(megawatt*hour)", "$/ton": "money/(2000 * pound)", "$/lb": "money/pound", "€/t": "money/(1000 * kilogram)",
    "€/kg": "money/kilogram", "$/h": "money/hour", "€/h": "money/hour", "%": "percent", "°F·day": "delta_degF*day",
    "K·day": "kelvin*day", "": "dimensionless", "a day": "1/day", "an hour": "1/hour", "a week": "1/week", "/h": "1/hour",
    "Btu/(h·ft)": "Btu_it/hour/foot", "W/m": "watt/meter", "Btu/(h·ft²)": "Btu_it/hour/foot**2", "W/m²": "watt/meter**2",
    "Btu/(h·°F)": "Btu_it/hour/delta_degF", "W/K": "watt/kelvin", "Btu/(h·ft²·°F)": "Btu_it/hour/foot**2/delta_degF",
    "W/(m²·K)": "watt/meter**2/kelvin", "Btu/(h·ft·°F)": "Btu_it/hour/foot/delta_degF", "W/(m·K)": "watt/meter/kelvin",
    "ft²·°F·h/Btu": "foot**2*delta_degF*hour/Btu_it", "m²·K/W": "meter**2*kelvin/watt",
    "Btu·in/(h·ft²·°F)": "Btu_it*inch/hour/foot**2/delta_degF", "lb/ft³": "pound/foot**3", "lb/gal": "pound/gallon",
    "kg/m³": "kilogram/meter**3", "kg/L": "kilogram/liter", "ft/s": "foot/second", "m/s": "meter/second",
    "Btu/°F": "Btu_it/delta_degF", "kWh/K": "kilowatt*hour/kelvin", "J/K": "joule/kelvin",
    "Btu/(lb·°F)": "Btu_it/pound/delta_degF", "kJ/(kg·K)": "kilojoule/kilogram/kelvin", "J/(kg·K)": "joule/kilogram/kelvin",
    "Btu/(gal·°F)": "Btu_it/gallon/delta_degF", "Wh/(L·K)": "watt*hour/liter/kelvin", "J/(m³·K)": "joule/meter**3/kelvin",
    "Btu/lb": "Btu_it/pound", "MMBtu/ton": "1e6 * Btu_it/(2000 * pound)", "kWh/kg": "kilowatt*hour/kilogram",
    "MJ/kg": "megajoule/kilogram", "Btu/gal": "Btu_it/gallon", "kBtu/gal": "1e3 * Btu_it/gallon", "Btu/cord": "Btu_it/(128 * foot**3)", "MMBtu/cord": "1e6 * Btu_it/(128 * foot**3)",
    "kWh/L": "kilowatt*hour/liter", "kWh/m³": "kilowatt*hour/meter**3", "Btu/ft³": "Btu_it/foot**3",
    "gal/(kBtu/h)": "gallon/(1000 * Btu_it/hour)", "L/kW": "liter/kilowatt", "gal/(1000 ft²)": "gallon/(1000 * foot**2)",
    "L/m²": "liter/meter**2", "lb/ft²": "pound * standard_gravity / foot**2", "cP": "centipoise",
    "mPa·s": "millipascal*second", "ft³/lb": "foot**3/pound", "m³/kg": "meter**3/kilogram",
    "psi/100 ft": "pound * standard_gravity / inch**2 / (100 * foot)", "Pa/m": "pascal/meter", "1/°F": "1/delta_degF",
    "1/K": "1/kelvin", "h/MMBtu": "hour/(1e6 * Btu_it)", "h/kWh": "hour/(kilowatt*hour)",
    "ft·°F·h/Btu": "foot*delta_degF*hour/Btu_it", "m·K/W": "meter*kelvin/watt",
    "Btu/(h·gpm·°F)": "Btu_it/hour/(gallon/minute)/delta_degF", "F°/h": "delta_degF/hour", "K/h": "kelvin/hour",
    "K/s": "kelvin/second", "Btu/(ft²·°F)": "Btu_it/foot**2/delta_degF", "Wh/(m²·K)": "watt*hour/meter**2/kelvin",
    "J/(m²·K)": "joule/meter**2/kelvin", "J/kg": "joule/kilogram", "J/m³": "joule/meter**3", "m³/W": "meter**3/watt",
    "m³/m²": "meter", "Pa·s": "pascal*second", "s/J": "second/joule", "/s": "1/second",
    "€/J": "money/joule", "€/s": "money/second", "kWh/m²": "kilowatt*hour/meter**2", "Btu/ft²": "Btu_it/foot**2", "kBtu/ft²": "1000 * Btu_it/foot**2",
    "MJ/m²": "megajoule/meter**2", "J/m²": "joule/meter**2", "W/(m²·K²)": "watt/meter**2/kelvin**2",
    "Btu/(h·ft²·°F²)": "Btu_it/hour/foot**2/delta_degF**2", "mg/L": "milligram/liter", "gpg": "grain/gallon",
    "°dH": "10 * milligram/liter * 100.0869 / 56.0774", "°f": "10 * milligram/liter",
    "°e": "grain/imperial_gallon", "mmol/L": "millimole/liter * 100.0869 * gram/mole",
    "gal/100 gal": "gallon/(100 * gallon)", "L/100 L": "liter/(100 * liter)", "mL/L": "milliliter/liter",
    "oz/gal": "fluid_ounce/gallon", "L/L": "dimensionless",
}  # fmt: skip
PINT.define("water = 1000 * kilogram / meter**3")  # the conventional inch of water


@pytest.mark.parametrize("unit", UNITS, ids=lambda unit: f"{unit.kind}: {unit.text}")
def test_every_row_agrees_with_pint(unit: Unit) -> None:
    if isinstance(unit, DryBasis):
        # 25 % of the dry weight is 20 % of the whole, 100 % is half: weight of water over weight of all.
        assert unit.to_si(25) == pytest.approx(0.2)
        assert unit.to_si(100) == pytest.approx(0.5)
        assert unit.from_si(0.2) == pytest.approx(25)
        return
    expression = EXPRESSIONS[unit.text]
    si = KINDS[unit.kind].si
    if unit.kind == "temperature":
        assert unit.to_si(37.0) == pytest.approx(PINT.Quantity(37.0, expression).to("kelvin").magnitude, rel=1e-9)
    else:
        measured = PINT.parse_expression(expression)
        wanted = si.replace("m²", "m**2").replace("m³", "m**3").replace("·", "*") if si != "1" else "dimensionless"
        there = measured.to(PINT.parse_expression(wanted).units) if hasattr(measured, "to") else PINT.Quantity(measured)
        assert unit.to_si(1.0) == pytest.approx(there.magnitude, rel=1e-9)
    assert unit.from_si(unit.to_si(12.5)) == pytest.approx(12.5, rel=1e-12)


@pytest.mark.parametrize("unit", UNITS, ids=lambda unit: f"{unit.kind}: {unit.text}")
def test_every_spelling_reads_back(unit: Unit) -> None:
    for spelling in (unit.text, unit.ascii, *unit.spellings):
        assert unit_named(spelling, unit.kind) is unit
    assert unit.ascii.isascii()


@pytest.mark.parametrize("kind", KINDS.values(), ids=lambda kind: kind.name)
def test_every_kind_has_a_unit_for_each_system(kind) -> None:  # type: ignore[no-untyped-def]
    if kind.name != "choice":
        for system in SYSTEMS:
            assert shown_unit(kind.name, system) in units_of(kind.name)


@pytest.mark.parametrize("kind", sorted(KINDS.keys() - {"choice"}))
def test_every_kind_has_its_si_unit_in_the_table(kind: str) -> None:
    assert any(unit.factor == 1 and unit.offset == 0 for unit in units_of(kind)), "sums fall back to it"


READ = [
    ("500 gal", "volume", "us", 500 * 3.785411784e-3),
    ("500", "volume", "us", 500 * 3.785411784e-3),
    ("500", "volume", "si", 0.5),
    ("  1,234 gal ", "volume", "us", 1234 * 3.785411784e-3),
    ("1,5", "volume", "us", 1.5 * 3.785411784e-3),
    ("0,500 m3", "volume", "us", 0.5),
    ("1,234.5 L", "volume", "us", 1.2345),
    ("1.234,5 L", "volume", "us", 1.2345),
    ("30 000 L", "volume", "si", 30.0),
    ("1,234,567 L", "volume", "si", 1234.567),
    ("3/4 in", "length", "us", 0.75 * 0.0254),
    ("1½ in", "length", "us", 1.5 * 0.0254),
    ("1-1/4 in", "length", "us", 1.25 * 0.0254),
    ('1 1/4"', "length", "us", 1.25 * 0.0254),
    ("−5 °F", "temperature", "us", (-5 + 459.67) * 5 / 9),
    ("180ºF", "temperature", "us", (180 + 459.67) * 5 / 9),
    ("180F", "temperature", "si", (180 + 459.67) * 5 / 9),
    ("82 °C", "temperature", "us", 355.15),
    ("20 °F", "temperature_difference", "us", 20 * 5 / 9),
    ("11.1 °C", "temperature_difference", "us", 11.1),
    ("٣٠ L", "volume", "us", 0.030),
    ("５００ L", "volume", "us", 0.5),
    ("30,000 BTU per hour", "power", "us", 30000 * 1055.05585262 / 3600),
    ("30 kBtu/h", "power", "us", 30000 * 1055.05585262 / 3600),
    ("1e3 W", "power", "us", 1000.0),
    ("82 %", "fraction", "us", 0.82),
    ("82", "fraction", "us", 0.82),
    ("0.82", "fraction", "us", 0.82),
    ("1/5", "fraction", "us", 0.2),
    ("1/5 %", "fraction", "us", 0.002),
    ("20 per cent", "fraction", "us", 0.2),
    ("–5 °F", "temperature", "us", (-5 + 459.67) * 5 / 9),
    ("R-19", "thermal_resistance", "us", 19 * 0.17611018368230585),
    ("r19", "thermal_resistance", "us", 19 * 0.17611018368230585),
    ("7000 °F-days", "degree_days", "us", 7000 * 5 / 9),
    ("4,000 K-days", "degree_days", "us", 4000.0),
    ("0.12 MMBtu/h", "power", "us", 120000 * 1055.05585262 / 3600),
    ("800 mbar", "pressure_gauge", "si", 80000.0),
    ("12 psi gauge", "pressure_gauge", "us", 12 * 6894.757293168),
    ("$300", "money", "us", 300.0),
    ("$3.80", "price_per_volume", "us", 3.80 / 3.785411784e-3),
    ("13 R", "thermal_resistance", "us", 13 * 0.17611018368230585),
    ("5 t", "mass", "us", 5000.0),
    ("5 ton", "mass", "us", 5 * 2000 * 0.45359237),
    ("6 cords", "volume", "us", 6 * 128 * 0.3048**3),
]


@pytest.mark.parametrize(("text", "kind", "system", "si"), READ, ids=[f"{row[0]} ({row[1]}, {row[2]})" for row in READ])
def test_read_rightly(text: str, kind: str, system, si: float) -> None:  # type: ignore[no-untyped-def]
    quantity = read_quantity(text, kind, shown_unit(kind, system), system)
    assert quantity.si == pytest.approx(si, rel=1e-12)
    again = read_quantity(quantity.link_text(), kind, shown_unit(kind, "us"), "us")
    assert again.si == quantity.si, "the form in links must mean the same"


REFUSED = [
    ("", "number"), ("about 500", "number"), ("NaN", "number"), ("inf", "number"), ("12 apples", "unit"), ("1e400", "too large"),
    ("9**9**9 m", "unit"), ("10²", "power"), ("500-600 gal", "unit"), ("1,2,3", "mixed up"), ("1.2.3,4,5", "mixed up"), ("1.234,5,6", "mixed up"),
    ("1e308 cords", "too large"),
    ("1e120", "too large"),
    ("5 kW", "unit"), ("<b>5</b>", "number"), ("5 <script>alert(1)</script>", "unit"), ("5\x00", "character"),
    ("5\u202egal", "character"), ("5" * 10_000, "too long"), ("1/0", "fraction"), ("5..4", "mixed up"), ("1,5 apples", "unit"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "word"), REFUSED, ids=[repr(row[0][:20]) for row in REFUSED])
def test_refused_in_a_sentence(text: str, word: str) -> None:
    with pytest.raises(UnitError) as refused:
        read_quantity(text, "volume", shown_unit("volume", "us"), "us")
    assert word in refused.value.reason
    assert len(refused.value.reason) < 200


def test_degrees_without_a_scale_are_refused() -> None:
    for text in ("180º", "180 degrees", "180°"):
        with pytest.raises(UnitError, match="scale"):
            read_quantity(text, "temperature", shown_unit("temperature", "us"), "us")


def test_one_comma_before_three_digits_is_asked_about_in_si() -> None:
    with pytest.raises(UnitError, match=r"1234 or 1\.234"):
        read_quantity("1,234", "volume", shown_unit("volume", "si"), "si")


@given(st.text(max_size=60), st.sampled_from(sorted(KINDS.keys() - {"choice"})), st.sampled_from(SYSTEMS))
def test_no_text_breaks_the_reader(text: str, kind: str, system) -> None:  # type: ignore[no-untyped-def]
    try:
        quantity = read_quantity(text, kind, shown_unit(kind, system), system)
    except UnitError:
        return
    assert math.isfinite(quantity.si)


@given(st.floats(min_value=1e-6, max_value=1e12), st.integers(min_value=1, max_value=12))
def test_rounding_keeps_its_figures(number: float, figures: int) -> None:
    digits = round_to(number, figures)
    assert "e" not in digits
    assert float(digits) == pytest.approx(number, rel=0.5000001 * 10.0 ** (1 - figures))


def test_numbers_as_readers_see_them() -> None:
    energy, temperature = shown_unit("energy", "us"), shown_unit("temperature", "us")
    assert show(286_655 * 1055.05585262, energy, "us") == "287,000\u00a0Btu"
    assert show((-5 + 459.67) * 5 / 9, temperature, "us") == "\u22125\u00a0°F"
    assert show(1e9, shown_unit("energy", "si"), "si") == "278\u00a0kWh"
    assert grouped("12345.6", "si") == "12\u202f345.6"
    assert grouped("-1234", "us") == "\u22121,234"
    assert show(0.0, energy, "us") == "0\u00a0Btu"


@pytest.mark.parametrize(
    ("number", "kind", "unit", "said", "in_sum"),
    [
        ("20", "temperature_difference", "F°", "20 °F", "20 °F"),
        ("13", "thermal_resistance", "R", "R-13", "13 ft²·°F·h/Btu"),
        ("2.3", "thermal_resistance", "m2K/W", "2.3 m²·K/W", "2.3 m²·K/W"),
        ("7", "air_changes", "/h", "7 an hour", "7/h"),
        ("5", "temperature_rate", "F°/h", "5 °F/h", "5 °F/h"),
    ],
)
def test_a_unit_is_said_as_people_say_it_and_cancels_in_a_sum(
    number: str, kind: str, unit: str, said: str, in_sum: str
) -> None:
    quantity = unit_named(unit, kind)
    assert with_unit(number, quantity).replace("\u00a0", " ") == said
    assert in_a_sum(number, quantity).replace("\u00a0", " ") == in_sum
    assert read_quantity(with_unit(number, quantity), kind, quantity, "us").number == number


@pytest.mark.parametrize(
    ("fahrenheit", "said"),
    [
        (6.13, "6.1"),
        (21.54, "21.5"),
        (20.0, "20"),
        (35.4, "35"),
        (0.877, "0.88"),
        (0.0, "0"),
        (-3.52, "−3.5"),
        (29.97, "30"),
    ],
)
def test_a_difference_is_said_to_a_tenth_or_a_whole_degree(fahrenheit: float, said: str) -> None:
    assert show(fahrenheit / 1.8, shown_unit("temperature_difference", "us"), "us") == f"{said}\N{NO-BREAK SPACE}°F"
