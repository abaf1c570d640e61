"""What must still come with a ring that was named, where it is not the whole way from the lens to the body."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import listed, money, small_mm
from engine.answers.seat.telling import link_name
from engine.base.interval import is_known
from engine.facts.records import Adapter
from grammar.questions import RING, Question, Thing


def still_needed(question: Question, chains: Sequence[ListedChain], knowledge: Knowledge) -> Told:
    """The other pieces of the best chain, each with its length and price; nothing where a ring of before is all."""
    pieces = chains[0].listed.judged.chain.adapters if chains else ()
    named = [piece for piece in pieces if any(_is(piece, thing) for thing in question.adapters)]
    others = [piece for piece in pieces if piece not in named and not piece.owned]
    if not named or not others or len(named) + len(others) < len(pieces):
        return Told()
    rows = [
        Quantity("ring_thickness_mm", seat, f"{piece.front} to {piece.rear}")
        for piece in others
        if piece.thickness_mm.is_fixed and is_known(seat := piece.thickness_mm.shortest)
    ]
    names = [link_name(piece, knowledge) for piece in named]
    beside = listed([name if name.startswith("your ") else f"the {name}" for name in names])
    text = f"Beside {beside} still to get: {listed([_told(piece, knowledge) for piece in others])}."
    return Told((Line("head", text),), tuple(rows))


def _is(piece: Adapter, thing: Thing) -> bool:
    """Whether a piece of a chain is the one that was named: as such, by its two mounts, or by its kind and front."""
    if thing.kind == "adapter" and thing.ids:
        return piece.id in thing.ids
    ends = bool(thing.rear) or (thing.piece == piece.kind and thing.piece not in (RING, None))
    return ends and piece.front in thing.front and (not thing.rear or piece.rear in thing.rear)


def _told(piece: Adapter, knowledge: Knowledge) -> str:
    seat = piece.thickness_mm.shortest
    size = f", {small_mm(seat.nominal)}" if piece.thickness_mm.is_fixed and is_known(seat) else ""
    price = f" [{money(piece.price_usd)}]" if piece.price_usd else ""
    return f"{link_name(piece, knowledge)}{size}{price}"
