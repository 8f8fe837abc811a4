"""A Sheet as HTML and SVG: the same templates at build and in the page.

The page calls `respond` with JSON text and gets JSON text; the build calls `worksheet_html`. What was typed is never
markup: every template escapes what it is given.
"""

import json
from typing import Any

from calc.answer import Typed, answer, chart_of, link_of, open_link
from calc.engine import link
from calc.engine.read import ORIGINS
from calc.units import SYSTEMS, System
from calc.worksheets import WORKSHEETS
from render.view import charts_json, field_states, link_said, section, slots

__all__ = ["respond", "run_every_example", "worksheet_html"]


def worksheet_html(key: str, heading: str = "h2") -> str:
    """The whole section of a worksheet with its worked example worked out, as it stands before any script."""
    return section(answer(key, {}, "us"), heading)


def respond(text: str) -> str:
    """Answer a page's request.

    {"worksheet", "units", "fields": {key: {"text", "units", "from"}}} gives the parts of the worksheet that change;
    a field with no text and from "typical" is one that the reader does not know. With "chart": true also its chart.
    "scold" lists the keys whose mistakes may be told while the reader is still typing; without it all are.
    {"open": "#v1;…", "units"} says what a shared link holds. {"record": {…}, "units"} is for the page of the sizing
    record, {"desk": {…}} for the dealer's desk: see `record.respond` and `desk.respond`.
    """
    asked = json.loads(text)
    system: System = "si" if asked.get("units") == "si" else "us"
    if "open" in asked:
        return json.dumps(_open(str(asked["open"]), system), allow_nan=False)
    if "record" in asked:
        from render import record  # here: a page of worksheets does not wait for it

        return json.dumps(record.respond(asked["record"], system), allow_nan=False)
    if "desk" in asked:
        from render import desk

        return json.dumps(desk.respond(asked["desk"]), allow_nan=False)
    key = str(asked["worksheet"])
    given = {
        str(name): Typed(str(field["text"]), "si" if field.get("units") == "si" else "us", _origin(field.get("from")))
        for name, field in asked.get("fields", {}).items()
    }
    sheet = answer(key, given, system)
    scold = asked.get("scold")
    told = [problem for problem in sheet.problems if scold is None or problem.key in scold]
    reply: dict[str, Any] = {
        "worksheet": key,
        "units": system,
        "state": "wrong" if sheet.problems else "example" if sheet.example else "ready",
        "slots": slots(sheet, told),
        "fields": field_states(sheet, given, told),
        "link": link_of(sheet),
    }
    if asked.get("chart") and not sheet.problems:
        reply["charts"] = charts_json(chart_of(sheet))
    return json.dumps(reply, allow_nan=False)


def _origin(origin: object) -> str:
    return origin if isinstance(origin, str) and origin in ORIGINS else "typed"


def _open(text: str, system: System) -> dict[str, Any]:
    _, problems = open_link(text, system)
    opened = link.read(text, WORKSHEETS)
    return {
        "worksheet": opened.worksheet,
        "fields": {
            key: {"text": one.text, "units": one.system, "from": one.origin} for key, one in opened.given.items()
        },
        "said": link_said(problems),
    }


def run_every_example() -> None:
    """Run every worksheet once in both unit systems, chart included: what the page's Python must have on board."""
    for key in WORKSHEETS:
        worksheet_html(key)
        for system in SYSTEMS:
            respond(json.dumps({"worksheet": key, "units": system, "fields": {}, "chart": True}))
            wrong = {WORKSHEETS[key].fields[0].key: {"text": "1,5 apples", "units": system, "from": "typed"}}
            respond(json.dumps({"worksheet": key, "units": system, "fields": wrong}))
        respond(json.dumps({"open": link_of(answer(key, {}, "us")), "units": "us"}))
    given = {key: {"text": text} for key, text in WORKSHEETS["will-it-work"].examples[0].given.items()}
    printed = {"entries": given, "date": "2026-11-25", "address": "record/"}
    respond(json.dumps({"record": printed, "units": "us"}))
    respond(json.dumps({"desk": {"worksheet": "will-it-work", "fields": given, "form": True, "code": True}}))
