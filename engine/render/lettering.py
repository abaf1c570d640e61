"""Where lettering goes: how wide a text is at most, where it is cut or wrapped, and how labels share a column."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.base.plain import plain

# Widths in thousandths of the size: the wider of two common sans-serif faces, so that neither outgrows its place.
_BY_WIDTH: Final = {
    275: "'",
    278: "ijl",
    318: " ,.·I",
    337: "/:;\\|",
    361: "-f",
    392: "()[]t",
    411: "!r",
    460: '"',
    500: "*`zsJ",
    557: "?_L–c",
    611: "FkTvxy",
    615: "oaehnu",
    636: "$0123456789{}Sbdgpq",
    667: "EKPY",
    698: "AVXZB",
    732: "CRU",
    780: "NHDG&",
    838: "OQw#+<=>^~×±−∞",
    863: "M",
    974: "%m",
    1016: "W@…→",
}
_WIDTHS: Final = {char: width for width, chars in _BY_WIDTH.items() for char in chars}
_WIDEST: Final = 1016  # for what is not in the table: no letter of a common face is wider
_BOLD: Final = 1.2
ASCENT: Final = 0.78  # of the size, above the base line
DESCENT: Final = 0.24
LINE: Final = 1.28


def text_width(text: str, size: float, bold: bool = False) -> float:
    """The most that `text` takes up, in the unit of `size`. Source: width tables of two common sans-serif faces."""
    thousandths = sum(_WIDTHS.get(char, _WIDEST) for char in text)
    return thousandths * size / 1000 * (_BOLD if bold else 1.0)


def cut(text: str, width: float, size: float, bold: bool = False) -> str:
    """The text made safe, and cut with '…' where it is wider than `width`."""
    text = plain(text)
    if text_width(text, size, bold) <= width:
        return text
    while text and text_width(text + "…", size, bold) > width:
        text = text[:-1]
    return text.rstrip() + "…"


def wrapped(text: str, width: float, size: float, most: int, bold: bool = False) -> tuple[str, ...]:
    """At most `most` lines no wider than `width`; what is left over is cut from the last."""
    lines: list[str] = []
    words = plain(text).split()
    while words and len(lines) < most - 1:
        count = len(words)
        while count > 1 and text_width(" ".join(words[:count]), size, bold) > width:
            count -= 1
        lines.append(cut(" ".join(words[:count]), width, size, bold))
        words = words[count:]
    if words:
        lines.append(cut(" ".join(words), width, size, bold))
    return tuple(lines)


def spread(wanted: Sequence[float], sizes: Sequence[float], gap: float, least: float, greatest: float) -> list[float]:
    """Centres of labels on a line, each as near to where it is wanted as the others let it; the order is kept.

    No two come nearer than `gap`. They stay within `least`..`greatest` while there is room, else run past `greatest`.
    """
    order = sorted(range(len(wanted)), key=lambda n: wanted[n])
    offsets: list[float] = []
    at = 0.0
    for k, n in enumerate(order):
        if k:
            at += sizes[order[k - 1]] / 2 + gap + sizes[n] / 2
        offsets.append(at)
    # pools of labels that touch move as one, to the mean of what they want
    pools: list[list[float]] = []
    for k, n in enumerate(order):
        pools.append([wanted[n] - offsets[k], 1.0])
        while len(pools) > 1 and pools[-2][0] > pools[-1][0]:
            mean, count = pools.pop()
            total = pools[-1][1] + count
            pools[-1] = [(pools[-1][0] * pools[-1][1] + mean * count) / total, total]
    flat = [mean for mean, count in pools for _ in range(int(count))]
    out = [0.0] * len(wanted)
    if not order:
        return out
    low = least + sizes[order[0]] / 2
    high = greatest - offsets[-1] - sizes[order[-1]] / 2
    for k, n in enumerate(order):
        out[n] = max(min(flat[k], high), low) + offsets[k]
    return out
