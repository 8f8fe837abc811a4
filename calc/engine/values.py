"""Working out: what was read becomes the value of every step, again after a change, and what advice sets to nothing."""

import math
from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from calc.engine.conditions import condition
from calc.engine.fields import Field, quantity
from calc.engine.read import Reading
from calc.engine.steps import AnyStep, Pick, Step
from calc.engine.words import ATTENTION, Advice, Check, Variant
from calc.engine.worksheet import Worksheet
from calc.law import NoSolution, OutOfRange

Values = dict[str, float | str | None]
TakenOver = Mapping[str, float | str | None]  # values that another worksheet has worked out
NOTHING: TakenOver = MappingProxyType({})


def work_out(worksheet: Worksheet, reading: Reading, taken: TakenOver = NOTHING) -> Values:
    """Every value: inputs, givens, each step in order. A step without what it needs, or without a solution, is None.

    `taken` are steps whose values another worksheet has worked out.
    """
    values: Values = dict.fromkeys(field.key for field in reading.course.fields)  # None: awaited
    values |= {key: entry.si for key, entry in reading.inputs.items()}
    for given in worksheet.givens:
        values[given.key] = given.value
    return _work_out(values, reading.course.steps, taken)


def _work_out(values: Values, steps: tuple[AnyStep, ...], taken: TakenOver = NOTHING) -> Values:
    for step in steps:
        values[step.key] = taken[step.key] if step.key in taken else _step(step, values)
    return values


def work_out_again(worked: Values, steps: tuple[AnyStep, ...], changes: Values) -> Values:
    """The values after some inputs have changed: only the steps that they reach are taken again."""
    values, reached = worked | changes, set(changes)
    for step in steps:
        if not reached.isdisjoint(step.needs):
            reached.add(step.key)
            values[step.key] = _step(step, values)
    return values


def at_best(reading: Reading, worked: Values) -> Values | None:
    """The values if every number that was taken on the careful side were as kind as it may be; None if none was."""
    kindest: Values = {
        key: quantity(entry.field.typical.kindest, entry.field.kind)
        for key, entry in reading.inputs.items()
        if entry.origin == "typical" and entry.field.typical and entry.field.typical.kindest
    }
    return work_out_again(worked, reading.course.steps, kindest) if kindest else None


def settle(worksheet: Worksheet, worked: Values) -> Values:
    """The values that are told: what advice sets to nothing is nothing, and a chain counts what needs attention."""
    values = worked | {key: 0.0 for key in zeroed(worksheet, worked) if key in worked}
    if worksheet.checks:
        values[ATTENTION] = float(sum(status(check, values) != "pass" for check in chain(worksheet, values)))
    return values


def zeroed(worksheet: Worksheet, values: Values) -> set[str]:
    """The results that are exactly nothing, since advice that holds says so."""
    holding = [
        advice
        for advice in worksheet.advice
        if advice.zeroes and applies(advice, values) and advice.condition(values, {})
    ]
    return {key for advice in holding for key in advice.zeroes}


def _step(step: Step | Pick, values: Values) -> float | None:
    if isinstance(step, Pick):
        return quantity(step.values[str(values[step.on])], step.kind)
    arguments = bound(step, values)
    if arguments is None:
        return None
    try:
        result = step.law(**arguments)
    except OutOfRange as wrong:
        wrong.step = step.key
        raise
    except (NoSolution, ArithmeticError, ValueError):  # no such number: a root, a logarithm or a quotient that is none
        return None
    return result if isinstance(result, float | int) and math.isfinite(result) else None


def chain(worksheet: Worksheet, values: Values) -> list[Check]:
    """The checks that these values call for."""
    return [check for check in worksheet.checks if not check.only or condition(check.only)(values, {})]


def bound(step: Step, values: Values) -> dict[str, Any] | None:
    """What a step hands its law, by parameter; None if any of it has no value."""
    arguments = {name: values[source] for name, source in step.binding.items()}
    return None if None in arguments.values() else arguments


def record(steps: tuple[AnyStep, ...], key: str, values: Values) -> Any:
    """The whole record from which the step `key` reads one number; None where it could not be made."""
    step = next(step for step in steps if step.key == key)
    arguments = bound(step, values) if isinstance(step, Step) else None
    if arguments is None or values.get(key) is None or not isinstance(step, Step) or step.law.run is None:
        return None
    return step.law.run(**arguments)


def status(check: Check, values: Values) -> str:
    """How a check stands with these values."""
    if not check.fails:
        return "not checked"
    fails, tight = check.conditions
    if fails(values, {}):
        return check.level
    if values.get(check.number) is None:
        return "not checked"
    return "tight" if tight(values, {}) else "pass"


def applies(advice: Advice, values: Values) -> bool:
    return all(name in values for name in advice.condition.names)


def changed(worksheet: Worksheet, reading: Reading, worked: Values, row: Variant) -> Values | None:
    """Every value with a variant's changes; None where a law refuses them."""
    fields = {field.key: field for field in reading.course.fields}
    changes = {
        key: changed_value(fields[key], text, worked[key])
        for key, text in row.changes.items()
        if key in fields and worked[key] is not None
    }
    hung = {key for key, _ in reading.course.choices}
    return (_in_another_case if hung & changes.keys() else moved)(worksheet, reading, worked, changes)


def _in_another_case(
    worksheet: Worksheet, reading: Reading, worked: Values, changes: Mapping[str, float | str]
) -> Values | None:
    """Every value with a choice changed on which cases hang: what the reader typed for the old case does not stay."""
    given = {key: entry.si for key, entry in reading.inputs.items()} | _with_followers(reading, changes)
    course = worksheet.course({key: value for key, value in given.items() if isinstance(value, str)})
    values: Values = {field.key: given.get(field.key) for field in course.fields}
    values |= {given.key: given.value for given in worksheet.givens}
    try:
        return settle(worksheet, _work_out(values, course.steps))
    except (OutOfRange, OverflowError):
        return None


def moved(worksheet: Worksheet, reading: Reading, worked: Values, changes: Mapping[str, float | str]) -> Values | None:
    """Every value with some inputs changed, and what follows them; None where a law refuses them."""
    try:
        return settle(worksheet, work_out_again(worked, reading.course.steps, dict(_with_followers(reading, changes))))
    except (OutOfRange, OverflowError):
        return None


def _with_followers(reading: Reading, changes: Mapping[str, float | str]) -> dict[str, float | str]:
    """The changes, and with them every input that follows one of those changed."""
    now = dict(changes)
    for entry in reading.inputs.values():
        if entry.from_field in changes and entry.field.key not in changes:
            now[entry.field.key] = changes[entry.from_field]
    return now


def changed_value(field_: Field, text: str, current: float | str | None) -> float | str:
    """A declared text as a value; "x2" is twice the current one, "less 20 F°" so much below it, "plus" above it."""
    if field_.kind == "choice":
        return text
    if text.startswith(("less ", "plus ")) and isinstance(current, float | int):
        kind = "temperature_difference" if field_.kind == "temperature" else field_.kind
        amount = quantity(text[5:], kind)
        return current + (amount if text.startswith("plus ") else -amount)
    if text.startswith("x") and isinstance(current, float | int):
        return float(text[1:]) * current
    return quantity(text, field_.kind)
