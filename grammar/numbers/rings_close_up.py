"""Rings that are told by what only a lens or a tube has: 'a 20mm f2.8 ring', 'rings of 20, 5 and 2, how big'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.number_rows import is_number
from grammar.things.casting import SPACER
from grammar.things.close_ups_named import FRONT_SIZES
from grammar.words.tokens import Token

_REVERSED, _COUPLING = "reversed", "coupling-ring"
_LEAST_COUPLED: Final = 50.0  # mm, of a lens that another is turned round before
_RINGS: Final = "rings"
_SET: Final = 3  # lengths
_LONGEST_RING: Final = 100.0  # mm
_LEAST_LENS_MM: Final = 12.0
_OF_RING: Final = frozenset(["MOUNT", "LINK", "LETTER", "LENGTH", "NUMBER"])  # before a ring of the trade
_PAUSES: Final = frozenset(["MARK", "FILLER", "CUE", "JOIN"])
_PASSED: Final = frozenset(["DET", "LETTER", "COUNT", "FILLER"])
_LENS_AND_TUBE: Final = ("lens", "join", "length", "tube")
_FOCALS: Final = frozenset(["LENGTH", "NUMBER", "COMBO", "NAMED", "FOCAL"])
_BETWEEN: Final = frozenset(["JOIN", "DET", "MARK"])


def tell_lens_of_ring(tokens: list[Token]) -> None:
    """'tolerance for a 20mm f2.8 ring': no ring has a stop, so the length before it is that of its lens."""
    for at in range(len(tokens) - 2):
        length, stop, ring = tokens[at : at + 3]
        if (
            length.kind in ("LENGTH", "NUMBER")
            and stop.kind == "FNUM"
            and (ring.kind, ring.value) == ("PIECE", "adapter")
        ):
            tokens[at] = length.as_("FOCAL", unit="mm")
            tokens.insert(at + 2, Token("PREP", "", ring.column, value="with"))
            return


def tell_rings_as_tubes(tokens: list[Token]) -> None:
    """'rings of 20, 5 and 2 behind a 50, how big': where close-ups are asked for, rings of told lengths are tubes."""
    for at, token in enumerate(tokens):
        named = token.kind == "PIECE" and token.value == "adapter" and token.text.casefold().endswith(_RINGS)
        joins_mounts = at > 1 and all(one.kind in ("MOUNT", "LINK", "LETTER") for one in tokens[at - 2 : at])
        place = at + 1
        while place < len(tokens) and (tokens[place].kind in ("JOIN", "MARK") or tokens[place].value == "of"):
            place += 1
        row = [one for one in tokens[place : place + 3] if one.kind != "MARK"]
        several = len(row) > 1 and is_number(row[0]) and (is_number(row[1]) or row[1].kind in _BETWEEN)
        if named and not joins_mounts and several and all(one.numbers[0] <= _LONGEST_RING for one in row[:1]):
            tokens[at] = token.as_("PIECE", value=SPACER)


def tell_sets_of_rings(tokens: list[Token]) -> None:
    """'a set of 7 14 28 rings': three lengths and more are those of tubes, since rings for infinity have one."""
    for at, token in enumerate(tokens):
        if token.kind != "PIECE" or token.value != "adapter" or not token.text.casefold().endswith(_RINGS):
            continue
        first = at
        while first and (
            is_number(tokens[first - 1]) or tokens[first - 1].is_mm or tokens[first - 1].kind in ("JOIN", "MARK")
        ):
            first -= 1
        row = [one for one in tokens[first:at] if is_number(one) or one.is_mm]
        if len(row) >= _SET and all(one.numbers[0] <= _LONGEST_RING for one in row):
            tokens[at] = token.as_("PIECE", value=SPACER)


def with_rings_pictured(tokens: list[Token]) -> list[Token]:
    """'shots of the rings: 50mm with a 16mm tube': rings that are photographed, and behind them a lens and its tube.

    The length right behind the ring is that of the lens, where nothing else can be it and a tube follows.
    """
    tokens = _with_coupled_lens(tokens)
    for at, token in enumerate(tokens[:-3]):
        ring = token.kind == "PIECE" and token.value == "adapter" and not (at and tokens[at - 1].kind in _OF_RING)
        if not ring and token.kind != "MOTIF":
            continue
        place = next((n for n in range(at + 1, len(tokens)) if tokens[n].kind not in _PAUSES), len(tokens))
        row = [one for one in tokens[place : place + 6] if one.kind not in _PASSED and not _is_count(one)]
        if len(row) < len(_LENS_AND_TUBE) or not _is_lens_and_tube(row):
            continue
        if place == at + 1 and ring and token.text.casefold() == _RINGS:
            continue  # 'rings 10 + 16 mm tube'
        others = [one for one in tokens if one.kind in _FOCALS and one not in row and not _is_count(one)]
        if not others:
            seen = token.as_("FILLER") if ring else token
            lens = tokens[place].as_("FOCAL", unit="mm")
            return [*tokens[:at], seen, *tokens[at + 1 : place], lens, *tokens[place + 1 :]]
    return tokens


def _with_coupled_lens(tokens: list[Token]) -> list[Token]:
    """'50 backwards on a 200 coupler': a coupling ring has no length of its own; so wide no front thread is either."""
    turned = any((one.kind, one.value) == ("TRAIT", _REVERSED) for one in tokens)
    out = list(tokens)
    for at in range(1, len(out)):
        size = out[at - 1]
        metric = size.kind == "NUMBER" or size.is_mm
        whole = metric and size.text[:1].isdigit() and size.numbers[0] == int(size.numbers[0])
        coupled = turned and (out[at].kind, out[at].value) == ("PIECE", _COUPLING) and whole
        if coupled and size.numbers[0] >= _LEAST_COUPLED and size.numbers[0] not in FRONT_SIZES:
            out[at - 1] = size.as_("FOCAL", unit="mm")
            out[at] = out[at].as_("FILLER")
    return out


def _is_count(token: Token) -> bool:
    """'a single 16 mm tube'."""
    return token.kind == "NUMBER" and token.text[:1].isalpha()


def _is_lens_and_tube(row: list[Token]) -> bool:
    lens, join, length, piece = row[:4]
    sized = all(one.may_be_mm for one in (lens, length))
    tube = (piece.kind == "PIECE" and piece.value == SPACER) or (piece.kind, piece.value) == ("MEASURE", "extension")
    joined = join.value in ("with", "and", "+") or join.text.casefold() in ("with", "plus", "+", "and")
    whole = sized and lens.numbers[0] == int(lens.numbers[0]) and lens.numbers[0] >= _LEAST_LENS_MM
    return whole and tube and joined
