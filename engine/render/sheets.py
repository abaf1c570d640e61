"""A drawing that is wanted -> its SVG text; nothing is written here."""

from __future__ import annotations

from collections.abc import Mapping

from engine.answers.parts.answer import Sketch


def sheet(sketch: Sketch, names: Mapping[str, str]) -> str:
    """The SVG of a sketch. `names`: designation of each mount by its id."""
    if sketch.kind == "section":
        from engine.render.section import section

        return section(sketch.judged, names)
    if sketch.kind == "frame":
        from engine.render.frame import frame

        return frame(sketch.judged, sketch.aspect)
    from engine.render.distances import distances

    return distances(sketch.judged, sketch.marks, sketch.feet)
