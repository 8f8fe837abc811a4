"""Drawings of an idea, with the reader's numbers beside their parts, and six sizes as bars on one scale."""

from typing import Any

from calc.engine.declare import Picture
from calc.engine.sheet import Sheet
from calc.units import show, show_briefly, shown_unit

WIDE = 392.0  # of the longest bar, in the drawing's own units
FIRST_LINE, LINE = 20, 42  # where the words of a bar stand
_BARS = {
    "recommended": "holds a whole burn",
    "by_full_burn": "one burn, less the house's share",
    "by_hours": "the hours wished for",
    "by_house_area": "floor area",
    "by_firebox": "German law, by the firebox",
    "by_rating": "German law, by the rating",
    "by_eu_formula": "European formula",
}


def texts(sheet: Sheet, wanted: Picture) -> dict[str, Any]:
    """Each part as its reader sees it: a number with its unit, a choice in words; nothing where there is none.

    What is chosen stands beside its words under "chosen".
    """
    chosen = next((value for name in wanted.values.values() if isinstance(value := sheet.values.get(name), str)), "")
    return {part: _text(sheet, name) for part, name in wanted.values.items()} | {"chosen": chosen}


def ways(*frames: tuple[int, tuple[str, ...]]) -> Any:
    """For drawings that show several ways side by side: texts, and where the frame of the chosen way begins."""

    def parts(sheet: Sheet, wanted: Picture) -> dict[str, Any]:
        filled = texts(sheet, wanted)
        return filled | {"frame": next(left for left, values in frames if filled["chosen"] in values)}

    return parts


def bars(sheet: Sheet, wanted: Picture) -> dict[str, Any]:
    """One bar for each size that there is, on one scale, the recommended one first."""
    sizes: dict[str, float] = {}
    for part in _BARS:
        size = sheet.values.get(wanted.values[part])
        if isinstance(size, float | int):
            sizes[part] = size
    longest = max(sizes.values(), default=0)
    drawn = [
        {
            "label": _BARS[part],
            "text": _text(sheet, wanted.values[part]),
            "long": round(WIDE * size / longest, 1) if longest else 0,
            "y": FIRST_LINE + place * LINE,
            "first": part == "recommended",
        }
        for place, (part, size) in enumerate(sizes.items())
    ]
    return {"bars": drawn, "height": FIRST_LINE - 10 + len(drawn) * LINE}


def _text(sheet: Sheet, name: str) -> str:
    value = sheet.values.get(name)
    if value is None:
        return ""
    if name in sheet.inputs:
        return sheet.inputs[name].shown(sheet.system)
    result = next((result for result in sheet.results if result.key == name), None)
    if result:
        return result.shown
    given = next((given for given in sheet.worksheet.givens if given.key == name), None)
    if given:
        return show_briefly(given.value, given.unit(sheet.system), sheet.system, 3)
    step = next(step for step in sheet.course.steps if step.key == name)
    return show(float(value), shown_unit(step.kind, sheet.system), sheet.system)
