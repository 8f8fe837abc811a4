"""Builds the site: pages by MkDocs, the page's Python, bundles, policies and compressed copies."""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from types import MappingProxyType

import edition as editions
import finishing
import kept
import licenses
import runtime
from edition import schema
from edition.applied import SURROUNDINGS
from toolchain import CACHE, ROOT, Problem, environment, locked, node, say

SITE = ROOT / "site"
BUILT = CACHE / "built"  # holds the digest of what `site` was made from
# The scripts that make it. Those that serve, measure and test it are none: after a change in them it is as it was.
MAKERS = (
    *("building.py", "finishing.py", "interpreter.py", "lean.py", "licenses.py", "list_used.mjs"),
    *("make_snapshot.mjs", "offline.py", "runtime.py", "same_each_time.mjs", "toolchain.py", "wasm.py"),
)
INPUTS = (
    *("mkdocs.yml", "docs", "calc", "comparisons", "site_overrides"),
    *(f"scripts/{name}" for name in MAKERS),
    *("requirements", "package-lock.json", "pyproject.toml", "LICENSE"),
)
# What the texts are made from that one build keeps for the next: all but the guides and what makes no text.
TEXT_SOURCES = ("calc", "comparisons", "site_overrides", "requirements", "package-lock.json", "pyproject.toml")
PLOT_SOURCE = ROOT / "site_overrides" / "charts" / "plot.js"
PLOT_BUNDLE = "assets/js/plot.bundle.js"
WORKER = "assets/js/worker.js"
EARLY = "assets/js/early.js"
PAGE_SCRIPTS = ("assets/js/page.js", "assets/js/record.js", "assets/js/desk.js")  # those that pages name
ALL_STYLES = "assets/css/all.css"
START = "assets/python/start.js"  # how the page's Python starts: the worker's bundle takes it in
# What bundles, and the licenses of what is in the site, are made from beside it.
BUNDLE_SOURCES = (
    *("site_overrides/theme/assets", "site_overrides/charts", "scripts/building.py", "scripts/licenses.py"),
    *("LICENSE", "package-lock.json", "requirements"),
)
BUNDLED = "bundled.json"  # beside the bundles that are kept: the files of the site that went into them


def build(*, again: bool = False, address: str = "", edition: Path | None = None, offline: bool = True) -> bool:
    """Bring `site` up to date; True if there was something to do. A build that fails leaves the last site whole.

    `address` is where the site will stand; without one, a page that is not found can only stand at a host's root.
    `edition` is the folder of a dealer's edition; without one the project's own site is built.
    Not `offline`, browsers that keep the site for readers without a line are told to forget it.
    """
    if address and not re.fullmatch(r"https?://[^\s/]+/(\S+/)?", address):
        raise Problem(f"{address} is no address of a site: write it with https:// and a slash at its end.")
    if edition:
        check(edition)
        schema.refresh(edition)
    CACHE.mkdir(exist_ok=True)
    with locked("build"):
        digest = f"{inputs_digest(edition)} {address} {offline}"
        if not again and SITE.is_dir() and BUILT.is_file() and BUILT.read_text(encoding="utf-8") == digest:
            return False
        with tempfile.TemporaryDirectory(dir=CACHE, prefix="site-") as folder:
            site = Path(folder, "site")
            make(site, address, edition, offline)
            BUILT.unlink(missing_ok=True)
            shutil.rmtree(SITE, ignore_errors=True)
            site.rename(SITE)
        BUILT.write_text(digest, encoding="utf-8")
    return True


def check(edition: Path) -> None:
    """Raise Problem, with a sentence, where an edition cannot be used."""
    try:
        editions.read(edition)
    except editions.EditionError as wrong:
        raise Problem(f"{wrong}\nThe site was not built.") from None


def inputs_digest(edition: Path | None = None) -> str:
    """Stands for everything that the site is made from: names and contents."""
    return _digest(input_files(edition), str(edition.resolve()) if edition else "")


def _digest(paths: Iterable[Path], *more: str) -> str:
    total = hashlib.sha256(" ".join([sys.version, *more]).encode())
    for path in paths:
        total.update(os.path.relpath(path, ROOT).encode() + b"\0")
        total.update(hashlib.sha256(path.read_bytes()).digest())
    return total.hexdigest()


def input_files(edition: Path | None = None) -> Iterable[Path]:
    """The files that the site is made from, in a fixed order."""
    if edition:
        yield from editions.files(edition)
    yield from _files(INPUTS)


def _files(names: Iterable[str]) -> Iterator[Path]:
    for name in names:
        place = ROOT / name
        paths = sorted(place.rglob("*")) if place.is_dir() else [place]
        yield from (path for path in paths if path.is_file() and "__pycache__" not in path.parts)


def make(site: Path, address: str = "", edition: Path | None = None, offline: bool = True) -> None:
    """Make the whole site in the folder `site`, which is not there yet."""
    with _step("pages"):
        make_pages(site, address, edition)
    with _step("Python for the page"):
        runtime.publish(site)
        publish_weather(site)
    with _step("bundles"):
        bundle(site)
        name_release(site)
    with _step("policies and compressed copies"):
        finishing.finish(site, listed=bool(address), offline=offline)


def make_pages(site: Path, address: str = "", edition: Path | None = None) -> None:
    """Let MkDocs make the pages."""
    with kept_texts() as texts:
        surroundings = {
            "SITE_ADDRESS": address,
            SURROUNDINGS: str(edition.resolve()) if edition else "",
            kept.SURROUNDINGS: str(texts),
        }
        mkdocs = [sys.executable, "-m", "mkdocs", "--quiet", "build", "--strict", "--site-dir", str(site)]
        _run(mkdocs, more=surroundings)


@contextlib.contextmanager
def kept_texts() -> Iterator[Path]:
    """A file with what builds from the same sources have kept, for one build to read and write; older ones are removed.

    Nothing is kept of a build that fails, or during which a source was changed.
    """
    digest = _digest(_files(TEXT_SOURCES))
    place = CACHE / f"texts-{digest}.json"
    with tempfile.TemporaryDirectory(dir=CACHE) as folder:
        texts = Path(folder, place.name)
        with contextlib.suppress(FileNotFoundError):  # another build may take an old one away at any moment
            shutil.copyfile(place, texts)
        yield texts
        if _digest(_files(TEXT_SOURCES)) == digest:
            texts.replace(place)
            for old in set(CACHE.glob("texts-*.json")) - {place}:
                old.unlink(missing_ok=True)


def publish_weather(site: Path) -> None:
    """The typical years of places, each fetched when a reader chooses it."""
    folder = site / "assets" / "weather"
    folder.mkdir(parents=True)
    for path in sorted((ROOT / "calc" / "weather").glob("*.txt")):
        shutil.copyfile(path, folder / path.name)


def bundle(site: Path) -> None:
    """Put what pages have in common into few files: each request costs a page that opens more than its bytes do."""
    digest = _digest(_files(BUNDLE_SOURCES), (site / START).read_text(encoding="utf-8"))
    bundles = runtime.kept_folder("bundles", digest, lambda out: _make_bundles(site, out))
    for name in json.loads((bundles / BUNDLED).read_text(encoding="utf-8")):
        (site / name).unlink(missing_ok=True)  # where two bundles took it in
    shutil.copytree(bundles / "made", site, dirs_exist_ok=True)


def name_release(site: Path) -> None:
    """Pages share a running worker with those alone that mean the same one (see early.js)."""
    release = hashlib.sha256((site / WORKER).read_bytes()).hexdigest()[:12]
    early = (site / EARLY).read_text(encoding="utf-8")
    (site / EARLY).write_text(f"const RELEASE = {json.dumps(release)};\n{early}", encoding="utf-8", newline="\n")


def _make_bundles(site: Path, out: Path) -> None:
    """Bundle the few parts of the chart library that the page's chart module names, and files of the site."""
    made, account = out / "made", out / "account.json"
    _esbuild(str(PLOT_SOURCE), "--minify", f"--metafile={account}", f"--outfile={made / PLOT_BUNDLE}")
    licenses.write(made, account)
    bundled: list[str] = []
    for names, *options in (
        ([WORKER],),
        (PAGE_SCRIPTS, "--splitting", "--chunk-names=part-[hash]", "--external:../js/plot.bundle.js"),
        ([ALL_STYLES],),
    ):
        # In the site's own folder, whose name changes, so that no name of a part hangs on it.
        folder = (made / names[0]).parent
        _esbuild(*names, *options, f"--metafile={account}", f"--outdir={folder}", cwd=site)
        bundled += json.loads(account.read_text(encoding="utf-8"))["inputs"]
    (out / BUNDLED).write_text(json.dumps(bundled), encoding="utf-8")


def _esbuild(*options: str, cwd: Path = ROOT) -> None:
    esbuild = ROOT / "node_modules" / "esbuild" / "bin" / "esbuild"
    always = ("--bundle", "--format=esm", "--target=es2022", "--minify-whitespace", "--log-level=warning")
    _run([str(node()), str(esbuild), *always, *options], cwd)


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


def _run(command: list[str], cwd: Path = ROOT, more: Mapping[str, str] = MappingProxyType({})) -> None:
    """Run a program of the build; what it said is shown if it fails."""
    surroundings = {**environment(), "NO_MKDOCS_2_WARNING": "1", "PYTHONHASHSEED": "0", **more}
    surroundings.setdefault("SOURCE_DATE_EPOCH", str(runtime.EPOCH))
    done = subprocess.run(
        command, cwd=cwd, env=surroundings, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, check=False
    )
    if done.returncode:
        raise RuntimeError(f"{done.stdout.rstrip()}{os.linesep}")
