"""Cards as one HTML page of its own: ten to a printed A4 sheet, one to a screen of a phone; no network, no script."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape
from typing import Final

from engine.answers.parts.card_parts import Card, Cards, Figure, Grid, Name, Text
from engine.base.plain import plain
from engine.render.card_fit import (
    LEFT_OUT,
    SIZES_PT,
    TITLES,
    Block,
    Setting,
    has_long_head,
    set_card,
    stood_up,
    upright,
)
from engine.render.card_style import marks, style

TO_A_SHEET: Final = 10
SCREEN_ONLY: Final = ' class="on-screen"'
PAPER_ONLY: Final = ' class="on-paper"'
LONGEST_NAME: Final = 160
SEVERITIES: Final = {"danger": "Danger", "caution": "Caution", "note": "Note"}
ORDER: Final = ("stack", "scale", "light", "picture", "check", "settings")


def page_of(cards: Cards) -> str:
    """The whole page."""
    rows = cards.cards
    sheets = "\n".join(_sheet(rows[at : at + TO_A_SHEET]) for at in range(0, len(rows), TO_A_SHEET))
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{_safe(cards.name)}</title>\n<style>\n{style()}</style>\n</head>\n<body>\n{sheets}\n</body>\n</html>\n"
    )


def _sheet(rows: Sequence[Card]) -> str:
    cards = "\n".join(_card(card) for card in rows)
    return f'<section class="sheet">{marks()}\n{cards}\n</section>'


def _card(card: Card) -> str:
    setting = set_card(card)
    size = SIZES_PT[setting.step]
    long = ' class="long"' if has_long_head(card, size) else ""
    alerts = _alerts(card, setting)
    columns = "".join(
        f'<div class="column">{"".join(_block(block, size) for block in column)}</div>' for column in setting.columns
    )
    return (
        f'<article class="card size-{setting.step}">\n<h2{long}>{_text(card.head)}</h2>\n'
        f'<p class="subject">{_text(card.subject)}</p>\n'
        + (f'<div class="alerts">{alerts}</div>\n' if alerts else "")
        + f'<div class="columns">{columns}</div>\n<div class="notes"><span>Own notes</span></div>\n</article>'
    )


def _alerts(card: Card, setting: Setting) -> str:
    """Dangers, cautions and notes, each kind under its word once; what paper has no place for is on screens only."""
    out = []
    for severity, word in SEVERITIES.items():
        rows = [alert for alert in card.alerts if alert.severity == severity]
        items = [
            f"<li{SCREEN_ONLY if alert in setting.left_out else ''}>{_text(alert.text)}</li>" for alert in rows
        ]  # fmt: skip
        items += [f"<li{PAPER_ONLY}>{LEFT_OUT}</li>"] if severity == "note" and setting.left_out else []
        if rows:
            out.append(f'<div class="{severity}"><b>{word}:</b> <ul>{"".join(items)}</ul></div>')
    return "".join(out)


def _block(block: Block, size: float) -> str:
    order = ORDER.index(block.kind)
    title = f"<h3>{TITLES[block.kind]}</h3>"
    if isinstance(block.content, Grid):
        grid = stood_up(block.content) if upright(block.content, size) else block.content
        return f'<section class="block at-{order}"><h3>{_text(grid.title)}</h3>{_grid(grid)}</section>'
    kind = "ol" if block.kind == "stack" else "ul"
    items = "".join(f"<li>{_text(text)}</li>" for text in block.content)
    return f'<section class="block at-{order}">{title}<{kind}>{items}</{kind}></section>'


def _grid(grid: Grid) -> str:
    head = "".join(f"<th>{escape(word)}</th>" for word in grid.columns)
    body = "".join("<tr>" + "".join(f"<td>{_text(cell)}</td>" for cell in row) + "</tr>" for row in grid.rows)
    below = f'<p class="below">{_text(grid.below)}</p>' if grid.below else ""
    kind = "down" if grid.columns else "across"
    top = f"<tr>{head}</tr>" if head else ""
    return f'<table class="{kind}">{top}{body}</table>{below}'


def _text(text: Text) -> str:
    """Words as they are; a name told apart, and a number with the quantity that the record has it under."""
    out = []
    for part in text:
        if isinstance(part, Figure):
            told = f"{part.quantity.name} {part.quantity.case or ''}".strip()
            out.append(f'<data value="{_safe(told)}">{_safe(part.text)}</data>')
        elif isinstance(part, Name):
            out.append(f'<span class="name">{_safe(part.text, LONGEST_NAME)}</span>')
        else:
            out.append(escape(plain(part, 1000)))
    return "".join(out)


def _safe(text: str, longest: int = 400) -> str:
    return escape(plain(text, longest))
