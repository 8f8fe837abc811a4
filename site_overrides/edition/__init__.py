"""An edition: one dealer's name, looks, words, units, places and stock, read from its folder when the site is built.

    edition.toml                            all that `declared.py` lists
    places.csv, appliances.csv, tanks.csv,  stock as tables: a column `name`, and one for each input that it fills in
    exchangers.csv, coils.csv, valves.csv
    houses/*.txt                            plan files of houses to show, named by the house

What a place, an appliance or a tank fills in is written as a reader would type it, by the worksheets' keys. A key that
no worksheet asks, or a text that its field would refuse, stops the build and says which.
"""

import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from calc.engine import plan_file
from calc.engine.plan import Entry
from calc.units import System
from calc.worksheets import WORKSHEETS
from edition import looks, stock
from edition.declared import LONGEST_SITE_NAME, SHELVES, entries
from edition.offered import check_offered
from edition.reading import EditionError, check, check_value
from edition.stock import Stock

__all__ = ["FOLDER", "Edition", "EditionError", "Stock", "files", "load", "read"]

FOLDER = Path(__file__).parent.parent / "editions"
LARGEST = 1_000_000  # bytes of edition.toml, or of a house


@dataclass(frozen=True)
class Edition:
    """What a dealer says and has; the shelves are lists to pick from, in order.

    `told` is all of edition.toml, checked; `logo` is the file of the logo, if there is one.
    """

    key: str
    name: str
    contact: str
    units: System
    places: tuple[Stock, ...]
    appliances: tuple[Stock, ...]
    tanks: tuple[Stock, ...]
    exchangers: tuple[Stock, ...]
    coils: tuple[Stock, ...]
    valves: tuple[Stock, ...]
    houses: dict[str, dict[str, Entry]]
    told: dict[str, Any]
    logo: Path | None

    @property
    def site_name(self) -> str:
        """The name of the whole site."""
        return str(self.told.get("site_name", self.name))

    @property
    def prices(self) -> dict[str, str]:
        """Prices of fuels, by the worksheets' keys."""
        return {key: text for key, text in self.told.get("prices", {}).items() if key not in ("date", "says")}


def load(key: str) -> Edition:
    """One of the project's own editions. EditionError if there is none, or if something in it cannot be used."""
    return read(FOLDER / key)


def read(folder: Path) -> Edition:
    """The edition in a folder. EditionError if there is none, or if something in it cannot be used."""
    folder = folder.resolve()
    path, name = folder / "edition.toml", f"{folder.name}/edition.toml"
    if not path.is_file():
        raise EditionError(f"There is no edition in {folder}: its file edition.toml is missing.")
    try:
        told = tomllib.loads(_text(path))
    except tomllib.TOMLDecodeError as wrong:
        raise EditionError(f"{name} cannot be read: {wrong}.") from None
    check(told, entries(), name)
    if "site_name" not in told and len(told["name"]) > LONGEST_SITE_NAME:
        raise EditionError(
            f"{name}: your name has more than {LONGEST_SITE_NAME} characters, too many for the bar of a page: write a "
            "shorter one as site_name, too."
        )
    units: System = told["units"]
    for key, text in told.get("prices", {}).items():
        if key not in ("date", "says"):
            check_value(key, text, units, f"{name}, prices, {key}", told.get("currency", ""))
    looks.check_colours(told.get("colours", {}), f"{name}, colours")
    shelves = stock.shelves(folder, told, units)
    check_offered(told, units, shelves, name)
    return Edition(
        key=folder.name,
        name=told["name"],
        contact=told["contact"],
        units=units,
        houses={_house_name(path): _house(path) for path in sorted((folder / "houses").glob("*.txt"))},
        told=told,
        logo=looks.check_logo(folder, told["logo"], f"{name}, logo") if "logo" in told else None,
        **shelves,
    )


def files(folder: Path) -> Iterator[Path]:
    """The files in a folder that an edition is made from, in a fixed order."""
    wanted = [*(f"{shelf.key}.csv" for shelf in SHELVES), "edition.toml", "*.svg", "*.png", "houses/*.txt"]
    for pattern in wanted:
        yield from sorted(folder.glob(pattern))


def _text(path: Path) -> str:
    name = f"{path.parent.name}/{path.name}"
    if path.stat().st_size > LARGEST:
        raise EditionError(f"{name} is larger than {LARGEST:,} bytes, and nothing that belongs there is so long.")
    try:
        return path.read_text(encoding="utf-8").removeprefix("\ufeff")
    except UnicodeDecodeError:
        raise EditionError(f"{name} is not in UTF-8: save it as plain text in UTF-8.") from None


def _house_name(path: Path) -> str:
    return path.stem.replace("-", " ").title()


def _house(path: Path) -> dict[str, Entry]:
    opened = plan_file.read(_text(path), WORKSHEETS.values())
    if opened.problems:
        raise EditionError(f"houses/{path.name}: {' '.join(opened.problems)}")
    return opened.entries
