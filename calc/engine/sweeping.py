"""A worksheet at several values of one of its fields, one after another, and where more of it no longer helps."""

from typing import NamedTuple

from calc.engine.sheet import Sheet, Table
from calc.engine.texts import Texts
from calc.engine.values import changed, work_out
from calc.engine.words import Sweep, Variant

_LITTLE = 0.01  # of all that it falls by, which is no longer worth a word


class Swept(NamedTuple):
    """The points so far as a table, how many there will be, and once all are there where it stops helping."""

    table: Table
    points: int
    said: str


def swept(sheet: Sheet, points: int) -> Swept | None:
    """The first `points` of a worksheet's sweep with the reader's other numbers; None while a number is wrong."""
    sweep = sheet.worksheet.sweep
    if sweep is None or sheet.problems:
        return None
    texts = Texts(sheet.worksheet, sheet.reading, sheet.values, sheet.system)
    worked = work_out(sheet.worksheet, sheet.reading)
    rows, fallen = [], []
    for point in sweep.points[: max(1, points)]:
        values = changed(sheet.worksheet, sheet.reading, worked, Variant("", {sweep.across: point}))
        if values is None:
            continue
        place = texts.value(sweep.across, values[sweep.across], True)
        rows.append((place, *(texts.value(key, values.get(key), True) for key in sweep.show)))
        falls = values.get(sweep.falls)
        if isinstance(falls, float | int):
            fallen.append((place, float(falls)))
    whole = points >= len(sweep.points)
    heads = (sheet.inputs[sweep.across].field.label, *(texts.results[key].label for key in sweep.show))
    table = Table(sweep.title, heads, tuple(rows), "")
    return Swept(table, len(sweep.points), _knee(sweep, fallen, texts) if whole else "")


def _knee(sweep: Sweep, fallen: list[tuple[str, float]], texts: Texts) -> str:
    """From which value on more of it hardly helps, in a sentence."""
    label = texts.results[sweep.falls].label
    if not fallen:
        return ""
    most, least = max(falls for _, falls in fallen), min(falls for _, falls in fallen)
    if most == least:
        return f"{label}: {texts.value(sweep.falls, most, True)} with each of them, so the size does not decide it."
    knee, there = next((place, falls) for place, falls in fallen if falls <= least + _LITTLE * (most - least))
    first, before = fallen[0]
    was, now = (texts.value(sweep.falls, value, True) for value in (before, there))
    if knee == first:
        return f"{label}: {now} from the smallest on, so more of it buys nothing."
    if knee == fallen[-1][0]:
        return f"{label}: {was} with {first}, {now} with {knee}. More of it still helps at the largest one tried."
    return f"{label}: {was} with {first}, {now} with {knee}. Beyond {knee} more of it hardly helps."
