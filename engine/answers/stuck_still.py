"""What is said on of a thing that is stuck: 'theres a pin i can see', 'can i pry it' are about what is stuck still."""

from __future__ import annotations

from typing import Final

from engine.answers.words.advice import STUCK
from engine.facts.catalogue import Catalogue
from engine.facts.subjects import subjects_of
from grammar.kinds import HAZARD
from grammar.questions import RING, Question, Thing

LIKE: Final = 20.0  # how surely the words must be about something else
ON_IT: Final = frozenset([None, "force", "touch", "harm"])  # topics of what is tried, or seen, on the thing itself
ON_BODY: Final = "ring-on-body"  # that it is a ring that does not leave the body
FREED: Final = "came-free"  # that it is stuck no more


def stuck_before(question: Question, catalogue: Catalogue) -> Question | None:
    """What was told to be stuck before; None where nothing was, where it came free, or where something else is asked.

    What it is about is kept as `asked` from turn to turn.
    """
    before = question.prior
    told = question.follows and before is not None and before.intent == HAZARD and before.topic == STUCK
    if not told or before is None or question.topic not in ON_IT or question.places(FREED) or question.values:
        return None
    named = {one.ids for one in question.lenses if one.ids} - {one.ids for one in before.lenses}
    match = next(iter(subjects_of(catalogue).matches(question.text, HAZARD)), None)
    if named or (match is not None and match.likeness >= LIKE):
        return None
    ring = before.mentions(ON_BODY) and not before.adapters
    pieces = (Thing(piece=RING),) if ring else before.adapters
    return before.with_(text=before.asked or before.text, asked="", follows=False, adapters=pieces)


def gone_on(question: Question, stuck: Question) -> Question:
    """The question as one about that which is stuck, with what tells where, for the next turn to go on from."""
    beyond = len(question.text) + len(stuck.text)
    where = tuple(one._replace(at=beyond, end=beyond) for one in stuck.mentioned if one.key == ON_BODY)
    told = (*question.mentioned, *where[:1])
    return question.with_(topic=STUCK, adapters=stuck.adapters, asked=stuck.text, mentioned=told)
