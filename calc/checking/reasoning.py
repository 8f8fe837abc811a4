"""What can be told of a condition without any numbers: what its parts measure, and whether it can hold at all."""

import ast
from collections.abc import Collection, Iterator, Mapping

from calc.engine.conditions import Condition

# Numbers that say how many or how much of something: they scale any quantity, and plain numbers may stand beside them.
PLAIN = ("count", "factor", "fraction", "exponent", "rate")
# What is between two of a kind that counts from somewhere.
DIFFERENCES = {
    "temperature": "temperature_difference",
    "pressure_gauge": "pressure_difference",
    "pressure_absolute": "pressure_difference",
}


def can_hold(condition: Condition, choices: Mapping[str, str], there: Collection[str]) -> bool:
    """Whether the condition may hold while these choices are made; what is `there` always has a value."""
    return _told(condition.expression.tree, choices, there) is not False


def _told(node: ast.expr, choices: Mapping[str, str], there: Collection[str]) -> bool | None:
    """What the choices alone say of a part of a condition; None where numbers decide."""
    if isinstance(node, ast.BoolOp):
        parts = [_told(value, choices, there) for value in node.values]
        decides = isinstance(node.op, ast.Or)
        if decides in parts:
            return decides
        return None if None in parts else not decides
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not):
        told = _told(node.operand, choices, there)
        return None if told is None else not told
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "missing":
        asked = node.args[0]
        return False if isinstance(asked, ast.Constant) and asked.value in there else None
    for name, text, operator in _compared_with_texts(node):
        if name in choices and isinstance(operator, ast.Eq | ast.NotEq):
            return (choices[name] == text) == isinstance(operator, ast.Eq)
    return None


def _compared_with_texts(node: ast.AST) -> Iterator[tuple[str, str, ast.cmpop]]:
    if isinstance(node, ast.Compare) and len(node.ops) == 1:
        left, right = node.left, node.comparators[0]
        if isinstance(left, ast.Constant):
            left, right = right, left
        if isinstance(left, ast.Name) and isinstance(right, ast.Constant) and isinstance(right.value, str):
            yield left.id, right.value, node.ops[0]


def texts_compared(condition: Condition) -> list[tuple[str, str]]:
    """Each choice that the condition compares with a text, and the text."""
    return [pair[:2] for node in ast.walk(condition.expression.tree) for pair in _compared_with_texts(node)]


def mismatches(condition: Condition, kinds: Mapping[str, str]) -> Iterator[str]:
    """A sentence for every place where the condition sets unlike things beside each other."""
    for node in ast.walk(condition.expression.tree):
        if isinstance(node, ast.Compare):
            if len(node.ops) > 1:
                yield "one comparison at a time: write a < b and b < c"
            yield from _unlike(ast.unparse(node), [node.left, *node.comparators], node.ops, kinds)
        elif isinstance(node, ast.BinOp):
            if "choice" in (_kind(node.left, kinds), _kind(node.right, kinds)):
                yield f"{ast.unparse(node)} reckons with a choice"
            elif isinstance(node.op, ast.Add | ast.Sub) and _kind(node, kinds) == "unlike":
                yield f"{ast.unparse(node)} adds {_kind(node.left, kinds)} and {_kind(node.right, kinds)}"


def _unlike(text: str, parts: list[ast.expr], signs: list[ast.cmpop], kinds: Mapping[str, str]) -> Iterator[str]:
    there = [_kind(part, kinds) for part in parts]
    if "unlike" in there:
        return  # told where it is added
    if "choice" in there and not all(isinstance(sign, ast.Eq | ast.NotEq) for sign in signs):
        yield f"{text} orders a choice, which can only be == or !="
    known = {condition for condition in there if condition not in ("", "text", "number", *PLAIN)}
    if "text" in there and known - {"choice"}:
        yield f"{text} compares {(known - {'choice'}).pop()} with a text"
    elif "choice" in there and "text" not in there and there.count("choice") < len(there):
        yield f"{text} compares a choice with what is none of its options"
    elif len(known) > 1:
        yield f"{text} compares {' and '.join(sorted(known))}"
    elif known and known != {"choice"} and "number" in there:
        zero = any(isinstance(part, ast.Constant) and part.value == 0 for part in parts)
        if not zero:
            yield f"{text} compares {known.pop()} with a number that has no unit: bring it as a Given"


def _kind(node: ast.expr, kinds: Mapping[str, str]) -> str:
    """The kind of a part: a kind's name, "text", "number" (a plain one), "unlike" or, where it cannot be told, ""."""
    if isinstance(node, ast.Constant):
        return "text" if isinstance(node.value, str) else "number"
    if isinstance(node, ast.Name):
        return kinds.get(node.id, "")
    if isinstance(node, ast.UnaryOp):
        return _kind(node.operand, kinds)
    if isinstance(node, ast.Call):
        assert isinstance(node.func, ast.Name)
        inside = {_kind(argument, kinds) for argument in node.args} - {"number"}
        return inside.pop() if node.func.id in ("max", "min") and len(inside) == 1 else ""
    if isinstance(node, ast.BinOp):
        return _of_two(node.op, _kind(node.left, kinds), _kind(node.right, kinds))
    return ""


def _of_two(sign: ast.operator, left: str, right: str) -> str:
    if isinstance(sign, ast.Mult):
        for this, other in ((left, right), (right, left)):
            if this in ("number", *PLAIN):
                return other
        return ""
    if isinstance(sign, ast.Div):
        return left if right in ("number", *PLAIN) else ""
    if "" in (left, right) or not isinstance(sign, ast.Add | ast.Sub):
        return ""
    if left == "temperature" and right == "number":
        return left  # so many kelvin above or below it
    if left == right:
        return DIFFERENCES.get(left, left) if isinstance(sign, ast.Sub) else left
    if left in DIFFERENCES and right == DIFFERENCES[left]:
        return left
    if right in DIFFERENCES and left == DIFFERENCES[right] and isinstance(sign, ast.Add):
        return right
    plain = ("number", *PLAIN)
    return left if left in plain and right in plain else "unlike"
