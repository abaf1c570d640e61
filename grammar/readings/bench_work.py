"""What a text tells was done to a ring at the bench: sheet laid under it or taken out again, metal taken off."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import compact
from grammar.numbers.washers_summed import SHEETS_LAID
from grammar.questions import Question
from grammar.words.groups import BEHIND_COUNT, BEHIND_SHEET, LEADS_COUNT, LEADS_SHEET
from grammar.words.mentioned import Mention, outside
from grammar.words.numerals import Numerals
from grammar.words.wordlist import WordList

SUMMED: Final = "sum-asked"
SHEETS: Final = SHEETS_LAID  # the key under which those of a sum are told
_SEVERAL: Final = 2
_LAID: Final = "sheet-laid"
_CUT: Final = "metal-off"
_SO_MADE: Final = "so-made"
_OUT: Final = "sheet-out"
_BACK: Final = "sheet-back"
_PULLED: Final = ("sheet-pulled", "shim-pulled")
_ASKED: Final = ("sheet-stock", "how-many-asked", "method-asked")
_COUNTED: Final = "layers-counted"
_LAYERS: Final = "layers-of-"
_MOST_LAYERS: Final = 7
_THICKEST: Final = 2.0  # mm, of a sheet or a cut
_NUMBER: Final = re.compile(r"(?<![\w./])(\d*\.?\d+)(?= ?mm\b|\b)(?! ?(?:%|x\b|/\d))( ?mm\b)?", re.IGNORECASE)
_TAKEN: Final = "laid-off-again"  # that what lies there is taken out, named by no word
_THICKEST_SHEET: Final = 0.7  # mm
_FINE: Final = re.compile(r"(\d*\.\d+)(?: ?mm)?")
_TIMES: Final = re.compile(r"(?:^|[ ,(])([a-z]+|\d)(?: ?x)? $")
_NEAR: Final = 9  # signs at most between the count of layers and how thick one is


@compact
class Work:
    """What is done, in mm.

    `times`: so many layers of what lies there already; `out`, `back`: that is taken out, put in again.
    """

    laid: float = 0.0
    cut: float = 0.0
    out: bool = False
    back: bool = False
    times: int = 0
    amounts: tuple[float, ...] = ()
    instead: bool = False

    @property
    def is_none(self) -> bool:
        return not (self.amounts or self.out or self.back or self.times)


def work_of(question: Question, words: WordList, lies: bool = False) -> Work:
    """What the text of this turn tells was done, or asks to suppose; nothing where it asks which sheet to take.

    `lies`: whether sheet lies under the ring, so that 'peel it off', 'three?' and 'and .1?' are of that.
    """
    text = question.text.casefold()
    short = _short(text, words) if lies else None
    if short is not None:
        return short
    if lies and question.places(_TAKEN):
        return Work(out=True)
    if any(question.places(key) for key in _ASKED):
        return Work()
    cut = _amounts(text, outside(question.places(_CUT), question.places(_SO_MADE)))
    pulled = _amounts(text, tuple(one for key in _PULLED for one in question.places(key)))
    laid = {
        at: size for at, size in _amounts(text, question.places(_LAID)).items() if at not in cut and at not in pulled
    }
    cut = {at: size for at, size in cut.items() if at not in pulled}
    counts = _layers(question)
    times_of = {at: _times(text[:at], words.numerals) or _count_by(at, counts, len(laid)) for at in laid}
    sum_ = sum(size * times_of[at] for at, size in laid.items())
    off = sum(cut.values()) + sum(pulled.values())
    out = bool(question.places(_OUT)) and not pulled
    back = bool(question.places(_BACK)) and not out and not laid
    times = max((n for n, _, _ in counts), default=0) if not (laid or cut or pulled) else 0
    return Work(round(sum_, 4), round(off, 4), out, back, times, (*laid.values(), *cut.values(), *pulled.values()))


def _short(text: str, words: WordList) -> Work | None:
    """'three?', 'and .1?': so many layers of what lies there, or another sheet in its place."""
    times = words.numerals.counted(words.groups.core(text.strip(" ?.!"), LEADS_COUNT, BEHIND_COUNT))
    bare = _FINE.fullmatch(words.groups.core(text.strip(" ?!"), LEADS_SHEET, BEHIND_SHEET))
    if times is not None and 0 < times <= _MOST_LAYERS:
        return Work(times=times)
    if bare is not None and 0 < float(bare[1]) <= _THICKEST_SHEET:
        return Work(laid=float(bare[1]), amounts=(float(bare[1]),), instead=True)
    return None


def _amounts(text: str, places: tuple[Mention, ...]) -> dict[int, float]:
    """The last length within each place, by where it stands: with a point or its unit, and no thicker than a sheet."""
    found: dict[int, float] = {}
    for place in places:
        near = _NUMBER.finditer(text, place.at, min(len(text), place.end + 3))
        told = [one for one in near if one.start() < place.end]
        if not told:
            continue
        last = told[-1]
        size = float(last[1])
        if ("." in last[1] or last[2]) and 0 < size <= _THICKEST:
            found[last.start(1)] = size
    return found


def with_sheets_summed(question: Question, words: WordList) -> Question:
    """The question with every thin length of its text, as often as it is told: 'two 0.1 shims and a 0.05, total?'."""
    if question.said(SHEETS) is not None or question.places("thou-or-inch"):
        return question  # as its words were read
    flat = question.text.casefold()
    told = ((one.start(1), float(one[1])) for one in _NUMBER.finditer(flat) if "." in one[1])
    sheets = [(_times(flat[:at], words.numerals) or 1, size) for at, size in told if 0 < size <= _THICKEST]
    if not question.places(SUMMED) or sum(count for count, _ in sheets) < _SEVERAL:
        return question
    listed = ", ".join(f"{count} x {size:g} mm" if count > 1 else f"{size:g} mm" for count, size in sheets)
    return question.with_(values=(*question.rest(SHEETS), (SHEETS, listed)))


def _layers(question: Question) -> list[tuple[int, int, int]]:
    """How many layers are told, and where that begins and ends."""
    told = [(n, one) for n in range(2, _MOST_LAYERS + 1) for one in question.places(f"{_LAYERS}{n}")]
    told += [(int(one.number or 0), one) for one in question.places(_COUNTED) if one.number == int(one.number or 0)]
    return [(n, one.at, one.end) for n, one in told if 1 < n <= _MOST_LAYERS]


def times_of(led: str, words: WordList) -> int:
    """How many of what is told next, by the words before it: 'put three'; 0 where they tell none."""
    return _times(led.casefold(), words.numerals)


def _times(led: str, numerals: Numerals) -> int:
    """'two 0.08 shims': how many, said right before how thick one is; 0 where it is not."""
    told = _TIMES.search(led)
    times = numerals.counted(told[1]) if told is not None else None
    return times if times is not None and 1 < times <= _MOST_LAYERS else 0


def _count_by(at: int, counts: list[tuple[int, int, int]], sheets: int) -> int:
    """How many layers there are of the sheet whose thickness stands at `at`."""
    near = next((n for n, _, end in counts if -1 <= at - end <= _NEAR), None)
    if near is not None:
        return near
    return counts[0][0] if sheets == 1 and len(counts) == 1 else 1
