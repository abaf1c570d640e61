"""The smallest parts of a line: words and marks with their columns, written one way however they were typed."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final
from unicodedata import category, normalize

_ATOM: Final = re.compile(r"[^\W_]+(?:'[^\W_]+)*'?|[^\w\s]")
# what people and their phones type for plain marks; each is one character, so that columns stay true
_ALIKE: Final = str.maketrans(
    {
        "’": "'", "‘": "'", "ʼ": "'", "′": "'", "`": "'", "“": '"', "”": '"', "″": '"', "×": "x", "–": "-", "—": "-",
        "−": "-", "‑": "-", "‐": "-", "ƒ": "f", "µ": "u", "μ": "u", "…": ".", "→": "\u2192",
    }
)  # fmt: skip
_BETWEEN: Final = re.compile(r"(?:\s+|\s?[-/_]\s?|\.)?")
_DIGITS_APART: Final = re.compile(r"(?<=\d)([\s\-/._]+)(?=\d)")
_APART: Final = re.compile(r"[\s\-/._'\"()+:,&]+")


@dataclass(frozen=True, slots=True)
class Atom:
    """A run of letters and digits, or one mark. `start` and `end` count characters of the smoothed line, from 0."""

    text: str  # case-folded, apostrophes gone
    start: int
    end: int
    is_word: bool


def smooth(text: str) -> tuple[str, tuple[int, ...]]:
    """`text` with marks made plain and control characters as spaces, and the column (from 1) of each character."""
    if text.isascii() and text.isprintable():
        return text, tuple(range(1, len(text) + 1))
    out: list[str] = []
    columns: list[int] = []
    for column, char in enumerate(text, start=1):
        plain = char.translate(_ALIKE)
        if plain == char and not char.isascii():
            plain = normalize("NFKC", char).translate(_ALIKE)
        for one in plain:
            out.append(" " if category(one) in ("Cc", "Cf", "Cs", "Cn", "Co", "Zl", "Zp", "Zs") else one)
            columns.append(column)
    return "".join(out), tuple(columns)


def atoms_of(line: str) -> list[Atom]:
    """The atoms of a smoothed line, in order."""
    found = []
    for match in _ATOM.finditer(line):
        raw = match.group()
        is_word = raw[0].isalnum()
        found.append(Atom(raw.casefold().replace("'", "") if is_word else raw, match.start(), match.end(), is_word))
    return found


def joins(line: str, one: Atom, other: Atom) -> bool:
    """Whether two neighbouring words may belong to one name: only a space, hyphen, slash or dot lies between."""
    return _BETWEEN.fullmatch(line, one.end, other.start) is not None


def key_of(phrase: str) -> str:
    """The form under which a name is kept: case-folded, without the marks that people leave out or put in.

    What stands between two digits is kept, since 1/2 and 12 are not the same: 'E-Mount' -> 'emount', '1/2 in' -> '1/2in'.
    """
    folded = phrase.casefold()
    if folded.isalnum():
        return folded
    if any(char.isdigit() for char in folded):
        folded = _DIGITS_APART.sub(_kept, folded)
    return _APART.sub("", folded).replace("\0", "/").replace("\1", ".").replace("\2", "-").replace("\3", " ")


def joined_key(line: str, atoms: list[Atom]) -> str:
    """The same form, made from neighbouring atoms of a line."""
    if len(atoms) == 1:
        return atoms[0].text
    atoms = [atom for atom in atoms if atom.is_word]
    out = [atoms[0].text]
    for before, after in zip(atoms, atoms[1:], strict=False):
        if before.text[-1].isdigit() and after.text[0].isdigit():
            out.append(line[before.end : after.start].strip() or " ")
        out.append(after.text)
    return "".join(out)


def _kept(match: re.Match[str]) -> str:
    mark = match.group(1).strip()
    return {"/": "\0", ".": "\1", "-": "\2", "": "\3"}.get(mark, "\2")
