"""What must always hold for baseboards and radiators."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.law import NoSolution, OutOfRange
from calc.physics import emitters

patient = settings(deadline=None)

ratings = st.floats(500, 50_000)
excesses = st.floats(1, 90)
exponents = st.floats(1, 1.7)
rooms = st.floats(280, 300)
drops = st.floats(0.5, 30)


@patient
@given(ratings, excesses, st.floats(20, 90), exponents)
def test_output_and_needed_excess_are_each_other_turned_round(
    rating: float, excess: float, rated: float, exponent: float
) -> None:
    load = emitters.output(rating, excess, rated, exponent)
    assert emitters.needed_excess(load, rating, rated, exponent) == pytest.approx(excess, rel=1e-9)


@patient
@given(ratings, st.floats(20, 90), exponents)
def test_the_rating_comes_back_at_rated_excess(rating: float, rated: float, exponent: float) -> None:
    assert emitters.output(rating, rated, rated, exponent) == pytest.approx(rating)


@patient
@given(ratings, excesses, excesses, exponents)
def test_warmer_water_gives_more_and_more_than_in_proportion(
    rating: float, first: float, other: float, exponent: float
) -> None:
    cool, warm = sorted((first, other))
    less, more = (emitters.output(rating, excess, 50, exponent) for excess in (cool, warm))
    assert less <= more
    assert more / less >= warm / cool * (1 - 1e-9)


@patient
@given(ratings, st.floats(0.02, 1), st.floats(1, 4), exponents)
def test_more_emitter_runs_on_cooler_water(rating: float, part: float, more: float, exponent: float) -> None:
    load = part * rating
    small = emitters.needed_excess(load, rating, 50, exponent)
    large = emitters.needed_excess(load, rating * more, 50, exponent)
    assert large == pytest.approx(small / more ** (1 / exponent))


@patient
@given(st.floats(0.02, 100), st.floats(0.02, 100))
def test_the_logarithmic_mean_lies_between_the_ends_and_under_the_arithmetic(first: float, other: float) -> None:
    mean = emitters.log_mean_excess(first, other)
    assert min(first, other) * (1 - 1e-12) <= mean <= (first + other) / 2 * (1 + 1e-12)


@patient
@given(st.floats(1, 100))
def test_without_a_drop_both_means_agree(excess: float) -> None:
    assert emitters.log_mean_excess(excess, excess) == excess
    assert emitters.log_mean_excess(excess, excess * (1 + 1e-9)) == pytest.approx(excess)


@patient
@given(rooms, excesses, drops)
def test_the_supply_by_the_logarithmic_mean_gives_that_mean_and_is_never_cooler(
    indoor: float, excess: float, drop: float
) -> None:
    supply = emitters.supply_water_log_mean(indoor, drop, excess)
    assert supply >= emitters.supply_water(emitters.mean_water(indoor, excess), drop) - 1e-9
    back = emitters.return_water(supply, drop)
    if back - indoor > 0.01:
        assert emitters.log_mean_excess(supply - indoor, back - indoor) == pytest.approx(excess, rel=1e-6)


@patient
@given(ratings, st.floats(0.05, 1), st.floats(2, 25), exponents, rooms)
def test_the_supply_for_a_load_gives_that_load(
    rating: float, part: float, drop: float, exponent: float, indoor: float
) -> None:
    load = part * rating
    excess = emitters.needed_excess(load, rating, 50, exponent)
    supply = emitters.supply_water(emitters.mean_water(indoor, excess), drop)
    if emitters.return_water(supply, drop) <= indoor:
        return
    capacity = emitters.flow_capacity(load, drop)
    assert emitters.output_at(supply, capacity, rating, 50, exponent, indoor) == pytest.approx(load, rel=1e-9)


@patient
@given(ratings, st.floats(100, 2000), exponents, rooms, st.floats(1, 70))
def test_both_sides_of_the_balance_close(
    rating: float, capacity: float, exponent: float, indoor: float, above: float
) -> None:
    try:
        heat = emitters.output_at(indoor + above, capacity, rating, 50, exponent, indoor)
    except NoSolution:
        # The emitter would cool its water below the room: only where half the supply's excess asks for more than that.
        assert emitters.output(rating, above / 2, 50, exponent) >= capacity * above * (1 - 1e-9)
        return
    mean = above - emitters.drop(heat, capacity) / 2
    assert emitters.output(rating, mean, 50, exponent) == pytest.approx(heat, rel=1e-9)
    assert above - emitters.drop(heat, capacity) >= -1e-9


@patient
@given(rooms, st.floats(0, 50))
def test_water_no_warmer_than_the_room_gives_nothing(indoor: float, below: float) -> None:
    assert emitters.output_at(indoor - below, 500, 5000, 50, 1.3, indoor) == 0


@patient
@given(st.floats(1000, 50_000), drops, st.floats(0.05, 1))
def test_at_constant_flow_the_drop_falls_with_the_load(load: float, drop: float, part: float) -> None:
    capacity = emitters.flow_capacity(load, drop)
    assert emitters.drop(load * part, capacity) == pytest.approx(drop * part)
    flow = emitters.design_flow(capacity, 4.1e6)
    assert emitters.capacity_of_flow(flow, 4.1e6) == pytest.approx(capacity)


@patient
@given(st.floats(1000, 50_000), st.floats(250, 300))
def test_part_load_is_whole_at_design_and_never_negative(load: float, outdoor: float) -> None:
    assert emitters.part_load(load, 294, 250, 250) == pytest.approx(load)
    assert 0 <= emitters.part_load(load, 294, outdoor, 250) <= load * (1 + 1e-12)


@patient
@given(st.floats(100, 50_000), st.floats(0, 0.3))
def test_the_allowance_only_takes_away(rating: float, allowance: float) -> None:
    tested = emitters.rating_without_allowance(rating, allowance)
    assert tested * (1 + allowance) == pytest.approx(rating)
    assert tested <= rating


def test_a_negative_excess_is_refused() -> None:
    with pytest.raises(OutOfRange, match="excess"):
        emitters.output(1000, -1, 50, 1.3)


def test_a_return_no_warmer_than_the_room_has_no_logarithmic_mean() -> None:
    with pytest.raises(OutOfRange, match="return_excess"):
        emitters.log_mean_excess(20, 0)


def test_an_exponent_beyond_any_emitter_is_refused() -> None:
    with pytest.raises(OutOfRange, match="exponent"):
        emitters.needed_excess(500, 1000, 50, 2.5)


def test_an_emitter_that_would_cool_its_water_below_the_room_is_refused() -> None:
    with pytest.raises(NoSolution):
        emitters.output_at(330, 10, 50_000, 50, 1.3, 293)
