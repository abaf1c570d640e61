"""How long what is in between is, or how far it goes: 'the tube is actually 25', 'the bellows only opens to 100'."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import DEPTH_OF_FIELD
from grammar.questions import Question
from grammar.turns.spans import RANGED

_PASSED: Final = frozenset(["PIECE", "VERB", "FILLER", "CUE", "DET", "NUMBER", "LENGTH", "STOP"])
_SIZED: Final = frozenset(["NUMBER", "LENGTH"])
_TUBE: Final = "extension-tube"
_NOT: Final = "not"
_VERBS: Final = ("be", _NOT)  # 'tube costs 20' tells no length
_MOST: Final = 9  # words of 'sorry the tube is actually 25 not 27.5'
_LONGEST: Final = 200.0  # mm, of a tube
_LONGEST_DRAWN: Final = 500.0  # and of a bellows
_ENDING: Final = _PASSED | {"PREP", "LIMIT", "AT", "JOIN", "MARK", "MEASURE"}
_ASKS: Final = ("price-q", "why", "cover", "how-close", "cheap")


def tube_is(heard: Heard, before: Question) -> str | None:
    """That it is a tube so long; None where a question is asked of it, or none or several stood there."""
    tokens = heard.line.tokens
    told = [one for one in before.adapters if one.piece == _TUBE and one.thickness_mm is not None]
    at = [n for n, one in enumerate(tokens) if one.kind == "PIECE"]
    if len(told) != 1 or len(at) != 1 or tokens[at[0]].value != _TUBE or not 1 < len(tokens) <= _MOST:
        return None
    asked = "?" in heard.text or tokens[0].kind == "VERB" or any(map(heard.tells, _ASKS))
    passed = (one.kind in _PASSED and (one.kind != "VERB" or one.value in _VERBS) for one in tokens)
    if asked or not all(passed):
        return None
    after = [one for one in tokens[at[0] + 1 :] if one.kind in _SIZED]
    denied = [one for one in tokens[at[0] + 1 :] if one.value == _NOT]
    if len(after) != 1 + len(denied) or any(one.kind in _SIZED for one in tokens[: at[0]]):
        return None
    if denied and denied[0].column < after[0].column:
        return None  # 'the tube is not 25'
    first = after[0]
    plain = first.numbers and first.unit in ("", "mm") and not first.text.isalpha()
    led = "depth with" if before.intent == DEPTH_OF_FIELD else "its"
    return f"{led} a {first.numbers[0]:g} mm tube" if plain and 0 < first.numbers[0] <= _LONGEST else None


def opens_to(heard: Heard, before: Question) -> str | None:
    """'it only opens to 100' after a bellows or helicoid of no told ends: one so long, and the size that is wanted."""
    tokens = heard.line.tokens
    pieces = [one for one in before.adapters if one.piece in RANGED]
    sized = [one for one in tokens if one.kind in _SIZED and one.unit in ("", "mm") and not one.text.isalpha()]
    others = any(one.kind not in _ENDING for one in tokens) or "?" in heard.text
    if len(pieces) != 1 or pieces[0].thickness_mm is not None or len(sized) != 1 or others:
        return None
    if not heard.tells("opens-to") or not 0 < sized[0].numbers[0] <= _LONGEST_DRAWN:
        return None
    size = before.said("magnification")
    wanted = f", want {size}x" if size is not None else ""
    return f"how big with a {sized[0].numbers[0]:g} mm {pieces[0].piece}{wanted}"
