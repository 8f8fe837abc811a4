"""Drawings whose parts are as long as the reader's numbers say, with the numbers beside them."""

import math
from typing import Any

from calc.engine.declare import Picture
from calc.engine.sheet import Sheet
from calc.tables.year import MONTH_NAMES, MONTHS
from calc.units import unit_named
from render.drawings.shown import texts

LOG_LEFT, LOG_WIDE = 30.0, 340.0  # the log and the stack, in the drawing's own units
MOST_BLOCKS = 40  # more would be a smear: then the stack is one block
BLOCK_GAP, WIDEST_BLOCK = 3.0, 60.0
BAR_LEFT, BAR = 4.0, 392.0  # where bars begin, and the longest
MONTH_LEFT, MONTH_APART, MONTHS_FOOT, MONTHS_HIGH = 5.0, 33.0, 164.0, 132.0
MONTHS_TOLD = ("said", "year", "december", "june")  # the parts that stand there in words
WATER_FREEZES = 273.15  # [K]


def logs(sheet: Sheet, wanted: Picture) -> dict[str, Any]:
    """Where the water in a log ends, the two limits beside it, and one block for each cord or stère of a winter."""
    places = {
        f"{part}_at": round(LOG_LEFT + LOG_WIDE * _number(sheet, wanted, part), 1) for part in ("wet", "dry", "green")
    }
    block = "cord" if sheet.system == "us" else "stère"
    stacked = unit_named(block, "volume").from_si(_number(sheet, wanted, "wood"))
    return texts(sheet, wanted) | places | {"block": block, "blocks": _blocks(stacked)}


def hottest(sheet: Sheet, wanted: Picture) -> dict[str, Any]:
    """The four places that may boil, and at which of them it does."""
    water = {"outlet": "outlet", "high": "outlet", "store": "store", "pump": "store"}
    boils = {
        place: (limit := _number(sheet, wanted, f"{place}_boils")) > 0 and _number(sheet, wanted, hot) >= limit
        for place, hot in water.items()
    }
    return texts(sheet, wanted) | {"boils": boils}


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


def flow(sheet: Sheet, wanted: Picture) -> dict[str, Any]:
    """How fast the water runs, beside the limit."""
    speed, limit = (_number(sheet, wanted, part) for part in ("speed", "limit"))
    longest = max(speed, limit)
    return texts(sheet, wanted) | {
        "fast": speed > limit,
        "speed_long": round(BAR * speed / longest, 1),
        "limit_at": round(BAR_LEFT + BAR * limit / longest, 1),
    }


def fill(sheet: Sheet, wanted: Picture) -> dict[str, Any]:
    """Scale and rust on one scale, each of the first filling and of the make-up; the hardness beside its limit."""
    weights = {part: _number(sheet, wanted, part) for part in ("scale", "scale_later", "rust", "rust_later")}
    heaviest = max(weights["scale"] + weights["scale_later"], weights["rust"] + weights["rust_later"])
    hard, allowed = (_number(sheet, wanted, part) for part in ("hardness", "allowed"))
    hardest = max(hard, allowed)

    def long(value: float, longest: float) -> float:
        return round(BAR * value / longest, 1) if longest else 0

    bars: dict[str, Any] = {
        part: {"first": long(weights[part], heaviest), "later": long(weights[f"{part}_later"], heaviest)}
        for part in ("scale", "rust")
    }
    bars |= {"hard": long(hard, hardest), "allowed_at": BAR_LEFT + long(allowed, hardest)}
    return texts(sheet, wanted) | {"bars": bars}


def months(sheet: Sheet, wanted: Picture) -> dict[str, Any]:
    """A bar for each month, as high as its need, and up to where it is covered."""
    need = [_number(sheet, wanted, f"need_{month}") for month in MONTHS]
    used = [_number(sheet, wanted, f"used_{month}") for month in MONTHS]
    most = max(need)
    told = Picture(wanted.name, wanted.caption, {part: wanted.values[part] for part in MONTHS_TOLD})

    def top(heat: float) -> float:
        return round(MONTHS_FOOT - MONTHS_HIGH * heat / most, 1) if most else MONTHS_FOOT

    return texts(sheet, told) | {
        "bars": [
            {"name": name[0], "left": round(MONTH_LEFT + MONTH_APART * at, 1), "top": top(whole), "covered": top(part)}
            for at, (name, whole, part) in enumerate(zip(MONTH_NAMES, need, used, strict=True))
        ]
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
