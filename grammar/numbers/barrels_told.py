"""The tube that a lens without a mount is itself: 'projection lens, smooth 42.5 tube'."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import SPACER
from grammar.words.groups import SMOOTH
from grammar.words.tokens import Token

BARREL: Final = "barrel"
_WIDTHS: Final = (20.0, 130.0)  # mm, of barrels
_PROJECTS: Final = ("KIND", "projector")
_PLAIN: Final = "plain"  # said of the tube of such a lens; elsewhere of a tube that stands between
_NEAR: Final = 2  # tokens between the word for what it is like, its width and the tube
_WIDE: Final = frozenset(["JOIN", "CUE", "KIND", "FILLER", "PREP", "DET"])


def with_barrels_told(tokens: list[Token]) -> list[Token]:
    """The width of a smooth tube becomes KEYED, and the tube is no piece that stands between."""
    thrown = any((one.kind, one.value) == _PROJECTS for one in tokens)
    for at, token in enumerate(tokens):
        if SMOOTH not in token.groups and not (thrown and token.text.casefold() == _PLAIN):
            continue
        tube = next((n for n in range(at + 1, min(len(tokens), at + 2 + _NEAR)) if _is_tube(tokens[n])), None)
        if tube is None:  # 'the tube is smooth, 52.5 mm', 'tube without any thread, 42.5 outside'
            tube = next((n for n in range(at - 1, max(-1, at - 2 - _NEAR), -1) if _is_tube(tokens[n])), None)
            width = next((n for n in range(at + 1, at + 3 + _NEAR) if _is_width(tokens, n)), None)
            if tube is not None and width is not None and all(one.kind in _WIDE for one in tokens[at + 1 : width]):
                tokens[width] = tokens[width].as_("KEYED", value=BARREL, unit="mm")
                tokens[tube] = tokens[tube].as_("CUE")
            continue
        width = next(
            (n for n in (*range(at + 1, tube), *range(tube + 1, tube + 2 + _NEAR)) if _is_width(tokens, n)), None
        )
        if width is not None and all(one.kind in _WIDE for one in tokens[tube + 1 : width]):
            tokens[width] = tokens[width].as_("KEYED", value=BARREL, unit="mm")
            tokens[tube] = tokens[tube].as_("CUE")
    return tokens


def _is_tube(token: Token) -> bool:
    return token.kind == "PIECE" and token.value == SPACER


def _is_width(tokens: list[Token], at: int) -> bool:
    token = tokens[at] if at < len(tokens) else None
    metric = token is not None and token.kind in ("NUMBER", "LENGTH") and token.unit in ("", "mm")
    return token is not None and metric and not token.text.isalpha() and _WIDTHS[0] <= token.numbers[0] <= _WIDTHS[1]
