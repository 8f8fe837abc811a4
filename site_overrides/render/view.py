"""What the templates are given: a Sheet cut into the parts of a worksheet, as in the page."""

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Any

from markupsafe import Markup

from calc.engine.citing import source_line
from calc.engine.declare import Field, Picture
from calc.engine.read import Problem
from calc.engine.series import Series
from calc.engine.sheet import Sheet
from calc.engine.typed import Input, Typed, typed_digits
from calc.engine.words import LEVEL_WORDS
from calc.sources import SOURCES
from calc.units import NO_BREAK, Quantity, System, grouped
from render.drawings import tank
from render.templating import fill

STATUS_WORDS = {
    "pass": "Holds",
    "tight": "Tight",
    "stop": "Stop",
    "unworkable": "Cannot work",
    "not checked": "Not checked",
}


def section(sheet: Sheet, heading: str, offered: Mapping[str, str]) -> str:
    """The whole worksheet with every field of every case, those of other cases hidden."""
    shown = {one.key for one in sheet.plan.fields}
    fields: dict[str, Field] = {}
    for one in (*sheet.plan.fields, *sheet.worksheet.all_fields()):
        fields.setdefault(one.key, one)
    states = field_states(sheet, {})
    drawn = [_field(sheet, one, states.get(one.key), one.key in shown) for one in _in_form_order(sheet, fields)]
    return str(
        fill(
            "worksheet.html",
            worksheet=sheet.worksheet,
            heading=Markup(heading),  # noqa: S704 - a tag name of our own
            fields=[one for one in drawn if not one["optional"]],
            optional=[one for one in drawn if one["optional"]],
            slots=slots(sheet, offered=offered),
            no_plate=no_plate(sheet),
            has_chart=sheet.worksheet.chart is not None,
            picture=sheet.worksheet.picture,
        )
    )


def _in_form_order(sheet: Sheet, fields: Mapping[str, Field]) -> list[Field]:
    """The fields of the plan in its order, each other case's fields behind the choice they hang on."""
    ordered = [fields[one.key] for one in sheet.plan.fields]
    placed = {one.key for one in ordered}
    for plan in sheet.worksheet.all_plans():
        before: str | None = None
        for one in plan.fields:
            if one.key not in placed:
                at = next((place for place, other in enumerate(ordered) if other.key == before), len(ordered) - 1) + 1
                ordered.insert(at, fields[one.key])
                placed.add(one.key)
            before = one.key
    return ordered


def _field(sheet: Sheet, one: Field, state: Mapping[str, Any] | None, shown: bool) -> dict[str, Any]:
    return {
        "field": one,
        "id": f"{sheet.worksheet.key}-{one.key}",
        "state": state or {"value": "", "unit": _unit_words(one, sheet.system), "note": "", "from": "example"},
        "ticked": state is not None and state["unknown"],
        "units": sheet.system,
        "hidden": not shown,
        "optional": one.optional,
        "unknown": one.typical is not None,
    }


def slots(
    sheet: Sheet, told: Sequence[Problem] | None = None, offered: Mapping[str, str] = MappingProxyType({})
) -> dict[str, str]:
    """The parts that change, as HTML. With problems only those that say so; the page hides the rest.

    `told` are the problems that the reader is to be told about now: all, unless given. `offered` are the results that
    may go into the reader's plan, each "new", "late" or "there".
    """
    told = sheet.problems if told is None else told
    linked = any(one.origin == "link" for one in sheet.inputs.values())
    found = {
        "whose": str(fill("whose.html", sheet=sheet, linked=linked)),
        "plate": str(_plate(sheet, told)),
        "errors": str(fill("errors.html", worksheet=sheet.worksheet.key, problems=told)) if told else "",
    }
    if sheet.problems:
        return found
    found |= {
        "advice": str(fill("advice.html", sheet=sheet, words=LEVEL_WORDS)),
        "results": str(fill("results.html", sheet=sheet, offered=offered)),
        "tables": str(fill("tables.html", sheet=sheet)),
        "working": str(fill("working.html", sheet=sheet)),
        "sources": str(fill("sources.html", sheet=sheet, lines=[source_line(source) for _, source in sheet.sources])),
    }
    if sheet.worksheet.checks:
        found["verdict"] = str(fill("verdict.html", sheet=sheet, words=STATUS_WORDS))
    if sheet.worksheet.picture:
        found["picture"] = str(picture(sheet, sheet.worksheet.picture))
    return found


def _plate(sheet: Sheet, told: Sequence[Problem]) -> Markup:
    """The rating plate: the headline, or that there is none yet."""
    if sheet.problems or sheet.headline is None:
        return _empty_plate(
            sheet, "See what needs changing beside the boxes." if told else "What is in the box cannot be used yet."
        )
    number, unit = _figure(sheet.headline.shown)
    count = len(sheet.assumed)
    flag = f"Rough: {count} {'number is' if count == 1 else 'numbers are'} assumed" if sheet.rough else ""
    return fill("plate.html", label=sheet.headline.label, figure=number, unit=unit, say=sheet.say, flag=flag)


def no_plate(sheet: Sheet) -> Markup:
    """The plate for numbers that no calculator has seen."""
    return _empty_plate(sheet, "The calculator has not worked with these numbers.")


def _empty_plate(sheet: Sheet, say: str) -> Markup:
    key = sheet.worksheet.headline
    result = next(one for one in sheet.worksheet.results if one.key == key)
    label = result.label or next((one.label for one in sheet.plan.steps if one.key == key), "")
    return fill("plate.html", label=label, figure="No result yet", unit="", say=say, flag="")


def _figure(shown: str) -> tuple[str, str]:
    """A number and its unit, apart; words stay whole."""
    number, _, unit = shown.partition(NO_BREAK)
    return (number, unit) if (unit and number[:1].isdigit()) or number[:1] in "−" else (shown, "")


def picture(sheet: Sheet, wanted: Picture) -> Markup:
    """The worksheet's drawing with its caption."""
    drawn = tank.parts(sheet, wanted) if wanted.name == "tank" else {"values": sheet.values}
    drawing = fill(f"drawings/{wanted.name}.svg", **drawn, prefix=sheet.worksheet.key)
    return fill("picture.html", drawing=drawing, caption=wanted.caption)


def field_states(
    sheet: Sheet,
    given: Mapping[str, Typed],
    told: Sequence[Problem] = (),
    about: Mapping[str, Mapping[str, Any]] = MappingProxyType({}),
) -> dict[str, dict[str, Any]]:
    """For each field of the plan: what stands in its box, its unit in words, its note, who gave it, its error.

    `about` says of computed numbers which worksheet gave them and whether they are out of date.
    """
    problems: dict[str, str] = {}
    for problem in told:
        problems.setdefault(problem.key, problem.text)
    states = {}
    for one in sheet.plan.fields:
        found = sheet.inputs.get(one.key)
        typed = given.get(one.key)
        origin = found.origin if found else typed.origin if typed else "typed"
        states[one.key] = {
            "value": box_text(one, found, typed, sheet.system, sheet.reading.refused.get(one.key)),
            "unit": _unit_words(one, sheet.system),
            "note": _note(sheet, found, about.get(one.key)) if found else "",
            "from": origin,
            "error": problems.get(one.key, ""),
            "unknown": origin == "typical",
        }
    return states


def _unit_words(one: Field, system: System) -> str:
    return "" if one.kind == "choice" else one.unit(system).words


def _note(sheet: Sheet, found: Input, about: Mapping[str, Any] | None) -> str:
    """Who gave a value, where it is not the reader."""
    source, same_as = _typical_source(found.field), _same_as(sheet, found)
    is_example = bool(sheet.example)
    told = {"source": source, "same_as": same_as, "about": about}
    return str(fill("note.html", field=found.field, found=found, is_example=is_example, **told))


def box_text(
    field: Field, found: Input | None, typed: Typed | None, system: System, refused: Quantity | None = None
) -> str:
    """The text in a field's box: as typed while the reader stays in the system it was typed in, else converted.

    `refused` is what stands in a text that the field cannot take.
    """
    if found and found.quantity is None:
        return str(found.si)
    as_typed = typed is not None and typed.system == system and (found is None or typed.origin == "typed")
    quantity = found.quantity if found else refused
    if typed is not None and (as_typed or quantity is None):
        return typed.text
    if quantity is None:
        return ""
    return grouped(typed_digits(quantity, field.unit(system)), system).replace("\N{NARROW NO-BREAK SPACE}", " ")


def _same_as(sheet: Sheet, found: Input) -> str:
    return sheet.inputs[found.from_field].field.label if found.from_field in sheet.inputs else ""


def _typical_source(one: Field) -> str:
    return source_line(SOURCES[one.typical.source]) if one.typical else ""


def charts_json(series: Series | None, worksheet: str) -> dict[str, Any] | None:
    """A chart as data for the drawing module, its words included."""
    if series is None:
        return None
    return {
        "title": series.title,
        "x": series.x_label,
        "y": series.y_label,
        "here": series.here_x,
        "lines": [
            {"label": line.label, "role": line.role, "points": [[x, y] for x, y in line.points]}
            for line in series.lines
        ],
        "words": str(fill("chart_words.html", series=series, worksheet=worksheet)),
    }
