"""Each guide tells one house, and nothing that a reader has read stands on another page of the site again."""

import difflib
import itertools
import re
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import pytest

from calc.answer import answer
from calc.worksheets import WORKSHEETS
from render.pages import prose
from tests.test_houses import TOLD

DOCS = Path(__file__).resolve().parent.parent / "docs"
GUIDES = sorted((DOCS / "guides").glob("*.md"))
SHEET = re.compile(r"<!-- worksheet: ([a-z-]+) -->")


def _house(worksheet: str, example: str = "") -> str:
    """Whose numbers a worksheet shows: the house of its first example, or of the named one."""
    names = [entry.name for entry in WORKSHEETS[worksheet].examples]
    name = next(name for name in names if name.startswith(example))
    return next((house for house in TOLD if name.startswith(house)), "")


def _text(markdown: str) -> str:
    """A page's words without front matter and comments, with its numbers."""
    text = prose.NUMBER.sub(lambda number: number["text"], markdown)
    text = re.sub(r"\A---\n.*?\n---\n", "", text, flags=re.DOTALL)
    return re.sub(r"\]\([^)]*\)|<!--.*?-->|<[^>]+>", "", text, flags=re.DOTALL)


# ---- one house ---------------------------------------------------------------------------------------------------


class Shown(NamedTuple):
    """A quantity of one house, as a guide's section shows it."""

    key: str
    house: str
    section: str
    text: str


def _shown(path: Path) -> Iterator[Shown]:
    """Every quantity that a guide takes from a house: in its sentences as they stand there, and in its worksheets."""
    for section in re.split(r"(?m)^(?=## )", path.read_text(encoding="utf-8")):
        for number in prose.numbers(section):
            slug, key, *changed = number.what.split()
            if slug in WORKSHEETS and all(word.startswith("example=") for word in changed):
                named = re.search(r'example="(.+?)"', number.what)
                yield Shown(key, _house(slug, named[1] if named else ""), section, number.us)
        for slug in SHEET.findall(section):
            sheet = answer(slug, {})
            for key in sheet.inputs:
                yield Shown(key, _house(slug), section, sheet.inputs[key].shown("us"))


def _of_guide(markdown: str) -> str:
    """The house that a guide is about: that of its first worksheet."""
    sheets = SHEET.findall(markdown)
    return _house(sheets[0]) if sheets else ""


@pytest.mark.parametrize("path", GUIDES, ids=lambda path: path.stem)
def test_two_houses_numbers_are_told_apart(path: Path) -> None:
    """Where one quantity stands with the values of two houses, the section of the other house names it."""
    own = _of_guide(path.read_text(encoding="utf-8"))
    values: dict[str, dict[str, set[str]]] = defaultdict(lambda: defaultdict(set))
    everything = list(_shown(path))
    for shown in everything:
        values[shown.key][shown.house].add(shown.text)
    unsaid = {
        (shown.key, shown.house, shown.section.partition("\n")[0])
        for shown in everything
        if len({text for texts in values[shown.key].values() for text in texts}) > 1
        if len(values[shown.key]) > 1 and shown.house != own and shown.house not in " ".join(shown.section.split())
    }
    assert not unsaid


@pytest.mark.parametrize("path", GUIDES, ids=lambda path: path.stem)
def test_the_worksheets_of_a_guide_are_about_its_house(path: Path) -> None:
    """A worksheet about another house stands in a section that names it."""
    markdown = path.read_text(encoding="utf-8")
    for section in re.split(r"(?m)^(?=## )", markdown):
        for slug in SHEET.findall(section):
            assert _house(slug) == _of_guide(markdown) or _house(slug) in " ".join(section.split()), slug


# ---- nothing twice -----------------------------------------------------------------------------------------------


class Paragraph(NamedTuple):
    """A paragraph's words in small letters, with the page on which it stands."""

    page: str
    text: str
    words: frozenset[str]


LEAST = 60  # letters: shorter ones are signposts
ALIKE = 0.75


def _plain(text: str) -> str:
    return " ".join(re.findall(r"[\w°%/]+", text.lower()))


def _paragraphs() -> Iterator[Paragraph]:
    for path in sorted(DOCS.rglob("*.md")):
        for block in re.split(r"\n\s*\n|\n(?=\s*(?:[-*]|\d+\.)\s)", _text(path.read_text(encoding="utf-8"))):
            text = _plain(re.sub(r'^[!?]{3} \w+ ".*?"', "", block.strip()))
            if len(text) > LEAST and not block.lstrip().startswith(("#", "|")):
                yield Paragraph(path.relative_to(DOCS).as_posix(), text, frozenset(text.split()))


def test_no_paragraph_stands_twice() -> None:
    twice = [
        (first.page, second.page, first.text)
        for first, second in itertools.combinations(_paragraphs(), 2)
        if len(first.words & second.words) > len(first.words | second.words) / 2
        if difflib.SequenceMatcher(None, first.text, second.text).ratio() >= ALIKE
    ]
    assert not twice


def test_no_long_sentence_stands_twice() -> None:
    places = defaultdict(set)
    for path in sorted(DOCS.rglob("*.md")):
        for sentence in re.split(r"(?<=[.?:])\s+|\n\s*\n", _text(path.read_text(encoding="utf-8"))):
            if len(_plain(sentence)) > LEAST * 3 // 4:
                places[_plain(sentence)].add(path.name)
    assert not {sentence: pages for sentence, pages in places.items() if len(pages) > 1}


# The pictures in words by which the site explains itself: each is told once.
PICTURES = (r"\bbig pots?\b", r"\bsmall bites\b", r"\blarder\b")


@pytest.mark.parametrize("picture", PICTURES)
def test_a_picture_in_words_is_used_on_one_page(picture: str) -> None:
    pages = [
        path.name for path in DOCS.rglob("*.md") if re.search(picture, _text(path.read_text(encoding="utf-8")), re.I)
    ]
    assert pages == ["index.md"]


def test_no_table_of_a_guide_repeats_one_of_a_worksheet() -> None:
    shown = {
        slug: [{_plain(cell) for row in table.rows for cell in row} for table in answer(slug, {}).tables]
        for path in GUIDES
        for slug in SHEET.findall(path.read_text(encoding="utf-8"))
        if slug != "winter-run"  # its tables are a year's months, and running the year takes long
    }
    for path in GUIDES:
        for table in re.findall(r"(?:^\|.*\n)+", _text(path.read_text(encoding="utf-8")), re.MULTILINE):
            cells = {_plain(cell) for line in table.splitlines() for cell in line.split("|")}
            numbers = {cell for cell in cells if re.match(r"\d", cell)}
            again = [slug for slug, tables in shown.items() for there in tables if len(numbers & there) >= 3]
            assert not again, path.name
