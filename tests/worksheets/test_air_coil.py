"""Worked by hand: the example of the air-coil worksheet; and what it says when something is wrong."""

import math
from collections.abc import Mapping

import pytest

from calc.answer import Typed, answer
from calc.engine.sheet import Sheet
from calc.units import BTU, FAHRENHEIT_DEGREE, HOUR
from tests.worksheets import asking


def sheet_of(typed: Mapping[str, str]) -> Sheet:
    return answer("air-coil", {field: Typed(text) for field, text in typed.items()})


def kelvin(fahrenheit: float) -> float:
    return (fahrenheit + 459.67) / 1.8


RIDGE_ROAD = {
    "design_load": "32,500 Btu/h",
    "coil_known": "conductance",
    "coil_ua": "1,500 Btu/h/F",
    "coil_flow": "4 gpm",
    "air_flow": "1,000 cfm",
    "entering_air": "65 °F",
    "altitude": "3,000 ft",
    "duct_way": "share",
    "duct_loss": "20 %",
    "indoor": "68 °F",
    "design_outdoor": "-5 °F",
    "average_outdoor": "30 °F",
}
RATED = {
    "coil_known": "rating",
    "rated_coil_heat": "74,800 Btu/h",
    "rated_coil_water": "180 °F",
    "rated_coil_air": "68 °F",
    "rated_coil_flow": "8 gpm",
    "rated_air_flow": "1,000 cfm",
}
BY_LENGTH = {
    "duct_way": "length",
    "duct_length": "50 ft",
    "duct_diameter": "10 in",
    "duct_insulation": "4 R",
    "duct_surroundings": "40 °F",
    "leakage": "10 %",
}


def codes(**typed: str) -> set[str]:
    return {advice.code for advice in sheet_of(RIDGE_ROAD | typed).advice}


def lowest(**typed: str) -> float:
    """Lowest useful store water, °F."""
    value = sheet_of(RIDGE_ROAD | typed).values["lowest_useful"]
    assert isinstance(value, float)
    return value * 1.8 - 459.67


def test_ridge_road_by_hand() -> None:
    # Air: 13.171 psia × 144 ÷ (53.352 × 524.67 °R) = 0.06776 lb/ft³; × 60,000 ft³/h × 0.2403 = 976.9 Btu/(h·°F).
    # Water: 4 gpm × 60 × 8.2 = 1,968 Btu/(h·°F). NTU 1,500 ÷ 976.9 = 1.5355, C = 0.4964.
    # Effectiveness by the common approximation: 1 - exp[1.0989 ÷ 0.4964 · (exp(-0.4964 · 1.3972) - 1)] = 0.6696,
    # which near NTU 1.5 is at most 1 % high.
    # Coil heat: 32,500 ÷ 0.8 = 40,625 Btu/h; water over air 40,625 ÷ (976.9 × 0.6696) = 62.1 °F: 127.1 °F, or up to
    # 127.7 °F with an effectiveness 1 % lower.
    # Air at the registers: 65 + 32,500 ÷ 976.9 = 98.3 °F, whatever the coil.
    values = sheet_of(RIDGE_ROAD).values
    assert values["air_capacity"] == pytest.approx(976.9 * BTU / HOUR / FAHRENHEIT_DEGREE, rel=3e-4)
    assert values["water_capacity"] == pytest.approx(1968 * BTU / HOUR / FAHRENHEIT_DEGREE, rel=1e-3)
    assert values["lowest_useful"] == pytest.approx(kelvin(127.4), abs=0.2)
    assert values["register_air"] == pytest.approx(kelvin(98.27), abs=0.03)
    # From 140 °F water: 0.666 × 976.9 × 75 = 48,800 Btu/h (1 %); air 65 + 50.0, water 140 - 24.8.
    assert values["heat"] == pytest.approx(48_800 * BTU / HOUR, rel=0.01)
    assert values["air_out"] == pytest.approx(kelvin(115.0), abs=0.5)
    assert values["water_out"] == pytest.approx(kelvin(115.2), abs=0.3)
    # A fifth is lost: 39,000 Btu/h arrive in air of 65 + 40.0 °F.
    assert values["delivered_heat"] == pytest.approx(39_000 * BTU / HOUR, rel=0.01)
    assert values["delivered_air"] == pytest.approx(kelvin(105.0), abs=0.4)


def test_the_example_that_the_sheet_opens_with_is_ridge_road() -> None:
    assert sheet_of({}).values["lowest_useful"] == sheet_of(RIDGE_ROAD).values["lowest_useful"]


@pytest.mark.parametrize(
    ("ua", "loss", "water"),
    [("1500", "0 %", 115), ("1500", "20 %", 128), ("600", "0 %", 146), ("600", "20 %", 166)],
)
def test_coil_and_ducts_decide_together(ua: str, loss: str, water: float) -> None:
    """Worked out elsewhere with 1.08 cfm × pressure ratio for the air and 490 gpm for the water: within 1 °F."""
    assert lowest(coil_ua=f"{ua} Btu/h/F", duct_loss=loss) == pytest.approx(water, abs=1)


def test_half_the_load_and_no_loss_need_half_the_excess() -> None:
    full, half = lowest(duct_loss="0 %"), lowest(duct_loss="0 %", design_load="16,250 Btu/h")
    assert half - 65 == pytest.approx((full - 65) / 2)


def test_a_larger_coil_runs_cooler_but_its_air_is_no_warmer() -> None:
    small, large = (sheet_of(RIDGE_ROAD | {"coil_ua": ua}).values for ua in ("600 Btu/h/F", "3000 Btu/h/F"))
    assert large["lowest_useful"] < small["lowest_useful"]  # type: ignore[operator]
    assert large["register_air"] == pytest.approx(small["register_air"])


def test_the_approach_of_an_exchanger_is_added() -> None:
    assert lowest(exchanger_approach="9 F°") == pytest.approx(lowest() + 9)


def test_altitude_thins_the_air_by_the_pressure_ratio() -> None:
    # Standard atmosphere: 0.8321 at 5,000 ft.
    low, high = (sheet_of(RIDGE_ROAD | {"altitude": height}).values for height in ("0 ft", "5,000 ft"))
    assert high["air_capacity"] / low["air_capacity"] == pytest.approx(0.8321, rel=1e-3)  # type: ignore[operator]
    assert high["pressure_ratio"] == pytest.approx(0.8321, rel=1e-3)


def test_standard_air_is_the_same_at_any_height() -> None:
    # 1,000 cfm of standard air carry 1,080 Btu/(h·°F).
    for height in ("0 ft", "7,000 ft"):
        values = sheet_of(RIDGE_ROAD | {"altitude": height, "flow_basis": "standard"}).values
        assert values["air_capacity"] == pytest.approx(1080 * BTU / HOUR / FAHRENHEIT_DEGREE, rel=0.002)


def test_a_coil_from_one_rated_point_by_hand() -> None:
    # Air 1,080, water 8 × 492 = 3,936 Btu/(h·°F); effectiveness 74,800 ÷ (1,080 × 112) = 0.6184: NTU 1.111 at C 0.27
    # (tables of the exact series give 0.61834 at NTU 1.1111): UA 1,200.
    # At the rated flows of air but half the water: 1,200 × 1.5 ÷ (1 + 0.5 × 0.5^-0.85) = 1,800 ÷ 1.9013 = 946.7.
    values = sheet_of(RIDGE_ROAD | RATED | {"flow_basis": "standard"}).values
    unit = BTU / HOUR / FAHRENHEIT_DEGREE
    assert values["rated_conductance"] == pytest.approx(1200 * unit, rel=0.005)
    assert values["coil"] == pytest.approx(946.7 * unit, rel=0.005)


def test_ducts_by_length_by_hand() -> None:
    # R-4 and the two air films (0.17 m²·K/W = R-0.965): U = 1 ÷ 4.965 = 0.2014; surface π × 10/12 × 50 = 130.9 ft².
    # exp(-0.2014 × 130.9 ÷ 976.9) = exp(-0.02699) = 0.9734.
    # Register air: 68 + 32,500 ÷ (976.9 × 0.9) = 104.97 °F; behind the coil 40 + 64.97 ÷ 0.9734 = 106.74 °F.
    # Coil heat: 976.9 × (106.74 - 65) = 40,780 Btu/h.
    values = sheet_of(RIDGE_ROAD | BY_LENGTH).values
    assert values["kept_share"] == pytest.approx(0.9734, abs=1e-4)
    assert values["register_air"] == pytest.approx(kelvin(104.97), abs=0.03)
    assert values["needed_heat"] == pytest.approx(40_780 * BTU / HOUR, rel=1e-3)


def test_what_the_coil_gives_at_its_lowest_water_is_the_load() -> None:
    for typed in (RIDGE_ROAD, RIDGE_ROAD | BY_LENGTH):
        water = sheet_of(typed).values["supply_water"]
        assert isinstance(water, float)
        again = sheet_of(typed | {"supply_tried": f"{water!r} K"}).values
        assert again["delivered_heat"] == pytest.approx(32_500 * BTU / HOUR, rel=1e-9)


def test_cautions_come_and_go() -> None:
    assert "ducts-first" in codes()
    assert "ducts-first" not in codes(duct_loss="10 %")
    assert "barely-warm" not in codes()
    assert "barely-warm" in codes(air_flow="1,400 cfm")
    assert "frozen-coil" not in codes(**BY_LENGTH)
    assert "frozen-coil" in codes(**BY_LENGTH | {"duct_surroundings": "20 °F"})
    assert "too-cool-tried" in codes(supply_tried="75 °F", entering_air="80 °F", indoor="80 °F")
    assert "no-dump" in codes()


def test_a_coil_too_small_is_unworkable() -> None:
    assert "too-hot" not in codes()
    sheet = sheet_of(RIDGE_ROAD | {"coil_ua": "300 Btu/h/F"})
    assert "too-hot" in {advice.code for advice in sheet.advice if advice.level == "unworkable"}


def test_a_rating_that_no_coil_reaches_is_unworkable_and_has_no_number() -> None:
    # 2.2 gpm and 1,000 cfm carry the same, 1,082 Btu/(h·°F). Two equal streams that cross stay under 93 % of the
    # 1,082 × 112 = 121,200 Btu/h that counterflow could reach, however large the coil.
    sheet = sheet_of(RIDGE_ROAD | RATED | {"rated_coil_flow": "2.2 gpm", "rated_coil_heat": "117,000 Btu/h"})
    assert not sheet.problems
    assert sheet.values["lowest_useful"] is None
    assert "impossible-rating" in {advice.code for advice in sheet.advice if advice.level == "unworkable"}


def test_a_rating_of_more_than_all_the_heat_there_is_is_an_error() -> None:
    sheet = sheet_of(RIDGE_ROAD | RATED | {"rated_coil_heat": "130,000 Btu/h"})
    assert [problem.key for problem in sheet.problems] == ["rated_coil_heat"]


def test_a_rating_with_its_temperatures_swapped_is_an_error() -> None:
    sheet = sheet_of(RIDGE_ROAD | RATED | {"rated_coil_water": "90 °F", "rated_coil_air": "95 °F"})
    assert "rated_coil_water" in [problem.key for problem in sheet.problems]


def test_the_approximation_by_hand_is_written_right() -> None:
    """The common approximation in the first test's comment, so that its digits can be trusted."""
    units, ratio = 1.5355, 0.4964
    rough = 1 - math.exp(units**0.22 / ratio * (math.exp(-ratio * units**0.78) - 1))
    assert rough == pytest.approx(0.6696, abs=2e-4)


def test_a_store_cooler_than_the_coil_needs_is_unworkable() -> None:
    needed = asking.values("air-coil")["lowest_useful"] * 1.8 - 459.67
    assert "over-store" in asking.codes("air-coil", store_top=f"{needed - 2:.1f} °F")
    assert "over-store" not in asking.codes("air-coil", store_top=f"{needed + 2:.1f} °F")


def test_antifreeze_in_the_coil_carries_less() -> None:
    # CoolProp's MPG of 40.9 % by mass (40 % by volume) at 60 °C: 1,006.7 kg/m³ × 3,821 J/kgK = 3.847 MJ/m³K, and
    # IF97's water 983.2 × 4,183.7 = 4.113: glycol carries 0.935 of it.
    plain, glycol = sheet_of(RIDGE_ROAD), sheet_of(RIDGE_ROAD | {"antifreeze_kind": "propylene", "antifreeze": "40 %"})
    assert glycol.values["fluid_heat"] == pytest.approx(3.847e6, rel=0.005)
    assert glycol.values["water_capacity"] / plain.values["water_capacity"] == pytest.approx(0.935, abs=0.003)  # type: ignore[operator]
    assert glycol.values["lowest_useful"] > plain.values["lowest_useful"]  # type: ignore[operator]


def test_a_room_that_follows_no_typed_air_says_so() -> None:
    cool = {key: text for key, text in RIDGE_ROAD.items() if key != "indoor"} | {"entering_air": "60 °F"}
    assert "room-apart" in {advice.code for advice in sheet_of(cool).advice}
    assert "room-apart" not in {advice.code for advice in sheet_of(cool | {"indoor": "60 °F"}).advice}
