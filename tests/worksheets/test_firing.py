"""Worked by hand: the example of the firing worksheet; the definitions that pin its numbers; what it says when."""

import pytest

from calc.answer import Typed, answer
from calc.engine.sheet import Sheet
from calc.units import BTU, HOUR

# A firebox twice as large as the example's, behind cooler emitters: one load burns for four hours.
LARGE = {"burn_time": "4 h", "store_top": "180 °F", "lowest_useful": "110 °F", "firebox_volume": "4 ft3"}


def sheet_of(**typed: str) -> Sheet:
    return answer("firing", {field: Typed(text) for field, text in (LARGE | typed).items()})


def codes(**typed: str) -> set[str]:
    example = {key: entry.text for key, entry in answer("firing", {}).inputs.items() if not entry.from_field}
    return {advice.code for advice in sheet_of(**(example | LARGE | typed)).advice}


def test_fern_lane_by_hand() -> None:
    # 2 ft³ × 12.5 = 25 lb; × 6,880 × 0.68 × 0.80 = 93,570 Btu to the water. The outputs say 40,000 × 2 = 80,000.
    # A burn is worth 80,000 + 10,000 × 2 = 100,000 Btu: 24 × 13,300 ÷ 100,000 = 3.192 a day.
    # The store holds 500 × 8.18 × 40 = 163,600 Btu: ÷ 36,700 = 4.46 h to fill it, 2.23 loads; ÷ 13,300 = 12.30 h cold.
    values = answer("firing", {}).values
    assert values["heat_per_load"] == pytest.approx(93_570 * BTU, rel=0.001)
    assert values["burns_per_day_at_design"] == pytest.approx(3.192)
    assert values["loads_to_charge"] == pytest.approx(2.23, rel=0.003)
    assert values["hours_cold"] == pytest.approx(12.30 * HOUR, rel=0.003)
    assert values["hours_between_at_design"] == pytest.approx(16.76 * HOUR, rel=0.003)
    assert not {"wood-too-little", "burn-does-not-fit"} & {advice.code for advice in answer("firing", {}).advice}


def test_a_large_firebox_by_hand() -> None:
    # To the water: 40 of 50 kBtu/h = 80 %. One firebox: 4 ft³ × 12.5 lb/ft³ = 50 lb; 8,600 × 0.80 = 6,880 Btu/lb;
    #   50 × 6,880 × 0.68 × 0.80 = 187,100 Btu to the water. The outputs say 40,000 × 4 = 160,000: the smaller counts.
    # A burn is worth 160,000 + 10,000 × 4 = 200,000 Btu: 24 × 13,300 ÷ 200,000 = 1.596 a day, 26.6 % of the day.
    # The store holds 500 gal × 8.18 lb × 70 °F = 286,300 Btu. Filling it at 50,000 - 13,300 takes 7.80 h, 1.95 loads;
    #   it then lasts 286,300 ÷ 13,300 = 21.53 h: 29.33 h from lighting to lighting.
    # With one load each time: 24 ÷ 1.596 = 15.04 h.
    values = sheet_of().values
    assert values["heat_per_load"] == pytest.approx(187_100 * BTU, rel=0.001)
    assert values["burns_per_day_at_design"] == pytest.approx(1.596)
    assert values["burning_share"] == pytest.approx(0.266)
    assert values["hours_to_charge"] == pytest.approx(7.80 * HOUR, rel=0.003)
    assert values["loads_to_charge"] == pytest.approx(1.95, rel=0.003)
    assert values["hours_cold"] == pytest.approx(21.53 * HOUR, rel=0.003)
    assert values["hours_between_at_design"] == pytest.approx(29.33 * HOUR, rel=0.003)
    assert values["hours_between_one_load"] == pytest.approx(15.04 * HOUR, rel=0.001)


def test_the_average_day_by_hand() -> None:
    # 13,300 ÷ 73 °F = 182.19 Btu/(h·°F); × 7,800 × 24 = 34.11 million Btu a year, over 300 days: 4,737 Btu/h.
    # The rooms take 4,737 of the stove's 10,000 Btu/h: a burn is worth 160,000 + 4 × 4,737 = 178,950 Btu.
    # 24 × 4,737 ÷ 178,950 = 0.6353 a day. 286,300 ÷ 4,737 = 60.4 h cold, 286,300 ÷ 40,000 = 7.16 h of fire.
    values = sheet_of().values
    assert values["load_average"] == pytest.approx(4737 * BTU / HOUR, rel=0.0005)
    assert values["burns_per_day_average"] == pytest.approx(0.6353, rel=0.0005)
    assert values["hours_between_average"] == pytest.approx((60.4 + 7.16) * HOUR, rel=0.003)


def test_loads_a_day_count_the_heat_to_the_room() -> None:
    # Load 15, water 40, room 10 kBtu/h, 4 h: 24 × 15 ÷ (4 × 50) = 1.8 a day, not 24 × 15 ÷ 480 = 0.75.
    values = sheet_of(
        design_load="15,000 Btu/h", water_output="40,000 Btu/h", room_output="10,000 Btu/h", burn_time="4 h"
    ).values
    assert values["burns_per_day_at_design"] == pytest.approx(1.8)


def test_room_heat_counts_only_as_far_as_the_room_can_use_it() -> None:
    # 24 × 13,300 ÷ (160,000 + 4,000 × 4) = 1.814 a day.
    values = sheet_of(room_can_use="4,000 Btu/h").values
    assert values["burns_per_day_at_design"] == pytest.approx(1.814, rel=0.0005)
    assert "room-overheats" in codes(room_can_use="4,000 Btu/h")
    assert "room-overheats" not in codes()


def test_the_load_holds_taps_and_outside_losses() -> None:
    # 24 × (13,300 + 1,200 + 500) ÷ 200,000 = 1.8 a day.
    values = sheet_of(tap_load="1,200 Btu/h", standby_loss="500 Btu/h").values
    assert values["burns_per_day_at_design"] == pytest.approx(1.8)


def test_a_small_firebox_counts_for_what_it_holds_on_both_sides() -> None:
    # 1 ft³: 46,784 Btu to the water, and 10,000 × 46,784 ÷ 160,000 = 2,924 Btu/h to the room for 4 h: 58,480 Btu.
    # 24 × 13,300 ÷ 58,480 = 5.458 a day.
    values = sheet_of(firebox_volume="1 ft3").values
    assert values["burns_per_day_at_design"] == pytest.approx(5.458, rel=0.0005)
    assert {"wood-too-little", "long-stoking", "never-full"} <= codes(firebox_volume="1 ft3")
    assert "several-loads" not in codes(firebox_volume="1 ft3")
    assert "wood-too-little" not in codes()


@pytest.mark.parametrize(("packing", "kilo_btu"), [("150 kg/m3", 27.8), ("250 kg/m3", 46.3)])
def test_a_30_liter_firebox_puts_27_to_46_kbtu_into_the_water(packing: str, kilo_btu: float) -> None:
    # 0.030 m³ × 150 kg/m³ × 14.46 MJ/kg (lower value at 20 %) × 0.75 × 0.60 = 29.3 MJ = 27.8 kBtu; 250 gives 46.3.
    values = sheet_of(
        firebox_volume="30 L",
        packing_density=packing,
        efficiency_basis="lower",
        efficiency="75 %",
        water_output="24,000 Btu/h",
        room_output="16,000 Btu/h",
    ).values
    assert values["heat_per_load"] == pytest.approx(kilo_btu * 1000 * BTU, rel=0.005)


def test_both_bases_of_efficiency_tell_of_the_same_stove() -> None:
    # 75 % on lower value at 20 % moisture is 75 × 6,216 ÷ 6,880 = 67.8 % on higher.
    lower = sheet_of(efficiency_basis="lower", efficiency="75 %").values["heat_per_load"]
    higher = sheet_of(efficiency_basis="higher", efficiency="67.8 %").values["heat_per_load"]
    assert lower == pytest.approx(higher, rel=0.001)


def test_hours_with_a_fire_by_hand() -> None:
    # 1.596 loads of 4 h: 6.384 h of the coldest day; 0.6353 × 4 = 2.541 h of an average one.
    values = sheet_of().values
    assert values["hours_tended"] == pytest.approx(6.384 * HOUR, rel=0.0005)
    assert values["hours_tended_average"] == pytest.approx(2.541 * HOUR, rel=0.0005)


def test_a_smaller_firebox_never_gives_longer_pauses() -> None:
    # At 1 ft³ the fire makes 58,480 ÷ 4 = 14,620 Btu/h, 1,320 more than the house takes. In the 7.80 h that would fill
    # the store at the rated output it stores 10,300 Btu, which last 0.77 h: 8.57 h from lighting to lighting.
    sizes = ("1 ft3", "1.2 ft3", "1.5 ft3", "2 ft3", "3 ft3", "4 ft3", "6 ft3")
    result = [sheet_of(firebox_volume=size).values for size in sizes]
    assert result[0]["hours_between_at_design"] == pytest.approx(8.57 * HOUR, rel=0.005)
    for key in ("hours_between_at_design", "hours_between_average", "hours_between_one_load", "hours_cold"):
        hours = [float(entry[key]) for entry in result]  # type: ignore[arg-type]
        assert hours == sorted(hours), key
    assert all(entry["hours_lit"] <= 16 * HOUR for entry in result)  # type: ignore[operator]


def test_more_than_a_waking_day_of_stoking_is_a_caution() -> None:
    # 16 h of 50,000 Btu/h spread over the day carry 33,333 Btu/h.
    assert "long-stoking" in codes(design_load="33,500 Btu/h")
    assert "long-stoking" not in codes(design_load="33,200 Btu/h")
    assert "more-than-a-day" in codes(design_load="50,100 Btu/h")


def test_a_stove_that_is_too_small_is_unworkable() -> None:
    assert "more-than-a-day" in codes(design_load="60,000 Btu/h")
    sheet = sheet_of(design_load="60,000 Btu/h")
    assert sheet.values["burning_share"] == pytest.approx(1.2)  # 60 of 50 kBtu/h
    assert sheet.values["hours_between_at_design"] is None
    assert (
        next(result for result in sheet.results if result.key == "hours_between_at_design").shown == "it never goes out"
    )


def test_a_store_without_a_band_carries_nothing() -> None:
    sheet = sheet_of(lowest_useful="180 °F")
    assert sheet.values["usable_heat"] == 0
    assert sheet.values["hours_cold"] == 0
    assert "no-band" in {advice.code for advice in sheet.advice}


def test_a_burn_that_does_not_fit_is_a_caution_with_its_share() -> None:
    # 250 gal hold 143,150 Btu of the 160,000 a burn brings: 89.5 %.
    assert "burn-does-not-fit" in codes(store_volume="250 gal")
    assert sheet_of(store_volume="250 gal").values["burn_share"] == pytest.approx(0.895, rel=0.003)
    assert "burn-does-not-fit" not in codes()


def test_a_store_near_boiling_is_said() -> None:
    # Open at 3,000 ft water boils at 206.5 °F.
    assert "boiling" in codes(store_top="207 °F")
    assert "boiling-margin" in codes(store_top="190 °F")
    assert not {"boiling", "boiling-margin"} & codes(store_top="186 °F")


def test_notes_on_several_loads_and_wet_wood() -> None:
    assert "several-loads" in codes()
    assert "several-loads" not in codes(store_volume="250 gal")
    assert "wet-wood" in codes(moisture="30 %")


def test_a_larger_store_changes_the_lightings_and_not_the_wood() -> None:
    entry, other = (sheet_of(store_volume=text).values for text in ("500 gal", "1,000 gal"))
    assert entry["burns_per_day_at_design"] == other["burns_per_day_at_design"]
    assert other["hours_between_at_design"] == pytest.approx(2 * entry["hours_between_at_design"])  # type: ignore[operator]


def test_an_outdoor_design_temperature_above_the_room_is_an_error() -> None:
    sheet = sheet_of(design_outdoor="60 °F", indoor="55 °F")
    assert [problem.key for problem in sheet.problems] == ["design_outdoor"]
