"""A lens on a ring that is made for another mount, as the question describes it: judged, never advised."""

from __future__ import annotations

from engine.answers.parts.answer import Line, ListedChain
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import article
from engine.answers.seat.described import TUBE
from engine.answers.seat.standin import as_listed
from engine.answers.seat.telling import chain_title
from engine.chains.ring_map import Joint, off_um
from engine.chains.setup import Setup
from engine.chains.walk import ADDED_FOCUSING, Chain
from engine.facts.records import Adapter
from grammar.questions import Question
from grammar.things.casting import OPTICAL

TUBES = frozenset({TUBE, *ADDED_FOCUSING})


def forced_chain(question: Question, setup: Setup, knowledge: Knowledge) -> ListedChain | None:
    """The one ring named with the lens screwed into it, where their threads start together but do not belong.

    None where the ring takes the lens's own mount, where a further piece may stand between, or nothing would start.
    """
    named = [thing for thing in question.adapters if thing.front or thing.rear or thing.ids]
    if len(named) != 1:
        return None
    ring = usual_ring(named[0].ids, named[0].front, named[0].rear, setup, knowledge)
    if ring is None or ring.front == setup.lens_mount.id:
        return None
    male, female = setup.lens_mount.thread, knowledge.catalogue.mounts[ring.front].thread
    if male is None or female is None or male == female:
        return None
    mating = knowledge.joints.mating(male, female)
    if mating is None or mating.outcome != "binds" or mating.runs_home != "no":
        return None
    joint = Joint(
        setup.lens_mount.id, ring.front, "thread", "jams",
        off_um(setup.lens_mount.id, ring.front, knowledge.catalogue.mounts),
    )  # fmt: skip
    judged = knowledge.judge_chain(Chain((joint, ring), {}), setup)
    return as_listed(judged, f"forced into it: {chain_title(judged, knowledge)}")


def held_chain(question: Question, setup: Setup, knowledge: Knowledge) -> ListedChain | None:
    """The one ring named, which ends on the body, with the lens held against it, whose mount it does not take.

    Where it is said to fit or to be made to fit all the same, the lens is judged as if it were seated there.
    None where several rings were named, where the lens goes into the ring after all, and for a tube or helicoid of one
    mount: another ring before it leads the lens there.
    """
    named = question.adapters
    if len(named) != 1 or (named[0].piece in TUBES and not named[0].rear and not named[0].ids):
        return None
    if named[0].piece in OPTICAL:
        return None  # a plain ring between the same two is not what was named
    ring = usual_ring(named[0].ids, named[0].front, named[0].rear, setup, knowledge)
    lens, mounts = setup.lens_mount.id, knowledge.catalogue.mounts
    if ring is None or ring.front == lens or any(one.rear == ring.front for one in knowledge.joints.onward(lens)):
        return None
    off = off_um(lens, ring.front, mounts)
    if fits_all_the_same(question):
        judged = knowledge.judge_chain(Chain((Joint(lens, ring.front, "bayonet", "bayonet", off), ring), {}), setup)
        return as_listed(judged, f"as if it were seated in {knowledge.catalogue.adapters[ring.id].name}")
    judged = knowledge.judge_chain(Chain((Joint(lens, ring.front, "held", "held", off), ring), {}), setup)
    return as_listed(judged, chain_title(judged, knowledge))


def fits_all_the_same(question: Question) -> bool:
    """Whether a ring of another mount is said to hold the lens, or shall be made to."""
    return mentions(question, "fits-all-the-same")


def nothing_holds(question: Question, held: ListedChain | None) -> list[Line]:
    """The caution beside a lens that is judged as if a ring of another mount held it."""
    if held is None or not fits_all_the_same(question):
        return []
    own, body = held.listed.judged.setup.lens_mount.designation, held.listed.judged.setup.body_mount.designation
    text = (
        f"That ring takes another mount, so nothing in it holds {article(own)} {own} lens: it may hang crooked or drop"
        f" off. Do not force it, hold the lens yourself, and get a ring from {own} to {body}."
    )
    return [Line("caution", text)]


def usual_ring(
    ids: tuple[str, ...], fronts: tuple[str, ...], rears: tuple[str, ...], setup: Setup, knowledge: Knowledge
) -> Adapter | None:
    """The adapter meant: named, or the usual one between the two mounts."""
    adapters = knowledge.catalogue.adapters
    if ids and ids[0] in adapters:
        return adapters[ids[0]]
    for front in fronts:
        for rear in rears or (setup.body_mount.id,):
            rings = knowledge.rings.onward.get(front, {}).get(rear, ())
            plain = [ring for ring in rings if not ring.glass and ring.known and ring.least_um == ring.greatest_um]
            if rear == setup.body_mount.id and plain:
                right = off_um(rear, front, knowledge.catalogue.mounts)
                return adapters[min(plain, key=lambda ring: abs(ring.least_um - (right or 0))).id]
    return None
