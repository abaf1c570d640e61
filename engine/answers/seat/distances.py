"""Where a lens of a given focal length is sharp at a given extension, by the focus model, its planes assumed."""

from __future__ import annotations

from collections.abc import Mapping

from engine.answers.parts.constructions import SYMMETRIC, Planes, planes_told
from engine.answers.parts.owned import own_lens
from engine.base.compact import compact
from engine.base.interval import UNKNOWN, Interval, Measure, is_known, known_or
from engine.chains.setup import Facts
from engine.facts.catalogue import Catalogue
from engine.facts.records import Lens
from engine.physics import closeup, focus
from engine.physics.enclose import widened_by_share
from engine.physics.optics import resolve_optics
from engine.physics.quantities import PARTLY_MOVED
from grammar.questions import Thing

# focal lengths as lenses are engraved, mm
ENGRAVED = (4.0, 5.5, 6.5, 8.0, 10.0, 12.5, 16.0, 20.0, 25.0, 28.0, 35.0, 50.0, 85.0, 135.0, 200.0, 300.0)
EXAMPLES = 6
# kinds of lens that are neither telephoto nor retrofocus
ORDINARY = frozenset({"enlarger", "projector", "large-format", "process", "copy"})


@compact
class At:
    """What is sharp at one extension: from the sensor, the front principal plane and the front glass; magnification."""

    extension_mm: Interval
    from_sensor_mm: Measure
    from_front_principal_mm: Measure
    working_distance_mm: Measure
    magnification: Measure


class Distances:
    """The distances of a lens: by its own facts, or by its focal length alone with the rest assumed by construction."""

    def __init__(
        self, focal_mm: float, facts: Facts, kind: str | None = None, lens: Lens | None = None,
        register: Measure = UNKNOWN, told: Planes | None = None, observed_offset: Measure = UNKNOWN,
    ) -> None:  # fmt: skip
        """`kind`: enlarger, projector ... are of ordinary length; of other lenses nothing is taken for granted.

        `lens`: a record whose own planes and pupils count where they are known; `register`: of its mount, in mm.
        `told`: its planes by a construction that was named.
        `observed_offset`: of the front focal point ahead of the front glass, where a tape has told it.
        """
        self.focal = Interval.exact(focal_mm)
        assumed = {name: row.value for name, row in facts.assumptions.items()}
        length: Measure = UNKNOWN
        gap: Measure = UNKNOWN
        told = told or Planes()
        observed = known_or(observed_offset, told.offset_mm)
        if is_known(told.hiatus_mm):
            gap = told.hiatus_mm
        elif kind in ORDINARY:
            length = assumed["construction-ordinary-front-to-sensor"] * self.focal
            gap = assumed["plain-hiatus"] * self.focal
        if lens is not None:
            own = lens.register_mm if is_known(lens.register_mm) else register
            optics = resolve_optics(
                self.focal, front_to_sensor_mm=known_or(lens.front_vertex_mm + own, length),
                hiatus_mm=known_or(lens.hiatus_mm, gap),
                front_focal_offset_mm=known_or(observed_offset, known_or(lens.front_focal_offset_mm, told.offset_mm)),
                pupil_magnification=known_or(lens.pupil_magnification, told.pupil),
                register_mm=own, assumptions=assumed,
            )  # fmt: skip
        else:
            optics = resolve_optics(
                self.focal, front_to_sensor_mm=length, hiatus_mm=gap, front_focal_offset_mm=observed,
                pupil_magnification=told.pupil, assumptions=assumed,
            )  # fmt: skip
        self.hiatus, self.pupil = optics.hiatus_mm, optics.pupil_magnification
        self.offset, self._error = optics.front_focal_offset_mm, optics.relative_error
        # a tape that has told the offset leaves no error of the model in what stands before the glass
        self._room_error = Interval.exact(0.0) if is_known(observed_offset) else optics.relative_error
        self.assumed = optics.assumed

    def at(self, extension: Interval) -> At:
        """Everything at one extension from the far-focus position, in mm."""
        f, x = self.focal, extension
        magnified = focus.magnification(f, x)
        room = focus.from_front_glass_mm(f, self.offset, x)
        return At(
            x,
            widened_by_share(focus.from_sensor_mm(f, self.hiatus, x), self._error),
            closeup.from_front_principal_mm(f, x),
            widened_by_share(room, focus.model_error_at(self._room_error, magnified)),
            magnified,
        )

    @property
    def likely_pupil(self) -> Interval:
        """The pupil magnification, likeliest at 1 where it is not known."""
        return self.pupil if is_known(self.pupil) else Interval.exact(1.0)

    def from_sensor(self, extension_mm: float) -> Measure:
        return self.at(Interval.exact(extension_mm)).from_sensor_mm

    def mark(self, error_mm: float) -> Measure | None:
        """The mark of the scale at which infinity is sharp where the seat is `error_mm` (below 0) too close."""
        return focus.infinity_mark_mm(self.focal, self.hiatus, Interval.exact(error_mm))

    def extension_at(self, distance_mm: float) -> Measure:
        """The extension at which a subject this far from the sensor is sharp; planes at their likeliest."""
        gap = Interval.exact(self.hiatus.nominal) if is_known(self.hiatus) else Interval.exact(0.0)
        return focus.travel_to_mark_mm(Interval.exact(distance_mm), self.focal, gap)


def distances_of(thing: Thing, facts: Catalogue, observed_offset: Measure = UNKNOWN) -> Distances | None:
    """Those of a lens that a question names or describes; None where its focal length is not known."""
    if thing.focal_length_mm is None:
        return None
    lens = own_lens(thing, facts)
    register = facts.mounts[lens.mount].register_mm if lens is not None else UNKNOWN
    kind = "copy" if SYMMETRIC in thing.traits else thing.lens_kind  # of ordinary length, as copying lenses are
    told = planes_told(thing, facts)
    return Distances(thing.focal_length_mm, facts, kind, lens, register, told, observed_offset)


PARTLY = (
    "It focuses by moving only a part of itself, so that its planes move too: distances and scale cannot be worked "
    "out. Lay a tape along the subject and look."
)


def moves_in_part(thing: Thing, facts: Catalogue) -> bool:
    """Whether a lens is known to focus by moving only a part of itself: then no distance follows from its extension."""
    lens = own_lens(thing, facts)
    return thing.lens_kind == "zoom" or (lens is not None and lens.focusing in PARTLY_MOVED)


def engraved_near(value_mm: float) -> float:
    """The focal length of the trade nearest to a value in mm, by ratio."""
    return min(ENGRAVED, key=lambda one: max(one / value_mm, value_mm / one))


def examples(diagonal_mm: float, cine: bool, assumptions: Mapping[str, Interval]) -> tuple[float, ...]:
    """Focal lengths usual on a format, from wide to long in equal ratios, as lenses are engraved; mm."""
    normal = diagonal_mm * assumptions["usual-normal-share-cine" if cine else "usual-normal-share"].nominal
    ends = assumptions["usual-focal-range"]
    ratio = (ends.greatest / ends.least) ** (1 / (EXAMPLES - 1))
    rows = (normal * ends.least * ratio**n for n in range(EXAMPLES))
    return tuple(dict.fromkeys(engraved_near(row) for row in rows))
