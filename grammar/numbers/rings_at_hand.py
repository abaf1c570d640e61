"""A length that is wanted, and the rings there are for it: 'need 9.54, only 9 and .5 to be had'."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import SPACER
from grammar.words.groups import COME_TO, REACHES
from grammar.words.tokens import Token, is_plural

TOTAL: Final = "total"
AT_HAND: Final = "at-hand"
_SPACED: Final = "spaced"  # cue of what asks for one distance to the sensor: 'the corrector wants 55'
_WANTED: Final = "wanted"  # value of the words that lead to what is wanted
_HAD: Final = frozenset(["own", "only"])  # of those that lead to what there is
_SHEET: Final = "layer"  # sheets have rows of their own
_OF_LENS: Final = frozenset(["LENS", "KIND", "FNUM", "MOUNT", "FORMAT"])
_FOR: Final = "made-for"  # 'a 50 mm lens for E'
_ALONG: Final = frozenset(["JOIN", "DET", "PIECE", "PREP", "FILLER", "VERB", "CUE", "MARK"])
_SEVERAL: Final = 2
_WHICH: Final = "which"  # cue
_TUBE: Final = "extension-tube"
_FAR: Final = 4  # tokens at most from such a word to the number
_THICKEST_SHEET_MM: Final = 0.7
_LONGEST_MM: Final = 80.0
_LEADING: Final = 2  # tokens at most between a word and its number


def with_rings_at_hand(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """What is wanted becomes KEYED as the total, and each shorter length that there is as one at hand.

    `told`: what the cues of the line tell.
    """
    measures = {one.value for one in tokens if one.kind == "MEASURE"}
    if AT_HAND in measures:
        return _named(list(tokens))
    apart = _row_apart(tokens, told)
    if apart is not None:
        return _with_row(tokens, *apart)
    if measures & {_SHEET, TOTAL}:
        return tokens
    total = next(
        (place for at, one in enumerate(tokens) if one.value == _WANTED for place in _beside(tokens, at)), None
    )
    spaced = _SPACED in told
    if total is None or not (spaced or "." in tokens[total].text or any(one.kind == "PIECE" for one in tokens)):
        return tokens  # 'need a 35 for E, only have a 28' is of lenses
    had = [at for at, one in enumerate(tokens) if one.value in _HAD or (spaced and COME_TO in one.groups)]
    row = next((row for at in had if (row := _row(tokens, at, total))), [])
    if not row:
        return tokens
    out = list(tokens)
    out[total] = out[total].as_("KEYED", value=TOTAL, unit="mm")
    for at in row:
        out[at] = out[at].as_("KEYED", value=AT_HAND, unit="mm")
        if out[at - 1].kind == "PREP":
            out[at - 1] = out[at - 1].as_("JOIN", value="and")  # 'a 1 and a .5' begins no other lens
    return out


def _row_apart(tokens: list[Token], told: frozenset[str]) -> tuple[int, list[int]] | None:
    """The length that is wanted, the longest, and the row of all others: 'space it 3.3 mm with shims 0.5 and 1'.

    'which of my M42 tubes 5, 10 and 20 give 25' as well: where one asks which, the longest may be one of the row.
    """
    which = _WHICH in told and any(one.kind == "PIECE" and one.value == _TUBE and is_plural(one) for one in tokens)
    which = which or (_WHICH in told and any(map(_is_stacked, tokens)))
    lengths = [at for at in range(len(tokens)) if _is_length(tokens, at)]
    passed = [at for at in range(len(tokens) - 1) if which and tokens[at].kind == "MOUNT" and _is_piece(tokens[at + 1])]
    others = [one for at, one in enumerate(tokens) if one.kind in _OF_LENS and one.kind != "LENS" and at not in passed]
    others += [one for one in tokens if one.kind == "RATIO"]
    if len(lengths) <= _SEVERAL or others or not (which or any(map(_is_stacked, tokens))):
        return None
    led_to = [at for at in lengths if _is_led_to(tokens, at)]
    wanted = led_to[0] if which and len(led_to) == 1 else max(lengths, key=lambda at: tokens[at].numbers[0])
    row = [at for at in lengths if at != wanted]
    within = [one for at, one in enumerate(tokens[row[0] : row[-1] + 1], start=row[0]) if at not in row]
    decimal = any("." in tokens[at].text for at in lengths)
    made = decimal or tokens[wanted].numbers[0] <= sum(tokens[at].numbers[0] for at in row)
    sheets = all(tokens[at].numbers[0] <= _THICKEST_SHEET_MM for at in row)
    if wanted not in led_to or not made or sheets or any(one.kind not in ("JOIN", "DET", "PREP") for one in within):
        return None
    return wanted, row


def _is_led_to(tokens: list[Token], at: int) -> bool:
    """Whether a word for what is wanted stands shortly before a length; 'need a 50' is of a lens."""
    leads = tokens[max(0, at - _FAR) : at]
    led = any(one.value in (_WANTED, TOTAL) or REACHES in one.groups for one in leads)
    return led and leads[-1].kind not in ("DET", "LETTER")


def _is_piece(token: Token) -> bool:
    return token.kind == "PIECE" and is_plural(token)


def _is_stacked(token: Token) -> bool:
    """A word for what is put one on another: 'spacers', 'shims', 'rings'."""
    several = token.kind == "PIECE" and token.value in (SPACER, "adapter") and is_plural(token)
    return several or (token.kind == "MEASURE" and token.value == _SHEET)


def _with_row(tokens: list[Token], wanted: int, row: list[int]) -> list[Token]:
    out = list(tokens)
    for at in (wanted, *row):
        out[at] = out[at].as_("KEYED", value=TOTAL if at == wanted else AT_HAND, unit="mm")
    for at, one in enumerate(out):
        if _is_stacked(one) or one.kind == "LENS" or (one.kind, one.value) == ("MEASURE", TOTAL):
            out[at] = one.as_("CUE")
        elif one.kind == "PREP" and row[0] < at < row[-1]:
            out[at] = one.as_("JOIN", value="and")
    return out


def _named(tokens: list[Token]) -> list[Token]:
    """'9 mm, 0.5 mm at hand': every length of the row before the words."""
    at = next(at for at, one in enumerate(tokens) if one.kind == "MEASURE" and one.value == AT_HAND)
    tokens[at] = tokens[at].as_("CUE")
    while at and (_is_length(tokens, at - 1) or tokens[at - 1].kind in ("JOIN", "CUE")):
        at -= 1
        if _is_length(tokens, at):
            led = tokens[at - 1] if at else None
            if led is not None and led.kind == "MEASURE":
                break  # 'to make 9.54 mm'
            tokens[at] = tokens[at].as_("KEYED", value=AT_HAND, unit="mm")
    return tokens


def _beside(tokens: list[Token], at: int) -> list[int]:
    """The length that a word leads to, or that stands right before it: 'need 9.54', '2.3 mm of spacing wanted'."""
    ahead = _next(tokens, at)
    if ahead is not None:
        return [ahead]
    for place in range(at - 1, max(-1, at - 2 - _LEADING), -1):
        if _is_length(tokens, place):
            return [place]
        if tokens[place].kind not in _ALONG:
            break
    return []


def _next(tokens: list[Token], at: int) -> int | None:
    """The length that a word leads to."""
    for place in range(at + 1, min(len(tokens), at + 2 + _LEADING)):
        if _is_length(tokens, place):
            return place
        if tokens[place].kind not in _ALONG:
            return None
    return None


def _row(tokens: list[Token], at: int, total: int) -> list[int]:
    """The lengths shorter than what is wanted that follow from a word on, before anything else is told."""
    row: list[int] = []
    for place in range(at + 1, len(tokens)):
        if place == total or not (_is_length(tokens, place) or tokens[place].kind in _ALONG):
            break
        if _is_length(tokens, place) and tokens[place].numbers[0] < tokens[total].numbers[0]:
            row.append(place)
    return row


def _is_length(tokens: list[Token], at: int) -> bool:
    token, after = tokens[at], tokens[at + 1] if at + 1 < len(tokens) else None
    metric = token.may_be_mm and len(token.numbers) == 1
    mine = metric and not token.text.isalpha() and 0 < token.numbers[0] <= _LONGEST_MM
    return mine and not (after is not None and (after.kind in _OF_LENS or after.value == _FOR))
