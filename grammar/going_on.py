"""What a follow-up asks: what its own words do, or what the question before it asked."""

from __future__ import annotations

from typing import Final

from grammar.casting import DRAWN
from grammar.hearing import Heard
from grammar.only_told import only_tells
from grammar.questions import Question, Thing
from grammar.whom import COMPARE, Meant

ASIDE: Final = frozenset(["why", "identify-mount", "look-alike", "definition", "gear-setting"])
# what is asked anew where a follow-up only supposes something: 'what if I stop down', 'what if the ring is thinner'
_SUPPOSED: Final = frozenset(["chain", "focus-verdict", "macro-distance", "coverage", "depth-of-field", "exposure-nd"])

_SHIMMED: Final = frozenset(["shim-calibration"])  # what closing down may save one from

_ASKING: Final = (
    "how",
    "which",
    "what",
    "can",
    "will",
    "why",
    "where",
    "how-many",
    "how-much",
    "how-close",
    "need-adapter",
)

WANTED: Final = frozenset(["magnification", "field"])  # what pieces are chosen for


def intent_of(heard: Heard, before: Question, found: Meant | None) -> str:
    best = heard.weighed.best
    if heard.tells("correct") and not _asks(heard) and before.intent not in ASIDE:
        return before.intent  # 'no, i meant the one with 1 mm pitch'
    if heard.tells("sure") or heard.tells("doubt"):
        return "why" if not heard.tells("thing") or heard.tells("sure") else best or went_on(heard, before)
    told = any(part.subject is not None for part in (*heard.cast.lenses, *heard.cast.bodies))
    if (told or (found is not None and found.told)) and not _asks(heard):
        # what was told of a thing puts the question of before anew
        return "chain" if before.intent in ASIDE else before.intent
    if before.intent == COMPARE and found is not None and best in (None, COMPARE) and len(found.lenses) == 1:
        return "chain"  # the one of those that were set side by side
    if only_tells(heard, best) and (before.lenses or before.bodies) and before.intent not in ASIDE:
        return before.intent
    supposed = heard.tells("what-if") and before.intent in _SUPPOSED
    return best if best is not None and not supposed else went_on(heard, before)


def _asks(heard: Heard) -> bool:
    return heard.tells("asked") or any(heard.tells(cue) for cue in _ASKING)


def is_close(said: Question, before: Question, pieces: tuple[Thing, ...]) -> bool:
    """Whether a magnification that is wanted makes it a matter of how close: 'and if I want 1:1', then 'which tube'."""
    if said.said("magnification") is not None:
        return True
    return before.said("magnification") is not None and any(piece.piece in DRAWN for piece in pieces)


def went_on(heard: Heard, before: Question) -> str:
    """What a fragment without an intent of its own goes on with: after a reason or a name, the chain it was about."""
    if before.sought is not None:
        return "chain"  # 'and the knot?' after all of one's lenses asks of that one
    amount = heard.tells("how-much") or heard.tells("how-many")
    if (
        before.intent in _SHIMMED
        and heard.readings.f_number is not None
        and before.lenses
        and before.bodies
        and not amount
    ):
        return "focus-verdict"  # 'or just shoot at f8' after how much to take off
    changed = heard.cast.bodies or heard.cast.pieces or heard.cast.without or heard.readings.limits
    return "chain" if before.intent in ASIDE and changed else before.intent
