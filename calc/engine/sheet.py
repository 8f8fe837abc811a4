"""A worksheet worked out with one reader's numbers: everything that pages, record and command line tell of it."""

from collections.abc import Callable
from typing import NamedTuple

from calc.engine.read import Problem, Reading
from calc.engine.steps import Course
from calc.engine.typed import Input
from calc.engine.values import Values
from calc.engine.working import WorkingLine
from calc.engine.worksheet import Worksheet
from calc.sources import Source
from calc.units import System


class Shown(NamedTuple):
    """A result as the reader sees it; `si` is None and `shown` a word where it does not exist.

    What is told in words, a verdict, has its key for `si`.
    """

    key: str
    label: str
    say: str
    kind: str
    si: float | str | None
    shown: str
    source: str


class Said(NamedTuple):
    """A piece of advice whose condition holds, with the reader's numbers in it."""

    level: str
    code: str
    title: str
    text: str
    source: str
    weight: int = 2
    beside: bool = False
    cause: str = ""


class Table(NamedTuple):
    """A comparison: column heads, rows of texts, a sentence, and in a few words whose figures they are."""

    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    say: str
    source: str = ""


class Band(NamedTuple):
    """Between what and what the headline lies when the assumed numbers vary as far as they usually do."""

    low: str
    high: str
    matters_most: str
    low_si: float
    high_si: float


def no_band() -> None:
    """Nothing was assumed, or there is no headline."""


class Verdict(NamedTuple):
    """One check of a chain as judged: pass, tight, stop, unworkable or not checked, its number, why, and whose rule.

    `unsaid` are the labels of what must be said before it can be judged.
    """

    key: str
    label: str
    status: str
    number: str
    text: str
    source: str
    unsaid: tuple[str, ...] = ()


class Judgement(NamedTuple):
    """The answer in words: its level ("stop", "unworkable", "caution" or "fine"), the word for it, and what is said."""

    level: str
    word: str
    text: str


class Sheet(NamedTuple):
    """Everything that is known about one worksheet with one reader's numbers. Without results, `problems` says why."""

    worksheet: Worksheet
    system: System
    reading: Reading
    values: Values
    results: tuple[Shown, ...] = ()
    headline: Shown | None = None
    say: str = ""
    judgement: Judgement | None = None
    meaning: tuple[str, ...] = ()
    advice: tuple[Said, ...] = ()
    work_through: Callable[[], tuple[WorkingLine, ...]] = tuple
    tabulate: Callable[[], tuple[Table, ...]] = tuple
    verdicts: tuple[Verdict, ...] = ()
    best_change: str = ""
    try_ends: Callable[[], Band | None] = no_band
    assumed: tuple[str, ...] = ()
    sources: tuple[tuple[str, Source], ...] = ()
    notes: tuple[str, ...] = ()

    @property
    def working(self) -> tuple[WorkingLine, ...]:
        """Step by step how the results come about; made when it is asked for, since not everybody looks."""
        return self.work_through()

    @property
    def tables(self) -> tuple[Table, ...]:
        """What else is laid beside the results; made when it is asked for, as the answer comes first."""
        return self.tabulate()

    @property
    def band(self) -> Band | None:
        """Between what the headline lies; likewise."""
        return self.try_ends()

    @property
    def course(self) -> Course:
        """The fields and steps of the choices made."""
        return self.reading.course

    @property
    def inputs(self) -> dict[str, Input]:
        """An input for every field, as read."""
        return self.reading.inputs

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Why there are no results."""
        return self.reading.problems

    @property
    def example(self) -> str:
        """The name of the worked example, if that is what was read."""
        return self.reading.example

    @property
    def rough(self) -> bool:
        """Whether the headline leans on a number that nobody gave."""
        return bool(self.assumed) and not self.example
