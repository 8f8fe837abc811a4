"""Heated floors against conduction itself: the tables of EN 1264-2 beside a two-dimensional model solved with SciPy."""

import math
from functools import partial

from calc.physics import floor
from tests.published.check import Check, Published
from tests.published.en_1264 import conductance

MODEL = Published("SciPy", "Steady conduction in two dimensions, grid of 0.5 mm, sparse solver", "2026", "scipy 1.18")

# The standard's factors are fits: measured floors differ as much between laboratories.
WITHIN, BECAUSE = "7 %", "the standard's factors are fits and leave out what lies beside and below the pipe"


def conduction(spacing: float, cover: float, diameter: float, conductivity: float, covering: float) -> float:
    """Flux upward for each K between water and room, W/m²K, of a screed that lies on perfect insulation.

    Half a pipe and half a spacing, the pipe as a circle of one temperature behind a plastic wall of 2 mm (0.35 W/mK);
    the surface loses heat through the covering and a film of 10.8 W/m²K.
    """
    import numpy
    from scipy.sparse import coo_matrix  # type: ignore[import-untyped]
    from scipy.sparse.linalg import spsolve  # type: ignore[import-untyped]

    across, down = round(spacing / 2 / 0.0005), round((cover + diameter) / 0.0005)
    width, height = spacing / 2 / across, (cover + diameter) / down
    x, y = numpy.meshgrid((numpy.arange(across) + 0.5) * width, (numpy.arange(down) + 0.5) * height, indexing="ij")
    pipe = (x**2 + (y - cover - diameter / 2) ** 2 < (diameter / 2) ** 2).ravel()
    cell = numpy.arange(across * down).reshape(across, down)

    own, known = numpy.zeros(cell.size), numpy.zeros(cell.size)
    rows, columns, values = [], [], []
    for here, there, link in (
        (cell[:-1].ravel(), cell[1:].ravel(), conductivity * height / width),
        (cell[:, :-1].ravel(), cell[:, 1:].ravel(), conductivity * width / height),
    ):
        for one, other in ((here, there), (there, here)):
            solid = ~pipe[one]
            numpy.add.at(own, one[solid], link)
            numpy.add.at(known, one[solid & pipe[other]], link)  # the pipe's surface stands 1 K over the room
            free = solid & ~pipe[other]
            rows.append(one[free])
            columns.append(other[free])
            values.append(numpy.full(free.sum(), -link))
    upward = width / (height / 2 / conductivity + covering + 1 / 10.8)
    numpy.add.at(own, cell[:, 0], upward)
    own[pipe], known[pipe] = 1.0, 1.0

    every = cell.ravel()
    matrix = coo_matrix(
        (
            numpy.concatenate([own, *values]),
            (numpy.concatenate([every, *rows]), numpy.concatenate([every, *columns])),
        )
    ).tocsr()
    excess = spsolve(matrix, known).reshape(across, down)
    for_each_metre = 2 * upward * excess[:, 0].sum()
    wall = math.log(diameter / (diameter - 0.004)) / (2 * math.pi * 0.35)
    return float(1 / (1 / for_each_metre + wall) / spacing)


CHECKS = [
    Check(
        "Heated floors",
        f"spacing {spacing}, cover {cover}, pipe {diameter} m, screed {conductivity}, covering {covering}",
        floor.wet_floor_conductance,
        conductance(f"{spacing} m", f"{cover} m", f"{diameter} m", f"{conductivity} W/(m·K)", f"{covering} m²·K/W"),
        theirs,
        WITHIN,
        BECAUSE,
        MODEL,
        "library",
        partial(conduction, spacing, cover, diameter, conductivity, covering),
    )
    for spacing, cover, diameter, conductivity, covering, theirs in (
        (0.15, 0.045, 0.016, 1.2, 0.0, "5.295 W/(m²·K)"),
        (0.15, 0.045, 0.016, 1.2, 0.1, "3.461 W/(m²·K)"),
        (0.30, 0.045, 0.016, 1.2, 0.0, "3.386 W/(m²·K)"),
    )
]
