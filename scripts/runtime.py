"""Makes the Python that runs in the page: `assets/python/` of the built site.

What is made, in this order, each step kept under `.cache/runtime` until what it was made from changes:

1. The standard library from npm, byte-compiled with docstrings, asserts and lines left out (`pyodide py-compile`,
   `lean.py`). Compiling it in the page instead is most of the time that an ordinary start takes.
2. `wheel-<digest>/`: `calc` and `render` as one wheel, its templates compiled to modules; Jinja2; MarkupSafe without
   its C part. They are entered into a lock file (`pyodide lockfile add-wheels`) and byte-compiled.
3. What our code turns out to use when all of it is imported and every worksheet is run (`list_used.mjs`): modules of
   the library and functions of the interpreter.
4. `library-<digest>/`: of the compiled standard library these modules, and a few for what goes wrong (`ALWAYS_KEPT`).
   `pyodide-<digest>/`: the loader and the interpreter from npm, this in two parts: what is used, and the rest, which
   comes when something asks for it (`interpreter.py`).
5. `snapshot-<digest>/`: the memory of a Python that has imported all of it (`make_snapshot.mjs`), which a page takes
   instead of 1 to 4 where its line is fast enough and the snapshot is as it should be.
6. Libraries that are fetched when something asks for them (`LATER`): wheels in the same lock file, by which an ordinary
   visit does not grow.
7. `start.js`: `interpreter_rest.js` and `start_python.js` with the names above and the lock file in it. The site has it
   inside its worker.

Every name but `start.js` carries a digest of its content, so those files may be cached for ever, and a page can never
mix two builds: `start.js`, or the worker that holds it, is asked for anew at each visit and names the rest. Equal
sources make equal bytes.

What a worker at assets/js/worker.js has to do:

    import { build, startPython } from "../python/start.js";
    const pyodide = await startPython({ onProgress: (what) => postMessage({ progress: what }) });
    const render = pyodide.pyimport("render");  // and then call its functions

It is a module worker, and its own response carries the policy `WORKER_POLICY`. `startPython` rejects when a file is
missing, damaged or refused; but a host may fall silent, so whoever started the worker keeps a timer, set anew at each
message, and gives up after a silence.
"""

from __future__ import annotations

import ast
import hashlib
import importlib.metadata
import json
import os
import shutil
import subprocess
import sys
import sysconfig
import tempfile
import tomllib
import zipfile
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

import deflate

import interpreter
from lean import HOLLOW, HOLLOWED, HOLLOWED_LIBRARY, LEFT_OUT, TAKEN_UP, lean
from render import templating
from toolchain import ROOT, locked, node

NPM = ROOT / "node_modules" / "pyodide"
CACHE = ROOT / ".cache" / "runtime"
SOURCES = (ROOT / "calc", ROOT / "site_overrides" / "render")
LIBRARIES = ("jinja2", "markupsafe")
LATER = ("segno",)
LOADER = ("pyodide.mjs", "pyodide.asm.js", "pyodide.asm.wasm")
LIBRARY = "python_stdlib.zip"
PACKED = ".pack"
REST = "rest.wasm"
LOCK = "pyodide-lock.json"
FOR_NODE = (LOCK, "package.json")  # beside them: what Node asks for
REST_LOADER = ROOT / "site_overrides" / "interpreter_rest.js"
START_PYTHON = ROOT / "site_overrides" / "start_python.js"
LIST_USED = ROOT / "scripts" / "list_used.mjs"
USED = "used.json"
MAKE_SNAPSHOT = ROOT / "scripts" / "make_snapshot.mjs"

WORKER_POLICY = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'"

LONG = 300  # characters of a line that a reader of errors wants: Node shows the line of a packed file
RECIPE = ("interpreter.py", "lean.py", "runtime.py", "same_each_time.mjs", "wasm.py")

# Kept whether or not a run used them: what a traceback, a date or a text in a rare encoding asks for.
ALWAYS_KEPT = (
    *("traceback", "linecache", "tokenize", "token", "warnings", "datetime"),
    *("decimal", "numbers", "random", "bisect", "hashlib", "unicodedata"),
    *("stringprep", "encodings", "encodings.aliases", "encodings.ascii", "encodings.charmap", "encodings.cp1252"),
    *("encodings.cp437", "encodings.idna", "encodings.latin_1", "encodings.punycode", "encodings.raw_unicode_escape"),
    *("encodings.unicode_escape", "encodings.utf_8", "encodings.utf_8_sig", "encodings.utf_16", "encodings.utf_32"),
)
# SOURCE_DATE_EPOCH of everything made here: zip files know no earlier day, and byte code then carries no date at all.
EPOCH = 315532800
ZIP_DATE = (1980, 1, 1, 0, 0, 0)


def publish(site: Path) -> None:
    """Put the page's Python into `site`/assets/python, making what has changed."""
    library = kept_folder("compiled", digest_of(_version(), *_files(NPM, LIBRARY)), _compile_library)
    wheels = kept_folder("wheels", digest_of(_version(), *_source_files()), _make_wheels)
    looked_at = digest_of(library.name, wheels.name, LIST_USED)
    used = json.loads(
        kept_folder("used", looked_at, lambda out: _look(library, wheels, out)).joinpath(USED).read_text()
    )
    modules, seen = used.pop("modules"), interpreter.Seen(**used)
    trimmed = kept_folder(
        "library", digest_of(library.name, *modules), lambda out: _trim_library(library, modules, out)
    )
    made_of = digest_of(_version(), str(seen), MAKE_SNAPSHOT, START_PYTHON, *_files(NPM, *LOADER))
    parted = kept_folder("pyodide", made_of, lambda out: _part(seen, out))
    made_from = digest_of(parted.name, trimmed.name, wheels.name, MAKE_SNAPSHOT, REST_LOADER)
    snapshot = kept_folder("snapshot", made_from, lambda out: _make_snapshot(parted, trimmed, wheels, modules, out))

    out = site / "assets" / "python"
    shutil.rmtree(out, ignore_errors=True)
    loader = _files(parted, *LOADER, REST)
    names = {"pyodide": f"pyodide-{digest_of(*map(content_digest, loader))}/"}
    (out / names["pyodide"]).mkdir(parents=True)
    for path in loader:
        shutil.copyfile(path, out / names["pyodide"] / path.name)
    names["library"] = _place_archive(trimmed / LIBRARY, out, "library")
    lock = json.loads((wheels / LOCK).read_text(encoding="utf-8"))
    for package in lock["packages"].values():
        package["file_name"] = _place_archive(wheels / package["file_name"], out, "wheel")
    told = json.loads((snapshot / "told.json").read_text(encoding="utf-8"))
    memory = snapshot / "python.memory"
    told |= {"path": _place(memory, out, "snapshot"), "digest": content_digest(memory)}
    _write_start(out, {**names, "lock": lock, "snapshot": told})


def _write_start(out: Path, files: dict[str, Any]) -> None:
    source = "\n".join(path.read_text(encoding="utf-8") for path in (REST_LOADER, START_PYTHON))
    files["build"] = hashlib.sha256(json.dumps([files, source], sort_keys=True).encode()).hexdigest()[:12]
    start = f"const FILES = {json.dumps(files, sort_keys=True, separators=(',', ':'))};\n\n{source}"
    (out / "start.js").write_text(start, encoding="utf-8", newline="\n")


def _place(path: Path, out: Path, kind: str) -> str:
    """Copy a file into a folder named by its content and return the name below `out`."""
    folder = out / f"{kind}-{content_digest(path)[:12]}"
    folder.mkdir()
    shutil.copyfile(path, folder / path.name)
    return f"{folder.name}/{path.name}"


def _place_archive(path: Path, out: Path, kind: str) -> str:
    """The same for an archive as `_pack` has packed it; the name that is returned is the archive's own."""
    return _place(_packed(path), out, kind).removesuffix(PACKED)


def _pack(path: Path) -> None:
    """Pack an archive as a whole, which makes it a fifth smaller than each of its files packed.

    Hosts pack no archives, so start_python.js unpacks it.
    """
    _packed(path).write_bytes(gzipped(path.read_bytes()))


def _packed(path: Path) -> Path:
    return path.with_name(f"{path.name}{PACKED}")


# --- the standard library -----------------------------------------------------------------------------------------


def _compile_library(out: Path) -> None:
    with zipfile.ZipFile(NPM / LIBRARY) as whole:
        texts = {name: whole.read(name) for name in whole.namelist() if not name.endswith("/")}
    hollow = {name: (TAKEN_UP.get(name, "") + HOLLOW).encode() for name in HOLLOWED_LIBRARY}
    _write_zip(out / LIBRARY, {**texts, **hollow}.items())
    _pyodide("py-compile", "--silent", "--no-keep", LIBRARY, cwd=out)
    _settle(out / LIBRARY)


def _trim_library(library: Path, modules: list[str], out: Path) -> None:
    """Keep of the compiled standard library the modules that the page's Python loads, and those always kept."""
    wanted = {*ALWAYS_KEPT, *modules}
    wanted |= {package.rpartition(".")[0] for package in wanted}
    with zipfile.ZipFile(library / LIBRARY) as whole:
        kept = [name for name in whole.namelist() if _module_name(name) in wanted]
        _write_zip(out / LIBRARY, ((name, whole.read(name)) for name in kept))
    _pack(out / LIBRARY)


def _look(library: Path, wheels: Path, out: Path) -> None:
    """Note what was used after all our code was imported and run, in Pyodide, under Node."""
    with tempfile.TemporaryDirectory() as folder:
        marked = Path(folder, "marked.wasm")
        marked.write_bytes(interpreter.marked((NPM / "pyodide.asm.wasm").read_bytes()))
        command = [str(node()), str(LIST_USED), str(NPM), str(marked), str(library), str(wheels)]
        answer = _run([*command, json.dumps(sorted(_imports()))])
    (out / USED).write_text(answer.splitlines()[-1], encoding="utf-8")


def _imports() -> set[str]:
    """Modules that our code asks for anywhere, so that an import inside a function that no run reached is kept too."""
    names = set()
    for path in page_modules():
        for part in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(part, ast.Import):
                names |= {alias.name for alias in part.names}
            elif isinstance(part, ast.ImportFrom) and part.module and not part.level:
                names.add(part.module)
    return {name for name in names if name.partition(".")[0] in sys.stdlib_module_names}


def page_modules() -> list[Path]:
    """Our modules that go into the page: all but those that the wheel leaves out for the build and the command line."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    left_out = [ROOT / name for name in project["tool"]["hatch"]["build"]["targets"]["wheel"]["exclude"]]
    paths = [path for folder in SOURCES for path in sorted(folder.rglob("*.py"))]
    return [path for path in paths if not any(path.is_relative_to(name) for name in left_out)]


def _module_name(file_name: str) -> str | None:
    """The module that a file in the zip holds; None for anything else."""
    name, dot, suffix = file_name.rpartition(".")
    return name.replace("/", ".").removesuffix(".__init__") if dot and suffix == "pyc" else None


# --- the wheels ---------------------------------------------------------------------------------------------------


def _make_wheels(out: Path) -> None:
    _run([sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(out)])
    _compile_templates(next(out.glob("*.whl")))
    for library in (*LIBRARIES, *LATER):
        _repack(library, out)
    info = json.loads((NPM / LOCK).read_text(encoding="utf-8"))["info"]
    (out / "base.json").write_text(json.dumps({"info": info, "packages": {}}), encoding="utf-8")
    wheels = sorted(path.name for path in out.glob("*.whl"))
    _pyodide("lockfile", "add-wheels", "--input", "base.json", "--output", LOCK, *wheels, cwd=out)
    _pyodide("py-compile", "--silent", "--no-keep", ".", cwd=out)
    (out / "base.json").unlink()
    _settle_lock(out / LOCK)


def _compile_templates(wheel: Path) -> None:
    """Put the templates into the wheel as the modules that Jinja2 makes of them: that is half of the first answer."""
    with tempfile.TemporaryDirectory() as folder:
        _run([sys.executable, "-m", "wheel", "unpack", str(wheel), "--dest", folder])
        (content,) = Path(folder).iterdir()
        render = content / "render"
        templates = render / "templates"
        templating.templates().compile_templates(
            render / "compiled", zip=None, ignore_errors=False, filter_func=lambda name: (templates / name).is_file()
        )
        shutil.rmtree(templates)
        _run([sys.executable, "-m", "wheel", "pack", str(content), "--dest-dir", str(wheel.parent)])


def _repack(library: str, out: Path) -> None:
    """Make a pure-Python wheel of an installed package. (MarkupSafe does without its compiled part.)"""
    distribution = importlib.metadata.distribution(library)
    left_out = {".so", ".pyd", ".pyc", ".c", ".pyi"}
    with tempfile.TemporaryDirectory() as folder:
        for file in distribution.files or []:
            if file.suffix not in left_out and file.name not in {"INSTALLER", "REQUESTED", "RECORD", "direct_url.json"}:
                if file.as_posix() in LEFT_OUT:
                    continue
                target = Path(folder, file)
                target.parent.mkdir(parents=True, exist_ok=True)
                if file.as_posix() in HOLLOWED:
                    target.write_text(HOLLOW, encoding="utf-8", newline="\n")
                else:
                    shutil.copyfile(str(distribution.locate_file(file)), target)
        (wheel_file,) = Path(folder).glob("*.dist-info/WHEEL")
        wheel_file.write_text("Wheel-Version: 1.0\nGenerator: runtime\nRoot-Is-Purelib: true\nTag: py3-none-any\n")
        _run([sys.executable, "-m", "wheel", "pack", folder, "--dest-dir", str(out)])


def _settle_lock(path: Path) -> None:
    """Make the compiled wheels as they are published, and enter the digests that they then have."""
    lock = json.loads(path.read_text(encoding="utf-8"))
    for package in lock["packages"].values():
        wheel = path.parent / package["file_name"]
        _settle(wheel)
        _pack(wheel)
        package["sha256"] = content_digest(wheel)
    path.write_text(json.dumps(lock, sort_keys=True), encoding="utf-8")


# --- the interpreter ----------------------------------------------------------------------------------------------


def _part(seen: interpreter.Seen, out: Path) -> None:
    """Put the interpreter there in its two parts, with its loader."""
    module, loader, binary = _files(NPM, *LOADER)
    parts = interpreter.parted(binary.read_bytes(), loader.read_text(encoding="utf-8"), callers(), seen)
    shutil.copyfile(module, out / module.name)
    (out / loader.name).write_text(parts.loader, encoding="utf-8", newline="\n")
    (out / binary.name).write_bytes(parts.main)
    (out / REST).write_bytes(parts.rest)
    (out / "rest.json").write_text(json.dumps(parts.away), encoding="utf-8")
    for name in FOR_NODE:
        shutil.copyfile(NPM / name, out / name)


def callers() -> str:
    """What calls the interpreter by name, beside its loader."""
    return "\n".join(path.read_text(encoding="utf-8") for path in (NPM / LOADER[0], MAKE_SNAPSHOT, START_PYTHON))


# --- the snapshot -------------------------------------------------------------------------------------------------


def _make_snapshot(parted: Path, library: Path, wheels: Path, modules: list[str], out: Path) -> None:
    """Keep the memory of a Python that has imported all that the page may ask for, and what is to be known about it."""
    packages = [str(path) for path in sorted(wheels.glob("*.whl")) if not path.name.startswith(LATER)]
    names = templating.templates().list_templates(filter_func=lambda name: not name.startswith("pages/"))
    lists = (json.dumps(packages), json.dumps(modules), json.dumps(names))
    command = [str(node()), str(MAKE_SNAPSHOT), str(parted), str(library / LIBRARY), *lists]
    memory = out / "python.memory"
    answer = _run([*command, str(memory)])
    memory.write_bytes(gzipped(memory.read_bytes()))
    (out / "told.json").write_text(answer.splitlines()[-1], encoding="utf-8")


# --- small things -------------------------------------------------------------------------------------------------


def gzipped(content: bytes) -> bytes:
    """As small as gzip gets: about 4 % less than zlib makes it, and undone as quickly."""
    return bytes(deflate.gzip_compress(content, 12))


def kept_folder(name: str, digest: str, make: Callable[[Path], None]) -> Path:
    """The folder in the cache that `make` has filled from what `digest` stands for; older ones are removed."""
    folder = CACHE / f"{name}-{digest}"
    with locked("runtime"):
        if folder.is_dir():
            return folder
        CACHE.mkdir(parents=True, exist_ok=True)
        for old in CACHE.glob(f"{name}-*"):
            shutil.rmtree(old)
        unfinished = Path(tempfile.mkdtemp(dir=CACHE))
        try:
            make(unfinished)
            unfinished.rename(folder)
        finally:
            shutil.rmtree(unfinished, ignore_errors=True)
    return folder


def _source_files() -> list[Path]:
    """Everything that the wheels are made from."""
    ours = [path for folder in SOURCES for path in sorted(folder.rglob("*")) if path.is_file()]
    ours = [path for path in ours if "__pycache__" not in path.parts]
    installed = Path(sysconfig.get_path("purelib"))
    records = [path for name in LIBRARIES for path in sorted(installed.glob(f"{name}-*.dist-info/RECORD"))]
    return [*ours, ROOT / "pyproject.toml", *records]


def _files(folder: Path, *names: str) -> list[Path]:
    return [folder / name for name in names]


def _version() -> str:
    """Stands for this recipe and the Python that runs it: what is kept from another one is made again."""
    return sys.version + digest_of(*(ROOT / "scripts" / name for name in RECIPE))


def digest_of(*parts: Path | str) -> str:
    """A short digest of texts and of files with their names."""
    total = hashlib.sha256()
    for part in parts:
        if isinstance(part, Path):
            name = part.relative_to(ROOT).as_posix() if part.is_relative_to(ROOT) else part.name
            total.update(name.encode() + b"\0" + hashlib.sha256(part.read_bytes()).digest())
        else:
            total.update(part.encode() + b"\0")
    return total.hexdigest()[:12]


def content_digest(path: Path) -> str:
    """The whole digest of what a file holds, wherever it lies."""
    return hashlib.sha256(path.read_bytes()).hexdigest()


def _settle(path: Path) -> None:
    """Write a zip of byte code again: in order, without dates, and lean."""
    with zipfile.ZipFile(path) as old:
        entries = [(name, old.read(name)) for name in sorted(old.namelist()) if not name.endswith("/")]
    _write_zip(path, [(name, lean(content) if name.endswith(".pyc") else content) for name, content in entries])


def _write_zip(path: Path, entries: Iterable[tuple[str, bytes]]) -> None:
    with zipfile.ZipFile(path, "w") as new:
        for name, content in entries:
            entry = zipfile.ZipInfo(name, ZIP_DATE)
            entry.external_attr = 0o644 << 16
            new.writestr(entry, content)


def _pyodide(*arguments: str, cwd: Path) -> None:
    _run([str(Path(sys.executable).with_name("pyodide")), *arguments], cwd=cwd)


def _run(command: list[str], cwd: Path = ROOT) -> str:
    """Run a program; what it said is shown if it fails.

    Byte code that it makes has no docstrings, asserts, dates or column numbers: the last are for the marks under a line
    of a traceback, need the source text that the page does not have, and are a quarter of the download of Python code.
    """
    lean = {"PYTHONOPTIMIZE": "2", "PYTHONNODEBUGRANGES": "1", "SOURCE_DATE_EPOCH": str(EPOCH)}
    surroundings = {**os.environ, **lean}
    done = subprocess.run(command, cwd=cwd, env=surroundings, capture_output=True, encoding="utf-8", check=False)
    if done.returncode:
        said = "\n".join(line[:LONG] for line in (done.stdout + done.stderr).splitlines())
        raise RuntimeError(f"{Path(command[0]).name} {command[1]} failed:\n{said}")
    return done.stdout
