"""Two tanks or one: what do several tanks hold, who gets the flow, and what do they lose?"""

from calc.chains import outlet
from calc.chains.water_side import METAL_PIPE_KIND, METAL_PIPES, pipe, pipe_of
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
    Pick,
    Picture,
    Result,
    Sizes,
    Step,
    Suits,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import emitters, gravity, pipes, store, tanks, water
from calc.plant import STORE
from calc.vocabulary import (
    CONDUCTIVITY,
    DESIGN_LOAD,
    EXCHANGER_APPROACH,
    FITTINGS,
    INDOOR,
    INSULATION,
    INSULATION_KIND,
    LOAD,
    LOWEST_USEFUL,
    SLENDERNESS,
    STORE_SURROUNDINGS,
    STORE_TOP,
    TANK_COUNT,
    WATER_DROP,
)

TANK_VOLUME = Field(
    "tank_volume",
    "volume",
    "Volume of each tank",
    "Water only; it stands on the tank's label.",
    low="5 gal",
    high="20,000 gal",
)
JOINED = Field(
    "joined",
    "choice",
    "How the tanks are joined",
    "In series the water passes one after the other; in parallel each gets a part of it.",
    options=(Option("series", "in series"), Option("parallel", "in parallel")),
)
POSITION = Field(
    "position",
    "choice",
    "How the tanks stand",
    "A tank that lies has little height, and height is what keeps hot water over cool.",
    options=(Option("upright", "upright"), Option("horizontal", "lying on their sides", also=("horizontal",))),
)
DIFFUSER = Field(
    "diffuser",
    "choice",
    "Diffuser at the inlets",
    "A wide pipe with many holes, or a plate, that lets the water in slowly and level.",
    options=(Option("none", "none, plain pipe"), Option("diffuser", "yes")),
)
FLOW_KNOWN = Field(
    "draw_known",
    "choice",
    "What you know of the flow",
    "All that is drawn from the tanks together.",
    options=(Option("no", "the load and the drop"), Option("yes", "the flow")),
    unless_given="no",
)
FLOW = Field(
    "flow",
    "flow",
    "Flow drawn from the store",
    "Through all the tanks together.",
    low="0.05 gal/min",
    high="200 gal/min",
    uncertainty="15 %",
)
BETWEEN_TANKS = Field(
    "between_tanks",
    "length",
    "Pipe from one tank to the next",
    "From the bottom of one to the top of the next.",
    low="1 ft",
    high="200 ft",
    us="ft",
    si="m",
    typical=Typical("8 ft", "common-practice", "4 ft", "15 ft", "A tape measure."),
)
NEAREST_BRANCH = Field(
    "nearest_branch",
    "length",
    "Pipe of the nearest tank, there and back",
    "From the last tee that all share, through the tank, to the first tee that all share again.",
    low="1 ft",
    high="500 ft",
    us="ft",
    si="m",
    typical=Typical("6 ft", "common-practice", "3 ft", "15 ft", "A tape measure."),
)
FARTHEST_BRANCH = Field(
    "farthest_branch",
    "length",
    "Pipe of the farthest tank, there and back",
    "The same as that of the nearest where supply and return come from opposite ends.",
    low="1 ft",
    high="500 ft",
    us="ft",
    si="m",
    typical=Typical("16 ft", "common-practice", "6 ft", "40 ft", "A tape measure."),
)
BRANCH_LOSSES = Field(
    "branch_losses",
    "factor",
    "Sum of the K factors of each tank's fittings",
    "Elbows 0.9 each, tees 1.6, and 1.5 for going into and out of a tank.",
    low="0",
    high="500",
    unless_given="6",
)


def _loss(which: str, volume: str, words: str) -> tuple[Step, ...]:
    """What one tank of this volume loses, by its shape and its blanket."""
    wide, high = f"wide_{which}", f"high_{which}"
    shell = {"diameter": wide}
    return (
        Step(wide, store.cylinder_diameter, f"Width of {words}", volume=volume),
        Step(high, store.cylinder_height, f"Height of {words}", volume=volume, diameter=wide),
        Step(f"side_{which}", store.side_conductance, f"Through the side of {words}", height=high, **shell),
        Step(f"ends_{which}", store.ends_conductance, f"Through the ends of {words}", **shell),
        Step(
            f"conductance_{which}",
            store.shell_conductance,
            f"Loss of {words} for each degree",
            side=f"side_{which}",
            ends=f"ends_{which}",
        ),
        Step(
            f"loss_{which}",
            store.standby_loss,
            f"Standby loss of {words}",
            conductance=f"conductance_{which}",
            store_temperature="store_top",
            surroundings="store_surroundings",
        ),
    )


def _branch(which: str, words: str, flow: str, length: str, losses: str) -> tuple[Step, ...]:
    """Friction along a way through the tanks."""
    end = f"_{which}"
    return (
        Step(f"velocity{end}", pipes.velocity, f"Velocity {words}", flow=flow),
        Step(f"reynolds{end}", pipes.reynolds_number, f"Reynolds number {words}", velocity=f"velocity{end}"),
        Step(f"factor{end}", pipes.friction_factor, f"Friction factor {words}", reynolds_number=f"reynolds{end}"),
        Step(
            f"friction{end}",
            pipes.friction,
            f"Pressure lost in each length {words}",
            friction_factor=f"factor{end}",
            velocity=f"velocity{end}",
        ),
        Step(
            f"pressure{end}",
            pipes.pressure_drop,
            f"Pressure drop {words}",
            friction=f"friction{end}",
            length=length,
            fittings_loss=losses,
            velocity=f"velocity{end}",
            other_pressure="no_other",
        ),
    )


SERIES = Case(
    fields=(BETWEEN_TANKS,),
    steps=(
        Step("row_length", tanks.length_of_all, "Pipe along the row", length_of_each="between_tanks"),
        Step("row_losses", tanks.fittings_of_all, "Losses of all fittings along it", loss_of_each="branch_losses"),
        *_branch("row", "along the row", "flow", "row_length", "row_losses"),
        Step("speed_in", tanks.inlet_velocity, "Speed at which water enters a tank", velocity="velocity_row"),
        Step("drawn_share", tanks.series_delivered, "Share of it drawn before the water is too cool"),
    ),
)
PARALLEL = Case(
    fields=(NEAREST_BRANCH, FARTHEST_BRANCH),
    steps=(
        Step("near_bores", gravity.length_in_bores, "Nearest branch in bores", length="nearest_branch"),
        Step("far_bores", gravity.length_in_bores, "Farthest branch in bores", length="farthest_branch"),
        Step("velocity_whole", pipes.velocity, "Velocity if all of it went through one branch", flow="flow"),
        Step(
            "whole_reynolds",
            pipes.reynolds_number,
            "Reynolds number if all of it went through one branch",
            velocity="velocity_whole",
        ),
        Step("nearest_share", tanks.nearest_share, "Share of the flow through the nearest tank"),
        Step("farthest_share", tanks.farthest_share, "Share of the flow through the farthest tank"),
        Step("flow_near", tanks.part_of_flow, "Flow through the nearest tank", share="nearest_share"),
        Step("flow_far", tanks.part_of_flow, "Flow through the farthest tank", share="farthest_share"),
        *_branch("near", "in the nearest branch", "flow_near", "nearest_branch", "branch_losses"),
        *_branch("far", "in the farthest branch", "flow_far", "farthest_branch", "branch_losses"),
        Step("speed_in", tanks.inlet_velocity, "Speed at which water enters a tank", velocity="velocity_near"),
        Step("drawn_share", tanks.parallel_delivered, "Share of it drawn before the water is too cool"),
        Step("layered_share", tanks.layered_share, "Share drawn when the first tank gives cool water"),
    ),
)


def _calm(height: str) -> Case:
    label = "Richardson number at the inlets"
    return Case(steps=(Step("richardson", tanks.richardson, label, inlet_velocity="speed_in", height=height),))


WORKSHEET = Worksheet(
    key="tanks-together",
    guide="tanks",
    question="Several tanks or one?",
    short="What tanks in series or in parallel hold, how evenly they are drawn from, and what one larger tank saves.",
    apart=pipe_of("branch", "a tank's branch"),
    fields=(
        TANK_COUNT,
        TANK_VOLUME,
        JOINED,
        POSITION,
        DIFFUSER,
        STORE_TOP,
        LOWEST_USEFUL,
        DESIGN_LOAD,
        WATER_DROP,
        FLOW_KNOWN,
        METAL_PIPE_KIND.but(
            hint="Between the tanks; metal, as all of it is hot.",
        ),
        BRANCH_LOSSES,
        INSULATION,
        INSULATION_KIND,
        CONDUCTIVITY,
        SLENDERNESS,
        STORE_SURROUNDINGS,
        *outlet.FIELDS,
        LOAD,
        INDOOR.but(unless_given="68 °F"),
        EXCHANGER_APPROACH,
        FITTINGS.but(
            hint="1 for the bare blanket. Each tank brings pipes and legs of its own.", unless_given="1", typical=None
        ),
    ),
    givens=(
        *outlet.GIVENS,
        Given("film", "conductance_per_area", "Heat from the outside surface to the air", "8.5 W/(m²·K)", "tank-film"),
        Given("no_standby", "power", "Heat lost besides the load", "0 Btu/h", "definition"),
        Given("no_other", "pressure_difference", "No other pressure counted", "0 psi", "definition"),
        Given("calm", "factor", "Richardson number over which layers hold", "10", "richardson"),
    ),
    cases=(
        Cases(
            "draw_known",
            no=Case(
                steps=(
                    Step(
                        "flow",
                        pipes.flow,
                        "Flow drawn from the store",
                        heat="load",
                        water_drop="drop_then",
                    ),
                ),
            ),
            yes=Case(fields=(FLOW,), decides=True),
        ),
        Cases("joined", series=SERIES, parallel=PARALLEL),
        Cases("position", upright=_calm("high_each"), horizontal=_calm("wide_each")),
        pipe(METAL_PIPES),
    ),
    steps=(
        *outlet.STEPS,
        Step("store_volume", tanks.volume_of_all, "Store volume", volume_of_each="tank_volume"),
        Step("charged_top", store.charged_top, "Hottest water in the store"),
        Step("drop_then", store.drop_at_load, "Temperature drop at this load"),
        Step(
            "emitter_return", store.return_temperature, "Water that comes back from the emitter", water_drop="drop_then"
        ),
        Step(
            "heat_content",
            water.mean_volume_heat_content,
            "Heat in each volume and degree, lowest useful to top",
            low="lowest_useful",
            top="charged_top",
        ),
        Step(
            "usable_heat",
            store.usable_heat,
            "Usable heat, mixed store",
            volume="store_volume",
            top="charged_top",
            low="lowest_useful",
        ),
        Step(
            "heat_content_layered",
            water.mean_volume_heat_content,
            "Heat in each volume and degree, return to top",
            low="emitter_return",
            top="charged_top",
        ),
        Step(
            "usable_heat_layered",
            store.usable_heat,
            "Usable heat, layered store",
            volume="store_volume",
            heat_content="heat_content_layered",
            top="charged_top",
            low="emitter_return",
        ),
        Step(
            "end_share",
            tanks.end_share,
            "The last useful water, as a share of the hottest over the return",
            return_water="emitter_return",
            top="charged_top",
        ),
        Step(
            "usable_heat_joined",
            store.part_of_heat,
            "Usable heat, each tank mixed and joined like this",
            share="drawn_share",
            heat="usable_heat_layered",
        ),
        *(
            Step(key, store.hours_carried, f"Hours carried, {words}", heat=heat, standby_loss="no_standby")
            for key, words, heat in (
                ("hours_carried", "mixed store", "usable_heat"),
                ("hours_carried_layered", "layered store", "usable_heat_layered"),
                ("hours_carried_joined", "joined like this", "usable_heat_joined"),
            )
        ),
        Step(
            "flow_mean", emitters.mean_of, "Mean of top and return", supply="charged_top", return_water="emitter_return"
        ),
        Step("density", water.density, "Density at the mean", temperature="flow_mean"),
        Step("specific_heat", water.specific_heat, "Specific heat at the mean", temperature="flow_mean"),
        Step("viscosity", water.viscosity, "Viscosity at the mean", temperature="flow_mean"),
        Step("volume_heat_capacity", pipes.volume_heat_capacity, "Heat that each volume carries for each degree"),
        Step("relative_roughness", pipes.relative_roughness, "Roughness over bore"),
        Step("warm_density", water.density, "Density of the hottest water", temperature="charged_top"),
        Step("cool_density", water.density, "Density of the return", temperature="emitter_return"),
        Pick(
            "spread",
            "factor",
            "Inlet over pipe, in area",
            "diffuser",
            {"none": "1", "diffuser": "10"},
            "common-practice",
        ),
        *_loss("each", "tank_volume", "each tank"),
        *_loss("one", "store_volume", "one tank of the same water"),
        Step("loss_together", tanks.loss_of_all, "Standby loss of all", loss_of_each="loss_each"),
        Step(
            "loss_ratio",
            tanks.loss_ratio,
            "Times as much as one tank",
            loss_of_all="loss_together",
            loss_of_one="loss_one",
        ),
        Step(
            "loss_saved",
            tanks.loss_saved,
            "Heat that one larger tank would keep",
            loss_of_all="loss_together",
            loss_of_one="loss_one",
        ),
        Step("surface_factor", tanks.surface_factor, "Times as much surface"),
    ),
    results=(
        Result(
            "usable_heat",
            "Usable heat, mixed store",
            "All {store_volume} cool evenly from {charged_top} to {lowest_useful}.",
        ),
        Result("hours_carried", "Hours it carries the load, mixed store", "At {load}.", figures=2),
        Result(
            "usable_heat_joined",
            "Usable heat, joined like this",
            "Each tank mixed in itself, and drawn from until the water is cooler than {lowest_useful}.",
        ),
        Result("hours_carried_joined", "Hours it carries the load, joined like this", figures=2),
        Result(
            "usable_heat_layered",
            "Usable heat, layered store",
            "The best case: every tank keeps its hot water over its cool, down to a return of {emitter_return}.",
        ),
        Result("hours_carried_layered", "Hours it carries the load, layered store", figures=2),
        Result("flow", "Flow drawn from the store"),
        Result("nearest_share", "Share of the flow through the nearest tank", only=("joined", "parallel")),
        Result(
            "farthest_share",
            "Share of the flow through the farthest tank",
            "Those between lie between.",
            only=("joined", "parallel"),
        ),
        Result(
            "layered_share",
            "Share of a layered store drawn when the first tank gives cool water",
            only=("joined", "parallel"),
        ),
        Result("pressure_near", "Pressure drop of each branch", only=("joined", "parallel"), us="psi", si="Pa"),
        Result("pressure_row", "Pressure drop along the row", only=("joined", "series"), us="psi", si="Pa"),
        Result("richardson", "Richardson number at the inlets", "Over about ten the layers hold.", figures=2),
        Result("loss_together", "Standby loss of all", "At {store_top} in {store_surroundings}."),
        Result("loss_one", "Standby loss of one tank of the same water", "The same shape, the same blanket."),
        Result("loss_ratio", "Times as much as one tank"),
        Result("surface_factor", "Times as much surface", "The cube root of the number of tanks."),
        Result("store_volume", "Store volume"),
        Result("high_each", "Height of each tank, or its length if it lies"),
        Result("wide_each", "Width of each tank"),
        outlet.RESULT,
    ),
    headline="usable_heat",
    say="They lose {loss_ratio} times what one would.",
    advice=(
        *outlet.ADVICE,
        Advice(
            "unworkable",
            "no-band",
            "lowest_useful >= charged_top",
            "Nothing in these tanks is warm enough.",
            "What draws on it needs {lowest_useful}, and it is never hotter than {charged_top}.",
            zeroes=(
                "usable_heat",
                "usable_heat_layered",
                "usable_heat_joined",
                "hours_carried",
                "hours_carried_layered",
                "hours_carried_joined",
            ),
        ),
        Advice(
            "caution",
            "uneven",
            "nearest_share > 1.1 * farthest_share or farthest_share > 1.1 * nearest_share",
            "The tanks are not drawn from evenly.",
            "{nearest_share} of the flow take the nearest way and {farthest_share} the farthest. Bring supply and return "
            "in from opposite ends, so that every way is equally long.",
        ),
        Advice(
            "caution",
            "stirred",
            "richardson < calm",
            "The inlets stir these tanks.",
            "Water enters at {speed_in}, and the Richardson number is {richardson}: count on a mixed store. A diffuser, a "
            "wider pipe or less flow helps.",
            "richardson",
        ),
        Advice(
            "caution",
            "lying",
            "position == 'horizontal'",
            "A tank that lies keeps its layers poorly.",
            "It is {wide_each} high instead of {high_each}, and the wide water in its middle mixes easily. Count on little "
            "more than the mixed figure.",
        ),
        Advice(
            "caution",
            "shut-off",
            "tank_count > 1",
            "No tank may be shut off from its guards.",
            "Valves between the tanks look handy. A tank that can be shut off while it is hot needs a relief valve and an "
            "expansion tank of its own.",
            "common-practice",
        ),
        Advice(
            "note",
            "one-larger",
            "tank_count > 1",
            "One larger tank is better where it fits.",
            "It would keep {loss_saved} more, cost fewer fittings and stand in layers by itself. Take several where one "
            "does not pass the door, or where they are at hand.",
        ),
        Advice(
            "note",
            "in-series",
            "joined == 'series' and tank_count > 1",
            "A row of tanks keeps its heat in order.",
            "Even if each is mixed, it gives {usable_heat_joined} instead of {usable_heat}. All of the flow passes every "
            "tank, so the pipe must be wide.",
        ),
        Advice(
            "note",
            "in-parallel",
            "joined == 'parallel' and tank_count > 1",
            "In parallel each tank sees a part of the flow.",
            "That is calm, and it takes little pressure. But mixed tanks in parallel are one mixed tank.",
        ),
    ),
    meaning=(
        "The water counts, not the number of tanks. What the number changes is the surface that loses heat, how evenly the "
        "tanks are drawn from, and whether hot and cool water stay apart.",
    ),
    picture=Picture(
        "rows",
        "Two tanks stand for any number. Both ways are shown while they charge; hatched is hot.",
        {"said": "joined", "heat": "usable_heat_joined"},
    ),
    chart=Chart(
        "Usable heat by the number of tanks of this size",
        across="tank_count",
        low="1",
        high="6",
        lines=(
            Line("usable_heat", "mixed", "tank"),
            Line("usable_heat_joined", "joined like this", "fire"),
            Line("usable_heat_layered", "layered", "use"),
        ),
        say="With {tank_count} tanks it is {usable_heat} mixed and {usable_heat_layered} layered.",
        points=6,
        us="kBtu",
        si="kWh",
    ),
    tables=(
        Comparison(
            "The same tanks with one thing changed",
            rows=(
                Variant("Yours", {}),
                Variant("Twice as many", {"tank_count": "x2"}),
                Variant("Each twice as large", {"tank_volume": "x2"}),
                Variant("8 in (203 mm) of insulation", {"insulation": "8 in"}),
                Variant("Half the load", {"load": "x0.5"}),
            ),
            show=("usable_heat", "usable_heat_joined", "usable_heat_layered", "richardson", "loss_together"),
        ),
    ),
    examples=(
        Example(
            "Ridge Road: two tanks in parallel instead of one large one",
            {
                "tank_count": "2",
                "tank_volume": "400 gal",
                "joined": "parallel",
                "position": "upright",
                "diffuser": "none",
                "store_top": "185 °F",
                "lowest_useful": "130 °F",
                "design_load": "32,500 Btu/h",
                "water_drop": "20 F°",
                "draw_known": "no",
                "pipe_kind": "copper-l",
                "pipe_size": "1",
                "nearest_branch": "6 ft",
                "farthest_branch": "16 ft",
                "insulation": "4 in",
                "insulation_kind": "mineral-wool",
                "conductivity": "0.25 Btuin/h/ft2/F",
                "slenderness": "1.5",
                "store_surroundings": "40 °F",
                "altitude": "3,000 ft",
                "system_pressure": "12 psi",
                "charge_rise": "25 F°",
            },
        ),
        Example(
            "The same in series, lying, with diffusers",
            {
                "joined": "series",
                "position": "horizontal",
                "diffuser": "diffuser",
                "between_tanks": "8 ft",
                "flow": "4 gal/min",
            },
        ),
    ),
    sizes=(
        Sizes(
            STORE,
            "{tank_volume} each, {joined}: {usable_heat} from {lowest_useful} to {store_top}",
            "{tank_volume}",
            ("first-tank", "second-tank"),
            quantity="{tank_count}",
            instead=True,
        ),
    ),
    suits=(
        Suits("two-tanks", "joined == 'series' and tank_count > 1"),
        Suits("tanks-side-by-side", "joined == 'parallel' and tank_count > 1"),
    ),
    in_record=OnlyWith(JOINED, ("series", "parallel")),
    leaves_out=(
        "Tanks of different sizes, or joined in some third way.",
        "Heat that pipes between the tanks lose, and what creeps from one tank into the other while nothing flows.",
        "The pipe that all tanks share: it slows them all alike.",
        "How one tank is layered in itself: that lies between mixed and layered.",
    ),
    follow=(
        Next("stored-heat", "The same heat in one tank, and what else it can serve."),
        Next("standby", "What a tank loses, with pipes and legs."),
        Next("tank-place", "Whether the one large tank would pass the door."),
    ),
)
