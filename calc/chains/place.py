"""What a place says of its winter: filled in from a typical year, open to be changed by who knows better."""

import math
from collections.abc import Callable

from calc.engine.declare import Typical
from calc.tables.places import BASES, COLDER, COLDEST, PLACES, Place
from calc.units import FOOT
from calc.vocabulary import ALTITUDE, AVERAGE_OUTDOOR, DEGREE_DAYS, DESIGN_OUTDOOR, HEATING_DAYS, PLACE


def _texts(say: Callable[[Place], str]) -> dict[str, str]:
    return {key: say(place) for key, place in PLACES.items()}


def _fahrenheit(celsius: float) -> str:
    """A temperature in whole degrees Fahrenheit, never warmer than it is."""
    return f"{math.floor(celsius * 1.8 + 32)} °F"


DESIGN_OUTDOOR_HERE = DESIGN_OUTDOOR.but(
    typical=Typical(
        _texts(lambda place: _fahrenheit(place.design_outdoor)),
        "typical-year-design",
        _texts(lambda place: _fahrenheit(place.design_outdoor + COLDER - COLDEST)),
        _texts(lambda place: _fahrenheit(place.design_outdoor + COLDER)),
        "The code office or your dealer; this one is provisional.",
        on="place",
    )
)
DEGREE_DAYS_HERE = DEGREE_DAYS.but(
    typical=Typical(
        _texts(lambda place: f"{place.degree_days[BASES[0]]:g} °F·day"),
        "typical-year-place",
        _texts(lambda place: f"{0.9 * place.degree_days[BASES[0]]:.4g} °F·day"),
        _texts(lambda place: f"{1.05 * place.degree_days[BASES[0]]:.5g} °F·day"),
        "A weather service or your fuel dealer, for base 65 °F (18 °C).",
        on="place",
    )
)
HEATING_DAYS_HERE = HEATING_DAYS.but(
    typical=Typical(
        _texts(lambda place: f"{place.heating_days} days"),
        "typical-year-place",
        ask="A weather service; nights count.",
        on="place",
    )
)
AVERAGE_OUTDOOR_HERE = AVERAGE_OUTDOOR.but(
    typical=Typical(
        _texts(lambda place: f"{place.mean_while_heating:.0f} °F"),
        "typical-year-place",
        ask="A weather service; the months you heat, averaged.",
        on="place",
    )
)
ALTITUDE_HERE = ALTITUDE.but(
    typical=Typical(
        _texts(lambda place: f"{round(place.altitude / FOOT, -1):g} ft"),
        "typical-year-place",
        ask="Any map of your town tells.",
        on="place",
    )
)

PLACE_HERE = PLACE.but(
    typical=Typical(
        "buffalo-ny", "typical-year-place", ask="A map: the nearest place whose winter you would call yours."
    )
)

CLIMATE = (DESIGN_OUTDOOR_HERE, DEGREE_DAYS_HERE, HEATING_DAYS_HERE, AVERAGE_OUTDOOR_HERE, ALTITUDE_HERE)
FIELDS = (PLACE_HERE, *CLIMATE)
