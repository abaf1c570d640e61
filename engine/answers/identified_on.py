"""A lens found by its thread, or still unknown, with the body that it is to go on: what becomes of it there."""

from __future__ import annotations

from typing import Final

from engine.answers.found.threads_measured import thread_measured
from engine.answers.parts.answer import Answer
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, body_side
from engine.answers.parts.said import number
from engine.answers.seat.open_lens import depends
from engine.base.compact import replace
from engine.base.interval import is_known
from grammar.kinds import CHAIN
from grammar.questions import Question, Thing

DIGITAL: Final = "mirrorless"  # the kind of mount that no lens without a name has


def with_body(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer which mount it is, and behind it the way onto the body told; what decides where that is unknown."""
    target = _target(question, knowledge)
    body = body_side(target, knowledge.catalogue)
    if target is None or not isinstance(body, BodySide) or answer.chains:
        return answer
    found = _found(answer, target, knowledge)
    if found is not None:
        return _on_it(answer, found, target, question, knowledge)
    lens = next((one for one in question.lenses if one is not target), None)
    if lens is None or lens.ids or thread_measured(question)[0] is not None:
        return answer
    hangs = depends(question.with_(lenses=(lens,), bodies=(target,)), lens, body, knowledge)
    # which mount the body has was told, so it is none that the lens may have
    return replace(answer, lines=hangs.lines, quantities=hangs.quantities, status=hangs.status)


def by_thread(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """What the lens is by its thread, and its way onto the body told, where neither was named as such."""
    if answer.chains or question.bodies or _target(question, knowledge) is None:
        return answer
    from engine.answers.identify import identify  # seldom asked so

    return with_body(identify(question, knowledge), question, knowledge)


def _target(question: Question, knowledge: Knowledge) -> Thing | None:
    """The body told: as one, or as the mount of a digital body beside a lens whose thread was measured or has none."""
    mounts = knowledge.catalogue.mounts
    if question.bodies:
        return question.bodies[0]
    hosts = [
        one for one in question.lenses
        if one.kind == "mount" and one.id in mounts and mounts[one.id or ""].coupling != "screw"
    ]  # fmt: skip
    threaded = thread_measured(question)[0] is not None
    others = [one for one in question.lenses if one not in hosts]
    digital = [one for one in hosts if mounts[one.id or ""].kind == DIGITAL]
    return hosts[0] if len(hosts) == 1 and threaded else digital[0] if len(digital) == 1 and others else None


def _found(answer: Answer, target: Thing, knowledge: Knowledge) -> str | None:
    """The one mount with a register that the answer tells of; None where it is more than one, or the body's own."""
    mounts = knowledge.catalogue.mounts
    told = [row.case for row in answer.quantities or () if row.name == "register_mm" and row.case in mounts]
    ids = {name for name in told if name and name not in target.ids and is_known(mounts[name].register_mm)}
    return next(iter(ids)) if len(ids) == 1 else None


def _on_it(answer: Answer, mount: str, target: Thing, question: Question, knowledge: Knowledge) -> Answer:
    from engine.answers.howto import how_to  # only once the lens is known

    own = next((one for one in question.lenses if one is not target), None) or Thing()
    focal = own.focal_length_mm or (target.focal_length_mm if target in question.lenses else None)
    designation = knowledge.catalogue.mounts[mount].designation
    lens = replace(own, kind="mount", ids=(mount,), words=designation, focal_length_mm=focal)
    measured = tuple(row for row in question.values if row[0] == "flange_to_image" and number(question, row[0]))
    body = replace(target, focal_length_mm=None, lens_kind=None)
    way = how_to(question.with_(intent=CHAIN, lenses=(lens,), bodies=(body,), values=measured), knowledge)
    asks = tuple(line for line in answer.lines if line.kind == "ask")
    lines = (*(line for line in answer.lines if line.kind != "ask"), *way.lines, *asks)
    quantities = (*(answer.quantities or ()), *(way.quantities or ()))
    return replace(answer, lines=lines, quantities=quantities, chains=way.chains, ring=way.ring)
