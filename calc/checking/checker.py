"""Looks for every mistake in a worksheet's declaration, and stops at the first with a sentence that says where it is.

Each word says what it uses (`Uses`), and all of them are walked here: first whether what a word names is there at all,
then whether it is there in every case in which the word is said. This runs in tests and on the desktop when a worksheet
is first used; the page does without it, since by then every mistake was found.
"""

from collections.abc import Collection, Iterator

from calc.checking.checked import Checked, known, must
from calc.checking.reasoning import can_hold, mismatches, texts_compared
from calc.checking.rules import MEANING, SHAPE
from calc.engine.conditions import condition
from calc.engine.fields import DeclarationError, Field
from calc.engine.recorded import OnlyWith, Sizes
from calc.engine.sentences import placeholders
from calc.engine.steps import Pick, Step, branches_of
from calc.engine.uses import Word
from calc.engine.words import Comparison
from calc.engine.worksheet import Worksheet
from calc.sources import SOURCES
from calc.units import KINDS, UnitError, unit_named

_CALLED = ("key", "code", "title", "label", "name", "worksheet", "on", "that", "drawing")


def check(worksheet: Worksheet, worksheets: Collection[str]) -> None:
    """Raises DeclarationError at the first mistake; `worksheets` are the keys that a Next may name."""
    checked = Checked(worksheet)
    named = list(words(worksheet))
    for look in (_shape, _cases, _twice, _meaning):
        for word, called in named:
            try:
                look(checked, word, worksheets)
            except DeclarationError as wrong:
                raise DeclarationError(f"{checked.file}: {called}: {wrong}") from None


def words(worksheet: Worksheet) -> Iterator[tuple[Word, str]]:
    """Every word of a declaration with what it is called."""
    plain: list[Word] = [*worksheet.all_fields(), *worksheet.givens, *branches_of(worksheet.cases)]
    plain += [*worksheet.all_steps(), *worksheet.results, *worksheet.advice, *worksheet.checks, *worksheet.musts]
    plain += [*worksheet.examples, *worksheet.changes, *worksheet.follow, *worksheet.sizes, *worksheet.suits]
    plain += [*worksheet.takes, *worksheet.sweeps, worksheet]
    plain += [word for word in (worksheet.picture, worksheet.chart, worksheet.in_record, worksheet.outlook) if word]
    for word in plain:
        yield word, _called(word)
    for line in worksheet.chart.lines if worksheet.chart else ():
        yield line, f"Chart, {_called(line)}"
    for table in worksheet.tables:
        yield table, _called(table)
        for row in table.rows if isinstance(table, Comparison) else ():
            yield row, f"{_called(table)}, {_called(row)}"


def _called(word: Word) -> str:
    if isinstance(word, Sizes | OnlyWith):
        return f"{type(word).__name__} {word.part.name if isinstance(word, Sizes) else word.choice.key}"
    name = next((str(getattr(word, called)) for called in _CALLED if getattr(word, called, "")), "")
    return f"{type(word).__name__} {name}".strip()


def _shape(checked: Checked, word: Word, worksheets: Collection[str]) -> None:
    """Whether everything that a word names is there, in one case or another, and every text can be read."""
    uses = word.uses()
    for kind in uses.kinds:
        known(kind, KINDS, "kind")
    for key in uses.sources:
        known(key, SOURCES, "source")
    for key in uses.worksheets:
        known(key, worksheets, "worksheet")
    for text, kind in uses.units:
        _unit(text, kind)
    for text, kind in uses.amounts:
        checked.amount(text, kind)
    for text in uses.plain:
        must("{" not in text and "}" not in text, f"{text!r} is shown as it stands: it takes no names in braces")
    for key in (*uses.names, *uses.numbers, *(name for text in uses.sentences for name in placeholders(text))):
        known(key, checked.names, "field, given or step")
    for key in uses.fields:
        known(key, checked.fields, "field")
    for text in uses.conditions:
        known_names = condition(text)
        for key in sorted(known_names.names):
            known(key, checked.names, "field, given or step")
        for key, option in texts_compared(known_names):
            if key in checked.fields and checked.options(key):
                checked.option(key, option)
    for key, option in uses.only:
        checked.option(key, option)
    for key, text in uses.texts:
        checked.value(key, text)
    if type(word) in SHAPE:
        SHAPE[type(word)](checked, word)


def _cases(checked: Checked, word: Word, _: Collection[str]) -> None:
    """Whether the steps of every case find an order in which each has what it needs."""
    if word is checked.worksheet:
        must(checked.cases, "it has no case")


def _twice(checked: Checked, word: Word, _: Collection[str]) -> None:
    """Whether a field or step has its key for itself in every case."""
    if isinstance(word, Field | Step | Pick):
        for case in checked.having(word):
            alone = word.key not in checked.givens and len(case.parts[word.key]) == 1
            must(alone, f"{word.key} stands twice{case.words}")


def _meaning(checked: Checked, word: Word, _: Collection[str]) -> None:
    """Whether what a word uses is there, and of the right kind, in each case in which the word is said."""
    uses = word.uses()
    said = [
        case
        for case in checked.cases
        if case.kinds.keys() >= set(uses.where)
        and all(case.choices.get(key, option) == option for key, option in uses.only)
        and (not uses.where or all(can_hold(condition(text), case.choices, case.there) for text in uses.conditions))
    ]
    must(said, f"in no case are {', '.join(sorted(uses.where))} there as it needs them, so it is never said")
    for case in said:
        for text in uses.sentences:
            for key in placeholders(text):
                must(key in case.kinds, f"{key!r} has no value{case.words}, and {text!r} names it")
        for text in uses.conditions:
            for sentence in mismatches(condition(text), case.kinds):
                raise DeclarationError(sentence)
        for key in uses.numbers:
            must(case.kinds.get(key) != "choice", f"{key} is a choice, where a number is needed")
        for text, key in uses.units_of:
            if key in case.kinds:
                _unit(text, case.kinds[key])
    if type(word) in MEANING:
        MEANING[type(word)](checked, word, said)


def _unit(text: str, kind: str) -> None:
    try:
        if text:
            unit_named(text, kind)
    except UnitError as wrong:
        raise DeclarationError(f"the unit {text!r} of {kind} {wrong.reason}") from None
