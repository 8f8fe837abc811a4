"""Worked by hand: the antifreeze worksheet, and what it says when."""

import pytest

from calc.units import FAHRENHEIT_DEGREE, GALLON
from tests.worksheets.asking import codes, kelvin, values


def test_ridge_road_by_hand() -> None:
    # 40 % by volume: 0.4 × 1036 ÷ (0.4 × 1036 + 0.6 × 998.2) = 414.4 ÷ 1013.3 = 40.9 % by mass.
    # Published for 40 % by volume: first ice at -21.4 °C (-6.5 °F); pipes whole to -40 °F and below from 35 % on.
    # 40 % of 60 gal is 24 gal. At 150 °F the mixture holds about 460 where water holds 490.7: 6.2 % less, so the flow
    # is 1 ÷ 0.938 - 1 = 6.6 % more.
    worked = values("antifreeze")
    assert worked["mass_fraction"] == pytest.approx(0.409, abs=0.0005)
    assert worked["freezing_point"] == pytest.approx(kelvin(-6.5), abs=1 * FAHRENHEIT_DEGREE)
    assert worked["burst_point"] == pytest.approx(kelvin(-40))
    assert worked["glycol_needed"] == pytest.approx(24 * GALLON)
    assert worked["heat_capacity_lost"] == pytest.approx(0.062, abs=0.003)
    assert worked["extra_flow"] == pytest.approx(1 / (1 - worked["heat_capacity_lost"]) - 1)


def test_freezing_and_bursting_are_two_points() -> None:
    for kind in ("propylene", "ethylene"):
        worked = values("antifreeze", antifreeze_kind=kind, antifreeze="25 %")
        assert worked["burst_point"] < worked["freezing_point"] - 10 * FAHRENHEIT_DEGREE


def test_what_does_not_freeze_does_not_burst() -> None:
    # Half ethylene glycol by volume is 52.7 % by mass and has its first ice at -39.8 °C (-39.7 °F; CoolProp, Melinder).
    worked = values("antifreeze", antifreeze_kind="ethylene", antifreeze="50 %")
    assert worked["burst_point"] == worked["freezing_point"] == pytest.approx(kelvin(-39.7), abs=0.2)
    assert not {"bursts", "slush"} & codes(
        "antifreeze", antifreeze_kind="ethylene", antifreeze="50 %", coldest="-35 °F"
    )


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        (
            "poison",
            {"antifreeze_kind": "ethylene", "tap_side": "single"},
            {"antifreeze_kind": "ethylene", "tap_side": "double"},
        ),
        ("single-wall", {"tap_side": "single"}, {"tap_side": "double"}),
        ("poison-kept-apart", {"antifreeze_kind": "ethylene"}, {}),
        ("slush", {"antifreeze": "30 %"}, {"antifreeze": "50 %"}),
        ("near-slush", {}, {"antifreeze": "50 %"}),
        ("bursts", {"antifreeze": "20 %"}, {}),
        ("thin", {"antifreeze": "20 %", "coldest": "20 °F"}, {}),
        ("thick", {"antifreeze": "54 %"}, {}),
        ("test", {}, {}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("antifreeze", **holds)
    if code != "test":
        assert code not in codes("antifreeze", **spared)
