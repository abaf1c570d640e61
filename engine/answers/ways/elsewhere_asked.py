"""Where else a lens goes: the bodies of its own mount, told as those that are not meant, are left out."""

from __future__ import annotations

from engine.answers.parts.said import mentions
from engine.base.compact import replace
from grammar.questions import Question


def elsewhere_asked(question: Question) -> Question:
    """'what else than R bodies takes R lenses': asked of the lens alone, whose own mount no chain has to do without."""
    own = {id_ for lens in question.lenses for id_ in lens.ids[:1]}
    of_own = [body for body in question.bodies if body.ids and body.ids[0] in own]
    if of_own and _are_lenses_apart(question):
        return question.with_(lenses=())  # 'what else than CS lenses goes on a CS camera'
    barred = (own | _here(question)) & set(question.limits.without)
    if not barred and not (of_own and mentions(question, "apart-from")):
        return question
    bodies = tuple(body for body in question.bodies if body not in of_own)
    without = tuple(name for name in question.limits.without if name not in barred)
    return question.with_(bodies=bodies, limits=replace(question.limits, without=without))


def _are_lenses_apart(question: Question) -> bool:
    """Whether lenses, told before the one body, are what is not meant."""
    apart = [one.at + 1 for one in question.places("apart-from")]
    if not apart or len(question.lenses) != 1 or len(question.bodies) != 1:
        return False
    lens, body = question.lenses[0].column, question.bodies[0].column
    return min(apart) < lens < body


def is_left_out(name: str, question: Question) -> bool:
    """Whether a mount is among those that are not meant."""
    own = {id_ for lens in question.lenses for id_ in lens.ids[:1]} | _here(question)
    return name in question.limits.without or (name in own and mentions(question, "apart-from"))


def _here(question: Question) -> set[str]:
    """The mount of the body that lenses are asked for: 'anything fit my K body apart from K'."""
    return set() if question.lenses else {id_ for body in question.bodies for id_ in body.ids[:1]}
