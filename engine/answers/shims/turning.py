"""What turns of a thread move a lens by, what turns a shim comes to, and what a focusing thread moves in one turn."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.pitch_drift import OTHER_PITCH, turned_pitch
from engine.answers.parts.said import focals, mentions, number
from engine.answers.parts.wording import article, distance, small_mm, trimmed
from engine.answers.seat.distances import Distances
from engine.answers.seat.spacing import marks
from engine.answers.shims.sheets import layers_counted
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.physics import calibration
from grammar.kinds import SHIM_CALIBRATION
from grammar.questions import Question

WHOLE_TURN = 360.0  # degrees
_THICKEST_MM = 3.0  # of a shim
LONGEST_WAY_MM = 80.0  # that a focusing thread moves
_TURNED_BY = ("turns", "angle")
_WAYS = ("travel", "thread_length", "extension", "length", "thickness")  # keys of how far something is moved


def turns_told(question: Question) -> float | None:
    """By how many turns it was screwed, whether told in turns or in degrees."""
    if _asks_how_many(question):
        return None  # 'how many turns would 0.5 mm be' after a third of a turn
    turns, angle = number(question, "turns"), number(question, "angle")
    return turns if turns is not None else angle / WHOLE_TURN if angle is not None else None


def _asks_how_many(question: Question) -> bool:
    """Whether it is asked how many turns something else comes to, after turns that were told before."""
    before = question.prior if question.follows else None
    told = before is not None and any(before.said(key) == question.said(key) is not None for key in _TURNED_BY)
    return told and mentions(question, "turns-counted") and number(question, *_WAYS, "total", "numbers") is not None


def asks_turns(question: Question) -> bool:
    """Whether it is asked how far to turn, rather than told how far it was turned; a lead tells both."""
    if _lead(question) is not None:
        return True  # 'a turn moves 2 mm' tells what a turn is for
    return mentions(question, "turning") and turns_told(question) is None


def short_by_turns_mm(question: Question, facts: Catalogue) -> float | None:
    """By how much a lens sits too close that had to be screwed out so far for infinity, in this turn or one before."""
    told: Question | None = question
    while told is not None:
        turns, way = turns_told(told), _asks_way(told) and not mentions(told, "of-infinity")
        pitch = turned_pitch(told, facts) if turns is not None and _lead(told) is None and not way else None
        if turns is not None and pitch is not None and told.intent == SHIM_CALIBRATION:
            return turns * pitch.nominal if told.said(OTHER_PITCH) is None else None
        told = told.prior if told.follows else None
    return None


def turned(question: Question, knowledge: Knowledge) -> Told:
    """What a lens screwed out by part of a turn has moved."""
    turns = turns_told(question)
    if turns is None or _lead(question) is not None or question.said(OTHER_PITCH) is not None:
        return Told()
    pitch = turned_pitch(question, knowledge.catalogue)
    if pitch is None:
        return Told((Line("ask", "Which thread, or what pitch, was it turned by?"),))
    shim = calibration.shim_from_turns_mm(Interval.exact(turns), pitch)
    if not is_known(shim):
        return Told()
    angle = number(question, "angle")
    by = f"{trimmed(angle, 1)} degrees" if angle is not None else f"{trimmed(turns, 3)} turn{'s' if turns > 1 else ''}"
    what = "so far the lens moves, and as thick a spacer does the same" if _asks_way(question) else "that is the spacer"
    text = f"{by} of {trimmed(pitch.nominal, 3)} mm pitch is {small_mm(shim.nominal)}: {what}."
    told = Told((Line("head", text),), (Quantity("shim_mm", shim), Quantity("thread_turns", Interval.exact(turns))))
    return told + _left_turned(question, knowledge)


def turned_mm(question: Question, knowledge: Knowledge) -> float | None:
    """The way that the turns told have moved it, mm."""
    turns, pitch = turns_told(question), turned_pitch(question, knowledge.catalogue)
    if turns is None or pitch is None or _lead(question) is not None or question.said(OTHER_PITCH) is not None:
        return None
    shim = calibration.shim_from_turns_mm(Interval.exact(turns), pitch)
    return shim.nominal if is_known(shim) else None


def to_layer(question: Question, knowledge: Knowledge) -> float | None:
    """'how many layers is that' after turns of a thread: what they moved it by is what the layers are to make."""
    asked = mentions(question, "shim-layers") or question.said("layer") is not None
    return turned_mm(question, knowledge) if asked and layers_counted(question) is None else None


def mark_before_turning(question: Question, knowledge: Knowledge) -> Told:
    """'what did its scale say at infinity before': the mark of the lens that stood so much too close."""
    moved, lenses = turned_mm(question, knowledge), focals(question)
    if moved is None or len(lenses) != 1 or not mentions(question, "mark-asked") or question.said("mark") is not None:
        return Told()
    mark = Distances(lenses[0], knowledge.catalogue).mark(-moved)
    if not is_known(mark):
        return Told()
    at, lens = distance(mark.nominal, question.feet), f"{trimmed(lenses[0], 1)} mm"
    text = f"Without the {small_mm(moved)} infinity falls at the {at} mark of {article(lens)} {lens} lens."
    return Told((Line("head", text),), (Quantity("scale_mark_mm", mark, f"{lens} lens"),))


def _left_turned(question: Question, knowledge: Knowledge) -> Told:
    """Where infinity falls on the scale of a lens that had to be screwed out so far for it, while that is left so."""
    short = short_by_turns_mm(question, knowledge.catalogue)
    if not short or mentions(question, "mark-asked"):
        return Told()
    return marks(focals(question), short, knowledge.catalogue, question.feet, 1)


def _asks_way(question: Question) -> bool:
    return mentions(question, "how-far-moved") and not mentions(question, "shim-added")


def as_turns(question: Question, shim: float, knowledge: Knowledge) -> Told:
    """The turns, and degrees, of its thread that move it by so much."""
    lead = _lead(question)
    pitch = lead if lead is not None else turned_pitch(question, knowledge.catalogue)
    if pitch is None:
        return _without_thread(question, knowledge.catalogue)
    turns = calibration.turns_for_mm(Interval.exact(shim), pitch)
    if not is_known(turns):
        return Told()
    degrees = turns.nominal * WHOLE_TURN
    text = (
        f"{small_mm(shim)} is {trimmed(turns.nominal, 3)} turn{'s' if turns.nominal > 1 else ''} of its thread, "
        f"{degrees:.0f} degrees ({trimmed(pitch.nominal, 3)} mm a turn)."
    )
    rows = [Quantity("thread_turns", turns)]
    if lead is not None:
        rows.append(Quantity("advance_per_turn_mm", lead, "by the turn told"))
    return Told((Line("head", text),), tuple(rows))


def _without_thread(question: Question, facts: Catalogue) -> Told:
    """Of a lens in a bayonet: nothing of its seat is turned, and what focuses it has a lead of its own."""
    mount = facts.mounts.get(question.lens.id or "") if question.lens is not None else None
    if mount is None or mount.thread is not None:
        return Told()
    text = f"{mount.designation} has no thread to turn by so much. The focusing thread has a lead of its own: "
    return Told((Line("head", f"{text}measure what one turn of it moves, in mm, and divide by that."),))


def turns_for_travel(question: Question, knowledge: Knowledge) -> Told:
    """'how many turns of 26 tpi for 4 mm of travel': the turns for a way that was told, where none are told."""
    way = number(question, *_WAYS, "total")
    if way is None or not 0 < way <= LONGEST_WAY_MM or turns_told(question) is not None or not asks_turns(question):
        return Told()
    return as_turns(question, way, knowledge)


def shim_for_travel(question: Question) -> Told:
    """'what shim does the same' after a way that it is to move: one as thick."""
    way = number(question, "travel")
    if way is None or not 0 < way <= _THICKEST_MM or turns_told(question) is not None or not mentions(question, "shim"):
        return Told()
    text = f"A shim of {small_mm(way)} moves it as far, where it goes between lens and seat."
    return Told((Line("head", text),), (Quantity("shim_mm", Interval.exact(way)),))


def lead_told(question: Question) -> Told:
    """'6 mm in 270 degrees, what lead': what a whole turn moves."""
    lead, turns, moved = _lead(question), turns_told(question), number(question, *_WAYS[:-1])
    if lead is None or turns is None or moved is None or not mentions(question, "lead-asked"):
        return Told()
    angle = number(question, "angle")
    by = f"{trimmed(angle, 1)} degrees" if angle is not None else f"{trimmed(turns, 2)} turns"
    text = f"{small_mm(moved)} in {by} is {trimmed(lead.nominal, 3)} mm in a whole turn."
    return Told((Line("head", text),), (Quantity("advance_per_turn_mm", lead, "by the turn told"),))


def _lead(question: Question) -> Interval | None:
    """What its thread moves in a turn, by a turn that was told with what it moved: '6 mm in 270 degrees'."""
    turns = turns_told(question)
    moved = number(question, *_WAYS[:-1])
    if turns is None or moved is None:
        return None
    lead = calibration.advance_per_turn_mm(Interval.exact(moved), Interval.exact(turns))
    return lead if is_known(lead) else None
