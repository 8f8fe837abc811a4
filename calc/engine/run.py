"""A declaration and the values read for it become a Sheet: results, advice, working, tables, band, sources."""

from collections.abc import Sequence
from functools import cache

from calc.engine.band import band
from calc.engine.citing import sources
from calc.engine.conditions import Condition, condition
from calc.engine.judging import as_headline, judge, judge_chain, judge_outlook, outlook_headline
from calc.engine.outlook import best_change, told
from calc.engine.read import Reading
from calc.engine.refusal import refused
from calc.engine.sentences import placeholders
from calc.engine.sheet import Said, Sheet, Table, Verdict
from calc.engine.standing import careful, foreign, inputs_behind, not_said, standing
from calc.engine.steps import AnyStep
from calc.engine.texts import Texts, listed
from calc.engine.typed import Input, typed_digits
from calc.engine.values import (
    NOTHING,
    TakenOver,
    Values,
    applies,
    at_best,
    chain,
    changed,
    settle,
    work_out,
    zeroed,
)
from calc.engine.words import ATTENTION, VERDICT, Check, Comparison, Methods, Variant
from calc.engine.working import Value, WorkingLine, working
from calc.engine.worksheet import Worksheet
from calc.law import OutOfRange
from calc.sources import SOURCES
from calc.units import System

GRAVEST = 4  # weight of a caution that is a stop as soon as somebody gives the numbers on which it rests


def run(worksheet: Worksheet, reading: Reading, system: System, taken: TakenOver = NOTHING) -> Sheet:
    """Work out a worksheet for what was read; `taken` are the values of steps that another worksheet has worked out."""
    sheet = Sheet(worksheet, system, reading, {})
    if reading.problems:
        return sheet
    try:
        worked = work_out(worksheet, reading, taken)
    except OutOfRange as wrong:
        return refused(sheet, wrong)
    values = settle(worksheet, worked)
    text = Texts(worksheet, reading, values, system)
    best = at_best(reading, worked)
    advice = tuple(_advice(worksheet, reading, values, text, best))
    change = best_change(worksheet, reading, worked, values, best, taken) if worksheet.changes else None
    outlook = told(worksheet, values, advice, change, text)
    verdicts = tuple(_verdict(check, reading, values, text, best, taken) for check in chain(worksheet, values))
    if verdicts:  # a part that nobody can judge yet needs attention, too
        values[ATTENTION] = float(sum(verdict.status != "pass" for verdict in verdicts))
    headline = text.result(text.results[worksheet.headline])
    if VERDICT in outlook:
        judgement = judge_outlook(outlook[VERDICT])
        headline = outlook_headline(judgement, outlook[VERDICT])
    else:
        judgement = judge_chain(verdicts) if verdicts else judge(advice, text.fill(worksheet.verdict))
    return Sheet(
        worksheet=worksheet,
        system=system,
        reading=reading,
        values=values,
        results=tuple(
            outlook.get(result.key) or text.result(result)
            for result in worksheet.results
            if result.key in outlook or (listed(result, values) and result.key in values)
        ),
        headline=as_headline(judgement, headline) if worksheet.headline == ATTENTION else headline,
        judgement=judgement,
        say=text.fill(
            worksheet.say_none if values[worksheet.headline] is None and worksheet.say_none else worksheet.say
        ),
        meaning=tuple(text.fill(sentence) for sentence in worksheet.meaning),
        advice=advice,
        work_through=cache(lambda: _working(reading, values, worksheet, system, taken)),
        tabulate=cache(lambda: tuple(_table(table, worksheet, reading, worked, text) for table in worksheet.tables)),
        verdicts=verdicts,
        best_change=text.fill(change[0].label, change[1]) if change else "",
        try_ends=cache(lambda: band(worksheet, reading, worked, text)),
        assumed=tuple(
            entry.field.label
            for entry in reading.inputs.values()
            if entry.origin in ("typical", "example") and not entry.field.optional
        ),
        sources=sources(worksheet, reading, advice),
        notes=_notes(worksheet, reading, system),
    )


def _notes(worksheet: Worksheet, reading: Reading, system: System) -> tuple[str, ...]:
    """What could be meant otherwise, what is not used with the choices made, and what stands on the careful side."""
    labels = {field.key: field.label for field in worksheet.all_fields()}
    asked = [
        f"{entry.field.label}: “{entry.text.strip()}” is taken as {entry.quantity.taken_as}. Is that what you mean?"
        for entry in reading.inputs.values()
        if entry.quantity and entry.quantity.taken_as and entry.origin in ("typed", "link") and not entry.from_field
    ]
    unused = [f"{labels[key]} is not used with the choices made here." for key in reading.unused]
    warned = [
        f"{entry.field.label}: nobody gave it, so {entry.shown(system)} stands in, the side that warns."
        for entry in careful(reading.inputs.values())
    ]
    points = [
        f"{entry.field.label}: the nearest in its list is {entry.nearest}."
        for entry in reading.inputs.values()
        if entry.nearest
    ]
    return (*points, *asked, *unused, *warned)


def _rests_on(reading: Reading, that: Condition, stays: str, values: Values, best: Values | None) -> str:
    """What a danger that holds asks for, if it holds only because of numbers that nobody gave; else nothing."""
    origins = {key: entry.origin for key, entry in reading.inputs.items()}
    if best is None or that(best, origins) or (stays and condition(stays)(values, origins)):
        return ""
    return _asking("numbers that nobody gave", careful(inputs_behind(reading, that.names, NOTHING)))


def _foreign(reading: Reading, that: Condition) -> str:
    """What a failure asks for, if it rests on numbers of the worked example's house beside those of another."""
    behind = [] if reading.example else foreign(inputs_behind(reading, that.names, NOTHING))
    numbers = [entry for entry in behind if entry.quantity]
    return _asking("the worked example", numbers) if numbers else ""


def _asking(grounds: str, missing: list[Input]) -> str:
    labels = " and ".join(f"“{entry.field.label}”" for entry in missing)
    return f" This rests on {grounds}: type {labels}."


def _advice(worksheet: Worksheet, reading: Reading, values: Values, text: Texts, best: Values | None) -> list[Said]:
    """Every stop, unworkable and caution that holds, in that order, then the first two notes."""
    origins = {key: entry.origin for key, entry in reading.inputs.items()}
    held = [advice for advice in worksheet.advice if applies(advice, values) and advice.condition(values, origins)]
    said = []
    for advice in held:
        asks = ""
        if advice.level == "stop":
            asks = _rests_on(reading, advice.condition, advice.stays, values, best)
        elif advice.level == "unworkable":
            asks = _foreign(reading, advice.condition)
        level, weight = ("caution", GRAVEST) if asks else (advice.level, advice.weight)
        title, say = text.fill(advice.title), text.fill(advice.say) + asks
        said.append(Said(level, advice.code, title, say, advice.source, weight, advice.beside, advice.cause))
    limits = (("stop", None), ("unworkable", None), ("caution", None), ("note", 2))
    told = [sentence for level, most in limits for sentence in [each for each in said if each.level == level][:most]]
    return [sentence for number, sentence in enumerate(told) if not _told_before(sentence.cause, told[:number])]


def _told_before(cause: str, graver: Sequence[Said]) -> bool:
    return cause != "" and any(sentence.cause == cause for sentence in graver)


def _verdict(
    check: Check, reading: Reading, values: Values, text: "Texts", best: Values | None, taken: TakenOver
) -> Verdict:
    stands = standing(check, reading, values, best, taken)
    said = "" if stands.foreign else text.fill(check.say)
    asks = f"Not known yet, because {not_said(stands.unsaid)}." if stands.unsaid else ""
    return Verdict(
        check.key,
        check.label,
        stands.status,
        "–" if stands.foreign or values.get(check.number) is None else text.value(check.number),
        f"{said} {asks}".strip(),
        check.source,
        stands.unsaid,
    )


def _working(
    reading: Reading,
    values: Values,
    worksheet: Worksheet,
    system: System,
    taken: TakenOver,
) -> tuple[WorkingLine, ...]:
    shown: dict[str, Value] = {}
    for key, entry in reading.inputs.items():
        if entry.quantity is not None:
            unit = entry.field.unit(system)
            exact = entry.quantity.unit == unit
            shown[key] = Value(entry.quantity.si, unit, typed_digits(entry.quantity, unit) if exact else "")
    for given in worksheet.givens:
        shown[given.key] = Value(given.value, given.unit(system))
    nothing = zeroed(worksheet, values)
    for step in reading.course.steps:
        value = values[step.key]
        if isinstance(value, float | int) and step.key not in nothing:
            shown[step.key] = Value(float(value), step.unit(system))
    return working(_own_steps(worksheet, reading, taken), shown, system)


def _own_steps(worksheet: Worksheet, reading: Reading, taken: TakenOver) -> tuple[AnyStep, ...]:
    """The steps that are taken here: without those of other worksheets, and without what only these would need."""
    if not taken:
        return reading.course.steps
    told = [
        [*placeholders(check.say), check.number, *check.conditions[0].names]
        for check in worksheet.checks
        if check.fails
    ]
    needed = {result.key for result in worksheet.results}.union(*told)
    own: list[AnyStep] = []
    for step in reversed(reading.course.steps):
        if step.key in needed and step.key not in taken:
            needed.update(step.needs)
            own.append(step)
    return tuple(reversed(own))


def _stands(row: Variant, reading: Reading) -> bool:
    """Whether a row changes choices alone, and to what they are already."""
    chosen = {key: entry.si for key, entry in reading.inputs.items() if entry.field.kind == "choice"}
    return bool(row.changes) and all(chosen.get(key) == to for key, to in row.changes.items())


def _table(table: Comparison | Methods, worksheet: Worksheet, reading: Reading, worked: Values, text: Texts) -> Table:
    values = text.values
    if isinstance(table, Methods):
        rules: list[tuple[str, ...]] = []
        for key in table.show:
            if key not in values:
                continue
            step = text.steps[key]
            rules.append((step.label, text.value(key), SOURCES[step.source].brief))
        return Table(table.title, ("Method", "Result", "Whose rule"), tuple(rules), text.fill(table.say))
    shown = [key for key in table.show if key in values]
    heads = (
        "",
        *(text.result(text.results[key]).label if key in text.results else text.steps[key].label for key in shown),
    )
    rows: list[tuple[str, ...]] = []
    for row in table.rows:
        if not values.keys() >= set(placeholders(row.label)) or _stands(row, reading):
            continue
        other = changed(worksheet, reading, worked, row)
        rows.append(
            (
                text.fill(row.label, other),
                *("cannot be worked out" if other is None else text.value(key, other.get(key), True) for key in shown),
            )
        )
    whose = SOURCES[table.source].brief if table.source else ""
    return Table(table.title, heads, tuple(rows), text.fill(table.say), whose)
