"""How long a hood may be before it stands in the picture, by its width, the lens and the frame."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.owned import own_lens
from engine.answers.parts.said import focals, mentions, numbers, stop
from engine.answers.parts.wording import f_number, small_mm, trimmed
from engine.answers.picture.crop_modes import in_mode
from engine.answers.picture.frames import frames_of
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import coverage
from grammar.kinds import DIY_DIMENSION
from grammar.questions import HOOD, Question

_FEW: Final = 2  # frames
_KEYS: Final = ("filter_thread", "thread", "diameter", "width")  # under which the width of a hood may stand
_USUAL: Final = "usual-filter-size"  # of the facts: what stands for a width that is not told
_BEHIND: Final = (
    "That counts from where the beam enters, which lies behind the front glass, far behind in wide lenses: from the "
    "rim it is shorter by as much. A hood cut to the shape of the frame may be longer at its sides. Try it stopped "
    "down, far focused, on an even sky."
)


def is_of_hood(question: Question) -> bool:
    """Whether the dimensions asked for are those of a hood; in a talk also where the next turn changes the lens."""
    prior = question.prior
    goes_on = question.follows and prior is not None and prior.mentions("hood") and not question.adapters
    return question.topic == HOOD or mentions(question, "hood") or goes_on


def hood_answer(question: Question, knowledge: Knowledge) -> Answer:
    """The longest that a round hood may be for each lens, frame and width told."""
    told, widths = Told(), _widths(question, knowledge)
    frames = in_mode(frames_of(question, knowledge.catalogue)[::-1], question)[:_FEW]
    for focal in focals(question):
        for form in frames:
            for width in widths or (knowledge.catalogue.assumptions[_USUAL].value.nominal,):
                told += _longest(focal, width, stop(question), form)
    lines = list(told.lines)
    if lines:
        lines.append(Line("text", _BEHIND))
    if not focals(question):
        lines.append(Line("ask", "For which focal length, on which frame?", wants="focal"))
    elif not widths:
        lines.append(Line("ask", "How wide is the hood inside, or the filter thread it screws in? That is an example."))
    asked = question.with_(topic=HOOD)
    return Answer(question.text, DIY_DIMENSION, ANSWERED, tuple(lines), question=asked, quantities=told.quantities)


def _widths(question: Question, knowledge: Knowledge) -> tuple[float, ...]:
    own = [lens.front_thread for thing in question.lenses if (lens := own_lens(thing, knowledge.catalogue)) is not None]
    threads = (knowledge.catalogue.threads[name].major_mm.nominal for name in own if name is not None)
    return tuple(dict.fromkeys((*numbers(question, *_KEYS), *threads)))


def _longest(focal: float, width: float, at: float | None, form: Format) -> Told:
    opening = focal / at if at is not None else 0.0
    long = coverage.hood_mm(*map(Interval.exact, (width, opening, focal, form.diagonal_mm)))
    if not is_known(long):
        return Told()
    wide = f" at f/{f_number(at)}" if at is not None else " stopped down"
    case = f"{trimmed(focal, 1)} mm{wide} on {form.name}, hood {trimmed(width, 1)} mm wide"
    text = f"{case}: at most {small_mm(round(long.nominal))} long" if long.nominal >= 1 else f"{case}: none so narrow"
    return Told((Line("head", f"{text}."),), (Quantity("hood_mm", long, case),))
