"""What does the pipe to another building lose?"""

from calc.chains.water_side import fluid, pipe, pipe_of
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
    Pick,
    Picture,
    Result,
    Step,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import antifreeze, emitters, fuels, pipes, store
from calc.vocabulary import ANTIFREEZE_KIND, DESIGN_LOAD, PIPE_HEAT, PIPE_KIND, PIPE_SIZE, SUPPLY_WATER, WATER_DROP

TRENCH_LENGTH = Field(
    "trench_length",
    "length",
    "Length of the trench",
    "One way, from wall to wall.",
    low="3 ft",
    high="1,000 ft",
    us="ft",
    si="m",
    uncertainty="5 %",
)
# Copper and PEX of one trade size have the same outside.
OUTSIDE = Pick(
    "carrier",
    "length",
    "Outside of the pipe that carries the water",
    "pipe_size",
    {
        pipe.size: f"{pipe.outside} in"
        for pipe in pipes.PIPES
        if pipe.family == "pex" and pipe.size in [option.value for option in PIPE_SIZE.options]
    },
    "astm-f876",
    us="in",
    si="mm",
)
JACKET = Field(
    "jacket",
    "length",
    "Outside diameter of the pipe insulation",
    "The diameter over everything, for one pipe.",
    low="2.5 in",
    high="16 in",
    us="in",
    si="mm",
    typical=Typical("3.5 in", "common-practice", "2.5 in", "6 in", "A tape measure around it, divided by 3.14."),
)
PIPE_INSULATION = Field(
    "pipe_insulation",
    "choice",
    "Kind of pipe insulation",
    "It insulates only while it stays dry.",
    options=(
        Option("polyurethane", "polyurethane foam, factory-made and sealed"),
        Option("rubber", "rubber or polyethylene foam"),
        Option("wet", "any that is soaked"),
    ),
)
INSULATION_CONDUCTIVITY = Field(
    "insulation_conductivity",
    "conductivity",
    "Thermal conductivity of that insulation",
    "Filled in from the kind.",
    low="0.1 Btuin/h/ft2/F",
    high="8 Btuin/h/ft2/F",
    typical=Typical(
        {"polyurethane": "0.19 Btuin/h/ft2/F", "rubber": "0.27 Btuin/h/ft2/F", "wet": "2 Btuin/h/ft2/F"},
        "pipe-insulation",
        {"polyurethane": "0.16 Btuin/h/ft2/F", "rubber": "0.25 Btuin/h/ft2/F", "wet": "1 Btuin/h/ft2/F"},
        {"polyurethane": "0.24 Btuin/h/ft2/F", "rubber": "0.33 Btuin/h/ft2/F", "wet": "4 Btuin/h/ft2/F"},
        "The maker's sheet.",
        on="pipe_insulation",
    ),
)
DEPTH = Field(
    "depth",
    "length",
    "Burial depth to the middle of the pipes",
    "",
    low="0.7 ft",
    high="12 ft",
    us="ft",
    si="m",
    typical=Typical("2.5 ft", "common-practice", "1.5 ft", "4 ft", "A stick in the trench."),
)
PIPE_DISTANCE = Field(
    "pipe_distance",
    "length",
    "On-center distance of the two pipes",
    "At least one jacket.",
    low="0.5 in",
    high="60 in",
    us="in",
    si="mm",
    typical=Typical("6 in", "common-practice", "4 in", "12 in", "A tape measure."),
)
SOIL = Field(
    "soil",
    "choice",
    "Kind of soil",
    "Wet soil carries heat away several times faster than dry.",
    options=(Option("damp", "damp, as in most of the year"), Option("dry", "dry sand or gravel")),
)
SOIL_CONDUCTIVITY = Field(
    "soil_conductivity",
    "conductivity",
    "Thermal conductivity of the soil",
    "Filled in from the kind of soil.",
    low="0.7 Btuin/h/ft2/F",
    high="25 Btuin/h/ft2/F",
    typical=Typical(
        {"damp": "10 Btuin/h/ft2/F", "dry": "3 Btuin/h/ft2/F"},
        "soil",
        {"damp": "7 Btuin/h/ft2/F", "dry": "2 Btuin/h/ft2/F"},
        {"damp": "14 Btuin/h/ft2/F", "dry": "4 Btuin/h/ft2/F"},
        "A spade after a wet week.",
        on="soil",
    ),
)
GROUND = Field(
    "ground",
    "temperature",
    "Ground temperature at that depth in winter",
    "",
    low="-10 °F",
    high="75 °F",
    typical=Typical("38 °F", "common-practice", "30 °F", "48 °F", "The well water less a few degrees."),
)
HOURS_HOT = Field(
    "hours_hot",
    "time",
    "Hours in a year with hot water in it",
    "",
    low="10 h",
    high="8,784 h",
    us="h",
    si="h",
    uncertainty="10 %",
    typical=Typical("4,000 h", "common-practice", "2,500 h", "5,500 h", "Hours the pump runs."),
)
CORD_HEAT = Field(
    "cord_heat",
    "heat_per_volume",
    "Delivered heat of a cord or stère",
    "After the stove's losses.",
    low="4 MMBtu/cord",
    high="30 MMBtu/cord",
    us="MMBtu/cord",
    si="kWh/m³",
    typical=Typical("15 MMBtu/cord", "delivered-cord", "10 MMBtu/cord", "18 MMBtu/cord", "The wood-use worksheet."),
)
EXPOSED_LENGTH = Field(
    "exposed_length",
    "length",
    "Length of pipe in cold air",
    "One way, where it comes up in a shed, crawl space or wall.",
    low="0.5 ft",
    high="200 ft",
    us="ft",
    si="m",
    typical=Typical("5 ft", "common-practice", "2 ft", "15 ft", "Look where it leaves the ground."),
)
EXPOSED_AIR = Field(
    "exposed_air",
    "temperature",
    "Coldest air temperature around that pipe",
    "",
    low="-60 °F",
    high="60 °F",
    typical=Typical("0 °F", "common-practice", "-20 °F", "20 °F", "The design temperature where you live."),
)

SUPPLY_HERE = SUPPLY_WATER.but(hint="What the rooms' emitters need on the coldest day.")
TRENCH_SUPPLY = Field(
    "trench_supply",
    "temperature",
    "Temperature at which water goes into the trench",
    "What the emitters need unless you say otherwise. A boiler whose store is in the house sends it hotter.",
    low=SUPPLY_WATER.low,
    high=SUPPLY_WATER.high,
    same_as="supply_water",
)

WORKSHEET = Worksheet(
    key="buried-pipe",
    guide="another-building",
    question="What does the pipe to another building lose?",
    short="Heat and degrees lost underground, wood a year, and hours to freezing when it stops.",
    apart=pipe_of("buried", "buried line"),
    fields=(
        DESIGN_LOAD,
        # The heating loop's as well, and the emitters' sheets work it out: what they need leaves the far building where the
        # store stands there. The heat is each pipe's own, since one of them may be a branch.
        SUPPLY_HERE,
        WATER_DROP,
        TRENCH_SUPPLY,
        TRENCH_LENGTH,
        PIPE_KIND.but(
            options=tuple(option for option in PIPE_KIND.options if option.value in ("copper-m", "copper-l", "pex"))
        ),
        JACKET,
        PIPE_INSULATION,
        INSULATION_CONDUCTIVITY,
        DEPTH,
        PIPE_DISTANCE,
        SOIL,
        SOIL_CONDUCTIVITY,
        GROUND,
        HOURS_HOT,
        CORD_HEAT,
        EXPOSED_LENGTH,
        EXPOSED_AIR,
        ANTIFREEZE_KIND,
        PIPE_HEAT,
    ),
    givens=(
        Given("whole", "fraction", "All of it", "100 %", "definition"),
        Given("much", "fraction", "A loss worth a second thought", "10 %", "common-practice"),
        Given("short_time", "time", "A night", "12 h", "common-practice"),
        Given("pex_hottest", "temperature", "Hottest PEX is rated for", "200 °F", "pex-limits"),
        Given("pex_hot", "temperature", "PEX is rated for 100 psi up to", "180 °F", "pex-limits"),
    ),
    cases=(
        fluid(("", "mean_water", "at the mean of both pipes", ("density", "specific_heat"))),
        pipe(("copper-m", "copper-l", "pex"), rough=False),
        Cases(
            "antifreeze_kind",
            none=Case(
                steps=(
                    Step(
                        "freezing_point",
                        antifreeze.propylene_freezing_point,
                        "It freezes at",
                        mass_fraction="antifreeze",
                    ),
                )
            ),
            propylene=Case(steps=(Step("freezing_point", antifreeze.propylene_freezing_point, "It freezes at"),)),
            ethylene=Case(steps=(Step("freezing_point", antifreeze.ethylene_freezing_point, "It freezes at"),)),
        ),
    ),
    steps=(
        OUTSIDE,
        Step(
            "return_temperature", emitters.return_water, "Water coming back", supply="trench_supply", drop="water_drop"
        ),
        Step(
            "mean_water",
            emitters.mean_of,
            "Mean of both pipes",
            supply="trench_supply",
            return_water="return_temperature",
        ),
        Step("volume_heat_capacity", pipes.volume_heat_capacity, "Heat in each volume and degree"),
        Step("flow", pipes.flow, "Flow", heat="pipe_heat"),
        Step(
            "insulation_resistance",
            pipes.layer_resistance,
            "Resistance of the insulation",
            inside="carrier",
            outside="jacket",
            conductivity="insulation_conductivity",
        ),
        Step("soil_resistance", pipes.soil_resistance, "Resistance of the soil"),
        Step("neighbour_resistance", pipes.neighbour_resistance, "Warmth of the other pipe"),
        Step("pair_conductance", pipes.pair_conductance, "Both pipes, each length and degree"),
        Step("trench_loss", pipes.trench_loss, "Lost in each length of trench"),
        Step("buried_loss", pipes.buried_loss, "Heat loss underground while hot"),
        Step("temperature_drop", pipes.rise, "Temperature drop underground, there and back", heat="buried_loss"),
        Step("loss_share", pipes.share_lost, "Loss, share of the heat sent at full load", heat="pipe_heat"),
        Step("heat_lost", pipes.heat_lost_in, "Heat lost in a year"),
        Step(
            "wood_lost",
            fuels.volume_needed,
            "Wood burned for that in a year",
            heat="heat_lost",
            heat_content="cord_heat",
            efficiency="whole",
            us="cord",
            si="m³",
        ),
        Step("air_conductance", pipes.conductance_in_air, "Pipe in the air, each length and degree"),
        Step(
            "exposed_conductance",
            pipes.run_conductance,
            "Pipe in the air, each degree",
            conductance_per_length="air_conductance",
            length="exposed_length",
        ),
        Step("exposed_volume", store.cylinder_volume, "Water in it", diameter="bore", height="exposed_length"),
        Step(
            "exposed_capacity",
            store.heat_capacity,
            "Heat in it for each degree",
            volume="exposed_volume",
            heat_content="volume_heat_capacity",
        ),
        Step(
            "exposed_time_constant",
            store.time_constant,
            "Its time constant",
            heat_capacity="exposed_capacity",
            conductance="exposed_conductance",
        ),
        Step(
            "hours_to_freezing",
            store.time_to_reach,
            "Hours until it starts to freeze",
            start="return_temperature",
            target="freezing_point",
            heading_for="exposed_air",
            time_constant="exposed_time_constant",
        ),
    ),
    results=(
        Result(
            "buried_loss",
            "Heat loss underground while hot",
            "Supply and return together, at {mean_water} over ground of {ground}.",
        ),
        Result(
            "loss_share",
            "Loss, share of the heat sent at full load",
            "In mild weather the house needs less and the trench loses the same.",
            figures=2,
        ),
        Result("temperature_drop", "Temperature drop underground, there and back"),
        Result("heat_lost", "Heat lost in a year", "In {hours_hot}."),
        Result("wood_lost", "Wood burned for that in a year", figures=2, us="cord", si="m³"),
        Result(
            "hours_to_freezing",
            "Hours until the pipe in the air starts to freeze",
            "From {return_temperature}, with the pump stopped; first ice at {freezing_point}.",
            figures=2,
            missing="never",
        ),
        Result("flow", "Flow"),
    ),
    headline="buried_loss",
    say="{wood_lost} of wood a year for nothing.",
    musts=(
        Must(
            "pipe_distance >= jacket * 0.999",
            "pipe_distance",
            "The pipes cannot be closer than their jackets allow: at least one jacket from middle to middle.",
        ),
        Must("depth >= jacket", "depth", "The pipes must lie deeper than their jackets are thick."),
        Must(
            "trench_supply > ground + water_drop",
            "water_drop",
            "The water coming back would be colder than the ground: a smaller drop or hotter water.",
        ),
    ),
    advice=(
        Advice(
            "caution",
            "freezes",
            "exposed_air < freezing_point and hours_to_freezing < short_time",
            "The pipe in the air freezes in a night.",
            "With the pump stopped it is at {freezing_point} after {hours_to_freezing}. Insulate it, warm its place, keep a "
            "trickle running, or fill with antifreeze. Never light the stove with a frozen pipe.",
            weight=3,
        ),
        Advice(
            "caution",
            "wet",
            "pipe_insulation == 'wet'",
            "Soaked insulation is no insulation.",
            "The loss is {buried_loss}. Only a sealed jacket, glued at every joint, stays dry in the ground.",
            "pipe-insulation",
        ),
        Advice(
            "caution",
            "much",
            "loss_share > much",
            "Much of the heat stays in the ground.",
            "{loss_share} of what is sent. Thicker insulation, cooler water or a store at the house, filled in short hot runs, "
            "cut it.",
        ),
        Advice(
            "caution",
            "plastic",
            "pipe_kind == 'pex' and trench_supply > pex_hot",
            "Too hot for plastic in the ground.",
            "PEX is rated for 100 psi (6.9 bar) up to {pex_hot} and not at all above {pex_hottest}. Between stove and store only metal "
            "belongs; run plastic from a mixing valve behind a store.",
            "pex-limits",
        ),
        Advice(
            "note",
            "store-place",
            "buried_loss > 0",
            "Where the store stands decides.",
            "A store beside the stove keeps the trench warm all day; one in the house lets it cool between fires, and its own "
            "leak warms the rooms.",
        ),
    ),
    meaning=(
        "The loss goes with the hours the water is hot and with how hot it is, and hardly with how much flows. It is the "
        "same on a mild day, when the house needs little.",
    ),
    picture=Picture(
        "trench",
        "Both pipes lose heat as long as their water is hot, however little of it flows.",
        {"long": "trench_length", "deep": "depth", "water": "trench_supply", "lost": "buried_loss"},
    ),
    chart=Chart(
        "Loss against the water going out",
        across="trench_supply",
        low="90 °F",
        high="200 °F",
        lines=(Line("buried_loss", "lost underground", "fire"),),
        say="At {trench_supply} the trench loses {buried_loss}.",
    ),
    tables=(
        Comparison(
            "Other insulation on the same run",
            rows=(
                Variant("Jacket of 2.5 in (64 mm)", {"jacket": "2.5 in"}),
                Variant("Jacket of 3.5 in (89 mm)", {"jacket": "3.5 in"}),
                Variant("Jacket of 5 in (127 mm)", {"jacket": "5 in"}),
                Variant("Soaked", {"insulation_conductivity": "2 Btuin/h/ft2/F"}),
            ),
            show=("buried_loss", "loss_share", "wood_lost"),
        ),
    ),
    examples=(
        Example(
            "Ridge Road: the stove in the barn, the house a trench away",
            {
                "design_load": "32,500 Btu/h",
                "supply_water": "160 °F",
                "water_drop": "20 F°",
                "trench_length": "80 ft",
                "pipe_kind": "pex",
                "pipe_size": "1",
                "jacket": "3.5 in",
                "pipe_insulation": "polyurethane",
                "depth": "2.5 ft",
                "pipe_distance": "6 in",
                "soil": "damp",
                "ground": "38 °F",
                "hours_hot": "4,000 h",
                "exposed_length": "5 ft",
                "exposed_air": "-5 °F",
                "antifreeze_kind": "none",
            },
        ),
    ),
    leaves_out=(
        "The ground warming up around the pipes, which helps a little after weeks.",
        "Two pipes in one jacket lose somewhat less than two single ones.",
        "The wall of the pipe itself, which hardly insulates.",
    ),
    follow=(
        Next("antifreeze", "What protection costs."),
        Next("wood-use", "The wood of a whole winter."),
        Next("pipe", "Friction and pump for this run."),
    ),
)
