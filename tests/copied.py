"""A copy of the project, for tests that change its sources and build it."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import toolchain


def project(place: Path) -> Path:
    """All of it but what was made from it, with the packages that are installed here."""
    made = shutil.ignore_patterns("__pycache__", ".*", "node_modules", "site")
    shutil.copytree(toolchain.ROOT, place, ignore=made)
    for name in (".venv", "node_modules"):
        (place / name).symlink_to(toolchain.ROOT / name, target_is_directory=True)
    return place


def build(copy: Path, call: str) -> None:
    """Run a call of `building` in the copy, by the sources that stand there."""
    folders = os.pathsep.join(str(copy / name) for name in ("", "scripts", "site_overrides"))
    built = subprocess.run(
        [sys.executable, "-c", f"import building; {call}"],
        cwd=copy,
        env={**os.environ, "PYTHONPATH": folders},
        capture_output=True,
        text=True,
        check=False,
    )
    assert built.returncode == 0, built.stdout + built.stderr
