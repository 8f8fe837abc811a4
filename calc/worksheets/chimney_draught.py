"""Will this flue draw, and where does the fire's air come from?"""

from calc.chains import kind_of_wood
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
    Step,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import arithmetic, flue, water, wood
from calc.vocabulary import (
    AIR_RATIO,
    ALTITUDE,
    AVERAGE_OUTDOOR,
    DRAUGHT_NEEDED,
    EFFICIENCY_BASIS,
    HOUSE_VOLUME,
    INDOOR,
    MOISTURE,
    PEAK_FACTOR,
    ROOM_HUMIDITY,
    ROOM_OUTPUT,
    STOVE_EFFICIENCY,
    WATER_OUTPUT,
)

FLUE_HEIGHT = Field(
    "flue_height",
    "length",
    "Flue height above the stove's outlet",
    "",
    low="3 ft",
    high="100 ft",
    us="ft",
    si="m",
    uncertainty="5 %",
)
FLUE_DIAMETER = Field(
    "flue_diameter",
    "length",
    "Inside diameter of the flue",
    "Of a square flue, take the side.",
    low="3 in",
    high="24 in",
    us="in",
    si="mm",
)
FLUE_WALL = Field(
    "flue_wall",
    "choice",
    "Kind of flue",
    "",
    options=(
        Option("insulated", "insulated metal, double wall with filling"),
        Option("masonry", "brick or block with a liner"),
        Option("single", "single-wall pipe"),
    ),
)
FLUE_PLACE = Field(
    "flue_place",
    "choice",
    "Where the flue runs",
    "",
    options=(Option("inside", "inside the house"), Option("outside", "up an outside wall")),
)
FLUE_BENDS = Field(
    "flue_bends",
    "count",
    "90° bends in the flue",
    "Two of 45° count as one; a tee counts as one and a half.",
    low="0",
    high="12",
    unless_given="1",
)
FANS = Field(
    "fans",
    "air_flow",
    "Exhaust fans with the kitchen hood",
    "At their highest setting: hood, bath fans, clothes dryer, central vacuum.",
    low="0 cfm",
    high="3,000 cfm",
    typical=Typical("250 cfm", "fan-guess", "100 cfm", "600 cfm", "The label inside the hood."),
)
TIGHTNESS = Field(
    "tightness",
    "air_changes",
    "Air changes an hour at 50 Pa",
    "What a blower-door test measures.",
    low="0.2 /h",
    high="60 /h",
    typical=Typical("7 /h", "tightness-guess", "3 /h", "15 /h", "A blower-door test."),
)

_PIPE = {"diameter": "flue_diameter", "height": "flue_height"}


def _around(place: str, film: str) -> tuple[Step, ...]:
    """The steps that depend on the air around the flue."""
    return (
        Step(
            "u_value", flue.flue_u_value, "U-value of the flue's wall", outside_film=film, resistance="wall_resistance"
        ),
        Step("cooling_number", flue.cooling_number, "How far the flue cools its gas", **_PIPE),
        Step("gas_mean", flue.mean_gas, "Mean gas in the flue", entering="gas_leaving", surroundings=place),
        Step(
            "cooling_number_peak",
            flue.cooling_number,
            "How far the flue cools its gas at the peak",
            gas_capacity="gas_capacity_peak",
            **_PIPE,
        ),
        Step(
            "gas_mean_peak",
            flue.mean_gas,
            "Mean gas in the flue at the peak",
            entering="gas_leaving",
            surroundings=place,
            cooling_number="cooling_number_peak",
        ),
        Step("gas_top", flue.gas_at_top, "Flue gas at the top", entering="gas_leaving", surroundings=place),
    )


def _of_fire(peak: str = "", when: str = "") -> tuple[Step, ...]:
    """Air, gas, draft and house for a fire of `burn_rate`: on average, or at its peak."""

    def key(name: str) -> str:
        return f"{name}{peak}"

    return (
        Step(key("dry_burn_rate"), flue.dry_burn_rate, f"The same, oven-dry{when}", burn_rate=key("burn_rate")),
        Step(key("fire_air"), flue.fire_air, f"Combustion air{when}", dry_burn_rate=key("dry_burn_rate")),
        Step(
            key("gas_flow"),
            flue.flue_gas,
            f"Gas up the flue{when}",
            air=key("fire_air"),
            burn_rate=key("burn_rate"),
        ),
        Step(
            key("gas_capacity"),
            flue.gas_capacity,
            f"Heat the gas carries for each degree{when}",
            mass_flow=key("gas_flow"),
        ),
        Step(
            key("flue_density"),
            flue.gas_density,
            f"Weight of the gas in the flue{when}",
            pressure="barometer",
            temperature=key("gas_mean"),
        ),
        Step(
            key("stack_draught"),
            flue.stack_draught,
            f"Draft of the warm gas{when}",
            height="flue_height",
            flue_density=key("flue_density"),
        ),
        Step(
            key("gas_velocity"),
            flue.gas_velocity,
            f"Speed of the gas{when}",
            mass_flow=key("gas_flow"),
            density=key("flue_density"),
            area="flue_area",
        ),
        Step(
            key("flue_loss"),
            flue.flue_loss,
            f"Draft lost to friction and bends{when}",
            density=key("flue_density"),
            velocity=key("gas_velocity"),
            **_PIPE,
        ),
        Step(
            key("fire_flow"),
            flue.volume_flow,
            f"Volume of the fire's air, as it comes in{when}",
            mass_flow=key("fire_air"),
            density="outdoor_density",
        ),
        Step(key("drawn_out"), flue.air_drawn_out, f"Air drawn out of the house{when}", fire_flow=key("fire_flow")),
        Step(
            key("depressurization"),
            flue.depressurization,
            f"How far the house is drawn down{when}",
            drawn_out=key("drawn_out"),
        ),
        Step(
            key("draught_left"),
            flue.draught_left,
            f"Draft left at the stove{when}",
            stack_draught=key("stack_draught"),
            flue_loss=key("flue_loss"),
            depressurization=key("depressurization"),
        ),
    )


WORKSHEET = Worksheet(
    key="chimney-draught",
    guide="stove",
    question="Will this flue draw, and where does the fire's air come from?",
    short="Draft against losses and the kitchen hood, and flue gas against its dew point.",
    fields=(
        WATER_OUTPUT,
        ROOM_OUTPUT,
        EFFICIENCY_BASIS,
        STOVE_EFFICIENCY.but(high="95 %"),
        MOISTURE,
        FLUE_HEIGHT,
        FLUE_DIAMETER,
        FLUE_WALL,
        FLUE_PLACE,
        FANS,
        HOUSE_VOLUME,
        TIGHTNESS,
        AVERAGE_OUTDOOR.but(hint="A flue draws least on a mild day: try one."),
        INDOOR,
        ALTITUDE,
        AIR_RATIO,
        DRAUGHT_NEEDED,
        FLUE_BENDS,
        ROOM_HUMIDITY,
        PEAK_FACTOR,
    ),
    givens=(
        kind_of_wood.ANY_WOOD,
        Given("carbon", "fraction", "Carbon in dry wood", "50 %", "wood-composition"),
        Given("hydrogen", "fraction", "Hydrogen in dry wood", "6 %", "wood-composition"),
        Given("oxygen", "fraction", "Oxygen in dry wood", "44 %", "wood-composition"),
        Given("inside_film", "conductance_per_area", "Film inside the flue", "8 W/m2/K", "en-13384"),
        Given("room_film", "conductance_per_area", "Film outside it, in the house", "8 W/m2/K", "en-13384"),
        Given("weather_film", "conductance_per_area", "Film outside it, in the wind", "23 W/m2/K", "en-13384"),
        Given("friction_factor", "factor", "Friction factor of a sooty flue", "0.04", "flue-friction"),
        Given("leak_exponent", "exponent", "Exponent of a house's leaks", "0.65", "house-leakage"),
        Given("most_depressurization", "draught", "Furthest a house may be drawn down", "4 Pa", "four-pascal"),
        Given("canada_limit", "draught", "The same by Canadian rules", "5 Pa", "five-pascal"),
        Given("no_air", "mass_flow", "No air", "0 lb/h", "definition"),
        Given("nothing", "draught", "No draft", "0 Pa", "definition"),
        Given("tar_gas", "temperature", "Gas below which tar settles fast", "250 °F", "tar-custom"),
        Given("hot_gas", "temperature", "Gas above which ordinary flues are not rated", "750 °F", "flue-class"),
        Given("dew_reserve", "temperature_difference", "Reserve over the dew point", "20 F°", "tar-custom"),
    ),
    cases=(
        Cases(
            "efficiency_basis",
            higher=Case(steps=(Step("burn_rate", flue.burn_rate, "Wood burnt", heating_value="higher_value"),)),
            lower=Case(steps=(Step("burn_rate", flue.burn_rate, "Wood burnt", heating_value="lower_value"),)),
        ),
        Cases(
            "flue_place",
            inside=Case(steps=_around("indoor", "room_film")),
            outside=Case(steps=_around("average_outdoor", "weather_film")),
        ),
    ),
    steps=(
        # The fire.
        Step("barometer", water.barometer, "Air pressure at this height"),
        Step("higher_value", wood.higher_heating_value, "Heat in each weight of this wood, higher value"),
        Step(
            "lower_value",
            wood.lower_heating_value,
            "The same without the heat of the steam",
            higher_heating_value="higher_value",
        ),
        Step("fuel_heat", flue.fuel_heat, "Heat that the wood brings in"),
        Step("least_air", flue.least_air, "Air that just burns each weight of dry wood"),
        *_of_fire(),
        Step("burn_rate_peak", flue.peak_burn_rate, "Wood burnt at the peak"),
        *_of_fire("_peak", " at the peak"),
        Step("least_draught", flue.least_draught, "Draft left, on average or at the peak, whichever is less"),
        Step("heat_fed", flue.heat_fed, "Heat fed, without that of the steam", heating_value="lower_value"),
        Step("gas_leaving", flue.gas_leaving, "Flue gas leaving the stove", fuel_heat="heat_fed"),
        # The flue.
        Pick(
            "wall_resistance",
            "thermal_resistance",
            "R-value of the flue's wall",
            on="flue_wall",
            values={"insulated": "0.4 m2K/W", "masonry": "0.12 m2K/W", "single": "0 m2K/W"},
            source="flue-walls",
        ),
        Step(
            "outdoor_density",
            flue.gas_density,
            "Weight of outdoor air",
            pressure="barometer",
            temperature="average_outdoor",
        ),
        Step("flue_area", arithmetic.circle_area, "Area of the flue", us="in²", si="cm²", diameter="flue_diameter"),
        Step("loss_coefficient", flue.flue_fittings, "Entry, cap and bends in velocity heads", bends="flue_bends"),
        # The house.
        Step(
            "leakage_at_fifty", flue.leakage_at_fifty, "Leaks of the house at 50 Pa", air_changes_at_fifty="tightness"
        ),
        Step("make_up_air", flue.make_up_air, "Air to let in besides the leaks", limit="most_depressurization"),
        Step("fire_alone", flue.depressurization, "Drawn down by the fire alone", drawn_out="fire_flow"),
        Step("draught_fans_off", flue.draught_left, "Draft left with the fans off", depressurization="fire_alone"),
        # The dew point.
        Step(
            "saturation_pressure", water.vapour_pressure, "Vapor pressure of saturated room air", temperature="indoor"
        ),
        Step("vapour", flue.vapour_in_air, "Vapor pressure of the room air", relative_humidity="room_humidity"),
        Step("humidity_ratio", flue.humidity_ratio, "Water in its air, by weight"),
        Step("steam", flue.steam, "Steam in the gas, kmol a kg of wood"),
        Step("dry_gas", flue.dry_gas, "Dry gas, kmol a kg of wood"),
        Step("steam_pressure", flue.flue_vapour_pressure, "Vapor pressure of the steam in the gas"),
        Step("dew_point", water.boiling_temperature, "Dew point of the flue gas", pressure="steam_pressure"),
        Step("dew_margin", flue.dew_margin, "Gas at the top over its dew point", gas="gas_top"),
    ),
    results=(
        Result(
            "draught_left",
            "Draft left at the stove, fans on",
            "What is left for the stove after friction and the pull of the fans.",
            figures=2,
            us="in w.c.",
            si="Pa",
        ),
        Result(
            "draught_left_peak",
            "Draft left at the fire's peak, fans on",
            "With {peak_factor} times the average fire, as efficient and with as much air for each weight of wood.",
            figures=2,
            us="in w.c.",
            si="Pa",
        ),
        Result("draught_fans_off", "Draft left with the fans off", figures=2, us="in w.c.", si="Pa"),
        Result(
            "stack_draught", "Draft of the warm gas", "{flue_height} of it, with {average_outdoor} outside.", figures=2
        ),
        Result("flue_loss", "Draft lost to friction and bends", figures=2),
        Result(
            "depressurization",
            "Depressurization by fire and fans",
            "How far the house is drawn below the air outside.",
            figures=2,
        ),
        Result("fire_flow", "Combustion air", "The fans take {fans}.", figures=2),
        Result(
            "make_up_air",
            "Make-up air needed, fans on",
            "So that the house stays within {most_depressurization} of the pressure outside.",
            figures=2,
        ),
        Result("gas_leaving", "Flue gas leaving the stove", "What the water and the room have left of its heat."),
        Result("gas_top", "Flue gas at the top"),
        Result("dew_point", "Dew point of the flue gas", "Below it, water runs down the flue."),
    ),
    headline="draught_left",
    say="{draught_needed} is what the stove needs.",
    advice=(
        Advice(
            "stop",
            "backdraught",
            "draught_left <= nothing",
            "Smoke and carbon monoxide will come into the room.",
            "With the fans on, {depressurization} pulls the house down and the flue gives {stack_draught} before its losses. "
            "Do not run them with a fire lit. Let in {make_up_air}, and ask a licensed installer or sweep before you light it.",
            "four-pascal",
        ),
        Advice(
            "stop",
            "backdraught-at-peak",
            "draught_left > nothing and draught_left_peak <= nothing",
            "Smoke and carbon monoxide will come into the room at the fire's height.",
            "At its peak the fire pushes so much gas through this flue that {flue_loss_peak} of the {stack_draught_peak} are "
            "lost, and {depressurization_peak} pulls the house down. A wider flue or a smaller fire; ask a licensed "
            "installer or sweep before you light it.",
            "four-pascal",
        ),
        Advice(
            "caution",
            "weak-at-peak",
            "draught_left >= draught_needed and draught_left_peak > nothing and draught_left_peak < draught_needed",
            "The draft is weak at the fire's height.",
            "{draught_left} is left on average, {draught_left_peak} at the peak; the stove asks for {draught_needed}.",
            "test-draught",
        ),
        Advice(
            "caution",
            "weak",
            "draught_left > nothing and draught_left < draught_needed",
            "The draft is weak.",
            "Of the {draught_needed} that the stove asks for, {draught_left} is left. A taller or better insulated flue, "
            "fewer bends, or hotter gas make more.",
            "test-draught",
            weight=3,
        ),
        Advice(
            "caution",
            "drawn-down",
            "depressurization > most_depressurization and draught_left > nothing",
            "The fans draw the house down too far.",
            "It is {depressurization} where German sweeps allow {most_depressurization} and Canadian rules {canada_limit} at most. Let in "
            "{make_up_air}, or lock the hood so that it runs only with a window open.",
            "four-pascal",
            weight=3,
        ),
        Advice(
            "caution",
            "condensing",
            "dew_margin < dew_reserve",
            "Water will run down this flue.",
            "The gas leaves the top at {gas_top} and its dew point is {dew_point}. A liner, insulation, drier wood or less "
            "heat taken from the gas keep it dry.",
            "tar-custom",
            weight=3,
        ),
        Advice(
            "caution",
            "tarry",
            "gas_top < tar_gas and dew_margin >= dew_reserve",
            "Tar settles in a flue this cool.",
            "Gas at {gas_top} is above its dew point and still leaves tar, which can burn as a chimney fire. Sweep often, and "
            "never shut a fire down to save wood.",
            "tar-custom",
        ),
        Advice(
            "caution",
            "hot",
            "gas_leaving > hot_gas",
            "The gas is hotter than ordinary flues are rated for.",
            "It leaves the stove at {gas_leaving}. Check the class of the flue, its clearances, and whether the efficiency "
            "you gave is right.",
            "flue-class",
            weight=3,
        ),
        Advice(
            "caution",
            "single-wall",
            "flue_wall == 'single'",
            "Single-wall pipe is only for the way to the flue.",
            "It is no chimney: it must not pass through a ceiling, a wall or the roof, and it needs wide clearances.",
            "common-practice",
        ),
        Advice(
            "note",
            "alarm",
            "fire_air > no_air",
            "Fit a carbon monoxide alarm.",
            "One in the room with the stove and one where people sleep. No calculation replaces it.",
        ),
        Advice(
            "note",
            "who-takes-air",
            "fans > fire_flow",
            "The hood takes far more air than the fire.",
            "{fans} against {fire_flow}. It is the hood, not the stove, that decides how much air must be let in.",
        ),
    ),
    meaning=(
        "The flue must pull harder than the fans do, on a mild day as well. Try 50 °F (10 °C) outside, and the fans at their highest.",
    ),
    picture=Picture(
        "stove",
        "A stove cut open: the dotted jacket of water takes its share of the fire before the gas leaves.",
        {"water": "water_output", "room": "room_output", "leaving": "gas_leaving"},
    ),
    chart=Chart(
        "Draft left, by how warm it is outside",
        across="average_outdoor",
        low="-20 °F",
        high="64 °F",
        lines=(
            Line("draught_left", "fans on", "use"),
            Line("draught_fans_off", "fans off", "fire"),
            Line("draught_needed", "needed", "limit"),
        ),
        say="At {average_outdoor} outside {draught_left} is left with the fans on and {draught_fans_off} with them off.",
    ),
    tables=(
        Comparison(
            "What helps, what harms",
            rows=(
                Variant("As it is", {}),
                Variant("A mild day, 55 °F (13 °C)", {"average_outdoor": "55 °F"}),
                Variant("Fans off", {"fans": "0 cfm"}),
                Variant("A hood of 600 cfm (1000 m³/h)", {"fans": "600 cfm"}),
                Variant("Twice as tight a house", {"tightness": "x0.5"}),
                Variant("Half as high a flue again", {"flue_height": "x1.5"}),
            ),
            show=("draught_left", "depressurization", "gas_top"),
        ),
    ),
    examples=(
        Example(
            "Fern Lane: the kitchen stove and its hood",
            {
                "water_output": "40,000 Btu/h",
                "room_output": "10,000 Btu/h",
                "efficiency_basis": "higher",
                "efficiency": "68 %",
                "moisture": "20 %",
                "flue_height": "20 ft",
                "flue_diameter": "6 in",
                "flue_wall": "insulated",
                "flue_place": "inside",
                "fans": "170 cfm",
                "house_volume": "9,200 ft3",
                "tightness": "7 /h",
                "average_outdoor": "28 °F",
                "indoor": "68 °F",
                "altitude": "3,000 ft",
            },
        ),
    ),
    leaves_out=(
        "Wind, which helps one flue and blows down another.",
        "Starting up: a cold flue up an outside wall can flow the wrong way before it is warm.",
        "A fire that is shut down: its gas is cooler and its draft weaker than worked out here.",
        "Clearances, floor protection, the class and the state of the flue: a sweep or installer must look.",
    ),
    follow=(
        Next("room-heat", "What the stove does to the room it stands in."),
        Next("return-mixing", "How warm the water must come back so that the stove stays dry."),
    ),
)
