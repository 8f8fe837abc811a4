"""What is typed is read by one reader, and once in each request."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest

import edition
from calc.engine.plan import Entry
from calc.engine.plan_file import read as read_plan
from calc.units import read_quantity
from calc.worksheets import WORKSHEETS
from render import respond
from render.plan import entry_for_page

ROOT = Path(__file__).resolve().parent.parent
HOUSES = [house for key in ("quillbrook", "ellerquist") for house in edition.load(key).houses.values()]
LARGEST = max(HOUSES, key=len)
# Numbers that worksheets computed have to be looked at for staleness, which reads their worksheets again.
COMPUTED = {
    "lowest_useful": Entry("129 F", "computed", "emitter-temperature"),
    "design_load": Entry("9000 Btu/h", "computed", "house-load"),
}
TOOL = sys.monitoring.PROFILER_ID


@contextmanager
def parses() -> Iterator[list[str]]:
    """Every text that is parsed meanwhile, by whoever asks."""
    texts: list[str] = []
    sys.monitoring.use_tool_id(TOOL, "parses")
    sys.monitoring.register_callback(
        TOOL, sys.monitoring.events.PY_START, lambda *_: texts.append(sys._getframe(1).f_locals["text"])
    )
    sys.monitoring.set_local_events(TOOL, read_quantity.__code__, sys.monitoring.events.PY_START)
    try:
        yield texts
    finally:
        sys.monitoring.set_local_events(TOOL, read_quantity.__code__, 0)
        sys.monitoring.free_tool_id(TOOL)


def _plan() -> dict[str, dict[str, str]]:
    return {key: entry_for_page(entry) for key, entry in (LARGEST | COMPUTED).items()}


REQUESTS: dict[str, dict[str, Any]] = {
    "record": {"ask": "record", "address": "record/"},
    "plan": {"ask": "plan", "units": "si"},
    "save": {"ask": "save"},
    "worksheet": {"ask": "worksheet", "worksheet": "stored-heat"},
    "chain": {"ask": "worksheet", "worksheet": "will-it-work"},
    "use": {"ask": "use", "worksheet": "emitter-temperature", "key": "lowest_useful"},
    "desk": {"ask": "desk", "worksheet": "will-it-work"},
}


@pytest.mark.parametrize("name", REQUESTS)
def test_each_number_is_parsed_once_in_a_request(name: str) -> None:
    """Twice the request, since texts of our own declarations are kept: what is parsed the second time was typed."""
    text = json.dumps(REQUESTS[name] | {"plan": _plan()})
    respond(text)
    with parses() as texts:
        respond(text)
    assert texts, "nothing was read"
    assert len(texts) == len(set(texts))
    entries = {entry["text"] for entry in _plan().values()}
    # The rest is what worksheets now give, which no entry says.
    assert len([text for text in texts if text in entries]) <= len(LARGEST | COMPUTED)


def test_the_counter_counts() -> None:
    text = json.dumps({"ask": "worksheet", "worksheet": "stored-heat", "plan": {"store_volume": {"text": "512 gal"}}})
    with parses() as texts:
        respond(text)
        respond(text)
    assert texts.count("512 gal") == 2, "nothing typed outlives its request"


def test_only_the_reader_parses_what_is_typed() -> None:
    """Besides it: the texts of declarations, of laws, and of numbers in guides, which nobody types in the page."""
    ours = {"calc/engine/typed.py", "calc/engine/fields.py", "calc/law.py", "site_overrides/render/pages/prose.py"}
    ours.add("site_overrides/edition/reading.py")  # a dealer's tables, at build
    files = [path for top in ("calc", "site_overrides") for path in (ROOT / top).rglob("*.py")]
    using = {path.relative_to(ROOT).as_posix() for path in files if "read_quantity(" in path.read_text("utf-8")}
    assert using == ours | {"calc/units/reading.py"}


def test_a_reader_of_litres_is_answered_in_litres() -> None:
    opened = read_plan("Stoke and Store plan 1\nstore_volume = 900000 L | typed\nend\n", WORKSHEETS.values())
    assert opened.entries == {}
    assert opened.problems == (
        "Store volume in this plan must be between 19\u00a0L and 75,000\u00a0L; it was left out.",
    )
