"""A text as a QR code, drawn as SVG that takes its colours from the style sheet."""

from markupsafe import Markup

from render.templating import fill

QUIET = 4  # modules of white that a reader's camera needs around the code
ROBUST = 700  # characters up to which the code mends itself from more damage; longer ones stay coarser without


def svg(text: str, title: str) -> Markup:
    """The code as SVG; nothing where the library that makes it is not on board or the text is too long for one."""
    # Imported here: the page fetches it only when somebody wants a code.
    try:
        import segno
    except ImportError:
        return Markup()
    try:
        code = segno.make_qr(text, error="m" if len(text) <= ROBUST else "l", boost_error=False)
    except segno.DataOverflowError:
        return Markup()
    rows = [bytes(row) for row in code.matrix_iter(border=QUIET)]
    return fill("qr.svg", size=len(rows), path=_path(rows), title=title)


def _path(rows: list[bytes]) -> str:
    """Each run of dark modules in a row as one flat rectangle."""
    steps = []
    for y, row in enumerate(rows):
        x = 0
        while (start := row.find(1, x)) >= 0:
            end = row.find(0, start)
            x = len(row) if end < 0 else end
            steps.append(f"M{start} {y}h{x - start}v1H{start}z")
    return "".join(steps)
