"""What worksheets give to the plan: which results others ask for, which go in, and which there are out of date."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from calc.engine.conditions import condition
from calc.engine.fields import Field
from calc.engine.plan import Entries, Entry, given_for, opened, own_keys
from calc.engine.read import read
from calc.engine.sheet import Sheet
from calc.engine.standing import foreign, inputs_behind
from calc.engine.texts import listed
from calc.engine.values import NOTHING, Values, settle, work_out
from calc.engine.worksheet import Worksheet
from calc.law import OutOfRange
from calc.units import round_briefly


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


def offers(sheet: Sheet, asked_elsewhere: Mapping[str, list[Field]]) -> dict[str, Entry]:
    """The results of a sheet that other worksheets ask for, as entries for the plan.

    What rests on a number of the worked example is offered as the example's: it is nobody's own number.
    """
    if sheet.problems:
        return {}
    offered = {}
    for result in sheet.results:
        fields = asked_elsewhere.get(result.key, [])
        if not isinstance(result.si, float | int) or _was_asked(sheet, result.key) or not fields:
            continue
        if fields[0].holds(result.si) and may_be_taken(sheet.worksheet, result.key, sheet.values):
            origin = "example" if _of_example(sheet, result.key) else "computed"
            offered[result.key] = Entry(text_of(fields[0], result.si), origin, sheet.worksheet.key)
    return offered


def _of_example(sheet: Sheet, key: str) -> bool:
    """Whether a number of the worked example stands behind a result; its choices are told beside their boxes."""
    behind = inputs_behind(sheet.reading, (key,), NOTHING)
    return bool(sheet.example) or any(entry.quantity is not None for entry in foreign(behind))


def _was_asked(sheet: Sheet, key: str) -> bool:
    """Whether a result is an input; but what a choice that somebody made has filled in is news to other worksheets.

    So is a usual value on which a sketch rests: other worksheets would else go on from another one.
    """
    entry = sheet.inputs.get(key)
    if entry is None:
        return False
    usual = entry.field.typical if entry.origin == "typical" else None
    if usual is None or sheet.worksheet.outlook:
        return usual is None
    return not usual.on or sheet.inputs[usual.on].origin in ("typical", "example")


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
        reading = read(worksheet, given, entries.reader)
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

    The text is empty where the numbers behind an entry are gone or no longer give a result. What a worksheet gives for
    another choice than the plan's is no part of the plan, and never late.
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
            if not _of_another_choice(worksheets[entry.worksheet], entries, key):
                outdated[key] = ""
        elif kept is None or apart(value, kept):
            outdated[key] = text_of(field, value)
    return outdated


def _of_another_choice(worksheet: Worksheet, entries: Entries, key: str) -> bool:
    """Whether a worksheet gives a result only where a choice is made that this plan makes otherwise."""
    choices: Values = {name: entry.text for name, entry in entries.reading(worksheet).inputs.items()}
    results = [result for result in worksheet.results if result.key == key]
    return bool(results) and not any(listed(result, choices) for result in results)


def renewed(
    entries: Mapping[str, Entry],
    late: Mapping[str, str],
    worksheets: Mapping[str, Worksheet],
    fields: Mapping[str, list[Field]],
) -> dict[str, Entry]:
    """What `stale` finds out of date (`late`), as it is computed now, and in turn what is computed from it."""
    new: dict[str, Entry] = {}
    entries = opened(entries)
    for _ in entries:  # no number rests on a longer line of others
        found = {key: Entry(text, "computed", entries[key].worksheet) for key, text in late.items() if text}
        if not found:
            break
        new |= found
        entries = Entries({**entries, **found}, entries.reader)
        late = stale(entries, worksheets, fields)
    return new


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
    if sheet.example or any(entry.origin == "example" and entry.quantity for entry in sheet.inputs.values()):
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
        # Where this sheet no longer needs the most, the plan goes on with what does.
        goes_on = made and (made.taken or (made.standing if ours and made.why == "higher" else None))
        if goes_on:
            flow[key] = goes_on
    return flow


def _highest(
    key: str, field: Field, sheet: Sheet, entries: Entries, worksheets: Mapping[str, Worksheet]
) -> Entry | None:
    """The highest value for `key` that another worksheet needs: the one in the plan, or one that its numbers give.

    Only worksheets count at which the reader has been: of which the plan has a number that no other one asks.
    """
    there = entries.get(key)
    own = own_keys(tuple(worksheets.values()))
    others: list[Entry] = []
    for name, worksheet in worksheets.items():
        if name == sheet.worksheet.key or key not in [result.key for result in worksheet.results]:
            continue
        in_plan = there is not None and there.origin == "computed" and there.worksheet == name
        given = {worksheet.plan_key(key) for key in given_for(worksheet, entries)}
        if not in_plan and given.isdisjoint(own.get(name, ())):
            continue
        value = worked_out(worksheet, entries, key)
        if value is not None and field.holds(value):
            now = Entry(text_of(field, value), "computed", name)
            kept = entries.si(field, there) if in_plan else None
            others.append(there if in_plan and there and kept and not apart(kept, value) else now)
        elif in_plan and there:
            others.append(there)
    return max(others, key=lambda entry: entries.si(field, entry) or 0, default=None)
