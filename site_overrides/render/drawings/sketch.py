"""Where things stand in the drawing of the whole system, and the words in it."""

from typing import Any

from calc.engine.sheet import Sheet
from calc.units import NO_BREAK

TOP, BOTTOM = 76.0, 206.0  # of the water in the drawn tank; up is hotter
HOTTEST, COOLEST = 361.0, 294.0  # K, at top and bottom
UNKNOWN = "?"
_EMITTERS = {"floor": "warm floor", "baseboard": "baseboard", "radiator": "radiators", "air-coil": "coil in ducts"}


def parts(sheet: Sheet) -> dict[str, Any]:
    """The texts beside each part, the place of the coolest useful water in the tank, and what a listener is told."""
    shown = {result.key: result.shown if result.si is not None else UNKNOWN for result in sheet.results}

    def text(key: str) -> str:
        if key in shown:
            return shown[key]
        entry = sheet.inputs.get(key)
        return entry.shown(sheet.system) if entry else UNKNOWN

    low, top = sheet.values.get("lowest_useful"), sheet.values.get("store_top")
    return {
        "output": text("water_output"),
        "loads": text("burns_per_day_at_design").partition(NO_BREAK)[0],
        "tank_label": "Your store" if has_store(sheet) else "Tank",
        "tank": text("store_volume" if has_store(sheet) else "recommended"),
        "top": text("store_top"),
        "low": text("lowest_useful"),
        "emitter": _EMITTERS[str(sheet.values["emitter"])],
        "load": text("design_load"),
        "outdoor": text("design_outdoor"),
        "band": _place(low) if isinstance(low, float) else BOTTOM,
        "works": isinstance(low, float) and isinstance(top, float) and low < top,
        "known": isinstance(low, float),
    }


def has_store(sheet: Sheet) -> bool:
    """Whether the tank drawn is one that the reader has or has in mind, and not the recommended one."""
    return sheet.values.get("store_known") == "yes"


def _place(temperature: float) -> float:
    share = (min(max(temperature, COOLEST), HOTTEST) - COOLEST) / (HOTTEST - COOLEST)
    return round(BOTTOM - share * (BOTTOM - TOP), 1)
