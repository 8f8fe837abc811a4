"""Worked by hand: the pipe worksheet, and what it says when."""

import pytest

from calc.units import FOOT, GALLON, INCH, PSI
from tests.worksheets.asking import codes, sheet_of, values

GPM = GALLON / 60


def test_mill_row_by_hand() -> None:
    # Mean of 140 and 128 °F: 134 °F, where water weighs 61.50 lb/ft³ = 8.221 lb/gal and holds 0.9984 Btu/(lb·°F):
    # true factor 60 × 8.221 × 0.9984 = 492.5. Flow 30,500 ÷ (492.5 × 12) = 5.161 gal/min (the round 500: 5.083).
    # Bore 1.055 in: 0.8742 in²; 5.161 gal/min = 0.011499 ft³/s, so 1.894 ft/s.
    # Viscosity 0.490 cP: Reynolds 985.1 × 0.5773 × 0.0268 ÷ 0.000490 = 31,100; smooth tube, f = 0.0233 (Moody chart).
    # Pipe: 0.0233 × 160 ft × 12 ÷ 1.055 = 42.4 velocity heads; fittings 16 × 0.9 + 4 × 1.6 + 4 × 0.3 + 2 = 24.
    # Velocity head 1.894² ÷ 64.35 = 0.05575 ft; 66.4 × 0.05575 = 3.70 ft, and 0.5 psi of baseboard is 1.17 ft: 4.87 ft.
    worked = values("pipe")
    assert worked["flow"] == pytest.approx(5.161 * GPM, rel=0.001)
    assert worked["rule_flow"] == pytest.approx(5.0833 * GPM, rel=0.0001)
    assert worked["velocity"] == pytest.approx(1.894 * FOOT, rel=0.001)
    assert worked["fittings_loss"] == pytest.approx(24)
    assert worked["head"] == pytest.approx(4.87 * FOOT, rel=0.01)  # a friction factor read to three figures
    assert worked["pressure_drop"] == pytest.approx(4.87 * 61.50 / 144 * PSI, rel=0.01)
    # 5.161 gal/min × 4.87 ft × 0.986 ÷ 3960 hp = 4.67 W, at 25 %: 18.7 W.
    assert worked["pump_power"] == pytest.approx(18.7, rel=0.01)


def test_flow_is_at_the_mean_of_supply_and_return_and_grows_with_antifreeze() -> None:
    plain = values("pipe")
    assert plain["mean_water"] == pytest.approx((140 + 128 + 2 * 459.67) / 2 / 1.8)
    mixed = values("pipe", antifreeze_kind="propylene", antifreeze="50 %")
    assert 1.05 < mixed["flow"] / plain["flow"] < 1.15
    assert mixed["head"] > 1.2 * plain["head"]


def test_the_smallest_sizes_keep_to_the_speed() -> None:
    # 5.161 gal/min at 3 ft/s need 0.838 in or 21.3 mm: copper M and L 1 (3/4 has 0.811 and 0.785), PEX 1 (0.862), steel
    # 1 (3/4 has 0.824), metric copper 28 (22 x 1 has 20 mm).
    worked = values("pipe")
    assert worked["least_bore"] == pytest.approx(0.838 * INCH, rel=0.001)
    sizes = [round(worked[f"smallest_{kind}"] / INCH, 3) for kind in ("copper_m", "copper_l", "pex", "steel")]
    assert sizes == [1.0, 1.0, 1.0, 1.0]
    assert worked["smallest_copper_metric"] == pytest.approx(0.028)
    # At 12.6 °F of drop it is less, 0.818 in: copper M has 0.811, steel 3/4 has 0.824.
    less = values("pipe", water_drop="12.6 F°")
    assert [round(less[f"smallest_{kind}"] / INCH, 3) for kind in ("copper_m", "steel")] == [1.0, 0.75]


def test_pex_flows_by_its_average_wall_and_shows_the_minimum_one() -> None:
    worked = values("pipe", pipe_kind="pex", pipe_size="3/4")
    assert worked["bore"] == pytest.approx(0.671 * INCH)
    assert worked["bore_by_minimum_wall"] == pytest.approx(0.681 * INCH)
    assert "bore_by_minimum_wall" not in values("pipe")


def test_metric_copper_and_a_typed_bore() -> None:
    # EN 1057, 22 x 1: 22 - 2 × 1 = 20 mm inside.
    metric, typed = (
        values("pipe", pipe_kind="copper-metric", metric_size="22x1"),
        values("pipe", pipe_kind="own", bore="20 mm"),
    )
    assert metric["bore"] == pytest.approx(0.020)
    assert {key: typed[key] for key in ("velocity", "head")} == pytest.approx(
        {key: metric[key] for key in ("velocity", "head")}
    )
    # 5.161 gal/min = 0.3256 L/s through 3.142 cm²: 1.036 m/s.
    assert metric["velocity"] == pytest.approx(1.036, rel=1e-3)
    # A typed inside diameter alone says which way was meant, and a rough wall costs more head.
    assert sheet_of("pipe", bore="20 mm", design_load="30,500 Btu/h").inputs["pipe_kind"].si == "own"
    assert values("pipe", pipe_kind="own", bore="20 mm", roughness="0.15 mm")["head"] > 1.1 * typed["head"]


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
            {"supply_water": "160 °F", "pipe_size": "3/4"},
            {"supply_water": "139 °F", "pipe_size": "3/4"},
        ),
        ("noise", {"pipe_size": "1/2"}, {}),
        ("undecided", {"design_load": "2,500 Btu/h", "pipe_heat": "2,500 Btu/h"}, {}),
        ("air", {}, {"pipe_size": "3/4"}),
        ("rule", {"supply_water": "180 °F"}, {"supply_water": "70 °F", "water_drop": "10 F°", "pipe_size": "1"}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("pipe", **holds)
    assert code not in codes("pipe", **spared)
