"""The templates: from their folder on the desktop, compiled to modules in the page."""

from functools import lru_cache
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, ModuleLoader, StrictUndefined, select_autoescape
from markupsafe import Markup

from calc.engine.worksheet import Worksheet

TEMPLATES = Path(__file__).parent / "templates"
COMPILED = Path(__file__).parent / "compiled"  # in the page's Python: the templates as modules, made with its wheel


@lru_cache(maxsize=1)
def templates() -> Environment:
    """The templates, autoescaped, with an error for every name that is not there."""
    environment = Environment(
        loader=ModuleLoader(COMPILED) if COMPILED.is_dir() else FileSystemLoader(TEMPLATES),
        autoescape=select_autoescape(("html", "svg")),
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )
    environment.globals["place_of"] = place_of
    return environment


def place_of(worksheet: Worksheet) -> str:
    """The address of a worksheet in the site: the first sketch has a page to itself."""
    return f"{'' if worksheet.guide == 'start' else 'guides/'}{worksheet.guide}/#{worksheet.key}"


def fill(name: str, **values: Any) -> Markup:
    """A template filled in; markup, since it escaped what it was given."""
    return Markup(templates().get_template(name).render(**values).strip())  # noqa: S704
