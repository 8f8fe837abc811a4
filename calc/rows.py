"""Many houses in one table: a worksheet answered for each row of a CSV file, as a CSV file.

The head of a column is an input's key; `worksheet` and `name` may stand beside them. What came in comes out again, and
behind it the results, each in one unit that stands in its head. A row that cannot be worked out keeps its place and
says why; the others are done.
"""

import csv
import difflib
from collections.abc import Callable, Iterator
from typing import NamedTuple

from calc.answer import Typed, UnknownWorksheet, answer
from calc.engine.sheet import Sheet, Shown
from calc.units import System, Unit, shown_unit
from calc.worksheets import WORKSHEETS

BESIDE = ("worksheet", "name")  # heads that are no inputs
MOST_ROWS = 10_000
LARGEST = 4_000_000  # bytes
BYTE_ORDER_MARK = "\ufeff"


class BadTable(ValueError):
    """A file that is no table of inputs; the message says what to mend."""


class Row(NamedTuple):
    """A row that came in: its line in the file, what stands beside the inputs, and the inputs' texts."""

    line: int
    beside: dict[str, str]
    given: dict[str, str]


def read(text: str, worksheet: str | None) -> list[Row]:
    """The rows of a CSV file. Raises BadTable, with a sentence, where its head or a row's length is wrong."""
    if len(text) > LARGEST:
        raise BadTable(f"The file is larger than {LARGEST:,} bytes: cut it into several.")
    lines = csv.reader(text.removeprefix(BYTE_ORDER_MARK).splitlines(keepends=True))
    try:
        cells = [(lines.line_num, [cell.strip() for cell in line]) for line in lines if any(map(str.strip, line))]
    except csv.Error as wrong:
        raise BadTable(f"This is not a table of comma-separated values ({wrong}).") from None
    if len(cells) < 2:
        raise BadTable("The table needs a head with the inputs' keys, such as store_volume, and a row for each house.")
    if len(cells) > MOST_ROWS + 1:
        raise BadTable(f"The table has more than {MOST_ROWS:,} rows: cut it into several.")
    (_, heads), *rows = cells
    _check_heads(heads, worksheet)
    made = []
    for line, row in rows:
        if len(row) > len(heads):
            raise BadTable(
                f"Line {line} has {len(row)} cells under {len(heads)} heads: write a number with a comma in quotes, "
                'such as "30,500 Btu/h".'
            )
        cell = dict(zip(heads, row, strict=False))
        made.append(
            Row(
                line,
                {head: cell.get(head, "") for head in BESIDE if head in heads},
                {head: text for head, text in cell.items() if head not in BESIDE and text},
            )
        )
    return made


def _check_heads(heads: list[str], worksheet: str | None) -> None:
    if worksheet is None and "worksheet" not in heads:
        raise BadTable("Say which worksheet: before --table, or in a column called worksheet.")
    asked = {
        field.key
        for key, sheet in WORKSHEETS.items()
        if worksheet in (None, key) or "worksheet" in heads
        for field in sheet.all_fields()
    }
    for place, head in enumerate(heads):
        if head in heads[:place]:
            raise BadTable(f"Two columns are called {head[:60]}: keep one.")
        if head not in asked and head not in BESIDE:
            near = difflib.get_close_matches(head[:60], [*asked, *BESIDE], 3)
            hint = f"did you mean {' or '.join(near)}?" if near else "`--describe` lists the inputs."
            raise BadTable(f"No input is called “{head[:60]}”: {hint}")


def worked(
    rows: list[Row], worksheet: str | None, system: System, tell: Callable[[int], None]
) -> Iterator[tuple[Row, Sheet | None, str]]:
    """Each row with its sheet, or with what is wrong with it; `tell` hears how many are done."""
    for done, row in enumerate(rows, 1):
        yield row, *_answered(row, worksheet, system)
        tell(done)


def _answered(row: Row, worksheet: str | None, system: System) -> tuple[Sheet | None, str]:
    if not row.given:
        return None, "This row holds no numbers."
    try:
        key = row.beside.get("worksheet") or worksheet or ""
        sheet = answer(key, {name: Typed(text, system) for name, text in row.given.items()}, system)
    except UnknownWorksheet as unknown:
        return None, unknown.sentence
    wrong = " ".join(f"{problem.key}: {problem.text}" for problem in sheet.problems)
    return (None, wrong) if wrong else (sheet, "")


def table(answered: list[tuple[Row, Sheet | None, str]], system: System) -> list[list[str]]:
    """What goes out, line by line: what came in, results, the codes of the advice, what is assumed, what was wrong."""
    beside = dict.fromkeys(head for row, _, _ in answered for head in row.beside)
    given = dict.fromkeys(head for row, _, _ in answered for head in row.given)
    units = {
        result.key: shown_unit("count" if result.kind == "choice" else result.kind, system)
        for _, sheet, _ in answered
        if sheet is not None
        for result in sheet.results
    }
    heads = [f"{key} ({unit.text})" if unit.text else key for key, unit in units.items()]
    lines = [[*beside, *given, *heads, "advice", "assumed", "problem"]]
    for row, sheet, wrong in answered:
        results = {result.key: result for result in sheet.results} if sheet else {}
        numbers = [_number(results[key], unit) if key in results else "" for key, unit in units.items()]
        assumed = "; ".join(sheet.assumed) if sheet else ""
        advice = "; ".join(f"{said.level}: {said.code}" for said in sheet.advice) if sheet else ""
        texts = [row.beside.get(head, "") for head in beside] + [row.given.get(head, "") for head in given]
        lines.append([*map(_harmless, texts), *numbers, advice, assumed, _harmless(wrong)])
    return lines


def _number(result: Shown, unit: Unit) -> str:
    return f"{unit.from_si(result.si):.6g}" if isinstance(result.si, float | int) else result.shown


def _harmless(text: str) -> str:
    """A text that no spreadsheet takes for a formula."""
    return f"'{text}" if text.startswith(("=", "+", "@")) else text
