"""What must the relief valve or the open vent pass?"""

from calc.chains.water_side import PEAK
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
    Next,
    Option,
    Result,
    Sizes,
    Step,
    Variant,
    Worksheet,
)
from calc.physics import safety, water
from calc.plant import RELIEF_VALVE
from calc.vocabulary import ALTITUDE, PEAK_KNOWN, RELIEF_SETTING

PLANT_KIND = Field(
    "plant_kind",
    "choice",
    "Protection against pressure",
    "One of the two is always there, and open to the fire.",
    options=(
        Option("closed", "closed, with a relief valve"),
        Option("open", "open to the air, with an open vent"),
    ),
)
VALVE_CAPACITY = Field(
    "valve_capacity",
    "power",
    "Relief valve capacity",
    "0 if none is chosen yet; all valves at the stove together.",
    low="0 Btu/h",
    high="5,000,000 Btu/h",
    unless_given="0 Btu/h",
)
STOVE_RATING = Field(
    "stove_rating",
    "pressure_gauge",
    "Maximum working pressure of the stove",
    "On its rating plate.",
    low="5 psi",
    high="200 psi",
    same_as="relief_setting",
)
VENT_BORE_FITTED = Field(
    "vent_bore_fitted",
    "length",
    "Inside diameter of the vent fitted",
    "Its inside; 0 if none is chosen yet.",
    low="0 in",
    high="8 in",
    us="in",
    si="mm",
    unless_given="0 in",
)
VENT_HEIGHT = Field(
    "vent_height",
    "length",
    "Height of the water over the stove's outlet",
    "Up to the level in the open tank.",
    low="0 ft",
    high="100 ft",
    us="ft",
    si="m",
    unless_given="8 ft",
)

WORKSHEET = Worksheet(
    key="relief",
    guide="safety",
    question="What must the relief valve or the open vent pass?",
    short="Relief capacity in heat and in steam, or the bore of an open vent.",
    fields=(
        PLANT_KIND,
        PEAK_KNOWN,
        ALTITUDE,
    ),
    givens=(
        Given("least_vent", "length", "Least vent looked at", "0.01 in", "definition"),
        Given("some_capacity", "power", "Some capacity", "1 Btu/h", "definition"),
        Given("coldest_fill", "temperature", "Water in the cold leg", "50 °F", "common-practice"),
        Given("tight", "factor", "A valve is tight below this many times its need", "1.1", "common-practice"),
    ),
    cases=(
        PEAK,
        Cases(
            "plant_kind",
            closed=Case(
                fields=(RELIEF_SETTING, VALVE_CAPACITY, STOVE_RATING),
                steps=(
                    Step("steam_pressure", safety.relieving_pressure, "Pressure at which it passes its full flow"),
                    Step("steam_boiling", water.boiling_temperature, "Water boils there at", pressure="steam_pressure"),
                ),
            ),
            open=Case(
                fields=(VENT_BORE_FITTED, VENT_HEIGHT),
                steps=(
                    Step("steam_boiling", water.boiling_temperature, "Water boils there at", pressure="barometer"),
                    Step("vent_bore", safety.open_vent_bore, "Minimum bore of the open vent", us="in", si="mm"),
                    Step("steam_volume", safety.steam_volume, "Volume of the steam", pressure="barometer"),
                    Step("vent_velocity", safety.vent_steam_velocity, "Steam velocity in the vent", bore="vent_bore"),
                    Step("density_cold", water.density, "Density of the cold leg", temperature="coldest_fill"),
                    Step("density_boiling", water.density, "Density of boiling water", temperature="steam_boiling"),
                    Step(
                        "vent_rise",
                        safety.vent_rise,
                        "Hot water stands higher in the vent by",
                        water_height="vent_height",
                        cold_density="density_cold",
                        hot_density="density_boiling",
                    ),
                ),
            ),
        ),
    ),
    steps=(
        Step("barometer", water.barometer, "Air pressure at this height"),
        Step("latent_heat", safety.latent_heat, "Heat that turns it into steam, by weight", boiling="steam_boiling"),
        Step("relief_steam", safety.relief_steam, "Steam to be passed"),
    ),
    results=(
        Result(
            "peak_output",
            "Relief capacity needed",
            "All of the fire's peak: nothing is taken off and no margin is added.",
        ),
        Result("relief_steam", "Relief capacity as steam", "A valve is marked in one or the other, or in both."),
        Result("steam_pressure", "Relieving pressure", "Absolute."),
        Result("steam_boiling", "Steam temperature at that pressure"),
        Result(
            "vent_bore",
            "Minimum bore of the open vent",
            "By a rule for open plants, from memory; the next larger pipe.",
            us="in",
            si="mm",
        ),
        Result("vent_velocity", "Steam velocity in the vent"),
        Result(
            "vent_rise",
            "Hot water stands higher in the vent by",
            "With the pump at rest; the vent must rise further than that.",
        ),
    ),
    headline="peak_output",
    say="{relief_steam} of steam.",
    advice=(
        Advice(
            "stop",
            "valve-too-small",
            "valve_capacity >= some_capacity and valve_capacity < peak_output",
            "This valve is too small for this fire.",
            "It passes {valve_capacity} and the fire can give {peak_output}. Do not light it; fit a valve for all of it, stamped "
            "and sealed, with the maker's agreement.",
            "relief-codes",
        ),
        Advice(
            "stop",
            "setting-too-high",
            "relief_setting > stove_rating",
            "The valve opens later than the stove can bear.",
            "It is set to {relief_setting} and the stove is stamped for {stove_rating}. The setting may never be above the "
            "stamp of the weakest part.",
            "relief-codes",
        ),
        Advice(
            "stop",
            "vent-too-narrow",
            "vent_bore_fitted >= least_vent and vent_bore_fitted < vent_bore",
            "This vent is too narrow.",
            "It has {vent_bore_fitted} and {vent_bore} are needed for {peak_output}. Steam that cannot leave pushes the water "
            "out of the stove.",
            "pn-91-b-02413",
        ),
        Advice(
            "caution",
            "tight",
            "valve_capacity >= peak_output and valve_capacity < tight * peak_output",
            "The valve is tight.",
            "It passes {valve_capacity} against {peak_output}. Valves lime up; a larger one costs little.",
            weight=3,
        ),
        Advice(
            "caution",
            "never-shut",
            "plant_kind == 'closed'",
            "Nothing between stove and relief valve.",
            "No valve, no plug, no strainer, at the stove itself and upright. Its pipe is of full bore, metal, runs down to "
            "where it is seen and scalds nobody, drains itself and never freezes. Never cap it.",
            "relief-codes",
            weight=1,
        ),
        Advice(
            "caution",
            "always-open",
            "plant_kind == 'open'",
            "The vent rises all the way and never freezes.",
            "No valve, no dip, no narrowing, metal from the stove to over the tank, at least {vent_rise} above the water when "
            "hot and more with a pump. Ice in it makes a bomb of an open plant.",
            weight=1,
        ),
        Advice(
            "note",
            "test",
            "plant_kind == 'closed'",
            "Have it lifted once a year.",
            "A valve that never moves sticks. The person who services the plant lifts its lever, with the stove cold and a new valve at hand: "
            "an old one may not seat again.",
        ),
        Advice(
            "note",
            "two-sides",
            "plant_kind == 'closed'",
            "Two sides, two valves.",
            "Each side of an exchanger has its own relief valve and its own expansion tank, and so has the tap-water tank.",
        ),
    ),
    meaning=(
        "A relief valve does not cool the fire: it only lets out as much steam as the fire makes. Water that leaves must be "
        "replaced, and cold water must never run into a hot dry jacket: let the fire die first.",
    ),
    chart=Chart(
        "Steam to be passed against the fire's peak factor",
        across="peak_factor",
        low="1",
        high="4",
        lines=(Line("relief_steam", "steam to be passed", "fire"),),
        say="With a peak of {peak_factor} times the average the valve must pass {relief_steam}.",
    ),
    tables=(
        Comparison(
            "If the fire peaks higher than you think",
            rows=(
                Variant("1.5 times the average", {"peak_factor": "1.5"}),
                Variant("2 times", {"peak_factor": "2"}),
                Variant("3 times", {"peak_factor": "3"}),
            ),
            show=("peak_output", "relief_steam", "vent_bore"),
        ),
    ),
    examples=(
        Example(
            "Mill Row: the cellar stove, closed at 30 psi",
            {
                "plant_kind": "closed",
                "peak_known": "no",
                "water_output": "60,000 Btu/h",
                "altitude": "3,000 ft",
                "relief_setting": "30 psi",
                "valve_capacity": "200,000 Btu/h",
            },
        ),
        Example("Fern Lane: open vent", {"plant_kind": "open", "peak_known": "yes", "peak_output": "80,000 Btu/h"}),
    ),
    sizes=(
        Sizes(
            RELIEF_VALVE,
            "{peak_output} at {relief_setting}, or {relief_steam} of steam",
            "{peak_output} at {relief_setting}",
            ("relief",),
            ("plant_kind", "closed"),
        ),
        Sizes(
            RELIEF_VALVE,
            "{vent_bore} bore or more, rising {vent_rise} or more above the water",
            "{vent_bore} bore",
            ("open-vent", "vent-pipe"),
            ("plant_kind", "open"),
            called="Open vent",
        ),
    ),
    leaves_out=(
        "Heat to the room, which no relief valve has to pass.",
        "Valves marked by state rules count 1,000 Btu for each pound of steam (0.646 kWh/kg); the true figure is up to 7 % less.",
        "What your code says: it, the stove's maker and a licensed person decide.",
    ),
    follow=(
        Next("power-cut", "When it would be needed, and the dump that should come first."),
        Next("expansion", "Why it should stay shut on every ordinary day."),
        Next("boiling", "Where water boils first."),
    ),
)
