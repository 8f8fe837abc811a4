"""Sentences with {names} in braces, which stand for the reader's numbers."""

from functools import cache
from string import Formatter

from calc.engine.fields import DeclarationError


@cache
def pieces(template: str) -> tuple[tuple[str, str], ...]:
    """A sentence cut at its names: a text and the name behind it, which is empty where the sentence ends."""
    try:
        parsed = list(Formatter().parse(template))
    except ValueError as wrong:
        raise DeclarationError(f"{wrong}: {template!r}") from None
    cut = []
    for literal, name, layout, conversion in parsed:
        if name is not None and (layout or conversion or not name.isidentifier()):
            raise DeclarationError(f"only names may stand in braces: {template!r}")
        cut.append((literal, name or ""))
    return tuple(cut)


def placeholders(template: str) -> list[str]:
    """The names that stand in braces in a sentence."""
    return [name for _, name in pieces(template) if name]
