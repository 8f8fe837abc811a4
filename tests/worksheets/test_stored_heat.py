"""Worked by hand: the example of the stored-heat worksheet."""

import pytest

from calc.answer import answer
from calc.units import BTU, HOUR


def test_fern_lane_by_hand() -> None:
    # 500 gal of water weigh 500 × 8.18 lb = 4,090 lb near 145 °F (steam tables: 61.19 lb/ft³ ÷ 7.4805 gal/ft³).
    # They cool by 180 - 110 = 70 °F, at 1.00 Btu/(lb·°F): 4,090 × 70 = 286,300 Btu.
    # 286,300 Btu ÷ 13,300 Btu/h = 21.5 h.
    # Layered, down to the return of 110 - 10 = 100 °F: 4,090 × 80 = 327,200 Btu, 24.6 h.
    values = answer("stored-heat", {}).values
    assert values["usable_heat"] == pytest.approx(286_300 * BTU, rel=0.003)  # three figures by hand
    assert values["hours_carried"] == pytest.approx(21.5 * HOUR, rel=0.003)
    assert values["usable_heat_layered"] == pytest.approx(327_200 * BTU, rel=0.003)
    assert values["hours_carried_layered"] == pytest.approx(24.6 * HOUR, rel=0.003)
