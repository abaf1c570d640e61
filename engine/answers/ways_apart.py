"""Ways between one lens and one body side by side: what decides between them, then what each of them does."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import log2

from engine.answers.close.draws_apart import draws_apart
from engine.answers.parts.answer import Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import right_seat_mm
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side, setup_of
from engine.answers.parts.said import mentions, stop
from engine.answers.parts.wording import about, distance, money, quantity_text, small_mm, times, trimmed
from engine.answers.seat.chain_numbers import price_of
from engine.answers.seat.making import ring_to_make
from engine.answers.seat.sorts_of_ring import as_flat_sort
from engine.answers.seat.ways_told import CLOSE_UP_LENS, Way, ways_told
from engine.answers.ways.several import way_told
from engine.answers.ways.two_prices import without_chip
from engine.base.compact import compact, replace
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from grammar.kinds import CHAIN, MACRO_DISTANCE
from grammar.questions import Question

HELICOID = "helicoid"
ALIKE_STOPS = 0.05  # ways that differ by less light do not differ
ALIKE_SIZE = 0.005
PAIR = 2


@compact
class Outcome:
    """A way and what comes of it: its chain, and how large and how near things get with it fully out."""

    way: Way
    chain: ListedChain | None
    magnification: float | None = None
    near: Interval | None = None

    @property
    def verdict(self) -> str:
        return self.chain.listed.judged.verdict if self.chain is not None else ""

    @property
    def price(self) -> Interval | None:
        """What all of it costs; None where a piece has no price, or is no piece of the facts."""
        if self.chain is None:
            return None
        pieces = self.chain.listed.judged.chain.adapters
        whole = self.way.factor is None or any(piece.factor is not None for piece in pieces)
        whole = whole and not any(piece.owned for piece in pieces) and not self.is_worn_in_front
        return price_of(self.chain.listed.judged) if whole else None

    @property
    def is_worn_in_front(self) -> bool:
        return any(thing.piece == CLOSE_UP_LENS for thing in self.way.pieces)

    @property
    def does(self) -> tuple[object, ...]:
        """All by which it may differ from another way."""
        pieces = self.chain.listed.judged.chain.adapters if self.chain is not None else ()
        lengths = ((piece.id, quantity_text("seat_mm", piece.thickness_mm)) for piece in pieces)
        return (*lengths, self.way.factor, self.magnification)

    @property
    def error(self) -> Interval | None:
        """How much too far out, or too close, the way sets the lens."""
        error = self.chain.listed.judged.trace.value("register_error_mm") if self.chain is not None else None
        hull = error.hull() if isinstance(error, Span) else None
        return hull if isinstance(hull, Interval) else None

    @property
    def seat_mm(self) -> float | None:
        """How long it is from seat to seat; None where that can be set."""
        seat = self.chain.listed.judged.trace.value("seat_mm") if self.chain is not None else None
        fixed = isinstance(seat, Span) and seat.is_fixed and is_known(seat.shortest)
        return seat.shortest.nominal if isinstance(seat, Span) and fixed and is_known(seat.shortest) else None

    @property
    def pieces(self) -> int:
        return len(self.chain.listed.judged.chain.adapters) if self.chain is not None else 0

    @property
    def stops(self) -> float:
        """Light lost by its glass, in stops; below 0 it is gained."""
        return 2 * log2(self.way.factor) if self.way.factor is not None else 0.0


def ways_apart(question: Question, knowledge: Knowledge) -> tuple[Told, tuple[ListedChain, ...]]:
    """What sets the ways apart first, then each by its best chain; empty where there are not two."""
    facts = knowledge.catalogue
    lens, body = lens_side(question.lens, facts), body_side(question.body, facts)
    ways = ways_told(question, knowledge.catalogue)
    if len(question.lenses) != 1 or len(ways) < 2:
        return Told(), ()
    if not isinstance(lens, LensSide) or not isinstance(body, BodySide):
        drawn = draws_apart(ways, question, knowledge)
        return (drawn if drawn.lines else _by_glass_alone(ways, question)), ()
    outcomes: list[Outcome] = []
    for way in ways:
        chain = _chain(way, question, lens, body, knowledge, sum(one.chain is not None for one in outcomes) + 1)
        size, near = _close(way, question, knowledge)
        outcomes.append(Outcome(way, chain, size, near))
    if len({one.does for one in outcomes}) == 1:
        return Told(), ()
    least = right_seat_mm(knowledge.catalogue)
    decides = [*_decides(outcomes), *_as_long(outcomes, least)]
    if mentions(question, "same-word", "differ"):
        decides = [*decides[-1:], *decides[:-1]] if decides[-1:] == [*_as_long(outcomes, least)] else decides
    told = Told((Line("head", " ".join(decides)),), ()) if decides else Told()
    for one in outcomes:
        told += _told(one, question) + _if_flat(one, question, lens, body, knowledge)
    told += Told((), (*_differences(outcomes), *_registers(lens, body, knowledge)))
    return told, tuple(one.chain for one in outcomes if one.chain is not None)


def _by_glass_alone(ways: Sequence[Way], question: Question) -> Told:
    """What glass of a factor makes of the lens, where no mount is told, so that no chain is known.

    It is set against other glass, or against a plain ring, which changes nothing.
    """
    if not any(way.factor for way in ways) or any(way.comes_near for way in ways):
        return Told()
    outcomes = [Outcome(way, None) for way in ways]
    told = Told((Line("head", " ".join(_decides(outcomes))),))
    for way in ways:
        left = "" if way.factor is not None else ": light, focal length and f-number stay as they are"
        told += Told((Line("fact", f"{way.name}{left}"),)) + _glass(way, question)
    return told + Told((), tuple(_differences(outcomes)))


def _chain(
    way: Way, question: Question, lens: LensSide, body: BodySide, knowledge: Knowledge, rank: int
) -> ListedChain | None:
    from engine.answers.ways.pair import one_pair

    pieces = tuple(thing for thing in way.pieces if thing.piece != CLOSE_UP_LENS)
    pieces = without_chip(pieces, lens, body, knowledge)
    alone = question.with_(intent=CHAIN, topic=None, adapters=pieces, limits=way.limits)
    found = one_pair(alone, lens, body, knowledge).chains or ()
    return ListedChain(rank, found[0].listed, found[0].title) if found else None


def _close(way: Way, question: Question, knowledge: Knowledge) -> tuple[float | None, Interval | None]:
    """The magnification with everything drawn out, and where it is sharp then, from the sensor."""
    if not way.comes_near or question.lens is None or question.lens.focal_length_mm is None:
        return None, None
    from engine.answers.closeup import macro

    stretches = any(thing.piece == HELICOID and thing.thickness_mm is None for thing in way.pieces)
    values = tuple(row for row in question.values if row[0] == "travel" and stretches)
    alone = question.with_(intent=MACRO_DISTANCE, topic=None, adapters=way.pieces, limits=way.limits, values=values)
    rows = macro(alone, knowledge).quantities
    sizes = [(row.value.greatest, row.case) for row in rows if row.name == "magnification" and is_known(row.value)]
    if not sizes:
        return None, None
    size, case = max(sizes)
    near = [row.value for row in rows if row.name == "focus_from_sensor_mm" and row.case == case]
    return size, next((value for value in near if isinstance(value, Interval)), None)


def _decides(outcomes: Sequence[Outcome]) -> Iterator[str]:
    """A sentence for each quantity in which the ways differ, the weightiest first."""
    names = [one.way.name for one in outcomes]
    far = [one for one in outcomes if one.verdict == "infinity"]
    if 0 < len(far) < len(outcomes):
        yield f"Only {_listed([one.way.name for one in far])} {'reach' if len(far) > 1 else 'reaches'} infinity."
    light = sorted(outcomes, key=lambda one: one.stops)
    if light[-1].stops - light[0].stops > ALIKE_STOPS:
        by = trimmed(light[-1].stops - light[0].stops, 2)
        yield f"{_upper(light[0].way.name)} gives {by} stops more light than {light[-1].way.name}."
    sizes = [one.magnification or 0.0 for one in outcomes]
    if max(sizes) - min(sizes) > ALIKE_SIZE:
        rows = (f"{name} {times(size)}" for name, size in zip(names, sizes, strict=True) if size)
        yield f"At their nearest, the lens itself at infinity: {'; '.join(rows)}."
    bands = [one.price for one in outcomes]
    if all(band is not None for band in bands):
        known = sorted((band.nominal, name, band) for band, name in zip(bands, names, strict=True) if band is not None)
        (least, cheap, low), (most, dear, high) = known[0], known[-1]
        if least < most:
            band = f"{money((low.least, low.greatest))} against {money((high.least, high.greatest))}"
            yield f"{_upper(cheap)} is the cheaper: {band} for {dear}."
    counts = [one.pieces for one in outcomes if one.chain is not None]
    if counts and max(counts) > min(counts):
        few = next(one for one in outcomes if one.chain is not None and one.pieces == min(counts))
        yield f"{_upper(few.way.name)} has fewer joints: less play, fewer tolerances that add."


def _as_long(outcomes: Sequence[Outcome], near_mm: float) -> Iterator[str]:
    """That all ways hold the lens at the same distance, where they do and reach infinity."""
    seats = [one.seat_mm for one in outcomes]
    first = seats[0]
    plain = all(one.verdict == "infinity" and one.way.factor is None for one in outcomes)
    if first is None or not plain or any(one is None or abs(one - first) > near_mm for one in seats):
        return
    yield f"The same length either way, {small_mm(first)} from seat to seat: infinity with {_both(len(seats))}."


def _both(count: int) -> str:
    return "both" if count == PAIR else "all"


def _told(one: Outcome, question: Question) -> Told:
    if one.chain is None:
        return Told((Line("fact", f"{one.way.name}: no way found with it"),))
    lines = [Line("fact", f"{one.way.name}: {way_told(one.chain, question.feet)}")]
    case = one.way.name
    rows = [Quantity("adapter_count", Interval.exact(float(one.pieces)), case)]
    rows += [Quantity("register_error_mm", one.error, case)] if one.error is not None else []
    if one.price is not None:
        rows.append(Quantity("price", one.price, case))
    if one.magnification is not None:
        text = f"fully out {times(one.magnification)}"
        rows.append(Quantity("magnification", Interval.exact(one.magnification), case))
        if one.near is not None:
            text += f", sharp at {about(one.near, lambda value: distance(value, question.feet))} from the sensor"
            rows.append(Quantity("focus_from_sensor_mm", one.near, case))
        lines.append(Line("fact", text, 1))
    return Told(tuple(lines), tuple(rows)) + _glass(one.way, question)


def _if_flat(one: Outcome, question: Question, lens: LensSide, body: BodySide, knowledge: Knowledge) -> Told:
    """What comes of the way where a ring of it, which is also sold as a cup, is the flat one of that name."""
    flat = as_flat_sort(one.way.pieces, knowledge)
    if flat is None or one.chain is None:
        return Told()
    other = Outcome(one.way, _chain(replace(one.way, pieces=flat), question, lens, body, knowledge, 1))
    if other.chain is None or other.error is None or other.error == one.error:
        return Told()
    text = f"if its ring is the flat sort of that name: {way_told(other.chain, question.feet)}"
    rows = (Quantity("register_error_mm", other.error, f"{one.way.name}, flat sort"),)
    return Told((Line("fact", text, 1),), rows)


def _glass(way: Way, question: Question) -> Told:
    """What a reducer or extender makes of the light, the focal length and the f-number."""
    factor = way.factor
    if factor is None:
        return Told()
    case = f"{factor:g}x"
    stops = 2 * log2(factor)
    parts = [f"{abs(stops):.1f} stops {'slower' if stops > 0 else 'faster'}"]
    rows = [Quantity("light_difference_stops", Interval.exact(abs(stops)), case)]
    focal = question.lens.focal_length_mm if question.lens is not None else None
    if focal is not None:
        parts.append(f"{trimmed(focal, 1)} mm becomes {trimmed(focal * factor, 1)} mm")
        rows.append(Quantity("focal_length_mm", Interval.exact(focal * factor), case))
    at = stop(question)
    if at is not None:
        parts.append(f"f/{trimmed(at, 2)} becomes f/{trimmed(at * factor, 2)}")
        rows.append(Quantity("f_number", Interval.exact(at * factor), case))
    return Told((Line("fact", "; ".join(parts), 1),), tuple(rows))


def _differences(outcomes: Sequence[Outcome]) -> Iterator[Quantity]:
    factors = [one for one in outcomes if one.way.factor is not None]
    if len(factors) > 1:
        one, other = factors[:2]
        by = abs(one.stops - other.stops)
        yield Quantity("light_difference_stops", Interval.exact(by), f"{one.way.name} against {other.way.name}")


def _registers(lens: LensSide, body: BodySide, knowledge: Knowledge) -> Iterator[Quantity]:
    """What lies between the two mounts, whatever way is taken."""
    room = ring_to_make(setup_of(lens, body, knowledge.catalogue), knowledge.catalogue).thickness_mm
    if room is not None:
        yield Quantity("register_difference_mm", room, f"{lens.mount.id}, {body.mount.id}")


_PLAINLY = ("adapter", "plain", "ring", "thread-reducer", "")  # kinds of pieces that are rings without glass


def kinds_in_words(ways: Sequence[Way]) -> str:
    """'focal reducer or plain ring': what is set against what, for the advice on such a choice."""
    kinds = []
    for way in ways:
        special = [thing.piece or "" for thing in way.pieces if thing.piece not in _PLAINLY]
        kinds.append(special[0].replace("-", " ") if special else way.name if not way.pieces else "plain ring")
    told = dict.fromkeys(kinds)
    return " or ".join(told) if len(told) > 1 else ""  # two plain rings are no choice of kinds


def _listed(names: Sequence[str]) -> str:
    return " and ".join(names)


def _upper(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}"
