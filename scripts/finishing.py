"""What is done to the site after MkDocs: leave out what no page uses, write the policies, compress.

Each page carries its own Content-Security-Policy in a meta element, so that the strict policy holds on any host, even
one that lets nobody set headers. What a meta element cannot say is in `_headers`, which several hosts read as it is.
"""

from __future__ import annotations

import base64
import hashlib
import json
import re
import shutil
import tempfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import brotli

import offline as keeping
from runtime import WORKER_POLICY, content_digest, digest_of, gzipped
from toolchain import CACHE

# Source maps, the search's word lists for languages that the site is not in, and lists that nothing here reads.
LEFT_OUT = ("assets/**/*.map", "assets/javascripts/lunr", "sitemap.xml.gz", "tags.json")
KEEPER_POLICY = "default-src 'none'; connect-src 'self'"
FRAMED = "embed"  # the folder of pages that other websites may put in a frame
HEADERS = {
    "Cross-Origin-Opener-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=()",
    "Referrer-Policy": "no-referrer",
    "X-Content-Type-Options": "nosniff",
}
TYPES = {".wasm": "application/wasm", ".mjs": "text/javascript"}  # which not every host knows
# The theme names the neighbours of a page in its head; Firefox fetches the next one at once, which our policy refuses.
FETCHED_AHEAD = re.compile(r'<link rel="(?:prev|next)"[^>]*>\s*')
# What a page asks for as it opens stands in folders with the digest of their content in their name.
NAMED = ("assets/css", "assets/js")
# Asked for by a page that may be open while the host gets another release: what draws charts, and a Python in place of
# one that died. The first Python is asked for with the page.
LATER, BOTH = "assets/js/plot.bundle.js", "assets/js/worker.js"
HASHED = (*(f"{folder}-*/" for folder in NAMED), "assets/javascripts/", "assets/stylesheets/", "assets/python/*/")
# Changed at a release under the same name, so each visit asks whether it has: pages, and what their scripts start from.
SAME_NAME = ("/assets/js/*", "/search/*")
SEARCHED = "every_page.json"
FOR_EVER = "public, max-age=31536000, immutable"

ONCE = (  # what every page that calculates fetches, and keeps
    *("assets/css-*/*", "assets/js*/*", "assets/stylesheets/*", "assets/javascripts/*.js", "assets/images/*"),
    *("assets/python/*.js", "assets/python/pyodide-*/pyodide*", "assets/python/snapshot-*/*"),
)
COMPRESSED = {".css", ".csv", ".html", ".js", ".json", ".mjs", ".svg", ".txt", ".wasm", ".xml"}
SMALLEST = 1024  # below it, a compressed copy saves less than one packet


def finish(site: Path, *, listed: bool = False, offline: bool = True) -> None:
    """Turn what MkDocs and the other makers have put into `site` into what is published.

    The list of pages for search engines stays only where it is `listed` under whole addresses. Not
    `offline`, browsers are told to forget what they kept of it.
    """
    for pattern in (*LEFT_OUT, *(() if listed else ("sitemap.xml",))):
        for path in site.glob(pattern):
            shutil.rmtree(path) if path.is_dir() else path.unlink()
    named = name_by_content(site)
    for page in site.rglob("*.html"):
        text = FETCHED_AHEAD.sub("", page.read_text(encoding="utf-8"))
        for folder, name in named.items():
            text = text.replace(f"{folder}/", f"{name}/")
        page.write_text(with_policy(text), encoding="utf-8", newline="\n")
    keep_search_for_later(site / "search")
    write_headers(site)
    keeping.write(site, keep=offline)
    compress(site)


def name_by_content(site: Path) -> dict[str, str]:
    """Rename the folders of scripts and styles: a browser asks once, and no page gets those of another release."""
    named = {}
    for folder in NAMED:
        files = sorted((site / folder).iterdir())
        named[folder] = f"{folder}-{digest_of(*(path.name + content_digest(path) for path in files))}"
        (site / folder).rename(site / named[folder])
    (site / LATER).parent.mkdir()
    (site / named["assets/js"] / Path(LATER).name).rename(site / LATER)
    shutil.copyfile(site / named["assets/js"] / Path(BOTH).name, site / BOTH)
    return named


def keep_search_for_later(folder: Path) -> None:
    """The theme has every page fetch the index: it gets one that lists no page, and search-worker.js the whole."""
    index = folder / "search_index.json"
    told = json.loads(index.read_text(encoding="utf-8"))
    index.rename(folder / SEARCHED)
    index.write_text(json.dumps({**told, "docs": []}), encoding="utf-8", newline="\n")


def with_policy(page: str) -> str:
    """The page with its Content-Security-Policy as the first thing in its head."""
    meta = f'<meta http-equiv="Content-Security-Policy" content="{policy(page)}">'
    with_meta, count = re.subn(r"(<head\b[^>]*>)", rf"\1{meta}", page, count=1)
    return with_meta if count else page


def policy(page: str) -> str:
    """What a page may load: from its own host alone, and the theme's inline scripts as they stand in this page."""
    hashes = "".join(f" 'sha256-{digest}'" for digest in sorted(set(map(_sha256, inline_scripts(page)))))
    return (
        f"default-src 'none'; script-src 'self'{hashes}; style-src 'self'; img-src 'self' data:; "
        "connect-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'"
    )


def inline_scripts(page: str) -> list[str]:
    """The text of each script that stands in the page itself and that a browser would run."""
    elements = re.findall(r"<script\b([^>]*)>(.*?)</script>", page, re.DOTALL)
    return [text for attributes, text in elements if not re.search(r"\bsrc=|application/(ld\+)?json", attributes)]


def write_headers(site: Path) -> None:
    """Write `_headers`: for each path, the headers that its host should send."""
    rules = {"/*": HEADERS}
    fresh = {"Cache-Control": "no-cache"}
    rules |= dict.fromkeys((f"/{FRAMED}/*", *SAME_NAME), fresh)
    rules |= {path: {"Content-Security-Policy": "frame-ancestors 'none'", **fresh} for path in _page_paths(site)}
    rules |= {path: {"Content-Security-Policy": WORKER_POLICY} for path in _paths(site, "assets/js*/worker.js")}
    for suffix, kind in TYPES.items():
        rules |= {path: {"Content-Type": kind} for path in _paths(site, f"assets/python/pyodide-*/*{suffix}")}
    rules |= {f"/{keeping.NAME}": {"Content-Security-Policy": KEEPER_POLICY, **fresh}}
    rules |= {f"{path}/*": {"Cache-Control": FOR_EVER} for folder in HASHED for path in _paths(site, folder)}
    lines = []
    for path, headers in rules.items():
        lines += [path, *(f"  {name}: {value}" for name, value in headers.items())]
    (site / "_headers").write_text("\n".join(lines) + "\n", encoding="utf-8", newline="\n")


def _paths(site: Path, pattern: str) -> list[str]:
    """What stands in the site under such names, as it is asked for."""
    return sorted(f"/{path.relative_to(site).as_posix()}" for path in site.glob(pattern))


def _page_paths(site: Path) -> list[str]:
    """The addresses of all pages that must not stand in another website's frame."""
    addresses = []
    for page in sorted(site.rglob("*.html")):
        place = page.relative_to(site)
        if place.parts[0] != FRAMED:
            addresses += sorted({f"/{place.as_posix()}", "/" + place.as_posix().removesuffix("index.html")})
    return addresses


def compress(site: Path) -> None:
    """Put a .gz and a .br beside each file that a host would otherwise compress at each request."""
    files = [path for path in site.rglob("*") if path.suffix in COMPRESSED and path.stat().st_size >= SMALLEST]
    with ThreadPoolExecutor() as workers:
        list(workers.map(_compress_file, sorted(files, key=lambda path: -path.stat().st_size)))


def _compress_file(path: Path) -> None:
    content = path.read_bytes()
    for suffix, squeeze in (
        (".gz", lambda: gzipped(content)),
        (".br", lambda: brotli.compress(content, quality=11, lgwin=24)),
    ):
        kept = CACHE / "compressed" / f"{hashlib.sha256(content).hexdigest()[:32]}{suffix}"
        if not kept.is_file():
            kept.parent.mkdir(parents=True, exist_ok=True)
            # A name of its own: two pages with the same content, or two builds, come to this at the same time.
            with tempfile.NamedTemporaryFile(dir=kept.parent, delete=False) as unfinished:
                unfinished.write(squeeze())
            Path(unfinished.name).replace(kept)
        shutil.copyfile(kept, path.with_name(path.name + suffix))


def size(site: Path) -> str:
    """How large the site is, in words."""
    files = [path for path in site.rglob("*") if path.is_file()]
    total = sum(path.stat().st_size for path in files)
    copies = sum(path.stat().st_size for path in files if path.suffix in (".gz", ".br"))
    return f"{len(files)} files, {total / 1e6:.0f} MB, of which {copies / 1e6:.0f} MB are compressed copies"


def fetched(site: Path) -> tuple[int, int]:
    """What a reader's browser fetches at most, in bytes of the most compressed form: once for all pages, and for each.

    Once: scripts, styles, the Python that calculates (by its snapshot, which is more than library and wheels). A page:
    the mean of the guides.
    """
    once = sum(_sent(path) for pattern in ONCE for path in site.glob(pattern) if path.suffix not in (".gz", ".br"))
    guides = [_sent(path) for path in site.glob("guides/*/index.html")]
    return once, sum(guides) // len(guides)


def _sent(path: Path) -> int:
    compressed = path.with_name(f"{path.name}.br")
    return (compressed if compressed.is_file() else path).stat().st_size


def _sha256(text: str) -> str:
    return base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
