"""What tubes and rings come to in all: 'a set of rings which add up to 31 mm', 'tubes, 56 mm together'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.worked_down import with_worked_down
from grammar.questions import RING
from grammar.things.casting import SPACER
from grammar.words.groups import MADE_UP_OF
from grammar.words.tokens import Token, is_plural

_SUMS: Final = frozenset(["total", "size"])
_BETWEEN: Final = frozenset(["CUE", "DET", "VERB", "MARK"])
_NEAR: Final = 3  # tokens from the pieces to the word for the sum, and from there to the length
_LONGEST: Final = 400.0  # mm
_TOLD: Final = frozenset(["LENGTH", "NUMBER", "RANGE", "MOUNT", "LETTER", "LINK", "COUNT", "RATIO"])
_OF_PIECE: Final = frozenset(["MOUNT", "LETTER", "MARK", "PREP", "LINK"])  # between its length and a ring
_LENS: Final = frozenset(["FNUM", "LENS", "KIND", "VERB"])
_OFF: Final = "from"
_MOST_TAKEN: Final = 0.3  # as a share of its length
_CLOSE: Final = frozenset(["how-close", "how-big", "macro", "working-distance"])


def with_sums_of_pieces(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The sum stands before the pieces, as the length of one tube does. `told`: what the cues of the line tell."""
    out = list(tokens)
    for at, token in enumerate(out):
        if token.kind != "PIECE" or (at and out[at - 1].kind in _TOLD) or not _are_tubes(token, told):
            continue
        word = _ahead(out, at + 1, ("MEASURE",))
        length = _ahead(out, word + 1, ("LENGTH", "NUMBER")) if word and out[word].value in _SUMS else None
        if word is None or length is None or not _may_be_sum(out[length]) or _are_chosen_from(out, length):
            continue
        if out[length + 1 : length + 2] and out[length + 1].kind in _LENS:
            continue  # 'what tube makes a 40mm f2.8 do 1:3'
        sum_ = out.pop(length).as_("LENGTH", unit="mm")
        out[word] = out[word].as_("CUE")
        out[at : at + 1] = [sum_, token.as_("PIECE", value=SPACER)]
        return out
    return out


def with_taken_lengths(tokens: list[Token]) -> list[Token]:
    """'took 0.3 off the 10.8 ring', 'lapped 0.2 off my 11.1 LTM to E ring': the ring with what is left of it."""
    out = list(tokens)
    for at in range(len(tokens) - 3):
        amount, led = tokens[at], tokens[at + 1]
        whole = at + 2 if tokens[at + 2].kind != "DET" else at + 3
        taken = led.kind == "PREP" and led.value == _OFF and _may_be_sum_of(amount)
        if not taken or whole + 1 >= len(tokens) or not _may_be_sum_of(tokens[whole]):
            continue
        rest = next((one for one in tokens[whole + 1 :] if one.kind not in _OF_PIECE), None)
        ring = rest is not None and rest.kind == "PIECE" and rest.value in (RING, SPACER)
        left = tokens[whole].numbers[0] - amount.numbers[0]
        if ring and amount.numbers[0] <= _MOST_TAKEN * tokens[whole].numbers[0]:
            out[whole] = tokens[whole].as_("LENGTH", text=f"{left:.4g} mm", numbers=(round(left, 4),), unit="mm")
            out[at], out[at + 1] = amount.as_("FILLER"), led.as_("FILLER")
    return with_worked_down(out)


def _may_be_sum_of(token: Token) -> bool:
    return token.kind in ("LENGTH", "NUMBER") and _may_be_sum(token)


def _are_chosen_from(tokens: list[Token], length: int) -> bool:
    """'which spacers make 16.5 mm from 5, 10 and 1 mm rings': they are still to be found."""
    after = tokens[length + 1 : length + 2]
    return bool(after) and after[0].kind == "PREP" and MADE_UP_OF in after[0].groups


def _are_tubes(token: Token, told: frozenset[str]) -> bool:
    rings = token.value == "adapter" and is_plural(token) and bool(told & _CLOSE)
    return token.value == SPACER or rings


def _ahead(tokens: list[Token], at: int, kinds: tuple[str, ...]) -> int | None:
    """Where the next token of the kinds stands, with nothing but small words before it."""
    for place in range(at, min(len(tokens), at + _NEAR)):
        if tokens[place].kind in kinds:
            return place
        if tokens[place].kind not in _BETWEEN:
            return None
    return None


def _may_be_sum(token: Token) -> bool:
    metric = token.unit == "mm" or (token.kind == "NUMBER" and not token.text.isalpha())
    return metric and 0 < token.numbers[0] <= _LONGEST
