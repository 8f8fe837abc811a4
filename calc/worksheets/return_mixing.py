"""How warm must water come back to the stove, and how much hot water must be mixed in?"""

from calc.engine.declare import (
    Advice,
    Chart,
    Comparison,
    Example,
    Field,
    Given,
    Line,
    Must,
    Next,
    Result,
    Step,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import emitters, flue, mixing, water
from calc.vocabulary import AIR_RATIO, ALTITUDE, INDOOR, MOISTURE, ROOM_HUMIDITY, WATER_OUTPUT

STOVE_OUTLET = Field(
    "stove_outlet", "temperature", "Stove outlet temperature", "With a good fire.",
    low="100 °F", high="250 °F", uncertainty="5 F°",
    typical=Typical("175 °F", "common-practice", "160 °F", "190 °F", "The thermometer on the stove's outlet."),
)  # fmt: skip
SYSTEM_RETURN = Field(
    "system_return", "temperature", "Coolest return from store or house",
    "The bottom of a store that has been drawn down, or a cold floor.",
    low="40 °F", high="220 °F", uncertainty="5 F°",
    typical=Typical("100 °F", "common-practice", "70 °F", "130 °F", "A thermometer at the bottom of the store."),
)  # fmt: skip
MAKER_MINIMUM = Field(
    "maker_minimum", "temperature", "Maker's minimum return temperature", "In the stove's manual; many ask for 140 °F.",
    low="70 °F", high="180 °F", unless_given="70 °F",
)  # fmt: skip

WORKSHEET = Worksheet(
    key="return-mixing",
    guide="stove",
    question="How warm must water come back to the stove, and how is it kept so?",
    short="The coolest safe return, and the hot water mixed in to reach it.",
    fields=(
        STOVE_OUTLET,
        SYSTEM_RETURN,
        WATER_OUTPUT,
        MOISTURE,
        AIR_RATIO,
        ALTITUDE,
        INDOOR.but(hint="The room the stove takes its air from."),
        MAKER_MINIMUM,
        ROOM_HUMIDITY,
    ),
    givens=(
        Given("carbon", "fraction", "Carbon in dry wood", "50 %", "wood-composition"),
        Given("hydrogen", "fraction", "Hydrogen in dry wood", "6 %", "wood-composition"),
        Given("oxygen", "fraction", "Oxygen in dry wood", "44 %", "wood-composition"),
        Given("dew_reserve", "temperature_difference", "Margin over the dew point", "15 F°", "return-custom"),
        Given("tar_floor", "temperature", "Floor kept for tar and acids", "131 °F", "return-custom"),
        Given("wet_wood", "fraction", "Wood that is too wet, wet basis", "25 %", "eu-2015-1189"),
        Given("very_hot", "temperature", "Outlet near boiling at many places", "195 °F", "boiling-caution"),
    ),
    steps=(
        Step("barometer", water.barometer, "Air pressure at this height"),
        Step("least_air", flue.least_air, "Air that just burns each weight of dry wood"),
        Step(
            "saturation_pressure", water.vapour_pressure, "Vapor pressure of saturated room air", temperature="indoor"
        ),
        Step("vapour", flue.vapour_in_air, "Vapor pressure of the room air", relative_humidity="room_humidity"),
        Step("humidity_ratio", flue.humidity_ratio, "Water in each weight of its air"),
        Step("steam", flue.steam, "Steam in the gas, kmol a kg of wood"),
        Step("dry_gas", flue.dry_gas, "Dry gas, kmol a kg of wood"),
        Step("steam_pressure", flue.flue_vapour_pressure, "Vapor pressure of the steam in the gas"),
        Step("dew_point", water.boiling_temperature, "Dew point of the flue gas", pressure="steam_pressure"),
        Step("least_return", flue.least_return, "Minimum return temperature", dew_margin="dew_reserve"),
        Step("wanted_lift", flue.lift_needed, "How much the returning water must be warmed"),
        Step(
            "hot_over_return",
            mixing.rise_over_cold,
            "Stove's outlet over the returning water",
            water="stove_outlet",
            cold="system_return",
        ),
        Step(
            "bypass_share",
            mixing.hot_share,
            "Bypass share, by mass",
            wanted_rise="wanted_lift",
            hot_rise="hot_over_return",
        ),
        Step("cold_share", mixing.cold_share, "Returning water, by mass", hot_share="bypass_share"),
        Step(
            "mixed_return",
            mixing.mixed_temperature,
            "Mixed return temperature at the stove",
            hot_share="bypass_share",
            hot="stove_outlet",
            cold="system_return",
        ),
        Step("rise", mixing.rise_over_cold, "Temperature rise through the stove", water="stove_outlet", cold="mixed_return"),
        Step(
            "stream",
            emitters.flow_capacity,
            "Heat the water carries for each degree",
            design_load="water_output",
            water_drop="rise",
        ),
        Step(
            "heat_content",
            water.mean_volume_heat_content,
            "Heat in each volume and degree",
            low="mixed_return",
            top="stove_outlet",
        ),
        Step(
            "stove_flow",
            emitters.design_flow,
            "Flow through the stove",
            flow_capacity="stream",
            heat_capacity="heat_content",
        ),
        Step("mixed_density", water.density, "Weight of each volume as it enters", temperature="mixed_return"),
        Step("hot_density", water.density, "Weight of each volume of hot water", temperature="stove_outlet"),
        Step("return_density", water.density, "Weight of each volume that comes back", temperature="system_return"),
        Step(
            "bypass_flow",
            mixing.part_flow,
            "Bypass flow",
            mixed_flow="stove_flow",
            share="bypass_share",
            density="hot_density",
        ),
        Step(
            "return_flow",
            mixing.part_flow,
            "Flow from the store",
            mixed_flow="stove_flow",
            share="cold_share",
            density="return_density",
        ),
    ),
    results=(
        Result(
            "least_return",
            "Minimum return temperature",
            "The hottest of three: what the maker asks, the dew point with {dew_reserve} over it, and {tar_floor} against tar and acids.",
        ),
        Result(
            "dew_point",
            "Dew point of the flue gas",
            "For wood of {moisture} (wet basis) and room air of {room_humidity}. Below it the steam turns to water on the jacket.",
        ),
        Result(
            "bypass_share",
            "Bypass share, by mass",
            "While {system_return} comes back. It falls to nothing as the store warms.",
        ),
        Result("mixed_return", "Mixed return temperature at the stove"),
        Result("bypass_flow", "Bypass flow", "Measured hot."),
        Result("return_flow", "Flow from the store", "Measured as it comes back."),
        Result(
            "stove_flow",
            "Flow through the stove",
            "Averaged over a burn, at the mean of inlet and outlet.",
            missing="none",
        ),
        Result("rise", "Temperature rise through the stove"),
    ),
    headline="least_return",
    say="Mix in {bypass_share} hot water.",
    musts=(
        Must(
            "stove_outlet > system_return + 1",
            "stove_outlet",
            "Stove outlet temperature must be higher than the coolest return.",
        ),
    ),
    advice=(
        Advice(
            "unworkable",
            "outlet-too-cool",
            "stove_outlet <= least_return",
            "The stove's own water is too cool for this.",
            "It leaves at {stove_outlet} and {least_return} must come back: no mixing reaches that. Run the stove hotter: a "
            "thermostat in the mixing valve holds all water in the short loop until it is.",
            "return-custom",
        ),
        Advice(
            "caution",
            "unprotected",
            "system_return < least_return and stove_outlet > least_return",
            "Without mixing this return is too cool.",
            "{system_return} on the back of the firebox makes water, tar and acid on it, and the jacket rots. A mixing valve "
            "with its own thermostat between stove and store keeps {least_return}.",
            "return-custom",
        ),
        Advice(
            "caution",
            "no-permission",
            "dew_point + dew_reserve < tar_floor",
            "A low dew point is no permission for a cool return.",
            "Water condenses at {dew_point}, tar and acids well above it. {tar_floor}, or what the maker asks, stays the floor.",
            "return-custom",
        ),
        Advice(
            "caution",
            "wet-wood",
            "moisture > wet_wood",
            "Wet wood asks for a warmer return.",
            "At {moisture} water the dew point is {dew_point}. Drier wood helps more than any valve.",
        ),
        Advice(
            "caution",
            "near-boiling",
            "stove_outlet >= very_hot",
            "The outlet is near boiling in many places.",
            "At {stove_outlet} little margin is left; the boiling worksheet tells how much, for your height and pressure.",
            "boiling-caution",
        ),
        Advice(
            "note",
            "power-cut",
            "stove_outlet > least_return",
            "The valve must not stand in the way when the power fails.",
            "Heat must be able to leave the stove without a pump, past any valve. See the power-cut worksheet before you choose one.",
        ),
    ),
    meaning=(
        "The valve passes hot water round the short loop until the stove is warm, then lets in water from the store. A store "
        "charged this way stays layered: only hot water goes in at its top.",
    ),
    chart=Chart(
        "Dew point and coolest return, by how wet the wood is",
        across="moisture",
        low="5 %",
        high="50 %",
        lines=(Line("dew_point", "dew point", "use"), Line("least_return", "coolest return", "limit")),
        say="At {moisture} the dew point is {dew_point}; {least_return} must come back.",
    ),
    tables=(
        Comparison(
            "Other wood, other air",
            rows=(
                Variant("As it is", {}),
                Variant("Wood at 35 % (wet basis)", {"moisture": "35 %"}),
                Variant("Just enough air: ratio 1.3", {"air_ratio": "1.3"}),
                Variant("A lazy fire: ratio 3", {"air_ratio": "3"}),
                Variant("The store cold, 60 °F (16 °C)", {"system_return": "60 °F"}),
                Variant("The store warm, 150 °F (66 °C)", {"system_return": "150 °F"}),
            ),
            show=("dew_point", "least_return", "bypass_share", "mixed_return"),
        ),
    ),
    examples=(
        Example(
            "Mill Row: charging a store that has cooled",
            {
                "stove_outlet": "175 °F",
                "system_return": "100 °F",
                "water_output": "60,000 Btu/h",
                "moisture": "20 %",
                "air_ratio": "2",
                "altitude": "3,000 ft",
                "indoor": "68 °F",
                "maker_minimum": "140 °F",
            },
        ),
    ),
    leaves_out=(
        "The valve's own swing of a few degrees, and its pressure loss.",
        "The first minutes of a fire, when all of the jacket is cold.",
        "Coal: its gas holds acids that condense at more than twice this temperature.",
    ),
    follow=(
        Next("charge-loop", "Flow, pipe and pump between stove and store."),
        Next("power-cut", "What happens to this loop when the power fails."),
        Next("chimney-draught", "The same gas on its way up the flue."),
    ),
)
