"""What looks like a mount, and what goes wrong when it is taken for it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from engine.answers.found.by_register import beside_register
from engine.answers.found.dropped_through import dropped_through
from engine.answers.found.mounts_named import bodies_meant, likeliest, mounts_named, names_typed, of_ring, spoken_of
from engine.answers.found.not_by_thread import of_another_width
from engine.answers.found.same_name import (
    SAME,
    SAME_TOPIC,
    all_the_same,
    asked_of_a_name,
    by_one_name_line,
    named_alike,
    of_one_thread,
    of_the_name,
    registers_alike,
    same_or_not,
    told_by_one_name,
    what_is_shared,
    widths_apart,
)
from engine.answers.found.screwed_in import binds_after, screwed_in
from engine.answers.found.threads_measured import by_ruler, by_thread
from engine.answers.found.threads_meet import threads_meet
from engine.answers.found.turned_in import turned_in
from engine.answers.parts.answer import ANSWERED, Answer, Line, ListedChain, Quantity, Told
from engine.answers.parts.asking_back import ask_for
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import at_wrong_depth, mount_line, mount_numbers
from engine.answers.parts.nearby import PLAIN, nearest
from engine.answers.parts.resolve import Missing
from engine.answers.parts.wording import SEAT_READS_MM, article, listed, small_mm
from engine.answers.seat.mixing import mixed, mixed_lines, named_advice, set_apart, traps_of_the_same
from engine.answers.seat.told_register import against_name
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.kinds import VERDICTS
from engine.facts.records import Mount
from engine.physics.mating import Mating
from grammar.questions import Question

IN_IT = ("same", "binds", "loose", "bayonet")  # how what fools the hand goes together
MOST_BESIDE = 6
MOST_IN_FULL = 3  # of more mounts only what they are is told, not what each meets


def look_alike(question: Question, knowledge: Knowledge) -> Answer:
    """Every mount whose thread or bayonet meets that of the mount asked about, with the outcome in both directions."""
    dropped = dropped_through(question, knowledge)
    if dropped is not None:
        return dropped
    question = of_ring(question)
    answer = _alike(question.with_(bodies=bodies_meant(question)), knowledge)
    return replace(answer, question=question)  # the body is talked of still


def _alike(question: Question, knowledge: Knowledge) -> Answer:
    mounts = list(dict.fromkeys(mount.id for mount in mounts_named(question, knowledge)))
    mounts = mounts or spoken_of(question, knowledge)
    met = turned_in(question, knowledge) + threads_meet(question, knowledge)
    if not mounts:
        if not met.lines and question.said("thread") is not None:
            met, _ = by_thread(question, knowledge)
        met = met if met.lines else beside_register(question, knowledge)
        asked = ask_for(question, (Missing("lens mount", "Which mount or thread? For example: what looks like M42?"),))
        rows = nearest(question.text, knowledge.catalogue, 1, PLAIN)  # 'are all screw lenses alike?'
        near = [Line("head", f"{row.topic}: {row.says}") for row in rows]
        return _answer(question, met) if met.lines else replace(asked, lines=(*near, *asked.lines))
    by_one_name = asked_of_a_name(question) or (
        told_by_one_name(question, knowledge.catalogue) if not met.lines else ()
    )
    mounts = list(by_one_name) or mounts
    several = len((*question.lenses, *question.things, *question.adapters, *question.bodies)) > 1
    not_so = against_name(question, knowledge)
    firsts = likeliest(question, knowledge)
    chains = mixed(mounts, knowledge) if several else ()
    if by_one_name:
        told = met + Told((by_one_name_line(by_one_name, knowledge),))
    else:
        told = not_so + met + _whether_same(question, mounts, firsts, chains, bool(met.lines), knowledge)
    told += Told(tuple(of_the_name(question, knowledge)))
    told += _each(mounts, several, knowledge)
    told = by_ruler(question, mounts, knowledge) + told + Told((), tuple(_differences(mounts, knowledge)))
    told += _rings_between(mounts, set(firsts), knowledge) if several else Told()
    apart = set_apart(mounts, knowledge)
    lines = [*told.lines, *mixed_lines(chains, question.feet), *apart.lines]
    if any(line.text.startswith(SAME) for line in lines[:2]):
        lines[1:1] = traps_of_the_same(mounts, knowledge)
    advice = knowledge.catalogue.advice.get("cross-thread")
    if advice is not None and any(knowledge.catalogue.mounts[name].coupling == "screw" for name in mounts):
        lines.append(Line("caution", f"{advice.says.rstrip('.')}."))
    lines += [line for line in named_advice(question, mounts, knowledge) if line not in lines]
    return _answer(question, Told(tuple(lines), (*told.quantities, *apart.quantities)), chains)


def _answer(question: Question, told: Told, chains: tuple[ListedChain, ...] = ()) -> Answer:
    return Answer(
        question.text, "look-alike", ANSWERED, told.lines, question=question, chains=chains or None,
        quantities=told.quantities,
    )  # fmt: skip


def _whether_same(
    question: Question,
    mounts: list[str],
    firsts: Sequence[str],
    chains: tuple[ListedChain, ...],
    met: bool,
    knowledge: Knowledge,
) -> Told:
    """Whether what is named is one mount or two, first of all. `met`: whether threads told have been answered."""
    facts = knowledge.catalogue
    if len(set(firsts)) == 2:
        one, other = (facts.mounts[name] for name in dict.fromkeys(firsts))
        screwed = screwed_in(one, other, knowledge) if question.mentions("goes-into") else ""
        said = same_or_not(one, other, knowledge, _barred(chains))
        screwed = screwed or widths_apart(one, other, knowledge)
        return Told(tuple(Line("head", text) for text in (said, screwed) if text))
    if len(mounts) == 1 and _asks_of_thread(question, facts.mounts[mounts[0]]):
        wider = of_another_width(question, facts.mounts[mounts[0]], knowledge)
        return wider if wider.lines else Told(tuple(of_one_thread(facts.mounts[mounts[0]], knowledge)))
    if len(set(firsts)) > 2 and (question.topic == SAME_TOPIC or question.mentions("as-one-mount")):
        return Told((Line("head", all_the_same(firsts, knowledge)),))
    if len(firsts) > 1 and len(set(firsts)) == 1 and len(mounts) > 1:
        return Told((Line("head", "No, the name alone does not make them the same: several mounts go by it."),))
    if len(mounts) != 1 or met:
        return Told()
    alike = tuple(named_alike(mounts[0], knowledge))
    same = Line("head", f"{SAME} one and the same {what_is_shared(facts.mounts[mounts[0]], knowledge)}.")
    of_pieces = any(piece.front == (mounts[0],) for piece in question.adapters)  # '52mm filter thread vs m52 helicoid'
    return Told(
        (same, *alike) if len(names_typed(question)) > 1 or of_pieces else alike,
        tuple(registers_alike(mounts[0], knowledge)),
    )


def _each(mounts: list[str], several: bool, knowledge: Knowledge) -> Told:
    """Each mount with what it meets; of many only what each is. `several`: others are named beside it."""
    lines: list[Line] = []
    quantities: list[Quantity] = []
    beside: list[Quantity] = []  # numbers of what goes into the one mount that is asked about
    if len(mounts) > MOST_IN_FULL:
        lines.append(Line("head", f"{len(mounts)} mounts go by that name. Not all are the same:"))
    for name in mounts:
        mount = knowledge.catalogue.mounts[name]
        if len(mounts) > MOST_IN_FULL:
            lines.append(Line("fact", f"{mount.designation}: {mount_line(mount, knowledge)}", 1))
        else:
            lines += list(_about(mount, mounts if several else [name], knowledge))
            alike = [row for row in _neighbours(mount, knowledge) if row[1] in IN_IT] if not several else []
            beside += [one for row in alike[:MOST_BESIDE] for one in mount_numbers(row[0], knowledge)]
        quantities += mount_numbers(mount, knowledge)
    return Told(tuple(lines), (*quantities, *beside))


def _asks_of_thread(question: Question, mount: Mount) -> bool:
    """'is M42x1 the same as M42': a thread named beside the mount that has it."""
    return mount.thread is not None and question.said("thread") is not None


def _barred(chains: Sequence[ListedChain]) -> list[str]:
    """Which lens on which body is not to be had, though the parts may go together."""
    setups = [row.listed.judged.setup for row in chains if row.listed.judged.verdict == VERDICTS[-1]]
    return [f"{one.lens_mount.designation} on {one.body_mount.designation}" for one in setups]


def _differences(mounts: list[str], knowledge: Knowledge) -> list[Quantity]:
    """For two or more mounts named alike: the longer register less each shorter one, in mm."""
    known = [knowledge.catalogue.mounts[name] for name in mounts]
    rows = [(mount, mount.register_mm) for mount in known if is_known(mount.register_mm)]
    out = []
    for n, (one, first) in enumerate(rows):
        for other, second in rows[n + 1 :]:
            out.append(Quantity("register_difference_mm", abs(first - second), f"{one.id}, {other.id}"))
    return out


def _rings_between(mounts: list[str], firsts: set[str], knowledge: Knowledge) -> Told:
    """For mounts of one thread, or two bayonets: the ring that makes the longer register right on the shorter."""
    facts = knowledge.catalogue
    known = [facts.mounts[name] for name in mounts]
    told = Told()
    for lens in known:
        for body in known:
            bayonets = {lens.id, body.id} == firsts and "screw" not in (lens.coupling, body.coupling)
            if not bayonets and (not lens.thread or lens.thread != body.thread):
                continue
            if is_known(lens.register_mm) and is_known(body.register_mm):
                ring = lens.register_mm - body.register_mm
                if ring.least <= facts.assumptions["making-spread-derived"].value.greatest:
                    continue
                one, other = lens.designation, body.designation
                text = (
                    f"A ring of {small_mm(ring.nominal)} between makes {article(one)} {one} lens right on"
                    f" {article(other)} {other} body"
                    + ("." if bayonets else f"; {article(other)} {other} lens goes on without.")
                )
                told += Told((Line("text", text),), (Quantity("ring_thickness_mm", ring, f"{lens.id} to {body.id}"),))
    return told


def _about(mount: Mount, asked: list[str], knowledge: Knowledge) -> Iterator[Line]:
    yield Line("head", f"{mount.designation}: {mount_line(mount, knowledge)}.")
    rows = list(_neighbours(mount, knowledge))
    if len(asked) > 1:
        rows = [row for row in rows if row[0].id in asked] or rows[:4]
    else:
        rows = [row for row in rows if row[1] != "apart"]
    for other, outcome, text in rows:
        yield Line("fact", f"{other.designation} ({mount_line(other, knowledge)}): {text}", 1)
        if outcome in ("binds", "apart"):
            yield Line("danger", "do not force it: stop at the first resistance", 2)
    if mount.look_alikes and not rows:
        yield Line("fact", f"taken for: {listed(mount.look_alikes)}", 1)
    if not rows and not mount.look_alikes:
        yield Line("text", "Nothing in the facts is known to be taken for it.", 1)


def alike_lines(mount: Mount, knowledge: Knowledge) -> Iterator[Line]:
    """What passes for a mount, as lines of another answer."""
    yield from _about(mount, [mount.id], knowledge)


def taking_it_too(mount: Mount, knowledge: Knowledge) -> Iterator[tuple[Mount, str]]:
    """Every other mount that a lens goes home in, in words with its register, likeliest first."""
    for other, outcome, text in _neighbours(mount, knowledge):
        if outcome in IN_IT:
            yield other, f"{other.designation} ({mount_line(other, knowledge)}): {text}"


def _neighbours(mount: Mount, knowledge: Knowledge) -> Iterator[tuple[Mount, str, str]]:
    """Mounts that the same hand might screw or turn together, worst trap first."""
    catalogue, joints = knowledge.catalogue, knowledge.joints
    rows: list[tuple[tuple[int, str], Mount, str, str]] = []
    for other in catalogue.mounts.values():
        if other.id == mount.id:
            continue
        if mount.thread and other.thread and mount.coupling == other.coupling == "screw":
            into = joints.mating(mount.thread, other.thread)
            takes = joints.mating(other.thread, mount.thread)
            if mount.thread == other.thread:
                rows.append(
                    ((0, other.id), other, "same", f"the same thread: {_register_text(mount, other, knowledge)}")
                )
            elif into is not None and into.outcome not in ("falls-through", "unknown"):
                starts = into.turns is None or into.turns.greatest > 0
                outcome = into.outcome if starts else "apart"  # what does not even start fools nobody
                rows.append(((1, other.id), other, outcome, _thread_text(into, mount, other, knowledge)))
            elif takes is not None and takes.outcome not in ("falls-through", "unknown"):
                starts = takes.turns is None or takes.turns.greatest > 0
                rows.append(
                    ((2, other.id), other, takes.outcome if starts else "apart", f"the other way round: {takes.why}")
                )
        elif other.id in mount.shares_bayonet or mount.id in other.shares_bayonet:
            rows.append(
                ((0, other.id), other, "bayonet", f"the same bayonet: {_register_text(mount, other, knowledge)}")
            )
    seen = set()
    for _, other, outcome, text in sorted(rows, key=lambda row: row[0]):
        seen.add(other.id)
        yield other, outcome, text
    for name in mount.look_alikes:
        other_mount = catalogue.mounts.get(name)
        if other_mount is not None and name not in seen:
            if _coupled_alike(mount, other_mount):
                yield other_mount, "look", f"looks alike; {_register_text(mount, other_mount, knowledge)}"
            else:
                yield other_mount, "name", "taken for it by its name or looks; the two do not go together"


def _coupled_alike(one: Mount, other: Mount) -> bool:
    """Whether two mounts might at least be turned into each other: both screws, or both something else."""
    return (one.coupling == "screw") == (other.coupling == "screw")


def _register_text(lens: Mount, other: Mount, knowledge: Knowledge) -> str:
    """What the register does when one is taken for the other."""
    if not (is_known(lens.register_mm) and is_known(other.register_mm)):
        return "the registers cannot be compared, so fit says nothing about focus"
    off = other.register_mm - lens.register_mm
    if abs(off.nominal) < SEAT_READS_MM:
        return "and the same register"
    lead = f"{article(lens.designation)} {lens.designation} lens in it sits {small_mm(abs(off.nominal))}"
    if abs(off.nominal) <= knowledge.catalogue.assumptions["making-spread-derived"].value.greatest:
        return f"{lead} off, no more than rings vary by"
    return f"{lead} {at_wrong_depth(off.nominal, knowledge)}"


def _thread_text(mating: Mating, lens: Mount, other: Mount, knowledge: Knowledge) -> str:
    text = mating.why
    if mating.outcome == "binds" and mating.turns is not None:
        text = f"{binds_after(mating.turns)} ({mating.why})"
    return f"{text}; {_register_text(lens, other, knowledge)}"
