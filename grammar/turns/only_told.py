"""What a fragment only tells: nothing is asked of it, so that the question before goes on."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import CHAIN, FOCUS_VERDICT, HAZARD
from grammar.questions import Question
from grammar.things.casting import Part
from grammar.things.rows_of_mounts import HELD
from grammar.words.groups import OFFERED

_IDLE: Final = frozenset(
    ["ok", "right", "will", "can", "sure", "calipers", "means", "image-lands", "rear-stands", "it-is"]
)  # cues that ask for nothing
_SEEN: Final = frozenset(["flange_to_image", "circle", "close_focus"])  # measured of a lens, whatever is asked of it
_ASKED: Final = 1.5  # evidence from this weight up asks for something
_SURE: Final = 0.5  # from which an intent is the one that a fragment asks for
_IT: Final = "it"
_ITS: Final = frozenset(["the", "its"])
_THROUGH: Final = frozenset(["with", "via", "on", "through", "in"])  # prepositions before a ring that a lens is put on


def only_tells(heard: Heard, best: str | None) -> bool:
    """'ok and the 300', 'no, 74.5 from flange to image': a thing or a measure told, and nothing asked of it."""
    values = heard.readings.values.keys()
    sure = best is None or heard.weighed.likely.get(best, 0.0) >= _SURE
    asked = best is not None and heard.weighed.weight(best) >= _ASKED  # 'and close up with a tube'
    if best is None or (sure and not _SEEN & values and (values or asked or not _opens_with_and(heard))):
        return False
    things = any(not part.is_bare for part in (*heard.cast.lenses, *heard.cast.bodies, *heard.cast.pieces))
    return (things or bool(_SEEN & values)) and all(cue.tells in _IDLE for cue in heard.cues)


def names_the_pair(heard: Heard, before: Question) -> bool:
    """'on E with OM 28' after 'what stop forgives 0.3 mm' or '4608 pixels, UHD?': lens and body of what had neither."""
    named = any(part.has_mount for part in heard.cast.lenses) and any(part.has_mount for part in heard.cast.bodies)
    open_yet = not any(thing.ids or thing.focal_length_mm for thing in (*before.lenses, *before.bodies))
    sized = before.said("thickness") is not None or before.said("pixels") is not None
    return named and open_yet and sized and all(cue.tells in _IDLE for cue in heard.cues)


def _opens_with_and(heard: Heard) -> bool:
    first = next((one for one in heard.line.tokens if one.text.casefold() not in _IDLE), None)
    return first is not None and first.kind == "JOIN"


def with_ring_held(heard: Heard, before: Question) -> Heard:
    """'I already own M42 to K' after an M42 lens on an E body: a ring at hand, which names neither of the two anew."""
    cast = heard.cast
    offered = heard.tells(HELD) or any(
        OFFERED in one.groups for one in heard.line.tokens
    )  # 'a shop sells me an LTM to E'
    if not (offered and len(cast.lenses) == len(cast.bodies) == 1 and not cast.pieces):
        return heard
    front, rear = cast.lenses[0], cast.bodies[0]
    bare = all(len(one.mounts) == 1 and one.noun.head is None and not one.focal for one in (front, rear))
    if not bare or rear.noun.role != "to" or not _touches(front.mounts[0].ids, rear.mounts[0].ids, before):
        return heard
    ring = replace(front, sort="piece", piece="adapter", mounts=[*front.mounts, *rear.mounts])
    return replace(heard, cast=replace(cast, lenses=[], bodies=[], pieces=[ring]))


def _touches(front: tuple[str, ...], rear: tuple[str, ...], before: Question) -> bool:
    """Whether a ring takes the lens that is spoken of or fits the body that is."""
    lenses, bodies = {id_ for one in before.lenses for id_ in one.ids}, {id_ for b in before.bodies for id_ in b.ids}
    return bool(lenses and bodies) and bool(lenses & set(front) or bodies & set(rear))


def without_lent(heard: Heard, before: Question) -> Heard:
    """'no, the F ring' between a lens and a body that are known: its mount is that of neither, but which ring.

    So it is with both mounts of a ring that takes the lens or fits the body, and where the body is named beside.
    Nor is 'I put it on with an M42 to E ring' said of another lens than the one spoken of.
    """
    cast = heard.cast
    if _of_it(heard, before):
        cast = replace(cast, lenses=[part for part in cast.lenses if not part.by_piece])
        heard = replace(heard, cast=cast)
    if _is_put_through(heard, before):  # 'with my C to E ring' of a CS lens
        return replace(heard, cast=replace(cast, lenses=[part for part in cast.lenses if not part.by_piece]))
    lent = [part for part in (*cast.lenses, *cast.bodies) if part.by_piece]
    placed = any(part.has_mount and not part.by_piece for part in cast.bodies)  # 'and on E with a C ring'
    placed = placed or (heard.tells("fit-q") and len(before.lenses) == 1)  # 'fits M ring?'
    known = any(one.ids for one in before.lenses) and (placed or any(one.ids for one in before.bodies))
    between = [one for one in cast.pieces if len(one.mounts) > 1]
    fitting = (
        len(lent) == 2 and len(between) == 1 and _touches(between[0].mounts[0].ids, between[0].mounts[-1].ids, before)
    )
    if not known or not (len(lent) == 1 or fitting) or any(piece.is_host for piece in cast.pieces):
        return heard
    kept = {side: [part for part in getattr(cast, side) if part not in lent] for side in ("lenses", "bodies")}
    return replace(heard, cast=replace(cast, **kept))


def _is_put_through(heard: Heard, before: Question) -> bool:
    """Whether the lens spoken of is put through a ring that takes another mount, on whatever body that fits."""
    cast, lens = heard.cast, before.lens
    ring = cast.pieces[0] if len(cast.pieces) == 1 else None
    if ring is None or lens is None or not lens.ids or len(before.lenses) != 1:
        return False
    all_lent = bool(cast.lenses and cast.bodies) and all(part.by_piece for part in (*cast.lenses, *cast.bodies))
    return all_lent and len(ring.mounts) > 1 and (ring.noun.role in _THROUGH or _is_tried(heard, ring, before))


def _is_tried(heard: Heard, ring: Part, before: Question) -> bool:
    """'I own an LTM to E ring, that works then?' of an SLR lens of 39 mm that is on no body: a screw much like its own.

    So it is with any ring at hand.
    """
    front, own = ring.mounts[0].ids, before.lenses[0].ids[:1]
    screws = heard.cast.threaded >= {*front[:1], *own}
    asked = heard.weighed.best in (None, CHAIN, FOCUS_VERDICT, HAZARD)
    return asked and not before.bodies and not set(own) & set(front) and (screws or heard.tells(HELD))


def mount_kept(heard: Heard, before: Question) -> Heard:
    """'its a 300, turned it into the M42 ring', 'his LTM to L ring, any good with this lens': what the ring takes is no
    mount of the lens that is spoken of."""
    cast, old, tokens = heard.cast, before.lens, heard.line.tokens
    it = any(token.value == "it" and token.kind == "VERB" for token in tokens)
    it = it or any(one.kind == "DET" and two.kind == "LENS" and not two.ids for one, two in pairwise(tokens))
    fronts = {mount.column for piece in cast.pieces for mount in piece.mounts}
    lens = cast.lenses[0] if len(cast.lenses) == 1 else None
    if lens is not None and not lens.by_piece:
        it = it or len(cast.pieces) > 1 or heard.tells(HELD)  # 'i have an M42 to E ring and a 39-42, good for 58 mm?'
    if lens is None or old is None or not old.ids or not lens.mounts:
        return heard
    # 'with the 1 mm m39-m42 ring, its a 50' after an LTM lens: how long that lens is
    it = it or (old.focal_length_mm is None and bool(lens.focal) and old.ids[0] in lens.mounts[0].ids)
    if not it or not {mount.column for mount in lens.mounts} <= fronts:
        return heard
    rest = [] if lens.by_piece else [replace(lens, mounts=[])]
    return replace(heard, cast=replace(cast, lenses=rest))


def _of_it(heard: Heard, before: Question) -> bool:
    """Whether 'it' is said, of a lens that is known."""
    return any(one.ids for one in before.lenses) and any(token.value == _IT for token in heard.line.tokens)


def of_talk(heard: Heard) -> bool:
    """Whether the lens is told as one that was spoken of: 'the 200 mm'."""
    dets = [token for token in heard.line.tokens if token.kind == "DET" and token.value in _ITS]
    columns = {part.noun.column for part in heard.cast.lenses}
    lengths = {token.column for token in heard.line.tokens if token.kind in ("LENGTH", "NUMBER", "FOCAL", "COMBO")}
    return any(token.column + len(token.text) + 1 in columns | lengths for token in dets)
