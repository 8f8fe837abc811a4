"""What an emitter's lowest useful water means in gallons: the store that carries the house for the hours wanted.

Shared by the worksheets of baseboard, floor and duct coil, so that their answers stand side by side on the same store.
"""

from calc.engine.declare import Given, Result, Step
from calc.physics import store
from calc.vocabulary import HOURS_WANTED, STORE_TOP

FIELDS = (STORE_TOP, HOURS_WANTED)

GIVENS = (
    Given("no_standby", "power", "Heat lost by a store inside the heated space", "0 Btu/h", "definition"),
    # Between 100 and 200 °F it is 8.08 to 8.27: the store comes out within 1 %, and no temperature is out of range.
    Given(
        "store_water_heat",
        "volume_heat_capacity",
        "Heat in each volume and degree of water near 150 °F (66 °C)",
        "8.17 Btu/gal/F",
        "iapws-if97",
    ),
)


def steps(heat_drawn: str) -> tuple[Step, ...]:
    """The steps, for a step or field `heat_drawn`: all the heat that the emitter takes from its water."""
    return (
        Step(
            "heat_wanted",
            store.heat_for_hours,
            "Heat for the hours without a fire",
            load=heat_drawn,
            standby_loss="no_standby",
        ),
        Step(
            "store_for_hours",
            store.volume_for_heat,
            "Mixed store that carries the house for those hours",
            heat="heat_wanted",
            heat_content="store_water_heat",
            top="store_top",
            low="lowest_useful",
        ),
    )


RESULT = Result(
    "store_for_hours",
    "Store that carries the house for {hours_wanted}",
    "On the coldest day, mixed, charged to {store_top}: the same store for every kind of emitter.",
    missing="no store",
)
