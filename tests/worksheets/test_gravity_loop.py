"""Worked by hand: the gravity-loop worksheet, and what it says when."""

import pytest

from calc.answer import Typed, answer
from calc.units import BTU, FAHRENHEIT_DEGREE, GALLON, HOUR
from tests.worksheets.asking import codes, example_of, kelvin, sheet_of, values


def test_hollow_cabin_by_hand() -> None:
    # Water of 140 °F weighs 983.4 kg/m³, of 180 °F 970.6: 12.83 × 9.807 × 2.134 m = 268.6 Pa drive it.
    # At 160 °F: 977.3 kg/m³, 0.398 mPa·s. Bore 40.9 mm; 40 ft are 298 bores; fittings 6 × 0.9 + 2 × 1.6 + 2 = 10.6.
    # Try 0.169 m/s: Reynolds 977.3 × 0.169 × 0.0409 ÷ 0.000398 = 16,970; roughness 0.0011: f = 0.0291 (Moody chart).
    # (0.0291 × 298 + 10.6) × 977.3 × 0.169² ÷ 2 = 19.27 × 13.96 = 269 Pa: it balances.
    # Flow 0.169 × 0.001313 m² = 2.219e-4 m³/s = 3.52 gal/min; × 489.6 × 40 °F = 68,900 Btu/h.
    worked = values("gravity-loop")
    assert worked["driving_pressure"] == pytest.approx(268.6, rel=0.01)
    assert worked["fittings_loss"] == pytest.approx(10.6)
    assert worked["flow"] == pytest.approx(3.52 * GALLON / 60, rel=0.01)
    assert worked["heat_moved"] == pytest.approx(68_900 * BTU / HOUR, rel=0.01)
    assert worked["outlet"] == pytest.approx(kelvin(180))


def test_a_loop_that_must_move_a_heat_settles_where_it_moves_that_heat() -> None:
    worked = values("gravity-loop", loop_question="outlet", loop_heat="68,900 Btu/h")
    assert worked["heat_moved"] == pytest.approx(68_900 * BTU / HOUR)
    # The first question said 180 °F for this heat; both ways must meet.
    assert worked["outlet"] == pytest.approx(kelvin(180), abs=0.3 * FAHRENHEIT_DEGREE)


def test_the_guess_of_the_temperature_range_hardly_matters() -> None:
    near = values("gravity-loop", loop_question="outlet", loop_heat="50,000 Btu/h", loop_supply="170 °F")["outlet"]
    far = values("gravity-loop", loop_question="outlet", loop_heat="50,000 Btu/h", loop_supply="205 °F")["outlet"]
    assert near == pytest.approx(far, abs=3 * FAHRENHEIT_DEGREE)


@pytest.mark.parametrize(
    ("height", "told"), [("0", True), ("-3 ft", True), ("-1 m", True), ("70 ft", False), ("0.3 ft", None)]
)
def test_a_store_that_stands_no_higher_than_the_fire_is_told_that_nothing_flows(height: str, told: bool | None) -> None:
    problems = answer("gravity-loop", {"loop_height": Typed(height)}).problems
    said = [" nothing flows by itself, and a pump stops with the power." in problem.text for problem in problems]
    assert said == ([] if told is None else [told])


HOT = {"loop_question": "outlet", "loop_heat": "150,000 Btu/h", "pipe_size": "1"}


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("boils", HOT, {}),
        ("too-hot", {"loop_question": "outlet", "loop_heat": "80,000 Btu/h", "loop_supply": "175 °F"}, {}),
        ("margin", {"loop_supply": "190 °F"}, {}),
        ("sluggish", {"pipe_size": "1/2", "loop_height": "2 ft"}, {}),
        ("undecided", {"pipe_size": "1/2", "loop_height": "4 ft"}, {}),
        ("clear-way", {}, {}),
        ("prove", {}, {}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("gravity-loop", **holds)
    if code not in ("clear-way", "prove"):
        assert code not in codes("gravity-loop", **spared)


def test_the_driving_pressure_is_shown() -> None:
    # 12.83 kg/m³ (above) × 9.807 × 3.048 m = 383.5 Pa; IAPWS-95 at 0.3 MPa has 382.7.
    sheet = sheet_of("gravity-loop", **(example_of("gravity-loop") | {"loop_height": "10 ft"}))
    worked = {result.key: result.si for result in sheet.results}
    assert worked["driving_pressure"] == pytest.approx(382.7, rel=0.01)
