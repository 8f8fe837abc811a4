"""What pipe and pump between stove and store?"""

from calc.chains.water_side import (
    ALL_PROPERTIES,
    BOILING_GIVENS,
    BOILING_STEPS,
    FRICTION_GIVENS,
    FRICTION_STEPS,
    PEAK,
    PIPE_FIELDS,
    PIPE_PLACE,
    fluid,
    pipe,
    roughness,
)
from calc.engine.declare import (
    Advice,
    Chart,
    Comparison,
    Example,
    Given,
    Line,
    Next,
    OnlyWith,
    Option,
    Result,
    Sizes,
    Step,
    Variant,
    Worksheet,
)
from calc.physics import emitters, pipes
from calc.plant import CHARGE_PIPE, CHARGE_PUMP
from calc.vocabulary import (
    ANTIFREEZE_KIND,
    BOILING_ALTITUDE,
    CHARGE_RISE,
    HIGHEST_POINT,
    OUTLET_HEIGHT,
    PEAK_KNOWN,
    PIPE_KIND,
    PUMP_HEIGHT,
    STORE_TOP,
    SUCTION_LOSS,
    SYSTEM_PRESSURE,
)

METAL = PIPE_KIND.but(
    options=(
        Option("copper-m", "copper, type M"),
        Option("copper-l", "copper, type L"),
        Option("steel", "steel, schedule 40"),
    ),
)

WORKSHEET = Worksheet(
    key="charge-loop",
    guide="pipes",
    question="What pipe and pump between stove and store?",
    short="Flow, pipe, pump and the hottest outlet at the fire's peak.",
    fields=(
        PEAK_KNOWN,
        CHARGE_RISE,
        STORE_TOP,
        METAL,
        *PIPE_FIELDS,
        BOILING_ALTITUDE,
        SYSTEM_PRESSURE,
        PUMP_HEIGHT,
        ANTIFREEZE_KIND,
        HIGHEST_POINT,
        OUTLET_HEIGHT,
        SUCTION_LOSS,
    ),
    givens=(
        *FRICTION_GIVENS,
        *BOILING_GIVENS,
        Given("hot_copper_speed", "velocity", "Fastest in hot copper", "3 ft/s", "copper-velocity"),
        Given("loud", "velocity", "Water is heard above", "4 ft/s", "quiet-velocity"),
        Given("least_suction", "length", "Suction head that small pumps ask for when hot", "6 ft", "suction-head"),
        Given("gentle", "temperature_difference", "A rise that keeps the outlet cool", "20 F°", "common-practice"),
    ),
    cases=(
        PEAK,
        fluid(("", "mean_water", "at the mean of outlet and inlet", ALL_PROPERTIES)),
        pipe("copper-m", "copper-l", "steel"),
    ),
    steps=(
        *BOILING_STEPS,
        Step("mean_water", emitters.mean_of, "Mean of outlet and inlet", supply="outlet_at_peak", return_water="store_top"),
        Step("volume_heat_capacity", pipes.volume_heat_capacity, "True factor at that temperature", us="Btu/(h·gpm·°F)"),
        Step("flow", pipes.flow, "Flow at the fire's peak", heat="peak_output", water_drop="charge_rise"),
        roughness("copper-m", "copper-l", "steel"),
        *FRICTION_STEPS,
        Step("least_bore", pipes.bore_for_velocity, "Bore at the fastest speed", velocity_limit="hot_copper_speed", us="in", si="mm"),
        Step("smallest_copper_m", pipes.smallest_copper_m, "Smallest copper, type M", us="in", si="in"),
        Step("smallest_copper_l", pipes.smallest_copper_l, "Smallest copper, type L", us="in", si="in"),
        Step("smallest_steel", pipes.smallest_steel, "Smallest steel, schedule 40", us="in", si="in"),
    ),
    results=(
        Result("flow", "Flow at the fire's peak", "For {peak_output} and a rise of {charge_rise}."),
        Result("peak_output", "Peak output to water"),
        Result("outlet_at_peak", "Stove outlet temperature at the peak", "With a full store at {store_top} feeding the stove."),
        Result("outlet_margin", "Margin to boiling at the outlet", "Water boils there at {boiling_outlet}."),
        Result("boiling_outlet", "Boiling point at the stove's outlet"),
        Result("highest_margin", "Margin at the highest pipe", "Water boils there at {boiling_highest}."),
        Result("pump_margin", "Margin at the pump's inlet", "Water boils there at {boiling_pump}."),
        Result("suction_head", "Net positive suction head at the pump"),
        Result("velocity", "Velocity in this pipe"),
        Result("pressure_drop", "Pressure drop of the loop"),
        Result("head", "Pump head at this flow"),
        Result("bore", "Inside diameter of this pipe", figures=4, us="in", si="mm"),
        Result("smallest_copper_m", "Smallest copper, type M", "Trade size that keeps to {hot_copper_speed}.", decimals=2, us="in", si="in", missing="none listed"),
        Result("smallest_copper_l", "Smallest copper, type L", "Trade size that keeps to {hot_copper_speed}.", decimals=2, us="in", si="in", missing="none listed"),
        Result("smallest_steel", "Smallest steel", "Trade size that keeps to {hot_copper_speed}.", decimals=2, us="in", si="in", missing="none listed"),
    ),
    headline="flow",
    say="Outlet {outlet_at_peak} at the peak; head {head}.",
    advice=(
        Advice(
            "stop", "outlet-boils", "outlet_margin <= 0",
            "The stove's outlet boils at the peak.",
            "It reaches {outlet_at_peak} with a full store, and water boils there at {boiling_outlet}. Charge the store "
            "cooler, let more water flow, or ask about pressure: this must not be lit as it is.",
            "iapws-if97", stays="store_top >= boiling",
        ),
        Advice(
            "stop", "highest-boils", "highest_margin <= 0",
            "The highest pipe boils first.",
            "Water of {outlet_at_peak} boils there at {boiling_highest}. Run the pipe lower, raise the pressure, or charge "
            "cooler.",
            "iapws-if97",
        ),
        Advice(
            "stop", "pump-boils", "pump_margin <= 0",
            "Water boils in the pump.",
            "At its inlet it boils at {boiling_pump} and the store sends {store_top}. The pump loses its water and the fire "
            "its cooling. Set the pump low, below the water level.",
            "iapws-if97",
        ),
        Advice(
            "caution", "outlet-margin", "outlet_margin > 0 and outlet_margin < boiling_caution",
            "Little margin at the stove's outlet.",
            "{outlet_margin} are left at the peak; keep {boiling_caution}. A smaller rise (more flow) or a cooler store helps.",
            "boiling-caution",
        ),
        Advice(
            "caution", "highest-margin", "highest_margin > 0 and highest_margin < boiling_caution",
            "Little margin at the highest pipe.",
            "{highest_margin} are left there; keep {boiling_caution}. What counts is its height over the water level.",
            "boiling-caution",
        ),
        Advice(
            "caution", "pump-margin", "pump_margin > 0 and pump_margin < boiling_caution",
            "Little margin at the pump's inlet.",
            "{pump_margin} are left there. Set the pump lower, on the cool side, with a short wide pipe before it.",
            "boiling-caution",
        ),
        Advice(
            "caution", "suction", "suction_head < least_suction",
            "The pump may not get its water.",
            "It has {suction_head} of suction head; small pumps ask for about {least_suction} when hot. The maker's sheet "
            "decides.",
            "suction-head",
        ),
        Advice(
            "caution", "fast", "velocity > hot_copper_speed",
            "Too fast for hot pipe.",
            "At {velocity} hot water wears copper at its elbows; keep to {hot_copper_speed}. Take the next size.",
            "copper-velocity",
        ),
        Advice(
            "caution", "noise", "velocity > loud",
            "This will be heard.",
            "Above {loud} pipes hiss, and the head of {head} costs pump power all winter.",
            "quiet-velocity",
        ),
        Advice(
            "caution", "undecided", "reynolds_number > laminar and reynolds_number < turbulent",
            "Between smooth and rough flow.",
            "At a Reynolds number of {reynolds_number} the friction may be half of this.",
        ),
        Advice(
            "note", "metal", "charge_rise > 0",
            "Metal all the way to the store.",
            "No plastic. Between the fire and its vent, relief or dump, no hand valve, no spring check and no valve that can fail shut.",
        ),
        Advice(
            "note", "return", "charge_rise > gentle",
            "Protect the return when the store is cold.",
            "This loop starts with cold water from the store: a mixing valve keeps the stove's inlet warm, or tar condenses in it.",
        ),
    ),
    meaning=(
        "The hottest water of the plant is here, not in the store: {outlet_at_peak} at the fire's peak. A pump that moves "
        "more water makes the outlet cooler; a store that is charged less hot does the same.",
    ),
    chart=Chart(
        "Outlet at the peak against the rise through the stove",
        across="charge_rise", low="5 F°", high="60 F°",
        lines=(Line("outlet_at_peak", "stove's outlet", "fire"), Line("boiling_outlet", "boils there at", "limit")),
        say="With a rise of {charge_rise} the outlet is {outlet_at_peak}; it boils at {boiling_outlet}.",
    ),
    tables=(
        Comparison(
            "More or less flow",
            rows=(
                Variant("Rise of 10 °F (5.6 K)", {"charge_rise": "10 F°"}),
                Variant("Rise of 20 °F (11 K)", {"charge_rise": "20 F°"}),
                Variant("Rise of 30 °F (17 K)", {"charge_rise": "30 F°"}),
                Variant("Rise of 40 °F (22 K)", {"charge_rise": "40 F°"}),
            ),
            show=("flow", "velocity", "head", "outlet_at_peak", "outlet_margin"),
            say="Same pipe. Less flow is easier on the pump and harder on the margin.",
        ),
    ),
    examples=(
        Example(
            "Mill Row: the cellar stove and the 800 gal store",
            {
                "peak_known": "no", "water_output": "60,000 Btu/h", "charge_rise": "25 F°", "store_top": "180 °F",
                "pipe_kind": "copper-m", "pipe_size": "1-1/4", "pipe_length": "40 ft", "elbows": "8", "tees": "4",
                "valves": "3", "altitude": "3,000 ft", "system_pressure": "12 psi", "pump_height": "-4 ft",
                "antifreeze_kind": "none", "outlet_height": "-2 ft", "highest_point": "12 ft",
            },
        ),
        Example("The peak is known", {"peak_known": "yes", "peak_output": "120,000 Btu/h"}),
    ),
    in_record=OnlyWith(PIPE_PLACE, ("stove",), or_unmade=True),
    sizes=(
        Sizes(CHARGE_PUMP, "{flow} against {head}", "{flow}, {head}", ("charge-pump",)),
        Sizes(
            CHARGE_PIPE, "at least {smallest_copper_l} copper (type L) or {smallest_steel} steel; worked out with {pipe_size}",
            "{smallest_copper_l} copper", ("charge-pipe",),
        ),
    ),
    leaves_out=(
        "Boiling of the plain water only: glycol boils a few degrees hotter.",
        "What the fire does when the pump stops: see the power cut.",
        "The mixing valve's own loss, unless you add it.",
    ),
    follow=(
        Next("power-cut", "Minutes to boiling when this pump stops."),
        Next("boiling", "Where water boils first, in all four places."),
        Next("gravity-loop", "Whether it can run with no pump."),
    ),
)  # fmt: skip
