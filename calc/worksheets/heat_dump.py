"""How large must the heat dump be, so that the fire's heat leaves with no power?"""

from calc.chains import outlet
from calc.chains.water_side import FRICTION_GIVENS, GRAVITY_PIPE, METAL_PIPE_KIND, METAL_PIPES, PEAK, pipe
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
from calc.physics import dump, emitters, gravity, pipes, safety, store, water
from calc.plant import HEAT_DUMP
from calc.vocabulary import (
    DAMPER,
    ELBOWS,
    JACKET_VOLUME,
    LOOP_HEIGHT,
    OTHER_LOSSES,
    PEAK_KNOWN,
    PIPE_LENGTH,
    STORE_TOP,
    STORE_VOLUME,
    TEES,
)

HEAT_KNOWN = Field(
    "heat_known",
    "choice",
    "Heat that the dump must take",
    "All of the fire's peak, unless the air damper surely falls shut.",
    options=(Option("no", "the fire's peak"), Option("yes", "I type it")),
    unless_given="no",
)
DUMP_HEAT = Field(
    "dump_heat",
    "power",
    "Heat to the dump",
    "As much as the fire can give the water with no power.",
    low="500 Btu/h",
    high="1,000,000 Btu/h",
    uncertainty="15 %",
)
DUMP_QUESTION = Field(
    "dump_question",
    "choice",
    "What you want to know",
    "A dump that is too small makes the water hotter until it takes the heat, or boils.",
    options=(
        Option("size", "how large the dump must be"),
        Option("supply", "how hot the water gets with the dump I have in mind"),
    ),
)
SUPPLY_KNOWN = Field(
    "supply_known",
    "choice",
    "Hottest water that you allow",
    "The cooler it has to stay, the larger the dump.",
    options=(Option("no", "20 °F (11 °C) below boiling"), Option("yes", "I type it")),
    unless_given="no",
)
DUMP_SUPPLY = Field(
    "dump_supply",
    "temperature",
    "Supply temperature at the dump",
    "As it leaves the stove: the pipe is taken to lose nothing.",
    low="100 °F",
    high="300 °F",
)
DUMP_KIND = Field(
    "dump_kind",
    "choice",
    "Kind of dump",
    "It stands above the stove, and no power, fan or valve belongs to it.",
    options=(
        Option("finned-pipe", "finned pipe"),
        Option("radiator", "radiator"),
        Option("open-box", "open box of water"),
        Option("slab", "slab"),
    ),
)
DUMP_LENGTH = Field(
    "dump_size",
    "length",
    "Size of the dump",
    "Finned pipe by its finned length, all rows together; every other kind by its output at the rated excess.",
    low="1 ft",
    high="5,000 ft",
    us="ft",
    si="m",
)
DUMP_RATED = Field(
    "dump_size",
    "power",
    "Size of the dump",
    "Finned pipe by its finned length, all rows together; every other kind by its output at the rated excess.",
    low="500 Btu/h",
    high="5,000,000 Btu/h",
)
DUMP_RATING = Field(
    "dump_rating",
    "heat_rate_per_length",
    "Rated output of the finned pipe per foot or meter",
    "At the rated excess, in still air. If the table holds a heating-effect allowance, take it off: divide by 1.15.",
    low="50 Btu/h/ft",
    high="4,000 Btu/h/ft",
    typical=Typical(
        "490 Btu/h/ft", "dump-ratings", "400 Btu/h/ft", "1,200 Btu/h/ft", "The maker's table for the bare element."
    ),
)
RATED_EXCESS = Field(
    "dump_rated_excess",
    "temperature_difference",
    "Rated excess of the dump",
    "Mean water above air at which its output is rated.",
    low="10 F°",
    high="250 F°",
    typical=Typical(
        {"finned-pipe": "115 F°", "radiator": "90 F°", "open-box": "100 F°", "slab": "25 F°"},
        "dump-ratings",
        {"finned-pipe": "105 F°", "radiator": "54 F°", "open-box": "80 F°", "slab": "15 F°"},
        {"finned-pipe": "150 F°", "radiator": "108 F°", "open-box": "120 F°", "slab": "40 F°"},
        "It stands beside the rated output.",
        on="dump_kind",
    ),
)
DUMP_EXPONENT = Field(
    "dump_exponent",
    "exponent",
    "Output exponent of the dump",
    "How steeply its output grows with hotter water.",
    low="1",
    high="1.7",
    typical=Typical(
        {"finned-pipe": "1.4", "radiator": "1.3", "open-box": "1.25", "slab": "1.1"},
        "dump-exponents",
        {"finned-pipe": "1.3", "radiator": "1.2", "open-box": "1.2", "slab": "1"},
        {"finned-pipe": "1.5", "radiator": "1.4", "open-box": "1.35", "slab": "1.1"},
        "The maker's test report.",
        on="dump_kind",
    ),
)
DUMP_SURROUNDINGS = Field(
    "dump_surroundings",
    "temperature",
    "Air temperature around the dump",
    "Under the ceiling, on the warmest day with a fire.",
    low="32 °F",
    high="140 °F",
    typical=Typical("80 °F", "common-practice", "60 °F", "100 °F", "A thermometer hung where the dump will be."),
)
DUMP_ABOVE = Field(
    "dump_above",
    "length",
    "Top of the dump above the store's top",
    "Water up there is under less pressure, and boils sooner.",
    low="0 ft",
    high="60 ft",
    us="ft",
    si="m",
    unless_given="0 ft",
)

_LOOP = {"heat": "dump_heat", "surroundings": "dump_surroundings"}
_GIVES = {"surroundings": "dump_surroundings", "rated_excess": "dump_rated_excess", "exponent": "dump_exponent"}
_BETWEEN = {"heat": "dump_heat", "supply": "dump_supply", "return_water": "dump_return", **_GIVES}
_LENGTH = {"rating_per_length": "dump_rating", "us": "ft", "si": "m"}


def _takes(rating: str) -> Step:
    """What the dump takes at the hottest water that leaves a margin, whatever it was sized for."""
    label = "Heat it takes with that margin to boiling"
    return Step("dump_output", dump.heat_by_gravity, label, supply="hottest_supply", rating=rating, **_GIVES)


def _excess(rating: str) -> Step:
    label = "Mean water above the air at which it gives the heat"
    return Step(
        "needed_excess",
        emitters.needed_excess,
        label,
        load="dump_heat",
        rated_output=rating,
        rated_excess="dump_rated_excess",
        exponent="dump_exponent",
    )


_RATED_NEEDED = (
    Step("dump_size", dump.rating_for_heat, "Rated output that the dump must have", **_BETWEEN),
    Step("size_log", dump.rating_by_log_mean, "The same by the logarithmic mean", **_BETWEEN),
    _takes("dump_size"),
)
_RATED_NEEDED_CASE = Case(steps=_RATED_NEEDED)
_RATED_GIVEN_CASE = Case(fields=(DUMP_RATED,), steps=(_excess("dump_size"), _takes("dump_size")))

SIZE = Case(
    fields=(SUPPLY_KNOWN,),
    steps=(
        Step(
            "excess_ratio",
            emitters.excess_ratio,
            "Return's excess as a share of the supply's",
            return_water="dump_return",
            supply="dump_supply",
            indoor="dump_surroundings",
        ),
    ),
    cases=(
        Cases(
            "supply_known",
            no=Case(
                steps=(
                    Step(
                        "dump_supply",
                        dump.supply_under_boiling,
                        "Supply temperature at the dump",
                        boiling="boiling_dump",
                        margin="boiling_caution",
                    ),
                ),
            ),
            yes=Case(fields=(DUMP_SUPPLY,), decides=True),
        ),
        Cases(
            "dump_kind",
            finned_pipe=Case(
                fields=(DUMP_RATING,),
                steps=(
                    Step("rating", dump.rating_for_heat, "Rated output that the dump must have", **_BETWEEN),
                    Step("rating_log", dump.rating_by_log_mean, "The same by the logarithmic mean", **_BETWEEN),
                    Step("dump_size", dump.length_of_rating, "Finned pipe for that", **_LENGTH),
                    Step(
                        "size_log",
                        dump.length_of_rating,
                        "Finned pipe by the logarithmic mean",
                        rating="rating_log",
                        **_LENGTH,
                    ),
                    _takes("rating"),
                ),
            ),
            radiator=_RATED_NEEDED_CASE,
            open_box=_RATED_NEEDED_CASE,
            slab=_RATED_NEEDED_CASE,
        ),
    ),
)

SUPPLY = Case(
    cases=(
        Cases(
            "dump_kind",
            finned_pipe=Case(
                fields=(DUMP_LENGTH, DUMP_RATING),
                steps=(
                    Step(
                        "rating",
                        emitters.rating_of_length,
                        "Rated output of the dump",
                        length="dump_size",
                        rating_per_length="dump_rating",
                    ),
                    _excess("rating"),
                    _takes("rating"),
                ),
            ),
            radiator=_RATED_GIVEN_CASE,
            open_box=_RATED_GIVEN_CASE,
            slab=_RATED_GIVEN_CASE,
        ),
    ),
    steps=(
        Step(
            "dump_mean",
            emitters.mean_water,
            "Mean water in the dump",
            indoor="dump_surroundings",
            excess="needed_excess",
        ),
        Step(
            "dump_supply",
            dump.supply_by_gravity,
            "Supply temperature at which it takes the heat",
            mean_water="dump_mean",
            **_LOOP,
        ),
    ),
    decides=True,
)

WORKSHEET = Worksheet(
    key="heat-dump",
    guide="dump",
    question="How large must the heat dump be?",
    short="Finned pipe, radiator, box or slab that takes the fire's heat by gravity when the power is out.",
    apart=GRAVITY_PIPE,
    fields=(
        HEAT_KNOWN,
        DUMP_QUESTION,
        DUMP_KIND,
        LOOP_HEIGHT,
        METAL_PIPE_KIND.but(
            hint="Of the dump's own loop, and metal only: it can boil.",
        ),
        PIPE_LENGTH,
        ELBOWS,
        TEES,
        RATED_EXCESS,
        DUMP_EXPONENT,
        DUMP_SURROUNDINGS,
        DUMP_ABOVE,
        *outlet.FIELDS,
        STORE_TOP,
        STORE_VOLUME,
        JACKET_VOLUME,
        OTHER_LOSSES,
    ),
    givens=(
        *FRICTION_GIVENS,
        *outlet.GIVENS,
        Given("no_valves", "count", "Hand valves in the loop: none", "0", "common-practice"),
        Given("no_other", "pressure_difference", "No other pressure counted", "0 psi", "definition"),
        Given("sluggish", "velocity", "Too slow to carry its own air", "0.3 ft/s", "common-practice"),
        Given(
            "flat_return",
            "fraction",
            "Return's share of the supply's excess below which the mean flatters",
            "70 %",
            "en-442-log",
        ),
    ),
    cases=(
        Cases(
            "heat_known",
            no=Case(
                fields=(PEAK_KNOWN, DAMPER),
                steps=(
                    Pick(
                        "fire_share",
                        "fraction",
                        "Share of the peak that goes on",
                        "damper",
                        {"open": "100 %", "shut": "35 %"},
                        "damper-shut",
                    ),
                    Step("dump_heat", safety.dump_needed, "Heat to the dump"),
                ),
                cases=(PEAK,),
            ),
            yes=Case(fields=(DUMP_HEAT,), decides=True),
        ),
        Cases("dump_question", size=SIZE, supply=SUPPLY),
        pipe(METAL_PIPES),
    ),
    steps=(
        *outlet.STEPS,
        Step(
            "dump_pressure",
            pipes.pressure_at_height,
            "Absolute pressure in the dump",
            absolute_pressure="pressure",
            density="density_hot",
            height="dump_above",
        ),
        Step("boiling_dump", water.boiling_temperature, "Water boils in the dump at", pressure="dump_pressure"),
        Step(
            "hottest_supply",
            dump.supply_under_boiling,
            "Hottest water with a margin to boiling",
            boiling="boiling_dump",
            margin="boiling_caution",
        ),
        Step(
            "boiling_margin",
            water.boiling_margin,
            "Margin to boiling",
            boiling="boiling_dump",
            temperature="dump_supply",
        ),
        Step("relative_roughness", pipes.relative_roughness, "Roughness over bore"),
        Step("length_in_bores", gravity.length_in_bores, "Length in bores", length="pipe_length"),
        Step("fittings_loss", pipes.fittings_loss, "Loss of all fittings, in velocity heads", valves="no_valves"),
        Step(
            "dump_return",
            dump.return_by_gravity,
            "Return temperature from the dump",
            heat="dump_heat",
            supply="dump_supply",
        ),
        Step("mean_water", emitters.mean_of, "Mean of up and down", supply="dump_supply", return_water="dump_return"),
        Step("density", water.density, "Density at the mean", temperature="mean_water"),
        Step("specific_heat", water.specific_heat, "Specific heat at the mean", temperature="mean_water"),
        Step("viscosity", water.viscosity, "Viscosity at the mean", temperature="mean_water"),
        Step("volume_heat_capacity", pipes.volume_heat_capacity, "Heat in each volume and degree"),
        Step(
            "dump_drop",
            gravity.loop_drop,
            "Temperature drop around the loop",
            loop_supply="dump_supply",
            loop_return="dump_return",
        ),
        Step("dump_flow", pipes.flow, "Flow that carries the heat", heat="dump_heat", water_drop="dump_drop"),
        Step("velocity", pipes.velocity, "Velocity of the water", flow="dump_flow"),
        Step("reynolds_number", pipes.reynolds_number, "Reynolds number"),
        Step("friction_factor", pipes.friction_factor, "Friction factor"),
        Step("friction", pipes.friction, "Pressure lost in each length"),
        Step(
            "pressure_drop",
            pipes.pressure_drop,
            "Friction of the loop at that flow",
            length="pipe_length",
            other_pressure="no_other",
            us="psi",
            si="Pa",
        ),
        Step("density_cool", water.density, "Density of the water coming down", temperature="dump_return"),
        Step("density_warm", water.density, "Density of the water going up", temperature="dump_supply"),
        Step(
            "driving_pressure",
            gravity.driving_pressure,
            "What drives it: the same pressure",
            cool_density="density_cool",
            warm_density="density_warm",
            us="psi",
            si="Pa",
        ),
        Step(
            "return_at_boiling",
            dump.return_by_gravity,
            "Return needed with the outlet at boiling",
            heat="dump_heat",
            supply="boiling_dump",
        ),
        Step("water_alone", pipes.system_volume, "Water in store and jacket", other_volume="jacket_volume"),
        Step(
            "heat_content",
            water.mean_volume_heat_content,
            "Heat in each volume and degree, store's top to boiling",
            low="store_top",
            top="boiling",
        ),
        Step(
            "heat_to_boiling",
            store.usable_heat,
            "Heat they take up until they boil",
            volume="water_alone",
            top="boiling",
            low="store_top",
        ),
        Step(
            "minutes_alone",
            store.time_on_heat,
            "Until store and jacket boil, with no dump",
            heat="heat_to_boiling",
            load="dump_heat",
            us="min",
            si="min",
        ),
    ),
    results=(
        Result(
            "dump_size",
            "Size of the dump",
            "Finned length, or output at the rated excess of {dump_rated_excess}.",
            missing="no size does it",
        ),
        Result("dump_supply", "Supply temperature at the dump", missing="far over boiling"),
        Result("dump_return", "Return temperature from the dump"),
        Result("dump_flow", "Flow by gravity"),
        Result("dump_heat", "Heat to the dump"),
        Result("boiling_margin", "Margin to boiling"),
        Result("boiling_dump", "Water boils in the dump at", "At {altitude} and {dump_pressure}."),
        Result(
            "dump_output",
            "Dump capacity without power",
            "By gravity, with the water at {hottest_supply}, {boiling_caution} from boiling.",
        ),
        Result("velocity", "Velocity of the water"),
        Result("driving_pressure", "Driving pressure", "Friction uses up the same.", us="psi", si="Pa"),
        Result(
            "return_at_boiling",
            "Return needed with the outlet at boiling",
            "It must stay over the {dump_surroundings} around the dump.",
            missing="colder than ice",
        ),
        Result(
            "minutes_alone",
            "Until store and jacket boil, with no dump",
            "All {water_alone} from {store_top} to {boiling}, mixed, with no heat lost. The store counts only if its water "
            "moves without the pump.",
            figures=2,
            us="min",
            si="min",
        ),
    ),
    headline="dump_size",
    say="Water to the dump: {dump_supply}.",
    say_none="No size does it through this loop.",
    advice=(
        *outlet.ADVICE,
        Advice(
            "stop",
            "boils",
            "boiling_margin <= 0",
            "The water boils before the dump takes the heat.",
            "It would have to come at {dump_supply}, and it boils at {boiling_dump}. A larger dump, a wider pipe, more "
            "height or a smaller fire is needed before this stove is lit.",
            "iapws-if97",
        ),
        Advice(
            "stop",
            "far-over",
            "missing(dump_supply)",
            "This dump is far too small.",
            "Water would boil at {boiling_dump} long before it gives off {dump_heat}. Find the size it needs first.",
        ),
        Advice(
            "unworkable",
            "loop-too-weak",
            "missing(return_at_boiling) or return_at_boiling <= dump_surroundings",
            "No dump is large enough for this loop.",
            "Even with the outlet at boiling, {boiling_dump}, the water would have to come back no warmer than the "
            "{dump_surroundings} around the dump. Give the loop a wider pipe, more height or fewer turns, or make the fire "
            "smaller.",
        ),
        Advice(
            "unworkable",
            "loop-too-cool",
            "dump_question == 'size' and (missing(dump_return) or dump_return <= dump_surroundings) and"
            " return_at_boiling > dump_surroundings",
            "With water this cool, no dump is large enough.",
            "At {dump_supply} the loop carries {dump_heat} only if the water comes back no warmer than the "
            "{dump_surroundings} around the dump. A wider pipe or more height helps, and a dump does not.",
        ),
        Advice(
            "caution",
            "margin",
            "boiling_margin > 0 and dump_supply > boiling_dump - boiling_caution",
            "Little margin to boiling.",
            "{boiling_margin} are left in the dump; keep {boiling_caution}. A larger dump or a wider pipe helps.",
            "boiling-caution",
        ),
        Advice(
            "caution",
            "loop-bound",
            "dump_question == 'supply' and dump_return < dump_surroundings + 1",
            "A larger dump would not help.",
            "The water comes back as cool as the air around the dump. The loop is what holds the heat up: a wider pipe, "
            "more height or fewer turns.",
        ),
        Advice(
            "caution",
            "large-drop",
            "excess_ratio < flat_return and dump_return > dump_surroundings",
            "The plain mean flatters this dump.",
            "The water cools far on its way through. By the logarithmic mean the dump must be {size_log}. Take the larger "
            "figure, or a wider pipe.",
            "en-442-log",
        ),
        Advice(
            "caution",
            "no-valve",
            "dump_heat > 0",
            "No hand valve in this loop, ever.",
            "Nor a valve that can fail shut, a spring check, a pump or a fan. Somebody would shut it one day, and the dump "
            "would be gone on the night it is wanted.",
            "common-practice",
        ),
        Advice(
            "caution",
            "damper",
            "damper == 'shut'",
            "Has somebody seen this damper fall shut?",
            "Only then is {dump_heat} enough. A log across the door or a stuck chain keeps the whole fire going: "
            "{peak_output}.",
            "damper-shut",
        ),
        Advice(
            "caution",
            "open-box",
            "dump_kind == 'open-box'",
            "An open box boils dry in the end.",
            "It needs a lid that cannot shut tight, somebody who tops it up, and a floor that bears it. In a plant under "
            "pressure the water passes a coil in the box: take the coil's rating and the box's water as its surroundings.",
        ),
        Advice(
            "caution",
            "slab",
            "dump_kind == 'slab'",
            "A slab is the weakest of dumps.",
            "Water at {dump_supply} cracks concrete and burns feet, no plastic pipe may carry it, and a slab lies seldom "
            "above the stove. Take another kind, or let the slab help one.",
        ),
        Advice(
            "caution",
            "undecided",
            "reynolds_number > laminar and reynolds_number < turbulent",
            "Between smooth and rough flow.",
            "At a Reynolds number of {reynolds_number} nobody can say which the water does.",
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
            "prove",
            "dump_heat > 0",
            "Prove it with a small fire.",
            "Light a little one with the pump off and feel both pipes of the dump. Do it again each autumn.",
        ),
        Advice(
            "note",
            "always-on",
            "dump_heat > 0",
            "A dump is always a little warm.",
            "Nothing shuts it, so it takes some heat whenever the stove is hot. Put it where that heat is welcome.",
        ),
    ),
    meaning=(
        "The loop and the dump settle together. A small dump makes the water hotter, so more flows and more is given off, "
        "until it takes all of the fire's heat or boils. The pipe sets how much can flow at all.",
    ),
    picture=Picture(
        "dump",
        "Shows the idea, not every part. Nothing between stove, dump and relief valve can be shut.",
        {
            "kind": "dump_kind",
            "size": "dump_size",
            "supply": "dump_supply",
            "back": "dump_return",
            "height": "loop_height",
        },
    ),
    chart=Chart(
        "Water to and from the dump by the height of the loop",
        across="loop_height",
        low="2 ft",
        high="20 ft",
        lines=(
            Line("dump_supply", "to the dump", "fire"),
            Line("dump_return", "back from it", "use"),
            Line("boiling_dump", "boiling", "limit"),
        ),
        say="With {loop_height} the water goes up at {dump_supply} and comes back at {dump_return}.",
    ),
    tables=(
        Comparison(
            "The same dump with another loop",
            rows=(
                Variant("Yours", {}),
                Variant("1 in or 28 x 1.5 mm", {"pipe_size": "1", "metric_size": "28x1.5", "bore": "25 mm"}),
                Variant("1-1/2 in or 42 x 1.5 mm", {"pipe_size": "1-1/2", "metric_size": "42x1.5", "bore": "39 mm"}),
                Variant("2 in or 54 x 2 mm", {"pipe_size": "2", "metric_size": "54x2", "bore": "50 mm"}),
                Variant("Twice the height", {"loop_height": "x2"}),
            ),
            show=("dump_size", "dump_supply", "dump_return", "dump_flow", "dump_output"),
        ),
    ),
    examples=(
        Example(
            "Mill Row: finned pipe under the ceiling above the cellar stove",
            {
                "heat_known": "no",
                "peak_known": "no",
                "water_output": "60,000 Btu/h",
                "damper": "open",
                "dump_question": "size",
                "supply_known": "no",
                "dump_kind": "finned-pipe",
                "dump_rating": "1,100 Btu/h/ft",
                "dump_rated_excess": "115 F°",
                "dump_exponent": "1.4",
                "dump_surroundings": "80 °F",
                "loop_height": "9 ft",
                "pipe_kind": "steel",
                "pipe_size": "2",
                "pipe_length": "120 ft",
                "elbows": "6",
                "tees": "0",
                "dump_above": "3 ft",
                "altitude": "3,000 ft",
                "system_pressure": "12 psi",
                "store_top": "180 °F",
                "store_volume": "800 gal",
                "jacket_volume": "20 gal",
            },
        ),
        Example(
            "The same stove with radiators that are at hand",
            {
                "heat_known": "yes",
                "dump_heat": "42,000 Btu/h",
                "dump_question": "supply",
                "dump_kind": "radiator",
                "dump_size": "30,000 Btu/h",
                "dump_rated_excess": "90 F°",
            },
        ),
        Example("The same with finned pipe at hand", {"dump_question": "supply", "dump_size": "100 ft"}),
        Example("The peak and the hottest water are known", {"peak_output": "80,000 Btu/h", "dump_supply": "200 °F"}),
    ),
    sizes=tuple(
        Sizes(
            HEAT_DUMP,
            f"{{dump_size}}, {words}, for {{dump_heat}} by gravity; pipe of {{bore}} bore",
            "{dump_size}",
            ("dump",),
            only=("dump_kind", kind),
        )
        for kind, words in (
            ("finned-pipe", "finned pipe"),
            ("radiator", "radiator at {dump_rated_excess} over the air"),
            ("open-box", "open box at {dump_rated_excess} over the air"),
            ("slab", "slab at {dump_rated_excess} over the air"),
        )
    ),
    leaves_out=(
        "Heat lost by the pipes, which helps.",
        "Antifreeze: it flows worse, carries less and asks for a larger dump and a wider pipe.",
        "Air, dips, and whatever is in the way: no formula sees them.",
        "The iron of the stove, and heat that the room takes.",
        "Steam: once the water boils, nothing here holds.",
    ),
    follow=(
        Next("power-cut", "Minutes to boiling, and what the dump leaves to the water."),
        Next("gravity-loop", "What any loop moves with no pump."),
        Next("relief", "The last guard behind it."),
    ),
)
