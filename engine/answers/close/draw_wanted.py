"""How far a bellows is drawn for the magnification wanted, and whether it goes so far."""

from __future__ import annotations

from engine.answers.close.drawn import BELLOWS, draw_of
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import ranged, small_mm, times, trimmed
from engine.base.interval import Interval
from grammar.questions import Question


def draw_wanted(needed: Interval, wanted: float, question: Question, knowledge: Knowledge) -> Told:
    """The draw of the first bellows told that makes its extension as long as `needed`; nothing where none is told.

    A bellows between a lens and a body of one mount adds its whole length. Source: lengths add.
    """
    draws = ((thing, row) for thing in question.adapters if (row := draw_of(thing, question, knowledge)))
    piece, draw = next(draws, (None, None))
    if piece is None or draw is None:
        return Told()
    low, high = draw
    size, needs = times(wanted), ranged(needed, lambda value: f"{trimmed(value, 1 if needed.is_exact else 0)} mm")
    told = piece.thickness_mm is not None or piece.kind == "adapter"
    its = f"{'its' if told else 'the usual'} {trimmed(low, 1)} to {trimmed(high, 1)} mm"
    if low <= needed.least and needed.greatest <= high:
        text = f"Drawn to {needs} the {BELLOWS} gives {size}: within {its}, so it is long enough."
    elif needed.least > high:
        lacks = small_mm(needed.nominal - high)
        text = f"{size} wants {needs} of draw, beyond {its}: put about {lacks} of tube between."
    elif needed.greatest < low:
        text = f"{size} wants {needs} of draw, and {its} are too long even shut: it comes out larger. Take a tube."
    else:
        text = f"{size} wants {needs} of draw, of {its}: it may do, set it by the ruler in the picture."
    return Told((Line("head", text),), (Quantity("helicoid_setting_mm", needed, f"{BELLOWS}, {size}"),))
