"""Pages that list everything: worksheets, sources, and how the numbers were checked. Nothing is typed by hand."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from calc.engine.citing import source_line
from calc.engine.declare import Step
from calc.law import Law
from calc.sources import SOURCES
from calc.worksheets import WORKSHEETS
from render.templating import fill

KNOWN_WORDS = {
    "read": "the text was read",
    "second-hand": "quoted or coded by others",
    "computed": "worked out with an independent library or from open data",
    "memory": "from memory, not looked up again",
    "common practice": "a custom of the trade; no published source was found",
    "definition": "by definition or by an energy balance",
}
SUBJECTS = {
    "water": "Water and where it boils",
    "store": "The store",
    "house": "The house",
    "emitters": "Baseboards and radiators",
    "floor": "Warm floors",
    "mixing": "Mixing",
    "air": "Ducts and air coils",
    "exchange": "Exchangers and taps",
    "room": "The room with the stove",
    "flue": "The flue",
    "wood": "Wood",
    "fuels": "Fuels and cost",
    "pipes": "Pipes and pumps",
    "gravity": "Circulation without a pump",
    "antifreeze": "Antifreeze",
    "safety": "Safety",
    "climate": "Climate",
    "winter": "A winter, hour by hour",
    "engine_tank": "A store's layers, hour by hour",
    "firing": "Fires and loads",
    "tanks": "Several tanks",
    "slab": "A slab as a store",
    "conduction": "Heat through a floor",
    "warming": "How a room warms",
    "fill_water": "Water and steel",
    "other_heat": "Sun, heat pump and element",
    "dump": "The heat dump",
    "arithmetic": "Sums that several subjects share",
}


@dataclass(frozen=True)
class Compared:
    """One published check as a row: what, where, our number and theirs as text, how far apart, whose, of what kind."""

    subject: str
    topic: str
    where: str
    ours: str
    theirs: str
    apart: str
    allowed: str
    because: str
    source: str
    kind: str


def worksheet_list(places: Mapping[str, str]) -> str:
    """Every worksheet by guide; `places` gives each one's address."""
    guides: dict[str, list[Any]] = {}
    for worksheet in WORKSHEETS.values():
        if worksheet.key in places:
            guides.setdefault(worksheet.guide, []).append((worksheet, places[worksheet.key]))
    return str(fill("pages/worksheets.html", guides=guides))


def house_list(places: Mapping[str, str]) -> str:
    """Houses to look at, each with the address of its sizing record."""
    return str(fill("pages/houses.html", houses=places.items()))


def source_list() -> str:
    """Every source once: what it is used for and how it is known."""
    used: dict[str, set[str]] = {key: set() for key in SOURCES}
    for worksheet in WORKSHEETS.values():
        for key in _sources_of(worksheet):
            used[key].add(worksheet.short.rstrip("."))
    rows = [
        {"line": source_line(source), "known": KNOWN_WORDS[source.known], "used": sorted(used[key])}
        for key, source in sorted(SOURCES.items(), key=lambda item: source_line(item[1]).casefold())
        if used[key]
    ]
    return str(fill("pages/sources.html", rows=rows))


def _sources_of(worksheet: Any) -> set[str]:
    keys = set(worksheet.sources) | {given.source for given in worksheet.givens}
    for step in worksheet.all_steps():
        keys.add(step.source)
        if isinstance(step, Step):
            keys |= {constant.source for constant in step.law.constants.values()}
    keys |= {field.typical.source for field in worksheet.all_fields() if field.typical}
    return keys | {advice.source for advice in worksheet.advice if advice.source}


def evidence(rows: Iterable[Compared], kinds: Iterable[tuple[str, str, int]], laws: Iterable[Law]) -> str:
    """Every published check by subject; `kinds` are the kinds of source, what each means and how many there are."""
    rows, laws = list(rows), list(laws)
    checked = {row.topic for row in rows}
    by_subject: dict[str, list[Compared]] = {}
    for row in rows:
        by_subject.setdefault(SUBJECTS.get(row.subject, row.subject), []).append(row)
    return str(
        fill(
            "pages/evidence.html",
            by_subject=by_subject,
            kinds=list(kinds),
            count=len(rows),
            laws=len(laws),
            topics=len(checked),
        )
    )
