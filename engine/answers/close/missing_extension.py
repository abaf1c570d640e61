"""What a lens lacks to the magnification wanted, beyond the one that it has by itself."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import numbers
from engine.answers.parts.wording import listed, small_mm, times, trimmed
from engine.answers.seat.spacing import usual_focals
from engine.base.interval import Interval
from engine.facts.catalogue import Catalogue
from grammar.questions import Question


def missing_extension(focal: float | None, question: Question, facts: Catalogue) -> Told:
    """Of two magnifications told the smaller is the lens's own: x = f * (wanted - own)."""
    told = numbers(question, "magnification")
    if len(told) != 2 or told[0] == told[1]:
        return Told()
    own, wanted = min(told), max(told)
    share = wanted - own
    if focal is None:
        shown = listed([f"{small_mm(one * share)} for {trimmed(one, 1)} mm" for one in usual_focals(facts)])
        text = (
            f"Beyond its own {times(own)} it takes {trimmed(share, 3)} of the focal length to {times(wanted)}: {shown}."
        )
        return Told((Line("head", text),))
    x = Interval.exact(focal * share)
    text = (
        f"{small_mm(x.nominal)} of tube more takes {trimmed(focal, 1)} mm from its own {times(own)} to"
        f" {times(wanted)}, its focus ring at the near end."
    )
    return Told((Line("head", text),), (Quantity("extension_mm", x, f"from {times(own)} to {times(wanted)}"),))
