"""Pipes: what must always hold, whatever the numbers."""

from math import pi

import pytest
from fluids.friction import Colebrook
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.law import NoSolution, OutOfRange
from calc.physics import pipes, water
from calc.units import INCH

flows = st.floats(1e-5, 5e-3)
bores = st.floats(0.008, 0.1)
densities = st.floats(900, 1080)
kelvins = st.floats(275, 420)
heats = st.floats(100, 200e3)


@given(heat=heats, drop=st.floats(1, 60), at=kelvins)
def test_the_flow_for_a_heat_carries_that_heat(heat: float, drop: float, at: float) -> None:
    capacity = pipes.volume_heat_capacity(water.density(at), water.specific_heat(at))
    flow = pipes.flow(heat, capacity, drop)
    assert pipes.heat_carried(flow, capacity, drop) == pytest.approx(heat, rel=1e-12)
    assert pipes.rise(heat, flow, capacity) == pytest.approx(drop, rel=1e-12)


@given(flow=flows, bore=bores)
def test_the_bore_for_a_speed_has_that_speed(flow: float, bore: float) -> None:
    speed = pipes.velocity(flow, bore)
    assume(0.05 <= speed <= 10)
    assert pipes.bore_for_velocity(flow, speed) == pytest.approx(bore, rel=1e-12)


@given(reynolds=st.floats(1, 9e6), rough=st.floats(0, 0.04))
def test_friction_falls_with_the_reynolds_number_but_for_the_transition_and_rises_with_roughness(
    reynolds: float, rough: float
) -> None:
    factor = pipes.friction_factor(reynolds, rough)
    assert factor > 0
    assert pipes.friction_factor(reynolds, rough + 0.01) >= factor * (1 - 1e-12)
    if not 1000 < reynolds < 5000:
        assert pipes.friction_factor(reynolds * 1.01, rough) <= factor * (1 + 1e-9)


@given(reynolds=st.floats(1, 1500))
def test_slow_flow_is_laminar(reynolds: float) -> None:
    assert pipes.friction_factor(reynolds, 0.0) == pytest.approx(64 / reynolds, rel=2e-3)


@given(reynolds=st.floats(4000, 1e7), rough=st.floats(0, 0.01))
def test_churchill_stays_as_close_to_colebrook_as_stated(reynolds: float, rough: float) -> None:
    allowed = 0.035 if reynolds < 10000 else 0.025
    assert pipes.friction_factor(reynolds, rough) == pytest.approx(float(Colebrook(reynolds, rough)), rel=allowed)


@given(flow=flows, bore=bores, length=st.floats(0, 200), losses=st.floats(0, 50), other=st.floats(0, 20e3))
def test_more_of_anything_loses_more_pressure(
    flow: float, bore: float, length: float, losses: float, other: float
) -> None:
    def drop(flow: float, bore: float, length: float, losses: float, other: float) -> float:
        speed = pipes.velocity(flow, bore)
        reynolds = pipes.reynolds_number(983.0, speed, bore, 4.66e-4)
        factor = pipes.friction_factor(reynolds, pipes.relative_roughness(1.5e-6, bore))
        return pipes.pressure_drop(pipes.friction(factor, 983.0, speed, bore), length, losses, 983.0, speed, other)

    here = drop(flow, bore, length, losses, other)
    assert drop(flow, bore, length + 1, losses, other) > here
    assert drop(flow, bore, length, losses + 1, other) > here
    assert drop(flow, bore, length, losses, other + 1) > here
    assert drop(flow * 1.05, bore, length, losses, other) >= here
    assert drop(flow, bore * 1.05, length, losses, other) <= here


def test_sizes_of_a_family_rise_and_pex_by_its_minimum_wall_is_wider() -> None:
    families: dict[str, list[float]] = {}
    for pipe in pipes.PIPES:
        families.setdefault(pipe.family, []).append(pipe.bore)
    assert all(bores == sorted(bores) for bores in families.values())
    assert families.keys() - {"pex-minimum-wall"} == pipes.ROUGHNESS.keys()  # water runs in none of that wall
    wide, real = families["pex-minimum-wall"], families["pex"]
    assert all(catalog > made for catalog, made in zip(wide, real, strict=True))


def test_pex_is_made_to_a_ninth_of_its_diameter() -> None:
    for pipe in pipes.PIPES:
        if pipe.family == "pex-minimum-wall" and pipe.nominal > 0.5:  # 1/2 in and below have 0.070 in by rule
            assert pipe.wall == pytest.approx(pipe.outside / 9, abs=0.001)


@given(bore=st.floats(0.001, 0.12))
def test_the_smallest_pipe_is_wide_enough_and_the_next_smaller_is_not(bore: float) -> None:
    for family, law in (
        ("copper-l", pipes.smallest_copper_l),
        ("copper-m", pipes.smallest_copper_m),
        ("pex", pipes.smallest_pex),
        ("steel", pipes.smallest_steel),
    ):
        sizes = [pipe for pipe in pipes.PIPES if pipe.family == family]
        if bore > sizes[-1].bore:
            with pytest.raises(NoSolution):
                law(bore)
            continue
        chosen = law(bore) / INCH
        assert next(pipe for pipe in sizes if pipe.nominal == pytest.approx(chosen)).bore >= bore * (1 - 1e-6)
        assert all(pipe.bore < bore for pipe in sizes if pipe.nominal < chosen - 1e-9)


@given(pressure=st.floats(60e3, 400e3), rise=st.floats(0, 30), at=st.floats(300, 370))
def test_the_height_before_boiling_is_where_pressure_meets_vapour(pressure: float, rise: float, at: float) -> None:
    density, vapour = water.density(at), water.vapour_pressure(at)
    highest = pipes.rise_before_boiling(pressure, vapour, density)
    assume(vapour > 1500)
    assert pipes.pressure_at_height(pressure, density, highest) == pytest.approx(vapour, rel=1e-9)
    above = pipes.pressure_at_height(pressure, density, rise)
    assert (above < vapour) == (rise > highest) or abs(rise - highest) < 1e-6
    assert above >= 1000


@given(pressure=st.floats(60e3, 400e3), height=st.floats(-20, 20), lost=st.floats(0, 50e3))
def test_friction_before_the_pump_costs_its_inlet_that_much(pressure: float, height: float, lost: float) -> None:
    still = pipes.pressure_at_height(pressure, 970.0, height)
    running = pipes.pump_inlet_pressure(pressure, 970.0, height, lost)
    assert 1000 <= running <= still
    if running > 1000:
        assert still - running == pytest.approx(lost, abs=1e-6)
    suction = pipes.net_positive_suction_head(running, 47e3, 970.0)
    assert (suction > 0) == (running > 47e3)


@given(depth=st.floats(0.3, 2), jacket=st.floats(0.05, 0.25), soil=st.floats(0.3, 2.5), apart=st.floats(0.06, 1))
def test_buried_pipes_lose_less_when_deep_dry_and_close(depth: float, jacket: float, soil: float, apart: float) -> None:
    def loss(depth: float, soil: float, apart: float) -> float:
        return pipes.pair_conductance(
            4.0, pipes.soil_resistance(depth, jacket, soil), pipes.neighbour_resistance(depth, apart, soil)
        )

    here = loss(depth, soil, apart)
    assert loss(depth + 0.5, soil, apart) < here
    assert loss(depth, soil * 1.2, apart) > here
    assert loss(depth, soil, apart * 1.2) > here
    assert here < 2 / 4.0


@given(entering=st.floats(300, 370), ground=st.floats(265, 290), run=st.floats(0, 500), flow=flows)
def test_water_cools_towards_the_ground_and_its_heat_is_what_the_ground_gets(
    entering: float, ground: float, run: float, flow: float
) -> None:
    stream = 4.08e6
    leaving = pipes.leaving_temperature(entering, ground, run, flow, stream)
    assert ground - 1e-9 <= leaving <= entering + 1e-9
    given_off = flow * stream * (entering - leaving)
    assert given_off <= run * (entering - ground) * (1 + 1e-9) + 1e-6


def test_insulation_of_no_thickness_resists_nothing_and_a_bare_pipe_loses_by_its_film_alone() -> None:
    assert pipes.layer_resistance(0.03, 0.03, 0.03) == 0
    assert pipes.conductance_in_air(0.0, 0.05) == pytest.approx(8 * pi * 0.05)


def test_a_pipe_in_mild_surroundings_never_freezes_solid() -> None:
    with pytest.raises(ZeroDivisionError):
        pipes.time_to_freeze_solid(10.0, 2.0, 273.15, 275.0)


def test_refuses_what_has_no_meaning() -> None:
    with pytest.raises(OutOfRange):
        pipes.velocity(1e-4, 0.0)
    with pytest.raises(OutOfRange):
        pipes.flow(1000.0, 4.1e6, 0.0)
    with pytest.raises(OutOfRange):
        pipes.rise(1000.0, 0.0, 4.1e6)
    with pytest.raises(OutOfRange):
        pipes.friction_factor(0.5, 0.0)
