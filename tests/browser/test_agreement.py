"""On edits made at random, the page says what the command line says."""

from __future__ import annotations

import random
from typing import Any

import pytest

from calc.answer import Typed
from calc.engine.declare import Field
from calc.units import System, grouped, round_to
from calc.worksheets import WORKSHEETS

from .conftest import At
from .reader import Reader, assert_says

pytestmark = pytest.mark.browser

EDITS = 200
ODD = ["", "none", "-1", "1e400", "1,234", "1½", "12 apples", "−3", "10²"]


def some_text(field: Field, system: System, chance: random.Random) -> str:
    """A text that a reader might type: mostly a value in range, in several spellings, sometimes one that is none."""
    if field.kind == "choice":
        return chance.choice(field.options).value
    if chance.random() < 0.15:
        return chance.choice(ODD)
    low, high = field.low_si, field.high_si
    value = low * (high / low) ** chance.random() if low > 0 else low + (high - low) * chance.random()
    unit = field.unit(system)
    digits = round_to(unit.from_si(value), chance.randint(2, 4))
    text = grouped(digits, "us") if system == "us" and chance.random() < 0.5 else digits
    return f"{text} {unit.ascii}" if chance.random() < 0.3 else text


@pytest.mark.parametrize("part", range(4))
def test_the_page_says_what_the_command_line_says(at: At, places: dict[str, str], part: int) -> None:
    chance = random.Random(f"edits {part}")
    worksheets = sorted(places)[part::4]
    for worksheet in worksheets:
        reader = at(worksheet)
        system: System = "us"
        given: dict[str, Typed] = {}
        for _ in range(-(-EDITS // 4 // len(worksheets))):
            if chance.random() < 0.15:
                system = "si" if system == "us" else "us"
                reader.page.get_by_role("button", name=system.upper()).click()
                reader.wait()
            field = chance.choice(visible_fields(reader))
            given[field.key] = Typed(some_text(field, system, chance), system)
            if field.optional and not given[field.key].text:
                del given[field.key]
                reader.type(field.key, "")
            else:
                reader.type(field.key, given[field.key].text)
            assert_says(reader, given, system)


def visible_fields(reader: Reader) -> list[Field]:
    """The fields of the case that is shown."""
    keys: list[Any] = reader.sheet.locator(".ss-field:not([hidden])").evaluate_all("all => all.map((one) => one.dataset.key)")
    fields = {field.key: field for field in WORKSHEETS[reader.worksheet].all_fields()}
    return [fields[key] for key in keys]
