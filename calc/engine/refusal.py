"""A law refused a value: the sentence that names the fields from which that value came."""

from calc.engine.read import Problem
from calc.engine.sheet import Sheet
from calc.engine.steps import Course, Step
from calc.law import OutOfRange
from calc.units import show, shown_unit


def refused(sheet: Sheet, wrong: OutOfRange) -> Sheet:
    """A law refused a value: name the fields from which that value came."""
    step = next(step for step in sheet.course.steps if isinstance(step, Step) and step.key == wrong.step)
    source = step.binding[wrong.argument]
    fields = [field for field in sheet.course.fields if field.key in _ancestors(sheet.course, source)]
    if source in sheet.inputs:
        field = sheet.inputs[source].field
        unit = field.unit(sheet.system)
        ends = [show(end, unit, sheet.system, 4) for end in (wrong.allowed.low, wrong.allowed.high)]
        text = f"{field.label} must be between {ends[0]} and {ends[1]} here."
        problem = Problem(source, text)
    else:
        lead = next((step for step in sheet.course.steps if step.key == source), None)
        given = next((given for given in sheet.worksheet.givens if given.key == source), None)
        named = lead or given
        label = named.label if named else source
        unit = named.unit(sheet.system) if named else shown_unit(step.law.parameters[wrong.argument].kind, sheet.system)
        ends = [show(end, unit, sheet.system, 4) for end in (wrong.allowed.low, wrong.allowed.high)]
        asked = [field for field in fields if field.kind != "choice" and not sheet.inputs[field.key].from_field]
        given_by_reader = [field for field in asked if sheet.inputs[field.key].origin not in ("typical", "example")]
        labels = [field.label for field in (given_by_reader or asked)]
        came = " or ".join(labels[:3]) if labels else "the numbers above"
        problem = Problem(
            fields[0].key if fields else source,
            f"{label} comes to {show(wrong.value, unit, sheet.system, 4)}, outside {ends[0]} to {ends[1]}, "
            f"where this can be worked out: change {came}.",
        )
    return sheet._replace(reading=sheet.reading._replace(problems=(problem,)))


def _ancestors(course: Course, key: str) -> set[str]:
    """The keys of every field, given or step that feeds `key`, itself included."""
    feeds = {step.key: step.needs for step in course.steps}
    ancestors: set[str] = set()
    waiting = [key]
    while waiting:
        name = waiting.pop()
        if name not in ancestors:
            ancestors.add(name)
            waiting += feeds.get(name, ())
    return ancestors
