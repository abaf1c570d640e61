"""'what is a helicoid', 'and a bellows', 'difference between the two': the two things that the turns before told of."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer
from engine.answers.parts.said import mentions
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from grammar.kinds import CHAIN, COMPARE, DEFINITION, HAZARD, IDENTIFY_MOUNT, LIST_FITS, LOOK_ALIKE, WHY
from grammar.questions import Question, Thing

TWO: Final = 2
_TELLING: Final = frozenset({DEFINITION, LOOK_ALIKE, IDENTIFY_MOUNT})  # answers that tell of a thing by its name
_SETTING: Final = frozenset(
    {"chain", "compare", "look-alike", "definition", "identify-mount", "list-fits", "which-own"}
)
_CHOOSING: Final = frozenset({COMPARE, LIST_FITS})
_SET_AGAINST: Final = frozenset({LOOK_ALIKE, HAZARD, IDENTIFY_MOUNT, COMPARE, WHY})
_PARTED: Final = frozenset({CHAIN, LOOK_ALIKE, HAZARD, IDENTIFY_MOUNT, "definition", "list-fits", "buy-plan"})
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


def with_two(
    question: Question, named: tuple[Thing, ...], catalogue: Catalogue, before: Question | None = None
) -> Question:
    """A question that sets 'the two' apart and names none of them, as one of the two that were told of last."""
    between = _with_part_between(question, before, catalogue)
    if between is not None:
        return between
    if len(named) != TWO or question.intent not in _SETTING or not mentions(question, "two-of-before"):
        return question
    if question.intent == IDENTIFY_MOUNT and question.places("which-is-mine"):
        return question  # which of the two one has, and not what sets them apart
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


def _with_part_between(question: Question, before: Question | None, catalogue: Catalogue) -> Question | None:
    """'whats the proper part between them' after two mounts set against each other: a lens of the one on the other.

    The lens is that of the longer register, since only it leaves room for a part.
    """
    asked = question.follows and question.intent in _PARTED and mentions(question, "part-between")
    if before is None or not asked or before.intent not in _SET_AGAINST:
        return None
    if any(lens.ids for lens in before.lenses) and any(body.ids for body in before.bodies):
        return None  # between that lens and that body
    ids = dict.fromkeys(_mounts_of(before))
    known = [catalogue.mounts[one] for one in ids if is_known(catalogue.mounts[one].register_mm)][:TWO]
    if len(known) < TWO or any(_is_typed(thing, question.text) for thing in (*question.lenses, *question.bodies)):
        return None
    sizes = {mount.id: mount.register_mm.nominal for mount in known if is_known(mount.register_mm)}
    # of registers alike it is the screw that a thin flange takes into a bayonet
    lens, body = sorted(sizes, key=lambda one: (-round(sizes[one], 2), catalogue.mounts[one].coupling != "screw"))
    lenses = (Thing(kind="mount", ids=(lens,)),)
    return question.with_(intent=CHAIN, lenses=lenses, bodies=(Thing(kind="mount", ids=(body,)),), adapters=())


def _mounts_of(question: Question | None) -> Iterator[str]:
    """The mounts that a talk has told of, the last named first; those of a ring or a tube too."""
    while question is not None:
        things = (*question.lenses, *question.bodies, *question.things)
        yield from (one.ids[0] for one in things if one.kind == "mount" and one.ids)
        yield from (id_ for piece in question.adapters for id_ in (*piece.front[:1], *piece.rear[:1]))
        question = question.prior if question.follows else None


def _is_typed(thing: Thing, text: str) -> bool:
    """Whether the thing is named in this very text, and not lent by the question before."""
    words = thing.words.casefold()
    return bool(words) and words in text.casefold()
