"""The adapters that a question names or describes ("a flat 1 mm ring", "the 17-31 helicoid"): which must be used."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from math import inf

from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import ring_or_tube_mm, sold_ring_mm, told_register_mm, wrong_seat_mm
from engine.answers.parts.said import numbers
from engine.answers.seat.described import ANY_PIECE, CUP, TUBE, are_it_together, described, supposed
from engine.answers.seat.thread_rings import as_thread_rings
from engine.answers.shims.loose import off_by_mm
from engine.answers.shims.pieces_wanted import Wanted, right_rings
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.chains.search import MOST_PIECES
from engine.chains.walk import ADDED_FOCUSING
from engine.facts.records import Adapter
from grammar.kinds import CHAIN
from grammar.questions import Limits, Question, Thing

ENDS_BESIDE = 2  # pieces beside those named, to come from the lens to them and from them to the body
SPACERS = ("ring", "spacer", "shim", "washer", "plate")  # names of what goes beneath a lens beside its cup
THICKEST_MM = 120.0  # a longer thing is no ring


def with_named_pieces(
    question: Question, lens_mount: str, body_mount: str, knowledge: Knowledge
) -> tuple[Knowledge, Limits]:
    """The knowledge with the pieces that were described, and limits that ask for all that were named."""
    told = _joined([*_as_measured(question, knowledge), *_told_by_thickness(question)])
    told = as_thread_rings(told, lens_mount, body_mount, knowledge.catalogue)
    told = _beside_a_ring(told, lens_mount, body_mount, knowledge)
    pieces = _spanning(_as_they_lead(told, lens_mount), lens_mount, body_mount, knowledge)
    wanted = Wanted(question, pieces, _lens_end(pieces, lens_mount, body_mount, knowledge), lens_mount, body_mount,
                    knowledge)  # fmt: skip
    missing = _leading_to(pieces, lens_mount, body_mount, knowledge) if question.intent == CHAIN else None
    wanted.made += [missing] if missing is not None else []
    if wanted.is_tubes_alone and not wanted.glass and "adapter" not in question.limits.without:
        # they go with a ring that seats the lens right, where there is one
        right = right_rings(f"{lens_mount}>{body_mount}", knowledge)
        wanted.using += ["|".join(right)] if right else []
    using = tuple(dict.fromkeys(wanted.using))
    most = question.limits.pieces
    if most is None and len(using) + ENDS_BESIDE > MOST_PIECES:
        most = len(using) + ENDS_BESIDE  # who names so many pieces wants them all
    limits = replace(
        question.limits, using=using, pieces=most, with_glass=wanted.glass,
        without_glass=wanted.glassless and not wanted.glass,
    )  # fmt: skip
    return knowledge.with_adapters(tuple(wanted.made)), limits


def _beside_a_ring(things: list[Thing], lens_mount: str, body_mount: str, knowledge: Knowledge) -> list[Thing]:
    """'the 5 mm ring and a half mm one by mistake': beside the ring that spans, another of no told ends is a spacer.

    'in an E cup' is the ring that spans as well, told by the end that it leads to.
    """

    def spans(thing: Thing) -> bool:
        named = knowledge.catalogue.adapters.get(thing.id or "") if thing.kind == "adapter" else None
        front, rear = ((named.front,), (named.rear,)) if named is not None else (thing.front, thing.rear)
        by_end = not rear and not thing.thickness_mm and thing.piece in (*ANY_PIECE, CUP)
        by_end = by_end and (body_mount in front or (thing.piece == CUP and not front))
        return (lens_mount in front and body_mount in rear) or by_end

    def bare(thing: Thing) -> bool:
        on_lens = not thing.front or thing.front == (lens_mount,)
        return thing.piece == "adapter" and bool(thing.thickness_mm) and on_lens and not (thing.rear or thing.ids)

    if lens_mount == body_mount or not any(map(spans, things)) or not any(map(bare, things)):
        return things
    if (same := _said_twice(things, spans, bare, lens_mount, body_mount, knowledge)) is not None:
        return same
    plain = right_rings(f"{lens_mount}>{body_mount}", knowledge)
    sunk = any(knowledge.catalogue.adapters[name].kind == CUP for name in plain)
    out = []
    for thing in things:
        any_cup = thing.piece == CUP and spans(thing) and not thing.front and not sunk
        out.append(replace(thing, piece=TUBE) if bare(thing) else replace(thing, piece="adapter") if any_cup else thing)
    return out


def _said_twice(
    things: list[Thing], spans: Callable[[Thing], bool], bare: Callable[[Thing], bool], lens_mount: str,
    body_mount: str, knowledge: Knowledge,
) -> list[Thing] | None:  # fmt: skip
    """'27.1 ring, and the DKL-X flange has tape on it': a length nearly as the ring must be is that ring's."""
    one, other = (knowledge.catalogue.mounts[name].register_mm for name in (lens_mount, body_mount))
    rings, sized = [thing for thing in things if spans(thing)], [thing for thing in things if bare(thing)]
    if (
        len(rings) != 1
        or len(sized) != 1
        or rings[0].thickness_mm
        or rings[0].id
        or not (is_known(one) and is_known(other))
    ):
        return None
    between = one.nominal - other.nominal
    low, high = sized[0].thickness_mm or (0.0, inf)
    facts = knowledge.catalogue
    if between <= wrong_seat_mm(facts) or low != high or abs(between - low) > ring_or_tube_mm(facts):
        return None
    ring = replace(rings[0], thickness_mm=(low, high))
    return [ring if thing is rings[0] else thing for thing in things if thing is not sized[0]]


def _spanning(things: list[Thing], lens_mount: str, body_mount: str, knowledge: Knowledge) -> list[Thing]:
    """'a D lens on Q, 3.1 tube': of the tubes told, one that is just what is between the registers is the ring.

    Spacers that are not called tubes are it together, where they come to nearly as much: 'D on Q, 2.5 + 0.8'.
    """
    mounts = knowledge.catalogue.mounts
    one, other = mounts[lens_mount].register_mm, mounts[body_mount].register_mm
    if any(thing.piece != TUBE for thing in things) or lens_mount == body_mount:
        return things
    if not (is_known(one) and is_known(other)):
        return things
    between = one.nominal - other.nominal
    near = (sold_ring_mm if len(things) == 1 else told_register_mm)(knowledge.catalogue)

    def spans(thing: Thing) -> bool:
        low, high = thing.thickness_mm or (0.0, inf)
        return not thing.front and low == high and abs(between - low) <= near

    ring = next((thing for thing in things if spans(thing)), None)
    if ring is None and things and are_it_together(things, between):
        return [*things[:-1], replace(things[-1], piece="adapter")]
    return [replace(thing, piece="adapter") if thing is ring else thing for thing in things]


def _lens_end(things: list[Thing], lens_mount: str, body_mount: str, knowledge: Knowledge) -> str:
    """The mount that a plate is screwed to whose front was not told: that of what is drawn out, else the lens's own."""
    for n, thing in enumerate(things):
        if thing.piece not in (*ADDED_FOCUSING, TUBE):
            continue
        if thing.thickness_mm is not None and thing.piece in ADDED_FOCUSING:
            rear = described(thing, n, lens_mount, body_mount, knowledge).rear
            return rear if thing.rear or rear != body_mount else lens_mount  # one that carries both mounts
        if thing.front:
            return thing.front[0]
    return lens_mount


def _as_they_lead(things: list[Thing], lens_mount: str) -> list[Thing]:
    """'an M ring and an M to Z helicoid' for an LTM lens: the ring told by one mount leads to what takes that mount.

    So does 'a 1.1 LTM ring', told by the lens's own mount, to the one ring beside it that takes another.
    """
    out = []
    onward = [one.front for one in things if one.front and one.rear and lens_mount not in one.front]
    for n, thing in enumerate(things):
        own = thing.thickness_mm is not None and not thing.rear and thing.piece in ANY_PIECE
        if own and lens_mount in thing.front and len(onward) == 1:
            out.append(replace(thing, front=(lens_mount,), rear=onward[0]))
            continue
        taken = {name for other in things[n + 1 :] if other.rear for name in other.front}
        single = thing.front and not thing.rear and thing.piece in ANY_PIECE and lens_mount not in thing.front
        out.append(
            replace(thing, front=(lens_mount,), rear=thing.front) if single and taken & {*thing.front} else thing
        )
    return out


def _leading_to(things: list[Thing], lens_mount: str, body_mount: str, knowledge: Knowledge) -> Adapter | None:
    """'A PL to MFT ring I have' for an OCT-18 lens: the piece that is wanting before the one ring named, as cut."""
    if len(things) != 1 or not things[0].front or body_mount not in things[0].rear or lens_mount in things[0].front:
        return None
    front = things[0].front[0]
    if knowledge.rings.onward.get(lens_mount, {}).get(front):
        return None
    return supposed(Thing("", (), "", front=(lens_mount,), rear=(front,), piece="adapter"), len(things), knowledge)


def _told_by_thickness(question: Question) -> list[Thing]:
    """A ring told by its thickness alone: '2.6 mm thick'; not where that says how far a ring is off."""
    told = numbers(question, "thickness")
    if len(told) != 1 or any(thing.thickness_mm is not None for thing in question.adapters):
        return []
    measured = question.said("nominal") is not None  # '36.6 not 37.0': what it should be makes it no less thick
    if not 0 <= told[0] <= THICKEST_MM or (off_by_mm(question) is not None and not measured):
        return []
    return [Thing("", (), f"{told[0]:g} mm", thickness_mm=(told[0], told[0]), piece="adapter")]


def _as_measured(question: Question, knowledge: Knowledge) -> tuple[Thing, ...]:
    """The pieces named, the one whose length was told twice as it was measured: 'the 7.75 ring, measured 7.9'."""
    told, sized = numbers(question, "thickness"), [one for one in question.adapters if one.thickness_mm is not None]
    if len(told) != 1 or len(sized) != 1 or off_by_mm(question) is not None or question.said("nominal") is not None:
        return question.adapters
    low, high = sized[0].thickness_mm or (0.0, 0.0)
    if low != high or not 0 < abs(told[0] - low) <= wrong_seat_mm(knowledge.catalogue):
        return question.adapters
    return tuple(
        replace(one, thickness_mm=(told[0], told[0])) if one is sized[0] else one for one in question.adapters
    )  # fmt: skip


def _joined(things: Iterable[Thing]) -> list[Thing]:
    """'a C to MFT ring' and 'flat, 1 mm' said after it are one piece."""
    out: list[Thing] = []
    told = list(things)
    lone = sum(map(_is_bare, told)) == 1  # of two lengths neither is that of the ring
    for thing in told:
        last = out[-1] if out else None
        ring = thing.piece in ANY_PIECE or thing.piece == CUP
        if last is None or last.thickness_mm is not None or not (last.front or last.rear):
            out.append(thing)
        elif lone and ring and _is_bare(thing) and not _is_its_own(thing, last):
            out[-1] = replace(last, thickness_mm=thing.thickness_mm)
        else:
            out.append(thing)
    return out


def _is_bare(thing: Thing) -> bool:
    return thing.thickness_mm is not None and not thing.front and not thing.rear and thing.kind != "adapter"


def _is_its_own(thing: Thing, last: Thing) -> bool:
    """'in a Z cup with a half mm ring beneath': what has a name of its own, and is not told to be flat, is one more."""
    named, before = thing.words.casefold().split(), last.words.casefold().split()
    return any(word in named and (last.piece == CUP or word in before) for word in SPACERS)
