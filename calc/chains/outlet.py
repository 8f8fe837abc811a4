"""The stove's outlet at the fire's peak, judged on every sheet that takes a store's top and knows its pressure.

The hottest water of the plant is not in the store: with a full store feeding the stove, its outlet is hotter still.
"""

from calc.engine.declare import Advice, Result, Step
from calc.physics import safety, water
from calc.vocabulary import CHARGE_RISE

FIELDS = (CHARGE_RISE.but(unless_given="25 F°"),)

STEPS = (
    Step("outlet_at_peak", safety.outlet_at_peak, "Stove's outlet at the fire's peak", rise="charge_rise"),
    Step("outlet_margin", water.boiling_margin, "Margin to boiling at the outlet", temperature="outlet_at_peak"),
)

RESULT = Result(
    "outlet_margin",
    "Margin to boiling at the stove's outlet",
    "A full store at {store_top} and a rise of {charge_rise} at the peak; the outlet as high as the store's top.",
)

ADVICE = (
    Advice(
        "stop",
        "outlet-boils",
        "outlet_margin <= 0 and store_top < boiling",
        "The stove's outlet boils at the peak.",
        "It reaches {outlet_at_peak} with a full store, and water boils at {boiling}. Charge the store cooler or let "
        "more water flow.",
        "iapws-if97",
    ),
    Advice(
        "caution",
        "outlet-margin",
        "outlet_margin > 0 and outlet_margin < boiling_caution",
        "Little margin at the stove's outlet.",
        "{outlet_margin} are left at the peak; keep {boiling_caution}. A smaller rise (more flow) or a cooler store "
        "helps.",
        "boiling-caution",
    ),
)
