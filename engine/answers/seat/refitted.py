"""A lens that was given another bayonet: where its old seat lay decides whether it still reaches infinity."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import small_mm
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Mount
from grammar.kinds import BUY_PLAN, CHAIN, COMPARE, FOCUS_VERDICT, SHIM_CALIBRATION
from grammar.questions import REFIT, Question, Thing
from grammar.words.mentioned import Mention

_DONE, _LEVEL, _FLUSH, _ASKED = "mount-refitted", "seat-as-before", "held-direct", "refit-or-ring"
_ASKING: Final = frozenset([CHAIN, FOCUS_VERDICT, COMPARE, BUY_PLAN, SHIM_CALIBRATION])
_GIVEN: Final = re.compile(r"\b(?:an?|new|proper|to|into)(?: an?| new| proper)? $")  # before the mount that was put on
_TWO: Final = 2


def as_refitted(question: Question, facts: Catalogue) -> Question:
    """The question of a lens with another bayonet, as it sits on that mount's body: its seat where its old one lay."""
    if question.intent not in _ASKING or not question.mentions(_DONE) or question.mentions(_ASKED):
        return question
    if question.distance_mm is not None:
        return question  # where its focus ends tells how far off its new seat is
    told = sorted(_with_mounts(question, facts), key=lambda row: row[0].column)
    mounts = list(dict.fromkeys(id_ for _, id_ in told))
    if len(mounts) != _TWO or question.follows:
        return question
    new = _given(question, told)
    if new is None:
        return question
    (old,) = [one for one in mounts if one != new]
    focal = next((one for one in question.lenses if one.focal_length_mm is not None), None)
    first = next(one for one, id_ in told if id_ == old)
    lens = replace(focal or first, kind="mount", ids=(old,), column=first.column)
    body = next((one for one in question.bodies[::-1] if one.ids[:1] == (new,)), None) or Thing("mount", (new,))
    body = replace(body, ids=(new,))
    asked = question.with_(
        intent=FOCUS_VERDICT, lenses=(lens,), bodies=(body,), adapters=(), instead=(),
        values=(*question.rest(REFIT), (REFIT, f"{old} {new}")),
    )  # fmt: skip
    place = len(question.text) - 1
    return asked.with_(mentioned=(*question.mentioned, Mention(_FLUSH, place, place)))


def with_refit_told(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """What comes of the new mount in the plane of the old one, first; alone where nothing is said of its place."""
    said = (answer.question or question).said(REFIT) or question.said(REFIT)
    if said is None:
        return answer
    old, new = (knowledge.catalogue.mounts[id_] for id_ in said.split())
    if not (is_known(old.register_mm) and is_known(new.register_mm)):
        return answer
    error = round(new.register_mm.nominal - old.register_mm.nominal, 4)
    text = (
        f"{old.designation} wants {old.register_mm.nominal:g} mm, {new.designation} gives {new.register_mm.nominal:g}"
        f" mm: {_comes_of(error, old, new)}"
    )
    told = any(row.name == "shim_mm" for row in answer.quantities or ())
    rows = (Quantity("shim_mm", Interval.exact(abs(error))),) if error and not told else ()
    if question.mentions(_LEVEL):
        return replace(
            answer, lines=(Line("head", text), *answer.lines), quantities=(*rows, *(answer.quantities or ()))
        )
    ask = "Where does its new seat lie, against the old one? In its plane, or by how much deeper?"
    lead = "That hangs on where the new mount was put."
    lines = (Line("head", f"{lead} {text}"), Line("ask", ask))
    return replace(answer, lines=lines, chains=None, quantities=rows)


def _comes_of(error: float, old: Mount, new: Mount) -> str:
    off = small_mm(abs(error))
    if not error:
        return "a new seat in the plane of the old one is right."
    if error > 0:
        return (
            f"a new seat in the plane of the old one holds the lens {off} too far out, and infinity is lost. It must"
            f" lie {off} deeper on the lens: take that off behind it."
        )
    return (
        f"a new seat in the plane of the old one holds the lens {off} too close: infinity comes before the end of the"
        f" focus ring. A spacer of {off} under the new mount sets it right."
    )


def _with_mounts(question: Question, facts: Catalogue) -> list[tuple[Thing, str]]:
    """The things that are told by a mount, and which mount that is."""
    rows = [(one, one.ids[0]) for one in (*question.lenses, *question.bodies) if one.ids and one.kind == "mount"]
    rows += [(one, (one.front or one.rear)[0]) for one in question.adapters if one.front or one.rear]
    return [(one, id_) for one, id_ in rows if id_ in facts.mounts]


def _given(question: Question, told: Sequence[tuple[Thing, str]]) -> str | None:
    """Which mount the lens was given: that with its article, else that of the body it goes on."""
    for one, id_ in told:
        bare = one.focal_length_mm is None or one.words.casefold().endswith(("bayonet", "mount", "plate"))
        if bare and _GIVEN.search(question.text[: max(one.column - 1, 0)].casefold()):
            return id_
    return question.bodies[-1].ids[0] if question.bodies and question.bodies[-1].ids else None
