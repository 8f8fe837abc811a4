"""The reader's plan: numbers that several worksheets share, each with who gave it, as one request sees them."""

from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Mapping
from functools import cache
from typing import NamedTuple

from calc.engine.fields import Field
from calc.engine.read import Reading, keys_meant, read
from calc.engine.typed import Input, Reader, Typed
from calc.engine.worksheet import Worksheet
from calc.units import Quantity, System


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
            self._readings[worksheet.key] = read(worksheet, given_for(worksheet, self), self.reader)
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


def fields_by_key(worksheets: Iterable[Worksheet]) -> dict[str, list[Field]]:
    """Every field that a plan may hold; a key returns with other kinds only where a fuel decides how it is bought."""
    fields: dict[str, list[Field]] = {}
    for worksheet in worksheets:
        for field in map(worksheet.in_plan, worksheet.all_fields()):
            fields.setdefault(field.key, []).append(field)
    return fields


@cache
def own_keys(worksheets: tuple[Worksheet, ...]) -> dict[str, frozenset[str]]:
    """Of each worksheet the keys that no other one asks: whoever gave one of these has been there.

    A worksheet that looks at the whole asks again what its parts ask, and a part is no less the place to give it. One
    that is never a part of a record is no place.
    """
    places = [worksheet for worksheet in worksheets if worksheet.in_record is None or worksheet.in_record.values]
    asked = {
        sheet.key: {sheet.plan_key(field.key) for field in sheet.all_fields() if field.key not in sheet.again}
        for sheet in places
    }
    count = Counter(key for worksheet in places if not worksheet.checks for key in asked[worksheet.key])
    count.update(key for worksheet in places if worksheet.checks for key in asked[worksheet.key] - count.keys())
    return {name: frozenset(key for key in keys if count[key] == 1) for name, keys in asked.items()}


def given_for(worksheet: Worksheet, entries: Mapping[str, Entry]) -> dict[str, Typed]:
    """What the plan knows of the fields that a worksheet asks; what it has worked out itself is no answer to it."""
    fields = {worksheet.plan_key(field.key): field for field in worksheet.all_fields()}
    return {
        fields[key].key: _typed(entry)
        for key, entry in entries.items()
        if key in fields
        and entry.text not in fields[key].elsewhere
        and not (entry.origin == "computed" and entry.worksheet == worksheet.key)
    }


def brought_up[Value: (Entry, Typed)](
    given: Mapping[str, Value], worksheets: Collection[Worksheet], reader: Reader
) -> tuple[dict[str, Value], str]:
    """A plan as it is kept now, and a sentence about what has changed.

    Once a plan had one entry for every pipe. Such an entry goes to the worksheet that is known to have given it, or to
    the part that the plan is known to have meant, else to every part that can take it and has no entry of its own.
    """
    given, both = _by_own_names(given, worksheets, reader)
    parts = [worksheet for worksheet in worksheets if worksheet.apart and not worksheet.apart.always]
    older = {key: value for key, value in given.items() if any(key in part.apart.keys for part in parts if part.apart)}
    kept = {key: value for key, value in given.items() if key not in older}
    told = []
    for key, value in older.items():
        asking = [part for part in parts if key in {field.key for field in part.all_fields()}]
        by = value.worksheet
        typed = _typed(value) if isinstance(value, Entry) else value
        asking = [part for part in asking if part.key == by] or asking
        asking = [part for part in asking if part.apart and not _is_made(part.apart.other, given)] or asking
        fit = [part for part in asking if any(reader.read(field, typed).value for field in _named(part, key))]
        for part in fit or asking:
            kept.setdefault(part.plan_key(key), value)
        told += [_named(part, key)[0].label for part in asking[:1]]
    said = []
    if told:
        said += [f"This plan had one entry for every pipe: {'; '.join(told)}."]
        said += ["Each pipe has its own now and begins with that, so change it where a pipe is another."]
    if both:
        said += [f"This plan had one entry for the stove and for the heater you have: {'; '.join(both)}."]
        said += ["Each has its own now and begins with that, so change it where they differ."]
    return kept, " ".join(said)


def _by_own_names[Value: (Entry, Typed)](
    given: Mapping[str, Value], worksheets: Collection[Worksheet], reader: Reader
) -> tuple[dict[str, Value], list[str]]:
    """What an older plan has under a field's other name, under its own; and the labels of what now stands twice.

    A name that other worksheets ask for as well stays with them too.
    """
    asked = {field.key for worksheet in worksheets for field in worksheet.all_fields()}
    own, both = dict(given), list[str]()
    for worksheet in worksheets:
        if not given.keys() & worksheet.other_names.keys() - asked:
            continue  # such a plan is of today
        known = {field.key for field in worksheet.all_fields()} | worksheet.other_names.keys()
        typed = {
            key: _typed(value) if isinstance(value, Entry) else value for key, value in given.items() if key in known
        }
        here = {field.key: field for field in read(worksheet, typed, reader).course.fields}
        meant = keys_meant(worksheet, typed, reader)
        new = {name: key for name, key in meant.items() if name not in asked}
        own = {new.get(name, name): value for name, value in own.items() if new.get(name) not in own}
        for name, key in meant.items():
            if name in asked and key in here and key not in own and reader.read(here[key], typed[name]).value:
                own[key] = own[name]
                both.append(here[key].label)
    return own, both


def _is_made(choice: tuple[str, str], given: Mapping[str, Entry] | Mapping[str, Typed]) -> bool:
    key, value = choice
    return key in given and given[key].text == value


def older_fields(worksheets: Iterable[Worksheet]) -> dict[str, list[Field]]:
    """The fields that a plan once had under other keys: those of parts that are kept apart, those with other names."""
    fields: dict[str, list[Field]] = {}
    for worksheet in worksheets:
        for name, keys in worksheet.other_names.items():
            fields.setdefault(name, []).extend(field for key in keys for field in _named(worksheet, key))
        for field in worksheet.all_fields():
            if worksheet.plan_key(field.key) != field.key and not (worksheet.apart and worksheet.apart.always):
                fields.setdefault(field.key, []).append(field)
    return fields


def _named(worksheet: Worksheet, key: str) -> list[Field]:
    return [field for field in worksheet.all_fields() if field.key == key]


def look(entries: Mapping[str, Entry], worksheets: Iterable[Worksheet]) -> dict[str, Known]:
    """Every entry that some worksheet asks for, in the worksheets' order, read as it is read there."""
    entries = opened(entries)
    known: dict[str, Known] = {}
    for worksheet in worksheets:
        fields = {field.key: field for field in worksheet.all_fields()}
        keys = {worksheet.plan_key(name): name for name in fields}
        if not keys.keys() & entries.keys():
            continue
        reading = entries.reading(worksheet)
        asked = {field.key: worksheet.in_plan(field) for field in reading.course.fields}
        problems = {problem.key: problem.text for problem in reversed(reading.problems)}
        for key, name in keys.items():
            if key not in entries or entries[key].text in fields[name].elsewhere:
                continue
            before, entry = known.get(key), entries[key]
            askers = (*(before.askers if before else ()), worksheet.key)
            if before and (before.used or name not in asked):
                known[key] = before._replace(askers=askers)
            elif name in asked:
                value = reading.inputs.get(name)
                problem = "" if value else problems.get(name, "")
                known[key] = Known(entry, asked[name], value, problem, askers, True, reading.refused.get(name))
            else:
                field = worksheet.in_plan(_meant_for(worksheet, name, entry) or fields[name])
                alone = entries.reader.read(field, _typed(entry))
                known[key] = Known(entry, field, alone.value, "", askers, False, alone.quantity)
    return known


def _meant_for(worksheet: Worksheet, key: str, entry: Entry) -> Field | None:
    """Of the fields that ask one key in several units, the one beside which an entry was typed."""
    fields = (field for field in worksheet.all_fields() if field.key == key and field.kind != "choice")
    return next((field for field in fields if entry.unit and field.unit(entry.system).ascii == entry.unit), None)
