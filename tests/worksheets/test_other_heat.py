"""Worked by hand: the examples of the other-heat worksheet, its closures, and where its advice begins."""

import pytest

from calc.answer import Typed, answer
from calc.engine.sheet import Sheet
from calc.physics import winter_weather
from calc.tables.places import PLACES
from calc.tables.sun import SUN
from calc.tables.year import MONTH_DAYS, MONTHS
from calc.units import BTU, FAHRENHEIT_DEGREE, HOUR
from tests.worksheets.asking import kelvin

EXAMPLES = {
    entry.name.split(":")[0]: dict(entry.given) for entry in reversed(answer("other-heat", {}).worksheet.examples)
}
PANELS = dict(answer("other-heat", {}).worksheet.examples[0].given)
HEAT_PUMP, ELEMENT = EXAMPLES["Mill Row"], EXAMPLES["Ridge Road"]


def _sheet(example: dict[str, str], **given: str) -> Sheet:
    sheet = answer("other-heat", {key: Typed(text) for key, text in (example | given).items()})
    assert not sheet.problems, sheet.problems
    return sheet


def _values(example: dict[str, str], **given: str) -> dict[str, float]:
    return {key: entry for key, entry in _sheet(example, **given).values.items() if isinstance(entry, float | int)}


def _codes(example: dict[str, str], **given: str) -> set[str]:
    return {said.code for said in _sheet(example, **given).advice}


def test_the_table_of_the_sun_has_every_place_and_the_degree_days_of_its_year() -> None:
    assert SUN.keys() == PLACES.keys()
    for key, months in SUN.items():
        assert {len(column) for column in months[:4]} == {12}
        assert sum(months.degree_days) == pytest.approx(PLACES[key].degree_days[65], abs=6)  # twelve roundings
        assert sum(months.radiation) < months.whole_year
        for at, days in enumerate(MONTH_DAYS):
            # The strong hours have more than 250 W/m² each, less than the sun gives, and there are no more than it is up.
            assert 0.25 * months.hours[at] <= months.radiation[at] + 0.5 <= 1.1 * months.hours[at] + 1, (key, at)
            assert months.hours[at] <= days * 16


@pytest.mark.parametrize("place", SUN)
def test_the_degree_days_of_the_months_are_those_of_the_hours(place: str) -> None:
    hours, first = winter_weather.hours_of(place), 0
    for at, days in enumerate(MONTH_DAYS):
        month = winter_weather.degree_days(hours[first : first + 24 * days], kelvin(65)) / FAHRENHEIT_DEGREE
        assert SUN[place].degree_days[at] == pytest.approx(month, abs=0.6), MONTHS[at]  # rounded, of tenths
        first += 24 * days


def test_panels_by_hand() -> None:
    # January in Burlington: 1,426 of 7,300 °F·day, 96 h of strong sun with 54 kWh/m² at −8 °C.
    # 13,300 Btu/h ÷ 73 °F × 7,800 × 24 = 34.11 MMBtu a year; × the month's share, + 1,500 Btu/h × 744 h = 1.116 MMBtu.
    # Panels at 130 + 10 = 140 °F = 60 °C: 68 K over the air: 3.4 × 68 + 0.016 × 4,624 = 305.2 W/m².
    # 11.148 m² × 0.9 × (0.74 × radiation − 0.3052 kW × hours).
    months = SUN["burlington-vt"]
    year = 13_300 / 73 * 7_800 * 24
    need = year * months.degree_days[0] / sum(months.degree_days) + 1_500 * 744
    excess = 60 - months.air[0]
    loss = 3.4 * excess + 0.016 * excess**2
    heat = 11.148 * 0.9 * (0.74 * months.radiation[0] - loss / 1000 * months.hours[0])  # kWh
    result = _values(PANELS)
    assert result["need_jan"] == pytest.approx(need * BTU, rel=0.001)
    assert result["most_jan"] == pytest.approx(heat * 3.6e6, rel=0.005)
    assert result["share_jan"] == pytest.approx(heat * 3412.14 / need, rel=0.005)
    assert result["yearly_electricity"] == pytest.approx(40 * sum(months.hours) * HOUR)


def test_a_month_in_which_panels_would_lose_heat_counts_nothing() -> None:
    result = _values(PANELS, lowest_useful="165 °F", place="hof-de")
    assert result["most_dec"] == 0
    assert result["share_dec"] == 0
    assert result["most_jul"] > 0


def test_a_surplus_does_not_move_to_another_month() -> None:
    result = _values(PANELS, panel_area="600 ft2")
    assert result["share_jul"] == 1
    assert result["share_dec"] < 0.3
    assert result["left_jul"] == pytest.approx(result["most_jul"] - result["need_jul"])
    # December has what its own sun gives, whatever July left over.
    assert result["used_dec"] == pytest.approx(5 * _values(PANELS)["used_dec"])
    assert result["heat_given"] == pytest.approx(sum(result[f"used_{month}"] for month in MONTHS))
    assert result["left_year"] == pytest.approx(sum(result[f"left_{month}"] for month in MONTHS))


def test_a_heat_pump_by_hand() -> None:
    # 800 gal from 130 to 140 °F: 3,028 L × 4.11 MJ/(m³·K) × 5.556 K = 69.2 MJ; ÷ 24,000 Btu/h (7,034 W) = 2.73 h.
    # January: 24,000 Btu/h × 744 h = 17.86 MMBtu, more than the need. Electricity: heat ÷ 2.2.
    # The coldest day: 24,000 ÷ (30,500 + 2,000) = 73.8 %.
    result = _values(HEAT_PUMP)
    assert result["reached"] == pytest.approx((140 + 459.67) / 1.8)
    assert result["recharge_hours"] == pytest.approx(2.73 * HOUR, rel=0.01)
    assert result["most_jan"] == pytest.approx(24_000 * 744 * BTU)
    assert result["yearly_electricity"] == pytest.approx(result["heat_given"] / 2.2)
    assert result["coldest_share"] == pytest.approx(24_000 / 32_500)
    # 2.2 × (333.15 − 272.04) ÷ 333.15
    assert result["carnot_share"] == pytest.approx(2.2 * 61.11 / 333.15, rel=0.001)


def test_a_heat_pump_below_the_useful_band_does_nothing() -> None:
    sheet = _sheet(HEAT_PUMP, highest_water="130 °F")
    assert {advice.code: advice.level for advice in sheet.advice}["too-cool"] == "unworkable"
    assert sheet.values["share_year"] == 0
    assert sheet.values["share_jan"] == 0
    assert sheet.values["yearly_electricity"] == 0
    assert sheet.values["recharge_hours"] is None


def test_an_element_by_hand() -> None:
    # 800 gal from 130 to 185 °F: 3,028 L × 4.09 MJ/(m³·K) × 30.56 K = 378 MJ; ÷ 9 kW = 11.7 h, with no load.
    result = _values(ELEMENT)
    assert result["load"] == 0
    assert result["recharge_hours"] == pytest.approx(11.7 * HOUR, rel=0.01)
    assert result["yearly_electricity"] == result["heat_given"]
    # With 10,000 Btu/h (2.93 kW) drawn meanwhile: 11.7 × 9 ÷ 6.07.
    drawn = _values(ELEMENT, load="10,000 Btu/h")
    assert drawn["recharge_hours"] == pytest.approx(result["recharge_hours"] * 9 / (9 - 2.9307), rel=1e-4)
    # Eight hours a night give a third.
    night = _values(ELEMENT, hours_a_day="8 h")
    assert night["most_jan"] == pytest.approx(result["most_jan"] / 3)


def test_the_year_of_a_roof_scales_its_place() -> None:
    months = SUN["burlington-vt"]
    same = _values(PANELS, sun_known="year", radiation_year=f"{months.whole_year} kWh/m2")
    half = _values(PANELS, sun_known="year", radiation_year=f"{months.whole_year / 2} kWh/m2")
    assert same["share_year"] == pytest.approx(_values(PANELS)["share_year"])
    assert half["strong_jun"] == pytest.approx(same["strong_jun"] / 2)


def test_months_that_are_typed_count_by_the_strong_share() -> None:
    months = SUN["burlington-vt"]
    typed = {f"radiation_{month}": "100 kWh/m2" for month in MONTHS}
    result = _values(PANELS, sun_known="months", **typed)
    share = round(sum(months.radiation) / months.whole_year, 2)
    assert result["strong_jan"] == pytest.approx(share * 100 * 3.6e6)


def test_a_month_without_a_need_has_no_share() -> None:
    sheet = _sheet(PANELS, place="piedmont-it", tap_load="0 Btu/h")
    shown = {result.key: result.shown for result in sheet.results}
    assert shown["share_jul"] == "nothing is needed"


@pytest.mark.parametrize(
    ("example", "given", "code"),
    [
        (PANELS, {"panel_area": "250 ft2"}, "left-over"),
        (PANELS, {}, "no-winter"),
        (PANELS, {}, "panel-side"),
        (HEAT_PUMP, {}, "part-charge"),
        (HEAT_PUMP, {"seasonal_cop": "3.1"}, "cop-too-good"),
        (HEAT_PUMP, {}, "not-the-coldest-day"),
        (HEAT_PUMP, {"load": "24,000 Btu/h"}, "draws-too-much"),
        (ELEMENT, {"lowest_useful": "185 °F"}, "no-band"),
        (ELEMENT, {"element_power": "9.5 kW"}, "not-the-coldest-day"),
        (ELEMENT, {}, "element-safety"),
    ],
)
def test_the_advice_begins_where_it_should(example: dict[str, str], given: dict[str, str], code: str) -> None:
    assert code in _codes(example, **given)


@pytest.mark.parametrize(
    ("example", "given", "code"),
    [
        (PANELS, {"panel_area": "60 ft2"}, "left-over"),
        (PANELS, {"panel_area": "600 ft2", "lowest_useful": "90 °F"}, "no-winter"),
        (HEAT_PUMP, {"highest_water": "180 °F"}, "part-charge"),
        (HEAT_PUMP, {"seasonal_cop": "2.9"}, "cop-too-good"),
        (HEAT_PUMP, {"heat_pump_output": "32,500 Btu/h"}, "not-the-coldest-day"),
        (HEAT_PUMP, {"load": "23,900 Btu/h"}, "draws-too-much"),
        (ELEMENT, {"element_power": "9.6 kW"}, "not-the-coldest-day"),
        (ELEMENT, {}, "panel-side"),
    ],
)
def test_the_advice_is_silent_where_it_should(example: dict[str, str], given: dict[str, str], code: str) -> None:
    assert code not in _codes(example, **given)
