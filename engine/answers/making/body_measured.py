"""A body whose own register was measured: 'my C camera is 17.48 from flange to sensor', and what it is off by."""

from __future__ import annotations

from typing import Final

from engine.answers.found.narrowing import UNCLAIMED
from engine.answers.parts.said import mentions, number
from engine.answers.seat.two_registers import body_register, told_of_body
from engine.base.compact import replace
from engine.base.interval import UNKNOWN, is_known
from engine.facts.catalogue import Catalogue
from grammar.kinds import CHAIN, DIY_DIMENSION, FOCUS_VERDICT, HAZARD, IDENTIFY_MOUNT, SHIM_CALIBRATION
from grammar.questions import BODY_OFF, BODY_REGISTER, Question, Thing

_NOMINAL: Final = "nominal"
_THICKNESS: Final = "thickness"
_FLANGE: Final = "flange_to_image"
_OPEN: Final = (_FLANGE, _THICKNESS, *UNCLAIMED, "thread")
_OFF_MM: Final = 0.6  # what a body is off by at most; more is another mount's
_GAUGED_OFF_MM: Final = 1.5  # where it is said to be gauged from flange to sensor
_SETTING: Final = (SHIM_CALIBRATION, FOCUS_VERDICT, CHAIN, DIY_DIMENSION, HAZARD)


def with_body_measured(question: Question, facts: Catalogue) -> Question:
    """The question with that number as what the body has, and by how much that is off the register of its mount."""
    question = question.without(BODY_OFF)
    body = question.body or _mount_gauged(question)
    if body_register(question) is not None and question.intent in (*_SETTING, IDENTIFY_MOUNT):
        question, body = _as_of_lens(question, facts)
    if body is None or len(question.bodies) > 1 or question.adapters or question.intent not in _SETTING:
        return question
    mount = facts.mounts.get(body.id or "")
    if mount is None or not is_known(mount.register_mm) or question.said(_NOMINAL) is not None:
        return question
    lenses = tuple(_on_its_own(lens, body) for lens in question.lenses)
    if any(lens.ids for lens in lenses):
        return question  # a ring stands between, which has its own length
    right = mount.register_mm.nominal
    gauged = _GAUGED_OFF_MM if mentions(question, "gauged-depth") else _OFF_MM
    key = next((one for one in _OPEN if _is_near(number(question, one), right, gauged)), None)
    told = number(question, key) if key is not None else None
    taken = next((lens for lens in lenses if key is None and _is_near(lens.focal_length_mm, right)), None)
    if taken is not None:  # 'flange to sensor is 17.45, 25 mm': the lens is the other number
        told = taken.focal_length_mm
        lenses = tuple(_with_other_focal(question) if lens is taken else lens for lens in lenses)
    if told is None:
        return question
    values = tuple(row for row in question.values if row[0] not in (key, *(UNCLAIMED if taken else ())))
    said = ((_FLANGE, f"{told:g} mm"), (BODY_OFF, f"{told - right:.6g} mm"))
    kept = tuple(lens for lens in lenses if lens != Thing(words=lens.words, column=lens.column))
    return question.with_(lenses=kept, bodies=(body,), values=(*values, *said))


def with_register_of_body(question: Question, facts: Catalogue) -> Question:
    """'a camera with 11.48 of flange, an F lens': the number is of that body, as long as it is talked of.

    So it is where the body has a mount of no fixed register.
    """
    mount = facts.mounts.get(question.body.id or "") if question.body is not None else None
    open_yet = mount is not None and not is_known(mount.register_mm)
    told = told_of_body(question) if open_yet else body_register(question)
    if told is None or question.said(_FLANGE) is None or question.intent == IDENTIFY_MOUNT:
        return question
    rest = tuple(row for row in question.values if row[0] not in (_FLANGE, BODY_REGISTER))
    return question.with_(values=(*rest, (BODY_REGISTER, f"{told:g} mm")))


def with_body_under_lens(question: Question, lens_mm: float, body_mm: float) -> Question:
    """'my body measures 18.05 to the sensor' of E under an FD lens: that is the body's register, and not the lens's.

    `lens_mm`, `body_mm`: the registers of their mounts. What was measured on another body is dropped.
    """
    held = number(question, BODY_REGISTER)
    if held is not None and (_is_other_body(question) or abs(held - body_mm) > _OFF_MM):
        question = question.without(BODY_REGISTER)
    told = number(question, _FLANGE)
    if told is None or not _is_near(told, body_mm) or abs(told - lens_mm) <= 2 * _OFF_MM:
        return question
    rest = question.rest(_FLANGE, BODY_REGISTER, BODY_OFF)
    return question.with_(values=(*rest, (BODY_REGISTER, f"{told:g} mm")))


def _is_other_body(question: Question) -> bool:
    prior = question.prior.body if question.prior is not None else None
    return prior is not None and question.body is not None and prior.ids[:1] != question.body.ids[:1]


def _as_of_lens(question: Question, facts: Catalogue) -> tuple[Question, Thing]:
    """'a C lens, flange to sensor is 17.9 on this cam': hardly off, it is a body of that mount; how does it focus?"""
    lens, body, told = question.lenses[0], question.bodies[0], body_register(question)
    mount = facts.mounts.get(lens.id or "")
    if question.intent == IDENTIFY_MOUNT:
        question = question.with_(intent=FOCUS_VERDICT)
    right = mount.register_mm if mount is not None else UNKNOWN
    near = told is not None and is_known(right) and abs(told - right.nominal) <= _OFF_MM
    return question, replace(body, kind="mount", ids=lens.ids[:1]) if near else body


def _mount_gauged(question: Question) -> Thing | None:
    """'C to sensor 17.45': what was gauged down to the sensor is a body, whatever lens is told beside it."""
    named = next((lens for lens in question.lenses if lens.kind == "mount"), None)
    if named is None or not mentions(question, "gauged-depth"):
        return None
    return Thing("mount", named.ids, named.words, named.column)


def _on_its_own(lens: Thing, body: Thing) -> Thing:
    """A lens of the body's own mount, without it: both registers cancel, but for what was measured."""
    return replace(lens, kind="", ids=()) if set(lens.ids) & set(body.ids) else lens


def _with_other_focal(question: Question) -> Thing:
    told = number(question, *UNCLAIMED)
    return Thing(words=f"{told:g} mm lens", focal_length_mm=told) if told else Thing()


def _is_near(told: float | None, right: float, within: float = _OFF_MM) -> bool:
    """A number told finer than whole millimetres that is a hair off what is right."""
    return told is not None and told != int(told) and abs(told - right) <= within
