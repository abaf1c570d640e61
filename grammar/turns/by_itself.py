"""What a turn of a talk plainly asks by itself: that it asks in the talk too, whatever was asked before."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.hearing import Heard
from grammar.kinds import DEFINITION, LOOK_ALIKE, OUT_OF_SCOPE, WHY

_LEANS: Final = 0.6  # wording that leans so far one way, where nothing is named or told
_SLIGHTLY: Final = 0.4  # and so far where it says much, or says the same in the talk
_SURELY: Final = 0.8  # and so far for what a few words of any talk may seem to ask
_TERMED: Final = 0.9  # and so far for a term and hardly a word beside it
_PLAINLY: Final = 0.9  # and where something is named or told, which may be all that is asked anew
_FEW, _SOME, _SEVERAL, _MANY = 3, 5, 6, 8  # words
_OF_BEFORE: Final = frozenset(["that", "them"])
_PUTS_RIGHT: Final = "correct"  # the cue of a number that is told anew
_SPEAKS: Final = 2.0  # evidence from this weight up speaks for something else than the term
_FIGURE: Final = "quantity:"  # how the cues of such begin
_SEAT: Final = "quantity:seat_mm"  # and one of them
_SEEMING: Final = frozenset([DEFINITION, WHY, OUT_OF_SCOPE])
_OF_ANY: Final = frozenset([DEFINITION, OUT_OF_SCOPE])  # they ask of nothing that was spoken of


def asked_by_itself(heard: Heard) -> str | None:
    """What its words ask, whatever stands before; None where they may only go on with that."""
    alone = heard.alone
    best = alone.best if heard.weighed.likely else None  # of a number spoken out nothing is asked
    if best is None or (best in _OF_ANY and _says_it(heard)):
        return None
    if best == DEFINITION and heard.tells(_SEAT):
        return None  # 'seat of the adapter': of the ring that is spoken of
    if best == LOOK_ALIKE and heard.cast.bodies and _says_same_lens(heard):
        return None  # 'the other camera is a Z, same lens': nothing is likened
    likely = alone.likely.get(best, 0.0)
    words = sum(token.kind not in ("STOP", "MARK") for token in heard.line.tokens)
    joined = _says_it(heard) or any(
        token.kind == "JOIN" for token in heard.line.tokens[:1]
    )  # 'or should i just buy a metal one'
    here = heard.weighed.best
    same = best == here
    spoken = here is not None and heard.weighed.weight(here) >= _SPEAKS > alone.weight(best)
    if spoken and not same and words < _MANY:
        return None  # 'what would work instead' after a ring: what the words speak for there, and alone for nothing
    if _tells_something(heard, words):
        return best if likely >= _PLAINLY and words >= _SEVERAL and not heard.tells(_PUTS_RIGHT) else None
    if words < _FEW:
        return best if same and likely >= _TERMED and _is_term_alone(heard) else None
    if not joined and (words >= _MANY or (same and words >= _SOME)):
        return best if likely >= _SLIGHTLY else None
    return best if likely >= (_SURELY if best in _SEEMING or joined else _LEANS) else None


def _is_term_alone(heard: Heard) -> bool:
    """'retrofocus?': a word is to be told, and the words speak for nothing else."""
    others = (weight for intent, weight in heard.alone.ranked if intent != DEFINITION)
    figure = any(cue.tells.startswith(_FIGURE) for cue in heard.cues)  # 'seat?' is a number of the answer before
    alone = heard.alone.best == DEFINITION and not (heard.cast.pieces or figure)
    return alone and not heard.tells("of-nothing") and all(weight < _SPEAKS for weight in others)


def _says_it(heard: Heard) -> bool:
    """'whats the image circle of it', 'how do i get rid of them': asked of what was spoken of."""
    return any(
        (token.kind == "VERB" and token.value == "it") or token.text.casefold() in _OF_BEFORE
        for token in heard.line.tokens
    )


def _tells_something(heard: Heard, words: int) -> bool:
    """Whether a lens, body or frame is told of, a number, or which one of several; in few words any value."""
    cast, readings = heard.cast, heard.readings
    things = (*cast.lenses, *cast.bodies)
    named = cast.frames or any(part.has_mount or part.focal or part.named or part.formats for part in things)
    numbers = (readings.f_number, readings.distance_mm, readings.number)
    values = readings.values and (words < _SOME or any(map(str.isdigit, heard.text)))
    return bool(named or values) or any(number is not None for number in numbers)


def _says_same_lens(heard: Heard) -> bool:
    """'same lens', with no mount told of it."""
    return any(one.text.casefold() == "same" and two.kind == "LENS" for one, two in pairwise(heard.line.tokens))
