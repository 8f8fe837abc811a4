"""Worked by hand: the example of the stored-heat worksheet."""

import pytest

from calc.answer import answer
from calc.units import BTU, HOUR


def test_fern_lane_by_hand() -> None:
    # 500 gal of water weigh 500 × 8.18 lb = 4,090 lb near 150 °F (steam tables: 61.19 lb/ft³ ÷ 7.4805 gal/ft³).
    # They cool by 170 - 130 = 40 °F, at 1.00 Btu/(lb·°F): 4,090 × 40 = 163,600 Btu.
    # 163,600 Btu ÷ 13,300 Btu/h = 12.3 h.
    # Layered, down to the return of 130 - 10 = 120 °F: 4,090 × 50 = 204,500 Btu, 15.4 h.
    values = answer("stored-heat", {}).values
    assert values["usable_heat"] == pytest.approx(163_600 * BTU, rel=0.003)  # three figures by hand
    assert values["hours_carried"] == pytest.approx(12.3 * HOUR, rel=0.003)
    assert values["usable_heat_layered"] == pytest.approx(204_500 * BTU, rel=0.003)
    assert values["hours_carried_layered"] == pytest.approx(15.4 * HOUR, rel=0.003)
