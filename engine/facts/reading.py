"""One record from its node: every key read, what is missing told, what several keys say together put in place."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Final

from engine.base.interval import UNKNOWN, Interval, is_known
from engine.base.place import Place
from engine.base.problem import nearest_of
from engine.base.span import Span
from engine.base.units import MM_PER_INCH
from engine.facts.basis import Basis
from engine.facts.fields import REFUSED, Desk, Reference, flag
from engine.facts.kinds import DRAWN_OUT
from engine.facts.nodes import Entry, Fields
from engine.facts.records import Record
from engine.facts.schema import BASIS, DIFFERENCE, KEYS
from engine.facts.sections import SECTIONS, noun, one_of

OWN_SOURCE: Final = "own"
Given = dict[str, Any]  # what the keys gave, by field


def read_record(section: str, record_id: str, entry: Entry, desk: Desk, own: bool) -> tuple[Record | None, bool]:
    """The record and whether it says that it overrides an earlier one; no record where anything in it was refused.

    `own`: it stands in the user's gear file, where name, confidence and sources may be left out.
    """
    problems = len(desk.sheet.problems)
    if not isinstance(entry.value, Fields):
        desk.refuse(entry.value, f"{noun(section)} '{record_id}'", "a mapping of its keys")
        return None, False
    keys = KEYS[section]
    given: Given = {}
    overrides = False
    for name, value in entry.value.entries.items():
        if name == "overrides":
            overrides = flag(value.value, name, desk) is True
        elif name not in keys:
            expected = f"a key of {one_of(section)}"
            desk.sheet.tell(value.line, value.column, f"key '{name}'", expected, nearest_of(name, [*keys, "overrides"]))
        elif (read := keys[name].read(value.value, name, desk)) is not REFUSED:
            given[keys[name].field or name] = read
    if own and section in ("bodies", "lenses", "adapters", "filters") and "name" not in entry.value.entries:
        given["name"] = record_id
    for name, key in keys.items():
        if key.required and name not in entry.value.entries and (key.field or name) not in given:
            _missing(section, record_id, entry, name, desk)
    if "sources" in keys:
        given["basis"] = _basis(section, record_id, entry, given, desk, own)
    if len(desk.sheet.problems) == problems and section in _TOGETHER:
        _TOGETHER[section](given, entry.value, desk, own)
    if len(desk.sheet.problems) > problems:
        return None, overrides
    place = Place(desk.sheet.file, entry.line, entry.column)
    return SECTIONS[section](id=record_id, place=place, **given), overrides


def _missing(section: str, record_id: str, entry: Entry, name: str, desk: Desk) -> None:
    desk.sheet.tell(entry.line, entry.column, f"{noun(section)} '{record_id}' without '{name}'", f"a key '{name}'")


def _basis(section: str, record_id: str, entry: Entry, given: Given, desk: Desk, own: bool) -> Basis:
    confidence, sources = given.pop("confidence", None), given.pop("sources", None)
    if own:
        return Basis(confidence or "own-measured", sources or (OWN_SOURCE,))
    assert isinstance(entry.value, Fields)
    for name in BASIS:
        if name not in entry.value.entries:
            _missing(section, record_id, entry, name, desk)
    if sources == ():
        node = entry.value.entries["sources"].value
        desk.sheet.tell(node.line, node.column, "an empty list of sources", "at least one source")
    return Basis(confidence or "", sources or ())


def _thread(given: Given, fields: Fields, desk: Desk, own: bool) -> None:
    tpi = given.pop("tpi", None)
    if tpi is None:
        return
    if "pitch" in fields.entries:
        desk.refuse(fields.entries["tpi"].value, "tpi", "either 'pitch' or 'tpi'")
    elif is_known(tpi):
        per = MM_PER_INCH
        given["pitch_mm"] = Interval(per / tpi.greatest, per / tpi.least, per / tpi.nominal)


def _mount(given: Given, fields: Fields, desk: Desk, own: bool) -> None:
    if given.get("register_mm") == "adjustable":
        given |= {"register_mm": UNKNOWN, "adjustable": True}


def _lens(given: Given, fields: Fields, desk: Desk, own: bool) -> None:
    widest, smallest = given.get("f_number"), given.get("smallest_f_number")
    if is_known(widest) and is_known(smallest) and smallest.greatest < widest.least:
        node = fields.entries["smallest_f_number"].value
        desk.refuse(node, "smallest_f_number", "an f-number no lower than 'f_number'")


def _adapter(given: Given, fields: Fields, desk: Desk, own: bool) -> None:
    thickness = given["thickness_mm"]
    given.setdefault("seat_basis", "measured" if own else "nominal")
    if own:
        given.setdefault("owned", 1)
        given.setdefault("common", "own")
    if thickness == DIFFERENCE:
        if given["seat_basis"] != "derived" and "seat_basis" in fields.entries:
            node = fields.entries["seat_basis"].value
            desk.refuse(node, "seat_basis", f"no seat_basis where thickness is '{DIFFERENCE}'")
        given |= {"thickness_mm": Span.fixed(UNKNOWN), "seat_basis": "register-difference"}
    elif given["kind"] not in DRAWN_OUT:
        ends = (thickness.shortest, thickness.longest)
        if all(is_known(end) for end in ends) and not thickness.is_fixed:
            given["thickness_mm"] = Span.fixed(Interval.between(ends[0].least, ends[1].greatest))


def _circle(given: Given, fields: Fields, desk: Desk, own: bool) -> None:
    if "lens_class" not in given:
        node = fields.entries["made_for"].value
        desk.references.append(Reference("formats", given["made_for"], "made_for", node.line, node.column))


def _advice(given: Given, fields: Fields, desk: Desk, own: bool) -> None:
    given.setdefault("names", ())
    given.setdefault("defer_to", "")


def _assumption(given: Given, fields: Fields, desk: Desk, own: bool) -> None:
    given["value"], given["unit"] = given["value"]


def _word(given: Given, fields: Fields, desk: Desk, own: bool) -> None:
    given.setdefault("means", "")


def _shared(given: Given, fields: Fields, desk: Desk, own: bool) -> None:
    likely = given.setdefault("likely", None)
    if likely is not None and likely not in given["mounts"]:
        node = fields.entries["likely"].value
        desk.refuse(node, "likely", "one of its mounts", nearest_of(likely, given["mounts"]))


_TOGETHER: Final[Mapping[str, Callable[[Given, Fields, Desk, bool], None]]] = {
    "threads": _thread,
    "mounts": _mount,
    "lenses": _lens,
    "adapters": _adapter,
    "circles": _circle,
    "advice": _advice,
    "assumptions": _assumption,
    "words": _word,
    "shared": _shared,
}
