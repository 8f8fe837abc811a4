"""Heat of wood on the two bases: a sum by hand with heating values that a forest service prints."""

from calc.physics import fuels
from comparisons.check import Check, Published

CHECKS = [
    Check(
        topic="Wood on the lower basis",
        where="a cord of 20 MMBtu at 20 % moisture, 6,880 and 6,219 Btu/lb",
        law=fuels.heat_on_lower_basis,
        given={"heat_in_fuel": "20 MMBtu", "lower_value": "6219 Btu/lb", "higher_value": "6880 Btu/lb"},
        theirs="18.08 MMBtu",
        within="0.05 %",
        because="four figures by hand",
        source=Published(
            "By hand",
            "USDA Forest Service, Forest Products Laboratory: Heating values of wood at 20 % moisture, wet basis; the sum 20 x 6219 / 6880 by hand",
            "2004",
            "Fuel Value Calculator, 8,600 Btu/lb oven dry, 6 % hydrogen",
            "own arithmetic",
        ),
    ),
]
