"""What was taken off is put on again: 'and back on', 'with the reducer again' after 'without it'."""

from __future__ import annotations

from grammar.hearing import Heard
from grammar.questions import Question, Thing
from grammar.turns.number_roles import ON_AGAIN
from grammar.turns.sticking import is_open


def put_back(heard: Heard, said: Question, before: Question) -> tuple[Thing, ...]:
    """The pieces that stood before they were taken off; none where none are meant."""
    prior = before.prior
    stood = prior.adapters if prior is not None and prior.adapters else before.stood
    stood = tuple(one for one in stood if not is_open(one))
    if not stood or before.adapters or heard.cast.lenses or heard.cast.bodies or not _is_on_again(heard, said):
        return ()
    kinds = {one.piece for one in said.adapters}
    again = tuple(one for one in stood if not kinds or one.piece in kinds)
    return again if all(is_open(one) for one in said.adapters) else ()


def _is_on_again(heard: Heard, said: Question) -> bool:
    return heard.tells(ON_AGAIN) or (bool(said.adapters) and _says_again(heard))


def _says_again(heard: Heard) -> bool:
    return any(token.text.casefold() == "again" for token in heard.line.tokens)
