"""The smallest parts of a line: words and marks with their columns, written one way however they were typed."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from itertools import pairwise
from typing import Final
from unicodedata import category, normalize

from engine.base.compact import compact

_ATOM: Final = re.compile(r"[^\W_]+(?:'[^\W_]+)*'?|[^\w\s]")
# what people and their phones type for plain marks; each is one character, so that columns stay true
_ALIKE: Final = str.maketrans(
    {
        "’": "'", "‘": "'", "ʼ": "'", "′": "'", "`": "'", "“": '"', "”": '"', "″": '"', "×": "x", "–": "-", "—": "-",
        "−": "-", "‑": "-", "‐": "-", "ƒ": "f", "µ": "u", "μ": "u", "…": ".", "⁄": "/", "→": "\u2192",
    }
)  # fmt: skip
# a comma for the decimal point: behind a nought, or of one number with its unit; '10, 16 mm' and '10,16,26' are rows
_COMMA: Final = re.compile(
    r"(?<![\d.,])(?:0,\d{1,3}(?![\d,]*\d)|(?:\d{1,3},\d|\d,\d{2})"
    r"(?=\s?(?:mm|cm|m|met(?:er|re)s?|x|nd|ft|stops?|turns?|diopt\w*)\b|:1\b|\s(?:to|-)\s\d+(?:,\d)?\s?m\b)"
    r"|(?<=\bt)\d,\d\b)",
    re.IGNORECASE,
)
_SHOUTED: Final = 4  # words from which capitals throughout are no names
_DIAMETERS: Final = "Øø⌀∅"
_ACROSS: Final = " dia "  # and the word for it
_BETWEEN: Final = re.compile(r"(?:\s+|\s?[-/_]\s?|\.)?")
_WITHIN: Final = re.compile(r"(?:\s+|\s?[-/_(),]\s?|:|\.|\)?,?\s?\(?)?")  # the designation of a mount may hold brackets
# a mark before a word opens what is quoted, which the next one closes: 'it says "register 40.5"' is in no inches;
# the name of a file keeps its marks
_QUOTED: Final = re.compile(r'(?<![^\s(])"(?=\+?[^\W_])([^"]*)(?<!\.svg)(?<!\.html)(?<!\.htm)"')
_MOST_WORDS: Final = 9  # of one name
_MOST_KEYS: Final = 20_000  # names that are kept with their keys: gear that is written has them made anew
_DIGITS_APART: Final = re.compile(r"\d([\s\-/._()+:,]+)(?=\d)")
_APART: Final = str.maketrans("", "", " \t\n-/._'\"()+:,&")
_KEPT: Final = str.maketrans("\1\2\3\4", "/.- ")


@compact
class Atom:
    """A run of letters and digits, or one mark. `start` and `end` count characters of the smoothed line, from 0."""

    text: str  # case-folded, apostrophes gone
    start: int
    end: int
    is_word: bool


def smooth(text: str) -> tuple[str, tuple[int, ...]]:
    """`text` with marks made plain and control characters as spaces, and the column (from 1) of each character."""
    if text.isascii() and text.isprintable():
        return _unquoted(text), tuple(range(1, len(text) + 1))
    out: list[str] = []
    columns: list[int] = []
    for column, char in enumerate(text, start=1):
        plain = _ACROSS if _is_diameter(text, column) else char.translate(_ALIKE)
        if plain == char and not char.isascii():
            plain = normalize("NFKC", char).translate(_ALIKE)
        for one in plain:
            out.append(" " if category(one) in ("Cc", "Cf", "Cs", "Cn", "Co", "Zl", "Zp", "Zs") else one)
            columns.append(column)
    return _unquoted("".join(out)), tuple(columns)


def _is_diameter(text: str, column: int) -> bool:
    """Whether the character in this column is the sign for a diameter, right before its number."""
    return text[column - 1] in _DIAMETERS and text[column : column + 2].lstrip()[:1].isdigit()


def _unquoted(line: str) -> str:
    """The line with the marks around what is quoted as spaces, with decimal points, and not all of it in capitals."""
    line = _QUOTED.sub(r" \1 ", line) if '"' in line else line
    if "," in line:
        line = _COMMA.sub(lambda match: match.group().replace(",", "."), line)
    return line.lower() if line.isascii() and line.isupper() and len(line.split()) >= _SHOUTED else line


def atoms_of(line: str) -> list[Atom]:
    """The atoms of a smoothed line, in order."""
    found = []
    for match in _ATOM.finditer(line):
        raw = match.group()
        is_word = raw[0].isalnum()
        found.append(Atom(raw.casefold().replace("'", "") if is_word else raw, match.start(), match.end(), is_word))
    return found


@lru_cache(maxsize=_MOST_KEYS)
def key_of(phrase: str) -> str:
    """The form under which a name is kept: case-folded, without the marks that people leave out or put in.

    What stands between two digits is kept, since 1/2 is not 12: 'E-Mount' -> 'emount', '1/2 in' -> '1/2in'.
    """
    folded = phrase.casefold()
    if folded.isalnum():
        return folded
    if _DIGITS_APART.search(folded) is None:
        squeezed = folded.replace(" ", "").replace("-", "")  # thrice as fast as to translate, and mostly enough
        return squeezed if squeezed.isalnum() else squeezed.translate(_APART)
    return _DIGITS_APART.sub(_kept, folded).translate(_APART).translate(_KEPT)


def cuts_of(atoms: list[Atom]) -> frozenset[int]:
    """Where in the key of these atoms one ends and the next begins."""
    at, cuts = 0, []
    for before, after in pairwise(atom for atom in atoms if atom.is_word):
        at += len(before.text)
        cuts.append(at)
        if before.text[-1].isdigit() and after.text[0].isdigit():
            at += 1
    return frozenset(cuts)


@compact
class Run:
    """Neighbouring atoms as one name would have them. `after`: the atom after the run."""

    after: int
    key: str
    plain: bool  # whether only a space, hyphen, slash or dot lies between its words; else brackets and commas too


class Runs:
    """A line in atoms, and every run of them that may be one name, made once for all who look names up."""

    def __init__(self, line: str, atoms: list[Atom]) -> None:
        self.line, self.atoms = line, atoms
        self._made: dict[int, tuple[Run, ...]] = {}

    def from_(self, at: int) -> tuple[Run, ...]:
        """The runs that begin at word `at`, the longest first."""
        runs = self._made.get(at)
        if runs is None:
            runs = self._made[at] = tuple(self._grown(at))[::-1]
        return runs

    def _grown(self, at: int) -> Iterator[Run]:
        line, atoms = self.line, self.atoms
        last, key, plain = at, atoms[at].text, True
        yield Run(at + 1, key, True)
        for _ in range(_MOST_WORDS - 1):
            following = last + 1
            while following < len(atoms) and not atoms[following].is_word and following - last < 4:
                following += 1
            if following >= len(atoms) or not atoms[following].is_word:
                return
            one, other = atoms[last], atoms[following]
            if _BETWEEN.fullmatch(line, one.end, other.start) is None:
                if _WITHIN.fullmatch(line, one.end, other.start) is None:
                    return
                plain = False
            if one.text[-1].isdigit() and other.text[0].isdigit():
                key += _mark_between(line, one, other)
            key += other.text
            last = following
            yield Run(following + 1, key, plain)


def _mark_between(line: str, one: Atom, other: Atom) -> str:
    mark = line[one.end : other.start].strip()
    return mark if mark in ("/", ".", "-") else " "


def _kept(match: re.Match[str]) -> str:
    mark = match.group(1).strip()
    return match.group()[0] + {"/": "\1", ".": "\2", "-": "\3"}.get(mark, "\4")
