"""What a word of a declaration uses, as the word itself says it; `calc/checking` looks for each of it."""

from collections.abc import Mapping
from typing import NamedTuple, Protocol


class Uses(NamedTuple):
    """Everything that has to be there for a word to mean something.

    `names` are fields, givens or steps; `numbers` those of them that must be numbers. `sentences` are filled: what they
    name in braces has to be there wherever the word is said, which is where the names in `where` are and each choice in
    `only` has that value. `plain` texts are shown as they stand. `texts` are values for a field: "170 °F", "x2", "less
    20 F°". `units` belong to a kind, `units_of` to the kind of a name.
    """

    names: tuple[str, ...] = ()
    numbers: tuple[str, ...] = ()
    fields: tuple[str, ...] = ()
    where: tuple[str, ...] = ()
    only: tuple[tuple[str, str], ...] = ()
    conditions: tuple[str, ...] = ()
    sentences: tuple[str, ...] = ()
    plain: tuple[str, ...] = ()
    texts: tuple[tuple[str, str], ...] = ()
    amounts: tuple[tuple[str, str], ...] = ()
    kinds: tuple[str, ...] = ()
    units: tuple[tuple[str, str], ...] = ()
    units_of: tuple[tuple[str, str], ...] = ()
    sources: tuple[str, ...] = ()
    worksheets: tuple[str, ...] = ()


class Word(Protocol):
    """A word of a declaration."""

    def uses(self) -> Uses: ...


def texts_of(value: str | Mapping[str, str]) -> tuple[str, ...]:
    """The texts of a typical value or of an end of its band, which may depend on a choice."""
    return ((value,) if value else ()) if isinstance(value, str) else tuple(value.values())
