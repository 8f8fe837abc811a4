"""Mixing hot store water down: how much of it is hot, what flows where, and what happens if the valve fails."""

from calc.chains import outlet
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
from calc.engine.recorded import Apart
from calc.physics import mixing, pipes, water
from calc.plant import TEMPERING_VALVE
from calc.vocabulary import COLD_WATER, INDOOR, LOAD, STORE_TOP

MIX_PURPOSE = Field(
    "mix_purpose",
    "choice",
    "What the mixed water is for",
    "",
    options=(Option("floor", "a warm floor or other cool emitters"), Option("tap", "hot taps")),
)
MIXED_WANTED = Field(
    "mixed_wanted",
    "temperature",
    "Mixed water temperature wanted",
    "What leaves the mixing valve.",
    low="70 °F",
    high="200 °F",
    uncertainty="3 F°",
    typical=Typical(
        {"floor": "105 °F", "tap": "120 °F"},
        "mixed-custom",
        {"floor": "90 °F", "tap": "110 °F"},
        {"floor": "120 °F", "tap": "125 °F"},
        "The floor worksheet, or a thermometer at the tap.",
        on="mix_purpose",
    ),
)
FLOOR_RETURN = Field(
    "floor_return",
    "temperature",
    "Return temperature of the floor",
    "Supply less the drop; it is mixed in again.",
    low="50 °F",
    high="180 °F",
    uncertainty="3 F°",
    typical=Typical("95 °F", "mixed-custom", "85 °F", "105 °F", "A thermometer on the return pipe."),
)
MIXED_FLOW = Field(
    "mixed_flow",
    "flow",
    "Mixed water flow",
    "Through the whole floor, or out of all open taps.",
    low="0.1 gpm",
    high="200 gpm",
    uncertainty="10 %",
    typical=Typical(
        {"floor": "3 gpm", "tap": "2.5 gpm"},
        "mixed-custom",
        {"floor": "2 gpm", "tap": "1.5 gpm"},
        {"floor": "5 gpm", "tap": "5 gpm"},
        "A bucket and a watch at the tap; the floor worksheet.",
        on="mix_purpose",
    ),
)
FLOW_KNOWN = Field(
    "flow_known",
    "choice",
    "What you know of the mixed flow",
    "",
    options=(Option("flow", "the flow itself"), Option("load", "the heat that it must bring")),
    unless_given="flow",
)
MIX_LOAD = LOAD.but(hint="What the floor gives and loses, or what the open taps take.", same_as="")


def _mixed_with(cool: str) -> tuple[Step, ...]:
    """The steps of mixing with the water of the field `cool`."""
    return (
        Step("wanted_rise", mixing.rise_over_cold, "Mixed water over cool water", water="mixed_wanted", cold=cool),
        Step("hot_rise", mixing.rise_over_cold, "Hot water over cool water", water="store_top", cold=cool),
        Step("cool_density", water.density, "Weight of each volume of cool water", temperature=cool),
        Step("delivered", mixing.mixed_temperature, "Mixed water temperature", hot="store_top", cold=cool),
        Step(
            "failed_open",
            mixing.mixed_temperature,
            "Temperature if the valve fails wide open",
            hot_share="wide_open",
            hot="store_top",
            cold=cool,
        ),
    )


WORKSHEET = Worksheet(
    key="tempering",
    guide="emitters",
    question="How much hot water goes into the mix, and what if the valve fails?",
    short="Shares and flows at a mixing valve, and what a failed valve does.",
    # What a floor takes with what it loses, or what open taps take, is no load of the house.
    apart=Apart("mixed", "mixed water", (MIX_LOAD.key,), always=True),
    fields=(MIX_PURPOSE, STORE_TOP, MIXED_WANTED, FLOW_KNOWN, *outlet.FOLDED),
    givens=(
        Given("wide_open", "fraction", "Share of hot water with the valve wide open", "100 %", "definition"),
        Given("scald_minutes", "temperature", "Water that burns skin in minutes", "120 °F", "scald-cpsc"),
        Given("scald_half_minute", "temperature", "Water that burns skin in half a minute", "130 °F", "scald-cpsc"),
        Given("limit_margin", "temperature_difference", "Margin of the second thermostat", "15 F°", "mixed-custom"),
        Given("screed_limit", "temperature", "Warmest water for a slab with pipes", "131 °F", "en-1264-4"),
        Given("plastic_limit", "temperature", "Warmest water for PEX at 100 psi", "180 °F", "pex-limits"),
        *outlet.GIVENS,
    ),
    cases=(
        Cases(
            "mix_purpose",
            floor=Case(
                fields=(FLOOR_RETURN, INDOOR),
                steps=(
                    *_mixed_with("floor_return"),
                    Step(
                        "overheat_factor",
                        mixing.overheat_factor,
                        "Floor output then, times the design output",
                        hot="failed_open",
                        wanted="mixed_wanted",
                    ),
                    Step(
                        "floor_limit",
                        mixing.high_limit,
                        "Set a second thermostat at",
                        wanted="mixed_wanted",
                        margin="limit_margin",
                        most="screed_limit",
                    ),
                ),
            ),
            tap=Case(fields=(COLD_WATER,), steps=_mixed_with("cold_water")),
        ),
        Cases(
            "flow_known",
            flow=Case(fields=(MIXED_FLOW,)),
            load=Case(
                fields=(MIX_LOAD,),
                steps=(
                    Step("mixed_heat", water.specific_heat, "Specific heat of mixed water", temperature="mixed_wanted"),
                    Step(
                        "mixed_content",
                        pipes.volume_heat_capacity,
                        "Heat in each volume and degree of mixed water",
                        density="mixed_density",
                        specific_heat="mixed_heat",
                    ),
                    Step(
                        "mixed_flow",
                        pipes.flow,
                        "Flow of mixed water",
                        heat="load",
                        water_drop="wanted_rise",
                        volume_heat_capacity="mixed_content",
                    ),
                ),
                decides=True,
            ),
        ),
    ),
    steps=(
        Step("hot_share", mixing.hot_share, "Share of hot water, by mass"),
        Step("cold_share", mixing.cold_share, "Share of cool water, by mass"),
        Step("hot_density", water.density, "Weight of each volume of hot water", temperature="store_top"),
        Step("mixed_density", water.density, "Weight of each volume of mixed water", temperature="delivered"),
        Step(
            "hot_share_volume", mixing.hot_share_by_volume, "Share of hot water, by volume", cold_density="cool_density"
        ),
        Step("hot_flow", mixing.part_flow, "Flow of hot water", share="hot_share", density="hot_density"),
        Step("cool_flow", mixing.part_flow, "Flow of cool water", share="cold_share", density="cool_density"),
        *outlet.STEPS,
    ),
    results=(
        Result(
            "hot_share",
            "Share of hot water, by mass",
            "With the store at {store_top}; it grows as the store cools.",
        ),
        Result(
            "hot_share_volume",
            "Share of hot water, by volume",
            "As two flow meters would show it: hot water is lighter.",
        ),
        Result("mixed_flow", "Total flow of mixed water", "Measured as it leaves the valve."),
        Result("hot_flow", "Flow of hot water", "Drawn from the store, measured hot."),
        Result("cool_flow", "Flow of cool water", "Measured cool."),
        Result("delivered", "Mixed water temperature"),
        Result("failed_open", "Temperature if the valve fails wide open"),
        Result(
            "overheat_factor",
            "Floor output then, times the design output",
            "After some hours with the valve open and the pump running.",
            figures=2,
        ),
        Result(
            "floor_limit",
            "Highest setting of the high limit",
            "It stops the floor's pump and stays off until someone resets it.",
        ),
        outlet.RESULT,
    ),
    headline="hot_share",
    say="That is {hot_flow} from the store.",
    musts=(
        Must(
            "mixed_wanted > floor_return",
            "mixed_wanted",
            "Mixed water temperature wanted must be higher than the return temperature of the floor.",
        ),
        Must(
            "store_top > floor_return",
            "store_top",
            "Store temperature when fully charged must be higher than the return temperature of the floor.",
        ),
        Must(
            "mixed_wanted > indoor",
            "mixed_wanted",
            "Mixed water temperature wanted must be higher than the room temperature.",
        ),
        Must(
            "mixed_wanted > cold_water",
            "mixed_wanted",
            "Mixed water temperature wanted must be higher than the cold water temperature.",
        ),
        Must(
            "store_top > cold_water",
            "store_top",
            "Store temperature when fully charged must be higher than the cold water temperature.",
        ),
    ),
    advice=(
        *outlet.ADVICE,
        Advice(
            "stop",
            "scald",
            "mix_purpose == 'tap' and mixed_wanted >= scald_half_minute",
            "Too hot for a tap.",
            "Water at {mixed_wanted} burns skin in half a minute or less, a child's sooner. Set the valve to "
            "{scald_minutes} or less, and have a licensed plumber fit it.",
            "scald-cpsc",
        ),
        Advice(
            "unworkable",
            "too-cool",
            "mixed_wanted > store_top",
            "The store is cooler than the mix wanted.",
            "The valve stands wide open and lets {store_top} through where {mixed_wanted} is wanted. No valve can add "
            "heat.",
        ),
        Advice(
            "caution",
            "warm-tap",
            "mix_purpose == 'tap' and mixed_wanted > scald_minutes and mixed_wanted < scald_half_minute",
            "This tap can scald.",
            "Above {scald_minutes} water burns within minutes, and children and old people sooner.",
            "scald-cpsc",
        ),
        Advice(
            "caution",
            "tap-fails",
            "mix_purpose == 'tap' and failed_open > scald_minutes",
            "If the valve fails, taps run at {failed_open}.",
            "Water over {scald_minutes} burns skin within minutes, over 140 °F (60 °C) within seconds. Use a valve "
            "listed for this work that shuts when one side fails, test it once a year, and never bypass it.",
            "scald-cpsc",
            weight=3,
        ),
        Advice(
            "caution",
            "floor-fails",
            "failed_open > floor_limit",
            "If the valve fails, {failed_open} goes into the floor.",
            "After some hours the floor would give {overheat_factor} times its heat, and coverings crack or part. Fit "
            "a second thermostat on the supply that stops the pump at {floor_limit} and must be reset by hand.",
            "en-1264-4",
            weight=3,
        ),
        Advice(
            "caution",
            "hot-slab",
            "mix_purpose == 'floor' and mixed_wanted > screed_limit",
            "Too hot for a slab.",
            "Concrete around pipes should not see water over {screed_limit}. Emitters that need {mixed_wanted} belong "
            "on a circuit of their own.",
            "en-1264-4",
        ),
        Advice(
            "caution",
            "plastic",
            "mix_purpose == 'floor' and store_top > plastic_limit",
            "Too hot for plastic pipe if the valve fails.",
            "PEX is listed for {plastic_limit} at 100 psi (6.9 bar), and this store reaches {store_top}. Use metal from the "
            "store to the valve, and the second thermostat in any case.",
            "pex-limits",
            weight=3,
        ),
        Advice(
            "note",
            "cooling-store",
            "mixed_wanted <= store_top",
            "The valve opens as the store cools.",
            "At {store_top} it lets in {hot_share} hot water, and all of it once the store is down to {mixed_wanted}.",
        ),
    ),
    meaning=(
        "Hot water is drawn slowly from a hot store and fast from a cool one; the heat is the same. A valve that "
        "mixes by itself, without power, suits a floor best.",
    ),
    chart=Chart(
        "Share of hot water as the store cools",
        across="store_top",
        low="110 °F",
        high="200 °F",
        lines=(Line("hot_share", "by mass", "fire"), Line("hot_share_volume", "by volume", "other")),
        say="With the store at {store_top} the mix holds {hot_share} hot water.",
    ),
    tables=(
        Comparison(
            "The same mix from a cooler store",
            rows=(
                Variant("As it is", {}),
                Variant("Store at 150 °F (66 °C)", {"store_top": "150 °F"}),
                Variant("Store at 130 °F (54 °C)", {"store_top": "130 °F"}),
                Variant("Store at 110 °F (43 °C)", {"store_top": "110 °F"}),
            ),
            show=("hot_share", "hot_flow", "delivered", "failed_open"),
        ),
    ),
    examples=(
        Example(
            "Fern Lane: a floor far cooler than its store",
            {
                "mix_purpose": "floor",
                "store_top": "170 °F",
                "mixed_wanted": "102 °F",
                "floor_return": "92 °F",
                "mixed_flow": "3.4 gpm",
                "indoor": "68 °F",
                "altitude": "3,000 ft",
                "charge_rise": "15 F°",
                "system_pressure": "0 psi",
            },
        ),
        Example(
            "The same floor by its load",
            {"mix_purpose": "floor", "flow_known": "load", "load": "16,800 Btu/h", "floor_return": "94 °F"},
        ),
        Example("The taps of the same house", {"mix_purpose": "tap", "mixed_wanted": "110 °F", "cold_water": "48 °F"}),
    ),
    in_record=OnlyWith(MIX_PURPOSE, ("floor", "tap")),
    sizes=(
        Sizes(
            TEMPERING_VALVE,
            "mixes to {delivered}: {hot_flow} hot, {cool_flow} cool; a second limit at {floor_limit} or less",
            "{delivered}",
            ("tempering-valve",),
            ("mix_purpose", "floor"),
        ),
        Sizes(
            TEMPERING_VALVE,
            "mixes to {delivered}: {hot_flow} hot, {cool_flow} cool",
            "{delivered}",
            ("tap-tempering-valve",),
            ("mix_purpose", "tap"),
        ),
    ),
    leaves_out=(
        "How exactly the valve holds its setting: a few degrees either way are ordinary.",
        "The pressure that the valve needs on both sides to work.",
        "Tap water made through an exchanger: it leaves cooler than the store.",
    ),
    follow=(
        Next("floor", "How warm the floor's water must be."),
        Next("stored-heat", "How much usable heat the store holds."),
    ),
)
