"""The house and the cold of a year: round trips, balances, limits, refusals."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.answer import Typed, answer
from calc.law import OutOfRange
from calc.physics import house, water
from calc.tables.houses import HOUSE_CLASSES
from calc.units import DAY

CONDUCTANCE = st.floats(20, 3000)
INDOOR = st.floats(285, 300)
OUTDOOR = st.floats(225, 284)
DEGREE_DAYS = st.floats(100, 12000)


@given(CONDUCTANCE, DEGREE_DAYS)
def test_the_fuel_of_a_year_gives_the_conductance_back(conductance: float, degree_days: float) -> None:
    heat = house.yearly_heat(conductance, degree_days)
    assert house.conductance_from_fuel(heat, degree_days) == pytest.approx(conductance)


@given(CONDUCTANCE, INDOOR, OUTDOOR)
def test_the_load_of_the_coldest_day_gives_the_conductance_back(
    conductance: float, indoor: float, outdoor: float
) -> None:
    load = house.design_load(conductance, indoor, outdoor)
    assert house.conductance_from_load(load, indoor, outdoor) == pytest.approx(conductance)
    assert house.load_at(conductance, indoor, outdoor) == load
    assert house.load_at(conductance, outdoor, indoor) == 0


@given(st.floats(0, 1e11), st.floats(0, 0.95), st.floats(0, 1e11))
def test_tap_water_takes_from_the_bill_and_other_heat_adds_to_it(heat: float, taps: float, other: float) -> None:
    rooms = house.space_heat(heat, taps, other)
    assert rooms + taps * heat == pytest.approx(heat + other, abs=1e-3)


@given(st.floats(50, 3000), st.floats(0, 5), st.floats(-500, 3000), INDOOR)
def test_thin_air_takes_less(volume: float, changes: float, altitude: float, indoor: float) -> None:
    low, high = water.barometer(altitude), water.barometer(altitude + 1000)
    here = house.air_change_conductance(volume, changes / 3600, low, indoor)
    above = house.air_change_conductance(volume, changes / 3600, high, indoor)
    assert above == pytest.approx(here * high / low)


@given(st.floats(260, 300), st.floats(275, 295), st.floats(0.5, 8), st.floats(1, 31))
def test_degree_days_are_at_least_the_plain_difference(mean: float, base: float, spread: float, days: float) -> None:
    degree_days = house.month_degree_days(mean, base, spread, days)
    assert degree_days >= max(base - mean, 0) * days - 1e-9
    assert (
        degree_days <= max(base - mean, 0) * days + 0.4 * spread * days
    )  # the most is spread / sqrt(2·pi), at the base


@given(st.floats(260, 300), st.floats(275, 295), st.floats(0.5, 8))
def test_cold_days_are_how_fast_degree_days_grow_with_the_base(mean: float, base: float, spread: float) -> None:
    step = 1e-3
    grown = house.month_degree_days(mean, base + step, spread, 30) - house.month_degree_days(
        mean, base - step, spread, 30
    )
    assert grown / (2 * step) == pytest.approx(house.month_heating_days(mean, base, spread, 30), abs=1e-3)


def test_far_from_the_base_a_month_is_all_cold_or_all_warm() -> None:
    assert house.month_degree_days(260.0, 291.0, 5.0, 31) == pytest.approx(31 * 31, rel=1e-6)
    assert house.month_heating_days(260.0, 291.0, 5.0, 31) == pytest.approx(31)
    assert house.month_degree_days(330.0, 291.0, 5.0, 31) == pytest.approx(0, abs=1e-9)


def test_hourly_temperatures_become_degree_days_of_daily_means() -> None:
    # A day at 0 °C, a day half at 10 and half at 30 (mean 20), a day at 15, and three hours that make no day.
    hourly = [0.0] * 24 + [10.0] * 12 + [30.0] * 12 + [15.0] * 24 + [-40.0] * 3
    means = house.daily_means(hourly)
    assert means == [0.0, 20.0, 15.0]
    assert house.degree_days_below(18.0, means) == 21.0
    assert house.heating_days_below(18.0, means) == 2
    assert house.heating_days_below(15.0, means) == 1


@given(st.lists(st.floats(-40, 40), min_size=30, max_size=60), st.floats(5, 20))
def test_degree_days_never_fall_with_a_higher_base(means: list[float], base: float) -> None:
    more = house.degree_days_below(base + 1, means)
    assert house.degree_days_below(base, means) <= more <= house.degree_days_below(base, means) + len(means) + 1e-9


@given(CONDUCTANCE, DEGREE_DAYS, st.floats(30, 365))
def test_mean_load_over_the_season_is_the_year_again(conductance: float, degree_days: float, days: float) -> None:
    heat = house.yearly_heat(conductance, degree_days)
    assert house.average_load(heat, days * DAY) * days * DAY == pytest.approx(heat)


def test_no_degree_days_are_refused() -> None:
    with pytest.raises(OutOfRange):
        house.conductance_from_fuel(1e11, 0.0)
    with pytest.raises(OutOfRange):
        house.surface_conductance(10.0, 0.0)


def test_every_kind_of_house_lies_inside_its_own_band() -> None:
    for kind in HOUSE_CLASSES.values():
        assert kind.low < kind.typical < kind.high


def test_how_wet_the_wood_is_says_nothing_of_how_its_heater_is_rated() -> None:
    """Moisture is asked on many pages; typed on one of them it must not change a house's loss from its cords."""
    cords = {"method": Typed("fuel"), "fuel": Typed("wood"), "amount": Typed("9 cord")}
    dry, wet = (answer("house-load", cords | {"moisture": Typed(share)}) for share in ("15 %", "25 %"))
    assert dry.values["efficiency_basis_now"] == "higher"
    assert dry.values["design_load"] == wet.values["design_load"] == answer("house-load", cords).values["design_load"]
    lower = [
        answer("house-load", cords | {"efficiency_basis": Typed("lower"), "moisture": Typed(share)})
        for share in ("15 %", "25 %")
    ]
    assert lower[0].values["design_load"] > lower[1].values["design_load"]
