"""The kinds of parts in the drawings: words, purpose, how they can close, ports, and the box of their symbols."""

from dataclasses import replace

from calc.piping.parts import Kind, Port


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
FIRST_TANK = Kind(
    "tank",
    "store",
    "first tank",
    "The hotter of the two: the fire charges it first, and the house draws from its top.",
    50,
    230,
    {
        "charge": Port(-25, -80, "in"),
        "foot": Port(25, 80),
        "supply": Port(0, -115, "out"),
        "bottom": Port(0, 115),
    },
    inscription=("Tank", "1"),
)
SECOND_TANK = Kind(
    "tank",
    "store",
    "second tank",
    "The cooler of the two: it fills when the first is full, and the house's return comes to its foot.",
    50,
    230,
    {
        "head": Port(-25, -80),
        "charge return": Port(-25, 80, "out"),
        "return": Port(25, 80, "in"),
        "top": Port(0, -115),
        "bottom": Port(0, 115),
    },
    inscription=("Tank", "2"),
)
SIDE_TANK = Kind(
    "tank",
    "store",
    "tank beside another",
    "Both are charged and drawn at the same time, and each takes half of the water.",
    50,
    230,
    {"head": Port(0, -115), "foot": Port(0, 115)},
)
LEFT_TANK = replace(SIDE_TANK, words="first tank", inscription=("Tank", "1"))
RIGHT_TANK = replace(SIDE_TANK, words="second tank", inscription=("Tank", "2"))
OPEN_BOX = Kind(
    "open-box",
    "store",
    "open box store",
    "A lined box full of water, open to the air under a lid that is never tight. It takes its own swelling. Nothing "
    "that holds its water hangs higher than its level.",
    80,
    450,
    {
        "charge": Port(-40, -60, "in"),
        "charge return": Port(-40, 195, "out"),
        "supply": Port(40, -60, "out"),
        "return": Port(40, 195, "in"),
        "fill": Port(20, -225, "in"),
        "overflow": Port(40, -205, "out"),
        "bottom": Port(0, 225),
    },
    level=-205,
    inscription=("Open", "box"),
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
DUCT = Kind(
    "duct",
    "duct",
    "duct of the furnace",
    "Carries the air from the rooms, past everything in it, and back to the rooms.",
    330,
    120,
    {},
    inscription=("warm", "air"),
)
FILTER = Kind(
    "filter",
    "filter",
    "air filter",
    "Keeps dust off the blower and out of the fins. Clogged, it takes the air that the coil needs.",
    16,
    60,
    {},
)
FURNACE = Kind(
    "furnace",
    "furnace",
    "furnace with its blower",
    "Its blower moves the air of both. It gets the air cool, as it was made to, so the coil stands behind it.",
    80,
    60,
    {},
    power=True,
    inscription=("furnace",),
)
COOLING_COIL = Kind(
    "cooling-coil",
    "cooling coil",
    "cooling coil of the air conditioner",
    "Stands before the warm coil: air that is already hot drives up the pressure in it.",
    30,
    60,
    {},
)
DUCT_COIL = Kind(
    "duct-coil",
    "emitter",
    "warm coil in the plenum",
    "Heats the air last of all; water goes in where air leaves. Useless without the blower, so it is never the dump.",
    50,
    120,
    {"in": Port(20, -60, "in"), "out": Port(-20, 60, "out")},
    power=True,
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
