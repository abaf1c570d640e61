"""A side of the frame told in mm with what fills it: '48 mm of rule fills the 36 mm side', '60 mm of it spans 36'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.motifs import FIELD, IMAGE_SIZE
from grammar.words.groups import FILLS, FRAME_SIDE, SHOWS
from grammar.words.tokens import Token

_LENS_LED: Final = frozenset(["LENS", "PIECE", "MOUNT", "MOUNTWORD", "THREADWORD"])
_DRAWS_OUT: Final = frozenset(["extension-tube", "bellows", "helicoid", "extension", "adapter"])
_NEAR: Final = 5  # tokens


def with_sides_filled(tokens: list[Token]) -> list[Token]:
    """What is said to be of the thing becomes KEYED as the field, a side of the frame told in mm as what it fills."""
    out = list(tokens)
    _tell_shown(out)
    fills = [at for at, one in enumerate(out) if FILLS in one.groups]
    if not fills:
        return out
    if not any(_is_field(one) for one in out):
        thing = next((at for at in range(len(out)) if _is_of_thing(out, at, fills)), None)
        if thing is None:
            return out
        out[thing] = out[thing].as_("KEYED", value=FIELD, ids=())
    for at, token in enumerate(out):
        behind = out[at + 1] if at + 1 < len(out) else None
        side = token.is_mm and behind is not None and FRAME_SIDE in behind.groups
        if side and behind is not None and any(0 < at - place < _NEAR for place in fills):
            out[at] = token.as_("KEYED", value=IMAGE_SIZE, ids=())
            out[at + 1] = behind.as_("CUE", value="")
    return out


def _tell_shown(tokens: list[Token]) -> None:
    """'a 68 mm tube shows 53 mm across': behind what shows, beside what draws a lens out, the field."""
    if not any(one.value in _DRAWS_OUT for one in tokens):
        return
    for at in range(1, len(tokens) - 1):
        led = SHOWS in tokens[at - 1].groups and FILLS in tokens[at + 1].groups
        if led and tokens[at].kind == "LENGTH":
            tokens[at] = tokens[at].as_("KEYED", value=FIELD, unit=tokens[at].unit or "mm", ids=())
            tokens[at + 1] = tokens[at + 1].as_("CUE", value="")


def _is_field(token: Token) -> bool:
    return token.kind == "KEYED" and token.value == FIELD


def _is_of_thing(tokens: list[Token], at: int, fills: list[int]) -> bool:
    """'60 mm of it spans the long side': a length with 'of', ahead of what tells that it fills."""
    token, behind = tokens[at], tokens[at + 1] if at + 1 < len(tokens) else None
    of = token.is_mm and behind is not None and behind.value == "of"
    ahead = [place for place in fills if 0 < place - at < _NEAR]
    return of and bool(ahead) and not any(one.kind in _LENS_LED for one in tokens[at : ahead[0]])
