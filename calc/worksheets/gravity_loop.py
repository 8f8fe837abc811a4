"""How much heat moves by gravity alone?"""

from calc.chains.water_side import (
    ALL_PROPERTIES,
    FRICTION_GIVENS,
    GRAVITY_PIPE,
    METAL_PIPE_KIND,
    METAL_PIPES,
    fluid,
    pipe,
)
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
    Option,
    Result,
    Step,
    Variant,
    Worksheet,
)
from calc.physics import emitters, gravity, pipes, water
from calc.vocabulary import (
    ANTIFREEZE_KIND,
    BOILING_ALTITUDE,
    ELBOWS,
    LOOP_HEIGHT,
    OTHER_LOSSES,
    PIPE_LENGTH,
    SYSTEM_PRESSURE,
    TEES,
    VALVES,
)

LOOP_QUESTION = Field(
    "loop_question",
    "choice",
    "What you want to know",
    "A loop settles where its own heat drives it: hotter water climbs harder.",
    options=(
        Option("heat-moved", "what it moves between two temperatures"),
        Option("outlet", "how hot the outlet gets with a heat it must move"),
    ),
)
LOOP_SUPPLY = Field(
    "loop_supply",
    "temperature",
    "Supply temperature going up",
    "At the stove's outlet; for the second question, the hottest you allow.",
    low="60 °F",
    high="210 °F",
    uncertainty="5 F°",
)
LOOP_RETURN = Field(
    "loop_return",
    "temperature",
    "Return temperature coming down",
    "From the bottom of the store or the dump.",
    low="40 °F",
    high="208 °F",
    uncertainty="5 F°",
)
LOOP_HEAT = Field(
    "loop_heat",
    "power",
    "Heat the loop must move",
    "For a dump, all of the fire's peak.",
    low="500 Btu/h",
    high="500,000 Btu/h",
    uncertainty="10 %",
)

WORKSHEET = Worksheet(
    key="gravity-loop",
    guide="pipes",
    question="How much heat moves by gravity alone?",
    short="Flow and heat in a loop with no pump, or how hot its outlet gets.",
    apart=GRAVITY_PIPE,
    fields=(
        LOOP_QUESTION,
        LOOP_SUPPLY,
        LOOP_RETURN,
        LOOP_HEIGHT,
        METAL_PIPE_KIND,
        PIPE_LENGTH,
        ELBOWS,
        TEES,
        VALVES,
        ANTIFREEZE_KIND,
        BOILING_ALTITUDE,
        SYSTEM_PRESSURE,
        OTHER_LOSSES,
    ),
    givens=(
        *FRICTION_GIVENS,
        Given(
            "boiling_caution", "temperature_difference", "Margin to boiling worth keeping", "20 F°", "boiling-caution"
        ),
        Given("least_difference", "temperature_difference", "Least difference looked at", "1 F°", "definition"),
        Given("sluggish", "velocity", "Too slow to carry its own air", "0.3 ft/s", "common-practice"),
    ),
    cases=(
        Cases(
            "loop_question",
            heat_moved=Case(
                steps=(
                    Step(
                        "driving_pressure",
                        gravity.driving_pressure,
                        "What drives it",
                        cool_density="density_cool",
                        warm_density="density_warm",
                    ),
                    Step("driving_number", gravity.driving_number, "The same without units"),
                    Step("reynolds_number", gravity.reynolds_between, "Reynolds number at which friction uses that up"),
                    Step("flow", gravity.flow_at, "Flow"),
                    Step("loop_drop", gravity.loop_drop, "Temperature drop around the loop"),
                    Step("heat_moved", pipes.heat_carried, "Heat moved", water_drop="loop_drop"),
                    Step("outlet", gravity.outlet, "Stove's outlet"),
                ),
            ),
            outlet=Case(
                fields=(LOOP_HEAT,),
                steps=(
                    Step("property_range", gravity.loop_drop, "Width of the temperatures looked at"),
                    Step(
                        "expansion_rate",
                        gravity.expansion_rate,
                        "Growth of water for each degree",
                        cool_density="density_cool",
                        warm_density="density_warm",
                        difference="property_range",
                    ),
                    Step(
                        "heat_driving_number",
                        gravity.heat_driving_number,
                        "What drives it, without units",
                        heat="loop_heat",
                    ),
                    Step("reynolds_number", gravity.reynolds_for_heat, "Reynolds number at which it settles"),
                    Step("flow", gravity.flow_at, "Flow"),
                    Step("loop_drop", pipes.rise, "Temperature drop around the loop", heat="loop_heat"),
                    Step("heat_moved", pipes.heat_carried, "Heat moved", water_drop="loop_drop"),
                    Step("outlet", gravity.outlet, "Stove's outlet"),
                ),
            ),
        ),
        fluid(
            ("", "mean_water", "at the mean", ALL_PROPERTIES),
            ("_cool", "loop_return", "of the water coming down", ("density",)),
            ("_warm", "loop_supply", "of the water going up", ("density",)),
        ),
        pipe(METAL_PIPES),
    ),
    steps=(
        Step("mean_water", emitters.mean_of, "Mean of up and down", supply="loop_supply", return_water="loop_return"),
        Step("volume_heat_capacity", pipes.volume_heat_capacity, "Heat in each volume and degree"),
        Step("relative_roughness", pipes.relative_roughness, "Roughness over bore"),
        Step("length_in_bores", gravity.length_in_bores, "Length in bores", length="pipe_length"),
        Step("fittings_loss", pipes.fittings_loss, "Loss of all fittings, in velocity heads"),
        Step("velocity", pipes.velocity, "Velocity of the water"),
        Step("barometer", water.barometer, "Air pressure at this height"),
        Step("pressure", water.absolute_pressure, "Absolute pressure at the store's top", gauge="system_pressure"),
        Step("boiling", water.boiling_temperature, "Water boils there at"),
        Step("outlet_margin", water.boiling_margin, "Margin to boiling at the outlet", temperature="outlet"),
    ),
    results=(
        Result("heat_moved", "Heat moved"),
        Result("flow", "Flow", "At the mean of up and down, {mean_water}."),
        Result(
            "driving_pressure",
            "Driving pressure",
            "From the weight of the cool side.",
            us="psi",
            si="Pa",
            only=("loop_question", "heat-moved"),
        ),
        Result("outlet", "Stove's outlet", "Water coming back at {loop_return}."),
        Result("loop_drop", "Temperature drop around the loop"),
        Result("velocity", "Velocity of the water"),
        Result("reynolds_number", "Reynolds number", "Laminar below {laminar}, turbulent above {turbulent}."),
        Result(
            "outlet_margin",
            "Margin to boiling where this loop leaves the fire",
            "Water boils at {boiling} at the store's top.",
        ),
        Result("bore", "Inside diameter of this pipe", figures=4, us="in", si="mm"),
    ),
    headline="heat_moved",
    say="{flow} flow, outlet at {outlet}.",
    musts=(
        Must(
            "loop_supply >= loop_return",
            "loop_return",
            "Return temperature coming down must not be above the supply temperature going up.",
        ),
    ),
    advice=(
        Advice(
            "unworkable",
            "nothing-drives-it",
            "loop_question == 'heat-moved' and loop_supply <= loop_return",
            "Nothing flows.",
            "Both legs are at {loop_supply}: water as warm coming down as going up drives nothing.",
            zeroes=("flow", "heat_moved", "velocity"),
        ),
        Advice(
            "stop",
            "boils",
            "outlet_margin <= 0",
            "The outlet boils.",
            "The loop needs {outlet} to move {heat_moved}, and water boils at {boiling}. A wider pipe, a higher store, a "
            "straighter run or a smaller fire; not this.",
            "iapws-if97",
        ),
        Advice(
            "unworkable",
            "too-hot",
            "loop_question == 'outlet' and outlet > loop_supply and outlet_margin > 0",
            "The loop does not move that heat.",
            "It would settle at {outlet}, above the {loop_supply} you allow. Wider pipe and fewer turns help most.",
        ),
        Advice(
            "caution",
            "margin",
            "outlet_margin > 0 and outlet_margin < boiling_caution",
            "Little margin to boiling.",
            "{outlet_margin} are left at the outlet; keep {boiling_caution}.",
            "boiling-caution",
            weight=3,
        ),
        Advice(
            "caution",
            "undecided",
            "reynolds_number > laminar and reynolds_number < turbulent",
            "Between smooth and rough flow.",
            "At a Reynolds number of {reynolds_number} nobody can say which the water does; it may move more than this.",
            weight=1,
        ),
        Advice(
            "caution",
            "sluggish",
            "velocity < sluggish",
            "This loop is weak.",
            "At {velocity} a bubble of air or a slight dip stops it. Give it height and bore.",
        ),
        Advice(
            "note",
            "clear-way",
            "heat_moved > 0",
            "Nothing may close or dip.",
            "A spring check, a shut valve, a pump that blocks when idle, a dip or an air lock stops it. The pipe rises all "
            "the way, with a vent at the top.",
        ),
        Advice(
            "note",
            "prove",
            "heat_moved > 0",
            "Prove it with a small fire.",
            "Light a little one with the pump off and feel the pipes: count on this loop only once it has been seen to flow.",
        ),
    ),
    meaning=(
        "The loop is driven by the weight of its cool side. Height helps in proportion and bore far more: the friction of "
        "a pipe half as wide is over thirty times as large.",
    ),
    chart=Chart(
        "Heat moved against the height",
        across="loop_height",
        low="1 ft",
        high="20 ft",
        lines=(Line("heat_moved", "heat moved", "use"),),
        say="At {loop_height} it moves {heat_moved}.",
    ),
    tables=(
        Comparison(
            "The same loop in other sizes",
            rows=(
                Variant("3/4 in or 18 x 1 mm", {"pipe_size": "3/4", "metric_size": "18x1", "bore": "18 mm"}),
                Variant("1 in or 28 x 1.5 mm", {"pipe_size": "1", "metric_size": "28x1.5", "bore": "25 mm"}),
                Variant("1-1/4 in or 35 x 1.5 mm", {"pipe_size": "1-1/4", "metric_size": "35x1.5", "bore": "32 mm"}),
                Variant("1-1/2 in or 42 x 1.5 mm", {"pipe_size": "1-1/2", "metric_size": "42x1.5", "bore": "39 mm"}),
                Variant("2 in or 54 x 2 mm", {"pipe_size": "2", "metric_size": "54x2", "bore": "50 mm"}),
            ),
            show=("flow", "heat_moved", "outlet"),
        ),
    ),
    examples=(
        Example(
            "Hollow Cabin: stove to the store upstairs, no pump",
            {
                "loop_question": "heat-moved",
                "loop_supply": "180 °F",
                "loop_return": "140 °F",
                "loop_height": "7 ft",
                "pipe_kind": "steel",
                "pipe_size": "1-1/2",
                "pipe_length": "40 ft",
                "elbows": "6",
                "tees": "2",
                "valves": "0",
                "antifreeze_kind": "none",
                "altitude": "3,000 ft",
                "system_pressure": "0 psi",
            },
        ),
        Example(
            "Hollow Cabin: how hot the outlet gets",
            {"loop_question": "outlet", "loop_heat": "50,000 Btu/h", "loop_return": "140 °F", "loop_height": "7 ft"},
        ),
    ),
    leaves_out=(
        "Heat lost by the pipes, which helps the cool side and hurts the warm one.",
        "Air, dips, and whatever is in the way: no formula sees them.",
        "For the second question, water's growth is taken between the two temperatures given.",
    ),
    follow=(
        Next("power-cut", "Whether this loop saves the stove when the power fails."),
        Next("charge-loop", "The same loop with a pump."),
    ),
)
