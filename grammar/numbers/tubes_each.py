"""Lenses set against each other, each with a tube of its own: '20 mm tube on a 35 or 25 mm on a 50'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.of_again import without_of_again
from grammar.words.token_kinds import SIZES
from grammar.words.tokens import Token, is_plural

_TUBE: Final = "extension-tube"
_TUBES: Final = frozenset([_TUBE, "adapter", "helicoid"])
_EXTENSION: Final = "extension"
_ON: Final = frozenset(["on", "behind", "under", "for", "to"])  # from a tube to its lens
_WITH: Final = frozenset(["with", "+", "plus", "and"])  # from a lens to its tube
_PARTS: Final = frozenset(["or", "vs"])
_THAN: Final = frozenset(["than", "beat", "beats", "against"])
_ARTICLES: Final = frozenset(["DET", "LETTER", "FILLER"])
_LENSES: Final = frozenset(["FOCAL", "COMBO", "NAMED", "RANGE"])
_PAIR: Final = 2


def with_tubes_on_each(tokens: list[Token]) -> list[Token]:
    """In each part one number as the lens, the other as the tube; as they are where a part tells anything else."""
    tokens = with_lens_of_tubes(without_of_again(tokens))
    parts, ends = _parted(tokens)
    if len(parts) != _PAIR or not any(_is_tube(one) for one in tokens):
        return tokens
    told = [_told(part) for part in parts]
    if any(part is None for part in told):
        return tokens
    first, last = told
    return [*(first or ()), *ends, *(last or ())]


def with_lens_of_tubes(tokens: list[Token]) -> list[Token]:
    """'10+16 mm tubes and a 28': behind the tubes, told with their lengths, the one bare number left is the lens."""
    tubes = [at for at, one in enumerate(tokens) if (one.kind, one.value) == ("PIECE", _TUBE)]
    if len(tubes) != 1 or not is_plural(tokens[tubes[0]]) or any(one.kind in _LENSES for one in tokens):
        return tokens
    at = tubes[0]
    before = [one for one in tokens[:at] if one.kind in SIZES]
    left = [n for n in range(at + 1, len(tokens)) if tokens[n].kind in SIZES]
    behind = tokens[at + 1 : left[0]] if left else []
    small = all(one.kind in ("PREP", "JOIN", *_ARTICLES) and one.text != "," for one in behind)
    if len(before) < _PAIR or len(left) != 1 or not behind or not small or tokens[left[0]].kind != "NUMBER":
        return tokens
    lens = tokens[left[0]].as_("FOCAL", unit="mm", ids=())
    return [*tokens[:at], tokens[at], *(one for one in behind if one.kind == "PREP"), lens, *tokens[left[0] + 1 :]]


def _parted(tokens: list[Token]) -> tuple[list[list[Token]], list[Token]]:
    at = next((n for n, one in enumerate(tokens) if _parts(one) and 0 < n < len(tokens) - 1), None)
    if at is None or any(_parts(one) for one in tokens[at + 1 :]):
        return [], []
    return [tokens[:at], tokens[at + 1 :]], [tokens[at].as_("JOIN", value="or")]


def _parts(token: Token) -> bool:
    return (token.kind == "JOIN" and token.value in _PARTS) or token.text.casefold() in _THAN


def _is_tube(token: Token) -> bool:
    piece = token.kind == "PIECE" and token.value in _TUBES
    return piece or (token.kind == "MEASURE" and token.value == _EXTENSION)


def _told(part: list[Token]) -> list[Token] | None:
    """The part with its two numbers told; None where it is not of that shape."""
    sizes = [n for n, one in enumerate(part) if one.kind in SIZES and one.unit in ("", "mm") and not one.text.isalpha()]
    if len(sizes) != _PAIR or any(one.kind in ("COMBO", "MOUNT", "RATIO", "TIMES") for one in part):
        return None
    first, last = sizes
    between = part[first + 1 : last]
    if first + 1 < len(part) and _is_tube(part[first + 1]):
        return _as_pair(part, tube=first, lens=last)
    led = {one.value for one in between if one.kind in ("PREP", "JOIN", "CUE")}
    named = last + 1 < len(part) and _is_tube(part[last + 1])
    if named and led & _WITH:
        return _as_pair(part, tube=last, lens=first)
    small = all(one.kind in ("PREP", *_ARTICLES) for one in between)
    return _as_pair(part, tube=first, lens=last) if led & _ON and small and not named else None


def _as_pair(part: list[Token], tube: int, lens: int) -> list[Token]:
    out: list[Token] = []
    for at, token in enumerate(part):
        if at == lens:
            out.append(token.as_("FOCAL", unit="mm", ids=(), implies=()))
        elif at == tube:
            out.append(token.as_("LENGTH", unit="mm", ids=(), implies=()))
            if at + 1 == len(part) or part[at + 1].kind != "PIECE":
                out.append(Token("PIECE", "tube", token.column, _TUBE))
        elif not (at == tube + 1 and token.kind == "MEASURE"):
            out.append(token)
    return out
