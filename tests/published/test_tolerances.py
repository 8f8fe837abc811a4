"""A tolerance comes from the source's digits or its stated spread, not from the difference that was found.

A check that uses nearly all of its tolerance is suspect: it stands only where the tolerance is half the last digit that
the source prints, or where its spread is named here.
"""

import re

from comparisons import all_checks
from comparisons.check import Check

MUCH = 0.8
# Whose spread it is: a numerical model's own step, which its author states.
STATED = {
    "winter.crept": "layers of 7 cm against a continuous wall",
    "antifreeze.ethylene_freezing_point": "printed sets for half ethylene glycol run from -30 to -39 °F",
}


def _used(check: Check) -> float:
    return abs(check.ours_si - check.theirs_si) / check.allowed_si if check.allowed_si else 0.0


def _half_a_digit(check: Check) -> float:
    """Half the last digit printed, SI."""
    number = re.match(r"[-−]?[\d,]*\.?(\d*)", check.theirs)
    assert number
    unit = check.theirs_unit
    return abs(unit.to_si(0.5 * 10 ** -len(number[1])) - unit.to_si(0.0))


def test_tolerances_that_are_nearly_used_up_come_from_the_source() -> None:
    tight = [
        f"{_used(check):.0%} of {check.within}: {check.law.module}.{check.law.name}, {check.where}, {check.theirs}"
        for check in all_checks()
        if _used(check) > MUCH
        and check.allowed_si > 1.05 * _half_a_digit(check)
        and f"{check.law.module}.{check.law.name}" not in STATED
    ]
    assert not tight, "\n".join(tight)


def test_a_stated_spread_is_still_needed() -> None:
    assert {f"{check.law.module}.{check.law.name}" for check in all_checks() if _used(check) > MUCH} >= STATED.keys()
