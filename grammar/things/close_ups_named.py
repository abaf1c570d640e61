"""A power and 'closeup' behind it, with no word for a lens: '+2 closeup on my 100' is a close-up lens."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import LENS_SAID
from grammar.words.tokens import Token

_PIECE: Final = "close-up-lens"
_CLOSE_UP: Final = "closeup"
_FILTER: Final = "filter"
_BOTH: Final = "both"
_GLASS: Final = frozenset([_PIECE, _FILTER])
_LENGTHS: Final = frozenset(["LENGTH", "NUMBER", "COMBO", "RANGE"])
_TOLD: Final = frozenset(["FOCAL", "NAMED", "MOUNTWORD"])
_BESIDE: Final = 3  # tokens
_SHORTEST: Final = 12.0  # mm
FRONT_SIZES: Final = frozenset(
    [37.0, 43.0, 46.0, 49.0, 52.0, 55.0, 58.0, 62.0, 67.0, 72.0, 77.0, 82.0]
)  # of front threads
_JOINING: Final = str.maketrans("", "", " -")


def with_close_ups_named(tokens: list[Token]) -> list[Token]:
    """The cue behind a power in dioptres becomes the PIECE that has it."""
    out = _told_one_by_one(_told_both(_counted(list(tokens))))
    for at in range(1, len(out)):
        token = out[at]
        spoken = token.kind == "CUE" and token.text.casefold().translate(_JOINING).startswith(_CLOSE_UP)
        spoken = spoken or (token.kind == "LENS" and LENS_SAID in token.groups)  # '+4 lens on a 135'
        if spoken and out[at - 1].kind == "DIOPTRE":
            out[at] = token.as_("PIECE", value=_PIECE)
        beside = {one.kind for one in out[max(0, at - 2) : at + 3]}  # '+2 magnifier filter', 'filter +4'
        if token.kind == "PIECE" and token.value == _FILTER and "DIOPTRE" in beside:
            out[at] = token.as_("PIECE", value=_PIECE)
    return _with_lens_behind(out)


def _with_lens_behind(tokens: list[Token]) -> list[Token]:
    """'+2 close-up lens, 135mm, how close': the one length told behind such glass is the lens it is put on."""
    powers = [at for at, one in enumerate(tokens) if one.kind == "DIOPTRE"]
    lengths = [at for at, one in enumerate(tokens) if one.kind in _LENGTHS]
    if not powers or len(lengths) != 1 or any(one.kind in _TOLD for one in tokens):
        return tokens
    at, token = lengths[0], tokens[lengths[0]]
    last = max(n for n, one in enumerate(tokens) if one.kind == "DIOPTRE" or one.value in _GLASS)
    beside = 0 < at - last <= _BESIDE and all(one.kind in ("JOIN", "DET", "STOP") for one in tokens[last + 1 : at])
    metric = token.is_mm and token.numbers[0] >= _SHORTEST
    if beside and metric and (at - last > 1 or token.numbers[0] not in FRONT_SIZES):
        apart = Token("CUE", "", token.column)  # so that it is no length of that glass
        return [*tokens[: last + 1], apart, token.as_("FOCAL"), *tokens[at + 1 :]]
    return tokens


def _told_both(tokens: list[Token]) -> list[Token]:
    """'with +2, then both +2 and +1': two that are each told, of which none is there twice or was not told before."""
    for at, token in enumerate(tokens[:-3]):
        row = tokens[at + 1 : at + 4]
        both = token.text.casefold() == _BOTH and [row[0].kind, row[2].kind] == ["DIOPTRE", "DIOPTRE"]
        if not (both and row[1].value == "and"):
            continue
        before = [one.numbers for one in tokens[:at] if one.kind == "DIOPTRE"]
        again = [n for n in (at + 1, at + 3) if tokens[n].numbers in before]
        return [
            one.as_("CUE") if n == at or n in again or (again == [at + 1] and n == at + 2) else one
            for n, one in enumerate(tokens)
        ]
    return tokens


def _told_one_by_one(tokens: list[Token]) -> list[Token]:
    """'two close-ups +1 and +3': each of the two is told by its power, and none is there twice."""
    powers = [one.numbers[0] for one in tokens if one.kind == "DIOPTRE"]
    first = next((n for n, one in enumerate(tokens) if one.kind == "DIOPTRE"), 0)
    counts = [
        n for n, one in enumerate(tokens[:first])
        if one.kind in ("NUMBER", "COUNT") and one.numbers and one.numbers[0] == len(powers) and one.text.isalnum()
        and tokens[first].column - one.column - len(one.text) > 1  # 'two +2 and a +4' are three
    ]  # fmt: skip
    if len(set(powers)) < len(powers) or len(powers) == 1 or not counts:
        return tokens
    return [one.as_("CUE") if n == counts[-1] else one for n, one in enumerate(tokens)]


def _counted(tokens: list[Token]) -> list[Token]:
    """'two +2s on a 135': two close-up lenses, and no seconds."""
    for at in range(2, len(tokens)):
        count, plus, power = tokens[at - 2 : at + 1]
        several = count.kind in ("NUMBER", "COUNT") and count.numbers[0] == int(count.numbers[0])
        if several and plus.text == "+" and power.kind == "SHUTTER" and power.text[:-1].isdigit():
            told = power.as_(
                "DIOPTRE", text=f"+{power.text[:-1]}", value="", unit="", numbers=(float(power.text[:-1]),)
            )
            piece = Token("PIECE", "close-up lenses", power.column, _PIECE)
            return [*tokens[: at - 2], count.as_("COUNT"), told, piece, *tokens[at + 1 :]]
    return tokens
