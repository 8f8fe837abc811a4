"""The one evaluator of texts that are worked out: a law's formula, and a condition over a worksheet's numbers.

A text is parsed against an allow-list and compiled; what it may hold beyond arithmetic its `Grammar` says. Nothing but
the names given to it can be reached from it.
"""

import ast
import math
from collections.abc import Callable, Iterable, Mapping
from functools import cached_property
from types import CodeType
from typing import Any, NamedTuple


class ExpressionError(ValueError):
    """A text that is no expression of its grammar; it stands in a declaration, so it stops."""


def log_mean(first: float, second: float) -> float:
    """Logarithmic mean, by which exchangers average the temperature difference between their ends.

    The value itself where both are equal, 0 where one of them is 0, and not a number below that.
    """
    if min(first, second) <= 0:
        return 0.0 if min(first, second) == 0 else math.nan
    rise = (first - second) / second
    return (first - second) / math.log1p(rise) if rise else first


FUNCTIONS: dict[str, Callable[..., float]] = {
    "exp": math.exp,
    "log": math.log,
    "log10": math.log10,
    "sqrt": math.sqrt,
    "tanh": math.tanh,
    "max": max,
    "min": min,
    "log_mean": log_mean,
}
PLAIN_NAMES = {"pi": math.pi}
# All that the code of an expression can reach besides its values.
SPACE: dict[str, Any] = {"__builtins__": {}, **FUNCTIONS, **PLAIN_NAMES}


class Grammar(NamedTuple):
    """What a text may hold: kinds of node, types of constant, and functions asked about a name rather than a value."""

    called: str
    nodes: tuple[type[ast.AST], ...]
    constants: tuple[type, ...]
    asked: tuple[str, ...] = ()


ARITHMETIC: tuple[type[ast.AST], ...] = (
    ast.Expression, ast.BinOp, ast.UnaryOp, ast.Call, ast.Name, ast.Constant, ast.Load,
    ast.Add, ast.Sub, ast.Mult, ast.Div, ast.Pow, ast.USub,
)  # fmt: skip
LOGIC: tuple[type[ast.AST], ...] = (
    ast.Compare, ast.BoolOp, ast.And, ast.Or, ast.Not, ast.Lt, ast.LtE, ast.Gt, ast.GtE, ast.Eq, ast.NotEq,
)  # fmt: skip
FORMULA = Grammar("a formula", ARITHMETIC, (int, float))
CONDITION = Grammar("a condition", ARITHMETIC + LOGIC, (int, float, str), ("missing", "assumed", "given"))


class Expression:
    """A text of one grammar that can be evaluated and drawn; parsed when it is first used.

    A page uses a handful of the laws that it imports, and parsing all of them would be felt as it opens.
    """

    def __init__(self, text: str, grammar: Grammar) -> None:
        self.text, self.grammar = text, grammar

    @property
    def tree(self) -> ast.expr:
        """The parsed text; in a call of a function that asks about a name the name is a constant."""
        return self._parsed[0].body

    @property
    def names(self) -> frozenset[str]:
        """What has to be given a value."""
        return self._parsed[1]

    @property
    def asked(self) -> frozenset[tuple[str, str]]:
        """Function and name of everything that is asked about a name."""
        return self._parsed[2]

    @cached_property
    def _parsed(self) -> tuple[ast.Expression, frozenset[str], frozenset[tuple[str, str]]]:
        try:
            tree = ast.parse(self.text, mode="eval")
        except SyntaxError as wrong:
            raise ExpressionError(f"this is not {self.grammar.called} ({wrong.msg}): {self.text}") from None
        asked = set()
        for node in ast.walk(tree):
            self._check(node)
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in self.grammar.asked:
                asked.add((node.func.id, self._quote(node)))
        named = {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)}
        names = named - {*FUNCTIONS, *PLAIN_NAMES, *self.grammar.asked}
        return ast.fix_missing_locations(tree), frozenset(names), frozenset(asked)

    def _check(self, node: ast.AST) -> None:
        grammar, callable_ = self.grammar, (*FUNCTIONS, *self.grammar.asked)
        if not isinstance(node, grammar.nodes):
            raise ExpressionError(f"{type(node).__name__} is not allowed in {grammar.called}: {self.text}")
        if isinstance(node, ast.Call) and (not isinstance(node.func, ast.Name) or node.func.id not in callable_):
            raise ExpressionError(f"only {', '.join(callable_)} may be called in {grammar.called}: {self.text}")
        if isinstance(node, ast.Constant) and type(node.value) not in grammar.constants:
            allowed = "numbers and texts" if str in grammar.constants else "numbers"
            raise ExpressionError(f"only {allowed} are allowed in {grammar.called}: {self.text}")

    def _quote(self, call: ast.Call) -> str:
        """missing(x) asks about x whether or not it has a value: x is handed over as a text."""
        assert isinstance(call.func, ast.Name)
        if len(call.args) != 1 or not isinstance(call.args[0], ast.Name) or call.keywords:
            raise ExpressionError(f"{call.func.id}() takes the name of a field or step: {self.text}")
        name = call.args[0].id
        call.args = [ast.Constant(name)]
        return name

    @cached_property
    def code(self) -> CodeType:
        """The text compiled. Parsed against an allow-list, it reaches nothing but the names given to it."""
        return compile(self._parsed[0], f"<{self.grammar.called}>", "eval")

    def function(self, parameters: Iterable[str], constants: Mapping[str, float]) -> Callable[..., Any]:
        """The text as a function of `parameters`, compiled, with the values of `constants` bound."""
        if __debug__:  # left out of the page's Python, like every check of a declaration
            _ = self._parsed
        source: Any = f"lambda {', '.join(parameters)}: ({self.text})"
        if "**" in self.text:
            source = ast.fix_missing_locations(_RealPowers().visit(ast.parse(source, mode="eval")))
        code = compile(source, f"<{self.grammar.called}>", "eval")
        return eval(code, {**SPACE, **constants, "power": math.pow})  # type: ignore[no-any-return]  # noqa: S307

    def __call__(self, values: Mapping[str, Any], functions: Mapping[str, Callable[..., Any]] | None = None) -> Any:
        """The value of the text; `functions` are added to those that it may call, or stand in for them."""
        return eval(self.code, {**SPACE, **functions} if functions else SPACE, values)  # noqa: S307


class _RealPowers(ast.NodeTransformer):
    """Lets a power that may have no real value fail there: Python's ** makes a complex number of (-1) ** 0.5."""

    def visit_BinOp(self, node: ast.BinOp) -> ast.expr:
        self.generic_visit(node)
        whole = isinstance(node.right, ast.Constant) and isinstance(node.right.value, int)
        if not isinstance(node.op, ast.Pow) or whole:
            return node
        return ast.Call(ast.Name("power", ast.Load()), [node.left, node.right], [])


class Formula(Expression):
    """The text of a law, or of one side of a balance: arithmetic alone."""

    def __init__(self, text: str) -> None:
        super().__init__(text, FORMULA)
