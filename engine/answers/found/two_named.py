"""'what is a helicoid', 'and a bellows', 'difference between the two': the two things that the turns before told of."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer
from engine.answers.parts.said import mentions
from engine.facts.catalogue import Catalogue
from grammar.kinds import COMPARE, DEFINITION, IDENTIFY_MOUNT, LIST_FITS, LOOK_ALIKE
from grammar.questions import Question, Thing

TWO: Final = 2
_TELLING: Final = frozenset({DEFINITION, LOOK_ALIKE, IDENTIFY_MOUNT})  # answers that tell of a thing by its name
_SETTING: Final = frozenset(
    {"chain", "compare", "look-alike", "definition", "identify-mount", "list-fits", "which-own"}
)
_CHOOSING: Final = frozenset({COMPARE, LIST_FITS})
_HOSTS: Final = "mirrorless"


def named_so_far(before: tuple[Thing, ...], answer: Answer) -> tuple[Thing, ...]:
    """The last two things that answers in a row told of, with that of this answer; none where it told of a pair."""
    question = answer.question
    if answer.status != ANSWERED:
        return before  # what was not answered changes nothing
    if question is None or answer.intent not in _TELLING:
        return ()
    told = [
        thing
        for thing in (*question.things, *question.lenses, *question.bodies)
        if thing.ids and thing.kind in ("term", "mount") and _is_typed(thing, question.text)
    ]
    kept = [thing for thing in before if thing.ids[0] not in {one.ids[0] for one in told}]
    return (*kept, *told)[-TWO:]


def with_two(question: Question, named: tuple[Thing, ...], catalogue: Catalogue) -> Question:
    """A question that sets 'the two' apart and names none of them, as one of the two that were told of last."""
    if len(named) != TWO or question.intent not in _SETTING or not mentions(question, "two-of-before"):
        return question
    things = (*question.things, *question.lenses, *question.bodies, *question.adapters)
    if any(_is_typed(thing, question.text) for thing in things) or question.number is not None:
        return question
    bare = Question(question.text, question.intent, mentioned=question.mentioned, follows=True)
    mounts = [catalogue.mounts[thing.ids[0]] for thing in named if thing.kind == "mount"]
    if len(mounts) < TWO:
        return bare.with_(intent=DEFINITION, things=named, topic="terms-beside", follows=False)
    if question.intent in _CHOOSING and all(mount.kind == _HOSTS for mount in mounts):
        return bare.with_(intent=COMPARE, bodies=named)
    return bare.with_(intent=LOOK_ALIKE, lenses=named)


def _is_typed(thing: Thing, text: str) -> bool:
    """Whether the thing is named in this very text, and not lent by the question before."""
    words = thing.words.casefold()
    return bool(words) and words in text.casefold()
