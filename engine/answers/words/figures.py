"""One figure of a mount or thread that is asked: its register, how wide it is, its pitch, how it is cut."""

from __future__ import annotations

from collections.abc import Iterator
from math import isclose
from typing import Final

from engine.answers.found.screwed_in import FILTER, fronts_of
from engine.answers.found.threads_told import thread_named
from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import numbers
from engine.answers.parts.usual_mounts import mounts_of_film
from engine.answers.parts.wording import trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, Measure, is_known
from engine.base.units import MM_PER_INCH
from engine.facts.records import Mount, Thread
from grammar.kinds import COMPARE, DEFINITION, DIY_DIMENSION, IDENTIFY_MOUNT
from grammar.questions import Question

AS_PRINTED_MM: Final = 0.03  # registers that are printed farther apart than this are told as a range
MOST: Final = 4  # mounts of one name whose figures are told
FINEST_TPI: Final = 60  # more threads an inch than this are metric
# keys of phrases that ask for a figure of a thread alone
OF_THREAD: Final = ("figure-diameter", "figure-angle", "figure-male", "figure-female", "figure-pitch", "figure-thread")
OF_MOUNT: Final = ("figure-register", "figure-throat", "figure-glass", "figure-depth")
BEHIND: Final = ("figure-glass", "figure-depth")  # asked by whatever kind of question
AS_FIGURE: Final = (DEFINITION, DIY_DIMENSION, IDENTIFY_MOUNT)  # kinds that any figure may be asked as
OF_MAKING: Final = ("figure-angle", "figure-male", *BEHIND)  # keys that tell of a part to make what is asked
_TELL_WHICH: Final = ("thread", "filter_thread", "angle", "numbers")  # values beside which a figure may still be asked


def with_figures(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind the figures that are asked of the one mount or thread that is named."""
    told = figures(question, knowledge)
    if not told.lines:
        return answer
    have = {(row.name, row.case) for row in answer.quantities or ()}
    rows = tuple(row for row in told.quantities if (row.name, row.case) not in have)
    return replace(answer, lines=(*told.lines, *answer.lines), quantities=(*rows, *(answer.quantities or ())))


def figures(question: Question, knowledge: Knowledge) -> Told:
    """A line for each mount of the name, or for the thread, with the figures that are asked of it."""
    asked = (*OF_MOUNT, *OF_THREAD) if question.intent in AS_FIGURE else BEHIND
    keys = [key for key in asked if question.places(key)]  # what was asked before is not
    keys = [key for key in keys if question.intent != DIY_DIMENSION or key in OF_MAKING]
    wide = any(key in keys for key in ("figure-male", "figure-female", "figure-throat"))
    if wide or question.places("of-circle"):  # 'the diameter of the image circle of a C-mount lens'
        keys = [key for key in keys if key != "figure-diameter"]
    of_it = (*_TELL_WHICH, "pitch") if question.intent == DIY_DIMENSION else _TELL_WHICH  # 'cutting 36 tpi RMS'
    measured = any(key not in of_it for key, _ in question.values)
    measured = measured or (question.intent == IDENTIFY_MOUNT and bool(question.values))
    if not keys or measured:
        return Told()
    mounts, threads = _named(question, knowledge)
    if not mounts and "figure-glass" in keys:
        mounts = _with_glass(question, knowledge)
    lines: list[Line] = []
    rows: list[Quantity] = []
    usual = "" if mounts or threads else _by_format(question, knowledge, mounts)
    for mount in mounts:
        own = knowledge.catalogue.threads.get(mount.thread or "")
        texts = [*_of_mount(mount, keys, rows), *(_of_thread(own, mount.id, keys, rows) if own is not None else ())]
        if texts:
            lines.append(Line("head", f"{mount.designation}{usual}: {'; '.join(texts)}."))
    for thread in threads if not mounts else ():
        texts = list(_of_thread(thread, thread.id, keys, rows))
        if texts:
            lines.append(Line("head", f"{thread.designation}: {'; '.join(texts)}."))
    return Told(tuple(lines), tuple(rows))


def _named(question: Question, knowledge: Knowledge) -> tuple[list[Mount], list[Thread]]:
    """The mounts of the one name that stands in the question, or else its threads; none where two are set together."""
    facts = knowledge.catalogue
    things = (*question.things, *question.lenses, *question.bodies)
    mounts = [one for thing in things if thing.kind == "mount" for one in [list(thing.ids[:MOST])]]
    threads = [facts.threads[name] for thing in things if thing.kind == "thread" for name in thing.ids[:1]]
    told = thread_named(question.said("thread") or "", knowledge.catalogue)
    threads += [told] if told is not None and told not in threads else []
    widths = numbers(question, "filter_thread")
    threads += [one for width in widths for one in fronts_of(width, knowledge) if one not in threads]
    if any(facts.mounts[name].kind == FILTER for row in mounts for name in row):  # a width cut with two pitches
        wide = [facts.threads[facts.mounts[row[0]].thread or ""] for row in mounts if facts.mounts[row[0]].thread]
        threads = [one for own in wide for one in fronts_of(own.major_mm.nominal, knowledge)]
        return ([], threads) if len(threads) > 1 else ([facts.mounts[row[0]] for row in mounts], [])
    if len({tuple(row) for row in mounts}) > 1 and question.intent not in (DEFINITION, COMPARE):
        return [], []
    ids = dict.fromkeys(name for row in mounts for name in row)
    return [facts.mounts[name] for name in ids], threads


def _with_glass(question: Question, knowledge: Knowledge) -> list[Mount]:
    """The mounts with bodies of a format that is named, of which the glass before the sensor is known."""
    things = (*question.bodies, *question.things)
    formats = {form for thing in things for form in (thing.format, thing.format_too) if form}
    formats |= {name for thing in things if thing.kind == "format" for name in thing.ids[:1]}
    formats |= {question.said("format") or ""} - {""}
    every = knowledge.catalogue.mounts.values()
    return [one for one in every if is_known(one.cover_glass_mm) and formats & {*one.formats, one.format}]


def _by_format(question: Question, knowledge: Knowledge, mounts: list[Mount]) -> str:
    """Adds the mount that cameras of the one film told mostly have; says that it is taken for that."""
    usual = mounts_of_film(question, knowledge.catalogue)
    if not usual:
        return ""
    mounts.append(usual[0])
    name = knowledge.catalogue.formats[usual[0].format or ""].name
    return f", which most cameras and lenses of {name} have (measure the thread)"


def _of_mount(mount: Mount, keys: list[str], rows: list[Quantity]) -> Iterator[str]:
    if "figure-register" in keys:
        if is_known(mount.register_mm):
            rows.append(Quantity("register_mm", mount.register_mm, mount.id))
            between = mount.register_mm.greatest - mount.register_mm.least > AS_PRINTED_MM
            size = _between(mount.register_mm) if between else trimmed(mount.register_mm.nominal, 3)
            yield f"register {size} mm, flange to image"
        else:
            yield (
                "no register: nothing but the lens itself tells how far it sits"
                if mount.adjustable
                else ("its register is not established: measure it, and take no figure on trust")
            )
    if "figure-diameter" in keys and mount.kind == FILTER and mount.thread is None and is_known(mount.throat_mm):
        rows.append(Quantity("thread_diameter_mm", mount.throat_mm, mount.id))
        yield f"{trimmed(mount.throat_mm.nominal, 1)} mm across"
    if "figure-throat" in keys and is_known(mount.throat_mm):
        rows.append(Quantity("bore_mm", mount.throat_mm, mount.id))
        yield f"{trimmed(mount.throat_mm.nominal, 2)} mm across inside"
    elif "figure-throat" in keys:
        yield "how wide it is inside is not established"
    yield from _behind(mount, keys, rows)


def _behind(mount: Mount, keys: list[str], rows: list[Quantity]) -> Iterator[str]:
    """What lies behind the flange: how much is free, and the glass before the sensor."""
    if "figure-depth" in keys and is_known(mount.clear_depth_mm):
        rows.append(Quantity("clearance_mm", mount.clear_depth_mm, mount.id))
        yield f"a rear may reach {_between(mount.clear_depth_mm)} mm behind the flange"
        if is_known(mount.register_mm):
            left = mount.register_mm.nominal - mount.clear_depth_mm.nominal
            yield f"that is to {trimmed(left, 2)} mm from the sensor"
    elif "figure-depth" in keys:
        yield "how deep a rear may reach behind the flange is not published: measure the body and the lens"
    if "figure-glass" in keys and is_known(mount.cover_glass_mm):
        yield f"about {_between(mount.cover_glass_mm)} mm of glass before the sensor, by the trade's memory"
    elif "figure-glass" in keys:
        yield "how thick the glass before the sensor is is not established"


def _of_thread(thread: Thread, case: str, keys: list[str], rows: list[Quantity]) -> Iterator[str]:
    if "figure-thread" in keys or "figure-pitch" in keys:
        yield f"thread {thread.designation}{_pitch(thread)}"
        rows.append(Quantity("thread_diameter_mm", thread.major_mm, case))
        if is_known(thread.pitch_mm):
            rows.append(Quantity("thread_pitch_mm", thread.pitch_mm, case))
    elif "figure-diameter" in keys:
        yield f"{trimmed(thread.major_mm.nominal, 3)} mm across{f'; {thread.note}'.rstrip('.') if thread.note else ''}"
        rows.append(Quantity("thread_diameter_mm", thread.major_mm, case))
    if "figure-angle" in keys:
        angle = thread.form_angle_deg
        yield f"flanks of {trimmed(angle.nominal, 0)} degrees" if is_known(angle) else "its flank angle is not known"
    if "figure-male" in keys:
        wide = "" if is_known(thread.male_major_mm) else f", {trimmed(thread.major_mm.nominal, 2)} mm"
        yield _limits(f"male thread{wide}", thread.male_major_mm, "over the crests")
        if is_known(thread.male_major_mm):
            rows.append(Quantity("thread_diameter_mm", thread.male_major_mm, f"{case}, male"))
    if "figure-female" in keys:
        yield _limits("hole before the thread is cut", thread.female_minor_mm, "wide")
        if is_known(thread.female_minor_mm):
            rows.append(Quantity("bore_mm", thread.female_minor_mm, f"{case}, before cutting"))


def _limits(of: str, size: Measure, across: str) -> str:
    if not is_known(size):
        return f"{of}: its limits are not published"
    return f"{of} {_between(size)} mm {across}"


def _between(size: Interval) -> str:
    least, greatest = trimmed(size.least, 2), trimmed(size.greatest, 2)
    return least if least == greatest else f"{least} to {greatest}"


def _pitch(thread: Thread) -> str:
    if not is_known(thread.pitch_mm):
        return ""
    pitch = thread.pitch_mm.nominal
    tpi = MM_PER_INCH / pitch
    inch = (
        f" ({tpi:.0f} to the inch)"
        if tpi < FINEST_TPI and pitch != 1 and isclose(tpi, round(tpi), abs_tol=0.01)
        else ""
    )
    return f", {trimmed(thread.major_mm.nominal, 3)} mm wide, pitch {trimmed(pitch, 3)} mm{inch}"
