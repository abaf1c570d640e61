"""The adapters that a question names or describes ("a flat 1 mm ring", "the 17-31 helicoid"): which must be used."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from engine.answers.knowledge import Knowledge
from engine.answers.loose import off_by_mm
from engine.answers.resolve import AS_TOLD
from engine.answers.said import numbers
from engine.base.compact import replace
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.base.span import Span
from engine.chains.search import MOST_PIECES
from engine.chains.walk import ADDED_FOCUSING, ENDS
from engine.facts.records import Adapter, Cup
from grammar.questions import Limits, Question, Thing

TUBE = "extension-tube"
# words for a piece that say nothing of its kind
ANY_PIECE = frozenset({"adapter", "plain", "ring", "hub", ""})
ENDS_BESIDE = 2  # pieces beside those named, to come from the lens to them and from them to the body
THICKEST_MM = 120.0  # a longer thing is no ring


def with_named_pieces(
    question: Question, lens_mount: str, body_mount: str, knowledge: Knowledge
) -> tuple[Knowledge, Limits]:
    """The knowledge with the pieces that were described, and limits that ask for all that were named."""
    made: list[Adapter] = []
    using: list[str] = [name for name in question.limits.using if name not in ANY_PIECE]
    glass, glassless = question.limits.with_glass, question.limits.without_glass
    things = [*_joined(question.adapters), *_told_by_thickness(question)]
    lens_end = _lens_end(things, lens_mount, knowledge)
    for n, thing in enumerate(things):
        if thing.kind == "adapter" and thing.id is not None:
            using.append(thing.id)
        elif thing.thickness_mm is not None:
            piece = _shipped_helicoid(thing, knowledge) or _made(thing, n, lens_end, body_mount)
            if piece.id not in knowledge.catalogue.adapters:
                made.append(piece)
            using.append(piece.id)
        elif thing.factor is not None:
            using.append(f"factor {thing.factor:g}")
            glass = True
        elif thing.piece in (*ADDED_FOCUSING, TUBE) and not thing.rear:
            using.append(_of_kind(thing, knowledge))  # 'an M42 helicoid': a ring past it is not what was named
        elif not thing.rear and body_mount in thing.front and lens_mount not in thing.front:
            continue  # 'the thin MFT ring': every way ends in one
        elif thing.front or thing.rear:
            pairs = tuple(_pairs(thing, lens_mount, body_mount, knowledge))
            using.append("|".join(pairs))
            # 'the M42 to E ring' is the plain one where a plain one does it
            glassless = glassless or (not glass and any(_is_plain(pair, knowledge) for pair in pairs))
        elif thing.piece and thing.piece not in ANY_PIECE:
            using.append(thing.piece)
    if made and all(piece.kind == TUBE for piece in made) and len(using) == len(made) and not glass:
        # tubes alone were named: they go with a ring that seats the lens right, where there is one
        right = _right_rings(f"{lens_mount}>{body_mount}", knowledge)
        using += ["|".join(right)] if right else []
    wanted = tuple(dict.fromkeys(using))
    pieces = question.limits.pieces
    if pieces is None and len(wanted) + ENDS_BESIDE > MOST_PIECES:
        pieces = len(wanted) + ENDS_BESIDE  # who names so many pieces wants them all
    limits = replace(
        question.limits, using=wanted, pieces=pieces, with_glass=glass, without_glass=glassless and not glass
    )  # fmt: skip
    return knowledge.with_adapters(tuple(made)), limits


def _lens_end(things: list[Thing], lens_mount: str, knowledge: Knowledge) -> str:
    """The mount that a plate is screwed to whose front was not told: that of what is drawn out, else the lens's own."""
    for thing in things:
        drawn = _shipped_helicoid(thing, knowledge)
        if drawn is not None:
            return drawn.rear
        if thing.piece in (*ADDED_FOCUSING, TUBE) and thing.front:
            return thing.front[0]
    return lens_mount


def _of_kind(thing: Thing, knowledge: Knowledge) -> str:
    """Every piece of the kind that takes one of the mounts named; any of the kind where there is none."""
    rows = knowledge.catalogue.adapters.values()
    fitting = [row.id for row in rows if row.kind == thing.piece and row.front in thing.front]
    return "|".join(fitting) or thing.piece or ""


def _told_by_thickness(question: Question) -> list[Thing]:
    """A ring told by its thickness alone: '2.6 mm thick'; not where that says how far a ring is off."""
    told = numbers(question, "thickness")
    if len(told) != 1 or any(thing.thickness_mm is not None for thing in question.adapters):
        return []
    if not 0 <= told[0] <= THICKEST_MM or off_by_mm(question) is not None:
        return []
    return [Thing("", (), f"{told[0]:g} mm ring", thickness_mm=(told[0], told[0]), piece="adapter")]


def _is_plain(pair: str, knowledge: Knowledge) -> bool:
    """Whether a ring without glass between the two mounts holds infinity."""
    return bool(_right_rings(pair, knowledge))


def _right_rings(pair: str, knowledge: Knowledge) -> list[str]:
    """The rings without glass between the two mounts that hold infinity."""
    front, _, rear = pair.partition(">")
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


def _shipped_helicoid(thing: Thing, knowledge: Knowledge) -> Adapter | None:
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


def _made(thing: Thing, n: int, lens_mount: str, body_mount: str) -> Adapter:
    """An adapter as it was described, taken for measured."""
    assert thing.thickness_mm is not None
    low, high = thing.thickness_mm
    piece = thing.piece or "adapter"
    front = thing.front[0] if thing.front else lens_mount
    rear = thing.rear[0] if thing.rear else body_mount
    if not thing.rear and front == body_mount and piece not in (*ADDED_FOCUSING, TUBE):
        front = lens_mount  # 'the 1 mm E plate' is on the body's side
    two_sides = front != rear and bool(thing.front and thing.rear)
    if piece in (*ADDED_FOCUSING, TUBE) and not (piece == TUBE and two_sides):  # 'a 2 mm SR to EF macro ring'
        front = rear = thing.front[0] if thing.front else lens_mount
        kind = piece
    else:
        kind = TUBE if front == rear else "recessed" if low < 0 else "plain"
    span = Span(Interval.exact(low), Interval.exact(high)) if low != high else Span.fixed(Interval.exact(low))
    cup = Cup(UNKNOWN, Interval.exact(-low)) if low < 0 else None
    name = f"your {low:g} mm {_noun(kind)}" if low == high else f"your {low:g} to {high:g} mm {_noun(kind)}"
    return Adapter(f"described-{n + 1}", name, front, rear, kind, AS_TOLD, span, "measured", cup, common="own", owned=1)


def _noun(kind: str) -> str:
    return {"plain": "ring", "recessed": "cup", TUBE: "tube"}.get(kind, kind)


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
