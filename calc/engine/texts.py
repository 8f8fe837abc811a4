"""Numbers and sentences as one reader sees them."""

from calc.engine.fields import DeclarationError, Field, Given, declared
from calc.engine.read import Reading
from calc.engine.sentences import pieces
from calc.engine.sheet import Shown
from calc.engine.steps import Pick, Step
from calc.engine.typed import at_least, at_most
from calc.engine.values import Values
from calc.engine.words import ATTENTION, Result
from calc.engine.worksheet import Worksheet
from calc.units import System, Unit, fixed, grouped, show, shown_unit, unit_named, with_unit

_SHORTER = {"h": "min", "min": "s"}


def _handy(unit: Unit, value: float) -> Unit:
    """The unit in which people tell a short time: 10 min and not 0.16 h."""
    while unit.kind == "time" and unit.text in _SHORTER and 0 < unit.from_si(value) < 1:
        unit = unit_named(_SHORTER[unit.text], "time")
    return unit


def listed(result: Result, values: Values) -> bool:
    """Whether a worksheet gives a result with these choices."""
    return result.only is None or values.get(result.only[0]) == result.only[1]


class Texts:
    """Values as this reader sees them."""

    def __init__(self, worksheet: Worksheet, reading: Reading, values: Values, system: System) -> None:
        self.worksheet, self.reading, self.values, self.system = worksheet, reading, values, system
        self.steps = {step.key: step for step in reading.course.steps}
        self.givens = {given.key: given for given in worksheet.givens}
        self.awaited = {field.key: field for field in reading.course.fields if field.awaited}
        self.results = {result.key: result for result in worksheet.results if listed(result, values)}

    def unit(self, key: str) -> Unit:
        result = self.results.get(key)
        named = (result.us if self.system == "us" else result.si) if result else ""
        owner: Field | Given | Step | Pick
        if key == ATTENTION:
            return shown_unit("count", self.system)
        if key in self.reading.inputs:
            owner = self.reading.inputs[key].field
        else:
            owner = self.steps.get(key) or self.givens.get(key) or self.awaited[key]
        return unit_named(named, owner.kind) if named else owner.unit(self.system)

    def value(self, key: str, value: float | str | None = None, given: bool = False) -> str:
        """The text of one value; another value of the same key may be given."""
        result = self.results.get(key)
        if not given:
            if key not in self.values:
                raise DeclarationError(f"{self.worksheet.key}: nothing here is called {key!r}")
            value = self.values[key]
            if key in self.reading.inputs and key not in self.results:
                return self.reading.inputs[key].shown(self.system)
        if key in self.givens and (limit := self.givens[key].limit):
            told = at_least if limit == "least" else at_most
            return told(declared(self.givens[key].text, self.givens[key].kind), self.unit(key), self.system)
        if isinstance(value, str):
            return self.reading.inputs[key].shown(self.system)
        if value is None:
            return result.missing if result else "does not exist"
        unit = _handy(self.unit(key), value)
        if result and result.decimals is not None:
            return with_unit(grouped(fixed(unit.from_si(value), result.decimals), self.system), unit)
        return show(value, unit, self.system, result.figures if result else 3)

    def result(self, result: Result) -> Shown:
        value = self.values[result.key]
        step = self.steps.get(result.key)
        entry = self.reading.inputs.get(result.key)
        label = result.label or (step.label if step else entry.field.label if entry else result.key)
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
        for literal, name in pieces(template):
            parts.append(literal)
            if name:
                parts.append(self.value(name) if others is None else self.value(name, others[name], True))
        return "".join(parts)
