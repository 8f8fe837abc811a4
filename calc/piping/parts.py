"""Kinds of parts, with their words, what they are for and how they can close; parts, pipes and systems made of them.

A system is data: parts at places on the drawing, and pipes from port to port. The drawing and the rules read the same
data. Places are in units of the drawing (400 wide, x to the right, y down) on a grid of five; as on a wall, higher in
the drawing is higher in the house.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Literal

WIDTH = 400
GRID = 5

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
    def use(self) -> str:
        """What it is for."""
        return self.purpose or self.kind.purpose

    @property
    def role(self) -> str:
        """What the rules know it by."""
        return self.kind.role

    def place(self, port: str) -> Place:
        """Where the port lies in the drawing."""
        found = self.kind.ports[port]
        dx, dy = turned(found.x, found.y, self.turn, self.mirror)
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
    direction of flow. Pipes that are one run in the list carry its key.
    """

    start: str
    end: str
    service: Service
    material: Material = METAL
    corners: tuple[Place, ...] = ()
    slope: Slope = ""
    run: str = ""


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
        for one in self.parts:
            if one.key == key:
                return one
        raise KeyError(f"{self.key} has no part {key!r}")

    def of_role(self, *roles: str) -> Iterator[Part]:
        """Its parts of these roles, in order."""
        return (one for one in self.parts if one.role in roles)

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


def _through(*sides: str) -> dict[str, Port]:
    """The two ports of a part in a pipe, flow from left to right."""
    first, last = sides or ("water", "water")
    return {"in": Port(-15, 0, "in", first), "out": Port(15, 0, "out", last)}


_ON_TOP = {"tapping": Port(0, 15, needed=False)}

TEE = Kind("tee", "tee", "tee", "Joins pipes.", 10, 10, {"": Port(0, 0)})

# --- the fire and what it needs

STOVE = Kind(
    "stove",
    "fire",
    "stove with a water jacket",
    "Makes the heat. Part warms its room, the rest goes into water. Nobody can switch a fire off.",
    110,
    150,
    {
        "supply": Port(55, -50, "out"),
        "return": Port(15, 75, "in"),
        "dump supply": Port(40, -75, "out"),
        "dump return": Port(-55, 50, "in"),
        "relief": Port(-30, -75),
        "gauge": Port(55, 15, needed=False),
    },
    inscription=("Stove", "water jacket"),
)
DUMP = Kind(
    "dump",
    "dump",
    "gravity dump",
    "A bare radiator above the stove. Hot water rises into it by itself, so it takes the fire's heat when the pump "
    "stands still. No valve, no check, no fan. It is always a little warm.",
    110,
    40,
    {"in": Port(55, -10, "in"), "out": Port(-45, 20, "out"), "top": Port(40, -20, needed=False)},
    inscription=("Dump",),
)
RELIEF = Kind(
    "relief",
    "relief",
    "relief valve",
    "Lets water and steam out before the pressure can burst anything. No valve before it, none after it.",
    30,
    30,
    {"in": Port(0, 15, "in"), "out": Port(15, 0, "out")},
    label="relief valve",
)
FUNNEL = Kind(
    "funnel",
    "funnel",
    "discharge end",
    "What is let go runs down to here, where it drains, can be seen and scalds nobody.",
    20,
    20,
    {"in": Port(0, -10, "in")},
)
AIR_VENT = Kind(
    "air-vent",
    "air vent",
    "air vent",
    "Lets air out at the high point. Trapped air would stop the water.",
    20,
    20,
    {"in": Port(0, 10)},
)
OPEN_VENT = Kind(
    "open-vent",
    "open vent",
    "open vent",
    "Where steam and air leave, over the feed tank, so high that the pump never pushes water out. Nothing may ever "
    "close it, and frost must not reach it.",
    30,
    30,
    {"in": Port(-15, 0)},
    label="open vent",
)
FEED_TANK = Kind(
    "feed-tank",
    "expansion",
    "feed and expansion tank",
    "Open to the air, above everything else. It takes the water's swelling and tops the system up from below.",
    90,
    50,
    {
        "feed": Port(10, 25),
        "fill": Port(45, -15, "in"),
        "overflow": Port(45, 0, "out"),
    },
    label="feed tank",
)
VESSEL = Kind(
    "vessel",
    "expansion",
    "expansion vessel",
    "Takes the water's swelling behind a rubber skin. It joins where the pump draws, with no valve towards the stove.",
    30,
    30,
    {"in": Port(0, -15)},
    label="vessel",
)
VESSEL_BESIDE = replace(VESSEL, ports={"in": Port(-15, 0)})
STORE = Kind(
    "store",
    "store",
    "store",
    "Keeps the heat of the burn until the house wants it: hot at the top, cooler below.",
    80,
    320,
    {
        "charge": Port(-40, -125, "in"),
        "charge return": Port(-40, 130, "out"),
        "supply": Port(40, -125, "out"),
        "return": Port(40, 130, "in"),
        "top": Port(0, -160),
        "bottom": Port(0, 160),
    },
    inscription=("Store",),
)
LOADING_VALVE = Kind(
    "three-way",
    "loading valve",
    "loading valve",
    "Mixes hot water into the return, so that the stove never gets cold water. Works by temperature, without power.",
    30,
    30,
    {"store": Port(-15, 0, "in"), "stove": Port(15, 0, "out"), "bypass": Port(0, 15, "in")},
    closes="by temperature",
    label="loading valve",
)
PUMP = Kind(
    "pump",
    "pump",
    "pump",
    "Moves the water. The triangle points the way it pushes.",
    30,
    30,
    _through(),
    power=True,
    label="pump",
)
DRAIN = Kind(
    "drain",
    "drain",
    "drain",
    "Empties this part of the system. Fitted at the low point, with a hose end.",
    20,
    30,
    {"in": Port(0, -15)},
    closes="by hand",
)
THERMOMETER = Kind("letter-T", "instrument", "thermometer", "Shows how hot the water is.", 30, 30, _ON_TOP)
SENSOR = Kind(
    "letter-T",
    "instrument",
    "temperature sensor",
    "Tells the controller how hot the water is.",
    30,
    30,
    _ON_TOP,
)
GAUGE = Kind(
    "letter-P",
    "instrument",
    "pressure gauge",
    "Shows the pressure. Falling: a leak. Rising with each fire: the vessel has lost its air.",
    30,
    30,
    _ON_TOP,
)

# --- filling, and keeping heating water out of drinking water

MAIN = Kind(
    "main",
    "main",
    "cold water",
    "From the well or the main.",
    70,
    40,
    {"out": Port(35, 0, "out")},
    inscription=("cold", "water"),
)
BACKFLOW = Kind(
    "backflow",
    "backflow",
    "backflow preventer",
    "Keeps heating water out of the drinking water.",
    30,
    20,
    _through("main", "system"),
    closes="by its springs",
)
FLOAT_VALVE = Kind(
    "valve",
    "backflow",
    "float valve",
    "Tops up the feed tank through an air gap, so that heating water can never get back into the drinking water.",
    30,
    20,
    _through("main", "tank"),
    closes="by its float",
)
HAND_VALVE = Kind(
    "hand-valve",
    "valve",
    "hand valve",
    "Opened and shut by hand.",
    30,
    24,
    _through(),
    closes="by hand",
)

# --- the house

CHECK = Kind(
    "check",
    "check",
    "check valve",
    "Opens for the pump only. It keeps hot water from creeping out of the store while the pump rests.",
    30,
    20,
    _through(),
    closes="by its spring",
    label="check",
)
ZONE_VALVE = Kind(
    "zone-valve",
    "valve",
    "zone valve",
    "Opens when its rooms call for heat. Shut without power, so it has no place between fire and dump.",
    30,
    40,
    _through(),
    closes="without power",
    power=True,
)
TEMPERING_VALVE = Kind(
    "three-way",
    "tempering valve",
    "tempering valve",
    "Mixes the hot water down to a safe temperature.",
    30,
    30,
    {"hot": Port(-15, 0, "in"), "mixed": Port(15, 0, "out"), "cold": Port(0, 15, "in")},
    closes="by temperature",
    label="tempering",
)
HIGH_LIMIT = Kind(
    "letter-H",
    "high limit",
    "high limit",
    "Wired straight into the pump's power, not through the controller. Stops the pump if the water is too hot for the "
    "floor.",
    30,
    30,
    _ON_TOP,
    label="high limit",
)
HOUSE = Kind(
    "house",
    "emitter",
    "house heating",
    "Whatever warms the rooms: the next drawings show each kind.",
    200,
    90,
    {"in": Port(-60, -45, "in"), "out": Port(100, 30, "out")},
    inscription=("House heating",),
)
FLOOR = Kind(
    "floor",
    "floor",
    "floor loops",
    "Pipe in or under the floor. The coolest emitter, so it empties the store furthest.",
    200,
    90,
    {"in": Port(-60, -45, "in"), "out": Port(100, 30, "out")},
    inscription=("Floor loops",),
)
BASEBOARD = Kind(
    "baseboard",
    "emitter",
    "baseboard",
    "Finned pipe along the wall. Twice the length works with far cooler water.",
    180,
    30,
    {"in": Port(-90, 0, "in"), "out": Port(90, 0, "out")},
    inscription=("baseboard",),
)
DUCT_COIL = Kind(
    "duct-coil",
    "emitter",
    "coil and fan in the duct",
    "Heats the air in the ducts. Water goes in where the air leaves. Useless without its fan, so it is never the dump.",
    230,
    90,
    {"in": Port(50, -45, "in"), "out": Port(-10, 45, "out")},
    power=True,
    inscription=("warm", "air"),
)

# --- exchangers, taps and the boiler that is already there

PLATE = Kind(
    "plate",
    "exchanger",
    "plate exchanger",
    "Passes the heat across thin plates; the two waters never meet.",
    40,
    90,
    {
        "hot in": Port(10, -45, "in", "hot"),
        "hot out": Port(20, 30, "out", "hot"),
        "cold in": Port(-20, 30, "in", "cold"),
        "cold out": Port(-20, -30, "out", "cold"),
    },
    label="exchanger",
)
DOUBLE_WALL_PLATE = Kind(
    "plate-double",
    "exchanger",
    "double-wall plate exchanger",
    "Passes the heat across two walls. The gap between them is open to the air, so a leak drips where it is seen, and "
    "not into the drinking water.",
    40,
    90,
    PLATE.ports,
    double_wall=True,
    label="exchanger",
)
TAP_TANK = Kind(
    "tap-tank",
    "exchanger",
    "hot-water tank with a double-wall coil",
    "Keeps hot tap water ready. Store water warms it through a coil of two walls with a gap that is open to the air.",
    100,
    150,
    {
        "coil in": Port(50, -25, "in", "coil"),
        "coil out": Port(50, 40, "out", "coil"),
        "cold": Port(-50, 50, "in", "tap"),
        "hot": Port(-20, -75, "out", "tap"),
        "relief": Port(10, -75, side="tap"),
        "bottom": Port(0, 75, side="tap"),
    },
    double_wall=True,
    inscription=("Tank",),
)
FLOW_SWITCH = Kind(
    "letter-F",
    "instrument",
    "flow switch",
    "Feels that a tap is open, and starts the pump.",
    30,
    30,
    _ON_TOP,
)
TAPS = Kind(
    "taps", "tap", "hot taps", "Basin, shower and bath.", 40, 30, {"in": Port(20, 0, "in")}, inscription=("hot taps",)
)
BOILER = Kind(
    "boiler",
    "boiler",
    "existing boiler",
    "Tops the water up when the store is too cool. It keeps its own controls, its own limit and its own flue. An "
    "ordinary one rots on lukewarm return, so it needs a return protection of its own.",
    90,
    90,
    {"in": Port(45, 30, "in"), "out": Port(-45, -30, "out"), "relief": Port(0, -45)},
    inscription=("Existing", "boiler"),
)
DIVERTER = Kind(
    "three-way",
    "valve",
    "diverting valve",
    "Sends the return through the store only while the store is the hotter of the two; else past it.",
    30,
    30,
    {"house": Port(-15, 0, "in"), "store": Port(15, 0, "out"), "past": Port(0, 15, "out")},
    closes="by its motor",
    power=True,
    label="diverter",
)
