"""A lens reversed on a body: what magnification it gives, where the subject stands, and what is not known."""

from __future__ import annotations

from collections.abc import Iterator

from engine.answers.close.close_rows import Shown
from engine.answers.close.coupled import is_turned
from engine.answers.close.depth_rows import close_up
from engine.answers.close.draw_wanted import draw_wanted
from engine.answers.close.drawn import is_drawn
from engine.answers.close.image_side import image_told_mm
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, Missing, body_side, lens_side
from engine.answers.parts.said import number
from engine.answers.parts.wording import area, ranged, small_mm, times, trimmed
from engine.answers.picture.blur import blur_of
from engine.answers.picture.filling import magnification_filling
from engine.answers.picture.moved_out import extension_mm
from engine.answers.seat.distances import Distances, distances_of
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import closeup, focus
from grammar.questions import Question, Thing

RULER = "Photograph a ruler: the sensor's width over what fills it is the magnification, whatever is assumed here."
UNTOLD = "Turned round, a lens loses 2 log2(1 + m p) stops: m is its magnification, p exit pupil over entrance pupil."
WHICH_BODY = "On which body? Its register is most of what stands between lens and sensor."


def reversed_alone(lens: Distances, question: Question, shown: Shown, knowledge: Knowledge) -> Told:
    """x = front glass to sensor less a, m = x/f; the subject stands register + f/m before the rear flange.

    Source: optics model, z = f*f/x with the two focal points of the lens exchanged.
    """
    focal = lens.focal.nominal
    image = image_told_mm(question)
    if image is not None and image > focal and number(question, "magnification") is None:
        return _by_image(lens, image) + Told((Line("ask", RULER),))
    between = extension_mm(question, knowledge.catalogue) or 0.0
    drawn = next((thing.thickness_mm for thing in question.adapters if is_drawn(thing)), None)
    name = f"{trimmed(focal, 1)} mm"
    lines = [Line("head", (
        f"A {name} lens reversed: what is put between does not count from its infinity position. Front glass to sensor"
        " counts, less how far its front focal point lies before that glass."
    ))]  # fmt: skip
    more = f"each further {trimmed(focal / 10, 1)} mm between adds 0.1x"
    wanted = number(question, "magnification") or magnification_filling(question, knowledge.catalogue)
    body = _body_of(question, knowledge)
    if wanted is not None:
        told = _for_magnification(lens, wanted)
        drawn_to = _by_bellows(lens, wanted, body, question, knowledge)
        lines, told = [*drawn_to.lines, *lines], Told(told.lines, drawn_to.quantities + told.quantities)
        if isinstance(body, BodySide):
            for length in drawn or ():
                told += _on_body(lens, body, length, shown)
    elif isinstance(body, BodySide) and is_known(body.mount.register_mm):
        # a bellows at both ends of its draw
        told = Told()
        for length in drawn or (between,):
            told += _on_body(lens, body, length, shown)
    else:
        stands = f"with the {small_mm(between)} between, " if between else ""
        text = f"{stands}its magnification is not known without the body; {more}"
        told = Told((Line("fact", text, 1), Line("ask", WHICH_BODY)))
        more = ""
    lines += told.lines
    if more:
        lines.append(Line("fact", more, 1))
    lines += _room(question, knowledge)
    lines.append(Line("ask", RULER))
    return Told(tuple(lines), told.quantities)


def light_reversed(question: Question, knowledge: Knowledge) -> Told:
    """What a lens turned round on a body costs in light, whose magnification no extension tells."""
    if any(question.said(key) for key in ("light", "shutter", "iso", "frame_rate")):
        return Told()
    lens = distances_of(question.lens, knowledge.catalogue) if question.lens is not None else None
    body = _body_of(question, knowledge)
    if lens is None or not isinstance(body, BodySide):
        return Told((Line("text", UNTOLD),))
    told = _on_body(lens, body, extension_mm(question, knowledge.catalogue) or 0.0, Shown(knowledge.catalogue))
    lost = tuple(row for row in told.quantities if row.name == "light_difference_stops")
    if not lost or not isinstance(lost[0].value, Interval):
        return Told((Line("text", UNTOLD),))
    text = f"{ranged(lost[0].value, lambda value: f'{value:.1f}')} stops of light lost, the lens turned round"
    return Told((Line("head", f"{text}, by its magnification."), Line("ask", RULER)), told.quantities)


def deep_reversed(at: float, form: Format, question: Question, knowledge: Knowledge) -> Iterator[Told]:
    """How much is sharp through a lens turned round on a body, at both ends of what its magnification may be."""
    lens = distances_of(question.lens, knowledge.catalogue) if question.lens is not None else None
    body = _body_of(question, knowledge)
    if question.lens is None or not is_turned(question.lens) or lens is None or not isinstance(body, BodySide):
        return
    told = _on_body(lens, body, extension_mm(question, knowledge.catalogue) or 0.0, Shown(knowledge.catalogue))
    sizes = [row.value for row in told.quantities if row.name == "magnification" and isinstance(row.value, Interval)]
    if not sizes or not sizes[0].least > 0 or question.distance_mm is not None:
        return
    head = "Turned round it draws by its front glass to the sensor, and by no extension from infinity:"
    out = Told((Line("head", head),)) + told
    blur = Interval.exact(blur_of(question, form, knowledge))
    for m in dict.fromkeys((sizes[0].least, sizes[0].greatest)):
        out += close_up(m, at, blur, form, question.feet)
    yield out + Told((Line("ask", RULER),))


def _body_of(question: Question, knowledge: Knowledge) -> BodySide | Missing:
    """The body told; else that of the mount that the tubes or the lens itself are told by, which is their system's."""
    if question.body is not None:
        return body_side(question.body, knowledge.catalogue)
    named = [piece.rear or piece.front for piece in question.adapters] + [lens.ids for lens in question.lenses]
    ids = next((one for one in named if one and one[0] in knowledge.catalogue.mounts), ())
    return body_side(Thing("mount", ids[:1], "") if ids else None, knowledge.catalogue)


def _on_body(lens: Distances, body: BodySide, between: float, shown: Shown) -> Told:
    register = body.mount.register_mm
    if not is_known(lens.offset) or not is_known(register):
        return Told()
    behind = register + Interval.exact(between)
    x = (behind - lens.offset).at_least(0.0)
    m = focus.magnification(lens.focal, x)
    if not is_known(m):
        return Told()
    rows = [Quantity("magnification", m, f"reversed{_with(between)}")]
    plain = behind.nominal / lens.focal.nominal - 1.0
    about = ""
    if plain > 0:
        about = f"about {times(plain)} taken for a thin glass at its front rim, "
        rows.append(Quantity("magnification", Interval.exact(plain), f"thin glass{_with(between)}"))
    put = f" and {small_mm(between)} between" if between else ", with no more than a thin ring between"
    text = (
        f"{small_mm(register.nominal)} of {body.mount.designation} register{put}: {about}{ranged(m, times)} depending"
        " on where its front focal point lies, which is assumed by construction"
    )
    lines = [Line("fact", text, 1)]
    if shown.form is not None and m.greatest > 0:
        least = shown.form.width_mm / m.greatest, shown.form.height_mm / m.greatest
        lines.append(Line("fact", f"smallest field {area(*least, shown.feet)} on {shown.form.name}", 2))
        rows.append(
            Quantity("field_width_mm", Interval.exact(least[0]), f"reversed{_with(between)}, at most magnified")
        )
    lost = focus.light_lost_stops(m, closeup.reversed_pupil(lens.likely_pupil))
    if is_known(lost):
        lines.append(Line("fact", f"{ranged(lost, lambda value: f'{value:.1f}')} stops of light lost", 2))
        rows.append(Quantity("light_difference_stops", lost, f"reversed{_with(between)}"))
    return Told(tuple(lines), tuple(rows))


def _with(between: float) -> str:
    return f", {small_mm(between)} between" if between else ""


def _by_bellows(
    lens: Distances, wanted: float, body: BodySide | Missing, question: Question, knowledge: Knowledge
) -> Told:
    """Whether a bellows told is long enough: what stands between is front glass to sensor, less the register."""
    if not isinstance(body, BodySide) or not is_known(body.mount.register_mm) or not is_known(lens.offset):
        return Told()
    needed = (lens.offset + lens.focal * wanted - body.mount.register_mm).at_least(0.0)
    return draw_wanted(needed, wanted, question, knowledge)


def _for_magnification(lens: Distances, wanted: float) -> Told:
    """Image distance for a magnification, f(1 + m), and front glass to sensor, a + m*f."""
    case = f"m = {trimmed(wanted, 2)}"
    image = lens.focal * (1.0 + wanted)
    text = f"{times(wanted)} wants its image {small_mm(image.nominal)} behind the principal plane that faces the sensor"
    rows = [Quantity("image_distance_mm", image, case)]
    if is_known(lens.offset):
        away = (lens.offset + lens.focal * wanted).at_least(0.0)
        text += f", so its front glass {ranged(away, small_mm)} from the sensor"
        rows.append(Quantity("image_distance_mm", away, f"{case}, from the front glass"))
    return Told((Line("fact", text, 1),), tuple(rows))


def _by_image(lens: Distances, image_mm: float) -> Told:
    """What it draws where its image distance is told, m = v/f - 1: whichever way round, that is all it hangs on."""
    m = closeup.magnification_at_image_distance(lens.focal, Interval.exact(image_mm))
    if not is_known(m):
        return Told()
    name = f"A {trimmed(lens.focal.nominal, 1)} mm lens"
    told = f"with its principal plane {small_mm(image_mm)} from the sensor draws {times(m.nominal)}"
    text = f"{name} {told}: image distance over focal length, less 1, whichever way round it stands."
    rows = [Quantity("magnification", m, f"image {small_mm(image_mm)} behind")]
    lines = [Line("head", text)]
    lost = focus.light_lost_stops(m, closeup.reversed_pupil(lens.likely_pupil))
    if is_known(lost):
        lines.append(Line("fact", f"{ranged(lost, lambda value: f'{value:.1f}')} stops of light lost", 1))
        rows.append(Quantity("light_difference_stops", lost, f"image {small_mm(image_mm)} behind"))
    return Told(tuple(lines), tuple(rows))


def _room(question: Question, knowledge: Knowledge) -> list[Line]:
    """Where the subject stands: known by the lens's own mount, whatever is assumed of its planes."""
    side = lens_side(question.lens, knowledge.catalogue)
    if not isinstance(side, LensSide) or not is_known(side.mount.register_mm):
        return [Line("fact", "the subject stands the lens's own register, plus f over m, before its rear flange", 1)]
    register = small_mm(side.mount.register_mm.nominal)
    return [Line("fact", f"the subject stands {register} of register, plus f over m, before its rear flange", 1)]
