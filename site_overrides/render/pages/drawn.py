"""Drawings of an invented house: no box of the page changes them, and what they show is worked out at build."""

from typing import Any

from calc.answer import Typed, answer
from calc.engine.sheet import Sheet
from calc.units import HOUR, SYSTEMS, System
from render.pages import ladder
from render.templating import fill

PROMISED = "3 ft3"  # what Fern Lane's seller said of the firebox
FIREBOX_TOP, FIREBOX_FOOT = 10.0, 200.0  # the drawings' own units
LEFT, WIDE, FIRES = 12.0, 376.0, 2
TICK = 6  # hours


def firebox() -> str:
    """The firebox as it was promised, filled as high as the tape says that logs can lie."""
    taped, promised = answer("firing", {}), answer("firing", {"firebox_volume": Typed(PROMISED)})
    share = _number(taped, "firebox_volume") / _number(promised, "firebox_volume")
    return str(
        fill(
            "pages/firebox.svg",
            taped={system: _load(system) for system in SYSTEMS},
            promised={system: _load(system, firebox_volume=Typed(PROMISED)) for system in SYSTEMS},
            top=FIREBOX_TOP,
            foot=FIREBOX_FOOT,
            door=round(FIREBOX_FOOT - share * (FIREBOX_FOOT - FIREBOX_TOP), 1),
        )
    )


def store_day() -> str:
    """The heat in a store on the coldest day, over two fires that fill it."""
    sheet = answer("firing", {})
    fire, cold = (_number(sheet, key) / HOUR for key in ("hours_to_charge", "hours_cold"))
    unit = WIDE / (FIRES * (fire + cold))

    def place(hours: float) -> float:
        return round(LEFT + unit * hours, 1)

    lit = [turn * (fire + cold) for turn in range(FIRES)]
    ticks = range(0, int(FIRES * (fire + cold)) + 1, TICK)
    return str(
        fill(
            "pages/store_day.svg",
            burns=[
                {"lit": place(start), "out": place(start + fire), "empty": place(start + fire + cold)} for start in lit
            ],
            hours=[{"at": place(hour), "text": str(hour), "look": "sv-mid" if hour else "sv-start"} for hour in ticks],
            cold_at=round(place(fire + cold / 2) - 6, 1),
            **{system: _day(system) for system in SYSTEMS},
        )
    )


def _load(system: System, **given: Typed) -> dict[str, str]:
    sheet = answer("firing", given, system)
    return {"volume": sheet.inputs["firebox_volume"].shown(system), "heat": _result(sheet, "heat_per_load")}


def _day(system: System) -> dict[str, str]:
    sheet = answer("firing", {}, system)
    named = {"full": "usable_heat", "fire": "hours_to_charge", "cold": "hours_cold"}
    return {part: _result(sheet, key) for part, key in named.items()}


def _result(sheet: Sheet, key: str) -> str:
    return next(result.shown for result in sheet.results if result.key == key)


def _number(sheet: Sheet, key: str) -> float:
    value: Any = sheet.values[key]
    return float(value)


# What a guide may ask for by name beside the fixed drawings.
BUILT = {"ladder": ladder.drawing, "firebox": firebox, "store-day": store_day}
