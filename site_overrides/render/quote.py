"""A dealer's quote: what the plan holds of the stock, with the dealer's prices, as a paper of the dealer's own.

Nothing of it is worked out by a worksheet: it adds up what the dealer wrote.
"""

import datetime
from collections.abc import Mapping
from typing import Any, NamedTuple

from calc.engine.plan import Entries
from calc.units import fixed, grouped, unit_named, with_unit
from render import stock
from render.templating import fill


class Line(NamedTuple):
    """A line of a quote; the amount is missing where the stock tells no price."""

    what: str
    key: str
    amount: float | None


def respond(asked: Mapping[str, Any], entries: Entries) -> dict[str, str]:
    """The quote for a plan. Takes {"stock": whose, "date": "2026-11-25"}; gives {"html"}."""
    shop = stock.shop_of(str(asked["stock"]))
    told, units = shop["quote"], shop["units"]
    picked = [Line(item["name"], item["key"], item["price"]) for item in stock.picked(shop, entries)]
    lines = [*picked, *(Line(line["what"], "", line["price"]) for line in told["lines"])]
    net = sum(line.amount for line in lines if line.amount is not None)
    tax = round(net * told["share"], 2)
    unit = unit_named(told["currency"], "money")

    def shown(amount: float | None) -> str:
        return "ask" if amount is None else with_unit(grouped(fixed(amount, 2), units), unit)

    html = fill(
        "quote.html",
        shop=shop,
        quote=told,
        chosen=bool(picked),
        lines=[(line, shown(line.amount)) for line in lines],
        open=any(line.amount is None for line in lines),
        net=shown(net),
        tax=shown(tax),
        total=shown(net + tax),
        date=_day(asked.get("date"), 0),
        until=_day(asked.get("date"), told["valid_days"]),
    )
    return {"html": str(html)}


def _day(text: object, later: int) -> str:
    """A day so many days later, in words; nothing where the page told no day."""
    try:
        day = datetime.date.fromisoformat(str(text)) + datetime.timedelta(days=later)
    except (ValueError, OverflowError):
        return ""
    return f"{day.day} {day:%B %Y}"
