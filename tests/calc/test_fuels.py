"""What must always hold for fuels and their prices."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.law import OutOfRange
from calc.physics import fuels
from calc.sources import SOURCES
from calc.units import BTU, unit_named

patient = settings(deadline=None)

prices = st.floats(1, 1e4)
contents = st.floats(1e6, 1e11)
efficiencies = st.floats(0.2, 5)
heats = st.floats(1e6, 1e12)


@pytest.mark.parametrize("fuel", fuels.FUELS.values(), ids=fuels.FUELS)
def test_every_fuel_is_whole(fuel: fuels.Fuel) -> None:
    assert fuel.bought_by in ("volume", "mass", "energy")
    assert fuel.content_low <= fuel.heat_content <= fuel.content_high
    assert fuel.efficiency_low <= fuel.efficiency <= fuel.efficiency_high
    assert fuel.content_source in SOURCES
    assert fuel.efficiency_source in SOURCES
    for unit in (fuel.us_unit, fuel.si_unit):
        assert unit_named(unit, fuel.bought_by).text == unit
    if fuel.bought_by == "energy":
        assert fuel.heat_content == 1


def test_keys_name_their_own_fuel() -> None:
    assert all(key == fuel.key for key, fuel in fuels.FUELS.items())
    assert {"oil", "propane", "gas", "electricity", "heat-pump", "wood", "pellets"} <= fuels.FUELS.keys()


def test_heat_contents_in_the_units_of_the_trade() -> None:
    oil, cord, pellets = (fuels.FUELS[key].heat_content for key in ("oil", "wood", "pellets"))
    assert unit_named("Btu/gal", "heat_per_volume").from_si(oil) == pytest.approx(138_500)
    assert unit_named("MMBtu/cord", "heat_per_volume").from_si(cord) == pytest.approx(20)
    assert unit_named("MMBtu/ton", "heat_per_mass").from_si(pellets) == pytest.approx(16.4)


@patient
@given(heats, contents, efficiencies)
def test_what_is_needed_delivers_what_was_asked(heat: float, content: float, efficiency: float) -> None:
    volume = fuels.volume_needed(heat, content, efficiency)
    mass = fuels.mass_needed(heat, content, efficiency)
    assert fuels.heat_delivered(fuels.heat_in_volume(volume, content), efficiency) == pytest.approx(heat)
    assert fuels.heat_delivered(fuels.heat_in_mass(mass, content), efficiency) == pytest.approx(heat)
    assert fuels.heat_delivered(fuels.energy_needed(heat, efficiency), efficiency) == pytest.approx(heat)


@patient
@given(heats, prices, contents, efficiencies)
def test_the_bill_is_the_same_by_either_way(heat: float, price: float, content: float, efficiency: float) -> None:
    bill = fuels.volume_needed(heat, content, efficiency) * price
    delivered = fuels.delivered_price_by_volume(price, content, efficiency)
    assert fuels.cost_of_heat(heat, delivered) == pytest.approx(bill)
    by_mass = fuels.delivered_price_by_mass(price, content, efficiency)
    assert fuels.cost_of_heat(heat, by_mass) == pytest.approx(fuels.mass_needed(heat, content, efficiency) * price)
    by_energy = fuels.delivered_price_by_energy(price, efficiency)
    assert fuels.cost_of_heat(heat, by_energy) == pytest.approx(fuels.energy_needed(heat, efficiency) * price)


@patient
@given(st.floats(1e-9, 1e-6), st.floats(0, 1e-6), contents, st.floats(0.2, 1))
def test_at_the_break_even_price_wood_with_its_labour_costs_as_much(
    other: float, labour: float, content: float, efficiency: float
) -> None:
    price = fuels.break_even_price(other, labour, content, efficiency)
    delivered = fuels.delivered_price_by_volume(price, content, efficiency) + labour
    assert delivered == pytest.approx(other, rel=1e-9, abs=1e-9 * labour)
    assert (price < 0) == (labour > other)


@patient
@given(st.floats(0.001, 0.1), st.floats(0, 1e6), heats)
def test_labour_is_hours_times_pay_spread_over_the_heat(pay: float, hours: float, heat: float) -> None:
    assert fuels.cost_of_heat(heat, fuels.labour_price(pay, hours, heat)) == pytest.approx(pay * hours)


def test_a_higher_efficiency_makes_cheaper_heat() -> None:
    worse, better = (fuels.delivered_price_by_energy(1.0, efficiency) for efficiency in (0.8, 0.95))
    assert better < worse


@pytest.mark.parametrize("efficiency", [0.0, -0.5, 7.0])
def test_an_efficiency_without_meaning_is_refused(efficiency: float) -> None:
    with pytest.raises(OutOfRange):
        fuels.heat_delivered(1.0, efficiency)
    with pytest.raises(OutOfRange):
        fuels.delivered_price_by_energy(1.0, efficiency)


@pytest.mark.parametrize("saving", [0.0, -100.0])
def test_what_saves_nothing_is_never_repaid(saving: float) -> None:
    with pytest.raises(ZeroDivisionError):
        fuels.years_to_repay(10_000.0, saving)


def test_a_therm_is_a_hundred_thousand_btu() -> None:
    assert unit_named("therm", "energy").to_si(1) == pytest.approx(1e5 * BTU)
