"""Worked by hand: the chimney-draught worksheet, and what it says when."""

import pytest

from calc.units import BTU, FOOT, HOUR, POUND
from tests.worksheets.asking import codes, example_of, kelvin, sheet_of, values

INCH_OF_WATER = 249.08891
CFM = FOOT**3 / 60


def test_fern_lane_fire_by_hand() -> None:
    # 50,000 ÷ 0.68 = 73,529 Btu/h ÷ 6,880 = 10.69 lb/h of wood, 8.55 lb/h dry. Air 5.913 × 2 × 8.55 = 101.1 lb/h, gas
    # 111.8 lb/h of 0.2603 Btu/lb°F = 29.10 Btu/h°F. Fed without steam's heat 10.688 × 6,219 = 66,466; 16,466 are left:
    # 68 + 16,466 ÷ 29.10 = 633.8 °F.
    worked = values("chimney-draught")
    assert worked["burn_rate"] == pytest.approx(10.69 * POUND / HOUR, rel=1e-3)
    assert worked["fire_air"] == pytest.approx(101.1 * POUND / HOUR, rel=1e-3)
    assert worked["gas_leaving"] == pytest.approx(kelvin(633.8), abs=0.6)
    assert worked["heat_fed"] == pytest.approx(66_466 * BTU / HOUR, rel=1e-3)


def test_fern_lane_flue_by_hand() -> None:
    # U 1/(1/8 + 0.4 + 1/8) = 1.538 W/m²K = 0.2709 Btu/h ft²°F; × 31.42 ft² ÷ 29.10 = 0.2925; e^-0.2925 = 0.7464.
    # Top 68 + 565.8 × 0.7464 = 490.3 °F, mean 68 + 565.8 × 0.2536 ÷ 0.2925 = 558.5 °F.
    # Draft 0.2554 × 26.82 inHg × 20 ft × (1/487.67 - 1/1018.2) = 0.1464 in.
    # Gas weighs 0.5592 kg/m³, 14.09 g/s through 182.4 cm²: 1.381 m/s; (0.04 × 40 + 2.75) × 0.5592 × 1.381² ÷ 2 = 2.32 Pa.
    worked = values("chimney-draught")
    assert worked["gas_top"] == pytest.approx(kelvin(490.3), abs=0.3)
    assert worked["gas_mean"] == pytest.approx(kelvin(558.5), abs=0.3)
    assert worked["stack_draught"] == pytest.approx(0.1464 * INCH_OF_WATER, rel=5e-3)
    assert worked["flue_loss"] == pytest.approx(2.32, rel=5e-3)


def test_fern_lane_house_by_hand() -> None:
    # Leaks at 50 Pa: 7 × 9,200 ÷ 60 = 1,073 cfm. Fire 101.1 lb/h ÷ 0.0729 lb/ft³ ÷ 60 = 23.1 cfm, hood 170:
    # 50 × (193.1/1073)^(1/0.65) = 3.57 Pa. Left: 0.1464 - 0.0093 - 0.0143 = 0.1228 in.
    # Leaks carry 1073 × (4/50)^0.65 = 207.8 cfm at 4 Pa, so nothing more must be let in; with a hood of 200 cfm,
    # 223.1 are drawn out and 15.3 cfm are to be let in.
    worked = values("chimney-draught")
    assert worked["fire_flow"] == pytest.approx(23.1 * CFM, rel=3e-3)
    assert worked["depressurization"] == pytest.approx(3.57, rel=3e-3)
    assert worked["draught_left"] == pytest.approx(0.1228 * INCH_OF_WATER, rel=6e-3)
    assert worked["make_up_air"] == 0
    assert values("chimney-draught", fans="200 cfm")["make_up_air"] == pytest.approx(15.3 * CFM, abs=0.3 * CFM)


def test_fern_lane_at_the_fire_s_peak_by_hand() -> None:
    # Twice the fire: 202.2 lb/h of air, 223.6 lb/h of gas carrying 58.2 Btu/h°F at the same 633.8 °F. It cools half as
    # much: 0.1463; mean 68 + 565.8 × (1 - e^-0.1463) ÷ 0.1463 = 594.4 °F. Draft 137.0 × (1/487.67 - 1/1054.1) = 0.1510 in.
    # Gas weighs 0.5402 kg/m³, 28.18 g/s: 2.860 m/s, 4.35 × 0.5402 × 2.860² ÷ 2 = 9.61 Pa = 0.0386 in. Drawn out
    # 46.2 + 170 = 216.2 cfm: 50 × (216.2/1073)^(1/0.65) = 4.25 Pa = 0.0171 in. Left 0.1510 - 0.0386 - 0.0171 = 0.0953 in.
    worked = values("chimney-draught")
    assert worked["gas_mean_peak"] == pytest.approx(kelvin(594.4), abs=0.5)
    assert worked["stack_draught_peak"] == pytest.approx(0.1510 * INCH_OF_WATER, rel=5e-3)
    assert worked["flue_loss_peak"] == pytest.approx(9.61, rel=5e-3)
    assert worked["depressurization_peak"] == pytest.approx(4.25, rel=3e-3)
    assert worked["draught_left_peak"] == pytest.approx(0.0953 * INCH_OF_WATER, rel=6e-3)
    # With a peak no higher than the average, it is the average.
    level = values("chimney-draught", peak_factor="1")
    assert level["draught_left_peak"] == pytest.approx(level["draught_left"])


def test_dew_point_between_the_printed_ones() -> None:
    # Printed for 20 %, twice the air: 45.4 °C in dry air at sea level, 46.9 °C at 40 % humidity, 41.9 °C dry at 5,000 ft.
    assert values("chimney-draught", altitude="0 ft", room_humidity="0 %")["dew_point"] == pytest.approx(
        318.58, abs=0.05
    )
    assert values("chimney-draught", altitude="0 ft")["dew_point"] == pytest.approx(320.06, abs=0.1)
    assert values("chimney-draught", altitude="5,000 ft", room_humidity="0 %")["dew_point"] == pytest.approx(
        315.04, abs=0.05
    )


def test_both_bases_of_efficiency_burn_nearly_the_same_wood() -> None:
    higher = values("chimney-draught")["burn_rate"]
    lower = values("chimney-draught", efficiency_basis="lower", efficiency="75.2 %")["burn_rate"]
    assert lower == pytest.approx(higher, rel=2e-3)


def test_a_flue_up_an_outside_wall_is_cooler() -> None:
    inside, outside = values("chimney-draught"), values("chimney-draught", flue_place="outside")
    assert outside["gas_top"] < inside["gas_top"]
    assert outside["stack_draught"] < inside["stack_draught"]


def test_a_strong_hood_in_a_tight_house_is_a_stop() -> None:
    sheet = sheet_of("chimney-draught", **(example_of("chimney-draught") | {"fans": "600 cfm", "tightness": "3 /h"}))
    assert [advice.code for advice in sheet.advice if advice.level == "stop"] == ["backdraught"]
    assert (sheet.values["draught_left"] or 0) < 0  # type: ignore[operator]


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("backdraught", {"fans": "1,500 cfm"}, {}),
        (
            "backdraught-at-peak",
            {"peak_factor": "3", "flue_diameter": "5 in"},
            {"peak_factor": "1", "flue_diameter": "5 in"},
        ),
        ("weak-at-peak", {"peak_factor": "3"}, {}),
        ("weak", {"flue_height": "8 ft"}, {}),
        ("drawn-down", {"fans": "250 cfm"}, {}),
        ("condensing", {"efficiency": "85 %", "moisture": "30 %"}, {}),
        ("tarry", {"efficiency": "84 %"}, {}),
        ("hot", {"efficiency": "55 %"}, {}),
        ("single-wall", {"flue_wall": "single"}, {}),
        ("alarm", {"fans": "0 cfm"}, {}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("chimney-draught", **holds)
    if code != "alarm":
        assert code not in codes("chimney-draught", **spared)
