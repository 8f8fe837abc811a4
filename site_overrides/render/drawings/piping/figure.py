"""A described piping system as a drawing and a numbered list of its parts.

Places come from the description. What is worked out here is what the eye needs: where a pipe hops over another, where
arrows point, and where each number finds room beside its part without touching a pipe or another number.
"""

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import islice, pairwise, product
from typing import Any, NamedTuple

from calc.piping.parts import FLOWING, METAL, Part, Pipe, Place, Service, System, split_end, turned
from calc.piping.ways import Ways
from render.drawings.piping import SYSTEMS
from render.templating import fill

WIDTH = 400  # of every drawing
HOP = 8  # radius of the half circle by which one pipe passes another
BADGE = 11  # radius of a number's disc
CLEAR = 2  # between a number and anything else
LINE = 18  # from one line of words to the next
LETTER = 15  # height of the words; 400 units on a 320px screen make it 12px

_THICK: dict[Service, float] = {"supply": 5, "return": 4, "tap": 2.5, "still": 2.5, "discharge": 2.5}
_ARROWS: dict[Service, tuple[str, int, int]] = {  # class, length and half width
    "supply": ("sv-arrow", 14, 8),
    "return": ("sv-arrow-open", 12, 7),
    "tap": ("sv-arrow-tap", 11, 6),
}
# Where words stand in a symbol, from its middle; and where its number does, if it stands within.
_WORDS: dict[str, Place] = {
    "stove": (0, 30),
    "open-box": (0, 95),
    "main": (-6, 0),
    "taps": (0, 30),
    "house": (0, 12),
    "floor": (0, 29),
    "duct": (135, -6),
    "furnace": (0, 19),
    "tap-tank": (-22, 22),
    "boiler": (0, -2),
}
_NUMBER: dict[str, Place] = {
    "stove": (-41, -58),
    "store": (0, -30),
    "tank": (0, -45),
    "open-box": (0, 45),
    "house": (-84, 12),
    "floor": (-84, 28),
    "tap-tank": (-22, 48),
}
# Symbols that others may stand in keep free only what is drawn in them.
_INNER: dict[str, tuple[tuple[int, int, int, int], ...]] = {
    "store": ((-42, -162, -37, 162), (37, -162, 42, 162), (-42, -162, 42, -150), (-42, 150, 42, 162)),
    "tank": ((-27, -117, -22, 117), (22, -117, 27, 117), (-27, -117, 27, -111), (-27, 111, 27, 117)),
    "open-box": ((-42, -227, -37, 227), (37, -227, 42, 227), (-48, -228, 48, -222), (-42, 221, 42, 227)),
    "duct": ((-165, -62, 165, -58), (-165, 58, 165, 62), (-165, 30, -108, 50), (108, 30, 165, 50)),
    "tap-tank": ((-52, -77, -47, 77), (47, -77, 52, 77), (-52, -77, 52, -73), (-52, 73, 52, 77), (0, -30, 50, 45)),
}
_BESIDE = (2, 5, 9, 14, 20, 27)  # how far a number may stand from its part
_ENOUGH = 60  # more places than this count as plenty
_ALONG = (0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9)  # where along a pipe


class Box(NamedTuple):
    """A rectangle that something takes up."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: "Box") -> bool:
        """Whether the two share any area."""
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )

    def grown(self, by: float) -> "Box":
        """The rectangle with a margin."""
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)


class Words(NamedTuple):
    """Words in the drawing; (x, y) is the middle of their base line."""

    x: float
    y: float
    text: str
    bold: bool = False

    @property
    def box(self) -> Box:
        half = width_of(self.text, bold=self.bold) / 2
        return Box(self.x - half, self.y - 0.78 * LETTER, self.x + half, self.y + 0.25 * LETTER)


class Number(NamedTuple):
    """A number of the list beside its part, or beside its pipe."""

    number: int
    x: int
    y: int
    pipe: bool


class Taken:
    """Boxes of which a number keeps clear, filed by the squares of the drawing that they lie in."""

    SQUARE = 32

    def __init__(self, boxes: Iterable[Box]) -> None:
        self._by_square: defaultdict[tuple[int, int], list[Box]] = defaultdict(list)
        for box in boxes:
            self.add(box)

    def add(self, box: Box) -> None:
        """Keep clear of this one, too."""
        for square in self._squares(box):
            self._by_square[square].append(box)

    def meets(self, box: Box) -> bool:
        """Whether any of them shares area with this one."""
        return any(box.meets(other) for square in self._squares(box) for other in self._by_square[square])

    def _squares(self, box: Box) -> Iterator[tuple[int, int]]:
        left, top, right, bottom = (int(side // self.SQUARE) for side in box)
        return product(range(left, right + 1), range(top, bottom + 1))


@dataclass(frozen=True)
class Drawing:
    """What the template draws, in the order in which it is drawn."""

    system: System
    height: int
    lines: Sequence[Mapping[str, str]]
    arrows: Sequence[Mapping[str, str]]
    dots: Sequence[Place]
    symbols: Sequence[Mapping[str, Any]]
    words: Sequence[Words]
    numbers: Sequence[Number]
    desc: str


def figure(
    key: str, sizes: Mapping[str, str] | None = None, *, unsized: Collection[str] = (), fold: bool = False
) -> str:
    """The drawing of a system with the list of its parts. `sizes` gives parts and runs of pipe a size, as text.

    Parts that are `unsized` are dashed, and the list says that nobody has worked them out.
    With `fold` the list of the fire's side is closed until it is asked for: on a page that has told it before.
    PipingError for a system that breaks the rules, KeyError for one, or for a part with a size, that does not exist.
    """
    if __debug__:  # the page draws what has been checked, and does without the rules
        _check(key)
    system = SYSTEMS[key]
    sizes = dict(sizes or {})
    unknown = sizes.keys() - {item for _, items in system.groups for item in items}
    if unknown:
        raise KeyError(f"{key} has no part called {', '.join(sorted(unknown))}")
    return str(
        fill(
            "drawings/piping.html", drawing=drawn(system, sizes, unsized), groups=_listed(system, sizes, unsized, fold)
        )
    )


@cache
def _check(key: str) -> None:
    from calc.piping.rules import check  # here: most builds draw nothing anew

    check(SYSTEMS[key])


def numbered(system: System) -> dict[str, int]:
    """The number of every part and run in the drawing and its list."""
    keys = [key for _, items in system.groups for key in items]
    return {key: number for number, key in enumerate(keys, start=1)}


def _listed(system: System, sizes: Mapping[str, str], unsized: Collection[str], fold: bool) -> list[dict[str, Any]]:
    numbers = numbered(system)
    runs = {run.key: run for run in system.runs}
    groups: list[dict[str, Any]] = []
    for heading, keys in system.groups:
        rows = []
        for key in keys:
            if key in runs:
                only_metal = all(pipe.material == METAL for pipe in system.pipes if pipe.run == key)
                purpose = f"{runs[key].purpose} Metal only." if only_metal else runs[key].purpose
                name = runs[key].words
            else:
                name, purpose = system.part(key).name, system.part(key).use
            rows.append(
                {
                    "key": key,
                    "number": numbers[key],
                    "name": _capital(name),
                    "purpose": purpose,
                    "size": sizes.get(key, ""),
                    "unsized": key in unsized,
                }
            )
        groups.append({"heading": heading, "rows": rows, "open": bool(groups) or not fold})
    return groups


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def drawn(system: System, sizes: Mapping[str, str], unsized: Collection[str] = ()) -> Drawing:
    """Everything in the drawing, in its place."""
    crossings = _crossings(system)
    arrows = [(pipe, *spot) for pipe in system.pipes if (spot := _arrow_spot(system, pipe, crossings))]
    words = [line for part in system.parts for line in _words(part, sizes.get(part.key, ""))]
    taken = Taken(_taken(system, crossings, [spot for _, spot, _ in arrows], words))
    numbers, labels = _marks(system, taken)
    return Drawing(
        system=system,
        height=system.height,
        lines=[
            {"class": _line_class(pipe), "path": _path(system.points(pipe), crossings)}
            for service in ("discharge", "still", "return", "tap", "supply")
            for pipe in system.pipes
            if pipe.service == service
        ],
        arrows=[_arrow(pipe.service, spot, ahead) for pipe, spot, ahead in arrows],
        dots=[(part.x, part.y) for part in system.parts if part.role == "tee"],
        symbols=[{**_symbol(part), "unsized": part.key in unsized} for part in system.parts if part.role != "tee"],
        words=[*words, *labels],
        numbers=numbers,
        desc=_description(system),
    )


# --- how to read the drawings

_KEY = (
    ("supply", "Supply", "solid and thick, filled arrow. Hot water going out."),
    ("return", "Return", "dashed, open arrow. Cooler water coming back."),
    ("tap", "Tap water", "dash and dot. Cold or hot, good to drink."),
    ("still", "Thin line", "a branch where nothing flows in normal work."),
    ("join", "Dot", "the pipes join."),
    ("hop", "Hop", "the pipes cross and do not join."),
    ("pump", "Pump", "the triangle points the way it pushes."),
    ("hand-valve", "Hand valve", "two triangles and a handle."),
    ("zone-valve", "Zone valve", "two triangles and a motor."),
    ("three-way", "Mixing or diverting valve", "three triangles."),
    ("check", "Check valve", "lets water through one way, towards the bar."),
    ("relief", "Relief valve", "an angle with a spring."),
    ("vessel", "Expansion vessel", "a ring with a wave."),
    ("air-vent", "Air vent", "at a high point."),
    ("drain", "Drain", "at a low point, with a hose end."),
    ("funnel", "Discharge or overflow", "ends where it drains and is seen."),
    ("backflow", "Backflow preventer", "two checks in a box."),
    ("filter", "Air filter", "slanting lines in a box."),
    ("plate", "Exchanger or coil", "a zigzag. Two of them side by side are a double wall."),
    ("letter-T", "Letter in a ring", "an instrument: T temperature, P pressure, F flow, H high limit."),
    ("number", "Round number", "a part in the list."),
    ("pipe-number", "Square number", "a run of pipe in the list."),
)


def key_list() -> str:
    """What the lines and symbols of all the drawings mean."""
    rows = []
    for symbol, name, meaning in _KEY:
        name_only, letter = _letter(symbol)
        rows.append({"symbol": name_only, "letter": letter, "name": name, "meaning": meaning})
    return str(fill("drawings/piping_key.html", rows=rows))


# --- pipes


def _segments(points: Sequence[Place]) -> list[tuple[Place, Place]]:
    return list(pairwise(points))


def _crossings(system: System) -> set[Place]:
    """Where a level stretch of one pipe passes an upright stretch of another."""
    stretches = [stretch for pipe in system.pipes for stretch in _segments(system.points(pipe))]
    level = [stretch for stretch in stretches if stretch[0][1] == stretch[1][1]]
    upright = [stretch for stretch in stretches if stretch[0][1] != stretch[1][1]]
    return {
        (across[0][0], along[0][1])
        for along in level
        for across in upright
        if min(along[0][0], along[1][0]) < across[0][0] < max(along[0][0], along[1][0])
        and min(across[0][1], across[1][1]) < along[0][1] < max(across[0][1], across[1][1])
    }


def _path(points: Sequence[Place], crossings: set[Place]) -> str:
    """The pipe as a path, with a hop at each crossing on a level stretch."""
    steps = [f"M{points[0][0]} {points[0][1]}"]
    for (x0, y0), (x1, y1) in _segments(points):
        if y0 != y1:
            steps.append(f"V{y1}")
            continue
        ahead = 1 if x1 > x0 else -1
        for x in sorted((x for x, y in crossings if y == y0 and min(x0, x1) < x < max(x0, x1)), reverse=ahead < 0):
            steps.append(f"H{x - ahead * HOP}A{HOP} {HOP} 0 0 {1 if ahead > 0 else 0} {x + ahead * HOP} {y0}")
        steps.append(f"H{x1}")
    return "".join(steps)


def _line_class(pipe: Pipe) -> str:
    return {"still": "sv-plain", "discharge": "sv-plain"}.get(pipe.service, f"sv-{pipe.service}")


def _arrow_spot(system: System, pipe: Pipe, crossings: set[Place]) -> tuple[Place, Place] | None:
    """The middle of the pipe's longest clear stretch, and the way ahead there; None if it is short or still."""
    if pipe.service not in FLOWING:
        return None
    best: tuple[float, Place, Place] | None = None
    for (x0, y0), (x1, y1) in _segments(system.points(pipe)):
        length = abs(x1 - x0) + abs(y1 - y0)
        ahead = ((x1 > x0) - (x1 < x0), (y1 > y0) - (y1 < y0))
        marks = sorted(abs(x - x0) + abs(y - y0) for x, y in crossings if _on(x, y, (x0, y0), (x1, y1)))
        stops = [0, *marks, length]
        for start, end in pairwise(stops):
            clear = end - start - HOP * ((start > 0) + (end < length))
            middle = (start + HOP * (start > 0) + end - HOP * (end < length)) / 2
            if clear >= 30 and (best is None or clear > best[0]):
                best = clear, (round(x0 + ahead[0] * middle), round(y0 + ahead[1] * middle)), ahead
    return best[1:] if best else None


def _on(x: int, y: int, start: Place, end: Place) -> bool:
    return min(start[0], end[0]) <= x <= max(start[0], end[0]) and min(start[1], end[1]) <= y <= max(start[1], end[1])


def _arrow(service: Service, spot: Place, ahead: Place) -> dict[str, str]:
    name, length, half = _ARROWS[service]
    back, tip = -length / 2, length / 2
    corners = [(back, -half), (tip, 0), (back, half)]
    turned_corners = [
        (spot[0] + ahead[0] * a - ahead[1] * b, spot[1] + ahead[1] * a + ahead[0] * b) for a, b in corners
    ]
    return {"class": name, "path": "M" + "L".join(f"{x:g} {y:g}" for x, y in turned_corners) + "Z"}


# --- parts


def _symbol(part: Part) -> dict[str, Any]:
    move = f"translate({part.x} {part.y})"
    if part.turn:
        move += f" rotate({part.turn})"
    if part.mirror:
        move += " scale(-1 1)"
    symbol, letter = _letter(part.kind.symbol)
    return {"name": symbol, "move": move, "letter": letter, "x": part.x, "y": part.y + 0.36 * LETTER}


def _letter(symbol: str) -> tuple[str, str]:
    """The symbol's name without its letter, and the letter: "letter-T" is a ring with a T."""
    name, _, letter = symbol.partition("-")
    return (name, letter) if name == "letter" else (symbol, "")


def _words(part: Part, size: str) -> list[Words]:
    """The words inside a part's symbol, its size under them if there is room for it."""
    if not part.kind.inscription:
        return []
    lines = list(part.kind.inscription)
    room = part.kind.width - 12
    if (
        size
        and part.kind.symbol in ("stove", "store", "tank", "open-box", "house", "boiler")
        and width_of(size) <= room
    ):
        lines.append(size)
    dx, dy = turned(*_WORDS.get(part.kind.symbol, (0, 0)), part.turn, part.mirror)
    first = part.y + dy + 0.36 * LETTER - (0 if part.kind.symbol in ("stove", "store") else (len(lines) - 1) * LINE / 2)
    small = part.kind.symbol in ("main", "taps", "baseboard", "duct", "furnace")
    return [
        Words(part.x + dx, first + number * LINE, text, bold=number == 0 and not small)
        for number, text in enumerate(lines)
    ]


@lru_cache(maxsize=256)
def width_of(text: str, *, bold: bool = False) -> float:
    """About how wide the text is, in a wide font: the reader's own is not known."""
    return (
        sum(_WIDTHS.get(letter, 0.76 if letter.isupper() else 0.64) for letter in text) * LETTER * (1.1 if bold else 1)
    )


_WIDTHS = {
    **dict.fromkeys("il.,'|:; ", 0.33),
    **dict.fromkeys("fjrt()-", 0.41),
    "w": 0.82,
    "m": 0.98,
    "M": 0.9,
    "W": 1.0,
}


# --- numbers


def _pipe_boxes(system: System, pipe: Pipe) -> Iterator[Box]:
    half = _THICK[pipe.service] / 2
    for (x0, y0), (x1, y1) in _segments(system.points(pipe)):
        yield Box(min(x0, x1) - half, min(y0, y1) - half, max(x0, x1) + half, max(y0, y1) + half)


def _part_boxes(part: Part) -> Iterator[Box]:
    inner = _INNER.get(part.kind.symbol)
    if inner is None:
        yield Box(*part.box)
    else:
        yield from (
            Box(part.x + left, part.y + top, part.x + right, part.y + bottom) for left, top, right, bottom in inner
        )


def _taken(system: System, crossings: set[Place], arrows: Sequence[Place], words: Sequence[Words]) -> Iterator[Box]:
    """Everything that a number has to keep clear of."""
    for pipe in system.pipes:
        yield from _pipe_boxes(system, pipe)
    for part in system.parts:
        yield from _part_boxes(part)
    for x, y in crossings:
        yield Box(x - HOP - 2, y - HOP - 2, x + HOP + 2, y + 2)
    for x, y in arrows:
        yield Box(x, y, x, y).grown(9)
    for line in words:
        yield line.box


def _marks(system: System, taken: Taken) -> tuple[list[Number], list[Words]]:
    """A place for every number and label, those with the fewest places to choose from first, pipes last.

    ValueError if one finds no room: then the description has to make some.
    """
    numbers = numbered(system)
    places: dict[str, Place] = {}
    labels: list[Words] = []
    for part in system.parts:
        if part.kind.symbol in _NUMBER:
            dx, dy = _NUMBER[part.kind.symbol]
            places[part.key] = part.x + dx, part.y + dy
            taken.add(_disc(places[part.key]))

    def fits(box: Box) -> bool:
        left, top, right, bottom = grown = box.grown(CLEAR)
        return left >= 0 and top >= 0 and right <= WIDTH and bottom <= system.height and not taken.meets(grown)

    def pairs(key: str) -> Iterator[tuple[Place, Words | None]]:
        for place in _places(system, key):
            if fits(_disc(place)):
                for label in _label_places(system, key, place):
                    if label is None or (fits(label.box) and not label.box.meets(_disc(place))):
                        yield place, label

    runs = {run.key for run in system.runs}
    waiting = [key for key in numbers if key not in places]
    choices = {key: sum(1 for _ in islice(pairs(key), _ENOUGH)) for key in waiting}
    for key in sorted(waiting, key=lambda key: (key in runs, choices[key])):
        place, label = next(pairs(key), (None, None))
        if place is None:
            raise ValueError(f"{system.key}: there is no room for the number of {key}")
        places[key] = place
        taken.add(_disc(place))
        if label:
            labels.append(label)
            taken.add(label.box)
    return [Number(numbers[key], *place, key in runs) for key, place in places.items()], labels


def _label_places(system: System, key: str, number: Place) -> Iterator[Words | None]:
    """Where a part's label could stand: beside its number, or beside the part itself. None for a part without one."""
    part = next((part for part in system.parts if part.key == key), None)
    if part is None or not part.kind.label:
        yield None
        return
    text, half = part.kind.label, width_of(part.kind.label) / 2
    for left, top, right, bottom in (_disc(number), part.box):
        middle, y = (left + right) / 2, (top + bottom) / 2 + 0.36 * LETTER
        for gap in (4, 7):
            yield Words(right + gap + half, y, text)
            yield Words(left - gap - half, y, text)
            for slide in (0, -10, 10, -20, 20, -30, 30):
                yield Words(middle + slide, top - gap - 0.25 * LETTER, text)
                yield Words(middle + slide, bottom + gap + 0.78 * LETTER, text)


def _disc(place: Place) -> Box:
    return Box(*place, *place).grown(BADGE)


def _places(system: System, key: str) -> Iterator[Place]:
    """Where a number could stand, the best first."""
    if any(run.key == key for run in system.runs):
        yield from _places_along(system, [pipe for pipe in system.pipes if pipe.run == key])
        return
    left, top, right, bottom = system.part(key).box
    x, y = (left + right) // 2, (top + bottom) // 2
    for gap in _BESIDE:
        out = BADGE + gap + 1
        for slide in (0, -6, 6, -12, 12):
            yield from (
                (right + out, y + slide),
                (left - out, y + slide),
                (x + slide, top - out),
                (x + slide, bottom + out),
            )
        yield from ((a, b) for a in (right + out - 4, left - out + 4) for b in (top - out + 4, bottom + out - 4))


def _places_along(system: System, pipes: Sequence[Pipe]) -> Iterator[Place]:
    stretches = [(pipe, *stretch) for pipe in pipes for stretch in _segments(system.points(pipe))]
    stretches.sort(key=lambda stretch: -abs(stretch[1][0] - stretch[2][0]) - abs(stretch[1][1] - stretch[2][1]))
    for gap in (3, 6, 10):
        for pipe, (x0, y0), (x1, y1) in stretches:
            out = round(BADGE + gap + _THICK[pipe.service] / 2)
            for share in _ALONG:
                x, y = round(x0 + share * (x1 - x0)), round(y0 + share * (y1 - y0))
                yield from ((x, y - out), (x, y + out)) if y0 == y1 else ((x - out, y), (x + out, y))


# --- the drawing in words


def _description(system: System) -> str:
    """What the drawing shows, for those who do not see it: each way round, then what stands on branches."""
    ways = Ways(system)

    def name(key: str) -> str:
        return system.part(key).name

    sentences = [system.about]
    for part in system.of_role("pump"):
        for path in ways.rounds(part):
            stops = [step.there[0] for step in path if ways.parts[step.there[0]].role != "tee"]
            sentences.append(f"Round: {', '.join(map(name, [part.key, *stops[:-1]]))}, and back.")
    for dump in system.of_role("dump"):
        sentences.append(f"Without the pump: {name('stove')}, up to {dump.name}, and down again.")
    for pipe in system.pipes:
        start, end = split_end(pipe.start)[0], split_end(pipe.end)[0]
        if ways.parts[end].role == "relief":
            sentences.append(f"{_capital(name(end))}: on {name(start)}.")
    return " ".join(sentences)
