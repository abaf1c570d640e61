"""What a written length, thread, size or count is: its kind and values, of the pattern that it was written in."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Final

from engine.base.compact import compact
from engine.base.units import MM_PER_INCH, UNITS

# f-numbers that are engraved or usual; a bare decimal is taken for one only if it is among them
STOPS: Final = frozenset(
    [0.7, 0.75, 0.85, 0.95, 1, 1.1, 1.2, 1.25, 1.3, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2, 2.2, 2.4, 2.5, 2.8, 2.9, 3, 3.2,
     3.3, 3.5, 3.8, 4, 4.5, 4.8, 5, 5.6, 6.3, 6.7, 7.1, 8, 9, 9.5, 10, 11, 13, 14, 16, 18, 20, 22, 25, 29, 32, 45, 64]
)  # fmt: skip

TELECONVERTER: Final = "tc"  # the unit of a factor that is written together with it

# the shapes of frames, width over height, that people name by two numbers
SHAPES: Final = frozenset(
    [(16, 9), (4, 3), (3, 2), (5, 4), (9, 16), (17, 9), (21, 9), (1.33, 1), (1.66, 1), (1.78, 1), (1.85, 1), (2.35, 1),
     (2.39, 1), (2.4, 1), (2.76, 1)]
)  # fmt: skip

# '65:24': sides as large as these are of a frame, not of a thing and its image
LEAST_OF_SHAPE: Final = 5
WIDEST_SHAPE: Final = 4.0


_CLOSE_UP: Final = re.compile(r"close[ -]?up|diopt|achromat", re.IGNORECASE)
_MOST_DIVISION: Final = 0.7  # mm
_MOST_BLUR: Final = 0.3  # mm
_SMALL_STOPS: Final = frozenset([10, 11, 16, 22, 32, 45, 64])  # of two figures
_TPI: Final = frozenset([16, 20, 24, 26, 27, 28, 30, 32, 36, 40])
_MOST_INCHES: Final = 100.0
_GRAMS: Final = {"k": 1000.0, "l": 453.592, "p": 453.592, "o": 28.3495}  # by how the unit begins; else a gram
_PUTTING: Final = re.compile(
    r"\b(?:put|putting|slip|slipped|slid|stuck|stick|pack|packed|add|added|drop|dropped|laid|slide)\s+"
    r"(?:\w+\s+)?$",
    re.IGNORECASE,
)
_SIZED: Final = re.compile(r"\s(?:thick|long|deep|wide|dia|across|shim|spacer|sheet|plate|of)\b", re.IGNORECASE)
_WIDEST: Final = 30.0  # times that one end of a range of distances is farther than the other
_LONGEST_FRAME: Final = 5.0  # width over height


@compact
class Literal:
    """A written number. `end`: the character after it. `numbers`: in mm, seconds, grams, degrees or as they stand."""

    kind: str
    numbers: tuple[float, ...]
    end: int
    unit: str = ""
    said: str = ""  # its canonical text where the numbers alone do not give it back


Make = Callable[[re.Match[str]], "Literal | None"]


def _unit_of(match: re.Match[str]) -> str:
    return next(unit for unit in UNITS if match.groupdict().get(unit))


def amount(text: str) -> float:
    """A number as it is written: '2,5', '3/4', '1 1/2', '1-1/2'."""
    text = text.strip().replace(",", ".").replace("-", " ")
    if "/" in text:
        whole, _, fraction = text.rpartition(" ")
        top, _, bottom = fraction.partition("/")
        if float(bottom) == 0:
            return 0.0
        return (float(whole) if whole else 0.0) + float(top) / float(bottom)
    return float(text)


def length(match: re.Match[str]) -> Literal | None:
    """'60 on 645 in 35mm terms' tells no inches: no lens or ring is so many long."""
    unit, text = _unit_of(match), match.group("n")
    bare = unit == "in" and match.group()[-3:].casefold() == " in"
    if bare and (amount(text) >= _MOST_INCHES or _is_put_in(match)):
        return None
    return Literal("LENGTH", (_round(amount(text) * UNITS[unit]),), match.end(), unit, text.strip())


def _is_put_in(match: re.Match[str]) -> bool:
    """'I put 0.2 in, now?': it is in, and no part of an inch; 'put a 0.2 in thick plate' is one."""
    thick = _SIZED.match(match.string, match.end()) is not None
    return not thick and _PUTTING.search(match.string, 0, match.start()) is not None


def far_off(match: re.Match[str]) -> Literal:
    """'2 km', '70 yards', '2 miles': 3 ft to the yard, 5280 to the mile by definition."""
    unit = match.group("u")[0].casefold()
    factor = 1000 * UNITS["m"] if unit == "k" else (3 if unit == "y" else 5280) * UNITS["ft"]
    return Literal("LENGTH", (_round(amount(match.group("n")) * factor),), match.end(), "m" if unit == "k" else "ft")


def engraved_focal(match: re.Match[str]) -> Literal:
    """'f=7.5cm', 'F = 50 mm': the focal length as old lenses have it engraved."""
    unit = match.group("u").casefold()
    factor = UNITS["in"] if unit.startswith("i") else UNITS[unit]
    return Literal("LENGTH", (_round(amount(match.group("n")) * factor),), match.end(), "mm", match.group("n"))


def engraved_mm(match: re.Match[str]) -> Literal | None:
    """'f=35': the same without its unit, where it is no stop."""
    value = amount(match.group("n"))
    return Literal("LENGTH", (value,), match.end(), "mm", match.group("n")) if value not in _SMALL_STOPS else None


def parts_of_mm(match: re.Match[str]) -> Literal:
    """'2 tenths', '5 hundredths': of a millimetre, as a bench has it where nothing else is said."""
    share = 0.1 if match.group("p").casefold().startswith("t") else 0.01
    return Literal("LENGTH", (_round(amount(match.group("n")) * share),), match.end(), "mm")


def feet_and_inches(match: re.Match[str]) -> Literal | None:
    feet, inches = amount(match.group("f")), amount(match.group("i") or match.group("b"))
    if inches >= 12:
        return None  # '10 ft 50' is a distance and a lens
    return Literal("LENGTH", (_round(feet * UNITS["ft"] + inches * UNITS["in"]),), match.end(), "ft")


def spread(match: re.Match[str]) -> Literal | None:
    unit = _unit_of(match)
    low, high = sorted((amount(match.group("a")) * UNITS[unit], amount(match.group("b")) * UNITS[unit]))
    if low and high / low > _WIDEST and unit in ("m", "ft") and amount(match.group("a")) > amount(match.group("b")):
        return None  # 'my 135 to 0.5 m' tells of a lens
    return Literal("RANGE", (_round(low), _round(high)), match.end(), unit)


def bare_range(match: re.Match[str]) -> Literal | None:
    one, other = float(match.group("a")), float(match.group("b"))
    return Literal("RANGE", (one, other), match.end())


def thread_metric(match: re.Match[str]) -> Literal | None:
    diameter, pitch = float(match.group("d")), float(match.group("p"))
    if not (5 <= diameter <= 150 and 0.2 <= pitch <= 3):
        return None
    return Literal("THREAD", (diameter, pitch), match.end(), "mm", f"M{diameter:g}x{pitch:g}")


def thread_inch(match: re.Match[str]) -> Literal | None:
    """'5/8-32', '1 inch x 32': diameter and pitch in mm; None where it is no thread that is cut."""
    text, tpi = match.group("n"), int(match.group("t"))
    apart = match.group("sep").strip() or match.group("inch") or not text.startswith(("1", "0", "."))  # '5/8 32'
    if tpi not in _TPI or not apart or amount(text) <= 0:
        return None
    return Literal(
        "THREAD", (_round(amount(text) * MM_PER_INCH), _round(MM_PER_INCH / tpi)), match.end(), "in", f"{text} in-{tpi}"
    )


def thread_mixed(match: re.Match[str]) -> Literal | None:
    diameter, tpi = float(match.group("d")), int(match.group("t"))
    if tpi not in _TPI or diameter <= 5:
        return None
    return Literal("THREAD", (diameter, _round(MM_PER_INCH / tpi)), match.end(), "tpi", f"{diameter:g} x {tpi} tpi")


def square(match: re.Match[str]) -> Literal:
    """'1:1 crop': a shape, no magnification."""
    return Literal("ASPECT", (1.0, 1.0), match.end(), said="1:1")


def ratio(match: re.Match[str]) -> Literal | None:
    """'1:2', '16:9', '1:2.8': a magnification, the shape of a frame or the stop engraved on a lens."""
    one, other = float(match.group("a")), float(match.group("b"))
    if not one or not other or (match.group("after") and 1 not in (one, other) and (one, other) not in SHAPES):
        return None  # '0.71: 35.5 or 53?'
    if (one, other) in SHAPES:
        return Literal("ASPECT", (one, other), match.end(), said=f"{one:g}:{other:g}")
    if min(one, other) > 1 and max(one, other) >= LEAST_OF_SHAPE and 1 < one / other < WIDEST_SHAPE:
        return Literal("ASPECT", (one, other), match.end(), said=f"{one:g}:{other:g}")
    if one == 1 and "." in match.group("b"):
        return Literal("FNUM", (other,), match.end())
    return Literal("RATIO", (one / other,), match.end(), said=f"{one:g}:{other:g}")


def magnified(match: re.Match[str]) -> Literal:
    return Literal("RATIO", (float(match.group("n")),), match.end(), said=f"{match.group('n')}:1")


def life_size(match: re.Match[str]) -> Literal:
    """'1/4 life size', '2x life-size'."""
    size = _round(amount(match.group("n")))
    return Literal("RATIO", (size,), match.end(), said=f"{size:.6g}:1")


def weight(match: re.Match[str]) -> Literal:
    """'350 g', '2 lbs', '6 oz': in grams."""
    unit = match.group("u").casefold()
    grams = _GRAMS.get(unit[0], 1.0)
    return Literal("WEIGHT", (_round(float(match.group("n")) * grams),), match.end(), unit)


def teleconverter(match: re.Match[str]) -> Literal:
    """'1.4tc': the factor and what has it, written as one."""
    return Literal("TIMES", (float(match.group("n")),), match.end(), TELECONVERTER)


def one(kind: str) -> Make:
    return lambda match: Literal(kind, (float(match.group("n")),), match.end())


def per_inch(match: re.Match[str]) -> Literal | None:
    tpi = float(match.group("n") or match.group("n2"))
    return Literal("PITCH", (_round(MM_PER_INCH / tpi),), match.end(), "tpi", f"{tpi:g} tpi") if tpi else None


def pitch(match: re.Match[str]) -> Literal:
    """'pitch 0.75', '1 mm pitch'; 'pitch 26' counts crests to the inch."""
    if match.group("t"):
        tpi = float(match.group("t"))
        return Literal("PITCH", (_round(MM_PER_INCH / tpi),), match.end(), "tpi", f"{tpi:g} tpi")
    pitch = float(match.group("n") or match.group("n2"))
    return Literal("PITCH", (pitch,), match.end(), "mm", f"{pitch:g} mm")


def lead(match: re.Match[str]) -> Literal | None:
    """'lead 6 mm': what a turn moves, as a pitch does where the thread has one start."""
    moved = float(next(one for one in match.group("n", "n2", "n3", "n4") if one))
    return Literal("PITCH", (moved,), match.end(), "mm", f"{moved:g} mm a turn") if moved else None


def division(match: re.Match[str]) -> Literal | None:
    """'one division on the ring is 0.02 mm': as a sheet is worth its thickness."""
    size = float(match.group("n"))
    return Literal("KEYED", (size,), match.end(), "mm", "layer") if 0 < size <= _MOST_DIVISION else None


def strong_power(match: re.Match[str]) -> Literal | None:
    """'close-up lens +10': dioptres, where such a lens is spoken of."""
    spoken = _CLOSE_UP.search(match.string) is not None
    return Literal("DIOPTRE", (float(match.group("n")),), match.end()) if spoken else None


def blur(match: re.Match[str]) -> Literal | None:
    """'coc 0.02', '20 micron blur': the blur that is allowed, mm."""
    small = (match.groupdict().get("u") or "").casefold().startswith(("u", "mic"))
    size = float(match.group("n")) / (1000 if small else 1)
    return Literal("KEYED", (size,), match.end(), "mm", "blur") if 0 < size <= _MOST_BLUR else None


def turn(match: re.Match[str]) -> Literal:
    return Literal("TURNS", (amount(match.group("n")),), match.end())


def area(match: re.Match[str]) -> Literal | None:
    """'12.5x7', '13.2 by 8.8 mm'; '16x9' is a shape and no size."""
    one, other = float(match.group("a")), float(match.group("b"))
    if not 1 / _LONGEST_FRAME <= one / (other or 1.0) <= _LONGEST_FRAME:
        return None  # 'anamorphic 2x 40 mm'
    if (one, other) in SHAPES and not match.group("mm"):
        return Literal("ASPECT", (one, other), match.end(), said=f"{one:g}:{other:g}")
    return Literal("AREA", (one, other), match.end())


def pixels(match: re.Match[str]) -> Literal:
    """'24 MP', '6000 x 4000', '6000 px wide': how many in all, or across."""
    across, down, millions, wide = (match.group(name) for name in ("a", "b", "n", "w"))
    if millions:
        return Literal("PIXELS", (float(millions) * 1e6,), match.end(), said=f"{millions} megapixels")
    if wide:
        return Literal("PIXELS", (float(wide),), match.end(), said=f"{wide} pixels across")
    count = float(across) * float(down)
    return Literal("PIXELS", (count,), match.end(), said=f"{across} x {down} pixels")


def decade(match: re.Match[str]) -> Literal:
    """'1950s', 'the 60s': when a thing was made, no time that a shutter is open."""
    return Literal("FILLER", (float(match.group("n") or match.group("d")),), match.end())


def fraction(match: re.Match[str]) -> Literal | None:
    one, other = float(match.group("a")), float(match.group("b"))
    return Literal("FRACTION", (one, other), match.end(), said=match.group().replace(" ", "")) if other else None


def _round(value: float) -> float:
    return float(f"{value:.10g}")
