"""The server behind scripts/preview, and the script itself: types, headers, refusals, plain sentences."""

from __future__ import annotations

import gzip
import http.client
import os
import re
import signal
import socket
import subprocess
import sys
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest

import building
import finishing
import server
import toolchain

PREVIEW = toolchain.ROOT / "scripts" / "preview"
TEXT = "The fire burns for two hours; the house asks for heat all day. " * 60


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A small finished site, and beside it a file that nobody may see."""
    site = tmp_path / "site"
    for name, text in {
        "index.html": f"<html><head><title>t</title><script>let a = 1;</script></head><body>{TEXT}</body></html>",
        "404.html": "<html><head></head><body>No such page.</body></html>",
        "guides/index.html": "<html><head></head><body>Guides<script src='../assets/js/page.js'></script></body></html>",
        "assets/css/all.css": "p { margin: 0; }",
        "assets/js/page.js": "let b = 2;",
        "assets/js/plot.bundle.js": "let c = 3;",
        "assets/js/worker.js": "postMessage(1);",
        "assets/python/library-1/a.zip": "zip",
        "assets/python/start.js": f"// {TEXT}",
        "assets/app.wasm": TEXT,
        "search/search_index.json": '{"config": {}, "docs": []}',
    }.items():
        path = site / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    (tmp_path / "secret.txt").write_text("secret", encoding="utf-8")
    finishing.finish(site)
    return site


@pytest.fixture
def running(folder: Path) -> Iterator[server.Site]:
    with server.serving(folder) as site:
        yield site


def ask(site: server.Site, path: str, method: str = "GET", **headers: str) -> tuple[http.client.HTTPResponse, bytes]:
    """One request, sent exactly as written: no path is tidied up on the way."""
    connection = http.client.HTTPConnection("127.0.0.1", site.server_address[1])
    connection.request(method, path, headers={name.replace("_", "-"): value for name, value in headers.items()})
    answer = connection.getresponse()
    body = answer.read()
    connection.close()
    return answer, body


@pytest.mark.parametrize(
    ("path", "kind"),
    [
        ("/", "text/html; charset=utf-8"),
        ("/guides/", "text/html; charset=utf-8"),
        ("/assets/js/worker.js", "text/javascript; charset=utf-8"),
        ("/assets/app.wasm", "application/wasm"),
        ("/assets/python/library-1/a.zip", "application/zip"),
    ],
)
def test_each_kind_of_file_has_its_type(running: server.Site, path: str, kind: str) -> None:
    answer, _ = ask(running, path)
    assert (answer.status, answer.headers["Content-Type"]) == (200, kind)
    assert answer.headers["X-Content-Type-Options"] == "nosniff"
    assert answer.headers["Referrer-Policy"] == "no-referrer"
    # A page may stand in nobody's frame; a file is no page.
    assert ("frame-ancestors 'none'" in (answer.headers["Content-Security-Policy"] or "")) == kind.startswith(
        "text/html"
    )


@pytest.mark.parametrize("path", ["/", "/index.html", "/guides/", "/guides/index.html", "/404.html", "/nothing/here"])
def test_no_page_may_stand_in_a_frame_under_any_of_its_names(running: server.Site, path: str) -> None:
    answer, _ = ask(running, path)
    assert "frame-ancestors 'none'" in (answer.headers["Content-Security-Policy"] or "")


def test_a_page_made_to_be_framed_may_stand_in_a_frame(site: Path) -> None:
    with server.serving(site) as running:
        framed, _ = ask(running, "/embed/stored-heat/")
        other, _ = ask(running, "/guides/storage/")
    assert "frame-ancestors" not in (framed.headers["Content-Security-Policy"] or "")
    assert "frame-ancestors 'none'" in other.headers["Content-Security-Policy"]


def test_a_page_carries_its_own_policy_with_the_hash_of_its_inline_script(running: server.Site) -> None:
    _, body = ask(running, "/")
    # The digest of `let a = 1;`, worked out with: printf 'let a = 1;' | openssl dgst -sha256 -binary | base64
    assert b"script-src 'self' 'sha256-xY6QKfH9PRsQnLz56nj6MBwiK5oHg+im1Jkpdp1x/Ck=';" in body
    _, plain = ask(running, "/guides/")
    assert b"script-src 'self';" in plain
    assert b"unsafe" not in body + plain


def test_the_worker_alone_may_compile_wasm(running: server.Site) -> None:
    worker, _ = ask(running, "/assets/js/worker.js")
    assert "'wasm-unsafe-eval'" in worker.headers["Content-Security-Policy"]
    page, body = ask(running, "/")
    assert "wasm" not in page.headers["Content-Security-Policy"]
    assert b"wasm-unsafe-eval" not in body


def test_only_files_named_by_their_content_are_kept_for_ever(running: server.Site) -> None:
    _, guides = ask(running, "/guides/")
    script = re.search(rb"/assets/js-[0-9a-f]{12}/page[.]js", guides)
    assert script
    for path in ("/assets/python/library-1/a.zip", script[0].decode()):
        kept, _ = ask(running, path)
        assert kept.status == 200
        assert kept.headers["Cache-Control"] == "public, max-age=31536000, immutable"
    for path in ("/", "/assets/python/start.js", "/assets/js/worker.js"):
        answer, _ = ask(running, path)
        assert answer.headers["Cache-Control"] == "no-cache"


@pytest.mark.parametrize("path", ["/", "/index.html", "/guides/", "/assets/js/worker.js", "/embed/stored-heat/"])
def test_a_name_that_a_release_keeps_is_asked_for_anew(running: server.Site, path: str) -> None:
    """Also of a host that would have browsers keep it, since the header stands in the site's own file."""
    assert running._declared_headers(path)["Cache-Control"] == "no-cache"


def test_files_go_out_compressed_when_the_browser_can_read_that(running: server.Site) -> None:
    plain, text = ask(running, "/assets/app.wasm")
    zipped, small = ask(running, "/assets/app.wasm", Accept_Encoding="gzip, deflate")
    best, smallest = ask(running, "/assets/app.wasm", Accept_Encoding="gzip, deflate, br, zstd")
    assert "Content-Encoding" not in plain.headers
    assert zipped.headers["Content-Encoding"] == "gzip"
    assert gzip.decompress(small) == text
    assert best.headers["Content-Encoding"] == "br"
    assert len(smallest) < len(text)
    assert zipped.headers["Vary"] == "Accept-Encoding"


def test_an_unchanged_file_is_not_sent_again(running: server.Site) -> None:
    first, body = ask(running, "/")
    again, nothing = ask(running, "/", If_None_Match=first.headers["ETag"])
    other, whole = ask(running, "/", If_None_Match='"old"')
    assert (again.status, nothing) == (304, b"")
    assert (other.status, whole) == (200, body)


NOT_SHOWN = [
    *("/none", "/none/", "/assets/", "/_headers", "/%00"),
    *("/../secret.txt", "/%2e%2e/secret.txt", "/assets/../../secret.txt", "/..%5csecret.txt"),
]


@pytest.mark.parametrize("path", NOT_SHOWN)
def test_what_is_not_on_the_site_gets_the_sites_own_page(running: server.Site, path: str) -> None:
    answer, body = ask(running, path)
    assert answer.status == 404
    assert b"No such page." in body


def test_a_folder_without_its_slash_is_sent_there(running: server.Site) -> None:
    answer, _ = ask(running, "/guides")
    assert (answer.status, answer.headers["Location"]) == (301, "guides/")


def test_head_gives_the_headers_alone(running: server.Site) -> None:
    answer, body = ask(running, "/", method="HEAD")
    assert (answer.status, body) == (200, b"")
    assert int(answer.headers["Content-Length"]) > 1000


def test_the_record_counts_the_bytes_that_went_out(running: server.Site) -> None:
    _, body = ask(running, "/", Accept_Encoding="gzip")
    assert running.requests[-1] == server.Request("/", 200, len(body))


def test_only_a_watched_page_reloads(folder: Path, running: server.Site) -> None:
    assert b"~reload" not in ask(running, "/")[1]
    assert ask(running, "/~reload")[0].status == 404
    with server.serving(folder, watched=True) as watched:
        assert b'<script type="module" src="/~reload.js"></script></body>' in ask(watched, "/")[1]
        assert ask(watched, "/~reload.js")[0].headers["Content-Type"].startswith("text/javascript")
        before = ask(watched, "/~reload")[1]
        watched.build += 1
        assert ask(watched, "/~reload")[1] != before


def test_a_test_can_lose_a_file(folder: Path) -> None:
    with server.serving(folder, interfere=lambda path: server.Answer(503) if path == "/" else None) as site:
        assert ask(site, "/")[0].status == 503
        assert ask(site, "/guides/")[0].status == 200


def start_preview(*arguments: str) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, str(PREVIEW), *arguments],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        encoding="utf-8",
        # Who runs the tests in the background of a shell has told all that they start to overhear Ctrl-C.
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),
    )


def test_a_port_that_is_taken_is_said_in_one_sentence(site: Path) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        preview = start_preview("--port", str(port))
        _, errors = preview.communicate(timeout=300)
    assert preview.returncode == 1
    assert errors.strip() == (
        f"Port {port} is taken: stop what uses it, or take another with scripts/preview --port {port + 1}"
    )


@pytest.mark.skipif(os.name == "nt", reason="Windows has no such signal to send")
def test_the_preview_prints_its_address_serves_and_stops(site: Path) -> None:
    preview = start_preview("--port", "0")
    assert preview.stdout is not None
    address = next(line.strip() for line in preview.stdout if line.strip().startswith("http://127.0.0.1:"))
    with urllib.request.urlopen(address) as answer:
        assert "Stoke and Store" in answer.read().decode()
    preview.send_signal(signal.SIGINT)
    _, errors = preview.communicate(timeout=300)
    assert (preview.returncode, errors) == (130, "")


def test_a_changed_new_or_removed_file_asks_for_a_new_build(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(building, "ROOT", tmp_path)
    monkeypatch.setattr(building, "INPUTS", ("mkdocs.yml", "docs"))
    (tmp_path / "mkdocs.yml").touch()
    page = tmp_path / "docs" / "guides" / "storage.md"
    page.parent.mkdir(parents=True)
    page.write_text("One.", encoding="utf-8")
    seen = [building.inputs_digest(), building.inputs_digest()]
    assert seen[0] == seen[1]
    page.write_text("Two.", encoding="utf-8")
    seen.append(building.inputs_digest())
    page.rename(page.with_name("store.md"))
    seen.append(building.inputs_digest())
    page.with_name("store.md").unlink()
    seen.append(building.inputs_digest())
    assert len(set(seen)) == 4


def test_the_build_looks_at_each_folder_that_the_site_is_made_from() -> None:
    seen = {path.relative_to(toolchain.ROOT).parts[0] for path in building.input_files()}
    assert {"calc", "docs", "mkdocs.yml", "scripts", "site_overrides", "pyproject.toml", "package-lock.json"} <= seen


@pytest.mark.parametrize("address", ["warm.example", "https://warm.example", "https://warm.example/heat", "a b"])
def test_an_address_is_written_whole(address: str) -> None:
    with pytest.raises(toolchain.Problem, match="slash at its end"):
        building.build(address=address)


@pytest.mark.long
def test_a_page_that_is_not_found_knows_where_the_site_stands(tmp_path: Path) -> None:
    with toolchain.locked("build"):
        building._run(
            [sys.executable, "-m", "mkdocs", "--quiet", "build", "--strict", "--site-dir", str(tmp_path)],
            more={"SITE_ADDRESS": "https://warm.example/heat/"},
        )
    missing = (tmp_path / "404.html").read_text(encoding="utf-8")
    assert 'href="/heat/assets/css/all.css"' in missing
    assert re.search(r'href="/heat/\.?"', missing)
    assert "https://warm.example/heat/plan/" in (tmp_path / "sitemap.xml").read_text(encoding="utf-8")
