"""What is said about an answer: results, advice, checks, pictures, charts, tables, examples and where to go next."""

from collections.abc import Mapping
from typing import NamedTuple

from calc.engine.conditions import Condition, condition
from calc.engine.sentences import placeholders
from calc.engine.uses import Uses
from calc.tables.year import MONTHS

ATTENTION = "parts_to_mend"  # how many checks of a chain do not simply hold; a value of worksheets that have them
# The levels of advice, gravest first, each as the reader is told it.
LEVEL_WORDS = {"stop": "Stop", "unworkable": "This cannot work", "caution": "Caution", "note": "Note"}
FINE = "No caution"  # said where no stop, nothing unworkable and no caution holds
# Said where only cautions hold that are beside the question.
FINE_HERE, BESIDE = "No caution here", "What is said of another part of the plant stands below."
ROLES = ("tank", "use", "fire", "limit", "other")  # of a chart's line
# Results of a worksheet with an outlook: the whole in one word, and the change after which it stands best.
VERDICT, CHANGE = "verdict", "change_that_helps"
VERDICT_WORDS = {
    "yes": "Yes",
    "yes-with": "Yes, with {why}",
    "no": "Not like this, because {why}",
    "not-yet": "Not yet known, because {why}",
}
# The drawings that a worksheet may show, and the kind of value that stands for each of their parts. With "?" behind it
# the value need not be there in every case; "?" alone takes any kind.
DRAWINGS: Mapping[str, Mapping[str, str]] = {
    "tank": {"top": "temperature", "low": "temperature"},
    "calendar": {"fires": "count"},  # the step that is read from a run's record
    "stove": {"water": "power", "room": "power", "leaving": "temperature"},
    "dump": {"kind": "choice", "size": "?", "supply": "temperature", "back": "temperature?", "height": "length"},
    "taps": {"said": "choice", "needed": "temperature?"},
    "rows": {"said": "choice", "heat": "energy"},
    "growth": {"said": "choice", "growth": "volume", "vessel": "volume?"},
    "duct": {"enters": "temperature", "water": "temperature", "register": "temperature", "lost": "fraction?"},
    "slab": {"warm": "temperature", "cool": "temperature", "surface": "temperature", "up": "power", "down": "power"},
    "trench": {"long": "length", "deep": "length", "water": "temperature", "lost": "power"},
    "logs": {"wet": "fraction", "dry": "fraction", "green": "fraction", "wood": "volume", "water": "mass"},
    "hottest": {
        "outlet": "temperature",
        "store": "temperature",
        "outlet_boils": "temperature",
        "high_boils": "temperature",
        "store_boils": "temperature",
        "pump_boils": "temperature",
    },
    "winters": {
        "said": "choice",
        "wood": "money",
        "now": "money",
        "saved": "money",
        "heat": "price_per_energy",
        "hours": "price_per_energy",
    },
    "ice": {"ice": "temperature", "burst": "temperature", "coldest": "temperature"},
    "flow": {
        "heat": "power",
        "drop": "temperature_difference",
        "flow": "flow",
        "speed": "velocity",
        "limit": "velocity",
        "head": "length",
    },
    "fill": {
        "scale": "mass",
        "scale_later": "mass",
        "rust": "mass",
        "rust_later": "mass",
        "hardness": "hardness",
        "allowed": "hardness?",
    },
    "months": {
        "said": "choice",
        "year": "fraction",
        "december": "fraction",
        "june": "fraction",
        **{f"{of}_{month}": "energy" for of in ("need", "used") for month in MONTHS},
    },
    "sizes": {
        "recommended": "volume",
        "by_full_burn": "volume?",
        "by_hours": "volume?",
        "by_house_area": "volume?",
        "by_firebox": "volume?",
        "by_rating": "volume?",
        "by_eu_formula": "volume?",
    },
}


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
    taken_when: str = ""  # the condition under which other worksheets may take it; always, unless given
    else_why: str = ""  # why they may not, where it does not hold

    def uses(self) -> Uses:
        return Uses(
            names=(self.key,),
            where=(self.key,),
            only=(self.only,) if self.only else (),
            sentences=(self.label, self.say),
            plain=(self.missing, self.else_why),
            conditions=(self.taken_when,) if self.taken_when else (),
            units_of=((self.us, self.key), (self.si, self.key)),
        )


class Advice(NamedTuple):
    """A sentence shown when its condition holds: note, caution, stop (danger) or unworkable (cannot do the job).

    `title` is the conclusion, `say` the reason with numbers ("{usable_heat}") and what to do. `zeroes` names results
    that are exactly nothing when it holds. A stop that rests only on numbers nobody gave is said as a caution that asks
    for them, unless the condition `stays` holds. Where there is room for few, the weightier come first: `weight` is 3
    for what can hurt people or the plant, 1 for a reminder that holds for every plan of the kind. Of what shares a
    `cause` only the gravest is said, in a worksheet and in a whole plan: one thing to mend is told once.
    """

    level: str
    code: str
    when: str
    title: str
    say: str
    source: str = ""
    zeroes: tuple[str, ...] = ()
    stays: str = ""
    weight: int = 2
    beside: bool = False
    cause: str = ""

    def uses(self) -> Uses:
        return Uses(
            numbers=self.zeroes,
            where=tuple(self.condition.names),
            conditions=(self.when,),
            sentences=(self.title, self.say),
            sources=(self.source,) if self.source else (),
        )

    @property
    def condition(self) -> Condition:
        return condition(self.when)


class Check(NamedTuple):
    """One check of a chain: the number it is judged by, when it fails, when it is only just enough, and what is said.

    `fails` and `tight` are conditions; `level` is what a failure is: "stop" (danger) or "unworkable" (cannot do the
    job). A check whose number does not exist is "not checked" unless `fails` holds. One with `only`, a condition, is
    part of the chain only where that holds. One without conditions is named, with its number, and not judged. `cause`
    is that of advice: a plan as a whole says it once.
    """

    key: str
    label: str
    number: str
    fails: str
    tight: str
    say: str
    source: str
    level: str = "unworkable"
    stays: str = ""  # the condition under which a stop stays one though it rests only on numbers that nobody gave
    only: str = ""
    cause: str = ""

    def uses(self) -> Uses:
        return Uses(
            numbers=(self.number,),
            conditions=tuple(text for text in (self.fails, self.tight, self.only) if text),
            sentences=(self.say,),
            plain=(self.label,),
            sources=(self.source,),
        )

    @property
    def conditions(self) -> tuple[Condition, Condition]:
        return condition(self.fails), condition(self.tight)

    @property
    def names(self) -> set[str]:
        """Everything by which it is judged."""
        return {self.number}.union(*(condition(text).names for text in (self.fails, self.tight, self.only) if text))


class Outlook(NamedTuple):
    """The whole in one word: "no" with any stop or unworkable, "not-yet", "yes-with" with any caution, else "yes".

    `awaits` are names, each with the end of "not yet known, because …" for where it has no value. `because` gives to a
    code of advice the end of "not like this, because …" or of a caution's "yes, with …"; the first that holds is said.
    """

    awaits: tuple[tuple[str, str], ...]
    because: Mapping[str, str]

    def uses(self) -> Uses:
        return Uses(plain=tuple(why for _, why in self.awaits), names=tuple(name for name, _ in self.awaits))


class Must(NamedTuple):
    """What the fields must satisfy together to have a meaning; else an error beside `field`."""

    that: str
    field: str
    say: str

    def uses(self) -> Uses:
        return Uses(fields=(self.field,), where=tuple(self.condition.names), conditions=(self.that,), plain=(self.say,))

    @property
    def condition(self) -> Condition:
        return condition(self.that)


class Picture(NamedTuple):
    """A drawing fed by the worksheet's values: a template's name and which value stands for which of its parts."""

    name: str
    caption: str
    values: Mapping[str, str]

    def uses(self) -> Uses:
        return Uses(names=tuple(self.values.values()), plain=(self.caption,))


class Line(NamedTuple):
    """One line of a chart: the result it follows, its words, and its role (tank, use, fire, limit or other)."""

    key: str
    label: str
    role: str = "tank"

    def uses(self) -> Uses:
        return Uses(numbers=(self.key,), plain=(self.label,))


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

    def uses(self) -> Uses:
        units = tuple((unit, line.key) for line in self.lines for unit in (self.us, self.si))
        return Uses(
            numbers=(self.across,),
            fields=(self.across,),
            where=(self.across,),
            sentences=(self.say,),
            plain=(self.title,),
            texts=((self.across, self.low), (self.across, self.high)),
            units_of=units,
        )


class Trace(NamedTuple):
    """One line of a track: a series of the record, its words and its role."""

    series: str
    label: str
    role: str = "tank"

    def uses(self) -> Uses:
        return Uses(plain=(self.label,))


class Track(NamedTuple):
    """A chart of what a run recorded over days: series of the record from which the step `of` is read.

    `a_day` names the number of the record that says how many readings a day has; without it there are 24.
    """

    title: str
    of: str
    across: str
    lines: tuple[Trace, ...]
    say: str
    a_day: str = ""

    def uses(self) -> Uses:
        return Uses(numbers=(self.of,), where=(self.of,), sentences=(self.say,), plain=(self.title, self.across))


class Sweep(NamedTuple):
    """The same worksheet at several values of one field, worked out one after another when the reader asks for it.

    `points` are texts such as "x0.5" or "plus 200 gal"; `falls` is the result that a larger value brings down, and
    where it stops falling is told. `more` is the point that is held against the reader's own value in a sentence.
    """

    title: str
    across: str
    points: tuple[str, ...]
    show: tuple[str, ...]
    falls: str
    more: str = ""

    def uses(self) -> Uses:
        return Uses(
            numbers=(self.across, *self.show, self.falls),
            fields=(self.across,),
            where=(self.across,),
            plain=(self.title,),
            texts=tuple((self.across, point) for point in (*self.points, *([self.more] if self.more else []))),
        )


class Spread(NamedTuple):
    """Which uncertain number moves the answer most: each alone over its range, one after another when asked for.

    `of` are results; the bars are those of the first.
    """

    title: str
    of: tuple[str, ...]

    def uses(self) -> Uses:
        return Uses(numbers=self.of, where=self.of, plain=(self.title,))


class Variant(NamedTuple):
    """One row of a comparison: its label and what is changed; "x2" is twice the reader's value.

    A row whose label names what a case does not have is left out there.
    """

    label: str
    changes: Mapping[str, str]

    def uses(self) -> Uses:
        return Uses(
            fields=tuple(self.changes),
            where=tuple(placeholders(self.label)),
            sentences=(self.label,),
            texts=tuple(self.changes.items()),
        )


class Comparison(NamedTuple):
    """The same worksheet side by side with one thing changed, and which results to show."""

    title: str
    rows: tuple[Variant, ...]
    show: tuple[str, ...]
    say: str = ""
    source: str = ""

    def uses(self) -> Uses:
        sources = (self.source,) if self.source else ()
        return Uses(names=self.show, sentences=(self.say,), plain=(self.title,), sources=sources)


class Methods(NamedTuple):
    """Several results side by side, each with the source of its rule, and how they differ."""

    title: str
    show: tuple[str, ...]
    say: str = ""

    def uses(self) -> Uses:
        return Uses(numbers=self.show, sentences=(self.say,), plain=(self.title,))


class Example(NamedTuple):
    """A worked example from the invented houses: its name and every value that the reader would have typed."""

    name: str
    given: Mapping[str, str]

    def uses(self) -> Uses:
        return Uses(fields=tuple(self.given), plain=(self.name,))


class Next(NamedTuple):
    """Where to go from here: another worksheet and why."""

    worksheet: str
    why: str

    def uses(self) -> Uses:
        return Uses(plain=(self.why,), worksheets=(self.worksheet,))
