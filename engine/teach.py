"""Teaching within a talk: what is told is proposed, written after a 'yes', and can be undone."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from pathlib import Path

from engine.answers import teaching
from engine.answers.parts.answer import Answer
from engine.answers.parts.resolve import Missing
from engine.base.compact import replace
from engine.base.problem import Problem
from engine.facts.catalogue import Catalogue
from engine.facts.files import LARGEST, shown_path, without_waiting
from engine.facts.gearedits import Edit
from engine.facts.gearfile import apply_all, edited
from engine.talk import Pending, Talk
from grammar.questions import Question, Thing

_NOUNS = {"lenses": "lens", "bodies": "body", "adapters": "adapter"}


def propose(question: Question, catalogue: Catalogue, path: Path | None, talk: Talk | None) -> Answer:
    """What would be written. `talk`: where it waits for a 'yes'; None where there is nothing to wait in."""
    waited = talk.pending if talk is not None else None
    answer = _answer(question, catalogue, path, talk)
    if talk is None or waited is None or (question.intent == "forget" and talk.pending is None):
        return answer
    if talk.pending is waited:  # this could not be proposed: a 'yes' now must not write what was told before
        talk.pending = None
    kept = talk.pending is not None and _fields(waited.question) <= _fields(talk.pending.question)
    return answer if kept else talk.with_note(answer)


def _fields(question: Question) -> set[tuple[str, str]]:
    taught = question.taught
    return {row for row in taught.fields if row[0] != "name"} if taught is not None else set()


def _answer(question: Question, catalogue: Catalogue, path: Path | None, talk: Talk | None) -> Answer:
    if path is None:
        return teaching.refused(
            question,
            "Nothing is written here: no gear file is named. Start with --gear FILE, and what you tell is kept in it.",
        )
    if question.taught is not None and not question.taught.section:
        return _propose_undo(question, path, talk)
    if question.taught is not None and question.taught.section == "observations":
        from engine.answers.seat.observing import completed

        whole = completed(question, catalogue, talk.rows if talk is not None else ())
    elif question.taught is not None and question.taught.section == "shared":
        whole = question
        if question.intent == "forget" and question.taught.id not in catalogue.gear_ids:
            whole = Missing("word", f"Nothing is kept of what you mean by {question.taught.name}.")
    else:
        whole = teaching.completed(question, catalogue)
    if isinstance(whole, Missing):
        return teaching.asks(question, whole)
    others = teaching.other_mounts(whole, catalogue)
    return _proposed(whole, teaching.edits_of(whole, catalogue, _today()), path, talk, others=others)


def _propose_undo(question: Question, path: Path, talk: Talk | None) -> Answer:
    if talk is not None and talk.pending is not None:
        talk.pending = None
        return teaching.dropped(question, question.text)
    if talk is None or not talk.undo:
        return teaching.refused(question, "Nothing was written in this talk. 'forget NAME' takes a thing out.")
    return _proposed(question, talk.undo[-1], path, talk, undoes=True)


def _proposed(
    question: Question,
    edits: tuple[Edit, ...],
    path: Path,
    talk: Talk | None,
    undoes: bool = False,
    others: tuple[str, ...] = (),
) -> Answer:
    lines = _preview(path, edits)
    if isinstance(lines, Problem):
        return teaching.refused(question, f"{lines}.")
    if talk is not None:
        talk.pending = Pending(question, edits, undoes) if lines else None
    return teaching.proposal(question, lines, shown_path(str(path)), talk is not None, others)


def _preview(path: Path, edits: tuple[Edit, ...]) -> tuple[str, ...] | Problem:
    """The lines that come ('+') and go ('-'), with nothing written."""
    from difflib import ndiff

    shown = shown_path(str(path))
    try:
        with open(path, "rb", opener=without_waiting) as file:
            before: bytes | None = file.read(LARGEST + 1)
    except FileNotFoundError:
        before = None
    except OSError as error:
        from engine.base.place import Place

        return Problem(Place(shown, 1, 1), (error.strerror or "an error").lower(), "a file that can be read")
    data = before
    for edit in edits:
        made = edited(data, edit, shown)
        if isinstance(made, Problem):
            return made
        data = made[0]
    one, other = ((text or b"").decode("utf-8-sig", "replace").splitlines() for text in (before, data))
    rows = tuple(line for line in ndiff(one, other) if line[:2] in ("+ ", "- "))
    return tuple(row for row in rows if row[2:].strip())


def settle(talk: Talk, yes: bool, text: str, path: Path, reload: Callable[[], tuple[Problem, ...]]) -> Answer:
    """The waiting edits written, or dropped. `reload` reads the facts anew and gives what is wrong with them then."""
    pending = talk.pending
    assert pending is not None
    talk.pending = None
    question = pending.question
    if not yes:
        return teaching.dropped(question, text)
    made = apply_all(path, pending.edits)
    if isinstance(made, Problem):
        reload()
        return teaching.refused(question, f"Not written. {made}.")
    inverse = tuple(one.inverse for one in reversed(made))
    problem = next(iter(reload()), None)
    if problem is not None:
        apply_all(path, inverse)
        reload()
        return teaching.refused(question, f"Not written. {problem}.")
    if pending.undoes:
        talk.undo.pop()
    else:
        talk.undo.append(inverse)
    return teaching.written(_about_own(question), text, pending.edits[-1], str(made[-1].place), pending.undoes)


def _about_own(question: Question) -> Question:
    """The question about the thing as it now stands in the file, so that 'it' is that thing."""
    taught = question.taught
    if taught is None or taught.section not in _NOUNS or question.intent == "forget":
        return question
    thing = Thing(_NOUNS[taught.section], (taught.id,), taught.name)
    own = replace(taught, fields=())
    if taught.section == "lenses":
        return question.with_(lenses=(thing,), taught=own)
    if taught.section == "bodies":
        return question.with_(bodies=(thing,), taught=own)
    return question.with_(adapters=(), taught=own)


def _today() -> str:
    return datetime.date.today().isoformat()
