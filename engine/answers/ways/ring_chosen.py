"""Which of several rings for one lens and one body to take: each by its error, the one that comes nearest first."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side, setup_of
from engine.answers.parts.said import focals, numbers
from engine.answers.parts.wording import READS_MM, distance, small_mm, trimmed
from engine.answers.seat.distances import Distances
from engine.answers.seat.making import ring_to_make
from engine.answers.seat.telling import life_line
from engine.answers.ways.pair import one_pair
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from grammar.kinds import CHAIN
from grammar.questions import Question, Thing

RINGS: Final = "ring_choice"  # key of their lengths


def with_ring_chosen(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer by the rings told, where lens and body are known; else the one there is."""
    lens, body = lens_side(question.lens, knowledge.catalogue), body_side(question.body, knowledge.catalogue)
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)):
        return answer
    right = ring_to_make(setup_of(lens, body, knowledge.catalogue), knowledge.catalogue).thickness_mm
    if right is None:
        return answer
    made = [(size, size - right.nominal, chain) for size, chain in _each(question, lens, body, knowledge)]
    made.sort(key=lambda one: (not _reaches(one[2]), abs(one[1]), one[0]))  # what is thin can be shimmed
    best, error, _ = made[0]
    which = (
        f"Take the {trimmed(best, 3)} mm one" if _reaches(made[0][2]) else f"The {trimmed(best, 3)} mm one is nearest"
    )
    lines = [Line("head", f"{which}: right is {small_mm(right.nominal)}, {_off(error)}.")]
    rows = [Quantity("ring_thickness_mm", right, "what is right")]
    chains: list[ListedChain] = []
    for size, off, chain in made:
        rows.append(Quantity("register_error_mm", Interval.exact(off), f"{trimmed(size, 3)} mm ring"))
        outcome = f": {life_line(chain.listed.judged, question.feet)}" if chain is not None else ""
        mark = _mark(off, question, knowledge)
        rows += mark.quantities
        at = "".join(f", at its {line.text} mark" for line in mark.lines)
        lines.append(Line("fact", f"{trimmed(size, 3)} mm: {_off(off)}{outcome}{at}", 1))
        chains += [replace(chain, number=len(chains) + 1)] if chain is not None else []
    if error > READS_MM:
        lines.append(Line("text", f"To have infinity for certain take {small_mm(error)} off it, flat and parallel."))
    elif error < -READS_MM:
        lines.append(Line("text", f"A shim of {small_mm(-error)} sets its scale right."))
        rows.append(Quantity("shim_mm", Interval.exact(-error), f"{trimmed(best, 3)} mm ring"))
    return Answer(
        question.text, answer.intent, ANSWERED, tuple(lines), question=question, chains=tuple(chains) or None,
        quantities=tuple(rows),
    )  # fmt: skip


def _mark(error: float, question: Question, knowledge: Knowledge) -> Told:
    """Where infinity falls on the scale of the one lens told, on a ring that is too thin."""
    told = focals(question)
    if error >= -READS_MM or len(told) != 1:
        return Told()
    mark = Distances(told[0], knowledge.catalogue).mark(error)
    if not is_known(mark):
        return Told()
    row = Quantity("scale_mark_mm", mark, f"{trimmed(told[0], 1)} mm lens, {small_mm(-error)} too thin")
    return Told((Line("fact", distance(mark.nominal, question.feet)),), (row,))


def _reaches(chain: ListedChain | None) -> bool:
    return chain is not None and chain.listed.judged.verdict == "infinity"


def _each(
    question: Question, lens: LensSide, body: BodySide, knowledge: Knowledge
) -> Iterator[tuple[float, ListedChain | None]]:
    """Each ring with the chain that it makes."""
    values = question.rest(RINGS)
    for size in numbers(question, RINGS):
        ring = Thing(words=f"{size:g} mm ring", piece="adapter", thickness_mm=(size, size))
        alone = question.with_(intent=CHAIN, topic=None, adapters=(ring,), values=values, mentioned=())
        chains = one_pair(alone, lens, body, knowledge).chains or ()
        yield size, chains[0] if chains else None


def _off(error: float) -> str:
    if abs(error) <= READS_MM:
        return "it is just right"
    return f"it is {small_mm(abs(error))} {'too thick' if error > 0 else 'too thin'}"
