"""What a person types becomes a quantity, or a sentence that says what to type instead."""

import math
import re
import unicodedata
from typing import NamedTuple

from calc.units.kinds import System, Unit, UnitError
from calc.units.showing import MINUS
from calc.units.table import unit_named

LONGEST_TEXT = 200  # characters; a number and its unit are far shorter
LARGEST = 1e100  # in SI: what is below stays a number in every other unit too
_DASHES = f"{MINUS}\N{HYPHEN}\N{NON-BREAKING HYPHEN}\N{FIGURE DASH}\N{EN DASH}"  # what word processors make of a minus
_VULGAR = {chr(code) for code in (*range(0xBC, 0xBF), *range(0x2150, 0x215F), 0x2189)}
_GROUPED = re.compile(r"[1-9]\d{0,2}(?:,\d{3})+")
_NUMBER = re.compile(
    r"""(?P<sign>[+-]?)\s*
        (?: (?P<whole>\d+)(?:\s+|\s*-\s*)(?P<over>\d+)\s*/\s*(?P<under>\d+)
          | (?P<top>\d+)\s*/\s*(?P<bottom>\d+)
          | (?P<plain>(?:\d[\d,.]*(?:[ ]\d{3}(?!\d))*(?:[.,]\d+)?|[.,]\d+)(?:[eE][+-]?\d+)?)
        )""",
    re.VERBOSE,
)


class Quantity(NamedTuple):
    """What was read: the SI value, the number in plain ASCII as typed, its unit, and how else it might be meant.

    `taken_as` tells, where a text could mean two things, what it was taken for: "82 %".
    """

    si: float
    number: str
    unit: Unit
    taken_as: str = ""

    def link_text(self) -> str:
        return self.number + self.unit.ascii


def is_bare(text: str) -> bool:
    """Whether a text is a number and nothing behind it, so that the unit beside its box is its unit."""
    return _NUMBER.fullmatch(text.strip()) is not None


def read_quantity(text: str, kind: str, shown: Unit, system: System) -> Quantity:
    """Read what a person typed in a field of `kind` beside which the unit `shown` stands.

    Raises UnitError whose reason completes a sentence that begins with the field's label.
    """
    text = _plain(text)
    if kind == "thermal_resistance":
        text = re.sub(r"^R\s*-?\s*(?=\d)", "", text, flags=re.IGNORECASE)  # builders say R-19
    if kind in ("fraction", "factor"):
        text = re.sub(r"^(COP)\s*(?=\d)(.*)", r"\2 \1", text, flags=re.IGNORECASE)  # COP 3.2
    if kind == "acidity":
        text = re.sub(r"^pH\s*=?\s*(?=\d)", "", text, flags=re.IGNORECASE)  # pH 8.5
    matched = _NUMBER.match(text)
    if not matched:
        raise UnitError("must start with a number", wants_example=True)
    if kind in _IN_PIECES and (pieces := _in_pieces(text, matched, kind, system)):
        return pieces
    rest = text[matched.end() :].strip()
    number, value = _value(matched, system)
    if rest == shown.text[:1] and rest in ("$", "€"):
        rest = ""  # "$3.50" beside "$/gal" is a price in the unit shown
    taken_as = ""
    if kind == "power" and _HEAT_ALONE.fullmatch(rest):
        rest += "/h"  # only a rate fits here, and this is how the trade writes one
        taken_as = f"{matched.group()} {rest}"
    if rest:
        unit = unit_named(rest, kind)
    elif kind == "fraction" and 0 < abs(value) < 1:
        # 0.82 or 4/5 beside a % sign is meant as 82 or 80 %: nobody asks for an efficiency under one percent.
        unit, value, number = shown, value * 100, format(value * 100, ".12g")
        taken_as = f"{number} %"
    else:
        unit = shown
    si = unit.to_si(value)
    if not abs(si) < LARGEST:
        raise UnitError("is too large a number")
    return Quantity(si, number, unit, taken_as)


_HEAT_ALONE = re.compile(r"(?:[km]|mm|thousand |million )?btus?", re.IGNORECASE)
_IN_PIECES = ("length", "time")  # kinds that people type in two units: 6 ft 8 in, 4 h 30 min


def _in_pieces(text: str, first: re.Match[str], kind: str, system: System) -> Quantity | None:
    """A text in two units, the second the smaller: 6 ft 8 in is 80 in; None for any other text."""
    parts = re.fullmatch(r"([^\d,;+-]*?)\s*(?:,|\band\b)?\s*(\d.*)", text[first.end() :].strip())
    if not parts or not parts[1]:
        return None
    second = _NUMBER.match(parts[2])
    if not second or not parts[2][second.end() :].strip():
        return None
    large, small = unit_named(parts[1], kind), unit_named(parts[2][second.end() :].strip(), kind)
    (_, many), (_, few) = _value(first, system), _value(second, system)
    if small.factor >= large.factor or few * small.factor >= large.factor * (1 + 1e-9):
        raise UnitError(f"is in two units that do not go together: type it in {large.text} or in {small.text}")
    number = math.copysign(abs(many) * large.factor / small.factor + few, many)
    return Quantity(small.to_si(number), format(number, ".12g"), small)


def _plain(text: str) -> str:
    if len(text) > LONGEST_TEXT:
        raise UnitError(f"is too long: type a number and its unit, at most {LONGEST_TEXT} characters")
    if any(unicodedata.category(mark) in ("Cc", "Cf", "Co", "Cn", "Cs") and mark not in "\t\n\r" for mark in text):
        raise UnitError("holds a character that cannot be read: type the number again")
    spelt = []
    for mark in text:
        if mark in _VULGAR:
            spelt.append(" " + unicodedata.normalize("NFKC", mark).replace("\N{FRACTION SLASH}", "/"))
        elif mark.isdecimal():
            spelt.append(str(unicodedata.decimal(mark)))
        elif mark in "\N{MASCULINE ORDINAL INDICATOR}\N{RING ABOVE}":
            spelt.append("°")
        else:
            spelt.append(mark)
    text = "".join(spelt).replace("\N{FRACTION SLASH}", "/")
    text = re.sub(f"[{_DASHES}]", "-", text)
    # A superscript belongs to a unit (ft²); after a digit it is a power, and 10² must not become 102.
    text = re.sub("⁻¹", "-1", text)
    if re.search(r"\d\s*[²³¹⁰⁴-⁹]", text):
        raise UnitError("must be one number, not a power")
    text = unicodedata.normalize("NFKC", text).strip()
    if text.startswith(("$", "€")):
        mark, amount = text[0], text[1:].strip()
        parts = re.match(r"[\d.,\s]*\d", amount)
        text = amount if not parts else f"{parts.group()} {mark}{amount[parts.end() :].strip()}"
    return text


def _value(matched: re.Match[str], system: System) -> tuple[str, float]:
    sign = "-" if matched["sign"] == "-" else ""
    if matched["plain"] is not None:
        number = sign + _decimal(matched["plain"], system)
        return number, float(number)
    whole = matched["whole"]
    top, bottom = (matched["over"], matched["under"]) if whole else (matched["top"], matched["bottom"])
    if len(top) > 9 or len(bottom) > 9 or int(bottom) == 0:
        raise UnitError("has a fraction that cannot be worked out")
    number = f"{sign}{whole}-{top}/{bottom}" if whole else f"{sign}{top}/{bottom}"
    value = (float(whole) if whole else 0.0) + int(top) / int(bottom)
    return number, -value if sign else value


def _decimal(text: str, system: System) -> str:
    """Plain digits with a point: thousands marks dropped, a decimal comma made a point."""
    mantissa, mark, power = text.replace("E", "e").partition("e")
    mantissa = mantissa.replace(" ", "")
    commas, points = mantissa.count(","), mantissa.count(".")
    if commas and points:
        if mantissa.rindex(",") > mantissa.rindex("."):
            if commas > 1 or not re.fullmatch(r"[1-9]\d{0,2}(?:\.\d{3})+,\d*", mantissa):
                raise UnitError("has its commas and points mixed up: type it with one decimal point and no other marks")
            mantissa = mantissa.replace(".", "").replace(",", ".")
        elif points > 1 or not _GROUPED.fullmatch(mantissa.partition(".")[0]):
            raise UnitError("has its commas and points mixed up: type it with one decimal point and no other marks")
        else:
            mantissa = mantissa.replace(",", "")
    elif _GROUPED.fullmatch(mantissa):
        if system == "si" and commas == 1:
            whole, part = mantissa.split(",")
            raise UnitError(f"could be {whole}{part} or {whole}.{part}: type it without the comma, or with a point")
        mantissa = mantissa.replace(",", "")
    elif commas == 1:
        mantissa = mantissa.replace(",", ".")
    elif commas > 1 or points > 1:
        raise UnitError("has its commas and points mixed up: type it with one decimal point and no other marks")
    mantissa = mantissa.rstrip(".") if mantissa.endswith(".") else mantissa
    mantissa = "0" + mantissa if mantissa.startswith(".") else mantissa
    if not math.isfinite(float(mantissa + mark + power)):
        raise UnitError("is too large a number")
    return mantissa + mark + power
