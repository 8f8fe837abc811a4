"""Worked by hand: the example of the slab-store worksheet, and where its advice begins."""

import pytest

from calc.answer import Typed, answer
from calc.engine.sheet import Sheet
from calc.units import BTU, HOUR

# A slab of a round thousand square feet, and a load that burns twice as long as the example's.
ROUND = {"floor_area": "1,000 ft2", "burn_time": "4 h", "load": "6,900 Btu/h"}


def _sheet(**given: str) -> Sheet:
    example = dict(answer("slab-store", {}).worksheet.examples[0].given) | ROUND
    sheet = answer("slab-store", {key: Typed(text) for key, text in (example | given).items()})
    assert not sheet.problems
    return sheet


def _codes(**given: str) -> dict[str, str]:
    return {said.code: said.level for said in _sheet(**given).advice}


def test_a_thousand_square_feet_by_hand() -> None:
    # 1,000 ft² × 4 in = 333.3 ft³; at 143.6 lb/ft³ that is 47,860 lb; × 0.2102 Btu/(lb·°F) = 10,060 Btu/°F.
    # From 92 to 77 °F: 10,060 × 15 = 150,900 Btu; ÷ 6,900 Btu/h = 21.9 h.
    # As water that cools by 70 °F: 150,900 ÷ (8.17 × 70) = 263.9 gal.
    # Down: 1,000 ft² × (84.5 − 50) °F ÷ 10 = 3,450 Btu/h.
    # A burn: (40,000 − 6,900) × 4 h ÷ 10,060 = 13.2 °F, from 77 to 90.2 °F.
    values = _sheet().values
    assert values["slab_heat_per_degree"] == pytest.approx(10_060 * BTU * 1.8, rel=0.001)  # four figures by hand
    assert values["slab_heat"] == pytest.approx(150_900 * BTU, rel=0.001)
    assert values["hours_carried"] == pytest.approx(21.9 * HOUR, rel=0.003)
    assert values["water_with_that_heat"] == pytest.approx(263.9 * 3.785411784e-3, rel=0.001)
    assert values["ground_loss"] == pytest.approx(3_450 * BTU / HOUR, rel=0.001)
    assert values["burn_rise"] == pytest.approx(13.2 / 1.8, rel=0.005)


def test_what_comes_up_is_what_leaves_the_surface() -> None:
    # Warm end by hand, in SI: slab 33.33 °C, surface 25.75 °C, room 20 °C, 0.01 m²K/W less: 0.1242 m²K/W in all.
    # (33.33 − 25.75) ÷ 0.1242 = 61.1 W/m²; 8.92 × 5.75^1.1 = 61.1 W/m²; × 92.9 m² = 5,674 W = 19,360 Btu/h.
    values = _sheet().values
    assert values["surface_warm"] == pytest.approx(273.15 + 25.75, abs=0.01)
    assert values["output_warm"] == pytest.approx(19_360 * BTU / HOUR, rel=0.001)


@pytest.mark.parametrize(
    ("given", "code", "level"),
    [
        ({"load": "19,500 Btu/h"}, "too-weak", "unworkable"),
        ({"load": "7,100 Btu/h"}, "ends-early", "caution"),
        ({"slab_cool": "92 °F"}, "not-warmer", "unworkable"),
        ({"floor_covering": "bare"}, "surface-limit", "caution"),
        ({"load": "9,600 Btu/h"}, "overheats", "caution"),
        ({"burn_time": "5 h"}, "burn-too-large", "caution"),
        ({}, "burn-fits", "note"),
    ],
)
def test_the_advice_begins_where_it_should(given: dict[str, str], code: str, level: str) -> None:
    assert _codes(**given).get(code) == level


def test_the_advice_ends_where_it_should() -> None:
    assert "too-weak" not in _codes(load="19,300 Btu/h")
    assert "ends-early" not in _codes(load="6,900 Btu/h")
    assert "overheats" not in _codes(load="9,700 Btu/h")
    assert "burn-too-large" not in _codes(burn_time="4.5 h")


def test_a_slab_that_is_no_warmer_at_the_start_holds_nothing() -> None:
    sheet = answer("slab-store", {"slab_warm": Typed("75 °F"), "slab_cool": Typed("75 °F")})
    assert sheet.values["slab_heat"] == 0
    assert sheet.values["hours_carried"] == 0


def test_a_slab_cooler_than_the_room_gives_nothing() -> None:
    sheet = answer("slab-store", {"slab_warm": Typed("80 °F"), "slab_cool": Typed("60 °F"), "indoor": Typed("68 °F")})
    assert sheet.values["output_cool"] == 0
    assert sheet.values["surface_cool"] == sheet.values["slab_cool"]


def test_a_slab_under_some_of_the_rooms_carries_their_part_of_the_load() -> None:
    whole = answer("slab-store", {"load": Typed("19,500 Btu/h")})
    part = answer("slab-store", {"load": Typed("19,500 Btu/h"), "floor_share": Typed("67 %")})
    assert part.values["floor_load"] == pytest.approx(0.67 * whole.values["floor_load"])  # type: ignore[operator]
    assert part.values["hours_carried"] == pytest.approx(whole.values["hours_carried"] / 0.67)  # type: ignore[operator]
    assert "too-weak" not in {advice.code for advice in part.advice}
