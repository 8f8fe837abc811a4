"""Antifreeze: shares, limits, and a reference that is never left by more than one percent."""

import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from calc.law import OutOfRange
from calc.physics import antifreeze, water

KINDS = ("propylene", "ethylene")
shares = st.floats(0.0, 0.6)


def law(kind: str, name: str):  # type: ignore[no-untyped-def]
    return getattr(antifreeze, f"{kind}_{name}")


@pytest.mark.parametrize("kind", KINDS)
@given(share=shares)
def test_glycol_is_heavier_than_water_so_its_share_by_mass_is_the_larger(kind: str, share: float) -> None:
    mass = law(kind, "mass_fraction")(share)
    assert share <= mass <= 1
    if share == 0:
        assert mass == 0


@pytest.mark.parametrize("kind", KINDS)
@given(share=shares, more=st.floats(0.005, 0.1))
def test_more_glycol_freezes_and_bursts_no_warmer(kind: str, share: float, more: float) -> None:
    if share + more > 0.55:
        return
    assert law(kind, "freezing_point")(share + more) < law(kind, "freezing_point")(share)
    assert law(kind, "burst_point")(share + more) <= law(kind, "burst_point")(share)


@pytest.mark.parametrize("kind", KINDS)
def test_water_alone_freezes_and_bursts_at_zero(kind: str) -> None:
    assert law(kind, "freezing_point")(0.0) == 273.15
    assert law(kind, "burst_point")(0.0) == pytest.approx(273.15)


@pytest.mark.parametrize("kind", KINDS)
@given(share=st.floats(0.0, 0.55))
def test_a_pipe_bursts_below_the_freezing_point_or_not_at_all(kind: str, share: float) -> None:
    frozen = law(kind, "freezing_point")(law(kind, "mass_fraction")(share))
    assert law(kind, "burst_point")(share) <= frozen
    if 0.05 <= share <= 0.35:
        assert law(kind, "burst_point")(share) < frozen


@pytest.mark.parametrize(("kind", "fluid"), [("propylene", "MPG"), ("ethylene", "MEG")])
@pytest.mark.parametrize(
    ("name", "key", "allowed"), [("density", "D", 0.0012), ("specific_heat", "C", 0.0015), ("viscosity", "V", 0.007)]
)
@given(share=st.floats(0.1, 0.6), celsius=st.floats(-20, 99.9))
def test_the_fit_never_leaves_its_reference(
    kind: str, fluid: str, name: str, key: str, allowed: float, share: float, celsius: float
) -> None:
    kelvin = celsius + 273.15
    if kelvin < law(kind, "freezing_point")(share) + 1:
        return
    theirs = PropsSI(key, "T", kelvin, "P", 3e5, f"INCOMP::{fluid}[{share}]")
    assert law(kind, name)(share, kelvin) == pytest.approx(theirs, rel=allowed)


@pytest.mark.parametrize("kind", KINDS)
@given(share=st.floats(0.1, 0.6), at=st.floats(293, 370))
def test_a_mixture_is_thicker_denser_and_holds_less_heat_than_water(kind: str, share: float, at: float) -> None:
    assert law(kind, "viscosity")(share, at) > water.viscosity(at)
    assert law(kind, "density")(share, at) > water.density(at)
    assert law(kind, "specific_heat")(share, at) < water.specific_heat(at)


@pytest.mark.parametrize("kind", KINDS)
def test_refuses_what_it_was_not_fitted_for(kind: str) -> None:
    for share, kelvin in ((0.05, 300.0), (0.65, 300.0), (0.3, 374.0), (0.3, 250.0), (0.3, 255.0)):
        for name in ("density", "specific_heat", "viscosity"):
            with pytest.raises(OutOfRange):
                law(kind, name)(share, kelvin)
