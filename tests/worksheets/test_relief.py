"""Worked by hand: the relief worksheet, and what it says when."""

import pytest

from calc.units import BTU, HOUR, POUND, PSI
from tests.worksheets.asking import codes, kelvin, sheet_of, values


def test_mill_row_by_hand() -> None:
    # Peak 120,000 Btu/h. At 1.1 × 30 = 33 psi and 13.17 psia of air: 46.17 psia, 276.2 °F, where boiling takes
    # 927.5 Btu/lb (steam tables): 129.4 lb/h.
    worked = values("relief")
    assert worked["peak_output"] == pytest.approx(120_000 * BTU / HOUR)
    assert worked["steam_pressure"] == pytest.approx(46.17 * PSI, rel=0.0005)
    assert worked["steam_boiling"] == pytest.approx(kelvin(276.2), abs=0.2)
    assert worked["relief_steam"] == pytest.approx(129.4 * POUND / HOUR, rel=0.001)


def test_no_margin_is_hidden_and_a_known_peak_is_taken_as_it_is() -> None:
    assert values("relief", peak_known="yes", peak_output="90,000 Btu/h")["peak_output"] == pytest.approx(
        90_000 * BTU / HOUR
    )
    assert values("relief", peak_factor="1")["peak_output"] == pytest.approx(60_000 * BTU / HOUR)


@pytest.mark.parametrize("worksheet", ["relief", "charge-loop", "power-cut"])
def test_a_peak_that_somebody_typed_wins_over_average_times_factor(worksheet: str) -> None:
    typed = {"water_output": "50,000 Btu/h", "peak_factor": "2", "peak_output": "120,000 Btu/h"}
    assert sheet_of(worksheet, **typed).values["peak_output"] == pytest.approx(120_000 * BTU / HOUR)
    assert sheet_of(worksheet, peak_known="no", **typed).values["peak_output"] == pytest.approx(100_000 * BTU / HOUR)


def test_an_open_vent_by_hand() -> None:
    # 80,000 Btu/h = 23.4 kW: 8.08 × 23.4^(1/3) = 23.1 mm, so the least of 25 mm. 120,000 Btu/h = 35.2 kW: 26.5 mm.
    assert values("relief", plant_kind="open", peak_known="yes", peak_output="80,000 Btu/h")[
        "vent_bore"
    ] == pytest.approx(0.025)
    worked = values("relief", plant_kind="open")
    assert worked["vent_bore"] == pytest.approx(0.0265, rel=0.002)
    # 10 ft of water between 50 °F (62.41 lb/ft³) and boiling at 206.5 °F (59.97): 10 × 4.07 %.
    assert values("relief", plant_kind="open", vent_height="10 ft")["vent_rise"] == pytest.approx(
        0.407 * 0.3048, rel=0.01
    )


OPEN = {"plant_kind": "open"}


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("valve-too-small", {"valve_capacity": "110,000 Btu/h"}, {"valve_capacity": "0 Btu/h"}),
        ("setting-too-high", {"stove_rating": "20 psi"}, {"stove_rating": "45 psi"}),
        ("vent-too-narrow", {**OPEN, "vent_bore_fitted": "0.8 in"}, {**OPEN, "vent_bore_fitted": "1.25 in"}),
        ("tight", {"valve_capacity": "125,000 Btu/h"}, {}),
        ("never-shut", {}, OPEN),
        ("always-open", OPEN, {}),
        ("test", {}, OPEN),
        ("two-sides", {}, OPEN),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("relief", **holds)
    assert code not in codes("relief", **spared)
