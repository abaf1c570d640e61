"""How far from the film a lens is told to stand, of an exposure: 'a 100 mm lens pulled to 150 on the bellows'."""

from __future__ import annotations

import re
from typing import Final

from engine.base.units import MM_PER_INCH
from grammar.kinds import EXPOSURE_ND
from grammar.questions import Question

_DRAW: Final = "bellows-draw"  # what a question mentions that tells of a draw
_TO_FILM: Final = "drawn-to-film"  # and of where the lens then stands before the film
_OF_VIEW: Final = "view-camera-said"
_PULLED: Final = "draw-pulled"
_LEAST_DRAW: Final = 20.0  # mm, of a bellows
_INCHES: Final = ("in-inches", "thou-or-inch")
_BELLOWS: Final = "bellows"
_TUBE: Final = "extension-tube"  # what is always put between
_EXTENSION, _IMAGE = "extension", "image_distance"
_BARE: Final = "numbers"
_TOLD_AS: Final = (_EXTENSION, "flange_to_image", "length", _BARE)  # what such a length is read as elsewhere
_MOST: Final = 8.0  # how many focal lengths a lens is drawn out at most
_FOCALS_OUT: Final = "focal-lengths-out"  # how many focal lengths it stands out
_FILM_SIDE: Final = "film-side"
_SIZE: Final = "magnification"
_TWICE: Final = 2.0
_MM: Final = re.compile(r"\d+(?:\.\d+)?")


def with_image_by_draw(question: Question, before: Question | None) -> Question:
    """The question with a draw longer than the lens as the distance from lens to image, where no body is told.

    So it is of an exposure, and wherever that distance was told before; elsewhere a draw is what is put between.
    """
    question = _in_focal_lengths(_with_draw_pulled(question))
    lens = question.lens
    filmed = question.intent == EXPOSURE_ND or (before is not None and before.said(_IMAGE) is not None)
    if lens is None or not lens.focal_length_mm or question.bodies or not filmed:
        return question
    told = _drawn_mm(_anew(question, before), lens.focal_length_mm)
    if told is None:
        return question
    key, length = told
    rest = tuple(row for row in question.values if row[0] not in (key, _IMAGE) or len(_each(row[1])) > 1)
    away = question.distance_mm if question.distance_mm != length else None
    return question.with_(values=(*rest, (_IMAGE, f"{length:g} mm")), distance_mm=away)


def _in_focal_lengths(question: Question) -> Question:
    """'the film is 1.5 times the focal length behind': how large it then draws, in place of what it was read as."""
    told = [one.number or _TWICE for one in question.mentioned if one.key == _FOCALS_OUT]
    if question.intent != EXPOSURE_ND or not told or not 1 < told[0] <= _MOST or not question.mentions(_FILM_SIDE):
        return question
    rest = tuple(row for row in question.values if row[0] not in (_SIZE, _BARE))
    return question.with_(values=(*rest, (_SIZE, f"{told[0] - 1:g}")))


def _anew(question: Question, before: Question | None) -> Question:
    """The question without the distance kept from the one before, where this one tells how far it is drawn now."""
    kept = before is not None and before.said(_IMAGE) == question.said(_IMAGE)
    if not kept or not question.places(_TO_FILM):
        return question
    return question.with_(values=tuple(row for row in question.values if row[0] != _IMAGE))


def _with_draw_pulled(question: Question) -> Question:
    """'pulled to 150 on the bellows': the bare number that is told as a pull is the draw of a bellows of no length."""
    bare = question.said(_BARE)
    pulled = [one.number for one in question.mentioned if one.key == _PULLED and (one.number or 0) >= _LEAST_DRAW]
    open_yet = any(one.piece == _BELLOWS and one.thickness_mm is None for one in question.adapters)
    if not open_yet or question.said(_EXTENSION) is not None or not pulled or _each(bare) != pulled[:1]:
        return question
    rest = tuple(row for row in question.values if row[0] != _BARE)
    return question.with_(values=(*rest, (_EXTENSION, f"{pulled[0]:g} mm")))


def _drawn_mm(question: Question, focal: float) -> tuple[str, float] | None:
    """How far it is drawn in mm, with the key that holds it; None where nothing longer than the lens is told."""
    if question.mentions(_DRAW):
        told = _MM.match(question.said(_EXTENSION) or "")
        if told is not None and float(told[0]) > focal:
            return _EXTENSION, float(told[0])
    tubes = any(piece.piece == _TUBE for piece in question.adapters)
    bellows = [one.thickness_mm for one in question.adapters if one.piece == _BELLOWS and one.thickness_mm is not None]
    of_view = bool(bellows) and question.mentions(_OF_VIEW)  # of another it is what is put between
    if tubes or question.said(_IMAGE) is not None or not (of_view or question.mentions(_TO_FILM)):
        return None
    found = [(key, _as_mm(key, one, focal, question)) for key in _TOLD_AS for one in _each(question.said(key))]
    found += [("", question.distance_mm)] if question.distance_mm is not None else []
    found += [("", ends[0]) for ends in bellows if ends[0] == ends[1]]  # 'a 20 inch bellows' of one length
    longer = [(key, length) for key, length in found if focal < length <= _MOST * focal]
    return longer[0] if len(longer) == 1 else None


def _each(said: str | None) -> list[float]:
    return [float(one) for one in _MM.findall(said or "")]


def _as_mm(key: str, told: float, focal: float, question: Question) -> float:
    """A bare number shorter than the lens is in inches where those are spoken of: 'a 6 inch lens racked to 9'."""
    bare = key in (_BARE, _EXTENSION) and re.search(rf"\b{told:g} ?[mc]m", question.text, re.IGNORECASE) is None
    inches = bare and told <= focal and question.mentions(*_INCHES)
    return told * MM_PER_INCH if inches else told
