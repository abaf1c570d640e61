"""Words for a thing that only describe the one behind them: 'mount' in 'E mount body'."""

from __future__ import annotations

from typing import Final

from grammar.words.token_kinds import HEADS
from grammar.words.tokens import Token

_LEADS_KIND: Final = frozenset(["MOUNTWORD", "BODY"])  # before a kind of lens: 'reflex zoom' is no camera


def headed(tokens: list[Token]) -> list[Token]:
    """A head noun right before another one only describes it: 'mount' in 'E mount body'."""
    out = []
    for at, token in enumerate(tokens):
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        own = token.kind == "LENS" and _is_beside_tube(tokens, at)
        leads = (
            not own
            and after is not None
            and (after.kind in HEADS or (after.kind == "KIND" and token.kind in _LEADS_KIND))
        )
        out.append(token.as_("HEADMOD", unit=token.kind) if token.kind in HEADS and leads else token)
    return out


def _is_beside_tube(tokens: list[Token], at: int) -> bool:
    """'105mm lens tube 50mm': each has its length."""
    kinds = [one.kind for one in tokens[max(0, at - 1) : at + 3]]
    return kinds in (["LENGTH", "LENS", "PIECE", "LENGTH"], ["FOCAL", "LENS", "PIECE", "LENGTH"])
