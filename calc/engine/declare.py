"""The words a worksheet is written in. A declaration is data: no branch, no lambda; a mistake in it stops.

WORKSHEET = Worksheet(
    key="stored-heat", guide="storage", question="How much usable heat is in the tank?",
    fields=(STORE_VOLUME, STORE_TOP, LOWEST_USEFUL, LOAD),
    steps=(
        Step("heat_content", water.mean_volume_heat_content, "Heat in each volume and degree", low="lowest_useful", …),
        Step("usable_heat", store.usable_heat, "Usable heat", volume="store_volume", …),
    ),
    results=(Result("usable_heat", figures=3), …),
    headline="usable_heat", …
)
"""

from calc.engine.conditions import Condition
from calc.engine.fields import DeclarationError, Field, Given, Option, Typical, quantity
from calc.engine.recorded import OnlyWith, Part, Sizes, Suits, Takes
from calc.engine.steps import AnyStep, Case, Cases, Pick, Step
from calc.engine.words import (
    Advice,
    Chart,
    Check,
    Comparison,
    Example,
    Line,
    Methods,
    Must,
    Next,
    Outlook,
    Picture,
    Result,
    Spread,
    Sweep,
    Trace,
    Track,
    Variant,
)
from calc.engine.worksheet import Worksheet

__all__ = [
    "Advice",
    "AnyStep",
    "Case",
    "Cases",
    "Chart",
    "Check",
    "Comparison",
    "Condition",
    "DeclarationError",
    "Example",
    "Field",
    "Given",
    "Line",
    "Methods",
    "Must",
    "Next",
    "OnlyWith",
    "Option",
    "Outlook",
    "Part",
    "Pick",
    "Picture",
    "Result",
    "Sizes",
    "Spread",
    "Step",
    "Suits",
    "Sweep",
    "Takes",
    "Trace",
    "Track",
    "Typical",
    "Variant",
    "Worksheet",
    "quantity",
]
