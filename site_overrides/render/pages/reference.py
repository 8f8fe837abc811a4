"""The reference of `calc` for people who call it from Python: what stands in its docstrings, read at build."""

import ast
import importlib.util
import inspect
import pkgutil
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import calc.physics
from render.templating import fill

DOORS = ("calc.answer", "calc.rows", "calc.engine.typed", "calc.engine.sheet", "calc.engine.plan", "calc.units")


@dataclass(frozen=True)
class Thing:
    """A function or a class: how it is called, and the paragraphs that explain it."""

    call: str
    says: tuple[str, ...]


@dataclass(frozen=True)
class Module:
    """A module with what others may use of it."""

    name: str
    says: tuple[str, ...]
    things: tuple[Thing, ...]


def reference() -> str:
    """The whole reference as HTML: the doors to `calc` first, then its physics."""
    physics = [f"calc.physics.{module.name}" for module in pkgutil.iter_modules(calc.physics.__path__)]
    groups = {"The doors": map(_module, DOORS), "The physics": map(_module, physics)}
    return str(fill("pages/reference.html", groups={title: list(modules) for title, modules in groups.items()}))


def _module(name: str) -> Module:
    spec = importlib.util.find_spec(name)
    if spec is None or spec.origin is None:
        raise ValueError(f"the reference names {name}, which is no module")
    tree = ast.parse(Path(spec.origin).read_text(encoding="utf-8"))
    return Module(name, _paragraphs(tree), tuple(_things(tree, name)))


def _things(tree: ast.Module, name: str) -> Iterator[Thing]:
    """What stands in a module without an underscore; what a package has from its own modules is told there."""
    for node in tree.body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_"):
            yield Thing(_call(node), _paragraphs(node))
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith(f"{name}."):
            part = importlib.import_module(str(node.module))
            wanted = {alias.name for alias in node.names}
            source = ast.parse(inspect.getsource(part))
            yield from (
                Thing(_call(inner), _paragraphs(inner))
                for inner in source.body
                if isinstance(inner, ast.FunctionDef | ast.ClassDef) and inner.name in wanted
            )


def _call(node: ast.FunctionDef | ast.ClassDef) -> str:
    if isinstance(node, ast.FunctionDef):
        gives = f" -> {ast.unparse(node.returns)}" if node.returns else ""
        return f"{node.name}({ast.unparse(node.args)}){gives}"
    fields = [ast.unparse(line) for line in node.body if isinstance(line, ast.AnnAssign)]
    return f"class {node.name}({', '.join(fields)})" if fields else f"class {node.name}"


def _paragraphs(node: ast.Module | ast.FunctionDef | ast.ClassDef) -> tuple[str, ...]:
    return tuple(part for part in (ast.get_docstring(node) or "").split("\n\n") if part)
