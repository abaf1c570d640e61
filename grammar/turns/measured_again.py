"""A bare number in a talk of an unmarked lens that was measured once more: which of the measures told it replaces."""

from __future__ import annotations

import re
from collections.abc import Mapping
from math import log
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import IDENTIFY_MOUNT
from grammar.questions import BY_MEASURES, BY_REGISTER, BY_THREAD, Question, Thing
from grammar.words.mentioned import mentioned
from grammar.words.tokens import Token

_AGAIN: Final = "measured-again"
_IDLE: Final = (("MEASURE", "size"), ("MEASURE", "total"))  # 'measured', 'make it'
_PASSED: Final = frozenset(
    ["FILLER", "VERB", "DET", "MARK", "STOP", "UNKNOWN", "CUE", "JOIN", "PREP", "WHEN", "ORDINAL"]
)
_PAIR: Final = 2
_BY_PAPER: Final = "assumed by paper"  # trait of a lens that was told by its register alone
_FLANGE: Final = "flange_to_image"
_LEAST, _MOST_MM = 5.0, 120.0  # mm, of such a distance
_BY_MEASURE: Final = frozenset([BY_MEASURES, BY_THREAD])
# traits of a lens whose mount was made out by what is not so
_ASSUMED: Final = frozenset([BY_MEASURES, BY_REGISTER, BY_THREAD, _BY_PAPER])
_NOT: Final = "not"
_MOST: Final = 10  # words of a line that tells one number
_THREAD: Final = "thread"
_PITCH: Final = "pitch"
_BY: Final = " x "
# by logarithm: what differs by more is no other reading of the same; a caliper errs less than paper and ruler
_FAR: Final = {"thread": 0.1, "barrel": 0.3, "flange_to_image": 0.5, "pitch": 0.5}
_FAR_OFF: Final = 1.0  # of the one measure that was told, where it is said to have been wrong
_RIGHTED: Final = ("put-right", "put-right-beside", "put-right-parted")
_NUMBER: Final = re.compile(r"\d+(?:\.\d+)?")
_INCH: Final = ("tpi", '"', "in")


def measured_again(heard: Heard, before: Question, phrases: Mapping[str, tuple[str, ...]]) -> Question | None:
    """'46.5 i measured again' after 44 mm from flange to image: that distance anew; None where no more is measured.

    `phrases`: those by which a thing is told to be measured anew, by key.
    """
    said = {one.key for one in mentioned(heard.text, {key: phrases.get(key, ()) for key in (_AGAIN, *_RIGHTED)})}
    if said and before.prior is not None and before.prior.text == before.text:
        before = before.prior  # of which the mount was made out, by a measure that was not right
    found = any(_ASSUMED & set(one.traits) for one in before.lenses) and not any(one.f_number for one in before.lenses)
    put_right = _put_right(heard, before) if before.intent == IDENTIFY_MOUNT or found else None
    if put_right is not None:
        return _anew(heard, before, *put_right)
    token = _number(heard) if before.intent == IDENTIFY_MOUNT or found else None
    if token is None or not said:
        return None
    number = token.numbers[0]
    focal = any(one.focal_length_mm for one in before.lenses)
    placed = found and before.intent != IDENTIFY_MOUNT and before.said(_FLANGE) is None and not focal
    if placed and said & set(_RIGHTED) and _LEAST <= number <= _MOST_MM:
        values = (*before.values, (_FLANGE, f"{number:g} mm"))  # by which alone it was made out
        return _anew(heard, before.with_(values=values), _FLANGE, number)
    told = ((key, _told(_written(before, key))) for key in _FAR)
    far = {key: abs(log(number / value)) for key, value in told if value is not None and value > 0}
    alone = len(far) == 1 and bool(said & set(_RIGHTED))  # 'no wait, 25.4' where only a width was told
    near = min(
        (key for key in far if far[key] <= (_FAR_OFF if alone else _FAR[key])), key=lambda key: far[key], default=None
    )
    return _anew(heard, before, near, number) if near is not None else None


def _put_right(heard: Heard, before: Question) -> tuple[str, float] | None:
    """'its 1.0 not .75' after a pitch of 0.75 mm: which measure was told wrong, and the right number."""
    tokens = heard.line.tokens
    numbers = [at for at, one in enumerate(tokens) if one.kind in ("NUMBER", "LENGTH") and not one.text.isalpha()]
    if len(numbers) != _PAIR or len(tokens) > _MOST or "?" in heard.text:
        return None
    one, other = numbers
    if not any(token.value == _NOT for token in tokens[one:other]):
        return None
    wrong = tokens[other].numbers[0]
    key = next((key for key in _FAR if _told(_written(before, key)) == wrong), None)
    return (key, tokens[one].numbers[0]) if key is not None else None


def _anew(heard: Heard, before: Question, near: str, number: float) -> Question:
    """The question with that measure as it is now."""
    anew = _NUMBER.sub(f"{number:g}", _written(before, near) or "", count=1)
    if near == _PITCH and before.said(_PITCH) is None:  # told with its width, '42 mm x 1 mm'
        near, anew = _THREAD, f"{(before.said(_THREAD) or '').partition(_BY)[0]}{_BY}{anew}"
    values = tuple((key, anew if key == near else text) for key, text in before.values)
    made_out = _BY_MEASURE if before.intent == IDENTIFY_MOUNT else _ASSUMED
    lenses = tuple(_unnamed(one) if made_out & set(one.traits) else one for one in before.lenses)
    return before.with_(
        lenses=lenses, values=values, text=heard.text, follows=True, wants="", instead=(), number=None, corrects=True
    )


def _unnamed(lens: Thing) -> Thing:
    """The lens without the mount that was made out by what was not so."""
    traits = tuple(one for one in lens.traits if one not in _ASSUMED)
    return replace(lens, kind=Thing().kind, ids=(), words="lens", traits=traits)


def _number(heard: Heard) -> Token | None:
    """The one number of a line that tells nothing of what it is of; the right one of 'that is 46.5, not 44'."""
    tokens = heard.line.tokens
    rest = [token for token in tokens if token.kind not in _PASSED and (token.kind, token.value) not in _IDLE]
    one = rest[0] if len(rest) == 1 and len(tokens) <= _MOST and "?" not in heard.text else None
    if one is None or one.kind not in ("NUMBER", "LENGTH") or (one.kind == "LENGTH" and one.unit != "mm"):
        return None
    return one if one.numbers[0] > 0 and not one.text.isalpha() else None


def _written(before: Question, key: str) -> str | None:
    """A measure as it was told; the pitch also where it stands with the width, '42 mm x 1 mm'."""
    said = before.said(key)
    if key != _PITCH or said is not None:
        return said
    return (before.said(_THREAD) or "").partition(_BY)[2] or None


def _told(value: str | None) -> float | None:
    """The number of a measure, in mm; none of one in inches."""
    found = _NUMBER.match(value or "")
    return float(found[0]) if found and not any(sign in (value or "") for sign in _INCH) else None
