"""An answer that would stand word for word as the one before it: said once, with what can be asked instead."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line
from engine.answers.parts.nearby import SURE, nearest
from engine.answers.parts.wording import f_number
from engine.answers.replying import named, reply
from engine.answers.seat.iris import LEAD as OF_IRIS
from engine.answers.words.advice import advice_lines
from engine.answers.words.by_format import WORKED
from engine.base.compact import replace
from engine.facts.catalogue import Catalogue
from engine.facts.subjects import asked_as
from grammar.kinds import (
    BUY_PLAN,
    CHAIN,
    COVERAGE,
    CROP_EQUIVALENT,
    DEFINITION,
    DEPTH_OF_FIELD,
    FOCUS_VERDICT,
    GEAR_SETTING,
    HAZARD,
    IDENTIFY_MOUNT,
    WHY,
)
from grammar.questions import TALKED, Question, Thing
from grammar.words.atoms import key_of

FEWEST: Final = 2
SHORTEST: Final = 3  # lines; less is sooner said again than pointed at
LEADING: Final = 4  # lines that tell the most of an answer
HOW_HELD, RING_ASKED = "how-held", "ring-asked"
MEASURE_HOW: Final = "measure-how"
STOPPING_DOWN: Final = "stop-down-helps"  # advice on what it does for infinity
_FREE: Final = TALKED | {"teach", "forget"}
INFINITY: Final = "infinity"  # the verdict
LIGHT: Final = "light_difference_stops"
EVERY_STOP: Final = "It reaches infinity at every stop: for that nothing need be closed."
UNCHANGED: Final = "That changes nothing: the rest stands as in the answer before."
AS_BEFORE: Final = (
    "That was read as the same question again, so the rest stands as before. Ask 'how sure is it' or 'why', or name "
    "what differs: another lens, body, ring or distance."
)
WARNING: Final = frozenset(["note", "caution", "danger"])
MOST_WARNED: Final = 2  # lines that are told again
STANDS: Final = "The rest stands as in the answer before."
_SEATED: Final = frozenset({CHAIN, FOCUS_VERDICT, IDENTIFY_MOUNT, COVERAGE})  # answers that are no numbers
_CORNERS: Final = "corners vignette"  # what the words of a question that goes on with coverage are about
_SAID: Final = frozenset({WHY, HAZARD, GEAR_SETTING})  # kinds of advice that tell of what is seen or meant
ALL_SAID: Final = (
    "That is all that the facts hold for it. What you see or measure yourself decides: tell it, such as 'it stops at "
    "3 m'."
)


def once(answer: Answer, last: Answer | None, catalogue: Catalogue) -> Answer:
    """The answer, cut to its first line where all its lines were those of the last and something else was typed.

    Where that names a number of the answer, the number is told instead.
    """
    if last is not None and _asks_of_last(answer):
        answer = _with_its_number(answer, last, catalogue)
    if last is None or answer.unread is not None or answer.intent in _FREE or len(answer.lines) < FEWEST:
        return answer
    if answer.question is None or not answer.question.follows:
        return answer  # it was asked in full
    if answer.chains and answer.question.mentions(HOW_HELD, RING_ASKED):
        return answer  # what holds it is told in full
    if len(answer.lines) < SHORTEST and (answer.intent != DEPTH_OF_FIELD or answer.lines != last.lines):
        return answer
    if key_of(answer.text) == key_of(last.text):
        return answer
    alike = (
        answer.intent != WHY and bool(answer.quantities) and set(answer.quantities or ()) <= set(last.quantities or ())
    )
    alike = alike or answer.intent == BUY_PLAN  # of what is bought the price is asked for
    asked_for = reply(answer.text, answer.quantities, catalogue, answer.question.feet) if alike else ()
    if asked_for and answer.intent == CROP_EQUIVALENT and answer.lines[0] not in last.lines:
        # 'is it darker?': what it begins with is the answer
        asked = named(answer.text, answer.quantities, catalogue, answer.question.feet)
        asked_for = tuple(line for line, rows in asked if all(row.name != LIGHT for row in rows))
    no_more = answer.reading == last.reading and set(answer.lines) <= set(last.lines)
    beside = _of_what_was_typed(answer, catalogue) if no_more and answer.intent in _SEATED else ()
    of_iris = _of_its_iris(answer, last)
    if beside or of_iris:
        beside = () if of_iris else beside  # what stops one down is no matter of infinity
        warned = [line for line in answer.lines[1:] if line.kind in WARNING]
        verdict = (*answer.lines[:1], *warned[:MOST_WARNED]) if answer.chains and beside else ()
        return replace(answer, lines=(*asked_for, *of_iris, *beside, *verdict, Line("note", STANDS)))
    if asked_for and set(last.lines) <= set(answer.lines):
        fresh = tuple(line for line in answer.lines if line not in last.lines)  # all else stood there before
        first = (*fresh, *asked_for) if answer.lines[0] in fresh else (*asked_for, *fresh)
        return replace(answer, lines=tuple(dict.fromkeys(first)))
    if answer.lines != last.lines:
        return replace(answer, lines=tuple(dict.fromkeys((*asked_for, *answer.lines))))
    told = AS_BEFORE if answer.reading == last.reading else UNCHANGED
    told = ALL_SAID if answer.intent == WHY else told
    # what was meant as another question may well be answered by the first lines
    listed = len(answer.lines) > 1 and answer.lines[1].kind == "fact"  # what heads them is told of each behind it
    kept = LEADING if told == AS_BEFORE or (told == UNCHANGED and (listed or not answer.chains)) else 1
    asks = tuple(line for line in answer.lines[kept:] if line.kind == "ask")
    return replace(answer, lines=(*answer.lines[:kept], Line("note", told), *asks))


def _of_its_iris(answer: Answer, last: Answer) -> tuple[Line, ...]:
    """'can I stop it down', 'is it always at 2.5' after a lens on a body: what was told of its iris."""
    asked = answer.question is not None and answer.question.places("iris-asked") and answer.intent in _SEATED
    if not asked or (answer.reading != last.reading and not set(answer.lines) <= set(last.lines)):
        return ()
    return tuple(line for line in answer.lines if line.text.casefold().startswith(OF_IRIS))[:1]


def _of_what_was_typed(answer: Answer, catalogue: Catalogue) -> tuple[Line, ...]:
    """Advice on what was typed, where that is no more of the same: 'there is a pin on the back, does it matter'."""
    assert answer.question is not None
    mounts = frozenset(id_ for lens in answer.question.lenses for id_ in lens.ids[:1])
    rows = nearest(answer.text, catalogue, 1, SURE, among=lambda row: asked_as(row) in _SAID, mounts=mounts)
    if answer.intent == COVERAGE and any(row.id == STOPPING_DOWN for row in rows):
        # 'does stopping down help' after whether it covers is asked of the corners
        said = f"{answer.text} {_CORNERS}"
        rows = nearest(said, catalogue, 1, SURE, among=lambda row: asked_as(row) in _SAID, mounts=mounts)
    shared = [row for row in rows if not row.mounts or mounts & {*row.mounts}]
    cured = _from_stop(answer) if any(row.id == STOPPING_DOWN for row in shared) else ()
    return (*cured, *advice_lines(shared))


def _from_stop(answer: Answer) -> tuple[Line, ...]:
    """'would stopping down save it': from which stop on the lens of the answer reaches infinity by depth of focus."""
    if not answer.chains:
        return ()
    from engine.answers.seat.telling import curing_stop

    judged = answer.chains[0].listed.judged
    if judged.verdict == INFINITY and judged.certainty != "unknown":
        return (Line("head", EVERY_STOP),)
    at = curing_stop(judged.trace)
    text = "" if at is None else f"From f/{f_number(at)} on what is far is sharp enough; wide open it stays soft."
    return (Line("head", text),) if text else ()


def _asks_of_last(answer: Answer) -> bool:
    """'what is the seat', 'what crop factor is that': a number of the answer before, by its name."""
    question = answer.question
    if question is None or answer.intent in _FREE:
        return False
    if answer.intent == DEFINITION:
        return bool(question.places("of-what-was-spoken-of"))
    return question.follows and _ends_in_that(question)


def _ends_in_that(question: Question) -> bool:
    """'what ... is that': nothing but marks behind it."""
    asks, points = question.places("asks-what"), question.places("is-that")
    ends = (one for one in points if not any(map(str.isalnum, question.text[one.end :])))
    return any(what.at <= one.at for one in ends for what in asks)


def _with_its_number(answer: Answer, last: Answer, catalogue: Catalogue) -> Answer:
    """The answer behind that number; what a word means has none of its own."""
    if _names_others(answer, last):
        return answer
    own = set(answer.quantities or ())
    names = {row.name for row in own} & WORKED if answer.intent == DEFINITION else set()  # told by format already
    told = last.quantities if last.question is not None and last.question.lenses else ()
    rows = tuple(row for row in told or () if row not in own and row.name not in names)
    found = named(answer.text, rows, catalogue)
    lines, kept = tuple(line for line, _ in found), tuple(row for _, of_it in found for row in of_it)
    return replace(answer, lines=(*lines, *answer.lines), quantities=(*(answer.quantities or ()), *kept))


def _names_others(answer: Answer, last: Answer) -> bool:
    """'the image circle of a C-mount lens' after another lens: the numbers told last are none of its."""
    named, before = ({id_ for one in _mounts(row.question) for id_ in one.ids} for row in (answer, last))
    return bool(named) and not named & before


def _mounts(question: Question | None) -> tuple[Thing, ...]:
    return (*question.lenses, *question.bodies) if question is not None else ()


def asked_how(question: Question, last: Answer | None, catalogue: Catalogue) -> Answer | None:
    """'how do I measure that' after a fact was asked for: how, and nothing else; the fact may then be told."""
    if question.topic != MEASURE_HOW or not question.follows or question.things or last is None:
        return None
    asks = tuple(line for line in last.lines if line.kind == "ask" and line.wants)
    if not asks:
        return None
    wanted = {name for line in asks for name in line.wants.split()}
    how = advice_lines([one for one in catalogue.advice.values() if one.measures in wanted])
    return Answer(question.text, question.intent, ANSWERED, (*how, *asks), question=question, aside=True)
