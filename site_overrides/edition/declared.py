"""What an edition may say: every entry of edition.toml, declared once for its reader and for its JSON Schema."""

from functools import cache
from pathlib import Path
from typing import NamedTuple

from calc.engine.fields import Field
from calc.engine.plan import fields_by_key
from calc.units import SYSTEMS
from calc.worksheets import WORKSHEETS

GUIDES = Path(__file__).parent.parent.parent / "docs" / "guides"
# What keeps people from harm stays in every menu: pressure, boiling, frost, the chimney, and what law and insurers ask.
ALWAYS_SHOWN = ("antifreeze", "dump", "law", "open-or-pressurised", "safety", "stove")
LONGEST_SITE_NAME = 40  # characters: three lines in the bar of a telephone
CURRENCIES = ("USD", "EUR")  # those in which calc has prices


class Item(NamedTuple):
    """One entry: its key, its kind, and what to write, as the end of a sentence that begins with “write”.

    Kinds: text; choice (one of `options`); choices (a list of them); flag; count; date; table (`items` are its
    entries); rows (tables, each with `items`); fills (inputs' keys with texts, as a reader types them; `options` are
    the keys).
    """

    key: str
    kind: str
    write: str
    required: bool = False
    options: tuple[str, ...] = ()
    items: tuple["Item", ...] = ()
    longest: int = 200


class Shelf(NamedTuple):
    """Something that a dealer picks from: where its rows may stand, and the inputs without which a row is of no use.

    `label` is said to the reader. `sizes` are the inputs that tell a small one from a large one; the first that all
    rows fill in counts.
    """

    key: str
    what: str
    label: str
    needs: tuple[str, ...] = ()
    sizes: tuple[str, ...] = ()


PLACES = "places"  # the shelf on which no stock stands
SHELVES = (
    Shelf(PLACES, "a place", "Where the house stands", ("altitude", "design_outdoor")),
    Shelf("appliances", "an appliance", "Appliance", ("water_output",), ("water_output",)),
    Shelf("tanks", "a tank", "Tank", ("store_volume",), ("store_volume",)),
    Shelf(
        "exchangers",
        "an exchanger",
        "Exchanger for the taps",
        (),
        ("plate_rating", "coil_rating", "exchanger_conductance"),
    ),
    Shelf("coils", "a coil", "Coil in the ducts", (), ("rated_coil_heat", "coil_ua")),
    Shelf("valves", "a valve", "Valve"),
)


class Fact(NamedTuple):
    """What stock may say of itself that no worksheet asks. Kinds: text, address, or that of a quantity."""

    key: str
    label: str
    kind: str


FACTS = (
    Fact("price", "Price", "money"),
    Fact("listing", "Tested and listed to", "text"),
    Fact("clearance_back", "Clearance behind", "length"),
    Fact("clearance_side", "Clearance at the sides", "length"),
    Fact("clearance_front", "Clearance in front", "length"),
    Fact("weight", "Weight", "mass"),
    Fact("documents", "Documents", "address"),
)


@cache
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
    else:
        items.append(Item("key", "text", "its key in links; without one it is made from the name", longest=40))
        facts = tuple(Item(fact.key, "text", f"what the maker or you say of it ({fact.label})") for fact in FACTS)
        items.append(Item("facts", "table", "what no worksheet asks", items=facts))
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
    rule = (
        Item("says", "text", "the rule in your words", required=True),
        Item("worksheet", "choice", "the worksheet beside whose answer it stands", True, tuple(WORKSHEETS)),
        Item("of", "choice", "the input of that worksheet from which it goes out", True, tuple(inputs())),
        Item("each", "text", 'for how much of that input it is meant, like "1 kW"', required=True),
        Item("gives", "text", 'how much that asks for, like "60 L"', required=True),
    )
    line = (
        Item("what", "text", "what it is, such as delivery", required=True),
        Item("price", "text", "its price with its unit", required=True),
    )
    quote = (
        Item("tax", "text", 'the tax on the whole, like "7 %"'),
        Item("tax_name", "text", "what that tax is called", longest=40),
        Item("valid_days", "count", "for how many days a quote holds", required=True),
        Item("lines", "rows", "what is in each quote beside the stock chosen", items=line),
        Item("says", "text", "what else stands below it, such as who fits it"),
    )
    return (
        Item("name", "text", "your name, as the desk and the messages show it", required=True, longest=80),
        Item("contact", "text", "how to reach you, as the last line of each message", required=True),
        Item("units", "choice", "the units in which the site opens", required=True, options=SYSTEMS),
        Item(
            "site_name",
            "text",
            "the name of the site, short: it stands in the bar of a telephone",
            longest=LONGEST_SITE_NAME,
        ),
        Item("logo", "text", "the name of an SVG or PNG file in the edition's folder", longest=100),
        Item("colours", "table", "the site's colours", items=colours),
        Item("currency", "choice", "the currency of your prices", options=CURRENCIES),
        Item("prices", "table", "fuel prices with their date", items=prices),
        Item("hidden_guides", "choices", "guides that the menu leaves out", options=hideable()),
        Item("notes", "rows", "a note about local rules", items=note),
        Item("rules", "rows", "a rule of thumb of your own", items=rule),
        Item("quote", "table", "a quote to print; your stock needs prices for it", items=quote),
        Item("demonstrations", "flag", "true to keep the invented dealers' pages and houses"),
        *map(_shelf, SHELVES),
    )
