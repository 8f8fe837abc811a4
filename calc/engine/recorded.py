"""What a worksheet is to the sizing record: when it belongs there, which parts it sizes, which drawing suits it."""

import difflib
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from calc.engine.conditions import Condition, condition
from calc.engine.fields import DeclarationError, Field
from calc.engine.words import placeholders


class OnlyWith(NamedTuple):
    """A worksheet that is no part of every plan: in the record by itself only where this choice is made like this.

    With `or_unmade` also where nobody has made it.
    """

    choice: Field
    values: tuple[str, ...]
    or_unmade: bool = False


class Part(NamedTuple):
    """A part of a plant, by the name under which the record lists it."""

    name: str


class Sizes(NamedTuple):
    """The size that a worksheet gives a part: a sentence with {names}, and a shorter one for the piping drawing.

    `drawn` are the keys under which the piping drawings know the part. `only` is a choice of the worksheet and the
    value for which the sentence holds; there the part may be `called` something else.
    """

    part: Part
    size: str
    short: str = ""
    drawn: tuple[str, ...] = ()
    only: tuple[str, str] | None = None
    called: str = ""


class Suits(NamedTuple):
    """The piping drawing that suits a plan `when` its numbers say so, or when the worksheet is in the record."""

    drawing: str
    when: str = ""

    @property
    def condition(self) -> Condition:
        return condition(self.when)


def check_only_with(where: str, only: OnlyWith | None) -> None:
    """The values must be options of the choice."""
    for value in only.values if only else ():
        _among(f"{where}: in_record", value, [option.value for option in only.choice.options] if only else ())


def check_sizes(where: str, sizes: Iterable[Sizes], names: Iterable[str], choices: Mapping[str, Iterable[str]]) -> None:
    """Sentences must name what the worksheet has, and choices their options."""
    for sized in sizes:
        place = f"{where}: the size of {sized.part.name}"
        for name in placeholders(sized.size + sized.short):
            _among(place, name, names)
        if sized.only:
            _among(place, sized.only[0], choices)
            _among(place, sized.only[1], choices[sized.only[0]])


def check_suits(where: str, suits: Iterable[Suits], names: Iterable[str]) -> None:
    """The condition must ask for what the worksheet has; that the drawing is there, a test sees."""
    for one in suits:
        for name in sorted(one.condition.names) if one.when else ():
            _among(f"{where}: suits", name, names)


def _among(place: str, name: str, known: Iterable[str]) -> None:
    if name not in known:
        near = difflib.get_close_matches(name, known, 3)
        raise DeclarationError(f"{place} names {name!r}, which is not there; near: {near}")
