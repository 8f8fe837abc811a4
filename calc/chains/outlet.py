"""Boiling, judged on every sheet that takes a store's top: in the store, and at the stove's outlet at the fire's peak.

The hottest water of the plant is not in the store: with a full store feeding the stove, its outlet is hotter still.
A caution of it is beside the question of those sheets, so it stands below their answer; a stop leads it.
"""

from calc.engine.declare import Advice, Given, Result, Step
from calc.physics import pipes, safety, water
from calc.vocabulary import BOILING_ALTITUDE, CHARGE_RISE, OUTLET_HEIGHT, SYSTEM_PRESSURE

FIELDS = (BOILING_ALTITUDE, SYSTEM_PRESSURE, CHARGE_RISE.but(unless_given="25 F°"), OUTLET_HEIGHT)

# Where the question is another one, the same numbers are folded away and stand on the careful side until given.
FOLDED = (
    BOILING_ALTITUDE.but(unless_given="5,000 ft"),
    SYSTEM_PRESSURE.but(unless_given="0 psi"),
    CHARGE_RISE.but(unless_given="25 F°"),
    OUTLET_HEIGHT,
)

GIVENS = (
    Given(
        "boiling_caution",
        "temperature_difference",
        "Margin to boiling worth keeping",
        "20 F°",
        "boiling-caution",
        limit="least",
    ),
)

STEPS = (
    Step("barometer", water.barometer, "Air pressure at this height"),
    Step("pressure", water.absolute_pressure, "Absolute pressure at the store's top", gauge="system_pressure"),
    Step("boiling", water.boiling_temperature, "Boiling point at the store's top"),
    Step("outlet_at_peak", safety.outlet_at_peak, "Stove's outlet at the fire's peak", rise="charge_rise"),
    Step("density_hot", water.density, "Density of the hot water", temperature="store_top"),
    Step(
        "outlet_pressure",
        pipes.pressure_at_height,
        "Absolute pressure at the stove's outlet",
        absolute_pressure="pressure",
        density="density_hot",
        height="outlet_height",
    ),
    Step(
        "boiling_outlet", water.boiling_temperature, "Boiling point at the stove's outlet", pressure="outlet_pressure"
    ),
    Step(
        "outlet_margin",
        water.boiling_margin,
        "Margin to boiling at the outlet",
        boiling="boiling_outlet",
        temperature="outlet_at_peak",
    ),
)

# What runs higher than the store's top is under less pressure, and gets the outlet's water all the same.
HIGHEST_STEPS = (
    Step(
        "highest_pressure",
        pipes.pressure_at_height,
        "Absolute pressure at the highest pipe",
        absolute_pressure="pressure",
        density="density_hot",
        height="highest_point",
    ),
    Step(
        "boiling_highest",
        water.boiling_temperature,
        "Boiling point at the highest pipe",
        pressure="highest_pressure",
    ),
    Step(
        "highest_margin",
        water.boiling_margin,
        "Margin to boiling at the highest pipe",
        boiling="boiling_highest",
        temperature="outlet_at_peak",
    ),
)

# Where the water of the whole plant boils first.
FIRST_STEPS = (
    *STEPS,
    Step("store_margin", water.boiling_margin, "Margin at the store's top", temperature="store_top"),
    *HIGHEST_STEPS,
    Step(
        "inlet_pressure",
        pipes.pump_inlet_pressure,
        "Absolute pressure at the pump's inlet",
        absolute_pressure="pressure",
        density="density_hot",
        height="pump_height",
        pressure_lost="suction_loss",
    ),
    Step("boiling_pump", water.boiling_temperature, "Boiling point at the pump's inlet", pressure="inlet_pressure"),
    Step(
        "pump_margin",
        water.boiling_margin,
        "Margin at the pump's inlet",
        boiling="boiling_pump",
        temperature="store_top",
    ),
    Step(
        "vapour_pressure",
        water.vapour_pressure,
        "Vapor pressure of the hottest stored water",
        temperature="store_top",
    ),
    Step(
        "suction_head",
        pipes.net_positive_suction_head,
        "Net positive suction head at the pump",
        density="density_hot",
    ),
)

RESULT = Result(
    "outlet_margin",
    "Margin to boiling at the stove's outlet",
    "A full store at {store_top} and a rise of {charge_rise} at the peak; water boils there at {boiling_outlet}.",
)

ADVICE = (
    Advice(
        "stop",
        "outlet-boils",
        "outlet_margin <= 0 and store_top < boiling",
        "The stove's outlet boils at the peak.",
        "It reaches {outlet_at_peak} with a full store, and water boils there at {boiling_outlet}. Charge the store "
        "cooler or let more water flow.",
        "iapws-if97",
        beside=True,
    ),
    Advice(
        "stop",
        "boiling",
        "store_top >= boiling",
        "Water boils in this store.",
        "At {altitude} and {system_pressure} it boils at {boiling}, and it is to be charged to {store_top}. Charge it "
        "cooler, and ask the person who installs it about pressure and relief.",
        "iapws-if97",
        stays="store_top >= boiling",
        beside=True,
    ),
    Advice(
        "caution",
        "outlet-margin",
        "outlet_margin > 0 and outlet_margin < boiling_caution",
        "Little margin at the stove's outlet.",
        "{outlet_margin} are left at the peak; keep {boiling_caution}. A smaller rise (more flow) or a cooler store "
        "helps.",
        "boiling-caution",
        weight=3,
        beside=True,
    ),
    Advice(
        "caution",
        "boiling-margin",
        "store_top < boiling and store_top > boiling - boiling_caution",
        "Little margin to boiling.",
        "The store is charged to {store_top} and boils at {boiling}. The stove's outlet is hotter still at "
        "the fire's peak: keep at least {boiling_caution} between them.",
        "boiling-caution",
        weight=3,
        beside=True,
    ),
)
