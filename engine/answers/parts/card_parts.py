"""What a card is made of: words, names as they stand, and numbers that are each in the record too."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from engine.answers.parts.quantity import Quantity
from engine.answers.parts.wording import quantity_text, ranged, show_of
from engine.base.compact import compact
from engine.base.interval import Interval, Measure, is_known
from engine.base.span import Span
from engine.physics.trace import Trace

WIDE = 0.2  # of its value: what is spread wider than this is told by both ends


@compact
class Figure:
    """A number as it is written on the card; `quantity` is what the record says of it."""

    quantity: Quantity
    text: str


@compact
class Name:
    """Words that are told as the facts have them: a lens, an adapter, whom to ask."""

    text: str


Part = str | Figure | Name
Text = tuple[Part, ...]


@compact
class Grid:
    """A small table: a heading, what each column holds, its rows, and what is said below it."""

    title: Text
    columns: tuple[str, ...]
    rows: tuple[tuple[Text, ...], ...]
    below: Text = ()


@compact
class Alert:
    """`severity`: danger, caution, note."""

    severity: str
    text: Text


@compact
class Card:
    """One lens on one body by one chain, for the pocket. `scale` and `light` are words where numbers are missing."""

    head: Text
    subject: Text
    alerts: tuple[Alert, ...]
    stack: tuple[Text, ...]
    scale: Grid | Text
    picture: tuple[Text, ...]
    light: Grid | Text
    settings: tuple[Text, ...]
    check: Text


@compact
class Cards:
    """The cards of an answer, and what a file of them is called where nothing is told."""

    cards: tuple[Card, ...]
    name: str


class Numbers:
    """Figures of one card: every quantity is told for this card, and for what on it."""

    def __init__(self, card: str) -> None:
        """`card`: what the cases of the record begin with, such as 'card 2'."""
        self.card = card

    def case(self, of: str = "") -> str:
        return f"{self.card}, {of}" if of else self.card

    def ends(self, name: str, value: Interval, show: Callable[[float], str], of: str = "") -> Figure:
        """An interval by both ends, by one figure where they read the same."""
        low, high = show(value.least), show(value.greatest)
        text = low if low == high else ranged(value, show)
        return Figure(Quantity(name, value, self.case(of)), text)

    def likeliest(self, name: str, value: Interval, show: Callable[[float], str], of: str = "") -> Figure:
        """The likeliest value of an interval, alone."""
        return Figure(Quantity(name, Interval.exact(value.nominal), self.case(of)), show(value.nominal))

    def told(self, name: str, value: Interval, show: Callable[[float], str], of: str = "") -> Figure:
        """Both ends of what is a range, as the focal lengths of a zoom are; else the likeliest value."""
        whole = value.width > WIDE * abs(value.nominal)
        return self.ends(name, value, show, of) if whole else self.likeliest(name, value, show, of)

    def filled(self, text: str, trace: Trace, feet: bool, of: str) -> Text:
        """A sentence of the facts with its quantities filled in."""
        out: list[Part] = []
        for n, part in enumerate(text.replace("}", "{").split("{")):
            if not n % 2:
                out += [part] if part else []
                continue
            value = trace.value(part)
            whole = value.hull() if isinstance(value, Span) else value
            if isinstance(whole, Interval):
                out.append(self.told(part, whole, show_of(part, feet), of))
            else:
                out.append(quantity_text(part, value, feet))
        return tuple(out)


def figures_of(card: Card) -> Iterator[Figure]:
    """Every number on the card, in the order it stands there."""
    texts: list[Sequence[Part]] = [card.head, card.subject, *(alert.text for alert in card.alerts), *card.stack]
    for block in (card.scale, card.light):
        if isinstance(block, Grid):
            texts += [block.title, *(cell for row in block.rows for cell in row), block.below]
        else:
            texts.append(block)
    texts += [*card.picture, *card.settings, card.check]
    return (part for text in texts for part in text if isinstance(part, Figure))


def spoken(text: Sequence[Part]) -> str:
    """A text as it is read."""
    return "".join(part if isinstance(part, str) else part.text for part in text)


def capital(text: Text) -> Text:
    """The text with its first letter large, where it begins with a word."""
    first = text[0] if text else ""
    return (first[:1].upper() + first[1:], *text[1:]) if isinstance(first, str) and first else text


def known(value: object) -> Interval | None:
    """The value where it is a number, known and finite at its likeliest."""
    from math import isfinite

    return value if isinstance(value, Interval) and isfinite(value.nominal) else None


def span_start(value: object) -> Measure | None:
    """The shortest setting of a span; None where it is none, or not known."""
    if not isinstance(value, Span) or not is_known(value.shortest):
        return None
    return value.shortest
