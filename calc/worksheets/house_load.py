"""How much heat does my house lose on the coldest day?"""

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
from calc.physics import fuels, house, water, wood
from calc.physics.fuels import FUEL_WORDS, FUELS, Fuel
from calc.units import unit_named
from calc.vocabulary import (
    ALTITUDE,
    BASE_TEMPERATURE,
    DEGREE_DAYS,
    DESIGN_OUTDOOR,
    EFFICIENCY,
    EFFICIENCY_BASIS,
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
FUEL = Field(
    "fuel",
    "choice",
    "Fuel",
    options=tuple(Option(fuel.key, fuel.label, FUEL_WORDS.get(fuel.key, ())) for fuel in FUELS.values()),
)
TAP_SHARE = Field(
    "tap_share",
    "fraction",
    "Share of that fuel for hot water",
    "0 % if something else heats the taps.",
    low="0 %",
    high="90 %",
    typical=Typical("15 %", "tap-share", "0 %", "25 %", "A summer bill, times twelve, over the year's bill."),
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


_CONTENT_KINDS = {
    "volume": ("heat_per_volume", "500 Btu/ft3", "250,000 Btu/gal"),
    "mass": ("heat_per_mass", "3,000 Btu/lb", "20,000 Btu/lb"),
}


def _content(fuel: Fuel, us: str, si: str) -> Field:
    """The heat content of a fuel: filled in from the table, and open to be changed."""
    kind, low, high = _CONTENT_KINDS[fuel.bought_by]
    unit = unit_named(us, kind)
    return Field(
        "heat_content",
        kind,
        "Heat content of the fuel",
        "Higher heating value.",
        low=low,
        high=high,
        us=us,
        si=si,
        typical=Typical(f"{unit.from_si(fuel.heat_content):.6g} {unit.text}", fuel.content_source),
    )


# How a fuel is bought: units of its amount and of its heat content, and the ends of a year's amount.
_BOUGHT = {
    "gal": ("Btu/gal", "kWh/L", "5 gal", "50,000 gal"),
    "ft³": ("Btu/ft³", "kWh/m³", "1,000 ft3", "50,000,000 ft3"),
    "cord": ("MMBtu/cord", "kWh/m³", "0.1 cord", "100 cord"),
    "ton": ("MMBtu/ton", "kWh/kg", "0.1 ton", "200 ton"),
}
# Wood is sold by its whole heat; an efficiency quoted on the lower value counts only what does not leave as steam.
_WOOD_BASIS = Cases(
    "efficiency_basis",
    higher=Case(steps=(Step("heat_delivered", fuels.heat_delivered, "Heat it gave"),)),
    lower=Case(
        steps=(
            Step("higher_value", wood.higher_heating_value, "Heat in it by weight, higher value"),
            Step("lower_value", wood.lower_heating_value, "The same, lower value", higher_heating_value="higher_value"),
            Step("heat_on_lower", fuels.heat_on_lower_basis, "Heat in the wood, lower value"),
            Step("heat_delivered", fuels.heat_delivered, "Heat it gave", heat_in_fuel="heat_on_lower"),
        ),
    ),
)
_LAWS = {"volume": fuels.heat_in_volume, "mass": fuels.heat_in_mass}


def _case(fuel: Fuel) -> Case:
    """What is asked of one fuel: its amount in the unit it is bought in, and its heat content unless it is sold as heat."""
    delivered = "Heat it gave"
    if fuel.bought_by == "energy":
        amount = _amount("energy", fuel.us_unit, fuel.si_unit, "1 therm", "100,000 therm")
        return Case((amount,), (Step("heat_delivered", fuels.heat_delivered, delivered, heat_in_fuel="amount"),))
    us, si, low, high = _BOUGHT[fuel.us_unit]
    if fuel.key == "wood":
        amount = _amount("volume", fuel.us_unit, fuel.si_unit, low, high)
        return Case(
            # Moisture counts on the lower value alone; asked with both, it says nothing of how an efficiency is quoted.
            fields=(amount, _content(fuel, us, si), EFFICIENCY_BASIS, MOISTURE),
            steps=(Step("heat_in_fuel", fuels.heat_in_volume, "Heat in the wood, higher value"),),
            cases=(_WOOD_BASIS,),
        )
    return Case(
        fields=(_amount(fuel.bought_by, fuel.us_unit, fuel.si_unit, low, high), _content(fuel, us, si)),
        steps=(
            Step("heat_in_fuel", _LAWS[fuel.bought_by], "Heat in the fuel"),
            Step("heat_delivered", fuels.heat_delivered, delivered),
        ),
    )


BILL_EFFICIENCY = EFFICIENCY.but(
    typical=Typical(
        {fuel.key: f"{fuel.efficiency * 100:.4g} %" for fuel in FUELS.values()},
        "efficiency-ranges",
        {fuel.key: f"{fuel.efficiency_low * 100:.4g} %" for fuel in FUELS.values()},
        {fuel.key: f"{fuel.efficiency_high * 100:.4g} %" for fuel in FUELS.values()},
        "The label or the service record of your heater.",
        on="fuel",
    )
)


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
                fields=(FUEL, BILL_EFFICIENCY, TAP_SHARE, OTHER_HEAT),
                steps=(
                    Step("space_heat", house.space_heat, "Of that, to the rooms"),
                    Step("conductance", house.conductance_from_fuel, "Heat loss per degree"),
                ),
                cases=(Cases("fuel", **{key.replace("-", "_"): _case(fuel) for key, fuel in FUELS.items()}),),
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
            "It holds what the house really does. It is as good as the efficiency of {efficiency} is: a worn heater that "
            "gave less makes the house look worse than it is.",
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
        Given("dry_heating_value", "heat_per_mass", "Heat in oven-dry wood", "8,600 Btu/lb", "wood-heating-value"),
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
                "fuel": "oil",
                "amount": "688 gal",
                "efficiency": "82 %",
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
        Example("The same house on other fuels", {"method": "fuel", "fuel": "gas", "amount": "915 therm"}),
        Example("The same house on gas by volume", {"method": "fuel", "fuel": "gas-volume", "amount": "88,000 ft3"}),
        Example("The same house on pellets", {"method": "fuel", "fuel": "pellets", "amount": "5.6 ton"}),
        Example(
            "The same house on wood",
            {"method": "fuel", "fuel": "wood", "amount": "6.5 cord", "efficiency_basis": "higher"},
        ),
    ),
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
