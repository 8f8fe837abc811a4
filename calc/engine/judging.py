"""The answer of a sheet in words: how grave the gravest thing is that is said about it, and what a chain comes to."""

from collections.abc import Sequence

from calc.engine.sheet import Judgement, Said, Shown, Verdict
from calc.engine.standing import not_said
from calc.engine.words import BESIDE, FINE, FINE_HERE, LEVEL_WORDS

_GRAVEST = ("stop", "unworkable", "not checked", "tight")


def judge(advice: Sequence[Said], sentence: str) -> Judgement:
    """The gravest advice by its title; with none above a note, the worksheet's own sentence.

    A caution that is beside the question leads no answer: it stands below, and is pointed at where nothing else does.
    """
    grave = [said for said in advice if said.level != "note"]
    own = [said for said in grave if not said.beside or said.level == "stop"]
    if not own:
        return Judgement("fine", FINE_HERE if grave else FINE, f"{sentence} {BESIDE if grave else ''}".strip())
    gravest = max((said for said in own if said.level == own[0].level), key=lambda said: said.weight)
    return Judgement(gravest.level, LEVEL_WORDS[gravest.level], gravest.title)


def judge_chain(verdicts: Sequence[Verdict]) -> Judgement:
    """Yes, no or not yet, because of the part that stands worst; parts are as good as the worst of them."""
    # Of what is not checked, that for which a number must be said comes first: a reader can do something about it.
    in_turn = sorted(verdicts, key=lambda verdict: not verdict.unsaid)
    worst = next((verdict for status in _GRAVEST for verdict in in_turn if verdict.status == status), None)
    if worst is None:
        return Judgement("fine", "Yes", "Every part that is checked here holds.")
    others = sum(verdict.status == worst.status for verdict in verdicts) - 1
    more = f" {_MORE[worst.status][others > 1].format(others)}" if others else ""
    label = (worst.label[:1].lower() + worst.label[1:]).removeprefix("the ")
    if worst.unsaid:
        return Judgement("caution", "Not yet", f"Because {not_said(worst.unsaid)}, nobody can judge the {label}.{more}")
    if worst.status == "not checked":
        return Judgement("caution", "Not yet", f"Nobody has checked this part: {label}.{more}")
    if worst.status == "tight":
        return Judgement("caution", "Yes, just", f"Because of the {label}: {worst.text}{more}")
    return Judgement(worst.status, "No", f"Because of the {label}: {worst.text}{more}")


def judge_outlook(verdict: Shown) -> Judgement:
    """The outlook of a plan as a whole: its first words, and the reason that follows them."""
    level = {"yes": "fine", "no": "unworkable"}.get(str(verdict.si), "caution")
    word, _, reason = verdict.shown.partition(", ")
    return Judgement(level, word, f"{reason[:1].upper()}{reason[1:]}{'.' if reason else ''}")


_MORE = {
    "stop": ("And one more is a danger.", "And {} more are a danger."),
    "unworkable": ("And one more fails.", "And {} more fail."),
    "not checked": ("One more cannot be judged yet.", "{} more cannot be judged yet."),
    "tight": ("And one more is tight.", "And {} more are tight."),
}


def as_headline(judgement: Judgement, count: Shown) -> Shown:
    """What a chain leads with: the word, in place of how many of its parts need attention."""
    return count._replace(label="Does it work?", say="", shown=judgement.word)


def outlook_headline(judgement: Judgement, verdict: Shown) -> Shown:
    """What a plan as a whole leads with: the first words of its verdict."""
    return verdict._replace(say="", shown=judgement.word)
