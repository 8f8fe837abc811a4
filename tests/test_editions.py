"""Editions: those that are there can be used, and a mistake in one stops the build with a sentence."""

from __future__ import annotations

from pathlib import Path

import pytest

import edition
from calc.answer import answer
from calc.engine import plan
from calc.worksheets import WORKSHEETS

GOOD = """
name = "A dealer"
contact = "Come by."
units = "us"

[[tanks]]
name = "500 gal"
fills = { store_volume = "500 gal" }
"""


def write(folder: Path, text: str, **houses: str) -> None:
    place = folder / "mine" / "houses"
    place.mkdir(parents=True)
    (folder / "mine" / "edition.toml").write_text(text, encoding="utf-8")
    for name, house in houses.items():
        (place / f"{name}.txt").write_text(house, encoding="utf-8")


def test_an_edition_is_read(tmp_path: Path) -> None:
    write(tmp_path, GOOD, elm="Stoke and Store plan 1\nstore_volume = 500 gal | typed\nend\n")
    found = edition.load("mine", tmp_path)
    assert (found.name, found.contact, found.units) == ("A dealer", "Come by.", "us")
    assert found.tanks == (edition.Stock("500 gal", {"store_volume": "500 gal"}),)
    assert found.places == found.appliances == ()
    assert found.houses == {"Elm": {"store_volume": plan.Entry("500 gal", "typed")}}


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (("name = ", "title = "), "holds what no edition has: title"),
        (('contact = "Come by."', ""), "lacks contact"),
        (('"us"', '"imperial"'), "units must be one of us, si"),
        (("store_volume =", "stove_volume ="), "no worksheet asks"),
        (('"500 gal" }', '"500 apples" }'), "Store volume in this plan"),
        (("fills =", "fill ="), "everything under tanks has a name and what it fills"),
        (("[[tanks]]", "[tanks"), "cannot be read"),
    ],
    ids=lambda value: str(value[0])[:20],
)
def test_a_mistake_in_an_edition_is_named(tmp_path: Path, change: tuple[str, str], says: str) -> None:
    assert change[0] in GOOD
    write(tmp_path, GOOD.replace(*change))
    with pytest.raises(edition.EditionError, match=says):
        edition.load("mine", tmp_path)


def test_a_mistake_in_a_house_is_named(tmp_path: Path) -> None:
    write(tmp_path, GOOD, elm="Stoke and Store plan 1\nstore_volume = many | typed\nend\n")
    with pytest.raises(edition.EditionError, match=r"elm\.txt: Store volume"):
        edition.load("mine", tmp_path)


def test_an_edition_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(edition.EditionError, match="no edition called 'mine'"):
        edition.load("mine", tmp_path)


@pytest.mark.parametrize("key", ["quillbrook", "ellerquist"])
def test_what_is_in_stock_can_be_used_at_every_worksheet(key: str) -> None:
    """Whatever a dealer picks, no worksheet refuses its numbers."""
    found = edition.load(key)
    for stock in (*found.places, *found.appliances, *found.tanks):
        entries = {name: plan.Entry(text, "typed") for name, text in stock.fills.items()}
        for worksheet in WORKSHEETS.values():
            given = plan.given_for(worksheet, entries)
            if given:
                problems = [one for one in answer(worksheet.key, given).problems if one.key in stock.fills]
                assert problems == [], f"{stock.name} at {worksheet.key}"
