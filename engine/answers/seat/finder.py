"""Of rings that differ by the frames they bring up in a bright-line finder the one for the focal length told."""

from __future__ import annotations

from engine.answers.parts.knowledge import Knowledge
from engine.base.interval import Interval
from engine.chains.ring_map import Joint
from engine.facts.records import Adapter
from engine.judging.judge import Judged


def for_finder(link: Adapter | Joint, judged: Judged, knowledge: Knowledge) -> Adapter | Joint:
    """The link, or the twin of it that brings up the frame of the lens; the link itself where none does."""
    focal = judged.trace.value("focal_length_mm")
    if not (isinstance(link, Adapter) and link.frame_lines and isinstance(focal, Interval)):
        return link
    rings = knowledge.catalogue.adapters  # a way of holding a lens is none of them
    twins = (rings[name] for name in judged.chain.variants.get(link.id, ()) if name in rings)
    return next((one for one in (link, *twins) if f"{focal.nominal:g}" in one.frame_lines), link)


def finder_line(judged: Judged, knowledge: Knowledge) -> str | None:
    """Which of alike rings brings up the frame of this focal length, where one does."""
    focal = judged.trace.value("focal_length_mm")
    for link in judged.chain.adapters[-1:] if isinstance(focal, Interval) else ():
        ring = for_finder(link, judged, knowledge)
        if isinstance(ring, Adapter) and isinstance(focal, Interval) and f"{focal.nominal:g}" in ring.frame_lines:
            return f"for the finder of a rangefinder body: {ring.name}, which shows the frame of {focal.nominal:g} mm"
    return None
