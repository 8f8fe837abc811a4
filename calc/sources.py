"""Where numbers and equations come from: a key for each source, and how it is known.

`known` is one of: "read" (the text was read), "second-hand" (quoted or coded by others), "computed" (worked out with an
independent library), "memory" (standard, not looked up again), "common practice" (a custom of the trade without a
published source), "definition".
"""

from dataclasses import dataclass

KNOWN = ("read", "second-hand", "computed", "memory", "common practice", "definition")


@dataclass(frozen=True)
class Source:
    """A source: who published it, what it is called, when, where in it to look, and how it is known."""

    body: str
    title: str
    year: str
    place: str
    known: str

    def __post_init__(self) -> None:
        if self.known not in KNOWN:
            raise ValueError(f"{self.title}: known must be one of {', '.join(KNOWN)}")


SOURCES: dict[str, Source] = {
    "first-law": Source("", "Energy balance: heat given up is amount × heat capacity × temperature fall", "", "", "definition"),
    "definition": Source("", "By definition", "", "", "definition"),
    "common-practice": Source("", "Common practice of the trade, no published source found", "", "", "common practice"),
}
