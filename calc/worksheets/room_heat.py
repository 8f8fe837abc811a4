"""Will the room with the stove overheat?"""

from calc.engine.declare import (
    Advice,
    Case,
    Cases,
    Chart,
    Comparison,
    Example,
    Field,
    Given,
    Line,
    Next,
    Option,
    Pick,
    Result,
    Step,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import house, room, warming, water
from calc.physics.room import HEAVINESS
from calc.vocabulary import (
    ALTITUDE,
    AVERAGE_OUTDOOR,
    HOUSE_CLASS,
    INDOOR,
    LOSS_PER_AREA,
    PARTITION,
    ROOM_CONDUCTANCE,
    ROOM_LIMIT,
    ROOM_OUTPUT,
)

ROOM_AREA = Field(
    "room_area",
    "area",
    "Floor area of the room with the stove",
    "Count rooms that lie open to it as one room.",
    low="40 ft2",
    high="5,000 ft2",
    uncertainty="5 %",
)
ROOM_KNOWN = Field(
    "room_known",
    "choice",
    "What you know of the room",
    "",
    options=(
        Option("size", "its size and how the house is built"),
        Option("conductance", "the heat it loses for each degree"),
    ),
)
DOORWAY_WIDTH = Field(
    "doorway_width",
    "length",
    "Width of open doorways to the house",
    "All of them added up; 0 with the doors shut.",
    low="0 in",
    high="40 ft",
    us="in",
    si="cm",
    uncertainty="5 %",
)
DOORWAY_HEIGHT = Field(
    "doorway_height",
    "length",
    "Height of the doorways",
    "",
    low="36 in",
    high="20 ft",
    us="in",
    si="cm",
    unless_given="80 in",
)
BUILD = Field(
    "build",
    "choice",
    "Thermal mass of the room",
    "Heavy walls take up heat and give it back slowly.",
    options=(
        *(Option(key, heaviness.label) for key, heaviness in HEAVINESS.items()),
        Option("own", "I know the heat its walls hold"),
    ),
)
WALL_CAPACITY = Field(
    "wall_capacity",
    "heat_capacity",
    "Heat that walls and floor hold for each degree",
    "Weight times specific heat of what lies within a hand's breadth of the surface.",
    low="50 Btu/F",
    high="500,000 Btu/F",
    us="Btu/°F",
    si="kWh/K",
    typical=Typical(
        "2,000 Btu/F", "common-practice", "1,000 Btu/F", "4,000 Btu/F", "A builder, from weights and areas."
    ),
)
HOURS_BURNING = Field(
    "hours_burning",
    "time",
    "Hours of fire without a pause",
    "All loads of one lighting together.",
    low="15 min",
    high="240 h",
    us="h",
    si="h",
    uncertainty="10 %",
)

_FIRE_IN_ROOM = {
    "heat": "room_output",
    "conductance": "room_loss",
    "outdoor": "average_outdoor",
    "house": "indoor",
    "width": "doorway_width",
    "height": "doorway_height",
    "air": "indoor",
    "walls": "indoor",
}
_BY_CLASS = Case(
    steps=(
        Pick(
            "capacity_per_area",
            "area_heat_capacity",
            "Heat held by walls and floor for each floor area",
            on="build",
            values={key: f"{heaviness.capacity_per_area:g} J/m2/K" for key, heaviness in HEAVINESS.items()},
            source="iso-13790",
        ),
        Pick(
            "mass_over_floor",
            "factor",
            "Surface of that mass over floor area",
            on="build",
            values={key: f"{heaviness.mass_over_floor:g}" for key, heaviness in HEAVINESS.items()},
            source="iso-13790",
        ),
        Step("wall_capacity", room.wall_capacity, "Heat held by walls and floor", area="room_area"),
        Step("link", room.link_to_walls, "Heat from air to walls for each degree", area="room_area"),
    )
)

WORKSHEET = Worksheet(
    key="room-heat",
    guide="room",
    question="Will the room with the stove overheat?",
    short="How warm the stove's room gets, how fast, and what the doorway passes on.",
    fields=(
        ROOM_OUTPUT,
        ROOM_AREA,
        ROOM_KNOWN,
        DOORWAY_WIDTH,
        HOURS_BURNING,
        ROOM_LIMIT,
        INDOOR,
        AVERAGE_OUTDOOR.but(hint="A mild day overheats a room sooner than the coldest one."),
        BUILD,
        PARTITION,
        ALTITUDE,
        DOORWAY_HEIGHT,
    ),
    givens=(
        Given("nothing_more", "conductance", "Nothing more", "0 W/K", "definition"),
        Given("usual_mass_over_floor", "factor", "Surface of the mass over floor area", "2.5", "iso-13790"),
        Given("door_shut", "length", "A door that is ajar", "0.3 ft", "definition"),
        Given("no_heat", "power", "No fire", "0 W", "definition"),
        Given("heat_strain", "temperature", "Air that strains a resting person", "90 °F", "heat-strain"),
    ),
    cases=(
        Cases(
            "room_known",
            size=Case(
                fields=(HOUSE_CLASS, LOSS_PER_AREA),
                steps=(
                    Step(
                        "room_loss",
                        house.conductance_by_class,
                        "Heat loss of the room per degree",
                        heated_area="room_area",
                    ),
                ),
            ),
            conductance=Case(
                fields=(ROOM_CONDUCTANCE,),
                steps=(
                    Step(
                        "room_loss",
                        room.all_losses,
                        "Heat loss of the room per degree",
                        conductance="room_conductance",
                        partition="nothing_more",
                        doorway="nothing_more",
                    ),
                ),
            ),
        ),
        Cases(
            "build",
            light=_BY_CLASS,
            medium=_BY_CLASS,
            heavy=_BY_CLASS,
            own=Case(
                fields=(WALL_CAPACITY,),
                steps=(
                    Step(
                        "link",
                        room.link_to_walls,
                        "Heat from air to walls for each degree",
                        area="room_area",
                        mass_over_floor="usual_mass_over_floor",
                    ),
                ),
                decides=True,
            ),
        ),
    ),
    steps=(
        Step("site_pressure", water.barometer, "Air pressure at this height"),
        Step(
            "steady_temperature",
            room.steady_room,
            "Room after days of fire",
            heat="room_output",
            conductance="room_loss",
            outdoor="average_outdoor",
            house="indoor",
            width="doorway_width",
            height="doorway_height",
        ),
        Step(
            "without_stove",
            room.steady_room,
            "Room without any heat of its own",
            heat="no_heat",
            conductance="room_loss",
            outdoor="average_outdoor",
            house="indoor",
            width="doorway_width",
            height="doorway_height",
        ),
        Step(
            "steady_rise",
            room.rise_above,
            "Rise over the room without the stove",
            room="steady_temperature",
            without="without_stove",
        ),
        # What the doorway passes on, with the room settled and at the limit.
        Step(
            "difference",
            room.difference_to_house,
            "Room over house, settled",
            room="steady_temperature",
            house="indoor",
        ),
        Step(
            "doorway_flow",
            room.doorway_flow,
            "Air out through the upper half of the doorway",
            width="doorway_width",
            height="doorway_height",
            house="indoor",
        ),
        Step("doorway", room.doorway_conductance, "Heat the doorway passes on for each degree", house="indoor"),
        Step(
            "heat_to_house",
            room.heat_passed_on,
            "Heat that the room gives the house",
            room="steady_temperature",
            house="indoor",
        ),
        Step(
            "limit_difference",
            room.difference_to_house,
            "Room over house at your limit",
            room="room_limit",
            house="indoor",
        ),
        Step(
            "limit_flow",
            room.doorway_flow,
            "Air through the doorway at your limit",
            width="doorway_width",
            height="doorway_height",
            difference="limit_difference",
            house="indoor",
        ),
        Step(
            "limit_doorway",
            room.doorway_conductance,
            "Heat the doorway passes on for each degree, at your limit",
            doorway_flow="limit_flow",
            house="indoor",
        ),
        Step(
            "room_can_use",
            room.room_can_use,
            "Heat the room can lose and pass on at your limit",
            conductance="room_loss",
            limit="room_limit",
            outdoor="average_outdoor",
            doorway="limit_doorway",
            house="indoor",
        ),
        # How fast.
        Step("air_capacity", room.air_capacity, "Heat held by air and furniture", area="room_area"),
        Step(
            "temperature_after",
            warming.room_after,
            "Room when the fire has burnt that long",
            **_FIRE_IN_ROOM,
            elapsed="hours_burning",
        ),
        Step(
            "hours_to_limit",
            warming.time_to_limit,
            "Hours until it is too warm",
            **_FIRE_IN_ROOM,
            limit="room_limit",
        ),
    ),
    results=(
        Result(
            "temperature_after",
            "Room temperature after {hours_burning} of fire",
            "It starts at {indoor}, as warm as the house.",
        ),
        Result("hours_to_limit", "Time until it passes {room_limit}", figures=2, missing="never"),
        Result("steady_temperature", "Room temperature with a fire day and night", "With {average_outdoor} outside."),
        Result(
            "steady_rise",
            "Rise over the room without the stove",
            "The room without any heat of its own would be at {without_stove}.",
        ),
        Result(
            "heat_to_house", "Heat it then gives the rest of the house", "Below nothing where the house warms the room."
        ),
        Result(
            "room_can_use",
            "Heat the room can lose and pass on at {room_limit}",
            "More than that overheats it, however long the store would take the rest.",
        ),
    ),
    headline="temperature_after",
    say="Day and night: {steady_temperature}.",
    advice=(
        Advice(
            "caution",
            "strain",
            "temperature_after > heat_strain",
            "That is dangerous heat for the old, the young and the ill.",
            "{temperature_after} after {hours_burning}. Open the doors and windows, and burn less of the wood in this room: "
            "more of the heat must go to the water.",
            "heat-strain",
            weight=3,
        ),
        Advice(
            "caution",
            "too-warm",
            "temperature_after > room_limit and temperature_after <= heat_strain",
            "The room gets too warm.",
            "It passes {room_limit} after {hours_to_limit}. Shorter burns into a store, a wider way to the house, or a stove "
            "that gives more to the water help.",
        ),
        Advice(
            "caution",
            "all-day",
            "steady_temperature > room_limit and temperature_after <= room_limit",
            "One lighting is fine, day and night is not.",
            "If the stove never went out the room would settle at {steady_temperature}. The store lets you light it for "
            "{hours_burning} and stop.",
        ),
        Advice(
            "caution",
            "door-shut",
            "doorway_width < door_shut",
            "The doors are shut.",
            "Only the walls pass heat on. An open door passes several times as much.",
            "doorway-flow",
        ),
        Advice(
            "note",
            "carbon-monoxide",
            "room_output > no_heat",
            "A carbon monoxide alarm belongs in this room.",
            "And one where people sleep. An open door carries heat through the house, and smoke gas too.",
        ),
        Advice(
            "note",
            "near-the-stove",
            "room_output > no_heat",
            "It is warmer near the stove and under the ceiling.",
            "The figures are the mean of the air. Walls and furniture close to the stove get far hotter: keep the "
            "clearances of its label.",
        ),
    ),
    meaning=(
        "At your limit the room can use {room_can_use}. Take that number to the firing worksheet: only so much of the heat "
        "to the room saves wood.",
    ),
    chart=Chart(
        "Room temperature as the fire burns on",
        across="hours_burning",
        low="15 min",
        high="24 h",
        lines=(Line("temperature_after", "the room", "fire"), Line("room_limit", "too warm", "limit")),
        say="After {hours_burning} the room is at {temperature_after}.",
    ),
    tables=(
        Comparison(
            "What helps",
            rows=(
                Variant("As it is", {}),
                Variant("Doors shut", {"doorway_width": "0 ft"}),
                Variant("Twice the doorway", {"doorway_width": "x2"}),
                Variant("Half as long a fire", {"hours_burning": "x0.5"}),
                Variant("Half the heat to the room", {"room_output": "x0.5"}),
                Variant("A day at 50 °F (10 °C)", {"average_outdoor": "50 °F"}),
                Variant("Brick or stone walls inside", {"build": "heavy"}),
            ),
            show=("temperature_after", "steady_temperature", "hours_to_limit"),
        ),
    ),
    examples=(
        Example(
            "Fern Lane: the kitchen stove",
            {
                "room_output": "10,000 Btu/h",
                "room_area": "220 ft2",
                "room_known": "size",
                "house_class": "recent",
                "doorway_width": "3 ft",
                "hours_burning": "4 h",
                "indoor": "68 °F",
                "average_outdoor": "28 °F",
                "build": "medium",
                "altitude": "3,000 ft",
            },
        ),
        Example("A room whose loss is known", {"room_known": "conductance", "room_conductance": "60 Btu/h/F"}),
        Example("Walls whose weight is known", {"build": "own", "wall_capacity": "2,000 Btu/F"}),
    ),
    leaves_out=(
        "Sun through the windows, cooking, people.",
        "Heat that a slab under the room takes from its own pipes.",
        "Stairs: a warm room under an open stair loses more than through a door.",
        "That part of a stove's heat goes straight to walls and people as radiation: the air then warms more slowly at first.",
        "That the air is warmer under the ceiling, and that the house next door warms too.",
    ),
    follow=(
        Next("firing", "How often the stove must burn at all."),
        Next("tank-size", "The store that lets it burn hard and stop."),
    ),
)
