"""Thread or bayonet of a mount, and its register, in one line."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import ceil

from engine.answers.parts.answer import Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import trimmed
from engine.base.interval import is_known
from engine.base.units import MM_PER_INCH
from engine.facts.records import Mount, Thread

IRIS_SEEN = {
    "ring": "aperture ring on the lens",
    "electronic": "contacts drive the iris, mostly no aperture ring",
    "lever": "a lever drives the iris",
    "mixed": "aperture ring or contacts, by age",
}
FOCUSED_BY_RING = frozenset({"enlarger", "projector"})  # kinds of mounts whose lenses what holds them focuses


def registers_of(mounts: Iterable[Mount]) -> tuple[Quantity, ...]:
    """The register of each mount whose own is known, in mm."""
    return tuple(
        Quantity("register_mm", mount.register_mm, mount.id) for mount in mounts if is_known(mount.register_mm)
    )


def mount_line(mount: Mount, knowledge: Knowledge) -> str:
    """Thread or bayonet, and register, in one line."""
    parts = []
    thread = knowledge.catalogue.threads.get(mount.thread or "")
    if thread is not None:
        parts.append(f"thread {thread.designation}" + (f", pitch {_pitch(thread)}" if _pitch(thread) else ""))
    elif mount.coupling != "unknown":
        parts.append(mount.coupling.replace("-", " "))
    if is_known(mount.register_mm):
        parts.append(f"register {trimmed(mount.register_mm.nominal, 3)} mm")
    elif mount.adjustable:
        parts.append("no register of its own")
    else:
        parts.append("register not established")
    held = is_known(mount.register_mm) or mount.kind in FOCUSED_BY_RING
    if held and "no-focusing" in mount.traits:
        parts.append("such a lens has no focusing of its own: its ring must have a helicoid")
    return "; ".join(parts)


def looks_line(mount: Mount) -> str:
    """What sets a lens of a mount apart at sight: how wide it is behind, and what drives its iris."""
    seen = [f"throat {trimmed(mount.throat_mm.nominal, 1)} mm"] if is_known(mount.throat_mm) else []
    seen += [IRIS_SEEN[mount.iris]] if mount.iris in IRIS_SEEN else []
    return "".join(f"; {one}" for one in seen)


def mount_numbers(mount: Mount, knowledge: Knowledge) -> Iterator[Quantity]:
    """Register, and width and pitch of the thread, as far as the facts have them."""
    yield from registers_of([mount])
    thread = knowledge.catalogue.threads.get(mount.thread or "")
    if thread is not None:
        yield Quantity("thread_diameter_mm", thread.major_mm, mount.id)
        if is_known(thread.pitch_mm):
            yield Quantity("thread_pitch_mm", thread.pitch_mm, mount.id)


def how_rare(mount: Mount, knowledge: Knowledge) -> tuple[bool, bool, int, str]:
    """The order in which mounts of one thread are met: with a register of their own, with many rings sold."""
    rings = sum(ring.front == mount.id or ring.rear == mount.id for ring in knowledge.catalogue.adapters.values())
    return "thread-only" in mount.traits, not is_known(mount.register_mm), -rings, mount.id


def at_wrong_depth(off_mm: float, knowledge: Knowledge) -> str:
    """How a lens that lies this far from its register focuses; above nought it lies too far out.

    Too close it is sharp where its own focusing makes that up, which by the usual travel the longer lenses do.
    """
    if off_mm > 0:
        return "too far out: close-up only"
    share = knowledge.catalogue.assumptions["usual-travel-share"].value.greatest
    return f"too close: sharp only by its own travel, which lenses under about {ceil(-off_mm / share)} mm lack"


def _pitch(thread: Thread) -> str:
    if not is_known(thread.pitch_mm):
        return ""
    text = f"{trimmed(thread.pitch_mm.nominal, 3)} mm"
    tpi = MM_PER_INCH / thread.pitch_mm.nominal
    return (
        f"{text} ({tpi:.0f} tpi)"
        if abs(tpi - round(tpi)) < 0.01 and tpi < 60 and thread.pitch_mm.nominal != 1
        else text
    )
