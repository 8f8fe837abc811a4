"""Drawings whose parts are as long as the reader's numbers say, with the numbers beside them."""

import math
from typing import Any

from calc.engine.declare import Picture
from calc.engine.sheet import Sheet
from calc.units import unit_named
from render.drawings.shown import texts

LOG_LEFT, LOG_WIDE = 30.0, 340.0  # the log and the stack, in the drawing's own units
MOST_BLOCKS = 40  # more would be a smear: then the stack is one block
BLOCK_GAP, WIDEST_BLOCK = 3.0, 60.0
BAR = 392.0  # the longest bar
WATER_FREEZES = 273.15  # [K]


def logs(sheet: Sheet, wanted: Picture) -> dict[str, Any]:
    """Where the water in a log ends, the two limits beside it, and one block for each cord or stère of a winter."""
    places = {
        f"{part}_at": round(LOG_LEFT + LOG_WIDE * _number(sheet, wanted, part), 1) for part in ("wet", "dry", "green")
    }
    block = "cord" if sheet.system == "us" else "stère"
    stacked = unit_named(block, "volume").from_si(_number(sheet, wanted, "wood"))
    return texts(sheet, wanted) | places | {"block": block, "blocks": _blocks(stacked)}


def winters(sheet: Sheet, wanted: Picture) -> dict[str, Any]:
    """A winter on wood and one on the fuel of now as bars on one scale, the reader's own hours apart."""
    wood, now = (_number(sheet, wanted, part) for part in ("wood", "now"))
    heat, hours = (_number(sheet, wanted, part) for part in ("heat", "hours"))
    longest = max(wood, now)
    whole = BAR * wood / longest if longest else 0
    own = whole * hours / heat if heat else 0
    return texts(sheet, wanted) | {
        "wood_long": round(whole - own, 1),
        "hours_long": round(own, 1),
        "now_long": round(BAR * now / longest, 1) if longest else 0,
        "saves": _number(sheet, wanted, "saved") > 0,
    }


def ice(sheet: Sheet, wanted: Picture) -> dict[str, Any]:
    """How far below the freezing of plain water each point lies, on one scale."""
    below = {
        part: max(WATER_FREEZES - value, 0) if (value := _number(sheet, wanted, part)) else 0
        for part in ("ice", "burst", "coldest")
    }
    deepest = max(below.values())
    return texts(sheet, wanted) | {
        f"{part}_long": round(BAR * depth / deepest, 1) if deepest else 0 for part, depth in below.items()
    }


def _blocks(count: float) -> list[tuple[float, float]]:
    """Left edge and width of each block; the last is as wide as what is left of it."""
    if count > MOST_BLOCKS:
        return [(LOG_LEFT, LOG_WIDE)]
    each = min(WIDEST_BLOCK, LOG_WIDE / max(math.ceil(count), 1))
    return [
        (round(LOG_LEFT + number * each, 1), round(min(count - number, 1) * (each - BLOCK_GAP), 1))
        for number in range(math.ceil(count))
    ]


def _number(sheet: Sheet, wanted: Picture, part: str) -> float:
    """The part's value in SI; nothing where there is none."""
    value = sheet.values.get(wanted.values[part])
    return float(value) if isinstance(value, float | int) else 0.0
