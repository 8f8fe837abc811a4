"""A law refused a value: the sentence that names the fields from which that value came."""

from calc.engine.read import Problem
from calc.engine.sheet import Sheet
from calc.engine.steps import Plan, Step
from calc.law import OutOfRange
from calc.units import show, shown_unit


def refused(sheet: Sheet, wrong: OutOfRange) -> Sheet:
    """A law refused a value: name the fields from which that value came."""
    step = next(one for one in sheet.plan.steps if isinstance(one, Step) and one.key == wrong.step)
    source = step.binding[wrong.argument]
    fields = [one for one in sheet.plan.fields if one.key in _ancestors(sheet.plan, source)]
    if source in sheet.inputs:
        found = sheet.inputs[source].field
        unit = found.unit(sheet.system)
        ends = [show(end, unit, sheet.system, 4) for end in (wrong.allowed.low, wrong.allowed.high)]
        text = f"{found.label} must be between {ends[0]} and {ends[1]} here."
        problem = Problem(source, text)
    else:
        lead = next((one for one in sheet.plan.steps if one.key == source), None)
        given = next((one for one in sheet.worksheet.givens if one.key == source), None)
        named = lead or given
        label = named.label if named else source
        unit = named.unit(sheet.system) if named else shown_unit(step.law.parameters[wrong.argument].kind, sheet.system)
        ends = [show(end, unit, sheet.system, 4) for end in (wrong.allowed.low, wrong.allowed.high)]
        asked = [one for one in fields if one.kind != "choice" and not sheet.inputs[one.key].from_field]
        given_by_reader = [one for one in asked if sheet.inputs[one.key].origin not in ("typical", "example")]
        labels = [one.label for one in (given_by_reader or asked)]
        came = " or ".join(labels[:3]) if labels else "the numbers above"
        problem = Problem(
            fields[0].key if fields else source,
            f"{label} comes to {show(wrong.value, unit, sheet.system, 4)}, outside {ends[0]} to {ends[1]}, "
            f"where this can be worked out: change {came}.",
        )
    return sheet._replace(reading=sheet.reading._replace(problems=(problem,)))


def _ancestors(plan: Plan, key: str) -> set[str]:
    """The keys of every field, given or step that feeds `key`, itself included."""
    feeds = {step.key: step.needs for step in plan.steps}
    found: set[str] = set()
    waiting = [key]
    while waiting:
        one = waiting.pop()
        if one not in found:
            found.add(one)
            waiting += feeds.get(one, ())
    return found
