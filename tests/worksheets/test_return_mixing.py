"""Worked by hand: the return-mixing worksheet, the definitions that pin it, and what it says when."""

import pytest

from calc.units import FAHRENHEIT_DEGREE, GALLON
from tests.worksheets import asking
from tests.worksheets.asking import example_of, kelvin, sheet_of

MILL_ROW = example_of("return-mixing", 1)  # every test here that says nothing else is about this stove


def values(worksheet: str, **typed: str) -> dict[str, float]:
    return asking.values(worksheet, **(MILL_ROW | typed))


def codes(worksheet: str, **typed: str) -> set[str]:
    return asking.codes(worksheet, **(MILL_ROW | typed))


def test_fern_lane_by_hand() -> None:
    # (140 - 100) ÷ (165 - 100) = 0.6154. Rise 25 °F: 40,000 ÷ 25 = 1,600 Btu/h°F; near 153 °F 8.17 lb/gal × 60 = 490:
    # 3.265 gpm through the stove.
    worked = asking.values("return-mixing")
    assert worked["bypass_share"] == pytest.approx(0.6154, rel=1e-4)
    assert worked["rise"] == pytest.approx(25 * FAHRENHEIT_DEGREE)
    assert worked["stove_flow"] == pytest.approx(3.265 * GALLON / 60, rel=3e-3)


def test_mill_row_by_hand() -> None:
    # (140 - 100) ÷ (175 - 100) = 0.5333. Rise 35 °F: 60,000 ÷ 35 = 1,714 Btu/h°F; 8.14 lb/gal × 60 × 1.0 = 489:
    # 3.506 gpm through the stove. 0.5333 of 3.506 × 8.206 lb/gal = 15.34 lb/min, at 8.114 lb/gal hot: 1.891 gpm.
    worked = values("return-mixing")
    assert worked["least_return"] == pytest.approx(kelvin(140))
    assert worked["bypass_share"] == pytest.approx(0.5333, rel=1e-4)
    assert worked["mixed_return"] == pytest.approx(kelvin(140))
    assert worked["rise"] == pytest.approx(35 * FAHRENHEIT_DEGREE)
    assert worked["stove_flow"] == pytest.approx(3.506 * GALLON / 60, rel=3e-3)
    assert worked["bypass_flow"] == pytest.approx(1.891 * GALLON / 60, rel=3e-3)


def test_the_least_return_is_the_hottest_of_three() -> None:
    # The maker's, the dew point with 15 °F over it, and 131 °F.
    assert values("return-mixing", maker_minimum="150 °F")["least_return"] == pytest.approx(kelvin(150))
    assert values("return-mixing", maker_minimum="70 °F")["least_return"] == pytest.approx(kelvin(131))
    wet = values("return-mixing", maker_minimum="70 °F", moisture="50 %", air_ratio="1.3")
    assert wet["least_return"] == pytest.approx(wet["dew_point"] + 15 * FAHRENHEIT_DEGREE)
    assert wet["least_return"] > kelvin(131)


def test_dew_points_against_the_printed_ones() -> None:
    # Sea level, room air of 20 °C and 40 %: 58.46, 51.65 and 46.91 °C at air ratios of 1, 1.5 and 2 for wood at 20 %.
    for ratio, celsius in (("1.5", 51.65), ("2", 46.91)):
        assert values("return-mixing", altitude="0 ft", air_ratio=ratio)["dew_point"] == pytest.approx(
            celsius + 273.15, abs=0.05
        )


def test_a_warm_store_needs_no_hot_water_mixed_in() -> None:
    worked = values("return-mixing", system_return="150 °F")
    assert worked["bypass_share"] == 0
    assert worked["mixed_return"] == pytest.approx(kelvin(150))


def test_an_outlet_cooler_than_the_least_return_is_unworkable() -> None:
    sheet = sheet_of("return-mixing", **(example_of("return-mixing") | {"stove_outlet": "135 °F"}))
    assert "outlet-too-cool" in {advice.code for advice in sheet.advice if advice.level == "unworkable"}
    assert sheet.values["bypass_share"] == 1


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("outlet-too-cool", {"stove_outlet": "138 °F"}, {}),
        ("unprotected", {}, {"system_return": "145 °F"}),
        ("no-permission", {}, {"moisture": "50 %", "air_ratio": "1.2"}),
        ("wet-wood", {"moisture": "35 %"}, {}),
        ("near-boiling", {"stove_outlet": "198 °F"}, {}),
        ("power-cut", {}, {"stove_outlet": "138 °F"}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("return-mixing", **holds)
    assert code not in codes("return-mixing", **spared)
