"""Between which lengths a helicoid or bellows can be set."""

from __future__ import annotations

import re
from typing import Final

from grammar.questions import Thing

_SPAN: Final = re.compile(r"(\d+(?:\.\d+)?) ?(?:mm)? ?(?:\.\.|-|–|to) ?(\d+(?:\.\d+)?)")


def span_of(piece: Thing) -> tuple[float, float] | None:
    """Between which lengths a helicoid or bellows can be set, mm, also where it is set to one now."""
    if piece.thickness_mm is not None and len(set(piece.thickness_mm)) > 1:
        return piece.thickness_mm
    told = _SPAN.search(piece.words)
    return (float(told[1]), float(told[2])) if told and float(told[1]) < float(told[2]) else None
