"""Worked by hand: the fuel-cost worksheet, and what it says when."""

import pytest

from calc.units import BTU, FOOT
from tests.worksheets.asking import codes, example_of, sheet_of, values

CORD = 128 * FOOT**3
MILLION = 1e6 * BTU


def test_mill_row_by_hand() -> None:
    # Wood: 300 ÷ (24 × 0.68) = $18.38 a million Btu. Hours: 60 × 12 ÷ 78.1 = $9.22. Together $27.60.
    # Oil: 4.00 ÷ (0.1385 × 0.82) = $35.22. Wood may cost (35.22 - 9.22) × 24 × 0.68 = $424.3 a cord.
    # A winter: 78.1 × 27.60 = $2,156 against 78.1 × 35.22 = $2,751: $595 saved, 14,000 ÷ 595 = 23.53 winters.
    worked = values("fuel-cost")
    assert worked["heat_price_wood"] * MILLION == pytest.approx(18.38, rel=1e-3)
    assert worked["wood_heat_price"] * MILLION == pytest.approx(27.60, rel=1e-3)
    assert worked["price_beside"] * MILLION == pytest.approx(35.22, rel=1e-3)
    assert worked["break_even_price"] * CORD == pytest.approx(424.3, rel=1e-3)
    assert worked["cost_of_wood"] == pytest.approx(2_156, rel=1e-3)
    assert worked["cost_now"] == pytest.approx(2_751, rel=1e-3)
    assert worked["saving_each_year"] == pytest.approx(595, rel=2e-3)
    assert worked["years_to_repay"] == pytest.approx(23.53, rel=2e-3)


@pytest.mark.parametrize(
    ("fuel", "price"),
    [
        # 2.70 ÷ (0.091452 × 0.85); 14.00 ÷ 0.82; 0.17 × 293.07; the same ÷ 2.4; 320 ÷ (16.4 × 0.80)
        ("propane", 34.73),
        ("gas", 17.07),
        ("electricity", 49.82),
        ("heat-pump", 20.76),
        ("pellets", 24.39),
    ],
)
def test_other_fuels_by_hand(fuel: str, price: float) -> None:
    assert values("fuel-cost", fuel_now=fuel)["price_beside"] * MILLION == pytest.approx(price, rel=1e-3)


def test_at_the_break_even_price_nothing_is_saved() -> None:
    price = values("fuel-cost")["break_even_price"] * CORD
    worked = values("fuel-cost", fuel_price_wood=f"{price:.9f} $/cord")
    assert worked["saving_each_year"] == pytest.approx(0, abs=1e-3)
    assert worked["wood_heat_price"] == pytest.approx(worked["price_beside"])


def test_efficiency_is_taken_off_once() -> None:
    # The laboratory's net 15.3 million Btu a cord is 20 million at 76.5 %: 300 ÷ 15.3 = $19.61.
    worked = values("fuel-cost", wood_heat_content="20 MMBtu/cord", efficiency_wood="76.5 %", own_hours="0 h")
    assert worked["wood_heat_price"] * MILLION == pytest.approx(19.61, rel=1e-3)


def test_what_is_never_repaid_is_said_to_be() -> None:
    sheet = sheet_of("fuel-cost", **(example_of("fuel-cost") | {"fuel_price_wood": "900 $/cord"}))
    assert sheet.values["years_to_repay"] is None
    assert next(result for result in sheet.results if result.key == "years_to_repay").shown == "never"


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("dearer", {"fuel_price_wood": "600 $/cord"}, {}),
        ("saves-nothing", {"fuel_price_wood": "600 $/cord", "installed_cost": "0 $"}, {"installed_cost": "0 $"}),
        ("hours-decide", {"own_pay": "60 $/h"}, {}),
        ("net-values", {"efficiency_wood": "90 %"}, {}),
        ("free-wood", {"own_hours": "0 h"}, {}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("fuel-cost", **holds)
    assert code not in codes("fuel-cost", **spared)


def test_prices_that_nobody_gave_are_called_guesses() -> None:
    assert "guess" in {advice.code for advice in sheet_of("fuel-cost", yearly_heat="70 MMBtu").advice}


@pytest.mark.parametrize(
    ("key", "content", "price"),
    [
        # $4.00 ÷ (137,381 Btu × 82 %), $2.70 ÷ (91,333 × 85 %), $320 ÷ (16.5 million × 80 %).
        ("oil", "137.381 kBtu/gal", 35.507),
        ("propane", "91.333 kBtu/gal", 34.779),
        ("pellets", "16.5 MMBtu/ton", 24.242),
    ],
)
def test_every_heat_content_can_be_typed(key: str, content: str, price: float) -> None:
    field = f"{key.removesuffix('s') if key == 'pellets' else key}_content"
    worked = values("fuel-cost", **{field: content})[f"heat_price_{key}"]
    assert worked * 1e6 * BTU == pytest.approx(price, rel=1e-4)
