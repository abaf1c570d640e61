"""A lens that was tried and ends at a distance: what its focal length decides, and a ring that cannot be the cause."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import NO, Answer, Line
from engine.answers.parts.resolve import BodySide, LensSide, setup_of
from engine.answers.parts.said import distance_mm, mentions
from engine.answers.parts.wording import distance, small_mm
from engine.answers.seat.making import ring_to_make
from engine.answers.shims.loose import off_by_limit
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from engine.facts.kinds import VERDICTS
from grammar.kinds import CHAIN, FOCUS_VERDICT, WHY
from grammar.questions import Question

_ENDS: Final = ("stops-at", "far-limit")
_SLACK_MM: Final = 0.1  # of a ring told by its length: what it is off by may be no more
_JUDGED: Final = frozenset([CHAIN, FOCUS_VERDICT, WHY])
_FOCAL: Final = "focal"  # what is asked back


def focal_first(told: Answer, question: Question, lens: LensSide) -> Answer | None:
    """'a C lens, all blurred beyond 20 cm': it falls short, and by how much hangs on its focal length.

    None where no limit was told, the focal length is known, or `told` has no plain way to infinity.
    """
    limit = distance_mm(question)
    if limit is None or question.intent not in _JUDGED or not mentions(question, *_ENDS):
        return None
    if question.said("close_focus") is not None or is_known(lens.lens.focal_length_mm):
        return None
    best = told.chains[0].listed.judged if told.chains else None
    if best is None or best.verdict != VERDICTS[0] or any(piece.has_glass for piece in best.chain.adapters):
        return None
    away = distance(limit, question.feet)
    head = Line("head", f"As it stands it does not reach infinity: what ends at {away} sits too far from the sensor.")
    ask = "By how much hangs on its focal length: which is it? Then the thickness that is too much can be told."
    return Answer(question.text, question.intent, NO, (head, Line("ask", ask, wants=_FOCAL)), question=question)


def with_length_doubted(told: Answer, question: Question, lens: LensSide, body: BodySide, facts: Catalogue) -> Answer:
    """The answer, and that the ring is not as long as was told, or not the cause, where its length says otherwise."""
    ends, length = off_by_limit(question, facts), _length_told(question, facts)
    right = ring_to_make(setup_of(lens, body, facts, question.f_number), facts).thickness_mm
    if ends is None or length is None or right is None or not is_known(right):
        return told
    by_length = length - right.nominal
    if abs(by_length - ends) <= _SLACK_MM:
        return told
    if abs(by_length) <= _SLACK_MM:
        leaves = "would seat it right"
    else:
        leaves = f"would leave it {small_mm(abs(by_length))} too {'far out' if by_length > 0 else 'close'}"
    text = (
        f"A ring of {small_mm(length)} {leaves}, and the distance it ends at tells {small_mm(ends)} too far out: "
        "measure the ring by caliper. If it is as long as that, lens or body is off, or not of this mount."
    )
    at = next((n for n, line in enumerate(told.lines) if line.kind == "chain"), len(told.lines))
    return replace(told, lines=(*told.lines[:at], Line("caution", text), *told.lines[at:]))


def _length_told(question: Question, facts: Catalogue) -> float | None:
    """How long the one piece between them is, as told or as the facts have it."""
    if len(question.adapters) != 1:
        return None
    piece = question.adapters[0]
    if piece.is_of_one_length and piece.thickness_mm is not None:
        return piece.thickness_mm[0]
    record = facts.adapters.get(piece.id or "")
    length = record.thickness_mm.shortest if record is not None and record.thickness_mm.is_fixed else None
    return length.nominal if length is not None and is_known(length) else None
