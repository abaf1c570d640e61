"""A lens of before told once more with another stop: it is that one, closed so far."""

from __future__ import annotations

from grammar.hearing import Heard
from grammar.kinds import CLOSE_UPS
from grammar.questions import Question, Thing


def closed_again(heard: Heard, said: Question, before: Question) -> Thing | None:
    """'ok the 85, hyperfocal f8' where an 85 mm f/1.4 was told: that one, closed so far; 'a 85 f8' is another."""
    parts = heard.cast.lenses
    if len(parts) != 1 or len(said.lenses) != 1 or said.intent not in CLOSE_UPS or parts[0].f_number is None:
        return None
    part, stop = parts[0], parts[0].f_number
    another = any(one.text.casefold() in ("a", "an", "another") for one in heard.line.tokens) or part.has_mount_or_kind
    of_it = (one for one in (*before.known, *before.lenses) if one.focal_length_mm == part.focal)
    wider = [one for one in of_it if one.f_number is not None and one.f_number < stop]
    return wider[-1] if wider and not another else None
