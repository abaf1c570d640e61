"""What a follow-up adds to what is to be bought for: 'getting an OM too', 'so both bodies'."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import BUY_PLAN, CHAIN, COMPARE, LIST_FITS
from grammar.questions import RING, Question, Thing
from grammar.things.casting import DRAWN
from grammar.turns.tubes_counted import counted, says_both
from grammar.words.groups import GROWN, SHRUNK

_PAIRED: Final = frozenset([CHAIN, LIST_FITS])  # kinds of question that tell of each lens on each body
_THICKNESS: Final = "thickness"
_IN_FRONT: Final = "close-up-lens"  # it stands before the lens, and takes no tube's place
_LAYER: Final = "layer"
_TUBE: Final = "extension-tube"
_EXTENSION: Final = "extension"  # key of a length that is put between
_BY: Final = {GROWN: 1.0, SHRUNK: -1.0}  # how a length told beside such a word counts
_PUT: Final = ("get", "adding", "put-in", "what-if")  # cues of something that is put between
_NUMBERS: Final = "numbers"
_THICKEST_SHIM: Final = 0.7  # mm
_FILTERS: Final = "factor"  # the key under which they are told


def added(heard: Heard, before: Question) -> tuple[tuple[Thing, ...], tuple[Thing, ...]] | None:
    """All lenses and bodies that are planned for now; None where nothing is added to those of before."""
    planned = before.intent == BUY_PLAN or (before.prior is not None and before.prior.intent == BUY_PLAN)
    several = before.intent in _PAIRED and len(before.lenses) > 1 and len(before.bodies) == 1
    if not planned and not (several and heard.tells("adding")):
        return None
    if heard.tells("both-bodies") and not heard.cast.bodies:
        bodies = each_once((*(before.prior.bodies if before.prior is not None else ()), *before.bodies))
        return (before.lenses, bodies) if len(bodies) > 1 else None
    parts = [part for part in (*heard.cast.lenses, *heard.cast.bodies) if part.has_mount_or_kind]
    plainly_else = heard.weighed.best not in (None, BUY_PLAN, CHAIN, LIST_FITS, COMPARE)
    if (
        plainly_else
        or not (heard.tells("adding") or heard.tells("held") or _is_later(heard) or _opens_with_plus(heard))
        or not parts
        or not before.lenses
        or not before.bodies
        or _asks_of_one_body(heard)
    ):
        return None
    lenses, bodies = before.lenses, before.bodies
    for part in parts:
        is_body = part in heard.cast.bodies or (part.was_mount and part.is_host)
        thing = replace(part, sort="body" if is_body else "lens").thing()
        lenses, bodies = (lenses, (*bodies, thing)) if is_body else ((*lenses, thing), bodies)
    return each_once(lenses), each_once(bodies)


def _asks_of_one_body(heard: Heard) -> bool:
    """'will they go on his EF too': asked of that body alone, and nothing is planned for."""
    asked = (heard.tells("will") or heard.tells("can")) and heard.tells("get")
    return asked and bool(heard.cast.bodies) and not heard.cast.lenses and not heard.tells("buy")


def _opens_with_plus(heard: Heard) -> bool:
    return heard.text.casefold().lstrip().startswith(("plus ", "+"))


def _is_later(heard: Heard) -> bool:
    """'I might get a Z later': what is planned for comes to what there is."""
    return any(token.kind == "WHEN" and token.value == "later" for token in heard.line.tokens)


def with_stacked(heard: Heard, said: Question, before: Question) -> Question:
    """'ND8 on top', 'the 20 as well': filters and tubes that come to those of before and do not take their place."""
    old, new = before.said(_FILTERS), said.said(_FILTERS)
    marks = list(dict.fromkeys((old or "").split(", "))) if new is None and old is not None else []
    if len(marks) == 1 and counted(heard):
        return said.with_(values=(*said.values, (_FILTERS, ", ".join(marks * counted(heard)))))  # 'two of them'
    if new is None and says_both(heard) and before.prior is not None and old != before.prior.said(_FILTERS):
        old, new = before.prior.said(_FILTERS), old  # 'both' after ND8 and then ND64
    elif not heard.tells("adding"):
        return said
    if old is not None and new is not None:
        rest = said.rest(_FILTERS)
        said = said.with_(values=(*rest, (_FILTERS, f"{old}, {new}")))
    stand = tuple(
        one for one in before.adapters
        if (one.piece in DRAWN and one.thickness_mm is not None) or (one.piece == _IN_FRONT and one.factor is not None)
    )  # fmt: skip
    more = bool(said.adapters) and all(
        (one.piece in DRAWN and one.thickness_mm is not None) or one.piece == _IN_FRONT for one in said.adapters
    )
    return said.with_(adapters=(*stand, *said.adapters)) if stand and more else said


def shimmed(heard: Heard, before: Question) -> Thing | None:
    """'and if I put 0.1 of foil in' after a ring that was measured: that ring, so much thicker."""
    size = heard.readings.values.get(_LAYER) or put_on_top(heard)
    rings = [one for one in before.adapters if one.piece == RING and one.is_of_one_length]
    put = any(heard.tells(cue) for cue in _PUT) or put_on_top(heard) is not None
    if size is None or not put or len(rings) != 1 or len(before.adapters) != 1 or "," in size:
        return None
    thick = round((rings[0].thickness_mm or (0.0,))[0] + float(size.split(" ")[0]), 4)
    return replace(rings[0], words=f"{thick:g} mm ring", thickness_mm=(thick, thick))


def put_on_top(heard: Heard) -> str | None:
    """'plus a 0.05 washer', 'if I shim 0.05 more on top': a bare thickness of what comes to the ring of before."""
    size = heard.readings.values.get(_NUMBERS, "")
    comes = heard.tells("adding") or _opens_with_plus(heard)
    spaces = heard.tells("shim") or heard.tells("spacer") or heard.tells("foil") or _opens_with_plus(heard)
    number = size.replace(".", "", 1).isdecimal() and 0 < float(size) <= _THICKEST_SHIM
    return size if comes and spaces and number else None


def resized(heard: Heard, before: Question) -> Thing | None:
    """'what if its 0.1 thinner', '2 mm longer' after a ring or tube whose length was told: that piece, so long now."""
    size, drawn = heard.readings.values.get(_THICKNESS), before.said(_EXTENSION)
    by = {group for token in heard.line.tokens for group in token.groups if group in _BY}
    pieces = [one for one in before.adapters if one.is_of_one_length and (one.piece == RING or one.piece in DRAWN)]
    if size is None or len(by) != 1 or heard.cast.pieces or "," in size or len(before.adapters) != len(pieces):
        return None
    if drawn is not None and not pieces and "," not in drawn:
        length = float(drawn.split(" ")[0])
        pieces = [Thing(piece=_TUBE, thickness_mm=(length, length))]
    if len(pieces) != 1:
        return None
    more = float(size.split(" ")[0]) * _BY[by.pop()]
    long = round((pieces[0].thickness_mm or (0.0,))[0] + more, 4)
    noun = "ring" if pieces[0].piece == RING else (pieces[0].piece or "").replace("-", " ")
    return replace(pieces[0], words=f"{long:g} mm {noun}", thickness_mm=(long, long)) if long > 0 else None


_RANGED: Final = frozenset(["helicoid", "bellows"])
_INSTEAD: Final = "instead"


def with_rings_joined(said: Question, before: Question) -> Question:
    """'then M-L?' after an LTM to M ring: what meets one of before stands with it, what is told anew in its place."""
    new, old = said.adapters, before.adapters
    drawn = tuple(one for one in old if one.piece in _RANGED)
    sized = all(one.piece == "adapter" for one in new) and (said.said(_THICKNESS) or any(o.thickness_mm for o in new))
    if new and drawn and sized and not said.limits.without and _INSTEAD not in said.text.casefold():
        return said.with_(adapters=(*drawn, *new))  # 'with a 25.8 mm ring' beside the helicoid of before
    if not (new and old) or not all(one.front and one.rear for one in (*new, *old)):
        return said
    size = said.said(_THICKNESS)
    if size is not None and len(new) == 1 and new[0].thickness_mm is None:
        thick = float(size.split(" ")[0])
        new = (replace(new[0], thickness_mm=(thick, thick)),)
        said = said.with_(adapters=new, values=said.rest(_THICKNESS))
    known = {_ends(one) for one in old}
    meets = any(set(one.rear) & set(other.front) or set(other.rear) & set(one.front) for one in old for other in new)
    anew = {_ends(one): one for one in new}
    if known & anew.keys():
        more = (one for one in new if _ends(one) not in known)
        return said.with_(adapters=(*(anew.get(_ends(one), one) for one in old), *more))
    return said.with_(adapters=(*old, *new)) if meets else said


def _ends(piece: Thing) -> tuple[str, str]:
    return piece.front[0], piece.rear[0]


def each_once(things: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """The things, each described once: the same mount told twice is one."""
    rows = {(thing.ids, thing.focal_length_mm, thing.format, thing.lens_kind): thing for thing in things if thing.ids}
    return tuple(rows.values())
