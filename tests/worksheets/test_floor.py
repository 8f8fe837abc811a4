"""Worked by hand: the example of the floor worksheet; and what it says when something is wrong."""

from collections.abc import Mapping

import pytest

from calc.answer import Typed, answer
from calc.engine.sheet import Sheet
from calc.units import BTU, FOOT, GALLON, HOUR

FAHRENHEIT = 459.67


# A floor of a round thousand square feet, on a day of 30 °F.
ROUND = {"floor_area": "1,000 ft2", "average_outdoor": "30 °F", "store_top": "180 °F"}


def sheet_of(typed: Mapping[str, str]) -> Sheet:
    return answer("floor", {field: Typed(text) for field, text in (ROUND | dict(typed)).items()})


def kelvin(fahrenheit: float) -> float:
    return (fahrenheit + FAHRENHEIT) / 1.8


def codes(**typed: str) -> set[str]:
    example = {
        "floor_area": "1,000 ft2",
        "design_load": "13,300 Btu/h",
        "indoor": "68 °F",
        "floor_covering": "wood",
        "pipe_spacing": "12 in",
        "concrete_cover": "2 in",
        "pipe_diameter": "0.625 in",
        "water_drop": "10 F°",
        "slab_conductivity": "1.4 W/m/K",
        "insulation_below": "10 R",
        "below_floor": "50 °F",
        "design_outdoor": "-5 °F",
    }
    return {advice.code for advice in sheet_of(example | typed).advice}


def test_a_thousand_square_feet_by_hand() -> None:
    # 13,300 Btu/h ÷ 1,000 ft² = 13.3 Btu/(h·ft²) = 41.95 W/m².
    # Surface: (41.95 ÷ 8.92)^(1/1.1) = 4.703^0.9091 = 4.086 K = 7.35 °F over 68 °F: 75.4 °F.
    # EN 1264-2, spacing 0.3048 m, covering 0.10 m²·K/W, λ 1.4, cover 50.8 mm, pipe 15.875 mm:
    #   a_B = (0.09259 + 0.045) ÷ (0.09259 + 0.03214 + 0.1) = 0.6122
    #   a_T = 1.156, to the power 1 - 0.3048/0.075 = -3.064: 0.6413
    #   a_u = 1.0236, to the power -0.58: 0.9866
    #   a_D = 1.0441, to the power -1.031: 0.9565
    #   6.7 × 0.6122 × 0.6413 × 0.9866 × 0.9565 = 2.482 W/(m²·K)
    # Water over room: 41.95 ÷ 2.482 = 16.90 K = 30.42 °F (logarithmic).
    # Supply: 68 + 10 ÷ (1 - e^(-10/30.42)) = 68 + 10 ÷ 0.2802 = 103.7 °F; return 93.7 °F.
    # Down: 1/10.8 + 0.1 + 0.0508/1.4 = 0.2289 m²·K/W = R-1.300; (1.300 × 13.3 + 68 - 50) ÷ 10 = 3.528 Btu/(h·ft²).
    # Flow: (13,300 + 3,528) ÷ 10 °F ÷ (60 × 8.26) = 3.396 gpm.
    values = sheet_of({}).values
    assert values["heat_flux"] == pytest.approx(13.3 * BTU / HOUR / FOOT**2)
    assert values["surface"] == pytest.approx(kelvin(75.35), abs=0.03)
    assert values["floor_conductance"] == pytest.approx(2.482, rel=5e-4)
    assert values["supply_water"] == pytest.approx(kelvin(103.7), abs=0.05)
    assert values["return_temperature"] == pytest.approx(kelvin(93.7), abs=0.05)
    assert values["mean_water"] == pytest.approx(kelvin(98.7), abs=0.05)
    assert values["lowest_useful"] == values["supply_water"]  # no exchanger
    assert values["downward_loss"] == pytest.approx(3528 * BTU / HOUR, rel=5e-4)
    assert values["floor_flow"] == pytest.approx(3.396 * GALLON / 60, rel=5e-4)


def test_the_average_day_by_hand() -> None:
    # At 30 °F outside: 38 of 73 degrees, 6,923 Btu/h, 6.923 Btu/(h·ft²); 15.84 °F of water over the room.
    # Down: (1.300 × 6.923 + 18) ÷ 10 = 2.700; drop at the same flow: 10 × 9.623 ÷ 16.828 = 5.718 °F.
    # Supply: 68 + 5.718 ÷ (1 - e^(-5.718/15.84)) = 68 + 5.718 ÷ 0.3030 = 86.87 °F.
    values = sheet_of({}).values
    assert values["lowest_useful_average"] == pytest.approx(kelvin(86.87), abs=0.05)


def test_the_approach_of_an_exchanger_is_added() -> None:
    plain, behind = (sheet_of({"exchanger_approach": text}).values for text in ("0 F°", "9 F°"))
    assert behind["lowest_useful"] - plain["lowest_useful"] == pytest.approx(5)  # type: ignore[operator]
    assert behind["supply_water"] == plain["supply_water"]


def test_a_covering_typed_by_its_r_value_is_the_same_covering() -> None:
    by_name = sheet_of({"floor_covering": "wood"}).values
    by_value = sheet_of({"floor_covering": "own", "covering_resistance": "0.1 m2K/W"}).values
    assert by_value["supply_water"] == pytest.approx(by_name["supply_water"])


def test_a_warmest_spot_over_the_limit_is_a_caution_and_says_what_the_floor_can_give() -> None:
    # By finite differences (comparisons/floor_conduction.py) pipes 12 in apart under 2 in of concrete leave the
    # spots above them 1.320 times as far over the room as the mean where the concrete is bare, 1.194 under wood.
    # Room 68 °F = 20 °C, limit 29 °C: a mean of 9/1.320 = 6.82 K, 8.92 × 6.82^1.1 = 73.7 W/m² = 23.4 Btu/(h·ft²) bare;
    # under wood 9/1.194 = 7.54 K, 82.3 W/m², 26.1 Btu/(h·ft²).
    assert "surface-limit" not in codes(design_load="23,000 Btu/h", floor_covering="bare")
    assert "surface-limit" in codes(design_load="23,700 Btu/h", floor_covering="bare")
    assert "surface-limit" not in codes(design_load="23,700 Btu/h", floor_covering="bare", floor_zone="edge")
    assert "surface-limit" not in codes(design_load="23,700 Btu/h", floor_covering="bare", floor_zone="bath")
    assert "surface-limit" not in codes(design_load="28,500 Btu/h", floor_covering="bare", pipe_spacing="6 in")
    values = sheet_of({}).values
    assert values["most_heat"] == pytest.approx(26_100 * BTU / HOUR, rel=0.002)
    # The day itself: a mean of 4.086 K over the room (above), 1.194 × 4.086 = 4.878 K = 8.78 °F at the warmest.
    assert values["surface_warmest"] == pytest.approx(kelvin(68 + 8.78), abs=0.03)


def test_what_it_gives_from_a_supply_temperature() -> None:
    # From the supply that it needs it gives just the load, and its warmest spots stand as on the coldest day.
    plain = sheet_of({}).values
    needed = f"{plain['supply_water'] * 1.8 - FAHRENHEIT:.6f} °F"  # type: ignore[operator]
    values = sheet_of({"supply_tried": needed}).values
    assert values["output_at"] == pytest.approx(13_300 * BTU / HOUR, rel=1e-6)
    assert values["surface_warmest_tried"] == pytest.approx(plain["surface_warmest"])
    # 130 °F: 16,828 Btu/h leave at a drop of 10 °F, so 1,682.8 Btu/h for each degree of drop. Try 24.56 Btu/(h·ft²) up:
    # (1.300 × 24.56 + 18) ÷ 10 = 4.99 down, a drop of 29.55 × 1,000 ÷ 1,682.8 = 17.56 °F, ends 62 and 44.44 °F over the
    # room, logarithmic 52.74 °F; through 2.482 W/(m²·K) = 0.4371 Btu/(h·ft²·°F): 23.05. Down to 23.35: drop 16.74,
    # ends 62 and 45.26, mean 53.20 °F, 23.25. At 23.26 both sides agree.
    assert sheet_of({"supply_tried": "130 °F"}).values["output_at"] == pytest.approx(23_260 * BTU / HOUR, rel=0.002)
    assert sheet_of({"supply_tried": "75 °F", "indoor": "78 °F"}).values["output_at"] == 0
    assert "tried-limit" not in codes(supply_tried="130 °F")
    assert "tried-limit" in codes(supply_tried="150 °F")
    assert "tried-limit" not in codes()


def test_water_over_what_a_slab_stands_is_a_caution() -> None:
    assert "hot-slab" not in codes()
    assert "hot-slab" in codes(design_load="26,000 Btu/h", floor_covering="carpet")


def test_a_floor_far_too_small_is_unworkable() -> None:
    assert "too-hot" not in codes()
    sheet = sheet_of({"floor_area": "60 ft2", "design_load": "2,000,000 Btu/h"})
    assert not sheet.problems
    assert "too-hot" in {advice.code for advice in sheet.advice if advice.level == "unworkable"}


def test_a_floor_without_foam_is_told_what_it_loses() -> None:
    assert "downward" not in codes()
    assert "downward" in codes(insulation_below="2 R")


def test_a_store_hotter_than_the_floor_wants_needs_a_valve() -> None:
    assert "mixing-valve" in codes()
    assert "mixing-valve" not in codes(store_top="100 °F")


def test_thick_carpet_is_refused_with_the_range() -> None:
    sheet = sheet_of({"floor_covering": "own", "covering_resistance": "2 R"})
    assert [problem.key for problem in sheet.problems] == ["covering_resistance"]


def test_a_room_colder_than_outdoors_is_an_error() -> None:
    assert [problem.key for problem in sheet_of({"indoor": "50 °F", "design_outdoor": "55 °F"}).problems] == [
        "design_outdoor"
    ]


def test_a_store_cooler_than_the_floor_needs_is_unworkable() -> None:
    assert "over-store" in codes(store_top="100 °F")
    assert "over-store" not in codes(store_top="110 °F")
