"""The lengths that a drawing of a stack is made of, read off a judged chain: piece by piece from the body up."""

from __future__ import annotations

from collections.abc import Mapping

from engine.base.compact import compact
from engine.base.interval import UNKNOWN, Interval, Measure, Unknown, is_known
from engine.base.span import Span
from engine.chains.walk import Seat
from engine.facts.records import Adapter
from engine.judging.judge import Judged
from engine.physics.quantities import PARTLY_MOVED
from engine.physics.trace import Trace


@compact
class Piece:
    """One link as it is drawn, at its shortest setting. Millimetres; None: not known.

    `thickness_mm` below 0: the lens seats inside the flange behind it. `bore_mm`: the opening, of a cup or of a ring.
    """

    id: str
    name: str
    kind: str
    thickness_mm: float | None
    travel_mm: float
    bore_mm: float | None
    rests_on_flange: bool
    glass: bool = False
    factor: float | None = None  # by which its glass multiplies the focal length


@compact
class Stack:
    """Everything that is drawn to scale, at the likeliest values. Millimetres; None: not known or not applying."""

    pieces: tuple[Piece, ...]  # from the body to the lens
    seat_mm: float | None
    travel_mm: float  # what all pieces together can be set longer by
    body_register_mm: float | None
    lens_register_mm: float | None
    error: Span
    allowance: Measure
    glass: bool
    focal_mm: float | None
    stop: float | None
    front_mm: float | None  # from the lens flange to the front glass
    collar_mm: float | None
    rear_reach_mm: float | None
    rear_diameter_mm: float | None
    lens_throat_mm: float | None
    throat_mm: float | None
    clear_depth_mm: float | None
    overhang_mm: float | None
    sensor_mm: tuple[float, float] | None
    register_usual: bool = False  # the lens's register is only what is usual for lenses of its kind and length

    @property
    def error_mm(self) -> float | None:
        return nominal(self.error.shortest)

    @property
    def beam_mm(self) -> float | None:
        """How wide the beam of a far point is at the plane it is bent from: f/N. None behind glass."""
        if self.glass or self.focal_mm is None or self.stop is None or self.stop <= 0:
            return None
        return self.focal_mm / self.stop


def stack_of(judged: Judged, names: Mapping[str, str]) -> Stack:
    """The lengths of a judged chain. `names`: designation of a mount by its id."""
    trace, setup = judged.trace, judged.setup
    pieces = tuple(_piece(row, names) for row in reversed(judged.seats))
    seat = _span(trace, "seat_mm")
    shortest, longest = nominal(seat.shortest), nominal(seat.longest)
    form = setup.format or setup.judged_format
    return Stack(
        pieces,
        shortest,
        longest - shortest if longest is not None and shortest is not None else 0.0,
        _nominal(trace, "body_register_mm"),
        _nominal(trace, "lens_register_mm"),
        _span(trace, "register_error_mm"),
        measure(judged.measured_trace, "infinity_allowance_mm"),
        trace.value("glass") is True,
        None if setup.lens.focusing in PARTLY_MOVED else _nominal(trace, "focal_length_mm"),
        _nominal(trace, "f_number"),
        nominal(setup.lens.front_vertex_mm),
        _nominal(trace, "collar_mm"),
        _nominal(trace, "rear_reach_mm"),
        _nominal(trace, "rear_diameter_mm"),
        _nominal(trace, "lens_throat_mm"),
        _nominal(trace, "throat_mm"),
        _nominal(trace, "clear_depth_mm"),
        _nominal(trace, "overhang_mm"),
        (form.width_mm, form.height_mm) if form else None,
        trace.given["lens_register_mm"].assumed,
    )


def measure(trace: Trace, name: str) -> Measure:
    """A quantity of the trace as a measure; unknown where it does not apply."""
    value = trace.value(name)
    return value if isinstance(value, Interval) else UNKNOWN


def nominal(value: Measure) -> float | None:
    """The likeliest value; None where it is not known."""
    return value.nominal if is_known(value) else None


def _nominal(trace: Trace, name: str) -> float | None:
    return nominal(measure(trace, name))


def _span(trace: Trace, name: str) -> Span:
    value = trace.value(name)
    return value if isinstance(value, Span) else Span.fixed(UNKNOWN)


def _piece(seat: Seat, names: Mapping[str, str]) -> Piece:
    link, shortest, longest = seat.link, seat.thickness_mm.shortest, seat.thickness_mm.longest
    thick = nominal(shortest)
    travel = (
        0.0 if isinstance(shortest, Unknown) or isinstance(longest, Unknown) else longest.nominal - shortest.nominal
    )
    if isinstance(link, Adapter):
        bore = link.cup.bore_mm if link.cup is not None and not seat.rests_on_flange else link.clear_diameter_mm
        return Piece(link.id, link.name, link.kind, thick, travel, nominal(bore), seat.rests_on_flange,
                     link.has_glass, link.factor)  # fmt: skip
    front, rear = (names.get(mount, mount) for mount in (link.front, link.rear))
    how = f"{front} thread straight in {rear}" if link.kind == "thread" else f"{front} bayonet straight in {rear}"
    return Piece(f"{link.front}>{link.rear}", how, "joint", thick, travel, None, False)
