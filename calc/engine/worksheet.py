"""A worksheet as a whole: a question, what the reader gives, how it is worked out, and all that is said about it."""

import difflib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from calc.engine.fields import Checked, DeclarationError, Field, Given, check_source
from calc.engine.recorded import OnlyWith, Sizes, Suits, check_only_with, check_sizes, check_suits
from calc.engine.steps import AnyStep, Case, Cases, Plan, Step, branches_of, fields_in, in_order, steps_in
from calc.engine.words import (
    ATTENTION,
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
    placeholders,
)
from calc.guides import GUIDES


@dataclass(eq=False, repr=False)
class Worksheet(Checked):
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
    _plans: dict[tuple[tuple[str, str], ...], "Plan"] = field(default_factory=dict, compare=False, repr=False)

    def check(self) -> None:
        if self.guide not in GUIDES:
            near = difflib.get_close_matches(self.guide, GUIDES, 3)
            raise DeclarationError(f"{self.key}: no guide is called {self.guide!r}; near: {near}")
        for key in self.sources:
            check_source(key)
        for branch in branches_of(self.cases):
            options = {option.value for one in self.all_fields() if one.key == branch.on for option in one.options}
            # Shared cases may know more ways than this worksheet offers; one that knows none of them is a slip.
            if not options & branch.cases.keys():
                raise DeclarationError(f"{self.key}: {branch.on} has no option {' or '.join(branch.cases)}")
        keys = [one.key for one in self.all_fields()]
        for given in self.givens:
            if given.key in keys:
                raise DeclarationError(f"{self.key}: {given.key} is both a field and a given")
        for plan in self.all_plans():
            self._check(plan)
        for example in self.examples:
            self._check_example(example)
        self._check_recorded()
        for one in self.all_fields():
            texts = [example.given[one.key] for example in self.examples if one.key in example.given]
            if not (one.typical or one.optional or any(one.accepts(text) for text in texts)):
                raise DeclarationError(f"{self.key}: {one.key} has no typical value and stands in no example")

    def all_fields(self) -> tuple[Field, ...]:
        """Every field of every case, each once (a key may return in several cases)."""
        return self._every_field

    @cached_property
    def _every_field(self) -> tuple[Field, ...]:
        found: list[Field] = []
        for one in fields_in(self.fields, self.cases):
            if one not in found:
                found.append(one)
        return tuple(found)

    def all_steps(self) -> list[AnyStep]:
        """Every step of every case."""
        return list(steps_in(self.steps, self.cases))

    def choice_fields(self) -> list[Field]:
        """The fields on which cases hang."""
        hung = {branch.on for branch in branches_of(self.cases)}
        return [one for one in self.all_fields() if one.key in hung]

    def plan(self, choices: Mapping[str, str]) -> "Plan":
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
            place = next(at for at, one in enumerate(fields) if one.key == branch.on) + 1 + placed.get(branch.on, 0)
            fields[place:place] = case.fields
            placed[branch.on] = placed.get(branch.on, 0) + len(case.fields)
            steps += case.steps
            waiting += case.cases
        name = tuple(taken)
        if name not in self._plans:
            self._plans[name] = Plan(
                tuple(fields), in_order(self.key, [given.key for given in self.givens], fields, steps), name
            )
        return self._plans[name]

    def all_plans(self) -> list["Plan"]:
        """A plan for every combination of the choices on which cases hang."""
        combinations: list[dict[str, str]] = [{}]
        for one in self.choice_fields():
            combinations = [chosen | {one.key: option.value} for chosen in combinations for option in one.options]
        return list({id(plan): plan for plan in (self.plan(chosen) for chosen in combinations)}.values())

    def _check(self, plan: "Plan") -> None:
        known = {one.key: one.kind for one in plan.fields}
        known |= {given.key: given.kind for given in self.givens}
        for step in plan.steps:
            if step.key in known:
                raise DeclarationError(f"{self.key}: {step.key} stands twice")
            if isinstance(step, Step):
                for name, source in step.binding.items():
                    wanted = step.law.parameters[name].kind
                    if known[source] != wanted:
                        raise DeclarationError(
                            f"{self.key}: {step.key} binds {name} ({wanted}) to {source} ({known[source]})"
                        )
            known[step.key] = step.kind
        everywhere = known.keys() | {step.key for step in self.all_steps()} | {one.key for one in self.all_fields()}
        self._check_names(everywhere)
        for one in plan.fields:
            if one.same_as and one.same_as not in known:
                raise DeclarationError(f"{self.key}: {one.key} is the same as {one.same_as}, which is not there")

    def _check_names(self, known: Iterable[str]) -> None:
        names = set(known) | ({ATTENTION} if self.checks else set())
        wanted: list[tuple[str, str]] = [("result", result.key) for result in self.results]
        wanted.append(("headline", self.headline))
        for advice in self.advice:
            wanted += [(advice.code, name) for name in advice.condition.names | advice.condition.asked]
            wanted += [(advice.code, name) for name in (*advice.zeroes, *placeholders(advice.title + advice.say))]
        for must in self.musts:
            wanted += [("must", name) for name in must.condition.names]
        for check in self.checks:
            for condition in check.conditions:
                wanted += [(check.key, name) for name in condition.names | condition.asked]
            wanted += [(check.key, name) for name in (check.number, *placeholders(check.say))]
        if self.picture:
            wanted += [("picture", name) for name in self.picture.values.values()]
        if self.chart:
            wanted += [("chart", line.key) for line in self.chart.lines] + [("chart", self.chart.across)]
        for table in self.tables:
            wanted += [(table.title, name) for name in table.show]
        texts = (self.say, self.say_none, *self.meaning, *(result.say + result.label for result in self.results))
        wanted += [("a sentence", name) for text in texts for name in placeholders(text)]
        for place, name in wanted:
            if name not in names:
                near = difflib.get_close_matches(name, names, 3)
                raise DeclarationError(f"{self.key}: {place} names {name!r}, which is not there; near: {near}")

    def _check_recorded(self) -> None:
        """What is said to the record must name what is there."""
        names = {step.key for step in self.all_steps()} | {one.key for one in self.all_fields()}
        choices = {one.key: [option.value for option in one.options] for one in self.all_fields() if one.options}
        check_only_with(self.key, self.in_record)
        check_sizes(self.key, self.sizes, names, choices)
        check_suits(self.key, self.suits, names)

    def _check_example(self, example: Example) -> None:
        by_key: dict[str, list[Field]] = {}
        for one in self.all_fields():
            by_key.setdefault(one.key, []).append(one)
        for key, text in example.given.items():
            if key not in by_key:
                raise DeclarationError(f"{self.key}: the example {example.name} gives {key!r}, which is no field")
            if not any(one.accepts(text) for one in by_key[key]):
                by_key[key][0].check_value(text)  # says what is wrong
