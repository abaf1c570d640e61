"""What a term, mount, thread, format or adapter is; what fits a body; where a lens fits."""

from __future__ import annotations

from collections.abc import Iterator

from engine.answers.answer import ANSWERED, NO, Answer, Line, Quantity
from engine.answers.howto import ask_for
from engine.answers.knowledge import Knowledge, choose
from engine.answers.lookalike import mount_line
from engine.answers.making import ring_to_make
from engine.answers.resolve import Missing, body_side, lens_side, setup_of
from engine.answers.telling import CERTAINTY_WORDS, VERDICT_WORDS, chain_title, unknown_line
from engine.answers.wording import listed, money, small_mm, trimmed
from engine.base.interval import is_known
from engine.facts.records import VERDICTS, Adapter, Format, Mount, Thread
from grammar.questions import Limits, Question, Thing

FITTING_PIECES = 2  # what fits a body is told for one ring, or two
MOST_LISTED = 24


def definition(question: Question, knowledge: Knowledge) -> Answer:
    """What each thing that the question names is."""
    lines: list[Line] = []
    quantities: list[Quantity] = []
    for thing in (*question.things, *question.lenses, *question.bodies, *question.adapters):
        for name in thing.ids[:3]:
            lines += list(_about(thing.kind, name, knowledge, quantities))
    if not lines:
        what = question.topic or "that"
        return Answer(
            question.text, "definition", NO,
            (Line("text", f"'{what}' is not among the terms, mounts, threads and adapters known here."),),
            question=question,
        )  # fmt: skip
    return Answer(question.text, "definition", ANSWERED, tuple(lines), question=question, quantities=tuple(quantities))


def _about(kind: str, name: str, knowledge: Knowledge, quantities: list[Quantity]) -> Iterator[Line]:
    facts = knowledge.catalogue
    if kind == "term" and name in facts.terms:
        term = facts.terms[name]
        yield Line("head", f"{term.names[0]}: {term.means}")
    elif kind == "advice" and name in facts.advice:
        advice = facts.advice[name]
        yield Line("head", f"{advice.topic}: {advice.says}")
        if advice.defer_to:
            yield Line("text", f"Ask: {advice.defer_to}.")
    elif kind == "mount" and name in facts.mounts:
        yield from _mount(facts.mounts[name], knowledge, quantities)
    elif kind == "thread" and name in facts.threads:
        yield from _thread(facts.threads[name], quantities)
    elif kind == "format" and name in facts.formats:
        yield from _format(facts.formats[name], quantities)
    elif kind == "adapter" and name in facts.adapters:
        yield from _adapter(facts.adapters[name], quantities)
    elif kind == "lens" and name in facts.lenses:
        lens = facts.lenses[name]
        yield Line("head", f"{lens.name}: a lens of your own with {facts.mounts[lens.mount].designation} mount.")
        if lens.note:
            yield Line("text", lens.note)
    elif kind == "body" and name in facts.bodies:
        body = facts.bodies[name]
        yield Line(
            "head", f"{body.name}: {facts.mounts[body.mount].designation} mount, {facts.formats[body.format].name}."
        )


def _mount(mount: Mount, knowledge: Knowledge, quantities: list[Quantity]) -> Iterator[Line]:
    yield Line("head", f"{mount.designation}: {mount.kind.replace('-', ' ')} mount; {mount_line(mount, knowledge)}.")
    if is_known(mount.register_mm):
        quantities.append(Quantity("register_mm", mount.register_mm, mount.id))
    if is_known(mount.throat_mm):
        yield Line("fact", f"throat {trimmed(mount.throat_mm.nominal, 1)} mm", 1)
    if mount.format and mount.format in knowledge.catalogue.formats:
        yield Line("fact", f"largest format {knowledge.catalogue.formats[mount.format].name}", 1)
    if mount.note:
        yield Line("text", mount.note, 1)
    if mount.register_note:
        yield Line("text", f"On the register: {mount.register_note}", 1)
    if mount.look_alikes:
        names = [
            knowledge.catalogue.mounts[name].designation if name in knowledge.catalogue.mounts else name
            for name in mount.look_alikes
        ]
        yield Line("fact", f"not to be taken for: {listed(names)}", 1)
    yield Line("fact", f"{mount.basis.confidence.replace('-', ' ')}; source {listed(mount.basis.sources)}", 1)


def _thread(thread: Thread, quantities: list[Quantity]) -> Iterator[Line]:
    pitch = f", pitch {trimmed(thread.pitch_mm.nominal, 3)} mm" if is_known(thread.pitch_mm) else ""
    yield Line("head", f"{thread.designation}: {trimmed(thread.major_mm.nominal, 3)} mm across{pitch}.")
    quantities.append(Quantity("thread_diameter_mm", thread.major_mm, thread.id))
    if is_known(thread.pitch_mm):
        quantities.append(Quantity("thread_pitch_mm", thread.pitch_mm, thread.id))
    for text in (thread.used_for, thread.note):
        if text:
            yield Line("fact", text, 1)


def _format(form: Format, quantities: list[Quantity]) -> Iterator[Line]:
    from engine.base.interval import Interval

    size = f"{trimmed(form.width_mm, 2)} x {trimmed(form.height_mm, 2)} mm"
    yield Line("head", f"{form.name}: {size}, diagonal {trimmed(form.diagonal_mm, 2)} mm.")
    quantities.append(Quantity("format_diagonal_mm", Interval.exact(form.diagonal_mm), form.id))


def _adapter(adapter: Adapter, quantities: list[Quantity]) -> Iterator[Line]:
    shortest, longest = adapter.thickness_mm.shortest, adapter.thickness_mm.longest
    seat = "seat not known"
    if is_known(shortest) and is_known(longest):
        seat = f"seat {small_mm(shortest.nominal)}"
        if not adapter.thickness_mm.is_fixed:
            seat += f" to {small_mm(longest.nominal)}"
        elif shortest.nominal:
            quantities.append(Quantity("ring_thickness_mm", shortest, adapter.id))
    price = f"; {money(adapter.price_usd)}" if adapter.price_usd else ""
    yield Line("head", f"{adapter.name}: {adapter.kind.replace('-', ' ')}, {seat}{price}.")
    if adapter.note:
        yield Line("text", adapter.note, 1)


def list_fits(question: Question, knowledge: Knowledge) -> Answer:
    """Which lens mounts a body takes, or which bodies a lens fits, best first, with the ring for each."""
    lens, body = question.lens, question.body
    if lens is None and body is None:
        return ask_for(question, (Missing("lens", "What fits what? Name a body (E-mount) or a lens mount (C-mount)."),))
    if lens is not None and body is not None:
        return _each_lens(question, knowledge)
    names = _partners(lens, body, knowledge)
    rows = []
    for name in names:
        pair = (lens, Thing("mount", (name,), name)) if lens is not None else (Thing("mount", (name,), name), body)
        row = _fit(pair[0], pair[1], name, question, knowledge)
        if row is not None:
            rows.append(row)
    return _told(question, rows, knowledge)


def _each_lens(question: Question, knowledge: Knowledge) -> Answer:
    rows = []
    for lens in question.lenses:
        for body in question.bodies:
            row = _fit(lens, body, lens.id or "", question, knowledge)
            if row is not None:
                rows.append(row)
    return _told(question, rows, knowledge)


Row = tuple[tuple[object, ...], list[Line], list[Quantity]]


def _fit(lens: Thing | None, body: Thing | None, case: str, question: Question, knowledge: Knowledge) -> Row | None:
    one, other = lens_side(lens, knowledge.catalogue), body_side(body, knowledge.catalogue)
    if isinstance(one, Missing) or isinstance(other, Missing):
        return None
    setup = setup_of(one, other, knowledge.catalogue, question.f_number)
    pieces = question.limits.pieces if question.limits.pieces is not None else FITTING_PIECES
    from engine.base.compact import replace

    limits: Limits = replace(question.limits, pieces=pieces, without_glass=not question.limits.with_glass)
    choice = choose(knowledge, setup, limits, 1)
    if not choice.listed:
        return None
    best = choice.listed[0]
    if question.topic == "infinity" and best.judged.verdict != "infinity":
        return None
    ring = ring_to_make(setup, knowledge.catalogue)
    name = setup.body_mount.designation if question.body is None else setup.lens_mount.designation
    told = f"{VERDICT_WORDS[best.judged.verdict]} ({CERTAINTY_WORDS[best.judged.certainty]})"
    if best.judged.certainty == "unknown":
        told = unknown_line(best.judged)
    seat = f"; ring for infinity {small_mm(ring.thickness_mm.nominal)}" if ring.thickness_mm is not None else ""
    line = Line("fact", f"{name}: {told}; {chain_title(best.judged, knowledge)}{seat}", 1)
    numbers = [Quantity("ring_thickness_mm", ring.thickness_mm, case)] if ring.thickness_mm is not None else []
    key = (VERDICTS.index(best.judged.verdict), len(best.judged.chain.adapters), name)
    return key, [line], numbers


def _partners(lens: Thing | None, body: Thing | None, knowledge: Knowledge) -> list[str]:
    """The mounts that one or two rings lead to (from a lens) or that lead here (to a body)."""
    rings, joints = knowledge.rings, knowledge.joints
    if lens is not None:
        start = _mount_of(lens, knowledge)
        reached = {start}
        for _ in range(FITTING_PIECES):
            reached |= {rear for front in reached for rear in rings.onward.get(front, {})}
            reached |= {joint.rear for front in reached for joint in joints.onward(front)}
        return sorted(name for name in reached if _is_body_mount(name, knowledge))
    goal = _mount_of(body, knowledge)
    reached = {goal} | set(rings.backward.get(goal, ())) | set(joints.into(goal))
    return sorted(name for name in reached if "thread-only" not in knowledge.catalogue.mounts[name].traits)


def _mount_of(thing: Thing | None, knowledge: Knowledge) -> str:
    if thing is None or thing.id is None:
        return ""
    if thing.kind == "lens":
        return knowledge.catalogue.lenses[thing.id].mount
    if thing.kind == "body":
        return knowledge.catalogue.bodies[thing.id].mount
    return thing.id


def _is_body_mount(name: str, knowledge: Knowledge) -> bool:
    traits = knowledge.catalogue.mounts[name].traits
    return "thread-only" not in traits and "lens-side-only" not in traits


def _told(question: Question, rows: list[Row], knowledge: Knowledge) -> Answer:
    what = "with infinity" if question.topic == "infinity" else "with one or two rings"
    if not rows:
        return Answer(
            question.text, "list-fits", NO, (Line("head", f"Nothing in the facts fits {what}."),), question=question
        )
    rows.sort(key=lambda row: row[0])
    lines = [Line("head", f"{len(rows)} fit {what}, best first:")]
    quantities: list[Quantity] = []
    for _, told, numbers in rows[:MOST_LISTED]:
        lines += told
        quantities += numbers
    if len(rows) > MOST_LISTED:
        lines.append(Line("note", f"{len(rows) - MOST_LISTED} more are left out."))
    return Answer(question.text, "list-fits", ANSWERED, tuple(lines), question=question, quantities=tuple(quantities))
