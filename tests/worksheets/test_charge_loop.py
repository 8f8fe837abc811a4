"""Worked by hand: the charge-loop worksheet, and what it says when."""

import pytest

from calc.units import BTU, FAHRENHEIT_DEGREE, FOOT, GALLON, HOUR
from tests.worksheets.asking import codes, kelvin, values


def test_mill_row_by_hand() -> None:
    # Peak 60,000 × 2 = 120,000 Btu/h. Outlet 180 + 25 = 205 °F; mean with the inlet 192.5 °F, true factor 485.8
    # (60.31 lb/ft³ ÷ 7.4805 × 60 × 1.0043). Flow 120,000 ÷ (485.8 × 25) = 9.881 gal/min; bore 1.291 in: 2.42 ft/s.
    # Air at 3,000 ft 13.17 psia, store 25.17 psia. Outlet 2 ft lower: + 2 × 60.6 ÷ 144 = 0.84 psi, 26.01 psia, where steam
    # tables give 242.2 °F: margin 37.2 °F. Pump 4 ft lower: 25.17 + 1.68 - 0.2 = 26.65 psia.
    # Vapor pressure at 180 °F 7.52 psia: (26.65 - 7.52) × 144 ÷ 60.6 = 45.5 ft of suction head.
    worked = values("charge-loop")
    assert worked["peak_output"] == pytest.approx(120_000 * BTU / HOUR)
    assert worked["outlet_at_peak"] == pytest.approx(kelvin(205))
    assert worked["flow"] == pytest.approx(9.881 * GALLON / 60, rel=0.001)
    assert worked["velocity"] == pytest.approx(2.42 * FOOT, rel=0.003)
    assert worked["boiling_outlet"] == pytest.approx(kelvin(242.2), abs=0.1)
    assert worked["outlet_margin"] == pytest.approx(37.2 * FAHRENHEIT_DEGREE, abs=0.1)
    assert worked["suction_head"] == pytest.approx(45.5 * FOOT, rel=0.003)


def test_a_peak_that_is_known_is_taken_as_it_is() -> None:
    known = values("charge-loop", peak_known="yes", peak_output="90,000 Btu/h")
    assert known["peak_output"] == pytest.approx(90_000 * BTU / HOUR)
    assert values("charge-loop", peak_factor="3")["peak_output"] == pytest.approx(180_000 * BTU / HOUR)


def test_only_metal_is_offered() -> None:
    from calc.answer import Typed, answer

    sheet = answer("charge-loop", {"pipe_kind": Typed("pex")})
    assert [problem.key for problem in sheet.problems] == ["pipe_kind"]


OPEN = {"system_pressure": "0 psi", "outlet_height": "0 ft"}


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("outlet-boils", {**OPEN, "store_top": "190 °F"}, {**OPEN, "store_top": "170 °F"}),
        ("highest-boils", {**OPEN, "highest_point": "14 ft", "outlet_height": "-10 ft", "store_top": "170 °F"}, {}),
        ("pump-boils", {**OPEN, "pump_height": "14 ft", "store_top": "185 °F"}, {}),
        ("outlet-margin", {**OPEN, "store_top": "170 °F"}, {}),
        ("highest-margin", {"highest_point": "20 ft"}, {}),
        ("pump-margin", {**OPEN, "store_top": "190 °F", "pump_height": "0 ft"}, {}),
        ("suction", {**OPEN, "store_top": "190 °F", "pump_height": "4 ft"}, {}),
        ("fast", {"pipe_size": "1"}, {}),
        ("noise", {"pipe_size": "3/4"}, {}),
        ("metal", {}, None),
        ("return", {"water_output": "60,000 Btu/h"}, {"charge_rise": "15 F°"}),
        (
            "undecided",
            {"water_output": "2,000 Btu/h", "peak_factor": "1", "pipe_size": "1/2", "charge_rise": "20 F°"},
            {},
        ),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str] | None) -> None:
    assert code in codes("charge-loop", **holds)
    if spared is not None:
        assert code not in codes("charge-loop", **spared)
