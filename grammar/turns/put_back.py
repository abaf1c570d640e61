"""What was taken off is put on again: 'and back on', 'with the reducer again' after 'without it'."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.questions import Question, Thing
from grammar.turns.sticking import is_open

ON_AGAIN: Final = "on-again"  # the cue of what is put on once more


def put_back(heard: Heard, said: Question, before: Question) -> tuple[Thing, ...]:
    """The pieces that stood before they were taken off; none where none are meant."""
    prior = before.prior
    stood = tuple(one for one in prior.adapters if not is_open(one)) if prior is not None else ()
    if not stood or before.adapters or heard.cast.lenses or heard.cast.bodies or not _is_on_again(heard, said):
        return ()
    kinds = {one.piece for one in said.adapters}
    again = tuple(one for one in stood if not kinds or one.piece in kinds)
    return again if all(is_open(one) for one in said.adapters) else ()


def _is_on_again(heard: Heard, said: Question) -> bool:
    return heard.tells(ON_AGAIN) or (bool(said.adapters) and _says_again(heard))


def _says_again(heard: Heard) -> bool:
    return any(token.text.casefold() == "again" for token in heard.line.tokens)
