"""What each number that nobody gave does to the answers, as far as it usually varies."""

from collections.abc import Sequence
from typing import NamedTuple

from calc.engine.band import ends
from calc.engine.sheet import Sheet
from calc.engine.texts import Texts
from calc.engine.typed import Input
from calc.engine.values import work_out_again
from calc.law import OutOfRange


class Effect(NamedTuple):
    """A number that was assumed, the result that it moves most for its size, and between what it moves it."""

    entry: Input
    key: str
    low: str
    high: str
    share: float  # of the result, by which it moves


def effects(sheet: Sheet, keys: Sequence[str]) -> list[Effect]:
    """For each assumed number that moves one of these results: which of them most, and how far; the largest first."""
    steps = sheet.course.steps_for(keys)
    text = Texts(sheet.worksheet, sheet.reading, sheet.values, sheet.system)
    gathered = []
    for entry in sheet.inputs.values():
        if entry.origin not in ("typical", "example") or entry.field.optional:
            continue
        reached: dict[str, list[float]] = {}
        for end in ends(entry, sheet.values):
            try:
                now = work_out_again(sheet.values, steps, {entry.field.key: end})
            except OutOfRange:
                continue
            for key in keys:
                value = now.get(key)
                if isinstance(value, float | int):
                    reached.setdefault(key, []).append(value)
        moves = [_effect(entry, key, values, sheet.values.get(key), text) for key, values in reached.items()]
        gathered += sorted((move for move in moves if move), key=lambda move: -move.share)[:1]
    return sorted(gathered, key=lambda move: -move.share)


def _effect(entry: Input, key: str, values: list[float], centre: float | str | None, text: Texts) -> Effect | None:
    if not isinstance(centre, float | int) or not centre:
        return None
    low, high = min(*values, centre), max(*values, centre)
    share = (high - low) / abs(centre)
    return Effect(entry, key, text.value(key, low, True), text.value(key, high, True), share) if share > 1e-3 else None
