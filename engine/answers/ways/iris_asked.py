"""Whether the iris can be worked, first of all where that is asked; why not, and what would let it be worked."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.seat.iris import iris_text, iris_told
from engine.answers.seat.telling import finding_text
from engine.answers.words.advice import advice_lines
from engine.base.compact import replace
from engine.judging.judge import Judged
from engine.judging.ranking import Listed
from grammar.kinds import WHY
from grammar.questions import Question

_NONE, _UNKNOWN = "none", "unknown"
_NO_RING: Final = "no aperture ring"  # trait of a lens that only its adapter can close
_UNPOWERED: Final = "needs power"  # how an iris is told that only a body works
_ADVICE: Final = "electronic-iris"  # what can be done about it
_RIGHT_BEHIND: Final = 4  # signs
_IRIS: Final = "iris"  # how the rules about it begin, the topic of a reason, and the advice on one that does nothing


def with_iris_first(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The chain behind who works its iris, where the question asks that of a lens on a body."""
    if not answer.chains:
        return answer
    by, told = iris_told(answer.chains[0].listed.judged)
    asked = mentions(question, "iris-asked") and not _is_only_told(question)
    without = by == _NONE and any(_NO_RING in lens.traits for lens in question.lenses)
    if not (asked or without):
        return answer
    is_ = "" if told.startswith("cannot") else "is "
    yes = {_NONE: f"No, not with this: the iris {is_}", _UNKNOWN: ""}.get(by, "Yes, the iris works: ")
    head = f"{yes}{told}." if yes else f"The iris: {told}."
    others = (one for one in answer.chains[1:] if iris_text(one.listed.judged)[0] not in (_NONE, _UNKNOWN))
    other = next(others, None) if by == _NONE else None
    head += f" It works with chain {other.number}, {other.title}." if other is not None else ""
    unpowered = by == _NONE and _UNPOWERED in told and _ADVICE in knowledge.catalogue.advice
    trick = advice_lines([knowledge.catalogue.advice[_ADVICE]]) if unpowered else ()
    return replace(answer, lines=(Line("head", head), *trick, *answer.lines))


def _is_only_told(question: Question) -> bool:
    """'all metal, aperture ring works': a word of a fact, where 'does it work' asks."""
    places, text = question.places("iris-asked"), question.text
    told = {one.at for one in question.places("iris-works") if "?" not in text[one.end : one.end + _RIGHT_BEHIND]}
    return bool(places) and all(one.at in told for one in places)


def why_iris(
    question: Question, rows: tuple[Listed, ...], knowledge: Knowledge, chains_first: Callable[[Question], Answer]
) -> Answer | None:
    """Why the iris cannot be worked, or what would let it, after that was asked of the chain before.

    That it does nothing on that chain is asked about as well: 'blades never move, there is a little pin at the back'.
    After what told of no chain, as how deep it is sharp, it is asked of the best one.
    """
    prior, dead = question.prior, question.intent == WHY and question.topic == _IRIS
    if dead and not rows and question.lens is not None and question.lens.ids and question.body is not None:
        rows = tuple(chain.listed for chain in chains_first(question).chains or ())
    if prior is None or not question.follows or not rows or not (dead or mentions(prior, "iris-asked")):
        return None
    judged = rows[0].judged
    lines = [Line("head", f"{iris_text(judged)[1].capitalize()}.")]
    lines += [
        Line(finding.severity, finding_text(finding, judged, knowledge), 1)
        for finding in judged.findings
        if finding.rule.id.startswith(_IRIS)
    ]
    lines += _remedies(judged, knowledge)
    advice = knowledge.catalogue.advice.get(_IRIS) if dead else None
    lines += advice_lines([advice]) if advice is not None else []
    return Answer(question.text, question.intent, ANSWERED, tuple(lines), question=question)


def _remedies(judged: Judged, knowledge: Knowledge) -> list[Line]:
    """Each ring between the two mounts that works the iris, where the one told does not."""
    if iris_text(judged)[0] not in (_NONE, _UNKNOWN):
        return []
    setup = judged.setup
    rings = [
        adapter
        for adapter in knowledge.catalogue.adapters.values()
        if adapter.front == setup.lens_mount.id
        and adapter.rear == setup.body_mount.id
        and adapter.iris not in (_NONE, "")
    ]
    if not rings:
        return [Line("text", "No ring between these two mounts that works it is in the facts.")]
    return [Line("fact", f"with it the iris works: {adapter.name}", 1) for adapter in rings]
