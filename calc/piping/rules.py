"""What every drawn system has to keep to. A rule looks at the description alone and names the part that breaks it.

The rules are common practice for solid-fuel water heating, and say what the drawings' guides teach. They cannot prove a
real system safe; they stop a drawing from teaching a dangerous one.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise

from calc.piping.parts import DISCHARGE, FALLS, FLOWING, METAL, RISES, SUPPLY, TAP, Part, Slope, System, split_end
from calc.piping.ways import Path, Side, Step, Ways, always

_HOT = ("fire", "boiler", "store", "exchanger")
_WARM_ROOMS = ("emitter", "floor")
_RESISTS = (*_WARM_ROOMS, "exchanger")  # water loses much of the pump's pressure in them


@dataclass(frozen=True)
class Fault:
    """A broken rule: its name, the part at fault, and one sentence."""

    rule: str
    part: Part
    sentence: str


class PipingError(ValueError):
    """A described system breaks rules; the message names each part and rule."""

    def __init__(self, system: System, faults: Iterable[Fault]) -> None:
        self.faults = tuple(faults)
        lines = (
            f"- {fault.part.name} ({fault.part.key}), rule {fault.rule!r}: {fault.sentence}" for fault in self.faults
        )
        super().__init__("\n".join((f"the piping of {system.key!r} breaks its rules:", *lines)))


Found = Iterator[tuple[Part, str]]
Rule = Callable[[System], Found]


def check(system: System) -> System:
    """The system itself if it keeps every rule; PipingError otherwise."""
    faults = [Fault(name, part, sentence) for name, rule in RULES.items() for part, sentence in rule(system)]
    if faults:
        raise PipingError(system, faults)
    return system


# --- every pipe goes somewhere, the right way round


def joined(system: System) -> Found:
    """Every port that is needed is joined once, and water can come to and leave every tee."""
    ends: dict[tuple[str, str], list[bool]] = {}
    for pipe in system.pipes:
        ends.setdefault(split_end(pipe.start), []).append(True)
        ends.setdefault(split_end(pipe.end), []).append(False)
    flows = [(split_end(pipe.start)[0], split_end(pipe.end)[0]) for pipe in system.pipes if pipe.service in FLOWING]
    for part in system.parts:
        if part.role == "tee":
            if len(ends.get((part.key, ""), ())) < 3:
                yield part, "a tee joins three pipes or more"
            leaves, arrives = any(flow[0] == part.key for flow in flows), any(flow[1] == part.key for flow in flows)
            if leaves != arrives:
                yield (
                    part,
                    "water that comes here must be able to leave, and water that leaves must come from somewhere",
                )
            continue
        for name, port in part.kind.ports.items():
            joined_here = ends.get((part.key, name), [])
            if len(joined_here) > 1 or (port.needed and not joined_here):
                yield part, f"its {name!r} end must be joined once, not {len(joined_here)} times"
            if (port.way == "in" and True in joined_here) or (port.way == "out" and False in joined_here):
                yield part, f"the pipe at its {name!r} end runs against it"


def slopes_are_drawn(system: System) -> Found:
    """A pipe that is said to rise or fall is not drawn otherwise."""
    for step in _all_steps(system):
        if step.forward and (
            (step.pipe.slope == RISES and not step.climbs) or (step.pipe.slope == FALLS and not step.sinks)
        ):
            yield (
                system.part(step.here[0]),
                f"the pipe to {step.there[0]} is said to {step.pipe.slope[:-1]}, and is drawn otherwise",
            )


def _all_steps(system: System) -> Iterator[Step]:
    ways = Ways(system)
    for part in system.parts:
        for side in ways.sides(part):
            yield from ways.steps(side)


# --- what must stay open between a fire and its ways out


def open_ways(system: System) -> Found:
    """Nothing that can close, stop or fail stands between a fire and its relief valve, vent, dump and expansion."""
    ways = Ways(system)
    for fire in system.of_role("fire", "boiler"):
        (side,) = ways.sides(fire)
        for role in ("relief", "open vent") if system.vented and fire.role == "fire" else ("relief",):
            yield from _open_way(ways, side, role, _is_tee)
        yield from _open_way(ways, side, "expansion", _never_closes)
    for guard in system.of_role("dump", "open vent"):
        for key, _ in ways.reach((guard.key, "water"), _is_tee):
            if ways.parts[key].kind.closes:
                yield ways.parts[key], f"it can close and is joined to the pipes of the {guard.name}, where nothing may"
    for fire in system.of_role("fire"):
        (side,) = ways.sides(fire)
        dumps = list(system.of_role("dump"))
        if not dumps:
            yield fire, "it has no dump for the heat of a stopped pump"
        for dump in dumps:
            for port in ("in", "out"):
                yield from _open_leg(ways, side, dump, port)


def _open_way(ways: Ways, side: Side, role: str, cross: Callable[[Part], bool]) -> Found:
    """Faults unless some part of this role can be reached by way of nothing but what `cross` allows."""

    def way(crossing: Callable[[Part], bool]) -> Path | None:
        reached = ways.reach(side, crossing)
        return next((path for (key, _), path in reached.items() if _serves(ways.parts[key], role)), None)

    start = ways.parts[side[0]]
    shortest = way(always)
    if shortest is None:
        yield start, f"its water has no {role}"
        return
    for part in _in_the_way(ways, cross, way, shortest):
        yield part, f"it stands between {start.name} and its {role}, and that way must stay open"


def _open_leg(ways: Ways, side: Side, dump: Part, port: str) -> Found:
    """Faults unless the fire and this end of the dump are joined by nothing but pipe."""

    def way(crossing: Callable[[Part], bool]) -> Path | None:
        reached = ways.reach(side, crossing, lambda step: step.there[0] != dump.key or step.there[1] == port)
        return reached.get((dump.key, "water"))

    fire = ways.parts[side[0]]
    shortest = way(_is_no_dump)
    if shortest is None:
        yield dump, f"its {port!r} end is not joined to {fire.name}"
        return
    for part in _in_the_way(ways, _is_tee, way, shortest):
        yield part, f"it stands between {fire.name} and the {port!r} end of its dump"


def _in_the_way(
    ways: Ways,
    cross: Callable[[Part], bool],
    way: Callable[[Callable[[Part], bool]], Path | None],
    shortest: Path,
) -> list[Part]:
    """Nothing if there is a way through what `cross` allows. Else the parts each of which alone shuts it; if it takes
    several, those on the shortest way.

    A loading valve is named only if nothing else is to blame: it has its place in the other way round.
    """
    if way(cross) is not None:
        return []

    def opens_alone(part: Part) -> bool:
        return way(lambda other: cross(other) or other == part) is not None

    blamed = [part for part in ways.parts.values() if part.role != "loading valve" and opens_alone(part)]
    passed = [ways.parts[step.there[0]] for step in shortest[:-1]]
    return blamed or [part for part in passed if not cross(part)]


def _serves(part: Part, role: str) -> bool:
    """Whether it has this role; open water takes its swelling itself."""
    return part.role == role or (role == "expansion" and part.level is not None)


def _is_tee(part: Part) -> bool:
    return part.role == "tee"


def _is_no_dump(part: Part) -> bool:
    return part.role != "dump"


def _never_closes(part: Part) -> bool:
    """Emitters count as what can close: somebody may fit a valve to them."""
    return not part.kind.closes and part.role not in _WARM_ROOMS


def _reached(ways: Ways, side: Side, role: str, cross: Callable[[Part], bool]) -> bool:
    return any(_serves(ways.parts[key], role) for key, _ in ways.reach(side, cross))


def dump_by_gravity(system: System) -> Found:
    """Hot water rises to the dump all the way and cooler water falls back all the way, and no power is needed."""
    ways = Ways(system)
    for dump in system.of_role("dump"):
        if dump.kind.power:
            yield dump, "it does nothing in a power cut, so it is no dump"
        for fire in system.of_role("fire"):
            if dump.box[3] > fire.box[1]:
                yield dump, f"it must stand above {fire.name}, or hot water will not rise to it"
        for port, slope in (("in", RISES), ("out", FALLS)):
            yield from _one_slope(ways, dump, port, slope)


def _one_slope(ways: Ways, dump: Part, port: str, slope: Slope) -> Found:
    """Every pipe between the dump's end and the fire keeps to one slope."""

    def out_of_that_end(step: Step) -> bool:
        return step.here != (dump.key, "out" if port == "in" else "in")

    reached = ways.reach((dump.key, "water"), _is_tee, out_of_that_end)
    path = next((path for (key, _), path in reached.items() if ways.parts[key].role == "fire"), ())
    for step in path:  # from the dump down to the fire
        if not step.sinks:
            yield dump, f"the pipe at {step.there[0]} dips or humps, so the water may not move by itself"
        elif step.pipe.slope != slope:
            yield dump, f"the pipe at {step.there[0]} is not said to be one that {slope} all the way"


def vent_is_open(system: System) -> Found:
    """A vent rises all the way to its end, and the feed tank of a vented system stands above all of its water."""
    ways = Ways(system)
    for vent in system.of_role("open vent"):
        reached = ways.reach((vent.key, "water"), _is_tee)
        path = next((path for (key, _), path in reached.items() if ways.parts[key].role == "fire"), ())
        if not path or not all(step.sinks and step.pipe.slope == RISES for step in path):
            yield vent, "it must rise all the way from the stove"
    for body in ways.bodies():
        inside = [ways.parts[key] for key, _ in body]
        if system.vented and any(part.role == "fire" for part in inside):
            for tank in (part for part in inside if part.role == "expansion"):
                higher = [part for part in inside if part.y < tank.y and part.role not in ("open vent", "backflow")]
                for part in higher:
                    yield tank, f"it must stand above everything else, and {part.name} is higher"


def nothing_over_open_water(system: System) -> Found:
    """Nothing hangs above the level of open water but its vent and what fills it, and open waters share one level."""
    ways = Ways(system)
    for open_to_air in (part for part in system.of_role("store") if part.level is not None):
        level = open_to_air.level
        assert level is not None
        body = next(body for body in ways.bodies() if (open_to_air.key, "water") in body)
        inside = [ways.parts[key] for key in dict.fromkeys(key for key, _ in body)]
        for part in (part for part in inside if part.role not in _OVER_OPEN_WATER and part != open_to_air):
            if part.level is not None and part.level != level:
                yield (
                    part,
                    f"its water stands at another level than that of {open_to_air.name}, so one of them runs over",
                )
            elif part.level is None and part.box[1] < level:
                yield (
                    part,
                    f"it hangs above the open water of {open_to_air.name}, where its own is in a vacuum and boils",
                )
        for step in _all_steps(system):
            ends = {ways.parts[key].role for key, _ in (step.here, step.there)}
            over = min(y for _, y in step.points) < level
            if step.forward and over and not ends & _OVER_OPEN_WATER and (step.here[0], "water") in body:
                yield (
                    ways.parts[step.here[0]],
                    f"its pipe to {step.there[0]} goes above the open water of {open_to_air.name}",
                )


_OVER_OPEN_WATER = {"open vent", "backflow", "main"}


def relief_runs_off(system: System) -> Found:
    """What a relief valve lets go falls through open metal pipe to a place where it drains and is seen."""
    ways = Ways(system)
    for valve in system.of_role("relief"):
        leaves = [step for step in ways.steps((valve.key, "water")) if step.here[1] == "out"]
        for step in leaves:
            if ways.parts[step.there[0]].role != "funnel":
                yield valve, f"its discharge ends at {step.there[0]}, not where it drains and is seen"
            if not step.sinks or step.pipe.slope != FALLS:
                yield valve, "its discharge has to fall all the way"
            if step.pipe.material != METAL:
                yield valve, "its discharge has to be metal"
    for tank in (part for part in system.parts if _serves(part, "expansion")):
        for step in ways.steps((tank.key, "water")):
            if step.pipe.service == DISCHARGE and (ways.parts[step.there[0]].role != "funnel" or not step.sinks):
                yield tank, "its overflow has to fall, with nothing in it, to where it is seen"


def metal_at_the_fire(system: System) -> Found:
    """All pipe is metal from the fire to the store, the dump, the vent, the relief valve and the expansion."""
    ways = Ways(system)
    for fire in system.of_role("fire"):
        for key, name in ways.reach((fire.key, "water"), _is_no_store):
            if _is_no_store(ways.parts[key]):
                for step in ways.steps((key, name)):
                    if step.pipe.material != METAL:
                        sentence = f"the pipe to {step.there[0]} must be metal: it can carry what the fire makes"
                        yield ways.parts[key], sentence


def _is_no_store(part: Part) -> bool:
    return part.role != "store"


def metal_until_mixed(system: System) -> Found:
    """Hot water of a store or a boiler goes on in metal until a tempering valve or an emitter has cooled it."""
    ways = Ways(system)
    for hot in system.of_role("store", "boiler", "exchanger"):
        for side in ways.sides(hot):
            for name in ways.reach(side, _keeps_hot, _goes_out_hot):
                for step in ways.steps(name):
                    stays_hot = name == side or _keeps_hot(ways.parts[name[0]])
                    if stays_hot and _goes_out_hot(step) and step.pipe.material != METAL:
                        sentence = f"the pipe to {step.there[0]} must be metal: nothing has cooled its water"
                        yield ways.parts[name[0]], sentence


def _keeps_hot(part: Part) -> bool:
    return part.role not in ("tempering valve", "exchanger", *_WARM_ROOMS)


def _goes_out_hot(step: Step) -> bool:
    return (step.forward or step.pipe.either_way) and step.pipe.service in (SUPPLY, TAP)


def return_is_warmed(system: System) -> Found:
    """Water goes back to a fire through a loading valve, so that it is never cold."""
    ways = Ways(system)
    for fire in system.of_role("fire"):
        reached = ways.reach((fire.key, "water"), lambda part: part.role != "loading valve", _upstream)
        if any(ways.parts[key].role == "store" for key, _ in reached):
            yield fire, "cold water from the store can reach it without a loading valve"


def _upstream(step: Step) -> bool:
    return step.against


# --- pressure


def pumps_draw_from_the_vessel(system: System) -> Found:
    """The vessel or feed pipe joins where a pump draws, so that the pump adds to the pressure, never takes."""
    ways = Ways(system)
    for pump in system.of_role("pump"):
        drawn_from = ways.reach(
            (pump.key, "water"),
            lambda part: part.role not in (*_RESISTS, "store"),
            # The bypass shuts as the stove gets hot, so it does not count as the way water comes.
            lambda step: _upstream(step) and step.here[1] != "bypass",
        )
        if not _still_water(ways, pump) & drawn_from.keys():
            yield pump, "the vessel joins where it pushes, not where it draws"


def _still_water(ways: Ways, pump: Part) -> set[Side]:
    """What is at the vessel's own pressure: tees and stores that are joined to it by pipe that is no supply.

    Tanks in a row share it too: the pipe between them is short and wide.
    """

    def still(part: Part) -> bool:
        return part.role in ("tee", "store")

    def slow(step: Step) -> bool:
        from_store = ways.parts[step.here[0]].role == "store"
        return step.pipe.either_way or (step.pipe.service != SUPPLY and not from_store)

    body = next(body for body in ways.bodies() if (pump.key, "water") in body)
    reached: set[Side] = set()
    for side in body:
        if _serves(ways.parts[side[0]], "expansion"):
            reached |= set(ways.reach(side, still, slow))
    return {side for side in reached if ways.parts[side[0]].role in ("tee", "store")}


def each_side_has_its_own(system: System) -> Found:
    """Each side of an exchanger has a relief valve and an expansion of its own, with nothing between that can close."""
    ways = Ways(system)
    for exchanger in system.of_role("exchanger"):
        for side in ways.sides(exchanger):
            for role in ("relief", "expansion"):
                if not _reached(ways, side, role, _never_closes):
                    yield exchanger, f"its {side[1]} side has no {role} of its own that stays open to it"


def tanks_keep_their_guards(system: System) -> Found:
    """Nothing that can close stands between any store and a relief valve and an expansion."""
    ways = Ways(system)
    for store in system.of_role("store"):
        for side in ways.sides(store):
            for role in ("relief", "expansion"):
                if not _reached(ways, side, role, _never_closes):
                    yield store, f"it can be shut off from every {role} while it is hot"


def rows_go_from_low_to_high(system: System) -> Found:
    """Where water goes on from one store to another, it leaves at the foot and comes in at the top."""
    ways = Ways(system)
    for store in system.of_role("store"):
        for side in ways.sides(store):
            for (key, _), path in ways.reach(side, _is_tee, lambda step: step.forward and step.flows).items():
                if path and ways.parts[key].role == "store":
                    leaves, enters = path[0].points[0][1], path[-1].points[-1][1]
                    if leaves <= store.y or enters >= ways.parts[key].y:
                        yield store, f"cool water must leave it at its foot and enter {ways.parts[key].name} at the top"


def tanks_share_alike(system: System) -> Found:
    """Every pump that sends water through a store sends it through all, and as far round through one as another."""
    ways = Ways(system)
    for pump in system.of_role("pump"):
        lengths: dict[tuple[str, ...], dict[str, int]] = {}
        reached: set[str] = set()
        for path in ways.rounds(pump):
            passed = [ways.parts[step.there[0]] for step in path]
            stores = [part.key for part in passed if part.role == "store"]
            reached.update(stores)
            if len(stores) == 1:
                others = tuple(part.key for part in passed if part.role not in ("tee", "store"))
                lengths.setdefault(others, {})[stores[0]] = sum(map(_drawn_length, path))
        for store in system.of_role("store") if reached else ():
            if store.key not in reached:
                yield store, f"no water of the {pump.name} goes through it"
        for by_store in lengths.values():
            shortest = min(by_store.values())
            for key, length in by_store.items():
                if length > shortest:
                    yield (
                        ways.parts[key],
                        f"water of the {pump.name} has a longer way through it than through a tank beside it, so most "
                        "goes the shorter one",
                    )


def _drawn_length(step: Step) -> int:
    return sum(abs(a[0] - b[0]) + abs(a[1] - b[1]) for a, b in pairwise(step.points))


# --- heat where it is wanted, and nowhere else


def tempered(system: System) -> Found:
    """A tempering valve stands before every floor and every tap, the right way round."""
    ways = Ways(system)
    for taker in system.of_role("floor", "tap"):
        hot = _hot_before(ways, taker)
        if hot:
            yield taker, f"water can come to it from {hot.name} without a tempering valve"
    for valve in system.of_role("tempering valve"):
        if not _hot_before(ways, valve, "hot"):
            yield valve, "no hot water comes to its hot end"
        if _hot_before(ways, valve, "cold"):
            yield valve, "hot water comes to its cold end"


def _hot_before(ways: Ways, part: Part, port: str = "") -> Part | None:
    """The first hot part against the flow, from this port or any; tempering valves are not looked through."""

    def up(step: Step) -> bool:
        return _upstream(step) and (not port or step.here[0] != part.key or step.here[1] == port)

    reached = ways.reach((part.key, "water"), _does_not_temper, up)
    return next((other for key, _ in reached if (other := ways.parts[key]).role in _HOT), None)


def _does_not_temper(part: Part) -> bool:
    return part.role != "tempering valve"


def floors_have_a_limit(system: System) -> Found:
    """A hard-wired high limit stands between the tempering valve and each floor, and stops that floor's pump."""
    ways = Ways(system)
    for floor in system.of_role("floor"):
        mixed = {key for key, _ in ways.reach((floor.key, "water"), _does_not_temper, _upstream)}
        limits = [
            limit
            for limit in system.of_role("high limit")
            if any(step.there[0] in mixed for step in ways.steps((limit.key, "water")))
        ]
        if not limits:
            yield floor, "no high limit stands between its tempering valve and it"
        for limit in limits:
            if limit.acts_on not in mixed or ways.parts[limit.acts_on].role != "pump":
                yield limit, "it must stop the pump of its floor by itself"


def nothing_creeps(system: System) -> Found:
    """A check valve stands between a store and everything that it could creep into while the pump rests."""
    ways = Ways(system)
    for taker in system.of_role(*_WARM_ROOMS, "exchanger"):
        for side in ways.sides(taker):
            reached = ways.reach(side, lambda part: part.role != "check", _upstream)
            for store in (part for key, _ in reached if (part := ways.parts[key]).role == "store"):
                yield taker, f"hot water can creep into it from {store.name}: no check valve stands between"


# --- air


def air_goes_the_right_way(system: System) -> Found:
    """A duct's air passes the filter, the furnace and the cooling coil, in this order, before any warm coil."""
    for duct in system.of_role("duct"):
        inside = [part for part in system.parts if part.inside == duct.key]
        inside.sort(key=lambda part: -part.x if duct.mirror else part.x)
        for place, part in enumerate(inside):
            before = {other.role for other in inside[:place]}
            after = {other.role for other in inside[place + 1 :]}
            if part.role in _WARM_ROOMS:
                if "filter" not in before:
                    yield part, "no filter stands before it, and dust shuts its fins"
                if "furnace" in after:
                    yield part, "its warm air comes to the furnace, whose blower and limit are made for cool air"
                elif "furnace" not in before:
                    yield part, "no blower sends air to it"
                if "cooling coil" in after:
                    yield part, "its warm air comes to the cooling coil and drives up the pressure in it"
            if part.role == "cooling coil" and "furnace" in after:
                yield part, "its cold wet air comes to the furnace, whose exchanger then rusts"


def blowers_wait(system: System) -> Found:
    """A sensor on the water of a warm coil lets its blower start only when there is heat."""
    ways = Ways(system)
    for coil in (part for part in system.of_role(*_WARM_ROOMS) if part.inside):
        before = ways.reach((coil.key, "water"), _is_tee, _upstream)
        told = {
            sensor.acts_on
            for sensor in system.of_role("instrument")
            if any(step.there[0] in {key for key, _ in before} for step in ways.steps((sensor.key, "water")))
        }
        for blower in (part for part in system.of_role("furnace") if part.inside == coil.inside):
            if blower.key not in told:
                yield blower, f"it can blow over a cold {coil.name}: no sensor in the water before it has a say"


# --- drinking water


def waters_are_apart(system: System) -> Found:
    """Heating water can never get back into drinking water, and every heating water can be filled."""
    ways = Ways(system)
    for body in ways.bodies():
        roles = {ways.parts[key].role: ways.parts[key] for key, _ in body}
        heating = next((roles[role] for role in ("fire", *_WARM_ROOMS) if role in roles), None)
        if heating and "main" in roles:
            yield roles["main"], f"nothing keeps the water of {heating.name} out of it"
        if heating and "backflow" not in roles:
            yield heating, "its water cannot be filled through a backflow preventer or an air gap"


def two_walls_before_taps(system: System) -> Found:
    """Two walls, with a gap that is open to the air, stand between treated heating water and drinking water."""
    ways = Ways(system)
    drinking = [body for body in ways.bodies() if any(ways.parts[key].role == "main" for key, _ in body)]
    for exchanger in system.of_role("exchanger"):
        sides = [any(side in body for body in drinking) for side in ways.sides(exchanger)]
        if any(sides) and not all(sides) and not exchanger.kind.double_wall:
            yield exchanger, "treated water and drinking water need two walls between them"


# --- air and draining


def air_can_leave(system: System) -> Found:
    """An air vent, or the open vent, is reached uphill from every store, dump and boiler that is not open itself."""
    ways = Ways(system)
    for part in (closed for closed in system.of_role("store", "dump", "boiler") if closed.level is None):
        uphill = ways.reach((part.key, "water"), _is_tee, lambda step: step.climbs)
        if not any(ways.parts[key].role in ("air vent", "open vent") for key, _ in uphill):
            yield part, "air that gathers at its top cannot leave"


def water_can_drain(system: System) -> Found:
    """A drain is reached downhill from every fire and store through nothing but pipe, and every water has one."""
    ways = Ways(system)
    for part in system.of_role("fire", "store"):
        downhill = ways.reach((part.key, "water"), _is_tee, lambda step: step.sinks)
        if not any(ways.parts[key].role == "drain" for key, _ in downhill):
            yield part, "it cannot be drained"
    for body in ways.bodies():
        rooms = [ways.parts[key] for key, _ in body if ways.parts[key].role in _WARM_ROOMS]
        if rooms and not any(ways.parts[key].role == "drain" for key, _ in body):
            yield rooms[0], "its water cannot be drained"


RULES: Mapping[str, Rule] = {
    "joined": joined,
    "slopes as drawn": slopes_are_drawn,
    "open ways": open_ways,
    "dump by gravity": dump_by_gravity,
    "open vent": vent_is_open,
    "nothing over open water": nothing_over_open_water,
    "relief runs off": relief_runs_off,
    "metal at the fire": metal_at_the_fire,
    "metal until mixed": metal_until_mixed,
    "warm return": return_is_warmed,
    "vessel where pumps draw": pumps_draw_from_the_vessel,
    "each side its own": each_side_has_its_own,
    "tanks keep their guards": tanks_keep_their_guards,
    "rows from low to high": rows_go_from_low_to_high,
    "tanks share alike": tanks_share_alike,
    "tempered": tempered,
    "limit on floors": floors_have_a_limit,
    "no creeping": nothing_creeps,
    "air the right way": air_goes_the_right_way,
    "blowers wait": blowers_wait,
    "waters apart": waters_are_apart,
    "two walls": two_walls_before_taps,
    "air": air_can_leave,
    "drains": water_can_drain,
}
