"""Texts that one build works out and the next one takes as they are, while all that they are made from is the same.

Who builds names the file that holds them, one for each state of the sources (`scripts/building.py`); each stands there
under the name of a function and what that is given. Without a file a text is worked out once in a run and forgotten.
"""

import hashlib
import json
import os
from collections.abc import Callable
from functools import cache
from pathlib import Path

SURROUNDINGS = "SITE_TEXTS"  # the environment's word for the file
_new: list[str] = []  # what this run has worked out


def kept[**Given](make: Callable[Given, str], *given: Given.args, **named: Given.kwargs) -> str:
    """What `make` gives for this, worked out only where no build has done so.

    `make` is a function of a module, which takes what JSON can write and leans on nothing else but the sources.
    """
    if "<" in make.__qualname__:
        raise ValueError(f"{make.__qualname__} may lean on more than it is given, so what it gives cannot be kept")
    return _found(json.dumps((make.__module__, make.__qualname__, given, named)), lambda: make(*given, **named))


def kept_of(make: Callable[[str], str], text: str) -> str:
    """What `make` gives for a long text, of which a digest alone is kept."""
    digest = hashlib.sha256(text.encode()).hexdigest()
    return _found(json.dumps((make.__module__, make.__qualname__, digest)), lambda: make(text))


def _found(question: str, make: Callable[[], str]) -> str:
    texts = _texts()
    if question not in texts:
        texts[question] = make()
        _new.append(question)
    return texts[question]


def keep() -> None:
    """Hand the texts on to the next build, if this one has made any."""
    path = os.environ.get(SURROUNDINGS)
    if path and _new:
        Path(path).write_text(json.dumps(_texts()), encoding="utf-8")


@cache
def _texts() -> dict[str, str]:
    path = os.environ.get(SURROUNDINGS)
    if not path or not Path(path).is_file():
        return {}
    texts: dict[str, str] = json.loads(Path(path).read_text(encoding="utf-8"))
    return texts
