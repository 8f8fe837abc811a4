"""The nearest of a choice's options to a point on the globe, for options that lie somewhere."""

import math
import re
from typing import NamedTuple

from calc.engine.fields import Field, Option
from calc.units import System, grouped, round_to, unit_named, with_unit

EARTH_RADIUS = 6_371_009.0  # m, the mean radius
_DEGREES = r"([+\-−]?\d{1,3}(?:\.\d+)?)(?:\s*°)?\s*"
_POINT = re.compile(rf"{_DEGREES}([ns]?)(?:\s*[,;]\s*|(?<=[\sns])\s*){_DEGREES}([ew]?)", re.IGNORECASE)


class Near(NamedTuple):
    """The nearest option and how far away it lies, in m."""

    option: Option
    distance: float

    def said(self, system: System) -> str:
        """The option with its distance as a reader of `system` measures it."""
        unit = unit_named("mi" if system == "us" else "km", "length")
        return f"{self.option.label}, {with_unit(grouped(round_to(unit.from_si(self.distance), 2), system), unit)} away"


def nearest(field: Field, text: str) -> Near | None:
    """The option that lies nearest to a latitude and longitude such as "44.5, −73.2" or "44.5 N 73.2 W"."""
    typed = _POINT.fullmatch(text.strip())
    if not typed:
        return None
    latitude = _degrees(typed[1], typed[2])
    longitude = _degrees(typed[3], typed[4])
    if abs(latitude) > 90 or abs(longitude) > 180:
        return None
    lying = [
        Near(option, great_circle(latitude, longitude, *option.at)) for option in field.options if option.at is not None
    ]
    return min(lying, key=lambda near: near.distance, default=None)


def great_circle(latitude: float, longitude: float, other_latitude: float, other_longitude: float) -> float:
    """Distance over the globe between two points given in degrees, m, by the haversine formula."""
    here, there = math.radians(latitude), math.radians(other_latitude)
    across = math.radians(other_longitude - longitude)
    half = math.sin((there - here) / 2) ** 2 + math.cos(here) * math.cos(there) * math.sin(across / 2) ** 2
    return 2 * EARTH_RADIUS * math.asin(math.sqrt(min(1.0, half)))


def _degrees(number: str, side: str) -> float:
    """Degrees north or east; the letters S and W turn the sign."""
    degrees = float(number.replace("−", "-"))
    return -abs(degrees) if side.casefold() in ("s", "w") else degrees
