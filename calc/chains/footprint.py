"""The floor under a tank, round or a box: the same on every sheet that weighs it."""

from calc.engine.declare import AnyStep, Case, Cases, Step
from calc.physics import arithmetic, store
from calc.vocabulary import TANK_DEPTH


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
