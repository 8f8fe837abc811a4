"""What is said about an answer: results, advice, checks, pictures, charts, tables, examples and where to go next."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple

from calc.engine.conditions import Condition, condition
from calc.engine.fields import Checked, DeclarationError, check_source

ATTENTION = "links_to_mend"  # how many checks of a chain do not simply hold; a value of worksheets that have them
# The levels of advice, gravest first, each as the reader is told it.
LEVEL_WORDS = {"stop": "Stop", "unworkable": "This cannot work", "caution": "Caution", "note": "Note"}


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
        if self.level not in LEVEL_WORDS:
            raise DeclarationError(f"{self.code}: level must be one of {', '.join(LEVEL_WORDS)}")
        if self.source:
            check_source(self.source)
        _ = self.condition

    @property
    def condition(self) -> Condition:
        return condition(self.when)


@dataclass(eq=False, repr=False)
class Check(Checked):
    """One check of a chain: the number it is judged by, when it fails, when it is only just enough, and what is said.

    `fails` and `tight` are conditions; `level` is what a failure is: "stop" (danger) or "unworkable" (cannot do the
    job). A check whose number does not exist is "not checked" unless `fails` holds.
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
            raise DeclarationError(f"{self.key}: a check fails as stop or as unworkable")
        _ = self.conditions

    @property
    def conditions(self) -> "tuple[Condition, Condition]":
        return condition(self.fails), condition(self.tight)


class Must(NamedTuple):
    """What the fields must satisfy together to have a meaning; else an error beside `field`."""

    that: str
    field: str
    say: str

    @property
    def condition(self) -> Condition:
        return condition(self.that)


def placeholders(text: str) -> list[str]:
    """The names that stand in braces in a sentence."""
    return [piece.partition("}")[0] for piece in text.split("{")[1:]]


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
