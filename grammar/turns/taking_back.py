"""What was said last is taken back or turned round: 'scrap that', 'not the body, the lens'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.questions import Question, Thing
from grammar.things.casting import DRAWN, SPACER, Part
from grammar.turns.whom import known_with

_REVERSED: Final = "reversed"
_WITHOUT: Final = "without"
EXTENSION: Final = "extension"  # of tubes whose length was told
OFF_AGAIN: Final = "off-again"  # what was put on is taken off


def swapped(heard: Heard, before: Question) -> Question | None:
    """'and the other way round': the mount of the body as that of the lens, and that of the lens as the body's."""
    named = (*heard.cast.lenses, *heard.cast.bodies, *heard.cast.pieces)
    more = heard.readings.values or heard.readings.distance_mm is not None or heard.readings.f_number is not None
    if not heard.tells("swapped") or more or any(not (part.is_bare or _is_reversed(part)) for part in named):
        return None
    if len(before.lenses) != 1 or len(before.bodies) != 1 or before.lenses[0].kind != before.bodies[0].kind != "mount":
        return None
    lens = replace(before.lenses[0], ids=before.bodies[0].ids, words=before.bodies[0].words)
    body = Thing("mount", before.lenses[0].ids, before.lenses[0].words)
    changed = before.with_(text=heard.text, lenses=(lens,), bodies=(body,), adapters=(), wants="", follows=True)
    return changed.with_(known=known_with(before.known, (lens,)), number=None)


def _is_reversed(part: Part) -> bool:
    """'and the reverse?': the word alone, which tells of no lens turned round."""
    return part.traits == [_REVERSED] and replace(part, traits=[]).is_bare


def left_out(heard: Heard) -> bool:
    """Whether something is to be done without, or taken off again."""
    preps = [token.value for token in heard.line.tokens if token.kind == "PREP"]
    prep = _WITHOUT in preps and ("with", _WITHOUT) not in pairwise(preps)  # 'with and without' asks of both
    return prep or heard.tells(OFF_AGAIN)


def without_last(heard: Heard, before: Question) -> Question | None:
    """'without it' after 'with the 2x tele mode': what the question before told anew, where that was no ring.

    Without the tubes that were put between last it is asked anew what was asked before them.
    """
    prior, cast = before.prior, heard.cast
    tubes = all(part.piece == SPACER and replace(part, piece=None).is_bare for part in (*cast.pieces, *cast.without))
    others = not tubes and (cast.pieces or cast.without)
    named = cast.lenses or cast.bodies or others or cast.frames or heard.readings.values
    if prior is None or named or not left_out(heard) or heard.tells("uncropped") or heard.readings.f_number is not None:
        return None
    if before.said("turns") is not None or heard.tells("no-filter"):
        return None  # 'what would its scale say without that': without the turns it was screwed, which are asked of
    asks = heard.weighed.best not in (None, before.intent, prior.intent)
    told = tuple(row for row in before.values if row in prior.values)
    if asks or before.lenses != prior.lenses or not _is_drawn_out(before.adapters, prior):
        return None
    if told == before.values and not before.adapters:
        return None
    stretched = bool(before.adapters) or before.said(EXTENSION) is not None
    return before.with_(
        text=heard.text, intent=prior.intent if stretched else before.intent, adapters=prior.adapters, values=told,
        follows=True, wants="", instead=(), number=None,
    )  # fmt: skip


def _is_drawn_out(pieces: tuple[Thing, ...], prior: Question) -> bool:
    """Whether the pieces are those of the question before with nothing but tubes, or what is drawn out, added."""
    added = [one for one in pieces if one not in prior.adapters]
    if any(one.piece in DRAWN and one not in pieces for one in prior.adapters):
        return False  # '40 rather' after 30 mm of tube: that stands in its place
    return not pieces or (bool(added) and all(one.piece in (SPACER, *DRAWN) for one in added))


def taken_back(heard: Heard, before: Question) -> Question | None:
    """'scrap that': the question before the last; 'not the body, the lens': what was said of the one is the other's."""
    prior = before.prior
    if prior is None or not prior.lenses:
        return None
    alone = not any(part.has_mount for part in (*heard.cast.lenses, *heard.cast.bodies))
    if heard.tells("retract") and alone and heard.tells("short"):
        return prior.with_(text=heard.text, follows=True)
    if heard.tells("not-body") and alone and before.bodies and before.bodies != prior.bodies:
        lens = replace(prior.lenses[0], kind="mount", ids=before.bodies[0].ids)
        changed = before.with_(text=heard.text, lenses=(lens,), bodies=prior.bodies, follows=True)
        return changed.with_(known=known_with(before.known, (lens,)))
    if heard.tells("not-lens") and alone and before.lenses != prior.lenses and before.lenses[0].kind == "mount":
        body = Thing("mount", before.lenses[0].ids, before.lenses[0].words)
        return before.with_(text=heard.text, lenses=prior.lenses, bodies=(body,), follows=True)
    return None
