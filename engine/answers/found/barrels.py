"""Which plain barrel a lens without a thread has, by its width, and what holds such a lens."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import lengths_of_pieces, mentions, number
from engine.answers.parts.usual_mounts import PLAIN, PROJECTOR
from engine.answers.parts.wording import listed, small_mm
from engine.answers.seat.bores import named_barrel
from engine.base.interval import is_known
from grammar.questions import Question

BY_NAME = "barrel-by-name"  # of the facts: how far apart the same barrel is told


def barrels(question: Question, knowledge: Knowledge) -> Told:
    """The barrels of the facts that are as wide, and how to hold one; nothing where a thread or mount is told."""
    tube = next((length[0] for length in lengths_of_pieces(question)), None)  # 'a smooth chrome tube, 52.4 mm'
    width = number(question, "barrel", "thread", "bore") or named_barrel(question, knowledge) or tube
    clamped = width is None and mentions(question, "coupled-breech")  # by a ring of its own: no smooth barrel
    if not _is_smooth(question, width) or _has_lugs(question) or clamped or question.said("pitch") is not None:
        return Told()
    apart = knowledge.catalogue.assumptions[BY_NAME].value
    rows = [
        mount for mount in knowledge.catalogue.mounts.values()
        if mount.coupling in PLAIN and is_known(mount.throat_mm)
        and (width is None or apart.holds(mount.throat_mm.nominal - width))
    ]  # fmt: skip
    held = (
        "A lens without a thread has no mount and no register: it slides in a clamp or a sleeve, and is focused by"
        " sliding. Use a tube, bellows or helicoid with a clamp or a ring of set screws that takes the barrel"
    )
    if width is None:
        return Told((Line("head", f"{held}."), Line("ask", "How wide is the barrel, by caliper?", wants="thread")))
    rows.sort(key=lambda mount: abs(mount.throat_mm.nominal - width) if is_known(mount.throat_mm) else 99.0)
    names = listed([mount.designation for mount in rows], "or")
    thrown = not rows or all(mount.kind == PROJECTOR for mount in rows)
    whose = "a projector lens's" if thrown else "a plain"
    what = f"{whose} barrel: {names}" if rows else "a plain barrel as projector lenses have them"
    iris = "It has no iris; most draw a large circle." if thrown else ""
    lines = (
        Line("head", f"{small_mm(width)} across, smooth: {what}."),
        Line("text", f"{held} of {small_mm(width)}. {iris}".rstrip()),
        Line("ask", "How far behind its rear end is the image of a far window? Measure that: the camera's register must"
                    " be less."),
    )  # fmt: skip
    return Told(
        lines, tuple(Quantity("bore_mm", mount.throat_mm, mount.id) for mount in rows if is_known(mount.throat_mm))
    )


def _has_lugs(question: Question) -> bool:
    """Whether something is told of that holds it; 'no lugs' tells of none."""
    denied = question.places("no-lugs")
    told = question.places("held-by-lugs")
    return any(not any(no.at <= one.at < no.end for no in denied) for one in told)


def _is_smooth(question: Question, width: float | None) -> bool:
    """Whether it is said to have no thread; a projector lens of which a width is told has none unless that is said."""
    of_projector = any(lens.lens_kind == PROJECTOR for lens in question.lenses)
    bare = mentions(question, "no-thread") and not mentions(question, "drops-asked")  # 'falls in, no threads catch'
    return bare or (of_projector and width is not None and not mentions(question, "thread-told"))
