"""How a card is set so that all of it stands on its place of the sheet: the size of its letters, and which column."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product
from typing import Final

from engine.answers.parts.card_parts import Alert, Card, Figure, Grid, Part, Text, spoken
from engine.base.compact import compact, replace
from engine.base.units import MM_PER_INCH
from engine.render.lettering import text_width

MM_PER_POINT: Final = MM_PER_INCH / 72
WIDTH_MM: Final = 100.0  # ten to an A4 sheet, two beside one another
HEIGHT_MM: Final = 57.2
PADDING_MM: Final = 2.2
GAP_MM: Final = 2.4  # between the two columns
NOTES_MM: Final = 5.5  # the least that is left for notes by hand
LINE: Final = 1.14
HEAD: Final = 1.7  # size of the first line over the rest
LONG_HEAD: Final = 1.3  # the same where it takes more than one
TITLE_AFTER: Final = 0.5  # of a line, between one block and the next
SIZES_PT: Final = (7.2, 7.0, 6.8, 6.6, 6.4, 6.2, 6.0, 5.8, 5.6, 5.4, 5.2, 5.0, 4.8, 4.6)
# what stands between the texts of a block that run on in print; what is not listed stands one below the other
RUN_ON: Final = {"stack": " → ", "picture": " ", "settings": " · ", "check": " ", "scale": " ", "light": " "}
LEFT_OUT: Final = "More: ask why."
TITLES: Final = {
    "stack": "In order", "scale": "Ring", "light": "Light", "picture": "Frame", "check": "First light",
    "settings": "Set",
}  # fmt: skip


@compact
class Block:
    """A part of a card under its title: texts one below the other, or a table."""

    kind: str
    content: tuple[Text, ...] | Grid


@compact
class Setting:
    """A card as it is set: the step of its size, its blocks by column, and the alerts that paper has no place for."""

    step: int
    columns: tuple[tuple[Block, ...], tuple[Block, ...]]
    left_out: tuple[Alert, ...] = ()


def set_card(card: Card) -> Setting:
    """The largest size at which everything has its place; where even the least has none, notes are left out."""
    alerts = card.alerts
    while True:
        left_out = card.alerts[len(alerts) :]
        for step, size in enumerate(SIZES_PT):
            columns, height = _columns(card, size)
            if _top(card, alerts, size, bool(left_out)) + height + NOTES_MM <= HEIGHT_MM - 2 * PADDING_MM:
                return Setting(step, columns, left_out)
        if not alerts or alerts[-1].severity != "note":
            return Setting(len(SIZES_PT) - 1, columns, left_out)
        alerts = alerts[:-1]  # notes stand last


def blocks_of(card: Card) -> tuple[Block, ...]:
    """The blocks of a card in the order they are read on a narrow screen."""
    rows: list[tuple[str, tuple[Text, ...] | Grid]] = [("stack", card.stack)]
    for kind, block in (("scale", card.scale), ("light", card.light)):
        rows.append((kind, block if isinstance(block, Grid) else (block,)))
    rows += [("picture", card.picture), ("check", (card.check,)), ("settings", card.settings)]
    return tuple(Block(kind, content) for kind, content in rows if content)


def upright(grid: Grid, size: float) -> bool:
    """Whether a table whose rows run across is too wide for its column, so that it must stand."""
    widths = [
        max(text_width(spoken(row[n]), size, True) for row in grid.rows) + size * 0.8 for n in range(len(grid.rows[0]))
    ]
    return not grid.columns and sum(widths) > _column_points()


def stood_up(grid: Grid) -> Grid:
    """The same with rows and columns changed about."""
    turned = tuple(tuple(row[n] for row in grid.rows) for n in range(1, len(grid.rows[0])))
    return replace(grid, columns=tuple(spoken(row[0]) for row in grid.rows), rows=turned)


def _column_points() -> float:
    return (WIDTH_MM - 2 * PADDING_MM - GAP_MM) / 2 / MM_PER_POINT


def _top(card: Card, alerts: Sequence[Alert], size: float, left_out: bool) -> float:
    whole = (WIDTH_MM - 2 * PADDING_MM) / MM_PER_POINT
    head = LONG_HEAD if has_long_head(card, size) else HEAD
    lines = _count(card.head, whole, size * head, True) * head
    lines += _count(card.subject, whole, size, True)
    for severity, texts in by_severity(alerts, left_out):
        told = (f"{severity}: ", *_joined(texts, " · "))
        bold = severity == "danger"
        lines += _count(told, whole - size * 2, size, bold) + 0.12
    lines += 0.5  # rules and gaps
    return lines * size * LINE * MM_PER_POINT


def by_severity(alerts: Sequence[Alert], left_out: bool) -> list[tuple[str, list[Text]]]:
    """Each severity with what it says, in the order of the alerts."""
    out: dict[str, list[Text]] = {}
    for alert in alerts:
        out.setdefault(alert.severity, []).append(alert.text)
    if left_out:
        out.setdefault("note", []).append((LEFT_OUT,))
    return list(out.items())


def has_long_head(card: Card, size: float) -> bool:
    """Whether the first line would run on into a second."""
    return _count(card.head, (WIDTH_MM - 2 * PADDING_MM) / MM_PER_POINT, size * HEAD, True) > 1


def _columns(card: Card, size: float) -> tuple[tuple[tuple[Block, ...], tuple[Block, ...]], float]:
    """The blocks in two columns of the least height, and that height in mm; of equals the first in reading order."""
    blocks = blocks_of(card)
    heights = [_height(block, size) for block in blocks]
    best: tuple[float, tuple[int, ...]] | None = None
    for sides in product((0, 1), repeat=len(blocks)):
        if sides and sides[0]:
            continue
        tallest = max(sum(h for h, side in zip(heights, sides, strict=True) if side == one) for one in (0, 1))
        if best is None or tallest < best[0] - 1e-9:
            best = (tallest, sides)
    assert best is not None
    left, right = (tuple(b for b, side in zip(blocks, best[1], strict=True) if side == one) for one in (0, 1))
    return (left, right), best[0]


def _height(block: Block, size: float) -> float:
    """Height in mm of a block with its title and the gap after it."""
    width = _column_points()
    lines = 1.0 + TITLE_AFTER
    if isinstance(block.content, Grid):
        grid = stood_up(block.content) if upright(block.content, size) else block.content
        lines += _count(grid.title, width, size, True) - 1 if grid.title else 0
        lines += (1.06 if grid.columns else 0) + 1.1 * len(grid.rows)
        lines += _count(grid.below, width, size) if grid.below else 0
    else:
        lines += _count(_joined(block.content, RUN_ON[block.kind]), width, size)
    return lines * size * LINE * MM_PER_POINT


def _joined(texts: Sequence[Text], between: str) -> Text:
    """Texts that run on, with what stands between them."""
    out: list[Part] = []
    for n, text in enumerate(texts):
        out += [between, *text] if n else text
    return tuple(out)


def _count(text: Text, width: float, size: float, bold: bool = False) -> int:
    """Lines that a text needs at most: words kept whole where they fit, figures always, and those in bold."""
    lines, used = 1, 0.0
    space = text_width(" ", size, bold)
    for word, is_bold in _words(text, bold):
        wide = text_width(word, size, is_bold)
        if used and used + space + wide > width:
            lines, used = lines + 1, 0.0
        extra = int(wide // width)
        lines, wide = lines + extra, wide - extra * width
        used += (space if used else 0.0) + wide
    return lines


def _words(text: Text, bold: bool) -> Iterator[tuple[str, bool]]:
    for part in text:
        if isinstance(part, Figure):
            yield part.text, True
        else:
            yield from ((word, bold) for word in (part if isinstance(part, str) else part.text).split())
