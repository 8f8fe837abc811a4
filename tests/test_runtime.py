"""The page's Python: made the same way each time, whole, small, and answering as the desktop does."""

from __future__ import annotations

import gzip
import hashlib
import importlib.util
import io
import json
import marshal
import runpy
import shutil
import traceback
import zipfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

import finishing
import lean
import runtime
import server
import toolchain
from calc.__main__ import weather_text
from render import qr as render_qr
from tests.conftest import Visiting

# Asked of Python in the page and on the desktop; both have to say the same.
QUESTION = """
import importlib, json, math, sys
for name in modules:
    importlib.import_module(name)
from calc.physics import winter_weather
from calc.worksheets import WORKSHEETS
from render import respond
winter_weather.keep("burlington-vt", weather)  # the place of the worked example
reply = json.dumps({
    "python": list(sys.version_info[:2]),
    "replies": [
        json.loads(respond(json.dumps({"ask": ask, "worksheet": key, "units": units})))
        for key in WORKSHEETS for units in ("us", "si") for ask in ("worksheet", "chart")
    ],
    "powers": [math.exp(k / 7) ** 1.33 for k in range(40)],
})
reply
"""

CODED = "record/#v1;plan;end"  # what segno, which is fetched later, makes a code of

WORKER = """
import { build, startPython } from "../python/start.js";
try {
  const heard = [];
  const pyodide = await startPython({ onProgress: (what) => heard.push(what) });
  pyodide.globals.set("modules", pyodide.toPy(%(modules)s));
  pyodide.globals.set("weather", %(weather)s);
  const answer = pyodide.runPython(%(question)s);
  const tried = { chance: pyodide.runPython("import random; random.random()") };
  tried.without = String(pyodide.runPython(%(code)s)); // the page does without what comes later
  await pyodide.loadPackage("segno");
  tried.code = String(pyodide.runPython(%(code)s));
  try { new Function("return 1")(); tried.eval = "allowed"; } catch { tried.eval = "refused"; }
  postMessage({ answer, build, heard, tried });
} catch (error) {
  postMessage({ failure: String(error.message ?? error) });
}
"""

# By this name Pyodide does without a function that its snapshot knows of.
IPHONE = "Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko)"

PAGE = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Python</title>
<link rel="icon" href="data:,">
<script type="module" src="assets/js/page.js"></script></head><body><output></output></body></html>"""

PAGE_SCRIPT = """
const worker = new Worker(new URL("worker.js", import.meta.url), { type: "module" });
const show = (said) => { document.querySelector("output").textContent = JSON.stringify(said); };
worker.onmessage = ({ data }) => show(data);
worker.onerror = (event) => show({ failure: event.message || "the worker did not start" });
"""


def our_modules() -> list[str]:
    """Every module of the page by name."""
    places = [
        path.relative_to(source.parent)
        for path in runtime.page_modules()
        for source in runtime.SOURCES
        if path.is_relative_to(source)
    ]
    return [".".join(place.with_suffix("").parts).removesuffix(".__init__") for place in places]


def desktop_answer() -> Any:
    names: dict[str, Any] = {"modules": our_modules(), "weather": weather_text("burlington-vt")}
    exec(QUESTION, names)  # noqa: S102 - our own text
    return json.loads(names["reply"])


@pytest.fixture(scope="module")
def small_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site of one page and one worker, which is nothing but the calls that runtime's docstring names."""
    site = tmp_path_factory.mktemp("site")
    scripts = site / "assets" / "js"
    scripts.mkdir(parents=True)
    runtime.publish(site)
    worker = WORKER % {
        "modules": json.dumps(our_modules()),
        "question": json.dumps(QUESTION),
        "code": json.dumps(f"from render import qr; qr.svg({CODED!r}, 'code')"),
        "weather": json.dumps(weather_text("burlington-vt")),
    }
    (scripts / "worker.js").write_text(worker, encoding="utf-8")
    (scripts / "page.js").write_text(PAGE_SCRIPT, encoding="utf-8")
    (site / "index.html").write_text(finishing.with_policy(PAGE), encoding="utf-8")
    finishing.write_headers(site)
    return site


@pytest.fixture
def small_server(small_site: Path) -> Iterator[server.Site]:
    with server.serving(small_site) as running:
        yield running


def python_files(site: Path) -> list[Path]:
    return sorted(path for path in (site / "assets" / "python").rglob("*") if path.is_file())


def names_in(site: Path, archive: str) -> set[str]:
    """The names of the files in an archive, which is packed as a whole."""
    (packed,) = (site / "assets" / "python").glob(f"{archive}.pack")
    return set(zipfile.ZipFile(io.BytesIO(gzip.decompress(packed.read_bytes()))).namelist())


def what_the_page_says(page: Page, url: str) -> Any:
    page.goto(url)
    return json.loads(page.locator("output:not(:empty)").text_content() or "")


def test_every_file_but_the_door_is_named_by_its_content(small_site: Path) -> None:
    folders = {path.parent for path in python_files(small_site) if path.name != "start.js"}
    assert {folder.name.rpartition("-")[0] for folder in folders} == {"library", "pyodide", "snapshot", "wheel"}
    text = (small_site / "assets" / "python" / "start.js").read_text(encoding="utf-8")
    for folder in folders:
        assert folder.name in text


def test_equal_sources_make_equal_bytes(small_site: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(runtime, "CACHE", tmp_path / "empty cache")
    runtime.publish(tmp_path / "site")

    def digests(site: Path) -> dict[str, str]:
        return {
            path.relative_to(site).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
            for path in python_files(site)
        }

    assert digests(tmp_path / "site") == digests(small_site)


def test_the_wheel_holds_what_the_page_needs_and_no_source_text(small_site: Path) -> None:
    names = names_in(small_site, "wheel-*/stoke_and_store-*.whl")
    for module in our_modules():
        stem = module.replace(".", "/")
        assert {f"{stem}.pyc", f"{stem}/__init__.pyc"} & names, module
    assert not [name for name in names if name.endswith((".py", ".svg"))]
    for only_here in ("calc/__main__", "calc/report", "calc/piping/rules", "render/pages/"):
        assert not [name for name in names if name.startswith(only_here)]


@pytest.mark.parametrize("agent", [pytest.param(None, id="as itself"), pytest.param(IPHONE, id="as a phone")])
def test_chromium_starts_it_under_the_strict_policy(
    visiting: Visiting, troubles: list[str], small_server: server.Site, agent: str | None
) -> None:
    with visiting(troubles, user_agent=agent) as page:
        said = what_the_page_says(page, small_server.url)
    assert "failure" not in said, said
    assert json.loads(said["answer"]) == desktop_answer()
    assert [what for what in said["heard"] if what != "bytes"] == ["loader", "python"]
    assert said["tried"].pop("chance")
    assert said["tried"] == {"eval": "refused", "without": "", "code": str(render_qr.svg(CODED, "code"))}
    assert {request.status for request in small_server.requests} == {200}
    assert way_taken(small_server) == "short"


def test_a_second_visit_asks_only_for_what_may_have_changed(page: Page, small_server: server.Site) -> None:
    before = what_the_page_says(page, small_server.url)
    small_server.requests.clear()
    after = what_the_page_says(page, small_server.url)
    assert before["answer"] == after["answer"]
    assert before["tried"]["chance"] != after["tried"]["chance"], (
        "the snapshot holds one state of chance for all visits"
    )
    asked = {request.path for request in small_server.requests if request.path.startswith("/assets/python/")}
    # A fresh visitor's browser keeps its cache in memory here, where the two large ones are too large to be kept.
    asked = {path for path in asked if not path.endswith((".wasm", "python.memory"))}
    assert asked == {"/assets/python/start.js"}


def way_taken(site: server.Site) -> str:
    """Which way Python started: by its snapshot, or by its library and wheels."""
    asked = " ".join(request.path for request in site.requests)
    assert "python.memory" in asked, "the short way is tried first"
    return "ordinary" if "python_stdlib.zip" in asked and "stoke_and_store" in asked else "short"


@pytest.mark.parametrize("lost", ["pyodide.asm.js", "python_stdlib.zip", "jinja2", "stoke_and_store"])
def test_a_missing_or_damaged_file_is_noticed(page: Page, small_site: Path, troubles: list[str], lost: str) -> None:
    sorry = server.Answer(200, b"<html>sorry</html>", {"Content-Type": "text/html"})
    gone = server.Answer(404, b"gone")
    for answer in (gone, sorry):

        def interfere(path: str, answer: server.Answer = answer) -> server.Answer | None:
            return answer if lost in path else gone if "python.memory" in path else None

        with server.serving(small_site, interfere=interfere) as site:
            said = what_the_page_says(page, site.url)
        assert said.get("failure"), said
    troubles.clear()


def test_the_snapshot_does_not_tell_where_it_was_made(small_site: Path) -> None:
    memory = gzip.decompress(next(small_site.rglob("python.memory")).read_bytes())
    for place in (toolchain.ROOT, Path.home()):
        assert str(place).encode() + b"/" not in memory


def test_the_library_keeps_what_errors_and_dates_need(small_site: Path) -> None:
    held = {name.removesuffix(".pyc") for name in names_in(small_site, "library-*/python_stdlib.zip")}
    assert {"traceback", "linecache", "datetime", "decimal", "encodings/utf_8", "json/__init__"} <= held
    assert "turtle" not in held
    assert "unittest/__init__" not in held


def test_the_download_stays_small(small_site: Path) -> None:
    """Compressed as hosts do, it leaves room for pages and styles: below 3.3 MB the ordinary way, 5.2 the short one."""
    later = (*runtime.LATER, runtime.REST)
    first = [path for path in python_files(small_site) if not path.name.startswith(later)]
    sizes = {path: min(path.stat().st_size, len(gzip.compress(path.read_bytes(), 9))) for path in first}
    memory = next(path for path in first if path.name == "python.memory")
    loaded = [path for path in first if path.suffix == ".pack"]
    (code,) = small_site.rglob("segno-*.whl.pack")
    assert code.stat().st_size < 50_000
    assert sum(sizes.values()) - sizes[memory] <= 3_000_000
    assert sum(sizes.values()) - sum(sizes[path] for path in loaded) <= 4_950_000


def test_lean_byte_code_does_what_it_did_and_tells_where(tmp_path: Path) -> None:
    text = "def halve(number):\n    half = number / 2\n    return half\n\n\nhalf = halve(3)\n"
    whole = importlib.util.MAGIC_NUMBER + bytes(12) + marshal.dumps(compile(text, "halves.py", "exec"))
    compiled = tmp_path / "halves.pyc"
    compiled.write_bytes(lean.lean(whole))
    names = runpy.run_path(str(compiled))
    assert names["half"] == 1.5
    with pytest.raises(TypeError) as wrong:
        names["halve"]("three")
    last = traceback.extract_tb(wrong.value.__traceback__)[-1]
    assert (last.filename, last.name, last.lineno) == ("halves.py", "halve", 1)


def test_changed_sources_are_made_anew_and_unchanged_ones_are_not(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(runtime, "CACHE", tmp_path / "cache")
    made = []

    def make(out: Path) -> None:
        made.append(out)
        shutil.copyfile(__file__, out / "file")

    first = runtime.kept_folder("thing", "1", make)
    assert runtime.kept_folder("thing", "1", make) == first
    assert len(made) == 1
    second = runtime.kept_folder("thing", "2", make)
    assert (second / "file").is_file()
    assert not first.exists()


def test_a_step_that_is_cut_off_leaves_nothing_half_made(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(runtime, "CACHE", tmp_path / "cache")

    def stop(out: Path) -> None:
        (out / "half").touch()
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        runtime.kept_folder("thing", "1", stop)
    assert not list((tmp_path / "cache").iterdir())
