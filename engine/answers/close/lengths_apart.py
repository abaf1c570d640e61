"""Two focal lengths set against each other close up: the room that each leaves, and the extension that each takes."""

from __future__ import annotations

from typing import Final

from engine.answers.close.image_side import size_told
from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, mentions
from engine.answers.parts.wording import listed, times, trimmed
from engine.answers.picture.filling import magnification_filling
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.physics import closeup, focus
from grammar.questions import CLOSE_UP_LENS, Question

FEWEST: Final = 2
CLOSE_UP: Final = frozenset(["enlarger", "macro"])  # kinds of lenses that are used close up
LIFE_SIZE: Final = 1.0
THIN: Final = "Taken for thin lenses: a retrofocus lens leaves less room, a tele more."


def with_lengths_apart(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind which of several lengths leaves the more room."""
    told = lengths_apart(question, knowledge.catalogue)
    return replace(answer, lines=(*told.lines[:1], *answer.lines)) if told.lines else answer


def lengths_apart(question: Question, facts: Catalogue) -> Told:
    """At the magnification told, or that fills the frame; at life size for lenses that are made for nothing else."""
    lengths = sorted(dict.fromkeys(focals(question)))
    pieces = [one for one in question.adapters if one.thickness_mm or one.piece == CLOSE_UP_LENS]
    size = size_told(question) or magnification_filling(question, facts)
    of_kind = any(lens.lens_kind in CLOSE_UP for lens in question.lenses) or mentions(question, "close-up-spoken")
    size = size or (LIFE_SIZE if of_kind else None)
    if len(lengths) < FEWEST or pieces or not size:
        return Told()
    told, m = Told(), Interval.exact(size)
    rooms: list[str] = []
    for length in lengths:
        f, case = Interval.exact(length), f"{trimmed(length, 1)} mm"
        tube, image = closeup.extension_for_magnification_mm(f, m), closeup.image_distance_mm(f, m)
        room, whole = closeup.from_front_principal_mm(f, tube), focus.from_sensor_mm(f, Interval.exact(0.0), tube)
        if not (is_known(tube) and is_known(image) and is_known(room) and is_known(whole)):
            return Told()
        text = (
            f"{case}: {trimmed(tube.nominal, 1)} mm of extension beyond its infinity position; the subject"
            f" {trimmed(room.nominal, 0)} mm before its front principal plane, {trimmed(whole.nominal, 0)} mm from the"
            " sensor"
        )
        rows = (
            Quantity("extension_mm", tube, case), Quantity("from_front_principal_mm", room, case),
            Quantity("focus_from_sensor_mm", whole, case), Quantity("image_distance_mm", image, case),
        )  # fmt: skip
        told += Told((Line("fact", text, 1),), rows)
        rooms.append(trimmed(room.nominal, 0))
    short, long = (f"{trimmed(one, 1)} mm" for one in (lengths[0], lengths[-1]))
    text = (
        f"At {times(size)} the {long} leaves the more room for lens and lamps ({listed(rooms[::-1], 'against')} mm);"
        f" the {short} takes the shorter tube and stand. Both grow with the focal length, and the light lost is about"
        " the same."
    )
    return Told((Line("head", text),)) + told + Told((Line("note", THIN),))
