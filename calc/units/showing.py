"""A value becomes text as a reader of either unit system sees it."""

from calc.units.kinds import KINDS, System, Unit

NO_BREAK = "\N{NO-BREAK SPACE}"
THIN = "\N{NARROW NO-BREAK SPACE}"
MINUS = "\N{MINUS SIGN}"
# How a unit is said, where its name in the table of units is not how people say it: "a 20 °F drop".
_SAID = {"F°": "°F", "F°/h": "°F/h", "/h": "an hour"}
_MANY = {"cord": "cords", "stère": "stères"}  # said of every number but 1
_R_VALUE = "ft²·°F·h/Btu"


def round_to(number: float, figures: int) -> str:
    """Plain digits of `number` to `figures` significant figures, without an exponent and without a sign on zero."""
    if number == 0:
        return "0"
    exponent = int(f"{number:.{figures - 1}e}".rpartition("e")[2])
    places = figures - 1 - exponent
    return fixed(round(number, places), max(places, 0))


def round_briefly(number: float, figures: int) -> str:
    """The same without the zeros that end its decimals."""
    digits = round_to(number, figures)
    return digits.rstrip("0").rstrip(".") if "." in digits else digits


def fixed(number: float, places: int) -> str:
    """Plain digits of `number` with `places` decimals; zero has no sign."""
    text = f"{number:.{places}f}"
    return text[1:] if text.startswith("-") and not text.strip("-0.") else text


def grouped(digits: str, system: System) -> str:
    """Digits with thousands marks: a comma in US units, a thin space in SI, none below ten thousand there."""
    sign, digits = (MINUS, digits[1:]) if digits.startswith("-") else ("", digits)
    whole, point, part = digits.partition(".")
    if system == "us":
        whole = f"{int(whole):,}"
    elif len(whole) > 4:
        whole = f"{int(whole):,}".replace(",", THIN)
    return sign + whole + point + part


def said_unit(unit: Unit) -> str:
    """The unit as people say it."""
    return _SAID.get(unit.text, unit.text)


def with_unit(number: str, unit: Unit) -> str:
    """Number and unit as a person would say them, never parted by a line end: "20 °F", "R-13", "7 an hour"."""
    if unit.text == _R_VALUE:
        return f"R-{number}"
    if unit.text in _MANY and number != "1":
        return number + NO_BREAK + _MANY[unit.text]
    return number + NO_BREAK + _SAID[unit.text].replace(" ", NO_BREAK) if unit.text in _SAID else in_a_sum(number, unit)


def in_a_sum(number: str, unit: Unit) -> str:
    """The same as it stands in a printed sum, where every unit has to cancel: R-13 is 13 ft²·°F·h/Btu."""
    if unit.kind in ("money",) or unit.text.startswith(("$", "€")):
        sign, number = (MINUS, number[1:]) if number.startswith(MINUS) else ("", number)
        return sign + unit.text[0] + number + unit.text[1:]
    if not unit.text:
        return number
    return number + unit.text if unit.text == "/h" else number + NO_BREAK + said_unit(unit).replace(" ", NO_BREAK)


def _degrees(number: float) -> str:
    """A difference as people say it: whole degrees from 30 on, else to a tenth, below one to two figures."""
    if abs(number) < 0.95:
        return round_to(number, 2)
    digits = fixed(number, 0 if abs(number) >= 29.95 else 1)
    return digits.removesuffix(".0")


def _digits(value: float, unit: Unit, figures: int) -> str:
    number = unit.from_si(value)
    if unit.kind == "temperature_difference":
        return _degrees(number)
    decimals = KINDS[unit.kind].decimals
    return fixed(number, decimals) if decimals is not None and unit.text != "K" else round_to(number, figures)


def show(value: float, unit: Unit, system: System, figures: int = 3) -> str:
    """An SI value as text in `unit`, to the digits that its kind deserves."""
    return with_unit(grouped(_digits(value, unit, figures), system), unit)


def deserved(value: float, unit: Unit) -> str:
    """The same digits bare, without zeros that say nothing: as a person would write a usual value in another unit."""
    digits = _digits(value, unit, 3)
    return digits.rstrip("0").rstrip(".") if "." in digits else digits


def show_briefly(value: float, unit: Unit, system: System, figures: int) -> str:
    """An SI value as text in `unit`, to so many figures and without zeros that say nothing."""
    return with_unit(grouped(round_briefly(unit.from_si(value), figures), system), unit)
