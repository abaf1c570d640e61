"""A statement about one's own gear in marked phrases, and the one measurement that a clause of it may hold."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from engine.base.compact import compact
from grammar import values
from grammar.words.atoms import Runs, atoms_of
from grammar.words.lexicon import Lexicon

_NUMBER: Final = r"-?\d+(?:[.,]\d+)?"
_UNIT: Final = r"mm|cm|m|in|kg|g|grams?|kilos?|kilograms?|millimet(?:er|re)s?|met(?:er|re)s?|inch(?:es)?"
# compiled where they are first used: most lines are questions and never come to it
_VALUE: Final = (
    rf"(?P<stop>f ?/ ?)?(?P<low>{_NUMBER})(?: ?\.\. ?(?P<high>{_NUMBER}))?(?: ?(?P<unit>{_UNIT})\b)?"
    rf"(?: ?(?:±|\+ ?/ ?-|\+-) ?(?P<give>\d+(?:[.,]\d+)?)(?: ?mm\b)?)?"
)
_ACROSS_AND_DOWN: Final = r"(\d+) ?(?:x|by) ?(\d+)"
_UNITS: Final = {"gr": "g", "ki": "kg", "mi": "mm", "me": "m", "inc": "in"}  # by how they begin where written out
_BESIDES: Final = r"\s+(?:really|actually|in fact|in truth|by calipers?|with calipers?|now|then)$"
_ABOUT: Final = r"^(?:exactly|about|roughly|only|just|now|of|at|to be)\s+"


@compact
class Mark:
    """A phrase of the statement: what it does there ('' for any other word), and where it stands in the line."""

    does: str
    text: str
    start: int
    end: int

    @property
    def field(self) -> str:
        """The key of the gear file that the phrase names, '' where it names none."""
        return self.does.removeprefix("field-") if self.does.startswith("field-") else ""


@compact
class Measured:
    """A measurement: the key it is for ('' where not said) and the value in the gear file's notation."""

    key: str
    value: str


def marks_of(line: str, lexicon: Lexicon) -> list[Mark]:
    """The phrases of a smoothed line, each the longest that begins where the one before it ends."""
    return list(each_mark(line, lexicon))


def each_mark(line: str, lexicon: Lexicon) -> Iterator[Mark]:
    """The same, one after the other: the first often tells that the rest need not be looked at."""
    atoms = atoms_of(line)
    runs, at = Runs(line, atoms), 0
    while at < len(atoms):
        if not atoms[at].is_word:
            at += 1
            continue
        found = [run for run in runs.from_(at) if run.plain and run.key in lexicon.words.teaching]
        after = found[0].after if found else at + 1
        does = lexicon.words.teaching[found[0].key] if found else ""
        start, end = atoms[at].start, atoms[after - 1].end
        yield Mark(does, line[start:end], start, end)
        at = after


def measured(clause: str, lexicon: Lexicon) -> Measured | None:
    """The measurement that a clause holds and nothing else: '30.5 mm collar', 'weighs 120 g', '4.02 thick'."""
    fields = [mark for mark in marks_of(clause, lexicon) if mark.field]
    if len({mark.field for mark in fields}) > 1:
        return None
    rest = clause
    for mark in reversed(fields):
        rest = f"{rest[: mark.start]} {rest[mark.end :]}"
    words = {mark.text for mark in marks_of(rest, lexicon) if mark.does in ("the", "is", "measures", "article", "it")}
    for word in sorted(words, key=len, reverse=True):
        rest = re.sub(rf"(?<!\w){re.escape(word)}(?!\w)", " ", rest)
    rest = re.sub(_ABOUT, "", re.sub(_BESIDES, "", " ".join(rest.split()).casefold().strip(" :,=")))
    if fields and fields[0].field == "pixels":
        return _pixels(rest)
    read = re.fullmatch(_VALUE, rest)
    if read is None:
        return None
    key = fields[0].field if fields else "f_number" if read["stop"] else "weight" if _unit(read) in ("g", "kg") else ""
    value = _written(read, key)
    reads = values.f_number if key == "f_number" else values.weight_g if key == "weight" else values.length_mm
    return None if isinstance(reads(value), values.Fault) else Measured(key, value)


def _unit(read: re.Match[str]) -> str:
    """The unit as the gear file has it."""
    unit = read["unit"] or ""
    return next((short for begun, short in _UNITS.items() if unit.startswith(begun)), unit)


def _pixels(said: str) -> Measured | None:
    """'6000 x 4000', '6000 by 4000': the pixels across and down."""
    read = re.fullmatch(_ACROSS_AND_DOWN, said)
    value = f"{read[1]} x {read[2]}" if read else said
    return None if isinstance(values.size_px(value), values.Fault) else Measured("pixels", value)


def _written(read: re.Match[str], key: str) -> str:
    low, high, give = (part and part.replace(",", ".") for part in (read["low"], read["high"], read["give"]))
    number = f"{low}..{high}" if high else str(low)
    if key == "f_number":
        return f"f/{number}"
    unit = _unit(read) or ("g" if key == "weight" else "mm")
    return f"{number} {unit}" + (f" ±{give}" if give else "")


def article(rest: str, lexicon: Lexicon) -> bool:
    marks = marks_of(rest, lexicon)
    return bool(marks) and marks[0].does == "article"


def left(subject: str, name: str) -> str:
    """The subject without the name in it."""
    return re.sub(rf"{re.escape(name)}(?:'?s)?(?!\w)", " ", subject, count=1)
