"""How an edition looks: its logo and its colours, taken only where they can do no harm and can be read by everybody."""

import re
import struct
import xml.etree.ElementTree as ET
from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

from edition.reading import EditionError

LARGEST_LOGO = 200_000  # bytes: a logo is fetched by every page
LARGEST_SIDE = 2000  # pixels
CONTRAST = 4.5  # WCAG 2.2, success criterion 1.4.3: words against what they stand on
TOKENS = Path(__file__).parent.parent / "theme" / "assets" / "css" / "tokens.css"
PNG = b"\x89PNG\r\n\x1a\n"
SVG = "{http://www.w3.org/2000/svg}"
DRAWN = {
    *("svg", "g", "defs", "symbol", "use", "title", "desc", "style", "text", "tspan"),
    *("path", "rect", "circle", "ellipse", "line", "polyline", "polygon"),
    *("clipPath", "mask", "pattern", "linearGradient", "radialGradient", "stop"),
}


class Standing(NamedTuple):
    """What a colour has to be read against, on which page (light or dark), and which way to mend it.

    `others` begin the names of colours in the style sheet: what stands on this one, or what it stands on.
    """

    said: str
    scheme: str
    others: tuple[str, ...]
    mend: str


STANDING = {
    "bar": Standing("what stands on the bar or on an answer", "default", ("bar-", "plate-"), "darker"),
    "accent": Standing("the light page", "default", ("ground", "panel", "sunk"), "darker"),
    "accent_dark": Standing("the dark page", "slate", ("ground", "panel", "sunk"), "lighter"),
}


def tokens(scheme: str) -> dict[str, str]:
    """The colours of the light page ("default") or the dark one ("slate"), from the style sheet that names them."""
    text = TOKENS.read_text(encoding="utf-8")
    block = text.partition(f'[data-md-color-scheme="{scheme}"] {{')[2].partition("}")[0]
    return dict(re.findall(r"--ss-([a-z-]+): (#[0-9a-f]{6});", block))


def luminance(colour: str) -> float:
    """Relative luminance of #rrggbb, as WCAG 2.2 defines it: 0 for black, 1 for white."""
    shares = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    linear = [share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4 for share in shares]
    return sum(part * weight for part, weight in zip(linear, (0.2126, 0.7152, 0.0722), strict=True))


def contrast(first: str, other: str) -> float:
    """The ratio of two colours as WCAG 2.2 defines it, from 1 to 21."""
    dark, light = sorted((luminance(first), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def check_colours(colours: Mapping[str, str], where: str) -> None:
    """Raise EditionError at a colour that is none, or that cannot be read where it stands."""
    for key, colour in colours.items():
        if not re.fullmatch(r"#[0-9a-fA-F]{6}", colour):
            raise EditionError(f"{where}, {key}: “{colour[:20]}” is no colour: write a # and six digits, like #17383f.")
        standing = STANDING[key]
        known = tokens(standing.scheme)
        worst = min(contrast(colour, known[name]) for name in known if name.startswith(standing.others))
        if worst < CONTRAST:
            raise EditionError(
                f"{where}, {key}: {colour} and {standing.said} differ by {worst:.1f} to 1, and to be read they must by "
                f"{CONTRAST} to 1: write a {standing.mend} colour."
            )


def style(colours: Mapping[str, str]) -> str:
    """The style sheet that puts an edition's colours in place of ours, on screens that show colours as told."""
    everywhere, light, dark = (
        ':root, [data-md-color-scheme="default"], [data-md-color-scheme="slate"]',
        ':root, [data-md-color-scheme="default"]',
        '[data-md-color-scheme="slate"]',
    )
    rules = {
        "bar": ((everywhere, "bar"), (light, "plate")),
        "accent": ((light, "link"),),
        "accent_dark": ((dark, "link"),),
    }
    lines = [
        f"  {where} {{ --ss-{name}: {colours[key]}; }}"
        for key, places in rules.items()
        if key in colours
        for where, name in places
    ]
    return "\n".join(["@media screen and (forced-colors: none) {", *lines, "}", ""])


def check_logo(folder: Path, name: str, where: str) -> Path:
    """The logo's file. EditionError where it is missing, too large, or holds more than a drawing."""
    path = folder / name
    if Path(name).name != name or path.suffix not in (".svg", ".png"):
        raise EditionError(f"{where}: “{name}” is no name of a file here: write that of an SVG or PNG in this folder.")
    if not path.is_file():
        raise EditionError(f"{where}: there is no file {name} in {folder.name}: put it there, or take the line out.")
    size = path.stat().st_size
    if size > LARGEST_LOGO:
        raise EditionError(
            f"{where}: {name} has {size:,} bytes, and every page would fetch it: save it smaller, with at most "
            f"{LARGEST_LOGO:,}."
        )
    content = path.read_bytes()
    why = _wrong_png(content) if path.suffix == ".png" else _wrong_svg(content)
    if why:
        raise EditionError(f"{where}: {name} {why}.")
    return path


def _wrong_png(content: bytes) -> str:
    if not content.startswith(PNG) or len(content) < 24 or b"IEND" not in content[-12:]:
        return "is no whole PNG picture: save it again as PNG"
    if max(struct.unpack(">II", content[16:24])) > LARGEST_SIDE:
        return f"is more than {LARGEST_SIDE:,} pixels wide or high: save it smaller"
    return ""


def _wrong_svg(content: bytes) -> str:
    """Why a drawing cannot be taken. What a drawing needs is listed, and all else is refused."""
    plain = "save it as plain SVG, with paths and nothing else"
    try:
        text = content.decode("utf-8")
    except UnicodeDecodeError:
        return f"is not in UTF-8: {plain}"
    if re.search(r"<!(DOCTYPE|ENTITY)|<\?xml-stylesheet", text, re.IGNORECASE):
        return f"declares entities or a style sheet of its own: {plain}"
    try:
        root = ET.fromstring(text.encode())  # noqa: S314 - what declares entities was refused above
    except ET.ParseError as wrong:
        return f"cannot be read as SVG ({wrong}): {plain}"
    if root.tag != f"{SVG}svg" or "viewBox" not in root.attrib:
        return f"has no svg element with a viewBox, which says how wide it is to its height: {plain}"
    for element in root.iter():
        name = element.tag.removeprefix(SVG)
        if name.casefold().rpartition("}")[2] == "script":
            return f"holds a script: {plain}"
        if name not in DRAWN:
            return f"holds <{name.rpartition('}')[2][:40]}>, which is no part of a plain drawing: {plain}"
        why = _wrong_attributes(element)
        if why:
            return f"{why}: {plain}"
    return ""


def _wrong_attributes(element: ET.Element) -> str:
    for key, value in element.attrib.items():
        name = key.rpartition("}")[2].casefold()
        if name.startswith("on"):
            return f"holds a script ({name})"
        if (name == "href" and not value.startswith("#")) or _points_outside(value):
            return f"points outside itself ({name})"
    if element.tag == f"{SVG}style" and ("@" in (element.text or "") or _points_outside(element.text or "")):
        return "points outside itself (style)"
    return ""


def _points_outside(text: str) -> bool:
    """Whether a value or a style may have something fetched; a backslash could hide a word of a style."""
    return bool(re.search(r"url\(\s*[\"']?(?!#|[\"'\s])|//|\\|javascript:|image", text, re.IGNORECASE))
