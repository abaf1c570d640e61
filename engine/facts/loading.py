"""One layer of fact files read onto the tables before it: the good records, and every problem in file order."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from engine.base.compact import compact
from engine.base.place import Place
from engine.base.problem import Problem, nearest_of
from engine.facts.derived import derive
from engine.facts.fields import ID, Desk, Reference
from engine.facts.files import FactFile
from engine.facts.nodes import Entry, Fields, Text
from engine.facts.reading import read_record
from engine.facts.records import Record
from engine.facts.sections import NAMED, SECTIONS, noun, one_of
from engine.facts.tables import Part, Table, Tables
from engine.facts.yamlfile import Sheet, read_sheet

Key = tuple[str, str]  # section and id
_WORDS = ("words", "shared")  # their ids are words of the language, not names of records


@compact
class Draft:
    """A record that is good in itself; what it refers to is still to be found."""

    record: Record
    references: tuple[Reference, ...]
    sheet: Sheet


def read_part(files: Sequence[FactFile], earlier: Tables, own: bool = False, in_python: bool = False) -> Part:
    """What the files add to the tables. `own`: they are the user's gear. `in_python`: without the parser in C."""
    drafts: dict[Key, Draft] = {}
    refused: set[Key] = set()
    sheets: list[Sheet] = []
    for file in files:
        sheet = Sheet(file.shown, "") if file.problem else read_sheet(file.shown, file.data, in_python)
        sheets.append(sheet)
        if file.problem:
            sheet.problems.append(file.problem)
        elif sheet.fields is not None:
            _read_sections(sheet, sheet.fields, earlier, own, drafts, refused)
    _drop_dangling(drafts, refused, earlier, [sheet for sheet in sheets if not sheet.whole])
    records: dict[str, dict[str, Any]] = {section: {} for section in SECTIONS}
    for (section, record_id), draft in drafts.items():
        records[section][record_id] = draft.record
    written = frozenset(record_id for _, record_id in drafts)
    derive(records, earlier)
    problems = [problem for sheet in sheets for problem in sorted(sheet.problems, key=_position)]
    return Part({section: Table(found) for section, found in records.items()}, written, tuple(problems))


def _position(problem: Problem) -> Place:
    return problem.place


def _read_sections(
    sheet: Sheet, fields: Fields, earlier: Tables, own: bool, drafts: dict[Key, Draft], refused: set[Key]
) -> None:
    for section, (line, column, node) in fields.entries.items():
        if section not in SECTIONS:
            sheet.tell(line, column, f"key '{section}'", "a kind of record", nearest_of(section, SECTIONS))
            continue
        if isinstance(node, Text) and node.empty:
            continue
        if not isinstance(node, Fields):
            Desk(sheet).refuse(node, section, "a mapping, the id of each record before its keys")
            continue
        for record_id, entry in node.entries.items():
            key = (section, record_id)
            desk = Desk(sheet)
            if section not in _WORDS and not ID.fullmatch(record_id):
                near = re.sub(r"[^A-Za-z0-9.:_+-]+", "-", record_id).strip("-.:_+") or None
                sheet.tell(entry.line, entry.column, f"id '{record_id}'", "an id of letters, digits and '-'", near)
            record, overrides = read_record(section, record_id, entry, desk, own)
            clear = _takes_its_place(key, entry, overrides, sheet, earlier, drafts)
            if record is not None and clear:
                drafts[key] = Draft(record, tuple(desk.references), sheet)
            elif key not in drafts:
                refused.add(key)


def _takes_its_place(
    key: Key, entry: Entry, overrides: bool, sheet: Sheet, earlier: Tables, drafts: dict[Key, Draft]
) -> bool:
    """Whether no other record stands there, or one of an earlier layer that it says it overrides."""
    section, record_id = key
    called = f"{noun(section)} '{record_id}'"
    if key in drafts:
        place = drafts[key].record.place
        sheet.tell(entry.line, entry.column, f"{called} again", f"an id of its own (it stands at {place} already)")
        return False
    before = earlier[section].get(record_id)
    # what the program itself supplies has no place, and anybody may say it in other words
    if before is not None and before.place.line and not overrides:
        expected = f"an id of its own, or 'overrides: yes' (it stands at {before.place} already)"
        sheet.tell(entry.line, entry.column, f"{called} again", expected)
        return False
    if overrides and before is None:
        expected = f"{one_of(section)} of earlier facts to override"
        sheet.tell(entry.line, entry.column, called, expected, nearest_of(record_id, earlier[section]))
        return False
    return True


def _drop_dangling(drafts: dict[Key, Draft], refused: set[Key], earlier: Tables, broken: Sequence[Sheet]) -> None:
    """Takes out the records that refer to nothing, and then those that refer to these; tells only what is no echo."""
    told: set[tuple[str, Reference]] = set()
    again = True
    while again:
        again = False
        for key, draft in list(drafts.items()):
            gone = [r for r in draft.references if (r.section, r.id) not in drafts and r.id not in earlier[r.section]]
            if not gone:
                continue
            for reference in gone:
                echo = (reference.section, reference.id) in refused or _in_broken(reference.id, broken)
                if not echo and (draft.sheet.file, reference) not in told:
                    told.add((draft.sheet.file, reference))
                    _tell_missing(reference, draft.sheet, drafts, earlier)
            del drafts[key]
            refused.add(key)
            again = True


def _in_broken(record_id: str, broken: Sequence[Sheet]) -> bool:
    """Whether a file that could not be read would have held the record."""
    line = re.compile(rf"^\s*[\"']?{re.escape(record_id)}[\"']?\s*:", re.MULTILINE)
    return any(line.search(sheet.text) for sheet in broken)


def _tell_missing(reference: Reference, sheet: Sheet, drafts: dict[Key, Draft], earlier: Tables) -> None:
    section = reference.section
    known = {record_id: earlier[section][record_id] for record_id in earlier[section]}
    known |= {record_id: draft.record for (of, record_id), draft in drafts.items() if of == section}
    near = _by_name(reference.id, section, known) or nearest_of(reference.id, known)
    called = "source" if section == "sources" else reference.key
    expected = f"{one_of(section)} in the facts"
    sheet.tell(reference.line, reference.column, f"{called} '{reference.id}'", expected, near)


def _by_name(word: str, section: str, known: dict[str, Any]) -> str | None:
    """The id of the record that the word is the name of."""
    named = Table(known).called(section) if section in NAMED else ()
    return next((record_id for phrase, record_id in named if phrase.casefold() == word.casefold()), None)
