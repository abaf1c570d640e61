"""A helicoid that is set to one length in a talk: the rings beside it are those that it stood between before."""

from __future__ import annotations

from engine.answers.parts.knowledge import Knowledge, choose
from engine.answers.shims.named_pieces import with_named_pieces
from engine.base.compact import replace
from engine.chains.setup import Setup
from engine.chains.walk import ADDED_FOCUSING
from grammar.questions import Limits, Question, Thing
from grammar.turns.spans import span_of


def as_it_stood(question: Question, setup: Setup, named: Knowledge, limits: Limits, knowledge: Knowledge) -> Limits:
    """The limits that ask for those rings too; as they are where nothing was set, or the rings lead nowhere now.

    `named`: the knowledge with the pieces as they are set; `knowledge`: that without them.
    """
    ranged = tuple(_drawn(thing) for thing in question.adapters)
    if ranged == question.adapters:
        return limits
    drawn, of_drawn = with_named_pieces(
        question.with_(adapters=ranged), setup.lens_mount.id, setup.body_mount.id, knowledge
    )
    stood = choose(drawn, setup, of_drawn, 1).listed
    if not stood:
        return limits
    pieces = stood[0].judged.chain.adapters
    rings = [one.id for one in pieces if one.kind not in ADDED_FOCUSING and one.id in knowledge.catalogue.adapters]
    most = None if limits.pieces is None else max(limits.pieces, len(pieces))
    kept = replace(limits, using=tuple(dict.fromkeys((*limits.using, *rings))), pieces=most)
    return kept if choose(named, setup, kept, 1).listed else limits


def _drawn(thing: Thing) -> Thing:
    """The piece with both ends of its draw, where it is set to one length of it."""
    span = span_of(thing)
    return thing if span is None else replace(thing, thickness_mm=span)
