"""One lens offered in several mounts for one body, or one lens for several bodies: which is easier, then each pair."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide
from engine.answers.seat.chain_numbers import price_of
from engine.answers.seat.iris import iris_text
from engine.answers.ways.easier import easier, for_all, outcome
from engine.answers.ways.several import Pair, pair_numbers, pair_of, pair_told
from engine.judging.judge import Judged
from grammar.questions import Question, Thing

MOST = 4
MOST_PAIRS = 6  # of several lenses on several bodies


def pairs_apart(
    question: Question, lenses: Sequence[LensSide], bodies: Sequence[BodySide], knowledge: Knowledge
) -> tuple[Told, tuple[ListedChain, ...]]:
    """Nothing where neither the mounts of the lenses nor those of the bodies differ; the body for all where both do."""
    mounts, seats = {lens.mount.id for lens in lenses}, {body.mount.id for body in bodies}
    if max(len(mounts), len(seats)) < 2 or not (mounts and seats):
        return Told(), ()
    several = len(mounts) > 1 and len(seats) > 1
    if several and len(lenses) * len(bodies) > MOST_PAIRS:
        return Told(), ()
    lenses = lenses if len(mounts) > 1 else lenses[:1]
    bare = question.with_(adapters=())
    both = [(lens, body) for lens in lenses[:MOST] for body in bodies[: MOST if len(seats) > 1 else 1]]
    pairs = [pair_of(bare, lens, body, knowledge, len(mounts) > 1, len(seats) > 1) for lens, body in both]
    told = easier([(pair.words, _judged(pair)) for pair in pairs])
    if several:
        told = for_all(
            [
                (body.mount.designation, lens.mount.designation, _judged(pair))
                for (lens, body), pair in zip(both, pairs, strict=True)
            ]
        )
    for pair in pairs:
        told += _told(pair, question, knowledge)
    if several:
        return told, numbered([pair.chain for pair in pairs if pair.chain is not None])
    cases = [(lens, body, _judged(pair)) for (lens, body), pair in zip(both, pairs, strict=True)]
    trapped, traps = in_the_other(question, cases, knowledge)
    return told + trapped, numbered([*(pair.chain for pair in pairs if pair.chain is not None), *traps])


def numbered(chains: Sequence[ListedChain]) -> tuple[ListedChain, ...]:
    return tuple(ListedChain(n, one.listed, one.title) for n, one in enumerate(chains, start=1))


def _told(pair: Pair, question: Question, knowledge: Knowledge) -> Told:
    lines = [Line("fact", pair_told(pair, question.feet))]
    rows = [*pair_numbers(pair, knowledge)]
    if pair.chain is not None:
        judged = pair.chain.listed.judged
        lines.append(Line("fact", iris_text(judged)[1], 1))
        band = price_of(judged)
        rows += [Quantity("price", band, pair.case)] if band is not None else []
    return Told(tuple(lines), tuple(rows))


def in_the_other(
    question: Question, cases: Sequence[tuple[LensSide, BodySide, Judged | None]], knowledge: Knowledge
) -> tuple[Told, tuple[ListedChain, ...]]:
    """What becomes of each lens in the ring for another that is the easier to seat, where it goes straight in."""
    told, chains = Told(), []
    for lens, body, own in cases:
        reached = {joint.rear for joint in knowledge.joints.onward(lens.mount.id)} - {lens.mount.id}
        for other, there, best in cases:
            if there.mount.id != body.mount.id or other.mount.id not in reached or outcome(best) >= outcome(own):
                continue
            ring = Thing(piece="adapter", front=(other.mount.id,), rear=(body.mount.id,))
            pair = pair_of(question.with_(adapters=(ring,)), lens, body, knowledge, True, False)
            if pair.chain is not None:
                told += Told((Line("fact", f"In the other's ring, {pair_told(pair, question.feet)}"),))
                chains.append(pair.chain)
    return told, tuple(chains)


def _judged(pair: Pair) -> Judged | None:
    return pair.chain.listed.judged if pair.chain is not None else None
