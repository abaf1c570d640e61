"""The phrases of a question about all of one's own gear, in order: what opens it, its conditions, its order."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final

from engine.base.compact import compact, replace
from engine.base.units import MM_PER_FOOT, MM_PER_INCH
from grammar.questions import CLOSE_UP_LENS, FILTER
from grammar.words.atoms import Atom, Runs, atoms_of, smooth
from grammar.words.lexicon import Lexicon
from grammar.words.literals import literal_at
from grammar.words.written import Literal

_MOUNTS: Final = "mountword"  # 'which of my C mounts': the lenses that have one
_NOUNS: Final = {"lens": "lenses", "body": "bodies", "piece": "adapters"}
_KINDS_OF_LENS: Final = frozenset([("kind", "tele"), ("kind", "wide"), ("kind", "zoom")])
_ONE: Final = frozenset(["lens", "glass"])  # what ends as several do, and is one
_MASS: Final = frozenset(["glass", "gear", "kit"])  # one word for all of it
_TO = "to"
_EVERY: Final = frozenset(["all"])
_GAP: Final = 4  # words that may stand between what opens a question and the things that it is about
FEET: Final = {"in": MM_PER_INCH, "ft": MM_PER_FOOT}  # mm
_DETERMINERS: Final = frozenset(["a", "an", "the", "about", "than", "of", "to", "is"])
# which literals tell a number of a quantity, by the unit that its name ends on; what its unit leaves out is told bare
_UNITS: Final = (
    ("focal_length_mm", ("LENGTH", "NUMBER")), ("focal_mm", ("LENGTH", "NUMBER")), ("_mm", ("LENGTH",)),
    ("f_number", ("FNUM", "NUMBER")), ("_g", ("WEIGHT",)), ("magnification", ("RATIO", "TIMES", "NUMBER")),
    ("share", ("PERCENT", "NUMBER")), ("_usd", ("PRICE", "NUMBER")), ("price_paid", ("PRICE", "NUMBER")),
)  # fmt: skip
EXPECTED: Final = {
    "LENGTH": "a length with its unit, such as '30 cm' or '50 mm'", "FNUM": "an f-number, such as 'f/2'",
    "WEIGHT": "a weight, such as '300 g'", "RATIO": "a magnification, such as '1:2' or '0.5x'",
    "PERCENT": "a share, such as '80 %'", "PRICE": "a price, such as '40 dollars'", "NUMBER": "a number",
}  # fmt: skip


@compact
class Mark:
    """A phrase: what it `does` there, with the rest of its record, its first spelling, and the atoms it takes up."""

    does: str
    told: tuple[str, ...]
    says: str
    at: int
    after: int


@compact
class Opened:
    """What a question asks about, and the atoms that say so. `described`: between which stand words that tell more."""

    of: str
    at: int
    after: int
    described: tuple[int, int] | None = None
    compared: bool = False
    weak: bool = False  # it may as well open another question, unless a condition or an order follows


def mended(runs: Runs, lexicon: Lexicon) -> Runs:
    """The runs with slips of the finger in the words of such questions put right, save in names."""
    from grammar.words.nearest import slip_of

    vocabulary = lexicon.words.sift_words
    out: list[Atom] = []
    for at, atom in enumerate(runs.atoms):
        strange = atom.is_word and len(atom.text) > 4 and not lexicon.words.knows(atom.text)
        if strange and atom.text not in vocabulary and lexicon.name_at(runs, at) is None:
            meant = slip_of(atom.text, vocabulary)
            atom = replace(atom, text=meant) if meant else atom
        out.append(atom)
    return Runs(runs.line, out)


def marks_of(runs: Runs, lexicon: Lexicon) -> list[Mark]:
    """The phrases in order, each the longest that begins where the one before it ends."""
    return list(_marks(runs, lexicon))


def _marks(runs: Runs, lexicon: Lexicon) -> Iterator[Mark]:
    table, at = lexicon.words.sifting, 0
    while at < len(runs.atoms):
        found = None
        if runs.atoms[at].is_word:
            found = next((run for run in runs.from_(at) if run.plain and run.key in table), None)
        if found is None:
            at += 1
            continue
        says, does, *told = table[found.key]
        spoken = does not in ("kind", "tell")
        if spoken:
            yield Mark(does, tuple(told), says, at, found.after)
        at = found.after if spoken else at + 1


def about_own(line: str, lexicon: Lexicon) -> tuple[Runs, list[Mark]] | None:
    """The phrases of a line that asks of all of one's own things, however far it is typed; None of any other."""
    if not line.isascii():
        line = smooth(line)[0]
    runs = Runs(line, atoms_of(line))
    marks = marks_of(runs, lexicon)
    return (runs, marks) if opened(runs, marks, lexicon) is not None else None


def opened(runs: Runs, marks: list[Mark], lexicon: Lexicon) -> Opened | None:
    """What opens a question about all of one's own things; None where nothing does."""
    for n, mark in enumerate(marks):
        if mark.does == "of":
            noun = _noun(runs, mark.after, lexicon)
            if noun is not None:
                end = noun[2] if _is_mounts(runs, noun[1], lexicon) else noun[1]
                between = (mark.after, end) if end > mark.after else None
                return Opened(noun[0], mark.at, noun[2], between, weak=bool(mark.told))
        elif mark.does == "out":
            noun = _noun(runs, mark.after, lexicon)
            last = runs.atoms[noun[2] - 1].text if noun is not None else ""
            if noun is not None and (last in _MASS or (last.endswith("s") and last not in _ONE)):
                return Opened(noun[0], mark.at, noun[2], weak=True)
        elif mark.does == "which":
            noun = _noun(runs, mark.after, lexicon)
            if noun is None:
                continue
            mine = next((one for one in marks[n + 1 :] if one.does == "mine" and 0 <= one.at - noun[2] <= 1), None)
            if mine is not None and not _is_obliged(runs, mine):
                last = runs.atoms[noun[2] - 1].text  # 'ten threads make 7.9 mm, what lens have i got' may be of one
                weak = mark.at > 0 and (last in _ONE or not last.endswith("s"))
                return Opened(noun[0], mark.at, mine.after, weak=weak)
    return _my(runs, marks, lexicon)


def _is_obliged(runs: Runs, mine: Mark) -> bool:
    """'what spacer do I have to put in': what one has to do is none of what one has."""
    return mine.after < len(runs.atoms) and runs.atoms[mine.after].text.casefold() == _TO


def _my(runs: Runs, marks: list[Mark], lexicon: Lexicon) -> Opened | None:
    """'my lenses that cover m43', 'show all my lenses by weight', 'my widest lens': only at the start of a line."""
    at, compared = 0, any(mark.does == "compare" for mark in marks)
    every = compared
    for mark in marks:
        if mark.at > at and any(runs.atoms[n].is_word for n in range(at, mark.at)):
            return None
        if mark.does in ("show", "compare"):
            at = mark.after
        elif mark.does == "my":
            noun = _noun(runs, mark.after, lexicon, kinds=at > 0)
            between = [one for one in marks if mark.after <= one.at and noun is not None and one.after <= noun[1]]
            if noun is None or any(one.does != "first" for one in between):
                return None
            kind = at > 0 and any(one.does == "first" and one.at == noun[1] for one in marks)
            rest = sum(runs.atoms[n].is_word for n in range(mark.after, noun[1]))
            if rest != sum(one.after - one.at for one in between):
                return None  # 'my 50 mm lens' is one lens
            last = runs.atoms[noun[2] - 1].text
            every = every or runs.atoms[mark.at].text in _EVERY
            several = last.endswith("s") and last not in _ONE
            if not between and not kind and not several and not (every and last in _MASS):
                return None  # so is 'my lens'; 'all my glass' is all of it
            return Opened(noun[0], mark.at, noun[2], compared=compared, weak=True)
        else:
            return None
    return None


def _noun(runs: Runs, at: int, lexicon: Lexicon, kinds: bool = False) -> tuple[str, int, int] | None:
    """(lenses, bodies or adapters; its atom; the atom after it) for the noun within a few words of `at`.

    `kinds`: whether a kind of lens stands for one, as in 'which one is my tele'.
    """
    for n in range(at, min(at + _GAP, len(runs.atoms))):
        if not runs.atoms[n].is_word:
            continue
        hit = lexicon.words.word_at(runs, n)
        if kinds and hit is not None and (hit[0].sort, hit[0].value) in _KINDS_OF_LENS:
            return _NOUNS["lens"], n, hit[1]
        if hit is not None and hit[0].sort in _NOUNS and hit[0].value not in (FILTER, CLOSE_UP_LENS):
            return _NOUNS[hit[0].sort], n, hit[1]
        if n > at and _is_mounts(runs, n, lexicon):
            return "lenses", n, n + 1
    return None


def _is_mounts(runs: Runs, at: int, lexicon: Lexicon) -> bool:
    hit = lexicon.words.word_at(runs, at)
    return hit is not None and hit[0].sort == _MOUNTS and runs.atoms[hit[1] - 1].text.endswith("s")


def number_after(runs: Runs, at: int) -> tuple[Literal, int] | None:
    """The written number that follows atom `at`, and the atom after it; small words before it are passed over."""
    atoms = runs.atoms
    while at < len(atoms) and atoms[at].text in _DETERMINERS:
        at += 1
    if at >= len(atoms):
        return None
    literal = literal_at(runs.line, atoms[at].start)
    if literal is None:
        return None
    after = at + 1
    while after < len(atoms) and atoms[after].start < literal.end:
        after += 1
    return literal, after


def fitting(quantity: str) -> tuple[str, ...]:
    """The kinds of literal that tell a number of the quantity, the usual one first."""
    name = quantity.split("|")[0]
    return next((kinds for end, kinds in _UNITS if name.endswith(end)), ("NUMBER",))


def number_of(quantity: str, literal: Literal) -> float | None:
    """The number of the quantity that the literal tells, in the unit of its name; None where it tells none."""
    kinds = fitting(quantity)
    if literal.kind == "SHUTTER" and "RATIO" in kinds:
        return literal.numbers[0]  # '1/2' of life size
    if literal.kind == "FRACTION" and "RATIO" in kinds:
        return literal.numbers[0] / literal.numbers[1]
    if literal.kind not in kinds:
        return None
    return literal.numbers[0] / 100 if literal.kind == "PERCENT" else literal.numbers[0]


def number_words(quantity: str, number: float, unit: str = "") -> str:
    """The number as it is read back; `unit`: inches or feet, where they were spoken."""
    kind = fitting(quantity)[0]
    if kind == "LENGTH" and unit in FEET:
        return f"{number / FEET[unit]:g} {unit}"
    if kind == "LENGTH":
        far = "focal" not in quantity and number >= 100
        size, unit = (number, "mm") if not far else (number / 1000, "m") if number >= 1000 else (number / 10, "cm")
        return f"{size:g} {unit}"
    if kind == "PERCENT":
        return f"{number * 100:g} %"
    return {"FNUM": f"f/{number:g}", "WEIGHT": f"{number:g} g", "RATIO": f"{number:g}x",
            "PRICE": f"{number:g} dollars"}.get(kind, f"{number:g}")  # fmt: skip


def blanked(runs: Runs, spans: Iterable[tuple[int, int]], text: str, columns: tuple[int, ...]) -> str:
    """The text with these runs of atoms (from, up to) as spaces: what stands elsewhere keeps its column."""
    out = list(text)
    for first, after in spans:
        if after <= first:
            continue
        begin, end = columns[runs.atoms[first].start] - 1, columns[runs.atoms[after - 1].end - 1]
        out[begin:end] = " " * (end - begin)
    return "".join(out)
