"""Safety: what must hold for every plant, above all that nothing unsafe is ever made to look safer."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.law import Law, NoSolution, OutOfRange
from calc.physics import pipes, safety, water
from calc.units import PSI

gauges = st.floats(0, 4e5)
barometers = st.floats(60e3, 103e3)
volumes = st.floats(0.05, 10)
powers = st.floats(500, 200e3)


def test_every_law_here_is_marked_as_a_safety_law() -> None:
    laws = [
        name_value
        for name_value in vars(safety).values()
        if isinstance(name_value, Law) and name_value.module == "safety"
    ]
    assert len(laws) > 25
    assert all(law.safety for law in laws)


@given(volume=volumes, cold=st.floats(275, 300), hot=st.floats(310, 400))
def test_a_rigid_system_needs_the_most_room(volume: float, cold: float, hot: float) -> None:
    cold_density, hot_density, rise = water.density(cold), water.density(hot), hot - cold
    rigid = safety.water_expansion(volume, cold_density, hot_density, 0.0, rise)
    assert rigid > 0
    assert safety.water_expansion(volume, cold_density, hot_density, 1.17e-5, rise) < rigid
    assert rigid == pytest.approx(volume * safety.expansion_share(cold_density, hot_density))


@given(setting=st.floats(0.6e5, 10e5))
def test_the_highest_pressure_keeps_clear_of_the_relief_valve(setting: float) -> None:
    highest = safety.highest_pressure(setting)
    assert highest <= 0.9 * setting + 1e-6
    assert highest <= setting - 7 * PSI + 1e-6


@given(
    lowest=gauges, gap=st.floats(1e3, 4e5), barometer=barometers, growth=st.floats(0.001, 1), reserve=st.floats(0, 0.02)
)
def test_boyle_holds_in_the_vessel(lowest: float, gap: float, barometer: float, growth: float, reserve: float) -> None:
    highest = lowest + gap
    vessel = safety.vessel_volume(growth, reserve, safety.acceptance(lowest, highest, barometer))
    air = vessel - growth - reserve
    assert vessel * (lowest + barometer) == pytest.approx(air * (highest + barometer), rel=1e-9)
    assert vessel > growth + reserve


@given(lowest=gauges, gap=st.floats(1e4, 4e5), barometer=barometers, growth=st.floats(0.001, 1))
def test_boyle_holds_in_a_plain_tank_and_it_is_never_smaller_than_one_with_a_membrane(
    lowest: float, gap: float, barometer: float, growth: float
) -> None:
    tank = safety.plain_tank_volume(growth, 0.0, lowest, lowest + gap, barometer)
    cold_air, hot_air = (tank * barometer / (gauge + barometer) for gauge in (lowest, lowest + gap))
    assert cold_air - hot_air == pytest.approx(growth, rel=1e-9)
    assert tank >= safety.vessel_volume(growth, 0.0, safety.acceptance(lowest, lowest + gap, barometer)) * (1 - 1e-12)


@given(lowest=st.floats(0.3e5, 1.5e5), gap=st.floats(0.2e5, 2e5))
def test_thin_air_needs_the_smaller_vessel_and_gauge_pressures_would_be_far_too_small(
    lowest: float, gap: float
) -> None:
    sea, high = (safety.acceptance(lowest, lowest + gap, barometer) for barometer in (101325.0, 75000.0))
    assert high > sea
    assert 1 - lowest / (lowest + gap) > high


def test_no_vessel_is_large_enough_when_the_fill_is_at_the_limit() -> None:
    for highest in (1.5e5, 1.2e5):
        with pytest.raises(ZeroDivisionError):
            safety.vessel_volume(0.05, 0.003, safety.acceptance(1.5e5, highest, 101325.0))


@given(height=st.floats(0, 15), top=st.floats(0, 1e5), pump=st.floats(0, 1e5))
def test_height_top_and_pump_all_raise_the_fill(height: float, top: float, pump: float) -> None:
    here = safety.fill_pressure(1000.0, height, top, pump)
    assert here >= top + pump
    assert safety.fill_pressure(1000.0, height + 1, top, pump) - here == pytest.approx(9806.65)


@given(volume=volumes)
def test_the_reserve_is_half_a_percent_and_three_litres_at_least(volume: float) -> None:
    assert safety.water_reserve(volume) == pytest.approx(max(0.003, volume / 200))


@given(top=st.floats(320, 370), heat=powers, flow=st.floats(2e-5, 2e-3), more=st.floats(1.01, 3))
def test_a_hotter_fire_or_a_weaker_pump_makes_the_outlet_hotter(
    top: float, heat: float, flow: float, more: float
) -> None:
    outlet = safety.outlet_at_peak(top, pipes.rise(heat, flow, 4.08e6))
    assert outlet > top
    assert safety.outlet_at_peak(top, pipes.rise(heat * more, flow, 4.08e6)) > outlet
    assert safety.outlet_at_peak(top, pipes.rise(heat, flow / more, 4.08e6)) > outlet


@given(setting=st.floats(0.6e5, 10e5), barometer=barometers, heat=powers)
def test_the_relief_valve_passes_all_of_the_heat(setting: float, barometer: float, heat: float) -> None:
    pressure = safety.relieving_pressure(setting, barometer)
    assert pressure > setting + barometer
    boiling = water.boiling_temperature(pressure)
    assume(boiling < 443)
    latent = safety.latent_heat(boiling)
    assert safety.relief_steam(heat, latent) * latent == pytest.approx(heat)


@given(heat=st.floats(500, 400e3), more=st.floats(1.0, 1.2))
def test_a_hotter_fire_never_gets_a_narrower_vent(heat: float, more: float) -> None:
    assert safety.open_vent_bore(heat * more) >= safety.open_vent_bore(heat) >= 0.025


@given(steam=st.floats(1e-4, 0.1), volume=st.floats(0.3, 3), bore=st.floats(0.01, 0.1))
def test_steam_leaves_a_vent_as_fast_as_it_is_made(steam: float, volume: float, bore: float) -> None:
    from math import pi

    assert safety.vent_steam_velocity(steam, volume, bore) * pi / 4 * bore**2 == pytest.approx(steam * volume)


@given(
    water_volume=st.floats(0.005, 0.5),
    start=st.floats(330, 372),
    boiling=st.floats(360, 400),
    peak=powers,
    dump=st.floats(0, 100e3),
    left=st.floats(0, 3e8),
)
def test_a_power_cut_conserves_heat(
    water_volume: float, start: float, boiling: float, peak: float, dump: float, left: float
) -> None:
    heat = safety.heat_to_boiling(water_volume, 965.0, 4200.0, boiling, start)
    net = safety.net_output(peak, dump)
    spent = safety.time_until_spent(left, peak)
    boiled = safety.heat_boiled_off(net, spent, heat)
    assert heat >= 0
    assert boiled >= 0
    if start >= boiling:
        assert heat == 0
    if dump >= peak:
        assert boiled == 0
    if net == 0 or heat > net * spent:
        with pytest.raises(NoSolution):
            safety.time_to_boiling(heat, net, spent)
        return
    minutes = safety.time_to_boiling(heat, net, spent)
    assert minutes <= spent * (1 + 1e-12)
    if boiled > 0:
        assert boiled + heat == pytest.approx(net * spent, rel=1e-9)
    bigger = safety.heat_to_boiling(water_volume * 1.5, 965.0, 4200.0, boiling, start)
    assert safety.time_to_boiling(bigger, net, 1e9) >= minutes


@given(hot=st.floats(330, 440), outside=st.floats(340, 375))
def test_flashing_conserves_enthalpy_and_stops_at_boiling(hot: float, outside: float) -> None:
    latent = safety.latent_heat(outside)
    share = safety.flash_fraction(hot, outside, 4230.0, latent)
    assert 0 <= share < 0.25
    assert share * latent == pytest.approx(max(4230.0 * (hot - outside), 0))
    if hot <= outside:
        assert share == 0


@given(volume=volumes, share=st.floats(0, 0.2))
def test_the_steam_of_a_burst_takes_far_more_room_than_the_water_had(volume: float, share: float) -> None:
    steam = safety.flash_steam(volume, 940.0, share)
    assert steam <= volume * 940
    assert safety.flash_steam_volume(steam, safety.steam_volume(101325.0)) == pytest.approx(
        volume * 940 * share * safety.steam_volume(101325.0)
    )


@given(pressure=st.floats(41e3, 690e3))
def test_steam_shrinks_under_pressure(pressure: float) -> None:
    assert safety.steam_volume(pressure * 1.01) < safety.steam_volume(pressure)


@given(boiling=st.floats(325, 440))
def test_the_hotter_it_boils_the_less_heat_boiling_takes(boiling: float) -> None:
    assert safety.latent_heat(boiling + 1) < safety.latent_heat(boiling)


def test_refuses_shares_over_one_and_settings_that_are_none() -> None:
    refused: tuple[tuple[Law, tuple[float, ...]], ...] = (
        (safety.fire_heat_left, (10.0, 15e6, 1.2)),
        (safety.dump_needed, (10e3, 1.2)),
        (safety.peak_output, (10e3, 0.5)),
        (safety.highest_pressure, (0.0,)),
        (safety.battery_energy, (40.0, 3600.0, 0.0)),
    )
    for bad, arguments in refused:
        with pytest.raises(OutOfRange):
            bad(*arguments)
