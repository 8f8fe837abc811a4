"""Whose rules and figures a sheet rests on."""

from calc.engine.read import Reading
from calc.engine.sheet import Said
from calc.engine.steps import Step
from calc.engine.words import Comparison
from calc.engine.worksheet import Worksheet
from calc.sources import SOURCES, Known, Source


def source_line(source: Source) -> str:
    """A source in one line, with how it is known where that is less than having read it."""
    known = _KNOWN.get(source.known)
    return _cited(source) + (f" ({known})" if known else "")


def marked_line(source: Source) -> str:
    """The same for a long list, where one sentence (`MARKS_SAID`) tells what the marks mean."""
    return _cited(source) + _MARKS.get(source.known, "")


def _cited(source: Source) -> str:
    return ", ".join(part for part in (source.body, source.title, source.year, source.place) if part)


_KNOWN: dict[Known, str] = {"second-hand": "second-hand", "memory": "from memory"}
_MARKS: dict[Known, str] = {"second-hand": "*", "memory": "**"}
MARKS_SAID = " ".join(f"{mark} {_KNOWN[known]}." for known, mark in _MARKS.items())


def sources(worksheet: Worksheet, reading: Reading, advice: tuple[Said, ...]) -> tuple[tuple[str, Source], ...]:
    keys: list[str] = []
    for step in reading.course.steps:
        keys.append(step.source)
        if isinstance(step, Step):
            keys += [constant.source for constant in step.law.constants.values()]
    keys += [given.source for given in worksheet.givens]
    keys += [
        entry.field.typical.source
        for entry in reading.inputs.values()
        if entry.origin == "typical" and entry.field.typical
    ]
    keys += [said.source for said in advice if said.source]
    keys += [table.source for table in worksheet.tables if isinstance(table, Comparison) and table.source]
    keys += worksheet.sources
    return tuple((key, SOURCES[key]) for key in dict.fromkeys(keys))
