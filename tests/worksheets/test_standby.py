"""Worked by hand: the example of the standby worksheet, and what it says when."""

import pytest

from calc.answer import Typed, answer
from calc.engine.sheet import Sheet
from calc.units import BTU, DAY, FAHRENHEIT_DEGREE, FOOT, HOUR

OPEN = {
    "store_kind": "open",
    "store_volume": "500 gal",
    "store_inside": "yes",
    "store_surroundings": "60 °F",
    "system_pressure": "0 psi",
}


RIDGE_ROAD = dict(answer("standby", {}).worksheet.examples[1].given)


def sheet_of(**typed: str) -> Sheet:
    return answer("standby", {field: Typed(text) for field, text in typed.items()})


def codes(**typed: str) -> set[str]:
    return {advice.code for advice in sheet_of(**typed).advice}


def kelvin(fahrenheit: float) -> float:
    return (fahrenheit + 459.67) / 1.8


def test_mill_row_by_hand() -> None:
    # Ridge Road's tank and blanket, 12.07 Btu/(h·°F) as below, in a cellar: × (180 - 60) = 1,448 Btu/h.
    # After 24 h: 60 + 120 × e^(-24/543.5) = 174.8 °F; all of what it lost warms the house.
    values = sheet_of().values
    assert values["standby_loss"] == pytest.approx(1448 * BTU / HOUR, rel=0.001)
    assert values["temperature_after"] == pytest.approx(kelvin(174.8), abs=0.05)
    assert values["heat_wasted"] == 0


def test_ridge_road_by_hand() -> None:
    # 800 gal = 106.94 ft³, 1.5 times as high as wide: width (4 × 106.94 ÷ (3.1416 × 1.5))^(1/3) = 4.494 ft, 6.741 high.
    # Conductivity 0.25 ÷ 12 = 0.02083 Btu/(h·ft·°F); film 8.5 W/(m²·K) = 1.497 Btu/(h·ft²·°F).
    # Side: 3.1416 × 6.741 ÷ (ln(5.161 ÷ 4.494) ÷ (2 × 0.02083) + 1 ÷ (1.497 × 5.161)) = 21.18 ÷ 3.449 = 6.14.
    # Ends: 2 × 15.86 ft² ÷ (4 ÷ 0.25 + 1 ÷ 1.497) = 31.72 ÷ 16.67 = 1.90. Together × 1.5 = 12.07 Btu/(h·°F).
    # × (185 - 40) = 1,750 Btu/h. Held for each degree: 800 × 8.2 = 6,560 Btu; time constant 543.5 h = 22.65 days.
    # After 24 h: 40 + 145 × e^(-24/543.5) = 178.74 °F; lost 6,560 × 6.26 = 41,100 Btu, all of it outside the house.
    values = sheet_of(**RIDGE_ROAD).values
    assert values["tank_width"] == pytest.approx(4.494 * FOOT, rel=0.0005)
    assert values["tank_high"] == pytest.approx(6.741 * FOOT, rel=0.0005)
    assert values["conductance"] == pytest.approx(12.07 * BTU / HOUR / FAHRENHEIT_DEGREE, rel=0.001)
    assert values["standby_loss"] == pytest.approx(1750 * BTU / HOUR, rel=0.001)
    assert values["time_constant"] == pytest.approx(22.65 * DAY, rel=0.005)
    assert values["temperature_after"] == pytest.approx(kelvin(178.74), abs=0.03)
    assert values["heat_lost"] == pytest.approx(41_100 * BTU, rel=0.005)
    assert values["heat_wasted"] == values["heat_lost"]


def test_inside_the_heated_space_nothing_is_wasted() -> None:
    sheet = sheet_of(store_inside="yes")
    assert sheet.values["heat_wasted"] == 0
    assert {"part-of-load"} <= {advice.code for advice in sheet.advice}
    assert "outside" not in {advice.code for advice in sheet.advice}
    assert "outside" in codes(store_inside="no")


def test_an_open_store_also_loses_vapor_by_hand() -> None:
    # Vapor pressure at 180 °F 51.84 kPa, air 0.5 kPa; 0.5 ft² = 0.04645 m²:
    # 0.04645 × 51,340 × (0.089 + 0.0782 × 0.1) = 230.9 W = 788 Btu/h.
    values = sheet_of(**OPEN).values
    assert values["evaporation"] == pytest.approx(788 * BTU / HOUR, rel=0.002)
    assert values["standby_loss"] == pytest.approx(values["shell_loss"] + values["evaporation"])  # type: ignore[operator]
    assert "evaporation" not in sheet_of(store_kind="closed").values


def test_a_lid_that_leaks_is_said() -> None:
    assert "vapor" in codes(**OPEN)
    assert "vapor" not in codes(**OPEN, open_water="0.05 ft2")
    assert "vapor" not in codes()


def test_a_liner_has_its_own_limit() -> None:
    lined = OPEN | {"store_kind": "lined"}
    assert "liner" in codes(**lined)  # 180 °F in a liner for 170
    assert "liner" not in codes(**lined, store_top="165 °F")
    assert "liner" not in codes(**OPEN)


def test_boiling_and_its_margin_are_said() -> None:
    # Open at 3,000 ft water boils at 206.5 °F.
    assert "boiling" in codes(**OPEN, altitude="3,000 ft", store_top="207 °F")
    assert "boiling-margin" in codes(**OPEN, altitude="3,000 ft", store_top="195 °F")
    assert not {"boiling", "boiling-margin"} & codes()


def test_an_open_store_under_pressure_is_doubted() -> None:
    assert "pressure-on-open" in codes(**(OPEN | {"system_pressure": "12 psi"}))
    assert "pressure-on-open" not in codes(**OPEN)


def test_frost_and_bare_tanks_are_said() -> None:
    assert "freezes" in codes(store_surroundings="20 °F", store_inside="no")
    assert "freezes" not in codes()
    assert "bare" in codes(insulation="0 in")
    assert "bare" not in codes()
    assert "pipes" in codes(fittings="1", store_inside="no")


def test_a_tank_cooler_than_its_room_is_an_error() -> None:
    sheet = sheet_of(store_top="75 °F", store_surroundings="80 °F")
    assert [problem.key for problem in sheet.problems] == ["store_surroundings"]


def test_more_insulation_always_helps_and_longer_waiting_always_cools() -> None:
    losses = [sheet_of(insulation=f"{inches} in").values["standby_loss"] for inches in (0, 1, 2, 4, 8, 16)]
    assert losses == sorted(losses, reverse=True)  # type: ignore[type-var]
    temperatures = [sheet_of(waiting=f"{hours} h").values["temperature_after"] for hours in (1, 10, 100, 1000)]
    assert temperatures == sorted(temperatures, reverse=True)  # type: ignore[type-var]
