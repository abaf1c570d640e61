"""Which single letters are mounts by the numbers of a lens beside them: 'k 50 on E', '25mm c', '85/1.8 k on Z'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token
from grammar.words.written import STOPS

ARTICLES: Final = frozenset(["a", "i"])
UNITS: Final = frozenset("fmst")  # what may as well be a stop or a unit
_OPENERS: Final = frozenset(["DET", "JOIN", "STOP", "FILLER", "VERB", "MARK"])
_FIGURES: Final = frozenset(["NUMBER", "LENGTH", "COMBO"])
_STOPLIKE: Final = frozenset("fst")  # before a number it is that of a stop or of a time
_SHORTEST: Final = 3.0  # mm, of a lens for a small sensor
_LEAST_FOCAL, _MOST_FOCAL = 8.0, 1200.0  # mm


def is_put_on_mount(tokens: list[Token], at: int) -> bool:
    """'why does c on m43 need a cup': right before the mount that such a lens is put on, behind no number."""
    rest = [one for one in tokens[at + 1 : at + 4] if one.kind != "DET"]
    opened = at == 0 or tokens[at - 1].kind in ("CUE", "VERB", "STOP", "JOIN")
    if not opened or tokens[at].text.casefold() in ARTICLES | UNITS or not tokens[at].gap:
        return False
    return len(rest) > 1 and rest[0].value in ("on", "to") and rest[1].kind == "MOUNT"


def is_told_by_numbers(tokens: list[Token], at: int) -> bool:
    """Whether the letter stands beside the numbers of a lens as its mount does."""
    stands = (
        _in_which, _before_focal, _on_a_body, _set_against, _behind_comma, _before_comma, _of_lens, _ends_a_row,
    )  # fmt: skip
    return any(one(tokens, at) for one in stands)


def _ends_a_row(tokens: list[Token], at: int) -> bool:
    """'my 16 and 25 c': behind the last of several bare numbers, where a phrase ends."""
    if at < 3 or tokens[at].text.casefold() in UNITS or not tokens[at].gap:
        return False
    one, join, other = tokens[at - 3 : at]
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    figures = all(n.kind == "NUMBER" and not n.text.isalpha() and n.numbers[0] >= _LEAST_FOCAL for n in (one, other))
    return figures and join.kind == "JOIN" and (after is None or after.kind in ("STOP", "JOIN", "PREP"))


def _of_lens(tokens: list[Token], at: int) -> bool:
    """'25mm c on m43', '50 1.4 k': right behind the numbers of a lens, where a phrase ends."""
    token, before, focal = tokens[at], tokens[at - 1] if at else None, tokens[at - 2] if at > 1 else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if before is None or before.kind not in ("LENGTH", "FNUM", "COMBO", "NUMBER", "TIMES") or not token.gap:
        return False
    if token.text.casefold() in UNITS and before.kind != "TIMES":
        return False
    if after is not None and after.kind in ("NUMBER", "FNUM") and before.kind in ("LENGTH", "NUMBER"):
        return after.numbers[0] in STOPS and not after.text.isalpha() and not before.text.isalpha()
    if before.kind == "NUMBER":
        ends = after is None or after.kind in ("STOP", "JOIN", "PREP")
        whole = focal is not None and focal.is_mm  # '35mm 2 k'
        bare = (
            focal is not None and focal.kind == "NUMBER" and not focal.text.isalpha()
        )  # '85 2 k on E', '35 2 k, ring?'
        whole = whole or (bare and focal is not None and focal.numbers[0] >= _LEAST_FOCAL)
        return ("." in before.text or whole) and before.numbers[0] in STOPS and ends
    return after is None or after.kind in ("STOP", "PREP", "JOIN", "VERB", "CUE", "MEASURE", "FILLER")


def _on_a_body(tokens: list[Token], at: int) -> bool:
    """'12.5 c on mft': behind a bare number, before the body that such a lens is put on."""
    before, rest = tokens[at - 1] if at else None, [one for one in tokens[at + 1 : at + 4] if one.kind != "DET"]
    if before is None or before.kind != "NUMBER" or before.text.isalpha() or not tokens[at].gap:
        return False
    if tokens[at].text.casefold() in UNITS or before.numbers[0] < _SHORTEST:
        return False
    return len(rest) > 1 and rest[0].value in ("on", "to") and rest[1].kind in ("MOUNT", "LETTER", "BODY", "FORMAT")


def _set_against(tokens: list[Token], at: int) -> bool:
    """'12.5 d vs 13 c': behind a number, where another letter behind a number is set against it."""

    def told(where: int) -> bool:
        number = tokens[where - 1] if where > 0 else None
        lettered = tokens[where].kind in ("LETTER", "MOUNT") and tokens[where].text.casefold() not in ARTICLES
        return lettered and number is not None and number.kind == "NUMBER" and number.numbers[0] >= _SHORTEST

    others = [where for where in (at - 3, at + 3) if 0 <= where < len(tokens) and told(where)]
    joins = [tokens[min(at, other) + 1] for other in others]
    return told(at) and any(join.kind == "JOIN" and join.value in ("vs", "or") for join in joins)


def _behind_comma(tokens: list[Token], at: int) -> bool:
    """'28 2.8, m on z', '85/1.8 k work on z': behind the numbers of a lens, and put on something."""
    parted = at > 1 and tokens[at - 1].text == ","
    before = tokens[at - 1 - parted] if at > parted else None
    if before is None or before.kind not in ("LENGTH", "FNUM", "COMBO") or not tokens[at].gap:
        return False
    if not parted and tokens[at].text.casefold() in UNITS:
        return False
    after = next((one for one in tokens[at + 1 :] if one.kind != "FILLER"), None)
    return after is not None and after.kind == "PREP" and after.value in ("on", "to")


def _before_comma(tokens: list[Token], at: int) -> bool:
    """'c, 75 2.5 on e': what a line begins with, before the numbers of a lens."""
    after = tokens[at + 1 : at + 3]
    if at or len(after) < 2 or after[0].text != "," or after[1].text.isalpha():
        return False
    return after[1].kind in _FIGURES and after[1].numbers[0] >= _LEAST_FOCAL


def _before_focal(tokens: list[Token], at: int) -> bool:
    """'my m 35', 'k 50 on e', 'and k 135/2.8': opened as a thing is, and right before the focal length of a lens."""
    before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
    if after is None or not after.gap:
        return False
    if before is None and after.kind == "COMBO":
        return True  # 'k 135/2.5 on ...' begins with its lens, and so does 'f 35/2 on e'
    made = before is not None and before.kind == "UNKNOWN"  # a maker's name before a designation is passed over
    if tokens[at].text.casefold() in _STOPLIKE and (not made or after.numbers[:1] == () or after.numbers[0] in STOPS):
        return False
    beside = before is not None and (before.kind, before.value) == ("PREP", "with")  # 'a D 13 and a C 25', 'with k 28'
    opened = before is None or made or beside or before.kind in _OPENERS
    opened = opened and (before is None or before.text.casefold() not in ("x", "/"))
    number = after.kind in _FIGURES and not after.text.isalpha() and after.unit in ("", "mm")
    return opened and number and _LEAST_FOCAL <= after.numbers[0] <= _MOST_FOCAL


def _in_which(tokens: list[Token], at: int) -> bool:
    """'85 f1.8 in k': the mount that a lens told by its numbers is in, where a phrase ends."""
    if at < 2 or tokens[at - 1].kind != "PREP" or tokens[at - 1].value != "in":
        return False
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    ends = after is None or after.kind in ("STOP", "JOIN", "PREP")
    return ends and tokens[at - 2].kind in ("FNUM", "COMBO", "LENGTH", "NUMBER")
