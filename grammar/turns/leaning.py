"""Whether a text leaves something out that the question before can give."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import (
    BUY_PLAN,
    CARD,
    COMPARE,
    DEFINITION,
    HAZARD,
    IDENTIFY_MOUNT,
    LIST_FITS,
    LOOK_ALIKE,
    OUT_OF_SCOPE,
)
from grammar.questions import TALKED, Question
from grammar.things.standins import stands_in
from grammar.turns.about_lenses import OF_CAMERAS
from grammar.turns.adding import added
from grammar.turns.body_picked import weighs_two_bodies
from grammar.turns.by_itself import asked_by_itself
from grammar.turns.each_told import each_told
from grammar.turns.going_on import asks_field
from grammar.turns.measured_anew import ring_measured
from grammar.turns.on_what import is_film_camera
from grammar.turns.one_of_two import chooses_between, is_likened
from grammar.turns.one_part import is_set_anew
from grammar.turns.only_told import names_the_pair, of_talk
from grammar.turns.thread_seen import asks_of_a_thread
from grammar.turns.whom import is_definite, meant, points_back
from grammar.turns.worded_so import asks_what_it_costs
from grammar.words.groups import LIKE_BEFORE, TALKS_ON

_ITS: Final = frozenset(["the", "its"])
# intents that need nothing from before once they are plainly asked
_ANOTHER: Final = frozenset(["a", "an", "my", "another", "other"])  # before a lens that is none of before
_ONE_MORE: Final = frozenset(["a", "an", "another"])  # and before one that is at hand for the first time
_OTHER: Final = "other"  # as is 'my other lens' after one alone
_FREE: Final = frozenset([DEFINITION, OUT_OF_SCOPE, IDENTIFY_MOUNT, BUY_PLAN, LIST_FITS, LOOK_ALIKE, HAZARD, COMPARE])

_OF_BODY: Final = frozenset([COMPARE, BUY_PLAN])

_ITSELF: Final = frozenset(["it", "its", "thats"])
_THE_ONE: Final = frozenset(["the", "my", "its", "this"])
_PLAIN: Final = 4.0  # the weight from which an intent is plainly asked


def _asks_of_two(heard: Heard, before: Question) -> bool:
    """'pitch same?' after two that look alike."""
    return before.intent == LOOK_ALIKE and len(before.lenses) > 1 and heard.tells("pitch") and heard.tells("same")


def _tells_the_kind(heard: Heard, before: Question) -> bool:
    """'i have the SLR kind, ring for E?' after a name that several mounts have: which of them it is."""
    parts = heard.cast.lenses
    told = len(parts) == 1 and bool(OF_CAMERAS & set(parts[0].kinds)) and not (parts[0].focal or parts[0].has_mount)
    return told and len(before.lenses) == 1 and before.lenses[0].ambiguous


def as_alone(heard: Heard) -> Heard:
    """What leans on nothing, weighed as if no question stood before, where it is plain so."""
    return replace(heard, weighed=heard.alone) if asked_by_itself(heard) is not None else heard


def leans(heard: Heard, before: Question) -> bool:
    """Whether the text leaves something out that the question before can give."""
    if before.intent in TALKED:
        return False
    cast, best = heard.cast, heard.weighed.best
    if asks_field(heard, before) or _asks_of_two(heard, before) or _tells_the_kind(heard, before):
        return True
    seat = heard.tells("quantity:seat_mm") and heard.tells("one-word") and bool(before.lenses and before.bodies)
    if seat or asks_of_a_thread(heard, before):
        return True  # 'seat?' after a lens on a body: that of its ring
    if before.bodies and any(is_film_camera(part, cast) for part in cast.bodies):
        return True  # 'an old super 8 camera gave me a D mount 13mm' after a body: the lens is for that
    told = any(lens.ids or lens.focal_length_mm for lens in before.lenses)
    lens = any((part.has_mount or part.implied) and not (part.by_piece and told) for part in cast.lenses)
    if chooses_between(heard, before) or is_likened(heard, before) or weighs_two_bodies(heard, before):
        return True
    if lens and any(part.has_mount for part in cast.bodies) and not points_back(heard, before):
        return names_the_pair(heard, before) or _tells_its_mount(heard, before) or (told and _puts_both_right(heard))
    if added(heard, before) is not None:
        return True
    if (heard.tells("doubt") and not heard.tells("pair")) or ring_measured(heard, before) is not None:
        return True
    if best == IDENTIFY_MOUNT and _tells_one_anew(heard, before):
        return False  # 'got another lens, 39 mm thread, 26 tpi, what is it'
    pointed = meant(heard, before)
    if pointed is not None and (pointed.told or best not in (DEFINITION, OUT_OF_SCOPE)):
        return True  # 'the C one': what is meant was spoken of before
    if _is_one_of_before(heard, before):
        return True  # 'the FD, 50 mm, held flush, how far' after K, FD and F on EF
    if best == IDENTIFY_MOUNT and before.lenses and _says_it(heard) and not heard.tells("focal"):
        return True  # 'how do I know that it is C': the lens spoken of
    if best == CARD and before.bodies and not cast.bodies:
        return True  # a card is of a lens on a body, however long the question
    plain = best is not None and heard.weighed.weight(best) >= _PLAIN
    if best == LIST_FITS and lens and not heard.tells("body-mount"):
        return False  # 'where does a C-mount lens fit' asks for all bodies, not for the one of before
    if best == DEFINITION and plain:
        return is_set_anew(heard, before) or _of_what_was_named(heard, before)
    if best == OUT_OF_SCOPE and told and not lens and heard.tells("autofocus"):
        return True  # 'and the autofocus' after a lens on a body
    if best == OUT_OF_SCOPE and plain:
        return asks_what_it_costs(heard, before)
    if best in _OF_BODY and not (lens and heard.tells("body")):
        return True  # 'M42 or FD, which is better': on the body of before; 'bellows or helicoid?': for its lens
    if best == HAZARD and not lens and (not heard.tells("focal") or of_talk(heard)):
        return True  # 'the lens weighs 900 g, is that safe', 'the 200 mm is heavy'
    if best == LIST_FITS and not lens and not heard.tells("body-mount"):
        return True  # 'which other bodies take them'
    if best == LOOK_ALIKE and cast.lenses and all(part.by_piece for part in cast.lenses) and told:
        return True  # 'isn't my M42 ring the same' after a lens on a body: set against that lens
    if not lens and told and _goes_on_in_words(heard):
        return True  # 'and theres a 135 too, same screw. anything to watch out'
    if best in _FREE and plain and (heard.tells("thing") or heard.tells("thread-said")):
        return False
    if heard.tells("one-of-them"):
        return True  # 'i have one that says M39, off a reflex': on the body of before
    words = [token for token in heard.line.tokens if token.kind not in ("STOP", "MARK", "JOIN")]
    return not (plain and lens and len(words) > 6)


def _puts_both_right(heard: Heard) -> bool:
    """'the cam is cs and the lens is c': said of the two that were spoken of, each by a word that stands for it."""
    lenses, bodies = heard.cast.lenses, heard.cast.bodies
    alone = len(lenses) == len(bodies) == 1 and not any(part.focal or part.named for part in lenses)
    words = [token for token in heard.line.tokens if token.kind not in ("MARK", "STOP")]
    the = {other.kind for one, other in pairwise(words) if one.kind == "DET" and one.text.casefold() in _THE_ONE}
    return alone and {"LENS", "BODY"} <= the


def _is_one_of_before(heard: Heard, before: Question) -> bool:
    """Whether the one lens told, 'the FD', has a mount of those spoken of, and no body is named."""
    part = heard.cast.lenses[0] if len(heard.cast.lenses) == 1 else None
    if part is None or not part.mounts or not before.bodies or any(one.has_mount for one in heard.cast.bodies):
        return False
    known = {id_ for lens in before.lenses for id_ in lens.ids[:1]}
    return part.mounts[0].ids[0] in known and is_definite(heard, part)


def _tells_its_mount(heard: Heard, before: Question) -> bool:
    """'K mount. will it go on MFT' after a 50/1.7: the mount of that lens, of which none was told."""
    old, parts = before.lens, heard.cast.lenses
    if len(parts) == 1 and each_told(heard, before, before.known or before.lenses, parts[0]):
        return True  # 'both screw 42. my camera is an X one'
    open_yet = old is not None and old.kind != "lens" and not old.ids and old.focal_length_mm is not None
    part = parts[0] if len(parts) == len(before.lenses) == 1 else None
    if part is None or not open_yet or before.bodies or part.focal or part.f_number or part.zoom or part.kinds:
        return False
    led = {token.text.casefold() for token in heard.line.tokens if token.column < part.noun.column}
    its = heard.text.casefold().replace("'", "").split()[0] in _ITSELF  # 'it has a 42 screw', 'its a K one'
    head = part.noun.head
    headed = head is not None and (stands_in(head) or head.kind == "LENS")  # 'its an OM lens, ring to E?'
    return (its and headed) or ((its or not led & _ANOTHER) and head is None)


def _of_what_was_named(heard: Heard, before: Question) -> bool:
    """'what is the register' asks of the lens spoken of, 'what is a register' of the word."""
    if before.lens is None or not (before.lens.ids or before.lens.format) or heard.cast.lenses or heard.cast.bodies:
        return False
    columns = {spoken.column for spoken in heard.line.spoken if spoken.kind == "term"}
    return any(
        token.kind == "DET" and token.value in _ITS and token.column + len(token.text) + 1 in columns
        for token in heard.line.tokens
    )


def _goes_on_in_words(heard: Heard) -> bool:
    """Whether it begins as what is said on top of something, or speaks of one more, of the same, of the other."""
    said = [token for token in heard.line.tokens if token.kind not in ("MARK", "STOP")]
    opens = said[:1] and (said[0].kind == "JOIN" or TALKS_ON in said[0].groups)
    return bool(opens) or any(LIKE_BEFORE in token.groups for token in said)


def _tells_one_anew(heard: Heard, before: Question) -> bool:
    """'here is a lens with a 39 mm thread, pitch 1, which mount is it': what 'it' is, is told right before by a thread.

    'its a lens with a pitch of 1' tells of the one spoken of.
    """
    words = [token for token in heard.line.tokens if token.kind != "TRAIT"]  # 'an unmarked lens'
    measured = any(one.kind == "MOUNT" and one.text[:1].isdigit() for one in words)  # '39 mm thread'
    if heard.readings.pitch is None and not measured:
        return False
    known = before.known or before.lenses
    anew = _ONE_MORE | {_OTHER} if len(known) == 1 else _ONE_MORE
    for one, two in pairwise(words):
        if two.kind == "VERB" and two.value == "it":
            return False
        if two.kind == "LENS" and one.text.casefold() in anew:
            return not any(token.text.casefold() in _ITSELF for token in words[:1])
    return False


def _says_it(heard: Heard) -> bool:
    return any(token.kind == "VERB" and token.value == "it" for token in heard.line.tokens)
