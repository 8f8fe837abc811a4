"""The reader's own weather: an EPW file, or a table of times and temperatures, becomes a year of hours.

The file is untrusted. What it cannot be read as is told in one sentence (NoYear); what was mended is told as well.
"""

import csv
import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from calc.physics.winter_weather import LARGEST_FILE, NoYear, written
from calc.tables.year import HOURS, MONTH_DAYS, MONTH_NAMES

MOST_ROWS = 120_000
LONGEST_GAP = 24  # hours in a row that are filled in from their neighbours
MOST_MISSING = 240  # hours in all
COLDEST_MEAN, WARMEST_MEAN = -30.0, 35.0  # °C, of a whole year anywhere that people heat

_SHOWN = 40  # characters of the reader's file that a sentence repeats
_TIME = r"(?:[ T]+(?P<hour>\d{1,2})(?::(?P<minute>\d{2})(?::\d{2}(?:\.\d+)?)?)?\s*(?P<half>[AaPp]\.?[Mm]\.?)?)?"
_DATES = tuple(
    re.compile(rf"\s*{date}{_TIME}\s*(?:Z|UTC|GMT|[+-]\d\d:?\d\d)?\s*$")
    for date in (
        r"(?P<year>\d{4})-(?P<month>\d{1,2})-(?P<day>\d{1,2})",
        r"(?P<year>\d{4})/(?P<month>\d{1,2})/(?P<day>\d{1,2})",
        r"(?P<day>\d{1,2})\.(?P<month>\d{1,2})\.(?P<year>\d{2,4})",
        r"(?P<first>\d{1,2})/(?P<second>\d{1,2})/(?P<year>\d{2,4})",
    )
)
_TEMPERATURE = re.compile(r"temp|dry.?bulb|\bt2m\b", re.IGNORECASE)
_NOT_THIS = re.compile(r"dew|wet.?bulb|feels|apparent|chill|soil|water|indoor", re.IGNORECASE)
_FAHRENHEIT = re.compile(r"°\s*F\b|\(F\)|\bdeg\.?\s*F\b|fahrenheit|_f$", re.IGNORECASE)
_CELSIUS = re.compile(r"°\s*C\b|\(C\)|\bdeg\.?\s*C\b|celsius|centigrade|_c$", re.IGNORECASE)


class FileYear(NamedTuple):
    """A year from a file, as the text in which a year travels, and in sentences what was read and what was mended."""

    year: str
    said: tuple[str, ...]


class _Reading(NamedTuple):
    """One temperature (°C) with its year and the place of its hour among those of a year."""

    year: int
    hour: int
    celsius: float


def read_file(text: str, degrees: str = "") -> FileYear:
    """The year in a file. `degrees` is "C" or "F" where the reader names the unit; an EPW file is always in °C.

    Raises NoYear, with a sentence, for what holds no year.
    """
    if len(text) > LARGEST_FILE:
        raise NoYear(f"The file is larger than {LARGEST_FILE // 1_000_000} MB: cut it down to one year of hours.")
    text = text.removeprefix("\ufeff")
    if not text.strip():
        raise NoYear("The file is empty.")
    if "\0" in text:
        raise NoYear("This is no text: choose an EPW file, or a CSV file with a time and a temperature in each row.")
    is_epw = text.startswith("LOCATION,")
    try:
        readings, whose = _of_epw(text) if is_epw else _of_table(text, degrees)
    except csv.Error:
        raise NoYear("The file cannot be read as a table: save it as CSV, and try again.") from None
    hours, filled, leap = _hours(readings)
    mean = sum(hours) / HOURS
    if not COLDEST_MEAN <= mean <= WARMEST_MEAN:
        hint = " Are they in °F? Say so beside the file." if mean > WARMEST_MEAN else ""
        raise NoYear(f"The mean of the year would be {mean:.0f} °C, which is no outdoor temperature.{hint}")
    said = [f"Read {whose}: a year of hours, {min(hours):.0f} to {max(hours):.0f} °C."]
    if leap:
        said.append("29 February is left out: the year of the run has none.")
    if filled:
        said.append(
            f"{filled} {'hour was' if filled == 1 else 'hours were'} missing, and filled in from the neighbours."
        )
    return FileYear(written([round(10 * hour) for hour in hours]), tuple(said))


# ---- the two forms of file -----------------------------------------------------------------------------------------


def _of_epw(text: str) -> tuple[list[_Reading], str]:
    """The readings of an EPW file, whose hours end at 1 to 24, and its place."""
    rows = _rows(text, ",")
    head = next(rows)
    readings = []
    for number, row in enumerate(rows, 2):
        if not row or not row[0].strip().isdigit():
            continue  # the lines of its head
        try:
            year, month, day, ending = (int(cell) for cell in row[:4])
            celsius = float(row[6])
        except (ValueError, IndexError):
            raise NoYear(f"Line {number} is no hour of an EPW file: “{','.join(row)[:_SHOWN]}”.") from None
        if -90 < celsius < 99:  # 99.9 stands for what is missing
            readings.append(_reading(year, month, day, ending - 1, celsius, number))
    if not readings:
        raise NoYear("The EPW file holds no hours.")
    return readings, f"the EPW file of {head[1][:_SHOWN] if len(head) > 1 and head[1] else 'a place without a name'}"


def _of_table(text: str, degrees: str) -> tuple[list[_Reading], str]:
    """The readings of a table of times and temperatures, and which of its columns they stood in."""
    sample = next(line for line in text.splitlines() if line.strip() and not line.startswith("#"))
    mark = max(";\t,", key=sample.count)
    rows = [(number, row) for number, row in enumerate(_rows(text, mark), 1) if row and not row[0].startswith("#")]
    first = next((place for place, (_, row) in enumerate(rows) if _when_at(row) is not None), None)
    if first is None:
        raise NoYear(
            f"No column holds a date and a time, such as 2025-01-31 14:00; the first row is “{sample[:_SHOWN]}”."
        )
    when = _when_at(rows[first][1])
    assert when is not None
    heads = [cell.strip() for cell in rows[first - 1][1]] if first else []
    at = _temperature_at(heads, rows[first][1], when)
    is_fahrenheit = _is_fahrenheit(heads[at] if at < len(heads) else "", degrees)
    month_first = _month_first([row[when[0]] for _, row in rows[first:] if len(row) > when[0]])
    readings = []
    for number, row in rows[first:]:
        value = _number(row[at], mark) if at < len(row) else None
        if value is None:
            continue
        celsius = (value - 32) / 1.8 if is_fahrenheit else value
        readings.append(
            _dated(" ".join(row[place].strip() for place in when if place < len(row)), month_first, celsius, number)
        )
    if not readings:
        raise NoYear("The column of temperatures holds no numbers.")
    column = f"the column “{heads[at][:_SHOWN]}”" if at < len(heads) else f"column {at + 1}"
    return readings, f"{column} in {'°F' if is_fahrenheit else '°C'}"


def _rows(text: str, mark: str) -> Iterator[list[str]]:
    for number, row in enumerate(csv.reader(text.splitlines(), delimiter=mark)):
        if number >= MOST_ROWS:
            raise NoYear(f"The file has more than {MOST_ROWS:,} rows: cut it down to one year.")
        yield row


# ---- columns -------------------------------------------------------------------------------------------------------


def _when_at(row: Sequence[str]) -> tuple[int, ...] | None:
    """The places of the date and its time in a row: one cell, or two beside each other."""
    for place, cell in enumerate(row):
        if any(form.match(cell) for form in _DATES):
            beside = row[place + 1].strip() if place + 1 < len(row) else ""
            alone = ":" in cell or not re.match(r"\d{1,2}:\d{2}", beside)
            return (place,) if alone else (place, place + 1)
    return None


def _temperature_at(heads: Sequence[str], row: Sequence[str], when: tuple[int, ...]) -> int:
    """The place of the temperatures: the column that is called so, or the only one beside the time."""
    named = [place for place, head in enumerate(heads) if _TEMPERATURE.search(head) and not _NOT_THIS.search(head)]
    if named:
        return named[0]
    others = [place for place in range(len(row)) if place not in when]
    if len(others) == 1:
        return others[0]
    seen = ", ".join(heads)[: 2 * _SHOWN] if heads else "no names at all"
    raise NoYear(f"No column is called temperature. The file has {seen}: name the column “temperature”, and try again.")


def _is_fahrenheit(head: str, degrees: str) -> bool:
    if degrees in ("C", "F"):
        return degrees == "F"
    if _FAHRENHEIT.search(head) or _CELSIUS.search(head):
        return bool(_FAHRENHEIT.search(head))
    raise NoYear("The file does not say whether its temperatures are in °C or °F: choose one beside the file.")


def _number(cell: str, mark: str) -> float | None:
    text = cell.strip()
    if mark != ",":
        text = text.replace(",", ".")
    try:
        value = float(text)
    except ValueError:
        return None
    return value if -120 < value < 140 else None


# ---- times ---------------------------------------------------------------------------------------------------------


def _month_first(cells: Sequence[str]) -> bool:
    """Whether 3/4/2025 is the 4th of March: so it is unless a first number is no month."""
    firsts = (re.match(r"\s*(\d{1,2})/\d{1,2}/", cell) for cell in cells)
    return not any(first and int(first[1]) > 12 for first in firsts)


def _dated(text: str, month_first: bool, celsius: float, line: int) -> _Reading:
    match = next((match for form in _DATES if (match := form.match(text))), None)
    if match is None:
        raise NoYear(f"Line {line} has no date and time: “{text[:_SHOWN]}”.")
    part = match.groupdict()
    day, month = part.get("day"), part.get("month")
    if month is None:
        month, day = (part["first"], part["second"]) if month_first else (part["second"], part["first"])
    hour = int(part["hour"] or 0)
    if part["half"]:
        hour = hour % 12 + (12 if part["half"][0] in "Pp" else 0)
    return _reading(int(part["year"]), int(month), int(str(day)), hour, celsius, line)


def _reading(year: int, month: int, day: int, hour: int, celsius: float, line: int) -> _Reading:
    """A reading in its place; that of 29 February has none, -1. Midnight may be called 24."""
    last = 29 if month == 2 else MONTH_DAYS[month - 1] if 1 <= month <= 12 else 0
    if not (1 <= day <= last and 0 <= hour <= 24):
        raise NoYear(f"Line {line} has a date or an hour that does not exist: day {day}, month {month}, hour {hour}.")
    if (month, day) == (2, 29):
        return _Reading(year, -1, celsius)
    return _Reading(year, (24 * (sum(MONTH_DAYS[: month - 1]) + day - 1) + hour) % HOURS, celsius)


def _hours(readings: Sequence[_Reading]) -> tuple[list[float], int, bool]:
    """The mean of each hour in °C, how many were filled in, and whether there was a leap day.

    Of several years each hour takes the last that has it.
    """
    latest: dict[int, tuple[int, float, int]] = {}
    for reading in readings:
        if reading.hour < 0:
            continue
        year, total, count = latest.get(reading.hour, (reading.year, 0.0, 0))
        if reading.year > year:
            total, count = 0.0, 0
        if reading.year >= year:
            latest[reading.hour] = (reading.year, total + reading.celsius, count + 1)
    if len(latest) < HOURS - MOST_MISSING:
        raise NoYear(f"The file has {len(latest):,} of the {HOURS:,} hours of a year: {_first_gap(latest)}.")
    known = [latest[hour][1] / latest[hour][2] if hour in latest else None for hour in range(HOURS)]
    return _filled(known), HOURS - len(latest), any(reading.hour < 0 for reading in readings)


def _filled(known: Sequence[float | None]) -> list[float]:
    """The hours with each gap bridged by a straight line; the year goes round."""
    there = [hour for hour, value in enumerate(known) if value is not None]
    filled = [value or 0.0 for value in known]
    for before, after in zip(there, [*there[1:], there[0] + HOURS], strict=True):
        gap = after - before - 1
        if gap > LONGEST_GAP:
            raise NoYear(f"From {_date(before + 1)} on {gap} hours are missing: a gap may have {LONGEST_GAP}.")
        for step in range(1, gap + 1):
            share = step / (gap + 1)
            filled[(before + step) % HOURS] = (1 - share) * filled[before] + share * filled[after % HOURS]
    return filled


def _first_gap(latest: dict[int, tuple[int, float, int]]) -> str:
    missing = next(hour for hour in range(HOURS) if hour not in latest)
    return f"the first that is missing is on {_date(missing)}"


def _date(hour: int) -> str:
    day = hour % HOURS // 24
    month = next(month for month in range(12) if day < sum(MONTH_DAYS[: month + 1]))
    return f"{day - sum(MONTH_DAYS[:month]) + 1} {MONTH_NAMES[month]}"
