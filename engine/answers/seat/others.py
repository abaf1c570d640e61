"""What else the same words may buy: rings of another make between the same mounts, and the lens put straight in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from engine.answers.parts.answer import ListedChain
from engine.answers.parts.knowledge import Knowledge
from engine.answers.seat.standin import as_listed
from engine.answers.seat.telling import chain_title
from engine.base.interval import is_known
from engine.chains.walk import Chain
from engine.facts.kinds import COMMONNESS, FLAT_KINDS, VERDICTS
from engine.facts.records import Adapter
from engine.judging.judge import Judged

MOST: Final = 2


def traps(chains: Sequence[ListedChain], knowledge: Knowledge, pieces: int | None = None) -> list[ListedChain]:
    """Chains that pass for the best ones and do less: numbered on after them."""
    if not chains:
        return []
    out: list[ListedChain] = []
    seen = {row.listed.judged.chain.ids for row in chains}
    for judged in (*_straight_in(chains[0].listed.judged, knowledge, pieces), *_other_makes(chains, knowledge)):
        if judged.chain.ids not in seen and len(out) < MOST:
            seen.add(judged.chain.ids)
            out.append(as_listed(judged, chain_title(judged, knowledge), len(chains) + len(out) + 1))
    return out


def _straight_in(best: Judged, knowledge: Knowledge, pieces: int | None) -> Iterator[Judged]:
    """The lens screwed or turned straight into the body, where that goes but does not do as well."""
    if not best.chain.adapters or pieces == 0:
        return
    setup = best.setup
    for joint in knowledge.joints.onward(setup.lens_mount.id):
        if joint.rear == setup.body_mount.id:
            judged = knowledge.judge_chain(Chain((joint,), {}), setup)
            if VERDICTS.index(judged.verdict) > VERDICTS.index(best.verdict):
                yield judged


def _other_makes(chains: Sequence[ListedChain], knowledge: Knowledge) -> Iterator[Judged]:
    """The best chains with one ring of each exchanged for a more usual one of another seat."""
    for row in chains:
        best = row.listed.judged
        if any(adapter.stackable for adapter in best.chain.adapters):
            continue
        for at, link in enumerate(best.chain.links):
            if not isinstance(link, Adapter) or link.kind not in FLAT_KINDS or link.owned:
                continue
            for other in _makes(link, knowledge):
                links = (*best.chain.links[:at], other, *best.chain.links[at + 1 :])
                judged = knowledge.judge_chain(Chain(links, {}), best.setup)
                if best.verdict == "infinity" and judged.verdict == "macro-only":
                    yield judged  # one that is far too short is a part for helicoids, not a make of this ring


def _makes(link: Adapter, knowledge: Knowledge) -> Iterator[Adapter]:
    """Rings between the same two mounts with another seat, at least as usual as this one."""
    seat = link.thickness_mm.shortest
    # seats nearer than the spread of making are the same ring
    spread = knowledge.catalogue.assumptions["making-spread-nominal"].value.greatest
    for ring in knowledge.rings.onward.get(link.front, {}).get(link.rear, ()):
        other = knowledge.catalogue.adapters[ring.id]
        theirs = other.thickness_mm.shortest
        if other.has_glass or other.kind not in FLAT_KINDS or not other.thickness_mm.is_fixed:
            continue
        if COMMONNESS.index(other.common) > COMMONNESS.index(link.common):
            continue
        if is_known(seat) and is_known(theirs) and abs(theirs.nominal - seat.nominal) > spread:
            yield other
