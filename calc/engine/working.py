"""The working: each step in words, then with its numbers, such that a pocket calculator gives the shown result.

One rule decides the units. The formula is worked out on the shown numbers and on the SI numbers; if the two agree once
the result's unit is allowed for, the reader's units stand in the sum; if they are off by a constant, that constant is
shown; if not even that (an empirical power law, a ratio of absolute temperatures), the sum stands in SI units with the
reader's unit beside the result.
"""

import ast
import math
import random
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import NamedTuple

from calc.engine.steps import AnyStep, Step
from calc.expression import Formula
from calc.law import Constant, Law
from calc.units import NO_BREAK, System, Unit, grouped, in_a_sum, round_briefly, round_to, shown_unit, units_of

FEWEST, MOST = 5, 14  # significant figures in the working; a double holds fifteen
_MINUS, _TIMES, _DIVIDE = "\N{MINUS SIGN}", "\N{MULTIPLICATION SIGN}", "\N{DIVISION SIGN}"


class WorkingLine(NamedTuple):
    """One step of the working, as text: its label, the law in words, the sums with numbers, the result, its source."""

    key: str
    label: str
    words: tuple[str, ...]
    sums: tuple[str, ...]
    result: str
    source: str
    beside: str = ""


@dataclass(eq=False, repr=False)
class _Shown:
    """A quantity in the working: its value, its units, and the digits it is shown to so far."""

    si: float
    reader: Unit
    plain: Unit
    typed: str
    figures: int
    _known: dict[tuple[bool, int], str] = field(default_factory=dict)  # the digits in either unit, once asked for

    def digits(self, unit: Unit) -> str:
        """The digits in `unit`, which is the reader's or the plain one."""
        if self.typed and unit is self.reader:
            return self.typed
        wanted = (unit is self.reader, self.figures)
        if wanted not in self._known:
            self._known[wanted] = self._digits(unit)
        return self._known[wanted]

    def _digits(self, unit: Unit) -> str:
        number = unit.from_si(self.si)
        if abs(number) < 1e-9 * abs(unit.offset or 1e-290):
            return "0"
        return round_briefly(number, self.figures)


class Value(NamedTuple):
    """What the working needs to know of a field, given or step: SI value, reader's unit, the digits typed if any."""

    si: float
    unit: Unit
    typed: str = ""


def working(steps: tuple[AnyStep, ...], values: Mapping[str, Value], system: System) -> tuple[WorkingLine, ...]:
    """Lines for the steps that have a value; digits are raised until every printed sum gives its printed result."""
    shown = {key: _in_sums(value) for key, value in values.items()}
    lines = []
    for step in reversed(steps):  # later steps first: they may ask for more digits of what feeds them
        if step.key in shown and all(need in shown or not isinstance(step, Step) for need in step.needs):
            lines.append(_line(step, shown, system))
    return tuple(reversed(lines))


def _in_sums(value: Value) -> _Shown:
    """A value as it stands in sums: shares as plain numbers (0.82, not 82 %), all else in the reader's unit."""
    if value.unit.kind == "fraction":
        return _Shown(value.si, si_unit(value.unit), si_unit(value.unit), "", 6 if value.typed else FEWEST)
    return _Shown(value.si, value.unit, si_unit(value.unit), value.typed, 6 if value.typed else FEWEST)


@cache
def si_unit(unit: Unit) -> Unit:
    """The unit with factor 1 of the same kind; where the table has none, the reader's own."""
    return next((other for other in units_of(unit.kind) if other.factor == 1 and other.offset == 0), unit)


def _line(step: AnyStep, shown: dict[str, _Shown], system: System) -> WorkingLine:
    mine = shown[step.key]
    if not isinstance(step, Step):
        return WorkingLine(step.key, step.label, (), (), _text(mine, mine.reader, system), step.source)
    law = step.law
    if law.sentence is not None:
        return WorkingLine(step.key, step.label, (law.sentence,), (), _text(mine, mine.reader, system), step.source)
    bound = {name: shown[source] for name, source in step.binding.items()}
    for name, constant in law.constants.items():
        if constant.kind:
            unit = shown_unit(constant.kind, system)
            bound[name] = _Shown(constant.value, unit, si_unit(unit), "", FEWEST)
    if law.solves is not None:
        return _solved(step, law, bound, mine, system)
    assert law.formula
    scale, units = _scale(law, tuple((name, shown.reader) for name, shown in bound.items()), mine.reader)
    result_unit = mine.reader if units == "reader" else mine.plain
    _raise_digits(law.formula, law, bound, units, scale, mine, result_unit)
    factor = f" {_TIMES} {_constant_text(scale)}" if scale != 1 else ""
    beside = "" if units == "reader" or mine.plain is mine.reader else _text(mine, mine.reader, system)
    drawn = _draw(law.formula, law, bound, units, system)
    if factor and isinstance(law.formula.tree, ast.BinOp) and isinstance(law.formula.tree.op, ast.Add | ast.Sub):
        drawn = f"({drawn})"
    return WorkingLine(
        step.key,
        step.label,
        (_words(law.formula),),
        (drawn + factor,),
        _text(mine, result_unit, system),
        step.source,
        beside,
    )


def _solved(step: Step, law: Law, bound: dict[str, _Shown], mine: _Shown, system: System) -> WorkingLine:
    """A balance: both sides with the solution in place, to four figures alike."""
    assert law.left and law.right and law.solves
    everything = bound | {law.solves: mine}
    mine.figures = max(mine.figures, 6)
    beside = "" if mine.plain is mine.reader else _text(mine, mine.reader, system)
    _raise_balance(law, everything)
    sides = [_draw(formula, law, everything, "plain", system) for formula in (law.left, law.right)]
    return WorkingLine(
        step.key,
        step.label,
        (f"{_words(law.left)} = {_words(law.right)}",),
        tuple(sides),
        _text(mine, mine.plain, system),
        step.source,
        beside,
    )


def _raise_balance(law: Law, everything: dict[str, _Shown]) -> None:
    """More digits until both printed sides agree to four figures."""
    assert law.left and law.right
    for _ in range(MOST):
        numbers = _numbers(law, everything, "plain")
        left, right = law.left(numbers), law.right(numbers)
        if abs(left - right) <= 5e-5 * max(abs(left), abs(right)):
            return
        for shown in everything.values():
            shown.figures = min(shown.figures + 1, MOST)


@cache
def _scale(law: Law, units: tuple[tuple[str, Unit], ...], result: Unit) -> tuple[float, str]:
    """The constant by which the sum in the reader's units must be multiplied, and whose units the sum can stand in."""
    assert law.formula
    ratios = []
    for values in _places(law, tuple(name for name, _ in units)):
        in_reader = {name: unit.from_si(values[name]) for name, unit in units}
        try:
            exact = law.formula(law.constant_values | values)
            reader = law.formula(law.constant_values | in_reader)
        except (ValueError, ZeroDivisionError, OverflowError):
            continue
        # A negative number to a broken power is complex: such a place says nothing about units.
        if isinstance(exact, complex) or isinstance(reader, complex) or reader == 0:
            continue
        ratios.append(result.from_si(exact) / reader)
        if not math.isclose(ratios[-1], ratios[0], rel_tol=1e-9):
            return 1.0, "plain"
    if len(ratios) < 3:
        return 1.0, "plain"
    if math.isclose(ratios[0], 1, rel_tol=1e-9):
        return 1.0, "reader"
    already_plain = all(unit is si_unit(unit) for unit in (*dict(units).values(), result))
    if already_plain or not 1e-6 < ratios[0] < 1e6:
        return 1.0, "plain"
    return float(round_to(ratios[0], 12)), "reader"


def _places(law: Law, names: tuple[str, ...]) -> list[dict[str, float]]:
    """Places at which to compare units: always the same, and far enough apart to reach both sides of a max or min."""
    source = random.Random(1)  # noqa: S311 - any spread will do, as long as it is always the same
    places = []
    for _ in range(40):
        place = {}
        for name in names:
            allowed = law.ranges.get(name)
            if allowed and (allowed.low <= 0 or allowed.high / allowed.low < 30):
                place[name] = source.uniform(allowed.low, allowed.high)
            elif name in law.parameters and law.parameters[name].kind == "temperature":
                place[name] = source.uniform(280, 420)
            else:
                place[name] = math.exp(source.uniform(math.log(1e-4), math.log(1e7)))
                if allowed:
                    place[name] = min(max(place[name], allowed.low), allowed.high)
        places.append(place)
    return places


def _constant_text(scale: float) -> str:
    return round_briefly(scale, 12)


def _numbers(law: Law, bound: dict[str, _Shown], units: str) -> dict[str, float]:
    numbers = {
        name: float(shown.digits(shown.reader if units == "reader" else shown.plain)) for name, shown in bound.items()
    }
    return law.constant_values | numbers


def _raise_digits(
    formula: Formula, law: Law, bound: dict[str, _Shown], units: str, scale: float, mine: _Shown, unit: Unit
) -> None:
    """More digits for what goes in, until the printed sum gives the printed result to its last digit."""
    for _ in range(MOST * len(bound) + 1):
        printed = mine.digits(unit)
        places = len(printed.partition(".")[2])
        if not places and "." not in printed:
            trailing = len(printed) - len(printed.rstrip("0")) if float(printed) else 0
            places = -min(trailing, max(len(printed.lstrip("-")) - mine.figures, 0))
        try:
            worked = float(formula(_numbers(law, bound, units))) * scale
        except (ValueError, ZeroDivisionError, OverflowError, TypeError):
            worked = math.nan
        if abs(worked - float(printed)) <= 0.5000001 * 10.0**-places:
            return
        # One more digit for those that have the fewest, so that no number grows longer than it must.
        fewest = min(shown.figures for shown in bound.values())
        for shown in bound.values():
            if fewest >= MOST:
                shown.typed = ""
            if shown.figures == fewest:
                shown.figures = min(shown.figures + 1, MOST)


def _text(shown: _Shown, unit: Unit, system: System) -> str:
    return in_a_sum(grouped(shown.digits(unit), system), unit)


@cache
def _words(formula: Formula) -> str:
    """The formula in words: names with spaces, the signs of arithmetic."""
    pieces = _pieces(formula)
    return "".join(piece.replace("_", " ") if place % 2 else piece for place, piece in enumerate(pieces))


@cache
def _pieces(formula: Formula) -> tuple[str, ...]:
    """The formula as text cut at its names: text, name, text, …, name, text."""
    return tuple(_drawn(formula.tree, lambda name: f"\0{name}\0").split("\0"))


def _draw(formula: Formula, law: Law, bound: dict[str, _Shown], units: str, system: System) -> str:
    def name_text(name: str) -> str:
        if name in bound:
            shown = bound[name]
            unit = shown.reader if units == "reader" else shown.plain
            text = _text(shown, unit, system)
            return f"({text})" if text.startswith(_MINUS) else text
        if name in law.constants:
            return _constant_with_unit(law.constants[name])
        return name

    return "".join(name_text(piece) if place % 2 else piece for place, piece in enumerate(_pieces(formula)))


def _constant_with_unit(constant: Constant) -> str:
    return _constant_text(constant.value) + (
        NO_BREAK + _pretty(constant.unit) if constant.unit not in ("", "1") else ""
    )


def _pretty(unit: str) -> str:
    """A unit in the form that the tests read (W / m**2 / K**1.1) as people read it (W/m²/K^1.1)."""
    unit = unit.replace(" ", "").replace("**2", "²").replace("**3", "³").replace("**", "^").replace("*", "·")
    return unit.replace("(", "").replace(")", "")


_SIGNS: dict[type[ast.operator], tuple[str, int]] = {
    ast.Add: (" + ", 1),
    ast.Sub: (f" {_MINUS} ", 1),
    ast.Mult: (f" {_TIMES} ", 2),
    ast.Div: (f" {_DIVIDE} ", 2),
    ast.Pow: (" ^ ", 4),
}


def _drawn(node: ast.expr, name_text: Callable[[str], str], outer: int = 0, right: bool = False) -> str:
    """A formula tree as text, with the brackets it needs and no more."""
    if isinstance(node, ast.Name):
        return name_text(node.id)
    if isinstance(node, ast.Constant):
        assert isinstance(node.value, int | float)
        return _constant_text(float(node.value)) if node.value else "0"
    if isinstance(node, ast.Call):
        assert isinstance(node.func, ast.Name)
        return f"{node.func.id}({', '.join(_drawn(argument, name_text) for argument in node.args)})"
    if isinstance(node, ast.UnaryOp):
        text = _MINUS + _drawn(node.operand, name_text, 3)
        return f"({text})" if outer else text
    assert isinstance(node, ast.BinOp)
    sign, rank = _SIGNS[type(node.op)]
    left = _drawn(node.left, name_text, rank + (1 if isinstance(node.op, ast.Pow) else 0))
    after = _drawn(node.right, name_text, rank, right=not isinstance(node.op, ast.Add | ast.Mult))
    text = left + sign + after
    return f"({text})" if rank < outer or (rank == outer and right) else text
