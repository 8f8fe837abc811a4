"""What does the fill water do to the steel?"""

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
    Picture,
    Result,
    Sizes,
    Step,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import fill_water
from calc.plant import FILL_WATER
from calc.vocabulary import (
    STORE_KIND,
    SYSTEM_VOLUME,
    WATER_OUTPUT,
)

HARDNESS = Field(
    "hardness",
    "hardness",
    "Total hardness of the fill water",
    "As calcium carbonate. Grains a gallon (gpg), °dH, °f and mmol/L are read too.",
    low="0 mg/L",
    high="1,500 mg/L",
    uncertainty="10 %",
    typical=Typical("150 mg/L", "usgs-hardness", "60 mg/L", "250 mg/L", "The water utility's report, or a test strip."),
)
PH = Field(
    "ph",
    "acidity",
    "pH of the water in the plant",
    "Measured ten weeks or more after filling. Fresh water is often 7 to 8 and rises in the plant.",
    low="4",
    high="12",
    typical=Typical("7.5", "fill-water-custom", "6.5", "8.5", "A test strip in a cup of the plant's cooled water."),
)
CHLORIDE = Field(
    "chloride",
    "concentration",
    "Chloride in the fill water",
    "It stands in the water report. A softener does not take it out.",
    low="0 mg/L",
    high="5,000 mg/L",
    typical=Typical("30 mg/L", "fill-water-custom", "10 mg/L", "100 mg/L", "The water utility's report."),
)
MAKE_UP = Field(
    "make_up",
    "volume",
    "Make-up water in a year",
    "All that is topped up in a year. A small meter on the filling line counts it.",
    low="0 gal",
    high="10,000 gal",
    typical=Typical(
        {"closed": "5 gal", "open": "40 gal", "lined": "40 gal"},
        "fill-water-custom",
        {"closed": "0 gal", "open": "10 gal", "lined": "10 gal"},
        {"closed": "20 gal", "open": "150 gal", "lined": "150 gal"},
        "Whoever tops it up: count the buckets.",
        on="store_kind",
    ),
)
INHIBITOR_SHARE = Field(
    "inhibitor_share",
    "dose",
    "Dose of the inhibitor",
    "It stands on the can.",
    low="0.05 %",
    high="10 %",
    typical=Typical("1 %", "inhibitor-custom", "0.5 %", "2 %", "The label of the can."),
)
STAINLESS = Field(
    "stainless",
    "choice",
    "Stainless steel in this water",
    "A plate exchanger, a corrugated pipe, a coil or the tank itself.",
    options=(Option("none", "none"), Option("304", "grade 304"), Option("316", "grade 316")),
    unless_given="none",
)
HOTTEST_WATER = Field(
    "hottest_water",
    "temperature",
    "Hottest water at that steel",
    "What a coil or plate gets at the end of a good burn.",
    low="70 °F",
    high="250 °F",
    typical=Typical("180 °F", "common-practice", "170 °F", "190 °F", "A thermometer on the pipe to it."),
)
ALUMINUM = Field(
    "aluminum",
    "choice",
    "Aluminum in this water",
    "Some boilers and radiators are made of it.",
    options=(Option("no", "none"), Option("yes", "a boiler or radiators of it")),
    unless_given="no",
)
ELEMENT_IN_WATER = Field(
    "element_in_water",
    "choice",
    "Electric element in this water",
    "Its surface is hotter than any jacket, so scale forms on it first.",
    options=(Option("no", "none"), Option("yes", "one stands in it")),
    unless_given="no",
)

WORKSHEET = Worksheet(
    key="water-and-steel",
    guide="water",
    question="What does the fill water do to the steel?",
    short="Scale and rust that the water brings, what a published guideline allows, how much to soften, and inhibitor.",
    fields=(
        HARDNESS,
        SYSTEM_VOLUME,
        STORE_KIND,
        MAKE_UP,
        WATER_OUTPUT,
        PH,
        CHLORIDE,
        INHIBITOR_SHARE,
        STAINLESS,
        ALUMINUM,
        ELEMENT_IN_WATER,
    ),
    givens=(
        Given("years", "factor", "Years of make-up", "10", "definition"),
        Given("oxygen", "concentration", "Oxygen in fresh cold water", "11.3 mg/L", "oxygen-in-water"),
        Given("iron_for_oxygen", "factor", "Iron that each weight of oxygen rusts", "2.618", "magnetite"),
        Given("softened", "hardness", "What a softener leaves", "0.1 °dH", "softened-rest"),
        Given("ph_low", "acidity", "Lowest pH by the guideline", "8.2", "vdi-2035"),
        Given("leak_share", "factor", "Make-up of a tight closed plant, at most", "0.1", "common-practice"),
        Given("fillings", "factor", "Fillings that the guideline counts on for life", "3", "vdi-2035"),
        Given("chloride_much", "concentration", "Chloride that is much", "250 mg/L", "epa-chloride"),
    ),
    cases=(
        Cases(
            "element_in_water",
            no=Case(steps=(Step("hardness_limit", fill_water.hardness_limit, "Hardest water by the guideline"),)),
            yes=Case(
                steps=(
                    Step("hardness_limit", fill_water.hardness_limit_with_element, "Hardest water by the guideline"),
                )
            ),
        ),
        Cases(
            "stainless",
            **{
                "none": Case(),
                "304": Case(
                    fields=(HOTTEST_WATER,),
                    steps=(
                        Step(
                            "chloride_limit",
                            fill_water.chloride_limit_304,
                            "Chloride that this steel bears",
                            hottest="hottest_water",
                        ),
                    ),
                ),
                "316": Case(
                    fields=(HOTTEST_WATER,),
                    steps=(
                        Step(
                            "chloride_limit",
                            fill_water.chloride_limit_316,
                            "Chloride that this steel bears",
                            hottest="hottest_water",
                        ),
                    ),
                ),
            },
        ),
    ),
    steps=(
        Step("scale_first", fill_water.scale, "Scale from the first filling", water="system_volume"),
        Step("make_up_years", fill_water.make_up_of_years, "Make-up water of those years"),
        Step("scale_make_up", fill_water.scale, "Scale from the make-up", water="make_up_years"),
        Step("rust_first", fill_water.iron_rusted, "Iron that the first filling rusts", water="system_volume"),
        Step("rust_make_up", fill_water.iron_rusted, "Iron that the make-up rusts", water="make_up_years"),
        Step("specific_volume", fill_water.specific_volume, "Water for each output"),
        Step(
            "hardness_limit_austrian",
            fill_water.hardness_limit_austrian,
            "Hardest water by the Austrian standard",
        ),
        Pick("ph_high", "acidity", "Highest pH by the guideline", "aluminum", {"no": "10", "yes": "9"}, "vdi-2035"),
        Step("treated_share", fill_water.treated_share, "Share of the fill to soften"),
        Step("treated_water", fill_water.treated_water, "Water to soften", share="treated_share"),
        Step("inhibitor_dose", fill_water.inhibitor, "Inhibitor", water="system_volume", dose="inhibitor_share"),
        Step(
            "inhibitor_make_up",
            fill_water.inhibitor,
            "Inhibitor for the make-up",
            water="make_up_years",
            dose="inhibitor_share",
        ),
    ),
    results=(
        Result("scale_first", "Scale from the first filling", "At most: if all its hardness comes out."),
        Result("scale_make_up", "Scale from ten years of make-up", "It comes on top, and it has no end."),
        Result(
            "hardness_limit",
            "Hardest fill water by the guideline",
            "VDI 2035, at {specific_volume} of water for each output.",
            missing="no limit",
        ),
        Result(
            "hardness_limit_austrian",
            "Hardest fill water by the Austrian standard",
            "ÖNORM H 5195-1. Published guidelines differ, most of all for much water.",
        ),
        Result("treated_share", "Share of the fill to soften", missing="none", figures=2),
        Result("treated_water", "Water to soften for the first filling", missing="none"),
        Result("inhibitor_dose", "Inhibitor for the first filling", "At {inhibitor_share}."),
        Result("inhibitor_make_up", "Inhibitor for ten years of make-up", "Each bucket needs its part."),
        Result("rust_first", "Iron that the first filling rusts", "Its oxygen is used up in days.", figures=2),
        Result("rust_make_up", "Iron that ten years of make-up rust", figures=2),
        Result("specific_volume", "Water for each output"),
        Result("chloride_limit", "Chloride that this steel bears"),
    ),
    headline="scale_first",
    say="Ten years of make-up bring {scale_make_up} more.",
    advice=(
        Advice(
            "caution",
            "closed-only",
            "store_kind != 'closed'",
            "The guideline covers closed plants only.",
            "VDI 2035 is written for closed plants. An open store takes up oxygen from the air as fast as steel uses it, so "
            "good values of hardness and pH do not keep it from rusting. They stand here as a yardstick. Open steel needs "
            "an inhibitor, always at its dose.",
            "vdi-2035",
        ),
        Advice(
            "caution",
            "too-hard",
            "hardness > hardness_limit",
            "Harder than the guideline allows.",
            "With {specific_volume} VDI 2035 allows {hardness_limit}, and this water has {hardness}. Soften {treated_water} "
            "for the first filling, and all the make-up.",
            "vdi-2035",
        ),
        Advice(
            "note",
            "guidelines-differ",
            "hardness > hardness_limit and hardness <= hardness_limit_austrian",
            "Another guideline would allow it.",
            "Austria's ÖNORM H 5195-1 allows {hardness_limit_austrian} in such a plant. The verdict here goes by VDI 2035, "
            "the stricter one.",
            "onorm-h-5195",
        ),
        Advice(
            "caution",
            "ph-low",
            "ph < ph_low",
            "Too acid for steel.",
            "The guideline wants a pH of {ph_low} to {ph_high} in the plant, and this is {ph}. Fresh water rises by itself "
            "within ten weeks: measure again then. If it stays low, ask who supplies the inhibitor what lifts it.",
            "vdi-2035",
        ),
        Advice(
            "caution",
            "ph-high",
            "ph > ph_high",
            "Too alkaline.",
            "The guideline wants a pH of {ph_low} to {ph_high} in the plant, and this is {ph}. Aluminum dissolves above 9; "
            "brass and copper suffer above 10.",
            "vdi-2035",
        ),
        Advice(
            "caution",
            "chloride-stainless",
            "chloride > chloride_limit",
            "Too much chloride for this stainless steel.",
            "In water up to {hottest_water} makers of plate exchangers use it up to {chloride_limit}; this water has {chloride}. "
            "Stainless steel does not rust evenly: it pits and cracks. Use demineralized water or another metal.",
            "chloride-plates",
        ),
        Advice(
            "caution",
            "chloride-steel",
            "chloride > chloride_much",
            "Salty water pits steel.",
            "Above {chloride_much} water counts as corrosive even for drinking. Fill with demineralized water: a softener "
            "leaves the chloride in.",
            "epa-chloride",
        ),
        Advice(
            "caution",
            "leak",
            "store_kind == 'closed' and make_up > leak_share * system_volume",
            "A tight closed plant does not need that much.",
            "{make_up} a year is more than a tenth of its water. Find the leak, or the relief valve or vessel that lets it "
            "go: with each bucket come new oxygen and new scale.",
            "common-practice",
        ),
        Advice(
            "caution",
            "many-fillings",
            "make_up_years > (fillings - 1) * system_volume",
            "In ten years that is more than the guideline counts on.",
            "It holds for {fillings} times the plant's water over its whole life, the first filling counted. This "
            "make-up alone is {make_up_years} in ten years: soften all of it.",
            "vdi-2035",
        ),
        Advice(
            "note",
            "guideline-met",
            "store_kind == 'closed' and (missing(hardness_limit) or hardness <= hardness_limit) and ph >= ph_low "
            "and ph <= ph_high",
            "This water meets the guideline.",
            "By hardness and pH, VDI 2035 Part 1 of 2021. It also asks for clear water and for no air getting in.",
            "vdi-2035",
        ),
        Advice(
            "note",
            "single-wall",
            "inhibitor_dose > 0",
            "Keep treated water away from the taps.",
            "Between it and drinking water belongs a double wall, and a backflow preventer on the filling line. Write on "
            "the plant what is in it, and since when.",
            "double-wall",
        ),
    ),
    meaning=(
        "Scale settles where the fire is hottest: on the wall of the jacket. There it keeps the water from cooling the "
        "steel, the steel gets hotter, and the stove begins to sing and knock like a kettle.",
        "Rust follows the oxygen. Without new air and new water it stops by itself.",
    ),
    picture=Picture(
        "fill",
        "This is what the water itself brings; the air over an open store rusts far more.",
        {
            "scale": "scale_first",
            "scale_later": "scale_make_up",
            "rust": "rust_first",
            "rust_later": "rust_make_up",
            "hardness": "hardness",
            "allowed": "hardness_limit",
        },
    ),
    chart=Chart(
        "Scale by the hardness of the water",
        across="hardness",
        low="0 mg/L",
        high="400 mg/L",
        lines=(
            Line("scale_first", "first filling", "tank"),
            Line("scale_make_up", "ten years of make-up", "limit"),
        ),
        say="At {hardness} the first filling brings {scale_first}, ten years of make-up {scale_make_up}.",
    ),
    tables=(
        Comparison(
            "The same plant with one thing changed",
            rows=(
                Variant("As it is", {}),
                Variant("Softened water", {"hardness": "0.1 °dH"}),
                Variant("Very hard water, 300 mg/L", {"hardness": "300 mg/L"}),
                Variant("Twice the make-up", {"make_up": "x2"}),
                Variant("Half the make-up", {"make_up": "x0.5"}),
            ),
            show=("scale_first", "scale_make_up", "rust_make_up", "treated_share"),
        ),
    ),
    examples=(
        Example(
            "Mill Row: a closed plant on hard water",
            {
                "hardness": "180 mg/L",
                "system_volume": "845 gal",
                "store_kind": "closed",
                "make_up": "6 gal",
                "water_output": "60,000 Btu/h",
                "ph": "8.6",
                "chloride": "25 mg/L",
                "inhibitor_share": "1 %",
            },
        ),
        Example(
            "Fern Lane: an open store on the same water",
            {
                "hardness": "180 mg/L",
                "system_volume": "525 gal",
                "store_kind": "open",
                "make_up": "60 gal",
                "water_output": "40,000 Btu/h",
                "ph": "8.4",
                "chloride": "25 mg/L",
                "inhibitor_share": "1 %",
                "stainless": "316",
                "hottest_water": "170 °F",
            },
        ),
    ),
    leaves_out=(
        "Hardness that stays dissolved: soft or cool water gives less scale than its hardness says.",
        "Oxygen that an open store draws from the air, and that creeps through plastic pipe without a barrier: far more "
        "than water brings.",
        "Dissimilar metals, sulfate, iron and bacteria in well water: have a well tested.",
        "Conductivity: the guideline counts up to 100 µS/cm as low-salt, up to 1,500 as salty.",
        "What the makers of stove and tank ask, which goes first.",
    ),
    sizes=(
        Sizes(
            FILL_WATER, "{system_volume} at {hardness}; soften {treated_water}; inhibitor {inhibitor_dose}", quantity=""
        ),
    ),
    sources=("en-14868", "hydronic-test"),
    follow=(
        Next("expansion", "A vessel that is too small is why closed plants lose water."),
        Next("standby", "How much an open store evaporates."),
        Next("antifreeze", "If glycol stands in the water instead."),
    ),
)
