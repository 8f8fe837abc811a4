"""The reader's plan as HTML, and what the page asks about it: save, load, put a result in, a link opened over it."""

import json
from collections.abc import Mapping, Sequence
from typing import Any

from calc.engine import link, offering, plan, plan_file
from calc.engine.citing import source_line
from calc.engine.plan import Entries, Entry, Known
from calc.engine.sheet import Sheet
from calc.engine.typed import GIVERS, ORIGINS, Reader, Typed, declared_input, item_key
from calc.sources import SOURCES
from calc.units import SYSTEMS, System
from calc.vocabulary import BY_KEY, OLDER_WORDS
from calc.worksheets import WORKSHEETS
from render.templating import fill
from render.view import box_text, measure

FILE_NAME = "stoke-and-store-plan.txt"
SYSTEM_WORDS = {"us": "US units", "si": "SI units"}
MOST_TOLD = 8  # differences between a link and the plan that are told one by one


def entries_from(asked: object, reader: Reader) -> Entries:
    """The plan as the page keeps it, {key: {"text", "units", "unit", "from", "by"}}.

    What is of another form is passed over. Who gave an entry is decided here: without a word about it, the reader
    typed it.
    """
    entries = {}
    for key, told in list(asked.items())[: plan_file.MOST_VALUES] if isinstance(asked, dict) else ():
        if isinstance(told, dict) and isinstance(told.get("text"), str):
            origin, worksheet, giver = told.get("from"), told.get("by"), told.get("giver")
            entries[str(key)] = Entry(
                told["text"],
                origin if origin in ORIGINS else "typed",
                worksheet if isinstance(worksheet, str) and worksheet in WORKSHEETS else "",
                "si" if told.get("units") == "si" else "us",
                told["unit"] if isinstance(told.get("unit"), str) else "",
                giver if giver in GIVERS else "",
                item_key(str(told.get("item", ""))),
            )
    if entries.keys() & set(OLDER_WORDS):
        entries, _ = plan.brought_up(entries, WORKSHEETS.values(), reader)
    return Entries(entries, reader)


def renamed(asked: object, entries: Entries) -> dict[str, Any]:
    """What the page still keeps under keys that a plan no longer has.

    {"entries": those in their place, and null for the old ones; "said": HTML}.
    """
    older = [key for key in OLDER_WORDS if key in asked] if isinstance(asked, dict) else []
    if not older or not isinstance(asked, dict):
        return {"entries": {}, "said": ""}
    new = {key: entry_for_page(entry) for key, entry in entries.items() if key not in asked}
    before = {key: Entry(str(told.get("text", "")), "typed") for key, told in asked.items() if isinstance(told, dict)}
    _, said = plan.brought_up(before, WORKSHEETS.values(), entries.reader)
    return {"entries": {**dict.fromkeys(older), **new}, "said": str(fill("renamed.html", said=said))}


def entry_for_page(entry: Entry) -> dict[str, str]:
    """An entry as the page keeps it."""
    kept = {"text": entry.text, "units": entry.system, "from": entry.origin}
    told = {"unit": entry.unit, "by": entry.worksheet, "giver": entry.giver, "item": entry.item}
    return kept | {name: text for name, text in told.items() if text}


# ---- the page "Your plan" ----------------------------------------------------------------------------------------


def plan_list(entries: Mapping[str, Entry], system: System) -> str:
    """Every value of the plan, who gave it, and what became of it: those of several worksheets first."""
    entries = plan.opened(entries)
    known = plan.look(entries, WORKSHEETS.values())
    stale = offering.stale(entries, WORKSHEETS, BY_KEY)
    rows = {key: _row(value, stale.get(key), system, entries) for key, value in known.items()}
    shared = [
        row for key, row in rows.items() if (len(known[key].askers) > 1 or key in BY_KEY) and not _is_apart(known[key])
    ]
    groups: list[dict[str, Any]] = [{"worksheet": None, "rows": shared}] if shared else []
    for worksheet in WORKSHEETS.values():
        own = [row for key, row in rows.items() if row not in shared and known[key].askers[0] == worksheet.key]
        if own:
            groups.append({"worksheet": worksheet, "rows": own})
    strange = {key: entry for key, entry in entries.items() if key not in known}
    new = offering.renewed(entries, stale, WORKSHEETS, BY_KEY)
    anew = {key: entry_for_page(entry) for key, entry in new.items()}
    counts = {"count": len(entries), "stale": len(stale)}
    return str(fill("plan_list.html", groups=groups, strange=strange, units=system, anew=anew, **counts))


def _is_apart(known: Known) -> bool:
    """Whether a number is of one of several like parts: it stands with the rest of that part, whoever else asks it."""
    worksheet = WORKSHEETS[known.askers[0]]
    return known.field.key not in {field.key for field in worksheet.all_fields()}


def _row(known: Known, now: str | None, system: System, entries: Entries) -> dict[str, Any]:
    entry, field = known.entry, known.field
    fresh = entries.value(field, Entry(now, "computed")) if now else None
    typed = Typed(entry.text, entry.system, entry.origin, entry.unit)
    return {
        "field": field,
        "entry": entry,
        "value": box_text(field, known.value, typed, system, known.refused),
        "unit": "" if field.kind == "choice" else field.unit(system).words,
        "measure": measure(field, system),
        "error": known.problem,
        "used": known.used,
        "givers": GIVERS if _is_given(known) else {},
        "by": WORKSHEETS.get(entry.worksheet),
        "source": source_line(SOURCES[field.typical.source]) if field.typical and not entry.text.strip() else "",
        "stale": now is not None,
        "take": {field.key: entry_for_page(Entry(now, "computed", entry.worksheet))} if now else None,
        "now_shown": fresh.shown(system) if fresh else "",
    }


def _is_given(known: Known) -> bool:
    """Whether a number is one that somebody gave, so that it came from somewhere."""
    return known.field.kind != "choice" and known.entry.origin in ("typed", "link") and bool(known.entry.text.strip())


def file_text(entries: Mapping[str, Entry]) -> dict[str, Any]:
    """The plan as the text of a file, and what had to be left out."""
    complete = plan_file.with_units(entries, WORKSHEETS.values())
    said = str(fill("plan_said.html", what="saved", problems=complete.problems, count=len(complete.entries)))
    return {"name": FILE_NAME, "text": plan_file.write(complete.entries), "said": said}


def from_file(text: str, reader: Reader) -> dict[str, Any]:
    """What a plan file holds, for the page to keep, and what is wrong with it."""
    opened = plan_file.read(text, WORKSHEETS.values(), reader)
    entries = {**opened.entries, **as_typed(Entries(opened.entries, reader))}
    what = "loaded" if opened.entries or not opened.problems else "refused"
    return {
        "entries": {key: entry_for_page(entry) for key, entry in entries.items()},
        "problems": list(opened.problems),
        "loaded": what == "loaded",
        "said": str(fill("plan_said.html", what=what, problems=opened.problems, count=len(opened.entries))),
    }


def as_typed(entries: Entries) -> dict[str, Entry]:
    """Entries of a file as a reader would have typed them: without the unit where it stands beside the box anyway."""
    fields = plan.fields_by_key(WORKSHEETS.values())
    typed = {}
    for key, known in plan.look(entries, WORKSHEETS.values()).items():
        if known.value is None or known.value.quantity is None:
            continue
        quantity = known.value.quantity
        for system in SYSTEMS:
            if {field.unit(system) for field in fields[key]} == {quantity.unit}:
                typed[key] = known.entry._replace(text=quantity.number, system=system, unit=quantity.unit.ascii)
                break
    return typed


# ---- results that are inputs elsewhere ---------------------------------------------------------------------------


def offered(sheet: Sheet, entries: Mapping[str, Entry]) -> dict[str, str]:
    """The results of a sheet that the reader may put into the plan: key to "there", "late" or "new"."""
    offers = {}
    for key, entry in offering.offers(sheet, BY_KEY).items():
        there = entries.get(key)
        ours = there is not None and there.worksheet == entry.worksheet and there.origin in ("computed", "example")
        offers[key] = "new" if not ours else "there" if there == entry else "late"
    return offers


def use(key: str, sheet: Sheet, entries: Entries, system: System) -> dict[str, Any]:
    """Put a result into the plan, or say what stands in its way and what the reader may choose."""
    offer = offering.offer(key, sheet, entries, WORKSHEETS, BY_KEY)
    if offer is None:
        return {"key": key, "taken": None, "choices": [], "said": ""}
    field = BY_KEY[key][0]

    def told(entry: Entry | None) -> dict[str, Any] | None:
        if entry is None:
            return None
        # What a worksheet gives has the digits that it deserves, also where it rests on the worked example.
        value = entries.value(field, entry._replace(origin="computed") if entry.worksheet else entry)
        return {
            "shown": value.shown(system) if value else entry.text,
            "by": WORKSHEETS.get(entry.worksheet),
            "origin": entry.origin,
        }

    new = offering.offers(sheet, BY_KEY)[key]
    said = fill(
        "used.html",
        offer=offer,
        field=field,
        new=told(new),
        standing=told(offer.standing),
        choices=[told(choice) for choice in offer.choices],
        worksheet=sheet.worksheet,
        example=sheet.example,
    )
    return {
        "key": key,
        "taken": entry_for_page(offer.taken) if offer.taken else None,
        "choices": [entry_for_page(choice) for choice in offer.choices],
        "said": str(said),
    }


def flow(asked: object, sheet: Sheet, entries: Entries, system: System) -> dict[str, Any]:
    """What flows from a sheet into the plan on its own: {"entries", "said": HTML}; nothing while it is not asked about.

    `asked` is {"new": whether the reader has worked at this sheet, "declined": keys that were taken out again}.
    """
    if not isinstance(asked, dict):
        return {"entries": {}, "said": ""}
    declined = [key for key in asked.get("declined") or () if isinstance(key, str)]
    taken = offering.flowing(sheet, entries, WORKSHEETS, BY_KEY, new=bool(asked.get("new")), declined=declined)
    told = []
    for key, entry in taken.items():
        value = entries.value(BY_KEY[key][0], entry)
        told.append({"field": BY_KEY[key][0], "shown": value.shown(system) if value else entry.text})
    return {
        "entries": {key: entry_for_page(entry) for key, entry in taken.items()},
        "said": str(fill("flowed.html", told=told)) if told else "",
    }


def moved(sheet: Sheet, entries: Mapping[str, Entry], system: System) -> dict[str, Any]:
    """What else changed as the first own number took the place of the worked example.

    {"entries": what keeps the example's numbers, "said": HTML}: the numbers that nobody gave and that are the usual
    ones now, where the example has others.
    """
    worksheet, example = sheet.worksheet, sheet.worksheet.examples[0]
    told, back = [], {}
    for key, entry in sheet.inputs.items():
        if (
            worksheet.plan_key(key) in entries
            or key not in example.given
            or not entry.field.accepts(example.given[key])
        ):
            continue
        before = declared_input(entry.field, example.given[key], "example")
        if _same(before.si, entry.si):
            continue
        told.append({"label": entry.field.label, "before": before.shown(system), "now": entry.shown(system)})
        back[worksheet.plan_key(key)] = entry_for_page(Entry(example.given[key], "example", worksheet.key))
    said = str(fill("moved.html", told=told, house=example.name)) if told else ""
    return {"entries": back, "said": said}


def notes(sheet: Sheet, entries: Entries, held: Entries) -> dict[str, dict[str, Any]]:
    """For each computed number that a sheet uses: which worksheet computed it, and whether it is out of date.

    `held` are the entries that the reader's plan holds. Where one of them was typed and another worksheet needs more,
    `over` is what was typed: it stays in its box.
    """
    plan_key = sheet.worksheet.plan_key
    computed = [
        key
        for key, entry in sheet.inputs.items()
        if entry.origin in ("computed", "example") and plan_key(key) in entries
    ]
    if not computed:
        return {}
    # Where the whole plan was worked out anew, nothing in it is out of date.
    stale = offering.stale(held, WORKSHEETS, BY_KEY, computed) if entries is held else {}
    noted = {}
    for key in computed:
        field, mine = sheet.inputs[key].field, held.get(plan_key(key))
        now = entries.value(field, Entry(stale.get(key, ""), "computed"))
        over = held.value(field, mine) if mine and mine.origin in ("typed", "link") else None
        noted[key] = {
            "by": WORKSHEETS.get(entries[plan_key(key)].worksheet),
            "stale": key in stale,
            "now": now.shown(sheet.system) if now else "",
            "anew": stale.get(key, ""),
            "over": over,
            "needs": sheet.inputs[key].shown(sheet.system) if over else "",
        }
    return noted


def late(sheet: Sheet, noted: Mapping[str, Mapping[str, Any]]) -> str:
    """What a sheet takes and others would now work out differently, with a button that takes it anew, as HTML."""
    anew = {key: note for key, note in noted.items() if note["anew"]}
    if sheet.problems or not anew:
        return ""
    entries = {
        sheet.worksheet.plan_key(key): entry_for_page(Entry(note["anew"], "computed", note["by"].key))
        for key, note in anew.items()
    }
    labels = [sheet.inputs[key].field.label for key in anew]
    return str(fill("late.html", labels=labels, entries=json.dumps(entries)))


def entries_of(opened: link.Opened) -> dict[str, Entry]:
    """What a link holds, as entries of a plan."""
    plan_key = WORKSHEETS[opened.worksheet].plan_key if opened.worksheet in WORKSHEETS else str
    return {
        plan_key(key): Entry(typed.text, typed.origin, typed.worksheet, giver=typed.giver, item=typed.item)
        for key, typed in opened.given.items()
    }


# ---- a link that was opened --------------------------------------------------------------------------------------


def made_said(opened: link.Opened, system: System, chosen: bool, site: str = "") -> str:
    """Whose site made a link, as it says, and its units where the page shows them or its reader chose others.

    `site` is the name of the site that opens it, which tells its readers nothing new.
    """
    sender = f"This link says that it comes from {opened.sender}." if opened.sender not in ("", site) else ""
    return " ".join(filter(None, (sender, _units_said(opened.units, system, chosen))))


def _units_said(made_in: System | None, system: System, chosen: bool) -> str:
    if made_in is None or (made_in == system) is chosen:
        return ""
    made = f"This link was made in {SYSTEM_WORDS[made_in]}"
    if made_in == system:
        return f"{made}, so its numbers are shown in them; the switch at the top of the page changes that."
    return f"{made}; its numbers are shown in {SYSTEM_WORDS[system]}, as you chose."


def link_said(
    opened: link.Opened, problems: Sequence[str], entries: Entries, system: System, units: str
) -> dict[str, str]:
    """What is to be told about a link ("said"), and the question which numbers to keep ("ask").

    The question is empty where the link would change no number of the reader's own. Numbers of an earlier link that
    nobody has touched are not: these are replaced, which is told and can be undone.
    """
    apart = _apart(opened, entries, system)
    own = any(difference["own"] for difference in apart)
    question = fill("link_question.html", apart=apart[:MOST_TOLD], more=len(apart[MOST_TOLD:])) if own else ""
    replaced = bool(apart) and not own
    whole = opened.worksheet == link.PLAN
    telling = problems or replaced or units or whole
    told = fill("link.html", problems=problems, replaced=replaced, units=units, whole=whole) if telling else ""
    return {"said": str(told), "ask": str(question)}


def _apart(opened: link.Opened, entries: Entries, system: System) -> list[dict[str, Any]]:
    """Where the plan holds another number than the link, or one that the link does not have."""
    if not opened.given:
        return []
    asking = list(WORKSHEETS.values()) if opened.worksheet == link.PLAN else [WORKSHEETS[opened.worksheet]]
    linked = Entries(entries_of(opened), entries.reader)
    theirs = {key: known.value for key, known in plan.look(linked, asking).items()}
    apart = []
    for key, mine in plan.look(entries, asking).items():
        other = theirs.get(key)
        if mine.value is None or other is None or not _same(mine.value.si, other.si):
            apart.append(
                {
                    "label": mine.field.label,
                    "mine": mine.value.shown(system) if mine.value else mine.entry.text,
                    "theirs": other.shown(system) if other else "",
                    "own": not _came_with_a_link(mine.entry),
                }
            )
    return apart


def _came_with_a_link(entry: Entry) -> bool:
    """Whether a link brought an entry, be it a usual value or the worked example's; not so an "I do not know"."""
    brought = entry.origin in ("link", "typical") or (entry.origin == "example" and not entry.worksheet)
    return brought and bool(entry.text.strip())


def _same(mine: float | str, other: float | str) -> bool:
    if isinstance(mine, str) or isinstance(other, str):
        return mine == other
    return abs(mine - other) <= 1e-9 * max(abs(mine), abs(other))
