"""How much is to be seen from so far away, where a focal length is asked for: '2 m at 10 m', '3 m across at 20 ft'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.motifs import FIELD
from grammar.words.groups import TALL
from grammar.words.tokens import Token

_ASKED: Final = "focal-asked"  # cue of a question for a focal length
_FAR: Final = frozenset(["m", "ft", "cm", "in"])
_AWAY: Final = frozenset(["at", "from", "behind"])  # before a distance
_LEAST_MM: Final = 100.0
_TWO: Final = 2
_ACROSS: Final = "diameter"


def with_fields_wanted(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """Of two lengths that no lens has, the one that no preposition makes a distance becomes KEYED as the field."""
    far = [at for at, one in enumerate(tokens) if one.kind == "LENGTH" and _is_far(one)]
    tall = [at for at in far if TALL in (tokens[at + 1].groups if at + 1 < len(tokens) else ())]
    if len(tall) == 1 and not any(one.kind == "KEYED" and one.value == FIELD for one in tokens):
        field = tokens[tall[0]].as_("KEYED", value=FIELD)  # 'she is 1.2 m tall'
        return [*tokens[: tall[0]], field, tokens[tall[0] + 1].as_("CUE"), *tokens[tall[0] + 2 :]]
    if len(far) != _TWO or any(one.kind == "KEYED" and one.value == FIELD for one in tokens):
        return tokens
    seen = [at for at in far if not _is_away(tokens, at)]
    across = [at for at in seen if _is_across(tokens, at + 1)]
    if len(seen) != 1 or not (_ASKED in told or across):
        return tokens
    out = list(tokens)
    out[seen[0]] = out[seen[0]].as_("KEYED", value=FIELD)
    if across:
        out[across[0] + 1] = out[across[0] + 1].as_("CUE")
    return out


def _is_far(token: Token) -> bool:
    return token.unit in _FAR and token.numbers[0] >= _LEAST_MM


def _is_away(tokens: list[Token], at: int) -> bool:
    """'at 5 m', 'from 20 ft', '12 m away'."""
    led = at > 0 and tokens[at - 1].kind in ("AT", "PREP") and tokens[at - 1].value in _AWAY
    behind = at + 1 < len(tokens) and tokens[at + 1].kind == "MEASURE" and tokens[at + 1].value == "distance"
    return led or behind


def _is_across(tokens: list[Token], at: int) -> bool:
    return at < len(tokens) and tokens[at].kind == "MEASURE" and tokens[at].value == _ACROSS
