"""What must always hold for firewood."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.law import OutOfRange
from calc.physics import arithmetic, wood
from calc.units import BTU, FOOT, POUND

patient = settings(deadline=None)

moistures = st.floats(0, 0.75)
densities = st.floats(250, 800)
CORD = 128 * FOOT**3


@patient
@given(moistures)
def test_moisture_comes_back_from_the_other_basis(moisture: float) -> None:
    dry = wood.moisture_on_dry_basis(moisture)
    assert dry >= moisture
    assert wood.moisture_on_wet_basis(dry) == pytest.approx(moisture)


@patient
@given(moistures, moistures)
def test_wetter_wood_gives_less_on_either_basis(first: float, other: float) -> None:
    drier, wetter = sorted((first, other))
    dry = wood.DRY_HEATING_VALUE.value
    higher = [wood.higher_heating_value(dry, moisture) for moisture in (drier, wetter)]
    lower = [wood.lower_heating_value(value, moisture) for value, moisture in zip(higher, (drier, wetter), strict=True)]
    assert higher[0] >= higher[1]
    assert lower[0] >= lower[1]
    assert all(low < high for low, high in zip(lower, higher, strict=True))


@patient
@given(densities, moistures, st.floats(0.4, 0.8))
def test_a_stack_holds_the_same_higher_heat_however_wet(density: float, moisture: float, share: float) -> None:
    dry = wood.DRY_HEATING_VALUE.value
    content = wood.stack_heat_content(share, density, moisture, wood.higher_heating_value(dry, moisture))
    assert content == pytest.approx(share * density * dry)


@patient
@given(st.floats(0.1, 100), densities, moistures, st.floats(0.4, 0.8))
def test_a_stack_is_the_sum_of_its_wood(volume: float, density: float, moisture: float, share: float) -> None:
    value = wood.higher_heating_value(wood.DRY_HEATING_VALUE.value, moisture)
    oven_dry = wood.oven_dry_mass(wood.solid_volume(volume, share), density)
    mass = wood.mass_with_moisture(oven_dry, moisture)
    assert mass - wood.water_in_wood(mass, moisture) == pytest.approx(oven_dry)
    assert mass * value == pytest.approx(volume * wood.stack_heat_content(share, density, moisture, value))


@patient
@given(st.floats(0.1, 100), st.floats(0.5, 3), st.floats(0.2, 2))
def test_a_stack_fills_its_volume(volume: float, height: float, depth: float) -> None:
    assert wood.stack_length(volume, height, depth) * height * depth == pytest.approx(volume)


@patient
@given(st.floats(0.2, 1), st.floats(0.04, 0.3), densities, moistures, st.floats(1, 60))
def test_splits_make_up_the_load(length: float, thickness: float, density: float, moisture: float, mass: float) -> None:
    split = wood.split_mass(length, arithmetic.circle_area(thickness), density, moisture)
    assert wood.pieces_in(mass, split) * split == pytest.approx(mass)
    assert wood.split_mass(length, arithmetic.circle_area(2 * thickness), density, moisture) == pytest.approx(4 * split)


@pytest.mark.parametrize("moisture", [-0.01, 0.81, 1.0])
def test_moisture_without_meaning_is_refused(moisture: float) -> None:
    for law in (wood.moisture_on_dry_basis, wood.higher_heating_value, wood.lower_heating_value):
        arguments = {name: moisture if name == "moisture" else 2e7 for name in law.parameters}
        with pytest.raises(OutOfRange):
            law(**arguments)


def test_species_are_whole_and_their_heat_is_near_what_is_printed() -> None:
    assert len(wood.SPECIES) >= 60
    ratios = []
    for key, entry in wood.SPECIES.items():
        assert key == entry.key
        assert 250 <= entry.basic_density <= 800
        assert 0.2 < entry.green_moisture < 1.5
        assert (entry.printed is None) == (entry.lists == 0)
        if entry.printed is None:
            continue
        low, high = entry.printed
        assert low <= high
        dry = wood.RESINOUS_HEATING_VALUE if entry.resinous else wood.DRY_HEATING_VALUE
        content = wood.SOLID_SHARE.value * entry.basic_density * dry.value * CORD / BTU / 1e6
        ratios.append(content / ((low + high) / 2))
        # One state multiplies air-dry weight by oven-dry heat on a tight cord: up to a third more than this.
        assert 0.65 < ratios[-1] < 1.25, key
    assert sum(ratios) / len(ratios) == pytest.approx(1, abs=0.05)


def test_the_bounds_of_solid_wood_in_a_cord_are_those_of_the_lists() -> None:
    assert pytest.approx(70 * FOOT**3) == wood.SOLID_SHARE_LOW * CORD
    assert pytest.approx(90 * FOOT**3) == wood.SOLID_SHARE_HIGH * CORD
    assert wood.SOLID_SHARE_LOW < wood.SOLID_SHARE.value < wood.SOLID_SHARE_HIGH


def test_heat_of_a_dry_pound() -> None:
    assert wood.DRY_HEATING_VALUE.value * POUND / BTU == pytest.approx(8600)
