"""What a careful seller is asked next has a place in the verdict, in the record and in the evidence, sheet by sheet."""

import pytest

from calc.engine.declare import Step
from calc.worksheets import WORKSHEETS
from comparisons import all_checks
from render.pages.lists import SUBJECTS

CHAIN = WORKSHEETS["will-it-work"]
# The result by which the verdict hears of a worksheet, or the words by which it says that it has not looked.
HEARD = {"heat-dump": "dump_output"}
NOT_LOOKED = {
    "tanks-together": "how several tanks share the water",
    "water-and-steel": "the fill water",
    "other-heat": "another heater on the same store",
}
SHEETS = [*HEARD, *NOT_LOOKED]


@pytest.mark.parametrize("sheet", SHEETS)
def test_it_stands_in_the_verdict(sheet: str) -> None:
    if sheet in NOT_LOOKED:
        assert NOT_LOOKED[sheet] in CHAIN.not_checked
        return
    assert HEARD[sheet] in {result.key for result in WORKSHEETS[sheet].results}
    assert HEARD[sheet] in {field.key for field in CHAIN.fields}
    assert HEARD[sheet] in {check.number for check in CHAIN.checks}


@pytest.mark.parametrize("sheet", SHEETS)
def test_it_stands_in_the_record(sheet: str) -> None:
    """It gives a part its size, or it is taken in where the plan has chosen it."""
    assert WORKSHEETS[sheet].sizes or WORKSHEETS[sheet].in_record


@pytest.mark.parametrize("sheet", SHEETS)
def test_it_stands_in_the_evidence(sheet: str) -> None:
    compared = {(check.law.module, check.law.name) for check in all_checks()}
    laws = {(step.law.module, step.law.name) for step in WORKSHEETS[sheet].all_steps() if isinstance(step, Step)}
    assert laws and laws <= compared


def test_every_subject_of_the_evidence_has_its_words() -> None:
    assert {check.law.module for check in all_checks()} <= SUBJECTS.keys()
