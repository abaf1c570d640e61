"""The lens of the talk that its place, its widest stop or its seat points at: 'and the second', 'the screw one'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.hearing import Heard
from grammar.kinds import BUY_PLAN, CHAIN, FOCUS_VERDICT, LIST_FITS
from grammar.questions import Question, Thing
from grammar.words.groups import BAYONET, SCREW

_LISTING: Final = frozenset([CHAIN, FOCUS_VERDICT, BUY_PLAN, LIST_FITS])  # their answers number the chains
_ORDINAL: Final = "counted-off"  # a mention of one by its number


def counted_lens(heard: Heard, before: Question, known: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """'back to the first lens', and 'the second one' after several lenses were asked about."""
    number, parts = heard.readings.number, heard.cast.lenses
    if number is None or "and_number" in heard.readings.values:
        return ()
    if heard.cast.pieces and not (len(before.lenses) > 1 and _is_put_to(heard)):
        return ()
    pool: tuple[Thing, ...] = ()
    if parts and parts[0].is_bare:
        pool = known
    elif not parts:
        listed = before.intent in _LISTING and not _counted_off(before)
        pool = before.lenses if len(before.lenses) > 1 else () if listed else known
    return (pool[number - 1],) if 1 <= number <= len(pool) and len(pool) > 1 else ()


def _counted_off(before: Question) -> bool:
    """'and the second' after 'the ring for the first one': lenses are gone through, and no chains."""
    return before.number is None and len(before.lenses) == 1 and before.mentions(_ORDINAL)


def _is_put_to(heard: Heard) -> bool:
    """'what about helicoids for the second': a piece is named for the one that the number points at."""
    tokens = [token for token in heard.line.tokens if token.kind not in ("DET", "FILLER", "MARK")]
    return any(one.kind == "PREP" and other.kind == "ORDINAL" for one, other in pairwise(tokens))


def by_seat(heard: Heard, known: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """'the screw one', 'the bayonet lens': those of the talk whose mount is one, where others are not."""
    part = heard.cast.lenses[0] if len(heard.cast.lenses) == 1 else None
    words = [word for one in heard.line.tokens if one.kind == "MOUNTWORD" for word in one.groups]
    if part is None or part.mounts or part.focal or part.named or not {SCREW, BAYONET} & {*words}:
        return ()
    placed = [one for one in known if one.kind == "mount" and one.ids]
    found = tuple(one for one in placed if (one.ids[0] in heard.cast.threaded) == (SCREW in words))
    return found if 0 < len(found) < len(placed) else ()


def by_stop(heard: Heard, known: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """'the 1.4', 'will the 2.8 be blurry': the one lens that opens so wide, where none is so long."""
    the = {
        token.numbers[0]
        for det, token in pairwise(heard.line.tokens)
        if det.kind == "DET" and det.value == "the" and token.kind in ("NUMBER", "FNUM")
    }
    found = tuple(
        one for one in known if one.f_number in the and not any(other.focal_length_mm in the for other in known)
    )
    return found if len(found) == 1 < len(known) else ()
