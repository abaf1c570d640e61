"""What a number without a unit stands for: a focal length, a count, a factor, a crop, a thickness."""

from __future__ import annotations

from typing import Final

from engine.base.units import FAR_UNITS
from grammar.numbers.bare_number import DISTANT, is_stop_of_lens, read_bare
from grammar.numbers.counting import is_so_many
from grammar.numbers.crop_numbers import is_crop, is_of_crop
from grammar.numbers.extenders_joined import with_extenders_joined, with_glass_before_lens, with_reducers_told
from grammar.numbers.focal_numbers import may_be_focal
from grammar.numbers.lens_stops import CLOSE_UP, is_behind_lens
from grammar.numbers.light_numbers import with_light_told
from grammar.numbers.number_rows import all_lengths, is_number, is_of_scale, row_behind, set_behind
from grammar.numbers.optics_numbers import (
    LEAST_REDUCING,
    OPTICS,
    as_extender,
    with_factors_left,
    with_glass_behind,
    with_zooms_set,
)
from grammar.numbers.picture_numbers import names_size
from grammar.things.casting import MAY_REDUCE
from grammar.words.groups import DRAWS, MAGNIFIES, REACHES
from grammar.words.tokens import Token, in_words, is_plural

_STRONGEST: Final = 20.0  # dioptres
_BESIDE: Final = 2  # characters at most between a focal length and the stop engraved beside it
_CLOSE_KINDS: Final = frozenset(["enlarger", "macro", "process", "copy"])  # of lenses that are taken for close up
_REVERSED: Final = "reversed"
# cues of a question whose answer goes by focal length; and what may tell one
_OF_FOCAL: Final = DISTANT | {"macro", "dof", "hyperfocal", "zone-wanted", "which-stop", "frame-filling", "remark"}
_OF_MARKS: Final = frozenset(["shim", "past-infinity", "infinity-at", "take-off", "cant-focus"])  # and by a distance
_OF_VIEW: Final = frozenset(["how-wide", "looks-like", "becomes", "crop"])  # cues of what a lens sees on a frame
_OF_SIZE: Final = frozenset(["how-big", "effective-f", "dof", "working-distance"])
_DRAWN_OUT: Final = frozenset(["how-drawn", "extension-asked", "quantity:extension_mm"])
_UNMEASURED: Final = OPTICS | {"filter"}  # pieces of which a number behind them is no length
_DRAWN_FOR: Final = frozenset(["extension", "extension-tube", "bellows", "helicoid"])  # what a size is reached by
_DRAWING: Final = frozenset(["CUE", "MEASURE", "LIMIT"])  # words for how large a lens draws
_REACHED_BY: Final = frozenset(["to", "for", "does", "wanted"])  # before a size that a tube is for
_AS_FAR: Final = frozenset(["to", "at"])
_FOCALS: Final = frozenset(["FOCAL", "COMBO", "LENGTH", "RANGE", "NAMED"])


def with_numbers_told(
    tokens: list[Token], told: frozenset[str], never_full: frozenset[str] = frozenset()
) -> list[Token]:
    """Bare numbers in their part: FOCAL (mm), COUNT, TIMES, CROP, LENGTH (mm) or FNUM; else they stay NUMBER."""
    joined = _listed(with_reducers_told(with_extenders_joined(with_zooms_set(tokens))))
    out = with_glass_behind(with_light_told(joined, told, never_full), told)
    for at, token in enumerate(out):
        if token.kind == "NUMBER":
            out[at] = read_bare(out, at, told)
        elif token.kind == "SHUTTER" and _are_lenses(out, at, told):
            out[at] = token.as_("FOCAL", unit="mm")
        elif token.kind == "TIMES" and _is_magnification(out, at, told):
            out[at] = token.as_("RATIO")
        elif token.kind == "TIMES":
            if is_so_many(out, at):
                out[at] = token.as_("COUNT")
                continue
            if is_crop(out, at):
                out[at] = token.as_("CROP")
                continue
            out[at] = as_extender(out, at, told)
        elif token.kind == "FNUM" and ":" in token.text and names_size(out, at + 1):
            out[at] = token.as_("RATIO", numbers=(1 / token.numbers[0],))  # '1:1.4 mag'
        elif token.kind == "RATIO" and _is_engraved_stop(out, at, told):
            out[at] = token.as_("FNUM", numbers=(round(1 / token.numbers[0], 4),))
    return _with_focal_left(with_glass_before_lens(with_factors_left(out, told)), told)


def _is_engraved_stop(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    """'50 mm 1:2': how far a lens opens, as it is engraved; where close-ups are spoken of it is how big they get."""
    before, token = tokens[at - 1] if at else None, tokens[at]
    beside = before is not None and (before.kind in ("LENGTH", "FOCAL") or is_behind_lens(tokens, at))
    if before is None or not beside or token.numbers[0] >= 1:
        return False
    parted = token.column - (before.column + len(before.text)) > _BESIDE  # '75 mm want 1:2': a word lies between
    return not parted and not told & CLOSE_UP


_MOST_CONVERTING: Final = 3.0  # times, of a teleconverter


def _is_magnification(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    """'0.5x on full frame, how wide is what i see': no reducer where nothing but a size is spoken of."""
    if _is_of_close_lens(tokens, at) or _is_drawn_by_itself(tokens, at) or _is_under_glass(tokens, at):
        return True
    things = any(one.kind in ("PIECE", "LENS", "KIND") for one in tokens)
    before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
    placed = before is not None and before.kind in ("PREP", "DET")
    if before is not None and before.value == "for" and at > 1 and tokens[at - 2].value in _DRAWN_FOR:
        return True  # 'extension for 0.5x', 'how much tube for 0.5x'
    if before is not None and before.value in _REACHED_BY and _is_drawn_out(tokens):
        return True  # 'what tube gets my 50 to 0.5x', '50 plus 20 mm tube to get 0.5x'
    if before is not None and REACHES in before.groups and _is_drawn_out(tokens):
        return True  # 'tubes make 0.5x'
    if after is not None and MAGNIFIES in after.groups:
        return True  # '4x finite objective'
    if _is_on_draw(tokens, at) or (_is_drawn_out(tokens) and _is_from_to(tokens, at)):
        return True
    glass = any(one.kind == "PIECE" and one.value in OPTICS for one in tokens)
    headed = after is not None and after.kind in ("PIECE", "BODY", "FRAME")
    with_article = before is not None and before.kind == "DET"
    if tokens[at].numbers[0] > _MOST_CONVERTING and _is_drawn_out(tokens) and not (headed or with_article):
        return True  # 'does a bellows w/ 55mm turned round give me 5x': no converter goes so far
    if not (glass or headed or with_article) and _asks_extension(tokens, told):
        return True  # 'at 1.5x with 60mm, how much extension'
    return bool(told & _OF_SIZE) and not things and not placed


def _is_drawn_by_itself(tokens: list[Token], at: int) -> bool:
    """'105 mm does 0.5x by itself', 'goes to 0.5x', 'tops out at 0.5x': what a lens draws, and no glass."""
    places = tokens[max(0, at - 2) : at]
    before = places[:-1] if places and places[-1].value in _AS_FAR else places[-1:]
    behind = tokens[at + 1 : at + 2]
    drawn = any(one.kind in _DRAWING and DRAWS in one.groups for one in before)
    at_most = any(one.kind == "LIMIT" and DRAWS in one.groups for one in behind)
    alone = any((one.kind, one.value) == ("MEASURE", "close-focus") for one in behind)
    return drawn or at_most or alone


def _is_on_draw(tokens: list[Token], at: int) -> bool:
    """'1.5x on tubes', '2x on the bellows': what is drawn out by them."""
    if [one.text.casefold() for one in tokens[max(0, at - 2) : at]] == ["out", "to"]:
        return True  # 'i rack out to 1.2x'
    led = [one for one in tokens[max(0, at - 2) : at] if one.text != ","]
    behind = [one for one in tokens[at + 1 : at + 4] if one.kind != "DET"]
    if led and (led[-1].kind, led[-1].value) == ("PIECE", "bellows") and (not behind or behind[0].kind != "PIECE"):
        return True  # 'on bellows, 2x'
    if len(behind) > 1 and behind[0].kind == "PREP" and behind[1].kind == "MOTIF":
        return True  # '2x of stamps'
    return len(behind) > 1 and behind[0].value == "on" and behind[1].kind == "PIECE" and behind[1].value in _DRAWN_FOR


def _is_from_to(tokens: list[Token], at: int) -> bool:
    """'from 0.5x to 2x': both are sizes."""
    row = [one.value if one.kind == "PREP" else one.kind for one in tokens[max(0, at - 3) : at + 4]]
    own = min(at, 3)
    return row[own - 1 : own + 3] == ["from", "TIMES", "to", "TIMES"] or row[own - 3 : own + 1] == [
        "from", "TIMES", "to", "TIMES",
    ]  # fmt: skip


def _is_drawn_out(tokens: list[Token]) -> bool:
    """Whether tubes are told of, and no glass that multiplies."""
    drawn = any(one.value in _DRAWN_FOR for one in tokens)
    return drawn and not any(one.kind == "PIECE" and one.value in OPTICS for one in tokens)


def _is_under_glass(tokens: list[Token], at: int) -> bool:
    """'a 40mm w/ 0.18x and 12 mm of tube': less than any glass multiplies by, where none is named beside it."""
    beside = [*tokens[max(0, at - 2) : at], *tokens[at + 1 : at + 2]]
    glass = any(one.kind == "PIECE" and (one.value in OPTICS or one.value in MAY_REDUCE) for one in beside)
    return 0 < tokens[at].numbers[0] < LEAST_REDUCING and not glass


def _is_of_close_lens(tokens: list[Token], at: int) -> bool:
    """'2x with a 50mm enlarger lens': what such a lens is to draw, where nothing tells of a converter."""
    behind = tokens[at + 1 : at + 5]
    close = any(one.kind == "KIND" and one.value in _CLOSE_KINDS for one in behind)
    return close and behind[0].kind == "PREP" and not any(one.value in OPTICS for one in tokens)


def _asks_extension(tokens: list[Token], told: frozenset[str]) -> bool:
    piece = any(one.kind == "PIECE" and one.value in _DRAWN_FOR for one in tokens)
    if "how-much" in told and piece and not any(one.value in OPTICS for one in tokens):
        return True  # '0.7x with a 90: how much tube'
    measured = any((one.kind, one.value) == ("MEASURE", "extension") for one in tokens)
    return bool(told & _DRAWN_OUT) or ("dimensions" in told and piece) or measured


def _with_focal_left(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'group 3m to 5m, 50 on ff': where distances or depth are asked for, the one number left is the focal length."""
    zone = any(one.kind == "KEYED" and one.value == "zone" for one in tokens)
    away = any(one.kind in ("LENGTH", "KEYED") and one.unit in ("m", "ft") for one in tokens)
    viewed = told & _OF_VIEW and any(_is_lit(tokens, at) for at in range(len(tokens)))
    if not (zone or viewed or told & _OF_FOCAL or (away and told & _OF_MARKS)) or any(
        one.startswith("after-") and one != "after-" for one in told
    ):
        return tokens
    if any(one.kind in _FOCALS and (one.kind != "LENGTH" or one.unit == "mm") for one in tokens):
        return tokens
    left = [at for at, one in enumerate(tokens) if one.kind == "NUMBER"]
    if len(left) != 1 or tokens[left[0]].text.isalpha() or not 8 <= tokens[left[0]].numbers[0] <= 800:
        return tokens
    if not may_be_focal(tokens[left[0]].numbers[0]):
        return tokens
    tokens[left[0]] = tokens[left[0]].as_("FOCAL")
    return tokens


def _is_lit(tokens: list[Token], at: int) -> bool:
    """Whether what a lens is put on stands here: a frame, a body, or the mount of one behind its preposition."""
    placed = tokens[at].kind == "MOUNT" and at > 0 and tokens[at - 1].value in ("on", "of")
    return placed or tokens[at].kind in ("FORMAT", "FRAME", "BODY")


def _are_lenses(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    """'LTM 35s', 'both my 50s': lenses of that focal length, not seconds; 'the 70s' are years."""
    token = tokens[at]
    before = tokens[at - 1] if at else None
    counted = before is not None and (before.value == _REVERSED or before.kind == "COUNT" or in_words(before))
    exposed = bool(told & {"exposure", "nd", "shutter-speed"}) and not counted
    if not token.text[:-1].isdigit() or not 12 <= token.numbers[0] <= 600 or exposed:
        return False
    if before is not None and before.kind == "PREP" and before.value in ("from", "of", "in"):
        return False
    the = before is not None and before.kind == "DET" and before.text.casefold() == "the"
    return before is not None and before.kind in ("MOUNT", "KIND", "DET", "NUMBER", "COUNT", "TRAIT") and not the


def _is_lens_at(tokens: list[Token], at: int) -> bool:
    """'with the 45, 1.5 m': the lens that is spoken of, and how far away."""
    if at < 3 or tokens[at - 2].kind != "NUMBER" or tokens[at].unit not in FAR_UNITS:
        return False
    led = tokens[at - 3].kind == "DET" and tokens[at - 3].value == "the"
    return led and tokens[at - 2].numbers[0] * FAR_UNITS[tokens[at].unit] > tokens[at].numbers[0]


def _listed(tokens: list[Token]) -> list[Token]:
    """'10, 16, 26mm': the unit at the end of a list is that of all its numbers."""
    for at in range(len(tokens) - 1, 1, -1):
        strong = is_number(tokens[at - 2]) and tokens[at - 2].numbers[0] > _STRONGEST  # 'my 35 plus +4'
        if tokens[at].kind == "DIOPTRE" and tokens[at - 1].kind == "JOIN" and is_number(tokens[at - 2]) and not strong:
            tokens[at - 2] = tokens[at - 2].as_("DIOPTRE")  # '2 and 3 dioptres'
        ended = tokens[at].kind == "LENGTH" and tokens[at - 1].kind == "JOIN" and tokens[at - 2].kind == "NUMBER"
        # 'crop 2.7, 25 mm', 'reducer 0.71 and 50 mm'
        cropped = at > 2 and (is_of_crop(tokens[at - 3]) or tokens[at - 3].value in OPTICS)
        cropped = cropped or is_of_scale(tokens, at - 2) or _is_lens_at(tokens, at)
        if ended and not cropped and not is_stop_of_lens(tokens, at - 2) and not _is_lens_beside(tokens, at):
            factor = FAR_UNITS.get(tokens[at].unit, 1.0)
            number = tokens[at - 2].numbers[0] * factor
            tokens[at - 2] = tokens[at - 2].as_("LENGTH", numbers=(number,), unit=tokens[at].unit)
    for at in range(len(tokens) - 1):
        if tokens[at].kind == "PIECE" and tokens[at].value not in _UNMEASURED and is_number(tokens[at + 1]):
            row_behind(tokens, at + 1)
            set_behind(tokens, at)
    for at in range(2, len(tokens) - 1):
        if is_number(tokens[at]) and tokens[at + 1].kind == "PIECE" and tokens[at + 1].value not in OPTICS:
            all_lengths(tokens, at)
    return tokens


def _is_lens_beside(tokens: list[Token], at: int) -> bool:
    """'50 and 20mm tube': one tube is told, so that the other number is the lens, where nothing else can be it."""
    piece = tokens[at + 1] if at + 1 < len(tokens) and tokens[at + 1].kind == "PIECE" else None
    if piece is None or is_plural(piece) or tokens[at - 1].value != "and":
        return False
    return sum(one.kind in ("NUMBER", "LENGTH", "COMBO") for one in tokens) == 2
