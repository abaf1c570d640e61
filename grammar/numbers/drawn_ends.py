"""The two ends and the mount of what is drawn out: 'helicoid 15 closed 26 open', 'a 36-90 helicoid M42'."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import DRAWN
from grammar.words.groups import OPEN_END, SHUT_END
from grammar.words.tokens import Token

_LONGEST: Final = 300.0  # mm, of a helicoid
_ENDS_NEAR: Final = 4  # tokens
_LEADING: Final = frozenset(["CUE", "PREP", "JOIN", "DET"])
_STRETCHING: Final = frozenset(["helicoid", "bellows"])
_UNFOCUSED: Final = frozenset(["enlarger", "projector"])  # kinds of lenses that have no focusing
_LEADS_LENS: Final = frozenset(["with", "on", "behind", "under"])


def mounted(tokens: list[Token], hosts: frozenset[str]) -> list[Token]:
    """'a 36-90 helicoid M42 plus ...': the mount right behind what is drawn out is the one that it has.

    '50 mm + 12 mm tube X': the last word is the body.
    """
    for at in range(len(tokens) - 1):
        piece, mount = tokens[at], tokens[at + 1]
        after = tokens[at + 2] if at + 2 < len(tokens) else None
        ends = after is None or after.kind in ("JOIN", "STOP", "CUE")
        own = at > 0 and tokens[at - 1].kind == "MOUNT"
        is_last = all(one.kind in ("CUE", "STOP") for one in tokens[at + 2 :]) and bool(hosts & set(mount.ids[:1]))
        drawn = piece.kind == "PIECE" and piece.value in DRAWN and mount.kind == "MOUNT"
        if drawn and ends and not (own or is_last):
            tokens[at], tokens[at + 1] = mount, piece
    return tokens


def drawn(tokens: list[Token]) -> list[Token]:
    """'helicoid 15 closed 26 open', '12 to 17 helicoid': the two numbers beside what is drawn out are its ends."""
    for at, token in enumerate(tokens):
        if token.kind != "PIECE" or token.value not in DRAWN or token.value == "extension-tube":
            continue
        if at and tokens[at - 1].kind == "RANGE":
            continue
        ends = _ends(tokens, range(at + 1, min(at + 1 + _ENDS_NEAR + 1, len(tokens))))
        ends = ends or _ends(tokens, range(at - 1, max(at - 1 - _ENDS_NEAR, -1), -1))
        if ends is None:
            continue
        first, last = sorted(ends)
        if last + 1 < len(tokens) and tokens[last + 1].kind in ("LENS", "KIND", "FNUM"):
            continue  # the second is a lens's
        numbers = (tokens[first].numbers[0], tokens[last].numbers[0])
        ends_token = tokens[first].as_("RANGE", numbers=numbers, unit="mm")
        rest = [one for place, one in enumerate(tokens) if not first <= place <= last]
        rest.insert(rest.index(token), ends_token)  # right before the piece, as what describes it
        return drawn(rest)
    return tokens


def ranged_apart(tokens: list[Token]) -> list[Token]:
    """'set my helicoid to what, 25-55 M65 on Z': the one range told, with its mount, is that of the helicoid."""
    stretching = [at for at, one in enumerate(tokens) if one.kind == "PIECE" and one.value in DRAWN]
    ranges = [at for at, one in enumerate(tokens) if one.kind == "RANGE"]
    if len(stretching) != 1 or len(ranges) != 1 or any(one.kind in ("KIND", "FNUM") for one in tokens):
        return tokens
    piece, at = stretching[0], ranges[0]
    told = any(one.kind in ("LENGTH", "RANGE", "NUMBER") for one in tokens[max(0, piece - 2) : piece + 2])
    seated = [one.kind for one in tokens[at + 1 : at + 3]] == ["MOUNT", "PREP"]
    apart = at > 0 and tokens[at - 1].kind == "JOIN"
    if told or not seated or not apart or at < piece or tokens[at].unit not in ("", "mm"):
        return tokens
    own = [tokens[at + 1], tokens[at].as_("RANGE", unit="mm")]
    return [*tokens[:piece], *own, *tokens[piece:at], *tokens[at + 2 :]]


def each_drawn(tokens: list[Token]) -> list[Token]:
    """'25-55 or 36-90 helicoid': of two ranges set against each other each is one that is drawn out."""
    out = _ranges_whole(tokens)
    ranges = [at for at, one in enumerate(out) if _is_range(one)]
    pieces = [at for at, one in enumerate(out) if one.kind == "PIECE" and one.value in _STRETCHING]
    if len(ranges) != 2 or len(pieces) > 1 or any(one.kind == "KIND" and one.value == "zoom" for one in out):
        return tokens
    first, second = ranges
    between = [one for one in out[first + 1 : second] if one.kind not in ("DET", "PIECE")]
    behind = out[second + 1 : second + 2]
    apart = len(between) == 1 and between[0].kind == "JOIN" and between[0].value != ","
    # 'is the 36-90 better than 25-55 for an enlarger lens': such a lens has no zoom, and needs what is drawn out
    bare = not pieces and any(one.kind == "KIND" and one.value in _UNFOCUSED for one in out)
    if not apart or not (pieces or bare) or any(one.kind in ("LENS", "KIND", "FNUM", "MOUNT") for one in behind):
        return tokens
    piece = out[pieces[0]] if pieces else out[first].as_("PIECE", value="helicoid")
    each: list[Token] = []
    for at, one in enumerate(out):
        if _is_range(one):
            stands = at + 1 < len(out) and out[at + 1] is piece
            each += [one.as_("RANGE", unit="mm"), piece if stands else one.as_("PIECE", value=piece.value, numbers=())]
        elif one is not piece:
            each.append(one)
    return each


def _is_end(tokens: list[Token], at: int) -> bool:
    """'15 mm closed, 26 open': the word behind a number tells that it is an end."""
    return at < len(tokens) and bool({OPEN_END, SHUT_END} & set(tokens[at].groups))


def _is_range(token: Token) -> bool:
    return token.kind == "RANGE" and token.unit in ("", "mm") and token.numbers[-1] <= _LONGEST


def _ranges_whole(tokens: list[Token]) -> list[Token]:
    """'25 to 55 or 36 to 90 mm helicoid': the two numbers before another range are one as well."""
    for at in range(len(tokens) - 4):
        low, to, high, join, other = tokens[at : at + 5]
        bare = low.kind == high.kind == "NUMBER" and to.kind == "PREP" and to.value == "to"
        if bare and join.kind == "JOIN" and join.value == "or" and _is_range(other) and low.numbers < high.numbers:
            ends = (low.numbers[0], high.numbers[0])
            return [*tokens[:at], low.as_("RANGE", numbers=ends, unit="mm"), *tokens[at + 3 :]]
    return tokens


def _ends(tokens: list[Token], places: range) -> tuple[int, int] | None:
    """Two bare numbers, the greater one behind the other, with nothing but small words around them."""
    found: list[int] = []
    joined = False
    for place in places:
        token = tokens[place]
        bare = token.kind == "NUMBER" or token.is_mm
        listed = bool(found) and token.kind == "LENGTH" and tokens[place - 1].kind == "JOIN"
        if joined and tokens[place - 1].kind != "JOIN":
            return None  # 'helicoid 5 mm, how close will 50 go' tells of something else behind the comma
        if found and bare and tokens[place - 1].kind == "DET":
            return None  # 'a 6 mm helicoid on a 90': the second is a lens's
        if found and bare and tokens[place - 1].kind == "PREP" and tokens[place - 1].value in _LEADS_LENS:
            return None  # 'helicoid 6 mm and a 90'
        if found and joined and token.kind == "NUMBER" and tokens[found[0]].is_mm and not _is_end(tokens, place + 1):
            return None  # 'a helicoid with 5 mm, 50 that stops at 1 m'
        if bare and not listed and not token.text.isalpha() and token.numbers[0] <= _LONGEST:
            found.append(place)
            if len(found) == 2:
                low, high = (tokens[one].numbers[0] for one in sorted(found))
                return (found[0], found[1]) if low < high else None
            continue
        joined = joined or token.kind == "JOIN"
        if token.kind not in _LEADING or (token.kind == "JOIN" and (not found or token.value == "+")):
            return None
    return None
