"""Makes the file of links that must decode to the same numbers for ever: `python -m tests.links.golden`.

It adds links for worksheets that the file of the present version lacks. What stands in the file is never written again:
once a version is released, its links are on paper, in letters and in other people's bookmarks.

A link stands in a line of its own; below it, indented, each key with its value: SI in full digits, or the choice in quotation marks.
"""

import json
import random
from collections.abc import Iterator
from pathlib import Path

from calc.__main__ import weather_text
from calc.answer import Typed, answer, link_of
from calc.engine import link
from calc.engine.declare import Field, Worksheet
from calc.physics import winter_weather
from calc.units import DryBasis, round_to, units_of
from calc.worksheets import WORKSHEETS

HERE = Path(__file__).parent
MOST_CASES = 6  # of a worksheet; more would add length and nothing else

Golden = dict[str, dict[str, float | str]]


def read(path: Path) -> Golden:
    """Each link of a file with the values it stands for."""
    result: Golden = {}
    values: dict[str, float | str] = {}
    for line in path.read_text(encoding="utf-8").splitlines():
        if line.startswith("#v"):
            values = result.setdefault(line, {})
        elif line.startswith("  "):
            key, _, text = line.strip().partition(" ")
            values[key] = json.loads(text)
    return result


def lines(worksheet: Worksheet) -> Iterator[str]:
    """Links of a worksheet with their values: the worked example, and other numbers in other units for each case."""
    source = random.Random(f"golden links of {worksheet.key}")
    givens: list[dict[str, Typed]] = [{}]
    for course in worksheet.all_courses()[:MOST_CASES]:
        chosen = {key: Typed(value) for key, value in course.choices}
        example = answer(worksheet.key, chosen)
        numbers = {
            key: Typed(_moved(entry.field, entry.si, source))
            for key, entry in example.inputs.items()
            if isinstance(entry.si, float) and not entry.from_field and source.random() < 0.8
        }
        givens.append(chosen | numbers)
    for given in givens:
        sheet = answer(worksheet.key, given)
        if sheet.problems:
            continue
        yield link_of(sheet)
        for key, entry in sheet.inputs.items():
            yield f"  {key} {json.dumps(entry.si)}"


def _moved(field: Field, value: float, source: random.Random) -> str:
    """A number near `value`, in any unit of its kind."""
    units = [unit for unit in units_of(field.kind) if field.dry_basis or not isinstance(unit, DryBasis)]
    unit = source.choice([unit for unit in units if unit.text] or units)
    moved = min(max(value * source.uniform(0.97, 1.03), field.low_si), field.high_si)
    moved = round(moved) if field.whole else moved
    return f"{round_to(unit.from_si(moved), 5)} {unit.ascii}".strip()


def main() -> None:
    """Add what the file of this version lacks."""
    winter_weather.fetch_with(weather_text)
    path = HERE / f"v{link.VERSION}.txt"
    there = {line.split(";")[1] for line in read(path)} if path.is_file() else set()
    with path.open("a", encoding="utf-8", newline="\n") as file:
        for key, worksheet in WORKSHEETS.items():
            if key not in there:
                file.writelines(f"{line}\n" for line in lines(worksheet))


if __name__ == "__main__":
    main()
