"""The form of a published check: what was compared, with whose number, how close it must come and why."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Union

from calc.law import Law
from calc.units import UNITS, Quantity, Unit, read_quantity, shown_unit

KINDS = ("standard", "worked example", "library", "hand calculation", "common practice", "memory")


@dataclass(frozen=True)
class Published:
    """Who published a number: body or author, title, year, and the table, equation, page or library version."""

    body: str
    title: str
    year: str
    place: str


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
    `because` says why that much is allowed. `recompute` returns their number in SI again where `kind` is "library".
    """

    topic: str
    where: str
    law: Law
    given: Mapping[str, str | At]
    theirs: str
    within: str
    because: str
    source: Published
    kind: str
    recompute: Callable[[], float] | None = field(default=None, compare=False)

    def __post_init__(self) -> None:
        if self.kind not in KINDS:
            raise ValueError(f"{self.topic}: kind must be one of {', '.join(KINDS)}")
        if (self.kind == "library") != (self.recompute is not None):
            raise ValueError(f"{self.topic}: a check against a library, and only that, has recompute")

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
