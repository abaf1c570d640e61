"""The chains of one lens on one body, best first, with everything that follows from them."""

from __future__ import annotations

from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, ListedChain, Quantity, RingToMake, Told
from engine.answers.parts.knowledge import Choice, Knowledge, choose
from engine.answers.parts.resolve import BodySide, LensSide, setup_of, unknown_register
from engine.answers.parts.usual_mounts import BY_RING
from engine.answers.parts.wording import listed, small_mm
from engine.answers.seat.chain_numbers import chain_numbers, cover_numbers, principal_numbers
from engine.answers.seat.flat_seat import with_flat_seat
from engine.answers.seat.forced import TUBES, fits_all_the_same, held_chain, nothing_holds
from engine.answers.seat.listing import chain_lines, near_lines, ring_lines, seat_quantities
from engine.answers.seat.making import ring_to_make
from engine.answers.seat.observing import beside, elsewhere
from engine.answers.seat.open_lens import depends, usual_told
from engine.answers.seat.outcome_lines import with_mark
from engine.answers.seat.passed_over import why_passed_over
from engine.answers.seat.rest_of_chain import still_needed
from engine.answers.seat.seat_side import seat_side
from engine.answers.seat.telling import CERTAINTY_WORDS, chain_title, life_line
from engine.answers.seat.travel_told import shut_assumed, with_draw_told, with_travel_told
from engine.answers.seat.unsold import is_free
from engine.answers.shims.bare_sensor import glass_told, plate_in
from engine.answers.shims.named_pieces import with_named_pieces
from engine.answers.shims.other_seats_off import with_depth_off
from engine.answers.shims.summed import UNSIZED, as_summed, is_unsized, summed
from engine.answers.ways.alongside import alongside, nearer, plainer, straight_or_forced
from engine.answers.ways.plain_first import glass_left, plain_way, with_plain_way
from engine.answers.ways.set_in_chain import as_it_stood
from engine.answers.ways.spacer_wanted import REMEDY, without_spacer
from engine.base.compact import compact, replace
from engine.base.interval import is_known
from engine.base.span import Span
from engine.chains.search import MOST_CHAINS
from engine.chains.setup import Setup
from engine.facts.records import Adapter
from engine.judging.judge import Judged
from grammar.kinds import CHAIN, MACRO_DISTANCE
from grammar.questions import BY_MEASURES, Question, Thing
from grammar.turns.sticking import is_open

SHOWN = 3
ADDED = "added between"  # the case of what is still to be put between
INFINITY = "infinity"


@compact
class _Ways:
    """The ways that were chosen. `named`: the knowledge with the pieces that were described; `first`: the way that is
    told before all others; `held`: the lens held against the ring named, where that is not its own; `together`: the
    pieces told as one ring, where only their lengths count.
    """

    named: Knowledge
    choice: Choice
    first: list[ListedChain]
    found: list[ListedChain]
    held: ListedChain | None
    passed_over: bool
    together: Adapter | None = None

    @property
    def chains(self) -> tuple[ListedChain, ...]:
        return tuple(ListedChain(n, row.listed, row.title) for n, row in enumerate([*self.first, *self.found], start=1))


def one_pair(
    question: Question, lens: LensSide, body: BodySide, knowledge: Knowledge, intent: str | None = None
) -> Answer:
    """The chains of one lens on one body, best first, with everything that follows from them."""
    facts = knowledge.catalogue
    setup = setup_of(lens, body, facts, question.f_number)
    ring = ring_to_make(setup, facts)
    question = with_depth_off(without_spacer(question.with_(adapters=question.between)))
    question = with_flat_seat(with_travel_told(with_draw_told(question, ring), ring, facts), setup, ring)
    ways = _ways(question, setup, ring, knowledge)
    named, chains = ways.named, ways.chains
    if not chains and unknown_register(setup) and not question.limits.owned_only:
        hangs = depends(question, question.lens, body, knowledge)
        return replace(hangs, ring=ring, chains=hangs.chains or ())
    extra, rest = alongside(question, setup, ring, chains, named), still_needed(question, chains, named)
    plate = plate_in(question, chains[0].listed.judged if chains else None, knowledge)
    added, seen = _added(question, chains), _each_way(chains, named, question.feet)
    bare = plate if plate.lines else glass_told(question, knowledge)
    lines = [
        *plate.lines,
        *_not_that_way(question, setup, ways, knowledge),
        *_not_straight(question, chains, extra.chains),
        *_opening(lens, body, chains, ring, question, extra.chains),
        *glass_left(chains),
        *(seat_side(question, chains[0].listed.judged).lines if chains else ()),
        *rest.lines,
        *_notes(lens, body, ways.choice, question),
        *(usual_told(chains[0].listed.judged) if chains else ()),
        *shut_assumed(question),
        *nothing_holds(question, ways.held if ways.first else None),
        *seen.lines,
    ]
    lines = [*added.lines, *lines] if question.topic == REMEDY else [*lines, *added.lines]
    lines += elsewhere(setup, (chain.listed.judged for chain in chains), facts, question.feet)
    lines += [*ring_lines(ring, chains), *(() if plate.lines else bare.lines), *extra.told.lines]
    asked = intent or question.intent
    lines += near_lines(chains) if asked == MACRO_DISTANCE else []
    every = (*chains, *extra.chains)
    numbers = _numbers(every[0].listed.judged, named) if every else Told()
    answer = Answer(
        question.text, asked, _status(chains, extra.chains), tuple(lines), question=question, chains=every, ring=ring,
        quantities=(
            *seat_quantities(setup, ring, named), *numbers.quantities, *extra.told.quantities, *seen.quantities,
            *added.quantities, *bare.quantities, *rest.quantities,
        ),
    )  # fmt: skip
    return _with_picture(answer, question, named)


def _ways(question: Question, setup: Setup, ring: RingToMake, knowledge: Knowledge) -> _Ways:
    """The ways by the pieces that were named; where these lead nowhere, those that would do."""
    named, limits = with_named_pieces(question, setup.lens_mount.id, setup.body_mount.id, knowledge)
    limits = as_it_stood(question, setup, named, limits, knowledge)
    first = straight_or_forced(question, setup, named)
    choice = choose(named, setup, limits, (question.limits.best or SHOWN) - len(first))
    passed_over = not choice.listed and not first and limits.using != question.limits.using
    held = held_chain(question, setup, named) if passed_over or _only_far_about(choice, question) else None
    together = summed(question, setup.lens_mount.id, setup.body_mount.id, knowledge) if passed_over else None
    if together is not None:
        named = knowledge.with_adapters((together,))
        choice = choose(named, setup, replace(question.limits, using=(together.id,)), 1)
        found = [ListedChain(1, row, chain_title(row.judged, named)) for row in choice.listed]
        return _Ways(named, choice, [], found, None, False, together)
    asked_of = question.intent != CHAIN or not is_free(question.limits) or fits_all_the_same(question)
    if held is not None and asked_of:
        first = first or [held]
    if passed_over or held is not None:
        # the pieces lead nowhere from this lens to this body: that comes first, then what would do
        named, limits = knowledge, replace(question.limits, using=())
        choice = choose(named, setup, limits, question.limits.best or SHOWN)
    found = [ListedChain(1, row, chain_title(row.judged, named)) for row in choice.listed]
    sized = question.said("thickness") is not None and question.off_word is None  # 'mine is 2 mm thick'
    if not first and not sized and all(is_open(thing) or _spans(thing, setup) for thing in question.adapters):
        flush = nearer(tuple(found), ring, setup, named) if found or limits.pieces != 0 else None
        flush = flush or (plainer(tuple(found), ring, setup, named, not question.adapters) if is_free(limits) else None)
        flush = flush or plain_way(question, tuple(found), ring, setup, named)
        first = [flush] if flush is not None else []
        found = with_plain_way(found, flush)[len(first) :]
    return _Ways(named, choice, first, found, held, passed_over)


def _not_that_way(question: Question, setup: Setup, ways: _Ways, knowledge: Knowledge) -> list[Line]:
    """That the pieces named do not lead there, before what would, or what is taken for so."""
    if ways.together is not None:
        return [Line("head", as_summed(ways.together))]
    if ways.held is not None and not ways.first:
        return [Line("head", f"Not that way: {ways.held.title}. Instead:")]
    if ways.passed_over and question.adapters and ways.found and not ways.first:
        head = Line("head", why_passed_over(question, setup.lens_mount, setup.body_mount, knowledge))
        return [Line("ask", UNSIZED), head] if is_unsized(question) else [head]
    return []


def _not_straight(question: Question, chains: tuple[ListedChain, ...], further: tuple[ListedChain, ...]) -> list[Line]:
    """That a lens does no good straight on, before ways that only tubes nobody named make safe."""
    best = chains[0].listed.judged if chains and not question.adapters else None
    if best is None or best.verdict == INFINITY or not all(piece.stackable for piece in best.chain.adapters):
        return []
    straight = [row for row in further if not row.listed.judged.chain.adapters]
    bad = [row for row in straight if row.listed.judged.verdict == "unusable"]
    return [Line("head", f"Not straight on: {life_line(row.listed.judged)}.") for row in bad[:1]]


def _each_way(chains: tuple[ListedChain, ...], knowledge: Knowledge, feet: bool) -> Told:
    """Each way in words, with what the user saw on it."""
    lines, seen = list[Line](), Told()
    for chain in chains:
        told = beside(chain.listed.judged, knowledge.catalogue, feet)
        lines += chain_lines(chain, knowledge, feet, full=chain.number == 1)
        lines += [replace(line, depth=line.depth + 1) for line in told.lines]
        seen += told
    return Told(tuple(lines), seen.quantities)


def _status(chains: tuple[ListedChain, ...], further: tuple[ListedChain, ...]) -> int:
    if not chains and further and further[0].listed.judged.verdict == "infinity":
        return ANSWERED  # by a ring to be made
    return ANSWERED if chains and chains[0].listed.judged.verdict != "unusable" else NO


def _with_picture(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer, with what the picture is like where tubes leave the lens for close up alone."""
    tubes = any(thing.piece in TUBES for thing in question.adapters)
    chains = answer.chains or ()
    close_only = bool(chains) and chains[0].listed.judged.verdict == "macro-only"
    if not (tubes and close_only) or answer.intent == MACRO_DISTANCE:
        return answer
    from engine.answers.close.close_picture import with_picture  # only where it works close up

    return with_picture(answer, question, knowledge)


def _spans(thing: Thing, setup: Setup) -> bool:
    """Whether a ring named is the one from the lens to the body."""
    return setup.lens_mount.id in thing.front and setup.body_mount.id in thing.rear and thing.thickness_mm is None


def _only_far_about(choice: Choice, question: Question) -> bool:
    """Whether the one ring named is reached by further pieces alone, and even then to no infinity."""
    if not choice.listed or len(question.adapters) != 1 or not question.adapters[0].front:
        return False
    best = choice.listed[0].judged
    return best.verdict != "infinity" and len(best.chain.adapters) > 1


def _added(question: Question, chains: tuple[ListedChain, ...]) -> Told:
    """Where the ring that was named leaves the lens too close: what must come between to set it right."""
    if not question.adapters:
        return Told()
    for chain in chains:
        judged = chain.listed.judged
        error = judged.measured_trace.value("register_error_mm")
        if judged.verdict != "unusable" or not isinstance(error, Span):
            continue
        if not (is_known(error.longest) and is_known(error.shortest)) or error.longest.nominal >= 0:
            continue
        more = -error.longest
        rows = [Quantity("ring_thickness_mm", -error.shortest, ADDED)]
        if error.is_fixed:
            text = f"With {chain.title}, {small_mm(more.nominal)} more between lens and ring would set it right."
        else:
            text = (
                f"Drawn out all the way it is still {small_mm(more.nominal)} too short: with {chain.title}, a tube of"
                f" {small_mm(more.nominal)} to {small_mm(-error.shortest.nominal)} more, or a longer helicoid, gives"
                " infinity, the longer the tube the nearer to its shut end."
            )
        seat = judged.measured_trace.value("seat_mm")
        if isinstance(seat, Span) and is_known(seat.longest):
            rows.append(Quantity("stack_mm", seat.longest - error.longest, "all pieces together"))
        return Told((Line("text", text),), tuple(rows))
    return Told()


def _numbers(judged: Judged, knowledge: Knowledge) -> Told:
    facts = knowledge.catalogue
    return Told(
        (), (*chain_numbers(judged, facts), *cover_numbers(judged, facts), *principal_numbers(judged))
    )  # fmt: skip


def _opening(
    lens: LensSide, body: BodySide, chains: tuple[ListedChain, ...], ring: RingToMake, question: Question,
    made: tuple[ListedChain, ...],
) -> list[Line]:  # fmt: skip
    """What comes of it, first. `made`: what would where the ring that is not sold is made."""
    subject = f"{lens.words} on {body.words}"
    if not chains:
        why = {
            "plain": "A ring for it could be made",
            "recessed": "A recessed ring for it could be made",
            "no": "No ring will do it",
        }
        kept = replace(question.limits, without_glass=False, at_least=None)  # limits that a ring to be made keeps
        extra = " within the limits you set" if question.limits != type(question.limits)() else ""
        if kept == type(kept)() and ring.possible == "plain" and ring.thickness_mm is not None:
            size = small_mm(ring.thickness_mm.nominal)
            if made and made[0].listed.judged.verdict == "unusable":  # the registers leave room, the lens does not fit
                told = f"{subject}: {life_line(made[0].listed.judged)}. The registers would leave {size} for a ring"
                return [Line("head", f"{told[:1].upper()}{told[1:]}.")]
            sort = "plain ring" if question.limits.without_glass else "ring"
            one = "one" if question.limits.without_glass else "a plain one"
            told = f"{subject}: no {sort} for it is in the facts, but {one} of {size} would keep infinity"
            return [Line("head", f"{told[:1].upper()}{told[1:]}; {ring.why}.")]
        return [Line("head", f"No way found from {subject}{extra}. {why[ring.possible]}: {ring.why}.")]
    first = chains[0].listed.judged
    certainty = CERTAINTY_WORDS[first.certainty]
    text = life_line(first, question.feet) + with_mark(first, question)
    if any(adapter.has_glass for adapter in first.chain.adapters):
        text += ", through glass"
    told = text if first.certainty == "unknown" else f"{text} ({certainty})"
    return [Line("head", f"{subject[:1].upper()}{subject[1:]}: {told}.")]


def _notes(lens: LensSide, body: BodySide, choice: Choice, question: Question) -> list[Line]:
    measured = question.lens is not None and BY_MEASURES in question.lens.traits
    may = "by what was measured it may also be" if measured else "the name may also mean"
    by_ring = question.body is not None and BY_RING in question.body.traits
    taken = [
        Line("note", f"Taken for {side.mount.designation}; {may} {listed(side.others, 'or')}.")
        for side in ((lens,) if by_ring else (lens, body))
        if side.others
    ]
    if by_ring:
        other = f"; by that it may also be {listed(body.others, 'or')}" if body.others else ""
        taken.append(
            Line("note", f"No body is told: taken for {body.mount.designation} by the length of the ring{other}.")
        )
    lines = list(dict.fromkeys(taken))
    if choice.capped:
        lines.append(Line("note", f"The search stopped after {MOST_CHAINS} chains; there may be better ones."))
    return lines
