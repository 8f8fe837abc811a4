"""How a plan stands as a whole: the verdict in one word with its reason, and the change after which it stands best."""

from collections.abc import Collection, Sequence

from calc.engine.read import Reading
from calc.engine.sheet import Said, Shown
from calc.engine.standing import standing
from calc.engine.texts import Texts
from calc.engine.values import TakenOver, Values, applies, chain, changed
from calc.engine.words import CHANGE, VERDICT, VERDICT_WORDS, Outlook, Variant
from calc.engine.worksheet import Worksheet

ASKED = "asked"  # a part that would fail with the number that stands in for one nobody gave
_GRAVE = {"stop": 1000, "unworkable": 100, ASKED: 20}
_WEIGHT = {**_GRAVE, "tight": 10, "caution": 10, "not checked": 1, "pass": 0, "note": 0}


def best_change(
    worksheet: Worksheet, reading: Reading, worked: Values, settled: Values, kind: Values | None, taken: TakenOver
) -> tuple[Variant, Values] | None:
    """Of the changes worth trying, the one after which it stands best, with the values then; None if none helps.

    `kind` are the values if all that was taken on the careful side were kind.
    """
    origins = {key: entry.origin for key, entry in reading.inputs.items()}

    def trouble(those: Values) -> int:
        advised = [
            advice.level
            for advice in (worksheet.advice if worksheet.outlook else ())
            if applies(advice, those) and advice.condition(those, origins)
        ]
        parts = [standing(check, reading, those, kind, taken) for check in chain(worksheet, those)]
        # What only fails because of a number that nobody gave must not look better than what just holds.
        judged = [ASKED if part.unsaid and not part.foreign else part.status for part in parts]
        return sum(_WEIGHT[level] for level in [*advised, *judged])

    best, least = None, trouble(settled)
    for row in worksheet.changes:
        if reading.inputs.keys().isdisjoint(row.changes):
            continue
        other = changed(worksheet, reading, worked, row)
        if other is not None and (left := trouble(other)) < least:
            best, least = (row, other), left
    return best


def told(
    worksheet: Worksheet, values: Values, advice: Sequence[Said], change: tuple[Variant, Values] | None, text: Texts
) -> dict[str, Shown]:
    """The results that tell the outlook, by their keys; none for a worksheet without one."""
    if worksheet.outlook is None:
        return {}
    grave = {said.code for said in worksheet.advice if said.level in ("stop", "unworkable")}
    verdict, why = _verdict(worksheet.outlook, values, advice, grave)
    outlook = {
        VERDICT: (verdict, VERDICT_WORDS[verdict].format(why=text.fill(why))),
        CHANGE: (None, "nothing needs it"),
    }
    if verdict == "not-yet":
        outlook[CHANGE] = (None, "not yet known")
    elif change:
        row, other = change
        outlook[CHANGE] = ("; ".join(f"{key} {to}" for key, to in row.changes.items()), text.fill(row.label, other))
    elif verdict != "yes":
        outlook[CHANGE] = (None, "none of those tried")
    return {
        result.key: Shown(
            result.key, text.fill(result.label), text.fill(result.say), "choice", *outlook[result.key], ""
        )
        for result in worksheet.results
        if result.key in outlook
    }


def _verdict(outlook: Outlook, values: Values, advice: Sequence[Said], grave: Collection[str]) -> tuple[str, str]:
    """The verdict's key, and its reason with names in braces; what would be `grave` if it were known asks for care."""
    codes: dict[str, set[str]] = {}
    for said in advice:
        codes.setdefault(said.level, set()).add(said.code)
    for level in ("stop", "unworkable"):
        if level in codes:
            return "no", _first(outlook, codes[level])[1]
    for name, why in outlook.awaits:
        if values.get(name, 0.0) is None:  # what this case does not ask for is not lacking
            return "not-yet", why
    if "caution" not in codes:
        return "yes", ""
    code, why = _first(outlook, codes["caution"])
    return "yes-with", f"care: {why}" if code in grave else why


def _first(outlook: Outlook, codes: set[str]) -> tuple[str, str]:
    """The code and the reason that stand first among these codes of advice."""
    return next((code, why) for code, why in outlook.because.items() if code in codes)
