"""Numbers in words written in figures: 'sixteen mm', 'three eighths of a turn', '2 and a half mm', 'one point four'."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from functools import cached_property
from typing import Final

from grammar.words.grouping import Groups
from grammar.words.numerals import PART, SHARE, TEN, UNIT, Numerals
from grammar.words.parts_of_stops import PartsOfStops
from grammar.words.written import STOPS

_LEAST_ALONE: Final = 13  # smaller ones are mostly counts, and stand for themselves
_BEYOND_TENS: Final = frozenset(["hundred", "point", "thousand", "kilo", "kg", "pound"])


def _any_of(words: Iterable[str]) -> str:
    return "(?:" + "|".join(sorted(map(re.escape, words), key=len, reverse=True)) + ")"


_UNIT_WORDS: Final = (
    r"(?:mms?|mil|millimet(?:er|re)s?|cms?|centimet(?:er|re)s?|met(?:er|re)s?|kilomet(?:er|re)s?|inch(?:es)?|ft|foot|feet|microns?|thou|"
    r"tenths?|hundredths?|kilos?|kilograms?|pounds|degrees?|seconds|secs?|fps|per\s?cent|diopt(?:er|re)s?|times\slife)\b"
)
_FIGURE: Final = r"\d+(?:\.\d+)?"
_TURN_OR_SIZE: Final = r"(?:turns?|revolutions?|life[ -]?size)\b"
_MEASURED: Final = rf"(?:\s(?:of\s)?an?|\sof)?(?=[ -](?:{_UNIT_WORDS}|{_TURN_OR_SIZE}))"
_WITH_PART: Final = re.compile(r"\d\s(?:and|&)\s\d/\d")
_FRAMED: Final = r"(?=[\s-](?:inch|sensor|chip|camera|camcorder)\b)"
_LED: Final = r"(?P<before>(?:an?|my|the|this|old)\s)"

Make = Callable[[re.Match[str]], "str | None"]


class Spelled:
    """Number words as they go together, and the figures that they come to."""

    def __init__(self, numerals: Numerals, groups: Groups) -> None:
        self._parts_of_stops = PartsOfStops(groups)
        self.units, self.tens = numerals.of_class[UNIT], numerals.of_class[TEN]
        self.parts, self.shares = numerals.of_class[PART], numerals.of_class[SHARE]
        self.to_say = numerals.words | _BEYOND_TENS
        self._compiled: dict[str, re.Pattern[str]] = {}

    def in_figures(self, line: str, columns: tuple[int, ...]) -> tuple[str, tuple[int, ...]]:
        """The line with numbers in words as figures, and the column of each of its characters in the text as typed."""
        line, columns = self._parts_of_stops.said_in(line, columns)
        folded = line.casefold()
        said = any(word in folded for word in self.to_say) or _WITH_PART.search(folded)  # '4 and 2/3 stops'
        if not self.units or not said:
            return line, columns
        for pattern, make in self._said:
            line, columns = _replaced(line, columns, self._pattern(pattern), make)
        return line, columns

    def _pattern(self, pattern: str) -> re.Pattern[str]:
        # when it is first needed: most questions hold no number word
        if pattern not in self._compiled:
            self._compiled[pattern] = re.compile(rf"(?<![\w.]){pattern}(?!\w)", re.IGNORECASE)
        return self._compiled[pattern]

    def _value(self, words: str) -> float:
        """What words or figures count to; an article is one."""
        total = 0.0
        for word in re.findall(rf"{_FIGURE}|hundred|thousand|{self._ten}|{self._small}", words, re.IGNORECASE):
            said = word.casefold()
            if said in ("hundred", "thousand"):
                total = (total or 1) * (100 if said == "hundred" else 1000)
            else:
                total += self.units.get(said) or self.tens.get(said) or float(said)
        return total or 1.0

    def _part(self, word: str) -> int:
        folded = word.casefold()
        return self.parts.get(folded) or self.parts.get(folded.removesuffix("s"), 0)

    def _and_part(self, match: re.Match[str]) -> str | None:
        """'2 and a half mm', 'three and three quarters'."""
        share = self._value(match["top"] or "") / self._part(match["part"])
        return f"{self._value(match['whole']) + share:.6g}" if share < 1 else None

    def _unit_and_part(self, match: re.Match[str]) -> str:
        """'a metre and a half', '2 mm and a quarter'."""
        return f"{self._value(match['whole']) + 1 / self._part(match['part']):.6g} {match['unit']}"

    def _fraction(self, match: re.Match[str]) -> str | None:
        """'three eighths', 'a quarter'."""
        top, below = self._value(match["top"] or ""), self._part(match["part"])
        return f"{top:g}/{below}" if top < below else None

    def _part_and_half(self, match: re.Match[str]) -> str:
        """'a tenth and a half': a half of the same part more."""
        said = match["whole"].casefold()
        count = 1.0 if said in ("a", "an") else float(said) if said.isdecimal() else self._value(said)
        return f"{(count + 0.5) / (10 if match['part'].startswith('t') else 100):g} mm"

    def _of_turn(self, match: re.Match[str]) -> str | None:
        """'turn it out a sixth': what a lens is screwed by is told in turns."""
        top, below = self._value(match["top"] or ""), self._part(match["part"])
        return f"{match['before']}{top:g}/{below} turn" if top < below else None

    def _share_of_second(self, match: re.Match[str]) -> str:
        return f"1/{self.shares[match['share'].casefold()]}"

    def _decimal(self, match: re.Match[str]) -> str:
        """'one point four', 'point seven one'."""
        whole = self._value(match["whole"]) if match["whole"] else 0.0
        places = "".join(f"{self._value(one):g}" for one in re.split(r"[ -]+", match["places"].strip()))
        return f"{whole:g}.{places}"

    def _whole(self, match: re.Match[str]) -> str | None:
        value = self._value(match.group())
        return f"{value:g}" if value >= _LEAST_ALONE else None

    def _spoken_hundreds(self, match: re.Match[str]) -> str:
        """'a one thirty five', 'one oh five mm'."""
        return f"{match['before'] or ''}{self._value(match['hundreds']) * 100 + self._value(match['rest']):g}"

    def _stop(self, match: re.Match[str]) -> str | None:
        """'f two', 'f five six'."""
        tens = f".{self._value(match['tenths']):g}" if match["tenths"] else ""
        number = float(f"{self._value(match['whole']):g}{tens}")
        which = number == 1 and not match["tenths"]  # 'the F one has no ring' is a lens, and no f/1
        return f"f {number:g}" if number in STOPS and not which else None

    @cached_property
    def _ten(self) -> str:
        return _any_of(self.tens)

    @cached_property
    def _small(self) -> str:
        return _any_of(self.units)

    @cached_property
    def _said(self) -> tuple[tuple[str, Make], ...]:
        """The patterns in the order that they are looked for, and what is made of each."""
        small, ten = self._small, self._ten
        nine = _any_of(word for word, value in self.units.items() if value < 10)
        tens_and = rf"(?:{ten}(?:[ -]?{nine})?|{small})"
        whole = rf"(?:(?:{nine}|an?)[ -](?:thousand|hundred)(?:(?: and)?[ -]{tens_and})?|{tens_and})"
        part = rf"(?:{_any_of(self.parts)})s?"
        two = rf"(?P<hundreds>one|two|three)[ -](?:oh[ -])?(?P<rest>{ten}(?:[ -]{nine})?|(?<=oh[ -]){nine})"
        return (
            (
                rf"(?P<whole>{whole}|{_FIGURE})\sand\s(?:(?P<top>{nine}|an?)[ -])?(?P<part>{part})(?:\s(?:of\san?))?"
                rf"(?=[\s-](?:{_UNIT_WORDS}|turns?|stops?))", self._and_part,
            ),
            (rf"(?P<whole>{whole}|{_FIGURE})\sand\sa(?P<top>)\s(?P<part>half)", self._and_part),
            (rf"(?P<whole>an?|{whole}|{_FIGURE})\s(?P<unit>mm|metres?|meters?|m|inch|foot|turns?|stops?)\sand\sa\s(?P<part>half|quarter|third|eighth)",
             self._unit_and_part),
            (
                rf"(?P<before>(?:turn|turned|unscrew|unscrewed|screw|screwed|back|backed|wind|wound)\s(?:\w+\s){{0,2}}?"
                rf"(?:out|back|off|in)?\s?(?:by\s)?)(?:(?P<top>an?|one|two|three)\s)?(?P<part>{part})(?=\s(?:and|to|for)\b|[,.?;]|$)",
                self._of_turn,
            ),
            (
                rf"(?P<whole>an?|{whole}|\d+)\s(?P<part>tenth|hundredth)s?\sand\sa\shalf(?:\s(?:mm|millimet(?:er|re)))?",
                self._part_and_half,
            ),
            (
                r"half\sa\s(?P<part>tenth|hundredth)(?:\s(?:of\sa\s)?(?:mm|millimet(?:er|re)))?",
                lambda match: f"{0.5 / (10 if match['part'].startswith('t') else 100):g} mm",
            ),
            (
                r"(?P<half>half\s)?an?\s(?P<unit>kilomet(?:er|re)|kilo(?:gram)?|kg|pound)",
                lambda match: f"{0.5 if match['half'] else 1:g} {match['unit']}",
            ),
            (rf"nd[ -]?(?P<whole>{tens_and})", lambda match: f"nd{self._value(match['whole']):g}"),
            (r"(?P<whole>\d+)\s(?:and|&)\s(?P<part>\d/\d{1,2})", lambda match: f"{match['whole']} {match['part']}"),
            (rf"(?:(?P<top>an?|{small})[ -])?(?P<part>{part}){_MEASURED}", self._fraction),
            (rf"(?P<top>{small})[ -](?P<part>{part}){_FRAMED}", self._fraction),
            (rf"(?:(?:an?|one)[ -])?(?P<share>{_any_of(self.shares)})(?:\sof\sa\ssec(?:ond)?)", self._share_of_second),
            (r"half\s(?:a\s)?sec(?:ond)?", lambda match: "0.5 s"),
            (r"(?:a\s)?quarter\s(?:of\sa\s)?sec(?:ond)?", lambda match: "0.25 s"),
            (r"(?:(?:an?|one)[ -])?(?P<share>fiftieth|sixtieth|thirtieth)", self._share_of_second),
            (rf"(?:(?P<whole>{tens_and})\s)?point\s(?P<places>(?:{nine}|oh|zero)(?:\s{nine})*)", self._decimal),
            (rf"f[ /-](?P<whole>{nine})[ -](?P<tenths>{nine})", self._stop),
            (rf"f[ /-](?P<whole>{tens_and})(?P<tenths>)", self._stop),
            (rf"{_LED}{two}", self._spoken_hundreds),
            (rf"(?P<before>)?{two}(?=[\s-]{_UNIT_WORDS})", self._spoken_hundreds),
            (rf"{whole}(?=[\s-]{_UNIT_WORDS})", lambda match: f"{self._value(match.group()):g}"),
            (
                # 'ten plus sixteen of tube', and no 'plus one X body'
                rf"{small}(?=\s(?:plus|\+)\s)|(?<=plus\s){small}(?!\s\S+\s(?:bod|cam|lens))",
                lambda match: f"{self._value(match.group()):g}",
            ),
            (whole, self._whole),
        )  # fmt: skip


def _replaced(line: str, columns: tuple[int, ...], pattern: re.Pattern[str], make: Make) -> tuple[str, tuple[int, ...]]:
    text, places, done = "", list[int](), 0
    for match in pattern.finditer(line):
        instead = make(match)
        if instead is None:
            continue
        start, end = match.span()
        text += line[done:start] + instead
        places += columns[done:start]
        inner = [columns[min(start + at, end - 1)] for at in range(len(instead))]
        places += [*inner[:-1], columns[end - 1]]  # the last stands for all that it replaces
        done = end
    return (text + line[done:], (*places, *columns[done:])) if done else (line, columns)
