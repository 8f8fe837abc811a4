"""Whole systems as parts and pipes, for the drawings of the guides. Importing them checks them against the rules."""

from calc.piping.parts import System
from calc.piping.rules import check
from calc.piping.systems import ALL

SYSTEMS: dict[str, System] = {system.key: check(system) for system in ALL}
