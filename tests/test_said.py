"""What a reader must be told where the question comes up, and what no page, worksheet or drawing may ever say."""

import ast
import re
from pathlib import Path

import pytest

from calc.answer import Typed, answer
from calc.worksheets import WORKSHEETS
from render.drawings.piping import SYSTEMS

ROOT = Path(__file__).resolve().parent.parent

# Where it stands, and pieces that have to stand there, in this order, in one paragraph.
SAID = [
    # An open tank builds no pressure while it breathes; the jacket of its stove still can.
    (
        "docs/guides/open-or-pressurised.md",
        "While it breathes, the tank cannot build pressure",
        "jacket still can",
        "freeze or are shut",
        "cold water meets dry, hot steel",
    ),
    ("docs/guides/questions.md", "Open is cheap and builds no pressure in the tank while it breathes"),
    # Nothing that can shut in a dump or a vent.
    ("docs/guides/safety.md", "hand valve, a spring check or any valve that can fail shut is no dump"),
    ("docs/guides/safety.md", "Leave the dump alone. It has no valve"),
    (
        "docs/guides/pipes.md",
        "No hand valve, no spring check and no valve that can fail shut",
        "vent",
        "relief valve",
        "dump",
    ),
    ("docs/guides/piping.md", "no hand valve, no check and no valve that can fail shut"),
    ("docs/guides/open-or-pressurised.md", "No valve ever goes into the vent or the dump"),
    ("calc/worksheets/power_cut.py", "No hand valve, no valve that can fail shut, no spring check, no fan"),
    ("calc/worksheets/charge_loop.py", "no hand valve, no spring check and no valve that can fail shut"),
    # Drinking water and antifreeze.
    (
        "docs/guides/antifreeze.md",
        "It never goes into pipes of drinking water: drain those",
        "Only into the traps",
        "non-toxic fluid",
    ),
    # Relief valves.
    ("docs/guides/safety.md", "the person who services the plant lifts the relief valve", "may not seat again"),
    ("calc/worksheets/relief.py", "The person who services the plant lifts its lever", "may not seat again"),
    # Generators, alarms, fire and weight.
    ("docs/guides/safety.md", "a generator runs outdoors only", "carbon monoxide", "transfer switch"),
    ("calc/worksheets/power_cut.py", "A generator runs outdoors only", "carbon monoxide", "transfer switch"),
    ("docs/guides/safety.md", "carbon monoxide alarm", "smoke alarms"),
    ("docs/guides/safety.md", "A fire extinguisher"),
    ("docs/guides/safety.md", "Straps on a tall tank"),
    ("docs/guides/storage.md", "strap a tall tank", "Where the ground shakes"),
    # A coil in the store.
    ("docs/guides/taps.md", "A coil in the store is not so safe", "Between fires that is lukewarm", "bacteria"),
    ("calc/worksheets/tap_water.py", "tap_way == 'coil'", "Bacteria can grow in the coil between fires"),
    # Fluids are tested by their pH.
    ("docs/guides/antifreeze.md", "a strip for the pH"),
    ("docs/guides/open-or-pressurised.md", "the pH of the water"),
    ("calc/worksheets/antifreeze.py", "a strip its pH"),
    # A boiler on lukewarm return.
    (
        "docs/guides/existing-boiler.md",
        "lukewarm return rots an ordinary oil or gas boiler",
        "return protection of its own",
    ),
    ("docs/guides/piping.md", "an ordinary one rots on lukewarm return"),
    # Metal up to the mixing valve.
    ("docs/guides/pipes.md", "stay with metal up to the mixing valve"),
    ("docs/guides/piping.md", "metal from the stove up to the mixing valve"),
    ("calc/vocabulary.py", "Plastic only behind a mixing valve, never between stove and store"),
]

NEVER = [
    r"cannot (?:explode|burst)\b",
    r"open the dump\b|dump has a hand valve",
    r"valve may stand there",
    r"valve that (?:has|needs power) to open",
    r"the traps, the taps",
    r"antifreeze (?:in|into) (?:the |all |your )?taps",
    r"(?:^|[.:] )Lift (?:it|the lever|the relief valve)\b",
    r"run plastic from a store\b",
    r"plastic .{0,30}begins behind the store",
    r"no tap water stands .{0,60}tap_way != 'sidearm'",
]


def _one_line(path: Path) -> str:
    """The words of a page or a module, numbers as they stand, strings of neighboring lines joined."""
    text = re.sub(r'"\n\s*"', "", path.read_text(encoding="utf-8"))
    return re.sub(r"\s+", " ", re.sub(r"<!-- .*?-->", "", text))


TEXTS = {
    path.relative_to(ROOT).as_posix(): _one_line(path)
    for folder, pattern in (
        ("docs", "*.md"),
        ("calc", "*.py"),
        ("site_overrides/render", "*.html"),
        ("site_overrides/render", "*.py"),
    )
    for path in sorted((ROOT / folder).rglob(pattern))
}


@pytest.mark.parametrize("row", SAID, ids=lambda row: f"{row[0]}: {row[1][:40]}")
def test_it_is_said_where_the_question_comes_up(row: tuple[str, ...]) -> None:
    place, *pieces = row
    match = re.search(r".{0,250}?".join(re.escape(piece) for piece in pieces), TEXTS[place])
    assert match, f"{place} does not say: {' … '.join(pieces)}"


@pytest.mark.parametrize("never", NEVER)
def test_it_is_never_said(never: str) -> None:
    said = {place: match[0] for place, text in TEXTS.items() if (match := re.search(never, text, re.IGNORECASE))}
    assert not said


def test_a_page_counts_draft_in_one_unit() -> None:
    """Pascals stand beside inches of water nowhere; 50 Pa is the name of a test."""
    for place, text in TEXTS.items():
        if place.startswith(("docs/guides", "calc/worksheets/chimney")):
            loose = [match for match in re.findall(r"(?<![\"\d])(\d+) (?:Pa|pascals)\b(?!\")", text) if match != "50"]
            assert not loose, place


def test_the_drawings_say_what_guards_a_boiler_and_where_plastic_begins() -> None:
    for system in SYSTEMS.values():
        for boiler in system.of_role("boiler"):
            assert "rots on lukewarm return" in boiler.use, system.key
        for run in system.runs:
            if run.key in ("house-pipe", "floor-pipe") and not any(system.of_role("boiler")):
                assert re.search(r"[Mm]etal until|behind the mixing valve", run.purpose), system.key


# What the trade calls it: worksheet, field or result, label.
TRADE = [
    ("tap-water", "tap_flow", "Peak hot-water draw"),
    ("tap-water", "recovery", "Recovery time of the tank, from cold"),
    ("air-coil", "flow_basis", "Airflow is given as"),
    ("air-coil", "duct_loss", "Duct loss"),
    ("air-coil", "entering_air", "Entering air temperature"),
    ("emitter-temperature", "baseboard_rating", "Rated output per foot or meter"),
    ("fuel-cost", "wood_heat_content", "Heat in a cord or stère, higher value"),
    ("fuel-cost", "break_even_price", "Break-even price of wood"),
    ("wood-use", "heat_content", "Heat in a cord or stère"),
    ("stored-heat", "lowest_useful", "Lowest useful store temperature"),
    ("pipe", "pipe_size", "Nominal pipe size"),
    ("pipe", "pressure_drop", "Pressure drop of the loop"),
    ("chimney-draught", "make_up_air", "Make-up air needed, fans on"),
    ("return-mixing", "least_return", "Minimum return temperature"),
    ("expansion", "acceptance", "Acceptance factor of the tank"),
    ("relief", "stove_rating", "Maximum working pressure of the stove"),
    ("house-load", "design_load", "Design load (heat lost on the coldest day)"),
]


@pytest.mark.parametrize(("slug", "key", "label"), TRADE, ids=lambda entry: str(entry))
def test_a_label_is_what_the_trade_calls_it(slug: str, key: str, label: str) -> None:
    worksheet = WORKSHEETS[slug]
    labels = {result.label for result in worksheet.results if result.key == key}
    assert label in labels | {field.label for field in worksheet.all_fields() if field.key == key}


@pytest.mark.parametrize("slug", WORKSHEETS)
def test_results_of_one_worksheet_have_labels_of_their_own(slug: str) -> None:
    labels = [result.label for result in WORKSHEETS[slug].results]
    assert len(labels) == len(set(labels))


@pytest.mark.parametrize("slug", WORKSHEETS)
def test_a_label_can_be_read_without_the_one_above_it(slug: str) -> None:
    worksheet = WORKSHEETS[slug]
    labels = [result.label for result in worksheet.results] + [field.label for field in worksheet.all_fields()]
    leaning = [label for label in labels if re.search(r", there$|^(?:Its|Those|That) |\bthose\b", label)]
    assert not leaning


@pytest.mark.parametrize("slug", WORKSHEETS)
def test_differences_resistances_and_air_changes_are_said_as_people_say_them(slug: str) -> None:
    """A 20 °F drop, R-13, 7 an hour; the forms in which they cancel stand in the sums alone."""
    for example in WORKSHEETS[slug].examples:
        sheet = answer(slug, {key: Typed(text) for key, text in example.given.items()})
        said = [entry.shown("us") for entry in sheet.inputs.values() if entry.quantity is not None]
        said += [result.shown for result in sheet.results] + [advice.text for advice in sheet.advice]
        said += [cell for table in sheet.tables for row in table.rows for cell in row]
        assert not [sentence for sentence in said if re.search(r"F°|ft²·°F·h/Btu|^[\d.,]+/h$", sentence)]


def test_no_page_writes_a_difference_in_our_own_short_form() -> None:
    assert not [place for place, text in TEXTS.items() if place.startswith("docs/") and "F°" in text]


@pytest.mark.parametrize("slug", WORKSHEETS)
def test_a_usual_value_in_other_units_has_the_digits_that_a_person_would_write(slug: str) -> None:
    """100 °F is 38 °C to who reads in SI units, never 37.78; what is computed keeps every digit."""
    sheet = answer(slug, {}, "si")
    converted = [
        entry for entry in sheet.inputs.values() if entry.quantity and entry.quantity.unit != entry.field.unit("si")
    ]
    for entry in converted:
        assert entry.quantity and entry.si == entry.quantity.si
        digits = entry.digits(entry.field.unit("si")).lstrip("-").replace(".", "").strip("0")
        assert len(digits) <= 3, entry
        assert entry.field.kind != "temperature" or "." not in entry.digits(entry.field.unit("si")), entry


def _sentences(path: Path) -> list[str]:
    """The texts of a file of declarations that are more than a quantity."""
    texts = [
        node.value for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))) if isinstance(node, ast.Constant)
    ]
    return [text for text in texts if isinstance(text, str) and not re.fullmatch(r"[-\d.,]+ [°F]+(·day)?", text)]


@pytest.mark.parametrize(
    "path", [*(ROOT / "calc/worksheets").glob("*.py"), ROOT / "calc/vocabulary.py"], ids=lambda path: path.stem
)
def test_a_temperature_in_a_sentence_stands_in_both_units(path: Path) -> None:
    for text in _sentences(path):
        assert not re.search(r"\d °F", text) or re.search(r"\d (?:°C|K)\b", text), text
