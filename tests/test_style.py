"""The text of the project: style, spelling and types, each judged by the tool for it."""

from __future__ import annotations

import re
import subprocess
import sys

import pytest

import toolchain

# The scripts have no suffix, so mypy has to be told of each.
TYPED = ["calc/**/*.py", "comparisons/*.py", "site_overrides/*.py", "site_overrides/render/**/*.py", "scripts/*"]


def sources() -> list[str]:
    result = [path for pattern in TYPED for path in sorted(toolchain.ROOT.glob(pattern))]
    return [str(path.relative_to(toolchain.ROOT)) for path in result if path.suffix in ("", ".py") and path.is_file()]


CHECKS = {
    "style": ["ruff", "check", "."],
    "format": ["ruff", "format", "--check", "--output-format=concise", "."],  # `ruff format .` puts it right
    "spelling": ["codespell_lib"],
    "types": ["mypy", *sources()],
}


@pytest.mark.parametrize("name", CHECKS)
def test_the_text_is_in_order(name: str) -> None:
    done = subprocess.run(
        [sys.executable, "-m", *CHECKS[name]], cwd=toolchain.ROOT, capture_output=True, encoding="utf-8", check=False
    )
    assert done.returncode == 0, f"\n{done.stdout}{done.stderr}"


def test_hand_formatting_is_for_tables() -> None:
    """A mark stands behind the closing bracket of a table that is read down its columns, and there are few."""
    marked = [
        (path, line)
        for path in sources()
        for line in (toolchain.ROOT / path).read_text(encoding="utf-8").splitlines()
        if re.search(r"# fmt: (?:skip|off)$", line)
    ]
    assert all(re.fullmatch(r"[)\]}]+  # fmt: skip", line) for _, line in marked), marked
    assert len(marked) <= 13, marked
