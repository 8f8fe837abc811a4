"""Heated floors against conduction itself: finite differences in two dimensions, solved with SciPy's sparse solver."""

import math
from functools import cache, partial

from calc.physics import conduction
from comparisons.check import Check, Published

MODEL = Published(
    "SciPy", "Steady conduction in two dimensions: finite differences, sparse solver", "2026", "scipy 1.18"
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
    for one, opposite, other in (
        ("left", "right", left),
        ("right", "left", right),
        ("up", "low", up),
        ("low", "up", low),
    ):
        pull = 2 / (reach[one] * (reach[one] + reach[opposite]))
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
                "library",
                partial(_recompute, *_floor),
            )
        )
