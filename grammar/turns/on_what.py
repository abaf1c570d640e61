"""Which body a follow-up is about, and which of its mounts is that of a body."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import (
    CARD,
    CHAIN,
    COMPARE,
    CROP_EQUIVALENT,
    DIY_DIMENSION,
    DRAW,
    FOCUS_VERDICT,
    IDENTIFY_MOUNT,
    LIST_FITS,
)
from grammar.questions import ALL, Question, Thing
from grammar.things.cast import Cast
from grammar.things.casting import Part
from grammar.things.phrases import TOWARDS
from grammar.turns.adding import each_once
from grammar.turns.body_picked import bodies_so_far, views_two_bodies, weighs_two_bodies
from grammar.turns.likened_frame import frames_kept
from grammar.turns.whom import Meant
from grammar.words.groups import EARLIER, READ_OUT

FULL: Final = "35mm-full-frame"
SMALL_GAUGE: Final = "small-gauge"  # trait of formats that the lenses of small cine cameras are for
_CINE, _SUPER_8 = "cine", "s8-image"
_OF_ELSE: Final = frozenset(["MOUNTWORD", "LENS", "PIECE"])  # what may be old as well as a body
LIKENED: Final = frozenset(["in", "to"])
_LIKENING: Final = frozenset(["looks-like", "equiv", "set-beside"])
_VERSUS: Final = "vs"
GOES_ON: Final = "it-goes-on"  # a phrase of what a lens named before goes on
_PAIR: Final = 2
_HEADED: Final = (["lens"], ["lenses"], ["one"], ["ones"])  # how a name ends that is told to be of a lens
_ONE: Final = "one"
_VERSIONS: Final = frozenset(["version", "variant"])  # of a lens, made for more than one mount
_ON_BODY: Final = frozenset([CHAIN, FOCUS_VERDICT, DRAW, CARD])  # what needs a body


def bodies_of(
    heard: Heard, said: Question, before: Question, found: Meant | None
) -> tuple[tuple[Thing, ...], tuple[Thing, ...]]:
    """A format alone is another body of the same mount."""
    if said.intent == IDENTIFY_MOUNT and before.lenses and not any(part.focal for part in heard.cast.lenses):
        denied = tuple(replace(part, sort="lens").thing() for part in heard.cast.denied)
        mounts = tuple(thing for thing in (*said.lenses, *said.bodies, *denied) if thing.kind == "mount")
        return before.bodies, (*said.things, *mounts)
    if found is not None and not heard.cast.bodies:
        return before.bodies, said.things or frames_kept(said, before)
    if is_other_body(heard, before):
        frames = tuple(one for one in before.elsewhere if one.kind == "format")
        return ((), frames) if frames else (before.elsewhere, said.things)  # 'the other body again'
    viewed = said.intent == CROP_EQUIVALENT and views_two_bodies(heard, before)
    if viewed or (said.intent == COMPARE and weighs_two_bodies(heard, before)):
        return bodies_so_far(before), said.things
    if (
        (heard.tells("both-bodies") or _is_both_bodies(heard, before))
        and before.prior is not None
        and not any(part.mounts for part in heard.cast.bodies)
    ):
        return each_once((*before.prior.bodies, *before.bodies)), said.things  # 'for both bodies'
    if _is_that_body(heard, said) and before.bodies:
        return before.bodies, said.things or before.things  # 'the body has 5184 across'
    if _is_that_body(heard, said) and not before.bodies and bodies_so_far(before):
        return bodies_so_far(before)[-1:], said.things  # 'same body' after 'does it cover full frame'
    unknown = any(part.strange is not None and not part.has_mount for part in heard.cast.bodies)  # another camera
    if before.bodies and any(is_film_camera(part, heard.cast) for part in heard.cast.bodies):
        return before.bodies, tuple(thing for thing in before.things if thing.kind == "format")
    if said.bodies and not (said.bodies[0].ids or said.bodies[0].kind or unknown) and before.bodies:
        # 'if I flip the body to its 1.6 crop': the frame told beside it is what it uses then
        named = [thing.id for thing in said.things if thing.kind == "format"]
        changed = replace(
            before.bodies[0],
            format=next(filter(None, (said.bodies[0].format, *named)), None) or before.bodies[0].format,
        )
        if before.bodies[0].kind in ("mount", "body"):
            rest = tuple(thing for thing in said.things if thing.kind != "format")
            return (changed, *before.bodies[1:]), rest
    if said.bodies or "bodies" in (said.said(ALL) or ""):
        return said.bodies, said.things
    if said.lenses and before.lenses and is_a_body(said.lenses[0], said, before, heard.cast.hosts):
        return said.lenses, said.things
    framed = frames_kept(said, before)
    formats = [thing for thing in said.things if thing.kind == "format"]
    if (_is_likened(heard, said) or _has_no_such(heard, said, before)) and (before.bodies or framed):
        formats = [thing for thing in formats if thing.id != FULL]  # 'the one with the 1/2.3 chip, what in full frame'
        if not formats or not before.bodies:
            return before.bodies, framed
    if formats and len(before.lenses) > 1 and {thing.id for thing in formats} <= {thing.id for thing in framed}:
        return before.bodies, framed  # 'if ISO 400 on the full frame': one of the frames that the lenses are on
    if formats and before.bodies and is_mode(heard):
        return before.bodies, said.things
    if formats and before.bodies and before.bodies[0].kind in ("mount", "body"):
        rest = tuple(thing for thing in said.things if thing.kind != "format")
        return (replace(before.bodies[0], format=formats[0].id), *before.bodies[1:]), rest
    kept = () if formats or said.intent != before.intent else framed  # 'black corners how bad' names no other frame
    return before.bodies, (*kept, *said.things) if kept else said.things or framed


def is_film_camera(part: Part, cast: Cast) -> bool:
    """'and i have an old 8mm movie camera with three lenses': what these come from, and nothing that they go on."""
    film = any(one.ids[0] in cast.having(SMALL_GAUGE) for one in part.formats)
    cine = _CINE in part.traits or any(one.ids[0] == _SUPER_8 for one in part.formats)
    return film and cine and not part.mounts and part.named is None and part.noun.role not in TOWARDS


def _is_both_bodies(heard: Heard, before: Question) -> bool:
    """'one ring for both?' after one lens on a body, then on another."""
    said = any(cue.tells in ("pick:both", "one-ring") for cue in heard.cues)  # 'do they share a ring'
    both = said and len(before.known or before.lenses) == 1
    prior = before.prior.bodies if before.prior is not None else ()
    return both and len(prior) == len(before.bodies) == 1 and prior[0].ids[:1] != before.bodies[0].ids[:1]


def is_mode(heard: Heard) -> bool:
    """'and in Super 16 mode': the frame is a part of the sensor that is spoken of, and no other sensor."""
    formats = any(part.formats for part in heard.cast.frames)
    return formats and reads_a_part(heard)


def reads_a_part(heard: Heard) -> bool:
    """Whether a word tells that only a part of the sensor is read out: 'crop', 'mode', 'window'."""
    return any(READ_OUT in token.listed.of(word) for token in heard.line.tokens for word in token.text.split())


def _is_that_body(heard: Heard, said: Question) -> bool:
    """Whether one body is spoken of, and nothing is told of it."""
    bare = len(heard.cast.bodies) == 1 and heard.cast.bodies[0].is_bare and not heard.cast.frames
    return bare and len(said.bodies) == 1 and not any(thing.kind == "format" for thing in said.things)


def pair_of_ring(
    said: Question, lenses: tuple[Thing, ...], bodies: tuple[Thing, ...]
) -> tuple[tuple[Thing, ...], tuple[Thing, ...]]:
    """'how thick is the OM to X one' of several lenses and bodies: the lens and the body that the ring is between."""
    ring = said.adapters[0] if len(said.adapters) == 1 else None
    if ring is None or not (ring.front and ring.rear) or len(lenses) + len(bodies) <= _PAIR:
        return lenses, bodies
    before = tuple(lens for lens in lenses if set(lens.ids[:1]) & set(ring.front))
    behind = tuple(body for body in bodies if set(body.ids[:1]) & set(ring.rear))
    return (before, behind) if before and behind else (lenses, bodies)


def is_never_full(heard: Heard, before: Question) -> bool:
    """Whether the body of before is of a mount of which none is of full frame."""
    return len(before.bodies) == 1 and before.bodies[0].id in heard.cast.never_full


def _has_no_such(heard: Heard, said: Question, before: Question) -> bool:
    """'full frame?' after a lens on MFT: that it is likened to, since no such body is of full frame."""
    full = any(part.formats and part.formats[0].ids[0] == FULL for part in heard.cast.frames)
    anew = said.intent == CROP_EQUIVALENT != before.intent  # 'and full frame' after a view is another frame
    return anew and full and is_never_full(heard, before)


def _is_likened(heard: Heard, said: Question) -> bool:
    """'what is that in full frame', 'full frame look?': the frame it is likened to, which no body gets by that."""
    full = [part for part in heard.cast.frames if part.formats and part.formats[0].ids[0] == FULL]
    beside = bool(full) and (full[0].noun.join == _VERSUS or any(one.value == _VERSUS for one in heard.line.tokens))
    likened = bool(full) and (full[0].noun.role in LIKENED or beside or any(map(heard.tells, _LIKENING)))
    if likened and full[0].noun.role == "on" and heard.tells("match"):
        return False  # 'which lens on full frame for that view'
    return said.intent == CROP_EQUIVALENT and likened


def is_other_body(heard: Heard, before: Question) -> bool:
    """'the other body', 'the first body again', 'and the old body': the one that the lens stood on before."""
    bare = heard.cast.bodies and all(part.is_bare for part in heard.cast.bodies)
    other = any(cue.tells == "pick:other" for cue in heard.cues) or (
        heard.tells("brief") and heard.readings.number == 1
    )
    earlier = other or _is_earlier_body(heard)
    return bool(before.elsewhere) and ((bool(bare) and earlier) or _is_on_the_first(heard, before))


def _is_on_the_first(heard: Heard, before: Question) -> bool:
    """'and on the first?', 'back on the first body' after two: of bodies, and no chain by its number."""
    named = any(part.mounts for part in heard.cast.bodies) or heard.weighed.best == COMPARE
    older = before.prior.elsewhere if before.prior is not None else ()
    if any(one.ids not in [body.ids for body in (*before.elsewhere, *before.bodies)] for one in older):
        return False  # there were more than two
    pairs = [(one.value if one.kind == "PREP" else one.kind, two.kind) for one, two in pairwise(heard.line.tokens)]
    return heard.readings.number == 1 and not named and (("on", "ORDINAL") in pairs or ("ORDINAL", "BODY") in pairs)


def without_body_number(heard: Heard, said: Question, before: Question) -> Question:
    """The question with no number of a chain where that counts bodies: 'the other body', 'the second body is a Z'."""
    tokens = heard.line.tokens
    counted = any(one.kind == "ORDINAL" and two.kind == "BODY" for one, two in pairwise(tokens))
    named = counted and any(part.mounts for part in heard.cast.bodies)
    viewed = views_two_bodies(heard, before)
    return said.with_(number=None) if named or viewed or is_other_body(heard, before) else said


def _is_earlier_body(heard: Heard) -> bool:
    """Whether an earlier one is spoken of, and it is the body: not 'can the old screw hurt the camera'."""
    tokens = heard.line.tokens
    at = [n for n, token in enumerate(tokens) if EARLIER in token.groups]
    return any(not tokens[n + 1 : n + 2] or tokens[n + 1].kind not in _OF_ELSE for n in at)


def _is_of_plan(named: Thing, said: Question, before: Question) -> bool:
    """'thickness of the L ones' after several lenses on several bodies: the rings for that body, or to that hub."""
    stood_for = named.kind == "mount" and named.words.casefold().split()[-1:] in (["ones"], ["one"])
    known = {id_ for lens in before.lenses for id_ in lens.ids}
    alone = len(said.lenses) == 1 and not said.bodies and named.focal_length_mm is None
    return stood_for and alone and len(before.lenses) > 1 and bool(before.bodies) and not set(named.ids) & known


def _is_here(named: Thing, said: Question, before: Question) -> bool:
    """'ring for the L one' after a lens on Z and on L: the body of that name, and no lens."""
    stood_for = named.kind == "mount" and named.words.casefold().split()[-1:] in (["one"], ["ones"])
    bodies = {id_ for body in (*before.bodies, *before.elsewhere) for id_ in body.ids}
    lenses = {id_ for lens in (*before.known, *before.lenses) for id_ in lens.ids}
    alone = len(said.lenses) == 1 and not said.bodies and named.focal_length_mm is None
    return stood_for and alone and bool(bodies & set(named.ids)) and not lenses & set(named.ids)


def _is_host(named: Thing, old: Thing, said: Question, before: Question, hosts: frozenset[str]) -> bool:
    """'what about an RF one' after an enlarger lens on E: another body, of a mount that such lenses never have."""
    stood_for = named.kind == "mount" and named.words.casefold().split()[-1:] == ["one"]
    alone = len(said.lenses) == 1 and not said.bodies and named.focal_length_mm is None
    hosted = bool(hosts & set(named.ids)) and any(hosts & set(one.ids) for one in before.bodies)
    return (
        stood_for
        and alone
        and hosted
        and bool(old.ids)
        and old.focal_length_mm is not None
        and not (hosts & set(old.ids))
    )


def _is_ring_for(named: Thing, old: Thing, said: Question, before: Question, hosts: frozenset[str]) -> bool:
    """'so which ring for EF' after a lens that was measured, 'cost of an E ring' after one found: what it goes on."""
    ring = len(said.adapters) == 1 and said.adapters[0].piece == "adapter" and not said.adapters[0].ids
    ring = ring or said.intent == DIY_DIMENSION  # 'how thick for EF'
    measured = before.said("flange_to_image") is not None or before.said("thread") is not None
    found = bool(hosts & set(named.ids)) and not hosts & set(old.ids) and named.focal_length_mm is None
    meant = found if old.ids else measured
    others = len(before.lenses) > 1 and not {id_ for one in before.lenses for id_ in one.ids} & set(named.ids)
    meant = meant or (others and all(one.ids for one in before.lenses))  # 'rings for an F mount' after T2 and Adaptall
    return ring and meant and named.kind == "mount" and not said.bodies and not before.bodies


def _is_other_ring(named: Thing, old: Thing, said: Question, before: Question, hosts: frozenset[str]) -> bool:
    """'and for the X one' after the ring from OM to E: that from OM to X, since no lens with X has a ring to E."""
    ringed = any(one.piece == "adapter" for one in before.adapters) or " to " in f" {before.text.casefold()} "
    alone = len(said.lenses) == 1 and not said.bodies and named.kind == "mount"
    plain = named.focal_length_mm is None and named.lens_kind is None and old.focal_length_mm is None
    hosted = bool(hosts & set(named.ids)) and any(hosts & set(one.ids) for one in before.bodies)
    lens = bool(old.ids) and not hosts & set(old.ids) and len(before.lenses) == 1
    return ringed and alone and plain and hosted and lens


def is_a_body(named: Thing, said: Question, before: Question, hosts: frozenset[str]) -> bool:
    """'and MFT?' after a lens of a told focal length: that lens keeps its mount, so another body is meant.

    'and C/Y?' after a lens on E is another lens. `hosts`: mounts that, named alone, are those of a body.
    """
    old, words = before.lenses[0], named.words.casefold().split()
    stood = bool(before.bodies) and named.ids[:1] == before.bodies[0].ids[:1]
    if _VERSIONS & set(words) or (words[-1:] == [_ONE] and stood):
        return False  # 'the C version', 'and a K one' after an M42 lens on a K body
    if _is_of_plan(named, said, before) or _is_here(named, said, before) or _is_host(named, old, said, before, hosts):
        return True
    if _is_ring_for(named, old, said, before, hosts):
        return True
    if _is_other_ring(named, old, said, before, hosts):
        return True
    mount_only = named.kind == "mount" and named.words.casefold().split()[-1:] not in _HEADED
    if named.ids == old.ids or named.focal_length_mm is not None or named.lens_kind is not None:
        return False
    if not mount_only or len(said.lenses) != 1 or said.bodies or not old.ids:
        return False
    asked_for = before.intent in _ON_BODY or (
        before.intent == LIST_FITS and (said.topic == "not" or bool(hosts & set(named.ids)))
    )
    if asked_for and not any(body.ids for body in before.bodies):
        return True  # the body is what was asked for
    stood_on = before.bodies[0] if before.bodies else None
    hosted = stood_on is not None and (stood_on.kind == "body" or bool(hosts & set(stood_on.ids)))
    goes_on = old.focal_length_mm is not None and before.mentions(GOES_ON)  # 'a P6 80, does it go on E', 'F too?'
    if hosted and not hosts & set(named.ids) and said.topic != "not" and not goes_on:
        return False
    told = old.focal_length_mm is not None or said.topic == "not" or _goes_along_bodies(before)
    return bool(told and before.bodies)


def _goes_along_bodies(before: Question) -> bool:
    """'an F lens', 'even K?', 'EF then': the body alone was another in the question before too."""
    prior = before.prior
    same = prior is not None and before.follows and [one.ids for one in prior.lenses] == [o.ids for o in before.lenses]
    return same and prior is not None and [one.ids for one in prior.bodies] != [one.ids for one in before.bodies]
