"""What a worksheet asks and what it brings itself: fields, their typical values and options, and given numbers."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import Literal, NamedTuple

from calc.engine.uses import Uses
from calc.units import Quantity, System, Unit, UnitError, read_quantity, shown_unit, unit_named


class DeclarationError(ValueError):
    """A mistake in a worksheet's declaration; it stops."""


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


class Typical(NamedTuple):
    """A sourced value for "I do not know", with the band in which most real ones lie and who could tell the real one.

    A `text` on the side that warns has a `kindest`: what the value may be at best. A danger that is gone there rests on
    nothing that anybody said. Where it depends on a choice, `text` (and `low`, `high`) map the choice's values to texts
    and `on` names the field.
    """

    text: str | Mapping[str, str]
    source: str
    low: str | Mapping[str, str] = ""
    high: str | Mapping[str, str] = ""
    ask: str = ""
    on: str = ""
    kindest: str = ""


class Option(NamedTuple):
    """One value of a choice: its key in links, what readers see, and other words by which people ask for it.

    One that lies somewhere is also chosen by a latitude and longitude, in degrees, to which it is the nearest.
    """

    value: str
    label: str
    also: tuple[str, ...] = ()
    at: tuple[float, float] | None = None


@dataclass(repr=False)
class Field:
    """A number or a choice that the reader gives. One key has one label, kind and meaning everywhere.

    `low` and `high` are the ends of what is accepted, as text a reader would type; `too_low` says what a lower number
    would mean. A field that has `unless_given` (a text) or `same_as` (another field's key) may be left alone by
    definition: what stands in is part of the worksheet's meaning and does not make its result rough. `typical` does.
    `uncertainty` ("10 %" or "2 F°") is how well a person usually knows the number. `dry_basis` allows a moisture as
    meters read it.
    `small_shares`: shares under one percent are sensible here, so a plain number below 1 must come with its unit.
    `whole`: what is counted in whole numbers, such as tanks.
    `keeps_highest`: where several worksheets work it out, the plan keeps the highest, which serves them all.
    `elsewhere`: values of this choice that only other worksheets offer; in a plan they are no answer to this one.
    Nothing stands in for a number that is `awaited`: until somebody gives it, what rests on it is not known.
    """

    key: str
    kind: str
    label: str
    hint: str = ""
    low: str = ""
    high: str = ""
    too_low: str = ""
    us: str = ""
    si: str = ""
    options: tuple[Option, ...] = ()
    elsewhere: tuple[str, ...] = ()
    typical: Typical | None = None
    unless_given: str = ""
    file: str = ""  # the option with which the page asks for a weather file of the reader's
    same_as: str = ""
    uncertainty: str = ""
    dry_basis: bool = False
    small_shares: bool = False
    whole: bool = False
    keeps_highest: bool = False
    awaited: bool = False

    def uses(self) -> Uses:
        typical = self.typical
        return Uses(
            fields=tuple(key for key in (self.same_as, typical.on if typical else "") if key),
            plain=(self.label, self.hint, typical.ask if typical else "", *(option.label for option in self.options)),
            kinds=(self.kind,),
            units=((self.us, self.kind), (self.si, self.kind)),
            sources=(typical.source,) if typical else (),
        )

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
    def beside(self) -> str:
        """What stands beside the field: its hint, and for a share how a plain number is read."""
        share = "A plain number is in percent." if self.kind == "fraction" else ""
        if self.small_shares:
            share += " Below 1, type the % sign."
        return f"{self.hint} {share}".strip()

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

    def offering(self, *values: str) -> "Field":
        """The same choice with these options alone; in a plan, the others are answers to other worksheets."""
        others = tuple(option.value for option in self.options if option.value not in values)
        return self.but(options=tuple(option for option in self.options if option.value in values), elsewhere=others)


class Given(NamedTuple):
    """A number that the worksheet itself brings: a rule's constant, a margin, a rating condition.

    A sentence that asks a reader to keep a `limit` tells it in other units with two figures, on its safe side.
    """

    key: str
    kind: str
    label: str
    text: str
    source: str
    us: str = ""
    si: str = ""
    limit: Literal["", "least", "most"] = ""

    def uses(self) -> Uses:
        return Uses(
            plain=(self.label,),
            amounts=((self.text, self.kind),),
            kinds=(self.kind,),
            units=((self.us, self.kind), (self.si, self.kind)),
            sources=(self.source,),
        )

    @property
    def value(self) -> float:
        return quantity(self.text, self.kind)

    def unit(self, system: System) -> Unit:
        named = self.us if system == "us" else self.si
        return unit_named(named, self.kind) if named else shown_unit(self.kind, system)
