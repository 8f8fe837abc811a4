"""Puts an edition into the site that MkDocs builds: its name, looks, menu, prices and notes."""

import json
import os
import shutil
from pathlib import Path
from typing import Any

from markupsafe import escape
from pathspec.gitignore import GitIgnoreSpec

from calc.answer import answer
from calc.engine.plan import Entries
from calc.engine.typed import Reader
from edition import Edition, Stock, looks, read
from edition.declared import inputs
from edition.offered import offered, place_label
from render import stock
from render.templating import fill

SURROUNDINGS = "SITE_EDITION"  # the environment's word for an edition's folder: scripts/build --edition
DEMONSTRATIONS = ("dealers/si-desk.md", "dealers/editions.md")  # pages about the invented dealers, and about editions
STYLE = "assets/css/edition.css"
NOTES_STAND_IN = "law"
PRICES_STAND_IN = "cost"
SHOP = "own"  # the stock of the edition that is built, as its pages call it


def chosen() -> Edition | None:
    """The edition that is being built; None for the project's own site."""
    folder = os.environ.get(SURROUNDINGS)
    return read(Path(folder)) if folder else None


def dress(config: Any, own: Edition) -> None:
    """Set in MkDocs' configuration what an edition says of the whole site."""
    config.site_name = escape(own.site_name)  # the theme takes it for markup
    config.extra["units"] = own.units
    config.nav = _menu(config.nav, {*_hidden(own), *left_out(own)})
    config.not_in_nav = GitIgnoreSpec.from_lines([f"/{path}" for path in _hidden(own)])
    colours = own.told.get("colours", {})
    if colours:
        config.extra_css.append(STYLE)
        config.extra["bar"] = colours.get("bar")
    if own.logo:
        config.extra["logo"] = _logo(own.logo)
        config.theme["favicon"] = _logo(own.logo)


def stock_slot(own: Edition, worksheet: str) -> str:
    """The place in a worksheet for what the stock has for it; nothing where that is nothing."""
    sheet = answer(worksheet, {}, own.units)
    html = stock.section(offered(own), sheet, Entries({}, Reader()), ready=False)
    place = f'<div class="ss-stock" data-slot="stock" data-stock="{SHOP}" data-search-exclude>{html}</div>'
    return place if html else ""


def stock_of(own: Edition) -> str:
    """What the page's Python takes of an edition, as it is published."""
    return json.dumps(offered(own), ensure_ascii=False)


def write_stock(site: Path, shop: str, stock: str) -> None:
    """Write what the page's Python takes of an edition."""
    path = site / "assets" / "stock" / f"{shop}.json"
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(stock, encoding="utf-8", newline="\n")


def finish(site: Path, own: Edition) -> None:
    """Write the files that are the edition's own."""
    write_stock(site, SHOP, stock_of(own))
    if own.told.get("colours"):
        (site / STYLE).write_text(looks.style(own.told["colours"]), encoding="utf-8", newline="\n")
    if own.logo:
        shutil.copyfile(own.logo, site / _logo(own.logo))


def _logo(path: Path) -> str:
    return f"assets/images/logo{path.suffix}"


def _hidden(own: Edition) -> list[str]:
    return [f"guides/{name}.md" for name in own.told.get("hidden_guides", [])]


def is_hidden(own: Edition, path: str) -> bool:
    """Whether the menu and the search leave this page out; links to it go on working."""
    return path in _hidden(own)


def left_out(own: Edition) -> tuple[str, ...]:
    """The pages that do not travel with an edition unless it asks for them."""
    return () if own.told.get("demonstrations") else DEMONSTRATIONS


def _menu(lines: list[Any], without: set[str]) -> list[Any]:
    """The menu without some pages, and without a heading under which none is left."""
    kept: list[Any] = []
    for line in lines:
        ((title, target),) = line.items()
        if isinstance(target, list):
            below = _menu(target, without)
            kept += [{title: below}] if below else []
        elif target not in without:
            kept.append({title: target})
    return kept


def with_prices(own: Edition) -> Edition:
    """The edition as the desk takes it: a place fills in the fuel prices, too."""
    places = tuple(Stock(place.name, {**own.prices, **place.fills}) for place in own.places)
    return Edition(**{**vars(own), "places": places})


def notes(own: Edition, guide: str) -> str:
    """What stands at the head of a guide: notes about local rules, and the prices where money is counted."""
    told = [note for note in own.told.get("notes", []) if note.get("guide", NOTES_STAND_IN) == guide]
    priced = own.prices if guide == PRICES_STAND_IN else {}
    if not told and not priced:
        return ""
    prices = own.told.get("prices", {})
    return str(
        fill(
            "pages/notes.html",
            dealer=own.name,
            notes=told,
            prices=[(inputs()[key][0].label, text) for key, text in priced.items()],
            date=prices.get("date"),
            says=prices.get("says", ""),
            choose=place_label(own),
        )
    )


def named(html: str, own: Edition) -> str:
    """A worksheet whose text for other websites names the edition's site."""
    return html.replace("The guide to it, at Stoke and Store", f"The guide to it, at {escape(escape(own.site_name))}")
