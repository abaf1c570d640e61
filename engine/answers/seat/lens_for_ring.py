"""A ring told by its length under a lens whose mount is not told: which lenses it brings to infinity on that body."""

from __future__ import annotations

from collections import Counter
from typing import Final

from engine.answers.parts.answer import NO, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import told_register_mm
from engine.answers.parts.resolve import BodySide
from engine.answers.parts.said import number
from engine.answers.parts.wording import listed, ranged, small_mm
from engine.base.interval import Interval, is_known
from grammar.kinds import CHAIN, FOCUS_VERDICT
from grammar.questions import RING, Question, Thing

_MOST_NAMED: Final = 6
_LENSES: Final = frozenset({"slr", "rangefinder", "cine", "medium-format"})  # kinds of mounts that a lens may have
_ASK: Final = "Which mount has the lens (M42, F, LTM ...)? Its focal length does not tell, and the ring hangs on it."


def lens_for_ring(question: Question, body: BodySide, knowledge: Knowledge) -> Answer | None:
    """What the pieces and the body ask of the lens; None where tubes alone are told, which any lens may wear."""
    lens, pieces, register = question.lens, question.adapters, body.mount.register_mm
    if lens is None or lens.ids or lens.lens_kind or question.intent not in (FOCUS_VERDICT, CHAIN) or question.follows:
        return None
    if not (is_known(register) and any(_changes_mount(one) for one in pieces)) or len(question.lenses) > 1:
        return None
    ends = [one.thickness_mm for one in pieces if one.thickness_mm is not None]
    if len(ends) < len(pieces) or number(question, "flange_to_image") is not None:
        return None
    seat = Interval.between(sum(low for low, _ in ends), sum(high for _, high in ends))
    fits = seat + register
    named, alone = _with_register(fits, knowledge), _is_one(fits, told_register_mm(knowledge.catalogue))
    which = f": {listed(named)}" if named else "; none in the facts has it" if alone else ""
    of = "a register of" if alone else "registers of"
    head = (
        f"It depends on the lens's mount, which is not told: with {ranged(seat, small_mm)} between, lenses with {of} "
        f"{ranged(fits, small_mm)} have infinity on {body.mount.designation}{which}."
    )
    rest = "One with a longer register sits too close and focuses past infinity; one with a shorter is close-up only."
    lines = (Line("head", head), Line("text", rest), Line("ask", _ASK, wants="mount"))
    rows = (Quantity("register_mm", fits, "of the lens"), Quantity("stack_mm", seat, "between"))
    return Answer(question.text, question.intent, NO, lines, question=question, quantities=rows)


def _changes_mount(piece: Thing) -> bool:
    """Whether it is a ring from one mount to another, which no lens of the body's own wears."""
    return piece.piece == RING and not piece.ids


def _is_one(register: Interval, within_mm: float) -> bool:
    return register.greatest - register.least < within_mm


def _with_register(fits: Interval, knowledge: Knowledge) -> list[str]:
    """The mounts of lenses with a register so long, those for which most rings are made first, each with its own."""
    within = told_register_mm(knowledge.catalogue)
    rings = Counter(ring.front for ring in knowledge.catalogue.adapters.values())
    found = [
        (mount, mount.register_mm.nominal)
        for mount in knowledge.catalogue.mounts.values()
        if mount.kind in _LENSES and is_known(mount.register_mm)
        and fits.least - within <= mount.register_mm.nominal <= fits.greatest + within
    ]  # fmt: skip
    found.sort(key=lambda row: (-rings[row[0].id], row[0].id))
    return [f"{mount.designation} ({small_mm(register)})" for mount, register in found[:_MOST_NAMED]]
