"""Where does water boil first?"""

from calc.chains import outlet
from calc.engine.declare import Advice, Chart, Comparison, Example, Given, Line, Next, Result, Step, Variant, Worksheet
from calc.physics import emitters, pipes, safety, water
from calc.vocabulary import (
    BOILING_ALTITUDE,
    CHARGE_RISE,
    HIGHEST_POINT,
    OUTLET_HEIGHT,
    PEAK_FACTOR,
    PUMP_HEIGHT,
    STORE_TOP,
    STORE_VOLUME,
    SUCTION_LOSS,
    SYSTEM_PRESSURE,
)


def _flash(ending: str, hot: str, words: str) -> tuple[Step, ...]:
    """What flashes to steam when the store lets go at a temperature; all keys end alike."""
    return (
        Step(
            f"flash_mean{ending}",
            emitters.mean_of,
            f"Mean of boiling in the open and the store {words}",
            supply=hot,
            return_water="boiling_open",
        ),
        Step(
            f"flash_specific_heat{ending}",
            water.specific_heat,
            "Specific heat there",
            temperature=f"flash_mean{ending}",
        ),
        Step(
            f"flash_fraction{ending}",
            safety.flash_fraction,
            f"Share that flashes to steam if it bursts {words}",
            hot=hot,
            boiling="boiling_open",
            specific_heat=f"flash_specific_heat{ending}",
            latent_heat="flash_latent_heat",
        ),
        Step(f"density_burst{ending}", water.density, f"Density of the store {words}", temperature=hot),
        Step(
            f"flash_steam{ending}",
            safety.flash_steam,
            "Steam from the whole store",
            volume="store_volume",
            density=f"density_burst{ending}",
            flash_fraction=f"flash_fraction{ending}",
        ),
        Step(
            f"flash_volume{ending}",
            safety.flash_steam_volume,
            "Room that this steam takes",
            flash_steam=f"flash_steam{ending}",
            us="ft³",
            si="m³",
        ),
    )


WORKSHEET = Worksheet(
    key="boiling",
    guide="safety",
    question="Where does water boil first?",
    short="Boiling points and margins at the store, the stove's outlet, the highest pipe and the pump.",
    fields=(
        BOILING_ALTITUDE,
        SYSTEM_PRESSURE,
        STORE_TOP,
        CHARGE_RISE,
        HIGHEST_POINT.but(hint="Above an open store's water level the water hangs, and boils sooner."),
        PUMP_HEIGHT,
        STORE_VOLUME,
        OUTLET_HEIGHT,
        SUCTION_LOSS,
        PEAK_FACTOR,
    ),
    givens=(
        *outlet.GIVENS,
        Given("least_suction", "length", "Suction head that small pumps ask for when hot", "6 ft", "suction-head"),
        Given("at_sea_level", "length", "Sea level", "0 ft", "definition"),
        Given("open_air", "pressure_gauge", "Open to the air", "0 psi", "definition"),
    ),
    steps=(
        *outlet.FIRST_STEPS,
        Step("outlet_on_average", safety.outlet_on_average, "Stove's outlet at the average output", rise="charge_rise"),
        Step(
            "outlet_margin_average",
            water.boiling_margin,
            "Margin at the stove's outlet on average",
            boiling="boiling_outlet",
            temperature="outlet_on_average",
        ),
        Step(
            "rise_allowed",
            pipes.rise_before_boiling,
            "Height over the store at which its hottest water boils",
            absolute_pressure="pressure",
            density="density_hot",
        ),
        Step("boiling_open", water.boiling_temperature, "An open pot boils here at", pressure="barometer"),
        Step("flash_latent_heat", safety.latent_heat, "Heat that boiling takes in the open", boiling="boiling_open"),
        *_flash("", "store_top", "as hot as it is charged"),
        *_flash("_worst", "boiling", "at its boiling point"),
        Step("steam_volume", safety.steam_volume, "Volume of steam in the open", pressure="barometer"),
    ),
    results=(
        Result("boiling", "Boiling point at the store's top", "At {altitude} and {system_pressure}."),
        Result(
            "outlet_at_peak",
            "Stove's outlet at the fire's peak",
            "A full store at {store_top} and a rise of {charge_rise}.",
        ),
        Result("boiling_outlet", "Boiling point at the stove's outlet"),
        Result("outlet_margin", "Margin at the stove's outlet, at the peak", "Under {boiling_caution} is tight."),
        Result(
            "outlet_margin_average",
            "Margin at the stove's outlet, on average",
            "At the average output; the peak is {peak_factor} times that, and it is the peak that counts.",
        ),
        Result("boiling_highest", "Boiling point at the highest pipe", "{highest_point} above the store's top."),
        Result("highest_margin", "Margin at the highest pipe"),
        Result("boiling_pump", "Boiling point at the pump's inlet"),
        Result("pump_margin", "Margin at the pump's inlet"),
        Result("store_margin", "Margin at the store's top"),
        Result("rise_allowed", "Height over the store at which its hottest water boils", "Pump at rest."),
        Result("suction_head", "Net positive suction head at the pump"),
        Result(
            "flash_fraction",
            "Share that flashes to steam if it bursts at {store_top}",
            "At constant enthalpy; none below {boiling_open}.",
        ),
        Result("flash_steam", "Steam from the whole store at {store_top}"),
        Result("flash_volume", "Volume of that steam", us="ft³", si="m³"),
        Result(
            "flash_fraction_worst", "Share that flashes if it bursts at its boiling point", "An open store cannot: 0."
        ),
        Result("flash_steam_worst", "Steam from the whole store at its boiling point"),
        Result("flash_volume_worst", "Volume of the steam at its boiling point", us="ft³", si="m³"),
    ),
    headline="boiling",
    say="At the outlet {outlet_margin} are left at the peak.",
    advice=(
        Advice(
            "stop",
            "store-boils",
            "store_margin <= 0",
            "Water boils in the store.",
            "It boils there at {boiling} and you charge it to {store_top}. Charge it cooler, and ask the person who installs "
            "it about pressure and relief.",
            "iapws-if97",
            stays="store_margin <= 0",
        ),
        Advice(
            "stop",
            "outlet-boils",
            "outlet_margin <= 0",
            "The stove's outlet boils at the peak.",
            "It reaches {outlet_at_peak} with a full store, and water boils there at {boiling_outlet}. Charge the store "
            "cooler or let more water flow.",
            "iapws-if97",
        ),
        Advice(
            "stop",
            "highest-boils",
            "highest_margin <= 0",
            "The highest pipe boils first.",
            "Water of {outlet_at_peak} boils there at {boiling_highest}. Run it lower; over an open store nothing hot should "
            "climb.",
            "iapws-if97",
        ),
        Advice(
            "stop",
            "pump-boils",
            "pump_margin <= 0",
            "Water boils in the pump.",
            "Its inlet boils at {boiling_pump} and the store sends {store_top}. Set the pump below the water level.",
            "iapws-if97",
        ),
        Advice(
            "caution",
            "store-margin",
            "store_margin > 0 and store_margin < boiling_caution",
            "Little margin in the store.",
            "{store_margin} are left of the {boiling_caution} worth keeping. Weather moves the boiling point by a degree or two.",
            "boiling-caution",
            weight=3,
        ),
        Advice(
            "caution",
            "outlet-margin",
            "outlet_margin > 0 and outlet_margin < boiling_caution",
            "Little margin at the stove's outlet.",
            "{outlet_margin} are left at the peak; keep {boiling_caution}.",
            "boiling-caution",
            weight=3,
        ),
        Advice(
            "caution",
            "highest-margin",
            "highest_margin > 0 and highest_margin < boiling_caution",
            "Little margin at the highest pipe.",
            "{highest_margin} are left there; keep {boiling_caution}.",
            "boiling-caution",
            weight=3,
        ),
        Advice(
            "caution",
            "pump-margin",
            "pump_margin > 0 and pump_margin < boiling_caution",
            "Little margin at the pump.",
            "{pump_margin} are left at its inlet; keep {boiling_caution}. Lower is better, on the cool side.",
            "boiling-caution",
            weight=3,
        ),
        Advice(
            "caution",
            "suction",
            "suction_head < least_suction",
            "The pump may not get its water.",
            "It has {suction_head} of suction head; small pumps ask for about {least_suction} when hot.",
            "suction-head",
        ),
        Advice(
            "note",
            "burst",
            "flash_fraction_worst > 0",
            "Pressure keeps it from boiling, and stores the danger.",
            "Should this store let go at {boiling}, {flash_fraction_worst} of it would be steam at once: {flash_volume_worst}. That is why "
            "pressure vessels carry a stamp and a relief valve that nobody may shut.",
            "flash",
        ),
        Advice(
            "note",
            "open",
            "system_pressure <= open_air",
            "An open store boils like a pot.",
            "{boiling} here, {rise_allowed} above its water even at {store_top}. Keep pipes low and pumps lower.",
        ),
    ),
    meaning=(
        "The store's thermometer shows neither the hottest water nor the place that boils first. Both are found here: the "
        "outlet at the fire's peak, and the pipe or pump with the least pressure on it.",
    ),
    chart=Chart(
        "Boiling points by height above the sea",
        across="altitude",
        low="0 ft",
        high="10,000 ft",
        lines=(
            Line("boiling", "store boils", "limit"),
            Line("boiling_highest", "highest pipe boils", "other"),
            Line("outlet_at_peak", "outlet at the peak", "fire"),
        ),
        say="At {altitude} the store boils at {boiling} and the outlet reaches {outlet_at_peak}.",
    ),
    tables=(
        Comparison(
            "The same plant elsewhere",
            rows=(
                Variant("Sea level", {"altitude": "0 ft"}),
                Variant("3,000 ft (914 m)", {"altitude": "3,000 ft"}),
                Variant("5,000 ft (1,524 m)", {"altitude": "5,000 ft"}),
                Variant("7,000 ft (2,134 m)", {"altitude": "7,000 ft"}),
            ),
            show=("boiling", "outlet_margin", "highest_margin", "rise_allowed"),
        ),
    ),
    examples=(
        Example(
            "Mill Row: 800 gal closed store",
            {
                "altitude": "3,000 ft",
                "system_pressure": "12 psi",
                "store_top": "180 °F",
                "charge_rise": "25 F°",
                "highest_point": "12 ft",
                "pump_height": "-4 ft",
                "store_volume": "800 gal",
                "outlet_height": "-2 ft",
            },
        ),
        Example(
            "Fern Lane: 500 gal open store",
            {
                "altitude": "3,000 ft",
                "system_pressure": "0 psi",
                "store_top": "170 °F",
                "charge_rise": "15 F°",
                "highest_point": "0 ft",
                "pump_height": "-4 ft",
                "store_volume": "500 gal",
                "outlet_height": "-1 ft",
            },
        ),
    ),
    leaves_out=(
        "Weather, which moves the boiling point by a degree or two.",
        "Glycol, which boils a few degrees hotter; water is the safe reckoning.",
        "Hot spots on the jacket's wall, which hiss before the water boils.",
    ),
    follow=(
        Next("power-cut", "Minutes to boiling when the pump stops."),
        Next("relief", "What must let the steam out."),
        Next("charge-loop", "The pump that keeps the outlet cool."),
    ),
)
