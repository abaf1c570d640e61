"""Mounts that go by one name: what is known of the name, and of the others that carry it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import combinations
from typing import Final

from engine.answers.found.all_measured import WIDER_MM
from engine.answers.found.screwed_in import is_one_thread
from engine.answers.parts.answer import Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import mount_line
from engine.answers.parts.near_enough import one_register_mm, told_register_mm
from engine.answers.parts.wording import listed, small_mm, trimmed
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from engine.facts.guidance import Shared
from engine.facts.records import Mount
from grammar.kinds import CHAIN, LOOK_ALIKE
from grammar.questions import Question, Thing

MOST_NOTES: Final = 2
PAIR: Final = 2
HEAD: Final = "lens-side-only"  # trait of mounts that only lenses have
SAME: Final = "Yes,"
THREADS: Final = "the threads differ"
SAME_TOPIC: Final = "same"  # the topic where it is asked whether two are one
UNFOCUSED: Final = "no focusing"  # trait of a lens, as it is told
NO_FOCUSING: Final = "no-focusing"  # trait of the mounts of such lenses
ENLARGER: Final = "enlarger"  # the kind that most of them are
_NUMBER: Final = r"(?<![\d.,/:x-])(?:\d+(?:\.\d+)?)(?![\d/:x-]|\.\d)"
_MEASURED: Final = r"flange|register|image|window|ring (?:is|of)|f/|thick|shim"  # words that tell of what a number is


def named_alike(name: str, knowledge: Knowledge) -> list[Line]:
    """The other mounts that go by the same designation, where there are any."""
    facts = knowledge.catalogue
    mount, out = facts.mounts[name], []
    for row in facts.shared.values():
        if name in row.mounts:
            others = [facts.mounts[other] for other in row.mounts if other != name]
            # those that its thread meets are told of anyway
            others = [one for one in others if one.thread is None and one.id not in mount.look_alikes]
            if not others:
                continue
            told = "; ".join(f"{mount.designation}: {mount_line(mount, knowledge)}" for mount in others)
            out.append(Line("note", f"Not the same, though it goes by the same name: {told}."))
            out += [Line("text", row.note)] if row.note else []
    return out[:2]


def of_the_name(question: Question, knowledge: Knowledge) -> list[Line]:
    """What is known of a name of several mounts, where it is the name that is asked about."""
    named = [set(thing.ids) for thing in (*question.lenses, *question.things, *question.bodies) if thing.ambiguous]
    rows = [row for row in knowledge.catalogue.shared.values() if set(row.mounts) in named and row.note]
    return [Line("text", row.note) for row in rows[:MOST_NOTES]]


def registers_alike(name: str, knowledge: Knowledge) -> list[Quantity]:
    facts = knowledge.catalogue
    ids = dict.fromkeys(other for row in facts.shared.values() if name in row.mounts for other in row.mounts)
    known = [(other, facts.mounts[other].register_mm) for other in ids if other != name]
    return [Quantity("register_mm", register, other) for other, register in known if is_known(register)]


def unfocused(thing: Thing, catalogue: Catalogue) -> Thing:
    """'a 39 mm thread, no focusing on it': of several mounts so wide, that of lenses without it comes first."""
    if thing.kind != "mount" or not thing.ambiguous or UNFOCUSED not in thing.traits or thing.lens_kind:
        return thing
    threads = {catalogue.mounts[name].thread for name in thing.ids if catalogue.mounts[name].thread}
    meet = [one for one in catalogue.mounts.values() if one.thread in threads and NO_FOCUSING in one.traits]
    plain = [one.id for one in sorted(meet, key=lambda one: one.kind != ENLARGER)]
    return replace(thing, ids=tuple(dict.fromkeys((*plain[:1], *thing.ids)))) if plain else thing


def two_heads(question: Question, catalogue: Catalogue) -> Question:
    """'does RMS fit M25': two mounts that only lenses have are no lens on a body, but set side by side."""
    pair = (*question.lenses, *question.bodies)
    if question.intent != CHAIN or len(question.lenses) != 1 or len(pair) != PAIR or question.adapters:
        return question
    mounts = [catalogue.mounts.get(one.id or "") if one.kind == "mount" else None for one in pair]
    heads = [mount for mount in mounts if mount is not None and HEAD in mount.traits]
    if len(heads) < PAIR or heads[0].thread == heads[1].thread or any(one.focal_length_mm for one in pair):
        return question
    return question.with_(intent=LOOK_ALIKE, lenses=pair, bodies=(), topic="same")


def asked_of_a_name(question: Question) -> tuple[str, ...]:
    """'are R lenses all one mount?': the mounts that go by the name asked about, where it is more than one."""
    first = next((thing for thing in (*question.lenses, *question.things) if thing.kind == "mount"), None)
    return first.ids if first is not None and first.ambiguous and question.mentions("one-mount-asked") else ()


def told_by_one_name(question: Question, catalogue: Catalogue) -> tuple[str, ...]:
    """'G mount: is the old one the same as the new?': the mounts of the only name typed, where two are spoken of."""
    things = (*question.lenses, *question.things, *question.bodies)
    named = [thing for thing in things if thing.kind == "mount" and thing.ids]
    if question.topic != SAME_TOPIC or len(named) != 1 or len(things) == 1 or question.adapters:
        return ()
    words = {word.strip(" ,:;?.!").casefold() for word in (named[0].words, named[0].words.split(" ")[0])}
    rows = [row.mounts for row in catalogue.shared.values() if words & {says.casefold() for says in row.says}]
    return next((row for row in rows if named[0].ids[0] in row), ())


def all_the_same(names: Sequence[str], knowledge: Knowledge) -> str:
    """Whether more than two mounts are all one in coupling and register; what each sits at, where they are not."""
    told = [knowledge.catalogue.mounts[name] for name in dict.fromkeys(names)]
    rows = listed([f"{one.designation}{_register_told(one)}" for one in told])
    pairs = list(combinations(told, 2))
    alike = [same_or_not(one, other, knowledge).startswith(SAME) for one, other in pairs]
    if all(alike):
        return f"{SAME} {rows} go together: the same coupling and register."
    some = [
        f"{one.designation} and {other.designation}" for (one, other), same in zip(pairs, alike, strict=True) if same
    ]
    but = f" Only {listed(some)} go together." if some else ""
    return f"No, not all of them are the same: {rows}.{but}"


def by_one_name_line(names: Sequence[str], knowledge: Knowledge) -> Line:
    told = [knowledge.catalogue.mounts[name] for name in names]
    rows = [f"{one.designation}{_register_told(one)}" for one in told]
    return Line("head", f"No: the name stands for {len(rows)} mounts, {listed(rows)}. No one ring is for all of them.")


def _register_told(mount: Mount) -> str:
    return f" ({small_mm(mount.register_mm.nominal)})" if is_known(mount.register_mm) else ""


def of_one_thread(mount: Mount, knowledge: Knowledge) -> list[Line]:
    """That the thread is the same and the register is not, where other mounts have it too."""
    others = [
        one
        for one in knowledge.catalogue.mounts.values()
        if one.thread == mount.thread and one.id != mount.id and is_known(one.register_mm)
    ]
    if not others:
        return []
    told = listed(
        [f"{one.designation} {small_mm(one.register_mm.nominal)}" for one in others if is_known(one.register_mm)]
    )
    own = f" ({small_mm(mount.register_mm.nominal)})" if is_known(mount.register_mm) else ""
    text = (
        f"The thread is the same, the register need not be: {mount.designation}{own}, but {told}. It screws in and may "
        "focus wrong: ask for the register in mm."
    )
    return [Line("head", text)]


def of_that_name(thing: Thing, measured_mm: float, near: float, catalogue: Catalogue) -> tuple[str, ...]:
    """Of all the mounts that share the name of one left open, those with that register."""
    rows = [row.mounts for row in catalogue.shared.values() if thing.ambiguous and set(thing.ids) <= set(row.mounts)]
    sizes = {name: catalogue.mounts[name].register_mm for names in rows for name in names}
    return tuple(name for name, size in sizes.items() if is_known(size) and abs(size.nominal - measured_mm) <= near)


def as_register(text: str, before: Question | None, catalogue: Catalogue) -> str:
    """The text with a bare number as the lens's own register, where a mount of its shared name has that: '28.8'.

    A whole number is one only where nothing else is said.
    """
    rows = _names_of(before.lens, catalogue) if before is not None and before.lens is not None else []
    found = re.findall(_NUMBER, text) if rows else []
    if len(found) != 1 or re.search(_MEASURED, text.casefold()):
        return text
    alone = re.fullmatch(rf"\W*{_NUMBER}\s*(mm)?\W*", text) is not None
    sizes = [catalogue.mounts[id_].register_mm for row in rows for id_ in row.mounts]
    near = any(is_known(size) and abs(size.nominal - float(found[0])) <= told_register_mm(catalogue) for size in sizes)
    if not near or not (alone or "." in found[0]):
        return text
    told = f"flange to image {found[0]} mm"
    one = re.sub(rf"\b(an?|the)\s+{_NUMBER}(\s*mm\b)?\s+(one|lens)\b", f"one with {told}", text)  # 'and a 45.2 one?'
    return one if one != text else re.sub(rf"{_NUMBER}(\s*mm\b)?", told, text)


def _names_of(lens: Thing, catalogue: Catalogue) -> list[Shared]:
    """The names, of which no meaning is the likelier, that the lens is told by."""
    said = lens.words.casefold()
    rows = [row for row in catalogue.shared.values() if row.likely is None and set(lens.ids) <= set(row.mounts)]
    return [row for row in rows if lens.ambiguous or any(name.casefold() in said for name in row.says)]


def what_is_shared(mount: Mount, knowledge: Knowledge) -> str:
    """The mount; where it has no register of its own only its thread, that screws together by hand or not at all."""
    thread = knowledge.catalogue.threads.get(mount.thread or "")
    if thread is None or is_known(mount.register_mm):
        return f"mount: {mount.designation}"
    return f"thread, {thread.designation}: they screw together, the inner into the outer. Start it by hand"


def same_or_not(one: Mount, other: Mount, knowledge: Knowledge, barred: Sequence[str] = ()) -> str:
    """Whether two mounts are the same in coupling and register, and in what they differ."""
    apart: list[str] = []
    deep = ""
    if "unknown" in (one.coupling, other.coupling):
        apart.append("how both couple is not established")
    elif one.coupling != other.coupling:
        apart.append(f"one is a {one.coupling.replace('-', ' ')}, the other a {other.coupling.replace('-', ' ')}")
    elif not is_one_thread(one, other, knowledge):
        apart.append(THREADS)
    elif one.coupling != "screw" and other.id not in one.shares_bayonet and one.id not in other.shares_bayonet:
        apart.append("the bayonets differ")
    if is_known(one.register_mm) and is_known(other.register_mm):
        by = one.register_mm.nominal - other.register_mm.nominal
        longer = one.designation if by > 0 else other.designation
        alike = abs(by) <= one_register_mm(knowledge.catalogue) or (one.register_mm - other.register_mm).holds(0.0)
        apart += [] if alike else [f"the registers differ by {small_mm(abs(by))}, {longer} has the longer"]
        deep = f" Their registers are one, {trimmed(one.register_mm.nominal, 3)} mm." if alike else deep
    elif is_known(one.register_mm) or is_known(other.register_mm):
        apart.append("only one of them has a register of its own")
    names = f"{one.designation} and {other.designation}"
    if "screw" in (one.coupling, other.coupling) and _are_open(one, other, knowledge):
        apart = [reason for reason in apart if reason != THREADS]
    if not apart and "screw" in (one.coupling, other.coupling) and _are_open(one, other, knowledge):
        return f"Not proved: {names} are screws of like register, but what their threads are is not established."
    if apart:
        return f"No, {names} are not the same: {listed(apart)}.{deep}"
    if barred:
        return f"Not both ways: {names} have the same coupling and register, but not {listed(barred)}."
    coupled = is_one_thread(one, other, knowledge) if one.coupling == "screw" else True
    return f"{f'{SAME} ' if coupled else ''}{names} go together: the same coupling and register."


def _are_open(one: Mount, other: Mount, knowledge: Knowledge) -> bool:
    """Whether it is not known if the screws of both are one: no thread is, or no pitch of threads as wide."""
    first, second = (knowledge.catalogue.threads.get(mount.thread or "") for mount in (one, other))
    if first is None or second is None:
        return None in (one.thread, other.thread)
    wide = abs(first.major_mm.nominal - second.major_mm.nominal) < WIDER_MM
    return wide and not (is_known(first.pitch_mm) and is_known(second.pitch_mm))


def widths_apart(one: Mount, other: Mount, knowledge: Knowledge) -> str:
    """How wide the threads of both are, where that alone keeps them apart."""
    threads = [knowledge.catalogue.threads.get(mount.thread or "") for mount in (one, other)]
    known = [thread.major_mm.nominal for thread in threads if thread is not None and is_known(thread.major_mm)]
    if len(known) < len(threads) or abs(known[0] - known[1]) < WIDER_MM:
        return ""
    wide = f"{one.designation} is {trimmed(known[0], 2)} mm wide, {other.designation} {trimmed(known[1], 2)} mm"
    return f"{wide}: the narrower drops through, the wider does not start."
