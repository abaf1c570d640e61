"""What is taught made whole for the gear file: the edits that would be made, and what they would put there."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from engine.answers.found.narrowing import told_apart
from engine.answers.parts.answer import ANSWERED, NO, NOT_UNDERSTOOD, Answer, Line
from engine.answers.parts.resolve import Missing, body_side, lens_side, mount_words
from engine.answers.parts.wording import article, listed, small_mm
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from engine.facts.gearedits import Append, Drop, Edit, SetField
from engine.facts.records import Mount
from grammar.questions import Question, Taught
from grammar.words.atoms import key_of

LENS_FIRST: Final = "'my avocet is a 25 mm C-mount lens'."
OWN_WORD: Final = "own observation"
_REGISTER_DIFFERENCE: Final = "register difference"
_CALLED: Final = {"plain": "ring", "recessed": "cup", "extension-tube": "tube"}  # kinds of pieces, in a name of one


def completed(question: Question, catalogue: Catalogue) -> Question | Missing:
    """The question with a thing that can stand in the file: named, and with every key that a record must have."""
    taught = question.taught
    assert taught is not None
    if question.intent == "forget" or taught.id in catalogue.gear_ids:
        return _too_far_off(question, taught, catalogue) or question
    question = told_apart(question, catalogue)
    fields = _of_mount_meant(question, dict(taught.fields))
    called = taught.name or "NAME"
    if taught.section == "lenses" and "mount" not in fields:
        return Missing("lens mount", f"Which mount does it have? Say: my {called} is a 25 mm C-mount lens.")
    alike = catalogue.bodies.get(fields.pop("like", ""))
    if alike is not None:
        fields = {"mount": alike.mount, "format": alike.format, **fields}
    if taught.section == "bodies" and "format" not in fields:
        mount = catalogue.mounts[fields["mount"]]
        usual = mount.format if mount.format == mount.smallest_format else None  # the largest is the smallest usual one
        sensor = mount.formats[0] if len(mount.formats) == 1 else usual
        if sensor is None:
            return Missing("format", f"Which sensor does it have? Say: my {called} is {_body_said(mount, catalogue)}.")
        fields["format"] = sensor
    if taught.section == "adapters":
        missing = _adapter(fields, question, catalogue)
        if missing is not None:
            return missing
    name = taught.name or _free_name(taught.section, fields, catalogue)
    return question.with_(taught=Taught(taught.section, name, name, tuple(fields.items())))


def _too_far_off(question: Question, taught: Taught, catalogue: Catalogue) -> Missing | None:
    """'its register is really 45.5' of an E-mount body: no body is off by so much, so that a lens is meant."""
    body, told = catalogue.bodies.get(taught.id), dict(taught.fields).get("register", "")
    measured = re.match(r"[\d.]+(?= mm)", told)
    if question.intent == "forget" or taught.section != "bodies" or body is None or measured is None:
        return None
    mount = catalogue.mounts[body.mount]
    most = catalogue.assumptions["largest-seat-error"].value.greatest
    if not is_known(mount.register_mm) or abs(float(measured[0]) - mount.register_mm.nominal) <= most:
        return None
    has = f"{mount.designation} has {small_mm(mount.register_mm.nominal)}, and no body is off by so much"
    ask = f"{told} cannot be the register of {taught.name}: {has}. If a lens has it, tell that first: {LENS_FIRST}"
    return Missing("lens", ask)


def _of_mount_meant(question: Question, fields: dict[str, str]) -> dict[str, str]:
    """The fields with the mount that all that is said of the lens means: 'an enlarger lens, M39'."""
    lens = question.lens
    if lens is None or lens.kind != "mount" or lens.id is None or "mount" not in fields:
        return fields
    return fields | {"mount": lens.id}


def _body_said(mount: Mount, catalogue: Catalogue) -> str:
    form = catalogue.formats.get((mount.formats or ("",))[0])
    noun = f"{mount_words(mount)} {form.name if form else 'APS-C'} body"
    return f"{article(noun)} {noun}"


def _adapter(fields: dict[str, str], question: Question, catalogue: Catalogue) -> Missing | None:
    """Its mounts from the lens and body spoken of; its thickness from the registers, where it is only said to be."""
    if "front" not in fields:
        lens, body = lens_side(question.lens, catalogue), body_side(question.body, catalogue)
        if isinstance(lens, Missing) or isinstance(body, Missing):
            return Missing("adapter", "Which ring? Say: I own a C to E ring, 4.02 mm thick.")
        fields["front"], fields["rear"] = lens.mount.id, body.mount.id
    if "thickness" not in fields:
        registers = [catalogue.mounts[fields[side]].register_mm for side in ("front", "rear")]
        if fields["front"] == fields["rear"] or not all(is_known(one) for one in registers):
            return Missing("thickness", "How thick is it, from seat to seat? Say it with the thing: ', 10 mm thick'.")
        fields["thickness"] = _REGISTER_DIFFERENCE
    fields.setdefault("owned", "1")
    return None


def _free_name(section: str, fields: Mapping[str, str], catalogue: Catalogue) -> str:
    """A name of letters, digits and hyphens that nothing has yet: my-c-25mm, my-c-e-mount-ring."""
    if section == "adapters":
        kind = _CALLED.get(fields["kind"], fields["kind"])
        parts = [*dict.fromkeys((fields["front"], fields["rear"])), kind]
    elif section == "lenses":
        parts = [fields["mount"], fields.get("focal_length", "lens").replace(" ", "").replace(".", "-")]
    else:
        parts = [fields["mount"], "body"]
    stem = "-".join(("my", *parts))
    taken = {key_of(phrase) for phrase, _, _ in catalogue.names()} | {key_of(id_) for id_ in catalogue.gear_ids}
    name, number = stem, 2
    while key_of(name) in taken:
        name, number = f"{stem}-{number}", number + 1
    return name


def edits_of(question: Question, catalogue: Catalogue, date: str) -> tuple[Edit, ...]:
    """What is to be done to the gear file. `date`: as it is put into the comment beside what is written."""
    taught = question.taught
    assert taught is not None
    comment = f"{date}, {OWN_WORD}"
    if taught.section == "shared":
        from engine.answers.parts import choosing

        return choosing.edits_of(question, catalogue, comment)
    if taught.section == "observations":
        from engine.answers.seat import observing

        return observing.edits_of(question, catalogue, date, comment)
    if question.intent == "forget":
        if taught.fields:
            return tuple(SetField(taught.section, taught.id, key, None) for key, _ in taught.fields)
        from engine.answers.seat.observing import SECTION, of_thing

        seen = (Drop(SECTION, one) for one in of_thing(taught.id, catalogue))
        return (*seen, Drop(taught.section, taught.id))
    if taught.id in catalogue.gear_ids:
        ring = catalogue.adapters.get(taught.id)
        same = ("seat_basis", ring.seat_basis if ring else "")
        rows = (row for row in taught.fields if row != same)
        return tuple(SetField(taught.section, taught.id, key, value, comment) for key, value in rows)
    return (Append(taught.section, taught.id, {"name": taught.name, **dict(taught.fields)}, comment),)


def proposal(question: Question, lines: tuple[str, ...], file: str, talking: bool, others: tuple[str, ...]) -> Answer:
    """What would be written, line by line, and the question whether to. `others`: mounts that may be meant instead."""
    rows = [Line("verbatim", line) for line in lines]
    if others:
        rows.append(Line("note", f"its mount may also be {listed(others, 'or')}; say so if it is."))
    taking = all(line.startswith("-") for line in lines)
    if not lines:
        rows.append(Line("text", f"That stands in {file} already; nothing is to be written."))
    elif talking:
        rows.append(Line("ask", f"{'Take this out of' if taking else 'Write this to'} {file}? yes / no"))
    else:
        rows.append(Line("text", f"Not written to {file}: a talk ('ringpath' alone) asks and then writes it."))
    return Answer(question.text, question.intent, ANSWERED, tuple(rows), question=question)


def other_mounts(question: Question, catalogue: Catalogue) -> tuple[str, ...]:
    """Mounts that the words for a new lens or body may mean besides the likeliest."""
    taught = question.taught
    mount = dict(taught.fields).get("mount") if taught is not None else None
    things = (*question.lenses, *question.bodies)
    ids = next((thing.ids[1:] for thing in things if thing.kind == "mount" and thing.id == mount), ())
    return tuple(catalogue.mounts[one].designation for one in ids if one in catalogue.mounts)


def written(question: Question, text: str, edit: Edit, place: str, undone: bool = False) -> Answer:
    """Where it stands now, or stood, and how it is undone."""
    taken = isinstance(edit, Drop) or (isinstance(edit, SetField) and edit.value is None)
    again = "It is as it was before." if undone else "'undo' puts it back as it was."
    said = Line("text", f"{'Taken out of' if taken else 'Written to'} {place}. {again}")
    return Answer(text, question.intent, ANSWERED, (said,), question=replace(question, text=text))


def dropped(question: Question, text: str) -> Answer:
    return Answer(
        text, question.intent, ANSWERED, (Line("text", "Not written."),), question=replace(question, text=text)
    )


def refused(question: Question, why: str, status: int = NO) -> Answer:
    """Nothing is written, and why."""
    return Answer(question.text, question.intent, status, (Line("ask", why),), question=question)


def asks(question: Question, missing: Missing) -> Answer:
    """What has still to be told of the thing."""
    return refused(question, missing.ask, NOT_UNDERSTOOD)
