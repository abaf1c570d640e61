"""The way of a question: text -> question -> chains -> verdict -> answer. A newcomer starts reading here."""

from __future__ import annotations

import os
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from engine.answers.families import handler_for
from engine.answers.found.narrowing import told_apart
from engine.answers.found.two_named import with_two
from engine.answers.in_short import in_short, no_list
from engine.answers.making.rings_in_front import without_rings_in_front
from engine.answers.making.senses import by_facts
from engine.answers.meant_as import meant_as
from engine.answers.own.ring_told import beside, judged_with
from engine.answers.parts.answer import NO, NOT_UNDERSTOOD, Answer, Line
from engine.answers.parts.entities import entities_of
from engine.answers.parts.knowledge import Knowledge
from engine.answers.picture.frame_alone import with_frame_alone
from engine.answers.picture.view_again import as_view, on_its_own, without_view
from engine.answers.seat.body_set_apart import as_elsewhere
from engine.answers.seat.refitted import as_refitted
from engine.answers.seat.rings_contrasted import with_rings_contrasted
from engine.answers.seat.seat_side import as_side, weighed
from engine.base.compact import replace
from engine.base.problem import Problem
from engine.facts.catalogue import load_catalogue
from engine.facts.lexicon_store import lexicon_of
from engine.talk import Talk
from grammar.echo.echo import canonical
from grammar.kinds import CARD, COMPARE, DRAW, IDENTIFY_MOUNT, OFF_SEAT, WHY
from grammar.questions import Question, Unread
from grammar.reader import read
from grammar.words.atoms import key_of
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import tokens_of

if TYPE_CHECKING:
    from engine.answers.parts.choosing import Choice

TOO_LITTLE = (
    "That is too little to work anything out from. Say more: the lens (mount, focal length, widest stop), the body or "
    "its sensor."
)
FOREIGN, NOTHING_WAITS = "foreign", "Nothing waits for a yes."  # topic of what names nothing of the trade


class Desk:
    """Where questions are answered: the facts of one run, and the names they are asked by."""

    def __init__(
        self,
        facts: tuple[Path, ...] = (),
        gear: Path | None = None,
        gear_needed: bool = True,
        writes: Path | None = None,
        folder: Path | None = None,
    ) -> None:
        """`writes`: the gear file that what is taught goes into, once it is confirmed; None: nothing is written.

        `folder`: where drawings and cards are saved; None: drawings are not made, cards only handed over.
        """
        self.facts, self.writes, self.folder = facts, writes, folder
        self._stamp = _stamp(writes)
        self.catalogue, self.problems = load_catalogue(facts, gear, gear_needed=gear_needed)

    def reload(self) -> tuple[Problem, ...]:
        """Read the facts and the gear anew, and give what is wrong with them; the old ones are kept where it is."""
        self._stamp = _stamp(self.writes)
        catalogue, problems = load_catalogue(self.facts, self.writes, gear_needed=False)
        if not problems:
            self.catalogue = catalogue
            for made in ("knowledge", "lexicon"):
                self.__dict__.pop(made, None)
        return problems

    @cached_property
    def knowledge(self) -> Knowledge:
        return Knowledge.of(self.catalogue)

    @cached_property
    def lexicon(self) -> Lexicon:
        return lexicon_of(self.catalogue)

    def ask(self, text: str, talk: Talk | None = None) -> Answer:
        """Read one question, answer it, and remember it for the next."""
        talking, talk = talk is not None, talk if talk is not None else Talk()
        if talking and (aside := self._aside(text, talk)) is not None:
            return aside
        choice = talk.chosen(text) or self._told_in_words(text, talk)
        meant = meant_as(talk.meant(text), talk.last, talk.question, self.lexicon, self.catalogue)
        question = choice.question if choice else read(meant, self.lexicon, talk.question)
        talk.guesses, talk.choices = question.guesses if isinstance(question, Unread) else (), ()
        question = self._unread(question) if isinstance(question, Unread) else self._as_term(question, text)
        if isinstance(question, Unread):
            if question.partial is not None:
                talk.lean_on(question.partial, canonical(question.partial, self.lexicon.name_for))
            return talk.let_go(unread_answer(question))
        judged = judged_with(question, talk.question, self.writes is None)
        if judged is not None and self.writes is None:
            question = judged  # nothing can be written: it is told of the two spoken of
        if question.intent in ("teach", "forget"):
            answer = self._taught(question, talk if talking else None)
            answer = beside(answer, self._answered(judged, talk)) if judged is not None else answer
            question = answer.question or question
        else:
            question = self._by_facts(question, talk)
            answer = talk.let_go(self._answered(question, talk))
            if talking:
                answer = self._meant(answer, question, choice, talk)
        answer = told = self._finished(answer, question, talk)
        if talking and talk.last is not None:
            from engine.answers.again import once

            told = once(answer, talk.last, self.catalogue)
        talk.remember(answer)
        return told

    def _aside(self, text: str, talk: Talk) -> Answer | None:
        """The answer to what is said to the talk itself: a bare yes or no, a number where nothing is listed."""
        settled = self._settled(text, talk)
        if settled is not None:
            talk.remember(settled)
            talk.let_gone(frozenset((*self.catalogue.lenses, *self.catalogue.bodies)))
            return settled
        if _stamp(self.writes) != self._stamp:
            self.reload()  # another talk, or the user, has written the gear file meanwhile
        short = in_short(text, talk.last, self.lexicon.words.mentions)
        return no_list(text) if short is None and talk.points_nowhere(text) else short

    def _by_facts(self, question: Question, talk: Talk) -> Question:
        """The question with what only the facts, and the rows listed last, tell of its things."""
        question = with_two(question, talk.named, self.catalogue, talk.question)
        if talk.named and talk.past:
            from engine.answers.close.tube_lens_told import with_tube_lens

            question = with_tube_lens(question, talk, lambda text: read(text, self.lexicon, None))
        question = by_facts(without_rings_in_front(told_apart(question, self.catalogue)), self.catalogue)
        question = as_refitted(with_rings_contrasted(question, self.catalogue), self.catalogue)
        question = without_view(as_view(as_side(as_elsewhere(question)), talk.question, self.catalogue), self.catalogue)
        question = weighed(on_its_own(with_frame_alone(question, self.catalogue), self.catalogue), self.catalogue)
        if question.number is not None:
            from engine.answers.listed_place import pointed_at

            question = pointed_at(question, talk.rows, talk.last, self.catalogue)
        if question.sought is not None:
            from engine.answers.own.own_places import placed

            question = placed(question, talk.question, self.catalogue)
        return question

    def _finished(self, answer: Answer, question: Question, talk: Talk) -> Answer:
        """The answer with its drawings, what else may have been meant, how it was read, and its document."""
        if answer.sketches:
            from engine.draw import drawn

            answer = drawn(answer, self.catalogue, self.folder)
        if not answer.lines and not answer.leaves:
            answer = replace(answer, status=NO, lines=(Line("ask", TOO_LITTLE),))
        if question.instead and not talk.choices and answer.unread is None:
            from engine.answers.meant_else import with_second

            answer = with_second(answer, question.instead, self._answer_alone)
            talk.guesses = question.instead
        reading = answer.reading or canonical(answer.question or question, self.lexicon.name_for)
        answer = replace(answer, reading=reading, entities=entities_of(question, self.catalogue))
        if answer.cards is None:
            return answer
        from engine.keeping import with_document

        return with_document(answer, self.folder)

    def _meant(self, answer: Answer, question: Question, choice: Choice | None, talk: Talk) -> Answer:
        """The answer with the question which mount a word means, or, once that is told, whether to keep it."""
        if choice is not None and self.writes is not None:
            from engine.answers.parts.choosing import kept

            keep = self._taught(kept(choice), talk)
            return replace(answer, lines=(*answer.lines, *keep.lines))
        if answer.chains is None or not any(thing.ambiguous for thing in (*question.lenses, *question.bodies)):
            return answer
        from engine.answers.parts.choosing import asked, choices_of

        talk.choices = choices_of(question, self.catalogue)
        return asked(answer, talk.choices, self.catalogue) if talk.choices else answer

    def _told_in_words(self, text: str, talk: Talk) -> Choice | None:
        if not talk.choices:
            return None
        from engine.answers.parts.choosing import told_in_words

        return told_in_words(tokens_of(text, self.lexicon).tokens, talk.choices, self.catalogue)

    def _taught(self, question: Question, talk: Talk | None) -> Answer:
        from engine.teach import propose

        return propose(question, self.catalogue, self.writes, talk)

    def _settled(self, text: str, talk: Talk) -> Answer | None:
        """The answer to a bare 'yes' or 'no': to what was told and waits for it, or that nothing does."""
        words, key = self.lexicon.words, key_of(text.strip(" \t.!"))
        said = words.teaching.get(key)
        if said not in ("yes", "no"):
            return None
        if talk.pending is None or self.writes is None:
            # 'never mind' is an order of its own, where there is nothing to be dropped
            return None if key in words.orders else Answer(text, None, NO, (Line("text", NOTHING_WAITS),), aside=True)
        from engine.teach import settle

        return settle(talk, said == "yes", text, self.writes, self.reload)

    def _answered(self, question: Question, talk: Talk) -> Answer:
        if question.intent in OFF_SEAT:
            from engine.answers.shims.carried import carried

            question = carried(question, talk.question if not question.corrects else None, self.catalogue)
        if question.said("came_out") is not None:
            from engine.answers.exposure.filter_tried import by_picture

            question = by_picture(question, self.knowledge)
        if question.intent == CARD:
            from engine.answers.card import cards

            return cards(question, self.knowledge, talk.rows)
        if question.follows and question.intent == WHY and talk.doubted_already(question):
            question = question.with_(topic=None)  # how sure it is was said: now the reasons
        pointed = self._about_last_answer(question, talk)
        return pointed if pointed is not None else handler_for(question.intent)(question, self.knowledge)

    def _about_last_answer(self, question: Question, talk: Talk) -> Answer | None:
        """Answers that only the last answer can give: why, a chain by its number, what is remembered."""
        from engine.answers import remembered

        if question.intent == COMPARE and question.sought is None:
            from engine.answers.drawbacks import drawbacks
            from engine.answers.earlier import between
            from engine.answers.ranked import ranked

            of_both = (question, talk.past, talk.rows, self.knowledge)
            set_apart = ranked(*of_both) or drawbacks(*of_both) or between(*of_both)
            if set_apart is not None:
                return set_apart
        if question.intent == IDENTIFY_MOUNT:
            from engine.answers.again import asked_how

            told = asked_how(question, talk.last, self.catalogue)
            if told is not None:
                return told
        reading = talk.reading
        if not reading and talk.question is not None and question.intent == "show-memory":
            reading = canonical(talk.question, self.lexicon.name_for)  # what was taught since is no question
        return remembered.answer(question, talk.question, talk.rows, reading, self.knowledge, self._chains_first)

    def _answer_alone(self, text: str) -> Answer | None:
        """The answer to a whole question outside of any talk; None where it cannot be read."""
        question = read(text, self.lexicon, None)
        if isinstance(question, Unread) or question.intent in ("teach", "forget", DRAW, CARD):
            return None
        question = by_facts(without_rings_in_front(told_apart(question, self.catalogue)), self.catalogue)
        return handler_for(question.intent)(question, self.knowledge)

    def _chains_first(self, question: Question) -> Answer:
        return handler_for("chain")(question, self.knowledge)

    def _unread(self, unread: Unread) -> Question | Unread:
        from engine.answers.parts.nearby import by_words

        return by_words(unread, self.lexicon.subjects, self.catalogue)

    def _as_term(self, question: Question, said: str) -> Question:
        """What seems to be about something else, or asks a word in passing, as a question about that term."""
        foreign, asked = question.topic == FOREIGN, question.mentions("meaning-asked", "number-meant")
        if not foreign and not (question.follows and question.text == said and asked):
            return question
        from engine.answers.words.term_asked import as_term

        return as_term(question, self.catalogue, foreign)


def _stamp(path: Path | None) -> tuple[int, int] | None:
    """What changes with the content of the file: its time, ns, and its size; None where there is none."""
    try:
        state = os.stat(path) if path is not None else None
    except OSError:
        return None
    return (state.st_mtime_ns, state.st_size) if state is not None else None


def unread_answer(unread: Unread) -> Answer:
    """One helpful line: a caret under the word, what could stand there, the nearest name, and what may be meant."""
    lines = []
    if 0 < unread.column <= len(unread.text) + 1 and unread.text.strip() and "\n" not in unread.text:
        lines.append(Line("verbatim", unread.text.replace("\t", " ")))
        lines.append(Line("caret", " " * (unread.column - 1) + "^"))
    near = f" Nearest: {unread.nearest}." if unread.nearest else ""
    lines.append(Line("ask", f"Found {unread.found}; expected {unread.expected}.{near}"))
    lines += [Line("text", f"{n}. {guess}", 1) for n, guess in enumerate(unread.guesses, start=1)]
    return Answer(unread.text, None, NOT_UNDERSTOOD, tuple(lines), unread=unread)
