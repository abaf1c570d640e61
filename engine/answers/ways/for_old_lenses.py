"""Which of several mounts, one of them mirrorless, is the better for old lenses: what each takes by a plain ring."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import registers_of
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import listed, money, small_mm
from engine.answers.picture.crop_factors import FULL_FRAMES
from engine.base.interval import is_known
from engine.facts.records import Adapter, Mount
from grammar.questions import Question

NOW = "mirrorless"
OLD = "slr"


def for_old_lenses(question: Question, knowledge: Knowledge) -> Told:
    """How many mounts of old stills lenses each takes without glass; nothing where other mounts are told."""
    mounts = knowledge.catalogue.mounts
    things = (*question.lenses, *question.bodies)
    told = [mounts[one.ids[0]] for one in things if one.kind == "mount" and one.ids and one.ids[0] in mounts]
    told = list({one.id: one for one in told}.values())
    lenses = [mounts[one.ids[0]].kind for one in question.lenses if one.ids and one.ids[0] in mounts]
    if OLD in lenses and any(body.ids for body in question.bodies):
        return Told()  # 'FD or OM for MFT': the lenses are set apart
    if any(lens.format not in (None, *FULL_FRAMES) for lens in question.lenses):
        return Told()  # lenses of 16 mm film are no SLR lenses
    bodies = [one for one in told if one.kind in (NOW, OLD) and is_known(one.register_mm)]
    if (
        len(bodies) < 2
        or all(one.kind == OLD for one in bodies)
        or len(bodies) < len(told)
        or not mentions(question, "old-lenses")
    ):
        return Told()
    registers = {one.id: one.register_mm.nominal for one in mounts.values() if is_known(one.register_mm)}
    old = [one for one in mounts.values() if one.kind == OLD and one.id in registers]
    taken = {body.id: [one for one in old if registers[one.id] > registers[body.id]] for body in bodies}
    names = listed([f"{body.designation} ({small_mm(registers[body.id])})" for body in bodies])
    if len({len(row) for row in taken.values()}) == 1:
        count = len(taken[bodies[0].id])
        head = f"It hardly matters: {names} all take the same {count} SLR mounts by a plain ring, with infinity."
        head = head.replace(" all ", " both ") if len(bodies) == 2 else head
    else:
        most = max(bodies, key=lambda body: len(taken[body.id]))
        head = f"Of {names}, {most.designation} takes the most SLR mounts by a plain ring, with infinity."
    lines = [Line("head", head), *(_line(body, taken[body.id], knowledge) for body in bodies)]
    lines.append(Line("text", (
        "The shorter register leaves the ring more room and takes more rangefinder and cine lenses besides; the size of"
        " the frame decides how wide they stay."
    )))  # fmt: skip
    return Told(tuple(lines), registers_of(bodies))


def _line(body: Mount, old: list[Mount], knowledge: Knowledge) -> Line:
    sold = {one.id: _plain(one, body, knowledge) for one in old}
    bands = [ring.price_usd for rings in sold.values() for ring in rings if ring.price_usd is not None]
    count = sum(bool(rings) for rings in sold.values())
    from_price = f", from {money(min(bands))}" if bands else ""
    text = (
        f"{body.designation}: takes {len(old)} SLR mounts; plain rings for {count} of them are in the facts{from_price}"
    )
    return Line("fact", text, 1)


def _plain(lens: Mount, body: Mount, knowledge: Knowledge) -> list[Adapter]:
    adapters = knowledge.catalogue.adapters.values()
    return [one for one in adapters if (one.front, one.rear) == (lens.id, body.id) and not one.has_glass]
