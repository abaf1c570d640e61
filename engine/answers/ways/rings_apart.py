"""Rings that join different mounts, set against each other: each by its seat, its price and what comes of it."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side, setup_of
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import listed, small_mm
from engine.answers.seat.telling import chain_title, life_line, seat_line
from engine.answers.ways.several import Pair, pair_numbers, pair_of, pair_told
from engine.chains.walk import Chain
from engine.facts.kinds import FLAT_KINDS, VERDICTS
from grammar.questions import Limits, Question, Thing

SEATS = "two-seats"  # a phrase of a flush ring set against one with a lip, or a cup


def end_apart(question: Question) -> bool:
    """Whether the rings named end on different mounts, none of which another ring goes on from."""
    rings = [thing for thing in question.adapters if thing.front and thing.rear]
    return len({ring.rear[0] for ring in rings} - {ring.front[0] for ring in rings}) > 1


def rings_apart(question: Question, knowledge: Knowledge) -> Told:
    """Nothing where less than two rings of known mounts are named, or where all of them join the same two."""
    rings = [thing for thing in question.adapters if thing.front and thing.rear and not thing.thickness_mm]
    joined = {(ring.front[0], ring.rear[0]) for ring in rings}
    if len(joined) < 2 and mentions(question, SEATS):
        return _seats_apart(question, knowledge)
    if len(joined) < 2 or len(rings) != len(question.adapters):
        return Told()
    pairs = [pair for one in sorted(joined) if (pair := _pair(one, question, knowledge)) is not None]
    told = _thinnest(pairs)
    for pair in pairs:
        told += Told((Line("fact", pair_told(pair, question.feet)),), tuple(pair_numbers(pair, knowledge)))
    return told


def _seats_apart(question: Question, knowledge: Knowledge) -> Told:
    """'flush bush or the ring with a lip': each ring sold between the two, by its seat and what it then does."""
    facts = knowledge.catalogue
    lens, body = lens_side(question.lens, facts), body_side(question.body, facts)
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)):
        return Told()
    setup = setup_of(lens, body, facts, question.f_number)
    ends = (setup.lens_mount.id, setup.body_mount.id)
    rings = [one for one in facts.adapters.values() if (one.front, one.rear) == ends and one.kind in FLAT_KINDS]
    by_seat = {one.thickness_mm: one for one in sorted(rings, key=lambda one: one.id, reverse=True)}
    if len(by_seat) < 2:
        return Told()
    judged = [knowledge.judge_chain(Chain((one,), {}), setup) for one in by_seat.values()]
    judged.sort(key=lambda one: VERDICTS.index(one.verdict))
    best = [one for one in judged if one.verdict == "infinity"]
    head = f"{chain_title(best[0], knowledge)} keeps infinity." if len(best) == 1 else "By the seat:"
    rows = [f"{chain_title(one, knowledge)}: {life_line(one, question.feet)}; {seat_line(one)}" for one in judged]
    return Told((Line("head", head), *(Line("fact", row, 1) for row in rows)))


def _pair(joined: tuple[str, str], question: Question, knowledge: Knowledge) -> Pair | None:
    """A lens of the ring's front on a body of its rear, of the focal length told where there is one."""
    facts = knowledge.catalogue
    lens = question.lens
    thing = lens if lens is not None and lens.id == joined[0] else Thing("mount", (joined[0],))
    front, rear = lens_side(thing, facts), body_side(Thing("mount", (joined[1],)), facts)
    if not (isinstance(front, LensSide) and isinstance(rear, BodySide)):
        return None
    alone = question.with_(adapters=(), limits=Limits(pieces=1, without_glass=True))
    return pair_of(alone, front, rear, knowledge, True, True)


def _thinnest(pairs: Sequence[Pair]) -> Told:
    seats = [(pair.ring.nominal, pair.words) for pair in pairs if pair.ring is not None]
    if len(seats) < 2:
        return Told()
    seats.sort()
    (least, words), others = seats[0], seats[1:]
    rest = listed([small_mm(seat) for seat, _ in others])
    degree = "thinner" if len(seats) == 2 else "thinnest"
    return Told((Line("head", f"The ring for {words} is the {degree}: {small_mm(least)} against {rest}."),))
