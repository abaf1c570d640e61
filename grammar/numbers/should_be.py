"""A length told against what it should be: '25.3 instead of 25.5', 'mikes at 26.07 and should be 26.00'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.words.groups import INSTEAD, SWAPS
from grammar.words.token_kinds import LENGTHS
from grammar.words.tokens import Token, is_plural
from grammar.words.written import STOPS

NOMINAL: Final = "nominal"
_BEHIND: Final = "nominal-behind"  # value of words behind what should be: 'says 35 on the box'
_BEARS: Final = "bears"  # value of 'labelled', 'stamped'
_OWN: Final = "own"
_RING: Final = "ring"  # 'on the ring' is one phrase
_CALIPER: Final = "caliper"
_MEASURES: Final = "measure"
_WITH: Final = "with"
_FOR_WHICH: Final = frozenset(["for", "with", "by", "of"])
_NOT: Final = "not"
_IN: Final = "in"  # 'instead of in a cup'
_TWO: Final = 2
_AHEAD: Final = 3  # tokens at most from the words to the number that is right
_BETWEEN: Final = frozenset(["CUE", "DET", "PREP", "MEASURE"])
_OF_LENS: Final = frozenset(["LENS", "KIND"])
_IDLE: Final = frozenset(["DET", "FILLER", "LETTER"])  # before the piece: 'the proper cup', 'a cup'
_APART_MM: Final = 3.0  # a ring that is farther off is another ring
_LEAST_APART_MM: Final = 0.6  # a cup of two tenths may be off by as much as it is deep
_APART: Final = 0.25  # and so is one that is off by more than this share of it


def with_right_lengths(tokens: list[Token]) -> list[Token]:
    """What a length should be becomes KEYED as that, and the length that was measured beside it a thickness."""
    out = _with_swapped(_said_again(_with_mikes(_with_own(_by_caliper(tokens)))))
    for at, token in enumerate(out):
        if not _tells_right(tokens, at):
            continue
        out[at] = token.as_("CUE")
        right = _ahead(out, at) if token.value != _BEHIND else _behind(out, at)
        if right is None:
            _leave_out(out, at)
            continue
        measured = _measured(out, right)
        row = any(one.kind == "KEYED" and one.value == "reading" for one in out)
        if measured is None and not row:
            continue
        out[right] = out[right].as_("KEYED", value=NOMINAL, unit="mm")
        if measured is not None:
            key = "flange-to-image" if _is_of_flange(out, measured) else "thickness"
            out[measured] = out[measured].as_("KEYED", value=key, unit="mm")
    return out


def _by_caliper(tokens: list[Token]) -> list[Token]:
    """'27.6 by calipers not 27.46': what was measured stands before the word, and what it is not behind."""
    out = list(tokens)
    for at in range(1, len(tokens) - 2):
        size, no, other = tokens[at : at + 3]
        led = next((one for one in tokens[at - 1 :: -1] if one.kind != "FILLER"), None)
        denied = no.kind in ("VERB", "CUE") and no.value == _NOT and other.kind in LENGTHS
        if (size.kind, size.value) == ("MEASURE", "size") and denied and led is not None and led.kind in LENGTHS:
            out[at] = size.as_("CUE")
    return out


def _with_mikes(tokens: list[Token]) -> list[Token]:
    """'a 1.5 mm ring measured 1.46': the length beside the ring is what it was sold as, and what it measures counts."""
    for at in range(2, len(tokens)):
        token = tokens[at]
        piece = next((n for n in range(at - 1, max(0, at - _AHEAD), -1) if tokens[n].kind == "PIECE"), None)
        measured = _ahead(tokens, at) if (token.kind, token.value) == ("MEASURE", "size") else None
        if piece is None or measured is None or not _is_length(tokens[piece - 1]) or "." not in tokens[measured].text:
            continue
        sold, size = tokens[piece - 1].numbers[0], tokens[measured].numbers[0]
        if 0 < abs(sold - size) <= max(_LEAST_APART_MM, min(_APART_MM, _APART * size)) / 2:
            tokens[measured] = tokens[measured].as_("KEYED", value="thickness", unit="mm")
            tokens[at] = token.as_("CUE")
            tokens[piece - 1 : piece + 1] = [tokens[piece], tokens[piece - 1].as_("KEYED", value=NOMINAL, unit="mm")]
    return tokens


def _said_again(tokens: list[Token]) -> list[Token]:
    """'a 1.5 mm ring, will it do, ring measures 1.53': the ring told before, and how thick it really is."""
    sized = [n for n in range(1, len(tokens)) if tokens[n].kind == "PIECE" and _is_length(tokens[n - 1])]
    for first, again in pairwise(sized):
        sold, size = tokens[first - 1], tokens[again - 1]
        measured = [one.value for one in tokens[again + 1 : again + _TWO]] == ["size"] and "." in size.text
        alike = tokens[first].value == tokens[again].value and not is_plural(tokens[first])
        if measured and alike and 0 < abs(sold.numbers[0] - size.numbers[0]) <= _LEAST_APART_MM:
            tokens[again - 1 : again + 1] = [size.as_("KEYED", value="thickness", unit="mm"), tokens[again].as_("CUE")]
            tokens[first - 1 : first + 1] = [tokens[first], sold.as_("KEYED", value=NOMINAL, unit="mm")]
            return tokens
    return tokens


def _leave_out(tokens: list[Token], at: int) -> None:
    """'a 2 mm plate on E instead of the proper cup': where a ring is told by its length, what it stands for is none."""
    rings = [n for n in range(at) if tokens[n].kind == "PIECE"]
    # 'the ring i printed sits 1 mm in front instead of in a cup'
    sized = any({one.kind for one in (*tokens[max(0, n - 1) : n], *tokens[n + 1 : at])} & LENGTHS for n in rings)
    other = next(
        (n for n in range(at + 1, len(tokens)) if tokens[n].kind not in _IDLE and tokens[n].value != _IN), None
    )
    if sized and other is not None and tokens[other].kind == "PIECE":
        tokens[other] = tokens[other].as_("CUE")


def _is_of_flange(tokens: list[Token], at: int) -> bool:
    """'its register is really 45.9 not 45.46': what was measured is where the image lies."""
    return any(one.kind == "MEASURE" and one.value == "flange-to-image" for one in tokens[max(0, at - _AHEAD) : at])


def _with_own(tokens: list[Token]) -> list[Token]:
    """'should the ring be 1.0? mine is 0.93': of two that nearly agree the other is the right one."""
    for at, token in enumerate(tokens):
        if token.kind != "MEASURE" or not (token.value == _OWN or _is_caliper_on_ring(tokens, at)):
            continue
        tokens[at] = token.as_("CUE")
        measured = _ahead(tokens, at)
        right = _measured(tokens, measured) if measured is not None else None
        if right is None and _MEASURES in token.text.casefold():
            tokens[at] = token.as_("MEASURE", value="size")  # 'mine measures 20', of what was asked about
        others = any(_is_length(one) for place, one in enumerate(tokens) if place != measured)
        if right is None and measured is not None and others and _is_of_piece(tokens[measured]):
            # 'mine came out 29.6, 28 mm lens'
            tokens[measured] = tokens[measured].as_("KEYED", value="thickness", unit="mm")
        if measured is not None and right is not None and tokens[right - 1].kind not in _OF_LENS:  # '.., lens 28mm'
            tokens[right] = tokens[right].as_("KEYED", value=NOMINAL, unit="mm")
            tokens[measured] = tokens[measured].as_("KEYED", value="thickness", unit="mm")
            if [one.kind for one in tokens[right + 1 : right + 2]] == [
                "PIECE"
            ]:  # 'the E-Z 2 mm ring, mine is 2.08': still one ring
                tokens[right : right + 2] = [tokens[right + 1], tokens[right]]
    return tokens


def _with_swapped(tokens: list[Token]) -> list[Token]:
    """'swap the 27.46 for a 27.3 ring', 'replaced the 5 mm spacer by a 5.2 one': the second is there, for the first."""
    at = next((n for n, one in enumerate(tokens) if SWAPS in one.groups), len(tokens))
    lengths = [n for n in range(at + 1, len(tokens)) if _is_length(tokens[n])][:2]
    if len(lengths) < _TWO:
        return tokens
    old, new = lengths
    preps = [one.value for one in tokens[old + 1 : new] if one.kind == "PREP"]
    told = any("." in tokens[n].text for n in lengths) and all(one in _FOR_WHICH for one in preps)
    if not told or _measured(tokens, old) != new:
        return tokens
    tokens[old] = tokens[old].as_("KEYED", value=NOMINAL, unit="mm")
    tokens[new] = tokens[new].as_("KEYED", value="thickness", unit="mm")
    return tokens


def _is_caliper_on_ring(tokens: list[Token], at: int) -> bool:
    """'28.5 is written on the ring, caliper 28.46': what it reads is the ring's, where another length nearly agrees."""
    ringed = any(one.kind == "PIECE" or one.text.casefold().endswith(_RING) for one in tokens)
    if not ringed or not tokens[at].text.casefold().startswith(_CALIPER):
        return False
    measured = _ahead(tokens, at)
    right = _measured(tokens, measured) if measured is not None else None
    return right is not None and abs(tokens[right].numbers[0] - tokens[measured or 0].numbers[0]) <= _LEAST_APART_MM


def _is_of_piece(token: Token) -> bool:
    """A length told to the tenth, as no lens is engraved."""
    size = token.numbers[0]
    return "." in token.text and size * 2 != int(size * 2) and size not in STOPS


def _tells_right(tokens: list[Token], at: int) -> bool:
    """The words for what should be, or 'not' right between two lengths: 'it is 36.6 not 37.0'."""
    token = tokens[at]
    if token.kind == "MEASURE":
        return token.value in (NOMINAL, _BEHIND)
    if token.value == _BEARS and at + 1 < len(tokens) and _is_length(tokens[at + 1]):
        return _measured(tokens, at + 1) is not None  # 'labelled 27.5 but is 27.6'
    if INSTEAD in token.groups and at + 1 < len(tokens) and _is_length(tokens[at + 1]):
        other = _measured(tokens, at + 1)  # 'measures 27.3 instead 27.46'
        return other is not None and other < at and "." in tokens[other].text
    if token.value == "not" and at + 1 < len(tokens) and _is_length(tokens[at + 1]):
        other = _measured(tokens, at + 1)  # 'M42-E 27.6 (not 27.46)'
        return other is not None and other < at and "." in tokens[other].text
    around = tokens[max(0, at - 2) : at], tokens[at + 1 : at + 2]
    measured = any(_is_length(one) and "." in one.text for side in around for one in side)
    return token.value == "not" and measured and all(any(map(_is_length, side)) for side in around)


def _ahead(tokens: list[Token], at: int) -> int | None:
    for place in range(at + 1, min(at + 1 + _AHEAD, len(tokens))):
        if _is_length(tokens[place]):
            return place
        if tokens[place].kind not in _BETWEEN:
            return None
    return None


def _behind(tokens: list[Token], at: int) -> int | None:
    before = tokens[at - 1] if at else None
    return at - 1 if before is not None and _is_length(before) else None


def _is_length(token: Token) -> bool:
    return token.kind in LENGTHS and len(token.numbers) == 1 and token.unit in ("", "mm") and not token.text.isalpha()


def _is_set_against(tokens: list[Token], place: int, right: int) -> bool:
    """'1.6 instead of 0.7', the two right beside the words: however thin the ring should be."""
    return place == right - 2 and "." in tokens[place].text and "." in tokens[right].text


def _measured(tokens: list[Token], right: int) -> int | None:
    """The other length that is nearly the right one: told to the tenth and no lens's, and the nearest in the text."""
    wanted = tokens[right].numbers[0]
    room = max(_LEAST_APART_MM, min(_APART_MM, _APART * wanted))
    near = [
        place
        for place, token in enumerate(tokens)
        if place != right and _is_length(token)
        and 0 < abs(token.numbers[0] - wanted) <= (_APART_MM if _is_set_against(tokens, place, right) else room)
        and not (place + 1 < len(tokens) and tokens[place + 1].kind in _OF_LENS)
        and ("." in token.text or all(one.value != _WITH for one in tokens[max(0, place - 2) : place]))  # 'with a 28'
    ]  # fmt: skip
    return min(near, key=lambda place: ("." not in tokens[place].text, abs(place - right)), default=None)
