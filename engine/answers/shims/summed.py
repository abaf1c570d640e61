"""The pieces told, taken for what their lengths come to, where by their names they do not lead from lens to body.

Lengths from seat to seat add, whatever joins them: error = their sum + body register - lens register.
"""

from __future__ import annotations

from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import AS_TOLD
from engine.answers.parts.wording import listed, small_mm
from engine.answers.seat.described import ANY_PIECE, BENDS, CUP, TUBE
from engine.answers.shims.pieces_wanted import right_rings
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.base.span import Span
from engine.chains.walk import ADDED_FOCUSING
from engine.facts.records import Adapter, Cup
from grammar.questions import Question, Thing

TOGETHER = "described-together"  # id of the one ring that stands for all pieces told
UNSIZED = "How long is each of your pieces, from seat to seat? Their sum tells, whatever joins them."
LEAST = 2  # pieces; one alone is a ring of its own, of which it is told what it takes
SPACES = frozenset({*ANY_PIECE, *ADDED_FOCUSING, *BENDS, CUP, TUBE})


def summed(question: Question, lens_mount: str, body_mount: str, knowledge: Knowledge) -> Adapter | None:
    """One ring as long as all pieces told; None where the length of one is not known, or none is told at all.

    None too where it is told that the first takes no lens of that mount, or the last ends on no such body.
    """
    things = [one for one in question.adapters if not _says_nothing(one)]
    if len(things) < LEAST or not any(one.thickness_mm is not None for one in things):
        return None
    takes = any(lens_mount in one.front or not one.front for one in things)
    ends = any(body_mount in one.rear or not one.rear for one in things)
    lengths = [_length(one, knowledge) for one in things]
    if not (takes and ends) or any(length is None for length in lengths):
        return None
    low = round(sum(length[0] for length in lengths if length is not None), 4)
    high = round(sum(length[1] for length in lengths if length is not None), 4)
    span = Span.fixed(Interval.exact(low)) if low == high else Span(Interval.exact(low), Interval.exact(high))
    drawn = next((one.piece for one in things if one.piece in ADDED_FOCUSING), None)
    kind = (drawn or "plain") if low != high else "recessed" if low < 0 else "plain"
    cup = Cup(UNKNOWN, Interval.exact(-low)) if low < 0 else None
    name = f"your {listed([_words(one, length) for one, length in zip(things, lengths, strict=True) if length])}"
    fixed = sum(length[0] for length in lengths if length is not None and length[0] == length[1]) if drawn else 0.0
    return Adapter(
        TOGETHER, name, lens_mount, body_mount, kind, AS_TOLD, span, "measured", cup, common="own", owned=1,
        fixed_mm=round(fixed, 4),
    )  # fmt: skip


def as_summed(ring: Adapter) -> str:
    """What is assumed of such a ring, said before anything else."""
    low, high = ring.thickness_mm.shortest, ring.thickness_mm.longest
    assert is_known(low)
    assert is_known(high)
    whole = small_mm(low.nominal) if low == high else f"{small_mm(low.nominal)} to {small_mm(high.nominal)}"
    return f"How these join is not known, so only their lengths count: {whole} in all, if nothing else stands between."


def is_unsized(question: Question) -> bool:
    """Whether of several pieces without glass one is told without its length, so that their sum is not known."""
    things = [one for one in question.adapters if not _says_nothing(one)]
    glass = any(one.factor is not None or (one.piece or "") not in SPACES for one in things)
    return len(things) >= LEAST and not glass and any(one.thickness_mm is None for one in things)


def _says_nothing(thing: Thing) -> bool:
    """'my ring stack: ...': a word for all of them."""
    bare = thing.piece in ANY_PIECE and not (thing.front or thing.rear or thing.ids)
    return bare and thing.thickness_mm is None and thing.factor is None


def _length(thing: Thing, knowledge: Knowledge) -> tuple[float, float] | None:
    """The shortest and the longest setting of a piece, as told or as it has to be between its two mounts."""
    if thing.factor is not None or (thing.piece or "") not in SPACES:
        return None
    times = thing.count or 1
    if thing.thickness_mm is not None:
        low, high = (size * times for size in thing.thickness_mm)
        return (-low, -high) if thing.piece == CUP and low == high > 0 else (low, high)
    named = knowledge.catalogue.adapters.get(thing.id or "") if thing.kind == "adapter" else None
    pairs = [f"{front}>{rear}" for front in thing.front[:1] for rear in thing.rear[:1]]
    right = [knowledge.catalogue.adapters[name] for pair in pairs for name in right_rings(pair, knowledge)]
    for ring in [named] if named is not None else [one for one in right if one.thickness_mm.is_fixed]:
        shut, out = ring.thickness_mm.shortest, ring.thickness_mm.longest
        if is_known(shut) and is_known(out) and not ring.has_glass:
            return shut.nominal, out.nominal
    return None


def _words(thing: Thing, length: tuple[float, float]) -> str:
    noun = "cup" if length[0] < 0 else "ring" if thing.piece in ANY_PIECE else "tube" if thing.piece == TUBE else ""
    low, high = abs(length[0]), abs(length[1])
    size = f"{low:g} mm" if low == high else f"{low:g} to {high:g} mm"
    return f"{size} {noun or thing.piece}"
