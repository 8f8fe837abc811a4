"""What an edition may say: every entry of edition.toml, declared once for its reader and for its JSON Schema."""

from pathlib import Path
from typing import NamedTuple

from calc.engine.fields import Field
from calc.engine.plan import fields_by_key
from calc.units import SYSTEMS
from calc.worksheets import WORKSHEETS

GUIDES = Path(__file__).parent.parent.parent / "docs" / "guides"
# What keeps people from harm stays in every menu: pressure, boiling, frost, the chimney, and what law and insurers ask.
ALWAYS_SHOWN = ("antifreeze", "dump", "law", "open-or-pressurised", "safety", "stove")
CURRENCIES = ("USD", "EUR")  # those in which calc has prices


class Item(NamedTuple):
    """One entry: its key, its kind, and what to write, as the end of a sentence that begins with “write”.

    Kinds: text; choice (one of `options`); choices (a list of them); flag; date; table (`items` are its entries); rows
    (tables, each with `items`); fills (inputs' keys with texts, as a reader types them; `options` are the keys).
    """

    key: str
    kind: str
    write: str
    required: bool = False
    options: tuple[str, ...] = ()
    items: tuple["Item", ...] = ()
    longest: int = 200


class Shelf(NamedTuple):
    """Something that a dealer picks from: where its rows may stand, and the inputs without which a row is of no use."""

    key: str
    what: str
    needs: tuple[str, ...]


SHELVES = (
    Shelf("places", "a place", ("altitude", "design_outdoor")),
    Shelf("appliances", "an appliance", ("water_output",)),
    Shelf("tanks", "a tank", ("store_volume",)),
)


def inputs() -> dict[str, list[Field]]:
    """Every input that some worksheet asks, by its key."""
    return fields_by_key(WORKSHEETS.values())


def price_keys() -> tuple[str, ...]:
    """The inputs that are prices of fuels."""
    return tuple(key for key in inputs() if key.startswith("fuel_price_"))


def hideable() -> tuple[str, ...]:
    """The guides that an edition may leave out of its menu."""
    return tuple(sorted(path.stem for path in GUIDES.glob("*.md") if path.stem not in ALWAYS_SHOWN))


def _shelf(shelf: Shelf) -> Item:
    needs = " and ".join(shelf.needs)
    items = [
        Item("name", "text", "the name by which it is picked", required=True, longest=80),
        Item("fills", "fills", f"the inputs that it fills in, {needs} among them", True, tuple(inputs())),
    ]
    if shelf.key == "places":
        items.append(Item("says", "text", "who says so: the body, the table and its year"))
    return Item(shelf.key, "rows", f"{shelf.what} with its name and what it fills in", items=tuple(items))


def entries() -> tuple[Item, ...]:
    """All that edition.toml may hold."""
    guides = tuple(sorted(path.stem for path in GUIDES.glob("*.md")))
    colours = (
        Item("bar", "text", "the bar's colour, like #17383f", longest=7),
        Item("accent", "text", "the colour of links and buttons on the light page, like #0d5b6e", longest=7),
        Item("accent_dark", "text", "the colour of links and buttons on the dark page, like #86d3dd", longest=7),
    )
    prices = (
        Item("date", "date", "the day on which these prices held, like 2026-11-01", required=True),
        Item("says", "text", "whose prices they are"),
        *(Item(key, "text", f"a price with its unit ({inputs()[key][0].label})") for key in price_keys()),
    )
    note = (
        Item("text", "text", "what the reader should know, in plain text", required=True, longest=2000),
        Item("says", "text", "who says so, and when", required=True),
        Item(
            "guide",
            "choice",
            "the guide at whose head it stands; without one it is the guide to the law",
            False,
            guides,
        ),
    )
    return (
        Item("name", "text", "your name, as the desk and the messages show it", required=True, longest=80),
        Item("contact", "text", "how to reach you, as the last line of each message", required=True),
        Item("units", "choice", "the units in which the site opens", required=True, options=SYSTEMS),
        Item(
            "site_name",
            "text",
            "the name of the site, short: a telephone shows two short lines",
            longest=40,
        ),
        Item("logo", "text", "the name of an SVG or PNG file in the edition's folder", longest=100),
        Item("colours", "table", "the site's colours", items=colours),
        Item("currency", "choice", "the currency of your prices", options=CURRENCIES),
        Item("prices", "table", "fuel prices with their date", items=prices),
        Item("hidden_guides", "choices", "guides that the menu leaves out", options=hideable()),
        Item("notes", "rows", "a note about local rules", items=note),
        Item("demonstrations", "flag", "true to keep the invented dealers' pages and houses"),
        *map(_shelf, SHELVES),
    )
