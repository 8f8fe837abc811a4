"""What holds for one kind of word alone, beside what each of them uses."""

from collections.abc import Callable, Mapping
from typing import Any

from calc.checking.checked import Checked, OneCase, known, must, once
from calc.checking.reasoning import can_hold
from calc.engine.fields import Field, Given, quantity
from calc.engine.recorded import OnlyWith
from calc.engine.sentences import placeholders
from calc.engine.steps import AnyStep, Cases, Pick, Step
from calc.engine.uses import texts_of
from calc.engine.words import (
    DRAWINGS,
    LEVEL_WORDS,
    ROLES,
    Advice,
    Chart,
    Check,
    Comparison,
    Example,
    Line,
    Methods,
    Must,
    Next,
    Outlook,
    Picture,
    Result,
    Spread,
    Sweep,
    Trace,
    Track,
    Variant,
)
from calc.engine.worksheet import Worksheet
from calc.guides import GUIDES

Said = list[OneCase]


def _field(checked: Checked, field: Field) -> None:
    must((field.kind == "choice") == bool(field.options), "a choice, and only a choice, has options")
    once((option.value for option in field.options), "option")
    once((option.label for option in field.options), "label")
    if field.kind != "choice":
        must(field.low and field.high, "both ends of the accepted range are needed")
        must(field.low_si < field.high_si, f"the range from {field.low} to {field.high} is empty")
        _uncertainty(field)
    must(not field.too_low or field.kind != "choice", "a choice is never too low")
    must(field.kind == "fraction" or not field.dry_basis, "only a fraction can be of a dry basis")
    must(field.kind == "fraction" or not field.small_shares, "only a fraction can be a small share")
    for text in (field.unless_given, *(text for part in _typical_parts(field) for text in texts_of(part))):
        field.check_value(text)
    _typical(checked, field)
    if field.same_as:
        must(field.same_as != field.key, "it cannot be the same as itself")
        others = {origin.kind for origin in checked.fields[field.same_as]}
        must(field.kind in others, f"{field.same_as} is {' or '.join(others)}, not {field.kind}")
    examples = [example.given[field.key] for example in checked.worksheet.examples if field.key in example.given]
    must(
        field.typical or field.optional or any(field.accepts(text) for text in examples),
        f"{field.key} has no typical value and stands in no example",
    )


def _uncertainty(field: Field) -> None:
    if field.uncertainty.endswith("%"):
        quantity(field.uncertainty, "fraction")
    elif field.uncertainty:
        quantity(field.uncertainty, "temperature_difference" if field.kind == "temperature" else field.kind)


def _typical_parts(field: Field) -> tuple[str | Mapping[str, str], ...]:
    return (field.typical.text, field.typical.low, field.typical.high) if field.typical else ()


def _typical(checked: Checked, field: Field) -> None:
    typical = field.typical
    if typical is None:
        return
    must(bool(typical.low) == bool(typical.high), "a usual band has two ends")
    if typical.on:
        options = checked.options(typical.on)
        must(options, f"its typical value hangs on {typical.on}, which is no choice")
    hung = [part for part in _typical_parts(field) if not isinstance(part, str)]
    must(bool(hung) == bool(typical.on), "a typical value hangs on a choice just where its texts are by option")
    for part in hung:
        _by_option(part, options, f"of {typical.on} for the typical value")
    if field.kind != "choice" and typical.low:
        for option in hung[0] if hung else ("",):
            low, text, high = (
                quantity(part if isinstance(part, str) else part[option], field.kind)
                for part in (typical.low, typical.text, typical.high)
            )
            must(
                low <= text <= high, f"its typical value lies outside its usual band{' of ' if option else ''}{option}"
            )


def _by_option(values: Mapping[str, str], options: set[str], what: str) -> None:
    for value in values:
        known(value, options, f"option {what}")
    lacking = sorted(options - values.keys())
    must(not lacking, f"no text for the option {' or '.join(lacking)} {what}")


def _given(checked: Checked, given: Given) -> None:
    must(given.key not in checked.fields, f"{given.key} is both a field and a given")


def _cases(checked: Checked, branch: Cases) -> None:
    options = checked.options(branch.on)
    must(options, f"{branch.on} is no choice")
    # Shared cases may know more ways than this worksheet offers; a way that has none is a slip in its name.
    for option in sorted(options):
        known(option, branch.cases, f"case of {branch.on}")


def _step(checked: Checked, step: Step) -> None:
    for name in sorted(step.surplus):
        must(name in step.law.parameters, f"{step.law.name} takes {', '.join(step.law.parameters)}, not {name}")
    for name in step.needs:
        known(name, checked.names, "field, given or step")


def _pick(checked: Checked, pick: Pick) -> None:
    options = checked.options(pick.on)
    must(options, f"{pick.on} is no choice")
    for value in pick.values:
        known(value, options, f"option of {pick.on}")


def _only_with(checked: Checked, only: OnlyWith) -> None:
    for value in only.values:
        known(value, [option.value for option in only.choice.options], f"option of {only.choice.key}")


SHAPE: Mapping[type, Callable[[Checked, Any], None]] = {
    Field: _field,
    Given: _given,
    Cases: _cases,
    Step: _step,
    Pick: _pick,
    OnlyWith: _only_with,
}


def _field_in_cases(checked: Checked, field: Field, said: Said) -> None:
    for case in checked.having(field) if field.same_as else ():
        must(field.same_as in case.kinds, f"it is the same as {field.same_as}, which is not there{case.words}")
        others = [asked for asked in case.course.fields if asked.key == field.same_as]
        must(others, f"it is the same as {field.same_as}, which is no field{case.words}")
        must(not others[0].same_as, f"it is the same as {field.same_as}, which is itself the same as another")


def _step_in_cases(checked: Checked, step: AnyStep, said: Said) -> None:
    for case in checked.having(step):
        if isinstance(step, Step):
            for name, source in step.binding.items():
                wanted, kinds = step.law.parameters[name].kind, case.kinds[source]
                must(kinds == wanted, f"it binds {name} ({wanted}) to {source} ({kinds})")
        else:
            made = case.choices.get(step.on)
            for option in [made] if made else sorted(checked.options(step.on)):
                must(option in step.values, f"it has no value for the option {option} of {step.on}")


def _result(checked: Checked, result: Result, said: Said) -> None:
    must(1 <= result.figures <= 12, "its figures are not between 1 and 12")
    must(result.missing, "it needs a word for when it does not exist")
    _asks_nobody(result.taken_when, "whether a result is taken")
    must(bool(result.taken_when) == bool(result.else_why), "it says when it is taken or why it is not, and not both")
    for case in said:
        listed = [result for result in checked.worksheet.results if _is_listed(result, case)]
        once((entry.key for entry in listed), "result")


def _is_listed(result: Result, case: OneCase) -> bool:
    there = result.only is None or case.choices.get(result.only[0], result.only[1]) == result.only[1]
    return there and result.key in case.kinds


def _advice(checked: Checked, advice: Advice, said: Said) -> None:
    known(advice.level, LEVEL_WORDS, "level")
    if advice.zeroes:
        _asks_nobody(advice.when, "what sets a result to nothing")
    for case in said:
        for key in advice.zeroes:
            must(key in case.kinds, f"it sets {key} to nothing, which has no value{case.words}")


def _asks_nobody(text: str, what: str) -> None:
    for ask in ("assumed(", "given("):
        must(ask not in text, f"{what} cannot depend on who gave a number: {ask})")


def _check(checked: Checked, check: Check, said: Said) -> None:
    must(check.level in ("stop", "unworkable"), f"a check fails as stop or as unworkable, not as {check.level!r}")
    for text in (check.fails, check.tight, check.only):
        _asks_nobody(text, "a check")
    must(bool(check.fails) == bool(check.tight), "it says when it fails or when it is tight, and not both")


def _outlook(checked: Checked, outlook: Outlook, said: Said) -> None:
    advised = {advice.code: advice for advice in checked.worksheet.advice if advice.level != "note"}
    for code, why in outlook.because.items():
        known(code, advised, "code of advice but notes")
        condition = advised[code].condition
        for case in said:
            if case.kinds.keys() >= condition.names and can_hold(condition, case.choices, case.there):
                for key in placeholders(why):
                    must(key in case.kinds, f"{key!r} has no value{case.words}, and {why!r} names it")
    lacking = sorted(advised.keys() - outlook.because.keys())
    must(not lacking, f"no reason stands for {', '.join(lacking)}")


def _must(checked: Checked, rule: Must, said: Said) -> None:
    must(not rule.condition.asked, "what the fields must satisfy asks of no number whether it is there")
    for key in sorted(rule.condition.names):
        there = key in checked.fields or key in checked.givens
        must(there, f"{key} is a step, and only fields and givens are known when this is asked")
    for case in said:
        must(rule.field in case.kinds, f"the field {rule.field} is not asked{case.words}")


def _picture(checked: Checked, picture: Picture, said: Said) -> None:
    known(picture.name, DRAWINGS, "drawing")
    parts = DRAWINGS[picture.name]
    for part in picture.values:
        known(part, parts, f"part of the drawing {picture.name}")
    for part, kind in parts.items():
        must(part in picture.values, f"nothing stands for the part {part} of the drawing {picture.name}")
        for case in said:
            name = picture.values[part]
            there = case.kinds.get(name)
            if kind.endswith("?") and (there is None or kind == "?"):
                continue
            wants = kind.removesuffix("?")
            must(there == wants, f"{name} is no {wants}{case.words}, and stands for {part}")


def _chart(checked: Checked, chart: Chart, said: Said) -> None:
    must(chart.lines, "it has no line")
    must(chart.points >= 2, "it needs two points or more")
    for field in checked.fields[chart.across]:
        low, high = (float(end[1:]) if end.startswith("x") else None for end in (chart.low, chart.high))
        if low is None and high is None:
            low, high = quantity(chart.low, field.kind), quantity(chart.high, field.kind)
        must(low is None or high is None or low < high, f"the range from {chart.low} to {chart.high} is empty")
    for case in said:
        for line in chart.lines:
            must(line.key in case.kinds, f"its line {line.key} has no value{case.words}")
        kinds = sorted({case.kinds[line.key] for line in chart.lines})
        must(len(kinds) == 1, f"its lines are of unlike kinds: {', '.join(kinds)}")


def _track(checked: Checked, track: Track, said: Said) -> None:
    must(track.lines, "it has no line")
    for case in said:
        step = next(step for step in case.course.steps if step.key == track.of)
        run = step.law.run if isinstance(step, Step) else None
        must(run, f"{track.of} is not read from the record of a run")
        for trace in track.lines:
            known(trace.series, run.series if run else (), "series of that record")
        if track.a_day:
            known(track.a_day, run.fields if run else (), "number of that record")
        kinds = sorted({run.series[trace.series].kind for trace in track.lines} if run else ())
        must(len(kinds) == 1, f"its lines are of unlike kinds: {', '.join(kinds)}")


def _sweep(checked: Checked, sweep: Sweep, said: Said) -> None:
    must(len(sweep.points) >= 2, "it needs two points or more")
    once(sweep.points, "point")
    results = {result.key for result in checked.worksheet.results}
    for key in (*sweep.show, sweep.falls):
        must(key in results, f"it shows {key}, which is no result")
    must(not sweep.more or sweep.more in sweep.points, f"{sweep.more} is none of its points")


def _spread(checked: Checked, spread: Spread, said: Said) -> None:
    must(spread.of, "it tells of no result")
    results = {result.key for result in checked.worksheet.results}
    for key in spread.of:
        must(key in results, f"it shows {key}, which is no result")


def _trace(checked: Checked, trace: Trace, said: Said) -> None:
    known(trace.role, ROLES, "role of a line")


def _line(checked: Checked, line: Line, said: Said) -> None:
    known(line.role, ROLES, "role of a line")


def _comparison(checked: Checked, table: Comparison, said: Said) -> None:
    must(table.rows and table.show, "it has no rows, or shows nothing")
    once((row.label for row in table.rows), "row")
    for case in said:
        headed = {step.key for step in case.course.steps} | {result.key for result in checked.worksheet.results}
        for key in table.show:
            must(key not in case.kinds or key in headed, f"it shows {key}, which is neither a step nor a result")
        must(any(key in case.kinds for key in table.show), f"it shows nothing{case.words}")


def _variant(checked: Checked, row: Variant, said: Said) -> None:
    for case in said:
        changes = {key: text for key, text in row.changes.items() if key in case.choices}
        for other in checked.cases if changes else ():
            kept = case.choices | changes
            if all(kept.get(key, value) == value for key, value in other.course.choices):
                lacking = {field.key for field in other.course.fields} - {asked.key for asked in case.course.fields}
                must(not lacking, f"it leads{other.words}, where {', '.join(sorted(lacking))} would have to be asked")


def _methods(checked: Checked, table: Methods, said: Said) -> None:
    for case in said:
        steps = {step.key for step in case.course.steps}
        for key in table.show:
            must(key in steps or key not in case.kinds, f"it shows {key}, which is no step and so has no rule")


def _example(checked: Checked, example: Example, said: Said) -> None:
    for key, text in example.given.items():
        fields = checked.fields[key]
        if not any(field.accepts(text) for field in fields):
            fields[0].check_value(text)  # says what is wrong


def _next(checked: Checked, follow: Next, said: Said) -> None:
    must(follow.worksheet != checked.worksheet.key, "a worksheet does not lead to itself")


def _worksheet(checked: Checked, worksheet: Worksheet, said: Said) -> None:
    known(worksheet.guide, GUIDES, "guide")
    known(worksheet.headline, [result.key for result in worksheet.results], "result")
    must(worksheet.examples, "it needs a worked example")
    judged = worksheet.checks or worksheet.outlook
    must(judged or not worksheet.changes, "changes are tried on checks or an outlook, and there is neither")
    once((given.key for given in worksheet.givens), "given")
    once((advice.code for advice in worksheet.advice), "code of advice")
    once((check.key for check in worksheet.checks), "check")
    once((example.name for example in worksheet.examples), "example")
    once((following.worksheet for following in worksheet.follow), "worksheet to go to")
    once(worksheet.sources, "source")
    for case in said:
        listed = {result.key for result in worksheet.results if _is_listed(result, case)}
        must(worksheet.headline in listed, f"its headline {worksheet.headline} is not there{case.words}")
        must(case.kinds[worksheet.headline] != "choice", "its headline is a choice, not a number")


MEANING: Mapping[type, Callable[[Checked, Any, Said], None]] = {
    Field: _field_in_cases,
    Step: _step_in_cases,
    Pick: _step_in_cases,
    Result: _result,
    Advice: _advice,
    Check: _check,
    Must: _must,
    Picture: _picture,
    Chart: _chart,
    Spread: _spread,
    Sweep: _sweep,
    Track: _track,
    Trace: _trace,
    Line: _line,
    Variant: _variant,
    Comparison: _comparison,
    Methods: _methods,
    Example: _example,
    Next: _next,
    Outlook: _outlook,
    Worksheet: _worksheet,
}
