"""A power and 'closeup' behind it, with no word for a lens: '+2 closeup on my 100' is a close-up lens."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_PIECE: Final = "close-up-lens"
_CLOSE_UP: Final = "closeup"
_GLASSES: Final = frozenset(["lens", "lenses", "glass"])
_JOINING: Final = str.maketrans("", "", " -")


def with_close_ups_named(tokens: list[Token]) -> list[Token]:
    """The cue behind a power in dioptres becomes the PIECE that has it."""
    out = _counted(list(tokens))
    for at in range(1, len(out)):
        token = out[at]
        spoken = token.kind == "CUE" and token.text.casefold().translate(_JOINING).startswith(_CLOSE_UP)
        lens = token.kind == "LENS" and token.text.casefold() in _GLASSES  # 'with a 3 dioptre lens'
        if (spoken or lens) and out[at - 1].kind == "DIOPTRE":
            out[at] = token.as_("PIECE", value=_PIECE)
    return out


def _counted(tokens: list[Token]) -> list[Token]:
    """'two +2s on a 135': two close-up lenses, and no seconds."""
    for at in range(2, len(tokens)):
        count, plus, power = tokens[at - 2 : at + 1]
        several = count.kind in ("NUMBER", "COUNT") and count.numbers[0] == int(count.numbers[0])
        if several and plus.text == "+" and power.kind == "SHUTTER" and power.text[:-1].isdigit():
            told = power.as_(
                "DIOPTRE", text=f"+{power.text[:-1]}", value="", unit="", numbers=(float(power.text[:-1]),)
            )
            piece = Token("PIECE", "close-up lenses", power.column, _PIECE)
            return [*tokens[: at - 2], count.as_("COUNT"), told, piece, *tokens[at + 1 :]]
    return tokens
