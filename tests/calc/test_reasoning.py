"""What the checker makes of a condition: which numbers stand beside which."""

import pytest

from calc.checking.reasoning import mismatches
from calc.engine.conditions import condition

KINDS = {
    "store_top": "temperature",
    "lowest_useful": "temperature",
    "band": "temperature_difference",
    "store_volume": "volume",
    "emitter": "choice",
}


@pytest.mark.parametrize(
    "text",
    [
        "-band < band",
        "store_top * 2 > lowest_useful",
        "2 * store_volume > store_volume",
        "store_volume / 2 > store_volume",
        "max(store_top, lowest_useful) > lowest_useful",
        "store_top - lowest_useful > band",
        "lowest_useful + band < store_top",
        "band + lowest_useful < store_top",
        "store_top - 20 > lowest_useful",
        "store_volume > 0",
        "store_volume * band > store_top",
        "emitter == 'floor'",
        "'floor' != emitter",
    ],
)
def test_like_beside_like_passes(text: str) -> None:
    assert list(mismatches(condition(text), KINDS)) == []


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("store_top > store_volume", "compares temperature and volume"),
        ("emitter > 'floor'", "orders a choice"),
        ("store_top + store_volume > lowest_useful", "adds temperature and volume"),
        ("emitter + 1 > 2", "reckons with a choice"),
        ("store_volume > 5", "a number that has no unit"),
        ("emitter == store_top", "compares a choice with what is none of its options"),
        ("store_top == 'floor'", "with a text"),
        ("0 < store_volume < 5", "one comparison at a time"),
    ],
)
def test_unlike_things_are_told(text: str, why: str) -> None:
    assert any(why in sentence for sentence in mismatches(condition(text), KINDS)), text
