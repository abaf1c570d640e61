"""Pieces set against each other between one lens and one body: 'a plain ring or the 0.71x reducer'."""

from __future__ import annotations

from math import log2

from engine.answers.answer import Line, ListedChain, Quantity, Told
from engine.answers.knowledge import Knowledge
from engine.answers.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.said import stop
from engine.answers.several import way_told
from engine.answers.wording import trimmed
from engine.base.interval import Interval
from grammar.questions import Limits, Question, Thing

OPTICAL = frozenset({"focal-reducer", "teleconverter", "corrective-glass"})
PLAIN = frozenset({"adapter", "plain", "ring", ""})


def pieces_apart(question: Question, knowledge: Knowledge) -> tuple[Told, tuple[ListedChain, ...]]:
    """Each piece by itself between the lens and the body, by its best way; empty where there are not two."""
    facts = knowledge.catalogue
    lens, body = lens_side(question.lens, facts), body_side(question.body, facts)
    pieces = _alternatives(question)
    if len(question.lenses) != 1 or len(pieces) < 2 or not isinstance(lens, LensSide) or not isinstance(body, BodySide):
        return Told(), ()
    from engine.answers.howto import one_pair

    told = Told()
    chains: list[ListedChain] = []
    for piece in pieces:
        glassless = piece.piece in PLAIN and piece.factor is None
        alone = question.with_(intent="chain", topic=None, adapters=(piece,), limits=Limits(without_glass=glassless))
        found = one_pair(alone, lens, body, knowledge).chains or ()
        name = piece.words.strip() or piece.piece or "piece"
        if found:
            chain = ListedChain(len(chains) + 1, found[0].listed, found[0].title)
            chains.append(chain)
            told += Told((Line("fact", f"{name}: {way_told(chain, question.feet)}"),))
        else:
            told += Told((Line("fact", f"{name}: no way found with it"),))
        told += _glass(piece, question)
    return told, tuple(chains)


def _alternatives(question: Question) -> list[Thing]:
    """The pieces that are set apart; the ring that goes with several reducers is none of them."""
    optical = [thing for thing in question.adapters if thing.piece in OPTICAL]
    if len(optical) > 1:
        return optical
    return [thing for thing in question.adapters if thing.piece != "hub"]


def _glass(piece: Thing, question: Question) -> Told:
    """What a reducer or extender makes of the light, the focal length and the f-number."""
    if piece.factor is None:
        return Told()
    factor, case = piece.factor, f"{piece.factor:g}x"
    stops = 2 * log2(factor)
    parts = [f"{abs(stops):.1f} stops {'slower' if stops > 0 else 'faster'}"]
    rows = [Quantity("light_difference_stops", Interval.exact(abs(stops)), case)]
    focal = question.lens.focal_length_mm if question.lens is not None else None
    if focal is not None:
        parts.append(f"{trimmed(focal, 1)} mm becomes {trimmed(focal * factor, 1)} mm")
        rows.append(Quantity("focal_length_mm", Interval.exact(focal * factor), case))
    at = stop(question)
    if at is not None:
        parts.append(f"f/{trimmed(at, 2)} becomes f/{trimmed(at * factor, 2)}")
        rows.append(Quantity("f_number", Interval.exact(at * factor), case))
    return Told((Line("fact", "; ".join(parts), 1),), tuple(rows))
