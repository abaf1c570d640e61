"""Close-up lenses told in one description, each by itself: '+1 and +2 close-up lenses', '+1 +2', 'two +2'."""

from __future__ import annotations

from engine.base.compact import replace
from grammar.things.phrases import Noun


def each_power(noun: Noun) -> list[Noun]:
    """A description for each strength told; nothing where there is but one."""
    told, count = noun.all("DIOPTRE"), noun.first("COUNT")
    powers = [token.as_("DIOPTRE") for token in told]  # behind the name of the piece, too: 'close-up lens +1 +2'
    if powers and count is not None:
        powers = [powers[0]] * int(count.numbers[0]) + powers[1:]
    if len(powers) < 2 or noun.heads not in ("", "PIECE"):
        return []
    others = [token for token in noun.mods if token not in (*told, count)]
    tails = [token for token in noun.tails if token not in told]
    first = replace(noun, mods=[*others, powers[0]], tails=tails)
    rest = [replace(noun, mods=[one], tails=[], column=noun.column + n) for n, one in enumerate(powers[1:], start=1)]
    return [first, *rest]
