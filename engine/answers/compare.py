"""Two things side by side: bodies by ring and share lit, mounts by the ring between, pieces by what is told."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations, product

from engine.answers.buying import hub_or_direct
from engine.answers.close.closer_apart import closer_apart
from engine.answers.close.size_by_ways import size_by_ways
from engine.answers.close.tubes_apart import tubes_apart
from engine.answers.exposure.stops_apart import brighter_of, stops_apart
from engine.answers.own.own_cases import Case
from engine.answers.own.side_by_side import ALIKE, side_by_side, sides_of
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, ListedChain, Quantity, RingToMake, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import LEAST, SURE, nearest
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side, setup_of
from engine.answers.parts.said import focals, mentions
from engine.answers.parts.usual_glass import with_usual_factor
from engine.answers.parts.usual_mounts import with_usual_of_format
from engine.answers.parts.wording import article, money, small_mm
from engine.answers.picture.crop_factors import crops_of
from engine.answers.picture.crop_or_glass import crop_or_glass
from engine.answers.picture.each_glass import each_with_its_glass
from engine.answers.picture.either_focal import of_one_lens
from engine.answers.picture.equivalent import equivalent
from engine.answers.picture.glass_apart import glass_apart
from engine.answers.picture.lit_apart import fuller_on, lit_on_bodies, lit_on_frames
from engine.answers.picture.matching import each_on_its_own
from engine.answers.picture.openings_apart import openings_apart
from engine.answers.picture.same_depth import formats_told
from engine.answers.picture.sizes_apart import sizes_apart
from engine.answers.picture.views_apart import views_apart
from engine.answers.seat.making import ring_to_make
from engine.answers.seat.ways_told import HUB, ways_told
from engine.answers.ways.adapted import adapted
from engine.answers.ways.easier import easier, outcome
from engine.answers.ways.for_old_lenses import for_old_lenses
from engine.answers.ways.pair_beside import with_pair
from engine.answers.ways.pairs_apart import in_the_other, numbered, pairs_apart
from engine.answers.ways.rings_apart import end_apart, rings_apart
from engine.answers.ways.same_error import by_an_error
from engine.answers.ways.set_against import with_what_was_before
from engine.answers.ways.two_prices import smart_or_dumb, two_prices
from engine.answers.ways_apart import kinds_in_words, ways_apart
from engine.answers.words.advice import advice_lines, named_or_near
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.guidance import Advice
from engine.facts.records import Mount
from engine.facts.subjects import subjects_of
from grammar.questions import Question, Thing

MOST = 4
MOST_ADVICE = 2
NOTHING = "Nothing in the facts sets these two against each other. Name two bodies, mounts or pieces."


def compare(question: Question, knowledge: Knowledge) -> Answer:
    """What sets the things named apart, in numbers where there are any, then what is said of the choice."""
    if of_one_lens(question) is not question:
        return equivalent(question, knowledge)  # 'is my 50 a 50 or a 75 on APS-C'
    question = with_what_was_before(question)
    asked = focals(question) or mentions(question, "in-little-light")
    question, note = with_usual_factor(question, knowledge.catalogue) if asked else (question, Told())
    question, taken = with_usual_of_format(question, knowledge.catalogue)
    sized = sizes_apart(question, knowledge.catalogue) if mentions(question, "by-size") else Told()
    views = views_apart(question, knowledge.catalogue) + tubes_apart(question)
    sized = views if views.lines else sized + by_an_error(question, knowledge)
    if sized.lines:
        return Answer(question.text, "compare", ANSWERED, sized.lines, question=question, quantities=sized.quantities)
    bare = all(thing.piece == "adapter" and not (thing.front or thing.thickness_mm) for thing in question.adapters)
    sides = sides_of(question, knowledge) if bare else []
    pairs: tuple[ListedChain, ...] = ()
    traps: tuple[ListedChain, ...] = ()
    if sides:
        told, traps = _of_sides(question, sides, knowledge)
    else:
        told, pairs = _of_kinds(question, knowledge)
    apart, chains = ways_apart(question, knowledge) if not (sides or end_apart(question)) else (Told(), ())
    apart = apart if chains or sides else rings_apart(question, knowledge) + apart
    told = apart if chains or apart.lines else hub_or_direct(question, knowledge) if _of_hub(question) else told
    pairs = () if apart.lines else pairs
    on_formats = each_on_its_own(question, knowledge.catalogue) if not question.adapters else Told()
    told = on_formats if on_formats.lines and not sides else told
    alone = Told() if sides or chains else _numbers_alone(question, knowledge)
    glass = glass_apart(question, beside_plain=not (chains or pairs or sides or told.lines))
    told = told if chains or sides or not glass.lines else Told()  # told of each factor once
    told = _by_price(question, knowledge) + alone + glass + crop_or_glass(question) + told
    told = brighter_of(question, knowledge.catalogue) + told
    asks = not sides or question.things or any(line.text == ALIKE for line in told.lines)
    rows = _advice(question, SURE if told.lines else LEAST, knowledge) if asks else []
    lines = [*told.lines, *(note.lines if told.lines else ()), *taken, *advice_lines(rows)]
    lines = lines or [Line("text", NOTHING)]
    answer = Answer(
        question.text, "compare", ANSWERED if told.lines or rows else NO, tuple(lines), question=question,
        chains=chains or pairs or None, quantities=told.quantities,
    )  # fmt: skip
    with_ways = with_pair(answer, question, knowledge)
    if not sides:
        return with_ways
    # the way of each is told beside what sets it apart
    return replace(with_ways, lines=answer.lines, chains=numbered([*(with_ways.chains or ()), *traps]) or None)


def _by_price(question: Question, knowledge: Knowledge) -> Told:
    """'M42 to E rings: 12 or 60 dollars, the difference': what each price buys."""
    lens, body = lens_side(question.lens, knowledge.catalogue), body_side(question.body, knowledge.catalogue)
    if not isinstance(lens, LensSide) or not isinstance(body, BodySide) or len(question.lenses) != 1:
        return Told()
    return two_prices(question, [lens], [body], knowledge) + smart_or_dumb(question, [lens], [body], knowledge)


def _advice(question: Question, least: float, knowledge: Knowledge) -> list[Advice]:
    """What is said of such a choice: that on the kinds of pieces named, then what the words are about.

    What has for its topic nothing but what the question names comes first: 'helicoid or tubes'.
    """
    facts = knowledge.catalogue
    ways = ways_told(question, facts)
    kinds = kinds_in_words(ways) if len(ways) > 1 else ""
    rows = [*(nearest(kinds, facts, 1) if kinds else ()), *named_or_near(question, knowledge, MOST_ADVICE + 1, least)]
    stems = subjects_of(facts).vocabulary.stems
    asked = stems(f"{question.text} {kinds}")
    rows.sort(key=lambda row: (row.severity != "note" and not row.asked_as, not stems(row.topic) <= asked))
    return list(dict.fromkeys(rows))[:MOST_ADVICE]


def _numbers_alone(question: Question, knowledge: Knowledge) -> Told:
    """What stops, a magnification or a focal length tell by themselves of what is set against each other."""
    facts = knowledge.catalogue
    worn = each_with_its_glass(question, crops_of(question, knowledge), facts)
    worn += sizes_apart(question, facts) + openings_apart(question, knowledge) + stops_apart(question, facts)
    return worn + size_by_ways(question) + closer_apart(question, facts)


def _of_sides(question: Question, sides: Sequence[Case], knowledge: Knowledge) -> tuple[Told, tuple[ListedChain, ...]]:
    """Which is the easier, what sets the sides apart, and what each lens does in the ring for another."""
    placed = [(side.name, side.judged) for side in sides if side.body is not None]
    told = easier(placed) if len({outcome(judged) for _, judged in placed}) > 1 else Told()
    told += side_by_side(sides, knowledge, question.feet) + Told((), _bodies(question, knowledge).quantities)
    cases = [(side.lens, side.body, side.judged) for side in sides[:MOST] if side.body is not None]
    trapped, traps = in_the_other(question, cases, knowledge)
    if not cases:
        trapped = Told((Line("ask", "On which body? Then what they do there can be set side by side too."),))
    return told + trapped, traps


def _of_kinds(question: Question, knowledge: Knowledge) -> tuple[Told, tuple[ListedChain, ...]]:
    """What is known of the kinds named, where no two lenses or bodies can be set apart whole."""
    facts = knowledge.catalogue
    lenses = [side for thing in question.lenses if isinstance(side := lens_side(thing, facts), LensSide)]
    bodies = [body for thing in question.bodies if isinstance(body := body_side(thing, facts), BodySide)]
    old = for_old_lenses(question, knowledge)
    if old.lines:
        return old, ()
    by_pair, chains = pairs_apart(question, lenses, bodies, knowledge)
    if by_pair.lines:
        lit = lit_on_bodies(question, lenses, bodies, knowledge)
        asked = mentions(question, "picture-filled", "covers-more")
        by_pair = (fuller_on(question, bodies, knowledge) if asked else Told()) + by_pair
        names = {row.name for row in by_pair.quantities}
        lit = Told(lit.lines, tuple(row for row in lit.quantities if row.name not in names))
        return by_pair + lit + _pieces(question, knowledge), chains
    if question.bodies and not bodies and not question.adapters:
        of_mounts = adapted(question, lenses, knowledge)  # bodies of no mount in particular
        if of_mounts.lines:
            return of_mounts, ()
    told = _bodies(question, knowledge) + _mounts(question, knowledge) + _pieces(question, knowledge)
    several = len(question.lenses) > 1
    framed = (
        len({form.id for _, form in formats_told(question, knowledge.catalogue)}) > 1
    )  # 'MFT or APS-C for C lenses'
    lit = lit_on_frames(question, knowledge) if several or framed or not bodies or not lenses else Told()
    return lit + _as_look_alikes(question, knowledge) + told, ()


def _of_hub(question: Question) -> bool:
    return sum(thing.count or 1 for thing in question.lenses) > 1 and HUB in {one.piece for one in question.adapters}


def _as_look_alikes(question: Question, knowledge: Knowledge) -> Told:
    """Two mounts set against each other: what each is, and what comes of mixing them."""
    by_role = [{one.id for one in role if one.kind == "mount"} for role in (question.lenses, question.bodies)]
    mounts = max(by_role, key=len)  # a lens is not set against the body that it goes on
    heads = any(body.format or body.kind == "body" for body in question.bodies)
    if len(mounts) != 2 or heads or question.adapters or len(question.bodies) > 1:
        return Told()
    from engine.answers.found.lookalike import look_alike

    answer = look_alike(question, knowledge)
    return Told(answer.lines, answer.quantities)


def _bodies(question: Question, knowledge: Knowledge) -> Told:
    """Each body for the lens named: its ring, and how much of its frame is lit."""
    facts = knowledge.catalogue
    lenses = [side for thing in question.lenses if isinstance(side := lens_side(thing, facts), LensSide)]
    bodies = [body for thing in question.bodies if isinstance(body := body_side(thing, facts), BodySide)]
    told = Told()
    for body in bodies[:MOST] if len(bodies) > 1 else []:
        for lens in lenses[:MOST]:
            ring = ring_to_make(setup_of(lens, body, facts), facts)
            if ring.thickness_mm is not None:
                row = Quantity("ring_thickness_mm", ring.thickness_mm, body.mount.id)
                told += Told((_ring_line(f"{lens.mount.designation} on {body.words}", ring),), (row,))
        told += lit_on_bodies(question, lenses, [body], knowledge)
    return told


def _ring_line(name: str, ring: RingToMake) -> Line:
    kind = {"plain": "ring", "recessed": "cup", "no": "no ring"}[ring.possible]
    assert ring.thickness_mm is not None
    return Line("fact", f"{name}: {kind}, {small_mm(ring.thickness_mm.nominal)}")


def _mounts(question: Question, knowledge: Knowledge) -> Told:
    """The ring between any two of the mounts named: the longer register's lens on the shorter one's body.

    Of one lens on one body it is that ring, which may be a cup or none.
    """
    facts = knowledge.catalogue
    roles = [_mount_ids(role, facts) for role in (question.lenses, question.bodies)]
    ids = [name for role in roles for name in role]
    if len(set(ids)) < 2 or (question.lenses and question.lenses[0].ids and len(question.bodies) > 1):
        return Told()
    on_body = all(roles)
    pairs = product(*roles) if on_body else combinations(dict.fromkeys(ids), 2)
    lines: list[Line] = []
    rows: list[Quantity] = []
    for one, other in pairs:
        first, second = facts.mounts[one], facts.mounts[other]
        if not (is_known(first.register_mm) and is_known(second.register_mm)):
            continue
        if first.register_mm.nominal < second.register_mm.nominal and not on_body:
            first, second = second, first
        lens = lens_side(Thing("mount", (first.id,), ""), facts)
        body = body_side(Thing("mount", (second.id,), ""), facts)
        if not (isinstance(lens, LensSide) and isinstance(body, BodySide)):
            continue
        ring = ring_to_make(setup_of(lens, body, facts), facts)
        if ring.thickness_mm is None:
            continue
        rows.append(Quantity("ring_thickness_mm", ring.thickness_mm, f"{first.id} to {second.id}"))
        rows.append(Quantity("register_difference_mm", ring.thickness_mm, f"{first.id}, {second.id}"))
        rows += [
            Quantity("register_mm", mount.register_mm, mount.id)
            for mount in (first, second)
            if is_known(mount.register_mm)
        ]
        lines.append(_ring_line(f"{first.designation} on {second.designation}", ring) if on_body else Line("fact", (
            f"A ring between {first.designation} and {second.designation} has "
            f"{small_mm(ring.thickness_mm.nominal)} of seat: it puts {_a(first)} lens on {_a(second)} body. "
            f"Leave it off for {second.designation} lenses. Measure yours."
        )))  # fmt: skip
    return Told(tuple(lines), tuple(rows))


def _mount_ids(things: tuple[Thing, ...], facts: Catalogue) -> list[str]:
    return [name for thing in things if thing.kind == "mount" for name in thing.ids[:1] if name in facts.mounts]


def _a(mount: Mount) -> str:
    return f"{article(mount.designation)} {mount.designation}"


def _pieces(question: Question, knowledge: Knowledge) -> Told:
    """Price bands of the kinds of ring named for a mount: with and without electronics."""
    mounts = {id_ for thing in (*question.lenses, *question.adapters) for id_ in (*thing.ids, *thing.front)}
    bodies = {id_ for thing in question.bodies for id_ in thing.ids[:1]}
    named = " ".join(thing.piece or "" for thing in question.adapters)
    if "electronic" not in named:
        return Told()
    lines, rows = list[Line](), list[Quantity]()
    for electronic, words in ((False, "ring without electronics"), (True, "electronic ring")):
        bands = [
            row.price_usd for row in knowledge.catalogue.adapters.values()
            if row.front in mounts and row.electronics is electronic and row.kind == "plain" and row.price_usd
            and row.common == "everyday" and row.rear in (bodies or {row.rear})
        ]  # fmt: skip
        if bands:
            band = min(bands)
            rows.append(Quantity("price", Interval.between(*band), words))
            lines.append(Line("fact", f"{words}: from {money(band)}"))
    return Told(tuple(lines), tuple(rows))
