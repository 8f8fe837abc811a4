"""What one firebox of wood gives the water, the same on every sheet that asks for the heat of a burn.

Whatever output is printed, a burn brings no more heat than the wood of one load holds.
"""

from calc.engine.declare import Case, Cases, Given, Step
from calc.physics import firing, wood
from calc.vocabulary import EFFICIENCY_BASIS, FIREBOX_VOLUME, MOISTURE, PACKING_DENSITY, STOVE_EFFICIENCY

FIELDS = (FIREBOX_VOLUME, MOISTURE, EFFICIENCY_BASIS, STOVE_EFFICIENCY, PACKING_DENSITY)

# A store of the size for just one burn holds it, whatever the last digits of that size are.
JUST_FITS = Given("just_fits", "fraction", "Share of a burn that counts as all of it", "99.9 %", "definition")

SMALL_STORE = "small-store"  # what several worksheets say, each in its words, of a store that is too small for a burn

GIVENS = (Given("dry_heating_value", "heat_per_mass", "Heat in oven-dry wood", "8,600 Btu/lb", "wood-heating-value"),)

HEATING_VALUE = Cases(
    "efficiency_basis",
    higher=Case(
        steps=(Step("heating_value", wood.higher_heating_value, "Heat in each weight of this wood, higher value"),)
    ),
    lower=Case(
        steps=(
            Step("higher_value", wood.higher_heating_value, "Heat in each weight of this wood, higher value"),
            Step(
                "heating_value",
                wood.lower_heating_value,
                "The same without the heat of the steam",
                higher_heating_value="higher_value",
            ),
        )
    ),
)

STEPS = (
    Step("share_to_water", firing.share_to_water, "Share of the stove's heat that goes to the water"),
    Step("heat_per_load", firing.heat_per_load, "What one firebox of this wood gives the water"),
)
