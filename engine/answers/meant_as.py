"""What a short text stands for, written out: a figure asked of one mount more, a register, both sides of a frame."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.answers.found.same_name import as_register
from engine.answers.picture.frame_alone import with_both_sides
from grammar.kinds import IDENTIFY_MOUNT
from grammar.words.lexicon import Lexicon
from grammar.words.mentioned import mentioned
from grammar.words.tokens import Token, tokens_of

if TYPE_CHECKING:
    from engine.answers.parts.answer import Answer
    from engine.facts.catalogue import Catalogue
    from grammar.questions import Question

OVER: Final = "pitches-over"
# the key of a figure that was asked, and how it is asked in full
_ASKED: Final = {
    OVER: "how long are ten threads of {}",
    "figure-register": "what is the register of {}",
    "figure-throat": "what is the throat of {}",
    "figure-angle": "what is the thread angle of {}",
    "figure-pitch": "what is the pitch of {}",
    "thread-width": "what is the diameter of a {} thread",
    "figure-thread": "what is the thread of {}",
}
_ASKS: Final = "figure-asked"
_ELSE: Final = "figure-not-asked"
_HEARD: Final = frozenset([*_ASKED, _ASKS, _ELSE])
_IDLE: Final = frozenset(["JOIN", "CUE", "FILLER", "DET", "MARK", "STOP", "MOUNTWORD", "VERB", "LENS"])
_VERBS: Final = frozenset(["", "it", "be", "own"])  # 'what would it have been for T2'
_OF: Final = frozenset(["of", "for", "with"])
# what says that more is told of than a mount and its figure, which a pitch that is told does not ask for
_MORE: Final = frozenset(
    ["LENGTH", "FOCAL", "FNUM", "COMBO", "PITCH", "PIECE", "ADAPTER", "NAMED", "BODY", "FORMAT", "LIGHT"]
)
_MOST_WORDS: Final = 8  # of a text that hardly names more than a mount
_MOST_ASKED: Final = 14  # words of a question that a figure is all of


def meant_as(meant: str, last: Answer | None, before: Question | None, lexicon: Lexicon, catalogue: Catalogue) -> str:
    """The text as it is to be read. `last`: the answer told last; `before`: the question that is gone on with."""
    if last is not None and len(meant.split()) <= _MOST_ASKED:
        meant = figure_named(meant, lexicon) or as_figure(meant, last, lexicon)
    return with_both_sides(as_register(meant, before, catalogue), catalogue)


def figure_named(text: str, lexicon: Lexicon) -> str | None:
    """'how wide is the screw of T2' on the way: the figure of that mount, whatever lens and body are talked of."""
    keys = {one.key for one in mentioned(text, lexicon.words.mentions, _HEARD)}
    key = next((one for one in _ASKED if one in keys), None)
    if key is None or _ELSE in keys or not (_ASKS in keys or "?" in text):
        return None
    tokens = tokens_of(text, lexicon).tokens
    counts = [one for one in tokens if one.kind in ("NUMBER", "COUNT")]
    if any(one.kind in _MORE for one in tokens) or len(counts) > (key == OVER):
        return None
    named = _only_mount(list(tokens))
    return _ASKED[key].format(named) if named is not None else None


def as_figure(text: str, last: Answer, lexicon: Lexicon) -> str:
    """'and CS?' after 'what is the register of D': the same figure of that mount; 'and its pitch': another of it."""
    before = last.question
    if before is None or len(text.split()) > _MOST_WORDS or len(before.text.split()) > _MOST_ASKED:
        return text
    key = next((one for one in _ASKED if before.places(one)), None)
    told = before.adapters or (before.values and before.intent == IDENTIFY_MOUNT and key != OVER)
    if key is None or told:
        return text
    tokens = list(tokens_of(text, lexicon).tokens)
    named = _only_mount(tokens) if all(_is_idle(one) for one in tokens) else None
    if named is not None:
        return _ASKED[key].format(named)
    keys = {one.key for one in mentioned(text, lexicon.words.mentions, _HEARD)}
    again = next((one for one in _ASKED if one in keys), None)
    of_it = _mount_before(before)
    if again is None or of_it is None or _ELSE in keys or any(_tells_more(one) for one in tokens):
        return text
    return _ASKED[again].format(of_it)


def _mount_before(before: Question) -> str | None:
    """The one mount that the figure before was of, by the words it was typed in."""
    things = [one for one in (*before.things, *before.lenses, *before.bodies) if one.kind == "mount"]
    typed = {one.words for one in things if one.words and one.words.casefold() in before.text.casefold()}
    return _as_mount(typed.pop()) if len(typed) == 1 else None


def _only_mount(tokens: list[Token]) -> str | None:
    """The one mount that is named, as typed."""
    # 'a T2', 'what is a register': a small 'a' is the article
    mounts = [one for one in tokens if one.kind in ("MOUNT", "LETTER") and one.text != "a"]
    return _as_mount(mounts[0].text) if len(mounts) == 1 else None


def _as_mount(words: str) -> str:
    return f"the {words} mount" if len(words) == 1 else words


def _is_idle(token: Token) -> bool:
    """Whether a word tells and asks nothing but the name of a mount."""
    if token.kind == "PREP":
        return token.value in _OF
    return token.kind in ("MOUNT", "LETTER") or (
        token.kind in _IDLE and (token.kind != "VERB" or token.value in _VERBS)
    )


def _tells_more(token: Token) -> bool:
    return token.kind in _MORE or token.kind == "MOUNT"
