"""'25 mm of rings': so much is put between, whatever pieces make it up."""

from __future__ import annotations

from typing import Final

from grammar.numbers.tails import with_lens_behind_ring
from grammar.words.tokens import Token

_TUBE: Final = "extension-tube"
_TUBES: Final = ("tube", "tubes")
_MANY: Final = 4  # tubes
_OF: Final = "of"
_WITH: Final = frozenset(["with", "w"])
_PIECES: Final = frozenset(["adapter", "extension-tube"])
_EXTENSION: Final = "extension"
_NAMING: Final = frozenset(["MOUNT", "LINK", "PIECE"])  # what tells behind it which ring it is
_HELICOID: Final = "helicoid"
_LONGEST: Final = 120.0  # mm, of a ring
_ENDS: Final = frozenset(["STOP", "JOIN", "PREP", "CUE", "FILLER", "LIMIT", "VERB"])
_LONGEST_RING: Final = 60.0  # mm, of one told by a bare number
_IS: Final = "be"
_PARTED: Final = frozenset([",", ";", "."])
_MOST_TRAVEL: Final = 60.0  # mm


_LENSES: Final = frozenset(["LENS", "FOCAL", "COMBO", "NAMED"])
_LEAST_LENS: Final = 15.0  # mm


def with_pieces_of_length(tokens: list[Token]) -> list[Token]:
    """The tokens with a length in mm before 'of rings', 'of spacer' as one of extension."""
    tokens = _with_threaded_length(_with_helicoids_of(_with_lens_after(with_lens_behind_ring(tokens))))
    out = list(tokens)
    for at in range(len(tokens) - 2):
        size, of, piece = tokens[at : at + 3]
        after = tokens[at + 3] if at + 3 < len(tokens) else None
        named = after is not None and after.kind in _NAMING
        told = size.is_mm and of.text.casefold() == _OF
        if told and piece.kind == "PIECE" and piece.value in _PIECES and not named:
            out[at] = size.as_("KEYED", value=_EXTENSION)
            out[at + 1 : at + 3] = [of.as_("CUE"), piece.as_("CUE")]
    return out


def _with_threaded_length(tokens: list[Token]) -> list[Token]:
    """'10 mm of M42 tubes' is 'a 10 mm M42 tube'; of '3 of M42 tubes' it is how many."""
    for at in range(len(tokens) - 2):
        size, of, thread = tokens[at : at + 3]
        after = tokens[at + 3] if at + 3 < len(tokens) else None
        number = size.kind == "NUMBER" and not size.text.isalpha() and _MANY < size.numbers[0] <= _LONGEST
        if of.text.casefold() != _OF or thread.kind != "MOUNT" or not (size.is_mm or number):
            continue
        rest = tokens[at + 2 :]
        if after is not None and (after.kind, after.value) == ("PIECE", _TUBE):
            return [*tokens[:at], size.as_("LENGTH", unit="mm"), *_with_threaded_length(rest)]
        if thread.text.casefold().split()[-1] in _TUBES:  # the name of a mount of parts
            length = size.as_("KEYED", value=_EXTENSION)
            return [*tokens[:at], length, of.as_("CUE"), *_with_threaded_length(rest[1:])]
    return tokens


def _with_helicoids_of(tokens: list[Token]) -> list[Token]:
    """'a helicoid with 6 mm': so far it goes, and no lens; 'a helicoid with a 50' and 'with 50 mm lens' tell one."""
    out = list(tokens)
    for at in range(1, len(tokens) - 1):
        if _is_ring_of(tokens, at) or _is_ring_told(tokens, at):
            out[at + 1] = tokens[at + 1].as_("LENGTH", unit="mm")
            continue
        piece, beside, size = tokens[at - 1 : at + 2]
        ends = at + 2 == len(tokens) or tokens[at + 2].kind in ("STOP", "JOIN", "PREP")
        drawn = (piece.kind, piece.value) == ("PIECE", _HELICOID) and beside.text.casefold() in _WITH
        if drawn and size.is_mm and size.numbers[0] <= _MOST_TRAVEL and ends:
            out[at] = beside.as_("PREP", value=_OF, text=_OF)
    return out


def _is_ring_of(tokens: list[Token], at: int) -> bool:
    """'another ring of 28 on top', 'a tube of 12': so long it is, where no lens or thread is told behind."""
    piece, of, size = tokens[at - 1 : at + 2]
    after = tokens[at + 2] if at + 2 < len(tokens) else None
    goes_on = at + 3 < len(tokens) and bool(tokens[at + 3].numbers)  # 'rings of 42 to 49', 'tubes of 10 and 26'
    lens = after is not None and after.text == "," and [one.kind for one in tokens[at + 4 : at + 5]] == ["LENS"]
    ends = after is None or (after.kind in _ENDS and (lens or not goes_on))  # 'ring of 29, 35mm lens'
    sized = size.kind == "NUMBER" and not size.text.isalpha() and 0 < size.numbers[0] <= _LONGEST
    return piece.kind == "PIECE" and piece.value in _PIECES and of.text.casefold() == _OF and sized and ends


def _is_ring_told(tokens: list[Token], at: int) -> bool:
    """'T2 on EF, the ring is 10', 'the ring is 26, 50 mm lens': so long it is; 'is 2 too thin' tells by how much."""
    piece, is_, size = tokens[at - 1 : at + 2]
    after = tokens[at + 2] if at + 2 < len(tokens) else None
    ends = after is None or after.kind == "STOP" or (after.kind in ("JOIN", "CUE") and after.text in _PARTED)
    sized = size.kind == "NUMBER" and size.text.isdigit() and 0 < size.numbers[0] <= _LONGEST_RING
    return piece.kind == "PIECE" and piece.value in _PIECES and is_.value == _IS and sized and ends


def _with_lens_after(tokens: list[Token]) -> list[Token]:
    """'LTM on M ring 1.02 50mm': a ring told to hundredths, and then the lens by its focal length alone."""
    at = next((at for at, one in enumerate(tokens) if one.kind == "PIECE" and one.value == "adapter"), None)
    row = tokens[at + 1 : at + 3] if at is not None else []
    others = any(one.kind in _LENSES for one in tokens) or sum(bool(one.numbers) for one in tokens) != len(row)
    if at is None or len(row) != 2 or others or len(tokens) > at + 3:
        return tokens
    ring, lens = row
    fine = ring.kind in ("NUMBER", "LENGTH") and ring.unit in ("", "mm") and "." in ring.text
    whole = lens.kind == "LENGTH" and lens.unit == "mm" and lens.text.removesuffix("mm").strip().isdigit()
    if not (fine and whole and lens.numbers[0] >= _LEAST_LENS):
        return tokens
    return [*tokens[: at + 2], Token("JOIN", ",", lens.column, ","), lens, Token("LENS", "lens", lens.column, "")]
