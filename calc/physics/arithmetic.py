"""Arithmetic that several subjects share, where the shown working says the same in each of them."""

from calc.law import Metre, SquareMetre, law


@law("pi / 4 * diameter ** 2", source="definition")
def circle_area(diameter: Metre) -> SquareMetre:
    """Area of a circle of this diameter (m), m²: a bore, a log, the footprint of a round tank."""
