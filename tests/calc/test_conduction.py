"""What must always hold for conduction in a slab."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.law import OutOfRange
from calc.physics import conduction
from comparisons.floor_conduction import finite_differences

patient = settings(deadline=None, max_examples=60)
spacings = st.floats(0.06, 0.37)
covers = st.floats(0.0125, 0.2)
pipes = st.floats(0.0105, 0.028)
screeds = st.floats(0.4, 2.5)
coverings = st.floats(0, 0.15)
FLOOR = {"spacing": 0.3, "cover": 0.05, "pipe_diameter": 0.016, "screed_conductivity": 1.4, "covering": 0.02}


@patient
@given(spacings, covers, pipes, screeds, coverings)
def test_twelve_terms_are_enough(spacing: float, cover: float, pipe: float, screed: float, covering: float) -> None:
    ours = conduction._spread(spacing, cover, pipe, screed, covering)
    more = conduction._spread(spacing, cover, pipe, screed, covering, terms=80)
    assert ours == pytest.approx(more, rel=1e-3)


@patient
@given(spacings, covers, pipes, screeds, coverings)
def test_a_floor_passes_less_than_its_layers_alone_and_is_warmest_over_the_pipe(
    spacing: float, cover: float, pipe: float, screed: float, covering: float
) -> None:
    layers = 1 / 10.8 + covering + cover / screed
    assert conduction.slab_conductance(spacing, cover, pipe, screed, covering) < 1 / layers
    assert conduction.warmest_factor(spacing, cover, pipe, screed, covering) >= 1 - 1e-9


@pytest.mark.parametrize(
    ("name", "less", "more"),
    [("spacing", 0.1, 0.3), ("screed_conductivity", 2.0, 0.8), ("covering", 0.1, 0.0), ("cover", 0.1, 0.03)],
)
def test_what_makes_a_floor_uneven(name: str, less: float, more: float) -> None:
    even, uneven = (conduction.warmest_factor(**(FLOOR | {name: value})) for value in (less, more))
    assert 1 < even < uneven


@pytest.mark.parametrize("covering", [0.01, 0.05, 0.1])
@pytest.mark.parametrize("warmest", [9.0, 15.0])  # EN 1264: 29 °C and 35 °C in a room of 20 °C
def test_a_film_that_differs_from_spot_to_spot_changes_little(covering: float, warmest: float) -> None:
    """One film of 10.8 W/m²K, as the standard's tables have it, errs by 1 % of the heat beside its own curve."""
    floor = FLOOR | {"covering": covering}
    _, theirs = finite_differences(*floor.values(), warmest=warmest)  # type: ignore[misc]
    ours = conduction.warmest_factor(**floor)
    assert (theirs / ours) ** 1.1 == pytest.approx(1, abs=0.012)


def test_pipes_wider_apart_than_the_tables_go_are_refused() -> None:
    with pytest.raises(OutOfRange, match="spacing"):
        conduction.warmest_factor(**(FLOOR | {"spacing": 0.5}))
