"""Comparisons with other people's numbers: one module a source, each with a list `CHECKS`.

The tests run them (`tests/published`) and the evidence page prints them.

Importing these modules needs nothing but the project itself; libraries are imported only when a value is computed
again.
"""

import importlib
import pkgutil

from calc.units import grouped, round_to, with_unit
from comparisons.check import KINDS, Check


def all_checks() -> list[Check]:
    """Every published check, in the order of the modules' names."""
    checks: list[Check] = []
    for module in sorted(pkgutil.iter_modules(__path__), key=lambda module: module.name):
        if module.name != "check":
            checks += importlib.import_module(f"{__name__}.{module.name}").CHECKS
    return checks


def compared() -> list[dict[str, str]]:
    """Every check as the evidence page prints it: our number in the unit of theirs, and how far apart they are."""
    return [_printed(check) for check in all_checks()]


def counted() -> list[tuple[str, str, int]]:
    """How many checks there are of each kind of source, with what the kind means; those from outside first."""
    checks = all_checks()
    return [(kind, meaning, sum(check.source.kind == kind for check in checks)) for kind, meaning in KINDS.items()]


def _printed(check: Check) -> dict[str, str]:
    unit = check.theirs_unit
    ours, theirs = unit.from_si(check.ours_si), unit.from_si(check.theirs_si)
    difference = ours - theirs
    share = "" if not theirs or check.law.returns.kind == "temperature" else f"{abs(difference / theirs):.2%}"
    source = check.source
    return {
        "subject": check.law.module,
        "topic": check.topic,
        "where": check.where,
        "ours": with_unit(grouped(round_to(ours, 5), "us"), unit),
        "theirs": check.theirs,
        "apart": share or with_unit(grouped(round_to(abs(difference), 2), "us"), unit),
        "allowed": check.within,
        "because": check.because,
        "source": ", ".join(part for part in (source.body, source.title, source.year, source.place) if part),
        "kind": source.kind,
    }
