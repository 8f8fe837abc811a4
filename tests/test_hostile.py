"""Hostile links and texts, by the thousand: each gets an answer in sentences, soon, and nothing of it ever becomes markup.

    HOSTILE=100000 .venv/bin/python -m pytest tests/test_hostile.py

tries as many as it says instead of 2,000 (100,000 take some minutes).
"""

from __future__ import annotations

import contextlib
import io
import json
import os
import random
import time
from collections.abc import Callable, Iterator
from html.parser import HTMLParser
from urllib.parse import quote

import pytest

import render
from calc.__main__ import main
from calc.answer import answer, link_of
from calc.worksheets import WORKSHEETS

TRIED = int(os.environ.get("HOSTILE", "2000"))
ADDRESSES = ("action", "data", "href", "src", "srcset", "xlink:href")
AT_COMMAND_LINE = 200
LONGEST = 1.0  # seconds of this process: a reader's browser takes about twice as long
MARK = "hostile"  # in every tag that is tried: none of them may come back as one

PIECES = (
    "0", "1", "-", "+", ".", ",", "e", "E", "9" * 400, "1e308", "1e-308", "NaN", "inf", "**", "//", "0x10", "1_000", "½", "⁄", "²", "٣", "５", "−",
    " ", "\t", "\n", "\r\n", "\x00", "\x1b[31m", "\u00a0", "\u202e", "\u2066", "\ufeff", "\u0301" * 50, "🔥", "\ud7ff", "\U0010ffff",
    "gal", "°F", "F", "kW", "Btu/h", "m3", "L/s", "in", "ft", "%", "per", "/", "·", "^", "º", "dry", "or so", "about", "between", "to",
    f"<img src=x onerror={MARK}>", f"<script>{MARK}</script>", f"</script><b {MARK}>", f"'\"><svg {MARK}>", f"<!--{MARK}", f"{MARK}&lt;", "&#60;", "&amp;",
    "{{ 7*7 }}", "{% raw %}", "${7*7}", "%s", "%n", "{0}", "__import__('os')", "\\", "`", "'", '"', ";", "=", "~", "!", "#", "#v1;", ";end", ";units=si",
    "%", "%00", "%3B", "%3D", "%E0%A4%A", "%ff", "%253B", "//example.invalid/", "https://example.invalid/x", "javascript:alert(1)", "../" * 30,
    "a" * 5_000, ";" * 500, "store_volume=5gal;", "sheets=", "plan", "stored-heat", "tank-size",
)  # fmt: skip
WHOLE = tuple(link_of(answer(key, {})) for key in ("stored-heat", "tank-size", "house-load", "first-sketch"))
FIELDS = tuple((key, field.key) for key, worksheet in WORKSHEETS.items() for field in worksheet.all_fields())


def text(source: random.Random) -> str:
    """A few pieces in a row, some of them repeated."""
    pieces = [source.choice(PIECES) * source.choice((1, 1, 1, 2, 9)) for _ in range(source.randint(1, 7))]
    return "".join(pieces)[: source.choice((40, 400, 20_000))]


class Tags(HTMLParser):
    """Collects what a browser would make of HTML that no page of ours may hold: tags, attributes, addresses."""

    def __init__(self, shown: str) -> None:
        super().__init__()
        self.bad: list[str] = []
        self.feed(shown)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        names = {name for name, _ in attrs}
        elsewhere = [value for name, value in attrs if name in ADDRESSES and value and "example.invalid" in value]
        if tag in ("img", "script") or MARK in names or any(name.startswith("on") for name in names) or elsewhere:
            self.bad.append(self.get_starttag_text() or tag)

    def handle_comment(self, data: str) -> None:
        self.bad.append(data)


def link(source: random.Random) -> str:
    """A good link that is cut, stirred, filled or joined with another; or none at all."""
    whole = source.choice(WHOLE)
    parts = whole.split(";")
    place = source.randrange(len(parts))
    way = source.randrange(6)
    if way == 0:
        return whole[: source.randrange(len(whole))] + text(source)
    if way == 1:
        parts[place] = text(source)
    elif way == 2:
        parts[place] = f"{parts[place].partition('=')[0]}={quote(text(source))}"
    elif way == 3:
        source.shuffle(parts)
    elif way == 4:
        parts[1:1] = ["plan", f"{source.choice(FIELDS)[1]}={text(source)}"]
    else:
        return "#" + text(source)
    return ";".join(parts)


def asked(source: random.Random) -> dict[str, object]:
    """Something that a page might ask with it: what a link holds, a worksheet, the list of a plan, a plan's file."""
    way = source.randrange(8)
    if way < 4:
        return {"ask": "link", "link": link(source), "plan": {}}
    if way < 5:
        return {"ask": "load", "text": text(source)}
    entries = {}
    worksheet, key = source.choice(FIELDS)
    for _ in range(source.choice((1, 1, 3))):
        origin = source.choice(({}, {"from": source.choice(("link", "computed", "stock", text(source)))}))
        entries[key] = {"text": text(source), "units": source.choice(("us", "si", text(source))), **origin}
        key = source.choice(FIELDS)[1]
    return {"ask": "plan" if way == 5 else "worksheet", "worksheet": worksheet, "plan": entries}


def html_of(reply: object) -> Iterator[str]:
    """Every text of a reply that a page takes for HTML: all but what goes into a box, into a file and back into a plan."""
    if isinstance(reply, str):
        yield reply
    elif isinstance(reply, list):
        for entry in reply:
            yield from html_of(entry)
    elif isinstance(reply, dict):
        for name, entry in reply.items():
            if name not in ("value", "error", "text", "entries", "fields", "problems", "link", "name"):
                yield from html_of(entry)
            elif name == "fields":
                yield from (str(field.get("note", "")) for field in entry.values() if "note" in field)


def test_hostile_links_and_texts_in_this_process() -> None:
    source = random.Random("hostile")
    slowest = 0.0
    for turn in range(TRIED):
        request = {"units": source.choice(("us", "si")), **asked(source)}
        started = time.process_time()
        reply = json.loads(render.respond(json.dumps(request)))
        slowest = max(slowest, time.process_time() - started)
        assert slowest < LONGEST, f"{turn}: {json.dumps(request)[:500]}"
        for shown in html_of(reply):
            assert Tags(shown).bad == [], f"{turn}: {json.dumps(request)[:500]}"
            assert "Traceback" not in shown


def commands(source: random.Random) -> list[str]:
    """What somebody might paste behind `python -m calc`."""
    worksheet, key = source.choice(FIELDS)
    made: tuple[Callable[[], list[str]], ...] = (
        lambda: [link(source)],
        lambda: [worksheet, f"{key}={text(source)}"],
        lambda: [worksheet, text(source)],
        lambda: [text(source)],
        lambda: [worksheet, f"{key}={text(source)}", "--json"],
    )
    # A shell hands over no text with a zero in it.
    return [argument.replace("\x00", "") for argument in source.choice(made)()]


@pytest.mark.parametrize("part", range(4))
def test_hostile_texts_at_the_command_line(part: int) -> None:
    source = random.Random(f"command line {part}")
    for _ in range(AT_COMMAND_LINE // 4):
        arguments = commands(source)
        said = io.StringIO()
        with contextlib.redirect_stdout(said), contextlib.redirect_stderr(said), contextlib.suppress(SystemExit):
            main(arguments)
        assert "Traceback" not in said.getvalue(), arguments
        assert "\x1b" not in said.getvalue(), f"a text may not steer the terminal: {arguments}"


def test_a_mark_that_came_through_would_be_noticed() -> None:
    """The test's own eyes: what it looks for is found where it stands."""
    for bad in (
        f"<img src=x onerror={MARK}>",
        f"<b {MARK}>",
        f"<!--{MARK}-->",
        "<a href='//example.invalid/'>",
        "<p onclick=x>",
    ):
        assert Tags(f"<p>{bad}</p>").bad, bad
    good = f"<p>&lt;img src=x onerror={MARK}&gt;<input value='&lt;b {MARK}&gt; //example.invalid/'></p>"
    assert Tags(good).bad == []
    assert list(html_of({"fields": {"a": {"value": "<i>", "note": "<b>"}}, "slots": {"plate": "<u>"}})) == [
        "<b>",
        "<u>",
    ]
