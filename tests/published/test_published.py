"""Every published check holds, and every value taken from a library is computed again with that library."""

from pathlib import Path

import pytest

from comparisons import all_checks
from comparisons.check import Check

CHECKS = all_checks()


def test_every_comparison_stands_where_it_is_found() -> None:
    assert all(path.name.startswith("test_") for path in Path(__file__).parent.glob("*.py")), "see comparisons/"


def _name(check: Check) -> str:
    return f"{check.law.module}.{check.law.name}: {check.source.title} {check.source.place}: {check.where}"


@pytest.mark.parametrize("check", CHECKS, ids=_name)
def test_our_value_is_within_the_stated_distance_of_theirs(check: Check) -> None:
    assert abs(check.ours_si - check.theirs_si) <= check.allowed_si, (
        f"ours {check.ours_si!r}, theirs {check.theirs} = {check.theirs_si!r}, allowed {check.within}"
    )


@pytest.mark.parametrize("check", [check for check in CHECKS if check.recompute], ids=_name)
def test_the_library_still_gives_the_value_we_print(check: Check) -> None:
    assert check.recompute is not None
    # Half a unit in the last printed digit, and never more than one part in a thousand.
    assert check.recompute() == pytest.approx(check.theirs_si, rel=1e-3), check.theirs


@pytest.mark.parametrize("check", CHECKS, ids=_name)
def test_the_reason_for_the_tolerance_is_given(check: Check) -> None:
    assert len(check.because.split()) >= 3
    assert check.source.title and check.source.year
