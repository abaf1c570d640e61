"""Typed records: what the facts say, whole as soon as they exist. Lengths in mm; nothing here knows YAML."""

from __future__ import annotations

from math import hypot
from typing import Final

from engine.base.compact import compact, field
from engine.base.interval import UNKNOWN, Interval, Measure
from engine.base.place import NOWHERE, Place
from engine.base.span import Span

CONFIDENCES: Final = ("own-measured", "standard", "two-sources", "one-source", "memory")
STRONG: Final = frozenset({"own-measured", "standard", "two-sources"})
MOUNT_KINDS: Final = (
    "slr", "rangefinder", "mirrorless", "medium-format", "cine", "video", "industrial", "still",
    "enlarger", "microscope", "projector", "astro", "bellows", "filter", "board",
)  # fmt: skip
COUPLINGS: Final = ("screw", "bayonet", "breech-lock", "push-in", "clamp", "spider", "unknown")
IRIS_DRIVES: Final = ("ring", "lever", "electronic", "mixed", "none", "unknown")
TRAITS: Final = (
    "no-focusing",  # the lens has no focusing of its own: the adapter must add it
    "shutter-in-lens",  # shuts when uncocked or without power
    "needs-tube-lens",  # forms no image without a second lens
    "finite-conjugate",  # made for one magnification, not for infinity
    "no-shoulder",  # does not stop by itself when screwed in
    "prism-behind",  # corrected for the glass of a prism behind the lens
    "deep-rear",  # rears commonly reach well behind the flange
    "auto-pin",  # a pin must be pressed for the blades to close
    "camera-iris",  # the iris was in the body: the lens has none
    "focus-drive-in-body",  # focus is turned by the body or the adapter
    "lens-side-only",  # no camera body carries it
    "thread-only",  # a thread of accessories, without a register of its own
    "jams",  # a pin or lug can lock the lens on a body
    "shutters-in-own-lenses",  # bodies of it have no shutter of their own but an electronic one
    "usual-hub",  # what most is adapted to, and from: one ring for each lens, one for each body
    "usual-tubes",  # whose tubes and bellows are taken where no mount is told
)
LENS_TRAITS: Final = ("fixed-iris", "leaf-shutter")  # what a question may say of a lens, and advice be for
ADAPTER_KINDS: Final = (
    "plain", "recessed", "extension-tube", "helicoid", "bellows", "thread-reducer", "corrective-glass",
    "focal-reducer", "teleconverter", "tilt", "shift", "reverse-ring", "coupling-ring", "step-ring", "turret",
)  # fmt: skip
ADAPTER_IRIS: Final = ("none", "lever-ring", "own-iris", "electronic")
COMMONNESS: Final = ("everyday", "specialist", "made-to-order", "own")
LENS_IRIS: Final = ("ring", "lever", "electronic", "fixed", "unknown")
FOCUSING: Final = ("unit", "front-cell", "internal", "zoom", "none", "unknown")
NEAR_TURNS: Final = ("clockwise", "counter-clockwise", "push-pull", "unknown")
EXAMPLES: Final = ("far-limits", "marks", "tubes")
ASKED_AS: Final = ("why", "hazard", "gear-setting", "out-of-scope", "other")
PER_FORMAT: Final = ("allowed_blur_mm", "crop_factor", "format_diagonal_mm")  # what tells a term of a format
SEVERITIES: Final = ("note", "caution", "danger")
VERDICTS: Final = ("infinity", "macro-only", "unusable")  # best first


@compact
class Basis:
    """How far a record can be trusted, and where it came from."""

    confidence: str
    sources: tuple[str, ...]

    @property
    def is_strong(self) -> bool:
        return self.confidence in STRONG


@compact
class Source:
    id: str
    title: str
    place: Place = field(default=NOWHERE, compare=False)


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
    adjustable: bool = False  # the mount has no register: each lens brings its own flange-to-image distance
    thread: str | None = None
    throat_mm: Measure = UNKNOWN  # clear bore of the body's flange; for a lens, what must enter it
    collar_mm: Measure = UNKNOWN  # usual width of the barrel just ahead of the seat
    clear_depth_mm: Measure = UNKNOWN  # behind the flange, before a mirror, shutter or glass
    longest_thread_mm: Measure = UNKNOWN  # the longest male thread that every hole of this mount takes
    mirror: bool | None = None
    iris: str = "unknown"
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
    aliases: tuple[str, ...] = ()
    note: str = ""
    place: Place = field(default=NOWHERE, compare=False)

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
class Term:
    id: str
    names: tuple[str, ...]
    means: str
    basis: Basis
    per_format: str = ""  # the quantity that tells it of a format: allowed_blur_mm, crop_factor, format_diagonal_mm
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Advice:
    """What to know or do about a topic, and whom to defer to."""

    id: str
    topic: str
    names: tuple[str, ...]
    says: str
    defer_to: str
    severity: str
    basis: Basis
    example: str = ""  # the worked table that goes with it: far-limits, marks
    mounts: tuple[str, ...] = ()  # the mounts that it tells of or helps to know
    about: tuple[str, ...] = ()  # further words that people use for it; they are looked for, not read as names
    traits: tuple[str, ...] = ()  # told first where lens or body has one of these, by itself or by its mount
    asked_as: str = ""  # the kind of question that it answers, where that is no reason and no danger
    plainly: str = ""  # said first where leave is asked for: 'is it safe', 'may I'
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Rule:
    """`when` it holds, it lowers the verdict to `limits` (where given) and says `because`."""

    id: str
    when: str
    because: str
    severity: str
    limits: str | None = None
    measure: str = ""  # the reading that decides it where it is undecided
    undecided: str = ""  # what is said where it cannot be decided
    provided: str = ""  # what must hold for it not to apply, as a clause behind 'provided'
    advice: str | None = None  # the advice whose caution comes with it
    remedy: str | None = None  # the quantity whose change lifts it
    brief: str = ""  # the same in a few words, for a card
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Setting:
    """What the body is to be told `when` the condition holds, in general terms."""

    id: str
    when: str
    says: str
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Assumption:
    """A number the trade goes by where a fact is missing. Said to be assumed wherever it is used."""

    id: str
    value: Interval
    unit: str
    says: str
    basis: Basis
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Word:
    """What people type (`says`) for a word of the language (`means`). Empty `means`: a filler."""

    id: str
    means: str
    says: tuple[str, ...]
    place: Place = field(default=NOWHERE, compare=False)


@compact
class Shared:
    """A designation that several mounts carry: asked back, or answered for the likeliest (`likely`)."""

    id: str
    says: tuple[str, ...]
    mounts: tuple[str, ...]
    likely: str | None
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
    | Term
    | Advice
    | Rule
    | Setting
    | Assumption
    | Word
    | Shared
)
