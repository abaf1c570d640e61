"""'how near does it go b4 it ends': a word that is the name of a mount as well, written in a hurry for 'before'."""

from __future__ import annotations

from grammar.words.groups import BEFORE_SHORT, GOES_ON_WITH
from grammar.words.tokens import Token


def without_before(tokens: tuple[Token, ...]) -> tuple[Token, ...]:
    """Such a word becomes one that says nothing of a mount, where what follows goes on with the sentence."""
    return tuple(
        token.as_("CUE", ids=(), value="") if _is_before(tokens, at) else token for at, token in enumerate(tokens)
    )


def _is_before(tokens: tuple[Token, ...], at: int) -> bool:
    token, after = tokens[at], tokens[at + 1] if at + 1 < len(tokens) else None
    named = token.kind in ("MOUNT", "LETTER") and token.text.islower() and BEFORE_SHORT in token.groups
    led = at > 0 and (
        tokens[at - 1].kind == "DET" or tokens[at - 1].text.casefold() == "a"
    )  # 'my b4, the 8x one', 'a b4 i have'
    return named and not led and after is not None and GOES_ON_WITH in after.groups
