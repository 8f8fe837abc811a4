"""Worked by hand: the heat-dump worksheet, where its two questions meet, and what it says when."""

import pytest

from calc.units import BTU, FAHRENHEIT_DEGREE, FOOT, GALLON, HOUR, PSI
from tests.worksheets.asking import codes, kelvin, sheet_of, values

MINUTE = 60
WIDE = {"pipe_size": "2", "loop_height": "9 ft", "altitude": "3,000 ft", "system_pressure": "12 psi"}


def test_mill_row_by_hand() -> None:
    # 3,000 ft: 13.17 psi of air; + 12 psi at the store's top; the dump 3 ft higher, 60.6 lb/ft³ × 3 ÷ 144 = 1.26 psi
    # less: 23.91 psi, where steam tables have 237.6 °F. Less 20 °F: 217.6 °F go up.
    # Try 178 °F coming back: (971.3 − 956.3) kg/m³ × 9.807 × 2.743 m = 404 Pa drive it.
    # 35,170 W ÷ (964.1 × 4,208 J/m³K × 22.0 K) = 3.94e-4 m³/s = 6.24 gal/min; ÷ 2.165e-3 m² = 0.182 m/s.
    # Reynolds 964.1 × 0.182 × 0.0525 ÷ 3.07e-4 = 30,000; roughness 0.00086: f = 0.0258 (Moody chart).
    # 120 ft are 697 bores; fittings 6 × 0.9 + 2 = 7.4: (0.0258 × 697 + 7.4) × 964.1 × 0.182² ÷ 2 = 405 Pa: it balances.
    # Mean 198 °F, 118 °F over the room: 1,100 × (118 ÷ 115)^1.4 = 1,140 Btu/h a foot; 120,000 ÷ 1,140 = 105 ft.
    worked = values("heat-dump")
    assert worked["boiling_dump"] == pytest.approx(kelvin(237.6), abs=0.1 * FAHRENHEIT_DEGREE)
    assert worked["dump_heat"] == pytest.approx(120_000 * BTU / HOUR)
    assert worked["dump_supply"] == pytest.approx(kelvin(217.6), abs=0.1 * FAHRENHEIT_DEGREE)
    assert worked["dump_return"] == pytest.approx(kelvin(178), abs=0.5 * FAHRENHEIT_DEGREE)
    assert worked["driving_pressure"] == pytest.approx(404, rel=0.01)
    assert worked["dump_flow"] == pytest.approx(6.24 * GALLON / MINUTE, rel=0.01)
    assert worked["dump_size"] == pytest.approx(105 * FOOT, rel=0.01)


def test_friction_uses_up_what_drives_it() -> None:
    for pipe in ("1-1/4", "1-1/2", "2"):
        worked = values("heat-dump", pipe_size=pipe)
        assert worked["pressure_drop"] == pytest.approx(worked["driving_pressure"], rel=1e-6)


def test_minutes_alone_by_hand() -> None:
    # 820 gal from 180 °F to 240.4 °F: × 8.034 lb/gal (mean) × 1.008 Btu/lb°F × 60.4 °F = 401,000 Btu.
    # ÷ 120,000 Btu/h = 3.34 h = 200 min.
    assert values("heat-dump")["minutes_alone"] == pytest.approx(200 * MINUTE, rel=0.01)
    assert values("heat-dump", store_top="215 °F", system_pressure="0 psi")["minutes_alone"] == 0


def test_both_questions_meet() -> None:
    size = values("heat-dump")
    back = values("heat-dump", dump_question="supply", dump_size=f"{size['dump_size'] / FOOT:.9f} ft")
    for key in ("dump_supply", "dump_return"):
        assert back[key] == pytest.approx(size[key], abs=1e-4)
    assert back["dump_output"] == pytest.approx(size["dump_output"], rel=1e-6)
    # Sized for cooler water, the dump takes more than it was sized for before it comes near boiling.
    cool = values("heat-dump", supply_known="yes", dump_supply="200 °F")
    assert cool["dump_size"] > size["dump_size"]
    assert cool["dump_output"] > cool["dump_heat"]


def test_a_radiator_is_sized_by_its_rated_output() -> None:
    # Mean water 198 °F, 118 °F over the air; rated at 90 °F with 1.3: 120,000 ÷ (118 ÷ 90)^1.3 = 84,400 Btu/h.
    worked = values("heat-dump", dump_kind="radiator", dump_rated_excess="90 F°", dump_exponent="1.3")
    assert worked["dump_size"] == pytest.approx(84_400 * BTU / HOUR, rel=0.005)


def test_a_typed_size_or_heat_decides_the_question() -> None:
    sheet = sheet_of("heat-dump", dump_kind="radiator", dump_size="90,000 Btu/h", dump_heat="60,000 Btu/h", **WIDE)
    assert sheet.values["dump_question"] == "supply"
    assert sheet.values["dump_heat"] == pytest.approx(60_000 * BTU / HOUR)
    assert sheet_of("heat-dump", dump_size="100 ft").values["dump_question"] == "supply"


def test_water_above_the_store_boils_sooner() -> None:
    high, level = values("heat-dump", dump_above="20 ft"), values("heat-dump", dump_above="0 ft")
    assert level["boiling_dump"] == level["boiling"]
    assert level["dump_pressure"] - high["dump_pressure"] == pytest.approx(8.42 * PSI, rel=0.01)  # 60.6 × 20 ÷ 144
    assert high["dump_supply"] < level["dump_supply"]


def test_a_dump_beyond_its_loop_brings_water_back_at_the_rooms_temperature() -> None:
    worked = values("heat-dump", dump_question="supply", dump_size="3,000 ft")
    assert worked["dump_return"] == pytest.approx(kelvin(80), abs=0.01)
    assert worked["dump_supply"] > worked["dump_mean"]


RADIATOR = {"dump_question": "supply", "dump_kind": "radiator", "dump_rated_excess": "90 F°", "dump_exponent": "1.3"}


@pytest.mark.parametrize(
    ("code", "holds"),
    [
        ("boiling", {"store_top": "215 °F", "system_pressure": "0 psi"}),
        ("boils", RADIATOR | {"dump_size": "60,000 Btu/h"}),
        ("boils", {"supply_known": "yes", "dump_supply": "240 °F"}),
        ("far-over", RADIATOR | {"dump_size": "10,000 Btu/h"}),
        ("loop-too-weak", {"pipe_size": "3/4"}),
        ("loop-too-cool", {"pipe_size": "1", "supply_known": "yes", "dump_supply": "190 °F"}),
        ("margin", RADIATOR | {"dump_size": "75,000 Btu/h"}),
        ("boiling-margin", {"store_top": "225 °F"}),
        ("loop-bound", {"dump_question": "supply", "dump_size": "3,000 ft"}),
        ("large-drop", {"pipe_size": "1-1/2"}),
        ("damper", {"damper": "shut"}),
        ("open-box", {"dump_kind": "open-box"}),
        ("slab", {"dump_kind": "slab"}),
        ("undecided", {"pipe_size": "1/2", "heat_known": "yes", "dump_heat": "1,000 Btu/h", "loop_height": "4 ft"}),
        ("sluggish", {"dump_heat": "5,000 Btu/h", "heat_known": "yes"}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str]) -> None:
    assert code in codes("heat-dump", **holds)
    assert code not in codes("heat-dump")


def test_no_valve_is_said_whatever_is_asked() -> None:
    for change in ({}, RADIATOR | {"dump_size": "90,000 Btu/h"}, {"pipe_size": "3/4"}):
        assert "no-valve" in codes("heat-dump", **change)


def test_no_size_is_given_where_the_loop_cannot() -> None:
    known = {"water_output": "60,000 Btu/h", "pipe_length": "120 ft"}
    sheet = sheet_of("heat-dump", **WIDE | known | {"pipe_size": "3/4"})
    assert sheet.values["dump_size"] is None
    assert {advice.level for advice in sheet.advice if advice.code == "loop-too-weak"} == {"unworkable"}


def test_the_margin_asked_for_is_no_caution() -> None:
    assert "margin" not in codes("heat-dump", altitude="5,280 ft", system_pressure="7 psi", dump_above="1 ft")
