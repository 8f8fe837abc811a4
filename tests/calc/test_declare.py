"""The words of a declaration and of a law, and what stops them; slips in whole worksheets stand in test_slips.py."""

from typing import Any, get_args

import pytest

from calc.engine.declare import Condition, DeclarationError, quantity
from calc.engine.sentences import pieces, placeholders
from calc.expression import Formula
from calc.law import Constant, Factor, Joule, Kelvin, Watt, balance, law, method
from calc.sources import SOURCES, Known
from tests.calc.throwaway import HEAT, WAY, worksheet


def test_the_plain_one_is_right() -> None:
    assert worksheet().course({}).steps[0].key == "time"


@pytest.mark.parametrize(
    ("make", "word"),
    [
        (lambda: WAY.check_value("three"), "not one of its options"),
        (lambda: HEAT.but(label="Another"), "keeps its label"),
        (lambda: Condition("heat.real > 1"), "Attribute is not allowed"),
        (lambda: Condition("missing(1)"), "takes the name"),
        (lambda: Condition("heat >"), "not a condition"),
        (lambda: Condition("abs(heat) > 1"), "may be called"),
        (lambda: worksheet(fields=(HEAT,)).course({}), "lack what they need"),
        (lambda: quantity("words", "energy"), "words"),
        (lambda: pieces("{heat!r} of it"), "only names may stand in braces"),
        (lambda: pieces("heat} of it"), "heat} of it"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_a_mistake_stops(make: Any, word: str) -> None:
    with pytest.raises(DeclarationError) as refused:
        make()
    assert word in str(refused.value)


def test_a_sentence_is_cut_at_its_names() -> None:
    assert pieces("{heat} of {load}, {{so}}") == (("", "heat"), (" of ", "load"), (", {", ""), ("so}", ""))
    assert placeholders("{heat} of {load}") == ["heat", "load"]


@pytest.mark.parametrize(
    ("declare", "word"),
    [
        (lambda: law("heat * wood", source="definition")(_doubled), "wood in the formula"),
        (lambda: law("heat * 2", source="nobody")(_doubled), "no source is called"),
        (lambda: law("heat * 2", source="definition", ranges={"heat": "1 Btu"})(_doubled), "a range reads like"),
        (lambda: law("heat * 2", source="definition", ranges={"heat": "1 apple to 2 apples"})(_doubled), "the range"),
        (lambda: law("heat * 'two'", source="definition")(_doubled), "only numbers"),
        (lambda: law("heat", source="definition")(lambda heat: heat), "return"),
        (lambda: balance("heat", "wood", solves="load", source="definition")(_doubled), "wood in the formula"),
        (lambda: method("A sentence.", source="nobody")(_doubled), "no source is called"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_a_mistake_in_a_law_stops_the_import(declare: Any, word: str) -> None:
    with pytest.raises((ValueError, KeyError)) as refused:
        declare()
    assert word in str(refused.value)


def _doubled(heat: Joule) -> Joule:
    """Twice the heat."""
    return heat * 2


def test_a_parameter_without_a_measure_is_refused() -> None:
    def plain(heat: float) -> Joule:
        return heat

    with pytest.raises(ValueError, match="needs an annotation"):
        law("heat", source="definition")(plain)


def test_a_source_says_how_it_is_known() -> None:
    assert {source.known for source in SOURCES.values()} <= set(get_args(Known))


def test_conditions_ask_who_gave_a_number() -> None:
    values = {"heat": 5.0, "load": None}
    origins = {"heat": "typed", "load": "typical"}
    assert Condition("given(heat) and missing(load) and assumed(load)")(values, origins)
    assert not Condition("load > 1")(values, origins), "a condition on what does not exist does not hold"
    assert Condition("not missing(heat) and max(heat, 1) == 5")(values, origins)
    assert Condition("missing(load) or heat < load")(values, origins), "what is asked for first decides"
    assert not Condition("not missing(load) and heat < load")(values, origins)


def test_a_constant_can_be_shown_in_the_readers_units() -> None:
    assert Constant(1.0, "K", source="definition", kind="temperature_difference").kind == "temperature_difference"
    assert Formula("a * b")({"a": 2.0, "b": 3.0}) == 6.0


def test_kinds_of_law_know_what_they_are() -> None:
    @method("A sentence.", source="definition")
    def told(heat: Joule, load: Watt) -> Factor:
        """Told."""
        return heat / load

    assert told.sentence == "A sentence."
    assert told(6.0, 3.0) == 2.0
    assert {name: parameter.kind for name, parameter in told.parameters.items()} == {"heat": "energy", "load": "power"}
    assert Kelvin is not Factor
