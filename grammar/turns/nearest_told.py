"""The nearest mark of a lens, told after how close it comes: 'the lens says 0.45 m', '1.5 m on the ring'.

It is what the answer asked for, and neither a distance that the lens is set to nor where infinity falls.
"""

from __future__ import annotations

from typing import Final

from engine.base.units import MM_PER_METRE
from grammar.hearing import Heard
from grammar.kinds import MACRO_DISTANCE
from grammar.questions import Question
from grammar.words.groups import NEAREST_ASKED, SCALE_LED
from grammar.words.tokens import Token

_FACT: Final = "close_focus"
_LENGTHS: Final = frozenset(["LENGTH", "NUMBER"])
_NEAREST: Final = 90.0, 20000.0  # mm, between which such marks lie
_METRES: Final = 20.0  # a bare number up to this is one of metres
_ON_SCALE: Final = frozenset(["mark", "nearest"])  # measures that such a number is of
_SAYS: Final = frozenset(["does"])  # value of 'says', 'reads'
# cues that ask nothing beside such a number
_IDLE: Final = frozenset(
    ["engraved", "end-near", "how-close", "calibrate", "drawn-distances", "stops-at", "it-is", "scale", "focus", "ok",
     "right", "macro"]
)  # fmt: skip
_FAR: Final = frozenset(["end-far", "infinity", "infinity-at", "asked", "how-far", "past-infinity"])


def nearest_told(heard: Heard, before: Question) -> str | None:
    """The line in plain words; None where it tells or asks anything else."""
    wanted = _FACT in before.wants.split()
    if not wanted and (before.intent != MACRO_DISTANCE or before.said(_FACT) is not None):
        return None
    cast, numbers = heard.cast, [one for one in heard.line.tokens if one.numbers and one.value != "one"]
    if len(before.lenses) != 1 or cast.bodies or cast.frames or len(numbers) != 1 or any(map(heard.tells, _FAR)):
        return None
    length = _length_mm(numbers[0])
    ring = all(part.is_bare or part.noun.text == numbers[0].text for part in cast.pieces)
    idle = all(cue.tells in _IDLE for cue in heard.cues)
    if length is None or not ring or not idle or not (_is_read_off(heard) or (wanted and heard.tells("it-is"))):
        return None
    told = numbers[0].text if numbers[0].kind == "LENGTH" else f"{length / MM_PER_METRE:g} m"
    return f"the nearest mark is {told}"


def _length_mm(token: Token) -> float | None:
    """How far away, where it can be a mark of a scale."""
    if token.kind not in _LENGTHS:
        return None
    number = token.numbers[0]
    length = number if token.kind == "LENGTH" else number * MM_PER_METRE if number <= _METRES else None
    return length if length is not None and _NEAREST[0] <= length <= _NEAREST[1] else None


def _is_read_off(heard: Heard) -> bool:
    """Whether it is told as what stands on the lens: by what it says there, or as the nearest of its marks."""
    tokens = heard.line.tokens
    scale = any({SCALE_LED, NEAREST_ASKED} & set(one.groups) for one in tokens)
    scale = scale or any(one.kind == "MEASURE" and one.value in _ON_SCALE for one in tokens)
    return scale or any(one.kind == "VERB" and one.value in _SAYS for one in tokens)
