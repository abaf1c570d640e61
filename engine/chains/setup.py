"""The lens and the body of one question, with everything the facts say of both: what a chain is worked out for."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Protocol

from engine.base.compact import compact
from engine.base.interval import UNKNOWN, Interval, Measure, is_known
from engine.facts.guidance import Assumption
from engine.facts.records import Adapter, Body, Circle, Format, Lens, Mount, Thread

SHORTER_CLASS = 0.1  # the same of a shorter one, which is often made for a lesser negative, and covers less
NEAR_CLASS = 0.25  # share of its focal length that a lens may differ by from those that a row tells of


class Facts(Protocol):
    """The tables that a chain is worked out from."""

    @property
    def mounts(self) -> Mapping[str, Mount]: ...
    @property
    def formats(self) -> Mapping[str, Format]: ...
    @property
    def threads(self) -> Mapping[str, Thread]: ...
    @property
    def adapters(self) -> Mapping[str, Adapter]: ...
    @property
    def circles(self) -> Mapping[str, Circle]: ...
    @property
    def assumptions(self) -> Mapping[str, Assumption]: ...


@compact
class Setup:
    """A lens in front of a body.

    `lens_alone`, `body_alone`: a mount stands for the lens or the body; then only the seat is judged.
    `f_number`: the stop asked for, or None for wide open. `format`: the area used.
    """

    lens: Lens
    lens_mount: Mount
    body: Body
    body_mount: Mount
    format: Format | None
    judged_format: Format | None
    lens_alone: bool = False
    body_alone: bool = False
    f_number: float | None = None
    crop: bool = False

    @property
    def smaller_format(self) -> Format | None:
        """The smaller area that a body may have too, of which only the mount is known; the seat is judged by that."""
        form, judged = self.format, self.judged_format
        return judged if form is not None and judged is not None and judged.id != form.id else None

    @property
    def stop(self) -> Measure:
        return Interval.exact(self.f_number) if self.f_number is not None else self.lens.f_number


def usual_circle(facts: Facts, lens: Lens, mount: Mount) -> tuple[Measure, Circle | None]:
    """The image circle that lenses made for this format and focal length usually throw, in mm, and the row it is from.

    Without a focal length: everything that the rows for the format allow. A format without rows gives its diagonal:
    lenses cover what they were made for, and what more they cover is not known.
    """
    if is_known(lens.image_circle_mm):
        return lens.image_circle_mm, None
    made_for = lens.made_for or mount.format
    if made_for is None:
        # 'Enlarger 39': the mount tells no format, but a class of lenses, whose circle goes by the focal length
        of_class = [row for row in facts.circles.values() if row.lens_class == mount.kind]
        focal = lens.focal_length_mm
        row = class_row(of_class, focal.nominal) if is_known(focal) else None
        return (row.image_circle_mm, row) if row is not None else (UNKNOWN, None)
    made = [row for row in facts.circles.values() if row.made_for == made_for]
    # 'B4 zoom': a class of lenses that the mount itself tells
    rows = [row for row in made if row.lens_class.split(" ")[0] == mount.designation]
    rows = rows or [row for row in made if not row.lens_class]
    focal = lens.focal_length_mm
    if is_known(focal) and lens.focusing != "zoom":  # a zoom set to a length is no prime of that length
        fitting = [row for row in rows if row.focal_length_mm.holds(focal.nominal)]
        rows = fitting or _nearest_rows(rows, focal.nominal)
    if not rows:
        form = facts.formats.get(made_for)
        if form is None:
            return UNKNOWN, None
        diagonal = Interval.exact(form.diagonal_mm)
        return diagonal, Circle(form.id, form.id, Interval.exact(0.0), diagonal, form.basis)
    circle = rows[0].image_circle_mm
    for row in rows[1:]:
        circle = circle.hull(row.image_circle_mm)
    return circle, rows[0]


def class_row(rows: Iterable[Circle], focal_mm: float) -> Circle | None:
    """The row of a class of lenses for a focal length; None where it is much shorter or longer than any row tells of:
    such a lens is made for another negative.
    """
    near = min(rows, key=lambda row: abs(row.focal_length_mm.nominal - focal_mm), default=None)
    if near is None:
        return None
    off = near.focal_length_mm.nominal / focal_mm - 1  # above 0 where this one is the shorter
    told_of = near.focal_length_mm.holds(focal_mm) or -NEAR_CLASS <= off <= SHORTER_CLASS
    return near if told_of else None


def _nearest_rows(rows: Iterable[Circle], focal_mm: float) -> list[Circle]:
    """The row whose range of focal lengths ends nearest to `focal_mm`, on a scale of ratios."""
    listed = list(rows)
    if not listed:
        return []

    def off(row: Circle) -> float:
        low, high = row.focal_length_mm.least, row.focal_length_mm.greatest
        return max(low / focal_mm, focal_mm / high) if high > 0 else float("inf")

    return [min(listed, key=off)]
