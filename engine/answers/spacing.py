"""What a wrong spacing does to lenses of several focal lengths, whatever their mount: one line and its table."""

from __future__ import annotations

from collections.abc import Iterable

from engine.answers.answer import Line, Quantity, Told
from engine.answers.distances import Distances, examples
from engine.answers.wording import distance, small_mm, trimmed
from engine.base.interval import Interval, is_known
from engine.chains.setup import Facts
from engine.facts.records import Format, Mount

CINE_KINDS = frozenset({"cine", "video", "industrial"})
# the full frame stands for the format where nothing is said of it
USUAL_FORMAT = "35mm-full-frame"


def usual_focals(facts: Facts, form: Format | None = None, mount: Mount | None = None) -> tuple[float, ...]:
    """Focal lengths to show by, of lenses as they are usual on the format."""
    chosen = form or facts.formats.get((mount.format if mount else None) or USUAL_FORMAT)
    chosen = chosen or facts.formats[USUAL_FORMAT]
    values = {name: row.value for name, row in facts.assumptions.items()}
    return examples(chosen.diagonal_mm, mount is not None and mount.kind in CINE_KINDS, values)


def far_limits(focals: Iterable[float], error_mm: float, facts: Facts, feet: bool = False, depth: int = 0) -> Told:
    """How far each of them can be focused where the seat is `error_mm` (above 0) too long: 2f + HH' + f*f/d + d."""
    parts, rows = [], []
    for focal in focals:
        at = Distances(focal, facts).from_sensor(error_mm)
        if is_known(at):
            parts.append(f"{_lens(focal)} {distance(at.nominal, feet)}")
            rows.append(Quantity("far_from_sensor_mm", at, f"{_lens(focal)}, {_mm(error_mm)} too far"))
    if not parts:
        return Told()
    lead = f"{small_mm(error_mm)} too far out, the farthest that comes sharp (from the sensor): "
    return Told((Line("fact", lead + ", ".join(parts), depth),), tuple(rows))


def marks(focals: Iterable[float], error_mm: float, facts: Facts, feet: bool = False, depth: int = 0) -> Told:
    """The mark at which infinity is sharp on each of them where the seat is `error_mm` (above 0) too short."""
    parts, rows = [], []
    for focal in focals:
        at = Distances(focal, facts).mark(-error_mm)
        if is_known(at):
            parts.append(f"{_lens(focal)} {distance(at.nominal, feet)}")
            rows.append(Quantity("scale_mark_mm", at, f"{_lens(focal)}, {_mm(error_mm)} too close"))
    if not parts:
        return Told()
    lead = f"{small_mm(error_mm)} too close, infinity is sharp at this mark of the scale: "
    return Told((Line("fact", lead + ", ".join(parts), depth),), tuple(rows))


def errors_of_limit(focals: Iterable[float], limit_mm: float, facts: Facts, feet: bool = False, depth: int = 0) -> Told:
    """How much too long the seat is where nothing farther than `limit_mm` from the sensor comes sharp."""
    parts, rows = [], []
    for focal in focals:
        error = Distances(focal, facts).extension_at(limit_mm)
        if is_known(error):
            parts.append(f"{_lens(focal)} {small_mm(error.nominal)}")
            rows.append(Quantity("register_error_mm", Interval.exact(error.nominal), f"{_lens(focal)} lens"))
    if not parts:
        return Told()
    lead = f"stopping at {distance(limit_mm, feet)} means too far out by: "
    return Told((Line("fact", lead + ", ".join(parts), depth),), tuple(rows))


def _lens(focal_mm: float) -> str:
    return f"{trimmed(focal_mm, 1)} mm"


def _mm(error_mm: float) -> str:
    return f"{trimmed(error_mm, 3)} mm"
