"""What a worksheet asks and what it brings itself: fields, their typical values and options, and given numbers."""

import difflib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import NamedTuple

from calc.sources import SOURCES
from calc.units import KINDS, SYSTEMS, Quantity, System, Unit, UnitError, read_quantity, shown_unit, unit_named


class DeclarationError(ValueError):
    """A mistake in a worksheet's declaration; it stops the import."""


@cache
def declared(text: str, kind: str) -> Quantity:
    """The quantity in a text written in a declaration, which always names its unit unless the kind has none."""
    unit = shown_unit(kind, "us")
    try:
        return read_quantity(text, kind, unit, "us")
    except UnitError as wrong:
        raise DeclarationError(f"{text!r} as {kind}: {wrong.reason}") from None


def quantity(text: str, kind: str) -> float:
    """The SI value of a text written in a declaration."""
    return declared(text, kind).si


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
    `keeps_highest`: where several worksheets work it out, the plan keeps the highest, which serves them all.
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
    keeps_highest: bool = False

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

    def holds(self, value: float) -> bool:
        """Whether an SI value lies in the accepted range, but for what its conversion may have added."""
        slack = 1e-9 * max(abs(self.low_si), abs(self.high_si))
        return self.low_si - slack <= value <= self.high_si + slack

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
        elif not self.holds(quantity(text, self.kind)):
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
