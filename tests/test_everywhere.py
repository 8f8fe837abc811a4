"""What a careful seller is asked next has a place in the record and in the evidence, sheet by sheet."""

import pytest

from calc.engine.declare import Step
from calc.worksheets import WORKSHEETS
from comparisons import all_checks
from render.pages.lists import SUBJECTS

CHAIN = WORKSHEETS["will-it-work"]
SHEETS = ["heat-dump", "tanks-together", "water-and-steel", "other-heat"]


def test_the_dump_stands_in_the_verdict() -> None:
    assert "dump_output" in {result.key for result in WORKSHEETS["heat-dump"].results}
    assert "dump_output" in {check.number for check in CHAIN.checks}


def test_the_verdict_names_what_it_leaves_to_other_sheets() -> None:
    """A chain judges by one number each; these three have no single one, so it says that it has not looked at them."""
    told = "; ".join(CHAIN.not_checked)
    assert all(words in told for words in ("several tanks", "fill water", "other heat"))


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
