"""How far a rear that was measured stands inside the body: its reach less the seat, and what is left to the sensor."""

from __future__ import annotations

from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import article, small_mm
from engine.base.compact import replace
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.base.span import Span
from engine.facts.records import Mount
from engine.physics.clearance import overhang_mm
from grammar.questions import CLEAR_DEPTH, RING, Question, Thing

BEHIND_RING = "behind-the-ring"  # mentioned where a rear was measured with the ring on


def reach_told(question: Question, knowledge: Knowledge) -> Told:
    """Nothing where no reach is told; else the overhang, by the seat told or that which holds infinity."""
    reach = number(question, "rear_reach")
    if reach is None:
        return Told()
    body = _mount(question.bodies, knowledge)
    seat = _seat(question, body, knowledge)
    if seat is None:
        text = (
            f"It stands {small_mm(reach)} less the seat of the ring behind the flange of the body. How thick is the "
            "ring, from flange to flange?"
        )
        return _to_image(reach, question, knowledge) + _least_ring(reach, body) + Told((Line("ask", text),))
    over = overhang_mm(Interval.exact(reach), Span.fixed(Interval.exact(seat)))
    if not is_known(over):
        return Told()
    by = "Measured behind the ring," if mentions(question, BEHIND_RING) else f"By a seat of {small_mm(seat)}"
    by = by if seat >= 0 else f"Sunk {small_mm(-seat)} into the body"
    told = number(question, CLEAR_DEPTH)
    if told is not None:
        return _by_free_depth(by, over, told)
    if over.nominal <= 0:
        text = f"{by} its rear ends {small_mm(-over.nominal)} before the flange of the body."
        return Told((Line("head", text),), (Quantity("overhang_mm", over, "told"),))
    text = f"{by} its rear stands {small_mm(over.nominal)} inside the flange of the body"
    rows = [Quantity("overhang_mm", over, "told")]
    if body is not None and is_known(body.register_mm):
        left = body.register_mm - over
        text += f", {small_mm(left.nominal)} before the sensor of {article(body.designation)} {body.designation} body"
        rows.append(Quantity("clearance_mm", left, "rear to sensor"))
    free = body.clear_depth_mm if body is not None else UNKNOWN
    if body is not None and is_known(free):
        fits = "more than" if over.nominal > free.nominal else "within"
        text += f": {fits} the {small_mm(free.nominal)} that {body.designation} leaves behind its flange."
    else:
        text += ". How deep the shutter or a mirror stands is hardly ever published: measure it on your body."
    return Told((Line("head", text),), tuple(rows))


def _by_free_depth(by: str, over: Interval, free: float) -> Told:
    """Whether the rear stays clear by what the body was told to leave free behind its flange, mm."""
    left = Interval.exact(free) - over
    rows = (Quantity("overhang_mm", over, "told"), Quantity("clearance_mm", left, "behind the flange"))
    stands = (
        f"{by} the rear stands {small_mm(over.nominal)} inside the flange of the body"
        if over.nominal > 0
        else f"{by} the rear ends {small_mm(-over.nominal)} before the flange of the body"
    )
    if left.nominal <= 0:
        lead = f"No: by these numbers it reaches {small_mm(-left.nominal)} too far in. Do not mount it."
        return Told((Line("head", lead), Line("head", f"{stands}, and {small_mm(free)} are free.")), rows)
    lead = f"By these numbers {small_mm(left.nominal)} are left: {stands[:1].lower()}{stands[1:]}, and {small_mm(free)}"
    text = f"{lead} are free. Check it at both ends of the focus ring, and stop at any resistance."
    return Told((Line("head", text),), rows)


def is_ruled_by_depth(question: Question) -> bool:
    """Whether the reach of the rear and what the body leaves free are told: then the numbers rule."""
    return number(question, "rear_reach") is not None and number(question, CLEAR_DEPTH) is not None


def _least_ring(reach: float, body: Mount | None) -> Told:
    """How thick a ring must be for it, where it is published what the body leaves behind its flange."""
    if body is None or not is_known(body.clear_depth_mm):
        return Told()
    free = body.clear_depth_mm.nominal
    lead = f"{body.designation} leaves {small_mm(free)} behind its flange"
    if reach <= free:
        return Told((Line("head", f"{lead}: {small_mm(reach)} go in even without a ring."),))
    text = f"{lead}: {small_mm(reach)} go in only behind a ring of {small_mm(reach - free)} or more, flange to flange."
    return Told((Line("head", text),), (Quantity("clearance_mm", body.clear_depth_mm, "behind the flange"),))


def with_reach(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind what is told of the rear."""
    told = reach_told(question, knowledge)
    quantities = (*told.quantities, *(answer.quantities or ()))
    return replace(answer, lines=(*told.lines, *answer.lines), quantities=quantities)


def _to_image(reach: float, question: Question, knowledge: Knowledge) -> Told:
    """What is left from a rear to the image at infinity: the same on every body, by the register of the lens."""
    lens = _mount(question.lenses, knowledge)
    if lens is None or not is_known(lens.register_mm) or lens.register_mm.nominal <= reach:
        return Told()
    left = lens.register_mm - reach
    text = (
        f"{small_mm(lens.register_mm.nominal)}, the register of {lens.designation}, less {small_mm(reach)}: its rear is"
        f" {small_mm(left.nominal)} from the sensor at infinity, whatever the body."
    )
    return Told((Line("head", text),), (Quantity("clearance_mm", left, "rear to sensor"),))


def _mount(things: tuple[Thing, ...], knowledge: Knowledge) -> Mount | None:
    """The mount of the first thing that has one."""
    facts = knowledge.catalogue
    for thing in things:
        for name in thing.ids[:1]:
            if thing.kind == "body" and name in facts.bodies:
                name = facts.bodies[name].mount
            elif thing.kind == "lens" and name in facts.lenses:
                name = facts.lenses[name].mount
            if name in facts.mounts:
                return facts.mounts[name]
    return None


def _seat(question: Question, body: Mount | None, knowledge: Knowledge) -> float | None:
    """The length told of the ring; else the difference of the registers; 0 on its own mount."""
    if mentions(question, BEHIND_RING):
        return 0.0  # it was measured from where the body's flange lies
    told = next((one.thickness_mm[0] for one in question.adapters if one.thickness_mm), None)
    told = told if told is not None else number(question, "thickness")  # 'the ring is 10 mm thick'
    if told is not None:
        return told
    if RING in question.limits.without:
        return 0.0
    lens = _mount(question.lenses, knowledge)
    if lens is None or body is None or not (is_known(lens.register_mm) and is_known(body.register_mm)):
        return None
    return lens.register_mm.nominal - body.register_mm.nominal
