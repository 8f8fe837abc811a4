"""The pages beside which `scripts/bench` clocks the site: each a small site of its own that shows one first result."""

from __future__ import annotations

import gzip
import io
import json
import shutil
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import finishing
import toolchain
from calc.answer import answer

WORKSHEET = "stored-heat"
KEPT_A_DAY = "/*\n  Cache-Control: public, max-age=86400\n/\n  Cache-Control: no-cache\n"
BARE, FAIR = "bare loadPyodide", "compiled, trimmed library"
FRAMEWORK, FLOOR = "PyScript, the same worksheet", "empty page, our worker"
PYODIDE = toolchain.ROOT / "node_modules" / "pyodide"
PYSCRIPT = toolchain.BENCH_PACKAGES / "node_modules" / "@pyscript" / "core" / "dist"

# Runs in the page before anything else of it.
CLOCK = """
globalThis.clock = { live: 0, shown: "" };
new MutationObserver(() => {
  clock.shown ||= document.querySelector("output")?.textContent ?? "";
  if (clock.shown) clock.live ||= performance.now();
}).observe(document, { childList: true, subtree: true, characterData: true });
"""
PAGE = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Beside</title>
<link rel="icon" href="data:,">HEAD</head><body><output></output></body></html>
"""
SCRIPT = '<script type="module" src="page.js"></script>'
ADDING = """
const worker = new Worker(new URL("worker.js", import.meta.url), { type: "module" });
worker.onmessage = ({ data }) => { document.querySelector("output").textContent = data; };
"""
BARE_WORKER = """
import { loadPyodide } from "./pyodide/pyodide.mjs";
const pyodide = await loadPyodide();
postMessage(pyodide.runPython("1 + 1"));
"""
# What an informed author would do with documented options alone, and still only 1 + 1.
FAIR_WORKER = BARE_WORKER.replace(
    "loadPyodide()", 'loadPyodide({ stdLibURL: new URL("python_stdlib.zip", import.meta.url).href })'
)
# The site's own worker and nothing else: what the page costs beyond Python is the difference.
ASKING = """
const worker = new Worker(new URL("WORKER", import.meta.url), { type: "module" });
worker.onmessage = ({ data }) => {
  if (data.reply) document.querySelector("output").innerHTML = JSON.parse(data.reply).slots.plate;
};
const request = JSON.stringify({ ask: "worksheet", worksheet: "WORKSHEET", units: "us", plan: {} });
worker.postMessage({ id: 1, request });
""".replace("WORKSHEET", WORKSHEET)
FRAMEWORK_HEAD = """<link rel="stylesheet" href="core/core.css"><script type="module" src="core/core.js"></script>
<script type="py" src="main.py" config="pyscript.json"></script>"""
FRAMEWORK_CONFIG = json.dumps({"interpreter": "pyodide/pyodide.mjs", "files": {"calc.zip": "./*"}})
FRAMEWORK_PYTHON = f"""
from calc.answer import answer
from pyscript import document

document.querySelector("output").textContent = answer("{WORKSHEET}", {{}}).headline.shown
"""


class Page(NamedTuple):
    """A page to clock: where it lies, its path there, the script that clocks it, and what its result must hold."""

    root: Path
    path: str = ""
    clock: str = CLOCK
    shows: str = ""


def bare(root: Path, _: Path) -> Page:
    """Pyodide as npm has it, which adds 1 and 1."""
    shutil.copytree(PYODIDE, root / "pyodide")
    return _finish(root, "2", {"index.html": PAGE.replace("HEAD", SCRIPT), "page.js": ADDING, "worker.js": BARE_WORKER})


def fair(root: Path, site: Path) -> Page:
    """The same with our library, which is compiled and trimmed."""
    shutil.copytree(PYODIDE, root / "pyodide")
    _archive(site, "library-*/python_stdlib.zip", root / "python_stdlib.zip")
    return _finish(root, "2", {"index.html": PAGE.replace("HEAD", SCRIPT), "page.js": ADDING, "worker.js": FAIR_WORKER})


def framework(root: Path, site: Path) -> Page:
    """Our worksheet, compiled as the site has it, in PyScript with the same Pyodide."""
    shutil.copytree(PYODIDE, root / "pyodide")
    shutil.copytree(PYSCRIPT, root / "core", ignore=shutil.ignore_patterns("*.map"))
    _archive(site, "wheel-*/stoke_and_store-*.whl", root / "calc.zip")
    texts = {"main.py": FRAMEWORK_PYTHON, "pyscript.json": FRAMEWORK_CONFIG}
    return _finish(root, _first_result(), {"index.html": PAGE.replace("HEAD", FRAMEWORK_HEAD), **texts})


def _archive(site: Path, name: str, out: Path) -> None:
    """An archive of the site as others would publish it: each of its files packed by itself."""
    (packed,) = (site / "assets" / "python").glob(f"{name}.pack")
    content = io.BytesIO(gzip.decompress(packed.read_bytes()))
    with zipfile.ZipFile(content) as ours, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as new:
        for file in ours.namelist():
            new.writestr(file, ours.read(file))


def floor(root: Path, site: Path) -> Page:
    """The site's own worker in a page that holds nothing but its first answer."""
    shutil.copytree(site / "assets" / "python", root / "assets" / "python")
    (worker,) = site.glob("assets/js-*/worker.js")
    place = worker.relative_to(site)
    (root / place).parent.mkdir()
    for path in worker.parent.glob("worker.js*"):
        shutil.copy(path, root / place.parent)
    script = ASKING.replace("WORKER", place.as_posix())
    rules = f"{(site / '_headers').read_text(encoding='utf-8')}/page.js\n  Cache-Control: {finishing.FOR_EVER}\n"
    return _finish(root, _first_result(), {"index.html": PAGE.replace("HEAD", SCRIPT), "page.js": script}, rules)


def _first_result() -> str:
    headline = answer(WORKSHEET, {}).headline
    if headline is None:
        raise toolchain.Problem(f"{WORKSHEET} has no result to clock.")
    return headline.shown.split("\N{NO-BREAK SPACE}")[0]


def _finish(root: Path, shows: str, texts: dict[str, str], rules: str = KEPT_A_DAY) -> Page:
    for name, text in {**texts, "_headers": rules}.items():
        (root / name).write_text(text, encoding="utf-8")
    finishing.compress(root)
    return Page(root, shows=shows)


MAKERS: dict[str, Callable[[Path, Path], Page]] = {BARE: bare, FAIR: fair, FRAMEWORK: framework, FLOOR: floor}
