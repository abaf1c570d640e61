"""The user's gear file edited in place: a record appended or dropped, a field set, and every other byte left as it is."""

from __future__ import annotations

import os
import re
from codecs import BOM_UTF8
from collections.abc import Iterator, Mapping
from typing import Any, Final

from engine.base.compact import compact, replace
from engine.base.place import Place
from engine.base.problem import Problem, nearest_of
from engine.facts.fields import ID, Desk
from engine.facts.files import LARGEST, shown_path
from engine.facts.nodes import Entry, Fields, Text, told
from engine.facts.reading import read_record
from engine.facts.safesave import save
from engine.facts.sections import SECTIONS, noun, with_article
from engine.facts.splice import Patch, Source, Splice, Value, data_of, written, written_lines
from engine.facts.yamlfile import Sheet, read_sheet

HEAD: Final = "# What you own and have measured. Yours to edit; ringpath adds what you tell it.\n"
_STEP: Final = 2  # blanks, where the file shows no habit of its own
_DATE: Final = r"\d{4}-\d\d-\d\d"
_DATED: Final = re.compile(rf" *# {_DATE}, ")  # as comments begin that came with an edit
_NO_LINE: Final = re.compile("[\t\r\n\ud800-\udfff]")  # beyond what the reader of the file refuses
_FREE_IDS: Final = ("words", "shared")
Path = tuple[str, ...]  # section, id and perhaps key


@compact
class Append:
    """A new record. `fields`: in the file's notation; `comment`: put above it. `back`: set where it undoes a Drop."""

    section: str
    id: str
    fields: Mapping[str, Value]
    comment: str = ""
    back: Patch | None = None


@compact
class SetField:
    """A field of a record set to a text in the file's notation, or taken out (None). `comment`: put on its line."""

    section: str
    id: str
    key: str
    value: str | None
    comment: str = ""
    back: Patch | None = None


@compact
class Drop:
    """A record taken out, with a dated comment right above it."""

    section: str
    id: str
    back: Patch | None = None


Edit = Append | SetField | Drop


@compact
class Done:
    """The file has been written. `inverse` undoes the edit; `place`: where the record or field stands, or stood."""

    inverse: Edit
    place: Place


def apply(path: str | os.PathLike[str], edit: Edit) -> Done | Problem:
    """Makes the edit in the file as it is by then and saves it whole; a problem where nothing was written.

    The file is made with the first record. Written is only what reads back as the same records with this one change.
    """
    named = os.fspath(path)
    if not isinstance(edit, Append) and not os.path.exists(named):
        return Problem(Place(shown_path(named), 1, 1), "no gear file", f"a file with {noun(edit.section)} '{edit.id}'")
    return save(named, lambda data: edited(data, edit, shown_path(named)))


def edited(data: bytes | None, edit: Edit, shown: str) -> tuple[bytes, Done] | Problem:
    """The bytes of the file after the edit, and what apply gives; `data` None: there is no file yet."""
    if edit.section not in SECTIONS:
        nearest = nearest_of(edit.section, SECTIONS)
        return Problem(Place(shown, 1, 1), f"key '{edit.section}'", "a kind of record", nearest)
    if data is None:
        data = HEAD.encode()
    if len(data) > LARGEST:
        return Problem(Place(shown, 1, 1), "a larger file", f"at most {LARGEST // 1_000_000} MB in a file")
    sheet = read_sheet(shown, data)
    if sheet.fields is None or sheet.problems:
        return sheet.problems[0]
    work = _Work(sheet, sheet.fields, edit)
    refused = work.unwritable()
    for way in work.ways() if refused is None else ():
        if isinstance(way, Problem):
            refused = refused or way
            continue
        outcome = work.done(way)
        if isinstance(outcome, Done):
            mark = BOM_UTF8 if data.startswith(BOM_UTF8) else b""
            return mark + way.made(sheet.text).encode(), outcome
        refused = refused or outcome
    assert refused is not None
    return refused


class _Work:
    """One edit on one text: the ways to make it, and whether what comes of it is what was meant."""

    def __init__(self, sheet: Sheet, root: Fields, edit: Edit) -> None:
        self.sheet, self.root, self.edit = sheet, root, edit
        self.source = Source(sheet.text)
        self.path: Path = (edit.section, edit.id, *((edit.key,) if isinstance(edit, SetField) else ()))
        self.section = root.entries.get(edit.section)
        records = self.section.value if self.section else None
        self.records = records if isinstance(records, Fields) else None
        self.record = self.records.entries.get(edit.id) if self.records else None
        self.called = f"{noun(edit.section)} '{edit.id}'"

    def tell(self, found: str, expected: str, nearest: str | None = None, at: Entry | None = None) -> Problem:
        at = at or self.record or self.section
        place = Place(self.sheet.file, at.line, at.column) if at else Place(self.sheet.file, 1, 1)
        return Problem(place, found, expected, nearest)

    def by_hand(self, found: str, at: Entry | None = None) -> Problem:
        """A form that is not edited here, and the text that does it."""
        match self.edit:
            case Append(fields=fields):
                by_hand = f"this put in by hand: {written({self.edit.id: fields})[1:-1]}"
            case SetField(key=key, value=str(value)):
                by_hand = f"this put in by hand: {written({key: value})[1:-1]}"
            case SetField(key=key):
                by_hand = f"'{key}' taken out by hand"
            case _:
                by_hand = f"'{self.edit.id}' taken out by hand"
        return self.tell(found, by_hand, at=at)

    def unwritable(self) -> Problem | None:
        """Characters that no line may hold, an id that is none, a record that is there already or is not there."""
        edit = self.edit
        for text in _texts([edit.id, *_said(edit)]):
            if odd := _NO_LINE.search(text):
                return self.tell(f"character U+{ord(odd[0]):04X}", "text on one line")
            if problems := read_sheet("", f"# {text}".encode()).problems:
                return self.tell(problems[0].found, problems[0].expected)
        if not isinstance(edit, Append):
            if self.record is None:
                near = nearest_of(edit.id, self.records.entries) if self.records else None
                return self.tell(self.called, f"{with_article(noun(edit.section))} of the gear file", near)
        elif self.record is not None:
            at = Place(self.sheet.file, self.record.line, self.record.column)
            return self.tell(f"{self.called} again", f"an id of its own (it stands at {at} already)")
        elif edit.section not in _FREE_IDS and not ID.fullmatch(edit.id):
            near = re.sub(r"[^A-Za-z0-9.:_+-]+", "-", edit.id).strip("-.:_+") or None
            return self.tell(f"id '{edit.id}'", "an id of letters, digits and '-'", near)
        return None

    def ways(self) -> Iterator[Splice | Problem]:
        """Splices that may do it, the one that leaves most as it was first."""
        edit = self.edit
        if edit.back and (exact := edit.back.found(self.sheet.text)):
            yield exact
        match edit:
            case Append(back=back):
                if back:
                    yield self.appended(back.then.strip("\r\n").splitlines())
                yield self.appended(self.new_lines(edit))
            case SetField():
                yield self.field_set(edit)
            case Drop():
                yield self.dropped()

    def new_lines(self, edit: Append) -> list[str]:
        step = self.step()
        deep = self.records.column - 1 if self.records and self.records.entries else self.root.column - 1 + step
        above = [f"{' ' * deep}# {edit.comment}"] if edit.comment else []
        return above + written_lines(edit.id, edit.fields, deep, step)

    def step(self) -> int:
        """How far the file sets in what belongs to a key."""
        for entry in self.root.entries.values():
            if isinstance(entry.value, Fields) and entry.value.line > entry.line:
                return entry.value.column - self.root.column
        return _STEP

    def appended(self, lines: list[str]) -> Splice | Problem:
        source, root = self.source, self.root
        if source.in_braces(root):
            return self.by_hand("facts in braces")
        if self.section is None:
            head = f"{' ' * (root.column - 1)}{self.edit.section}:"
            last = list(root.entries.values())[-1] if root.entries else None
            taken = source.lines_of(last) if last else (0, -1)
            return source.at_the_end(taken[1], [head, *lines]) if taken else self.by_hand("an end with more behind it")
        value = self.section.value
        if source.in_braces(value):
            return self.by_hand(f"{self.edit.section} in braces")
        if not isinstance(value, Fields) and not (isinstance(value, Text) and value.text == "" and value.empty):
            return self.by_hand(f"{self.edit.section} {told(value)}")
        taken = source.lines_of(self.section)
        if taken is None:
            return self.by_hand(f"{self.edit.section} with more on a line")
        return source.below(source.with_comments(taken[1], self.root.column + 1 if self.records is None else value.column), lines)

    def field_set(self, edit: SetField) -> Splice | Problem:
        assert self.record is not None
        record, source = self.record.value, self.source
        if source.in_braces(record) or (self.records and source.in_braces(self.records)):
            return self.by_hand(f"{self.called} in braces")
        entry = record.entries.get(edit.key) if isinstance(record, Fields) else None
        if entry is None:
            if not isinstance(record, Fields) and not (isinstance(record, Text) and record.text == "" and record.empty):
                return self.by_hand(f"{self.called} {told(record)}")
            if edit.value is None:
                near = nearest_of(edit.key, record.entries) if isinstance(record, Fields) else None
                return self.tell(f"{self.called} without '{edit.key}'", "one of its keys", near)
            return self.field_added(edit, edit.value)
        if not isinstance(entry.value, Text):
            return self.by_hand(f"{edit.key} {told(entry.value)}", entry)
        if source.in_block(entry.value):
            return self.by_hand(f"{edit.key} as a block of text", entry)
        taken, end = source.lines_of(entry), source.end_of(entry.value)
        if taken is None or end is None:
            return self.by_hand(f"{edit.key} with more on its line", entry)
        if edit.value is None:
            return source.without(*taken)
        start = source.offset(entry.value.line, entry.value.column)
        there = self.sheet.text[start : source.ends[taken[1]]]
        if edit.back and edit.back.now == there:
            return Splice(start, there, edit.back.then)
        gap = "" if self.sheet.text[start - 1 : start].isspace() else " "
        rest = self.sheet.text[end : source.ends[taken[1]]]
        return Splice(start, there, gap + written(edit.value) + _commented(rest, edit.comment))

    def field_added(self, edit: SetField, value: str) -> Splice | Problem:
        assert self.record is not None
        taken = self.source.lines_of(self.record)
        if taken is None:
            return self.by_hand(f"{self.called} with more on a line")
        record = self.record.value
        deep = record.column - 1 if isinstance(record, Fields) else self.record.column - 1 + self.step()
        (line,) = written_lines(edit.key, value, deep, 0)
        last = self.source.with_comments(taken[1], deep)
        return self.source.below(last, [line + _commented("", edit.comment)])

    def dropped(self) -> Splice | Problem:
        assert self.record is not None
        assert self.records is not None
        taken = None if self.source.in_braces(self.records) else self.source.lines_of(self.record)
        if taken is None:
            return self.by_hand(f"{self.edit.section} in braces")
        first, last = taken
        while first and _DATED.match(above := self.source.line(first - 1)) and above.find("#") == self.record.column - 1:
            first -= 1
        return self.source.without(first, self.source.with_comments(last, self.record.column))

    def done(self, splice: Splice) -> Done | Problem:
        """What the edit gives, where the text it makes holds the data meant, everything else as it was."""
        sheet = read_sheet(self.sheet.file, splice.made(self.sheet.text).encode())
        before = data_of(self.root)
        after = data_of(sheet.fields) if sheet.fields and not sheet.problems else None
        # written out, since mappings in another order are equal
        if repr(_without(after, self.path)) != repr(_without(before, self.path)) or _at(after, self.path) != self.meant():
            return self.by_hand(f"{self.called} in a form that is not edited here")
        if worse := self.worse(sheet):
            return worse
        here = _entry(sheet.fields, self.path) or _entry(self.root, self.path)
        assert here is not None
        back, value = self.source.turned_back(splice), _at(before, self.path)
        return Done(_inverse(self.edit, value, back), Place(sheet.file, here.line, here.column))

    def meant(self) -> Value:
        match self.edit:
            case Append(fields=fields):
                return _plain(fields)
            case SetField(value=value):
                return value
            case Drop():
                return None

    def worse(self, sheet: Sheet) -> Problem | None:
        """What the record cannot be read for since the edit; an undo may bring back what was wrong before."""
        if self.edit.back:
            return None
        known = {replace(problem, place=Place("", 0, 0)) for problem in _wrong(self.root, self.path, self.sheet.file)}
        for problem in _wrong(sheet.fields, self.path, sheet.file):
            if replace(problem, place=Place("", 0, 0)) not in known:
                return self.tell(problem.found, problem.expected, problem.nearest)
        return None
