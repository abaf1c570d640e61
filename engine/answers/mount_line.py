"""Thread or bayonet of a mount, and its register, in one line."""

from __future__ import annotations

from engine.answers.knowledge import Knowledge
from engine.answers.wording import trimmed
from engine.base.interval import is_known
from engine.facts.records import Mount, Thread


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
    return "; ".join(parts)


def _pitch(thread: Thread) -> str:
    if not is_known(thread.pitch_mm):
        return ""
    text = f"{trimmed(thread.pitch_mm.nominal, 3)} mm"
    tpi = 25.4 / thread.pitch_mm.nominal
    return (
        f"{text} ({tpi:.0f} tpi)"
        if abs(tpi - round(tpi)) < 0.01 and tpi < 60 and thread.pitch_mm.nominal != 1
        else text
    )
