"""Several lenses or several bodies in one question: each pair with its best chain and its ring, and all together."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, ListedChain, Quantity
from engine.answers.parts.knowledge import Knowledge, choose
from engine.answers.parts.resolve import BodySide, LensSide, goes_on, setup_of
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import for_infinity, listed, money
from engine.answers.seat.cautioning import cautions_of
from engine.answers.seat.chain_numbers import cover_numbers, price_of
from engine.answers.seat.making import ring_to_make
from engine.answers.seat.telling import CERTAINTY_WORDS, chain_title, life_line, seat_line
from engine.answers.seat.unsold import is_free, made_chain
from engine.answers.shims.named_pieces import with_named_pieces
from engine.answers.ways.alongside import straight_or_forced
from engine.base.compact import compact, replace
from engine.base.interval import Interval, is_known
from engine.chains.setup import Setup
from engine.facts.kinds import GLASS_KINDS
from engine.facts.records import Adapter
from grammar.kinds import FOCUS_VERDICT
from grammar.questions import Question

MOST_PAIRS = 100
MOST_OF_ONE_WAY = 2  # so many rings named with both their mounts may be each for a lens of its own
MOST_SHARED = 4  # pieces of which it is told whom they serve
_OUTCOMES = (("infinity", "To infinity"), ("macro-only", "Close-up only"), ("unusable", "Not at all"))


@compact
class Pair:
    """One lens on one body: its setup, the best chain where there is one, and the ring that is right."""

    case: str
    words: str
    setup: Setup
    chain: ListedChain | None
    ring: Interval | None
    none_serves: bool = False  # rings were named, and none of them takes the lens


def each_pair(
    question: Question, lenses: Sequence[LensSide], bodies: Sequence[BodySide], knowledge: Knowledge
) -> Answer:
    """Each lens on each body, the best chain and the ring for infinity, then how many pieces and what they cost."""
    both = [(lens, body) for lens in lenses for body in bodies if goes_on(question, lens, body)]
    pairs = [
        pair_of(question, lens, body, knowledge, len(lenses) > 1, len(bodies) > 1) for lens, body in both[:MOST_PAIRS]
    ]
    told, numbers = together(pairs)
    # how many pieces and how much is what is asked most of several, and is told in one line
    head = f"{told[0].text} By pair:" if told else f"{len(pairs)} pairs, each by its best way:"
    lines = [*_reached(pairs, question), *_one_for_all(numbers, question), Line("head", head)]
    chains: list[ListedChain] = []
    quantities: list[Quantity] = []
    for pair in pairs:
        lines.append(Line("fact", pair_told(pair, question.feet), 1))
        quantities += pair_numbers(pair, knowledge)
        if pair.chain is not None:
            chains.append(ListedChain(len(chains) + 1, pair.chain.listed, pair.chain.title))
    if len(both) > MOST_PAIRS:
        lines.append(Line("note", f"Only the first {MOST_PAIRS} of {len(both)} pairs are told."))
    judged = ((pair.words, pair.chain.listed.judged) for pair in pairs if pair.chain is not None)
    lines += [*told[1:], *cautions_of(judged, knowledge, question.feet)]
    reached = any(chain.listed.judged.verdict != "unusable" for chain in chains)
    return Answer(
        question.text, question.intent, ANSWERED if reached else NO, tuple(lines), question=question,
        chains=tuple(chains), quantities=(*quantities, *numbers),
    )  # fmt: skip


def _one_for_all(rows: Sequence[Quantity], question: Question) -> list[Line]:
    """Whether one ring does it for all of them, where that is asked."""
    count = next((row.value for row in rows if row.name == "adapter_count"), None)
    asked = mentions(question, "one-ring-for-all") or (question.follows and mentions(question, "ring-serves-both"))
    if not isinstance(count, Interval) or not asked:
        return []
    if count.nominal == 1:
        return [Line("head", "Yes, one ring serves them all.")]
    return [Line("head", f"No, one ring is not enough: it takes {count.nominal:.0f} pieces.")]


def _reached(pairs: Sequence[Pair], question: Question) -> list[Line]:
    """Which reach infinity and which do not, where that is what was asked."""
    if question.intent != FOCUS_VERDICT:
        return []
    groups: dict[str, list[str]] = {}
    for pair in pairs:
        verdict = pair.chain.listed.judged.verdict if pair.chain is not None else "unusable"
        glass = any(adapter.kind in GLASS_KINDS for adapter in _links(pair))
        groups.setdefault(verdict, []).append(pair.words + (" (only through glass)" if glass else ""))
    told = [f"{words}: {listed(groups[verdict])}" for verdict, words in _OUTCOMES if verdict in groups]
    return [Line("head", f"{'; '.join(told)}.")]


def pair_of(
    question: Question, lens: LensSide, body: BodySide, knowledge: Knowledge, by_lens: bool, by_body: bool
) -> Pair:
    """One lens on one body by its best chain; `by_lens`, `by_body`: whether the case names the lens, the body."""
    setup = setup_of(lens, body, knowledge.catalogue, question.f_number)
    question, none_serves = _with_rings_of(question, setup, knowledge)
    ring = ring_to_make(setup, knowledge.catalogue)
    named, limits = with_named_pieces(question, lens.mount.id, body.mount.id, knowledge)
    first = straight_or_forced(question, setup, named)
    choice = choose(named, setup, limits, 1)
    if not choice.listed and limits.using:
        # a piece that was named need not serve every pair
        named, limits = knowledge, replace(question.limits, using=())
        choice = choose(named, setup, limits, 1)
    chain = first[0] if first else None
    if chain is None and choice.listed:
        chain = ListedChain(1, choice.listed[0], chain_title(choice.listed[0].judged, named))
    elif chain is None and is_free(question.limits):
        chain = made_chain(ring, setup, knowledge)
    own = setup.lens.name if setup.lens.id else ""
    focal = f"{setup.lens.focal_length_mm.nominal:g} mm " if is_known(setup.lens.focal_length_mm) else ""
    where = body.body.name if body.body.id else body.mount.id
    case = f"{own or focal + lens.mount.id} on {where}" if by_lens and by_body else (
        own or f"{focal}{lens.mount.id}" if by_lens else where
    )  # fmt: skip
    name = own or f"{focal}{lens.mount.designation}"
    words = f"{name} on {body.body.name if body.body.id else body.mount.designation}" if by_body else name
    return Pair(case, words, setup, chain, ring.thickness_mm, none_serves)


def _with_rings_of(question: Question, setup: Setup, knowledge: Knowledge) -> tuple[Question, bool]:
    """The question with those alone of the rings named that lead from this lens; and whether none of them does."""
    lens = setup.lens_mount.id
    fronts = {lens, *(joint.rear for joint in knowledge.joints.onward(lens))}
    leading = {rear for thing in question.adapters if fronts & set(thing.front) for rear in thing.rear}
    joining = [thing for thing in question.adapters if thing.front and thing.rear]
    if len(joining) < MOST_OF_ONE_WAY:
        return question, False
    kept = tuple(one for one in question.adapters if one not in joining or set(one.front) & {*fronts, *leading})
    serves = any(thing in kept for thing in joining)
    return question.with_(adapters=kept), not serves


def pair_told(pair: Pair, feet: bool) -> str:
    seat = f"; {for_infinity(pair.ring.nominal)}" if pair.ring is not None else ""
    if pair.chain is None:
        return f"{pair.words}: no way found{seat}"
    other = "none of the rings you named takes it; it would need " if pair.none_serves else ""
    return f"{pair.words}: {other}{way_told(pair.chain, feet)}{seat}"


def way_told(chain: ListedChain, feet: bool) -> str:
    """A chain in one line: its pieces, their price, what it then does, and how far off the seat is."""
    judged = chain.listed.judged
    sure = "" if judged.certainty == "unknown" else f" ({CERTAINTY_WORDS[judged.certainty]})"
    near = f"; {seat_line(judged)}" if judged.verdict != "infinity" else ""
    band = price_of(judged)
    price = f" [{money((band.least, band.greatest))}]" if band else ""
    return f"{chain.title}{price}, {life_line(judged, feet)}{sure}{near}"


def pair_numbers(pair: Pair, knowledge: Knowledge) -> list[Quantity]:
    """The numbers of one pair for the record: its ring and registers in mm, and what it covers."""
    out = []
    if pair.ring is not None:
        out.append(Quantity("ring_thickness_mm", pair.ring, pair.case))
        out.append(Quantity("register_difference_mm", pair.ring, pair.case))
    for mount in (pair.setup.lens_mount, pair.setup.body_mount):
        if is_known(mount.register_mm):
            out.append(Quantity("register_mm", mount.register_mm, mount.id))
    if pair.chain is not None:
        out += cover_numbers(pair.chain.listed.judged, knowledge.catalogue, pair.case)
    return out


Pieces = dict[tuple[str, str, str], Adapter]


def together(pairs: Sequence[Pair]) -> tuple[list[Line], list[Quantity]]:
    """The pieces of all pairs, each bought once, what of them is owned, and the price of the rest."""
    pieces: Pieces = {}
    serves: dict[tuple[str, str, str], list[str]] = {}
    ways = [pair for pair in pairs if pair.chain is not None and pair.chain.listed.judged.verdict != "unusable"]
    for pair in ways:
        for adapter in _links(pair):
            pieces[_key(adapter)] = adapter
            serves.setdefault(_key(adapter), []).append(pair.words)
    if not pieces:
        return [], []
    quantities = [Quantity("adapter_count", Interval.exact(len(pieces)), "all pairs")]
    bought = [adapter for adapter in pieces.values() if not adapter.owned]
    text, own = _counted(pieces, ways, len(pairs))
    if len(bought) < len(pieces):
        text += f", {len(pieces) - len(bought)} of them yours"
        quantities.append(Quantity("adapter_count", Interval.exact(len(bought)), "to buy"))
    priced, price = _price_of(bought)
    text += priced + own
    quantities += [price] if price is not None else []
    shared = [f"the {pieces[key].name} serves {listed(words)}" for key, words in serves.items() if len(words) > 1]
    if len(pieces) > 1 and shared and not text.startswith("The same"):
        text += f"; {'; '.join(shared[:MOST_SHARED])}"
    return [Line("text", f"{text}. Each ring adds its own error of thickness.")], quantities


def _all(number: int) -> str:
    return "both" if number == 2 else f"all {number}"


def _links(pair: Pair) -> Sequence[Adapter]:
    return pair.chain.listed.judged.chain.adapters if pair.chain is not None else ()


def _key(adapter: Adapter) -> tuple[str, str, str]:
    return adapter.id, adapter.front, adapter.rear


def _counted(pieces: Pieces, ways: Sequence[Pair], pairs: int) -> tuple[str, str]:
    """How many pieces they are; and, to be said behind the price, whether each lens mount has its own."""
    one_each = all(len(_links(pair)) == 1 for pair in ways) and len(ways) == pairs
    if len(pieces) == 1 and one_each and pairs > 1:
        name = next(iter(pieces.values())).name
        the = "" if name.startswith("your ") else "the "
        return f"One adapter serves {_all(pairs)}, {the}{name}: 1 adapter", ""
    if len(ways) == pairs > 1 and all({_key(one) for one in _links(pair)} == set(pieces) for pair in ways):
        names = " + ".join(piece.name for piece in pieces.values())
        return f"The same {len(pieces)} adapters serve {_all(pairs)}, {names}", ""
    noun = "adapter" if len(pieces) == 1 else "adapters"
    bodies = {pair.setup.body_mount.id for pair in ways}
    fronts = {pair.setup.lens_mount.id for pair in ways}
    alike = one_each and len(bodies) == 1 and len(fronts) == len(pieces) > 1
    own = ": one for each lens mount, as no one ring fits them all" if alike else ""
    return f"Together {len(pieces)} {noun}", own


def _price_of(bought: Sequence[Adapter]) -> tuple[str, Quantity | None]:
    """What all that is to be bought costs, in words and as a quantity; what has no known price is named."""
    if not bought:
        return "; nothing to buy", Quantity("price", Interval.exact(0.0), "all pairs")
    known = [adapter.price_usd for adapter in bought if adapter.price_usd is not None]
    if not known:
        return "", None
    total = (sum(band[0] for band in known), sum(band[1] for band in known))
    unknown = [adapter.name for adapter in bought if adapter.price_usd is None]
    case = "all pairs" if not unknown else "those whose price is known"
    without = f" without {listed(unknown)}, whose price is not known" if unknown else ""
    return f", {money(total)}{without}", Quantity("price", Interval.between(*total), case)
