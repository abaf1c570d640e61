"""What was said last is taken back: 'scrap that', 'not the body, the lens'."""

from __future__ import annotations

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.questions import Question, Thing
from grammar.whom import known_with


def taken_back(heard: Heard, before: Question) -> Question | None:
    """'scrap that': the question before the last; 'not the body, the lens': what was said of the one is the other's."""
    prior = before.prior
    if prior is None or not prior.lenses:
        return None
    alone = not any(part.has_mount for part in (*heard.cast.lenses, *heard.cast.bodies))
    if heard.tells("retract") and alone and heard.tells("short"):
        return prior.with_(text=heard.text, follows=True)
    if heard.tells("not-body") and alone and before.bodies and before.bodies != prior.bodies:
        lens = replace(prior.lenses[0], kind="mount", ids=before.bodies[0].ids)
        changed = before.with_(text=heard.text, lenses=(lens,), bodies=prior.bodies, follows=True)
        return changed.with_(known=known_with(before.known, (lens,)))
    if heard.tells("not-lens") and alone and before.lenses != prior.lenses and before.lenses[0].kind == "mount":
        body = Thing("mount", before.lenses[0].ids, before.lenses[0].words)
        return before.with_(text=heard.text, lenses=prior.lenses, bodies=(body,), follows=True)
    return None
