"""What one build works out and the next one takes: never an old text, and nothing worked out twice."""

from __future__ import annotations

import json
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

import building
import kept
import runtime
import toolchain
from tests import copied

SOURCES = (
    *("calc/physics/water.py", "calc/weather/boston-ma.txt", "comparisons/winter.py", "requirements/build.txt"),
    *("site_overrides/editions/quillbrook/edition.toml", "site_overrides/hooks.py", "site_overrides/charts/draw.js"),
    *("site_overrides/render/templates/plate.html", "pyproject.toml", "package-lock.json"),
)
MARK = "<!-- kept -->"

_asked: list[str] = []


def told(text: str, *, times: int = 1) -> str:
    """A text that somebody has to work out."""
    if not text:
        raise ValueError("nothing to tell")
    _asked.append(text)
    return text * times


@pytest.fixture
def texts(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """The file that builds hand on; each `_texts.cache_clear()` is another run."""
    monkeypatch.setenv(kept.SURROUNDINGS, str(tmp_path / "texts.json"))
    kept._texts.cache_clear()
    _asked.clear()
    yield tmp_path / "texts.json"
    kept._texts.cache_clear()


@pytest.fixture
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A project of which the build sees nothing but a file for each kind of source."""
    monkeypatch.setattr(building, "ROOT", tmp_path)
    monkeypatch.setattr(building, "CACHE", tmp_path / ".cache")
    (tmp_path / ".cache").mkdir()
    for name in SOURCES:
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text("one", encoding="utf-8")
    return tmp_path


def build(text: str) -> str:
    """A build that hands on this text: what it found."""
    with building.kept_texts() as texts:
        found = texts.read_text(encoding="utf-8") if texts.is_file() else ""
        texts.write_text(text, encoding="utf-8")
    return found


def cut_off(texts: Path) -> None:
    texts.write_text("half", encoding="utf-8")
    raise ValueError("cut off")


def test_a_text_is_worked_out_once_and_handed_on(texts: Path) -> None:
    for _ in range(2):
        assert (kept.kept(told, "a"), kept.kept(told, "a", times=2), kept.kept(told, "b")) == ("a", "aa", "b")
    kept.keep()
    kept._texts.cache_clear()
    assert (kept.kept(told, "a"), kept.kept(told, "a", times=2), kept.kept(told, "c")) == ("a", "aa", "c")
    assert _asked == ["a", "a", "b", "c"]


def test_without_a_file_a_run_begins_with_nothing(texts: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv(kept.SURROUNDINGS)
    for _ in range(2):
        kept._texts.cache_clear()
        assert kept.kept(told, "a") == "a"
        kept.keep()
    assert _asked == ["a", "a"]
    assert not texts.exists()


def test_what_fails_is_not_kept(texts: Path) -> None:
    for _ in range(2):
        with pytest.raises(ValueError, match="nothing to tell"):
            kept.kept(told, "")
    kept.keep()
    assert json.loads(texts.read_text(encoding="utf-8")) == {}


def test_what_may_hang_on_more_than_it_is_given_is_refused(texts: Path) -> None:
    with pytest.raises(ValueError, match="may lean on more than it is given"):
        kept.kept(lambda: "a")
    with pytest.raises(TypeError):
        kept.kept(told, texts)  # type: ignore[arg-type]


@pytest.mark.parametrize("name", SOURCES)
def test_a_change_of_a_source_forgets_all(place: Path, name: str) -> None:
    assert (build("first"), build("second")) == ("", "first")
    (place / name).write_text("two", encoding="utf-8")
    assert build("third") == ""
    (place / name).write_text("one", encoding="utf-8")
    assert build("fourth") == ""  # what was older is gone
    assert len(list((place / ".cache").iterdir())) == 1


def test_a_guide_forgets_nothing(place: Path) -> None:
    build("first")
    (place / "docs").mkdir()
    (place / "docs" / "index.md").write_text("A guide.", encoding="utf-8")
    assert build("second") == "first"


def test_nothing_is_kept_of_a_build_that_fails_or_that_saw_two_states(place: Path) -> None:
    with pytest.raises(ValueError, match="cut off"), building.kept_texts() as texts:
        cut_off(texts)
    with building.kept_texts() as texts:
        texts.write_text("of both", encoding="utf-8")
        (place / SOURCES[0]).write_text("two", encoding="utf-8")
    assert not list((place / ".cache").iterdir())


def test_builds_at_the_same_time_do_not_disturb_each_other(place: Path) -> None:
    build("before")
    with building.kept_texts() as one, building.kept_texts() as other:
        assert one != other
        one.write_text("one", encoding="utf-8")
        assert other.read_text(encoding="utf-8") == "before"
    assert build("after") == "one"


def test_bundles_are_made_again_only_when_what_goes_in_has_changed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(runtime, "CACHE", tmp_path / "cache")
    theme, site, runs, esbuild = toolchain.ROOT / "site_overrides" / "theme", tmp_path / "site", [], building._esbuild

    def counted(*options: str, cwd: Path = toolchain.ROOT) -> None:
        runs.append(options)
        esbuild(*options, cwd=cwd)

    def bundled(start: str) -> dict[Path, bytes]:
        shutil.rmtree(site, ignore_errors=True)
        shutil.copytree(theme / "assets", site / "assets")
        (site / building.START).parent.mkdir()
        (site / building.START).write_text(start, encoding="utf-8")
        building.bundle(site)
        return {path: path.read_bytes() for path in site.rglob("*") if path.is_file()}

    monkeypatch.setattr(building, "_esbuild", counted)
    first = bundled("export const startPython = () => 'one';")
    assert bundled("export const startPython = () => 'one';") == first
    assert len(runs) == 4
    other = bundled("export const startPython = () => 'two';")
    assert len(runs) == 8
    assert {path for path in first if first[path] != other[path]} == {site / building.WORKER}

    (listed,) = (tmp_path / "cache").glob(f"bundles-*/{building.BUNDLED}")
    went_in = set(json.loads(listed.read_text(encoding="utf-8")))
    assert building.WORKER in went_in
    assert {name for name in went_in if not (theme / name).is_file()} == {building.START}  # all else is looked at


@pytest.mark.long
def test_the_site_shows_every_change_and_works_out_only_what_has_changed(tmp_path: Path) -> None:
    copy = copied.project(tmp_path / "project")
    (copy / ".cache").mkdir()
    guide = copy / "docs" / "guides" / "storage.md"

    def pages() -> str:
        copied.build(copy, "from pathlib import Path; building.make_pages(Path('made'))")
        return "".join((copy / "made" / name / "index.html").read_text() for name in ("guides/storage", "dealers"))

    first = pages()
    (handed_on,) = (copy / ".cache").iterdir()
    texts = json.loads(handed_on.read_text())
    handed_on.write_text(
        json.dumps({asked: text if text[:1] in "{[" else text + MARK for asked, text in texts.items()})
    )
    guide.write_text(f"{guide.read_text()}\n\nA line more.\n")
    again = pages()
    assert "A line more." in again
    assert again.count(MARK) > guide.read_text().count("<!-- number: ") > 0
    assert again.replace("<p>A line more.</p>\n", "").replace(MARK, "") == first
    # The marks make other texts of which the words are told apart; else nothing is worked out anew.
    new = json.loads(handed_on.read_text()).keys() - texts.keys()
    assert all(json.loads(asked)[0] == "searched" for asked in new)

    worksheet = copy / "calc" / "worksheets" / "stored_heat.py"
    template = copy / "site_overrides" / "render" / "templates" / "pages" / "worksheet.html"
    edition = copy / "site_overrides" / "editions" / "quillbrook" / "edition.toml"
    for path, old, new in (
        (worksheet, 'question="', 'question="In all the world, '),
        (template, "Try again", "Try once more"),
        (edition, 'name = "Quillbrook Stove Barn"', 'name = "Quillbrook Stove Shed"'),
    ):
        text = path.read_text()
        assert old in text
        path.write_text(text.replace(old, new, 1))
    changed = pages()
    assert MARK not in changed
    assert all(new in changed for new in ("In all the world, ", "Try once more", "Quillbrook Stove Shed"))
