"""The band in which the headline lies when what was guessed varies as far as it usually does."""

import math

from calc.engine.fields import quantity
from calc.engine.read import Reading
from calc.engine.sheet import Band
from calc.engine.steps import Step
from calc.engine.texts import Texts
from calc.engine.typed import Input
from calc.engine.values import Values, work_out_again, zeroed
from calc.engine.words import ATTENTION
from calc.engine.worksheet import Worksheet
from calc.law import OutOfRange


def band(worksheet: Worksheet, reading: Reading, worked: Values, text: Texts) -> Band | None:
    """Each guess moved to the ends of its usual band, each side added by root sum of squares, the largest named."""
    centre = text.values[worksheet.headline]
    if not isinstance(centre, float | int) or worksheet.headline == ATTENTION:
        return None
    # Only what feeds the headline, and the advice that may set it to nothing, is worked out again for each guess.
    advised = {
        name for advice in worksheet.advice if worksheet.headline in advice.zeroes for name in advice.condition.names
    }
    steps = reading.course.steps_for({worksheet.headline, *advised})
    if any(isinstance(step, Step) and step.law.run for step in steps):
        return None  # running a year once for each end of each guess would keep the reader waiting
    fed = {worksheet.headline, *advised}.union(*(step.needs for step in steps))
    below = above = largest = 0.0
    most = ""
    for entry in reading.inputs.values():
        followers = [other.field.key for other in reading.inputs.values() if other.from_field == entry.field.key]
        if not fed.intersection((entry.field.key, *followers)):
            continue
        effect = [0.0, 0.0]
        for end in ends(entry, worked):
            try:
                now = work_out_again(worked, steps, dict.fromkeys((entry.field.key, *followers), end))
            except OutOfRange:
                continue
            there = 0.0 if worksheet.headline in zeroed(worksheet, now) else now[worksheet.headline]
            if isinstance(there, float | int):
                effect = [min(effect[0], there - centre), max(effect[1], there - centre)]
        below, above = math.hypot(below, effect[0]), math.hypot(above, effect[1])
        if effect[1] - effect[0] > largest:
            largest, most = effect[1] - effect[0], entry.field.label
    if not most or largest <= 1e-9 * abs(centre):
        return None
    low, high = centre - below, centre + above
    if centre >= 0:
        low = max(low, 0.0)
    key = worksheet.headline
    return Band(text.value(key, low, True), text.value(key, high, True), most, low, high)


def ends(entry: Input, values: Values) -> list[float]:
    """The usual ends of a number that was assumed, or that a person knows only so well, in SI."""
    field = entry.field
    if field.kind == "choice" or not isinstance(entry.si, float | int):
        return []
    if entry.origin in ("typical", "example") and field.typical and field.typical.low:
        low, high = field.typical.low, field.typical.high
        if not isinstance(low, str):
            low = low[str(values[field.typical.on])]
        if not isinstance(high, str):
            high = high[str(values[field.typical.on])]
        return [quantity(low, field.kind), quantity(high, field.kind)]
    if field.uncertainty.endswith("%"):
        share = float(field.uncertainty[:-1]) / 100
        ends = [entry.si * (1 - share), entry.si * (1 + share)]
    elif field.uncertainty:
        kind = "temperature_difference" if field.kind == "temperature" else field.kind
        amount = quantity(field.uncertainty, kind)
        ends = [entry.si - amount, entry.si + amount]
    else:
        return []
    return [min(max(end, field.low_si), field.high_si) for end in ends]
