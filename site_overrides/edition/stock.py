"""A dealer's stock: what can be picked, from edition.toml and from tables that a spreadsheet writes."""

import csv
import re
import unicodedata
from collections.abc import Mapping
from pathlib import Path
from typing import Any, NamedTuple

from calc.engine.typed import LONGEST_ITEM, item_key
from calc.units import System
from edition.declared import FACTS, PLACES, SHELVES, Shelf, inputs
from edition.reading import EditionError, check_fact, check_value, near

BESIDE = ("name", "says", "key")  # heads that are no inputs, and no facts
FACT_KEYS = tuple(fact.key for fact in FACTS)
LARGEST = 2_000_000  # characters
MOST_ROWS = 2_000
BYTE_ORDER_MARK = "\ufeff"


class Stock(NamedTuple):
    """Something that a dealer picks, the texts that it puts into a worksheet's boxes, and who says so.

    `key` is its name in links, and `facts` are texts by the keys of FACTS.
    """

    name: str
    fills: dict[str, str]
    says: str = ""
    key: str = ""
    facts: dict[str, str] = {}  # noqa: RUF012 - nothing writes to it


def shelves(folder: Path, told: Mapping[str, Any], units: System) -> dict[str, tuple[Stock, ...]]:
    """What stands on each shelf, in order. EditionError at the first row that cannot be used."""
    currency = told.get("currency", "")
    made: dict[str, tuple[Stock, ...]] = {}
    keys: dict[str, str] = {}  # of all stock, each with its place
    for shelf in SHELVES:
        made[shelf.key] = _shelf(shelf, folder, told.get(shelf.key, []), units, currency, keys)
    return made


def _shelf(
    shelf: Shelf, folder: Path, told: list[dict[str, Any]], units: System, currency: str, keys: dict[str, str]
) -> tuple[Stock, ...]:
    at = f"{folder.name}/edition.toml, {shelf.key}, number"
    rows = [(f"{at} {place}", "input", Stock(**row)) for place, row in enumerate(told, 1)]
    table = folder / f"{shelf.key}.csv"
    if table.is_file():
        rows += [(where, "column", row) for where, row in _table(table)]
    places: dict[str, str] = {}
    made = []
    for where, called, row in rows:
        if not row.name:
            raise EditionError(f"{where}, {called} name: write the name by which {shelf.what} is picked.")
        if row.name in places:
            raise EditionError(f"{where}: {row.name!r} stands also at {places[row.name]}: give each its own name.")
        places[row.name] = where
        _check_row(shelf, row, where, called, units, currency)
        made.append(row if shelf.key == PLACES else row._replace(key=_own_key(row, where, called, keys)))
    return tuple(made)


def _check_row(shelf: Shelf, row: Stock, where: str, called: str, units: System, currency: str) -> None:
    for key, text in row.fills.items():
        check_value(key, text, units, f"{where}, {called} {key}", currency)
    for fact in FACTS:
        if fact.key in row.facts:
            if shelf.key == PLACES:
                raise EditionError(f"{where}, {called} {fact.key}: a place has no {fact.label.lower()}: leave it out.")
            check_fact(fact, row.facts[fact.key], units, f"{where}, {called} {fact.key}", currency)
    for key in shelf.needs:
        if key not in row.fills:
            label = inputs()[key][0].label
            raise EditionError(f"{where} ({row.name}) lacks {key}: {shelf.what} needs it ({label}).")
    if not row.fills:
        raise EditionError(f"{where} ({row.name}) fills in nothing: write at least one input of a worksheet.")


def _own_key(row: Stock, where: str, called: str, keys: dict[str, str]) -> str:
    """The key of a row in links, as told or made from its name."""
    plain = unicodedata.normalize("NFKD", row.name).encode("ascii", "ignore").decode().lower()
    key = row.key or re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:LONGEST_ITEM].strip("-")
    if not item_key(key):
        raise EditionError(
            f"{where}, {called} key: “{(row.key or row.name)[:40]}” is no key for links: write one of lower-case "
            f"letters, digits and single dashes, with at most {LONGEST_ITEM} characters."
        )
    if key in keys:
        raise EditionError(f"{where}, {called} key: “{key}” is also the key at {keys[key]}: write another one.")
    keys[key] = where
    return key


def _table(path: Path) -> list[tuple[str, Stock]]:
    """The rows of a table, each with its place in words."""
    name = f"{path.parent.name}/{path.name}"
    (_, heads), *rows = _cells(path, name)
    _check_heads(heads, name)
    made = []
    for line, row in rows:
        where = f"{name}, row {line}"
        if len(row) > len(heads):
            raise EditionError(
                f"{where} has {len(row)} cells under {len(heads)} heads: write a number with a comma in quotes, like "
                '"30,500 Btu/h".'
            )
        cell = dict(zip(heads, row, strict=False))
        told = {head: text for head, text in cell.items() if head not in BESIDE and text}
        facts = {head: text for head, text in told.items() if head in FACT_KEYS}
        fills = {head: text for head, text in told.items() if head not in FACT_KEYS}
        made.append((where, Stock(cell["name"], fills, cell.get("says", ""), cell.get("key", ""), facts)))
    return made


def _cells(path: Path, name: str) -> list[tuple[int, list[str]]]:
    """The lines that hold something, with their numbers; between cells stand commas, or the semicolons of Europe."""
    if path.stat().st_size > LARGEST:
        raise EditionError(f"{name} is larger than {LARGEST:,} bytes: leave out what nobody picks.")
    try:
        text = path.read_text(encoding="utf-8").removeprefix(BYTE_ORDER_MARK)
    except UnicodeDecodeError:
        raise EditionError(f"{name} is not in UTF-8: save it as “CSV UTF-8”.") from None
    head = text.partition("\n")[0]
    lines = csv.reader(text.splitlines(keepends=True), delimiter=";" if head.count(";") > head.count(",") else ",")
    try:
        cells = [(lines.line_num, [cell.strip() for cell in line]) for line in lines if any(map(str.strip, line))]
    except csv.Error as wrong:
        raise EditionError(f"{name} is not a table of comma-separated values: {wrong}.") from None
    if not cells:
        raise EditionError(f"{name} is empty: write a first line with name and the inputs' keys, or delete the file.")
    if len(cells) > MOST_ROWS + 1:
        raise EditionError(f"{name} has more than {MOST_ROWS:,} rows: leave out what nobody picks.")
    return cells


def _check_heads(heads: list[str], name: str) -> None:
    known = inputs()
    for place, head in enumerate(heads):
        if head in heads[:place]:
            raise EditionError(f"{name}, row 1: two columns are called {head[:60]!r}: keep one.")
        if head not in known and head not in (*BESIDE, *FACT_KEYS):
            raise EditionError(
                f"{name}, row 1, column {place + 1}: no worksheet asks {head[:60]!r}. "
                f"{near(head, dict.fromkeys((*BESIDE, *FACT_KEYS, *known)))}"
            )
    if "name" not in heads:
        raise EditionError(f"{name}, row 1: no column is called name: write the name of each row in one.")
