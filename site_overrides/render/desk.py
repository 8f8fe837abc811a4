"""The dealer's desk: what is known of a customer's house becomes one link, and a short message around it.

Nothing of it is kept: the page sends what stands in its boxes, and gets back what to show.
"""

from collections.abc import Mapping, Sequence
from typing import Any

from markupsafe import Markup

from calc.answer import answer, link_of
from calc.engine.declare import Field
from calc.engine.plan import given_for
from calc.engine.read import Problem
from calc.engine.sheet import Sheet
from calc.engine.typed import Reader, Typed
from calc.engine.words import LEVEL_WORDS
from calc.units import System
from calc.worksheets import WORKSHEETS
from render import qr, view
from render.plan import entries_from
from render.templating import fill

SHELVES = (("places", "Where the house stands"), ("appliances", "Appliance"), ("tanks", "Tank"))
LONGEST = 500  # characters of a dealer's own words, or of an address
MOST_NAMED = 4  # numbers that a short message names


def respond(asked: Mapping[str, Any], system: System, reader: Reader) -> dict[str, Any]:
    """Answer the desk.

    Takes {"worksheet", "plan": what is known of the house, "typing": key or null, "address", "name", "contact"}. Gives
    {"fields": {key: what its box shows}, "link", "message", and as HTML "plate" and "said"}; with "form": true also the
    "form" of the worksheet's boxes, with "code": true also the QR "code" of the link.
    """
    worksheet = WORKSHEETS[str(asked["worksheet"])]
    given = given_for(worksheet, entries_from(asked.get("plan"), reader))
    # With nothing given it would be the worked example; a number that nobody knows makes it this customer's house.
    unknown = next(one.key for one in worksheet.all_fields())
    sheet = answer(worksheet.key, given or {unknown: Typed("", system, "typical")}, system, reader)
    told = [problem for problem in sheet.problems if problem.key != asked.get("typing")]
    address = str(asked.get("address") or "")[:LONGEST]
    whole = address + (link_of(sheet) if given else f"#{worksheet.key}")
    name, contact = (str(asked.get(who, ""))[:LONGEST] for who in ("name", "contact"))
    right = not sheet.problems
    reply: dict[str, Any] = {
        "fields": _states(sheet, given, told),
        "plate": view.slots(sheet, told)["plate"] if given else "",
        "said": str(fill("desk_said.html", sheet=sheet, words=LEVEL_WORDS)) if given and right else "",
        "link": whole if right else "",
        "message": _message(sheet, given, whole, name, contact) if right else "",
    }
    if asked.get("form"):
        reply["form"] = str(_form(sheet))
    if asked.get("code") and right:
        reply["code"] = str(qr.svg(whole, "QR code of the link"))
    return reply


def _form(sheet: Sheet) -> Markup:
    """The boxes of a worksheet, empty; those of cases that are not chosen are hidden."""
    fields: dict[str, Field] = {}
    for one in (*sheet.course.fields, *sheet.worksheet.all_fields()):
        fields.setdefault(one.key, one)
    asked = [one for one in fields.values() if not one.optional]
    return fill("desk_form.html", asked=asked, optional=[one for one in fields.values() if one.optional])


def _states(sheet: Sheet, given: Mapping[str, Typed], told: Sequence[Problem]) -> dict[str, dict[str, str]]:
    """For each box that is asked now: what stands in it, its unit in words, what is taken if it is empty, its error."""
    states = {}
    for key, state in view.field_states(sheet, given, told).items():
        found = sheet.inputs.get(key)
        states[key] = {
            "value": state["value"] if key in given else "",
            "unit": state["unit"],
            "measure": state["measure"],
            "note": str(fill("desk_note.html", found=found, shown=found.shown(sheet.system)))
            if found and key not in given
            else "",
            "error": state["error"],
        }
    return states


def _message(sheet: Sheet, given: Mapping[str, Typed], address: str, name: str, contact: str) -> str:
    """A few plain lines for a customer, in the sheet's units."""
    lines = [sheet.worksheet.question]
    if given and sheet.headline:
        rough = " (rough)" if sheet.rough else ""
        lines.append(f"{sheet.headline.label}: {sheet.headline.shown}{rough}. {sheet.say}")
        lines += [
            f"{LEVEL_WORDS[one.level]}: {one.title}" for one in sheet.advice if one.level in ("stop", "unworkable")
        ]
        known = [f"{one.field.label} {one.shown(sheet.system)}" for key, one in sheet.inputs.items() if key in given]
        more = f" and {len(known) - MOST_NAMED} more" if len(known) > MOST_NAMED else ""
        lines.append(f"From what we know of your house: {'; '.join(known[:MOST_NAMED])}{more}.")
        if sheet.assumed:
            lines.append(
                f"The other {len(sheet.assumed)} numbers are assumed."
                if len(sheet.assumed) > 1
                else "One more number is assumed."
            )
        lines.append(f"Open it with these numbers in place, and change any of them: {address}")
    else:
        lines.append(f"Put in your own numbers here: {address}")
    return "\n".join([*lines, *(line for line in (name, contact) if line)])


def page(edition: Any, addresses: Mapping[str, str]) -> str:
    """The desk as it stands in the page before any script; `addresses` are those of the worksheets' guides."""
    sample = next(iter(WORKSHEETS))
    known = view.slots(answer(sample, {}))["plate"]
    return str(
        fill(
            "desk.html",
            edition=edition,
            sample=sample,
            known=Markup(known),  # noqa: S704 - filled in by our own template
            shelves=[(name, label, getattr(edition, name)) for name, label in SHELVES],
            worksheets=[(worksheet, addresses[key]) for key, worksheet in WORKSHEETS.items() if key in addresses],
        )
    )
