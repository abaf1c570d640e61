"""The numbers on the barrel of a microscope objective: '4x, 0.10, 160' are no lengths of anything else."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from engine.base.compact import replace
from grammar.words.groups import COVER_GLASS, OBJECTIVE_TUBE
from grammar.words.tokens import Token

APERTURE: Final = "na"
_KIND: Final = "objective"
_LEAST, _MOST = 0.02, 1.5  # numerical apertures that are made
_AT: Final = "at"
_BOTH: Final = 2
_NEAR: Final = 2  # tokens before a thread, among which the word for it is: 'the thread is 26x0.7'


def with_objectives_told(tokens: list[Token]) -> list[Token]:
    """The numerical aperture becomes KEYED, the length of its tube and the cover glass ask nothing."""
    if not any(_KIND in (token.value, *token.text.casefold().split()) for token in tokens):
        return tokens
    tokens = [part for at in range(len(tokens)) for part in _marks(tokens, at)]
    out, found = list(tokens), False
    powered = any(token.kind == "TIMES" for token in tokens)
    for at, token in enumerate(tokens):
        if token.kind != "NUMBER" or len(token.numbers) != 1:
            continue
        number = token.numbers[0]
        # '4x objective at 150 on MFT': how far off the sensor it is held, as it must be
        held = powered and at > 1 and tokens[at - 1].value == _AT and tokens[at - 2].kind in ("KIND", "LENS")
        if OBJECTIVE_TUBE in token.groups or held or (COVER_GLASS in token.groups and found):
            out[at] = token.as_("FILLER")
        elif "." in token.text and _LEAST <= number <= _MOST and not found:
            out[at], found = token.as_("KEYED", value=APERTURE), True
    return out


def _marks(tokens: list[Token], at: int) -> Iterator[Token]:
    """'10x 0.25' as the magnification and the aperture that it is.

    A thread by its letter, of a known size or beside the word for one stays as it is.
    """
    token = tokens[at]
    power, times, aperture = token.text.casefold().partition("x")
    bare = token.kind == "THREAD" and bool(times) and power.strip().isdigit() and not token.ids
    bare = bare and all(one.kind != "MOUNTWORD" for one in tokens[max(0, at - _NEAR) : at + 2])
    if not bare or len(token.numbers) != _BOTH or not _LEAST <= token.numbers[1] <= _MOST:
        yield token
        return
    start = len(token.text) - len(aperture.lstrip())
    yield replace(token, kind="TIMES", text=token.text[: len(power) + 1], value="", numbers=token.numbers[:1])
    yield replace(
        token,
        kind="NUMBER",
        text=token.text[start:],
        column=token.column + start,
        value="",
        numbers=token.numbers[1:],
        gap=start > len(power) + 1,
    )
