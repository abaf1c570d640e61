"""How wide a disc lenses for a format throw by their focal length, where no focal length was told."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import focals, mentions
from engine.answers.parts.wording import ranged, trimmed
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from grammar.questions import Question, Thing

_OF_CIRCLE: Final = frozenset(["vignette", "disc", "cover"])  # topics of a reason
_LEAST: Final = 2  # rows that differ
_MOST: Final = 4


def lengths_apart(question: Question, facts: Catalogue) -> Told:
    """'why do my wides go black and the 75 is clean': that it goes by the focal length, with the rows of the facts."""
    spoken = mentions(question, "short-and-long") or len(focals(question)) >= _LEAST
    if question.topic not in _OF_CIRCLE or not spoken:
        return Told()
    for thing in question.lenses:
        told = by_length(replace(thing, focal_length_mm=None, lens_kind=None, traits=()), facts)
        if told.lines:
            text = f"It goes by the lens and not by the mount: {told.lines[0].text}."
            return Told((Line("head", text),), told.quantities)
    return Told()


def by_length(thing: Thing | None, facts: Catalogue) -> Told:
    """'5.9 to 8 mm at 5.5 to 13 mm': each row of the facts for lenses of that format and no special class."""
    mount = facts.mounts.get(thing.id or "") if thing is not None and thing.kind == "mount" else None
    if thing is None or thing.focal_length_mm is not None or thing.lens_kind or mount is None:
        return Told()
    made_for = thing.format or mount.format
    rows = [row for row in facts.circles.values() if row.made_for == made_for and not row.lens_class]
    rows.sort(key=lambda row: row.focal_length_mm.nominal)
    if not _LEAST <= len(rows) <= _MOST:
        return Told()
    show = lambda value: f"{trimmed(value, 1)} mm"  # noqa: E731
    parts = [f"{ranged(row.image_circle_mm, show)} at {ranged(row.focal_length_mm, show)}" for row in rows]
    quantities = tuple(
        Quantity("image_circle_mm", row.image_circle_mm, f"{mount.id} lens of {ranged(row.focal_length_mm, show)}")
        for row in rows
        if is_known(row.image_circle_mm)
    )
    return Told((Line("fact", f"by focal length such lenses throw: {'; '.join(parts)}", 1),), quantities)
