"""Quantities that several worksheets ask: one key, one label, one kind, one range, one typical value with its source."""

from calc.engine.declare import Field, Option, Typical

HEATED_AREA = Field(
    "heated_area", "area", "Heated floor area", "Every floor you keep warm, measured outside the walls.",
    low="100 ft2", high="50,000 ft2",
)  # fmt: skip
INDOOR = Field(
    "indoor", "temperature", "Room temperature wanted", "What the thermostat is set to on a cold day.",
    low="40 °F", high="95 °F", uncertainty="1 F°",
    typical=Typical("68 °F", "common-practice", "65 °F", "72 °F", "Your thermostat knows."),
)  # fmt: skip
DESIGN_OUTDOOR = Field(
    "design_outdoor", "temperature", "Outdoor design temperature",
    "The cold that heating is sized for where you live; the code office or your dealer knows it.",
    low="-60 °F", high="60 °F", uncertainty="3 F°",
)  # fmt: skip
DESIGN_LOAD = Field(
    "design_load", "power", "Heat the house loses on the coldest day",
    "At the outdoor design temperature. The house-load worksheet works it out.",
    low="500 Btu/h", high="2,000,000 Btu/h", uncertainty="15 %",
)  # fmt: skip
DEGREE_DAYS = Field(
    "degree_days", "degree_days", "Degree-days in a year",
    "For the base temperature given here; a weather service or your fuel dealer knows them.",
    low="100 °F·day", high="25,000 °F·day", uncertainty="5 %",
)  # fmt: skip
BASE_TEMPERATURE = Field(
    "base_temperature", "temperature", "Base temperature of the degree-days",
    "The outdoor temperature above which the house needs no heating; most tables use 65 °F, a tight house is nearer 60 °F.",
    low="40 °F", high="75 °F",
    typical=Typical("65 °F", "degree-day-base", "60 °F", "65 °F", "It stands on the table of degree-days."),
)  # fmt: skip
ALTITUDE = Field(
    "altitude", "length", "Height above sea level", "Water boils cooler and air is thinner the higher you live.",
    low="-500 ft", high="14,000 ft", us="ft", si="m",
    typical=Typical("0 ft", "sea-level-assumed", "0 ft", "3,000 ft", "Any map of your town tells."),
)  # fmt: skip
WATER_OUTPUT = Field(
    "water_output", "power", "Heat to the water while it burns",
    "Averaged over a whole burn; not the peak, and not the heat to the room.",
    low="1,000 Btu/h", high="1,000,000 Btu/h", uncertainty="15 %",
)  # fmt: skip
RATED_OUTPUT = Field(
    "rated_output", "power", "Rated output", "On the rating plate; the heat to the water unless you give it.",
    low="1,000 Btu/h", high="1,000,000 Btu/h", same_as="water_output",
)  # fmt: skip
ROOM_OUTPUT = Field(
    "room_output", "power", "Heat to the room while it burns",
    "What the stove gives the room it stands in, averaged over a burn.",
    low="0 Btu/h", high="500,000 Btu/h", uncertainty="20 %",
)  # fmt: skip
BURN_TIME = Field(
    "burn_time", "time", "How long one full load burns", "From a good fire to embers.",
    low="15 min", high="24 h", us="h", si="h", uncertainty="15 %",
)  # fmt: skip
FIREBOX_VOLUME = Field(
    "firebox_volume", "volume", "Firebox volume", "The space that you fill with wood.",
    low="0.1 ft3", high="60 ft3", us="ft³", si="L",
)  # fmt: skip
STORE_VOLUME = Field(
    "store_volume", "volume", "Store volume", "Water only; it stands on the tank's label.",
    low="5 gal", high="20,000 gal",
)  # fmt: skip
STORE_TOP = Field(
    "store_top", "temperature", "Hottest the store is charged to",
    "The whole store at the end of a good burn.",
    low="70 °F", high="300 °F", uncertainty="3 F°",
    typical=Typical("180 °F", "common-practice", "170 °F", "190 °F", "The tank's thermometer after a full charge."),
)  # fmt: skip
LOWEST_USEFUL = Field(
    "lowest_useful", "temperature", "Coolest store water still worth drawing",
    "Set by what heats the rooms, or by the taps if they need it hotter.",
    low="60 °F", high="250 °F", uncertainty="5 F°",
)  # fmt: skip
STORE_SURROUNDINGS = Field(
    "store_surroundings", "temperature", "Air around the store", "The cellar or shed in winter.",
    low="-40 °F", high="110 °F",
    typical=Typical("60 °F", "common-practice", "45 °F", "70 °F", "A thermometer hung beside the tank."),
)  # fmt: skip
STORE_INSIDE = Field(
    "store_inside", "choice", "Where the store stands", "Heat that leaks inside the heated space is not lost.",
    options=(Option("yes", "inside the heated space"), Option("no", "outside it: shed, garage or cold cellar")),
)  # fmt: skip
EXCHANGER_APPROACH = Field(
    "exchanger_approach", "temperature_difference", "Temperature lost across an exchanger",
    "How much cooler the water leaves an exchanger than the store feeds it; 0 without one.",
    low="0 F°", high="60 F°", unless_given="0 F°",
)  # fmt: skip
SYSTEM_PRESSURE = Field(
    "system_pressure", "pressure_gauge", "Pressure at the store's top",
    "What a gauge there shows when cold; 0 for a store open to the air.",
    low="0 psi", high="150 psi",
    typical=Typical("12 psi", "common-practice", "0 psi", "20 psi", "The gauge beside the expansion tank."),
)  # fmt: skip
HIGHEST_POINT = Field(
    "highest_point", "length", "Highest pipe above the store's top",
    "How far the highest pipe or emitter lies above the top of the store.",
    low="0 ft", high="100 ft", us="ft", si="m", unless_given="0 ft",
)  # fmt: skip
PEAK_FACTOR = Field(
    "peak_factor", "factor", "Peak output over the average",
    "A wood fire at its height gives far more than its average.",
    low="1", high="5", unless_given="2",
)  # fmt: skip
EMITTER = Field(
    "emitter", "choice", "What heats the rooms", "The one that needs the hottest water.",
    options=(
        Option("floor", "warm floor"),
        Option("baseboard", "baseboard"),
        Option("radiator", "radiators"),
        Option("air-coil", "a coil in the air ducts"),
    ),
)  # fmt: skip
WATER_DROP = Field(
    "water_drop", "temperature_difference", "Supply minus return at the emitter",
    "How much the water cools on its way through, on the coldest day.",
    low="1 F°", high="80 F°",
    typical=Typical("20 F°", "common-practice", "10 F°", "30 F°", "Two thermometers on the pipes."),
)  # fmt: skip
AVERAGE_OUTDOOR = Field(
    "average_outdoor", "temperature", "Outdoors on an average winter day", "The mean of the heating season.",
    low="-40 °F", high="64 °F",
    typical=Typical("30 °F", "common-practice", "20 °F", "40 °F", "A weather service; the months you heat, averaged."),
)  # fmt: skip
SUPPLY_TRIED = Field(
    "supply_tried", "temperature", "A supply temperature to try", "What the emitters give from water this hot.",
    low="75 °F", high="250 °F", unless_given="140 °F",
)  # fmt: skip
EMITTER_FACTOR = Field(
    "emitter_factor", "factor", "How many times the emitter you have", "2 to see what twice as much would do.",
    low="0.2", high="10", unless_given="1",
)  # fmt: skip
ANTIFREEZE = Field(
    "antifreeze", "fraction", "Antifreeze, by volume", "0 for plain water.",
    low="0 %", high="60 %", unless_given="0 %",
)  # fmt: skip
MOISTURE = Field(
    "moisture", "fraction", "Moisture of the wood, wet basis",
    "Weight of water over the whole weight. A meter reads dry basis: its 25 % is 20 % here.",
    low="0 %", high="65 %", uncertainty="3 %",
    typical=Typical("20 %", "common-practice", "15 %", "30 %", "Split a log and read a meter on the fresh face."),
)  # fmt: skip
LOAD = Field(
    "load", "power", "Heat drawn from the store now",
    "The house's load in the weather you have in mind; the coldest day's unless you say otherwise.",
    low="100 Btu/h", high="2,000,000 Btu/h", same_as="design_load",
)  # fmt: skip
HOURS_WANTED = Field(
    "hours_wanted", "time", "Hours without a fire", "How long the store should carry the house.",
    low="1 h", high="120 h",
    typical=Typical("12 h", "common-practice", "8 h", "24 h", "You decide: a night, or a night and a working day."),
)  # fmt: skip
STANDBY_LOSS = Field(
    "standby_loss", "power", "Heat that leaks from the store and is lost",
    "0 when it stands inside the heated space; the standby worksheet works it out.",
    low="0 Btu/h", high="50,000 Btu/h", unless_given="0 Btu/h",
)  # fmt: skip
COLD_WATER = Field(
    "cold_water", "temperature", "Cold water", "As it comes from the well or the main in winter.",
    low="32 °F", high="90 °F",
    typical=Typical("50 °F", "common-practice", "40 °F", "60 °F", "Run the cold tap over a thermometer."),
)  # fmt: skip
EFFICIENCY = Field(
    "efficiency", "fraction", "Efficiency of the heater",
    "On higher heating value: of the fuel's whole heat, the share that warms the house over a season.",
    low="20 %", high="600 %", uncertainty="5 %",
)  # fmt: skip
EFFICIENCY_BASIS = Field(
    "efficiency_basis", "choice", "That efficiency is quoted on",
    "American ratings use the higher heating value, European ones the lower; the label or the test report says.",
    options=(
        Option("higher", "the higher heating value (American ratings)"),
        Option("lower", "the lower heating value (European ratings)"),
    ),
)  # fmt: skip
PACKING_DENSITY = Field(
    "packing_density", "density", "Weight of wood in each volume of firebox",
    "Weigh one full load and divide by the firebox volume.",
    low="3 lb/ft3", high="40 lb/ft3", uncertainty="20 %",
    typical=Typical("12.5 lb/ft3", "packing-density", "9.5 lb/ft3", "15.5 lb/ft3", "A bathroom scale and one load."),
)  # fmt: skip
TAP_LOAD = Field(
    "tap_load", "power", "Heat for hot taps, averaged over the day", "0 unless this fire heats the taps as well.",
    low="0 Btu/h", high="100,000 Btu/h", unless_given="0 Btu/h",
)  # fmt: skip
HEATING_DAYS = Field(
    "heating_days", "time", "Days in the year that need heat", "Days whose mean is below the base temperature.",
    low="30 days", high="366 days", us="days", si="days", uncertainty="10 %",
    typical=Typical("300 days", "typical-years", "250 days", "350 days", "A weather service; nights count."),
)  # fmt: skip
