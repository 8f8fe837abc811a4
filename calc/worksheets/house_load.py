"""How much heat does my house lose on the coldest day?"""

from calc.chains import bought_fuel, kind_of_wood
from calc.engine.declare import (
    Advice,
    Case,
    Cases,
    Chart,
    Example,
    Field,
    Given,
    Line,
    Must,
    Next,
    Option,
    Result,
    Step,
    Typical,
    Worksheet,
)
from calc.physics import fuels, house, water
from calc.physics.fuels import FUELS, Fuel
from calc.vocabulary import (
    ALTITUDE,
    BASE_TEMPERATURE,
    DEGREE_DAYS,
    DESIGN_OUTDOOR,
    HEATED_AREA,
    HOUSE_CLASS,
    HOUSE_VOLUME,
    INDOOR,
    LOSS_PER_AREA,
    MOISTURE,
)

METHOD = Field(
    "method",
    "choice",
    "What do you know?",
    "A year's fuel bill is the best guide to a house that stands.",
    options=(
        Option("fuel", "how much fuel it burns in a year"),
        Option("surfaces", "its areas and R-values"),
        Option("quick", "its floor area and how it is built"),
    ),
)
FUEL = bought_fuel.FUEL_NOW.offering(*FUELS).but(hint="The one on the bill.")
TAP_SHARE = Field(
    "tap_share",
    "fraction",
    "Share of that fuel for hot water",
    "0 % if something else heats the taps.",
    low="0 %",
    high="90 %",
    # A wood or coal heater mostly heats rooms alone.
    typical=Typical(
        {fuel: "0 %" if fuel in ("wood", "hard-coal") else "15 %" for fuel in FUELS},
        "tap-share",
        dict.fromkeys(FUELS, "0 %"),
        dict.fromkeys(FUELS, "25 %"),
        "A summer bill, times twelve, over the year's bill.",
        on="fuel_now",
    ),
)
OTHER_HEAT = Field(
    "other_heat",
    "energy",
    "Other heat the house had that year",
    "Useful heat from a wood stove or electric heaters; closed rooms would have needed more.",
    low="0 Btu",
    high="1,000 MMBtu",
    us="MMBtu",
    unless_given="0 Btu",
)


def _amount(kind: str, us: str, si: str, low: str, high: str) -> Field:
    return Field(
        "amount",
        kind,
        "Fuel used in a year",
        "Add up a whole year's bills.",
        low=low,
        high=high,
        us=us,
        si=si,
        uncertainty="5 %",
    )


# The ends of a year's amount, by the unit in which a fuel is bought.
_AMOUNTS = {
    "gal": ("5 gal", "50,000 gal"),
    "ft³": ("1,000 ft3", "50,000,000 ft3"),
    "cord": ("0.1 cord", "100 cord"),
    "ton": ("0.1 ton", "200 ton"),
    "therm": ("1 therm", "100,000 therm"),
    "kWh": ("1 therm", "100,000 therm"),
}
_LAWS = {"volume": fuels.heat_in_volume, "mass": fuels.heat_in_mass}


def _delivered(efficiency: str, heat: str = "heat_in_fuel") -> Step:
    return Step("heat_delivered", fuels.heat_delivered, "Heat it gave", heat_in_fuel=heat, efficiency=efficiency)


def _case(fuel: Fuel) -> Case:
    """What is asked of one fuel: its amount in the unit it is bought in, and its heat content unless it is sold as heat."""
    amount = _amount(fuel.bought_by, fuel.us_unit, fuel.si_unit, *_AMOUNTS[fuel.us_unit])
    efficiency = bought_fuel.EFFICIENCIES[fuel.key]
    if fuel.bought_by == "energy":
        return Case((amount, efficiency), (_delivered(efficiency.key, "amount"),))
    content = bought_fuel.CONTENTS[fuel.key]
    if content.unless_given:  # a bill rests on it, so that it is told with its source
        content = content.but(unless_given="", typical=Typical(content.unless_given, fuel.content_source))
    heat = Step("heat_in_fuel", _LAWS[fuel.bought_by], "Heat in the fuel", heat_content=content.key)
    if fuel.key == "wood":
        # Moisture counts on the lower value alone; asked with both, it says nothing of how an efficiency is quoted.
        asked = (amount, content, efficiency, bought_fuel.BASIS_NOW, MOISTURE)
        return Case(asked, (heat,), (bought_fuel.of_wood(_delivered),))
    return Case((amount, content, efficiency), (heat, _delivered(efficiency.key)))


def _surface(key: str, label: str, hint: str) -> Field:
    return Field(key, "area", label, hint, low="1 ft2", high="50,000 ft2", uncertainty="5 %")


def _resistance(key: str, label: str, text: str, low: str, high: str) -> Field:
    return Field(
        key,
        "thermal_resistance",
        label,
        "Of the whole thickness, framing and surface films included.",
        low="0.3 R",
        high="100 R",
        typical=Typical(text, "surface-resistances", low, high, "The builder, or a look behind a switch plate."),
    )


AIR_CHANGES = Field(
    "air_changes",
    "air_changes",
    "Air changes an hour in winter",
    "How often the wind and the leaks swap the air.",
    low="0.05 /h",
    high="5 /h",
    typical=Typical(
        "0.5 /h", "air-change-guess", "0.25 /h", "1 /h", "A blower-door test; divide its 50-pascal figure by about 20."
    ),
)

WORKSHEET = Worksheet(
    key="house-load",
    guide="house",
    question="How much heat does my house lose on the coldest day?",
    short="The load at design temperature, from fuel bills, surfaces, or a quick guess.",
    fields=(METHOD, INDOOR, DESIGN_OUTDOOR, DEGREE_DAYS, BASE_TEMPERATURE),
    cases=(
        Cases(
            "method",
            fuel=Case(
                fields=(FUEL, TAP_SHARE, OTHER_HEAT),
                steps=(
                    Step("space_heat", house.space_heat, "Of that, to the rooms"),
                    Step("conductance", house.conductance_from_fuel, "Heat loss per degree"),
                ),
                cases=(Cases("fuel_now", **{key.replace("-", "_"): _case(fuel) for key, fuel in FUELS.items()}),),
            ),
            surfaces=Case(
                fields=(
                    _surface("wall_area", "Outside wall area", "Without windows and doors."),
                    _resistance("wall_resistance", "R-value of the walls", "13 R", "8 R", "19 R"),
                    _surface("window_area", "Window area", "Frames included."),
                    _resistance("window_resistance", "R-value of the windows", "2 R", "1 R", "3.5 R"),
                    _surface("door_area", "Outside door area", "All of them."),
                    _resistance("door_resistance", "R-value of the doors", "5 R", "2 R", "7 R"),
                    _surface("ceiling_area", "Top ceiling area", "Under the attic or the roof."),
                    _resistance("ceiling_resistance", "R-value of the ceiling", "30 R", "15 R", "45 R"),
                    _surface("ground_area", "Lowest floor area", "Over ground, cellar or crawl space."),
                    _resistance("ground_resistance", "R-value of the lowest floor", "15 R", "8 R", "25 R"),
                    HOUSE_VOLUME,
                    AIR_CHANGES,
                    ALTITUDE,
                ),
                decides=True,  # by what it alone asks: who only says how high the house stands has measured no walls
                steps=(
                    *(
                        Step(
                            f"{part}_loss",
                            house.surface_conductance,
                            f"{name}: heat lost for each degree",
                            area=f"{part}_area",
                            resistance=f"{part}_resistance",
                        )
                        for part, name in (
                            ("wall", "Walls"),
                            ("window", "Windows"),
                            ("door", "Doors"),
                            ("ceiling", "Ceiling"),
                            ("ground", "Lowest floor"),
                        )
                    ),
                    Step(
                        "envelope",
                        house.envelope_conductance,
                        "All surfaces together",
                        walls="wall_loss",
                        windows="window_loss",
                        doors="door_loss",
                        ceiling="ceiling_loss",
                        floor="ground_loss",
                    ),
                    Step("site_pressure", water.barometer, "Air pressure at this height"),
                    Step("air_change_loss", house.air_change_conductance, "Air that comes and goes"),
                    Step(
                        "conductance",
                        house.house_conductance,
                        "Heat loss per degree",
                        air_change="air_change_loss",
                    ),
                ),
            ),
            quick=Case(
                fields=(HEATED_AREA, HOUSE_CLASS, LOSS_PER_AREA),
                steps=(Step("conductance", house.conductance_by_class, "Heat loss per degree"),),
            ),
        ),
    ),
    steps=(
        Step("design_load", house.design_load, "Design load (heat lost at the design temperature)"),
        Step("yearly_heat", house.yearly_heat, "Space heating in a year"),
    ),
    results=(
        Result(
            "design_load",
            "Design load (heat lost on the coldest day)",
            "At {design_outdoor} outside and {indoor} inside, with nothing taken off for sun, people or lamps.",
        ),
        Result(
            "conductance", "Heat loss per degree", "How fast heat leaves for each degree that it is colder outside."
        ),
        Result("yearly_heat", "Space heating in a year", "Space heat only, taps apart, for {degree_days}.", us="MMBtu"),
    ),
    headline="design_load",
    say="And {yearly_heat} for the rooms in a year.",
    musts=(
        Must(
            "indoor > design_outdoor",
            "design_outdoor",
            "Outdoor design temperature must be below the room temperature wanted.",
        ),
    ),
    advice=(
        Advice(
            "caution",
            "no-heat-left",
            "method == 'fuel' and tap_share >= 0.5",
            "Most of this fuel heats the taps.",
            "With {tap_share} of it gone to tap water, a small mistake there is a large one in the house's load.",
        ),
        Advice(
            "note",
            "fuel-best",
            "method == 'fuel'",
            "A fuel bill is the best of the three.",
            "It holds what the house really does, and is as good as the heater's efficiency: a worn heater that gave less "
            "makes the house look worse than it is.",
        ),
        Advice(
            "note",
            "base",
            "method == 'fuel' and base_temperature > tight_base",
            "A tight house needs no heat above about 60 °F (16 °C).",
            "Your degree-days are for base {base_temperature}. If the house holds itself warm down to 60 °F (16 °C), use "
            "degree-days for that base: on average they are a fifth fewer, and the load comes out a quarter larger.",
            "typical-years",
        ),
        Advice(
            "note",
            "quick-wide",
            "method == 'quick'",
            "This is a first guess.",
            "Houses of one kind differ by a fifth either way. A fuel bill or a blower-door test is worth more.",
            "house-classes",
        ),
        Advice(
            "note",
            "surfaces-sum",
            "method == 'surfaces'",
            "Air that leaks is often the largest part.",
            "It makes {air_change_loss} of {conductance} here, and it is the part that is guessed.",
        ),
    ),
    givens=(
        Given("tight_base", "temperature", "Base temperature of a tight house", "60 °F", "typical-years"),
        kind_of_wood.ANY_WOOD,
    ),
    meaning=(
        "The fire must make {design_load} on the coldest day, averaged over day and night, whatever the hour at which it burns.",
        "The three ways differ: a bill is usually within 15 %, areas and R-values within 20 %, the quick guess within 25 %.",
    ),
    chart=Chart(
        "Heat the house loses, by outdoor temperature",
        across="design_outdoor",
        low="-30 °F",
        high="60 °F",
        lines=(Line("design_load", "the house", "use"),),
        say="At {design_outdoor} the house loses {design_load}.",
        us="kBtu/h",
        si="kW",
    ),
    examples=(
        Example(
            "Mill Row: 688 gal of oil a year",
            {
                "method": "fuel",
                "fuel_now": "oil",
                "amount": "688 gal",
                "efficiency_oil": "82 %",
                "tap_share": "0 %",
                "indoor": "68 °F",
                "design_outdoor": "-5 °F",
                "degree_days": "7,800 °F·day",
                "base_temperature": "65 °F",
            },
        ),
        Example(
            "Fern Lane: by its surfaces",
            {
                "base_temperature": "65 °F",
                "degree_days": "7,800 °F·day",
                "design_outdoor": "-5 °F",
                "indoor": "68 °F",
                "air_changes": "0.35 /h",
                "ground_resistance": "27 R",
                "ceiling_resistance": "60 R",
                "door_resistance": "7 R",
                "window_resistance": "3.5 R",
                "wall_resistance": "30 R",
                "method": "surfaces",
                "wall_area": "994 ft2",
                "window_area": "102 ft2",
                "door_area": "40 ft2",
                "ceiling_area": "1,150 ft2",
                "ground_area": "1,150 ft2",
                "house_volume": "9,200 ft3",
                "altitude": "3,000 ft",
            },
        ),
        Example(
            "Hollow Cabin: by a quick guess",
            {"method": "quick", "heated_area": "750 ft2", "house_class": "recent"},
        ),
        Example("The same house on other fuels", {"method": "fuel", "fuel_now": "gas", "amount": "915 therm"}),
        Example(
            "The same house on gas by volume", {"method": "fuel", "fuel_now": "gas-volume", "amount": "88,000 ft3"}
        ),
        Example("The same house on pellets", {"method": "fuel", "fuel_now": "pellets", "amount": "5.6 ton"}),
        Example(
            "The same house on wood",
            {"method": "fuel", "fuel_now": "wood", "amount": "6.5 cord"},
        ),
    ),
    other_names={
        "fuel": ("fuel_now",),
        "efficiency": tuple(dict.fromkeys(field.key for field in bought_fuel.EFFICIENCIES.values())),
        "heat_content": tuple(field.key for field in bought_fuel.CONTENTS.values()),
        "efficiency_basis": (bought_fuel.BASIS_NOW.key,),
    },
    leaves_out=(
        "Sun, people and lamps, which carry part of the load on bright days.",
        "Wind, which on some sites doubles the air that leaks.",
        "Rooms that were closed or cooler in the year of the bill.",
    ),
    follow=(
        Next("tank-size", "What size of store goes with this load."),
        Next("emitter-temperature", "How cool your emitters can run on the coldest day."),
    ),
)
