"""A thread that is named and nothing else: what it is, for no mount of it is looked for."""

from __future__ import annotations

from typing import Final

from engine.answers.found.threads_told import thread_named
from engine.facts.catalogue import Catalogue
from grammar.kinds import CROP_EQUIVALENT, DEFINITION, IDENTIFY_MOUNT, LOOK_ALIKE
from grammar.questions import Question

READ_AS: Final = frozenset([IDENTIFY_MOUNT, LOOK_ALIKE, CROP_EQUIVALENT])  # what a name alone is taken for
IN_MM: Final = ("pitch-in-mm", "figure-diameter", "by-size")  # what asks for its size


def as_thread_alone(question: Question, facts: Catalogue) -> Question:
    """'SM1 thread?', 'RMS thread in mm': of a thread that no mount has, or whose size is asked, what it is."""
    things = (*question.lenses, *question.bodies, *question.adapters)
    if (
        question.intent not in READ_AS
        or things
        or question.follows
        or {key for key, _ in question.values} != {"thread"}
    ):
        return question
    found = thread_named(question.said("thread") or "", facts)
    held = found is not None and any(mount.thread == found.id for mount in facts.mounts.values())
    if found is None or (held and not question.mentions(*IN_MM)):
        return question
    return question.with_(intent=DEFINITION)
