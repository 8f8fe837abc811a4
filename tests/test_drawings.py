"""Drawings that show amounts show them true: what is drawn is held against what the worksheets compute."""

import re
from pathlib import Path

import pytest

from calc.answer import Typed, answer
from calc.units import HOUR

DRAWINGS = Path(__file__).resolve().parent.parent / "site_overrides/render/drawings/fixed"


def _numbers(pattern: str, drawing: str) -> list[tuple[str, ...]]:
    return re.findall(pattern, (DRAWINGS / drawing).read_text(encoding="utf-8"))


def test_the_arrows_of_the_house_are_as_thick_as_its_losses() -> None:
    # One unit of thickness is one percent of the whole, to a tenth of a unit.
    fern_lane = answer("house-load", {}).worksheet.examples[1].given
    values = answer("house-load", {key: Typed(text) for key, text in fern_lane.items()}).values
    drawn = {
        part: float(thick) for part, thick in _numbers(r'data-part="(\w+)" data-thick="([\d.]+)"', "house_loses.svg")
    }
    assert len(drawn) == 6
    for part, thick in drawn.items():
        loss, whole = values[part], values["conductance"]
        assert isinstance(loss, float)
        assert isinstance(whole, float)
        assert thick == pytest.approx(100 * loss / whole, abs=0.06), part


def test_the_fires_of_two_lightings_stand_where_the_worksheet_puts_them() -> None:
    # Twelve units of width an hour, from 20 on.
    values = answer("firing", {}).values
    ways = (
        ("sv-fill", "hours_to_charge", "hours_between_at_design", 2),
        ("sv-one", "burn_time", "hours_between_one_load", 4),
    )
    for mark, burning, between, count in ways:
        fires = _numbers(rf'class="sv-fire {mark}" x="([\d.]+)" y="\d+" width="([\d.]+)"', "two_lightings.svg")
        assert len(fires) == count
        for turn, (start, width) in enumerate(fires):
            hours, apart = values[burning], values[between]
            assert isinstance(hours, float)
            assert isinstance(apart, float)
            assert float(start) == pytest.approx(20 + 12 * turn * apart / HOUR, abs=0.15)
            assert float(width) == pytest.approx(12 * hours / HOUR, abs=0.1)
