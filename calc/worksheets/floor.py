"""How warm must floor water be, and how warm gets the floor?"""

from calc.chains import floor_covering, store_for_hours
from calc.engine.declare import (
    Advice,
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
    Sizes,
    Step,
    Suits,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import conduction, emitters, floor
from calc.plant import EMITTERS
from calc.vocabulary import (
    AVERAGE_OUTDOOR,
    BELOW_FLOOR,
    DESIGN_LOAD,
    DESIGN_OUTDOOR,
    EXCHANGER_APPROACH,
    FLOOR_AREA,
    FLOOR_COVERING,
    FLOOR_ZONE,
    INDOOR,
    INSULATION_BELOW,
    SLAB_CONDUCTIVITY,
    SUPPLY_TRIED,
    WATER_DROP,
)

PIPE_SPACING = Field(
    "pipe_spacing", "length", "On-center spacing of the pipes", "From the middle of one pipe to the middle of the next.",
    low="2 in", high="14.7 in", us="in", si="cm",
    typical=Typical("12 in", "floor-custom", "8 in", "12 in", "Photographs from before the pour, or the plan."),
)  # fmt: skip
CONCRETE_COVER = Field(
    "concrete_cover", "length", "Concrete cover over the pipes", "From the top of the pipe to the top of the concrete.",
    low="0.5 in", high="8 in", us="in", si="mm",
    typical=Typical("2 in", "floor-custom", "1.5 in", "3.5 in", "Photographs from before the pour, or the plan."),
)  # fmt: skip
PIPE_DIAMETER = Field(
    "pipe_diameter", "length", "Outside diameter of the pipe", "1/2 in PEX measures 5/8 in outside, 3/4 in PEX 7/8 in.",
    low="0.4 in", high="1.1 in", us="in", si="mm",
    typical=Typical("0.625 in", "floor-custom", "0.5 in", "0.875 in", "It is printed on the pipe."),
)  # fmt: skip

WORKSHEET = Worksheet(
    key="floor",
    guide="emitters",
    question="How warm must floor water be, and how warm gets the floor?",
    short="Water and surface temperature of a heated floor, and what goes down instead of up.",
    fields=(
        FLOOR_AREA,
        DESIGN_LOAD,
        INDOOR,
        FLOOR_COVERING,
        PIPE_SPACING,
        CONCRETE_COVER,
        PIPE_DIAMETER,
        SLAB_CONDUCTIVITY,
        WATER_DROP.but(
            typical=Typical("10 F°", "floor-custom", "5 F°", "15 F°", "Two thermometers on the manifold."),
        ),
        INSULATION_BELOW,
        BELOW_FLOOR,
        DESIGN_OUTDOOR,
        AVERAGE_OUTDOOR,
        EXCHANGER_APPROACH,
        SUPPLY_TRIED.but(unless_given="105 °F"),
        FLOOR_ZONE,
        *store_for_hours.FIELDS,
    ),
    givens=(
        Given("screed_limit", "temperature", "Warmest water for a slab with pipes", "131 °F", "en-1264-4"),
        Given("hottest_store", "temperature", "As hot as stores are charged", "200 °F", "hottest-store"),
        Given("downward_much", "fraction", "Share lost downward that is worth curing", "25 %", "common-practice"),
        Given(
            "water_heat", "volume_heat_capacity", "Heat in each volume and degree of water near 105 °F (41 °C)",
            "8.26 Btu/gal/F", "iapws-if97",
        ),
        *store_for_hours.GIVENS,
    ),
    cases=(floor_covering.CASES,),
    steps=(
        Step("heat_flux", floor.needed_flux, "Heat that each part of the floor must give", load="design_load"),
        Step("surface_rise", floor.surface_rise, "Floor's surface over the room"),
        Step("surface", floor.surface_temperature, "Floor surface temperature on the coldest day"),
        Step(
            "covering_factor", floor.covering_factor, "Factor of covering and concrete",
            screed_conductivity="slab_conductivity", covering="covering_resistance",
        ),
        Step("spacing_factor", floor.spacing_factor, "Factor of the spacing", covering="covering_resistance"),
        Step(
            "cover_factor", floor.cover_factor, "Factor of the concrete over the pipes",
            spacing="pipe_spacing", covering="covering_resistance",
        ),
        Step(
            "pipe_factor", floor.pipe_factor, "Factor of the pipe's diameter",
            spacing="pipe_spacing", covering="covering_resistance",
        ),
        Step(
            "counted_cover", floor.counted_cover, "Concrete that the factor counts", si="mm", us="in",
            cover="concrete_cover", spacing="pipe_spacing",
        ),
        Step(
            "wet_floor", floor.wet_floor_conductance, "Heat flux for each degree, by the tables",
            spacing="pipe_spacing",
        ),
        Step(
            "standard_conductance", floor.standard_conductance, "The same with the concrete beyond the tables",
            wet_floor_conductance="wet_floor", cover="concrete_cover", screed_conductivity="slab_conductivity",
        ),
        Step(
            "slab_conductance", conduction.slab_conductance, "Heat flux for each degree, by conduction",
            spacing="pipe_spacing", cover="concrete_cover", screed_conductivity="slab_conductivity",
            covering="covering_resistance",
        ),
        Step(
            "conduction_share", floor.conduction_share, "Weight of conduction at this spacing", spacing="pipe_spacing",
        ),
        Step("floor_conductance", floor.floor_conductance, "Heat flux for each degree of water over the room"),
        Step(
            "warmest_factor", conduction.warmest_factor, "Warmest spot over the room, times the mean",
            spacing="pipe_spacing", cover="concrete_cover", screed_conductivity="slab_conductivity",
            covering="covering_resistance",
        ),
        Step("warmest_rise", floor.warmest_rise, "Warmest spot over the room"),
        Step(
            "surface_warmest", floor.surface_temperature, "Warmest spot of the floor on the coldest day",
            surface_rise="warmest_rise",
        ),
        Step("needed_excess", floor.needed_excess, "Water over the room, logarithmic mean"),
        Step(
            "supply_water", emitters.supply_water_log_mean, "Supply temperature on the coldest day",
            drop="water_drop", excess="needed_excess",
        ),
        Step(
            "return_temperature", emitters.return_water, "Return temperature on the coldest day",
            supply="supply_water", drop="water_drop",
        ),
        Step(
            "mean_water", emitters.mean_of, "Mean water temperature on the coldest day",
            supply="supply_water", return_water="return_temperature",
        ),
        Step("lowest_useful", emitters.lowest_useful, "Coolest store water that does it", supply="supply_water"),
        Step(
            "resistance_above", floor.resistance_above, "Resistance from the pipes up to the room",
            covering="covering_resistance", cover="concrete_cover", screed_conductivity="slab_conductivity",
        ),
        Step(
            "downward_flux", floor.downward_flux, "Heat that goes down from each part of the floor",
            resistance_below="insulation_below", below="below_floor",
        ),
        Step("downward_loss", floor.heat_through, "Heat that goes down", heat_flux="downward_flux"),
        Step("heat_from_water", floor.heat_from_water, "Heat that the water must bring", load="design_load"),
        Step("downward_share", floor.downward_share, "Share of it that goes down"),
        Step(
            "flow_capacity", emitters.flow_capacity, "Heat that the flow carries for each degree",
            design_load="heat_from_water",
        ),
        Step("floor_flow", emitters.design_flow, "Water flow through the floor", heat_capacity="water_heat"),
        Step("load_average", emitters.part_load, "Load on an average winter day", outdoor="average_outdoor"),
        Step(
            "heat_flux_average", floor.needed_flux, "Heat from each part of the floor on that day", load="load_average",
        ),
        Step(
            "surface_rise_average", floor.surface_rise, "Floor's surface over the room on that day",
            heat_flux="heat_flux_average",
        ),
        Step(
            "surface_average", floor.surface_temperature, "Surface of the floor on that day",
            surface_rise="surface_rise_average",
        ),
        Step(
            "needed_excess_average", floor.needed_excess, "Water over the room on that day",
            heat_flux="heat_flux_average",
        ),
        Step(
            "downward_flux_average", floor.downward_flux, "Heat that goes down from each part on that day",
            heat_flux="heat_flux_average", resistance_below="insulation_below", below="below_floor",
        ),
        Step(
            "downward_loss_average", floor.heat_through, "Heat that goes down on that day",
            heat_flux="downward_flux_average",
        ),
        Step(
            "heat_from_water_average", floor.heat_from_water, "Heat that the water must bring on that day",
            load="load_average", downward_loss="downward_loss_average",
        ),
        Step("drop_average", emitters.drop, "Drop on that day, at the same flow", load="heat_from_water_average"),
        Step(
            "supply_water_average", emitters.supply_water_log_mean, "Supply water on that day",
            drop="drop_average", excess="needed_excess_average",
        ),
        Step(
            "lowest_useful_average", emitters.lowest_useful, "Coolest store water on that day",
            supply="supply_water_average",
        ),
        Pick(
            "surface_limit", "temperature", "Surface limit for such a room", "floor_zone",
            {"lived-in": "29 °C", "bath": "33 °C", "edge": "35 °C"}, "en-1264-limits",
        ),
        Step("limit_rise", floor.rise_at_limit, "Mean surface over the room, its warmest spot at that limit"),
        Step("limit_flux", floor.surface_flux, "Heat from each part at that limit", surface_rise="limit_rise"),
        Step("most_heat", floor.heat_through, "Maximum output of the floor", heat_flux="limit_flux"),
        Step("limit_excess", floor.needed_excess, "Water over the room at that limit", heat_flux="limit_flux"),
        Step("limit_water", emitters.mean_water, "Mean water at that limit", excess="limit_excess"),
        Step(
            "flux_tried", floor.flux_from_supply, "Heat from each part, from the supply tried",
            supply="supply_tried", resistance_below="insulation_below", below="below_floor",
        ),
        Step("output_at", floor.heat_through, "Heat from water at the supply temperature tried", heat_flux="flux_tried"),
        Step("surface_rise_tried", floor.surface_rise, "Floor's surface over the room then", heat_flux="flux_tried"),
        Step(
            "warmest_rise_tried", floor.warmest_rise, "Warmest spot over the room then",
            surface_rise="surface_rise_tried",
        ),
        Step(
            "surface_warmest_tried", floor.surface_temperature, "Warmest spot of the floor then",
            surface_rise="warmest_rise_tried",
        ),
        *store_for_hours.steps("heat_from_water"),
    ),
    results=(
        Result(
            "lowest_useful", "Lowest useful store temperature",
            "On the coldest day, an exchanger's approach included.",
        ),
        Result("supply_water", "Supply temperature on the coldest day"),
        Result("mean_water", "Mean water temperature on the coldest day"),
        Result("return_temperature", "Return temperature on the coldest day"),
        Result(
            "surface", "Floor surface temperature on the coldest day", "The mean of the whole surface.",
        ),
        Result(
            "surface_warmest", "Warmest spot of the surface on the coldest day",
            "Right above the pipes; the limit holds for it.",
        ),
        Result("surface_limit", "Surface limit for such a room"),
        Result("heat_flux", "Output per floor area", "Upward, into the rooms."),
        Result(
            "most_heat", "Maximum output of the floor",
            "With its warmest spots at {surface_limit}; its water is then {limit_water} on average.",
        ),
        Result("output_at", "Output from {supply_tried} water", "At its design flow, upward into the rooms."),
        Result("surface_warmest_tried", "Warmest spot of the surface then"),
        Result("downward_loss", "Downward loss", "Apart from the load: the water must bring it too."),
        Result("floor_flow", "Water flow through the floor", "Measured at the mean of supply and return."),
        Result(
            "lowest_useful_average", "Lowest useful store temperature on an average day", "At {average_outdoor} outside.",
            missing="none needed",
        ),
        Result("supply_water_average", "Supply temperature on an average day", missing="none needed"),
        Result("surface_average", "Floor surface temperature on an average day"),
        store_for_hours.RESULT,
    ),
    headline="lowest_useful",
    say="The floor is then {surface}, {surface_warmest} above its pipes.",
    musts=(
        Must(
            "indoor > design_outdoor", "design_outdoor",
            "Outdoor design temperature must be below the room temperature wanted.",
        ),
    ),
    advice=(
        Advice(
            "caution", "return-too-cold", "return_temperature < indoor",
            "No water comes back colder than the room.",
            "A drop of {water_drop} would bring it back at {return_temperature}. More flow makes the drop smaller.",
        ),
        Advice(
            "unworkable", "too-hot", "lowest_useful > hottest_store",
            "No store is that hot.",
            "This floor would need {lowest_useful}, and stores are charged to {hottest_store} at most. It is too "
            "small for the load: add radiators or baseboard, or insulate the house.",
            "hottest-store",
        ),
        Advice(
            "unworkable", "over-store", "lowest_useful > store_top and lowest_useful <= hottest_store",
            "The store is never hot enough for this.",
            "It is charged to {store_top}, and this floor needs {lowest_useful} on the coldest day. A thinner covering, closer pipes or a hotter store is needed.",
        ),
        Advice(
            "caution", "surface-limit", "surface_warmest > surface_limit",
            "The floor gets too warm.",
            "Its warmest spots would stand at {surface_warmest}, and {surface_limit} is the most for such a room: beyond "
            "it feet and coverings suffer. At the limit it gives {most_heat} of the {design_load}. Closer pipes make "
            "it more even; or let something else bring the rest.",
            "en-1264-limits",
        ),
        Advice(
            "caution", "tried-limit", "given(supply_tried) and surface_warmest_tried > surface_limit",
            "The water tried makes the floor too warm.",
            "From {supply_tried} its warmest spots reach {surface_warmest_tried}; {surface_limit} is the most for such a "
            "room.",
            "en-1264-limits",
        ),
        Advice(
            "caution", "hot-slab", "supply_water > screed_limit",
            "Too hot for a slab.",
            "Concrete around the pipes should not see water over {screed_limit}, and this floor asks for "
            "{supply_water}. A thinner covering or closer pipes let it run cooler.",
            "en-1264-4",
        ),
        Advice(
            "caution", "downward", "downward_share > downward_much",
            "Much of the heat goes down.",
            "{downward_loss} of the water's {heat_from_water} leaves downward. Under a slab that is poured it is "
            "lost; before the pour, foam is the cheapest fuel there is.",
        ),
        Advice(
            "caution", "mixing-valve", "store_top > lowest_useful",
            "Store water must not reach the floor unmixed.",
            "The store is charged to {store_top} and this floor wants {supply_water}. It needs a mixing valve and a "
            "second thermostat that stops the pump: see the tempering worksheet.",
            "common-practice",
        ),
        Advice(
            "note", "not-a-law", "lowest_useful <= hottest_store",
            "“105 °F for a slab” is custom, not a law.",
            "Yours needs {supply_water} because it must give {heat_flux} through this covering.",
            "common-practice",
        ),
        Advice(
            "note", "taps", "lowest_useful <= hottest_store",
            "Taps may need hotter water than the floor.",
            "A store at {lowest_useful} heats this floor but may not make a 120 °F (49 °C) tap. The hotter of the two "
            "decides how much of the store is useful.",
        ),
    ),
    meaning=(
        "A floor gives little heat for each degree, but it is large, so its water can be cool and nearly the whole "
        "store is useful.",
    ),
    chart=Chart(
        "Water and floor, by how much the house loses",
        across="design_load", low="x0.3", high="x1.5",
        lines=(
            Line("supply_water", "supply water", "fire"),
            Line("surface_warmest", "floor's warmest spots", "use"),
            Line("surface_limit", "surface limit", "limit"),
        ),
        say="At {design_load} the water is {supply_water} and the floor's warmest spots {surface_warmest}.",
    ),
    tables=(
        Comparison(
            "The same floor with one thing changed",
            rows=(
                Variant("As it is", {}),
                Variant("Pipes 6 in (15 cm) apart", {"pipe_spacing": "6 in"}),
                Variant("A quarter less heat lost", {"design_load": "x0.75"}),
                Variant("Twice the insulation below", {"insulation_below": "x2"}),
                Variant("Half the floor", {"floor_area": "x0.5"}),
            ),
            show=("lowest_useful", "store_for_hours", "surface_warmest", "most_heat", "downward_loss"),
        ),
    ),
    examples=(
        Example(
            "Fern Lane: slab with a wood floor on it",
            {
                "floor_area": "1,060 ft2", "design_load": "13,300 Btu/h", "indoor": "68 °F", "floor_covering": "wood",
                "pipe_spacing": "12 in", "concrete_cover": "2 in", "pipe_diameter": "0.625 in",
                "slab_conductivity": "1.4 W/m/K", "water_drop": "10 F°", "insulation_below": "10 R",
                "below_floor": "50 °F", "design_outdoor": "-5 °F", "average_outdoor": "28 °F",
                "store_top": "170 °F", "hours_wanted": "12 h",
            },
        ),
        Example(
            "The same slab with a covering of known R-value", {"floor_covering": "own", "covering_resistance": "0.4 R"},
        ),
    ),
    sizes=(
        Sizes(
            EMITTERS, "{floor_area} of warm floor, pipes {pipe_spacing} apart; it needs {supply_water} and {floor_flow}",
            "{floor_area}, {supply_water}", ("floor", "house"),
        ),
    ),
    suits=(Suits("floor"),),
    leaves_out=(
        "Pipes stapled under a wooden floor, with or without plates: they need hotter water than any figure here.",
        "Carpet with a pad, beyond R-0.85: the standard's tables end there.",
        "Rugs and furniture that cover the floor; under them it gets warmer than this.",
        "Concrete below the pipes, which makes the floor a little more even than this.",
        "How slowly a slab warms and cools: a day-long lag is ordinary.",
    ),
    follow=(
        Next("tempering", "How to mix the store's water down, and what happens if the valve fails."),
        Next("stored-heat", "How much of a tank this floor can use."),
    ),
)
