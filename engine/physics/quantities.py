"""The table of named quantities: what each is worked out from, by which formula, in which unit, after which source."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Final

from engine.base.compact import compact
from engine.base.interval import UNKNOWN, Measure, is_known
from engine.base.span import Span
from engine.physics import clearance, coverage, focus, seat
from engine.physics.enclose import widened_by_share
from engine.physics.given import GIVEN_NAMES

Value = Measure | Span | str | bool | tuple[str, ...] | None
Formula = Callable[..., Value]

# lenses that focus by moving a part of themselves do not obey the formulas of a lens that moves whole
PARTLY_MOVED: Final = frozenset({"front-cell", "internal", "zoom"})
# inputs that may be absent without the quantity being absent: glass without a known focal length
MAY_BE_ABSENT: Final = frozenset({"glass_focal_mm"})


@compact
class Quantity:
    """`formula` takes the values of `needs` in their order. It gives None where the quantity does not apply."""

    name: str
    unit: str
    needs: tuple[str, ...]
    formula: Formula
    says: str
    source: str


def _where_it_applies(quantity: Quantity) -> Quantity:
    """The same, giving None where something it needs does not apply."""

    def formula(*values: Value) -> Value:
        for need, value in zip(quantity.needs, values, strict=True):
            if value is None and need not in MAY_BE_ABSENT:
                return None
        return quantity.formula(*values)

    return Quantity(quantity.name, quantity.unit, quantity.needs, formula, quantity.says, quantity.source)


def _sum(one: Span, other: Span) -> Span:
    return one + other


def _reachable(before: Span, behind: Span, k: Measure, q: Measure | None, travel: Measure, usual: Measure) -> Span:
    return seat.extension(before, behind, k, q, travel if is_known(travel) else usual)


def _at(end: Callable[[Span], Measure], formula: Callable[..., Measure | None]) -> Formula:
    """`formula` with every span at one end of its settings; None for a lens that does not move whole.

    How a lens focuses may be unknown: it is then taken to move whole.
    """

    def at(focusing: str, *facts: Span | Measure | None) -> Measure | None:
        if focusing in PARTLY_MOVED:
            return None
        return formula(*(end(fact) if isinstance(fact, Span) else fact for fact in facts))

    return at


def _far(formula: Callable[..., Measure | None]) -> Formula:
    return _at(lambda span: span.shortest, formula)


def _near(formula: Callable[..., Measure | None]) -> Formula:
    return _at(lambda span: span.longest, formula)


def _times(one: Measure, other: Measure) -> Measure:
    return one * other if is_known(one) else UNKNOWN


def _from_sensor(x: Measure, behind: Measure, k: Measure, q: Measure | None, f: Measure, gap: Measure, shift: Measure,
                 error: Measure) -> Measure:  # fmt: skip
    counted = seat.extension_behind_glass_mm(behind, k, q)
    bare = focus.from_sensor_mm(f, gap, x)
    return widened_by_share(focus.through_glass_mm(bare, behind, counted, shift), error)


def _from_front_glass(x: Measure, f: Measure, offset: Measure, error: Measure) -> Measure:
    room = focus.from_front_glass_mm(f, offset, x)
    return widened_by_share(room, focus.model_error_at(error, focus.magnification(f, x)))


def _magnified(x: Measure, behind: Measure, k: Measure, q: Measure | None, f: Measure) -> Measure:
    return _times(focus.magnification(f, x), seat.glass_magnification(behind, k, q))


def _effective(x: Measure, behind: Measure, k: Measure, q: Measure | None, f: Measure, n: Measure,
               p: Measure) -> Measure:  # fmt: skip
    effective = focus.effective_f_number(n, focus.magnification(f, x), p)
    return _times(effective, seat.glass_magnification(behind, k, q))


def _light_lost(x: Measure, f: Measure, p: Measure) -> Measure:
    return focus.light_lost_stops(focus.magnification(f, x), p)


def _infinity_mark(x: Measure, f: Measure, gap: Measure) -> Measure | None:
    return focus.infinity_mark_mm(f, gap, x)


def _infinity_from(miss: Measure, blur: Measure, k: Measure) -> Measure | None:
    if is_known(miss) and miss.greatest <= 0:
        return None  # a setting reaches infinity: no stop is needed for it
    return focus.infinity_from_f_number(miss, blur, k)


def _far_blur(miss: Measure, n: Measure, k: Measure) -> Measure:
    return _times(focus.far_blur_mm(miss, n), k)


def _circle_at_far(c: Measure, k: Measure, x: Span, f: Measure, p: Measure, g: Measure, g_blind: Measure) -> Measure:
    # a lens that sits too close is focused out to x = 0, where its circle is what it is
    at = x.shortest.at_least(0.0) if is_known(x.shortest) else UNKNOWN
    return _times(coverage.image_circle_mm(c, at, f, p, g, g_blind), k)


def _excess(error: Span) -> Measure:
    return error.shortest.at_least(0.0) if is_known(error.shortest) else UNKNOWN


def _shortfall(error: Span) -> Measure:
    return (-error.longest).at_least(0.0) if is_known(error.longest) else UNKNOWN


_SEATS: Final = ("error_before_glass_mm", "error_behind_glass_mm")
_GLASS: Final = ("glass_factor", "glass_focal_mm")
_OUT: Final = ("focusing", "extension_mm")
_AT: Final = (*_OUT, "error_behind_glass_mm")
_FROM_SENSOR: Final = (*_AT, *_GLASS, "focal_length_mm", "hiatus_mm", "image_shift_mm", "optics_error")
_FROM_FRONT: Final = (*_OUT, "focal_length_mm", "front_focal_offset_mm", "optics_error")
_MAGNIFIED: Final = (*_AT, *_GLASS, "focal_length_mm")
_MODEL: Final = "focus model for lenses that move whole"
_DEFINED: Final = "by definition"
_TRADE: Final = "practice of the trade"

_ROWS: Final[tuple[Quantity, ...]] = (
    # seat and infinity
    Quantity("register_error_mm", "mm", _SEATS, _sum, "register error, + too far from the sensor", _DEFINED),
    Quantity("right_seat_mm", "mm", ("lens_register_mm", "body_register_mm", "image_shift_mm"), seat.right_seat_mm,
             "the seat that would be right", _DEFINED),
    Quantity("excess_mm", "mm", ("register_error_mm",), _excess, "how much the seat is too long", _DEFINED),
    Quantity("shortfall_mm", "mm", ("register_error_mm",), _shortfall, "how much the seat is too short", _DEFINED),
    Quantity("extension_mm", "mm", (*_SEATS, *_GLASS, "travel_mm"), seat.extension,
             "extension from the far-focus position", _MODEL),
    Quantity("reachable_extension_mm", "mm", (*_SEATS, *_GLASS, "travel_mm", "usual_travel_mm"), _reachable,
             "extension, with the usual travel where the lens's own is not known", _MODEL),
    Quantity("infinity_miss_mm", "mm", ("reachable_extension_mm",), focus.infinity_miss_mm,
             "how far the nearest setting stays from infinity", _MODEL),
    Quantity("allowed_blur_mm", "mm", ("used_width_mm", "used_height_mm", "blur_divisor"), focus.allowed_blur_mm,
             "blur that still counts as sharp", _TRADE),
    Quantity("infinity_allowance_mm", "mm", ("f_number", "allowed_blur_mm", "glass_factor"),
             focus.infinity_allowance_mm, "how far from infinity its depth of focus forgives", _MODEL),
    Quantity("infinity_from_f_number", "f-number", ("infinity_miss_mm", "allowed_blur_mm", "glass_factor"),
             _infinity_from, "widest stop at which infinity is sharp enough", _MODEL),
    Quantity("infinity_mark_mm", "mm", (*_OUT, "focal_length_mm", "hiatus_mm"), _far(_infinity_mark),
             "mark of the focus scale at which infinity is sharp", _MODEL),
    Quantity("far_blur_mm", "mm", ("infinity_miss_mm", "f_number", "glass_factor"), _far_blur,
             "blur of a far point at the setting nearest infinity", _MODEL),
    # distances
    Quantity("far_from_sensor_mm", "mm", _FROM_SENSOR, _far(_from_sensor), "farthest focus, from the sensor", _MODEL),
    Quantity("near_from_sensor_mm", "mm", _FROM_SENSOR, _near(_from_sensor), "nearest focus, from the sensor", _MODEL),
    Quantity("far_from_front_glass_mm", "mm", _FROM_FRONT, _far(_from_front_glass),
             "farthest focus, from the front glass", _MODEL),
    Quantity("near_from_front_glass_mm", "mm", _FROM_FRONT, _near(_from_front_glass),
             "nearest focus, from the front glass", _MODEL),
    Quantity("far_magnification", "1", _MAGNIFIED, _far(_magnified), "magnification at the farthest focus", _MODEL),
    Quantity("near_magnification", "1", _MAGNIFIED, _near(_magnified), "magnification at the nearest focus", _MODEL),
    # light
    Quantity("effective_f_number", "f-number", (*_MAGNIFIED, "f_number", "pupil_magnification"), _near(_effective),
             "f-number that counts for exposure at the nearest focus", _MODEL),
    Quantity("effective_f_number_at_far", "f-number", (*_MAGNIFIED, "f_number", "pupil_magnification"),
             _far(_effective), "f-number that counts for exposure at the farthest focus", _MODEL),
    Quantity("light_lost_stops", "stops", (*_OUT, "focal_length_mm", "pupil_magnification"), _near(_light_lost),
             "light that the extension costs at the nearest focus", _MODEL),
    Quantity("combined_focal_mm", "mm", ("focal_length_mm", "glass_factor"), _times,
             "focal length behind the glass", _MODEL),
    Quantity("combined_f_number", "f-number", ("f_number", "glass_factor"), _times,
             "f-number behind the glass", _MODEL),
    # coverage
    Quantity("image_circle_at_far_mm", "mm",
             ("image_circle_mm", "glass_factor", "extension_mm", "focal_length_mm", "pupil_magnification",
              "circle_growth", "circle_growth_without_pupil"),
             _circle_at_far, "image circle at the farthest focus", _MODEL),
    Quantity("lit_share", "1", ("image_circle_at_far_mm", "used_width_mm", "used_height_mm"), coverage.lit_share,
             "share of the area used that is lit", _DEFINED),
    Quantity("crop_factor", "1", ("used_width_mm", "used_height_mm"), coverage.crop_factor,
             "crop factor by diagonal", _TRADE),
    Quantity("equivalent_focal_mm", "mm", ("combined_focal_mm", "crop_factor"), coverage.equivalent,
             "focal length that frames alike on 36 x 24", _TRADE),
    Quantity("equivalent_f_number", "f-number", ("combined_f_number", "crop_factor"), coverage.equivalent,
             "f-number that blurs alike on 36 x 24, never for exposure", _TRADE),
    # clearance
    Quantity("overhang_mm", "mm", ("rear_reach_mm", "seat_mm"), clearance.overhang_mm,
             "how far the rear stands behind the body flange", _DEFINED),
    Quantity("clearance_mm", "mm", ("clear_depth_mm", "overhang_mm"), clearance.clearance_mm,
             "what is left behind the rear", _DEFINED),
    Quantity("collar_clearance_mm", "mm", ("cup_bore_mm", "collar_mm"), clearance.width_left_mm,
             "what is left around the barrel in the cup", _DEFINED),
    Quantity("rear_clearance_mm", "mm", ("narrowest_mm", "rear_diameter_mm"), clearance.width_left_mm,
             "what is left around the rear in the narrowest opening", _DEFINED),
    Quantity("throat_clearance_mm", "mm", ("throat_mm", "rear_diameter_mm"), clearance.width_left_mm,
             "what is left around the rear in the throat", _DEFINED),
    Quantity("thread_depth_left_mm", "mm", ("thread_depth_mm", "thread_length_mm"), clearance.thread_depth_left_mm,
             "what is left of the threaded hole behind the male thread", _DEFINED),
)  # fmt: skip


def _table(rows: Iterable[Quantity]) -> Mapping[str, Quantity]:
    return {row.name: _where_it_applies(row) for row in rows}


QUANTITIES: Final = _table(_ROWS)
NAMES: Final = frozenset(GIVEN_NAMES) | frozenset(QUANTITIES)
