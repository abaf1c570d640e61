"""What a focal length and an f-number are like on full frame, and what glass and format do to them and do not."""

from __future__ import annotations

from math import log2, radians, sqrt, tan
from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import nearest
from engine.answers.parts.said import focals, interval, mentions, number, stop
from engine.answers.parts.usual_glass import with_usual_factor
from engine.answers.parts.wording import trimmed
from engine.answers.picture.beside_view import beside_view
from engine.answers.picture.circles import glass_factor
from engine.answers.picture.clean_view import clean_view
from engine.answers.picture.crop_factors import Crop, crop_factor_of, crop_of, crops_of, exposure_stays, net_crops
from engine.answers.picture.crop_or_glass import against_full_frame, crop_or_glass
from engine.answers.picture.each_glass import behind_either, each_with_its_glass
from engine.answers.picture.either_focal import (
    is_of_its_own,
    of_its_frame_on_full,
    of_one_lens,
    on_its_own_frame,
    set_against_full,
)
from engine.answers.picture.field_there import focal_for_field, seen_there
from engine.answers.picture.frame_modes import mode_unknown, modes_told
from engine.answers.picture.glass_light import light_of_glass
from engine.answers.picture.matching import asks_to_match, each_on_its_own, has_that_view, sets_formats_apart, to_match
from engine.answers.picture.multiplied import of_any_lens, stops_first
from engine.answers.picture.normal import normal_view, view_kept
from engine.answers.picture.same_depth import same_depth
from engine.answers.picture.stops_by_crop import likened, stops_by_crop
from engine.answers.picture.views_apart import views_apart
from engine.base.compact import compact, replace
from engine.base.interval import Interval, is_known
from engine.physics import coverage
from grammar.kinds import EXPOSURE_ND
from grammar.questions import Question

MOST_DEG = 175.0  # no lens of this kind sees more
MATCH = "match"  # the topic where the lens that gives a view is asked for, and not the view that a lens gives
EXAMPLE_STOP = 4.0  # what crop does to an f-number is shown on f/4 where none is told
_NEARLY_ONE: Final = 0.02  # a crop factor so near to 1 changes nothing
CROPPED = ("aps-c-1.6", "aps-c-1.5", "four-thirds")


@compact
class _View:
    """What is told of a view. `factor`: of all glass; `is_likened`: whether the stop is one that a crop likens."""

    question: Question
    knowledge: Knowledge
    factor: float | None
    lenses: tuple[float, ...]
    at: float | None
    is_likened: bool
    crops: list[Crop]


def equivalent(question: Question, knowledge: Knowledge) -> Answer:
    """Focal length and f-number behind the glass, the crop factors, and the equivalents by each."""
    question = set_against_full(question, knowledge.catalogue)
    asked, one = question, of_one_lens(question)
    question, note = with_usual_factor(one, knowledge.catalogue)
    factor = glass_factor(question, knowledge.catalogue)
    each = views_apart(asked, knowledge.catalogue)
    each = each_on_its_own(question, knowledge.catalogue) if factor is None and not each.lines else each
    if each.lines:
        stops = {lens.f_number for lens in question.lenses}
        if factor is None and len(stops) == 1 and mentions(question, "exposure-same"):
            each = exposure_stays(stops.pop()) + each
        return _answered(question, question, each.lines, each)
    view = _view_told(question, factor, knowledge)
    worn = each_with_its_glass(question, view.crops, knowledge.catalogue) + behind_either(question, view.crops)
    if worn.lines:
        return _answered(question, asked, worn.lines, worn)
    told, view = _with_crops(_of_lenses(view), view)
    views = [focal * (factor or 1.0) * crop.by_diagonal for focal in view.lenses for crop in view.crops]
    told = beside_view(question, views, knowledge) + _asked_first(_with_clean(told, view), view)
    own = factor is None and is_of_its_own(asked, one)
    told = (on_its_own_frame if own else of_its_frame_on_full)(one, knowledge.catalogue) + told
    unknown = mode_unknown(question)
    lines = [*told.lines, *note.lines, *([Line("ask", unknown)] if unknown else [])]
    if len(lines) < (1 if told.lines and view.crops else 2) or mentions(question, "of-light"):
        rows = nearest(question.text, knowledge.catalogue, 1)
        lines += [Line("text", f"{row.topic[:1].upper()}{row.topic[1:]}: {row.says}") for row in rows]
    return _answered(question, asked, tuple(lines), told)


def _answered(question: Question, asked: Question, lines: tuple[Line, ...], told: Told) -> Answer:
    return Answer(question.text, "crop-equivalent", ANSWERED, lines, question=asked, quantities=told.quantities)


def _view_told(question: Question, factor: float | None, knowledge: Knowledge) -> _View:
    by_crop = likened(question, knowledge.catalogue)
    lenses = focals(question) or _ends_of_zoom(question)
    at = by_crop[0] if by_crop is not None else stop(question)
    return _View(question, knowledge, factor, lenses, at, by_crop is not None, crops_of(question, knowledge))


def _of_lenses(view: _View) -> Told:
    """What each lens becomes behind the glass, and what it is like on each frame."""
    told = _glass(view.question, view.factor, view.lenses, view.at)
    for focal in view.lenses:
        for crop in view.crops:
            told += _focal_on(focal * (view.factor or 1.0), crop, len(view.lenses) > 1)
        told += _behind(focal, view.factor)
    return told + same_depth(view.question, view.at, view.knowledge.catalogue) if view.at is not None else told


def _with_crops(told: Told, view: _View) -> tuple[Told, _View]:
    """With the stop on each frame and the crop factors, the net one first where that is asked for."""
    question, crops, factor, at = view.question, view.crops, view.factor, view.at
    of_stop = _stop_on(at, factor, crops) if at is not None and not view.is_likened else Told()
    stop_first = question.lens is not None and (not view.lenses or mentions(question, "which-stop"))
    if stop_first:
        told = _first_said(of_stop) + told
    net, net_asked = net_crops(crops, factor), mentions(question, "net-crop")
    if net_asked and not view.lenses:
        told = net + told
    elif net_asked and crops:
        told = _first_said(crop_factor_of(crops[0])) + told
    for crop in crops:
        told += crop_factor_of(crop)
    if view.lenses or not net_asked:
        told += net
    if at is None and not view.lenses and mentions(question, "crop-or-exposure"):
        crops = crops or [crop_of(view.knowledge.catalogue.formats[name]) for name in CROPPED]
        of_stop = _stop_on(EXAMPLE_STOP, factor, crops)
        return stops_first(of_stop) + told, replace(view, crops=crops)
    told += of_stop if not stop_first or at is None else Told()
    return told, replace(view, crops=crops)


def _with_clean(told: Told, view: _View) -> Told:
    """With what the circle leaves clean, first where a crop of a circle that is told is asked for."""
    clean = clean_view(view.question, view.crops, view.knowledge.catalogue)
    if view.question.said("circle") and mentions(view.question, "crop"):
        heads_first = sorted(clean.lines, key=lambda line: line.kind != "head")
        return Told(tuple(heads_first), clean.quantities) + told
    return told + clean


def _asked_first(told: Told, view: _View) -> Told:
    """What is asked for in so many words before the rest: an exposure, a match, what is seen so far away."""
    question, facts, crops = view.question, view.knowledge.catalogue, view.crops
    if not view.lenses:
        told = normal_view(question, crops, facts) + _of_angle(question, crops) + told
    if not view.lenses and view.factor is not None and mentions(question, "full-frame-word"):
        for crop in crops:
            told = against_full_frame(crop, view.factor) + told
    told = view_kept(question, [one * (view.factor or 1.0) for one in view.lenses], crops, facts) + told
    told = of_any_lens(question, facts) + told if not view.lenses else told
    if view.factor is not None and _of_exposure(question):
        told = light_of_glass(question, view.knowledge) + told
    elif (crops or mentions(question, "crop")) and _of_exposure(question):
        told = exposure_stays(view.at) + told
    told = stops_by_crop(question, facts) + told
    told = focal_for_field(question, view.knowledge) + seen_there(question, view.knowledge) + told
    apart = (
        view.factor is None
        and not modes_told(question)
        and (sets_formats_apart(question, facts) or asks_to_match(question, facts))
    )
    if (question.topic == MATCH and not has_that_view(question, view.lenses, crops)) or apart:
        told = to_match(question, view.lenses, view.at, crops, facts, view.factor) + told
    if mentions(question, "either-or") or question.topic == "better":
        told = crop_or_glass(question) + told
    return told


def _of_exposure(question: Question) -> bool:
    """Whether it is the exposure that a crop is asked about: in so many words, or after an exposure was worked out."""
    went_on = question.follows and question.prior is not None and question.prior.intent == EXPOSURE_ND
    lit = question.follows and mentions(question, "lit-less")
    return (went_on and not mentions(question, "of-view")) or lit or mentions(question, "of-exposure")


def _of_angle(question: Question, crops: list[Crop]) -> Told:
    """The focal length that sees the angle told, across the width and across the diagonal of each format."""
    angle, told = number(question, "angle"), Told()
    for crop in crops if angle is not None and 0 < angle < MOST_DEG else ():
        assert angle is not None
        sides = {"diagonal": coverage.FULL_FRAME_DIAGONAL_MM / crop.by_diagonal}
        if crop.by_width is not None:
            sides = {"width": coverage.FULL_FRAME_WIDTH_MM / crop.by_width, **sides}
        found = {name: side / 2 / tan(radians(angle) / 2) for name, side in sides.items()}
        ways = " or ".join(f"{trimmed(value, 1)} mm across the {name}" for name, value in found.items())
        rows = [Quantity("focal_length_mm", Interval.exact(v), f"{crop.name}, {name}") for name, v in found.items()]
        told += Told((Line("head", f"{angle:g} degrees on {crop.name} want {ways}."),), tuple(rows))
    return told


def _ends_of_zoom(question: Question) -> tuple[float, ...]:
    """The focal lengths that a zoom goes from and to."""
    told = interval(question, "zoom")
    return (told.least, told.greatest) if told is not None else ()


def _glass(question: Question, factor: float | None, lenses: tuple[float, ...], at: float | None) -> Told:
    """What the lens becomes behind the glass, and by how many stops it is slower or faster."""
    if factor is None:
        return Told()
    stops = abs(2 * log2(factor))
    way = "slower" if factor > 1 else "faster"
    lens = " to ".join(f"{trimmed(focal, 1)} mm" for focal in lenses) + (f" f/{trimmed(at, 2)}" if at else "")
    made = " to ".join(f"{trimmed(focal * factor, 1)} mm" for focal in lenses)
    made += f" f/{trimmed(at * factor, 2)}" if at else ""
    opening = f"{lens.strip()} with {trimmed(factor, 2)}x is {made.strip()}" if made else ""
    opening = opening or f"Glass together {trimmed(factor, 2)}x makes a 50 mm lens one of {trimmed(50 * factor, 1)} mm"
    text = f"{opening}: {trimmed(stops, 2)} stops {way}, and the circle grows or shrinks alike."
    pieces = [thing.factor for thing in question.adapters if thing.factor]
    if len(pieces) > 1 and min(pieces) > 1:
        text += " The faults of both add."
    elif len(pieces) > 1:
        text += " They do not cancel unless the factors multiply to 1, and the faults of both add."
    rows = [Quantity("light_difference_stops", Interval.exact(stops), f"{factor:g}x")]
    return Told((Line("head", text),), tuple(rows))


def _behind(focal: float, factor: float | None) -> Told:
    """The focal length as it is, or behind the glass: no format changes it."""
    case = None if factor is None else f"with {factor:g}x"
    value = focal * (factor or 1.0)
    text = (
        f"It is {trimmed(focal, 1)} mm on any format: the same lens, the field of any {trimmed(focal, 1)} mm on that"
        " sensor."
    )
    if factor is not None:
        text = f"{trimmed(focal, 1)} mm x {factor:g} = {trimmed(value, 1)} mm behind the glass."
    return Told((Line("text", text),), (Quantity("focal_length_mm", Interval.exact(value), case),))


def _focal_on(focal: float, crop: Crop, several: bool) -> Told:
    lens = f"{trimmed(focal, 1)} mm on " if several else ""
    diagonal = focal * crop.by_diagonal
    rows = [Quantity("equivalent_focal_mm", Interval.exact(diagonal), f"{lens}{crop.name}")]
    text = f"{trimmed(focal, 1)} mm on {crop.name} frames like {diagonal:.0f} mm on full frame"
    if crop.by_width is not None:
        rows.append(
            Quantity("equivalent_focal_mm", Interval.exact(focal * crop.by_width), f"{lens}{crop.name}, by width")
        )
        text += f" ({focal * crop.by_width:.0f} mm by width)"
        text += _view(focal, crop, rows, f"{lens}{crop.name}")
    return Told((Line("head", f"{text}."),), tuple(rows))


def framed(question: Question, knowledge: Knowledge) -> Told:
    """What each lens that is named frames like on the frames that are, where they are not full frame."""
    lenses, told = focals(question), Told()
    for crop in crops_of(question, knowledge):
        if abs(crop.by_diagonal - 1.0) > _NEARLY_ONE:
            for focal in lenses:
                told += _focal_on(focal, crop, len(lenses) > 1)
            told += crop_factor_of(crop)
    return told


def _view(focal: float, crop: Crop, rows: list[Quantity], case: str) -> str:
    """The angle of view at infinity, appended to the numbers too."""
    assert crop.by_width is not None
    diagonal, width = coverage.FULL_FRAME_DIAGONAL_MM / crop.by_diagonal, coverage.FULL_FRAME_WIDTH_MM / crop.by_width
    sides = {"width": width, "height": sqrt(max(diagonal**2 - width**2, 0.0)), "diagonal": diagonal}
    for name, side in sides.items():
        angle = coverage.angle_of_view_deg(Interval.exact(side), Interval.exact(focal), Interval.exact(0.0))
        if not is_known(angle):
            return ""
        rows.append(Quantity(f"angle_of_view_{name}_deg", angle, case))
    degrees = [row.value.nominal for row in rows[-len(sides) :]]
    return f"; angle of view {degrees[0]:.0f} x {degrees[1]:.0f} degrees, {degrees[2]:.0f} across the diagonal"


def _stop_on(at: float, factor: float | None, crops: list[Crop]) -> Told:
    behind = at * (factor or 1.0)
    lines, rows = [], []
    if factor is not None:
        lines.append(Line("head", f"f/{trimmed(at, 1)} x {factor:g} = f/{trimmed(behind, 2)} for exposure."))
        rows.append(Quantity("f_number", Interval.exact(behind), f"with {factor:g}x"))
    for crop in crops:
        equal, light = behind * crop.by_diagonal, abs(2 * log2(crop.by_diagonal))
        case = f"f/{trimmed(behind, 2)}, {crop.name}"
        rows.append(Quantity("equivalent_f_number", Interval.exact(equal), case))
        rows.append(Quantity("light_difference_stops", Interval.exact(light), f"{crop.name} squared"))
        lines.append(Line("fact", (
            f"f/{trimmed(behind, 2)} on {crop.name} has the depth of field of f/{trimmed(equal, 2)} on full frame; "
            f"exposure stays f/{trimmed(behind, 2)}. Squared ({trimmed(crop.by_diagonal**2, 2)}x, "
            f"{trimmed(light, 2)} stops) is the "
            "total light, or ISO alike"
        ), 1))  # fmt: skip
    return Told(tuple(lines), tuple(rows))


def _first_said(told: Told) -> Told:
    """The same with its first line as the answer itself: of a lens told by its stop alone it is what is asked."""
    first = told.lines[0] if told.lines else None
    if first is None or first.kind == "head":
        return told
    return Told((Line("head", f"{first.text}."), *told.lines[1:]), told.quantities)
