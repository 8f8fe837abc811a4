"""Writes `sw.js`, with which a browser keeps the site for a reader without a line: service_worker.js and what it keeps.

The browser asks for `sw.js` anew at each visit. It names the release and the digest of every file that belongs to it,
so one that has changed in any byte makes another release, and a release that has not wholly arrived is none.
"""

from __future__ import annotations

import base64
import hashlib
import json
from pathlib import Path

from toolchain import ROOT

NAME = "sw.js"
SOURCE = ROOT / "site_overrides" / "service_worker.js"
REMOVER = ROOT / "site_overrides" / "no_service_worker.js"
COPIES = {".gz", ".br"}
# What no page of the site itself asks for.
LEFT_OUT = {NAME, "_headers", "404.html", "sitemap.xml", "robots.txt"}
FRAMED = "embed/"
# The browser's own copy serves a reader without a line, and where it is gone Python starts the ordinary way.
SNAPSHOT = "assets/python/snapshot-"


def write(site: Path, *, keep: bool = True) -> None:
    """Write `sw.js` for the site as it stands in a folder, or, not to `keep` it, one that removes what was kept."""
    if keep:
        files = {name: _digest((site / name).read_bytes()) for name in kept(site)}
        listed = json.dumps(files, indent=0)
        release = hashlib.sha256(listed.encode()).hexdigest()[:16]
        named = f"const RELEASE = {json.dumps(release)};\nconst FILES = {listed};\n\n"
        text = named + SOURCE.read_text(encoding="utf-8")
    else:
        text = REMOVER.read_text(encoding="utf-8")
    (site / NAME).write_text(text, encoding="utf-8", newline="\n")


def kept(site: Path) -> list[str]:
    """The files that a reader without a line may need: all but those that other websites frame, and the snapshot."""
    paths = (path for path in site.rglob("*") if path.is_file() and path.suffix not in COPIES)
    names = (path.relative_to(site).as_posix() for path in paths)
    return sorted(name for name in names if name not in LEFT_OUT and not name.startswith((FRAMED, SNAPSHOT)))


def _digest(content: bytes) -> str:
    return base64.b64encode(hashlib.sha256(content).digest()[:12]).decode()
