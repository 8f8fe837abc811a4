"""The rules that the drawn systems keep: every system passes, and every rule stops a system that breaks it."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from calc.piping import parts, rules
from calc.piping.parts import ANY, FALLS, METAL, RETURN, STILL, SUPPLY, Kind, Part, Pipe, System
from calc.piping.ways import Ways
from render.drawings.piping import SYSTEMS, kinds

Change = Callable[[System], System]

CLOSED, FLOOR, TAPS, TANK = "closed-store", "floor", "taps-as-drawn", "taps-tank"
OPEN, SERIES, EXCHANGER = "open-store", "boiler-series", "boiler-exchanger"
BOX, ROW, BESIDE, DUCT = "open-box", "two-tanks", "tanks-side-by-side", "duct-coil"


def pipe_of(system: System, start: str, end: str) -> Pipe:
    return next(pipe for pipe in system.pipes if (pipe.start, pipe.end) == (start, end))


def instead(old: str, new_kind: Kind) -> Change:
    """Another kind of part in the same place."""
    return lambda system: replace(
        system, parts=tuple(replace(part, kind=new_kind) if part.key == old else part for part in system.parts)
    )


def moved(key: str, x: int, y: int) -> Change:
    return lambda system: replace(
        system, parts=tuple(replace(part, x=x, y=y) if part.key == key else part for part in system.parts)
    )


def acting_on(key: str, other: str) -> Change:
    return lambda system: replace(
        system, parts=tuple(replace(part, acts_on=other) if part.key == key else part for part in system.parts)
    )


def piped(start: str, end: str, /, **new: object) -> Change:
    """The same pipe with something about it changed."""

    def change(system: System) -> System:
        old = pipe_of(system, start, end)
        return replace(
            system,
            pipes=tuple(replace(pipe, **new) if pipe is old else pipe for pipe in system.pipes),  # type: ignore[arg-type]
        )

    return change


def without(*ends: tuple[str, str]) -> Change:
    """Without these pipes."""
    return lambda system: replace(
        system, pipes=tuple(pipe for pipe in system.pipes if (pipe.start, pipe.end) not in ends)
    )


def with_pipes(*pipes: Pipe) -> Change:
    return lambda system: replace(system, pipes=(*system.pipes, *pipes))


def with_parts(*more: Part) -> Change:
    return lambda system: replace(system, parts=(*system.parts, *more))


def fitted(start: str, end: str, new_kind: Kind) -> Change:
    """With a part called "new" fitted into the pipe."""

    def change(system: System) -> System:
        old = pipe_of(system, start, end)
        x, y = system.points(old)[0]
        pipes = tuple(pipe for pipe in system.pipes if pipe is not old)
        halves = replace(old, end="new.in", corners=()), replace(old, start="new.out")
        return replace(system, parts=(*system.parts, Part("new", new_kind, x, y)), pipes=(*pipes, *halves))

    return change


def hung_on(start: str, end: str, new_kind: Kind, service: parts.Service) -> Change:
    """With a part called "new" hung on a tee in the pipe, beside the way that stays open."""

    def change(system: System) -> System:
        old = pipe_of(system, start, end)
        x, y = system.points(old)[0]
        kept = tuple(pipe for pipe in system.pipes if pipe is not old)
        halves = replace(old, end="new-tee", corners=()), replace(old, start="new-tee")
        parts_then = (*system.parts, Part("new-tee", kinds.TEE, x, y), Part("new", new_kind, x, y))
        return replace(system, parts=parts_then, pipes=(*kept, *halves, Pipe("new-tee", "new.in", service)))

    return change


def taken_out(key: str, start: str, end: str) -> Change:
    """Without a part in a pipe: what came to it goes on to where its water went."""

    def change(system: System) -> System:
        before = next(pipe for pipe in system.pipes if pipe.end.startswith(key + "."))
        after = next(pipe for pipe in system.pipes if pipe.start == start and pipe.end == end)
        pipes = tuple(pipe for pipe in system.pipes if pipe not in (before, after))
        joined = replace(before, end=after.end, corners=(*before.corners, *after.corners))
        kept = tuple(part for part in system.parts if part.key != key)
        return replace(system, parts=kept, pipes=(*pipes, joined))

    return change


def both(*changes: Change) -> Change:
    def change(system: System) -> System:
        for change in changes:
            system = change(system)
        return system

    return change


FAN_DUMP = replace(kinds.DUMP, power=True)
VESSEL_TEE = ("expansion-tee", "filling-tee")


def moved_to(
    part: str, pipe: tuple[str, str], start: str, end: str, service: parts.Service, at: tuple[int, int]
) -> Change:
    """With this part's pipe taken off, and joined by a tee to another pipe instead."""

    def change(system: System) -> System:
        old, own = pipe_of(system, start, end), pipe_of(system, *pipe)
        kept = tuple(pipe for pipe in system.pipes if pipe not in (old, own))
        new = (Pipe(start, "new-tee", service), Pipe("new-tee", end, service), replace(own, start="new-tee"))
        return replace(system, parts=(*system.parts, Part("new-tee", kinds.TEE, *at)), pipes=(*kept, *new))

    return change


LIMIT = ("limit-tee", "high-limit.tapping")

# rule, system, what is done to it, the part that the error has to name, and a piece of what it has to say
BROKEN: list[tuple[str, str, Change, str, str]] = [
    # Pipes that go nowhere, or the wrong way.
    ("joined", CLOSED, without(("stove.gauge", "pressure-gauge.tapping"), ("dump.top", "dump-vent.in")), "dump-vent", ""),
    ("joined", CLOSED, without(("stove.relief", "relief.in")), "relief", ""),
    ("joined", CLOSED, without(("sensor-tee", "stove-sensor.tapping")), "sensor-tee", ""),
    ("joined", CLOSED, piped("house-pump.out", "house.in", start="house.in", end="house-pump.out"), "house-pump", ""),
    ("joined", FLOOR, piped("mixing-tee", "house-tee", start="house-tee", end="mixing-tee"), "house-tee", ""),
    ("slopes as drawn", CLOSED, piped("dump.out", "stove.dump return", corners=((40, 400), (50, 400), (50, 335))), "dump", ""),
    ("joined", CLOSED, piped("house-pump.out", "house.in", start="house.in", end="house-pump.out"), "house", "runs against"),
    ("joined", CLOSED, with_pipes(Pipe("stove.gauge", "sensor-tee", STILL)), "stove", "once, not 2 times"),
    ("slopes as drawn", CLOSED, piped("bypass-tee", "store.charge", slope=FALLS), "bypass-tee", ""),
    ("slopes as drawn", CLOSED, piped("bypass-tee", "store.charge", corners=((225, 165), (225, 300))), "bypass-tee", ""),
    # Something in the way of a fire's safety.
    ("open ways", CLOSED, fitted("stove.relief", "relief.in", kinds.HAND_VALVE), "new", ""),
    ("open ways", CLOSED, fitted("stove.dump supply", "dump.in", kinds.ZONE_VALVE), "new", "the 'in' end of its dump"),
    ("open ways", CLOSED, fitted("dump.out", "stove.dump return", kinds.CHECK), "new", "the 'out' end of its dump"),
    ("open ways", CLOSED, fitted("dump.out", "stove.dump return", kinds.PUMP), "new", ""),
    ("open ways", CLOSED, fitted(*VESSEL_TEE, kinds.HAND_VALVE), "new", ""),
    # Even where another way stays open beside it: a valve that hangs on the dump's or the vent's pipes.
    ("open ways", CLOSED, hung_on("stove.dump supply", "dump.in", kinds.HAND_VALVE, SUPPLY), "new", "gravity dump, where nothing"),
    ("open ways", OPEN, hung_on("vent-tee", "open-vent.in", kinds.ZONE_VALVE, STILL), "new", "open vent, where nothing may"),
    ("open ways", CLOSED, fitted("stove.supply", "sensor-tee", kinds.CHECK), "new", ""),
    ("open ways", CLOSED, without(("stove.relief", "relief.in")), "stove", "no relief"),
    ("open ways", CLOSED, without(("filling-tee", "vessel.in")), "stove", ""),
    ("open ways", CLOSED, without(("dump.out", "stove.dump return")), "dump", "its 'out' end is not joined"),
    ("open ways", CLOSED, instead("dump", replace(kinds.DUMP, role="emitter")), "stove", "no dump"),
    ("open ways", OPEN, fitted("vent-tee", "open-vent.in", kinds.HAND_VALVE), "new", ""),
    ("open ways", OPEN, fitted("feed-tank.feed", "expansion-tee", kinds.HAND_VALVE), "new", ""),
    ("open ways", OPEN, without(("vent-tee", "open-vent.in")), "stove", ""),
    ("open ways", SERIES, fitted("boiler.relief", "boiler-relief.in", kinds.HAND_VALVE), "new", ""),
    ("open ways", EXCHANGER, fitted("house-pump.out", "plate.cold in", kinds.CHECK), "new", ""),
    # A dump that does not work by itself.
    ("dump by gravity", CLOSED, instead("dump", FAN_DUMP), "dump", "power cut"),
    ("dump by gravity", CLOSED, moved("dump", 85, 460), "dump", "must stand above"),
    (
        "dump by gravity",
        CLOSED,
        piped("stove.dump supply", "dump.in", corners=((150, 50), (170, 50), (170, 90), (160, 90), (160, 50))),
        "dump",
        "dips or humps",
    ),
    ("dump by gravity", CLOSED, piped("dump.out", "stove.dump return", corners=((40, 355), (50, 355), (50, 335))), "dump", ""),
    ("dump by gravity", CLOSED, piped("dump.out", "stove.dump return", slope=""), "dump", "is not said to be one that falls"),
    # A vent that is not open, or not above.
    ("open vent", OPEN, piped("vent-tee", "open-vent.in", corners=((150, 20), (170, 20), (170, 30))), "open-vent", ""),
    ("open vent", OPEN, piped("vent-tee", "open-vent.in", slope=""), "open-vent", ""),
    ("open vent", OPEN, moved("feed-tank", 240, 200), "feed-tank", "gravity dump is higher"),
    ("open vent", OPEN, without(("vent-tee", "open-vent.in")), "open-vent", "rise all the way"),
    # Water that hangs above open water.
    ("nothing over open water", BOX, moved("dump", 85, 90), "dump", "hangs above the open water of open box store"),
    ("nothing over open water", BOX, moved("house-pump", 265, 60), "house-pump", "in a vacuum and boils"),
    (
        "nothing over open water",
        BOX,
        piped("store.supply", "check.in", corners=((390, 235), (390, 30), (395, 30), (395, 660))),
        "store",
        "goes above the open water",
    ),
    (
        "nothing over open water",
        ROW,
        both(
            instead("first-tank", replace(kinds.FIRST_TANK, level=-100)),
            instead("second-tank", replace(kinds.SECOND_TANK, level=-60)),
        ),
        "second-tank",
        "at another level",
    ),
    ("open ways", BOX, instead("store", replace(kinds.OPEN_BOX, level=None)), "stove", "no expansion"),
    ("open ways", BOX, fitted("vent-tee", "open-vent.in", kinds.HAND_VALVE), "new", ""),
    ("open ways", BOX, fitted("bypass-tee", "store.charge", kinds.HAND_VALVE), "new", ""),
    ("relief runs off", BOX, fitted("store.overflow", "overflow.in", kinds.HAND_VALVE), "store", "its overflow has to fall"),
    ("waters apart", BOX, instead("float-valve", kinds.HAND_VALVE), "cold-water", ""),
    # Tanks in a row that a valve cuts off, or that are joined the wrong way round.
    ("tanks keep their guards", ROW, fitted("first-tank.foot", "second-tank.head", kinds.HAND_VALVE), "first-tank", "every expansion"),
    (
        "tanks keep their guards",
        ROW,
        both(
            fitted("first-tank.foot", "second-tank.head", kinds.HAND_VALVE),
            without(("second-tank.charge return", "expansion-tee")),
        ),
        "second-tank",
        "every relief",
    ),
    (
        "rows from low to high",
        ROW,
        instead("first-tank", replace(kinds.FIRST_TANK, ports={**kinds.FIRST_TANK.ports, "foot": parts.Port(25, -60)})),
        "first-tank",
        "enter second tank at the top",
    ),
    (
        "rows from low to high",
        ROW,
        instead("second-tank", replace(kinds.SECOND_TANK, ports={**kinds.SECOND_TANK.ports, "head": parts.Port(-25, 60)})),
        "first-tank",
        "leave it at its foot",
    ),
    ("air", ROW, without(("second-tank.top", "second-vent.in")), "second-tank", ""),
    ("drains", ROW, without(("second-tank.bottom", "second-drain.in"), ("house-tee", "house-drain.in")), "second-tank", ""),
    ("no creeping", ROW, taken_out("check", "check.out", "house-pump.in"), "house", "first tank"),
    # Tanks side by side that do not get alike, or that a valve of their own cuts off.
    (
        "tanks share alike",
        BESIDE,
        both(
            piped("first-foot", "second-foot", start="second-foot", end="first-foot"),
            piped("second-foot", "drain-tee", start="first-foot", corners=((255, 420),)),
        ),
        "second-tank",
        "charging pump has a longer way through it",
    ),
    (
        "tanks share alike",
        BESIDE,
        piped("second-head", "check.in", start="first-head", corners=((255, 60), (390, 60), (390, 590))),
        "second-tank",
        "no water of the house pump",
    ),
    (
        "tanks share alike",
        BESIDE,
        piped("first-head", "second-head", corners=((255, 90), (345, 90))),
        "first-tank",
        "house pump has a longer way through it",
    ),
    (
        "tanks keep their guards",
        BESIDE,
        both(
            fitted("first-head", "first-tank.head", kinds.HAND_VALVE),
            fitted("first-tank.foot", "first-foot", kinds.ZONE_VALVE),
        ),
        "first-tank",
        "every relief",
    ),
    ("air", BESIDE, without(("second-head", "store-vent.in")), "second-tank", ""),
    ("drains", BESIDE, without(("drain-tee", "store-drain.in"), ("house-tee", "house-drain.in")), "first-tank", ""),
    ("metal at the fire", BESIDE, piped("house-tee", "first-foot", material=ANY), "house-tee", "what the fire makes"),
    # Air that goes the wrong way round, or that a blower sends over a cold coil.
    ("air the right way", DUCT, moved("duct-coil", 325, 690), "duct-coil", "comes to the furnace"),
    ("air the right way", DUCT, moved("cooling-coil", 40, 690), "duct-coil", "comes to the cooling coil"),
    ("air the right way", DUCT, moved("cooling-coil", 315, 690), "cooling-coil", "exchanger then rusts"),
    ("air the right way", DUCT, moved("filter", 30, 690), "duct-coil", "no filter"),
    ("air the right way", DUCT, moved("furnace", 30, 690), "duct-coil", "made for cool air"),
    ("air the right way", DUCT, instead("furnace", kinds.FILTER), "duct-coil", "no blower"),
    ("blowers wait", DUCT, acting_on("coil-sensor", "house-pump"), "furnace", "blow over a cold"),
    ("blowers wait", DUCT, without(("coil-tee", "coil-sensor.tapping")), "furnace", "no sensor in the water before it"),
    ("open ways", DUCT, instead("dump", replace(kinds.DUMP, role="emitter")), "stove", "no dump"),
    ("no creeping", DUCT, taken_out("check", "check.out", "house-pump.in"), "duct-coil", "store"),
    # A relief valve whose discharge goes astray.
    ("relief runs off", CLOSED, piped("relief.out", "discharge.in", corners=((15, 150), (10, 150))), "relief", "fall all the way"),
    ("relief runs off", CLOSED, piped("relief.out", "discharge.in", material=ANY), "relief", "metal"),
    ("relief runs off", CLOSED, piped("relief.out", "discharge.in", slope=""), "relief", "fall all the way"),
    ("relief runs off", CLOSED, fitted("relief.out", "discharge.in", kinds.HAND_VALVE), "relief", "not where it drains"),
    ("relief runs off", OPEN, fitted("feed-tank.overflow", "overflow.in", kinds.HAND_VALVE), "feed-tank", "its overflow has to fall"),
    # Plastic before anything has cooled the water.
    ("metal until mixed", CLOSED, piped("store.supply", "check.in", material=ANY), "store", ""),
    ("metal until mixed", FLOOR, piped("check.out", "tempering-valve.hot", material=ANY), "check", "nothing has cooled"),
    ("metal until mixed", TAPS, piped("tap-relief-tee", "tap-tempering-valve.hot", material=ANY), "tap-relief-tee", ""),
    ("metal until mixed", SERIES, piped("boiler-vent-tee", "check.in", material=ANY), "boiler-vent-tee", ""),
    # Plastic where the fire can reach.
    ("metal at the fire", CLOSED, piped("bypass-tee", "store.charge", material=ANY), "bypass-tee", ""),
    ("metal at the fire", CLOSED, piped("dump.out", "stove.dump return", material=ANY), "stove", ""),
    ("metal at the fire", CLOSED, piped("stove.relief", "relief.in", material=ANY), "stove", ""),
    ("metal at the fire", CLOSED, piped("store.charge return", "expansion-tee", material=ANY), "expansion-tee", ""),
    ("metal at the fire", OPEN, piped("vent-tee", "open-vent.in", material=ANY), "vent-tee", ""),
    # A cold return.
    ("warm return", CLOSED, instead("loading-valve", replace(kinds.LOADING_VALVE, role="valve", closes="by hand")), "stove", ""),
    # The vessel on the wrong side of a pump.
    (
        "vessel where pumps draw",
        CLOSED,
        both(
            with_parts(Part("vessel-tee", kinds.TEE, 140, 420)),
            without(VESSEL_TEE, ("charge-pump.out", "stove-tee")),
            with_pipes(
                Pipe("charge-pump.out", "vessel-tee", RETURN),
                Pipe("vessel-tee", "stove-tee", RETURN),
                Pipe("vessel-tee", "filling-tee", STILL),
            ),
        ),
        "charge-pump",
        "",
    ),
    (
        "vessel where pumps draw",
        CLOSED,
        both(without(VESSEL_TEE), with_pipes(Pipe("sensor-tee", "filling-tee", STILL))),
        "charge-pump",
        "",
    ),
    (
        "vessel where pumps draw",
        EXCHANGER,
        both(
            with_parts(Part("vessel-tee", kinds.TEE, 205, 840)),
            without(("house-vessel-tee", "house-vessel.in"), ("house-pump.out", "plate.cold in")),
            with_pipes(
                Pipe("house-pump.out", "vessel-tee", RETURN),
                Pipe("vessel-tee", "plate.cold in", RETURN),
                Pipe("vessel-tee", "house-vessel.in", STILL),
            ),
        ),
        "house-pump",
        "",
    ),
    # Behind something that takes much of the pump's pressure, the vessel is on the wrong side as well.
    (
        "vessel where pumps draw",
        EXCHANGER,
        moved_to("house-vessel", ("house-vessel-tee", "house-vessel.in"), "plate.cold out", "boiler.in", SUPPLY, (210, 745)),
        "house-pump",
        "",
    ),
    (
        "vessel where pumps draw",
        FLOOR,
        both(without(VESSEL_TEE), with_pipes(Pipe("limit-tee", "filling-tee", STILL))),
        "house-pump",
        "",
    ),
    (
        "vessel where pumps draw",
        EXCHANGER,
        both(
            instead("house-pump", replace(kinds.HAND_VALVE, symbol="pump")),
            fitted("plate.cold out", "boiler.in", kinds.PUMP),
        ),
        "new",
        "",
    ),
    # An exchanger whose sides lean on each other.
    ("each side its own", TAPS, without(("tap-vessel-tee", "tap-vessel.in")), "plate", "cold side has no expansion"),
    ("each side its own", TAPS, without(("tap-relief-tee", "tap-relief.in")), "plate", "cold side has no relief"),
    ("each side its own", TAPS, fitted("tap-cold-tee", "flow-tee", kinds.CHECK), "plate", ""),
    ("each side its own", TANK, without(("tap-tank.relief", "tap-relief.in")), "tap-tank", ""),
    ("each side its own", EXCHANGER, without(("house-vessel-tee", "house-vessel.in")), "plate", ""),
    ("each side its own", EXCHANGER, fitted("plate.cold out", "boiler.in", kinds.HAND_VALVE), "plate", ""),
    # Hot water where it harms.
    ("tempered", FLOOR, piped("store.supply", "check.in", end="house-pump.in"), "floor", ""),
    ("tempered", TAPS, piped("tap-tempering-valve.mixed", "taps.in", start="plate.cold out"), "taps", ""),
    ("tempered", FLOOR, piped("check.out", "tempering-valve.hot", end="tempering-valve.cold"), "tempering-valve", "hot water comes to its cold end"),
    ("tempered", FLOOR, without(("check.out", "tempering-valve.hot")), "tempering-valve", "no hot water comes to its hot end"),
    ("limit on floors", FLOOR, without(("limit-tee", "high-limit.tapping")), "floor", ""),
    ("limit on floors", FLOOR, instead("high-limit", kinds.SENSOR), "floor", ""),
    ("limit on floors", FLOOR, acting_on("high-limit", ""), "high-limit", ""),
    ("limit on floors", FLOOR, acting_on("high-limit", "charge-pump"), "high-limit", ""),
    ("limit on floors", FLOOR, acting_on("high-limit", "floor"), "high-limit", ""),
    (
        "limit on floors",
        FLOOR,
        moved_to("high-limit", LIMIT, "check.out", "tempering-valve.hot", SUPPLY, (305, 590)),
        "floor",
        "no high limit",
    ),
    ("limit on floors", FLOOR, piped("limit-tee", "high-limit.tapping", start="sensor-tee"), "floor", ""),
    ("no creeping", FLOOR, taken_out("check", "check.out", "tempering-valve.hot"), "floor", ""),
    ("no creeping", CLOSED, taken_out("check", "check.out", "house-pump.in"), "house", ""),
    ("no creeping", TAPS, taken_out("check", "check.out", "tap-pump.in"), "plate", ""),
    ("no creeping", SERIES, taken_out("check", "check.out", "house.in"), "house", ""),
    # Heating water in the drinking water.
    ("waters apart", CLOSED, instead("backflow", kinds.HAND_VALVE), "cold-water", "nothing keeps the water of"),
    ("waters apart", OPEN, instead("float-valve", kinds.HAND_VALVE), "cold-water", ""),
    ("waters apart", CLOSED, without(("filling-valve.out", "filling-tee")), "stove", "cannot be filled"),
    ("waters apart", TAPS, instead("plate", replace(kinds.DOUBLE_WALL_PLATE, ports={
        name: replace(port, side="water") for name, port in kinds.PLATE.ports.items()
    })), "tap-main", ""),
    ("two walls", TAPS, instead("plate", kinds.PLATE), "plate", ""),
    ("two walls", TANK, instead("tap-tank", replace(kinds.TAP_TANK, double_wall=False)), "tap-tank", ""),
    # Air and water that cannot leave.
    ("air", CLOSED, without(("store.top", "store-vent.in")), "store", ""),
    ("air", CLOSED, without(("dump.top", "dump-vent.in")), "dump", ""),
    ("air", CLOSED, moved("store-vent", 310, 480), "store", ""),
    ("air", EXCHANGER, without(("boiler-vent-tee", "boiler-vent.in")), "boiler", ""),
    ("drains", CLOSED, without(("store.bottom", "store-drain.in"), ("house-tee", "house-drain.in")), "store", ""),
    ("drains", CLOSED, moved("stove-drain", 125, 380), "stove", ""),
    ("drains", EXCHANGER, without(("boiler-return-tee", "boiler-drain.in")), "house", ""),
]  # fmt: skip


@pytest.mark.parametrize("key", SYSTEMS)
def test_every_system_keeps_every_rule(key: str) -> None:
    assert rules.check(SYSTEMS[key]) is SYSTEMS[key]


@pytest.mark.parametrize(("rule", "key", "change", "part", "said"), BROKEN)
def test_a_system_that_breaks_a_rule_is_refused_by_name(
    rule: str, key: str, change: Change, part: str, said: str
) -> None:
    with pytest.raises(rules.PipingError) as refused:
        rules.check(change(SYSTEMS[key]))
    faults = [fault for fault in refused.value.faults if (fault.rule, fault.part.key) == (rule, part)]
    assert any(said in fault.sentence for fault in faults), str(refused.value)
    assert repr(rule) in str(refused.value)
    assert f"({part})" in str(refused.value)
    assert repr(key) in str(refused.value)


def test_two_valves_one_after_the_other_are_both_named() -> None:
    once = fitted("stove.relief", "relief.in", kinds.HAND_VALVE)(SYSTEMS[CLOSED])
    second = replace(
        once,
        parts=tuple(replace(p, key="first") if p.key == "new" else p for p in once.parts),
        pipes=tuple(
            replace(p, start=p.start.replace("new", "first"), end=p.end.replace("new", "first")) for p in once.pipes
        ),
    )
    twice = fitted("first.out", "relief.in", kinds.HAND_VALVE)
    assert [part.key for part, _ in rules.open_ways(twice(second))] == ["first", "new"]


def test_the_loading_valve_is_not_blamed_for_another_valve() -> None:
    change = fitted("stove.supply", "sensor-tee", kinds.CHECK)
    assert [part.key for part, _ in rules.open_ways(change(SYSTEMS[CLOSED]))] == ["new"]


def test_the_loading_valve_is_blamed_where_it_is_the_only_way() -> None:
    change = without(("bypass-tee", "store.charge"))
    assert [part.key for part, _ in rules.open_ways(change(SYSTEMS[CLOSED]))] == ["loading-valve"]


def test_a_dump_that_stands_right_on_the_stove_stands_above_it() -> None:
    change = moved("dump", 85, 190)
    assert not any("must stand above" in said for _, said in rules.dump_by_gravity(change(SYSTEMS[CLOSED])))


def test_a_feed_tank_beside_the_highest_water_is_high_enough() -> None:
    change = both(moved("feed-tank", 240, 140), moved("overflow", 305, 400))
    assert not list(rules.vent_is_open(change(SYSTEMS[OPEN])))


def small_system(*pieces: Part, pipes: tuple[Pipe, ...]) -> System:
    return System("small", "A small one", "", False, pieces, pipes, (), (), 400)


@pytest.mark.parametrize(
    ("hot", "start", "end"),
    [
        (kinds.STOVE, "hot.supply", "hot.return"),
        (kinds.BOILER, "hot.out", "hot.in"),
        (kinds.STORE, "hot.supply", "hot.return"),
        (
            replace(kinds.PLATE, ports={"out": parts.Port(0, 0, "out"), "in": parts.Port(0, 10, "in")}),
            "hot.out",
            "hot.in",
        ),
    ],
)
def test_a_floor_straight_from_anything_hot_is_refused(hot: Kind, start: str, end: str) -> None:
    source, floor = Part("hot", hot, 100, 100), Part("floor", kinds.FLOOR, 100, 300)
    pipes = (Pipe(start, "floor.in", SUPPLY), Pipe("floor.out", end, RETURN))
    assert [part.key for part, _ in rules.tempered(small_system(source, floor, pipes=pipes))] == ["floor"]


@pytest.mark.parametrize(("heating", "port"), [(kinds.STOVE, "gauge"), (kinds.HOUSE, "in"), (kinds.FLOOR, "in")])
def test_cold_water_joined_straight_to_heating_water_is_refused(heating: Kind, port: str) -> None:
    main, heated = Part("main", kinds.MAIN, 100, 100), Part("heated", heating, 200, 300)
    system = small_system(main, heated, pipes=(Pipe("main.out", f"heated.{port}", parts.TAP),))
    assert {part.key: said for part, said in rules.waters_are_apart(system)} == {
        "main": f"nothing keeps the water of {heating.words} out of it",
        "heated": "its water cannot be filled through a backflow preventer or an air gap",
    }


def test_an_exchanger_between_two_heating_waters_may_have_a_single_wall() -> None:
    assert SYSTEMS[EXCHANGER].part("plate").kind is kinds.PLATE
    assert not list(rules.two_walls_before_taps(SYSTEMS[EXCHANGER]))


def test_an_exchanger_between_two_drinking_waters_may_have_a_single_wall() -> None:
    cold, well, plate = (
        Part("cold", kinds.MAIN, 100, 100),
        Part("well", kinds.MAIN, 100, 200),
        Part("plate", kinds.PLATE, 200, 300),
    )
    pipes = (Pipe("cold.out", "plate.cold in", parts.TAP), Pipe("well.out", "plate.hot in", parts.TAP))
    assert not list(rules.two_walls_before_taps(small_system(cold, well, plate, pipes=pipes)))


def test_every_rule_has_been_broken() -> None:
    assert {rule for rule, *_ in BROKEN} == set(rules.RULES)


CLOSERS = {"by hand": kinds.HAND_VALVE, "by a spring": kinds.CHECK, "without power": kinds.ZONE_VALVE}
SAFETY_RUNS = ("dump-pipe", "vent-pipe", "feed-pipe", "expansion-pipe")


def safety_pipes(system: System) -> list[Pipe]:
    """Every pipe between the fire and its relief, vent, dump and expansion, found by hand: runs, and the way to the store."""
    to_store = ("stove.supply", "sensor-tee", "bypass-tee", "store.charge return")
    result = [
        pipe
        for pipe in system.pipes
        if pipe.run in SAFETY_RUNS or pipe.end.endswith("relief.in") or pipe.start in to_store
    ]
    return [pipe for pipe in result if not pipe.end.startswith(("loading-valve", "stove-sensor", "tap-relief"))]


@pytest.mark.parametrize("key", SYSTEMS)
@pytest.mark.parametrize("closer", CLOSERS)
def test_nothing_that_closes_passes_anywhere_between_a_fire_and_its_safety(key: str, closer: str) -> None:
    system = SYSTEMS[key]
    pipes = safety_pipes(system)
    assert len(pipes) >= 8
    for pipe in pipes:
        faults = [
            (name, part.key)
            for name, rule in rules.RULES.items()
            for part, _ in rule(fitted(pipe.start, pipe.end, CLOSERS[closer])(system))
        ]
        assert ("open ways", "new") in faults, f"{closer} from {pipe.start} to {pipe.end}: {faults}"


@pytest.mark.parametrize("key", SYSTEMS)
def test_the_fire_side_is_of_metal_throughout(key: str) -> None:
    system = SYSTEMS[key]
    runs = (*SAFETY_RUNS, "charge-pipe", "discharge-pipe")
    assert all(pipe.material == METAL for pipe in system.pipes if pipe.run in runs)


@pytest.mark.parametrize("key", SYSTEMS)
def test_every_key_that_a_description_names_exists_once(key: str) -> None:
    system = SYSTEMS[key]
    keys = [part.key for part in system.parts] + [run.key for run in system.runs]
    assert len(keys) == len(set(keys))
    listed = [item for _, items in system.groups for item in items]
    assert sorted(listed) == sorted(key for key in keys if key not in {p.key for p in system.of_role("tee")})
    for part in system.parts:
        assert part.inside in ("", *keys)
        assert part.acts_on in ("", *keys)
    assert {pipe.run for pipe in system.pipes} - {""} == {run.key for run in system.runs}


@pytest.mark.parametrize("key", SYSTEMS)
def test_every_pump_sends_water_round_and_back(key: str) -> None:
    system = SYSTEMS[key]
    ways = Ways(system)
    for pump in system.of_role("pump"):
        rounds = list(ways.rounds(pump))
        assert rounds, pump.key
        for path in rounds:
            assert path[0].here == (pump.key, "out")
            assert path[-1].there == (pump.key, "in")


def test_the_floor_pump_goes_round_by_the_mixing_and_by_the_store() -> None:
    system = SYSTEMS[FLOOR]
    stops = [
        [step.there[0] for step in path if system.part(step.there[0]).role != "tee"]
        for path in Ways(system).rounds(system.part("house-pump"))
    ]
    assert sorted(stops, key=len) == [
        ["floor", "tempering-valve", "house-pump"],
        ["floor", "store", "check", "tempering-valve", "house-pump"],
    ]


def test_waters_that_never_meet_are_told_apart() -> None:
    def fires_water(key: str) -> set[str]:
        body = next(body for body in Ways(SYSTEMS[key]).bodies() if ("stove", "water") in body)
        return {part for part, _ in body}

    assert {"store", "vessel", "house"} <= fires_water(CLOSED)
    assert "boiler" in fires_water(SERIES)
    assert not {"boiler", "house", "house-vessel"} & fires_water(EXCHANGER)
    assert not {"taps", "tap-vessel", "cold-water"} & fires_water(TAPS)


def test_a_part_is_turned_as_it_is_drawn() -> None:
    pump = Part("pump", kinds.PUMP, 100, 50, turn=90)
    assert (pump.place("in"), pump.place("out")) == ((100, 35), (100, 65))  # clockwise: rightwards becomes downwards
    valve = Part("valve", kinds.TEMPERING_VALVE, 100, 50, mirror=True)
    assert (valve.place("hot"), valve.place("mixed"), valve.place("cold")) == ((115, 50), (85, 50), (100, 65))
    assert Part("zone", kinds.ZONE_VALVE, 100, 50, turn=270).box == (80, 35, 120, 65)


def test_asking_for_a_part_that_is_not_there_names_it() -> None:
    with pytest.raises(KeyError, match="has no part 'chimney'"):
        SYSTEMS[CLOSED].part("chimney")


def test_supply_and_return_are_told_apart_where_the_drawing_needs_it() -> None:
    services = {pipe.service for system in SYSTEMS.values() for pipe in system.pipes}
    assert services == {SUPPLY, RETURN, STILL, parts.TAP, parts.DISCHARGE}
