"""How much wood will a winter take?"""

from calc.chains import one_load
from calc.engine.declare import (
    Advice,
    Chart,
    Comparison,
    Example,
    Field,
    Given,
    Line,
    Next,
    Pick,
    Picture,
    Result,
    Step,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import arithmetic, fuels, wood
from calc.physics.wood import SPECIES as WOODS
from calc.vocabulary import (
    EFFICIENCY_BASIS,
    FIREBOX_VOLUME,
    HEATING_DAYS,
    MOISTURE,
    PACKING_DENSITY,
    SPECIES,
    STANDBY_LOSS,
    STOVE_EFFICIENCY,
    TAP_LOAD,
    YEARLY_HEAT,
)

WOOD_SHARE = Field(
    "wood_share",
    "fraction",
    "Share of space heating from wood",
    "The rest comes from another heater.",
    low="1 %",
    high="100 %",
    unless_given="100 %",
)
SOLID_SHARE = Field(
    "solid_share",
    "fraction",
    "Solid wood share of the stack",
    "Short, straight, split logs stack tighter.",
    low="35 %",
    high="85 %",
    typical=Typical("66.4 %", "cord-solid-share", "54.7 %", "70.3 %", "Nobody knows; 55 to 70 % in common stacks."),
)
STACK_HEIGHT = Field(
    "stack_height",
    "length",
    "Height of the stack",
    "",
    low="1 ft",
    high="12 ft",
    us="ft",
    si="m",
    unless_given="5 ft",
)
LOG_LENGTH = Field(
    "log_length",
    "length",
    "Length of the logs",
    "A little shorter than the firebox.",
    low="4 in",
    high="60 in",
    us="in",
    si="cm",
    typical=Typical("16 in", "common-practice", "12 in", "20 in", "The stove's manual."),
)
STACK_ROWS = Field(
    "stack_rows",
    "count",
    "Rows deep",
    "",
    low="1",
    high="20",
    unless_given="1",
)
SPLIT_THICKNESS = Field(
    "split_thickness",
    "length",
    "Thickness of a split",
    "As thick as a round log of the same weight.",
    low="1 in",
    high="12 in",
    us="in",
    si="cm",
    typical=Typical("4 in", "common-practice", "3 in", "5 in", "A rule across one."),
)

WORKSHEET = Worksheet(
    key="wood-use",
    guide="wood",
    question="How much wood will a winter take?",
    short="Cords or stères a winter, the stack they make, and the loads they are.",
    fields=(
        YEARLY_HEAT,
        SPECIES,
        MOISTURE,
        EFFICIENCY_BASIS,
        STOVE_EFFICIENCY,
        FIREBOX_VOLUME,
        PACKING_DENSITY,
        LOG_LENGTH,
        SPLIT_THICKNESS,
        SOLID_SHARE,
        WOOD_SHARE,
        TAP_LOAD,
        STANDBY_LOSS,
        HEATING_DAYS.but(hint="Only used for taps and for what the store loses outside."),
        STACK_HEIGHT,
        STACK_ROWS,
    ),
    givens=(
        Given("dry_enough", "fraction", "Wettest wood worth burning, wet basis", "20 %", "bimschv-3-3"),
        Given("far_too_wet", "fraction", "Wood that is still green", "30 %", "common-practice"),
    ),
    cases=(one_load.HEATING_VALUE,),
    steps=(
        Pick(
            "basic_density",
            "density",
            "Oven-dry weight of each volume of this wood",
            on="species",
            values={wood.key: f"{wood.basic_density:g} kg/m³" for wood in WOODS.values()},
            source="usfs-fia-species",
        ),
        Pick(
            "dry_heating_value",
            "heat_per_mass",
            "Heat in it by weight, oven-dry",
            on="species",
            values={wood.key: "9,000 Btu/lb" if wood.resinous else "8,600 Btu/lb" for wood in WOODS.values()},
            source="wood-heating-value",
        ),
        Step(
            "heat_beside_rooms", wood.heat_beside_rooms, "Heat for taps and what the store loses", us="MMBtu", si="kWh"
        ),
        Step("heat_from_wood", wood.heat_from_wood, "Heat in the wood burned in a winter", us="MMBtu", si="kWh"),
        Step(
            "heat_content",
            wood.stack_heat_content,
            "Heat in a cord or stère",
            us="MMBtu/cord",
            si="kWh/m³",
        ),
        Step(
            "wood_volume",
            fuels.volume_needed,
            "Stacked wood for a winter",
            us="cord",
            si="stère",
            heat="heat_from_wood",
        ),
        Step(
            "solid_wood",
            wood.solid_volume,
            "The same without the air between",
            us="ft³",
            si="m³",
            stacked_volume="wood_volume",
        ),
        Step(
            "wood_mass",
            fuels.mass_needed,
            "Weight as burned, moisture included",
            us="ton",
            si="t",
            heat="heat_from_wood",
            heat_content="heating_value",
        ),
        Step("water_boiled", wood.water_in_wood, "Water in it that the fire must boil off", mass="wood_mass"),
        Step("stack_depth", wood.stack_depth, "Depth of the stack"),
        Step(
            "stack_length",
            wood.stack_length,
            "Length of the stack",
            us="ft",
            si="m",
            stacked_volume="wood_volume",
            height="stack_height",
            depth="stack_depth",
        ),
        Step("load_mass", wood.load_mass, "Weight of one load"),
        Step("loads", wood.pieces_in, "Loads of the firebox in a winter", mass="wood_mass", piece_mass="load_mass"),
        Step(
            "log_section",
            arithmetic.circle_area,
            "Cross-section of a split",
            us="in²",
            si="cm²",
            diameter="split_thickness",
        ),
        Step("split_mass", wood.split_mass, "Weight of one split"),
        Step("splits", wood.pieces_in, "Splits in a load", mass="load_mass", piece_mass="split_mass"),
    ),
    results=(
        Result(
            "wood_volume",
            "Stacked wood for a winter",
            "With {solid_share} of the stack wood and the rest air.",
            figures=2,
            us="cord",
            si="stère",
        ),
        Result("wood_mass", "Weight as burned, moisture included", figures=2, us="ton", si="t"),
        Result(
            "stack_length",
            "Length of the stack",
            "{stack_height} high and {stack_depth} deep.",
            figures=2,
            us="ft",
            si="m",
        ),
        Result(
            "water_boiled",
            "Water that the fire boils off",
            "It takes heat along and makes tar if the fire is slow.",
            figures=2,
        ),
        Result(
            "heat_content",
            "Heat in a cord or stère",
            "On the same value as the efficiency.",
            us="MMBtu/cord",
            si="kWh/m³",
        ),
        Result("loads", "Loads of the firebox in a winter", figures=2),
        Result("splits", "Splits in a load", figures=2),
        Result("solid_wood", "Solid wood without the air", figures=2, us="ft³", si="m³"),
        Result("heat_from_wood", "Heat in the wood burned in a winter", us="MMBtu", si="kWh"),
    ),
    headline="wood_volume",
    say="A stack {stack_length} long.",
    advice=(
        Advice(
            "caution",
            "green",
            "moisture > far_too_wet",
            "This wood is still green.",
            "At {moisture} water it burns cool and smoky, the flue fills with tar, and tar burns as a chimney fire. "
            "Split it, stack it in the wind under a roof and wait a summer or two.",
            "common-practice",
        ),
        Advice(
            "caution",
            "damp",
            "moisture > dry_enough and moisture <= far_too_wet",
            "This wood is damp.",
            "German law asks for {dry_enough} or less of the whole weight, which a meter shows as 25 % dry basis. The "
            "winter boils {water_boiled} of water out of yours.",
            "bimschv-3-3",
        ),
        Advice(
            "caution",
            "flattering",
            "efficiency_basis == 'higher' and efficiency > 0.8",
            "Is that efficiency on the higher value?",
            "Few wood stoves give more than 80 % of the higher heating value over a winter. A printed {efficiency} is "
            "more likely on the lower value: choose that instead.",
            "efficiency-ranges",
        ),
        Advice(
            "caution",
            "many-splits",
            "splits < 1",
            "One split is heavier than a load.",
            "A split of {split_mass} does not fit the {load_mass} that the firebox holds. Split thinner.",
        ),
        Advice(
            "note",
            "fire-out",
            "loads > 0",
            "Store full means fire out.",
            "Each load burns hot and whole into the store. A fire shut down to save wood makes tar and wastes a part "
            "of the {loads} loads.",
        ),
        Advice(
            "note",
            "buy",
            "wood_volume > 0",
            "Buy by the stack, not by the truck.",
            "A cord is 128 cubic feet stacked (3.62 m³), a stère one cubic meter. Thrown loose, the same wood fills about half "
            "as much space again.",
            "cord-solid-share",
        ),
    ),
    meaning=(
        "This is the wood for {heat_from_wood} of heat. How tight it is stacked, and how the stove is run, each move "
        "the figure by a tenth or more: have some over.",
    ),
    picture=Picture(
        "logs",
        "Water weighs, takes heat along and makes tar: it is the first thing to ask of wood.",
        {
            "wet": "moisture",
            "dry": "dry_enough",
            "green": "far_too_wet",
            "wood": "wood_volume",
            "water": "water_boiled",
        },
    ),
    chart=Chart(
        "Water to boil off in a winter, by how wet the wood is",
        across="moisture",
        low="10 %",
        high="50 %",
        lines=(Line("water_boiled", "water to boil off", "use"),),
        say="At {moisture} the fires have {water_boiled} of water to boil off.",
    ),
    tables=(
        Comparison(
            "The same winter with other wood",
            rows=(
                Variant("Yours", {}),
                Variant("White oak", {"species": "white-oak"}),
                Variant("Paper birch", {"species": "paper-birch"}),
                Variant("Douglas-fir", {"species": "douglas-fir"}),
                Variant("Eastern white pine", {"species": "eastern-white-pine"}),
            ),
            show=("wood_volume", "wood_mass", "loads"),
            say="One dry wood holds nearly the same heat for its weight as another; for the space it stacks in it does not.",
        ),
        Comparison(
            "Dry wood and a good burn",
            rows=(
                Variant("Yours", {}),
                Variant("Dried to 15 % (wet basis)", {"moisture": "15 %"}),
                Variant("Green, 45 % (wet basis)", {"moisture": "45 %"}),
                Variant("A tenth more efficient", {"efficiency": "x1.1"}),
                Variant("A fifth less efficient: slow, smoky fires", {"efficiency": "x0.8"}),
            ),
            show=("wood_volume", "water_boiled"),
            say=(
                "On the higher value a wet stack holds as much heat as a dry one, but it burns far worse: on the lower "
                "value, and with the poorer fire, the loss shows."
            ),
        ),
    ),
    examples=(
        Example(
            "Mill Row: a winter on sugar maple",
            {
                "yearly_heat": "78.1 MMBtu",
                "species": "sugar-maple",
                "moisture": "20 %",
                "efficiency_basis": "higher",
                "efficiency": "68 %",
                "firebox_volume": "5 ft3",
            },
        ),
    ),
    leaves_out=(
        "Bark, rot and knots, and the kindling.",
        "That wood shrinks as it dries: a green stack is a few percent smaller a year later.",
        "Days when the fire is lit for comfort and the heat is let out of the window.",
    ),
    follow=(
        Next("firing", "How often that is, against the weather."),
        Next("fuel-cost", "What it costs beside the fuel you burn now."),
        Next("house-load", "Where the heat for a year comes from."),
    ),
)
