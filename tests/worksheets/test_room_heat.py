"""Worked by hand: the room-heat worksheet, the definitions that pin it, and what it says when."""

import pytest

from calc.units import BTU, FAHRENHEIT_DEGREE, HOUR
from tests.worksheets.asking import codes, example_of, kelvin, sheet_of, values

POWER = BTU / HOUR
PER_DEGREE = POWER / FAHRENHEIT_DEGREE


def test_fern_lane_by_hand() -> None:
    # Try 80.3 °F in the room, 12.3 °F over the house. Outdoors: 220 ft² × 0.1506 × (80.3 - 28) = 1,733 Btu/h.
    # Inner walls: 100 × 12.3 = 1,230. Doorway 0.914 by 2.033 m, 6.83 K: 0.65 ÷ 3 × 0.914 × 2.033 × √(9.807 × 2.033
    # × 6.83 ÷ 293) = 0.2745 m³/s; air at 90.8 kPa weighs 1.079 kg/m³: × 1006 = 298 W/K = 565 Btu/h°F, × 12.3 = 6,950.
    # Together 9,910 of the 10,000 Btu/h: the room settles a little higher, at 80.4 °F.
    found = values("room-heat")
    assert found["steady_temperature"] == pytest.approx(kelvin(80.4), abs=0.05)
    # Without the stove: 33.1 × (T - 28) = 100 × (68 - T) + what the doorway brings: near 65 °F.
    assert found["steady_rise"] == pytest.approx((80.4 - 65.2) * FAHRENHEIT_DEGREE, abs=0.2)
    # At 78 °F: 33.1 × 50 + (100 + 509.5) × 10 = 7,750 Btu/h.
    assert found["room_can_use"] == pytest.approx(7_752 * POWER, rel=2e-3)
    assert found["heat_to_house"] == pytest.approx((100 + 567) * 12.4 * POWER, rel=0.01)


def test_two_masses_by_hand() -> None:
    # 20.44 m²: air and furniture 204 kJ/K, walls 165 × 20.44 = 3,372 kJ/K, link 9.228 × 20.44 = 188.6 W/K.
    # Outdoors 33.1, inner walls 100, doorway 567 Btu/h°F: 369 W/K leave the room for each degree.
    # The two rates add up to 188.6/3.372e6 + (188.6 + 369)/204.4e3 a second, and multiply to
    # 188.6 × 369 ÷ (204.4e3 × 3.372e6): time constants of about 0.1 h for the air and 7.5 h for the walls.
    found = values("room-heat")
    assert found["air_capacity"] == pytest.approx(204.4e3, rel=1e-3)
    assert found["wall_capacity"] == pytest.approx(3.372e6, rel=1e-3)
    assert found["link"] == pytest.approx(188.6, rel=1e-3)
    assert found["loss"] == pytest.approx(369, rel=3e-3)
    rates = 188.6 / 3.372e6 + (188.6 + found["loss"]) / 204.4e3
    product = 188.6 * found["loss"] / (204.4e3 * 3.372e6)
    assert 1 / found["fast_time"] + 1 / found["slow_time"] == pytest.approx(rates, rel=2e-3)
    assert 1 / (found["fast_time"] * found["slow_time"]) == pytest.approx(product, rel=2e-3)


def test_never_is_said_when_the_limit_is_above_the_steady_value() -> None:
    sheet = sheet_of("room-heat", **(example_of("room-heat") | {"room_limit": "85 °F"}))
    assert sheet.values["hours_to_limit"] is None
    assert next(one for one in sheet.results if one.key == "hours_to_limit").shown == "never"


def test_a_room_that_starts_too_warm_needs_no_time() -> None:
    assert values("room-heat", room_limit="68 °F")["hours_to_limit"] == 0


def test_alone_in_the_cold_the_rise_is_heat_over_conductance() -> None:
    # A shut room without inner walls: 10,000 Btu/h ÷ 200 Btu/h°F = 50 °F over the outdoors.
    found = values(
        "room-heat", room_known="conductance", room_conductance="200 Btu/h/F", partition="0 Btu/h/F", doorway_width="0 ft"
    )
    assert found["steady_rise"] == pytest.approx(50 * FAHRENHEIT_DEGREE)
    assert found["without_stove"] == pytest.approx(kelvin(28))


def test_the_room_after_a_long_fire_is_the_settled_room() -> None:
    found = values("room-heat", hours_burning="240 h")
    assert found["temperature_after"] == pytest.approx(found["steady_temperature"], abs=0.01)


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("strain", {"doorway_width": "0 ft"}, {}),
        ("too-warm", {"hours_burning": "12 h"}, {}),
        ("all-day", {}, {"room_limit": "85 °F"}),
        ("door-shut", {"doorway_width": "0 ft"}, {}),
        ("carbon-monoxide", {}, {}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("room-heat", **holds)
    if holds or spared:
        assert code not in codes("room-heat", **spared)
