"""The form of a published check: what was compared, with whose number, how close it must come and why."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Union

from calc.law import Law
from calc.units import UNITS, Quantity, Unit, read_quantity, shown_unit

# What a source is, and how the evidence page counts it. The first six come from outside.
KINDS = {
    "standard": "standards, laws, and releases of standards bodies",
    "public body": "agencies, universities, laboratories and journals",
    "textbook": "textbooks, handbooks and teaching material",
    "independent library": "other people's programs: CoolProp, iapws, fluids, ht, psychrolib",
    "numerical solution": "the same equations solved another way, by SciPy or NumPy",
    "trade": "makers' papers, trade pages, newspapers, hospitals",
    "own arithmetic": "sums of our own, by hand or with units carried by pint: they prove no physics",
    "common practice": "customs of the trade that nobody published as a rule",
    "from memory": "published, but recalled and not looked up again",
}
OUTSIDE = tuple(KINDS)[:6]
RECOMPUTED = ("independent library", "numerical solution")


@dataclass(frozen=True)
class Published:
    """Who published a number: body or author, title, year, the table, equation, page or version, and what it is."""

    body: str
    title: str
    year: str
    place: str
    kind: str

    def __post_init__(self) -> None:
        if self.kind not in KINDS:
            raise ValueError(f"{self.title}: kind must be one of {', '.join(KINDS)}")

    @property
    def outside(self) -> bool:
        """Whether somebody else stands behind the number."""
        return self.kind in OUTSIDE


@dataclass(frozen=True)
class At:
    """A law evaluated at given arguments, to stand as an argument of another."""

    law: Law
    given: Mapping[str, Union[str, "At"]]


@dataclass(frozen=True)
class Check:
    """One comparison.

    `given` holds texts such as "60 °C" (or `At` for values that come from another law); `theirs` is their number as
    printed, with its unit; `within` is a share ("0.15 %") or an amount in the unit of the answer ("0.3 F°"), and
    `because` says why that much is allowed. `recompute` returns their number in SI again where a program gave it.
    """

    topic: str
    where: str
    law: Law
    given: Mapping[str, str | At]
    theirs: str
    within: str
    because: str
    source: Published
    recompute: Callable[[], float] | None = field(default=None, compare=False)

    def __post_init__(self) -> None:
        if self.source.kind in RECOMPUTED and self.recompute is None:
            raise ValueError(f"{self.topic}: what a program gave has recompute")

    @property
    def ours_si(self) -> float:
        return evaluate(self.law, self.given)

    @property
    def theirs_si(self) -> float:
        return _read(self.theirs, self.law.returns.kind)

    @property
    def theirs_unit(self) -> Unit:
        """The unit in which they print their number."""
        return _quantity(self.theirs, self.law.returns.kind).unit

    @property
    def allowed_si(self) -> float:
        if self.within.endswith("%"):
            return abs(self.theirs_si) * float(self.within[:-1]) / 100
        kind = self.law.returns.kind
        return _read(self.within, "temperature_difference" if kind == "temperature" else kind)


def evaluate(law: Law, given: Mapping[str, str | At]) -> float:
    """The law's SI result at arguments given as texts or as other laws' results."""
    arguments = {}
    for name, value in given.items():
        kind = law.parameters[name].kind
        arguments[name] = evaluate(value.law, value.given) if isinstance(value, At) else _read(value, kind)
    return law(**arguments)


def _read(text: str, kind: str) -> float:
    return _quantity(text, kind).si


def _quantity(text: str, kind: str) -> Quantity:
    plain = next((unit for unit in UNITS if unit.kind == kind and unit.text == ""), None)
    return read_quantity(text, kind, plain or shown_unit(kind, "si"), "us")
