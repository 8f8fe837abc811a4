"""A year of fires at a glance: one row a month from July to June, one bar a day, as high as loads were lit on it."""

from typing import Any

from calc.engine.declare import Picture
from calc.engine.sheet import Sheet
from calc.engine.values import record
from calc.tables.year import MONTH_DAYS, MONTH_NAMES
from calc.units import System, show, shown_unit

LEFT, TOP, WIDE, ROW, HIGH = 42.0, 26.0, 9.6, 22.0, 17.0  # the drawing's own units


def parts(sheet: Sheet, wanted: Picture) -> dict[str, Any]:
    """Rows of bars with the count of each month, marks of cold days, and the coldest day told."""
    year = record(sheet.course.steps, wanted.values["fires"], sheet.values)
    if year is None:
        return {"rows": (), "told": "", "most": 0, "loads": 0}
    most = max(year.most_loads, 1)
    rows: list[dict[str, Any]] = []
    for place in range(12):
        month = (6 + place) % 12
        first = sum(MONTH_DAYS[:month])
        days = [day for day in year.days if first <= day.day < first + MONTH_DAYS[month]]
        bars = []
        for at, day in enumerate(days):
            high = round(HIGH * len(day.lit) / most, 1)
            foot = TOP + place * ROW + HIGH
            x, y = round(LEFT + at * WIDE, 1), round(foot - high, 1)
            bars.append({"x": x, "y": y, "high": high, "foot": foot, "cold": day.cold})
        rows.append({"name": MONTH_NAMES[month][:3], "bars": bars, "loads": sum(len(day.lit) for day in days)})
    return {
        "rows": rows,
        "told": _told(year, sheet.system),
        "most": year.most_loads,
        "loads": year.loads,
        "any_cold": any(day.cold for day in year.days),
    }


def _told(year: Any, system: System) -> str:
    """The coldest day in words."""
    day = min(year.days, key=lambda day: day.outdoor)
    month = next(month for month in range(12) if day.day < sum(MONTH_DAYS[: month + 1]))
    date = f"{day.day - sum(MONTH_DAYS[:month]) + 1} {MONTH_NAMES[month]}"
    degrees = shown_unit("temperature", system)

    def at(value: float) -> str:
        return show(value, degrees, system, 2)

    hours = [_clock(hour, system) for hour in day.lit]
    lit = f"you light it at {_listed(hours)}" if hours else "no load is lit"
    return (
        f"The coldest day is {date}, {at(day.outdoor)} on average: {lit}, the store is at {at(day.store)} on average, "
        f"and the rooms fall to {at(day.coldest_room)}."
    )


def _clock(hour: int, system: System) -> str:
    if system == "si":
        return f"{hour}:00"
    return f"{hour % 12 or 12} {'am' if hour < 12 else 'pm'}"


def _listed(words: list[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"
