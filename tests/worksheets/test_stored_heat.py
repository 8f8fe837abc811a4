"""Worked by hand: the example of the stored-heat worksheet."""

import pytest

from calc.answer import answer
from calc.units import BTU, HOUR
from tests.worksheets.asking import example_of, kelvin, sheet_of, values


def test_mill_row_by_hand() -> None:
    # Between 130 and 180 °F a gallon of water takes 8.165 Btu for each degree (IF97): 800 × 8.165 × 50 = 326,600 Btu.
    # 326,600 Btu ÷ 30,500 Btu/h = 10.7 h.
    # Layered, down to the return of 130 - 12 = 118 °F: 800 × 8.17 × 62 = 405,200 Btu, 13.3 h.
    values = answer("stored-heat", {}).values
    assert values["usable_heat"] == pytest.approx(326_600 * BTU, rel=0.002)  # four figures of a gallon's heat
    assert values["hours_carried"] == pytest.approx(10.7 * HOUR, rel=0.003)
    assert values["usable_heat_layered"] == pytest.approx(405_200 * BTU, rel=0.003)
    assert values["hours_carried_layered"] == pytest.approx(13.3 * HOUR, rel=0.003)


def test_fern_lane_by_hand() -> None:
    # 500 gal of water weigh 500 × 8.18 lb = 4,090 lb near 150 °F (steam tables: 61.19 lb/ft³ ÷ 7.4805 gal/ft³).
    # They cool by 170 - 130 = 40 °F, at 1.00 Btu/(lb·°F): 4,090 × 40 = 163,600 Btu.
    # 163,600 Btu ÷ 13,300 Btu/h = 12.3 h.
    # Layered, down to the return of 130 - 10 = 120 °F: 4,090 × 50 = 204,500 Btu, 15.4 h.
    values = sheet_of("stored-heat", **example_of("stored-heat", 1)).values
    assert values["usable_heat"] == pytest.approx(163_600 * BTU, rel=0.003)  # three figures by hand
    assert values["hours_carried"] == pytest.approx(12.3 * HOUR, rel=0.003)
    assert values["usable_heat_layered"] == pytest.approx(204_500 * BTU, rel=0.003)
    assert values["hours_carried_layered"] == pytest.approx(15.4 * HOUR, rel=0.003)


def test_nothing_comes_back_colder_than_the_room() -> None:
    # Floor water of 75 °F with a drop of 20 °F comes back at 68 °F, not at 55: 500 gal × 8.23 × (180 - 68) = 460,900.
    given = {"store_volume": "500 gal", "store_top": "180 °F", "lowest_useful": "75 °F", "water_drop": "20 F°"}
    worked = values("stored-heat", **given, indoor="68 °F")
    assert worked["emitter_return"] == pytest.approx(kelvin(68))
    assert worked["usable_heat_layered"] / BTU == pytest.approx(500 * 8.23 * 112, rel=2e-3)
    # Nobody gave the room: 68 °F stands in.
    given = example_of("stored-heat") | {"lowest_useful": "75 °F", "water_drop": "20 F°"}
    assert sheet_of("stored-heat", **given).values["emitter_return"] == pytest.approx(kelvin(68))


def test_at_part_load_the_drop_shrinks_with_the_load() -> None:
    # Half of 30,000 Btu/h on the same flow: half of 20 °F, so 145 °F water comes back at 135 °F.
    given = {"store_top": "180 °F", "lowest_useful": "145 °F", "water_drop": "20 F°", "design_load": "30,000 Btu/h"}
    full, half = values("stored-heat", **given), values("stored-heat", **given, load="15,000 Btu/h")
    assert full["emitter_return"] == pytest.approx(kelvin(125))
    assert half["emitter_return"] == pytest.approx(kelvin(135))
    assert half["usable_heat_layered"] / full["usable_heat_layered"] == pytest.approx(45 / 55, rel=3e-3)
    # Unless somebody measured it.
    measured = values("stored-heat", **given, load="15,000 Btu/h", drop_then="16 F°")
    assert measured["emitter_return"] == pytest.approx(kelvin(129))


def test_a_table_of_custom_says_whose_figures_it_shows() -> None:
    sheet = sheet_of("stored-heat", **example_of("stored-heat"))
    assert sheet.tables[0].source == "Common practice"
    assert "common-practice" in {key for key, _ in sheet.sources}
