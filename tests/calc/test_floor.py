"""What must always hold for heated floors."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.law import Law, OutOfRange
from calc.physics import conduction, floor

patient = settings(deadline=None)

spacings = st.floats(0.05, 0.375)
coverings = st.floats(0, 0.15)
conductivities = st.floats(0.4, 2.5)
covers = st.floats(0.02, 0.2)
pipes = st.floats(0.012, 0.025)


def standard(spacing: float, cover: float, pipe: float, conductivity: float, covering: float) -> float:
    counted = floor.counted_cover(cover, spacing)
    wet = floor.wet_floor_conductance(
        floor.covering_factor(conductivity, covering),
        floor.spacing_factor(covering),
        floor.cover_factor(spacing, covering),
        floor.pipe_factor(spacing, covering),
        spacing,
        counted,
        pipe,
    )
    return floor.standard_conductance(wet, cover, counted, conductivity)


def conductance(spacing: float, cover: float, pipe: float, conductivity: float, covering: float) -> float:
    return floor.floor_conductance(
        floor.conduction_share(spacing),
        standard(spacing, cover, pipe, conductivity, covering),
        conduction.slab_conductance(spacing, cover, pipe, conductivity, covering),
    )


@patient
@given(st.floats(0, 40))
def test_flux_and_rise_are_each_other_turned_round(rise: float) -> None:
    assert floor.surface_rise(floor.surface_flux(rise)) == pytest.approx(rise)


@patient
@given(spacings, spacings, covers, pipes, conductivities, coverings)
def test_closer_pipes_pass_more(
    first: float, other: float, cover: float, pipe: float, conductivity: float, covering: float
) -> None:
    close, wide = sorted((first, other))
    if wide - close < 0.005:
        return
    assert conductance(close, 0.06, pipe, conductivity, covering) > conductance(
        wide, 0.06, pipe, conductivity, covering
    )


@patient
@given(spacings, st.floats(0.02, 0.1), pipes, conductivities, coverings, coverings)
def test_a_thicker_covering_passes_less(
    spacing: float, cover: float, pipe: float, conductivity: float, first: float, other: float
) -> None:
    thin, thick = sorted((first, other))
    if thick - thin < 0.002:
        return
    assert conductance(spacing, cover, pipe, conductivity, thin) > conductance(
        spacing, cover, pipe, conductivity, thick
    )


@patient
@given(spacings, st.floats(0.02, 0.1), pipes, conductivities, coverings)
def test_no_floor_passes_more_than_its_covering_and_surface_film(
    spacing: float, cover: float, pipe: float, conductivity: float, covering: float
) -> None:
    assert conductance(spacing, cover, pipe, conductivity, covering) < 1 / (covering + 1 / 10.8)


@patient
@given(st.floats(0.05, 0.15), covers, covers, pipes, conductivities, coverings)
def test_more_concrete_over_the_pipe_passes_less(
    spacing: float, first: float, other: float, pipe: float, conductivity: float, covering: float
) -> None:
    # Where pipes lie far apart a little more concrete may help: it takes the heat sideways.
    thin, thick = sorted((first, other))
    more, less = (conductance(spacing, cover, pipe, conductivity, covering) for cover in (thin, thick))
    assert more >= less


@patient
@given(st.floats(0.3, 0.375), st.floats(0.02, 0.1), pipes, conductivities, coverings)
def test_wide_pipes_are_never_said_to_pass_more_than_conduction_lets_through(
    spacing: float, cover: float, pipe: float, conductivity: float, covering: float
) -> None:
    by_conduction = conduction.slab_conductance(spacing, cover, pipe, conductivity, covering)
    assert conductance(spacing, cover, pipe, conductivity, covering) <= by_conduction * (1 + 1e-12)


@patient
@given(st.floats(0.05, 0.15), st.floats(0.02, 0.1), pipes, conductivities, coverings)
def test_close_pipes_are_as_the_standard_has_them(
    spacing: float, cover: float, pipe: float, conductivity: float, covering: float
) -> None:
    floor_here = spacing, cover, pipe, conductivity, covering
    assert conductance(*floor_here) == standard(*floor_here)


@patient
@given(st.floats(270, 340), st.floats(285, 300), st.floats(1, 6), st.floats(1, 60), st.floats(10, 3000))
def test_a_supply_gives_what_its_log_mean_excess_gives(
    supply: float, indoor: float, passed: float, area: float, capacity: float
) -> None:
    flux = floor.flux_from_supply(supply, indoor, passed, area, capacity, 0.2, 1.7, 283.0)
    assert 0 <= flux <= passed * max(supply - indoor, 0) * (1 + 1e-9)
    # What goes down may take all that a lukewarm supply brings.
    assert (flux > 0) == (capacity * (supply - indoor) > max(area * (indoor - 283.0) / 1.7, 0))


@patient
@given(coverings)
def test_at_the_spacing_step_only_covering_counts(covering: float) -> None:
    """At 75 mm, 45 mm and 20 mm every exponent is zero and the standard's bare coefficient is left."""
    assert standard(0.075, 0.045, 0.020, 1.0, 0.0) == pytest.approx(6.7)
    assert standard(0.075, 0.045, 0.020, 1.0, covering) == pytest.approx(6.7 * floor.covering_factor(1.0, covering))


@patient
@given(st.sampled_from([floor.cover_factor, floor.pipe_factor]), spacings, coverings)
def test_table_factors_stay_between_the_tables_ends(law: Law, spacing: float, covering: float) -> None:
    assert 1.01 < law(spacing, covering) < 1.07


@patient
@given(st.floats(0, 200), st.floats(0.1, 0.5), st.floats(0.2, 10), st.floats(285, 300), st.floats(260, 284))
def test_what_goes_down_falls_with_insulation(
    flux: float, above: float, below: float, indoor: float, ground: float
) -> None:
    loss = floor.downward_flux(flux, above, below, indoor, ground)
    assert loss > 0
    assert floor.downward_flux(flux, above, 2 * below, indoor, ground) == pytest.approx(loss / 2)


@patient
@given(st.floats(10, 150), st.floats(1, 10))
def test_needed_excess_gives_the_flux(flux: float, passed: float) -> None:
    assert floor.flux_at(passed, floor.needed_excess(flux, passed)) == pytest.approx(flux)


def test_a_carpet_beyond_the_tables_is_refused() -> None:
    with pytest.raises(OutOfRange, match="covering"):
        floor.spacing_factor(0.2)


def test_pipes_wider_than_the_tables_are_refused() -> None:
    with pytest.raises(OutOfRange, match="spacing"):
        floor.pipe_factor(0.5, 0.1)


def test_a_surface_cooler_than_the_room_is_refused() -> None:
    with pytest.raises(OutOfRange, match="surface_rise"):
        floor.surface_flux(-1)
