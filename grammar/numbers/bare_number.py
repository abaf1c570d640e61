"""Of what one number without a unit is, by what stands around it: the first of some steps that tells decides."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from engine.base.units import FAR_UNITS
from grammar.numbers.counting import MOST_THINGS, counts, is_several
from grammar.numbers.crop_numbers import is_crop
from grammar.numbers.drawn_numbers import is_added_travel, is_drawn_so_far, is_length_of_tube
from grammar.numbers.focal_numbers import ENDS, is_focal, is_lens_against, is_what_it_becomes
from grammar.numbers.light_numbers import is_further_stop
from grammar.numbers.optics_numbers import (
    OPTICS,
    are_set_against,
    is_extender_named,
    is_named_reducer,
    is_put_on_lens,
    is_reducing,
    lists_factors,
    of_optics,
)
from grammar.numbers.picture_numbers import is_shape, is_size, is_size_named
from grammar.numbers.rings_by_build import is_of_mounted_ring
from grammar.words.groups import FRAME_NAMED, OPENED
from grammar.words.tokens import Token, is_plural
from grammar.words.written import STOPS, TELECONVERTER

# cues of a question in which a bare number is most likely a focal length, and one after 'from' a distance in metres
DISTANT: Final = frozenset(["how-close", "infinity", "working-distance", "how-big", "equiv", "match", "stabilisation"])
_OF_VIEW: Final = frozenset(["equiv", "match"])
_WORDS_BETWEEN: Final = 5  # tokens at most from a piece to its length: 'the ring I got is 25.3'
_MOST_POINTED: Final = 8  # from here up 'lens 8' points at none of a list
_STRONGEST: Final = 10.0  # dioptres
_EXTENDING: Final = (1.2, 3.0)  # what a converter multiplies by
_FACTORS: Final = (0.4, 5.0)  # what reducers and converters multiply by
_REDUCING: Final = (0.4, 0.95)
_OF_GLASS: Final = ("without-glass", "with-glass")
_THICK: Final = (0.05, 300.0)  # mm, of a ring
_FOCALS: Final = (8, 1000)  # mm
_SMALLEST_STOP: Final = 22.0
_OF_MARKS: Final = frozenset(["shim", "past-infinity", "take-off", "error-asked"])  # 'hills sharp at 8, what shim'
_MARKS: Final = frozenset([1.5, 2.5])
_SLOWEST: Final = 6.3  # what lenses open to


class Bare:
    """A bare number in its line. `told`: what the cues of the line tell."""

    def __init__(self, tokens: list[Token], at: int, told: frozenset[str]) -> None:
        self.tokens, self.at, self.told = tokens, at, told
        self.token, self.number = tokens[at], tokens[at].numbers[0]
        self.before = tokens[at - 1] if at else None
        self.after = tokens[at + 1] if at + 1 < len(tokens) else None

    def follows(self, kind: str, *values: str) -> bool:
        """Whether a token of the kind stands before it, with one of the values where any are told."""
        before = self.before
        return before is not None and before.kind == kind and (not values or before.value in values)

    @property
    def is_whole(self) -> bool:
        return self.number == int(self.number)

    @property
    def is_decimal(self) -> bool:
        return "." in self.token.text


def read_bare(tokens: list[Token], at: int, told: frozenset[str]) -> Token:
    """The number in its part, or as it was where nothing tells of what it is."""
    bare = Bare(tokens, at, told)
    return next((read for step in _STEPS if (read := step(bare)) is not None), bare.token)


def is_stop_of_lens(tokens: list[Token], at: int) -> bool:
    """'25mm C 1.4': behind a lens told by its focal length and mount the number is its stop."""
    behind = [token.kind for token in tokens[max(0, at - 2) : at]]
    if at and tokens[at - 1].value == "at" and "." in tokens[at].text and tokens[at].numbers[0] in STOPS:
        return True  # '135 at 2.8, 5 m'
    return behind in (["LENGTH", "MOUNT"], ["FOCAL", "MOUNT"]) and tokens[at].numbers[0] in STOPS


def _pointing(bare: Bare) -> Token | None:
    """'lens 2' points at the second; 'lens 1: 35 mm' only tells them apart."""
    if bare.follows("LIMIT") and not (bare.follows("LIMIT", *_OF_GLASS) and bare.is_decimal):
        return bare.token  # 'glassless 1.2 ring' is how thick the ring is, and limits nothing
    if not (bare.follows("LENS") and bare.is_whole and bare.number < _MOST_POINTED and bare.token.text.isdecimal()):
        return None
    return bare.token.as_("ORDINAL") if bare.after is None or bare.after.kind == "STOP" else bare.token.as_("CUE")


def _named(bare: Bare) -> Token | None:
    """The stop of a lens, a magnification, the shape of a frame."""
    if is_stop_of_lens(bare.tokens, bare.at) and bare.is_decimal:
        return bare.token.as_("FNUM")
    spelled = bare.token.text.isalpha() and not bare.follows("PREP")  # 'mag both ways'
    if is_size_named(bare.tokens, bare.at) and not spelled:
        return bare.token.as_("RATIO")
    return bare.token.as_("ASPECT", value=f"{bare.number:g}:1") if is_shape(bare.tokens, bare.at) else None


def _counting(bare: Bare) -> Token | None:
    token, after = bare.token, bare.after
    if counts(bare.tokens, bare.at):
        return token.as_("COUNT")
    if after is not None and after.kind == "PIECE":
        return token.as_("COUNT") if token.text[:1].isalpha() else _of_piece(token, after)
    if is_of_mounted_ring(bare.tokens, bare.at):
        return token.as_("LENGTH", unit="mm")
    several = after is not None and after.kind in ("LENS", "BODY") and is_several(after)
    return token.as_("COUNT") if several and bare.number <= MOST_THINGS and bare.is_whole else None  # not '1.4 lens'


def _of_piece(token: Token, piece: Token) -> Token:
    number = token.numbers[0]
    converts = piece.text.casefold().startswith("convert") and _EXTENDING[0] <= number <= _EXTENDING[1]
    if (piece.value in OPTICS and number < _FACTORS[1]) or converts or is_named_reducer(piece, number):
        return token.as_("TIMES")
    if number == int(number) and number <= MOST_THINGS and is_plural(piece):
        return token.as_("COUNT")
    return token.as_("LENGTH", unit="mm")


def _cropping(bare: Bare) -> Token | None:
    cropped = is_crop(bare.tokens, bare.at) and not bare.token.text.isalpha()  # 'both old slrs'
    return bare.token.as_("CROP") if cropped else None


def _stopping(bare: Bare) -> Token | None:
    token, after = bare.token, bare.after
    if bare.follows("PREP", "at") and bare.number in STOPS and not _is_mark(bare):
        # 'at 25 f/1.4' is a lens
        return token.as_("FOCAL") if after is not None and after.kind == "FNUM" else token.as_("FNUM")
    opened = bare.before is not None and OPENED in bare.before.groups and bare.number in STOPS
    opened = opened or _is_opening(bare) or _is_stop_behind_glass(bare)
    if opened or is_further_stop(bare.tokens, bare.at) or _is_stop_of_frame(bare):
        return token.as_("FNUM")
    if (bare.follows("LENGTH") or bare.follows("FOCAL")) and bare.number in STOPS and bare.number < 10:
        return token.as_("FNUM") if bare.follows("FOCAL") or bare.is_decimal else token
    return None


def _is_stop_behind_glass(bare: Bare) -> bool:
    """'with a 2x converter my 2.8 is': one's own decimal beside glass that slows or quickens a lens."""
    if not (bare.follows("DET") and bare.is_decimal and bare.number in STOPS):
        return False
    times = any(one.kind == "TIMES" for one in bare.tokens)  # '2x converter'
    glass = any(one.kind == "PIECE" and (one.value in OPTICS or times) for one in bare.tokens)
    ends = bare.after is None or bare.after.kind in ("STOP", "JOIN", "CUE", "PREP")
    told = any(one.kind in ("FNUM", "COMBO") for one in bare.tokens)
    return glass and ends and not told


def _is_stop_of_frame(bare: Bare) -> bool:
    """'mft f2.8 = ff 5.6', 'does aps-c 1.8 act like ff 2.8': behind a frame, where another has its stop too."""
    if bare.number not in STOPS or bare.number > _SMALLEST_STOP:
        return False
    if _precedes_frame(bare.tokens, bare.at):  # 'is 11 on full frame the same as 5.6 on mft'
        rest = [n for n, one in enumerate(bare.tokens) if n != bare.at and _precedes_frame(bare.tokens, n)]
        numbers = [bare.tokens[n] for n in rest if bare.tokens[n].kind in ("NUMBER", "FNUM")]
        return any(one.numbers[0] in STOPS and (bare.is_decimal or "." in one.text) for one in numbers)
    if not _follows_frame(bare.tokens, bare.at):
        return False
    if bare.after is not None and bare.after.kind in ("LENGTH", "NUMBER", "TIMES"):
        return False
    frames = sum(one.kind == "FORMAT" or FRAME_NAMED in one.groups for one in bare.tokens)
    others = [n for n, _ in enumerate(bare.tokens) if n != bare.at and _may_be_stop(bare.tokens, n, bare.is_decimal)]
    return frames > 1 and bool(others)


def _may_be_stop(tokens: list[Token], at: int, whole: bool) -> bool:
    """Whether it is a stop, or a number behind a frame that may be one; `whole`: also a whole number."""
    token = tokens[at]
    number = token.kind == "NUMBER" and token.numbers[0] in STOPS and (whole or "." in token.text)
    return token.kind == "FNUM" or (number and _follows_frame(tokens, at))


def _precedes_frame(tokens: list[Token], at: int) -> bool:
    on = [one for one in tokens[at + 1 : at + 4] if one.kind != "DET"]
    framed = len(on) > 1 and (on[1].kind == "FORMAT" or FRAME_NAMED in on[1].groups)
    return framed and on[0].kind == "PREP" and on[0].value == "on"


def _follows_frame(tokens: list[Token], at: int) -> bool:
    before = tokens[at - 1] if at else None
    return before is not None and (before.kind == "FORMAT" or FRAME_NAMED in before.groups)


def _is_mark(bare: Bare) -> bool:
    """'far hills sharp at 8, what shim': a mark in metres, but for those that only aperture rings have."""
    return bool(bare.told & _OF_MARKS) and (bare.is_whole or bare.number in _MARKS)


def _is_opening(bare: Bare) -> bool:
    """'a 1.1 lens': no lens is so short."""
    fast = bare.is_decimal and bare.number in STOPS and bare.number <= _SLOWEST
    return fast and bare.after is not None and bare.after.kind == "LENS" and bare.after.text.casefold() == "lens"


def _drawn(bare: Bare) -> Token | None:
    piece = bare.before
    if piece is not None and piece.value == "at" and bare.at > 1:
        piece = bare.tokens[bare.at - 2]  # 'bellows at 120'
    if is_drawn_so_far(piece, bare.token, bare.after) or is_length_of_tube(bare.tokens, bare.at):
        return bare.token.as_("LENGTH", unit="mm")
    travels = is_added_travel(bare.tokens, bare.at)
    return bare.token.as_("KEYED", value="travel", unit="mm") if travels else None


def _multiplying(bare: Bare) -> Token | None:
    """The factor of a reducer or a converter; the number of close-up lenses, and their strength."""
    tokens, at, token, number = bare.tokens, bare.at, bare.token, bare.number
    ring = [one.kind for one in tokens[at + 1 : at + 3]] == ["MOUNT", "PIECE"] and tokens[at + 2].value == "adapter"
    if ring and is_reducing(number) and bare.is_decimal:
        return token.as_("TIMES")  # 'a 0.71 M42 ring'
    if is_extender_named(tokens, at):
        return token.as_("TIMES", unit=TELECONVERTER)
    if bare.after is not None and bare.after.kind == "DIOPTRE" and number <= MOST_THINGS and bare.is_whole:
        return token.as_("COUNT")  # 'two +2'
    if _is_power(tokens, at):
        return token.as_("DIOPTRE")
    if is_put_on_lens(tokens, at) or are_set_against(tokens, at) or (0.3 <= number < 1 and lists_factors(tokens, at)):
        return token.as_("TIMES")
    if bare.follows("PIECE", *OPTICS) and _FACTORS[0] <= number < _FACTORS[1]:
        return token.as_("TIMES")  # 'reducer .71'
    if bare.before is not None and is_named_reducer(bare.before, number):
        return token.as_("TIMES")
    with_it = bare.follows("PREP", "with", "behind", "via") or bare.follows("JOIN", "+", "and") or bare.follows("DET")
    return token.as_("TIMES") if with_it and _REDUCING[0] <= number <= _REDUCING[1] else None


def _is_power(tokens: list[Token], at: int) -> bool:
    """'a close-up lens no 2', 'close up filter 4': its strength."""
    behind = [one for one in tokens[max(0, at - 2) : at] if one.text.casefold() not in ("no", "number", "nr", "of")]
    piece = behind[-1] if behind else None
    return piece is not None and piece.value == "close-up-lens" and tokens[at].numbers[0] <= _STRONGEST


def _in_unit_before(bare: Bare) -> Token | None:
    """'65cm into 23': the same unit on both sides."""
    measured = bare.tokens[bare.at - 2] if bare.at > 1 else None
    into = bare.before is not None and bare.before.text.casefold() == "into"
    if not into or measured is None or measured.kind != "LENGTH":
        return None
    factor = FAR_UNITS.get(measured.unit, 1.0)
    return bare.token.as_("LENGTH", numbers=(bare.number * factor,), unit=measured.unit)


def _by_beside(bare: Bare) -> Token | None:
    """A magnification, a focal length, a factor, by the words beside it."""
    if is_size(bare.tokens, bare.at, bare.told):
        return bare.token.as_("RATIO")
    if is_what_it_becomes(bare.tokens, bare.at):
        return bare.token.as_("CUE")
    if is_focal(bare.tokens, bare.at) or is_lens_against(bare.tokens, bare.at):
        return bare.token.as_("FOCAL")
    factor = _FACTORS[0] <= bare.number <= _FACTORS[1] and of_optics(bare.tokens, bare.at)
    return bare.token.as_("TIMES") if factor else None


def _thick(bare: Bare) -> Token | None:
    """The decimal behind a piece."""
    if not (_THICK[0] <= bare.number <= _THICK[1] and bare.is_decimal):
        return None
    led = bare.follows("PREP", "to", "at", "of") and bare.at > 1
    if led and bare.tokens[bare.at - 2].kind == "PIECE":
        return bare.token.as_("KEYED", value="thickness", unit="mm")  # 'thinned the ring to 9.70'
    near = reversed(bare.tokens[max(0, bare.at - _WORDS_BETWEEN) : bare.at])
    behind = next((one for one in near if one.kind != "CUE"), None)
    return bare.token.as_("LENGTH", unit="mm") if behind is not None and behind.kind == "PIECE" else None


def _by_what_is_asked(bare: Bare) -> Token | None:
    token, number, after = bare.token, bare.number, bare.after
    may_be_lens = _FOCALS[0] <= number <= _FOCALS[1]
    if bare.told & _OF_VIEW and after is not None and after.kind == "FORMAT" and may_be_lens:
        return token.as_("FOCAL")  # 'like a 50 ff'
    if not bare.told & DISTANT or not (after is None or after.kind in ENDS):
        return None
    if bare.follows("PREP", "from", "at") and 0.1 <= number < _FOCALS[0]:
        return token.as_("KEYED", value="close-focus", numbers=(number * 1000,), unit="m")
    return token.as_("FOCAL") if may_be_lens and number * 2 == int(number * 2) and not bare.follows("PREP") else None


# the surer before the likelier: what stands right beside a number, then the words near it, then what is asked
_STEPS: Final[tuple[Callable[[Bare], Token | None], ...]] = (
    _pointing, _named, _counting, _cropping, _stopping, _drawn, _multiplying, _in_unit_before, _by_beside, _thick,
    _by_what_is_asked,
)  # fmt: skip
