"""Which lenses a follow-up is about: those it names, those of before, or those of before with what is said of them."""

from __future__ import annotations

import re
from itertools import pairwise
from math import log
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import BUY_PLAN, CHAIN, IDENTIFY_MOUNT, LIST_FITS
from grammar.questions import ALL, CLOSE_UP_LENS, Question, Thing
from grammar.turns.on_what import SMALL_GAUGE, is_a_body
from grammar.turns.turned_back import turned_back
from grammar.turns.whom import Meant
from grammar.words.groups import IN_SETS, JOINED_ON, LIKE_BEFORE

_LISTED: Final = frozenset([CHAIN, LIST_FITS, BUY_PLAN])
_HAVING: Final = frozenset(["adding", "held", "is-a"])  # cues of what one has besides
_HELD: Final = frozenset(["reversed"])  # how a lens is held, which the next one is too
_ALIKE: Final = frozenset(["look-alike"])
_SEVERAL: Final = 2
_ZOOM: Final = "zoom"
_PROJECTOR: Final = "projector"
_ASSUMED: Final = "assumed mount"  # trait of a lens whose mount is that of its kind
_SORTS: Final = frozenset(["wide", "tele", "normal"])
_THAT: Final = frozenset(["that", "this", "my", "the", "it", "same"])
_ELSE: Final = "else"  # 'what else'
_NUMBERS: Final = re.compile(r"\d+(?:\.\d+)?")
_IN_FRONT: Final = "turned-in-front"  # phrases that are mentioned; this one of the lens that is turned round
_ONTO: Final = "onto-its-front"
_BEHIND: Final = "behind-the-other"
_BODIES: Final = frozenset(["body", "bodies", "camera", "cameras", "cam", "slr", "dslr", "mirrorless"])

# keys of phrases that ask for a figure of a mount
FIGURES: Final = ("figure-register", "figure-throat", "figure-pitch", "figure-thread", "thread-width", "pitches-over")
OF_CAMERAS: Final = frozenset(["slr", "rangefinder"])  # kinds of lens that tell the kind of its mount
_ANY_MOUNT: Final = ("wide", "tele", "macro")  # kinds of lenses that tell nothing of the mount


def lenses_of(
    heard: Heard, said: Question, before: Question, found: Meant | None, compared: tuple[Thing, ...]
) -> tuple[Thing, ...]:
    """Which lenses a fragment is about: those told anew, or those of before with what is told of them now."""
    lenses = _of_one_mount(_meant(heard, said, before, found, compared), before)
    return tuple(_with_its_stop(one, before) for one in lenses) if len(lenses) > 1 else lenses


def _with_its_stop(lens: Thing, before: Question) -> Thing:
    """'the 50 is F and the 135 is M42' after a 50 1.4 and a 135 3.5: each opens as far as it did."""
    same = [one for one in before.lenses if one.focal_length_mm == lens.focal_length_mm and one.ids in ((), lens.ids)]
    known = lens.focal_length_mm is not None and lens.f_number is None and len(same) == 1
    return replace(lens, f_number=same[0].f_number) if known else lens


def _of_one_mount(lenses: tuple[Thing, ...], before: Question) -> tuple[Thing, ...]:
    """'the 35 or a 24' after a 35 with a mount: where one of two has that mount, and no other is told, both have."""
    old = {(one.kind, one.ids) for one in before.lenses if one.kind == "mount"}
    ids = {one.ids for one in lenses}
    bare = [one for one in lenses if not one.ids and one.focal_length_mm and not (one.lens_kind or one.format)]
    if len(old) != 1 or len(lenses) != _SEVERAL or len(bare) != 1 or not ids <= {(), next(iter(old))[1]}:
        return lenses
    kind, mounts = next(iter(old))
    return tuple(replace(one, kind=kind, ids=mounts) if one in bare else one for one in lenses)


def _meant(
    heard: Heard, said: Question, before: Question, found: Meant | None, compared: tuple[Thing, ...]
) -> tuple[Thing, ...]:
    compared = compared or _of_coupled(heard, said, before)
    if compared:
        return compared
    if _tells_one_more(heard, said, before):
        return (*before.lenses, *said.lenses)
    if said.intent == LIST_FITS and before.bodies and _is_of_that_body(heard):
        return ()
    if said.intent == IDENTIFY_MOUNT and len(before.lenses) == len(said.lenses) == 1 and _only_engraved(said.lenses[0]):
        new, old = said.lenses[0], before.lenses[0]  # 'it says 1:1.8 f=50' of the lens that is identified
        focal, stop = new.focal_length_mm or old.focal_length_mm, new.f_number or old.f_number
        return (replace(old, focal_length_mm=focal, f_number=stop),)
    if said.intent == IDENTIFY_MOUNT and before.lenses and not any(part.focal for part in heard.cast.lenses):
        return before.lenses if found is None or found.told else found.lenses  # the mounts named are those it may have
    if found is not None and said.intent not in _ALIKE:
        return _of_kind_told(said, found.lenses)
    if said.intent in _ALIKE and before.lenses and all(part.by_piece for part in heard.cast.lenses):
        return before.lenses  # 'isn't my M42 ring the same': that ring is set against the lens spoken of
    return _beside(heard, said, before) if said.intent in _ALIKE else _lenses(heard, said, before)


def _tells_one_more(heard: Heard, said: Question, before: Question) -> bool:
    """'and an FD 70-210 f/4' after one lens or more, and no body yet: what there is, told one after the other."""
    cast, known = heard.cast, [one for one in before.lenses if one.ids and (one.focal_length_mm or one.f_number)]
    told = all(part.mounts and (part.focal or part.zoom or part.f_number) for part in cast.lenses)
    others = cast.bodies or cast.pieces or cast.frames or said.bodies or said.adapters or before.adapters
    open_yet = bool(before.lenses) and len(known) == len(before.lenses) and not (before.bodies or before.things)
    first = next((token for token in heard.line.tokens if token.kind not in ("MARK", "STOP")), None)
    joined = first is not None and (first.kind == "JOIN" or JOINED_ON in first.groups)
    idle = all(cue.tells in _HAVING for cue in heard.cues) and "?" not in heard.text
    more = joined or any(cue.tells in _HAVING for cue in heard.cues)
    new = not any(one in before.lenses for one in said.lenses)
    return bool(cast.lenses) and told and not others and open_yet and idle and more and new and before.intent in _LISTED


def _is_of_that_body(heard: Heard) -> bool:
    """'what else goes on that body', 'which other lenses fit my camera': all that it takes, whatever is on it now."""
    cast, tokens = heard.cast, heard.line.tokens
    other = any(not part.is_bare for part in (*cast.lenses, *cast.bodies)) or cast.pieces or cast.frames
    that = any(
        (one.kind == "DET" and one.text.casefold() in _THAT and following.kind == "BODY")
        or (one.kind == "PREP" and one.value == "on" and following.text.casefold() == "it")
        for one, following in pairwise(tokens)
    )
    asked = any(one.kind in ("LENS", "MOUNTWORD") or one.text.casefold() == _ELSE for one in tokens)
    return that and asked and not other


def one_of_several(
    said: Question, before: Question, lenses: tuple[Thing, ...], bodies: tuple[Thing, ...]
) -> tuple[tuple[Thing, ...], tuple[Thing, ...]]:
    """'does infinity survive on the OM' after OM, C/Y and R lenses on E and L: that lens, for no such body is there.

    Else what it was taken for, `lenses` on `bodies`.
    """
    named = said.bodies[0] if len(said.bodies) == 1 and not said.lenses else None
    rows = [before] if before.prior is None or before.prior.bodies != before.bodies else [before, before.prior]
    several = next((row.lenses for row in rows if len(row.lenses) >= _SEVERAL), ())
    if named is None or named.kind != "mount" or not several or not before.bodies:
        return lenses, bodies
    if any(set(named.ids) & set(body.ids) for body in before.bodies) or _BODIES & set(named.words.casefold().split()):
        return lenses, bodies
    of_it = tuple(lens for lens in several if lens.ids[:1] and lens.ids[0] in named.ids)
    return (of_it, before.bodies) if len(of_it) == 1 else (lenses, bodies)


def _only_engraved(lens: Thing) -> bool:
    """Whether no more is told of it than its focal length and its widest stop."""
    told = lens.focal_length_mm is not None or lens.f_number is not None
    return told and not (lens.ids or lens.lens_kind or lens.format or lens.traits)


def _beside(heard: Heard, said: Question, before: Question) -> tuple[Thing, ...]:
    """'same thread as C?' asks of that mount and of the one spoken of before."""
    old = before.lenses[:1]
    named = tuple(thing for thing in said.lenses if thing.ids)
    if len(named) != 1 or not old or not old[0].ids or old[0].ids == named[0].ids or len(named) != len(said.lenses):
        return _lenses(heard, said, before)
    return (*old, *named)


def _of_coupled(heard: Heard, said: Question, before: Question) -> tuple[Thing, ...]:
    """'on a 200', 'with a 24 reversed', 'a 50 instead of the 28' after a lens turned round before another: which of
    the two is another now, and the one that stays; none where no one of them is."""
    if len(before.lenses) == 1:
        return _put_before(heard, said, before.lenses[0])
    if len(before.lenses) != _SEVERAL or not _HELD & set(before.lenses[0].traits):
        return ()
    front, rear = before.lenses
    new = [one for one in said.lenses if one.focal_length_mm not in (None, front.focal_length_mm, rear.focal_length_mm)]
    if len(new) != 1 or any(one.focal_length_mm is None for one in said.lenses):
        return ()
    told = {float(one) for one in _NUMBERS.findall(heard.text)}
    named = [one for one in (front, rear) if one.focal_length_mm in told]
    on = any(part.noun.role == "on" for part in heard.cast.lenses)
    if len(named) == 1:
        turned = named[0] is front
    elif _HELD & set(new[0].traits) or heard.places(_IN_FRONT):
        turned = True
    elif on or heard.places(_BEHIND):
        turned = False
    else:
        turned = _apart(new[0], front) <= _apart(new[0], rear)
    return (replace(new[0], traits=front.traits), rear) if turned else (front, replace(new[0], traits=rear.traits))


def _put_before(heard: Heard, said: Question, old: Thing) -> tuple[Thing, ...]:
    """'reversing a 35 on its front' after an 85: the one turned round before the other; none where it stands alone."""
    new = said.lenses[0] if len(said.lenses) == 1 else None
    if new is None or not _HELD & set(new.traits) or _HELD & set(old.traits) or not old.focal_length_mm:
        return ()
    told = new.focal_length_mm not in (None, old.focal_length_mm) and not said.bodies
    return (new, old) if told and heard.places(_ONTO) else ()


def _apart(one: Thing, other: Thing) -> float:
    return abs(log((one.focal_length_mm or 1.0) / (other.focal_length_mm or 1.0)))


def _of_kind_told(said: Question, lenses: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """'i have the slr kind' after a name that several mounts have: the lens of before, by the kind that it is of."""
    if len(said.lenses) != 1 or len(lenses) != 1:
        return lenses
    new, old = said.lenses[0], lenses[0]
    kind = next((one for one in (new.lens_kind, *new.traits) if one in OF_CAMERAS), None)
    if new.ids or kind is None or new.focal_length_mm is not None or not old.ambiguous:
        return lenses
    return (replace(old, lens_kind=kind, traits=tuple(one for one in old.traits if one not in OF_CAMERAS)),)


def _lenses(heard: Heard, said: Question, before: Question) -> tuple[Thing, ...]:
    if not said.lenses:
        return () if "lenses" in (said.said(ALL) or "") else before.lenses
    if len(said.lenses) > 1 and before.lenses and before.lenses[0].focal_length_mm and all(map(_is_sort, said.lenses)):
        return before.lenses  # 'is it wide or tele there'
    if len(said.lenses) > 1 and before.lenses and before.lenses[0].kind == "mount":
        old = before.lenses[0]
        if not any(lens.ids or lens.format for lens in said.lenses):
            return tuple(replace(lens, kind=old.kind, ids=old.ids) for lens in said.lenses)
    if len(said.lenses) == 1 and before.lenses:
        lens, old = said.lenses[0], before.lenses[0]
        if _is_that_kind(lens, old):
            return before.lenses
        if lens.lens_kind == _ZOOM and not lens.ids and old.kind == "mount" and _is_one_of_them(heard):
            return (replace(lens, kind=old.kind, ids=old.ids),)  # 'the zoom one, what is 2.8-12' of several C lenses
        of_kind = _of_kind_told(said, before.lenses)
        if of_kind != before.lenses:
            return of_kind
        if not lens.ids and lens.format in (None, old.format) and lens.lens_kind in (None, old.lens_kind, *_ANY_MOUNT):
            if lens.focal_length_mm is None:
                traits = tuple(dict.fromkeys((*old.traits, *lens.traits)))
                return (replace(old, traits=traits, f_number=lens.f_number or old.f_number), *before.lenses[1:])
            if old.kind == "lens":
                return (lens,)  # a lens of one's own has its focal length: this is another
            worn = any(
                one.piece == CLOSE_UP_LENS for one in said.adapters
            )  # it goes on the front: that one is not turned
            held = tuple(trait for trait in old.traits if trait in _HELD and trait not in lens.traits and not worn)
            gauge = old.format in heard.cast.having(SMALL_GAUGE)
            kept = (gauge and not (old.ids or said.bodies)) or _is_of_same_set(heard)
            made_for = lens.format or (old.format if kept else None)  # the next is too
            return (replace(lens, kind=old.kind, ids=old.ids, format=made_for, traits=(*lens.traits, *held)),)
        if lens.ids and lens.focal_length_mm is None and lens.lens_kind is None and not old.ids:
            # '50 mm f/1.8', then 'it is M42': the mount that was asked for
            if old.lens_kind == _PROJECTOR and all(part.by_piece for part in heard.cast.lenses):
                return before.lenses  # 'is an M65 helicoid enough' of a plain barrel, which has no thread
            if is_a_body(lens, said, before, heard.cast.hosts):
                return before.lenses
            return (replace(old, kind=lens.kind, ids=lens.ids), *before.lenses[1:]) if lens.kind == "mount" else (lens,)
        if lens.ids and lens.focal_length_mm is None and lens.lens_kind is None and old.kind == "mount":
            if is_a_body(lens, said, before, heard.cast.hosts):
                return before.lenses
            same_lens = replace(old, ids=lens.ids, kind=lens.kind, words=lens.words, column=lens.column)
            return (same_lens if lens.kind == "mount" else lens,)
    return said.lenses


def _is_of_same_set(heard: Heard) -> bool:
    """'the 12.5 from the same set', 'a 50 of that series': made for what the lens of before was made for."""
    return any(LIKE_BEFORE in one.groups and IN_SETS in two.groups for one, two in pairwise(heard.line.tokens))


def _is_one_of_them(heard: Heard) -> bool:
    """Whether it is told as one of those spoken of: 'the zoom one'."""
    tokens = heard.line.tokens
    return any(one.kind == "KIND" and two.text.casefold() == "one" for one, two in pairwise(tokens))


def _is_that_kind(lens: Thing, old: Thing) -> bool:
    """'is that an enlarger lens then' of one: no more is told than the kind that it is of already."""
    told = lens.focal_length_mm or lens.f_number or lens.format or _ASSUMED not in lens.traits
    return not told and (lens.lens_kind == old.lens_kind or lens.ids == old.ids) and bool(old.focal_length_mm)


def _is_sort(lens: Thing) -> bool:
    """Whether it tells no more than how wide it sees: 'wide', 'a tele'."""
    told = lens.ids or lens.focal_length_mm or lens.f_number or lens.format
    return lens.lens_kind in _SORTS and not told


def has_pair(question: Question | None, asked: Question) -> bool:
    """Whether a lens of a told length on a body is spoken of: 'whats cs' then asks of a word by the way.

    Where a figure is `asked`, 'register of CS', that is by the way of a lens of any length.
    """
    if question is None:
        return False
    figure = asked.mentions(*FIGURES)
    lens = any(one.ids and (one.focal_length_mm or figure) for one in question.lenses)
    return lens and any(one.ids for one in question.bodies)


def are_of(named: tuple[Thing, ...], question: Question | None) -> bool:
    """Whether every mount named is that of a lens or a body that is talked of."""
    known = {one.id for one in (*question.lenses, *question.bodies)} if question is not None else set()
    return all(one.id in known and one.focal_length_mm is None for one in named)


def with_one_turned(heard: Heard, told: Question, before: Question) -> Question:
    """'now reversed in front of a 180' after a 60: that one is turned round, and what stood behind it is gone."""
    if len(told.lenses) != _SEVERAL or not told.follows:
        return turned_back(heard, told, before)
    turned, other = told.lenses
    mine = [one for one in before.lenses if one.focal_length_mm not in (None, other.focal_length_mm)]
    bare = _HELD & set(turned.traits) and not turned.focal_length_mm and not turned.ids
    if not bare or len(mine) != 1 or not other.focal_length_mm:
        return told
    lens = replace(mine[0], traits=tuple(dict.fromkeys((*mine[0].traits, *turned.traits))))
    left = tuple(one for one in told.adapters if one not in before.adapters)
    return told.with_(lenses=(lens, other), adapters=left)
