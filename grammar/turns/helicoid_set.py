"""How far a helicoid or a bellows of before is set now: 'i set it to 20', 'at 25', 'and fully out', '5 mm out'.

Or another one in its place: 'make it the 36-90'.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard, hear
from grammar.intents import Weighed
from grammar.kinds import COVERAGE, DEPTH_OF_FIELD, EXPOSURE_ND
from grammar.questions import Question, Thing
from grammar.turns.number_roles import WHOLE_STOPS
from grammar.turns.spans import RANGED, span_of
from grammar.words.groups import DRAWN_OUT, SET_SO
from grammar.words.lexicon import Lexicon
from grammar.words.mentioned import mentioned
from grammar.words.tokens import Token

_OPEN: Final = "drawn-fully"
_SHUT: Final = "shut-fully"
_HALF: Final = "draw-half"
_OUT: Final = "drawn-by"  # '5 mm out': so much beyond its shortest
_IT: Final = "it"
_AGAIN: Final = "measured-again"
_FIRST: Final = re.compile(r"\d+(?:\.\d+)?")
_OF_OTHERS: Final = frozenset(["LENS", "MOUNT", "BODY", "FORMAT", "KIND", "COMBO", "RANGE", "FNUM", "LETTER"])
_BEFORE: Final = frozenset(["at", "to", "on"])
_MOST: Final = 9  # words of such a line
_MOST_ENDED: Final = 14  # and of one that tells one of its ends
_HOW_CLOSE: Final = "how-close"
_EITHER: Final = 2
_STOPPED: Final = frozenset([EXPOSURE_ND, DEPTH_OF_FIELD, COVERAGE])  # where a bare 'at 22' is a stop


def helicoid_set(heard: Heard, before: Question, lexicon: Lexicon) -> Heard | None:
    """The line heard as that piece set so; None where it tells nothing of it."""
    ranged = [(one, span) for one in before.adapters if one.piece in RANGED and (span := span_of(one)) is not None]
    tokens = heard.line.tokens
    other = _other_range(tokens, before)
    held = [one for one in before.adapters if one.piece in RANGED]
    if len(held) == 1 and other is not None:
        text = f"{heard.text[: other.end]} {held[0].piece}{heard.text[other.end :]}"
        again = hear(text, lexicon, before.intent)
        return again.as_typed(heard)
    either = _either_range(tokens, before)
    if either is not None:
        again = hear(f"{either} {before.adapters[0].piece}", lexicon, before.intent)
        return again.as_typed(heard)
    ended = {_OPEN, _SHUT} & {one.key for one in mentioned(heard.text, lexicon.words.mentions, only=(_OPEN, _SHUT))}
    long = len(tokens) > (_MOST_ENDED if ended else _MOST) and not _is_led_out(tokens)
    passed = "a" if ended and not heard.tells(_HOW_CLOSE) else ""  # 'all the way out with a 50'
    if len(ranged) != 1 or long or any(one.kind in _OF_OTHERS and one.text.casefold() != passed for one in tokens):
        return None
    piece, span = ranged[0]
    length = _length(heard, piece, span, before, lexicon.words.mentions)
    if length is None:
        return None
    asked = " ".join(heard.text[one.column - 1 : one.end] for one in heard.cues if one.tells in _ASKED)
    lens = next((f", {one.numbers[0]:g} mm lens" for one in tokens if one.numbers and _is_lens(one, heard, span)), "")
    again = hear(f"{asked} with {length:g} mm {piece.piece}{lens}".strip(), lexicon, before.intent)
    again = again.as_typed(heard)
    return again if asked else replace(again, weighed=Weighed((), {}))


_ASKED: Final = frozenset(
    ["how-close", "how-big", "size-against", "infinity", "how-far", "which-stop", "exposure"]
)  # cues that still ask


def _other_range(tokens: tuple[Token, ...], before: Question) -> Token | None:
    """'make it the 36-90', 'the 12-17 instead': a range that nothing says to be a zoom's, of no lens told as one."""
    ranges = [one for one in tokens if one.kind == "RANGE" and one.unit in ("", "mm")]
    # 'i own the 17-31 and a 1 mm ring' after a helicoid: rings beside it are no helicoid, nor is any lens told
    others = any(one.kind in _OF_OTHERS - {"RANGE", "LETTER"} or _is_ranged(one) for one in tokens)
    zoom = before.said("zoom") is not None or any(one.lens_kind == "zoom" for one in before.lenses)
    return ranges[0] if len(ranges) == 1 and not (others or zoom) else None


def _is_ranged(token: Token) -> bool:
    return token.kind == "PIECE" and token.value in RANGED


def _either_range(tokens: tuple[Token, ...], before: Question) -> str | None:
    """'which one, 17-31 or 25-55' after a helicoid: the two ranges, which are those of helicoids and no zooms."""
    ranges = [one for one in tokens if one.kind == "RANGE" and one.unit in ("", "mm")]
    others = any(one.kind in _OF_OTHERS - {"RANGE", "LETTER"} or one.kind == "PIECE" for one in tokens)
    held = len(before.adapters) == 1 and before.adapters[0].piece in RANGED
    if len(ranges) != _EITHER or others or not held or before.said("zoom") is not None:
        return None
    return f"which, {ranges[0].text} or {ranges[1].text}"


def _length(
    heard: Heard, piece: Thing, span: tuple[float, float], before: Question, phrases: Mapping[str, tuple[str, ...]]
) -> float | None:
    keys = {one.key for one in mentioned(heard.text, phrases)}
    numbers = [token for token in heard.line.tokens if token.numbers and not _is_lens(token, heard, span)]
    least, most = span
    if not numbers:
        return most if _OPEN in keys else least if _SHUT in keys else (least + most) / 2 if _HALF in keys else None
    token = numbers[0]
    if len(numbers) > 1 or token.kind not in ("NUMBER", "LENGTH") or (token.kind == "LENGTH" and token.unit != "mm"):
        return None
    number = token.numbers[0]
    if _OUT in keys and number < least and least + number <= most:
        return least + number
    told = _is_set(token, heard, piece, before) or (_AGAIN in keys and _is_nearest(number, piece, before))
    return number if least <= number <= most and told else None


def _is_lens(token: Token, heard: Heard, span: tuple[float, float]) -> bool:
    """'all the way out with a 50': a lens, where the helicoid is never so long."""
    led = heard.led_by(token)
    article = led is not None and (led.kind == "DET" or led.text.casefold() in ("a", "my", "with a"))
    whole = token.kind == "NUMBER" and token.numbers[0] == int(token.numbers[0])
    return article and whole and not span[0] <= token.numbers[0] <= span[1]


def _is_led_out(tokens: tuple[Token, ...]) -> bool:
    """'wound right out to 55, how big do things get': a line of any length that begins with how far it is out."""
    at = next((n for n, one in enumerate(tokens) if one.numbers), 0)
    led = tokens[:at]
    out = any({SET_SO, DRAWN_OUT} & set(one.groups) for one in led)
    return 1 < at < _MOST and out and tokens[at - 1].kind in ("PREP", "VERB") and tokens[at - 1].value in _BEFORE


def _is_nearest(number: float, piece: Thing, before: Question) -> bool:
    """'no, it is 22' after it was set to 20: nearer to that than to how far the image is from the flange."""
    flange = _FIRST.match(before.said("flange_to_image") or "")
    if piece.thickness_mm is None or len(set(piece.thickness_mm)) > 1:
        return False
    return flange is None or abs(number - piece.thickness_mm[0]) < abs(number - float(flange[0]))


def _is_set(token: Token, heard: Heard, piece: Thing, before: Question) -> bool:
    """'i set it to 20', 'helicoid at 20', 'at 20'; a bare 'at 22' may be the stop."""
    others = [one for one in heard.line.tokens if one is not token]
    told = any(SET_SO in one.groups or one.value == piece.piece for one in others)
    told = told or _is_led_out(heard.line.tokens)
    led = [one for one in others if one.column < token.column][-1:]
    led_in = bool(led) and led[0].kind in ("PREP", "VERB") and led[0].value in _BEFORE
    held = led_in and any(one.value == _IT and one.column < led[0].column for one in others)  # 'i have it at 22'
    unstopped = before.f_number is None and (before.lens is None or before.lens.f_number is None)
    stop = token.kind == "NUMBER" and (token.numbers[0] in WHOLE_STOPS or before.intent in _STOPPED)
    return told or (led_in and led[0].value == "at" and (not stop or (held and unstopped)))
