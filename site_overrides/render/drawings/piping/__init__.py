"""Whole systems as parts and pipes, and their drawings. Importing them checks them against the rules."""

from calc.piping.parts import System
from render.drawings.piping.systems import ALL

SYSTEMS: dict[str, System] = {system.key: system for system in ALL}

if __debug__:  # the page draws what has been checked, and does without the rules
    from calc.piping.rules import check

    for _system in ALL:
        check(_system)
