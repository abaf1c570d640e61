"""Numbers in words written in figures: 'sixteen mm', 'three eighths of a turn', '2 and a half mm', 'one point four'."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache
from typing import Final

from grammar.words.written import STOPS

_UNITS: Final = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
    "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17,
    "eighteen": 18, "nineteen": 19,
}  # fmt: skip
_TENS: Final = {
    "twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80,
    "ninety": 90, "ninty": 90,
}  # fmt: skip
_PARTS: Final = {
    "half": 2, "halves": 2, "third": 3, "quarter": 4, "fourth": 4, "fifth": 5, "sixth": 6, "eighth": 8, "tenth": 10,
    "twelfth": 12, "sixteenth": 16,
}  # fmt: skip
_SHARES: Final = {
    "fiftieth": 50, "sixtieth": 60, "thirtieth": 30, "hundredth": 100, "hundred and twenty-fifth": 125,
    "two hundredth": 200, "two-hundredth": 200, "two fiftieth": 250, "two-fiftieth": 250, "five hundredth": 500,
    "five-hundredth": 500, "thousandth": 1000, "two thousandth": 2000,
}  # fmt: skip
_LEAST_ALONE: Final = 13  # smaller ones are mostly counts, and stand for themselves
_TO_SAY: Final = frozenset([*_UNITS, *_TENS, *_PARTS, *_SHARES, "hundred", "point", "thousand"])


def _any_of(words: object) -> str:
    return "(?:" + "|".join(sorted(map(re.escape, words), key=len, reverse=True)) + ")"  # type: ignore[call-overload]


_UNIT_WORDS: Final = (
    r"(?:mms?|mil|millimet(?:er|re)s?|cms?|centimet(?:er|re)s?|met(?:er|re)s?|inch(?:es)?|ft|foot|feet|microns?|thou|"
    r"tenths?|hundredths?|degrees?|seconds|secs?|fps|per\s?cent|diopt(?:er|re)s?|times\slife)\b"
)
_SMALL: Final = _any_of(_UNITS)
_NINE: Final = _any_of([word for word, value in _UNITS.items() if value < 10])
_TEN: Final = _any_of(_TENS)
_TENS_AND: Final = rf"(?:{_TEN}(?:[ -]?{_NINE})?|{_SMALL})"
_WHOLE: Final = rf"(?:(?:{_NINE}|an?)[ -](?:thousand|hundred)(?:(?: and)?[ -]{_TENS_AND})?|{_TENS_AND})"
_FIGURE: Final = r"\d+(?:\.\d+)?"
_PART: Final = rf"(?:{_any_of(_PARTS)})s?"
_TURN_OR_SIZE: Final = r"(?:turns?|revolutions?|life[ -]?size)\b"
_MEASURED: Final = rf"(?:\s(?:of\s)?an?|\sof)?(?=[ -](?:{_UNIT_WORDS}|{_TURN_OR_SIZE}))"
_FRAMED: Final = r"(?=[\s-](?:inch|sensor|chip|camera|camcorder)\b)"

Make = Callable[[re.Match[str]], "str | None"]


def in_figures(line: str, columns: tuple[int, ...]) -> tuple[str, tuple[int, ...]]:
    """The line with numbers in words as figures, and the column of each of its characters in the text as typed."""
    folded = line.casefold()
    if not any(word in folded for word in _TO_SAY):
        return line, columns
    for pattern, make in _SAID:
        line, columns = _replaced(line, columns, _compiled(pattern), make)
    return line, columns


@cache
def _compiled(pattern: str) -> re.Pattern[str]:
    return re.compile(rf"(?<![\w.]){pattern}(?!\w)", re.IGNORECASE)


def _replaced(line: str, columns: tuple[int, ...], pattern: re.Pattern[str], make: Make) -> tuple[str, tuple[int, ...]]:
    text, places, done = "", list[int](), 0
    for match in pattern.finditer(line):
        instead = make(match)
        if instead is None:
            continue
        start, end = match.span()
        text += line[done:start] + instead
        places += columns[done:start]
        places += [columns[min(start + at, end - 1)] for at in range(len(instead))]
        done = end
    return (text + line[done:], (*places, *columns[done:])) if done else (line, columns)


def _value(words: str) -> float:
    """What words or figures count to; an article is one."""
    total = 0.0
    for word in re.findall(rf"{_FIGURE}|hundred|thousand|{_TEN}|{_SMALL}", words, re.IGNORECASE):
        said = word.casefold()
        if said in ("hundred", "thousand"):
            total = (total or 1) * (100 if said == "hundred" else 1000)
        else:
            total += _UNITS.get(said) or _TENS.get(said) or float(said)
    return total or 1.0


def _part(word: str) -> int:
    folded = word.casefold()
    return _PARTS.get(folded) or _PARTS.get(folded.removesuffix("s"), 0)


def _and_part(match: re.Match[str]) -> str | None:
    """'2 and a half mm', 'three and three quarters'."""
    share = _value(match["top"] or "") / _part(match["part"])
    return f"{_value(match['whole']) + share:.6g}" if share < 1 else None


def _unit_and_part(match: re.Match[str]) -> str:
    """'a metre and a half', '2 mm and a quarter'."""
    return f"{_value(match['whole']) + 1 / _part(match['part']):.6g} {match['unit']}"


def _fraction(match: re.Match[str]) -> str | None:
    """'three eighths', 'a quarter'."""
    top, below = _value(match["top"] or ""), _part(match["part"])
    return f"{top:g}/{below}" if top < below else None


def _of_turn(match: re.Match[str]) -> str | None:
    """'turn it out a sixth': what a lens is screwed by is told in turns."""
    top, below = _value(match["top"] or ""), _part(match["part"])
    return f"{match['before']}{top:g}/{below} turn" if top < below else None


def _share_of_second(match: re.Match[str]) -> str:
    return f"1/{_SHARES[match['share'].casefold()]}"


def _decimal(match: re.Match[str]) -> str:
    """'one point four', 'point seven one'."""
    whole = _value(match["whole"]) if match["whole"] else 0.0
    places = "".join(f"{_value(one):g}" for one in re.split(r"[ -]+", match["places"].strip()))
    return f"{whole:g}.{places}"


def _whole(match: re.Match[str]) -> str | None:
    value = _value(match.group())
    return f"{value:g}" if value >= _LEAST_ALONE else None


def _spoken_hundreds(match: re.Match[str]) -> str:
    """'a one thirty five', 'one oh five mm'."""
    return f"{match['before'] or ''}{_value(match['hundreds']) * 100 + _value(match['rest']):g}"


def _stop(match: re.Match[str]) -> str | None:
    """'f two', 'f five six'."""
    tens = f".{_value(match['tenths']):g}" if match["tenths"] else ""
    number = float(f"{_value(match['whole']):g}{tens}")
    return f"f {number:g}" if number in STOPS else None


_LED: Final = r"(?P<before>(?:an?|my|the|this|old)\s)"
_TWO: Final = rf"(?P<hundreds>one|two|three)[ -](?:oh[ -])?(?P<rest>{_TEN}(?:[ -]{_NINE})?|(?<=oh[ -]){_NINE})"
# the patterns in the order that they are looked for, and what is made of each
_SAID: Final[tuple[tuple[str, Make], ...]] = (
    (
        rf"(?P<whole>{_WHOLE}|{_FIGURE})\sand\s(?:(?P<top>{_NINE}|an?)[ -])?(?P<part>{_PART})(?:\s(?:of\san?))?"
        rf"(?=[\s-](?:{_UNIT_WORDS}|turns?|stops?))", _and_part,
    ),
    (rf"(?P<whole>{_WHOLE}|{_FIGURE})\sand\sa(?P<top>)\s(?P<part>half)", _and_part),
    (
        rf"(?P<before>(?:turn|turned|unscrew|unscrewed|screw|screwed|back|backed|wind|wound)\s(?:\w+\s){{0,2}}?"
        rf"(?:out|back|off|in)?\s?(?:by\s)?)(?:(?P<top>an?|one|two|three)\s)?(?P<part>{_PART})(?=\s(?:and|to|for)\b|[,.?;]|$)",
        _of_turn,
    ),
    (
        r"half\sa\s(?P<part>tenth|hundredth)(?:\s(?:of\sa\s)?(?:mm|millimet(?:er|re)))?",
        lambda match: f"{0.5 / (10 if match['part'].startswith('t') else 100):g} mm",
    ),
    (rf"nd[ -]?(?P<whole>{_TENS_AND})", lambda match: f"nd{_value(match['whole']):g}"),
    (r"(?P<whole>\d+)\s(?:and|&)\s(?P<part>\d/\d{1,2})", lambda match: f"{match['whole']} {match['part']}"),
    (rf"(?P<whole>an?|{_WHOLE}|{_FIGURE})\s(?P<unit>mm|metre|meter|m|inch|foot|turn)\sand\sa\s(?P<part>half|quarter|third|eighth)",
     _unit_and_part),
    (rf"(?:(?P<top>an?|{_SMALL})[ -])?(?P<part>{_PART}){_MEASURED}", _fraction),
    (rf"(?P<top>{_SMALL})[ -](?P<part>{_PART}){_FRAMED}", _fraction),
    (rf"(?:(?:an?|one)[ -])?(?P<share>{_any_of(_SHARES)})(?:\sof\sa\ssec(?:ond)?)", _share_of_second),
    (r"(?:(?:an?|one)[ -])?(?P<share>fiftieth|sixtieth|thirtieth)", _share_of_second),
    (rf"(?:(?P<whole>{_TENS_AND})\s)?point\s(?P<places>(?:{_NINE}|oh|zero)(?:\s{_NINE})*)", _decimal),
    (rf"f[ /-](?P<whole>{_NINE})[ -](?P<tenths>{_NINE})", _stop),
    (rf"f[ /-](?P<whole>{_TENS_AND})(?P<tenths>)", _stop),
    (rf"{_LED}{_TWO}", _spoken_hundreds),
    (rf"(?P<before>)?{_TWO}(?=[\s-]{_UNIT_WORDS})", _spoken_hundreds),
    (rf"{_WHOLE}(?=[\s-]{_UNIT_WORDS})", lambda match: f"{_value(match.group()):g}"),
    (rf"{_SMALL}(?=\s(?:plus|\+)\s)|(?<=plus\s){_SMALL}", lambda match: f"{_value(match.group()):g}"),
    (_WHOLE, _whole),
)  # fmt: skip
