"""Heated floors: the basic curve, the tables and the characteristic of EN 1264-2, as coded in open libraries.

The standard's own text was not seen. Its tables A.1 to A.3 stand alike in three independent codings, among them the
open Modelica library AixLib. The conductances (K_H) below were worked out from them twice, independently, and agree in
every printed digit. That library raises every covering to 0.10 m²·K/W (a design rule of part 3 of the standard): its
values are not those of a bare floor, and are not used here.
"""

from calc.law import Law
from calc.physics import floor
from comparisons.check import At, Check, Published

CURVE = Published(
    "CEN", "EN 1264-2, thermal output of floor heating", "2008", "basic curve 8.92·(ts − ti)^1.1", "standard"
)
TABLES = Published(
    "CEN", "EN 1264-2, thermal output of floor heating", "2008", "tables A.1, A.2, A.3 (AixLib)", "standard"
)
TYPE_A = Published("CEN", "EN 1264-2, thermal output of floor heating", "2008", "characteristic of type A", "standard")
LEDGER = Published(
    "By hand", "The standard's formulas worked out", "2026", "see the comment at the check", "own arithmetic"
)

TOPIC = "Heated floors"
ROUNDED = "their last printed digit is rounded"


def _check(
    law: Law,
    given: dict[str, str | At],
    theirs: str,
    within: str,
    because: str,
    source: Published,
    where: str,
) -> Check:
    return Check(TOPIC, where, law, given, theirs, within, because, source)


def conductance(spacing: str, cover: str, diameter: str, conductivity: str, covering: str) -> dict[str, str | At]:
    """The arguments of `floor.wet_floor_conductance`, from what one can measure."""
    return {
        "covering_factor": At(floor.covering_factor, {"screed_conductivity": conductivity, "covering": covering}),
        "spacing_factor": At(floor.spacing_factor, {"covering": covering}),
        "cover_factor": At(floor.cover_factor, {"spacing": spacing, "covering": covering}),
        "pipe_factor": At(floor.pipe_factor, {"spacing": spacing, "covering": covering}),
        "spacing": spacing,
        "counted_cover": At(floor.counted_cover, {"cover": cover, "spacing": spacing}),
        "pipe_diameter": diameter,
    }


CHECKS = []

# Rise of the surface over the room, K, and heat flux, W/m².
for _rise, _flux in ((1, 8.92), (3, 29.87), (5, 52.39), (6, 64.02), (7, 75.85), (8, 87.85), (10, 112.30)):
    CHECKS.append(
        _check(
            floor.surface_flux,
            {"surface_rise": f"{_rise} K"},
            f"{_flux} W/m²",
            "0.02 %",
            ROUNDED,
            CURVE,
            f"surface {_rise} K over the room",
        )
    )
CHECKS += [
    _check(
        floor.surface_flux,
        {"surface_rise": "9 K"},
        "100 W/m²",
        "0.1 %",
        "the standard's limit is a round number",
        CURVE,
        "occupied zone: 9 K over the room",
    ),
    _check(
        floor.surface_flux,
        {"surface_rise": "15 K"},
        "175 W/m²",
        "0.3 %",
        "the standard's limit is a round number",
        CURVE,
        "edge zone: 15 K over the room",
    ),
]
for _flux_text, _rise_text in (
    ("50 W/m²", "4.792 K"),
    ("75 W/m²", "6.928 K"),
    ("10 Btu/(h·ft²)", "5.675 F°"),
    ("15 Btu/(h·ft²)", "8.205 F°"),
    ("20 Btu/(h·ft²)", "10.657 F°"),
    ("25 Btu/(h·ft²)", "13.054 F°"),
):
    CHECKS.append(
        _check(
            floor.surface_rise,
            {"heat_flux": _flux_text},
            _rise_text,
            "0.02 %",
            ROUNDED,
            LEDGER,
            f"surface for {_flux_text}",
        )
    )

for _covering, _factor in (("0", 1.23), ("0.05", 1.188), ("0.10", 1.156), ("0.15", 1.134)):
    CHECKS.append(
        _check(
            floor.spacing_factor,
            {"covering": f"{_covering} m²·K/W"},
            f"{_factor}",
            "0.001 %",
            "a node of the table is exact",
            TABLES,
            f"a_T at covering {_covering}",
        )
    )
# Half way between two nodes: (1.156 + 1.134)/2.
CHECKS.append(
    _check(
        floor.spacing_factor,
        {"covering": "0.125 m²·K/W"},
        "1.145",
        "0.001 %",
        "linear between nodes, exact",
        LEDGER,
        "a_T between nodes",
    )
)

# Spacing m; a_u and a_D at coverings 0, 0.05, 0.10 and 0.15 m²·K/W.
_NODES = {
    "0.05": ((1.069, 1.056, 1.043, 1.037), (1.013, 1.013, 1.012, 1.011)),
    "0.075": ((1.066, 1.053, 1.041, 1.035), (1.021, 1.019, 1.016, 1.014)),
    "0.10": ((1.063, 1.05, 1.039, 1.0335), (1.029, 1.025, 1.022, 1.018)),
    "0.15": ((1.057, 1.046, 1.035, 1.0305), (1.04, 1.034, 1.029, 1.024)),
    "0.20": ((1.051, 1.041, 1.0315, 1.0275), (1.046, 1.04, 1.035, 1.03)),
    "0.225": ((1.048, 1.038, 1.0295, 1.026), (1.049, 1.043, 1.038, 1.033)),
    "0.30": ((1.0395, 1.031, 1.024, 1.021), (1.053, 1.049, 1.044, 1.039)),
    "0.375": ((1.03, 1.0221, 1.0181, 1.015), (1.056, 1.051, 1.046, 1.042)),
}
for _spacing, _rows in _NODES.items():
    for _law, _row, _symbol in ((floor.cover_factor, _rows[0], "a_u"), (floor.pipe_factor, _rows[1], "a_D")):
        for _covering, _factor in zip(("0", "0.05", "0.10", "0.15"), _row, strict=True):
            CHECKS.append(
                _check(
                    _law,
                    {"spacing": f"{_spacing} m", "covering": f"{_covering} m²·K/W"},
                    f"{_factor}",
                    "0.001 %",
                    "a node of the table is exact",
                    TABLES,
                    f"{_symbol} at spacing {_spacing}, covering {_covering}",
                )
            )
# A third of the way from 0.225 to 0.30 m and half way from 0.10 to 0.15 m²·K/W.
# a_u: (1.0295 + 1.026)/2 = 1.02775, (1.024 + 1.021)/2 = 1.0225, 1.02775 − 0.00525/3 = 1.026
# a_D: (1.038 + 1.033)/2 = 1.0355, (1.044 + 1.039)/2 = 1.0415, 1.0355 + 0.006/3 = 1.0375
for _law, _factor in ((floor.cover_factor, 1.026), (floor.pipe_factor, 1.0375)):
    CHECKS.append(
        _check(
            _law,
            {"spacing": "0.25 m", "covering": "0.125 m²·K/W"},
            f"{_factor}",
            "0.001 %",
            "bilinear between nodes, exact",
            LEDGER,
            "between nodes",
        )
    )

for _conductivity, _covering, _factor in (
    ("1", "0", 1.0),
    ("1.2", "0", 1.0577),
    ("1.2", "0.05", 0.7640),
    ("1.2", "0.10", 0.5980),
    ("1.2", "0.15", 0.4912),
):
    CHECKS.append(
        _check(
            floor.covering_factor,
            {"screed_conductivity": f"{_conductivity} W/(m·K)", "covering": f"{_covering} m²·K/W"},
            f"{_factor}",
            "0.00005",
            ROUNDED,
            LEDGER,
            f"a_B at {_conductivity} W/(m·K), covering {_covering}",
        )
    )

# Spacing, cover, pipe (m), screed (W/mK), covering (m²K/W), K_H (W/m²K) and flux at 40/35/20 °C (17.380 K), W/m².
_Row = tuple[str, str, str, str, str, float, float | None]
_ROWS: tuple[_Row, ...] = (
    ("0.15", "0.045", "0.020", "1.0", "0", 5.447, 94.67),
    ("0.15", "0.045", "0.016", "1.2", "0", 5.540, 96.28),
    ("0.15", "0.045", "0.016", "1.2", "0.05", 4.167, 72.43),
    ("0.15", "0.045", "0.016", "1.2", "0.10", 3.368, 58.54),
    ("0.20", "0.045", "0.017", "1.2", "0.10", 3.066, 53.30),
    ("0.30", "0.065", "0.017", "1.2", "0.10", 2.395, 41.62),
    ("0.10", "0.045", "0.016", "1.2", "0.15", 3.100, 53.89),
    ("0.30", "0.045", "0.016", "1.2", "0", 3.616, None),
    ("0.15", "0.045", "0.020", "1.2", "0", 5.761, None),
)
for _spacing, _cover, _pipe, _conductivity, _covering, _k, _upward in _ROWS:
    _given = conductance(
        f"{_spacing} m", f"{_cover} m", f"{_pipe} m", f"{_conductivity} W/(m·K)", f"{_covering} m²·K/W"
    )
    _where = f"spacing {_spacing}, cover {_cover}, pipe {_pipe} m, screed {_conductivity}, covering {_covering}"
    CHECKS.append(_check(floor.wet_floor_conductance, _given, f"{_k} W/(m²·K)", "0.02 %", ROUNDED, TYPE_A, _where))
    if _upward is not None:
        CHECKS.append(
            _check(
                floor.flux_at,
                {"floor_conductance": At(floor.wet_floor_conductance, _given), "excess": "17.380 K"},
                f"{_upward} W/m²",
                "0.02 %",
                ROUNDED,
                LEDGER,
                f"{_where}, at 40/35/20 °C",
            )
        )

CHECKS += [
    _check(
        floor.needed_excess,
        {"heat_flux": "100 W/m²", "floor_conductance": "5.540 W/(m²·K)"},
        "32.49 F°",
        "0.05 %",
        "100/5.540 = 18.051 K, rounded",
        LEDGER,
        "100.5 °F mean water in a 68 °F room gives 100 W/m²",
    ),
    _check(
        floor.surface_temperature,
        {
            "indoor": "68 °F",
            "surface_rise": At(
                floor.surface_rise,
                {"heat_flux": At(floor.flux_at, {"floor_conductance": "5.540 W/(m²·K)", "excess": "37 F°"})},
            ),
        },
        "86.2 °F",
        "0.1 F°",
        "they round to 0.1 °F",
        LEDGER,
        "105 °F mean water under bare screed",
    ),
    _check(
        floor.surface_temperature,
        {
            "indoor": "68 °F",
            "surface_rise": At(
                floor.surface_rise,
                {"heat_flux": At(floor.flux_at, {"floor_conductance": "3.368 W/(m²·K)", "excess": "42 F°"})},
            ),
        },
        "81.0 °F",
        "0.1 F°",
        "they round to 0.1 °F",
        LEDGER,
        "110 °F mean water under a covering of 0.10",
    ),
    _check(
        floor.piped_area,
        {"heated_area": "1060 ft²"},
        "1060 ft²",
        "0.001 %",
        "it is the same area",
        LEDGER,
        "1,060 ft² with pipe throughout",
    ),
    _check(
        floor.needed_flux,
        {"load": "15000 Btu/h", "floor_area": "1000 ft²"},
        "15 Btu/(h·ft²)",
        "0.01 %",
        "the quotient is exact",
        LEDGER,
        "15,000 Btu/h over 1000 ft²",
    ),
    _check(
        floor.counted_cover,
        {"cover": "0.065 m", "spacing": "0.15 m"},
        "0.065 m",
        "0.001 %",
        "the rule is exact",
        TYPE_A,
        "thin cover counts whole",
    ),
    _check(
        floor.counted_cover,
        {"cover": "0.15 m", "spacing": "0.15 m"},
        "0.1 m",
        "0.001 %",
        "the rule is exact",
        TYPE_A,
        "close pipes: 0.1 m counts",
    ),
    _check(
        floor.counted_cover,
        {"cover": "0.2 m", "spacing": "0.3 m"},
        "0.15 m",
        "0.001 %",
        "the rule is exact",
        TYPE_A,
        "wide pipes: half the spacing counts",
    ),
    # 1/5 + 0.06/1.2 = 0.25, so 4.
    _check(
        floor.standard_conductance,
        {
            "wet_floor_conductance": "5 W/(m²·K)",
            "cover": "0.16 m",
            "counted_cover": "0.1 m",
            "screed_conductivity": "1.2 W/(m·K)",
        },
        "4 W/(m²·K)",
        "0.001 %",
        "the sum of resistances is exact",
        LEDGER,
        "60 mm of concrete beyond the tables",
    ),
    # 1/10.8 + 0.10 + 0.045/1.2 = 0.0925926 + 0.10 + 0.0375
    _check(
        floor.resistance_above,
        {"covering": "0.10 m²·K/W", "cover": "0.045 m", "screed_conductivity": "1.2 W/(m·K)"},
        "0.2300926 m²·K/W",
        "0.001 %",
        "the sum is exact",
        LEDGER,
        "covering 0.10, 45 mm of screed",
    ),
    # The pipe layer stands at 20 + 50 · 0.23 = 31.5 °C; (31.5 − 10)/1.25 = 17.2 W/m² go down to 10 °C.
    _check(
        floor.downward_flux,
        {
            "heat_flux": "50 W/m²",
            "resistance_above": "0.23 m²·K/W",
            "resistance_below": "1.25 m²·K/W",
            "indoor": "20 °C",
            "below": "10 °C",
        },
        "17.2 W/m²",
        "0.001 %",
        "the quotient is exact",
        LEDGER,
        "50 W/m² up, 1.25 m²·K/W below to 10 °C",
    ),
    _check(
        floor.heat_through,
        {"heat_flux": "17.2 W/m²", "floor_area": "90 m²"},
        "1548 W",
        "0.001 %",
        "the product is exact",
        LEDGER,
        "17.2 W/m² from 90 m²",
    ),
    # 3,900 W up and 1,548 W down.
    _check(
        floor.heat_from_water,
        {"load": "3900 W", "downward_loss": "1548 W"},
        "5448 W",
        "0.001 %",
        "the sum is exact",
        LEDGER,
        "3,900 W up and 1,548 W down",
    ),
    _check(
        floor.downward_share,
        {"downward_loss": "1548 W", "heat_from_water": "5448 W"},
        "28.414 %",
        "0.002 %",
        "they print five digits",
        LEDGER,
        "1,548 of 5,448 W",
    ),
]
