"""What the stock in a plan comes to at the dealer's own prices. It adds up what the dealer wrote, and nothing else."""

from collections.abc import Iterable, Mapping
from typing import Any, NamedTuple

from calc.units import fixed, grouped, unit_named, with_unit


class Line(NamedTuple):
    """A line of a bill; the amount is missing where the stock tells no price."""

    what: str
    key: str
    amount: float | None


class Bill(NamedTuple):
    """The lines of a bill, their sum and its tax, in the dealer's currency."""

    lines: tuple[Line, ...]
    net: float
    tax: float

    @property
    def total(self) -> float:
        """What is to be paid, as far as there are prices."""
        return self.net + self.tax


def bill_of(shop: Mapping[str, Any], items: Iterable[Mapping[str, Any]]) -> Bill:
    """The bill for these items, with the lines and the tax that stand in each of the dealer's quotes."""
    quote = shop["quote"] or {"lines": [], "share": 0.0}
    lines = (
        *(Line(item["name"], item["key"], item["price"]) for item in items),
        *(Line(line["what"], "", line["price"]) for line in quote["lines"]),
    )
    net = sum(line.amount for line in lines if line.amount is not None)
    return Bill(lines, net, round(net * quote["share"], 2))


def shown(amount: float, shop: Mapping[str, Any]) -> str:
    """An amount with the sign of the dealer's currency."""
    return with_unit(grouped(fixed(amount, 2), shop["units"]), unit_named(shop["currency"], "money"))
