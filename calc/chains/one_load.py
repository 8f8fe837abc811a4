"""What one firebox of wood gives the water, the same on every sheet that asks for the heat of a burn.

Whatever output is printed, a burn brings no more heat than the wood of one load holds.
"""

from calc.chains import kind_of_wood
from calc.engine.declare import Case, Cases, Field, Given, Option, Step
from calc.physics import firing, wood
from calc.vocabulary import EFFICIENCY_BASIS, FIREBOX_VOLUME, MOISTURE, PACKING_DENSITY, STOVE_EFFICIENCY

FIELDS = (FIREBOX_VOLUME, MOISTURE, EFFICIENCY_BASIS, STOVE_EFFICIENCY, PACKING_DENSITY)

FIREBOX_KNOWN = Field(
    "firebox_known",
    "choice",
    "Firebox measured",
    "A burn brings no more heat than one firebox of wood holds, whatever output is printed.",
    options=(Option("no", "no"), Option("yes", "yes")),
    unless_given="no",
)

# A store of the size for just one burn holds it, whatever the last digits of that size are.
JUST_FITS = Given("just_fits", "fraction", "Share of a burn that counts as all of it", "99.9 %", "definition")

SMALL_STORE = "small-store"  # what several worksheets say, each in its words, of a store that is too small for a burn

GIVENS = (kind_of_wood.ANY_WOOD,)

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


def burn(water_heat: str, label: str) -> Cases:
    """The heat of a burn to the water, and to the room meanwhile: by the printed output, or by a firebox measured."""
    return Cases(
        FIREBOX_KNOWN.key,
        no=Case(
            steps=(
                Step(water_heat, firing.heat_at_output, label),
                Step(
                    "room_of_load",
                    firing.room_output_of_load,
                    "Average heat output to the room",
                    water_heat=water_heat,
                    heat_at_output=water_heat,
                ),
            )
        ),
        yes=Case(
            fields=FIELDS,
            cases=(HEATING_VALUE,),
            steps=(
                *STEPS,
                Step("heat_at_output", firing.heat_at_output, "What the water output and the burn time say"),
                Step(water_heat, firing.water_heat_of_burn, f"{label}: the smaller"),
                Step(
                    "room_of_load", firing.room_output_of_load, "Average heat output to the room", water_heat=water_heat
                ),
            ),
            decides=True,
        ),
    )
