"""The ways between one lens and one body that a question sets against each other: which pieces go into each."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import groupby, pairwise

from engine.answers.parts.said import mentions
from engine.answers.parts.usual_mounts import HUB as USUAL_HUB
from engine.answers.parts.usual_mounts import usual_mount
from engine.base.compact import compact
from engine.facts.catalogue import Catalogue
from engine.facts.kinds import GLASS_KINDS, TUBELIKE
from grammar.questions import RING, Limits, Question, Thing

DEARER = frozenset({"electronic-adapter", "tilt", "shift"})  # rings that do more than hold, and cost more
CLOSE_UP_LENS = "close-up-lens"
HUB = "hub"
_LEAST = 2  # rings named by both their ends
_LISTED = re.compile(r"[\s,]*(?:mm)?[\s,]*(?:and)?\s*")


@compact
class Way:
    """One of the ways: what it is called, the pieces named for it, and what it is held to."""

    name: str
    pieces: tuple[Thing, ...] = ()
    limits: Limits = Limits()

    @property
    def factor(self) -> float | None:
        """The factor of its glass; None where no piece tells one."""
        told = [thing.factor for thing in self.pieces if thing.factor is not None and thing.piece in GLASS_KINDS]
        return told[0] if told else None

    @property
    def comes_near(self) -> bool:
        return any(thing.piece in TUBELIKE or thing.piece == CLOSE_UP_LENS for thing in self.pieces)


def ways_told(question: Question, facts: Catalogue) -> list[Way]:
    """The ways, in the order they are told; fewer than two where nothing is set against anything."""
    ways = [_way(group) for group in _groups(question)]
    if len(ways) == 1 and _against_plain(ways[0], question):
        plain = "direct" if len(ways[0].pieces) > 1 else "plain ring"
        ways.append(Way(plain, (), Limits(without_glass=True, pieces=1)))
    hubbed = any(thing.piece == HUB for thing in question.adapters)
    if hubbed or question.limits.using:
        ways = _by_hub(ways, question, facts)
    return list({way.name: way for way in ways}.values())


def are_set_apart(question: Question) -> bool:
    """Whether 'or' or 'vs' stands between two of the pieces told."""
    return _parts([_between(one, other, question) for one, other in pairwise(_in_order(question))])


def _in_order(question: Question) -> list[Thing]:
    told = sorted((one for one in question.adapters if one.piece != HUB), key=lambda one: one.column)
    told = [one for n, one in enumerate(told) if not (one.piece in GLASS_KINDS and _is_said_again(one, told[:n]))]
    if sum(bool(one.front and one.rear) for one in told) < _LEAST:
        return told
    return [one for one in told if not _only_counts(one)]


def _is_said_again(one: Thing, before: Sequence[Thing]) -> bool:
    """'a booster with glass (focal reducer)': the same kind of glass once more, of which nothing else is told."""
    told = one.front or one.rear or one.ids or one.factor is not None or one.thickness_mm is not None
    return not told and any(other.piece == one.piece for other in before)


def _only_counts(one: Thing) -> bool:
    """'two rings instead of one': beside rings that are named it says only how many there are."""
    told = one.front or one.rear or one.ids or one.factor is not None or one.thickness_mm is not None
    return one.piece == RING and not told


def _parts(between: Sequence[Link | None]) -> bool:
    return any(link is not None and link.apart for link in between)


def _groups(question: Question) -> list[list[Thing]]:
    """The pieces parted where 'or' or 'vs' stands between them; where none does, each is a way of its own."""
    optical = [thing for thing in _in_order(question) if thing.piece in GLASS_KINDS]
    if len(optical) > 1:
        return [[thing] for thing in optical]  # the ring named with several reducers is none of them
    things = _in_order(question)
    between = [_between(one, other, question) for one, other in pairwise(things)]
    parted = _parts(between)
    groups: list[list[Thing]] = [things[:1]] if things else []
    for thing, link in zip(things[1:], between, strict=False):
        listed = link is not None and parted and link.listed and thing.piece in TUBELIKE
        joined = link is not None and (link.empty or link.added or (parted and link.together) or listed)
        led_on = not parted and _leads_on(groups[-1][-1], thing)
        if _is_of_one_row(groups[-1][-1], thing) or led_on or (link is not None and joined and not link.apart):
            groups[-1].append(thing)
        else:
            groups.append([thing])
    return groups


def _is_of_one_row(one: Thing, other: Thing) -> bool:
    """'tube set 7 14 28': pieces told by one description are one way, in all."""
    return bool(one.words) and one.words == other.words and 0 < other.column - one.column < len(one.words)


def _leads_on(one: Thing, other: Thing) -> bool:
    """'M42 to EF then EF to E': the one ring ends on the mount that the other takes."""
    return bool(one.rear and other.front) and one.rear[0] == other.front[0]


@compact
class Link:
    """What stands between two things as typed: nothing, or words that add, join or part."""

    empty: bool
    added: bool
    together: bool
    apart: bool
    listed: bool  # '12, 20 and 36 tubes or a bellows'


def _between(one: Thing, other: Thing, question: Question) -> Link | None:
    """None where the two are not both of this line."""
    text, start, end = question.text, one.column - 1 + len(one.words), other.column - 1
    here = all(text[thing.column - 1 :].startswith(thing.words) and thing.words for thing in (one, other))
    if not here or start > end:
        return None

    def holds(key: str) -> bool:
        return any(start <= place.at < end for place in question.places(key))

    between = text[start:end]
    return Link(
        not between.strip(), "+" in between or holds("added-to"), "&" in between or holds("together-with"),
        holds("set-against"), bool(_LISTED.fullmatch(between)),
    )  # fmt: skip


def _way(group: Sequence[Thing]) -> Way:
    names = (thing.words.strip() or thing.piece or "piece" for thing in group)
    name = " + ".join(name for name, _ in groupby(names))  # one description may tell of several
    glassless = all(thing.piece not in GLASS_KINDS and thing.factor is None for thing in group)
    return Way(name, tuple(group), Limits(without_glass=glassless))


def _against_plain(way: Way, question: Question) -> bool:
    """Whether the one piece told is set against the plain ring that is only meant: 'the reducer or not'."""
    more = way.factor is not None or way.comes_near or any(thing.piece in GLASS_KINDS for thing in way.pieces)
    more = more or len(way.pieces) > 1 or any(thing.piece in DEARER for thing in way.pieces)
    return more and mentions(question, "plain-way", "worth-it", "either-or", "instead")


def _by_hub(ways: Sequence[Way], question: Question, facts: Catalogue) -> list[Way]:
    """'over M as a hub or direct': the hub against one ring."""
    named = [thing for thing in question.adapters if thing.piece == HUB]
    told = [thing.front[0] for thing in named if thing.front]
    mounts = told or question.limits.using or usual_mount(USUAL_HUB, facts)
    hub = Way("through a hub", (), Limits(using=tuple(mounts[:1]), pieces=2, without_glass=True))
    direct = Way("direct", (), Limits(pieces=1, without_glass=True))
    return [direct, hub, *(way for way in ways if way.factor is not None or way.comes_near)]
