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
    worked = values("room-heat")
    assert worked["steady_temperature"] == pytest.approx(kelvin(80.4), abs=0.05)
    # Without the stove: 33.1 × (T - 28) = 100 × (68 - T) + what the doorway brings: near 65 °F.
    assert worked["steady_rise"] == pytest.approx((80.4 - 65.2) * FAHRENHEIT_DEGREE, abs=0.2)
    # At 78 °F: 33.1 × 50 + (100 + 509.5) × 10 = 7,750 Btu/h.
    assert worked["room_can_use"] == pytest.approx(7_752 * POWER, rel=2e-3)
    assert worked["heat_to_house"] == pytest.approx((100 + 567) * 12.4 * POWER, rel=0.01)


def test_the_first_hours_by_hand() -> None:
    # 20.44 m²: air and furniture 204 kJ/K, walls 165 × 20.44 = 3,372 kJ/K, link 9.228 × 20.44 = 188.6 W/K.
    # Near 78 °F the walls are at about 75 °F: they take 188.6 × 1.8 K = 340 W more than they give, the way out takes
    # 7,750 Btu/h = 2,271 W, together about the 2,931 W of the fire less what still warms the air. Marched through time in
    # half-second steps below: 78.0 °F after 2.63 h, 78.4 °F after 4 h.
    worked = values("room-heat")
    assert worked["air_capacity"] == pytest.approx(204.4e3, rel=1e-3)
    assert worked["wall_capacity"] == pytest.approx(3.372e6, rel=1e-3)
    assert worked["link"] == pytest.approx(188.6, rel=1e-3)
    assert worked["hours_to_limit"] == pytest.approx(_march(until=kelvin(78))[0], rel=0.01)
    assert worked["temperature_after"] == pytest.approx(_march(seconds=4 * HOUR)[1], abs=0.02)
    assert worked["hours_to_limit"] == pytest.approx(2.63 * HOUR, rel=0.01)


def _march(seconds: float = 1e6, until: float = 1e3) -> tuple[float, float]:
    """Fern Lane's kitchen in half-second steps of the two balances, with the numbers of the hand sum."""
    air = walls = house = kelvin(68)
    time, step = 0.0, 0.5
    while time < seconds and air < until:
        door = 0.65 / 3 * 0.9144 * 2.033 * (9.80665 * 2.033 * abs(air - house) / house) ** 0.5 * 1.0791 * 1006
        lost = 33.13 * PER_DEGREE * (air - kelvin(28)) + (100 * PER_DEGREE + door) * (air - house)
        to_walls = 188.6 * (air - walls)
        air += step * (10_000 * POWER - lost - to_walls) / 204.4e3
        walls += step * to_walls / 3.372e6
        time += step
    return time, air


def test_walls_of_known_weight_take_the_place_of_the_class() -> None:
    # The example's walls hold 165 kJ/(m²·K) × 20.44 m² = 3,372 kJ/K = 1,776 Btu/°F.
    typed = values("room-heat", build="own", wall_capacity="1776 Btu/F")
    assert typed["hours_to_limit"] == pytest.approx(values("room-heat")["hours_to_limit"], rel=2e-3)
    assert (
        values("room-heat", build="own", wall_capacity="4000 Btu/F")["temperature_after"] < typed["temperature_after"]
    )


def test_a_stove_that_gives_the_room_nothing_is_no_error() -> None:
    worked = values("room-heat", room_output="0 Btu/h")
    assert "hours_to_limit" not in worked
    assert worked["steady_rise"] == 0


def test_never_is_said_when_the_limit_is_above_the_steady_value() -> None:
    sheet = sheet_of("room-heat", **(example_of("room-heat") | {"room_limit": "85 °F"}))
    assert sheet.values["hours_to_limit"] is None
    assert next(result for result in sheet.results if result.key == "hours_to_limit").shown == "never"


def test_a_room_that_starts_too_warm_needs_no_time() -> None:
    assert values("room-heat", room_limit="68 °F")["hours_to_limit"] == 0


def test_alone_in_the_cold_the_rise_is_heat_over_conductance() -> None:
    # A shut room without inner walls: 10,000 Btu/h ÷ 200 Btu/h°F = 50 °F over the outdoors.
    worked = values(
        "room-heat",
        room_known="conductance",
        room_conductance="200 Btu/h/F",
        partition="0 Btu/h/F",
        doorway_width="0 ft",
    )
    assert worked["steady_rise"] == pytest.approx(50 * FAHRENHEIT_DEGREE)
    assert worked["without_stove"] == pytest.approx(kelvin(28))


def test_the_room_after_a_long_fire_is_the_settled_room() -> None:
    worked = values("room-heat", hours_burning="240 h")
    assert worked["temperature_after"] == pytest.approx(worked["steady_temperature"], abs=0.01)


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("strain", {"doorway_width": "0 ft"}, {}),
        ("too-warm", {"hours_burning": "12 h"}, {"hours_burning": "2 h"}),
        ("all-day", {"hours_burning": "1 h"}, {"room_limit": "85 °F"}),
        ("door-shut", {"doorway_width": "0 ft"}, {}),
        ("carbon-monoxide", {}, {}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("room-heat", **holds)
    if holds or spared:
        assert code not in codes("room-heat", **spared)


def test_other_walls_are_tried_also_where_their_heat_was_typed() -> None:
    typed = example_of("room-heat") | {"build": "own", "wall_capacity": "2,000 Btu/F"}
    rows = {row[0]: row for row in sheet_of("room-heat", **typed).tables[0].rows}
    assert rows["Brick or stone walls inside"][1:] != rows["As it is"][1:]
