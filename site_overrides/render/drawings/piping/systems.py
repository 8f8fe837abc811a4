"""The systems that are drawn, each described once: parts at places, and pipes between them.

Places are in units of the drawing, which is 400 wide, on a grid of five. Two fire sides are shared by all: one closed
and under pressure, one open to the air through a vent. Each system adds its house side. The arrangement is common
practice; it is held to the rules of `calc.piping`.
"""

from calc.piping.parts import (
    ANY,
    DISCHARGE,
    FALLS,
    METAL,
    RETURN,
    RISES,
    STILL,
    SUPPLY,
    TAP,
    Material,
    Part,
    Pipe,
    Place,
    Run,
    Service,
    System,
    Turn,
)
from render.drawings.piping import kinds as kind

Piece = Part | Pipe | Run


def _tee(key: str, x: int, y: int) -> Part:
    return Part(key, kind.TEE, x, y)


def _chain(service: Service, *ends: str, material: Material = METAL, run: str = "") -> tuple[Pipe, ...]:
    """Straight pipes one after the other: "a.out", "b.in", "b.out", "c.in"; a tee stands for both its ends."""
    doubled = [end for name in ends for end in ((name,) if "." in name else (name, name))]
    if "." not in ends[0]:
        doubled = doubled[1:]
    if "." not in ends[-1]:
        doubled = doubled[:-1]
    return tuple(
        Pipe(start, end, service, material, run=run) for start, end in zip(doubled[::2], doubled[1::2], strict=True)
    )


# --- the fire side


def _closed_tank(down: int) -> tuple[Piece, ...]:
    """A closed store, its sensors, vent and drain, and the pipes that charge it."""
    return (
        Part("store", kind.STORE, 310, 290 + down),
        Part("store-vent", kind.AIR_VENT, 310, 115 + down, words="air vent of the store"),
        Part(
            "store-top-sensor",
            kind.SENSOR,
            310,
            190 + down,
            words="sensor at the top of the store",
            purpose="Tells what the house can still draw.",
            inside="store",
        ),
        Part(
            "store-bottom-sensor",
            kind.SENSOR,
            310,
            395 + down,
            words="sensor at the bottom of the store",
            purpose="Tells when the store is full: no more wood.",
            inside="store",
            acts_on="charge-pump",
        ),
        Part("store-drain", kind.DRAIN, 310, 475 + down, words="store drain"),
        _tee("expansion-tee", 250, 420 + down),
        Pipe(
            "bypass-tee",
            "store.charge",
            SUPPLY,
            METAL,
            corners=((225, 235 + down), (225, 165 + down)),
            slope=RISES,
            run="charge-pipe",
        ),
        *_chain(
            RETURN,
            "store.charge return",
            "expansion-tee",
            "loading-valve.store",
            run="charge-pipe",
        ),
        Pipe("store.top", "store-vent.in", STILL),
        Pipe("store.bottom", "store-drain.in", STILL),
    )


def _fire_side(down: int, store: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """Stove, dump, relief valve, store and the loop that charges it, `down` units from where a closed one stands."""
    return (
        Part("stove", kind.STOVE, 110, 285 + down),
        Part("relief", kind.RELIEF, 80, 170 + down, mirror=True),
        Part("discharge", kind.FUNNEL, 15, 420 + down),
        Part("dump", kind.DUMP, 85, 60 + down),
        Part(
            "stove-sensor",
            kind.SENSOR,
            185,
            200 + down,
            words="stove sensor",
            purpose="Starts the charging pump when the stove is hotter than the store's bottom, and sounds the alarm.",
            acts_on="charge-pump",
        ),
        *store,
        Part("loading-valve", kind.LOADING_VALVE, 205, 420 + down, turn=180),
        Part(
            "charge-pump",
            kind.PUMP,
            160,
            420 + down,
            turn=180,
            words="charging pump",
            purpose="Carries the fire's heat to the store. It stops in a power cut; then the dump takes over.",
        ),
        Part("stove-drain", kind.DRAIN, 125, 455 + down, words="stove drain"),
        _tee("sensor-tee", 185, 235 + down),
        _tee("bypass-tee", 205, 235 + down),
        _tee("stove-tee", 125, 420 + down),
        # From the stove to the store, and back through the loading valve.
        *_chain(SUPPLY, "stove.supply", "sensor-tee", "bypass-tee", run="charge-pipe"),
        Pipe("bypass-tee", "loading-valve.bypass", SUPPLY, METAL, run="charge-pipe"),
        *_chain(RETURN, "loading-valve.stove", "charge-pump.in", run="charge-pipe"),
        *_chain(RETURN, "charge-pump.out", "stove-tee", "stove.return", run="charge-pipe"),
        # The dump: up from the stove's top, down to its foot, on tappings of its own.
        Pipe("dump.out", "stove.dump return", RETURN, METAL, ((40, 335 + down),), FALLS, "dump-pipe"),
        # Ways out and small things.
        Pipe("stove.relief", "relief.in", STILL),
        Pipe(
            "relief.out",
            "discharge.in",
            DISCHARGE,
            METAL,
            corners=((15, 170 + down),),
            slope=FALLS,
            run="discharge-pipe",
        ),
        Pipe("sensor-tee", "stove-sensor.tapping", STILL),
        Pipe("stove-tee", "stove-drain.in", STILL),
        Run(
            "charge-pipe",
            "pipe between stove and store",
            "Out to the top of the store, rising all the way, and back from its bottom.",
        ),
        Run(
            "dump-pipe",
            "pipe to the dump and back",
            "Wide and short. Out it rises all the way, back it falls all the way, with no dip to trap air or steam.",
        ),
        Run(
            "discharge-pipe", "discharge pipe", "As wide as the valve's outlet. It falls all the way and is never shut."
        ),
    )


def _closed_fire_side(store: tuple[Piece, ...] | None = None) -> tuple[Piece, ...]:
    """A fire side that is closed and under pressure."""
    return (
        *_fire_side(0, store or _closed_tank(0)),
        Part("pressure-gauge", kind.GAUGE, 185, 300, turn=90),
        Part("dump-vent", kind.AIR_VENT, 125, 25, words="air vent of the dump"),
        Part("vessel", kind.VESSEL_BESIDE, 280, 500),
        Part(
            "filling-valve",
            kind.HAND_VALVE,
            205,
            500,
            words="filling valve",
            purpose="Opened by hand to fill or top up, else shut. Never run water into a hot, dry stove.",
        ),
        Part("backflow", kind.BACKFLOW, 150, 500),
        Part("cold-water", kind.MAIN, 80, 500, words="cold water for filling"),
        _tee("filling-tee", 250, 500),
        Pipe("stove.gauge", "pressure-gauge.tapping", STILL),
        Pipe("stove.dump supply", "dump.in", SUPPLY, METAL, ((150, 50),), RISES, "dump-pipe"),
        Pipe("dump.top", "dump-vent.in", STILL),
        Pipe("expansion-tee", "filling-tee", STILL, METAL, run="expansion-pipe"),
        Pipe("filling-tee", "vessel.in", STILL, METAL, run="expansion-pipe"),
        Pipe("cold-water.out", "backflow.in", TAP),
        *_chain(STILL, "backflow.out", "filling-valve.in", "filling-valve.out", "filling-tee"),
        Run(
            "expansion-pipe", "pipe to the vessel", "Joins the return just before the pump. Nothing in it can be shut."
        ),
    )


_DOWN = 90  # an open fire side stands lower, under its feed tank


def _open_fire_side() -> tuple[Piece, ...]:
    """A fire side that is open to the air through a vent over a feed tank."""
    return (
        *_fire_side(_DOWN, _closed_tank(_DOWN)),
        Part("open-vent", kind.OPEN_VENT, 215, 30, inside="feed-tank"),
        Part("feed-tank", kind.FEED_TANK, 240, 65),
        Part("float-valve", kind.FLOAT_VALVE, 305, 50, mirror=True),
        Part("cold-water", kind.MAIN, 360, 50, mirror=True, words="cold water for filling"),
        Part(
            "overflow",
            kind.FUNNEL,
            305,
            100,
            words="overflow",
            purpose="Ends where it is seen. If it runs, the fire boils or the float valve leaks.",
        ),
        Part("thermometer", kind.THERMOMETER, 185, 300 + _DOWN, turn=90),
        _tee("vent-tee", 150, 50 + _DOWN),
        Pipe("stove.gauge", "thermometer.tapping", STILL),
        Pipe("stove.dump supply", "vent-tee", SUPPLY, METAL, slope=RISES, run="dump-pipe"),
        Pipe("vent-tee", "dump.in", SUPPLY, METAL, slope=RISES, run="dump-pipe"),
        Pipe("vent-tee", "open-vent.in", STILL, METAL, ((150, 30),), RISES, "vent-pipe"),
        Pipe("feed-tank.feed", "expansion-tee", STILL, METAL, slope=FALLS, run="feed-pipe"),
        Pipe("cold-water.out", "float-valve.in", TAP),
        Pipe("float-valve.out", "feed-tank.fill", TAP),
        Pipe("feed-tank.overflow", "overflow.in", DISCHARGE, METAL, ((305, 65),), FALLS),
        Run("vent-pipe", "vent pipe", "Rises all the way from the stove, with nothing in it that can shut."),
        Run(
            "feed-pipe",
            "feed pipe",
            "Falls from the tank to the return, just before the pump, so that a boiling stove is filled from below.",
        ),
    )


_LOW = 70  # the fire side of an open box stands lower, under the water's level


def _open_box() -> tuple[Piece, ...]:
    """A store that is a box with its own water level, and the pipes that charge it."""
    return (
        Part("store", kind.OPEN_BOX, 310, 225 + _LOW),
        Part(
            "store-top-sensor",
            kind.SENSOR,
            310,
            190 + _LOW,
            words="sensor at the top of the store",
            purpose="Tells what the house can still draw.",
            inside="store",
        ),
        Part(
            "store-bottom-sensor",
            kind.SENSOR,
            310,
            395 + _LOW,
            words="sensor at the bottom of the store",
            purpose="Tells when the store is full: no more wood.",
            inside="store",
            acts_on="charge-pump",
        ),
        Part("store-drain", kind.DRAIN, 310, 475 + _LOW, words="store drain"),
        Pipe(
            "bypass-tee",
            "store.charge",
            SUPPLY,
            METAL,
            corners=((225, 235 + _LOW), (225, 165 + _LOW)),
            slope=RISES,
            run="charge-pipe",
        ),
        Pipe("store.charge return", "loading-valve.store", RETURN, METAL, run="charge-pipe"),
        Pipe("store.bottom", "store-drain.in", STILL),
    )


def _box_fire_side() -> tuple[Piece, ...]:
    """A fire side whose store is an open box: stove, dump and all pipes lie under its level."""
    return (
        *_fire_side(_LOW, _open_box()),
        Part("open-vent", kind.OPEN_VENT, 285, 60, purpose=_VENT_OVER_BOX, inside="store"),
        Part("float-valve", kind.FLOAT_VALVE, 110, 20, purpose=_FLOAT_IN_BOX),
        Part("cold-water", kind.MAIN, 45, 20, words="cold water for filling"),
        Part(
            "overflow",
            kind.FUNNEL,
            375,
            130,
            words="overflow",
            purpose="Ends where it is seen. If it runs, the fire boils or the float valve leaks.",
        ),
        Part("thermometer", kind.THERMOMETER, 185, 300 + _LOW, turn=90),
        _tee("vent-tee", 150, 50 + _LOW),
        Pipe("stove.gauge", "thermometer.tapping", STILL),
        Pipe("stove.dump supply", "vent-tee", SUPPLY, METAL, slope=RISES, run="dump-pipe"),
        Pipe("vent-tee", "dump.in", SUPPLY, METAL, slope=RISES, run="dump-pipe"),
        Pipe("vent-tee", "open-vent.in", STILL, METAL, ((150, 60),), RISES, "vent-pipe"),
        Pipe("cold-water.out", "float-valve.in", TAP),
        Pipe("float-valve.out", "store.fill", TAP, METAL, ((330, 20),)),
        Pipe("store.overflow", "overflow.in", DISCHARGE, METAL, ((375, 90),), FALLS),
        Run("vent-pipe", "vent pipe", "Rises all the way from the stove to over the box, with nothing that can shut."),
    )


_VENT_OVER_BOX = (
    "Where steam and air leave, under the lid and over the water, so that what spills runs back. Nothing may ever "
    "close it, and frost must not reach it."
)
_FLOAT_IN_BOX = (
    "Makes up for what evaporates, through an air gap, so that heating water can never get back into drinking water."
)


_TANK_SENSORS = (
    Part(
        "store-top-sensor",
        kind.SENSOR,
        255,
        150,
        words="sensor at the top of the first tank",
        purpose="Tells what the house can still draw.",
        inside="first-tank",
    ),
    Part(
        "store-bottom-sensor",
        kind.SENSOR,
        345,
        340,
        words="sensor at the bottom of the second tank",
        purpose="Tells when both are full: no more wood.",
        inside="second-tank",
        acts_on="charge-pump",
    ),
)


def _two_tanks() -> tuple[Piece, ...]:
    """Two closed tanks in a row, with vents and drains of their own, and the pipes that charge them."""
    return (
        Part("first-tank", kind.FIRST_TANK, 255, 245),
        Part("second-tank", kind.SECOND_TANK, 345, 245),
        Part("store-vent", kind.AIR_VENT, 255, 45, words="air vent of the first tank"),
        Part("second-vent", kind.AIR_VENT, 345, 105, words="air vent of the second tank"),
        *_TANK_SENSORS,
        Part("store-drain", kind.DRAIN, 255, 385, words="drain of the first tank"),
        Part("second-drain", kind.DRAIN, 345, 385, words="drain of the second tank"),
        _tee("expansion-tee", 250, 420),
        _tee("top-tee", 255, 70),
        Pipe(
            "bypass-tee",
            "first-tank.charge",
            SUPPLY,
            METAL,
            corners=((225, 235), (225, 165)),
            slope=RISES,
            run="charge-pipe",
        ),
        Pipe(
            "first-tank.foot",
            "second-tank.head",
            SUPPLY,
            METAL,
            corners=((285, 325), (285, 165)),
            run="between-pipe",
            either_way=True,
        ),
        Pipe("second-tank.charge return", "expansion-tee", RETURN, METAL, ((310, 325), (310, 420)), run="charge-pipe"),
        Pipe("expansion-tee", "loading-valve.store", RETURN, METAL, run="charge-pipe"),
        Pipe("first-tank.supply", "top-tee", SUPPLY, METAL, run="house-pipe"),
        Pipe("top-tee", "store-vent.in", STILL),
        Pipe("second-tank.top", "second-vent.in", STILL),
        Pipe("first-tank.bottom", "store-drain.in", STILL),
        Pipe("second-tank.bottom", "second-drain.in", STILL),
        Run(
            "between-pipe",
            "pipe between the tanks",
            "From the foot of the first to the top of the second, wide and with no valve. Water goes one way when "
            "the fire charges, and the other when the house draws.",
        ),
    )


def _house_of_two_tanks() -> tuple[Piece, ...]:
    return (
        *_house_below(ANY, "the first tank"),
        Pipe("top-tee", "check.in", SUPPLY, METAL, ((390, 70), (390, 590)), run="house-pipe"),
        Pipe("house-tee", "second-tank.return", RETURN, ANY, ((380, 715), (380, 325)), run="house-pipe"),
        Run(
            "house-pipe",
            "pipe between tanks and house",
            "Out from the top of the first tank, back to the foot of the second. Metal until the rooms have cooled the "
            "water.",
        ),
    )


def _tanks_side_by_side() -> tuple[Piece, ...]:
    """Two closed tanks between a header above and one below, each joined at opposite ends."""
    return (
        Part("first-tank", kind.LEFT_TANK, 255, 245),
        Part("second-tank", kind.RIGHT_TANK, 345, 245),
        Part("store-vent", kind.AIR_VENT, 345, 75, words="air vent of the tanks"),
        *_TANK_SENSORS,
        Part("store-drain", kind.DRAIN, 345, 450, words="drain of the tanks"),
        _tee("first-head", 255, 105),
        _tee("second-head", 345, 105),
        _tee("first-foot", 255, 375),
        _tee("second-foot", 345, 375),
        _tee("drain-tee", 345, 420),
        _tee("expansion-tee", 250, 420),
        Pipe("bypass-tee", "first-head", SUPPLY, METAL, ((225, 235), (225, 105)), RISES, "charge-pipe"),
        Pipe("first-head", "second-head", SUPPLY, METAL, run="header-pipe"),
        Pipe("first-foot", "second-foot", RETURN, METAL, run="header-pipe"),
        Pipe("first-head", "first-tank.head", SUPPLY, METAL, run="header-pipe", either_way=True),
        Pipe("second-head", "second-tank.head", SUPPLY, METAL, run="header-pipe", either_way=True),
        Pipe("first-tank.foot", "first-foot", RETURN, METAL, run="header-pipe", either_way=True),
        Pipe("second-tank.foot", "second-foot", RETURN, METAL, run="header-pipe", either_way=True),
        *_chain(RETURN, "second-foot", "drain-tee", "expansion-tee", "loading-valve.store", run="charge-pipe"),
        Pipe("second-head", "store-vent.in", STILL),
        Pipe("drain-tee", "store-drain.in", STILL),
        Run(
            "header-pipe",
            "headers of the tanks",
            "Pipes join them at opposite ends, so the way through each tank is as long. No valve stands in them.",
        ),
    )


def _house_of_tanks_side_by_side() -> tuple[Piece, ...]:
    return (
        *_house_below(METAL, "both tanks"),
        Pipe("second-head", "check.in", SUPPLY, METAL, ((390, 105), (390, 590)), run="house-pipe"),
        Pipe("house-tee", "first-foot", RETURN, METAL, ((380, 715), (380, 400), (255, 400)), run="house-pipe"),
        Run(
            "house-pipe",
            "pipe between tanks and house",
            "Out where the second tank joins above, back where the first one joins below. Metal until the rooms have "
            "cooled the water, since the fire's water can come straight through it.",
        ),
    )


def _house_below(cooled: Material, drawn_from: str) -> tuple[Piece, ...]:
    """The house below two tanks, between its check valve and its tee; `cooled` is the pipe behind the rooms."""
    return (
        Part("check", kind.CHECK, 335, 590, turn=180),
        _house_pump(265, 590, purpose=f"Draws from the top of {drawn_from} when the rooms call for heat."),
        Part("house", kind.HOUSE, 115, 685),
        _tee("house-tee", 290, 715),
        Part("house-drain", kind.DRAIN, 290, 745, words="drain of the house side"),
        Pipe("check.out", "house-pump.in", SUPPLY, run="house-pipe"),
        Pipe("house-pump.out", "house.in", SUPPLY, METAL, ((55, 590),), run="house-pipe"),
        Pipe("house.out", "house-tee", RETURN, cooled, run="house-pipe"),
        Pipe("house-tee", "house-drain.in", STILL, cooled),
    )


# --- the house side


def _from_store(down: int, *, first: str, run: str) -> tuple[Piece, ...]:
    """The check valve and the pipe to it from the top of the store; `first` is where the pipe ends."""
    return (
        Part("check", kind.CHECK, 335, 590 + down, turn=180),
        Pipe(
            "store.supply",
            "check.in",
            SUPPLY,
            METAL,
            corners=((390, 165 + down), (390, 590 + down)),
            run=run,
        ),
        Pipe("check.out", first, SUPPLY, run=run),
    )


def _to_store(
    start: str,
    *,
    height: int,
    drain_at: int,
    down: int,
    run: str,
    corners: tuple[Place, ...] = (),
    drains: str = "house side",
) -> tuple[Piece, ...]:
    """The pipe from `start` at this height back to the bottom of the store, with a drain at its low point."""
    return (
        _tee("house-tee", drain_at, height),
        Part("house-drain", kind.DRAIN, drain_at, height + 30, words=f"drain of the {drains}"),
        Pipe(start, "house-tee", RETURN, ANY, corners, run=run),
        Pipe("house-tee", "store.return", RETURN, ANY, ((370, height), (370, 420 + down)), run=run),
        Pipe("house-tee", "house-drain.in", STILL, ANY),
    )


def _house_pump(x: int, y: int, **own: str) -> Part:
    words = {"words": "house pump", "purpose": "Draws from the top of the store when the rooms call for heat."} | own
    return Part("house-pump", kind.PUMP, x, y, turn=180, **words)  # type: ignore[arg-type]


_HOUSE_PIPE = Run(
    "house-pipe",
    "pipe between store and house",
    "Out from the top of the store, back to its bottom. Metal until the rooms or a mixing valve have cooled the water.",
)


def _plain_house(down: int) -> tuple[Piece, ...]:
    return (
        *_from_store(down, first="house-pump.in", run="house-pipe"),
        _house_pump(265, 590 + down),
        Part("house", kind.HOUSE, 115, 685 + down),
        Pipe("house-pump.out", "house.in", SUPPLY, METAL, ((55, 590 + down),), run="house-pipe"),
        *_to_store("house.out", height=715 + down, drain_at=290, down=down, run="house-pipe"),
        _HOUSE_PIPE,
    )


def _floor_house() -> tuple[Piece, ...]:
    return (
        *_from_store(0, first="tempering-valve.hot", run="house-pipe"),
        Part(
            "tempering-valve",
            kind.TEMPERING_VALVE,
            280,
            590,
            mirror=True,
            purpose="Mixes cool return into the hot water, so that the floor gets what it can bear.",
        ),
        _house_pump(225, 590, words="floor pump", purpose="Moves the mixed water round the floor, all day and gently."),
        Part("high-limit", kind.HIGH_LIMIT, 165, 555, acts_on="house-pump"),
        Part("floor", kind.FLOOR, 115, 685),
        _tee("limit-tee", 165, 590),
        _tee("mixing-tee", 280, 715),
        *_chain(SUPPLY, "tempering-valve.mixed", "house-pump.in", material=ANY, run="floor-pipe"),
        *_chain(SUPPLY, "house-pump.out", "limit-tee", material=ANY, run="floor-pipe"),
        Pipe("limit-tee", "floor.in", SUPPLY, ANY, ((55, 590),), run="floor-pipe"),
        Pipe("limit-tee", "high-limit.tapping", STILL, ANY),
        Pipe("floor.out", "mixing-tee", RETURN, ANY, run="floor-pipe"),
        Pipe("mixing-tee", "tempering-valve.cold", RETURN, ANY, run="floor-pipe"),
        *_to_store("mixing-tee", height=715, drain_at=330, down=0, run="house-pipe"),
        _HOUSE_PIPE,
        Run(
            "floor-pipe",
            "pipe of the floor",
            "Carries several times the flow of the pipe from the store, as the floor's drop is small. Plastic pipe "
            "begins here, behind the mixing valve, and needs an oxygen barrier.",
        ),
    )


def _baseboard_house() -> tuple[Piece, ...]:
    rooms = (("upstairs", 650), ("downstairs", 720))
    zones: list[Piece] = []
    for words, y in rooms:
        zones += (
            Part(f"zone-valve-{words}", kind.ZONE_VALVE, 65, y, words=f"zone valve, {words}"),
            Part(f"baseboard-{words}", kind.BASEBOARD, 190, y, words=f"baseboard, {words}"),
            Pipe(f"zone-valve-{words}.out", f"baseboard-{words}.in", SUPPLY, run="house-pipe"),
        )
    return (
        *_from_store(0, first="house-pump.in", run="house-pipe"),
        _house_pump(265, 590),
        *zones,
        _tee("zones-tee", 25, 650),
        _tee("rooms-tee", 305, 720),
        Pipe("house-pump.out", "zones-tee", SUPPLY, METAL, ((25, 590),), run="house-pipe"),
        Pipe("zones-tee", "zone-valve-upstairs.in", SUPPLY, run="house-pipe"),
        Pipe("zones-tee", "zone-valve-downstairs.in", SUPPLY, METAL, ((25, 720),), run="house-pipe"),
        Pipe("baseboard-upstairs.out", "rooms-tee", RETURN, ANY, ((305, 650),), run="house-pipe"),
        Pipe("baseboard-downstairs.out", "rooms-tee", RETURN, ANY, run="house-pipe"),
        *_to_store("rooms-tee", height=720, drain_at=340, down=0, run="house-pipe"),
        _HOUSE_PIPE,
    )


def _duct_house() -> tuple[Piece, ...]:
    return (
        *_from_store(0, first="house-pump.in", run="house-pipe"),
        _house_pump(265, 590),
        Part("duct", kind.DUCT, 180, 690, mirror=True),
        Part("filter", kind.FILTER, 325, 690, mirror=True, inside="duct"),
        Part("furnace", kind.FURNACE, 265, 690, mirror=True, inside="duct"),
        Part("cooling-coil", kind.COOLING_COIL, 190, 690, mirror=True, inside="duct"),
        Part("duct-coil", kind.DUCT_COIL, 105, 690, mirror=True, inside="duct"),
        Part(
            "coil-sensor",
            kind.SENSOR,
            225,
            555,
            words="coil sensor",
            purpose="Lets the blower start only when the water is hot enough; else it blows cold air.",
            acts_on="furnace",
        ),
        _tee("coil-tee", 225, 590),
        *_chain(SUPPLY, "house-pump.out", "coil-tee", run="house-pipe"),
        Pipe("coil-tee", "duct-coil.in", SUPPLY, METAL, ((85, 590),), run="house-pipe"),
        Pipe("coil-tee", "coil-sensor.tapping", STILL),
        *_to_store("duct-coil.out", height=775, drain_at=320, down=0, run="house-pipe", corners=((125, 775),)),
        _HOUSE_PIPE,
    )


# --- taps


_TAP_PIPES = (
    Run(
        "tap-pipe",
        "drinking-water pipe",
        "Of a kind that is allowed for drinking water, hot and cold. Hot, it is metal up to the tempering valve.",
    ),
    Run("tap-discharge-pipe", "discharge pipe of the tap side", "Falls all the way to the floor, and is never shut."),
)


def _tap_relief(x: int, y: int, words: str, purpose: str = "") -> Part:
    return Part("tap-relief", kind.RELIEF, x, y, mirror=True, words=words, purpose=purpose)


def _tap_parts(hot_y: int, relief: Part, cold_y: int) -> tuple[Piece, ...]:
    """Cold water in, and the tempering valve, relief valve, vessel and taps that every tap side has."""
    return (
        Part("tap-main", kind.MAIN, 45, cold_y),
        Part(
            "tap-check",
            kind.CHECK,
            100,
            cold_y,
            words="check valve in the cold water",
            purpose="Keeps warm water from swelling back into the cold pipe, so the tap side needs its own vessel.",
        ),
        Part(
            "tap-vessel",
            kind.VESSEL,
            120,
            cold_y + 35,
            words="expansion vessel for drinking water",
            purpose="Takes the swelling of the tap water, between the check valve and the heat.",
        ),
        Part(
            "tap-tempering-valve",
            kind.TEMPERING_VALVE,
            150,
            hot_y,
            mirror=True,
            purpose="Mixes in cold water, so that no tap can scald. The water before it may be far hotter.",
        ),
        Part("taps", kind.TAPS, 60, hot_y),
        relief,
        Part("tap-discharge", kind.FUNNEL, 15, cold_y - 40, words="discharge end of the tap side"),
        _tee("tap-vessel-tee", 120, cold_y),
        _tee("tap-cold-tee", 150, cold_y),
        *_chain(TAP, "tap-main.out", "tap-check.in", material=ANY, run="tap-pipe"),
        *_chain(TAP, "tap-check.out", "tap-vessel-tee", "tap-cold-tee", material=ANY, run="tap-pipe"),
        Pipe("tap-cold-tee", "tap-tempering-valve.cold", TAP, ANY, run="tap-pipe"),
        Pipe("tap-tempering-valve.mixed", "taps.in", TAP, ANY, run="tap-pipe"),
        Pipe("tap-vessel-tee", "tap-vessel.in", STILL, ANY),
        Pipe(
            "tap-relief.out",
            "tap-discharge.in",
            DISCHARGE,
            METAL,
            corners=((15, relief.y),),
            slope=FALLS,
            run="tap-discharge-pipe",
        ),
        *_TAP_PIPES,
    )


def _tap_pump(x: int, y: int, turn: Turn, purpose: str) -> Part:
    return Part("tap-pump", kind.PUMP, x, y, turn=turn, words="pump for hot taps", purpose=purpose)


_TAP_HEAT_PIPE = Run(
    "tap-heat-pipe", "pipe between store and exchanger", "Hot from the top of the store, back to its bottom."
)


def _taps_as_drawn() -> tuple[Piece, ...]:
    return (
        *_from_store(0, first="tap-pump.in", run="tap-heat-pipe"),
        _tap_pump(285, 590, 180, "Runs only while a tap is open."),
        Part("plate", kind.DOUBLE_WALL_PLATE, 250, 685),
        Pipe("tap-pump.out", "plate.hot in", SUPPLY, METAL, ((260, 590),), run="tap-heat-pipe"),
        *_to_store("plate.hot out", height=715, drain_at=320, down=0, run="tap-heat-pipe", drains="store side"),
        _TAP_HEAT_PIPE,
        *_tap_parts(655, _tap_relief(205, 595, "relief valve of the tap side"), 765),
        Part("flow-switch", kind.FLOW_SWITCH, 185, 730, acts_on="tap-pump"),
        _tee("flow-tee", 185, 765),
        _tee("tap-relief-tee", 205, 655),
        *_chain(TAP, "tap-cold-tee", "flow-tee", material=ANY, run="tap-pipe"),
        Pipe("flow-tee", "plate.cold in", TAP, ANY, ((210, 765), (210, 715)), run="tap-pipe"),
        *_chain(TAP, "plate.cold out", "tap-relief-tee", "tap-tempering-valve.hot", run="tap-pipe"),
        Pipe("flow-tee", "flow-switch.tapping", STILL, ANY),
        Pipe("tap-relief-tee", "tap-relief.in", STILL),
    )


def _taps_in_a_tank() -> tuple[Piece, ...]:
    return (
        *_from_store(0, first="tap-pump.in", run="tap-heat-pipe"),
        _tap_pump(
            320, 620, 90, "Runs when the tank is cooler than it should be, and the store is hotter than the tank."
        ),
        Part("tap-tank", kind.TAP_TANK, 240, 725),
        Part(
            "tap-tank-sensor",
            kind.SENSOR,
            215,
            690,
            words="sensor of the tank",
            purpose="Starts the pump for hot taps.",
            inside="tap-tank",
            acts_on="tap-pump",
        ),
        Part("tap-drain", kind.DRAIN, 240, 830, words="drain of the tank"),
        Pipe("tap-pump.out", "tap-tank.coil in", SUPPLY, METAL, ((320, 700),), run="tap-heat-pipe"),
        *_to_store("tap-tank.coil out", height=765, drain_at=330, down=0, run="tap-heat-pipe", drains="store side"),
        _TAP_HEAT_PIPE,
        *_tap_parts(
            625,
            _tap_relief(
                250,
                580,
                "temperature and pressure relief valve",
                "Opens when the tank gets too hot or its pressure too high. No valve before it, none after it.",
            ),
            775,
        ),
        Pipe("tap-cold-tee", "tap-tank.cold", TAP, ANY, run="tap-pipe"),
        Pipe("tap-tank.hot", "tap-tempering-valve.hot", TAP, METAL, ((220, 625),), run="tap-pipe"),
        Pipe("tap-tank.relief", "tap-relief.in", STILL),
        Pipe("tap-tank.bottom", "tap-drain.in", STILL),
    )


# --- beside a boiler


def _boiler_relief(x: int, y: int, floor: int) -> tuple[Piece, ...]:
    """The existing boiler's own relief valve above it, at this place, with its discharge down the left-hand side."""
    return (
        Part("boiler-relief", kind.RELIEF, x, y, mirror=True, words="relief valve of the boiler"),
        Part("boiler-discharge", kind.FUNNEL, 15, floor, words="discharge end of the boiler"),
        Pipe("boiler.relief", "boiler-relief.in", STILL),
        Pipe(
            "boiler-relief.out",
            "boiler-discharge.in",
            DISCHARGE,
            METAL,
            corners=((15, y),),
            slope=FALLS,
            run="boiler-discharge-pipe",
        ),
        Run(
            "boiler-discharge-pipe",
            "discharge pipe of the boiler",
            "Falls all the way to the floor, and is never shut.",
        ),
    )


def _boiler_in_series() -> tuple[Piece, ...]:
    return (
        _house_pump(320, 675, purpose="Draws from the store, or past it, and pushes through the boiler to the house."),
        Part("boiler", kind.BOILER, 205, 645),
        *_boiler_relief(205, 570, 710),
        Part(
            "boiler-sensor",
            kind.SENSOR,
            275,
            640,
            words="sensor before the boiler",
            purpose="Lets the boiler fire only if the water that comes is too cool for the rooms.",
            acts_on="boiler",
        ),
        Part("check", kind.CHECK, 100, 615, turn=180),
        Part("house", kind.HOUSE, 115, 780, purpose="The emitters that are there already."),
        Part("diverter", kind.DIVERTER, 370, 740, turn=270),
        Part(
            "return-sensor",
            kind.SENSOR,
            315,
            775,
            words="sensor in the return",
            purpose="The diverting valve goes by it and the sensor at the top of the store.",
            acts_on="diverter",
        ),
        Part("house-drain", kind.DRAIN, 270, 840, words="drain of the house side"),
        _tee("past-tee", 390, 675),
        _tee("boiler-tee", 275, 675),
        _tee("house-tee", 270, 810),
        _tee("return-tee", 315, 810),
        Pipe("store.supply", "past-tee", SUPPLY, METAL, ((390, 165),), run="house-pipe"),
        *_chain(SUPPLY, "past-tee", "house-pump.in", run="house-pipe"),
        *_chain(SUPPLY, "house-pump.out", "boiler-tee", "boiler.in", run="house-pipe"),
        Part("boiler-vent", kind.AIR_VENT, 140, 595, words="air vent of the boiler"),
        _tee("boiler-vent-tee", 140, 615),
        *_chain(SUPPLY, "boiler.out", "boiler-vent-tee", "check.in", run="house-pipe"),
        Pipe("boiler-vent-tee", "boiler-vent.in", STILL),
        Pipe("check.out", "house.in", SUPPLY, METAL, ((55, 615),), run="house-pipe"),
        *_chain(RETURN, "house.out", "house-tee", "return-tee", material=ANY, run="house-pipe"),
        Pipe("return-tee", "diverter.house", RETURN, ANY, ((370, 810),), run="house-pipe"),
        Pipe("diverter.store", "store.return", RETURN, ANY, ((370, 420),), run="house-pipe"),
        Pipe("diverter.past", "past-tee", RETURN, ANY, ((390, 740),), run="house-pipe"),
        Pipe("boiler-tee", "boiler-sensor.tapping", STILL),
        Pipe("return-tee", "return-sensor.tapping", STILL, ANY),
        Pipe("house-tee", "house-drain.in", STILL, ANY),
        Run("house-pipe", "pipe of the house", "One round: store, boiler, house, and back to the store or past it."),
    )


def _boiler_by_exchanger() -> tuple[Piece, ...]:
    return (
        *_from_store(_DOWN, first="store-pump.in", run="exchanger-pipe"),
        Part(
            "store-pump",
            kind.PUMP,
            285,
            680,
            turn=180,
            words="store pump",
            purpose="Runs only while the store is hotter than the water that comes back from the house.",
        ),
        Part("plate", kind.PLATE, 250, 775),
        Pipe("store-pump.out", "plate.hot in", SUPPLY, METAL, ((260, 680),), run="exchanger-pipe"),
        *_to_store("plate.hot out", height=805, drain_at=320, down=_DOWN, run="exchanger-pipe", drains="store side"),
        Run("exchanger-pipe", "pipe between store and exchanger", "Hot from the top of the store, back to its bottom."),
        # The house side: closed, with its own relief valve, vessel and filling.
        Part("boiler", kind.BOILER, 150, 715),
        *_boiler_relief(150, 640, 895),
        Part("house", kind.HOUSE, 115, 960, purpose="The emitters that are there already."),
        Part(
            "house-pump",
            kind.PUMP,
            235,
            880,
            turn=270,
            words="house pump",
            purpose="Takes the return through the exchanger first, then through the boiler, then to the house.",
        ),
        Part(
            "house-vessel",
            kind.VESSEL_BESIDE,
            280,
            955,
            words="expansion vessel of the house side",
            purpose="Takes the swelling of the house's water. No valve stands between it and the boiler.",
        ),
        Part(
            "house-filling-valve",
            kind.HAND_VALVE,
            270,
            920,
            mirror=True,
            words="filling valve of the house side",
            purpose="Opened by hand to fill or top up, else shut.",
        ),
        Part("house-backflow", kind.BACKFLOW, 305, 920, mirror=True, words="backflow preventer of the house side"),
        Part("house-main", kind.MAIN, 360, 920, mirror=True, words="cold water for the house side"),
        Part("boiler-drain", kind.DRAIN, 235, 1020, words="drain of the house side"),
        _tee("house-filling-tee", 235, 920),
        _tee("house-vessel-tee", 235, 955),
        _tee("boiler-return-tee", 235, 990),
        *_chain(SUPPLY, "plate.cold out", "boiler.in", run="house-pipe"),
        Part("boiler-vent", kind.AIR_VENT, 80, 665, words="air vent of the house side"),
        _tee("boiler-vent-tee", 80, 685),
        *_chain(SUPPLY, "boiler.out", "boiler-vent-tee", run="house-pipe"),
        Pipe("boiler-vent-tee", "house.in", SUPPLY, METAL, ((55, 685),), run="house-pipe"),
        Pipe("boiler-vent-tee", "boiler-vent.in", STILL),
        *_chain(
            RETURN,
            "house.out",
            "boiler-return-tee",
            "house-vessel-tee",
            "house-filling-tee",
            "house-pump.in",
            material=ANY,
            run="house-pipe",
        ),
        Pipe("house-pump.out", "plate.cold in", RETURN, ANY, ((235, 840), (205, 840), (205, 805)), run="house-pipe"),
        Pipe("house-vessel-tee", "house-vessel.in", STILL),
        *_chain(
            STILL,
            "house-backflow.out",
            "house-filling-valve.in",
            "house-filling-valve.out",
            "house-filling-tee",
        ),
        Pipe("house-main.out", "house-backflow.in", TAP),
        Pipe("boiler-return-tee", "boiler-drain.in", STILL, ANY),
        Run("house-pipe", "pipe of the house", "The boiler's own round, with the exchanger in its return."),
    )


def _system(
    key: str,
    title: str,
    about: str,
    height: int,
    fire: tuple[Piece, ...],
    house: tuple[Piece, ...],
    *,
    vented: bool = False,
) -> System:
    def listed(pieces: tuple[Piece, ...]) -> tuple[str, ...]:
        parts = [piece.key for piece in pieces if isinstance(piece, Part) and piece.kind is not kind.TEE]
        return (*parts, *(piece.key for piece in pieces if isinstance(piece, Run)))

    pieces = (*fire, *house)
    return System(
        key,
        title,
        about,
        vented,
        tuple(piece for piece in pieces if isinstance(piece, Part)),
        tuple(piece for piece in pieces if isinstance(piece, Pipe)),
        tuple(piece for piece in pieces if isinstance(piece, Run)),
        (("The fire's side", listed(fire)), ("The house's side", listed(house))),
        height,
    )


ALL = (
    _system(
        "open-store",
        "An open store",
        "The fire's water is open to the air through a vent that ends over a feed tank, above everything else.",
        855,
        _open_fire_side(),
        _plain_house(_DOWN),
        vented=True,
    ),
    _system(
        "open-box",
        "An open box with its dump",
        "The store is a box with its own water level, and the stove, the dump and every pipe lie under that level.",
        855 - _DOWN + _LOW,
        _box_fire_side(),
        _plain_house(_LOW),
        vented=True,
    ),
    _system(
        "closed-store",
        "A closed store",
        "Stove and store are closed and under a little pressure, with a relief valve and an expansion vessel.",
        765,
        _closed_fire_side(),
        _plain_house(0),
    ),
    _system(
        "two-tanks",
        "Two tanks in a row",
        "Two closed tanks in series: the fire charges the first, then the second, and the house draws from the first.",
        765,
        _closed_fire_side(_two_tanks()),
        _house_of_two_tanks(),
    ),
    _system(
        "tanks-side-by-side",
        "Two tanks side by side",
        "Two closed tanks in parallel: a header above and one below join them, and half of the water takes each.",
        765,
        _closed_fire_side(_tanks_side_by_side()),
        _house_of_tanks_side_by_side(),
    ),
    _system(
        "floor",
        "A warm floor",
        "A tempering valve mixes the hot water of the store down for a floor.",
        765,
        _closed_fire_side(),
        _floor_house(),
    ),
    _system(
        "baseboard",
        "Baseboard",
        "Baseboard in two zones draws straight from the top of the store.",
        770,
        _closed_fire_side(),
        _baseboard_house(),
    ),
    _system(
        "duct-coil",
        "A coil in the ducts",
        "A coil in the duct of a furnace, behind it and behind its cooling coil, draws from the top of the store.",
        825,
        _closed_fire_side(),
        _duct_house(),
    ),
    _system(
        "taps-as-drawn",
        "Hot taps, heated as they are drawn",
        "Cold water is heated in a plate exchanger on its way to the taps, by water from the store.",
        825,
        _closed_fire_side(),
        _taps_as_drawn(),
    ),
    _system(
        "taps-tank",
        "Hot taps, kept in a tank",
        "Hot tap water is kept in a tank that the store warms through a coil.",
        850,
        _closed_fire_side(),
        _taps_in_a_tank(),
    ),
    _system(
        "boiler-series",
        "Beside a boiler, in series",
        "The return of the house passes the store first and the existing boiler after it. All is one water.",
        865,
        _closed_fire_side(),
        _boiler_in_series(),
    ),
    _system(
        "boiler-exchanger",
        "Beside a boiler, by an exchanger",
        "An open store warms the closed water of an existing boiler through a plate exchanger.",
        1045,
        _open_fire_side(),
        _boiler_by_exchanger(),
        vented=True,
    ),
)
