"""MkDocs events: put worksheets, drawings and computed numbers into pages. All logic is in `render` and `calc`."""

import importlib
import json
import pkgutil
import re
import subprocess
import tomllib
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

from markupsafe import escape
from mkdocs.utils import get_relative_url

import calc.physics
import comparisons
import edition
import searched
from calc.answer import answer, chart_of
from calc.engine.plan import Entry
from calc.law import Law
from calc.physics import winter_weather
from calc.units import System
from calc.worksheets import WORKSHEETS
from edition import applied
from edition.declared import SHELVES
from kept import keep, kept, kept_of
from render import record, start
from render.drawings.piping import SYSTEMS, figure
from render.pages import drawn, lists, prose, reference, sections
from render.templating import fill
from render.view import charts_json

WEATHER = Path(__file__).parent.parent / "calc" / "weather"
CHARTS = Path(__file__).parent / "charts"
DRAWINGS = Path(__file__).parent / "render" / "drawings" / "fixed"  # those that no number of the reader changes
WORKSHEET = re.compile(r"(?:<p>)?<!-- worksheet: (?P<key>[^ ]+) -->(?:</p>)?")
DRAWING = re.compile(r"(?:<p>)?<!-- drawing: (?P<name>[a-z0-9-]+) -->(?:</p>)?")
PIPING = re.compile(r"(?:<p>)?<!-- piping: (?P<key>[a-z-]+) -->(?:</p>)?")
DESK = re.compile(r"(?:<p>)?<!-- dealer's desk(?:: (?P<edition>[a-z-]+))? -->(?:</p>)?")
DEMONSTRATION = re.compile(r"<!-- demonstration -->.*?<!-- /demonstration -->", re.DOTALL)
HOUSES = re.compile(r"(?:<p>)?<!-- houses: (?P<edition>[a-z-]+) -->(?:</p>)?")
RECORD = re.compile(r"(?:<p>)?<!-- sizing record -->(?:</p>)?")
LIST = re.compile(r"(?:<p>)?<!-- list: (?P<name>worksheets|sources|evidence|reference) -->(?:</p>)?")
FIRST_QUESTION = re.compile(r"(?:<p>)?<!-- first question -->(?:</p>)?")
YOUR_PLAN = re.compile(r"(?:<p>)?<!-- your plan -->(?:</p>)?")
HEAD_ENDS = re.compile(r"(?=(?:<p>)?<!-- worksheet|<h2)")  # where the first lines of a guide end
CHART = re.compile(r"<!-- chart of (?P<key>[a-z-]+) -->")

PART = re.compile(r"<!-- part (?P<place>\d+) -->.*?<!-- /part -->", re.DOTALL)
STOCK = re.compile(r"<!-- stock of [a-z-]+ -->\n?")

_parts: list[str] = []  # worksheets, drawings, lists: what waits until its page was searched
_stands_in: dict[str, str] = {}  # worksheet to the address of its page
_desks: set[str] = set()  # of our own editions, those whose stock is at some page's desk
_own: edition.Edition | None = None  # the edition that is built; None for the project's own site
OUR_DESK = "quillbrook"  # the invented dealer at the desk of the project's own site


def on_config(config: Any) -> None:
    """What an edition says of the whole site."""
    global _own
    _own = applied.chosen()
    if _own:
        applied.dress(config, _own)


def on_files(files: Any, **_: Any) -> Any:
    """The pages, without those that do not travel with an edition."""
    for path in applied.left_out(_own) if _own else ():
        files.remove(files.get_file_from_path(path))
    return files


def on_pre_build(config: Any) -> None:
    """What stands in a file beside the code is read from there."""
    winter_weather.fetch_with(lambda place: (WEATHER / f"{place}.txt").read_text(encoding="utf-8"))


def on_page_markdown(markdown: str, page: Any, **_: Any) -> str:
    """Numbers in prose: worked out, and shown in both unit systems."""
    if _own:
        if applied.left_out(_own):
            markdown = DEMONSTRATION.sub("", markdown)
        if applied.is_hidden(_own, page.file.src_uri):
            page.meta["search"] = {"exclude": True}

    def number(comment: re.Match[str]) -> str:
        try:
            return kept(prose.spans, comment["what"])
        except ValueError as wrong:
            raise ValueError(f"{page.file.src_uri}: <!-- number: {comment['what']} --> {wrong}") from None

    return prose.NUMBER.sub(number, markdown)


def on_page_content(html: str, page: Any, files: Any, **_: Any) -> str:
    """Worksheets and drawings in place of their comments."""
    told: list[bool] = []  # which of the two fire sides the page has explained
    placed: list[str] = []  # worksheets of the page so far

    def worksheet(comment: re.Match[str]) -> str:
        if comment["key"] not in WORKSHEETS:
            raise ValueError(f"{page.file.src_uri} asks for the worksheet {comment['key']!r}, which does not exist")
        _stands_in[comment["key"]] = page.url
        page.meta["calculates"] = True
        page.present_anchor_ids.add(comment["key"])  # a link to guide.md#worksheet is a good one
        placed.append(comment["key"])
        # Links of a worksheet are those of a page two folders down.
        return _worksheet(comment["key"], closed=len(placed) > 1).replace(
            'href="../../', f'href="{get_relative_url(".", page.url).rstrip("/")}/'
        )

    def drawing(comment: re.Match[str]) -> str:
        if comment["name"] in drawn.BUILT:
            return kept(drawn.BUILT[comment["name"]])
        path = DRAWINGS / f"{comment['name'].replace('-', '_')}.svg"
        if not path.is_file():
            raise ValueError(
                f"{page.file.src_uri} asks for the drawing {escape(comment['name'])}, which does not exist"
            )
        return path.read_text(encoding="utf-8")

    def piping_of(comment: re.Match[str]) -> str:
        if comment["key"] == "symbols":
            return _in_a_fold("What the symbols mean", kept(figure.key_list))
        if comment["key"] not in SYSTEMS:
            raise ValueError(f"{page.file.src_uri} asks for the piping of {comment['key']!r}, which is not described")
        fire_side = SYSTEMS[comment["key"]].vented
        told.append(fire_side)
        shown = kept(figure.figure, comment["key"], fold=fire_side in told[:-1])
        if len(told) == 1:
            return shown
        return _in_a_fold("Show the drawing and its parts", shown)

    def everything(comment: re.Match[str]) -> str:
        return _list(comment["name"], page, files)

    def desk_of(comment: re.Match[str]) -> str:
        addresses = {key: address.partition("#")[0] for key, address in _places(page, files).items()}
        whole = get_relative_url("record/", page.url)
        if _own and not comment["edition"]:
            return sections.desk_page(applied.with_prices(_own), SHELVES, addresses, whole, applied.SHOP)
        shop = comment["edition"] or OUR_DESK
        _desks.add(shop)
        return kept(_desk, shop, addresses, whole)

    def houses_of(comment: re.Match[str]) -> str:
        return kept(_houses, comment["edition"], get_relative_url("record/", page.url))

    if _own and page.file.src_uri.startswith("guides/"):
        told_here = applied.notes(_own, Path(page.file.src_uri).stem)
        html = HEAD_ENDS.sub(lambda _: told_here, html, count=1)
    for comment, made in (
        (FIRST_QUESTION, lambda _: start.first_question(get_relative_url("start/", page.url))),
        (YOUR_PLAN, lambda _: kept(sections.plan_section, _units())),
        (RECORD, lambda _: _record()),
        (DESK, desk_of),
        (HOUSES, houses_of),
        (WORKSHEET, worksheet),
        (DRAWING, drawing),
        (PIPING, piping_of),
        (LIST, everything),
    ):
        html = comment.sub(_waiting(made), html)
    return html


def _waiting(made: Callable[[re.Match[str]], str]) -> Callable[[re.Match[str]], str]:
    """What is made for a comment waits until the page was searched; until then its words stand there."""

    def words(comment: re.Match[str]) -> str:
        _parts.append(made(comment))
        return f"<!-- part {len(_parts) - 1} -->{kept_of(searched.words, _parts[-1])}<!-- /part -->"

    return words


def on_page_context(context: Any, page: Any, **_: Any) -> Any:
    """The search plugin has read the page by now: its parts take the place of their words."""
    page.content = PART.sub(lambda part: _parts[int(part["place"])], page.content)
    return context


def _in_a_fold(summary: str, html: str) -> str:
    """A part of a long page, closed until it is asked for."""
    return f'<details class="ss-more ss-system"><summary>{summary}</summary>{html}</details>'


def _desk(shop: str, addresses: dict[str, str], whole: str) -> str:
    """The desk of one of our own editions."""
    return sections.desk_page(edition.load(shop), SHELVES, addresses, whole, shop)


def _stock(shop: str) -> str:
    return applied.stock_of(edition.load(shop))


def _houses(shop: str, address: str) -> str:
    """The houses of one of our own editions; `address` is that of the record."""
    houses = edition.load(shop).houses
    return lists.house_list({name: address + record.link_of(house) for name, house in houses.items()})


def _our_record(version: str) -> str:
    return sections.record_page("Mill Row", edition.load(OUR_DESK).houses["Mill Row"], version)


def _record() -> str:
    """The page of the sizing record, with that of an invented house in it.

    It is one of the edition's; an edition that shows none has the one with which the guides reckon.
    """
    if not _own:
        return kept(_our_record, _version())
    if _own.houses:
        house, entries = next(iter(_own.houses.items()))
    else:
        example = next(worksheet for worksheet in WORKSHEETS.values() if worksheet.checks).examples[0]
        house = example.name.partition(":")[0]
        entries = {key: Entry(text, "typed") for key, text in example.given.items()}
    more = _own.site_name, applied.SHOP, _own.units
    return kept(sections.record_page, house, entries, _version(), *more, quote="quote" in _own.told)


def _units() -> System:
    """The units in which the site opens."""
    return _own.units if _own else "us"


def _version() -> str:
    """The version of this site."""
    project = Path(__file__).parent.parent / "pyproject.toml"
    return str(tomllib.loads(project.read_text(encoding="utf-8"))["project"]["version"])


def _worksheet(key: str, *, closed: bool = False) -> str:
    """A worksheet with its chart drawn; `closed` until the reader opens it."""

    def chart(comment: re.Match[str]) -> str:
        drawn = _charts(_units())[comment["key"]]
        return (
            f'<div class="ss-chart-wide">{drawn["wide"]}</div><div class="ss-chart-narrow">{drawn["narrow"]}</div>'
            f'<div data-slot="chart-words">{drawn["words"]}</div>'
        )

    html = CHART.sub(chart, kept(sections.worksheet_html, key, _units(), closed=closed))
    html = STOCK.sub(lambda _: applied.stock_slot(_own, key) if _own else "", html)
    return applied.named(html, _own) if _own else html


@cache
def _charts(system: System) -> dict[str, dict[str, str]]:
    charts: dict[str, dict[str, str]] = json.loads(kept(_drawn_charts, system))
    return charts


def _drawn_charts(system: System) -> str:
    """Every worksheet's chart as JSON: `wide`, `narrow` and `words`, all drawn in one run of Node."""
    sheets = {key: answer(key, {}, system) for key in WORKSHEETS}
    wanted = {key: chart for key, sheet in sheets.items() if (chart := charts_json(chart_of(sheet), key, system))}
    done = subprocess.run(
        ["node", str(CHARTS / "draw_all.mjs")], input=json.dumps(wanted), capture_output=True, text=True, check=False
    )
    if done.returncode:
        raise RuntimeError(f"the charts could not be drawn:\n{done.stderr}")
    drawn = json.loads(done.stdout)
    return json.dumps({key: chart | {"words": wanted[key]["words"]} for key, chart in drawn.items()})


def on_post_build(config: Any) -> None:
    """A page for each worksheet by itself, to be put in a frame of another website; and the edition's own files."""
    site = Path(config["site_dir"])
    for shop in _desks:
        applied.write_stock(site, shop, kept(_stock, shop))
    if _own:
        applied.finish(site, _own)
    theme = [path.relative_to(site).as_posix() for path in sorted((site / "assets" / "stylesheets").glob("*.min.css"))]
    whole = {
        "site_name": config["site_name"],
        "favicon": config["theme"]["favicon"],
        "styles": [*theme, *config["extra_css"]],
        "units": _units(),
        "dealer": _own.site_name if _own else "",
    }
    for key, address in _stands_in.items():
        page = kept(_embed, key, f"{address}#{key}", whole)
        place = site / "embed" / key / "index.html"
        place.parent.mkdir(parents=True, exist_ok=True)
        html = WORKSHEET.sub(lambda comment: _worksheet(comment["key"]), page)
        place.write_text(f"{html}\n", encoding="utf-8", newline="\n")
    keep()


def _embed(key: str, guide: str, whole: dict[str, Any]) -> str:
    """The page around a worksheet that stands by itself; `whole` is what is the same for all of them."""
    return str(fill("pages/embed.html", worksheet=WORKSHEETS[key], guide=guide, **whole))


def _list(name: str, page: Any, files: Any) -> str:
    if name == "worksheets":
        return kept(lists.worksheet_list, _places(page, files))
    return kept({"sources": lists.source_list, "reference": reference.reference, "evidence": _evidence}[name])


def _evidence() -> str:
    return lists.evidence([lists.Compared(**row) for row in comparisons.compared()], comparisons.counted(), _laws())


def _places(page: Any, files: Any) -> dict[str, str]:
    """The address of every worksheet that stands in some page, seen from `page`."""
    addresses = {}
    for file in files.documentation_pages():
        for key in re.findall(r"<!-- worksheet: ([a-z-]+) -->", Path(file.abs_src_path).read_text(encoding="utf-8")):
            addresses[key] = f"{get_relative_url(file.url, page.url)}#{key}"
    return addresses


def _laws() -> list[Law]:
    modules = [
        importlib.import_module(f"calc.physics.{module.name}") for module in pkgutil.iter_modules(calc.physics.__path__)
    ]
    return [thing for module in modules for thing in vars(module).values() if isinstance(thing, Law)]
