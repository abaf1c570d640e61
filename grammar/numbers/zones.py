"""A zone that shall be sharp: '2m to infinity', 'between 1 and 3 m', 'from 1.5m all the way to the horizon'."""

from __future__ import annotations

from math import inf
from typing import Final

from engine.base.units import FAR_UNITS
from grammar.words.groups import BEYOND
from grammar.words.tokens import Cue, Token

_WANTED: Final = frozenset(
    ["dof", "hyperfocal", "sharp-enough", "zone-wanted", "which-stop", "f-stop", "after-depth-of-field"]
)
_METRES: Final = frozenset(["m", "ft", "cm", "in"])
_SEATED: Final = frozenset(["PIECE"])
_FEET: Final = frozenset(["ft", "in"])
_PASSED: Final = frozenset(["CUE", "DET", "VERB", "FILLER", "MARK"])
_ZONE: Final = "zone-wanted"
_FAR: Final = "infinity"  # what a cue tells that stands for the far end
_NEAR_END: Final = "end-near"  # and what a word tells that leads to the near end, or to the far one
_FAR_END: Final = "end-far"
_SET: Final = frozenset(["zone-wanted", "which-stop", "after-depth-of-field"])  # two bare numbers are metres here
_LINKS: Final = frozenset(["to", "and", "-"])
_HEADS: Final = frozenset(["LENS", "KIND", "PIECE", "MEASURE", "MOUNT"])  # of which a number before them is
_MOST_BARE: Final = 100.0  # a larger number without a unit is no distance in metres
_LEAST_MM: Final = 100.0


def with_zones_told(tokens: list[Token], cues: tuple[Cue, ...], told: frozenset[str]) -> list[Token]:
    """The two ends become one KEYED zone, where depth or a stop is asked for; lengths in mm, the far one may be inf."""
    far = {cue.column for cue in cues if cue.tells == _FAR}
    wanted = [(cue.column, cue.end) for cue in cues if cue.tells == _ZONE]  # 'to infinity sharp' has its end within
    ends = [one.column for one in tokens if one.text.casefold() == _FAR]
    far |= {end for end in ends if any(start <= end <= last for start, last in wanted)}
    # 'f/4: where do I focus so that 3 m to infinity is sharp' asks it by a stop alone
    stopped = any(token.kind in ("FNUM", "COMBO") for token in tokens)
    open_ended = "focus" in told and any(
        _goes_on(tokens, at) or (stopped and (found := _zone(tokens, at, far)) is not None and found[1] == inf)
        for at in range(len(tokens))
    )
    if "iris" in told or told & _WANTED:
        tokens = _with_ends_named(tokens, cues)
    alone = "iris" in told and not any(
        token.kind in _SEATED for token in tokens
    )  # 'people at 2 m and 2.6 m, aperture?'
    if not (told & _WANTED or open_ended or alone):
        return tokens
    out = list(tokens)
    for at, token in enumerate(out):
        found = _zone(out, at, far) or (_bare_zone(out, at) if told & _SET else None)
        if found is None and "all-from" in told and _all_from(out, at):
            found = (out[at].numbers[0], inf, at)
        if found is not None:
            near, distant, end = found
            unit = next((one.unit for one in out[at : end + 1] if one.unit in _FEET), "m")
            out[at : end + 1] = [token.as_("KEYED", value="zone", numbers=(near, distant), unit=unit)]
            break
    return out


def _zone(tokens: list[Token], at: int, far: set[int]) -> tuple[float, float, int] | None:
    """Near end, far end and the last token of a zone that begins here."""
    token = tokens[at]
    if token.column in far and at + 2 < len(tokens) and tokens[at + 1].value in ("to", "-"):
        start = _mm(tokens[at + 2], "m") if tokens[at + 2].kind in ("LENGTH", "NUMBER") else None
        return (start, inf, at + 2) if start is not None else None  # 'infinity to 4m'
    if token.kind == "RANGE" and token.unit in _METRES:
        near, distant = min(token.numbers), max(token.numbers)
        return (near, distant, at) if near >= _LEAST_MM else None
    if token.kind not in ("LENGTH", "NUMBER") or token.text.isalpha():
        return None
    if _goes_on(tokens, at):
        start = _mm(token, "m")
        return (start, inf, at + 1) if start is not None else None
    link = at + 1
    while (
        link < len(tokens)
        and (tokens[link].kind in _PASSED or _is_dot(tokens, link))
        and tokens[link].column not in far
    ):
        link += 1
    if link >= len(tokens) or (tokens[link].value not in _LINKS and tokens[link].column not in far):
        return None
    end = link if tokens[link].column in far else link + 1
    while end < len(tokens) and tokens[end].kind in _PASSED and tokens[end].column not in far:
        end += 1
    if end >= len(tokens):
        return None
    if tokens[end].column in far:
        start = _mm(token, "m")
        linked = (end > link and tokens[link].value in ("to", "-")) or _is_dot(tokens, link - 1)
        return (start, inf, end) if start is not None and linked else None
    other = tokens[end]
    unit = token.unit if token.unit in _METRES else other.unit
    if other.kind not in ("LENGTH", "NUMBER") or unit not in _METRES:
        return None
    ends = _mm(token, unit), _mm(other, unit)
    if ends[0] is None or ends[1] is None or ends[0] >= ends[1]:
        return None
    return ends[0], ends[1], end


def _is_dot(tokens: list[Token], at: int) -> bool:
    """One of the dots of '2m..inf'."""
    beside = (*tokens[at - 1 : at], *tokens[at + 1 : at + 2])
    return tokens[at].text == "." and any(one.text == "." for one in beside)


def _with_ends_named(tokens: list[Token], cues: tuple[Cue, ...]) -> list[Token]:
    """'near limit 2 m, far 5 m': each end behind the word for it; they become one KEYED zone."""
    near, far = (_led_to(tokens, cues, end) for end in (_NEAR_END, _FAR_END))
    if near is None or far is None or near == far:
        return tokens
    unit = next((tokens[at].unit for at in (far, near) if tokens[at].unit in _METRES), "m")
    ends = _mm(tokens[near], unit), _mm(tokens[far], unit)
    if ends[0] is None or ends[1] is None or ends[0] >= ends[1]:
        return tokens
    first, last = min(near, far), max(near, far)
    zone = tokens[first].as_("KEYED", value="zone", numbers=(ends[0], ends[1]), unit="m")
    named = [one.as_("CUE") if one.value == "nearest" else one for one in tokens[:first]]
    return [*named, zone, *tokens[last + 1 :]]


def _led_to(tokens: list[Token], cues: tuple[Cue, ...], end: str) -> int | None:
    """Where the length stands that a word leads to; None where it leads to another thing."""
    for cue in cues:
        if cue.tells != end:
            continue
        behind = [at for at, one in enumerate(tokens) if one.column > cue.end and one.kind not in _PASSED]
        if behind and tokens[behind[0]].kind in ("LENGTH", "NUMBER") and not tokens[behind[0]].text.isalpha():
            return behind[0]
    return None


def _bare_zone(tokens: list[Token], at: int) -> tuple[float, float, int] | None:
    """'sharp from 1.5 to 4': two bare numbers joined are metres, where nothing else says what they are."""
    three = tokens[at : at + 3]
    if [one.kind for one in three] != ["NUMBER", "PREP", "NUMBER"] or three[1].value != "to":
        return None
    after = tokens[at + 3] if at + 3 < len(tokens) else None
    if any(one.text.isalpha() or one.unit for one in (three[0], three[2])) or (after and after.kind in _HEADS):
        return None
    ends = _mm(three[0], "m"), _mm(three[2], "m")
    if ends[0] is None or ends[1] is None or not 0 < ends[0] < ends[1]:
        return None
    return ends[0], ends[1], at + 2


def _all_from(tokens: list[Token], at: int) -> bool:
    """'so that everything from 1 m is sharp': with no other end told all behind it is meant."""
    led = at > 0 and tokens[at - 1].value == "from"
    rest = tokens[at + 1] if at + 1 < len(tokens) else None
    ends = rest is None or rest.kind in ("CUE", "STOP", "VERB")
    return led and ends and tokens[at].kind == "LENGTH" and tokens[at].unit in _METRES


def _goes_on(tokens: list[Token], at: int) -> bool:
    """'from 1.2 m on', '2 m onwards', '3m and beyond': all that lies behind."""
    rest = tokens[at + 1 : at + 3]
    if not rest or tokens[at].unit not in _METRES:
        return False
    if BEYOND in rest[0].groups:
        return True
    ends = len(rest) < 2 or rest[1].kind in ("CUE", "STOP", "VERB")
    opened = at > 0 and tokens[at - 1].value == "from"
    return opened and rest[0].value == "on" and ends


def _mm(token: Token, unit: str) -> float | None:
    """The distance in mm; a bare number in the unit of the other end."""
    number = token.numbers[0]
    if token.kind == "NUMBER" and not token.unit:
        number *= FAR_UNITS[unit] if number < _MOST_BARE else 0.0
    elif token.unit not in _METRES:
        return None
    return number if number >= _LEAST_MM else None
