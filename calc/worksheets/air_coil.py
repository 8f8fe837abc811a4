"""What will a coil in my ducts give, and at what water temperature does it stop being enough?"""

from calc.chains import outlet, own_load, store_for_hours
from calc.chains.water_side import fluid
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
    OnlyWith,
    Option,
    Picture,
    Result,
    Sizes,
    Step,
    Suits,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import air, emitters, pipes
from calc.plant import EMITTERS
from calc.vocabulary import (
    ANTIFREEZE_KIND,
    AVERAGE_OUTDOOR,
    DESIGN_LOAD,
    DESIGN_OUTDOOR,
    EMITTER,
    EMITTER_FACTOR,
    EXCHANGER_APPROACH,
    INDOOR,
    SUPPLY_TRIED,
)

AIR_FLOW = Field(
    "air_flow",
    "air_flow",
    "Airflow through the coil",
    "On the speed that the blower runs for heating.",
    low="50 cfm",
    high="20,000 cfm",
    uncertainty="10 %",
    typical=Typical("1,000 cfm", "coil-custom", "700 cfm", "1,400 cfm", "The blower's plate, or a balancing report."),
)
FLOW_BASIS = Field(
    "flow_basis",
    "choice",
    "Airflow is given as",
    "High up, a blower moves the same volume but less air.",
    options=(
        Option("actual", "actual volume, as the blower moves it"),
        Option("standard", "standard air, as in catalogs"),
    ),
    unless_given="actual",
)
ENTERING_AIR = Field(
    "entering_air",
    "temperature",
    "Entering air temperature",
    "The rooms' air, or cooler if return ducts lose heat.",
    low="35 °F",
    high="95 °F",
    same_as="indoor",
    uncertainty="2 F°",
)
COIL_FLOW = Field(
    "coil_flow",
    "flow",
    "Water flow through the coil",
    "Measured at the mean of supply and return.",
    low="0.3 gpm",
    high="100 gpm",
    uncertainty="10 %",
    typical=Typical("4 gpm", "coil-custom", "3 gpm", "6 gpm", "The pump's curve and the coil's pressure drop."),
)
COIL_KNOWN = Field(
    "coil_known",
    "choice",
    "What you know of the coil",
    "A maker's table always holds one rated point at least.",
    options=(
        Option("conductance", "its conductance, UA"),
        Option("rating", "one rated point from the maker's table"),
    ),
)
COIL_UA = Field(
    "coil_ua",
    "conductance",
    "Conductance of the coil, UA",
    "Heat passed for each degree between water and air.",
    low="20 Btu/h/F",
    high="30,000 Btu/h/F",
    uncertainty="15 %",
    typical=Typical("1,000 Btu/h/F", "coil-custom", "500 Btu/h/F", "2,000 Btu/h/F", "Work it out from a rated point."),
)
RATED_COIL_HEAT = Field(
    "rated_coil_heat",
    "power",
    "Rated capacity",
    "",
    low="500 Btu/h",
    high="2,000,000 Btu/h",
)
RATED_COIL_WATER = Field(
    "rated_coil_water",
    "temperature",
    "Rated entering water temperature",
    "Often 180 °F (82 °C).",
    low="80 °F",
    high="250 °F",
)
RATED_COIL_AIR = Field(
    "rated_coil_air",
    "temperature",
    "Rated entering air temperature",
    "Often 60 to 70 °F (16 to 21 °C).",
    low="30 °F",
    high="100 °F",
)
RATED_COIL_FLOW = Field(
    "rated_coil_flow",
    "flow",
    "Rated water flow",
    "",
    low="0.3 gpm",
    high="100 gpm",
)
RATED_AIR_FLOW = Field(
    "rated_air_flow",
    "air_flow",
    "Rated airflow",
    "Standard air, as catalogs mean it.",
    low="50 cfm",
    high="20,000 cfm",
)
DUCT_WAY = Field(
    "duct_way",
    "choice",
    "Duct loss is given as",
    "Only ducts outside the heated space lose heat to the house.",
    options=(
        Option("share", "a share of the coil's heat"),
        Option("length", "from length, insulation and leaks"),
    ),
    unless_given="share",
)
DUCT_LOSS = Field(
    "duct_loss",
    "fraction",
    "Duct loss",
    "0 % if all ducts run inside the heated space.",
    low="0 %",
    high="80 %",
    small_shares=True,
    typical=Typical("20 %", "duct-custom", "5 %", "35 %", "An energy auditor with a duct tester."),
)
DUCT_LENGTH = Field(
    "duct_length",
    "length",
    "Length of supply duct outside the heated space",
    "All branches together.",
    low="1 ft",
    high="1,000 ft",
    uncertainty="15 %",
)
DUCT_DIAMETER = Field(
    "duct_diameter",
    "length",
    "Duct diameter",
    "Round; for a square one, its side times 1.27.",
    low="3 in",
    high="48 in",
    us="in",
    si="mm",
    typical=Typical("8 in", "duct-custom", "6 in", "12 in", "A tape measure around the duct, divided by 3.14."),
)
DUCT_INSULATION = Field(
    "duct_insulation",
    "thermal_resistance",
    "R-value of the duct insulation",
    "0 for bare metal.",
    low="0 R",
    high="50 R",
    typical=Typical("4 R", "duct-custom", "0 R", "8 R", "It is printed on the wrap."),
)
DUCT_SURROUNDINGS = Field(
    "duct_surroundings",
    "temperature",
    "Air temperature around the ducts",
    "The attic or crawl space on the coldest day.",
    low="-60 °F",
    high="90 °F",
    typical=Typical("30 °F", "duct-custom", "0 °F", "50 °F", "A thermometer in the attic."),
)
LEAKAGE = Field(
    "leakage",
    "fraction",
    "Duct leakage",
    "",
    low="0 %",
    high="80 %",
    small_shares=True,
    typical=Typical("10 %", "duct-custom", "3 %", "20 %", "An energy auditor with a duct tester."),
)


def _needed(day: str, load: str, after: str = "") -> tuple[Step, ...]:
    """From the load of a day back to the coolest water, with ducts by length."""
    return (
        Step(f"register_air{after}", air.needed_delivered_air, f"Air needed at the registers on {day}", load=load),
        Step(
            f"needed_air_out{after}",
            air.needed_air_out,
            f"Air needed behind the coil on {day}",
            delivered_air=f"register_air{after}",
        ),
        Step(
            f"needed_heat{after}",
            air.heat_to_air,
            f"Heat the coil must give on {day}",
            air_out=f"needed_air_out{after}",
        ),
    )


COIL_SHARE = own_load.share("coil_share", "this coil")

WORKSHEET = Worksheet(
    key="air-coil",
    guide="air",
    question="What will a coil in my ducts give, and at what water temperature is it too little?",
    short="A hot-water coil in air ducts: heat, air and water temperatures, and the coolest water that still does it.",
    fields=(
        DESIGN_LOAD,
        COIL_SHARE,
        COIL_KNOWN,
        COIL_FLOW,
        AIR_FLOW,
        DUCT_WAY,
        SUPPLY_TRIED,
        INDOOR,
        ENTERING_AIR,
        DESIGN_OUTDOOR,
        AVERAGE_OUTDOOR,
        EXCHANGER_APPROACH,
        FLOW_BASIS,
        EMITTER_FACTOR,
        ANTIFREEZE_KIND.but(hint="In the coil. The label says which glycol it is.", unless_given="none"),
        *store_for_hours.FIELDS,
        *outlet.FOLDED,
    ),
    givens=(
        Given("hottest_store", "temperature", "As hot as stores are charged", "200 °F", "hottest-store"),
        Given("barely_warm", "temperature", "Register air below which people feel a draft", "95 °F", "register-air"),
        Given("lossy", "fraction", "Duct loss that is worth curing first", "15 %", "duct-custom"),
        Given("freezing", "temperature", "Water freezes", "32 °F", "definition"),
        Given("side_ratio", "factor", "Air side's conductance over the water side's", "0.5", "coil-scaling"),
        Given(
            "water_heat",
            "volume_heat_capacity",
            "Heat in each volume and degree of water near 140 °F (60 °C)",
            "8.2 Btu/gal/F",
            "iapws-if97",
        ),
        Given("coil_water", "temperature", "Water in the coil, for what it carries", "140 °F", "common-practice"),
        *store_for_hours.GIVENS,
        *outlet.GIVENS,
    ),
    cases=(
        fluid(("", "coil_water", "in the coil", ("density", "specific_heat"))),
        Cases(
            "coil_known",
            conductance=Case(
                fields=(COIL_UA,),
                steps=(
                    Step(
                        "coil",
                        air.scaled_conductance,
                        "Conductance of the coil looked at",
                        coil_conductance="coil_ua",
                    ),
                ),
            ),
            rating=Case(
                fields=(RATED_COIL_HEAT, RATED_COIL_WATER, RATED_COIL_AIR, RATED_COIL_FLOW, RATED_AIR_FLOW),
                steps=(
                    Step(
                        "rated_water_capacity",
                        emitters.capacity_of_flow,
                        "Rated water: heat for each degree",
                        flow="rated_coil_flow",
                        heat_capacity="water_heat",
                    ),
                    Step(
                        "rated_air_capacity",
                        air.standard_air_capacity,
                        "Rated air: heat for each degree",
                        standard_flow="rated_air_flow",
                    ),
                    Step(
                        "rated_least",
                        air.least_capacity,
                        "The smaller of the two",
                        water_capacity="rated_water_capacity",
                        air_capacity="rated_air_capacity",
                    ),
                    Step(
                        "rated_ratio",
                        air.capacity_ratio,
                        "The smaller over the larger",
                        water_capacity="rated_water_capacity",
                        air_capacity="rated_air_capacity",
                    ),
                    Step(
                        "rated_effectiveness",
                        air.rated_effectiveness,
                        "Effectiveness at the rated point",
                        rated_heat="rated_coil_heat",
                        least_capacity="rated_least",
                        rated_water="rated_coil_water",
                        rated_air="rated_coil_air",
                    ),
                    Step(
                        "rated_units",
                        air.transfer_units_for,
                        "Transfer units at the rated point",
                        capacity_ratio="rated_ratio",
                    ),
                    Step(
                        "rated_conductance",
                        air.coil_conductance,
                        "Conductance at the rated point",
                        transfer_units="rated_units",
                        least_capacity="rated_least",
                    ),
                    Step(
                        "air_ratio",
                        air.flow_ratio,
                        "Air now over rated air",
                        capacity="air_capacity",
                        rated_capacity="rated_air_capacity",
                    ),
                    Step(
                        "water_ratio",
                        air.flow_ratio,
                        "Water now over rated water",
                        capacity="water_capacity",
                        rated_capacity="rated_water_capacity",
                    ),
                    Step("conductance_here", air.conductance_at_flows, "Conductance at these flows"),
                    Step(
                        "coil",
                        air.scaled_conductance,
                        "Conductance of the coil looked at",
                        coil_conductance="conductance_here",
                    ),
                ),
            ),
        ),
        Cases(
            "flow_basis",
            actual=Case(
                steps=(
                    Step(
                        "air_capacity",
                        air.air_capacity,
                        "Heat that the air carries for each degree",
                        site_pressure="barometer",
                    ),
                ),
            ),
            standard=Case(
                steps=(
                    Step(
                        "air_capacity",
                        air.standard_air_capacity,
                        "Heat that the air carries for each degree",
                        standard_flow="air_flow",
                    ),
                ),
            ),
        ),
        Cases(
            "duct_way",
            share=Case(
                fields=(DUCT_LOSS,),
                steps=(
                    Step("delivered_heat", air.heat_after_ducts, "Heat that reaches the rooms", coil_heat="heat"),
                    Step("delivered_air", air.air_out, "Air at the registers", coil_heat="delivered_heat"),
                    Step("needed_heat", air.heat_before_ducts, "Heat the coil must give", load="own_load"),
                    Step(
                        "register_air",
                        air.air_out,
                        "Air at the registers on the coldest day",
                        coil_heat="own_load",
                    ),
                    Step(
                        "needed_heat_average",
                        air.heat_before_ducts,
                        "Heat the coil must give on an average day",
                        load="load_average",
                    ),
                ),
            ),
            length=Case(
                fields=(DUCT_LENGTH, DUCT_DIAMETER, DUCT_INSULATION, DUCT_SURROUNDINGS, LEAKAGE),
                steps=(
                    Step(
                        "duct_surface",
                        air.round_duct_surface,
                        "Surface of the ducts",
                        diameter="duct_diameter",
                        length="duct_length",
                    ),
                    Step(
                        "duct_u_value",
                        air.duct_u_value,
                        "Heat through each part of that surface",
                        insulation="duct_insulation",
                    ),
                    Step("kept_share", air.kept_share, "Share of the air's excess that is left at the end"),
                    Step("delivered_air", air.delivered_air, "Air at the registers"),
                    Step("delivered_heat", air.delivered_heat, "Heat that reaches the rooms"),
                    Step("duct_loss", air.duct_loss, "Duct loss", coil_heat="heat"),
                    *_needed("the coldest day", "own_load"),
                    *_needed("an average day", "load_average", "_average"),
                ),
            ),
        ),
    ),
    steps=(
        *own_load.steps(COIL_SHARE),
        Step("pressure_ratio", air.pressure_ratio, "Air here beside air at sea level", site_pressure="barometer"),
        Step("fluid_heat", pipes.volume_heat_capacity, "Heat in each volume and degree of what flows"),
        Step(
            "water_capacity",
            emitters.capacity_of_flow,
            "Heat that the water carries for each degree",
            flow="coil_flow",
            heat_capacity="fluid_heat",
        ),
        Step("least_capacity", air.least_capacity, "The smaller of the two"),
        Step("capacity_ratio", air.capacity_ratio, "The smaller over the larger"),
        Step("transfer_units", air.transfer_units, "Transfer units of the coil", coil_conductance="coil"),
        Step("effectiveness", air.effectiveness, "Effectiveness of the coil"),
        Step("heat", air.coil_heat, "Heat from the water tried", entering_water="supply_tried"),
        Step("air_out", air.air_out, "Air out of the coil", coil_heat="heat"),
        Step("water_out", air.water_out, "Water out of the coil", entering_water="supply_tried", coil_heat="heat"),
        Step(
            "supply_water",
            air.entering_water,
            "Entering water temperature needed on the coldest day",
            coil_heat="needed_heat",
        ),
        Step("lowest_useful", emitters.lowest_useful, "Coolest store water that does it", supply="supply_water"),
        Step(
            "supply_water_average",
            air.entering_water,
            "Coolest water into the coil on an average day",
            coil_heat="needed_heat_average",
        ),
        Step(
            "lowest_useful_average",
            emitters.lowest_useful,
            "Lowest useful store temperature on an average day",
            supply="supply_water_average",
        ),
        own_load.whole("needed_heat"),
        *store_for_hours.steps("heat_from_store"),
        *outlet.STEPS,
    ),
    results=(
        Result(
            "lowest_useful",
            "Lowest useful store temperature",
            "On the coldest day, an exchanger's approach included.",
        ),
        Result("supply_water", "Entering water temperature needed on the coldest day"),
        Result("needed_heat", "Coil output needed on the coldest day", "The load, and what the ducts lose."),
        Result("register_air", "Register air temperature then"),
        Result(
            "lowest_useful_average",
            "Lowest useful store temperature on an average day",
            "At {average_outdoor} outside.",
        ),
        Result("heat", "Coil output at {supply_tried} entering water"),
        Result("air_out", "Leaving air temperature at {supply_tried} entering water"),
        Result("delivered_air", "Register air temperature at {supply_tried} entering water"),
        Result("delivered_heat", "Heat delivered to the rooms at {supply_tried} entering water"),
        Result("water_out", "Leaving water temperature at {supply_tried} entering water"),
        Result("duct_loss", "Duct loss", missing="no heat to lose"),
        Result(
            "pressure_ratio",
            "Air pressure here over sea level",
            "What each volume of air carries falls with it.",
        ),
        Result("coil", "Conductance of the coil, UA", missing="beyond any coil"),
        store_for_hours.RESULT,
        outlet.RESULT,
    ),
    headline="lowest_useful",
    say="The air at the registers is then {register_air}.",
    say_none="No coil can do what this rated point says.",
    musts=(
        Must(
            "indoor > design_outdoor",
            "design_outdoor",
            "Outdoor design temperature must be below the room temperature wanted.",
        ),
        Must(
            "rated_coil_water > rated_coil_air + 5",
            "rated_coil_water",
            "Rated entering water temperature must be well above the rated entering air temperature.",
        ),
    ),
    advice=(
        *outlet.ADVICE,
        Advice(
            "unworkable",
            "impossible-rating",
            "coil_known == 'rating' and missing(coil)",
            "The rated point cannot be right.",
            "With these flows no coil passes {rated_coil_heat}: check that all five numbers stand in one line of the "
            "table.",
        ),
        Advice(
            "unworkable",
            "too-hot",
            "lowest_useful > hottest_store",
            "Not on any store: it would need {lowest_useful}.",
            "This coil would need {lowest_useful}, and stores are charged to {hottest_store} at most. A larger coil, "
            "more air, tighter ducts or less load is the cure: see the table.",
            "hottest-store",
        ),
        Advice(
            "unworkable",
            "over-store",
            "lowest_useful > store_top and lowest_useful <= hottest_store",
            "Not on this store: it would need {lowest_useful}.",
            "It is charged to {store_top}, and this coil needs {lowest_useful} on the coldest day. A larger coil, more air, tighter ducts or a hotter store is needed.",
        ),
        Advice(
            "caution",
            "ducts-first",
            "duct_loss >= lossy",
            "The ducts decide.",
            "{duct_loss} of the coil's heat does not reach the rooms, so the coil must give {needed_heat} for "
            "{own_load}. Sealing and wrapping ducts is the cheapest way to cooler water: see the table.",
            "duct-custom",
            weight=1,
        ),
        Advice(
            "caution",
            "barely-warm",
            "register_air < barely_warm",
            "The air will feel barely warm.",
            "It leaves the registers at {register_air}, and moving air under {barely_warm} feels like a draft. The "
            "house is warm all the same; turn registers away from chairs and let the blower run slowly and long.",
            "register-air",
        ),
        Advice(
            "caution",
            "frozen-coil",
            "duct_surroundings < freezing",
            "A coil out there can freeze.",
            "The air around the ducts is {duct_surroundings}. When fire and blower are off, water standing in a coil "
            "out there freezes and bursts it: put the coil inside, or use antifreeze.",
        ),
        Advice(
            "caution",
            "too-cool-tried",
            "heat <= 0",
            "The water tried is no warmer than the air.",
            "Water at {supply_tried} cannot warm air at {entering_air}.",
        ),
        Advice(
            "note",
            "room-apart",
            "given(entering_air) and assumed(indoor) and entering_air != indoor",
            "The rooms are taken at {indoor}.",
            "You gave {entering_air} for the air into the coil and no room temperature. If that is how warm the rooms "
            "are, type it as the room temperature wanted as well: the load in milder weather goes by it.",
        ),
        Advice(
            "note",
            "no-dump",
            "lowest_useful > 0",
            "A coil behind a blower is never the heat dump.",
            "It stops with the power, just when the fire's heat must go somewhere. A dump works with no power, valve, "
            "spring check or fan in its way.",
        ),
        Advice(
            "note",
            "not-a-law",
            "lowest_useful <= hottest_store",
            "“180 °F (82 °C) for a coil” is custom, not a law.",
            "This one needs {lowest_useful}. A coil of more rows runs cooler still, but the same heat in the same air "
            "leaves it no warmer.",
            "coil-custom",
        ),
    ),
    meaning=(
        "A larger coil needs cooler water for the same heat, but the air it blows is no warmer: that follows from the "
        "load and the air flow alone.",
    ),
    picture=Picture(
        "duct",
        "On the coldest day. The coil must make up for what the ducts lose on the way.",
        {"enters": "entering_air", "water": "lowest_useful", "register": "register_air", "lost": "duct_loss"},
    ),
    chart=Chart(
        "Coolest store water, by the size of the coil",
        across="emitter_factor",
        low="0.4",
        high="3",
        lines=(Line("lowest_useful", "lowest useful", "tank"), Line("register_air", "air at the registers", "use")),
        say="This coil needs {lowest_useful} and its air reaches the rooms at {register_air}.",
    ),
    tables=(
        Comparison(
            "What makes the water cooler",
            rows=(
                Variant("As it is", {}),
                Variant("Ducts that lose nothing", {"duct_loss": "0 %", "duct_length": "1 ft", "leakage": "0 %"}),
                Variant("Twice the coil", {"emitter_factor": "x2"}),
                Variant("Half the coil", {"emitter_factor": "x0.5"}),
                Variant("Half as much air again", {"air_flow": "x1.5"}),
                Variant("A quarter less heat lost", {"design_load": "x0.75"}),
            ),
            show=("lowest_useful", "store_for_hours", "register_air"),
        ),
    ),
    examples=(
        Example(
            "Ridge Road: a coil in the old furnace's ducts",
            {
                "design_load": "32,500 Btu/h",
                "coil_known": "conductance",
                "coil_ua": "1,500 Btu/h/F",
                "coil_flow": "4 gpm",
                "air_flow": "1,000 cfm",
                "flow_basis": "actual",
                "entering_air": "65 °F",
                "altitude": "3,000 ft",
                "duct_way": "share",
                "duct_loss": "20 %",
                "indoor": "68 °F",
                "design_outdoor": "-5 °F",
                "average_outdoor": "30 °F",
                "supply_tried": "140 °F",
                "store_top": "185 °F",
                "hours_wanted": "8 h",
                "charge_rise": "25 F°",
                "system_pressure": "12 psi",
            },
        ),
        Example(
            "The same house, from a catalog and a tape measure",
            {
                "coil_known": "rating",
                "rated_coil_heat": "74,800 Btu/h",
                "rated_coil_water": "180 °F",
                "rated_coil_air": "68 °F",
                "rated_coil_flow": "8 gpm",
                "rated_air_flow": "1,000 cfm",
                "duct_way": "length",
                "duct_length": "60 ft",
            },
        ),
    ),
    in_record=OnlyWith(COIL_KNOWN, ("conductance", "rating")),
    sizes=(
        Sizes(
            EMITTERS,
            "needs {supply_water} at {coil_flow}, with {air_flow} of air",
            "{supply_water}, {coil_flow}",
            ("duct-coil", "house"),
            called="Coil in the ducts",
            means=(EMITTER, "air-coil"),
        ),
    ),
    suits=(Suits("duct-coil"),),
    leaves_out=(
        "What antifreeze takes from the coil's own conductance: its maker's table for glycol tells.",
        "The blower's own heat and electricity, and whether it moves this air against one more coil.",
        "Cold outdoor air drawn into the house to replace what leaks from the ducts.",
        "Dust on the fins: a dirty coil is a smaller coil.",
    ),
    follow=(
        Next("stored-heat", "How much of a tank this coil can use."),
        Next("emitter-temperature", "What baseboard or radiators would need instead."),
        Next("house-load", "A smaller load is the surest way to cooler water."),
    ),
)
