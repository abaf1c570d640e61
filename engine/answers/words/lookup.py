"""What a term, mount, thread, format or adapter is."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from engine.answers.found.threads_told import thread_named
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import mount_line
from engine.answers.parts.nearby import MOST_BESIDE, PLAIN, nearest, term_known_as, term_misspelt, words_asked_about
from engine.answers.parts.resolve import LensSide, lens_side
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import listed, money, small_mm, trimmed
from engine.answers.words.advice import advice_lines, named_mounts
from engine.answers.words.by_format import by_format
from engine.answers.words.described import words_described
from engine.answers.words.number_alone import number_alone
from engine.answers.words.pitch_said import pitch_said
from engine.answers.words.ratio_said import ratio_said
from engine.base.interval import Interval, is_known
from engine.facts.guidance import Advice
from engine.facts.records import Adapter, Format, Mount, Thread
from grammar.questions import Question, Thing

UNKNOWN: Final = "is not among the terms, mounts, threads and adapters known here."
INSTEAD: Final = (
    "What is known here is how lenses mount: ask about a mount, a thread, a ring or a word of the trade, such as 'what"
    " is a helicoid'; or name the lens and the body that it is about."
)
PART: Final = ("part-asked", "part-named")  # what is mentioned of a part of a lens or of its ring
OF_MOUNTS = frozenset(
    {
        "register",
        "throat",
        "pitch",
        "tpi",
        "thread-form",
        "major-diameter",
        "clear-depth",
        "flange",
        "bayonet",
        "breech-lock",
        "lug",
        "format",
        "coverage",
    }
)  # terms of what a mount has, which is told of the mount itself
NEAR = 2  # columns between a mount and the word that it only tells the kind of
_T_STOP: Final = "t-stop"
_T: Final = "T"
_T_MOUNT: Final = "t2"  # what the letter is as a mount
_BARE_T: Final = re.compile(r"(?<!['\u2019])\bt\b(?!\W*(?:mount|ring|adapt|thread|2))", re.IGNORECASE)
MOST_TOLD: Final = 3  # words beside those of a term, where it is told what is seen: 'my lens has a red dot, what for'
ENGRAVED: Final = "engravings"  # the advice on what stands on a lens
A_RING: Final = "adapter-ring"  # the term for one
ABOUT: Final = 7.0  # what advice must share with a question whose words no term is


def definition(question: Question, knowledge: Knowledge) -> Answer:
    """What each thing that the question names is."""
    lines: list[Line] = []
    quantities: list[Quantity] = []
    bare_t, size = _is_bare_t(question), ratio_said(question, knowledge)
    if question.follows and size.lines and not question.things:
        return Answer(question.text, "definition", ANSWERED, size.lines, question=question, quantities=size.quantities)
    if question.follows and question.things and not bare_t:
        lines, quantities = _of_lens(question, knowledge)
        told = by_format(question, knowledge)
        says, told_so = (*told.lines, *lines), (*told.quantities, *quantities)
        return Answer(question.text, "definition", ANSWERED, says, question=question, quantities=told_so)
    word = words_described(question, knowledge.catalogue)
    if word:
        return Answer(question.text, "definition", ANSWERED, tuple(word), question=question, aside=True)
    told = by_format(question, knowledge)
    things = _meant_by(question, (*question.things, *question.lenses, *question.bodies, *question.adapters))
    thread = thread_named(question.said("thread") or "", knowledge.catalogue)
    if thread is not None and not any(thing.ids for thing in things):
        things = (Thing("thread", (thread.id,)),)
    named = any(thing.kind == "term" for thing in things)
    if bare_t or ((question.said("aperture") or "").startswith(_T) and not named):
        things = (Thing("term", (_T_STOP,)), *things)  # 'what does T2.2 mean on a cine lens'
    of_part = mentions(question, *PART)
    beside = 0 if named else MOST_TOLD if of_part or mentions(question, "what-for") else MOST_BESIDE
    everyday = term_known_as(question.text, knowledge.catalogue, beside)
    everyday = None if (_is_typed_as_name(question) and not of_part) or thread is not None else everyday
    if everyday is not None:
        things = (Thing("term", (everyday.id,)),)
    if not any(thing.ids for thing in things):
        term = term_misspelt(question.text, knowledge.catalogue)
        things = (Thing("term", (term.id,)),) if term is not None else things
    rows = _by_sight(question, named, knowledge) if everyday is None else []
    if rows:
        return Answer(question.text, "definition", ANSWERED, tuple(advice_lines(rows)), question=question)
    chosen = list(things) if bare_t else _terms_first(things) if told.lines else _mounts_first(things, question.text)
    for kind, name in dict.fromkeys((thing.kind, name) for thing in chosen for name in thing.ids[:3]):
        lines += list(_about(kind, name, knowledge, quantities))
    lines[:0], quantities[:0] = told.lines, told.quantities
    lines[:0] = _same_or_not(question, knowledge)
    pitch = pitch_said(question)
    lines[:0], quantities[:0] = pitch.lines + size.lines, pitch.quantities + size.quantities
    if not lines and mentions(question, "ring-for-what") and mentions(question, "ring-word"):
        lines = list(_about("term", A_RING, knowledge, quantities))
    if not lines:
        number = number_alone(question, knowledge)
        lines, quantities[:] = list(number.lines), number.quantities
    if not lines:
        lines = advice_lines(nearest(question.text, knowledge.catalogue, 1, ABOUT))
    if not lines:
        what = words_asked_about(question.text, knowledge.catalogue) or question.topic or "that"
        return Answer(
            question.text, "definition", NO,
            (Line("text", f"'{what}' {UNKNOWN}"), Line("text", INSTEAD)), question=question,
        )  # fmt: skip
    told_of = tuple(quantities)  # a bare letter names no lens to be spoken of
    return Answer(
        question.text, "definition", ANSWERED, tuple(lines), question=question, quantities=told_of, aside=bare_t
    )


def _is_bare_t(question: Question) -> bool:
    """'what does the T actually mean': the letter alone, with no 'mount' or number to it, is first of all a stop."""
    things = (*question.things, *question.lenses, *question.bodies)
    return _BARE_T.search(question.text) is not None and any(thing.ids == (_T_MOUNT,) for thing in things)


def _by_sight(question: Question, named: bool, knowledge: Knowledge) -> list[Advice]:
    """What stands on a lens, and what a part is for that is told by what is seen of it. `named`: a term is."""
    engraved = knowledge.catalogue.advice.get(ENGRAVED)
    if engraved is not None and not named and mentions(question, "engraving-asked"):
        return [engraved]
    if mentions(question, *PART) and not named:
        mounts = named_mounts(question, knowledge)
        return list(nearest(question.text, knowledge.catalogue, 1, PLAIN, among=_tells_of_a_part, mounts=mounts))
    return list(nearest(question.text, knowledge.catalogue, 1, PLAIN)) if mentions(question, "what-for") else []


def _tells_of_a_part(row: Advice) -> bool:
    """Whether advice may tell what a part is for: none that warns of what is stuck or may be harmed does."""
    return row.severity == "note"


def _is_typed_as_name(question: Question) -> bool:
    """'A mount', 'a-mount', 'x mount' are names of mounts; 'what is a mount' asks what mounts are."""
    things = (*question.things, *question.lenses, *question.bodies)
    return any(thing.kind == "mount" and not (thing.words == "a" or thing.words.startswith("a ")) for thing in things)


def _same_or_not(question: Question, knowledge: Knowledge) -> list[Line]:
    """Yes or no first, where it is asked whether two terms are one."""
    terms = [thing for thing in question.things if thing.kind == "term"]
    asked = mentions(question, "same-word") or "=" in question.text
    if len(terms) < 2 or not (asked or mentions(question, "differ")):
        return []
    names = dict.fromkeys(knowledge.catalogue.terms[thing.ids[0]].names[0] for thing in terms)
    if len(names) == 1:
        spelt = dict.fromkeys(thing.words.casefold() for thing in terms)
        typed = listed(list(spelt))
        lead = "Yes, " if asked else "One thing by two names: "
        return [Line("head", f"{lead}{typed} are the same thing.")] if len(spelt) > 1 else []
    return [Line("head", f"No, {listed(list(names))} are not the same.")] if asked and len(names) == 2 else []


def _of_lens(question: Question, knowledge: Knowledge) -> tuple[list[Line], list[Quantity]]:
    """'what is the register?' of the lens spoken of: what its mount has of it, then what the word means."""
    lines: list[Line] = []
    quantities: list[Quantity] = []
    mounts = knowledge.catalogue.mounts
    terms = all(thing.kind == "term" and not OF_MOUNTS & set(thing.ids) for thing in question.things)
    for thing in (*question.lenses, *question.bodies) if not terms else ():  # a zoom that is parfocal has no more of it
        side = lens_side(thing, knowledge.catalogue)
        if isinstance(side, LensSide):
            mount = mounts[side.mount.id]
            throat = f"; throat {trimmed(mount.throat_mm.nominal, 1)} mm" if is_known(mount.throat_mm) else ""
            lines.append(Line("head", f"{mount.designation}: {mount_line(mount, knowledge)}{throat}."))
            if is_known(mount.register_mm):
                quantities.append(Quantity("register_mm", mount.register_mm, mount.id))
    measured = number(question, "flange_to_image")
    if measured is not None:
        lines.append(Line("fact", f"measured on yours: {small_mm(measured)} from flange to image", 1))
        quantities.append(Quantity("register_mm", Interval.exact(measured), "measured"))
    for thing in question.things:
        for name in thing.ids[:1]:
            lines += _about(thing.kind, name, knowledge, quantities)
    return lines, quantities


def _meant_by(question: Question, things: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """'what do macro people mean by working distance': what stands behind that, where anything does."""
    at = max((one.end for one in question.places("meant-by")), default=0)
    behind = tuple(thing for thing in things if thing.column > at)
    return behind if at and behind else things


def _terms_first(things: tuple[Thing, ...]) -> list[Thing]:
    """The terms alone, where their numbers have been told of the formats that stand beside them."""
    return [thing for thing in things if thing.kind == "term"]


def _mounts_first(things: tuple[Thing, ...], text: str) -> list[Thing]:
    """'register of OM?': what the mount has, then what the word means; of 'an M hub' what a hub is first."""
    mounts = [thing for thing in things if thing.kind == "mount"]

    def is_head(term: Thing) -> bool:
        if term.kind != "term" or term.id in OF_MOUNTS:
            return False
        if f"{term.words} mean" in text:
            return True  # 'an M hub ... what does hub mean here'
        if mounts and 0 < term.column < min(mount.column for mount in mounts):
            return True  # 'auto pin (M42)', 'the A/M switch on an M42 lens'
        return any(0 < term.column - mount.column - len(mount.words) <= NEAR for mount in mounts)

    heads = [thing for thing in things if is_head(thing)]
    return [*heads, *sorted((one for one in things if one not in heads), key=lambda thing: thing.kind != "mount")]


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
        quantities.append(Quantity("bore_mm", mount.throat_mm, mount.id))
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
