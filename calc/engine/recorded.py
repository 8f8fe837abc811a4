"""What a worksheet is to the sizing record: when it belongs there, which parts it sizes, which drawing suits it."""

from typing import NamedTuple

from calc.engine.conditions import Condition, condition
from calc.engine.fields import Field
from calc.engine.sentences import placeholders
from calc.engine.uses import Uses


class Apart(NamedTuple):
    """Which one of several like parts a worksheet asks about: the plan keeps its `keys` under words of their own.

    `word` begins these, as in charge_pipe_size; `says` tells readers which part it is. Worksheets that ask about the
    same part have the same `word`. A plan that once had one entry for all parts meant another one where it makes the
    choice `other`: a key and its value. One that was `always` apart shares its keys with what means something else.
    """

    word: str
    says: str
    keys: tuple[str, ...]
    other: tuple[str, str] = ("", "")
    always: bool = False

    def uses(self) -> Uses:
        return Uses(plain=(self.says,))


class OnlyWith(NamedTuple):
    """A worksheet that is no part of every plan: in the record by itself only where this choice is made like this.

    With `or_unmade` also where nobody has made it.
    """

    choice: Field
    values: tuple[str, ...]
    or_unmade: bool = False

    def uses(self) -> Uses:
        return Uses()


class Takes(NamedTuple):
    """A value that a worksheet takes from another one where the plan has that, in place of its own step or field.

    So a plan has one answer to each question. `result` is its key there, if it is another.
    """

    key: str
    worksheet: str
    result: str = ""

    def uses(self) -> Uses:
        return Uses(names=(self.key,), worksheets=(self.worksheet,))


class Part(NamedTuple):
    """A part of a plant, by the name under which the record lists it, and who has the last word about it.

    A plan in which `unless` holds has no such part.
    """

    name: str
    decided_by: str
    unless: str = ""


class Sizes(NamedTuple):
    """The size that a worksheet gives a part: a sentence with {names}, and a shorter one for the piping drawing.

    `drawn` are the keys under which the piping drawings know the part. `only` is a choice of the worksheet and the
    value for which the sentence holds; there the part may be `called` something else. `quantity` and `material` are the
    other columns of a list of parts, as far as the worksheet knows them. `instead`: once it is worked out it takes the
    place of what other worksheets say of the part. `chosen` is the quantity that says what the plan has, where this is
    what it should have: once somebody has given it, it stands first. `means` is a choice of the plan, made in another
    worksheet, by which the part is of this kind.
    """

    part: Part
    size: str
    short: str = ""
    drawn: tuple[str, ...] = ()
    only: tuple[str, str] | None = None
    called: str = ""
    quantity: str = "1"
    material: str = ""
    instead: bool = False
    chosen: Field | None = None
    means: tuple[Field, str] | None = None

    def uses(self) -> Uses:
        sentences = (self.size, self.short, self.quantity, self.material)
        named = tuple({name for text in sentences for name in placeholders(text)})
        return Uses(where=named, only=(self.only,) if self.only else (), sentences=sentences)


class Suits(NamedTuple):
    """The piping drawing that suits a plan `when` its numbers say so, or when the worksheet is in the record."""

    drawing: str
    when: str = ""

    def uses(self) -> Uses:
        return Uses(conditions=(self.when,) if self.when else ())

    @property
    def condition(self) -> Condition:
        return condition(self.when)
