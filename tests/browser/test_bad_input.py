"""Whatever is typed or linked is read rightly or answered with a sentence; it is never markup, and never lost."""

from __future__ import annotations

import random
from typing import get_args
from urllib.parse import quote

import pytest
from playwright.sync_api import expect

from calc.answer import Typed, answer, link_of, open_link
from calc.engine import link
from calc.units import System
from calc.worksheets import WORKSHEETS
from tests import test_hostile as hostile
from tests.browser.conftest import At
from tests.browser.reader import Reader, assert_says, plain
from tests.browser.test_agreement import MAKE_EDITS

pytestmark = pytest.mark.browser

MARKUP = '<img src=x onerror="window.hacked=1"><script>window.hacked=1</script><b>5</b>'
BAD_TEXTS = {
    "empty": "",
    "spaces": "   ",
    "words": "about the usual",
    "negative": "-500",
    "zero": "0",
    "huge": "123456789012345678901234567890",
    "NaN": "NaN",
    "infinite": "inf",
    "overflow": "1e400",
    "tower": "9**9**9 m",
    "thousands": "1,234",
    "decimal comma": "1,5",
    "apples": "12 apples",
    "fraction": "3/4 in",
    "vulgar fraction": "1½",
    "superscript": "10²",
    "ordinal": "180º",
    "another kind": "500 °F",
    "no unit of ours": "500 furlong",
    "unicode minus": "−40",
    "full-width digits": "５００",
    "arabic digits": "٥٠٠",
    "long": "5" * 10_000,
    "long words": "apples " * 1_500,
    "control characters": "5\x00\x07\x1b00",
    "right to left": "\u202e005",
    "emoji": "5🔥00",
    "markup": MARKUP,
    "template": "{{ 7 * 7 }}${7*7}",
    "link mark": "500;end~",
    "quotes": "\"'`><&amp;",
}


def assert_no_markup(reader: Reader) -> None:
    assert reader.page.evaluate("window.hacked") is None
    expect(reader.page.locator(".ss-sheet :is(img, script, b)")).to_have_count(0)


@pytest.mark.parametrize("system", get_args(System))
def test_a_text_in_a_box(at: At, system: System) -> None:
    """All texts in one page, each with a good number behind it."""
    reader = at("stored-heat")
    for name, text in BAD_TEXTS.items():
        for typed in (text, "500"):
            edit = {"units": system, "key": "store_volume", "text": typed}
            (page,) = reader.page.evaluate(MAKE_EDITS, ["stored-heat", [edit]])
            sheet = answer("stored-heat", {"store_volume": Typed(typed, system)}, system)
            assert page["box"] == typed, f"{name}: nothing typed is lost"
            assert [plain(told) for told in page["errors"]] == [plain(problem.text) for problem in sheet.problems], name
            assert page["state"] == ("wrong" if sheet.problems else "ready"), name
            figure = sheet.headline.shown if sheet.headline and not sheet.problems else "No result yet"
            assert plain(page["figure"]) == plain(figure), name
            if not sheet.problems:
                results = {result.key: plain(result.shown) for result in sheet.results}
                assert {key: plain(shown) for key, shown in page["results"]} == results, name
                advice = plain(page["advice"])
                assert all(plain(said.text) in advice for said in sheet.advice), name
            assert page["rough"] == (sheet.rough and not sheet.problems), name
            assert_no_markup(reader)


@pytest.mark.parametrize("worksheet", ["stored-heat", "tank-size", "house-load", "emitter-temperature"])
def test_markup_and_a_wrong_number_in_every_box(at: At, worksheet: str) -> None:
    reader = at(worksheet)
    boxes = reader.sheet.locator(".ss-field:not([hidden]):has(input[type=text])")
    names = "boxes => boxes.map((box) => box.dataset.key)"
    # The first own number takes the example's choices away, and with them the boxes that only those ask.
    reader.type(boxes.evaluate_all(names)[0], MARKUP)
    keys = boxes.evaluate_all(names)
    for key in keys[1:]:
        reader.type(key, MARKUP)
    assert_says(reader, {key: Typed(MARKUP) for key in keys})
    assert_no_markup(reader)
    for key in keys:
        assert reader.box(key).input_value() == MARKUP


def open_link_in(reader: Reader, hash_: str) -> str:
    """Go to a link on the page that is open, and wait until it was read; returns it as the browser has it."""
    reader.page.evaluate("hash => { location.hash = hash; }", hash_)
    for _ in range(6_000):
        if reader.page.evaluate("sessionStorage.getItem('stoke-and-store.opened') === location.href"):
            break
        reader.page.wait_for_timeout(10)
    reader.wait()
    return str(reader.page.evaluate("location.hash"))


def assert_says_link(reader: Reader, hash_: str) -> None:
    """The page holds what the link gives, and tells everything that is wrong with it."""
    _, problems = open_link(hash_)
    told = reader.slot("link")
    if problems:
        assert told.locator("li").all_inner_texts() == list(problems)
        expect(told).to_be_focused()
    else:
        expect(told).to_be_hidden()
    opened = link.read(hash_, WORKSHEETS)
    if opened.worksheet:
        assert_says(reader, opened.given)
    assert_no_markup(reader)


LINKS = {
    "whole": "#v1;stored-heat;store_volume=640gal;store_top=175F;lowest_useful=100F~;end",
    "later version": "#v27;stored-heat;store_volume=640gal;end",
    "no such worksheet": "#v1;perpetual-motion;store_volume=640gal;end",
    "no worksheet": "#v1",
    "no numbers": "#v1;stored-heat;end",
    "unknown key": "#v1;stored-heat;store_volume=640gal;goats=3;end",
    "key twice": "#v1;stored-heat;store_volume=640gal;store_volume=5gal;end",
    "no value": "#v1;stored-heat;store_volume;end",
    "assumed nothing": "#v1;stored-heat;store_volume=~;end",
    "bad number": "#v1;stored-heat;store_volume=9**9**9 m;end",
    "another kind": "#v1;stored-heat;store_volume=5F;end",
    "bad escape": "#v1;stored-heat;store_volume=%E0%A4%A;end",
    "markup in a value": f"#v1;stored-heat;store_volume={quote(MARKUP)};end",
    "markup in a key": f"#v1;stored-heat;{quote(MARKUP)}=5;end",
    "markup in the worksheet": f"#v1;{quote(MARKUP)};end",
    "markup, unescaped": f"#v1;stored-heat;store_volume={MARKUP};{MARKUP}=5;end",
    "control characters": "#v1;stored-heat;store_volume=5%00%07gal;end",
    "long": f"#v1;stored-heat;store_volume={'5' * 9_000};end",
    "somebody else's": "#a=1;b=2",
}


@pytest.mark.parametrize("name", LINKS)
def test_a_link(at: At, name: str) -> None:
    reader = at("stored-heat")
    assert_says_link(reader, open_link_in(reader, LINKS[name]))


def test_an_unknown_choice_in_a_link(at: At) -> None:
    reader = at("tank-size")
    hash_ = open_link_in(reader, "#v1;tank-size;stoking=by-magic;store_top=170F;end")
    assert_says_link(reader, hash_)
    expect(reader.slot("link")).to_contain_text("How the fire is fed")
    expect(reader.box("store_top")).to_have_value("170")
    assert reader.box("stoking").input_value() in ("by-hand", "automatic")


OPEN_ALL = """async (hashes) => {
  const sheet = document.querySelector("#stored-heat");
  const words = (selector) => [...sheet.querySelectorAll(selector)].map((element) => element.textContent);
  const said = [];
  for (const hash of hashes) {
    location.hash = hash;
    const read = () => sessionStorage.getItem("stoke-and-store.opened") === location.href && !("busy" in sheet.dataset);
    const until = Date.now() + 60_000;
    while (!read() && Date.now() < until) await new Promise((done) => setTimeout(done, 5));
    said.push([words("[data-slot=link]:not([hidden]) li"), words(".ss-figure")[0], words("[data-slot=errors]:not([hidden]) li")]);
  }
  return said;
}"""


def test_a_link_cut_anywhere(at: At) -> None:
    reader = at("stored-heat")
    whole = link_of(answer("stored-heat", {"store_volume": Typed("640")}))
    cuts = [whole[:length] for length in range(len(whole), len("#v1;stored-heat;") - 1, -3)]
    sheet = answer("stored-heat", {})
    for cut, (told, figure, errors) in zip(cuts, reader.page.evaluate(OPEN_ALL, cuts), strict=True):
        _, problems = open_link(cut)
        assert told == list(problems), cut
        assert bool(problems) == (cut != whole), cut
        given = link.read(cut, WORKSHEETS).given
        sheet = answer("stored-heat", given) if given else sheet  # a link without numbers takes none away
        assert errors == [problem.text for problem in sheet.problems], cut
        assert plain(figure) == (plain(sheet.headline.shown) if sheet.headline else "No result yet"), cut


def test_a_link_cut_before_its_worksheet(at: At) -> None:
    reader = at("stored-heat")
    for hash_ in ("#v1;", "#v1;stored", "#v1;stored-heat", "#v1"):
        assert_says_link(reader, open_link_in(reader, hash_))
        assert reader.figure == at("stored-heat").figure


def test_a_heading_of_the_page_is_no_link(at: At) -> None:
    reader = at("stored-heat")
    heading = str(reader.page.locator("h2[id]").first.get_attribute("id"))
    reader.page.evaluate("id => { location.hash = id; }", heading)
    reader.page.wait_for_timeout(200)
    expect(reader.page.locator("[data-slot=link]:visible")).to_have_count(0)
    expect(reader.slot("whose")).to_contain_text("Worked example")


# Each text is typed and each link opened, and what took longest is told, in milliseconds.
TRY_ALL = """async ([texts, hashes]) => {
  const sheet = document.querySelector("#stored-heat");
  const box = sheet.querySelector("[data-key=store_volume] input[type=text]");
  const answered = async (since) => {
    do await new Promise((done) => setTimeout(done, 4));
    while ("busy" in sheet.dataset && performance.now() - since < 60_000);
    return performance.now() - since;
  };
  let longest = 0;
  for (const text of texts) {
    const started = performance.now();
    box.value = text;
    box.dispatchEvent(new Event("input", { bubbles: true }));
    longest = Math.max(longest, await answered(started));
  }
  for (const hash of hashes) {
    const started = performance.now();
    location.hash = hash;
    longest = Math.max(longest, await answered(started));
  }
  return longest;
}"""


def test_hostile_texts_and_links_by_the_hundred(at: At) -> None:
    """What would be markup would say so: it names what is not there, breaks the page's policy, or asks another host."""
    source = random.Random("through the page")
    reader = at("stored-heat")
    texts = [hostile.text(source) for _ in range(hostile.TRIED * 3 // 40)]
    hashes = [hash_ for hash_ in (hostile.link(source) for _ in range(hostile.TRIED // 25)) if hash_.startswith("#v1;")]
    longest = 0.0
    for start in range(0, len(texts), 100):  # a page that answers is not waited for longer than that
        longest = max(longest, reader.page.evaluate(TRY_ALL, [texts[start : start + 100], hashes[start : start + 100]]))
    assert longest < 20_000, "a hang; a busy machine takes seconds where an idle one takes 20 ms"
    assert_no_markup(reader)
    expect(reader.page.locator(f"main [{hostile.MARK}]")).to_have_count(0)
    reader = at("stored-heat")  # the same page, without what the links brought
    reader.type("store_volume", "640")
    assert_says(reader, {"store_volume": Typed("640")})
