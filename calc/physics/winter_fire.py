"""A fire by habit in the winter's run: whole loads, lit by a person at certain hours, each with its peak."""

from typing import NamedTuple


class Habit(NamedTuple):
    """When fires are lit: hours of the day, most loads a day, and whether the taps alone are worth a fire.

    Hours count from 0 to 23; a first hour later than the last one means over midnight.
    """

    first_hour: int
    last_hour: int
    loads_a_day: int
    all_year: bool

    def hours(self) -> tuple[bool, ...]:
        """For each hour of the day whether somebody would light a fire as it begins."""
        first, last = self.first_hour, self.last_hour
        return tuple(
            (first <= hour <= last) if first <= last else (hour >= first or hour <= last) for hour in range(24)
        )


class Burn(NamedTuple):
    """One load: time in s, mean heat to water and to room in W, and how high the peak stands over the mean, from 1 up.

    The curve rises in a straight line, stands at its peak, and falls as it rose; with a peak of 2 it only rises and
    falls, and with a higher one it does so in less than the whole time. Water and room take their shares of one curve.
    """

    time: float
    water: float
    room: float
    peak: float

    def burnt(self, part: float) -> float:
        """Share of the load's heat given off when this part of its time is over, 0 to 1."""
        if part <= 0 or part >= 1:
            return 0.0 if part <= 0 else 1.0
        part, peak = (part, self.peak) if self.peak <= 2 else (min(1.0, part * self.peak / 2), 2.0)
        slope = 1 - 1 / peak  # the part of the time in which it rises, and in which it falls
        if not slope:
            return part
        if part < slope:
            return peak * part * part / (2 * slope)
        if part > 1 - slope:
            return 1 - peak * (1 - part) ** 2 / (2 * slope)
        return peak * (part - slope / 2)
