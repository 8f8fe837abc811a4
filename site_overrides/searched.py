"""What a part of a page says to the search index, in as few tags as that takes.

The search plugin reads each page tag by tag, and a worksheet has thousands of them for a few hundred words. So it is
given these, and the part itself takes their place afterwards.
"""

from html import escape
from html.parser import HTMLParser

from material.plugins.search.plugin import Parser, void  # type: ignore[import-untyped]

KEPT, SKIPPED = Parser().keep, Parser().skip
HEADINGS = {f"h{level}" for level in range(1, 7)}


def words(html: str) -> str:
    """The words of a part, with the tags that mean something to the plugin: those it keeps, and around headings."""
    reading = _Reading()
    reading.feed(html)
    reading.close()
    return "".join(reading.pieces)


class _Reading(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.pieces: list[str] = []
        self._open: list[tuple[str, int, bool]] = []  # tag, the piece that opens it, whether what is in it is left out

    @property
    def _left_out(self) -> bool:
        return bool(self._open) and self._open[-1][2]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in void:
            return
        named = dict(attrs)
        left_out = self._left_out or tag in SKIPPED or "data-search-exclude" in named
        self._open.append((tag, len(self.pieces), left_out))
        opened = ""
        if not left_out and tag in KEPT:
            opened = f"<{tag}>"
        if not left_out and tag in HEADINGS and "id" in named:
            opened = f'<{tag} id="{escape(named["id"] or "")}">'
            for around, piece, _ in self._open[:-1]:
                self.pieces[piece] = self.pieces[piece] or f"<{around}>"
        self.pieces.append(opened)

    def handle_endtag(self, tag: str) -> None:
        if not self._open or self._open[-1][0] != tag:
            return
        _, piece, _ = self._open.pop()
        if self.pieces[piece]:
            self.pieces.append(f"</{tag}>")

    def handle_data(self, data: str) -> None:
        if not self._left_out:
            self.pieces.append(escape(data, quote=False))
