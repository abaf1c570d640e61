"""A chain and a setup turned into the quantities that the physics starts from, each with its source."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from engine.base.interval import UNKNOWN, Interval, Measure, is_known
from engine.base.span import Span
from engine.chains.ring_map import Joint
from engine.chains.setup import Facts, Setup, usual_circle
from engine.facts.records import Adapter, Basis, Format, Mount
from engine.physics.focus import allowed_blur_mm, travel_to_mark_mm
from engine.physics.given import ASSUMED_NAMES
from engine.physics.optics import Optics, resolve_optics
from engine.physics.trace import Given, Value

ZERO: Final = Interval.exact(0.0)
SPREADS: Final = {
    "derived": "making-spread-derived",
    "nominal": "making-spread-nominal",
    "register-difference": "making-spread-glass",
}
ENDS: Final = "making-spread-ends"
ADDED_FOCUSING: Final = frozenset({"helicoid", "bellows"})
# the quantities that change with the chain; all others belong to the lens and the body
CHAIN_NAMES: Final = frozenset(
    {
        "seat_mm", "error_before_glass_mm", "error_behind_glass_mm", "glass_factor", "glass_focal_mm", "image_shift_mm",
        "adapter_iris", "pieces", "glass", "electronics", "adapter_kinds", "thread_steps", "narrowest_mm",
        "cup_bore_mm", "cup_depth_mm", "thread_length_mm", "thread_depth_mm",
    }
)  # fmt: skip

Link = Adapter | Joint


@dataclass(frozen=True, slots=True)
class Chain:
    """Adapters and joints in order from the lens to the body. `variants`: adapter id -> its twins."""

    links: tuple[Link, ...]
    variants: Mapping[str, tuple[str, ...]]
    tubes: tuple[tuple[str, ...], ...] = ()  # other sets of tubes that were folded into this chain

    @property
    def adapters(self) -> tuple[Adapter, ...]:
        return tuple(link for link in self.links if isinstance(link, Adapter))

    @property
    def joints(self) -> tuple[Joint, ...]:
        return tuple(link for link in self.links if isinstance(link, Joint))

    @property
    def ids(self) -> tuple[str, ...]:
        return tuple(link.id if isinstance(link, Adapter) else f"{link.front}>{link.rear}" for link in self.links)


@dataclass(frozen=True, slots=True)
class Seat:
    """One link of a chain: how thick it is here, and what it adds to the register error."""

    link: Link
    thickness_mm: Span
    error_mm: Measure
    rests_on_flange: bool = False  # a collar too wide for the cup keeps the lens on the flange


def spread_of(adapter: Adapter, facts: Facts) -> Interval:
    """How far a piece as sold may be off, in mm: exact 0 for one that was measured."""
    if adapter.seat_basis == "measured":
        return ZERO
    name = ENDS if adapter.kind in ADDED_FOCUSING else SPREADS.get(adapter.seat_basis, "making-spread-nominal")
    return facts.assumptions[name].value


def _spread_on(length: Measure, spread: Interval) -> Measure:
    return length.widened(-spread.least, spread.greatest) if is_known(length) else UNKNOWN


def seats(chain: Chain, setup: Setup, facts: Facts, with_spread: bool) -> tuple[Seat, ...]:
    """Each link's thickness and seat error in mm, with the spread of its making or without."""
    rows = []
    collar = setup.lens.collar_mm
    for link in chain.links:
        front, rear = register_of(link.front, setup, facts), register_of(link.rear, setup, facts, rear=True)
        if isinstance(link, Joint):
            thickness = Span.fixed(ZERO)
            rests = False
        else:
            thickness = link.thickness_mm
            bore = link.cup.bore_mm if link.cup else UNKNOWN
            rests = is_known(collar) and is_known(bore) and collar.nominal > bore.nominal
            if rests:
                # the barrel does not enter the cup: the lens stands on the face of the ring
                thickness = Span.fixed(ZERO)
            elif with_spread:
                spread = spread_of(link, facts)
                thickness = Span(_spread_on(thickness.shortest, spread), _spread_on(thickness.longest, spread))
        error = thickness.hull() - (front - rear)
        rows.append(Seat(link, thickness, error, rests))
    return tuple(rows)


def register_of(mount_id: str, setup: Setup, facts: Facts, rear: bool = False) -> Measure:
    """A mount's register in mm; the lens's or the body's own measured one where there is one."""
    if rear and mount_id == setup.body_mount.id and is_known(setup.body.register_mm):
        return setup.body.register_mm
    if not rear and mount_id == setup.lens_mount.id and is_known(setup.lens.register_mm):
        return setup.lens.register_mm
    return facts.mounts[mount_id].register_mm


def _total(rows: Sequence[Seat]) -> Span:
    total = Span.fixed(ZERO)
    for row in rows:
        total = total + row.thickness_mm
    return total


def _errors(rows: Sequence[Seat], chain: Chain, setup: Setup, facts: Facts) -> tuple[Span, Span]:
    """The register error ahead of the first glass and from it on: the whole and exact 0 where there is no glass."""
    lens = register_of(setup.lens_mount.id, setup, facts)
    body = register_of(setup.body_mount.id, setup, facts, rear=True)
    at = next((n for n, link in enumerate(chain.links) if isinstance(link, Adapter) and link.has_glass), None)
    if at is None:
        total = _total(rows)
        return Span(total.shortest + (body - lens), total.longest + (body - lens)), Span.fixed(ZERO)
    middle = register_of(chain.links[at].front, setup, facts) if at else lens
    before, behind = _total(rows[:at]), _total(rows[at:])
    off = body - middle
    if isinstance(first := chain.links[at], Adapter) and first.seat_basis == "measured":
        # its seat tells how far the glass moves the image; that it holds infinity is what such rings are made for
        off = off + _image_shift(chain, setup, facts)
    return (
        Span(before.shortest + (middle - lens), before.longest + (middle - lens)),
        Span(behind.shortest + off, behind.longest + off),
    )


def _basis(basis: Basis, says: str, value: Value, assumed: bool = False) -> Given:
    return Given(value, says, basis.sources, basis.confidence, assumed)


def givens(chain: Chain, setup: Setup, facts: Facts, with_spread: bool = True) -> dict[str, Given]:
    """Everything the physics starts from for this chain on this setup; lengths in mm."""
    lens, body, lens_mount, body_mount = setup.lens, setup.body, setup.lens_mount, setup.body_mount
    rows = seats(chain, setup, facts, with_spread)
    before, behind = _errors(rows, chain, setup, facts)
    own = lens.basis
    lens_register = register_of(lens_mount.id, setup, facts)
    body_register = register_of(body_mount.id, setup, facts, rear=True)
    factor = 1.0
    for adapter in chain.adapters:
        factor *= adapter.factor or 1.0
    focal: Measure | None = None if setup.lens_alone and not is_known(lens.focal_length_mm) else lens.focal_length_mm
    given: dict[str, Given] = {
        "lens_register_mm": _basis(
            own if is_known(lens.register_mm) else lens_mount.basis, f"register of {lens_mount.designation}", lens_register
        ),
        "body_register_mm": _basis(
            body.basis if is_known(body.register_mm) else body_mount.basis,
            f"register of {body_mount.designation}",
            body_register,
        ),
        "seat_mm": Given(_total(rows), "the seats of all pieces together"),
        "error_before_glass_mm": Given(before, "register error ahead of any glass"),
        "error_behind_glass_mm": Given(behind, "register error behind the glass"),
        "glass_factor": Given(Interval.exact(factor), "factor of the glass in the chain"),
        "glass_focal_mm": Given(_glass_focal(chain), "focal length of the glass in the chain"),
        "image_shift_mm": Given(_image_shift(chain, setup, facts), "how far the glass in the chain moves the image"),
        "focal_length_mm": _basis(own, "focal length of the lens", focal),
        "f_number": _stop(setup, facts),
        "used_width_mm": _side(setup.format, "width"),
        "used_height_mm": _side(setup.format, "height"),
        "focusing": _basis(own, "how the lens focuses", lens.focusing),
        "lens_iris": _basis(own, "how the iris is worked", iris_of(setup)),
        "adapter_iris": Given(adapter_iris(chain), "what the adapters offer for the iris"),
        "lens_kind": _basis(lens_mount.basis, "kind of lens mount", lens_mount.kind),
        "lens_mount": Given(lens_mount.id, "lens mount"),
        "body_mount": Given(body_mount.id, "body mount"),
        "body_kind": _basis(body_mount.basis, "kind of body", body_mount.kind),
        "body_mirror": _basis(
            body_mount.basis, "whether the body has a mirror", UNKNOWN if body_mount.mirror is None else body_mount.mirror
        ),
        "lens_traits": _basis(lens_mount.basis, "what is known of lenses of this mount", lens_mount.traits),
        "collar_mm": _basis(own, "width of the barrel ahead of the seat", lens.collar_mm),
        "rear_reach_mm": _basis(own, "how far the rear reaches behind the flange", lens.rear_reach_mm),
        "rear_diameter_mm": _basis(own, "width of the rear", lens.rear_diameter_mm),
        "throat_mm": _basis(body_mount.basis, f"throat of {body_mount.designation}", body_mount.throat_mm),
        "lens_throat_mm": _basis(lens_mount.basis, f"throat of {lens_mount.designation}", lens_mount.throat_mm),
        "lens_weight_g": _basis(own, "weight of the lens", lens.weight_g),
        "thoriated": _basis(own, "whether the glass holds thorium", lens.thoriated),
        "pieces": Given(Interval.exact(len(chain.adapters)), "adapters in the chain"),
        "glass": Given(any(adapter.has_glass for adapter in chain.adapters), "whether there is glass in the chain"),
        "electronics": Given(any(adapter.electronics for adapter in chain.adapters), "whether a ring has contacts"),
        "adapter_kinds": Given(tuple(adapter.kind for adapter in chain.adapters), "kinds of adapters"),
        "thread_steps": Given(tuple(joint.outcome for joint in chain.joints), "threads that were never meant to meet"),
        "narrowest_mm": Given(_narrowest(chain), "the narrowest opening on the way"),
    }
    depth = body.clear_depth_mm if is_known(body.clear_depth_mm) else body_mount.clear_depth_mm
    given["clear_depth_mm"] = _basis(body.basis if is_known(body.clear_depth_mm) else body_mount.basis,
                                     "free depth behind the body flange", depth)  # fmt: skip
    given |= _cup(chain, setup)
    given |= _travel(setup, facts, chain)
    given |= _thread(chain, facts)
    given |= _optics(setup, facts, lens_register)
    for name, assumption in ASSUMED_NAMES.items():
        row = facts.assumptions[assumption]
        given[name] = _basis(row.basis, row.says, row.value, assumed=True)
    if setup.judged_format is not None and setup.judged_format is not setup.format:
        given["allowed_blur_mm"] = _blur_of_judged_format(setup.judged_format, given["blur_divisor"])
    circle, usual = usual_circle(facts, lens, lens_mount)
    basis = lens.basis if usual is None else usual.basis
    says = "image circle" if usual is None else f"image circle usual for lenses made for {usual.made_for}"
    given["image_circle_mm"] = _basis(basis, says, circle, assumed=usual is not None)
    return given


def _blur_of_judged_format(form: Format, divisor: Given) -> Given:
    """The blur allowed on the format that a body mount alone is judged on: its smallest usual one."""
    blur = allowed_blur_mm(Interval.exact(form.width_mm), Interval.exact(form.height_mm), _measure(divisor.value))
    return Given(blur, f"blur that still counts as sharp on {form.name}", divisor.sources, divisor.confidence, True)


def _measure(value: Value) -> Measure:
    return value if isinstance(value, Interval) else UNKNOWN


def _side(form: Format | None, side: str) -> Given:
    if form is None:
        return Given(UNKNOWN, f"{side} of the area used")
    value = form.width_mm if side == "width" else form.height_mm
    return _basis(form.basis, f"{side} of {form.name}", Interval.exact(value))


def _glass_focal(chain: Chain) -> Measure:
    glass = [adapter for adapter in chain.adapters if adapter.has_glass]
    return glass[0].converter_focal_mm if len(glass) == 1 else UNKNOWN


def _image_shift(chain: Chain, setup: Setup, facts: Facts) -> Measure:
    """How much nearer the lens the glass brings the image, read off the seat of one glass piece that was measured."""
    glass = [adapter for adapter in chain.adapters if adapter.has_glass]
    if not glass:
        return ZERO
    if len(glass) > 1 or glass[0].seat_basis != "measured":
        return UNKNOWN
    difference = register_of(glass[0].front, setup, facts) - register_of(glass[0].rear, setup, facts, rear=True)
    return difference - glass[0].thickness_mm.hull()


def _narrowest(chain: Chain) -> Measure:
    known = [a.clear_diameter_mm for a in chain.adapters if is_known(a.clear_diameter_mm)]
    return min(known, key=lambda bore: bore.nominal) if known else UNKNOWN


def _stop(setup: Setup, facts: Facts) -> Given:
    if setup.f_number is not None:
        return Given(Interval.exact(setup.f_number), "the stop you named", ("asked",), "own-measured")
    if is_known(setup.lens.f_number):
        return _basis(setup.lens.basis, "widest stop of the lens", setup.lens.f_number)
    assumed = facts.assumptions["stop-of-a-mount-alone"]
    return _basis(assumed.basis, assumed.says, assumed.value, assumed=True)


def iris_of(setup: Setup) -> str:
    """How the iris of this lens is worked: what the lens's own record says, else what its mount is known for."""
    if setup.lens.iris != "unknown":
        return setup.lens.iris
    return {"none": "fixed"}.get(setup.lens_mount.iris, setup.lens_mount.iris)


def adapter_iris(chain: Chain) -> tuple[str, ...]:
    return tuple(adapter.iris for adapter in chain.adapters)


def _cup(chain: Chain, setup: Setup) -> dict[str, Given]:
    """The first cup of the chain; None where the chain has none."""
    cupped = next((adapter for adapter in chain.adapters if adapter.cup is not None), None)
    if cupped is None or cupped.cup is None:
        return {
            "cup_bore_mm": Given(None, "no cup in the chain"),
            "cup_depth_mm": Given(None, "no cup in the chain"),
        }
    return {
        "cup_bore_mm": _basis(cupped.basis, f"bore of the cup of {cupped.name}", cupped.cup.bore_mm),
        "cup_depth_mm": _basis(cupped.basis, f"depth of the cup of {cupped.name}", cupped.cup.depth_mm),
    }


def _travel(setup: Setup, facts: Facts, chain: Chain) -> dict[str, Given]:
    """The lens's own focusing travel where it is known, and the usual one, which is only ever judged by."""
    lens, mount = setup.lens, setup.lens_mount
    says = "focusing travel of the lens"
    still = lens.focusing == "none" or (lens.focusing == "unknown" and "no-focusing" in mount.traits)
    if is_known(lens.travel_mm):
        travel: Measure = lens.travel_mm
    elif still:
        travel = ZERO
    elif is_known(lens.close_focus_mm) and is_known(lens.focal_length_mm):
        hiatus = lens.hiatus_mm if is_known(lens.hiatus_mm) else ZERO
        travel = travel_to_mark_mm(lens.close_focus_mm, lens.focal_length_mm, hiatus)
        says = "focusing travel read off the nearest mark"
    else:
        travel = UNKNOWN
    share = facts.assumptions["usual-travel-share"]
    if is_known(travel):
        usual: Measure = travel
    elif is_known(lens.focal_length_mm):
        usual = share.value * lens.focal_length_mm
    else:
        # without a focal length the format stands in for it: a normal lens is about as long as the diagonal
        lens_format = facts.formats.get(lens.made_for or mount.format or "")
        usual = share.value * lens_format.diagonal_mm if lens_format else UNKNOWN
    return {
        "travel_mm": _basis(lens.basis, says, travel),
        "usual_travel_mm": Given(usual, share.says, share.basis.sources, share.basis.confidence, assumed=True),
    }


def _thread(chain: Chain, facts: Facts) -> dict[str, Given]:
    """Length of the lens's male thread and depth of what takes it, where both are known."""
    first = chain.links[0] if chain.links else None
    mount: Mount | None = facts.mounts.get(first.front) if first else None
    thread = facts.threads.get(mount.thread) if mount and mount.thread else None
    length = thread.engagement_mm if thread else UNKNOWN
    return {
        "thread_length_mm": Given(length, "length of thread that lenses are made with"),
        "thread_depth_mm": Given(UNKNOWN, "depth of the thread that takes it"),
    }


def _optics(setup: Setup, facts: Facts, register: Measure) -> dict[str, Given]:
    """Principal planes, front focus and pupils: from the lens's own facts, else assumed by its construction."""
    lens = setup.lens
    to_sensor = lens.front_vertex_mm + register
    optics: Optics = resolve_optics(
        lens.focal_length_mm,
        front_to_sensor_mm=to_sensor,
        register_mm=register,
        hiatus_mm=lens.hiatus_mm,
        front_focal_offset_mm=lens.front_focal_offset_mm,
        pupil_magnification=lens.pupil_magnification,
        assumptions={name: row.value for name, row in facts.assumptions.items()},
    )
    own = lens.basis

    def given(name: str, says: str, value: Value) -> Given:
        if name in optics.assumed:
            return Given(value, f"{says}, assumed by construction", ("MODEL",), "one-source", assumed=True)
        return _basis(own, says, value)

    return {
        "hiatus_mm": given("hiatus_mm", "distance between the principal planes", optics.hiatus_mm),
        "front_focal_offset_mm": given(
            "front_focal_offset_mm", "front focal point ahead of the front glass", optics.front_focal_offset_mm
        ),
        "front_to_sensor_mm": given(
            "front_to_sensor_mm", "front glass to sensor, lens at infinity", optics.front_to_sensor_mm
        ),
        "pupil_magnification": given("pupil_magnification", "pupil magnification", optics.pupil_magnification),
        "optics_error": Given(optics.relative_error, "error of the model where the lens's planes are assumed"),
    }
