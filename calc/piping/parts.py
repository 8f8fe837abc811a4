"""What a piping system is made of: kinds of parts, parts at places, pipes from port to port.

A system is data, and its drawing and the rules read the same data. Places have x to the right and y down; as on a wall,
what is higher is higher in the house. The systems themselves stand beside what draws them.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

Turn = Literal[0, 90, 180, 270]
Way = Literal["in", "out", "both"]
Service = Literal["supply", "return", "tap", "still", "discharge"]
Material = Literal["metal", "metal or plastic"]
Slope = Literal["", "rises", "falls"]
Place = tuple[int, int]

SUPPLY: Service = "supply"  # hot heating water going out
RETURN: Service = "return"  # cooler heating water coming back
TAP: Service = "tap"  # drinking water, cold or hot
STILL: Service = "still"  # a branch in which nothing flows in normal work
DISCHARGE: Service = "discharge"  # what a relief valve or an overflow lets go
FLOWING: tuple[Service, ...] = (SUPPLY, RETURN, TAP)

METAL: Material = "metal"
ANY: Material = "metal or plastic"

RISES: Slope = "rises"
FALLS: Slope = "falls"


@dataclass(frozen=True)
class Port:
    """Where a pipe joins a part: its place seen from the part's middle, which way water goes there, and on whose side.

    Ports on one side of a part share their water; the two sides of an exchanger do not.
    """

    x: int
    y: int
    way: Way = "both"
    side: str = "water"
    needed: bool = True


@dataclass(frozen=True)
class Kind:
    """What a part is: words, purpose, ports, and the box of its symbol around its middle.

    `role` is what the rules know it by. `closes` says what can shut it ("by hand"), and is empty for what never shuts.
    `power` is true if it does nothing without electric power. `inscription` stands in the symbol, `label` beside it.
    What is open to the air has the `level` of its water, seen from the middle; it takes the swelling and lets air out.
    """

    symbol: str
    role: str
    words: str
    purpose: str
    width: int
    height: int
    ports: Mapping[str, Port]
    closes: str = ""
    power: bool = False
    double_wall: bool = False
    level: int | None = None
    inscription: tuple[str, ...] = ()
    label: str = ""


@dataclass(frozen=True)
class Part:
    """One part at its place; `words` and `purpose` stand in for its kind's where it has its own.

    `turn` is in degrees clockwise, after `mirror` has swapped left and right. `inside` names the part that it reaches
    into, `acts_on` the part that it starts or stops.
    """

    key: str
    kind: Kind
    x: int
    y: int
    turn: Turn = 0
    mirror: bool = False
    words: str = ""
    purpose: str = ""
    inside: str = ""
    acts_on: str = ""

    @property
    def name(self) -> str:
        """What it is called in the drawing's list."""
        return self.words or self.kind.words

    @property
    def level(self) -> int | None:
        """The height of its open water in the drawing; None if it is closed."""
        return None if self.kind.level is None else self.y + self.kind.level

    @property
    def use(self) -> str:
        """What it is for."""
        return self.purpose or self.kind.purpose

    @property
    def role(self) -> str:
        """What the rules know it by."""
        return self.kind.role

    def place(self, port: str) -> Place:
        """Where the port lies in the drawing."""
        opening = self.kind.ports[port]
        dx, dy = turned(opening.x, opening.y, self.turn, self.mirror)
        return self.x + dx, self.y + dy

    @property
    def box(self) -> tuple[int, int, int, int]:
        """Left, top, right and bottom of the symbol."""
        across, down = self.kind.width // 2, self.kind.height // 2
        if self.turn in (90, 270):
            across, down = down, across
        return self.x - across, self.y - down, self.x + across, self.y + down


def turned(x: int, y: int, turn: int, mirror: bool) -> Place:
    """A place seen from the middle of a part that is mirrored and then turned clockwise."""
    if mirror:
        x = -x
    for _ in range(turn // 90):
        x, y = -y, x
    return x, y


@dataclass(frozen=True)
class Pipe:
    """A pipe from one end to the other, in the direction of flow; an end is "part.port", or a tee's key alone.

    `corners` are the places where it bends. `slope` says what the trade has to do with its level runs, in the
    direction of flow. Pipes that are one run in the list carry its key. Through one that goes `either_way` water comes
    back as well, as between two tanks that are charged one way and drawn from the other.
    """

    start: str
    end: str
    service: Service
    material: Material = METAL
    corners: tuple[Place, ...] = ()
    slope: Slope = ""
    run: str = ""
    either_way: bool = False


@dataclass(frozen=True)
class Run:
    """Pipes that the list names together, so that they can carry one size."""

    key: str
    words: str
    purpose: str


@dataclass(frozen=True)
class System:
    """A whole system. `vented` is true if its fire's water is open to the air, false if it is closed, under pressure.

    `groups` is the order of its list: a heading, and the keys of the parts and runs under it.
    """

    key: str
    title: str
    about: str
    vented: bool
    parts: tuple[Part, ...]
    pipes: tuple[Pipe, ...]
    runs: tuple[Run, ...]
    groups: tuple[tuple[str, tuple[str, ...]], ...]
    height: int

    def part(self, key: str) -> Part:
        """The part of that key; KeyError if there is none."""
        for part in self.parts:
            if part.key == key:
                return part
        raise KeyError(f"{self.key} has no part {key!r}")

    def of_role(self, *roles: str) -> Iterator[Part]:
        """Its parts of these roles, in order."""
        return (part for part in self.parts if part.role in roles)

    def points(self, pipe: Pipe) -> tuple[Place, ...]:
        """The places that a pipe passes, from its start to its end."""
        return (self._end_place(pipe.start), *pipe.corners, self._end_place(pipe.end))

    def _end_place(self, end: str) -> Place:
        key, port = split_end(end)
        return self.part(key).place(port)


def split_end(end: str) -> tuple[str, str]:
    """The part and the port of a pipe's end."""
    key, _, port = end.partition(".")
    return key, port
