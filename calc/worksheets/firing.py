"""How often must I light it?"""

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
    Result,
    Step,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import firing, house, store, water, wood
from calc.vocabulary import (
    ALTITUDE,
    BASE_TEMPERATURE,
    BURN_TIME,
    DEGREE_DAYS,
    DESIGN_LOAD,
    DESIGN_OUTDOOR,
    EFFICIENCY,
    EFFICIENCY_BASIS,
    FIREBOX_VOLUME,
    HEATING_DAYS,
    INDOOR,
    LOAD,
    LOWEST_USEFUL,
    MOISTURE,
    PACKING_DENSITY,
    ROOM_OUTPUT,
    STANDBY_LOSS,
    STORE_TOP,
    STORE_VOLUME,
    SYSTEM_PRESSURE,
    TAP_LOAD,
    WATER_OUTPUT,
)

ROOM_CAN_USE = Field(
    "room_can_use", "power", "Heat the stove's room can lose or pass on",
    "All the stove gives it, unless the room overheats: the room-heat worksheet works it out.",
    low="0 Btu/h", high="500,000 Btu/h", same_as="room_output",
)  # fmt: skip
LOWEST_USEFUL_AVERAGE = Field(
    "lowest_useful_average", "temperature", "Coolest useful water on an average day",
    "In mild weather the emitters do with cooler water; as on the coldest day unless you give it.",
    low="60 °F", high="250 °F", same_as="lowest_useful",
)  # fmt: skip
OUTDOOR = Field(
    "outdoor", "temperature", "Outdoor temperature to look at", "The coldest day's unless you type another.",
    low="-60 °F", high="75 °F", same_as="design_outdoor",
)  # fmt: skip

WORKSHEET = Worksheet(
    key="firing",
    guide="firing",
    question="How often must I light it?",
    short="Loads of wood a day and hours between lightings, against the weather.",
    fields=(
        DESIGN_LOAD,
        WATER_OUTPUT,
        ROOM_OUTPUT,
        BURN_TIME,
        STORE_VOLUME,
        STORE_TOP,
        LOWEST_USEFUL,
        FIREBOX_VOLUME,
        MOISTURE,
        EFFICIENCY_BASIS,
        EFFICIENCY.but(
            hint="What does not go up the flue, to the water and the room together.",
            low="30 %",
            high="100 %",
            typical=Typical(
                {"higher": "68 %", "lower": "75 %"},
                "load-efficiency",
                {"higher": "60 %", "lower": "65 %"},
                {"higher": "75 %", "lower": "82 %"},
                "The test report of the stove.",
                on="efficiency_basis",
            ),
        ),
        PACKING_DENSITY,
        INDOOR,
        DESIGN_OUTDOOR,
        DEGREE_DAYS,
        BASE_TEMPERATURE,
        HEATING_DAYS,
        ALTITUDE,
        SYSTEM_PRESSURE,
        TAP_LOAD,
        STANDBY_LOSS,
        ROOM_CAN_USE,
        LOAD.but(hint="The coldest day's unless you say otherwise."),
        LOWEST_USEFUL_AVERAGE,
        OUTDOOR,
    ),
    givens=(
        Given("dry_heating_value", "heat_per_mass", "Heat in oven-dry wood", "8,600 Btu/lb", "wood-heating-value"),
        Given(
            "boiling_caution", "temperature_difference", "Margin to boiling worth keeping", "20 F°", "boiling-caution"
        ),
    ),
    cases=(
        Cases(
            "efficiency_basis",
            higher=Case(
                steps=(
                    Step("heating_value", wood.higher_heating_value, "Heat in each weight of this wood, higher value"),
                )
            ),
            lower=Case(
                steps=(
                    Step("higher_value", wood.higher_heating_value, "Heat in each weight of this wood, higher value"),
                    Step(
                        "heating_value",
                        wood.lower_heating_value,
                        "The same without the heat of the steam",
                        higher_heating_value="higher_value",
                    ),
                )
            ),
        ),
    ),
    steps=(
        # One load of wood.
        Step("share_to_water", firing.share_to_water, "Share of the stove's heat that goes to the water"),
        Step("heat_per_load", firing.heat_per_load, "What one firebox of this wood gives the water"),
        Step("heat_at_output", firing.heat_at_output, "What the water output and the burn time say"),
        Step("burn_to_water", firing.water_heat_of_burn, "One burn to the water: the smaller"),
        Step(
            "room_of_load",
            firing.room_output_of_load,
            "Heat to the room while it burns",
            water_heat="burn_to_water",
        ),
        Step("barometer", water.barometer, "Air pressure at this height"),
        Step("pressure", water.absolute_pressure, "Absolute pressure in the store", gauge="system_pressure"),
        Step("boiling", water.boiling_temperature, "Water boils there at"),
        # The coldest day.
        Step(
            "load_at_design",
            house.whole_load,
            "All the load on the coldest day, taps and outside losses included",
            space_load="load",
            outside_loss="standby_loss",
        ),
        Step(
            "room_counted", firing.room_heat_counted, "Room heat that counts", room_output="room_of_load", load="load"
        ),
        Step(
            "burn_heat",
            firing.heat_per_burn,
            "Useful heat of one burn",
            water_heat="burn_to_water",
            room_heat_counted="room_counted",
        ),
        Step(
            "burns_per_day_at_design",
            firing.burns_per_day,
            "Loads of wood on the coldest day",
            load="load_at_design",
            heat_per_burn="burn_heat",
        ),
        Step(
            "burning_share",
            firing.burning_share,
            "Share of that day with a fire",
            burns_per_day="burns_per_day_at_design",
        ),
        Step(
            "heat_content",
            water.mean_volume_heat_content,
            "Heat in each volume and degree, lowest useful to top",
            low="lowest_useful",
            top="store_top",
        ),
        Step(
            "usable_heat",
            store.usable_heat,
            "Usable heat of the store",
            volume="store_volume",
            top="store_top",
            low="lowest_useful",
        ),
        Step("fire_output", firing.output_while_burning, "Useful heat while it burns", heat_per_burn="burn_heat"),
        Step(
            "hours_to_charge",
            store.time_to_charge,
            "Hours of fire to fill the store",
            heat="usable_heat",
            water_output="fire_output",
            load="load_at_design",
        ),
        Step("loads_to_charge", firing.loads_to_charge, "Loads of wood to fill it, one after another"),
        Step(
            "hours_cold", store.time_on_heat, "Then the stove stays cold for", heat="usable_heat", load="load_at_design"
        ),
        Step("hours_between_at_design", firing.hours_between, "From one lighting to the next on the coldest day"),
        Step(
            "hours_between_one_load",
            firing.hours_between_single,
            "The same with one load each time",
            burns_per_day="burns_per_day_at_design",
        ),
        Step(
            "burn_share",
            firing.share_that_fits,
            "Share of one burn that fits with no load",
            store_room="usable_heat",
            burn_heat="burn_to_water",
        ),
        # The average day of the season.
        Step("conductance", house.conductance_from_load, "Heat the house loses for each degree"),
        Step("yearly_heat", house.yearly_heat, "Heat for the rooms in a year"),
        Step(
            "space_load_average",
            house.average_load,
            "Mean load of the days that need heat",
            heating_season="heating_days",
        ),
        Step(
            "load_average",
            house.whole_load,
            "All the load on that day",
            space_load="space_load_average",
            outside_loss="standby_loss",
        ),
        Step(
            "room_counted_average",
            firing.room_heat_counted,
            "Room heat that counts on that day",
            room_output="room_of_load",
            load="space_load_average",
        ),
        Step(
            "burn_heat_average",
            firing.heat_per_burn,
            "Useful heat of one burn on that day",
            water_heat="burn_to_water",
            room_heat_counted="room_counted_average",
        ),
        Step(
            "burns_per_day_average",
            firing.burns_per_day,
            "Loads of wood on an average day",
            load="load_average",
            heat_per_burn="burn_heat_average",
        ),
        Step(
            "heat_content_average",
            water.mean_volume_heat_content,
            "Heat in each volume and degree on that day",
            low="lowest_useful_average",
            top="store_top",
        ),
        Step(
            "usable_heat_average",
            store.usable_heat,
            "Usable heat of the store on that day",
            volume="store_volume",
            heat_content="heat_content_average",
            top="store_top",
            low="lowest_useful_average",
        ),
        Step(
            "fire_output_average",
            firing.output_while_burning,
            "Useful heat while it burns on that day",
            heat_per_burn="burn_heat_average",
        ),
        Step(
            "hours_to_charge_average",
            store.time_to_charge,
            "Hours of fire to fill the store on that day",
            heat="usable_heat_average",
            water_output="fire_output_average",
            load="load_average",
        ),
        Step(
            "hours_cold_average",
            store.time_on_heat,
            "Stove cold for, on that day",
            heat="usable_heat_average",
            load="load_average",
        ),
        Step(
            "hours_between_average",
            firing.hours_between,
            "From one lighting to the next on an average day",
            hours_to_charge="hours_to_charge_average",
            hours_cold="hours_cold_average",
        ),
        # Any other day, for the picture.
        Step("space_load_then", house.load_at, "Load of the rooms at the outdoor temperature looked at"),
        Step(
            "load_then",
            house.whole_load,
            "All the load then",
            space_load="space_load_then",
            outside_loss="standby_loss",
        ),
        Step(
            "room_counted_then",
            firing.room_heat_counted,
            "Room heat that counts then",
            room_output="room_of_load",
            load="space_load_then",
        ),
        Step(
            "burn_heat_then",
            firing.heat_per_burn,
            "Useful heat of one burn then",
            water_heat="burn_to_water",
            room_heat_counted="room_counted_then",
        ),
        Step(
            "burns_per_day_then",
            firing.burns_per_day,
            "Loads of wood a day then",
            load="load_then",
            heat_per_burn="burn_heat_then",
        ),
    ),
    results=(
        Result(
            "burns_per_day_at_design",
            "Loads of wood on the coldest day",
            "Of {burn_time} each; the house takes {load_at_design}.",
        ),
        Result(
            "hours_between_at_design",
            "From one lighting to the next, coldest day",
            "Load after load until the store is full, then nothing until it is down to {lowest_useful}.",
            missing="it never goes out",
        ),
        Result("hours_cold", "Of that, the stove is cold for", missing="never"),
        Result(
            "burns_per_day_average",
            "Loads of wood on an average day",
            "Over the {heating_days} whose mean is below {base_temperature}; the house takes {load_average}.",
        ),
        Result("load_average", "The house on an average day", "Taps and outside losses included."),
        Result("hours_between_average", "From one lighting to the next, average day", missing="it never goes out"),
        Result(
            "heat_per_load",
            "What one firebox of this wood gives the water",
            "{firebox_volume} at {packing_density} and {moisture} moisture; {share_to_water} of its heat goes to the "
            "water.",
        ),
        Result(
            "hours_to_charge",
            "Hours of fire to fill the store",
            "On the coldest day, from {lowest_useful} to {store_top}.",
            missing="never fills",
        ),
        Result(
            "loads_to_charge",
            "Loads of wood to fill the store",
            "Loads and lightings are two counts: one lighting may burn several loads.",
            decimals=1,
            missing="never fills",
        ),
        Result("hours_between_one_load", "Lighting to lighting with one load each time", "The store then never fills."),
        Result(
            "burn_share",
            "Share of one burn that fits with no load",
            "A mild day, or the house away: the whole burn goes to the store.",
        ),
        Result("burning_share", "Share of the coldest day with a fire"),
        Result("usable_heat", "Usable heat of the store"),
    ),
    headline="burns_per_day_at_design",
    say="From lighting to lighting: {hours_between_at_design}.",
    musts=(
        Must(
            "indoor > design_outdoor",
            "design_outdoor",
            "Outdoor design temperature must be below the room temperature wanted.",
        ),
    ),
    advice=(
        Advice(
            "unworkable",
            "more-than-a-day",
            "burning_share > 1",
            "This stove cannot carry the house alone.",
            "On the coldest day it would have to burn {burning_share} of the day: the house takes {load_at_design} and "
            "a "
            "fire makes {fire_output} while it burns. A larger stove, less loss, or a second heater is needed.",
        ),
        Advice(
            "unworkable",
            "no-band",
            "lowest_useful >= store_top",
            "This store carries nothing.",
            "The emitters need {lowest_useful} and the store is never hotter than {store_top}: the house is warm only "
            "while the fire burns.",
            zeroes=("usable_heat", "hours_cold", "burn_share"),
        ),
        Advice(
            "stop",
            "boiling",
            "store_top >= boiling",
            "Water boils in this store.",
            "At {altitude} and {system_pressure} it boils at {boiling}, and you ask for {store_top}. "
            "Charge it cooler, and ask the person who installs it about pressure and relief.",
            "iapws-if97",
        ),
        Advice(
            "caution",
            "boiling-margin",
            "store_top < boiling and store_top > boiling - boiling_caution",
            "Little margin to boiling.",
            "The store is charged to {store_top} and boils at {boiling}; keep at least {boiling_caution} between them.",
            "boiling-caution",
        ),
        Advice(
            "caution",
            "wood-too-little",
            "heat_at_output > heat_per_load",
            "One firebox does not hold that much.",
            "{water_output} for {burn_time} would be {heat_at_output}, but one load of this wood gives the water "
            "{heat_per_load}: the smaller counts here. A rated output is an average over many loads.",
        ),
        Advice(
            "caution",
            "burn-does-not-fit",
            "burn_share < 1 and usable_heat > 0",
            "A full burn does not fit this store.",
            "With the house taking nothing, {burn_share} of a burn fits. Store full means fire out, not fire down: a "
            "fire "
            "starved of air makes tar, and tar makes chimney fires. Lay smaller loads, or fit a larger store.",
        ),
        Advice(
            "caution",
            "small-margin",
            "burning_share <= 1 and burning_share > 0.75",
            "Little time is left for the stove to be cold.",
            "In the worst cold it burns {burning_share} of the day. Somebody has to be there to feed it.",
        ),
        Advice(
            "caution",
            "room-overheats",
            "room_can_use < room_of_load",
            "Part of the room's heat does not count.",
            "The stove gives its room {room_of_load} and the room can use {room_counted} of it; the rest overheats it.",
        ),
        Advice(
            "note",
            "several-loads",
            "loads_to_charge > 1.5",
            "One lighting burns several loads.",
            "It takes {loads_to_charge} loads in a row, {hours_to_charge} of fire, to fill the store.",
        ),
        Advice(
            "note",
            "wet-wood",
            "moisture > 0.25",
            "Wetter wood means more lightings.",
            "At {moisture} much of each load's heat goes into drying it; at 20 % a load holds more and the glass stays "
            "clean.",
        ),
    ),
    meaning=(
        "The load sets how much wood you burn. The store sets how often you light it: a larger one means fewer, longer "
        "fires.",
    ),
    chart=Chart(
        "Loads of wood a day by outdoor temperature",
        across="outdoor",
        low="-20 °F",
        high="60 °F",
        lines=(Line("burns_per_day_then", "loads a day", "fire"),),
        say="At {outdoor} the house asks for {burns_per_day_then}.",
    ),
    tables=(
        Comparison(
            "The same stove with another store",
            rows=(
                Variant("Half of it", {"store_volume": "x0.5"}),
                Variant("Yours", {}),
                Variant("Twice as much", {"store_volume": "x2"}),
            ),
            show=("hours_between_at_design", "loads_to_charge", "burn_share"),
            say="The wood is the same in every row: a store changes when you light, not how much you burn.",
        ),
    ),
    examples=(
        Example(
            "Fern Lane: a kitchen stove and 500 gal",
            {
                "design_load": "13,300 Btu/h",
                "water_output": "40,000 Btu/h",
                "room_output": "10,000 Btu/h",
                "burn_time": "4 h",
                "store_volume": "500 gal",
                "store_top": "180 °F",
                "lowest_useful": "110 °F",
                "firebox_volume": "4 ft3",
                "moisture": "20 %",
                "efficiency_basis": "higher",
                "indoor": "68 °F",
                "design_outdoor": "-5 °F",
                "degree_days": "7,800 °F·day",
                "base_temperature": "65 °F",
                "altitude": "3,000 ft",
                "system_pressure": "0 psi",
            },
        ),
    ),
    leaves_out=(
        "Sun, people and lamps, which spare wood on bright days.",
        "What the tank itself loses, unless you give it as lost outside the house.",
        "How layered the tank is: the stove may stay cold longer than a mixed tank says.",
        "Wood burnt to warm up the stove itself.",
    ),
    follow=(
        Next("load-now", "How many loads fit the tank tonight."),
        Next("tank-size", "A store that holds a whole burn."),
        Next("house-load", "A better figure for the load."),
    ),
)
