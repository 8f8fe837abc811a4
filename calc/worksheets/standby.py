"""What does the tank lose, and is that heat wasted?"""

from calc.chains import outlet
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
    Must,
    Next,
    Pick,
    Result,
    Step,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import store, water
from calc.vocabulary import (
    CONDUCTIVITY,
    FITTINGS,
    INSULATION,
    INSULATION_KIND,
    SLENDERNESS,
    STORE_INSIDE,
    STORE_KIND,
    STORE_SURROUNDINGS,
    STORE_TOP,
    STORE_VOLUME,
)

WAITING = Field(
    "waiting",
    "time",
    "Standby time without a fire",
    low="1 h",
    high="1,000 h",
    typical=Typical("24 h", "common-practice", "12 h", "72 h", "You decide."),
)
OPEN_WATER = Field(
    "open_water",
    "area",
    "Open water surface",
    "Gaps around lid and pipes; for no lid at all, the whole surface.",
    low="0 ft2",
    high="500 ft2",
    typical=Typical("0.5 ft2", "common-practice", "0.1 ft2", "2 ft2", "Measure the gaps."),
)
LINER_LIMIT = Field(
    "liner_limit",
    "temperature",
    "Temperature limit of the liner",
    "It stands on the liner's sheet.",
    low="100 °F",
    high="250 °F",
    typical=Typical("170 °F", "liner-limit", "160 °F", "180 °F", "The maker of the liner."),
)

_OPEN_STEPS = (
    Step(
        "shell_loss",
        store.standby_loss,
        "Lost through the walls",
        store_temperature="store_top",
        surroundings="store_surroundings",
    ),
    Step("water_vapour", water.vapour_pressure, "Vapor pressure at the water", temperature="store_top"),
    Step("evaporation", store.evaporation_loss, "Evaporation loss", open_area="open_water"),
    Step("standby_loss", store.open_store_loss, "Standby loss when fully charged"),
)

WORKSHEET = Worksheet(
    key="standby",
    guide="storage",
    question="What does the tank lose, and is that heat wasted?",
    short="Heat a store loses while it waits, how far it cools, and whether that heat is lost.",
    fields=(
        STORE_VOLUME,
        STORE_TOP,
        STORE_SURROUNDINGS,
        STORE_INSIDE,
        INSULATION,
        INSULATION_KIND,
        CONDUCTIVITY,
        FITTINGS,
        STORE_KIND,
        WAITING,
        SLENDERNESS,
        *outlet.FIELDS,
    ),
    givens=(
        Given("film", "conductance_per_area", "Heat from the outside surface to the air", "8.5 W/(m²·K)", "tank-film"),
        Given("air_vapour", "pressure_absolute", "Vapor pressure in cool air", "0.5 kPa", "common-practice"),
        Given("air_speed", "velocity", "Draft over the water", "0.1 m/s", "common-practice"),
        *outlet.GIVENS,
        Given("cooled", "temperature", "A store that has cooled", "100 °F", "definition"),
        Given("freezing", "temperature", "Water freezes", "32 °F", "definition"),
    ),
    cases=(
        Cases(
            "store_kind",
            closed=Case(
                steps=(
                    Step(
                        "standby_loss",
                        store.standby_loss,
                        "Standby loss when fully charged",
                        store_temperature="store_top",
                        surroundings="store_surroundings",
                    ),
                ),
            ),
            open=Case(fields=(OPEN_WATER,), steps=_OPEN_STEPS),
            lined=Case(fields=(OPEN_WATER, LINER_LIMIT), steps=_OPEN_STEPS),
        ),
    ),
    steps=(
        Step("tank_width", store.cylinder_diameter, "Width of a round tank of that size", volume="store_volume"),
        Step("tank_high", store.cylinder_height, "Its height", volume="store_volume", diameter="tank_width"),
        Step(
            "side",
            store.side_conductance,
            "Through the side, for each degree",
            diameter="tank_width",
            height="tank_high",
        ),
        Step("ends", store.ends_conductance, "Through top and bottom, for each degree", diameter="tank_width"),
        Step("conductance", store.shell_conductance, "Through walls, pipes and legs, for each degree"),
        Step(
            "loss_per_degree",
            store.conductance_of_loss,
            "All losses, for each degree",
            loss="standby_loss",
            store_temperature="store_top",
            surroundings="store_surroundings",
        ),
        Step(
            "heat_content",
            water.mean_volume_heat_content,
            "Heat in each volume and degree, as it cools",
            low="cooled",
            top="store_top",
        ),
        Step("heat_capacity", store.heat_capacity, "Heat in the tank for each degree", volume="store_volume"),
        Step("time_constant", store.time_constant, "Time constant", conductance="loss_per_degree"),
        Step(
            "temperature_after",
            store.temperature_after,
            "Temperature after the wait",
            start="store_top",
            heading_for="store_surroundings",
            elapsed="waiting",
        ),
        Step("heat_lost", store.heat_lost, "Heat lost by then", start="store_top", finish="temperature_after"),
        Pick(
            "wasted_share",
            "fraction",
            "Share that the house does not get",
            "store_inside",
            {"yes": "0 %", "no": "100 %"},
            "definition",
        ),
        Step(
            "heat_wasted",
            store.part_of_heat,
            "Of that, lost outside the heated space",
            share="wasted_share",
            heat="heat_lost",
        ),
        *outlet.STEPS,
    ),
    results=(
        Result(
            "standby_loss",
            "Standby loss when fully charged",
            "At {store_top} in {store_surroundings}.",
            taken_when="store_inside == 'no'",
            else_why="Inside the heated space that heat warms the house, and is part of its load.",
        ),
        Result(
            "temperature_after",
            "Temperature after {waiting}",
            "All of it mixed, with no fire and nothing drawn.",
            missing="the same as now",
        ),
        Result("heat_lost", "Heat lost by then"),
        Result(
            "heat_wasted",
            "Of that, lost outside the heated space",
            "In the heating season. Inside the heated space it warms the house.",
        ),
        Result(
            "time_constant",
            "Time constant",
            "In that time the tank falls 63 % of the way to its surroundings.",
            us="days",
            si="days",
        ),
        Result("conductance", "Heat loss per degree, pipes and legs included", "Bare blanket times {fittings}."),
        Result(
            "evaporation",
            "Evaporation loss",
            "{open_water} of bare water; the equation comes from cooler pools, so take it as a size, not a digit.",
        ),
        Result("tank_width", "Width of a round tank of that size"),
        Result("tank_high", "Height of such a tank"),
        outlet.RESULT,
    ),
    headline="standby_loss",
    say="After {waiting} it is at {temperature_after}.",
    musts=(
        Must(
            "store_top >= store_surroundings",
            "store_surroundings",
            "The air around the store must be no warmer than the store.",
        ),
    ),
    advice=(
        *outlet.ADVICE,
        Advice(
            "stop",
            "liner",
            "store_top > liner_limit",
            "This is too hot for the liner.",
            "It is made for {liner_limit} and the store goes to {store_top}. A liner that softens lets go of all the "
            "water at "
            "once. Charge it cooler, or ask its maker.",
            "liner-limit",
        ),
        Advice(
            "caution",
            "pressure-on-open",
            "store_kind != 'closed' and system_pressure > 0",
            "An open store has no pressure on its gauge.",
            "You gave {system_pressure}. An open tank shows 0, and water in it boils at the lower temperature of the "
            "open air.",
        ),
        Advice(
            "caution",
            "freezes",
            "store_inside == 'no' and store_surroundings < freezing",
            "Pipes can freeze out there.",
            "It is {store_surroundings} around the store. The tank itself takes weeks to freeze, its pipes a night.",
            weight=3,
        ),
        Advice(
            "caution",
            "bare",
            "insulation <= 0",
            "A bare tank is a radiator.",
            "It loses {standby_loss} while hot. Inside it overheats its room, outside it wastes the fire.",
        ),
        Advice(
            "caution",
            "vapor",
            "store_kind != 'closed' and evaporation > 0.25 * standby_loss",
            "The lid leaks more than it looks.",
            "{evaporation} of the {standby_loss} leaves as vapor, and wets the room it goes to. Close the gaps; never "
            "seal an "
            "open tank tight: it must breathe.",
            weight=1,
        ),
        Advice(
            "note",
            "part-of-load",
            "store_inside == 'yes'",
            "In winter this heat is not lost.",
            "It warms the house and is part of its load already: count it nowhere twice. In summer it is a nuisance.",
        ),
        Advice(
            "note",
            "outside",
            "store_inside == 'no'",
            "All of this is extra wood.",
            "Add {standby_loss} to what the fire must make; give it to the firing and stored-heat worksheets as lost "
            "outside.",
        ),
        Advice(
            "note",
            "pipes",
            "fittings < 1.2",
            "Few tanks are that good.",
            "Pipes, legs and a thin spot in the blanket add a fifth at least, often half as much again.",
            "tank-fittings",
        ),
    ),
    meaning=(
        "The first layers of insulation do most of the work; after that, pipes and legs are worth a look. A dip in "
        "each pipe where it leaves the tank keeps hot water from wandering off in it.",
    ),
    chart=Chart(
        "Temperature of a tank left to wait",
        across="waiting",
        low="1 h",
        high="240 h",
        lines=(Line("temperature_after", "mixed tank", "tank"),),
        say="After {waiting} it is at {temperature_after}.",
    ),
    tables=(
        Comparison(
            "More insulation on the same tank",
            rows=(
                Variant("2 in (51 mm)", {"insulation": "2 in"}),
                Variant("4 in (102 mm)", {"insulation": "4 in"}),
                Variant("6 in (152 mm)", {"insulation": "6 in"}),
                Variant("8 in (203 mm)", {"insulation": "8 in"}),
            ),
            show=("standby_loss", "temperature_after", "heat_lost", "heat_wasted"),
            say="Each row assumes the same pipes and legs.",
        ),
    ),
    examples=(
        Example(
            "Mill Row: the closed store in the cellar",
            {
                "store_volume": "800 gal",
                "store_top": "180 °F",
                "store_surroundings": "60 °F",
                "store_inside": "yes",
                "insulation": "4 in",
                "insulation_kind": "mineral-wool",
                "store_kind": "closed",
                "waiting": "24 h",
                "altitude": "3,000 ft",
                "system_pressure": "12 psi",
            },
        ),
        Example(
            "Ridge Road: the closed store in the unheated barn",
            {
                "store_volume": "800 gal",
                "store_top": "185 °F",
                "store_surroundings": "40 °F",
                "store_inside": "no",
                "insulation": "4 in",
                "insulation_kind": "mineral-wool",
                "store_kind": "closed",
                "waiting": "24 h",
                "altitude": "3,000 ft",
                "system_pressure": "12 psi",
            },
        ),
        Example(
            "Fern Lane: the open store in the cellar",
            {
                "store_volume": "500 gal",
                "store_inside": "yes",
                "store_kind": "open",
                "store_surroundings": "60 °F",
                "system_pressure": "0 psi",
            },
        ),
    ),
    leaves_out=(
        "Layers: a tank that stays hot on top loses a little less below.",
        "Water that wanders through pipes by itself, beyond the factor for fittings.",
        "An open tank loses less vapor as it cools, so it ends a little warmer than said.",
    ),
    follow=(
        Next("stored-heat", "How long the store carries the house."),
        Next("tank-place", "Whether there is room for the insulation."),
        Next("firing", "How often you light it with this loss."),
    ),
)
