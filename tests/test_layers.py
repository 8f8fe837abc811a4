"""Who may import whom: every module has a layer, and imports point downwards only."""

import ast
import re
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent

# From the ground up. A module may import from its own layer only where `SAME` says so, and never from a higher one.
LAYERS = (
    ("calc.units", "calc.sources"),
    ("calc.law",),
    ("calc.tables",),
    ("calc.physics",),
    ("calc.piping",),
    ("calc.engine",),
    ("calc.vocabulary",),
    ("calc.chains",),
    ("calc.worksheets",),
    ("calc.answer",),
    ("calc.report", "render"),
    ("calc.__main__", "hooks"),
)
SAME = ("calc.tables", "calc.physics", "calc.piping", "calc.engine", "calc.chains", "render")


def _modules() -> dict[str, Path]:
    found = {}
    for base, prefix in ((ROOT / "calc", "calc"), (ROOT / "site_overrides" / "render", "render")):
        for path in base.rglob("*.py"):
            parts = path.relative_to(base).with_suffix("").parts
            name = ".".join((prefix, *(part for part in parts if part != "__init__")))
            found[name] = path
    found["hooks"] = ROOT / "site_overrides" / "hooks.py"
    return found


def _layer(name: str) -> int:
    if name == "calc":
        return -1
    for level, names in enumerate(LAYERS):
        if any(name == one or name.startswith(one + ".") for one in names):
            return level
    raise AssertionError(f"{name} has no layer")


def _imports(path: Path) -> set[str]:
    found = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: a relative import"
            found.add(str(node.module))
            found |= {f"{node.module}.{alias.name}" for alias in node.names}
    return found


def test_imports_point_downwards() -> None:
    modules = _modules()
    for name, path in modules.items():
        level = _layer(name)
        for other in _imports(path) & modules.keys():
            if other in ("calc", name):
                continue
            below = _layer(other)
            same = below == level and any(name.startswith(one) and other.startswith(one) for one in SAME)
            assert below < level or same, f"{name} imports {other}"


def test_worksheets_do_not_know_each_other() -> None:
    for name, path in _modules().items():
        if name.startswith("calc.worksheets."):
            sideways = [other for other in _imports(path) if other.startswith("calc.worksheets")]
            assert not sideways, f"{name} imports {sideways}"


def test_calc_needs_nothing_but_the_standard_library() -> None:
    for name, path in _modules().items():
        if not name.startswith("calc"):
            continue
        for other in _imports(path):
            top = other.partition(".")[0]
            assert top == "calc" or top in sys.stdlib_module_names, f"{name} imports {other}"


def test_calc_neither_reads_nor_writes_files() -> None:
    for name, path in _modules().items():
        # The command line may: it is handed the name of a plan file.
        if name.startswith("calc") and name != "calc.__main__":
            outside = _imports(path) & {"pathlib", "os", "io", "shutil", "subprocess", "urllib.request", "socket"}
            assert not outside, f"{name} imports {outside}"
            assert not re.search(r"\bopen\(", path.read_text(encoding="utf-8")), name


def test_no_shown_word_comes_from_a_docstring() -> None:
    for name, path in _modules().items():
        if not name.endswith("__main__"):
            assert "__doc__" not in path.read_text(encoding="utf-8"), name
