"""What a declaration may ask of the engine although none of today's does, and the engine's own edges."""

from typing import Any

import pytest

from calc.checking.checker import check
from calc.engine.declare import (
    Case,
    Cases,
    Chart,
    Comparison,
    Example,
    Field,
    Given,
    Line,
    Option,
    Pick,
    Result,
    Step,
    Variant,
    Worksheet,
)
from calc.engine.read import read
from calc.engine.run import run
from calc.engine.series import series
from calc.engine.sheet import Sheet
from calc.engine.typed import Reader, Typed
from calc.engine.working import si_unit
from calc.law import Joule, Second, Watt, find_root, law
from calc.units import table, unit_named
from calc.worksheets import Worksheets
from tests.calc.throwaway import HEAT, LOAD, WAY, worksheet

PEAK = Field("peak", "power", "Peak", low="0 Btu/h", high="200 kBtu/h", same_as="load")


@law("heat / load", source="definition", ranges={"load": "1 Btu/h to 50,000 Btu/h"})
def lasts(heat: Joule, load: Watt) -> Second:
    """How long a store lasts, s."""


@law("load * time + peak * time / 2", source="definition")
def both(load: Watt, peak: Watt, time: Second) -> Joule:
    """Heat of two loads, J."""


def _worksheet(**changes: Any) -> Worksheet:
    """The throw-away worksheet with a peak that follows the load, and a law that takes no large load."""
    return worksheet(**({"fields": (HEAT, LOAD, PEAK), "steps": (Step("time", lasts, "Time"),)} | changes))


def _sheet(made: Worksheet, **given: str) -> Sheet:
    return run(made, read(made, {key: Typed(text) for key, text in given.items()}, Reader()), "us")


def test_what_a_law_refuses_is_told_beside_the_field_it_came_from() -> None:
    sheet = _sheet(_worksheet(), heat="5 Btu", load="60,000 Btu/h")
    assert [(problem.key, problem.text) for problem in sheet.problems] == [
        ("load", "Load must be between 1.000\u00a0Btu/h and 50,000\u00a0Btu/h here.")
    ]


def test_what_a_law_refuses_of_the_worksheet_s_own_numbers_is_told_too() -> None:
    own = Given("load", "power", "The rule's load", "60,000 Btu/h", "definition")
    sheet = _sheet(
        _worksheet(fields=(HEAT,), givens=(own,), examples=(Example("An example", {"heat": "5 Btu"}),)), heat="9 Btu"
    )
    assert len(sheet.problems) == 1
    assert "The rule's load" in sheet.problems[0].text


def test_a_sum_that_needs_a_factor_stands_in_brackets() -> None:
    """Btu/h times minutes is no Btu: the whole sum is multiplied, not its last part."""
    minutes = Field("time", "time", "Time", low="1 min", high="9 h", us="min", si="min")
    made = _worksheet(
        fields=(LOAD, PEAK, minutes),
        steps=(Step("both", both, "Both"),),
        results=(Result("both"),),
        headline="both",
        examples=(Example("An example", {"load": "600 Btu/h", "time": "30 min"}),),
    )
    sheet = _sheet(made, load="600 Btu/h", peak="1,200 Btu/h", time="30 min")
    assert sheet.results[0].shown == "600\u00a0Btu"  # 600/2 + 1200/2/2
    (line,) = sheet.working
    assert line.sums[0].startswith("(")
    assert ") × " in line.sums[0]


def test_what_follows_a_field_follows_it_through_comparisons_and_charts() -> None:
    compared = Comparison(
        "Compared", (Variant("as it is", {}), Variant("less", {"load": "less 100 Btu/h"})), ("peak", "time"), ""
    )
    chart = Chart("Time", "load", "x0.5", "x2", (Line("peak", "Peak"),), "")
    shown = (Result("time"), Result("peak"))
    sheet = _sheet(_worksheet(tables=(compared,), chart=chart, results=shown), heat="5 Btu", load="300 Btu/h")
    assert [row[1] for row in sheet.tables[0].rows] == ["300\u00a0Btu/h", "200\u00a0Btu/h"]
    drawn = series(sheet)
    assert drawn is not None
    assert all(x == y for x, y in drawn.lines[0].points)


def test_a_comparison_may_change_a_choice() -> None:
    compared = Comparison(
        "Compared", (Variant("the one", {"way": "one"}), Variant("the other", {"way": "two"})), ("time",), ""
    )
    given = Example("An example", {"heat": "1,000 Btu", "load": "100 Btu/h", "way": "one"})
    sheet = _sheet(_worksheet(fields=(HEAT, LOAD, WAY), tables=(compared,), examples=(given,)), way="two")
    # What the reader has chosen already is the sheet itself and makes no row.
    assert [tuple(row) for row in sheet.tables[0].rows] == [("the one", "10.0\u00a0h")]


def test_a_comparison_that_changes_a_case_forgets_what_was_typed_for_the_old_one() -> None:
    """A load of one's own is not the load of the house that a row stands for."""
    way = Field(
        "way",
        "choice",
        "Way",
        options=(Option("own", "my own load"), Option("small", "small"), Option("large", "large")),
    )
    table = {"small": "100 Btu/h", "large": "500 Btu/h"}
    listed = Case(steps=(Pick("load", "power", "Load", "way", table, "definition"),))
    made = _worksheet(
        fields=(HEAT, way, PEAK.but(same_as="", unless_given="50 Btu/h")),
        cases=(Cases("way", own=Case(fields=(LOAD,)), small=listed, large=listed),),
        tables=(
            Comparison(
                "Compared", (Variant("large", {"way": "large"}), Variant("twice", {"heat": "x2"})), ("time",), ""
            ),
        ),
        examples=(Example("An example", {"heat": "1,000 Btu", "load": "200 Btu/h", "way": "own"}),),
    )
    check(made, ())
    for given in ({"way": "own", "load": "200 Btu/h"}, {"way": "small"}):
        sheet = _sheet(made, heat="1,000 Btu", **given)
        assert sheet.tables[0].rows[0] == ("large", "2.00\u00a0h"), given


def test_a_chart_of_nothing_is_no_chart() -> None:
    beyond = Chart("Time", "load", "60,000 Btu/h", "90,000 Btu/h", (Line("time", "Time"),), "")
    sheet = _sheet(_worksheet(chart=beyond), heat="5 Btu", load="100 Btu/h")
    assert sheet.problems == ()
    assert series(sheet) is None


def test_a_root_at_nothing_is_found_although_no_part_of_it_is_small_enough() -> None:
    """The bracket is measured against itself, so at zero it only stops when its turns are used up."""
    root = find_root(lambda guess: 1.0 if guess > 0 else -1.0, -1.0, 1.5)
    assert root is not None
    assert abs(root) < 1e-12


def test_a_worksheet_in_another_s_file_is_refused() -> None:
    with pytest.raises(ValueError, match="calls itself 'test'"):
        Worksheets(lambda key: _worksheet())["stored-heat"]


def test_one_spelling_of_two_units_is_refused() -> None:
    first = table.UNITS[0]
    with pytest.raises(ValueError, match="two units of"):
        table.by_spelling((first, first._replace(factor=2 * first.factor)))


def test_a_plain_share_stands_in_sums_without_a_word() -> None:
    assert si_unit(unit_named("%", "fraction")).text == ""
