"""What shall fill the frame: a thing of known size by its name, one told with its size, a frame of film of a format."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import SCALE_LED, SPAN
from grammar.words.token_kinds import METRES
from grammar.words.tokens import Token

MOTIF: Final = "motif"  # key of the value that names a thing whose size is known, or the format of a frame of film
SIDES: Final = "sides"  # and of both sides of one that were told
FIELD: Final = "field"
_AT: Final = "at"
IMAGE_SIZE: Final = "image_size"  # of how large it is to be on the sensor
_SLIDE: Final = "slide-35mm"
_FILM: Final = "film"  # the value of the words for a frame of film
# what tells that the thing is photographed, and not lens, test or sheet
_PICTURED: Final = frozenset(
    ["frame-filling", "how-big", "macro", "how-close", "working-distance", "how-drawn", "copying", "cover", "how-far",
     "after-macro-distance", "subject-word"]
)  # fmt: skip
_TESTED: Final = frozenset(["image-lands", "infinity-at", "past-infinity"])  # what a paper is held up for
_TO_IMAGE: Final = ("MEASURE", "flange-to-image")  # 'flange to picture of the house': what is far off, by its name
_PASSED: Final = frozenset(["CUE", "DET", "VERB"])
_HEADS: Final = frozenset(["LENS", "KIND", "PIECE", "MOUNT", "FNUM", "COMBO", "FORMAT", "BODY", "FRAME"])
_OF_LENS: Final = frozenset(["LENS", "KIND", "FOCAL", "COMBO", "FNUM"])
_LONGEST_MM: Final = 3000.0  # of what fills a frame by its own size
_TALLEST_MM: Final = 30_000.0  # of what is told in metres or feet and stands before the camera
_MADE_FOR: Final = "made-for"
_REACH: Final = 4  # tokens


def with_motifs_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The size of what is photographed becomes KEYED; its name too where no size is told and its size is known."""
    out = list(tokens)
    if told & _TESTED or any((one.kind, one.value) == _TO_IMAGE for one in tokens):
        return [one.as_("CUE") if one.kind == "MOTIF" else one for one in out]
    for at, token in enumerate(out):
        if token.kind != "MOTIF":
            continue
        if _is_on_scale(out, at):
            out[at] = token.as_("MEASURE", value="mark")
            continue
        out[at] = token.as_("CUE")
        if at and (out[at - 1].kind, out[at - 1].value) == ("PREP", _MADE_FOR):
            continue  # 'is it made for slides': what the lens was built to light, and nothing to be photographed
        film = _format_before(out, at) if token.value == _FILM or token.ids else None
        size = _size_beside(out, at) if film is None else None
        seen = bool(told & _PICTURED) or (film is not None and _is_onto_frame(out, film))
        if film is not None and seen and not _is_made_for(out, film):
            out[at] = token.as_("KEYED", value=MOTIF, ids=out[film].ids[:1])
            out[film] = out[film].as_("CUE", ids=(), implies=())
        elif size is not None:
            out[size] = _as_size(out[size])
            for place in (size + 1, size - 1):
                if _is_span(out, place):
                    out[place] = out[place].as_("CUE")
        elif token.ids and (told & _PICTURED or not _is_film(token)):
            out[at] = token.as_("KEYED", value=MOTIF)
    if "frame-filling" in told:
        _take_spans(out)
    return _with_image_size(out)


def _is_on_scale(tokens: list[Token], at: int) -> bool:
    """'sharp at the 8 m engraving': what a scale bears beside its distance is a mark of it, and nothing pictured."""
    before = tokens[at - 1] if at else None
    away = before is not None and before.kind == "LENGTH" and before.unit in METRES
    return SCALE_LED in tokens[at].groups and away


def _with_image_size(tokens: list[Token]) -> list[Token]:
    """'a 20 mm coin, 15 mm on the sensor': how large the thing is to be there."""
    if not any(one.kind == "KEYED" and one.value == FIELD for one in tokens):
        return tokens
    for at in range(len(tokens) - 2):
        rest = [one for one in tokens[at + 1 : at + 4] if one.kind != "DET"]
        placed = len(rest) > 1 and rest[0].value == "on" and rest[1].kind == "FRAME"
        if placed and tokens[at].is_mm:
            tokens[at] = tokens[at].as_("KEYED", value=IMAGE_SIZE)
    return tokens


def _is_film(token: Token) -> bool:
    """'slides' are spoken of otherwise too; a sheet or a card by its size hardly is."""
    return token.ids[:1] == (_SLIDE,)


def _as_size(token: Token) -> Token:
    if token.kind == "AREA":
        return token.as_("KEYED", value=SIDES, ids=())
    return token.as_("KEYED", value=FIELD, unit=token.unit or "mm", ids=())


def _format_before(tokens: list[Token], at: int) -> int | None:
    """'6x9 negs', '645 slides', 'negative 6x6': the format right beside."""
    before = tokens[at - 1] if at else None
    if before is not None and _is_format(before):
        return at - 1
    after = tokens[at + 1] if at + 1 < len(tokens) else None  # 'a negative 6x6 on full frame'
    return at + 1 if after is not None and after.kind in ("FORMAT", "AREA") and _is_format(after) else None


def _is_format(token: Token) -> bool:
    return bool(token.ids) and (token.kind == "FORMAT" or "format" in token.implies)


def _is_onto_frame(tokens: list[Token], at: int) -> bool:
    """'645 negs to full frame': film that is told beside a frame it is put on."""
    return any(n != at and (one.kind in ("FORMAT", "FRAME") or "format" in one.implies) for n, one in enumerate(tokens))


def _is_made_for(tokens: list[Token], at: int) -> bool:
    """'made for 6x9 negatives' tells of a lens; 'and for 6x6 negatives', of none, what is to be copied."""
    led = tokens[at - 1].value if at > 0 and tokens[at - 1].kind == "PREP" else ""
    lens = any(one.kind in _OF_LENS for one in tokens[:at])
    return led == "made-for" or (led in ("for", "from") and lens)


def _size_beside(tokens: list[Token], at: int) -> int | None:
    """'a 24 mm wide stamp', 'an ant 4 mm long', 'a postcard 148x105': where the size of the thing stands."""
    back = at - 1
    while back >= 0 and (_is_span(tokens, back) or tokens[back].kind in _PASSED or tokens[back].value == "of"):
        back -= 1
    # 'at 2 m, head shot' is so far off
    away = back > 0 and tokens[back].unit in METRES and tokens[back - 1].value == _AT
    if back >= 0 and at - back < _REACH and _may_be_size(tokens[back]) and not away:
        return back
    joined = False
    for place in range(at + 1, min(at + _REACH + 1, len(tokens))):
        token = tokens[place]
        spanned = _is_span(tokens, place + 1)
        if _may_be_size(token) and (spanned or token.unit not in METRES):
            after = tokens[place + 1] if place + 1 < len(tokens) else None
            taken = after is not None and after.kind in _HEADS and not spanned
            sure = spanned or token.kind == "AREA" or (not joined and not taken and _others(tokens, place))
            return place if sure and not taken else None
        joined = joined or token.kind == "JOIN"
        be = token.kind == "PREP" and token.value == "of"
        if token.kind not in _PASSED and token.kind != "JOIN" and not be:
            return None
    return None


def _may_be_size(token: Token) -> bool:
    if token.kind == "AREA":
        return not token.ids
    if token.kind != "LENGTH" or token.text.isalpha():
        return False
    if token.unit in METRES:
        return 0 < token.numbers[0] <= _TALLEST_MM
    return token.unit in ("mm", "cm", "in", "") and 0 < token.numbers[0] <= _LONGEST_MM


def _others(tokens: list[Token], at: int) -> bool:
    """Whether another number is there that the lens may have: a lone one is rather the lens's own."""
    return any(
        place != at and one.kind in ("LENGTH", "FOCAL", "COMBO", "NUMBER", "RATIO", "TIMES")
        for place, one in enumerate(tokens)
    )


def _is_span(tokens: list[Token], at: int) -> bool:
    return 0 <= at < len(tokens) and SPAN in tokens[at].groups


def _take_spans(tokens: list[Token]) -> None:
    """'one 4 mm long to fill the width': a length with such a word is that of what fills the frame, not of a piece."""
    framed = any(one.kind in ("FORMAT", "FRAME", "BODY", "MOUNT") for one in tokens)
    for at, token in enumerate(tokens):
        if token.kind == "AREA" and framed and _may_be_size(token):
            tokens[at] = _as_size(token)  # 'a matchbox 50x35 to fill aps-c'
            continue
        if token.kind != "LENGTH" or not _is_span(tokens, at + 1) or not _may_be_size(token):
            continue
        if any(one.kind in ("PIECE", "MOUNTWORD") for one in tokens[max(0, at - _REACH) : at + 3]):
            continue
        tokens[at] = _as_size(token)
        tokens[at + 1] = tokens[at + 1].as_("CUE")
