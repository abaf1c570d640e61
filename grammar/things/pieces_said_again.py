"""A piece told by its length that is spoken of again: 'a 28 mm tube + the 1 mm ring. I machine the tube so ...'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token, is_plural

_PIECES: Final = frozenset(["PIECE", "ADAPTER"])
_SIZED: Final = frozenset(["LENGTH", "NUMBER", "RANGE", "MOUNT", "LETTER", "TIMES", "MARK", "LINK", "PREP"])


def with_pieces_said_again(tokens: list[Token]) -> list[Token]:
    """'The tube' where a tube has its length already is that one, and no other."""
    out: list[Token] = []
    told: set[str] = set()
    for at, token in enumerate(tokens):
        word = token.text.casefold().split()[-1] if token.kind in _PIECES and token.text else ""
        led = tokens[at - 1] if at else None
        bare = token.kind == "PIECE" and led is not None and led.kind == "DET" and led.value == "the"
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        sized = after is not None and after.kind in _SIZED and after.value != "so"
        if bare and word in told and not sized and not is_plural(token):
            out.append(token.as_("CUE", value=""))
            continue
        numbers = token.kind == "ADAPTER" and any(sign.isdigit() for sign in token.text)
        if word and (numbers or any(one.is_mm for one in tokens[max(0, at - 4) : at])):
            told.add(word)
        out.append(token)
    return out
