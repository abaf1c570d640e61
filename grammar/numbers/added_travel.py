"""How far a helicoid goes, told with a plus behind its mounts: 'helicoid M-E +6 mm', 'helicoid LTM to Z +5'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_HELICOID: Final = "helicoid"
_PLUS: Final = "+"
_CLOSE_UP: Final = "close-up-lens"
_BETWEEN: Final = frozenset(["MOUNT", "LETTER", "LINK", "MARK", "PREP", "JOIN", "DET"])  # its two mounts
_MOST: Final = 20.0  # mm, of those that close up rings between two mounts go
_FAR_BACK: Final = 6  # tokens


def with_added_travel(tokens: list[Token]) -> list[Token]:
    """The number behind the plus as travel of the helicoid; a power stays one where a close-up lens is spoken of."""
    out: list[Token] = []
    powered = any(one.kind == "PIECE" and one.value == _CLOSE_UP for one in tokens)
    for token in tokens:
        length = token.kind == "LENGTH" and bool(out) and out[-1].text == _PLUS and token.unit in ("", "mm")
        power = token.kind == "DIOPTRE" and token.text.startswith(_PLUS) and not powered
        if (length or power) and token.numbers[0] <= _MOST and _is_of_helicoid(out[:-1] if length else out, power):
            out = out[:-1] if length else out
            token = token.as_("KEYED", value="travel", unit="mm")
        out.append(token)
    return out


def _is_of_helicoid(ahead: list[Token], power: bool) -> bool:
    """Whether the last piece told is a helicoid with its two mounts, and nothing else stands behind it."""
    for back, one in enumerate(reversed(ahead)):
        if one.kind == "PIECE":
            named = ahead[len(ahead) - back :]
            both = sum(row.kind in ("MOUNT", "LETTER") for row in named) > 1
            return one.value == _HELICOID and (both or power)  # right behind the piece a length is of it anyway
        if back >= _FAR_BACK or one.kind not in _BETWEEN:
            break
    return power and any(one.kind == "PIECE" and one.value == _HELICOID for one in ahead)
