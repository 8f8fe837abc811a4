"""Printed sums, worked out the way a person with a pocket calculator would."""

import math
import re

from calc.expression import FUNCTIONS
from calc.units import UNITS, System


def _without_prices(text: str) -> str:
    """A text without the units of prices, which stand around their number: $3.80/gal."""
    per = sorted(
        (unit.text[1:] for unit in UNITS if unit.text[:1] in ("$", "€") and unit.text[1:]), key=len, reverse=True
    )
    return re.sub(r"(?<=\d)(?:" + "|".join(map(re.escape, per)) + r")(?![a-z])", "", re.sub("[$€]", "", text))


def recompute(text: str, system: System) -> float:
    """Work out a printed sum the way a person would: units dropped, thousands marks dropped, signs of arithmetic."""
    for unit in (unit.text for unit in UNITS if " " in unit.text):
        text = text.replace("\u00a0" + unit.replace(" ", "\u00a0"), "")
    text = re.sub(r"\u00a0(?:[^\s(),]|\([^\s()]*\))+", "", text)  # any other unit: no space in it, its brackets closed
    text = _without_prices(text).replace("/h", "")
    text = re.sub(r"(?<=\d),(?=\d{3})", "", text) if system == "us" else text.replace("\u202f", "")
    for sign, plain in (("\u2212", "-"), ("\u00d7", "*"), ("\u00f7", "/"), ("^", "**")):
        text = text.replace(sign, plain)
    assert not re.search(r"[^0-9a-z_.,()+*/ eE-]", text), text
    return float(eval(text, {"__builtins__": {}, **FUNCTIONS, "pi": math.pi}))  # noqa: S307 - a sum of our own printing


def last_digit(text: str, system: System) -> tuple[float, float]:
    """A printed number and half a unit in its last digit."""
    number = _without_prices(text).partition("\u00a0")[0].replace("\u2212", "-")
    number = number.replace(",", "" if system == "us" else ",").replace("\u202f", "").removesuffix("/h")
    decimals = len(number.partition(".")[2])
    trailing = len(number) - len(number.rstrip("0")) if not decimals and number.strip("-0") else 0
    return float(number), 0.5 * 10.0 ** (trailing if not decimals else -decimals)
