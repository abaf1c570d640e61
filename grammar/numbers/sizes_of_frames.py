"""How large a frame is, told beside its name: 'super 35 gate (24.89 wide, 4 perf)', 'a 1 inch CX sensor'."""

from __future__ import annotations

import itertools
from typing import Final

from grammar.words.groups import WIDE_SAID
from grammar.words.tokens import Token

_FRAMES: Final = frozenset(["FORMAT", "FRAME"])
_SIZES: Final = frozenset(["NUMBER", "LENGTH"])
_BESIDE: Final = frozenset(["MARK", "JOIN", "VERB", "DET"])
_LENSES: Final = frozenset(["LENS", "KIND", "FNUM", "COMBO"])
_MOST: Final = 3  # tokens between a frame and its size


def with_sizes_of_frames(tokens: list[Token]) -> list[Token]:
    """The numbers that only say again how large the frame is, which is named, as CUE: they are those of no lens."""
    out = list(tokens)
    for at, (size, behind) in enumerate(itertools.pairwise(tokens)):
        if _is_named_size(size, behind):
            out[at] = size.as_("CUE", ids=(), implies=())
        elif _is_width(tokens, at):
            out[at], out[at + 1] = size.as_("CUE"), behind.as_("CUE")
    return out


def _is_named_size(size: Token, behind: Token) -> bool:
    """'1 inch CX sensor': inches that name a format, right before the name of one."""
    inches = (size.kind, size.unit) == ("LENGTH", "in") and bool(size.ids) and "format" in size.implies
    return inches and behind.kind == "FORMAT" and behind.ids[:1] == size.ids[:1]


def _is_width(tokens: list[Token], at: int) -> bool:
    """'24.89 wide', '36 mm across' behind a frame that is named, where no lens follows."""
    size, behind = tokens[at], tokens[at + 1]
    after = tokens[at + 2] if at + 2 < len(tokens) else None
    if size.kind not in _SIZES or size.unit not in ("", "mm") or WIDE_SAID not in behind.groups:
        return False
    ahead = [one for one in tokens[max(0, at - _MOST) : at] if one.kind not in _BESIDE]
    framed = bool(ahead) and ahead[-1].kind in _FRAMES
    named = any(one.kind == "FORMAT" for one in tokens[:at])
    return framed and named and (after is None or after.kind not in _LENSES)
