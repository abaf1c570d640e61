"""A ring named by its length alone, as that of another pair is called: 'a 5 mm ring' behind an M42 lens."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.near_enough import wrong_seat_mm
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from grammar.questions import RING, Question, Thing
from grammar.things.casting import SPACER

_BY_LENGTH: Final = re.compile(r"(\d+(?:\.\d+)?) ?mm\b", re.IGNORECASE)
_SAME_MM: Final = 0.25  # and so near to it, it is that ring with an error


def rings_by_length(question: Question, facts: Catalogue, right_mm: float | None) -> Question:
    """The question with such a ring as one of that length, where it joins neither the lens nor the body named.

    `right_mm`: how long the ring of the pair is; what is far from it is put between to come closer.
    """
    pieces = tuple(_by_length(piece, question, facts, right_mm) for piece in question.adapters)
    return question if pieces == question.adapters else question.with_(adapters=pieces)


def rings_to_next(question: Question, facts: Catalogue) -> Question:
    """'a 1 mm ring onto M, then M to L': a ring as long as what leads from the lens to the next is that one."""
    lens = question.lens
    own = facts.mounts.get(lens.id or "") if lens is not None else None
    pieces = list(question.adapters)
    nexts = [one.front[0] for one in pieces if one.front and one.rear and one.piece == RING]
    if lens is None or own is None or len(nexts) != 1 or nexts[0] in lens.ids or nexts[0] not in facts.mounts:
        return question
    goal = facts.mounts[nexts[0]]
    long, short = own.register_mm, goal.register_mm
    right = long.nominal - short.nominal if is_known(long) and is_known(short) else None
    for n, one in enumerate(pieces):
        length = one.thickness_mm
        bare = one.piece == RING and not (one.ids or one.rear) and one.front in ((), (goal.id,))
        if right is None or length is None or not bare or length[0] != length[1]:
            continue
        if right > 0 and abs(length[0] - right) <= _SAME_MM:
            pieces[n] = replace(one, front=lens.ids, rear=(goal.id,))
            return question.with_(adapters=tuple(pieces))
    return question


def _by_length(piece: Thing, question: Question, facts: Catalogue, right_mm: float | None) -> Thing:
    told = _BY_LENGTH.match(piece.words)
    known = facts.adapters.get(piece.id or "") if piece.kind == RING else None
    lenses = {id_ for lens in question.lenses for id_ in lens.ids}
    if told is None or known is None or not lenses:
        return piece
    bodies = {id_ for body in question.bodies for id_ in body.ids}
    aside = known.kind == SPACER and bool(bodies) and not {known.rear, known.front} & bodies
    if known.front in lenses and aside:  # 'a 5 mm ring' that leads elsewhere: behind the lens it only stands between
        length = float(told[1])
        return Thing(words=piece.words, column=piece.column, thickness_mm=(length, length), piece=SPACER)
    if known.front in lenses:
        return piece
    if any(facts.mounts[name].designation.casefold() in piece.words.casefold() for name in (known.front, known.rear)):
        return piece  # 'a 28 mm M42 tube' names what it joins
    length = float(told[1])
    kind = RING if right_mm is not None and abs(length - right_mm) <= wrong_seat_mm(facts) else SPACER
    return Thing(words=piece.words, column=piece.column, thickness_mm=(length, length), piece=kind)
