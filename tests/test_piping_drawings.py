"""The piping drawings: what is drawn is read back from the page, and nothing hides, touches or strays."""

import dataclasses
import itertools
import re
import xml.etree.ElementTree as ElementTree
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from types import SimpleNamespace

import pytest

import hooks
from calc.piping import parts
from calc.piping.parts import FLOWING, System
from calc.piping.rules import PipingError
from render.drawings.piping import SYSTEMS, figure
from render.drawings.piping.figure import WIDTH

GRID = 5  # on which every part and corner stands

GUIDE = Path(__file__).resolve().parent.parent / "docs/guides/piping.md"
PAGE = SimpleNamespace(file=SimpleNamespace(src_uri="guides/piping.md"), url="guides/piping/")

SMALLEST = 15  # units: 12px where 400 units are 320px wide
# Widths of DejaVu Sans, one of the widest fonts that a reader may have, in thousandths of its size (from its metrics).
WIDE = {"i": 278, "l": 278, "t": 392, "f": 352, "r": 411, "j": 278, " ": 318, "m": 974, "w": 818, "s": 521, "c": 550}
LETTER, CAPITAL, DIGIT = 635, 770, 636
BOLD = 1.13
THICK = {"sv-supply": 5, "sv-return": 4, "sv-tap": 2.5, "sv-plain": 2.5}


@dataclass(frozen=True)
class Box:
    left: float
    top: float
    right: float
    bottom: float
    what: str

    def meets(self, other: "Box") -> bool:
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )


def drawing(key: str, sizes: dict[str, str] | None = None) -> ElementTree.Element:
    """The drawing as it stands in a page, read back."""
    svg = re.search(r"<svg.*?</svg>", figure.figure(key, sizes), re.DOTALL)
    assert svg
    return ElementTree.fromstring(svg[0])  # noqa: S314 - our own


def words_of(svg: ElementTree.Element) -> list[ElementTree.Element]:
    return list(svg.iter("text"))


def width(text: str, bold: bool) -> float:
    total = sum(
        WIDE.get(letter, DIGIT if letter.isdigit() else CAPITAL if letter.isupper() else LETTER) for letter in text
    )
    return total * SMALLEST / 1000 * (BOLD if bold else 1)


def label_boxes(svg: ElementTree.Element) -> list[Box]:
    """Every word as it is drawn (all are centred), and the disc or square of every number instead of its digits."""
    gathered = []
    for word in words_of(svg):
        x, y, text, names = (
            float(word.attrib["x"]),
            float(word.attrib["y"]),
            word.text or "",
            word.attrib["class"].split(),
        )
        assert "sv-mid" in names
        assert "sv-t" in names
        if "sv-onnumber" in names:
            assert width(text, True) <= 22
            gathered.append(Box(x - 11, y - 16.4, x + 11, y + 5.6, f"number {text}"))
        else:
            half = width(text, "sv-b" in names) / 2
            gathered.append(Box(x - half, y - 11.4, x + half, y + 3.6, text))
    return gathered


def stretches(path: str) -> Iterator[tuple[float, float, float, float]]:
    """The straight stretches and hops of a drawn pipe; anything else in its path is an error."""
    tokens = re.findall(r"[A-Z]|-?[\d.]+", path)
    x = y = 0.0
    place = 0
    while place < len(tokens):
        command = tokens[place]
        if command == "M":
            x, y = float(tokens[place + 1]), float(tokens[place + 2])
            place += 3
        elif command in "HV":
            to = float(tokens[place + 1])
            yield (x, y, to, y) if command == "H" else (x, y, x, to)
            x, y = (to, y) if command == "H" else (x, to)
            place += 2
        elif command == "A":
            to, level = float(tokens[place + 6]), float(tokens[place + 7])
            assert level == y, "a hop ends at the height at which it began"
            yield (x, y - 8, to, y)
            x = to
            place += 8
        else:
            raise AssertionError(f"{command} in a pipe")


def pipe_boxes(svg: ElementTree.Element) -> list[Box]:
    gathered = []
    group = svg.find("g")
    assert group is not None
    for element in group.findall("path"):  # those of symbols are in groups of their own
        half = THICK.get(element.attrib["class"])
        if half:
            for x0, y0, x1, y1 in stretches(element.attrib["d"]):
                box = min(x0, x1) - half / 2, min(y0, y1) - half / 2, max(x0, x1) + half / 2, max(y0, y1) + half / 2
                gathered.append(Box(*box, element.attrib["d"]))
    return gathered


@pytest.mark.parametrize("key", SYSTEMS)
def test_every_part_and_run_is_named_in_the_list_and_says_what_it_is_for(key: str) -> None:
    system = SYSTEMS[key]
    html = figure.figure(key)
    rows = re.findall(r'<li data-part="([^"]+)"><b>([^<]+)</b>\. (.+?)</li>', html)
    assert len(rows) == html.count("<li")
    runs = {run.key: run for run in system.runs}
    expected = {part.key for part in system.parts if part.role != "tee"} | runs.keys()
    assert {row[0] for row in rows} == expected
    for item, name, purpose in rows:
        words = runs[item].words if item in runs else system.part(item).name
        assert name.casefold() == words.replace("'", "&#39;").casefold()
        said = re.sub(r"<[^>]+>", "", purpose)
        assert len(said.split()) >= 4, item
        assert said.endswith(".")
    names = [row[1] for row in rows]
    assert len(names) == len(set(names)), "two parts of one name"


@pytest.mark.parametrize("key", SYSTEMS)
def test_every_number_of_the_list_stands_in_the_drawing_once(key: str) -> None:
    html = figure.figure(key)
    drawn = sorted(int(word.text or "") for word in words_of(drawing(key)) if "sv-onnumber" in word.attrib["class"])
    assert drawn == list(range(1, html.count("<li ") + 1))
    # The second list goes on where the first one ends.
    starts = [int(match) for match in re.findall(r'<ol start="(\d+)">', html)]
    counts = [match.count("<li ") for match in re.findall(r"<ol.*?</ol>", html, re.DOTALL)]
    assert starts == [1, 1 + counts[0]]


@pytest.mark.parametrize("key", SYSTEMS)
def test_no_label_touches_another_or_a_pipe(key: str) -> None:
    svg = drawing(key)
    labels, pipes = label_boxes(svg), pipe_boxes(svg)
    assert len(labels) > 20
    assert len(pipes) > 30
    for pair, other in itertools.combinations(labels, 2):
        assert not pair.meets(other), f"{pair.what} and {other.what}"
    for pair, other in itertools.product(labels, pipes):
        assert not pair.meets(other), f"{pair.what} and the pipe {other.what}"


@pytest.mark.parametrize("key", SYSTEMS)
def test_no_label_stands_on_a_part_that_is_not_its_own(key: str) -> None:
    system = SYSTEMS[key]
    containers = {
        "stove",
        "store",
        "tap-tank",
        "tank",
        "open-box",
        "house",
        "floor",
        "boiler",
        "dump",
        "main",
        "duct",
        "furnace",
        "baseboard",
        "taps",
    }
    small = [part for part in system.parts if part.kind.symbol not in containers and part.role != "tee"]
    own = [label for label in label_boxes(drawing(key)) if label.what not in ("T", "P", "F", "H")]
    for label, part in itertools.product(own, small):
        # The slack is for round symbols and for the empty corners of a symbol's box.
        left, top, right, bottom = part.box
        assert not label.meets(Box(left + 2, top + 2, right - 2, bottom - 2, part.key)), f"{label.what} on {part.key}"


@pytest.mark.parametrize("key", SYSTEMS)
def test_no_two_parts_share_a_spot(key: str) -> None:
    system = SYSTEMS[key]
    for part, other in itertools.combinations(system.parts, 2):
        if part.inside == other.key or other.inside == part.key:
            continue
        first, second = Box(*part.box, part.key), Box(*other.box, other.key)
        assert not first.meets(second), f"{part.key} and {other.key}"


def segments(system: System) -> list[tuple[str, tuple[int, int], tuple[int, int]]]:
    return [
        (f"{pipe.start} to {pipe.end}", start, end)
        for pipe in system.pipes
        for start, end in itertools.pairwise(system.points(pipe))
    ]


@pytest.mark.parametrize("key", SYSTEMS)
def test_every_pipe_is_level_or_upright_and_on_the_grid(key: str) -> None:
    for name, start, end in segments(SYSTEMS[key]):
        assert (start[0] == end[0]) != (start[1] == end[1]), name
        assert not any(value % GRID for value in (*start, *end)), name


@pytest.mark.parametrize("key", SYSTEMS)
def test_pipes_meet_only_at_tees_and_cross_only_with_a_hop(key: str) -> None:
    system = SYSTEMS[key]
    places = [(part.x, part.y) for part in system.parts if part.role == "tee"]
    hops = 0
    for (pair, a, b), (other, c, d) in itertools.combinations(segments(system), 2):
        across = (max(min(a[0], b[0]), min(c[0], d[0])), min(max(a[0], b[0]), max(c[0], d[0])))
        down = (max(min(a[1], b[1]), min(c[1], d[1])), min(max(a[1], b[1]), max(c[1], d[1])))
        if across[0] > across[1] or down[0] > down[1]:
            continue  # they are apart
        assert across[0] == across[1], f"{pair} lies on {other}"
        assert down[0] == down[1], f"{pair} lies on {other}"
        spot = (across[0], down[0])
        at_an_end = spot in (a, b), spot in (c, d)
        if at_an_end == (False, False):
            hops += 1
        elif pair != other:
            assert spot in places, f"{pair} touches {other} at {spot}"
    drawn = sum(element.attrib["d"].count("A8 8") for element in drawing(key).iter("path") if "class" in element.attrib)
    assert drawn == hops


@pytest.mark.parametrize("key", SYSTEMS)
def test_pipes_keep_clear_of_parts_that_they_do_not_join(key: str) -> None:
    system = SYSTEMS[key]
    for pipe in system.pipes:
        ends = {parts.split_end(pipe.start)[0], parts.split_end(pipe.end)[0]}
        for start, end in itertools.pairwise(system.points(pipe)):
            box = Box(*map(min, start, end), *map(max, start, end), f"{pipe.start} to {pipe.end}")
            for part in system.parts:
                if part.key not in ends:
                    left, top, right, bottom = part.box
                    assert not box.meets(Box(left, top, right, bottom, part.key)), f"{box.what} runs over {part.key}"


@pytest.mark.parametrize("key", SYSTEMS)
def test_everything_is_inside_the_drawing(key: str) -> None:
    svg = drawing(key)
    height = SYSTEMS[key].height
    assert svg.attrib["viewBox"] == f"0 0 {WIDTH} {height}"
    assert WIDTH == 400
    boxes = [*label_boxes(svg), *pipe_boxes(svg), *(Box(*part.box, part.key) for part in SYSTEMS[key].parts)]
    for box in boxes:
        assert box.left >= 0, box.what
        assert box.right <= WIDTH, box.what
        assert box.top >= 0, box.what
        assert box.bottom <= height, box.what
    assert max(box.bottom for box in boxes) > height - 25, "an empty strip at the foot"


@pytest.mark.parametrize("key", SYSTEMS)
def test_nothing_that_flows_is_drawn_without_its_line_and_arrows(key: str) -> None:
    system = SYSTEMS[key]
    svg = drawing(key)
    classes = [element.attrib.get("class", "") for element in svg.iter("path")]
    for service, arrow in (("supply", "sv-arrow"), ("return", "sv-arrow-open"), ("tap", "sv-arrow-tap")):
        pipes = [pipe for pipe in system.pipes if pipe.service == service]
        assert classes.count(f"sv-{service}") == len(pipes)
        long = [pipe for pipe in pipes if _longest(system, pipe) >= 60]
        assert len(long) <= classes.count(arrow) <= len(pipes)


def _longest(system: System, pipe: parts.Pipe) -> int:
    return max(abs(a[0] - b[0]) + abs(a[1] - b[1]) for a, b in itertools.pairwise(system.points(pipe)))


@pytest.mark.parametrize("key", SYSTEMS)
def test_arrows_point_with_the_flow_on_a_pipe_of_their_service(key: str) -> None:
    system = SYSTEMS[key]
    arrows = [
        element for element in drawing(key).iter("path") if element.attrib.get("class", "").startswith("sv-arrow")
    ]
    services = {"sv-arrow": "supply", "sv-arrow-open": "return", "sv-arrow-tap": "tap"}
    for arrow in arrows:
        numbers = [float(match) for match in re.findall(r"-?[\d.]+", arrow.attrib["d"])]
        (ax, ay), (tx, ty), (bx, by) = zip(numbers[::2], numbers[1::2], strict=True)
        back = (ax + bx) / 2, (ay + by) / 2
        result = [
            pipe
            for pipe in system.pipes
            if pipe.service == services[arrow.attrib["class"]]
            and any(_along(back, (tx, ty), start, end) for start, end in itertools.pairwise(system.points(pipe)))
        ]
        assert len(result) == 1, arrow.attrib["d"]
        assert result[0].service in FLOWING


def _along(back: tuple[float, float], tip: tuple[float, float], start: tuple[int, int], end: tuple[int, int]) -> bool:
    """Whether the arrow lies on the stretch and points the way it goes."""
    on_line = all(
        min(start[i], end[i]) <= round(value[i], 3) <= max(start[i], end[i]) for value in (back, tip) for i in (0, 1)
    )
    same_way = (tip[0] - back[0]) * (end[0] - start[0]) + (tip[1] - back[1]) * (end[1] - start[1]) > 0
    return on_line and same_way


@pytest.mark.parametrize("key", SYSTEMS)
def test_a_drawing_has_a_title_and_a_description_and_hides_its_words(key: str) -> None:
    svg = drawing(key)
    assert svg.attrib["role"] == "img"
    title, desc = svg.find("title"), svg.find("desc")
    assert title is not None
    assert desc is not None
    assert svg.attrib["aria-labelledby"].split() == [title.attrib["id"], desc.attrib["id"]]
    assert title.text == SYSTEMS[key].title
    group = svg.find("g")
    assert group is not None
    assert group.attrib["aria-hidden"] == "true"
    assert not list(svg.findall("text"))
    description = desc.text or ""
    for pump in SYSTEMS[key].of_role("pump"):
        assert f"Round: {pump.name}, " in description
    assert "Without the pump: stove with a water jacket, up to gravity dump, and down again." in description


def test_a_system_that_breaks_the_rules_is_not_drawn(monkeypatch: pytest.MonkeyPatch) -> None:
    system = SYSTEMS["floor"]
    monkeypatch.setitem(SYSTEMS, "broken", dataclasses.replace(system, key="broken", pipes=system.pipes[1:]))
    with pytest.raises(PipingError, match="the piping of 'broken' breaks its rules"):
        figure.figure("broken")


def test_drawings_take_all_their_looks_from_classes_and_keep_their_ids_apart() -> None:
    html = "".join(figure.figure(key) for key in SYSTEMS) + figure.key_list()
    assert not re.search(r'\s(style|fill|stroke|font-size|stroke-width)="', html)
    ids = re.findall(r'\sid="([^"]+)"', html)
    assert ids
    assert len(ids) == len(set(ids))
    assert all(identifier.startswith("piping-") for identifier in ids)
    for used in re.findall(r"url\(#([^)]+)\)", html):
        assert used in ids


def test_a_list_that_was_told_before_is_folded_and_still_there() -> None:
    for fold, expected in ((False, [True, True]), (True, [False, True])):
        html = figure.figure("floor", fold=fold)
        assert [bool(match) for match in re.findall(r'<details class="ss-more"( open)?>', html)] == expected
        assert html.count("<li ") == len(figure.numbered(SYSTEMS["floor"]))


def test_the_guide_shows_every_system_once_and_the_key() -> None:
    shown = re.findall(r"^<!-- piping: ([a-z-]+) -->$", GUIDE.read_text(encoding="utf-8"), re.MULTILINE)
    assert sorted(shown) == sorted([*SYSTEMS, "symbols"])


def test_a_page_shows_the_drawing_and_folds_a_fire_side_that_it_has_told() -> None:
    wanted = ["closed-store", "open-store", "floor", "boiler-exchanger"]
    html = "".join(f"<!-- piping: {key} -->\n" for key in [*wanted, "symbols"])
    page = SimpleNamespace(content=hooks.on_page_content(html, PAGE, None))
    assert "<svg" not in page.content, "the search reads words alone"
    hooks.on_page_context({}, page)
    shown = page.content
    assert "<!--" not in shown
    assert re.findall(r'<svg class="sv sv-pipes"[^>]*aria-labelledby="piping-([a-z-]+)-title', shown) == wanted
    opened = [bool(match) for match in re.findall(r'<details class="ss-more"( open)?><summary>The fire', shown)]
    assert opened == [True, True, False, False]
    assert 'class="ss-key"' in shown


def test_a_page_that_asks_for_a_system_that_is_not_described_is_refused() -> None:
    with pytest.raises(ValueError, match=r"guides/piping\.md asks for the piping of 'steam-engine'"):
        hooks.on_page_content("<!-- piping: steam-engine -->", PAGE, None)


def test_sizes_stand_beside_their_parts_and_in_the_drawing_where_there_is_room() -> None:
    sizes = {"charge-pipe": "1-1/4 in", "store": "500 gal", "stove": "25 kW", "vessel": "59 gal"}
    html = figure.figure("closed-store", sizes)
    for key, size in sizes.items():
        assert re.search(rf'<li data-part="{key}"><b>[^<]+</b>, <span class="ss-number">{size}</span>\. ', html)
    drawn = [word.text for word in words_of(drawing("closed-store", sizes))]
    assert "500 gal" in drawn
    assert "25 kW" in drawn
    assert "1-1/4 in" not in drawn
    svg = drawing("closed-store", sizes)
    for label, other in itertools.combinations(label_boxes(svg), 2):
        assert not label.meets(other), f"{label.what} and {other.what}"


def test_a_size_too_wide_for_its_part_stands_in_the_list_alone() -> None:
    size = "two tanks of 1,200 gal"
    drawn = [word.text for word in words_of(drawing("closed-store", {"store": size}))]
    assert size not in drawn
    assert size in figure.figure("closed-store", {"store": size})


def test_a_size_is_text_and_never_markup() -> None:
    html = figure.figure("closed-store", {"store": "<b>5</b>", "charge-pipe": "<script>"})
    assert "<script>" not in html
    assert "&lt;script&gt;" in html
    assert "<b>5" not in html


def test_a_size_for_a_part_that_is_not_there_is_refused_by_name() -> None:
    with pytest.raises(KeyError, match="closed-store has no part called chimney"):
        figure.figure("closed-store", {"chimney": "6 in"})


def test_a_drawing_with_no_room_for_a_number_says_which() -> None:
    full = figure.Taken([figure.Box(0, 0, WIDTH, SYSTEMS["floor"].height)])
    with pytest.raises(ValueError, match="floor: there is no room for the number of "):
        figure._marks(SYSTEMS["floor"], full)


def test_the_key_shows_every_kind_of_line_and_symbol_that_is_used() -> None:
    html = figure.key_list()
    used = {part.kind.symbol for system in SYSTEMS.values() for part in system.parts}
    in_the_key = {symbol for symbol, *_ in figure._KEY}
    # These carry their name in the drawing, or look like what they are.
    named = {
        "stove",
        "dump",
        "store",
        "tank",
        "open-box",
        "house",
        "floor",
        "baseboard",
        "duct",
        "furnace",
        "boiler",
        "tap-tank",
        "taps",
        "main",
    }
    told = {"tee": "join", "valve": "hand-valve", "plate-double": "plate", "open-vent": "", "feed-tank": ""}
    told |= {"duct-coil": "plate", "cooling-coil": "plate"}
    letters = {f"letter-{entry}": "letter-T" for entry in "TPFH"}
    assert {(told | letters).get(symbol, symbol) for symbol in used - named} - {""} <= in_the_key
    assert html.count("<li>") == len(figure._KEY)
    for letter in "TPFH":
        assert re.search(rf"\b{letter} \w+", html)


def test_no_word_in_a_drawing_is_set_smaller_than_the_rest() -> None:
    css = (GUIDE.parents[2] / "site_overrides/theme/assets/css/drawings.css").read_text(encoding="utf-8")
    sizes = dict(re.findall(r"^\.(sv-[a-z]+) \{[^}]*font-size: (\d+)px", css, re.MULTILINE))
    assert int(sizes["sv-t"]) == SMALLEST
    assert SMALLEST * 320 / WIDTH >= 12
    for key in SYSTEMS:
        svg = drawing(key)
        for group in svg.iter("g"):
            if "scale" in group.attrib.get("transform", ""):
                assert not list(group.iter("text")), "words in something that is scaled"
        for word in words_of(svg):
            assert set(word.attrib["class"].split()) <= {"sv-t", "sv-mid", "sv-b", "sv-onnumber"}
