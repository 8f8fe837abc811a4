"""The lines of a computation: laws bound to numbers, tables read by a choice, cases of a choice, and their order."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from calc.engine.fields import DeclarationError, Field
from calc.engine.uses import Uses
from calc.law import Law
from calc.units import System, Unit, shown_unit, unit_named


class Step:
    """One line of the computation: a law bound to fields, givens or earlier steps.

    A parameter that is not named in the binding takes the field, given or step of its own name.
    """

    def __init__(self, key: str, law: Law, label: str, /, us: str = "", si: str = "", **binding: str) -> None:
        self.key, self.law, self.label = key, law, label
        self.binding = {name: binding.get(name, name) for name in law.parameters}
        self.needs = tuple(self.binding.values())
        self.kind = law.returns.kind
        self.surplus = tuple(name for name in binding if name not in law.parameters)  # a slip, which the checker finds
        self.us, self.si = us, si

    def uses(self) -> Uses:
        return Uses(plain=(self.label,), units=((self.us, self.kind), (self.si, self.kind)))

    @property
    def source(self) -> str:
        return self.law.source

    def unit(self, system: System) -> Unit:
        named = self.us if system == "us" else self.si
        return unit_named(named, self.kind) if named else shown_unit(self.kind, system)


class Pick(NamedTuple):
    """A step that takes a number from a table by the reader's choice, such as a fuel's heat content."""

    key: str
    kind: str
    label: str
    on: str
    values: Mapping[str, str]
    source: str
    us: str = ""
    si: str = ""

    def uses(self) -> Uses:
        return Uses(
            fields=(self.on,),
            plain=(self.label,),
            amounts=tuple((text, self.kind) for text in self.values.values()),
            kinds=(self.kind,),
            units=((self.us, self.kind), (self.si, self.kind)),
            sources=(self.source,),
        )

    @property
    def needs(self) -> tuple[str, ...]:
        return (self.on,)

    def unit(self, system: System) -> Unit:
        named = self.us if system == "us" else self.si
        return unit_named(named, self.kind) if named else shown_unit(self.kind, system)


AnyStep = Step | Pick


class Case(NamedTuple):
    """The fields and steps that belong to one value of a choice.

    With `decides`, a number typed for a field that only this case asks chooses it, whatever else was typed. Where
    some of these have no usual value, it takes one of them.
    """

    fields: tuple[Field, ...] = ()
    steps: tuple[AnyStep, ...] = ()
    cases: tuple["Cases", ...] = ()
    decides: bool = False


class Cases:
    """Where the reader chooses a way: `Cases("method", fuel=Case(…), …)`; dashes in values are written _."""

    def __init__(self, on: str, /, **cases: Case) -> None:
        self.on = on
        self.cases = {value.replace("_", "-"): case for value, case in cases.items()}

    def uses(self) -> Uses:
        return Uses(fields=(self.on,))


@dataclass(eq=False, repr=False)
class Course:
    """What one combination of choices asks and computes: its fields, its steps in an order in which they can run."""

    fields: tuple[Field, ...]
    steps: tuple[AnyStep, ...]
    choices: tuple[tuple[str, str], ...]

    def steps_for(self, keys: Iterable[str]) -> tuple[AnyStep, ...]:
        """The steps, in order, without which these keys have no value."""
        needed = set(keys)
        for step in reversed(self.steps):
            if step.key in needed:
                needed.update(step.needs)
        return tuple(step for step in self.steps if step.key in needed)


def case_fields(case: Case) -> Iterator[Field]:
    """The fields of a case and of all the cases inside it."""
    return fields_in(case.fields, case.cases)


def fields_in(fields: tuple[Field, ...], cases: tuple[Cases, ...]) -> Iterator[Field]:
    yield from fields
    for branch in cases:
        for case in branch.cases.values():
            yield from fields_in(case.fields, case.cases)


def steps_in(steps: tuple[AnyStep, ...], cases: tuple[Cases, ...]) -> Iterator[AnyStep]:
    yield from steps
    for branch in cases:
        for case in branch.cases.values():
            yield from steps_in(case.steps, case.cases)


def branches_of(cases: tuple[Cases, ...]) -> Iterator[Cases]:
    """Every branch, those inside other cases too."""
    for branch in cases:
        yield branch
        for case in branch.cases.values():
            yield from branches_of(case.cases)


def in_order(givens: Iterable[str], fields: list[Field], steps: list[AnyStep]) -> tuple[AnyStep, ...]:
    """The steps in an order in which each finds what it needs, otherwise as written."""
    have = {field.key for field in fields} | set(givens)
    ordered: list[AnyStep] = []
    waiting = list(steps)
    while waiting:
        ready = next((step for step in waiting if have.issuperset(step.needs)), None)
        if ready is None:
            lacking = "; ".join(f"{step.key} needs {', '.join(sorted(set(step.needs) - have))}" for step in waiting)
            raise DeclarationError(f"these steps lack what they need: {lacking}")
        waiting.remove(ready)
        ordered.append(ready)
        have.add(ready.key)
    return tuple(ordered)
