"""The focal length that gives a normal view on a frame, where that is asked and no lens is told."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product
from math import log, sqrt
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import focals, mentions
from engine.answers.parts.wording import trimmed
from engine.answers.picture.crop_factors import Crop, crop_of
from engine.base.interval import Interval
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from engine.physics import coverage
from grammar.questions import Question, Thing

_KEYS: Final = ("normal-view", "portrait-view", "wide-view")
_KINDS: Final = {"wide": "a wide lens", "normal": "a normal lens", "portrait": "a lens for portraits, a short tele"}
_LONG: Final = "a tele lens"
_VIEWS: Final = {"portrait": "A lens for portraits", "wide": "A wide lens"}  # usual ones beside the normal


def normal_view(question: Question, crops: Sequence[Crop], facts: Catalogue) -> Told:
    """The normal lens of each frame by its diagonal, for stills and for cine and video; or the one for portraits."""
    if focals(question):
        return Told()
    told = Told()
    for crop in crops or [crop_of(form) for lens in question.lenses for form in _made_for(lens, facts)]:
        if _asks(question, "normal-view"):
            told += _normal(crop, facts)
        for key, name in _VIEWS.items():
            if _asks(question, f"{key}-view"):
                told += _usual(crop, key, name, facts)
    return told


def view_kept(question: Question, lenses: Sequence[float], crops: Sequence[Crop], facts: Catalogue) -> Told:
    """'is a 28 still wide on APS-C': wide, normal or long by its share of the diagonal, made for whichever frame."""
    if not mentions(question, "view-kept"):
        return Told()
    usual = {name: facts.assumptions[f"usual-{key}-share"].value.nominal for key, name in _KINDS.items()}
    lines = []
    for focal, crop in product(lenses, crops):
        share = focal * crop.by_diagonal / coverage.FULL_FRAME_DIAGONAL_MM
        kind = min(usual, key=lambda name: abs(log(share / usual[name])))
        # beyond half the way, by ratio, to twice a portrait lens it is no portrait lens any more
        kind = _LONG if share > sqrt(2) * usual[_KINDS["portrait"]] else kind
        full = f"{focal * crop.by_diagonal:.0f}"
        lines.append(
            Line("head", f"On {crop.name} {trimmed(focal, 1)} mm is {kind}: it frames as {full} mm on full frame.")
        )
    return Told(tuple(lines))


def _asks(question: Question, key: str) -> bool:
    """Whether this view is asked for, in the text or in the one that it goes on from and that no other view follows."""
    if any(mentions(question, one) for one in _KEYS):
        return mentions(question, key)
    before = question.prior if question.follows else None
    return before is not None and not focals(before) and mentions(before, key)


def _normal(crop: Crop, facts: Catalogue) -> Told:
    stills, cine = (facts.assumptions[name].value for name in ("usual-normal-share", "usual-normal-share-cine"))
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
    return Told((Line("head", text),), rows)


def _usual(crop: Crop, key: str, name: str, facts: Catalogue) -> Told:
    """What is usual beside the normal lens, by its share of the diagonal."""
    assumed = facts.assumptions[f"usual-{key}-share"]
    diagonal = coverage.FULL_FRAME_DIAGONAL_MM / crop.by_diagonal
    focal = diagonal * assumed.value.nominal
    text = f"{name} on {crop.name} has about {trimmed(focal, 1)} mm: {assumed.says}."
    return Told((Line("head", text),), (Quantity("focal_length_mm", Interval.exact(focal), f"{key} on {crop.name}"),))


def _made_for(lens: Thing, facts: Catalogue) -> list[Format]:
    """'normal lens for full frame', 'standard lens for MFT': the frame that the lens asked for is told by."""
    mount = facts.mounts.get(lens.id or "") if lens.kind == "mount" else None
    form = facts.formats.get(lens.format or (mount.format if mount is not None else None) or "")
    return [form] if form is not None else []
