# ruff: noqa: E501  (one unit a row reads better than a folded table)
"""The one table of units, and a unit found in it by what a person spells.

Every unit stands once in `UNITS`, with the kind of quantity it measures, its factor (and for temperatures its offset) to
the SI unit of that kind, and the spellings that are read. Nothing else in the project converts a unit.
"""

import re
import unicodedata
from collections.abc import Iterable
from functools import cache, lru_cache

from calc.units.kinds import KINDS, DryBasis, System, Unit, UnitError

# Exact by definition.
FOOT = 0.3048
INCH = 0.0254
POUND = 0.45359237
GALLON = 3.785411784e-3
BTU = 1055.05585262  # international table
GRAIN = POUND / 7000
IMPERIAL_GALLON = 4.54609e-3
# Molar masses of calcium carbonate and calcium oxide in kg/mol, from the standard atomic weights.
CACO3 = 0.1000869
CAO = 0.0560774
PSI = POUND * 9.80665 / INCH**2
FAHRENHEIT_DEGREE = 5 / 9
HOUR = 3600.0
DAY = 86400.0
YEAR = 365 * DAY
_R = FOOT**2 * HOUR * FAHRENHEIT_DEGREE / BTU

UNITS: tuple[Unit, ...] = (
    Unit("°F", "temperature", FAHRENHEIT_DEGREE, "F", "degrees Fahrenheit", ("degf", "fahrenheit", "degreesf", "degreesfahrenheit", "f°"), 459.67),
    Unit("°C", "temperature", 1.0, "C", "degrees Celsius", ("degc", "celsius", "centigrade", "degreesc", "degreescelsius", "c°"), 273.15),
    Unit("K", "temperature", 1.0, "K", "kelvin", ("kelvin",)),
    Unit("F°", "temperature_difference", FAHRENHEIT_DEGREE, "F", "Fahrenheit degrees", ("°f", "degf", "fahrenheit", "degreesf", "degreesfahrenheit")),
    Unit("K", "temperature_difference", 1.0, "K", "kelvin", ("°c", "c", "c°", "degc", "celsius", "kelvin", "degreesc", "degreescelsius")),
    Unit("Btu/h", "power", BTU / HOUR, "Btu/h", "Btu an hour", ("btuh", "btu/hr", "btu/hour", "btuanhour")),
    Unit("kBtu/h", "power", 1e3 * BTU / HOUR, "kBtu/h", "thousand Btu an hour", ("kbtuh", "kbtu/hr", "mbh", "kbtu/hour")),
    Unit("MMBtu/h", "power", 1e6 * BTU / HOUR, "MMBtu/h", "million Btu an hour", ("mmbtuh", "mmbtu/hr", "mmbtu/hour")),
    Unit("kW", "power", 1e3, "kW", "kilowatts", ("kilowatt", "kilowatts")),
    Unit("W", "power", 1.0, "W", "watts", ("watt", "watts")),
    Unit("W", "electric_power", 1.0, "W", "watts", ("watt", "watts")),
    Unit("kW", "electric_power", 1e3, "kW", "kilowatts", ("kilowatt", "kilowatts")),
    Unit("Btu", "energy", BTU, "Btu", "Btu", ("btus",)),
    Unit("kBtu", "energy", 1e3 * BTU, "kBtu", "thousand Btu", ("kbtus",)),
    Unit("MMBtu", "energy", 1e6 * BTU, "MMBtu", "million Btu", ("mmbtus", "millionbtu")),
    Unit("therm", "energy", 1e5 * BTU, "therm", "therms", ("therms",)),
    Unit("kWh", "energy", 3.6e6, "kWh", "kilowatt-hours", ("kilowatthour", "kilowatthours")),
    Unit("Wh", "energy", 3600.0, "Wh", "watt-hours", ()),
    Unit("MWh", "energy", 3.6e9, "MWh", "megawatt-hours", ()),
    Unit("MJ", "energy", 1e6, "MJ", "megajoules", ()),
    Unit("GJ", "energy", 1e9, "GJ", "gigajoules", ()),
    Unit("J", "energy", 1.0, "J", "joules", ("joule", "joules")),
    Unit("gal", "volume", GALLON, "gal", "US gallons", ("usgal", "gallon", "gallons", "usgallon", "usgallons", "gals")),
    Unit("L", "volume", 1e-3, "L", "liters", ("liter", "litre", "liters", "litres", "ltr")),
    Unit("m³", "volume", 1.0, "m3", "cubic meters", ("cubicmeter", "cubicmeters", "cubicmetre", "cubicmetres", "cum")),
    Unit("ft³", "volume", FOOT**3, "ft3", "cubic feet", ("cubicfoot", "cubicfeet", "cuft", "cf")),
    Unit("cord", "volume", 128 * FOOT**3, "cord", "cords", ("cords", "fullcord", "fullcords")),
    Unit("imp gal", "volume", IMPERIAL_GALLON, "impgal", "imperial gallons", ("impgals", "imp gallon", "imp gallons", "imperial gallon", "imperial gallons", "imperial gal", "uk gallon", "uk gallons", "uk gal", "gal (imp)", "gal (uk)")),
    Unit("stère", "volume", 1.0, "stere", "stères", ("stère", "stères", "steres", "rm", "ster")),
    Unit("gal/min", "flow", GALLON / 60, "gpm", "US gallons a minute", ("usgpm", "gallons/minute", "gallon/minute", "galpermin")),
    Unit("gal/h", "flow", GALLON / HOUR, "gph", "US gallons an hour", ("gal/hr", "gal/hour", "gallons/hour")),
    Unit("imp gal/min", "flow", IMPERIAL_GALLON / 60, "impgpm", "imperial gallons a minute", ("imperial gallons/minute", "imperial gal/min", "uk gpm", "imperial gpm")),
    Unit("L/min", "flow", 1e-3 / 60, "L/min", "liters a minute", ("lpm", "litres/minute", "liters/minute", "l/minute")),
    Unit("L/s", "flow", 1e-3, "L/s", "liters a second", ("l/sec",)),
    Unit("L/h", "flow", 1e-3 / HOUR, "L/h", "liters an hour", ("l/hr", "litres/hour", "liters/hour")),
    Unit("m³/h", "flow", 1 / HOUR, "m3/h", "cubic meters an hour", ("m3/hr", "m3/hour")),
    Unit("m³/s", "flow", 1.0, "m3/s", "cubic meters a second", ("m3/sec",)),
    Unit("cfm", "air_flow", FOOT**3 / 60, "cfm", "cubic feet a minute", ("ft3/min", "cubicfeet/minute")),
    Unit("m³/h", "air_flow", 1 / HOUR, "m3/h", "cubic meters an hour", ("m3/hr", "m3/hour", "cmh")),
    Unit("m³/s", "air_flow", 1.0, "m3/s", "cubic meters a second", ("m3/sec",)),
    Unit("L/s", "air_flow", 1e-3, "L/s", "liters a second", ("l/sec",)),
    Unit("ft", "length", FOOT, "ft", "feet", ("foot", "feet", "'")),
    Unit("in", "length", INCH, "in", "inches", ("inch", "inches", '"', "''")),
    Unit("m", "length", 1.0, "m", "meters", ("meter", "metre", "meters", "metres")),
    Unit("cm", "length", 0.01, "cm", "centimeters", ("centimeter", "centimetre", "centimeters", "centimetres")),
    Unit("mm", "length", 0.001, "mm", "millimeters", ("millimeter", "millimetre", "millimeters", "millimetres")),
    Unit("yd", "length", 0.9144, "yd", "yards", ("yard", "yards")),
    Unit("km", "length", 1000.0, "km", "kilometers", ()),
    Unit("mi", "length", 5280 * FOOT, "mi", "miles", ("mile", "miles")),
    Unit("ft²", "area", FOOT**2, "ft2", "square feet", ("sqft", "squarefoot", "squarefeet", "sf")),
    Unit("m²", "area", 1.0, "m2", "square meters", ("sqm", "squaremeter", "squaremeters", "squaremetre", "squaremetres")),
    Unit("in²", "area", INCH**2, "in2", "square inches", ("sqin",)),
    Unit("cm²", "area", 1e-4, "cm2", "square centimeters", ("sqcm",)),
    Unit("psi", "pressure_gauge", PSI, "psi", "psi gauge", ("psig", "psigauge", "lb/in2", "pounds", "lbs")),
    Unit("bar", "pressure_gauge", 1e5, "bar", "bar gauge", ("barg", "bars")),
    Unit("mbar", "pressure_gauge", 100.0, "mbar", "millibar gauge", ("millibar", "hpa")),
    Unit("kPa", "pressure_gauge", 1e3, "kPa", "kilopascals gauge", ("kpag",)),
    Unit("Pa", "pressure_gauge", 1.0, "Pa", "pascals gauge", ("pascal",)),
    Unit("psia", "pressure_absolute", PSI, "psia", "psi absolute", ("psi",)),
    Unit("kPa", "pressure_absolute", 1e3, "kPa", "kilopascals absolute", ("kpaa",)),
    Unit("bar", "pressure_absolute", 1e5, "bar", "bar absolute", ("bara",)),
    Unit("Pa", "pressure_absolute", 1.0, "Pa", "pascals absolute", ("pascal",)),
    Unit("inHg", "pressure_absolute", 3386.388640341, "inHg", "inches of mercury", ("in hg",)),
    Unit("psi", "pressure_difference", PSI, "psi", "psi", ("psid", "lb/in2")),
    Unit("kPa", "pressure_difference", 1e3, "kPa", "kilopascals", ()),
    Unit("Pa", "pressure_difference", 1.0, "Pa", "pascals", ("pascal",)),
    Unit("bar", "pressure_difference", 1e5, "bar", "bar", ()),
    Unit("in w.c.", "draught", 249.08891, "inwc", "inches of water", ("inwg", "inh2o", "inchesofwater", "inwater")),
    Unit("Pa", "draught", 1.0, "Pa", "pascals", ("pascal",)),
    Unit("h", "time", HOUR, "h", "hours", ("hr", "hrs", "hour", "hours")),
    Unit("min", "time", 60.0, "min", "minutes", ("minute", "minutes", "mins")),
    Unit("s", "time", 1.0, "s", "seconds", ("sec", "second", "seconds")),
    Unit("days", "time", DAY, "d", "days", ("day", "d")),
    Unit("months", "time", YEAR / 12, "months", "months", ("month",)),
    Unit("years", "time", YEAR, "years", "years", ("year", "yr", "a")),
    Unit("lb", "mass", POUND, "lb", "pounds", ("lbs", "pound", "pounds")),
    Unit("kg", "mass", 1.0, "kg", "kilograms", ("kilogram", "kilograms", "kilo", "kilos")),
    Unit("ton", "mass", 2000 * POUND, "ton", "US tons of 2,000 lb", ("tons", "shortton", "shorttons", "uston")),
    Unit("t", "mass", 1000.0, "t", "tonnes of 1000 kg", ("tonne", "tonnes", "metricton")),
    Unit("g", "mass", 0.001, "g", "grams", ("gram", "grams")),
    Unit("lb/h", "mass_flow", POUND / HOUR, "lb/h", "pounds an hour", ("lb/hr", "pounds/hour")),
    Unit("kg/h", "mass_flow", 1 / HOUR, "kg/h", "kilograms an hour", ("kg/hr",)),
    Unit("kg/s", "mass_flow", 1.0, "kg/s", "kilograms a second", ()),
    Unit("$", "money", 1.0, "USD", "dollars", ("dollar", "dollars", "us$")),
    Unit("€", "money", 1.0, "EUR", "euros", ("euro", "euros")),
    Unit("$/gal", "price_per_volume", 1 / GALLON, "USD/gal", "dollars a gallon", ("usd/gallon", "$/gallon")),
    Unit("$/cord", "price_per_volume", 1 / (128 * FOOT**3), "USD/cord", "dollars a cord", ()),
    Unit("€/L", "price_per_volume", 1e3, "EUR/L", "euros a liter", ("€/liter", "€/litre")),
    Unit("€/m³", "price_per_volume", 1.0, "EUR/m3", "euros a cubic meter", ("€/stere", "€/stère", "€/rm")),
    Unit("$/MMBtu", "price_per_energy", 1e-6 / BTU, "USD/MMBtu", "dollars a million Btu", ("$/millionbtu",)),
    Unit("$/therm", "price_per_energy", 1e-5 / BTU, "USD/therm", "dollars a therm", ()),
    Unit("$/kWh", "price_per_energy", 1 / 3.6e6, "USD/kWh", "dollars a kilowatt-hour", ()),
    Unit("€/kWh", "price_per_energy", 1 / 3.6e6, "EUR/kWh", "euros a kilowatt-hour", ()),
    Unit("€/MWh", "price_per_energy", 1 / 3.6e9, "EUR/MWh", "euros a megawatt-hour", ()),
    Unit("€/J", "price_per_energy", 1.0, "EUR/J", "euros a joule", ()),
    Unit("$/ton", "price_per_mass", 1 / (2000 * POUND), "USD/ton", "dollars a ton", ()),
    Unit("$/lb", "price_per_mass", 1 / POUND, "USD/lb", "dollars a pound", ()),
    Unit("€/t", "price_per_mass", 1e-3, "EUR/t", "euros a tonne", ("€/tonne",)),
    Unit("€/kg", "price_per_mass", 1.0, "EUR/kg", "euros a kilogram", ()),
    Unit("$/h", "price_per_time", 1 / HOUR, "USD/h", "dollars an hour", ("$/hr", "$/hour")),
    Unit("€/h", "price_per_time", 1 / HOUR, "EUR/h", "euros an hour", ("€/hour",)),
    Unit("€/s", "price_per_time", 1.0, "EUR/s", "euros a second", ()),
    Unit("%", "fraction", 0.01, "%", "percent", ("percent", "pct", "percents", "per cent")),
    DryBasis("% dry basis", "fraction", 0.01, "%db", "percent, dry basis", ("% db", "percent db", "% dry", "percent dry basis")),
    Unit("", "fraction", 1.0, "", "", ()),
    # After the plain one, which is the one that sums stand in.
    Unit("COP", "fraction", 1.0, "COP", "coefficient of performance", ("coefficient of performance",)),
    Unit("°F·day", "degree_days", FAHRENHEIT_DEGREE, "Fday", "degree-days, Fahrenheit", ("°fdays", "fdays", "hdd", "degf-day", "°f-day", "f-day", "degreedaysf", "°fd", "fd", "hdd65", "°f-days", "f-days", "degf-days")),
    Unit("K·day", "degree_days", 1.0, "Kday", "kelvin-days", ("kdays", "°cday", "°cdays", "cday", "cdays", "kd", "k-day", "c-day", "°c-day", "k-days", "c-days", "°c-days")),
    Unit("", "count", 1.0, "", "", ("times", "x")),
    Unit("", "exponent", 1.0, "", "", ()),
    Unit("", "factor", 1.0, "", "", ("x", "times", "cop")),
    Unit("a day", "rate", 1.0, "/day", "a day", ("/d", "aday", "daily")),
    Unit("an hour", "rate", 24.0, "/h", "an hour", ("/hr", "anhour")),
    Unit("a week", "rate", 1 / 7, "/week", "a week", ("aweek",)),
    Unit("/h", "settling_rate", 1 / HOUR, "/h", "an hour", ("an hour",)),
    Unit("/s", "settling_rate", 1.0, "/s", "a second", ()),
    Unit("/h", "air_changes", 1 / HOUR, "/h", "an hour", ("ach", "/hr", "/hour", "anhour", "1/h", "1/hr", "1/hour", "h-1", "hr-1", "ac/h", "air change/h", "air changes/h", "air change/hour", "air changes/hour", "air changes an hour")),
    Unit("/s", "air_changes", 1.0, "/s", "a second", ()),
    Unit("Btu/(h·ft)", "heat_rate_per_length", BTU / HOUR / FOOT, "Btu/h/ft", "Btu an hour from each foot", ("btuh/ft", "btu/hr/ft", "btu/hft", "btu/hrft", "btu/h-ft")),
    Unit("W/m", "heat_rate_per_length", 1.0, "W/m", "watts from each meter", ()),
    Unit("Btu/(h·ft²)", "heat_flux", BTU / HOUR / FOOT**2, "Btu/h/ft2", "Btu an hour from each square foot", ("btuh/ft2", "btu/hft2", "btu/hr/ft2", "btu/hrft2", "btu/hsqft", "btuh/sqft")),
    Unit("W/m²", "heat_flux", 1.0, "W/m2", "watts from each square meter", ()),
    Unit("Btu/(h·°F)", "conductance", BTU / HOUR / FAHRENHEIT_DEGREE, "Btu/h/F", "Btu an hour for each Fahrenheit degree", ("btuh/f", "btu/hf", "btu/h°f", "btu/hr°f", "btu/h/°f", "btu/hrf", "btu/hr/f", "btuh/°f")),
    Unit("W/K", "conductance", 1.0, "W/K", "watts for each kelvin", ("w/°c", "w/c")),
    Unit("Btu/(h·ft²·°F)", "conductance_per_area", BTU / HOUR / FOOT**2 / FAHRENHEIT_DEGREE, "Btu/h/ft2/F", "Btu an hour for each square foot and Fahrenheit degree", ("btu/hft2f", "btu/hft2°f", "btuh/ft2f", "btu/hrft2f", "btu/hrft2°f")),
    Unit("W/(m²·K)", "conductance_per_area", 1.0, "W/m2/K", "watts for each square meter and kelvin", ("w/m2k", "w/m²k")),
    Unit("Btu/(h·ft·°F)", "conductance_per_length", BTU / HOUR / FOOT / FAHRENHEIT_DEGREE, "Btu/h/ft/F", "Btu an hour for each foot and Fahrenheit degree", ("btu/hftf", "btu/hft°f")),
    Unit("W/(m·K)", "conductance_per_length", 1.0, "W/m/K", "watts for each meter and kelvin", ("w/mk",)),
    Unit("ft·°F·h/Btu", "resistance_per_length", FOOT * HOUR * FAHRENHEIT_DEGREE / BTU, "ftFh/Btu", "resistance of each foot, US", ("ft°fh/btu", "fthf/btu", "fth°f/btu")),
    Unit("m·K/W", "resistance_per_length", 1.0, "mK/W", "resistance of each meter, SI", ()),
    Unit("ft²·°F·h/Btu", "thermal_resistance", _R, "R", "R-value, US", ("ft2fh/btu", "ft2°fh/btu", "r-value", "rvalue", "hft2f/btu", "hft2°f/btu", "ft2hf/btu", "ft2h°f/btu")),
    Unit("m²·K/W", "thermal_resistance", 1.0, "m2K/W", "R-value, SI", ("rsi", "m2k/w", "m2°c/w")),
    Unit("Btu·in/(h·ft²·°F)", "conductivity", BTU / HOUR * INCH / FOOT**2 / FAHRENHEIT_DEGREE, "Btuin/h/ft2/F", "Btu-inch an hour for each square foot and degree", ("btuin/hft2f", "btuin/hft2°f")),
    Unit("W/(m·K)", "conductivity", 1.0, "W/m/K", "watts for each meter and kelvin", ("w/mk",)),
    Unit("lb/ft³", "density", POUND / FOOT**3, "lb/ft3", "pounds a cubic foot", ("lb/cuft", "pcf")),
    Unit("lb/gal", "density", POUND / GALLON, "lb/gal", "pounds a gallon", ()),
    Unit("kg/m³", "density", 1.0, "kg/m3", "kilograms a cubic meter", ()),
    Unit("kg/L", "density", 1e3, "kg/L", "kilograms a liter", ()),
    Unit("ft/s", "velocity", FOOT, "ft/s", "feet a second", ("fps", "ft/sec")),
    Unit("m/s", "velocity", 1.0, "m/s", "meters a second", ("m/sec",)),
    Unit("Btu/°F", "heat_capacity", BTU / FAHRENHEIT_DEGREE, "Btu/F", "Btu for each Fahrenheit degree", ("btu/f",)),
    Unit("kWh/K", "heat_capacity", 3.6e6, "kWh/K", "kilowatt-hours for each kelvin", ("kwh/°c", "kwh/c")),
    Unit("J/K", "heat_capacity", 1.0, "J/K", "joules for each kelvin", ()),
    Unit("Btu/(lb·°F)", "specific_heat", BTU / POUND / FAHRENHEIT_DEGREE, "Btu/lb/F", "Btu for each pound and Fahrenheit degree", ("btu/lbf", "btu/lb°f")),
    Unit("kJ/(kg·K)", "specific_heat", 1e3, "kJ/kg/K", "kilojoules for each kilogram and kelvin", ("kj/kgk",)),
    Unit("J/(kg·K)", "specific_heat", 1.0, "J/kg/K", "joules for each kilogram and kelvin", ("j/kgk",)),
    Unit("Btu/(gal·°F)", "volume_heat_capacity", BTU / GALLON / FAHRENHEIT_DEGREE, "Btu/gal/F", "Btu for each gallon and Fahrenheit degree", ("btu/galf", "btu/gal°f")),
    Unit("Btu/(h·gpm·°F)", "volume_heat_capacity", BTU / HOUR / (GALLON / 60) / FAHRENHEIT_DEGREE, "Btu/h/gpm/F", "Btu an hour for each gallon a minute and Fahrenheit degree", ("btu/hgpmf", "btu/hgpm°f")),
    Unit("Wh/(L·K)", "volume_heat_capacity", 3.6e6, "Wh/L/K", "watt-hours for each liter and kelvin", ("wh/lk",)),
    Unit("J/(m³·K)", "volume_heat_capacity", 1.0, "J/m3/K", "joules for each cubic meter and kelvin", ("j/m3k",)),
    Unit("Btu/lb", "heat_per_mass", BTU / POUND, "Btu/lb", "Btu a pound", ()),
    Unit("MMBtu/ton", "heat_per_mass", 1e6 * BTU / (2000 * POUND), "MMBtu/ton", "million Btu a ton", ()),
    Unit("kWh/kg", "heat_per_mass", 3.6e6, "kWh/kg", "kilowatt-hours a kilogram", ()),
    Unit("MJ/kg", "heat_per_mass", 1e6, "MJ/kg", "megajoules a kilogram", ()),
    Unit("J/kg", "heat_per_mass", 1.0, "J/kg", "joules a kilogram", ()),
    Unit("Btu/gal", "heat_per_volume", BTU / GALLON, "Btu/gal", "Btu a gallon", ()),
    Unit("kBtu/gal", "heat_per_volume", 1e3 * BTU / GALLON, "kBtu/gal", "thousand Btu a gallon", ()),
    Unit("MMBtu/cord", "heat_per_volume", 1e6 * BTU / (128 * FOOT**3), "MMBtu/cord", "million Btu a cord", ()),
    Unit("Btu/cord", "heat_per_volume", BTU / (128 * FOOT**3), "Btu/cord", "Btu a cord", ()),
    Unit("kWh/L", "heat_per_volume", 3.6e9, "kWh/L", "kilowatt-hours a liter", ()),
    Unit("kWh/m³", "heat_per_volume", 3.6e6, "kWh/m3", "kilowatt-hours a cubic meter", ("kwh/stere", "kwh/rm")),
    Unit("Btu/ft³", "heat_per_volume", BTU / FOOT**3, "Btu/ft3", "Btu a cubic foot", ()),
    Unit("J/m³", "heat_per_volume", 1.0, "J/m3", "joules a cubic meter", ()),
    Unit("gal/(kBtu/h)", "volume_per_power", GALLON * HOUR / (1e3 * BTU), "gal/kBtuh", "gallons for each thousand Btu an hour", ("gal/kbtu/h",)),
    Unit("L/kW", "volume_per_power", 1e-6, "L/kW", "liters a kilowatt", ()),
    Unit("m³/W", "volume_per_power", 1.0, "m3/W", "cubic meters a watt", ()),
    Unit("gal/(1000 ft²)", "volume_per_area", GALLON / (1e3 * FOOT**2), "gal/1000ft2", "gallons for each thousand square feet", ()),
    Unit("L/m²", "volume_per_area", 1e-3, "L/m2", "liters a square meter", ()),
    Unit("m³/m²", "volume_per_area", 1.0, "m3/m2", "cubic meters a square meter", ()),
    Unit("lb/ft²", "load_per_area", POUND * 9.80665 / FOOT**2, "psf", "pounds a square foot", ("lb/ft2", "lb/sqft", "lbs/sqft")),
    Unit("kPa", "load_per_area", 1e3, "kPa", "kilonewtons a square meter", ("kn/m2",)),
    Unit("Pa", "load_per_area", 1.0, "Pa", "pascals", ()),
    Unit("cP", "viscosity", 1e-3, "cP", "centipoise", ()),
    Unit("mPa·s", "viscosity", 1e-3, "mPas", "millipascal-seconds", ()),
    Unit("Pa·s", "viscosity", 1.0, "Pas", "pascal-seconds", ()),
    Unit("ft³/lb", "specific_volume", FOOT**3 / POUND, "ft3/lb", "cubic feet a pound", ()),
    Unit("m³/kg", "specific_volume", 1.0, "m3/kg", "cubic meters a kilogram", ()),
    Unit("psi/100 ft", "pressure_per_length", PSI / (100 * FOOT), "psi/100ft", "psi in each hundred feet", ()),
    Unit("Pa/m", "pressure_per_length", 1.0, "Pa/m", "pascals a meter", ()),
    Unit("1/°F", "expansion_rate", 1 / FAHRENHEIT_DEGREE, "1/F", "for each Fahrenheit degree", ("/°f", "/f")),
    Unit("1/K", "expansion_rate", 1.0, "1/K", "for each kelvin", ("/k", "/°c", "/c")),
    Unit("F°/h", "temperature_rate", FAHRENHEIT_DEGREE / HOUR, "F/h", "Fahrenheit degrees an hour", ("°f/h", "f°/hr")),
    Unit("K/h", "temperature_rate", 1 / HOUR, "K/h", "kelvin an hour", ("°c/h", "k/hr")),
    Unit("K/s", "temperature_rate", 1.0, "K/s", "kelvin a second", ()),
    Unit("Btu/(ft²·°F)", "area_heat_capacity", BTU / FOOT**2 / FAHRENHEIT_DEGREE, "Btu/ft2/F", "Btu for each square foot and Fahrenheit degree", ("btu/ft2f", "btu/ft2°f")),
    Unit("Wh/(m²·K)", "area_heat_capacity", 3600.0, "Wh/m2/K", "watt-hours for each square meter and kelvin", ("wh/m2k",)),
    Unit("J/(m²·K)", "area_heat_capacity", 1.0, "J/m2/K", "joules for each square meter and kelvin", ("j/m2k",)),
    Unit("kWh/m²", "radiation", 3.6e6, "kWh/m2", "kilowatt-hours on each square meter", ("kwh/sqm",)),
    Unit("Btu/ft²", "radiation", BTU / FOOT**2, "Btu/ft2", "Btu on each square foot", ("btu/sqft",)),
    Unit("kBtu/ft²", "radiation", 1e3 * BTU / FOOT**2, "kBtu/ft2", "thousand Btu on each square foot", ("kbtu/sqft",)),
    Unit("MJ/m²", "radiation", 1e6, "MJ/m2", "megajoules on each square meter", ("mj/sqm",)),
    Unit("J/m²", "radiation", 1.0, "J/m2", "joules on each square meter", ()),
    Unit("W/(m²·K²)", "loss_growth", 1.0, "W/m2/K2", "watts for each square meter and kelvin squared", ("w/m2k2", "w/(m2k2)")),
    Unit("Btu/(h·ft²·°F²)", "loss_growth", BTU / HOUR / FOOT**2 / FAHRENHEIT_DEGREE**2, "Btu/h/ft2/F2", "Btu an hour for each square foot and Fahrenheit degree squared", ("btu/hft2f2", "btuh/ft2f2")),
    # Hardness as the calcium carbonate that would make it; German degrees count calcium oxide, and moles either.
    Unit("mg/L", "hardness", 1e-3, "mg/L", "milligrams a liter, as calcium carbonate", ("ppm", "mg/l caco3", "ppm caco3", "mg/l as caco3", "ppm as caco3", "g/m3")),
    Unit("gpg", "hardness", GRAIN / GALLON, "gpg", "grains a US gallon", ("grains", "grain", "grains/gallon", "grains/gal", "gr/gal", "grain/gallon")),
    Unit("°dH", "hardness", 0.01 * CACO3 / CAO, "dH", "German degrees", ("°d", "dgh", "°dgh", "degrees german", "german degrees")),
    Unit("°f", "hardness", 0.01, "fH", "French degrees", ("°fh", "french degrees", "degrees french")),
    Unit("°e", "hardness", GRAIN / IMPERIAL_GALLON, "eH", "English degrees (Clark)", ("°clark", "clark", "english degrees", "°eh")),
    Unit("mmol/L", "hardness", CACO3, "mmol/L", "millimoles a liter", ("mol/m3",)),
    Unit("kg/m³", "hardness", 1.0, "kg/m3", "kilograms a cubic meter", ("g/l",)),
    Unit("mg/L", "concentration", 1e-3, "mg/L", "milligrams a liter", ("ppm", "g/m3")),
    Unit("kg/m³", "concentration", 1.0, "kg/m3", "kilograms a cubic meter", ("g/l",)),
    Unit("gal/100 gal", "dose", 0.01, "gal/100gal", "gallons in each hundred gallons", ("gallons/100gallons", "gallon/100gallons")),
    Unit("L/100 L", "dose", 0.01, "L/100L", "liters in each hundred liters", ("liters/100liters", "litres/100litres", "l/hl")),
    Unit("%", "dose", 0.01, "%", "percent", ("percent", "pct", "percents", "per cent")),
    Unit("mL/L", "dose", 1e-3, "mL/L", "milliliters a liter", ("l/m3",)),
    Unit("oz/gal", "dose", 1 / 128, "oz/gal", "fluid ounces a gallon", ("floz/gal", "ounces/gallon", "fl oz/gallon")),
    Unit("L/L", "dose", 1.0, "L/L", "liters a liter", ("gal/gal",)),
    Unit("", "acidity", 1.0, "", "", ("ph",)),
    Unit("h/MMBtu", "time_per_heat", HOUR / (1e6 * BTU), "h/MMBtu", "hours for each million Btu", ()),
    Unit("h/kWh", "time_per_heat", HOUR / 3.6e6, "h/kWh", "hours for each kilowatt-hour", ()),
    Unit("s/J", "time_per_heat", 1.0, "s/J", "seconds for each joule", ()),
)


def _spelled(text: str) -> str:
    """The form in which spellings are compared: lower case, no spaces, brackets, dots or exponent marks."""
    text = text.replace("\N{MASCULINE ORDINAL INDICATOR}", "°").replace("\N{RING ABOVE}", "°")
    text = unicodedata.normalize("NFKC", text).casefold()
    text = re.sub(r"\bper\b", "/", text.replace("\N{MINUS SIGN}", "-"))
    text = re.sub(r"\bmillion\s*btus?\b", "mmbtu", text)
    text = re.sub(r"\bthousand\s*btus?\b", "kbtu", text)
    text = re.sub(r"deg(?:ree)?s?\.?\s*(?=[cfk]\b)", "°", text)
    return re.sub(r"[\s.()^*·⋅×]", "", text)


def by_spelling(units: Iterable[Unit]) -> dict[str, Unit]:
    """Every spelling of these units of one kind; ValueError where two of them share one."""
    table: dict[str, Unit] = {}
    for unit in units:
        for spelling in (unit.text, unit.ascii, *unit.spellings):
            if table.setdefault(_spelled(spelling), unit) is not unit:
                raise ValueError(f"two units of {unit.kind} are spelled {spelling!r}")
        if unit.kind == "temperature":
            table.setdefault(_spelled("°" + unit.ascii), unit)
    return table


@cache
def _spellings_of(kind: str) -> dict[str, Unit]:
    return by_spelling(units_of(kind))


@cache
def units_of(kind: str) -> tuple[Unit, ...]:
    """Every unit of a kind, in the order of the table."""
    return tuple(unit for unit in UNITS if unit.kind == kind)


@lru_cache(maxsize=4096)
def unit_named(text: str, kind: str) -> Unit:
    """The unit of `kind` that `text` spells; UnitError names those that work."""
    unit = _spellings_of(kind).get(_spelled(text))
    if unit is None:
        if kind == "temperature" and _spelled(text) in ("°", "deg", "degs", "degree", "degrees"):
            raise UnitError("needs its scale: type °F or °C after the number")
        raise UnitError(f"has a unit that does not fit here, “{text.strip()[:20]}”: use {_working_units(kind)}")
    return unit


def _working_units(kind: str) -> str:
    names = [unit.text for unit in units_of(kind) if unit.text and not isinstance(unit, DryBasis)][:6]
    if not names:
        return "a plain number without a unit"
    return names[0] if len(names) == 1 else ", ".join(names[:-1]) + " or " + names[-1]


@cache
def shown_unit(kind: str, system: System) -> Unit:
    """The unit that a reader of `system` is shown for `kind` unless a field or result asks for another."""
    return unit_named(KINDS[kind].us_shown if system == "us" else KINDS[kind].si_shown, kind)
