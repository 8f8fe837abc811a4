"""Worked by hand: the power-cut worksheet, the definitions that pin it, and what it says when."""

import pytest

from calc.units import BTU, HOUR, POUND
from tests.worksheets.asking import codes, kelvin, sheet_of, values


def test_mill_row_by_hand() -> None:
    # Outlet 205 °F at the peak, boiling at 242.2 °F there. 20 gal of 180 °F water weigh 162.0 lb at 1.0024 Btu/(lb·°F):
    # 162.0 × 1.0024 × 37.24 = 6,047 Btu. At 120,000 Btu/h: 181.4 s = 3.02 min.
    # A full load holds 60,000 × 4 = 240,000 Btu, at the peak for 2 h. The dump takes 135,000: never.
    value = sheet_of("power-cut").values
    assert value["heat_to_boiling"] == pytest.approx(6_047 * BTU, rel=0.005)
    assert value["minutes_to_boiling"] == pytest.approx(181.4, rel=0.005)
    assert value["time_until_spent"] == pytest.approx(2 * HOUR)
    assert value["minutes_with_dump"] is None
    assert value["dump_needed"] == pytest.approx(120_000 * BTU / HOUR)
    # 45 W × 4 h ÷ 0.8 = 225 Wh.
    assert value["battery_energy"] == pytest.approx(225 * 3600)


def test_steam_until_the_fire_is_spent_by_hand() -> None:
    # No dump: 240,000 - 6,050 = 233,950 Btu boil water away, at 974 Btu/lb in the open at 3,000 ft: 240.2 lb.
    assert values("power-cut", dump_output="0 Btu/h")["water_boiled_off"] == pytest.approx(240.2 * POUND, rel=0.005)


def test_it_starts_from_the_hottest_normal_outlet_and_boils_by_the_pressure_there() -> None:
    worked = values("power-cut")
    assert worked["outlet_at_peak"] == pytest.approx(kelvin(205))
    assert worked["boiling_outlet"] == pytest.approx(kelvin(242.2), abs=0.1)


def test_already_boiling_is_no_minutes_and_a_stop() -> None:
    sheet = sheet_of("power-cut", system_pressure="0 psi", store_top="190 °F", charge_rise="25 F°")
    assert sheet.values["minutes_to_boiling"] == 0
    assert "stop" in {advice.level for advice in sheet.advice if advice.code == "boils-already"}


def test_loop_water_counts_only_if_it_was_seen_to_flow() -> None:
    alone, with_loop = values("power-cut"), values("power-cut", loop_flows="yes", loop_volume="20 gal")
    assert with_loop["minutes_to_boiling"] == pytest.approx(2 * alone["minutes_to_boiling"])


def test_a_fire_that_is_nearly_spent_never_boils_it() -> None:
    # 0.5 lb × 6,900 × 45 % = 1,550 Btu are less than the 6,050 it takes.
    sheet = sheet_of(
        "power-cut", fire_left="weighed", wood_left="0.5 lb", jacket_volume="20 gal", system_pressure="12 psi"
    )
    assert sheet.values["minutes_to_boiling"] is None
    assert "no-way-out" not in {advice.code for advice in sheet.advice}


def test_the_dump_takes_the_whole_load_unless_the_damper_fails_shut() -> None:
    assert values("power-cut", damper="shut")["dump_needed"] == pytest.approx(0.35 * 120_000 * BTU / HOUR)
    assert "no-way-out" in codes("power-cut", dump_output="50,000 Btu/h")
    assert "no-way-out" not in codes("power-cut", dump_output="50,000 Btu/h", damper="shut")


def test_a_known_peak_is_taken_as_it_is() -> None:
    assert values("power-cut", peak_known="yes", peak_output="70,000 Btu/h")["dump_needed"] == pytest.approx(
        70_000 * BTU / HOUR
    )


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("boils-already", {"system_pressure": "0 psi", "store_top": "190 °F"}, {}),
        ("no-way-out", {"dump_output": "0 Btu/h"}, {}),
        ("well-pump", {"safety_coil": "well"}, {"safety_coil": "main"}),
        ("margin", {"system_pressure": "3 psi"}, {}),
        ("too-quick", {}, {"jacket_volume": "100 gal"}),
        ("fan", {}, {"dump_output": "0 Btu/h"}),
        ("do", {}, {}),
        ("battery", {}, {}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("power-cut", **holds)
    if code not in ("do", "battery"):
        assert code not in codes("power-cut", **spared)
