"""Why what was told last is so, where it was no matter of the seat: a view, a depth, an exposure, a menu, a danger."""

from __future__ import annotations

from typing import Final

from engine.answers.advising import ruled
from engine.answers.parts.answer import ANSWERED, Answer, Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.ways.same_for_both import same_for_both
from engine.answers.words.advice import advice_lines
from engine.base.compact import replace
from grammar.kinds import CROP_EQUIVALENT, DEPTH_OF_FIELD, EXPOSURE_ND, GEAR_SETTING, HAZARD, WHY
from grammar.questions import FILTER, OFF, Question
from grammar.things.casting import DRAWN, OPTICAL

_IRIS: Final = "iris"
_SMEARED: Final = "smear"  # the topic of edges that are soft
_GLASS: Final = {CROP_EQUIVALENT: "reducer-brighter", EXPOSURE_ND: "reducer-brighter"}
_EXTENDER: Final = "extender-soft"
_BY_KIND: Final = {
    CROP_EQUIVALENT: ("looks-longer",),
    DEPTH_OF_FIELD: ("depth-by-focal", "stop-and-depth"),
    EXPOSURE_ND: ("density-why",),
}
_DRAWN: Final = {DEPTH_OF_FIELD: "same-scale", EXPOSURE_ND: "extension-darkens"}
_HARM: Final = frozenset(["danger", "caution"])  # lines that tell what may be harmed, and by what
# what is seen, and the advice that tells why: no depth of a seat that is square makes one side worse
SEEN_SO: Final = (
    ("which-to-blame", "ring-or-lens"),
    ("on-wides-alone", "error-and-focal-length"),
    ("soft-on-one-side", "one-side-soft"),
    ("darker-close", "extension-darkens"),
)
_OF_TOPIC: Final = {"stabilisation": "stabiliser-not-crop", "release": "release"}  # of a setting


def why_of_it(question: Question, before: Question | None, knowledge: Knowledge) -> Answer | None:
    """The reason for the last answer; None where it was one of the seat, or this asks of something of its own."""
    plain = question.intent == WHY and question.follows and question.topic is None and question.number is None
    alike = same_for_both(question, knowledge) if plain and before is not None else Told()
    if alike.lines:
        return Answer(question.text, WHY, ANSWERED, alike.lines, question=question, quantities=alike.quantities)
    asked = mentions(question, "reason-asked")
    if before is None or not plain or not asked or not _is_of_it(question, before):
        return None
    if before.intent == HAZARD:
        said = f"{before.text} {question.text}"
        told = ruled(question.with_(intent=HAZARD, topic=before.topic, text=said, values=before.values), knowledge)
        harm = [line for line in told.lines if line.kind in _HARM][:1]
        return replace(told, text=question.text, intent=WHY, question=question, lines=tuple(harm) or told.lines)
    rows = [knowledge.catalogue.advice[name] for name in _reasons(before) if name in knowledge.catalogue.advice]
    if not rows:
        return None
    return Answer(question.text, WHY, ANSWERED, tuple(advice_lines(rows)), question=question)


def _is_of_it(question: Question, before: Question) -> bool:
    """Whether nothing is named that was not spoken of."""
    new = [one for one in question.adapters if one not in before.adapters and one.piece != FILTER]
    return not new and not question.things and question.bodies == before.bodies and question.lenses == before.lenses


def _reasons(before: Question) -> tuple[str, ...]:
    """The advice that tells why it is so, by what was asked and what stands between."""
    if before.intent == GEAR_SETTING and before.topic in _OF_TOPIC:
        return (_OF_TOPIC[before.topic],)
    glass = [one for one in before.adapters if one.piece in OPTICAL and one.factor is not None]
    if glass and before.intent in _GLASS:
        return (_EXTENDER if (glass[0].factor or 1.0) > 1 else _GLASS[before.intent],)
    if before.intent in _DRAWN and any(one.piece in DRAWN for one in before.adapters):
        return (_DRAWN[before.intent],)
    return _BY_KIND.get(before.intent, ())


def but_of_edges(lines: tuple[Line, ...], question: Question, short: bool) -> tuple[Line, ...]:
    """How the lens is seated; nothing of that where it is right, and soft edges are asked about."""
    return lines if short or question.topic != _SMEARED else ()


def is_not_of_the_seat(question: Question, knowledge: Knowledge) -> bool:
    """Whether a lens is soft straight on in its own mount, or a picture dark: no reason of the seat tells why."""
    ringless = mentions(question, "no-ring-on-lens") and question.topic in (None, _IRIS)
    if question.is_of_a_fault or ringless:
        return True
    if question.follows and question.said(OFF) is not None and mentions(question, "scale-lies"):
        return True  # 'why does the scale lie' after by how much the seat is off: of the marks, not of infinity
    if mentions(question, "too-dark", "seen-in-picture") and not question.follows:
        return not mentions(question, "infinity-lost")
    if not mentions(question, "nothing-sharp") or question.follows:
        return False
    from engine.answers.shims.missed import is_soft_in_its_own

    return is_soft_in_its_own(question, knowledge)
