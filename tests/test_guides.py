"""The guides: computed numbers stand in them, every worksheet has a place, and they can be read by people in a hurry."""

import itertools
import re
from pathlib import Path

import pytest
import textstat

from calc.answer import Typed, answer
from calc.worksheets import WORKSHEETS
from render.pages import prose

DOCS = Path(__file__).resolve().parent.parent / "docs"
PAGES = sorted(DOCS.rglob("*.md"))
GUIDES = sorted((DOCS / "guides").glob("*.md"))
NAMES = [path.relative_to(DOCS).as_posix() for path in PAGES]


def _words(markdown: str) -> str:
    """A page as running text: no comments, no markup, no headings, no link addresses."""
    text = prose.NUMBER.sub(lambda result: result["text"], markdown)
    text = re.sub(r"<!--.*?-->|<[^>]+>", "", text, flags=re.DOTALL)
    text = re.sub(r"^---\n.*?\n---\n", "", text, flags=re.DOTALL)
    text = re.sub(r"^#.*$|^[!?]{3}.*$|^\|.*$", "", text, flags=re.MULTILINE)
    text = re.sub(r"\[([^\]]+)\]\([^)]+\)", r"\1", text)
    return re.sub(r"[*_`]|^\s*(?:[-*]|\d+\.)\s+", "", text, flags=re.MULTILINE)


@pytest.mark.parametrize("path", PAGES, ids=NAMES)
def test_numbers_in_prose_are_what_calc_gives(path: Path) -> None:
    for number in prose.numbers(path.read_text(encoding="utf-8")):
        wanted = number.us.replace("\u00a0", " ").replace("\u202f", " ").replace("\u2212", "-")
        assert " ".join(number.text.split()).replace("\u2212", "-") == wanted, number.what


@pytest.mark.parametrize("path", GUIDES, ids=lambda path: path.name)
def test_a_guide_has_the_length_of_a_cup_of_tea(path: Path) -> None:
    count = len(_words(path.read_text(encoding="utf-8")).split())
    assert 550 <= count <= 1600, f"{count} words"


@pytest.mark.parametrize("path", GUIDES, ids=lambda path: path.name)
def test_a_guide_reads_at_about_grade_eight(path: Path) -> None:
    grade = textstat.flesch_kincaid_grade(_words(path.read_text(encoding="utf-8")))
    assert grade <= 8.5, f"grade {grade:.1f}"


def test_every_worksheet_stands_in_exactly_one_guide() -> None:
    result = [
        key for path in PAGES for key in re.findall(r"<!-- worksheet: ([a-z-]+) -->", path.read_text(encoding="utf-8"))
    ]
    assert sorted(result) == sorted(WORKSHEETS)


def test_every_worksheet_names_the_guide_it_stands_in() -> None:
    for path in GUIDES:
        for key in re.findall(r"<!-- worksheet: ([a-z-]+) -->", path.read_text(encoding="utf-8")):
            assert WORKSHEETS[key].guide == path.stem, key


@pytest.mark.parametrize("path", PAGES, ids=NAMES)
def test_a_page_has_one_title_and_no_skipped_level(path: Path) -> None:
    levels = [len(match) for match in re.findall(r"^(#+) ", path.read_text(encoding="utf-8"), flags=re.MULTILINE)]
    assert levels.count(1) == 1
    assert all(after - before <= 1 for before, after in itertools.pairwise(levels))


@pytest.mark.parametrize("path", PAGES, ids=NAMES)
def test_no_page_shouts(path: Path) -> None:
    text = _words(path.read_text(encoding="utf-8"))
    assert "!" not in text
    assert not re.search(r"\b(?:oops|please|invalid|click here)\b", text, flags=re.IGNORECASE)


def test_the_glossary_is_in_order_and_says_each_thing_once() -> None:
    terms = re.findall(r"^## (.+)$", (DOCS / "glossary.md").read_text(encoding="utf-8"), flags=re.MULTILINE)
    assert terms == sorted(terms, key=str.casefold)
    assert len(terms) == len(set(terms))


# Words of the trade that no guide may use before it has said in plain words what they are: at their first use, in that
# sentence or a neighbor of it. Each stands with what counts as saying it.
PLAIN_WORDS = {
    r"emitters?": r"floors?|baseboard|radiators?|ducts",
    r"conductance": r"each degree",
    r"base temperature": r"needs no heat",
    r"(?:higher|lower) heating value": r"steam",
}


@pytest.mark.parametrize("path", GUIDES, ids=lambda path: path.name)
@pytest.mark.parametrize("term", PLAIN_WORDS)
def test_a_word_of_the_trade_is_said_in_plain_words_first(path: Path, term: str) -> None:
    text = _words(path.read_text(encoding="utf-8").partition("\n## What next")[0])
    sentences = re.split(r"(?<=[.?!])\s+", " ".join(text.split()))
    uses = [place for place, sentence in enumerate(sentences) if re.search(rf"\b{term}\b", sentence, re.IGNORECASE)]
    if uses:
        near = " ".join(sentences[max(0, uses[0] - 1) : uses[0] + 2])
        assert re.search(rf"\b(?:{PLAIN_WORDS[term]})", near, re.IGNORECASE), sentences[uses[0]]


# ---- each guide is opened by a drawing ---------------------------------------------------------------------------

# Guides in which a drawing would teach nothing, each with the reason.
UNDRAWN = {
    "faults": "A list of signs and their causes: who comes with a fault looks for a word, and no picture holds them all.",
    "law": "Rules and papers by country: their words count, and a picture of a rule is no rule.",
    "plan": "It judges all parts of the reader's plan in a table, which is the picture; the parts are drawn in their guides.",
    "questions": "Short answers without a common idea, each with a link to the guide that draws it.",
    "service": "A calendar of what is looked after and when, which is a table.",
}
DRAWN = re.compile(r"<!-- (?:drawing|piping): (?!symbols)(?P<name>[a-z-]+) -->")


def _is_opened_by_a_drawing(path: Path) -> bool:
    """Whether its first worksheet, on top of the page, has a drawing, or one stands in the first half of its text."""
    markdown = path.read_text(encoding="utf-8")
    placed, sheet = DRAWN.search(markdown), re.search(r"<!-- worksheet: ([a-z-]+) -->", markdown)
    shown = sheet is not None and WORKSHEETS[sheet[1]].picture is not None
    return shown or (placed is not None and placed.start() < len(markdown) / 2)


@pytest.mark.parametrize("path", GUIDES, ids=lambda path: path.name)
def test_a_guide_is_opened_by_a_drawing_or_is_named_as_one_without(path: Path) -> None:
    assert _is_opened_by_a_drawing(path) != (path.stem in UNDRAWN)


def test_every_guide_named_as_one_without_a_drawing_is_there() -> None:
    assert UNDRAWN.keys() <= {path.stem for path in GUIDES}


def test_no_drawing_stands_on_two_pages() -> None:
    names = [drawing["name"] for path in PAGES for drawing in DRAWN.finditer(path.read_text(encoding="utf-8"))]
    shown = [sheet.picture.name for sheet in WORKSHEETS.values() if sheet.picture]
    assert len(names + shown) == len(set(names + shown))


def test_a_limit_is_told_in_the_other_unit_as_the_worksheets_tell_it() -> None:
    """20 F° are 11.1 K: who is to keep at least that keeps 12, not 11."""
    (limit, plain) = prose.numbers(
        "<!-- number: 20 F° at least -->20 °F<!-- /number --> <!-- number: 20 F° -->20 °F<!-- /number -->"
    )
    assert (limit.us, limit.si) == ("20\N{NO-BREAK SPACE}°F", "12\N{NO-BREAK SPACE}K")
    assert (plain.us, plain.si) == ("20\N{NO-BREAK SPACE}°F", "11\N{NO-BREAK SPACE}K")
    hot = answer("heat-dump", {"store_top": Typed("198 °F"), "altitude": Typed("5,000 ft")}, "si")
    assert f"keep at least {limit.si}" in " ".join(piece.text for piece in hot.advice)
