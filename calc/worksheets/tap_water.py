"""Hot taps from the store: made as it is drawn, or kept in a tank."""

from calc.chains import tap_exchangers
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
    Result,
    Sizes,
    Step,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import arithmetic, emitters, exchange, gravity, store, water
from calc.plant import TAP_EXCHANGER
from calc.vocabulary import ANTIFREEZE_KIND, COLD_WATER, STORE_TOP, STORE_VOLUME

TAP_WAY = Field(
    "tap_way",
    "choice",
    "How the taps get hot water",
    "",
    options=(
        Option("plate", "a plate exchanger, made as it is drawn"),
        Option("coil", "a coil in the store, made as it is drawn"),
        Option("sidearm", "a tank of tap water with a sidearm on it"),
    ),
)
TAP_WANTED = Field(
    "tap_wanted",
    "temperature",
    "Hot-water temperature at the tap",
    "A shower feels hot at about 105 °F.",
    low="90 °F",
    high="160 °F",
    typical=Typical("115 °F", "tap-custom", "105 °F", "120 °F", "A thermometer under the shower."),
)
TAP_FLOW = Field(
    "tap_flow",
    "flow",
    "Peak hot-water draw",
    "All showers and taps open together, as it leaves them.",
    low="0.2 gpm",
    high="20 gpm",
    typical=Typical("2.5 gpm", "tap-custom", "1.5 gpm", "5 gpm", "A bucket and a watch."),
)
EMITTERS_NEED = Field(
    "emitters_need",
    "temperature",
    "Lowest useful store temperature for the emitters",
    "On the coldest day. The emitter worksheets work it out.",
    low="60 °F",
    high="250 °F",
    unless_given="60 °F",
)
FIRE_REFILL = Field(
    "fire_refill",
    "power",
    "Heat from the fire meanwhile",
    "0 when the stove is cold.",
    low="0 Btu/h",
    high="500,000 Btu/h",
    unless_given="0 Btu/h",
)
SHOWERS = Field(
    "showers",
    "count",
    "Showers in a row",
    "",
    low="1",
    high="40",
    unless_given="3",
)
SHOWER_TIME = Field(
    "shower_time",
    "time",
    "Length of a shower",
    "",
    low="1 min",
    high="60 min",
    us="min",
    si="min",
    unless_given="8 min",
)
EXCHANGER_WALL = Field(
    "exchanger_wall",
    "choice",
    "Wall of the exchanger",
    "",
    options=(Option("double", "double, with a gap open to air"), Option("single", "single")),
)


PRIMARY_FLOW = Field(
    "primary_flow",
    "flow",
    "Store-side flow through the plate",
    "What its pump moves while a tap is open.",
    low="0.3 gpm",
    high="50 gpm",
    typical=Typical("5 gpm", "tap-custom", "3 gpm", "8 gpm", "The pump's label and the pipe."),
)
TAP_TANK_VOLUME = Field(
    "tap_tank_volume",
    "volume",
    "Size of the tap-water tank",
    "The label says.",
    low="5 gal",
    high="500 gal",
    typical=Typical("50 gal", "tap-custom", "40 gal", "80 gal", "The label of the water heater."),
)
TAP_TANK_TEMPERATURE = Field(
    "tap_tank_temperature",
    "temperature",
    "Set temperature of the tap-water tank",
    "140 °F or more keeps bacteria down.",
    low="90 °F",
    high="190 °F",
    typical=Typical("140 °F", "legionella", "120 °F", "160 °F", "A thermometer at its outlet."),
)
SIDEARM_CONDUCTANCE = Field(
    "sidearm_conductance",
    "conductance",
    "Conductance of the sidearm, UA",
    "Four feet of one pipe inside another: about 100.",
    low="5 Btu/h/F",
    high="2,000 Btu/h/F",
    typical=Typical(
        "100 Btu/h/F", "exchanger-guess", "60 Btu/h/F", "150 Btu/h/F", "Time how long the tank takes to warm."
    ),
)
SIDEARM_HEIGHT = Field(
    "sidearm_height",
    "length",
    "Height of the sidearm",
    "It stands upright beside the tank.",
    low="1 ft",
    high="10 ft",
    us="ft",
    si="m",
    unless_given="4 ft",
)
RISER_HEIGHT = Field(
    "riser_height",
    "length",
    "Riser from the sidearm to the tank's top",
    "",
    low="0 ft",
    high="10 ft",
    us="ft",
    si="m",
    unless_given="1 ft",
)
SIDEARM_BORE = Field(
    "sidearm_bore",
    "length",
    "Inside diameter of its pipes",
    "",
    low="0.4 in",
    high="2 in",
    us="in",
    si="cm",
    unless_given="0.8 in",
)
SIDEARM_LOSSES = Field(
    "sidearm_losses",
    "factor",
    "Sum of the K factors of its bends, valves and pipe",
    "",
    low="2",
    high="200",
    unless_given="20",
)

# What both exchangers share once the tap's stream is known: the draw, and what is left in the store.
_DRAWN = (
    Step(
        "tap_content",
        water.mean_volume_heat_content,
        "Heat in each volume and degree, cold to hot",
        low="cold_water",
        top="tap_wanted",
    ),
    Step(
        "tap_side",
        emitters.capacity_of_flow,
        "Heat the tap water carries for each degree",
        flow="tap_flow",
        heat_capacity="tap_content",
    ),
    Step("draw", exchange.draw_heat, "Heat drawn by the taps while they run", tap="tap_wanted", cold="cold_water"),
    Step(
        "store_content",
        water.mean_volume_heat_content,
        "Heat in each volume and degree of the store",
        low="tap_wanted",
        top="store_top",
    ),
    Step(
        "heat_above",
        store.usable_heat,
        "Heat in the store above what the taps need",
        volume="store_volume",
        heat_content="store_content",
        top="store_top",
        low="store_needed",
    ),
    Step(
        "shower_minutes",
        exchange.draw_time,
        "Hot water lasts",
        us="min",
        si="min",
        heat="heat_above",
        refill="fire_refill",
    ),
    Step(
        "tap_flow_possible",
        emitters.design_flow,
        "Largest draw from a fully charged store",
        flow_capacity="largest_stream",
        heat_capacity="tap_content",
    ),
    Step("showers_heat", exchange.heat_of_draws, "Heat of all the showers", draws="showers", time_each="shower_time"),
    Step(
        "store_capacity",
        store.heat_capacity,
        "Heat the store holds for each degree",
        volume="store_volume",
        heat_content="store_content",
    ),
    Step(
        "store_after",
        exchange.temperature_after_draws,
        "Store after the showers, mixed",
        start="store_top",
        heat="showers_heat",
        tank_capacity="store_capacity",
    ),
)

WORKSHEET = Worksheet(
    key="tap-water",
    guide="taps",
    question="Can the store make my hot taps, and how hot must it be?",
    short="Tap water made as it is drawn or kept in a tank: flow, temperature, minutes, scald.",
    fields=(
        TAP_WAY,
        STORE_TOP,
        TAP_WANTED,
        COLD_WATER,
        TAP_FLOW,
        ANTIFREEZE_KIND.but(hint="In the store. The label says which glycol it is."),
        EXCHANGER_WALL,
        EMITTERS_NEED,
    ),
    givens=(
        Given("scald_minutes", "temperature", "Water that burns skin in minutes", "120 °F", "scald-cpsc"),
        Given("scald_half_minute", "temperature", "Water that burns skin in half a minute", "130 °F", "scald-cpsc"),
        Given("bacteria_safe", "temperature", "Tap water that is stored must be at least", "140 °F", "legionella"),
        Given("bacteria_feed", "temperature", "Bacteria grow best below", "113 °F", "legionella"),
        Given("film_exponent", "exponent", "How the plate's conductance follows its flows", "0.663", "plate-film"),
        Given("no_film", "exponent", "Of a conductance that is taken as it stands", "0", "definition"),
        Given("delivered_share", "fraction", "Share of a tank drawn before it runs cool", "70 %", "tap-custom"),
        Given(
            "sidearm_approach",
            "temperature_difference",
            "Store over tank that a sidearm needs to end",
            "15 F°",
            "tap-custom",
        ),
    ),
    cases=(
        Cases(
            "tap_way",
            plate=Case(
                fields=(
                    STORE_VOLUME,
                    tap_exchangers.EXCHANGER_KNOWN,
                    PRIMARY_FLOW,
                    FIRE_REFILL,
                    SHOWERS,
                    SHOWER_TIME,
                ),
                steps=(
                    *_DRAWN,
                    Step(
                        "primary_content",
                        water.mean_volume_heat_content,
                        "Heat in each volume and degree of store water",
                        low="cold_water",
                        top="store_top",
                    ),
                    Step(
                        "primary",
                        emitters.capacity_of_flow,
                        "Heat the store water carries for each degree",
                        flow="primary_flow",
                        heat_capacity="primary_content",
                    ),
                    Step("smaller_stream", exchange.smaller_stream, "The smaller stream"),
                    Step("stream_ratio", exchange.stream_ratio, "Smaller stream over larger"),
                    Step(
                        "primary_return",
                        exchange.primary_return,
                        "Water that goes back to the store's bottom",
                        store="store_needed",
                        heat="draw",
                    ),
                ),
                cases=(tap_exchangers.PLATE_WAYS,),
            ),
            coil=Case(
                fields=(STORE_VOLUME, tap_exchangers.EXCHANGER_KNOWN, FIRE_REFILL, SHOWERS, SHOWER_TIME),
                steps=_DRAWN,
                cases=(tap_exchangers.COIL_WAYS,),
            ),
            sidearm=Case(
                fields=(
                    TAP_TANK_VOLUME,
                    TAP_TANK_TEMPERATURE,
                    SIDEARM_CONDUCTANCE,
                    SIDEARM_HEIGHT,
                    RISER_HEIGHT,
                    SIDEARM_BORE,
                    SIDEARM_LOSSES,
                ),
                steps=(
                    Step(
                        "store_needed",
                        emitters.lowest_useful,
                        "Coolest store that still keeps the tank hot",
                        supply="tap_tank_temperature",
                        exchanger_approach="sidearm_approach",
                    ),
                    Step(
                        "shower_minutes",
                        exchange.tank_draw_time,
                        "Hot water lasts",
                        us="min",
                        si="min",
                        tank_volume="tap_tank_volume",
                        tank="tap_tank_temperature",
                        cold="cold_water",
                        tap="tap_wanted",
                    ),
                    # The sidearm's flow and heat with the tank halfway warm.
                    Step(
                        "halfway",
                        emitters.mean_of,
                        "Tank halfway warm",
                        supply="tap_tank_temperature",
                        return_water="cold_water",
                    ),
                    Step("cool_density", water.density, "Weight of each volume at the bottom", temperature="halfway"),
                    Step(
                        "warm_density",
                        water.density,
                        "Weight of each volume at the store's heat",
                        temperature="store_top",
                    ),
                    Step(
                        "store_over_tank",
                        emitters.excess_of,
                        "Store over tank, halfway",
                        water="store_top",
                        indoor="halfway",
                    ),
                    Step(
                        "expansion",
                        gravity.expansion_rate,
                        "Growth of water for each degree",
                        difference="store_over_tank",
                    ),
                    Step(
                        "sidearm_content",
                        water.mean_volume_heat_content,
                        "Heat in each volume and degree",
                        low="halfway",
                        top="store_top",
                    ),
                    Step(
                        "bore_area",
                        arithmetic.circle_area,
                        "Area of its bore",
                        us="in²",
                        si="cm²",
                        diameter="sidearm_bore",
                    ),
                    Step(
                        "sidearm_velocity",
                        exchange.sidearm_velocity,
                        "Speed of the water that rises by itself",
                        hot="store_top",
                        tank="halfway",
                        conductance="sidearm_conductance",
                        heat_content="sidearm_content",
                        loss_coefficient="sidearm_losses",
                    ),
                    Step(
                        "sidearm_heat",
                        exchange.sidearm_heat,
                        "Heat it gives the tank, halfway warm",
                        hot="store_top",
                        tank="halfway",
                        conductance="sidearm_conductance",
                        heat_content="sidearm_content",
                        velocity="sidearm_velocity",
                    ),
                    Step(
                        "whole_conductance",
                        exchange.whole_conductance,
                        "The same for each degree",
                        heat="sidearm_heat",
                        hot="store_top",
                        tank="halfway",
                    ),
                    Step(
                        "tank_content",
                        water.mean_volume_heat_content,
                        "Heat in each volume and degree of the tank",
                        low="cold_water",
                        top="tap_tank_temperature",
                    ),
                    Step(
                        "tank_capacity",
                        store.heat_capacity,
                        "Heat the tank holds for each degree",
                        volume="tap_tank_volume",
                        heat_content="tank_content",
                    ),
                    Step(
                        "recovery",
                        exchange.time_to_warm,
                        "Recovery time of the tank, from cold",
                        start="cold_water",
                        target="tap_tank_temperature",
                        hot="store_top",
                        conductance="whole_conductance",
                    ),
                ),
            ),
        ),
    ),
    steps=(
        Step(
            "lowest_useful",
            exchange.coolest_useful,
            "Coolest store water worth drawing, taps counted",
            for_emitters="emitters_need",
            for_taps="store_needed",
        ),
        Step(
            "scald_shortest",
            exchange.shortest_scald_time,
            "Shortest printed time to a deep burn there",
            us="s",
            si="s",
            water="store_top",
        ),
        Step(
            "scald_longest",
            exchange.longest_scald_time,
            "Longest printed time to a deep burn there",
            us="s",
            si="s",
            water="store_top",
        ),
    ),
    results=(
        Result("store_needed", "Store temperature needed for the taps", "So that {tap_wanted} comes out of the tap."),
        Result(
            "lowest_useful",
            "Lowest useful store temperature",
            "The hotter of the taps' need and the emitters' {emitters_need}.",
        ),
        Result(
            "tap_flow_possible",
            "Largest draw from a fully charged store",
            "At {store_top}, with {tap_wanted} at the tap.",
            missing="none",
        ),
        Result(
            "exchanger_outlet",
            "Leaving temperature at the peak draw",
            "At {tap_flow}, from a store at {store_top}, before any mixing.",
        ),
        Result("shower_minutes", "Hot water lasts", "", figures=2, missing="as long as the fire burns"),
        Result("draw", "Heat drawn by the taps while they run"),
        Result(
            "store_after", "Store after {showers} showers of {shower_time}", "Mixed; a layered one stays hotter on top."
        ),
        Result(
            "primary_return", "Return temperature to the store's bottom", "When the store is at its coolest useful."
        ),
        Result(
            "recovery",
            "Recovery time of the tank, from cold",
            "From a store at {store_top}, without a pump.",
            figures=2,
            missing="never",
        ),
        Result(
            "scald_shortest",
            "Shortest time to a deep burn, unmixed",
            "Printed for adults, for water at {store_top}; children burn far sooner.",
            figures=2,
        ),
        Result("scald_longest", "Longest printed", figures=2),
    ),
    headline="store_needed",
    say="Hot water lasts {shower_minutes}.",
    musts=(
        Must(
            "tap_wanted > cold_water + 5",
            "tap_wanted",
            "Hot-water temperature at the tap must be well above the cold water temperature.",
        ),
        Must(
            "plate_hot_in > plate_cold_out",
            "plate_hot_in",
            "Rated hot-side inlet must be hotter than the cold-side outlet.",
        ),
        Must(
            "plate_hot_out > plate_cold_in",
            "plate_hot_out",
            "Rated hot-side outlet must be hotter than the cold-side inlet.",
        ),
        Must(
            "plate_hot_in > plate_hot_out",
            "plate_hot_out",
            "Rated hot-side outlet must be cooler than the hot-side inlet.",
        ),
        Must(
            "plate_cold_out > plate_cold_in",
            "plate_cold_out",
            "Rated cold-side outlet must be warmer than the cold-side inlet.",
        ),
        Must(
            "coil_store > coil_cold_out",
            "coil_store",
            "Rated store temperature must be above the rated hot-water outlet.",
        ),
        Must(
            "coil_cold_out > coil_cold_in",
            "coil_cold_out",
            "Rated hot-water outlet must be warmer than the cold-water inlet.",
        ),
        Must(
            "tap_tank_temperature > cold_water + 5",
            "tap_tank_temperature",
            "Set temperature of the tap-water tank must be well above the cold water temperature.",
        ),
    ),
    advice=(
        Advice(
            "stop",
            "poison",
            "antifreeze_kind == 'ethylene' and exchanger_wall == 'single'",
            "One wall between a poison and the taps.",
            "Ethylene glycol is poisonous and a single wall can leak unseen. Drinking water needs a double wall with its gap open to "
            "air, and the water authority and a licensed plumber have the say.",
            "double-wall",
        ),
        Advice(
            "stop",
            "scald",
            "tap_wanted >= scald_half_minute",
            "Too hot for a tap.",
            "Water at {tap_wanted} burns skin in half a minute or less, a child's sooner. Set the valve to {scald_minutes} or "
            "less, and have a licensed plumber fit it.",
            "scald-cpsc",
        ),
        Advice(
            "unworkable",
            "too-cool",
            "store_top <= store_needed and tap_way != 'sidearm'",
            "A full store is too cool for these taps.",
            "It is charged to {store_top}, and {store_needed} is needed for {tap_flow} at {tap_wanted}. A larger exchanger, a smaller "
            "flow or a hotter store is needed.",
            zeroes=("shower_minutes",),
        ),
        Advice(
            "unworkable",
            "impossible-approach",
            "exchanger_known == 'approach' and primary_return <= cold_water",
            "No plate comes that close.",
            "The store's water would leave at {primary_return}, no warmer than the cold water. It takes more store-side flow, or "
            "the approach is larger.",
        ),
        Advice(
            "unworkable",
            "tank-too-hot",
            "tap_way == 'sidearm' and store_top <= tap_tank_temperature",
            "The store cannot keep the tank that hot.",
            "It is charged to {store_top}; the tank is to be kept at {tap_tank_temperature}.",
        ),
        Advice(
            "unworkable",
            "tank-too-cool",
            "tap_way == 'sidearm' and tap_tank_temperature < tap_wanted",
            "The tank is cooler than the water wanted.",
            "It is kept at {tap_tank_temperature} and {tap_wanted} is wanted. Keep the tank hotter and mix it down.",
            zeroes=("shower_minutes",),
        ),
        Advice(
            "caution",
            "mixing-valve",
            "store_top > scald_minutes",
            "Every tap needs a mixing valve before it.",
            "Unmixed, {store_top} can come out. The sources print {scald_shortest} to {scald_longest} to a deep burn of adult skin, "
            "and they differ; children burn far sooner.",
            "scald-times",
        ),
        Advice(
            "caution",
            "bacteria",
            "tap_way == 'sidearm' and tap_tank_temperature < bacteria_safe",
            "Bacteria can grow in a tank this cool.",
            "Keep stored tap water at {bacteria_safe} or more and mix it down at the outlet. When fires are rare, heat the tank "
            "some other way and flush it before anyone showers.",
            "legionella",
        ),
        Advice(
            "caution",
            "sidearm-free",
            "tap_way == 'sidearm' and store_top > bacteria_safe",
            "A sidearm has no thermostat.",
            "Over a long fire the tank follows the store up to {store_top}. The tank needs its own mixing valve, its own "
            "temperature-and-pressure relief and room for its water to expand.",
            "double-wall",
        ),
        Advice(
            "caution",
            "treated",
            "exchanger_wall == 'single' and antifreeze_kind == 'propylene'",
            "Treated water behind a single wall.",
            "Ask the water authority: many want a double wall as soon as the store holds anything but drinking water.",
            "double-wall",
        ),
        Advice(
            "caution",
            "taps-decide",
            "store_needed > emitters_need and given(emitters_need)",
            "The taps decide how far the store can be used.",
            "The emitters would do with {emitters_need}; the taps stop at {store_needed}. Something else to finish heating the "
            "tap water makes the rest of the store useful.",
        ),
        Advice(
            "caution",
            "warm-tap",
            "tap_wanted > scald_minutes and tap_wanted < scald_half_minute",
            "This tap can scald.",
            "Above {scald_minutes} water burns within minutes, and children and old people sooner.",
            "scald-cpsc",
        ),
        Advice(
            "note",
            "made-fresh",
            "tap_way == 'plate'",
            "No tap water stands hot, so bacteria find little to live in.",
            "That is the strength of making it as it is drawn. Its weakness is that the store must stay at {store_needed}.",
            "legionella",
        ),
        Advice(
            "caution",
            "coil-lukewarm",
            "tap_way == 'coil'",
            "Bacteria can grow in the coil between fires.",
            "It holds gallons of tap water, as warm as the store. After a pause bring the store to {bacteria_safe} or more and "
            "flush the coil before anyone showers.",
            "legionella",
        ),
        Advice(
            "note",
            "summer",
            "store_needed > cold_water",
            "Plan for summer.",
            "A fire only for the taps is hot work for little water. Most houses heat tap water some other way from spring to "
            "autumn.",
        ),
    ),
    meaning=(
        "A store that has cooled to {store_needed} no longer makes {tap_flow} of {tap_wanted}, though there may be much heat "
        "left in it for a warm floor.",
    ),
    chart=Chart(
        "Store needed, by how much water runs at once",
        across="tap_flow",
        low="0.5 gpm",
        high="6 gpm",
        lines=(Line("store_needed", "store needed", "tank"), Line("store_top", "a full store", "limit")),
        say="For {tap_flow} the store must be at {store_needed}.",
    ),
    tables=(
        Comparison(
            "What changes it",
            rows=(
                Variant("As it is", {}),
                Variant("Twice the flow", {"tap_flow": "x2"}),
                Variant("Water at 105 °F (41 °C)", {"tap_wanted": "105 °F"}),
                Variant("Summer: cold water at 65 °F (18 °C)", {"cold_water": "65 °F"}),
                Variant("A store charged to 150 °F (66 °C)", {"store_top": "150 °F"}),
            ),
            show=("store_needed", "lowest_useful", "shower_minutes"),
        ),
    ),
    examples=(
        Example(
            "Fern Lane: a plate beside the store",
            {
                "tap_way": "plate",
                "store_top": "170 °F",
                "tap_wanted": "110 °F",
                "cold_water": "48 °F",
                "tap_flow": "2.5 gpm",
                "antifreeze_kind": "none",
                "exchanger_wall": "double",
                "emitters_need": "102 °F",
                "store_volume": "500 gal",
                "plate_rating": "150,000 Btu/h",
                "plate_hot_in": "160 °F",
                "plate_hot_out": "110 °F",
                "plate_cold_in": "50 °F",
                "plate_cold_out": "125 °F",
                "primary_flow": "5 gpm",
            },
        ),
    ),
    in_record=OnlyWith(TAP_WAY, ("plate", "coil", "sidearm")),
    sizes=(
        Sizes(
            TAP_EXCHANGER,
            "a plate for {plate_rating}; it makes {tap_flow_possible} from a full store",
            "{plate_rating}",
            ("plate",),
            ("tap_way", "plate"),
        ),
        Sizes(
            TAP_EXCHANGER,
            "a coil for {coil_rating}; it makes {tap_flow_possible} from a full store",
            "{coil_rating}",
            ("tap-tank",),
            ("tap_way", "coil"),
        ),
        Sizes(
            TAP_EXCHANGER,
            "beside a tank of {tap_tank_volume}, warm in {recovery}",
            "{tap_tank_volume}",
            ("tap-tank",),
            ("tap_way", "sidearm"),
        ),
    ),
    leaves_out=(
        "Long pipes, in which the first water is cold.",
        "Scale: hard water halves an exchanger's conductance in a few years unless it is cleaned.",
        "Whether you may touch drinking-water pipes at all: in many places only a licensed plumber may.",
    ),
    follow=(
        Next("tempering", "The valve that mixes hot water down."),
        Next("stored-heat", "What is left for the house above the taps' need."),
    ),
)
