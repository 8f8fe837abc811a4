"""A worksheet as its checker sees it: every name in it, and what each of its cases holds."""

import difflib
from collections import Counter
from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property

from calc.engine.fields import DeclarationError, Field, quantity
from calc.engine.steps import AnyStep, Course
from calc.engine.words import ATTENTION, CHANGE, VERDICT
from calc.engine.worksheet import Worksheet


@dataclass(frozen=True)
class OneCase:
    """One combination of choices: its course, and the kind of every name in it."""

    course: Course
    kinds: dict[str, str]

    @cached_property
    def choices(self) -> dict[str, str]:
        return dict(self.course.choices)

    @cached_property
    def parts(self) -> dict[str, list[Field | AnyStep]]:
        """The fields and steps by their keys, of which each should have its own."""
        parts: dict[str, list[Field | AnyStep]] = {}
        for part in (*self.course.fields, *self.course.steps):
            parts.setdefault(part.key, []).append(part)
        return parts

    @cached_property
    def there(self) -> set[str]:
        """What has a value whatever the numbers are: every name but the steps' and those of awaited fields."""
        awaited = {field.key for field in self.course.fields if field.awaited}
        return self.kinds.keys() - {step.key for step in self.course.steps} - awaited

    @property
    def words(self) -> str:
        """The choices as the end of a clause."""
        made = " and ".join(f"{key} is {value}" for key, value in self.course.choices)
        return f" where {made}" if made else ""


class Checked:
    """The names of a worksheet, in all cases together and in each."""

    def __init__(self, worksheet: Worksheet) -> None:
        self.worksheet = worksheet
        self.file = f"calc/worksheets/{worksheet.key.replace('-', '_')}.py"
        self.fields: dict[str, list[Field]] = {}
        for field in worksheet.all_fields():
            self.fields.setdefault(field.key, []).append(field)
        self.givens = {given.key for given in worksheet.givens}
        steps = {step.key for step in worksheet.all_steps()}
        self.told = _told(worksheet)
        self.names = self.fields.keys() | self.givens | steps | self.told.keys()

    @cached_property
    def cases(self) -> list[OneCase]:
        """Every combination of the choices on which cases hang."""
        everywhere = {given.key: given.kind for given in self.worksheet.givens} | self.told
        return [
            OneCase(course, everywhere | {part.key: part.kind for part in (*course.fields, *course.steps)})
            for course in self.worksheet.all_courses()
        ]

    def having(self, word: Field | AnyStep) -> Iterator[OneCase]:
        """The cases that hold this word."""
        for case in self.cases:
            if word in case.parts.get(word.key, ()):
                yield case

    def options(self, key: str) -> set[str]:
        """The options of a choice; a field of any other kind has none."""
        known(key, self.fields, "field")
        return {option.value for field in self.fields[key] for option in field.options}

    def option(self, key: str, value: str) -> None:
        """The field must be a choice with that option."""
        must(self.options(key), f"{key} is no choice, so it cannot be {value!r}")
        known(value, self.options(key), f"option of {key}")

    def value(self, key: str, text: str) -> None:
        """The text must be a value of the field: one that it accepts, "x2", "less 20 F°" or "plus 200 gal"."""
        known(key, self.fields, "field")
        if self.options(key):
            return self.option(key, text)
        refused = ""
        for field in self.fields[key]:
            try:
                return accept(field, text)
            except DeclarationError as wrong:
                refused = str(wrong)
        raise DeclarationError(refused)

    @staticmethod
    def amount(text: str, kind: str) -> float:
        """The text must be a quantity of that kind."""
        return quantity(text, kind)


def _told(worksheet: Worksheet) -> dict[str, str]:
    """What a worksheet tells of itself beside what its steps work out, with its kind."""
    of_checks = {ATTENTION: "count"} if worksheet.checks else {}
    return of_checks | ({VERDICT: "choice", CHANGE: "choice"} if worksheet.outlook else {})


def accept(field: Field, text: str) -> None:
    """A text of a declaration must be a value of the field, a part of the reader's ("x2"), or so much less or more."""
    if text.startswith("x"):
        must(_is_number(text[1:]), f"{text!r} for {field.key} is no multiple such as x2")
    elif text.startswith(("less ", "plus ")):
        kind = "temperature_difference" if field.kind == "temperature" else field.kind
        quantity(text[5:], kind)
    else:
        field.check_value(text)


def _is_number(text: str) -> bool:
    try:
        return float(text) >= 0
    except ValueError:
        return False


def known(name: str, there: Collection[str], what: str) -> None:
    """A name must be among those that are there; near matches are named."""
    if name not in there:
        near = difflib.get_close_matches(name, there, 3)
        hint = f"; did you mean {' or '.join(near)}?" if near else ""
        raise DeclarationError(f"no {what} is called {name!r}{hint}")


def must(holds: object, sentence: str) -> None:
    """What has to hold, or the sentence that says what is wrong."""
    if not holds:
        raise DeclarationError(sentence)


def once(names: Iterable[str], what: str) -> None:
    """No name may stand twice."""
    for name, count in Counter(names).items():
        must(count == 1, f"the {what} {name!r} stands twice")
