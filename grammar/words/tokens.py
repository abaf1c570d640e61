"""A line of text -> tokens with columns: names, literals, words of the language, marks and unknown words."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact, field, replace
from grammar.words.atoms import Atom, Runs, atoms_of, smooth
from grammar.words.filenames import file_at
from grammar.words.grouping import NO_GROUPS, Groups
from grammar.words.lexicon import Lexicon, Name
from grammar.words.literals import literal_at
from grammar.words.token_kinds import LENGTHS
from grammar.words.wordlist import Word

LONGEST: Final = 2000  # characters of one question
_MOST_MENDED: Final = 12  # unknown words of one question that are looked at closely
_STOPS: Final = frozenset(".?!;")
_JOINS: Final = frozenset("+&,/")
KIND: Final = "kind"  # the sort of a word for a kind of lens, which has its mount by itself
_PLACE: Final = " in"
_SINGULAR: Final = ("lens", "glass")
_SECOND: Final = 2  # atoms back, over what links the two
_SCREW: Final = "m"
_PIECE: Final = "piece"  # the sort of a word for one
_LINKS: Final = ("-", "/")
_LENGTH: Final = "length"  # a word for one: its value is in mm, what it implies the unit it was said in
_NUMBERED: Final = frozenset(["number", "turns", "stops", "ratio", "ordinal", "share", _LENGTH])


@compact
class Token:
    """One piece of the question. `kind`: a class of words, a kind of literal, the kind of a name, or UNKNOWN."""

    kind: str
    text: str  # as typed; a number in words is told in figures
    column: int  # of its first character, from 1
    value: str = ""
    numbers: tuple[float, ...] = ()
    ids: tuple[str, ...] = ()
    implies: tuple[str, ...] = ()
    unit: str = ""
    gap: bool = True  # whether a space stands before it
    end: int = field(default=0, compare=False)  # column of its last character as typed
    listed: Groups = field(default=NO_GROUPS, compare=False)  # the groups of words that there are

    @property
    def groups(self) -> tuple[str, ...]:
        """The groups of words that its text is of."""
        return self.listed.of(self.text)

    @property
    def is_mm(self) -> bool:
        """Whether it is a length told in millimetres."""
        return self.kind == "LENGTH" and self.unit == "mm"

    @property
    def may_be_mm(self) -> bool:
        """Whether it is a length told in millimetres, or a number told without a unit."""
        return self.kind in LENGTHS and self.unit in ("", "mm")

    def as_(self, kind: str, **changes: object) -> Token:
        return replace(self, kind=kind, **changes)


@compact
class Spoken:
    """A term or a piece of advice that is named anywhere in the question."""

    kind: str
    id: str
    text: str
    column: int
    groups: tuple[str, ...] = ()


@compact
class Cue:
    """A phrase that tells something of what is wanted."""

    tells: str
    column: int
    end: int  # column of its last character


@compact
class Line:
    """A question in tokens, with its cues, the terms and advice it names and the slips of the finger mended."""

    text: str
    tokens: tuple[Token, ...]
    cues: tuple[Cue, ...] = ()
    spoken: tuple[Spoken, ...] = ()
    mended: tuple[str, ...] = ()


def tokens_of(text: str, lexicon: Lexicon) -> Line:
    """The tokens of a question. Every word gives one; where several readings fit, the longest one is taken."""
    line, columns = lexicon.words.spelled.in_figures(*smooth(text))
    runs, mended = mended_runs(Runs(line, atoms_of(line)), lexicon)
    tokens: list[Token] = []
    atoms, at = runs.atoms, 0
    while at < len(atoms):
        token, after = _token(runs, at, lexicon)
        first = atoms[at]
        raw = line[first.start : atoms[after - 1].end]
        gap = first.start == 0 or line[first.start - 1].isspace()
        end = columns[atoms[after - 1].end - 1]
        column = columns[first.start]
        tokens.append(replace(token, text=raw, column=column, gap=gap, end=end, listed=lexicon.words.groups))
        at = after
    return Line(text, tuple(tokens), _cues(runs, columns, lexicon), _spoken(runs, columns, lexicon), mended)


def mended_runs(runs: Runs, lexicon: Lexicon) -> tuple[Runs, tuple[str, ...]]:
    """The line with slips of the finger put right, save in words that are part of a name."""
    unknown = [at for at, atom in enumerate(runs.atoms) if atom.is_word and not lexicon.words.knows(atom.text)]
    meant = {at: lexicon.words.mended(runs.atoms[at].text) for at in unknown[:_MOST_MENDED]}
    # 'exacta' is rather a mount misspelt than 'exact': it is told the mount's right name where it stands
    meant = {at: slip for at, slip in meant.items() if slip and not lexicon.is_slip_of_mount(runs.atoms[at].text)}
    if not meant:
        return runs, ()
    named = 0
    atoms, mended = list(runs.atoms), []
    for at, atom in enumerate(runs.atoms):
        hit = lexicon.name_at(runs, at) if atom.is_word else None
        named = max(named, hit[1]) if hit else named
        instead = meant.get(at)
        if instead and at >= named:
            mended.append(f"{atom.text} -> {instead}")
            atoms[at] = replace(atom, text=instead)
    return Runs(runs.line, atoms), tuple(mended)


def _token(runs: Runs, at: int, lexicon: Lexicon) -> tuple[Token, int]:
    line, atoms = runs.line, runs.atoms
    atom = atoms[at]
    file = file_at(line, atom.start)
    if file is not None:
        return Token("FILE", "", 0, file[0]), _after(atoms, at, file[1])
    second = _second_screw(runs, at, lexicon)
    if second is not None:
        return Token("MOUNT", "", 0, second.phrase, ids=second.ids), at + 1
    name = lexicon.name_at(runs, at) if atom.is_word else None
    word = lexicon.words.word_at(runs, at) if atom.is_word else None
    signed = atom.text == "-" and at > 0 and not line[atom.start - 1].isspace()
    literal = None if signed else literal_at(line, atom.start)
    if name and name[0].kind == "adapter" and name[1] == at + 1 and "-" in name[0].phrase:
        name = None  # 'qbmm' is a mount misspelt, not the ring from QBM to M by its id
    if name and name[1] > at + 1:
        last, ends = literal_at(line, atoms[name[1] - 1].start), atoms[name[1] - 1].end
        apart = last is not None and last.kind == "COMBO" and line[ends : ends + 1].isspace()  # 'super 16 1.4'
        placed = last is not None and line[: last.end].endswith(_PLACE)  # 'Super 35 in 16:9' tells no inches
        if last is not None and last.end > ends and not (apart or placed):
            name = None  # 'shutter, 1/4000' names no shutter of size 1
    name_end = atoms[name[1] - 1].end if name else -1
    word_end = atoms[word[1] - 1].end if word else -1
    if literal and literal.end >= max(word_end, name_end + (literal.end != name_end or not _numeric(name))):
        after = _after(atoms, at, literal.end)
        token = Token(literal.kind, "", 0, literal.said, literal.numbers, unit=literal.unit)
        return (_with_formats(token, lexicon, name[0] if name and name_end == literal.end else None)), after
    if name and name_end >= word_end and not (word and word_end == name_end and word[0].sort == KIND):
        return _named(name[0], atoms[at : name[1]], lexicon), name[1]
    if word:
        return _worded(word[0]), word[1]
    if not atom.is_word:
        return _mark(line, atoms, at)
    if atom.text in lexicon.words.breaks:
        return Token("CUE", "", 0), at + 1
    return Token("FILLER" if lexicon.words.knows(atom.text) else "UNKNOWN", "", 0), at + 1


def _second_screw(runs: Runs, at: int, lexicon: Lexicon) -> Name | None:
    """'M39-42 ring': the second width has the letter of the first, where a mount is named so."""
    if at < _SECOND or not runs.atoms[at].text.isdecimal():
        return None
    first, link = runs.atoms[at - _SECOND], runs.atoms[at - 1]
    piece = lexicon.words.word_at(runs, at + 1) if at + 1 < len(runs.atoms) else None
    if piece is None or piece[0].sort != _PIECE:
        return None
    tight = first.end == link.start and link.end == runs.atoms[at].start and link.text in _LINKS
    screw = first.text[:1] == _SCREW and first.text[1:].isdecimal()
    key = f"{_SCREW}{runs.atoms[at].text}"
    return lexicon.name(key) if tight and screw and lexicon.names.get(key, ("", ""))[1] == "mount" else None


def _after(atoms: list[Atom], at: int, end: int) -> int:
    """The first atom that begins at character `end` or later."""
    at += 1
    while at < len(atoms) and atoms[at].start < end:
        at += 1
    return at


def _numeric(name: tuple[Name, int] | None) -> bool:
    return name is not None and name[0].phrase[:1].isdigit()


def _named(name: Name, atoms: list[Atom], lexicon: Lexicon) -> Token:
    short = len(atoms) == 1 and (len(atoms[0].text) == 1 or atoms[0].text in lexicon.words.alone)
    kind = "LETTER" if short and name.kind == "mount" else name.kind.upper()
    return Token(kind, "", 0, name.phrase, ids=name.ids)


def _worded(word: Word) -> Token:
    numbers = (float(word.value),) if word.sort in _NUMBERED else ()
    unit = word.implies[0] if word.sort == _LENGTH and word.implies else ""
    return Token(word.sort.upper(), "", 0, word.value, numbers, implies=() if unit else word.implies, unit=unit)


def _with_formats(token: Token, lexicon: Lexicon, name: Name | None) -> Token:
    """A literal that may as well be the name of a format or of a mount keeps that as its ids."""
    if name is not None and token.kind == "AREA" and name.kind == "thread":
        return Token("THREAD", "", 0, name.phrase, ids=name.ids)  # '39x26' by its width and turns to the inch
    if name is not None:
        return replace(token, ids=name.ids, implies=(name.kind,))
    if token.kind == "FRACTION" and token.value in lexicon.inch_types:
        return replace(token, ids=(lexicon.inch_types[token.value],), implies=("format",))  # '2/3 sensor'
    if token.kind == "LENGTH":
        if token.unit == "in" and token.value in lexicon.inch_types:
            return replace(token, ids=(lexicon.inch_types[token.value],), implies=("format",))
        if token.unit == "mm" and token.numbers[0] in lexicon.cine_mm:
            return replace(token, ids=(lexicon.cine_mm[token.numbers[0]],), implies=("format",))
    return token


def _mark(line: str, atoms: list[Atom], at: int) -> tuple[Token, int]:
    text = atoms[at].text
    following = line[atoms[at].end : atoms[at].end + 1]
    if text in "-=" and following == ">":
        return Token("PREP", "", 0, "to"), at + 2
    if text in ("\u2192", ">"):
        return Token("PREP", "", 0, "to"), at + 1  # 'LTM>M>E'
    if text in _STOPS:
        return Token("STOP", "", 0, text), at + 1
    if text in _JOINS:
        return Token("JOIN", "", 0, text), at + 1
    if text == "@":
        return Token("PREP", "", 0, "at"), at + 1
    if text == "=":
        return Token("CUE", "", 0, "equals"), at + 1
    return Token("MARK", "", 0, text), at + 1


def _cues(runs: Runs, columns: tuple[int, ...], lexicon: Lexicon) -> tuple[Cue, ...]:
    line, atoms = runs.line, runs.atoms
    found: list[Cue] = []
    covered = 0
    for at, atom in enumerate(atoms):
        hit = lexicon.words.cues_at(runs, at) if atom.is_word else None
        # a cue that lies wholly within a longer one is part of it and tells nothing of its own
        if hit is not None and hit[1] > covered:
            covered = hit[1]
            last = columns[atoms[hit[1] - 1].end - 1]
            found.extend(Cue(tells, columns[atom.start], last) for tells in hit[0])
        elif not atom.is_word:
            asked = at + 1 == len(atoms) or atoms[at + 1].text in _STOPS  # 'on an E body = ?'
            equals = atom.text == "=" and (asked or not _names_a_thing(runs, at - 1, lexicon))
            # 'the f-number shows --'; behind a full stop they show nothing
            dashes = line[atom.start : atom.start + 2] == "--" and at > 0 and atoms[at - 1].text not in _STOPS
            tells = "equals" if equals else "dashes" if dashes else ""
            if tells:
                found.append(Cue(tells, columns[atom.start], columns[atom.start]))
    return tuple(found)


def _names_a_thing(runs: Runs, at: int, lexicon: Lexicon) -> bool:
    """'body = E mount', 'circle = 22': what is told of a lens or a body with the mark asks for no equal."""
    word = lexicon.words.word_at(runs, at) if at >= 0 and runs.atoms[at].is_word else None
    return word is not None and word[0].sort in ("body", "lens", "measure")


def _spoken(runs: Runs, columns: tuple[int, ...], lexicon: Lexicon) -> tuple[Spoken, ...]:
    line, atoms = runs.line, runs.atoms
    found: list[Spoken] = []
    at = 0
    while at < len(atoms):
        hit = lexicon.spoken_at(runs, at) if atoms[at].is_word else None
        if hit is None:
            at += 1
            continue
        records, after = hit
        text = line[atoms[at].start : atoms[after - 1].end]
        groups = lexicon.words.groups.of(text)
        found.extend(Spoken(kind, id_, text, columns[atoms[at].start], groups) for kind, id_ in records)
        at = after
    return tuple(found)


def in_words(token: Token) -> bool:
    """Whether it is a number told in words: 'at one side', 'two lenses'."""
    return token.kind == "NUMBER" and token.text.isalpha()


def is_plural(word: Token) -> bool:
    """Whether a noun tells of several: 'tubes', 'lenses'; 'lens' and 'glass' only end like one that does."""
    text = word.text.casefold()
    return text.endswith("s") and not text.endswith(_SINGULAR)
