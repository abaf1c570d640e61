"""Which mounts have a thread, a register or a throat as it is told, and which lie at a wrong depth in another."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Final

from engine.answers.found.mounts_listed import mounts_listed
from engine.answers.found.threads_measured import thread_measured
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import at_wrong_depth, how_rare, mount_line, mount_numbers
from engine.answers.parts.said import focals, mentions, number, numbers
from engine.answers.parts.wording import article, listed, small_mm
from engine.answers.seat.elsewhere import elsewhere
from engine.answers.seat.seen import as_seen, is_coupled_as_asked, is_coupled_so, looks_so
from engine.base.compact import replace
from engine.base.interval import Measure, is_known
from engine.facts.kinds import ACCESSORIES
from engine.facts.records import Mount, Thread
from grammar.kinds import IDENTIFY_MOUNT
from grammar.questions import Question, Thing

MOST: Final = 24
SAME_MM: Final = 0.25  # widths of threads that go by one name: '39 screw'
EXACT_MM: Final = 0.1
LEAST_MM: Final = 5.0
MOST_RANKED: Final = 10
Test = Callable[[Mount], bool]


def mounts_by(question: Question, knowledge: Knowledge) -> Answer | None:
    """The mounts that have what is told of them; None where no list of mounts is asked for."""
    of_themselves = mounts_listed(question, knowledge)
    if of_themselves is not None:
        return of_themselves
    if mentions(question, "wrong-depth"):
        return _at_wrong_depth(question, knowledge)
    if mentions(question, "nearest-register") and question.said("flange_to_image") is None:
        return _nearest_to_register(question, knowledge)
    most = _most(question, knowledge)
    if most is not None:
        return most
    named = any(thing.ids for thing in (*question.lenses, *question.bodies))
    if not mentions(question, "all-mounts") and (named or question.said("flange_to_image") is None):
        return None
    if named or question.adapters:
        return None
    thread, register, throat = _thread(question, knowledge), _register(question), number(question, "throat")
    tests: list[Test] = []
    told: list[str] = []
    if thread is not None:
        width, pitch = thread
        tests.append(lambda mount: _has_thread(mount, width, pitch, knowledge))
        told.append(f"a thread of {width:g} mm" + (f" and {pitch:.3g} mm of pitch" if pitch is not None else ""))
    for name, value, of in (("register", register, _register_of), ("throat", throat, _throat_of)):
        if value is not None:
            test, text = _sized(name, value, of, question)
            tests.append(test)
            told.append(text)
    if not tests:
        return None
    mounts = [
        mount for mount in knowledge.catalogue.mounts.values()
        if mount.kind not in ACCESSORIES and is_coupled_as_asked(mount, question) and is_coupled_so(mount, question)
        and all(test(mount) for test in tests)
    ]  # fmt: skip
    mounts = as_seen(mounts, question)
    mounts.sort(key=lambda mount: how_rare(mount, knowledge))
    what = listed(told)
    if not mounts:
        return Answer(
            question.text, "list-fits", NO, (Line("head", f"No mount in the facts has {what}."),), question=question
        )
    head = Line("head", f"{len(mounts)} {'has' if len(mounts) == 1 else 'have'} {what}:")
    answer = _listing(question, head, mounts, knowledge, throats=throat is not None)
    if question.follows and question.prior is not None and question.prior.intent == IDENTIFY_MOUNT:
        # 'where can i use it': the bodies that any lens of that register goes on, told of the likeliest
        ways = elsewhere(mounts[0], knowledge)
        lead = f"{mounts[0].designation}: "
        lines = [replace(line, text=f"{lead}{line.text[:1].lower()}{line.text[1:]}") for line in ways.lines]
        answer = replace(
            answer, lines=(*lines, *answer.lines), quantities=(*ways.quantities, *(answer.quantities or ()))
        )
    return replace(answer, reading=f"which mounts have {what}")


def _nearest_to_register(question: Question, knowledge: Knowledge) -> Answer | None:
    """'what is closest in register to EF': the mounts by how far their registers are from that of the one named."""
    own = _holder(question, knowledge)
    if own is None or not is_known(own.register_mm):
        return None
    rows, near = [], knowledge.catalogue.assumptions["near-register"].value.nominal
    for mount in knowledge.catalogue.mounts.values():
        if mount.id == own.id or mount.kind in ACCESSORIES or not is_known(mount.register_mm):
            continue
        by = mount.register_mm.nominal - own.register_mm.nominal
        if abs(by) <= near:
            rows.append((abs(by), by, mount))
    rows.sort(key=lambda row: (round(row[0], 2), how_rare(row[2], knowledge)))
    lines = [Line("head", f"Nearest to the register of {own.designation}, {small_mm(own.register_mm.nominal)}:")]
    for off, by, mount in rows[:MOST]:
        apart = f"{small_mm(off)} {'longer' if by > 0 else 'shorter'}" if off else "the same"
        lines.append(Line("fact", f"{mount.designation}: {apart} ({mount_line(mount, knowledge)})", 1))
    quantities = [one for row in rows[:MOST] for one in mount_numbers(row[2], knowledge)]
    return Answer(
        question.text, "list-fits", ANSWERED if rows else NO, tuple(lines), question=question,
        quantities=tuple(quantities), reading=f"which mounts have a register near that of {own.designation}",
    )  # fmt: skip


def _most(question: Question, knowledge: Knowledge) -> Answer | None:
    """'which mount has the shortest flange', 'biggest throat': the mounts in the order of that size."""
    asked = _superlative(question)
    if asked is None or any(thing.ids for thing in (*question.lenses, *question.bodies)):
        return None
    name, of, falling = asked
    things = (*question.bodies, *question.lenses, *question.things)
    formats = {form for thing in things for form in (thing.format, thing.format_too) if form}
    sized = [
        (size.nominal, mount) for mount in knowledge.catalogue.mounts.values()
        if mount.kind not in ACCESSORIES and is_known(size := of(mount)) and is_coupled_as_asked(mount, question)
        and looks_so(mount, question) and (not formats or formats & {*mount.formats, mount.format})
    ]  # fmt: skip
    sized.sort(key=lambda row: (-row[0] if falling else row[0], row[1].id))
    if not sized:
        return None
    lines = [Line("head", f"{sized[0][1].designation}, {small_mm(sized[0][0])}; then by {name}:")]
    for width, mount in sized[1:MOST_RANKED]:
        lines.append(Line("fact", f"{mount.designation}: {small_mm(width)} ({mount_line(mount, knowledge)})", 1))
    rows = tuple(one for _, mount in sized[:MOST_RANKED] for one in mount_numbers(mount, knowledge))
    return Answer(
        question.text, "list-fits", ANSWERED, tuple(lines), question=question, quantities=rows,
        reading=f"which mounts have the {'greatest' if falling else 'least'} {name}",
    )  # fmt: skip


def _listing(
    question: Question, head: Line, mounts: list[Mount], knowledge: Knowledge, throats: bool = False
) -> Answer:
    lines = [head]
    for mount in mounts[:MOST]:
        wide = f"; throat {small_mm(mount.throat_mm.nominal)}" if throats and is_known(mount.throat_mm) else ""
        lines.append(Line("fact", f"{mount.designation}: {mount_line(mount, knowledge)}{wide}", 1))
    if len(mounts) > MOST:
        lines.append(Line("note", f"And {len(mounts) - MOST} more: {_names(mounts[MOST:])}."))
    rows = tuple(one for mount in mounts[:MOST] for one in mount_numbers(mount, knowledge))
    return Answer(question.text, "list-fits", ANSWERED, tuple(lines), question=question, quantities=rows)


def _at_wrong_depth(question: Question, knowledge: Knowledge) -> Answer | None:
    """What screws or turns into a mount and then does not focus as it should, with how far off it sits."""
    holder = _holder(question, knowledge)
    if holder is None or not is_known(holder.register_mm):
        return None
    facts, own = knowledge.catalogue, holder.register_mm.nominal
    spread = facts.assumptions["making-spread-derived"].value.greatest
    inside = [facts.mounts[name] for name in knowledge.joints.into(holder.id)]
    inside = [mount for mount in inside if mount.kind not in ACCESSORIES and "thread-only" not in mount.traits]
    off = [(mount, mount.register_mm.nominal - own) for mount in inside if is_known(mount.register_mm)]
    wrong = sorted((row for row in off if abs(row[1]) > spread), key=lambda row: how_rare(row[0], knowledge))
    open_ = [mount for mount in inside if not is_known(mount.register_mm)]
    into = f"into {article(holder.designation)} {holder.designation} seat ({small_mm(own)})"
    if not wrong and not open_:
        head = Line("head", f"Nothing in the facts goes {into} and lies at another depth.")
        return Answer(question.text, "list-fits", NO, (head,), question=question)
    lines = [Line("head", f"{len(wrong)} go {into} and lie at a wrong depth:")] if wrong else []
    quantities = [Quantity("register_mm", holder.register_mm, holder.id)]
    for mount, by in wrong:
        way = at_wrong_depth(-by, knowledge)
        cure = f"; a spacer of {small_mm(by)} cures it" if by > 0 else ""
        register = small_mm(own + by)
        lines.append(Line("fact", f"{mount.designation}: register {register}, {small_mm(abs(by))} {way}{cure}", 1))
        quantities += mount_numbers(mount, knowledge)
        if is_known(mount.register_mm):
            quantities.append(
                Quantity("register_difference_mm", mount.register_mm - holder.register_mm, f"{mount.id}, {holder.id}")
            )
    if open_:
        none = f"No register of their own, so each must be measured and spaced: {_names(open_)}."
        lines.append(Line("text" if wrong else "head", none))
    lines.append(Line("ask", "Which of them one lens is, its flange to the image of a far window tells: measure that."))
    return Answer(
        question.text, "list-fits", ANSWERED, tuple(lines), question=question, quantities=tuple(quantities),
        reading=f"what goes {into} and lies at a wrong depth",
    )  # fmt: skip


def _holder(question: Question, knowledge: Knowledge) -> Mount | None:
    """What it goes into: a ring by its front, else a body or the mount that is named."""
    facts = knowledge.catalogue
    rings = [Thing("mount", (*piece.front, *piece.ids)) for piece in question.adapters]
    for thing in (*rings, *question.bodies, *question.lenses, *question.things):
        for name in thing.ids:
            if name in facts.mounts:
                return facts.mounts[name]
    return None


def _thread(question: Question, knowledge: Knowledge) -> tuple[float, float | None] | None:
    """Width of the thread that is told and its pitch if that is, or the width of the screw mount named for it."""
    width, pitch = thread_measured(question) if question.said("thread") is not None else (None, None)
    if width is not None:
        return width, pitch
    if not mentions(question, "thread-told", "coupled-screw"):
        return None
    thread = named_thread(question, knowledge)
    return (thread.major_mm.nominal, None) if thread is not None else None


def named_thread(question: Question, knowledge: Knowledge) -> Thread | None:
    """The thread of the screw mount that is named, by a ring or body before a lens."""
    facts = knowledge.catalogue
    rings = (name for piece in question.adapters for name in piece.front)
    named = (name for thing in (*question.bodies, *question.lenses) for name in thing.ids[:1])
    threads = (facts.mounts[name].thread for name in (*rings, *named) if name in facts.mounts)
    return next((facts.threads[thread] for thread in threads if thread), None)


def _has_thread(mount: Mount, width: float, pitch: float | None, knowledge: Knowledge) -> bool:
    thread = knowledge.catalogue.threads.get(mount.thread or "")
    if mount.coupling != "screw" or thread is None or abs(thread.major_mm.nominal - width) > SAME_MM:
        return False
    good = knowledge.catalogue.assumptions["pitch-by-paper"].value
    return pitch is None or (is_known(thread.pitch_mm) and good.holds(thread.pitch_mm.nominal - pitch))


def _register(question: Question) -> float | None:
    told = number(question, "flange_to_image")
    if told is not None or question.said("throat") is not None or question.said("thread") is not None:
        return told
    bare = [one for one in numbers(question, "numbers", "length") if one >= LEAST_MM]
    if not any(lens.ids or lens.lens_kind for lens in question.lenses):
        bare += [one for one in focals(question) if one >= LEAST_MM]  # 'mounts longer than 45mm': no lens is told of
    return bare[0] if bare and mentions(question, "less-than", "more-than") else None


def _sized(name: str, value: float, of: Callable[[Mount], Measure], question: Question) -> tuple[Test, str]:
    """Whether a size of a mount is below, above or about the one told, and how that is said."""
    below, above = mentions(question, "less-than"), mentions(question, "more-than")
    ends = [value, *(one for one in numbers(question, "numbers", "length") if one != value)][:2]
    between = mentions(question, "in-between") and len(ends) == 2

    def fits(mount: Mount) -> bool:
        size = of(mount)
        if not is_known(size):
            return False
        if between:
            return min(ends) <= size.nominal <= max(ends)
        off = size.nominal - value
        return off < 0 if below else off > 0 if above else abs(off) <= EXACT_MM

    if between:
        return fits, f"a {name} between {small_mm(min(ends))} and {small_mm(max(ends))}"
    way = "below" if below else "above" if above else "of"
    return fits, f"a {name} {way} {small_mm(value)}"


def _register_of(mount: Mount) -> Measure:
    return mount.register_mm


def _throat_of(mount: Mount) -> Measure:
    return mount.throat_mm


def _glass_of(mount: Mount) -> Measure:
    return mount.cover_glass_mm


def _superlative(question: Question) -> tuple[str, Callable[[Mount], Measure], bool] | None:
    """What is compared where the most or the least of it is asked for, how it is found, whether the greatest first."""
    rows = (
        (mentions(question, "shortest-register"), ("register", _register_of, False)),
        (mentions(question, "longest-register"), ("register", _register_of, True)),
        (mentions(question, "widest-throat"), ("throat", _throat_of, True)),
        (mentions(question, "narrowest-throat"), ("throat", _throat_of, False)),
        (mentions(question, "thinnest-glass"), ("glass before the sensor", _glass_of, False)),
        (mentions(question, "thickest-glass"), ("glass before the sensor", _glass_of, True)),
    )
    return next((row for told, row in rows if told), None)


def _names(mounts: Iterable[Mount]) -> str:
    return listed([mount.designation for mount in mounts])
