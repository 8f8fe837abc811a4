"""Worked by hand: the example of the load-now worksheet, and what it says when."""

import pytest

from calc.answer import Typed, answer
from calc.engine.sheet import Sheet
from calc.units import BTU, HOUR

# A load that burns twice as long as the example's, behind cooler emitters.
LARGE = {
    "burn_time": "4 h",
    "store_top": "180 °F",
    "lowest_useful": "110 °F",
    "reading_upper": "150 °F",
    "reading_middle": "135 °F",
    "reading_lower": "115 °F",
}


def sheet_of(**typed: str) -> Sheet:
    """That case with some of its numbers changed."""
    example = {key: entry.text for key, entry in answer("load-now", {}).inputs.items() if not entry.from_field}
    return answer("load-now", {field: Typed(text) for field, text in (example | LARGE | typed).items()})


def codes(**typed: str) -> set[str]:
    return {advice.code for advice in sheet_of(**typed).advice}


def test_fern_lane_by_hand() -> None:
    # Above 130 °F: 20 + 15 + 0 = 35 degrees, 47,700 Btu; tomorrow 9,656 Btu/h: 4.94 h.
    # Below 170 °F: 20 + 25 + 40 = 85 degrees, 115,900 Btu, and a load brings 40,000 × 2 = 80,000: 1.45 fit.
    values = answer("load-now", {}).values
    assert values["heat_now"] == pytest.approx(47_700 * BTU, rel=0.003)
    assert values["hours_until_lighting"] == pytest.approx(4.94 * HOUR, rel=0.003)
    assert values["loads_that_fit"] == pytest.approx(1.45, rel=0.005)


def test_a_large_load_by_hand() -> None:
    # A third of 500 gal holds 166.7 × 8.18 = 1,363 Btu for each degree.
    # Above 110 °F: 40 + 25 + 5 = 70 degrees, 95,400 Btu. Below 180 °F: 30 + 45 + 65 = 140 degrees, 190,900 Btu.
    # Tomorrow: 13,300 ÷ 73 × (68 - 15) = 9,656 Btu/h; the heat lasts 95,400 ÷ 9,656 = 9.88 h.
    # A load brings 40,000 × 4 = 160,000 Btu: 1.19 loads fit. Drawing, it leaves 160,000 - 38,600 = 121,400: 1.57 fit.
    values = sheet_of().values
    assert values["heat_now"] == pytest.approx(95_400 * BTU, rel=0.003)
    assert values["room_left"] == pytest.approx(190_900 * BTU, rel=0.003)
    assert values["load_tomorrow"] == pytest.approx(9_656 * BTU / HOUR, rel=0.0005)
    assert values["hours_until_lighting"] == pytest.approx(9.88 * HOUR, rel=0.003)
    assert values["loads_that_fit"] == pytest.approx(1.19, rel=0.005)
    assert values["loads_with_load"] == pytest.approx(1.57, rel=0.005)
    assert values["hours_until_room"] == 0
    assert values["mean_temperature"] == pytest.approx((400 / 3 + 459.67) / 1.8)


def test_a_hot_tank_must_wait_for_its_load() -> None:
    # At 170/160/150 °F it takes 10 + 20 + 30 = 60 degrees, 81,800 Btu; 78,200 are missing: 8.10 h at 9,656 Btu/h.
    typed = {"reading_upper": "170 °F", "reading_middle": "160 °F", "reading_lower": "150 °F"}
    values = sheet_of(**typed).values
    assert values["loads_that_fit"] == pytest.approx(81_800 / 160_000, rel=0.004)
    assert values["hours_until_room"] == pytest.approx(8.10 * HOUR, rel=0.006)
    assert "no-whole-load" in codes(**typed)
    assert "whole-loads" not in codes(**typed)
    assert "no-whole-load" not in codes()


def test_a_tank_too_small_for_its_fire_has_no_good_moment() -> None:
    # 150 gal hold 85,900 Btu in all: a load of 160,000 never fits before the heat is gone.
    assert "no-window" in codes(store_volume="150 gal")
    assert "no-window" not in codes()


def test_a_cool_tank_says_light_now() -> None:
    typed = {"reading_upper": "108 °F", "reading_middle": "100 °F", "reading_lower": "95 °F"}
    assert sheet_of(**typed).values["heat_now"] == 0
    assert "below-useful" in codes(**typed)
    assert "below-useful" not in codes()


def test_the_last_hours_are_said() -> None:
    typed = {"reading_upper": "120 °F", "reading_middle": "110 °F", "reading_lower": "100 °F"}
    # 10 degrees in one third: 13,600 Btu, 1.4 h.
    assert sheet_of(**typed).values["hours_until_lighting"] == pytest.approx(1.41 * HOUR, rel=0.01)
    assert "light-soon" in codes(**typed)
    assert "night" not in codes(**typed)
    assert "light-soon" not in codes()


def test_crossed_thermometers_are_noticed() -> None:
    assert "crossed" in codes(reading_upper="115 °F", reading_lower="150 °F")
    assert "crossed" not in codes(reading_upper="150 °F", reading_middle="150 °F", reading_lower="150 °F")


def test_boiling_now_and_boiling_when_full_are_both_stops() -> None:
    # Open at 3,000 ft water boils at 206.5 °F.
    assert "boils-now" in codes(reading_upper="207 °F")
    assert "boils-now" not in codes(reading_upper="200 °F")
    assert "boiling" in codes(store_top="207 °F")
    assert "boiling-margin" in codes(store_top="190 °F")
    assert not {"boiling", "boiling-margin", "boils-now"} & codes()


def test_a_house_that_takes_more_than_the_fire_gives_is_unworkable() -> None:
    sheet = sheet_of(design_load="80,000 Btu/h")
    assert "fire-too-small" in {advice.code for advice in sheet.advice}
    assert sheet.values["loads_with_load"] is None
    assert "fire-too-small" not in codes()


def test_a_store_without_a_band_is_unworkable() -> None:
    sheet = sheet_of(lowest_useful="180 °F")
    assert "no-band" in {advice.code for advice in sheet.advice}
    assert sheet.values["heat_now"] == 0


def test_a_warm_day_needs_no_fire() -> None:
    sheet = sheet_of(outdoor_tomorrow="72 °F")
    assert sheet.values["hours_until_lighting"] is None
    assert "as long as it stays this mild" in sheet.say
