"""What each uncertain number does to the answers, as far as it usually varies or as far as the reader says."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from calc.engine.band import ends
from calc.engine.sheet import Sheet
from calc.engine.texts import Texts
from calc.engine.typed import Input, Reader, Typed
from calc.engine.values import Values, work_out_again
from calc.engine.words import Spread
from calc.law import OutOfRange
from calc.units import show_briefly

Ranges = Mapping[str, tuple[str, str]]  # the reader's own: least and most of a field, as typed


class Effect(NamedTuple):
    """A number that was assumed, the result that it moves most for its size, and between what it moves it."""

    entry: Input
    key: str
    low: str
    high: str
    share: float  # of the result, by which it moves


class Bar(NamedTuple):
    """One uncertain number: its range as texts, each result's range in a sentence, and the bar in percent of the axis.

    With `wrong`, a sentence about what was typed as its range, nothing was worked out.
    """

    key: str
    label: str
    low: str
    high: str
    told: str = ""
    start: float = 0.0
    length: float = 0.0
    wrong: str = ""


class Spreading(NamedTuple):
    """The bars so far, the longest first; how many there will be; what the axis says, and which number matters most."""

    title: str
    bars: tuple[Bar, ...]
    points: int
    axis: str
    here: float  # the answer itself, in percent of the axis
    said: str


def effects(sheet: Sheet, keys: Sequence[str]) -> list[Effect]:
    """For each assumed number that moves one of these results: which of them most, and how far; the largest first."""
    text = Texts(sheet.worksheet, sheet.reading, sheet.values, sheet.system)
    gathered = []
    for entry in sheet.inputs.values():
        if entry.origin not in ("typical", "example") or entry.field.optional:
            continue
        reached = _reached(sheet, entry, ends(entry, sheet.values), keys)
        moves = [_effect(entry, key, values, sheet.values.get(key), text) for key, values in reached.items()]
        gathered += sorted((move for move in moves if move), key=lambda move: -move.share)[:1]
    return sorted(gathered, key=lambda move: -move.share)


def spread(sheet: Sheet, wanted: Spread, ranges: Ranges, points: int, reader: Reader) -> Spreading | None:
    """The first `points` uncertain numbers, each moved over its range alone; None while a number is wrong."""
    if sheet.problems or not isinstance(sheet.values[wanted.of[0]], float | int):
        return None
    uncertain = [entry for entry in sheet.inputs.values() if _moves(sheet, entry, wanted.of[0])]
    rows = [_row(sheet, wanted, entry, ranges.get(entry.field.key), reader) for entry in uncertain[: max(1, points)]]
    moved = [(low, high) for _, low, high in rows]
    least, most = min(low for low, _ in moved), max(high for _, high in moved)
    wide = (most - least) or 1.0

    def percent(value: float) -> float:
        return round(100 * (value - least) / wide, 1)

    text = Texts(sheet.worksheet, sheet.reading, sheet.values, sheet.system)
    key = wanted.of[0]
    centre = sheet.values[key]
    assert isinstance(centre, float | int)
    bars = [
        bar._replace(start=percent(low), length=max(round(percent(high) - percent(low), 1), 0.6))
        for bar, low, high in sorted(rows, key=lambda row: row[1] - row[2])
    ]
    whole = points >= len(uncertain)
    axis = f"{text.results[key].label}: {text.value(key, least, True)} to {text.value(key, most, True)}"
    return Spreading(wanted.title, tuple(bars), len(uncertain), axis, percent(centre), _matters(bars) if whole else "")


def _matters(bars: list[Bar]) -> str:
    """Which number is worth finding out first, in a sentence."""
    first = next((bar for bar in bars if not bar.wrong), None)
    if first is None or first.length <= 0.6:
        return "None of them moves it."
    return f"Find out “{first.label}” first: between {first.low} and {first.high} it moves the answer most."


def _moves(sheet: Sheet, entry: Input, key: str) -> bool:
    """Whether a number is uncertain, and the result is worked out from it."""
    fed: set[str] = set().union(*(step.needs for step in sheet.course.steps_for([key])))
    return entry.field.key in fed and bool(ends(entry, sheet.values))


def _row(
    sheet: Sheet, wanted: Spread, entry: Input, typed: tuple[str, str] | None, reader: Reader
) -> tuple[Bar, float, float]:
    """One bar, and between what it moves the first result, in SI."""
    text = Texts(sheet.worksheet, sheet.reading, sheet.values, sheet.system)
    field, unit = entry.field, entry.field.unit(sheet.system)
    centre = sheet.values[wanted.of[0]]
    assert isinstance(centre, float | int)
    if typed is None:
        low, high = sorted(ends(entry, sheet.values))
    else:
        outcomes = [reader.read(field, Typed(part, sheet.system, unit=unit.ascii)) for part in typed]
        wrong = next((outcome for outcome in outcomes if outcome.value is None), None)
        if wrong:
            said = f"{field.label} {wrong.reason}{wrong.like}."
            return Bar(field.key, field.label, typed[0], typed[1], wrong=said), centre, centre
        low, high = sorted(float(outcome.value.si) for outcome in outcomes if outcome.value)
    shown = [show_briefly(end, unit, sheet.system, 3) for end in (low, high)]
    reached = _reached(sheet, entry, [low, high], wanted.of)
    told = [_told(key, [*reached.get(key, ()), sheet.values.get(key)], text) for key in wanted.of]
    first = [*reached.get(wanted.of[0], ()), centre]
    return Bar(field.key, field.label, shown[0], shown[1], "; ".join(told)), min(first), max(first)


def _told(key: str, values: Sequence[float | str | None], text: Texts) -> str:
    numbers = [value for value in values if isinstance(value, float | int)]
    if not numbers:
        return f"{text.results[key].label}: {text.value(key, None, True)}"
    low, high = text.value(key, min(numbers), True), text.value(key, max(numbers), True)
    return f"{text.results[key].label}: {low}" + ("" if low == high else f" to {high}")


def _reached(sheet: Sheet, entry: Input, places: Sequence[float], keys: Sequence[str]) -> dict[str, list[float]]:
    """The values of the results with one number at each of these places; a place that a law refuses is left out."""
    steps = sheet.course.steps_for(keys)
    reached: dict[str, list[float]] = {}
    for place in places:
        changes: Values = {entry.field.key: place}
        changes |= {other.field.key: place for other in sheet.inputs.values() if other.from_field == entry.field.key}
        try:
            now = work_out_again(sheet.values, steps, changes)
        except OutOfRange:
            continue
        for key in keys:
            value = now.get(key)
            if isinstance(value, float | int):
                reached.setdefault(key, []).append(value)
    return reached


def _effect(entry: Input, key: str, values: list[float], centre: float | str | None, text: Texts) -> Effect | None:
    if not isinstance(centre, float | int) or not centre:
        return None
    low, high = min(*values, centre), max(*values, centre)
    share = (high - low) / abs(centre)
    return Effect(entry, key, text.value(key, low, True), text.value(key, high, True), share) if share > 1e-3 else None
