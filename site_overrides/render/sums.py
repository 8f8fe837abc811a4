"""The working of a whole record: each step once, each long formula once, a long sum once with what changes in it."""

import re
from collections.abc import Mapping
from typing import NamedTuple

from calc.engine.sheet import Sheet
from calc.engine.steps import Step
from calc.engine.typed import Input
from calc.engine.working import WorkingLine

LONG_FORMULA = 30  # characters; a longer one that stood there before is pointed at
LONG_SUM = 100  # characters; of a longer one that stood there before only the numbers that differ are told
MOST_DIFFERENT = 2  # numbers; with more of them the sum itself is easier to follow
_NUMBER = re.compile(r"(\D*?)(\N{MINUS SIGN}?[\d,.\u202f]+)(.*)")


class Line(NamedTuple):
    """A step of the working with its number; one whose formula stands further up says where, and what differs in it."""

    number: str
    step: WorkingLine
    formula_at: str = ""
    differs: tuple[tuple[str, str], ...] = ()  # of the sum there: the number here, and the one in whose place it stands


class Section(NamedTuple):
    """A worksheet in the appendix: its own steps, and where those stand that an earlier one has taken already.

    `before` names only what a step here rests on: what lies further back is named there. A result that an earlier
    worksheet has worked out is in `results_at`, and stands there in its own line.
    """

    number: int
    sheet: Sheet
    also: list[tuple[str, str]]
    lines: list[Line]
    before: list[tuple[str, str]]
    results_at: dict[str, str]


def sections(sheets: Mapping[str, Sheet]) -> list[Section]:
    """The worksheets of a record with their working, in order."""
    taken: dict[tuple[object, ...], str] = {}
    formulas: dict[tuple[str, ...], Line] = {}
    told = []
    for place, sheet in enumerate(sheets.values(), 1):
        lines: list[Line] = []
        before: dict[str, tuple[str, str]] = {}
        for step in sheet.working:
            same = _calculation(step, sheet)
            printed = (step.words + step.sums, step.result) if step.sums else same
            there = taken.get(same) or taken.get(printed)
            if there:
                before[step.key] = (step.label, there)
                continue
            number = taken[same] = taken[printed] = f"{place}.{len(lines) + 1}"
            lines.append(_line(number, step, formulas.get(step.words)))
            formulas.setdefault(step.words, lines[-1])
        results = {result.key for result in sheet.results} - {sheet.worksheet.headline}
        wanted = _needed(sheet, lines) - results
        told.append(
            Section(
                place,
                sheet,
                _also_taken(sheet),
                lines,
                [at for key, at in before.items() if key in wanted],
                {key: number for key, (_, number) in before.items() if key in results},
            )
        )
    return told


def _needed(sheet: Sheet, lines: list[Line]) -> set[str]:
    """What the steps that are printed here take in."""
    needs = {step.key: step.needs for step in sheet.course.steps}
    return {name for line in lines for name in needs[line.step.key]}


def _calculation(line: WorkingLine, sheet: Sheet) -> tuple[object, ...]:
    """What a step works out: two that are alike in this are the same step, whatever they are called.

    The digits shown do not count, since a sum that needs more of them shows more.
    """
    step = next(step for step in sheet.course.steps if step.key == line.key)
    if not isinstance(step, Step):
        return (line.label, sheet.values[line.key], _unit(line.result))
    fed_by = tuple(sheet.values.get(source) for source in step.needs)
    return (line.words, fed_by, sheet.values[line.key], _unit(line.result))


def _unit(result: str) -> str:
    return result.partition("\u00a0")[2]


def _line(number: str, step: WorkingLine, first: Line | None) -> Line:
    if first is None or sum(map(len, step.words)) <= LONG_FORMULA:
        return Line(number, step)
    return Line(number, step, first.number, _different(first.step, step))


def _different(first: WorkingLine, step: WorkingLine) -> tuple[tuple[str, str], ...]:
    """The few numbers by which a long sum differs from the first of its formula; none where it is told in full."""
    if len(first.sums) != 1 or len(step.sums) != 1 or len(step.sums[0]) <= LONG_SUM:
        return ()
    theirs, ours = first.sums[0].split(" "), step.sums[0].split(" ")
    pairs = dict.fromkeys(_numbers(*words) for words in zip(theirs, ours, strict=False) if words[0] != words[1])
    again = first.sums[0]
    for here, there in pairs:
        again = again.replace(there, here) if there else ""
    return tuple(pairs) if again == step.sums[0] and len(pairs) <= MOST_DIFFERENT else ()


def _numbers(theirs: str, ours: str) -> tuple[str, str]:
    """Of two words of a sum their numbers with their unit, ours first; empty where more than a number differs."""
    there, here = _NUMBER.fullmatch(theirs), _NUMBER.fullmatch(ours)
    if not there or not here or (there[1], there[3]) != (here[1], here[3]):
        return "", ""
    unit = here[3].rstrip(",")
    while unit.count(")") > unit.count("("):
        unit = unit.removesuffix(")")
    return here[2] + unit, there[2] + unit


def left_alone(given: Input) -> bool:
    """A number that is what it is by the worksheet's meaning, unless somebody gives another."""
    return given.field.optional and given.origin == "typical"


def _also_taken(sheet: Sheet) -> list[tuple[str, str]]:
    return [(given.field.label, given.shown(sheet.system)) for given in sheet.inputs.values() if left_alone(given)]
