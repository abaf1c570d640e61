"""Which of the frames named is a mode of the body, 'full frame in Super 35 mode': that one alone is what counts."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.said import mentions, numbers
from grammar.questions import MODE, Question, Thing
from grammar.words.mentioned import Mention

_BESIDE: Final = 2  # characters at most between the name of a frame and the word that makes it a mode


def modes_told(question: Question) -> tuple[str, ...]:
    """The formats told as a mode of something larger that is told too; none where they are set against each other."""
    places = question.places("as-mode")
    modes = [thing for thing in question.frames if thing.id and any(_beside(thing, place) for place in places)]
    modes = modes[-1:] if len(modes) == len(question.frames) else modes  # 'full frame body crop mode APS-C'
    held = [thing for thing in question.frames if thing.id and thing.id == question.said(MODE)]
    modes = modes or held[:1]  # 'and a 75?' after '50 mm on full frame in APS-C mode'
    others = [thing for thing in (*question.bodies, *question.frames) if thing not in modes]
    if not modes or not others or question.places("set-apart-by"):
        return ()
    return tuple(dict.fromkeys(thing.id or "" for thing in modes))


def with_mode_kept(question: Question) -> Question:
    """The question with the frame told as a mode among its values, so that it is one in the next turn."""
    modes = modes_told(question)
    rest = question.rest(MODE)
    return question.with_(values=(*rest, (MODE, modes[0])) if modes else rest)


def _beside(thing: Thing, place: Mention) -> bool:
    """'APS-C mode', 'crop mode APS-C', 'Super 16 crop': the word within the name, or right before or behind it."""
    start, end = thing.column - 1, thing.column - 1 + len(thing.words)
    within = start <= place.at and place.end <= end
    return within or 0 <= place.at - end <= _BESIDE or 0 <= start - place.end <= _BESIDE


def mode_unknown(question: Question) -> str:
    """What to tell where a mode of unknown size is spoken of; empty where there is none, or its factor is told."""
    if not mentions(question, "unknown-mode") or numbers(question, "crop") or modes_told(question):
        return ""
    return (
        "How much of the sensor that mode uses hangs on the body, and is not counted here: tell its factor, such as"
        " '4K crops 1.25x', or the format it goes by."
    )
