"""What size of tank?"""

from calc.chains import one_load, outlet
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
    Methods,
    Next,
    Option,
    Picture,
    Result,
    Sizes,
    Step,
    Variant,
    Worksheet,
)
from calc.physics import firing, store, water
from calc.plant import STORE_FOR_BURN
from calc.vocabulary import (
    BOILING_ALTITUDE,
    BURN_TIME,
    DESIGN_LOAD,
    FIREBOX_VOLUME,
    HEATED_AREA,
    HOURS_WANTED,
    LOAD,
    LOWEST_USEFUL,
    RATED_OUTPUT,
    ROOM_OUTPUT,
    STORE_TOP,
    SYSTEM_PRESSURE,
    WATER_OUTPUT,
)

LOAD_DURING_BURN = Field(
    "load_during_burn", "power", "Heat the house takes during the burn",
    "The coldest day's load unless you say otherwise.",
    low="0 Btu/h", high="2,000,000 Btu/h", same_as="design_load",
)  # fmt: skip
RELIGHT_TEMPERATURE = Field(
    "relight_temperature", "temperature", "Store temperature when you light again",
    "The coolest useful water unless you light earlier; a warmer store has less room for the next burn.",
    low="60 °F", high="250 °F", same_as="lowest_useful",
)  # fmt: skip
STOKING = Field(
    "stoking", "choice", "How the fire is fed",
    options=(Option("by-hand", "by hand, a load at a time"), Option("automatic", "automatically, little by little")),
)  # fmt: skip
FIREBOX_KNOWN = Field(
    "firebox_known", "choice", "Firebox measured",
    "A burn brings no more heat than one firebox of wood holds, whatever output is printed.",
    options=(Option("no", "no: the printed output counts"), Option("yes", "yes")), unless_given="no",
)  # fmt: skip
STOVE_ROOM_OUTPUT = ROOM_OUTPUT.but(unless_given="0 Btu/h")
PART_LOAD = Field(
    "part_load", "fraction", "Share of a full load you are ready to burn in mild weather",
    "100 % unless you will always lay a smaller fire when the house needs little.",
    low="25 %", high="100 %", unless_given="100 %",
)  # fmt: skip
SIZE_FACTOR = Field(
    "size_factor", "factor", "Your tank compared with the recommended one", "1 for the recommended size, 0.5 for half of it.",
    low="0.1", high="10", unless_given="1",
)  # fmt: skip

WORKSHEET = Worksheet(
    key="tank-size",
    guide="storage",
    question="What size of tank?",
    short="Six ways to size a store, side by side, and the one to trust.",
    fields=(
        WATER_OUTPUT,
        BURN_TIME,
        DESIGN_LOAD,
        STORE_TOP,
        LOWEST_USEFUL,
        HOURS_WANTED,
        HEATED_AREA,
        STOKING,
        FIREBOX_KNOWN,
        BOILING_ALTITUDE,
        SYSTEM_PRESSURE,
        *outlet.FIELDS,
        RATED_OUTPUT,
        LOAD,
        LOAD_DURING_BURN,
        RELIGHT_TEMPERATURE,
        PART_LOAD,
        SIZE_FACTOR,
    ),
    givens=(
        Given("boiling_caution", "temperature_difference", "Margin to boiling worth keeping", "20 F°", "boiling-caution"),
        *one_load.GIVENS,
        Given("half", "factor", "Half of it", "0.5", "definition"),
        Given("twice", "factor", "Twice as much", "2", "definition"),
        Given("no_load", "power", "No load", "0 Btu/h", "definition"),
    ),
    cases=(
        Cases(
            "stoking",
            by_hand=Case(
                steps=(
                    Step("by_rating", store.volume_by_rating, "By rated output, stoked by hand"),
                    Step("by_eu_formula", store.volume_by_eu_formula, "European formula, stoked by hand"),
                ),
                cases=(
                    Cases(
                        "firebox_known",
                        no=Case(
                            steps=(
                                Step("whole_burn", firing.heat_at_output, "Heat of one whole burn"),
                                Step("by_german_law", store.volume_by_rating, "German law, by the rating alone"),
                            )
                        ),
                        yes=Case(
                            fields=(*one_load.FIELDS, STOVE_ROOM_OUTPUT),
                            cases=(one_load.HEATING_VALUE,),
                            steps=(
                                *one_load.STEPS,
                                Step("heat_at_output", firing.heat_at_output, "What the water output and the burn time say"),
                                Step("whole_burn", firing.water_heat_of_burn, "Heat of one whole burn: the smaller"),
                                Step("by_firebox", store.volume_by_firebox, "By firebox: 12 L for each liter"),
                                Step("by_german_law", store.volume_by_german_law, "German law, the larger of firebox and rating"),
                            ),
                            decides=True,
                        ),
                    ),
                ),
            ),
            automatic=Case(
                steps=(
                    Step("whole_burn", firing.heat_at_output, "Heat of one whole burn"),
                    Step("by_rating", store.volume_by_rating_automatic, "By rated output, automatic"),
                    Step("by_german_law", store.volume_by_rating_automatic, "German law, automatic"),
                    Step("by_eu_formula", store.volume_by_eu_formula_automatic, "European formula, automatic"),
                ),
                cases=(
                    Cases(
                        "firebox_known",
                        no=Case(),
                        yes=Case(
                            fields=(FIREBOX_VOLUME,),
                            steps=(Step("by_firebox", store.volume_by_firebox, "By firebox: 12 L for each liter"),),
                            decides=True,
                        ),
                    ),
                ),
            ),
        ),
    ),
    steps=(
        Step(
            "heat_content", water.mean_volume_heat_content, "Heat in each volume and degree, lowest useful to top",
            low="lowest_useful", top="store_top",
        ),
        Step(
            "surplus", store.surplus_of_burn, "Heat of one burn that the house does not take",
            burn_heat="whole_burn", load="load_during_burn",
        ),
        Step(
            "by_full_burn", store.volume_for_heat, "One full burn, less what the house takes meanwhile",
            heat="surplus", top="store_top", low="lowest_useful",
        ),
        Step("burn_kept", store.part_of_burn, "Heat of the largest burn you will make"),
        Step(
            "relight_heat_content", water.mean_volume_heat_content, "Heat in each volume and degree, relight to top",
            low="relight_temperature", top="store_top",
        ),
        Step(
            "by_full_burn_no_load", store.volume_for_heat, "One full burn with no load at all",
            heat="whole_burn", heat_content="relight_heat_content", top="store_top", low="relight_temperature",
        ),
        Step(
            "recommended", store.volume_for_heat, "Recommended: the largest burn with no load",
            heat="burn_kept", heat_content="relight_heat_content", top="store_top", low="relight_temperature",
        ),
        Step("heat_wanted", store.heat_for_hours, "Heat for the hours without a fire", standby_loss="no_load"),
        Step(
            "by_hours", store.volume_for_heat, "The hours you want, at the load",
            heat="heat_wanted", top="store_top", low="lowest_useful",
        ),
        Step("by_house_area", store.volume_by_house_area, "By floor area: 500 gal for each 1,000 ft²"),
        Step("chosen_volume", store.scaled_volume, "The tank looked at", volume="recommended"),
        Step(
            "chosen_heat", store.usable_heat, "Usable heat in it",
            volume="chosen_volume", top="store_top", low="lowest_useful",
        ),
        Step("chosen_hours", store.time_on_heat, "Hours it carries the load", heat="chosen_heat"),
        Step(
            "room_for_burn", store.usable_heat, "Room in it for the next burn",
            volume="chosen_volume", heat_content="relight_heat_content", top="store_top", low="relight_temperature",
        ),
        Step("burn_share", store.share_of, "Share of a full burn that fits with no load", part="room_for_burn", whole="whole_burn"),
        # What half and twice the recommended size would do.
        Step("half_volume", store.scaled_volume, "Half the recommended size", size_factor="half", volume="recommended"),
        Step(
            "half_heat", store.usable_heat, "Usable heat in half of it",
            volume="half_volume", top="store_top", low="lowest_useful",
        ),
        Step("hours_of_half", store.time_on_heat, "Hours that half of it carries the load", heat="half_heat"),
        Step("twice_volume", store.scaled_volume, "Twice the recommended size", size_factor="twice", volume="recommended"),
        Step(
            "twice_heat", store.usable_heat, "Usable heat in twice as much",
            volume="twice_volume", top="store_top", low="lowest_useful",
        ),
        Step("hours_of_twice", store.time_on_heat, "Hours that twice as much carries the load", heat="twice_heat"),
        Step("barometer", water.barometer, "Air pressure at this height"),
        Step("pressure", water.absolute_pressure, "Absolute pressure in the store", gauge="system_pressure"),
        Step("boiling", water.boiling_temperature, "Water boils there at"),
        *outlet.STEPS,
    ),
    results=(
        Result("recommended", "Recommended store", "Holds {burn_kept}, the largest burn you will make, between {relight_temperature} and {store_top} while the house takes nothing.", missing="no size does it"),
        Result("by_full_burn", "One full burn while the house takes {load_during_burn}", missing="no size does it"),
        Result("by_full_burn_no_load", "One full burn with no load", missing="no size does it"),
        Result("by_hours", "{hours_wanted} without a fire", "At {load}.", missing="no size does it"),
        Result("by_house_area", "By floor area", "500 US gal for each 1,000 ft² is common practice; no published source was found."),
        Result("by_firebox", "By firebox, 12 L for each liter"),
        Result("by_rating", "By rated output", "55 L/kW stoked by hand, 20 L/kW automatic; the rated output is the heat to the water unless you give it."),
        Result("by_eu_formula", "By the European formula", "By hand 45 L/kW over 2.7 kW and at least 300 L, automatic 20 L/kW; for boilers that lose at most 6 % to the room."),
        Result("by_german_law", "By German law", "Single-room heaters are outside its scope: guidance for a stove that heats its room."),
        Result(
            "heat_per_load", "What one firebox of this wood gives the water",
            "{firebox_volume} at {packing_density} and {moisture} moisture, {room_output} to the room: a burn brings no more.",
        ),
        Result("burn_share", "Share of a full burn that fits with no load"),
        Result("chosen_hours", "Hours the tank carries the load", figures=2),
        Result("hours_of_half", "Hours that half the recommended size carries the load", figures=2),
        Result("hours_of_twice", "Hours that twice the recommended size carries the load", figures=2),
        Result("chosen_volume", "The tank looked at"),
        Result("boiling", "Boiling point in this store", "At {altitude} and {system_pressure}."),
        outlet.RESULT,
    ),
    headline="recommended",
    say="Holds one full burn, then lasts {chosen_hours}.",
    say_none="No tank does it: see the advice.",
    advice=(
        *outlet.ADVICE,
        Advice(
            "stop", "boiling", "store_top >= boiling",
            "Water boils in this store.",
            "At {altitude} and {system_pressure} it boils at {boiling}, and you ask for {store_top}. "
            "Charge it cooler, and ask the person who installs it about pressure and relief.",
            "iapws-if97",
            stays="store_top >= boiling",
        ),
        Advice(
            "caution", "boiling-margin", "store_top < boiling and store_top > boiling - boiling_caution",
            "Little margin to boiling.",
            "The store is charged to {store_top} and boils at {boiling}; keep at least {boiling_caution} between them.",
            "boiling-caution",
        ),
        Advice(
            "unworkable", "no-band", "lowest_useful >= store_top",
            "No tank gives this house heat.",
            "The emitters need {lowest_useful} and the store is never hotter than {store_top}. "
            "Cooler emitters or a hotter store are needed.",
        ),
        Advice(
            "unworkable", "no-room", "relight_temperature >= store_top",
            "A store relit at {relight_temperature} has no room for a burn.",
            "It is charged to {store_top} at most. Light later, or charge hotter.",
        ),
        Advice(
            "unworkable", "relight-too-late", "relight_temperature < lowest_useful",
            "The house is cold before you light again.",
            "Below {lowest_useful} the store no longer heats it, and you light at {relight_temperature}.",
        ),
        Advice(
            "caution", "part-loads", "part_load < 1",
            "This size trusts you to lay small fires.",
            "It holds {burn_kept} of the {whole_burn} in a full load. With a full load and no demand the store is full "
            "before the fire is out, and shutting its air down makes tar and chimney fires.",
        ),
        Advice(
            "caution", "fire-too-small", "surplus <= 0",
            "The house takes all of this fire.",
            "It makes {whole_burn} in {burn_time} and the house takes {load_during_burn}: nothing is left to store on the coldest day.",
        ),
        Advice(
            "caution", "wood-too-little", "heat_at_output > heat_per_load",
            "One firebox does not hold that much.",
            "{water_output} for {burn_time} would be {heat_at_output}, but one load of this wood gives the water "
            "{heat_per_load}: the smaller counts here. A rated output is an average over many loads.",
        ),
        Advice(
            "note", "no-firebox", "firebox_known == 'no' and stoking == 'by-hand'",
            "The printed output is taken at its word.",
            "Whether one load of wood holds {whole_burn} was not looked at: give the firebox volume.",
        ),
        Advice(
            "caution", "hours-longer", "by_hours > recommended",
            "The hours you want need a larger tank.",
            "{by_hours} carries {hours_wanted}; one burn does not fill it, so plan to light twice.",
        ),
        Advice(
            "note", "scope", "recommended > 0",
            "The laws are guidance here.",
            "German and European storage rules mostly do not cover a stove that heats its room.",
            "bimschv-5-4",
        ),
        Advice(
            "note", "full-means-out", "recommended > 0",
            "Store full means fire out, not fire down.",
            "That is why the recommended size holds a whole burn with no load.",
        ),
    ),
    meaning=(
        "The rules by floor area and by rating know neither your emitters nor how hot you charge the tank. The full burn "
        "does: it is the one that keeps the store from overheating.",
    ),
    picture=Picture(
        "tank",
        "Height in this picture is temperature, not water level: the tank is always full.",
        {"top": "store_top", "low": "relight_temperature"},
    ),
    chart=Chart(
        "Recommended size by the store temperature at which you light again",
        across="relight_temperature", low="85 °F", high="170 °F",
        lines=(Line("recommended", "recommended", "tank"),),
        say="Lighting again at {relight_temperature} asks for {recommended}.",
    ),
    tables=(
        Methods(
            "Six methods side by side",
            ("recommended", "by_full_burn", "by_hours", "by_house_area", "by_firebox", "by_rating", "by_eu_formula", "by_german_law"),
            say="They differ because each knows something else: the fire, the hours, the floor, the firebox, the rating.",
        ),
        Comparison(
            "Half and twice as much",
            rows=(
                Variant("Half of it", {"size_factor": "0.5"}),
                Variant("Recommended", {"size_factor": "1"}),
                Variant("Twice as much", {"size_factor": "2"}),
            ),
            show=("chosen_volume", "burn_share", "chosen_hours"),
            say="Half the size cannot hold a full burn in mild weather; twice the size carries the house longer but needs two burns to fill.",
        ),
    ),
    examples=(
        Example(
            "Mill Row: a cellar stove and old baseboard",
            {
                "water_output": "60,000 Btu/h", "burn_time": "4 h", "design_load": "30,500 Btu/h", "store_top": "180 °F",
                "lowest_useful": "130 °F", "hours_wanted": "8 h", "heated_area": "1,600 ft2", "firebox_known": "yes",
                "firebox_volume": "5 ft3", "moisture": "20 %", "efficiency_basis": "higher", "stoking": "by-hand", "altitude": "3,000 ft", "system_pressure": "12 psi",
            },
        ),
    ),
    sizes=(Sizes(STORE_FOR_BURN, "{recommended}: one whole burn with no load"),),
    leaves_out=(
        "Heat that the tank itself loses.",
        "How layered the tank is: a layered one carries the house longer, a mixed one is the safe case.",
        "What the fire does at its peak: see the charge-loop and power-cut worksheets.",
    ),
    follow=(
        Next("stored-heat", "How long a tank you already have carries the house."),
        Next("firing", "How often you would light it."),
        Next("tank-place", "Whether floor and doorway take it."),
    ),
)
