"""Which way an error is that was told before: where that is only asked, nothing is told anew."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Final

from grammar.kinds import CHAIN, FOCUS_VERDICT, SHIM_CALIBRATION
from grammar.questions import Question
from grammar.words.mentioned import Mention, mentioned

WAY_ASKED: Final = "way-asked"
ASKED_OUT: Final = "asked-out"  # that it is asked whether it sits too far out
ASKED_CLOSE: Final = "asked-close"  # or too close
_OUT: Final = ("off-too-thick", "off-too-long", "off-thicker", "off-thick-too-much", "off-too-far-out", "sits-too-far")
_CLOSE: Final = ("off-too-thin", "off-too-short", "off-thinner", "off-too-close", "sits-too-close")
_ENDS: Final = ("ends-at", "no-farther", "stops-at", "far-limit", "infinity-missed", "said-to-fall-short")
_EITHER_WAY: Final = "off-either-way"
_ASKS: Final = "yes-or-no"
_HOW_MUCH: Final = "asks-how-much"  # 'how much do i take off?' is no question of which way
_OPENING: Final = 12  # signs at most before the words that ask: 'so then is it'
_SEATED: Final = frozenset([SHIM_CALIBRATION, FOCUS_VERDICT, CHAIN])
_ERRORS: Final = ("thickness", "mark", "shim")  # keys that tell by how much it is off


def without_asked(found: tuple[Mention, ...]) -> tuple[Mention, ...]:
    """What is mentioned, without what is only asked: 'too thick or too thin?' tells neither."""
    asked = [one for one in found if one.key == WAY_ASKED]
    if any(one.key == _EITHER_WAY for one in found):
        return tuple(one for one in found if one.key != WAY_ASKED)  # '0.1 too thick or thin' tells by how much
    return tuple(one for one in found if one.key not in (*_OUT, *_CLOSE, *_ENDS) or not _meets(one, asked))


def with_way_asked(got: Question, before: Question, phrases: Mapping[str, tuple[str, ...]]) -> Question:
    """'is it too thin?' after an error that was told: whether it is, and not that it is."""
    told = before.distance_mm is not None or any(before.said(key) is not None for key in _ERRORS)
    known = got.follows and before.intent in _SEATED and told and not any(sign.isdigit() for sign in got.text)
    asks = got.text.rstrip().endswith("?") or any(one.at <= _OPENING for one in got.places(_ASKS))
    sides = dict.fromkeys((*_OUT, *_ENDS), ASKED_OUT) | dict.fromkeys(_CLOSE, ASKED_CLOSE)
    asked = [one for one in got.mentioned if one.key in sides and one.at < len(got.text)]
    if not (known and asks and asked) or got.mentions(_HOW_MUCH):
        return got
    rest = [one for one in got.mentioned if one.key not in sides]
    new = [Mention(sides[one.key], one.at, one.end) for one in asked]
    got = got.with_(mentioned=tuple(dict.fromkeys((*rest, *new, Mention(WAY_ASKED, asked[0].at, asked[0].end)))))
    if got.intent != before.intent and got.intent in _SEATED and got.lenses == before.lenses:
        got = got.with_(intent=before.intent, values=tuple({**dict(before.values), **dict(got.values)}.items()))
    return with_way_held(got, got.off_word or "", phrases)


def with_way_held(got: Question, way: str, phrases: Mapping[str, tuple[str, ...]]) -> Question:
    """The question with the way that it is off as if it were said behind the text."""
    sides = (*_OUT, *_CLOSE, *_ENDS)
    end = len(got.text) + 1
    held = (one._replace(at=one.at + end, end=one.end + end) for one in mentioned(way, phrases))
    return got.with_(mentioned=(*(one for one in got.mentioned if one.key not in sides), *held))


def _meets(one: Mention, others: Iterable[Mention]) -> bool:
    return any(one.at < other.end and other.at < one.end for other in others)
