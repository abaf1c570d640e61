"""'12mm wide, does it cover': where what is asked is asked of lenses, a length called wide is a focal length."""

from __future__ import annotations

from typing import Final

from grammar.words.token_kinds import CLAUSE_ENDS
from grammar.words.tokens import Token

_WIDE: Final = "wide"
_FOCALS: Final = (3.0, 45.0)  # mm, of lenses called so
_MEASURED: Final = frozenset(
    ["MEASURE", "MOTIF", "TARGET", "FRAME", "PIECE", "MOUNTWORD", "BODY", "KEYED", "AREA", "FORMAT"]
)
_SMALL: Final = frozenset(["CUE", "DET", "VERB"])
_NEAR: Final = 4  # tokens before, in which what is so wide would stand
_LENS: Final = frozenset(["FOCAL", "COMBO", "RANGE", "NAMED", "LENS"])
_OF_LENSES: Final = frozenset(
    [
        "cover",
        "vignette",
        "equiv",
        "match",
        "crop",
        "dof",
        "hyperfocal",
        "infinity",
        "blurry",
        "smear",
        "colour",
        "fits",
        "frame-filling",
    ]
)  # cues of what is asked of a lens


def with_wides_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The lengths that are those of wide lenses become FOCAL. `told`: what the cues of the line tell."""
    if any(one.kind in _LENS for one in tokens) or not told & _OF_LENSES:
        return tokens
    return [token.as_("FOCAL") if _is_lens(tokens, at) else token for at, token in enumerate(tokens)]


def _is_lens(tokens: list[Token], at: int) -> bool:
    token, after = tokens[at], tokens[at + 1] if at + 1 < len(tokens) else None
    named = after is not None and after.kind == "KIND" and after.text.casefold() == _WIDE
    metric = token.kind in ("LENGTH", "NUMBER") and token.unit in ("mm", "") and len(token.numbers) == 1
    if not named or not metric or not _FOCALS[0] <= token.numbers[0] <= _FOCALS[1]:
        return False
    behind = tokens[at + 2].kind if at + 2 < len(tokens) else "STOP"
    return behind not in _MEASURED and not _is_said_of(tokens, at)


def _is_said_of(tokens: list[Token], at: int) -> bool:
    """Whether a thing that is so wide is told right before it: 'the hole is 22 mm wide'."""
    if at and tokens[at - 1].kind == "FORMAT":
        return False  # 'a 16 mm era 12mm wide'
    for token in reversed(tokens[max(0, at - _NEAR) : at]):
        if token.kind in CLAUSE_ENDS:
            return False
        if token.kind in _MEASURED:
            return True
        if token.kind not in _SMALL:
            return False
    return False
