"""What stands between by no name of a piece: 'a 2 mm washer between lens and body', '3 mm of washers', 'a 3 mm gap'."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import SPACER
from grammar.words.groups import PUT_WHERE, SHEETS
from grammar.words.tokens import Token

_SPACER_CUE: Final = "spacer"  # what a cue tells that speaks of washers and the like
_WHERE: Final = frozenset(["between", "behind", "on"])
_SHIM_CUE: Final = "shim"
_WASHER: Final = "washer"
_ASKS_FAR: Final = frozenset(
    ["infinity", "how-far", "focus", "how-close", "which-stop", "end-far", "how-bad", "left-so"]
)  # cues that ask what comes of it
_ASKS_EFFECT: Final = "comes-of-it"  # the cue that asks what a thing does
_ASKS_WHAT_COMES: Final = _ASKS_FAR | {"save", "how-far", "f-stop", "will"}
# what was asked before, where a washer that is put in then is so much more between
_AFTER: Final = frozenset(
    ["after-chain", "after-focus-verdict", "after-macro-distance", "after-depth-of-field", "after-crop-equivalent",
     "after-coverage"]
)  # fmt: skip
_ASKS_WHICH: Final = frozenset(["how-much", "what", "which", "how", "need-it", "need-adapter", "how-many"])
_LAYER: Final = "layer"  # the value of words for what shims are cut from
_NEAR: Final = 3  # tokens from what is put in to where it is put
_SMALL: Final = frozenset(["FILLER", "VERB", "CUE"])  # 'a washer stuck under it'
_THICKEST_SHIM_MM: Final = 3.0
_STANDING: Final = frozenset(["MOUNT", "LETTER", "BODY", "PIECE", "ADAPTER", "FORMAT"])  # what a shim is told with
_EACH: Final = "each"
_COUNTS: Final = (2.0, 3.0, 4.0, 5.0, 6.0)  # sheets that are told by their number


def tell_washers(tokens: list[Token], told: frozenset[str]) -> None:
    """'a 2 mm washer between the lens and the body': where no piece is told otherwise, that is the ring."""
    stands = sum(one.kind == "MOUNT" for one in tokens) > 1 and not told & _ASKS_WHICH
    if told & {_SHIM_CUE, _SPACER_CUE}:
        _tell_shim(tokens, bool(told & (_ASKS_FAR | _AFTER)) or stands, _ASKS_EFFECT in told)
    if told & _ASKS_WHAT_COMES or stands:
        _tell_sheet(tokens)
    if any(one.kind == "PIECE" for one in tokens):
        return
    for at in range(len(tokens) - 1):
        between = tokens[at + 1].kind == "PREP" and tokens[at + 1].value == "between"
        if between and tokens[at].is_mm:
            tokens.insert(at + 1, Token("PIECE", "ring", tokens[at].column, "adapter"))  # 'a 3 mm gap between ...'
            return
    for at in range(1, len(tokens) - 1):
        sized = tokens[at - 1].is_mm
        placed = tokens[at + 1].kind == "PREP" and tokens[at + 1].value in _WHERE
        if _SPACER_CUE in told and tokens[at].kind == "CUE" and sized and placed:
            thin = told & _AFTER and tokens[at - 1].numbers[0] <= _THICKEST_SHIM_MM  # beside the ring of before
            tokens[at] = tokens[at].as_("PIECE", value=SPACER if thin else "adapter")
    for at in range(len(tokens) - 2):
        size, of, what = tokens[at : at + 3]
        if _SPACER_CUE in told and size.kind == "LENGTH" and of.value == "of" and what.kind == "CUE":
            tokens[at + 1 : at + 3] = [what.as_("PIECE", value=SPACER)]  # '3 mm of washers'
            return


def _tell_shim(tokens: list[Token], asks_far: bool, asks_effect: bool) -> None:
    """'I glued a 0.5 shim behind the M42-E ring, infinity gone?': a shim that is there is so much more between.

    So it is where what comes of it is asked, or was before, and of a lens told 'with a 1 mm washer under it'.
    """
    for at in range(len(tokens) - 1):
        if at < len(tokens) and tokens[at].kind == "CUE" and SHEETS in tokens[at].groups:
            _tell_each(tokens, at)
    for at in range(len(tokens)):
        word = tokens[at]
        if word.kind != "CUE" or SHEETS not in word.groups:
            continue
        of = at + 2 < len(tokens) and tokens[at + 1].value == "of"
        named = not of and at > 1 and tokens[at - 1].kind in ("MOUNT", "LETTER")  # 'a 1 mm M42 washer'
        size, rest = (tokens[at + 2], at + 3) if of else (tokens[at - 1 - named] if at else word, at + 1)
        where = next((one for one in tokens[rest : rest + _NEAR] if one.kind not in _SMALL), None)
        bare = size.kind in ("NUMBER", "TIMES") or size.is_mm
        first = at if of else at - 1 - named
        counted = _is_counted(tokens, first)
        there = word.text.casefold().startswith(_WASHER) and _is_led_with(tokens, first - counted)
        there = there or (size.kind == "LENGTH" and not of and _is_there(tokens, first - counted))
        # what a shim of 0.5 mm does is told as of a shim; of a bare number, or a washer of a mount, it is one between
        bare = bare and (asks_far or there or (asks_effect and (named or not size.is_mm or size.kind != "LENGTH")))
        put = (where is not None and PUT_WHERE in where.groups) or _is_joined(tokens, first - counted)
        put = put or _stands_with(tokens, first - counted)
        if bare and (put or (there and counted)) and 0 < size.numbers[0] <= _THICKEST_SHIM_MM:
            mount = tokens[at - 1 : at] if named else []
            tokens[first:rest] = [size.as_("LENGTH", unit="mm"), *mount, word.as_("PIECE", value=SPACER)]
            _count(tokens, first)
            return


def _tell_each(tokens: list[Token], at: int) -> None:
    """'two washers, 0.2 each': how thick each is goes before the word, as in 'two 0.2 washers'."""
    first = at + 1 + (at + 1 < len(tokens) and tokens[at + 1].kind == "JOIN")
    row = tokens[first : first + 2]
    if len(row) == 2 and (row[0].kind == "NUMBER" or row[0].is_mm) and row[1].text.casefold() == _EACH:
        rest = first + 2 + (first + 2 < len(tokens) and tokens[first + 2].kind == "JOIN")
        tokens[at:rest] = [row[0], tokens[at]]


def _is_counted(tokens: list[Token], first: int) -> bool:
    """'two 0.25 shims', '3 x 0.1 mm washers': so many of one thickness."""
    count = tokens[first - 1] if first > 0 else None
    several = count is not None and count.kind in ("NUMBER", "COUNT", "TIMES") and bool(count.numbers)
    return several and count is not None and count.numbers[0] in _COUNTS and "." not in count.text


def _count(tokens: list[Token], first: int) -> None:
    if _is_counted(tokens, first):
        tokens[first - 1] = tokens[first - 1].as_("COUNT")


def _is_joined(tokens: list[Token], at: int) -> bool:
    """'the 5 mm ring and a 1 mm washer', '... plus a washer of 1 mm': told right behind a piece."""
    led = [one for one in tokens[max(0, at - 3) : at] if one.kind not in ("DET", "LETTER")][-2:]
    joined = len(led) == 2 and (led[1].kind == "JOIN" or led[1].value == "with")
    return joined and (led[0].kind in ("PIECE", "ADAPTER") or led[0].unit == "adapter")


def _is_led_with(tokens: list[Token], at: int) -> bool:
    """'... on MFT with a 1mm washer under it': told as a part of what is there."""
    led = [one for one in tokens[max(0, at - 2) : at] if one.kind != "DET"]
    return bool(led) and led[-1].kind == "PREP" and led[-1].value == "with"


def _stands_with(tokens: list[Token], at: int) -> bool:
    """'... on E with a 0.5 mm shim', 'M42 ring with a 0.2 shim': beside a mount, a ring or a body that was named."""
    led = [one for one in tokens[max(0, at - 3) : at] if one.kind != "DET" and one.text.casefold() not in ("a", "one")]
    holds = len(led) > 1 and (led[-2].kind in _STANDING or led[-2].unit == "adapter")
    return holds and led[-1].kind == "PREP" and led[-1].value == "with"


def _is_there(tokens: list[Token], at: int) -> bool:
    return _stands_with(tokens, at) or _is_joined(tokens, at)


def _tell_sheet(tokens: list[Token]) -> None:
    """'0.3 mm of card under the flange', 'a 0.2 paper shim left under a 35': a sheet of it is so much more between."""
    for at, word in enumerate(tokens):
        if word.kind != "MEASURE" or word.value != _LAYER or not at:
            continue
        first = at - 2 if at > 1 and tokens[at - 1].value == "of" else at - 1
        size, rest = tokens[first], at + 1
        if rest < len(tokens) and (tokens[rest].kind == "PIECE" or SHEETS in tokens[rest].groups):
            rest += 1
        where = next((one for one in tokens[rest : rest + _NEAR] if one.kind not in _SMALL), None)
        bare = size.kind == "NUMBER" or size.is_mm
        put = where is not None and PUT_WHERE in where.groups
        if bare and (put or _stands_with(tokens, first)) and 0 < size.numbers[0] <= _THICKEST_SHIM_MM:
            if put and where is not None:
                place = tokens.index(where, rest)
                tokens[place] = where.as_("PREP", value="behind")
            tokens[first:rest] = [size.as_("LENGTH", unit="mm"), word.as_("PIECE", value=SPACER)]
            _count(tokens, first)
            return
