"""How much antifreeze, and what does it cost?"""

from calc.chains.water_side import ALL_PIPES, ALL_PROPERTIES, FRICTION_STEPS, HEATING_PIPE, PIPE_FIELDS, fluid, pipe
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
    OnlyWith,
    Option,
    Picture,
    Result,
    Step,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import antifreeze, emitters, pipes, water
from calc.vocabulary import (
    ANTIFREEZE_KIND,
    DESIGN_LOAD,
    GLYCOL_VOLUME,
    PIPE_HEAT,
    PIPE_KIND,
    SUPPLY_WATER,
    WATER_DROP,
)

COLDEST = Field(
    "coldest",
    "temperature",
    "Lowest temperature of the pipes",
    "Outdoors, or in an empty house after days without heat.",
    low="-60 °F",
    high="40 °F",
    typical=Typical("0 °F", "common-practice", "-20 °F", "20 °F", "The design temperature where you live."),
)
TAP_SIDE = Field(
    "tap_side",
    "choice",
    "Does it also make tap water?",
    "What stands between this fluid and what people drink.",
    options=(
        Option("no", "no"),
        Option("double", "yes, through a double wall with its gap open to the air"),
        Option("single", "yes, through a single wall"),
    ),
)

# The same pipe with plain water, to see what the glycol costs.
_PLAIN = (
    Step("density_water", water.density, "Density of plain water there", temperature="mean_water"),
    Step("specific_heat_water", water.specific_heat, "Specific heat of plain water there", temperature="mean_water"),
    Step("viscosity_water", water.viscosity, "Viscosity of plain water there", temperature="mean_water"),
    Step(
        "capacity_water",
        pipes.volume_heat_capacity,
        "Heat in each volume of plain water",
        density="density_water",
        specific_heat="specific_heat_water",
    ),
    Step("flow_water", pipes.flow, "Flow of plain water", heat="pipe_heat", volume_heat_capacity="capacity_water"),
    Step("velocity_water", pipes.velocity, "Its speed", flow="flow_water"),
    Step(
        "reynolds_water",
        pipes.reynolds_number,
        "Its Reynolds number",
        density="density_water",
        velocity="velocity_water",
        viscosity="viscosity_water",
    ),
    Step("factor_water", pipes.friction_factor, "Its friction factor", reynolds_number="reynolds_water"),
    Step(
        "friction_water",
        pipes.friction,
        "Pressure it loses in each length",
        friction_factor="factor_water",
        density="density_water",
        velocity="velocity_water",
    ),
    Step(
        "pressure_drop_water",
        pipes.pressure_drop,
        "Pressure it loses around the loop",
        friction="friction_water",
        length="pipe_length",
        density="density_water",
        velocity="velocity_water",
    ),
)

WORKSHEET = Worksheet(
    key="antifreeze",
    guide="antifreeze",
    question="How much antifreeze, and what does it cost?",
    short="Freezing and burst points, glycol to buy, and the flow and pumping it costs.",
    apart=HEATING_PIPE,
    other_names={"other_volume": ("glycol_volume",)},
    fields=(
        ANTIFREEZE_KIND.offering("propylene", "ethylene"),
        COLDEST,
        TAP_SIDE,
        GLYCOL_VOLUME,
        DESIGN_LOAD,
        SUPPLY_WATER,
        WATER_DROP,
        PIPE_KIND,
        *PIPE_FIELDS,
        PIPE_HEAT,
    ),
    givens=(
        Given(
            "freeze_margin",
            "temperature_difference",
            "Margin worth keeping to the freezing point",
            "10 F°",
            "glycol-burst",
        ),
        Given("thin", "fraction", "Share under which its inhibitors are too thin", "25 %", "glycol-share"),
        Given("thick", "fraction", "Share above which it is thick and gains little", "50 %", "glycol-share"),
    ),
    cases=(
        Cases(
            "antifreeze_kind",
            propylene=Case(
                steps=(
                    Step("freezing_point", antifreeze.propylene_freezing_point, "Freezing point, first ice crystals"),
                    Step("burst_point", antifreeze.propylene_burst_point, "Burst point", volume_fraction="antifreeze"),
                ),
            ),
            ethylene=Case(
                steps=(
                    Step("freezing_point", antifreeze.ethylene_freezing_point, "Freezing point, first ice crystals"),
                    Step("burst_point", antifreeze.ethylene_burst_point, "Burst point", volume_fraction="antifreeze"),
                ),
            ),
        ),
        fluid(("", "mean_water", "at the mean of supply and return", ALL_PROPERTIES)),
        pipe(ALL_PIPES),
    ),
    steps=(
        Step(
            "return_temperature", emitters.return_water, "Water coming back", supply="supply_water", drop="water_drop"
        ),
        Step(
            "mean_water",
            emitters.mean_of,
            "Mean of supply and return",
            supply="supply_water",
            return_water="return_temperature",
        ),
        Step("volume_heat_capacity", pipes.volume_heat_capacity, "Heat in each volume of the mixture"),
        Step("flow", pipes.flow, "Flow needed with the mixture", heat="pipe_heat"),
        *FRICTION_STEPS,
        *_PLAIN,
        Step(
            "heat_capacity_lost",
            antifreeze.heat_capacity_lost,
            "Heat carried less",
            mixture_heat_capacity="volume_heat_capacity",
            water_heat_capacity="capacity_water",
        ),
        Step(
            "extra_flow", pipes.extra_flow, "Extra flow for the same heat", mixture_flow="flow", water_flow="flow_water"
        ),
        Step(
            "extra_pressure_drop",
            pipes.extra_pressure_drop,
            "Extra pump head",
            mixture_pressure_drop="pressure_drop",
            water_pressure_drop="pressure_drop_water",
        ),
        Step(
            "glycol_needed",
            antifreeze.glycol_needed,
            "Glycol needed",
            volume_fraction="antifreeze",
            system_volume="glycol_volume",
        ),
    ),
    results=(
        Result(
            "freezing_point",
            "Freezing point, first ice crystals",
            "The mixture turns to slush there and no pump moves it.",
        ),
        Result("burst_point", "Burst point", "A table read cautiously: the slush sets hard there."),
        Result(
            "mass_fraction", "Concentration by mass", "Tables of properties go by mass; labels and testers by volume."
        ),
        Result(
            "glycol_needed",
            "Glycol needed",
            "Of {glycol_volume}; the store itself is left to plain water behind an exchanger.",
        ),
        Result("extra_flow", "Extra flow for the same heat", figures=2),
        Result("extra_pressure_drop", "Extra pump head", figures=2),
        Result("heat_capacity_lost", "Heat capacity lost", figures=2),
        Result("flow", "Flow needed with the mixture", "At {mean_water}."),
        Result("head", "Pump head with the mixture"),
    ),
    headline="freezing_point",
    say="Pipes burst below {burst_point}.",
    advice=(
        Advice(
            "stop",
            "poison",
            "antifreeze_kind == 'ethylene' and tap_side == 'single'",
            "Poison behind a single wall.",
            "A pinhole would put ethylene glycol into the taps. Use propylene glycol and a double wall, as the plumbing code "
            "says, or keep this fluid away from tap water.",
            "backflow-codes",
        ),
        Advice(
            "caution",
            "single-wall",
            "antifreeze_kind == 'propylene' and tap_side == 'single'",
            "Most codes ask for a double wall.",
            "The glycol itself is of food grade, its inhibitors may not be. Ask the plumbing inspector before you fill.",
            "backflow-codes",
        ),
        Advice(
            "caution",
            "poison-kept-apart",
            "antifreeze_kind == 'ethylene' and tap_side != 'single'",
            "Ethylene glycol is poisonous.",
            "It tastes sweet and kills people and pets. In a house propylene glycol is the usual choice; label the filling.",
            weight=3,
        ),
        Advice(
            "caution",
            "slush",
            "freezing_point > coldest and burst_point <= coldest",
            "It turns to slush in your cold.",
            "First ice comes at {freezing_point}, and the pipes may see {coldest}. They stay whole down to {burst_point}, but "
            "nothing circulates: never light the stove until it has thawed.",
            "glycol-burst",
        ),
        Advice(
            "caution",
            "near-slush",
            "freezing_point <= coldest and freezing_point > coldest - freeze_margin",
            "Little margin to slush.",
            "First ice comes at {freezing_point} and the pipes may see {coldest}. Fluids as sold may freeze up to "
            "{freeze_margin} earlier than the pure mixture: test yours, and keep that much.",
            "glycol-burst",
        ),
        Advice(
            "stop",
            "bursts",
            "burst_point > coldest",
            "The pipes burst in your cold.",
            "This share protects them down to {burst_point} and they may see {coldest}. Lighting a fire over a frozen or "
            "split jacket has killed people. Add glycol, or drain what can freeze.",
            "glycol-burst",
        ),
        Advice(
            "caution",
            "thin",
            "antifreeze < thin",
            "Too thin to protect the metal.",
            "Below {thin} the inhibitors are too dilute and germs live on the glycol. Mix at least {thin}, or use none.",
            "glycol-share",
        ),
        Advice(
            "note",
            "thick",
            "antifreeze > thick",
            "More than you gain by.",
            "Above {thick} it gets thick and carries less heat: {extra_pressure_drop} more head already.",
            "glycol-share",
        ),
        Advice(
            "note",
            "test",
            "antifreeze > 0",
            "Test it every year.",
            "Heat turns glycol acid. A refractometer shows its freezing point, a strip its pH. When it is brown, or its pH is "
            "below what its maker asks, it eats the stove.",
        ),
    ),
    meaning=(
        "Freezing and bursting are two points. Above the first the plant runs; between the two it stands still and stays "
        "whole; below the second it breaks. A stove that may be lit at any time needs the first.",
    ),
    picture=Picture(
        "ice",
        "A bar that ends before the dashed line is too short for your cold.",
        {
            "ice": "freezing_point",
            "burst": "burst_point",
            "coldest": "coldest",
        },
    ),
    chart=Chart(
        "Freezing and burst points by share",
        across="antifreeze",
        low="10 %",
        high="55 %",
        lines=(Line("freezing_point", "first ice", "limit"), Line("burst_point", "pipes burst", "fire")),
        say="At {antifreeze} the first ice comes at {freezing_point}.",
    ),
    tables=(
        Comparison(
            "Other shares in the same loop",
            rows=(
                Variant("20 %", {"antifreeze": "20 %"}),
                Variant("30 %", {"antifreeze": "30 %"}),
                Variant("40 %", {"antifreeze": "40 %"}),
                Variant("50 %", {"antifreeze": "50 %"}),
            ),
            show=("freezing_point", "burst_point", "extra_flow", "extra_pressure_drop"),
        ),
    ),
    examples=(
        Example(
            "Ridge Road: the loop to the barn",
            {
                "antifreeze_kind": "propylene",
                "antifreeze": "40 %",
                "coldest": "-5 °F",
                "tap_side": "no",
                "glycol_volume": "60 gal",
                "design_load": "32,500 Btu/h",
                "supply_water": "160 °F",
                "water_drop": "20 F°",
                "pipe_kind": "copper-m",
                "pipe_size": "1",
                "pipe_length": "200 ft",
                "elbows": "14",
                "tees": "4",
                "valves": "4",
            },
        ),
    ),
    in_record=OnlyWith(ANTIFREEZE_KIND, ("propylene", "ethylene")),
    leaves_out=(
        "Inhibitors and water in the jar: buy by the maker's table, and check with a refractometer.",
        "Published fits of ethylene glycol's freezing point differ by up to 10 °F (6 K) at 50 %; this one is the coldest of them.",
        "Poorer heat transfer in coils and exchangers.",
    ),
    follow=(
        Next("expansion", "Glycol grows more than water."),
        Next("buried-pipe", "Hours to freezing without it."),
        Next("pipe", "The whole loop with it."),
    ),
)
