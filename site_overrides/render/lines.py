"""What other worksheets say in one line below a verdict, where the plan holds all that they ask."""

from calc.answer import answer_plan
from calc.engine.plan import Entries
from calc.engine.texts import Texts
from calc.engine.worksheet import Worksheet
from calc.units import System
from calc.worksheets import WORKSHEETS
from render.chosen import lacks_of


def lines(worksheet: Worksheet, entries: Entries, system: System) -> list[str]:
    """The lines of the worksheets that this one tells; none of those whose numbers the plan lacks."""
    told = (_line(WORKSHEETS[key], entries, system) for key in worksheet.tells)
    return [line for line in told if line]


def _line(worksheet: Worksheet, entries: Entries, system: System) -> str:
    """A worksheet's answer in a line. It may run a year, so the choice that it hangs on must have been made."""
    only = worksheet.in_record
    if only is not None and not (only.choice.key in entries and entries[only.choice.key].text):
        return ""
    reading = entries.reading(worksheet)
    if reading.problems or lacks_of(reading.inputs):
        return ""
    sheet = answer_plan(worksheet, entries, system)
    if sheet.problems or sheet.values[worksheet.headline] is None:
        return ""
    return Texts(worksheet, sheet.reading, sheet.values, system).fill(worksheet.line)
