"""How cool can my baseboards or radiators run?"""

from calc.chains import outlet, own_load, store_for_hours
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
    Result,
    Sizes,
    Step,
    Suits,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import emitters
from calc.plant import EMITTERS
from calc.vocabulary import (
    AVERAGE_OUTDOOR,
    DESIGN_LOAD,
    DESIGN_OUTDOOR,
    EMITTER,
    EMITTER_FACTOR,
    EXCHANGER_APPROACH,
    INDOOR,
    SUPPLY_TRIED,
    WATER_DROP,
)

# Floors and duct coils have worksheets of their own.
OWN_EMITTER = EMITTER.offering("baseboard", "radiator")
BASEBOARD_LENGTH = Field(
    "baseboard_length",
    "length",
    "Total finned length of baseboard",
    "Only the part with fins on it, not the covers.",
    low="1 ft",
    high="2,000 ft",
    uncertainty="5 %",
)
BASEBOARD_RATING = Field(
    "baseboard_rating",
    "heat_rate_per_length",
    "Rated output per foot or meter",
    "In the maker's table, at the rating temperatures below.",
    low="50 Btu/h/ft",
    high="2,000 Btu/h/ft",
    typical=Typical(
        "560 Btu/h/ft", "baseboard-rating", "500 Btu/h/ft", "620 Btu/h/ft", "The maker's table for the model."
    ),
)
RADIATOR_RATING = Field(
    "radiator_rating",
    "power",
    "Rated output of all radiators",
    "At the rating temperatures below.",
    low="200 Btu/h",
    high="1,000,000 Btu/h",
)
ALLOWANCE = Field(
    "allowance",
    "fraction",
    "Heating-effect allowance inside the rating",
    "15 % in many North American baseboard tables; 0 % where the table is the bare test.",
    low="0 %",
    high="30 %",
    typical=Typical(
        {"baseboard": "15 %", "radiator": "0 %"},
        "ashrae-heating-effect",
        {"baseboard": "0 %", "radiator": "0 %"},
        {"baseboard": "15 %", "radiator": "0 %"},
        "The small print under the maker's table.",
        on="emitter",
    ),
)
RATING_WATER = Field(
    "rating_water",
    "temperature",
    "Mean water temperature at the rating",
    "Halfway between supply and return.",
    low="90 °F",
    high="250 °F",
    typical=Typical({"baseboard": "180 °F", "radiator": "158 °F"}, "rating-conditions", on="emitter"),
)
RATING_AIR = Field(
    "rating_air",
    "temperature",
    "Air temperature at the rating",
    "Entering air for baseboard, room air for radiators.",
    low="40 °F",
    high="90 °F",
    typical=Typical({"baseboard": "65 °F", "radiator": "68 °F"}, "rating-conditions", on="emitter"),
)
EXPONENT = Field(
    "exponent",
    "exponent",
    "Output exponent of the emitter",
    "How steeply its output falls with cooler water.",
    low="1",
    high="1.7",
    typical=Typical(
        {"baseboard": "1.4", "radiator": "1.3"},
        "emitter-exponents",
        {"baseboard": "1.3", "radiator": "1.2"},
        {"baseboard": "1.5", "radiator": "1.4"},
        "The maker's test report.",
        on="emitter",
    ),
)

EMITTERS_SHARE = own_load.share("emitters_share", "these emitters")

WORKSHEET = Worksheet(
    key="emitter-temperature",
    guide="emitters",
    question="How cool can my baseboards or radiators run?",
    short="The coolest water with which the emitters you have still heat the house.",
    fields=(
        OWN_EMITTER,
        ALLOWANCE,
        RATING_WATER,
        RATING_AIR,
        EXPONENT,
        DESIGN_LOAD,
        EMITTERS_SHARE,
        INDOOR,
        WATER_DROP,
        DESIGN_OUTDOOR,
        AVERAGE_OUTDOOR,
        EXCHANGER_APPROACH,
        SUPPLY_TRIED,
        EMITTER_FACTOR,
        *store_for_hours.FIELDS,
        *outlet.FOLDED,
    ),
    givens=(
        Given(
            "flat_return",
            "fraction",
            "Return's share of the supply's excess below which the mean flatters",
            "70 %",
            "en-442-log",
        ),
        Given("hottest_store", "temperature", "As hot as stores are charged", "200 °F", "hottest-store"),
        *store_for_hours.GIVENS,
        *outlet.GIVENS,
    ),
    cases=(
        Cases(
            "emitter",
            baseboard=Case(
                fields=(BASEBOARD_LENGTH, BASEBOARD_RATING),
                steps=(
                    Step(
                        "printed_rating",
                        emitters.rating_of_length,
                        "Printed rating of all of it",
                        length="baseboard_length",
                        rating_per_length="baseboard_rating",
                    ),
                    Step("tested_rating", emitters.rating_without_allowance, "Rating without the allowance"),
                ),
            ),
            radiator=Case(
                fields=(RADIATOR_RATING,),
                steps=(
                    Step(
                        "tested_rating",
                        emitters.rating_without_allowance,
                        "Rating without the allowance",
                        printed_rating="radiator_rating",
                    ),
                ),
            ),
        ),
    ),
    steps=(
        *own_load.steps(EMITTERS_SHARE),
        Step("rating", emitters.scaled_rating, "Rating of the emitter looked at", rating="tested_rating"),
        Step(
            "rated_excess",
            emitters.excess_of,
            "Mean water above air at the rating",
            water="rating_water",
            indoor="rating_air",
        ),
        Step(
            "needed_excess",
            emitters.needed_excess,
            "Mean water above air that the load needs",
            load="own_load",
            rated_output="rating",
        ),
        Step("mean_water", emitters.mean_water, "Mean water", excess="needed_excess"),
        Step(
            "flow_capacity",
            emitters.flow_capacity,
            "Heat that the flow carries for each degree",
            design_load="own_load",
        ),
        Step("supply_water", emitters.supply_water, "Supply temperature on the coldest day", drop="water_drop"),
        Step(
            "return_temperature",
            emitters.return_water,
            "Return temperature on the coldest day",
            supply="supply_water",
            drop="water_drop",
        ),
        Step("lowest_useful", emitters.lowest_useful, "Coolest store water that still does it", supply="supply_water"),
        Step(
            "excess_ratio",
            emitters.excess_ratio,
            "Return's excess as a share of the supply's",
            return_water="return_temperature",
            supply="supply_water",
        ),
        Step(
            "supply_water_log",
            emitters.supply_water_log_mean,
            "Supply water by the logarithmic mean",
            drop="water_drop",
            excess="needed_excess",
        ),
        Step(
            "needed_excess_average",
            emitters.needed_excess,
            "Mean water above air on that day",
            load="load_average",
            rated_output="rating",
        ),
        Step("mean_water_average", emitters.mean_water, "Mean water on that day", excess="needed_excess_average"),
        Step("drop_average", emitters.drop, "Drop on that day, at the same flow", load="load_average"),
        Step(
            "supply_water_average",
            emitters.supply_water,
            "Supply water on that day",
            mean_water="mean_water_average",
            drop="drop_average",
        ),
        Step(
            "lowest_useful_average",
            emitters.lowest_useful,
            "Coolest store water on that day",
            supply="supply_water_average",
        ),
        Step(
            "output_at",
            emitters.output_at,
            "Heat from water at the supply temperature tried",
            supply="supply_tried",
            rated_output="rating",
        ),
        Step(
            "return_tried",
            emitters.return_water,
            "Its return after the same drop",
            supply="supply_tried",
            drop="water_drop",
        ),
        Step("mean_tried", emitters.mean_of, "Its mean", supply="supply_tried", return_water="return_tried"),
        Step("excess_tried", emitters.excess_of, "That mean above the room", water="mean_tried"),
        Step(
            "emitter_times",
            emitters.emitter_times,
            "Times this emitter for the whole load from it",
            load="own_load",
            rated_output="rating",
            excess="excess_tried",
        ),
        *store_for_hours.steps("design_load"),
        *outlet.STEPS,
    ),
    results=(
        Result(
            "lowest_useful", "Lowest useful store temperature", "On the coldest day, an exchanger's approach included."
        ),
        Result(
            "supply_water",
            "Supply temperature on the coldest day",
            "At the design flow, which stays the same in milder weather.",
        ),
        Result("mean_water", "Mean water temperature on the coldest day"),
        Result("return_temperature", "Return temperature on the coldest day"),
        Result("load_average", "Load on an average winter day", "At {average_outdoor} outside."),
        Result("lowest_useful_average", "Lowest useful store temperature on an average day"),
        Result("supply_water_average", "Supply temperature on an average day"),
        Result("mean_water_average", "Mean water temperature on an average day"),
        Result("output_at", "Output at {supply_tried} supply", missing="less than nothing"),
        Result(
            "emitter_times",
            "Emitter needed for the whole load, times yours",
            "On the coldest day from {supply_tried} supply, with the same drop; under 1, there is more than enough.",
            figures=2,
            missing="no emitter does it",
        ),
        Result("rating", "Rated output without the allowance"),
        store_for_hours.RESULT,
        outlet.RESULT,
    ),
    headline="lowest_useful",
    say="On an average day {lowest_useful_average} is enough.",
    musts=(
        Must(
            "indoor > design_outdoor",
            "design_outdoor",
            "Outdoor design temperature must be below the room temperature wanted.",
        ),
        Must(
            "rating_water > rating_air + 5",
            "rating_water",
            "Mean water temperature at the rating must be well above the air temperature there.",
        ),
    ),
    advice=(
        *outlet.ADVICE,
        Advice(
            "caution",
            "return-too-cold",
            "return_temperature < indoor",
            "No water comes back colder than the room.",
            "A drop of {water_drop} would bring it back at {return_temperature}. More flow makes the drop smaller.",
        ),
        Advice(
            "unworkable",
            "too-hot",
            "lowest_useful > hottest_store",
            "Not on any store: it would need {lowest_useful}.",
            "These emitters would need {lowest_useful}, and stores are charged to {hottest_store} at most. "
            "More emitter, or less heat to replace, is the cure: see the table.",
            "hottest-store",
        ),
        Advice(
            "unworkable",
            "over-store",
            "lowest_useful > store_top and lowest_useful <= hottest_store",
            "Not on this store: it would need {lowest_useful}.",
            "It is charged to {store_top}, and these emitters need {lowest_useful} on the coldest day. More emitter, less heat to replace or a hotter store is needed: see the table.",
        ),
        Advice(
            "caution",
            "large-drop",
            "excess_ratio < flat_return",
            "The drop is large for such cool water.",
            "The return is only {excess_ratio} as far above the room as the supply. The plain mean flatters the emitter: "
            "by the logarithmic mean it needs {supply_water_log} supply. A faster flow, so a smaller drop, helps.",
            "en-442-log",
            weight=1,
        ),
        Advice(
            "caution",
            "allowance",
            "emitter == 'baseboard' and allowance > 0",
            "The rating is taken down by {allowance}.",
            "North American baseboard tables may hold a heating-effect allowance that is not in the test. If the small "
            "print says that yours do not, set it to 0 %.",
            "ashrae-heating-effect",
            weight=1,
        ),
        Advice(
            "note",
            "not-a-law",
            "lowest_useful <= hottest_store",
            "No emitter has a water temperature of its own.",
            "The figure follows from how large the emitter is against the load: with twice as much of it the water can "
            "be far cooler.",
        ),
        Advice(
            "note",
            "emitter-sets",
            "lowest_useful <= hottest_store",
            "This number decides how much of a store you can use.",
            "Take {lowest_useful} to the stored-heat worksheet.",
        ),
    ),
    meaning=(
        "Water cooler than {lowest_useful} no longer heats the house on the coldest day, whatever is left in the store.",
    ),
    chart=Chart(
        "Coolest store water, by how much the house loses",
        across="design_load",
        low="x0.3",
        high="x1.5",
        lines=(Line("lowest_useful", "lowest useful", "tank"), Line("mean_water", "mean water", "use")),
        say="At {design_load} the emitters need {lowest_useful}.",
    ),
    tables=(
        Comparison(
            "The cure: more emitter, or less to heat",
            rows=(
                Variant("As it is", {}),
                Variant("Half as much emitter again", {"emitter_factor": "x1.5"}),
                Variant("Twice the emitter", {"emitter_factor": "x2"}),
                Variant("A quarter less heat lost", {"design_load": "x0.75"}),
            ),
            show=("lowest_useful", "store_for_hours", "return_temperature"),
        ),
        Comparison(
            "A cooler store: how many times the emitter",
            rows=(
                Variant("160 °F (71 °C) supply", {"supply_tried": "160 °F"}),
                Variant("140 °F (60 °C) supply", {"supply_tried": "140 °F"}),
                Variant("120 °F (49 °C) supply", {"supply_tried": "120 °F"}),
                Variant("105 °F (41 °C) supply", {"supply_tried": "105 °F"}),
            ),
            show=("emitter_times",),
        ),
    ),
    examples=(
        Example(
            "Mill Row: old baseboard",
            {
                "emitter": "baseboard",
                "baseboard_length": "180 ft",
                "baseboard_rating": "560 Btu/h/ft",
                "allowance": "15 %",
                "rating_water": "180 °F",
                "rating_air": "65 °F",
                "exponent": "1.4",
                "design_load": "30,500 Btu/h",
                "indoor": "68 °F",
                "water_drop": "12 F°",
                "design_outdoor": "-5 °F",
                "average_outdoor": "30 °F",
                "store_top": "180 °F",
                "hours_wanted": "8 h",
                "altitude": "3,000 ft",
                "charge_rise": "25 F°",
                "system_pressure": "12 psi",
            },
        ),
        Example("The same house with radiators", {"emitter": "radiator", "radiator_rating": "70,000 Btu/h"}),
    ),
    sizes=(
        Sizes(
            EMITTERS,
            "rated {baseboard_rating}; needs {supply_water} on the coldest day",
            "{supply_water} on the coldest day",
            ("house", "baseboard-upstairs", "baseboard-downstairs"),
            ("emitter", "baseboard"),
            called="Baseboard",
            quantity="{baseboard_length}",
        ),
        Sizes(
            EMITTERS,
            "rated {radiator_rating} in all; need {supply_water} on the coldest day",
            "{supply_water} on the coldest day",
            ("house",),
            ("emitter", "radiator"),
            called="Radiators",
            quantity="",
        ),
    ),
    suits=(Suits("baseboard", "emitter == 'baseboard' and baseboard_length > 0"),),
    leaves_out=(
        "Dust, covers and furniture in front of the emitters.",
        "Rooms that are harder to heat than the others: the worst room sets the water temperature.",
    ),
    follow=(
        Next("stored-heat", "How much of a tank these emitters can use."),
        Next("tank-size", "What size of tank they ask for."),
    ),
)
