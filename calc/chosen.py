"""Which worksheets a record holds, and each of them worked out with what the others have found."""

from collections.abc import Mapping
from functools import cache
from typing import NamedTuple

from calc.answer import answer_plan
from calc.engine import plan
from calc.engine.declare import Field, Worksheet
from calc.engine.plan import Entries, Entry, fields_by_key, own_keys
from calc.engine.read import Problem, Reading, read
from calc.engine.settled import Raised, Settled, settled
from calc.engine.sheet import Sheet
from calc.engine.typed import Input
from calc.engine.values import NOTHING, TakenOver
from calc.units import System
from calc.vocabulary import BY_KEY
from calc.worksheets import WORKSHEETS

KNOWN_SHARE = 0.5  # of what a worksheet asks, so much must be known for it to be in the record by itself


class Taken(NamedTuple):
    """A worksheet as the plan finds it: what it still lacks, what is wrong, and its sheet if it was worked out."""

    worksheet: Worksheet
    held: bool
    printed: bool
    lacks: tuple[str, ...] = ()
    problems: tuple[str, ...] = ()
    sheet: Sheet | None = None
    possible: bool = True


class Chosen(NamedTuple):
    """A plan as a record sees it: what was given, what follows from it, and every worksheet as the plan finds it."""

    given: Entries
    entries: Entries
    raised: tuple[Raised, ...]
    taken: tuple[Taken, ...]

    @property
    def sheets(self) -> dict[str, Sheet]:
        """The sheets that are printed."""
        return {taken.worksheet.key: taken.sheet for taken in self.taken if taken.printed and taken.sheet}


@cache
def fields() -> dict[str, list[Field]]:
    """The fields that a plan may hold, in the order in which the worksheets ask."""
    return fields_by_key(WORKSHEETS.values())


@cache
def filled() -> dict[str, list[Field]]:
    """The fields that an answer of one worksheet may fill in another.

    They are those of the vocabulary, which mean the same wherever they stand, and those that a worksheet takes by name.
    A field of one worksheet alone may share its key with a result that means something else.
    """
    by_name = {wanted.key for worksheet in WORKSHEETS.values() for wanted in worksheet.takes}
    return {key: asked for key, asked in fields().items() if key in BY_KEY or key in by_name}


def worked_out(given: Entries) -> Settled:
    """A plan with the answers of the worksheets that it is about."""
    return settled(given, WORKSHEETS, filled(), _is_held)


def in_whole(worksheet: Worksheet, entries: Entries) -> tuple[Entries, TakenOver]:
    """A plan as a worksheet sees it: with what the others found, and the steps it takes from them, if it takes any."""
    if not (worksheet.takes and plan.given_for(worksheet, entries)):
        return entries, NOTHING
    work = worked_out(entries)
    return work.entries, work.taken(worksheet)


def look_at(given: Mapping[str, Entry], system: System, ticked: Mapping[str, bool]) -> Chosen:
    """Every worksheet as the plan finds it, worked out where the plan holds its numbers or the reader asks for it."""
    given = plan.opened(given)
    work = worked_out(given)
    taken = tuple(_take(worksheet, given, work, system, ticked.get(key)) for key, worksheet in WORKSHEETS.items())
    return Chosen(given, work.entries, work.raised, taken)


def _is_held(worksheet: Worksheet, entries: Entries, taken: TakenOver = NOTHING) -> bool:
    """Whether a worksheet is in the record by itself: it can be answered, and is known well or somebody means it."""
    meant = _been_there(worksheet, entries) or _is_chosen(worksheet, entries)
    return is_complete(worksheet, entries, taken) and (meant or _is_known(worksheet, entries))


def _is_chosen(worksheet: Worksheet, entries: Entries) -> bool:
    """Whether a choice made in another worksheet says that the plan has what this one sizes."""
    kinds = [sized.means for sized in worksheet.sizes if sized.means]
    return any(field.key in entries and entries[field.key].text == kind for field, kind in kinds)


def _been_there(worksheet: Worksheet, entries: Entries) -> bool:
    """Whether somebody gave what this worksheet alone asks, or took a result of it into the plan."""
    own = [
        entries[key] for key in own_keys(tuple(WORKSHEETS.values())).get(worksheet.key, frozenset()) & entries.keys()
    ]
    return any(entry.text.strip() and entry.origin in ("typed", "link") for entry in own) or any(
        entry.worksheet == worksheet.key and entry.origin == "computed" for entry in entries.values()
    )


def is_complete(worksheet: Worksheet, entries: Entries, taken: TakenOver = NOTHING) -> bool:
    """Whether a plan holds every number that has no usual value; steps that are `taken` need none."""
    given = plan.given_for(worksheet, entries)
    if not any(typed.text.strip() for typed in given.values()) or not _belongs(worksheet, entries):
        return False
    reading = entries.reading(worksheet)
    return not reading.problems and not lacks_of(_asked(reading, taken))


def _is_known(worksheet: Worksheet, entries: Entries) -> bool:
    """Whether a plan holds enough of what a worksheet asks."""
    asked = [entry.field.key for entry in entries.reading(worksheet).inputs.values() if not entry.field.optional]
    return sum(worksheet.plan_key(key) in entries for key in asked) >= KNOWN_SHARE * len(asked)


def _take(worksheet: Worksheet, given: Entries, work: Settled, system: System, ticked: bool | None) -> Taken:
    entries = work.entries
    if not any(typed.text.strip() for typed in plan.given_for(worksheet, given).values()):
        # With nothing given it would be the worked example of another house.
        return Taken(worksheet, False, False, lacks_of(read(worksheet, {}, entries.reader).inputs), possible=False)
    reading = entries.reading(worksheet)
    if reading.problems:
        # Only where the plan is about this worksheet.
        asks = {
            worksheet.plan_key(field.key)
            for field in reading.course.fields
            if field.kind != "choice" and not (field.typical or field.optional)
        }
        told = _belongs(worksheet, entries) and asks <= entries.keys()
        return Taken(worksheet, False, False, (), _texts(reading.problems) if told else (), possible=False)
    taken = work.taken(worksheet)
    lacks, held = lacks_of(_asked(reading, taken)), _is_held(worksheet, entries, taken)
    printed = held if ticked is None else ticked
    if not printed and not held and not worksheet.checks:  # of a chain each part is judged by what it rests on
        return Taken(worksheet, False, False, lacks)
    sheet = answer_plan(worksheet, entries, system, taken)
    if sheet.problems:
        return Taken(worksheet, False, False, lacks, _texts(sheet.problems), possible=False)
    return Taken(worksheet, held, printed, lacks, (), sheet)


def _asked(reading: Reading, taken: TakenOver) -> dict[str, Input]:
    """The inputs of a worksheet without those on which only steps rest that others have worked out."""
    steps = reading.course.steps
    spared = {need for step in steps if step.key in taken for need in step.needs}
    spared -= {need for step in steps if step.key not in taken for need in step.needs}
    return {key: entry for key, entry in reading.inputs.items() if key not in spared}


def _texts(problems: tuple[Problem, ...]) -> tuple[str, ...]:
    return tuple(problem.text for problem in problems)


def lacks_of(inputs: Mapping[str, Input]) -> tuple[str, ...]:
    """The numbers that nobody gave and that nothing usual could stand in for."""
    return tuple(entry.field.label for entry in inputs.values() if entry.origin == "example" and needs(entry))


def needs(entry: Input) -> bool:
    """Whether a number has no usual value that could stand in for it."""
    return entry.quantity is not None and entry.field.typical is None and not entry.field.optional


def _belongs(worksheet: Worksheet, entries: Entries) -> bool:
    """Whether a worksheet is a part of the plan: for some only where a choice makes them one, or somebody was there."""
    only = worksheet.in_record
    if only is None:
        return True
    made = entries.get(only.choice.key)
    if made and made.text:
        return made.text in only.values
    return only.or_unmade or (bool(only.values) and (_been_there(worksheet, entries) or _is_chosen(worksheet, entries)))
