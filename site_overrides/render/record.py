"""The page of the sizing record: everything that follows from a plan as one document to hand over, sign and check.

The page sends the plan's numbers as the reader typed them, or a link that holds a plan, and gets the document as HTML.
A worksheet is in the record when the plan holds its numbers, or when the reader ticks it.
"""

from collections.abc import Iterable, Mapping
from typing import Any

from calc.chosen import fields, look_at
from calc.engine import link, plan
from calc.engine.plan import Entries, Entry
from calc.engine.typed import Reader, Typed
from calc.units import System
from calc.worksheets import WORKSHEETS
from render import stock
from render.paper import SITE, Wanted, document
from render.plan import entries_from, entries_of, entry_for_page, made_said
from render.templating import fill

LONGEST_ADDRESS = 500


def respond(asked: Mapping[str, Any], system: System, reader: Reader) -> dict[str, Any]:
    """Answer the page of the sizing record.

    Takes {"plan"} or {"link": "#v1;plan;…", "chosen": whether its reader chose the units}, and {"date": "2026-11-25",
    "version", "stock": whose, "address", "ticked": {worksheet: bool}, "piping", "appendix": false to
    leave it out}.
    Gives {"state": "empty", "link" or "plan", "entries": for the plan, "link", "made_in": the units of the link that
    was opened, and as HTML "said", "paper" and "worksheets"}.
    """
    said: tuple[str, ...] = ()
    made_in: System | None = None
    site = link.site_of(asked)
    ticked: dict[str, bool] = {}
    if asked.get("link"):
        opened = link.read(str(asked["link"]), WORKSHEETS, reader=reader)
        made_in = opened.units
        made = made_said(opened, system, bool(asked.get("chosen")), site)
        said = (made, *opened.problems) if made else opened.problems
        entries = Entries(entries_of(opened), reader)
        ticked = dict.fromkeys(opened.sheets, True)
    else:
        kept = entries_from(asked.get("plan"), reader)
        entries = Entries({key: kept[key] for key in fields() if key in kept}, reader)
    ticked |= {str(key): bool(on) for key, on in (asked.get("ticked") or {}).items()}
    chosen = look_at(entries, system, ticked)
    address = str(asked.get("address") or "")[:LONGEST_ADDRESS]
    reopens = link.signed(link_of(entries, system), site)
    wanted = Wanted(
        date=str(asked.get("date") or ""),
        version=str(asked.get("version") or "")[:40],
        site=site or SITE,
        stock=stock.names(str(asked["stock"])) if asked.get("stock") else {},
        piping=str(asked.get("piping") or ""),
        reopens=address + link.packed(reopens) if address else "",
        appendix=asked.get("appendix") is not False,
    )
    return {
        "state": "empty" if not entries else "link" if asked.get("link") else "plan",
        "said": str(fill("record_said.html", problems=said)) if said else "",
        "entries": {key: entry_for_page(entry) for key, entry in entries.items()},
        "paper": document(chosen, system, wanted),
        "worksheets": str(fill("record_worksheets.html", taken=chosen.taken)),
        "link": reopens,
        "made_in": made_in,
    }


def link_of(entries: Mapping[str, Entry], system: System = "us", sheets: Iterable[str] = ()) -> str:
    """The link that reopens this plan; each number with its unit, whatever system it was typed in.

    `sheets` are worksheets that its record shows in any case.
    """
    given = {}
    for key, known in plan.look(entries, WORKSHEETS.values()).items():
        entry, value = known.entry, known.value
        if not entry.text.strip():
            given[key] = Typed("", "us", entry.origin)
        elif value:
            text = str(value.si) if value.quantity is None else value.quantity.link_text()
            given[key] = Typed(text, origin=entry.origin, giver=entry.giver, item=entry.item, worksheet=entry.worksheet)
    return link.write_plan(given, system, sheets)
