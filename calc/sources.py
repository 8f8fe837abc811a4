"""Where numbers and equations come from: a key for each source, and how it is known.

`known` is one of: "read" (the text was read), "second-hand" (quoted or coded by others), "computed" (worked out with an
independent library), "memory" (standard, not looked up again), "common practice" (a custom of the trade without a
published source), "definition".
"""

from dataclasses import dataclass

KNOWN = ("read", "second-hand", "computed", "memory", "common practice", "definition")


@dataclass(frozen=True)
class Source:
    """A source: who published it, what it is called, when, where in it to look, and how it is known."""

    body: str
    title: str
    year: str
    place: str
    known: str
    short: str = ""

    def __post_init__(self) -> None:
        if self.known not in KNOWN:
            raise ValueError(f"{self.title}: known must be one of {', '.join(KNOWN)}")

    @property
    def brief(self) -> str:
        """A few words for a table: the short name if there is one, else the body or title with its year."""
        return self.short or ", ".join(part for part in (self.body or self.title, self.year) if part)


SOURCES: dict[str, Source] = {
    "first-law": Source("", "Energy balance: heat given up is amount × heat capacity × temperature fall", "", "", "definition", "Energy balance"),
    "definition": Source("", "By definition", "", "", "definition"),
    "common-practice": Source("", "Common practice of the trade, no published source found", "", "", "common practice", "Common practice"),
    # Water and the standard atmosphere.
    "iapws-if97": Source(
        "International Association for the Properties of Water and Steam",
        "Revised Release on the IAPWS Industrial Formulation 1997 for the Thermodynamic Properties of Water and Steam, R7-97",
        "2012",
        "region 1, equations 7 to 9 and table 2; region 4, equations 30 and 31 and table 34",
        "second-hand",
    ),
    "iapws-sr6": Source(
        "International Association for the Properties of Water and Steam",
        "Revised Supplementary Release on Properties of Liquid Water at 0.1 MPa, SR6-08",
        "2011",
        "equations for viscosity and thermal conductivity, four terms each",
        "second-hand",
    ),
    "standard-atmosphere": Source(
        "NOAA, NASA and US Air Force",
        "U.S. Standard Atmosphere, 1976",
        "1976",
        "lowest layer, 0 to 11 km",
        "memory",
    ),
    # Storage.
    "bimschv-5-4": Source(
        "German Federal Government",
        "Erste Verordnung zur Durchführung des Bundes-Immissionsschutzgesetzes (1. BImSchV), BGBl. I p. 38",
        "2010",
        "section 5(4): 12 L for each liter of fuel chamber, at least 55 L/kW; automatic 20 L/kW; single-room heaters excluded",
        "read",
        "German law, 1. BImSchV, 2010",
    ),
    "eu-2015-1189": Source(
        "European Commission",
        "Regulation (EU) 2015/1189, ecodesign requirements for solid fuel boilers, OJ L 193 p. 100",
        "2015",
        "Annex II, notes to the table: recommended hot-water storage",
        "read",
        "Regulation (EU) 2015/1189",
    ),
    "en-303-5": Source(
        "CEN",
        "EN 303-5, Heating boilers for solid fuels, as quoted with a worked example in an appliance handbook",
        "2012",
        "formula for the hot-water storage",
        "second-hand",
    ),
    "tanks-in-series": Source(
        "",
        "Stirred tanks in series: what is washed out follows the Poisson distribution (chemical reaction engineering)",
        "",
        "",
        "memory",
    ),
    "cylinder-conduction": Source(
        "Incropera, DeWitt, Bergman and Lavine",
        "Fundamentals of Heat and Mass Transfer",
        "2007",
        "chapter 3, one-dimensional conduction through cylinder and plane wall with a surface film",
        "memory",
    ),
    "ashrae-pools": Source(
        "ASHRAE",
        "Handbook, HVAC Applications: evaporation from pools, w = A (pw - pa)(0.089 + 0.0782 V) / Y",
        "2007",
        "chapter Places of assembly, natatoriums",
        "memory",
    ),
    # House.
    "degree-day-method": Source(
        "ASHRAE",
        "Handbook, Fundamentals: energy estimating, degree-day method",
        "2009",
        "heat of a season = conductance × degree-days × 24 h",
        "memory",
    ),
    "normal-degree-days": Source(
        "Schoenau and Kehrig",
        "Method for calculating degree-days to any base temperature, Energy and Buildings 14",
        "1990",
        "degree-days from the mean and the standard deviation of daily temperatures",
        "second-hand",
    ),
    "house-classes": Source(
        "",
        "Heat loss of a house of 1,800 ft² at the insulation and leakage levels of the US Department of Energy's stock model",
        "2020",
        "levels read in part; U-values from memory",
        "memory",
    ),
    # Fuels, wood, exchangers, the room and the flue.
    "eia-heat-contents": Source("US Energy Information Administration", "Energy units and calculators explained; FAQ 987, heat contents of fuels", "2012 to 2023", "Approximate heat contents, higher heating value", "read"),
    "cfr-98-c1": Source("US Environmental Protection Agency", "40 CFR 98, Mandatory Greenhouse Gas Reporting", "2016", "Subpart C, Table C-1, default high heat values", "read"),
    "fpl-fuel-value": Source("USDA Forest Service, Forest Products Laboratory", "Fuel Value Calculator", "2004", "Net heat contents against gross: the efficiencies they imply", "read"),
    "pellet-heat-content": Source("", "Gross heat of wood pellets, 16 to 17 million Btu a US ton", "", "Beside the Forest Products Laboratory's net 13.6 million", "memory"),
    "log-mean": Source("Incropera, DeWitt, Bergman and Lavine", "Fundamentals of Heat and Mass Transfer", "2007", "Chapter 11: log mean temperature difference of a counterflow exchanger", "memory"),
    "counterflow": Source("Incropera, DeWitt, Bergman and Lavine", "Fundamentals of Heat and Mass Transfer", "2007", "Chapter 11, table 11.3: effectiveness of counterflow, and of any exchanger with one side at one temperature", "memory"),
    "plate-film": Source("Kumar", "The plate heat exchanger: construction and design, as coded in the library ht", "1984", "Nusselt number as Reynolds number to the power 0.663, chevron angle 30° and more than 10", "second-hand"),
    "thermosiphon": Source("", "Natural circulation: lift from the difference in density equals the friction of the flow", "", "", "definition"),
    "scald-times": Source("US Consumer Product Safety Commission; a children's hospital; a trade association", "Printed times to a full-thickness burn of adult skin, which differ", "", "120 °F 5 to 10 min, 130 °F 30 s, 140 °F 3 to 6 s, 150 °F 0.5 to 2 s", "second-hand"),
    "wood-heating-value": Source("USDA Forest Service, Forest Products Laboratory", "How to estimate recoverable heat energy in wood or bark fuels, FPL-GTR-29", "1979", "About 8,600 Btu/lb oven dry, 9,000 for resinous conifers; printed values run from 8,000 to 9,000", "memory"),
    "cord-solid-share": Source("State extension services of the United States", "Firewood measure: 70 to 90 cubic feet of solid wood in a cord of 128", "", "85 taken; 1 m³ stacked holds about 0.7 m³ in Europe", "second-hand"),
    "wood-composition": Source("Kubler, Wood and Fiber Science", "Indicators and significance of air supply in the combustion of wood for heat", "1991", "Dry wood about 50 % carbon, 6 % hydrogen, 43 to 44 % oxygen; 6 g of air burns 1 g", "second-hand"),
    "steam-latent-heat": Source("IAPWS", "Release on the Industrial Formulation 1997 (IF97)", "2012", "Heat of evaporation at 25 °C, 2442 kJ/kg or 1,050 Btu/lb", "computed"),
    "usfs-fia-species": Source("USDA Forest Service, Forest Inventory and Analysis", "Reference table of species (REF_SPECIES), public domain", "", "Basic specific gravity and green moisture", "read"),
    "doorway-flow": Source("Lawrence Berkeley National Laboratory", "Open Modelica Buildings library, model DoorOpen: buoyant flow through an open door, after Brown and Solvason (1962)", "2020", "One third of width × height × √(g·height·ΔT/T), discharge coefficient 0.65; 0.78 in another airflow program, 0.4 to 0.8 measured", "second-hand"),
    "iso-13790": Source("ISO", "ISO 13790, Energy performance of buildings: calculation of energy use for space heating and cooling, as coded in the open Modelica Buildings library", "2008", "Table 12, heat capacity and mass area by class; clauses 7.2.2 and 12.2.2, 3.45 and 9.1 W/(m²·K), 4.5 × floor area", "second-hand"),
    "iso-52016": Source("ISO", "ISO 52016-1, Energy needs for heating and cooling", "2017", "Air and furniture: 10 kJ/(m²·K) of floor", "memory"),
    "two-masses": Source("", "Two heat capacities with one link: the closed solution of two linear differential equations", "", "", "definition"),
    "combustion": Source("", "Complete burning of carbon and hydrogen, by molar masses", "", "", "definition"),
    "dry-air": Source("ASHRAE", "Handbook, Fundamentals, chapter Psychrometrics", "2009", "Composition of dry air, 20.95 % oxygen by volume, 23.14 % by weight; 0.62198 for water over air", "memory"),
    "flue-gas-heat": Source("", "Heat capacity of the flue gas of a wood fire near 200 °C, from its components", "", "1.07 to 1.12 kJ/(kg·K) at air ratios of 1.5 to 3", "computed"),
    "en-13384": Source("CEN", "EN 13384-1, Chimneys: thermal and fluid dynamic calculation methods, chimneys serving one heating appliance", "2019", "Draught, flow resistance, cooling number and mean temperature", "memory"),
    "house-leakage": Source("", "Power law of leaks, exponent 0.65 where none was measured, as used with blower doors", "", "Flow at a pressure over flow at 50 Pa is their ratio to that power", "common practice"),
    "four-pascal": Source("Chimney sweeps of Germany", "Test of combustion air supply with fans running", "", "At most 4 Pa below outdoors for a stove that takes its air from the room, 8 Pa for one that does not", "read"),
    "five-pascal": Source("Canadian Standards Association and Canadian General Standards Board", "CSA F326 and CAN/CGSB-51.71, limits of depressurization", "1995", "5 Pa where a wood stove stands, as quoted by a building office", "second-hand"),
    "ashrae-chimney": Source("ASHRAE", "Handbook, HVAC Systems and Equipment, chapter Chimney, vent and fireplace systems", "2008", "Resistance of entry, elbows and caps in velocity heads", "memory"),
    "air-ratio-guess": Source("", "Ordinary air ratios of wood fires, 1.5 to 3", "", "Sweeps' measurements; a lazy fire with the door ajar has more", "memory"),
    "bimschv-3-3": Source("German Federal Government", "Erste Verordnung zur Durchführung des Bundes-Immissionsschutzgesetzes (1. BImSchV), BGBl. I p. 38", "2010", "section 3(3): log wood with at most 25 % of its dry weight in water, which is 20 % wet basis", "read"),
    "fuel-price-guess": Source("", "Round prices of fuels in the United States about 2023", "2023", "They differ by half from place to place and from year to year", "memory"),
    "inner-walls": Source("", "Inner walls of studs and drywall, about 0.3 Btu/(h·ft²·°F)", "", "Two films, two boards and an air space", "memory"),
    "room-limit-guess": Source("", "Ordinary wish: no room much over 78 °F in winter", "", "", "common practice"),
    "heat-strain": Source("World Health Organization", "Heat and health: indoor heat strains the old, the very young and the ill", "2018", "Rooms kept below about 32 °C (90 °F) by day", "memory"),
    "test-draught": Source("Biomass Conversion and Biorefinery", "Characterization of single room heaters: type tests at a fixed draught", "2019", "Introduction: typically 12 Pa; makers ask for 10 to 20 Pa", "read"),
    "fan-guess": Source("", "Ordinary kitchen hoods, 100 to 600 cfm", "", "The label inside the hood", "memory"),
    "tightness-guess": Source("US Department of Energy", "Inputs of the national stock model of houses", "2022", "Air changes at 50 Pa: 3 in new houses, 6 to 8 since 1980, 10 to 15 in old ones", "read"),
    "flue-friction": Source("", "Friction factor of a sooty flue, 1 mm rough in 150 mm, at Reynolds numbers near 10,000", "", "Colebrook's equation", "computed"),
    "flue-walls": Source("CEN", "EN 13384-1 and chimney product classes", "2019", "Thermal resistance 0.4 m²·K/W of insulated flues, about 0.12 of lined masonry", "memory"),
    "flue-class": Source("CEN and UL", "Temperature classes of flues: T400 in Europe, 1,000 °F for all-fuel chimneys in America", "", "About 750 °F is the class most stoves are tested with", "memory"),
    "tar-custom": Source("", "Practice of sweeps: gas at the top of the flue above 250 °F, and well above its dew point", "", "", "common practice"),
    "return-custom": Source("", "Practice with wood-fired jackets: return at 55 °C (131 °F) or more, 140 °F where the maker asks, and above the dew point", "", "", "common practice"),
    "tap-custom": Source("", "Ordinary figures for taps: showers of 1.5 to 2.5 gal/min and eight minutes, tanks of 40 to 80 gal that give up 70 % hot", "", "", "common practice"),
    "exchanger-guess": Source("", "Ordinary small exchangers for tap water: plates of 150,000 Btu/h, coils of 60,000 Btu/h, sidearms of 100 Btu/(h·°F)", "", "Take the maker's own line", "memory"),
    "legionella": Source("UK Health and Safety Executive; US Occupational Safety and Health Administration", "Legionnaires' disease: control in hot and cold water systems", "2014", "Store at 60 °C (140 °F) or more; growth between 20 and 45 °C (68 to 113 °F)", "read"),
    "double-wall": Source("Plumbing codes of North America", "Protection of drinking water: double-wall exchangers with a gap open to air", "2021", "Uniform and International Plumbing Code, heat exchangers", "memory"),
    "efficiency-ranges": Source("", "Ordinary ranges of seasonal efficiency on higher heating value", "", "Ask for the appliance's own figure", "memory"),
    # Emitters, floors, mixing and air.
    "en-442-2": Source(
        "CEN",
        "EN 442-2, Radiators and convectors: test methods and rating",
        "2014",
        "characteristic equation; arithmetic and logarithmic excess temperature; standard rating at 50 K",
        "memory",
    ),
    "ashrae-heating-effect": Source(
        "ASHRAE",
        "Handbook, HVAC Systems and Equipment, as quoted in the trade press",
        "2016",
        "page 36.3: ratings of finned tube may include 15 % above the test",
        "second-hand",
    ),
    "en-1264-2": Source(
        "CEN",
        "EN 1264-2, Water based surface embedded systems: thermal output of floor heating",
        "2008",
        "basic curve; type A with tables A.1 to A.3; downward heat; as coded in the open Modelica library AixLib",
        "second-hand",
    ),
    "iso-6946": Source(
        "ISO",
        "ISO 6946, Building components: thermal resistance and thermal transmittance",
        "2017",
        "surface resistances of still and of moving air",
        "memory",
    ),
    "ashrae-air": Source(
        "ASHRAE",
        "Handbook, Fundamentals: psychrometrics",
        "2017",
        "gas constant and specific heat of dry air; standard air of 0.075 lb/ft³",
        "memory",
    ),
    "crossflow-series": Source(
        "",
        "Effectiveness of a crossflow exchanger with both streams unmixed, exact double series",
        "",
        "as in heat-transfer handbooks; reproduced by the ht library and by a finite-difference march",
        "computed",
    ),
    "coil-scaling": Source(
        "Lawrence Berkeley National Laboratory",
        "Simulation model finned water-air coil without condensation, LBNL-42355",
        "1999",
        "exponents of mass flow, 0.8 for air and 0.85 for water; as coded in the open Modelica Buildings library",
        "second-hand",
    ),
    "duct-loss": Source(
        "",
        "A stream that loses heat in proportion to its excess cools exponentially along its way",
        "",
        "energy balance of a short piece of duct",
        "definition",
    ),
    "en-1264-limits": Source(
        "CEN",
        "EN 1264-2, highest surface temperatures, as quoted by others",
        "2008",
        "29 °C where people stay, 9 K over the room in baths (33 °C at 24 °C), 35 °C in edge zones",
        "second-hand",
    ),
    "en-1264-4": Source(
        "CEN",
        "EN 1264-4, Water based surface embedded systems: installation",
        "2009",
        "55 °C at most in cement and anhydrite screeds",
        "memory",
    ),
    "floor-coverings": Source(
        "",
        "Ordinary floor coverings, thickness over conductivity as in ISO 10456",
        "",
        "0.01 tile, 0.02 vinyl, 0.10 wood, 0.15 m²·K/W thin carpet",
        "memory",
    ),
    "slab-conductivity": Source(
        "",
        "Conductivity of screed 1.2 (EN 1264), of ordinary concrete 1.2 to 2.4 W/(m·K)",
        "",
        "",
        "memory",
    ),
    "floor-custom": Source(
        "",
        "Common practice of slab floors: pipes 12 in apart, 2 in of concrete over them, 10 °F drop, 2 in of foam below",
        "",
        "",
        "common practice",
    ),
    "mixed-custom": Source(
        "",
        "Common practice of mixing: floors near 105 °F, taps at 120 °F, a second thermostat 10 to 20 °F higher",
        "",
        "",
        "common practice",
    ),
    "coil-custom": Source(
        "",
        "Common practice of duct coils: 180 °F water, 4 gpm, the furnace blower's 1,000 cfm",
        "",
        "",
        "common practice",
    ),
    "duct-custom": Source(
        "",
        "Ordinary ducts outside the heated space lose 10 to 30 % of their heat, half of it by leaks",
        "",
        "",
        "common practice",
    ),
    "register-air": Source(
        "",
        "Common practice: moving air cooler than about 95 °F is felt as a draft",
        "",
        "",
        "common practice",
    ),
    # Worksheets: margins and typical values.
    "scald-cpsc": Source("US Consumer Product Safety Commission", "Tap water scalds: times to a third-degree burn for adults", "2012", "150 °F 2 s, 140 °F 6 s, 130 °F 30 s, 120 °F 5 min; other tables give longer and, for children, far shorter times", "second-hand"),
    "boiling-caution": Source("", "Common practice: at least 20 °F between the hottest water and boiling", "", "", "common practice"),
    "sea-level-assumed": Source("", "Sea level, where nothing else is known; it gives the highest boiling point", "", "", "common practice"),
    "degree-day-base": Source("", "Common practice: US degree-day tables use base 65 °F", "", "", "common practice"),
    # Pipes, gravity, safety and antifreeze.
    "mass-balance": Source("", "Mass balance: share by mass is share by volume times density, divided by the whole", "", "", "definition"),
    "melinder": Source("Melinder, as coded in CoolProp 8.0.0 (mixtures MPG and MEG)", "Properties of Secondary Working Fluids for Indirect Systems", "2010", "Polynomials of density, specific heat, viscosity and freezing point; fitted again for this project", "second-hand"),
    "glycol-densities": Source("", "Density of pure propylene and ethylene glycol at 20 °C", "", "1036 and 1113 kg/m³", "memory"),
    "glycol-burst": Source("Goodheart-Willcox", "Math for HVACR", "2018", "Exercise 5-4, table of freezing and burst points by volume (its row for -40 °F has two columns swapped)", "read"),
    "astm-b88": Source("ASTM", "B88, Seamless copper water tube, as reprinted by trade handbooks", "", "Outside diameters and nominal walls, types L and M", "second-hand"),
    "astm-f876": Source("ASTM", "F876, Crosslinked polyethylene tubing", "", "Minimum walls, SDR 9; average wall by half the tolerance, which is from memory", "second-hand"),
    "asme-b36-10": Source("ASME", "B36.10, Welded and seamless wrought steel pipe, as reprinted by trade handbooks", "", "Schedule 40", "second-hand"),
    "reynolds": Source("", "Reynolds number, flow in a round pipe", "1883", "", "definition"),
    "churchill": Source("Churchill", "Friction-factor equation spans all fluid-flow regimes, Chemical Engineering 84(24)", "1977", "Pages 91 to 92, as coded in the library fluids", "second-hand"),
    "darcy": Source("", "Darcy and Weisbach: pressure lost to friction", "1857", "", "memory"),
    "hooper": Source("Hooper", "The 2-K method predicts head losses in pipe fittings, Chemical Engineering", "1981", "Page 97, as coded in the library fluids; rounded here to one number a fitting for 3/4 to 1 in", "second-hand"),
    "hydrostatics": Source("", "Pressure of a column of water: density × gravity × height", "", "", "definition"),
    "cylinder": Source("", "Conduction through round layers, heat transfer textbooks", "", "", "memory"),
    "en-13941": Source("CEN", "EN 13941, District heating pipes: heat loss of a buried pair, as taught and coded by others", "2019", "Soil and neighbor resistances, surface resistance 0.0685 m²·K/W", "second-hand"),
    "outside-film": Source("", "Film of still air about a pipe, 8 W/m²·K", "", "Convection and radiation together near room temperature", "memory"),
    "heat-of-freezing": Source("CRC", "Handbook of Chemistry and Physics, heat of fusion of water", "", "333.55 kJ/kg", "memory"),
    "ashrae-expansion": Source("ASHRAE", "Handbook, HVAC Systems and Equipment, hydronic heating and cooling: sizing of expansion tanks", "2000 and later", "Equations for diaphragm and plain tanks, as quoted in posted copies", "second-hand"),
    "en-12828": Source("CEN", "EN 12828, Heating systems in buildings: design of water-based systems", "2003", "Annex D: reserve of 0.5 % and 3 L at least", "memory"),
    "relief-codes": Source("New York State", "12 NYCRR 4-5.3, Relief valves for low pressure hot water boilers; other states' boiler rules read the same", "2024", "Capacity for the full output; pressure rise; 1000 Btu for each pound of steam", "read"),
    "pn-91-b-02413": Source("Polish Committee for Standardization", "PN-91/B-02413, Open water heating systems: safety", "1991", "Safety pipe: 8.08 mm × ∛(kW), 25 mm at least", "memory"),
    "flash": Source("", "Flash steam: the enthalpy of the water stays the same when its pressure is let go", "", "Steam handbooks", "memory"),
    "quiet-velocity": Source("", "Water above 4 ft/s is heard in pipes; below 2 ft/s it does not carry air along", "", "", "common practice"),
    "soil": Source("", "Conductivity of soil: dry 0.4, damp 1.5 W/(m·K)", "", "Handbooks of heat transfer", "memory"),
    "pipe-insulation": Source("", "Conductivity of pipe insulation, dry: polyurethane 0.025, rubber foam 0.039, mineral fiber 0.035 W/(m·K)", "", "Wet insulation loses many times more", "memory"),
    "delivered-cord": Source("USDA Forest Service, Forest Products Laboratory", "Fuel Value Calculator", "2004", "A seasoned cord of 20 million Btu gives about 15 million in a good stove", "read"),
    "high-limit": Source("", "A stove's high limit is often set near 210 °F; its manual says", "", "", "common practice"),
    "membrane": Source("CEN", "EN 13831, Closed expansion vessels with built-in diaphragm", "2007", "Membrane up to 70 °C (158 °F)", "memory"),
    "glycol-share": Source("", "At least a quarter of glycol, or its inhibitors are too thin to protect metal", "", "Makers' guides", "memory"),
    "damper-shut": Source("", "With its air shut a wood fire goes on at about a third of its heat for an hour or more", "", "Ask the maker what his damper does without power", "common practice"),
    "backflow-codes": Source("", "Plumbing codes: poisonous fluid against drinking water needs a double wall with its gap open to the air", "", "Ask the local code", "memory"),
    "suction-head": Source("", "Small circulators need a few feet of net positive suction head, more when hot; the maker says", "", "", "common practice"),
    "pipe-roughness": Source("", "Wall roughness: copper and PEX 0.0015 mm, new steel 0.045 mm", "", "Handbooks of pipe flow", "memory"),
    "copper-velocity": Source("Copper Development Association", "Copper Tube Handbook", "2010", "General considerations: 2 to 3 ft/s where water is often above 140 °F, 5 ft/s for hot and 8 ft/s for cold water", "second-hand"),
    "pex-limits": Source("ASTM and Plastics Pipe Institute", "F876 and TN-17, Crosslinked polyethylene pipe and tubing", "2013", "160 psi at 73 °F, 100 psi at 180 °F; 80 psi at 200 °F from memory", "second-hand"),
    "typical-years": Source("US Department of Energy, Environment Canada, Deutscher Wetterdienst, JRC", "Hourly typical years of 31 places, degree-days worked out from them", "1976 to 2010", "At base 60 °F the 31 places have 69 to 88 % of the degree-days at base 65 °F, 79 % on average", "computed"),
    "tap-share": Source("", "Hot tap water takes 10 to 25 % of the heating fuel of a house", "", "", "common practice"),
    "surface-resistances": Source("", "Ordinary R-values of walls, windows, doors, ceilings and floors with their surface films", "", "", "memory"),
    "air-change-guess": Source("", "Half an air change an hour for an ordinary house; blower-door figure at 50 Pa divided by about 20", "", "", "common practice"),
    "baseboard-rating": Source("", "Ordinary fin-tube baseboard, 3/4 in tube: about 560 Btu/h for each foot at 180 °F, heating-effect allowance included", "", "", "common practice"),
    "rating-conditions": Source("", "Rating conditions: baseboard 180 °F mean water and 65 °F entering air; radiators 75/65 °C water and 20 °C air (EN 442)", "", "", "memory"),
    "emitter-exponents": Source("", "Exponents: radiators about 1.3, baseboard 1.3 to 1.42, as handbooks and test reports give them", "", "", "memory"),
    "en-442-log": Source("", "Below a ratio of 0.7 between return and supply excess the logarithmic mean is customary", "", "EN 442 practice", "memory"),
    "packing-density": Source("", "Firewood as it lies in a firebox: 150 to 250 kg for each cubic meter", "", "Weigh your own load", "common practice"),
    "load-efficiency": Source("", "Ordinary efficiency of a wood fire with a water jacket: 60 to 75 % on higher, 65 to 82 % on lower heating value", "", "", "memory"),
    "tank-fittings": Source("", "Pipes, legs and gaps add 20 to 100 % to what the bare insulation of a tank loses", "", "", "memory"),
    "tank-film": Source("", "Heat passed from an indoor surface to air, 8 to 9 W/(m²·K)", "", "Convection and radiation together near room temperature", "memory"),
    "tank-insulation": Source("US Department of Energy", "Insulation fact sheet, R-values for each inch, as reprinted", "", "Mineral wool board from memory", "second-hand"),
    "liner-limit": Source("", "Rubber liners of open tanks: makers ask for about 170 to 180 °F at most", "", "The liner's own sheet decides", "memory"),
    "floor-loads": Source("International Code Council", "International Residential Code, tables R301.5 and R401.4.1", "2018", "40 lb/ft² in rooms, 30 lb/ft² in bedrooms; 1,500 lb/ft² for clay and silt under a slab", "memory"),
    "tank-weight": Source("", "Empty steel tanks weigh about 1 to 2 lb for each gallon they hold", "", "The maker's sheet", "common practice"),
    "tank-clearance": Source("", "Room to work on pipes and insulation: about 6 in around a tank, 12 in above it", "", "", "common practice"),
    "hottest-store": Source("", "Common practice: stores are charged to 200 °F at most", "", "", "common practice"),
    "verdict-margins": Source("", "Our own margins: a link is tight below 10 % over its need, and below 20 °F to boiling", "", "", "common practice"),
}
