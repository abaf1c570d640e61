"""The plate before a sensor, told by what it is called: 'the IR cut (1.1 mm)', '2.5 mm sensor stack', 'was 0.8mm'."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from engine.base.compact import replace
from grammar.words.groups import PLATES
from grammar.words.mentioned import mentioned, outside
from grammar.words.tokens import Line, Token

PLATE: Final = "plate-before-sensor"  # names that no other glass has
FILTER: Final = "filter-or-gel"  # and those of any, which tell it beside what is done to the sensor or behind the lens
STACK: Final = "sensor-stack"  # and what it is called where the body was worked on
WORKED: Final = ("glass-in-path", "sensor-conversion", "clipped-in", "behind-a-lens")
_CONVERTED: Final = "sensor-conversion"
_EXCHANGED: Final = "glass-exchanged"
_BESIDE: Final = 8  # tokens to the other of two plates
_KEYS: Final = frozenset([PLATE, FILTER, STACK, *WORKED, _EXCHANGED, "glass-in-front"])
_THICKNESS: Final = (0.2, 8.0)  # mm, of what lies before a sensor
_NEAR: Final = 5  # tokens from the name to the number
_PARTING: Final = frozenset(["STOP", "BODY", "MOUNT", "NAME", "LETTER", "LENS", "JOIN"])  # of another thing
_LENS: Final = frozenset(["LENS", "MOUNT", "NAME", "LETTER", "FNUM", "KIND"])  # behind a focal length
_OF_PLATE: Final = frozenset(["LENS", "PIECE", "FRAME", "CUE", "MEASURE", "KIND", "UNKNOWN", "THREAD", "LETTER"])


def with_plates_told(line: Line, phrases: Mapping[str, tuple[str, ...]]) -> Line:
    """The line with the thickness of each plate as that, and the words of its name as no lens and no filter."""
    found = mentioned(line.text, phrases, _KEYS)
    named = [one for one in found if one.key == PLATE]
    if not any(one.key == "glass-in-front" for one in found) and any(one.key in WORKED for one in found):
        named += outside([one for one in found if one.key == FILTER], named)
    if any(one.key == _CONVERTED for one in found):
        named += outside([one for one in found if one.key == STACK], named)
    tokens, spoken = list(line.tokens), list(line.spoken)
    for name in named:
        words = [at for at, one in enumerate(tokens) if one.column - 1 < name.end and one.end > name.at]
        at = _thickness(tokens, words)
        if at is None:
            continue
        tokens[at] = tokens[at].as_("KEYED", value="glass", unit="mm")
        if any(one.key == _EXCHANGED for one in found):
            _mark_other(tokens, at)
        for place in words:
            if tokens[place].kind in _OF_PLATE:
                tokens[place] = tokens[place].as_("CUE")
        for place in (*range(at + 1, words[0]), *range(words[-1] + 1, words[-1] + 2)):
            if place < len(tokens) and PLATES in tokens[place].groups:
                tokens[place] = tokens[place].as_("CUE")  # 'a 5 mm plate glass'
        # a term that it stands in is not asked for
        spoken = [one for one in spoken if one.column - 1 + len(one.text) <= name.at or one.column - 1 >= name.end]
        for place in (at + 1, at + 2):
            if place < len(tokens) and (tokens[place].kind, tokens[place].value) == ("MEASURE", "thickness"):
                tokens[place] = tokens[place].as_("CUE")
    if tokens == list(line.tokens):
        return line
    return replace(line, tokens=tuple(tokens), spoken=tuple(spoken))


def _mark_other(tokens: list[Token], at: int) -> None:
    """'swapped the 2 mm glass for a 1 mm one': the other plate is told by its thickness too."""
    for place in range(max(0, at - _BESIDE), min(len(tokens), at + _BESIDE)):
        if _is_thick(tokens[place]) and not _is_of_lens(tokens, place):
            tokens[place] = tokens[place].as_("KEYED", value="glass", unit="mm")
            if place + 1 < len(tokens) and tokens[place + 1].text.casefold() in ("one", "piece"):
                tokens[place + 1] = tokens[place + 1].as_("CUE")


def _thickness(tokens: list[Token], words: list[int]) -> int | None:
    """Where the thickness of what is called by these words stands: right before them, else the next behind."""
    if not words:
        return None
    ahead = next((at for at in range(words[0] - 1, max(-1, words[0] - 1 - 3), -1) if _is_thick(tokens[at])), None)
    if ahead is not None and not any(one.kind in _PARTING for one in tokens[ahead : words[0]]):
        return ahead
    for at in range(words[-1] + 1, min(len(tokens), words[-1] + 1 + 2 * _NEAR)):
        if tokens[at].kind == "STOP":
            return None
        if _is_thick(tokens[at]) and not _is_of_lens(tokens, at):
            return at if at <= words[-1] + _NEAR or _says_was(tokens, at) else None
        if tokens[at].numbers and tokens[at].kind in ("LENGTH", "NUMBER", "FNUM"):
            return None
    return None


def _is_thick(token: Token) -> bool:
    least, most = _THICKNESS
    told = token.is_mm or (token.kind == "NUMBER" and "." in token.text)
    return told and len(token.numbers) == 1 and least <= token.numbers[0] <= most


def _is_of_lens(tokens: list[Token], at: int) -> bool:
    """'took the hot mirror out, my 8mm lens': a focal length."""
    return any(one.kind in _LENS for one in tokens[at + 1 : at + 2])


def _says_was(tokens: list[Token], at: int) -> bool:
    """'cover glass is gone on this cam, was 0.8mm': farther behind it is told of what was spoken of."""
    return any((one.kind, one.value) == ("VERB", "be") for one in tokens[max(0, at - 2) : at])
