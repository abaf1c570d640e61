"""Where a far image lies, told by its two ends: '61 mm from shoulder to the window picture'."""

from __future__ import annotations

from typing import Final

from grammar.tokens import Token

_LANDS: Final = "image-lands"  # what a cue tells that speaks of the image of something far
_KEY: Final = "flange-to-image"
_FROM: Final = frozenset(["from", "behind", "between"])
_LEAST_MM: Final = 5.0
_MOST_MM: Final = 400.0


def with_image_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The one length that is told as running from something becomes KEYED, where the image of something far lands."""
    if _LANDS not in told or any(one.kind == "KEYED" and one.value == _KEY for one in tokens):
        return tokens
    found = [at for at in range(len(tokens) - 1) if _runs_from(tokens, at)]
    if len(found) != 1:
        return tokens
    out = list(tokens)
    out[found[0]] = tokens[found[0]].as_("KEYED", value=_KEY, unit="mm")
    return [one.as_("CUE") if one.kind == "MEASURE" and one.value == _KEY else one for one in out]


def _runs_from(tokens: list[Token], at: int) -> bool:
    token, after = tokens[at], tokens[at + 1]
    metric = (token.kind == "LENGTH" and token.unit in ("mm", "cm")) or token.kind in ("NUMBER", "FOCAL")
    if not metric or token.text.isalpha() or after.kind != "PREP" or after.value not in _FROM:
        return False
    return _LEAST_MM <= token.numbers[0] <= _MOST_MM
