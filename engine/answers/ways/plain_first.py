"""The plain way told before any other, where it is what is asked about: whether a lens is fine without more ado."""

from __future__ import annotations

from engine.answers.making.whole_ring import REGISTERS
from engine.answers.parts.answer import Line, ListedChain, RingToMake
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import lens_off_mm, right_seat_mm
from engine.answers.parts.said import mentions
from engine.answers.seat.forced import usual_ring
from engine.answers.seat.standin import as_listed
from engine.answers.seat.telling import chain_title
from engine.answers.seat.unsold import is_free, made_chain
from engine.base.interval import is_known
from engine.chains.setup import Setup
from engine.chains.walk import Chain
from engine.judging.ranking import Listed
from grammar.questions import Question
from grammar.things.casting import OPTICAL


def plain_way(
    question: Question, found: tuple[ListedChain, ...], ring: RingToMake, setup: Setup, knowledge: Knowledge
) -> ListedChain | None:
    """The plain ring, or none at all, where what would be listed first goes around what it does; else None.

    Glass brings a lens to infinity that no plain ring does, and a helicoid one whose own register is off.
    """
    if not is_free(question.limits) or not found:
        return None
    if is_off_register(setup, knowledge) and not question.adapters:
        return _usual(setup, knowledge)
    if any(thing.piece in OPTICAL for thing in question.adapters):
        return None  # it is asked of the glass
    asks = mentions(question, "fine-so", "plain-doubted") or question.said(REGISTERS) is not None
    return without_glass(found, ring, setup, knowledge) if asks else None


def without_glass(
    chains: tuple[ListedChain, ...], ring: RingToMake, setup: Setup, knowledge: Knowledge
) -> ListedChain | None:
    """What a lens does that only glass brings to infinity, held as near as it goes without; None where it is not so."""
    glass = all(any(one.has_glass for one in row.listed.judged.chain.adapters) for row in chains)
    if not glass or ring.possible != "no" or ring.thickness_mm is None or ring.thickness_mm.nominal >= 0:
        return None
    return made_chain(ring, setup, knowledge)


def with_plain_way(found: list[ListedChain], plain: ListedChain | None) -> list[ListedChain]:
    """The chains behind the plain way, which is not listed twice."""
    return found if plain is None else [plain, *(row for row in found if not _same(row.listed, plain.listed))]


def glass_left(chains: tuple[ListedChain, ...]) -> list[Line]:
    """That glass alone would give infinity, where the way without is told first."""
    glass = [row for row in chains if any(one.has_glass for one in row.listed.judged.chain.adapters)]
    best = next((row for row in glass if row.listed.judged.verdict == "infinity"), None)
    if best is None or chains[0].listed.judged.verdict == "infinity" or len(glass) < len(chains) - 1:
        return []
    return [
        Line(
            "head", f"That is without glass; infinity only through a ring with glass: {best.title}, way {best.number}."
        )
    ]


def is_off_register(setup: Setup, knowledge: Knowledge) -> bool:
    """Whether the lens was measured to have nearly, and not quite, the register of its mount."""
    own, mount = setup.lens.register_mm, setup.lens_mount.register_mm
    least, most = right_seat_mm(knowledge.catalogue), lens_off_mm(knowledge.catalogue)
    return is_known(own) and is_known(mount) and least <= abs(own.nominal - mount.nominal) <= most


def _usual(setup: Setup, knowledge: Knowledge) -> ListedChain | None:
    ring = usual_ring((), (setup.lens_mount.id,), (setup.body_mount.id,), setup, knowledge)
    if ring is None:
        return None
    judged = knowledge.judge_chain(Chain((ring,), {}), setup)
    return as_listed(judged, chain_title(judged, knowledge))


def _same(one: Listed, other: Listed) -> bool:
    return [a.id for a in one.judged.chain.adapters] == [a.id for a in other.judged.chain.adapters]
