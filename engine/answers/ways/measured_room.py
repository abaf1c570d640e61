"""Which bodies a lens without a mount goes on, by how far behind its flange the image was measured."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, body_side
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import listed, small_mm
from engine.answers.seat.open_lens import depends, focusing_lines
from engine.answers.ways.kinds_asked import is_of, kinds_asked
from engine.answers.ways.refused_mounts import usual_by_rings
from engine.base.interval import Interval, is_known
from engine.facts.records import Mount
from grammar.kinds import LIST_FITS
from grammar.questions import Question

MOST_LISTED: Final = 12
MOST_TOO_DEEP: Final = 6
WITH_SENSOR: Final = frozenset({"digital"})  # bodies that are told where no kind is asked for


def room_on_bodies(question: Question, knowledge: Knowledge) -> Answer | None:
    """The bodies by what is left between them and the lens; None where no lens was measured, or its mount is told."""
    measured, lens = number(question, "flange_to_image"), question.lens
    if measured is None or lens is None or len(question.lenses) > 1 or lens.ids or mentions(question, "all-mounts"):
        return None
    named = [thing for thing in question.bodies if thing.ids]
    if named:
        body = body_side(named[0], knowledge.catalogue)
        return depends(question, lens, body, knowledge) if isinstance(body, BodySide) else None
    rows = _rows(measured, question, knowledge)
    held = [(mount, room) for mount, room in rows if room.nominal >= _thinnest_ring(knowledge)]
    short = [mount for mount, room in rows if room.nominal < 0]
    thin = [mount for mount, room in rows if 0 <= room.nominal < _thinnest_ring(knowledge)]
    lines = [_head(measured, held)]
    for mount, room in held[:MOST_LISTED]:
        lines.append(
            Line("fact", f"{mount.designation}: {small_mm(room.nominal)} to fill by ring, helicoid or holder", 1)
        )
    if thin:
        names = listed([mount.designation for mount in thin[:MOST_TOO_DEEP]], "or")
        lines.append(Line("text", f"Next to nothing is left for a ring on {names}."))
    if short:
        names = listed([mount.designation for mount in short[:MOST_TOO_DEEP]], "or")
        lines.append(Line("text", f"Not, save close up or sunk in: {names}; deeper than {small_mm(measured)}."))
    lines += focusing_lines(lens, question)
    lines.append(
        Line("ask", "What holds it: a thread, and how wide and of which pitch, or a plain barrel?", wants="thread")
    )
    lines.append(
        Line("ask", "How far does its rear reach behind where you measured from? It must clear shutter or mirror.")
    )
    return Answer(
        question.text, LIST_FITS, ANSWERED if held else NO, tuple(lines), question=question,
        quantities=tuple(Quantity("ring_thickness_mm", room, mount.id) for mount, room in rows),
    )  # fmt: skip


def _head(measured_mm: float, held: list[tuple[Mount, Interval]]) -> Line:
    measured = small_mm(measured_mm)
    if not held:
        return Line("head", f"No body is shallow enough for {measured} from flange to image.")
    text = (
        f"With {small_mm(measured_mm)} from flange to image it reaches infinity on any body of shorter register, held "
        "so far before its flange:"
        f"With {small_mm(measured_mm)} from flange to image it reaches infinity on any body of a shorter register, "
        "held so far before its flange:"
        f"With {measured} from flange to image it reaches infinity on any body of a shorter register, held "
        "so far before its flange:"
    )
    return Line("head", text)


def _rows(measured_mm: float, question: Question, knowledge: Knowledge) -> list[tuple[Mount, Interval]]:
    """The bodies asked for with what is left before each, the usual ones first."""
    kinds = kinds_asked(question, True) or WITH_SENSOR
    found = [
        (mount, Interval.exact(measured_mm) - mount.register_mm)
        for mount in knowledge.catalogue.mounts.values()
        if is_of(mount, kinds) and is_known(mount.register_mm) and "lens-side-only" not in mount.traits
    ]
    return sorted(found, key=lambda row: (-usual_by_rings(row[0].id, knowledge), row[0].id))


def _thinnest_ring(knowledge: Knowledge) -> float:
    return knowledge.catalogue.assumptions["thinnest-ring"].value.nominal
