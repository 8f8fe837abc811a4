"""Heat from a row of equal pipes up through a slab on insulation: how much of it, and how unevenly it comes out.

Steady conduction in two dimensions. Each pipe's outside has one temperature, the slab's underside passes nothing and
its top loses heat through a covering and a film to the room. Three line sources inside the pipe, one above the other,
are made strong enough to hold its outside at that temperature in three places. What one source does to the slab with
all its neighbors follows from its mirror images, which sum to logarithms, and from a series for what the loss at the
top adds; twelve terms of it are exact to 0.1 % for every floor that the laws below take.
"""

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from calc.law import Conductivity, Constant, Factor, Metre, ThermalResistance, WattPerSquareMetreKelvin, method

# The film that the tables of EN 1264-2 are made with, and the pipe that they are made for.
SURFACE_FILM = Constant(10.8, "W / m**2 / K", source="en-1264-2")
PIPE_WALL, WALL_CONDUCTIVITY = 0.002, 0.35  # m, W/mK

RANGES = {
    "spacing": "0.05 m to 0.375 m",
    "cover": "0.01 m to 0.21 m",
    "pipe_diameter": "0.008 m to 0.03 m",
    "screed_conductivity": "0.3 W/(m·K) to 3 W/(m·K)",
    "covering": "0 m²·K/W to 0.15 m²·K/W",
}

_SOURCES = (-0.5, 0.0, 0.5)  # how far below the pipe's axis, in its radii
_HELD = (0.3, 1.2, 2.3)  # where on the pipe's outside, as angles from its top
_TERMS = 12


class _Slab(NamedTuple):
    """A slab with every length multiplied by 2 pi over the spacing."""

    thickness: float
    loss: float  # of the top, over conductivity, times that same length
    terms: int  # of the series

    def excess(self, across: float, depth: float, source: float) -> float:
        """Excess at a place over the room, from a unit line source `source` deep, times 2 pi and the conductivity."""
        high, low = sorted((depth, source))
        temperatures = 1 / self.loss + high
        for apart in (low - high, low + high, 2 * self.thickness - low - high):
            near = math.exp(-apart)
            temperatures -= math.log(1 - 2 * near * math.cos(across) + near * near) / 2
        direct, above = math.exp(high - low), math.exp(-high - low)
        below, through = math.exp(2 * (low - self.thickness)), math.exp(-2 * self.thickness)
        for n in range(1, self.terms + 1):
            kept = (n - self.loss) / (n + self.loss)
            whole = (direct**n + kept * above**n) * (1 + below**n) / (1 - kept * through**n)
            temperatures += (whole - direct**n * (1 + below**n) - above**n) * math.cos(n * across) / n
        return temperatures


class _Spread(NamedTuple):
    """Heat from each meter of pipe for each kelvin of its outside over the room, and warmest over mean excess."""

    each_metre: float
    warmest: float


@lru_cache(maxsize=64)  # a chart asks for the same floor at every point
def _spread(
    spacing: float, cover: float, diameter: float, conductivity: float, covering: float, terms: int = _TERMS
) -> _Spread:
    scale = 2 * math.pi / spacing
    top_loss = 1 / (1 / SURFACE_FILM.value + covering)
    slab = _Slab(scale * (cover + diameter), top_loss / conductivity / scale, terms)
    radius, axis = scale * diameter / 2, scale * (cover + diameter / 2)
    sources = [axis + place * radius for place in _SOURCES]
    outside = [(radius * math.sin(angle), axis - radius * math.cos(angle)) for angle in _HELD]
    strengths = _solve([[*(slab.excess(*place, source) for source in sources), 1.0] for place in outside])
    each_metre = 2 * math.pi * conductivity * sum(strengths)
    warmest = sum(strength * slab.excess(0, 0, source) for strength, source in zip(strengths, sources, strict=True))
    return _Spread(each_metre, warmest * top_loss * spacing / each_metre)


def _solve(rows: Sequence[Sequence[float]]) -> list[float]:
    """The numbers whose products with each row's first entries sum to its last: elimination, row by row."""
    (pivot, *first), *others = rows
    reduced = []
    for leading, *entries in others:
        reduced.append([entry - leading / pivot * above for entry, above in zip(entries, first, strict=True)])
    solved = _solve(reduced) if reduced else []
    *factors, right = first
    return [(right - sum(a * b for a, b in zip(factors, solved, strict=True))) / pivot, *solved]


@method(
    "Steady conduction in two dimensions from a row of plastic pipes (wall of 2 mm) that lie on insulation, up through "
    "slab, covering and a film of 10.8 W/(m²·K): line sources in each pipe and their mirror images, as a series.",
    source="slab-conduction",
    ranges=RANGES,
)
def slab_conductance(
    spacing: Metre, cover: Metre, pipe_diameter: Metre, screed_conductivity: Conductivity, covering: ThermalResistance
) -> WattPerSquareMetreKelvin:
    """Heat flux upward for each K between water and room, W/m²K, by conduction; `pipe_diameter` is the outside one."""
    slab = 1 / _spread(spacing, cover, pipe_diameter, screed_conductivity, covering).each_metre
    wall = math.log(pipe_diameter / (pipe_diameter - 2 * PIPE_WALL)) / (2 * math.pi * WALL_CONDUCTIVITY)
    return 1 / (slab + wall) / spacing


@method(
    "Steady conduction in two dimensions from a row of pipes: how far the surface right above a pipe stands over the "
    "room, over how far its mean does; the same series as for the heat.",
    source="slab-conduction",
    ranges=RANGES,
)
def warmest_factor(
    spacing: Metre, cover: Metre, pipe_diameter: Metre, screed_conductivity: Conductivity, covering: ThermalResistance
) -> Factor:
    """Excess of the warmest spot of a floor's surface over its mean excess, both over the room; 1 for an even floor."""
    return _spread(spacing, cover, pipe_diameter, screed_conductivity, covering).warmest
