"""Rings of a stack told by their two mounts and a bare length: 'm42 to E 1, helicoid 17-31, step ring m39>m42 (1)'."""

from __future__ import annotations

from typing import Final

from grammar.questions import RING
from grammar.things.rings_in_rows import leads
from grammar.words.groups import FLAT_PIECE
from grammar.words.tokens import Token, is_plural

_RINGS: Final = frozenset([RING, "step-ring", "thread-reducer"])  # words for a ring without glass
_ENDS: Final = frozenset(["JOIN", "STOP", "CUE", "VERB", "PREP", "MARK", "AT"])  # what parts a piece from the next
_LED: Final = frozenset(["FILLER", "DET", "MEASURE"])  # 'thin', 'flat', 'the' before the mounts
_OPEN, _CLOSE, _LINKS = "(", ")", frozenset(["-", "/"])
_LONGEST: Final = 12.0  # mm, of a ring told by a bare whole number; one to tenths may be longer
_LONGEST_FINE: Final = 60.0
_BUSH: Final = "thread-reducer"
_LEAST_WIDTH: Final = 24.0  # mm, of the screw of a lens for a stack
_MOST_APART: Final = 13.0  # mm, of the two screws of a bush
_THICKEST_BUSH: Final = 4.0  # mm
_SLASHED: Final = frozenset(["FRACTION", "COMBO"])
_SPANNED: Final = frozenset(["helicoid", "bellows", _BUSH, "step-ring"])
_LEAST_END: Final = 5.0  # mm, of a draw that is shut
_PAIR: Final = 3  # tokens of two mounts and what links them


def with_stacks_told(tokens: list[Token]) -> list[Token]:
    """The tokens with the length of such a ring before its mounts and a word for it behind them.

    Only beside another piece: 'M42 to E 50' alone tells a lens.
    """
    if not any(token.kind == "PIECE" for token in tokens):
        return tokens
    tokens = _with_widths_headed(_with_ends_slashed(tokens))
    out: list[Token] = []
    at = 0
    while at < len(tokens):
        end = at + _PAIR
        if _are_linked(tokens[at:end]) and _is_sized_before(out) and _ends(tokens, _past_fillers(tokens, end)):
            front, link, rear = tokens[at:end]
            out += [front, link.as_("MARK", text="-"), rear, Token("PIECE", "ring", rear.column, RING)]
            at = _past_fillers(tokens, end)
            continue
        if _are_linked(tokens[at:end]) and _is_slashed_ring(tokens, at):
            out += [tokens[at], tokens[at + 1].as_("MARK", text="-"), tokens[at + 2]]  # 'a 2 mm m42/l flat adapter'
            at = end
            continue
        if not _are_linked(tokens[at:end]) or not _is_begun(out):
            out.append(tokens[at])
            at += 1
            continue
        ahead = _word_ahead(out, tokens)
        rest, word, size = _behind(tokens, end)
        named = word is not None or ahead is not None
        told = size is not None and size.kind != "NUMBER" and ahead is None and not _is_behind_mount(out)
        told = told and (word is not None or size is None or size.numbers[0] > _THICKEST_BUSH)
        if size is None or told or not (named or _is_beside_piece(out, tokens, end)):
            out.append(tokens[at])
            at += 1
            continue
        if ahead is not None and word is None:
            word = ahead
            out.remove(ahead)
        ring = (word or Token("PIECE", "ring", tokens[end - 1].column)).as_("PIECE", value=RING)
        front, link, rear = tokens[at:end]
        out += [size.as_("LENGTH", unit="mm", column=front.column), front, link.as_("MARK", text="-"), rear, ring]
        at = rest
    return out


def _with_ends_slashed(tokens: list[Token]) -> list[Token]:
    """'m42 25/55 helicoid', '39/42 bush': the two ends of a draw, or two widths, and no fraction."""
    out = list(tokens)
    for at, token in enumerate(tokens):
        low, high = token.numbers if token.kind in _SLASHED and len(token.numbers) == len(_LINKS) else (0.0, 0.0)
        beside = [one for one in (*tokens[max(0, at - 1) : at], *tokens[at + 1 : at + 2]) if one.kind == "PIECE"]
        if _LEAST_END <= low < high and any(one.value in _SPANNED for one in beside):
            out[at] = token.as_("RANGE", unit="")
    return out


def _with_widths_headed(tokens: list[Token]) -> list[Token]:
    """'helicoid 17-31 + step 39-42 1mm': two widths of screws and a small length tell a bush, beside what is drawn.

    A small length before 'board' or 'flat' tells a ring there as well.
    """
    out: list[Token] = []
    for at, token in enumerate(tokens):
        out.append(token)
        widths = token.kind == "RANGE" and not token.unit and _LEAST_WIDTH <= token.numbers[0] < token.numbers[1]
        size = tokens[at + 1] if at + 1 < len(tokens) else None
        small = size is not None and size.is_mm and size.numbers[0] <= _THICKEST_BUSH and _ends(tokens, at + 2)
        begun = _is_begun(tokens[:at]) and not any(one.kind == "PIECE" for one in tokens[max(0, at - 1) : at])
        flat = size is not None and size.kind == "FILLER" and FLAT_PIECE in size.groups and _ends(tokens, at + 2)
        if flat and token.is_mm and token.numbers[0] <= _THICKEST_BUSH and _is_begun(tokens[:at]):
            out.append(Token("PIECE", "ring", token.column, RING))  # 'a 1 mm board', '1 mm flat'
        if widths and token.numbers[1] - token.numbers[0] <= _MOST_APART and small and begun:
            out.append(Token("PIECE", "bush", token.column, _BUSH))
    return out


def _are_linked(row: list[Token]) -> bool:
    if len(row) < _PAIR or not row[0].kind == row[2].kind == "MOUNT" or row[0].ids == row[2].ids:
        return False
    return leads(row[1]) or row[1].text in _LINKS


def _is_slashed_ring(tokens: list[Token], at: int) -> bool:
    """Whether a length in mm stands before two mounts that a stroke parts, and a word for a ring behind them."""
    before, after = tokens[at - 1] if at else None, tokens[at + _PAIR] if at + _PAIR < len(tokens) else None
    ringed = after is not None and after.kind == "PIECE" and after.value in _RINGS and not is_plural(after)
    return tokens[at + 1].text == "/" and ringed and before is not None and before.is_mm and _is_length(before)


def _is_begun(out: list[Token]) -> bool:
    """Whether nothing that is told before belongs to the same piece, but for a word for a ring, or how thin it is."""
    before = [one for one in out if one.kind not in _LED]
    return not before or before[-1].kind in _ENDS or (before[-1].kind, before[-1].value in _RINGS) == ("PIECE", True)


def _is_sized_before(out: list[Token]) -> bool:
    """'1mm flat m42-mft,': its length stands before the mounts, and begins the piece."""
    before = [one for one in out if one.kind not in _LED]
    sized = bool(before) and before[-1].is_mm and _is_length(before[-1])
    return sized and (len(before) == 1 or before[-2].kind in _ENDS)


def _ends(tokens: list[Token], place: int) -> bool:
    return place >= len(tokens) or (tokens[place].kind in _ENDS and tokens[place].text not in _LINKS)


def _past_fillers(tokens: list[Token], place: int) -> int:
    """Past 'flat', 'thin' behind the mounts: 'm42-x flat 1mm'."""
    while place < len(tokens) and tokens[place].kind == "FILLER":
        place += 1
    return place


def _is_behind_mount(out: list[Token]) -> bool:
    """'Z + m39 to m42 ring 1 mm': where the first mount would make a list with the one before."""
    return [one.kind for one in out[-2:]] == ["MOUNT", "JOIN"]


def _word_ahead(out: list[Token], tokens: list[Token]) -> Token | None:
    """'step ring m39>m42': the word for the ring stands before its mounts, and begins the piece."""
    word = out[-1] if out else None
    if word is None or word.kind != "PIECE" or word.value not in _RINGS or is_plural(word):
        return None
    before = [one for one in out[:-1] if one.kind not in _LED]
    return word if not before or before[-1].kind in _ENDS else None


def _behind(tokens: list[Token], at: int) -> tuple[int, Token | None, Token | None]:
    """Where it goes on behind the mounts, the word for the ring there, and its length; None where they are not told."""
    word = tokens[at] if at < len(tokens) and tokens[at].kind == "PIECE" and tokens[at].value in _RINGS else None
    place = at + (word is not None)
    place = _past_fillers(tokens, place)
    bracket = place < len(tokens) and tokens[place].text == _OPEN
    place += bracket
    size = tokens[place] if place < len(tokens) else None
    if size is None or not _is_length(size):
        return at, word, None
    place += 1
    if bracket:
        if place >= len(tokens) or tokens[place].text != _CLOSE:
            return at, word, None
        place += 1
    return (place, word, size) if _ends(tokens, place) else (at, word, None)


def _is_length(token: Token) -> bool:
    if not token.may_be_mm or token.text.isalpha():
        return False
    return 0 < token.numbers[0] <= (_LONGEST_FINE if "." in token.text else _LONGEST)


def _is_beside_piece(out: list[Token], tokens: list[Token], end: int) -> bool:
    return any(one.kind == "PIECE" for one in (*out, *tokens[end:]))
