"""A page of a drawing: lines, shapes and lettering in millimetres of paper, gathered into one SVG document."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from html import escape
from math import isfinite
from typing import Final

from engine.base.compact import compact
from engine.base.plain import plain
from engine.render.lettering import ASCENT, DESCENT, LINE, spread, text_width, wrapped

WIDTH: Final = 210.0
MARGIN: Final = 8.0
SIZE: Final = 3.1  # of the lettering, in mm of paper
SMALL: Final = 2.7
TITLE: Final = 4.6
LABEL_GAP: Final = 1.1
INK, GREY, MARK = "#1b1b1b", "#595959", "#6a1640"

# every kind of line differs by weight or dash, so that it is told apart without colour
LINES: Final = {
    "edge": f'stroke="{INK}" stroke-width="0.4"',
    "thick": f'stroke="{INK}" stroke-width="1"',
    "unknown": f'stroke="{INK}" stroke-width="0.35" stroke-dasharray="1.4 1.2"',
    "break": f'stroke="{INK}" stroke-width="0.25"',
    "halo": 'stroke="#ffffff" stroke-width="0.8"',  # keeps a fine line apart from the hatch it crosses
    "hair": f'stroke="{GREY}" stroke-width="0.15"',
    "measure": f'stroke="{INK}" stroke-width="0.2"',
    "axis": f'stroke="{GREY}" stroke-width="0.18" stroke-dasharray="6 1 1 1"',
    "beam": f'stroke="{GREY}" stroke-width="0.25"',
    "beam-on": f'stroke="{GREY}" stroke-width="0.25" stroke-dasharray="0.6 0.8"',
    "image": f'stroke="{MARK}" stroke-width="0.6" stroke-dasharray="3 1"',
    "image-far": f'stroke="{MARK}" stroke-width="0.6" stroke-dasharray="0.7 0.9"',
    "ghost": f'stroke="{INK}" stroke-width="0.3" stroke-dasharray="0.4 0.9"',
}
# strokes of a hatch: angle, distance, width
HATCHES: Final = {
    "rise": (45, 1.7, 0.2),
    "fall": (-45, 1.7, 0.2),
    "flat": (90, 1.1, 0.2),
    "dark": (45, 1.0, 0.42),
    "upright": (0, 1.3, 0.3),
    "sparse": (30, 3.0, 0.18),
}
SCALES: Final = (
    1000, 500, 200, 100, 50, 30, 20, 15, 10, 8, 6, 5, 4, 3, 2.5, 2, 1.5, 1,
    1 / 1.5, 1 / 2, 1 / 3, 1 / 4, 1 / 5, 1 / 8, 1 / 10, 1 / 15, 1 / 20, 1 / 50,
)  # fmt: skip


@compact
class Measured:
    """Which computed length a drawn one stands for: name, millimetres, and paper per millimetre."""

    quantity: str
    mm: float
    scale: float
    wide_mm: float | None = None  # of a rectangle: its other side
    of: str = ""  # which piece, mark or setting


@compact
class Label:
    """Lettering beside a drawing, led to the point `x`, `y` where `led`; the first `strong` lines stand out."""

    x: float
    y: float
    lines: tuple[str, ...]
    strong: int = 0
    led: bool = True

    @property
    def height(self) -> float:
        return SIZE * (ASCENT + DESCENT + LINE * (len(self.lines) - 1))


def scale_for(length_mm: float, paper_mm: float) -> float:
    """The largest round scale at which a length fits on so much paper; past the table, one part in a round number."""
    for scale in SCALES:
        if length_mm * scale <= paper_mm:
            return float(scale)
    parts = 100
    while length_mm / parts > paper_mm:
        parts *= 10 if parts % 50 == 0 and length_mm / (parts * 10) > paper_mm else 2
    return 1 / parts


def scale_text(scale: float) -> str:
    """'2:1', '1:1', '1:50'."""
    return f"{scale:g}:1" if scale >= 1 else f"1:{1 / scale:g}"


class Page:
    """What is drawn, in order. The height is settled when the document is written."""

    def __init__(self, title: str, says: str) -> None:
        self.title, self.says = title, says
        self.bottom = MARGIN
        self._out: list[str] = []

    def line(self, kind: str, points: Sequence[tuple[float, float]], measured: Measured | None = None) -> None:
        """A line through points; a measured one is straight and as long as what it stands for."""
        if len(points) == 2:
            (x1, y1), (x2, y2) = points
            place = f'x1="{_n(x1)}" y1="{_n(y1)}" x2="{_n(x2)}" y2="{_n(y2)}"'
            self._out.append(f'<line {place} fill="none" {LINES[kind]}{_data(measured)}/>')
        else:
            at = " ".join(f"{_n(x)},{_n(y)}" for x, y in points)
            self._out.append(f'<polyline points="{at}" fill="none" {LINES[kind]}/>')
        self._reach(y for _, y in points)

    def area(self, fill: str, points: Sequence[tuple[float, float]]) -> None:
        """A filled area without an outline: 'light', 'paper' or a hatch."""
        at = " ".join(f"{_n(x)},{_n(y)}" for x, y in points)
        self._out.append(f'<polygon points="{at}" fill="{_fill(fill)}"/>')
        self._reach(y for _, y in points)

    def box(self, kind: str, fill: str, left: float, top: float, width: float, height: float,
            measured: Measured | None = None) -> None:  # fmt: skip
        """A rectangle."""
        place = f'x="{_n(left)}" y="{_n(top)}" width="{_n(width)}" height="{_n(height)}"'
        self._out.append(f'<rect {place} fill="{_fill(fill)}" {LINES[kind]}{_data(measured)}/>')
        self._reach((top + height,))

    def circle(self, kind: str, x: float, y: float, radius: float, measured: Measured | None = None) -> None:
        """A circle; a measured one stands for its diameter."""
        place = f'cx="{_n(x)}" cy="{_n(y)}" r="{_n(radius)}"'
        self._out.append(f'<circle {place} fill="none" {LINES[kind]}{_data(measured)}/>')
        self._reach((y + radius,))

    def lit(self, x: float, y: float, radius: float, left: float, top: float, width: float, height: float) -> None:
        """Paper white where a circle and a rectangle overlap: what a circle lights of a frame."""
        self._out.append(
            f'<clipPath id="frame"><rect x="{_n(left)}" y="{_n(top)}" width="{_n(width)}" height="{_n(height)}"/>'
            f'</clipPath><circle cx="{_n(x)}" cy="{_n(y)}" r="{_n(radius)}" fill="#ffffff" clip-path="url(#frame)"/>'
        )

    def text(
        self, x: float, y: float, text: str, size: float = SIZE, anchor: str = "start", bold: bool = False
    ) -> None:
        """Lettering with its base line at `y`, safe to show and escaped."""
        weight = ' font-weight="bold"' if bold else ""
        at = f'x="{_n(x)}" y="{_n(y)}" font-size="{_n(size)}" text-anchor="{anchor}"'
        self._out.append(f'<text {at} fill="{INK}"{weight}>{escape(plain(text))}</text>')
        self._reach((y + DESCENT * size,))

    def heading(self, *under: str) -> float:
        """The title and the lines under it; gives where the drawing may begin."""
        room = WIDTH - 2 * MARGIN
        y = MARGIN + TITLE * ASCENT
        for n, words in enumerate(wrapped(self.title, room, TITLE, 2, True)):
            y += TITLE * LINE if n else 0.0
            self.text(MARGIN, y, words, TITLE, bold=True)
        y += 0.4
        for row in under:
            for words in wrapped(row, room, SIZE, 2):
                y += SIZE * LINE + 0.6
                self.text(MARGIN, y, words)
        return y + 4.0

    def labels(self, rows: Sequence[Label], left: float, elbow: float, top: float, bottom: float) -> None:
        """Labels in a column that begins at `left`, each led to its point by way of `elbow`, without overlap."""
        towards = left - 1.0 if elbow < left else left + _widest(rows) + 1.0
        centres = spread([row.y for row in rows], [row.height for row in rows], LABEL_GAP, top, bottom)
        for row, middle in zip(rows, centres, strict=True):
            if row.led:
                self.line("halo", [(row.x, row.y), (elbow, row.y)])
                self.line("hair", [(row.x, row.y), (elbow, row.y), (towards, middle)])
                self._out.append(f'<circle cx="{_n(row.x)}" cy="{_n(row.y)}" r="0.45" fill="{INK}"/>')
            y = middle - row.height / 2 + SIZE * ASCENT
            for n, words in enumerate(row.lines):
                self.text(left, y + n * SIZE * LINE, words, bold=n < row.strong)

    def labels_across(self, rows: Sequence[Label], top: float, elbow: float, left: float, right: float) -> None:
        """Labels in a row whose lettering begins at height `top`, each led to its point by way of `elbow`."""
        widths = [max(text_width(words, SIZE, n < row.strong) for n, words in enumerate(row.lines)) for row in rows]
        centres = spread([row.x for row in rows], widths, 2.0, left, right)
        for row, middle in zip(rows, centres, strict=True):
            near = top - 0.6 if elbow < top else top + row.height + 0.6
            self.line("hair", [(row.x, row.y), (row.x, elbow), (middle, near)])
            for n, words in enumerate(row.lines):
                y = top + SIZE * ASCENT + n * SIZE * LINE
                self.text(middle, y, words, anchor="middle", bold=n < row.strong)

    def notes(self, rows: Iterable[str]) -> None:
        """Remarks under everything drawn so far."""
        y = self.bottom + 3.0
        for row in rows:
            for words in wrapped(row, WIDTH - 2 * MARGIN, SMALL, 4):
                y += SMALL * LINE
                self.text(MARGIN, y, words, SMALL)
            y += 0.7

    def scale_bar(self, scale: float, left: float, y: float) -> None:
        """The scale in words over a bar of a round length."""
        exact = 40.0 / scale
        size = next(n * 10.0**p for p in range(6, -5, -1) for n in (5, 2, 1) if n * 10.0**p <= exact)
        paper = size * scale
        self.text(left, y, f"scale {scale_text(scale)}", SMALL, bold=True)
        self.line("thick", [(left, y + 2.2), (left + paper, y + 2.2)], Measured("scale_bar_mm", size, scale))
        for x in (left, left + paper):
            self.line("edge", [(x, y + 1.2), (x, y + 3.2)])
        self.text(left + paper + 1.6, y + 3.2, length_text(size), SMALL)

    def svg(self) -> str:
        """The whole document."""
        height = self.bottom + MARGIN
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{_n(WIDTH)}mm" height="{_n(height)}mm" '
            f'viewBox="0 0 {_n(WIDTH)} {_n(height)}" role="img" aria-labelledby="title desc" '
            f'font-family="sans-serif">\n<title id="title">{escape(plain(self.title))}</title>\n'
            f'<desc id="desc">{escape(plain(self.says, 2000))}</desc>\n<defs>{_hatches()}</defs>\n'
            f'<rect width="{_n(WIDTH)}" height="{_n(height)}" fill="#ffffff"/>\n' + "\n".join(self._out) + "\n</svg>\n"
        )

    def _reach(self, ys: Iterable[float]) -> None:
        self.bottom = max(self.bottom, *ys)


def column_height(rows: Sequence[Label]) -> float:
    """How much height labels take up one under another."""
    return sum(row.height + LABEL_GAP for row in rows)


def length_text(size_mm: float) -> str:
    """The length of a scale bar: '50 mm', '2 m'."""
    return f"{size_mm / 1000:g} m" if size_mm >= 1000 else f"{size_mm:g} mm"


def _widest(rows: Sequence[Label]) -> float:
    return max((text_width(words, SIZE, n < row.strong) for row in rows for n, words in enumerate(row.lines)),
               default=0.0)  # fmt: skip


def _n(value: float) -> str:
    """A coordinate to a ten-thousandth of a millimetre of paper."""
    if not isfinite(value):
        raise ValueError(f"a place on paper is not finite: {value}")
    text = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _data(measured: Measured | None) -> str:
    if measured is None:
        return ""
    wide = "" if measured.wide_mm is None else f' data-wide-mm="{measured.wide_mm:.6g}"'
    of = f' data-of="{escape(plain(measured.of))}"' if measured.of else ""
    return (
        f' data-quantity="{measured.quantity}" data-mm="{measured.mm:.6g}" data-scale="{measured.scale:.6g}"{wide}{of}'
    )


def _fill(fill: str) -> str:
    return {"light": "#f1ead2", "paper": "#ffffff", "none": "none"}.get(fill) or f"url(#{fill})"


def _hatches() -> str:
    return "".join(
        f'<pattern id="{name}" width="{gap}" height="{gap}" patternUnits="userSpaceOnUse" '
        f'patternTransform="rotate({angle})"><rect width="{gap}" height="{gap}" fill="#ffffff"/>'
        f'<line x1="{gap / 2}" y1="0" x2="{gap / 2}" y2="{gap}" stroke="{INK}" stroke-width="{width}"/></pattern>'
        for name, (angle, gap, width) in HATCHES.items()
    )
