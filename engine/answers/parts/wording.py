"""Quantities in the words of the person's life: units, sensible rounding, ranges; feet and inches when spoken."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import isfinite, isinf
from typing import Final

from engine.base.interval import Interval, Unknown
from engine.base.span import Span
from engine.base.units import MM_PER_FOOT, MM_PER_INCH
from engine.physics.trace import Value

ENDLESS_MM: Final = 1e9  # what is farther away than this is told as infinity
ENDLESS: Final = "infinity"


def trimmed(value: float, digits: int) -> str:
    """`value` with at most `digits` decimals and no idle zeros; never '-0'."""
    text = f"{value:.{digits}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def figures(value: float, count: int) -> str:
    """`value` to `count` significant figures, without an exponent."""
    if value == 0:
        return "0"
    from math import floor, log10

    digits = count - 1 - floor(log10(abs(value)))
    if digits <= 0:
        return f"{round(value, digits):.0f}"
    return trimmed(value, digits)


def small_mm(value: float) -> str:
    """A seat, shim or error, in mm: hundredths, thousandths where the trade writes them (under 0.1 mm)."""
    if abs(value) < 0.095:
        return f"{trimmed(value, 3)} mm"
    return f"{trimmed(value, 2)} mm"


def distance(value_mm: float, feet: bool = False) -> str:
    """A distance to the subject: mm under 5 cm, cm under 1 m, then m; inches and feet when spoken."""
    if abs(value_mm) >= ENDLESS_MM:
        return ENDLESS
    sign = "-" if value_mm < 0 else ""
    size = abs(value_mm)
    if feet:
        return sign + _feet(size)
    if size < 50:
        return f"{sign}{figures(size, 2)} mm"
    if size < 995:
        return f"{sign}{figures(size / 10, 2)} cm" if size < 100 else f"{sign}{size / 10:.0f} cm"
    return f"{sign}{figures(size / 1000, 2 if size >= 10_000 else 3)} m"


def _feet(size_mm: float) -> str:
    inches = size_mm / MM_PER_INCH
    if inches < 35.5:  # what would round to 36 is 3 ft
        return f"{figures(inches, 2)} in"
    whole, rest = divmod(round(size_mm / MM_PER_INCH), 12)
    return f"{whole} ft {rest} in" if rest and whole < 30 else f"{figures(size_mm / MM_PER_FOOT, 2)} ft"


def depth_words(value_mm: float, feet: bool = False) -> str:
    """How deep the sharp zone is: hundredths of a millimetre where it is thin, else as a distance."""
    return small_mm(value_mm) if value_mm < 10 and not feet else distance(value_mm, feet)


def area(width_mm: float, height_mm: float, feet: bool = False) -> str:
    """A field at the subject, both sides in the unit of the wider: '65 x 49 mm'."""
    wide, _, unit = distance(min(width_mm, ENDLESS_MM / 10), feet).rpartition(" ")
    size = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": MM_PER_INCH, "ft": MM_PER_FOOT}[unit]
    if " " in wide or (unit == "cm" and width_mm < 200):
        size, unit = (MM_PER_INCH, "in") if feet else (1.0, "mm")
    return f"{figures(width_mm / size, 2)} x {figures(height_mm / size, 2)} {unit}"


def ranged(value: Interval, show: Callable[[float], str], gap: float = 0.0) -> str:
    """An interval: one figure where both ends read the same (or lie within `gap` of it), else 'a to b'."""
    low, high = show(value.least), show(value.greatest)
    if low == high or value.width <= gap:
        return show(value.nominal)
    if isinf(value.greatest) or high == ENDLESS:
        return f"{low} or more"
    head, _, unit = low.rpartition(" ")
    if head and " " not in head and high.endswith(f" {unit}") and high.count(" ") == 1:
        low = head
    return f"{low} to {high}"


def about(value: Interval, show: Callable[[float], str]) -> str:
    """The likeliest figure, with the range it may lie in where that reads differently."""
    middle, whole = show(value.nominal), ranged(value, show)
    if whole == middle or not isfinite(value.nominal):
        return middle
    return f"{middle} ({whole})"


def f_number(value: float) -> str:
    """An f-number as lenses are marked: two figures, three under f/2 where they matter."""
    return figures(value, 2)


READS_MM: Final = 0.005  # lengths are told to a hundredth: what is nearer reads as the same
SEAT_READS_MM: Final = 0.0005  # and seats to a thousandth
FULL = 0.9995  # a share that is as good as all
ALMOST = 0.99


def percent(share: float) -> str:
    """A share in whole percent; what lacks a little of all is not called all of it."""
    return f"{99 if ALMOST < share < FULL else share * 100:.0f} %"


def times(magnification: float) -> str:
    return f"{figures(magnification, 2)}x"


SHORT_LENGTHS = frozenset(
    {
        "register_error_mm", "seat_mm", "excess_mm", "shortfall_mm", "infinity_allowance_mm", "extension_mm",
        "overhang_mm", "clearance_mm", "clear_depth_mm", "reachable_extension_mm", "allowed_blur_mm", "far_blur_mm",
        "error_before_glass_mm", "error_behind_glass_mm", "lens_register_mm", "body_register_mm", "hiatus_mm",
        "front_focal_offset_mm", "front_to_sensor_mm", "travel_mm", "usual_travel_mm", "thread_length_mm",
        "thread_depth_mm", "collar_mm", "cup_bore_mm", "stack_mm", "ring_thickness_mm", "register_mm",
        "cup_depth_mm", "throat_mm", "lens_throat_mm", "image_circle_mm", "image_circle_at_far_mm", "focal_length_mm",
        "combined_focal_mm", "equivalent_focal_mm", "rear_reach_mm", "rear_diameter_mm", "used_width_mm",
        "used_height_mm", "right_seat_mm", "infinity_miss_mm", "rear_clearance_mm", "throat_clearance_mm",
        "thread_depth_left_mm", "collar_clearance_mm", "image_shift_mm", "glass_focal_mm", "narrowest_mm",
    }
)  # fmt: skip


def quantity_text(name: str, value: Value, feet: bool = False) -> str:
    """A named quantity as it is told, the unit read off its name; 'none' for what does not apply."""
    if value is None:
        return "none"
    if isinstance(value, Unknown):
        return "an unknown amount" if name.endswith("_mm") else "not known"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return value
    if isinstance(value, tuple):
        return ", ".join(value) or "none"
    if isinstance(value, Span):
        shortest, longest = value.shortest, value.longest
        if isinstance(shortest, Unknown) or isinstance(longest, Unknown):
            known = longest if isinstance(shortest, Unknown) else shortest
            return quantity_text(name, known, feet)
        if value.is_fixed:
            return quantity_text(name, shortest, feet)
        return f"{show_of(name, feet)(shortest.nominal)} to {show_of(name, feet)(longest.nominal)}"
    return about(value, show_of(name, feet))


def show_of(name: str, feet: bool = False) -> Callable[[float], str]:
    """How one number of this quantity is written."""
    if name.endswith("f_number"):
        return f_number
    if name.endswith("_g"):
        return lambda value: f"{value / 1000:.2g} kg" if value >= 1000 else f"{value:.0f} g"
    if ("focal" in name and "hyperfocal" not in name) or name.endswith(("circle_mm", "diameter_mm")):
        return lambda value: f"{trimmed(value, 1)} mm"
    if name in SHORT_LENGTHS:
        return small_mm
    if name.endswith("_mm"):
        return lambda value: distance(value, feet)
    if "magnification" in name:
        return times
    if name.endswith("share"):
        return percent
    if name.endswith("_deg"):
        return lambda value: f"{value:.0f} degrees"
    if name.endswith("_stops"):
        return lambda value: f"{trimmed(value, 1)} stops"
    return lambda value: figures(value, 3)


def listed(words: Sequence[str], last: str = "and") -> str:
    """'a', 'a and b', 'a, b and c'."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def money(band: tuple[float, float]) -> str:
    low, high = band
    return f"{low:.0f} dollars" if low == high else f"{low:.0f} to {high:.0f} dollars"


def article(noun: str) -> str:
    """'a' or 'an' before a noun, by its sound: letters read aloud one by one count by their names."""
    first = noun.split("-")[0].split()[0] if noun.split() else ""
    spoken = first.isupper() and not any(vowel in first for vowel in "AEIOU" if len(first) > 1)
    spoken = spoken or first[1:2].isdigit()
    if first[:1].isdigit():
        return "an" if first[0] == "8" or (first[:2] in ("11", "18") and len(first.split(".")[0]) == 2) else "a"
    sounds = "AEFHILMNORSX" if len(first) == 1 or spoken else "AEIOUaeio"
    return "an" if noun[:1] in sounds else "a"


def for_infinity(seat_mm: float) -> str:
    """What seats a lens at infinity: a ring so thick, or a cup so deep where it must sit inside the body's flange."""
    return f"ring for infinity {small_mm(seat_mm)}" if seat_mm >= 0 else f"cup for infinity {small_mm(-seat_mm)} deep"
