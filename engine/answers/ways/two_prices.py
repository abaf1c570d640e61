"""Whether a price told is usual for a ring, or what each of two buys for the lens on the body."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide
from engine.answers.parts.said import mentions, number, numbers
from engine.answers.parts.wording import listed, money
from engine.base.compact import replace
from engine.base.interval import Interval
from engine.facts.records import Adapter
from grammar.questions import Question, Thing

MOST_NAMED = 3
RING, CHIPPED = "adapter", "electronic-adapter"
_BY_HAND = frozenset({"ring", "lever"})  # and those that a hand works
_SINGLE = frozenset({"plain", "electronic-adapter"})
POWERED = frozenset({"electronic", "mixed"})  # irises that only a ring with contacts works


def prices_of(question: Question) -> tuple[float, ...]:
    """The prices that are set against each other, in dollars, lowest first; empty where fewer than two are told."""
    told = sorted(set(numbers(question, "price")))
    return tuple(told) if len(told) > 1 else ()


def smart_or_dumb(
    question: Question, lenses: Sequence[LensSide], bodies: Sequence[BodySide], knowledge: Knowledge
) -> Told:
    """Which of a ring with contacts and one without the iris of the lens asks for, and what each costs."""
    if not mentions(question, "smart-or-dumb") or len(lenses) != 1 or len(bodies) != 1:
        return Told()
    rings = _rings(lenses[0], bodies[0], knowledge)
    smart, dumb = ([row for row in rings if row.electronics is asked] for asked in (True, False))
    iris = "ring" if mentions(question, "own-ring") else lenses[0].mount.iris
    name = lenses[0].mount.designation
    if iris in POWERED:
        told = _costs(smart, "The electronic one")
        why = f"without contacts the iris of {name} lenses stays as it was left, mostly wide open"
        other = _costs(dumb, "The plain one") + " does for lenses with an iris ring of their own, or wide open"
    elif iris in _BY_HAND:
        told = _costs(dumb, "The plain one")
        why = "the iris is worked by a ring, on the lens or on the adapter, and needs no contacts"
        other = _costs(smart, "The electronic one") + " makes the picture no sharper"
    else:
        return Told()
    if not (smart if iris in POWERED else dumb):
        return Told()
    return Told((Line("head", f"{told}: {why}. {other}."),), tuple(_bands([*smart, *dumb])))


def without_chip(
    pieces: tuple[Thing, ...], lens: LensSide, body: BodySide, knowledge: Knowledge
) -> tuple[Thing, ...]:  # fmt: skip
    """A ring with a chip as the plain one under it, where the iris needs no contacts and no such ring has any."""
    smart = any(row.electronics for row in _rings(lens, body, knowledge))
    if smart or lens.mount.iris not in _BY_HAND:
        return pieces
    return tuple(replace(one, piece=RING) if one.piece == CHIPPED else one for one in pieces)


def _costs(rings: Sequence[Adapter], words: str) -> str:
    bands = [row.price_usd for row in rings if row.price_usd]
    return f"{words} [{money((min(band[0] for band in bands), max(band[1] for band in bands)))}]" if bands else words


def _rings(lens: LensSide, body: BodySide, knowledge: Knowledge) -> list[Adapter]:
    """The single rings from that lens to that body, as thick as infinity asks for."""
    return [
        row for row in knowledge.catalogue.adapters.values()
        if row.front == lens.mount.id and row.rear == body.mount.id and row.price_usd is not None
        and row.kind in _SINGLE and row.seat_basis != "nominal"
    ]  # fmt: skip


def _one_price(question: Question) -> tuple[float, ...]:
    """The price of which it is asked whether it is fair; empty where none is told."""
    told = number(question, "price", "numbers") if mentions(question, "fair-price") else None
    return (told,) if told else ()


def two_prices(
    question: Question, lenses: Sequence[LensSide], bodies: Sequence[BodySide], knowledge: Knowledge
) -> Told:
    """What each price buys by the usual bands; nothing where not one lens on one body is named."""
    prices = prices_of(question) or _one_price(question)
    if not prices or len(lenses) != 1 or len(bodies) != 1:
        return Told()
    rings = [row for row in _rings(lenses[0], bodies[0], knowledge) if _is_meant(row, question)]
    if not rings:
        return Told()
    told = [_bought(price, rings) for price in prices]
    more = f" {_more(lenses[0], rings)}" if len(prices) > 1 else ""
    text = f"{'; '.join(told)}.{more}"
    return Told((Line("head", text),), tuple(_bands(rings)))


def _is_meant(ring: Adapter, question: Question) -> bool:
    """A plain ring, or one with glass where that is told of."""
    return ring.has_glass if question.limits.with_glass else ring.kind == "plain"


def _bought(price: float, rings: Sequence[Adapter]) -> str:
    within = [row for row in rings if row.price_usd and row.price_usd[0] <= price <= row.price_usd[1]]
    if within:
        return f"{price:g} dollars is the price of {listed([row.name for row in within[:MOST_NAMED]])}"
    bands = [row.price_usd for row in rings if row.price_usd]
    low, high = min(band[0] for band in bands), max(band[1] for band in bands)
    return f"{price:g} dollars is {'less' if price < high else 'more'} than usual, {money((low, high))}"


def _more(lens: LensSide, rings: Sequence[Adapter]) -> str:
    """What decides: whether the iris needs power, else only how well the ring is made."""
    powered = next((row for row in rings if row.electronics and row.price_usd), None)
    if lens.mount.iris in POWERED and powered is not None and powered.price_usd is not None:
        return (
            "Without contacts the iris stays as it was left, mostly wide open: take the electronic one"
            f" [{money(powered.price_usd)}] unless wide open, or a lens with an iris ring, is all you need."
        )
    return "Both hold the lens at the same seat: the dearer buys truer thickness and less play, nothing else."


def _bands(rings: Sequence[Adapter]) -> Iterator[Quantity]:
    for row in rings[:MOST_NAMED]:
        if row.price_usd is not None:
            yield Quantity("price", Interval.between(*row.price_usd), row.name)
