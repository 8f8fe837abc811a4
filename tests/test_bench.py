"""What scripts/bench load reckons with, and the pages that it compares; and what makes the site stale."""

from __future__ import annotations

import io
import re
import socket
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

import pytest

import building
import lighthouse_bench
import loading
import opponents
import page_bench
import server
import toolchain
from line import Line
from tests.conftest import Visiting


def test_a_line_is_shared_and_slow() -> None:
    line = Line(rate=1e6, delay=0.02)
    out = io.BytesIO()
    started = time.monotonic()
    line.wait()
    line.send(out.write, b"x" * 100_000)
    line.send(out.write, b"y" * 100_000)
    assert out.getvalue() == b"x" * 100_000 + b"y" * 100_000
    assert time.monotonic() - started >= 0.21  # 200,000 bytes at a million a second, and the delay


def test_of_a_transfer_that_is_broken_off_what_went_out_is_counted(tmp_path: Path) -> None:
    (tmp_path / "large.bin").write_bytes(b"x" * 4_000_000)
    with server.serving(tmp_path, line=Line(rate=400_000, delay=0)) as site:
        with socket.create_connection(("127.0.0.1", site.server_address[1])) as connection:
            connection.sendall(b"GET /large.bin HTTP/1.1\r\nHost: here\r\n\r\n")
            read = sum(len(connection.recv(8192)) for _ in range(10))
        (request,) = site.requests
        went = -1
        while went != (went := request.sent):
            time.sleep(0.5)
        assert read - 1000 < went < 2_000_000  # its head is no part of the body


def test_the_table_compares_medians_on_one_line() -> None:
    visits: loading.Visits = {}
    for page, times in {
        opponents.BARE: (900, 1000, 1300),
        opponents.FAIR: (500, 500, 800),
        opponents.FRAMEWORK: (1200, 1500, 1600),
        opponents.FLOOR: (200, 240, 280),
        loading.OURS: (400, 250, 300),
    }.items():
        for visit in ("cold", "warm"):
            visits["unthrottled", page, visit] = [loading.Seen(live, 5_000_000) for live in times]
    rows = list(loading.table(visits))
    assert rows[2] == "| line | visit | page | visits | ms | of bare | of fair | of PyScript | of floor | MB |"
    assert rows[3].count("|") == rows[2].count("|")
    assert len(rows) == 4 + len(visits)
    ours = [row for row in rows if loading.OURS in row]
    assert ours[0] == "| unthrottled | cold | this site | 3 | 300 [250 to 400] | 0.30 | 0.60 | 0.20 | 1.25 | 5.00 |"
    assert len(loading.as_json(visits)) == 30


def test_each_line_has_its_turn_and_the_quick_ones_more(monkeypatch: pytest.MonkeyPatch) -> None:
    now = 0.0
    monkeypatch.setattr(loading.time, "monotonic", lambda: now)
    takes = dict(zip(loading.LINES, (20, 50, 260), strict=True))
    gone = []
    for line in loading.turns(8):
        gone.append(line)
        now += takes[line]
    fast, middle, slow = loading.LINES
    assert gone == [fast, middle, slow, fast, middle, fast, middle]
    assert now <= 480


@pytest.mark.browser
@pytest.mark.parametrize("name", [opponents.BARE, opponents.FAIR, opponents.FLOOR, opponents.FRAMEWORK])
def test_a_page_beside_shows_its_result(visiting: Visiting, site: Path, tmp_path: Path, name: str) -> None:
    """And asks no other host."""
    if name == opponents.FRAMEWORK and not opponents.PYSCRIPT.is_dir():
        pytest.skip("PyScript is fetched when scripts/bench first needs it")
    beside = opponents.MAKERS[name](tmp_path / "page", site)
    with server.serving(beside.root) as running, visiting([]) as page:
        page.add_init_script(beside.clock)
        page.goto(running.url + beside.path)
        page.wait_for_function("clock.live")
        assert beside.shows in page.evaluate("clock.shown")


def test_scripts_are_added_up_by_task_and_not_twice() -> None:
    def took(name: str, began: int, processor: int, tid: int = 1) -> dict[str, Any]:
        return {"name": name, "pid": 1, "tid": tid, "ph": "X", "ts": began, "dur": processor + 100, "tdur": processor}

    events = [
        {"name": "thread_name", "pid": 1, "tid": 1, "ph": "M", "ts": 0, "args": {"name": "CrRendererMain"}},
        {"name": "thread_name", "pid": 1, "tid": 2, "ph": "M", "ts": 0, "args": {"name": "DedicatedWorker thread"}},
        took("RunTask", 1000, 9000),
        took("EventDispatch", 1100, 2000),
        took("FunctionCall", 1200, 1500),  # within the event
        took("RunMicrotasks", 4000, 500),
        took("Layout", 5000, 3000),
        took("RunTask", 20_000, 1000),
        took("TimerFire", 20_100, 700),
        took("RunTask", 30_000, 80_000, tid=2),
        took("FunctionCall", 30_000, 80_000, tid=2),
    ]
    assert page_bench.script_tasks(events) == [2.5, 0.7]


def test_the_theme_alone_is_the_same_pages_without_ours() -> None:
    config = page_bench.theme_alone((toolchain.ROOT / "mkdocs.yml").read_text(encoding="utf-8"))
    assert "guides/storage.md" in config and "name: material" in config and "- admonition" in config
    assert not re.search("site_overrides|hooks|all.css|page.js", config)
    assert f"docs_dir: {toolchain.ROOT}/docs\n" in config


def test_lighthouse_is_told_by_its_medians_and_what_took_points() -> None:
    def told(score: float) -> dict[str, Any]:
        audits = {
            "link-text": {"title": "Links say nothing", "score": score, "details": {"items": [{"text": "Start"}]}},
            "not-counted": {"title": "Not counted", "score": 0},
            "not-for-us": {"title": "Not for this page", "score": None},
        }
        weights = {"link-text": 1, "not-counted": 0, "not-for-us": 1}
        counted = [{"id": name, "weight": weight} for name, weight in weights.items()]
        categories = {name: {"score": score, "auditRefs": counted} for name in lighthouse_bench.CATEGORIES}
        return {"audits": audits, "categories": categories}

    assert lighthouse_bench.median_score([told(0.5), told(1), told(0.9)], "seo") == 90
    assert list(lighthouse_bench.faults(told(1))) == []
    assert list(lighthouse_bench.faults(told(0))) == [
        f'  {name}: Links say nothing [{{"text": "Start"}}]' for name in ("accessibility", "best-practices", "seo")
    ]


def test_every_script_that_makes_the_site_makes_it_stale() -> None:
    """Those that `building` imports: any other may change without the site being built anew."""
    folder = toolchain.ROOT / "scripts"
    asked = "import sys, building; print(*(getattr(each, '__file__', None) or '' for each in sys.modules.values()), sep='\\n')"
    path = [str(folder), str(toolchain.ROOT / "site_overrides"), str(toolchain.ROOT)]
    code = f"import sys; sys.path[:0] = {path!r}; {asked}"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    used = {line.rpartition("/")[2] for line in done.stdout.splitlines() if line.startswith(f"{folder}/")}
    assert used == {name for name in building.MAKERS if name.endswith(".py")}
    assert all((folder / name).is_file() for name in building.MAKERS)
