"""Who works the iris of a lens on a chain, and how: a ring on the lens or the adapter, the body, or nobody."""

from __future__ import annotations

from typing import Final

from engine.chains.walk import OWN_BODY
from engine.judging.judge import Judged

LEAD: Final = "iris: "  # how the line begins that tells it


def iris_text(judged: Judged) -> tuple[str, str]:
    """Who works the iris, as the record names it, and a line."""
    by, told = iris_told(judged)
    return by, f"{LEAD}{told}"


def iris_told(judged: Judged) -> tuple[str, str]:
    """Who works the iris, as the record names it, and how it is worked."""
    drive = judged.measured_trace.value("lens_iris")
    offered = judged.measured_trace.value("adapter_iris")
    offered = offered if isinstance(offered, tuple) else ()
    own = "own-iris" in offered
    if OWN_BODY in offered and drive in ("lever", "electronic", "mixed"):
        return (
            "electronic" if drive == "electronic" else "unknown",
            "by the body, as on any lens of its own mount",
        )
    if drive == "ring":
        return "lens-ring", "by the ring on the lens"
    if drive == "fixed":
        return ("adapter-ring", "none in the lens; the adapter has one") if own else (
            "none", "none, always wide open"
        )  # fmt: skip
    if drive == "lever":
        if "lever-ring" in offered or own:
            return "adapter-ring", "by the ring on the adapter, stepless and unmarked"
        return "none", "cannot be worked here; it needs an adapter with an iris lever"
    if drive == "electronic":
        if "electronic" in offered:
            return "electronic", "by the body, through the contacts of the adapter"
        if own:
            return "adapter-ring", "by an iris in the adapter, behind the lens"
        return "none", "stuck, it needs power; as it was left, mostly wide open"
    if drive == "mixed":
        if "electronic" in offered:
            return "electronic", "by the body through the contacts, or by the ring where the lens has one"
        if "lever-ring" in offered or own:
            return "adapter-ring", "by the ring on the adapter, or by the lens's own where it has one"
        return "unknown", "by the lens's own ring where it has one; lenses without need an adapter with a lever"
    return "unknown", "not known how it is worked"
