"""The stop of a lens told as a bare whole number or as it is engraved: '50 2 MD', 'FD 85 2', '85 mm C 1:2'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token
from grammar.words.written import STOPS

_FOCALS: Final = (12.0, 1200.0)  # mm, of a bare number before a stop
_SLOWEST: Final = 11.0  # of a lens as it is told
_ENDS: Final = frozenset(["STOP", "JOIN", "PREP", "CUE", "VERB", "MARK", "LETTER"])
_NAMES: Final = frozenset(["MOUNT", "LENS", "KIND"])
_NUMBERED: Final = frozenset(["NUMBER", "PIECE", "COUNT", "LENGTH"])  # before a row that is of something else


def with_lens_stops_told(tokens: list[Token]) -> list[Token]:
    """The two bare numbers beside a mount as FOCAL and FNUM, where they can be those of one lens."""
    out = list(tokens)
    for at in range(len(out) - 1):
        if _is_focal(out[at]) and _is_stop(out[at + 1]) and _is_beside_mount(out, at):
            out[at] = out[at].as_("FOCAL", unit="mm") if out[at].kind == "NUMBER" else out[at]
            out[at + 1] = out[at + 1].as_("FNUM")
    return out


def is_behind_lens(tokens: list[Token], at: int) -> bool:
    """Whether what stands at `at` stands right behind a lens told by focal length and mount: '85 mm C 1:2'."""
    before = tokens[at - 1] if at else None
    if before is None or before.kind not in _NAMES:
        return False
    row = [one.kind for one in tokens[max(0, at - 3) : at - 1]]
    return row[-1:] in (["LENGTH"], ["FOCAL"]) or row in (["LENGTH", "MOUNT"], ["FOCAL", "MOUNT"])


def _is_beside_mount(tokens: list[Token], at: int) -> bool:
    before = tokens[at - 1] if at else None
    after = tokens[at + 2] if at + 2 < len(tokens) else None
    linked = at + 3 < len(tokens) and tokens[at + 3].kind in ("LINK", "PIECE", "NUMBER", "LENGTH")
    if after is not None and after.kind == "MOUNT":
        return not linked and (before is None or before.kind not in _NUMBERED)
    ahead = before is not None and before.kind == "MOUNT"
    behind_name = ahead and (at < 2 or tokens[at - 2].kind not in ("LINK", *_NUMBERED))
    return behind_name and (after is None or after.kind in _ENDS)


def _is_focal(token: Token) -> bool:
    bare = token.kind == "NUMBER" and token.text.isdecimal() and not token.ids
    metric = token.kind == "LENGTH" and token.unit == "mm"
    return (bare or metric) and _FOCALS[0] <= token.numbers[0] <= _FOCALS[1]


def _is_stop(token: Token) -> bool:
    return token.kind == "NUMBER" and token.text.isdecimal() and token.numbers[0] in STOPS and (
        1 < token.numbers[0] <= _SLOWEST
    )  # fmt: skip
