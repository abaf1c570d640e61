"""What was said last: the question that a follow-up leans on, and the chains that can be pointed at by number."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.answers.found.two_named import named_so_far
from engine.answers.parts.answer import Answer, Line, ListedChain, Quantity
from engine.answers.picture.crop_factors import with_crop_on_top
from engine.answers.picture.frame_modes import with_mode_kept
from engine.answers.picture.likened_stop import without_likened_stop
from engine.answers.shims.carried import with_mark_told
from engine.answers.told_on import factors_of, told_on
from engine.base.compact import compact, field, replace
from engine.judging.ranking import Listed
from grammar.kinds import CARD, CHAIN, COMPARE, COVERAGE, DEFINITION, DRAW, HAZARD, OUT_OF_SCOPE, WHY
from grammar.questions import ADVISED, DRAWN, TALKED, Question, Thing
from grammar.things.casting import OPTICAL
from grammar.turns.about_lenses import are_of, has_pair
from grammar.turns.sticking import lasting
from grammar.turns.told_before import still_right

if TYPE_CHECKING:
    from engine.answers.parts.choosing import Choice
    from engine.facts.gearedits import Edit  # needed only where something is taught


SET_APART = frozenset({"compare", "which-own", "all-on-all"})  # what these list is not picked by its number
UNLIT: Final = frozenset(["vignette", "disc", "cover"])  # topics of a reason that asks about the picture
FAULTS: Final = frozenset(["smear", "colour"])  # and of one that asks about a fault seen in it
IRIS: Final = "iris"  # and of one that asks why the blades do not close
DOUBTED = "sure"  # the topic of a reason that asks how sure it is
ASIDES = frozenset({HAZARD, DEFINITION, OUT_OF_SCOPE})  # asked on the way: what follows goes on with that before
OWN = frozenset({"lens", "body"})  # kinds of things that have names of their own
BARE_REASON = 4  # words, of a mere 'why is that'
MOST_LISTED = 9  # a bare number above this is rather a measure than one of a list
MEASURED = frozenset({"identify-mount"})  # where a bare number from LEAST_MEASURED up is what was asked to be measured
LEAST_MEASURED = 5
STAYS: Final = frozenset(["flange_to_image", "rear_reach", "barrel", "circle", "thickness", "zoom"])


@compact
class Pending:
    """What waits for a 'yes' to be written to the gear file. `undoes`: it takes back what was written last."""

    question: Question
    edits: tuple[Edit, ...]
    undoes: bool = False


MOST_PAST = 8  # answers that can be set against one another


@compact
class Past:
    """One answer of before: what it was asked, how that was read, its best chain and its numbers."""

    question: Question
    reading: str
    best: ListedChain | None
    quantities: tuple[Quantity, ...]


@compact(frozen=False)
class Talk:
    """The memory of one talk. `rows`: the chains of the last answer that listed any.

    `guesses`: the questions that the last answer offered by number, where it could not read what was asked.
    `choices`: what a word of the last question may mean, asked by number.
    `past`: the last few answers that told of a lens on a body or held numbers, the last one last.
    `named`: the last two terms or mounts that answers in a row were about.
    `last`: the last answer, and `numbered`: whether it told of chains by their numbers.
    `pending`: what was told and is not yet written; `undo`: what turns back each thing that was, the last one last.
    """

    question: Question | None = None
    rows: tuple[Listed, ...] = ()
    reading: str = ""
    said: list[str] = field(default_factory=list)
    guesses: tuple[str, ...] = ()
    pending: Pending | None = None
    choices: tuple[Choice, ...] = ()
    undo: list[tuple[Edit, ...]] = field(default_factory=list)
    past: tuple[Past, ...] = ()
    named: tuple[Thing, ...] = ()
    last: Answer | None = None
    numbered: bool = False

    def meant(self, text: str) -> str:
        """The text, or the guess that it points at where it is only the number of one."""
        number = bare_number(text)
        if number is not None and number <= len(self.guesses):
            return self.guesses[number - 1]
        picks = number is not None and number <= max(len(self.rows), MOST_LISTED)
        return f"#{number}" if picks and self.numbered and self.rows else text

    def points_nowhere(self, text: str) -> bool:
        """Whether a bare number is typed where nothing is listed, and no number was asked for."""
        number, before = bare_number(text), self.question
        if number is None or text.strip().startswith("#") or before is None or number > MOST_LISTED:
            return False
        picks_chain = self.numbered and bool(self.rows)
        listed = picks_chain or number <= max(len(self.guesses), len(self.choices))
        return not listed and not (before.intent in MEASURED and number >= LEAST_MEASURED)

    def doubted_already(self, question: Question) -> bool:
        """Whether the last answer told just what this one doubts: how sure it is."""
        last = self.last.question if self.last is not None else None
        return last is not None and question.topic == DOUBTED and (last.intent, last.topic) == ("why", DOUBTED)

    def chosen(self, text: str) -> Choice | None:
        """The meaning that a number points at, where the last answer asked which one is meant."""
        number = bare_number(text)
        return self.choices[number - 1] if number is not None and number <= len(self.choices) else None

    def let_go(self, answer: Answer) -> Answer:
        """The answer to another question; what waited for a 'yes' waits no longer, and that is said."""
        if self.pending is None:
            return answer
        self.pending = None
        return self.with_note(answer)

    @staticmethod
    def with_note(answer: Answer) -> Answer:
        left = "What you told before was not written, since no 'yes' came; tell it again to write it."
        return replace(answer, lines=(*answer.lines, Line("note", left)))

    def lean_on(self, understood: Question, reading: str) -> None:
        """Keep what was understood of a question that could not be read, for the next to complete it."""
        self.question, self.reading, self.rows = understood, reading, ()

    def remember(self, answer: Answer) -> None:
        """Keep what a follow-up may lean on; an answer that was no answer changes nothing."""
        self.last = answer
        self.named = named_so_far(self.named, answer)
        if answer.learnt is not None:
            answer = replace(answer, question=answer.learnt)
        if answer.intent in MEASURED and answer.question is not None:
            answer = replace(answer, question=_without_others(answer.question))
        if answer.question is not None and answer.intent not in TALKED:
            told = len(answer.chains or ()) > 1 or answer.question.number is not None or answer.intent == WHY
            self.numbered = told and answer.intent not in SET_APART
        self._keep(answer)
        if self.question is not None:
            self.question = with_mode_kept(with_crop_on_top(with_mark_told(lasting(self.question))))

    def _keep(self, answer: Answer) -> None:
        if answer.forgets:
            self.forget()
            return
        if answer.question is None or answer.aside or answer.intent in TALKED:
            return
        if answer.intent == CARD and self.question is not None and _same_pair(answer, self.question):
            self.question = answer.question.with_(intent=CHAIN)  # the chains that were listed can still be meant
            self.reading = answer.reading
            return
        its = answer.question
        known = has_pair(self.question, its) or are_of(its.lenses or its.bodies, self.question)
        aside = its.follows and bool({answer.intent, its.topic} & (ASIDES | ADVISED))
        stays = aside or (answer.intent == DEFINITION and known)
        wants = " ".join(dict.fromkeys(line.wants for line in answer.lines if line.wants))
        if self.question is not None and self.question.intent == answer.intent == HAZARD:
            stays = False  # one danger after another is what is talked of now
        if self.question is not None and (stays or answer.intent == OUT_OF_SCOPE):
            self.reading = answer.reading
            self.question = _past(_of_named(self.question, its), answer).with_(wants=wants)
            return
        if (before := self.question) is not None and answer.draws_again:
            self.question = before.with_(number=answer.question.number)
            return
        asked_why = before is not None and answer.intent == WHY and answer.question.follows
        measured = before is not None and before.intent in MEASURED and _same_lens(answer.question, before)
        if before is not None and asked_why and (measured or _same_pair(answer, before)):
            self.reading, self.question = answer.reading, _past_reason(before, answer)  # it is identified still
            if not measured:
                self._list(answer)
            return
        asked = without_likened_stop(_with_factor(answer.question, answer), answer)
        self.question = asked.with_(wants=wants, told=(*told_on(answer), *still_right(asked, before)))
        if answer.intent == WHY:
            # a reason is an aside: what follows goes on with the chain that it was about
            of_picture = COVERAGE if answer.question.topic in UNLIT else CHAIN  # what the reason was asked for
            told = self.question.intent if self.question.intent != WHY else of_picture
            fault = WHY if asked.topic in FAULTS or asked.mentions("seen-in-picture", "edges-smear") else ""
            values = _of_things(self.question)
            self.question = self.question.with_(intent=told, topic=None, number=None, values=values, beside=fault)
            self.question = _past_reason(self.question, answer)
        if answer.intent == DRAW:  # so is a drawing
            self.question = self.question.with_(intent=CHAIN, topic=DRAWN, values=_of_things(self.question))
        if answer.intent in ("teach", "forget", CARD):
            # what follows asks of the thing: nothing is told or written unasked
            self.question = self.question.with_(intent=CHAIN)
        self.reading = answer.reading
        self._list(answer)
        self._put_by(answer)

    def _list(self, answer: Answer) -> None:
        if (answer.chains is not None and len(answer.chains) != 1) or (
            answer.chains and not self._points_into_last(answer)
        ):
            self.rows = tuple(chain.listed for chain in answer.chains)
        elif answer.intent == "all-on-all":
            self.rows = ()  # a table lists no chains, and those of before are not its own

    def _points_into_last(self, answer: Answer) -> bool:
        """Whether the answer only told one of the listed chains again."""
        return answer.question is not None and answer.question.number is not None and len(self.rows) > 1

    def _put_by(self, answer: Answer) -> None:
        """Keep an answer that another may be set against."""
        best = answer.chains[0] if answer.chains and answer.intent != "which-own" else None
        numbers = answer.quantities if answer.intent not in ("which-own", "all-on-all", COMPARE, "teach") else ()
        if answer.question is not None and answer.intent != WHY and (best is not None or numbers):
            self.past = (*self.past, Past(answer.question, answer.reading, best, numbers))[-MOST_PAST:]

    def let_gone(self, own: frozenset[str]) -> None:
        """Speak no more of lenses and bodies that are no longer in the gear file. `own`: those that are."""
        before = self.question
        if before is None or not any(is_gone(one, own) for one in (*before.lenses, *before.bodies, *before.known)):
            return
        kept = {
            side: tuple(one for one in getattr(before, side) if not is_gone(one, own))
            for side in ("lenses", "bodies", "known", "elsewhere")
        }
        self.question, self.rows = before.with_(prior=None, **kept), ()

    def forget(self) -> None:
        self.question, self.rows, self.reading, self.past = None, (), "", ()


def is_gone(thing: Thing, own: frozenset[str]) -> bool:
    return thing.kind in OWN and not own.issuperset(thing.ids)


def _past(question: Question, answer: Answer) -> Question:
    """The question that goes on past what was asked by the way, which the next words may be about still."""
    said = f"{answer.question.text} {answer.question.asked}".strip() if answer.question else ""
    return question.with_(beside=answer.intent, beside_text=said)


def _past_reason(question: Question, answer: Answer) -> Question:
    """The same past a reason, of which more was said than 'but why is that'."""
    asked, past = answer.question, _past(question, answer)
    if asked is None or (asked.topic != IRIS and len(asked.text.split()) <= BARE_REASON):
        return question
    return past if asked.topic == IRIS else past.with_(beside=question.beside)


def _of_named(question: Question, aside: Question) -> Question:
    """The question that goes on past an aside, about the lens that this named where that is another; on the body too
    where there was none."""
    lenses, question = aside.lenses, question.with_(bodies=question.bodies or aside.bodies)
    if lenses == question.lenses:
        return question.with_(values=tuple(dict((*question.values, *_of_things(aside))).items()))
    by_the_way = aside.intent == DEFINITION and has_pair(question, aside)
    if by_the_way or not any(lens.ids for lens in lenses) or are_of(lenses, question):
        return question  # 'what is CS' of one on CS
    return question.with_(lenses=lenses, known=aside.known, adapters=aside.adapters, values=())


def _of_things(question: Question) -> tuple[tuple[str, str], ...]:
    """What was measured of the lens or the ring: that stays true, whatever is asked of them next."""
    return tuple(row for row in question.values if row[0] in STAYS)


def _with_factor(question: Question, answer: Answer) -> Question:
    """'with a reducer': its factor is that of the one in the best chain told, which is what is talked about now."""
    factors = factors_of(answer)
    if len(factors) != 1:
        return question
    pieces = tuple(
        replace(one, factor=factors[0]) if one.piece in OPTICAL and one.factor is None and not one.ids else one
        for one in question.adapters
    )
    return question.with_(adapters=pieces)


def _without_others(question: Question) -> Question:
    """'C or CS?', then 12.5 mm: of the mounts that one lens might have, only that which it has is talked of still."""
    lens = question.lenses[0] if len(question.lenses) == 1 else None
    if lens is None or lens.focal_length_mm is None or not lens.ids:
        return question
    kept = tuple(one for one in question.known if one.focal_length_mm != lens.focal_length_mm)
    return question.with_(known=(*kept, lens)) if question.known else question


def _same_lens(asked: Question, before: Question) -> bool:
    """Whether both are about the same lens, whatever mounts its thread still allows."""
    return [one.ids[:1] for one in asked.lenses] == [one.ids[:1] for one in before.lenses]


def _same_pair(answer: Answer, before: Question) -> bool:
    asked = answer.question
    return asked is not None and (asked.lenses, asked.bodies) == (before.lenses, before.bodies)


def bare_number(text: str) -> int | None:
    """The number from 1 to 99 that a text consists of, as one of a list is picked."""
    number = text.strip(" \t#)").rstrip(".")  # '.7' is a factor or a stop
    return int(number) if number.isascii() and number.isdecimal() and len(number) < 3 and int(number) else None
