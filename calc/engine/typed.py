"""The one reader of what a person typed: text, unit and range become a value, or a sentence that says what to type."""

import difflib
import math
import re
from collections.abc import Callable
from typing import NamedTuple

from calc.engine.fields import Field, Option, declared
from calc.engine.nearest import nearest
from calc.units import (
    LONGEST_TEXT,
    DryBasis,
    Quantity,
    System,
    Unit,
    UnitError,
    deserved,
    grouped,
    is_bare,
    read_quantity,
    round_briefly,
    round_to,
    show,
    with_unit,
)

ORIGINS = ("typed", "link", "computed", "typical", "example")
# Where a given number came from, if somebody said so, in the words of a record.
GIVERS = {"measured": "measured", "bill": "from the bill", "stock": "dealer's stock", "maker": "from the maker"}
LONGEST_ITEM = 40  # characters of the key of something in a dealer's stock
MOST_NAMED = 14  # of a longer list only the nearest are named


class Typed(NamedTuple):
    """A text as somebody gave it, the unit system that was in force then, who gave it, and from where (GIVERS).

    `unit` is what stood beside the box, in ASCII: a bare number is meant in it, whatever the label says later. Without
    it a bare number is in the unit that the field shows. `item` is the key of what a dealer's stock calls it,
    `worksheet` that of the worksheet which worked it out, if one did.
    """

    text: str
    system: System = "us"
    origin: str = "typed"
    unit: str = ""
    giver: str = ""
    item: str = ""
    worksheet: str = ""


class Input(NamedTuple):
    """A field with its value: SI number, or the choice's value; the quantity as read; who gave it.

    `nearest` says what lies nearest, and how far, where a point on the globe was typed for a choice. `worked_out`: the
    number is another worksheet's, also where this field only follows the one that took it.
    """

    field: Field
    si: float | str
    quantity: Quantity | None
    origin: str
    text: str
    from_field: str = ""
    nearest: str = ""
    giver: str = ""
    item: str = ""
    worked_out: bool = False

    def shown(self, system: System) -> str:
        """The value as a reader of `system` sees it; one that a worksheet gave to the digits that it deserves."""
        if self.quantity is None:
            return next(option.label for option in self.field.options if option.value == self.si)
        unit = self.field.unit(system)
        if self.origin == "computed" or self.worked_out:
            shown = show(self.quantity.si, unit, system, 4)
            # A need beyond every plant is taken over as the highest that the field can hold.
            return f"{shown} or more" if self.field.keeps_highest and self.si == self.field.high_si else shown
        return with_unit(grouped(self.digits(unit), system), unit)

    def digits(self, unit: Unit) -> str:
        """The number as typed; converted, what nobody typed and every temperature has the digits of its kind: 38 °C."""
        assert self.quantity is not None
        rounded = self.origin in ("typical", "example") or self.field.kind.startswith("temperature")
        if rounded and self.quantity.unit != unit:
            return deserved(self.quantity.si, unit)
        return typed_digits(self.quantity, unit)


class Outcome(NamedTuple):
    """What came of a text: a value, or why it is none.

    `reason` completes a sentence that begins with the field's label, and `like` goes on with an example of what to type
    in a box. `quantity` is what stands in the text, also where the field cannot take it.
    """

    value: Input | None
    reason: str = ""
    quantity: Quantity | None = None
    like: str = ""


class Reader:
    """Reads what is typed, each text once, however many fields and worksheets ask for it.

    One is made where a request begins, and goes with it; nothing that a person typed outlives the request.
    """

    def __init__(self) -> None:
        self._read: dict[tuple[str, System, str, str], Quantity | UnitError] = {}

    def read(self, field: Field, typed: Typed) -> Outcome:
        """The value of a text in a field, or why the field cannot take it."""
        if field.kind == "choice":
            near = nearest(field, typed.text)
            if near:
                said = near.said(typed.system)
                place = Input(field, near.option.value, None, typed.origin, near.option.value, nearest=said)
                return Outcome(place._replace(giver=typed.giver, item=typed.item))
            try:
                chosen = _chosen(field, typed.text)
            except UnitError as wrong:
                return Outcome(None, wrong.reason)
            return Outcome(Input(field, chosen, None, typed.origin, chosen, giver=typed.giver, item=typed.item))
        if not typed.text.strip():
            unknown = ", or say that you do not know" if field.typical else ""
            return Outcome(None, f"is empty: type a number, like {_like(field, typed.system)}{unknown}")
        quantity = self._quantity(field, typed)
        if isinstance(quantity, UnitError):
            like = f", like {_like(field, typed.system)}" if quantity.wants_example else ""
            return Outcome(None, quantity.reason, like=like)
        reason = unfit(field, quantity, typed.system)
        given = Input(field, quantity.si, quantity, typed.origin, typed.text, giver=typed.giver, item=typed.item)
        return Outcome(None if reason else given, reason, quantity)

    def _quantity(self, field: Field, typed: Typed) -> Quantity | UnitError:
        unit = field.unit(typed.system)
        text = in_its_unit(typed, unit)
        asked = (text, typed.system, field.kind, unit.text)
        if asked not in self._read:
            try:
                self._read[asked] = read_quantity(text, field.kind, unit, typed.system)
            except UnitError as wrong:
                self._read[asked] = wrong
        return self._read[asked]


def item_key(text: str) -> str:
    """A text if it can be the key of something in a dealer's stock: lower case, digits and dashes; else nothing."""
    return text if len(text) <= LONGEST_ITEM and re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", text) else ""


def in_its_unit(typed: Typed, shown: Unit) -> str:
    """The text, with the unit in which a bare number was meant where the field now shows another one."""
    meant = typed.unit[:LONGEST_TEXT]
    return f"{typed.text.strip()} {meant}" if meant not in ("", shown.ascii) and is_bare(typed.text) else typed.text


def declared_input(field: Field, text: str, origin: str) -> Input:
    """What a text of a declaration gives: it stands in for what nobody typed."""
    if field.kind == "choice":
        return Input(field, text, None, origin, text)
    quantity = declared(text, field.kind)
    return Input(field, quantity.si, quantity, origin, text)


def unfit(field: Field, quantity: Quantity, system: System) -> str:
    """Why a field cannot take a quantity, with its bounds in the unit that was typed; empty when it can."""
    if isinstance(quantity.unit, DryBasis) and not field.dry_basis:
        return "has no dry basis: type a plain percentage"
    if field.small_shares and quantity.taken_as:
        return f"could be {quantity.si:.4g} % or {quantity.taken_as}: type the one you mean with its % sign"
    if field.whole and quantity.si != round(quantity.si):
        return "must be a whole number"
    if field.holds(quantity.si):
        return ""
    ends = bounds(field, quantity.unit, system)
    more = f"; {field.too_low}" if field.too_low and quantity.si < field.low_si else ""
    if field.dry_basis and quantity.si > field.high_si and not isinstance(quantity.unit, DryBasis):
        more = f"; a meter reads dry basis: for its reading type {quantity.number} % db"
    return f"must be between {ends[0]} and {ends[1]}{more}"


def bounds(field: Field, unit: Unit, system: System) -> tuple[str, str]:
    """The ends of what a field accepts in `unit`: as declared, or else rounded inward, so that both are accepted."""
    return (
        at_least(declared(field.low, field.kind), unit, system),
        at_most(declared(field.high, field.kind), unit, system),
    )


def at_least(end: Quantity, unit: Unit, system: System) -> str:
    """A lower end as a person would write it in `unit`, never below it."""
    return with_unit(grouped(_end(end, unit, math.ceil), system), unit)


def at_most(end: Quantity, unit: Unit, system: System) -> str:
    """An upper end as a person would write it in `unit`, never above it."""
    return with_unit(grouped(_end(end, unit, math.floor), system), unit)


def _end(end: Quantity, unit: Unit, inward: Callable[[float], int]) -> str:
    """An end's digits; in another unit than it was declared in, two figures."""
    number = unit.from_si(end.si)
    exact = float(round_to(number, 12))
    if abs(exact) < 1e-9:
        return "0"
    if end.unit == unit:
        return round_briefly(exact, 4)
    step = 10.0 ** (math.floor(math.log10(abs(exact))) - 1)
    return round_briefly(inward(float(round_to(exact / step, 12))) * step, 4)


def typed_digits(read: Quantity, unit: Unit) -> str:
    """The number in `unit`: as typed when it was typed in that unit, else converted, to four figures."""
    plain = read.number.lstrip("-").replace(".", "", 1).isdigit()
    if read.unit == unit and plain and len(read.number) <= 12:
        return read.number
    number = unit.from_si(read.si)
    if abs(number) < 1e-12 * abs(unit.offset or 1):
        return "0"
    return round_briefly(number, 4)


def _like(field: Field, system: System) -> str:
    unit = field.unit(system)
    middle = (
        unit.from_si(math.sqrt(field.low_si * field.high_si)) if field.low_si > 0 else unit.from_si(field.high_si) / 2
    )
    return with_unit(grouped(round_to(middle, 1), system), unit)


def _chosen(field: Field, text: str) -> str:
    wanted = " ".join(text[:LONGEST_TEXT].split()).casefold()
    for option in field.options:
        if wanted in (option.value.casefold(), option.label.casefold(), *option.also):
            return option.value
    alike = [option.value for option in field.options if _alike(wanted, option)]
    if len(alike) == 1:
        return alike[0]
    names = [option.value for option in field.options]
    if len(names) > MOST_NAMED:
        near = difflib.get_close_matches(wanted.replace(" ", "-"), names, 6, 0.4) or names[:6]
        point = ", or a latitude and longitude like 44.5, -73.2" if field.options[0].at else ""
        raise UnitError(f"must be one of the {len(names)} in its list, such as {', '.join(near)}{point}")
    raise UnitError(
        f"must be one of {', '.join(names[:-1])} or {names[-1]}" if len(names) > 1 else f"must be {names[0]}"
    )


def _alike(wanted: str, option: Option) -> bool:
    """Whether a text is an option's value but for dashes and inch marks, or begins its label: "by hand", '3/4"'."""
    plain = wanted.rstrip('"').strip().replace("_", " ").replace("-", " ")
    if plain == option.value.casefold().replace("-", " "):
        return True
    words, label = re.findall(r"[\w/]+", plain), re.findall(r"[\w/]+", option.label.casefold())
    return len(plain) > 2 and label[: len(words)] == words
