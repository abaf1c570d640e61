"""What a bellows draw may mean, and how much longer is to be exposed behind it: 'at 160 mm of draw, 1/30 becomes?'."""

from __future__ import annotations

from math import log2

from engine.answers.close.close_rows import light_rows
from engine.answers.close.drawn import BELLOWS, draws
from engine.answers.close.image_side import image_told_mm
from engine.answers.exposure.lighting import seconds, shutters_s
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, number, stop
from engine.answers.parts.wording import trimmed
from engine.answers.picture.moved_out import extension_mm
from engine.answers.seat.distances import distances_of
from engine.base.interval import Interval, is_known
from engine.physics import exposure, focus
from grammar.questions import Question
from grammar.things.casting import DRAWN

_OF_SCENE = ("light", "iso", "frame_rate")  # keys of a setting that is worked out anew by itself


def drawn_so(image_mm: float, question: Question) -> list[tuple[str, float]]:
    """The other sense of a bellows draw told, with how far the lens is drawn by it: beyond infinity; none else."""
    told = mentions(question, "bellows-draw") or any(
        one.piece == BELLOWS and one.is_of_one_length for one in question.adapters
    )
    return [(f"if that is {trimmed(image_mm, 2)} mm drawn beyond infinity", image_mm)] if told else []


def longer_so_far(magnification: float) -> str:
    """By what an exposure grows, in words: the square of how much farther out the lens stands, for even pupils."""
    return f"give {trimmed((1 + magnification) ** 2, 2)} times the exposure"


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


def lost_by_extension(question: Question, knowledge: Knowledge) -> Told:
    """What extension costs the lens in light, as told by lens to image too; of a bellows at both ends of its draw."""
    x = extension_mm(question, knowledge.catalogue)
    lens = distances_of(question.lens, knowledge.catalogue) if question.lens is not None else None
    if lens is None:
        return Told()
    drawn = any(piece.piece in DRAWN for piece in question.adapters)
    image = image_told_mm(question) if drawn else number(question, "image_distance")
    if image is not None and image > lens.focal.nominal:
        x = image - lens.focal.nominal
        ends = [(f"{trimmed(image, 1)} mm from lens to image", x), *drawn_so(image, question)]
    else:
        ends = draws(question, knowledge) or ([] if x is None else [(f"{trimmed(x, 2)} mm of extension", x)])
    told = Told()
    for case, length in ends:
        magnified = focus.magnification(lens.focal, Interval.exact(length))
        if is_known(magnified):
            part = light_rows(magnified.nominal, stop(question), case, lens)
            lead, more = f"{trimmed(lens.focal.nominal, 1)} mm, {case}:", longer_so_far(magnified.nominal)
            told += Told((), (Quantity("magnification", magnified, case),))
            told += Told(tuple(Line("head", f"{lead} {line.text}: {more}.") for line in part.lines), part.quantities)
            told += longer_by(magnified.nominal, case, question)
    return told + (_if_to_film(lens.focal.nominal, question) if image is None else Told())


def _if_to_film(focal_mm: float, question: Question) -> Told:
    """The other sense of a bellows told by one length and no body: from the lens to the film."""
    drawn = [one.thickness_mm for one in question.adapters if one.piece == BELLOWS and one.is_of_one_length]
    lengths = [ends[0] for ends in drawn if ends is not None]
    if len(lengths) != 1 or question.bodies or lengths[0] <= focal_mm:
        return Told()
    factor = (lengths[0] / focal_mm) ** 2
    text = f"if the {trimmed(lengths[0], 1)} mm are from lens to film: {trimmed(factor, 2)} times the exposure"
    return Told((Line("fact", f"{text}, {log2(factor):.1f} stops", 1),))
