"""What a host is told and asked to send."""

from __future__ import annotations

from pathlib import Path

import finishing


def write(path: Path, size: int) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(b"x" * size)


def test_what_a_reader_fetches_is_counted_once_or_for_each_page(tmp_path: Path) -> None:
    write(tmp_path / "assets" / "js" / "page.js", 1000)
    write(tmp_path / "assets" / "js" / "page.js.br", 300)
    write(tmp_path / "assets" / "js" / "page.js.gz", 400)
    write(tmp_path / "assets" / "python" / "snapshot-0" / "python.memory", 5000)
    write(tmp_path / "assets" / "python" / "wheel-0" / "a.whl", 4000)  # only where that does not come
    write(tmp_path / "assets" / "weather" / "place.txt", 70_000)  # only where a reader chooses it
    write(tmp_path / "guides" / "one" / "index.html", 200)
    write(tmp_path / "guides" / "two" / "index.html", 900)
    write(tmp_path / "guides" / "two" / "index.html.br", 100)
    assert finishing.fetched(tmp_path) == (5300, 150)


def test_the_types_that_hosts_may_not_know_are_told(tmp_path: Path) -> None:
    write(tmp_path / "index.html", 10)
    write(tmp_path / "assets" / "python" / "pyodide-0" / "pyodide.asm.wasm", 10)
    write(tmp_path / "assets" / "python" / "pyodide-0" / "pyodide.mjs", 10)
    finishing.write_headers(tmp_path)
    told = (tmp_path / "_headers").read_text(encoding="utf-8")
    assert "/assets/python/pyodide-0/pyodide.asm.wasm\n  Content-Type: application/wasm\n" in told
    assert "/assets/python/pyodide-0/pyodide.mjs\n  Content-Type: text/javascript\n" in told
