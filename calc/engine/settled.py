"""A whole plan worked out: what one worksheet finds stands in the others for the number that nobody gave.

So one quantity has one answer, whichever worksheet of the plan is read. What somebody gave stands, but where several
needs are met by the highest (`keeps_highest`): there the higher counts, and `Raised` says so.
"""

from collections.abc import Callable, Mapping
from typing import NamedTuple

from calc.engine.fields import Field
from calc.engine.offering import apart, may_be_taken, text_of
from calc.engine.plan import Entries, Entry, given_for
from calc.engine.read import read
from calc.engine.recorded import Takes
from calc.engine.steps import branches_of
from calc.engine.values import Values, settle, work_out
from calc.engine.worksheet import Worksheet
from calc.law import OutOfRange

MOST_ROUNDS = 6  # an answer goes from house to emitter to store to fire: each round takes it one worksheet further

Held = Callable[[Worksheet, Entries], bool]


class Raised(NamedTuple):
    """A number that somebody gave and that a worksheet of the same plan needs higher."""

    field: Field
    given: Entry
    worksheet: str
    need: float


class Settled(NamedTuple):
    """A plan with its answers: the entries, the numbers given too low, and the values of every worksheet in it."""

    entries: Entries
    raised: tuple[Raised, ...]
    values: Mapping[str, Values]

    def taken(self, worksheet: Worksheet) -> Values:
        """The steps of a worksheet whose values others of the plan have worked out."""
        steps = {step.key for step in self.entries.reading(worksheet).course.steps}
        return {
            wanted.key: self.values[wanted.worksheet][_there(wanted)]
            for wanted in worksheet.takes
            if wanted.key in steps and _there(wanted) in self.values.get(wanted.worksheet, {})
        }


def _there(wanted: Takes) -> str:
    return wanted.result or wanted.key


def settled(
    entries: Entries, worksheets: Mapping[str, Worksheet], fields: Mapping[str, list[Field]], held: Held
) -> Settled:
    """Work out every worksheet that is `held`, again and again until nothing changes."""
    now, values = entries, dict[str, Values]()
    raised: tuple[Raised, ...] = ()
    for _ in range(MOST_ROUNDS):
        values = {
            key: worked
            for key, worksheet in worksheets.items()
            if held(worksheet, now) and (worked := _values(worksheet, now))
        }
        answers, raised = _answers(entries, worksheets, fields, values)
        changed = {**entries, **_cases(worksheets, values, answers), **answers}
        if changed == dict(now):
            break
        now = Entries(changed, entries.reader)
    return Settled(now, raised, values)


def _values(worksheet: Worksheet, entries: Entries) -> Values:
    """The values of a worksheet; none while something in it cannot be read or used."""
    reading = read(worksheet, given_for(worksheet, entries), entries.reader)
    if reading.problems:
        return {}
    try:
        return settle(worksheet, work_out(worksheet, reading))
    except OutOfRange:
        return {}


def _answers(
    entries: Entries,
    worksheets: Mapping[str, Worksheet],
    fields: Mapping[str, list[Field]],
    values: Mapping[str, Values],
) -> tuple[dict[str, Entry], tuple[Raised, ...]]:
    """What the worksheets give each other, and which given numbers are below a need."""
    offered: dict[str, list[tuple[str, float]]] = {}
    for name, those in values.items():
        for key in _gives(worksheets[name], fields, those):
            offered.setdefault(key, []).append((name, float(those[key] or 0)))
    for worksheet in worksheets.values():
        for wanted in worksheet.takes:
            value, asked = values.get(wanted.worksheet, {}).get(_there(wanted)), fields.get(wanted.key)
            free = wanted.key not in offered or wanted.result  # it may take another result than the one of that name
            if asked and free and isinstance(value, float) and asked[0].holds(value):
                offered[wanted.key] = [(wanted.worksheet, value)]
    answers: dict[str, Entry] = {}
    raised: list[Raised] = []
    for key, all_given in offered.items():
        field, there = fields[key][0], entries.get(key)
        name, value = max(all_given, key=lambda offer: offer[1]) if field.keeps_highest else all_given[0]
        if field.keeps_highest and field.same_as and not _sets(field.same_as, name, offered, entries, fields):
            continue  # something else sets the number that this one follows, and may need it on every day
        if there and there.origin in ("typed", "link") and there.text.strip():
            standing = entries.si(field, there)
            if not field.keeps_highest or standing is None or value <= standing or not apart(value, standing):
                continue
            raised.append(Raised(field, there, name, value))
        answers[key] = Entry(text_of(field, min(value, field.high_si)), "computed", name)
    return answers, tuple(raised)


def _sets(
    key: str,
    worksheet: str,
    offered: Mapping[str, list[tuple[str, float]]],
    entries: Entries,
    fields: Mapping[str, list[Field]],
) -> bool:
    """Whether this worksheet's need is the highest of all for `key`, the numbers given included."""
    needs = dict(offered.get(key, ()))
    given = entries.get(key)
    if given and given.origin in ("typed", "link"):
        needs[""] = entries.si(fields[key][0], given) or 0.0
    return worksheet in needs and needs[worksheet] >= max(needs.values()) * (1 - 1e-4)


def _gives(worksheet: Worksheet, fields: Mapping[str, list[Field]], values: Values) -> list[str]:
    """The keys of a worksheet's results that others ask, where they mean the same there."""
    asked = {field.key for field in worksheet.all_fields()}
    keys = []
    for result in worksheet.results:
        value = values.get(result.key)
        if result.key in asked or result.key not in fields or not isinstance(value, float | int):
            continue
        field = fields[result.key][0]
        beyond = field.keeps_highest and value > field.high_si  # a need that no plant meets must not be lost
        if (field.holds(value) or beyond) and may_be_taken(worksheet, result.key, values):
            keys.append(result.key)
    return keys


def _cases(
    worksheets: Mapping[str, Worksheet], values: Mapping[str, Values], answers: Mapping[str, Entry]
) -> dict[str, Entry]:
    """The choices that an answer makes: a case that asks for what another worksheet has found is the case at hand."""
    made = {}
    for worksheet in worksheets.values():
        taken = {
            wanted.key: wanted.worksheet
            for wanted in worksheet.takes
            if wanted.worksheet in values and wanted.key in answers
        }
        for branch in branches_of(worksheet.cases):
            for value, case in branch.cases.items():
                for field in case.fields:
                    if field.key in taken:
                        made[worksheet.plan_key(branch.on)] = Entry(value, "computed", taken[field.key])
    return made
