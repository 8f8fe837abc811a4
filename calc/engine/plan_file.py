"""The file of a plan: a small text that a person can read.

    Stoke and Store plan 1
    store_volume = 500 gal | typed
    design_load = 30500 Btu/h | computed by house-load
    end

A plan file is untrusted like a link: it holds keys, numbers with units, choices and who gave them; whatever else is in
it is named in a sentence and left out.
"""

import json
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from calc.engine.fields import Field
from calc.engine.plan import Entry, brought_up, fields_by_key, look, older_fields
from calc.engine.typed import GIVERS, ORIGINS, Reader, Typed, item_key
from calc.engine.worksheet import Worksheet

FIRST_LINE = "Stoke and Store plan"
VERSION = 1
LARGEST_FILE = 2_000_000  # characters; a full plan has some ten thousand, and with every worksheet worked out a million
MOST_VALUES = 500


class Opened(NamedTuple):
    """What a plan file holds, and a sentence for everything in it that could not be used."""

    entries: dict[str, Entry]
    problems: tuple[str, ...]


def write(entries: Mapping[str, Entry]) -> str:
    """The plan as text. Its numbers must have their units: see `with_units`."""
    lines = [f"{FIRST_LINE} {VERSION}"]
    for key, entry in entries.items():
        who = f"{entry.origin} by {entry.worksheet}" if entry.worksheet else entry.origin
        who += f", {entry.giver} {entry.item}".rstrip() if entry.giver else ""
        lines.append(f"{key} = {entry.text} | {who}")
    return "\n".join([*lines, "end", ""])


def with_units(entries: Mapping[str, Entry], worksheets: Iterable[Worksheet]) -> Opened:
    """The entries with every number's unit written out, and a sentence for each that cannot be read."""
    complete, problems = {}, []
    for key, known in look(entries, worksheets).items():
        if known.value is None:
            problems.append(f"{known.field.label} is left out: what stands there cannot be read.")
            continue
        quantity = known.value.quantity
        text = str(known.value.si) if quantity is None else f"{quantity.number} {quantity.unit.ascii}".strip()
        complete[key] = known.entry._replace(text=text, system="us", unit="")
    return Opened(complete, tuple(problems))


def read(text: str, worksheets: Iterable[Worksheet], reader: Reader | None = None) -> Opened:
    """Read a plan file, as text or as the JSON that the command line prints."""
    reader = reader or Reader()
    if len(text) > LARGEST_FILE:
        return Opened({}, ("This file is far too large to be a plan of ours; nothing was taken from it.",))
    text = text.removeprefix("\ufeff").strip()
    if "\0" in text or "\ufffd" in text[: len(FIRST_LINE)]:
        return Opened({}, ("This file is not a plan of ours: it is not plain text in UTF-8.",))
    pairs, problems = _from_json(text) if text.startswith("{") else _from_lines(text)
    if len(pairs) > MOST_VALUES:
        return Opened({}, ("This file holds far more values than a plan has; nothing was taken from it.",))
    worksheets = tuple(worksheets)
    known = older_fields(worksheets) | fields_by_key(worksheets)
    entries: dict[str, Entry] = {}
    unknown: list[str] = []
    for key, value, who in pairs:
        if key not in known:
            unknown.append(_short(key))
            continue
        if key in entries:
            problems.append(f"{known[key][0].label} stands twice in this plan; the first is used.")
            continue
        wrong = _wrong(known[key], Typed(value), reader)
        if wrong:
            problems.append(f"{known[key][0].label} in this plan {wrong}; it was left out.")
            continue
        who, _, told = who.partition(", ")
        giver, _, item = told.partition(" ")
        origin, _, worksheet = who.partition(" by ")
        plain = worksheet.replace("-", "").isalnum() and origin in ("computed", "example")
        origin, giver = origin if origin in ORIGINS else "typed", giver if giver in GIVERS else ""
        entries[key] = Entry(value, origin, worksheet if plain else "", giver=giver, item=item_key(item))
    if unknown:
        more = f" and {len(unknown) - 5} more" if len(unknown) > 5 else ""
        problems.append(f"This plan holds what no worksheet asks, and it was left out: {', '.join(unknown[:5])}{more}.")
    entries, changed = brought_up(entries, worksheets, reader)
    return Opened(entries, (*problems, *filter(None, (changed,))))


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
        lines = lines[:-1] if len(lines) > 1 else lines  # the line at which it was cut cannot be trusted
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
        data = json.loads(text)
        values = data["plan"]
        pairs = [
            (str(key), str(entry["text"]), f"{entry.get('from', 'typed')} by {entry.get('by', '')}")
            for key, entry in values.items()
        ]
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return [], ["This file is not a plan of ours: it is JSON of another form."]
    return pairs, []


def _wrong(fields: Iterable[Field], typed: Typed, reader: Reader) -> str:
    """Why a text is no value of any of these fields; empty when it is one."""
    reason = ""
    for field in fields:
        value, reason, *_ = reader.read(field, typed)
        if value:
            return ""
        if field.kind == "choice":
            reason = "is no choice that is offered"
    return reason


def _short(text: str) -> str:
    return "".join(mark for mark in text if mark.isprintable())[:40]
