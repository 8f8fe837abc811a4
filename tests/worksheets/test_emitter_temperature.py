"""What the emitter-temperature worksheet says when; its numbers are compared in comparisons/."""

import pytest

from tests.worksheets.asking import codes, example_of, sheet_of, values


def test_a_store_cooler_than_the_emitters_need_is_unworkable() -> None:
    needed = values("emitter-temperature")["lowest_useful"] * 1.8 - 459.67
    assert "over-store" in codes("emitter-temperature", store_top=f"{needed - 2:.1f} °F")
    assert "over-store" not in codes("emitter-temperature", store_top=f"{needed + 2:.1f} °F")


def test_how_many_times_the_emitter_a_cool_store_needs() -> None:
    # Mill Row: 180 ft × 560 ÷ 1.15 = 87,652 Btu/h at 180 - 65 = 115 °F. 120 °F supply, 12 °F drop: 114 - 68 = 46 °F over
    # the room, (46 ÷ 115)^1.4 = 0.2772 of the rating, 24,300 Btu/h; 30,500 ÷ 24,300 = 1.255 times.
    assert values("emitter-temperature", supply_tried="120 °F")["emitter_times"] == pytest.approx(1.255, rel=2e-3)
    # At the supply it needs, once what there is.
    needed = values("emitter-temperature")["supply_water"] * 1.8 - 459.67
    assert values("emitter-temperature", supply_tried=f"{needed} °F")["emitter_times"] == pytest.approx(1)
    # No water as cool as the room does it, however much emitter there is.
    sheet = sheet_of(
        "emitter-temperature", **(example_of("emitter-temperature") | {"supply_tried": "76 °F", "indoor": "80 °F"})
    )
    assert next(result.shown for result in sheet.results if result.key == "emitter_times") == "no emitter does it"
