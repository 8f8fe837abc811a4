"""Checks against the outside world: one module a source, each with a list `CHECKS`, read by the tests and by the evidence page.

Importing these modules needs nothing but the project itself; libraries are imported only when a value is computed again.
"""

import importlib
import pkgutil

from tests.published.check import Check


def all_checks() -> list[Check]:
    """Every published check, in the order of the modules' names."""
    found: list[Check] = []
    for module in sorted(pkgutil.iter_modules(__path__), key=lambda one: one.name):
        if module.name.startswith("test_") or module.name == "check":
            continue
        found += importlib.import_module(f"{__name__}.{module.name}").CHECKS
    return found
