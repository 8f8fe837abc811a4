"""Which pipe and pump does this heat need?"""

from calc.chains.water_side import (
    ALL_PROPERTIES,
    FRICTION_GIVENS,
    FRICTION_STEPS,
    PIPE_FIELDS,
    PIPE_PLACE,
    fluid,
    pipe,
    roughness,
)
from calc.engine.declare import (
    Advice,
    Chart,
    Comparison,
    Example,
    Field,
    Given,
    Line,
    Next,
    OnlyWith,
    Result,
    Sizes,
    Step,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import emitters, pipes
from calc.plant import EMITTER_PIPE, EMITTER_PUMP
from calc.vocabulary import (
    ANTIFREEZE_KIND,
    DESIGN_LOAD,
    PIPE_HEAT,
    PIPE_KIND,
    SUPPLY_WATER,
    SYSTEM_PRESSURE,
    WATER_DROP,
)

VELOCITY_LIMIT = Field(
    "velocity_limit", "velocity", "Maximum water velocity",
    "In copper above 140 °F (60 °C) 2 to 3 ft/s; noise is heard from about 4 ft/s.",
    low="0.5 ft/s", high="12 ft/s",
    typical=Typical("3 ft/s", "copper-velocity", "2 ft/s", "4 ft/s", "The copper handbook, or the maker of the pipe."),
)  # fmt: skip
PUMP_EFFICIENCY = Field(
    "pump_efficiency", "fraction", "Wire-to-water efficiency of the pump", "Small wet-rotor pumps are poor ones.",
    low="2 %", high="80 %",
    typical=Typical("25 %", "common-practice", "10 %", "45 %", "The pump's curve shows its watts."),
)  # fmt: skip

WORKSHEET = Worksheet(
    key="pipe",
    guide="pipes",
    question="Which pipe and pump does this heat need?",
    short="Flow, speed, pressure lost, pump head and the smallest sensible pipe of each kind.",
    fields=(
        DESIGN_LOAD,
        WATER_DROP,
        SUPPLY_WATER,
        PIPE_KIND,
        *PIPE_FIELDS,
        PIPE_PLACE,
        ANTIFREEZE_KIND,
        SYSTEM_PRESSURE.but(
            # Here the pressure is what a plastic pipe must bear, so none is not the careful side.
            typical=Typical("12 psi", "common-practice", "0 psi", "20 psi", "The gauge beside the expansion tank."),
        ),
        PIPE_HEAT,
        VELOCITY_LIMIT,
        PUMP_EFFICIENCY,
    ),
    givens=(
        *FRICTION_GIVENS,
        Given("rule_factor", "volume_heat_capacity", "The trade's round factor", "500 Btu/(h·gpm·°F)", "common-practice", us="Btu/(h·gpm·°F)"),
        Given("hot_copper", "temperature", "Copper wears faster in water above", "140 °F", "copper-velocity"),
        Given("hot_copper_speed", "velocity", "Fastest in hot copper", "3 ft/s", "copper-velocity"),
        Given("loud", "velocity", "Water is heard above", "4 ft/s", "quiet-velocity"),
        Given("airy", "velocity", "Water carries air along above", "2 ft/s", "quiet-velocity"),
        Given("pex_hot", "temperature", "PEX is rated for 100 psi up to", "180 °F", "pex-limits"),
        Given("pex_hottest", "temperature", "Hottest PEX is rated for, at 80 psi", "200 °F", "pex-limits"),
        Given("pex_hot_pressure", "pressure_gauge", "PEX at 180 °F holds", "100 psi", "pex-limits"),
        Given("pex_hottest_pressure", "pressure_gauge", "PEX at 200 °F holds", "80 psi", "pex-limits"),
    ),
    cases=(
        fluid(("", "mean_water", "at the mean of supply and return", ALL_PROPERTIES)),
        pipe("copper-m", "copper-l", "pex", "steel"),
    ),
    steps=(
        Step("return_temperature", emitters.return_water, "Water coming back", supply="supply_water", drop="water_drop"),
        Step("mean_water", emitters.mean_of, "Mean of supply and return", supply="supply_water", return_water="return_temperature"),
        Step("volume_heat_capacity", pipes.volume_heat_capacity, "True factor at that temperature", us="Btu/(h·gpm·°F)"),
        Step("flow", pipes.flow, "Flow needed", heat="pipe_heat"),
        Step("rule_flow", pipes.flow, "Flow by the round factor of 500", heat="pipe_heat", volume_heat_capacity="rule_factor"),
        roughness("copper-m", "copper-l", "pex", "steel"),
        *FRICTION_STEPS,
        Step("pump_power", pipes.pump_power, "Electric power of the pump"),
        Step("least_bore", pipes.bore_for_velocity, "Bore at the fastest speed", us="in", si="mm"),
        Step("smallest_copper_m", pipes.smallest_copper_m, "Smallest copper, type M", us="in", si="in"),
        Step("smallest_copper_l", pipes.smallest_copper_l, "Smallest copper, type L", us="in", si="in"),
        Step("smallest_pex", pipes.smallest_pex, "Smallest PEX", us="in", si="in"),
        Step("smallest_steel", pipes.smallest_steel, "Smallest steel, schedule 40", us="in", si="in"),
    ),
    results=(
        Result("flow", "Flow needed", "Actual volume at the mean of supply and return, {mean_water}."),
        Result("volume_heat_capacity", "True heat factor of the water", "The trade's round number is {rule_factor}.", figures=4, us="Btu/(h·gpm·°F)"),
        Result("rule_flow", "Flow by the round factor of 500"),
        Result("velocity", "Velocity in this pipe"),
        Result("pressure_drop", "Pressure drop of the loop"),
        Result("head", "Pump head at this flow", "Of the fluid that flows; look it up on the pump's curve."),
        Result("pump_power", "Electric power of the pump"),
        Result("bore", "Inside diameter of this pipe", "PEX by its average wall.", figures=4, us="in", si="mm"),
        Result("bore_by_minimum_wall", "Inside diameter by minimum wall", "Many catalogs print this one; it promises about 10 % less friction than there is.", figures=4, us="in", si="mm"),
        Result("smallest_copper_m", "Smallest copper, type M", "Trade size that keeps to {velocity_limit}.", decimals=2, us="in", si="in", missing="none listed"),
        Result("smallest_copper_l", "Smallest copper, type L", "Trade size that keeps to {velocity_limit}.", decimals=2, us="in", si="in", missing="none listed"),
        Result("smallest_pex", "Smallest PEX", "Trade size that keeps to {velocity_limit}; only away from the fire.", decimals=2, us="in", si="in", missing="none listed"),
        Result("smallest_steel", "Smallest steel", "Trade size that keeps to {velocity_limit}.", decimals=2, us="in", si="in", missing="none listed"),
    ),
    headline="flow",
    say="It runs at {velocity}; pump head {head}.",
    advice=(
        Advice(
            "stop", "plastic-at-the-fire", "pipe_kind == 'pex' and pipe_place == 'stove'",
            "No plastic pipe between fire and store.",
            "The water there is hottest when something else has already gone wrong, and PEX softens above {pex_hottest}. "
            "Use copper or steel to store, dump, vent and relief valve.",
            "pex-limits",
        ),
        Advice(
            "stop", "plastic-too-hot", "pipe_kind == 'pex' and supply_water > pex_hottest",
            "This is too hot for PEX.",
            "{supply_water} is above the {pex_hottest} for which it is rated at all. Use metal, or mix the water down first.",
            "pex-limits",
        ),
        Advice(
            "stop", "plastic-overpressure",
            "pipe_kind == 'pex' and (supply_water > pex_hot and system_pressure > pex_hottest_pressure or system_pressure > pex_hot_pressure)",
            "This pressure is too high for PEX at that heat.",
            "It holds {pex_hot_pressure} up to {pex_hot} and {pex_hottest_pressure} up to {pex_hottest}; you have "
            "{system_pressure}. Use metal, or lower pressure and temperature.",
            "pex-limits",
        ),
        Advice(
            "caution", "plastic-hot", "pipe_kind == 'pex' and supply_water > pex_hot and supply_water <= pex_hottest",
            "Hot for PEX.",
            "Above {pex_hot} it is rated for {pex_hottest_pressure} only, and it ages faster. Mix the water down, or use metal.",
            "pex-limits",
        ),
        Advice(
            "caution", "oxygen", "pipe_kind == 'pex'",
            "Ask for an oxygen barrier.",
            "Plastic without one lets air through its wall, and at {mean_water} that rusts a steel stove and store from inside.",
        ),
        Advice(
            "caution", "erosion",
            "(pipe_kind == 'copper-m' or pipe_kind == 'copper-l') and supply_water > hot_copper and velocity > hot_copper_speed",
            "Too fast for hot copper.",
            "At {velocity} water of {supply_water} wears copper through at its elbows. Keep to {hot_copper_speed}: the next "
            "size up, or a larger drop.",
            "copper-velocity",
        ),
        Advice(
            "caution", "noise", "velocity > loud",
            "This will be heard.",
            "Above {loud} pipes hiss. A larger pipe also asks for much less of the pump: half the speed, a quarter of the head.",
            "quiet-velocity",
        ),
        Advice(
            "caution", "undecided", "reynolds_number > laminar and reynolds_number < turbulent",
            "Between smooth and rough flow.",
            "At a Reynolds number of {reynolds_number} nobody can say which the water does; the friction may be half of this.",
        ),
        Advice(
            "note", "air", "velocity < airy",
            "Slow water leaves air behind.",
            "Below {airy} air bubbles stay where they are: give every high place a vent, and let pipes rise to it.",
            "quiet-velocity",
        ),
        Advice(
            "note", "rule", "rule_flow < 0.99 * flow",
            "The round factor is a little short here.",
            "It says {rule_flow}; the water really needs {flow}, because hot water is lighter and glycol holds less.",
        ),
    ),
    meaning=(
        "Heat is flow times drop: twice the drop needs half the flow and about a quarter of the head. A pump is chosen "
        "where its curve crosses {flow} at {head}.",
    ),
    chart=Chart(
        "Head against the heat carried",
        across="pipe_heat", low="x0.25", high="x2",
        lines=(Line("head", "head the pump must give", "use"),),
        say="At {pipe_heat} the pump must give {head}.",
        us="ft", si="m",
    ),
    tables=(
        Comparison(
            "The same heat through other sizes",
            rows=(
                Variant("1/2 in", {"pipe_size": "1/2"}),
                Variant("3/4 in", {"pipe_size": "3/4"}),
                Variant("1 in", {"pipe_size": "1"}),
                Variant("1-1/4 in", {"pipe_size": "1-1/4"}),
            ),
            show=("velocity", "head", "pump_power"),
            say="Same kind of pipe, same length and fittings.",
        ),
    ),
    examples=(
        Example(
            "Mill Row: 800 gal store to the old baseboard",
            {
                "design_load": "30,500 Btu/h", "water_drop": "12 F°", "supply_water": "140 °F", "pipe_kind": "copper-m",
                "pipe_size": "1", "pipe_length": "160 ft", "elbows": "16", "tees": "4", "valves": "4",
                "pipe_place": "emitters", "antifreeze_kind": "none", "system_pressure": "12 psi",
            },
        ),
    ),
    in_record=OnlyWith(PIPE_PLACE, ("emitters",)),
    sizes=(
        Sizes(EMITTER_PUMP, "{flow} against {head}", "{flow}, {head}", ("house-pump",)),
        Sizes(
            EMITTER_PIPE,
            "at least {smallest_copper_l} copper (type L) or, behind a mixing valve, {smallest_pex} PEX; worked out with {pipe_size}",
            "{smallest_copper_l} copper", ("house-pipe",),
        ),
    ),
    leaves_out=(
        "Pressure lost in mixing and zone valves, unless you add it.",
        "Pipe dimensions from 1-1/4 in PEX on and all roughness are from memory; old steel is rougher than new.",
        "How branches share the flow: this is one loop.",
    ),
    follow=(
        Next("charge-loop", "The loop between stove and store."),
        Next("antifreeze", "What glycol costs in flow and pumping."),
        Next("emitter-temperature", "How cool the emitters at its end can run."),
    ),
)  # fmt: skip
