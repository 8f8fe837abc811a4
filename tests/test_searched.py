"""The search plugin reads a part's words as it would have read the part, but for what is to be left out."""

import re

import pytest
from material.plugins.search.plugin import Parser

from calc.worksheets import WORKSHEETS
from render.pages import sections
from searched import words

PARTS = {key: sections.worksheet_html(key, "us") for key in ("house-load", "tank-size", "winter-run")}


def _read(html: str) -> list[tuple[str, str, str]]:
    parser = Parser()
    parser.feed(f'<h1 id="page">A page</h1>{html}<h2 id="next">Next</h2>')
    parser.close()
    plain = [" ".join(re.sub(r"<[^>]+>", " ", "".join(section.text)).split()) for section in parser.data]
    return [(section.id or "", "".join(section.title), text) for section, text in zip(parser.data, plain, strict=True)]


@pytest.mark.parametrize("key", PARTS)
def test_the_words_of_a_worksheet_are_read_alike(key: str) -> None:
    whole = PARTS[key]
    shown = words(whole)
    assert len(shown) < len(whole) / 5
    # The plugin takes in some of what is to be left out; else it reads the same, in the same parts.
    assert [part[:2] for part in _read(shown)] == [part[:2] for part in _read(whole)]
    for (*_, ours), (*_, all_of_it) in zip(_read(shown), _read(whole), strict=True):
        assert set(ours.split()) <= set(all_of_it.split())
    assert _read(shown) == _read(words(shown))
    assert WORKSHEETS[key].question in _read(shown)[0][2] or WORKSHEETS[key].question in [
        title for _, title, _ in _read(shown)
    ]


def test_headings_lists_and_code_stay_and_what_is_left_out_goes() -> None:
    html = (
        '<div class="a"><section><h3 id="here">A <em>heading</em></h3><p>Words &amp; more<br> of <code>x</code></p>'
        "<div data-search-exclude><div><p>hidden</p></div><p>hidden too</p></div><ul><li>one</li></ul></section></div>"
        "<script>never()</script><h4>No address</h4>"
    )
    assert words(html) == (
        '<div><section><h3 id="here">A heading</h3><p>Words &amp; more of <code>x</code></p>'
        "<ul><li>one</li></ul></section></div>No address"
    )
    without = re.sub(r"<div data-search-exclude>.*</p></div>(?=<ul>)", "", html)
    assert _read(words(html)) == _read(without)
