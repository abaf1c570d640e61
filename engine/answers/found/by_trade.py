"""Whether a lens is of the days of film; and a screw that cameras of industry have at registers of their own."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.said import mentions
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from grammar.kinds import BUY_PLAN, CHAIN, FOCUS_VERDICT, LOOK_ALIKE, MACRO_DISTANCE
from grammar.questions import Question, Thing

REGISTER: Final = "flange_to_image"
INDUSTRIAL: Final = "industrial"  # the kind of mount
CINE: Final = "cine"
MODERN: Final = "mirrorless"  # and of which no lens is of the days of film
_FEW_BUILT = 4  # mounts with a format that is seldom built
_OLD_KINDS: Final = frozenset(["rangefinder"])  # cameras with a screw and a bayonet of one system
FILM_YEAR: Final = re.compile(r"\b19[2-9]\d(?!\d)")  # of the days of film
SAID: Final = "seen-industrial"  # key of the words for it
_OF_A_SEAT: Final = frozenset([CHAIN, FOCUS_VERDICT, MACRO_DISTANCE, BUY_PLAN])


def of_its_trade(question: Question, facts: Catalogue) -> Question:
    """The question with the mounts of that trade in place of the one that shares their thread.

    Where a body is asked of it is the body's; where two mounts are set side by side that of the nearer one. Bodies of a
    format that few are built with are told by that.
    """
    if any(body.format for body in question.bodies):
        question = question.with_(bodies=tuple(_of_its_format(body, facts) for body in question.bodies))
    told = [one for one in question.mentioned if one.key == SAID]
    if not told or question.said(REGISTER) is not None:  # a register that is told tells more
        return question
    at = told[0].at
    if question.intent == LOOK_ALIKE and question.lenses and question.bodies:
        near = min((*question.lenses, *question.bodies), key=lambda thing: abs(thing.column - at))
        lenses = tuple(_traded(one, facts) if one is near else one for one in question.lenses)
        bodies = tuple(_traded(one, facts) if one is near else one for one in question.bodies)
        return question.with_(lenses=lenses, bodies=bodies)
    if not question.bodies or any(_is_of_lens(lens, at) for lens in question.lenses):
        return question
    bodies = tuple(
        body if _is_cine(body, facts) else _traded(_threaded(body, question, facts), facts) for body in question.bodies
    )
    return question if bodies == question.bodies else question.with_(bodies=bodies)


def of_open_register(thing: Thing, question: Question, facts: Catalogue) -> Thing:
    """'a machine vision lens with M42x1': its thread is no still camera's, and what its register is nothing tells."""
    own = facts.mounts.get(thing.ids[0]) if thing.kind == "mount" and thing.ids else None
    if own is None or own.thread is None or own.kind == CINE or question.intent not in _OF_A_SEAT:
        return thing
    if not question.mentions(SAID) or question.said(REGISTER) is not None:
        return thing
    mates = (facts.mounts[one] for one in sorted({*mates_of(own.id, facts), own.id}))
    open_ = tuple(one.id for one in mates if one.kind == INDUSTRIAL and not is_known(one.register_mm))
    exact = own.kind == INDUSTRIAL and not thing.ambiguous
    return replace(thing, ids=open_) if open_ and not exact else thing


def _is_of_lens(lens: Thing, at: int) -> bool:
    """Whether the word stands within what tells of the lens: 'my industrial M42 lens'."""
    return lens.column <= at < lens.column + len(lens.words) or 0 <= lens.column - at < len(INDUSTRIAL) + 2


def _threaded(body: Thing, question: Question, facts: Catalogue) -> Thing:
    """A body of which only its thread is told: with the first mount that has it."""
    told = (question.said("thread") or "").replace(" ", "").casefold()
    if body.ids or not told:
        return body
    ids = [one.id for one in facts.mounts.values() if one.thread == told and one.coupling == "screw"]
    return replace(body, kind="mount", ids=tuple(ids[:1])) if ids else body


def _is_cine(body: Thing, facts: Catalogue) -> bool:
    """'a machine vision cam with a c mount': the screw of cine lenses is that of inspection cameras too."""
    own = facts.mounts.get(body.ids[0]) if body.kind == "mount" and body.ids else None
    return own is not None and own.kind == CINE


def _traded(thing: Thing, facts: Catalogue) -> Thing:
    """The thing with every industrial mount of its thread, where its own is not one."""
    own = facts.mounts.get(thing.ids[0]) if thing.kind == "mount" and thing.ids else None
    if own is None or own.kind == INDUSTRIAL or own.thread is None:
        return thing
    ids = tuple(one.id for one in facts.mounts.values() if one.kind == INDUSTRIAL and one.thread == own.thread)
    return replace(thing, ids=ids) if ids else thing


def is_of_film(question: Question) -> bool:
    return mentions(question, "film-days") or FILM_YEAR.search(question.text) is not None


def of_its_kin(thing: Thing, question: Question, catalogue: Catalogue) -> Thing:
    """The lens by the kind of camera that it goes on, or that it was made for."""
    return of_open_register(of_kin_to_body(thing, question, catalogue), question, catalogue)


def of_kin_to_body(thing: Thing, question: Question, catalogue: Catalogue) -> Thing:
    """'a screw-mount 90 for my M body': of several mounts first the one of the same kind of camera as the body."""
    bodies = [catalogue.mounts[one.id] for one in question.bodies if one.id is not None and one.id in catalogue.mounts]
    named = [catalogue.mounts[id_] for id_ in thing.ids if id_ in catalogue.mounts]
    board = [mount.id for mount in named if mount.kind == INDUSTRIAL and mount.thread]
    if thing.ambiguous and len(board) == 1 and any(one.thread and one.kind in (CINE, INDUSTRIAL) for one in bodies):
        return replace(thing, ids=tuple(board))  # 'an S lens in a CS camera' is a board lens, and has no bayonet
    kinds = {mount.kind for mount in bodies} & _OLD_KINDS
    kin = [mount.id for mount in named if mount.kind in kinds]
    if not thing.ambiguous or len(kin) != 1:
        return thing
    return replace(thing, ids=(*kin, *(id_ for id_ in thing.ids if id_ not in kin)))


def _of_its_format(body: Thing, catalogue: Catalogue) -> Thing:
    """'the 45x30 S body': of several mounts of one name those that are built with a format which few are built with."""
    if body.kind != "mount" or not body.ambiguous or body.format is None:
        return body
    built = [one.id for one in catalogue.mounts.values() if body.format in (one.format, *one.formats)]
    kept = tuple(name for name in body.ids if name in built) if len(built) <= _FEW_BUILT else ()
    return replace(body, ids=kept) if kept else body


def is_modern(body: Thing, catalogue: Catalogue) -> bool:
    """Whether a body is told by a mount of mirrorless bodies."""
    return body.id is not None and body.id in catalogue.mounts and catalogue.mounts[body.id].kind == MODERN


def mates_of(one: str, catalogue: Catalogue) -> frozenset[str]:
    """The mounts whose lenses go into the same holder: they share its thread or its bayonet."""
    mount = catalogue.mounts[one]
    alike = {other.id for other in catalogue.mounts.values() if mount.thread and other.thread == mount.thread}
    return frozenset(alike | set(mount.shares_bayonet)) - {one}
