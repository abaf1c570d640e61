"""The numbers of one chain for the record, beyond those that stand in the chain itself."""

from __future__ import annotations

from collections.abc import Iterator
from math import isinf
from typing import Final

from engine.answers.parts.answer import Quantity
from engine.answers.parts.wording import SEAT_READS_MM, about, distance, money, times
from engine.answers.seat.distances import Distances
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.chains.setup import Facts, usual_circle
from engine.chains.walk import ADDED_FOCUSING, Chain
from engine.facts.records import Adapter
from engine.judging.judge import Judged
from engine.physics import coverage
from engine.physics.density import stops_of_factor

FULLY_OUT: Final = "helicoid fully out"


def chain_numbers(judged: Judged, facts: Facts) -> Iterator[Quantity]:
    """Count, length and price of the pieces; the mark of infinity, shim and helicoid setting where there are any."""
    adapters = judged.chain.adapters
    yield Quantity("adapter_count", Interval.exact(len(adapters)))
    seat = judged.measured_trace.value("seat_mm")
    if isinstance(seat, Span) and adapters and is_known(whole := seat.hull()):
        yield Quantity("stack_mm", whole)
    band = price_of(judged)
    if band is not None:
        yield Quantity("price", band)
    allowance = judged.measured_trace.value("infinity_allowance_mm")
    if isinstance(allowance, Interval):
        yield Quantity("infinity_allowance_mm", allowance)
    yield from _glass_numbers(judged)
    yield from _off_numbers(judged)
    yield from _helicoid_numbers(judged, facts)


def _glass_numbers(judged: Judged) -> Iterator[Quantity]:
    """The focal length and the f-number behind a reducer or an extender, and by how many stops the light changes."""
    factor = judged.trace.value("glass_factor")
    if not isinstance(factor, Interval) or factor.nominal == 1:
        return
    for name, source in (("focal_length_mm", "combined_focal_mm"), ("f_number", "combined_f_number")):
        value = judged.trace.value(source)
        if isinstance(value, Interval):
            yield Quantity(name, value, "through the glass")
    light = stops_of_factor(factor * factor)
    if is_known(light):
        yield Quantity("light_difference_stops", abs(light), "through the glass")


def price_of(judged: Judged) -> Interval | None:
    """The band of what must be bought, in dollars; None where a price is not known."""
    bands = [adapter.price_usd for adapter in judged.chain.adapters if not adapter.owned]
    if not bands or any(band is None for band in bands):
        return None
    return Interval.between(sum(band[0] for band in bands if band), sum(band[1] for band in bands if band))


def _off_numbers(judged: Judged) -> Iterator[Quantity]:
    error = judged.measured_trace.value("register_error_mm")
    if not isinstance(error, Span) or not error.is_fixed or not is_known(error.shortest):
        return
    off = error.shortest
    if abs(off.nominal) > SEAT_READS_MM:
        yield Quantity("shim_mm", abs(off))
    mark = judged.trace.value("infinity_mark_mm")
    if isinstance(mark, Interval) and not isinf(mark.greatest) and off.nominal < -SEAT_READS_MM:
        yield Quantity("scale_mark_mm", mark)


def _helicoid_numbers(judged: Judged, facts: Facts) -> Iterator[Quantity]:
    """Where a helicoid stands for infinity, and where the lens is sharp with it fully out."""
    moving = next((link for link in judged.chain.links if _moves(link)), None)
    error = judged.measured_trace.value("register_error_mm")
    focal = judged.measured_trace.value("focal_length_mm")
    if moving is None or not isinstance(moving, Adapter) or not isinstance(error, Span):
        return
    low, high = error.shortest, error.longest
    at = moving.thickness_mm.shortest
    if not (is_known(low) and is_known(high) and is_known(at)):
        return
    if low.nominal <= 0 <= high.nominal:
        yield Quantity("helicoid_setting_mm", Interval.exact(at.nominal - low.nominal - moving.fixed_mm), "infinity")
    if not isinstance(focal, Interval):
        return
    for off, case in ((low.nominal, "helicoid shut"), (high.nominal, FULLY_OUT)):
        if off <= 0:
            continue
        sharp = Distances(focal.nominal, facts).at(Interval.exact(off))
        for name, value in (
            ("far_from_sensor_mm", sharp.from_sensor_mm), ("from_front_principal_mm", sharp.from_front_principal_mm),
            ("magnification", sharp.magnification),
        ):  # fmt: skip
            if is_known(value):
                yield Quantity(name, value, case)
        if case == FULLY_OUT and is_known(sharp.from_sensor_mm):
            yield Quantity("near_from_sensor_mm", sharp.from_sensor_mm, case)


def fully_out_line(judged: Judged, facts: Facts, feet: bool) -> str:
    """Where a helicoid that goes past infinity brings the lens fully out, which may focus nearer by itself."""
    rows = {row.name: row.value for row in _helicoid_numbers(judged, facts) if row.case == FULLY_OUT}
    near, size = rows.get("near_from_sensor_mm"), rows.get("magnification")
    own = judged.trace.value("near_from_sensor_mm")
    if not isinstance(near, Interval) or not isinstance(size, Interval) or isinstance(own, Interval):
        return ""
    at = about(near, lambda value: distance(value, feet))
    return f"helicoid fully out, the lens itself at infinity: sharp at {at} from the sensor, {times(size.nominal)}"


def _moves(link: object) -> bool:
    return isinstance(link, Adapter) and link.kind in ADDED_FOCUSING


def circle_of(judged: Judged, facts: Facts) -> Interval | None:
    """The circle at the farthest focus; without a focal length the one at infinity, behind any glass. In mm."""
    value = judged.trace.value("image_circle_at_far_mm")
    if isinstance(value, Interval):
        return value
    circle, _ = usual_circle(facts, judged.setup.lens, judged.setup.lens_mount)
    factor = judged.trace.value("glass_factor")
    if not is_known(circle):
        return None
    return circle * factor if isinstance(factor, Interval) else circle


def cover_numbers(judged: Judged, facts: Facts, case: str | None = None) -> Iterator[Quantity]:
    """Circle, share lit, diagonal and crop of the format used, by diagonal and by width."""
    form, circle = judged.setup.format, circle_of(judged, facts)
    if circle is not None:
        yield Quantity("image_circle_mm", circle, case)
    if form is None:
        return
    name = case or form.id
    width, height = Interval.exact(form.width_mm), Interval.exact(form.height_mm)
    yield Quantity("format_diagonal_mm", Interval.exact(form.diagonal_mm), name)
    rows = [("crop_factor", coverage.crop_factor(width, height))]
    rows.append(("crop_factor_by_width", coverage.crop_factor_by_width(width)))
    if circle is not None:
        rows.append(("lit_share", coverage.lit_share(circle, width, height)))
    for quantity, value in rows:
        if is_known(value):
            yield Quantity(quantity, value, name)


def principal_numbers(judged: Judged) -> Iterator[Quantity]:
    """Where the farthest and the nearest sharp subject stands from the front principal plane, in mm."""
    focal, extension = judged.measured_trace.value("focal_length_mm"), judged.measured_trace.value("extension_mm")
    if not isinstance(focal, Interval) or not isinstance(extension, Span):
        return
    from engine.physics import closeup

    for end, case in ((extension.shortest, "farthest"), (extension.longest, "nearest")):
        if is_known(end) and end.least > 0:
            value = closeup.from_front_principal_mm(focal, end)
            if is_known(value):
                yield Quantity("from_front_principal_mm", value, case)


def price_text(chain: Chain) -> str:
    """What the pieces of a chain cost, in words; nothing where there are none."""
    bands = [adapter.price_usd for adapter in chain.adapters if not adapter.owned]
    if not chain.adapters:
        return ""
    if not bands:
        return "nothing to buy"
    if any(band is None for band in bands):
        return "price not known"
    low = sum(band[0] for band in bands if band)
    high = sum(band[1] for band in bands if band)
    return money((low, high))
