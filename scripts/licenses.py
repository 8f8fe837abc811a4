"""The license texts of everything that the site carries from others, gathered into one file of the site."""

from __future__ import annotations

import importlib.metadata
import json
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple

from toolchain import ROOT

FILE = "assets/licenses.txt"
LIBRARIES = ("jinja2", "markupsafe", "segno", "mkdocs-material")
MOZILLA = """\
Mozilla Public License, version 2.0: https://mozilla.org/MPL/2.0/
The interpreter stands here in two parts, and its loader without names that nothing here uses: scripts/interpreter.py of
Stoke and Store makes them from the published files. The source of these is at https://github.com/pyodide/pyodide, under
the tag of its version."""
PYTHON = """\
{copyright}

Python Software Foundation License, version 2: https://docs.python.org/3/license.html
The standard library stands here byte-compiled, and reduced to the modules that the pages use."""
HEAD = """\
Stoke and Store is published under the MIT License. This site also carries the works below, each under the license that
stands with it.
"""


class Part(NamedTuple):
    """A work of others: its name, its version, its license."""

    name: str
    version: str
    text: str


def write(site: Path, bundled: Path) -> None:
    """Write the file; `bundled` is esbuild's account of what went into the chart bundle."""
    own = Part("Stoke and Store", "", _text(ROOT, "LICENSE"))
    parts = [own, _pyodide(), _python(), *map(_library, LIBRARIES), *_npm_parts(bundled)]
    texts = [f"{'=' * 80}\n{' '.join(filter(None, part[:2]))}\n\n{part.text.strip()}\n" for part in parts]
    (site / FILE).write_text("\n".join([HEAD, *texts]), encoding="utf-8", newline="\n")


def _pyodide() -> Part:
    return Part("Pyodide", _pyodide_says("package.json")["version"], MOZILLA)


def _python() -> Part:
    """The interpreter inside Pyodide, with its standard library."""
    return Part("Python", _pyodide_says("pyodide-lock.json")["info"]["python"], PYTHON.format(copyright=sys.copyright))


def _pyodide_says(name: str) -> Any:
    return json.loads((ROOT / "node_modules" / "pyodide" / name).read_text(encoding="utf-8"))


def _library(name: str) -> Part:
    distribution = importlib.metadata.distribution(name)
    (file,) = [path for path in distribution.files or [] if path.full_match("*.dist-info/**/LICENSE*")]
    return Part(name, distribution.version, Path(str(distribution.locate_file(file))).read_text(encoding="utf-8"))


def _npm_parts(bundled: Path) -> Iterator[Part]:
    inputs = json.loads(bundled.read_text(encoding="utf-8"))["inputs"]
    folders = {_package_of(Path(path)) for path in inputs if "node_modules/" in path}
    for folder in sorted(folders):
        package = json.loads((ROOT / folder / "package.json").read_text(encoding="utf-8"))
        yield Part(package["name"], package["version"], _text(ROOT / folder, "LICEN[CS]E*"))


def _package_of(path: Path) -> str:
    """The folder of the npm package that a file belongs to."""
    start = len(path.parts) - 1 - path.parts[::-1].index("node_modules")
    return Path(*path.parts[: start + (3 if path.parts[start + 1].startswith("@") else 2)]).as_posix()


def _text(folder: Path, pattern: str) -> str:
    texts = sorted(folder.glob(pattern))
    if not texts:
        raise RuntimeError(f"{folder} holds no license text, and the site may not carry what it holds without one.")
    return texts[0].read_text(encoding="utf-8")
