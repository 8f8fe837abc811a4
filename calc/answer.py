"""The one door: a worksheet's key and typed text become a Sheet, whoever asks (page, build, command line, link)."""

import difflib
from collections.abc import Mapping

from calc.engine import link
from calc.engine.plan import Entries
from calc.engine.read import Problem, read
from calc.engine.run import run
from calc.engine.series import Series, series
from calc.engine.sheet import Sheet
from calc.engine.typed import Reader, Typed
from calc.engine.values import NOTHING, TakenOver
from calc.engine.worksheet import Worksheet
from calc.units import System
from calc.worksheets import WORKSHEETS


class UnknownWorksheet(KeyError):
    """No worksheet has that key; the sentence names near matches."""

    def __init__(self, key: str) -> None:
        near = difflib.get_close_matches(key[:60], WORKSHEETS, 3)
        hint = f"Did you mean {' or '.join(near)}?" if near else f"There are {', '.join(WORKSHEETS)}."
        self.sentence = f"There is no worksheet called “{key[:60]}”. {hint}"
        super().__init__(self.sentence)


def answer(key: str, given: Mapping[str, Typed], system: System = "us", reader: Reader | None = None) -> Sheet:
    """The sheet for what was typed; with nothing typed, the worked example. UnknownWorksheet if no such key."""
    if key not in WORKSHEETS:
        raise UnknownWorksheet(key)
    worksheet = WORKSHEETS[key]
    return run(worksheet, read(worksheet, given, reader or Reader()), system)


def answer_plan(worksheet: Worksheet, entries: Entries, system: System, taken: TakenOver = NOTHING) -> Sheet:
    """The sheet for what a plan holds of a worksheet's numbers, and for what its other worksheets have worked out."""
    return run(worksheet, entries.reading(worksheet), system, taken)


def chart_of(sheet: Sheet) -> Series | None:
    """The chart of a sheet, or None; apart from `answer` since it runs the worksheet many times."""
    return series(sheet)


def open_link(text: str, system: System = "us", reader: Reader | None = None) -> tuple[Sheet | None, tuple[str, ...]]:
    """The sheet that a link describes (None if it describes none) and a sentence for everything wrong with the link."""
    reader = reader or Reader()
    opened = link.read(text, WORKSHEETS, reader=reader)
    if not opened.worksheet:
        return None, opened.problems
    if opened.worksheet == link.PLAN:
        return None, (*opened.problems, "This link holds a whole plan: open it in a browser, at any page of this site.")
    if not opened.given:
        return None, (*opened.problems, "This link holds no numbers.")
    return answer(opened.worksheet, opened.given, system, reader), opened.problems


def link_of(sheet: Sheet) -> str:
    """The link that restores a sheet's inputs; empty while they are wrong."""
    return "" if sheet.problems else link.write(sheet.worksheet, sheet.inputs, sheet.system)


__all__ = [
    "Problem",
    "Reader",
    "Typed",
    "UnknownWorksheet",
    "answer",
    "answer_plan",
    "chart_of",
    "link_of",
    "open_link",
]
