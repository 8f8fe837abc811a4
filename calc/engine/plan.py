"""The reader's plan: numbers that several worksheets share, kept as a small text file that a person can read.

    Stoke and Store plan 1
    store_volume = 500 gal | typed
    design_load = 30500 Btu/h | computed by house-load
    end

A plan file is untrusted like a link: it holds keys, numbers with units, choices and who gave them; whatever else is in
it is named in a sentence and left out.
"""

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from calc.engine.declare import Field, Worksheet
from calc.engine.read import ORIGINS, Typed
from calc.engine.run import Sheet, compute
from calc.law import OutOfRange
from calc.units import UnitError, read_quantity, round_to, unit_named

FIRST_LINE = "Stoke and Store plan"
VERSION = 1
LARGEST_FILE = 200_000  # characters; a full plan has some ten thousand
MOST_VALUES = 500


@dataclass(frozen=True)
class Entry:
    """One value of the plan: its text with unit, who gave it, and the worksheet that computed it if one did."""

    text: str
    origin: str
    worksheet: str = ""


@dataclass(frozen=True)
class Opened:
    """What a plan file holds, and a sentence for everything in it that could not be used."""

    entries: dict[str, Entry]
    problems: tuple[str, ...]


def fields_by_key(worksheets: Iterable[Worksheet]) -> dict[str, list[Field]]:
    """Every field that a plan may hold; a key returns with other kinds only where a fuel decides how it is bought."""
    found: dict[str, list[Field]] = {}
    for worksheet in worksheets:
        for one in worksheet.all_fields():
            found.setdefault(one.key, []).append(one)
    return found


def write(entries: Mapping[str, Entry]) -> str:
    """The plan as text."""
    lines = [f"{FIRST_LINE} {VERSION}"]
    for key, entry in entries.items():
        who = f"{entry.origin} by {entry.worksheet}" if entry.worksheet else entry.origin
        lines.append(f"{key} = {entry.text} | {who}")
    return "\n".join([*lines, "end", ""])


def read(text: str, worksheets: Iterable[Worksheet]) -> Opened:
    """Read a plan file, as text or as the JSON that the command line prints."""
    if len(text) > LARGEST_FILE:
        return Opened({}, ("This file is far too large to be a plan of ours; nothing was taken from it.",))
    text = text.removeprefix("\ufeff").strip()
    pairs, problems = _from_json(text) if text.startswith("{") else _from_lines(text)
    if len(pairs) > MOST_VALUES:
        return Opened({}, ("This file holds far more values than a plan has; nothing was taken from it.",))
    known = fields_by_key(worksheets)
    entries: dict[str, Entry] = {}
    unknown: list[str] = []
    for key, value, who in pairs:
        if key not in known:
            unknown.append(_short(key))
            continue
        if key in entries:
            problems.append(f"{known[key][0].label} stands twice in this plan; the first is used.")
            continue
        wrong = _wrong(known[key], value)
        if wrong:
            problems.append(f"{known[key][0].label} in this plan {wrong}; it was left out.")
            continue
        origin, _, worksheet = who.partition(" by ")
        entries[key] = Entry(
            value, origin if origin in ORIGINS else "typed", worksheet if worksheet.replace("-", "").isalnum() else ""
        )
    if unknown:
        more = f" and {len(unknown) - 5} more" if len(unknown) > 5 else ""
        problems.append(f"This plan holds what no worksheet asks, and it was left out: {', '.join(unknown[:5])}{more}.")
    return Opened(entries, tuple(problems))


def _from_lines(text: str) -> tuple[list[tuple[str, str, str]], list[str]]:
    lines = text.splitlines()
    if not lines or not lines[0].startswith(FIRST_LINE):
        return [], ["This file is not a plan of ours: it does not begin with “Stoke and Store plan”."]
    problems = []
    version = lines[0].removeprefix(FIRST_LINE).strip()
    if version != str(VERSION):
        problems.append("This plan comes from another version of this site; what can be read is used.")
    if lines[-1].strip() != "end":
        problems.append("This plan was cut off: its last lines may be missing.")
    pairs = []
    for line in lines[1:]:
        line = line.strip()
        if line in ("", "end") or line.startswith("#"):
            continue
        key, mark, rest = line.partition("=")
        if not mark:
            problems.append(f"A line of this plan cannot be read: “{_short(line)}”.")
            continue
        value, _, who = rest.partition("|")
        pairs.append((key.strip(), value.strip(), who.strip() or "typed"))
    return pairs, problems[:20]


def _from_json(text: str) -> tuple[list[tuple[str, str, str]], list[str]]:
    try:
        found = json.loads(text)
        values = found["plan"]
        pairs = [(str(key), str(one["text"]), str(one.get("from", "typed"))) for key, one in values.items()]
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return [], ["This file is not a plan of ours: it is JSON of another form."]
    return pairs, []


def _wrong(fields: list[Field], text: str) -> str:
    """Why a text is no value of any of these fields; empty when it is one."""
    reason = ""
    for one in fields:
        if one.kind == "choice":
            if text in [option.value for option in one.options]:
                return ""
            reason = "is no choice that is offered"
            continue
        try:
            found = read_quantity(text, one.kind, one.unit("us"), "us")
        except UnitError as wrong:
            reason = wrong.reason
            continue
        if one.low_si * (1 - 1e-9) - 1e-9 <= found.si <= one.high_si * (1 + 1e-9):
            return ""
        reason = f"must be between {one.low} and {one.high}"
    return reason


def _short(text: str) -> str:
    return "".join(mark for mark in text if mark.isprintable())[:40]


def given_for(worksheet: Worksheet, entries: Mapping[str, Entry]) -> dict[str, Typed]:
    """What the plan knows of the fields that a worksheet asks."""
    keys = {one.key for one in worksheet.all_fields()}
    return {key: Typed(entry.text, "us", entry.origin) for key, entry in entries.items() if key in keys}


def offers(sheet: Sheet, asked_elsewhere: Mapping[str, list[Field]]) -> dict[str, Entry]:
    """The results of a sheet that other worksheets ask for, as entries for the plan."""
    if sheet.problems:
        return {}
    found = {}
    for result in sheet.results:
        fields = asked_elsewhere.get(result.key, [])
        if result.si is None or result.key in sheet.inputs or not fields:
            continue
        unit = unit_named(fields[0].us, fields[0].kind) if fields[0].us else fields[0].unit("us")
        text = f"{round_to(unit.from_si(result.si), 6)} {unit.ascii}".strip()
        if fields[0].low_si <= result.si <= fields[0].high_si:
            found[result.key] = Entry(text, "computed", sheet.worksheet.key)
    return found


def stale(entries: Mapping[str, Entry], worksheets: Mapping[str, Worksheet]) -> dict[str, str]:
    """The computed entries that their worksheet would now compute differently, with what it would give."""
    from calc.engine.read import read as read_inputs

    found = {}
    for key, entry in entries.items():
        worksheet = worksheets.get(entry.worksheet)
        if entry.origin != "computed" or worksheet is None:
            continue
        given = given_for(worksheet, {name: one for name, one in entries.items() if name != key})
        reading = read_inputs(worksheet, given, "us")
        if reading.problems or not given:
            continue
        try:
            value = compute(worksheet, reading.plan, {name: one.si for name, one in reading.inputs.items()}).get(key)
        except OutOfRange:
            continue
        field = next(one for one in fields_by_key(worksheets.values())[key])
        if not isinstance(value, float | int):
            continue
        unit = field.unit("us")
        now = read_quantity(entry.text, field.kind, unit, "us").si
        if abs(value - now) > 1e-5 * max(abs(value), abs(now)):
            found[key] = f"{round_to(unit.from_si(value), 6)} {unit.ascii}".strip()
    return found
