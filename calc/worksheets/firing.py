"""How often must I light it?"""

from calc.chains import one_load, outlet
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
    Variant,
    Worksheet,
)
from calc.physics import firing, house, store, water
from calc.vocabulary import (
    BASE_TEMPERATURE,
    BURN_TIME,
    DEGREE_DAYS,
    DESIGN_LOAD,
    DESIGN_OUTDOOR,
    HEATING_DAYS,
    INDOOR,
    LOAD,
    LOWEST_USEFUL,
    LOWEST_USEFUL_AVERAGE,
    ROOM_CAN_USE,
    ROOM_OUTPUT,
    STANDBY_LOSS,
    STORE_TOP,
    STORE_VOLUME,
    TAP_LOAD,
    WATER_OUTPUT,
)

OUTDOOR = Field(
    "outdoor",
    "temperature",
    "Outdoor temperature to look at",
    "The coldest day's unless you type another.",
    low="-60 °F",
    high="75 °F",
    same_as="design_outdoor",
)


def _burns(day: str, space_load: str, load: str, burns_per_day: str, ending: str = "") -> tuple[Step, ...]:
    """How many loads of wood a day takes; `ending` is what the keys of its own steps end in."""
    return (
        Step(
            load,
            house.whole_load,
            f"All the load {day}, taps and outside losses included",
            space_load=space_load,
            outside_loss="standby_loss",
        ),
        Step(
            f"room_counted{ending}",
            firing.room_heat_counted,
            f"Room heat that counts {day}",
            room_output="room_of_load",
            load=space_load,
        ),
        Step(
            f"burn_heat{ending}",
            firing.heat_per_burn,
            f"Useful heat of one burn {day}",
            water_heat="burn_to_water",
            room_heat_counted=f"room_counted{ending}",
        ),
        Step(
            burns_per_day,
            firing.burns_per_day,
            f"Loads of wood {day}",
            load=load,
            heat_per_burn=f"burn_heat{ending}",
        ),
    )


def _lighting(day: str, load: str, low: str, hours_between: str, ending: str = "") -> tuple[Step, ...]:
    """One lighting on such a day: how long it burns, what it leaves in the store, how long the stove then stays cold."""
    return (
        Step(
            f"heat_content{ending}",
            water.mean_volume_heat_content,
            f"Heat in each volume and degree {day}, lowest useful to top",
            low=low,
            top="store_top",
        ),
        Step(
            f"usable_heat{ending}",
            store.usable_heat,
            f"Usable heat of the store {day}",
            volume="store_volume",
            heat_content=f"heat_content{ending}",
            top="store_top",
            low=low,
        ),
        Step(
            f"fire_output{ending}",
            firing.output_while_burning,
            f"Useful heat while it burns {day}",
            heat_per_burn=f"burn_heat{ending}",
        ),
        Step(
            f"hours_to_charge{ending}",
            store.time_to_charge,
            f"Hours of fire to fill the store {day}",
            heat=f"usable_heat{ending}",
            water_output=f"fire_output{ending}",
            load=load,
        ),
        Step(
            f"hours_lit{ending}",
            firing.hours_lit,
            f"Hours of fire in one lighting {day}",
            heat=f"usable_heat{ending}",
            load=load,
        ),
        Step(
            f"heat_stored{ending}",
            firing.heat_stored,
            f"Heat in the store after it {day}",
            heat=f"usable_heat{ending}",
            fire_output=f"fire_output{ending}",
            load=load,
            hours_lit=f"hours_lit{ending}",
        ),
        Step(
            f"hours_cold{ending}",
            store.time_on_heat,
            f"Then the stove stays cold {day} for",
            heat=f"heat_stored{ending}",
            load=load,
        ),
        Step(
            hours_between,
            firing.hours_between,
            f"From one lighting to the next {day}",
            hours_lit=f"hours_lit{ending}",
            hours_cold=f"hours_cold{ending}",
        ),
    )


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
        one_load.FIREBOX_KNOWN,
        INDOOR,
        DESIGN_OUTDOOR,
        DEGREE_DAYS,
        BASE_TEMPERATURE,
        HEATING_DAYS,
        *outlet.FIELDS,
        TAP_LOAD,
        STANDBY_LOSS,
        ROOM_CAN_USE,
        LOAD.but(hint="The coldest day's unless you say otherwise."),
        LOWEST_USEFUL_AVERAGE,
        OUTDOOR,
    ),
    givens=(
        *one_load.GIVENS,
        one_load.JUST_FITS,
        Given("waking_hours", "time", "Hours a day in which somebody is awake to feed it", "16 h", "common-practice"),
        *outlet.GIVENS,
    ),
    cases=(one_load.burn("burn_to_water", "One burn to the water"),),
    steps=(
        *outlet.STEPS,
        # The coldest day.
        *_burns("on the coldest day", "load", "load_at_design", "burns_per_day_at_design"),
        Step(
            "burning_share",
            firing.burning_share,
            "Share of that day with a fire",
            burns_per_day="burns_per_day_at_design",
        ),
        *_lighting("on the coldest day", "load_at_design", "lowest_useful", "hours_between_at_design"),
        Step("loads_to_charge", firing.loads_to_charge, "Loads of wood to fill it, one after another"),
        Step("hours_tended", firing.hours_tended, "Hours of that day with a fire"),
        Step(
            "hours_between_one_load",
            firing.hours_between_single,
            "From one lighting to the next with one load each time",
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
        Step("yearly_heat", house.yearly_heat, "Space heating in a year"),
        Step(
            "space_load_average",
            house.average_load,
            "Mean load of the days that need heat",
            heating_season="heating_days",
        ),
        *_burns("on an average day", "space_load_average", "load_average", "burns_per_day_average", "_average"),
        *_lighting("on an average day", "load_average", "lowest_useful_average", "hours_between_average", "_average"),
        Step(
            "burning_share_average",
            firing.burning_share,
            "Share of an average day with a fire",
            burns_per_day="burns_per_day_average",
        ),
        Step(
            "hours_tended_average",
            firing.hours_tended,
            "Hours of an average day with a fire",
            burning_share="burning_share_average",
        ),
        # Any other day, for the picture.
        Step("space_load_then", house.load_at, "Load of the rooms at the outdoor temperature looked at"),
        *_burns("then", "space_load_then", "load_then", "burns_per_day_then", "_then"),
    ),
    results=(
        Result(
            "burns_per_day_at_design",
            "Loads of wood on the coldest day",
            "Of {burn_time} each; the house takes {load_at_design}.",
            figures=2,
        ),
        Result(
            "hours_between_at_design",
            "From one lighting to the next, coldest day",
            "Load after load for {hours_lit}, then nothing until the store is down to {lowest_useful}.",
            missing="it never goes out",
            figures=2,
        ),
        Result("hours_cold", "Of that, the stove is cold for", missing="never", figures=2),
        Result("hours_tended", "Hours of the coldest day with a fire", "Somebody feeds it for that long.", figures=2),
        Result(
            "burns_per_day_average",
            "Loads of wood on an average day",
            "Over the {heating_days} whose mean is below {base_temperature}; the house takes {load_average}.",
            figures=2,
        ),
        Result("hours_tended_average", "Hours of an average day with a fire", figures=2),
        Result("load_average", "The house on an average day", "Taps and outside losses included."),
        Result(
            "hours_between_average",
            "From one lighting to the next, average day",
            missing="it never goes out",
            figures=2,
        ),
        Result(
            "heat_per_load",
            "What one firebox of this wood gives the water",
            "{firebox_volume} at {packing_density} and {moisture} moisture; {share_to_water} of its heat goes to the "
            "water.",
            only=("firebox_known", "yes"),
        ),
        Result(
            "hours_to_charge",
            "Hours of fire to fill the store",
            "On the coldest day, from {lowest_useful} to {store_top}.",
            missing="never fills",
            figures=2,
        ),
        Result(
            "loads_to_charge",
            "Loads of wood to fill the store",
            "Loads and lightings are two counts: one lighting may burn several loads.",
            decimals=1,
            missing="never fills",
        ),
        Result(
            "hours_between_one_load",
            "Lighting to lighting with one load each time",
            "The store then never fills.",
            figures=2,
        ),
        Result(
            "burn_share",
            "Share of one burn that fits with no load",
            "A mild day, or the house away: the whole burn goes to the store.",
        ),
        Result("burns_per_day_then", "Loads of wood a day at {outdoor}", figures=2),
        Result("burning_share", "Share of the coldest day with a fire"),
        Result("usable_heat", "Usable heat of the store"),
        outlet.RESULT,
    ),
    headline="burns_per_day_at_design",
    say="There is a fire for {hours_tended} of the coldest day.",
    musts=(
        Must(
            "indoor > design_outdoor",
            "design_outdoor",
            "Outdoor design temperature must be below the room temperature wanted.",
        ),
    ),
    advice=(
        *outlet.ADVICE,
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
            "What draws on it needs {lowest_useful}, and it is never hotter than {store_top}: the house is warm only "
            "while the fire burns.",
            zeroes=("usable_heat", "hours_cold", "burn_share"),
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
            "burn_share < just_fits and usable_heat > 0",
            "A full burn does not fit this store.",
            "With the house taking nothing, {burn_share} of a burn fits. Store full means fire out, not fire down: a "
            "fire "
            "starved of air makes tar, and tar makes chimney fires. Lay smaller loads, or fit a larger store.",
            weight=3,
            cause=one_load.SMALL_STORE,
        ),
        Advice(
            "caution",
            "long-stoking",
            "burning_share <= 1 and hours_tended > waking_hours",
            "It must be fed at night.",
            "In the worst cold there is a fire for {hours_tended} of the day, and people are awake for {waking_hours}. A "
            "larger stove, a larger firebox or less loss gives the nights back.",
            weight=3,
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
            "no-firebox",
            "firebox_known == 'no'",
            "The printed output is taken at its word.",
            "Whether one load of wood holds {burn_to_water} was not looked at: give the firebox volume.",
        ),
        Advice(
            "note",
            "several-loads",
            "loads_to_charge > 1.5 and hours_to_charge <= waking_hours",
            "One lighting burns several loads.",
            "It takes {loads_to_charge} loads in a row, {hours_to_charge} of fire, to fill the store.",
        ),
        Advice(
            "caution",
            "never-full",
            "hours_to_charge > waking_hours and burning_share <= 1",
            "One day's fire does not fill this store.",
            "Filling it on the coldest day would take {hours_to_charge} of fire without a break. The house takes most of "
            "what the fire makes.",
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
            show=("hours_between_at_design", "hours_cold", "loads_to_charge", "burn_share"),
            say="The wood is the same in every row: a store changes when you light, not how much you burn.",
        ),
    ),
    examples=(
        Example(
            "Fern Lane: a kitchen stove and an open store",
            {
                "design_load": "13,300 Btu/h",
                "water_output": "40,000 Btu/h",
                "room_output": "10,000 Btu/h",
                "burn_time": "2 h",
                "store_volume": "500 gal",
                "store_top": "170 °F",
                "lowest_useful": "130 °F",
                "firebox_known": "yes",
                "firebox_volume": "2 ft3",
                "moisture": "20 %",
                "efficiency_basis": "higher",
                "indoor": "68 °F",
                "design_outdoor": "-5 °F",
                "degree_days": "7,800 °F·day",
                "base_temperature": "65 °F",
                "altitude": "3,000 ft",
                "charge_rise": "15 F°",
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
