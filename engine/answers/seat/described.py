"""An adapter as a question describes it: one that is sold, one made up from its length, or one cut as it must be."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import AS_TOLD
from engine.answers.parts.wording import small_mm
from engine.base.compact import replace
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.base.span import Span
from engine.chains.walk import ADDED_FOCUSING, ENDS
from engine.facts.records import Adapter, Cup
from grammar.echo.thing_words import SHEET_MM
from grammar.questions import Thing
from grammar.turns.spans import span_of

TUBE: Final = "extension-tube"
# words for a piece that say nothing of its kind
ANY_PIECE: Final = frozenset({"adapter", "plain", "ring", "hub", ""})
BENDS: Final = ("tilt", "shift")  # kinds of ring that seat a lens as a plain one does
CUP: Final = "recessed"
ROUNDING_MM: Final = 1e-9
NEARLY_MM, NEARLY = 0.75, 0.05  # as several come to what is between two registers, at least, or as a share of it
SPANS_MM, SHARE = 0.3, 0.2  # so nearly does one alone, and one told finer than to a millimetre
CALLED: Final = "tube"
UNSCREWED, GAP = "unscrewed", "gap"  # traits of what no piece is: a thread left so far out, a seat that does not close


def described(thing: Thing, n: int, lens_mount: str, body_mount: str, knowledge: Knowledge) -> Adapter:
    """The piece of the trade that is as long as was told, else one made up of what was told of it."""
    joining = _joining(thing, lens_mount, body_mount, knowledge)
    spanning = _spanning(thing, lens_mount, body_mount, knowledge) if joining is None else None
    if joining is not None:
        return joining
    if spanning is not None:
        return _rounded(_made(spanning, n, lens_mount, body_mount), lens_mount, body_mount, knowledge)
    shipped = _shipped(thing, knowledge) or _set_to_one(thing, n, knowledge) or _by_travel(thing, knowledge)
    return shipped or _made(thing, n, lens_mount, body_mount)


def supposed(thing: Thing, n: int, knowledge: Knowledge) -> Adapter | None:
    """A plain ring between two mounts that was named and that the facts do not hold, as it would have to be cut.

    None where there is one, or where the registers leave no room for it.
    """
    mounts = knowledge.catalogue.mounts
    kind = thing.piece if thing.piece in BENDS else "plain"
    if thing.piece not in (*ANY_PIECE, *BENDS) or not (thing.front and thing.rear) or thing.front[0] == thing.rear[0]:
        return None
    front, rear = mounts[thing.front[0]], mounts[thing.rear[0]]
    adapters = knowledge.catalogue.adapters
    known = (ring for ring in knowledge.rings.onward.get(front.id, {}).get(rear.id, ()) if not ring.glass)
    known = (ring for ring in known if kind == "plain" or adapters[ring.id].kind == kind)
    if any(ring.least_um == ring.greatest_um for ring in known):
        return None
    joined = any(one.rear == rear.id for one in knowledge.joints.onward(front.id))
    if joined or not (is_known(front.register_mm) and is_known(rear.register_mm)):
        return None
    seat = front.register_mm.nominal - rear.register_mm.nominal
    if seat < SHEET_MM:
        return None
    noun = "ring" if kind == "plain" else f"{kind} ring"
    ends = f"{front.designation} to {rear.designation}"
    name = f"{ends} {noun} of {small_mm(seat)} (none in the facts: as it has to be cut)"
    return Adapter(f"described-{n + 1}", name, front.id, rear.id, kind, AS_TOLD,
                   Span.fixed(Interval.exact(round(seat, 4))), "derived")  # fmt: skip


def are_it_together(things: Sequence[Thing], between_mm: float) -> bool:
    """'D on Q, 2.5 + 0.8': spacers that are no set of tubes, and that come to nearly what the registers leave."""
    loose = all(one.is_of_one_length and one.piece == TUBE and not (one.front or one.ids) for one in things)
    whole = sum((one.thickness_mm or (0.0,))[0] for one in things)
    fine = any(size != int(size) for one in things for size in one.thickness_mm or ())  # as no tubes of a set are
    called = any(CALLED in one.words.casefold() for one in things) and not fine
    near = max(NEARLY_MM, NEARLY * between_mm) if len(things) > 1 else max(SPANS_MM, SHARE * between_mm * fine)
    return bool(things) and loose and not called and abs(between_mm - whole) <= near


def _by_travel(thing: Thing, knowledge: Knowledge) -> Adapter | None:
    """'an M to Z helicoid, 6 mm': one number of a helicoid that joins two mounts is its travel."""
    if thing.piece not in ADDED_FOCUSING or thing.thickness_mm is None or not (thing.front and thing.rear):
        return None
    low, high = thing.thickness_mm
    if low != high or thing.front[0] == thing.rear[0]:
        return None
    for adapter in knowledge.catalogue.adapters.values():
        ends = adapter.thickness_mm
        if (adapter.kind, adapter.front, adapter.rear) != (thing.piece, thing.front[0], thing.rear[0]):
            continue
        if is_known(ends.shortest) and is_known(ends.longest):
            travel = ends.longest.nominal - ends.shortest.nominal
            if abs(travel - low) <= knowledge.catalogue.assumptions[ENDS].value.greatest:
                return adapter
    return None


def _shipped(thing: Thing, knowledge: Knowledge) -> Adapter | None:
    """The helicoid or bellows of the trade with these ends, where there is one."""
    if thing.piece not in ADDED_FOCUSING or thing.thickness_mm is None:
        return None
    low, high = thing.thickness_mm
    off = knowledge.catalogue.assumptions[ENDS].value.greatest  # ends are named by round numbers
    for adapter in knowledge.catalogue.adapters.values():
        ends = adapter.thickness_mm
        if adapter.kind != thing.piece or not (is_known(ends.shortest) and is_known(ends.longest)):
            continue
        if thing.front and adapter.front not in thing.front:
            continue
        near = abs(ends.shortest.nominal - low) <= off and abs(ends.longest.nominal - high) <= off
        if near and adapter.front == adapter.rear:
            return adapter
    return None


def _joining(thing: Thing, lens_mount: str, body_mount: str, knowledge: Knowledge) -> Adapter | None:
    """'a 17-30 helicoid' of an M42 lens on MFT: the one of the trade with these ends that carries both mounts."""
    if thing.piece not in ADDED_FOCUSING or thing.thickness_mm is None or thing.front == thing.rear != ():
        return None
    for adapter in knowledge.catalogue.adapters.values():
        if (adapter.kind, adapter.front, adapter.rear) != (thing.piece, lens_mount, body_mount):
            continue
        shut, out = adapter.thickness_mm.shortest, adapter.thickness_mm.longest
        if not (is_known(shut) and is_known(out)):
            continue
        low, high = thing.thickness_mm
        if abs(shut.nominal - low) <= SPANS_MM and abs(out.nominal - high) <= SPANS_MM:
            return adapter
    return None


def _spanning(thing: Thing, lens_mount: str, body_mount: str, knowledge: Knowledge) -> Thing | None:
    """'a 27.5-37.5 helicoid' of a K lens on E: shut it is as long as a plain ring between them, so it joins the two.

    None where it is another length.
    """
    if thing.piece not in ADDED_FOCUSING or thing.thickness_mm is None or thing.front or thing.rear:
        return None
    seat, (low, high) = _seat_mm(lens_mount, body_mount, knowledge), thing.thickness_mm
    if seat is None or low == high or seat < SHEET_MM or abs(low - seat) > SPANS_MM:
        return None
    return replace(thing, front=(lens_mount,), rear=(body_mount,))


def _seat_mm(lens_mount: str, body_mount: str, knowledge: Knowledge) -> float | None:
    """How long a plain ring between two mounts is, mm; None where a register is not known, or the mounts are one."""
    front, rear = (knowledge.catalogue.mounts[id_].register_mm for id_ in (lens_mount, body_mount))
    if lens_mount == body_mount or not (is_known(front) and is_known(rear)):
        return None
    return front.nominal - rear.nominal


def _rounded(piece: Adapter, lens_mount: str, body_mount: str, knowledge: Knowledge) -> Adapter:
    """The piece with its length shut known no closer than it was told: such ends are named by round numbers.

    Where the seat that is right rounds to what was told, it is the likeliest.
    """
    seat, shut, out = (
        _seat_mm(lens_mount, body_mount, knowledge),
        piece.thickness_mm.shortest,
        piece.thickness_mm.longest,
    )
    if seat is None or not (is_known(shut) and is_known(out)):
        return piece
    half = 0.5 * 10.0 ** -len(f"{shut.nominal:g}".partition(".")[2])
    if abs(shut.nominal - seat) > half + ROUNDING_MM:
        return piece
    told = Interval(shut.nominal - half, shut.nominal + half, seat)
    return replace(piece, thickness_mm=Span(told, out))


def _set_to_one(thing: Thing, n: int, knowledge: Knowledge) -> Adapter | None:
    """'at 40 mm' of a 25 to 55 mm helicoid: the one of the trade that is drawn so far, standing so."""
    span, told = span_of(thing), thing.thickness_mm
    if span is None or told is None or told[0] != told[1]:
        return None
    of_trade = _shipped(replace(thing, thickness_mm=span), knowledge)
    if of_trade is None:
        return None
    stands = Span.fixed(Interval.exact(told[0]))
    name = f"{of_trade.name} at {small_mm(told[0])}"
    return replace(of_trade, id=f"described-{n + 1}", name=name, thickness_mm=stands, common="own", owned=1)


def _made(thing: Thing, n: int, lens_mount: str, body_mount: str) -> Adapter:
    """An adapter as it was described, taken for measured."""
    assert thing.thickness_mm is not None
    low, high = thing.thickness_mm
    if thing.piece == CUP and low == high > 0:
        low = high = -low  # 'a 0.474 cup' is so deep
    piece = thing.piece or "adapter"
    front = thing.front[0] if thing.front else lens_mount
    rear = thing.rear[0] if thing.rear else body_mount
    if not thing.rear and front == body_mount and piece not in (*ADDED_FOCUSING, TUBE):
        front = lens_mount  # 'the 1 mm E plate' is on the body's side
    if piece in (*ADDED_FOCUSING, TUBE) and (not thing.rear or front == rear):
        front = rear = thing.front[0] if thing.front else lens_mount
        kind = piece
    else:  # 'a 2 mm MD to EF macro ring' as well: what joins two mounts is a ring
        kind = TUBE if front == rear else "recessed" if low < 0 else "plain"
        kind = piece if piece in ADDED_FOCUSING and low != high else kind  # an M to E helicoid is drawn out as well
    span = Span(Interval.exact(low), Interval.exact(high)) if low != high else Span.fixed(Interval.exact(low))
    cup = Cup(UNKNOWN, Interval.exact(-low)) if low < 0 else None
    name = (
        f"your {abs(low):g} mm {_noun(kind, high)}"
        if low == high
        else f"your {low:g} to {high:g} mm {_noun(kind, high)}"
    )
    name = next((f"{low:g} mm {one}" for one in (UNSCREWED, GAP) if one in thing.traits), name)
    return Adapter(f"described-{n + 1}", name, front, rear, kind, AS_TOLD, span, "measured", cup, common="own", owned=1)


def _noun(kind: str, thick_mm: float) -> str:
    if kind == TUBE and thick_mm < SHEET_MM:
        return "shim"
    return {"plain": "ring", "recessed": "cup", TUBE: "tube"}.get(kind, kind)
