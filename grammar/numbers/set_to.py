"""What a lens is set to, told behind 'at' or beside what the camera is set to: a stop, a distance, no other lens."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import DRAWN
from grammar.words.tokens import Token

_SETTING: Final = frozenset(["FNUM", "LENGTH", "RATIO", "TIMES", "NUMBER", "SHUTTER", "TSTOP"])
_EXPOSES: Final = frozenset(["SHUTTER", "ISO", "FPS", "LIGHT", "ND"])
_TELLS_LENS: Final = frozenset(["FOCAL", "COMBO", "NAMED", "LENGTH"])
_OF_LENS: Final = frozenset(["LENGTH", "FOCAL", "COMBO", "MOUNT", "LENS", "KIND", "NUMBER"])
_OF_DEPTH: Final = frozenset(["dof", "after-depth-of-field"])  # cues that how deep is asked
_OPENED: Final = "wide-open"  # the cue that tells the stop without its number
_MOST_METRES: Final = 100.0  # a larger number without a unit is no distance of a subject
_NEAREST: Final = 250.0  # mm; what is set to less with a stop beside it is a focal length


def with_settings(tokens: list[Token], told: frozenset[str] = frozenset()) -> list[Token]:
    """'at f/8' is a setting; 'at' before anything else says nothing."""
    tokens = [_how_far(tokens, at) if told & _OF_DEPTH else one for at, one in enumerate(tokens)]
    if _OPENED in told and told & _OF_DEPTH:
        tokens = [_as_metres(one) if _is_bare_at(tokens, at) else one for at, one in enumerate(tokens)]
    out: list[Token] = []
    for at, token in enumerate(tokens):
        if token.kind == "PREP" and token.value == "at":
            after = tokens[at + 1] if at + 1 < len(tokens) else None
            drawn = bool(out) and out[-1].kind == "PIECE" and out[-1].value in DRAWN
            if drawn and after is not None and after.kind == "LENGTH" and after.unit in ("mm", "cm"):
                continue  # 'bellows at 100 mm' is drawn so far
            if after is not None and _is_lens_at(tokens, at + 1):
                continue
            if after is not None and _is_zoomed_to(tokens, at):
                tokens = [*tokens[: at + 1], after.as_("FOCAL"), *tokens[at + 2 :]]
                continue
            if after is not None and after.kind in _SETTING:
                out.append(token.as_("AT"))
            continue
        if token.kind == "FNUM" and _is_set(tokens, at):
            out.append(Token("AT", "", token.column, value="at"))
        out.append(token)
    return out


def _is_zoomed_to(tokens: list[Token], at: int) -> bool:
    """'the lens on my super 8 cam is set to 10 mm': no subject is so near, and no other length is told of the lens."""
    length = tokens[at + 1]
    short = length.is_mm and length.kind == "LENGTH" and length.text[-2:] == "mm" and length.numbers[0] < _NEAREST
    lens = any(one.kind == "LENS" for one in tokens[:at])
    others = any(one.kind in _TELLS_LENS or one.kind == "PIECE" for n, one in enumerate(tokens) if n != at + 1)
    return short and lens and not others


def _how_far(tokens: list[Token], at: int) -> Token:
    """'depth at 1.5 f4': beside a stop that is written as one, the bare number is how far away it is set, in metres."""
    written = any(one.kind in ("FNUM", "COMBO") and not one.text[:1].isdigit() for one in tokens)
    return _as_metres(tokens[at]) if written and _is_bare_at(tokens, at) else tokens[at]


def _is_bare_at(tokens: list[Token], at: int) -> bool:
    led = at > 0 and tokens[at - 1].kind == "PREP" and tokens[at - 1].value == "at"
    bare = tokens[at].kind in ("FNUM", "NUMBER") and tokens[at].text.replace(".", "", 1).isdigit()
    return led and bare and tokens[at].numbers[0] <= _MOST_METRES


def _as_metres(token: Token) -> Token:
    return token.as_("LENGTH", unit="m", numbers=(token.numbers[0] * 1000.0,))


def _is_set(tokens: list[Token], at: int) -> bool:
    """'35 f/1.4 on X, 1/50 iso 200 f2.8', '135 on MFT f8 at 2 m': what the lens is set to, and not another one's."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if after is not None and after.kind in _OF_LENS:
        return False
    listed = at > 0 and tokens[at - 1].text == ","
    back = at - 1 - listed
    before = tokens[back] if back >= 0 else None
    if before is None:
        return False
    placed = before.kind == "MOUNT" and _led_by_place(tokens, back)
    on_frame = before.kind in ("FORMAT", "BODY", "FRAME") or placed
    measured = before.kind == "LENGTH" and back > 0 and tokens[back - 1].value == "at"
    lens = any(one.kind in _TELLS_LENS and one.unit in ("", "mm", "lens") for one in tokens[:at])
    stop = any(one.kind in ("FNUM", "COMBO") for one in tokens[:at])
    again = listed and before.kind in ("FNUM", "COMBO")  # '50/1.8, f/8'
    return (stop and (before.kind in _EXPOSES or measured or again)) or (lens and on_frame)


def _led_by_place(tokens: list[Token], at: int) -> bool:
    """Whether a mount stands behind the word that puts a lens on it: 'on my X'."""
    behind = [one for one in tokens[max(0, at - 3) : at] if one.kind not in ("DET", "FORMAT")]
    return bool(behind) and behind[-1].kind == "PREP" and behind[-1].value in ("on", "to")


def _is_lens_at(tokens: list[Token], at: int) -> bool:
    """'at 14 mm f/2.8', 'zoom at 9mm': so short, and of a zoom or a stop beside it, is a focal length, no distance."""
    near = tokens[at].is_mm and tokens[at].numbers[0] < _NEAREST
    zoomed = any(one.kind in ("KIND", "MOUNT") and "zoom" in one.text.casefold() for one in tokens)
    return near and (zoomed or (at + 1 < len(tokens) and tokens[at + 1].kind == "FNUM"))
