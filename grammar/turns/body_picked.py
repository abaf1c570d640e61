"""One of the bodies of before, named alone: 'so for E' after a lens on Q or E is asked of that body."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard, hear
from grammar.intents import Weighed
from grammar.kinds import COMPARE
from grammar.questions import Question, Thing
from grammar.turns.taking_back import left_out
from grammar.words.groups import EACH_OF, GONE, PREFERRED, TAKEN_AWAY, VIEW_REACHES
from grammar.words.lexicon import Lexicon

_BESIDE: Final = frozenset(["STOP", "MARK", "JOIN", "FILLER", "DET", "PREP", "BODY"])
_TWO: Final = 2
_WHICH: Final = "which"
_CHOOSING: Final = ("which", "where", "pick:all", "pick:both")
_OF_FOCUS: Final = ("infinity", "focus", "how-close", "macro", "dof", "cover", "vignette", "price-q", "buy", "exposure")
_SMALL: Final = frozenset(["and", "so", "then", "on", "just", "only"])  # words that ask nothing


def with_body_picked(heard: Heard, before: Question, lexicon: Lexicon) -> Heard:
    """The line as it names that body; the same where it names anything else, or where no two bodies were told."""
    goes = any({TAKEN_AWAY, GONE} & set(one.groups) for one in heard.line.tokens)  # 'scrap the X'
    if len(before.bodies) < _TWO or goes or left_out(heard) or any(cue.tells not in _SMALL for cue in heard.cues):
        return heard
    rest = [one for one in heard.line.tokens if one.kind not in _BESIDE and one.value not in _SMALL and one.text]
    rest = [one for one in rest if one.text.casefold() not in _SMALL]
    known = {body.ids[0]: body for body in before.bodies if body.kind == "mount" and body.ids}
    if len(rest) != 1 or rest[0].kind not in ("MOUNT", "LETTER"):
        return heard
    picked = next((id_ for id_ in rest[0].ids if id_ in known), None)
    if picked is None:
        return heard
    again = hear(f"on {rest[0].text} body", lexicon, before.intent)
    return replace(again.as_typed(heard), weighed=Weighed((), {}))


def weighs_two(heard: Heard, before: Question) -> bool:
    """Two bodies set against each other, or a ring with what was put under it and without: 'so in or out?'."""
    prior, pieces = before.prior, [one.thickness_mm for one in before.adapters]
    changed = prior is not None and prior.lenses == before.lenses and prior.bodies == before.bodies
    stood = [one.thickness_mm for one in prior.adapters] if prior is not None else []
    others = heard.cast.lenses or heard.cast.bodies or heard.readings.values
    worked = changed and None not in (*pieces, *stood) and bool(stood) and pieces != stood and not others
    return weighs_two_bodies(heard, before) or (worked and heard.tells("in-or-out"))


def weighs_two_bodies(heard: Heard, before: Question) -> bool:
    """'which of the two bodies is better' after one lens on a body, then on another: those two are set apart."""
    cast, words = heard.cast, heard.line.tokens
    named = cast.lenses or cast.pieces or cast.frames or any(part.mounts for part in cast.bodies)
    which = any(one.text.casefold() == _WHICH for one in words) and not heard.tells("other-bodies")
    body = any(one.kind == "BODY" for one in words)
    weighed = heard.tells("better") or heard.tells("comparative") or any(PREFERRED in one.groups for one in words)
    told = named or heard.readings.values or heard.readings.f_number is not None
    asked = which and body and (weighed or heard.tells("both-bodies")) and not told
    return asked and len(bodies_so_far(before)) == _TWO


def views_two_bodies(heard: Heard, before: Question) -> bool:
    """'on which of the two does it reach further', 'view on each' after one lens on a body, then on another."""
    cast, words = heard.cast, heard.line.tokens
    parts = (*cast.lenses, *cast.bodies, *cast.frames)
    told = cast.pieces or heard.readings.values or heard.readings.f_number or heard.readings.distance_mm
    lens = before.lens is not None and before.lens.focal_length_mm is not None and len(before.lenses) == 1
    against = any(one.value == "vs" for one in words)  # 'that one vs the first', 'view against the e'
    earlier = against and (heard.readings.number == 1 or _against_an_earlier(heard, bodies_so_far(before)))
    chooses = earlier or any(map(heard.tells, _CHOOSING)) or any(EACH_OF in one.groups for one in words)
    viewed = any(VIEW_REACHES in one.groups for one in words) and not any(map(heard.tells, _OF_FOCUS))
    two = bodies_so_far(before)
    plain = lens and not told and (all(part.is_bare for part in parts) or _against_an_earlier(heard, two))
    return plain and chooses and viewed and len(two) == _TWO


def _against_an_earlier(heard: Heard, two: tuple[Thing, ...]) -> bool:
    """Whether nothing is named but the mount of the body before the last: 'the view against the e' after MFT."""
    cast = heard.cast
    named = {mount.ids[:1] for part in (*cast.lenses, *cast.bodies) for mount in part.mounts}
    sized = any(part.focal for part in (*cast.lenses, *cast.bodies))
    against = any(one.value == "vs" for one in heard.line.tokens)
    return against and len(two) == _TWO and not (sized or cast.frames) and named == {two[0].ids[:1]}


def bodies_so_far(before: Question) -> tuple[Thing, ...]:
    """The last two bodies that the lens spoken of was put on, in the order that they were told."""
    found: tuple[Thing, ...] = ()
    told: Question | None = before
    while told is not None and len(found) < _TWO:
        if [lens.ids for lens in told.lenses] == [lens.ids for lens in before.lenses]:
            new = tuple(one for one in told.bodies if one.ids and one.ids[:1] not in [body.ids[:1] for body in found])
            found = (*new, *found)
        told = told.prior if told.follows else None
    return found


def picks_one_body(heard: Heard, before: Question) -> bool:
    """Whether it is asked of that body after the two were compared: then how the lens goes on it."""
    cast = heard.cast
    named = [mount.ids[:1] for part in cast.bodies for mount in part.mounts]
    alone = not (cast.lenses or cast.pieces or cast.frames or heard.readings.values or heard.weighed.best)
    one = len(named) == 1 and named[0] in [body.ids[:1] for body in before.bodies]
    return before.intent == COMPARE and len(before.bodies) >= _TWO and alone and one
