"""What the emitter-temperature worksheet says when; its numbers are compared in comparisons/."""

from tests.worksheets.asking import codes, values


def test_a_store_cooler_than_the_emitters_need_is_unworkable() -> None:
    needed = values("emitter-temperature")["lowest_useful"] * 1.8 - 459.67
    assert "over-store" in codes("emitter-temperature", store_top=f"{needed - 2:.1f} °F")
    assert "over-store" not in codes("emitter-temperature", store_top=f"{needed + 2:.1f} °F")
