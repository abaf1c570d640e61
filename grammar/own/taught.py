"""A statement that teaches: what the user owns, what they have measured of it, and what of it is to be forgotten."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from grammar.own.describing_own import KEYS, Described, described, lens_fields, of_its_kind, ring_of
from grammar.own.stating import Mark, Measured, article, each_mark, left, marks_of, measured
from grammar.questions import Question, Taught, Thing, Unread
from grammar.words.atoms import key_of, smooth
from grammar.words.lexicon import Lexicon
from grammar.words.mentioned import mentioned

SECTIONS: Final = {"lens": "lenses", "body": "bodies", "adapter": "adapters"}
_NOUNS: Final = {section: kind for kind, section in SECTIONS.items()}
_TRIM: Final = " \t\r\n.!;:"
_NAME: Final = re.compile(r"[A-Za-z][A-Za-z0-9]*(?:-[A-Za-z0-9]+)*")
_KIN: Final = "kin"  # a phrase for people who may have a camera of their own
_TRIED: Final = "tried-or-seen"  # the key of words that every line holds which tells what was seen, and few questions
_OPENERS: Final = frozenset(
    ["own", "call", "forget", "mine", "the", "it", "", "field-weight", "kind-lenses", "new", "dull", "lose", "measures"]
)


def taught(text: str, lexicon: Lexicon, before: Question | None = None) -> Question | Unread | None:
    """The teaching or forgetting that the text asks for; None where it is anything else, such as a question."""
    if "?" in text:
        return None
    line = smooth(text)[0].rstrip(_TRIM)
    does = lexicon.words.teaching.get(key_of(line)) if len(line) < 60 else None
    if does == "undo" or (does == "that" and before is not None and before.taught is not None):
        return Question(text, "forget", taught=Taught(""))
    if "i mean" in line.casefold():
        from grammar.own.naming import named

        means = named(text, line, lexicon)
        if means is not None:
            return means
    seen = _observed(text, line, lexicon, before)
    if seen is not None:
        return seen
    first = next(each_mark(line, lexicon), None)
    if first is None or not (first.does in _OPENERS or first.field):
        return None
    marks = marks_of(line, lexicon)
    if len(marks) < 2 or any(mark.does == "asks" for mark in marks):
        return None
    statement = _Statement(text, line, marks, lexicon, before)
    from grammar.own.calling import called_so

    new = called_so(line, lexicon)
    return statement.named(*new) if new is not None else statement.read()


def _observed(text: str, line: str, lexicon: Lexicon, before: Question | None) -> Question | None:
    if not mentioned(line, {_TRIED: lexicon.words.mentions.get(_TRIED, ())}):
        return None
    from grammar.own.observed import observed

    return observed(text, line, lexicon, before)


class _Statement:
    """One line that may be a statement about the user's own gear."""

    def __init__(self, text: str, line: str, marks: list[Mark], lexicon: Lexicon, before: Question | None) -> None:
        self.text, self.line, self.marks = text, line, marks
        self.lexicon, self.before = lexicon, before

    def read(self) -> Question | Unread | None:
        first = self.marks[0]
        if first.does == "forget":
            return self._forgotten(self.line[first.end :])
        if first.does == "lose" or self.marks[-1].does == "gone":
            return self._lost(self.line[first.end :] if first.does == "lose" else self.line[: self.marks[-1].start])
        if first.does == "call":
            return self._called(self.line[first.end :].strip())
        if first.does == "own":
            return self._owned(self.line[first.end :])
        found = [mark for mark in self.marks if mark.does in ("is", "measures")]
        found = found or [mark for mark in self.marks if mark.field]  # 'weighs', 'sticks out'
        return self._said(found[0]) if found else None

    def named(self, name: str, what: Described) -> Question | Unread:
        """What a new thing is called, in whatever order that was told."""
        return self._new(what, name) if self._is_free(name) else self._taken(name)

    def _owned(self, rest: str) -> Question | Unread | None:
        named = next((mark for mark in marks_of(rest, self.lexicon) if mark.does == "named"), None)
        name = rest[named.end :].strip() if named else ""
        what = described(rest[: named.start] if named else rest, self.lexicon)
        if what is None:
            return None
        fields = dict(what.fields)
        known = {"mount"} if self.before is None else {"mount", "f_number"}
        if what.section == "lenses" and not name and not known & set(fields):
            return None  # 'I have a 135', said on the way, answers or asks; it teaches nothing that could be kept
        return self._new(what, name) if not name or self._is_free(name) else self._taken(name)

    def _called(self, name: str) -> Question | Unread | None:
        before = self.before
        if before is None or " " in name:
            return None
        if not self._is_free(name):
            return self._taken(name)
        if before.taught is not None and before.taught.section:
            if before.taught.id in self.lexicon.own:
                return None  # a name once written is a matter of the file
            return self._of_before(replace(before.taught, id=name, name=name))
        thing = before.lens
        if thing is not None and thing.kind == "mount":
            return self._of_before(Taught("lenses", name, name, lens_fields(thing)))
        return None

    def _said(self, at: Mark) -> Question | Unread | None:
        subject, rest = self.line[: at.start], self.line[at.end :]
        if at is self.marks[0] and not at.field:  # 'I measured the plank at 27.4'
            name = self._name_in(rest)
            end = rest.casefold().find(name.casefold()) + len(name)
            subject, rest = (rest[:end], rest[end:].removeprefix("'s")) if name else (subject, rest)
        name = self._name_in(subject)
        own = self._own(name)
        if own is None and name and not at.field:
            what = described(rest, self.lexicon) if article(rest, self.lexicon) else None
            mine = marks_of(subject, self.lexicon)[0].does == "mine"
            if what is not None and (self._is_described(name) or self._is_a_person(name)):
                return None  # 'my C lens is a 12.5' tells of the lens talked about, 'my son has a Z' of nobody's gear
            if what is not None and not self._field_in(subject) and _NAME.fullmatch(name):
                return self._new(what, name) if self._is_free(name) else self._taken(name) if mine else None
            return None
        said = f"{left(subject, name)} {rest}" if name else f"{subject} {rest}"
        reading = self._measured(f"{at.text} {said}" if at.field else said)
        kept = of_its_kind(own.section, rest, self.lexicon) if reading is None and own is not None and name else None
        if own is not None and kept is not None:
            return self._told(replace(own, fields=kept))
        if reading is None:
            what = described(rest, self.lexicon) if own and article(rest, self.lexicon) else None
            same = own is not None and what is not None and what.section == own.section
            return self._told(replace(own, fields=what.fields)) if same and own and what else None
        own = own or (None if name else self._pointed(subject, at))
        if own is None:
            talked_of = self.before is not None and self.before.lens is not None  # it is that lens's, of no own gear
            asks = not name and at.does == "measures" and reading.key and not talked_of
            return self._whose(subject) if asks else None
        return self._with(own, reading, bool(name))

    def _is_a_person(self, name: str) -> bool:
        """Whether it is one of the family, or a friend, whose camera is no own gear."""
        return bool(mentioned(name, {_KIN: self.lexicon.words.mentions.get(_KIN, ())}))

    def _measured(self, said: str) -> Measured | None:
        """The measurement, less the words that only point at the thing."""
        for mark in reversed(marks_of(said, self.lexicon)):
            if mark.does.startswith(("kind-", "mine", "the", "it")):
                said = f"{said[: mark.start]} {said[mark.end :]}"
        return measured(said, self.lexicon)

    def _with(self, own: Taught, reading: Measured, named: bool) -> Question | Unread | None:
        key = reading.key or ("thickness" if own.section == "adapters" else "")
        key = key or ("focal_length" if named and own.section == "lenses" and reading.value.endswith("mm") else "")
        if key not in KEYS[own.section]:
            if not reading.key:
                return None
            can = ", ".join(sorted(one.replace("_", " ") for one in KEYS[own.section]))
            return self._refused(key.replace("_", " "), f"what can be measured of a {_NOUNS[own.section]}: {can}")
        fields = dict(own.fields) | {key: reading.value}
        if key == "thickness":
            fields["seat_basis"] = "measured"
        return self._told(replace(own, fields=tuple(fields.items())))

    def _pointed(self, subject: str, at: Mark) -> Taught | None:
        """'it', 'its register', 'the ring': the thing of the question before, its own or one to be kept."""
        marks = marks_of(subject, self.lexicon)
        before = self.before
        if before is None or not all(mark.does for mark in marks):
            return None
        section = next((mark.does.removeprefix("kind-") for mark in marks if mark.does.startswith("kind-")), "")
        told = before.taught
        if told is not None and told.section and section in ("", told.section):
            return replace(told, fields=() if told.id in self.lexicon.own else told.fields)
        for thing in (*before.lenses, *before.bodies, *before.adapters):
            fits = SECTIONS.get(thing.kind) == section if section else thing.kind in SECTIONS
            if fits and thing.id in self.lexicon.own:
                return Taught(SECTIONS[thing.kind], thing.id or "", self._shown(thing))
        if at.does != "measures":
            return None  # a follow-up question may well say 'the barrel is 30 mm'
        if section == "adapters":
            return ring_of(before)
        lens = before.lens
        if section in ("", "lenses") and lens is not None and lens.kind == "mount" and lens.focal_length_mm:
            return Taught("lenses", fields=lens_fields(lens))
        return None

    def _forgotten(self, rest: str) -> Question | Unread | None:
        name = self._name_in(rest)
        own = self._own(name)
        if own is None:
            if not _NAME.fullmatch(name) or self.lexicon.words.knows(name.casefold()):
                return None
            near = self.lexicon.nearest(name, tuple(SECTIONS))
            return self._refused(name, "the name of a thing of your own gear; 'list gear' shows them", near[:1])
        others = [mark for mark in marks_of(left(rest, name), self.lexicon) if not mark.does]
        if others:
            return self._refused(others[0].text, "one thing to forget, such as 'forget the register of my avocet'")
        key = self._field_in(left(rest, name))
        return self._about(Question(self.text, "forget", taught=replace(own, fields=((key, ""),) if key else ())), own)

    def _lost(self, rest: str) -> Question | None:
        """'sold the knot', 'knot is gone': one thing of one's own, and nothing else that is said of it."""
        name = self._name_in(rest)
        own = self._own(name)
        if own is None or any(not mark.does for mark in marks_of(left(rest, name), self.lexicon)):
            return None
        return self._about(Question(self.text, "forget", taught=replace(own, fields=())), own)

    def _new(self, what: Described, name: str) -> Question | Unread:
        if what.section == "lenses" and "mount" not in dict(what.fields):
            return self._refused(what.thing.words or name, "its mount as well, such as 'a 25 mm C-mount lens'")
        own = Taught(what.section, name, name, what.fields)
        question = Question(self.text, "teach", taught=own)
        role = "lenses" if what.section == "lenses" else "bodies" if what.section == "bodies" else "adapters"
        return self._with_before(question.with_(**{role: (what.thing,)}))

    def _told(self, own: Taught) -> Question:
        return self._about(Question(self.text, "teach", taught=own), own)

    def _about(self, question: Question, own: Taught) -> Question:
        """The question with the thing in its role, and the rest of the talk kept."""
        if own.id in self.lexicon.own:
            thing = Thing(_NOUNS[own.section], (own.id,), own.name)
            return self._with_before(question.with_(**{own.section: (thing,)}))
        return self._with_before(question)

    def _of_before(self, own: Taught) -> Question:
        return self._with_before(Question(self.text, "teach", taught=own))

    def _with_before(self, question: Question) -> Question:
        if self.before is None:
            return question
        lenses = question.lenses or self.before.lenses
        return question.with_(lenses=lenses, bodies=question.bodies or self.before.bodies, follows=True)

    def _name_in(self, subject: str) -> str:
        """The name that a subject holds: what is left without its small words and its measure."""
        own = [key for key in self._own_keys() if key in key_of(subject)]
        for key in sorted(own, key=len, reverse=True):
            found = re.search(r"[\s\-/._]*".join(map(re.escape, key)) + r"(?='?s?\b)", subject.casefold())
            if found and not subject[: found.start()][-1:].isalnum():
                return subject[found.start() : found.end()]
        bare = re.sub(r"^(?:my|our|the)\s+", "", subject.strip(), flags=re.IGNORECASE)
        if "-" in bare and _NAME.fullmatch(bare):
            return bare  # 'my-cup' is one name, whatever 'my' may mean
        left = [mark for mark in marks_of(subject, self.lexicon) if not mark.does]
        return subject[left[0].start : left[-1].end].removesuffix("'s") if left else ""

    def _own_keys(self) -> list[str]:
        own, names = self.lexicon.own, self.lexicon.names
        return [key for key, (_, kind, id_) in names.items() if id_ in own and kind in SECTIONS] if own else []

    def _own(self, name: str) -> Taught | None:
        hit = self.lexicon.names.get(key_of(name)) if name else None
        if hit is not None and hit[1] in SECTIONS and hit[2] in self.lexicon.own:
            return Taught(SECTIONS[hit[1]], hit[2], self.lexicon.name_for(hit[1], hit[2]))
        told = self.before.taught if self.before else None
        return told if name and told and told.section and key_of(told.id) == key_of(name) else None

    def _shown(self, thing: Thing) -> str:
        return self.lexicon.name_for(thing.kind, thing.id or "")

    def _field_in(self, subject: str) -> str:
        return next((mark.field for mark in marks_of(subject, self.lexicon) if mark.field), "")

    def _is_described(self, name: str) -> bool:
        """Whether what stands for the name is that of a mount, by which a thing is described."""
        hit = self.lexicon.names.get(key_of(name))
        return hit is not None and hit[1] == "mount" and self.before is not None and self.before.lens is not None

    def _is_free(self, name: str) -> bool:
        """Whether it can be a new name: letters, digits and hyphens, no word of the language and no name yet."""
        key, words = key_of(name), self.lexicon.words
        taken = key in self.lexicon.names or key in self.lexicon.spoken_of or key in words.cues or key in words.teaching
        return bool(_NAME.fullmatch(name)) and len(name) <= 40 and not taken and not words.knows(name.casefold())

    def _taken(self, name: str) -> Unread:
        return self._refused(name, "a name that is no mount, no word and no name yet: letters, digits and hyphens")

    def _whose(self, subject: str) -> Unread:
        return self._refused(
            subject.strip() or self.text,
            "a thing of your own: say its name, or first 'my NAME is a 25 mm C-mount lens'",
        )

    def _refused(self, found: str, expected: str, near: list[str] | None = None) -> Unread:
        at = self.text.casefold().find(found.casefold())
        return Unread(self.text, max(at, 0) + 1, found, expected, near[0] if near else None)
