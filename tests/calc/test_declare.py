"""A mistake in a declaration stops the import and says what is wrong; near matches are named."""

from typing import Any, get_args

import pytest

from calc.engine.declare import (
    Advice,
    Case,
    Cases,
    Chart,
    Check,
    Condition,
    DeclarationError,
    Example,
    Field,
    Given,
    Line,
    Must,
    OnlyWith,
    Part,
    Pick,
    Picture,
    Sizes,
    Step,
    Suits,
    Typical,
    quantity,
)
from calc.expression import Formula
from calc.law import Constant, Factor, Joule, Kelvin, Watt, balance, law, method
from calc.physics import store
from calc.sources import SOURCES, Known
from tests.calc.throwaway import HEAT, LOAD, WAY, worksheet

PART = Part("Clock")


def test_the_plain_one_is_right() -> None:
    assert worksheet().plan({}).steps[0].key == "time"


@pytest.mark.parametrize(
    ("make", "word"),
    [
        (lambda: Field("x", "weight", "X", low="1 lb", high="2 lb"), "no kind is called"),
        (lambda: Field("x", "choice", "X"), "has options"),
        (lambda: Field("x", "energy", "X", low="1 Btu"), "both ends"),
        (lambda: Field("x", "energy", "X", low="2 Btu", high="1 Btu"), "is empty"),
        (lambda: Field("x", "energy", "X", low="2 apples", high="1 Btu"), "apples"),
        (
            lambda: Field("x", "energy", "X", low="1 Btu", high="9 Btu", typical=Typical("99 Btu", "definition")),
            "outside",
        ),
        (
            lambda: Field("x", "energy", "X", low="1 Btu", high="9 Btu", typical=Typical("5 Btu", "definitions")),
            "did you mean definition",
        ),
        (lambda: WAY.check_value("three"), "not one of its options"),
        (lambda: HEAT.but(label="Another"), "keeps its label"),
        (lambda: Given("x", "energy", "X", "5 Btu", "nobody"), "no source"),
        (lambda: Given("x", "energy", "X", "5 gal", "definition"), "5 gal"),
        (lambda: Step("x", store.time_on_heat, "X", wood="heat"), "takes heat, load"),
        (lambda: Pick("x", "energy", "X", "way", {"one": "1 gal"}, "definition"), "1 gal"),
        (lambda: Advice("danger", "x", "heat > 1", "X.", "Y."), "level must be"),
        (lambda: Advice("stop", "x", "heat > 1", "X.", "Y.", "nobody"), "no source"),
        (lambda: Check("x", "X", "heat", "heat > 1", "heat > 2", "", "definition", "caution"), "fails as stop"),
        (lambda: Condition("heat.real > 1"), "Attribute is not allowed"),
        (lambda: Condition("missing(1)"), "takes the name"),
        (lambda: worksheet(fields=(HEAT,)), "lack what they need"),
        (lambda: worksheet(guide="storages"), "near: ['storage'"),
        (lambda: worksheet(in_record=OnlyWith(WAY, ("ones",))), "near: ['one']"),
        (
            lambda: worksheet(sizes=(Sizes(PART, "{times} long"),)),
            "the size of Clock names 'times', which is not there; near: ['time']",
        ),
        (lambda: worksheet(sizes=(Sizes(PART, "x", "{lode}"),)), "near: ['load']"),
        (lambda: worksheet(sizes=(Sizes(PART, "x", only=("ways", "one")),)), "names 'ways'"),
        (
            lambda: worksheet(fields=(HEAT, LOAD, WAY), sizes=(Sizes(PART, "x", only=("way", "three")),)),
            "names 'three'",
        ),
        (lambda: worksheet(suits=(Suits("open-store", "lode > 1"),)), "near: ['load']"),
        (lambda: worksheet(headline="hours"), "names 'hours'"),
        (lambda: worksheet(say="For {times}"), "near: ['time']"),
        (lambda: worksheet(steps=(Step("heat", store.time_on_heat, "Time"),)), "stands twice"),
        (
            lambda: worksheet(steps=(Step("time", store.time_on_heat, "Time", heat="load"),)),
            "binds heat (energy) to load (power)",
        ),
        (
            lambda: worksheet(givens=(Given("heat", "energy", "Heat", "5 Btu", "definition"),)),
            "both a field and a given",
        ),
        (lambda: worksheet(examples=(Example("An example", {"heat": "1,000 Btu"}),)), "stands in no example"),
        (lambda: worksheet(examples=(Example("An example", {"heat": "5 Btu", "load": "9 MMBtu"}),)), "9 MMBtu"),
        (lambda: worksheet(examples=(Example("An example", {"wood": "5 lb"}),)), "which is no field"),
        (lambda: worksheet(fields=(HEAT, LOAD.but(same_as="wood"))), "which is not there"),
        (lambda: worksheet(musts=(Must("wood > 1", "heat", "X"),)), "'wood'"),
        (lambda: worksheet(advice=(Advice("note", "x", "wood > 1", "X.", ""),)), "'wood'"),
        (lambda: worksheet(picture=Picture("tank", "", {"top": "wood"})), "'wood'"),
        (lambda: worksheet(chart=Chart("X", "heat", "1 Btu", "9 Btu", (Line("wood", "wood"),), "")), "'wood'"),
        (lambda: worksheet(checks=(Check("x", "X", "wood", "heat > 1", "heat > 2", "", "definition"),)), "'wood'"),
        (lambda: worksheet(sources=("nobody",)), "no source"),
        (lambda: worksheet(cases=(Cases("way", one=Case()),)), "way has no option one"),
        (lambda: worksheet(fields=(HEAT, LOAD, WAY), cases=(Cases("way", three=Case()),)), "has no option three"),
        (lambda: quantity("words", "energy"), "words"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_a_mistake_stops_the_import(make: Any, word: str) -> None:
    with pytest.raises(DeclarationError) as refused:
        make()
    assert word in str(refused.value)


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
    assert {one.known for one in SOURCES.values()} <= set(get_args(Known))


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
    assert {name: one.kind for name, one in told.parameters.items()} == {"heat": "energy", "load": "power"}
    assert Kelvin is not Factor
