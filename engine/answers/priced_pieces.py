"""What pieces that are named by mount and length cost, where no more is asked of them: 'C tubes 1 + 2 + 5, price'."""

from __future__ import annotations

from typing import Final

from engine.answers.making.stacks import length_of_all
from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import told_register_mm
from engine.answers.parts.said import mentions, numbers
from engine.answers.parts.wording import listed, money, trimmed
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.kinds import GLASS_KINDS, TUBELIKE
from engine.facts.records import Adapter
from grammar.questions import Question, Thing

WORDS: Final = {"extension-tube": "tube", "helicoid": "helicoid", "bellows": "bellows"}


# kinds of pieces that are asked for by their kind alone
BY_KIND: Final = {
    "reverse-ring": "Reverse ring", "coupling-ring": "Coupling ring", "bellows": "Bellows",
    "teleconverter": "Teleconverter", "helicoid": "Helicoid", "focal-reducer": "Focal reducer",
    "tilt": "Tilt adapter", "shift": "Shift adapter",
}  # fmt: skip
MOST: Final = 4
LEAST_WAYS: Final = 2


def priced_or_planned(question: Question, knowledge: Knowledge) -> Answer:
    """The price of each piece and of all together; the plan of what to buy where anything else is asked."""
    from engine.answers.buying import plan

    priced = _priced(question, knowledge.catalogue) or _of_kind(question, knowledge.catalogue)
    priced = priced or _of_ways(question, knowledge)
    return priced if priced is not None else plan(question, knowledge)


def _priced(question: Question, facts: Catalogue) -> Answer | None:
    pieces, mount = question.adapters, _mount_of(question)
    named = bool(pieces) and all(piece.piece in TUBELIKE and piece.thickness_mm for piece in pieces)
    if not named or mount not in facts.mounts or not mentions(question, "price-asked"):
        return None
    bands, lines = [], []
    for piece in pieces:
        row = _sold(piece, mount, facts)
        told = f"{_length(piece)} mm {WORDS[piece.piece or '']}"
        if row is None or row.price_usd is None:
            lines.append(Line("fact", f"{told}: none such in the facts", 1))
            continue
        bands.append(row.price_usd)
        lines.append(Line("fact", f"{told}: {row.name} [{money(row.price_usd)}]", 1))
    long = length_of_all(question) if mentions(question, "length-of-all") else Told()
    if not bands and not long.lines:
        return None
    if not bands:
        unknown = Line("text", f"What such tubes of {facts.mounts[mount].designation} cost is not in the facts.")
        text = (*long.lines, unknown, *lines)
        return Answer(
            question.text, question.intent, ANSWERED, text, question=question, quantities=long.quantities
        )  # fmt: skip
    whole = (sum(band[0] for band in bands), sum(band[1] for band in bands))
    together = " together" if len(bands) > 1 else ""
    head = Line("head", f"{facts.mounts[mount].designation}: {money(whole)}{together}.")
    price = Quantity("price", Interval.between(*whole), "together" if together else None)
    return Answer(
        question.text, question.intent, ANSWERED, (head, *long.lines, *lines), question=question,
        quantities=(price, *long.quantities),
    )  # fmt: skip


def _of_kind(question: Question, facts: Catalogue) -> Answer | None:
    """What a piece costs that is told by its kind, and by the mount, size or factor where that is told."""
    piece = question.adapters[0] if len(question.adapters) == 1 else None
    told = {id_ for thing in (*question.lenses, *question.bodies) for id_ in thing.ids[:1]}
    told |= {*(piece.front[:1] if piece else ()), *(piece.rear[:1] if piece else ())}
    if piece is None or piece.piece not in BY_KIND or len(told) > 1 or not mentions(question, "price-asked"):
        return None
    rows = [
        row for row in facts.adapters.values()
        if row.kind == piece.piece and row.price_usd is not None and told <= {row.front, row.rear}
        and piece.factor in (None, row.factor)
    ]  # fmt: skip
    sizes = [f"{one:g} mm" for one in (*(piece.steps or piece.thickness_mm or ()), *numbers(question, "numbers"))]
    near = told_register_mm(facts)
    sized = [row for row in rows if all(size in row.name for size in sizes) or _is_so_long(row, piece, near)]
    rows = sorted(sized or rows, key=lambda row: (row.common != "everyday", row.price_usd or (0.0, 0.0), row.id))
    bands = [row.price_usd for row in rows if row.price_usd is not None]
    if not bands:
        return None
    band = min(low for low, _ in bands), max(high for _, high in bands)
    of = listed([facts.mounts[id_].designation for id_ in told])
    lines = [Line("head", f"{BY_KIND[piece.piece]}{f' of {of}' if of else ''}: {money(band)}.")]
    lines += [Line("fact", f"{row.name} [{money(row.price_usd)}]", 1) for row in rows[:MOST] if row.price_usd]
    price = Quantity("price", Interval.between(*band), piece.piece)
    return Answer(
        question.text, question.intent, ANSWERED, tuple(lines), question=question, quantities=(price,)
    )  # fmt: skip


def _of_ways(question: Question, knowledge: Knowledge) -> Answer | None:
    """What each way costs, with glass and without, where the price of both is asked."""
    if not mentions(question, "price-asked") or not any(piece.piece in GLASS_KINDS for piece in question.adapters):
        return None
    from engine.answers.ways_apart import ways_apart

    told, chains = ways_apart(question, knowledge)
    if not told.lines or len(chains) < LEAST_WAYS:
        return None
    return Answer(
        question.text, question.intent, ANSWERED, told.lines, question=question, chains=chains,
        quantities=told.quantities,
    )  # fmt: skip


def _mount_of(question: Question) -> str:
    """The one mount told, of the pieces or of the lens; '' where several are, so that a pair is asked about."""
    told = [end for piece in question.adapters for end in (*piece.front[:1], *piece.rear[:1])]
    told += [id_ for thing in (*question.lenses, *question.bodies) for id_ in thing.ids[:1]]
    return told[0] if len(set(told)) == 1 else ""


def _length(piece: Thing) -> str:
    least, most = piece.thickness_mm or (0.0, 0.0)
    return trimmed(least, 2) if least == most else f"{trimmed(least, 2)} to {trimmed(most, 2)}"


def _is_so_long(row: Adapter, piece: Thing, near_mm: float) -> bool:
    """Whether a piece that draws out runs from the one length told to the other."""
    ends = row.thickness_mm.shortest, row.thickness_mm.longest
    told = piece.thickness_mm or ()
    return len(told) == len(ends) and all(
        is_known(end) and abs(end.nominal - one) <= near_mm for end, one in zip(ends, told, strict=True)
    )


def _sold(piece: Thing, mount: str, facts: Catalogue) -> Adapter | None:
    """The piece of that mount and length that is sold, the everyday one first, the cheapest of them."""
    wanted, near = piece.thickness_mm or (0.0, 0.0), told_register_mm(facts)

    def fits(row: Adapter) -> bool:
        ends = row.thickness_mm.shortest, row.thickness_mm.longest
        sized = all(is_known(end) and abs(end.nominal - one) <= near for end, one in zip(ends, wanted, strict=True))
        return row.kind == piece.piece and row.front == mount and row.price_usd is not None and sized

    rows = [row for row in facts.adapters.values() if fits(row)]
    return min(
        rows, key=lambda row: (row.front != row.rear, row.common != "everyday", row.price_usd, row.id), default=None
    )
