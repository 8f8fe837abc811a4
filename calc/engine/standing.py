"""How each check of a chain stands for one reader: what rests on a number that nobody said is not checked yet."""

from collections.abc import Iterable
from typing import NamedTuple

from calc.engine.conditions import condition
from calc.engine.read import Reading
from calc.engine.typed import Input
from calc.engine.values import TakenOver, Values, status
from calc.engine.words import Check

MOST_NAMED = 3  # of what was not said


class Standing(NamedTuple):
    """How a check stands, and the labels of what must be said before it can be judged; without them it is judged.

    `foreign`: whether its number would be that of the worked example's house.
    """

    status: str
    unsaid: tuple[str, ...] = ()
    foreign: bool = False


def standing(check: Check, reading: Reading, values: Values, best: Values | None, taken: TakenOver) -> Standing:
    """How a check stands with these values; `best` are those if all that was taken on the careful side were kind."""
    level = status(check, values)
    if reading.example or not check.fails or (check.stays and condition(check.stays)(values, {})):
        return Standing(level)
    behind = list(inputs_behind(reading, check.names, taken))
    if others := foreign(behind):
        return Standing("not checked", tuple(entry.field.label for entry in others), foreign=True)
    if level in ("stop", "unworkable") and best is not None and not check.conditions[0](best, {}):
        return Standing("not checked", tuple(entry.field.label for entry in careful(behind)))
    return Standing(level)


def inputs_behind(reading: Reading, names: Iterable[str], taken: TakenOver) -> Iterable[Input]:
    """The inputs on which these values rest, and the choices that say which usual value stands in."""
    needed = set(names)
    for step in reversed(reading.course.steps):
        if step.key in needed and step.key not in taken:
            needed.update(step.needs)
    for entry in reversed(reading.inputs.values()):
        if entry.field.key in needed:
            usual = entry.field.typical if entry.origin == "typical" else None
            needed.update(key for key in (entry.from_field, usual.on if usual else "") if key)
    return [entry for entry in reading.inputs.values() if entry.field.key in needed]


def careful(inputs: Iterable[Input]) -> list[Input]:
    """The numbers that nobody gave and that stand on the careful side."""
    return [
        entry for entry in inputs if entry.origin == "typical" and entry.field.typical and entry.field.typical.kindest
    ]


def foreign(inputs: Iterable[Input]) -> list[Input]:
    """The numbers and choices of the worked example's house."""
    return [entry for entry in inputs if entry.origin == "example"]


def not_said(labels: tuple[str, ...]) -> str:
    """“Dump capacity” was not said."""
    named = [f"“{label}”" for label in labels[:MOST_NAMED]]
    if more := len(labels) - len(named):
        named.append(f"{more} more")
    listed = f"{', '.join(named[:-1])} and {named[-1]}" if len(named) > 1 else named[0]
    return f"{listed} {'was' if len(labels) == 1 else 'were'} not said"
