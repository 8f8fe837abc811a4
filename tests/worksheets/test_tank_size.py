"""Worked by hand: the tank-size worksheet, the rules it sets side by side, and the firebox that caps a burn."""

import pytest

from calc.units import BTU, FAHRENHEIT_DEGREE, GALLON, HOUR
from tests.worksheets.asking import codes, example_of, sheet_of, values

LITRE = 1e-3
# Water between 130 and 180 °F: 8.155 lb/gal × 1.0005 Btu/lb°F near 155 °F.
PER_GALLON_DEGREE = 8.165 * BTU / FAHRENHEIT_DEGREE


def test_the_printed_output_sizes_the_store_when_the_firebox_is_not_known() -> None:
    # 60,000 Btu/h × 4 h = 240,000 Btu over 130 to 180 °F: 240,000 ÷ (50 × 8.165) = 588 gal.
    worked = values("tank-size", firebox_known="no", firebox_volume="", store_top="180 °F")
    assert worked["recommended"] / GALLON == pytest.approx(588, rel=2e-3)
    assert "by_firebox" not in worked
    # German law is then the rating's alone: 17.58 kW × 55 L/kW.
    assert worked["by_german_law"] / LITRE == pytest.approx(17.584 * 55, rel=1e-3)
    assert "no-firebox" in codes("tank-size", firebox_known="no")


def test_one_load_of_wood_caps_the_burn() -> None:
    # 2 ft³ × 12.5 lb/ft³ = 25 lb; 8,600 × 0.8 = 6,880 Btu/lb; 68 % of it, all to the water: 116,960 Btu.
    worked = values("tank-size", firebox_volume="2 ft3", store_top="180 °F")
    assert worked["heat_per_load"] / BTU == pytest.approx(116_960, rel=1e-4)
    assert worked["whole_burn"] / BTU == pytest.approx(116_960, rel=1e-4)
    assert worked["recommended"] / GALLON == pytest.approx(116_960 / (50 * 8.165), rel=2e-3)
    # During the burn the house takes 30,500 × 4 = 122,000 Btu: more than the load holds, so nothing is left to store.
    assert worked["by_full_burn"] == 0
    # A fifth of the heat to the room: a fifth less to the water.
    split = values("tank-size", firebox_volume="2 ft3", room_output="15,000 Btu/h")
    assert split["heat_per_load"] / BTU == pytest.approx(0.8 * 116_960, rel=1e-4)
    assert "wood-too-little" in codes("tank-size", firebox_volume="2 ft3")
    assert "wood-too-little" not in codes("tank-size", firebox_volume="6 ft3")


def test_the_cap_is_the_one_that_firing_reckons_with() -> None:
    same = {"firebox_volume": "3 ft3", "moisture": "25 %", "room_output": "12,000 Btu/h", "efficiency_basis": "lower"}
    ours = values("tank-size", **same)
    theirs = values("firing", **same, water_output="60,000 Btu/h")
    assert ours["heat_per_load"] == pytest.approx(theirs["heat_per_load"], rel=1e-12)


@pytest.mark.parametrize(
    ("kilowatts", "by_hand", "automatic"), [("8", 300, 160), ("17", 643.5, 340), ("25", 1003.5, 500)]
)
def test_the_european_formula_of_each_way_of_stoking(kilowatts: str, by_hand: float, automatic: float) -> None:
    # Regulation (EU) 2015/1189, Annex II, notes 1 and 2: max(300, 45·17·(1 - 2.7/17)) = 643.5 L by hand, 20·17 = 340 L.
    given = example_of("tank-size") | {"rated_output": f"{kilowatts} kW"}
    hand = sheet_of("tank-size", **given).values["by_eu_formula"]
    fed = sheet_of("tank-size", **(given | {"stoking": "automatic"})).values["by_eu_formula"]
    assert hand == pytest.approx(by_hand * LITRE)
    assert fed == pytest.approx(automatic * LITRE)


def test_a_stove_fed_by_itself_is_not_capped_by_its_fire_pot() -> None:
    worked = values("tank-size", stoking="automatic", firebox_volume="0.3 ft3")
    assert worked["whole_burn"] / BTU == pytest.approx(240_000)
    assert worked["by_firebox"] / LITRE == pytest.approx(12 * 0.3 * 28.3168, rel=1e-4)


def test_half_and_twice_the_tank_carry_the_house_half_and_twice_as_long() -> None:
    # Lighting again at the lowest useful temperature, the recommended store holds the burn: 240,000 ÷ 30,500 = 7.87 h.
    worked = values("tank-size")
    assert worked["chosen_hours"] / HOUR == pytest.approx(7.869, rel=2e-3)
    assert worked["hours_of_half"] / HOUR == pytest.approx(3.934, rel=2e-3)
    assert worked["hours_of_twice"] / HOUR == pytest.approx(15.74, rel=2e-3)
    # They stay those of the recommended size, whatever tank is looked at.
    assert values("tank-size", size_factor="3")["hours_of_half"] == worked["hours_of_half"]


def test_a_store_at_hand_is_held_against_the_burn() -> None:
    # 400 gal × 8.165 × 50 °F = 163,300 Btu of the burn's 240,000: 68 %. Relit at 150 °F only 98,000 fit: 41 %.
    own = {"store_volume": "400 gal", "store_known": "yes", "store_top": "180 °F"}
    worked = values("tank-size", **own)
    assert worked["own_share"] == pytest.approx(163_300 / 240_000, rel=2e-3)
    assert values("tank-size", **own, relight_temperature="150 °F")["own_share"] == pytest.approx(0.408, rel=3e-3)
    assert "store-too-small" in codes("tank-size", **own)
    # The very size that is recommended, to the five figures of a plan, holds the burn; so does a burn kept small.
    fits = f"{worked['recommended'] / GALLON:.5g} gal"
    assert "store-too-small" not in codes("tank-size", **own | {"store_volume": fits})
    assert "store-too-small" not in codes("tank-size", **own, part_load="60 %")
    # A store that a plan has decides the question.
    assert sheet_of("tank-size", store_volume="400 gal").values["store_known"] == "yes"


def test_who_gave_a_number_that_has_a_usual_value_has_not_measured_the_firebox() -> None:
    """Heat to the room or the wood's moisture comes from other sheets; then the example's firebox would cap the burn."""
    for known in {"room_output": "13,700 Btu/h"}, {"moisture": "25 %"}, {"efficiency": "70 %"}:
        assert "firebox_volume" not in sheet_of("tank-size", **known).inputs
        assert "firebox_volume" in sheet_of("tank-size", firebox_known="yes", **known).inputs
    assert sheet_of("tank-size", firebox_volume="4 ft3").inputs["firebox_known"].si == "yes"


def test_a_store_is_not_refused_by_the_worked_examples_emitters() -> None:
    """Who has not yet been at the emitters' sheet is told which number is the example's, and to type it."""
    given = {"store_known": "yes", "store_volume": "400 gal", "water_output": "75,000 Btu/h", "burn_time": "3 h"}
    for lowest_useful, level in ({}, "caution"), ({"lowest_useful": "130 °F"}, "unworkable"):
        sheet = sheet_of("tank-size", **given, design_load="16,000 Btu/h", **lowest_useful)
        said = next(advice for advice in sheet.advice if "hold one burn" in advice.title)
        assert said.level == level
        assert ("type “Lowest useful store temperature”" in said.text) == (level == "caution")
