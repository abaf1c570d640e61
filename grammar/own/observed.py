"""What the user saw of a lens on a body: 'avocet reaches infinity on the skiff with the plate: I tried it'."""

from __future__ import annotations

import re
from itertools import pairwise
from typing import Final

from grammar.hearing import Heard, hear
from grammar.own.stating import Mark, marks_of
from grammar.questions import Question, Taught, Thing
from grammar.words.atoms import key_of
from grammar.words.lexicon import Lexicon

SECTION: Final = "observations"
_LENGTH: Final = (
    r"\s*(?:about|only|roughly|at|to|is|of|than|by)?\s*"
    r"(\d+(?:[.,]\d+)?)\s*(mm|cm|m|metres?|meters?|ft|feet|foot|in|inch|inches|\"|')(?!\w)"
)
_UNITS: Final = {"f": "ft", "'": "ft", "i": "in", '"': "in"}
_SEEN: Final = {"saw-infinity": ("infinity", "yes"), "saw-short": ("infinity", "no")}
_ENDS: Final = {"saw-far": "far", "saw-near": "near"}
_OUTCOMES: Final = frozenset([*_SEEN, *_ENDS, "saw-what"])


def observed(text: str, line: str, lexicon: Lexicon, before: Question | None) -> Question | None:
    """The observation that a line tells, or takes back; None where it tells none, or does not say that it was tried."""
    if not _tells_outcome(line, lexicon):
        return None
    marks = marks_of(line, lexicon)
    tells = {mark.does for mark in marks}
    asked = [mark for mark, after in pairwise(marks) if mark.does == "asks" and after.does == "saw-tried"]
    if asked or not marks or marks[0].does == "asks" or _is_outcome_asked(marks):
        return None  # 'will it reach ...', 'I have not tried it'
    forgets = bool(marks) and marks[0].does == "forget"
    if forgets and not any(one.startswith("saw-") for one in tells):
        return None
    if not forgets and ("saw-tried" not in tells or not tells & (_SEEN.keys() | _ENDS.keys())):
        return None
    fields, rest = _outcome(line, marks)
    if not fields and not forgets:
        return None
    heard = hear(rest, lexicon)
    return _put(text, fields, heard, before, forgets)


def _tells_outcome(line: str, lexicon: Lexicon) -> bool:
    """Whether a phrase for an outcome can stand in the line: cheap to know, and most lines hold none."""
    flat = key_of(line)
    return any(does in _OUTCOMES and key in flat for key, does in lexicon.words.teaching.items())


def _is_outcome_asked(marks: list[Mark]) -> bool:
    """'found a C lens, E body. will it hit infinity': what would be seen is asked for, at most a word behind that."""
    seen = [at for at, mark in enumerate(marks) if mark.does in _SEEN or mark.does in _ENDS]
    return any(mark.does == "asks" for at in seen for mark in marks[max(0, at - 2) : at])


def _outcome(line: str, marks: list[Mark]) -> tuple[dict[str, str], str]:
    """What was seen, and the line without the words that told it."""
    fields: dict[str, str] = {}
    cut: list[tuple[int, int]] = []
    for mark in marks:
        if mark.does in _SEEN:
            key, value = _SEEN[mark.does]
            fields[key] = value
            cut.append((mark.start, mark.end))
        elif mark.does in _ENDS:
            found = re.compile(_LENGTH, re.IGNORECASE).match(line, mark.end)
            if found is not None:
                unit = found.group(2).casefold()
                unit = unit if unit in ("mm", "cm", "m", "in") else _UNITS.get(unit[0], "m")
                fields[_ENDS[mark.does]] = f"{found.group(1).replace(',', '.')} {unit}"
                cut.append((mark.start, found.end()))
        elif mark.does in ("saw-tried", "forget", "saw-what"):
            cut.append((mark.start, mark.end))
    if "far" in fields:
        fields["infinity"] = "no"
    for start, end in sorted(cut, reverse=True):
        line = f"{line[:start]}, {line[end:]}"
    return fields, line


def _put(text: str, fields: dict[str, str], heard: Heard, before: Question | None, forgets: bool) -> Question:
    """The statement with the lens, the body and the rings it names, or those of the question before."""
    cast = heard.cast
    rings = (*cast.pieces, *cast.using)
    ends = {mount.column for part in rings for mount in part.mounts}
    told_lenses = [part for part in cast.lenses if not part.is_bare]
    # 'it ... with the C to E ring': the C is that of the ring, and 'it' the lens spoken of
    apart = [part for part in told_lenses if part.named or not any(mount.column in ends for mount in part.mounts)]
    lenses = [part.thing() for part in (apart if before is not None and before.lens is not None else told_lenses)]
    bodies = [part.thing() for part in cast.bodies if not part.is_bare]
    pieces = [part.thing() for part in rings]
    lens = lenses[0] if lenses else before.lens if before else None
    body = bodies[0] if bodies else before.body if before else None
    adapters = tuple(pieces) or (before.adapters if before and not lenses and not bodies else ())
    if heard.readings.f_number is not None:
        fields["f_number"] = f"f/{heard.readings.f_number:g}"
    told = {
        "lens": lens.id if lens is not None and lens.kind == "lens" and lens.id else "",
        "body": body.id if body is not None and body.kind == "body" and body.id else "",
        "with": ", ".join(thing.id for thing in adapters if thing.id and thing.kind == "adapter"),
    }
    rows = tuple((key, value) for key, value in (told | fields).items() if value)
    return Question(
        text, "forget" if forgets else "teach", _one(lens), _one(body), adapters,
        f_number=heard.readings.f_number, number=heard.readings.number, feet=heard.readings.feet,
        follows=before is not None and not (lenses and bodies), taught=Taught(SECTION, "", "", rows),
    )  # fmt: skip


def _one(thing: Thing | None) -> tuple[Thing, ...]:
    return (thing,) if thing is not None else ()
