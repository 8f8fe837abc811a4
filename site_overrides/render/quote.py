"""A dealer's quote: what the plan holds of the stock, with the dealer's prices, as a paper of the dealer's own.

Nothing of it is worked out by a worksheet: `bill.py` adds up what the dealer wrote.
"""

import datetime
from collections.abc import Mapping
from typing import Any

from calc.engine.plan import Entries
from render import bill, stock
from render.templating import fill


def respond(asked: Mapping[str, Any], entries: Entries) -> dict[str, str]:
    """The quote for a plan. Takes {"stock": whose, "date": "2026-11-25"}; gives {"html"}."""
    shop = stock.shop_of(str(asked["stock"]))
    told, picked = shop["quote"], stock.picked(shop, entries)
    made = bill.bill_of(shop, picked)

    html = fill(
        "quote.html",
        shop=shop,
        quote=told,
        chosen=bool(picked),
        lines=[(line, "ask" if line.amount is None else bill.shown(line.amount, shop)) for line in made.lines],
        open=any(line.amount is None for line in made.lines),
        net=bill.shown(made.net, shop),
        tax=bill.shown(made.tax, shop),
        total=bill.shown(made.total, shop),
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
