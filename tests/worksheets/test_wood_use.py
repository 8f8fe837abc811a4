"""Worked by hand: the wood-use worksheet, the definitions that pin it, and what it says when."""

import pytest

from calc.units import BTU, FOOT, POUND
from tests.worksheets.asking import codes, example_of, sheet_of, values

CORD = 128 * FOOT**3
MILLION = 1e6 * BTU


def test_mill_row_by_hand() -> None:
    # A cord of sugar maple: 85 ft³ × 0.56 × 62.4 lb = 2,970 lb oven-dry, × 8,600 Btu = 25.5 million Btu.
    # 78.1 ÷ (25.54 × 0.68) = 4.50 cords. By weight: 78.1 million ÷ (6,880 × 0.68) = 16,694 lb, a fifth of it water.
    # 5 ft high and one row of 16 in: 4.496 × 128 ÷ (5 × 1.333) = 86.3 ft. A load 5 × 12.5 = 62.5 lb: 267 loads.
    # A split: π/4 × 4² × 16 in³ = 0.1164 ft³ of 34.96 ÷ 0.8 = 43.7 lb/ft³ = 5.085 lb; 12.3 in a load.
    worked = values("wood-use")
    assert worked["wood_volume"] == pytest.approx(4.496 * CORD, rel=1e-3)
    assert worked["wood_mass"] == pytest.approx(16_694 * POUND, rel=1e-3)
    assert worked["water_boiled"] == pytest.approx(3_339 * POUND, rel=1e-3)
    assert worked["stack_length"] == pytest.approx(86.3 * FOOT, rel=2e-3)
    assert worked["loads"] == pytest.approx(267.1, rel=1e-3)
    assert worked["splits"] == pytest.approx(12.29, rel=2e-3)


def test_a_dry_basis_reading_is_not_a_wet_one() -> None:
    # A meter's 25 % (dry basis) is 20 % here; taking it as wet would make the wood look 6 % heavier than it is.
    assert values("wood-use", moisture="25 %")["wood_mass"] / values("wood-use")["wood_mass"] == pytest.approx(
        0.80 / 0.75
    )


def test_the_lower_value_by_hand() -> None:
    # At 20 % wet basis 6,219 Btu/lb: 78.1 million ÷ (6,219 × 0.75) = 16,744 lb. Nearly the same wood: 68 % of the higher
    # value is 75 % of the lower.
    worked = values("wood-use", efficiency_basis="lower", efficiency="75 %")
    assert worked["heating_value"] == pytest.approx(6_219 * BTU / POUND, rel=1e-3)
    assert worked["wood_mass"] == pytest.approx(16_744 * POUND, rel=1e-3)


def test_share_taps_and_losses_by_hand() -> None:
    # Half of 78.1, and (2,000 + 500) Btu/h over 200 days: 39.05 + 12.0 = 51.05 million Btu.
    worked = values(
        "wood-use", wood_share="50 %", tap_load="2,000 Btu/h", standby_loss="500 Btu/h", heating_days="200 days"
    )
    assert worked["heat_from_wood"] == pytest.approx(51.05 * MILLION)


def test_resinous_wood_holds_more_in_each_pound() -> None:
    pine, maple = (values("wood-use", species=tree) for tree in ("eastern-white-pine", "sugar-maple"))
    assert pine["heating_value"] / maple["heating_value"] == pytest.approx(9000 / 8600)


def test_a_stere_is_a_cubic_meter_of_stack() -> None:
    sheet = sheet_of("wood-use", **example_of("wood-use"))
    assert sheet.values["wood_volume"] == pytest.approx(4.496 * 3.6246, rel=1e-3)


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("green", {"moisture": "40 %"}, {"moisture": "30 %"}),
        ("damp", {"moisture": "25 %"}, {"moisture": "20 %"}),
        ("flattering", {"efficiency": "85 %"}, {"efficiency": "80 %"}),
        ("many-splits", {"split_thickness": "12 in", "firebox_volume": "2.5 ft3"}, {}),
        ("fire-out", {}, {}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("wood-use", **holds)
    if spared or code == "many-splits":
        assert code not in codes("wood-use", **spared)


def test_the_winter_s_heat_is_worked_out_in_the_reader_s_units() -> None:
    lines = sheet_of("wood-use", **example_of("wood-use")).working
    assert "78.1\N{NO-BREAK SPACE}MMBtu" in next(line.result for line in lines if line.key == "heat_from_wood")
    assert not [
        line.label
        for line in lines
        for text in (*line.sums, line.result)
        if text.endswith((" J", "\N{NO-BREAK SPACE}J")) or "\N{NO-BREAK SPACE}W " in text
    ]
