"""Both ends of what is drawn out, each told by its word: '27.46 closed and 37.46 fully out', 'goes 26.2 to 33'."""

from __future__ import annotations

from typing import Final

from grammar.questions import RING
from grammar.words.groups import OPEN_END, SHUT_END
from grammar.words.tokens import Token

_HELICOID: Final = "helicoid"
_BELLOWS: Final = "bellows"
_LONGEST: Final = 250.0  # mm, of what is drawn out
_NEAR: Final = 3  # tokens from an end to its word, and from the one end to the other
_TO: Final = frozenset(["to", "at-most"])  # values of 'to' and 'up to'
_BETWEEN: Final = frozenset(["FILLER", "VERB", "DET", "JOIN", "MARK", "CUE", "PREP", "MEASURE"])


def with_ends_drawn(tokens: list[Token]) -> list[Token]:
    """The two ends as one RANGE right behind the helicoid, which is one piece with the ring that it is told to be."""
    tokens = _with_mount_first(tokens)
    drawn = _HELICOID if _place_of(tokens, _HELICOID) is not None else _BELLOWS
    at = _place_of(tokens, drawn)
    ends = _ends(tokens)
    if at is None and ends is not None and ends[3]:
        at = _place_of(tokens, RING)  # 'a macro adapter, 28.5 collapsed, 40 extended' is one
        tokens = tokens if at is None else [*tokens[:at], tokens[at].as_("PIECE", value=_HELICOID), *tokens[at + 1 :]]
        drawn = _HELICOID
    if at is None:
        return tokens
    out = _as_one_piece(list(tokens), at)
    ends = _ends(out)
    if ends is None:
        return out
    first, second, last, _ = ends
    low, high = sorted((out[first].numbers[0], out[second].numbers[0]))
    whole = out[first].as_("RANGE", numbers=(low, high), unit="mm", text=f"{low:g}-{high:g}")
    rest = [*out[:first], *out[last + 1 :]]
    piece = _place_of(rest, drawn) or 0
    behind = past_mounts(rest, piece + 1)
    return [*rest[:piece], *rest[piece + 1 : behind], rest[piece], whole, *rest[behind:]]


def _with_mount_first(tokens: list[Token]) -> list[Token]:
    """'a helicoid M65 17-31', 'helicoid 17-31 m42 enough?': the mount behind it is its own, as in 'an M65 helicoid'."""
    alone = sum(one.kind == "MOUNT" for one in tokens) == 1
    for at, token in enumerate(tokens):
        drawn = alone and token.kind == "PIECE" and token.value in (_HELICOID, _BELLOWS)
        if drawn and [one.kind for one in tokens[at + 1 : at + 3]] == ["MOUNT", "RANGE"]:
            return [*tokens[:at], tokens[at + 1], token, *tokens[at + 2 :]]
        after = tokens[at + 3] if at + 3 < len(tokens) else None
        ends = after is None or after.kind in ("STOP", "FILLER", "VERB", "JOIN")
        drawn = token.kind == "PIECE" and token.value in (_HELICOID, _BELLOWS)
        drawn = drawn and (alone or any(one.kind in ("LENS", "KIND") for one in tokens[:at]))
        if drawn and ends and [one.kind for one in tokens[at + 1 : at + 3]] == ["RANGE", "MOUNT"]:
            return [*tokens[:at], tokens[at + 2], token, tokens[at + 1], *tokens[at + 3 :]]
    return tokens


def past_mounts(out: list[Token], at: int) -> int:
    """Behind the two mounts that a helicoid is told to join: 'helicoid M42-E', 'focusing ring M42 to E'."""
    kinds = [one.kind for one in out[at : at + 3]]
    if kinds[:2] == ["MOUNT", "MOUNT"]:
        return at + 2
    linked = kinds == ["MOUNT", kinds[1] if len(kinds) > 1 else "", "MOUNT"]
    return at + 3 if linked and kinds[1] in ("MARK", "PREP", "LINK") else at


def _as_one_piece(out: list[Token], at: int) -> list[Token]:
    """'a helicoidal M42-MFT adapter': the ring between the two mounts is that helicoid."""
    kinds = [one.kind for one in out[at + 1 : at + 5]]
    joined = len(kinds) == 4 and kinds[0] == kinds[2] == "MOUNT" and kinds[3] == "PIECE"
    if not joined or out[at + 4].value != RING:
        return out
    out[at + 4] = out[at + 4].as_("PIECE", value=_HELICOID)
    return [*out[:at], *out[at + 1 :]]


def _place_of(tokens: list[Token], piece: str) -> int | None:
    return next((n for n, one in enumerate(tokens) if (one.kind, one.value) == ("PIECE", piece)), None)


def _ends(out: list[Token]) -> tuple[int, int, int, bool] | None:
    """Where both ends stand, the last token that tells of them, and whether each is told by its word."""
    for first, token in enumerate(out):
        second = next((n for n in range(first + 1, min(first + 2 + _NEAR, len(out))) if _is_length(out[n])), None)
        if not _is_length(token) or second is None or out[second].numbers == token.numbers:
            continue
        between, behind = out[first + 1 : second], out[second + 1 : second + 1 + _NEAR]
        if any(one.kind not in (*_BETWEEN, "LIMIT") for one in between):
            continue
        shut, drawn = token.numbers[0] < out[second].numbers[0], OPEN_END
        one, other = (SHUT_END, drawn) if shut else (drawn, SHUT_END)
        last = _word(behind, other, second + 1)
        if any(one in word.groups for word in between) and (last is not None or shut):
            return first, second, last if last is not None else second, last is not None
        if first and one in out[first - 1].groups and any(other in word.groups for word in between):
            return first, second, second, True  # 'closed 26.2 open 31'
        if any(word.value in _TO for word in between) and first and _goes(out, first):
            return first, second, second, False
    return None


def _goes(out: list[Token], first: int) -> bool:
    """'goes 26.2 to 33', 'from 27.46 up to 37.46': what a bare 'to' would not tell of a piece."""
    return out[first - 1].kind == "VERB" or out[first - 1].value == "from"


def _word(behind: list[Token], group: str, start: int) -> int | None:
    """Where the word of the second end stands, with nothing before it that begins something else."""
    for n, one in enumerate(behind):
        if group in one.groups:
            return start + n
        if one.kind not in _BETWEEN or one.kind == "JOIN":
            return None
    return None


def _is_length(token: Token) -> bool:
    number = token.kind == "NUMBER" and not token.text[:1].isalpha()
    return (number or token.is_mm) and 1 <= token.numbers[0] <= _LONGEST
