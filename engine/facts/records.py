"""Typed records: what the facts say, whole as soon as they exist. Lengths in mm; nothing here knows YAML."""

from __future__ import annotations

from math import hypot

from engine.base.compact import compact, field
from engine.base.interval import UNKNOWN, Interval, Measure
from engine.base.place import NOWHERE, Place
from engine.base.span import Span
from engine.facts.basis import Basis, Source
from engine.facts.guidance import Advice, Assumption, Rule, Setting, Shared, Term, Word


@compact
class Thread:
    """A screw thread. `male_major_mm` and `female_minor_mm` are the limits parts are made to."""

    id: str
    designation: str
    basis: Basis
    major_mm: Interval
    pitch_mm: Measure = UNKNOWN
    male_major_mm: Measure = UNKNOWN
    female_minor_mm: Measure = UNKNOWN
    form_angle_deg: Measure = UNKNOWN
    engagement_mm: Measure = UNKNOWN  # length of thread that is screwed in, as lenses are made
    used_for: str = ""
    standard: str = ""
    aliases: tuple[str, ...] = ()
    note: str = ""
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Format:
    id: str
    name: str
    width_mm: float
    height_mm: float
    basis: Basis
    traits: tuple[str, ...] = ()
    aliases: tuple[str, ...] = ()
    note: str = ""
    place: Place = field(default=NOWHERE, compare=False)

    @property
    def diagonal_mm(self) -> float:
        return hypot(self.width_mm, self.height_mm)


@compact
class Mount:
    """How a lens seats on a body. `register_mm` is air-equivalent, flange to image plane."""

    id: str
    designation: str
    kind: str
    basis: Basis
    coupling: str = "unknown"
    register_mm: Measure = UNKNOWN
    mechanical_mm: Measure = UNKNOWN  # flange to image of its bodies, metal to metal, with glass behind the flange
    adjustable: bool = False  # the mount has no register: each lens brings its own flange-to-image distance
    thread: str | None = None
    throat_mm: Measure = UNKNOWN  # clear bore of the body's flange; for a lens, what must enter it
    collar_mm: Measure = UNKNOWN  # usual width of the barrel just ahead of the seat
    clear_depth_mm: Measure = UNKNOWN  # behind the flange, before a mirror, shutter or glass
    cover_glass_mm: Measure = UNKNOWN  # usual thickness of the glass before the sensor of its bodies
    longest_thread_mm: Measure = UNKNOWN  # the longest male thread that every hole of this mount takes
    mirror: bool | None = None
    iris: str = "unknown"
    f_number: Measure = UNKNOWN  # that of all its lenses, where none has an iris of its own
    format: str | None = None  # the largest its bodies are built with
    formats: tuple[str, ...] = ()  # those its bodies are built with; a generic body ships for each
    smallest_format: str | None = None  # the smallest usual one, for judging a mount alone
    shares_bayonet: tuple[str, ...] = ()
    traits: tuple[str, ...] = ()
    look_alikes: tuple[str, ...] = ()
    aliases: tuple[str, ...] = ()
    note: str = ""
    register_note: str = ""
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Body:
    id: str
    name: str
    mount: str
    format: str
    basis: Basis
    crops: tuple[str, ...] = ()  # formats it can record besides
    pixels: tuple[int, int] | None = None
    clear_depth_mm: Measure = UNKNOWN
    register_mm: Measure = UNKNOWN  # own measured one; else the mount's
    cover_glass_mm: Measure = UNKNOWN
    first_obstruction: str = ""
    stabilised: bool | None = None  # whether its sensor moves
    generic: bool = False
    aliases: tuple[str, ...] = ()
    note: str = ""
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Lens:
    id: str
    name: str
    mount: str
    basis: Basis
    focal_length_mm: Measure = UNKNOWN
    f_number: Measure = UNKNOWN  # widest
    smallest_f_number: Measure = UNKNOWN
    iris: str = "unknown"
    focusing: str = "unknown"
    made_for: str | None = None  # a format
    image_circle_mm: Measure = UNKNOWN
    travel_mm: Measure = UNKNOWN  # how far its own focusing moves it out
    close_focus_mm: Measure = UNKNOWN  # nearest mark of its scale, from the sensor
    register_mm: Measure = UNKNOWN  # own measured flange-to-image distance; else the mount's
    front_vertex_mm: Measure = UNKNOWN  # front glass to flange, lens at infinity
    hiatus_mm: Measure = UNKNOWN  # HH', between the principal planes
    pupil_magnification: Measure = UNKNOWN
    front_focal_offset_mm: Measure = UNKNOWN  # a, front focal point ahead of the front glass
    collar_mm: Measure = UNKNOWN
    rear_reach_mm: Measure = UNKNOWN  # behind the flange, lens at infinity
    rear_diameter_mm: Measure = UNKNOWN
    thread_length_mm: Measure = UNKNOWN  # of its mount's male thread
    front_thread: str | None = None
    weight_g: Measure = UNKNOWN
    thoriated: bool = False
    heavy: bool = False  # said to be so; what it weighs may not be known
    near_turn: str = "unknown"  # which way its focus ring turns towards near, seen from behind the camera
    throw_deg: Measure = UNKNOWN  # how far the ring turns from infinity to its nearest mark
    price_paid: float | None = None
    aliases: tuple[str, ...] = ()
    note: str = ""
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Cup:
    """The recess of an adapter whose lens seat lies inside the body flange."""

    bore_mm: Measure = UNKNOWN
    depth_mm: Measure = UNKNOWN


@compact
class Adapter:
    """`front` takes this lens mount, `rear` fits this body mount. front = rear: a stackable tube."""

    id: str
    name: str
    front: str
    rear: str
    kind: str
    basis: Basis
    thickness_mm: Span  # flange to flange; as written, without the spread of its making
    seat_basis: str  # measured | nominal | derived | register-difference
    cup: Cup | None = None
    factor: float | None = None
    converter_focal_mm: Measure = UNKNOWN
    clear_diameter_mm: Measure = UNKNOWN
    iris: str = "none"
    electronics: bool = False
    price_usd: tuple[float, float] | None = None
    common: str = "specialist"
    owned: int = 0  # how many of them the user has
    frame_lines: tuple[str, ...] = ()  # of which focal lengths, mm, a bright-line finder shows the frames with it
    aliases: tuple[str, ...] = ()
    note: str = ""
    place: Place = field(default=NOWHERE, compare=False)
    fixed_mm: float = 0.0  # of its thickness, what cannot be drawn out: rings told in one row with a draw

    @property
    def has_glass(self) -> bool:
        return self.factor is not None

    @property
    def stackable(self) -> bool:
        return self.front == self.rear


@compact
class Filter:
    """A filter that the user has: its strength as it is marked (ND64, ND 1.8), and the thread it screws into."""

    id: str
    name: str
    mark: str
    basis: Basis
    thread: str | None = None
    note: str = ""
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Observation:
    """What the user saw of a lens of theirs on a body: whether infinity was sharp, or how far and near it went.

    Distances in mm from the sensor. `pieces`: the adapters between, from the lens; `f_number`: the stop it was seen at.
    """

    id: str
    lens: str
    body: str
    basis: Basis
    pieces: tuple[str, ...] = ()
    infinity: bool | None = None
    far_mm: Measure = UNKNOWN
    near_mm: Measure = UNKNOWN
    f_number: Measure = UNKNOWN
    date: str = ""
    note: str = ""
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Circle:
    """The image circle that lenses made for a format usually throw, for a range of focal lengths."""

    id: str
    made_for: str  # a format, or a class of lens such as 'enlarger-50'
    focal_length_mm: Interval
    image_circle_mm: Interval
    basis: Basis
    lens_class: str = ""
    note: str = ""
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Motif:
    """A thing that is photographed, by its sides: `short_mm` is None where it is told by one side alone."""

    id: str
    name: str
    long_mm: float
    basis: Basis
    short_mm: float | None = None
    aliases: tuple[str, ...] = ()
    note: str = ""
    place: Place = field(default=NOWHERE, compare=False)


Record = (
    Source
    | Thread
    | Format
    | Mount
    | Body
    | Lens
    | Adapter
    | Filter
    | Observation
    | Circle
    | Motif
    | Term
    | Advice
    | Rule
    | Setting
    | Assumption
    | Word
    | Shared
)
