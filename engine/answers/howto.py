"""How a lens gets on a body, whether it then reaches infinity, and from where to where it focuses."""

from __future__ import annotations

from engine.answers.answer import ANSWERED, NO, Answer, Line, ListedChain, Quantity, RingToMake, Told
from engine.answers.bare_sensor import glass_gone_mm, glass_told, without_glass
from engine.answers.chain_numbers import chain_numbers, cover_numbers, principal_numbers
from engine.answers.filters import filter_answer, for_filters
from engine.answers.knowledge import Choice, Knowledge, choose
from engine.answers.listing import chain_lines, near_lines, ring_lines, seat_quantities
from engine.answers.making import ring_to_make
from engine.answers.named_pieces import TUBE, with_named_pieces
from engine.answers.observing import beside, elsewhere
from engine.answers.resolve import BodySide, LensSide, Missing, body_side, lens_side, setup_of, unknown_register
from engine.answers.said import number, numbers
from engine.answers.telling import CERTAINTY_WORDS, chain_title, life_line
from engine.answers.wording import listed, small_mm
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.chains.search import MOST_CHAINS
from engine.chains.setup import Setup
from engine.chains.walk import ADDED_FOCUSING
from engine.facts.catalogue import Catalogue
from engine.judging.judge import Judged
from grammar.questions import Question, Thing

SHOWN = 3
TUBES = frozenset({TUBE, *ADDED_FOCUSING})
PASSED_OVER = "Not with the pieces as you named them: they do not lead from this lens to this body. Without them:"


def how_to(question: Question, knowledge: Knowledge, intent: str | None = None) -> Answer:
    """Answer a question about a chain: for one lens on one body, for each pair of several, or for what is missing."""
    facts = knowledge.catalogue
    if for_filters(question, facts):
        return filter_answer(question, knowledge)
    question = _as_bare(_with_extension(_with_roles(question, facts)))
    lenses = [lens_side(thing, facts) for thing in question.lenses or (None,)]
    bodies = [body_side(thing, facts) for thing in question.bodies or (None,)]
    lens_known = [_as_measured(side, question) for side in lenses if isinstance(side, LensSide)]
    body_known = [without_glass(side, question, facts) for side in bodies if isinstance(side, BodySide)]
    if not lens_known or not body_known:
        from engine.answers.incomplete import incomplete

        return incomplete(question, lenses, bodies, knowledge)
    meanings = _meanings(question.lens, lens_known, knowledge)
    if len(lens_known) > 1 or len(body_known) > 1:
        from engine.answers.several import each_pair

        return each_pair(question, lens_known, body_known, knowledge)
    if len(meanings) > 1:
        from engine.answers.meanings import likeliest

        return likeliest(question, meanings, body_known[0], knowledge, one_pair)
    return one_pair(question, lens_known[0], body_known[0], knowledge, intent)


def _as_measured(side: LensSide, question: Question) -> LensSide:
    """The lens with what was told of it: flange to image, whatever its mount's register is, barrel, nearest mark."""
    lens, measured, barrel = side.lens, number(question, "flange_to_image"), number(question, "barrel")
    if measured is not None and measured > 0:
        lens = replace(lens, register_mm=Interval.exact(measured))
    if barrel is not None and barrel > 0:
        lens = replace(lens, collar_mm=Interval.exact(barrel))
    near = number(question, "close_focus")
    if near is not None and not is_known(lens.close_focus_mm):
        lens = replace(lens, close_focus_mm=Interval.exact(near))
    return side if lens is side.lens else replace(side, lens=lens)


def _with_roles(question: Question, facts: Catalogue) -> Question:
    """Two mounts and no body: the lens comes first, what it shall go on second.

    A lens without a mount and two bodies: the mount of the longer register is the lens's.
    """
    lens, bodies = question.lens, question.bodies
    if lens is not None and not lens.ids and len(question.lenses) == 1 and len(bodies) == 2:
        known = [facts.mounts[id_] for thing in bodies if thing.kind == "mount" for id_ in thing.ids[:1]]
        registers = [mount.register_mm for mount in known]
        if len(known) == 2 and is_known(registers[0]) and is_known(registers[1]):
            longer = 0 if registers[0].nominal > registers[1].nominal else 1
            meant = replace(lens, kind="mount", ids=(known[longer].id,))
            return replace(question, lenses=(meant,), bodies=(bodies[1 - longer],))
    told = [thing for thing in question.lenses if thing.kind == "mount" and thing.ids]
    if question.bodies or len(question.lenses) != 2 or len(told) != 2 or told[0].ids == told[1].ids:
        return question
    return replace(question, lenses=question.lenses[:1], bodies=question.lenses[1:])


def _with_extension(question: Question) -> Question:
    """'20 mm of extension' between a lens and a body is a tube of that length."""
    said = numbers(question, "extension")
    tubes = any(thing.piece == TUBE and thing.thickness_mm is not None for thing in question.adapters)
    if len(said) != 1 or tubes or not (question.lenses and question.bodies):
        return question
    tube = Thing("", (), f"{said[0]:g} mm tube", thickness_mm=(said[0], said[0]), piece=TUBE)
    bare = tuple(thing for thing in question.adapters if thing.piece != TUBE)
    return replace(question, adapters=(*bare, tube))


def _as_bare(question: Question) -> Question:
    """Where glass is gone from the sensor and no piece is named, it is asked of the plain ring, not of a way around."""
    if glass_gone_mm(question) is None or any(thing.piece in TUBES for thing in question.adapters):
        return question
    limits = question.limits if question.limits.pieces else replace(question.limits, pieces=1)
    kept = tuple(thing for thing in question.adapters if thing.piece != "filter")
    return replace(question, limits=limits, adapters=kept)


def _meanings(thing: Thing | None, known: list[LensSide], knowledge: Knowledge) -> list[LensSide]:
    """Every lens that an ambiguous designation may stand for, where registers differ and none is the likelier."""
    if thing is None or thing.kind != "mount" or not thing.ambiguous or len(known) != 1:
        return []
    shared = (row for row in knowledge.catalogue.shared.values() if row.mounts[0] in thing.ids and row.likely)
    if any(row.likely == thing.id and set(thing.ids) <= set(row.mounts) for row in shared):
        return []
    out: dict[float, LensSide] = {}
    for id_ in thing.ids:
        side = lens_side(replace(thing, ids=(id_,)), knowledge.catalogue)
        if isinstance(side, LensSide) and is_known(side.mount.register_mm):
            out.setdefault(side.mount.register_mm.nominal, side)
    return list(out.values())


def one_pair(
    question: Question, lens: LensSide, body: BodySide, knowledge: Knowledge, intent: str | None = None
) -> Answer:
    """The chains of one lens on one body, best first, with everything that follows from them."""
    from engine.answers.alongside import alongside, straight_or_forced

    facts = knowledge.catalogue
    setup = setup_of(lens, body, facts, question.f_number)
    ring = ring_to_make(setup, facts)
    named, limits = with_named_pieces(question, lens.mount.id, body.mount.id, knowledge)
    first = straight_or_forced(question, setup, named)
    choice = choose(named, setup, limits, (question.limits.best or SHOWN) - len(first))
    passed_over = not choice.listed and not first and limits.using != question.limits.using
    if passed_over:
        # a piece that leads nowhere from this lens to this body was only a way of speaking
        named, limits = knowledge, replace(question.limits, using=())
        choice = choose(named, setup, limits, question.limits.best or SHOWN)
    found = [ListedChain(1, row, chain_title(row.judged, named)) for row in choice.listed]
    chains = tuple(ListedChain(n, row.listed, row.title) for n, row in enumerate([*first, *found], start=1))
    if not chains and unknown_register(setup) and not question.limits.owned_only:
        from engine.answers.open_lens import depends

        return replace(depends(question, question.lens, body, knowledge), ring=ring, chains=())
    extra = alongside(question, setup, ring, chains, named)
    lines = [*_opening(lens, body, chains, ring, question), *_notes(lens, body, choice)]
    if passed_over and question.adapters and chains:
        lines.insert(0, Line("head", PASSED_OVER))
    seen = Told()
    for chain in chains:
        lines += chain_lines(chain, named, question.feet, full=chain.number == 1)
        told = beside(chain.listed.judged, facts, question.feet)
        lines += [replace(line, depth=line.depth + 1) for line in told.lines]
        seen += told
    added = _added(question, chains)
    lines += added.lines
    lines += elsewhere(setup, (chain.listed.judged for chain in chains), facts, question.feet)
    lines += ring_lines(ring, setup, chains)
    bare = glass_told(question, knowledge)
    lines += [*bare.lines, *extra.told.lines]
    if (intent or question.intent) == "macro-distance":
        lines += near_lines(chains)
    status = ANSWERED if chains and chains[0].listed.judged.verdict != "unusable" else NO
    chains = (*chains, *extra.chains)
    numbers = _numbers(chains[0].listed.judged, named) if chains else Told()
    answer = Answer(
        question.text, intent or question.intent, status, tuple(lines), question=question, chains=chains, ring=ring,
        quantities=(
            *seat_quantities(setup, ring, named), *numbers.quantities, *extra.told.quantities, *seen.quantities,
            *added.quantities, *bare.quantities,
        ),
    )  # fmt: skip
    tubes = any(thing.piece in TUBES for thing in question.adapters)
    if tubes and chains and chains[0].listed.judged.verdict == "macro-only" and answer.intent != "macro-distance":
        from engine.answers.closeup import with_picture

        return with_picture(answer, question, named)
    return answer


def _added(question: Question, chains: tuple[ListedChain, ...]) -> Told:
    """Where the ring that was named leaves the lens too close: what must come between to set it right."""
    if not question.adapters:
        return Told()
    for chain in chains:
        judged = chain.listed.judged
        error = judged.measured_trace.value("register_error_mm")
        if judged.verdict != "unusable" or not isinstance(error, Span) or not error.is_fixed:
            continue
        if is_known(error.shortest) and error.shortest.nominal < 0:
            more = -error.shortest
            text = f"With {chain.title}, {small_mm(more.nominal)} more between lens and ring would set it right."
            return Told((Line("text", text),), (Quantity("ring_thickness_mm", more, "added between"),))
    return Told()


def _numbers(judged: Judged, knowledge: Knowledge) -> Told:
    facts = knowledge.catalogue
    return Told(
        (), (*chain_numbers(judged, facts), *cover_numbers(judged, facts), *principal_numbers(judged))
    )  # fmt: skip


def ask_for(question: Question, missing: tuple[Missing, ...]) -> Answer:
    """Ask for the one fact that is missing, first the lens, then the body."""
    return Answer(
        question.text,
        question.intent,
        NO,
        tuple(Line("ask", row.ask, wants=row.wants) for row in missing[:1]),
        question=question,
    )


def _opening(
    lens: LensSide, body: BodySide, chains: tuple[ListedChain, ...], ring: RingToMake, question: Question
) -> list[Line]:
    subject = f"{lens.words} on {body.words}"
    if not chains:
        why = {
            "plain": "A ring for it could be made",
            "recessed": "A recessed ring for it could be made",
            "no": "No ring will do it",
        }
        extra = " within the limits you set" if question.limits != type(question.limits)() else ""
        return [Line("head", f"No way found from {subject}{extra}. {why[ring.possible]}: {ring.why}.")]
    first = chains[0].listed.judged
    certainty = CERTAINTY_WORDS[first.certainty]
    text = life_line(first, question.feet)
    if any(adapter.has_glass for adapter in first.chain.adapters):
        text += ", through glass"
    told = text if first.certainty == "unknown" else f"{text} ({certainty})"
    return [Line("head", f"{subject[:1].upper()}{subject[1:]}: {told}.")]


def _notes(lens: LensSide, body: BodySide, choice: Choice) -> list[Line]:
    lines = []
    for side in (lens, body):
        if side.others:
            lines.append(
                Line("note", f"Taken for {side.mount.designation}; the name may also mean {listed(side.others, 'or')}.")
            )
    if choice.capped:
        lines.append(Line("note", f"The search stopped after {MOST_CHAINS} chains; there may be better ones."))
    return lines


def needs_register(setup: Setup, judged: Judged | None) -> bool:
    """Whether the lens's own flange-to-image distance is what the verdict hangs on."""
    if not unknown_register(setup):
        return False
    error = judged.measured_trace.value("register_error_mm") if judged else None
    return not isinstance(error, Span) or not is_known(error.shortest)
