"""Which of the ways just told is the thinnest, the cheapest, the simplest: of the last answers, or of the last one."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from engine.answers.deepest import deepest
from engine.answers.earlier import Past
from engine.answers.parts.answer import ANSWERED, Answer, Line, ListedChain, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import money, small_mm
from engine.answers.seat.chain_numbers import price_of
from engine.answers.seat.telling import chain_title
from engine.base.compact import compact, replace
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.judging.judge import Judged
from engine.judging.ranking import Listed
from grammar.kinds import COMPARE, LIST_FITS
from grammar.questions import Question

CHEAPEST: Final = "cheapest"
_MOST: Final = 5
_LEAST: Final = 2


@compact
class Rank:
    """A way of ordering: the quantity of a chain, whether the least comes first, and how it is said."""

    quantity: str
    least: bool
    value: Callable[[Judged], Interval | None]
    show: Callable[[Interval], str]


def _seat(judged: Judged) -> Interval | None:
    seat = judged.measured_trace.value("seat_mm")
    return seat.shortest if isinstance(seat, Span) and is_known(seat.shortest) else None


def _pieces(judged: Judged) -> Interval | None:
    return Interval.exact(len(judged.chain.adapters))


def _mm(value: Interval) -> str:
    return small_mm(value.nominal)


def _dollars(value: Interval) -> str:
    return money((value.least, value.greatest))


def _count(value: Interval) -> str:
    return "nothing between" if value.nominal == 0 else f"{value.nominal:.0f} piece{'s' if value.nominal > 1 else ''}"


# by the topic that the words for it set
RANKS: Final = {
    "thinnest": Rank("stack_mm", True, _seat, _mm),
    "thickest": Rank("stack_mm", False, _seat, _mm),
    "cheapest": Rank("price", True, price_of, _dollars),
    "dearest": Rank("price", False, price_of, _dollars),
    "simplest": Rank("adapter_count", True, _pieces, _count),
}


def ranked(question: Question, past: Sequence[Past], rows: Sequence[Listed], knowledge: Knowledge) -> Answer | None:
    """The ways in the order asked for; None where no order is, or there is no more than one way."""
    by_depth = deepest(question, past)
    if by_depth is not None:
        return by_depth
    rank = RANKS.get(question.topic or "")
    if rank is None or not question.follows:
        return None
    if question.prior is not None and question.prior.intent == LIST_FITS:
        from engine.answers.ways.fits import list_fits

        again = question.prior.with_(text=question.text, follows=True)
        if question.topic == CHEAPEST:
            topic = again.topic if again.topic not in RANKS else None
            return list_fits(again.with_(topic=topic, limits=replace(again.limits, cheapest=True)), knowledge)
        return list_fits(again.with_(topic=question.topic), knowledge)
    ways = _answers(past)
    ways = ways if len(ways) >= _LEAST else list(rows[:_MOST])
    valued = [(value, way) for way in ways if (value := rank.value(way.judged)) is not None]
    if len(valued) < _LEAST:
        return _of_compared(question, past, knowledge)
    valued.sort(key=lambda row: row[0].nominal if rank.least else -row[0].nominal)
    names = _names([way for _, way in valued], knowledge)
    told = [f"{name}, {rank.show(value)}" for name, (value, _) in zip(names, valued, strict=True)]
    best, second = valued[0][0], valued[1][0]
    word = (question.topic or "").capitalize()
    head = f"{word}: {told[0]}." if best.nominal != second.nominal else f"They are alike: {told[0]}; {told[1]}."
    rest = told[1:] if best.nominal != second.nominal else told[2:]
    lines = [Line("head", head), *(Line("fact", text, 1) for text in rest)]
    quantities = tuple(Quantity(rank.quantity, value, name) for name, (value, _) in zip(names, valued, strict=True))
    chains = tuple(ListedChain(n, way, chain_title(way.judged, knowledge)) for n, (_, way) in enumerate(valued, 1))
    return Answer(
        question.text, "compare", ANSWERED, tuple(lines), f"{question.topic} of what was told", question,
        chains=chains, quantities=quantities, aside=True,
    )  # fmt: skip


def _of_compared(question: Question, past: Sequence[Past], knowledge: Knowledge) -> Answer | None:
    """'dearer by how much' after a reducer or a plain ring, and then the view of each: those two once more."""
    compared = [one.question for one in past if one.question.intent == COMPARE and one.question.adapters]
    if not compared or compared[-1].lenses != question.lenses or compared[-1].bodies != question.bodies:
        return None
    from engine.answers.families import handler_for

    return handler_for(COMPARE)(compared[-1].with_(text=question.text, follows=False), knowledge)


def _answers(past: Sequence[Past]) -> list[Listed]:
    """The best way of each of the last answers that went on from one another, each way once."""
    out: dict[tuple[str, ...], Listed] = {}
    for one in reversed(past):
        if one.best is not None:
            way = one.best.listed
            setup = way.judged.setup
            out.setdefault((setup.lens.name, setup.body.name, *(a.id for a in way.judged.chain.adapters)), way)
        if not one.question.follows:
            break
    return list(out.values())[:_MOST][::-1]


def _names(ways: Sequence[Listed], knowledge: Knowledge) -> list[str]:
    """Each by what it differs in: the lens, the body, or the pieces between."""
    setups = [way.judged.setup for way in ways]
    by_lens, by_body = len({one.lens.name for one in setups}) > 1, len({one.body.name for one in setups}) > 1
    out = []
    for way, setup in zip(ways, setups, strict=True):
        ends = [setup.lens.name] if by_lens else []
        ends += [f"on {setup.body.name}" if by_lens else setup.body.name] if by_body else []
        title = chain_title(way.judged, knowledge)
        out.append(f"{' '.join(ends)} by {title}" if ends else title)
    return out
