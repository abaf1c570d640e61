"""Tubes, bellows, helicoid and close-up lenses set against each other on one lens, where no body is told."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.close.close_picture import shown_by
from engine.answers.close.close_rows import Shown, at_extension, beyond_its_own
from engine.answers.close.dioptres import with_close_up_lens
from engine.answers.close.drawn import draw_of, is_drawn
from engine.answers.close.image_side import size_told
from engine.answers.close.nearest_set import asked_of_tubes
from engine.answers.close.tube_sets import TUBE, sets_of, tubes_told
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import listed, small_mm, times, trimmed
from engine.answers.seat.distances import Distances, distances_of
from engine.answers.seat.ways_told import CLOSE_UP_LENS, Way
from engine.base.compact import compact, replace
from engine.base.interval import Interval
from grammar.questions import Question

CLOSE_ENOUGH = 0.02  # of the extension wanted


@compact
class Drawn:
    """A way and the extension that it gives at its shortest and its longest, mm; how it comes about."""

    way: Way
    least: float
    most: float
    sum_of: str = ""

    @property
    def name(self) -> str:
        kind = next((thing.piece or "" for thing in self.way.pieces), "").replace("-", " ")
        if self.sum_of:
            return f"{self.sum_of} = {small_mm(self.most)} of tubes"
        if self.shut:
            low, high = self.shut, self.shut + self.most
            return f"{trimmed(low, 1)} to {trimmed(high, 1)} mm {kind}, {small_mm(self.most)} of travel"
        if self.least < self.most:
            spread = f"{trimmed(self.least, 1)} to " if self.least else "up to "
            usual = all(thing.piece == TUBE for thing in self.way.pieces)
            return f"{'a usual set of tubes' if usual else kind}, {spread}{small_mm(self.most)}"
        return f"{small_mm(self.most)} of {kind.removeprefix('extension ')}"

    @property
    def shut(self) -> float | None:
        """How long the one piece is shut that was told by its two ends."""
        told = self.way.pieces[0].thickness_mm if len(self.way.pieces) == 1 else None
        return told[0] if told is not None and 0 < told[0] < told[1] and not self.least else None

    def size(self, focal: float) -> str:
        if self.least < self.most:
            return f"{times(self.least / focal)} to {times(self.most / focal)}"
        return times(self.most / focal)

    def gives(self, extension: float) -> bool:
        room = CLOSE_ENOUGH * extension
        return self.least - room <= extension <= self.most + room


def draws_apart(ways: Sequence[Way], question: Question, knowledge: Knowledge) -> Told:
    """How near each comes, all of its pieces together; first which comes nearest, or gives the size that is wanted."""
    lens = distances_of(question.lens, knowledge.catalogue) if question.lens is not None else None
    if lens is None or len(ways) < 2 or not all(way.comes_near for way in ways):
        return Told()
    shown, focal = shown_by(question, knowledge), lens.focal.nominal
    drawn = [found for way in ways if (found := _drawn(way, question, knowledge)) is not None]
    if not drawn:
        return Told()
    wanted, own = size_told(question), None
    if wanted and question.mentions("own-size") and not asked_of_tubes(question):
        wanted, own = None, wanted
    told = _for_size(wanted, drawn, focal) if wanted else _nearest(drawn, focal)
    for one in drawn:
        told += _rows(one, lens, shown)
        if own is not None and one.least == one.most:
            told += beyond_its_own(own, focal, one.most, small_mm(one.most))
    for way in ways:
        if any(thing.piece == CLOSE_UP_LENS for thing in way.pieces):
            for part in with_close_up_lens(lens, replace(question, adapters=way.pieces), shown):
                told += part
    return told


def _drawn(way: Way, question: Question, knowledge: Knowledge) -> Drawn | None:
    """The lengths that its pieces come to: told, or those of a usual set; None where it is no matter of length."""
    alone = replace(question, adapters=way.pieces, values=(), text="")
    if any(thing.piece == CLOSE_UP_LENS for thing in way.pieces):
        return None
    least = most = 0.0
    parts: list[str] = []
    fixed: list[float] = []
    for thing in way.pieces:
        ends = draw_of(thing, alone, knowledge)
        if ends is None and is_drawn(thing):
            ends = (0.0, thing.thickness_mm[1] - thing.thickness_mm[0]) if thing.thickness_mm is not None else None
        if ends is not None:
            least, most = least + ends[0], most + ends[1]
        else:
            fixed += tubes_told(replace(alone, adapters=(thing,)), knowledge)
    if not fixed and most == 0.0:
        lengths = list(sets_of([], alone, knowledge))
        return Drawn(way, min(lengths), max(lengths)) if lengths else None
    if len(fixed) > 1:
        parts = [trimmed(one, 2) for one in fixed]
    return Drawn(way, least + sum(fixed), most + sum(fixed), " + ".join(parts))


def _nearest(drawn: Sequence[Drawn], focal: float) -> Told:
    if len(drawn) < 2:
        return Told()
    best = max(drawn, key=lambda one: one.most)
    rest = [f"{one.name} {one.size(focal)}" for one in drawn if one is not best]
    name = f"{best.name[:1].upper()}{best.name[1:]}"
    text = f"{name} comes nearest: {best.size(focal)} on {trimmed(focal, 1)} mm at infinity, against {listed(rest)}."
    if best.least < best.most and best.least > min(one.least for one in drawn):
        text += f" At its shortest it is still {small_mm(best.least)}: nothing farther comes sharp with it."
    return Told((Line("head", text), *_shut_lines(drawn)))


def _shut_lines(drawn: Sequence[Drawn]) -> list[Line]:
    """What of each is never let in: how long it is shut decides whether anything far is left."""
    shut = [one.shut for one in drawn if one.shut]
    if len(shut) != len(drawn):
        return []
    told = listed([f"{trimmed(one, 1)} mm" for one in sorted(shut)], "or")
    text = (
        "Infinity is left only where flange to image of the lens is more than the body's register and the shut length"
        f" together, {told}, and the rest between is a plain ring or tube. The longer one sags more drawn out."
    )
    return [Line("text", text)]


def _for_size(wanted: float, drawn: Sequence[Drawn], focal: float) -> Told:
    """Which of the ways give the extension that a magnification takes."""
    needed = wanted * focal
    text = f"{times(wanted)} on {trimmed(focal, 1)} mm at infinity takes {small_mm(needed)} of extension: "
    verdicts = []
    for one in drawn:
        if one.gives(needed):
            verdicts.append(f"{one.name}: enough")
        elif needed > one.most:
            verdicts.append(f"{one.name}: {small_mm(needed - one.most)} short")
        else:
            verdicts.append(f"{one.name}: {small_mm(one.least - needed)} too long even at its shortest")
    case = f"{times(wanted)} on {trimmed(focal, 1)} mm"
    rows = (Quantity("extension_mm", Interval.exact(needed), case),)
    return Told((Line("head", f"{text}{'; '.join(verdicts)}."),), rows)


def _rows(one: Drawn, lens: Distances, shown: Shown) -> Told:
    """What comes of the way at its shortest and its longest."""
    told = Told()
    for length, end in ((one.least, "far"), (one.most, "near")):
        if length <= 0 or (end == "far" and one.least == one.most):
            continue
        lead = one.name if one.least == one.most else f"{one.name}: at {small_mm(length)}"
        told += at_extension(lens, length, shown, f"{one.way.name}, {small_mm(length)}", end=end, lead=lead, level=0)
    return told
