"""Reads what an edition says against what it may say: each mistake is one sentence with its place and what to write."""

import datetime
import difflib
import re
from collections.abc import Callable, Mapping
from typing import Any

from calc.engine.typed import Reader, Typed
from calc.units import Quantity, System, UnitError, is_bare, read_quantity, shown_unit, with_unit
from edition.declared import CURRENCIES, Fact, Item, inputs

LONGEST_FACT = 300  # characters


class EditionError(ValueError):
    """An edition that cannot be used; the message is a sentence that names the place and what to write there."""


def check(told: Mapping[str, Any], items: tuple[Item, ...], where: str) -> None:
    """Raise EditionError at the first entry that is unknown, missing or of another kind than declared."""
    known = {item.key: item for item in items}
    for key in told:
        if key not in known:
            raise EditionError(f"{where} holds what no edition has: {key[:60]}. {near(key, known)}")
    for item in items:
        if item.key in told:
            _KINDS[item.kind](told[item.key], item, f"{where}, {item.key}")
        elif item.required:
            raise EditionError(f"{where} lacks {item.key}: write {item.write}.")


def near(word: str, known: Mapping[str, Any]) -> str:
    """Which known word may have been meant."""
    alike = difflib.get_close_matches(word[:60], known, 3)
    return f"Did you mean {' or '.join(alike)}?" if alike else f"Known are {', '.join(list(known)[:20])}."


def _text(told: Any, item: Item, where: str) -> None:
    if not isinstance(told, str) or not told.strip():
        raise EditionError(f"{where}: write {item.write}, in quotes.")
    if len(told) > item.longest:
        raise EditionError(f"{where} has {len(told):,} characters: write {item.write}, in {item.longest} at most.")


def _choice(told: Any, item: Item, where: str) -> None:
    if told not in item.options:
        raise EditionError(f"{where} must be one of {', '.join(item.options)}.")


def _choices(told: Any, item: Item, where: str) -> None:
    wrong = [option for option in told if option not in item.options] if isinstance(told, list) else [told]
    if wrong:
        raise EditionError(
            f"{where}: {str(wrong[0])[:60]!r} is none that can stand here; these can: {', '.join(item.options)}."
        )


def _flag(told: Any, _: Item, where: str) -> None:
    if not isinstance(told, bool):
        raise EditionError(f"{where}: write true or false, without quotes.")


def _count(told: Any, item: Item, where: str) -> None:
    if not isinstance(told, int) or isinstance(told, bool) or told < 1:
        raise EditionError(f"{where}: write {item.write}, as a whole number without quotes.")


def _date(told: Any, item: Item, where: str) -> None:
    if not isinstance(told, datetime.date) or isinstance(told, datetime.datetime):
        raise EditionError(f"{where}: write {item.write}, without quotes.")


def _table(told: Any, item: Item, where: str) -> None:
    if not isinstance(told, dict):
        raise EditionError(f"{where}: write {item.write} below a line [{item.key}].")
    check(told, item.items, where)


def _rows(told: Any, item: Item, where: str) -> None:
    if not isinstance(told, list) or not all(isinstance(row, dict) for row in told):
        raise EditionError(f"{where}: write each below a line [[{item.key}]].")
    for number, row in enumerate(told, 1):
        check(row, item.items, f"{where}, number {number}")


def _fills(told: Any, item: Item, where: str) -> None:
    if not isinstance(told, dict) or not told:
        raise EditionError(f'{where}: write {item.write}, each as in altitude = "3,000 ft".')
    known = inputs()
    for key, text in told.items():
        if key not in known:
            raise EditionError(f"{where}: no worksheet asks {key[:60]!r}. {near(key, known)}")
        if not isinstance(text, str):
            raise EditionError(f"{where}, {key}: write the number with its unit in quotes.")


_KINDS: dict[str, Callable[[Any, Item, str], None]] = {
    "text": _text,
    "choice": _choice,
    "choices": _choices,
    "flag": _flag,
    "count": _count,
    "date": _date,
    "table": _table,
    "rows": _rows,
    "fills": _fills,
}


def check_value(key: str, text: str, units: System, where: str, currency: str = "") -> None:
    """Raise EditionError where the form's own reader refuses a text, or where a bare number could mean two units."""
    fields, reader, why = inputs()[key], Reader(), ""
    unit = fields[0].unit(units).text if fields[0].kind != "choice" else ""
    if unit and is_bare(text):
        like = with_unit(text.strip(), fields[0].unit(units)).replace("\xa0", " ")
        raise EditionError(f"{where}: “{text[:40]}” has no unit: write {like}, if that is what you mean.")
    for field in fields:
        outcome = reader.read(field, Typed(text, units))
        if outcome.value is not None:
            measure = outcome.quantity.unit.ascii if outcome.quantity else ""
            _check_currency(field.label, text, measure, where, currency)
            return
        why = why or f"{field.label} {outcome.reason}{outcome.like}".replace("\xa0", " ")
    raise EditionError(f"{where}: “{text[:40]}” cannot stand here: {why}.")


def _check_currency(label: str, text: str, unit: str, where: str, currency: str) -> None:
    if currency and unit[:3] in CURRENCIES and unit[:3] != currency:
        raise EditionError(
            f"{where}: “{text[:40]}” is in {unit[:3]} and this edition's currency is {currency}: write {label} "
            f"in {currency}, or change currency."
        )


def check_fact(fact: Fact, text: str, units: System, where: str, currency: str) -> None:
    """Raise EditionError where what stock says of itself is not of its kind."""
    if fact.kind == "address":
        if not re.fullmatch(r"https://[^\s\"'<>]+", text) or len(text) > LONGEST_FACT:
            raise EditionError(f"{where}: “{text[:40]}” is no address: write one that begins with https://.")
    elif fact.kind == "text":
        if len(text) > LONGEST_FACT:
            raise EditionError(f"{where} has {len(text):,} characters: write {LONGEST_FACT} at most.")
    else:
        read = measured(text, fact.kind, units, where)
        if read.si < 0:
            raise EditionError(f"{where}: “{text[:40]}” is below nothing: write what it is.")
        _check_currency(fact.label, text, read.unit.ascii, where, currency)


def measured(text: str, kind: str, units: System, where: str) -> Quantity:
    """The quantity in a text that names its unit. EditionError where it is none."""
    unit = shown_unit(kind, units)
    try:
        read = read_quantity(text, kind, unit, units)
    except UnitError as wrong:
        raise EditionError(f"{where}: “{text[:40]}” cannot stand here: it {wrong.reason}.") from None
    if is_bare(text):
        like = with_unit(text.strip(), unit).replace("\xa0", " ")
        raise EditionError(f"{where}: “{text[:40]}” has no unit: write {like}, if that is what you mean.")
    return read
