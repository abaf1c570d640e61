"""A whole stop as it is engraved before the focal length: '1:2 50mm', '1:4 200 mm M42'; no image of half its size."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_STOPS: Final = {"1:2": 2.0, "1:4": 4.0}  # as ratios they are as usual close up
_SHORTEST_MM: Final = 8.0  # of a lens
_CLOSE: Final = frozenset(
    ["macro", "how-close", "how-big", "working-distance", "dof", "frame-filling", "nearest", "same-scale"]
)  # cues of what is asked close up


def with_engraved_ratios(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The tokens with such a ratio as FNUM, where nothing is asked close up.

    `told`: what the cues of the line tell.
    """
    if told & _CLOSE or any(one.kind == "PIECE" and one.value == "extension-tube" for one in tokens):
        return tokens
    out = list(tokens)
    for at in range(len(tokens) - 1):
        ratio, focal = tokens[at], tokens[at + 1]
        stop = _STOPS.get(ratio.text.replace(" ", "")) if ratio.kind == "RATIO" else None
        led = at == 0 or tokens[at - 1].kind != "PREP"  # 'at 1:2'
        if stop is not None and led and focal.is_mm and focal.numbers[0] >= _SHORTEST_MM:
            out[at] = ratio.as_("FNUM", numbers=(stop,), value="")
    return out
