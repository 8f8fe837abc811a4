"""`calc` without the site: installed from its wheel somewhere else, its example table, and the reference of its docstrings."""

from __future__ import annotations

import csv
import io
import subprocess
import sys
import tomllib
import venv
from pathlib import Path

from render.pages import reference
from toolchain import ROOT, environment

HOUSES = ROOT / "docs" / "assets" / "data" / "forty-houses.csv"


def test_calc_installs_by_itself_and_sizes_forty_houses(tmp_path: Path) -> None:
    build = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(tmp_path)]
    subprocess.run(build, cwd=ROOT / "calc", env=environment(), check=True, capture_output=True)
    (wheel,) = tmp_path.glob("*.whl")
    version = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]["version"]
    assert wheel.name == f"stoke_and_store_calc-{version}-py3-none-any.whl"
    venv.create(tmp_path / "own", with_pip=True)
    place = tmp_path / "own" / ("Scripts" if sys.platform == "win32" else "bin")
    subprocess.run([place / "python", "-m", "pip", "install", "-q", "--no-index", wheel], check=True)
    command = [place / "stoke-and-store", "tank-size", "--table", HOUSES]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, encoding="utf-8-sig", check=False)
    assert done.returncode == 0, done.stderr
    rows = list(csv.DictReader(io.StringIO(done.stdout)))
    assert [row["name"] for row in rows] == [f"House {number}" for number in range(1, 41)]
    assert all(float(row["recommended (gal)"]) > 0 for row in rows)


def test_the_reference_tells_of_every_door() -> None:
    html = reference.reference()
    for name in (*reference.DOORS, "calc.physics.store"):
        assert f"<code>{name}</code>" in html
    assert "answer(key: str, given: Mapping[str, Typed]" in html
    assert "<code>usable_heat(volume: CubicMetre" in html
    assert "class Quantity(" in html, "what a package has from its own modules is told with it"
