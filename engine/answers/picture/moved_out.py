"""How far the lens of a question stands out from where it is at infinity, by all that it says of it."""

from __future__ import annotations

from engine.answers.parts.near_enough import wrong_seat_mm
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.parts.said import focals, mentions, number
from engine.answers.picture.filling import magnification_filling
from engine.base.interval import is_known
from engine.chains.walk import ADDED_FOCUSING
from engine.facts.catalogue import Catalogue
from grammar.questions import Question, Thing

TUBES = frozenset({"extension-tube", *ADDED_FOCUSING})
RING = "adapter"
_TOO_CLOSE = frozenset({"too close", "too thin", "too short"})
MOST_OF_FOCAL = 3.0  # times the focal length; no lens is racked out farther


def extension_mm(question: Question, facts: Catalogue) -> float | None:
    """The extension that the question puts between: said as such, or as tubes, a helicoid fully out; None: none."""
    said = number(question, "extension")
    if said is not None:
        return said
    filled, of = magnification_filling(question, facts), focals(question)
    if filled is not None and of:
        return filled * of[0]  # the subject was told last: the lens is set up for it
    total, unmounted = 0.0, not question.bodies and not any(lens.ids for lens in question.lenses)
    for thing in question.adapters:
        ring = unmounted and thing.piece == RING and not (thing.front or thing.rear)  # '20 mm of rings behind a 50'
        if (ring or thing.piece in TUBES) and thing.thickness_mm is not None:
            low, high = thing.thickness_mm
            total += high - low if low != high else high
        elif thing.kind == "adapter" and thing.id in facts.adapters:
            piece = facts.adapters[thing.id or ""]
            at = piece.thickness_mm.longest
            if piece.kind == "extension-tube" and is_known(at):
                total += at.nominal
    travel = number(question, "travel")
    open_yet = any(thing.piece in ADDED_FOCUSING and thing.thickness_mm is None for thing in question.adapters)
    off = _off_mm(question) if total else 0.0
    return max(total + off, 0.0) or (travel if open_yet else None)  # 'a helicoid with 4 mm travel'


def _off_mm(question: Question) -> float:
    """By how much a ring beside the tubes is off, above 0 where the lens sits too far out."""
    size, word = number(question, "thickness"), question.off_word
    if size is None or word is None:
        return 0.0
    return -size if word in _TOO_CLOSE else size


def moved_out_mm(question: Question, facts: Catalogue) -> float | None:
    """The same, of a lens whose circle is asked for: a plain ring, or a bare length, moves it out as a tube does."""
    told = extension_mm(question, facts)
    if told is not None:
        return told
    rings = [thing for thing in question.adapters if _is_spacer(thing, question, facts)]
    if rings:
        return sum(thing.thickness_mm[0] for thing in rings if thing.thickness_mm is not None)
    bare = number(question, "length", "thickness", "travel") if mentions(question, "moved-out") else None
    focal = next(iter(focals(question)), None)
    return bare if bare is not None and focal is not None and 0 < bare <= focal * MOST_OF_FOCAL else None


def _is_spacer(thing: Thing, question: Question, facts: Catalogue) -> bool:
    """Whether a ring stands beside what seats the lens: it is of no mounts, and not as thick as those ask for."""
    length = thing.thickness_mm
    plain = thing.piece == RING and not (thing.ids or thing.front or thing.rear or thing.factor)
    if not plain or length is None or length[0] != length[1]:
        return False
    lens, body = lens_side(question.lens, facts), body_side(question.body, facts)
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)):
        return True
    seat = lens.mount.register_mm - body.mount.register_mm
    return is_known(seat) and abs(length[0] - seat.nominal) > wrong_seat_mm(facts)
