"""The values that hold in a follow-up: those told now, and those of before that still do."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import EXPOSURE_ND
from grammar.questions import Question
from grammar.turns.lit_again import lit_again
from grammar.turns.seat_held import without_its_error
from grammar.turns.sticking import FILLED, kept_values

_ISO: Final = "iso"
_FAR_SCENE: Final = "far-scene"  # cue of what is filmed or far away


def values_now(heard: Heard, said: Question, now: Question, before: Question) -> dict[str, str]:
    """`said`: what is told now; `now`: the same of the lenses, bodies and kept pieces that it is about."""
    kept = kept_values(now.intent, now.lenses, before, said)
    if now.intent == EXPOSURE_ND and heard.tells(_FAR_SCENE):
        kept = {key: text for key, text in kept.items() if key not in FILLED}  # the coin of before is not filmed
    if now.intent == EXPOSURE_ND and heard.tells("iso-asked") and said.said(_ISO) is None:
        kept.pop(_ISO, None)  # 'which ISO for 1/60 then'
    if (said.said("numbers") or "") in {f"{lens.f_number:g}" for lens in now.lenses if lens.f_number is not None}:
        said = said.without("numbers")  # 'the 1.4' is that lens
    values = {**lit_again(heard, now.intent, before), **kept, **dict(said.values)}
    return without_its_error(values, before, now)
