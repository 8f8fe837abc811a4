"""What was given for a worksheet becomes an input for every field, or sentences that say what to type instead."""

import difflib
from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from calc.engine.fields import Field
from calc.engine.steps import Course, branches_of, case_fields
from calc.engine.typed import Input, Reader, Typed, declared_input, unfit
from calc.engine.worksheet import Worksheet
from calc.units import Quantity

NONE_FIT = (0, 0)


class Problem(NamedTuple):
    """A sentence about one input: what is wrong and what to type instead."""

    key: str
    text: str


class Reading(NamedTuple):
    """Everything read for one worksheet: its course, an input for every field, or the problems.

    `refused` holds the quantities that stand in texts which their fields cannot take.
    """

    course: Course
    inputs: dict[str, Input]
    problems: tuple[Problem, ...]
    example: str
    unused: tuple[str, ...] = ()
    refused: Mapping[str, Quantity] = MappingProxyType({})


def read(worksheet: Worksheet, given: Mapping[str, Typed], reader: Reader) -> Reading:
    """Read what was given; what was not takes its typical value, or the worked example's.

    With nothing given at all it is the worked example.
    """
    given = named(worksheet, given, reader)
    problems = _unknown(worksheet, given)
    example = worksheet.examples[0] if not given else None
    # "I do not know" is a text left out by somebody who thought about it: no longer the worked example.
    given = {key: text for key, text in given.items() if text.text.strip() or text.origin != "typical"}
    stands_in = example.given if example else {}
    choices, choice_problems = _choices(worksheet, given, stands_in, reader)
    course = worksheet.course(choices)
    inputs: dict[str, Input] = {}
    refused: dict[str, Quantity] = {}
    problems += choice_problems
    for field in course.fields:
        if field.key in {problem.key for problem in choice_problems}:
            continue
        if field.key in given:
            value, reason, quantity, like = reader.read(field, given[field.key])
            if value:
                inputs[field.key] = value
            else:
                problems.append(Problem(field.key, f"{field.label} {reason}{like}."))
            if quantity and not value:
                refused[field.key] = quantity
        elif field.key in stands_in:
            inputs[field.key] = declared_input(field, stands_in[field.key], "example")
        elif not field.same_as and not field.awaited:
            text, origin = _fallback(worksheet, field, choices)
            inputs[field.key] = declared_input(field, choices.get(field.key, text), origin)
    if not problems:
        problems += _fill_same(course, inputs)
        inputs = {field.key: inputs[field.key] for field in course.fields if field.key in inputs}
    if not problems:
        values = {constant.key: constant.value for constant in worksheet.givens} | {
            key: entry.si for key, entry in inputs.items()
        }
        for must in worksheet.musts:
            condition = must.condition
            if all(name in values for name in condition.names) and not condition(values, {}):
                problems.append(Problem(must.field, must.say))
    unused = tuple(key for key, typed in given.items() if typed.origin == "typed" and key not in inputs)
    return Reading(course, inputs, tuple(problems), example.name if example else "", unused, refused)


def named(worksheet: Worksheet, given: Mapping[str, Typed], reader: Reader) -> dict[str, Typed]:
    """What was given, with each field that was only given by its other name under its own."""
    meant = keys_meant(worksheet, given, reader)
    own = {key: typed for key, typed in given.items() if key not in meant}
    for name, key in meant.items():
        own.setdefault(key, given[name])
    return own


def keys_meant(worksheet: Worksheet, given: Mapping[str, Typed], reader: Reader) -> dict[str, str]:
    """The keys of the fields that were given by their other names.

    Where cases ask for it under several keys, the case at hand decides which one is meant.
    """
    if given.keys().isdisjoint(worksheet.other_names):
        return {}
    known = {field.key for field in worksheet.all_fields()}
    others = {name: keys for name, keys in worksheet.other_names.items() if name in given and name not in known}
    meant = {name: keys[0] for name, keys in others.items() if len(keys) == 1}
    if len(meant) == len(others):
        return meant
    own = {key: typed for key, typed in given.items() if key in known}
    own |= {key: given[name] for name, key in meant.items() if key not in own}
    choices, _ = _choices(worksheet, own, {} if own else worksheet.examples[0].given, reader)
    asked = [field.key for field in worksheet.course(choices).fields]
    return {name: next((key for key in asked if key in keys), keys[0]) for name, keys in others.items()}


def _unknown(worksheet: Worksheet, given: Mapping[str, Typed]) -> list[Problem]:
    known = {field.key for field in worksheet.all_fields()} | worksheet.other_names.keys()
    problems = []
    for key in given:
        if key not in known:
            near = difflib.get_close_matches(key[:60], known, 2)
            hint = f"did you mean {' or '.join(near)}?" if near else f"it asks for {', '.join(sorted(known))}."
            problems.append(Problem(key[:60], f"This worksheet has no input called “{key[:60]}”: {hint}"))
    return problems


def _choices(
    worksheet: Worksheet, given: Mapping[str, Typed], stands_in: Mapping[str, str], reader: Reader
) -> tuple[dict[str, str], list[Problem]]:
    """The value of every choice, and what is wrong with those given."""
    choices: dict[str, str] = {}
    problems: list[Problem] = []
    for field in worksheet.all_fields():
        if field.kind != "choice" or field.key in choices:
            continue
        if field.key in stands_in:
            choices[field.key] = stands_in[field.key]
            continue
        if field.key in given:
            value, reason, *_ = reader.read(field, given[field.key])
            if value:
                choices[field.key] = str(value.si)
                continue
            problems.append(Problem(field.key, f"{field.label} {reason}."))
        implied = _implied(worksheet, field, given, reader)
        choices[field.key] = implied or _fallback(worksheet, field, choices)[0]
    return choices, problems


def _implied(worksheet: Worksheet, choice: Field, given: Mapping[str, Typed], reader: Reader) -> str:
    """The value of a choice that nobody made but whose numbers somebody gave: an area and a class mean "quick".

    Numbers that have no usual value tell more about what somebody knows than others do.
    """
    asked_anyway = {field.key for field in worksheet.fields}
    cases = next((branch.cases for branch in branches_of(worksheet.cases) if branch.on == choice.key), {})
    fitting: dict[str, tuple[int, int]] = {}
    for value, case in cases.items():
        asked = [field for field in case_fields(case) if field.key not in asked_anyway]
        own = [field for field in asked if field.key in given]
        if case.decides and any(map(tells, asked)) and not any(map(tells, own)):
            own = []  # who gave the wood's moisture has not measured a firebox
        if case.decides and any(given[field.key].origin != "computed" for field in own):
            return value
        fits = {field.key: field for field in own if reader.read(field, given[field.key]).value}
        fitting[value] = sum(map(tells, fits.values())), len(fits)
    most = max(fitting.values(), default=NONE_FIT)
    usual = _fallback(worksheet, choice, {})[0] if most != NONE_FIT else ""
    if most == NONE_FIT or fitting.get(usual) == most:
        return ""
    return next(value for value, count in fitting.items() if count == most)


def tells(field: Field) -> bool:
    """Whether who gives this number knows something: nothing usual stands in for it."""
    return field.kind != "choice" and not (field.typical or field.optional)


def _fallback(worksheet: Worksheet, field: Field, choices: Mapping[str, str]) -> tuple[str, str]:
    """The text that stands in for a field that nobody gave, and its origin."""
    if field.unless_given:
        return field.unless_given, "typical"
    if field.typical:
        text = field.typical.text
        return (text if isinstance(text, str) else text[choices[field.typical.on]]), "typical"
    # One case may ask the same key in another unit than the next, so not every example's text need suit the field.
    texts = (example.given[field.key] for example in worksheet.examples if field.key in example.given)
    return next(text for text in texts if field.accepts(text)), "example"


def _fill_same(course: Course, inputs: dict[str, Input]) -> list[Problem]:
    problems = []
    for field in course.fields:
        if field.key in inputs or not field.same_as:
            continue
        other = inputs.get(field.same_as)
        if other is None:  # awaited itself
            continue
        reason = "must be given" if other.quantity is None else unfit(field, other.quantity, "us")
        if reason:
            problems.append(Problem(field.key, f"{field.label}, taken from {other.field.label}, {reason}."))
            continue
        worked_out = other.origin == "computed" or other.worked_out
        inputs[field.key] = Input(
            field, other.si, other.quantity, "typical", other.text, field.same_as, worked_out=worked_out
        )
    return problems
