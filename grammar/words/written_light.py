"""What a written stop, shutter time or filter is: its kind and values, of the pattern that it was written in."""

from __future__ import annotations

import re
from typing import Final

from grammar.words.written import STOPS, Literal, amount

_RING_ENDS: Final = re.compile(r"[A-Za-z/]\w*[->]$")  # 'M42-' right before an F
_MOST_STOPS: Final = 20
_LEAST_FOCAL: Final = 12  # that a whole number below is rather a stop or a part of an inch
_PARTS_OF_INCH: Final = frozenset([16, 32, 64])
_FACTORS: Final = frozenset([2.0, 4.0, 8.0])  # that small ones are marked by
_LEAST_ENGRAVED, _MOST_ENGRAVED = 24.0, 1200.0  # mm, of lenses told as 'f105'
_MOST_BARE_STOPS: Final = 10.0
_MOST_STOP: Final = 64  # as f-numbers are engraved
_STOP_LED: Final = re.compile(r"\b(?:stop|aperture|iris|f|at|iso|asa|ei)[\s/=:]{0,2}$", re.IGNORECASE)
_SPEED_LED: Final = re.compile(r"\b(?:iso|asa|ei)(?:\s(?:is|at|of|locked|fixed|set|to)){0,3}\s$", re.IGNORECASE)
_LEAST_PART: Final = 12  # of a stop: none is told in smaller parts
_DENSITY_LED: Final = re.compile(r"\bdensity\s(?:of\s|is\s)?$", re.IGNORECASE)
_OPENS: Final = re.compile(r"\s?(?:lens|wide|fixed)\b", re.IGNORECASE)
_OPENINGS: Final = frozenset([0.95, 1.1, 1.2, 1.3, 1.4, 1.6, 1.7, 1.8, 1.9, 2.2, 2.5, 2.8, 2.9, 3.5, 4.5, 5.6, 6.3])
_ANGLED: Final = re.compile(r"\bangle|\bdeg|°", re.IGNORECASE)
_METERED: Final = frozenset([1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32])
_MOST_EV: Final = 22.0
_SPEEDS: Final = frozenset(
    [
        15,
        20,
        24,
        25,
        30,
        40,
        48,
        50,
        60,
        80,
        96,
        100,
        120,
        125,
        160,
        200,
        240,
        250,
        320,
        350,
        400,
        500,
        640,
        750,
        800,
        1000,
        1250,
        1600,
        2000,
        2500,
        3200,
        4000,
        5000,
        6400,
        8000,
    ]
)  # parts of a second that shutters are set to; 90 and 180 are rather angles


def combo(match: re.Match[str]) -> Literal | None:
    """'50/1.8', '50 1.8': focal length in mm and f-number; None where they may be other numbers."""
    focal, stop = float(match.group("a")), float(match.group("b"))
    if _SPEED_LED.search(match.string, 0, match.start()):
        return None  # 'iso 640 1.6'
    decimal = "." in match.group("b")
    if focal < 4 or focal > 3000 or stop not in STOPS or (stop >= focal and focal < 20):
        return None
    if match.group("sep").strip() == "" and (not decimal or stop > 8):
        return None
    if not decimal and focal < 10 and focal == int(focal):
        return None
    return Literal("COMBO", (focal, stop), match.end())


def engraved(match: re.Match[str]) -> Literal | None:
    """'1:2.8/50', '3,5/135', '1:2 f=58', as it stands on a lens; never '1:2 f16', a stop set close up."""
    focal, stop = float(match.group("a")), float(match.group("b").replace(",", "."))
    if (match.groupdict().get("e") or "").endswith("f") and focal in STOPS:
        return None
    return Literal("COMBO", (focal, stop), match.end()) if stop in STOPS and 4 <= focal <= 3000 else None


def engraved_stop(match: re.Match[str]) -> Literal | None:
    """'1:2,8'."""
    stop = float(match.group("n").replace(",", "."))
    return Literal("FNUM", (stop,), match.end()) if stop in STOPS else None


_LEAST_STOP = 0.5
_MOST_APART = 3.0  # times, of two stops that are told as a pair: '5.6/8', but a lens in '1.8/10'


def stop_first(match: re.Match[str]) -> Literal | None:
    """'2.8/50', '2/58': the stop before the focal length, as makers of old had it; never '1/50', '3/16', '5.6/8'."""
    focal, stop = float(match.group("a")), float(match.group("b"))
    decimal = "." in match.group("b")
    two_stops = decimal and focal in STOPS and focal < _LEAST_FOCAL and focal <= _MOST_APART * stop
    if stop not in STOPS or not 4 <= focal <= 3000 or two_stops:
        return None
    if not decimal and (stop == 1 or focal < _LEAST_FOCAL or focal in _PARTS_OF_INCH):
        return None
    return Literal("COMBO", (focal, stop), match.end())


def stop(match: re.Match[str]) -> Literal | None:
    """'f 2.8', 'f/8'; the letter before '38/1.8' is the end of a mount's name."""
    number = float(match.group("n").replace(",", "."))
    if match.group().casefold().startswith("f.") and number / 100 in STOPS and number > _MOST_STOP:
        number /= 100  # 'f.95'
    focal = match.group("n").isdecimal() and _LEAST_ENGRAVED <= number <= _MOST_ENGRAVED and number not in STOPS
    if focal and match.group()[1:2].isdecimal() and "pinhole" not in match.string:
        return Literal("LENGTH", (number,), match.end(), "mm", match.group("n"))  # 'f105 2.5': f is the focal length
    apart = match.group().lower().startswith("f ")
    ring = apart and _RING_ENDS.search(match.string[: match.start()])
    if ring or 0 < number < _LEAST_STOP:
        return None  # 'T2-F 8.5': the ring between the two, so long; 'on F. 0.15 shim in': no lens is as fast
    return None if apart and number not in STOPS and number == int(number) else Literal("FNUM", (number,), match.end())


def stop_named(match: re.Match[str]) -> Literal | None:
    """'aperture 5.6'."""
    number = float(match.group("n"))
    return Literal("FNUM", (number,), match.end()) if number in STOPS else None


def stop_metered(match: re.Match[str]) -> Literal | None:
    """'the meter says 8': a whole stop, as meters show them."""
    number = float(match.group("n"))
    return Literal("FNUM", (number,), match.end()) if number in _METERED else None


def t_stop(match: re.Match[str]) -> Literal | None:
    """'T3.1', 't/2': None where it may be the mount."""
    text = match.group("n")
    if "/" not in match.group() and "." not in text and text in ("1", "2", "3"):
        return None  # T2 is a mount
    if float(text) <= 0:
        return None
    return Literal("TSTOP", (float(text),), match.end())


def shutter(match: re.Match[str]) -> Literal | None:
    below = float(match.group("b"))
    if below <= 0 or (below < 15 and not match.group("s")):
        return None
    return Literal("SHUTTER", (1 / below,), match.end(), "s", f"1/{below:g} s")


def shutter_named(match: re.Match[str]) -> Literal | None:
    """'shutter speed 125': as it stands on the dial, the part of a second."""
    return part_of_second(match) if float(match.group("b")) in _SPEEDS else None


def part_of_second(match: re.Match[str]) -> Literal | None:
    """'a 60th of a second', 'at a 250th'."""
    below = float(match.group("b"))
    return Literal("SHUTTER", (1 / below,), match.end(), "s", f"1/{below:g} s") if below else None


def other_angle(match: re.Match[str]) -> Literal | None:
    """'an angle of 45 instead of 180': of a shutter, where an angle was told before."""
    told = _ANGLED.search(match.string, 0, match.start()) is not None
    return Literal("DEGREES", (float(match.group("n")),), match.end()) if told else None


def exposure_value(match: re.Match[str]) -> Literal | None:
    """'12 EV'; in 'ISO 800 EV 12' the number before is the speed."""
    value = float(match.group("n"))
    return Literal("EV", (value,), match.end()) if value <= _MOST_EV else None


def nd(match: re.Match[str]) -> Literal | None:
    """'nd8', 'ND 1.8'; of 'how much nd, 5.6 lens' the number is what the lens opens to."""
    text = match.group("n")
    if float(text) in _OPENINGS and _OPENS.match(match.string, match.end()):
        return None
    return Literal("ND", (float(text),), match.end(), said=f"ND{text}" if "." not in text else f"ND {text}")


def nd_behind(match: re.Match[str]) -> Literal | None:
    """'0.9 nd'; in 'stop 3.5 nd?' the number is of the stop."""
    return None if _STOP_LED.search(match.string, 0, match.start()) else nd(match)


def nd_range(match: re.Match[str]) -> Literal:
    """'ND2-400': a variable filter, from its weakest to its strongest; of 'vnd 2-5', no filters' factors, in stops."""
    one, other = match.group("a"), match.group("b")
    ends = float(one), float(other)
    if not _FACTORS.issuperset(ends) and 1 <= ends[0] < ends[1] <= _MOST_BARE_STOPS:
        return Literal("ND", ends, match.end(), said=f"{ends[0]:g}-{ends[1]:g} stops")
    return Literal("ND", (float(one), float(other)), match.end(), said=f"ND{one}-ND{other}")


def nd_up_to(match: re.Match[str]) -> Literal | None:
    """'variable maxes out at 5 stops': a variable filter by its strongest alone."""
    most = float(match.group("n"))
    return Literal("ND", (0.0, most), match.end(), said=f"up to {most:g} stops") if most <= _MOST_STOPS else None


def seconds(match: re.Match[str]) -> Literal:
    return Literal("SHUTTER", (float(match.group("n")),), match.end(), "s", f"{float(match.group('n')):g} s")


def minutes(match: re.Match[str]) -> Literal:
    """'2 minutes with ND1000': a time of exposure, in seconds."""
    time = 60.0 * float(match.group("n"))
    return Literal("SHUTTER", (time,), match.end(), "s", f"{time:g} s")


def stops(match: re.Match[str]) -> Literal | None:
    """'where does the 50 stop' tells no stops: there are not so many; '1/48 stop 5.6' is a shutter."""
    count, (above, _, below) = amount(match.group("n")), match.group("n").partition("/")
    if below and (float(below) >= _LEAST_PART or "." in below or float(above.split()[-1]) >= _LEAST_PART):
        return None  # 'where does 35/1.8 stop', 'the 50/2 stop'
    if _DENSITY_LED.search(match.string, 0, match.start()) and "." in match.group("n"):
        return None  # 'density 1.8 in stops', 'nd 0.9 stops?'
    return Literal("STOPS", (count,), match.end()) if count <= _MOST_STOPS else None


def stop_range(match: re.Match[str]) -> Literal | None:
    """'2-5 stops': what a variable filter goes from and to."""
    one, other = float(match.group("a")), float(match.group("b"))
    ordered = one < other <= _MOST_STOPS
    return Literal("ND", (one, other), match.end(), said=f"{one:g}-{other:g} stops") if ordered else None
