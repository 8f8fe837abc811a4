"""The ways water can take through a system: from part to part, along pipes, upstream, downstream, uphill."""

from collections import deque
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from calc.piping.parts import FLOWING, Part, Pipe, Place, System, split_end

Side = tuple[str, str]  # a part's key and the side of it: what is there shares its water


@dataclass(frozen=True)
class Step:
    """One pipe as taken from one end to the other. `forward` is with the flow."""

    pipe: Pipe
    here: tuple[str, str]  # part and port
    there: tuple[str, str]
    points: tuple[Place, ...]
    forward: bool

    @property
    def flows(self) -> bool:
        """Whether water goes this way in normal work."""
        return (self.forward or self.pipe.either_way) and self.pipe.service in FLOWING

    @property
    def against(self) -> bool:
        """Whether the step may go against the flow."""
        return not self.forward or self.pipe.either_way

    @property
    def climbs(self) -> bool:
        """Whether the step never goes down."""
        return all(after[1] <= before[1] for before, after in zip(self.points, self.points[1:], strict=False))

    @property
    def sinks(self) -> bool:
        """Whether the step never goes up."""
        return all(after[1] >= before[1] for before, after in zip(self.points, self.points[1:], strict=False))


Path = tuple[Step, ...]


def always(_: object) -> bool:
    """May be crossed, or taken, whatever it is."""
    return True


class Ways:
    """A system's water as a net: sides of parts, and the pipes between them."""

    def __init__(self, system: System) -> None:
        self.system = system
        self.parts = {part.key: part for part in system.parts}
        self._steps: dict[Side, list[Step]] = {}
        for pipe in system.pipes:
            start, end, points = split_end(pipe.start), split_end(pipe.end), system.points(pipe)
            self._steps.setdefault(self._side(start), []).append(Step(pipe, start, end, points, forward=True))
            self._steps.setdefault(self._side(end), []).append(Step(pipe, end, start, points[::-1], forward=False))

    def _side(self, end: tuple[str, str]) -> Side:
        key, port = end
        return key, self.parts[key].kind.ports[port].side

    def steps(self, side: Side) -> list[Step]:
        """Every pipe that leaves from there."""
        return self._steps.get(side, [])

    def sides(self, part: Part) -> tuple[Side, ...]:
        """The part's sides, one for each water in it."""
        return tuple(dict.fromkeys((part.key, port.side) for port in part.kind.ports.values()))

    def reach(
        self, start: Side, cross: Callable[[Part], bool] = always, take: Callable[[Step], bool] = always
    ) -> dict[Side, Path]:
        """Every side that can be reached, with the shortest path to it.

        `cross` says through which parts a path may go on, `take` which steps it may take.
        """
        reached: dict[Side, Path] = {start: ()}
        waiting = deque([start])
        while waiting:
            side = waiting.popleft()
            if side != start and not cross(self.parts[side[0]]):
                continue
            for step in self.steps(side):
                there = self._side(step.there)
                if there not in reached and take(step):
                    reached[there] = (*reached[side], step)
                    waiting.append(there)
        return reached

    def bodies(self) -> list[set[Side]]:
        """The separate waters: what is in one of them can get anywhere within it."""
        bodies: list[set[Side]] = []
        for part in self.system.parts:
            for side in self.sides(part):
                if self.steps(side) and not any(side in body for body in bodies):
                    bodies.append(set(self.reach(side)))
        return bodies

    def rounds(self, pump: Part) -> Iterator[Path]:
        """Every way round from the part with the flow and back to it, each part passed once."""
        start = self._side((pump.key, next(iter(pump.kind.ports))))

        def onward(path: Path, passed: frozenset[Side]) -> Iterator[Path]:
            side = self._side(path[-1].there) if path else start
            for step in self.steps(side):
                there = self._side(step.there)
                if step.flows and there == start:
                    yield (*path, step)
                elif step.flows and there not in passed:
                    yield from onward((*path, step), passed | {there})

        yield from onward((), frozenset((start,)))
