"""Ask a worksheet the way its tests do."""

from calc.answer import Typed, answer
from calc.engine.sheet import Sheet


def sheet_of(worksheet: str, **typed: str) -> Sheet:
    """The sheet for these texts; the worked example for none."""
    sheet = answer(worksheet, {field: Typed(text) for field, text in typed.items()})
    assert not sheet.problems, sheet.problems
    return sheet


def example_of(worksheet: str, number: int = 0) -> dict[str, str]:
    """The texts of a worked example, to be changed one at a time."""
    return dict(answer(worksheet, {}).worksheet.examples[number].given)


def codes(worksheet: str, **typed: str) -> set[str]:
    """The codes of all advice that holds, for the worked example with these texts changed."""
    return {advice.code for advice in sheet_of(worksheet, **(example_of(worksheet) | typed)).advice}


def values(worksheet: str, **typed: str) -> dict[str, float]:
    """Every number of the worked example with these texts changed."""
    result = sheet_of(worksheet, **(example_of(worksheet) | typed)).values
    return {key: float(value) for key, value in result.items() if isinstance(value, float | int)}


def kelvin(fahrenheit: float) -> float:
    """Degrees Fahrenheit as kelvin."""
    return (fahrenheit + 459.67) / 1.8
