"""How large must the expansion tank be?"""

from calc.chains import outlet
from calc.chains.water_side import GLYCOL, GLYCOLS, fluid_at_the_fire, mixture
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
    Sizes,
    Step,
    Suits,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import pipes, safety, water
from calc.plant import EXPANSION_TANK
from calc.vocabulary import (
    ALTITUDE,
    ANTIFREEZE_KIND,
    FILL_TEMPERATURE,
    GLYCOL_VOLUME,
    HEIGHT_ABOVE_VESSEL,
    HIGH_LIMIT,
    OTHER_VOLUME,
    RELIEF_SETTING,
    STORE_VOLUME,
    SYSTEM_PRESSURE,
    TOP_PRESSURE,
    VESSEL_FITTED,
)

EXPANSION_KIND = Field(
    "expansion_kind",
    "choice",
    "Kind of expansion tank",
    "Water cannot be squeezed: it must have somewhere to go.",
    options=(
        Option("membrane", "closed, with a membrane"),
        Option("plain", "closed, without a membrane (an old air tank)"),
        Option("open", "open to the air"),
    ),
)
# Glycol's properties are published up to 212 °F.
GLYCOL_LIMIT = HIGH_LIMIT.but(
    high="212 °F",
    typical=Typical("210 °F", "high-limit", "200 °F", "212 °F", "The stove's manual."),
)
METAL_CREDIT = Field(
    "metal_credit",
    "choice",
    "Credit for the metal's own growth",
    "Tank and pipes grow too, by about a tenth as much; leaving it out is on the safe side.",
    options=(Option("no", "none"), Option("steel", "as steel")),
)
PUMP_PRESSURE = Field(
    "pump_pressure",
    "pressure_difference",
    "Pump pressure added at the tank",
    "0 where the tank joins at the pump's suction side, as it should; else the pump's whole pressure.",
    low="0 psi",
    high="30 psi",
    unless_given="0 psi",
)
HIGHEST_RULE = Field(
    "highest_rule",
    "choice",
    "Highest pressure at the tank",
    "It must stay clear of the relief valve.",
    options=(
        Option("rule", "by the rule: 90 % of the setting or 7 psi (0.5 bar) under it"),
        Option("typed", "I set it myself"),
    ),
)
HIGHEST = Field(
    "highest",
    "pressure_gauge",
    "Highest pressure at the tank, when hot",
    "Below the relief valve's setting.",
    low="2 psi",
    high="140 psi",
)
VESSEL_WATER = Field(
    "vessel_water",
    "temperature",
    "Hottest water at the tank",
    "On the cool return, with a length of bare pipe, it stays cool.",
    low="40 °F",
    high="250 °F",
    typical=Typical(
        "120 °F",
        "common-practice",
        "90 °F",
        "150 °F",
        "A hand on the pipe: if you cannot hold it, it is over 130 °F (54 °C).",
    ),
)
STANDING_WATER = Field(
    "standing_water",
    "volume",
    "Water standing in the open tank when cold",
    "So that drying out does not let air in.",
    low="0 gal",
    high="500 gal",
    typical=Typical("5 gal", "common-practice", "2 gal", "10 gal", "The low mark on the tank."),
)

# The height and the pressure at its top say what the cold fill needs; a gauge that reads more tells of other numbers.
GAUGE_READ = SYSTEM_PRESSURE.but(typical=None, unless_given="0 psi")
_CLOSED_FIELDS = (
    HEIGHT_ABOVE_VESSEL,
    TOP_PRESSURE,
    GAUGE_READ,
    RELIEF_SETTING,
    HIGHEST_RULE,
    PUMP_PRESSURE,
)
_CLOSED_STEPS = (
    Step("charge_pressure", safety.fill_pressure, "Pressure of the cold fill at the tank", density="density_cold"),
    Step("reserve", safety.water_reserve, "Water reserve"),
)


def _loop(kind: str) -> Case:
    """What a loop behind an exchanger needs beside the plant: a closed one, at the plant's own pressures."""
    tank = (
        Step("loop_reserve", safety.water_reserve, "Water reserve of the loop", system_volume="glycol_volume"),
        Step(
            "loop_vessel",
            safety.vessel_volume,
            "Expansion tank of the loop, with its reserve",
            water_expansion="loop_expansion",
            reserve="loop_reserve",
        ),
    )
    return Case(
        fields=(GLYCOL, GLYCOL_VOLUME),
        steps=(
            *mixture(
                kind,
                ("_loop_cold", "fill_temperature", "of the loop's cold filling", ("density",)),
                ("_loop_hot", "high_limit", "of it at the high limit", ("density",)),
            ),
            Step(
                "loop_expansion",
                safety.water_expansion,
                "Growth of the loop's filling",
                cold_density="density_loop_cold",
                hot_density="density_loop_hot",
                system_volume="glycol_volume",
            ),
        ),
        cases=(Cases("expansion_kind", membrane=Case(steps=tank), plain=Case(), open=Case()),),
    )


def _glycol(kind: str) -> Case:
    return Case(fields=(GLYCOL_LIMIT,), cases=(Cases("antifreeze_in", whole=Case(), loop=_loop(kind)),))


_HIGHEST = Cases(
    "highest_rule",
    rule=Case(steps=(Step("highest", safety.highest_pressure, "Highest pressure at the tank"),)),
    typed=Case(
        fields=(HIGHEST,),
        steps=(Step("highest_by_rule", safety.highest_pressure, "Highest pressure by the rule"),),
    ),
)

WORKSHEET = Worksheet(
    key="expansion",
    guide="open-or-pressurised",
    question="How large must the expansion tank be?",
    short="What the water grows by, and the tank, charge and pressures it needs.",
    fields=(
        STORE_VOLUME,
        OTHER_VOLUME,
        FILL_TEMPERATURE,
        EXPANSION_KIND,
        ALTITUDE,
        ANTIFREEZE_KIND,
        METAL_CREDIT,
        VESSEL_FITTED,
    ),
    givens=(
        Given("membrane_limit", "temperature", "A membrane is made for", "158 °F", "membrane"),
        Given("tight", "factor", "A tank is tight below this many times its need", "1.1", "common-practice"),
        Given("no_reserve", "volume", "No reserve", "0 gal", "definition"),
        Given("none_fitted", "volume", "No tank yet", "0.01 gal", "definition"),
        *outlet.GIVENS,
        Given("open_gauge", "pressure_gauge", "Pressure on an open tank", "0 psi", "definition"),
        Given("slack", "pressure_difference", "Slack on typed pressures", "0.1 psi", "definition"),
    ),
    cases=(
        fluid_at_the_fire(
            ("_cold", "fill_temperature", "of the cold filling", ("density",)),
            ("_hot", "high_limit", "at the high limit", ("density",)),
        ),
        Cases(
            "antifreeze_kind",
            none=Case(fields=(HIGH_LIMIT,)),
            **{kind: _glycol(kind) for kind in GLYCOLS},
        ),
        Cases(
            "expansion_kind",
            membrane=Case(
                fields=(*_CLOSED_FIELDS, VESSEL_WATER),
                steps=(
                    *_CLOSED_STEPS,
                    Step("acceptance", safety.acceptance, "Acceptance factor of the tank", lowest="charge_pressure"),
                    Step("vessel_volume", safety.vessel_volume, "Expansion tank volume needed", reserve="no_reserve"),
                    Step("vessel_with_reserve", safety.vessel_volume, "Expansion tank with the reserve"),
                    Step(
                        "boiling_pressure",
                        water.absolute_pressure,
                        "Absolute pressure at the highest pipe, cold fill",
                        gauge="top_pressure",
                    ),
                ),
                cases=(_HIGHEST,),
            ),
            plain=Case(
                fields=_CLOSED_FIELDS,
                steps=(
                    *_CLOSED_STEPS,
                    Step(
                        "vessel_volume",
                        safety.plain_tank_volume,
                        "Expansion tank volume needed",
                        lowest="charge_pressure",
                        reserve="no_reserve",
                    ),
                    Step(
                        "vessel_with_reserve",
                        safety.plain_tank_volume,
                        "Expansion tank with the reserve",
                        lowest="charge_pressure",
                    ),
                    Step(
                        "boiling_pressure",
                        water.absolute_pressure,
                        "Absolute pressure at the highest pipe, cold fill",
                        gauge="top_pressure",
                    ),
                ),
                cases=(_HIGHEST,),
            ),
            open=Case(
                fields=(STANDING_WATER,),
                steps=(
                    Step("vessel_volume", safety.open_tank_volume, "Expansion tank needed, bottom to overflow"),
                    Step("boiling_pressure", water.absolute_pressure, "Air pressure on the water", gauge="open_gauge"),
                ),
            ),
        ),
    ),
    steps=(
        Step("system_volume", pipes.system_volume, "System volume"),
        Pick(
            "metal_expansion",
            "expansion_rate",
            "Growth of the metal in length",
            "metal_credit",
            {"no": "0 /°F", "steel": "0.0000065 /°F"},
            "ashrae-expansion",
        ),
        Step(
            "temperature_rise",
            safety.temperature_rise,
            "From cold to the high limit",
            hot="high_limit",
            cold="fill_temperature",
        ),
        Step(
            "expansion_share",
            safety.expansion_share,
            "Expansion, share of the volume",
            cold_density="density_cold",
            hot_density="density_hot",
        ),
        Step(
            "water_expansion",
            safety.water_expansion,
            "Expansion of the water",
            cold_density="density_cold",
            hot_density="density_hot",
        ),
        Step("barometer", water.barometer, "Air pressure at this height"),
        Step("boiling_top", water.boiling_temperature, "Water boils there at", pressure="boiling_pressure"),
    ),
    results=(
        Result(
            "vessel_volume",
            "Expansion tank volume needed",
            "Its whole volume, with no margin and no reserve.",
            missing="no tank is large enough",
        ),
        Result(
            "vessel_with_reserve",
            "Expansion tank with the reserve",
            "Choose at least this one.",
            missing="no tank is large enough",
        ),
        Result(
            "loop_vessel",
            "Expansion tank of the loop with antifreeze, with its reserve",
            "{glycol_volume} of the mixture, at the pressures above; with other pressures, size it as a plant by itself.",
            missing="no tank is large enough",
            only=("antifreeze_in", "loop"),
        ),
        Result("loop_expansion", "Growth of the loop's filling", only=("antifreeze_in", "loop")),
        Result("water_expansion", "Expansion of the water", "{system_volume} from {fill_temperature} to {high_limit}."),
        Result("expansion_share", "Expansion, share of the volume"),
        Result("system_volume", "System volume"),
        Result("reserve", "Water reserve", "0.5 % of the plant and 3 L at least."),
        Result(
            "charge_pressure",
            "Cold fill pressure at the tank",
            "Charge a membrane tank's air side to the same, before water is let in.",
        ),
        Result("highest", "Highest pressure at the tank", "The relief valve opens at {relief_setting}."),
        Result("acceptance", "Acceptance factor of the tank", "Absolute pressures at {altitude}."),
        Result("boiling_top", "Boiling point at the top, cold fill"),
    ),
    headline="vessel_volume",
    say="The water grows by {water_expansion}.",
    say_none="The pressures leave no room.",
    musts=(
        Must(
            "high_limit > fill_temperature",
            "fill_temperature",
            "Fill temperature must be below the high limit of the stove.",
        ),
    ),
    advice=(
        Advice(
            "stop",
            "no-room",
            "expansion_kind != 'open' and missing(vessel_volume)",
            "No tank is large enough.",
            "The cold fill of {charge_pressure} already reaches the highest pressure of {highest}. A lower fill, a tank higher "
            "up, or a relief valve and a stove made for more pressure.",
            "ashrae-expansion",
        ),
        Advice(
            "stop",
            "too-small",
            "vessel_fitted > none_fitted and vessel_fitted < vessel_volume",
            "The tank you have is too small.",
            "You need {vessel_volume} and have {vessel_fitted}. The relief valve would open at every full fire, and a valve "
            "that opens often ends by leaking or sticking.",
            "ashrae-expansion",
        ),
        Advice(
            "caution",
            "tight",
            "vessel_fitted >= vessel_volume and vessel_fitted < tight * vessel_volume",
            "The tank you have is tight.",
            "It is under {tight} times the {vessel_volume} needed. Membranes lose their charge: check it every year.",
            weight=3,
        ),
        Advice(
            "stop",
            "over-relief",
            "highest >= relief_setting",
            "The relief valve opens first.",
            "You ask for {highest} at the tank when hot and the valve opens at {relief_setting}: it would spill at every full "
            "fire, and a valve that spills often sticks. Stay 10 % or 7 psi (0.5 bar) under its setting.",
            "common-practice",
        ),
        Advice(
            "stop",
            "boils-at-limit",
            "expansion_kind == 'open' and high_limit >= boiling_top",
            "An open plant boils before this limit acts.",
            "Water boils at {boiling_top} here and the stove goes on to {high_limit}. Steam then throws hot water out of the open "
            "tank. The stove needs a lower limit, and an open vent that leads outside or back to the tank.",
            "iapws-if97",
        ),
        Advice(
            "caution",
            "near-boiling",
            "expansion_kind != 'open' and high_limit > boiling_top - boiling_caution",
            "The top of the plant is near boiling at the limit.",
            "With the cold fill it boils there at {boiling_top}, and the stove's limit is {high_limit}. The pressure rises as the "
            "water grows; keep more at the top if in doubt.",
            "boiling-caution",
            weight=3,
        ),
        Advice(
            "caution",
            "glycol-in-store",
            "antifreeze_in == 'whole'",
            "All of the plant is counted as antifreeze, the store too.",
            "That is {system_volume} of the mixture, to be bought, tested and one day thrown away. The usual way is antifreeze in "
            "the loop that can freeze, behind an exchanger; if yours is so, choose it above.",
        ),
        Advice(
            "caution",
            "two-sides",
            "antifreeze_in == 'loop'",
            "The loop behind the exchanger needs its own.",
            "Its {glycol_volume} of antifreeze grow by {loop_expansion}: an expansion tank and a relief valve of its own, beside "
            "those of the store's side.",
        ),
        Advice(
            "caution",
            "fill-too-low",
            "system_pressure > charge_pressure + slack",
            "The store is under more pressure than this fill.",
            "The gauge at its top reads {system_pressure}; height and the pressure at the highest pipe ask for a cold fill of "
            "{charge_pressure} at the tank. One of the three is another number, and a higher fill needs a larger tank.",
        ),
        Advice(
            "caution",
            "hot-membrane",
            "vessel_water > membrane_limit",
            "Too hot for the membrane.",
            "It is made for {membrane_limit} and gets {vessel_water}. Join the tank to the return, below, with a length of bare "
            "pipe or a small cooling tank before it.",
            "membrane",
        ),
        Advice(
            "caution",
            "after-the-pump",
            "pump_pressure > slack",
            "Join the tank at the pump's suction side.",
            "Behind the pump it must be charged {pump_pressure} higher, and the rest of the plant may fall under the air's "
            "pressure and draw air in.",
        ),
        Advice(
            "caution",
            "near-relief",
            "highest > highest_by_rule + slack",
            "Too near the relief valve.",
            "At {highest} it weeps: the rule keeps {highest_by_rule} under a setting of {relief_setting}.",
            "common-practice",
            weight=3,
        ),
        Advice(
            "note",
            "no-valve",
            "expansion_kind != 'open'",
            "Nothing that closes before it.",
            "No hand valve between the fire and its expansion tank; a locked service valve with a drain is the most a code allows.",
        ),
        Advice(
            "note",
            "frost",
            "expansion_kind == 'open'",
            "An open tank must not freeze.",
            "Ice in the tank, its vent or its overflow turns an open plant into a closed one with no relief. Keep them warm.",
        ),
    ),
    meaning=(
        "The tank is sized for the stove's high limit, not for an ordinary day: on the worst day all of the water may be "
        "that hot. Each side of an exchanger needs a tank of its own.",
    ),
    picture=Picture(
        "growth",
        "Hatched is the water that was not there when it was cold, not to scale.",
        {"said": "expansion_kind", "growth": "water_expansion", "vessel": "vessel_volume"},
    ),
    chart=Chart(
        "Tank needed against the high limit",
        across="high_limit",
        low="150 °F",
        high="230 °F",
        lines=(Line("vessel_volume", "tank needed", "tank"), Line("water_expansion", "growth of the water", "fire")),
        say="At {high_limit} the water grows by {water_expansion} and the tank needed is {vessel_volume}.",
    ),
    tables=(
        Comparison(
            "Other ways",
            rows=(
                Variant("Yours", {}),
                Variant("Twice the store", {"store_volume": "x2"}),
                Variant("Half the store", {"store_volume": "x0.5"}),
                Variant("Credit for the steel", {"metal_credit": "steel"}),
            ),
            show=("water_expansion", "vessel_volume"),
        ),
    ),
    examples=(
        Example(
            "Mill Row: a closed store",
            {
                "store_volume": "800 gal",
                "other_volume": "45 gal",
                "fill_temperature": "50 °F",
                "high_limit": "210 °F",
                "expansion_kind": "membrane",
                "altitude": "3,000 ft",
                "antifreeze_kind": "none",
                "antifreeze_in": "whole",
                "metal_credit": "no",
                "height_above_vessel": "14 ft",
                "top_pressure": "4 psi",
                "relief_setting": "30 psi",
                "highest_rule": "rule",
            },
        ),
        Example(
            "Fern Lane: an open store",
            {
                "expansion_kind": "open",
                "store_volume": "500 gal",
                "high_limit": "190 °F",
                "highest_rule": "typed",
                "highest": "23 psi",
            },
        ),
    ),
    sizes=(
        Sizes(
            EXPANSION_TANK,
            "{vessel_with_reserve} with its reserve, charged to {charge_pressure} cold",
            "{vessel_with_reserve}",
            ("vessel",),
            ("expansion_kind", "membrane"),
        ),
        Sizes(
            EXPANSION_TANK,
            "{vessel_with_reserve} with its reserve, without a membrane",
            "{vessel_with_reserve}",
            ("vessel",),
            ("expansion_kind", "plain"),
        ),
        Sizes(
            EXPANSION_TANK,
            "{vessel_volume} from the bottom to the overflow",
            "{vessel_volume}",
            ("feed-tank",),
            ("expansion_kind", "open"),
            called="Feed and expansion tank",
        ),
        Sizes(
            EXPANSION_TANK,
            "{loop_vessel} with its reserve, at the pressures of the other",
            "for {loop_expansion} of growth",
            only=("antifreeze_in", "loop"),
            called="Expansion tank of the loop with antifreeze",
        ),
    ),
    suits=(Suits("open-store", "expansion_kind == 'open'"),),
    leaves_out=(
        "The vessel's own charge lost over the years: check it.",
        "Gas that comes out of the water.",
        "Whether the store, stove and valve are made and stamped for this pressure: a licensed person says.",
    ),
    follow=(
        Next("relief", "What the relief valve or the open vent must pass."),
        Next("boiling", "Where water boils first."),
        Next("antifreeze", "Glycol grows more than water."),
    ),
)
