"""Light that one change costs told as another: frame rates as stops, a filter as the stop that holds back alike."""

from __future__ import annotations

from math import log2

from engine.answers.exposure.lighting import seconds, shutters_s
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import is_led, mentions, number, numbers, stop
from engine.answers.parts.wording import f_number, ranged, trimmed
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.physics import exposure
from grammar.questions import Question

_FROM = "from"  # a phrase that is mentioned
SETTLED = ("shutter", "light", "iso")  # where one of these is told, an exposure is worked out


def between_scenes(question: Question, knowledge: Knowledge) -> Told:
    """'how many stops from full sun to open shade': by how many exposure values two usual scenes are apart."""
    scenes = [knowledge.catalogue.assumptions.get(f"scene-{question.said(key)}") for key in ("light", "other_light")]
    first, second = (row.value if row is not None else UNKNOWN for row in scenes)
    if not (is_known(first) and is_known(second)) or any(question.said(key) for key in ("shutter", "iso")):
        return Told()
    apart = first - second if first.nominal >= second.nominal else second - first
    names = [str(question.said(key)).replace("-", " ") for key in ("light", "other_light")]
    told = zip(names, (first, second), strict=True)
    levels = (f"{name} is about EV {ranged(value, lambda one: trimmed(one, 1))}" for name, value in told)
    text = f"{ranged(apart, lambda one: trimmed(one, 1))} stops: {', '.join(levels)}, at ISO 100."
    return Told((Line("head", text),), (Quantity("light_difference_stops", apart, " and ".join(names)),))


def between_rates(question: Question, knowledge: Knowledge) -> Told:
    """'From 25p to 120p': how much less light each frame gets at the same shutter angle."""
    rates = numbers(question, "frame_rate")
    kept = shutters_s(question) if mentions(question, "same-angle") else ()  # '1/50 at 25p, the same angle at 50p'
    if len(rates) != 2 or any(question.said(key) for key in SETTLED if not (kept and key == "shutter")):
        return Told()
    if is_led(rates[1], _FROM, question):
        rates = rates[::-1]  # '240 fps from 24'
    usual = knowledge.catalogue.assumptions["usual-shutter-angle"].value
    told = exposure.FULL_TURN_DEG * kept[0] * rates[0] if len(kept) == 1 else None
    angle = Interval.exact(number(question, "angle") or told or usual.nominal)
    times = [exposure.shutter_of_angle_s(Interval.exact(rate), angle) for rate in rates]
    if not (is_known(times[0]) and is_known(times[1])):
        return Told()
    stops = log2(rates[1] / rates[0])
    way = "less" if stops > 0 else "more"
    text = (
        f"{rates[0]:g} to {rates[1]:g} frames a second at {angle.nominal:g} degrees: {seconds(times[0].nominal)} to"
        f" {seconds(times[1].nominal)}, {trimmed(abs(stops), 2)} stops {way} light. ISO, iris or density make it up."
    )
    return Told((Line("head", text),), (Quantity("light_difference_stops", Interval.exact(abs(stops)), "frame rates"),))


def between_angles(question: Question) -> Told:
    """'180 to 90 degrees': how much less light each frame gets at the same rate."""
    angles = numbers(question, "angle")
    if len(angles) != 2 or any(question.said(key) for key in SETTLED):
        return Told()
    against = mentions(question, "instead-of", "either-or")  # else from the one to the other
    stops = log2(angles[1] / angles[0]) if against else log2(angles[0] / angles[1])
    way, link = "less" if stops > 0 else "more", "against" if against else "to"
    text = f"A shutter of {angles[0]:g} {link} {angles[1]:g} degrees: {trimmed(abs(stops), 2)} stops {way} light."
    return Told((Line("head", text),), (Quantity("light_difference_stops", Interval.exact(abs(stops)), "angles"),))


def filter_as_stop(question: Question) -> Told:
    """'A 3 stop ND on f/2.8 is like what f': the stop that lets as little light through, and what it does not do."""
    stops, at = number(question, "stops"), stop(question)
    asked = mentions(question, "filtered", "nd-or-density") and mentions(question, "which-stop")
    if stops is None or at is None or not asked or any(question.said(key) for key in (*SETTLED, "frame_rate")):
        return Told()
    alike = exposure.f_number_after(Interval.exact(at), Interval.exact(stops))
    if not is_known(alike):
        return Told()
    text = (
        f"{trimmed(stops, 2)} stops of ND on f/{f_number(at)} pass as much light as f/{trimmed(alike.nominal, 2)}; the"
        f" depth of field stays that of f/{f_number(at)}."
    )
    return Told((Line("head", text),), (Quantity("f_number", alike, "as bright as"),))
