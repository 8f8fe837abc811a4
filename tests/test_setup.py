"""scripts/setup says in one sentence what to do when it cannot do its work, and does nothing twice."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

import toolchain


@pytest.fixture
def clone(tmp_path: Path) -> Path:
    """What scripts/setup reads of the repository, and nothing that it has made."""
    for name in ("scripts", "requirements"):
        shutil.copytree(toolchain.ROOT / name, tmp_path / name, ignore=shutil.ignore_patterns("__pycache__"))
    for name in ("package.json", "package-lock.json", ".npmrc"):
        shutil.copyfile(toolchain.ROOT / name, tmp_path / name)
    return tmp_path


def set_up(clone: Path, **surroundings: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, str(clone / "scripts" / "setup")],
        env={**os.environ, **surroundings},
        capture_output=True,
        encoding="utf-8",
        check=False,
    )


def test_without_python_and_network_it_says_what_to_install(clone: Path) -> None:
    nowhere = str(clone / "nowhere")
    done = set_up(clone, PATH=nowhere, HOME=nowhere, USERPROFILE=nowhere, PYENV_ROOT=nowhere, PIP_NO_INDEX="1")
    assert done.returncode == 1
    assert "install Python 3.13 the way your system does" in done.stderr.splitlines()[-1]
    assert "Traceback" not in done.stderr


def test_when_packages_cannot_be_had_it_says_so_and_the_next_call_goes_on(clone: Path) -> None:
    result = toolchain._find_python()
    assert result
    done = set_up(clone, PATH=os.pathsep.join([str(Path(result).parent), os.environ["PATH"]]), PIP_NO_INDEX="1")
    assert done.returncode == 1
    assert "check the network and run scripts/setup again" in done.stderr.splitlines()[-1]
    assert "Traceback" not in done.stderr
    assert (clone / ".venv").is_dir()
    again = set_up(clone, PIP_NO_INDEX="1")
    assert "Making .venv" not in again.stdout


def test_what_is_done_is_not_done_again() -> None:
    assert toolchain.set_up(("tests",)) is False


def test_a_changed_lock_file_is_installed_again(monkeypatch: pytest.MonkeyPatch) -> None:
    done = toolchain._stamp()
    monkeypatch.setattr(toolchain, "_stamp", lambda: {**done, "npm": "an older digest"})
    assert not toolchain._is_done(toolchain._wanted(()))


def test_a_folder_of_packages_that_is_gone_is_made_again(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setitem(toolchain.LEAVES, "npm", tmp_path / "gone")
    assert not toolchain._is_done(toolchain._wanted(()))
    assert "npm" not in toolchain._stamp()


def test_another_python_is_not_taken_for_ours(tmp_path: Path) -> None:
    liar = tmp_path / "python3.13"
    liar.write_text("#!/bin/sh\necho cpython 3 12\n", encoding="utf-8")
    liar.chmod(0o755)
    assert not toolchain._is_our_python(liar)
    assert not toolchain._is_our_python(tmp_path / "nothing")
    assert toolchain._is_our_python(sys.executable)
