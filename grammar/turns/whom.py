"""Which of the lenses that a talk has spoken of a text points at, and what it says of them anew."""

from __future__ import annotations

from itertools import pairwise
from math import inf
from typing import Final

from engine.base.compact import compact, replace
from grammar.hearing import Heard
from grammar.kinds import COMPARE
from grammar.questions import Question, Thing
from grammar.telling import UNKNOWN
from grammar.things.casting import DRAWN, Part
from grammar.things.standins import stands_in
from grammar.turns.counted_lens import by_seat, by_stop, counted_lens
from grammar.turns.each_told import each_told, is_open, told_apart, with_told
from grammar.turns.one_of_two import is_likened, is_third

MOST_KNOWN: Final = 8  # lenses of one talk
_PAIR: Final = 2
_PICK: Final = "pick:"
_THEY: Final = "they"
_PURPOSES: Final = ("macro", "portraits", "for-portraits", "star-trails", "films", "how-close", "off-topic")


@compact
class Meant:
    """The lenses meant now, all lenses of the talk with what was told of them, and whether something was told."""

    lenses: tuple[Thing, ...]
    known: tuple[Thing, ...]
    told: bool = False


def known_with(known: tuple[Thing, ...], lenses: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """The lenses of a talk and those named now: one that is told more closely stands where it stood."""
    out = list(known)
    for lens in lenses:
        if lens.ids and lens.focal_length_mm and any(one.ids and _same(lens, one) for one in out if one != lens):
            continue  # less is told of it now than before
        at = next((n for n, one in enumerate(out) if _same(one, lens)), None)
        if at is None:
            out.append(lens)
        else:
            out[at] = replace(lens, called=lens.called or out[at].called)
    return tuple(out[-MOST_KNOWN:])


def meant(heard: Heard, before: Question) -> Meant | None:
    """The lenses of the talk that the text points at; None where it points at none of them."""
    known = before.known or before.lenses
    if not known:
        return None
    told = _told_apart(heard, known) or _told(heard, before, known)
    if told is not None:
        return told
    pointed = _described(heard, known) or _called(heard, known) or counted_lens(heard, before, known)
    pointed = pointed or by_seat(heard, known) or by_stop(heard, known) or _picked(heard, before, known)
    return Meant(pointed, known_with(known, pointed)) if pointed else None


def _told_apart(heard: Heard, known: tuple[Thing, ...]) -> Meant | None:
    """'the 50 is F mount, the 135 is m42': each with its own mount."""
    changed = {one: with_told(one, replace(part, focal=None)) for one, part in told_apart(heard, known)}
    rest = tuple(changed.get(one, one) for one in known)
    return Meant(tuple(changed.values()), rest, told=True) if changed else None


def side_by_side(heard: Heard, before: Question) -> tuple[Thing, ...]:
    """The lenses that 'which of them is wider' sets side by side; none where it asks something else."""
    if is_third(heard, before):
        new = replace(heard.cast.lenses[0], sort="lens").thing()
        return (*before.lenses, new)
    if is_likened(heard, before):
        part = next(part for part in (*heard.cast.lenses, *heard.cast.bodies) if part.mounts)
        return (*before.lenses, replace(part, sort="lens").thing())
    if _is_set_beside(heard, before):
        new, old = replace(heard.cast.lenses[0], sort="lens").thing(), before.lenses[0]
        same = old.kind == "mount" and not (new.ids or new.format or new.lens_kind)
        return (old, replace(new, kind=old.kind, ids=old.ids) if same else new)
    ranked = any(cue.tells.startswith(_PICK) and ":" in cue.tells.removeprefix(_PICK) for cue in heard.cues)
    asked = heard.tells("which") and (heard.tells("comparative") or ranked)  # 'which one is the fastest'
    apart = heard.tells("which-more") or asked
    if heard.cast.pieces or heard.cast.bodies or not (apart or _is_for_a_purpose(heard)):
        return ()
    pool = before.lenses if len(before.lenses) > 1 else before.known
    return pool if len(pool) > 1 else ()


def _is_for_a_purpose(heard: Heard) -> bool:
    """'which of them is better for close-ups', 'which of the two for that': of the lenses, and of no answers."""
    preferred = heard.tells("better") or heard.tells("pick:all") or heard.tells("pick:both")
    asked = heard.tells("which") or heard.tells("list-all") or heard.tells("better")
    said = heard.line.tokens
    for_that = any((one.kind, one.value) == ("PREP", "for") and after.kind == "DET" for one, after in pairwise(said))
    return preferred and asked and (for_that or any(map(heard.tells, _PURPOSES))) and not heard.readings.values


def _is_set_beside(heard: Heard, before: Question) -> bool:
    """'which is wider, that or a 35', 'would a 35 be wider', 'how does it compare to a 35' after one lens."""
    cast, old = heard.cast, before.lens
    if old is None or old.focal_length_mm is None or len(before.lenses) != 1 or len(cast.lenses) != 1:
        return False
    part, tokens = cast.lenses[0], heard.line.tokens
    others = cast.bodies or cast.pieces or cast.frames or heard.readings.values or heard.readings.limits
    if others or part.focal in (None, old.focal_length_mm) or part.subject is not None:
        return False
    that = any(
        (one.kind, one.value) in (("DET", "the"), ("VERB", "it")) and (other.kind, other.value) == ("JOIN", "or")
        for one, other in pairwise(tokens)
    )
    against = any(one.kind == "JOIN" and one.value == "vs" for one in tokens)
    better = heard.tells("better") and (that or against)
    return heard.tells("which-more") or heard.tells("comparative") or better or heard.tells("set-beside")


def points_back(heard: Heard, before: Question) -> bool:
    """'does the C one cover the E': whether each lens described is by a standing-in word one that was spoken of."""
    known = before.known or before.lenses
    parts = [part for part in heard.cast.lenses if not part.is_bare]
    return bool(parts) and all(
        stands_in(part.noun.head) and part.named is None and any(fits(part, one) for one in known) for part in parts
    )


def _told(heard: Heard, before: Question, known: tuple[Thing, ...]) -> Meant | None:
    """'the enlarger one is 39 mm thread', 'it is f/2', 'the other one is a 75 mm': said of one that is known."""
    parts = [part for part in heard.cast.lenses if not part.is_bare]
    said = [part for part in parts if part.subject is not None]
    part = said[0] if said else parts[0] if parts else None
    if part is None or part.named is not None:
        return None
    subject = part.subject
    several = each_told(heard, before, known, part)
    if several:
        told = {one: with_told(one, part) for one in several}
        return Meant(tuple(told.values()), tuple(told.get(one, one) for one in known), told=True)
    if _is_made_for(part, before):
        lens = with_told(before.lenses[0], part)  # 'corners ok with a full frame lens?': it is one
        return Meant((lens,), tuple(lens if one == before.lenses[0] else one for one in known))
    if subject is not None and not (subject.is_bare or subject.sort == "nothing"):
        whom = tuple(one for one in known if fits(subject, one))
    elif subject is not None or heard.tells("it-is"):
        whom = _picked(heard, before, known) or (() if _tells_of_another(heard) else before.lenses)
    else:
        return None
    if not whom or any(one.kind == "lens" for one in whom) or _is_set(part, whom):
        return None
    if len(whom) > 1 and subject is not None and not subject.is_several:
        whom = tuple(one for one in whom if not one.ids) or whom[:1]
    changed = {one: with_told(one, part) for one in whom}
    if part.mounts and {*whom} < {*before.lenses} and not any(one.ids for one in before.lenses):
        changed = {one: changed.get(one, one) for one in before.lenses}  # the others are spoken of still
    rest = tuple(changed.get(one, one) for one in known)
    return Meant(tuple(changed.values()), rest, told=True)


def _is_made_for(part: Part, before: Question) -> bool:
    """Whether a lens is told by the frame it is made for alone, after one of which that was not known."""
    rest = part.mounts or part.focal or part.f_number or part.kinds or part.traits or part.zoom or part.strange
    lens = before.lens if len(before.lenses) == 1 and part.subject is None else None
    told = lens is not None and lens.focal_length_mm is not None and lens.kind != "lens" and not lens.format
    return told and bool(part.formats) and not (rest or part.count)


def _is_set(part: Part, whom: tuple[Thing, ...]) -> bool:
    """'what if it's f/8' of a lens that opens to f/2: so far it is closed, and what it opens to was told."""
    stop = part.f_number
    return part.is_stop_alone and len(whom) == 1 and (stop or 0.0) > (whom[0].f_number or inf)


def _tells_of_another(heard: Heard) -> bool:
    return any(cue.tells == f"{_PICK}other" for cue in heard.cues)


def _described(heard: Heard, known: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """'the C one', 'the 50 mm lens', 'and the 135': those of the talk that the description fits."""
    parts = [part for part in heard.cast.lenses if not part.is_bare]
    out: list[Thing] = []
    found = False
    for part in parts:
        pointed = _points(heard, part, known)
        fitting = [one for one in known if fits(part, one)] if pointed else []
        if pointed and not fitting:  # 'the 135 m42' of a 135 of which no mount was told
            fitting = [with_told(one, part) for one in known if is_open(part, one)]
        found = found or bool(fitting)
        out += fitting or [replace(part, sort="lens").thing()]
    return tuple(dict.fromkeys(out)) if found else ()


def _called(heard: Heard, known: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """'the zorbex', 'zorbex one first': by the words that nobody else knows it by."""
    if any(part.mounts or part.focal or part.named for part in heard.cast.lenses):
        return ()
    tokens, bodies = heard.line.tokens, {mount.column for part in heard.cast.bodies for mount in part.mounts}
    of_body = {one.column for one, after in pairwise(tokens) if after.column in bodies or after.kind == "BODY"}
    said = {one.text.casefold() for one in tokens if one.kind == UNKNOWN and one.column not in of_body}
    found = tuple(one for one in known if said & set(one.called))
    return found if len(found) < len(known) else ()


def _points(heard: Heard, part: Part, known: tuple[Thing, ...]) -> bool:
    """Whether the description is of what was spoken of, rather than of another thing of its kind."""
    if stands_in(part.noun.head) or is_definite(heard, part):
        return True
    return part.focal is not None and any(one.focal_length_mm == part.focal for one in known)


def is_definite(heard: Heard, part: Part) -> bool:
    before = [one for one in heard.line.tokens if one.column < part.noun.column and one.kind not in ("FILLER", "MARK")]
    return bool(before) and before[-1].kind == "DET" and before[-1].value in ("the", "its")


def fits(part: Part, thing: Thing) -> bool:
    """Whether all that the part says holds for the thing."""
    said = replace(part, sort="lens", kinds=list(part.kinds)).thing()
    if part.named is not None:
        return said.ids == thing.ids and said.kind == thing.kind
    checks = (
        (bool(part.mounts), thing.kind == "mount" and bool(set(said.ids) & set(thing.ids))),
        (bool(part.kinds), said.lens_kind == thing.lens_kind or said.lens_kind in thing.traits),
        (part.zoom is not None, thing.lens_kind == "zoom"),
        (part.focal is not None, part.focal == thing.focal_length_mm),
        (part.f_number is not None, part.f_number == thing.f_number),
        (bool(part.formats), said.format == thing.format),
        (bool(part.traits), set(part.traits) <= {one.replace(" ", "-") for one in thing.traits}),
    )
    return any(told for told, _ in checks) and all(holds for told, holds in checks if told)


def _picked(heard: Heard, before: Question, known: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """'the wide one', 'the other lens', 'both': by what sets it apart from the others of the talk."""
    picks = [cue.tells.removeprefix(_PICK) for cue in heard.cues if cue.tells.startswith(_PICK)]
    one_ring = heard.tells("one-ring")  # 'is there no ring that does both', 'could one ring serve them'
    if not (picks or (one_ring and not heard.readings.values.keys() - {"numbers"})) or len(known) < _PAIR:
        return ()
    named = any(part.mounts or part.focal or part.named for part in heard.cast.lenses)
    picks = [one for one in picks if one != _THEY] or (["all"] if _are_they_lenses(heard, before) else [])
    picks = picks or (["all"] if one_ring else [])
    which = next((one for one in picks if one != "all"), picks[0] if picks else None)
    if which is None:
        return ()
    if which == "both" and (_counts_pieces(heard) or not _are_two_lenses(before, known)):
        return ()  # 'with both' after two tubes
    if which in ("all", "both"):
        if heard.weighed.best == COMPARE:
            return ()  # 'which of the two was better' may as well be of two answers
        several = len(before.lenses) > 1 or any((one.count or 1) > 1 for one in before.lenses)
        return () if named else before.lenses if several else known
    if which == "last":
        return known[-1:]
    if which == "other":
        return tuple(one for one in known if one not in before.lenses)
    pool = before.lenses if len(before.lenses) > 1 else known
    if which == "middle":
        return (pool[len(pool) // 2],) if len(pool) % 2 else ()
    quantity, _, end = which.partition(":")
    ranked = [(value, n) for n, one in enumerate(pool) if (value := getattr(one, quantity, None)) is not None]
    return (pool[(min if end == "least" else max)(ranked)[1]],) if len(ranked) > 1 else ()


def _are_they_lenses(heard: Heard, before: Question) -> bool:
    """'will they fit', 'is anything wrong with those': not where pieces are named, or stand behind a lens."""
    others = heard.cast.pieces or heard.cast.frames or heard.cast.denied
    put = [one for one in before.adapters if one.piece in DRAWN or one.ids]
    return not others and (not put or any(part.has_mount for part in heard.cast.bodies))


def _counts_pieces(heard: Heard) -> bool:
    """'both tubes': what is counted is named beside it."""
    at = [cue.column for cue in heard.cues if cue.tells == f"{_PICK}both"]
    return any(piece.noun.column in at for piece in heard.cast.pieces)


def _are_two_lenses(before: Question, known: tuple[Thing, ...]) -> bool:
    """Whether 'both' can only be two lenses: not where one lens was asked about and two pieces stand behind it."""
    pieces = [piece for piece in before.adapters if piece.thickness_mm is not None or piece.ids]
    return len(before.lenses) == 2 if len(before.lenses) > 1 else len(known) == 2 and len(pieces) != 2


def _same(one: Thing, other: Thing) -> bool:
    """Whether the second is the first, perhaps told more closely."""
    if one == other:
        return True
    if one.kind == "lens" or other.kind == "lens":
        return one.kind == other.kind and one.ids == other.ids
    if one.ids and not set(other.ids) & set(one.ids):
        return False
    return all(
        getattr(one, name) in (None, getattr(other, name)) for name in ("focal_length_mm", "f_number", "lens_kind")
    )
