"""What an edition offers in the page: its stock, its own rules of thumb and its quote, as the page's Python takes them.

It is published as one small file, which a page fetches when it first shows something of the stock.
"""

from typing import Any

from calc.answer import answer
from calc.units import Quantity, System
from calc.worksheets import WORKSHEETS
from edition.declared import CURRENCIES, FACTS, PLACES, SHELVES, Shelf, inputs
from edition.reading import EditionError, measured
from edition.stock import Stock

_PLACE = next(shelf for shelf in SHELVES if shelf.key == PLACES)


def offered(own: Any) -> dict[str, Any]:
    """All of an edition that the page's Python needs to know, in plain lists and texts."""
    units, quote = own.units, own.told.get("quote")
    rules = [{**rule, **_amounts_of(rule, units)} for rule in own.told.get("rules", [])]
    shelves = [*_places(own), *(_shelf(shelf, own) for shelf in SHELVES if shelf is not _PLACE and _rows(shelf, own))]
    return {
        "dealer": own.name,
        "contact": own.contact,
        "units": own.units,
        "shelves": shelves,
        "facts": [fact._asdict() for fact in FACTS],
        "rules": rules,
        "currency": own.told.get("currency", CURRENCIES[0] if units == "us" else CURRENCIES[1]),
        "quote": _quote(quote, units) if quote else None,
    }


def place_label(own: Any) -> str:
    """What the choice is called that fills in the fuel prices; without places it fills in nothing else."""
    return _PLACE.label if own.places else "Fuel prices"


def _places(own: Any) -> list[dict[str, Any]]:
    """The choice that fills in what is the same for every house of a place, the fuel prices among it.

    What is chosen is told by `tells_apart`, the numbers themselves, since no link names a place.
    """
    rows = own.places or ([Stock("Those of the dealer", {})] if own.prices else [])
    items = [
        {
            "key": str(number),
            "name": row.name,
            "says": f"Who says so: {row.says}." if row.says else "",
            "fills": {**own.prices, **row.fills},
            "facts": {},
            "price": None,
        }
        for number, row in enumerate(rows, 1)
    ]
    apart = _PLACE.needs if own.places else own.prices
    made = {"key": _PLACE.key, "what": _PLACE.what, "label": place_label(own), "sizes": [], "tells_apart": list(apart)}
    return [{**made, "items": items}] if items else []


def _rows(shelf: Shelf, own: Any) -> tuple[Stock, ...]:
    rows: tuple[Stock, ...] = getattr(own, shelf.key)
    return rows


def _shelf(shelf: Shelf, own: Any) -> dict[str, Any]:
    items = [
        {
            "key": item.key,
            "name": item.name,
            "says": "",
            "fills": item.fills,
            "facts": item.facts,
            "price": _money(item.facts["price"], own.units) if "price" in item.facts else None,
        }
        for item in _rows(shelf, own)
    ]
    told = {"key": shelf.key, "what": shelf.what, "label": shelf.label, "sizes": list(shelf.sizes)}
    return {**told, "tells_apart": [], "items": items}


def _money(text: str, units: System) -> float:
    return round(measured(text, "money", units, "").si, 2)


def _amounts_of(rule: dict[str, str], units: System) -> dict[str, float]:
    """What a rule asks for, SI, for each SI unit of what it goes out from."""
    each, gives = _rule(rule, units, "")
    return {"share": gives.si / each.si}


def _quote(told: dict[str, Any], units: System) -> dict[str, Any]:
    return {
        "share": measured(told["tax"], "fraction", units, "").si if "tax" in told else 0.0,
        "tax": told.get("tax", ""),
        "tax_name": told.get("tax_name", "Tax"),
        "valid_days": told["valid_days"],
        "lines": [{**line, "price": _money(line["price"], units)} for line in told.get("lines", [])],
        "says": told.get("says", ""),
    }


def check_offered(told: dict[str, Any], units: System, shelves: dict[str, Any], where: str) -> None:
    """Raise EditionError where a rule of thumb or a quote cannot be worked out."""
    for number, rule in enumerate(told.get("rules", []), 1):
        _check_rule(rule, units, f"{where}, rules, number {number}")
    quote = told.get("quote")
    if not quote:
        return
    if "currency" not in told:
        raise EditionError(f'{where}, quote: say the currency of your prices: write currency = "USD" or "EUR".')
    if not any("price" in item.facts for items in shelves.values() for item in items):
        raise EditionError(f"{where}, quote: nothing in the stock has a price: write a column price, or leave it out.")
    if "tax" in quote:
        share = measured(quote["tax"], "fraction", units, f"{where}, quote, tax").si
        if not 0 <= share <= 1:
            raise EditionError(f"{where}, quote, tax: “{quote['tax']}” is no tax: write a share between 0 and 100 %.")
    for number, line in enumerate(quote.get("lines", []), 1):
        measured(line["price"], "money", units, f"{where}, quote, lines, number {number}, price")


def _check_rule(rule: dict[str, str], units: System, where: str) -> None:
    worksheet = WORKSHEETS[rule["worksheet"]]
    if rule["of"] not in {field.key for field in worksheet.all_fields()}:
        raise EditionError(f"{where}, of: the worksheet {worksheet.key} does not ask {rule['of']}.")
    each, _ = _rule(rule, units, where)
    if each.si <= 0:
        raise EditionError(f"{where}, each: “{rule['each']}” is nothing: write how much of {rule['of']} is meant.")


def _rule(rule: dict[str, str], units: System, where: str) -> tuple[Quantity, Quantity]:
    headline = answer(rule["worksheet"], {}, units).headline
    if headline is None or not isinstance(headline.si, float):
        raise EditionError(
            f"{where}, worksheet: {rule['worksheet']} answers with no amount, so no rule stands beside it."
        )
    each = measured(rule["each"], inputs()[rule["of"]][0].kind, units, f"{where}, each")
    return each, measured(rule["gives"], headline.kind, units, f"{where}, gives")
