"""A new worksheet is one file, its line in the list and a comment in a guide: nothing else has to know of it."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

import server
from tests import copied
from tests.browser.reader import Reader

pytestmark = [pytest.mark.browser, pytest.mark.long]

WORKSHEET = '''
"""How thin is the air here?"""

from calc.engine.declare import Advice, Example, Given, Result, Step, Worksheet
from calc.physics import water
from calc.vocabulary import ALTITUDE

WORKSHEET = Worksheet(
    key="thin-air",
    guide="storage",
    question="How thin is the air here?",
    short="Air pressure at your height.",
    fields=(ALTITUDE,),
    givens=(Given("shore", "length", "By the sea", "1 m", "definition"),),
    steps=(Step("barometer", water.barometer, "Air pressure here"),),
    results=(Result("barometer", "Air pressure here", "At {altitude}."),),
    headline="barometer",
    say="At {altitude}.",
    advice=(Advice("note", "low", "altitude < shore", "You live by the sea.", "At {altitude} the air is as thick as it gets."),),
    examples=(Example("High Farm", {"altitude": "5,000 ft"}),),
    leaves_out=("The weather.",),
)
'''


@pytest.fixture(scope="module")
def copy_with_a_new_worksheet(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The built site of a copy of the project to which a worksheet was added as its guide for contributors says."""
    copy = copied.project(tmp_path_factory.mktemp("copy") / "project")
    (copy / "calc" / "worksheets" / "thin_air.py").write_text(WORKSHEET.lstrip(), encoding="utf-8")
    put_line(copy / "calc" / "worksheets" / "__init__.py", after='    "stored-heat",\n', line='    "thin-air",\n')
    guide = copy / "docs" / "guides" / "storage.md"
    put_line(guide, after="<!-- worksheet: stored-heat -->\n", line="\n<!-- worksheet: thin-air -->\n")
    copied.build(copy, "building.build()")
    return copy / "site"


def put_line(path: Path, after: str, line: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert text.count(after) == 1
    path.write_text(text.replace(after, after + line), encoding="utf-8")


def test_it_is_live(page: Page, copy_with_a_new_worksheet: Path) -> None:
    with server.serving(copy_with_a_new_worksheet) as site:
        page.goto(f"{site.url}guides/storage/")
        reader = Reader(page, "thin-air")
        assert reader.figure == "12.2 psia"  # 84.3 kPa in the table of the standard atmosphere at 1524 m
        expect(reader.slot("whose")).to_contain_text("High Farm")
        reader.wait_until_live()
        reader.type("altitude", "0 m")
        assert reader.figure == "14.7 psia"
        expect(reader.slot("advice")).to_contain_text("You live by the sea.")
        page.get_by_role("button", name="SI units").click()
        reader.wait()
        assert reader.figure == "101 kPa"
        reader.type("altitude", "up the hill")
        assert reader.errors() == ["Height above sea level must start with a number, like 2000 m."]
        stored = Reader(page, "stored-heat")  # asks the same number
        expect(stored.box("altitude")).to_have_value("up the hill")
