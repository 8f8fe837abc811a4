"""The part of a house's load that one kind of emitter carries: all of it, unless another kind heats some of the rooms.

Each kind needs water for its own part; the plan keeps the hottest of these needs.
"""

from calc.engine.declare import Field, Step
from calc.physics import emitters


def share(key: str, whose: str) -> Field:
    """The field that asks for it."""
    return Field(
        key,
        "fraction",
        f"Share of the house's heat from {whose}",
        "Less than 100 % where something else heats some of the rooms: this worksheet is then about its own part.",
        low="1 %",
        high="100 %",
        unless_given="100 %",
    )


FLOOR_SHARE = share("floor_share", "this floor")  # the same floor, where it is asked for its water and for its slab


def steps(asked: Field) -> tuple[Step, ...]:
    """The load that is carried on the coldest day and on an average one."""
    return (
        Step("own_load", emitters.own_load, "Its part of the load on the coldest day", share=asked.key),
        Step(
            "load_average",
            emitters.part_load,
            "Its load on an average winter day",
            design_load="own_load",
            outdoor="average_outdoor",
        ),
    )


def whole(own_heat: str) -> Step:
    """All that the store gives on the coldest day, for a step `own_heat`: what this kind takes from the water."""
    return Step("heat_from_store", emitters.heat_with_rest, "Heat that the whole house takes", own_heat=own_heat)
