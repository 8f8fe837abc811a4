"""What must always hold for mixing."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.law import OutOfRange
from calc.physics import mixing

patient = settings(deadline=None)

colds = st.floats(275, 310)
rises = st.floats(0.5, 90)
shares = st.floats(0, 1)


@patient
@given(colds, rises, shares)
def test_the_share_mixes_to_what_was_wanted(cold: float, hot_rise: float, part: float) -> None:
    hot, wanted = cold + hot_rise, cold + part * hot_rise
    share = mixing.hot_share(mixing.rise_over_cold(wanted, cold), mixing.rise_over_cold(hot, cold))
    assert 0 <= share <= 1
    assert mixing.mixed_temperature(share, hot, cold) == pytest.approx(wanted)
    assert share + mixing.cold_share(share) == pytest.approx(1)


@patient
@given(colds, rises, st.floats(0, 50))
def test_a_valve_never_delivers_more_than_the_hot_water(cold: float, hot_rise: float, more: float) -> None:
    share = mixing.hot_share(hot_rise + more, hot_rise)
    assert share == pytest.approx(1)
    assert mixing.mixed_temperature(share, cold + hot_rise, cold) == pytest.approx(cold + hot_rise)


@patient
@given(shares, st.floats(920, 999), st.floats(0, 60))
def test_hot_water_takes_more_of_the_volume_than_of_the_mass(share: float, hot: float, denser: float) -> None:
    assert mixing.hot_share_by_volume(share, hot, hot + denser) >= share - 1e-12


@patient
@given(shares, st.floats(940, 999), st.floats(940, 999), st.floats(940, 999))
def test_the_parts_carry_the_mass_of_the_whole(share: float, hot: float, cold: float, mixed: float) -> None:
    flow = 1e-3
    parts = mixing.part_flow(flow, mixed, share, hot) * hot + mixing.part_flow(flow, mixed, 1 - share, cold) * cold
    assert parts == pytest.approx(flow * mixed)


@pytest.mark.parametrize(("wanted", "hot"), [(-1.0, 50.0), (10.0, 0.0), (10.0, -5.0)])
def test_cold_water_too_warm_to_mix_down_is_refused(wanted: float, hot: float) -> None:
    with pytest.raises(OutOfRange):
        mixing.hot_share(wanted, hot)
