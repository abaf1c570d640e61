"""An EV told for one film speed while another is shot at: 'the meter says EV 12 at ISO 100, shooting ISO 400'."""

from __future__ import annotations

from math import log2
from typing import Final

from grammar.words.tokens import Token

_BASE_ISO: Final = 100.0  # EV is told for it unless another is
_BETWEEN: Final = frozenset(["PREP", "FILLER", "MARK"])


def with_ev_at_its_iso(tokens: list[Token]) -> list[Token]:
    """Where two speeds are told, the one right behind an EV is that of the EV: EV at ISO 100 = EV - log2(S/100)."""
    speeds = {token.numbers[0] for token in tokens if token.kind == "ISO"}
    if len(speeds) != 2:
        return tokens
    for at, token in enumerate(tokens):
        if token.kind != "EV":
            continue
        behind = next((n for n in range(at + 1, len(tokens)) if tokens[n].kind not in _BETWEEN), None)
        if behind is None or tokens[behind].kind != "ISO":
            return tokens
        ev = token.numbers[0] - log2(tokens[behind].numbers[0] / _BASE_ISO)
        told = token.as_("EV", numbers=(ev,))
        return [*tokens[:at], told, *tokens[at + 1 : behind], tokens[behind].as_("CUE"), *tokens[behind + 1 :]]
    return tokens
