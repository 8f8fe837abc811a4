"""Which boxes of a worksheet stand open, and what the line says under which the others are folded."""

from collections.abc import Iterable

from markupsafe import Markup

from calc.engine.declare import Field
from calc.engine.sheet import Sheet
from calc.engine.steps import Course
from calc.engine.worksheet import Worksheet
from render import start
from render.templating import fill

MOST_OPEN = 5  # boxes, and one choice on which hangs what is asked
MOST_NAMED = 4  # of the folded values that the line tells


def folded(worksheet: Worksheet, course: Course) -> frozenset[str]:
    """The fields that are folded: those that need an answer stand open first, then those that have a usual value."""
    if worksheet.opens:
        return frozenset(
            field.key
            for field in course.fields
            if field.optional or (field.typical is not None and field.key not in worksheet.opens)
        )
    hung = {branch for branch, _ in course.choices}
    choice = next((field.key for field in course.fields if field.key in hung and not field.optional), "")
    asked = [field for field in course.fields if field.key != choice and not field.optional]
    first = sorted(asked, key=lambda field: field.typical is not None)[:MOST_OPEN]
    stand_open = {choice, *(field.key for field in first)}
    return frozenset(field.key for field in course.fields if field.key not in stand_open)


def holds(sheet: Sheet, keys: Iterable[str]) -> bool:
    """Whether one of the boxes of these keys is folded."""
    return not _folded_here(sheet).isdisjoint(keys)


def line(sheet: Sheet) -> Markup:
    """What the folded boxes come to.

    The line names what the reader typed first, then what nobody has answered yet, so that nothing hides in the fold
    though it stays closed and the page short.
    """
    keys = _folded_here(sheet)
    entries = [(field, sheet.inputs.get(field.key)) for field in sheet.course.fields if field.key in keys]
    whose: dict[str, list[str]] = {"own": [], "worked": [], "example": [], "usual": []}
    optional: set[str] = set()
    for field, entry in entries:
        told = f"{field.label} {entry.shown(sheet.system)}" if entry else field.label
        whose[_whose(entry.origin if entry else "typed", field)].append(told)
        optional |= {told} if field.optional else set()
    usual = [told for told in whose["usual"] if told not in optional]
    named = [] if sheet.example else [*whose["own"], *whose["example"], *usual, *whose["worked"]]
    counts = {name: len(those) for name, those in whose.items()}
    return fill("fold.html", counts=counts, sheet=sheet, named=named[:MOST_NAMED], more=len(named[MOST_NAMED:]))


def _folded_here(sheet: Sheet) -> frozenset[str]:
    keys = folded(sheet.worksheet, sheet.course)
    return keys - start.CHOSEN if sheet.worksheet.outlook else keys  # the big buttons of the questions show these


def _whose(origin: str, field: Field) -> str:
    if origin in ("typical", "example"):
        return "usual" if origin == "typical" or field.optional else "example"
    return "worked" if origin == "computed" else "own"
