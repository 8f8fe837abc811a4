"""The worksheets: one file each, and its line here, in the order in which a reader would meet them.

A worksheet's module is imported when it is first asked for: a page that shows two of them does not wait for the rest.
"""

from collections.abc import Callable, Iterator, Mapping
from importlib import import_module

from calc.engine.declare import Worksheet

KEYS = (
    "house-load",
    "stored-heat",
    "tank-size",
    "standby",
    "tanks-together",
    "tank-place",
    "firing",
    "load-now",
    "emitter-temperature",
    "floor",
    "slab-store",
    "tempering",
    "air-coil",
    "tap-water",
    "room-heat",
    "chimney-draught",
    "return-mixing",
    "wood-use",
    "fuel-cost",
    "pipe",
    "charge-loop",
    "gravity-loop",
    "buried-pipe",
    "expansion",
    "antifreeze",
    "water-and-steel",
    "other-heat",
    "boiling",
    "relief",
    "heat-dump",
    "power-cut",
    "winter-run",
    "will-it-work",
    "first-sketch",  # asked first; but what it asks belongs to the worksheets above, which the plan names
)


class Worksheets(Mapping[str, Worksheet]):
    """Key to worksheet, each found, and checked, when it is first asked for."""

    def __init__(self, find: Callable[[str], Worksheet]) -> None:
        self._find = find
        self._made: dict[str, Worksheet] = {}

    def __getitem__(self, key: str) -> Worksheet:
        if key not in KEYS:
            raise KeyError(key)
        if key not in self._made:
            made = self._find(key)
            if made.key != key:
                raise ValueError(f"the worksheet in {_module(key)}.py calls itself {made.key!r}")
            if __debug__:  # the page's Python has no checker: the build and the tests have found every mistake before
                from calc.checking.checker import check

                check(made, KEYS)
            self._made[key] = made
        return self._made[key]

    def __contains__(self, key: object) -> bool:
        return key in KEYS

    def __iter__(self) -> Iterator[str]:
        return iter(KEYS)

    def __len__(self) -> int:
        return len(KEYS)


def _module(key: str) -> str:
    return key.replace("-", "_")


def _in_its_file(key: str) -> Worksheet:
    worksheet: Worksheet = import_module(f"calc.worksheets.{_module(key)}").WORKSHEET
    return worksheet


WORKSHEETS: Mapping[str, Worksheet] = Worksheets(_in_its_file)
