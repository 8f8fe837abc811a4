"""A worksheet of our own making, for tests of what worksheets may be: how long a store lasts."""

from typing import Any

from calc.engine.declare import Example, Field, Option, Result, Step, Worksheet
from calc.physics import store

HEAT = Field("heat", "energy", "Heat", low="1 Btu", high="1 MMBtu")
LOAD = Field("load", "power", "Load", low="0 Btu/h", high="100 kBtu/h")
WAY = Field("way", "choice", "Way", options=(Option("one", "the one"), Option("two", "the other")))


def worksheet(**changes: Any) -> Worksheet:
    """The plain one, or one with other parts."""
    plain: dict[str, Any] = {
        "key": "test",
        "guide": "storage",
        "question": "How long?",
        "short": "How long.",
        "fields": (HEAT, LOAD),
        "steps": (Step("time", store.time_on_heat, "Time"),),
        "results": (Result("time"),),
        "headline": "time",
        "say": "",
        "examples": (Example("An example", {"heat": "1,000 Btu", "load": "100 Btu/h"}),),
    }
    return Worksheet(**(plain | changes))
