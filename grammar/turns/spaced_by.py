"""So much put under a lens after what it is on: '0.5 under it', 'raise it by half a mm', 'with a 0.3 washer'."""

from __future__ import annotations

import re
from typing import Final

from grammar.hearing import Heard
from grammar.kinds import SHIM_CALIBRATION
from grammar.questions import Question
from grammar.things.casting import DRAWN
from grammar.words.groups import DRAWN_OUT, RAISING, SET_SO, SHEETS, UNDERNEATH
from grammar.words.token_kinds import LENGTHS
from grammar.words.tokens import Token

_THICKEST: Final = 3.0  # mm; what is thicker is a tube, and called so
_NEAR: Final = 4  # words between the verb and by how much
_ERRORS: Final = ("thickness", "mark", "shim")  # keys that tell by how much a seat is off already
_EXTENSION, _AT, _BEHIND = "extension", "at", "behind"
_EACH, _BOTH, _BETWEEN = "all", "both", "between"
_ON_PAPER: Final = "circle"  # value of 'on paper'
_IN, _THERE = "in", frozenset(["there", "it", "between"])
_LEAST, _MOST = 1.0, 200.0  # mm, of what is drawn out
_MOST_AT: Final = 60.0  # mm, of what it is set at
_ASKED: Final = ("how-much", "how-many", "shim-stock")


def spaced_by(heard: Heard, before: Question) -> str | None:
    """The text with so much as a spacer of its own; None where nothing is put under, or an error was told that it
    mends."""
    tokens = heard.line.tokens
    seated = any(one.ids for one in before.lenses) and bool(before.bodies) and before.intent != SHIM_CALIBRATION
    known = any(before.said(key) is not None for key in _ERRORS) or any(one.thickness_mm for one in before.adapters)
    else_told = any(one.kind in ("MEASURE", "PIECE", "ADAPTER") for one in tokens) or any(map(heard.tells, _ASKED))
    at = [n for n, one in enumerate(tokens) if _is_thin(one)]
    if not seated or known or else_told or len(at) != 1 or not _is_put_under(tokens, at[0]):
        return None
    size = tokens[at[0]]
    start, end = size.column - 1, size.end or size.column - 1 + len(size.text)
    behind = tokens[at[0] + 1] if at[0] + 1 < len(tokens) else None
    if behind is not None and SHEETS in behind.groups:
        if size.kind == "LENGTH" and tokens[at[0] + 2 :]:
            return None  # '1 mm washer under it' is as plain as can be
        end = behind.column - 1 + len(behind.text)
    return f"{heard.text[:start]}{_mm(size):g} mm spacer{heard.text[end:]}"


_DRAW: Final = re.compile(
    r"(?:(?:and|now|ok|so) )?draw (?:is |of |now |to |at )?(\d+(?:\.\d+)?)(?: ?mm)?\W*", re.IGNORECASE
)
_BELLOWS: Final = "bellows"


def drawn_by(heard: Heard, before: Question) -> str | None:
    """'12 mm of it out, how near', 'light loss at 20 mm' after tubes or a helicoid of no told length: so much of it."""
    tokens = heard.line.tokens
    kinds = [one for one in before.adapters if one.piece in DRAWN]
    untold = bool(kinds) and not any(one.thickness_mm or one.ids for one in kinds) and before.said(_EXTENSION) is None
    sized = [n for n, one in enumerate(tokens) if one.may_be_mm and one.numbers]
    at = [n for n in sized if tokens[n].text.casefold() != _BOTH]
    else_told = any(one.kind in ("PIECE", "ADAPTER", "COMBO") for one in tokens) or bool(heard.cast.bodies)
    paper = any(one.kind == "MEASURE" and one.value == _ON_PAPER for one in tokens)  # where a far wall is sharp
    behind = len(at) == 1 and _is_put_behind(tokens, at[0]) and before.lens is not None and not paper
    zoom = before.lens is not None and before.lens.lens_kind == "zoom"
    else_told = else_told or zoom or any(_is_focal_of(tokens[n], before) for n in at)
    stop = heard.tells("effective-f")  # 'set to 5.6, what is it really'
    if not (untold or behind) or else_told or stop or len(at) != 1 or not _MOST >= tokens[at[0]].numbers[0] >= _LEAST:
        return None
    size, near = tokens[at[0]], tokens[max(0, at[0] - 1) : at[0] + 4]
    out = any({DRAWN_OUT, SET_SO} & set(one.groups) for one in near)
    led = at[0] > 0 and tokens[at[0] - 1].value == _AT and size.kind == "LENGTH" and size.numbers[0] <= _MOST_AT
    if not (out or led or behind):
        return None
    last = next((one for one in tokens[at[0] + 1 : at[0] + 4] if DRAWN_OUT in one.groups), size)
    start, end = size.column - 1, last.end or last.column - 1 + len(last.text)
    return f"{heard.text[:start]}{size.numbers[0]:g} mm of extension{heard.text[end:]}"


def draw_again(heard: Heard, before: Question) -> str | None:
    """'draw 80' after a bellows that was drawn out to 120: so far out now, and no drawing."""
    told = _DRAW.fullmatch(heard.text.strip())
    pieces = [one for one in before.adapters if one.piece in DRAWN]
    if told is None or not pieces:
        return None
    out = any(one.thickness_mm for one in pieces)
    return f"bellows at {told[1]} mm" if out and pieces[0].piece == _BELLOWS else f"{told[1]} mm of extension"


def _is_focal_of(token: Token, before: Question) -> bool:
    """Whether a lens of the talk is so long."""
    return any(token.numbers[0] == one.focal_length_mm for one in (*before.known, *before.lenses))


def _is_put_behind(tokens: tuple[Token, ...], at: int) -> bool:
    """'20 mm behind it', '10 mm behind each', '5 mm in between': so much between the lens that is spoken of and the
    body."""
    rest = [one for one in tokens[at + 1 : at + 4] if one.kind not in ("DET", "STOP", "MARK") or one.value == _EACH]
    of_it = (
        len(rest) > 1
        and (rest[1].value in ("it", _EACH) or rest[1].text.casefold() == _BOTH or rest[1].kind == "LENS")
        and rest[0].value == _BEHIND
    )
    between = len(rest) == 1 and rest[0].value == _BETWEEN
    inside = len(rest) > 1 and rest[0].value == _IN and rest[1].text.casefold() in _THERE  # '5 mm in there'
    between = between or inside
    return tokens[at].kind == "LENGTH" and (of_it or between)


def _is_thin(token: Token) -> bool:
    sized = token.kind in LENGTHS and bool(token.numbers) and 0 < _mm(token) <= _THICKEST
    return sized and (token.kind == "LENGTH" or "." in token.text)  # 'pack 2 filters' is of no length


def _mm(token: Token) -> float:
    return token.numbers[0]


def _is_put_under(tokens: tuple[Token, ...], at: int) -> bool:
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    under = after is not None and bool({UNDERNEATH, SHEETS} & set(after.groups))
    raised = any(RAISING in one.groups or SHEETS in one.groups for one in tokens[max(0, at - _NEAR) : at])
    return under or raised
