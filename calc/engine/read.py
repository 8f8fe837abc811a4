"""What a person typed becomes values, or sentences that say what to type instead."""

import difflib
import math
import re
from collections.abc import Mapping
from typing import NamedTuple

from calc.engine.fields import Field, Option, quantity
from calc.engine.steps import Plan, branches_of, case_fields
from calc.engine.worksheet import Worksheet
from calc.units import (
    LONGEST_TEXT,
    DryBasis,
    Quantity,
    System,
    Unit,
    UnitError,
    grouped,
    read_quantity,
    round_briefly,
    round_to,
    with_unit,
)

ORIGINS = ("typed", "link", "computed", "typical", "example")


class Typed(NamedTuple):
    """A text as somebody gave it, the unit system that was in force then, and who gave it."""

    text: str
    system: System = "us"
    origin: str = "typed"


class Input(NamedTuple):
    """A field with its value: SI number, or the choice's value; the quantity as read; who gave it."""

    field: Field
    si: float | str
    quantity: Quantity | None
    origin: str
    text: str
    from_field: str = ""

    def shown(self, system: System) -> str:
        """The value as a reader of `system` sees it."""
        if self.quantity is None:
            return next(option.label for option in self.field.options if option.value == self.si)
        unit = self.field.unit(system)
        return with_unit(grouped(typed_digits(self.quantity, unit), system), unit)


class Problem(NamedTuple):
    """A sentence about one input: what is wrong and what to type instead."""

    key: str
    text: str


class Reading(NamedTuple):
    """Everything read for one worksheet: its plan, an input for every field, or the problems."""

    plan: Plan
    inputs: dict[str, Input]
    problems: tuple[Problem, ...]
    example: str
    unused: tuple[str, ...] = ()


def typed_digits(read: Quantity, unit: Unit) -> str:
    """The number in `unit`: as typed when it was typed in that unit, else converted, to four figures."""
    plain = read.number.lstrip("-").replace(".", "", 1).isdigit()
    if read.unit == unit and plain and len(read.number) <= 12:
        return read.number
    number = unit.from_si(read.si)
    if abs(number) < 1e-12 * abs(unit.offset or 1):
        return "0"
    return round_briefly(number, 4)


def read(worksheet: Worksheet, given: Mapping[str, Typed], system: System) -> Reading:
    """Read what was given; what was not takes its typical value, or the worked example's.

    With nothing given at all it is the worked example.
    """
    problems = _unknown(worksheet, given)
    example = worksheet.examples[0]
    if not given:
        given = {key: Typed(text, "us", "example") for key, text in example.given.items()}
        name = example.name
    else:
        # "I do not know" is a text left out by somebody who thought about it: no longer the worked example.
        given = {key: one for key, one in given.items() if one.text.strip() or one.origin != "typical"}
        name = ""
    choices, choice_problems = _choices(worksheet, given)
    plan = worksheet.plan(choices)
    inputs: dict[str, Input] = {}
    problems += choice_problems
    for field in plan.fields:
        if field.key in {problem.key for problem in choice_problems}:
            continue
        try:
            found = _input(worksheet, field, given.get(field.key), choices, system)
        except UnitError as wrong:
            like = f", like {_like(field, given[field.key].system)}" if wrong.wants_example else ""
            problems.append(Problem(field.key, f"{field.label} {wrong.reason}{like}."))
            continue
        if found:
            inputs[field.key] = found
    if not problems:
        problems += _fill_same(plan, inputs)
        inputs = {field.key: inputs[field.key] for field in plan.fields if field.key in inputs}
    if not problems:
        values = {one.key: one.value for one in worksheet.givens} | {key: one.si for key, one in inputs.items()}
        for must in worksheet.musts:
            condition = must.condition
            if all(name in values for name in condition.names) and not condition(values, {}):
                problems.append(Problem(must.field, must.say))
    unused = tuple(key for key, typed in given.items() if typed.origin == "typed" and key not in inputs)
    return Reading(plan, inputs, tuple(problems), name, unused)


def _unknown(worksheet: Worksheet, given: Mapping[str, Typed]) -> list[Problem]:
    known = {field.key for field in worksheet.all_fields()}
    problems = []
    for key in given:
        if key not in known:
            near = difflib.get_close_matches(key[:60], known, 2)
            hint = f"did you mean {' or '.join(near)}?" if near else f"it asks for {', '.join(sorted(known))}."
            problems.append(Problem(key[:60], f"This worksheet has no input called “{key[:60]}”: {hint}"))
    return problems


def _choices(worksheet: Worksheet, given: Mapping[str, Typed]) -> tuple[dict[str, str], list[Problem]]:
    """The value of every choice, and what is wrong with those given."""
    choices: dict[str, str] = {}
    problems: list[Problem] = []
    for field in worksheet.all_fields():
        if field.kind != "choice" or field.key in choices:
            continue
        fallback = _implied(worksheet, field, given) or _fallback(worksheet, field, choices)[0]
        if field.key in given:
            try:
                choices[field.key] = _chosen(field, given[field.key].text)
                continue
            except UnitError as wrong:
                problems.append(Problem(field.key, f"{field.label} {wrong.reason}."))
        choices[field.key] = fallback
    return choices, problems


MOST_NAMED = 14  # of a longer list only the nearest are named


def _implied(worksheet: Worksheet, choice: Field, given: Mapping[str, Typed]) -> str:
    """The value of a choice that nobody made but whose numbers somebody gave: an area and a class mean "quick"."""
    asked_anyway = {field.key for field in worksheet.fields}
    cases = next((branch.cases for branch in branches_of(worksheet.cases) if branch.on == choice.key), {})
    fitting: dict[str, int] = {}
    for value, case in cases.items():
        own = {field.key: field for field in case_fields(case) if field.key not in asked_anyway}
        fits = [typed for key, typed in given.items() if key in own and _fits(own[key], typed)]
        if case.decides and any(typed.origin != "computed" for typed in fits):
            return value
        fitting[value] = len(fits)
    most = max(fitting.values(), default=0)
    usual = _fallback(worksheet, choice, {})[0] if most else ""
    if not most or fitting.get(usual) == most:
        return ""
    return next(value for value, count in fitting.items() if count == most)


def _fits(field: Field, typed: Typed) -> bool:
    try:
        if field.kind == "choice":
            _chosen(field, typed.text)
        else:
            _quantity(field, typed)
    except UnitError:
        return False
    return True


def _chosen(field: Field, text: str) -> str:
    wanted = " ".join(text[:LONGEST_TEXT].split()).casefold()
    for option in field.options:
        if wanted in (option.value.casefold(), option.label.casefold()):
            return option.value
    alike = [option.value for option in field.options if _alike(wanted, option)]
    if len(alike) == 1:
        return alike[0]
    names = [option.value for option in field.options]
    if len(names) > MOST_NAMED:
        near = difflib.get_close_matches(wanted.replace(" ", "-"), names, 6, 0.4) or names[:6]
        raise UnitError(f"must be one of the {len(names)} in its list, such as {', '.join(near)}")
    raise UnitError(
        f"must be one of {', '.join(names[:-1])} or {names[-1]}" if len(names) > 1 else f"must be {names[0]}"
    )


def _alike(wanted: str, option: Option) -> bool:
    """Whether a text is an option's value but for dashes and inch marks, or begins its label: "by hand", '3/4"'."""
    plain = wanted.rstrip('"').strip().replace("_", " ").replace("-", " ")
    if plain == option.value.casefold().replace("-", " "):
        return True
    words, label = re.findall(r"[\w/]+", plain), re.findall(r"[\w/]+", option.label.casefold())
    return len(plain) > 2 and label[: len(words)] == words


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


def _input(
    worksheet: Worksheet, field: Field, typed: Typed | None, choices: Mapping[str, str], system: System
) -> Input | None:
    if typed is None:
        if field.same_as:
            return None
        text, origin = _fallback(worksheet, field, choices)
        text = choices.get(field.key, text)
        typed = Typed(text, "us", origin)
    if field.kind == "choice":
        value = _chosen(field, typed.text)
        return Input(field, value, None, typed.origin, value)
    if not typed.text.strip():
        raise UnitError(
            f"is empty: type a number, like {_like(field, typed.system)}"
            + (", or say that you do not know" if field.typical else "")
        )
    found = _quantity(field, typed)
    return Input(field, found.si, found, typed.origin, typed.text)


def _quantity(field: Field, typed: Typed) -> Quantity:
    """What was typed as a quantity that the field accepts; UnitError says why it is none."""
    found = read_quantity(typed.text, field.kind, field.unit(typed.system), typed.system)
    if isinstance(found.unit, DryBasis) and not field.dry_basis:
        raise UnitError("has no dry basis: type a plain percentage")
    _check_range(field, found, typed.system)
    return found


def _like(field: Field, system: System) -> str:
    unit = field.unit(system)
    middle = (
        unit.from_si(math.sqrt(field.low_si * field.high_si)) if field.low_si > 0 else unit.from_si(field.high_si) / 2
    )
    return with_unit(grouped(round_to(middle, 1), system), unit)


def _check_range(field: Field, found: Quantity, system: System) -> None:
    low, high = field.low_si, field.high_si
    slack = 1e-9 * max(abs(low), abs(high))
    if low - slack <= found.si <= high + slack:
        return
    unit = found.unit
    ends = [bound_text(bound, field.kind, unit, system) for bound in (field.low, field.high)]
    raise UnitError(f"must be between {ends[0]} and {ends[1]}")


def bound_text(bound: str, kind: str, unit: Unit, system: System) -> str:
    """A declared bound in the unit that the reader typed."""
    return with_unit(grouped(round_briefly(unit.from_si(quantity(bound, kind)), 4), system), unit)


def _fill_same(plan: Plan, inputs: dict[str, Input]) -> list[Problem]:
    problems = []
    for field in plan.fields:
        if field.key in inputs or not field.same_as:
            continue
        other = inputs[field.same_as]
        try:
            if other.quantity is None:
                raise UnitError("must be given")
            _check_range(field, other.quantity, "us")
        except UnitError as wrong:
            problems.append(Problem(field.key, f"{field.label}, taken from {other.field.label}, {wrong.reason}."))
            continue
        inputs[field.key] = Input(field, other.si, other.quantity, "typical", other.text, field.same_as)
    return problems
