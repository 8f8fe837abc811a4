"""One quantity has one range, on every worksheet that asks it."""

from collections import defaultdict

from calc.engine.declare import Field
from calc.worksheets import WORKSHEETS

# Where one key has several ranges by its meaning, and why.
SEVERAL = {
    "amount": "of oil in gallons, of wood in cords",
    "heat_content": "of fuels sold by volume and by weight",
    "antifreeze": "none in plain water, and what the tables of the glycols hold",
    "efficiency": "a heat pump gives more than it takes; no stove does, and one of 100 % has no flue gas",
    "load": "a store is also refilled while nobody draws, and then carries no load",
    "dump_size": "of finned pipe in feet, of other dumps in rated output",
    "high_limit": "glycol's growth is tabled to 212 °F",
}


def test_one_quantity_has_one_range() -> None:
    ranges: dict[str, dict[tuple[float, float], list[str]]] = defaultdict(lambda: defaultdict(list))
    for worksheet in WORKSHEETS.values():
        for field in worksheet.all_fields():
            if field.kind != "choice":
                ranges[field.key][field.low_si, field.high_si].append(worksheet.key)
    differing = {key: dict(meaning) for key, meaning in ranges.items() if len(meaning) > 1}
    assert differing.keys() == differing.keys() & SEVERAL.keys(), {
        key: meaning for key, meaning in differing.items() if key not in SEVERAL
    }


def test_every_exception_is_one() -> None:
    several = {key for key in SEVERAL if len({(field.low_si, field.high_si) for field in _fields(key)}) > 1}
    assert several == set(SEVERAL)


def _fields(key: str) -> list[Field]:
    return [field for worksheet in WORKSHEETS.values() for field in worksheet.all_fields() if field.key == key]
