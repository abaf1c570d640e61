"""Where in the text of a gear file an edit is made, and in which words; a form that is not edited is refused."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from engine.base.place import Place
from engine.base.problem import Problem, nearest_of
from engine.facts.gearedits import Append, Drop, Edit, SetField
from engine.facts.nodes import Entry, Fields, Node, Text, told
from engine.facts.sections import noun
from engine.facts.splice import Source, Splice, Value, written, written_lines
from engine.facts.yamlfile import Sheet

_NONE_YET: Final = "{}"  # behind the key of a section
_STEP: Final = 2  # blanks, where the file shows no habit of its own
_DATE: Final = r"\d{4}-\d\d-\d\d"
_DATED: Final = re.compile(rf" *# {_DATE}, ")  # as comments begin that came with an edit


class Ways:
    """The text, the record that an edit is about, and the splices that may make it."""

    def __init__(self, sheet: Sheet, root: Fields, edit: Edit) -> None:
        self.sheet, self.root, self.edit = sheet, root, edit
        self.source = Source(sheet.text)
        self.section = root.entries.get(edit.section)
        records = self.section.value if self.section else None
        self.records = records if isinstance(records, Fields) else None
        self.record = self.records.entries.get(edit.id) if self.records else None
        self.called = f"{noun(edit.section)} '{edit.id}'"

    def __iter__(self) -> Iterator[Splice | Problem]:
        """Splices that may do it, the one that brings back most of what was before first."""
        edit = self.edit
        if edit.back and (exact := edit.back.found(self.sheet.text)):
            yield exact
        match edit:
            case Append(back=back):
                if back:
                    then = back.then.strip("\r\n").splitlines()
                    yield self._appended(then)
                    yield self._appended(_set_in_by(self._deep(), then))
                yield self._appended(self._new_lines(edit))
            case SetField():
                yield self._set(edit)
            case Drop():
                yield self._dropped()

    def tell(self, found: str, expected: str, nearest: str | None = None, at: Entry | None = None) -> Problem:
        """A problem at the record, or what comes nearest to it."""
        at = at or self.record or self.section
        line, column = (at.line, at.column) if at else (1, 1)
        return Problem(Place(self.sheet.file, line, column), found, expected, nearest)

    def by_hand(self, found: str, at: Entry | None = None) -> Problem:
        """A form that is not edited here, with the text that a person would put there."""
        match self.edit:
            case Append(section=section, id=record_id, fields=fields):
                record: Value = {record_id: fields}
                expected = f"this put in by hand: {written(record if self.section else {section: record})[1:-1]}"
            case SetField(key=key, value=str(value)):
                expected = f"this put in by hand: {written({key: value})[1:-1]}"
            case SetField(key=key):
                expected = f"'{key}' taken out by hand"
            case Drop(id=record_id):
                expected = f"'{record_id}' taken out by hand"
        return self.tell(found, expected, at=at)

    def _new_lines(self, edit: Append) -> list[str]:
        step, deep = self._step(), self._deep()
        above = [f"{' ' * deep}# {edit.comment}"] if edit.comment else []
        return above + written_lines(edit.id, edit.fields, deep, step)

    def _deep(self) -> int:
        """How far a record of the section is set in."""
        return self.records.column - 1 if self.records and self.records.entries else self.root.column - 1 + self._step()

    def _step(self) -> int:
        """How far the file sets in what belongs to a key."""
        for entry in self.root.entries.values():
            if isinstance(entry.value, Fields) and entry.value.line > entry.line:
                return entry.value.column - self.root.column
        return _STEP

    def _appended(self, lines: list[str]) -> Splice | Problem:
        source, root, section = self.source, self.root, self.edit.section
        if source.in_braces(root):
            return self.by_hand("facts in braces")
        if self.section is None:
            head = f"{' ' * (root.column - 1)}{section}:"
            last = source.lines_of([*root.entries.values()][-1]) if root.entries else (0, -1)
            if last is None:
                return self.by_hand("a last line with more on it")
            return source.at_the_end(last[1], [head, *lines])
        if source.in_braces(self.section.value):
            return self._opened(lines) or self.by_hand(f"{section} in braces")
        if self.records is None and not _is_open(self.section.value):
            return self.by_hand(f"{section} {told(self.section.value)}")
        taken = source.lines_of(self.section)
        if taken is None:
            return self.by_hand(f"{section} with more on a line")
        outer = self.records or self.root
        return source.below(source.with_comments(taken[1], outer.column), lines)

    def _opened(self, lines: list[str]) -> Splice | None:
        """The lines in the place of '{}' behind the key, which says that there are none yet; None where more stands."""
        assert self.section is not None
        source, value, text = self.source, self.section.value, self.sheet.text
        end, taken = source.end_of(value), source.lines_of(self.section)
        start = source.offset(value.line, value.column)
        if end is None or taken is None or text[start:end] != _NONE_YET:
            return None
        start -= len(text[:start]) - len(text[:start].rstrip(" "))
        rest = text[end : source.ends[taken[1]]]
        return Splice(start, text[start : source.ends[taken[1]]], source.line_end.join((rest.rstrip(), *lines)))

    def _set(self, edit: SetField) -> Splice | Problem:
        assert self.record is not None
        assert self.records is not None
        record, source = self.record.value, self.source
        if source.in_braces(record) or source.in_braces(self.records):
            return self.by_hand(f"{self.called} in braces")
        if not isinstance(record, Fields) and not _is_open(record):
            return self.by_hand(f"{self.called} {told(record)}")
        entries = record.entries if isinstance(record, Fields) else {}
        entry = entries.get(edit.key)
        if entry is None:
            if edit.value is not None:
                return self._added(edit, edit.value)
            near = nearest_of(edit.key, entries)
            return self.tell(f"{self.called} without '{edit.key}'", f"a key of {self.called}", near)
        if not isinstance(entry.value, Text):
            return self.by_hand(f"{edit.key} {told(entry.value)}", entry)
        if source.in_block(entry.value):
            return self.by_hand(f"{edit.key} as a block of text", entry)
        return self._replaced(edit, entry)

    def _replaced(self, edit: SetField, entry: Entry) -> Splice | Problem:
        source, text = self.source, self.sheet.text
        taken, end = source.lines_of(entry), source.end_of(entry.value)
        if taken is None or end is None:
            return self.by_hand(f"{edit.key} with more on its line", entry)
        start, line_end = source.offset(entry.value.line, entry.value.column), source.ends[taken[1]]
        there = text[start:line_end]
        if edit.back and edit.back.now == there:
            return Splice(start, there, edit.back.then)
        if edit.value is None:
            return source.without(*taken)
        gap = "" if text[start - 1].isspace() else " "
        return Splice(start, there, gap + written(edit.value) + _commented(text[end:line_end], edit.comment))

    def _added(self, edit: SetField, value: str) -> Splice | Problem:
        assert self.record is not None
        taken = self.source.lines_of(self.record)
        if taken is None:
            return self.by_hand(f"{self.called} with more on a line")
        record = self.record.value
        deep = record.column - 1 if isinstance(record, Fields) else self.record.column - 1 + self._step()
        (line,) = written_lines(edit.key, value, deep, 0)
        last = self.source.with_comments(taken[1], self.record.column)
        return self.source.below(last, [line + _commented("", edit.comment)])

    def _dropped(self) -> Splice | Problem:
        assert self.record is not None
        assert self.records is not None
        source, column = self.source, self.record.column
        taken = None if source.in_braces(self.records) else source.lines_of(self.record)
        if taken is None:
            return self.by_hand(f"{self.edit.section} in braces")
        first, last = taken
        while first and _DATED.match(above := source.line(first - 1)) and above.find("#") == column - 1:
            first -= 1
        return source.without(first, source.with_comments(last, column))


def _is_open(node: Node) -> bool:
    """Whether nothing stands behind the key, not even a sign for nothing."""
    return isinstance(node, Text) and node.empty and not node.text


def _set_in_by(deep: int, lines: list[str]) -> list[str]:
    """The lines moved together, so that the outermost is set in by `deep` blanks."""
    least = min((len(line) - len(line.lstrip(" ")) for line in lines if line.strip()), default=0)
    return [" " * deep + line[least:] if line.strip() else line for line in lines]


def _commented(rest: str, comment: str) -> str:
    """The end of a line with the comment: behind one that is there, or in the place of its own of another day."""
    if not comment:
        return rest
    if "#" not in rest:
        return f"  # {comment}"
    same = re.search(_DATE.join(map(re.escape, re.split(_DATE, comment))), rest)
    return rest[: same.start()] + comment + rest[same.end() :] if same else f"{rest.rstrip()}; {comment}"
