"""A tape laid once from the front glass to the subject tells where the front focal point lies, for every other tube."""

from __future__ import annotations

from collections.abc import Iterator

from engine.answers.close.close_rows import Shown, assumed_note
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions, number, numbers
from engine.answers.parts.wording import about, ranged, small_mm, times
from engine.answers.seat.distances import Distances
from engine.base.interval import UNKNOWN, Interval, Measure, is_known
from engine.physics import closeup, focus, optics
from grammar.questions import Question, Thing


def front_focus_taped(thing: Thing, question: Question, tubes: list[float]) -> Measure:
    """How far ahead of the front glass its front focal point lies, by the tape reading told with the first tube."""
    taped, focal = numbers(question, "front_glass"), thing.focal_length_mm
    if taped and _is_of_far_image(question):
        return Interval.exact(taped[0])
    x = taped[1] if len(taped) > 1 else tubes[0] if tubes else None
    if not taped or focal is None or x is None:
        return UNKNOWN
    return optics.front_focus_of_reading_mm(Interval.exact(focal), Interval.exact(taped[0]), Interval.exact(x))


def _is_of_far_image(question: Question) -> bool:
    """'turned round it throws a far window 30 mm before its front glass': where its front focal point lies."""
    return mentions(question, "turned-about") and mentions(question, "far-thing")


def taped_note(lens: Distances, question: Question, tubes: list[float]) -> Told | None:
    """That the distances before the glass follow from the tape; None where none was laid."""
    taped = numbers(question, "front_glass")
    if taped and is_known(lens.offset) and _is_of_far_image(question):
        text = f"By your card the front focal point lies {small_mm(taped[0])} ahead of the front glass"
        return Told((Line("note", f"{text}: the distances before the glass are from that, w = a + f x f / x."),))
    if not taped or not is_known(lens.offset) or not (tubes or len(taped) > 1):
        return None
    x = taped[1] if len(taped) > 1 else tubes[0]
    where = "ahead of" if lens.offset.nominal >= 0 else "behind"
    text = (
        f"By your tape, {small_mm(taped[0])} before the glass with {small_mm(x)}, the front focal point lies "
        f"{small_mm(abs(lens.offset.nominal))} {where} the front glass; the other distances before the glass follow."
    )
    return Told((Line("note", text),))


def as_taped(optics: Distances, question: Question, shown: Shown) -> Iterator[Told]:
    """What a subject at a distance before the front glass comes to: x = f*f/(w - a)."""
    room = number(question, "front_glass")
    if room is None or not is_known(optics.offset):
        return
    x = closeup.extension_for_room_mm(optics.focal, optics.offset, Interval.exact(room))
    m = focus.magnification(optics.focal, x)
    if not is_known(m):
        return
    case = f"{small_mm(room)} before the front glass"
    rows = [Quantity("magnification", m, case)]
    text = f"{case}: {about(m, times)}, by where its front focal point may lie"
    wide = closeup.field_mm(Interval.exact(shown.form.width_mm), m) if shown.form is not None else None
    if wide is not None and is_known(wide) and shown.form is not None:
        rows.append(Quantity("field_width_mm", wide, case))
        text += f"; field {ranged(wide, small_mm)} wide on {shown.form.name}"
    yield Told((Line("head", f"{text}."),), tuple(rows)) + assumed_note(optics)
