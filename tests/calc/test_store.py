"""The store: balances that close, limits, round trips, and what it refuses."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.law import NoSolution, OutOfRange
from calc.physics import store, water

LIQUID = st.floats(274, 420)
VOLUME = st.floats(0.02, 70)
POWER = st.floats(10, 5e5)
CONTENT = st.floats(3.9e6, 4.25e6)
TIME = st.floats(60, 1e6)
CAPACITY = st.floats(1e5, 3e8)
CONDUCTANCE = st.floats(0.1, 100)


@given(VOLUME, CONTENT, LIQUID, LIQUID, LIQUID)
def test_usable_heat_adds_up_over_temperature(volume: float, content: float, a: float, b: float, c: float) -> None:
    low, middle, top = sorted((a, b, c))
    parts = store.usable_heat(volume, content, middle, low) + store.usable_heat(volume, content, top, middle)
    assert parts == pytest.approx(store.usable_heat(volume, content, top, low), rel=1e-9, abs=1.0)


@given(VOLUME, CONTENT, LIQUID, st.floats(0, 100))
def test_a_store_no_hotter_than_useful_holds_exactly_nothing(
    volume: float, content: float, low: float, short: float
) -> None:
    assert store.usable_heat(volume, content, low - short, low) == 0


@given(VOLUME, LIQUID, st.floats(1, 80))
def test_volume_for_heat_undoes_usable_heat(volume: float, low: float, span: float) -> None:
    top = min(low + span, 423.0)
    assume(top > low + 0.5)
    content = water.mean_volume_heat_content(low, top)
    heat = store.usable_heat(volume, content, top, low)
    assert store.volume_for_heat(heat, content, top, low) == pytest.approx(volume, rel=1e-12)


@pytest.mark.parametrize("top", [330.0, 320.0])
def test_no_volume_holds_heat_without_a_rise(top: float) -> None:
    with pytest.raises(NoSolution):
        store.volume_for_heat(1e8, 4.1e6, top, 330.0)


@given(VOLUME, LIQUID, st.floats(1, 40), st.floats(1, 30))
def test_a_layered_store_gives_more_than_a_mixed_one(volume: float, low: float, span: float, drop: float) -> None:
    assume(low - drop > 273.2 and low + span < 423)
    back, top = store.return_temperature(low, drop, 273.2), low + span
    mixed = store.usable_heat(volume, water.mean_volume_heat_content(low, top), top, low)
    layered = store.usable_heat(volume, water.mean_volume_heat_content(back, top), top, back)
    assert layered > mixed


@given(st.floats(280, 380), st.floats(0, 60), st.floats(285, 300))
def test_nothing_comes_back_colder_than_the_room_nor_hotter_than_it_went(
    low: float, drop: float, indoor: float
) -> None:
    back = store.return_temperature(low, drop, indoor)
    assert min(indoor, low) <= back <= low
    if low - drop >= indoor:
        assert back == low - drop


def test_a_layered_baseboard_store_lasts_about_1_6_times_longer() -> None:
    # 300 gal at 180 °F, baseboard 145/125 °F: (180 - 125) / (180 - 145) = 55/35.
    low, back, top = (145 + 459.67) / 1.8, (125 + 459.67) / 1.8, (180 + 459.67) / 1.8
    heats = [store.usable_heat(1.1356, water.mean_volume_heat_content(end, top), top, end) for end in (low, back)]
    assert heats[1] / heats[0] == pytest.approx(55 / 35, rel=0.01)


@given(st.floats(1e3, 1e10), POWER, st.floats(0, 1e4))
def test_hours_carried_use_up_the_heat(heat: float, load: float, lost: float) -> None:
    assert store.hours_carried(heat, load, lost) * (load + lost) == pytest.approx(heat)
    assert store.heat_for_hours(load, lost, store.hours_carried(heat, load, lost)) == pytest.approx(heat)


def test_hours_without_a_load_are_refused() -> None:
    with pytest.raises(OutOfRange):
        store.hours_carried(1e8, 0.0, 0.0)


@given(st.floats(100, 5e5))
def test_the_eu_formula_never_falls_below_300_liters_and_crosses_there_at_9_4_kw(rated: float) -> None:
    volume = store.volume_by_eu_formula(rated)
    assert volume >= 0.3
    assert (volume > 0.3) == (rated > 2700 + 0.3 / 45e-6)


@given(st.floats(0.01, 1), st.floats(1e3, 1e5))
def test_german_law_is_never_less_than_either_of_its_rules(firebox: float, rated: float) -> None:
    parts = store.volume_by_firebox(firebox), store.volume_by_rating(rated)
    assert store.volume_by_german_law(*parts) in parts
    assert store.volume_by_german_law(*parts) >= max(parts)


@given(st.floats(1e5, 1e10), POWER, POWER)
def test_charging_without_loss_closes(heat: float, output: float, load: float) -> None:
    if output <= load:
        with pytest.raises(NoSolution):
            store.time_to_charge(heat, output, load)
    else:
        assert store.time_to_charge(heat, output, load) * (output - load) == pytest.approx(heat)


@given(st.floats(280, 370), POWER, POWER, TIME, CAPACITY)
def test_a_store_warms_by_the_heat_it_was_given(
    start: float, output: float, load: float, elapsed: float, capacity: float
) -> None:
    finish = store.temperature_charged(start, output, load, elapsed, capacity)
    kept = store.heat_lost(capacity, finish, start)
    assert kept == pytest.approx((output - load) * elapsed, rel=1e-6, abs=1e-3 * capacity * 1e-6)


@given(st.floats(280, 370), st.floats(250, 310), POWER, POWER, CONDUCTANCE, CAPACITY)
def test_with_hardly_any_time_loss_does_not_matter(
    start: float, around: float, output: float, load: float, conductance: float, capacity: float
) -> None:
    steady = store.steady_temperature(around, output, load, conductance)
    constant = store.time_constant(capacity, conductance)
    elapsed = 1e-4 * constant
    slope = (output - load - conductance * (start - around)) / capacity
    rise = store.temperature_after(start, steady, elapsed, constant) - start
    assert rise == pytest.approx(slope * elapsed, rel=1e-3, abs=1e-9)


@given(st.floats(250, 420), st.floats(250, 420), st.floats(0.01, 5), st.floats(1e4, 1e7))
def test_time_to_reach_undoes_temperature_after(start: float, heading: float, turns: float, constant: float) -> None:
    assume(abs(start - heading) > 1)
    target = store.temperature_after(start, heading, turns * constant, constant)
    assert store.time_to_reach(start, target, heading, constant) == pytest.approx(turns * constant, rel=1e-6)


@pytest.mark.parametrize(
    ("start", "target", "heading"),
    [(320.0, 350.0, 340.0), (320.0, 340.0, 340.0), (320.0, 310.0, 340.0), (340.0, 330.0, 335.0), (340.0, 350.0, 330.0)],
)
def test_never_is_said_when_the_target_is_not_on_the_way(start: float, target: float, heading: float) -> None:
    with pytest.raises(NoSolution):
        store.time_to_reach(start, target, heading, 1e5)


@given(st.floats(250, 420), st.floats(250, 420), TIME, st.floats(1e4, 1e7))
def test_a_tank_left_alone_stays_between_itself_and_its_surroundings(
    start: float, around: float, elapsed: float, constant: float
) -> None:
    after = store.temperature_after(start, around, elapsed, constant)
    assert min(start, around) - 1e-9 <= after <= max(start, around) + 1e-9


@given(st.integers(1, 100), st.floats(0, 7))
def test_what_stays_and_what_came_out_of_a_layered_tank_is_all_there_was(layers: int, drawn: float) -> None:
    # Mean of what is left in the layers: (1/N) · sum of the arrivals below i, for i = 1 to N.
    left = sum(store._arrivals_below(number, layers * drawn) for number in range(1, layers + 1)) / layers
    assert left + store.delivered_share(layers, drawn) == pytest.approx(1, abs=1e-9)


@given(st.floats(0, 5))
def test_one_layer_is_a_stirred_tank(drawn: float) -> None:
    stirred = store.temperature_drawn_mixed(1.0, 0.0, drawn, 1.0)
    assert store.outlet_share(1, drawn) == pytest.approx(stirred, rel=1e-12)
    assert store.delivered_share(1, drawn) == pytest.approx(1 - stirred, abs=1e-12)


@given(st.integers(1, 99), st.floats(0.05, 0.95))
def test_more_layers_deliver_more_of_what_was_drawn(layers: int, drawn: float) -> None:
    more, fewer = store.delivered_share(layers + 1, drawn), store.delivered_share(layers, drawn)
    assert fewer - 1e-9 <= more <= drawn + 1e-9


@given(st.floats(0.3, 3), st.floats(0.3, 4), st.floats(0.001, 0.5), st.floats(0.02, 0.1), st.floats(5, 12))
def test_insulation_only_helps_and_a_flat_wall_is_the_limit(
    diameter: float, height: float, insulation: float, conductivity: float, film: float
) -> None:
    here = store.side_conductance(diameter, height, insulation, conductivity, film)
    assert here < store.side_conductance(diameter, height, insulation / 2, conductivity, film)
    flat = 3.141592653589793 * diameter * height / (insulation / conductivity + 1 / film)
    assert here > flat
    huge = store.side_conductance(20.0, height, 0.001, conductivity, film)
    assert huge == pytest.approx(3.141592653589793 * 20 * height / (0.001 / conductivity + 1 / film), rel=1e-3)


@given(VOLUME, st.floats(0.3, 4))
def test_height_and_width_hold_the_volume(volume: float, slenderness: float) -> None:
    diameter = store.cylinder_diameter(volume, slenderness)
    height = store.cylinder_height(volume, diameter)
    assert height == pytest.approx(slenderness * diameter)
    assert store.cylinder_volume(diameter, height) == pytest.approx(volume)
    assert store.tilted_height(height, diameter) > max(height, diameter)


@given(st.floats(280, 370), st.floats(280, 310), st.floats(0, 1))
def test_an_open_tank_stops_losing_vapor_when_the_air_is_as_wet_as_the_water(
    temperature: float, air: float, humidity: float
) -> None:
    wet = water.vapour_pressure(temperature)
    assert store.evaporation_loss(1.0, wet, wet, 0.2) == 0
    dry = store.air_vapour(humidity, water.vapour_pressure(air))
    if temperature > air:
        assert store.evaporation_loss(1.0, wet, dry, 0.2) > store.evaporation_loss(1.0, wet, dry, 0.1) > 0
