"""What can be done to the user's gear file: a record appended or dropped, a field set; each with what undoes it."""

from __future__ import annotations

from engine.base.compact import compact
from engine.base.place import Place
from engine.facts.splice import Patch, Value


@compact
class Append:
    """A new record. `fields`: key -> value in the file's notation; `comment`: put on a line above it."""

    section: str
    id: str
    fields: Value
    comment: str = ""
    back: Patch | None = None  # where it brings back what was dropped


@compact
class SetField:
    """A field of a record set to a text in the file's notation, or taken out (None); `comment`: put on its line."""

    section: str
    id: str
    key: str
    value: str | None
    comment: str = ""
    back: Patch | None = None  # where it undoes another


@compact
class Drop:
    """A record taken out, together with a dated comment on the line above it."""

    section: str
    id: str
    back: Patch | None = None  # where it undoes an Append


Edit = Append | SetField | Drop


@compact
class Done:
    """The file is written. `inverse` undoes the edit; `place`: where the record or field stands, or stood."""

    inverse: Edit
    place: Place


def path_of(edit: Edit) -> tuple[str, ...]:
    """Section, id and, where one field is meant, its key."""
    return (edit.section, edit.id, edit.key) if isinstance(edit, SetField) else (edit.section, edit.id)


def inverse_of(edit: Edit, before: Value, back: Patch) -> Edit:
    """What undoes the edit; `before`: what stood under its path."""
    match edit:
        case Append():
            return Drop(edit.section, edit.id, back)
        case Drop():
            return Append(edit.section, edit.id, before, back=back)
        case SetField():
            return SetField(edit.section, edit.id, edit.key, before if isinstance(before, str) else None, back=back)
