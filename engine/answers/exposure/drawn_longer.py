"""What a bellows draw may mean, and how much longer is to be exposed behind it: 'at 160 mm of draw, 1/30 becomes?'."""

from __future__ import annotations

from engine.answers.exposure.lighting import seconds, shutters_s
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import trimmed
from engine.base.interval import Interval, is_known
from engine.physics import exposure, focus
from grammar.questions import Question

_OF_SCENE = ("light", "iso", "frame_rate")  # keys of a setting that is worked out anew by itself


def drawn_so(image_mm: float, question: Question) -> list[tuple[str, float]]:
    """The other sense of a bellows draw told, with how far the lens is drawn by it: beyond infinity; none else."""
    told = mentions(question, "bellows-draw")
    return [(f"if that is {trimmed(image_mm, 2)} mm drawn beyond infinity", image_mm)] if told else []


def longer_by(magnification: float, case: str, question: Question) -> Told:
    """The time that one metered by hand becomes; nothing where a scene is told, which has its own setting."""
    times = shutters_s(question)
    lost = focus.light_lost_stops(Interval.exact(magnification), Interval.exact(1.0))
    if len(times) != 1 or any(question.said(key) for key in _OF_SCENE) or not is_known(lost):
        return Told()
    after = exposure.shutter_behind_s(Interval.exact(times[0]), lost)
    if not is_known(after):
        return Told()
    text = f"{seconds(times[0])} becomes {seconds(after.nominal)}: metered by hand, or before it was drawn out"
    return Told((Line("fact", text, 1),), (Quantity("shutter_s", after, case),))
