"""Pieces told as those of before: 'same tubes with the 45', 'a 28 on that ring', 'the helicoid all the way in'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.hearing import Heard
from grammar.kinds import FOCUS_VERDICT
from grammar.questions import RING, Question, Thing
from grammar.things.casting import DRAWN
from grammar.turns.going_on import is_worn, tubes_named
from grammar.turns.spans import RANGED, drawn_whole
from grammar.turns.sticking import is_open

_DOUBTS: Final = ("sure", "doubt")
_INSTEAD: Final = "instead"  # the cue of what stands in a thing's place


def same_pieces(heard: Heard, said: Question, before: Question) -> Question:
    """'same tubes with the 45', 'same ring with a 100': pieces told as those of before are as long as they were."""
    doubted = any(map(heard.tells, _DOUBTS)) and before.adapters and all(map(is_open, said.adapters))
    if doubted or _is_likened(heard, before):  # 'they say two rings never reach': those that were told
        return said.with_(adapters=())
    drawn = any(is_open(one) and one.piece in RANGED and _was_drawn(one, before, heard) for one in said.adapters)
    if not (heard.tells("same") or heard.tells("one-ring") or drawn or _is_the_ring(heard)):
        return said
    out: list[Thing] = []
    others = {
        id_
        for part in (*heard.cast.bodies, *heard.cast.lenses)
        if part.is_host and part.mounts
        for id_ in part.mounts[0].ids
    }
    elsewhere = _is_for_another(heard) and bool(before.bodies) and not others & set(before.bodies[0].ids)
    for piece in said.adapters:
        stood = [one for one in before.adapters if one.piece == piece.piece and not is_open(one)]
        stood = stood or [one for one in before.adapters if piece.piece == RING and one.piece == "recessed"]
        if not stood and piece.piece in DRAWN:  # 'with the helicoid' after how long a tube must be, 'with that tube in'
            stood = [one for one in before.stood if one.piece == piece.piece and not is_open(one)]
        stood = [one for one in stood if not others or (set(one.rear) & others if one.rear else not elsewhere)]
        meant = is_open(piece) or (heard.tells("same") and _is_of_the_pair(piece, before))
        if said.intent == FOCUS_VERDICT and is_open(piece) and not heard.tells("drawn-shut"):
            stood = list(drawn_whole(piece, tuple(stood))) or stood  # 'does that see far on the bellows', pushed in
        out += stood if stood and meant else [piece]
    return said.with_(adapters=tuple(out))


def _is_of_the_pair(piece: Thing, before: Question) -> bool:
    """'same Z ring': told by the mount of the body, or of the lens, that it stood on before, and by no length."""
    ends = {*piece.front, *piece.rear}
    pair = {id_ for thing in (*before.lenses, *before.bodies) for id_ in thing.ids}
    return piece.piece == RING and piece.thickness_mm is None and not piece.ids and bool(ends) and ends <= pair


def _is_likened(heard: Heard, before: Question) -> bool:
    """'does it eat light like tubes do' after a close-up lens: that is set beside them, and they take no place."""
    return is_worn(before) and tubes_named(heard) and not (heard.tells(_INSTEAD) or heard.tells("adding"))


def _was_drawn(piece: Thing, before: Question, heard: Heard) -> bool:
    """'at what helicoid setting is infinity' after one of 25 to 55 mm, 'all the way in' after one of 9 mm: that one."""
    like = (one.thickness_mm for one in before.adapters if one.piece == piece.piece and one.thickness_mm)
    return any(len(set(length)) > 1 or heard.tells("drawn-shut") or heard.tells("drawn-out") for length in like)


def _is_for_another(heard: Heard) -> bool:
    """'the ring for the E body': one that is told by whose it is."""
    tokens = heard.line.tokens
    return any(one.kind == "PIECE" and (two.kind, two.value) == ("PREP", "for") for one, two in pairwise(tokens))


def _is_the_ring(heard: Heard) -> bool:
    """'a 28 on that ring': the piece is one that was spoken of."""
    tokens = [token for token in heard.line.tokens if token.kind not in ("FILLER", "MARK")]
    return any(one.kind == "DET" and one.value == "the" and other.kind == "PIECE" for one, other in pairwise(tokens))
