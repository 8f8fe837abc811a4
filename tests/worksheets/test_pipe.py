"""Worked by hand: the pipe worksheet, and what it says when."""

import pytest

from calc.units import FOOT, GALLON, INCH, PSI
from tests.worksheets.asking import codes, values

GPM = GALLON / 60


def test_mill_row_by_hand() -> None:
    # Mean of 140 and 125 °F: 132.5 °F, where water weighs 61.53 lb/ft³ = 8.225 lb/gal and holds 0.998 Btu/(lb·°F):
    # true factor 60 × 8.225 × 0.9983 = 492.7. Flow 30,500 ÷ (492.7 × 15) = 4.127 gal/min (the round 500: 4.067).
    # Bore 0.811 in: 0.5166 in²; 4.127 gal/min = 0.009195 ft³/s, so 2.563 ft/s.
    # Viscosity 0.497 cP: Reynolds 985.6 × 0.7813 × 0.0206 ÷ 0.000497 = 31,900; smooth tube, f = 0.0232 (Moody chart).
    # Pipe: 0.0232 × 160 ft × 12 ÷ 0.811 = 54.9 velocity heads; fittings 16 × 0.9 + 4 × 1.6 + 4 × 0.3 + 2 = 24.
    # Velocity head 2.563² ÷ 64.35 = 0.1021 ft; 78.9 × 0.1021 = 8.06 ft, and 0.5 psi of baseboard is 1.17 ft: 9.23 ft.
    found = values("pipe")
    assert found["flow"] == pytest.approx(4.127 * GPM, rel=0.001)
    assert found["rule_flow"] == pytest.approx(4.0667 * GPM, rel=0.0001)
    assert found["velocity"] == pytest.approx(2.563 * FOOT, rel=0.001)
    assert found["fittings_loss"] == pytest.approx(24)
    assert found["head"] == pytest.approx(9.23 * FOOT, rel=0.01)  # a friction factor read to three figures
    assert found["pressure_drop"] == pytest.approx(9.23 * 61.53 / 144 * PSI, rel=0.01)
    # 4.127 gal/min × 9.23 ft × 0.986 ÷ 3960 hp = 7.07 W, at 25 %: 28.3 W.
    assert found["pump_power"] == pytest.approx(28.3, rel=0.01)


def test_flow_is_at_the_mean_of_supply_and_return_and_grows_with_antifreeze() -> None:
    plain = values("pipe")
    assert plain["mean_water"] == pytest.approx((140 + 125 + 2 * 459.67) / 2 / 1.8)
    mixed = values("pipe", antifreeze_kind="propylene", antifreeze="50 %")
    assert 1.05 < mixed["flow"] / plain["flow"] < 1.15
    assert mixed["head"] > 1.2 * plain["head"]


def test_the_smallest_sizes_keep_to_the_speed() -> None:
    # 4.127 gal/min at 3 ft/s need 0.750 in: copper M and L 3/4 (0.811, 0.785), PEX 1 (0.862; 3/4 has 0.671), steel 3/4.
    found = values("pipe")
    assert found["least_bore"] == pytest.approx(0.750 * INCH, rel=0.001)
    sizes = [round(found[f"smallest_{kind}"] / INCH, 3) for kind in ("copper_m", "copper_l", "pex", "steel")]
    assert sizes == [0.75, 0.75, 1.0, 0.75]


def test_pex_flows_by_its_average_wall_and_shows_the_minimum_one() -> None:
    found = values("pipe", pipe_kind="pex", pipe_size="3/4")
    assert found["bore"] == pytest.approx(0.671 * INCH)
    assert found["bore_by_minimum_wall"] == pytest.approx(0.681 * INCH)
    assert "bore_by_minimum_wall" not in values("pipe")


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("plastic-at-the-fire", {"pipe_kind": "pex", "pipe_place": "stove"}, {"pipe_kind": "pex"}),
        (
            "plastic-too-hot",
            {"pipe_kind": "pex", "supply_water": "201 °F"},
            {"pipe_kind": "pex", "supply_water": "199 °F"},
        ),
        ("plastic-hot", {"pipe_kind": "pex", "supply_water": "185 °F"}, {"pipe_kind": "pex", "supply_water": "179 °F"}),
        (
            "plastic-overpressure",
            {"pipe_kind": "pex", "supply_water": "190 °F", "system_pressure": "85 psi"},
            {"pipe_kind": "pex", "supply_water": "170 °F", "system_pressure": "85 psi"},
        ),
        ("oxygen", {"pipe_kind": "pex"}, {}),
        (
            "erosion",
            {"supply_water": "160 °F", "water_drop": "11 F°"},
            {"supply_water": "139 °F", "water_drop": "11 F°"},
        ),
        ("noise", {"pipe_size": "1/2"}, {}),
        ("undecided", {"design_load": "2,500 Btu/h", "pipe_heat": "2,500 Btu/h"}, {}),
        ("air", {"pipe_size": "1"}, {}),
        ("rule", {"supply_water": "180 °F"}, {"supply_water": "70 °F", "water_drop": "10 F°", "pipe_size": "1"}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("pipe", **holds)
    assert code not in codes("pipe", **spared)
