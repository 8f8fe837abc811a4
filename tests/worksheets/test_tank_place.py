"""Worked by hand: the example of the tank-place worksheet, and what it says when."""

import pytest

from calc.answer import Typed, answer
from calc.engine.sheet import Sheet
from calc.units import FOOT, INCH, POUND

PSF = POUND * 9.80665 / FOOT**2


def sheet_of(**typed: str) -> Sheet:
    """The worked example with some of its numbers changed."""
    example = {key: entry.text for key, entry in answer("tank-place", {}).inputs.items() if not entry.from_field}
    example = {key: text for key, text in example.items() if key not in ("floor_allowable",)}
    return answer("tank-place", {field: Typed(text) for field, text in (example | typed).items()})


def codes(**typed: str) -> set[str]:
    return {advice.code for advice in sheet_of(**typed).advice}


def test_mill_row_by_hand() -> None:
    # 800 gal = 106.94 ft³ × 62.38 lb/ft³ = 6,671 lb, and 950 lb of tank: 7,621 lb.
    # On a circle of 54 in: 3.1416 ÷ 4 × 4.5² = 15.904 ft²: 479.2 lb/ft², 31.9 % of 1,500.
    # Door: 58 - 54 = 4 in; with 4 in of insulation on both sides 58 - 62 = -4 in.
    # Tipped up: √(84² + 54²) = 99.86 in, 5.14 in under 105. Standing: 84 + 4 + 12 = 100 in, 5 in left.
    # Across: 54 + 2 × 4 + 2 × 6 = 74 in, 16 in left of 90.
    values = sheet_of().values
    assert values["full_weight"] == pytest.approx(7_621 * POUND, rel=0.0002)
    assert values["floor_load"] == pytest.approx(479.2 * PSF, rel=0.0003)
    assert values["floor_use"] == pytest.approx(0.3195, rel=0.001)
    assert values["door_clearance"] == pytest.approx(4 * INCH)
    assert values["door_clearance_insulated"] == pytest.approx(-4 * INCH)
    assert values["tilt_clearance"] == pytest.approx(5.14 * INCH, abs=0.01 * INCH)
    assert values["ceiling_clearance"] == pytest.approx(5 * INCH)
    assert values["place_clearance"] == pytest.approx(16 * INCH)


def test_a_framed_floor_does_not_carry_it() -> None:
    # 479 lb/ft² on a floor for 40 is a stop; spread over 7,621 ÷ 40 = 190.5 ft² it would not be.
    sheet = sheet_of(floor_kind="framed")
    assert [advice.level for advice in sheet.advice if advice.code == "floor"] == ["stop"]
    assert sheet.values["spread_area"] == pytest.approx(190.5 * FOOT**2, rel=0.0005)
    assert "floor" not in codes()


def test_a_floor_that_is_nearly_full_is_a_caution() -> None:
    assert "floor-close" in codes(floor_allowable="500 lb/ft2")
    assert "floor-close" not in codes(floor_allowable="1,000 lb/ft2")
    assert "framed" in codes(floor_kind="framed", floor_allowable="500 lb/ft2")
    assert "framed" not in codes()


def test_the_way_in_is_checked() -> None:
    assert "door" in codes(door_width="50 in")
    assert "door-bare" in codes()
    assert not {"door", "door-bare"} & codes(door_width="63 in")


def test_the_ceiling_is_checked_standing_and_tipped() -> None:
    assert "ceiling" in codes(ceiling_height="99 in")
    assert "tilt" in codes(ceiling_height="100.5 in", tank_diameter="60 in")  # √(84² + 60²) = 103.2 in
    assert not {"ceiling", "tilt"} & codes()


def test_room_to_work_is_checked() -> None:
    assert "tight-place" in codes(place_width="73 in")
    assert "tight-place" not in codes()


def test_measures_that_do_not_hold_the_water_are_doubted() -> None:
    # 54 × 84 in encloses 15.904 × 7 = 111.3 ft³ = 833 gal.
    assert "bigger-than-measures" in codes(store_volume="840 gal")
    assert "bigger-than-measures" not in codes()


def test_a_box_passes_on_its_shorter_side_by_hand() -> None:
    # 60 × 48 in = 20 ft²; 500 gal = 66.84 ft³ × 62.38 = 4,169 lb and 950 of tank: 5,119 lb, 256.0 lb/ft².
    typed = {
        "tank_shape": "square",
        "store_volume": "500 gal",
        "tank_diameter": "60 in",
        "tank_depth": "48 in",
        "tank_height": "54 in",
    }
    values = sheet_of(**typed).values
    assert values["floor_load"] == pytest.approx(256.0 * PSF, rel=0.0005)
    assert values["door_clearance"] == pytest.approx(10 * INCH)
    assert values["volume_by_size"] == pytest.approx(20 * 4.5 * FOOT**3)


def test_of_several_tanks_each_weighs_its_own_part() -> None:
    """2 x 750 L on a footprint of 79 cm: (750 kg of water and 272 kg of tank) x 9.81 m/s² over 0.490 m², by hand 20.4 kPa."""
    several = sheet_of(store_volume="1500 L", tank_count="2", tank_diameter="79 cm", empty_weight="272 kg").values
    assert several["floor_load"] == pytest.approx(20_400, rel=0.005)
    one = sheet_of(store_volume="750 L", tank_diameter="79 cm", empty_weight="272 kg").values
    assert several["full_weight"] == pytest.approx(one["full_weight"])
