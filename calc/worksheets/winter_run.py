"""What will a whole winter be like, hour by hour?"""

from calc.chains import floor_covering, outlet
from calc.chains.place import ALTITUDE_HERE, DESIGN_OUTDOOR_HERE
from calc.engine.declare import (
    Advice,
    AnyStep,
    Case,
    Cases,
    Example,
    Field,
    Given,
    Must,
    Next,
    OnlyWith,
    Option,
    Pick,
    Picture,
    Result,
    Spread,
    Step,
    Sweep,
    Trace,
    Track,
    Typical,
    Worksheet,
)
from calc.physics import emitters, floor, fuels, house, room, slab, winter_run, wood
from calc.physics.room import HEAVINESS
from calc.tables.species import SPECIES as WOODS
from calc.vocabulary import (
    BASE_TEMPERATURE,
    BELOW_FLOOR,
    BURN_TIME,
    CHARGE_RISE,
    COLD_WATER,
    DEGREE_DAYS,
    DESIGN_LOAD,
    EFFICIENCY,
    EMITTER,
    FLOOR_AREA,
    FLOOR_COVERING,
    HEATED_AREA,
    INDOOR,
    INSULATION_BELOW,
    LEAST_RETURN,
    MOISTURE,
    OUTLET_HEIGHT,
    PEAK_FACTOR,
    PLACE,
    ROOM_LIMIT,
    ROOM_OUTPUT,
    SLAB_CONDUCTIVITY,
    SLAB_DENSITY,
    SLAB_HEAT_CAPACITY,
    SLAB_THICKNESS,
    SPECIES,
    STORE_INSIDE,
    STORE_SURROUNDINGS,
    STORE_TOP,
    STORE_VOLUME,
    SUPPLY_WATER,
    SYSTEM_PRESSURE,
    TAP_LOAD,
    WATER_DROP,
    WATER_OUTPUT,
)

WEATHER = Field(
    "weather",
    "choice",
    "Whose winter",
    "Without a file of yours the hours are those of the place.",
    options=(
        Option("place", "a typical year of that place, as it is"),
        Option("own", "that year, stretched to my own degree-days and design temperature"),
        Option("file", "a year from a file of mine: EPW, or CSV with time and temperature"),
    ),
    file="file",
)
EMITTER_TIMES = Field(
    "emitter_times",
    "factor",
    "How many times the emitters",
    "1 is as many as now. Twice as many do with cooler water.",
    low="0.3",
    high="5",
    unless_given="1",
)
HOUSE_MASS = Field(
    "house_mass",
    "choice",
    "How heavy the house is inside",
    "Heavy walls and floors warm and cool slowly.",
    options=tuple(Option(key, heaviness.label) for key, heaviness in HEAVINESS.items()),
    unless_given="light",
)
SUPPLY_CONTROL = Field(
    "supply_control",
    "choice",
    "How the supply is kept",
    "A valve that follows the weather sends out no hotter water than the rooms need, so the store lasts longer.",
    options=(
        Option("weather", "as hot as the weather asks, by a mixing valve with an outdoor sensor"),
        Option("fixed", "always at the supply temperature, with a pump that stops and starts"),
    ),
    unless_given="weather",
)
STORE_LOSS = Field(
    "store_loss",
    "conductance",
    "Heat the store loses for each degree",
    "Shell, pipes and legs. The standby worksheet works it out.",
    low="0.2 Btu/h/F",
    high="500 Btu/h/F",
    uncertainty="20 %",
    unless_given="10 Btu/h/F",
)
STORE_LAYERS = Field(
    "store_layers",
    "choice",
    "How well the store keeps its layers",
    "Slow water through wide openings leaves the hot on top; a fast jet stirs.",
    options=(
        Option("layered", "well: wide openings, slow water"),
        Option("blurred", "so so: pipes that end bare in the tank"),
        Option("stirred", "not at all: one temperature from top to bottom"),
    ),
    unless_given="layered",
)
FIRST_HOUR = Field(
    "first_hour",
    "count",
    "Earliest hour at which you light a fire",
    "From 0 (midnight) to 23; 6 is six in the morning.",
    low="0",
    high="23",
    typical=Typical("6", "common-practice", "5", "8", "You decide."),
)
LAST_HOUR = Field(
    "last_hour",
    "count",
    "Latest hour at which you light a fire",
    "21 is nine in the evening. An hour before the earliest one means over midnight.",
    low="0",
    high="23",
    typical=Typical("20", "common-practice", "18", "22", "You decide."),
)
LOADS_A_DAY = Field(
    "loads_a_day",
    "count",
    "Most loads you will burn in a day",
    "",
    low="1",
    high="24",
    typical=Typical("3", "common-practice", "2", "4", "You decide."),
)
SUMMER_FIRES = Field(
    "summer_fires",
    "choice",
    "Fires when no room needs heat",
    "For the taps alone.",
    options=(Option("no", "none: something else heats the taps then"), Option("yes", "yes, for the taps")),
)
BACKUP = Field(
    "backup",
    "choice",
    "Other heat",
    "It steps in when the rooms are 1.8 F° (1 K) cooler than wanted.",
    options=(Option("no", "none"), Option("yes", "a heater or boiler that keeps the rooms warm")),
)
ROOM_PASSES = Field(
    "room_passes",
    "conductance",
    "Heat the stove's room passes to the house per degree",
    "Walls and open doors together.",
    low="20 Btu/h/F",
    high="5,000 Btu/h/F",
    unless_given="500 Btu/h/F",
)
ROOM_SHARE = Field(
    "room_share",
    "fraction",
    "Stove's room as a share of the house",
    "By floor area.",
    low="2 %",
    high="100 %",
    unless_given="20 %",
)
AWAY_FROM = Field(
    "away_from",
    "count",
    "First day away",
    "The day of the year: 1 is 1 January, 45 is 14 February.",
    low="1",
    high="365",
    unless_given="45",
)
AWAY_DAYS = Field(
    "away_days",
    "count",
    "Days away",
    "Nobody lights a fire then, and the house may cool to 50 °F (10 °C).",
    low="0",
    high="120",
    unless_given="0",
)


# What a reader may leave alone: it stands folded away, and what stands in does not make the answer rough.
FOLDED = (
    INDOOR.but(unless_given="68 °F", typical=None),
    BASE_TEMPERATURE.but(unless_given="65 °F", typical=None),
    HOUSE_MASS,
    SUPPLY_CONTROL,
    STORE_INSIDE.but(unless_given="yes"),
    STORE_SURROUNDINGS.but(
        hint="Only counts where it stands outside the heated space.", unless_given="60 °F", typical=None
    ),
    STORE_LOSS,
    STORE_LAYERS,
    LEAST_RETURN,
    PEAK_FACTOR,
    CHARGE_RISE.but(unless_given="25 F°", typical=None),
    SYSTEM_PRESSURE.but(unless_given="0 psi", typical=None),
    OUTLET_HEIGHT,
    TAP_LOAD,
    COLD_WATER.but(unless_given="50 °F", typical=None),
    ROOM_LIMIT.but(unless_given="78 °F", typical=None),
    ROOM_PASSES,
    ROOM_SHARE,
    SPECIES.but(unless_given="white-ash"),
    MOISTURE.but(unless_given="20 %", typical=None),
    EFFICIENCY.but(
        hint="On the higher heating value, to the water and the room together.",
        low="30 %",
        high="100 %",
        unless_given="68 %",
    ),
    AWAY_DAYS,
    AWAY_FROM,
)


def _outcome(key: str, label: str, bound: dict[str, str], **named: str) -> Step:
    return Step(key, winter_run.year.law(key), label, **named, **bound)


def _outcomes(**bound: str) -> tuple[AnyStep, ...]:
    """Every number that is read from the record of one run."""
    return (
        _outcome("loads", "Loads burnt in a year", bound),
        _outcome("days_lit", "Days with a fire", bound),
        _outcome("most_loads", "Most loads on one day", bound),
        _outcome("fire_heat", "Heat from the fire", bound, us="MMBtu", si="kWh"),
        _outcome("rooms_heat", "Of it, through the store to the rooms", bound, us="MMBtu", si="kWh"),
        _outcome("taps_heat", "Of it, through the store to the taps", bound, us="MMBtu", si="kWh"),
        _outcome("taps_elsewhere", "Heat for the taps from elsewhere", bound, us="MMBtu", si="kWh"),
        _outcome("backup_heat", "Heat for the rooms from elsewhere", bound, us="MMBtu", si="kWh"),
        _outcome("standby_heat", "Heat the store lost standing", bound, us="MMBtu", si="kWh"),
        _outcome("surplus_heat", "Heat that a full store could not take", bound, us="MMBtu", si="kWh"),
        _outcome("cold_hours", "Hours in which the rooms are too cold", bound),
        _outcome("coldest", "Coldest the rooms get", bound),
        _outcome("coldest_ever", "Coldest the rooms get, days away and all", bound),
        _outcome("hot_hours", "Hours in which the stove's room is too hot", bound),
        _outcome("hottest", "Hottest the stove's room gets", bound),
        _outcome("boiling_hours", "Hours with water near boiling", bound),
        _outcome("hottest_outlet", "Hottest water from the stove", bound),
        _outcome("lowest_store", "Coolest the store gets while you heat", bound),
        _outcome("highest_store", "Hottest the store gets", bound),
        _outcome("year_degree_days", "Degree-days of this year", bound),
    )


def _by_weather(**bound: str) -> Cases:
    return Cases(
        "weather",
        place=Case(steps=_outcomes(degree_days="as_it_is", **bound)),
        own=Case(fields=(DEGREE_DAYS,), steps=_outcomes(**bound), decides=True),
        file=Case(steps=_outcomes(degree_days="as_it_is", place="weather", **bound)),
    )


def _too_cool(code: str, when: str, needed: str) -> Advice:
    return Advice(
        "unworkable",
        code,
        f"{when} and loads >= 1",
        "The store is never hot enough for the coldest day.",
        f"The emitters then need {{{needed}}}, and the store is charged to {{store_top}}.",
    )


_PLAIN = Case(
    fields=(EMITTER_TIMES,),
    steps=(
        Step("return_typed", emitters.return_water, "Return to that supply", supply="supply_water", drop="water_drop"),
        Step("mean_typed", emitters.mean_of, "Their mean", supply="supply_water", return_water="return_typed"),
        Step("excess_typed", emitters.excess_of, "Their mean above the rooms", water="mean_typed"),
        Step(
            "emitters_give",
            emitters.scaled_rating,
            "What so many emitters would give at that mean",
            emitter_factor="emitter_times",
            rating="design_load",
        ),
        Step(
            "excess_sized",
            emitters.needed_excess,
            "Mean above the rooms that so many emitters need",
            load="design_load",
            rated_output="emitters_give",
            rated_excess="excess_typed",
        ),
        Step("mean_sized", emitters.mean_water, "Mean that so many emitters need", excess="excess_sized"),
        Step(
            "supply_sized",
            emitters.supply_water,
            "Supply on the coldest day",
            mean_water="mean_sized",
            drop="water_drop",
        ),
    ),
    cases=(
        _by_weather(
            slab_capacity="no_slab",
            slab_up="no_slab_link",
            slab_down="no_slab_link",
            below_floor="no_slab_ground",
            supply_water="supply_sized",
        ),
    ),
)
_SLAB = Case(
    fields=(
        FLOOR_AREA,
        SLAB_THICKNESS,
        FLOOR_COVERING,
        SLAB_DENSITY,
        SLAB_HEAT_CAPACITY,
        SLAB_CONDUCTIVITY,
        INSULATION_BELOW,
        BELOW_FLOOR,
    ),
    steps=(
        Step("slab_capacity", slab.heat_for_each_degree, "Heat in the slab for each degree"),
        Step(
            "resistance_to_surface",
            slab.resistance_to_surface,
            "Resistance from the slab's middle temperature to its surface",
            covering="covering_resistance",
        ),
        Step(
            "resistance_above",
            floor.resistance_above,
            "Resistance from there to the rooms' air",
            covering="resistance_to_surface",
            cover="no_more_cover",
            screed_conductivity="slab_conductivity",
        ),
        Step(
            "slab_up",
            house.surface_conductance,
            "Heat from slab to rooms for each degree",
            area="floor_area",
            resistance="resistance_above",
        ),
        Step(
            "slab_down",
            house.surface_conductance,
            "Heat from slab to ground for each degree",
            area="floor_area",
            resistance="insulation_below",
        ),
    ),
    cases=(floor_covering.CASES, _by_weather()),
)

WORKSHEET = Worksheet(
    key="winter-run",
    guide="winter",
    question="What will a whole winter be like?",
    short="A typical year hour by hour: fires, cords, cold hours, hot hours, and a calendar.",
    fields=(
        PLACE,
        WEATHER,
        DESIGN_OUTDOOR_HERE,
        DESIGN_LOAD,
        HEATED_AREA,
        EMITTER,
        SUPPLY_WATER.but(hint="With which the rooms are just warm enough on the coldest day."),
        WATER_DROP,
        STORE_VOLUME,
        STORE_TOP,
        WATER_OUTPUT,
        ROOM_OUTPUT,
        BURN_TIME,
        FIRST_HOUR,
        LAST_HOUR,
        LOADS_A_DAY,
        SUMMER_FIRES,
        BACKUP,
        ALTITUDE_HERE,
        *FOLDED,
    ),
    givens=(
        Given(
            "as_it_is", "degree_days", "Degree-days to stretch the year to: none, as it is", "0 °F·day", "definition"
        ),
        Given("no_slab", "heat_capacity", "No slab", "0 J/K", "definition"),
        Given("no_slab_link", "conductance", "No slab", "0 W/K", "definition"),
        Given("no_slab_ground", "temperature", "No slab", "50 °F", "definition"),
        Given("no_more_cover", "length", "Nothing more above it", "0 in", "definition"),
        Given("solid_share", "fraction", "Share of the stack that is solid wood", "66.4 %", "cord-solid-share"),
        Given("few_hours", "time", "A few hours", "12 h", "definition"),
        Given(
            "near_frost",
            "temperature",
            "Rooms in which pipes in outer walls begin to freeze",
            "40 °F",
            "common-practice",
        ),
        Given("some_hours", "time", "Hours worth a word", "60 h", "definition"),
        *outlet.GIVENS,
    ),
    cases=(Cases("emitter", floor=_SLAB, baseboard=_PLAIN, radiator=_PLAIN, air_coil=_PLAIN),),
    steps=(
        Step("conductance", house.conductance_from_load, "Heat the house loses for each degree"),
        Step("gains", house.internal_gains, "Heat from sun, people and lamps"),
        Pick(
            "capacity_per_area",
            "area_heat_capacity",
            "Heat held by walls and floors for each floor area",
            on="house_mass",
            values={key: f"{heaviness.capacity_per_area:g} J/m2/K" for key, heaviness in HEAVINESS.items()},
            source="iso-13790",
        ),
        Step("house_capacity", room.wall_capacity, "Heat held by the house for each degree", area="heated_area"),
        Pick(
            "exponent",
            "exponent",
            "Output exponent of the emitter",
            on="emitter",
            values={"floor": "1", "baseboard": "1.4", "radiator": "1.3", "air-coil": "1"},
            source="emitter-exponents",
        ),
        *outlet.STEPS,
        Pick(
            "basic_density",
            "density",
            "Oven-dry weight of each volume of this wood",
            on="species",
            values={tree.key: f"{tree.basic_density:g} kg/m³" for tree in WOODS.values()},
            source="usfs-fia-species",
        ),
        Pick(
            "dry_heating_value",
            "heat_per_mass",
            "Heat in each weight of it, oven-dry",
            on="species",
            values={tree.key: "9,000 Btu/lb" if tree.resinous else "8,600 Btu/lb" for tree in WOODS.values()},
            source="wood-heating-value",
        ),
        Step("heating_value", wood.higher_heating_value, "Heat in each weight of this wood, higher value"),
        Step("heat_content", wood.stack_heat_content, "Heat in a cord or stère", us="MMBtu/cord", si="kWh/m³"),
        Step("wood_volume", fuels.volume_needed, "Stacked wood for a winter", us="cord", si="stère", heat="fire_heat"),
    ),
    results=(
        Result(
            "loads", "Loads burnt in a year", "On {days_lit} days, at most {most_loads} on one of them.", decimals=0
        ),
        Result("wood_volume", "Stacked wood for a winter", "Of {species} at {moisture} moisture.", figures=2),
        Result(
            "cold_hours",
            "Hours in which the rooms are too cold",
            "More than 3 F° (1.7 K) below {indoor}.",
            decimals=0,
        ),
        Result("coldest", "Coldest the rooms get", "Days away are left out.", figures=2),
        Result(
            "hot_hours",
            "Hours in which the stove's room is too hot",
            "Over {room_limit}, and the fire's doing.",
            decimals=0,
        ),
        Result("hottest", "Hottest the stove's room gets", figures=2),
        Result("backup_heat", "Heat for the rooms from elsewhere", only=("backup", "yes"), figures=2),
        Result("taps_elsewhere", "Heat for the taps from elsewhere", figures=2),
        Result("lowest_store", "Coolest the store gets while you heat", "Its mean.", figures=2),
        Result("highest_store", "Hottest the store gets", "Its mean.", figures=3),
        Result(
            "hottest_outlet", "Hottest water from the stove", "Over each hour; a peak is hotter for minutes.", figures=3
        ),
        Result(
            "boiling_hours", "Hours with water near boiling", "At the store's top, within 20 F° (11 K).", decimals=0
        ),
        Result("supply_sized", "Supply on the coldest day", figures=3),
        Result("surplus_heat", "Heat that a full store could not take", "The dump must take it.", figures=2),
        Result("standby_heat", "Heat the store lost standing", figures=2),
        Result("fire_heat", "Heat from the fire", "To the water and to the room."),
        Result("rooms_heat", "Of it, through the store to the rooms"),
        Result("taps_heat", "Of it, through the store to the taps", figures=2),
        Result("year_degree_days", "Degree-days of this year", "Below {base_temperature}, by the mean of each day."),
    ),
    headline="loads",
    say="{wood_volume} of wood; too cold for {cold_hours}.",
    say_none="This winter cannot be run.",
    advice=(
        *(word for word in outlet.ADVICE if word.level == "stop"),
        Advice(
            "unworkable",
            "no-year",
            "weather != 'file' and missing(loads)",
            "This winter cannot be run.",
            "Either {supply_water} of supply is too cool for what it has to heat, or {design_outdoor} and the degree-days "
            "belong to no one place.",
        ),
        Advice(
            "unworkable",
            "no-file",
            "weather == 'file' and missing(loads)",
            "No weather file is open here.",
            "Choose yours beside “Whose winter”; it stays in this browser, and no link carries it. If one is open, "
            "{supply_water} of supply is too cool for what it has to heat.",
        ),
        Advice(
            "unworkable",
            "never-lit",
            "loads < 1",
            "No load is ever lit.",
            "A load gives {water_output} for {burn_time}, and this store of {store_volume} never has room for it. Take a "
            "larger store, or a smaller load.",
        ),
        _too_cool("too-cool", "supply_sized > store_top", "supply_sized"),
        _too_cool("too-cool-floor", "emitter == 'floor' and supply_water > store_top", "supply_water"),
        Advice(
            "caution",
            "cold",
            "cold_hours > few_hours and loads >= 1",
            "The rooms get too cold.",
            "For {cold_hours} of the year, down to {coldest}. More loads a day, a larger store, earlier or later hours, or "
            "other heat: change one and look again.",
        ),
        Advice(
            "caution",
            "base-above",
            "base_temperature > indoor",
            "The base temperature is above that of the rooms.",
            "Sun, people and lamps would then cool the house. The base lies at {indoor} or a few degrees below.",
        ),
        Advice(
            "caution",
            "frost",
            "coldest_ever < near_frost",
            "Pipes may freeze.",
            "With nobody there and no other heat the house comes down to {coldest_ever}, and pipes and tank with it. It "
            "needs other heat that keeps out the frost, or its water drained.",
        ),
        Advice(
            "caution",
            "hot",
            "hot_hours > some_hours",
            "The stove's room gets too hot.",
            "For {hot_hours} it is over {room_limit}, up to {hottest}. A wider way to the house or a stove that gives more "
            "to the water helps.",
        ),
        Advice(
            "caution",
            "surplus",
            "surplus_heat > 0.01 * fire_heat and loads >= 1",
            "The store is full before the fire is out.",
            "{surplus_heat} a year find no room. The dump must take that heat; it should be rare.",
        ),
        *(word for word in outlet.ADVICE if word.level == "caution"),
        Advice(
            "note",
            "typical-year",
            "loads >= 1",
            "A typical year has no cold snap like the worst.",
            "Its cold is that of an ordinary winter. Size stove and store for the coldest day, and use this for the rest.",
            "typical-year-place",
        ),
    ),
    meaning=(
        "Of the year's fire, {rooms_heat} reach the rooms through the store. The rest warms the stove's room, the taps, and "
        "what the store loses.",
    ),
    picture=Picture("calendar", "Loads lit on each day, July to June.", {"fires": "loads"}),
    chart=Track(
        "The ten coldest days, hour by hour",
        of="loads",
        across="Day of the coldest spell",
        lines=(
            Trace("spell_top", "top of the store", "tank"),
            Trace("spell_rooms", "rooms", "use"),
            Trace("spell_outdoor", "outdoors", "other"),
        ),
        say="In them the store is at {lowest_store} or above, and the rooms at {coldest} or above.",
    ),
    sweeps=(
        Sweep(
            "Another tank",
            across="store_volume",
            points=("x0.4", "x0.6", "x0.8", "x1", "plus 200 gal", "x1.5", "x2", "x3"),
            show=("loads", "cold_hours", "coldest", "hot_hours"),
            falls="cold_hours",
            more="plus 200 gal",
        ),
        Sweep(
            "Larger emitters",
            across="emitter_times",
            points=("x0.6", "x0.8", "x1", "x1.25", "x1.5", "x2", "x3"),
            show=("supply_sized", "loads", "cold_hours", "coldest"),
            falls="cold_hours",
            more="x1.25",
        ),
        Sweep(
            "More fires a day",
            across="loads_a_day",
            points=("1", "2", "3", "4", "5", "6", "x1", "plus 1"),
            show=("loads", "cold_hours", "coldest", "hot_hours"),
            falls="cold_hours",
            more="plus 1",
        ),
        Spread("What is uncertain, and how much it matters", of=("wood_volume", "cold_hours")),
    ),
    musts=(
        Must(
            "supply_water - water_drop > indoor",
            "supply_water",
            "The supply must be so warm that what comes back is warmer than the rooms.",
        ),
        Must("indoor > design_outdoor", "design_outdoor", "The design temperature must be below that of the rooms."),
    ),
    examples=(
        Example(
            "Mill Row: 800 gallons behind the old baseboards",
            {
                "place": "burlington-vt",
                "weather": "own",
                "degree_days": "7,800 °F·day",
                "design_outdoor": "-5 °F",
                "design_load": "30,500 Btu/h",
                "heated_area": "1,600 ft2",
                "house_mass": "light",
                "emitter": "baseboard",
                "supply_water": "140 °F",
                "water_drop": "12 F°",
                "supply_control": "weather",
                "store_volume": "800 gal",
                "store_top": "180 °F",
                "store_inside": "yes",
                "water_output": "60,000 Btu/h",
                "room_output": "8,000 Btu/h",
                "burn_time": "4 h",
                "first_hour": "6",
                "last_hour": "20",
                "loads_a_day": "3",
                "summer_fires": "no",
                "backup": "no",
                "indoor": "68 °F",
                "base_temperature": "65 °F",
                "room_limit": "80 °F",
                "store_layers": "layered",
                "store_loss": "10 Btu/h/F",
                "store_surroundings": "60 °F",
                "least_return": "140 °F",
                "species": "sugar-maple",
                "moisture": "20 %",
                "efficiency": "68 %",
                "room_passes": "500 Btu/h/F",
                "room_share": "20 %",
                "cold_water": "50 °F",
                "altitude": "3,000 ft",
                "charge_rise": "25 F°",
                "system_pressure": "12 psi",
            },
        ),
        Example(
            "Fern Lane: 500 gallons and a warm slab",
            {
                "weather": "place",
                "emitter": "floor",
                "supply_water": "105 °F",
                "water_drop": "10 F°",
                "floor_area": "1,060 ft2",
                "floor_covering": "wood",
            },
        ),
        Example(
            "A slab under a covering whose R-value is known",
            {
                "emitter": "floor",
                "supply_water": "110 °F",
                "floor_covering": "own",
                "covering_resistance": "0.4 R",
            },
        ),
    ),
    in_record=OnlyWith(PLACE, ()),  # a year takes its seconds: the reader ticks it
    leaves_out=(
        "Sun through the windows by the hour: sun, people and lamps count as one steady gain.",
        "Wind, and rooms that are not alike: the house is one temperature, the stove's room another.",
        "Pipes that lose heat, pumps that use current, and air that cools the chimney when the fire is out.",
        "Half loads and damped fires: a load is burnt whole.",
        "Cold snaps and mild winters: it is a typical year.",
    ),
    sources=("eu-tapping", "typical-year-place", "doorway-and-walls", "load-efficiency"),
    follow=(
        Next("tank-size", "The tank by rule and by burn."),
        Next("room-heat", "The stove's room by the hour."),
        Next("power-cut", "What happens when the pump stops in mid-burn."),
    ),
)
