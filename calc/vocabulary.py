"""Quantities that several worksheets ask: one key, one label, one kind, one range, one typical value with its source."""

from dataclasses import replace

from calc.engine.declare import Field, Option, Typical
from calc.tables.houses import HOUSE_CLASSES
from calc.tables.places import PLACES, WINTERS
from calc.tables.species import SPECIES as WOODS
from calc.units import shown_unit

HEATED_AREA = Field(
    "heated_area",
    "area",
    "Heated floor area",
    "Every floor you keep warm, measured outside the walls.",
    low="100 ft2",
    high="50,000 ft2",
)
INDOOR = Field(
    "indoor",
    "temperature",
    "Room temperature wanted",
    "What the thermostat is set to on a cold day.",
    low="40 °F",
    high="95 °F",
    uncertainty="1 F°",
    typical=Typical("68 °F", "common-practice", "65 °F", "72 °F", "Your thermostat knows."),
)
DESIGN_OUTDOOR = Field(
    "design_outdoor",
    "temperature",
    "Outdoor design temperature",
    "The cold that heating is sized for where you live; the code office or your dealer knows it.",
    low="-60 °F",
    high="60 °F",
    uncertainty="3 F°",
)
DESIGN_LOAD = Field(
    "design_load",
    "power",
    "Design load (heat lost on the coldest day)",
    "The house-load worksheet works it out.",
    low="500 Btu/h",
    high="2,000,000 Btu/h",
    uncertainty="15 %",
)
DEGREE_DAYS = Field(
    "degree_days",
    "degree_days",
    "Degree-days in a year",
    "For the base temperature given here; a weather service or your fuel dealer knows them.",
    low="100 °F·day",
    high="25,000 °F·day",
    uncertainty="5 %",
)
BASE_TEMPERATURE = Field(
    "base_temperature",
    "temperature",
    "Base temperature of the degree-days",
    "The outdoor temperature above which the house needs no heating; most US tables use 65 °F (18 °C), a tight house is nearer 60 °F (16 °C).",
    low="40 °F",
    high="75 °F",
    typical=Typical("65 °F", "degree-day-base", "60 °F", "65 °F", "It stands on the table of degree-days."),
)
ALTITUDE = Field(
    "altitude",
    "length",
    "Height above sea level",
    "Higher up, water boils cooler and air is thin.",
    low="-500 ft",
    high="14,000 ft",
    us="ft",
    si="m",
    typical=Typical("0 ft", "sea-level-assumed", "0 ft", "3,000 ft", "Any map of your town tells."),
)
# Where the question is boiling: what is not given is taken on the side that warns.
BOILING_ALTITUDE = ALTITUDE.but(
    typical=Typical("5,000 ft", "careful-side", "0 ft", "7,000 ft", "Any map of your town tells.", kindest="0 ft"),
)
# A table of places is a sample, so the nearest of them stands in for the rest; a winter told in words finds one as well.
PLACE = Field(
    "place",
    "choice",
    "Place with a winter like yours",
    "Thirty-one places, a sample; or the nearest to a latitude and longitude like 44.5, -73.2.",
    options=tuple(
        Option(
            place.key,
            f"{place.name} ({place.region})",
            tuple(winter.words.casefold() for winter in WINTERS if winter.place == place.key),
            (place.latitude, place.longitude),
        )
        for place in PLACES.values()
    ),
)
WATER_OUTPUT = Field(
    "water_output",
    "power",
    "Average heat output to water",
    "Averaged over a whole burn; not the peak, and not the heat to the room.",
    low="1,000 Btu/h",
    high="1,000,000 Btu/h",
    uncertainty="15 %",
)
RATED_OUTPUT = Field(
    "rated_output",
    "power",
    "Rated output",
    "On the rating plate; the heat to the water unless you give it.",
    low="1,000 Btu/h",
    high="1,000,000 Btu/h",
    same_as="water_output",
)
ROOM_OUTPUT = Field(
    "room_output",
    "power",
    "Average heat output to the room",
    "What the stove gives the room it stands in, averaged over a burn.",
    low="0 Btu/h",
    high="500,000 Btu/h",
    uncertainty="20 %",
)
BURN_TIME = Field(
    "burn_time",
    "time",
    "Burn time of one full load",
    "From a good fire to embers.",
    low="15 min",
    high="24 h",
    us="h",
    si="h",
    uncertainty="15 %",
)
FIREBOX_VOLUME = Field(
    "firebox_volume",
    "volume",
    "Firebox volume",
    "The space that you fill with wood.",
    low="0.1 ft3",
    high="60 ft3",
    us="ft³",
    si="L",
)
STORE_VOLUME = Field(
    "store_volume",
    "volume",
    "Store volume",
    "Water only; it stands on the tank's label.",
    low="5 gal",
    high="20,000 gal",
)
STORE_TOP = Field(
    "store_top",
    "temperature",
    "Store temperature when fully charged",
    "The whole store at the end of a good burn.",
    low="70 °F",
    high="250 °F",
    uncertainty="3 F°",
    typical=Typical("180 °F", "common-practice", "170 °F", "190 °F", "The tank's thermometer after a full charge."),
)
LOWEST_USEFUL = Field(
    "lowest_useful",
    "temperature",
    "Lowest useful store temperature",
    "Set by what heats the rooms, or by the taps if they need it hotter.",
    low="60 °F",
    high="250 °F",
    uncertainty="5 F°",
    keeps_highest=True,
)
STORE_SURROUNDINGS = Field(
    "store_surroundings",
    "temperature",
    "Air temperature around the store",
    "The cellar or shed in winter.",
    low="-40 °F",
    high="110 °F",
    typical=Typical("60 °F", "common-practice", "45 °F", "70 °F", "A thermometer hung beside the tank."),
)
STORE_INSIDE = Field(
    "store_inside",
    "choice",
    "Where the store stands",
    "Heat that leaks inside the heated space is not lost.",
    options=(Option("yes", "inside the heated space"), Option("no", "outside it: shed, garage or cold cellar")),
)
STORE_KIND = Field(
    "store_kind",
    "choice",
    "Kind of store",
    options=(
        Option("closed", "a closed tank"),
        Option("open", "an open steel tank with a lid"),
        Option("lined", "an open tank with a rubber liner and a lid"),
    ),
)
EXCHANGER_APPROACH = Field(
    "exchanger_approach",
    "temperature_difference",
    "Approach of the exchanger",
    "How much cooler the water leaves an exchanger than the store feeds it; 0 without one.",
    low="0 F°",
    high="60 F°",
    unless_given="0 F°",
)
SYSTEM_PRESSURE = Field(
    "system_pressure",
    "pressure_gauge",
    "System pressure at the store's top",
    "A gauge there when cold; 0 for an open store.",
    low="0 psi",
    high="150 psi",
    typical=Typical(
        "0 psi", "careful-side", "0 psi", "20 psi", "The gauge beside the expansion tank.", kindest="30 psi"
    ),
)
HIGHEST_POINT = Field(
    "highest_point",
    "length",
    "Highest pipe above the store's top",
    "How far the highest pipe or emitter lies above the top of the store.",
    low="0 ft",
    high="100 ft",
    us="ft",
    si="m",
    unless_given="0 ft",
)
PEAK_FACTOR = Field(
    "peak_factor",
    "factor",
    "Peak output over average output",
    "At its height a fire gives far more.",
    low="1",
    high="5",
    unless_given="2",
)
EMITTER = Field(
    "emitter",
    "choice",
    "What heats the rooms",
    "The one that needs the hottest water.",
    options=(
        Option("floor", "warm floor"),
        Option("baseboard", "baseboard"),
        Option("radiator", "radiators"),
        Option("air-coil", "a coil in the air ducts"),
    ),
)
WATER_DROP = Field(
    "water_drop",
    "temperature_difference",
    "Temperature drop from supply to return",
    "How much the water cools on the coldest day.",
    low="1 F°",
    high="80 F°",
    typical=Typical("20 F°", "common-practice", "10 F°", "30 F°", "Two thermometers on the pipes."),
)
AVERAGE_OUTDOOR = Field(
    "average_outdoor",
    "temperature",
    "Average winter outdoor temperature",
    "The mean of the heating season.",
    low="-40 °F",
    high="64 °F",
    typical=Typical("30 °F", "common-practice", "20 °F", "40 °F", "A weather service; the months you heat, averaged."),
)
SUPPLY_TRIED = Field(
    "supply_tried",
    "temperature",
    "Supply temperature to try",
    "What the emitters give from water this hot.",
    low="75 °F",
    high="250 °F",
    unless_given="140 °F",
)
EMITTER_FACTOR = Field(
    "emitter_factor",
    "factor",
    "Emitter size compared with yours",
    "2 to see what twice as much would do.",
    low="0.2",
    high="10",
    unless_given="1",
)
ANTIFREEZE = Field(
    "antifreeze",
    "fraction",
    "Antifreeze share by volume",
    "0 for plain water.",
    low="0 %",
    high="60 %",
    unless_given="0 %",
)
MOISTURE = Field(
    "moisture",
    "fraction",
    "Moisture of the wood, wet basis",
    "Water over the whole weight. A meter reads dry basis: type its 25 % as 25 % db.",
    low="0 %",
    high="65 %",
    uncertainty="3 %",
    dry_basis=True,
    typical=Typical("20 %", "common-practice", "15 %", "30 %", "Split a log and read a meter on the fresh face."),
)
LOAD = Field(
    "load",
    "power",
    "Load on the store",
    "The house's load in the weather you have in mind; the coldest day's unless you say otherwise.",
    low="100 Btu/h",
    high="2,000,000 Btu/h",
    same_as="design_load",
)
A_NIGHT = Typical("12 h", "common-practice", "8 h", "24 h", "You decide: a night, or a night and a working day.")
HOURS_WANTED = Field(
    "hours_wanted",
    "time",
    "Hours without a fire",
    "How long the store should carry the house.",
    low="1 h",
    high="120 h",
    typical=A_NIGHT,
)
STANDBY_LOSS = Field(
    "standby_loss",
    "power",
    "Standby loss outside the heated space",
    "0 when it stands inside the heated space; the standby worksheet works it out.",
    low="0 Btu/h",
    high="50,000 Btu/h",
    unless_given="0 Btu/h",
)
COLD_WATER = Field(
    "cold_water",
    "temperature",
    "Cold water temperature",
    "As it comes from the well or the main in winter.",
    low="32 °F",
    high="90 °F",
    typical=Typical("50 °F", "common-practice", "40 °F", "60 °F", "Run the cold tap over a thermometer."),
)
EFFICIENCY_BASIS = Field(
    "efficiency_basis",
    "choice",
    "Efficiency of the stove is quoted on",
    "The higher value counts the heat in the flue gas's steam; the label or report says.",
    options=(
        Option("higher", "the higher heating value (American ratings)"),
        Option("lower", "the lower heating value (European ratings)"),
    ),
    unless_given="higher",
)
PACKING_DENSITY = Field(
    "packing_density",
    "density",
    "Wood loaded per volume of firebox",
    "Weigh one full load and divide by the firebox volume.",
    low="3 lb/ft3",
    high="40 lb/ft3",
    uncertainty="20 %",
    typical=Typical("12.5 lb/ft3", "packing-density", "9.5 lb/ft3", "15.5 lb/ft3", "A bathroom scale and one load."),
)
TAP_LOAD = Field(
    "tap_load",
    "power",
    "Average hot-water load",
    "0 unless this fire heats the taps as well.",
    low="0 Btu/h",
    high="100,000 Btu/h",
    unless_given="0 Btu/h",
)
HEATING_DAYS = Field(
    "heating_days",
    "time",
    "Heating days in a year",
    "Days whose mean is below the base temperature, above which a house needs no heating.",
    low="30 days",
    high="366 days",
    us="days",
    si="days",
    uncertainty="10 %",
    typical=Typical("300 days", "typical-years", "250 days", "350 days", "A weather service; nights count."),
)
# --- Taps, the room, the fire, wood and money ---
# What people say who do not know which one it is: an ordinary one of them, not the heaviest.
WOOD_WORDS = {
    "northern-red-oak": ("oak", "red oak"),
    "white-spruce": ("spruce",),
    "paper-birch": ("birch",),
    "white-ash": ("ash",),
    "american-elm": ("elm",),
    "red-maple": ("maple",),
}
SPECIES = Field(
    "species",
    "choice",
    "Kind of wood",
    "The main tree in the pile.",
    options=tuple(Option(wood.key, wood.label, WOOD_WORDS.get(wood.key, ())) for wood in WOODS.values()),
    typical=Typical("mixed-hardwood", "usfs-fia-species"),
)
STOVE_EFFICIENCY = Field(
    "efficiency",
    "fraction",
    "Efficiency of the stove",
    "What does not go up the flue, to the water and the room together.",
    low="30 %",
    high="100 %",
    uncertainty="5 %",
    typical=Typical(
        {"higher": "68 %", "lower": "75 %"},
        "load-efficiency",
        {"higher": "60 %", "lower": "65 %"},
        {"higher": "75 %", "lower": "82 %"},
        "The test report of the stove.",
        on="efficiency_basis",
    ),
)
# The same two of the wood and the stove as the price of heat needs them, whatever basis a report has.
WOOD_CONTENT = Field(
    "wood_heat_content",
    "heat_per_volume",
    "Heat in a cord or stère, higher value",
    "The wood-use worksheet works it out by kind of wood.",
    low="5 MMBtu/cord",
    high="45 MMBtu/cord",
    us="MMBtu/cord",
    si="kWh/m³",
    typical=Typical("20 MMBtu/cord", "eia-heat-contents", "15 MMBtu/cord", "27 MMBtu/cord", "The kind of tree."),
)
# Last year's wood made the bill, whatever is burnt next.
WOOD_CONTENT_NOW = replace(
    WOOD_CONTENT,
    key="wood_content_now",
    label="Heat in a cord or stère of what you burn now, higher value",
    hint="The usual figure unless you know better.",
)
EFFICIENCY_WOOD = Field(
    "efficiency_wood",
    "fraction",
    "Efficiency of the stove, higher value",
    "Of the wood's whole heat, its higher heating value, over a season.",
    low="20 %",
    high="100 %",
    uncertainty="5 %",
    typical=Typical("68 %", "load-efficiency", "60 %", "75 %", "The test report of the stove."),
)
YEARLY_HEAT = Field(
    "yearly_heat",
    "energy",
    "Space heating in a year",
    "What the house needs in a whole winter, taps apart. The house-load worksheet works it out.",
    low="1 MMBtu",
    high="2,000 MMBtu",
    us="MMBtu",
    si="kWh",
    uncertainty="15 %",
)
AIR_RATIO = Field(
    "air_ratio",
    "factor",
    "Air ratio",
    "2 means twice the air that would just burn the wood.",
    low="1.1",
    high="5",
    typical=Typical("2", "air-ratio-guess", "1.5", "3", "A sweep's meter: 20.9 over 20.9 less the oxygen it shows."),
)
ROOM_HUMIDITY = Field(
    "room_humidity",
    "fraction",
    "Relative humidity of the room",
    "The fire's air carries it into the flue gas.",
    low="0 %",
    high="100 %",
    unless_given="40 %",
)
HOUSE_VOLUME = Field(
    "house_volume",
    "volume",
    "Heated volume of the house",
    "Floor area times ceiling height.",
    low="500 ft3",
    high="500,000 ft3",
    us="ft³",
    si="m³",
    uncertainty="5 %",
)
HOUSE_CLASS = Field(
    "house_class",
    "choice",
    "How it is built",
    "Choose the nearest.",
    options=tuple(Option(house.key, house.label) for house in HOUSE_CLASSES.values()),
)


def _class_texts(which: str) -> dict[str, str]:
    unit = shown_unit("conductance_per_area", "us")
    return {house.key: f"{unit.from_si(getattr(house, which)):.4g} Btu/h/ft2/F" for house in HOUSE_CLASSES.values()}


LOSS_PER_AREA = Field(
    "loss_per_area",
    "conductance_per_area",
    "Heat loss per floor area and degree",
    "Filled in from how it is built.",
    low="0.02 Btu/h/ft2/F",
    high="2 Btu/h/ft2/F",
    typical=Typical(
        _class_texts("typical"),
        "house-classes",
        _class_texts("low"),
        _class_texts("high"),
        "A fuel bill or a heat-loss report.",
        on="house_class",
    ),
)
# --- Pipes, antifreeze and safety ---
# What each pipe of a plan has of its own. Plans once had one entry for all pipes, so these keys alone name none of them.
EVERY_PIPE = (
    "pipe_kind",
    "pipe_size",
    "metric_size",
    "bore",
    "roughness",
    "pipe_length",
    "elbows",
    "tees",
    "valves",
    "other_losses",
    "other_pressure",
    "pipe_heat",
)
# All words under which plans once kept what has another one now.
OLDER_WORDS = (*EVERY_PIPE, "fuel", "heat_content", "tank_insulation")
ANTIFREEZE_KIND = Field(
    "antifreeze_kind",
    "choice",
    "Heating fluid",
    "The label on the container says which glycol it is.",
    options=(
        Option("none", "plain water"),
        Option("propylene", "water with propylene glycol"),
        Option("ethylene", "water with ethylene glycol (poisonous)"),
    ),
)
ANTIFREEZE_IN = Field(
    "antifreeze_in",
    "choice",
    "Where the antifreeze is",
    "Behind an exchanger a loop is a plant of its own; the fire's side keeps plain water.",
    options=(
        Option("whole", "everywhere, in the store too"),
        Option("loop", "in a loop behind an exchanger"),
    ),
)
_PIPES_AND_EMITTERS = Typical(
    "30 gal",
    "common-practice",
    "15 gal",
    "60 gal",
    "Add the labels; 100 ft of 1 in pipe hold 4.5 gal, 10 m of 28 mm pipe 5 L.",
)
GLYCOL_VOLUME = Field(
    "glycol_volume",
    "volume",
    "Filling of the loop with antifreeze",
    "Pipes, emitters and exchanger on its side.",
    low="0.5 gal",
    high="2,000 gal",
    uncertainty="20 %",
    typical=_PIPES_AND_EMITTERS,
)
SUPPLY_WATER = Field(
    "supply_water",
    "temperature",
    "Supply temperature",
    "The supply, where it leaves the store or the stove.",
    low="50 °F",
    high="250 °F",
    uncertainty="3 F°",
    typical=Typical("140 °F", "common-practice", "105 °F", "180 °F", "A thermometer on the supply pipe."),
)
PIPE_HEAT = Field(
    "pipe_heat",
    "power",
    "Heat carried by this pipe",
    "The coldest day's load unless you say otherwise.",
    low="500 Btu/h",
    high="2,000,000 Btu/h",
    same_as="design_load",
)
PIPE_KIND = Field(
    "pipe_kind",
    "choice",
    "Kind of pipe",
    "Plastic only behind a mixing valve, never between stove and store.",
    options=(
        Option("copper-m", "copper, type M"),
        Option("copper-l", "copper, type L"),
        Option("pex", "PEX (plastic)"),
        Option("steel", "steel, schedule 40"),
        Option("copper-metric", "copper in millimeters (EN 1057)", ("metric copper",)),
        Option("own", "another one: I know its inside diameter"),
    ),
)
PIPE_SIZE = Field(
    "pipe_size",
    "choice",
    "Nominal pipe size",
    "As it is sold; the bore differs from kind to kind.",
    options=(
        Option("1/2", "1/2 in"),
        Option("3/4", "3/4 in"),
        Option("1", "1 in"),
        Option("1-1/4", "1-1/4 in"),
        Option("1-1/2", "1-1/2 in"),
        Option("2", "2 in"),
    ),
)
METRIC_SIZE = Field(
    "metric_size",
    "choice",
    "Outside diameter and wall",
    "As stamped on the tube, in millimeters; another wall by its inside diameter.",
    options=tuple(
        Option(size, size.replace("x", " x ") + " mm", (size.replace("x", " x "), size.replace("x", " × ")))
        for size in ("15x1", "18x1", "22x1", "28x1.5", "28x1", "35x1.5", "42x1.5", "54x2")
    ),
    typical=Typical("28x1.5", "common-practice", ask="The stamp on the tube."),
)
PIPE_LENGTH = Field(
    "pipe_length",
    "length",
    "Length of pipe, there and back",
    "All the straight pipe of the loop.",
    low="1 ft",
    high="2,000 ft",
    us="ft",
    si="m",
    uncertainty="10 %",
    typical=Typical("60 ft", "common-practice", "30 ft", "150 ft", "A tape measure, or a string along the way."),
)
ELBOWS = Field(
    "elbows",
    "count",
    "90° elbows",
    "Each quarter turn.",
    low="0",
    high="200",
    typical=Typical("10", "common-practice", "6", "20", "Count them."),
)
TEES = Field(
    "tees",
    "count",
    "Tees with flow through the branch",
    "",
    low="0",
    high="100",
    typical=Typical("4", "common-practice", "2", "8", "Count them."),
)
VALVES = Field(
    "valves",
    "count",
    "Ball valves",
    "",
    low="0",
    high="100",
    typical=Typical("4", "common-practice", "2", "8", "Count them."),
)
OTHER_LOSSES = Field(
    "other_losses",
    "factor",
    "Sum of the K factors of other fittings",
    "A check or a mixing valve; its sheet tells, often 2 to 10.",
    low="0",
    high="500",
    unless_given="2",
)
OTHER_PRESSURE = Field(
    "other_pressure",
    "pressure_difference",
    "Pressure drop of jacket, exchanger or emitters",
    "At this flow, from the maker.",
    low="0 psi",
    high="30 psi",
    unless_given="0.5 psi",
)
OTHER_VOLUME = Field(
    "other_volume",
    "volume",
    "Water in stove, pipes and emitters",
    "All that is not in the store.",
    low="0 gal",
    high="2,000 gal",
    uncertainty="30 %",
    typical=_PIPES_AND_EMITTERS,
)
PEAK_KNOWN = Field(
    "peak_known",
    "choice",
    "What you know of the fire's peak",
    "At its height a fire gives far more.",
    options=(
        Option("no", "the average over a burn: the peak is reckoned from it"),
        Option("yes", "the peak itself"),
    ),
)
PEAK_OUTPUT = Field(
    "peak_output",
    "power",
    "Peak output to water",
    "The most the jacket ever takes up, from the maker.",
    low="1,000 Btu/h",
    high="1,500,000 Btu/h",
    uncertainty="15 %",
)
CHARGE_RISE = Field(
    "charge_rise",
    "temperature_difference",
    "Temperature rise through the stove at the peak",
    "How much hotter the outlet is than the inlet when the fire is at its height.",
    low="2 F°",
    high="100 F°",
    uncertainty="5 F°",
    typical=Typical(
        "25 F°", "common-practice", "15 F°", "40 F°", "Two thermometers on the stove's pipes, at the peak."
    ),
)
OUTLET_HEIGHT = Field(
    "outlet_height",
    "length",
    "Stove's outlet above the store's top",
    "Negative when it lies below, which adds pressure there.",
    low="-60 ft",
    high="60 ft",
    us="ft",
    si="m",
    unless_given="0 ft",
)
PUMP_HEIGHT = Field(
    "pump_height",
    "length",
    "Pump above the store's top",
    "Negative when it lies below, which is where it belongs.",
    low="-60 ft",
    high="60 ft",
    us="ft",
    si="m",
    typical=Typical("-4 ft", "common-practice", "-6 ft", "0 ft", "A tape measure."),
)
SUCTION_LOSS = Field(
    "suction_loss",
    "pressure_difference",
    "Pressure drop between store and pump",
    "Short, wide and few fittings: little.",
    low="0 psi",
    high="10 psi",
    unless_given="0.2 psi",
)
RELIEF_SETTING = Field(
    "relief_setting",
    "pressure_gauge",
    "Relief valve setting",
    "It is stamped on its tag.",
    low="8 psi",
    high="75 psi",
    typical=Typical("30 psi", "common-practice", "30 psi", "45 psi", "The tag on the valve."),
)
STORE_NEEDED = Field(
    "store_needed",
    "temperature",
    "Store temperature needed for the taps",
    "The tap-water worksheet works it out; without hot taps on this store, leave it.",
    low="32 °F",
    high="210 °F",
    unless_given="32 °F",
)
TANK_COUNT = Field(
    "tank_count",
    "count",
    "Number of tanks",
    "All alike.",
    low="1",
    high="12",
    whole=True,
)
TANK_DIAMETER = Field(
    "tank_diameter",
    "length",
    "Diameter or longer side of the bare tank",
    "Without its insulation; of a box, the longer side.",
    low="8 in",
    high="20 ft",
    us="in",
    si="cm",
    uncertainty="1 %",
)
EMPTY_WEIGHT = Field(
    "empty_weight",
    "mass",
    "Empty weight of the tank",
    "It stands on the maker's sheet.",
    low="5 lb",
    high="20,000 lb",
    typical=Typical("600 lb", "tank-weight", "250 lb", "1,500 lb", "The maker's sheet."),
)
FLOOR_ALLOWABLE = Field(
    "floor_allowable",
    "load_per_area",
    "Allowable floor load",
    "A builder or an engineer tells; on a slab it is the soil below that counts.",
    low="10 lb/ft2",
    high="10,000 lb/ft2",
    typical=Typical(
        {"framed": "40 lb/ft2", "slab": "1,500 lb/ft2"},
        "floor-loads",
        {"framed": "30 lb/ft2", "slab": "1,000 lb/ft2"},
        {"framed": "100 lb/ft2", "slab": "2,000 lb/ft2"},
        "The code office, or an engineer.",
        on="floor_kind",
    ),
)
ROOM_CONDUCTANCE = Field(
    "room_conductance",
    "conductance",
    "Heat loss of the room per degree",
    "Its own walls, windows, roof and leaks; not the walls to other rooms.",
    low="2 Btu/h/F",
    high="2,000 Btu/h/F",
    uncertainty="15 %",
)
PARTITION = Field(
    "partition",
    "conductance",
    "Heat passed through inner walls per degree",
    "Walls, ceiling and closed doors towards the rest of the house.",
    low="0 Btu/h/F",
    high="2,000 Btu/h/F",
    typical=Typical(
        "100 Btu/h/F", "inner-walls", "50 Btu/h/F", "180 Btu/h/F", "Inner wall area times 0.3 in ft², 1.7 in m²."
    ),
)
ROOM_LIMIT = Field(
    "room_limit",
    "temperature",
    "Warmest room temperature you accept",
    "",
    low="60 °F",
    high="120 °F",
    typical=Typical("78 °F", "room-limit-guess", "75 °F", "82 °F", "You decide."),
)
JACKET_VOLUME = Field(
    "jacket_volume",
    "volume",
    "Water content of the stove's jacket",
    "",
    low="0.5 gal",
    high="400 gal",
    uncertainty="10 %",
    typical=Typical("10 gal", "common-practice", "5 gal", "25 gal", "The stove's manual."),
)
DUMP_OUTPUT = Field(
    "dump_output",
    "power",
    "Dump capacity without power",
    "Finned pipe or a tank above the stove, by gravity; 0 without one.",
    low="0 Btu/h",
    high="1,000,000 Btu/h",
    typical=Typical(
        "0 Btu/h",
        "careful-side",
        ask="Whoever plans or sells the dump; type 0 if there is none.",
        kindest="1,000,000 Btu/h",
    ),
    unless_given="0 Btu/h",
)
LOOP_HEIGHT = Field(
    "loop_height",
    "length",
    "Height from the fire to the store or dump",
    "From the middle of the stove's jacket up to the middle of the store or dump. To one that stands lower nothing flows by itself.",
    low="0.2 ft",
    high="60 ft",
    too_low="to a store or dump that stands hardly higher than the fire, or lower, nothing flows by itself, and a pump "
    "stops with the power",
    us="ft",
    si="m",
    uncertainty="0.5 ft",
)
DAMPER = Field(
    "damper",
    "choice",
    "What the air damper does without power",
    "Ask the maker; a chain or a spring may shut it, a motor may leave it open.",
    options=(Option("open", "stays as it is, or nobody knows"), Option("shut", "shuts by itself")),
)
SLENDERNESS = Field(
    "slenderness",
    "factor",
    "Height-to-diameter ratio of the tank",
    "A tall, slim tank has a little more surface and keeps its layers better.",
    low="0.3",
    high="6",
    typical=Typical("1.5", "common-practice", "1", "3", "A tape measure."),
)
INSULATION = Field(
    "insulation",
    "length",
    "Insulation thickness",
    "All around, top and bottom alike; 0 for a bare tank.",
    low="0 in",
    high="24 in",
    us="in",
    si="mm",
    uncertainty="10 %",
    typical=Typical("4 in", "common-practice", "2 in", "8 in", "A ruler at the edge of a lid or a hatch."),
)
INSULATION_KIND = Field(
    "insulation_kind",
    "choice",
    "Kind of insulation",
    options=(
        Option("mineral-wool", "mineral wool board"),
        Option("fiberglass", "fiberglass batt"),
        Option("polystyrene", "polystyrene board"),
        Option("polyurethane", "polyurethane foam"),
    ),
)
CONDUCTIVITY = Field(
    "conductivity",
    "conductivity",
    "Thermal conductivity of the insulation",
    "In US units one over the R-value of an inch; filled in from the kind.",
    low="0.05 Btuin/h/ft2/F",
    high="2 Btuin/h/ft2/F",
    typical=Typical(
        {
            "mineral-wool": "0.25 Btuin/h/ft2/F",
            "fiberglass": "0.31 Btuin/h/ft2/F",
            "polystyrene": "0.23 Btuin/h/ft2/F",
            "polyurethane": "0.17 Btuin/h/ft2/F",
        },
        "tank-insulation",
        {
            "mineral-wool": "0.24 Btuin/h/ft2/F",
            "fiberglass": "0.26 Btuin/h/ft2/F",
            "polystyrene": "0.2 Btuin/h/ft2/F",
            "polyurethane": "0.155 Btuin/h/ft2/F",
        },
        {
            "mineral-wool": "0.28 Btuin/h/ft2/F",
            "fiberglass": "0.34 Btuin/h/ft2/F",
            "polystyrene": "0.28 Btuin/h/ft2/F",
            "polyurethane": "0.18 Btuin/h/ft2/F",
        },
        "The R-value on the wrapper.",
        on="insulation_kind",
    ),
)
FITTINGS = Field(
    "fittings",
    "factor",
    "Allowance factor for pipes, legs and gaps",
    "1 for a perfect blanket; every pipe that runs uphill from the tank adds.",
    low="1",
    high="4",
    typical=Typical("1.5", "tank-fittings", "1.2", "2", "Feel the pipes a step from the tank: warm ones lose heat."),
)
VESSEL_FITTED = Field(
    "vessel_fitted",
    "volume",
    "Expansion tank fitted",
    "0 if there is none.",
    low="0 gal",
    high="2,000 gal",
    typical=Typical("0 gal", "careful-side", ask="The plate on the tank.", kindest="2,000 gal"),
    unless_given="0 gal",
)
HIGH_LIMIT = Field(
    "high_limit",
    "temperature",
    "High limit of the stove",
    "The hottest water the stove can make before its safety acts; not how hot you charge the store.",
    low="140 °F",
    high="250 °F",
    typical=Typical("210 °F", "high-limit", "200 °F", "230 °F", "The stove's manual."),
)
FILL_TEMPERATURE = Field(
    "fill_temperature",
    "temperature",
    "Fill temperature",
    "At the fill, or the coldest the plant ever gets.",
    low="34 °F",
    high="100 °F",
    typical=Typical("50 °F", "common-practice", "40 °F", "60 °F", "A thermometer in the fill water."),
)
HEIGHT_ABOVE_VESSEL = Field(
    "height_above_vessel",
    "length",
    "Highest pipe above the expansion tank",
    "",
    low="0 ft",
    high="120 ft",
    us="ft",
    si="m",
    typical=Typical("12 ft", "common-practice", "4 ft", "25 ft", "A tape measure."),
)
TOP_PRESSURE = Field(
    "top_pressure",
    "pressure_gauge",
    "Cold pressure kept at the highest pipe",
    "Keeps air out.",
    low="1 psi",
    high="60 psi",
    typical=Typical("4 psi", "common-practice", "3 psi", "8 psi", "Common practice."),
)
FLOOR_KIND = Field(
    "floor_kind",
    "choice",
    "Floor it stands on",
    options=(
        Option("framed", "a floor on joists"),
        Option("slab", "a concrete slab on the ground"),
    ),
)
DRAUGHT_NEEDED = Field(
    "draught_needed",
    "draught",
    "Draft the stove needs",
    "Measured in the pipe just above it.",
    low="1 Pa",
    high="60 Pa",
    us="in w.c.",
    si="Pa",
    typical=Typical("0.05 in w.c.", "test-draught", "0.04 in w.c.", "0.08 in w.c.", "The stove's manual."),
)
# --- Answers of one worksheet that another asks ---
ROOM_CAN_USE = Field(
    "room_can_use",
    "power",
    "Heat the stove's room can lose or pass on",
    "All the stove gives it, unless the room overheats: the room-heat worksheet works it out.",
    low="0 Btu/h",
    high="500,000 Btu/h",
    same_as="room_output",
)
LOWEST_USEFUL_AVERAGE = Field(
    "lowest_useful_average",
    "temperature",
    "Coolest useful water on an average day",
    "In mild weather the emitters do with cooler water; as on the coldest day unless you give it.",
    low="60 °F",
    high="250 °F",
    same_as="lowest_useful",
    keeps_highest=True,
)
LEAST_RETURN = Field(
    "least_return",
    "temperature",
    "Coolest water that may come back to the stove",
    "A valve mixes it up to that. The return-mixing worksheet works it out.",
    low="60 °F",
    high="180 °F",
    unless_given="140 °F",
)
SYSTEM_VOLUME = Field(
    "system_volume",
    "volume",
    "All the water in the plant",
    "Store, stove, pipes and emitters together.",
    low="5 gal",
    high="25,000 gal",
    uncertainty="5 %",
)
DRAUGHT_LEFT = Field(
    "draught_left",
    "draught",
    "Draft available at the stove",
    "With the fans on, from the chimney-draught worksheet.",
    low="-0.5 in w.c.",
    high="1 in w.c.",
)
FLOOR_AREA = Field(
    "floor_area",
    "area",
    "Floor area with pipe in it",
    "Leave out what cabinets and stairs cover.",
    low="50 ft2",
    high="20,000 ft2",
    uncertainty="5 %",
)

# Every quantity above, as the plan asks for it: a result with one of these keys is an input elsewhere.
BY_KEY: dict[str, list[Field]] = {field.key: [field] for field in list(vars().values()) if isinstance(field, Field)}
FLOOR_COVERING = Field(
    "floor_covering",
    "choice",
    "Floor covering",
    "The thickest covering of any large room sets the water.",
    options=(
        Option("bare", "nothing, or tile", ("tile", "tiles", "stone")),
        Option("thin", "vinyl or linoleum"),
        Option("wood", "wood, about 3/4 in (19 mm)"),
        Option("carpet", "thin carpet without a pad"),
        Option("own", "something else: I know its R-value"),
    ),
)
COVERING_RESISTANCE = Field(
    "covering_resistance",
    "thermal_resistance",
    "R-value of the covering",
    "Of all layers together.",
    low="0 R",
    high="0.85 R",
)
SLAB_CONDUCTIVITY = Field(
    "slab_conductivity",
    "conductivity",
    "Thermal conductivity of the concrete",
    "Screed less, dense concrete more.",
    low="0.4 W/m/K",
    high="2.5 W/m/K",
    typical=Typical("1.4 W/m/K", "slab-conductivity", "1.2 W/m/K", "1.8 W/m/K", "Hardly anyone: the guess will do."),
)
FLOOR_ZONE = Field(
    "floor_zone",
    "choice",
    "Kind of floor zone",
    "Each kind of room has its own highest surface temperature.",
    options=(
        Option("lived-in", "lived in and walked on"),
        Option("bath", "a bathroom"),
        Option("edge", "only an edge strip under windows"),
    ),
    unless_given="lived-in",
)
INSULATION_BELOW = Field(
    "insulation_below",
    "thermal_resistance",
    "R-value below the pipes",
    "Foam and floor below; 2 in of foam is about R-10.",
    low="0.5 R",
    high="80 R",
    typical=Typical("10 R", "floor-custom", "1 R", "15 R", "Whoever poured the slab."),
)
BELOW_FLOOR = Field(
    "below_floor",
    "temperature",
    "Temperature under the floor",
    "The ground in winter, or the cellar's air.",
    low="-20 °F",
    high="80 °F",
    typical=Typical("50 °F", "floor-custom", "40 °F", "60 °F", "A thermometer in the cellar."),
)
TANK_SHAPE = Field(
    "tank_shape",
    "choice",
    "Shape of the tank",
    options=(
        Option("round", "round, standing upright"),
        Option("square", "a box with flat sides"),
    ),
)
TANK_DEPTH = Field(
    "tank_depth",
    "length",
    "Shorter side of the bare tank",
    "Without its insulation.",
    low="8 in",
    high="20 ft",
    us="in",
    si="cm",
)
SLAB_THICKNESS = Field(
    "slab_thickness",
    "length",
    "Thickness of the slab",
    "The concrete that warms with the pipes, from the foam to the top.",
    low="1 in",
    high="24 in",
    us="in",
    si="mm",
    typical=Typical("4 in", "slab-custom", "3.5 in", "6 in", "Whoever poured it, or a drill where it does no harm."),
)
SLAB_DENSITY = Field(
    "slab_density",
    "density",
    "Density of the concrete",
    "Ordinary concrete is about the same everywhere; screed is lighter.",
    low="60 lb/ft3",
    high="200 lb/ft3",
    typical=Typical("2,300 kg/m3", "concrete-properties", "2,000 kg/m3", "2,400 kg/m3", "Hardly anyone: it will do."),
)
SLAB_HEAT_CAPACITY = Field(
    "slab_heat_capacity",
    "specific_heat",
    "Specific heat of the concrete",
    "For each degree.",
    low="0.1 Btu/lb/F",
    high="0.5 Btu/lb/F",
    typical=Typical("0.88 kJ/kg/K", "concrete-properties", "0.8 kJ/kg/K", "1 kJ/kg/K", "Hardly anyone: it will do."),
)
