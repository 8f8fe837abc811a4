"""The built site holds what a reader may get and nothing else, and points at no other host."""

from __future__ import annotations

import base64
import gzip
import hashlib
import html.parser
import json
import re
from pathlib import Path

import brotli
import pytest

import finishing
import offline
from calc.worksheets import WORKSHEETS
from render.templating import place_of

ALLOWED = [
    # Pages, and what search and other sites read about them.
    r"(404|index|(guides|worksheets|dealers|plan)/[a-z0-9/-]*index|[a-z-]+/index)\.html",
    r"embed/[a-z-]+/index\.html",
    r"search/(search_index|every_page)\.json",
    r"_headers",
    r"sw\.js",
    r"assets/licenses\.txt",
    # The theme's own files, as the theme names them.
    r"assets/javascripts/bundle\.[0-9a-f]{8}\.min\.js",
    r"assets/javascripts/workers/search\.[0-9a-f]{8}\.min\.js",
    r"assets/stylesheets/(classic/)?(main|palette)\.[0-9a-f]{8}\.min\.css",
    r"assets/images/favicon\.(png|svg)",
    # Ours.
    r"assets/css-[0-9a-f]{12}/[a-z-]+\.css",
    r"assets/js-[0-9a-f]{12}/([a-z-]+|part-[A-Z0-9]{8})\.js",
    r"assets/js/(plot\.bundle|worker)\.js",
    r"assets/images/[a-z0-9-]+\.(svg|png)",
    r"assets/data/[a-z0-9.-]+\.(csv|json)",
    r"assets/weather/[a-z-]+\.txt",
    r"assets/stock/[a-z-]+\.json",
    # Python for the page.
    r"assets/python/pyodide-[0-9a-f]{12}/(pyodide\.(mjs|asm\.js|asm\.wasm)|rest\.wasm)",
    r"assets/python/library-[0-9a-f]{12}/python_stdlib\.zip\.pack",
    r"assets/python/snapshot-[0-9a-f]{12}/python\.memory",
    r"assets/python/wheel-[0-9a-f]{12}/(jinja2|markupsafe|segno|stoke_and_store)-[0-9.]+-cp313-none-any\.whl\.pack",
]


class Addresses(html.parser.HTMLParser):
    """Collects what a browser would fetch by itself for a page."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        # Following <a href> is the reader's decision; a canonical or prev/next link is read, not fetched.
        fetched = ["src", "srcset", "data", "poster"]
        if tag == "link" and not {"canonical", "prev", "next"} & set((given.get("rel") or "").split()):
            fetched.append("href")
        if tag in {"image", "use"}:
            fetched += ["href", "xlink:href"]
        self.found += [value for name in fetched if (value := given.get(name))]
        self.found += re.findall(r"url\(([^)]*)\)", given.get("style") or "")


def files(site: Path) -> list[str]:
    return sorted(path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file())


def pages(site: Path) -> list[Path]:
    path = sorted(site.rglob("*.html"))
    assert path
    return path


def test_every_file_is_one_that_is_meant_to_be_published(site: Path) -> None:
    names = files(site)
    originals = [name for name in names if not name.endswith((".gz", ".br"))]
    unexpected = [name for name in originals if not any(re.fullmatch(pattern, name) for pattern in ALLOWED)]
    assert not unexpected
    copies = {name[:-3] for name in names} & set(originals)
    assert len(names) == len(originals) + sum(
        (name + suffix) in names for name in copies for suffix in (".gz", ".br")
    ), "a compressed copy without its original"


def test_the_parts_without_which_nothing_starts_are_there(site: Path) -> None:
    names = "\n".join(files(site))
    for part in (
        "index.html",
        "404.html",
        "_headers",
        "assets/js/worker.js",
        "search/search_index.json",
        "search/every_page.json",
    ):
        assert part in names
    assert names.count("stoke_and_store-") == 1


def test_a_page_that_nobody_searches_fetches_no_index_of_all_pages(site: Path) -> None:
    fetched, later = (
        json.loads((site / "search" / name).read_text(encoding="utf-8"))
        for name in ("search_index.json", "every_page.json")
    )
    assert fetched == {**later, "docs": []}
    assert len(later["docs"]) > 400


def test_what_others_made_stands_with_its_license(site: Path) -> None:
    parts = re.split("={80}\n", (site / "assets/licenses.txt").read_text(encoding="utf-8"))[1:]
    texts = {part.partition("\n")[0].partition(" ")[0]: part for part in parts}
    wheels = {Path(name).name.partition("-")[0] for name in files(site) if name.endswith(".whl.pack")} - {
        "stoke_and_store"
    }
    assert {*wheels, "Pyodide", "Python", "mkdocs-material", "@observablehq/plot", "d3-scale"} <= texts.keys()
    for name, text in texts.items():
        assert re.search(r"licen[sc]e|permission|redistribution", text, re.IGNORECASE), name


def test_compressed_copies_say_what_the_originals_say(site: Path) -> None:
    for name in files(site):
        path = site / name
        if name.endswith(".gz"):
            assert gzip.decompress(path.read_bytes()) == path.with_suffix("").read_bytes(), name
        if name.endswith(".br"):
            assert brotli.decompress(path.read_bytes()) == path.with_suffix("").read_bytes(), name


def test_what_is_kept_for_readers_without_a_line_is_this_very_site(site: Path) -> None:
    text = (site / offline.NAME).read_text(encoding="utf-8")
    listed = json.loads(text.partition("const FILES = ")[2].partition(";\n")[0])
    assert sorted(listed) == offline.kept(site)
    for name in files(site):
        if name.endswith((".html", ".js", ".wasm", ".pack")) and not name.startswith("embed/"):
            assert name in listed or name in ("404.html", offline.NAME), name
    for name in ("index.html", "assets/js/worker.js", "search/every_page.json"):
        digest = hashlib.sha256((site / name).read_bytes()).digest()[:12]
        assert listed[name] == base64.b64encode(digest).decode()


def test_what_a_page_asks_for_as_it_opens_has_another_name_in_a_release_where_it_differs(tmp_path: Path) -> None:
    names = set()
    for text in ("a", "b"):
        site = tmp_path / text
        for name, content in {
            "css/all.css": "c",
            "js/plot.bundle.js": "p",
            "js/worker.js": "w",
            "js/page.js": text,
        }.items():
            (site / "assets" / name).parent.mkdir(parents=True, exist_ok=True)
            (site / "assets" / name).write_text(content, encoding="utf-8")
        named = finishing.name_by_content(site)
        names |= set(named.values())
        kept = {path.name for path in site.glob("assets/js/*")}
        assert kept == {"plot.bundle.js", "worker.js"}
        assert {path.name for path in (site / named["assets/js"]).iterdir()} == {"page.js", "worker.js"}
    assert len(names) == 3  # the styles are the same


def test_every_worksheet_stands_where_its_links_lead(site: Path) -> None:
    for worksheet in WORKSHEETS.values():
        page, _, key = place_of(worksheet).partition("#")
        assert f'id="{key}"' in (site / page / "index.html").read_text(encoding="utf-8"), worksheet.key


def test_no_page_fetches_from_another_host(site: Path) -> None:
    for page in pages(site):
        addresses = Addresses()
        addresses.feed(page.read_text(encoding="utf-8"))
        assert addresses.found
        away = [address for address in addresses.found if re.match(r"(?i)\s*(https?:)?//", address)]
        assert not away, f"{page.relative_to(site)} fetches {away}"


def test_no_style_fetches_from_another_host(site: Path) -> None:
    for style in site.rglob("*.css"):
        text = style.read_text(encoding="utf-8")
        away = re.findall(r"(?:url\(|@import)\s*[\"']?((?:https?:)?//[^\"')]+)", text)
        assert not away, f"{style.relative_to(site)} fetches {away}"


def test_every_page_has_its_policy_before_anything_that_it_governs(site: Path) -> None:
    for page in pages(site):
        text = page.read_text(encoding="utf-8")
        match = re.search(r'<head[^>]*><meta http-equiv="Content-Security-Policy" content="([^"]*)">', text)
        assert match, page
        assert match.group(1) == finishing.policy(text)
        assert "default-src 'none'" in match.group(1)
        assert "unsafe" not in match.group(1)


def test_no_page_has_inline_styles_or_handlers_that_the_policy_would_refuse(site: Path) -> None:
    for page in pages(site):
        text = page.read_text(encoding="utf-8")
        assert not re.search(r"<[^>]*\son[a-z]+=", text), page
        assert not re.search(r"<style\b|<[^>]*\sstyle=", text), page


def test_pages_of_the_same_name_and_content_are_compressed_at_the_same_time(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As an edition's are, where pages differ in their folder alone."""
    monkeypatch.setattr(finishing, "CACHE", tmp_path / "cache")
    pages = [tmp_path / "site" / str(number) / "index.html" for number in range(40)]
    for page in pages:
        page.parent.mkdir(parents=True)
        page.write_text("a page like another " * 100, encoding="utf-8")
    finishing.compress(tmp_path / "site")
    for page in pages:
        assert gzip.decompress(page.with_name("index.html.gz").read_bytes()) == page.read_bytes()
    assert len(list((tmp_path / "cache" / "compressed").iterdir())) == 2


def test_no_page_has_its_neighbours_fetched_ahead(site: Path) -> None:
    """Firefox does that for a page named as the next one, and says that our policy refuses it."""
    for page in pages(site):
        head = page.read_text(encoding="utf-8").partition("</head>")[0]
        assert not re.search(r'<link rel="?(?:next|prev|prefetch|prerender|preload)', head), page


def test_pages_ask_only_for_files_that_are_there(site: Path) -> None:
    for page in pages(site):
        if page.name == "404.html":
            continue  # its addresses start at the site's root, wherever that is
        addresses = Addresses()
        addresses.feed(page.read_text(encoding="utf-8"))
        for address in addresses.found:
            if not address.startswith(("data:", "#")):
                target = page.parent / re.split("[?#]", address)[0]
                assert (target / "index.html").is_file() or target.is_file(), f"{page} asks for {address}"


def test_no_link_needs_its_surroundings_to_say_where_it_goes(site: Path) -> None:
    """Nor is called by a word that search engines take for none; a list of links read aloud is all that some hear."""
    says_nothing = {"click here", "go", "here", "information", "more", "read more", "see more", "start", "this"}
    for path in site.rglob("*.html"):
        for text in re.findall(r"<a\b[^>]*>(.*?)</a>", path.read_text(encoding="utf-8"), re.DOTALL):
            assert " ".join(re.sub("<[^>]*>", " ", text).split()).lower() not in says_nothing, path


def test_desk_and_record_are_found_from_every_page(site: Path) -> None:
    """In the line of ways in below the header, which no width hides."""
    for path in site.rglob("index.html"):
        if "embed" in path.parts:
            continue
        ways = path.read_text(encoding="utf-8").partition('<nav class="ss-ways"')[2].partition("</nav>")[0]
        assert ">Dealer's desk</a>" in ways and ">Record</a>" in ways, path
