"""Beside what to buy: what a sum leaves, what is not worth its money, what brings a lens close up and at what price."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from engine.answers.parts.answer import NO, Answer, Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, body_side, setup_of
from engine.answers.parts.said import focals, mentions, number
from engine.answers.parts.usual_mounts import TUBES, usual_mount
from engine.answers.parts.wording import listed, money, small_mm, times, trimmed
from engine.answers.seat.iris import iris_text
from engine.answers.seat.making import ring_to_make
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.records import Adapter, Mount
from grammar.questions import Question, Thing

CLOSER = ("extension-tube", "helicoid", "bellows", "reverse-ring")  # the kinds that bring any lens nearer
MOST_BODIES = 3
ENOUGH_ASKED = "money-enough"  # what a question mentions where it asks whether the sum will do
WORTH_ASKED = "worth-buying"  # and where it asks whether to buy at all
TUBE, HELICOID = "extension-tube", "helicoid"


def left_of_sum(question: Question, answer: Answer | None) -> Told:
    """What the sum that is told leaves, or lacks, once all that is named is bought; with yes or no where asked so."""
    yes, no = ("Yes, ", "No, ") if mentions(question, ENOUGH_ASKED) else ("", "")
    told = number(question, "price") or question.limits.price_usd
    rows = answer.quantities if answer is not None else ()
    price = next((row.value for row in rows if row.name == "price" and row.case in (None, "all pairs")), None)
    if told is None or not isinstance(price, Interval):
        return Told()
    if price.greatest <= told:
        left = Interval.between(told - price.greatest, told - price.least)
        rest = money((left.least, left.greatest))
        text = f"Yes, {told:g} dollars are enough: that leaves {rest}." if yes else ""
        text = text or f"Of {told:g} dollars that leaves {rest}."
        return Told((Line("text", text),), (Quantity("price_left", left, f"of {told:g}"),))
    if price.least > told:
        return Told(
            (Line("text", f"{no}{told:g} dollars are not enough: at least {price.least - told:g} are lacking."),)
        )
    text = f"{yes}{told:g} dollars do if you buy at the lower end: the dearest of these come to {price.greatest:g}."
    return Told((Line("text", text),))


def worth_it(question: Question, answer: Answer | None, knowledge: Knowledge) -> Told:
    """What speaks for the purchase and what against, where it is asked whether a lens is worth its ring."""
    chains = answer.chains or () if answer is not None else ()
    if not chains or not mentions(question, WORTH_ASKED) or len(question.lenses) != 1 or len(question.bodies) > 1:
        return Told()
    best = chains[0].listed.judged
    bands = [row.value for row in answer.quantities if row.name == "price" and row.case is None] if answer else []
    price = next((band for band in bands if isinstance(band, Interval)), None)
    cost = f" for {money((price.least, price.greatest))}" if price is not None and price.greatest else ""
    against = list(_against(answer, knowledge))
    glass = any(piece.has_glass for piece in best.chain.adapters)
    if best.verdict == "unusable" or answer is None or answer.status == NO:
        return Told((Line("head", "No: nothing puts it on this body so that it is of use."),))
    if glass and _reaches(chains, glass=False):
        return Told()  # a reducer: what it gains over the plain ring is told
    if glass or best.verdict == "macro-only":
        by_glass = glass or _reaches(chains[1:], glass=True)
        through = ", or to infinity through a ring with glass, which costs sharpness" if by_glass else ""
        return Told((Line("head", f"Only for close-ups{through}: no plain ring gives it infinity here."),))
    seat = f"to infinity{cost}"
    if against:
        text = f"Not for everything: it goes {seat}, but {listed(against)}."
    elif best.certainty == "unknown":
        text = f"It may be: it goes {seat}, provided what is not known yet allows it."
    else:
        text = f"Yes, as far as mount and frame go: {seat}. The state of the glass and the blades decides the rest."
    return Told((Line("head", text),))


def _reaches(chains: Sequence[ListedChain], glass: bool) -> bool:
    """Whether one of the ways gives infinity, with glass or without."""
    rows = (row.listed.judged for row in chains)
    return any(one.verdict == "infinity" and any(p.has_glass for p in one.chain.adapters) is glass for one in rows)


def _against(answer: Answer | None, knowledge: Knowledge) -> Iterator[str]:
    """What one loses on the best way: part of the frame, or the iris."""
    rows = answer.quantities if answer is not None else ()
    lit = next((row.value for row in rows if row.name == "lit_share"), None)
    mostly = knowledge.catalogue.assumptions["mostly-lit"].value.nominal
    if isinstance(lit, Interval) and is_known(lit) and lit.greatest < mostly:
        few, most = (trimmed(100 * share, 0) for share in (lit.least, lit.greatest))
        yield f"lights only {few if few == most else f'{few} to {most}'} % of the frame"
    chains = answer.chains or () if answer is not None else ()
    who, text = iris_text(chains[0].listed.judged)
    if who == "none" and "none, always" not in text:
        worked = [row.listed.judged.chain.adapters for row in chains if iris_text(row.listed.judged)[0] != "none"]
        bands = [piece.price_usd for piece in worked[0] if piece.price_usd] if worked else []
        cost = f" [{money((sum(band[0] for band in bands), sum(band[1] for band in bands)))}]" if bands else ""
        yield f"its iris needs a ring that works it{cost}" if worked else "its iris cannot be worked"


def not_to_buy(
    question: Question, lenses: Sequence[LensSide], bodies: Sequence[BodySide], knowledge: Knowledge
) -> Told:
    """The pieces that are sold for such a pair and do not serve, where it is asked what to keep off."""
    if not mentions(question, "avoid-buying") or mentions(question, "buy-once"):
        return Told()
    lines = []
    for lens in lenses:
        for body in bodies:
            ring = ring_to_make(setup_of(lens, body, knowledge.catalogue), knowledge.catalogue)
            if ring.thickness_mm is None:
                continue
            pair = f"{lens.mount.designation} on {body.mount.designation}"
            seat = small_mm(abs(ring.thickness_mm.nominal))
            lines.append(Line("text", {
                "plain": f"Not for {pair}: rings with glass in them. The {seat} between the flanges needs none; and no "
                "electronics where the lens has an iris ring.",
                "recessed": f"Not for {pair}: flat rings. The lens belongs {seat} inside the body's flange: only cups "
                "hold infinity, all else is close-up only.",
                "no": f"Not for {pair}: any ring without glass that promises infinity. The lens would have to sit "
                f"{seat} from where it can.",
            }[ring.possible]))  # fmt: skip
    return Told(tuple(dict.fromkeys(lines)))


def close_up_kit(
    question: Question, lenses: Sequence[LensSide], bodies: Sequence[BodySide], knowledge: Knowledge
) -> Told:
    """What brings the lens close up on the body: each kind by its cheapest, with what it magnifies to."""
    if not (mentions(question, "close-up-wanted") and len(lenses) == 1 and bodies) or question.said("magnification"):
        return Told()
    lens, body = lenses[0], bodies[0]
    rows = list(_closer(lens.mount, body.mount, knowledge))
    if not rows:
        return Told()
    focal = lens.lens.focal_length_mm
    lines, numbers = [Line("head", "For close-ups, beside the ring that seats it, cheapest first:")], []
    for band, name, reach in rows:
        text = f"{name} [{money(band)}]"
        numbers.append(Quantity("price", Interval.between(*band), name))
        if reach is not None and is_known(focal):
            grown = reach / focal.nominal
            numbers.append(Quantity("magnification", Interval.exact(grown), name))
            text += f": {small_mm(reach)} more, {times(grown)} with the lens at infinity"
        lines.append(Line("fact", text, 1))
    return Told(tuple(lines), tuple(numbers))


def tubes_for_size(
    question: Question, lenses: Sequence[LensSide], bodies: Sequence[BodySide], knowledge: Knowledge
) -> Told:
    """'1:2 with a 50, shopping list': how much tube that is, and the set of tubes for such a mount."""
    wanted, told = number(question, "magnification"), focals(question)
    if not wanted or len(told) != 1 or question.adapters:
        return Told()
    length = Interval.exact(told[0] * wanted)
    mounts = {*(lens.mount.id for lens in lenses), *(body.mount.id for body in bodies)}
    tubes = [
        row for row in knowledge.catalogue.adapters.values()
        if row.kind == TUBE and row.price_usd and row.front == row.rear and row.front in mounts
    ]  # fmt: skip
    tubes.sort(key=lambda row: (row.common != "everyday", row.price_usd, row.id))
    text = f"For {times(wanted)}: {small_mm(length.nominal)} of extension tube, or a helicoid or bellows as long"
    rows = [Quantity("extension_mm", length, "to buy")]
    if tubes:
        band, name, reach = _set_of([row for row in tubes if row.common == tubes[0].common])
        text += f"; {name} are sold [{money(band)}]"
        text += f", {small_mm(reach)} together" if reach is not None and reach < length.nominal else ""
        rows.append(Quantity("price", Interval.between(*band), name))
    return Told((Line("fact", f"{text}.", 0),), tuple(rows))


def tubes_to_buy(
    question: Question, lenses: Sequence[LensSide], bodies: Sequence[BodySide], knowledge: Knowledge
) -> Told:
    """The sets of tubes that are sold for the mount told, each with its price; nothing where other things are asked."""
    if not _asks_tubes_alone(question) or (lenses and bodies):
        return Told()
    mounts = [*(side.mount.id for side in bodies), *(side.mount.id for side in lenses)]
    mounts += [end for thing in question.adapters for end in thing.front[:1]]
    lines, rows = [], []
    for mount in dict.fromkeys(mounts or usual_mount(TUBES, knowledge.catalogue)):
        tubes = [
            row for row in knowledge.catalogue.adapters.values()
            if row.kind == TUBE and row.price_usd and row.front == row.rear == mount and not row.name.endswith("shim")
        ]  # fmt: skip
        usual = [row for row in tubes if row.common == "everyday"] or tubes
        sold = []
        for note in dict.fromkeys(row.note for row in usual):
            band, name, _ = _set_of([row for row in usual if row.note == note])
            sold.append(f"{name} [{money(band)}]" + (f" ({note.rstrip('.')})" if note else ""))
            rows.append(Quantity("price", Interval.between(*band), name))
        if sold:
            name = knowledge.catalogue.mounts[mount].designation
            lines.append(Line("head", f"Tubes of {name}, by the prices of single ones: {'; '.join(sold)}."))
    return Told(tuple(lines), tuple(rows))


def without_tubes(question: Question) -> Question:
    """'a helicoid and a set of tubes': the ways are those with the helicoid, and the tubes are bought beside."""
    pieces = {thing.piece for thing in question.adapters}
    if pieces != {TUBE, HELICOID} or any(thing.thickness_mm for thing in question.adapters):
        return question
    if question.said("magnification") is not None or mentions(question, "either-or"):
        return question
    return question.with_(adapters=tuple(thing for thing in question.adapters if thing.piece != TUBE))


def tubes_beside(
    question: Question, lenses: Sequence[LensSide], answer: Answer | None, knowledge: Knowledge
) -> tuple[Told, Answer | None]:
    """The tubes that were left out of the ways, what comes of all together, and the answer with that for its price."""
    left = tuple(thing for thing in question.adapters if thing.piece == TUBE)
    if without_tubes(question) is question or answer is None:
        return Told(), answer
    told = tubes_to_buy(question.with_(adapters=left), lenses, (), knowledge)
    tubes = next((row.value for row in told.quantities), None)
    way = next((row.value for row in answer.quantities if row.name == "price" and row.case is None), None)
    if not (isinstance(tubes, Interval) and isinstance(way, Interval)):
        return Told(), answer
    whole = Interval.between(way.least + tubes.least, way.greatest + tubes.greatest)
    lines = (*told.lines, Line("text", f"Tubes and way 1 together: {money((whole.least, whole.greatest))}."))
    priced = [
        replace(row, value=whole) if row.name == "price" and row.case is None else row for row in answer.quantities
    ]
    total = Quantity("price", whole, "tubes and way 1")
    return Told(lines, (*told.quantities, total)), replace(answer, quantities=tuple(priced))


def _asks_tubes_alone(question: Question) -> bool:
    """Whether tubes are to be bought and nothing else, and of no length or size that is told."""
    sized = question.said("magnification") is not None or any(one.thickness_mm for one in question.adapters)
    return bool(question.adapters) and not sized and all(one.piece == TUBE for one in question.adapters)


def _closer(lens: Mount, body: Mount, knowledge: Knowledge) -> Iterator[tuple[tuple[float, float], str, float | None]]:
    """Price, name and further extension of the cheapest of each kind for the lens's or the body's mount."""
    rows = [
        row for row in knowledge.catalogue.adapters.values()
        if row.kind in CLOSER and row.price_usd and _serves(row, lens, body)
    ]  # fmt: skip
    found = []
    for kind in CLOSER:
        of_kind = sorted((row for row in rows if row.kind == kind), key=lambda row: (row.price_usd, row.id))
        everyday = [row for row in of_kind if row.common == "everyday"] or of_kind
        if kind == TUBE and everyday:
            found.append(_set_of(everyday))
        elif everyday:
            first = everyday[0]
            assert first.price_usd is not None
            found.append((first.price_usd, first.name, _reach(first)))
    return iter(sorted(found, key=lambda row: row[0]))


def _serves(row: Adapter, lens: Mount, body: Mount) -> bool:
    """Whether it stands between such a lens and such a body: of one mount throughout, or from one to the other."""
    if row.kind == "reverse-ring":
        return row.rear == body.id
    return (row.front, row.rear) in ((lens.id, lens.id), (body.id, body.id), (lens.id, body.id))


def _set_of(tubes: Sequence[Adapter]) -> tuple[tuple[float, float], str, float | None]:
    """All tubes of one set of the mount whose tubes are cheapest."""
    same = [row for row in tubes if (row.front, row.note) == (tubes[0].front, tubes[0].note)]
    bands = [row.price_usd for row in same if row.price_usd]
    lengths = [row.thickness_mm.longest.nominal for row in same if is_known(row.thickness_mm.longest)]
    sizes = "/".join(trimmed(length, 1) for length in sorted(lengths))
    name = f"tubes {sizes} mm" if len(same) > 1 else same[0].name
    return (sum(band[0] for band in bands), sum(band[1] for band in bands)), name, sum(lengths)


def _reach(row: Adapter) -> float | None:
    """What a piece adds at most beyond its shortest, of a bellows in all; none for what turns the lens round."""
    span = row.thickness_mm
    if row.kind == "reverse-ring" or not (is_known(span.longest) and is_known(span.shortest)):
        return None
    return span.longest.nominal - (span.shortest.nominal if row.kind == HELICOID else 0.0)


def bodies_by_plain_rings(question: Question, lenses: Sequence[LensSide], knowledge: Knowledge) -> Told:
    """Where no body is named: those that take the lens with infinity by a plain ring that is sold, cheapest first."""
    if len({lens.mount.id for lens in lenses}) != 1 or _asks_tubes_alone(question):
        return Told()
    facts, lens = knowledge.catalogue, lenses[0]
    found = []
    for row in facts.adapters.values():
        body = body_side(Thing("mount", (row.rear,)), facts)
        if row.front != lens.mount.id or row.kind != "plain" or not row.price_usd or not isinstance(body, BodySide):
            continue
        ring = ring_to_make(setup_of(lens, body, facts), facts)
        if body.mount.kind == "mirrorless" and ring.possible == "plain" and ring.thickness_mm is not None:
            found.append((row.price_usd, row.name, body.mount.id, ring.thickness_mm))
    if not found:
        return Told()
    found = sorted(found, key=lambda one: (one[0], one[1]))[:MOST_BODIES]
    ways = listed([f"{name} ({small_mm(seat.nominal)}) [{money(band)}]" for band, name, _, seat in found])
    text = f"By a plain ring, no cup and no glass, {lens.mount.designation} lenses keep infinity with: {ways}."
    rows = [Quantity("ring_thickness_mm", seat, where) for _, _, where, seat in found]
    rows += [Quantity("price", Interval.between(*band), name) for band, name, _, _ in found]
    return Told((Line("head", text),), tuple(rows))
