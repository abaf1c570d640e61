"""The prompt: type a question, read the answer; history across runs, ctrl-c drops a line, ctrl-d leaves."""

from __future__ import annotations

import gc
import os
import textwrap
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Final

from prompt_toolkit import PromptSession
from prompt_toolkit.application import get_app
from prompt_toolkit.completion import CompleteEvent, Completer, Completion
from prompt_toolkit.document import Document
from prompt_toolkit.formatted_text import StyleAndTextTuples
from prompt_toolkit.history import History
from prompt_toolkit.lexers import Lexer
from prompt_toolkit.output import ColorDepth
from prompt_toolkit.styles import Style

from engine.answers.parts.answer import Answer
from engine.ask import Desk
from engine.base.plain import plain
from engine.doors.completing import candidates
from engine.doors.highlighting import as_typed, parts_of
from engine.doors.history import asked_before, keep
from engine.doors.offers import Offers, offers_of
from engine.doors.paging import on_terminal
from engine.doors.saying import asked, width
from engine.facts.gearplace import history_path
from engine.render.terminal import shown
from engine.talk import Talk
from grammar.words.lexicon import Lexicon

GREETING: Final = "Which lens, on which body? Ask, or type 'help'. Tab offers words, ctrl-d leaves."
NOTHING_YET: Final = "nothing remembered; tab shows examples"
# the terminal's own sixteen colours, and never a colour alone: what is understood is told with every answer too
STYLE: Final = Style.from_dict(
    {
        "name": "bold ansicyan", "number": "bold ansigreen", "word": "bold", "bottom-toolbar": "noreverse",
        "completion-menu": "fg:default bg:default", "completion-menu.completion": "fg:default bg:default",
        "completion-menu.completion.current": "noinherit reverse", "scrollbar.background": "bg:default",
        "completion-menu.meta.completion": "fg:default bg:default", "scrollbar.button": "reverse",
        "completion-menu.meta.completion.current": "noinherit reverse",
    }
)  # fmt: skip


_NUMBERED: Final = "2 four"  # a number in figures and one in words


class Guide(Completer, Lexer):
    """What is known, while a line is typed: made anew where the gear has changed what things are called."""

    def __init__(self, desk: Desk, memory: Talk, columns: Callable[[], int]) -> None:
        self._desk, self._memory, self._columns = desk, memory, columns
        self._of: Lexicon | None = None
        self._made: Offers | None = None

    @property
    def offers(self) -> Offers:
        if self._made is None or self._of is not self._desk.lexicon:
            self._of = self._desk.lexicon
            self._made = offers_of(self._desk.catalogue, as_typed(self._of))
            parts_of(_NUMBERED, self._made.lexicon)  # or the first number that is typed waits for how they are written
            gc.freeze()  # or every so many keys all that is known is looked through for garbage
        return self._made

    def get_completions(self, document: Document, complete_event: CompleteEvent) -> Iterable[Completion]:
        line, longest = document.current_line_before_cursor, max(self._columns() // 2 - 4, 12)
        for row in candidates(line, self.offers, self._desk.catalogue, self._memory.question is not None):
            yield Completion(row.text, -row.back, plain(row.text, longest), row.says)

    def lex_document(self, document: Document) -> Callable[[int], StyleAndTextTuples]:
        lines, lexicon = document.lines, self.offers.lexicon

        def fragments(number: int) -> StyleAndTextTuples:
            text = lines[number] if number < len(lines) else ""
            return [(f"class:{sort}" if sort else "", text[start:end]) for start, end, sort in parts_of(text, lexicon)]

        return fragments


class PrivateHistory(History):
    """Questions asked, kept in a file of the user's own."""

    def __init__(self, path: Path) -> None:
        super().__init__()
        self._path = path

    def load_history_strings(self) -> Iterable[str]:
        return reversed(asked_before(self._path))

    def store_string(self, string: str) -> None:
        keep(self._path, string)


def bottom_line(memory: Talk, columns: int) -> str:
    """What is remembered, on one line."""
    return plain(f"remembered: {memory.reading}" if memory.reading else NOTHING_YET, max(columns - 1, 4))


def _columns() -> int:
    """Of the window as it is now, whatever it was when the talk began."""
    return get_app().output.get_size().columns


def talk(desk: Desk, colour: bool) -> int:
    """Talk until the user leaves; gives 0."""
    memory = Talk()
    guide = Guide(desk, memory, _columns)
    session: PromptSession[str] = PromptSession(
        "? ", history=PrivateHistory(history_path()), enable_history_search=True, completer=guide,
        complete_while_typing=False, lexer=guide if colour else None, style=STYLE,
        bottom_toolbar=lambda: bottom_line(memory, _columns()),
        color_depth=None if colour else ColorDepth.DEPTH_1_BIT, vi_mode=os.environ.get("RINGPATH_KEYS") == "vi",
        reserve_space_for_menu=6,
    )  # fmt: skip
    print(textwrap.fill(GREETING, width(), break_on_hyphens=False), flush=True)
    begun = ""
    while True:
        _ = guide.offers  # before the first key, not at it
        try:
            typed = session.prompt(default=begun)
        except KeyboardInterrupt:
            begun = ""
            continue  # ctrl-c drops the line
        except EOFError:
            return 0
        begun = ""
        for text in filter(None, (line.strip() for line in typed.splitlines())):
            try:
                answer = asked(desk, text, memory)
                begun = _show(answer, colour) or begun
            except KeyboardInterrupt:
                print("dropped", flush=True)
                continue
            if answer.leaves:
                return 0


def _show(answer: Answer, colour: bool) -> str:
    """Show the answer and a blank line; gives what was typed instead of reading on."""
    text = shown(answer, width(), colour)
    begun = on_terminal(text.split("\n")) if text else ""
    print(flush=True)
    return begun
