"""The words a worksheet is written in. A declaration is data: no branch, no lambda; a mistake in it stops the import.

WORKSHEET = Worksheet(
    key="stored-heat", guide="storage", question="How much usable heat is in the tank?",
    fields=(STORE_VOLUME, STORE_TOP, LOWEST_USEFUL, LOAD),
    steps=(
        Step("heat_content", water.mean_volume_heat_content, "Heat in each volume and degree", low="lowest_useful", …),
        Step("usable_heat", store.usable_heat, "Usable heat", volume="store_volume", …),
    ),
    results=(Result("usable_heat", figures=3), …),
    headline="usable_heat", …
)
"""

import ast
import difflib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cache, cached_property
from typing import NamedTuple

from calc.law import FUNCTIONS, SPACE, Law
from calc.sources import SOURCES
from calc.units import KINDS, SYSTEMS, System, Unit, UnitError, read_quantity, shown_unit, unit_named

ATTENTION = "links_to_mend"  # how many links of a chain do not simply hold; a value of worksheets that have checks
LEVELS = ("stop", "unworkable", "caution", "note")


class DeclarationError(ValueError):
    """A mistake in a worksheet's declaration; it stops the import."""


@cache
def quantity(text: str, kind: str) -> float:
    """The SI value of a text written in a declaration, which always names its unit unless the kind has none."""
    unit = shown_unit(kind, "us")
    try:
        return read_quantity(text, kind, unit, "us").si
    except UnitError as wrong:
        raise DeclarationError(f"{text!r} as {kind}: {wrong.reason}") from None


def check_source(key: str) -> None:
    """A source key must exist; near matches are named."""
    if key not in SOURCES:
        near = difflib.get_close_matches(key, SOURCES, 3)
        raise DeclarationError(f"no source is called {key!r}" + (f"; did you mean {', '.join(near)}?" if near else ""))


class Checked:
    """A declaration that looks for its own mistakes as it is made.

    None is ever changed. They are not frozen because freezing a dataclass takes longer than everything else about it,
    and a page makes all of them as it opens.
    """

    def __post_init__(self) -> None:
        if __debug__:  # left out of the page's Python: the build and the tests have found every mistake before
            self.check()

    def check(self) -> None:
        """Raises DeclarationError."""
        raise NotImplementedError


class Typical(NamedTuple):
    """A sourced value for "I do not know", with the band in which most real ones lie and who could tell the real one.

    Where it depends on a choice, `text` (and `low`, `high`) map the choice's values to texts and `on` names the field.
    """

    text: str | Mapping[str, str]
    source: str
    low: str | Mapping[str, str] = ""
    high: str | Mapping[str, str] = ""
    ask: str = ""
    on: str = ""


class Option(NamedTuple):
    """One value of a choice: its key in links, what readers see, and a longer explanation if it needs one."""

    value: str
    label: str


@dataclass(repr=False)
class Field(Checked):
    """A number or a choice that the reader gives. One key has one label, kind and meaning everywhere.

    `low` and `high` are the ends of what is accepted, as text a reader would type. A field that has `unless_given` (a
    text) or `same_as` (another field's key) may be left alone by definition: what stands in is part of the worksheet's
    meaning and does not make its result rough. `typical` does. `uncertainty` ("10 %" or "2 F°") is how well a person
    usually knows the number. `dry_basis` allows a moisture as meters read it.
    """

    key: str
    kind: str
    label: str
    hint: str = ""
    low: str = ""
    high: str = ""
    us: str = ""
    si: str = ""
    options: tuple[Option, ...] = ()
    typical: Typical | None = None
    unless_given: str = ""
    same_as: str = ""
    uncertainty: str = ""
    dry_basis: bool = False

    def check(self) -> None:
        if self.kind not in KINDS:
            raise DeclarationError(f"{self.key}: no kind is called {self.kind!r}")
        if (self.kind == "choice") != bool(self.options):
            raise DeclarationError(f"{self.key}: a choice, and only a choice, has options")
        if self.kind != "choice" and not (self.low and self.high):
            raise DeclarationError(f"{self.key}: both ends of the accepted range are needed")
        if self.kind != "choice" and not self.low_si < self.high_si:
            raise DeclarationError(f"{self.key}: the range from {self.low} to {self.high} is empty")
        if self.typical:
            check_source(self.typical.source)
        for system in SYSTEMS if self.kind != "choice" else ():
            self.unit(system)
        for text in (self.unless_given, *_texts(self.typical)):
            self.check_value(text)

    @property
    def low_si(self) -> float:
        return quantity(self.low, self.kind)

    @property
    def high_si(self) -> float:
        return quantity(self.high, self.kind)

    @property
    def optional(self) -> bool:
        return bool(self.unless_given or self.same_as)

    def unit(self, system: System) -> Unit:
        """The unit that stands beside the field."""
        named = self.us if system == "us" else self.si
        return unit_named(named, self.kind) if named else shown_unit(self.kind, system)

    def check_value(self, text: str) -> None:
        """A text in a declaration must be a value that the field accepts."""
        if not text:
            return
        if self.kind == "choice":
            if text not in [option.value for option in self.options]:
                raise DeclarationError(f"{self.key}: {text!r} is not one of its options")
        elif not self.low_si * (1 - 1e-12) - 1e-12 <= quantity(text, self.kind) <= self.high_si * (1 + 1e-12):
            raise DeclarationError(f"{self.key}: {text} is outside {self.low} to {self.high}")

    def accepts(self, text: str) -> bool:
        """Whether a text in a declaration is a value that the field accepts."""
        try:
            self.check_value(text)
        except DeclarationError:
            return False
        return True

    def but(self, **changes: object) -> "Field":
        """The same quantity with another hint, range, default or shown unit in one worksheet; never another meaning."""
        if {"key", "label"} & changes.keys():
            raise DeclarationError(f"{self.key}: a key keeps its label everywhere")
        return replace(self, **changes)  # type: ignore[arg-type]


def _texts(typical: Typical | None) -> Iterator[str]:
    for value in (typical.text, typical.low, typical.high) if typical else ():
        if isinstance(value, str):
            yield value
        else:
            yield from value.values()


@dataclass(eq=False, repr=False)
class Given(Checked):
    """A number that the worksheet itself brings: a rule's constant, a margin, a rating condition."""

    key: str
    kind: str
    label: str
    text: str
    source: str
    us: str = ""
    si: str = ""

    def check(self) -> None:
        check_source(self.source)
        _ = self.value

    @property
    def value(self) -> float:
        return quantity(self.text, self.kind)

    def unit(self, system: System) -> Unit:
        named = self.us if system == "us" else self.si
        return unit_named(named, self.kind) if named else shown_unit(self.kind, system)


class Step:
    """One line of the computation: a law bound to fields, givens or earlier steps.

    A parameter that is not named in the binding takes the field, given or step of its own name.
    """

    def __init__(self, key: str, law: Law, label: str, /, us: str = "", si: str = "", **binding: str) -> None:
        unknown = binding.keys() - law.parameters.keys()
        if unknown:
            near = ", ".join(law.parameters)
            raise DeclarationError(f"{key}: {law.name} takes {near}, not {', '.join(sorted(unknown))}")
        self.key, self.law, self.label = key, law, label
        self.binding = {name: binding.get(name, name) for name in law.parameters}
        self.needs = tuple(self.binding.values())
        self.kind = law.returns.kind
        self._named = {"us": us, "si": si}
        for system in SYSTEMS:
            self.unit(system)

    @property
    def source(self) -> str:
        return self.law.source

    def unit(self, system: System) -> Unit:
        named = self._named[system]
        return unit_named(named, self.kind) if named else shown_unit(self.kind, system)


@dataclass(eq=False, repr=False)
class Pick(Checked):
    """A step that takes a number from a table by the reader's choice, such as a fuel's heat content."""

    key: str
    kind: str
    label: str
    on: str
    values: Mapping[str, str]
    source: str
    us: str = ""
    si: str = ""

    def check(self) -> None:
        check_source(self.source)
        for text in self.values.values():
            quantity(text, self.kind)

    @property
    def needs(self) -> tuple[str, ...]:
        return (self.on,)

    def unit(self, system: System) -> Unit:
        named = self.us if system == "us" else self.si
        return unit_named(named, self.kind) if named else shown_unit(self.kind, system)


AnyStep = Step | Pick


class Case(NamedTuple):
    """The fields and steps that belong to one value of a choice.

    With `decides`, a number typed for a field that only this case asks chooses it, whatever else was typed.
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


class Result(NamedTuple):
    """What the reader takes away: a step (or field) with its label, its digits, and a word when it does not exist."""

    key: str
    label: str = ""
    say: str = ""
    figures: int = 3
    decimals: int | None = None
    us: str = ""
    si: str = ""
    missing: str = "does not exist"
    only: tuple[str, str] | None = None  # (choice field, value): listed only in that case


class Condition:
    """A condition in text over fields, givens and steps: "store_top >= boiling_here - margin and emitter == 'floor'".

    `missing(x)` is true when a step has no value, `assumed(x)` when nobody gave the field, `given(x)` when one did.
    Without a value that it reads, a condition does not hold; where it asks missing(x) first, that decides.
    """

    ALLOWED = (
        ast.Expression, ast.BinOp, ast.UnaryOp, ast.Call, ast.Name, ast.Constant, ast.Load,
        ast.Add, ast.Sub, ast.Mult, ast.Div, ast.Pow, ast.USub,
        ast.Compare, ast.BoolOp, ast.And, ast.Or, ast.Not, ast.Lt, ast.LtE, ast.Gt, ast.GtE, ast.Eq, ast.NotEq,
    )  # fmt: skip
    ASKED = ("missing", "assumed", "given")

    def __init__(self, text: str) -> None:
        tree = ast.parse(text, mode="eval")
        self.text = text
        self.names: set[str] = set()
        self.asked: set[str] = set()
        perhaps: set[str] = set()  # what missing() asks for: the condition itself says what its absence means
        for node in ast.walk(tree):
            if not isinstance(node, self.ALLOWED):
                raise DeclarationError(f"{type(node).__name__} is not allowed in a condition: {text}")
            if isinstance(node, ast.Name):
                self.names.add(node.id)
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in self.ASKED:
                asked = node.args[0]
                if not isinstance(asked, ast.Name):
                    raise DeclarationError(f"{node.func.id}() takes the name of a field or step: {text}")
                self.asked.add(asked.id)
                if node.func.id == "missing":
                    perhaps.add(asked.id)
                node.args = [ast.copy_location(ast.Constant(asked.id), asked)]
        self.names -= FUNCTIONS.keys() | set(self.ASKED)
        self._needed = {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)} & self.names - perhaps
        # Checked against the allow-list above, so evaluating the code reaches nothing but the names given to it.
        self.code = compile(ast.fix_missing_locations(tree), "<condition>", "eval")

    def __call__(self, values: Mapping[str, float | str | None], origins: Mapping[str, str]) -> bool:
        for name in self._needed:
            if values.get(name) is None:
                return False
        space = SPACE
        if self.asked:
            space = SPACE | {
                "missing": lambda name: values.get(name) is None,
                "assumed": lambda name: origins.get(name) in ("typical", "example"),
                "given": lambda name: origins.get(name) in ("typed", "link", "computed"),
            }
        return bool(eval(self.code, space, values))  # noqa: S307


@dataclass(eq=False, repr=False)
class Advice(Checked):
    """A sentence shown when its condition holds: note, caution, stop (danger) or unworkable (cannot do the job).

    `title` is the conclusion, `say` the reason with numbers ("{usable_heat}") and what to do. `zeroes` names results
    that are exactly nothing when it holds.
    """

    level: str
    code: str
    when: str
    title: str
    say: str
    source: str = ""
    zeroes: tuple[str, ...] = ()

    def check(self) -> None:
        if self.level not in LEVELS:
            raise DeclarationError(f"{self.code}: level must be one of {', '.join(LEVELS)}")
        if self.source:
            check_source(self.source)
        _ = self.condition

    @property
    def condition(self) -> Condition:
        return _condition(self.when)


@dataclass(eq=False, repr=False)
class Check(Checked):
    """One link of a chain: the number it is judged by, when it fails, when it is only just enough, and what is said.

    `fails` and `tight` are conditions; `level` is what a failure is: "stop" (danger) or "unworkable" (cannot do the
    job). A link whose number does not exist is "not checked" unless `fails` holds.
    """

    key: str
    label: str
    number: str
    fails: str
    tight: str
    say: str
    source: str
    level: str = "unworkable"

    def check(self) -> None:
        check_source(self.source)
        if self.level not in ("stop", "unworkable"):
            raise DeclarationError(f"{self.key}: a link fails as stop or as unworkable")
        _ = self.conditions

    @property
    def conditions(self) -> "tuple[Condition, Condition]":
        return _condition(self.fails), _condition(self.tight)


class Must(NamedTuple):
    """What the fields must satisfy together to have a meaning; else an error beside `field`."""

    that: str
    field: str
    say: str

    @property
    def condition(self) -> Condition:
        return _condition(self.that)


def placeholders(text: str) -> list[str]:
    """The names that stand in braces in a sentence."""
    return [piece.partition("}")[0] for piece in text.split("{")[1:]]


@cache
def _condition(text: str) -> Condition:
    return Condition(text)


class Picture(NamedTuple):
    """A drawing fed by the worksheet's values: a template's name and which value stands for which of its parts."""

    name: str
    caption: str
    values: Mapping[str, str]


class Line(NamedTuple):
    """One line of a chart: the result it follows, its words, and its role (tank, use, fire, limit or other)."""

    key: str
    label: str
    role: str = "tank"


class Chart(NamedTuple):
    """A sweep of one field while the others stay: `low` and `high` are texts, or "x0.25" for a part of the reader's."""

    title: str
    across: str
    low: str
    high: str
    lines: tuple[Line, ...]
    say: str
    points: int = 25
    us: str = ""
    si: str = ""


class Variant(NamedTuple):
    """One row of a comparison: its label and what is changed; "x2" is twice the reader's value."""

    label: str
    changes: Mapping[str, str]


class Comparison(NamedTuple):
    """The same worksheet side by side with one thing changed, and which results to show."""

    title: str
    rows: tuple[Variant, ...]
    show: tuple[str, ...]
    say: str = ""
    source: str = ""


class Methods(NamedTuple):
    """Several results side by side, each with the source of its rule, and how they differ."""

    title: str
    show: tuple[str, ...]
    say: str = ""


class Example(NamedTuple):
    """A worked example from the invented houses: its name and every value that the reader would have typed."""

    name: str
    given: Mapping[str, str]


class Next(NamedTuple):
    """Where to go from here: another worksheet and why."""

    worksheet: str
    why: str


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
    _plans: dict[tuple[tuple[str, str], ...], "Plan"] = field(default_factory=dict, compare=False, repr=False)

    def check(self) -> None:
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
        for one in _fields_in(self.fields, self.cases):
            if one not in found:
                found.append(one)
        return tuple(found)

    def all_steps(self) -> list[AnyStep]:
        """Every step of every case."""
        return list(_steps_in(self.steps, self.cases))

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
            self._plans[name] = Plan(tuple(fields), _in_order(self, fields, steps), name)
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

    def _check_example(self, example: Example) -> None:
        by_key: dict[str, list[Field]] = {}
        for one in self.all_fields():
            by_key.setdefault(one.key, []).append(one)
        for key, text in example.given.items():
            if key not in by_key:
                raise DeclarationError(f"{self.key}: the example {example.name} gives {key!r}, which is no field")
            if not any(one.accepts(text) for one in by_key[key]):
                by_key[key][0].check_value(text)  # says what is wrong


@dataclass(eq=False, repr=False)
class Plan:
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
    return _fields_in(case.fields, case.cases)


def _fields_in(fields: tuple[Field, ...], cases: tuple[Cases, ...]) -> Iterator[Field]:
    yield from fields
    for branch in cases:
        for case in branch.cases.values():
            yield from _fields_in(case.fields, case.cases)


def _steps_in(steps: tuple[AnyStep, ...], cases: tuple[Cases, ...]) -> Iterator[AnyStep]:
    yield from steps
    for branch in cases:
        for case in branch.cases.values():
            yield from _steps_in(case.steps, case.cases)


def branches_of(cases: tuple[Cases, ...]) -> Iterator[Cases]:
    """Every branch, those inside other cases too."""
    for branch in cases:
        yield branch
        for case in branch.cases.values():
            yield from branches_of(case.cases)


def _in_order(worksheet: Worksheet, fields: list[Field], steps: list[AnyStep]) -> tuple[AnyStep, ...]:
    """The steps in an order in which each finds what it needs, otherwise as written."""
    have = {one.key for one in fields} | {given.key for given in worksheet.givens}
    ordered: list[AnyStep] = []
    waiting = list(steps)
    while waiting:
        ready = next((step for step in waiting if have.issuperset(step.needs)), None)
        if ready is None:
            lacking = {step.key: sorted(set(step.needs) - have) for step in waiting}
            raise DeclarationError(f"{worksheet.key}: these steps lack what they need: {lacking}")
        waiting.remove(ready)
        ordered.append(ready)
        have.add(ready.key)
    return tuple(ordered)
