"""The quantities that a lens and a body bring with them, whatever stands between, each with its source."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact, replace
from engine.base.interval import UNKNOWN, Interval, Measure, is_known
from engine.chains.setup import Facts, Setup, usual_circle
from engine.facts.basis import Basis
from engine.facts.guidance import Assumption
from engine.facts.records import Format, Lens
from engine.physics.focus import allowed_blur_mm, travel_to_mark_mm
from engine.physics.given import ASSUMED_NAMES
from engine.physics.optics import Optics, resolve_optics
from engine.physics.trace import Given, Value

ZERO: Final = Interval.exact(0.0)


def register_of(mount_id: str, setup: Setup, facts: Facts, rear: bool = False) -> Measure:
    """A mount's register in mm; the lens's or the body's own measured one where there is one."""
    if rear and mount_id == setup.body_mount.id and is_known(setup.body.register_mm):
        return setup.body.register_mm
    if not rear and mount_id == setup.lens_mount.id and is_known(setup.lens.register_mm):
        return setup.lens.register_mm
    own = next((mount for mount in (setup.lens_mount, setup.body_mount) if mount.id == mount_id), None)
    return (own or facts.mounts[mount_id]).register_mm


def likely_register_of_lens(setup: Setup, facts: Facts) -> Measure:
    """The lens's register in mm where it is known, else what is usual for a lens of its kind and focal length."""
    register = register_of(setup.lens_mount.id, setup, facts)
    usual = None if is_known(register) else _usual_register(setup, facts)
    return register if usual is None else usual.value_mm


@compact
class _Usual:
    """The flange-to-image distance usual for a lens of its kind and focal length, and what is assumed for it."""

    value_mm: Interval
    row: Assumption


def _usual_register(setup: Setup, facts: Facts) -> _Usual | None:
    """By the focal length, where the kind of mount has no register of its own and the facts tell a share for it."""
    row = facts.assumptions.get(f"flange-to-image-{setup.lens_mount.kind}")
    focal = setup.lens.focal_length_mm
    return _Usual(row.value * focal, row) if row is not None and is_known(focal) else None


def setup_givens(setup: Setup, facts: Facts) -> dict[str, Given]:
    """What the physics starts from that is the same for every chain on this setup."""
    given = _registers(setup, facts) | _of_lens(setup) | _of_lens_mount(setup) | _of_body(setup)
    given |= {
        "f_number": _stop(setup, facts),
        "used_width_mm": _side(setup.format, "width"),
        "used_height_mm": _side(setup.format, "height"),
    }
    given |= _optics(setup, facts, likely_register_of_lens(setup, facts))
    given |= _travel(setup, facts, given["hiatus_mm"])
    for name, assumption in ASSUMED_NAMES.items():
        row = facts.assumptions[assumption]
        given[name] = based(row.basis, row.says, row.value, assumed=True)
    if is_known(setup.lens.smallest_f_number):
        given["smallest_stop"] = based(setup.lens.basis, "smallest stop of the lens", setup.lens.smallest_f_number)
    if setup.judged_format is not None and setup.judged_format is not setup.format:
        given["allowed_blur_mm"] = _blur_of_judged_format(setup.judged_format, given["blur_divisor"])
    given["image_circle_mm"] = _circle(setup, facts)
    return given


def _registers(setup: Setup, facts: Facts) -> dict[str, Given]:
    """Both registers: of the lens and the body themselves where they were measured, else of their mounts."""
    lens, body, lens_mount, body_mount = setup.lens, setup.body, setup.lens_mount, setup.body_mount
    register = register_of(lens_mount.id, setup, facts)
    usual = None if is_known(register) else _usual_register(setup, facts)
    return {
        "lens_register_mm": based(usual.row.basis, usual.row.says, usual.value_mm, assumed=True)
        if usual is not None
        else based(
            lens.basis if is_known(lens.register_mm) else lens_mount.basis,
            f"register of {lens_mount.designation}",
            register,
        ),
        "body_register_mm": based(
            body.basis if is_known(body.register_mm) else body_mount.basis,
            f"register of {body_mount.designation}",
            register_of(body_mount.id, setup, facts, rear=True),
        ),
    }


def _of_lens(setup: Setup) -> dict[str, Given]:
    """What the record of the lens itself tells."""
    lens, own = setup.lens, setup.lens.basis
    focal: Measure | None = None if setup.lens_alone and not is_known(lens.focal_length_mm) else lens.focal_length_mm
    return {
        "focal_length_mm": based(own, "focal length of the lens", focal),
        "focusing": based(own, "how the lens focuses", lens.focusing),
        "lens_iris": based(own, "how the iris is worked", iris_of(setup)),
        "collar_mm": based(own, "width of the barrel ahead of the seat", lens.collar_mm),
        "rear_reach_mm": based(own, "how far the rear reaches behind the flange", lens.rear_reach_mm),
        "rear_diameter_mm": based(own, "width of the rear", lens.rear_diameter_mm),
        "thread_length_mm": based(own, "length of the lens's thread", lens.thread_length_mm),
        "lens_weight_g": based(own, "weight of the lens", lens.weight_g),
        "lens_heavy": based(own, "whether the lens is said to be heavy", lens.heavy),
        "price_paid": based(own, "price paid for the lens", _paid(lens)),
        "thoriated": based(own, "whether the glass holds thorium", lens.thoriated),
    }


def _of_lens_mount(setup: Setup) -> dict[str, Given]:
    """What is known of every lens of its mount."""
    mount = setup.lens_mount
    return {
        "lens_kind": based(mount.basis, "kind of lens mount", mount.kind),
        "lens_mount": Given(mount.id, "lens mount"),
        "lens_traits": based(mount.basis, "what is known of lenses of this mount", mount.traits),
        "thread_depth_mm": based(mount.basis, "the longest thread that every such hole takes", mount.longest_thread_mm),
        "lens_throat_mm": based(mount.basis, f"throat of {mount.designation}", mount.throat_mm),
    }


def _of_body(setup: Setup) -> dict[str, Given]:
    """What the records of the body and of its mount tell."""
    body, mount = setup.body, setup.body_mount
    mirror = UNKNOWN if mount.mirror is None else mount.mirror
    stabilised = UNKNOWN if body.stabilised is None else body.stabilised
    own_depth = is_known(body.clear_depth_mm)
    return {
        "body_mount": Given(mount.id, "body mount"),
        "body_kind": based(mount.basis, "kind of body", mount.kind),
        "body_mirror": based(mount.basis, "whether the body has a mirror", mirror),
        "body_stabilised": based(body.basis, "whether the sensor of the body moves", stabilised),
        "throat_mm": based(mount.basis, f"throat of {mount.designation}", mount.throat_mm),
        "clear_depth_mm": based(
            body.basis if own_depth else mount.basis,
            "free depth behind the body flange",
            body.clear_depth_mm if own_depth else mount.clear_depth_mm,
        ),
    }


def _circle(setup: Setup, facts: Facts) -> Given:
    """The image circle of the lens, else that usual for lenses made for the same."""
    circle, usual = usual_circle(facts, setup.lens, setup.lens_mount)
    basis = setup.lens.basis if usual is None else usual.basis
    says = "image circle" if usual is None else f"image circle usual for lenses made for {usual.made_for}"
    # where no row tells of such lenses the circle is that of the format they are made for: they throw it, or more
    floor = usual is not None and usual.id in facts.formats
    return replace(based(basis, says, circle, assumed=usual is not None), at_least=floor)


def _paid(lens: Lens) -> Measure:
    return UNKNOWN if lens.price_paid is None else Interval.exact(lens.price_paid)


def based(basis: Basis, says: str, value: Value, assumed: bool = False) -> Given:
    """A quantity from a record, with the record's sources and confidence."""
    return Given(value, says, basis.sources, basis.confidence, assumed)


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
    return based(form.basis, f"{side} of {form.name}", Interval.exact(value))


def _stop(setup: Setup, facts: Facts) -> Given:
    if setup.f_number is not None:
        return Given(Interval.exact(setup.f_number), "the stop you named", ("asked",), "own-measured")
    if is_known(setup.lens.f_number):
        return based(setup.lens.basis, "widest stop of the lens", setup.lens.f_number)
    assumed = facts.assumptions["stop-of-a-mount-alone"]
    return based(assumed.basis, assumed.says, assumed.value, assumed=True)


def iris_of(setup: Setup) -> str:
    """How the iris of this lens is worked: what the lens's own record says, else what its mount is known for."""
    if setup.lens.iris != "unknown":
        return setup.lens.iris
    return {"none": "fixed"}.get(setup.lens_mount.iris, setup.lens_mount.iris)


def _travel(setup: Setup, facts: Facts, hiatus: Given) -> dict[str, Given]:
    """The lens's own focusing travel where it is known, and the usual one, which is only ever judged by."""
    lens, mount = setup.lens, setup.lens_mount
    says = "focusing travel of the lens"
    still = lens.focusing == "none" or (lens.focusing == "unknown" and "no-focusing" in mount.traits)
    if is_known(lens.travel_mm):
        travel: Measure = lens.travel_mm
    elif still:
        travel = ZERO
    elif is_known(lens.close_focus_mm) and is_known(lens.focal_length_mm):
        # the likeliest planes, as for the distances: then the nearest mark comes out as the nearest distance
        gap = Interval.exact(hiatus.value.nominal) if isinstance(hiatus.value, Interval) else ZERO
        travel = travel_to_mark_mm(lens.close_focus_mm, lens.focal_length_mm, gap)
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
        "travel_mm": based(lens.basis, says, travel),
        "usual_travel_mm": Given(usual, share.says, share.basis.sources, share.basis.confidence, assumed=True),
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
        return based(own, says, value)

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
