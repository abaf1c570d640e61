"""What a text says and puts right in the same breath: 'on EF, sorry, I mean RF' is said of RF alone."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from grammar.words.groups import LACKING
from grammar.words.lexicon import Lexicon
from grammar.words.mentioned import Mention, mentioned
from grammar.words.token_kinds import CLAUSE_ENDS, LENGTHS, SIZES
from grammar.words.tokens import Token, tokens_of

_PLAINLY: Final = "put-right"  # words that only put right what was said
_BESIDE: Final = "put-right-beside"  # those that do so between two of a kind that stand beside them
_PARTED: Final = "put-right-parted"  # and those that do so behind a comma
_BEHIND: Final = "put-wrong-behind"  # and those that a wrong number stands behind: 'it is 10, not 11'
_OF_A_KIND: Final = (
    frozenset(["MOUNT", "LETTER"]), frozenset(["LENGTH", "NUMBER", "FOCAL"]), frozenset(["FORMAT"]),
    frozenset(["FNUM"]), frozenset(["SHUTTER"]), frozenset(["ISO"]), frozenset(["FPS"]), frozenset(["TIMES"]),
)  # fmt: skip
_SMALL: Final = frozenset(["JOIN", "STOP", "MARK", "DET", "PREP", "FILLER"])
_HEADS: Final = frozenset(["BODY", "LENS", "KIND", "PIECE"])
_PASSED: Final = _SMALL | {"VERB", "CUE"}
_FURTHEST: Final = 4  # tokens at most from the words that put right to what they put right
_ARTICLE: Final = "a"
_NUMBER: Final = re.compile(r"\d*\.?\d+")
_OR: Final = "or"
_NEARLY_MM: Final = 0.6


def said_rightly(text: str, lexicon: Lexicon, before: str = "") -> str:
    """The text with blanks for what it puts right itself, so that every column stays; as it was where it does not.

    `before`: the question before, whose wrong numbers are not told of here: 'it is 35 not 50' after a 50 mm lens.
    """
    phrases = {key: lexicon.words.mentions.get(key, ()) for key in (_PLAINLY, _BESIDE, _PARTED, _BEHIND)}
    typed = text
    for found in mentioned(typed, phrases):
        gone = text[found.at : found.end] != typed[found.at : found.end]
        tokens = () if gone else tokens_of(text, lexicon).tokens
        wrong = _wrong_behind(tokens, found, before) if found.key == _BEHIND else _wrong(tokens, found)
        if wrong is not None:
            start, end = wrong
            text = text[:start] + " " * (end - start) + text[end:]
    return text


def _wrong(tokens: Sequence[Token], found: Mention) -> tuple[int, int] | None:
    """Where the wrong one begins and the right one does, from 0."""
    before = [token for token in tokens if token.column - 1 < found.at]
    after = [token for token in tokens if token.column - 1 >= found.end]
    led = before[:-1] if before and before[-1].text.casefold() == _OR else before  # ', or rather on L'
    if found.key == _PARTED and not (led and led[-1].kind in CLAUSE_ENDS and not led[-1].text.isalpha()):
        return None
    small = _PASSED if found.key == _PLAINLY else _SMALL
    right = _first(after, small)
    if right is None:
        return None
    numbered = any(token.kind in SIZES and token.column > right.column for token in after[: _FURTHEST + 1])
    kind = next((kinds for kinds in _OF_A_KIND if right.kind in kinds), frozenset())
    passed = small | _HEADS | (SIZES if numbered and right.kind not in SIZES else frozenset())
    at = _last(before, kind, passed)
    if at is None or any(LACKING in token.groups for token in before[max(0, at - 2) : at]):
        return None
    return before[at].column - 1, right.column - 1


def _wrong_behind(tokens: Sequence[Token], found: Mention, before: str) -> tuple[int, int] | None:
    """Where 'not 11' of 'it is 10 not 11' begins and ends: both sizes right beside the word."""
    led = [token for token in tokens if token.column - 1 < found.at and token.kind not in CLAUSE_ENDS]
    after = [token for token in tokens if token.column - 1 >= found.end and token.kind != "DET"]
    if not led or not after or not {led[-1].kind, after[0].kind} <= LENGTHS:
        return None
    wrong = after[0]
    if wrong.text.isalpha() or not wrong.numbers or _stands_in(wrong.numbers[0], before):
        return None
    if _is_what_it_should_be(led[-1], wrong):
        return None
    return found.at, wrong.end or wrong.column - 1 + len(wrong.text)


def _is_what_it_should_be(told: Token, other: Token) -> bool:
    """'the ring is 27.6 not 27.46': of two lengths told so finely, and so near each other, one is what was measured."""
    fine = all("." in one.text and one.numbers for one in (told, other))
    return fine and 0 < abs(told.numbers[0] - other.numbers[0]) <= _NEARLY_MM


def _stands_in(number: float, text: str) -> bool:
    return any(float(one) == number for one in _NUMBER.findall(text))


def _first(tokens: Sequence[Token], passed: frozenset[str]) -> Token | None:
    """The first behind the words that may put another right."""
    for token in tokens[:_FURTHEST]:
        article = token.kind == "LETTER" and token.text == _ARTICLE
        if not (token.kind in passed or article):
            return token
    return None


def _last(tokens: Sequence[Token], kind: frozenset[str], passed: frozenset[str]) -> int | None:
    """The place of the last before the words that is of the kind, with no more than what may be passed between."""
    for back, token in enumerate(reversed(tokens)):
        if token.kind in kind and not (token.kind == "LETTER" and token.text == _ARTICLE):
            return len(tokens) - 1 - back
        if back >= _FURTHEST or token.kind not in passed:
            return None
    return None
