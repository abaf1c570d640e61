"""A length from where a lens seats to where its image lies: '88 from its shoulder to a sharp far image'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.words.groups import IMAGE, SEEN_SHARP
from grammar.words.token_kinds import SIZES
from grammar.words.tokens import Token

_SEAT: Final = "seat"  # values of the words for the two ends
_IMAGE: Final = "image"
FLANGE: Final = "flange-to-image"
_FAR: Final = (5.0, 300.0)  # mm, from flange to image
_ALONG: Final = frozenset(
    ["FILLER", "DET", "LETTER", "CUE", "MARK", "PREP", "VERB", "UNKNOWN", "TARGET", "MEASURE", "LIGHT"]
)
_BACK: Final = "back"
_COLLAR: Final = "barrel"
_FOCUS: Final = "focus"
_LIP: Final = "lip"
_BEHIND: Final = "behind"
_REACH: Final = 5  # tokens from the one end to the other, and from either to the number
_REACH_OF_LENS: Final = 7  # and past what tells the lens
_LED_OFF: Final = frozenset(["from", "behind", "off", "past", "after"])  # words from the number on to the seat
_REAR: Final = "rear-reach"
_OF_REAR: Final = "rear-stands"  # what cues tell that speak of the lens's own rear
_OF_CIRCLES: Final = frozenset(["cover", "vignette", "image-circle", "equiv"])  # cues of how wide an image is
_STARTS: Final = 3  # tokens between what leads off and the seat
_UNFOCUSED: Final = frozenset(["enlarger", "projector", "process", "large-format"])  # kinds of lens of no register
_SHARP_WITHIN: Final = 5  # tokens
_SHORTEST_MM: Final = 9.0  # what is less, told without a word for the image right beside, is how far a rear reaches


def with_flange_spans_told(tokens: list[Token], told: frozenset[str] = frozenset()) -> list[Token]:
    """The bare number beside such a span becomes KEYED; other numbers stay as they are."""
    out = list(tokens) if _OF_REAR in told else _with_sharp_behind(list(tokens))
    if not told & _OF_CIRCLES:
        _tell_image_at(out)
    _tell_back_focus(out)
    _tell_sharp_at(out)
    _tell_window_at(out)
    for at, token in enumerate(tokens):
        if not (_is_end(token, _IMAGE) or _leads_there(token)):
            continue
        behind = _behind_which(tokens, at)
        if behind is not None:
            out[behind] = tokens[behind].as_("KEYED", value=FLANGE, unit="mm")
            out[behind + 1] = out[behind + 1].as_("CUE")
            continue
        start = _seat_before(tokens, at)
        number = None if start is None else _number(tokens, start, at)
        if start is None or number is None:
            continue
        out[number] = tokens[number].as_("KEYED", value=FLANGE, unit="mm")
        for n in range(start, at + 1):
            out[n] = out[n].as_("CUE") if out[n].kind == "MEASURE" else out[n]
    return out


def _with_sharp_behind(tokens: list[Token]) -> list[Token]:
    """'sharp 45 behind its flange', 'infinity at 65 from the rear edge': led off the seat, of what is seen sharp."""
    starts = [0, *(at + 1 for at, one in enumerate(tokens) if one.kind == "STOP"), len(tokens)]
    for start, end in pairwise(starts):
        if not any(SEEN_SHARP in one.groups or _is_end(one, _IMAGE) for one in tokens[start:end]):
            continue
        for at in range(start, end):
            if _is_far(tokens[at]) and (seat := _seat_behind(tokens, at, end)) is not None:
                tokens[at] = tokens[at].as_("KEYED", value=FLANGE, unit="mm")
                for place in range(at + 1, seat + 1):
                    tokens[place] = tokens[place].as_("CUE", ids=())
    return tokens


def _tell_image_at(tokens: list[Token]) -> None:
    """'industrial lens, 42 thread, image 17.5', 'my lens images at 51.3': with no more than a small word between."""
    for at, token in enumerate(tokens[:-1]):
        if not _is_end(token, _IMAGE) or IMAGE not in token.groups:
            continue
        place = at + 1
        while place < len(tokens) - 1 and place <= at + 2 and tokens[place].kind in ("VERB", "PREP", "MARK"):
            if tokens[place].kind == "PREP" and tokens[place].value != "at":
                break
            place += 1
        after = tokens[place + 1] if place + 1 < len(tokens) else None
        ends = after is None or after.kind in ("STOP", "JOIN", "MARK", "CUE", "VERB") or after.text.casefold() == "on"
        if _is_far(tokens[place]) and ends:
            tokens[place] = tokens[place].as_("KEYED", value=FLANGE, unit="mm")
            return


def _tell_sharp_at(tokens: list[Token]) -> None:
    """'measured flange to paper, a far church was sharp at 45.5 mm': what was measured from is told before."""
    seat = next((n for n, one in enumerate(tokens) if one.kind == "MEASURE" and one.value == FLANGE), None)
    if seat is None or any(map(_is_far, tokens[max(0, seat - 2) : seat + 3])):
        return
    for at in range(seat + 1, len(tokens) - 1):
        led = tokens[at].kind == "PREP" and tokens[at].value == "at"
        sharp = any(SEEN_SHARP in one.groups for one in tokens[max(0, at - 2) : at])
        if led and sharp and _is_far(tokens[at + 1]) and tokens[at + 1].unit in ("mm", "cm"):
            tokens[at + 1] = tokens[at + 1].as_("KEYED", value=FLANGE, unit="mm")
            tokens[seat] = tokens[seat].as_("CUE", ids=())
            return


def _tell_window_at(tokens: list[Token]) -> None:
    """'80 enlarger, window focus at 74.5': a lens without a register, and what is sharp is measured off it."""
    unfocused = any(one.kind == "KIND" and one.value in _UNFOCUSED for one in tokens)
    if not unfocused or any(one.kind in ("MEASURE", "KEYED") and one.value == FLANGE for one in tokens):
        return
    for at in range(2, len(tokens)):
        led = tokens[at - 1].kind == "PREP" and tokens[at - 1].value == "at"
        sharp = any(SEEN_SHARP in one.groups for one in tokens[max(0, at - _SHARP_WITHIN) : at - 1])
        fine = tokens[at].unit == "mm" or "." in tokens[at].text
        if led and sharp and fine and _is_far(tokens[at]):
            tokens[at] = tokens[at].as_("KEYED", value=FLANGE, unit="mm")
            return


def _is_far(token: Token) -> bool:
    metric = token.kind in SIZES and token.unit in ("", "mm", "cm") and not token.text.isalpha()
    return metric and len(token.numbers) == 1 and _SHORTEST_MM <= token.numbers[0] <= _FAR[1]


def _seat_behind(tokens: list[Token], at: int, end: int) -> int | None:
    """Where the seat stands that the number at `at` is led off; None where it is led off nothing such."""
    at += at + 1 < end and tokens[at + 1].text.casefold() == _BACK  # '45 back from the flange'
    behind = tokens[at + 1] if at + 1 < end else None
    if behind is None:
        return None
    if behind.kind == "MEASURE" and behind.value == _REAR and behind.text.casefold().split()[0] in _LED_OFF:
        return at + 1
    if not {behind.text.casefold(), behind.value} & _LED_OFF:
        return None
    for place in range(at + 2, min(end, at + 2 + _STARTS)):
        if _is_seat(tokens[place]):
            return place
        if tokens[place].kind not in _ALONG:
            return None
    return None


def _is_seat(token: Token) -> bool:
    """'shoulder', 'flange', 'collar', 'lip'."""
    return _is_end(token, _SEAT) or (token.kind == "MEASURE" and token.value in (FLANGE, _COLLAR, _LIP))


def _tell_back_focus(tokens: list[Token]) -> None:
    """'back focus from its mounting face is 48.3': led off the seat, then told how much it is."""
    for at, token in enumerate(tokens[:-2]):
        if token.value != "from" or not any(_FOCUS in one.text.casefold() for one in tokens[max(0, at - 2) : at]):
            continue
        seat = next((n for n in range(at + 1, min(len(tokens), at + 1 + _STARTS)) if _is_seat(tokens[n])), None)
        if seat is None:
            continue
        number = next((n for n in range(seat + 1, len(tokens)) if tokens[n].kind != "VERB"), None)
        if number is not None and _is_far(tokens[number]):
            tokens[number] = tokens[number].as_("KEYED", value=FLANGE, unit="mm")
            tokens[seat] = tokens[seat].as_("CUE", ids=())
            return


def _behind_which(tokens: list[Token], at: int) -> int | None:
    """'image 17.5 behind the flange': the number right behind the image that says how far behind the seat it is."""
    for place in range(at + 1, min(len(tokens) - 1, at + 1 + _REACH)):
        token, after = tokens[place], tokens[place + 1]
        if token.kind in SIZES and not token.text.isalpha():
            behind = after.kind == "MEASURE" and after.text.casefold().startswith(_BEHIND)
            far = token.unit in ("", "mm", "cm") and _FAR[0] <= token.numbers[0] <= _FAR[1]
            return place if behind and far else None
        if token.kind not in _ALONG or token.kind == "MEASURE":
            return None
    return None


def _is_end(token: Token, end: str) -> bool:
    return token.kind == "FILLER" and token.value == end


def _leads_there(token: Token) -> bool:
    """'to the image' as one phrase of the word list."""
    return token.kind == "MEASURE" and token.value == FLANGE and token.text.casefold().startswith("to ")


def _seat_before(tokens: list[Token], at: int) -> int | None:
    """Where the word for the seat stands that 'to' leads on from, to the image at `at`."""
    leads = _leads_there(tokens[at])
    for back in range(at - 1, max(-1, at - 1 - _REACH_OF_LENS), -1):
        token = tokens[back]
        leads = leads or (token.kind == "PREP" and token.value == "to")
        if _is_seat(token) and leads:
            return back
        if token.kind not in _ALONG and token.kind != "LENS" and not _is_whose(tokens, back):
            return None
    return None


def _is_whose(tokens: list[Token], at: int) -> bool:
    """'from the flange of my 50 to the sensor': which lens it is."""
    before = [one for one in tokens[max(0, at - 2) : at] if one.kind != "DET"]
    return tokens[at].kind in SIZES and bool(before) and before[-1].kind == "PREP" and before[-1].value == "of"


def _number(tokens: list[Token], start: int, end: int) -> int | None:
    """The number before the span, else the one behind it, with nothing but small words between."""
    ahead = range(start - 1, max(-1, start - 1 - _REACH), -1)
    behind = range(end + 1, min(len(tokens), end + 1 + _REACH))
    for places in (ahead, behind):
        for at in places:
            token = tokens[at]
            if token.kind in SIZES and not token.text.isalpha():
                metric = token.unit in ("", "mm", "cm") and _FAR[0] <= token.numbers[0] <= _FAR[1]
                return at if metric else None
            if token.kind not in _ALONG and not (at + 1 == start and token.kind == "MOUNT"):  # 'the M39 flange'
                break
    return None
