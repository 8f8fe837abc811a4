"""How much usable heat is in the tank, and how long does it last?"""

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
    Next,
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
from calc.physics import store, water
from calc.plant import STORE
from calc.vocabulary import (
    COLD_WATER,
    DESIGN_LOAD,
    EXCHANGER_APPROACH,
    INDOOR,
    LOAD,
    LOWEST_USEFUL,
    STANDBY_LOSS,
    STORE_TOP,
    STORE_VOLUME,
    WATER_DROP,
)

DROP_KNOWN = Field(
    "drop_known",
    "choice",
    "Temperature drop at this load",
    "The pump moves the same water in mild weather, so the drop shrinks with the load.",
    options=(Option("no", "the coldest day's, times the share of the load"), Option("yes", "I measured it")),
    unless_given="no",
)
DROP_THEN = Field(
    "drop_then",
    "temperature_difference",
    "Temperature drop measured at this load",
    "Supply less return, at the load given.",
    low="0.1 F°",
    high="80 F°",
    typical=Typical("10 F°", "common-practice", "3 F°", "20 F°", "Two thermometers on the pipes, on such a day."),
)

WORKSHEET = Worksheet(
    key="stored-heat",
    guide="storage",
    question="How much usable heat is in the tank, and how long does it last?",
    short="Usable heat in a store, and the hours it carries the house.",
    fields=(
        STORE_VOLUME,
        STORE_TOP,
        LOWEST_USEFUL,
        DESIGN_LOAD,
        WATER_DROP,
        COLD_WATER,
        *outlet.FIELDS,
        LOAD,
        STANDBY_LOSS,
        EXCHANGER_APPROACH,
        INDOOR.but(unless_given="68 °F"),
        DROP_KNOWN,
    ),
    givens=(
        *outlet.GIVENS,
        Given("scalding", "temperature", "Water that burns skin in minutes", "120 °F", "scald-cpsc"),
    ),
    cases=(
        Cases(
            "drop_known",
            no=Case(steps=(Step("drop_then", store.drop_at_load, "Temperature drop at this load"),)),
            yes=Case(fields=(DROP_THEN,), decides=True),
        ),
    ),
    steps=(
        Step("charged_top", store.charged_top, "Hottest water in the store"),
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
        Step("hours_carried", store.hours_carried, "Hours carried, mixed store", heat="usable_heat"),
        Step(
            "emitter_return", store.return_temperature, "Water that comes back from the emitter", water_drop="drop_then"
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
        Step("hours_carried_layered", store.hours_carried, "Hours carried, layered store", heat="usable_heat_layered"),
        Step(
            "heat_content_cold",
            water.mean_volume_heat_content,
            "Heat in each volume and degree, cold water to top",
            low="cold_water",
            top="charged_top",
        ),
        Step(
            "heat_above_cold",
            store.usable_heat,
            "All the heat above cold water",
            volume="store_volume",
            heat_content="heat_content_cold",
            top="charged_top",
            low="cold_water",
        ),
        Step("usable_share", store.usable_share, "Share of that heat that is usable"),
        *outlet.STEPS,
    ),
    results=(
        Result(
            "usable_heat",
            "Usable heat, mixed store",
            "The whole tank cools evenly from {store_top} to {lowest_useful}; it stays full of water.",
        ),
        Result("hours_carried", "Hours it carries the load, mixed store", "At {load} drawn from it.", figures=2),
        Result(
            "usable_heat_layered",
            "Usable heat, layered store",
            "The best case: hot water stays on top until all of it has gone through the emitter and come back at {emitter_return}, never colder than {indoor}.",
        ),
        Result("hours_carried_layered", "Hours it carries the load, layered store", figures=2),
        Result("usable_share", "Usable share of the heat above cold water", "Cold water is {cold_water}."),
        Result("boiling", "Boiling point in this store", "At {altitude} and {system_pressure}."),
        outlet.RESULT,
    ),
    headline="usable_heat",
    say="Lasts {hours_carried} mixed, {hours_carried_layered} layered.",
    musts=(),
    advice=(
        *outlet.ADVICE,
        Advice(
            "unworkable",
            "no-band",
            "lowest_useful >= charged_top",
            "Nothing in this tank is warm enough.",
            "What draws on it needs {lowest_useful}, and it is never hotter than {charged_top}. "
            "Cooler emitters (more of them, or less to heat) or a hotter store are needed.",
            zeroes=("usable_heat", "usable_heat_layered", "hours_carried", "hours_carried_layered", "usable_share"),
        ),
        Advice(
            "caution",
            "mixed-pair",
            "given(load) and load < 0.95 * design_load",
            "Is this load of the same day as the temperature?",
            "The load of {load} is for milder weather than the coldest day. In that weather the emitters also do with "
            "cooler water: use the lowest useful temperature of the same day.",
        ),
        Advice(
            "caution",
            "scald",
            "store_top > scalding",
            "This water scalds.",
            "At {store_top} it burns skin in seconds. Every tap fed from it needs a tempering valve.",
            "scald-cpsc",
        ),
        Advice(
            "note",
            "cooler-emitters",
            "usable_heat > 0",
            "Cooler emitters get more from the same tank.",
            "The tank is the same, only the coolest water worth drawing changes.",
        ),
    ),
    meaning=(
        "A mixed tank stops being useful when all of it has cooled to {lowest_useful}. A layered one gives its hot top "
        "away first and lasts longer. Real tanks lie between the two.",
    ),
    picture=Picture(
        "tank",
        "Height in this picture is temperature, not water level: the tank is always full.",
        {"top": "charged_top", "low": "lowest_useful"},
    ),
    chart=Chart(
        "Usable heat by the coolest water worth drawing",
        across="lowest_useful",
        low="85 °F",
        high="200 °F",
        lines=(Line("usable_heat", "mixed", "tank"), Line("usable_heat_layered", "layered", "use")),
        say="At {lowest_useful} the tank gives {usable_heat} mixed and {usable_heat_layered} layered.",
        us="kBtu",
        si="kWh",
    ),
    tables=(
        Comparison(
            "What the same tank gives each kind of emitter",
            rows=(
                Variant("Yours", {}),
                Variant("Warm floor, {lowest_useful}", {"lowest_useful": "105 °F"}),
                Variant("Large radiators, {lowest_useful}", {"lowest_useful": "120 °F"}),
                Variant("Baseboard, {lowest_useful}", {"lowest_useful": "150 °F"}),
                Variant("Small coil in ducts, {lowest_useful}", {"lowest_useful": "170 °F"}),
            ),
            show=("usable_heat", "hours_carried", "usable_heat_layered", "hours_carried_layered"),
            say="The temperatures are common practice, not laws: what yours needs follows from its size and the load.",
            source="common-practice",
        ),
    ),
    examples=(
        Example(
            "Mill Row: the store behind the old baseboard",
            {
                "store_volume": "800 gal",
                "store_top": "180 °F",
                "lowest_useful": "130 °F",
                "design_load": "30,500 Btu/h",
                "water_drop": "12 F°",
                "cold_water": "50 °F",
                "altitude": "3,000 ft",
                "charge_rise": "25 F°",
                "system_pressure": "12 psi",
            },
        ),
        Example(
            "Fern Lane: the store behind a warm floor",
            {
                "store_volume": "500 gal",
                "store_top": "170 °F",
                "lowest_useful": "130 °F",
                "design_load": "13,300 Btu/h",
                "water_drop": "10 F°",
                "cold_water": "48 °F",
                "altitude": "3,000 ft",
                "charge_rise": "15 F°",
                "system_pressure": "0 psi",
            },
        ),
    ),
    sizes=(
        Sizes(
            STORE,
            "{store_volume}: {usable_heat} from {lowest_useful} to {store_top}",
            "{store_volume}",
            ("store",),
        ),
    ),
    suits=(Suits("open-store", "system_pressure == 0"),),
    leaves_out=(
        "Heat stored in the floor, the house and the pipes.",
        "Heat lost from the tank, unless you give it.",
        "How layered your tank really is: that depends on its inlets, its shape and the flow.",
    ),
    follow=(
        Next("tank-size", "What size of tank suits your fire and your house."),
        Next("emitter-temperature", "How cool your own emitters can run."),
        Next("standby", "What the tank loses while it waits."),
    ),
)
