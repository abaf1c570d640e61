"""What was taken off is put on again: 'and back on', 'with the reducer again' after 'without it'."""

from __future__ import annotations

import re
from typing import Final

from grammar.hearing import Heard
from grammar.questions import Question, Thing
from grammar.turns.number_roles import ON_AGAIN
from grammar.turns.spans import span_of
from grammar.turns.sticking import is_open
from grammar.turns.tubes_counted import says_both

_BACK: Final = ("back", "again")
_PUT: Final = frozenset(["in", "on", "back", "again", "between", "behind"])
_LONGER: Final = frozenset(["long", "longer", "longest", "big", "bigger", "larger"])
_SHORTER: Final = frozenset(["short", "shorter", "shortest", "small", "smaller"])
_ONE: Final = frozenset(["one", "helicoid", "bellows"])
_NUMBERS: Final = re.compile(r"\d+(?:\.\d+)?")


def put_back(heard: Heard, said: Question, before: Question) -> tuple[Thing, ...]:
    """The pieces that stood before they were taken off; none where none are meant."""
    prior = before.prior
    stood = prior.adapters if prior is not None and prior.adapters else before.stood
    stood = tuple(one for one in stood if not is_open(one))
    if before.adapters:
        return _told_by_length(heard, before) or _of_two_ranged(heard, before)
    if named := _named_by_length(heard, stood, before):
        return named
    elsewhere = heard.cast.bodies and not _says_with_it(heard)  # 'with it again on E'
    if not stood or before.adapters or heard.cast.lenses or elsewhere or not _is_on_again(heard, said):
        return ()
    kinds = {one.piece for one in said.adapters}
    again = tuple(one for one in stood if not kinds or one.piece in kinds)
    return again if all(is_open(one) for one in said.adapters) else ()


def _told_by_length(heard: Heard, before: Question) -> tuple[Thing, ...]:
    """'back to the 4 mm', 'the 14 again' after others took its place: what stood there, told by how long it is."""
    told = [one for one in heard.line.tokens if one.numbers and not one.text.isalpha()]
    back = any(one.text.casefold() in _BACK for one in heard.line.tokens)
    if back and not told and says_both(heard) and len(before.stood) > 1:
        return before.stood  # 'back to both' after one of two tubes
    if len(told) != 1 or not back or heard.cast.bodies or told[0].unit not in ("", "mm") or told[0].kind == "FNUM":
        return ()
    length, lenses = told[0].numbers[0], {one.focal_length_mm for one in before.known}
    meant = [one for one in before.stood if one.thickness_mm is not None and length in one.thickness_mm]
    here = any(one.thickness_mm is not None and length in one.thickness_mm for one in before.adapters)
    if len(meant) != 1 or here or length in lenses or len(before.stood) != 1:
        return ()
    return (meant[0],)


def _of_two_ranged(heard: Heard, before: Question) -> tuple[Thing, ...]:
    """'ok the long one' after another helicoid was tried in a helicoid's place: what stood there with it before."""
    words = {one.text.casefold() for one in heard.line.tokens}
    longer, shorter = bool(words & _LONGER), bool(words & _SHORTER)
    spans = [[span for one in row if (span := span_of(one)) is not None] for row in (before.adapters, before.stood)]
    if longer == shorter or not words & _ONE or [len(row) for row in spans] != [1, 1]:
        return ()
    now, then = spans[0][0][1], spans[1][0][1]
    return before.stood if now != then and (then > now) == longer else ()


def _named_by_length(heard: Heard, stood: tuple[Thing, ...], before: Question) -> tuple[Thing, ...]:
    """'the 5 in then' after a 5 mm ring that was taken off, and no lens of that length."""
    told = [one for one in heard.line.tokens if one.numbers and not one.text.isalpha()]
    put = any(one.text.casefold() in _PUT for one in heard.line.tokens)
    others = heard.cast.bodies or heard.cast.pieces or any(part.has_mount_or_kind for part in heard.cast.lenses)
    if len(told) != 1 or not put or others or told[0].unit not in ("", "mm", "in") or told[0].kind == "FNUM":
        return ()
    size = told[0].text.split()[0].removesuffix("mm")
    if any(f"{one.focal_length_mm or 0:g}" == size for one in before.known):
        return ()
    meant = tuple(one for one in stood if size in (_length(one), *_NUMBERS.findall(one.words)))
    return meant if len(meant) == 1 else ()


def _length(piece: Thing) -> str:
    fixed = piece.thickness_mm is not None and len(set(piece.thickness_mm)) == 1
    return f"{piece.thickness_mm[0]:g}" if fixed and piece.thickness_mm is not None else ""


def _is_on_again(heard: Heard, said: Question) -> bool:
    return heard.tells(ON_AGAIN) or (bool(said.adapters) and _says_again(heard)) or _says_with_it(heard)


def _says_with_it(heard: Heard) -> bool:
    """'with it, are the corners lit', 'and with it?' after 'without it'."""
    said = [one for one in heard.line.tokens if one.kind not in ("JOIN", "MARK", "STOP")]
    return [(one.kind, one.value) for one in said[:2]] == [("PREP", "with"), ("VERB", "it")]


def _says_again(heard: Heard) -> bool:
    return any(token.text.casefold() == "again" for token in heard.line.tokens)
