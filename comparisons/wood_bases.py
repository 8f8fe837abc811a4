"""Wood on the two bases: sums by hand with heating values that a forest service prints."""

from calc.physics import wood
from comparisons.check import Check, Published

CHECKS = [
    Check(
        topic="An efficiency on the lower basis",
        where="75 % at 20 % moisture, 6,880 and 6,219 Btu/lb",
        law=wood.efficiency_on_higher_value,
        given={"efficiency": "75 %", "lower_value": "6219 Btu/lb", "higher_value": "6880 Btu/lb"},
        theirs="67.79 %",
        within="0.05 %",
        because="four figures by hand",
        source=Published(
            "By hand",
            "USDA Forest Service, Forest Products Laboratory: Heating values of wood at 20 % moisture, wet basis; the sum 75 x 6219 / 6880 by hand",
            "2004",
            "Fuel Value Calculator, 8,600 Btu/lb oven dry, 6 % hydrogen",
            "own arithmetic",
        ),
    ),
]
