"""The order that a question about one's own gear asks for: 'widest first', 'by weight', 'closest to 50 mm'."""

from __future__ import annotations

from engine.base.compact import compact, replace
from grammar.own.sifting import Mark, number_after, number_of, number_words
from grammar.questions import Order
from grammar.words.atoms import Runs
from grammar.words.written import Literal

Rows = tuple[tuple[str, ...], ...]  # first phrase, what it does, and the rest of each record


@compact
class Ordered:
    """An order, the marks that it is made of by their numbers, and the atoms that it takes up."""

    order: Order
    marks: tuple[int, ...]
    first: int
    after: int


def order_at(n: int, marks: list[Mark], rows: Rows) -> Ordered | None:
    """'widest first'; 'by weight', where words of sorting stand before the name of a quantity."""
    mark = marks[n]
    start, after, used = mark.at, mark.after, [n]
    least, turned = mark.told[1] == "least", ""
    if mark.does == "by":
        before = marks[n - 1] if n else None
        if before is None or before.does not in ("sorted", "most") or mark.at - before.after > 1:
            return None
        if before.does == "most" and before.told != mark.told[1:2]:
            least = not least
            turned = f" {first_phrase(rows, 'turned', 'least' if least else 'greatest')}"
        start = before.at
        used.append(n - 1)
    following = marks[n + 1] if n + 1 < len(marks) else None
    if following is not None and following.does == "rank" and following.at == after:
        after = following.after
        used.append(n + 1)
    says = f"by {mark.says}{turned}" if mark.does == "by" else mark.says
    return Ordered(Order(mark.told[0], least, says), tuple(used), start, after)


def turned(order: Order, mark: Mark) -> Order:
    """The order with its least or its greatest first, as was said behind it."""
    return replace(order, least=mark.told[0] == "least", says=f"{order.says} {mark.says}")


def toward(n: int, marks: list[Mark], runs: Runs, rows: Rows) -> Ordered | None:
    """'closest to a 50 mm equivalent'."""
    mark = marks[n]
    found = number_after(runs, mark.after)
    if found is None:
        return None
    name, last, used = (marks[n + 1] if n + 1 < len(marks) else None), found[1], [n]
    if name is not None and name.does == "by" and 0 <= name.at - last <= 1:
        last = name.after
        used.append(n + 1)
        quantity: str | None = name.told[0]
    else:
        quantity = quantity_of(rows, found[0])
    number = number_of(quantity, found[0]) if quantity is not None else None
    if quantity is None or number is None:
        return None
    says = f"{mark.says} {number_words(quantity, number)} {label_of(rows, quantity)}"
    return Ordered(Order(quantity, True, says, number), tuple(used), mark.at, last)


def first_phrase(rows: Rows, does: str, *told: str) -> str:
    """The first phrase of the record that does this."""
    return next(row[0] for row in rows if row[1:] == (does, *told))


def quantity_of(rows: Rows, literal: Literal) -> str | None:
    """What a bare number of this kind, in this unit, is of."""
    kinds = (literal.kind, f"{literal.kind}-{literal.unit}")
    return next((row[3] for row in rows if row[1] == "kind" and row[2] in kinds), None)


def label_of(rows: Rows, quantity: str) -> str:
    """The name by which a quantity is read back."""
    return next((row[0] for row in rows if row[1] == "by" and row[2] == quantity), quantity)
