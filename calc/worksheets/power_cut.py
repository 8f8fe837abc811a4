"""The pump stops while it burns: how long until it boils?"""

from calc.chains.water_side import peak
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
    Result,
    Sizes,
    Step,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import firing, pipes, safety, water
from calc.plant import HEAT_DUMP
from calc.vocabulary import (
    BOILING_ALTITUDE,
    BURN_TIME,
    CHARGE_RISE,
    DAMPER,
    DUMP_OUTPUT,
    JACKET_VOLUME,
    OUTLET_HEIGHT,
    PEAK_KNOWN,
    STORE_TOP,
    SYSTEM_PRESSURE,
    WATER_OUTPUT,
)

LOOP_FLOWS = Field(
    "loop_flows",
    "choice",
    "Gravity loop that was seen to flow with the pump off",
    "Its water counts only if you have tried it, with a small fire.",
    options=(Option("no", "none, or never tried"), Option("yes", "yes, tried")),
)
LOOP_VOLUME = Field(
    "loop_volume",
    "volume",
    "Water content of that loop",
    "Pipes and what they lead to, as far as it mixes.",
    low="0.1 gal",
    high="2,000 gal",
    uncertainty="20 %",
    typical=Typical("10 gal", "common-practice", "3 gal", "40 gal", "Pipe length times its content."),
)
FIRE_LEFT = Field(
    "fire_left",
    "choice",
    "What is still in the fire",
    "The worst moment is soon after a full load has caught.",
    options=(Option("full", "a full load that has just caught"), Option("weighed", "a known weight of wood")),
)
WOOD_LEFT = Field(
    "wood_left",
    "mass",
    "Wood left in the fire",
    "",
    low="0 lb",
    high="400 lb",
    uncertainty="15 %",
    typical=Typical("15 lb", "common-practice", "5 lb", "40 lb", "Guess it from the size of the firebox."),
)
WOOD_HEAT = Field(
    "wood_heat",
    "heat_per_mass",
    "Heat in it by weight",
    "As fired; about 6,900 Btu/lb (4.46 kWh/kg) at 20 % moisture, higher heating value.",
    low="1,500 Btu/lb",
    high="10,000 Btu/lb",
    typical=Typical("6900 Btu/lb", "common-practice", "6000 Btu/lb", "7300 Btu/lb", "The wood-use worksheet."),
)
WATER_SHARE = Field(
    "water_share",
    "fraction",
    "Share of that heat that reaches the water",
    "The rest warms the room or goes up the chimney.",
    low="0 %",
    high="100 %",
    typical=Typical(
        "45 %", "common-practice", "30 %", "70 %", "The stove's data: heat to water over heat in the wood."
    ),
)
SAFETY_COIL = Field(
    "safety_coil",
    "choice",
    "Cooling coil with cold water through it",
    "A thermal valve lets cold water through the jacket's coil.",
    options=(
        Option("none", "none"),
        Option("main", "yes, from the town's main"),
        Option("well", "yes, from our own well pump"),
    ),
)
PUMP_WATTS = Field(
    "pump_watts",
    "electric_power",
    "Power of the pump",
    "On its plate.",
    low="2 W",
    high="2,000 W",
    typical=Typical("45 W", "common-practice", "15 W", "120 W", "The pump's plate."),
)
INVERTER_EFFICIENCY = Field(
    "inverter_efficiency",
    "fraction",
    "Efficiency of battery and inverter",
    "",
    low="20 %",
    high="100 %",
    typical=Typical("80 %", "common-practice", "65 %", "90 %", "The inverter's sheet, and less for a small load."),
)

WORKSHEET = Worksheet(
    key="power-cut",
    guide="safety",
    question="The pump stops while it burns: how long until it boils?",
    short="Minutes to boiling, the dump that is needed, and what to fit.",
    fields=(
        WATER_OUTPUT,
        PEAK_KNOWN,
        FIRE_LEFT,
        STORE_TOP,
        CHARGE_RISE,
        BOILING_ALTITUDE,
        SYSTEM_PRESSURE,
        JACKET_VOLUME,
        LOOP_FLOWS,
        DAMPER,
        SAFETY_COIL,
        BURN_TIME,
        PUMP_WATTS,
        INVERTER_EFFICIENCY,
        DUMP_OUTPUT,
        OUTLET_HEIGHT,
    ),
    givens=(
        Given(
            "boiling_caution", "temperature_difference", "Margin to boiling worth keeping", "20 F°", "boiling-caution"
        ),
        Given("no_loop", "volume", "No loop counted", "0 gal", "definition"),
        Given("no_dump", "power", "No dump counted", "0 Btu/h", "definition"),
        Given("ten_minutes", "time", "Time enough to run to the stove", "10 min", "common-practice"),
    ),
    cases=(
        peak(),
        Cases(
            "fire_left",
            full=Case(steps=(Step("fire_heat_left", firing.heat_at_output, "Heat still to come to the water"),)),
            weighed=Case(
                fields=(WOOD_LEFT, WOOD_HEAT, WATER_SHARE),
                steps=(
                    Step(
                        "fire_heat_left",
                        safety.fire_heat_left,
                        "Heat still to come to the water",
                        heating_value="wood_heat",
                        share_to_water="water_share",
                    ),
                ),
            ),
        ),
        Cases(
            "loop_flows",
            no=Case(
                steps=(
                    Step(
                        "standing_volume", safety.standing_volume, "Water that takes up the heat", loop_volume="no_loop"
                    ),
                ),
            ),
            yes=Case(
                fields=(LOOP_VOLUME,),
                steps=(Step("standing_volume", safety.standing_volume, "Water that takes up the heat"),),
            ),
        ),
    ),
    steps=(
        Step("barometer", water.barometer, "Air pressure at this height"),
        Step("pressure", water.absolute_pressure, "Absolute pressure at the store's top", gauge="system_pressure"),
        Step("boiling", water.boiling_temperature, "Boiling point at the store's top"),
        Step("outlet_at_peak", safety.outlet_at_peak, "Stove outlet temperature at the peak", rise="charge_rise"),
        Step("density_hot", water.density, "Density of the hot water", temperature="store_top"),
        Step(
            "outlet_pressure",
            pipes.pressure_at_height,
            "Absolute pressure at the stove's outlet",
            absolute_pressure="pressure",
            density="density_hot",
            height="outlet_height",
        ),
        Step("boiling_outlet", water.boiling_temperature, "Water boils there at", pressure="outlet_pressure"),
        Step(
            "outlet_margin",
            water.boiling_margin,
            "Margin before the pump stops",
            boiling="boiling_outlet",
            temperature="outlet_at_peak",
        ),
        Step("specific_heat_hot", water.specific_heat, "Specific heat of it", temperature="store_top"),
        Step(
            "heat_to_boiling",
            safety.heat_to_boiling,
            "Heat it takes up until it boils",
            density="density_hot",
            specific_heat="specific_heat_hot",
            boiling="boiling_outlet",
            hottest_outlet="outlet_at_peak",
        ),
        Step("time_until_spent", safety.time_until_spent, "Time the fire can keep up its peak", us="min", si="min"),
        Step("gross_output", safety.net_output, "Heat with no dump", dump_output="no_dump"),
        Step(
            "minutes_to_boiling",
            safety.time_to_boiling,
            "Until it boils, with no dump",
            net_output="gross_output",
            us="min",
            si="min",
        ),
        Step(
            "time_with_damper",
            safety.time_until_spent,
            "Time the fire lasts with that damper",
            peak_output="dump_needed",
            us="h",
            si="h",
        ),
        Step("net_output", safety.net_output, "Heat left when the dump takes its part", peak_output="dump_needed"),
        Step(
            "minutes_with_dump",
            safety.time_to_boiling,
            "Until it boils, with damper and dump",
            time_until_spent="time_with_damper",
            us="min",
            si="min",
        ),
        Step(
            "heat_into_water",
            safety.heat_into_standing_water,
            "Heat that the dump leaves to the water",
            time_until_spent="time_with_damper",
        ),
        Step(
            "hottest_water",
            safety.hottest_water,
            "Hottest the water gets, with damper and dump",
            hottest_outlet="outlet_at_peak",
            heat="heat_into_water",
            density="density_hot",
            specific_heat="specific_heat_hot",
            boiling="boiling_outlet",
        ),
        Step(
            "heat_boiled_off",
            safety.heat_boiled_off,
            "Heat left to boil water away",
            time_until_spent="time_with_damper",
        ),
        Step("boiling_open", water.boiling_temperature, "Steam let out leaves at", pressure="barometer"),
        Step("latent_heat", safety.latent_heat, "Heat that turns it into steam, by weight", boiling="boiling_open"),
        Step("water_boiled_off", safety.water_boiled_off, "Water boiled away until the fire is spent"),
        Pick(
            "fire_share",
            "fraction",
            "Share of the peak that goes on",
            "damper",
            {"open": "100 %", "shut": "35 %"},
            "damper-shut",
        ),
        Step("dump_needed", safety.dump_needed, "Dump needed"),
        Step(
            "battery_energy",
            safety.battery_energy,
            "Battery energy for the pump",
            pump_power="pump_watts",
            running_time="burn_time",
            us="Wh",
            si="Wh",
        ),
    ),
    results=(
        Result(
            "minutes_to_boiling",
            "Until it boils, with no dump",
            "From {outlet_at_peak} to {boiling_outlet}, at the fire's peak of {peak_output}.",
            figures=2,
            us="min",
            si="min",
            missing="never",
        ),
        Result(
            "minutes_with_dump",
            "Until it boils, with damper and dump",
            "A dump of {dump_output} against {dump_needed} of fire.",
            figures=2,
            us="min",
            si="min",
            missing="never",
        ),
        Result(
            "hottest_water",
            "Hottest the water gets, with damper and dump",
            "At {boiling_outlet} it boils and gets no hotter.",
        ),
        Result("heat_to_boiling", "Heat the water takes up until it boils", "{standing_volume} from {outlet_at_peak}."),
        Result("dump_needed", "Dump needed", "By gravity, with no power, valve, spring check or fan in its way."),
        Result(
            "water_boiled_off", "Water boiled away until the fire is spent", "With damper and dump as given.", figures=2
        ),
        Result("time_until_spent", "The fire can keep up its peak for", figures=2, us="min", si="min"),
        Result("peak_output", "Peak output to water"),
        Result("outlet_at_peak", "Stove outlet temperature at the peak"),
        Result("outlet_margin", "Margin before the pump stops"),
        Result(
            "battery_energy",
            "Battery energy for the pump",
            "Through one burn of {burn_time}.",
            figures=2,
            us="Wh",
            si="Wh",
        ),
    ),
    headline="minutes_to_boiling",
    say="Dump needed: {dump_needed}.",
    say_none="The fire is spent before it boils.",
    advice=(
        Advice(
            "stop",
            "boils-already",
            "outlet_margin <= 0",
            "It boils before the pump ever stops.",
            "The outlet reaches {outlet_at_peak} at the peak and water boils there at {boiling_outlet}: 0 minutes are left. It must "
            "not be lit like this. Charge the store cooler or let more water flow.",
            "iapws-if97",
            stays="store_top >= boiling",
        ),
        Advice(
            "stop",
            "no-way-out",
            "dump_output < dump_needed and not missing(minutes_with_dump)",
            "The heat has nowhere to go.",
            "It boils after {minutes_with_dump}, and {water_boiled_off} leave as steam. Fit a dump for {dump_needed} that works "
            "by gravity alone, and prove it with a small fire, before this stove is lit in earnest.",
            "common-practice",
        ),
        Advice(
            "stop",
            "well-pump",
            "safety_coil == 'well'",
            "The cooling coil has no water in a power cut.",
            "A well pump stops with the lights. A coil counts only on a supply that does not need your power.",
        ),
        Advice(
            "caution",
            "margin",
            "outlet_margin > 0 and outlet_margin < boiling_caution",
            "Little margin to start from.",
            "{outlet_margin} are left before the pump even stops; keep {boiling_caution}.",
            "boiling-caution",
            weight=3,
        ),
        Advice(
            "caution",
            "too-quick",
            "not missing(minutes_to_boiling) and minutes_to_boiling < ten_minutes",
            "Nobody can run that fast.",
            "{minutes_to_boiling} from the pump's stop to steam: no plan may need a person to act. The dump must work by itself.",
            weight=3,
        ),
        Advice(
            "caution",
            "fan",
            "dump_output > no_dump",
            "Nothing in the dump's way.",
            "No hand valve, no valve that can fail shut, no spring check, no fan: a coil behind a blower is never the dump.",
            weight=1,
        ),
        Advice(
            "note",
            "do",
            "peak_output > no_dump",
            "What to do when it happens.",
            "Shut the air, leave the loading door shut, keep away from vent and relief. The dump needs no hand. "
            "Never pour water on the fire, never run cold water into a jacket that has gone dry, never take a hot fire out.",
        ),
        Advice(
            "note",
            "battery",
            "battery_energy > 0",
            "A battery helps and does not replace the dump.",
            "{battery_energy} keep the pump going for one burn. Pumps fail in other ways as well. A generator runs outdoors only, "
            "for its exhaust holds carbon monoxide, and feeds the house through a transfer switch.",
        ),
    ),
    meaning=(
        "A fire cannot be switched off. The jacket holds little water, so it boils in minutes; the gravity dump takes the "
        "heat until the fire is spent, and the vent or relief valve is the last guard behind it.",
    ),
    chart=Chart(
        "Minutes to boiling by what the store is charged to",
        across="store_top",
        low="140 °F",
        high="200 °F",
        lines=(Line("minutes_to_boiling", "until it boils, no dump", "fire"),),
        say="Charged to {store_top}, it boils after {minutes_to_boiling}.",
        us="min",
        si="min",
    ),
    tables=(
        Comparison(
            "What more water or a smaller fire buys",
            rows=(
                Variant("Yours", {}),
                Variant("Twice the water in the jacket", {"jacket_volume": "x2"}),
                Variant("Half the fire", {"water_output": "x0.5"}),
                Variant("Store charged to 160 °F (71 °C)", {"store_top": "160 °F"}),
            ),
            show=("minutes_to_boiling", "dump_needed", "water_boiled_off"),
        ),
    ),
    examples=(
        Example(
            "Mill Row: the cellar stove with its dump",
            {
                "water_output": "60,000 Btu/h",
                "peak_known": "no",
                "fire_left": "full",
                "burn_time": "4 h",
                "store_top": "180 °F",
                "charge_rise": "25 F°",
                "altitude": "3,000 ft",
                "system_pressure": "12 psi",
                "jacket_volume": "20 gal",
                "loop_flows": "no",
                "damper": "open",
                "safety_coil": "none",
                "dump_output": "135,000 Btu/h",
                "outlet_height": "-2 ft",
            },
        ),
        Example("The peak is known", {"peak_known": "yes", "peak_output": "80,000 Btu/h"}),
    ),
    sizes=(Sizes(HEAT_DUMP, "{dump_needed} by gravity, with no power, valve or fan", "{dump_needed}", ("dump",)),),
    leaves_out=(
        "The iron of the stove, which takes up some heat first.",
        "Pressure that rises as the water warms, which delays boiling and is held by the relief valve.",
        "That a peak does not last: this is the careful reckoning.",
    ),
    follow=(
        Next("gravity-loop", "What a dump's loop moves by gravity."),
        Next("relief", "The last guard behind it."),
        Next("boiling", "Where water boils first."),
    ),
)
