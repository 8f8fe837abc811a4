"""Who may import whom: every module has a layer, and imports point downwards only."""

import ast
import functools
import graphlib
import re
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent

# From the ground up: each file or folder imports from the lines above its own. What stands in one line together does not
# know of each other; the files within one folder may.
LAYERS = (
    ("calc/units", "calc/sources.py", "calc/guides.py", "calc/expression.py"),
    ("calc/law.py",),
    ("calc/tables",),
    ("calc/physics",),
    ("calc/piping",),
    ("calc/engine",),
    ("calc/checking",),
    ("calc/vocabulary.py", "calc/plant.py"),
    ("calc/chains",),
    ("calc/worksheets",),
    ("calc/answer.py",),
    ("calc/chosen.py",),
    ("calc/report.py", "calc/rows.py", "comparisons", "site_overrides/render"),
    ("calc/__main__.py", "site_overrides"),
    ("scripts",),
    ("tests",),
)
MARKERS = ("calc/__init__.py", "tests/__init__.py")  # they make a folder a package and import nothing
SOURCES = ("calc", "comparisons", "site_overrides", "scripts", "tests")
# Folders whose files are imported by their bare names.
TOPS = ("site_overrides", "scripts")


def _paths() -> Iterator[Path]:
    for folder in SOURCES:
        for path in sorted((ROOT / folder).rglob("*")):
            # The scripts that are typed as commands have no suffix.
            if path.suffix == ".py" or (path.parent == ROOT / "scripts" and not path.suffix and path.is_file()):
                yield path


def _name(path: Path) -> str:
    """What a file is imported as."""
    place = path.relative_to(ROOT)
    parts = list(place.with_suffix("").parts)[1 if place.parts[0] in TOPS else 0 :]
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


@functools.cache
def _modules() -> dict[str, Path]:
    return {_name(path): path for path in _paths()}


@functools.cache
def _imports(path: Path) -> frozenset[str]:
    """Every module that a file asks for anywhere in it, ours by the name of the file that is meant."""
    result = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            result |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: a relative import"
            parts = {f"{node.module}.{alias.name}" for alias in node.names}
            files = parts & _modules().keys()
            result |= files if files == parts else {*files, str(node.module)}
    return frozenset(result)


def _edges() -> Iterator[tuple[str, str]]:
    """Who imports whom, as paths below the root."""
    for path in _modules().values():
        for other in _imports(path) & _modules().keys():
            yield path.relative_to(ROOT).as_posix(), _modules()[other].relative_to(ROOT).as_posix()


def _layer(place: str) -> int:
    fitting = [
        (len(name), level) for level, names in enumerate(LAYERS) for name in names if f"{place}/".startswith(f"{name}/")
    ]
    assert fitting, f"{place} has no layer"
    return max(fitting)[1]


def _home(place: str) -> str:
    """The name in `LAYERS` that a file stands under."""
    return max((name for name in LAYERS[_layer(place)] if f"{place}/".startswith(f"{name}/")), key=len)


def test_every_file_has_a_layer_and_every_layer_a_file() -> None:
    places = [path.relative_to(ROOT).as_posix() for path in _modules().values()]
    used = {_home(place) for place in places if place not in MARKERS}
    assert used == {name for names in LAYERS for name in names}
    for place in MARKERS:
        assert not _imports(ROOT / place)


def test_imports_point_downwards() -> None:
    for place, other in _edges():
        if other not in MARKERS:
            assert _layer(other) < _layer(place) or _home(other) == _home(place), f"{place} imports {other}"


def _loops(edges: list[tuple[str, str]]) -> list[str]:
    """The first loop in each folder, between its files and the folders in it, each folder taken as one."""
    graphs: dict[str, dict[str, set[str]]] = {}
    for place, other in edges:
        ours, theirs = place.split("/"), other.split("/")
        deep = next(depth for depth, (entry, other) in enumerate(zip(ours, theirs, strict=False)) if entry != other)
        graph = graphs.setdefault("/".join(ours[:deep]), {})
        graph.setdefault(ours[deep], set()).add(theirs[deep])
    gathered = []
    for folder, graph in graphs.items():
        try:
            graphlib.TopologicalSorter(graph).prepare()
        except graphlib.CycleError as loop:
            gathered.append(f"{folder or 'the project'}: {' → '.join(loop.args[1][::-1])}")
    return gathered


def test_there_is_no_loop_between_files_or_folders() -> None:
    assert not _loops([edge for edge in _edges() if edge[1] not in MARKERS])


@pytest.mark.parametrize(
    "edges",
    [
        [("calc/a.py", "calc/b.py"), ("calc/b.py", "calc/a.py")],
        [("calc/x/a.py", "calc/y/b.py"), ("calc/y/c.py", "calc/x/d.py")],
        [("scripts/a.py", "calc/b.py"), ("calc/b.py", "tests/c.py"), ("tests/d.py", "scripts/e.py")],
    ],
)
def test_a_loop_is_found(edges: list[tuple[str, str]]) -> None:
    assert _loops(edges)


def _parts_of(*folders: str) -> dict[str, Path]:
    return {name: path for name, path in _modules().items() if path.relative_to(ROOT).parts[0] in folders}


SKETCHES = ("calc.worksheets.first_sketch",)  # takes whole worksheets, so that it gives their numbers


def test_worksheets_do_not_know_each_other() -> None:
    for name, path in _modules().items():
        if name.startswith("calc.worksheets.") and name not in SKETCHES:
            sideways = [other for other in _imports(path) if other.startswith("calc.worksheets")]
            assert not sideways, f"{name} imports {sideways}"


def test_calc_needs_nothing_but_the_standard_library() -> None:
    for name, path in _parts_of("calc").items():
        for other in _imports(path):
            top = other.partition(".")[0]
            assert top == "calc" or top in sys.stdlib_module_names, f"{name} imports {other}"


def test_calc_neither_reads_nor_writes_files() -> None:
    for name, path in _parts_of("calc").items():
        if name != "calc.__main__":  # the command line may: it is handed the name of a plan file
            outside = _imports(path) & {"pathlib", "os", "io", "shutil", "subprocess", "urllib.request", "socket"}
            assert not outside, f"{name} imports {outside}"
            assert not re.search(r"\bopen\(", path.read_text(encoding="utf-8")), name


def test_no_shown_word_comes_from_a_docstring() -> None:
    for name, path in _parts_of("calc", "comparisons", "site_overrides").items():
        if name != "calc.__main__":
            assert "__doc__" not in path.read_text(encoding="utf-8"), name
