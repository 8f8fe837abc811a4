"""The tables behind a result as CSV, for a spreadsheet: plain numbers, their unit in the head of the column."""

import csv
import io
import re
from collections.abc import Sequence

from calc.answer import chart_of
from calc.engine.sheet import Sheet
from calc.units import MINUS, NO_BREAK, THIN, System
from render.view import STATUS_WORDS, files

BYTE_ORDER_MARK = "\ufeff"  # so that a spreadsheet reads degree signs right

Rows = list[tuple[str, ...]]


def names(sheet: Sheet) -> list[str]:
    """What can be had of a sheet: results, verdict, each table by its number, chart."""
    return [name for name, _ in files(sheet)]


def csv_file(sheet: Sheet, name: str) -> tuple[str, str]:
    """The name and the text of a file with one of the tables of `names`; KeyError if there is none of that name."""
    heads, rows = _table(sheet, name)
    file = io.StringIO()
    writer = csv.writer(file)
    writer.writerows(_with_units_in_heads(heads, rows, sheet.system))
    return f"{sheet.worksheet.key}-{name}.csv", BYTE_ORDER_MARK + file.getvalue()


def _table(sheet: Sheet, name: str) -> tuple[tuple[str, ...], Rows]:
    if name not in names(sheet):
        raise KeyError(name)
    if name == "results":
        results: Rows = [(result.label, *_apart(result.shown, sheet.system)) for result in sheet.results]
        return ("Result", "Value", "Unit"), results
    if name == "verdict":
        verdicts: Rows = [
            (verdict.label, STATUS_WORDS[verdict.status], verdict.number, verdict.text) for verdict in sheet.verdicts
        ]
        return ("Part", "How it stands", "Its number", "Why"), verdicts
    if name == "chart":
        series = chart_of(sheet)
        return (series.heads, list(series.rows)) if series else ((), [])
    table = sheet.tables[int(name.removeprefix("table-"))]
    return table.heads, list(table.rows)


def _with_units_in_heads(heads: Sequence[str], rows: Rows, system: System) -> Rows:
    """Where every number of a column has the same unit, it moves into the head, and the cells are plain numbers."""
    columns = [[_apart(cell, system) for cell in column] for column in zip(*rows, strict=True)]
    shown_heads, shown = [], []
    for head, column in zip(heads, columns, strict=True):
        units = {unit for number, unit in column if _is_number(number)}
        single = units.pop() if len(units) == 1 else ""
        shown_heads.append(f"{head} ({single})" if single else head)
        shown.append([number if unit == single or not unit else f"{number} {unit}" for number, unit in column])
    return [tuple(shown_heads), *zip(*shown, strict=True)]


def _apart(text: str, system: System) -> tuple[str, str]:
    """A number as a spreadsheet reads it, and its unit; words stay as they are and have none."""
    number, _, unit = text.partition(NO_BREAK)
    plain = number.replace(MINUS, "-").replace(THIN, "")
    plain = plain.replace(",", "") if system == "us" else plain
    if _is_number(plain):
        return plain, unit.replace(NO_BREAK, " ")
    return text.replace(NO_BREAK, " ").replace(THIN, " ").replace(MINUS, "-"), ""


def _is_number(text: str) -> bool:
    return re.fullmatch(r"-?\d+(\.\d+)?", text) is not None
