"""Sensors or films of which the size is asked: 'how much bigger is APS-C than MFT', 'how wide is a 1 inch'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

SIZES: Final = "size-against"  # the cue of the words that set sizes against each other
SIZE: Final = "frame-size"  # and that of those that ask how large one is
_FRAMES: Final = frozenset(["FORMAT", "AREA", "MOUNT"])
_NUMBERS: Final = frozenset(["LENGTH", "FRACTION", "NUMBER", "RANGE"])  # that may be the name of a format
_BETWEEN: Final = frozenset(["CUE", "JOIN", "DET", "FILLER", "MARK", "STOP", "VERB", "FRAME", "BODY", "SHARE", "PREP"])
_ON: Final = frozenset(["on", "with"])  # what is put on a frame is a lens, and no other frame
_PAIR: Final = 2


def with_frames_apart(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """Each as a frame of its own, where nothing else is named; as they are where anything is."""
    places = [at for at, token in enumerate(tokens) if _may_be(token)]
    others = [token for at, token in enumerate(tokens) if at not in places]
    asked = (SIZES in told and len(places) >= _PAIR) or (SIZE in told and len(places) == 1)
    if not asked or any(_is_another(token) for token in others):
        return tokens
    out: list[Token] = []
    for at, token in enumerate(tokens):
        if at in places:
            out += _apart(token, first=at == places[0])
        elif token.kind in ("STOP", "MARK"):
            out.append(token)
        elif token.kind not in ("JOIN", "FRAME", "BODY", "DET", "PREP", "MEASURE"):
            out.append(token.as_("CUE", ids=()))
    return out


def _may_be(token: Token) -> bool:
    return token.kind in _FRAMES or (token.kind in _NUMBERS and bool(token.ids) and "format" in token.implies)


def _is_another(token: Token) -> bool:
    measure = token.kind == "MEASURE" and token.value == "diagonal"
    return not (measure or token.kind in _BETWEEN or (token.kind, token.value) == ("KIND", "wide")) or (
        token.kind == "PREP" and token.value in _ON
    )


def _apart(token: Token, first: bool) -> list[Token]:
    """The frame, with what parts it from the one before; a mount is that of a sensor."""
    join = [] if first else [Token("JOIN", "", token.column, "vs")]
    if token.kind == "MOUNT":
        return [*join, token, Token("FRAME", "sensor", token.column)]
    return [*join, token.as_("FORMAT")]
