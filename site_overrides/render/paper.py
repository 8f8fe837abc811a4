"""The record as one document: a summary of two pages to hand over, then the sums and their sources as an appendix."""

import datetime
from collections import Counter
from collections.abc import Mapping
from types import MappingProxyType
from typing import Any, NamedTuple

from markupsafe import Markup

from calc.chosen import Chosen, fields
from calc.engine.citing import MARKS_SAID, marked_line
from calc.engine.declare import Suits, Worksheet
from calc.engine.offering import apart
from calc.engine.plan import Entries, Entry, given_for
from calc.engine.sheet import Sheet, Shown
from calc.engine.typed import GIVERS, Input
from calc.engine.words import LEVEL_WORDS
from calc.guides import GUIDES
from calc.sources import SOURCES
from calc.tables.year import MONTH_NAMES
from calc.units import System
from calc.worksheets import WORKSHEETS
from render import qr, sized, twice
from render.drawings.piping import SYSTEMS, figure
from render.lines import lines
from render.sums import left_alone, sections
from render.templating import fill
from render.urgent import first, urgent
from render.view import STATUS_WORDS

NO_PIPING = "none"
FEW_LACKING = 2  # numbers for which a worksheet that is left out still waits: so few are named beside its part
SITE = "Stoke and Store"  # whose worksheets these are, whatever site shows them


class Choice(NamedTuple):
    """One choice as the record lists it."""

    label: str
    value: str
    origin: str
    check: bool  # nobody gave it: it has to be checked on site
    source: str  # whose usual value it is


class Wanted(NamedTuple):
    """How its reader wants the document: its date, drawing and length, and the address that opens it again."""

    date: str = ""
    version: str = ""
    site: str = SITE
    stock: Mapping[str, str] = MappingProxyType({})  # what is in stock: its name by its key
    piping: str = ""
    reopens: str = ""
    appendix: bool = True
    example_of: str = ""

    def model(self, item: str) -> str:
        """What something from a dealer's stock is called: its name, or its key where another dealer knows the name."""
        return self.stock.get(item, f"{item} in that stock") if item else ""


def document(chosen: Chosen, system: System, wanted: Wanted) -> str:
    """The whole document as HTML."""
    sheets = chosen.sheets
    groups = _choices(chosen.entries, list(sheets.values()), system)
    sources = list(dict.fromkeys(key for sheet in sheets.values() for key, _ in sheet.sources))
    chain = next(taken for taken in chosen.taken if taken.worksheet.checks)
    return str(
        fill(
            "record.html",
            wanted=wanted,
            worksheets_of=SITE,
            date=date(wanted.date),
            first=first(urgent(chosen, system)),
            words=LEVEL_WORDS,
            chain=chain,
            lines=lines(chain.worksheet, chosen.entries, system),
            verdicts=chain.sheet.verdicts if chain.sheet else (),
            statuses=STATUS_WORDS,
            answers=answers(chosen, system),
            groups=groups,
            mostly=_mostly(groups),
            apart=twice.told_apart(chosen, system),
            parts=_parts(chosen, system),
            piping=_piping(sheets, system, wanted.piping),
            sheets=sections(sheets),
            sources=[marked_line(SOURCES[key]) for key in sources],
            source_marks=MARKS_SAID,
            whole=_whole,
            place_of_source={key: number for number, key in enumerate(sources, 1)},
            not_checked=chain.worksheet.not_checked,
            left=[taken for taken in chosen.taken if not (taken.printed and taken.sheet)],
            code=qr.svg(wanted.reopens, "QR code of the address beside it") if wanted.reopens else "",
        )
    )


def _parts(chosen: Chosen, system: System) -> list[tuple[sized.Row, str]]:
    """The list of parts, each with the question of the worksheet that sizes it."""
    texts = {key: entry.text for key, entry in chosen.given.items()}
    rows = sized.listed(chosen.sheets, system, _nearly(chosen), texts)
    return [(row, WORKSHEETS[row.worksheet].question) for row in rows]


def _nearly(chosen: Chosen) -> dict[str, tuple[str, ...]]:
    """Of the worksheets left out those that lack at most a number or two, with their names: best known first."""
    left = [taken for taken in chosen.taken if taken.possible and not taken.printed]
    left.sort(key=lambda taken: -len(given_for(taken.worksheet, chosen.given)))
    return {taken.worksheet.key: taken.lacks for taken in left if len(taken.lacks) <= FEW_LACKING}


def answers(chosen: Chosen, system: System) -> list[Shown]:
    """What each worksheet but the chain answers; what two of them answer alike stands once.

    Where they differ, as two kinds of emitter do, each names its question. What somebody gave stands first: it counts.
    """
    told = {
        (sheet.headline.label, sheet.headline.shown): (_beside_given(sheet.headline, chosen, system), sheet)
        for sheet in chosen.sheets.values()
        if sheet.headline and not sheet.verdicts
    }
    often = Counter(label for label, _ in told)
    return [
        headline._replace(label=f"{headline.label} ({sheet.worksheet.question})")
        if often[headline.label] > 1
        else headline
        for headline, sheet in told.values()
    ]


def _beside_given(headline: Shown, chosen: Chosen, system: System) -> Shown:
    """An answer behind the number that somebody gave in its place, where that is another and counts."""
    entry = chosen.given.get(headline.key)
    raised = headline.key in {raised.field.key for raised in chosen.raised}
    if entry is None or entry.origin not in ("typed", "link") or raised:
        return headline
    value = chosen.given.value(fields()[headline.key][0], entry)
    if value is None or not isinstance(value.si, float) or not isinstance(headline.si, float | int):
        return headline
    if not apart(value.si, headline.si):
        return headline
    return headline._replace(shown=f"{value.shown(system)}, as given; its worksheet finds {headline.shown}")


def _whole(total: str) -> Markup:
    """A sum whose lines end between its numbers and never inside a unit, such as behind the stroke of Btu/h."""
    return Markup(" ").join(
        Markup('<span class="ss-whole">{}</span>').format(word) if "/" in word else word for word in total.split(" ")
    )


def date(iso: str) -> str:
    """A date as people write it on paper; empty for anything else."""
    try:
        day = datetime.date.fromisoformat(iso)
    except ValueError:
        return ""
    return f"{day.day} {MONTH_NAMES[day.month - 1]} {day.year}"


# --- choices


def _choices(entries: Entries, sheets: list[Sheet], system: System) -> list[tuple[str, list[Choice]]]:
    """Every choice that the record rests on, by subject: its value and who gave it."""
    groups: dict[str, list[Choice]] = {}
    seen: dict[str, set[str]] = {}
    places: dict[str, str] = {}
    for worksheet in WORKSHEETS.values():
        for field in worksheet.all_fields():
            places.setdefault(worksheet.plan_key(field.key), worksheet.guide)
    for sheet in sheets:
        for name, given in sheet.inputs.items():
            key, value = sheet.worksheet.plan_key(name), given.shown(system)
            if value in seen.setdefault(key, set()) or left_alone(given):
                continue
            seen[key].add(value)
            label = sheet.worksheet.in_plan(given.field).label
            choice = Choice(label, value, *_origin(given, entries.get(key)), _typical_source(given))
            groups.setdefault(GUIDES[places[key]], []).append(choice)
    return [(name, groups[name]) for name in GUIDES.values() if name in groups]


def _mostly(groups: list[tuple[str, list[Choice]]]) -> str:
    """Who gave most of the choices that need no check, so that it is said once; empty where nobody did."""
    origins = Counter(choice.origin for _, choices in groups for choice in choices if not choice.check)
    return next((origin for origin, times in origins.most_common(1) if 2 * times > origins.total()), "")


def _origin(given: Input, entry: Entry | None) -> tuple[str, bool]:
    """Who gave a value, in words, and whether it has to be checked on site."""
    if given.origin == "computed":
        by = WORKSHEETS[entry.worksheet].question if entry and entry.worksheet else "another worksheet"
        return f"Worked out: {by}", False
    if given.origin == "typical":
        return "Assumed", True
    if given.origin == "example":
        return ("Not chosen" if given.quantity is None else "Of the worked example"), True
    if given.giver:
        return GIVERS[given.giver].capitalize(), False
    return ("From a link" if given.origin == "link" else "Given"), False


def _typical_source(given: Input) -> str:
    return given.field.typical.source if given.field.typical and given.origin == "typical" else ""


# --- the drawing


def _piping(sheets: Mapping[str, Sheet], system: System, wanted: str) -> dict[str, Any] | None:
    """The drawing that the reader chose, or the one that suits the plan, with the sizes of its parts."""
    if wanted == NO_PIPING:
        return None
    key = wanted if wanted in SYSTEMS else suited(sheets)
    known = {item for _, items in SYSTEMS[key].groups for item in items}
    sizes = {part: size for part, size in sized.drawn(sheets, system).items() if part in known}
    unsized = sized.drawable() & known - sizes.keys()
    return {"title": SYSTEMS[key].title, "figure": figure.figure(key, sizes, unsized=unsized)}


def suited(sheets: Mapping[str, Sheet]) -> str:
    """The piping drawing nearest to a plan: one open to the air before all others, then in the worksheets' order."""
    wanted = [
        suits.drawing
        for worksheet in WORKSHEETS.values()
        for suits in worksheet.suits
        if _holds(suits, worksheet, sheets)
    ]
    closed = next(key for key, system in SYSTEMS.items() if not system.vented)
    return min(wanted, key=lambda key: not SYSTEMS[key].vented, default=closed)


def _holds(suits: Suits, worksheet: Worksheet, sheets: Mapping[str, Sheet]) -> bool:
    """Whether a plan is of this kind, by what was given or follows from it: a usual value tells of no plant."""
    if not suits.when:
        return worksheet.key in sheets
    names = suits.condition.names
    asked = [sheet for sheet in sheets.values() if names <= sheet.values.keys() and not _nobody_gave(names, sheet)]
    return any(suits.condition(sheet.values, {}) for sheet in asked)


def _nobody_gave(names: frozenset[str], sheet: Sheet) -> bool:
    return all(name in sheet.inputs and sheet.inputs[name].origin in ("typical", "example") for name in names)
