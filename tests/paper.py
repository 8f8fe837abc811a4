"""A printed document as its reader has it: pages of text, places of marks, and pictures of pages."""

from __future__ import annotations

import io
import re
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy
import pypdfium2
import zxingcpp
from pypdf import PdfReader

POINTS = 72 / 25.4  # in a millimeter
SIZES = {"A4": (210 * POINTS, 297 * POINTS), "Letter": (8.5 * 72, 11 * 72)}
FOOT = re.compile(r"Page \d+ of \d+\s*Sizing record\s*")
_LIGATURES = {"ﬀ": "ff", "ﬁ": "fi", "ﬂ": "fl", "ﬃ": "ffi", "ﬄ": "ffl"}


@dataclass(frozen=True)
class Step:
    """A step of printed working: its number, the sums, and the result."""

    number: str
    kind: str  # "sum", "solved" (two sides that are equal) or "given" (a sentence instead of a sum)
    sums: tuple[str, ...]
    result: str


@dataclass(frozen=True)
class Paper:
    """A PDF file."""

    content: bytes

    @cached_property
    def pages(self) -> list[str]:
        """The text of each page without its foot, as it was printed: lines stay lines."""
        return [FOOT.sub("", _plain(page.extract_text())) for page in PdfReader(io.BytesIO(self.content)).pages]

    @cached_property
    def sizes(self) -> list[tuple[float, float]]:
        """Width and height of each page in points."""
        return [
            (float(page.mediabox.width), float(page.mediabox.height))
            for page in PdfReader(io.BytesIO(self.content)).pages
        ]

    @cached_property
    def text(self) -> str:
        """The text of all pages."""
        return "\n".join(self.pages)

    def steps(self) -> list[Step]:
        """Every step of the working, from the printed text alone."""
        pieces = re.split(r"^Step (\d+\.\d+) ", self.text, flags=re.MULTILINE)
        told: dict[str, Step] = {}
        for number, body in zip(pieces[1::2], pieces[2::2], strict=True):
            told[number] = _step(number, body, told)
        return list(told.values())

    def picture(self, page: int, scale: float = 2) -> Any:
        """A page as an array of grey values from 0 (black) to 255, `scale` pixels for each point."""
        bitmap = pypdfium2.PdfDocument(self.content)[page].render(scale=scale, grayscale=True)
        result = bitmap.to_numpy()
        return numpy.ascontiguousarray(result.reshape(result.shape[0], result.shape[1]))

    def code(self, page: int = -1) -> str:
        """What the QR code on a page says, read from the picture of the page."""
        pages = len(self.pages)
        (result,) = zxingcpp.read_barcodes(self.picture(page % pages, 4))
        return str(result.text)

    def links(self, page: int) -> list[str]:
        """The addresses that a page leads to, as a reader of the file can click them."""
        marks = PdfReader(io.BytesIO(self.content)).pages[page].annotations or ()
        return list(dict.fromkeys(str(mark.get_object()["/A"]["/URI"]) for mark in marks))

    def beyond(self, margin: float) -> list[str]:
        """Marks that stand nearer to an edge of their page than `margin` points, or beyond it."""
        gathered = []
        document = pypdfium2.PdfDocument(self.content)
        for number in range(len(document)):
            width, height = document[number].get_size()
            text = document[number].get_textpage()
            for at in range(text.count_chars()):
                left, bottom, right, top = text.get_charbox(at)
                mark = text.get_text_range(at, 1)
                if mark.strip() and not (margin <= left and right <= width - margin and bottom > 0 and top < height):
                    gathered.append(f"page {number + 1}: {mark!r} at {left:.0f} to {right:.0f}")
        return gathered


def _plain(text: str) -> str:
    for sign, letters in _LIGATURES.items():
        text = text.replace(sign, letters)
    return text


def _step(number: str, body: str, before: dict[str, Step]) -> Step:
    """One step; a sum that is told by what differs from an earlier one is put together from that."""
    body = re.split(r"^(?:It leaves out:|\d+\. )", body, flags=re.MULTILINE)[0]
    joined = " ".join(body.split("\n"))
    solved = re.search(r"solved by (.+?)(?:, or .+?)?: left side (.+?); right side (.+)", joined)
    if solved:
        return Step(number, "solved", (solved[2].strip(), solved[3].strip()), solved[1].strip())
    total = re.search(r"^= .*", body, flags=re.MULTILINE | re.DOTALL)
    if total:
        _, part, result, *_ = (piece.strip() for piece in " ".join(total[0].split("\n")).split("="))
        return Step(number, "sum", (part,), result)
    again = re.search(r"as in (\d+\.\d+) with (.+?) gives (.+?)(?:, or .+)?$", joined.strip())
    if again:
        (written,) = before[again[1]].sums
        for pair in again[2].split(" and "):
            here, there = pair.split(" for ")
            assert there in written, (number, there, written)
            written = written.replace(there, here)
        return Step(number, "sum", (written,), again[3].strip())
    given = re.search(r" gives (.+)", joined)
    assert given, (number, body)
    return Step(number, "given", (), given[1].strip())
