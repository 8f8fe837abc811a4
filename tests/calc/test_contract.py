"""What must hold of every worksheet, whatever it computes: a new one passes without a test of its own here."""

import functools
import itertools
import json
import math
import random
from collections.abc import Iterator

import pytest

from calc.answer import Typed, answer, chart_of, link_of, open_link
from calc.engine import link
from calc.engine.declare import Field, Worksheet, quantity
from calc.engine.sheet import Sheet
from calc.report import as_json, as_text, describe
from calc.sources import SOURCES
from calc.units import SYSTEMS, DryBasis, UnitError, read_quantity, round_to, shown_unit, units_of
from calc.worksheets import WORKSHEETS
from tests.printed_sums import last_digit, recompute

ALL = pytest.mark.parametrize("worksheet", WORKSHEETS.values(), ids=WORKSHEETS.keys())
SAMPLES = 2000  # over all worksheets together, as many for each

BAD_TEXTS = (
    "", "words", "-1", "0", "1e30", "NaN", "inf", "1e400", "9**9**9 m", "1,234", "1,5", "12 apples", "3/4 in", "1½", "10²",
    "180º", "5 furlongs", "−5", "٣٠", "5" * 10_000, "5\x00", "\x1b[31m5", "<b>5</b>", "<img src=x onerror=alert(1)>",
    "5 <script>alert(1)</script>", "{store_top}", "{{ 7*7 }}", "%s%n", "1;end", "5~", "#v1;x;end", "__import__('os')", "5;store_top=9",
)  # fmt: skip


def _texts(field: Field, source: random.Random) -> str:
    """A text that a reader might well type in a field: any option, or a number in any of its units, inside its range."""
    if field.kind == "choice":
        return source.choice(field.options).value
    low, high = field.low_si, field.high_si
    if low > 0 and high / low > 30:
        value = math.exp(source.uniform(math.log(low), math.log(high)))
    else:
        value = source.uniform(low, high)
    if field.whole:
        value = round(value)
    fitting = [unit for unit in units_of(field.kind) if field.dry_basis or not isinstance(unit, DryBasis)]
    unit = source.choice([unit for unit in fitting if unit.text or len(fitting) == 1])
    number = unit.from_si(value)
    digits = min(max(round(number, 12), unit.from_si(low)), unit.from_si(high)) if unit.offset else number
    return f"{round_to(digits, 9)} {unit.ascii}".strip()


def _sampled(worksheet: Worksheet, source: random.Random) -> dict[str, Typed]:
    """Texts for a random half or more of the fields of a random case."""
    choices = {
        field.key: source.choice(field.options).value for field in worksheet.all_fields() if field.kind == "choice"
    }
    course = worksheet.course(choices)
    share = source.choice((0.5, 0.8, 1.0))
    return {
        field.key: Typed(choices[field.key] if field.kind == "choice" else _texts(field, source))
        for field in course.fields
        if field.kind == "choice" or source.random() < share
    }


@functools.cache
def _example(key: str) -> Sheet:
    return answer(key, {})


def _near_example(worksheet: Worksheet, source: random.Random) -> dict[str, Typed]:
    """The worked example with its numbers moved by up to a third."""
    given = {}
    for key, entry in _example(worksheet.key).inputs.items():
        if entry.quantity is None:
            given[key] = Typed(str(entry.si))
        elif not entry.from_field:
            number = float(entry.quantity.unit.from_si(entry.quantity.si)) * source.uniform(0.67, 1.33)
            number = round(number) if entry.field.whole else number
            low, high = (entry.quantity.unit.from_si(end) for end in (entry.field.low_si, entry.field.high_si))
            given[key] = Typed(f"{round_to(min(max(number, low), high), 9)} {entry.quantity.unit.ascii}".strip())
    return given


def _check(sheet: Sheet) -> None:
    """A sheet is whole: numbers or sentences, nothing in between."""
    if sheet.problems:
        known = {field.key for field in sheet.worksheet.all_fields()}
        for problem in sheet.problems:
            assert problem.key in known
            assert problem.text.endswith((".", "?"))
            assert "\n" not in problem.text
            assert len(problem.text) < 400
        return
    assert sheet.headline is not None
    for result in sheet.results:
        assert result.shown
        assert result.si is None or result.kind == "choice" or math.isfinite(float(result.si))
    for advice in sheet.advice:
        assert "{" not in advice.title + advice.text
    as_text(sheet)
    json.dumps(as_json(sheet), allow_nan=False)


@ALL
def test_the_example_is_whole_in_both_systems(worksheet: Worksheet) -> None:
    for system in SYSTEMS:
        sheet = answer(worksheet.key, {}, system)
        assert not sheet.problems
        _check(sheet)
        assert sheet.headline
        assert sheet.headline.si is not None
        assert len(sheet.say) <= 60, "the plate has one short line for it"
        chart = chart_of(sheet)
        assert (chart is None) == (worksheet.chart is None)
        assert "stop" not in {advice.level for advice in sheet.advice}, "an example should not be dangerous"


@ALL
def test_results_do_not_depend_on_the_units_shown(worksheet: Worksheet) -> None:
    us, si = answer(worksheet.key, {}, "us"), answer(worksheet.key, {}, "si")
    assert us.values == si.values
    assert link_of(us) == link_of(si).replace(";units=si", "")


@ALL
def test_any_text_in_any_field_gives_results_or_sentences(worksheet: Worksheet) -> None:
    for chosen, field in _each_field(worksheet):
        for text in BAD_TEXTS:
            _check(answer(worksheet.key, chosen | {field.key: Typed(text)}))
        for text in ("1,234", "1,5", "1 234", "180º"):
            _check(answer(worksheet.key, chosen | {field.key: Typed(text, "si")}, "si"))


def _each_field(worksheet: Worksheet) -> Iterator[tuple[dict[str, Typed], Field]]:
    """Every field once, with choices for which the worksheet asks it."""
    seen: list[Field] = []
    for course in worksheet.all_courses():
        chosen = {key: Typed(value) for key, value in course.choices}
        for field in course.fields:
            if field not in seen:
                seen.append(field)
                yield chosen, field


@ALL
def test_nonsense_is_always_refused(worksheet: Worksheet) -> None:
    for field in worksheet.fields:
        for text in ("", "words", "NaN", "1e400", "12 apples", "10²", "5" * 10_000, "5\x00", "<b>5</b>"):
            sheet = answer(worksheet.key, {field.key: Typed(text)})
            assert [problem.key for problem in sheet.problems] == [field.key], text


@ALL
def test_the_ends_of_every_field_give_results_or_sentences(worksheet: Worksheet) -> None:
    for chosen, field in _each_field(worksheet):
        for text in (field.low, field.high) if field.kind != "choice" else [option.value for option in field.options]:
            sheet = answer(worksheet.key, chosen | {field.key: Typed(text)})
            _check(sheet)
            assert not any(problem.text.startswith(f"{field.label} must be between") for problem in sheet.problems), (
                text
            )
    for course in worksheet.all_courses()[:40]:
        chosen = {key: Typed(value) for key, value in course.choices}
        for end in ("low", "high"):
            _check(
                answer(
                    worksheet.key,
                    chosen
                    | {field.key: Typed(getattr(field, end)) for field in course.fields if field.kind != "choice"},
                )
            )


def _seeded() -> Iterator[tuple[str, Sheet]]:
    each = max(-(-SAMPLES // len(WORKSHEETS)), 40)
    for key, worksheet in WORKSHEETS.items():
        source = random.Random(f"samples of {key}")
        for turn in range(each):
            given = (_sampled if turn % 3 == 0 else _near_example)(worksheet, source)
            yield key, answer(key, given, source.choice(SYSTEMS))


def test_two_thousand_seeded_samples() -> None:
    tried: dict[str, int] = {}
    gave: dict[str, int] = {}
    for key, sheet in _seeded():
        _check(sheet)
        tried[key] = tried.get(key, 0) + 1
        numbers = not sheet.problems and sheet.headline is not None and sheet.headline.si is not None
        gave[key] = gave.get(key, 0) + numbers
    assert sum(tried.values()) >= SAMPLES
    assert sum(gave.values()) >= 0.6 * sum(tried.values())
    poor = {key: f"{gave[key]} of {tried[key]}" for key in tried if gave[key] < 0.5 * tried[key]}
    assert not poor, f"these seldom give a number: {poor}"


@ALL
def test_a_link_restores_what_it_was_made_from(worksheet: Worksheet) -> None:
    source = random.Random(f"links of {worksheet.key}")
    for given in [{}, *(_near_example(worksheet, source) for _ in range(10))]:
        sheet = answer(worksheet.key, given, "us")
        if sheet.problems:
            continue
        made = link_of(sheet)
        assert made.isascii()
        assert " " not in made
        opened, problems = open_link(made)
        assert problems == ()
        assert opened is not None
        assert opened.values == sheet.values
        assert link_of(opened) == made


@ALL
def test_a_link_cut_anywhere_says_so_and_breaks_nothing(worksheet: Worksheet) -> None:
    """Wherever it is cut it says so; answered at the end of each part and at one place within it."""
    whole = link_of(answer(worksheet.key, {}))
    for length in range(len(whole)):
        assert link.read(whole[:length], WORKSHEETS).problems, whole[:length]
    source = random.Random(f"cuts of {worksheet.key}")
    ends = [place for place, sign in enumerate(whole) if sign == ";"]
    within = [source.randrange(begin + 1, end + 1) for begin, end in itertools.pairwise([0, *ends])]
    for length in ends + within:
        opened, problems = open_link(whole[:length])
        assert problems, whole[:length]
        if opened is not None:
            _check(opened)


@ALL
def test_a_spoilt_link_names_what_is_wrong(worksheet: Worksheet) -> None:
    whole = link_of(answer(worksheet.key, {}))
    first = worksheet.fields[0]
    for spoilt, word in (
        (whole.replace("#v1;", "#v9;"), "later version"),
        (whole.replace(";end", ";nonsense=5;end"), "does not ask"),
        (whole.replace(";end", f";{first.key}=1;end"), "twice"),
        (whole.replace(f";{worksheet.key};", ";no-such;"), "not here"),
        (whole.replace(";end", ";%3Cscript%3E=1;end"), "does not ask"),
    ):
        opened, problems = open_link(spoilt)
        assert any(word in problem for problem in problems), spoilt
        if opened is not None:
            assert not opened.problems


@ALL
def test_the_printed_working_recomputes_to_itslast_digit(worksheet: Worksheet) -> None:
    source = random.Random(f"working of {worksheet.key}")
    cases = [{key: Typed(value) for key, value in course.choices} for course in worksheet.all_courses()]
    sheets = [({}, system) for system in SYSTEMS]
    sheets += [(case | _fitting(worksheet, case, source), system) for case in cases for system in SYSTEMS]
    for given, system in sheets:
        sheet = answer(worksheet.key, given, system)
        laws = {step.key: step.law for step in sheet.course.steps if hasattr(step, "law")}
        for line in sheet.working:
            if not line.sums:
                continue
            result = [recompute(total, system) for total in line.sums]
            if laws[line.key].solves:
                assert result[0] == pytest.approx(result[1], rel=1e-4, abs=1e-6), line
                continue
            printed, half = last_digit(line.result, system)
            # A sum that ends on a half may miss it by its own last binary digits.
            assert abs(result[0] - printed) <= half * 1.000001 + 1e-14 * abs(printed), (line, result)


def _fitting(worksheet: Worksheet, case: dict[str, Typed], source: random.Random) -> dict[str, Typed]:
    """Numbers near the example's for the fields of a case; its other fields stay typical or the example's."""
    near = _near_example(worksheet, source)
    keys = {
        field.key
        for field in worksheet.course({key: typed.text for key, typed in case.items()}).fields
        if field.kind != "choice"
    }
    kinds = {
        field.key: field.kind for field in worksheet.course({key: typed.text for key, typed in case.items()}).fields
    }
    fitting = {}
    for key, typed in near.items():
        if key in keys and key not in case:
            try:
                read_quantity(typed.text, kinds[key], shown_unit(kinds[key], "us"), "us")
            except UnitError:
                continue
            fitting[key] = typed
    return fitting


@ALL
def test_what_nobody_gave_is_named(worksheet: Worksheet) -> None:
    course = answer(worksheet.key, {}).course
    entry = next(field for field in course.fields if field.kind != "choice" and not field.optional)
    text = answer(worksheet.key, {}).inputs[entry.key].text
    sheet = answer(worksheet.key, {entry.key: Typed(text)})
    asked = [other for other in sheet.course.fields if other.key != entry.key]
    wanted = [other.label for other in asked if not other.optional and not other.awaited]
    assert not sheet.problems
    assert sheet.rough == bool(wanted)
    assert list(sheet.assumed) == wanted
    assert sheet.inputs[entry.key].origin == "typed"
    assert {other.key for other in asked if other.awaited}.isdisjoint(sheet.inputs), "nothing stands in for these"
    assert {sheet.inputs[other.key].origin for other in asked if not other.awaited} <= {"typical", "example"}


@ALL
def test_sources_exist_and_limits_are_told(worksheet: Worksheet) -> None:
    told = describe(worksheet, "us")
    assert set(told["sources"]) <= SOURCES.keys()
    assert worksheet.leaves_out
    assert worksheet.follow
    for following in worksheet.follow:
        assert following.worksheet in WORKSHEETS, f"{worksheet.key} sends its reader to {following.worksheet}"
    assert worksheet.question.endswith("?")


@ALL
def test_field_ranges_lie_inside_the_ranges_of_the_laws_they_reach(worksheet: Worksheet) -> None:
    for course in worksheet.all_courses():
        fields = {field.key: field for field in course.fields}
        for step in course.steps:
            for name, source in getattr(step, "binding", {}).items():
                allowed = step.law.ranges.get(name)  # type: ignore[union-attr]
                if allowed is None or source not in fields:
                    continue
                entry = fields[source]
                slack = 1e-9 * max(abs(allowed.low), abs(allowed.high))
                assert allowed.low - slack <= entry.low_si, (
                    f"{source}: {entry.low} is below {allowed.text} of {step.law.name}"
                )  # type: ignore[union-attr]
                assert entry.high_si <= allowed.high + slack, (
                    f"{source}: {entry.high} is above {allowed.text} of {step.law.name}"
                )  # type: ignore[union-attr]


def test_no_key_has_two_meanings() -> None:
    meanings: dict[str, set[tuple[str, str]]] = {}
    for worksheet in WORKSHEETS.values():
        for field in worksheet.all_fields():
            meanings.setdefault(field.key, set()).add((field.label, field.kind))
    # What a fuel is bought by (volume, weight, energy) decides the kind of its amount and of its heat content, and
    # the kind of a dump whether its size is finned length or rated output: a text of the other kind is refused.
    by_choice = {"amount", "heat_content", "dump_size"}
    for key, meaning in meanings.items():
        assert len({label for label, _ in meaning}) == 1, f"{key}: {meaning}"
        assert len({kind for _, kind in meaning}) == 1 or key in by_choice, f"{key}: {meaning}"
    kinds: dict[str, set[str]] = {}
    for worksheet in WORKSHEETS.values():
        for result in describe(worksheet, "us")["results"]:
            kinds.setdefault(result["key"], set()).add(result["kind"])
        for field in worksheet.all_fields():
            kinds.setdefault(field.key, set()).add(field.kind)
    for key, found_kinds in kinds.items():
        assert len(found_kinds) == 1 or key in by_choice, f"{key}: {found_kinds}"


@ALL
def test_every_typical_value_is_taken_and_named(worksheet: Worksheet) -> None:
    for course in worksheet.all_courses():
        chosen = {key: Typed(value) for key, value in course.choices}
        typical = [field for field in course.fields if field.typical is not None]
        if not chosen or not typical:
            continue
        sheet = answer(worksheet.key, chosen)
        assert not sheet.problems
        for field in typical:
            if field.key not in chosen and not field.optional:
                assert sheet.inputs[field.key].origin == "typical"
                assert field.label in sheet.assumed


def test_ranges_in_declarations_are_texts_a_reader_could_type() -> None:
    for worksheet in WORKSHEETS.values():
        for field in worksheet.all_fields():
            for text in (field.low, field.high):
                if field.kind != "choice":
                    assert math.isfinite(quantity(text, field.kind))
