"""Heated floors against conduction itself: finite differences in two dimensions, solved with SciPy's sparse solver."""

import math
from functools import cache, partial

from calc.physics import conduction, floor
from comparisons.check import At, Check, Published
from comparisons.en_1264 import conductance

MODEL = Published(
    "SciPy",
    "Steady conduction in two dimensions: finite differences, sparse solver",
    "2026",
    "scipy 1.18",
    "numerical solution",
)

WITHIN, BECAUSE = "0.1 %", "the series claims 0.1 %; halving the grid moves the differences by a tenth of that"


@cache
def finite_differences(
    spacing: float, cover: float, diameter: float, conductivity: float, covering: float, warmest: float = 0.0
) -> tuple[float, float]:
    """Conductance from water to room, W/m²K, and warmest over mean excess of the surface, on a grid of 1 mm.

    Half a spacing of a slab whose underside and pipes touch insulation. At the pipe's circle the differences reach
    exactly to it (Shortley and Weller), where the excess is 1; behind it a plastic wall of 2 mm (0.35 W/mK). The
    surface loses heat through the covering and a film of 10.8 W/m²K; or, with its `warmest` spot so many K over the
    room, by the curve of EN 1264-2 in each spot.
    """
    import numpy
    from scipy.sparse import csr_matrix
    from scipy.sparse.linalg import spsolve

    across, down = round(spacing / 2 / 0.001), round((cover + diameter) / 0.001)
    width, height = spacing / 2 / across, (cover + diameter) / down
    radius, axis = diameter / 2, cover + diameter / 2
    column, row = numpy.meshgrid(numpy.arange(across + 1), numpy.arange(down + 1), indexing="ij")
    x, y = column.ravel() * width, row.ravel() * height
    number = numpy.arange(x.size).reshape(column.shape)
    inside = x**2 + (y - axis) ** 2 <= radius**2 * (1 + 1e-12)

    left = numpy.pad(number, ((1, 0), (0, 0)), mode="reflect")[:-1].ravel()
    right = numpy.pad(number, ((0, 1), (0, 0)), mode="reflect")[1:].ravel()
    up = numpy.pad(number, ((0, 0), (1, 0)), mode="reflect")[:, :-1].ravel()
    low = numpy.pad(number, ((0, 0), (0, 1)), mode="reflect")[:, 1:].ravel()
    chord = numpy.sqrt(numpy.maximum(radius**2 - (y - axis) ** 2, 0))
    arc = numpy.sqrt(numpy.maximum(radius**2 - x**2, 0))
    reach = {}  # to the next node, or to the circle before it
    for name, other, plain, to_circle in (
        ("left", left, width, x - chord),
        ("right", right, width, numpy.full(x.size, width)),
        ("up", up, height, y - axis - arc),
        ("low", low, height, axis - arc - y),
    ):
        reach[name] = numpy.where(inside[other] & ~inside, numpy.abs(to_circle), plain)

    rows, columns, values, known = [number.ravel()], [number.ravel()], [numpy.ones(x.size)], numpy.zeros(x.size)
    known[inside] = 1.0
    own = numpy.zeros(x.size)
    for entry, opposite, other in (
        ("left", "right", left),
        ("right", "left", right),
        ("up", "low", up),
        ("low", "up", low),
    ):
        pull = 2 / (reach[entry] * (reach[entry] + reach[opposite]))
        own += pull
        held = inside[other] & ~inside
        known[held] += pull[held]
        free = ~inside[other] & ~inside
        rows.append(number.ravel()[free])
        columns.append(other[free])
        values.append(-pull[free])
    places = (numpy.concatenate(rows), numpy.concatenate(columns))
    film = numpy.full(across + 1, 10.8)
    for _ in range(12 if warmest else 1):  # each time with the film that the last surface has
        loss = 1 / (covering + 1 / film)
        top = numpy.where(y < height / 2, 2 * loss[column.ravel()] / conductivity / height, 0)
        values[0] = numpy.where(inside, 1.0, own + top)  # the film stands in place of a node above the surface
        matrix = csr_matrix((numpy.concatenate(values), places), shape=(x.size, x.size))
        flux = loss * spsolve(matrix, known).reshape(column.shape)[:, 0]
        surface = flux / film
        film = 8.92 * (surface * warmest / surface[0]) ** 0.1 if warmest else film
    for_each_metre = numpy.trapezoid(flux, dx=1 / across) * spacing
    wall = math.log(diameter / (diameter - 0.004)) / (2 * math.pi * 0.35)
    mean = numpy.trapezoid(surface, dx=1 / across)
    return float(1 / (1 / for_each_metre + wall) / spacing), float(surface[0] / mean)


def _conductance(*floor: float) -> float:
    return finite_differences(*floor)[0]


def _warmest(*floor: float) -> float:
    return finite_differences(*floor)[1]


# Spacing, cover and pipe in m, screed in W/mK, covering in m²K/W; their conductance, and their warmest over mean.
_FLOORS = (
    (0.15, 0.045, 0.016, 1.2, 0.0, "5.3095 W/(m²·K)", "1.06403"),
    (0.15, 0.045, 0.016, 1.2, 0.1, "3.4669 W/(m²·K)", "1.03384"),
    (0.30, 0.045, 0.016, 1.2, 0.0, "3.3976 W/(m²·K)", "1.43177"),
    (0.30, 0.050, 0.016, 1.4, 0.1, "2.6550 W/(m²·K)", "1.18965"),
    (0.30, 0.050, 0.016, 1.4, 0.01, "3.5128 W/(m²·K)", "1.31394"),
    (0.375, 0.020, 0.028, 0.5, 0.02, "2.1082 W/(m²·K)", "2.54099"),
    (0.10, 0.100, 0.020, 1.8, 0.15, "3.1382 W/(m²·K)", "1.00010"),
)
CHECKS = []
for *_floor, _k, _peak in _FLOORS:
    _spacing, _cover, _pipe, _screed, _covering = _floor
    _given = {
        "spacing": f"{_spacing} m",
        "cover": f"{_cover} m",
        "pipe_diameter": f"{_pipe} m",
        "screed_conductivity": f"{_screed} W/(m·K)",
        "covering": f"{_covering} m²·K/W",
    }
    _where = f"spacing {_spacing}, cover {_cover}, pipe {_pipe} m, screed {_screed}, covering {_covering}"
    for _law, _theirs, _recompute in (
        (conduction.slab_conductance, _k, _conductance),
        (conduction.warmest_factor, _peak, _warmest),
    ):
        CHECKS.append(
            Check(
                "Heated floors",
                _where,
                _law,
                _given,
                _theirs,
                WITHIN,
                BECAUSE,
                MODEL,
                partial(_recompute, *_floor),
            )
        )

# What the worksheet goes by: conduction where pipes are wide apart and the standard's tables promise more.
# At 0.225 m, half way from 0.15 to 0.30 m, the mean of both: the tables have 4.4649 W/m²K there.
for _spacing, _theirs, _again in (
    (0.30, "3.3976 W/(m²·K)", partial(_conductance, 0.30, 0.045, 0.016, 1.2, 0.0)),
    (0.225, "4.340 W/(m²·K)", lambda: (4.4649 + _conductance(0.225, 0.045, 0.016, 1.2, 0.0)) / 2),
):
    _given = dict(
        zip(
            ("spacing", "cover", "pipe_diameter", "screed_conductivity", "covering"),
            (f"{_spacing} m", "0.045 m", "0.016 m", "1.2 W/(m·K)", "0 m²·K/W"),
            strict=True,
        )
    )
    CHECKS.append(
        Check(
            "Heated floors",
            f"bare screed, pipes {_spacing} m apart, tables held down to conduction",
            floor.floor_conductance,
            {
                "conduction_share": At(floor.conduction_share, {"spacing": f"{_spacing} m"}),
                "standard_conductance": At(
                    floor.standard_conductance,
                    {
                        "wet_floor_conductance": At(
                            floor.wet_floor_conductance,
                            conductance(f"{_spacing} m", "0.045 m", "0.016 m", "1.2 W/(m·K)", "0 m²·K/W"),
                        ),
                        "cover": "0.045 m",
                        "counted_cover": "0.045 m",
                        "screed_conductivity": "1.2 W/(m·K)",
                    },
                ),
                "slab_conductance": At(conduction.slab_conductance, _given),
            },
            _theirs,
            WITHIN,
            BECAUSE,
            MODEL,
            _again,
        )
    )


def _most_flux(covering: float) -> float:
    """Mean heat, W/m², of pipes 0.30 m apart under 50 mm, while the warmest spot is 9 K over the room."""
    _, warmest = finite_differences(0.30, 0.050, 0.016, 1.4, covering, 9.0)
    return float(8.92 * (9 / warmest) ** 1.1)


def _rise_over_pipe(covering: float, flux: float) -> float:
    """Warmest spot over the room, K, of the same floor while it gives `flux` on average; its film near 9 K."""
    return finite_differences(0.30, 0.050, 0.016, 1.4, covering, 9.0)[1] * float((flux / 8.92) ** (1 / 1.1))


for _covering, _flux in ((0.01, 74.66), (0.1, 83.41)):
    _given = {
        "spacing": "0.30 m",
        "cover": "0.050 m",
        "pipe_diameter": "0.016 m",
        "screed_conductivity": "1.4 W/(m·K)",
        "covering": f"{_covering} m²·K/W",
    }
    _factor = At(conduction.warmest_factor, _given)
    _mean = At(floor.rise_at_limit, {"surface_limit": "29 °C", "indoor": "20 °C", "warmest_factor": _factor})
    _at_flux = At(floor.surface_rise, {"heat_flux": f"{_flux} W/m²"})
    for _law, _arguments, _theirs, _again in (
        (floor.surface_flux, {"surface_rise": _mean}, f"{_flux} W/m²", partial(_most_flux, _covering)),
        (
            floor.warmest_rise,
            {"warmest_factor": _factor, "surface_rise": _at_flux},
            "9 K",
            partial(_rise_over_pipe, _covering, _flux),
        ),
    ):
        CHECKS.append(
            Check(
                "Heated floors",
                f"29 °C at the warmest spot, pipes 0.30 m apart, covering {_covering}",
                _law,
                _arguments,
                _theirs,
                "1.2 %",
                "theirs has in each spot the film that the standard's curve gives there, ours one film",
                MODEL,
                _again,
            )
        )
CHECKS += [
    Check(
        "Heated floors",
        "the mean rise at which the warmest spot is at its limit: (29 − 20)/1.31394",
        floor.rise_at_limit,
        {"surface_limit": "29 °C", "indoor": "20 °C", "warmest_factor": "1.31394"},
        "6.8496 K",
        "0.01 %",
        "the quotient is exact, five digits printed",
        Published("By hand", "Written-out arithmetic", "2026", "this file", "own arithmetic"),
    ),
    Check(
        "Heated floors",
        "half way between 0.15 and 0.30 m",
        floor.conduction_share,
        {"spacing": "0.225 m"},
        "50 %",
        "0.001 %",
        "the rule is exact",
        Published("By hand", "Written-out arithmetic", "2026", "this file", "own arithmetic"),
    ),
]

LOOP = Published(
    "SciPy", "The water's temperature along the pipe, integrated", "2026", "scipy 1.18, solve_ivp", "numerical solution"
)


def _flux_along_the_pipe(supply: float, indoor: float, below: float) -> float:
    """Mean heat upward, W/m², of 90 m² that pass 3.5 W/m²K: the water cools by what it gives up and down on its way."""
    from scipy.integrate import solve_ivp

    def on_the_way(_share: float, now: list[float]) -> list[float]:
        upward = 3.5 * (now[0] - indoor)
        return [-90 * (upward + (0.2 * upward + indoor - below) / 1.76) / 700, upward]

    return float(solve_ivp(on_the_way, (0, 1), [supply, 0.0], rtol=1e-9, atol=1e-9).y[1, -1])


for _supply, _theirs in ((40.0, "53.97 W/m²"), (30.0, "26.44 W/m²")):
    CHECKS.append(
        Check(
            "Heated floors",
            f"supply at {_supply:g} °C, 90 m² over R-10 and ground at 10 °C, room 20 °C",
            floor.flux_from_supply,
            {
                "supply": f"{_supply} °C",
                "indoor": "20 °C",
                "floor_conductance": "3.5 W/(m²·K)",
                "floor_area": "90 m²",
                "flow_capacity": "700 W/K",
                "resistance_above": "0.2 m²·K/W",
                "resistance_below": "1.76 m²·K/W",
                "below": "10 °C",
            },
            _theirs,
            "0.5 %",
            "the logarithmic mean takes what goes down as cooling in proportion, too",
            LOOP,
            partial(_flux_along_the_pipe, _supply, 20.0, 10.0),
        )
    )
