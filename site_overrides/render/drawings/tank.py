"""Where things stand in the drawn tank: its height is a temperature scale."""

from typing import Any

from calc.engine.declare import Picture
from calc.engine.sheet import Sheet
from calc.units import System, fixed, shown_unit

TOP, BOTTOM = 34.0, 296.0  # the drawing's own units; up is hotter
GAP = 38.0  # labels of two lines stand at least this far apart
_ENDS: dict[System, tuple[float, float, float]] = {"us": (40, 220, 20), "si": (0, 105, 15)}


def parts(sheet: Sheet, wanted: Picture) -> dict[str, Any]:
    """Places of the hot top, the coolest useful water and the marks, and the words beside them."""
    unit = shown_unit("temperature", sheet.system)
    low_end, high_end, step = _ENDS[sheet.system]

    def place(degrees: float) -> float:
        share = (min(max(degrees, low_end), high_end) - low_end) / (high_end - low_end)
        return round(BOTTOM - share * (BOTTOM - TOP), 1)

    def degrees(name: str) -> float:
        value = sheet.values.get(wanted.values[name])
        return unit.from_si(value) if isinstance(value, float | int) else low_end

    top, low = degrees("top"), degrees("low")
    works = low < top
    band_top, band_low = place(top), place(min(low, top))
    labels = _apart(
        [place(top), (band_top + band_low) / 2, place(low)] if works else [place(low), place(top), place(top)]
    )
    marks = []
    mark = low_end
    while mark <= high_end:
        named = (mark - low_end) / step % 2 == 0
        marks.append((place(mark), f"{fixed(mark, 0)} {unit.text}" if named else ""))
        mark += step
    return {
        "works": works,
        "top": place(top),
        "low": place(low),
        "band_low": band_low,
        "bottom": BOTTOM,
        "marks": marks,
        "labels": labels,
        "top_text": f"{fixed(top, 0)} {unit.text}",
        "low_text": f"{fixed(low, 0)} {unit.text}",
        "band_text": f"{fixed(max(top - low, 0), 0)} degrees",
    }


def _apart(places: list[float]) -> list[float]:
    """Labels moved apart, from the top down, as far as they need to be."""
    moved: list[float] = []
    for at, wish in enumerate(places):
        moved.append(max(wish, moved[-1] + GAP) if at else wish)
    over = moved[-1] - (BOTTOM - 4)
    if over > 0:
        moved = [place - over for place in moved]
    return [round(place, 1) for place in moved]
