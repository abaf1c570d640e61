"""What a written quantity says: a length, f-number, weight, price, size or angle becomes an interval, or a fault."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from typing import Final

from engine.base.compact import compact
from engine.base.interval import UNKNOWN, Interval, Measure
from engine.base.problem import nearest_of
from engine.base.span import Span

# A number as written is kept as a ratio of whole numbers: its quotient is then the nearest float there is,
# so that 0.690 in is 17.526 mm and 17.526 ±0.02 begins at 17.506.
Ratio = tuple[int, int]


@compact
class Fault:
    """Why a text is no such quantity. `offset`: the character of `found` where reading stopped, from 0."""

    found: str
    expected: str
    nearest: str | None = None
    offset: int = 0


@compact
class Kind:
    """A sort of quantity: what is expected of it, and its units as ratios of the one that is kept."""

    expected: str
    units: Mapping[str, Ratio]
    bare: str | None  # the unit of a number without one; None where the unit must be said


LENGTH: Final = Kind(
    "a length with its unit, such as '17.526 mm'",
    {
        "mm": (1, 1), "cm": (10, 1), "m": (1000, 1), "um": (1, 1000), "µm": (1, 1000), "μm": (1, 1000),
        "in": (127, 5), "inch": (127, 5), "inches": (127, 5), '"': (127, 5), "″": (127, 5),
        "ft": (1524, 5), "foot": (1524, 5), "feet": (1524, 5), "'": (1524, 5), "′": (1524, 5),
    },
    bare=None,
)  # fmt: skip
WEIGHT: Final = Kind("a weight with its unit, such as '120 g'", {"g": (1, 1), "kg": (1000, 1)}, bare=None)
ANGLE: Final = Kind("an angle in degrees, such as '60'", {"deg": (1, 1), "degrees": (1, 1), "°": (1, 1)}, bare="deg")
NUMBER: Final = Kind("a number, such as '0.71' or '0.65..1.1'", {}, bare="")
F_NUMBER: Final = Kind("an f-number, such as 'f/1.4' or 'f/2..2.8'", {}, bare="")
PRICE: Final = Kind(
    "a price or a band in US dollars, such as '12' or '8..25'", {"usd": (1, 1), "$": (1, 1)}, bare="usd"
)
SIZE_EXPECTED: Final = "a size in pixels, such as '6000 x 4000'"

_LONGEST = 80  # characters; no written quantity is longer, and nothing longer need be looked at closely
_AMOUNT = r"(?:[0-9]{1,12} +)?[0-9]{1,12}/[0-9]{1,12}|[0-9]{1,12}(?:\.[0-9]{1,20})?|\.[0-9]{1,20}"
# compiled where they are first used: most questions are answered without one
_UNIT = r"[^\W\d_]+|[\"'″′°$]"
_QUANTITY = (
    rf"(?P<low>[+-]?(?:{_AMOUNT}))\s*(?P<unit>{_UNIT})?"
    rf"(?:\s*\.\.\s*(?P<high>[+-]?(?:{_AMOUNT}))\s*(?P<high_unit>{_UNIT})?)?"
    rf"(?:\s*(?:(?:±|\+/?-)\s*(?P<both>{_AMOUNT})|\+\s*(?P<above>{_AMOUNT})\s*/\s*-\s*(?P<below>{_AMOUNT})"
    rf"|-\s*(?P<below2>{_AMOUNT})\s*/\s*\+\s*(?P<above2>{_AMOUNT}))\s*(?P<off_unit>{_UNIT})?)?"
)
_STOP_PREFIX = r"(?:^|(?<=\.\.))\s*(?:[fF]\s*/?|1\s*:)\s*(?=[\d.oOlI])"
_T_STOP = r"[tT]\s*/?\s*[0-9]"
_SIZE = r"([0-9]{1,6})\s*[x×*]\s*([0-9]{1,6})"
# read as their plain forms; each is one character, so that offsets stay true
_ALIKE = str.maketrans({"−": "-", "\u00a0": " ", "\u2009": " ", "\u202f": " "})


@compact
class Written:
    """A quantity as read: from `low` to `high`, give or take; the ratios count in the unit that is kept."""

    low: Ratio
    high: Ratio
    below: Ratio
    above: Ratio
    ranged: bool
    unit: str

    def interval(self) -> Interval:
        """All that is meant, likeliest at the written value, in the middle of a range."""
        least, greatest = _quotient(_less(self.low, self.below)), _quotient(_less(self.high, _minus(self.above)))
        if self.ranged:
            return Interval.between(least, greatest)
        return Interval(least, greatest, _quotient(self.low))

    def span(self) -> Span:
        """A range as what can be set: each end with the tolerance that is written behind it."""
        return Span(*(Written(end, end, self.below, self.above, False, "").interval() for end in (self.low, self.high)))


def length_mm(text: str) -> Measure | Fault:
    """A length in mm: `17.526 mm ±0.02`, `17.5 mm +0/-0.06`, `12..17 mm`, `1 1/4 in`, `unknown`."""
    return _measure(text, LENGTH)


def settable_mm(text: str) -> Span | Fault:
    """A length that can be set, in mm: `17..31 mm` is a shortest and a longest setting, both exact."""
    if text.strip() == "unknown":
        return Span.fixed(UNKNOWN)
    written = written_as(text, LENGTH)
    return written if isinstance(written, Fault) else written.span()


def weight_g(text: str) -> Measure | Fault:
    """A weight in grams: `120 g`, `1.8 kg`."""
    return _measure(text, WEIGHT)


def angle_deg(text: str) -> Measure | Fault:
    """An angle in degrees: `60`, `55 deg`, `59..61`."""
    return _measure(text, ANGLE)


def number(text: str) -> Measure | Fault:
    """A number without a unit: `0.71`, `0.65..1.1`, `32`, `1/1442`."""
    return _measure(text, NUMBER)


def f_number(text: str) -> Measure | Fault:
    """An f-number above 0: `f/1.4`, `1.4`, `1:1.4`, `f/2..2.8`. A T-stop is refused: it also counts light lost."""
    if re.match(_T_STOP, text.strip()):
        return Fault(text, "an f-number, such as 'f/2': a T-stop also counts the light lost in the glass")
    bare = re.sub(_STOP_PREFIX, "", text)
    read = _measure(bare, F_NUMBER)
    if isinstance(read, Fault):
        return Fault(text, read.expected, read.nearest and f"f/{read.nearest}", min(read.offset, len(text)))
    if isinstance(read, Interval) and read.least <= 0:
        return Fault(text, F_NUMBER.expected)
    return read


def price_usd(text: str) -> tuple[float, float] | Fault:
    """A price as (lowest, highest) in US dollars: `12`, `8..25`, `$12`. None below 0."""
    written = written_as(text.strip().removeprefix("$"), PRICE)
    if isinstance(written, Fault):
        return Fault(text, written.expected, written.nearest)
    price = written.interval()
    if price.least < 0:
        return Fault(text, PRICE.expected)
    return price.least, price.greatest


def size_px(text: str) -> tuple[int, int] | Fault:
    """Pixels across and down, both above 0: `6000 x 4000`."""
    match = re.fullmatch(_SIZE, text.strip())
    across, down = (int(match[1]), int(match[2])) if match else (0, 0)
    return (across, down) if across and down else Fault(text, SIZE_EXPECTED)


def measured(text: str) -> tuple[Interval, str] | Fault:
    """Any quantity with its unit: mm, g or deg; 'f' for `f/2`; '' for a bare number; else the unit as written."""
    if re.match(r"\s*[fF]\s*/", text):
        stop = f_number(text)
        return (stop, "f") if isinstance(stop, Interval) else Fault(text, F_NUMBER.expected)
    for kind, unit in ((LENGTH, "mm"), (WEIGHT, "g"), (ANGLE, "deg")):
        written = written_as(text, kind)
        if isinstance(written, Written) and written.unit:
            return written.interval(), unit
    match = re.fullmatch(_QUANTITY, text.translate(_ALIKE).strip())
    names = {match[group] for group in ("unit", "high_unit", "off_unit")} - {None} if match else set()
    written = written_as(text, Kind("a quantity, such as '0.05 mm' or '0.65..1.1'", dict.fromkeys(names, (1, 1)), ""))
    return written if isinstance(written, Fault) else (written.interval(), written.unit)


def decimal(value: float) -> str:
    """A finite number written out without an exponent: `17.526`, `12`."""
    text = repr(value)
    if "e" in text:
        text = f"{value:.12f}".rstrip("0")
    text = text.rstrip(".").removesuffix(".0")
    return "0" if text == "-0" else text


def written_as(text: str, kind: Kind) -> Written | Fault:
    """`text` read as a quantity of this kind, or why it is none, with the nearest text that is one."""
    read = _read(text, kind)
    if not isinstance(read, str):
        return read
    nearest = next((guess for guess in _repairs(text, kind) if isinstance(_read(guess, kind), Written)), None)
    nearest = nearest or nearest_of(text[:_LONGEST], ("unknown",))
    return Fault(text, read, nearest, _first_difference(text, nearest) if nearest else 0)


def _measure(text: str, kind: Kind) -> Measure | Fault:
    if text.strip() == "unknown":
        return UNKNOWN
    written = written_as(text, kind)
    return written if isinstance(written, Fault) else written.interval()


def _read(text: str, kind: Kind) -> Written | str:
    """The quantity, or what was expected instead."""
    match = re.fullmatch(_QUANTITY, text.translate(_ALIKE).strip()) if len(text) <= _LONGEST else None
    if match is None:
        return kind.expected
    unit, high_unit, off_unit = match["unit"], match["high_unit"], match["off_unit"]
    unit = unit or high_unit or off_unit
    scales = [_scale(name, kind) for name in (unit, high_unit or unit, off_unit or high_unit or unit)]
    if None in scales:
        return kind.expected
    amounts = [match["low"], match["high"] or match["low"], match["both"] or match["below"] or match["below2"] or "0"]
    amounts.append(match["both"] or match["above"] or match["above2"] or "0")
    ratios = [_ratio(amount) for amount in amounts]
    if any(bottom == 0 for _, bottom in ratios):
        return kind.expected
    low, high, below, above = (_times(r, s) for r, s in zip(ratios, [*scales, scales[-1]], strict=True))
    if _quotient(low) > _quotient(high):
        return "a range from the smaller to the greater"
    return Written(low, high, below, above, match["high"] is not None, unit or "")


def _scale(unit: str | None, kind: Kind) -> Ratio | None:
    if unit is None:
        return None if kind.bare is None else (1, 1)
    # 'M' is no metre and 'MM' is a millimetre: only a word of several letters may be written in capitals
    return kind.units.get(unit) or (kind.units.get(unit.lower()) if len(unit) > 1 else None)


def _ratio(amount: str) -> Ratio:
    sign = -1 if amount.startswith("-") else 1
    whole, _, rest = amount.lstrip("+-").rpartition(" ")
    top, slash, bottom = rest.partition("/")
    if slash:
        return sign * (int(whole or 0) * int(bottom) + int(top)), int(bottom)
    units, _, places = rest.partition(".")
    return sign * int(units + places), 10 ** len(places)


def _times(one: Ratio, other: Ratio | None) -> Ratio:
    top, bottom = other or (1, 1)
    return one[0] * top, one[1] * bottom


def _less(one: Ratio, other: Ratio) -> Ratio:
    return one[0] * other[1] - other[0] * one[1], one[1] * other[1]


def _minus(one: Ratio) -> Ratio:
    return -one[0], one[1]


def _quotient(one: Ratio) -> float:
    return one[0] / one[1]


_SLIPS: Final[tuple[Callable[[str], str], ...]] = (
    lambda text: re.sub(r"(?<![^\W\d_])[oO](?=[.\d])|(?<=[\d.])[oO](?![^\W\d_])", "0", text),
    lambda text: re.sub(r"(?<![^\W\d_])[lI](?=[.\d])|(?<=[\d.])[lI](?![^\W\d_])", "1", text),
    lambda text: re.sub(r"(?<=\d),(?=\d)", ".", text),
    lambda text: re.sub(r"(?<=\d)\.(?!\d|\.)", "", text),
    lambda text: re.sub(r"(?<=\d)\s*(?:[-–—]|to|\.{3,})\s*(?=\d)", "..", text),
    lambda text: re.sub(r"(\S+)\.\.(\S+)(.*)", r"\2..\1\3", text),
)


def _repairs(text: str, kind: Kind) -> Iterator[str]:
    """Texts that may have been meant, the likeliest first."""
    if len(text) > _LONGEST:
        return
    unit = next(iter(kind.units), "") if kind.bare is None else ""
    mended = text.strip()
    for slip in _SLIPS:
        for guess in (slip(text.strip()), mended := slip(mended)):
            yield guess
            yield f"{guess} {unit}"
            yield re.sub(r"[^\W\d_]{2,}", lambda word: _nearest_unit(word[0], kind), guess)


def _nearest_unit(word: str, kind: Kind) -> str:
    def shared(unit: str) -> int:
        return sum(a == b for a, b in zip(unit, word, strict=False))

    likely = max((unit for unit in kind.units if len(unit) == len(word)), key=shared, default="")
    return likely if likely and shared(likely) else nearest_of(word, kind.units) or word


def _first_difference(text: str, other: str) -> int:
    return next((i for i, (a, b) in enumerate(zip(text, other, strict=False)) if a != b), min(len(text), len(other)))
