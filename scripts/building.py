"""Builds the site: pages by MkDocs, the page's Python, bundles, policies and compressed copies."""

from __future__ import annotations

import contextlib
import hashlib
import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterable, Iterator
from pathlib import Path

import finishing
import licenses
import runtime
from toolchain import CACHE, ROOT, Problem, environment, locked, node, say

SITE = ROOT / "site"
BUILT = CACHE / "built"  # holds the digest of what `site` was made from
INPUTS = (
    *("mkdocs.yml", "docs", "calc", "site_overrides", "scripts"),
    *("requirements", "package-lock.json", "pyproject.toml"),
)
PLOT_SOURCE = ROOT / "site_overrides" / "charts" / "plot.js"
PLOT_BUNDLE = "assets/js/plot.bundle.js"
WORKER = "assets/js/worker.js"
START = "assets/python/start.js"
PAGE_SCRIPTS = ("page.js", "record.js", "desk.js")  # those that pages name; the rest is imported by them
OTHER_SCRIPTS = ("early.js", "worker.js", "search-worker.js", "plot.bundle.js")
ALL_STYLES = "all.css"


def build(*, again: bool = False) -> bool:
    """Bring `site` up to date; True if there was something to do. A build that fails leaves the last site whole."""
    CACHE.mkdir(exist_ok=True)
    with locked("build"):
        digest = inputs_digest()
        if not again and SITE.is_dir() and BUILT.is_file() and BUILT.read_text(encoding="utf-8") == digest:
            return False
        with tempfile.TemporaryDirectory(dir=CACHE, prefix="site-") as folder:
            site = Path(folder, "site")
            _make(site)
            BUILT.unlink(missing_ok=True)
            shutil.rmtree(SITE, ignore_errors=True)
            site.rename(SITE)
        BUILT.write_text(digest, encoding="utf-8")
    return True


def inputs_digest() -> str:
    """Stands for everything that the site is made from: names and contents."""
    total = hashlib.sha256(sys.version.encode())
    for path in input_files():
        total.update(path.relative_to(ROOT).as_posix().encode() + b"\0")
        total.update(hashlib.sha256(path.read_bytes()).digest())
    return total.hexdigest()


def input_files() -> Iterable[Path]:
    """The files that the site is made from, in a fixed order."""
    for name in INPUTS:
        place = ROOT / name
        found = sorted(place.rglob("*")) if place.is_dir() else [place]
        yield from (path for path in found if path.is_file() and "__pycache__" not in path.parts)


def _make(site: Path) -> None:
    with _step("pages"):
        _run([sys.executable, "-m", "mkdocs", "--quiet", "build", "--strict", "--site-dir", str(site)])
    with _step("Python for the page"):
        runtime.publish(site)
    with _step("bundles"):
        bundle_charts(site, bundled := site.with_name("bundled.json"))
        licenses.write(site, bundled)
        bundle_worker(site)
        bundle_pages(site)
    with _step("policies and compressed copies"):
        finishing.finish(site)


def bundle_charts(site: Path, account: Path) -> None:
    """Bundle the few parts of the chart library that the page's chart module names, with an account of what went in."""
    _bundle(PLOT_SOURCE, site / PLOT_BUNDLE, "--minify", f"--metafile={account}")


def bundle_worker(site: Path) -> None:
    """Put what starts Python into the worker, so that a page does not ask for it and wait once more."""
    _bundle(site / WORKER, site / WORKER, "--allow-overwrite")
    (site / START).unlink()


def bundle_pages(site: Path) -> None:
    """Put what pages have in common into few files: each request costs a page that opens more than its bytes do."""
    scripts, styles = site / "assets" / "js", site / "assets" / "css"
    with tempfile.TemporaryDirectory(dir=CACHE) as folder:
        options = ("--splitting", "--chunk-names=part-[hash]", "--external:./plot.bundle.js")
        _esbuild(*(str(scripts / name) for name in PAGE_SCRIPTS), *options, f"--outdir={folder}")
        for path in scripts.glob("*.js"):
            if path.name not in OTHER_SCRIPTS:
                path.unlink()
        for path in Path(folder).iterdir():
            shutil.copyfile(path, scripts / path.name)
    parts = [styles / name for name in re.findall(r'@import "(.+)"', (styles / ALL_STYLES).read_text(encoding="utf-8"))]
    _bundle(styles / ALL_STYLES, styles / ALL_STYLES, "--allow-overwrite")
    for path in parts:
        path.unlink()


def _bundle(source: Path, target: Path, *options: str) -> None:
    _esbuild(str(source), *options, f"--outfile={target}")


def _esbuild(*options: str) -> None:
    esbuild = ROOT / "node_modules" / "esbuild" / "bin" / "esbuild"
    always = ("--bundle", "--format=esm", "--target=es2022", "--minify-whitespace", "--log-level=warning")
    _run([str(node()), str(esbuild), *always, *options])


@contextlib.contextmanager
def _step(what: str) -> Iterator[None]:
    started = time.monotonic()
    print(f"Building: {what} ...", end="", flush=True)
    try:
        yield
    except RuntimeError as error:
        say("")
        raise Problem(f"{error}\nThe site was not built: {what} could not be made (the reason is above).") from error
    except BaseException:
        say("")
        raise
    say(f" {time.monotonic() - started:.1f} s")


def _run(command: list[str]) -> None:
    """Run a program of the build; what it said is shown if it fails."""
    surroundings = {**environment(), "NO_MKDOCS_2_WARNING": "1", "PYTHONHASHSEED": "0"}
    surroundings.setdefault("SOURCE_DATE_EPOCH", str(runtime.EPOCH))
    done = subprocess.run(
        command, cwd=ROOT, env=surroundings, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, check=False
    )
    if done.returncode:
        raise RuntimeError(f"{done.stdout.rstrip()}{os.linesep}")
