"""Which written numbers name a format: '16mm' in 'a 16mm projector lens', '1/2"' in '1/2" sensor'."""

from __future__ import annotations

from typing import Final

from grammar.kinds import COVERAGE
from grammar.things.casting import DRAWN
from grammar.things.film_enlarged import (
    ENDING_LENS,
    FULL_FRAME,
    is_film_enlarged,
    is_film_on,
    is_frame_beside,
    is_put_on,
    is_told_last,
    past_build,
)
from grammar.things.film_lenses import with_focal_of_film, with_zooms_of_film, without_film_head
from grammar.things.standins import STANDIN
from grammar.words.groups import CROP, FILM_LIKE, LIT, VIDEO_TUBE
from grammar.words.tokens import Token

_OF_FILM: Final = 100  # a number of three digits names a film before 'lens' too: '645 lenses'
_MEDIUM: Final = "medium-format"
_CINE: Final = "cine"
_PROJECTOR: Final = "projector"
_TOLD_LENS: Final = frozenset(["COMBO", "LENGTH", "RANGE"])  # 'an old 16 mm zoom 12-120'
_ERA: Final = "era"
_FORMAT: Final = "format"
_FRAMES: Final = frozenset(["FORMAT", "AREA", "BODY", "FRAME"])
_FRAMED: Final = _FRAMES | {"MOUNT", "LETTER"}
_INCHLIKE: Final = frozenset(["KIND", "LENS", "FRAME", "BODY"])
_CLOSING: Final = frozenset(["STOP", "JOIN", "LIMIT", "CUE"])
_OF_FRAMES: Final = frozenset(["equiv", "match", "cover", "dof"])  # what is asked of a lens on a frame
_AFTER: Final = frozenset(["after-coverage", "after-crop-equivalent"])  # a question of a lens on a frame before
_NEAR: Final = 4  # tokens
_SHOWN: Final = 35.0  # mm, the widest film that the name of a format and 'projector' go together for
_OF_LENS: Final = frozenset(["LENS", "KIND", "NUMBER", "LENGTH", "COMBO"])  # '645 80', '645 lenses'
_OPEN: Final = _CLOSING | {"PREP", "DET"}
_NUMBERS: Final = frozenset(["COMBO", "LENGTH", "NUMBER", "RANGE"])  # that may tell of a lens
_LENS_NUMBERS: Final = frozenset(["LENGTH", "COMBO", "FNUM", "NUMBER"])
_FROM: Final = "from"
_AWAY_FROM: Final = frozenset([_FROM, "behind"])  # what a sensor lies so far off, and is not so large
_FOR: Final = frozenset(["made-for", "for", "from", "on"])


def with_formats_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """Literals that are meant as the name of a format become FORMAT; those that name a mount become MOUNT."""
    out, tokens = [], with_zooms_of_film(without_film_head(tokens))
    for at, token in enumerate(tokens):
        film = is_film_on(tokens, at)
        again = bool(told & _AFTER) and token.unit == "in" and bool(token.ids) and _is_alone(tokens, at)
        if again or (token.kind == "AREA" and token.ids) or _is_told_of_chip(tokens, at) or film:
            token = token.as_("FORMAT")
        elif token.ids and token.kind in ("NUMBER", "LENGTH", "FRACTION", "RANGE") and token.implies:
            token = token.as_("FORMAT") if told & _OF_FRAMES and is_frame_beside(tokens, at) else _told(tokens, at)
        elif is_film_enlarged(tokens, at):
            token = token.as_("FORMAT", ids=(FULL_FRAME,))
        out += [token, Token("LENS", "", token.column)] if film else [token]
    for at in range(len(out) - 3, -1, -1):  # '2/3" or 1" C mount lens': of two figures the one is what the other is
        one, join, other = out[at : at + 3]
        inches = (one.kind, one.unit) == ("LENGTH", "in") and bool(one.ids)
        if inches and join.kind == "JOIN" and join.value in ("or", "vs") and other.kind == "FORMAT":
            out[at] = one.as_("FORMAT")
    said_again = (_is_of_lens_behind, _is_said_again, _is_format_of_mount)
    out = [token for at, token in enumerate(out) if not any(is_said(out, at) for is_said in said_again)]
    return with_focal_of_film(_with_coverage_of_lens(_with_made_for(out)), told)


def _with_made_for(tokens: list[Token]) -> list[Token]:
    """'a 25 mm C lens, it is a 2/3 one, corners on MFT': what one is that lights another frame it is made for."""
    for at, token in enumerate(tokens[:-1]):
        ahead = at - 1 - (at > 1 and tokens[at - 1].kind == "DET")
        put_on = tokens[at + 1].kind == "PREP" and tokens[at + 1].value == "on"
        if token.kind == "FORMAT" and put_on and ahead > 0 and tokens[ahead].value == _FROM:
            prep = tokens[ahead].as_("PREP", value="made-for")  # '80 mm from a 645 on my full frame'
            return _with_made_for([*tokens[:ahead], prep, *tokens[ahead + 1 :]])
        of_lens = any(one.kind in ENDING_LENS for one in tokens[:at])
        if token.kind != "FORMAT" or STANDIN not in tokens[at + 1].implies or not of_lens:
            continue
        if any(one.kind in _FRAMED or one.kind == "MOUNT" for one in tokens[at + 2 :]):
            lead = Token("PREP", "", token.column, "made-for")
            return [*tokens[:at], lead, token, *tokens[at + 2 :]]
    return tokens


def _with_coverage_of_lens(tokens: list[Token]) -> list[Token]:
    """'50 mm lens, 1/2 inch coverage on APS-C': before another frame it is what the lens is made for."""
    for at, token in enumerate(tokens[:-1]):
        joined = at > 0 and tokens[at - 1].kind == "JOIN"
        before = tokens[at - 1 - joined] if at > joined else None
        covers = tokens[at + 1].kind == "CUE" and tokens[at + 1].text.casefold() == COVERAGE
        era = tokens[at + 1].kind == "PREP" and tokens[at + 1].text.casefold() == _ERA  # 'a Super 16 zoom, 16 mm era'
        others = any(one.kind in _FRAMED for one in tokens[at + 2 :]) or any(_puts_on(tokens, n) for n in range(at))
        of_lens = before is not None and before.kind in ENDING_LENS
        if token.kind == "FORMAT" and of_lens and (era or (covers and others)):
            lead = Token("PREP", "", token.column, "made-for")
            return [*tokens[: at - joined], lead, token, *_with_coverage_of_lens(tokens[at + 1 :])]
    return tokens


def _puts_on(tokens: list[Token], at: int) -> bool:
    """Whether what the lens is to light stands here: a frame, or a mount behind a preposition."""
    mount = tokens[at].kind in ("MOUNT", "LETTER") and at > 0 and tokens[at - 1].kind == "PREP"
    return tokens[at].kind in _FRAMES or mount


def _is_alone(tokens: list[Token], at: int) -> bool:
    """'what about 1"' after whether a lens covers: no other number is told, and nothing that the inches are of."""
    others = (*tokens[:at], *tokens[at + 1 :])
    return not any(one.kind in (*_LENS_NUMBERS, "RANGE", "PIECE", "MEASURE", "MOUNTWORD") for one in others)


def _is_told_of_chip(tokens: list[Token], at: int) -> bool:
    """'the chip is 1/3', 'sensor: 2/3', 'sensor is the 1 inch kind', 'camera is 2/3': the figure right behind it."""
    token = tokens[at]
    inches = token.kind == "LENGTH" and token.unit == "in"
    away = at + 1 < len(tokens) and tokens[at + 1].kind == "PREP" and tokens[at + 1].value in _AWAY_FROM
    if not (token.kind == "FRACTION" or (inches and not away)) or "format" not in token.implies:
        return False
    behind = [one for one in tokens[max(0, at - 3) : at] if one.kind not in ("CUE", "DET", "VERB")]
    return bool(behind) and (behind[-1].kind == "FRAME" or (behind[-1].kind, tokens[at - 1].value) == ("BODY", "be"))


def _is_said_again(tokens: list[Token], at: int) -> bool:
    """'medium format 44x33', 'on 44x33 medium format': the size tells it; '6x6 medium format on E' is a lens."""
    if tokens[at].kind != "KIND" or tokens[at].value != _MEDIUM:
        return False
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    behind = at > 0 and tokens[at - 1].kind == "FORMAT" and not (after is not None and after.value == "on")
    return behind or (after is not None and after.kind == "FORMAT")


def _is_format_of_mount(tokens: list[Token], at: int) -> bool:
    """'a 25 mm lens for MFT format': the format of a mount is told by the mount."""
    if at < 2 or tokens[at].kind != "FRAME" or tokens[at].text.casefold() != _FORMAT:
        return False
    return tokens[at - 1].kind == "MOUNT" and tokens[at - 2].kind == "PREP" and tokens[at - 2].value in _FOR


def _is_of_lens_behind(tokens: list[Token], at: int) -> bool:
    """'a 16mm format 10mm lens': the format that a lens is made for, and no frame that it is put on."""
    if not 0 < at < len(tokens) - 1 or tokens[at].kind != "FRAME" or tokens[at - 1].kind != "FORMAT":
        return False
    rest = [one.kind for one in tokens[at + 1 : at + 4]]
    while rest and rest[0] in _LENS_NUMBERS:
        rest = rest[1:]
    return FILM_LIKE in tokens[at].groups and rest[:1] in (["LENS"], ["KIND"], ["MOUNT"])


def _told(tokens: list[Token], at: int) -> Token:
    token = tokens[at]
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    before = tokens[at - 1] if at else None
    names = token.implies[0]
    if token.kind == "NUMBER" and names == "mount":
        headed = after is not None and after.kind in ("LENS", "BODY", "KIND", "MOUNTWORD", "PIECE")
        return token.as_("MOUNT") if headed else token
    if names != "format":
        return token.as_(names.upper()) if token.kind != "LENGTH" else token
    if token.kind == "NUMBER" and token.numbers[0] < _OF_FILM:  # '67 medium format'; alone it is a number
        headed = any(one is not None and one.value == _MEDIUM for one in (before, after))
        return token.as_("FORMAT") if headed else token.as_("NUMBER", ids=())
    if token.kind == "FRACTION":
        return _by_fraction(token, before, after)
    told = before is not None and before.kind == "PREP" and before.value == "made-for"
    if token.unit == "in" and not told and _is_whole(token) and _is_for_film(tokens[at + 1 : at + 3]):
        return token  # 'a 1.5 inch 16mm lens': its focal length, and the film that it was made for
    spacer = token.unit == "mm" and after is not None and after.kind == "PIECE"  # 'an 8mm tube' is no camera tube
    shown = after is not None and after.value == _PROJECTOR and token.unit == "mm" and token.numbers[0] > _SHOWN
    spacer = spacer or shown or _is_behind_alone(tokens, at)  # 'a 65mm projector lens' has that focal length
    camera = past_build(tokens, at + 1)
    if told or (camera is not None and not spacer and (FILM_LIKE in camera.groups or camera.kind in ("BODY", "FRAME"))):
        return token.as_("FORMAT")
    if token.unit == "in" and after is not None and VIDEO_TUBE in after.groups:
        return token.as_("FORMAT") if _is_of_camera(tokens, at) else token
    if (
        token.kind == "NUMBER"
        and token.numbers[0] >= _OF_FILM
        and (
            (after is not None and after.kind in _OF_LENS)
            or is_put_on(token, before, after)
            or is_told_last(tokens, at)
        )
    ):
        return token.as_("FORMAT")
    if token.unit == "in":
        return token.as_("FORMAT") if _is_of_sensor(tokens, at) else token
    if before is not None and before.kind == "PREP" and before.value in _FOR:
        ends = after is None or after.kind in _CLOSING
        return token.as_("FORMAT") if ends and (before.value != "on" or token.kind in ("LENGTH", "FRACTION")) else token
    others = any(one.kind in _TOLD_LENS and one is not token and _is_whole(one) for one in tokens)
    if others and (token.unit == "mm" or token.numbers[0] >= _OF_FILM) and _comes_from(tokens, at):
        return token.as_("FORMAT")
    if others and after is not None and after.kind in ("KIND", "LENS") and token.unit == "mm":
        ahead = tokens[at + 1 : at + 4]
        if any(one.kind in _TOLD_LENS for one in ahead) or (before is not None and before.kind == "LENGTH"):
            return token.as_("FORMAT")
    return token if token.kind != "NUMBER" else token.as_("NUMBER", ids=())


def _is_of_sensor(tokens: list[Token], at: int) -> bool:
    """Whether a figure in inches is that of a sensor, by what stands beside it."""
    token, before = tokens[at], tokens[at - 1] if at else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    near = any(one.kind in _INCHLIKE for one in tokens[at + 1 : at + 3])
    near = near or (before is not None and LIT in before.groups)
    lens = any(one.is_mm or one.kind == "COMBO" for one in tokens[:at])
    on_mount = lens and after is not None and after.kind == "MOUNT"  # '24mm on the 1 inch CX body'
    near = near or (_placed_on(tokens, at) and (after is None or after.kind in _OPEN or on_mount))
    near = near or ("/" in token.value and after is not None and after.kind in ("LENGTH", "COMBO"))  # '2/3" 50mm c'
    near = near or ("/" in token.value and _ends_lens(before, after))  # '25 c 1.4 cctv 1/2" ...'
    beside = "/" in token.value or (before is not None and before.kind in ("LENGTH", "COMBO"))
    near = near or (beside and is_frame_beside(tokens, at))  # '13mm 1/2 inch c mount'
    placed = before is not None and before.kind == "PREP" and before.value in _FOR
    near = near or (placed and "/" in token.value and at > 1 and tokens[at - 2].kind in ENDING_LENS)
    near = near or (placed and is_frame_beside(tokens, at))  # 'an 8mm at 2.8 for 1 inch'
    near = near or ("/" in token.value and after is not None and after.kind == "MOUNT")  # '2/3" B4 zoom'
    near = near or any(one.kind == "RANGE" and one is not token for one in tokens)  # a zoom has its own lengths
    near = near or _crop_is_asked(tokens, at)  # 'the crop of 2/3 inch', 'crop factor of 1"'
    return near or (after is not None and after.text == ":")  # '1/2.3": 135 f2 equiv'


def _comes_from(tokens: list[Token], at: int) -> bool:
    """'a 50 mm lens from a 16mm machine', '... off a 16mm': the film of what a lens comes from."""
    ahead = [one for one in tokens[max(0, at - 3) : at] if one.kind not in ("DET", "CUE", "TRAIT")]
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    ends = after is None or after.kind in _CLOSING or after.kind in ("PREP", "KIND", "MOUNT")
    return bool(ahead) and ahead[-1].kind == "PREP" and ahead[-1].value == "from" and ends


def _is_behind_alone(tokens: list[Token], at: int) -> bool:
    """'a 0.5 mm spacer behind an 8mm cine lens': how far out a lens stands is asked of its focal length."""
    token, after = tokens[at], tokens[at + 1] if at + 1 < len(tokens) else None
    if after is None or after.value != _CINE or token.unit != "mm":
        return False
    behind = [n for n, one in enumerate(tokens) if n and one.kind == "PIECE" and one.value in DRAWN]
    sized = [n - 1 for n in behind if tokens[n - 1].kind in ("LENGTH", "NUMBER")]
    return bool(sized) and not any(one.kind in _NUMBERS for n, one in enumerate(tokens) if n not in (at, *sized))


def _crop_is_asked(tokens: list[Token], at: int) -> bool:
    """Whether this is what the crop, or a part of an inch, is asked 'of'."""
    if at == 0 or tokens[at - 1].value != "of":
        return False
    return "/" in tokens[at].value or any(CROP in one.groups for one in tokens[max(0, at - _NEAR) : at])


def _placed_on(tokens: list[Token], at: int) -> bool:
    """'on 1/2.3"', 'on a 1 inch': what a lens is put on."""
    ahead = [one for one in tokens[max(0, at - 2) : at] if one.kind != "DET"]
    return bool(ahead) and ahead[-1].kind == "PREP" and ahead[-1].value == "on"


def _is_of_camera(tokens: list[Token], at: int) -> bool:
    """'1/2 inch tube camera', '2/3" tube': that of a video camera; 'half inch tube on a 50' goes behind a lens."""
    headed = at + 2 < len(tokens) and tokens[at + 2].kind in ("BODY", "KIND", "FRAME")
    return headed or not any(one.kind in _NUMBERS for one in tokens if one is not tokens[at])


def _ends_lens(before: Token | None, after: Token | None) -> bool:
    """Whether a figure stands behind what only a lens is told by, and before nothing that it may be of."""
    told = before is not None and before.kind in ("KIND", "FNUM", "COMBO")
    return told and (after is None or after.kind in ("STOP", "JOIN", "CUE", "PREP"))


def _is_whole(token: Token) -> bool:
    """A length as focal lengths are told, in mm or whole inches; '1/2 inch' is a sensor's."""
    return token.unit in ("", "mm") or (token.unit == "in" and "/" not in token.value)


def _is_for_film(after: list[Token]) -> bool:
    """Whether what follows tells of a lens for film, which goes by its focal length; up to a kind of other lenses."""
    for one in after:
        if one.kind in _CLOSING or (one.kind == "KIND" and one.value != _CINE):
            return False
        if one.kind in ("FORMAT", "KIND") or (one.kind == "LENGTH" and one.ids):
            return True
    return False


def _by_fraction(token: Token, before: Token | None, after: Token | None) -> Token:
    """'1/1.7 sensor', 'on 1/2.3', 'a 2/3 C lens': an inch type without its inches; 'a 50 mm 1/1.8' tells a stop."""
    if before is not None and before.kind in ("LENGTH", "FOCAL") and "." in token.value:
        return token.as_("FNUM", numbers=(token.numbers[1],), ids=())
    shown = after is not None and (FILM_LIKE in after.groups or after.kind in _INCHLIKE | ENDING_LENS)
    shown = shown or (after is not None and STANDIN in after.implies)
    placed = before is not None and (LIT in before.groups or (before.kind == "PREP" and before.value in _FOR))
    return token.as_("FORMAT") if shown or placed or "." in token.value else token.as_("FRACTION", ids=())
