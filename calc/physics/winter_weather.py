"""The weather of a winter's run: hourly outdoor temperatures of a typical year, and how they are told and shaped.

A place's year travels as text: 365 lines of a day each, 24 differences from hour to hour in tenths of a degree Celsius,
the first one from 0, below lines that begin with # and say where it comes from.
Whoever lets the reader choose a place brings that text here first, since nothing in `calc` reads files: `keep` what has
arrived, or name a function that fetches it.
"""

from collections.abc import Callable, Sequence
from functools import lru_cache
from itertools import pairwise

from calc.law import find_root
from calc.tables.year import HOURS

_FREEZING = 273.15
_COLDEST_SHARE = 0.01  # of all hours are colder than the design temperature
# Characters of a reader's file: EPW has about 1.7 million, a year of readings every five minutes 3 million.
LARGEST_FILE = 6_000_000
FILE = "file"  # stands for a place where the year is that of the reader's own file
_texts: dict[str, str] = {}
_fetch: list[Callable[[str], str]] = []


class NotHere(LookupError):
    """The weather of a place has not been brought yet; `place` says whose."""

    def __init__(self, place: str) -> None:
        super().__init__(f"the weather of {place} is not here")
        self.place = place


class NoYear(ValueError):
    """A text that is no year of weather; the sentence says what is wrong."""


def keep(place: str, text: str) -> None:
    """Keep a place's year, as text, for the runs that will ask for it. Raises NoYear if it is none."""
    _read(text)
    _texts[place] = text


def forget(place: str) -> None:
    """No longer keep a place's year."""
    _texts.pop(place, None)


def fetch_with(fetch: Callable[[str], str]) -> None:
    """Name the function that brings a place's text when it is first asked for; it may raise LookupError."""
    _fetch[:] = [fetch]


def hours_of(place: str) -> tuple[float, ...]:
    """The 8760 outdoor temperatures of a place's year, K. Raises NotHere before its text was brought."""
    if place not in _texts:
        if not _fetch or place == FILE:
            raise NotHere(place)
        keep(place, _fetch[0](place))
    return _read(_texts[place])


def written(tenths: Sequence[int]) -> str:
    """A year in tenths of a degree Celsius as the text in which it travels."""
    steps = [tenths[0], *(after - before for before, after in pairwise(tenths))]
    return "\n".join(" ".join(map(str, steps[day : day + 24])) for day in range(0, len(steps), 24)) + "\n"


@lru_cache(maxsize=4)
def _read(text: str) -> tuple[float, ...]:
    words = " ".join(line for line in text.splitlines() if not line.startswith("#")).split()
    if len(words) != HOURS:
        raise NoYear(f"A year has {HOURS} hours, and this has {len(words)}.")
    level, hours = 0, []
    try:
        for word in words:
            level += int(word)
            hours.append(_FREEZING + level / 10)
    except ValueError:
        raise NoYear("It holds something that is no number.") from None
    if not all(173 < outdoor < 333 for outdoor in hours):
        raise NoYear("Its temperatures leave what happens outdoors.")
    return tuple(hours)


def degree_days(hours: Sequence[float], base: float) -> float:
    """Degree-days of a year, K·day, below `base` (K), by the mean of each day."""
    means = (sum(hours[first : first + 24]) / 24 for first in range(0, len(hours), 24))
    return sum(max(base - mean, 0.0) for mean in means)


def design_temperature(hours: Sequence[float]) -> float:
    """The temperature in K that 1 % of all hours fall short of."""
    return sorted(hours)[int(_COLDEST_SHARE * len(hours))]


@lru_cache(maxsize=8)
def shaped(hours: tuple[float, ...], base: float, wanted_degree_days: float, design: float) -> tuple[float, ...]:
    """A year stretched and moved so that it has these degree-days (K·day below `base`) and this design temperature (K).

    Every hour keeps its rank: the new temperature is a straight line in the old one. Raises NoYear where no such line
    rises: the degree-days and the design temperature belong to no one place.
    """
    pivot = design_temperature(hours)

    def line(stretch: float) -> list[float]:
        return [design + stretch * (outdoor - pivot) for outdoor in hours]

    stretch = find_root(lambda guess: degree_days(line(guess), base) - wanted_degree_days, 0.2, 3.0)
    if stretch is None:
        raise NoYear("These degree-days and this design temperature do not belong to one place.")
    return tuple(line(stretch))
