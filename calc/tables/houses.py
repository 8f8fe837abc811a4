"""Heat that houses lose for each floor area and degree, by how they are built: a first guess, to be replaced by a bill.

Origin: one two-storey house of 1,800 ft², worked out with U-values of the wall, attic and window levels that the US
Department of Energy's stock model gives houses of each age, and with air changes from blower-door figures divided by
20. The U-values are from memory; low and high are 15 % on the envelope and the spread of the blower-door figures. No
rights are claimed in these numbers.
"""

from typing import NamedTuple

from calc.units import BTU, FAHRENHEIT_DEGREE, FOOT, HOUR

_SI = BTU / HOUR / FAHRENHEIT_DEGREE / FOOT**2
_EXAMPLE_AREA = 1800  # ft²


class HouseClass(NamedTuple):
    """A kind of house: its loss for each floor area and degree in W/(m²·K), typical and the ends of its band."""

    key: str
    label: str
    typical: float
    low: float
    high: float


def _house(key: str, label: str, typical: float, low: float, high: float) -> HouseClass:
    """One row; the numbers are Btu/(h·°F) of the whole example house."""
    return HouseClass(key, label, *(number / _EXAMPLE_AREA * _SI for number in (typical, low, high)))


HOUSE_CLASSES: dict[str, HouseClass] = {
    house.key: house
    for house in (
        _house("never-insulated", "before 1950, never insulated", 1346, 1117, 1575),
        _house("attic-only", "before 1950, attic insulated, storm windows", 865, 708, 1035),
        _house("walls-blown", "before 1950, walls filled and sealed", 512, 411, 626),
        _house("1950-1969", "1950 to 1969, as built", 702, 578, 852),
        _house("1970s", "1970s, as built", 609, 497, 747),
        _house("1980s", "1980s, as built", 516, 428, 631),
        _house("1990s", "1990s, as built", 429, 345, 527),
        _house("2000s", "2000s, as built", 380, 302, 452),
        _house("recent", "built to a recent energy code", 271, 223, 319),
        _house("very-low", "very low energy", 142, 119, 171),
    )
}
