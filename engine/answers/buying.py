"""What to buy: rings for every lens on every body, singly or by a hub, a close-up kit, filters and their rings."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from engine.answers.open_to_buy import of_open_lens
from engine.answers.own.own_places import with_all_of_mine
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import LEAST, SURE, nearest
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.parts.said import mentions, number
from engine.answers.parts.usual_mounts import taken_by_format
from engine.answers.parts.wording import small_mm
from engine.answers.picture.filters import filter_threads, rings_of_fronts
from engine.answers.seat.ways_told import HUB
from engine.answers.spending import (
    ENOUGH_ASKED,
    bodies_by_plain_rings,
    close_up_kit,
    left_of_sum,
    not_to_buy,
    tubes_beside,
    tubes_for_size,
    tubes_to_buy,
    without_tubes,
    worth_it,
)
from engine.answers.ways.by_count import by_count, with_kinds_alone
from engine.answers.ways.fits import list_fits
from engine.answers.ways.focusing_kit import focusing_kit
from engine.answers.ways.hubs import BASE_TOLD, HUB_TOLD, built_on_body, hub_of, is_hub_told, through_hub
from engine.answers.ways.sold_on import sold_on
from engine.answers.ways.two_prices import prices_of, smart_or_dumb, two_prices
from engine.answers.ways_apart import ways_apart
from engine.answers.words.advice import named_or_near
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.guidance import Advice
from engine.facts.kinds import GLASS_KINDS
from engine.facts.records import Mount
from grammar.kinds import BUY_PLAN
from grammar.questions import ALL, Question, Thing

APART = ("set-against", "plain-way")  # that single rings are told of beside a hub
_BY_PAIR = "By pair:"  # ends the lines before the rows of the pairs
DEAR_OR_CHEAP = "cheap ring or dear ring"  # what two prices for one piece ask about


def plan(question: Question, knowledge: Knowledge) -> Answer:
    """Everything that must be bought, its price, and the advice that goes with the choice."""
    question = with_kinds_alone(_hub_or_singles(_of_all_of_them(question, knowledge)))
    question, taken = taken_by_format(question, knowledge.catalogue)
    lenses, bodies = _sides(question, knowledge)
    answer = _pairs_told(without_tubes(question), lenses, bodies, knowledge)
    tubes, summed = tubes_beside(question, lenses, answer, knowledge)
    first = left_of_sum(question, summed) if mentions(question, ENOUGH_ASKED) else Told()
    first += by_count(question, knowledge) + not_to_buy(question, lenses, bodies, knowledge)
    first += close_up_kit(question, lenses, bodies, knowledge) + tubes_to_buy(question, lenses, bodies, knowledge)
    open_lens = of_open_lens(question, lenses, bodies, knowledge)
    first += worth_it(question, answer, knowledge) if not first.lines else Told()
    first += two_prices(question, lenses, bodies, knowledge) + smart_or_dumb(question, lenses, bodies, knowledge)
    first += _behind_glass(question, answer, knowledge) + open_lens
    told = Told((), first.quantities)
    for part in (tubes, *_parts(question, lenses, bodies, summed, knowledge)):
        told += part
    # beside the pieces themselves, 'buy' or 'cheap' alone does not ask for advice on buying
    rows = named_or_near(question, knowledge, 1, LEAST if answer is None and not first.lines else SURE)
    rows += [row for row in _of_glass(answer, knowledge) if row not in rows]
    if prices_of(question):
        rows = [*dict.fromkeys((*nearest(DEAR_OR_CHEAP, knowledge.catalogue, 1), *rows))]
    held = {line.text.casefold() for line in (answer.lines if answer else ())}
    advice = [Line("text", f"{row.topic[:1].upper()}{row.topic[1:]}: {row.says}") for row in rows]
    advice = [line for line in advice if line.text.casefold() not in held]
    led = _led(question, answer, told)
    lines = [*first.lines, *led[:1], *taken, *led[1:], *advice]
    if question.said(ALL) and not (lenses and bodies):
        lines.append(Line("ask", _lacking(lenses)))
    if not lines and len(lenses) > 1 and not bodies:
        homes = list_fits(question, knowledge)  # which body is to be bought, before which rings
        first, lines = first + Told((), homes.quantities or ()), list(homes.lines)
    lines = lines or [Line("ask", "For which lenses, on which bodies?")]
    quantities = (*(answer.quantities if answer else ()), *told.quantities)
    base = answer or Answer(question.text, "buy-plan", ANSWERED if first.lines or told.lines or rows else NO, ())
    return replace(
        base, text=question.text, intent=BUY_PLAN, lines=tuple(lines), question=question, quantities=quantities
    )  # fmt: skip


def _hub_or_singles(question: Question) -> Question:
    """'singles or go through M': the mount that they might go through is a hub, and not what every chain must use."""
    via = question.limits.using
    if len(via) != 1 or len(question.lenses) < 2 or not mentions(question, *APART) or hub_of(question):
        return question
    with_hub = (*question.adapters, Thing(piece=HUB, front=via))
    return question.with_(limits=replace(question.limits, using=()), adapters=with_hub)


def _led(question: Question, answer: Answer | None, told: Told) -> list[Line]:
    """The lines with the hub before the pairs where the hub is what is asked about."""
    pairs = list(answer.lines) if answer else []
    if hub_of(question) is None and not any(BASE_TOLD in line.text for line in told.lines):
        return [*pairs, *told.lines]
    hub = [line for line in told.lines if HUB_TOLD in line.text or BASE_TOLD in line.text]
    rest = [line for line in told.lines if line not in hub]
    if not pairs or not pairs[0].text.endswith(_BY_PAIR):
        return [*pairs[:1], *hub, *pairs[1:], *rest]
    head = replace(pairs[0], text=pairs[0].text.removesuffix(_BY_PAIR).rstrip())
    return [head, *hub, Line("text", _BY_PAIR), *pairs[1:], *rest]


def _behind_glass(question: Question, answer: Answer | None, knowledge: Knowledge) -> Told:
    """What the glass that is thought of would make of the lens, where no chain on a body tells it."""
    if answer is not None or not any(thing.factor or thing.piece in GLASS_KINDS for thing in question.adapters):
        return Told()
    from engine.answers.picture.equivalent import equivalent

    told = equivalent(question, knowledge)
    return Told(told.lines, told.quantities)


def _is_choice(question: Question) -> bool:
    """'tubes or a helicoid': pieces set against each other, only one of which is to be bought."""
    return len(question.adapters) > 1 and mentions(question, "either-or")


def _of_glass(answer: Answer | None, knowledge: Knowledge) -> Sequence[Advice]:
    """What glass in the way costs in sharpness, where the best way has some."""
    kinds = {
        piece.kind for chain in (answer.chains or () if answer else ()) for piece in chain.listed.judged.chain.adapters
        if piece.kind in GLASS_KINDS
    }  # fmt: skip
    text = " ".join(f"{kind.replace('-', ' ')} or plain ring" for kind in sorted(kinds))
    return nearest(text, knowledge.catalogue, 1) if text else ()


def _of_all_of_them(question: Question, knowledge: Knowledge) -> Question:
    """The question with all lenses or bodies of one's own that it means, also as 'all of them' with none named."""
    if not question.lenses and question.said(ALL) is None and mentions(question, "all-of-them"):
        question = question.with_(values=(*question.values, (ALL, "lenses")))
    return with_all_of_mine(question, knowledge.catalogue)


def _lacking(lenses: Sequence[LensSide]) -> str:
    if not lenses:
        return "No lens of yours is known. Tell one: 'my avocet is a 25mm f/1.4 C-mount lens'."
    return "On which body? Name it, or its mount."


def _pairs_told(
    question: Question, lenses: Sequence[LensSide], bodies: Sequence[BodySide], knowledge: Knowledge
) -> Answer | None:
    """The chains of the lenses on the bodies, where both are named."""
    of_fronts = question.follows and question.said("filter_thread") is not None and not question.adapters
    if not lenses or not bodies or of_fronts:
        return None  # after a way that was told, what goes before the lenses is asked
    if len(lenses) == len(bodies) == 1:
        if _is_unfocused(lenses[0].mount):
            return None
        if hub_of(question) is not None:
            return _weighed(question, knowledge)
        if mentions(question, "worth-it") or _is_choice(question):
            weighed = _weighed(question, knowledge)
            if weighed.chains:
                return weighed
        from engine.answers.ways.one_for_all import for_all_of_them
        from engine.answers.ways.pair import one_pair

        return for_all_of_them(question, one_pair(question, lenses[0], bodies[0], knowledge, "buy-plan"))
    from engine.answers.ways.several import each_pair

    singles = tuple(one for one in question.adapters if one.piece != HUB or not mentions(question, *APART))
    return each_pair(question.with_(adapters=singles), lenses, bodies, knowledge)


def _singly(
    question: Question, lenses: Sequence[LensSide], bodies: Sequence[BodySide], knowledge: Knowledge
) -> Answer | None:
    """The chains of the lenses on the bodies by single rings, whatever hub is named."""
    free = question.with_(adapters=(), intent=BUY_PLAN, limits=replace(question.limits, using=()))
    return _pairs_told(free, lenses, bodies, knowledge)


def hub_or_direct(question: Question, knowledge: Knowledge) -> Told:
    """For several lenses, or bodies: how many pieces and what price by a hub and by single rings; else empty."""
    counted = by_count(with_kinds_alone(question), knowledge)
    if counted.lines:
        return counted
    lenses, bodies = _sides(question, knowledge)
    if hub_of(question) is None or len(lenses) < 2 or not bodies:
        return Told()
    direct = _singly(question, lenses, bodies, knowledge)
    hub = through_hub(question, lenses, bodies, _pieces(direct), knowledge)
    return Told((*hub.lines, *(direct.lines[:1] if direct and hub.lines else ())), hub.quantities)


def _sides(question: Question, knowledge: Knowledge) -> tuple[list[LensSide], list[BodySide]]:
    facts = knowledge.catalogue
    lenses = [side for thing in question.lenses if isinstance(side := lens_side(thing, facts), LensSide)]
    bodies = [body for thing in question.bodies if isinstance(body := body_side(thing, facts), BodySide)]
    return lenses, bodies


def _weighed(question: Question, knowledge: Knowledge) -> Answer:
    """The ways told for one lens on one body side by side; it needs no hub, where one ring does it."""
    told, chains = ways_apart(question, knowledge)
    counts = [len(chain.listed.judged.chain.adapters) for chain in chains]
    lines = list(told.lines)
    if hub_of(question) is not None and len(counts) == 2 and counts[0] < counts[1]:
        lines.insert(0, Line("head", f"No hub is needed for one lens on one body: {chains[0].title} does it alone."))
    return Answer(
        question.text, "buy-plan", ANSWERED if chains else NO, tuple(lines), question=question, chains=chains,
        quantities=told.quantities,
    )  # fmt: skip


def _parts(
    question: Question,
    lenses: Sequence[LensSide],
    bodies: Sequence[BodySide],
    pairs: Answer | None,
    knowledge: Knowledge,
) -> Iterator[Told]:
    threads = filter_threads(question, knowledge)
    if threads:
        yield rings_of_fronts(question, threads, knowledge)
    if not (prices_of(question) or mentions(question, ENOUGH_ASKED)):
        yield left_of_sum(question, pairs)
    if lenses and not bodies:
        yield bodies_by_plain_rings(question, lenses, knowledge)
    if len(bodies) > 1:
        yield built_on_body(question, lenses, bodies, knowledge)
    if len(lenses) > 1:
        singly = _singly(question, lenses, bodies, knowledge) if is_hub_told(question, knowledge) else pairs
        yield through_hub(question, lenses, bodies, _pieces(singly), knowledge)
    if bodies and not lenses:
        yield sold_on(question, bodies[0], knowledge)
    for lens in lenses:
        if bodies and _is_unfocused(lens.mount):
            yield focusing_kit(question, lens, bodies[0], knowledge)
    yield _spacer(question, lenses)
    if question.said("magnification") is not None and len(question.lenses) == 1:
        from engine.answers.closeup import macro

        yield tubes_for_size(question, lenses, bodies, knowledge)
        close = macro(question, knowledge)
        yield Told(close.lines, close.quantities)


def _is_unfocused(mount: Mount) -> bool:
    return "no-focusing" in mount.traits


def _pieces(answer: Answer | None) -> Interval | None:
    """How many pieces the pairs take together, each bought once; None where no pairs are told."""
    counts = (row.value for row in answer.quantities if row.name == "adapter_count") if answer else iter(())
    return next((count for count in counts if isinstance(count, Interval)), None)


def _spacer(question: Question, lenses: Sequence[LensSide]) -> Told:
    """Whether a spacer is needed: what it fills up to the register that the ring is made for."""
    length = next((thing.thickness_mm[1] for thing in question.adapters if thing.thickness_mm is not None), None)
    length = length if length is not None else number(question, "thickness", "length")
    lens = next((side for side in lenses if "thread-only" in side.mount.traits or side.mount.kind == "astro"), None)
    if length is None or lens is None or not is_known(lens.mount.register_mm):
        return Told()
    register = lens.mount.register_mm
    text = (
        f"{lens.mount.designation} wants {small_mm(register.nominal)} from its seat to the sensor. Where ring and body"
        f" give {small_mm(register.nominal - length)}, the {small_mm(length)} is needed; where they give it already,"
        " leave it out. Measure ring and body flange first."
    )
    rows = (
        Quantity("stack_mm", register, "seat to sensor"), Quantity("shim_mm", Interval.exact(length), "the spacer"),
    )  # fmt: skip
    return Told((Line("head", text),), rows)
