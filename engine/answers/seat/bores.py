"""The bore of a cup that a barrel goes into, the wall that the throat leaves for it, and whether it goes through."""

from __future__ import annotations

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import Missing, body_side
from engine.answers.parts.said import lengths_of_pieces, mentions, number, numbers
from engine.answers.parts.usual_mounts import PLAIN
from engine.answers.parts.wording import small_mm, trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from grammar.questions import Question

NEAR_MM = 6.0  # widths that are farther from the opening are of other things


def bore_for(question: Question, knowledge: Knowledge) -> Told:
    """The bore of a cup for a barrel, and what wall the throat leaves."""
    barrel = number(question, "barrel")
    if barrel is None:
        return _sliding(question, knowledge)
    bore = barrel + knowledge.catalogue.assumptions["cup-play"].value
    text = (
        f"Cup bore {trimmed(bore.least, 1)} to {trimmed(bore.greatest, 1)} mm for a {trimmed(barrel, 1)} mm barrel,"
        " over its full depth"
    )
    body = body_side(question.body, knowledge.catalogue)
    if not isinstance(body, Missing) and is_known(body.mount.throat_mm):
        wall = (body.mount.throat_mm.nominal - bore.nominal) / 2
        text += f"; the throat of {trimmed(body.mount.throat_mm.nominal, 1)} mm leaves a wall of {trimmed(wall, 1)} mm"
    return Told((Line("head", f"{text}."),), (Quantity("bore_mm", bore),))


def _sliding(question: Question, knowledge: Knowledge) -> Told:
    """'drill what size for the barrel of a 42.5 mm projector lens': the hole that a plain barrel slides in."""
    width = _plain_width(question, knowledge) if mentions(question, "bored-for", "goes-through") else None
    if width is None:
        return Told()
    bore = width + knowledge.catalogue.assumptions["barrel-slides"].value
    text = (
        f"Bore {trimmed(bore.least, 1)} to {trimmed(bore.greatest, 1)} mm for a {trimmed(width, 1)} mm barrel, so that"
        " it slides; a slit with a screw across, or three grub screws, clamp it. Caliper the barrel first, at its"
        " widest place."
    )
    return Told((Line("head", text),), (Quantity("bore_mm", bore),))


def _plain_width(question: Question, knowledge: Knowledge) -> float | None:
    """How wide the barrel is: that of the mount it is named by, or the number told of a lens held so."""
    mounts = knowledge.catalogue.mounts.values()
    plain = [mount for mount in mounts if mount.coupling in PLAIN and is_known(mount.throat_mm)]
    for lens in question.lenses:
        for mount in plain:
            width = mount.throat_mm.nominal if is_known(mount.throat_mm) else 0.0
            # told as if it were the focal length: no lens has one to the tenth of a barrel's width
            as_focal = lens.lens_kind == mount.kind and lens.focal_length_mm == width and width != int(width)
            if mount.id == lens.id or as_focal:
                return width
    return None


def with_going_through(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """Whether what is so wide goes through the opening told, in place of the answer; both were measured."""
    opening = number(question, "throat", "bore")
    across = (*numbers(question, "barrel", "width", "thread"), *(low for low, _ in lengths_of_pieces(question)))
    told = [one for one in across if opening is not None and one != opening and abs(one - opening) <= NEAR_MM]
    if opening is None or len(told) != 1:
        return answer
    left = round(opening - told[0], 4)
    if left > 0:
        text = f"Yes: {small_mm(told[0])} across goes through {small_mm(opening)}, with {small_mm(left)} to spare"
        text += f", {small_mm(left / 2)} on each side. Measure the widest place of it, and what stands out behind."
    else:
        text = (
            f"No: {small_mm(told[0])} across does not go through {small_mm(opening)}: it is {small_mm(-left)} too wide"
        )
        text += ". Do not force it."
    rows = (Quantity("clearance_mm", Interval.exact(left), "across the opening"),)
    return replace(answer, status=ANSWERED, lines=(Line("head", text),), quantities=rows, chains=None, ring=None)
