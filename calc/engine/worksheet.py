"""A worksheet as a whole: a question, what the reader gives, how it is worked out, and all that is said about it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from calc.engine.fields import Field, Given
from calc.engine.recorded import OnlyWith, Sizes, Suits, Takes
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
    Picture,
    Result,
    Variant,
)


@dataclass(eq=False, repr=False)
class Worksheet:
    """A question, what the reader gives, how it is worked out, and all that is said about the answer."""

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
    chart: Chart | None = None
    tables: tuple[Comparison | Methods, ...] = ()
    checks: tuple[Check, ...] = ()
    changes: tuple[Variant, ...] = ()
    not_checked: tuple[str, ...] = ()
    follow: tuple[Next, ...] = ()
    say_none: str = ""
    in_record: OnlyWith | None = None
    sizes: tuple[Sizes, ...] = ()
    suits: tuple[Suits, ...] = ()
    takes: tuple[Takes, ...] = ()
    _courses: dict[tuple[tuple[str, str], ...], "Course"] = field(default_factory=dict, compare=False, repr=False)

    def uses(self) -> Uses:
        plain = (self.question, self.short, *self.leaves_out, *self.not_checked)
        return Uses(sentences=(self.say, self.say_none, *self.meaning), plain=plain, sources=self.sources)

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
        """A course for every combination of the choices on which cases hang."""
        combinations: list[dict[str, str]] = [{}]
        for choosing in self.choice_fields():
            combinations = [
                chosen | {choosing.key: option.value} for chosen in combinations for option in choosing.options
            ]
        return list({id(course): course for course in (self.course(chosen) for chosen in combinations)}.values())
