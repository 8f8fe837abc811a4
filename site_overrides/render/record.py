"""The sizing record: everything that follows from a plan as one document to print, sign and check by hand.

The page sends the plan's numbers as the reader typed them, or a link that holds a plan, and gets the document as HTML.
A worksheet is in the record when the plan holds its numbers, or when the reader ticks it.
"""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from markupsafe import Markup

from calc.answer import answer, answer_plan
from calc.engine import link, plan
from calc.engine.citing import source_line
from calc.engine.declare import Field, OnlyWith, Suits, Worksheet
from calc.engine.plan import Entries, Entry, fields_by_key
from calc.engine.read import read
from calc.engine.sheet import Sheet, Verdict
from calc.engine.typed import Input, Reader, Typed
from calc.engine.words import LEVEL_WORDS
from calc.guides import GUIDES
from calc.sources import SOURCES
from calc.units import System, show
from calc.worksheets import WORKSHEETS
from render import qr, sized, view
from render.drawings.piping import SYSTEMS, figure
from render.plan import entries_from, entry_for_page
from render.templating import fill
from render.view import STATUS_WORDS

KNOWN_SHARE = 0.5  # of what a worksheet asks, so much must be known for it to be in the record by itself
LONGEST_ADDRESS = 500
NO_PIPING = "none"
_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)


@dataclass(frozen=True)
class Taken:
    """A worksheet as the plan finds it: what it still lacks, what is wrong, and its sheet if it was worked out."""

    worksheet: Worksheet
    held: bool
    printed: bool
    lacks: tuple[str, ...] = ()
    problems: tuple[str, ...] = ()
    sheet: Sheet | None = None
    possible: bool = True


@dataclass(frozen=True)
class Said:
    """Something that has to stand on the first page: its level, words, and where it comes from."""

    level: str
    title: str
    text: str
    where: str


@dataclass(frozen=True)
class Choice:
    """One choice as the record lists it."""

    label: str
    value: str
    origin: str
    check: bool  # nobody gave it: it has to be checked on site
    source: str  # whose usual value it is


def respond(asked: Mapping[str, Any], system: System, reader: Reader) -> dict[str, Any]:
    """Answer the page of the sizing record.

    Takes {"plan"} or {"link": "#v1;plan;…"}, and {"date": "2026-11-25", "version", "address", "ticked": {worksheet:
    bool}, "piping"}. Gives {"state": "empty", "link" or "plan", "entries": for the plan, "link", and as HTML "said",
    "paper" and "worksheets"}.
    """
    said: tuple[str, ...] = ()
    if asked.get("link"):
        opened = link.read(str(asked["link"]), WORKSHEETS, reader=reader)
        said = opened.problems
        entries = Entries({key: Entry(one.text, one.origin) for key, one in opened.given.items()}, reader)
    else:
        found = entries_from(asked.get("plan"), reader)
        entries = Entries({key: found[key] for key in fields() if key in found}, reader)
    ticked = {str(key): bool(on) for key, on in (asked.get("ticked") or {}).items()}
    taken = look_at(entries, system, ticked)
    return {
        "state": "empty" if not entries else "link" if asked.get("link") else "plan",
        "said": str(fill("record_said.html", problems=said)) if said else "",
        "entries": {key: entry_for_page(one) for key, one in entries.items()},
        "paper": _document(entries, taken, system, asked),
        "worksheets": str(fill("record_worksheets.html", taken=taken)),
        "link": link_of(entries),
    }


def example(name: str, house: Mapping[str, Entry], version: str) -> str:
    """The record of an invented house, as it stands in the page before any script."""
    entries = plan.opened(house)
    return _document(entries, look_at(entries, "us", {}), "us", {"version": version}, name)


@cache
def fields() -> dict[str, list[Field]]:
    """The fields that a plan may hold, in the order in which the worksheets ask."""
    return fields_by_key(WORKSHEETS.values())


# --- which worksheets


def look_at(entries: Mapping[str, Entry], system: System, ticked: Mapping[str, bool]) -> list[Taken]:
    """Every worksheet as the plan finds it, worked out where the plan holds its numbers or the reader asks for it."""
    entries = plan.opened(entries)
    return [_take(worksheet, entries, system, ticked.get(key)) for key, worksheet in WORKSHEETS.items()]


def _take(worksheet: Worksheet, entries: Entries, system: System, ticked: bool | None) -> Taken:
    given = plan.given_for(worksheet, entries)
    if not any(typed.text.strip() for typed in given.values()):
        # With nothing given it would be the worked example of another house.
        needed = [one for one in read(worksheet, {}, entries.reader).inputs.values() if _is_needed(one)]
        return Taken(worksheet, False, False, tuple(one.field.label for one in needed), possible=False)
    reading = entries.reading(worksheet)
    belongs = _belongs(worksheet.in_record, entries)
    if reading.problems:
        # Only where the plan is about this worksheet: another one may well ask for the same pipe in another kind.
        asks = {one.key for one in reading.course.fields if one.kind != "choice" and not (one.typical or one.optional)}
        said = tuple(problem.text for problem in reading.problems) if belongs and asks <= given.keys() else ()
        return Taken(worksheet, False, False, (), said, possible=False)
    lacks = tuple(one.field.label for one in reading.inputs.values() if _is_needed(one) and one.origin == "example")
    asked = [one for one in reading.inputs.values() if not one.field.optional]
    known = [one for one in asked if one.field.key in given]
    held = not lacks and len(known) >= KNOWN_SHARE * len(asked) and belongs
    printed = held if ticked is None else ticked
    if not held and not printed:
        return Taken(worksheet, False, False, lacks)
    sheet = answer_plan(worksheet, entries, system)
    problems = tuple(problem.text for problem in sheet.problems)
    if problems:
        return Taken(worksheet, False, False, lacks, problems, possible=False)
    return Taken(worksheet, held, printed, lacks, (), sheet)


def _is_needed(one: Input) -> bool:
    """Whether a number has no usual value that could stand in for it."""
    return one.quantity is not None and one.field.typical is None and not one.field.optional


def _belongs(only: OnlyWith | None, entries: Entries) -> bool:
    """Whether the plan makes the choice without which a worksheet is no part of it."""
    if only is None:
        return True
    made = entries.get(only.choice.key)
    return only.or_unmade if made is None or not made.text else made.text in only.values


# --- the document


def _document(
    entries: Entries, taken: list[Taken], system: System, asked: Mapping[str, Any], example_of: str = ""
) -> str:
    printed = [one for one in taken if one.printed and one.sheet]
    sheets = {one.worksheet.key: one.sheet for one in printed if one.sheet}
    sources = list(dict.fromkeys(key for sheet in sheets.values() for key, _ in sheet.sources))
    chain = next(one for one in taken if one.worksheet.checks)
    address = str(asked.get("address") or "")[:LONGEST_ADDRESS]
    reopens = address + link_of(entries) if address else ""
    return str(
        fill(
            "record.html",
            example_of=example_of,
            date=_date(str(asked.get("date") or "")),
            version=str(asked.get("version") or "")[:40],
            urgent=_urgent(entries, taken),
            words=LEVEL_WORDS,
            chain=chain,
            verdicts=_verdicts(chain),
            statuses=STATUS_WORDS,
            groups=_choices(entries, list(sheets.values()), system),
            parts=[(row, WORKSHEETS[row.worksheet].question) for row in sized.listed(sheets, system)],
            piping=_piping(entries, sheets, system, str(asked.get("piping") or "")),
            sheets=[(number, sheet, _also_taken(sheet)) for number, sheet in enumerate(sheets.values(), 1)],
            sources=[source_line(SOURCES[key]) for key in sources],
            whole=_whole,
            place_of_source={key: number for number, key in enumerate(sources, 1)},
            not_checked=chain.worksheet.not_checked,
            left=[one for one in taken if not (one.printed and one.sheet)],
            reopens=reopens,
            code=qr.svg(reopens, "QR code of the address above") if reopens else "",
        )
    )


def _whole(total: str) -> Markup:
    """A sum whose lines end between its numbers and never inside a unit, such as behind the stroke of Btu/h."""
    return Markup(" ").join(
        Markup('<span class="ss-whole">{}</span>').format(one) if "/" in one else one for one in total.split(" ")
    )


def _date(iso: str) -> str:
    """A date as people write it on paper; empty for anything else."""
    try:
        day = datetime.date.fromisoformat(iso)
    except ValueError:
        return ""
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


def _urgent(entries: Entries, taken: list[Taken]) -> list[Said]:
    """Every stop, every plan that cannot work and every caution, also of worksheets that are left out of the record."""
    said: list[Said] = []
    places = {one.worksheet.key: number for number, one in enumerate((two for two in taken if two.printed), 1)}
    for one in taken:
        question = one.worksheet.question
        if one.worksheet.key in places:
            question = f"Worksheet {places[one.worksheet.key]}"
        said += [Said("caution", "It could not be worked out.", text, question) for text in one.problems]
        if one.sheet is None:
            continue
        said += [Said(two.level, two.title, two.text, question) for two in one.sheet.advice if two.level != "note"]
        failing = [two for two in one.sheet.verdicts if two.status in ("stop", "unworkable")]
        said += [Said(two.status, f"{two.label}: {two.number}.", two.text, question) for two in failing]
        if one.printed and one.lacks:
            text = f"Nobody gave {', '.join(one.lacks)}; the worked example's stand in."
            said.append(Said("caution", "This is not worked out for this job.", text, question))
    said += _stale(entries)
    order = list(LEVEL_WORDS)
    once: dict[tuple[str, str], Said] = {}
    for one_said in said:  # several worksheets may say the same of one number
        once.setdefault((one_said.level, one_said.title), one_said)
    return sorted(once.values(), key=lambda found: order.index(found.level))


def _stale(entries: Entries) -> list[Said]:
    """A caution for every number that its worksheet would now compute differently."""
    said = []
    for key, now in plan.stale(entries, WORKSHEETS, fields()).items():
        text = f"The plan has {entries[key].text}; its worksheet now gives {now or 'no result'}."
        question = WORKSHEETS[entries[key].worksheet].question
        said.append(Said("caution", f"{fields()[key][0].label} is out of date.", text, question))
    return said


def _verdicts(chain: Taken) -> tuple[Verdict, ...]:
    return chain.sheet.verdicts if chain.sheet else ()


def _choices(entries: Entries, sheets: list[Sheet], system: System) -> list[tuple[str, list[Choice]]]:
    """Every choice that the record rests on, by subject: its value and who gave it."""
    groups: dict[str, list[Choice]] = {}
    seen: dict[str, set[str]] = {}
    places: dict[str, str] = {}
    for worksheet in WORKSHEETS.values():
        for one in worksheet.all_fields():
            places.setdefault(one.key, worksheet.guide)
    for sheet in sheets:
        for key, given in sheet.inputs.items():
            value = _shown(given, system)
            if value in seen.setdefault(key, set()) or _left_alone(given):
                continue
            seen[key].add(value)
            choice = Choice(given.field.label, value, *_origin(given, entries.get(key)), _typical_source(given))
            groups.setdefault(GUIDES[places[key]], []).append(choice)
    return [(name, groups[name]) for name in GUIDES.values() if name in groups]


def _shown(one: Input, system: System) -> str:
    """A value as its reader sees it; a computed one to the digits that it deserves."""
    if one.origin == "computed" and one.quantity is not None:
        return show(one.quantity.si, one.field.unit(system), system, 4)
    return one.shown(system)


def _left_alone(one: Input) -> bool:
    """A number that is what it is by the worksheet's meaning, unless somebody gives another."""
    return one.field.optional and one.origin == "typical"


def _also_taken(sheet: Sheet) -> list[tuple[str, str]]:
    return [(one.field.label, one.shown(sheet.system)) for one in sheet.inputs.values() if _left_alone(one)]


def _origin(one: Input, entry: Entry | None) -> tuple[str, bool]:
    """Who gave a value, in words, and whether it has to be checked on site."""
    if one.origin == "computed":
        by = WORKSHEETS[entry.worksheet].question if entry and entry.worksheet else "another worksheet"
        return f"Worked out: {by}", False
    if one.origin == "typical":
        return "Assumed", True
    if one.origin == "example":
        return ("Not chosen" if one.quantity is None else "Of the worked example"), True
    return ("From a link" if one.origin == "link" else "Given"), False


def _typical_source(one: Input) -> str:
    return one.field.typical.source if one.field.typical and one.origin == "typical" else ""


def _piping(entries: Entries, sheets: Mapping[str, Sheet], system: System, wanted: str) -> dict[str, Any] | None:
    """The drawing that the reader chose, or the one that suits the plan, with the sizes of its parts."""
    if wanted == NO_PIPING:
        return None
    key = wanted if wanted in SYSTEMS else suited(sheets)
    known = {item for _, items in SYSTEMS[key].groups for item in items}
    sizes = {part: size for part, size in sized.drawn(sheets, system).items() if part in known}
    return {"key": key, "title": SYSTEMS[key].title, "figure": figure.figure(key, sizes)}


def suited(sheets: Mapping[str, Sheet]) -> str:
    """The piping drawing nearest to a plan: one open to the air before all others, then in the worksheets' order."""
    wanted = [
        one.drawing for worksheet in WORKSHEETS.values() for one in worksheet.suits if _holds(one, worksheet, sheets)
    ]
    closed = next(key for key, system in SYSTEMS.items() if not system.vented)
    return min(wanted, key=lambda key: not SYSTEMS[key].vented, default=closed)


def _holds(one: Suits, worksheet: Worksheet, sheets: Mapping[str, Sheet]) -> bool:
    if not one.when:
        return worksheet.key in sheets
    asked = [sheet.values for sheet in sheets.values() if one.condition.names <= sheet.values.keys()]
    return any(one.condition(values, {}) for values in asked)


# --- the link


def link_of(entries: Mapping[str, Entry]) -> str:
    """The link that reopens this plan; each number with its unit, whatever system it was typed in."""
    given = {}
    for key, known in plan.look(entries, WORKSHEETS.values()).items():
        entry, value = known.entry, known.value
        if not entry.text.strip():
            given[key] = Typed("", "us", entry.origin)
        elif value:
            text = str(value.si) if value.quantity is None else value.quantity.link_text()
            given[key] = Typed(text, "us", entry.origin)
    return link.write_plan(given)


def page(name: str, entries: Mapping[str, Entry], version: str) -> str:
    """What stands in the page of the record before any script: its controls, and the record of an invented house."""
    known = view.slots(answer("stored-heat", {}))["plate"]
    return str(
        fill(
            "record_page.html",
            keys=fields(),
            version=version,
            known=Markup(known),  # noqa: S704 - filled in by our own template
            pipings=[(key, system.title) for key, system in SYSTEMS.items()],
            paper=Markup(example(name, entries, version)),  # noqa: S704 - likewise
        )
    )
