"""A part to make: seat, threads, bore, tolerance, and the stack that puts a lens where it is wanted."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice, product

from engine.answers.calibrate import layers
from engine.answers.exposure.holes import holes_for
from engine.answers.found.threads_told import threads_told
from engine.answers.making.named_ring import as_pair
from engine.answers.making.part_left import part_left, part_there_mm, without_part
from engine.answers.making.printed import drawn_larger, is_printed
from engine.answers.making.simple_glass import held_at
from engine.answers.making.thread_lengths import as_long_as, thread_length
from engine.answers.making.whole_ring import stock_left
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, Quantity, RingToMake, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import LEAST, ONLY_NAMED, SURE
from engine.answers.parts.pitch_drift import drift
from engine.answers.parts.resolve import BodySide, LensSide, Missing, body_side, goes_on, lens_side, setup_of
from engine.answers.parts.said import focals, lengths_of_pieces, mentions, number
from engine.answers.parts.wording import article, small_mm, trimmed
from engine.answers.picture.filters import filter_answer, for_filters
from engine.answers.picture.hoods import hood_answer, is_of_hood
from engine.answers.seat.bores import bore_for, tube_for
from engine.answers.seat.making import ring_to_make
from engine.answers.seat.open_lens import usual_room
from engine.answers.seat.told_register import with_mount_by_register, without_paper
from engine.answers.shims.error_told import error_judged
from engine.answers.shims.how_exact import asks_how_exact, how_exact
from engine.answers.shims.screwed_in import screwed_in
from engine.answers.shims.spacers import by_spacers
from engine.answers.shims.turning import turns_for_travel
from engine.answers.ways.pair_beside import with_pair
from engine.answers.ways.pairs import as_measured, body_as_measured
from engine.answers.ways.ring_off import off_right
from engine.answers.ways.told_stack import held_on_tube, is_drawn_out, is_set_by_draw
from engine.answers.words.advice import advice_lines, named_or_near
from engine.answers.words.pitch_said import pitch_said
from engine.base.interval import Interval, is_known
from engine.base.units import MM_PER_INCH
from engine.chains.setup import Setup
from engine.facts.records import Mount
from grammar.questions import BODY_OFF, Question, Thing

MOST_RINGS = 4
LONGEST_RING = 60.0  # mm
PITCH_WANTED = "pitch-wanted"  # mentioned where the pitch of a thread is asked first of all
PRINTED = "printed-seat"  # the advice for those who print one


def to_make(question: Question, knowledge: Knowledge) -> Answer:
    """The dimensions that follow from the mounts and numbers told, then the advice that the words are about."""
    if is_of_hood(question):
        return hood_answer(question, knowledge)
    if for_filters(question, knowledge.catalogue):
        return filter_answer(question, knowledge)
    question = with_mount_by_register(without_paper(as_pair(question, knowledge.catalogue), knowledge), knowledge)
    stacked = by_spacers(question, "diy-dimension", knowledge) or held_on_tube(question, "diy-dimension", knowledge)
    ring = None
    if stacked is not None:
        return stacked
    if is_set_by_draw(question):
        from engine.answers.howto import how_to  # where it is set follows from the chain

        return how_to(question, knowledge, "diy-dimension")
    there = part_there_mm(question)
    question = without_part(question) if there is not None else question
    matters = error_judged(question, knowledge)
    told = matters.told
    for part in (screwed_in(question, knowledge), off_right(question, knowledge), turns_for_travel(question, knowledge),
                 drift(question, knowledge)):  # fmt: skip
        told = told + part
    stack = _stack(question, knowledge)
    told += stack
    # what is drawn out stands in the ring's place
    for part, made in _rings(question, knowledge) if not is_drawn_out(question) else ():
        told, ring = told + part, ring or made
    told = part_left(there, ring) + told + stock_left(question, ring)
    apart = holes_for(question) + held_at(question, knowledge)
    told = holes_for(question) + drawn_larger(question, ring) + told + held_at(question, knowledge)
    told += _before_tapping(question, knowledge) + as_long_as(question, knowledge)
    bored = bore_for(question, knowledge)
    told += (tube_for(question, knowledge) if ring is None and bored.lines else Told()) + bored
    told = (pitch_said(question) if ring is None else Told()) + told
    if not told.lines and _hangs_on_lens(question):
        from engine.answers.howto import how_to  # what its length hangs on, as where a way is asked

        return how_to(question, knowledge, "diy-dimension")
    if not apart.lines and not matters.told.lines:
        exact = how_exact(question, knowledge)
        told = exact + told if asks_how_exact(question) else told + exact
    told += layers(question, knowledge) if question.said("stock") is None else Told()
    named = _threads_named(question, knowledge)
    told = named + told if mentions(question, PITCH_WANTED) else told + named
    bore_alone = bored.lines and (ring is None or ring.thickness_mm is None)
    settles = bool(stack.lines or apart.lines or bore_alone)  # what was asked for is worked out, and needs no advice
    rows = named_or_near(question, knowledge, 2, ONLY_NAMED if settles else SURE if told.lines else LEAST)
    printed = knowledge.catalogue.advice.get(PRINTED)
    if printed is not None and is_printed(question) and printed not in rows:
        rows = [printed, *rows[:1]]
    lines = [*told.lines, *advice_lines(rows)]
    settled = any(row.name == "register_error_mm" for row in told.quantities)
    settled = settled or bool(bored.lines)
    if ring is None and question.body is None and not settled and any(thing.ids for thing in question.lenses):
        lines.append(Line("ask", "For which body? Its mount tells how thick a ring must be."))
    if not lines:
        lines = [Line("ask", "A ring from which lens mount to which body mount?")]
    answer = Answer(
        question.text, "diy-dimension", ANSWERED if told.lines or rows else NO, tuple(lines), question=question,
        ring=ring, chains=matters.chains or None, quantities=told.quantities,
    )  # fmt: skip
    return with_pair(answer, question, knowledge)


def _hangs_on_lens(question: Question) -> bool:
    """'how long a ring for my lens to E': the body is told, and nothing of how the lens is held."""
    plain = bool(question.lenses) and not any(one.ids for one in question.lenses)
    bare = not any(one.ids or one.front or one.thickness_mm for one in question.adapters)
    other = is_printed(question) or question.mentions(PITCH_WANTED) or question.mentions("error-spoken")
    other = other or asks_how_exact(question)
    return plain and bare and question.body is not None and not other


def _rings(question: Question, knowledge: Knowledge) -> Iterator[tuple[Told, RingToMake | None]]:
    """The ring for every lens mount named, on each body named; turned round where only that way is a ring."""
    facts = knowledge.catalogue
    bodies = [side for thing in question.bodies if isinstance(side := body_side(thing, facts), BodySide)]
    fronts = [thing for thing in question.lenses if thing.ids]
    named = [Thing("mount", piece.front[:1], piece.words) for piece in question.adapters if piece.front]
    fronts += [thing for thing in named if thing.id not in {lens.id for lens in fronts}]
    for thing, body in islice(product(fronts, bodies), MOST_RINGS):
        lens = lens_side(thing, facts)
        if isinstance(lens, Missing) or lens.mount.id == body.mount.id or not goes_on(question, lens, body):
            continue
        setup = setup_of(as_measured(lens, question), body_as_measured(body, question), facts, question.f_number)
        ring = ring_to_make(setup, facts)
        # told as a lens it is not meant the other way round
        turned = _turned(setup, knowledge) if ring.possible == "no" and not _is_plainly_lens(thing, question) else None
        yield _told(setup, ring, knowledge, f"{lens.mount.id} on {body.mount.id}"), None if turned else ring
        if turned is not None:
            yield _told(*turned, knowledge, f"{turned[0].lens_mount.id} on {turned[0].body_mount.id}"), turned[1]


def _is_plainly_lens(thing: Thing, question: Question) -> bool:
    """Whether more than a mount is told of it: a focal length, a barrel, that it is a lens."""
    told = thing.focal_length_mm or thing.f_number or thing.lens_kind or question.said("barrel")
    return bool(told) or mentions(question, "lens-said")


def _turned(setup: Setup, knowledge: Knowledge) -> tuple[Setup, RingToMake] | None:
    """The same two mounts the other way round, where that can be a ring."""
    facts = knowledge.catalogue
    lens = lens_side(Thing("mount", (setup.body_mount.id,), ""), facts)
    body = body_side(Thing("mount", (setup.lens_mount.id,), ""), facts)
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)):
        return None
    other = setup_of(lens, body, facts)
    ring = ring_to_make(other, facts)
    return (other, ring) if ring.possible != "no" else None


def _told(setup: Setup, ring: RingToMake, knowledge: Knowledge, case: str) -> Told:
    lens, body = setup.lens_mount, setup.body_mount
    who = f"{lens.designation} lens on {article(body.designation)} {body.designation} body"
    if ring.thickness_mm is None:
        room = usual_room(setup, knowledge.catalogue)
        return room if room.lines else Told((Line("head", f"{who}: {ring.why}."),))
    size = small_mm(ring.thickness_mm.nominal)
    kind = {"plain": "a plain ring", "recessed": "a cup", "no": "not a ring"}[ring.possible]
    head = f"{who}: {kind}, seat {size} from lens flange to body flange ({ring.why})."
    rows = [Quantity("ring_thickness_mm", ring.thickness_mm, case)]
    if ring.thickness_mm.nominal > LONGEST_RING:
        rows.append(Quantity("stack_mm", ring.thickness_mm, case))  # so long it is made up of tubes
    facts = [f"front takes {_face(lens, knowledge)}, rear is {_face(body, knowledge)}"]
    for mount in (lens, body):
        length = thread_length(mount, knowledge)
        if length is not None:
            rows.append(Quantity("thread_length_mm", length, f"{mount.id} side"))
            facts.append(
                f"thread on the {mount.designation} side {trimmed(length.least, 2)} to {trimmed(length.greatest, 2)} mm"
                " long at most"
            )
    if is_known(body.throat_mm):
        facts.append(
            f"throat of {body.designation} {trimmed(body.throat_mm.nominal, 1)} mm: everything behind the flange must"
            " pass it"
        )
    usual = knowledge.catalogue.assumptions
    flat, spare = usual["faces-parallel"].value.nominal, usual["left-to-take-down"].value.nominal
    facts.append(
        f"faces parallel within {small_mm(flat)}, inside matt black; leave it {small_mm(spare)} thick and take it down "
        "on a far target"
    )
    lines = (
        [Line("head", head), *(Line("fact", text, 1) for text in facts)]
        if ring.possible != "no"
        else [Line("head", head)]
    )
    return Told(tuple(lines), tuple(rows))


def _face(mount: Mount, knowledge: Knowledge) -> str:
    thread = knowledge.catalogue.threads.get(mount.thread or "")
    if thread is not None:
        return f"the thread {thread.designation}"
    return f"the {mount.designation} {mount.coupling.replace('-', ' ')}"


def _stack(question: Question, knowledge: Knowledge) -> Told:
    """The stack that holds a shoulder at a wanted distance from the sensor."""
    wanted, body = number(question, "flange_to_image"), body_side(question.body, knowledge.catalogue)
    if wanted is None or isinstance(body, Missing) or not is_known(body.mount.register_mm) or question.said(BODY_OFF):
        return Told()
    stack = wanted - body.mount.register_mm
    register = trimmed(body.mount.register_mm.nominal, 3)
    text = (
        f"{trimmed(wanted, 2)} - {register} = {small_mm(stack.nominal)} from the {body.mount.designation} flange to the"
        " shoulder."
    )
    rows = [Quantity("stack_mm", stack, "shoulder to body flange")]
    if not any(thing.ids for thing in question.lenses):
        rows.append(Quantity("ring_thickness_mm", stack, "by the register told"))
    lines = [Line("head", text)]
    times = number(question, "magnification")
    if times is not None and focals(question):
        more = times * focals(question)[0]
        whole = stack.nominal + more
        rows.append(Quantity("stack_mm", Interval.exact(whole), f"for {trimmed(times, 2)}x"))
        text = f"For {trimmed(times, 2)}x another {small_mm(more)} of extension: {small_mm(whole)} in all."
        lines.append(Line("head", text))
    for low, high in lengths_of_pieces(question):
        if low == high:
            continue
        rest = stack.nominal - low
        if rest < 0:
            lines.append(
                Line("head", f"A helicoid of {trimmed(low, 2)} mm shut is {small_mm(-rest)} too long for that.")
            )
            continue
        rows.append(Quantity("stack_mm", Interval.exact(rest), "without the helicoid"))
        lines.append(Line("head", (
            f"Less the helicoid shut, {trimmed(low, 2)} mm, the other parts are {small_mm(rest)} together, better up to"
            f" a millimetre less, so that it goes a little past infinity; drawn out it gives {small_mm(high - low)}."
        )))  # fmt: skip
    return Told(tuple(lines), tuple(rows))


def _threads_named(question: Question, knowledge: Knowledge) -> Told:
    """The threads on the two sides of the pieces and lenses named: what has to be cut or bought."""
    facts = knowledge.catalogue
    ids = [name for thing in question.adapters for name in (*thing.front[:1], *thing.rear[:1])]
    ids += [name for thing in (*question.lenses, *question.bodies) if thing.kind == "mount" for name in thing.ids[:1]]
    lines, rows, wanted = [], [], mentions(question, PITCH_WANTED)
    for name in dict.fromkeys(name for name in ids if name in facts.mounts):
        thread = facts.threads.get(facts.mounts[name].thread or "")
        if thread is None:
            continue
        rows.append(Quantity("thread_diameter_mm", thread.major_mm, name))
        text = f"{facts.mounts[name].designation}: thread {trimmed(thread.major_mm.nominal, 2)} mm"
        if is_known(thread.pitch_mm):
            rows.append(Quantity("thread_pitch_mm", thread.pitch_mm, name))
            pitch = thread.pitch_mm.nominal
            text += f", pitch {trimmed(pitch, 3)} mm ({trimmed(MM_PER_INCH / pitch, 2)} tpi)"
        if wanted and is_known(thread.form_angle_deg):
            text += f", flanks at {trimmed(thread.form_angle_deg.nominal, 1)} degrees"
        text += f": {thread.designation}"
        lines.append(Line("head", f"{text}.") if wanted else Line("fact", text, 1))
    return Told(tuple(lines), tuple(rows))


def _before_tapping(question: Question, knowledge: Knowledge) -> Told:
    """The bore that a thread is cut in: the limits of the internal thread's minor diameter, where they are known."""
    if not mentions(question, "female-or-bore") or _is_of_outside(question):
        return Told()
    facts = knowledge.catalogue
    named = [facts.mounts[id_].thread for thing in question.lenses for id_ in thing.ids[:1] if id_ in facts.mounts]
    named += [thread.id for thread in threads_told(question, knowledge)]
    lines, rows = [], []
    for thread in facts.threads.values():
        pitch, bore = thread.pitch_mm, thread.female_minor_mm
        if not (is_known(pitch) and is_known(bore)):
            continue
        if thread.id not in named:
            continue
        if mentions(question, "held-by-nut"):
            clear = thread.major_mm + facts.assumptions["clear-hole"].value
            rows.append(Quantity("bore_mm", clear, f"{thread.id}, clear"))
            size = f"{trimmed(clear.least, 2)} to {trimmed(clear.greatest, 2)} mm"
            lines.append(Line("head", f"A plain hole of {size}: the thread goes through, and the nut holds it behind."))
        rows.append(Quantity("bore_mm", bore, thread.id))
        text = f"Bore {trimmed(bore.least, 2)} to {trimmed(bore.greatest, 2)} mm before cutting {thread.designation}"
        lines.append(Line("head", f"{text}; the wide end for plastic."))
    return Told(tuple(lines), tuple(rows))


def _is_of_outside(question: Question) -> bool:
    """Whether it is the bar that a thread is cut on, and no hole: 'how wide do I turn the rod before cutting'."""
    return mentions(question, "blank-turned") and not mentions(question, "bored-for")
