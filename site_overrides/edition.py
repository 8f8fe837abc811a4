"""An edition: one dealer's name, words, units, places and stock, read from its folder when the site is built.

    editions/<key>/edition.toml     name, contact, units, and lists of places, appliances and tanks
    editions/<key>/houses/*.txt     plan files of houses to show, named by the house

What a place, an appliance or a tank fills in is written as a reader would type it, by the worksheets' keys. A key that
no worksheet asks, or a text that its field would refuse, stops the build and says which.
"""

import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from calc.engine import plan
from calc.engine.plan import Entry
from calc.units import SYSTEMS
from calc.worksheets import WORKSHEETS

FOLDER = Path(__file__).parent / "editions"
SHELVES = ("places", "appliances", "tanks")


@dataclass(frozen=True)
class Stock:
    """Something that a dealer picks, and the texts that it puts into a worksheet's boxes."""

    name: str
    fills: dict[str, str]


@dataclass(frozen=True)
class Edition:
    """A dealer's words and stock; the three shelves are the desk's lists, in order."""

    key: str
    name: str
    contact: str
    units: str
    places: tuple[Stock, ...]
    appliances: tuple[Stock, ...]
    tanks: tuple[Stock, ...]
    houses: dict[str, dict[str, Entry]]


class EditionError(ValueError):
    """An edition that cannot be used; the message names its file and what is wrong."""


def load(key: str, folder: Path = FOLDER) -> Edition:
    """The edition of that key. EditionError if there is none, or if something in it cannot be used."""
    path = folder / key / "edition.toml"
    if not path.is_file():
        raise EditionError(f"there is no edition called {key!r}: {path.name} is looked for in editions/{key}")
    try:
        told = tomllib.loads(path.read_text(encoding="utf-8"))
    except tomllib.TOMLDecodeError as wrong:
        raise EditionError(f"editions/{key}/edition.toml cannot be read: {wrong}") from None
    unknown = told.keys() - {"name", "contact", "units", *SHELVES}
    if unknown:
        raise EditionError(f"editions/{key}/edition.toml holds what no edition has: {', '.join(sorted(unknown))}")
    for wanted in ("name", "contact"):
        if not isinstance(told.get(wanted), str):
            raise EditionError(f"editions/{key}/edition.toml lacks {wanted}, a text")
    if told.get("units") not in SYSTEMS:
        raise EditionError(f"editions/{key}/edition.toml: units must be one of {', '.join(SYSTEMS)}")
    places, appliances, tanks = (_shelf(key, name, told.get(name, [])) for name in SHELVES)
    houses = {_house_name(path): _house(key, path) for path in sorted((folder / key / "houses").glob("*.txt"))}
    return Edition(key, told["name"], told["contact"], told["units"], places, appliances, tanks, houses)


def _shelf(key: str, shelf: str, rows: list[dict[str, Any]]) -> tuple[Stock, ...]:
    stock = []
    for row in rows:
        if row.keys() != {"name", "fills"}:
            raise EditionError(f"editions/{key}/edition.toml: everything under {shelf} has a name and what it fills")
        _check(
            f"editions/{key}/edition.toml, {row['name']}",
            {name: Entry(text, "typed") for name, text in row["fills"].items()},
        )
        stock.append(Stock(row["name"], row["fills"]))
    return tuple(stock)


def _check(where: str, entries: dict[str, Entry]) -> None:
    problems = plan.read(plan.write(entries), WORKSHEETS.values()).problems
    if problems:
        raise EditionError(f"{where}: {' '.join(problems)}")


def _house_name(path: Path) -> str:
    return path.stem.replace("-", " ").title()


def _house(key: str, path: Path) -> dict[str, Entry]:
    opened = plan.read(path.read_text(encoding="utf-8"), WORKSHEETS.values())
    if opened.problems:
        raise EditionError(f"editions/{key}/houses/{path.name}: {' '.join(opened.problems)}")
    return opened.entries
