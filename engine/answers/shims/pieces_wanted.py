"""What each piece that a question names asks of a chain: which adapter, which kind of it, or one made up as told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.seat.described import ANY_PIECE, BENDS, TUBE, described, supposed
from engine.answers.seat.sorts_of_ring import of_its_word
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.chains.walk import ADDED_FOCUSING
from engine.facts.records import Adapter
from grammar.questions import Question, Thing

ELECTRONIC = "electronic-adapter"
BUSH = "thread-reducer"


class Wanted:
    """What the pieces named ask for. `made`: those that no facts hold; `using`: what must be in the chain, by id or
    kind, several parted by '|'; `glass`, `glassless`: whether it must have glass, or none.
    """

    def __init__(
        self, question: Question, pieces: Sequence[Thing], lens_end: str, lens_mount: str, body_mount: str,
        knowledge: Knowledge,
    ) -> None:  # fmt: skip
        self.question, self.pieces, self.knowledge = question, pieces, knowledge
        self.lens_end, self.lens_mount, self.body_mount = lens_end, lens_mount, body_mount
        self.made: list[Adapter] = []
        self.using: list[str] = [name for name in question.limits.using if name not in ANY_PIECE]
        self.glass, self.glassless = question.limits.with_glass, question.limits.without_glass
        for n, thing in enumerate(pieces):
            self._take(thing, n)

    @property
    def is_tubes_alone(self) -> bool:
        """Whether no more than tubes were named."""
        if not self.made:
            return len(self.using) == 1 and any(thing.piece == TUBE for thing in self.pieces)
        return all(piece.kind == TUBE for piece in self.made) and len(self.using) == len(self.made)

    def _take(self, thing: Thing, n: int) -> None:
        lens_mount, body_mount, knowledge = self.lens_mount, self.body_mount, self.knowledge
        spacer = _as_spacer(thing, lens_mount, body_mount, n, knowledge)
        if spacer is not None:
            self.made.append(spacer)
            self.using.append(spacer.id)
        elif thing.kind == "adapter" and thing.id is not None:
            self.using.append(thing.id)
        elif thing.thickness_mm is not None:
            self._take_described(described(thing, n, self.lens_end, body_mount, knowledge))
        elif thing.factor is not None:
            self.using.append("|".join(_by_factor(thing, knowledge)) or f"factor {thing.factor:g}")
            self.glass = True
        elif thing.piece in (*ADDED_FOCUSING, TUBE) and not thing.rear:
            self.using.append(_of_kind(thing, knowledge))  # 'an M42 helicoid': a ring past it is not what was named
        elif thing.piece == ELECTRONIC:
            self.using.append(_with_contacts(lens_mount, body_mount, knowledge))
        elif not thing.rear and body_mount in thing.front and lens_mount not in thing.front:
            pass  # 'the thin MFT ring': every way ends in one
        elif thing.front or thing.rear:
            self._take_between(thing, n)
        elif thing.piece == BUSH and (flush := _flush_bushes(self.pieces, lens_mount, body_mount, knowledge)):
            self.using.append("|".join(flush))
        elif thing.piece and thing.piece not in ANY_PIECE:
            self._take_kind(thing.piece, thing, n)
        elif not mentions(self.question, "two-seats") and (
            sort := of_its_word(thing, (f"{lens_mount}>{body_mount}",), self.question.text, knowledge)
        ):
            self.using.append("|".join(sort))  # 'the lipped ring'; two sorts are set apart by their seats

    def _take_described(self, piece: Adapter) -> None:
        """What is told by its length goes in; it is made up where the facts do not hold it."""
        if piece.id not in self.knowledge.catalogue.adapters:
            self.made.append(piece)
        self.using.append(piece.id)

    def _take_between(self, thing: Thing, n: int) -> None:
        """'the M42 to E ring': what there is between the two mounts, of the kind that was named."""
        knowledge = self.knowledge
        pairs = tuple(_pairs(thing, self.lens_mount, self.body_mount, knowledge))
        cut = supposed(thing, n, knowledge) if not self.glass else None
        if cut is not None:
            self.made.append(cut)
            pairs = (cut.id,)
        of_kind = of_its_word(thing, pairs, self.question.text, knowledge)
        of_kind = of_kind or self._right_alone(thing, pairs) or _of_kind_between(thing, pairs, knowledge)
        self.using.append("|".join(of_kind or pairs))
        if thing.piece not in ANY_PIECE:
            self.glass = self.glass or any(knowledge.catalogue.adapters[name].has_glass for name in of_kind)
        # the plain one where a plain one does it
        plain = not self.glass and cut is None and any(right_rings(pair, knowledge) for pair in pairs)
        self.glassless = self.glassless or plain

    def _right_alone(self, thing: Thing, pairs: Sequence[str]) -> list[str]:
        """'tubes on an M42 to E ring', an LTM lens 'in a bush and an M42 to E ring': the one right for its own mounts.

        Of rings of other lengths between the two that is the usual one, but under what is drawn out.
        """
        tubes = any(one.piece == TUBE for one in self.pieces)
        of_others = bool(thing.front and thing.rear) and self.lens_mount not in thing.front
        drawn = any(one.piece in ADDED_FOCUSING for one in self.pieces) or thing.piece not in ANY_PIECE
        adapters = self.knowledge.catalogue.adapters
        right = [name for pair in pairs for name in right_rings(pair, self.knowledge)]
        right = right if tubes else [name for name in right if adapters[name].kind not in ADDED_FOCUSING]
        return right if (tubes or of_others) and not drawn else []

    def _take_kind(self, kind: str, thing: Thing, n: int) -> None:
        """'a tilt ring': of a piece that bends the way, one from mount to mount; else any of its kind."""
        bends = kind in BENDS
        between = replace(thing, front=(self.lens_mount,), rear=(self.body_mount,)) if bends else thing
        cut = supposed(between, n, self.knowledge) if not self.glass else None
        self.made += [cut] if cut is not None else []
        self.using.append(cut.id if cut is not None else kind)


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


def _by_factor(thing: Thing, knowledge: Knowledge) -> list[str]:
    """'a 0.71 EF to E reducer': the glass of that factor between the two mounts that were named, of those sold."""
    return [
        row.id for row in knowledge.catalogue.adapters.values()
        if row.factor == thing.factor and row.front in thing.front and (row.rear in thing.rear or not thing.rear)
    ]  # fmt: skip


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


def _flush_bushes(things: Iterable[Thing], lens_mount: str, body_mount: str, knowledge: Knowledge) -> list[str]:
    """'just the flush bush' for M42 on K, or into a K to L ring: the bare ring of no thickness that is right there."""
    adapters, goals = knowledge.catalogue.adapters, [body_mount, *(name for thing in things for name in thing.front)]
    right = (adapters[name] for goal in goals for name in right_rings(f"{lens_mount}>{goal}", knowledge))
    return list(dict.fromkeys(one.id for one in right if one.kind == "plain" and _is_flush(one)))


def _is_flush(ring: Adapter) -> bool:
    seat = ring.thickness_mm.shortest
    return is_known(seat) and seat.nominal == 0


def right_rings(pair: str, knowledge: Knowledge) -> list[str]:
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
