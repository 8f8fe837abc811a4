"""What lies on a heated floor, by its kind or as the reader knows it, and how warm such a floor may get."""

from calc.engine.declare import Case, Cases, Pick
from calc.vocabulary import COVERING_RESISTANCE

_COVERINGS = {"bare": "0.01 m2K/W", "thin": "0.02 m2K/W", "wood": "0.10 m2K/W", "carpet": "0.15 m2K/W"}
_COVERED = Case(
    steps=(
        Pick(
            "covering_resistance",
            "thermal_resistance",
            "R-value of the covering",
            "floor_covering",
            _COVERINGS,
            "floor-coverings",
        ),
    ),
)

SURFACE_LIMIT = Pick(
    "surface_limit",
    "temperature",
    "Surface limit for such a room",
    "floor_zone",
    {"lived-in": "29 °C", "bath": "33 °C", "edge": "35 °C"},
    "en-1264-limits",
)

CASES = Cases(
    "floor_covering",
    bare=_COVERED,
    thin=_COVERED,
    wood=_COVERED,
    carpet=_COVERED,
    own=Case(fields=(COVERING_RESISTANCE,)),
)
