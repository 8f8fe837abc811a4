"""What the templates are given: a Sheet cut into the parts of a worksheet, as in the page."""

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Any

from markupsafe import Markup

from calc.engine.citing import source_line
from calc.engine.declare import Field, Picture
from calc.engine.read import Problem
from calc.engine.series import Series
from calc.engine.sheet import Sheet, Shown
from calc.engine.typed import Input, Typed, in_its_unit, typed_digits
from calc.engine.words import LEVEL_WORDS, VERDICT
from calc.sources import SOURCES
from calc.units import NO_BREAK, THIN, Quantity, System, grouped
from render import folding, start
from render.drawings import calendar, scaled, shown, tank
from render.templating import fill

# What each drawing of a worksheet is filled with.
PARTS = {
    "tank": tank.parts,
    "calendar": calendar.parts,
    "stove": shown.texts,
    "dump": shown.texts,
    "duct": shown.texts,
    "slab": shown.texts,
    "trench": shown.texts,
    "taps": shown.ways((2, ("plate",)), (136, ("coil",)), (270, ("sidearm",))),
    "rows": shown.ways((4, ("series",)), (204, ("parallel",))),
    "growth": shown.ways((4, ("open",)), (204, ("membrane", "plain"))),
    "sizes": shown.bars,
    "logs": scaled.logs,
    "hottest": scaled.hottest,
    "winters": scaled.winters,
    "ice": scaled.ice,
    "flow": scaled.flow,
    "fill": scaled.fill,
    "months": scaled.months,
}
MOST_RESULTS = 4  # in sight; the others are folded
STATUS_WORDS = {
    "pass": "Holds",
    "tight": "Tight",
    "stop": "Stop",
    "unworkable": "Cannot work",
    "not checked": "Not checked",
}


def slots(
    sheet: Sheet,
    told: Sequence[Problem] | None = None,
    offered: Mapping[str, str] = MappingProxyType({}),
    *,
    elsewhere: bool = False,
    briefly: bool = False,
    bar: str = "",
) -> dict[str, str]:
    """The parts that change, as HTML. With problems only those that say so; the page hides the rest.

    `told` are the problems that the reader is to be told about now: all, unless given. `offered` are the results that
    may go into the reader's plan, each "new", "late" or "there". `elsewhere`: whether the plan holds numbers at all.
    `briefly`: without those that `how` gives. `bar` is the plate, if it is there already.
    """
    told = sheet.problems if told is None else told
    origins = {entry.origin for entry in sheet.inputs.values()}
    filled = {
        "fold": str(folding.line(sheet)),
        "whose": str(fill("whose.html", sheet=sheet, origins=origins, elsewhere=elsewhere)),
        "plate": bar or str(plate(sheet, told, leads=True)),
        "errors": str(fill("errors.html", worksheet=sheet.worksheet.key, problems=told)) if told else "",
    }
    if sheet.problems:
        return filled
    filled |= {
        "advice": str(fill("advice.html", sheet=sheet, words=LEVEL_WORDS)),
        "results": str(fill("results.html", sheet=sheet, offered=offered, **_results(sheet, offered))),
        "tables": str(fill("tables.html", sheet=sheet)),
    }
    if not briefly:
        filled |= how(sheet)
    if sheet.worksheet.outlook:
        filled["sketch"] = str(start.answer_screen(sheet))
    if sheet.worksheet.checks:
        filled["verdict"] = str(fill("verdict.html", sheet=sheet, words=STATUS_WORDS))
    if sheet.worksheet.sweeps:
        filled["sweeps"] = str(fill("sweeps.html", sheet=sheet))
    if sheet.worksheet.picture:
        filled["picture"] = str(picture(sheet, sheet.worksheet.picture))
    return filled


def how(sheet: Sheet) -> dict[str, str]:
    """The parts that are folded away, as HTML: how the results come about. None with problems."""
    if sheet.problems:
        return {}
    return {
        "working": str(fill("working.html", sheet=sheet)),
        "files": str(fill("files.html", worksheet=sheet.worksheet.key, files=files(sheet))),
        "sources": str(fill("sources.html", sheet=sheet, lines=[source_line(source) for _, source in sheet.sources])),
    }


def files(sheet: Sheet) -> list[tuple[str, str]]:
    """What can be saved as a spreadsheet: names and titles of results, parts of a chain, each table, the chart."""
    listed = [("results", "Results"), *([("verdict", "Part by part")] if sheet.verdicts else [])]
    listed += [(f"table-{number}", comparison.title) for number, comparison in enumerate(sheet.tables)]
    return listed + ([("chart", sheet.worksheet.chart.title)] if sheet.worksheet.chart else [])


def _results(sheet: Sheet, offered: Mapping[str, str]) -> dict[str, list[Shown]]:
    """The results in sight and those folded under them: the headline and what the plan can use are never folded."""
    first = {result.key for result in sheet.results if result.key in {sheet.worksheet.headline, *offered}}
    for result in sheet.results[: MOST_RESULTS + 1]:
        if len(first) < MOST_RESULTS:
            first.add(result.key)
    # A fold for one alone would be no shorter, and an outlook is told whole.
    if len(sheet.results) - len(first) < 2 or sheet.worksheet.outlook:
        first = {result.key for result in sheet.results}
    return {
        "shown": [result for result in sheet.results if result.key in first],
        "folded": [result for result in sheet.results if result.key not in first],
    }


def plate(sheet: Sheet, told: Sequence[Problem], *, leads: bool = False) -> Markup:
    """The rating plate: the headline, or that there is none yet; with `leads` it leads to parts of its worksheet."""
    if sheet.problems or sheet.headline is None:
        return empty_plate(
            sheet, "See what needs changing beside the boxes." if told else "What is in the box cannot be used yet."
        )
    number, unit = _figure(sheet.headline.shown)
    judgement = sheet.judgement
    return fill(
        "plate.html",
        label=sheet.headline.label,
        figure=number,
        unit=unit,
        judgement=judgement,
        say=sheet.say,
        example=sheet.example,
        assumed=len(sheet.assumed) if sheet.rough and not sheet.example else 0,
        leads=leads,
        pictured=leads and sheet.worksheet.outlook is not None and not sheet.example,
    )


def no_plate(sheet: Sheet) -> Markup:
    """The plate for numbers that no calculator has seen."""
    return empty_plate(sheet, "The calculator has not worked with these numbers.")


def empty_plate(sheet: Sheet, say: str) -> Markup:
    """The plate without a result, and why there is none."""
    key = VERDICT if sheet.worksheet.outlook else sheet.worksheet.headline
    result = next(result for result in sheet.worksheet.results if result.key == key)
    label = result.label or next((step.label for step in sheet.course.steps if step.key == key), "")
    blank = {"unit": "", "judgement": None, "example": "", "assumed": 0, "leads": False, "pictured": False}
    return fill("plate.html", label=label, figure="No result yet", say=say, **blank)


def _figure(shown: str) -> tuple[str, str]:
    """A number and its unit, apart; words stay whole."""
    number, _, unit = shown.partition(NO_BREAK)
    return (number, unit) if (unit and number[:1].isdigit()) or number[:1] in "−" else (shown, "")


def picture(sheet: Sheet, wanted: Picture) -> Markup:
    """The worksheet's drawing with its caption."""
    drawn = PARTS[wanted.name](sheet, wanted)
    drawing = fill(f"drawings/{wanted.name}.svg", **drawn, prefix=sheet.worksheet.key)
    return fill("picture.html", drawing=drawing, caption=wanted.caption, told=drawn.get("told", ""))


def field_states(
    sheet: Sheet,
    given: Mapping[str, Typed],
    told: Sequence[Problem] = (),
    about: Mapping[str, Mapping[str, Any]] = MappingProxyType({}),
) -> dict[str, dict[str, Any]]:
    """For each field asked: what stands in its box, its unit in words, its note, who gave it, its error.

    `about` says of computed numbers which worksheet gave them and whether they are out of date.
    """
    problems: dict[str, str] = {}
    for problem in told:
        problems.setdefault(problem.key, problem.text)
    states = {}
    hidden = folding.folded(sheet.worksheet, sheet.course)
    for field in sheet.course.fields:
        entry = sheet.inputs.get(field.key)
        typed = given.get(field.key)
        origin = entry.origin if entry else typed.origin if typed else "typed"
        boxed = about.get(field.key, {}).get("over") or entry
        states[field.key] = {
            "value": box_text(field, boxed, typed, sheet.system, sheet.reading.refused.get(field.key)),
            "unit": unit_words(field, sheet.system),
            "measure": measure(field, sheet.system),
            "note": _note(sheet, entry, about.get(field.key)) if entry else "",
            "from": origin,
            "error": problems.get(field.key, ""),
            "unknown": origin == "typical",
            "folded": field.key in hidden,
        }
    return states


def unit_words(field: Field, system: System) -> str:
    return "" if field.kind == "choice" else field.unit(system).words


def measure(field: Field, system: System) -> str:
    """The unit beside a box as it goes into the plan with what is typed there; empty beside a choice."""
    return "" if field.kind == "choice" else field.unit(system).ascii


def _note(sheet: Sheet, entry: Input, about: Mapping[str, Any] | None) -> str:
    """Who gave a value, where it is not the reader."""
    if entry.origin == "typed" and not entry.from_field:
        return ""
    source, same_as = _typical_source(entry.field), _same_as(sheet, entry)
    is_example = bool(sheet.example)
    told = {"source": source, "same_as": same_as, "about": about}
    return str(fill("note.html", field=entry.field, entry=entry, is_example=is_example, **told))


def box_text(
    field: Field, entry: Input | None, typed: Typed | None, system: System, refused: Quantity | None = None
) -> str:
    """The text in a field's box: as typed while the reader stays in the system it was typed in, else converted.

    `refused` is what stands in a text that the field cannot take.
    """
    if entry and entry.quantity is None:
        return str(entry.si)
    as_typed = typed is not None and typed.system == system and (entry is None or typed.origin == "typed")
    quantity = entry.quantity if entry else refused
    if typed is not None and (as_typed or quantity is None):
        return typed.text if field.kind == "choice" else in_its_unit(typed, field.unit(system))
    if quantity is None:
        return ""
    unit = field.unit(system)
    digits = entry.digits(unit) if entry else typed_digits(quantity, unit)
    return grouped(digits, system).replace(THIN, " ")


def _same_as(sheet: Sheet, entry: Input) -> str:
    return sheet.inputs[entry.from_field].field.label if entry.from_field in sheet.inputs else ""


def _typical_source(field: Field) -> str:
    return source_line(SOURCES[field.typical.source]) if field.typical else ""


def charts_json(series: Series | None, worksheet: str, system: System) -> dict[str, Any] | None:
    """A chart as data for the drawing module, its words included."""
    if series is None:
        return None
    return {
        "title": series.title,
        "x": series.x_label,
        "y": series.y_label,
        "here": series.here_x,
        "thousands": "," if system == "us" else THIN,
        "lines": [
            {"label": line.label, "role": line.role, "points": [[x, y] for x, y in line.points]}
            for line in series.lines
        ],
        "words": str(fill("chart_words.html", series=series, worksheet=worksheet)),
    }
