"""Worked by hand: the boiling worksheet, the definitions that pin it, and what it says when."""

import pytest

from calc.units import FAHRENHEIT_DEGREE, FOOT, GALLON, POUND
from tests.worksheets import asking
from tests.worksheets.asking import example_of, kelvin

OPEN = example_of("boiling", 1)  # Fern Lane's: every test here that says nothing else is about an open store


def values(worksheet: str, **typed: str) -> dict[str, float]:
    return asking.values(worksheet, **(OPEN | typed))


def codes(worksheet: str, **typed: str) -> set[str]:
    return asking.codes(worksheet, **(OPEN | typed))


def test_mill_row_by_hand() -> None:
    # 13.17 psia of air and 12 psi: 25.17 psia, where IF97 boils at 240.4 °F. Outlet 180 + 25 = 205 °F, 2 ft below the
    # top: + 2 × 60 ÷ 144 = 0.83 psi, 26.0 psia, 242.2 °F: margin 37.2 °F.
    worked = asking.values("boiling")
    assert worked["boiling"] == pytest.approx(kelvin(240.4), abs=0.2)
    assert worked["outlet_at_peak"] == pytest.approx(kelvin(205))
    assert worked["outlet_margin"] == pytest.approx(37.2 * FAHRENHEIT_DEGREE, abs=0.4)


def test_fern_lane_by_hand() -> None:
    # Air at 3,000 ft 13.17 psia; steam tables boil there at 206.5 °F. Outlet 170 + 15 = 185 °F, 1 ft below the top:
    # + 60.8 ÷ 144 = 0.42 psi, 13.59 psia, 208.0 °F: margin 23.0 °F.
    # Vapor pressure at 170 °F 5.996 psia: (13.17 - 6.00) × 144 ÷ 60.8 = 17.0 ft over the water before 170 °F boils.
    worked = values("boiling")
    assert worked["boiling"] == pytest.approx(kelvin(206.5), abs=0.1)
    assert worked["outlet_at_peak"] == pytest.approx(kelvin(185))
    assert worked["outlet_margin"] == pytest.approx(23.0 * FAHRENHEIT_DEGREE, abs=0.1)
    # On average the rise is half of that at the peak: 170 + 7.5 = 177.5 °F, 30.5 °F are left.
    assert worked["outlet_margin_average"] == pytest.approx(30.5 * FAHRENHEIT_DEGREE, abs=0.1)
    assert worked["rise_allowed"] == pytest.approx(17.0 * FOOT, rel=0.005)
    assert worked["flash_fraction"] == 0  # an open store is gauge 0 exactly


def test_water_over_an_open_store_hangs_and_boils_sooner() -> None:
    # 180 °F boils 17 ft up at sea level and 11 ft up at 5,000 ft.
    assert values("boiling", store_top="180 °F", altitude="0 ft")["rise_allowed"] == pytest.approx(
        17 * FOOT, abs=0.3 * FOOT
    )
    assert values("boiling", store_top="180 °F", altitude="5,000 ft")["rise_allowed"] == pytest.approx(
        11 * FOOT, abs=0.4 * FOOT
    )


def test_printed_boiling_points_at_altitude_and_gauge() -> None:
    # Standard atmosphere and steam tables, as printed: 5,000 ft open 202.83 °F, 12 psi 238.3 °F; sea level 211.95 °F.
    assert values("boiling", altitude="5,000 ft")["boiling"] == pytest.approx(kelvin(202.83), abs=0.1)
    assert values("boiling", altitude="5,000 ft", system_pressure="12 psi")["boiling"] == pytest.approx(
        kelvin(238.3), abs=0.1
    )
    assert values("boiling", altitude="0 ft")["boiling"] == pytest.approx(kelvin(211.95), abs=0.05)


def test_flash_is_at_constant_enthalpy() -> None:
    # 15.13 psi at sea level boil at 250 °F; let go, 3.97 % of it flashes; 500 gal give 156 lb of steam.
    worked = values("boiling", altitude="0 ft", system_pressure="15.13 psi")
    assert worked["boiling"] == pytest.approx(kelvin(250), abs=0.1)
    assert worked["flash_fraction_worst"] == pytest.approx(0.0397, rel=0.005)
    assert worked["flash_steam_worst"] == pytest.approx(156 * POUND, rel=0.01)
    assert worked["flash_volume_worst"] > 500 * GALLON * 50
    # The same from a store that is charged to 250 °F and kept from boiling by more pressure; none from 180 °F.
    hot = values("boiling", altitude="0 ft", system_pressure="30 psi", store_top="250 °F")
    assert hot["flash_fraction"] == pytest.approx(0.0397, rel=0.005)
    assert worked["flash_fraction"] == 0


HIGH = {"altitude": "7,000 ft"}


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("store-boils", {"store_top": "207 °F"}, {}),
        ("outlet-boils", {"store_top": "195 °F"}, {}),
        ("highest-boils", {"highest_point": "12 ft"}, {}),
        ("pump-boils", {"pump_height": "18 ft"}, {}),
        ("store-margin", {"store_top": "190 °F"}, {}),
        ("outlet-margin", {"store_top": "175 °F"}, {}),
        ("highest-margin", {"highest_point": "2 ft"}, {}),
        ("pump-margin", {"pump_height": "9 ft"}, {}),
        ("suction", {"pump_height": "12 ft"}, {}),
        ("burst", {"system_pressure": "12 psi"}, {}),
        ("open", {}, {"system_pressure": "12 psi"}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("boiling", **holds)
    assert code not in codes("boiling", **spared)


def test_twenty_degrees_is_tight_at_the_outlet_and_its_pressure() -> None:
    tight = values("boiling", store_top="173 °F")["outlet_margin"]
    assert tight == pytest.approx(20 * FAHRENHEIT_DEGREE, abs=0.1)
    assert "outlet-margin" not in codes("boiling", store_top="172.5 °F")
    assert "outlet-margin" in codes("boiling", store_top="173.5 °F")
