"""Which mounts have all that was measured of a lens: thread, pitch and register; and what speaks against each."""

from __future__ import annotations

import re

from engine.answers.parts.answer import Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import how_rare, mount_line, mount_numbers
from engine.answers.parts.near_enough import gauged_mm
from engine.answers.parts.said import pitch_mm
from engine.answers.parts.wording import listed, small_mm, trimmed
from engine.base.compact import compact
from engine.base.interval import is_known
from engine.facts.kinds import ACCESSORIES
from engine.facts.records import Mount
from engine.physics import calibration
from grammar.questions import Question

MOST = 4
EXACTLY_MM = 0.1
MOST_ALIKE = 2
ALL = 3
LEAST_TOLD = 2  # of thread, pitch and register: one alone is told of elsewhere


@compact
class Found:
    """What was measured of one lens, mm; None where it was not."""

    diameter_mm: float | None
    pitch_mm: float | None
    register_mm: float | None
    slack_mm: float = 0.0  # what the width may be off, where it was told roughly

    @property
    def count(self) -> int:
        return sum(one is not None for one in (self.diameter_mm, self.pitch_mm, self.register_mm))


@compact
class Match:
    """One mount set beside what was measured."""

    mount: Mount
    good: tuple[str, ...]
    bad: tuple[str, ...]
    off_mm: float = 0.0


def matches(found: Found, named: tuple[str, ...], knowledge: Knowledge) -> list[Match]:
    """Mounts with any thread that the measured one may be, and those named, the best first; none where too little."""
    if found.count < LEAST_TOLD or found.diameter_mm is None:
        return []
    rows = []
    for mount in knowledge.catalogue.mounts.values():
        if mount.kind in ACCESSORIES or "thread-only" in mount.traits:
            continue
        row = _match(mount, found, knowledge)
        if row is not None and (row.good[:1] == ("thread",) or mount.id in named):
            rows.append(row)
    return sorted(
        rows,
        key=lambda row: (
            len(row.bad), -len(row.good), row.off_mm, _pitch_off(row.mount, found, knowledge),
            how_rare(row.mount, knowledge),
        ),
    )  # fmt: skip


def _pitch_off(mount: Mount, found: Found, knowledge: Knowledge) -> float:
    """How far the pitch told is from the mount's, in hundredths: of two that paper hardly parts the nearer leads."""
    thread = knowledge.catalogue.threads.get(mount.thread or "")
    if found.pitch_mm is None or thread is None or not is_known(thread.pitch_mm):
        return 0.0
    return round(abs(thread.pitch_mm.nominal - found.pitch_mm), 2)


def _match(mount: Mount, found: Found, knowledge: Knowledge) -> Match | None:
    usual = knowledge.catalogue.assumptions
    thread = knowledge.catalogue.threads.get(mount.thread or "")
    if thread is None:
        return None
    good: list[str] = []
    bad: list[str] = []
    off = 0.0
    assert found.diameter_mm is not None
    wider = found.diameter_mm - thread.major_mm.nominal
    fits = usual["caliper-over-crests"].value.holds(wider) or abs(wider) <= found.slack_mm
    (good if fits else bad).append("thread" if fits else f"its thread is {_mm(thread.major_mm.nominal)} across")
    if found.pitch_mm is not None and is_known(thread.pitch_mm):
        pitch = thread.pitch_mm.nominal
        fits = usual["pitch-by-paper"].value.holds(pitch - found.pitch_mm)
        ten = calibration.length_of_spaces_mm(thread.pitch_mm)
        more = f", ten of them {_mm(ten.nominal)}" if is_known(ten) else ""
        (good if fits else bad).append("pitch" if fits else f"its pitch is {_mm(pitch)}{more}")
    if found.register_mm is not None and is_known(mount.register_mm):
        register = mount.register_mm.nominal
        off = abs(register - found.register_mm)
        metal = mount.mechanical_mm  # a depth gauge goes past the glass behind the flange
        gauged = is_known(metal) and abs(metal.nominal - found.register_mm) <= gauged_mm(knowledge.catalogue)
        fits = off <= usual["register-by-paper"].value.greatest or gauged
        text = f"its register is {_mm(register)}, {small_mm(off)} from what was measured"
        (good if fits else bad).append("register" if fits else text)
    return Match(mount, tuple(good), tuple(bad), off)


def told(found: Found, rows: list[Match], named: tuple[str, ...], knowledge: Knowledge) -> Told:
    """What fits all of it, what was named and does not, and what to measure again where nothing fits."""
    if not rows:
        return Told()
    whole = [row for row in rows if not row.bad]
    proven = [row for row in whole if len(row.good) == found.count]
    lead = _measured(found)
    lines: list[Line] = []
    shown = (proven or whole)[:MOST]
    nearly = _of_other_pitch(shown, found, knowledge)
    shown = [row for row in shown if row not in nearly]
    lead += _metric(shown, found, knowledge)
    names = listed([row.mount.designation for row in shown], "or")
    if len(shown) == 1 and proven:
        sure = "that is" if found.count == ALL else "by these it is"
        lines.append(Line("head", f"{lead}: {sure} {names}."))
    elif shown:
        lines.append(Line("head", f"{lead}: {names}."))
    if shown and not proven and found.register_mm is not None:
        own = "lenses with this thread and no register of the mount's own, each with its own"
        lines = [Line("head", f"{lead}: {names}, {own}.")]
    if not shown:
        lines.append(Line("head", f"{lead}: no mount in the facts has all of it. One of the readings may be off."))
    lines += [Line("fact", f"{row.mount.designation}: {mount_line(row.mount, knowledge)}", 1) for row in shown]
    lines += [Line("fact", _loosely(row.mount, found, knowledge), 1) for row in nearly]
    against = [row for row in rows if row.mount.id in named and row.bad]
    if proven and found.register_mm is not None:
        # the one of the same thread that it is mostly taken for
        alike = [row for row in rows if row.bad and row.good[:1] == ("thread",) and row not in against]
        likely = {row.likely for row in knowledge.catalogue.shared.values()}
        ahead = [row for row in alike if row.mount.id in likely or proven[0].mount.id in row.mount.look_alikes]
        against += sorted(ahead, key=lambda row: (row.mount.id not in likely, row.off_mm))[:MOST_ALIKE]
    if not proven:
        # a look-alike that one reading alone speaks against, and that the register speaks for
        rest = [row for row in rows if row.bad and row not in against]
        against += sorted(rest, key=lambda row: (len(row.bad), "register" not in row.good))
    for row in against[:MOST]:
        fits = f" (its {listed(row.good)} would fit)" if row.good else ""
        lines.append(Line("fact", f"not {row.mount.designation}: {listed(row.bad)}{fits}", 1))
    if not shown:
        lines.append(Line("ask", "Measure again what speaks against the likeliest of these."))
    rows_shown = [*shown, *nearly, *against[:MOST]]
    return Told(tuple(lines), tuple(one for row in rows_shown for one in mount_numbers(row.mount, knowledge)))


def _of_other_pitch(shown: list[Match], found: Found, knowledge: Knowledge) -> list[Match]:
    """Those whose pitch is only near the one told, where others have just that pitch."""
    off = {row.mount.id: _pitch_off(row.mount, found, knowledge) for row in shown}
    just = any(not by for by in off.values()) and found.pitch_mm is not None and found.register_mm is None
    return [row for row in shown if just and off[row.mount.id]]


def _metric(shown: list[Match], found: Found, knowledge: Knowledge) -> str:
    """', a metric M39' where all that fit have the one metric thread, which its width and pitch name."""
    threads = {row.mount.thread for row in shown}
    thread = knowledge.catalogue.threads.get(next(iter(threads)) or "") if len(threads) == 1 else None
    named = re.match(r"(M\d+)x", thread.designation) if thread is not None and found.pitch_mm is not None else None
    return f", a metric {named[1]}" if named and found.register_mm is None else ""


def _loosely(mount: Mount, found: Found, knowledge: Knowledge) -> str:
    """What would have to be off for a mount of nearly that pitch."""
    thread = knowledge.catalogue.threads.get(mount.thread or "")
    if thread is None or not is_known(thread.pitch_mm) or found.pitch_mm is None:
        return f"{mount.designation}: {mount_line(mount, knowledge)}"
    ten, told = calibration.length_of_spaces_mm(thread.pitch_mm), 10 * found.pitch_mm
    of_ten = f" its ten pitches are {_mm(ten.nominal)}, not {_mm(told)};" if is_known(ten) else ""
    return f"{mount.designation} only if the pitch was read loosely:{of_ten} {mount_line(mount, knowledge)}"


def settled(found: Found, rows: list[Match]) -> list[Mount]:
    """The mounts that have all that was measured, the register among it, the nearest first."""
    proven = [row.mount for row in rows if not row.bad and len(row.good) == found.count]
    return proven[:MOST] if found.register_mm is not None else []


def _measured(found: Found) -> str:
    parts = [f"{_mm(found.diameter_mm)} across"] if found.diameter_mm is not None else []
    parts += [f"pitch {_mm(found.pitch_mm)}"] if found.pitch_mm is not None else []
    parts += [f"{_mm(found.register_mm)} from flange to image"] if found.register_mm is not None else []
    return listed(parts)


def _mm(value: float) -> str:
    return f"{trimmed(value, 3)} mm"


def of_nearly_its_pitch(mount: Mount, others: list[Mount], question: Question, knowledge: Knowledge) -> list[Mount]:
    """The other mounts of as wide a thread whose pitch paper hardly parts from the one told: LTM beside M39x1."""
    told, threads = pitch_mm(question), knowledge.catalogue.threads
    mine = threads.get(mount.thread or "")
    if told is None or mine is None:
        return []
    out = []
    for other in others:
        thread = threads.get(other.thread or "")
        if thread is None or thread.id == mine.id or not is_known(thread.pitch_mm):
            continue
        if other.kind in ACCESSORIES:
            continue
        wide = abs(thread.major_mm.nominal - mine.major_mm.nominal) < EXACTLY_MM
        if wide and knowledge.catalogue.assumptions["pitch-by-paper"].value.holds(thread.pitch_mm.nominal - told):
            out.append(other)
    return out
