"""Questions answered on standard output, one after the other, as text or as JSON."""

from __future__ import annotations

import sys
from collections.abc import Iterable

from engine.answers.parts.answer import NOT_UNDERSTOOD, Answer, Line
from engine.ask import Desk
from engine.doors.columns import USUAL, columns
from engine.talk import Talk
from grammar.questions import Unread


def width() -> int:
    """Columns of the terminal; for a pipe, a line that is easy to read."""
    return columns() if sys.stdout.isatty() else USUAL


def say(desk: Desk, text: str, as_record: bool, colour: bool) -> int:
    """Answer one question on standard output and give its status."""
    answer = asked(desk, text)
    show(desk, answer, as_record, colour)
    return answer.status


def show(desk: Desk, answer: Answer, as_record: bool, colour: bool) -> None:
    """The answer on standard output: as a JSON record, else as text for the width there is."""
    if as_record:
        from engine.render.record import as_json

        print(as_json(answer, None if answer.unread else desk.knowledge), flush=True)
    else:
        from engine.render.terminal import shown

        print(shown(answer, width(), colour), flush=True)


def asked(desk: Desk, text: str, talk: Talk | None = None) -> Answer:
    """The answer; a fault of the program's own costs one question, not the talk."""
    try:
        return desk.ask(text, talk)
    except Exception as fault:
        from engine.base.plain import plain

        found = f"a fault of its own ({type(fault).__name__}: {plain(str(fault))})"
        wanted = "please report it with your question"
        unread = Unread(text, 1, found, wanted)
        return Answer(text, None, NOT_UNDERSTOOD, (Line("ask", f"{found}; {wanted}"),), unread=unread)


def _is_comment(text: str) -> bool:
    # "#2" is the second one of what was listed
    return text.startswith("#") and not text[1:2].isdecimal()


def answer_lines(desk: Desk, lines: Iterable[str], as_record: bool, colour: bool, greet: bool = False) -> int:
    """A talk over a pipe or a plain terminal: a question a line, blank lines and comments passed over.

    Gives the highest status of its lines.
    """
    talk = Talk()
    worst = 0
    if greet:
        print("Ask a question, or 'help'; 'quit' leaves.", flush=True)
    first = True
    for line in lines:
        text = line.strip()
        if not text or _is_comment(text):
            continue
        if not first and not as_record:
            print(flush=True)
        first = False
        answer = asked(desk, text, talk)
        show(desk, answer, as_record, colour)
        worst = max(worst, answer.status)
        if answer.leaves:
            break
    return worst
