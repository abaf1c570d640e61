"""Sensors or films of which the size is asked: 'how much bigger is APS-C than MFT', 'how wide is a 1 inch'."""

from __future__ import annotations

from typing import Final

from grammar.things.film_enlarged import with_film_likened
from grammar.words.groups import FRAME_NAMED
from grammar.words.token_kinds import SIZES
from grammar.words.tokens import Token

_AGAINST: Final = "size-against"  # the cue of the words that set sizes against each other
_HOW_LARGE: Final = "frame-size"  # and that of those that ask how large one is
_CROP: Final = "crop"  # the cue of a part cut out, and how its words begin
_OF_THREAD: Final = "pitch"  # which is asked in mm too, and no frame has one
_FRAMES: Final = frozenset(["FORMAT", "AREA", "MOUNT"])
_NUMBERS: Final = frozenset(["LENGTH", "FRACTION", "NUMBER", "RANGE"])  # that may be the name of a format
_BETWEEN: Final = frozenset(["CUE", "JOIN", "DET", "FILLER", "MARK", "STOP", "VERB", "FRAME", "BODY", "SHARE", "PREP"])
_ON: Final = frozenset(["on", "with"])  # what is put on a frame is a lens, and no other frame
_LONGER: Final = "longer"
_ON_FRAME: Final = 3  # tokens: a length, 'on', a frame
_SHORTEST: Final = 6.0  # mm, of a lens
_PAIR: Final = 2
_FOUR_THIRDS: Final = "four-thirds"  # the frame of the mounts of which all bodies have one


def with_frames_apart(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """Each as a frame of its own, where nothing else is named; as they are where anything is."""
    tokens = _with_lenses_by_frames(_with_frames_named(with_film_likened(tokens, told)))
    tokens = _with_crops_apart(tokens) if _CROP in told else tokens
    places = [at for at, token in enumerate(tokens) if _may_be(token)]
    others = [token for at, token in enumerate(tokens) if at not in places]
    asked = (_AGAINST in told and len(places) >= _PAIR) or (_HOW_LARGE in told and len(places) == 1)
    if not asked or _OF_THREAD in told or any(_is_another(token) for token in others):
        return tokens
    out: list[Token] = []
    for at, token in enumerate(tokens):
        if at in places:
            out += _apart(token, first=at == places[0])
        elif token.kind in ("STOP", "MARK"):
            out.append(token)
        elif token.kind not in ("JOIN", "FRAME", "BODY", "DET", "PREP", "MEASURE"):
            out.append(token.as_("CUE", ids=()))
    return out


def _with_crops_apart(tokens: list[Token]) -> list[Token]:
    """'full frame S35 crop' names two frames, and 'cropped to 1 inch' another."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        led = at > 1 and tokens[at - 1].value == "to" and tokens[at - 2].text.casefold().startswith(_CROP)
        if led and token.kind in _NUMBERS and "format" in token.implies and token.ids:
            token = token.as_("FORMAT")
        cut = at + 1 < len(tokens) and tokens[at + 1].text.casefold().startswith(_CROP)
        if cut and out and token.kind == out[-1].kind == "FORMAT":
            out.append(Token("JOIN", ",", token.column, ","))
        out.append(token)
    return out


def _with_frames_named(tokens: list[Token]) -> list[Token]:
    """'sensor is 4/3', 'chip: four thirds': what a frame is told to be is no mount of a lens."""
    for at in range(len(tokens) - 1):
        rest = [n for n in range(at + 1, min(len(tokens), at + 4)) if tokens[n].kind not in ("CUE", "DET", "VERB")]
        named = rest and tokens[rest[0]].kind in ("MOUNT", "FRACTION") and FRAME_NAMED in tokens[rest[0]].groups
        frame = tokens[at].kind == "FRAME" and not (at and tokens[at - 1].kind in ("MOUNT", "FORMAT", "AREA"))
        ends = not rest or rest[0] + 1 >= len(tokens) or tokens[rest[0] + 1].kind not in ("LENS", "MOUNTWORD", "PIECE")
        if frame and named and ends:
            name = tokens[rest[0]].as_("FORMAT", ids=(_FOUR_THIRDS,))
            return [*tokens[:at], *tokens[at + 1 : rest[0]], name, *_with_frames_named(tokens[rest[0] + 1 :])]
    return tokens


def _with_lenses_by_frames(tokens: list[Token]) -> list[Token]:
    """'is my 50 on aps-c a 50 or a 75', 'is 50 mm on S16 longer than 85 mm on S35': each is a lens."""
    views = [at for at in range(len(tokens)) if _is_on_frame(tokens, at)]
    apart = views if len(views) >= _PAIR else []
    out: list[Token] = []
    for at, token in enumerate(tokens):
        if at in apart:
            token = token.as_("FOCAL", unit="mm")
        elif apart and token.kind == "MEASURE" and token.text.casefold() == _LONGER:
            token = token.as_("CUE", value="")
        out.append(token)
        row, ends = tokens[at + 1 : at + 3], tokens[at + 3 : at + 4]
        put_on = at > 0 and tokens[at - 1].value in _ON and (token.kind == "FORMAT" or FRAME_NAMED in token.groups)
        lens = len(row) > 1 and _is_article(row[0]) and row[1].kind in SIZES
        if put_on and lens and (not ends or ends[0].kind in ("JOIN", "STOP")):
            out.append(Token("JOIN", ",", token.column, ","))
    return out


def _is_on_frame(tokens: list[Token], at: int) -> bool:
    """Whether a whole length stands right before 'on' and a frame: '85mm on full frame', '50 on an mft body'."""
    row = [tokens[at], *(one for one in tokens[at + 1 : at + 4] if one.kind != "DET")]
    if len(row) < _ON_FRAME or row[0].kind not in SIZES or row[0].unit not in ("", "mm"):
        return False
    size = row[0].numbers[0]
    framed = row[2].kind == "FORMAT" or FRAME_NAMED in row[2].groups or (row[2].kind == "AREA" and bool(row[2].ids))
    whole = size == int(size) or row[0].is_mm
    return row[1].value in _ON and framed and whole and size >= _SHORTEST


def _is_article(token: Token) -> bool:
    return token.text.casefold() in ("a", "an")


def _may_be(token: Token) -> bool:
    if token.kind == "AREA" and not token.ids:
        return False  # sides that are those of no format
    return token.kind in _FRAMES or (token.kind in _NUMBERS and bool(token.ids) and "format" in token.implies)


def _is_another(token: Token) -> bool:
    measure = token.kind == "MEASURE" and token.value == "diagonal"
    return not (measure or token.kind in _BETWEEN or (token.kind, token.value) == ("KIND", "wide")) or (
        token.kind == "PREP" and token.value in _ON
    )


def _apart(token: Token, first: bool) -> list[Token]:
    """The frame, with what parts it from the one before; a mount is that of a sensor."""
    join = [] if first else [Token("JOIN", "", token.column, "vs")]
    if token.kind == "MOUNT":
        return [*join, token, Token("FRAME", "sensor", token.column)]
    return [*join, token.as_("FORMAT")]
