"""The user's gear file edited in place: a record appended or dropped, a field set, every other byte left as it is."""

from __future__ import annotations

import os
import re
from codecs import BOM_UTF8
from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from engine.base.compact import replace
from engine.base.place import NOWHERE, Place
from engine.base.problem import Problem, nearest_of
from engine.facts.fields import ID, Desk
from engine.facts.files import LARGEST, shown_path
from engine.facts.gearedits import Append, Done, Drop, Edit, SetField, inverse_of, path_of
from engine.facts.gearways import Ways
from engine.facts.nodes import Entry, Fields
from engine.facts.reading import read_record
from engine.facts.safesave import save
from engine.facts.sections import SECTIONS, one_of
from engine.facts.splice import Splice, Value, data_of
from engine.facts.yamlfile import Sheet, read_sheet

__all__ = ["HEAD", "Append", "Done", "Drop", "Edit", "SetField", "apply_all", "edited"]

HEAD: Final = "# What you own and have measured. Yours to edit; ringpath adds what you tell it.\n"
_NO_LINE: Final = re.compile("[\t\r\n\ud800-\udfff]")  # beyond what the reader of the file refuses
_AT_MOST: Final = f"at most {LARGEST // 1_000_000} MB in a file"
_FREE_IDS: Final = ("words", "shared")


def apply_all(path: str | os.PathLike[str], edits: Sequence[Edit]) -> tuple[Done, ...] | Problem:
    """The edits made one after the other and saved once: all of them are in the file, or none is.

    What undoes them is their inverses from the last to the first, applied in the same way.
    """
    named = os.fspath(path)
    shown = shown_path(named)

    def change(data: bytes | None) -> tuple[bytes, tuple[Done, ...]] | Problem:
        done: list[Done] = []
        for edit in edits:
            made = edited(data, edit, shown)
            if isinstance(made, Problem):
                return made
            data, one = made
            done.append(one)
        return data or b"", tuple(done)

    if not os.path.exists(named) and isinstance(refused := change(None), Problem):
        return refused  # before a folder is made for nothing
    return save(named, change)


def edited(data: bytes | None, edit: Edit, shown: str) -> tuple[bytes, Done] | Problem:
    """The bytes of the file after the edit, and what is told of it; `data` None: there is no file yet."""
    if edit.section not in SECTIONS:
        near = nearest_of(edit.section, SECTIONS)
        return Problem(Place(shown, 1, 1), f"key '{edit.section}'", "a kind of record", near)
    if data is None:
        data = HEAD.encode()
    if len(data) > LARGEST:
        return Problem(Place(shown, 1, 1), "a larger file", _AT_MOST)
    sheet = read_sheet(shown, data)
    if sheet.fields is None or sheet.problems:
        return sheet.problems[0]
    ways = Ways(sheet, sheet.fields, edit)
    outcome: Done | Problem | None = _unfit(ways)
    for way in () if outcome else ways:
        outcome = way if isinstance(way, Problem) else _checked(ways, sheet.fields, way)
        if isinstance(way, Splice) and isinstance(outcome, Done):
            mark = BOM_UTF8 if data.startswith(BOM_UTF8) else b""
            return mark + way.made(sheet.text).encode(), outcome
    assert isinstance(outcome, Problem)
    return outcome


def _unfit(ways: Ways) -> Problem | None:
    """Characters that no line may hold, an id that is none, a record that is there already or is not there."""
    edit, record = ways.edit, ways.record
    comment = "" if isinstance(edit, Drop) else edit.comment
    said = edit.fields if isinstance(edit, Append) else edit.value if isinstance(edit, SetField) else None
    words = " ".join((*path_of(edit), comment, *(_texts(said) if not edit.back else ())))
    if odd := _NO_LINE.search(words):
        return ways.tell(f"character U+{ord(odd[0]):04X}", "text on one line")
    if problems := read_sheet("", f"# {words}".encode()).problems:
        return ways.tell(problems[0].found, problems[0].expected)
    if not isinstance(edit, Append):
        if record:
            return None
        near = nearest_of(edit.id, ways.records.entries) if ways.records else None
        return ways.tell(ways.called, f"{one_of(edit.section)} of the gear file", near)
    if record:
        place = Place(ways.sheet.file, record.line, record.column)
        return ways.tell(f"{ways.called} again", f"an id of its own (it stands at {place} already)")
    if edit.section not in _FREE_IDS and not edit.back and not ID.fullmatch(edit.id):
        near = re.sub(r"[^A-Za-z0-9.:_+-]+", "-", edit.id).strip("-.:_+") or None
        return ways.tell(f"id '{edit.id}'", "an id of letters, digits and '-'", near)
    return None


def _checked(ways: Ways, root: Fields, splice: Splice) -> Done | Problem:
    """What the edit gives, where the text it makes holds the data meant, and all other data as it was."""
    edit, path = ways.edit, path_of(ways.edit)
    made = splice.made(ways.sheet.text).encode()
    if len(made) > LARGEST:
        return ways.tell("a file that has become too large", _AT_MOST)
    sheet = read_sheet(ways.sheet.file, made)
    if sheet.fields is None or sheet.problems:
        return ways.by_hand(f"{ways.called} in a form that is not edited here")
    before, after = data_of(root), data_of(sheet.fields)
    held = _entry(sheet.fields, path)
    # compared as written out: mappings in another order would be equal
    if repr(_without(before, path)) != repr(_without(after, path)) or _held(held) != _meant(edit):
        return ways.by_hand(f"{ways.called} in a form that is not edited here")
    if not edit.back:  # an undo may bring back what was wrong before
        known = {replace(problem, place=NOWHERE) for problem in _mistakes(root, path, sheet.file)}
        for problem in _mistakes(sheet.fields, path, sheet.file):
            if replace(problem, place=NOWHERE) not in known:
                return ways.tell(problem.found, problem.expected, problem.nearest)
    was = _entry(root, path)
    here = held or was
    assert here is not None
    inverse = inverse_of(edit, _held(was), ways.source.turned_back(splice))
    return Done(inverse, Place(sheet.file, here.line, here.column))


def _meant(edit: Edit) -> Value:
    match edit:
        case Append(fields=fields):
            return _plain(fields)
        case SetField(value=value):
            return value
        case Drop():
            return None


def _mistakes(root: Fields, path: tuple[str, ...], file: str) -> list[Problem]:
    """What is wrong with the record in itself."""
    entry = _entry(root, path[:2])
    if entry is None:
        return []
    desk = Desk(Sheet(file, ""))
    read_record(path[0], path[1], entry, desk, own=True)
    return desk.sheet.problems


def _entry(root: Fields, path: tuple[str, ...]) -> Entry | None:
    entry = root.entries.get(path[0])
    if len(path) == 1 or entry is None:
        return entry
    return _entry(entry.value, path[1:]) if isinstance(entry.value, Fields) else None


def _held(entry: Entry | None) -> Value:
    return data_of(entry.value) if entry else None


def _without(data: Value, path: tuple[str, ...]) -> Value:
    """The data less what stands under the path, and less the mappings on the way to it that are then empty."""
    if not isinstance(data, Mapping) or not path:
        return None if not path else data
    left = {key: _without(value, path[1:]) if key == path[0] else value for key, value in data.items()}
    if left.get(path[0]) is None:
        left.pop(path[0], None)
    return left or None


def _plain(value: Value) -> Value:
    """The value in the classes that reading gives."""
    if value is None or isinstance(value, str):
        return value
    if isinstance(value, Mapping):
        return {key: _plain(inner) for key, inner in value.items()}
    return [_plain(item) for item in value]


def _texts(value: Value) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, Mapping):
        for key, inner in value.items():
            yield key
            yield from _texts(inner)
    elif value is not None:
        for item in value:
            yield from _texts(item)
