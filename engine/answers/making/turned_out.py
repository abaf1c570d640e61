"""A lens that stands off its seat, by turns of its thread or by what holds it off: as if a washer lay under it."""

from __future__ import annotations

from typing import Final

from engine.answers.found.narrowing import UNCLAIMED
from engine.answers.making.whole_ring import REGISTERS
from engine.answers.parts.near_enough import told_register_mm
from engine.answers.parts.pitch_drift import turned_pitch
from engine.answers.parts.said import number, numbers
from engine.answers.seat.described import GAP, TUBE, UNSCREWED
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from grammar.kinds import FOCUS_VERDICT, SEATED, SHIM_CALIBRATION
from grammar.questions import OFF_KEY, Question, Thing

_TURNS, _ANGLE, _WHOLE_TURN = "turns", "angle", 360.0  # keys, and degrees
_HOME: Final = "mating-usual-turns"  # the assumption of how many turns bring a thread home
_WIDEST_GAP: Final = 2.0  # mm
_HELD_OFF: Final = "held-off"
_ABOVE: Final = "above-the-flange"
_LENGTHS: Final = ("thickness", *UNCLAIMED)
# what else such words are heard as: which way it is off is told by this
_ELSE: Final = frozenset([_HELD_OFF, "sits-too-close", "sits-too-far", "came-long", "came-short", "flush", "too"])


def with_turned_out(question: Question, facts: Catalogue) -> Question:
    """'my C lens is left half a turn unscrewed, infinity?': with what the turns told hold it off its seat by."""
    told, angle = number(question, _TURNS), number(question, _ANGLE)
    turns = told if told is not None else angle / _WHOLE_TURN if angle is not None else None
    if question.intent != FOCUS_VERDICT or turns is None or not question.mentions("stands-unscrewed"):
        return _with_gap(question, facts)
    pitch = turned_pitch(question, facts)
    if pitch is None or not 0 < turns <= facts.assumptions[_HOME].value.greatest:
        return question
    off = round(turns * pitch.nominal, 3)
    return question.with_(adapters=(*question.adapters, _spacer(off, UNSCREWED)), values=question.rest(_TURNS, _ANGLE))


def _with_gap(question: Question, facts: Catalogue) -> Question:
    """'a 0.3 gap all round under the ring', 'dirt holds the 35 off by a tenth': with that much more between."""
    if question.intent not in SEATED | {SHIM_CALIBRATION} or not question.places(_HELD_OFF):
        return question
    if question.places(_ABOVE) and _is_to_sink(question, facts):
        return question  # 'the seat of my cup stands 0.3 proud of the flange' tells where the lens sits, and no gap
    sized = [one.thickness_mm[0] for one in question.adapters if one.is_of_one_length and one.thickness_mm]
    open_sizes = [one for one in (*numbers(question, *_LENGTHS), *sized) if 0 < one <= _WIDEST_GAP and one != int(one)]
    alone = question.lens is None or not question.lens.ids
    if len(open_sizes) != 1 or (alone and not question.mentions("sits-too-close", "off-either-way")):
        return question  # of a lens told by its length alone it is heard already
    size = open_sizes[0]
    kept = tuple(one for one in question.mentioned if one.key not in _ELSE and not one.key.startswith(OFF_KEY))
    if _is_room(size, question, facts):
        again = () if sized else ((REGISTERS, f"{size:g} mm"),)
        return question.with_(values=(*question.rest(*_LENGTHS), *again), mentioned=kept)
    rings = [
        replace(one, thickness_mm=None) if one.thickness_mm == (size, size) and one.piece != TUBE else one
        for one in question.adapters
    ]
    rings = [one for one in rings if one.piece != TUBE or one.thickness_mm != (size, size)]
    return question.with_(
        intent=FOCUS_VERDICT, adapters=(*rings, _spacer(size, GAP)), values=question.rest(*_LENGTHS), mentioned=kept
    )


def _is_to_sink(question: Question, facts: Catalogue) -> bool:
    """'C on E': whether the lens must lie within the flange of the body."""
    sides = [facts.mounts.get(one.id or "") for one in (question.lens, question.body) if one is not None]
    known = [one.register_mm.nominal for one in sides if one is not None and is_known(one.register_mm)]
    return len(known) > 1 and known[0] < known[1]


def _is_room(size_mm: float, question: Question, facts: Catalogue) -> bool:
    """'OM on K, a gap of 0.54': just what the registers leave between the two."""
    sides = [facts.mounts.get(one.id or "") for one in (question.lens, question.body) if one is not None]
    known = [one.register_mm.nominal for one in sides if one is not None and is_known(one.register_mm)]
    return len(known) > 1 and abs(abs(known[0] - known[1]) - size_mm) <= told_register_mm(facts)


def _spacer(size_mm: float, trait: str) -> Thing:
    return Thing(words=f"{size_mm:g} mm {trait}", piece=TUBE, thickness_mm=(size_mm, size_mm), traits=(trait,))
