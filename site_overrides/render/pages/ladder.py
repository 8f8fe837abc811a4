"""The ladder diagram: each rung tells what must be so for the thing at its end to run; drawn and said from one text."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from render.templating import fill

LEFT, RIGHT = 16, 384  # the two poles of the supply
FIRST, APART = 62, 80  # the first contact of a rung, and from one to the next
LOAD = 332  # middle of what runs
RUNG, BRANCH = 84, 76  # height of a rung, and of each further branch of it
TOP = 56


@dataclass(frozen=True)
class Contact:
    """One condition: its two short lines in the drawing, and how a sentence says it.

    A contact is drawn as it stands with everything cold and off: open, or `closed` until its condition is gone.
    """

    above: str
    below: str
    says: str
    closed: bool = False


@dataclass(frozen=True)
class Rung:
    """What runs, and the ways that lead to it: all contacts of any one branch."""

    load: str
    runs: str
    branches: tuple[tuple[Contact, ...], ...]

    @property
    def sentence(self) -> str:
        """The rung as a sentence."""
        ways = [" and ".join(contact.says for contact in branch) for branch in self.branches]
        return f"{self.runs} when {', or when '.join(ways)}."


_ROOM = Contact("room", "calls", "a room asks for heat")
_TOO_HOT = Contact("stove", "too hot", "the plain thermostat on the stove's outlet says too hot")
LADDER = (
    Rung(
        "charging pump",
        "The charging pump runs",
        (
            (
                Contact("stove", "warm", "the stove is warm enough"),
                Contact("stove", "over store", "the stove is hotter than the bottom of the store"),
            ),
            (_TOO_HOT,),
        ),
    ),
    Rung("bell", "The bell rings", ((_TOO_HOT,),)),
    Rung(
        "house pump",
        "The house pump runs",
        (
            (
                _ROOM,
                Contact("store top", "warm", "the top of the store is warm enough"),
                Contact("floor not", "too hot", "the floor's own limit has not opened", closed=True),
            ),
        ),
    ),
    Rung(
        "blower",
        "A blower in the ducts runs",
        ((_ROOM, Contact("coil", "warm", "the water at its coil is warm enough")),),
    ),
    Rung(
        "other heater",
        "The other heater runs",
        ((_ROOM, Contact("store top", "not warm", "the top of the store is too cool", closed=True)),),
    ),
    Rung(
        "air flap",
        "The air flap is held open",
        ((Contact("stove not", "too hot", "the stove's limit has not opened", closed=True),),),
    ),
)


def drawing(ladder: Sequence[Rung] = LADDER) -> str:
    """The diagram with its sentences in words below."""
    return str(fill("pages/ladder.html", **_drawn(ladder), left=LEFT, right=RIGHT, load=LOAD))


def _drawn(ladder: Sequence[Rung]) -> Mapping[str, Any]:
    rungs = list(_placed(ladder))
    return {
        "rungs": rungs,
        "height": rungs[-1]["bottom"] + 40,
        "sentences": [rung.sentence for rung in ladder],
        "top": TOP - 34,
    }


def _placed(ladder: Sequence[Rung]) -> Iterator[dict[str, Any]]:
    height = TOP
    for number, rung in enumerate(ladder, 1):
        lines = [height + BRANCH * at for at in range(len(rung.branches))]
        yield {
            "number": number,
            "load": rung.load,
            "at": height,
            "bottom": lines[-1],
            "branches": [
                {
                    "at": line,
                    "contacts": [
                        {"x": FIRST + APART * place, "contact": contact} for place, contact in enumerate(branch)
                    ],
                }
                for line, branch in zip(lines, rung.branches, strict=True)
            ],
        }
        height = lines[-1] + RUNG
