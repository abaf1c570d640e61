"""A chain's picture close up, and by what the rows of close-up answers are told."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.close.close_rows import Shown
from engine.answers.close.close_table import close_table, nearest_line
from engine.answers.parts.answer import Answer, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import named as named_of
from engine.answers.parts.said import stop
from engine.answers.picture.blur import blur_told
from engine.answers.picture.crop_modes import in_mode
from engine.answers.picture.frames import frames_named
from engine.base.compact import replace
from engine.facts.records import Format
from grammar.questions import Question

MOST_FRAMES = 3  # of which the field is told


def shown_by(question: Question, knowledge: Knowledge) -> Shown:
    """How the rows are told; the field needs an area that the question names, by format or body."""
    forms = in_mode(frames_named(question, knowledge.catalogue), question)
    return Shown(
        knowledge.catalogue,
        stop(question),
        forms[0] if forms else None,
        question.feet,
        blur_told(question, forms, knowledge),
        _others(forms, question, knowledge),
    )


def _others(forms: Sequence[Format], question: Question, knowledge: Knowledge) -> tuple[Format, ...]:
    """'on full frame and on MFT': further frames that are named by themselves, and that of a mount beside them."""
    facts = knowledge.catalogue
    named = [facts.formats[id_] for id_ in named_of(question.things, "format") if id_ in facts.formats]
    if not forms or not named:
        return ()
    mounts = [facts.mounts[body.id or ""] for body in question.bodies if body.kind == "mount" and not body.format]
    named += [facts.formats[mount.format] for mount in mounts if mount.format]
    return tuple(form for form in dict.fromkeys(named) if form.id != forms[0].id)[: MOST_FRAMES - 1]


def with_picture(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The chain's answer with its picture close up, right behind the verdict."""
    told = close_table(answer, shown_by(question, knowledge)) if answer.chains else Told()
    near = tuple(nearest_line(answer, question.feet)) if told.lines else ()
    lines = (*near, *answer.lines[:1], *told.lines, *answer.lines[1:])
    return replace(answer, lines=lines, quantities=(*(answer.quantities or ()), *told.quantities))
