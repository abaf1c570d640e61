"""What is told on of a thing behind 'that' or 'which': 'a FD 35 that someone gave an EF bayonet'; 'a second one'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from engine.base.compact import replace
from grammar.words.tokens import Line, Token

_RELATIVE: Final = frozenset(["that", "which", "whose"])
_THING: Final = frozenset(["NUMBER", "LENGTH", "LENS", "FNUM"])  # may end the name of one
_NAMES: Final = frozenset(["MOUNT", "LETTER", "NAME", "LENGTH", "NUMBER"])
_TOLD_ON: Final = frozenset(["FILLER", "VERB", "LETTER", "UNKNOWN"])  # begins what is told of it
_ANY: Final = frozenset(["a", "an", "another"])


def with_relatives_apart(line: Line) -> Line:
    """The line with such a word as a comma; and a 'second one' that is just one more points to nothing listed."""
    out = list(line.tokens)
    for at, (before, token) in enumerate(pairwise(line.tokens), start=1):
        if _is_relative(out, at):
            out[at] = token.as_("JOIN", value=",")
        elif token.kind == "ORDINAL" and before.text.casefold() in _ANY:
            out[at] = token.as_("FILLER")
    return replace(line, tokens=tuple(out)) if tuple(out) != line.tokens else line


def _is_relative(tokens: list[Token], at: int) -> bool:
    before, token = tokens[at - 1], tokens[at]
    if token.text.casefold() not in _RELATIVE or token.kind not in ("DET", "CUE") or before.kind not in _THING:
        return False
    named = before.kind == "LENS" or (at > 1 and tokens[at - 2].kind in _NAMES)
    return named and at + 1 < len(tokens) and tokens[at + 1].kind in _TOLD_ON
