"""The reader's plan: numbers that several worksheets share, kept as a small text file that a person can read.

    Stoke and Store plan 1
    store_volume = 500 gal | typed
    design_load = 30500 Btu/h | computed by house-load
    end

A plan file is untrusted like a link: it holds keys, numbers with units, choices and who gave them; whatever else is in
it is named in a sentence and left out.
"""

import json
from collections.abc import Iterable, Iterator, Mapping
from typing import NamedTuple

from calc.engine.conditions import condition
from calc.engine.fields import Field
from calc.engine.read import Reading
from calc.engine.read import read as read_inputs
from calc.engine.sheet import Sheet
from calc.engine.typed import GIVERS, ORIGINS, Input, Reader, Typed, item_key
from calc.engine.values import Values, settle, work_out
from calc.engine.worksheet import Worksheet
from calc.law import OutOfRange
from calc.units import Quantity, System, round_briefly

FIRST_LINE = "Stoke and Store plan"
VERSION = 1
LARGEST_FILE = 2_000_000  # characters; a full plan has some ten thousand, and with every worksheet worked out a million
MOST_VALUES = 500


class Entry(NamedTuple):
    """One value of the plan: its text, who gave it, the worksheet that computed it if one did, the units then in force.

    In a file every text has its unit; in the page a number may stand without one, as it was typed: then `unit` is what
    stood beside its box, in ASCII. `giver` says where a given number came from, if somebody told (GIVERS), and
    `item` which one of a dealer's stock it is.
    """

    text: str
    origin: str
    worksheet: str = ""
    system: System = "us"
    unit: str = ""
    giver: str = ""
    item: str = ""


class Entries(Mapping[str, Entry]):
    """A plan as one request sees it: each of its texts is read once, and each worksheet's reading of it made once."""

    def __init__(self, entries: Mapping[str, Entry], reader: Reader) -> None:
        self._entries, self.reader = dict(entries), reader
        self._readings: dict[str, Reading] = {}

    def __getitem__(self, key: str) -> Entry:
        return self._entries[key]

    def __iter__(self) -> Iterator[str]:
        return iter(self._entries)

    def __len__(self) -> int:
        return len(self._entries)

    def reading(self, worksheet: Worksheet) -> Reading:
        """What a worksheet reads in the plan."""
        if worksheet.key not in self._readings:
            self._readings[worksheet.key] = read_inputs(worksheet, given_for(worksheet, self), self.reader)
        return self._readings[worksheet.key]

    def value(self, field: Field, entry: Entry) -> Input | None:
        """The value of an entry read by itself, whatever a worksheet makes of it; None if it cannot be read."""
        return self.reader.read(field, _typed(entry)).value

    def si(self, field: Field, entry: Entry | None) -> float | None:
        """The number of an entry; None without one."""
        value = self.value(field, entry) if entry else None
        return value.si if value and isinstance(value.si, float | int) else None


def opened(entries: Mapping[str, Entry]) -> Entries:
    """Entries as one request sees them; those that are opened already stay as they are."""
    return entries if isinstance(entries, Entries) else Entries(entries, Reader())


def _typed(entry: Entry) -> Typed:
    return Typed(entry.text, entry.system, entry.origin, entry.unit, entry.giver, entry.item)


class Opened(NamedTuple):
    """What a plan file holds, and a sentence for everything in it that could not be used."""

    entries: dict[str, Entry]
    problems: tuple[str, ...]


class Known(NamedTuple):
    """A value of the plan as the worksheets see it: the field that asks for it, the value or what is wrong with it.

    `askers` are the keys of the worksheets that ask for it; `used` is false while none of them does in the case that
    the reader has chosen there. `refused` is the quantity in a text that the field cannot take.
    """

    entry: Entry
    field: Field
    value: Input | None
    problem: str
    askers: tuple[str, ...]
    used: bool
    refused: Quantity | None = None


class Offer(NamedTuple):
    """What becomes of a result that a reader puts into the plan.

    It is taken, or (`why`) it is the "same" as what is there, or another value stands in its way: one that somebody
    "typed", or a "higher" one. Then nothing is taken, and the reader may choose one of `choices`. What was typed falls
    `short` where the highest counts and it is lower.
    """

    why: str
    taken: Entry | None
    standing: Entry | None
    choices: tuple[Entry, ...]
    short: bool = False


def fields_by_key(worksheets: Iterable[Worksheet]) -> dict[str, list[Field]]:
    """Every field that a plan may hold; a key returns with other kinds only where a fuel decides how it is bought."""
    fields: dict[str, list[Field]] = {}
    for worksheet in worksheets:
        for field in worksheet.all_fields():
            fields.setdefault(field.key, []).append(field)
    return fields


# ---- the file ----------------------------------------------------------------------------------------------------


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


# ---- the plan and the worksheets ---------------------------------------------------------------------------------


def given_for(worksheet: Worksheet, entries: Mapping[str, Entry]) -> dict[str, Typed]:
    """What the plan knows of the fields that a worksheet asks; what it has worked out itself is no answer to it."""
    keys = {field.key for field in worksheet.all_fields()}
    own = {key for key, entry in entries.items() if entry.origin == "computed" and entry.worksheet == worksheet.key}
    return {key: _typed(entry) for key, entry in entries.items() if key in keys - own}


def look(entries: Mapping[str, Entry], worksheets: Iterable[Worksheet]) -> dict[str, Known]:
    """Every entry that some worksheet asks for, in the worksheets' order, read as it is read there."""
    entries = opened(entries)
    known: dict[str, Known] = {}
    for worksheet in worksheets:
        fields = {field.key: field for field in worksheet.all_fields()}
        keys = [key for key in fields if key in entries]
        if not keys:
            continue
        reading = entries.reading(worksheet)
        asked = {field.key: field for field in reading.course.fields}
        problems = {problem.key: problem.text for problem in reversed(reading.problems)}
        for key in keys:
            before, entry = known.get(key), entries[key]
            askers = (*(before.askers if before else ()), worksheet.key)
            if before and (before.used or key not in asked):
                known[key] = before._replace(askers=askers)
            elif key in asked:
                value = reading.inputs.get(key)
                problem = "" if value else problems.get(key, "")
                known[key] = Known(entry, asked[key], value, problem, askers, True, reading.refused.get(key))
            else:
                field = _meant_for(worksheet, key, entry) or fields[key]
                alone = entries.reader.read(field, _typed(entry))
                known[key] = Known(entry, field, alone.value, "", askers, False, alone.quantity)
    return known


def _meant_for(worksheet: Worksheet, key: str, entry: Entry) -> Field | None:
    """Of the fields that ask one key in several units, the one beside which an entry was typed."""
    fields = (field for field in worksheet.all_fields() if field.key == key and field.kind != "choice")
    return next((field for field in fields if entry.unit and field.unit(entry.system).ascii == entry.unit), None)


def offers(sheet: Sheet, asked_elsewhere: Mapping[str, list[Field]]) -> dict[str, Entry]:
    """The results of a sheet that other worksheets ask for, as entries for the plan.

    What the worked example gives is offered as the example's: it is nobody's own number.
    """
    if sheet.problems:
        return {}
    origin = "example" if sheet.example else "computed"
    offered = {}
    for result in sheet.results:
        fields = asked_elsewhere.get(result.key, [])
        if not isinstance(result.si, float | int) or _was_asked(sheet, result.key) or not fields:
            continue
        if fields[0].holds(result.si) and may_be_taken(sheet.worksheet, result.key, sheet.values):
            offered[result.key] = Entry(text_of(fields[0], result.si), origin, sheet.worksheet.key)
    return offered


def _was_asked(sheet: Sheet, key: str) -> bool:
    """Whether a result is an input; but what a choice that somebody made has filled in is news to other worksheets.

    So is a usual value on which a sketch rests: other worksheets would else go on from another one.
    """
    entry = sheet.inputs.get(key)
    if entry is None:
        return False
    usual = entry.field.typical if entry.origin == "typical" else None
    if usual and usual.on:
        return sheet.inputs[usual.on].origin in ("typical", "example")
    return usual is None or sheet.worksheet.outlook is None


def may_be_taken(worksheet: Worksheet, key: str, values: Values) -> bool:
    """Whether a result means to other worksheets what it means here, with these values."""
    told = [result.taken_when for result in worksheet.results if result.key == key]
    return all(not when or condition(when)(values, {}) for when in told)


def text_of(field: Field, value: float) -> str:
    """A value as a plan holds it, in US units and to five figures."""
    unit = field.unit("us")
    return f"{round_briefly(unit.from_si(value), 5)} {unit.ascii}".strip()


def apart(first: float, other: float) -> bool:
    """Whether two values differ by more than the five figures kept in a plan."""
    return abs(first - other) > 1e-4 * max(abs(first), abs(other))


def worked_out(worksheet: Worksheet, entries: Entries, key: str) -> float | None:
    """What a worksheet gives for `key` with the plan's other numbers; None without any, or without a result."""
    given = given_for(worksheet, entries)
    if not given.keys() - {key}:
        return None
    if key in given:
        del given[key]
        reading = read_inputs(worksheet, given, entries.reader)
    else:
        reading = entries.reading(worksheet)
    if reading.problems:
        return None
    try:
        value = settle(worksheet, work_out(worksheet, reading)).get(key)
    except OutOfRange:
        return None
    return value if isinstance(value, float | int) else None


def stale(
    entries: Mapping[str, Entry],
    worksheets: Mapping[str, Worksheet],
    fields: Mapping[str, list[Field]],
    keys: Iterable[str] | None = None,
) -> dict[str, str]:
    """The computed entries (of `keys`) that their worksheet would now compute differently, with what it would give.

    The text is empty where the numbers behind an entry are gone or no longer give a result.
    """
    entries = opened(entries)
    outdated = {}
    for key in entries if keys is None else keys:
        entry = entries.get(key)
        if entry is None or entry.origin != "computed" or entry.worksheet not in worksheets or key not in fields:
            continue
        field = fields[key][0]
        value, kept = worked_out(worksheets[entry.worksheet], entries, key), entries.si(field, entry)
        if value is None or not field.holds(value):
            outdated[key] = ""
        elif kept is None or apart(value, kept):
            outdated[key] = text_of(field, value)
    return outdated


def offer(
    key: str,
    sheet: Sheet,
    entries: Mapping[str, Entry],
    worksheets: Mapping[str, Worksheet],
    fields: Mapping[str, list[Field]],
) -> Offer | None:
    """Put a result of a sheet into the plan: a typed value stands, and of several needs the highest. None: no offer."""
    offered = offers(sheet, fields).get(key)
    if offered is None:
        return None
    entries = opened(entries)
    field, there = fields[key][0], entries.get(key)
    new, standing = entries.si(field, offered), entries.si(field, there)
    assert new is not None
    if there and there.origin in ("typed", "link") and there.text.strip():
        if standing is not None and not apart(standing, new):
            return Offer("same", None, there, ())
        short = field.keeps_highest and standing is not None and standing < new
        return Offer("typed", None, there, (offered,), short)
    if field.keeps_highest:
        highest = _highest(key, field, sheet, entries, worksheets)
        needed = entries.si(field, highest) or 0
        if highest and needed > new and apart(needed, new):
            return Offer("higher", None, highest, (offered,) if highest == there else (highest, offered))
    return Offer("", offered, there, ())


def flowing(
    sheet: Sheet,
    entries: Mapping[str, Entry],
    worksheets: Mapping[str, Worksheet],
    fields: Mapping[str, list[Field]],
    *,
    new: bool,
    declined: Iterable[str] = (),
) -> dict[str, Entry]:
    """The results of a sheet that go into the plan without being asked for, as entries.

    Nothing flows from a sheet that still leans on a number of a worked example. What the plan has from this worksheet
    is brought up to date; what it does not have is added if `new`, unless the reader took it out again (`declined`).
    What somebody typed, or another worksheet gave, stands.
    """
    if sheet.example or any(entry.origin == "example" for entry in sheet.inputs.values()):
        return {}
    entries = opened(entries)
    flow = {}
    for key, result in offers(sheet, fields).items():
        there = entries.get(key)
        ours = there is not None and there.origin in ("computed", "example") and there.worksheet == sheet.worksheet.key
        if there == result or key in declined or not (ours or new):
            continue
        if there is not None and not ours and not (fields[key][0].keeps_highest and there.origin == "computed"):
            continue
        kept = entries.si(fields[key][0], there) if ours and there and there.origin == "computed" else None
        now = entries.si(fields[key][0], result)
        if kept is not None and now is not None and not apart(kept, now):
            continue
        made = offer(key, sheet, entries, worksheets, fields)
        if made and made.taken:
            flow[key] = made.taken
    return flow


def _highest(
    key: str, field: Field, sheet: Sheet, entries: Entries, worksheets: Mapping[str, Worksheet]
) -> Entry | None:
    """The highest value for `key` that another worksheet needs: the one in the plan, or one that its numbers give.

    Only worksheets count at which the reader has been: that have a number which no other one asks.
    """
    there = entries.get(key)
    askers = {name: len(known.askers) for name, known in look(entries, worksheets.values()).items()}
    others: list[Entry] = []
    for name, worksheet in worksheets.items():
        if name == sheet.worksheet.key or key not in [result.key for result in worksheet.results]:
            continue
        in_plan = there is not None and there.origin == "computed" and there.worksheet == name
        if not in_plan and not any(askers[key] == 1 for key in given_for(worksheet, entries) if key in askers):
            continue
        value = worked_out(worksheet, entries, key)
        if value is not None and field.holds(value):
            now = Entry(text_of(field, value), "computed", name)
            kept = entries.si(field, there) if in_plan else None
            others.append(there if in_plan and there and kept and not apart(kept, value) else now)
        elif in_plan and there:
            others.append(there)
    return max(others, key=lambda entry: entries.si(field, entry) or 0, default=None)
