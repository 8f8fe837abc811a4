"""A declaration and the values read for it become a Sheet: results, advice, working, tables, band, sources."""

import math
from collections.abc import Mapping
from typing import NamedTuple

from calc.engine.declare import (
    ATTENTION,
    Advice,
    AnyStep,
    Check,
    Comparison,
    Field,
    Given,
    Methods,
    Pick,
    Plan,
    Result,
    Step,
    Variant,
    Worksheet,
    quantity,
)
from calc.engine.read import Input, Problem, Reading, typed_digits
from calc.engine.working import Value, WorkingLine, working
from calc.law import NoSolution, OutOfRange
from calc.sources import SOURCES, Source
from calc.units import System, Unit, fixed, grouped, show, shown_unit, unit_named, with_unit

Values = dict[str, float | str | None]


class Shown(NamedTuple):
    """A result as the reader sees it; `si` is None and `shown` a word where it does not exist."""

    key: str
    label: str
    say: str
    kind: str
    si: float | None
    shown: str
    source: str


class Said(NamedTuple):
    """A piece of advice whose condition holds, with the reader's numbers in it."""

    level: str
    code: str
    title: str
    text: str
    source: str


class Table(NamedTuple):
    """A comparison: column heads, rows of texts."""

    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    say: str


class Band(NamedTuple):
    """Between what and what the headline lies when the assumed numbers vary as far as they usually do."""

    low: str
    high: str
    matters_most: str
    low_si: float
    high_si: float


class Verdict(NamedTuple):
    """One link of a chain as judged: pass, tight, stop, unworkable or not checked, its number, why, and whose rule."""

    key: str
    label: str
    status: str
    number: str
    text: str
    source: str


class Sheet(NamedTuple):
    """Everything that is known about one worksheet with one reader's numbers. Without results, `problems` says why."""

    worksheet: Worksheet
    system: System
    plan: Plan
    inputs: dict[str, Input]
    problems: tuple[Problem, ...]
    values: Values
    results: tuple[Shown, ...] = ()
    headline: Shown | None = None
    say: str = ""
    meaning: tuple[str, ...] = ()
    advice: tuple[Said, ...] = ()
    working: tuple[WorkingLine, ...] = ()
    tables: tuple[Table, ...] = ()
    verdicts: tuple[Verdict, ...] = ()
    best_change: str = ""
    band: Band | None = None
    assumed: tuple[str, ...] = ()
    sources: tuple[tuple[str, Source], ...] = ()
    example: str = ""
    notes: tuple[str, ...] = ()

    @property
    def rough(self) -> bool:
        """Whether the headline leans on a number that nobody gave."""
        return bool(self.assumed) and not self.example


def run(worksheet: Worksheet, reading: Reading, system: System) -> Sheet:
    """Work out a worksheet for what was read."""
    sheet = Sheet(worksheet, system, reading.plan, reading.inputs, reading.problems, {}, example=reading.example)
    if reading.problems:
        return sheet
    try:
        worked = work_out(worksheet, reading)
    except OutOfRange as wrong:
        return _with_problem(sheet, wrong)
    values = settle(worksheet, worked)
    text = Texts(worksheet, reading, values, system)
    advice = tuple(_advice(worksheet, reading, values, text))
    return Sheet(
        worksheet=worksheet,
        system=system,
        plan=reading.plan,
        inputs=reading.inputs,
        problems=(),
        values=values,
        results=tuple(text.result(one) for one in worksheet.results if _listed(one, values) and one.key in values),
        headline=text.result(text.results[worksheet.headline]),
        say=text.fill(
            worksheet.say_none if values[worksheet.headline] is None and worksheet.say_none else worksheet.say
        ),
        meaning=tuple(text.fill(one) for one in worksheet.meaning),
        advice=advice,
        working=_working(reading, values, worksheet, system),
        tables=tuple(_table(one, worksheet, reading, worked, text) for one in worksheet.tables),
        verdicts=tuple(_verdict(one, reading, values, text) for one in worksheet.checks),
        best_change=_best_change(worksheet, reading, worked, text),
        band=_band(worksheet, reading, worked, text),
        assumed=tuple(
            one.field.label
            for one in reading.inputs.values()
            if one.origin in ("typical", "example") and not one.field.optional
        ),
        sources=_sources(worksheet, reading, advice),
        example=reading.example,
        notes=_notes(worksheet, reading),
    )


def _notes(worksheet: Worksheet, reading: Reading) -> tuple[str, ...]:
    """What was given and is not used, since the choices made ask for other numbers."""
    labels = {one.key: one.label for one in worksheet.all_fields()}
    return tuple(f"{labels[key]} is not used with the choices made here." for key in reading.unused)


def work_out(worksheet: Worksheet, reading: Reading) -> Values:
    """Every value: inputs, givens, each step in order. A step without what it needs, or without a solution, is None."""
    values: Values = {key: one.si for key, one in reading.inputs.items()}
    for given in worksheet.givens:
        values[given.key] = given.value
    for step in reading.plan.steps:
        values[step.key] = _step(step, values)
    return values


def work_out_again(worked: Values, steps: tuple[AnyStep, ...], changes: Values) -> Values:
    """The values after some inputs have changed: only the steps that they reach are taken again."""
    values, reached = worked | changes, set(changes)
    for step in steps:
        if not reached.isdisjoint(step.needs):
            reached.add(step.key)
            values[step.key] = _step(step, values)
    return values


def settle(worksheet: Worksheet, worked: Values) -> Values:
    """The values that are told: what advice sets to nothing is nothing, and a chain counts what needs attention."""
    values = worked | {key: 0.0 for key in _zeroed(worksheet, worked) if key in worked}
    if worksheet.checks:
        values[ATTENTION] = float(sum(_status(one, values) != "pass" for one in worksheet.checks))
    return values


def _zeroed(worksheet: Worksheet, values: Values) -> set[str]:
    """The results that are exactly nothing, since advice that holds says so."""
    holding = [one for one in worksheet.advice if one.zeroes and _applies(one, values) and one.condition(values, {})]
    return {key for one in holding for key in one.zeroes}


def _step(step: Step | Pick, values: Values) -> float | None:
    if isinstance(step, Pick):
        return quantity(step.values[str(values[step.on])], step.kind)
    arguments: dict[str, float] = {}
    for name, source in step.binding.items():
        value = values[source]
        if value is None or isinstance(value, str):
            return None
        arguments[name] = value
    try:
        result = step.law(**arguments)
    except OutOfRange as wrong:
        wrong.step = step.key
        raise
    except (NoSolution, ArithmeticError, ValueError):  # no such number: a root, a logarithm or a quotient that is none
        return None
    return result if isinstance(result, float | int) and math.isfinite(result) else None


def _with_problem(sheet: Sheet, wrong: OutOfRange) -> Sheet:
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
    return sheet._replace(problems=(problem,))


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


def _status(check: Check, values: Values) -> str:
    """How a link stands with these values."""
    fails, tight = check.conditions
    if fails(values, {}):
        return check.level
    if values.get(check.number) is None:
        return "not checked"
    return "tight" if tight(values, {}) else "pass"


def _verdict(check: Check, reading: Reading, values: Values, text: "Texts") -> Verdict:
    return Verdict(
        check.key,
        check.label,
        _status(check, values),
        "–" if values.get(check.number) is None else text.value(check.number),
        text.fill(check.say),
        check.source,
    )


_WEIGHT = {"stop": 1000, "unworkable": 100, "tight": 10, "not checked": 1, "pass": 0}


def _best_change(worksheet: Worksheet, reading: Reading, worked: Values, text: "Texts") -> str:
    """Of the changes worth trying, the one after which the chain stands best; empty when none makes it better."""

    def trouble(those: Values) -> int:
        return sum(_WEIGHT[_status(one, those)] for one in worksheet.checks)

    best, least = "", trouble(text.values)
    for row in worksheet.changes:
        other = changed(worksheet, reading, worked, row)
        if other is not None and (left := trouble(other)) < least:
            best, least = text.fill(row.label, other), left
    return best


def _listed(result: Result, values: Values) -> bool:
    return result.only is None or values.get(result.only[0]) == result.only[1]


class Texts:
    """Values as this reader sees them."""

    def __init__(self, worksheet: Worksheet, reading: Reading, values: Values, system: System) -> None:
        self.worksheet, self.reading, self.values, self.system = worksheet, reading, values, system
        self.steps = {step.key: step for step in reading.plan.steps}
        self.givens = {given.key: given for given in worksheet.givens}
        self.results = {result.key: result for result in worksheet.results if _listed(result, values)}

    def unit(self, key: str) -> Unit:
        result = self.results.get(key)
        named = (result.us if self.system == "us" else result.si) if result else ""
        owner: Field | Given | Step | Pick
        if key == ATTENTION:
            return shown_unit("count", self.system)
        if key in self.reading.inputs:
            owner = self.reading.inputs[key].field
        else:
            owner = self.steps.get(key) or self.givens[key]
        return unit_named(named, owner.kind) if named else owner.unit(self.system)

    def value(self, key: str, value: float | str | None = None, given: bool = False) -> str:
        """The text of one value; another value of the same key may be given."""
        result = self.results.get(key)
        if not given:
            value = self.values.get(key)
            if key in self.reading.inputs and key not in self.results:
                return self.reading.inputs[key].shown(self.system)
        if isinstance(value, str):
            return self.reading.inputs[key].shown(self.system)
        if value is None:
            return result.missing if result else "does not exist"
        unit = self.unit(key)
        if result and result.decimals is not None:
            return with_unit(grouped(fixed(unit.from_si(value), result.decimals), self.system), unit)
        return show(value, unit, self.system, result.figures if result else 3)

    def result(self, result: Result) -> Shown:
        value = self.values[result.key]
        step = self.steps.get(result.key)
        found = self.reading.inputs.get(result.key)
        label = result.label or (step.label if step else found.field.label if found else result.key)
        kind = "count" if result.key == ATTENTION else self.unit(result.key).kind
        return Shown(
            result.key,
            self.fill(label),
            self.fill(result.say),
            kind,
            value if isinstance(value, float | int) else None,
            self.value(result.key),
            step.source if isinstance(step, Step | Pick) else "",
        )

    def fill(self, template: str, others: Values | None = None) -> str:
        """A sentence with its {names} replaced by the reader's numbers, or by `others`."""
        if "{" not in template:
            return template
        parts = []
        for literal, name in _parse(template):
            parts.append(literal)
            if name:
                parts.append(self.value(name) if others is None else self.value(name, others[name], True))
        return "".join(parts)


def _parse(template: str) -> list[tuple[str, str]]:
    pieces = template.split("{")
    found = [(pieces[0], "")]
    for piece in pieces[1:]:
        name, _, rest = piece.partition("}")
        found.append(("", name))
        found.append((rest, ""))
    return found


def _advice(worksheet: Worksheet, reading: Reading, values: Values, text: Texts) -> list[Said]:
    """Every stop, unworkable and caution that holds, in that order, then the first two notes."""
    origins = {key: one.origin for key, one in reading.inputs.items()}
    held = [one for one in worksheet.advice if _applies(one, values) and one.condition(values, origins)]
    said = []
    for level, most in (("stop", None), ("unworkable", None), ("caution", None), ("note", 2)):
        for one in [advice for advice in held if advice.level == level][:most]:
            said.append(Said(level, one.code, text.fill(one.title), text.fill(one.say), one.source))
    return said


def _applies(advice: Advice, values: Values) -> bool:
    return all(name in values for name in advice.condition.names)


def _working(reading: Reading, values: Values, worksheet: Worksheet, system: System) -> tuple[WorkingLine, ...]:
    shown: dict[str, Value] = {}
    for key, one in reading.inputs.items():
        if one.quantity is not None:
            unit = one.field.unit(system)
            exact = one.quantity.unit == unit
            shown[key] = Value(one.quantity.si, unit, typed_digits(one.quantity, unit) if exact else "")
    for given in worksheet.givens:
        shown[given.key] = Value(given.value, given.unit(system))
    nothing = _zeroed(worksheet, values)
    for step in reading.plan.steps:
        value = values[step.key]
        if isinstance(value, float | int) and step.key not in nothing:
            shown[step.key] = Value(float(value), step.unit(system))
    return working(reading.plan.steps, shown, system)


def changed(worksheet: Worksheet, reading: Reading, worked: Values, row: Variant) -> Values | None:
    """Every value with a variant's changes; None where a law refuses them."""
    fields = {one.key: one for one in reading.plan.fields}
    changes = {
        key: changed_value(fields[key], text, worked[key]) for key, text in row.changes.items() if key in fields
    }
    return moved(worksheet, reading, worked, changes)


def moved(worksheet: Worksheet, reading: Reading, worked: Values, changes: Mapping[str, float | str]) -> Values | None:
    """Every value with some inputs changed, and what follows them; None where a law refuses them."""
    now: Values = dict(changes)
    for one in reading.inputs.values():
        if one.from_field in changes and one.field.key not in changes:
            now[one.field.key] = changes[one.from_field]
    try:
        return settle(worksheet, work_out_again(worked, reading.plan.steps, now))
    except (OutOfRange, OverflowError):
        return None


def changed_value(field_: Field, text: str, current: float | str | None) -> float | str:
    """A text of a declaration as a value; "x2" is twice the current one, "less 20 F°" so much below it."""
    if field_.kind == "choice":
        return text
    if text.startswith("less ") and isinstance(current, float | int):
        kind = "temperature_difference" if field_.kind == "temperature" else field_.kind
        return current - quantity(text.removeprefix("less "), kind)
    if text.startswith("x") and isinstance(current, float | int):
        return float(text[1:]) * current
    return quantity(text, field_.kind)


def _table(
    table: Comparison | Methods, worksheet: Worksheet, reading: Reading, worked: Values, text: Texts
) -> Table:
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
        other = changed(worksheet, reading, worked, row)
        rows.append(
            (
                text.fill(row.label, other),
                *("cannot be worked out" if other is None else text.value(key, other[key], True) for key in shown),
            )
        )
    return Table(table.title, heads, tuple(rows), text.fill(table.say))


def _band(worksheet: Worksheet, reading: Reading, worked: Values, text: Texts) -> Band | None:
    """Each guess moved to the ends of its usual band, each side added by root sum of squares, the largest named."""
    centre = text.values[worksheet.headline]
    if not isinstance(centre, float | int) or worksheet.headline == ATTENTION:
        return None
    # Only what feeds the headline, and the advice that may set it to nothing, is worked out again for each guess.
    zeroed = {name for one in worksheet.advice if worksheet.headline in one.zeroes for name in one.condition.names}
    steps = reading.plan.steps_for({worksheet.headline, *zeroed})
    fed = {worksheet.headline, *zeroed}.union(*(step.needs for step in steps))
    below = above = largest = 0.0
    most = ""
    for one in reading.inputs.values():
        followers = [other.field.key for other in reading.inputs.values() if other.from_field == one.field.key]
        if not fed.intersection((one.field.key, *followers)):
            continue
        effect = [0.0, 0.0]
        for end in _ends(one, worked):
            try:
                now = work_out_again(worked, steps, dict.fromkeys((one.field.key, *followers), end))
            except OutOfRange:
                continue
            there = 0.0 if worksheet.headline in _zeroed(worksheet, now) else now[worksheet.headline]
            if isinstance(there, float | int):
                effect = [min(effect[0], there - centre), max(effect[1], there - centre)]
        below, above = math.hypot(below, effect[0]), math.hypot(above, effect[1])
        if effect[1] - effect[0] > largest:
            largest, most = effect[1] - effect[0], one.field.label
    if not most or largest <= 1e-9 * abs(centre):
        return None
    low, high = centre - below, centre + above
    if centre >= 0:
        low = max(low, 0.0)
    key = worksheet.headline
    return Band(text.value(key, low, True), text.value(key, high, True), most, low, high)


def _ends(one: Input, values: Values) -> list[float]:
    """The usual ends of a number that was assumed, or that a person knows only so well."""
    found = one.field
    if found.kind == "choice" or not isinstance(one.si, float | int):
        return []
    if one.origin in ("typical", "example") and found.typical and found.typical.low:
        low, high = found.typical.low, found.typical.high
        if not isinstance(low, str):
            low = low[str(values[found.typical.on])]
        if not isinstance(high, str):
            high = high[str(values[found.typical.on])]
        return [quantity(low, found.kind), quantity(high, found.kind)]
    if found.uncertainty.endswith("%"):
        share = float(found.uncertainty[:-1]) / 100
        ends = [one.si * (1 - share), one.si * (1 + share)]
    elif found.uncertainty:
        kind = "temperature_difference" if found.kind == "temperature" else found.kind
        amount = quantity(found.uncertainty, kind)
        ends = [one.si - amount, one.si + amount]
    else:
        return []
    return [min(max(end, found.low_si), found.high_si) for end in ends]


def source_line(source: Source) -> str:
    """A source in one line, with how it is known where that is less than having read it."""
    parts = [part for part in (source.body, source.title, source.year, source.place) if part]
    known = (
        "" if source.known in ("read", "definition", "computed", "common practice") else f" ({_KNOWN[source.known]})"
    )
    return ", ".join(parts) + known


_KNOWN = {"second-hand": "second-hand", "memory": "from memory"}


def _sources(worksheet: Worksheet, reading: Reading, advice: tuple[Said, ...]) -> tuple[tuple[str, Source], ...]:
    keys: list[str] = []
    for step in reading.plan.steps:
        keys.append(step.source)
        if isinstance(step, Step):
            keys += [constant.source for constant in step.law.constants.values()]
    keys += [given.source for given in worksheet.givens]
    keys += [
        one.field.typical.source for one in reading.inputs.values() if one.origin == "typical" and one.field.typical
    ]
    keys += [one.source for one in advice if one.source]
    keys += worksheet.sources
    return tuple((key, SOURCES[key]) for key in dict.fromkeys(keys))
