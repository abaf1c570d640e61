"""What a helicoid or bellows costs in light where it also seats the lens: only what is beyond infinity counts."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.answers.by_stack import stack_ends
from engine.answers.close.by_chain import goes_by_chain
from engine.answers.close.close_rows import light_rows
from engine.answers.exposure.lighting import seconds, shutters_s
from engine.answers.exposure.metered_outside import is_metered
from engine.answers.howto import how_to
from engine.answers.parts.answer import Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import stop
from engine.answers.parts.wording import trimmed
from engine.answers.seat.distances import Distances, distances_of
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.physics import focus
from grammar.kinds import CHAIN
from grammar.questions import Question
from grammar.things.casting import DRAWN, OPTICAL

_EXPOSED: Final = ("light", "shutter", "iso", "frame_rate", "magnification", "extension", "stops", "filter_thread")


def lost_by_seat(question: Question, knowledge: Knowledge) -> tuple[Question, Told]:
    """The light lost at both ends of the best chain, and the question without the pieces that this has told of.

    Nothing, and the question as it is, where no piece is drawn out or it is not known where the lens then sits.
    """
    drawn = [one for one in question.adapters if one.piece in DRAWN and one.thickness_mm is not None]
    lens = distances_of(question.lens, knowledge.catalogue) if question.lens is not None else None
    if not drawn and lens is not None and question.bodies and _asks_of_seat(question):
        lost = _lost_as_it_sits(question, lens, knowledge)
        heard = tuple(one for one in question.mentioned if one.key != "light-lost")  # that is told of now
        return question.with_(mentioned=heard) if lost.lines else question, lost
    if not drawn or lens is None or not question.bodies:
        return question, Told()
    rest = question.with_(adapters=tuple(one for one in question.adapters if one not in drawn))
    held, by_chain = stack_ends(question, knowledge), goes_by_chain(question, knowledge)
    if held and (by_chain or question.said("flange_to_image") is not None):
        return rest, _lost(held, lens, question)
    if not by_chain:
        return question, Told()
    chains = how_to(question.with_(intent=CHAIN, topic=None), knowledge).chains
    out = _out_mm(chains)
    if not chains or out is None or not any(one.kind in DRAWN for one in chains[0].listed.judged.chain.adapters):
        return question, Told()
    ends = [("drawn in", Interval.exact(out[0])), ("drawn out", Interval.exact(out[1]))]
    if out[0] == out[1]:
        ends = [("as it is set", ends[1][1])]
    return rest, _lost(ends, lens, question) + Told((Line("fact", f"by {chains[0].title}", 1),))


def _out_mm(chains: Sequence[ListedChain] | None) -> tuple[float, float] | None:
    """How far the lens stands out on the best chain, drawn in and drawn out, where that is known."""
    error = chains[0].listed.judged.measured_trace.value("register_error_mm") if chains else None
    if not isinstance(error, Span) or not (is_known(error.shortest) and is_known(error.longest)):
        return None
    return error.shortest.nominal, error.longest.nominal


def _asks_of_seat(question: Question) -> bool:
    """'darker by how much there' after a lens on a ring: what the ring costs that leaves it too far out."""
    told = any(question.said(key) for key in _EXPOSED) or any(one.piece in OPTICAL for one in question.adapters)
    pair = bool(question.lenses[0].ids) and bool(question.bodies[0].ids)
    return question.follows and pair and not told and question.mentions("light-lost", "gets-dark")


def _lost_as_it_sits(question: Question, lens: Distances, knowledge: Knowledge) -> Told:
    """The light lost as the lens sits on the best chain; nothing where it stands as far off as on its own camera."""
    chains = how_to(question.with_(intent=CHAIN, topic=None), knowledge).chains
    out = _out_mm(chains)
    least = knowledge.catalogue.assumptions["light-worth-telling"].value.nominal
    if out is None or not chains or out[0] < least * lens.focal.nominal:
        return Told()
    return _lost([("at its infinity mark", Interval.exact(out[0]))], lens, question) + Told(
        (Line("fact", f"by {chains[0].title}", 1),)
    )


def _lost(ends: list[tuple[str, Interval]], lens: Distances, question: Question) -> Told:
    """The light lost at each of the settings, told by how far beyond infinity the lens then stands."""
    told = Told()
    for case, length in ends:
        x = max(length.nominal, 0.0)
        size = focus.magnification(lens.focal, Interval.exact(x))
        if not is_known(size):
            continue
        part = light_rows(size.nominal, stop(question), case, lens)
        beyond = f"{trimmed(x, 2)} mm beyond infinity" if x > 0 else "at infinity, no light lost"
        light = f": {part.lines[0].text}" if part.lines and x > 0 else ""
        for time in shutters_s(question)[:1] if is_metered(question) and light else ():
            light += f"; {seconds(time)} metered without it becomes {seconds(time * (1 + size.nominal) ** 2)}"
        lead = f"{trimmed(lens.focal.nominal, 1)} mm, {case}, {beyond}"
        told += Told((Line("head", f"{lead}{light}."),), (Quantity("magnification", size, case), *part.quantities))
    return told
