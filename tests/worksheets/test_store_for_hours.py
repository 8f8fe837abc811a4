"""Worked by hand: what each emitter's lowest useful water means in gallons, on the same store."""

import pytest

from calc.answer import Typed, answer
from calc.units import BTU, GALLON, HOUR
from tests.worksheets.asking import values


@pytest.mark.parametrize(
    ("worksheet", "gallons"),
    [
        # 30,500 Btu/h × 8 h = 244,000 Btu; 8.17 Btu/(gal·°F) × (180 - 128.1) °F = 424.0 Btu/gal: 575.4 gal.
        ("emitter-temperature", 575.4),
        # The floor takes 16,937 Btu/h, what goes down included; × 12 h = 203,240 Btu; 8.17 × (170 - 102.0) = 555.6.
        ("floor", 365.8),
        # The coil must give 40,625 Btu/h, what the ducts lose included; × 8 h = 325,000 Btu; 8.17 × 57.6 = 470.8.
        ("air-coil", 690.3),
    ],
)
def test_the_examples_by_hand(worksheet: str, gallons: float) -> None:
    assert answer(worksheet, {}).values["store_for_hours"] == pytest.approx(gallons * GALLON, rel=1e-3)


def test_no_store_is_large_enough_when_it_is_never_warm_enough() -> None:
    sheet = answer("floor", {"store_top": Typed("95 °F"), "floor_area": Typed("600 ft2")})
    assert sheet.values["store_for_hours"] is None
    assert next(result.shown for result in sheet.results if result.key == "store_for_hours") == "no store"


@pytest.mark.parametrize(
    ("slug", "share"),
    [("floor", "floor_share"), ("emitter-temperature", "emitters_share"), ("air-coil", "coil_share")],
)
def test_each_kind_of_emitter_in_a_house_is_about_its_own_part(slug: str, share: str) -> None:
    """A quarter of a house's loss is a house of a quarter; but the store has all of it to give."""
    part = values(slug, design_load="20,000 Btu/h", **{share: "25 %"})
    alone = values(slug, design_load="5,000 Btu/h")
    for key in ("supply_water", "lowest_useful", "lowest_useful_average", "load_average"):
        assert part[key] == pytest.approx(alone[key], rel=1e-12)
    rest = 0.75 * 20e3 * BTU / HOUR
    assert part["heat_wanted"] - alone["heat_wanted"] == pytest.approx(rest * part["hours_wanted"], rel=1e-9)
