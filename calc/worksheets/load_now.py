"""I read these tank temperatures now: how many loads fit, and when must I light?"""

from calc.chains import outlet
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
    BURN_TIME,
    DESIGN_LOAD,
    DESIGN_OUTDOOR,
    INDOOR,
    LOWEST_USEFUL,
    STANDBY_LOSS,
    STORE_TOP,
    STORE_VOLUME,
    TAP_LOAD,
    WATER_OUTPUT,
)


def _reading(key: str, label: str, hint: str) -> Field:
    return Field(key, "temperature", label, hint, low="33 °F", high="280 °F", uncertainty="2 F°")


READING_UPPER = _reading("reading_upper", "Upper thermometer now", "The middle of the tank's top third.")
READING_MIDDLE = _reading("reading_middle", "Middle thermometer now", "With one thermometer only, type it three times.")
READING_LOWER = _reading("reading_lower", "Lower thermometer now", "The middle of the tank's bottom third.")
OUTDOOR_TOMORROW = Field(
    "outdoor_tomorrow",
    "temperature",
    "Outdoor temperature in the coming day",
    "Halfway between the high and the low of the forecast.",
    low="-60 °F",
    high="75 °F",
    uncertainty="4 F°",
)

WORKSHEET = Worksheet(
    key="load-now",
    guide="firing",
    question="How many loads fit the tank now, and when must I light?",
    short="From the thermometers on the tank and tomorrow's weather: loads that fit, hours left.",
    fields=(
        READING_UPPER,
        READING_MIDDLE,
        READING_LOWER,
        OUTDOOR_TOMORROW,
        STORE_VOLUME,
        STORE_TOP,
        LOWEST_USEFUL,
        WATER_OUTPUT,
        BURN_TIME,
        DESIGN_LOAD,
        INDOOR,
        DESIGN_OUTDOOR,
        *outlet.FIELDS,
        TAP_LOAD,
        STANDBY_LOSS,
    ),
    givens=(
        *outlet.GIVENS,
        Given("crossed", "temperature_difference", "Thermometers that look crossed", "5 F°", "definition"),
        Given("soon", "time", "Soon", "2 h", "definition"),
    ),
    steps=(
        Step(
            "mean_temperature",
            firing.mean_of_readings,
            "Mean temperature of the tank",
            upper="reading_upper",
            middle="reading_middle",
            lower="reading_lower",
        ),
        Step(
            "heat_content",
            water.mean_volume_heat_content,
            "Heat in each volume and degree, lowest useful to top",
            low="lowest_useful",
            top="store_top",
        ),
        Step(
            "heat_now",
            firing.heat_above,
            "Usable heat in the tank now",
            volume="store_volume",
            upper="reading_upper",
            middle="reading_middle",
            lower="reading_lower",
            low="lowest_useful",
        ),
        Step(
            "room_left",
            firing.room_below,
            "Heat that the tank still takes",
            volume="store_volume",
            upper="reading_upper",
            middle="reading_middle",
            lower="reading_lower",
            top="store_top",
        ),
        Step("conductance", house.conductance_from_load, "Heat the house loses for each degree"),
        Step("space_load", house.load_at, "Load of the rooms tomorrow", outdoor="outdoor_tomorrow"),
        Step("load_tomorrow", house.whole_load, "All the load tomorrow", outside_loss="standby_loss"),
        Step("burn_heat", firing.heat_at_output, "Heat of one load to the water"),
        Step("loads_that_fit", firing.loads_that_fit, "Loads that fit if the house takes nothing"),
        Step("heat_left", firing.heat_left_of_burn, "What one load leaves for the tank", load="load_tomorrow"),
        Step(
            "loads_with_load",
            firing.loads_that_fit,
            "Loads that fit if the house takes all that",
            burn_heat="heat_left",
        ),
        Step(
            "hours_until_lighting",
            firing.time_until_lighting,
            "Usable heat lasts",
            heat="heat_now",
            load="load_tomorrow",
        ),
        Step("hours_until_room", firing.time_until_room, "A whole load fits in", load="load_tomorrow"),
        *outlet.STEPS,
        Step(
            "full_heat",
            store.usable_heat,
            "Usable heat of the full tank",
            volume="store_volume",
            top="store_top",
            low="lowest_useful",
        ),
    ),
    results=(
        Result(
            "loads_that_fit",
            "Loads that fit with no load",
            "Until the whole tank is at {store_top} while the house takes nothing. Burn only whole loads: the figure "
            "before the point.",
            decimals=1,
        ),
        Result(
            "loads_with_load",
            "Loads that fit while the house draws",
            "If it really takes {load_tomorrow} all the while.",
            decimals=1,
            missing="no end: the house takes it all",
        ),
        Result(
            "hours_until_lighting",
            "Usable heat lasts: light before then",
            "What the tank holds over a load of {load_tomorrow}.",
            missing="as long as it stays this mild",
            figures=2,
        ),
        Result(
            "hours_until_room",
            "A whole load fits in",
            "When the house has drawn enough; 0 if one fits now.",
            missing="not before the house draws heat",
            figures=2,
        ),
        Result("heat_now", "Usable heat in the tank now", "What each third holds above {lowest_useful}."),
        Result("room_left", "Heat that the tank still takes", "Until all of it is at {store_top}."),
        Result("load_tomorrow", "The house tomorrow", "At {outdoor_tomorrow}, taps and outside losses included."),
        Result("mean_temperature", "Mean temperature of the tank"),
        outlet.RESULT,
    ),
    headline="loads_that_fit",
    say="Its usable heat lasts {hours_until_lighting}.",
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
            "stop",
            "boils-now",
            "reading_upper >= boiling or reading_middle >= boiling or reading_lower >= boiling",
            "The tank is at boiling.",
            "Water boils there at {boiling} and a thermometer shows as much. Light nothing, open no valve or lid near "
            "it, let the house draw all it can, and call the person who looks after it.",
            "iapws-if97",
        ),
        Advice(
            "unworkable",
            "no-band",
            "lowest_useful >= store_top",
            "This store carries nothing.",
            "What draws on it needs {lowest_useful}, and it is never hotter than {store_top}.",
            zeroes=("heat_now", "hours_until_lighting"),
        ),
        Advice(
            "unworkable",
            "fire-too-small",
            "water_output <= load_tomorrow",
            "This fire does not keep up tomorrow.",
            "It gives the water {water_output} while it burns and the house takes {load_tomorrow}: the tank keeps "
            "falling even with a fire.",
        ),
        Advice(
            "caution",
            "no-whole-load",
            "loads_that_fit < 1",
            "A whole load does not fit now.",
            "The tank takes {room_left} more and a load brings {burn_heat}. Wait {hours_until_room}, or lay a smaller "
            "load. A full store with a fire in the stove means a fire starved of air: tar, and then a chimney fire.",
        ),
        Advice(
            "caution",
            "no-window",
            "hours_until_room > hours_until_lighting",
            "No moment suits a whole load.",
            "The tank is too cool for the house in {hours_until_lighting}, and takes a whole load only in "
            "{hours_until_room}. Lay smaller loads, or fit a larger store.",
        ),
        Advice(
            "caution",
            "below-useful",
            "heat_now <= 0",
            "The tank is too cool to heat the house now.",
            "No part of it is above {lowest_useful}. Light as soon as somebody can watch the fire.",
        ),
        Advice(
            "caution",
            "light-soon",
            "heat_now > 0 and hours_until_lighting < soon",
            "Light soon.",
            "The tank carries the house for {hours_until_lighting} more.",
        ),
        Advice(
            "caution",
            "crossed",
            "reading_lower > reading_upper + crossed or reading_middle > reading_upper + crossed",
            "The thermometers look crossed.",
            "The upper one shows {reading_upper}, the middle one {reading_middle} and the lower one {reading_lower}. "
            "Hot water rises: a tank at rest is hottest on top.",
        ),
        Advice(
            "note",
            "whole-loads",
            "loads_that_fit >= 1",
            "Count whole loads only.",
            "The last part of a load has nowhere to go. The house may draw less than the forecast says.",
        ),
        Advice(
            "note",
            "night",
            "hours_until_lighting > soon",
            "Light while there is still heat.",
            "An hour or two before the tank is down to {lowest_useful}, the fire has time to take hold.",
        ),
    ),
    meaning=(
        "Two limits stand against each other. The tank must be cool enough to take a whole load: so in "
        "{hours_until_room}. It must be warm enough to heat the house until then: it lasts {hours_until_lighting}.",
    ),
    chart=Chart(
        "Hours by the coming day's outdoor temperature",
        across="outdoor_tomorrow",
        low="-20 °F",
        high="60 °F",
        lines=(
            Line("hours_until_lighting", "usable heat lasts", "use"),
            Line("hours_until_room", "a whole load fits in", "fire"),
        ),
        say="At {outdoor_tomorrow} the heat lasts {hours_until_lighting}; a whole load fits in {hours_until_room}.",
    ),
    tables=(
        Comparison(
            "If the coming day is different",
            rows=(
                Variant("As forecast", {}),
                Variant("A very cold day, −10 °F (−23 °C)", {"outdoor_tomorrow": "-10 °F"}),
                Variant("A frosty day, 20 °F (−7 °C)", {"outdoor_tomorrow": "20 °F"}),
                Variant("A mild day, 45 °F (7 °C)", {"outdoor_tomorrow": "45 °F"}),
            ),
            show=("load_tomorrow", "hours_until_lighting", "hours_until_room", "loads_that_fit"),
            say="The loads that fit do not depend on the weather: they are counted with the house taking nothing.",
        ),
    ),
    examples=(
        Example(
            "Fern Lane: an evening in January",
            {
                "reading_upper": "150 °F",
                "reading_middle": "145 °F",
                "reading_lower": "130 °F",
                "outdoor_tomorrow": "15 °F",
                "store_volume": "500 gal",
                "store_top": "170 °F",
                "lowest_useful": "130 °F",
                "water_output": "40,000 Btu/h",
                "burn_time": "2 h",
                "design_load": "13,300 Btu/h",
                "indoor": "68 °F",
                "design_outdoor": "-5 °F",
                "altitude": "3,000 ft",
                "system_pressure": "0 psi",
            },
        ),
    ),
    leaves_out=(
        "Heat in the floor, which keeps a house warm for hours after the store is down.",
        "Sun, people and lamps.",
        "What the stove gives its room: count it as a margin.",
        "Embers still in the stove, if it has just burnt.",
    ),
    follow=(
        Next("firing", "How often over the whole winter."),
        Next("standby", "What the tank loses while it waits."),
        Next("stored-heat", "What a full tank holds."),
    ),
)
