"""A worksheet as a whole: a question, what the reader gives, how it is worked out, and all that is said about it."""

import itertools
import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property, partial

from calc.engine.fields import Field, Given
from calc.engine.recorded import Apart, OnlyWith, Sizes, Suits, Takes
from calc.engine.steps import AnyStep, Case, Cases, Course, branches_of, case_fields, fields_in, in_order, steps_in
from calc.engine.uses import Uses
from calc.engine.words import (
    Advice,
    Chart,
    Check,
    Comparison,
    Example,
    Methods,
    Must,
    Next,
    Outlook,
    Picture,
    Result,
    Spread,
    Sweep,
    Track,
    Variant,
)

MOST_COMBINATIONS = 100  # of choices that are all looked through


@dataclass(eq=False, repr=False)
class Worksheet:
    """A question, what the reader gives, how it is worked out, and all that is said about the answer.

    `verdict` is the sentence of the answer bar where nothing stronger than a note holds. `opens` are fields that stand
    open beside all that need an answer, where a worksheet asks more than the usual few at first sight. `line` is its
    answer in one sentence: worksheets that have its key in `tells` say it below their own. `other_names` are names by
    which a field may be given, each with its key; where cases ask it under several keys, with all of them. `again` are
    keys for which another worksheet is the place: who gave them there has not been at this one.
    """

    key: str
    guide: str
    question: str
    short: str
    fields: tuple[Field, ...]
    steps: tuple[AnyStep, ...]
    results: tuple[Result, ...]
    headline: str
    say: str
    examples: tuple[Example, ...]
    cases: tuple[Cases, ...] = ()
    givens: tuple[Given, ...] = ()
    musts: tuple[Must, ...] = ()
    advice: tuple[Advice, ...] = ()
    meaning: tuple[str, ...] = ()
    leaves_out: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
    picture: Picture | None = None
    chart: Chart | Track | None = None
    sweeps: tuple[Sweep | Spread, ...] = ()
    tables: tuple[Comparison | Methods, ...] = ()
    checks: tuple[Check, ...] = ()
    changes: tuple[Variant, ...] = ()
    not_checked: tuple[str, ...] = ()
    follow: tuple[Next, ...] = ()
    say_none: str = ""
    verdict: str = ""
    line: str = ""
    tells: tuple[str, ...] = ()
    opens: tuple[str, ...] = ()
    again: tuple[str, ...] = ()
    outlook: Outlook | None = None
    other_names: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    apart: Apart | None = None
    in_record: OnlyWith | None = None
    sizes: tuple[Sizes, ...] = ()
    suits: tuple[Suits, ...] = ()
    takes: tuple[Takes, ...] = ()
    _courses: dict[tuple[tuple[str, str], ...], "Course"] = field(default_factory=dict, compare=False, repr=False)

    def uses(self) -> Uses:
        plain = (self.question, self.short, *self.leaves_out, *self.not_checked)
        return Uses(
            fields=(*self.opens, *self.again),
            sentences=(self.say, self.say_none, self.verdict, self.line, *self.meaning),
            plain=plain,
            worksheets=self.tells,
            sources=self.sources,
        )

    def all_fields(self) -> tuple[Field, ...]:
        """Every field of every case, each once (a key may return in several cases)."""
        return self._every_field

    @cached_property
    def _every_field(self) -> tuple[Field, ...]:
        fields: list[Field] = []
        for asked in fields_in(self.fields, self.cases):
            if asked not in fields:
                fields.append(asked)
        return tuple(fields)

    def plan_key(self, key: str) -> str:
        """The word under which the plan keeps a field: its key, but for what it keeps apart for each part."""
        return f"{self.apart.word}_{key}" if self.apart and key in self.apart.keys else key

    def in_plan(self, asked: Field) -> Field:
        """A field of this worksheet as the plan has it: under the plan's word, and saying which part it is of."""
        if self.apart is None or asked.key not in self.apart.keys:
            return asked
        return replace(asked, key=self.plan_key(asked.key), label=f"{asked.label} ({self.apart.says})")

    def all_steps(self) -> list[AnyStep]:
        """Every step of every case."""
        return list(steps_in(self.steps, self.cases))

    def choice_fields(self) -> list[Field]:
        """The fields on which cases hang."""
        hung = {branch.on for branch in branches_of(self.cases)}
        return [field for field in self.all_fields() if field.key in hung]

    def rests_on(self, key: str) -> tuple[str, ...]:
        """The choices on which it hangs whether a field is asked, and in what unit."""
        return tuple(
            branch.on
            for branch in branches_of(self.cases)
            if branch.on != key
            and any(field.key == key for case in branch.cases.values() for field in case_fields(case))
        )

    def course(self, choices: Mapping[str, str]) -> "Course":
        """Fields and ordered steps for these choices."""
        fields, steps = list(self.fields), list(self.steps)
        taken: list[tuple[str, str]] = []
        waiting = list(self.cases)
        placed: dict[str, int] = {}
        while waiting:
            branch = waiting.pop(0)
            value = choices[branch.on]
            case = branch.cases.get(value, Case())
            taken.append((branch.on, value))
            # A case's fields stand right behind the choice they hang on.
            place = next(at for at, field in enumerate(fields) if field.key == branch.on) + 1 + placed.get(branch.on, 0)
            fields[place:place] = case.fields
            placed[branch.on] = placed.get(branch.on, 0) + len(case.fields)
            steps += case.steps
            waiting += case.cases
        name = tuple(taken)
        if name not in self._courses:
            self._courses[name] = Course(
                tuple(fields), in_order([given.key for given in self.givens], fields, steps), name
            )
        return self._courses[name]

    def all_courses(self) -> list["Course"]:
        """A course for every combination of the choices on which cases hang, or for every pair where these are many."""
        options = {choosing.key: [option.value for option in choosing.options] for choosing in self.choice_fields()}
        whole = math.prod(len(values) for values in options.values()) <= MOST_COMBINATIONS
        combinations = every_combination(options) if whole else every_pair(options)
        return list({id(course): course for course in (self.course(chosen) for chosen in combinations)}.values())


def every_combination(options: Mapping[str, list[str]]) -> list[dict[str, str]]:
    """Each value of each choice with each value of all the others."""
    return [dict(zip(options, values, strict=True)) for values in itertools.product(*options.values())]


def every_pair(options: Mapping[str, list[str]]) -> list[dict[str, str]]:
    """Few combinations in which any two values of two choices meet: each next one takes in what is lacking still."""
    lacking = {
        frozenset({(pair, first), (other, second)})
        for pair, other in itertools.combinations(options, 2)
        for first in options[pair]
        for second in options[other]
    }
    combinations = []
    while lacking:
        chosen = dict(min(sorted(pair) for pair in lacking))
        for key in [key for key in options if key not in chosen]:
            chosen = max(({**chosen, key: value} for value in options[key]), key=partial(_new_in, lacking=lacking))
        lacking -= _pairs(chosen)
        combinations.append({key: chosen[key] for key in options})
    return combinations


def _new_in(chosen: Mapping[str, str], lacking: set[frozenset[tuple[str, str]]]) -> int:
    """How many of the pairs that are lacking meet in a combination."""
    return len(lacking & _pairs(chosen))


def _pairs(chosen: Mapping[str, str]) -> set[frozenset[tuple[str, str]]]:
    return {frozenset(pair) for pair in itertools.combinations(chosen.items(), 2)}
