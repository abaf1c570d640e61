"""The adapters that a question names or describes ("a flat 1 mm ring", "the 17-31 helicoid"): which must be used."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import inf

from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import numbers
from engine.answers.seat.described import ANY_PIECE, BENDS, TUBE, described, supposed
from engine.answers.seat.sorts_of_ring import of_its_word
from engine.answers.seat.thread_rings import as_thread_rings
from engine.answers.shims.loose import off_by_mm
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.chains.search import MOST_PIECES
from engine.chains.walk import ADDED_FOCUSING
from engine.facts.records import Adapter
from grammar.questions import Limits, Question, Thing

ELECTRONIC = "electronic-adapter"
BUSH = "thread-reducer"
ENDS_BESIDE = 2  # pieces beside those named, to come from the lens to them and from them to the body
AS_SOLD_MM = 3.0  # what is farther off is another ring
EXACTLY_MM = 0.06  # and one among several tubes is so near to it
SPANS_MM = 0.3  # a tube that is so nearly as long as the ring that is wanted is that ring
THICKEST_MM = 120.0  # a longer thing is no ring


def with_named_pieces(
    question: Question, lens_mount: str, body_mount: str, knowledge: Knowledge
) -> tuple[Knowledge, Limits]:
    """The knowledge with the pieces that were described, and limits that ask for all that were named."""
    made: list[Adapter] = []
    using: list[str] = [name for name in question.limits.using if name not in ANY_PIECE]
    glass, glassless = question.limits.with_glass, question.limits.without_glass
    told = _joined([*_as_measured(question), *_told_by_thickness(question)])
    told = as_thread_rings(told, lens_mount, body_mount, knowledge.catalogue)
    told = _beside_a_ring(told, lens_mount, body_mount, knowledge)
    pieces = _spanning(_as_they_lead(told, lens_mount), lens_mount, body_mount, knowledge)
    lens_end = _lens_end(pieces, lens_mount, body_mount, knowledge)
    for n, thing in enumerate(pieces):
        spacer = _as_spacer(thing, lens_mount, body_mount, n, knowledge)
        if spacer is not None:
            made.append(spacer)
            using.append(spacer.id)
        elif thing.kind == "adapter" and thing.id is not None:
            using.append(thing.id)
        elif thing.thickness_mm is not None:
            piece = described(thing, n, lens_end, body_mount, knowledge)
            if piece.id not in knowledge.catalogue.adapters:
                made.append(piece)
            using.append(piece.id)
        elif thing.factor is not None:
            using.append(f"factor {thing.factor:g}")
            glass = True
        elif thing.piece in (*ADDED_FOCUSING, TUBE) and not thing.rear:
            using.append(_of_kind(thing, knowledge))  # 'an M42 helicoid': a ring past it is not what was named
        elif thing.piece == ELECTRONIC:
            using.append(_with_contacts(lens_mount, body_mount, knowledge))
        elif not thing.rear and body_mount in thing.front and lens_mount not in thing.front:
            continue  # 'the thin MFT ring': every way ends in one
        elif thing.front or thing.rear:
            pairs = tuple(_pairs(thing, lens_mount, body_mount, knowledge))
            cut = supposed(thing, n, knowledge) if not glass else None
            if cut is not None:
                made.append(cut)
                pairs = (cut.id,)
            of_kind = of_its_word(thing, pairs, question.text, knowledge) or _of_kind_between(thing, pairs, knowledge)
            using.append("|".join(of_kind or pairs))
            glass = glass or (
                thing.piece not in ANY_PIECE and any(knowledge.catalogue.adapters[name].has_glass for name in of_kind)
            )
            # 'the M42 to E ring' is the plain one where a plain one does it
            glassless = glassless or (not glass and any(_is_plain(pair, knowledge) for pair in pairs if cut is None))
        elif thing.piece == BUSH and (flush := _flush_bushes(pieces, lens_mount, body_mount, knowledge)):
            using.append("|".join(flush))
        elif thing.piece and thing.piece not in ANY_PIECE:
            between = replace(thing, front=(lens_mount,), rear=(body_mount,)) if thing.piece in BENDS else thing
            cut = supposed(between, n, knowledge) if not glass else None
            made += [cut] if cut is not None else []
            using.append(cut.id if cut is not None else thing.piece)
    missing = _leading_to(pieces, lens_mount, body_mount, knowledge) if question.intent == "chain" else None
    made += [missing] if missing is not None else []
    bare_tube = len(using) == 1 and not made and any(thing.piece == TUBE for thing in pieces)
    only_tubes = bool(made) and all(piece.kind == TUBE for piece in made) and len(using) == len(made)
    if (only_tubes or bare_tube) and not glass:
        # tubes alone were named: they go with a ring that seats the lens right, where there is one
        right = _right_rings(f"{lens_mount}>{body_mount}", knowledge)
        using += ["|".join(right)] if right else []
    wanted = tuple(dict.fromkeys(using))
    most = question.limits.pieces
    if most is None and len(wanted) + ENDS_BESIDE > MOST_PIECES:
        most = len(wanted) + ENDS_BESIDE  # who names so many pieces wants them all
    limits = replace(
        question.limits, using=wanted, pieces=most, with_glass=glass, without_glass=glassless and not glass
    )  # fmt: skip
    return knowledge.with_adapters(tuple(made)), limits


def _as_spacer(thing: Thing, lens_mount: str, body_mount: str, n: int, knowledge: Knowledge) -> Adapter | None:
    """'the 5 mm ring under a CS lens on a CS body', or a C lens on C: between two of one thread it is only a tube."""
    mounts, ring = knowledge.catalogue.mounts, knowledge.catalogue.adapters.get(thing.id or "")
    if ring is None or thing.kind != "adapter" or lens_mount != body_mount:
        return None
    thread, seat = mounts[lens_mount].thread, ring.thickness_mm.shortest
    alike = thread is not None and thread == mounts[ring.front].thread == mounts[ring.rear].thread
    if not alike or not is_known(seat) or not ring.thickness_mm.is_fixed:
        return None
    tube = replace(thing, kind="", ids=(), piece=TUBE, thickness_mm=(seat.nominal, seat.nominal))
    return described(tube, n, lens_mount, body_mount, knowledge)


def _beside_a_ring(things: list[Thing], lens_mount: str, body_mount: str, knowledge: Knowledge) -> list[Thing]:
    """'the 5 mm ring and a half mm one by mistake': beside the ring that spans, another of no told ends is a spacer."""

    def spans(thing: Thing) -> bool:
        named = knowledge.catalogue.adapters.get(thing.id or "") if thing.kind == "adapter" else None
        front, rear = ((named.front,), (named.rear,)) if named is not None else (thing.front, thing.rear)
        return lens_mount in front and body_mount in rear and lens_mount != body_mount

    def bare(thing: Thing) -> bool:
        return thing.piece == "adapter" and bool(thing.thickness_mm) and not (thing.front or thing.rear or thing.ids)

    several = any(map(spans, things))
    return [replace(thing, piece=TUBE) if several and bare(thing) else thing for thing in things]


def _spanning(things: list[Thing], lens_mount: str, body_mount: str, knowledge: Knowledge) -> list[Thing]:
    """'a D lens on Q, 3.1 tube': of the tubes told, one that is just what is between the registers is the ring."""
    mounts = knowledge.catalogue.mounts
    one, other = mounts[lens_mount].register_mm, mounts[body_mount].register_mm
    if any(thing.piece != TUBE for thing in things) or lens_mount == body_mount:
        return things
    if not (is_known(one) and is_known(other)):
        return things
    between = one.nominal - other.nominal
    near = SPANS_MM if len(things) == 1 else EXACTLY_MM

    def spans(thing: Thing) -> bool:
        low, high = thing.thickness_mm or (0.0, inf)
        return not thing.front and low == high and abs(between - low) <= near

    ring = next((thing for thing in things if spans(thing)), None)
    return [replace(thing, piece="adapter") if thing is ring else thing for thing in things]


def _lens_end(things: list[Thing], lens_mount: str, body_mount: str, knowledge: Knowledge) -> str:
    """The mount that a plate is screwed to whose front was not told: that of what is drawn out, else the lens's own."""
    for n, thing in enumerate(things):
        if thing.piece not in (*ADDED_FOCUSING, TUBE):
            continue
        if thing.thickness_mm is not None and thing.piece in ADDED_FOCUSING:
            return described(thing, n, lens_mount, body_mount, knowledge).rear
        if thing.front:
            return thing.front[0]
    return lens_mount


def _as_they_lead(things: list[Thing], lens_mount: str) -> list[Thing]:
    """'an M ring and an M to Z helicoid' for an LTM lens: the ring told by one mount leads to what takes that mount."""
    out = []
    for n, thing in enumerate(things):
        taken = {name for other in things[n + 1 :] if other.rear for name in other.front}
        single = thing.front and not thing.rear and thing.piece in ANY_PIECE and lens_mount not in thing.front
        out.append(
            replace(thing, front=(lens_mount,), rear=thing.front) if single and taken & {*thing.front} else thing
        )
    return out


def _leading_to(things: list[Thing], lens_mount: str, body_mount: str, knowledge: Knowledge) -> Adapter | None:
    """'A PL to MFT ring I have' for an OCT-18 lens: the piece that is wanting before the one ring named, as cut."""
    if len(things) != 1 or not things[0].front or body_mount not in things[0].rear or lens_mount in things[0].front:
        return None
    front = things[0].front[0]
    if knowledge.rings.onward.get(lens_mount, {}).get(front):
        return None
    return supposed(Thing("", (), "", front=(lens_mount,), rear=(front,), piece="adapter"), len(things), knowledge)


def _of_kind_between(thing: Thing, pairs: Sequence[str], knowledge: Knowledge) -> list[str]:
    """'an EF to MFT reducer': the pieces of just that kind between the two mounts; a 'ring' is no helicoid."""
    rows = [row for row in knowledge.catalogue.adapters.values() if f"{row.front}>{row.rear}" in pairs]
    if thing.piece in ANY_PIECE and not thing.rear:
        return []
    if thing.piece in ANY_PIECE:
        drawn = [row for row in rows if row.kind in ADDED_FOCUSING]
        return [row.id for row in rows if row not in drawn] if drawn else []
    return [row.id for row in rows if row.kind == thing.piece]


def _of_kind(thing: Thing, knowledge: Knowledge) -> str:
    """Every piece of the kind that takes one of the mounts named; any of the kind where there is none.

    A tube of which no length is told is one that is sold as a tube: what is shorter is a spacer.
    """
    rows = [row for row in knowledge.catalogue.adapters.values() if row.kind == thing.piece]
    fitting = [row for row in rows if row.front in thing.front]
    if thing.piece == TUBE:
        shortest = knowledge.catalogue.assumptions["shortest-tube"].value.nominal
        long = [row.id for row in fitting or rows if _is_as_long(row, shortest)]
        return "|".join(long) or TUBE
    return "|".join(row.id for row in fitting) or thing.piece or ""


def _is_as_long(tube: Adapter, shortest_mm: float) -> bool:
    length = tube.thickness_mm.shortest
    return is_known(length) and length.nominal >= shortest_mm


def _with_contacts(lens_mount: str, body_mount: str, knowledge: Knowledge) -> str:
    """Every ring with electronics from the lens's mount or to the body's; the word itself where none is."""
    rows = [row for row in knowledge.catalogue.adapters.values() if row.electronics]
    both = [row.id for row in rows if row.front == lens_mount and row.rear == body_mount]
    either = [row.id for row in rows if row.front == lens_mount or row.rear == body_mount]
    return "|".join(both or either) or ELECTRONIC


def _told_by_thickness(question: Question) -> list[Thing]:
    """A ring told by its thickness alone: '2.6 mm thick'; not where that says how far a ring is off."""
    told = numbers(question, "thickness")
    if len(told) != 1 or any(thing.thickness_mm is not None for thing in question.adapters):
        return []
    measured = question.said("nominal") is not None  # '36.6 not 37.0': what it should be makes it no less thick
    if not 0 <= told[0] <= THICKEST_MM or (off_by_mm(question) is not None and not measured):
        return []
    return [Thing("", (), f"{told[0]:g} mm ring", thickness_mm=(told[0], told[0]), piece="adapter")]


def _as_measured(question: Question) -> tuple[Thing, ...]:
    """The pieces named, the one whose length was told twice as it was measured: 'the 7.75 ring, measured 7.9'."""
    told, sized = numbers(question, "thickness"), [one for one in question.adapters if one.thickness_mm is not None]
    if len(told) != 1 or len(sized) != 1 or off_by_mm(question) is not None or question.said("nominal") is not None:
        return question.adapters
    low, high = sized[0].thickness_mm or (0.0, 0.0)
    if low != high or not 0 < abs(told[0] - low) <= AS_SOLD_MM:
        return question.adapters
    return tuple(
        replace(one, thickness_mm=(told[0], told[0])) if one is sized[0] else one for one in question.adapters
    )  # fmt: skip


def _is_plain(pair: str, knowledge: Knowledge) -> bool:
    """Whether a ring without glass between the two mounts holds infinity."""
    return bool(_right_rings(pair, knowledge))


def _flush_bushes(things: Iterable[Thing], lens_mount: str, body_mount: str, knowledge: Knowledge) -> list[str]:
    """'just the flush bush' for M42 on K, or into a K to L ring: the bare ring of no thickness that is right there."""
    adapters, goals = knowledge.catalogue.adapters, [body_mount, *(name for thing in things for name in thing.front)]
    right = (adapters[name] for goal in goals for name in _right_rings(f"{lens_mount}>{goal}", knowledge))
    return list(dict.fromkeys(one.id for one in right if one.kind == "plain" and _is_flush(one)))


def _is_flush(ring: Adapter) -> bool:
    seat = ring.thickness_mm.shortest
    return is_known(seat) and seat.nominal == 0


def _right_rings(pair: str, knowledge: Knowledge) -> list[str]:
    """The rings without glass between the two mounts that hold infinity."""
    front, _, rear = pair.partition(">")
    if not rear:
        return []
    mounts = knowledge.catalogue.mounts
    rings = knowledge.rings.onward.get(front, {}).get(rear, ())
    one, other = mounts[front].register_mm, mounts[rear].register_mm
    if not (is_known(one) and is_known(other)):
        return []
    right = round((one.nominal - other.nominal) * 1000)
    return [ring.id for ring in rings if ring.known and not ring.glass and ring.least_um <= right <= ring.greatest_um]


def _joined(things: Iterable[Thing]) -> list[Thing]:
    """'a C to MFT ring' and 'flat, 1 mm' said after it are one piece."""
    out: list[Thing] = []
    for thing in things:
        last = out[-1] if out else None
        bare = thing.thickness_mm is not None and not thing.front and not thing.rear and thing.kind != "adapter"
        ring = thing.piece in ANY_PIECE or thing.piece == "recessed"
        if last is not None and bare and ring and last.thickness_mm is None and (last.front or last.rear):
            out[-1] = replace(last, thickness_mm=thing.thickness_mm)
        else:
            out.append(thing)
    return out


def _pairs(thing: Thing, lens_mount: str, body_mount: str, knowledge: Knowledge) -> Iterator[str]:
    """'front>rear' for every pair of mounts that the words may mean; parts of the same thread count alike."""
    fronts = set(thing.front or (lens_mount,))
    mounts = knowledge.catalogue.mounts
    for front in tuple(fronts):
        parts = (joint.rear for joint in knowledge.joints.onward(front))
        fronts |= {part for part in parts if "thread-only" in mounts[part].traits}
    for front in sorted(fronts):
        for rear in thing.rear or (body_mount,):
            yield f"{front}>{rear}"
