"""A Sheet as HTML and SVG: the same templates at build and in the page.

The page calls `respond` with JSON text and gets JSON text; the build calls `worksheet_html`. What was typed is never
markup: every template escapes what it is given.
"""

import json
from collections.abc import Callable, Mapping
from typing import Any

from calc.answer import Reader, Typed, answer, chart_of, link_of, open_link
from calc.engine import link
from calc.engine.sheet import Sheet
from calc.engine.typed import ORIGINS
from calc.units import SYSTEMS, System
from calc.worksheets import WORKSHEETS
from render import plan, spreadsheet
from render.view import charts_json, field_states, section, slots

__all__ = ["respond", "run_every_example", "worksheet_html"]

Asked = Mapping[str, Any]


def worksheet_html(key: str, heading: str = "h2") -> str:
    """The whole section of a worksheet with its worked example, as it stands in a guide before any script."""
    sheet = answer(key, {}, "us")
    return section(sheet, heading, plan.offered(sheet, {}))


def respond(text: str) -> str:
    """Answer a page's request.

    {"worksheet", "units", "fields": {key: {"text", "units", "from"}}} gives the parts of the worksheet that change;
    a field with no text and from "typical" is one that the reader does not know. With "chart": true also its chart.
    "scold" lists the keys whose mistakes may be told while the reader is still typing; without it all are. "plan" holds
    the reader's whole plan, {key: {"text", "units", "from", "by"}}, for what is out of date in it.

    The same with "use": key puts a result into the plan, with "csv": name gives a table as a file.
    {"open": "#v1;…", "plan", "units"} says what a shared link holds, and asks where the plan holds other numbers.
    {"plan", "units"} gives the list of the plan, {"plan_text": plan} its file, {"plan_file": text} what a file holds.
    {"record": {…}, "units"} is for the page of the sizing record, {"desk": {…}} for the dealer's desk: see
    `record.respond` and `desk.respond`.
    """
    asked = json.loads(text)
    system: System = "si" if asked.get("units") == "si" else "us"
    reply = next(does for name, does in _REPLIES.items() if name in asked)
    return json.dumps(reply(asked, system, Reader()), allow_nan=False)


def _worksheet(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    given, sheet = _sheet(asked, system, reader)
    entries = plan.entries_from(asked.get("plan"), reader)
    scold = asked.get("scold")
    told = [problem for problem in sheet.problems if scold is None or problem.key in scold]
    reply: dict[str, Any] = {
        "worksheet": sheet.worksheet.key,
        "units": system,
        "state": "wrong" if sheet.problems else "example" if sheet.example else "ready",
        "slots": slots(sheet, told, plan.offered(sheet, entries)),
        "fields": field_states(sheet, given, told, plan.notes(sheet, entries)),
        "link": link_of(sheet),
    }
    if asked.get("chart") and not sheet.problems:
        reply["charts"] = charts_json(chart_of(sheet), sheet.worksheet.key)
    return reply


def _sheet(asked: Asked, system: System, reader: Reader) -> tuple[dict[str, Typed], Sheet]:
    given = {
        str(name): Typed(str(field["text"]), "si" if field.get("units") == "si" else "us", _origin(field.get("from")))
        for name, field in asked.get("fields", {}).items()
    }
    return given, answer(str(asked["worksheet"]), given, system, reader)


def _origin(origin: object) -> str:
    return origin if isinstance(origin, str) and origin in ORIGINS else "typed"


def _use(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    _, sheet = _sheet(asked, system, reader)
    return plan.use(str(asked["use"]), sheet, plan.entries_from(asked.get("plan"), reader), system)


def _csv(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    _, sheet = _sheet(asked, system, reader)
    if sheet.problems:
        return {"name": "", "text": ""}
    name, text = spreadsheet.csv_file(sheet, str(asked["csv"]))
    return {"name": name, "text": text}


def _open(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    text = str(asked["open"])
    _, problems = open_link(text, system, reader)
    opened = link.read(text, WORKSHEETS, reader=reader)
    return {
        "worksheet": opened.worksheet,
        "fields": {
            key: {"text": one.text, "units": one.system, "from": one.origin} for key, one in opened.given.items()
        },
        **plan.link_said(opened, problems, plan.entries_from(asked.get("plan"), reader), system),
    }


def _plan(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    return {"plan": plan.plan_list(plan.entries_from(asked["plan"], reader), system)}


def _plan_text(asked: Asked, _: System, reader: Reader) -> dict[str, Any]:
    return plan.file_text(plan.entries_from(asked["plan_text"], reader))


def _plan_file(asked: Asked, _: System, reader: Reader) -> dict[str, Any]:
    return plan.from_file(str(asked["plan_file"]), reader)


def _record(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    from render import record  # here: a page of worksheets does not wait for it

    return record.respond(asked["record"], system, reader)


def _desk(asked: Asked, _: System, reader: Reader) -> dict[str, Any]:
    from render import desk

    return desk.respond(asked["desk"], reader)


# What a request is about, by the first of these names that it has.
_REPLIES: dict[str, Callable[[Asked, System, Reader], dict[str, Any]]] = {
    "open": _open,
    "record": _record,
    "desk": _desk,
    "use": _use,
    "csv": _csv,
    "worksheet": _worksheet,
    "plan_file": _plan_file,
    "plan_text": _plan_text,
    "plan": _plan,
}


def run_every_example() -> None:
    """Run every worksheet once in both unit systems, chart included: what the page's Python must have on board."""
    entries: dict[str, Any] = {}
    for key in WORKSHEETS:
        worksheet_html(key)
        for system in SYSTEMS:
            respond(json.dumps({"worksheet": key, "units": system, "fields": {}, "chart": True}))
            wrong = {WORKSHEETS[key].fields[0].key: {"text": "1,5 apples", "units": system, "from": "typed"}}
            respond(json.dumps({"worksheet": key, "units": system, "fields": wrong}))
        for name in spreadsheet.names(answer(key, {}, "us")):
            respond(json.dumps({"worksheet": key, "fields": {}, "csv": name}))
        shared = link_of(answer(key, {}, "us"))
        opened = json.loads(respond(json.dumps({"open": shared, "plan": entries, "units": "us"})))
        entries |= opened["fields"]
        for name in plan.offered(answer(key, {}, "us"), {}):
            respond(json.dumps({"worksheet": key, "fields": {}, "use": name, "plan": entries}))
    whole = next(worksheet for worksheet in WORKSHEETS.values() if worksheet.checks)
    given = {key: {"text": text} for key, text in whole.examples[0].given.items()}
    printed = {"entries": given, "date": "2026-11-25", "address": "record/"}
    respond(json.dumps({"record": printed, "units": "us"}))
    respond(json.dumps({"desk": {"worksheet": whole.key, "fields": given, "form": True, "code": True}}))
    respond(json.dumps({"plan": entries, "units": "us"}))
    saved = json.loads(respond(json.dumps({"plan_text": entries})))["text"]
    respond(json.dumps({"plan_file": saved}))
    respond(json.dumps({"plan_file": json.dumps({"plan": entries})}))
