"""Firefox and WebKit, the real ones, on a phone's width: the main ways through the site, with what the desktop says.

Playwright drives neither as its makers publish it. puppeteer drives Firefox over WebDriver BiDi, and selenium drives WebKit
over WebDriver; both speak JavaScript. So `journeys.mjs` goes the ways and tells what it saw, and here that is judged.
The site may keep itself there.
"""

from __future__ import annotations

import json
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import server
import toolchain
from calc.answer import Typed, answer, link_of
from calc.units import System
from line import Line
from tests.browser.reader import plain
from tests.browser.test_first_sketch import AS_TYPED

pytestmark = [pytest.mark.browser, pytest.mark.long]

CUT = "cut-the-line"
NUMBERS = {"store_volume": "650", "store_top": "170"}
LATER = ("store_top", "175")
WRONG = "soon"
SENT = {"store_volume": "900", "store_top": "165"}
FINDERS = {"firefox": toolchain.find_firefox, "webkit": toolchain.find_webkit}
Going = Callable[..., dict[str, Any]]


@pytest.fixture(params=FINDERS)
def goes(request: pytest.FixtureRequest, site: Path, monkeypatch: pytest.MonkeyPatch) -> Going:
    """Sends a reader on a journey; gives what the pages showed."""
    executable = FINDERS[request.param]()
    if executable is None:
        pytest.skip(f"no {request.param} on this machine, or nothing that drives it")
    is_cut = False

    def interfere(path: str) -> server.Answer | None:
        nonlocal is_cut
        if is_cut:
            raise ConnectionAbortedError
        is_cut = path.endswith(CUT)
        return server.Answer(200) if is_cut else None

    monkeypatch.setattr(server.Site, "handle_error", lambda *_: None)  # a line that is cut is meant to be

    def go(journey: str, line: Line | None = None, **typed: object) -> dict[str, Any]:
        script = toolchain.OTHER_BROWSERS / "journeys.mjs"
        with server.serving(site, interfere=interfere, offline=True, encodings=("gzip",), line=line) as served:
            command = [str(toolchain.node()), str(script), request.param, executable, served.url, journey]
            done = subprocess.run(
                command, input=json.dumps(typed), capture_output=True, encoding="utf-8", check=False, timeout=600
            )
        assert done.returncode == 0, done.stderr
        told = json.loads(done.stdout)
        assert told["troubles"] == []
        (memory,) = site.rglob("python.memory")
        fetched = [request.sent for request in served.requests if request.path.endswith(memory.name)]
        assert (memory.stat().st_size in fetched) == (line is None)
        return dict(told["seen"])

    return go


def assert_shows(seen: dict[str, Any], worksheet: str, typed: dict[str, str], system: System = "us") -> None:
    """A page says what the desktop says for the same texts, on the width of the screen."""
    sheet = answer(worksheet, {key: Typed(text, "us") for key, text in typed.items()}, system)
    assert sheet.headline
    assert seen["state"] == "ready"
    assert seen["figure"] == plain(sheet.headline.shown)
    assert seen["results"] == {result.key: plain(result.shown) for result in sheet.results}
    assert seen["width"] <= 390


def test_from_the_home_page_to_the_verdict_and_its_record(goes: Going) -> None:
    """On a line on which Python starts the ordinary way: leaving the snapshot is no error that anybody prints."""
    seen = goes(
        "start",
        line=Line(2.5e6 / 8, 0.04),
        answers=[
            ("amount", "800 gal"),
            ("place-severe", ""),
            ("heated_area", "2000"),
            ("emitter-baseboard", ""),
            ("baseboard_length", "60"),
            ("stove-help", ""),
        ],
    )
    sheet = answer("first-sketch", {key: Typed(text) for key, text in AS_TYPED.items()})
    told = {result.key: plain(result.shown) for result in sheet.results}
    assert seen["sketch"]["results"] == told
    assert told["verdict"].startswith(seen["sketch"]["figure"])
    assert seen["sketch"]["width"] <= 390
    assert "Sizing record" in seen["record"]
    assert f"Design load (heat lost on the coldest day): {told['design_load']}" in seen["record"]


def test_a_worksheet_its_units_the_plan_and_all_of_it_without_a_line(goes: Going) -> None:
    seen = goes(
        "guide",
        guide="guides/storage/",
        worksheet="stored-heat",
        numbers=NUMBERS,
        wrong=WRONG,
        link=link_of(answer("stored-heat", {key: Typed(text) for key, text in SENT.items()})),
        cut=CUT,
        later=LATER,
    )
    assert_shows(seen["example"], "stored-heat", {})
    (mistake,) = answer("stored-heat", {"store_volume": Typed(WRONG)}).problems
    assert (seen["wrong"]["state"], seen["wrong"]["errors"]) == ("wrong", [plain(mistake.text)])
    assert_shows(seen["edited"], "stored-heat", NUMBERS)
    assert_shows(seen["switched"], "stored-heat", NUMBERS, "si")
    assert seen["switched"]["boxes"]["store_volume"] == "2461"
    assert seen["again"] == seen["switched"]
    assert seen["plan"] == {key: seen["switched"]["boxes"][key] for key in NUMBERS}
    assert_shows(seen["borrowed"], "stored-heat", SENT, "si")
    assert seen["offline"] == seen["edited"]
    # Back in the history: Firefox keeps the page as it was where it can, and its worker must answer then as ever.
    assert_shows(seen["back"], "stored-heat", NUMBERS | dict([LATER]))
