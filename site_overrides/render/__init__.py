"""A Sheet as HTML and SVG: the same templates at build and in the page.

The page calls `respond` with JSON text and gets JSON text; what it begins with is `render/pages/`'s. What was typed is
never markup: every template escapes what it is given.
"""

import contextlib
import itertools
import json
from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

from calc.answer import Reader, Typed, UnknownWorksheet, answer, answer_plan, chart_of, link_of, open_link
from calc.engine import link
from calc.engine.effects import Spreading, spread
from calc.engine.plan import Entries, given_for
from calc.engine.sheet import Sheet
from calc.engine.sweeping import Swept, swept
from calc.engine.words import Spread
from calc.physics import winter_weather
from calc.tables.year import HOURS
from calc.units import SYSTEMS, System
from calc.worksheets import WORKSHEETS
from render import folding, plan, spreadsheet
from render.lacking import Lacking
from render.templating import fill
from render.view import charts_json, field_states, how, plate, slots

__all__ = ["bring", "respond", "run_every_example"]

Asked = Mapping[str, Any]


def respond(text: str, first: Callable[[str], object] | None = None) -> str:
    """Answer a page's request: JSON text for JSON text. `first` hears the answer bar of who is typing before the rest.

    A request says what it asks, {"ask": "worksheet", "units": "us" or "si", ...}; the function that ANSWERS has under
    that name says what else it takes and what it gives. Every reply has the "units" of its numbers and labels.
    "site" is the name of the dealer's site that asks, which the links that it makes carry.

    A reply {"lacks": address} says that a file below the site's assets is missing here: the worker fetches it, hands it
    to `bring`, and asks again.

    "plan" is the reader's whole plan, {key: {"text", "units", "from", "by"}}: an entry without "from" was typed, one
    without text and from "typical" is a number that the reader does not know.
    """
    asked = json.loads(text)
    asked["first"] = first
    system: System = "si" if asked.get("units") == "si" else "us"
    ask = str(asked.get("ask"))
    if ask not in ANSWERS:
        raise UnknownRequest(ask)
    try:
        return json.dumps({"units": system, **ANSWERS[ask](asked, system, Reader())}, allow_nan=False)
    except winter_weather.NotHere as missing:
        return json.dumps({"lacks": f"weather/{missing.place}.txt"})
    except Lacking as missing:
        return json.dumps({"lacks": missing.address})


def bring(address: str, text: str) -> None:
    """Take in a file that a reply lacked, or under "weather/file.txt" the reader's own year, none if it is empty."""
    if address.startswith("stock/"):
        from render import stock  # here and below: a page that shows no stock does without

        stock.keep(address.removeprefix("stock/").removesuffix(".json"), text)
        return
    if address == f"weather/{winter_weather.FILE}.txt":
        from calc.physics.winter_run import use_file  # here: a page of other worksheets does without

        try:
            use_file(text)
        except winter_weather.NoYear:
            use_file("")  # what the browser kept is damaged: as if no file were open
        return
    winter_weather.keep(address.removeprefix("weather/").removesuffix(".txt"), text)


class UnknownRequest(ValueError):
    """Nothing here answers what was asked: the page is of another release, or the request is not ours."""

    def __init__(self, ask: str) -> None:
        super().__init__(f"This calculator cannot be asked “{ask[:60]}”; it answers {', '.join(ANSWERS)}.")


def _worksheet(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    """The parts of a worksheet that change.

    Takes {"worksheet", "plan", "scold", "flow", "left_example"}: `scold` are the keys whose mistakes may be told while
    the reader is still typing, when the parts of `_how` are left out and `first` hears the answer bar, or null for all;
    `flow` is what `plan.flow`
    takes, or null; `left_example` whether the reader has just put a number in place of the worked example.

    Gives {"state": "example", "ready" or "wrong", "slots": {name: HTML}, "fields": {key: what its box shows},
    "unfold": whether something in the fold is wrong, "link", "follows": whether a number that this worksheet does not
    ask may change what it shows, "flow" and "moved": {"entries", "said"}, "renamed": what `plan.renamed` gives}.
    """
    sheet, given, entries, whole = _see(asked, system, reader)
    scold = asked.get("scold")
    told = [problem for problem in sheet.problems if scold is None or sheet.worksheet.plan_key(problem.key) in scold]
    computed_elsewhere = any(whole[sheet.worksheet.plan_key(key)].worksheet for key in given)
    in_plan = any(entry.worksheet == sheet.worksheet.key for entry in entries.values())
    nothing: dict[str, Any] = {"entries": {}, "said": ""}
    right = not sheet.problems
    bar = str(plate(sheet, told, leads=True))
    if right and scold is not None and asked.get("first"):
        asked["first"](bar)
    # Where boxes begin empty, the example's numbers never stood in them.
    left_example = right and not sheet.example and bool(asked.get("left_example")) and not sheet.worksheet.outlook
    noted = plan.notes(sheet, whole, entries)
    filled = slots(
        sheet, told, plan.offered(sheet, entries), elsewhere=bool(entries), briefly=scold is not None, bar=bar
    )
    return {
        "flow": plan.flow(asked.get("flow"), sheet, entries, system) if right else nothing,
        "moved": plan.moved(sheet, entries, system) if left_example else nothing,
        "state": "wrong" if sheet.problems else "example" if sheet.example else "ready",
        "slots": filled | {"late": plan.late(sheet, noted)},
        "fields": {
            sheet.worksheet.plan_key(key): state for key, state in field_states(sheet, given, told, noted).items()
        },
        "renamed": plan.renamed(asked.get("plan"), entries),
        "unfold": folding.holds(sheet, (problem.key for problem in told)),
        "link": link.signed(link_of(sheet), link.site_of(asked)),
        "follows": computed_elsewhere or in_plan,
    }


class _Seen(NamedTuple):
    """A worksheet as a page's reader sees it: worked out, with what the plan knows of it, and that plan.

    `entries` are what the reader's plan holds; `whole` is also what its worksheets have found, for one that takes it.
    """

    sheet: Sheet
    given: dict[str, Typed]
    entries: Entries
    whole: Entries


def _see(asked: Asked, system: System, reader: Reader) -> _Seen:
    key = str(asked["worksheet"])
    if key not in WORKSHEETS:
        raise UnknownWorksheet(key)
    worksheet, entries = WORKSHEETS[key], plan.entries_from(asked.get("plan"), reader)
    given = given_for(worksheet, entries)
    if not worksheet.takes:
        return _Seen(answer_plan(worksheet, entries, system), given, entries, entries)
    from calc.chosen import in_whole  # here: other pages do without the whole

    whole, taken = in_whole(worksheet, entries)
    # What somebody gave stays in its box, also where another worksheet needs more.
    own = {key: typed for key, typed in given.items() if typed.origin in ("typed", "link")}
    return _Seen(answer_plan(worksheet, whole, system, taken), given_for(worksheet, whole) | own, entries, whole)


def _how(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    """How the results come about, for who has stopped typing. Takes {"worksheet", "plan"}; gives {"slots"}."""
    sheet = _see(asked, system, reader).sheet
    return {"slots": how(sheet)}


def _chart(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    """The chart of a worksheet. Takes {"worksheet", "plan"}; gives {"chart": data, or null while a number is wrong}."""
    sheet = _see(asked, system, reader).sheet
    return {"chart": None if sheet.problems else charts_json(chart_of(sheet), sheet.worksheet.key, system)}


def _sweep(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    """One of a worksheet's sweeps, a point at a time.

    Takes {"worksheet", "plan", "sweep": its place among them, "points": how many to have by now, "ranges": {key:
    [least, most]} as typed, for what is uncertain}. Gives {"html", "count": how many there will be}; count is 0 while a
    number is wrong.
    """
    sheet = _see(asked, system, reader).sheet
    wanted, points = sheet.worksheet.sweeps[int(asked["sweep"])], int(asked["points"])
    so_far: Swept | Spreading | None
    if isinstance(wanted, Spread):
        ranges = {str(key): (str(low), str(high)) for key, (low, high) in dict(asked.get("ranges") or {}).items()}
        so_far = spread(sheet, wanted, ranges, points, reader)
        html = fill("spread.html", spreading=so_far, worksheet=sheet.worksheet.key) if so_far else ""
    else:
        so_far = swept(sheet, wanted, points)
        html = fill("sweep.html", swept=so_far) if so_far else ""
    return {"html": str(html), "count": so_far.points if so_far else 0}


def _lines(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    """What other worksheets say in a line below this one's verdict. Takes {"worksheet", "plan"}; gives {"html"}."""
    from render.lines import lines

    worksheet = WORKSHEETS[str(asked["worksheet"])]
    said = lines(worksheet, plan.entries_from(asked.get("plan"), reader), system)
    return {"html": str(fill("lines.html", lines=said))}


def _weather(asked: Asked, _: System, __: Reader) -> dict[str, Any]:
    """The reader's own weather file. Takes {"text", "degrees": "C", "F" or ""}.

    Gives {"year": what `bring` takes under weather/file.txt, empty where the file holds no year, "said": HTML}.
    """
    from calc.physics.winter_file import read_file

    try:
        opened = read_file(str(asked["text"]), str(asked.get("degrees", "")))
    except winter_weather.NoYear as wrong:
        return {"year": "", "said": str(fill("weather_said.html", sentences=[str(wrong)], refused=True))}
    return {"year": opened.year, "said": str(fill("weather_said.html", sentences=opened.said, refused=False))}


def _use(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    """Put a result into the plan. Takes {"worksheet", "plan", "key"}; gives what `plan.use` gives."""
    sheet, _, entries, _ = _see(asked, system, reader)
    return plan.use(str(asked["key"]), sheet, entries, system)


def _csv(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    """A table as a file. Takes {"worksheet", "plan", "table"}; gives {"name", "text"}.

    Both are empty while a number is wrong, and where the worksheet has no such table with these numbers.
    """
    sheet = _see(asked, system, reader).sheet
    wanted = str(asked["table"])
    if sheet.problems or wanted not in spreadsheet.names(sheet):
        return {"name": "", "text": ""}
    name, text = spreadsheet.csv_file(sheet, wanted)
    return {"name": name, "text": text}


def _link(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    """What a shared link holds.

    Takes {"link": "#v1;…", "plan", "chosen": whether the reader chose the units}; gives {"worksheet", "whole": whether
    it is a whole plan, "made_in": its units, "fields": entries for the plan, "said", "ask"}: HTML about the link, and
    the question which numbers to keep where the plan holds other ones.
    """
    text = str(asked["link"])
    opened = link.read(text, WORKSHEETS, reader=reader)
    problems = opened.problems if opened.worksheet == link.PLAN else open_link(text, system, reader)[1]
    units = plan.made_said(opened, system, bool(asked.get("chosen")), link.site_of(asked))
    mine = plan.entries_from(asked.get("plan"), reader)
    return {
        "worksheet": opened.worksheet,
        "whole": opened.worksheet == link.PLAN,
        "made_in": opened.units,
        "fields": {key: plan.entry_for_page(entry) for key, entry in plan.entries_of(opened).items()},
        **plan.link_said(opened, problems, mine, system, units),
    }


def _plan(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    """The list of the plan. Takes {"plan"}; gives {"list": HTML, "renamed": what `plan.renamed` gives}."""
    entries = plan.entries_from(asked.get("plan"), reader)
    return {"list": plan.plan_list(entries, system), "renamed": plan.renamed(asked.get("plan"), entries)}


def _save(asked: Asked, _: System, reader: Reader) -> dict[str, Any]:
    """The plan as a file. Takes {"plan"}; gives {"name", "text", "said": HTML}."""
    return plan.file_text(plan.entries_from(asked.get("plan"), reader))


def _load(asked: Asked, _: System, reader: Reader) -> dict[str, Any]:
    """What a plan file holds. Takes {"text"}; gives {"entries": for the plan, "problems", "loaded", "said": HTML}."""
    return plan.from_file(str(asked["text"]), reader)


def _stock(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    """What a worksheet shows of a dealer's stock. Takes {"worksheet", "plan", "stock": whose}; gives {"html"}."""
    from render import stock

    sheet, _, entries, _ = _see(asked, system, reader)
    return {"html": stock.section(stock.shop_of(str(asked["stock"])), sheet, entries)}


def _pick(asked: Asked, _: System, reader: Reader) -> dict[str, Any]:
    """Something from the stock is chosen. Takes {"stock", "shelf", "item", "plan"}; gives {"entries": for the plan}."""
    from render import stock

    entries = plan.entries_from(asked.get("plan"), reader)
    shop = stock.shop_of(str(asked["stock"]))
    return {"entries": stock.pick(shop, str(asked["shelf"]), str(asked["item"]), entries)}


def _quote(asked: Asked, _: System, reader: Reader) -> dict[str, Any]:
    """A dealer's quote for a plan. Takes {"stock", "plan", "date"}; gives {"html"}."""
    from render import quote

    return dict(quote.respond(asked, plan.entries_from(asked.get("plan"), reader)))


def _record(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    """The sizing record: see `record.respond`."""
    from render import record  # here: a page of worksheets does not wait for it

    return record.respond(asked, system, reader)


def _desk(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    """The dealer's desk: see `desk.respond`."""
    from render import desk

    return desk.respond(asked, system, reader)


def _practise(asked: Asked, system: System, reader: Reader) -> dict[str, Any]:
    """Work out a worksheet for nobody, as if its reader had typed the first numbers of its example.

    A file that is not here is not fetched for it.

    Takes {"worksheet", "turn": from 0 on, each with a number more}; gives nothing.
    """
    worksheet = WORKSHEETS[str(asked["worksheet"])]
    typed = list(worksheet.examples[0].given.items())[: int(asked["turn"]) + 1]
    as_typed = {worksheet.plan_key(key): {"text": text} for key, text in typed}
    at_first = {"plan": as_typed, "left_example": True, "flow": {"new": True}}
    with contextlib.suppress(winter_weather.NotHere):
        _worksheet({"worksheet": worksheet.key, **at_first}, system, reader)
    return {}


ANSWERS: dict[str, Callable[[Asked, System, Reader], dict[str, Any]]] = {
    "worksheet": _worksheet,
    "how": _how,
    "chart": _chart,
    "sweep": _sweep,
    "lines": _lines,
    "weather": _weather,
    "use": _use,
    "csv": _csv,
    "link": _link,
    "plan": _plan,
    "save": _save,
    "load": _load,
    "stock": _stock,
    "pick": _pick,
    "quote": _quote,
    "record": _record,
    "desk": _desk,
    "practise": _practise,
}


# What people and links put into boxes, beside numbers.
ODD = (
    "",
    " ",
    "ten",
    "1e308",
    "1e-320",
    "-0",
    "\N{VULGAR FRACTION ONE HALF}",
    "3 1/2",
    "1,5",
    "1.234,5",
    "\u0663",
    "\U0001f525",
    "9" * 400,
)


def run_every_example() -> None:
    """Run every worksheet once in both unit systems, chart included: what the page's Python must have on board."""
    year = [
        200 - abs(hour - HOURS // 2) // 12 + hour % 24 * 3 for hour in range(HOURS)
    ]  # cold at both ends, warm by day
    bring("weather/burlington-vt.txt", winter_weather.written(year))  # that of the example
    entries: dict[str, Any] = {}
    _ask("weather", text="time,temperature\n2025-01-01 00:00,3\n", degrees="C")
    bring("weather/file.txt", "")
    for key in WORKSHEETS:
        for system in SYSTEMS:
            _ask("worksheet", system, worksheet=key)
            _ask("how", system, worksheet=key)
            _ask("chart", system, worksheet=key)
            for number in range(len(WORKSHEETS[key].sweeps)):
                _ask("sweep", system, worksheet=key, sweep=number, points=1)
            _ask("worksheet", system, worksheet=key, plan={WORKSHEETS[key].fields[0].key: {"text": "1,5 apples"}})
        for name in spreadsheet.names(answer(key, {}, "us")):
            _ask("csv", worksheet=key, table=name)
        entries |= _ask("link", link=link_of(answer(key, {}, "us")), plan=entries)["fields"]
        for name in plan.offered(answer(key, {}, "us"), {}):
            _ask("use", worksheet=key, key=name, plan=entries)
    whole = next(worksheet for worksheet in WORKSHEETS.values() if worksheet.checks)
    for system, example in itertools.product(SYSTEMS, whole.examples):
        given = {key: {"text": text} for key, text in example.given.items()}
        _ask("record", system, plan=given, date="2026-11-25", address="record/")
        _ask("record", system, plan=entries | given, date="2026-11-25", address="record/")
        typed = {key: Typed(text) for key, text in example.given.items()}
        printed = link.packed(link_of(answer(whole.key, typed, system)))
        for text in (printed, printed[:-9], printed.replace("A", "B")):
            _ask("link", system, link=text, plan=given)
        _ask("desk", system, worksheet=whole.key, plan=given, form=True, code=True)
    for text in ODD:
        _ask("worksheet", worksheet=whole.key, plan={field.key: {"text": text} for field in whole.fields})
    _ask("lines", worksheet=whole.key, plan=entries)
    _ask("plan", plan=entries)
    _ask("load", text=_ask("save", plan=entries)["text"])
    _ask("load", text=json.dumps({"plan": entries}))


def _ask(what: str, units: System = "us", **asked: Any) -> dict[str, Any]:
    reply: dict[str, Any] = json.loads(respond(json.dumps({"ask": what, "units": units, **asked})))
    return reply
