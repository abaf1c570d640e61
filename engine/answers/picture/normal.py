"""The focal length that gives a normal view on a frame, where that is asked and no lens is told."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import focals, mentions
from engine.answers.parts.wording import trimmed
from engine.answers.picture.crop_factors import Crop, crop_of
from engine.base.interval import Interval
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from engine.physics import coverage
from grammar.questions import Question, Thing


def normal_view(question: Question, crops: Sequence[Crop], facts: Catalogue) -> Told:
    """The normal lens of each frame by its diagonal: what is usual for stills, and for cine and video."""
    if focals(question) or not mentions(question, "normal-view"):
        return Told()
    stills, cine = (facts.assumptions[name].value for name in ("usual-normal-share", "usual-normal-share-cine"))
    told = Told()
    for crop in crops or [crop_of(form) for lens in question.lenses for form in _made_for(lens, facts)]:
        diagonal = coverage.FULL_FRAME_DIAGONAL_MM / crop.by_diagonal
        for_stills, for_cine = diagonal * stills.nominal, diagonal * cine.nominal
        text = (
            f"A normal lens on {crop.name} has about {trimmed(for_stills, 1)} mm, {stills.nominal:g} times the"
            f" diagonal of {trimmed(diagonal, 1)} mm, as 50 mm has on full frame; for cine and video the longer"
            f" {trimmed(for_cine, 1)} mm, two diagonals, is usual."
        )
        rows = (
            Quantity("focal_length_mm", Interval.exact(for_stills), f"normal on {crop.name}"),
            Quantity("focal_length_mm", Interval.exact(for_cine), f"normal for cine on {crop.name}"),
        )
        told += Told((Line("head", text),), rows)
    return told


def _made_for(lens: Thing, facts: Catalogue) -> list[Format]:
    """'normal lens for full frame', 'standard lens for MFT': the frame that the lens asked for is told by."""
    mount = facts.mounts.get(lens.id or "") if lens.kind == "mount" else None
    form = facts.formats.get(lens.format or (mount.format if mount is not None else None) or "")
    return [form] if form is not None else []
