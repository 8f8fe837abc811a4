"""Worked by hand: the buried-pipe worksheet, and what it says when."""

import pytest

from calc.answer import Typed, answer
from calc.units import BTU, HOUR
from tests.worksheets.asking import codes, kelvin, sheet_of, values

CORD = 128 * 0.3048**3


def test_ridge_road_by_hand() -> None:
    # Insulation 1.125 to 3.5 in, 0.19 Btu·in/(h·ft²·°F) = 0.0274 W/(m·K): ln(3.111) ÷ (2π × 0.0274) = 6.59 m·K/W.
    # Soil 1.442 W/(m·K), depth 0.762 + 0.0988 = 0.861 m: ln(4 × 0.861 ÷ 0.0889) ÷ (2π × 1.442) = 0.4036.
    # Neighbor at 0.1524 m: ln(1 + (1.722 ÷ 0.1524)²) ÷ (4π × 1.442) = ln(128.7) ÷ 18.12 = 0.2680.
    # Both pipes: 2 ÷ 7.262 = 0.2754 W/(m·K). Mean 150 °F over 38 °F: 62.2 K: 17.14 W/m, × 24.38 m = 418 W = 1,426 Btu/h.
    # In 4,000 h 5.70 million Btu, 0.380 cord at 15 million each.
    worked = values("buried-pipe")
    assert worked["insulation_resistance"] == pytest.approx(6.59, rel=0.002)
    assert worked["soil_resistance"] == pytest.approx(0.4036, rel=0.002)
    assert worked["neighbour_resistance"] == pytest.approx(0.2680, rel=0.002)
    assert worked["buried_loss"] == pytest.approx(1426 * BTU / HOUR, rel=0.003)
    assert worked["loss_share"] == pytest.approx(1426 / 32_500, rel=0.003)
    assert worked["wood_lost"] == pytest.approx(0.380 * CORD, rel=0.004)
    # Pipe in the air: 0.862 in × 5 ft hold 0.574 L, 2.353 kJ/K; 1 ÷ (6.59 + 1 ÷ (π × 0.0889 × 8)) × 1.524 = 0.2165 W/K.
    # From 140 to 32 °F in air of -5 °F: 2353 ÷ 0.2165 × ln(145 ÷ 37) = 14,840 s = 4.12 h.
    assert worked["hours_to_freezing"] == pytest.approx(4.12 * HOUR, rel=0.005)


def test_it_never_freezes_where_the_air_is_mild_or_the_filling_is_not_water() -> None:
    assert sheet_of("buried-pipe", exposed_air="40 °F").values["hours_to_freezing"] is None
    mixed = sheet_of("buried-pipe", exposed_air="0 °F", antifreeze_kind="propylene", antifreeze="50 %")
    assert mixed.values["hours_to_freezing"] is None
    assert mixed.values["freezing_point"] < kelvin(-20)  # type: ignore[operator]


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("freezes", {}, {"exposed_air": "40 °F"}),
        ("wet", {"pipe_insulation": "wet"}, {}),
        ("much", {"pipe_insulation": "wet"}, {}),
        ("plastic", {"supply_water": "185 °F"}, {"supply_water": "185 °F", "pipe_kind": "copper-m"}),
        ("store-place", {}, {}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("buried-pipe", **holds)
    if code != "store-place":
        assert code not in codes("buried-pipe", **spared)


def test_the_trench_carries_water_as_hot_as_the_emitters_need_unless_it_is_said() -> None:
    """A boiler's line to a store in the house is hotter, and what the emitters need stays what it is."""
    cool = answer("buried-pipe", {"supply_water": Typed("140 °F")})
    typed = answer("buried-pipe", {"supply_water": Typed("140 °F"), "trench_supply": Typed("180 °F")})
    hot = answer("buried-pipe", {"supply_water": Typed("180 °F")})
    assert cool.inputs["trench_supply"].si == cool.inputs["supply_water"].si == typed.inputs["supply_water"].si
    assert typed.values["buried_loss"] == hot.values["buried_loss"] > cool.values["buried_loss"]  # type: ignore[operator]
