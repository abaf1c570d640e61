"""One mount that all lenses are brought to, and from there to every body: a hub, or the mount of the first body."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.parts.usual_mounts import HUB, usual_mount
from engine.answers.parts.wording import listed, money, small_mm, trimmed
from engine.answers.ways.several import Pair, pair_of, together
from engine.base.compact import compact, replace
from engine.base.interval import Interval, is_known
from grammar.questions import Limits, Question, Thing

HUB_TOLD: Final = "Through"  # how the line on a hub begins
BASE_TOLD: Final = "Nothing is wasted"  # and that on a body whose mount serves as one


def hub_of(question: Question) -> Thing | None:
    """The hub that the question names."""
    return next((thing for thing in question.adapters if thing.piece == "hub"), None)


def so_many_bodies(question: Question) -> int:
    """How many bodies are told of which nothing else is: '3 bodies'."""
    body = question.bodies[0] if len(question.bodies) == 1 else None
    return int(body.count or 0) if body is not None and not body.ids else 0


def is_hub_told(question: Question, knowledge: Knowledge) -> bool:
    """Whether all is to go by way of one mount: 'with M as a hub', 'through M'."""
    return hub_of(question) is not None or any(name in knowledge.catalogue.mounts for name in question.limits.using)


def through_hub(
    question: Question,
    lenses: Sequence[LensSide],
    bodies: Sequence[BodySide],
    direct: Interval | None,
    knowledge: Knowledge,
) -> Told:
    """A ring from each lens to one hub mount, and one from the hub to each body, against single rings.

    The hub is the usual one, or where that does not lead there the first other mount that does.
    """
    first: Hub | None = None
    for mount in _hub_mounts(lenses, bodies, hub_of(question), knowledge):
        hub = _hub_at(mount, question, lenses, bodies, knowledge)
        if hub is not None and not hub.barred:
            pairs = len({lens.mount.id for lens in lenses}) * len(bodies)
            return _hub_told(hub, direct, pairs, so_many_bodies(question))
        first = first or hub
    return _no_hub(first) if first is not None and hub_of(question) is not None else Told()


@compact
class Hub:
    """A mount in the middle: the rings to it, those from it on, and which of them are not to be had."""

    side: BodySide
    fronts: tuple[Pair, ...]
    rears: tuple[Pair, ...]
    barred: tuple[Pair, ...]


def _hub_mounts(
    lenses: Sequence[LensSide], bodies: Sequence[BodySide], named: Thing | None, knowledge: Knowledge
) -> tuple[str, ...]:
    """The mount named as the hub, the usual one, then what rings lead to from a lens and on to a body."""
    facts = knowledge.catalogue
    told = (*named.front, *named.ids)[:1] if named is not None else ()
    fronts, rears = {lens.mount.id for lens in lenses}, {body.mount.id for body in bodies}
    reached = {row.rear for row in facts.adapters.values() if row.front in fronts}
    leading = {row.front for row in facts.adapters.values() if row.rear in rears}
    others = sorted((reached & leading) - rears) if bodies else []
    return tuple(dict.fromkeys((*told, *usual_mount(HUB, facts), *others)))


def _hub_at(
    mount: str, question: Question, lenses: Sequence[LensSide], bodies: Sequence[BodySide], knowledge: Knowledge
) -> Hub | None:
    facts = knowledge.catalogue
    meant = Thing("mount", (mount,))
    hub, behind = body_side(meant, facts), lens_side(meant, facts)
    if not isinstance(hub, BodySide) or not isinstance(behind, LensSide):
        return None
    plain = replace(question, limits=Limits(pieces=1, without_glass=True, cheapest=True), adapters=())
    lenses = list({lens.mount.id: lens for lens in reversed(lenses)}.values())[::-1]  # one ring serves a mount
    fronts = tuple(pair_of(plain, lens, hub, knowledge, True, False) for lens in lenses if lens.mount.id != mount)
    rears = tuple(pair_of(plain, behind, body, knowledge, False, True) for body in bodies)
    return Hub(hub, fronts, rears, tuple(pair for pair in (*fronts, *rears) if _is_barred(pair, knowledge)))


def _hub_told(hub: Hub, direct: Interval | None, pairs: int, bodies: int = 0) -> Told:
    fronts, rears = hub.fronts, hub.rears
    rows = [Quantity("ring_thickness_mm", pair.ring, pair.case) for pair in fronts if pair.ring is not None]
    rows += [Quantity("ring_thickness_mm", pair.ring, f"hub to {pair.case}") for pair in rears if pair.ring is not None]
    on = len(rears) or bodies or 1
    count = len(fronts) + on
    rows.append(Quantity("adapter_count", Interval.exact(float(count)), "through the hub"))
    seats = listed([f"{pair.words} {small_mm(pair.ring.nominal)}" for pair in fronts if pair.ring is not None])
    to_body = "one to the body" if on < 2 else f"one to each of {on} bodies"
    text = f"{HUB_TOLD} {hub.side.mount.designation} as a hub: rings to it for {seats}, and {to_body}: {count} in all"
    numbers_ = {(row.name, row.case): row.value for row in together([*fronts, *rears])[1]}
    price, left = numbers_.get(("price", "all pairs")), numbers_.get(("adapter_count", "to buy"))
    if isinstance(left, Interval):
        rows.append(Quantity("adapter_count", left, "through the hub, to buy"))
        text += f", {trimmed(count - left.nominal, 0)} of them yours"
    if isinstance(price, Interval) and rears:
        rows.append(Quantity("price", price, "through the hub"))
        text += f", {money((price.least, price.greatest))}"
    text += ". Each further body then costs one ring."
    if direct is not None:
        rows.append(Quantity("adapter_count", direct, "direct"))
        text += f" Direct it is {trimmed(direct.nominal, 0)}"
        if pairs and direct.nominal > pairs:
            rows.append(Quantity("adapter_count", Interval.exact(float(pairs)), "direct, were each ring sold"))
            text += f"; {pairs} if every ring were sold, one for each pair"
        text += "."
    text += " Two joints: tolerance and play add, and the hub's throat may clip very fast long lenses."
    return Told((Line("text", text),), tuple(rows))


def built_on_body(
    question: Question, lenses: Sequence[LensSide], bodies: Sequence[BodySide], knowledge: Knowledge
) -> Told:
    """Rings to the mount with the longest register among the bodies, and one from that mount to each other body.

    Nothing where a lens does not seat in front of that mount, or where no such rings are sold.
    """
    known = [(seat.nominal, body) for body in bodies if is_known(seat := body.mount.register_mm)]
    if len(known) < 2 or not lenses:
        return Told()
    base = max(known, key=lambda row: row[0])[1]
    behind = lens_side(Thing("mount", (base.mount.id,), ""), knowledge.catalogue)
    others = [body for _, body in known if body.mount.id != base.mount.id]
    if not isinstance(behind, LensSide) or not others:
        return Told()
    plain = replace(question, limits=Limits(pieces=1, without_glass=True, cheapest=True), adapters=())
    own = list({lens.mount.id: lens for lens in reversed(lenses) if lens.mount.id != base.mount.id}.values())[::-1]
    fronts = [pair_of(plain, lens, base, knowledge, True, False) for lens in own]
    rears = [pair_of(plain, behind, body, knowledge, False, True) for body in others]
    if not fronts or any(_is_barred(pair, knowledge) for pair in (*fronts, *rears)):
        return Told()
    lines, rows = together([*fronts, *rears])
    rows = [row for row in rows if row.name in ("price", "adapter_count")]
    count = next((row.value for row in rows if row.name == "adapter_count"), None)
    if not lines or not isinstance(count, Interval):
        return Told()
    name = base.mount.designation
    price = next((row.value for row in rows if row.name == "price"), None)
    cost = f", {money((price.least, price.greatest))}" if isinstance(price, Interval) else ""
    text = (
        f"{BASE_TOLD} by building on {name}: {listed([_ring(pair, name) for pair in fronts])}, then"
        f" {listed([_ring_behind(pair, name) for pair in rears])}: {trimmed(count.nominal, 0)} in all{cost}."
        f" What is bought for {name} stays in use in front of the other ring; a further lens costs one ring."
    )
    seats = [
        Quantity("ring_thickness_mm", pair.ring, f"{pair.case} to {base.mount.id}") for pair in fronts if pair.ring
    ]
    seats += [
        Quantity("ring_thickness_mm", pair.ring, f"{base.mount.id} to {pair.case}") for pair in rears if pair.ring
    ]
    told = tuple(replace(row, case=f"by way of {base.mount.id}") for row in rows)
    return Told((Line("text", text),), (*seats, *told))


def _no_hub(hub: Hub) -> Told:
    name = hub.side.mount.designation
    ways = [f"{pair.setup.lens_mount.designation} to {pair.setup.body_mount.designation}" for pair in hub.barred]
    text = f"{HUB_TOLD} {name} as a hub it does not go: no ring with infinity for {listed(ways)}."
    return Told((Line("text", text),))


def _is_barred(pair: Pair, knowledge: Knowledge) -> bool:
    """Whether no ring that is sold or owned leads on with infinity; one to be made is no shopping."""
    if pair.chain is None or pair.chain.listed.judged.verdict != "infinity":
        return True
    chain = pair.chain.listed.judged.chain
    return any(piece.id not in knowledge.catalogue.adapters for piece in chain.adapters)


def _ring(pair: Pair, base: str) -> str:
    seat = f" ({small_mm(pair.ring.nominal)})" if pair.ring is not None else ""
    return f"{pair.words} to {base}{seat}"


def _ring_behind(pair: Pair, base: str) -> str:
    seat = f" ({small_mm(pair.ring.nominal)})" if pair.ring is not None else ""
    return f"one {base} to {pair.setup.body_mount.designation}{seat}"
