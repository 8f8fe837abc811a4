"""Which boxes of a worksheet stand open, and what the line says under which the others are folded."""

from collections.abc import Mapping
from typing import Any

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


def line(sheet: Sheet, errors: Mapping[str, str]) -> dict[str, Any]:
    """What the folded boxes come to: {"said": HTML, "open": whether something in them may not hide}.

    A number of the reader's own may not, nor an error (`errors` by key), nor a question that nobody has answered.
    """
    keys = folded(sheet.worksheet, sheet.course)
    if sheet.worksheet.outlook:
        keys -= start.CHOSEN  # the big buttons of the questions show these
    entries = [(field, sheet.inputs.get(field.key)) for field in sheet.course.fields if field.key in keys]
    counts = {"own": 0, "example": 0, "usual": 0}
    for field, entry in entries:
        counts[_whose(entry.origin if entry else "typed", field)] += 1
    named = [
        f"{field.label} {entry.shown(sheet.system)}"
        for field, entry in entries
        if entry and not field.optional and not sheet.example and entry.origin in ("typical", "example")
    ]
    unanswered = counts["example"] > 0 and not sheet.example
    said = fill("fold.html", counts=counts, sheet=sheet, named=named[:MOST_NAMED], more=len(named[MOST_NAMED:]))
    return {"said": str(said), "open": counts["own"] > 0 or unanswered or any(key in keys for key in errors)}


def _whose(origin: str, field: Field) -> str:
    if origin in ("typical", "example"):
        return "usual" if origin == "typical" or field.optional else "example"
    return "own"
