"""Serves the built site on this machine, the way a careful host would: types, headers, precompressed files.

The headers come from the site's own `_headers` file, which is also what hosts that know such files read. Used by
scripts/preview, by scripts/bench and by the browser tests:

    with server.serving(Path("site")) as site:
        browser.goto(site.url)
        site.requests  # what was asked for, and how many bytes went out
"""

from __future__ import annotations

import contextlib
import fnmatch
import hashlib
import posixpath
import threading
import urllib.parse
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from line import Line, pieces

TYPES = {
    ".css": "text/css; charset=utf-8",
    ".csv": "text/csv; charset=utf-8",
    ".html": "text/html; charset=utf-8",
    ".ico": "image/x-icon",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".mjs": "text/javascript; charset=utf-8",
    ".pdf": "application/pdf",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".txt": "text/plain; charset=utf-8",
    ".wasm": "application/wasm",
    ".webmanifest": "application/manifest+json",
    ".woff2": "font/woff2",
    ".xml": "application/xml",
    ".zip": "application/zip",
}
ENCODINGS = {"br": ".br", "gzip": ".gz"}

RELOAD_PATH = "/~reload"
RELOAD_SCRIPT = """\
const shown = await (await fetch("/~reload")).text();
for (;;) {
  await new Promise((done) => setTimeout(done, 700));
  const built = await fetch("/~reload").then((answer) => answer.text(), () => shown);
  if (built !== shown) location.reload();
}
"""


class PortTaken(Exception):
    """Another program listens on the port that was asked for."""


@dataclass(frozen=True)
class Answer:
    """What goes back for one request."""

    status: int
    body: bytes = b""
    headers: dict[str, str] = field(default_factory=dict)


@dataclass
class Request:
    """What was asked for, and how much of it has gone out: not all of a transfer that the reader broke off."""

    path: str
    status: int
    sent: int = 0


class Site(ThreadingHTTPServer):
    """A folder of files, served on 127.0.0.1.

    `interfere` sees each path first and may answer in the folder's place, so that a test can lose or damage a file.
    Browsers keep the site only if it may be had `offline`: who builds it again wants to see what was built. With
    `watched`, each page also gets a small script that reloads it when `build` has changed.
    """

    daemon_threads = True

    def __init__(
        self,
        root: Path,
        port: int = 0,
        encodings: tuple[str, ...] = ("br", "gzip"),
        interfere: Callable[[str], Answer | None] = lambda path: None,
        watched: bool = False,
        offline: bool = False,
        line: Line | None = None,
    ) -> None:
        self.root = root
        self.encodings = encodings
        self.interfere = interfere
        self.watched = watched
        self.offline = offline
        self.line = line
        self.build = 0
        self.requests: list[Request] = []
        try:
            super().__init__(("127.0.0.1", port), Handler)
        except OSError as error:
            raise PortTaken(port) from error

    @property
    def url(self) -> str:
        return f"http://127.0.0.1:{self.server_address[1]}/"

    def answer(self, path: str, accepted: str, known: str) -> Answer:
        """The answer for a path, given the encodings the browser accepts and the version it has (its ETag)."""
        if self.watched and path.startswith(RELOAD_PATH):
            return self._reload(path)
        if path.endswith("/sw.js") and not self.offline:
            return Answer(404, b"Not kept here.", {"Content-Type": TYPES[".txt"]})
        file = self._file(path)
        if file is None and not path.endswith("/") and (self.root / path.strip("/")).is_dir():
            return Answer(301, headers={"Location": posixpath.basename(path) + "/"})
        status = 200 if file else 404
        file = file or self.root / "404.html"
        if not file.is_file():
            return Answer(404, b"Not found.", {"Content-Type": TYPES[".txt"]})
        headers = {"Content-Type": TYPES.get(file.suffix, "application/octet-stream"), "Cache-Control": "no-cache"}
        headers |= self._declared_headers(path if status == 200 else "/404.html")
        if self.watched and file.suffix == ".html":
            return Answer(status, self._with_reload(file.read_bytes()), headers)
        body, encoding = self._body(file, accepted)
        headers |= {"ETag": f'"{hashlib.sha256(body).hexdigest()[:16]}"', "Vary": "Accept-Encoding"}
        if encoding:
            headers["Content-Encoding"] = encoding
        if status == 200 and headers["ETag"] == known:
            return Answer(304, headers=headers)
        return Answer(status, body, headers)

    def _file(self, path: str) -> Path | None:
        """The file behind a path, if it is one that the site shows; never one outside the folder."""
        parts = [part for part in path.split("/") if part]
        if ".." in parts or "\\" in path or "\0" in path or parts == ["_headers"]:
            return None
        file = self.root.joinpath(*parts, *(["index.html"] if path.endswith("/") else []))
        return file if file.is_file() else None

    def _body(self, file: Path, accepted: str) -> tuple[bytes, str]:
        offered = [name for name in self.encodings if name in accepted.replace(" ", "").split(",")]
        for encoding in offered:
            compressed = file.with_name(file.name + ENCODINGS[encoding])
            if compressed.is_file():
                return compressed.read_bytes(), encoding
        return file.read_bytes(), ""

    def _declared_headers(self, path: str) -> dict[str, str]:
        """The headers that `_headers` gives to a path; of several under one name, all hold."""
        headers: dict[str, str] = {}
        matches = False
        rules = self.root / "_headers"
        for line in rules.read_text(encoding="utf-8").splitlines() if rules.is_file() else ():
            if line.startswith("/"):
                matches = fnmatch.fnmatchcase(path, line)
            elif matches and ":" in line:
                name, _, value = line.strip().partition(": ")
                headers[name] = f"{headers[name]}, {value}" if name in headers else value
        return headers

    def _reload(self, path: str) -> Answer:
        if path.endswith(".js"):
            return Answer(200, RELOAD_SCRIPT.encode(), {"Content-Type": TYPES[".js"]})
        return Answer(200, str(self.build).encode(), {"Content-Type": TYPES[".txt"], "Cache-Control": "no-store"})

    @staticmethod
    def _with_reload(page: bytes) -> bytes:
        script = f'<script type="module" src="{RELOAD_PATH}.js"></script></body>'
        return page.replace(b"</body>", script.encode(), 1)


class Handler(BaseHTTPRequestHandler):
    """One request to a `Site`."""

    protocol_version = "HTTP/1.1"
    server: Site

    def do_GET(self) -> None:
        path = urllib.parse.unquote(urllib.parse.urlsplit(self.path).path)
        if self.server.line:
            self.server.line.wait()
        answer = self.server.interfere(path) or self.server.answer(
            path, self.headers.get("Accept-Encoding", ""), self.headers.get("If-None-Match", "")
        )
        request = Request(path, answer.status)
        self.server.requests.append(request)
        self.send_response(answer.status)
        for name, value in answer.headers.items():
            self.send_header(name, value)
        if answer.status != 304:
            self.send_header("Content-Length", str(len(answer.body)))
        self.end_headers()

        def write(piece: bytes) -> None:
            request.sent += len(piece)
            self.wfile.write(piece)

        body = b"" if self.command == "HEAD" else answer.body
        with contextlib.suppress(ConnectionError):  # the reader went on to another page
            if self.server.line:
                self.server.line.send(write, body)
            else:
                for piece in pieces(body):
                    write(piece)

    def do_HEAD(self) -> None:
        self.do_GET()

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002 - the base class's name for it
        """Nothing: `Site.requests` has it all."""


@contextlib.contextmanager
def serving(root: Path, port: int = 0, **how: object) -> Iterator[Site]:
    """A running `Site` on a free port (or the one given), stopped at the end of the block."""
    with running(Site(root, port, **how)) as site:  # type: ignore[arg-type]
        yield site


@contextlib.contextmanager
def running(site: Site) -> Iterator[Site]:
    """A `Site` that answers until the end of the block."""
    thread = threading.Thread(target=site.serve_forever, args=(0.05,), daemon=True)
    thread.start()
    try:
        yield site
    finally:
        site.shutdown()
        thread.join()
        site.server_close()
