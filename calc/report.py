"""A sheet as plain text, and as strict JSON: what the command line prints."""

from collections.abc import Mapping
from typing import Any

from calc.answer import link_of
from calc.engine import offering, plan
from calc.engine.citing import source_line
from calc.engine.declare import AnyStep, Field, Result, Worksheet
from calc.engine.sheet import Sheet
from calc.engine.typed import Input, bounds
from calc.engine.words import LEVEL_WORDS
from calc.units import System
from calc.vocabulary import BY_KEY
from calc.worksheets import WORKSHEETS

ORIGIN_WORDS = {
    "typed": "given",
    "link": "from the link",
    "computed": "from another worksheet",
    "typical": "assumed",
    "example": "from the worked example",
}


def origin_words(given: Input) -> str:
    """Who gave a value, in words."""
    if given.from_field:
        return "the same unless given"
    return "unless given" if given.origin == "typical" and given.field.optional else ORIGIN_WORDS[given.origin]


def as_json(sheet: Sheet) -> dict[str, Any]:
    """The sheet as data; with problems, only what is wrong."""
    if sheet.problems:
        return {"errors": [{"input": problem.key, "text": problem.text} for problem in sheet.problems]}
    inputs = {
        key: {"si": entry.si, "kind": entry.field.kind, "shown": entry.shown(sheet.system), "from": entry.origin}
        for key, entry in sheet.inputs.items()
    }
    # Who gives a field by its other name finds it by that name as well.
    others = {name: key for name, keys in sheet.worksheet.other_names.items() for key in keys if key in inputs}
    return {
        "worksheet": sheet.worksheet.key,
        "inputs": {name: inputs[key] for name, key in others.items()} | inputs,
        "results": {
            result.key: {"si": result.si, "kind": result.kind, "shown": result.shown} for result in sheet.results
        },
        "headline": sheet.headline.shown if sheet.headline else None,
        "rough": sheet.rough,
        "assumed": list(sheet.assumed),
        "advice": _advice(sheet),
        "notes": list(sheet.notes),
        "verdict": [
            {
                "link": verdict.key,
                "label": verdict.label,
                "status": verdict.status,
                "shown": verdict.number,
                "text": verdict.text,
                "source": verdict.source,
            }
            for verdict in sheet.verdicts
        ],
        "helps_most": sheet.best_change,
        "not_checked": list(sheet.worksheet.not_checked),
        "working": [
            {
                "key": line.key,
                "label": line.label,
                "words": list(line.words),
                "sums": list(line.sums),
                "result": line.result,
                "source": line.source,
            }
            for line in sheet.working
        ],
        "sources": [{"key": key, "text": source_line(source), "known": source.known} for key, source in sheet.sources],
        "link": link_of(sheet),
    }


def _advice(sheet: Sheet) -> list[dict[str, str]]:
    """All that is said beside the numbers: the parts of a chain that do not stand, the advice, what nobody gave."""
    parts = [
        {
            "level": "caution" if verdict.status == "tight" else verdict.status,
            "code": verdict.key,
            "text": verdict.text,
            "source": verdict.source,
        }
        for verdict in sheet.verdicts
        if verdict.status in ("stop", "unworkable", "tight")
    ]
    advice = [
        {
            "level": advice.level,
            "code": advice.code,
            "text": f"{advice.title} {advice.text}".strip(),
            "source": advice.source,
        }
        for advice in sheet.advice
    ]
    rough = [{"level": "note", "code": "rough", "text": _rough(sheet), "source": ""}] if sheet.rough else []
    return parts + advice + rough


def _rough(sheet: Sheet) -> str:
    return (
        f"Nobody gave these numbers. {'; '.join(sheet.assumed)}. "
        "What stands in for them is a usual value or comes from the worked example."
    )


def as_text(sheet: Sheet) -> str:
    """The sheet as text for a terminal."""
    assert sheet.headline is not None
    lines = [sheet.worksheet.question, ""]
    if sheet.example:
        lines += [f"Worked example. {sheet.example}.", ""]
    lines += [f"{sheet.headline.label}: {sheet.headline.shown}" + (" (rough)" if sheet.rough else ""), sheet.say, ""]
    if sheet.rough:
        lines += [f"Rough, because nobody gave: {', '.join(sheet.assumed)}.", ""]
    lines += list(sheet.notes)
    if sheet.band:
        lines += [f"Between {sheet.band.low} and {sheet.band.high}; most depends on: {sheet.band.matters_most}.", ""]
    for advice in sheet.advice:
        lines.append(f"{LEVEL_WORDS[advice.level]}: {advice.title} {advice.text}")
    if sheet.verdicts:
        lines += ["", "Part by part"]
        lines += [
            f"  {verdict.label}: {verdict.status}, {verdict.number}. {verdict.text}" for verdict in sheet.verdicts
        ]
        lines += [f"  What helps most: {sheet.best_change}."] if sheet.best_change else []
        lines += ["  Not checked here: " + "; ".join(sheet.worksheet.not_checked) + "."]
    lines += ["", "Inputs"]
    for given in sheet.inputs.values():
        origin = origin_words(given)
        lines.append(f"  {given.field.label}: {given.shown(sheet.system)} ({origin})  [{given.field.key}]")
    lines += ["", "Results"]
    for result in sheet.results:
        lines.append(f"  {result.label}: {result.shown}  [{result.key}]")
        if result.say:
            lines.append(f"    {result.say}")
    for table in sheet.tables:
        lines += ["", table.title, *("  " + " | ".join(row) for row in (table.heads, *table.rows))]
        if table.say or table.source:
            lines.append(f"  {table.say} {table.source + '.' if table.source else ''}".rstrip())
    lines += ["", "Working"]
    for number, line in enumerate(sheet.working, 1):
        lines.append(f"  {number}. {line.label}")
        lines += [f"     {words}" for words in line.words]
        lines += [f"     {total}" for total in line.sums]
        lines.append(f"     = {line.result}" + (f" = {line.beside}" if line.beside else ""))
    lines += ["", "It leaves out", *(f"  {line}" for line in sheet.worksheet.leaves_out)]
    lines += ["", "Sources", *(f"  {source_line(source)}" for _, source in sheet.sources)]
    lines += ["", f"Link: {link_of(sheet)}"]
    return "\n".join(lines)


def plan_as_json(
    entries: Mapping[str, plan.Entry], sheets: Mapping[str, Sheet], problems: tuple[str, ...]
) -> dict[str, Any]:
    """A whole plan as data: its values, which can be read again as they are, and what the worksheets make of them."""
    values = {}
    for key, entry in entries.items():
        values[key] = {"text": entry.text, "from": entry.origin}
        if entry.worksheet:
            values[key]["by"] = entry.worksheet
    return {
        "plan": values,
        "worksheets": {key: as_json(sheet) for key, sheet in sheets.items()},
        "problems": list(problems),
    }


def plan_as_text(entries: Mapping[str, plan.Entry], sheets: Mapping[str, Sheet], system: System) -> str:
    """A whole plan as text: its values and who gave them, and the headline of every worksheet that knows some."""
    lines = ["Your plan", ""]
    entries = plan.opened(entries)
    stale = offering.stale(entries, WORKSHEETS, BY_KEY)
    for key, known in plan.look(entries, WORKSHEETS.values()).items():
        shown = known.value.shown(system) if known.value else known.entry.text
        who = ORIGIN_WORDS[known.entry.origin] + (f", {known.entry.worksheet}" if known.entry.worksheet else "")
        now = entries.value(known.field, plan.Entry(stale.get(key, ""), "computed"))
        late = f"; out of date, now {now.shown(system) if now else 'without a result'}" if key in stale else ""
        lines.append(f"  {known.field.label}: {shown} ({who}{late})  [{key}]")
    lines += ["", "Worksheets that know some of these numbers"]
    for key, sheet in sheets.items():
        if sheet.problems:
            lines.append(f"  {key:20} {' '.join(problem.text for problem in sheet.problems)}")
        else:
            assert sheet.headline  # only a sheet with problems has none
            rough = " (rough)" if sheet.rough else ""
            lines.append(f"  {key:20} {sheet.headline.label}: {sheet.headline.shown}{rough}")
    return "\n".join(lines)


def describe(worksheet: Worksheet, system: System) -> dict[str, Any]:
    """What a worksheet asks and answers, as data."""
    steps = {step.key: step for step in worksheet.all_steps()}
    kinds = {value.key: value.kind for value in (*worksheet.givens, *worksheet.all_fields(), *steps.values())}
    return {
        "worksheet": worksheet.key,
        "guide": worksheet.guide,
        "question": worksheet.question,
        "inputs": [
            *(_field(field, system) for field in worksheet.all_fields()),
            *(_other_name(worksheet, name, system) for name in worksheet.other_names),
        ],
        "results": [
            {
                "key": result.key,
                "label": _label(result, steps),
                "kind": kinds.get(result.key, "count"),
            }
            for result in worksheet.results
        ],
        "sources": sorted(
            {step.source for step in worksheet.all_steps()}
            | {given.source for given in worksheet.givens}
            | {field.typical.source for field in worksheet.all_fields() if field.typical}
            | set(worksheet.sources)
        ),
    }


def _label(result: Result, steps: Mapping[str, AnyStep]) -> str:
    """A result's label where no reader's numbers are at hand to fill it."""
    if result.label and "{" not in result.label:
        return result.label
    return steps[result.key].label if result.key in steps else result.key


def _other_name(worksheet: Worksheet, name: str, system: System) -> dict[str, Any]:
    """An input that may also be given by this name: of several that it may mean, the case at hand decides."""
    keys = worksheet.other_names[name]
    first = next(field for field in worksheet.all_fields() if field.key == keys[0])
    return _field(first, system) | {"key": name, "other_name_of": list(keys)}


def _field(field: Field, system: System) -> dict[str, Any]:
    told: dict[str, Any] = {"key": field.key, "label": field.label, "kind": field.kind, "hint": field.beside}
    default = field.unless_given or (field.typical.text if field.typical else None)
    told["default"] = default if isinstance(default, str | None) else dict(default)
    if field.same_as:
        told["same_as"] = field.same_as
    if field.kind == "choice":
        told["unit"] = ""
        told["allowed"] = [option.value for option in field.options]
    else:
        unit = field.unit(system)
        told["unit"] = unit.text
        told["allowed"] = list(bounds(field, unit, system))
    return told
