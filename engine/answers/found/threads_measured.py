"""A thread that was measured: its width and pitch as told, and the threads and mounts that it may be."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from engine.answers.found.depths_of_thread import depths_of_thread
from engine.answers.found.threads_told import width_told
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import how_rare
from engine.answers.parts.said import focals, mentions, numbers
from engine.answers.parts.wording import listed, trimmed
from engine.base.interval import Interval, is_known
from engine.base.units import MM_PER_INCH
from engine.facts.records import Mount, Thread
from engine.physics import calibration
from grammar.kinds import LOOK_ALIKE
from grammar.questions import Question, Thing

METRIC = re.compile(r"\bM(\d+(?:\.\d+)?)\s*x")  # 'M58x0.75'
MOST = 6
ONLY_THREAD = "thread-only"  # trait of mounts that are a thread and nothing else
ROUGHLY_MM = 1.0  # what a width may be off that was told roughly
ROUNDED_MM = 0.5  # what a width may be off that was told in whole millimetres
JUST_MM = 0.1  # a width told so near to a thread's own is its name
# a thread that is measured in its hole: between its crests, which stand inside its nominal width
INSIDE = "caliper-in-a-thread"  # of the facts: what the caliper may be off
MINOR_SHARE = 1.0825  # of the pitch, for a 60 degree thread


def thread_measured(question: Question) -> tuple[float | None, float | None]:
    """Diameter and pitch of the thread, in mm, as far as they were told."""
    threads = (question.said("thread") or "").split(", ")
    counted = [
        text for text in threads if "mm x" in text
    ]  # measured, beside a thread that was named: 'is it M26x0.75?'
    pitch_text = question.said("pitch") or ""
    barrel = question.said("barrel") if pitch_text else None  # a barrel with a pitch is one with a thread
    said = " ".join([*(counted or threads), question.said("bore") or "", barrel or ""])
    across = re.search(r"(\d+(?:\.\d+)?)\s*(?:mm|x \d)", said) or METRIC.search(said)
    inch = re.search(r"(\d+(?:\.\d+)?)(?:\s*/\s*(\d+))?\s*(?:in|\")", said)
    diameter = float(across[1]) if across else None
    if diameter is None and inch:
        diameter = float(inch[1]) / float(inch[2] or 1) * MM_PER_INCH
    after = re.search(r"[x×-]\s*(\d+(?:\.\d+)?)", said)
    if diameter is None and pitch_text and focals(question) and not any(map(_is_lens, question.lenses)):
        diameter = focals(question)[0]  # '39 mm with 26 tpi' is a width, not a focal length
    per_inch = re.search(r"(\d+) tpi", said)  # 'thread 1 inch 32 tpi'
    raw = re.search(r"(\d+(?:\.\d+)?)", pitch_text) or after or per_inch
    if raw is None:
        return diameter, None
    value = float(raw[1])
    if diameter is None and value > 9 and "tpi" not in pitch_text:
        small = [one for one in numbers(question, "numbers") if one < 3]
        diameter, value = value, small[0] if small else value  # '42 mm, pitch 0.75' taken the wrong way round
        if not small:
            return diameter, None
    if not value:
        return diameter, None  # no thread has a pitch of nought
    tpi = "tpi" in pitch_text + said or value > 5
    return diameter, MM_PER_INCH / value if tpi else value


def _is_lens(thing: Thing) -> bool:
    """'42 mm thread, 1 mm pitch, a 50 mm f/2': what has a mount or a stop beside its length is a lens."""
    return thing.focal_length_mm is not None and (bool(thing.ids) or thing.f_number is not None)


def with_width_of_part(question: Question, knowledge: Knowledge) -> Question:
    """'it has an M65 thread': what is named by a part that has only a thread is told by the width of that."""
    lens, facts = question.lens, knowledge.catalogue
    mount = facts.mounts.get(lens.ids[0]) if lens is not None and lens.kind == "mount" and lens.ids else None
    thread = facts.threads.get(mount.thread or "") if mount is not None and ONLY_THREAD in mount.traits else None
    if thread is None or question.said("thread") is not None:
        return question
    return question.with_(values=(*question.values, ("thread", f"{thread.major_mm.nominal:g} mm")))


def by_thread(question: Question, knowledge: Knowledge) -> tuple[Told, list[str]]:
    """The threads that a measured one may be, and the mounts that have them."""
    diameter, pitch = thread_measured(question)
    if diameter is None:
        return (_pitch_alone(pitch, knowledge) if pitch is not None else Told()), []
    diameter = width_told(question, diameter, knowledge)
    inside = mentions(question, "female-thread") and not mentions(question, "male-thread")
    fitting = _fits_inside if inside else _fits
    threads = knowledge.catalogue.threads.values()
    fits = [thread for thread in threads if fitting(thread, diameter, pitch, knowledge)]
    if not fits:  # 'screws in a 1 inch hole, 32 tpi': no hole between its crests, but the name of the thread
        fits = [thread for thread in threads if _fits(thread, diameter, pitch, knowledge)]
    if not fits and (mentions(question, "roughly") or float(diameter).is_integer()):
        within = ROUGHLY_MM if mentions(question, "roughly") else ROUNDED_MM  # '25 wide, 32 tpi' is 25.4
        fits = [thread for thread in threads if _fits_roughly(thread, diameter, pitch, knowledge, within)]
    fits.sort(key=lambda thread: (_width_off(thread, diameter, pitch), _pitch_off(thread, pitch), thread.id))
    if _is_coarse(diameter, pitch):
        fits.sort(key=lambda thread: _rarest(thread, knowledge))
    mounts: list[str] = []
    lines: list[Line] = []
    rows: list[Quantity] = []
    for thread in fits[:MOST]:
        users = [
            mount
            for mount in knowledge.catalogue.mounts.values()
            if mount.thread == thread.id and mount.kind != "filter"
        ]
        users.sort(key=lambda mount: how_rare(mount, knowledge))
        if not users:
            continue
        mounts += [mount.id for mount in users[:2]]
        rows.append(Quantity("thread_diameter_mm", thread.major_mm, thread.id))
        if is_known(thread.pitch_mm):
            rows.append(Quantity("thread_pitch_mm", thread.pitch_mm, thread.id))
            length = calibration.length_of_spaces_mm(thread.pitch_mm)
            if is_known(length):
                rows.append(Quantity("ten_pitches_mm", length, thread.id))
        names = listed([mount.designation for mount in users[:3]], "or")
        pitch_told = f", pitch {trimmed(thread.pitch_mm.nominal, 3)} mm" if is_known(thread.pitch_mm) else ""
        lines.append(
            Line("fact", f"{thread.designation} ({trimmed(thread.major_mm.nominal, 2)} mm{pitch_told}): {names}", 1)
        )
        apart, seats = depths_of_thread(users[:3]) if question.intent == LOOK_ALIKE else ([], [])
        lines, rows = [*lines, *apart], [*rows, *seats]
        if len(users) == 1 and users[0].note and pitch is not None:
            lines.append(Line("text", users[0].note, 2))
    if not lines and pitch is not None:
        return _no_mount(diameter, pitch, knowledge), []
    if not lines and mentions(question, "thread-told"):
        return _none_so_wide(diameter, knowledge), []
    if lines:
        told = f" and {trimmed(pitch, 3)} mm of pitch" if pitch else ""
        lines.insert(0, Line("head", f"A thread of {trimmed(diameter, 2)} mm across{told} may be:"))
    return Told(tuple(lines), tuple(rows)), list(dict.fromkeys(mounts))


def _is_coarse(diameter: float, pitch: float | None) -> bool:
    """Whether a width was told in whole millimetres with nothing beside: '25' may be 25.4."""
    return pitch is None and float(diameter).is_integer()


def _width_off(thread: Thread, diameter: float, pitch: float | None) -> float:
    """How far a width told is from the thread's, in mm; none within what whole millimetres leave open."""
    off = abs(thread.major_mm.nominal - diameter)
    return max(off - ROUNDED_MM, 0.0) if _is_coarse(diameter, pitch) else off


def _rarest(thread: Thread, knowledge: Knowledge) -> tuple[object, ...]:
    """By the commonest mount that has the thread."""
    users = [one for one in knowledge.catalogue.mounts.values() if one.thread == thread.id and one.kind != "filter"]
    return min((how_rare(mount, knowledge) for mount in users), default=(True, True, 0, ""))


def _pitch_off(thread: Thread, pitch: float | None) -> float:
    """How far a pitch told is from the thread's, in mm."""
    known = pitch is not None and is_known(thread.pitch_mm)
    return round(abs(thread.pitch_mm.nominal - (pitch or 0.0)), 3) if known and is_known(thread.pitch_mm) else 0.0


def _pitch_alone(pitch: float, knowledge: Knowledge) -> Told:
    """The pitches that are in use nearest to a measured one, and the mounts that have them."""
    good = knowledge.catalogue.assumptions["pitch-by-paper"].value
    users = [mount for mount in knowledge.catalogue.mounts.values() if mount.thread and mount.kind != "filter"]
    found: dict[float, list[Mount]] = {}
    for mount in sorted(users, key=lambda mount: how_rare(mount, knowledge)):
        thread = knowledge.catalogue.threads.get(mount.thread or "")
        if thread is not None and is_known(thread.pitch_mm) and good.holds(thread.pitch_mm.nominal - pitch):
            found.setdefault(round(thread.pitch_mm.nominal, 4), []).append(mount)
    ten = calibration.length_of_spaces_mm(Interval.exact(pitch))
    text = f"{trimmed(pitch, 3)} mm of pitch is {trimmed(MM_PER_INCH / pitch, 1)} threads per inch"
    text += f", ten of them {trimmed(ten.nominal, 2)} mm" if is_known(ten) else ""
    lines = [Line("head", f"{text}{'; nearest in use:' if found else ': no mount in the facts has it.'}")]
    rows = []
    for one in sorted(found, key=lambda one: abs(one - pitch)):
        rows.append(Quantity("thread_pitch_mm", Interval.exact(one), "nearest in use"))
        names = listed([mount.designation for mount in found[one][:4]], "or")
        lines.append(Line("fact", f"{trimmed(one, 3)} mm ({trimmed(MM_PER_INCH / one, 1)} tpi): {names}", 1))
    rows.append(Quantity("thread_pitch_mm", Interval.exact(pitch), "as measured"))
    if is_known(ten):
        rows.append(Quantity("ten_pitches_mm", ten, "as measured"))
    return Told(tuple(lines), tuple(rows))


def _none_so_wide(diameter: float, knowledge: Knowledge) -> Told:
    """That no mount has a thread of that width, and which come nearest."""
    used = {mount.thread for mount in knowledge.catalogue.mounts.values() if mount.kind != "filter"}
    rows = [row for row in knowledge.catalogue.threads.values() if row.id in used]
    rows.sort(key=lambda row: (abs(row.major_mm.nominal - diameter), row.id))
    near = listed([row.designation for row in rows[:3]], "or")
    text = (
        f"No mount in the facts has a thread of {trimmed(diameter, 2)} mm. Nearest: {near}. It may be a front or filter"
        " thread, or the maker's own: measure across the crests again, and the pitch."
    )
    return Told((Line("head", text),))


def _no_mount(diameter: float, pitch: float, knowledge: Knowledge) -> Told:
    """What is told of a thread that no mount has: its pitch both ways, and the threads nearest to it."""
    threads = [row for row in knowledge.catalogue.threads.values() if is_known(row.pitch_mm)]
    threads.sort(key=lambda row: (abs(row.major_mm.nominal - diameter), row.id))
    near = [row for row in threads if abs(row.major_mm.nominal - diameter) <= 0.5][:3]
    text = (
        f"{trimmed(diameter, 2)} mm across with {trimmed(pitch, 3)} mm of pitch"
        f" ({trimmed(MM_PER_INCH / pitch, 1)} tpi): no mount in the facts has that thread."
    )
    known = [row for row in near if _is_just(row, diameter, pitch)]
    if known:
        used = f" ({known[0].used_for})" if known[0].used_for else ""
        text = (
            f"That is {known[0].designation}{used}, a thread of filters, heads or accessories, which no lens"
            " mount in the facts has. What is the maker's ring for it, or does the rear unscrew to another mount?"
        )
    elif near:
        text += f" Nearest: {listed([row.designation for row in near], 'or')}. Measure the pitch again."
    rows = [Quantity("thread_pitch_mm", Interval.exact(pitch), "as measured")]
    return Told((Line("head", text),), tuple(rows))


def _is_just(row: Thread, diameter: float, pitch: float) -> bool:
    """Whether a width and a pitch are those that a thread is named by."""
    same_width = abs(row.major_mm.nominal - diameter) < JUST_MM
    return same_width and is_known(row.pitch_mm) and abs(row.pitch_mm.nominal - pitch) < JUST_MM / 10


def _fits_inside(thread: Thread, diameter: float, pitch: float | None, knowledge: Knowledge) -> bool:
    """Whether an internal thread of this kind measures so wide between its crests."""
    if not is_known(thread.pitch_mm):
        return False
    minor = thread.female_minor_mm
    crests = minor.nominal if is_known(minor) else thread.major_mm.nominal - MINOR_SHARE * thread.pitch_mm.nominal
    same = pitch is None or knowledge.catalogue.assumptions["pitch-by-paper"].value.holds(
        thread.pitch_mm.nominal - pitch
    )
    return same and knowledge.catalogue.assumptions[INSIDE].value.holds(diameter - crests)


def _fits_roughly(thread: Thread, diameter: float, pitch: float | None, knowledge: Knowledge, within: float) -> bool:
    """'approx 25': a width that was guessed, or told in whole millimetres, beside a pitch that fits."""
    good = knowledge.catalogue.assumptions["pitch-by-paper"].value
    pitched = pitch is not None and is_known(thread.pitch_mm) and good.holds(thread.pitch_mm.nominal - pitch)
    return pitched and abs(diameter - thread.major_mm.nominal) <= within


def _fits(thread: Thread, diameter: float, pitch: float | None, knowledge: Knowledge) -> bool:
    usual = knowledge.catalogue.assumptions
    read = usual["caliper-over-crests"].value
    if _is_coarse(diameter, pitch):
        read = read.widened(ROUNDED_MM - abs(read.least), 0.0)
    if not read.holds(diameter - thread.major_mm.nominal):
        return False
    if pitch is None:
        return True
    return is_known(thread.pitch_mm) and usual["pitch-by-paper"].value.holds(thread.pitch_mm.nominal - pitch)


def by_ruler(question: Question, mounts: Sequence[str], knowledge: Knowledge) -> Told:
    """'can i see that with a ruler' after screws that start in each other: what ten crests of each come to."""
    if not (question.follows and question.mentions("by-a-ruler")):
        return Told()
    facts, meets = knowledge.catalogue, knowledge.joints.mating
    threads = {thread for name in mounts if (thread := facts.mounts[name].thread)}
    if len(mounts) == 1:
        others = {mount.thread for mount in facts.mounts.values() if mount.kind != "filter" and mount.thread}
        pairs = [(one, other) for one in threads for other in others]
        threads |= {other for one, other in pairs if (met := meets(one, other)) and met.outcome == "binds"}
    return ten_pitches(knowledge, threads) if len(threads) > 1 else Told()


def ten_pitches(knowledge: Knowledge, among: Iterable[str] = ()) -> Told:
    """The length of ten pitches of the threads named, else of usual ones, to compare a paper strip with."""
    parts, rows = [], []
    seen: set[float] = set()
    threads = knowledge.catalogue.threads
    of_mounts = {m.thread for m in knowledge.catalogue.mounts.values() if m.kind != "filter" and m.thread}
    for thread in (threads[name] for name in sorted(set(among) or of_mounts)):
        if not is_known(thread.pitch_mm):
            continue
        pitch = round(thread.pitch_mm.nominal, 4)
        length = calibration.length_of_spaces_mm(thread.pitch_mm)
        if pitch in seen or not is_known(length):
            continue
        seen.add(pitch)
        tpi = MM_PER_INCH / pitch
        name = (
            f"{tpi:.0f} tpi" if abs(tpi - round(tpi)) < 0.01 and round(pitch, 2) != pitch else f"{trimmed(pitch, 3)} mm"
        )
        rows.append(Quantity("ten_pitches_mm", length, name))
        parts.append(f"{trimmed(length.nominal, 2)} mm = {name}")
    text = "Ten pitches, crest to the tenth crest after it: " + ", ".join(sorted(parts)) + "."
    return Told((Line("text", text),), tuple(rows))
