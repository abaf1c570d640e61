"""A length from where a lens seats to where its image lies: '88 from its shoulder to a sharp far image'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_SEAT: Final = "seat"  # values of the words for the two ends
_IMAGE: Final = "image"
FLANGE: Final = "flange-to-image"
_FAR: Final = (5.0, 300.0)  # mm, from flange to image
_LENGTHS: Final = frozenset(["NUMBER", "LENGTH", "FOCAL"])
_ALONG: Final = frozenset(
    ["FILLER", "DET", "LETTER", "CUE", "MARK", "PREP", "VERB", "UNKNOWN", "TARGET", "MEASURE", "LIGHT"]
)
_BEHIND: Final = "behind"
_REACH: Final = 5  # tokens from the one end to the other, and from either to the number


def with_flange_spans_told(tokens: list[Token]) -> list[Token]:
    """The bare number beside such a span becomes KEYED; other numbers stay as they are."""
    out = list(tokens)
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


def _behind_which(tokens: list[Token], at: int) -> int | None:
    """'image 17.5 behind the flange': the number right behind the image that says how far behind the seat it is."""
    for place in range(at + 1, min(len(tokens) - 1, at + 1 + _REACH)):
        token, after = tokens[place], tokens[place + 1]
        if token.kind in _LENGTHS and not token.text.isalpha():
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
    for back in range(at - 1, max(-1, at - 1 - _REACH), -1):
        token = tokens[back]
        leads = leads or (token.kind == "PREP" and token.value == "to")
        seat = _is_end(token, _SEAT) or (token.kind == "MEASURE" and token.value == FLANGE)
        if seat and leads:
            return back
        if token.kind not in _ALONG:
            return None
    return None


def _number(tokens: list[Token], start: int, end: int) -> int | None:
    """The number before the span, else the one behind it, with nothing but small words between."""
    ahead = range(start - 1, max(-1, start - 1 - _REACH), -1)
    behind = range(end + 1, min(len(tokens), end + 1 + _REACH))
    for places in (ahead, behind):
        for at in places:
            token = tokens[at]
            if token.kind in _LENGTHS and not token.text.isalpha():
                metric = token.unit in ("", "mm", "cm") and _FAR[0] <= token.numbers[0] <= _FAR[1]
                return at if metric else None
            if token.kind not in _ALONG:
                break
    return None
