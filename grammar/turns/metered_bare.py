"""A shutter as it was right without the tubes, bellows or glass of before: '1/125 was right without them, now?'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.hearing import Heard
from grammar.questions import Question
from grammar.things.casting import DRAWN, OPTICAL
from grammar.words.groups import BARE_SO, METERED, RESULTS
from grammar.words.tokens import Token

_TIME: Final = "SHUTTER"
_NO: Final = "no"
_SPEED: Final = "iso"
_OTHERS: Final = (_SPEED, "frame_rate", "filter_thread", "stops")  # of these something else is asked
_ND: Final = ("nd", "nd-or-filter", "which-stop")


def metered_bare(heard: Heard, before: Question) -> str | None:
    """As a meter beside the camera would have told it; None where no lens stands out, or another scene is told."""
    tokens, told = heard.line.tokens, heard.readings.values.keys()
    times = [one for one in tokens if one.kind == _TIME]
    drawn = any(one.piece in DRAWN for one in before.adapters) or before.said("magnification") is not None
    glass = [one for one in before.adapters if one.piece in OPTICAL and one.factor is not None]
    cast = heard.cast
    parts = [part for part in (*cast.lenses, *cast.bodies, *cast.frames) if not part.is_bare]
    named = [part for part in parts if not part.is_stop_alone]
    # 'ISO 200, 1/60 was right without' is one exposure, whose speed stays
    without = any(BARE_SO in one.groups for one in tokens)
    others = named or any(key in told for key in _OTHERS if key != _SPEED or not without) or any(map(heard.tells, _ND))
    if len(times) != 1 or not (drawn or len(glass) == 1) or others or before.said("light") is not None:
        return None
    if not _is_bare(tokens):
        return None
    if not drawn:
        piece = (glass[0].piece or "").replace("-", " ")
        return f"what shutter speed does {times[0].text} become with the {glass[0].factor:g}x {piece}"
    stop = heard.readings.f_number or next((part.f_number for part in parts), None)
    at = f" at f/{stop:g}" if stop is not None else ""
    return f"light meter said {times[0].text}{at}, what shutter"


def _is_bare(tokens: tuple[Token, ...]) -> bool:
    """Whether it was right without, or is only asked what it becomes."""
    without = any(BARE_SO in one.groups for one in tokens)
    none = any(one.text.casefold() == _NO and two.kind == "PIECE" for one, two in pairwise(tokens))
    beside = any(METERED in one.groups for one in tokens)
    return without or none or beside or any(RESULTS in one.groups for one in tokens) or _leads_on(tokens)


def _leads_on(tokens: tuple[Token, ...]) -> bool:
    """'from 1/125 to what'."""
    words = [one.text.casefold() for one in tokens]
    return words[:1] == ["from"] and words[-2:] == ["to", "what"]
