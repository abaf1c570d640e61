"""All that is to be watched with one lens on one body: 'anything else I should watch out for' after what was told."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.seat.telling import chain_title, clearance_line, finding_lines, life_line
from engine.answers.words.advice import advice_lines
from engine.facts.catalogue import Catalogue
from engine.facts.subjects import subjects_of
from engine.judging.judge import Judged
from grammar.questions import Question

ASKED: Final = "all-cautions"  # a phrase by which they are all asked for
HEAD: Final = "To watch with this lens on that body, by {way}:"
_WARNS: Final = ("danger", "caution")
_THORIATED: Final = "thoriated"  # trait of a lens
# advice on what is asked of the lens itself, where it is told, then on what holds of any lens without contacts
_OF_GLASS: Final = "thorium"
_OF_WEIGHT: Final = "heavy"
_OF_ANY: Final = ("sun-camera", "power-off", "menus-in-short")
_MOST: Final = 3
_NAME: Final = 4  # letters of the names of mounts, at most; a longer word of a lens tells more of it: 'collapsible'


def asks_all(question: Question, knowledge: Knowledge) -> bool:
    """Whether it asks what to watch, and of nothing in particular."""
    said = question.places(ASKED)
    if not said:
        return False
    text = question.text
    rest = " ".join([text[: min(one.at for one in said)], text[max(one.end for one in said) :]])
    named = {word for thing in (*question.lenses, *question.bodies) for word in thing.words.split()}
    rest = " ".join(word for word in rest.split() if word not in named or len(word) > _NAME)
    return not subjects_of(knowledge.catalogue).vocabulary.words_of(rest)


def all_cautions(question: Question, judged: Judged, knowledge: Knowledge) -> Answer:
    """What the chain warns of, how the lens sits by it, what its mount is known for, then what holds of any."""
    facts = knowledge.catalogue
    lines = [Line("head", HEAD.format(way=chain_title(judged, knowledge)))]
    found = finding_lines(judged, knowledge, question.feet)
    lines += [Line(one.kind, one.text, 1) for one in found if one.kind in _WARNS]
    if judged.verdict != "infinity":
        lines.append(Line("fact", life_line(judged, question.feet), 1))
    reach = clearance_line(judged)
    lines += [Line("fact", reach, 1)] if reach else []
    note = judged.setup.lens_mount.note
    lines += [Line("text", f"{judged.setup.lens_mount.designation} lenses: {note}")] if note else []
    lines += advice_lines([facts.advice[id_] for id_ in _advice(question, facts) if id_ in facts.advice][:_MOST])
    return Answer(question.text, question.intent, ANSWERED, tuple(lines), question=question)


def _advice(question: Question, facts: Catalogue) -> list[str]:
    lens = question.lens
    glass = lens is not None and _THORIATED in lens.traits
    long = facts.assumptions["heavy-from"].value.nominal
    heavy = lens is not None and (_OF_WEIGHT in lens.traits or (lens.focal_length_mm or 0.0) >= long)
    return [*([_OF_GLASS] if glass else []), *([_OF_WEIGHT] if heavy else []), *_OF_ANY]
