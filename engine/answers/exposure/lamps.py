"""The shutter that keeps lamps from flickering: whole waves of their light, by the mains they burn on."""

from __future__ import annotations

from typing import Final

from engine.answers.exposure.lighting import seconds
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import listed, trimmed
from engine.base.interval import Interval
from grammar.kinds import EXPOSURE_ND
from grammar.questions import Question

_MAINS: Final = {"mains-fifty": "mains-of-fifty", "mains-sixty": "mains-of-sixty"}  # said -> the fact of it
_WAVES: Final = 2  # of light in one of the mains: a lamp is bright at either swing
_MOST: Final = 4  # waves; longer times are seldom set
_FEWEST: Final = 2  # waves, where only the shortest times are told
_FULL_TURN: Final = 360.0  # degrees
_RATE: Final = "frame_rate"
_OUTDONE: Final = 0.01  # of a frame, by which a time may seem longer than it is


def in_step_with_lamps(question: Question, knowledge: Knowledge) -> Told:
    """The times that hold whole waves of the light, the nearest to the usual one first; nothing if no lamps flicker."""
    told, prior = _mains(question), question.prior
    if not _asks(question):
        goes_on = question.follows and prior is not None and prior.intent == EXPOSURE_ND and _asks(prior)
        if prior is None or not goes_on or not (told or question.said(_RATE) != prior.said(_RATE)):
            return Told()
        told = told or _mains(prior)
    out = Told()
    for fact in told or list(_MAINS.values()):
        out += _on(knowledge.catalogue.assumptions[fact].value.nominal, question, knowledge)
    return out


def kept_to(knowledge: Knowledge) -> str:
    """The times to keep to under lamps, on either mains: 'under 50 Hz mains keep to 1/50 or 1/100 s, ...'."""
    rows = knowledge.catalogue.assumptions
    told: list[str] = []
    for hertz in (rows[fact].value.nominal for fact in _MAINS.values()):
        longest_first = sorted(_whole_waves(hertz, _FEWEST), reverse=True)
        times = listed([seconds(time).removesuffix(" s") for time in longest_first], "or")
        told.append(f"under {hertz:g} Hz{' mains keep' if not told else ''} to {times} s")
    return f"lamps may pulse: {', '.join(told)}"


def _whole_waves(hertz: float, most: int) -> list[float]:
    """The times of one to `most` waves of the light of lamps, in seconds, the shortest first."""
    return [waves / (_WAVES * hertz) for waves in range(1, most + 1)]


def _mains(question: Question) -> list[str]:
    return [fact for said, fact in _MAINS.items() if question.mentions(said)]


def _asks(question: Question) -> bool:
    """'lamps flicker, which shutter', 'what angle at 24p on 50 Hz mains': a time is asked for, and lamps are told."""
    asked = mentions(question, "shutter-asked-of-lamps")
    told = bool(_mains(question)) and (asked or mentions(question, "flickering"))
    prior = question.prior
    feared = (
        question.follows and prior is not None and prior.intent == EXPOSURE_ND and question.mentions("flicker-feared")
    )
    return told or feared or (asked and question.mentions("lamps-flicker"))


def _on(hertz: float, question: Question, knowledge: Knowledge) -> Told:
    rows = knowledge.catalogue.assumptions
    rate = number(question, _RATE)
    times = _whole_waves(hertz, _MOST)
    within = [time for time in times if rate is None or time * rate <= 1 + _OUTDONE] or times[:1]
    usual = rows["usual-shutter-angle"].value.nominal / _FULL_TURN / (rate or rows["usual-frame-rate"].value.nominal)
    best = min(within, key=lambda time: abs(time - usual))
    angle = f", {trimmed(_FULL_TURN * rate * best, 1)} degrees at {rate:g} a second" if rate is not None else ""
    others = [seconds(time) for time in within if time != best]
    beside = f"; {listed(others, 'or')} too" if others else ""
    text = f"Under lamps on {hertz:g} Hz mains {seconds(best)}{angle}{beside}: whole waves of their light."
    case = f"{hertz:g} Hz mains"
    quantities = [Quantity("shutter_s", Interval.exact(best), case)]
    if rate is not None:
        quantities.append(Quantity("shutter_angle_deg", Interval.exact(_FULL_TURN * rate * best), case))
    return Told((Line("head", text),), tuple(quantities))
