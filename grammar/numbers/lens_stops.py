"""The stop of a lens told as a bare whole number or as it is engraved: '50 2 MD', 'FD 85 2', '85 mm C 1:2'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.words.groups import MIRRORED, OPENED
from grammar.words.tokens import Token
from grammar.words.written import STOPS

_FOCALS: Final = (12.0, 1200.0)  # mm, of a bare number before a stop
_SLOWEST: Final = 11.0  # of a lens as it is told
_ENDS: Final = frozenset(["STOP", "JOIN", "PREP", "CUE", "VERB", "MARK", "LETTER"])
_NAMES: Final = frozenset(["MOUNT", "LENS", "KIND"])
CLOSE_UP: Final = frozenset(["macro", "how-big", "frame-filling"])  # cues of what is drawn big
_T: Final = "t"
_MIRROR: Final = "mirror"  # a kind of lens
_MIRRORED: Final = (200.0, 2000.0)  # mm, as long as lenses with mirrors are
_LENGTHS: Final = frozenset(["LENGTH", "FOCAL", "COMBO", "RANGE", "PIECE", "MEASURE"])
_LONG: Final = frozenset(["extension-tube", "helicoid", "shim"])  # pieces that go by a length
_PARTING: Final = frozenset(["on", "to", "for", "and"])
_NUMBERED: Final = frozenset(["NUMBER", "PIECE", "COUNT", "LENGTH"])  # before a row that is of something else


def with_lens_stops_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The two bare numbers beside a mount as FOCAL and FNUM, where they can be those of one lens.

    `told`: the cues of the question; where close-ups are spoken of '1:2' is how big they get.
    """
    out = _with_focal_told(_without_other_stop(_with_opened_told(_with_mirrors_told(tokens))))
    for at in range(len(out) - 1):
        engraved = _is_engraved(out[at + 1]) and not told & CLOSE_UP
        if _is_focal(out[at]) and _is_decimal_stop(out[at + 1]) and _is_before_ring(out, at):
            out[at] = out[at].as_("FOCAL", unit="mm") if out[at].kind == "NUMBER" else out[at]
            out[at + 1] = out[at + 1].as_("FNUM")
        elif (
            out[at].kind == "NUMBER"
            and _is_focal(out[at])
            and out[at + 1].kind == "TSTOP"
            and _is_beside_mount(out, at)
        ):
            out[at] = out[at].as_("FOCAL", unit="mm")  # 'PL 35 T2.1'
        elif _is_focal(out[at]) and (engraved or _is_stop(out[at + 1])) and _is_beside_mount(out, at):
            out[at] = out[at].as_("FOCAL", unit="mm") if out[at].kind == "NUMBER" else out[at]
            stop = round(1 / out[at + 1].numbers[0], 4) if engraved else out[at + 1].numbers[0]
            out[at + 1] = out[at + 1].as_("FNUM", numbers=(stop,))
    return _with_mount_joined(out)


def with_other_stop(tokens: list[Token]) -> list[Token]:
    """'is my 50/1.4 an f2.8 on MFT', '100mm f2.8 projector lens f/11': a second stop behind a lens is not its own."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        led = [one for one in tokens[max(0, at - 3) : at] if one.kind not in ("CUE", "FILLER")][-2:]
        article = len(led) > 1 and (led[1].kind == "DET" or led[1].text.casefold() == "a")
        behind = bool(led) and led[-1].kind in ("LENS", "KIND", "MOUNT") and _has_stop(tokens[: at - 1])
        if token.kind == "FNUM" and behind:
            out.append(Token("PREP", "at", token.column, "at"))  # '50mm f/1.8 lens f/8': that at which it is used
        elif token.kind == "FNUM" and article and led[0].kind in ("COMBO", "FNUM"):
            out.append(Token("JOIN", ",", token.column, ","))
        out.append(token)
    return out


def _has_stop(led: list[Token]) -> bool:
    """'a 100mm f2.8 projector lens f/11': the lens has its own, right behind its length."""
    kinds = [one.kind for one in led if one.kind not in ("MOUNT", "LETTER", "KIND", "TRAIT")]
    return kinds[-2:] == ["LENGTH", "FNUM"] or kinds[-1:] == ["COMBO"]


def _with_mount_joined(tokens: list[Token]) -> list[Token]:
    """'it says 58 2 and M42': what stands on one lens, its mount behind an 'and' as well."""
    for at in range(len(tokens) - 3):
        size, stop, join, mount = tokens[at : at + 4]
        after = tokens[at + 4] if at + 4 < len(tokens) else None
        lens = size.kind in ("FOCAL", "LENGTH") and stop.kind == "FNUM" and mount.kind == "MOUNT"
        if lens and join.value == "and" and (after is None or after.kind in ("STOP", "JOIN")):
            return [*tokens[: at + 2], *tokens[at + 3 :]]
    return tokens


def _with_mirrors_told(tokens: list[Token]) -> list[Token]:
    """'my 500 mirror on T2': so long, with mirrors in it; what else a mirror does is no lens ('at 500 mirror slap')."""
    out = list(tokens)
    for at, (size, mirror) in enumerate(pairwise(tokens)):
        long = size.kind in ("NUMBER", "LENGTH", "FOCAL") and size.unit in ("", "mm") and len(size.numbers) == 1
        after = tokens[at + 2] if at + 2 < len(tokens) else None
        ends = after is None or after.kind in (*_ENDS, "MOUNT", "FNUM", "LENS", "BODY")
        if long and ends and MIRRORED in mirror.groups and _MIRRORED[0] <= size.numbers[0] <= _MIRRORED[1]:
            out[at] = size.as_("FOCAL", unit="mm") if size.kind == "NUMBER" else size
            out[at + 1] = mirror.as_("KIND", value=_MIRROR)
    return out


def _with_opened_told(tokens: list[Token]) -> list[Token]:
    """'85 wide open 1.8': the focal length before the words, and the stop behind them."""
    out = list(tokens)
    for at, (size, opened, stop) in enumerate(zip(tokens, tokens[1:], tokens[2:], strict=False)):
        told = size.kind == "NUMBER" and _is_focal(size) and OPENED in opened.groups
        if told and (stop.kind == "FNUM" or (stop.kind == "NUMBER" and stop.numbers[0] in STOPS)):
            out[at], out[at + 2] = size.as_("FOCAL", unit="mm"), stop.as_("FNUM")
    return out


def _without_other_stop(tokens: list[Token]) -> list[Token]:
    """'T or f 2.8': the letter is the other kind of stop, and no mount."""
    for at in range(len(tokens) - 2):
        letter, join, stop = tokens[at : at + 3]
        if letter.kind == "MOUNT" and letter.text.casefold() == _T and join.value == "or" and stop.kind == "FNUM":
            return [*tokens[:at], *tokens[at + 2 :]]
    return tokens


def _with_focal_told(tokens: list[Token]) -> list[Token]:
    """'MD, 135 on K', '35, LTM': the one bare number that a comma parts from the mount of a lens as FOCAL."""
    out = list(tokens)
    if any(one.kind in _LENGTHS for one in out) or sum(map(_is_focal, out)) != 1:
        return out
    for at, token in enumerate(out):
        bare = token.kind == "NUMBER" and _is_focal(token)
        if bare and (_is_parted_behind(out, at) or _is_parted_before(out, at)):
            out[at] = token.as_("FOCAL", unit="mm")
            break
    return out


def _is_parted_behind(tokens: list[Token], at: int) -> bool:
    """'MD, 135' at the end of a phrase."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    ends = after is None or after.kind == "STOP" or (after.kind in ("PREP", "JOIN") and after.value in _PARTING)
    named = at > 1 and tokens[at - 1].text == "," and tokens[at - 2].kind in ("MOUNT", "MOUNTWORD")
    return named and ends


def _is_parted_before(tokens: list[Token], at: int) -> bool:
    """'35, LTM' where a thing is named anew."""
    before = tokens[at - 1] if at else None
    opens = before is None or before.kind in ("DET", "STOP") or (before.kind == "JOIN" and before.text != ",")
    return opens and [one.kind for one in tokens[at + 1 : at + 3]] == ["JOIN", "MOUNT"] and tokens[at + 1].text == ","


def is_behind_lens(tokens: list[Token], at: int) -> bool:
    """Whether what stands at `at` stands right behind a lens told by focal length and mount: '85 mm C 1:2'."""
    before = tokens[at - 1] if at else None
    if before is None or before.kind not in _NAMES:
        return False
    row = [one.kind for one in tokens[max(0, at - 3) : at - 1]]
    return row[-1:] in (["LENGTH"], ["FOCAL"]) or row in (["LENGTH", "MOUNT"], ["FOCAL", "MOUNT"])


def _is_beside_mount(tokens: list[Token], at: int) -> bool:
    before = tokens[at - 1] if at else None
    worded = before is not None and before.kind == "MOUNTWORD" and at > 1 and tokens[at - 2].kind == "MOUNT"
    before = tokens[at - 2] if worded else before  # 'M mount 58 2'
    behind = at + 2 + any(_is_in(one) for one in tokens[at + 2 : at + 3])  # '58 2 in P6', 'it says 58 2 and M42'
    after = tokens[behind] if behind < len(tokens) else None
    if behind == at + 2 and after is not None and after.kind == "LENS" and behind + 1 < len(tokens):
        after = tokens[behind + 1] if tokens[behind + 1].kind in ("MOUNT", *_ENDS) else after  # '35 2 lens MD'
    linked = behind + 1 < len(tokens) and tokens[behind + 1].kind in ("LINK", "PIECE", "NUMBER", "LENGTH")
    if after is not None and after.kind == "MOUNT":
        return not linked and (before is None or before.kind not in _NUMBERED)
    ahead = before is not None and before.kind == "MOUNT"
    behind_name = ahead and (at < 2 or tokens[at - 2].kind not in ("LINK", *_NUMBERED))
    return behind_name and (after is None or after.kind in _ENDS or after.kind == "KIND")  # 'T2 500 8 mirror lens'


def _is_before_ring(tokens: list[Token], at: int) -> bool:
    """'m42 50mm 1.8 ring', '50mm 1.8 m42 to E ring': right before a piece, which has no two numbers, or its mounts."""
    behind = tokens[at + 2 : at + 6]
    kinds = [one.kind for one in behind]
    named = at > 0 and tokens[at - 1].kind == "MOUNT"
    if kinds[:1] == ["PIECE"]:
        return named and behind[0].value not in _LONG
    linked = kinds[:1] == ["MOUNT"] and kinds[1:2] in (["LINK"], ["MOUNT"], ["PREP"])
    return linked and "PIECE" in kinds and (at == 0 or tokens[at - 1].kind not in _NUMBERED)


def _is_decimal_stop(token: Token) -> bool:
    return token.kind == "NUMBER" and "." in token.text and token.numbers[0] in STOPS and token.numbers[0] <= _SLOWEST


def _is_in(token: Token) -> bool:
    return (token.kind == "PREP" and token.value == "in") or token.value == "and"


def _is_engraved(token: Token) -> bool:
    """'1:2' as it stands on the rim of a lens."""
    return token.kind == "RATIO" and token.text.startswith("1") and round(1 / (token.numbers[0] or 1), 4) in STOPS


def _is_focal(token: Token) -> bool:
    bare = token.kind == "NUMBER" and token.text.isdecimal() and not token.ids
    metric = token.is_mm
    return (bare or metric) and _FOCALS[0] <= token.numbers[0] <= _FOCALS[1]


def _is_stop(token: Token) -> bool:
    return token.kind == "NUMBER" and token.text.isdecimal() and token.numbers[0] in STOPS and (
        1 < token.numbers[0] <= _SLOWEST
    )  # fmt: skip
