"""Numbers as people type them into a question: lengths, f-numbers, shutter times, threads ... -> kind and values."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache
from typing import Final

from engine.base.compact import compact

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
_MM: Final = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, "ft": 304.8, "um": 0.001, "thou": 0.0254}
_TPI: Final = frozenset([16, 20, 24, 26, 27, 28, 30, 32, 36, 40])
_REACH: Final = 16  # characters from its first that a literal has a digit within
_NUM: Final = r"(?:\d+(?:\.\d+)?|\.\d+)"
_END: Final = r"(?![^\W_])"
_UNIT: Final = (
    r"(?:(?P<mm>mms?|mil|millimet(?:er|re)s?)|(?P<cm>cms?|centimet(?:er|re)s?)|(?P<um>um|microns?|micrometers?)|"
    r"(?P<ft>ft|foot|feet|')|(?P<thou>thou(?:s|sandths?)?(?:\sof\san\sinch)?)|(?P<m>m|met(?:er|re)s?)|(?P<in>inch(?:es)?|in|\"|''))"
)
# 'in' set apart from its number is a unit only where no word of place follows
_NOT_PLACE: Final = (
    r"(?!(?<=\sin)\s+(?:the|an?|my|this|that|these|those|your|our|one|it|total|all|row|front|full|open|bright|sun|candle|"
    r"candlelight|shade|overcast|hazy|moonlight|daylight|sunlight|low|dim|lit|snow|dusk|"
    r"\S+[ -]mount|[a-z]\d+|[A-Z]{2,})\b)"
)


# 'M' set apart from its number is the mount where what is mounted follows: 'a 50 M lens'
_NOT_MOUNT: Final = r"(?!(?<=\sm)[ -](?:mount|lens(?:es)?|bayonet|body|bodies|glass|ring|primes?)\b)"


@compact
class Literal:
    """A written number. `end`: the character after it. `numbers`: in mm, seconds, grams, degrees or as they stand."""

    kind: str
    numbers: tuple[float, ...]
    end: int
    unit: str = ""
    said: str = ""  # its canonical text where the numbers alone do not give it back


Make = Callable[[re.Match[str]], "Literal | None"]


def literal_at(line: str, at: int) -> Literal | None:
    """The literal that begins at character `at` of a smoothed line, or None. Earlier patterns win over later ones."""
    if not any(map(str.isdigit, line[at : at + _REACH])):
        return None
    first = "0" if line[at].isdigit() else line[at].lower()
    for starts, pattern, make in _WRITTEN:
        match = _compiled(pattern).match(line, at) if first in starts else None
        if match:
            literal = make(match)
            if literal is not None:
                return literal
    return None


@cache
def _compiled(pattern: str) -> re.Pattern[str]:
    # when it is first needed: all of them take longer than the rest of a question's reading
    return re.compile(pattern, re.IGNORECASE)


def _unit_of(match: re.Match[str]) -> str:
    return next(unit for unit in _MM if match.groupdict().get(unit))


def _amount(text: str) -> float:
    text = text.strip().replace(",", ".").replace("-", " ")
    if "/" in text:
        whole, _, fraction = text.rpartition(" ")
        top, _, bottom = fraction.partition("/")
        if float(bottom) == 0:
            return 0.0
        return (float(whole) if whole else 0.0) + float(top) / float(bottom)
    return float(text)


def _length(match: re.Match[str]) -> Literal:
    unit, text = _unit_of(match), match.group("n")
    return Literal("LENGTH", (_round(_amount(text) * _MM[unit]),), match.end(), unit, text.strip())


def _parts_of_mm(match: re.Match[str]) -> Literal:
    """'2 tenths', '5 hundredths': of a millimetre, as a bench has it where nothing else is said."""
    share = 0.1 if match.group("p").casefold().startswith("t") else 0.01
    return Literal("LENGTH", (_round(_amount(match.group("n")) * share),), match.end(), "mm")


def _feet_and_inches(match: re.Match[str]) -> Literal | None:
    feet, inches = _amount(match.group("f")), _amount(match.group("i") or match.group("b"))
    if inches >= 12:
        return None  # '10 ft 50' is a distance and a lens
    return Literal("LENGTH", (_round(feet * _MM["ft"] + inches * _MM["in"]),), match.end(), "ft")


def _range(match: re.Match[str]) -> Literal | None:
    unit = _unit_of(match)
    low, high = sorted((_amount(match.group("a")) * _MM[unit], _amount(match.group("b")) * _MM[unit]))
    return Literal("RANGE", (_round(low), _round(high)), match.end(), unit)


def _bare_range(match: re.Match[str]) -> Literal | None:
    one, other = float(match.group("a")), float(match.group("b"))
    return Literal("RANGE", (one, other), match.end())


def _thread_metric(match: re.Match[str]) -> Literal | None:
    diameter, pitch = float(match.group("d")), float(match.group("p"))
    if not (5 <= diameter <= 150 and 0.2 <= pitch <= 3):
        return None
    return Literal("THREAD", (diameter, pitch), match.end(), "mm", f"M{diameter:g}x{pitch:g}")


def _thread_inch(match: re.Match[str]) -> Literal | None:
    text, tpi = match.group("n"), int(match.group("t"))
    if tpi not in _TPI or (match.group("sep").strip() == "" and not match.group("inch")):
        return None
    return Literal("THREAD", (_round(_amount(text) * 25.4), _round(25.4 / tpi)), match.end(), "in", f"{text} in-{tpi}")


def _thread_mixed(match: re.Match[str]) -> Literal | None:
    diameter, tpi = float(match.group("d")), int(match.group("t"))
    if tpi not in _TPI or diameter <= 5:
        return None
    return Literal("THREAD", (diameter, _round(25.4 / tpi)), match.end(), "tpi", f"{diameter:g} x {tpi} tpi")


def _combo(match: re.Match[str]) -> Literal | None:
    focal, stop = float(match.group("a")), float(match.group("b"))
    decimal = "." in match.group("b")
    if focal < 4 or focal > 3000 or stop not in STOPS or (stop >= focal and focal < 20):
        return None
    if match.group("sep").strip() == "" and (not decimal or stop > 8):
        return None
    if not decimal and focal < 10:
        return None
    return Literal("COMBO", (focal, stop), match.end())


def _stop(match: re.Match[str]) -> Literal | None:
    """'f 2.8', 'f/8'; the letter before '38/1.8' is the end of a mount's name."""
    number = float(match.group("n").replace(",", "."))
    apart = match.group().lower().startswith("f ") and number not in STOPS
    return None if apart and number == int(number) else Literal("FNUM", (number,), match.end())


def _t_stop(match: re.Match[str]) -> Literal | None:
    text = match.group("n")
    if "/" not in match.group() and "." not in text and text in ("1", "2", "3"):
        return None  # T2 is a mount
    return Literal("TSTOP", (float(text),), match.end())


def _shutter(match: re.Match[str]) -> Literal | None:
    below = float(match.group("b"))
    if below < 15 and not match.group("s"):
        return None
    return Literal("SHUTTER", (1 / below,), match.end(), "s", f"1/{below:g} s")


def _ratio(match: re.Match[str]) -> Literal | None:
    one, other = float(match.group("a")), float(match.group("b"))
    if not one or not other:
        return None
    if (one, other) in SHAPES:
        return Literal("ASPECT", (one, other), match.end(), said=f"{one:g}:{other:g}")
    if one == 1 and "." in match.group("b"):
        return Literal("FNUM", (other,), match.end())
    return Literal("RATIO", (one / other,), match.end(), said=f"{one:g}:{other:g}")


def _nd(match: re.Match[str]) -> Literal | None:
    text = match.group("n")
    return Literal("ND", (float(text),), match.end(), said=f"ND{text}" if "." not in text else f"ND {text}")


def _magnified(match: re.Match[str]) -> Literal:
    return Literal("RATIO", (float(match.group("n")),), match.end(), said=f"{match.group('n')}:1")


def _nd_range(match: re.Match[str]) -> Literal:
    """'ND2-400': a variable filter, from its weakest to its strongest."""
    one, other = match.group("a"), match.group("b")
    return Literal("ND", (float(one), float(other)), match.end(), said=f"ND{one}-ND{other}")


def _weight(match: re.Match[str]) -> Literal:
    unit = match.group("u").casefold()
    grams = (
        1000
        if unit.startswith("k")
        else 453.592
        if unit.startswith(("l", "p"))
        else 28.3495
        if unit.startswith("o")
        else 1
    )
    return Literal("WEIGHT", (_round(float(match.group("n")) * grams),), match.end(), unit)


def _teleconverter(match: re.Match[str]) -> Literal:
    """'1.4tc': the factor and what has it, written as one."""
    return Literal("TIMES", (float(match.group("n")),), match.end(), TELECONVERTER)


def _one(kind: str) -> Make:
    return lambda match: Literal(kind, (float(match.group("n")),), match.end())


def _per_inch(match: re.Match[str]) -> Literal | None:
    tpi = float(match.group("n") or match.group("n2"))
    return Literal("PITCH", (_round(25.4 / tpi),), match.end(), "tpi", f"{tpi:g} tpi") if tpi else None


def _pitch(match: re.Match[str]) -> Literal:
    pitch = float(match.group("n") or match.group("n2"))
    return Literal("PITCH", (pitch,), match.end(), "mm", f"{pitch:g} mm")


def _turn(match: re.Match[str]) -> Literal:
    return Literal("TURNS", (_amount(match.group("n")),), match.end())


def _area(match: re.Match[str]) -> Literal:
    """'12.5x7', '13.2 by 8.8 mm'; '16x9' is a shape and no size."""
    one, other = float(match.group("a")), float(match.group("b"))
    if (one, other) in SHAPES and not match.group("mm"):
        return Literal("ASPECT", (one, other), match.end(), said=f"{one:g}:{other:g}")
    return Literal("AREA", (one, other), match.end())


def _stops(match: re.Match[str]) -> Literal | None:
    """'where does the 50 stop' tells no stops: there are not so many."""
    count = _amount(match.group("n"))
    return Literal("STOPS", (count,), match.end()) if count <= _MOST_STOPS else None


def _stop_range(match: re.Match[str]) -> Literal | None:
    """'2-5 stops': what a variable filter goes from and to."""
    one, other = float(match.group("a")), float(match.group("b"))
    ordered = one < other <= _MOST_STOPS
    return Literal("ND", (one, other), match.end(), said=f"{one:g}-{other:g} stops") if ordered else None


def _pixels(match: re.Match[str]) -> Literal:
    across, down, millions = (match.group(name) for name in ("a", "b", "n"))
    if millions:
        return Literal("PIXELS", (float(millions) * 1e6,), match.end(), said=f"{millions} megapixels")
    count = float(across) * float(down)
    return Literal("PIXELS", (count,), match.end(), said=f"{across} x {down} pixels")


def _seconds(match: re.Match[str]) -> Literal:
    return Literal("SHUTTER", (float(match.group("n")),), match.end(), "s", f"{float(match.group('n')):g} s")


def _fraction(match: re.Match[str]) -> Literal | None:
    one, other = float(match.group("a")), float(match.group("b"))
    return Literal("FRACTION", (one, other), match.end(), said=match.group().replace(" ", "")) if other else None


def _round(value: float) -> float:
    return float(f"{value:.10g}")


_MOST_STOPS: Final = 20
_FRACTION: Final = r"(?:\d{1,2}[\s-])?\d{1,2}(?:\.\d)?/\d{1,2}(?:\.\d{1,2})?"
# the characters that a literal may begin with, 0 for any digit; its pattern; and what is made of it
_WRITTEN: Final[tuple[tuple[str, str, Make], ...]] = (
    ("m", rf"m\s?(?P<d>{_NUM})\s?(?:mm)?\s?[x*]\s?(?P<p>{_NUM})(?:\s?mm)?{_END}", _thread_metric),
    (
        "0.",
        r"(?P<n>\d/\d{1,2}|1|0?\.\d+)\s?(?P<inch>inch|in|\"|'')?(?P<sep>\s?(?:-|x|by)\s?|\s)(?P<t>\d\d)"
        rf"(?:\s?(?:tpi|unf?|un2a))?{_END}", _thread_inch,
    ),
    ("m0.", rf"m?(?P<d>{_NUM})\s?(?:mm)?\s?[x*-]?\s?(?P<t>\d\d)\s?(?:tpi|threads per inch){_END}", _thread_mixed),
    ("0", rf"(?P<d>\d\d(?:\.\d+)?)\s?(?:mm)?\s?[x*]\s?(?P<p>1|[012]?\.\d+)(?:\s?mm)?{_END}", _thread_metric),
    (
        "0t", rf"(?:(?P<n>\d+)\s?(?:tpi|threads per inch|threads/inch)|tpi\s?(?:of|is|=)?\s?(?P<n2>\d+)){_END}",
        _per_inch,
    ),
    ("0.p", rf"(?:(?P<n>{_NUM})\s?(?:mm)?\s?pitch|pitch\s?(?:of|is|=|:)?\s?(?P<n2>{_NUM})(?:\s?mm)?){_END}", _pitch),
    ("i", rf"iso\s?[/:=]?\s?(?P<n>\d+){_END}", _one("ISO")),
    ("ae", rf"(?:asa|ei)\s?(?P<n>\d+){_END}", _one("ISO")),
    ("e", rf"ev\s?(?P<n>-?\d+(?:\.\d+)?){_END}", _one("EV")),
    (
        "n",
        r"nd[\s.-]?(?P<a>\d+(?:\.\d+)?)\s?(?:-|to|\.\.)\s?(?:nd\s?)?(?P<b>\d+(?:\.\d+)?)"
        rf"(?!\s?(?:mm|stop)){_END}", _nd_range,
    ),
    ("m", rf"m\s?=\s?(?P<n>{_NUM})x?{_END}", _magnified),
    ("n", rf"nd[\s.-]?(?P<n>\d+(?:\.\d+)?|\.\d+)x?{_END}", _nd),
    ("0.", rf"(?P<n>\d?\.\d{{1,2}}|4|8|16|32|64|100|128|200|256|400|500|1000)\s?nd{_END}(?!\s?(?:filters|s\b))", _nd),
    ("t", rf"t\s?/?\s?(?P<n>\d+(?:\.\d+)?){_END}(?!\.\d)", _t_stop),
    ("f", rf"f\s?[/:.-]?\s?(?!00)(?P<n>\d+(?:[.,]\d+)?|\.\d+)(?!\s?(?:mm\b|cm\b|\"|x\d)|in\b|[.,]?\d){_END}", _stop),
    ("$£€", r"[$£€]\s?(?P<n>\d+(?:\.\d+)?)(?!\d)", _one("PRICE")),
    ("0", r"(?P<n>\d+(?:\.\d+)?)\s?(?:\$|usd|dollars?|bucks|quid|eur|euros?|£|€)(?![^\W_])", _one("PRICE")),
    (
        "0",
        r"(?P<n>\d+(?:\.\d+)?)\s?(?P<u>kgs?|kilos?|kilograms?|lbs?|pounds?|oz|ounces|grams?|g(?!\s?(?:-|mount|lens)))"
        rf"{_END}", _weight,
    ),
    ("0", rf"(?P<n>\d+)\s?(?:fps|frames? (?:per|a) second|p(?<=\dp)){_END}", _one("FPS")),
    ("0", rf"(?P<n>\d+(?:\.\d+)?)\s?ev{_END}", _one("EV")),
    (
        "0",
        r"(?:(?P<a>\d{4,5})\s?(?:x|by)\s?(?P<b>\d{4,5})(?:\s?(?:px|pixels?))?"
        rf"|(?P<n>\d+(?:\.\d+)?)\s?(?:mp|mpx|mpix|megapix|megapixels?)(?:\s?sensor)?){_END}", _pixels,
    ),
    ("0", r"(?P<n>\d+(?:\.\d+)?)\s?(?:°|degrees?|deg)(?![^\W_])", _one("DEGREES")),
    ("0", r"(?P<n>\d+(?:\.\d+)?)\s?(?:%|per\s?cent\b|pct\b)", _one("PERCENT")),
    ("0.", rf"(?P<n>{_NUM}|{_FRACTION})\s?(?:of a\s)?-?turns?{_END}", _turn),
    ("0.", rf"(?P<a>{_NUM})\s?(?:-|to)\s?(?P<b>{_NUM})\s?-?stops?{_END}", _stop_range),
    (
        "0.",
        rf"(?P<n>{_FRACTION}|{_NUM})\s?(?:of an?\s)?-?(?:full\s)?stops?{_END}(?!\s?(?:at|short|there|here|in))", _stops,
    ),
    ("0.", rf"(?P<a>{_NUM})\s?(?:mm\s?)?(?:\.\.|-|to)\s?(?P<b>{_NUM})\s?{_UNIT}{_END}", _range),
    ("0.", rf"(?P<a>{_NUM})\s?:\s?(?P<b>{_NUM})(?![\d:])(?!\s?mm)", _ratio),
    (
        "0.",
        rf"(?P<n>{_NUM})\s?(?P<p>tenths?|hundredths?)(?:\sof\sa)?(?:\s?(?:mm|millimet(?:er|re)s?))?{_END}"
        r"(?!\sof\san?\sinch)", _parts_of_mm,
    ),
    (
        "0",
        rf"(?P<f>\d+)\s?(?:ft\.?|feet|foot|')\s?(?:"
        rf"(?:and\s)?(?P<i>\d{{1,2}}(?:\.\d)?)\s?(?:inch(?:es)?|in|\"|'')|(?P<b>\d{{1,2}})(?!\s?(?:mm|cm|m|ft|feet|foot|')))"
        rf"{_END}(?!\s?[/.x-]\s?\d)", _feet_and_inches,
    ),
    ("0.", rf"(?P<n>{_FRACTION}|{_NUM}|\d+,\d+(?=\s?mm))\s?-?{_UNIT}(?![^\W_]){_NOT_PLACE}{_NOT_MOUNT}", _length),
    (
        "0",
        r"(?P<a>\d{1,4}(?:\.\d+)?)(?P<sep>\s?/\s?|\s)(?P<b>\d{1,2}(?:\.\d+)?|\.\d+)"
        rf"(?!\s?(?:mm|cm|\"|x(?!\s?-?(?:mount|body|lens|camera))|%|turn|/)){_END}", _combo,
    ),
    ("0", rf"1\s?/\s?(?P<b>\d+)(?P<s>\s?(?:seconds?|secs?|s|th)\b)?{_END}(?!\s?/|\.\d)", _shutter),
    ("0", rf"(?P<n>\d+(?:\.\d+)?)\s?(?:seconds?|secs?|s){_END}", _seconds),
    ("+0.", rf"\+?(?P<n>{_NUM})\s?(?:diopt(?:er|re)s?|dpt){_END}", _one("DIOPTRE")),
    ("+", rf"(?<!\S)\+(?P<n>\d(?:\.\d+)?)(?!\s?(?:mm|cm|x)){_END}", _one("DIOPTRE")),
    ("x", rf"x(?P<n>{_NUM}){_END}", _one("TIMES")),
    # 'x 5' is how many times, 'X 50' a lens for X: a capital, or more than any such lens is enlarged by
    ("x", rf"(?-i:x)\s(?P<n>1?\d(?:\.\d+)?){_END}(?!\s?mm)", _one("TIMES")),
    ("0.", rf"(?P<a>{_NUM})\s?(?:mm)?\s?(?:x|\*|by(?=\s?\d))\s?(?P<b>{_NUM})(?P<mm>\s?mm)?{_END}", _area),
    ("0.", rf"(?P<n>{_NUM})x?(?P<tc>tcs?){_END}", _teleconverter),
    ("0.", rf"(?P<n>{_NUM})\s?(?:x|times)(?![^\W_])", _one("TIMES")),
    ("0", rf"(?P<a>\d+(?:\.\d+)?)\s?(?:\.\.|-)\s?(?P<b>\d+(?:\.\d+)?)(?:\s?ring)?(?<!ring){_END}(?!\.\d)", _bare_range),
    ("0", r"(?P<n>\d{1,2})\s?o\W?\s?clock(?![^\W_])", _one("FILLER")),  # where on a ring it was read
    ("#", rf"#\s?(?P<n>\d+){_END}", _one("ORDINAL")),
    ("ncow", rf"(?:number|no\.|chain|option|way)\s?(?P<n>\d){_END}(?!\.\d)", _one("ORDINAL")),
    ("0", rf"(?P<a>\d+(?:\.\d+)?)\s?/\s?(?P<b>\d+(?:\.\d+)?){_END}", _fraction),
    ("-0.", rf"(?P<n>-?{_NUM}){_END}(?!\.\d)", _one("NUMBER")),
)  # fmt: skip
