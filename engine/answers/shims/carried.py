"""An error of the ring that one lens told, carried to another: by its mark at infinity, or by where its focus ends."""

from __future__ import annotations

import re

from engine.answers.parts.owned import known_focals
from engine.answers.parts.said import distance_mm, focals, last_said, mentions, number, stop
from engine.answers.seat.distances import Distances
from engine.answers.shims.loose import off_by_limit, off_by_mm
from engine.answers.shims.remark_carried import as_remark, on_that_seat
from engine.answers.shims.scale_pair import with_pair_as_mark
from engine.answers.shims.targets import is_target
from engine.answers.shims.turning import short_by_turns_mm
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.physics import calibration
from grammar.kinds import CHAIN, DEPTH_OF_FIELD, FOCUS_VERDICT, SHIM_CALIBRATION, WHY
from grammar.questions import OFF, OFF_KEY, RING, Question, Thing
from grammar.turns.going_on import LEFT
from grammar.turns.sticking import is_open
from grammar.turns.way_asked import WAY_ASKED
from grammar.words.mentioned import Mention

SHIM = "shim"  # an error carried over from another lens, in mm
_ON_TARGET = ("target", "on a target")
_OF_A_SEAT = ("stops-at", "sits-too-far", "read-off-scale")  # keys of what tells by how much it is off
MARK_OF = "mark-of"  # the own lens that a mark was told of, until its focal length is looked up
_JUDGED = frozenset([FOCUS_VERDICT, WHY])
_FAR = re.compile(r"\d[\d.,]* ?(?:m|ft|feet|foot|metres?|meters?)\b")  # a distance as typed
_REMEDY = "remedy"  # the topic of what would put a chain right
_TELLING = frozenset(["mark", MARK_OF, SHIM, "turns", "angle", "travel"])  # keys that an error was told by


def carried(question: Question, before: Question | None, facts: Catalogue) -> Question:
    """A mark or a limit that was told of another lens is an error in mm for this one: the ring is the same."""
    if before is None or not question.follows or question.topic == LEFT or _is_wondered_at(question, before, facts):
        return question
    if question.intent == DEPTH_OF_FIELD:  # 'whats really sharp at 3 m on the scale' asks of no depth
        return (_as_remark(question, before) if stop(question) is None else None) or question
    both = _of_body_and_ring(question, before) or _as_remark(question, before)
    if both is not None:
        return both
    if (
        before.intent == SHIM_CALIBRATION
        and is_target(before)
        and not (_is_another(question, before) and _mark(before))
    ):
        question = _as_target(question, before)
        if question.said(_ON_TARGET[0]) is not None:
            return question
    if before.intent != SHIM_CALIBRATION:
        seat = question.seat
        shimmed = seat is not None and seat.intent == SHIM_CALIBRATION
        return _with_mark(question, seat) if seat and shimmed else _of_a_seat(question, before, facts)
    limit, old = distance_mm(before), known_focals(before, facts)
    if limit is not None and len(old) == 1 and is_limit(before) and distance_mm(question) in (None, limit):
        return _with_limit(question, limit, old[0], facts)
    if question.intent != before.intent:
        return _with_mark(question, before)
    short = short_by_turns_mm(before, facts) if old and focals(question) not in ((), old) else None
    if short is not None and question.said("turns") in (None, before.said("turns")):
        return _short_by(question, short)  # the camera, or its ring, is as far off for the other lens
    mark, lenses = _mark(question), focals(question)
    if lenses not in ((), old) and (seat := on_that_seat(question, before)) is not None:
        return seat  # 'where is its 1 m mark' asked on of that seat: it tells no error of its own
    if mark is None or mark != _mark(before) or question.lenses == before.lenses:
        return question
    if old and lenses:
        return question if old == lenses else _with_error(question, mark, old[0])
    told_of = before.lenses[0] if before.lenses else None
    if told_of is None or not question.lenses or not (old or (told_of.kind == "lens" and told_of.id)):
        return question
    # what an own lens has is in the facts, which the talk does not know
    return _with_error(question, mark, old[0]) if old else question.with_(
        values=(*question.values, (MARK_OF, told_of.id or ""))
    )  # fmt: skip


def _is_wondered_at(question: Question, before: Question, facts: Catalogue) -> bool:
    """'why does my 50 look fine on it': of the same seat, as it was told."""
    asked = question.intent == WHY and before.intent != SHIM_CALIBRATION and mentions(question, "alike-or-not")
    return asked and known_focals(question, facts) not in ((), known_focals(before, facts))


def _of_body_and_ring(question: Question, before: Question) -> Question | None:
    """'with an adapter that is 0.05 thin' after a body that is 0.06 long: what both come to."""
    body = off_by_mm(before) if mentions(before, "word-of-body") and not before.adapters else None
    ring = off_by_mm(question) if question.adapters and not mentions(question, "word-of-body") else None
    if body is None or ring is None or question.said("thickness") == before.said("thickness"):
        return None
    if any(one.thickness_mm is not None for one in question.adapters):
        return None
    total, at = round(body + ring, 4), len(question.text)
    way, key = ("too far out", "sits-too-far") if total > 0 else ("too close", "sits-too-close")
    rest = question.rest("thickness", "length", OFF)
    heard = tuple(one for one in question.mentioned if not one.key.startswith((OFF_KEY, "sits-too-")))
    return question.with_(
        values=(*rest, ("thickness", f"{abs(total):g} mm"), (OFF, way)), mentioned=(*heard, Mention(key, at, at))
    )


def _as_remark(question: Question, before: Question) -> Question | None:
    return as_remark(question, before, _mark(question), _mark(before), is_limit(before))


def _as_target(question: Question, before: Question) -> Question:
    """'nearest I have is 60 m' after how far a target must be: what it is set on, and nothing that a lens ends at."""
    away, again = _mark(question), mentions(question, "target-place")
    rest = tuple(row for row in question.values if row != _ON_TARGET)
    if mentions(question, *_OF_A_SEAT) or before.said("mark") is not None or not (away is not None or again):
        return question.with_(values=rest)
    named = question.said(_ON_TARGET[0])
    if named not in (None, _ON_TARGET[1], before.said(_ON_TARGET[0])):
        return question.with_(intent=SHIM_CALIBRATION, distance_mm=None)  # 'and a star'
    away = away if away is not None else distance_mm(before)
    rest = tuple(row for row in rest if row[0] not in ("mark", _ON_TARGET[0]))
    return question.with_(intent=SHIM_CALIBRATION, distance_mm=away, values=(*rest, _ON_TARGET))


def _of_a_seat(question: Question, before: Question, facts: Catalogue) -> Question:
    """'and my 28 on it?' after a 50 that stops at 4 m on a body: that ring is as much too long for the other lens."""
    told: Question | None = before
    while told is not None and off_by_limit(told, facts) is None:
        told = told.prior if told.follows else None
    if told is None or told.distance_mm is None or off_by_limit(question, facts) is not None:
        return question
    limit, old = told.distance_mm, known_focals(told, facts)
    other = known_focals(question, facts) not in ((), old) or stop(question) != stop(told)
    other = other or question.intent == SHIM_CALIBRATION or question.asks_which_way or mentions(question, WAY_ASKED)
    # 'how much', or 'and does it reach infinity' after its circle was asked about: it is that ring still
    other = other or (question.intent == FOCUS_VERDICT and question.adapters == told.adapters)
    same = all(_mounts(getattr(question, side)) == _mounts(getattr(told, side)) for side in ("lenses", "bodies"))
    if not (other and same) or distance_mm(question) not in (None, limit):
        return question
    return _with_limit(question, limit, old[0], facts)


def _mounts(things: tuple[Thing, ...]) -> tuple[tuple[str, ...], ...]:
    return tuple(thing.ids for thing in things)


def with_mark_told(question: Question) -> Question:
    """As the next turn leans on it: a distance that infinity was found at is a mark, whatever that turn's words are."""
    question = with_pair_as_mark(question)
    away = distance_mm(question)
    if question.intent != SHIM_CALIBRATION or away is None or question.said("mark") is not None:
        return question
    if is_limit(question) or question.said("target") is not None:
        return question
    if mentions(question, "target-place") and not mentions(question, "read-off-scale"):
        return question  # 'my garden is 20 m': what it would be set on
    return question.with_(distance_mm=None, values=(*question.values, ("mark", f"{away:g} mm")))


def _mark(question: Question) -> float | None:
    """Where on the scale infinity was found, mm, whether it was read as a mark or as a distance."""
    told = number(question, "mark")
    return told if told is not None else question.distance_mm


def _with_limit(question: Question, limit: float, focal: float, facts: Catalogue) -> Question:
    """By how much the ring is too long that lets a lens of this focal length no farther, in place of that limit."""
    error = Distances(focal, facts).extension_at(limit)
    if not is_known(error) or number(question, "thickness") is not None:
        return question
    other = known_focals(question, facts) not in ((), (focal,))
    return question.with_(
        intent="focus-verdict" if other else question.intent, distance_mm=None,
        values=(*question.values, ("thickness", f"{error.nominal:.4g} mm"), (OFF, "too far out")),
        mentioned=(*question.mentioned, Mention("sits-too-far", len(question.text), len(question.text))),
    )  # fmt: skip


def _with_mark(question: Question, before: Question) -> Question:
    """'what stop hides it', 'a 21 on that ring?' after infinity at the 3 m mark: so much too close does the ring leave
    any lens of that mount.
    """
    mark, old = _mark(before), focals(before)
    on_it = _is_on_that_ring(question, before)
    if mark is not None and len(old) == 1 and not is_limit(before) and _is_shimmed(question, old):
        return _with_error(question, mark, old[0])
    if mark is None or len(old) != 1 or is_limit(before) or not (_is_judged(question) or on_it):
        return question
    sized = any(one.thickness_mm is not None or one.ids for one in question.adapters)
    same = all(_mounts(getattr(question, side)) == _mounts(getattr(before, side)) for side in ("lenses", "bodies"))
    if sized or not same or _mark(question) is not None or number(question, "thickness") is not None:
        return question
    error = calibration.shim_from_mark_mm(Interval.exact(mark), Interval.exact(old[0]), Interval.exact(0.0))
    if not is_known(error):
        return question
    at = len(question.text)
    return question.with_(
        intent=FOCUS_VERDICT if on_it else question.intent,
        values=(*question.values, ("thickness", f"{error.nominal:.4g} mm"), (OFF, "too close")),
        mentioned=(*question.mentioned, Mention("sits-too-close", at, at)),
    )


def _is_shimmed(question: Question, old: tuple[float, ...]) -> bool:
    """'i have 0.1 brass, how many', 'would my 24 be off as well' after what the ring should measure: by that mark."""
    told = _mark(question) is not None or question.said("thickness") is not None or question.said(SHIM) is not None
    asked = question.said("layer") is not None or focals(question) not in ((), old)
    return question.intent == SHIM_CALIBRATION and asked and not told


def _is_another(question: Question, before: Question) -> bool:
    """'and a 100 on it' after 'the moon is sharp at the 4 m mark': the mark is that of the lens of before."""
    return before.said("mark") is not None and focals(question) not in ((), focals(before))


def _is_judged(question: Question) -> bool:
    return question.intent in _JUDGED or (question.intent == CHAIN and question.topic == _REMEDY)


def _is_on_that_ring(question: Question, before: Question) -> bool:
    """'a 21 on that ring?': another lens in the seat that was spoken of, and no ring that is looked for."""
    ring = [one for one in question.adapters if one.piece == RING and is_open(one)]
    return question.intent == CHAIN and len(ring) == 1 and focals(question) not in ((), focals(before))


def _with_error(question: Question, mark: float, focal: float) -> Question:
    """The error in mm, in place of the mark of a lens of this focal length."""
    error = calibration.shim_from_mark_mm(Interval.exact(mark), Interval.exact(focal), Interval.exact(0.0))
    if not is_known(error):
        return question
    return _short_by(question, error.nominal)


def _short_by(question: Question, short: float) -> Question:
    """The question with a seat that is so much too short, in place of whatever told it."""
    kept = question.rest(*_TELLING)
    return question.with_(values=(*kept, (SHIM, f"{short:.6g} mm")), distance_mm=None)


def looked_up(question: Question, facts: Catalogue) -> Question:
    """The question with the error that a mark told of another own lens is."""
    of, mark = question.said(MARK_OF), number(question, "mark")
    if of is None:
        return question
    question = question.without(MARK_OF)
    lens = facts.lenses.get(of)
    if mark is None or lens is None or not is_known(lens.focal_length_mm):
        return question
    return _with_error(question, mark, lens.focal_length_mm.nominal)


def is_limit(question: Question) -> bool:
    """Whether the distance told is where focus ends, not the mark that infinity was found at.

    Where both were said, what was said last is how it is now: 'went past infinity, added a washer, now stops at 6 m'.
    """
    if question.said("target") is not None:
        return False  # 'stops at 6 ft, focused on the moon': what is sharp there is infinity
    if _is_mark_of_before(question):
        return False
    if mentions(question, "stands-at-infinity") and not mentions(question, "of-a-scale"):
        return True  # 'at its infinity stop it is sharp at 60 m': set as far as it goes, that is where it ends
    if question.said("mark") is not None and mentions(question, "infinity-falls-at", "infinity-wanted"):
        return False  # 'now infinity at the 10 m mark' tells a mark, whatever else it says
    ends = max(last_said(question, key) for key in ("ends-at", "no-farther", "far-limit"))
    past = last_said(question, "sits-too-close")
    parted = _of_one_ring(question, ends, past)
    if parted is not None:
        return parted
    if ends < 0 and question.follows and question.prior is not None and goes_past(question.prior):
        return False  # '50 mm, 12 m' after 'everything goes past infinity': where infinity is found
    if question.said("mark") is None and not mentions(question, "of-infinity"):
        return True  # 'goes to about 40 m then mush': a distance alone, and nothing of a scale, is as far as it gets
    return ends > past


def _of_one_ring(question: Question, ends: int, past: int) -> bool | None:
    """Whether the distance told of one of two rings is where focus ends on it; None where no two are told apart.

    'Ring A stops at 12 m, ring B goes past infinity': the second ring's fault is no mark of the first.
    """
    for one in question.places("second-ring") if min(ends, past) >= 0 else ():
        if min(ends, past) < one.at and (ends < past or one.at < ends):
            of_first = {told.start() < one.at for told in _FAR.finditer(question.text)}
            if len(of_first) == 1:
                return of_first.pop() == (ends < past)
    return None


def _is_mark_of_before(question: Question) -> bool:
    """'is the ring too thick then?' after infinity at the 8 m mark: that mark is one still, whatever words follow."""
    mark, before = question.said("mark"), question.prior
    sheets = question.said("layer") is not None and question.said("layer") != (before.said("layer") if before else None)
    told_anew = any(sign.isdigit() for sign in question.text) and not sheets  # 'got 0.05 and 0.1 only' is of shims
    return bool(question.follows and mark and before is not None and before.said("mark") == mark and not told_anew)


def goes_past(question: Question) -> bool:
    """Whether it was only said that a lens goes past infinity: how far, its mark tells."""
    told = distance_mm(question) is not None or question.said("thickness") is not None
    return not told and mentions(question, "sits-too-close")
