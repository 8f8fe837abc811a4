"""No law of physics stands alone: each has an outside check of its own, and each that guards against injury has two."""

import importlib
import pkgutil

import pytest

import calc.physics
from calc.law import Law
from comparisons import all_checks

MODULES = [importlib.import_module(f"calc.physics.{one.name}") for one in pkgutil.iter_modules(calc.physics.__path__)]
LAWS = [one for module in MODULES for one in vars(module).values() if isinstance(one, Law) and one.module == module.__name__.rpartition(".")[2]]

# Rows of one table count once: what counts is whose numbers they are and where they stand.
STANDING: dict[tuple[str, str], set[tuple[str, str, str, str]]] = {}
for check in all_checks():
    source = check.source
    STANDING.setdefault((check.law.module, check.law.name), set()).add((source.body, source.title, source.year, source.place))


@pytest.mark.parametrize("law", LAWS, ids=lambda law: f"{law.module}.{law.name}")
def test_a_law_is_held_against_the_outside(law: Law) -> None:
    wanted = 2 if law.safety else 1
    assert len(STANDING.get((law.module, law.name), ())) >= wanted
