"""The ladder diagram says what it draws, its words find room, and what guards the fire hangs on no sensor's relay."""

import re

from render.drawings.piping.figure import width_of
from render.pages.ladder import APART, FIRST, LADDER, LEFT, RIGHT, drawing

SHOWN = drawing()


def _texts() -> list[tuple[float, float, str, str]]:
    match = re.findall(r'<text class="([^"]+)" x="([\d.]+)" y="([\d.]+)">([^<]*)</text>', SHOWN)
    return [(float(x), float(y), text, kind) for kind, x, y, text in match]


def test_every_rung_is_drawn_and_said() -> None:
    words = {text for *_, text, _ in _texts()}
    for number, rung in enumerate(LADDER, 1):
        assert {str(number), rung.load} <= words
        assert f"<li>{rung.sentence}</li>" in SHOWN.replace("&#39;", "'")
        for contact in (entry for branch in rung.branches for entry in branch):
            assert {contact.above, contact.below} <= {word.replace("&#39;", "'") for word in words}


def test_a_closed_contact_has_its_stroke() -> None:
    closed = sum(contact.closed for rung in LADDER for branch in rung.branches for contact in branch)
    assert len(re.findall(r"L\d+ \d+", SHOWN)) == closed


def test_words_keep_clear_of_each_other_and_of_the_poles() -> None:
    boxes = []
    for x, y, text, kind in _texts():
        wide = width_of(text, bold="sv-b" in kind)
        left = x - (wide if "sv-end" in kind else wide / 2)
        assert left > LEFT and left + wide < RIGHT, text
        boxes.append((left, y - 11, left + wide, y + 4, text))
    for at, entry in enumerate(boxes):
        for other in boxes[at + 1 :]:
            apart = entry[2] <= other[0] or other[2] <= entry[0] or entry[3] <= other[1] or other[3] <= entry[1]
            assert apart, (entry[4], other[4])
    assert all(FIRST + APART * (len(branch) - 1) < 300 for rung in LADDER for branch in rung.branches)


def test_a_plain_thermostat_starts_the_charging_pump_past_everything_else() -> None:
    (charging,) = [rung for rung in LADDER if rung.load == "charging pump"]
    assert [len(branch) for branch in charging.branches][1:] == [1]
    assert "plain thermostat" in charging.branches[1][0].says


def test_no_rung_feeds_the_dump() -> None:
    assert not [rung for rung in LADDER if "dump" in rung.sentence or "vent" in rung.sentence.split()]
