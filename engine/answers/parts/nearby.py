"""The advice and terms that a question is about, found by the words they share."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Final

from engine.answers.parts.said import distance_mm, mentions, number, numbers
from engine.facts.catalogue import Catalogue
from engine.facts.guidance import Advice, Term
from engine.facts.subjects import subjects_of
from grammar.kinds import DEFINITION, HAZARD, WHY
from grammar.own.naming import tells_a_meaning
from grammar.questions import Question, Thing, Unread
from grammar.words.nearest import distance, nearest_keys
from grammar.words.subjects import Match, Subjects
from grammar.words.wordlist import ASKING

LEAST: Final = 4.8  # what shares less than about one rare word is not about the same
ONE_WORD: Final = 2.4  # what shares one word is about the same where that is all of the question
LEAST_STEM: Final = 4  # letters of that word: what is shorter is the name of a mount
SPOKEN_OF: Final = (WHY, HAZARD)  # questions that advice answers by itself
SURE: Final = 6.0  # beside numbers that answer the question, only what is surely about the same is told
ONLY_NAMED: Final = float("inf")  # nothing is near enough: only what is named is told
SEEN: Final = 11.75  # from here up a question tells of something seen, beside the pair that it names
PLAIN: Final = 8.0  # what shares so much is about the same even where the question was not understood
FAIR_PART: Final = 0.3
LIKE: Final = 5.0  # the likeness from which on advice is surely about what is asked
MUCH: Final = 10.0  # so much is not shared by chance, however much else is told
LIKE_NAMED: Final = 3.0  # the likeness from which on what is named is
SEVERAL: Final = 3  # so many words are not shared by chance, where they are most of what the question tells
MOST_TOLD: Final = 0.7
WHOLLY: Final = 0.9  # so much of the question and of a phrase is all of them
MOST_BESIDE: Final = 1  # words that say something beside a term that is misspelt
LETTERS_A_SLIP: Final = 5  # a word has so many letters for each that is wrong
LEAST_LETTERS: Final = 6  # of its longest word
OF_MOUNT: Final = 1.35  # how much nearer advice on a mount that is named is
OUTDOES: Final = 2.0  # how many times nearer than what is named the nearest must be to be told before it
NEAR: Final = 0.75  # the next best are told where they come this near to the best

SHORT: Final = 3  # letters of a word that is no plural
_WORDS: Final = re.compile(r"[a-z0-9]+")

_ANY_RING: Final = (None, "", "adapter", "ring")  # pieces that say nothing more than that there is one
# what the keys of values that were read are called in advice
_MEANT: Final = {
    "weight": "heavy weight kg support", "rear_reach": "rear reach", "light": "",
    "thread_length": "thread too long", "price": "cheap dear price",
    "touch": "",
    "dashes": "aperture shows dashes metadata",
}  # fmt: skip
# so small a number, of nothing that is named, is hardly ever anything but an error
MOST_ERROR_MM: Final = 0.5
HUNDREDTHS: Final = "hundredths matter"  # what it is in words
SET_APART: Final = "short lens long lens"  # what two focal lengths are in words, where the one differs from the other
SMALL_STOP: Final = "bending-seen-from"  # of the facts: from this f-number on light that bends at the hole is seen
_IN_SUN: Final = "pointed at the sun"  # what the sun among the values of a danger is about, in words
_SHORT_OF_INFINITY: Final = "lost infinity, no infinity, far things blurry, wont focus past"
_SMALL_STOPS: Final = "soft at small stops diffraction"
_RULED: Final = ("weight", "rear_reach", "thread_length")  # kinds of values that a danger lies in


def of_values(question: Question) -> str:
    """What the kinds of values that were told are about, in words: a weight, how far a rear reaches."""
    return " ".join(_MEANT.get(key, "") for key, _ in question.values if key in _RULED)


def asked_about(question: Question, catalogue: Catalogue) -> str:
    """The question's words, with the kinds of values in it put into words."""
    keys = [_MEANT.get(key, "") for key, _ in question.values]
    keys += ["filter nd"] if (question.said("factor") or "").startswith("ND") else []  # 'is an ND64 ok then'
    # 'how come a 0.71 makes it brighter': what piece it is stands in no word
    keys += [piece.piece.replace("-", " ") for piece in question.adapters if piece.piece not in _ANY_RING]
    focals = {one.focal_length_mm for one in question.lenses if one.focal_length_mm is not None}
    more = [SET_APART] if len(focals) > 1 else []
    more += [HUNDREDTHS] if 0 < (number(question, "numbers") or 0) <= MOST_ERROR_MM else []
    more += [_MEANT["dashes"]] if 0.0 in numbers(question, "numbers") else []  # 'camera shows 0.0'
    more += [_SMALL_STOPS] if mentions(question, "soft-said") and _has_small_stop(question, catalogue) else []
    ends = distance_mm(question) is not None and mentions(question, "ends-so-far")
    more += [_SHORT_OF_INFINITY] if ends else []  # 'why does it stop at 8 m': that stop is none of the iris
    told = more if question.intent == WHY else []
    shot = question.said("light") == "full-sun" and not mentions(question, "laid-in-sun")  # into it, or in it
    told += [_IN_SUN] if question.intent == HAZARD and shot else []
    return " ".join((question.text, *keys, *told))


def _has_small_stop(question: Question, catalogue: Catalogue) -> bool:
    """'everything past f/16 is mush': whether a stop is told at which light bends, and no distance."""
    told = [question.f_number, *question.stops, *(one.f_number for one in question.lenses)]
    least = catalogue.assumptions[SMALL_STOP].value.least
    return any(one is not None and one >= least for one in told) and distance_mm(question) is None


def nearest(
    text: str,
    catalogue: Catalogue,
    most: int = 3,
    least: float = LEAST,
    intent: str = "",
    among: Callable[[Advice], bool] | None = None,
    mounts: frozenset[str] = frozenset(),
) -> tuple[Advice, ...]:
    """The advice that a text is about, best first: that within reach of the best. `among`: which of it may be.

    `mounts`: those that the question names; advice on them is nearer, on others farther.
    """
    if least == ONLY_NAMED:
        return ()
    advice = catalogue.advice
    found = [row for row in subjects_of(catalogue).matches(text, intent) if among is None or among(advice[row.id])]
    rows = [(match.score * _of_mounts(advice[match.id], mounts), match) for match in found]
    rows.sort(key=lambda row: -row[0])
    if intent in SPOKEN_OF and rows:
        first = max((match for _, match in rows), key=lambda match: match.score)  # whatever mounts are named
        if not _is_near(first, least, intent):
            return ()  # what shares less is no nearer
        most = most if first.score >= least else 1  # one word: what else holds it is about something else
    rows = [row for row in rows if _is_near(row[1], least, intent)][:most]
    return tuple(advice[match.id] for score, match in rows if score >= NEAR * rows[0][0])


def outdone_last(named: list[str], near: list[str], text: str, catalogue: Catalogue, intent: str) -> list[str]:
    """Advice that is named, then what is near; the other way round where the nearest is about far more of the text.

    A name that the nearest holds too sets neither apart: then it need only be about more.
    """
    found = {match.id: match for match in subjects_of(catalogue).matches(text, intent)} if named and near else {}
    best = found.get(near[0]) if near else None
    if not named or intent not in SPOKEN_OF or best is None or near[0] in named:
        return [*named, *near]
    score = max((found[one].score for one in named if one in found), default=0.0)
    least = score if _hold_one_name(named, best, catalogue) else max(PLAIN, OUTDOES * score)
    return [*near, *named] if best.score >= least and best.score > score else [*named, *near]


def _hold_one_name(named: list[str], best: Match, catalogue: Catalogue) -> bool:
    """Whether advice holds the words by which other advice was named."""
    stems = subjects_of(catalogue).vocabulary.stems
    names = (name for one in named if one in catalogue.advice for name in catalogue.advice[one].names)
    return any(wanted <= {*best.shared} for wanted in map(stems, names) if wanted)


def surely_named(named: list[str], text: str, catalogue: Catalogue, intent: str) -> list[str]:
    """Advice that is named, without what has no more than its name in common with a text that tells of other things."""
    if not named or intent not in SPOKEN_OF:
        return named
    alike = {match.id: match.likeness for match in subjects_of(catalogue).matches(text, intent)}
    return [one for one in named if alike.get(one, LIKE_NAMED) >= LIKE_NAMED]


def _of_mounts(advice: Advice, mounts: frozenset[str]) -> float:
    """How much nearer advice on a mount is where that mount is named, or farther where it is not."""
    if not advice.mounts:
        return 1.0
    return OF_MOUNT if mounts & {*advice.mounts} else 1 / OF_MOUNT


def _is_near(match: Match, least: float, intent: str) -> bool:
    """Whether a match is near enough; of a question with nothing else in it, one common word is.

    Where a reason is asked for, or whether it is safe, the advice is the answer: it must surely be about the same.
    """
    if intent not in SPOKEN_OF:
        return match.score >= least
    if match.score >= least:
        alike = match.likeness >= LIKE * min(1.0, least / LEAST) or match.score >= MUCH
        return alike or (len(match.shared) >= SEVERAL and match.told >= MOST_TOLD)
    return (
        least <= LEAST
        and match.score >= ONE_WORD
        and min(match.told, match.held) >= WHOLLY
        and any(len(one) >= LEAST_STEM for one in match.shared)
    )


def plainly_about(text: str, subjects: Subjects) -> str | None:
    """The kind of question that a text can only be, by the advice it shares its words with; None where it is not plain.

    More than one word must be shared, and they must be a fair part of those that say anything. What answers no kind of
    its own is a reason, where the text holds a whole phrase of it.
    """
    for match in subjects.matches(text)[:1] if not tells_a_meaning(text) else ():
        words = len(set(subjects.vocabulary.words_of(text)))
        if match.score < PLAIN or len(match.shared) < max(2, FAIR_PART * words):
            continue
        if match.asked != "other":
            return match.asked
        if match.part >= MOST_TOLD and match.held >= WHOLLY:
            return WHY
    return None


def by_words(unread: Unread, subjects: Subjects, catalogue: Catalogue) -> Question | Unread:
    """What could not be read, as a question about what its words are plainly about, or a term misspelt."""
    part = unread.partial
    nearly = bool(unread.guesses) and part is not None and any(one.ids for one in part.lenses)  # of a known body
    asked = None if nearly else plainly_about(unread.text, subjects)
    if asked is not None:
        return part.with_(intent=asked, topic=None) if part else Question(unread.text, asked)
    named = part is not None and (part.lenses or part.bodies)
    term = term_misspelt(unread.text, catalogue) if not named else None
    return unread if term is None else Question(unread.text, DEFINITION, things=(Thing("term", (term.id,)),))


def term_misspelt(text: str, catalogue: Catalogue) -> Term | None:
    """The term that a few words were meant for, though several are misspelt; None where other words say more."""
    words_of = subjects_of(catalogue).vocabulary.words_of
    said = words_of(text)
    best: tuple[int, Term] | None = None
    for term in catalogue.terms.values():
        for name in term.names:
            wanted = words_of(name)
            met = [word for word in wanted if _is_a_slip_away(word, said)]
            if (
                met == wanted
                and not set(wanted) <= set(said)
                and len(wanted) >= len(said) - MOST_BESIDE
                and _is_long(wanted)
            ):
                best = max(best or (0, term), (len(wanted), term), key=lambda row: row[0])
    return best[1] if best else None


def _is_a_slip_away(word: str, said: list[str]) -> bool:
    """Whether one of the words is meant for it: a letter in five may be wrong, else it is another word."""
    near = nearest_keys(word, said)
    return bool(near) and distance(word, near[0]) <= max(1, len(word) // LETTERS_A_SLIP)


def term_known_as(text: str, catalogue: Catalogue, beside: int = MOST_BESIDE) -> Term | None:
    """The term that goes by words of everyday use; the longest. `beside`: how many more words the text may have."""
    asking = _asking(catalogue)
    said = _everyday(text, asking)
    best: tuple[int, Term] | None = None
    for term in catalogue.terms.values():
        for name in term.known_as:
            wanted = _everyday(name, asking)
            if wanted and wanted <= said and len(said) <= len(wanted) + beside:
                best = max(best or (0, term), (len(wanted), term), key=lambda row: row[0])
    return best[1] if best else None


def _asking(catalogue: Catalogue) -> frozenset[str]:
    """The words that only ask."""
    return frozenset(one for word in catalogue.words.values() if word.means == ASKING for one in word.says)


def words_asked_about(text: str, catalogue: Catalogue) -> str:
    """The words whose meaning is asked, as they were typed: 'wedding lens' of 'whats a wedding lens'."""
    asking, said = _asking(catalogue), re.findall(r"[^\W_]+(?:[-'][^\W_]+)*", text)
    return " ".join(word for word in said if word.casefold().replace("'", "") not in asking)


def _everyday(text: str, asking: frozenset[str]) -> set[str]:
    """The words that are asked about, without those that only ask, plurals as their singulars."""
    words = set(_WORDS.findall(text.casefold().replace("-", " ").replace("'", "")))
    return {word.removesuffix("s") if len(word) > SHORT else word for word in words - asking}


def _is_long(words: list[str]) -> bool:
    """Whether a name is so long that what is a slip or two away from it is hardly another word."""
    return any(len(word) >= LEAST_LETTERS for word in words)


def nearest_term(text: str, catalogue: Catalogue) -> Term | None:
    """The term whose name shares most with a text; None where none does."""
    stems = subjects_of(catalogue).vocabulary.stems
    asked = stems(text)
    best: tuple[float, Term] | None = None
    for term in catalogue.terms.values():
        for name in term.names:
            wanted = stems(name)
            if wanted and wanted <= asked:
                score = float(len(wanted))
                if best is None or score > best[0]:
                    best = (score, term)
    return best[1] if best else None
