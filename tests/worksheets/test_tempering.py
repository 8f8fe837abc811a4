"""Worked by hand: the example of the tempering worksheet; and what it says when something is wrong."""

from collections.abc import Mapping

import pytest

from calc.answer import Typed, answer
from calc.engine.sheet import Sheet
from calc.units import GALLON


def sheet_of(typed: Mapping[str, str]) -> Sheet:
    return answer("tempering", {field: Typed(text) for field, text in typed.items()})


def kelvin(fahrenheit: float) -> float:
    return (fahrenheit + 459.67) / 1.8


FLOOR = {
    "mix_purpose": "floor",
    "store_top": "180 °F",
    "mixed_wanted": "105 °F",
    "floor_return": "95 °F",
    "mixed_flow": "3 gpm",
    "indoor": "68 °F",
}
TAP = {
    "mix_purpose": "tap",
    "store_top": "180 °F",
    "mixed_wanted": "120 °F",
    "cold_water": "50 °F",
    "mixed_flow": "2.5 gpm",
}


def codes(typed: dict[str, str], level: str = "") -> set[str]:
    return {advice.code for advice in sheet_of(typed).advice if level in ("", advice.level)}


def test_a_floor_by_hand() -> None:
    # The example's floor, from a hotter store: (104 - 94) ÷ (180 - 94) = 10 ÷ 86 = 0.11628 by mass.
    # 3.4 gpm at 104 °F weigh 3.4 × 8.2823 = 28.160 lb/min (steam tables); 0.11628 of it, 3.2744 lb/min, is hot.
    # Hot water weighs 8.0992 lb/gal: 0.4043 gpm. The rest, 24.885 lb/min at 94 °F (8.2995 lb/gal): 2.998 gpm.
    # By volume: 0.4043 ÷ (0.4043 + 2.998) = 0.1188.
    # Fails open: 180 °F; (180 - 68) ÷ (104 - 68) = 3.11 times the heat. Second thermostat: 104 + 15 = 119 °F.
    values = sheet_of(FLOOR | {"mixed_wanted": "104 °F", "floor_return": "94 °F", "mixed_flow": "3.4 gpm"}).values
    assert values["hot_share"] == pytest.approx(0.11628, rel=1e-4)
    assert values["hot_flow"] == pytest.approx(0.4043 * GALLON / 60, rel=5e-4)
    assert values["cool_flow"] == pytest.approx(2.998 * GALLON / 60, rel=5e-4)
    assert values["hot_share_volume"] == pytest.approx(0.1188, rel=5e-4)
    assert values["failed_open"] == pytest.approx(kelvin(180))
    assert values["overheat_factor"] == pytest.approx(3.111, rel=5e-4)
    assert values["floor_limit"] == pytest.approx(kelvin(119))


def test_taps_by_hand() -> None:
    # (120 - 50) ÷ (180 - 50) = 0.5385 by mass; by volume the hot share is larger, 0.5456.
    values = sheet_of(TAP).values
    assert values["hot_share"] == pytest.approx(0.5385, rel=1e-4)
    assert values["hot_share_volume"] == pytest.approx(0.5456, rel=2e-3)


def test_the_share_is_whole_once_the_store_is_down_to_the_mix() -> None:
    values = sheet_of(FLOOR | {"store_top": "105 °F"}).values
    assert values["hot_share"] == pytest.approx(1)
    assert values["cool_flow"] == pytest.approx(0, abs=1e-12)


def test_a_store_cooler_than_the_mix_is_unworkable_and_passes_through() -> None:
    sheet = sheet_of(FLOOR | {"store_top": "100 °F"})
    assert "too-cool" in {advice.code for advice in sheet.advice if advice.level == "unworkable"}
    assert sheet.values["delivered"] == pytest.approx(kelvin(100))
    assert "too-cool" not in codes(FLOOR)


@pytest.mark.parametrize(("wanted", "level", "code"), [("125 °F", "caution", "warm-tap"), ("130 °F", "stop", "scald")])
def test_a_tap_that_scalds(wanted: str, level: str, code: str) -> None:
    assert code in codes(TAP | {"mixed_wanted": wanted}, level)
    assert code not in codes(TAP, level)
    assert code not in codes(FLOOR | {"mixed_wanted": wanted}, level)


def test_what_a_failed_valve_does() -> None:
    assert "tap-fails" in codes(TAP, "caution")
    assert "tap-fails" not in codes(TAP | {"store_top": "118 °F", "mixed_wanted": "110 °F"})
    assert "floor-fails" in codes(FLOOR, "caution")
    assert "floor-fails" not in codes(FLOOR | {"store_top": "119 °F"})


def test_the_second_thermostat_never_passes_what_a_slab_stands() -> None:
    assert sheet_of(FLOOR | {"mixed_wanted": "125 °F"}).values["floor_limit"] == pytest.approx(kelvin(131))
    assert "hot-slab" in codes(FLOOR | {"mixed_wanted": "140 °F"}, "caution")
    assert "hot-slab" not in codes(FLOOR)


def test_plastic_pipe_behind_a_very_hot_store() -> None:
    assert "plastic" in codes(FLOOR | {"store_top": "190 °F"}, "caution")
    assert "plastic" not in codes(FLOOR)


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        (FLOOR | {"mixed_wanted": "90 °F"}, "mixed_wanted"),
        (FLOOR | {"store_top": "94 °F"}, "store_top"),
        (TAP | {"cold_water": "80 °F", "mixed_wanted": "75 °F"}, "mixed_wanted"),
    ],
)
def test_water_that_no_valve_can_mix_is_an_error(typed: dict[str, str], field: str) -> None:
    assert field in [problem.key for problem in sheet_of(typed).problems]


def test_the_total_flow_from_a_load() -> None:
    # 1 gpm of water at 104 °F carries 495.7 Btu/h for each degree (IAPWS-IF97); 16,800 ÷ (10 × 495.7) = 3.389 gpm.
    floor = {
        "mix_purpose": "floor",
        "store_top": "180 °F",
        "mixed_wanted": "104 °F",
        "floor_return": "94 °F",
        "indoor": "68 °F",
    }
    by_load = sheet_of(floor | {"load": "16,800 Btu/h"})
    assert by_load.values["mixed_flow"] == pytest.approx(3.389 * GALLON / 60, rel=2e-3)
    assert "mixed_flow" in {result.key for result in by_load.results}
    by_flow = sheet_of(floor | {"mixed_flow": "3.389 gpm"})
    for key in ("hot_share", "hot_flow", "cool_flow"):
        assert by_load.values[key] == pytest.approx(by_flow.values[key], rel=2e-3)
