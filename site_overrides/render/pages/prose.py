"""Numbers in guides: a comment says what to compute, and the text between is what it gives.

    <!-- number: stored-heat usable_heat store_top="180 °F" -->287,000 Btu<!-- /number -->
    <!-- number: 180 °F -->180 °F<!-- /number -->
    <!-- number: 20 F° at least -->20 °F<!-- /number -->

A Markdown viewer shows the text; the build puts the freshly computed value there, in both unit systems; a test holds
the text against the value.
"""

import re
import shlex
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from calc.answer import Typed, UnknownWorksheet, answer
from calc.engine.sheet import Sheet
from calc.engine.typed import at_least
from calc.units import (
    KINDS,
    SYSTEMS,
    System,
    Unit,
    UnitError,
    grouped,
    read_quantity,
    round_to,
    shown_unit,
    units_of,
    with_unit,
)
from calc.worksheets import WORKSHEETS

NUMBER = re.compile(r"<!-- number: (?P<what>.+?) -->(?P<text>.*?)<!-- /number -->", re.DOTALL)
# Which kind a plain quantity is taken for when its unit would fit several.
_KINDS_IN_ORDER = ("temperature", "temperature_difference", *KINDS)


@dataclass(frozen=True)
class ProseNumber:
    """A number that stands in a page: what was asked, the text that stands there, and what it comes to."""

    what: str
    text: str
    us: str
    si: str


def numbers(markdown: str) -> Iterator[ProseNumber]:
    """Every number of a page, worked out. ValueError names what cannot be."""
    for comment in NUMBER.finditer(markdown):
        yield ProseNumber(comment["what"], comment["text"], *_both(comment["what"]))


def spans(what: str) -> str:
    """A number as a pair of spans, one for each unit system. ValueError names what cannot be worked out."""
    us, si = _both(what)
    if us == si:
        return f'<span class="ss-number">{us}</span>'
    other = f'<span class="ss-si" data-search-exclude>{si}</span>'
    return f'<span class="ss-number"><span class="ss-us">{us}</span>{other}</span>'


def _both(what: str) -> tuple[str, str]:
    words = shlex.split(what)
    if words[0][:1].isdigit() or words[0][:1] in "-−.":
        return _plain(what)
    shown = []
    for system in SYSTEMS:
        sheet = _sheet(words[0], tuple(words[2:]), system)
        result = next((result.shown for result in sheet.results if result.key == words[1]), None)
        if result is None and words[1] in sheet.inputs:
            result = sheet.inputs[words[1]].shown(system)
        if result is None:
            raise ValueError(f"{words[0]} has no result called {words[1]!r}")
        shown.append(result)
    return shown[0], shown[1]


@cache  # a guide tells many numbers of one house
def _sheet(key: str, named: tuple[str, ...], system: System) -> Sheet:
    given = {}
    for pair in named:
        name, mark, text = pair.partition("=")
        if not mark:
            raise ValueError(f"{pair!r} is not of the form input=value")
        given[name] = Typed(text, "us")
    try:
        sheet = answer(key, _with_example(key, given), system)
    except UnknownWorksheet as unknown:
        raise ValueError(unknown.sentence) from None
    if sheet.problems:
        raise ValueError("; ".join(problem.text for problem in sheet.problems))
    return sheet


def _with_example(key: str, given: dict[str, Typed]) -> dict[str, Typed]:
    """What is not named is the worked example's, so that a page's numbers do not move with a typical value.

    `example="Mill Row"` takes the worksheet's example of that house instead of its first.
    """
    if key not in WORKSHEETS or not given:
        return given
    house = given["example"].text if "example" in given else ""
    examples = [example for example in WORKSHEETS[key].examples if example.name.startswith(house)]
    if not examples:
        raise ValueError(f"{key} has no example called {house!r}")
    example = {name: Typed(text, "us", "example") for name, text in examples[0].given.items()}
    return example | {name: typed for name, typed in given.items() if name != "example"}


def _plain(what: str) -> tuple[str, str]:
    """A quantity in both systems; one to keep "at least" is told in the other unit as worksheets tell it: not below."""
    what, least, _ = what.partition(" at least")
    for kind in _KINDS_IN_ORDER:
        try:
            quantity = read_quantity(what, kind, shown_unit(kind, "us"), "us")
        except (UnitError, KeyError):
            continue
        if not quantity.unit.text or quantity.unit.text not in what.replace("\u00a0", " "):
            continue  # "20 F°" is a difference, "20 °F" a temperature: the unit as printed decides
        other = shown_unit(kind, "si" if quantity.unit in _us_units(kind) else "us")
        digits = round_to(other.from_si(quantity.si), 2 if kind != "temperature" else 3)
        if kind == "temperature":
            digits = f"{other.from_si(quantity.si):.0f}"
        system: System = "si" if other is shown_unit(kind, "si") else "us"
        there = at_least(quantity, other, system) if least else with_unit(grouped(digits, system), other)
        here = with_unit(grouped(quantity.number, "us"), quantity.unit)
        return (here, there) if quantity.unit in _us_units(kind) else (there, here)
    raise ValueError("is no quantity that can be read")


def _us_units(kind: str) -> list[Unit]:
    return [unit for unit in units_of(kind) if unit.text in _US_TEXTS or unit is shown_unit(kind, "us")]


_US_TEXTS = {
    "kBtu/h",
    "kBtu",
    "MMBtu",
    "therm",
    "ft³",
    "cord",
    "gal/h",
    "in",
    "yd",
    "in²",
    "psia",
    "inHg",
    "ton",
    "lb/gal",
    "gal",
    "Btu/lb",
    "MMBtu/ton",
    "MMBtu/cord",
    "Btu/ft³",
    "°F",
    "F°",
    "ft",
    "ft²",
    "lb",
    "Btu",
    "Btu/h",
}
