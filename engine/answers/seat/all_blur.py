"""A lens that comes sharp nowhere on a ring that should seat it: the mount that its thread may be of as well."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals
from engine.answers.parts.wording import article, distance, small_mm, trimmed
from engine.answers.seat.distances import Distances
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Mount
from grammar.questions import Question

MEASURED: Final = "flange_to_image"
REACHES: Final = "infinity"
_LENSES, _OTHERS = "cine", "industrial"  # kinds of mounts with one thread and registers of their own


def with_twin_suspected(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """That it may be of the shorter register, how far it then focuses, and what tells; before the answer."""
    lens, chains = question.lens, answer.chains or ()
    mount = knowledge.catalogue.mounts.get(chains[0].listed.judged.setup.lens_mount.id) if chains else None
    if lens is None or mount is None or question.said(MEASURED) is not None or len(question.lenses) > 1:
        return answer
    twin = _shorter(mount, knowledge.catalogue)
    if twin is None or chains[0].listed.judged.verdict != REACHES:
        return answer
    if not (is_known(mount.register_mm) and is_known(twin.register_mm)):
        return answer
    off = mount.register_mm.nominal - twin.register_mm.nominal
    far = [(one, Distances(one, knowledge.catalogue).from_sensor(off)) for one in focals(question)]
    known = [(one, at) for one, at in far if is_known(at)]
    ends = [f"{trimmed(one, 1)} mm ends at about {distance(at.nominal, False)} from the sensor" for one, at in known]
    text = (
        f"Sharp at no distance is not what {article(mount.designation)} {mount.designation} lens does there. "
        f"{article(twin.designation).capitalize()} {twin.designation} lens has the same thread and sits "
        f"{small_mm(off)} too far out in that place, close-up only{': ' if ends else '.'}{', '.join(ends)}"
        f"{'.' if ends else ''}"
    )
    ask = (
        f"How far is it from the flange of the lens to the image of a far window? "
        f"{small_mm(mount.register_mm.nominal)} is {mount.designation}, {small_mm(twin.register_mm.nominal)} "
        f"is {twin.designation}."
    )
    rows = [Quantity("register_error_mm", Interval.exact(off), f"if it is {twin.designation}")]
    rows += [
        Quantity("far_from_sensor_mm", at, f"{trimmed(one, 1)} mm, if it is {twin.designation}")
        for one, at in known
    ]  # fmt: skip
    lines = (Line("head", text), Line("ask", ask, wants=MEASURED), *answer.lines)
    return replace(answer, lines=lines, quantities=(*rows, *(answer.quantities or ())))


def _shorter(mount: Mount, facts: Catalogue) -> Mount | None:
    """The mount of the same thread of which lenses end up too far out in the place of this one."""
    if mount.thread is None or mount.kind != _LENSES or not is_known(mount.register_mm):
        return None
    alike = [one for one in facts.mounts.values() if one.thread == mount.thread and one.kind == _OTHERS]
    known = [one for one in alike if is_known(one.register_mm) and one.register_mm.greatest < mount.register_mm.least]
    return known[0] if len(known) == 1 else None
