"""A worksheet at several values of one of its fields, one after another, and where more of it no longer helps."""

from typing import NamedTuple

from calc.engine.sheet import Sheet, Table
from calc.engine.texts import Texts
from calc.engine.values import Values, changed_value, moved, work_out
from calc.engine.words import Sweep
from calc.units import show_briefly

_LITTLE = 0.01  # of all that it falls by, which is no longer worth a word


class Point(NamedTuple):
    """One value of the swept field: its place, the reader's text of it, and every value there."""

    at: float
    text: str
    values: Values


class Swept(NamedTuple):
    """The points so far as a table, how many there will be, and once all are there what they say."""

    table: Table
    points: int
    said: tuple[str, ...]


def swept(sheet: Sheet, sweep: Sweep, points: int) -> Swept | None:
    """The first `points` of a sweep with the reader's other numbers; None while one is wrong or it is not asked."""
    if sheet.problems or sweep.across not in sheet.inputs:
        return None
    texts = Texts(sheet.worksheet, sheet.reading, sheet.values, sheet.system)
    worked = work_out(sheet.worksheet, sheet.reading)
    field = sheet.inputs[sweep.across].field
    places = _places(sheet, sweep)
    ran = []
    for place in places[: max(1, points)]:
        values = moved(sheet.worksheet, sheet.reading, worked, {sweep.across: place})
        if values is not None:
            ran.append(Point(place, show_briefly(place, field.unit(sheet.system), sheet.system, 3), values))
    rows = [(point.text, *(texts.value(key, point.values.get(key), True) for key in sweep.show)) for point in ran]
    heads = (field.label, *(texts.results[key].label for key in sweep.show))
    said = (_more(sheet, sweep, ran, texts), _knee(sweep, ran, texts)) if points >= len(places) else ()
    table = Table(sweep.title, heads, tuple(rows), "")
    return Swept(table, len(places), tuple(sentence for sentence in said if sentence))


def _places(sheet: Sheet, sweep: Sweep) -> list[float]:
    """The values of the swept field, the smallest first; those that its box would refuse are left out."""
    field, current = sheet.inputs[sweep.across].field, sheet.values[sweep.across]
    values = [changed_value(field, point, current) for point in sweep.points]
    # A step nearer to its neighbour than a thousandth is the same place.
    places: list[float] = []
    for value in sorted(value for value in values if isinstance(value, float | int)):
        if field.holds(value) and not (places and value - places[-1] < 1e-3 * value):
            places.append(value)
    return places


def _more(sheet: Sheet, sweep: Sweep, ran: list[Point], texts: Texts) -> str:
    """What a little more than the reader has would change, in a sentence."""
    field, here = sheet.inputs[sweep.across].field, sheet.values[sweep.across]
    if not sweep.more or not isinstance(here, float | int):
        return ""
    wanted = changed_value(field, sweep.more, here)
    point = next(
        (point for point in ran if isinstance(wanted, float | int) and abs(point.at - wanted) < 1e-6 * wanted), None
    )
    if point is None:
        return ""
    more = show_briefly(point.at - here, field.unit(sheet.system), sheet.system, 2)
    changes = []
    for key in sweep.show:
        before, after = (texts.value(key, values.get(key), True) for values in (sheet.values, point.values))
        same = f"stays at {after}" if before == after else f"goes from {before} to {after}"
        changes.append(f"“{texts.results[key].label}” {same}")
    return f"With {more} more, {point.text} in all: {'; '.join(changes)}."


def _knee(sweep: Sweep, ran: list[Point], texts: Texts) -> str:
    """From which value on more of it hardly helps, in a sentence."""
    label = texts.results[sweep.falls].label
    fallen = [
        (point.text, float(value)) for point in ran if isinstance(value := point.values.get(sweep.falls), float | int)
    ]
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
