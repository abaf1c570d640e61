"""The length from the seat of a lens to its image, where one is spoken of: '46 between lug and window'."""

from __future__ import annotations

from typing import Final

from grammar.words.token_kinds import METRES
from grammar.words.tokens import Cue, Token

_LANDS: Final = "image-lands"  # what cues tell that speak of the image of something far
_FLANGE: Final = "flange-to-image"
_LEAST_MM, _MOST_MM = 9.0, 300.0
_THINGS: Final = frozenset(["LENS", "KIND", "MOUNT", "FNUM", "PIECE", "MOUNTWORD", "TRAIT", "MEASURE", "NUMBER"])
_SIZE: Final = "size"
_BAYONET: Final = "bayonet"
_CIRCLE, _ON = "circle", "on "  # what else is read on paper
_OF_MOUNTS: Final = frozenset(["looks", "identify"])  # cues of how the rear of a lens looks
_OF_CIRCLES: Final = frozenset(["cover", "vignette", "circle-word"])
_SPACED: Final = frozenset(["mm", "cm", ""])


def with_image_told(tokens: list[Token], cues: tuple[Cue, ...], told: frozenset[str]) -> list[Token]:
    """The one length nearest to the words for an image becomes KEYED, unless it describes a thing of its own."""
    out = _with_paper_told(_with_bayonets_told(_with_sizes_passed(list(tokens))), told)
    if _LANDS not in told or any(_is_measured(out, at) for at in range(len(out))):
        return out
    if any(one.kind == "KEYED" and one.value == _FLANGE for one in out):
        return out
    spoken = [cue.column for cue in cues if cue.tells == _LANDS]
    free = [at for at, token in enumerate(out) if _is_length(token) and not _is_of_thing(out, at)]
    if any(one.kind == "LENGTH" and one.unit in METRES for one in out):
        free = [at for at in free if not _is_whole(out[at])]  # '75 comes sharp at 40 m': that of a lens
    if free:
        at = min(free, key=lambda place: (_is_whole(out[place]), min(abs(out[place].column - one) for one in spoken)))
        out[at] = out[at].as_("KEYED", value=_FLANGE, unit=out[at].unit or "mm")
    return out


def _with_sizes_passed(tokens: list[Token]) -> list[Token]:
    """'register 48.3 measured': it is told already what the number is of."""
    for at, token in enumerate(tokens[2:], start=2):
        size = token.kind == "MEASURE" and token.value == _SIZE
        if size and _is_length(tokens[at - 1]) and (tokens[at - 2].kind, tokens[at - 2].value) == ("MEASURE", _FLANGE):
            tokens[at - 1] = tokens[at - 1].as_("KEYED", value=_FLANGE, unit="mm")
            tokens[at - 2], tokens[at] = tokens[at - 2].as_("CUE"), token.as_("CUE")
    return tokens


def _with_bayonets_told(tokens: list[Token]) -> list[Token]:
    """'something with a 27.8 bayonet': told to the tenth, of a bayonet, is its register."""
    for at, token in enumerate(tokens[:-1]):
        bayonet = tokens[at + 1].kind == "MOUNTWORD" and tokens[at + 1].text.casefold() == _BAYONET
        if bayonet and token.kind == "NUMBER" and _is_length(token) and not _is_whole(token):
            tokens[at] = token.as_("KEYED", value=_FLANGE, unit="mm")
    return tokens


def _with_paper_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'3 lug bayonet, roughly 45.5 on paper': of how a mount looks, what is read on paper is where the image lies."""
    seen = told & _OF_MOUNTS or any(
        one.kind in ("MOUNTWORD", "HEADMOD") and one.text.casefold() == _BAYONET for one in tokens
    )
    if told & _OF_CIRCLES or not seen:
        return tokens
    for at, token in enumerate(tokens[1:], start=1):
        if token.kind == "MEASURE" and token.value == _CIRCLE and token.text.casefold().startswith(_ON):
            length = at - 1 if _is_length(tokens[at - 1]) else None
            if length is not None:
                tokens[length] = tokens[length].as_("KEYED", value=_FLANGE, unit="mm")
                tokens[at] = token.as_("CUE")
    return tokens


def _is_measured(tokens: list[Token], at: int) -> bool:
    """Whether words for this distance stand here, with a length beside them that is then told so."""
    words = tokens[at].kind == "MEASURE" and tokens[at].value == _FLANGE
    return words and any(_is_length(one) for one in (*tokens[max(0, at - 2) : at], *tokens[at + 1 : at + 3]))


def _is_length(token: Token) -> bool:
    bare = token.kind == "NUMBER" and not token.text.isalpha()
    metric = token.kind == "LENGTH" and token.unit in _SPACED
    return (bare or metric) and len(token.numbers) == 1 and _LEAST_MM <= token.numbers[0] <= _MOST_MM


def _is_whole(token: Token) -> bool:
    return token.numbers[0] == int(token.numbers[0])


def _is_of_thing(tokens: list[Token], at: int) -> bool:
    """Whether what stands right behind the number says of what it is; or what it is right behind, if it is whole."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    before = tokens[at - 1] if at else None
    behind = before is not None and before.kind in ("MOUNT", "KIND", "LENS") and _is_whole(tokens[at])
    return behind or (after is not None and after.kind in _THINGS)
