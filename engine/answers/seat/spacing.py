"""What a wrong spacing does to lenses of several focal lengths, whatever their mount: one line and its table."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.wording import distance, small_mm, trimmed
from engine.answers.seat.distances import Distances, engraved_near, examples
from engine.base.interval import Measure, is_known
from engine.chains.setup import Facts
from engine.facts.records import Format, Mount

FAR_AT_A_MARK = "far-at-a-mark"  # what a question mentions where the far is sharp at a mark for something near
CINE_KINDS = frozenset({"cine", "video", "industrial"})
# the full frame stands for the format where nothing is said of it
USUAL_FORMAT = "35mm-full-frame"


def usual_focals(facts: Facts, form: Format | None = None, mount: Mount | None = None) -> tuple[float, ...]:
    """Focal lengths to show by, in mm, of lenses as they are usual on the format."""
    chosen = form or facts.formats.get((mount.format if mount else None) or USUAL_FORMAT)
    chosen = chosen or facts.formats[USUAL_FORMAT]
    values = {name: row.value for name, row in facts.assumptions.items()}
    return examples(chosen.diagonal_mm, mount is not None and mount.kind in CINE_KINDS, values)


def normal_focal(facts: Facts) -> float:
    """The normal lens of the usual format as it is engraved, mm: it stands for a lens where none is told."""
    share = facts.assumptions["usual-normal-share"].value.nominal
    return engraved_near(facts.formats[USUAL_FORMAT].diagonal_mm * share)


def far_limits(focals: Iterable[float], error_mm: float, facts: Facts, feet: bool = False, depth: int = 0) -> Told:
    """How far each of them can be focused where the seat is `error_mm` (above 0) too long: 2f + HH' + f*f/d + d."""
    found = ((focal, Distances(focal, facts).from_sensor(error_mm)) for focal in focals)
    lead = f"{small_mm(error_mm)} too far out, the farthest that comes sharp (from the sensor): "
    case = f", {trimmed(error_mm, 3)} mm too far"
    return _each(found, "far_from_sensor_mm", lambda value: distance(value, feet), lead, case, depth)


def tubes(focals: Iterable[float], length_mm: float, facts: Facts, feet: bool = False, depth: int = 0) -> Told:
    """What one tube and a second of the same length do to each of them: where it is then sharp, from the sensor."""
    told = Told()
    for number in (1, 2):
        length = number * length_mm
        found = ((focal, Distances(focal, facts).from_sensor(length)) for focal in focals)
        lead = f"{trimmed(length, 1)} mm of tube: sharp at (from the sensor) "
        told += _each(
            found, "far_from_sensor_mm", lambda value: distance(value, feet), lead, f", {trimmed(length, 1)} mm", depth
        )
    return told


def marks(focals: Iterable[float], error_mm: float, facts: Facts, feet: bool = False, depth: int = 0) -> Told:
    """The mark at which infinity is sharp on each of them where the seat is `error_mm` (above 0) too short."""
    found = ((focal, Distances(focal, facts).mark(-error_mm)) for focal in focals)
    lead = f"{small_mm(error_mm)} too close, infinity is sharp at this mark of the scale: "
    case = f", {trimmed(error_mm, 3)} mm too close"
    return _each(found, "scale_mark_mm", lambda value: distance(value, feet), lead, case, depth)


def errors_of_limit(focals: Iterable[float], limit_mm: float, facts: Facts, feet: bool = False, depth: int = 0) -> Told:
    """How much too long the seat is where nothing farther than `limit_mm` from the sensor comes sharp."""
    found = ((focal, Distances(focal, facts).extension_at(limit_mm)) for focal in focals)
    lead = f"stopping at {distance(limit_mm, feet)} means too far out by: "
    return _each(found, "register_error_mm", small_mm, lead, " lens", depth)


def errors_of_mark(focals: Iterable[float], mark_mm: float, facts: Facts, feet: bool = False, depth: int = 0) -> Told:
    """How much too short the seat is where what is far is sharp at the mark of `mark_mm`."""
    found = ((focal, Distances(focal, facts).extension_at(mark_mm)) for focal in focals)
    turned = [(focal, -value if is_known(value) else value) for focal, value in found]
    lead = f"infinity sharp at the {distance(mark_mm, feet)} mark means too close, the ring too thin, by: "
    return _each(turned, "register_error_mm", lambda value: small_mm(-value), lead, " lens", depth)


def _each(
    found: Iterable[tuple[float, Measure | None]], quantity: str, shown: Callable[[float], str], lead: str, case: str,
    depth: int,
) -> Told:  # fmt: skip
    """One line with a value for every focal length where it is known, and the table of them."""
    known = [(f"{trimmed(focal, 1)} mm", value) for focal, value in found if is_known(value)]
    if not known:
        return Told()
    parts = [f"{lens} {shown(value.nominal)}" for lens, value in known]
    rows = tuple(Quantity(quantity, value, f"{lens}{case}") for lens, value in known)
    return Told((Line("fact", lead + ", ".join(parts), depth),), rows)
