"""The table of places, what a worksheet takes from it, and the nearest of them to a point on the globe."""

import itertools
import math

import pytest

from calc.chains import place as here
from calc.engine.fields import quantity
from calc.engine.nearest import great_circle, nearest
from calc.engine.typed import Reader, Typed
from calc.sources import SOURCES
from calc.tables.places import BASES, PLACES, WINTERS
from calc.vocabulary import PLACE


def test_every_place_is_whole() -> None:
    assert len(PLACES) == 31
    for place in PLACES.values():
        assert place.source in SOURCES
        falling = [place.degree_days[base] for base in BASES]
        assert falling == sorted(falling, reverse=True), place.key
        # No day lacks more than the base less the coldest hour, so the mean day that heats lies above the cold.
        assert place.cold * 1.8 + 32 < place.mean_while_heating < BASES[0], place.key
        # A base 5 °F lower takes at most 5 degree-days off each day that heats.
        assert all(0 < high - low <= 5 * place.heating_days for high, low in itertools.pairwise(falling))


def test_places_fill_in_what_a_worksheet_asks() -> None:
    for field in here.FIELDS[1:]:
        assert field.typical
        assert set(field.typical.text) == set(PLACES)
    # Burlington's 99 % value is -18.3 °C; less 3 K that is -21.3 °C or -6.3 °F, and the whole degree below is -7 °F.
    typical = here.DESIGN_OUTDOOR_HERE.typical
    assert typical
    assert typical.text["burlington-vt"] == "-7 °F"
    assert quantity(typical.text["burlington-vt"], "temperature") <= 273.15 - 18.3 - 3


def test_great_circles_are_those_of_the_globe() -> None:
    # A quarter and a half of the way round a sphere of 6,371.009 km.
    assert great_circle(0, 0, 90, 0) == pytest.approx(math.pi / 2 * 6_371_009)
    assert great_circle(0, 0, 0, 180) == pytest.approx(math.pi * 6_371_009)
    # Nashville to Los Angeles, 36.12 N 86.67 W to 33.94 N 118.40 W: 2,887.26 km with a radius of 6,372.8 km, the figure
    # that programs in many languages print for it.
    assert great_circle(36.12, -86.67, 33.94, -118.40) == pytest.approx(2_887_260 * 6371.009 / 6372.8, rel=1e-5)


@pytest.mark.parametrize("text", ["44.5, -73.2", "44.5 -73.2", "44.5 N 73.2 W", "44.5°N, 73.2°W", "44.5; −73.2"])
def test_a_point_finds_its_nearest_place(text: str) -> None:
    value = Reader().read(PLACE, Typed(text)).value
    assert value
    assert value.si == "burlington-vt"
    assert value.nearest.startswith("Burlington, Vermont (New England), ")
    assert value.nearest.endswith("mi away")


def test_the_distance_is_said_in_the_readers_units() -> None:
    miles, kilometers = (Reader().read(PLACE, Typed("43.6, -72.3", system)).value for system in ("us", "si"))
    assert miles
    assert kilometers
    # 43.6 N 72.3 W to 44.47 N 73.15 W: 0.87° of latitude are 96.7 km, 0.85° of longitude there 68.1 km; 118 km or 73 mi.
    assert miles.nearest.endswith("73\u00a0mi away")
    assert kilometers.nearest.endswith("120\u00a0km away")


@pytest.mark.parametrize("text", ["95, 10", "44.5, -200", "44.5", "north 44", "44.5, -73.2, 3"])
def test_no_point_is_no_place(text: str) -> None:
    assert nearest(PLACE, text) is None
    reason = Reader().read(PLACE, Typed(text)).reason
    assert "latitude and longitude like 44.5, -73.2" in reason


def test_places_are_found_by_name_and_by_winter() -> None:
    def worked(text: str) -> object:
        value = Reader().read(PLACE, Typed(text)).value
        return value and value.si

    assert worked("burlington") == "burlington-vt"
    assert worked("Jackson Hole") == "jackson-wy"
    for winter in WINTERS:
        assert worked(winter.words) == winter.place
