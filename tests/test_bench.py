"""What scripts/bench load reckons with, without a browser; and what makes the site stale."""

from __future__ import annotations

import io
import subprocess
import sys
import time

import building
import loading
import toolchain
from line import Line


def test_a_line_is_shared_and_slow() -> None:
    line = Line(rate=1e6, delay=0.02)
    out = io.BytesIO()
    started = time.monotonic()
    line.wait()
    line.send(out.write, b"x" * 100_000)
    line.send(out.write, b"y" * 100_000)
    assert out.getvalue() == b"x" * 100_000 + b"y" * 100_000
    assert time.monotonic() - started >= 0.21  # 200,000 bytes at a million a second, and the delay


def test_the_table_compares_medians_on_one_line() -> None:
    visits: loading.Visits = {}
    for page, times in {
        loading.BARE: (900, 1000, 1300),
        loading.FAIR: (500, 500, 800),
        loading.OURS: (400, 250, 300),
    }.items():
        for visit in ("cold", "warm"):
            visits["unthrottled", page, visit] = [loading.Seen(live, 5_000_000) for live in times]
    rows = [row for row in loading.table(visits, 3) if loading.OURS in row]
    assert rows[0] == "| unthrottled | cold | this site | 300 [250 to 400] | 0.30 | 0.60 | 5.00 |"
    assert len(loading.as_json(visits)) == 18


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
