"""Numbers of what is turned: the way that turns are asked for, and where a ring stands when something far is sharp."""

from __future__ import annotations

from typing import Final

from grammar.numbers.crests import is_count, is_screw
from grammar.words.groups import FRAME_NAMED, READS, SCALE
from grammar.words.token_kinds import METRES
from grammar.words.tokens import Token

_TURNS_ASKED: Final = "turns-q"
_ANGLE_SEEN: Final = "angle-seen"
_DIAGONAL: Final = ("MEASURE", "diagonal")
_REMARKED: Final = "remark"
_LEAST_LENS: Final = 12.0  # mm
_LEAD: Final = "lead-asked"
_FAR: Final = frozenset(["infinity", "past-infinity", "infinity-at"])  # cues of what is far off and sharp
_LONGEST_MM: Final = 80.0  # that a focusing thread moves
_TURNED: Final = frozenset(["TURNS", "DEGREES"])
_OF: Final = ("PREP", "of")
_STOPPED: Final = frozenset(["FNUM", "COMBO", "FOCAL"])
_PLACED: Final = frozenset(["on", "at", "to"])
_DESCRIBING: Final = frozenset(["NUMBER", "LENGTH", "MOUNT", "LINK", "TIMES"])  # before another ring than the lens's
_MOST_METRES: Final = 100.0
_WORDS: Final = 3
_FACTORS: Final = frozenset([1.4, 1.7, 2.0, 0.7, 0.71, 0.72])  # of converters and reducers

_ONE: Final = frozenset(["a", "an", "my", "another"])  # before a lens that is on the ring


def with_turned_ways(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The one length that turns are asked for as KEYED travel, and the number that a ring stands on as a mark."""
    out = _with_ring_marks(list(tokens)) if told & _FAR else list(tokens)
    out = _with_marked_lens(out) if _REMARKED in told else out
    if _ANGLE_SEEN in told or any(token.kind == "FORMAT" or FRAME_NAMED in token.groups for token in out):
        # 'how many degrees does a 25 see on MFT' asks for no turn
        return [one.as_("CUE") if (one.kind, one.value) == _DIAGONAL and _ANGLE_SEEN in told else one for one in out]
    turned = any(token.kind in _TURNED for token in out)
    if turned != (_LEAD in told) or not told & {_TURNS_ASKED, _LEAD}:
        return out  # a turn told with what it moves tells what a turn is for
    ways = [at for at, token in enumerate(out) if token.is_mm and not _is_of_thread(out, at)]
    if len(ways) == 1 and out[ways[0]].numbers[0] <= _LONGEST_MM and not any(one.kind in _STOPPED for one in out):
        out[ways[0]] = out[ways[0]].as_("KEYED", value="travel")
    return out


def _is_of_thread(tokens: list[Token], at: int) -> bool:
    """'25.3 mm thread', 'thread 38.9, ten turns 9.8 mm': how wide it is, or how long so many of its turns are."""
    if at + 1 < len(tokens) and is_screw(tokens[at + 1]):
        return True
    told = at  # 'a thread of about 25.4 mm, 32 turns an inch'
    while told and (tokens[told - 1].kind == "FILLER" or (tokens[told - 1].kind, tokens[told - 1].value) == _OF):
        told -= 1
    if told and is_screw(tokens[told - 1]) and tokens[at].numbers[0] >= _LEAST_LENS:
        return True
    before = tokens[max(0, at - _WORDS) : at]
    return any(map(is_screw, tokens)) and any(map(is_count, before))


def _with_marked_lens(tokens: list[Token]) -> list[Token]:
    """'28mm m42 ring 0.5 mm too thick, ... at the 1 m mark': marks are of a lens, which is told before its ring."""
    if any(one.kind in _STOPPED for one in tokens):
        return tokens
    for at, token in enumerate(tokens):
        behind = at + 1
        while behind < len(tokens) and tokens[behind].kind == "MOUNT":
            behind += 1
        ring = behind < len(tokens) and (tokens[behind].kind, tokens[behind].value) == ("PIECE", "adapter")
        whole = token.is_mm and token.numbers[0] == int(token.numbers[0])
        if ring and whole and token.numbers[0] >= _LEAST_LENS:
            lens = [*tokens[:at], token.as_("FOCAL"), *tokens[at + 1 : behind]]
            return [*lens, Token("CUE", "", tokens[behind].column), *tokens[behind:]]
    return tokens


def with_turned_into(tokens: list[Token]) -> list[Token]:
    """'what does the 1.4 turn f2.5 into': a converter, and no part of a turn of a thread."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        after = tokens[at + 1 : at + 4]
        into = any(one.text.casefold() == "into" for one in after)
        factor = token.kind == "TURNS" and token.text.endswith("turn") and token.numbers[0] in _FACTORS
        told = factor and into and after[0].kind in ("FNUM", "NUMBER", "LENGTH", "FOCAL", "LETTER")
        times = token.as_("TIMES", text=f"{token.numbers[0]:g}x", unit="", value="") if told else token
        out += [times, Token("CUE", "turn", token.end)] if told else [token]
    return out


def _with_ring_marks(tokens: list[Token]) -> list[Token]:
    """'horizon sharp with the ring on 20': the ring of the lens, and a mark of its scale."""
    for at, token in enumerate(tokens):
        described = at > 0 and tokens[at - 1].kind in _DESCRIBING
        if token.kind != "PIECE" or SCALE not in token.groups or described:
            continue
        rest = [(n, one) for n, one in enumerate(tokens[at + 1 : at + 1 + _WORDS], start=at + 1)]
        ahead = [(n, one) for n, one in rest if one.kind not in ("DET", "FILLER", "VERB", "CUE", "MEASURE")]
        led = [one for _, one in ahead[:1] if one.kind == "PREP" and one.value in _PLACED]
        said = any(one.value == "does" or READS in one.groups for _, one in rest)
        found = ahead[1:2] if led else ahead[:1] if said else []
        found = [(n, one) for n, one in found if led or tokens[n - 1].kind != "DET"]  # 'with this ring my 58 hits it'
        found = [(n, one) for n, one in found if tokens[n - 1].text.casefold() not in _ONE]  # 'same ring on a 24'
        for n, number in found:
            bare = number.kind == "NUMBER" and not number.text.isalpha() and 0 < number.numbers[0] <= _MOST_METRES
            away = number.kind == "LENGTH" and number.unit in METRES
            behind = tokens[n + 1].kind if n + 1 < len(tokens) else ""
            if (bare and behind not in ("FNUM", "LENS", "MOUNT", "PIECE")) or away:
                size = number.numbers[0] * (1000.0 if bare else 1.0)
                tokens[n] = number.as_("KEYED", value="mark", unit=number.unit or "m", numbers=(size,))
                tokens[at] = token.as_("CUE")
    return tokens
