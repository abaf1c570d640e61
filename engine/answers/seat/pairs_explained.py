"""What room the registers of lens and body leave for a ring, and why it is more for one pair than for another."""

from __future__ import annotations

from itertools import islice, product
from typing import Final

from engine.answers.parts.answer import Line, Quantity, RingToMake, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, body_side, goes_on, lens_side, setup_of
from engine.answers.parts.wording import READS_MM, listed, small_mm
from engine.answers.seat.making import ring_to_make
from engine.base.interval import Interval, is_known
from engine.facts.records import Mount
from grammar.questions import Question, Thing

MOST_PAIRS: Final = 6  # of lenses and bodies whose registers are told
SEVERAL: Final = 2
MODERN: Final = "mirrorless"  # the kind of mounts that rings end on


def of_pairs(question: Question, knowledge: Knowledge) -> Told:
    """Each lens on each body by itself, then what sets them apart."""
    told, mounts = Told(), []
    for one, other in _pairs(question, knowledge):
        part = _of_one(one, other, knowledge)
        lens, body = _mount_of(one, knowledge), _mount_of(other, knowledge)
        if part.lines and lens is not None and body is not None and (lens, body) not in mounts:
            mounts.append((lens, body))
            told += part
    return _apart(mounts) + told if len(mounts) >= SEVERAL else told


def _pairs(question: Question, knowledge: Knowledge) -> list[tuple[Thing, Thing]]:
    """What each ring joins where several are named by both ends, else every lens and body that may go together."""
    rings = [(_end(one.front), _end(one.rear)) for one in question.adapters if one.front and one.rear]
    if len(set(rings)) >= SEVERAL:
        return list(dict.fromkeys(rings))[:MOST_PAIRS]
    bodies = {one.ids[:1] for one in question.bodies}
    fronts = [one for one in _fronts(question) if one.ids[:1] not in bodies]
    question = with_rings_for_bodies(question, knowledge)
    pairs = product(dict.fromkeys((*question.lenses, *fronts)), question.bodies)
    return list(islice((pair for pair in pairs if _go_together(pair, question, knowledge)), MOST_PAIRS))


def with_rings_for_bodies(question: Question, knowledge: Knowledge) -> Question:
    """'the T2 ring for MFT ... than the one for E': both are bodies, and the lens is what the ring takes."""
    fronts, named = _fronts(question), (*question.bodies, *question.lenses)
    if not fronts or len(named) < SEVERAL or not all(_is_of_body(one, knowledge) for one in named):
        return question
    if {one.ids[:1] for one in fronts} & {one.ids[:1] for one in question.bodies}:
        return question  # 'an MFT lens to E ring': it is named by the body that it goes on
    rings = tuple(one for one in question.adapters if not (one.front and not one.rear))
    return question.with_(lenses=tuple(fronts), bodies=named, adapters=rings)


def _fronts(question: Question) -> list[Thing]:
    """What rings take of which the other end is not told."""
    return [_end(one.front) for one in question.adapters if one.front and not one.rear]


def _end(ids: tuple[str, ...]) -> Thing:
    return Thing("mount", ids[:1])


def _is_of_body(thing: Thing, knowledge: Knowledge) -> bool:
    """Whether a mount named alone is one that modern bodies have."""
    mount = _mount_of(thing, knowledge)
    return mount is not None and mount.kind == MODERN and thing.focal_length_mm is None


def _go_together(pair: tuple[Thing, Thing], question: Question, knowledge: Knowledge) -> bool:
    lens, body = lens_side(pair[0], knowledge.catalogue), body_side(pair[1], knowledge.catalogue)
    return isinstance(lens, LensSide) and isinstance(body, BodySide) and goes_on(question, lens, body)


def _apart(pairs: list[tuple[Mount, Mount]]) -> Told:
    """Why one ring is thicker than another: of two registers one is the same for all of them."""
    lenses, bodies = (list(dict.fromkeys(mount.id for mount in side)) for side in zip(*pairs, strict=True))
    if min(len(lenses), len(bodies)) != 1 or max(len(lenses), len(bodies)) < SEVERAL:
        return Told()
    of_body = len(lenses) == 1
    rooms = [(pair[of_body], _room(*pair)) for pair in pairs]
    if any(room is None for _, room in rooms):
        return Told()
    known = sorted(((room.nominal, mount) for mount, room in rooms if room is not None), key=lambda row: row[0])
    each = listed([f"{mount.designation} {_seat(room)}" for room, mount in known])
    if known[-1][0] - known[0][0] < READS_MM:
        return Told()
    law = "lens register less body register is the seat of a ring; "
    law += "the lens stays the same, so the deeper the body the thinner the ring" if of_body else (
        "the body stays the same, so the longer the lens's register the thicker the ring"
    )  # fmt: skip
    if known[0][0] < 0 < known[-1][0]:
        law += ", and where the difference is below 0 there is no room for one: the lens would have to sit inside"
    elif known[-1][0] < 0:
        law += ", and below 0 it is a cup: the farther below, the deeper the barrel must go in, so a fat one meets it"
    return Told((Line("head", f"{law[:1].upper()}{law[1:]}. {each[:1].upper()}{each[1:]}."),))


def _seat(room: float) -> str:
    return small_mm(room) if room >= 0 else f"{small_mm(-room)} inside"


def _room(lens: Mount, body: Mount) -> Interval | None:
    needs, has = lens.register_mm, body.register_mm
    return needs - has if is_known(needs) and is_known(has) else None


def _of_one(one: Thing, other: Thing, knowledge: Knowledge) -> Told:
    lens, body = _mount_of(one, knowledge), _mount_of(other, knowledge)
    if lens is None or body is None or lens.id == body.id:
        return Told()
    needs, has = lens.register_mm, body.register_mm
    if not (is_known(needs) and is_known(has)):
        return Told()
    by = needs - has
    named = f"{lens.designation} lenses sit {small_mm(needs.nominal)} from the sensor, {body.designation} is "
    ring = _ring_of(one, other, knowledge)
    if by.nominal > 0 and ring is not None and ring.possible == "no":
        text = f"{named}{small_mm(has.nominal)} deep: {ring.why}."
    elif by.nominal > 0:
        text = f"{named}{small_mm(has.nominal)} deep: there is room for a ring of {small_mm(by.nominal)}."
    elif by.nominal and ring is not None and ring.possible == "recessed":
        text = (
            f"{named}{small_mm(has.nominal)} deep: the lens's seat must lie {small_mm(-by.nominal)} inside the body's "
            "flange, so the ring is a cup; on a flat ring it sits too far out, as on an extension tube."
        )
    elif not by.nominal:
        text = f"Both registers are {small_mm(needs.nominal)}: what keeps the one off the other is not the distance."
    else:
        text = (
            f"{named}{small_mm(has.nominal)} deep: even with no ring at all the lens is {small_mm(-by.nominal)} too "
            "far out, as on an extension tube, and a real ring adds to that. Only a seat sunk into the body, or glass "
            "in the ring, gives infinity."
        )
    case = f"{lens.id} to {body.id}"
    rows = (
        Quantity("register_mm", needs, lens.id), Quantity("register_mm", has, body.id),
        Quantity("register_difference_mm", by, case), Quantity("ring_thickness_mm", by, case),
    )  # fmt: skip
    return Told((Line("head", text),), rows)


def _ring_of(one: Thing, other: Thing, knowledge: Knowledge) -> RingToMake | None:
    """The ring between a lens and a body that are named, and whether it can be made."""
    lens, body = lens_side(one, knowledge.catalogue), body_side(other, knowledge.catalogue)
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)):
        return None
    return ring_to_make(setup_of(lens, body, knowledge.catalogue), knowledge.catalogue)


def _mount_of(thing: Thing | None, knowledge: Knowledge) -> Mount | None:
    return knowledge.catalogue.mounts.get(thing.id or "") if thing is not None and thing.kind == "mount" else None
