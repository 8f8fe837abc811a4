"""A dealer's stock in the page: what can be picked, what a pick puts into the plan, and the smallest that passes.

The stock comes as text that the edition wrote when the site was built (`edition/offered.py`); it changes no sum and no
caution. A pick fills boxes, and each of its numbers carries the item's key, so that a link still says what was picked.
"""

import json
from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

from calc.answer import answer_plan
from calc.chosen import fields, lacks_of
from calc.engine.plan import Entries, Entry
from calc.engine.sheet import Sheet
from calc.engine.typed import Reader, item_key
from calc.units import System, fixed, show, shown_unit
from calc.worksheets import WORKSHEETS
from render.bill import bill_of, shown
from render.lacking import Lacking
from render.plan import as_typed, entry_for_page
from render.templating import fill

NEEDED = {"store_volume": "recommended"}  # the result that says how large a thing has to be, by what is its size
INSTALLED = "installed_cost"  # the input of which the stock's prices are a part
STILL_THE_EXAMPLES = "This rests on numbers of the worked example, too: give your own."
MOST_TRIED = 30  # items with which a worksheet is worked out
FAILS = ("stop", "unworkable")
_shops: dict[str, dict[str, Any]] = {}


class Sized(NamedTuple):
    """An item of a shelf and its size, SI."""

    item: Mapping[str, Any]
    si: float


def keep(shop: str, text: str) -> None:
    """Keep a dealer's stock, as the edition wrote it."""
    _shops[shop] = json.loads(text)


def shop_of(key: str) -> dict[str, Any]:
    """The stock of a dealer. Lacking before its text was brought."""
    if key not in _shops:
        raise Lacking(f"stock/{item_key(key)}.json")
    return _shops[key]


def names(key: str) -> dict[str, str]:
    """The name of each item of a dealer's stock, by its key."""
    return {item["key"]: item["name"] for shelf in shop_of(key)["shelves"] for item in shelf["items"]}


def section(shop: Mapping[str, Any], sheet: Sheet, entries: Entries, *, ready: bool = True) -> str:
    """What a worksheet shows of the stock: a choice for each shelf that it can use, and what is to be said about it.

    Before the page is `ready` the choices are empty, so that a page does not grow with the stock.
    """
    shelves = []
    for shelf in _shelves(shop, sheet):
        chosen = _chosen(shop, shelf, entries)
        said = [chosen["says"]] if chosen and chosen["says"] else []
        said += [*suggestion(shop, shelf, sheet, entries), *_changed(shop, shelf, sheet, entries)] if ready else []
        facts = list(_facts(shop, chosen)) if chosen else []
        shelves.append({"shelf": shelf, "chosen": chosen["key"] if chosen else "", "facts": facts, "said": said})
    shelves += _installed(shop, sheet, entries)
    rules = list(_rules(shop, sheet))
    if not shelves and not rules:
        return ""
    return str(fill("stock.html", dealer=shop["dealer"], shelves=shelves, rules=rules, sheet=sheet, ready=ready))


def pick(shop: Mapping[str, Any], shelf_key: str, chosen: str, entries: Entries) -> dict[str, Any]:
    """What choosing an item puts into the plan; null for what another one of its shelf had put there."""
    if shelf_key == INSTALLED:
        cost = f"{fixed(bill_of(shop, picked(shop, entries)).total, 2)} {shop['currency']}"
        return {INSTALLED: None} | (_typed({INSTALLED: cost}, shop, entries, "stock") if chosen else {})
    shelf = next(shelf for shelf in shop["shelves"] if shelf["key"] == shelf_key)
    item = next((item for item in shelf["items"] if item["key"] == chosen), None)
    if shelf["tells_apart"]:
        before = _chosen(shop, shelf, entries)
        gone = {key for key, text in (before["fills"] if before else {}).items() if _holds(shop, entries, key, text)}
    else:
        others = {item["key"] for item in shelf["items"]}
        gone = {key for key, entry in entries.items() if entry.item in others}
    taken: dict[str, Any] = dict.fromkeys(gone)
    if item:
        whose = ("", "") if shelf["tells_apart"] else ("stock", item["key"])  # no link names a place
        taken |= _typed(item["fills"], shop, entries, *whose)
    return taken


def _typed(
    fills: Mapping[str, str], shop: Mapping[str, Any], entries: Entries, giver: str, item: str = ""
) -> dict[str, Any]:
    """Texts of an edition as the page keeps them, each with who gave it and the key of its item."""
    given = {key: Entry(text, "typed", system=shop["units"], giver=giver, item=item) for key, text in fills.items()}
    given |= as_typed(Entries(given, entries.reader))
    return {key: entry_for_page(entry) for key, entry in given.items()}


def _holds(shop: Mapping[str, Any], entries: Entries, key: str, text: str) -> bool:
    """Whether a plan says of an input what this text says."""
    field = fields()[key][0]
    here = entries.value(field, entries[key]) if key in entries else None
    there = entries.value(field, Entry(text, "typed", system=shop["units"]))
    return bool(here and there and here.si == there.si)


def picked(shop: Mapping[str, Any], entries: Entries) -> list[Mapping[str, Any]]:
    """The items of the stock that a plan holds, in the order of the shelves; a place is none of them."""
    shelves = (shelf for shelf in shop["shelves"] if not shelf["tells_apart"])
    return [item for shelf in shelves if (item := _chosen(shop, shelf, entries))]


def _shelves(shop: Mapping[str, Any], sheet: Sheet) -> Iterator[Mapping[str, Any]]:
    """The shelves whose items fill in something that a worksheet asks, or whose size it works out."""
    asked = {field.key for field in sheet.worksheet.all_fields()}
    for shelf in shop["shelves"]:
        fills = {key for item in shelf["items"] for key in item["fills"]}
        tells = any(NEEDED.get(size) in {result.key for result in sheet.worksheet.results} for size in shelf["sizes"])
        if tells or asked & (set(shelf["sizes"]) or fills):
            yield shelf


def _chosen(shop: Mapping[str, Any], shelf: Mapping[str, Any], entries: Entries) -> Mapping[str, Any] | None:
    if shelf["tells_apart"]:
        told = (
            (item, [_holds(shop, entries, key, item["fills"][key]) for key in shelf["tells_apart"]])
            for item in shelf["items"]
        )
        return next((item for item, holds in told if all(holds)), None)
    keys = {entry.item for entry in entries.values() if entry.item}
    return next((item for item in shelf["items"] if item["key"] in keys), None)


def _facts(shop: Mapping[str, Any], item: Mapping[str, Any]) -> Iterator[dict[str, str]]:
    for fact in shop["facts"]:
        if fact["key"] in item["facts"]:
            yield {"label": fact["label"], "kind": fact["kind"], "text": item["facts"][fact["key"]]}


def _installed(shop: Mapping[str, Any], sheet: Sheet, entries: Entries) -> list[dict[str, Any]]:
    """The choice that fills in what the stock in a plan comes to, where the installed cost is asked and it has a price.

    An appliance and a tank are a part of that cost, and the reader is told which.
    """
    if INSTALLED not in {field.key for field in sheet.worksheet.all_fields()}:
        return []
    items = [item for item in picked(shop, entries) if item["price"] is not None]
    if not items:
        return []
    made = bill_of(shop, items)
    total, field, entry = shown(made.total, shop), fields()[INSTALLED][0], entries.get(INSTALLED)
    ours = bool(entry and entry.giver == "stock")
    here = _holds(shop, entries, INSTALLED, f"{fixed(made.total, 2)} {shop['currency']}")
    said = [
        f"At the prices of {shop['dealer']}{', tax included,' if made.tax else ''} this is for "
        f"{'; '.join(line.what for line in made.lines)}. Piping, flue and fitting come on top where they are not among "
        "these, so give the whole sum as soon as you know it."
    ]
    if ours and not here:
        said.append(
            "The installed cost in your plan is what an earlier choice came to. Choose this one to take it instead."
        )
    item = {"key": INSTALLED, "name": f"{total} of it, from this stock"}
    shelf = {"key": INSTALLED, "label": field.label, "items": [item]}
    return [{"shelf": shelf, "chosen": INSTALLED if ours and here else "", "facts": [], "said": said}]


# --- the smallest that passes


def suggestion(shop: Mapping[str, Any], shelf: Mapping[str, Any], sheet: Sheet, entries: Entries) -> list[str]:
    """In a sentence or two the smallest item of a shelf that passes, and why the next smaller does not.

    Nothing is said for the worked example, and where the smallest of all makes no difference to what a worksheet finds.
    A worksheet that takes seconds, a whole winter, is not worked out for every item.
    """
    size = next((key for key in shelf["sizes"] if all(key in item["fills"] for item in shelf["items"])), None)
    if size is None or sheet.example or sheet.problems or sheet.worksheet.sweeps:
        return []
    rows = (Sized(item, _si(size, item["fills"][size], shop["units"], entries.reader)) for item in shelf["items"])
    items = sorted(rows, key=lambda row: row.si)
    needed = next((result for result in sheet.results if result.key == NEEDED.get(size)), None)
    said: list[str] = []
    if needed is not None and isinstance(needed.si, float):
        said = _large_enough(items, needed.si, size, sheet.system)
    elif size in {field.key for field in sheet.course.fields}:
        said = _passing(shop, shelf, items, sheet, entries)
    return [*said, STILL_THE_EXAMPLES] if said and lacks_of(sheet.inputs) else said


def _si(key: str, text: str, system: System, reader: Reader) -> float:
    return Entries({}, reader).si(fields()[key][0], Entry(text, "typed", system=system)) or 0.0


def _large_enough(items: list[Sized], needed: float, size: str, system: System) -> list[str]:
    unit = shown_unit(fields()[size][0].kind, system)
    wanted = show(needed, unit, system)
    smaller = [row for row in items if row.si < needed]
    if len(smaller) == len(items):
        return [
            f"None in stock is as large as the {wanted} recommended: the largest, {items[-1].item['name']}, is not."
        ]
    fits = items[len(smaller)].item["name"]
    if not smaller:
        return [f"The smallest in stock, {fits}, is enough for the {wanted} recommended."]
    less = smaller[-1]
    return [
        f"The smallest that is enough: {fits}. The next smaller, {less.item['name']}, is not, because {wanted} are "
        f"recommended and it holds {show(less.si, unit, system)}."
    ]


def _passing(
    shop: Mapping[str, Any], shelf: Mapping[str, Any], items: list[Sized], sheet: Sheet, entries: Entries
) -> list[str]:
    before, why = "", ""
    for row in items[:MOST_TRIED]:
        fails = _why_it_fails(sheet, {**entries, **_filled(shop, row.item)}, entries.reader)
        if not fails:
            if not before:
                return []
            because = why.replace("Because", ", because", 1) if why.startswith("Because ") else f": {why}"
            return [f"The smallest that passes here: {row.item['name']}. The next smaller, {before}, does not{because}"]
        before, why = str(row.item["name"]), fails
    return [f"Choosing another {shelf['label'].lower()} from the stock does not help here. With {before}: {why}"]


def _filled(shop: Mapping[str, Any], item: Mapping[str, Any]) -> dict[str, Entry]:
    return {key: Entry(text, "typed", system=shop["units"]) for key, text in item["fills"].items()}


def _why_it_fails(sheet: Sheet, plan: Mapping[str, Entry], reader: Reader) -> str:
    tried = answer_plan(WORKSHEETS[sheet.worksheet.key], Entries(plan, reader), sheet.system)
    if tried.problems:
        return tried.problems[0].text
    return tried.judgement.text if tried.judgement and tried.judgement.level in FAILS else ""


# --- a stock that has changed, and a dealer's own rules


def _changed(shop: Mapping[str, Any], shelf: Mapping[str, Any], sheet: Sheet, entries: Entries) -> Iterator[str]:
    """What is to be said where a link's item is gone from the stock, or has other numbers there now."""
    known = {item["key"]: item for stands in shop["shelves"] for item in stands["items"]}
    gone = dict.fromkeys(
        entry.item for key, entry in entries.items() if entry.item and entry.item not in known and key in shelf["sizes"]
    )
    for key in gone:
        yield f"“{key}” is no longer in the stock of {shop['dealer']}. The numbers that came with it stand as they are."
    item = _chosen(shop, shelf, entries)
    if item is None:
        return
    for key, entry in entries.items():
        if entry.item != item["key"] or key not in fields():
            continue
        now = item["fills"].get(key)
        field = fields()[key][0]
        here, there = entries.value(field, entry), None
        if now is not None:
            there = entries.value(field, Entry(now, "typed", system=shop["units"]))
        if here and (there is None or there.si != here.si):
            of_stock = there.shown(sheet.system) if there else "nothing"
            yield (
                f"{item['name']} has other numbers in the stock now ({field.label}: {of_stock}; here "
                f"{here.shown(sheet.system)}). Choose it again to take those."
            )
            return


def _rules(shop: Mapping[str, Any], sheet: Sheet) -> Iterator[dict[str, str]]:
    for rule in shop["rules"]:
        entry, headline = sheet.inputs.get(rule["of"]), sheet.headline
        if rule["worksheet"] != sheet.worksheet.key or headline is None:
            continue
        here = ""
        if entry and isinstance(entry.si, float) and not sheet.example:
            here = show(entry.si * rule["share"], shown_unit(headline.kind, sheet.system), sheet.system)
        yield {"says": rule["says"], "here": here}
