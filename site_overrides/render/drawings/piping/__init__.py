"""Whole systems as parts and pipes, and their drawings. Each is checked against the rules before it is drawn."""

from calc.piping.parts import System
from render.drawings.piping.systems import ALL

SYSTEMS: dict[str, System] = {system.key: system for system in ALL}
