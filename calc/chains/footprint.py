"""The floor under a tank, round or a box, and what stands on it: the same on every sheet that weighs it."""

from calc.engine.declare import AnyStep, Case, Cases, Step
from calc.physics import arithmetic, store, tanks
from calc.vocabulary import TANK_COUNT, TANK_DEPTH

TANKS = TANK_COUNT.but(unless_given="1")
WEIGHT = (
    Step("volume_each", tanks.volume_of_one, "Water in each tank"),
    Step("full_weight", store.full_weight, "Weight of the full tank", volume="volume_each"),
    Step("floor_load", store.floor_load, "Load on the floor under it", weight="full_weight"),
)


def footprint(*, round_steps: tuple[AnyStep, ...] = (), box_steps: tuple[AnyStep, ...] = ()) -> Cases:
    """The footprint by the tank's shape, and the steps that a worksheet adds to either case."""
    return Cases(
        "tank_shape",
        round=Case(
            steps=(
                Step("footprint", arithmetic.circle_area, "Floor under it", diameter="tank_diameter"),
                *round_steps,
            )
        ),
        square=Case(
            fields=(TANK_DEPTH,),
            steps=(
                Step("footprint", store.box_area, "Floor under it", width="tank_diameter", depth="tank_depth"),
                *box_steps,
            ),
        ),
    )
