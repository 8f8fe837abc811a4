"""A condition in text over the numbers of a worksheet: `store_top >= boiling - margin and emitter == 'floor'`."""

import ast
from collections.abc import Mapping
from functools import cache

from calc.engine.fields import DeclarationError
from calc.law import FUNCTIONS, SPACE


class Condition:
    """A condition in text over fields, givens and steps: "store_top >= boiling_here - margin and emitter == 'floor'".

    `missing(x)` is true when a step has no value, `assumed(x)` when nobody gave the field, `given(x)` when one did.
    Without a value that it reads, a condition does not hold; where it asks missing(x) first, that decides.
    """

    ALLOWED = (
        ast.Expression, ast.BinOp, ast.UnaryOp, ast.Call, ast.Name, ast.Constant, ast.Load,
        ast.Add, ast.Sub, ast.Mult, ast.Div, ast.Pow, ast.USub,
        ast.Compare, ast.BoolOp, ast.And, ast.Or, ast.Not, ast.Lt, ast.LtE, ast.Gt, ast.GtE, ast.Eq, ast.NotEq,
    )  # fmt: skip
    ASKED = ("missing", "assumed", "given")

    def __init__(self, text: str) -> None:
        tree = ast.parse(text, mode="eval")
        self.text = text
        self.names: set[str] = set()
        self.asked: set[str] = set()
        perhaps: set[str] = set()  # what missing() asks for: the condition itself says what its absence means
        for node in ast.walk(tree):
            if not isinstance(node, self.ALLOWED):
                raise DeclarationError(f"{type(node).__name__} is not allowed in a condition: {text}")
            if isinstance(node, ast.Name):
                self.names.add(node.id)
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in self.ASKED:
                asked = node.args[0]
                if not isinstance(asked, ast.Name):
                    raise DeclarationError(f"{node.func.id}() takes the name of a field or step: {text}")
                self.asked.add(asked.id)
                if node.func.id == "missing":
                    perhaps.add(asked.id)
                node.args = [ast.copy_location(ast.Constant(asked.id), asked)]
        self.names -= FUNCTIONS.keys() | set(self.ASKED)
        self._needed = {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)} & self.names - perhaps
        # Checked against the allow-list above, so evaluating the code reaches nothing but the names given to it.
        self.code = compile(ast.fix_missing_locations(tree), "<condition>", "eval")

    def __call__(self, values: Mapping[str, float | str | None], origins: Mapping[str, str]) -> bool:
        for name in self._needed:
            if values.get(name) is None:
                return False
        space = SPACE
        if self.asked:
            space = SPACE | {
                "missing": lambda name: values.get(name) is None,
                "assumed": lambda name: origins.get(name) in ("typical", "example"),
                "given": lambda name: origins.get(name) in ("typed", "link", "computed"),
            }
        return bool(eval(self.code, space, values))  # noqa: S307


@cache
def condition(text: str) -> Condition:
    return Condition(text)
