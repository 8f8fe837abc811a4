"""What other worksheets say in one line below a verdict, where the plan holds all that they ask."""

from calc.answer import answer_plan
from calc.chosen import lacks_of
from calc.engine.plan import Entries
from calc.engine.texts import Texts
from calc.engine.worksheet import Worksheet
from calc.units import System
from calc.worksheets import WORKSHEETS


def lines(worksheet: Worksheet, entries: Entries, system: System) -> list[str]:
    """The lines of the worksheets that this one tells; none of those whose numbers the plan lacks."""
    told = (_line(WORKSHEETS[key], entries, system) for key in worksheet.tells)
    return [line for line in told if line]


def _line(worksheet: Worksheet, entries: Entries, system: System) -> str:
    """A worksheet's answer in a line, or why it has none.

    It may run a year, so the choice that it hangs on must have been made, or that of a file of the reader's own.
    """
    only = worksheet.in_record
    if only is not None and not (_is_given(only.choice.key, entries) or _is_from_file(worksheet, entries)):
        return ""
    reading = entries.reading(worksheet)
    if reading.problems or lacks_of(reading.inputs):
        return ""
    sheet = answer_plan(worksheet, entries, system)
    if sheet.problems:
        return ""
    if sheet.values[worksheet.headline] is None:
        why = next((said.title for said in sheet.advice if said.level == "unworkable"), "")
        return f"{worksheet.say_none} {why}".strip()
    return Texts(worksheet, sheet.reading, sheet.values, system).fill(worksheet.line)


def _is_given(key: str, entries: Entries) -> bool:
    return key in entries and bool(entries[key].text)


def _is_from_file(worksheet: Worksheet, entries: Entries) -> bool:
    """Whether the reader chose a file of their own, where the worksheet takes one."""
    files = {field.key: field.file for field in worksheet.all_fields() if field.file}
    return any(_is_given(key, entries) and entries[key].text == file for key, file in files.items())
