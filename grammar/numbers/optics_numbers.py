"""Bare numbers that are the factors of glass between lens and body: 'a focal reducer 0.64 or 0.71'."""

from __future__ import annotations

from typing import Final

from engine.base.units import MM_PER_INCH
from grammar.things.casting import DRAWN, MADE_REDUCING, MAY_REDUCE
from grammar.words.groups import CROP
from grammar.words.tokens import Token, is_plural
from grammar.words.written import STOPS, TELECONVERTER

_ON: Final = frozenset(["on", "behind", "with"])
LENSLIKE: Final = frozenset(["LENS", "KIND", "MOUNT", "COMBO", "LENGTH", "FOCAL", "NUMBER", "FNUM"])
LEAST_REDUCING: Final = 0.5
_REDUCES: Final = (LEAST_REDUCING, 0.9)  # what reducers multiply by
_GLASS: Final = "glass"
_EXTENDS: Final = (1.3, 2.5)  # and extenders
_OF_SIZE: Final = frozenset(["macro", "how-close", "how-big", "working-distance", "dof", "bellows-factor"])
OPTICS: Final = frozenset(["focal-reducer", "teleconverter"])
_SMALL: Final = frozenset(["MEASURE", "KEYED", "PITCH", "THREAD", "MOUNTWORD", "ND", "TURNS", "EV", "RATIO"])
_OF_SMALL: Final = frozenset(
    ["shim", "nd", "calipers", "pitch", "identify", "too-thick", "too-thin", "how-big", "macro",
     "past-infinity", "after-shim-calibration", "after-diy-dimension", "after-identify-mount", "bellows-factor",
     "cant-focus"]
)  # fmt: skip
_MAKES: Final = "total"  # value of 'make', which measures nothing by itself
_OPENING: Final = frozenset(["STOP", "DET", "CUE", "JOIN", "VERB", "FILLER"])
_CLOSING: Final = frozenset(["STOP", "JOIN", "PREP", "CUE", "VERB", "FILLER"])
_OF_ZOOM: Final = frozenset(["KIND", "LENS", "MOUNT", "FNUM"])
_MEASURED: Final = frozenset(["PIECE", "MEASURE"])
_SHORTEST, _LEAST_ZOOM = 3.0, 1.3  # mm, and how much longer a zoom is at its long end
_ROUNDED: Final = 0.15  # how far the ratio that is engraved on a zoom may be from its ends
_WITH_GLASS: Final = "with-glass"
EXTENDERS: Final = frozenset([1.2, 1.25, 1.33, 1.4, 1.5, 1.6, 1.7, 2.0])  # factors that extenders are made with
_OF_OTHERS: Final = frozenset(["LENS", "KIND", "BODY", "FRAME", "FORMAT", "PIECE", "MOUNT", "MEASURE"])


def of_optics(tokens: list[Token], at: int) -> bool:
    """'a focal reducer 0.64 or 0.71': the factors told behind the piece that has them."""
    before = [token for token in tokens[max(0, at - 3) : at] if token.kind != "JOIN" and token.kind != "CUE"]
    if before and before[-1].kind == "TIMES":
        before = before[:-1]
    return bool(before) and before[-1].kind == "PIECE" and before[-1].value in OPTICS and "." in tokens[at].text


def is_named_reducer(piece: Token, number: float) -> bool:
    """'a reducer ring 0.71', 'the 0.71 one with glass': by its factor a piece that may also be something else."""
    if (piece.kind, piece.value) == ("PIECE", "adapter") and number in MADE_REDUCING:
        return True  # 'a 0.71 ring EF to MFT': no ring is known by such a thickness
    return piece.kind == "PIECE" and piece.value in MAY_REDUCE and is_reducing(number) and number != round(number, 1)


def lists_factors(tokens: list[Token], at: int) -> bool:
    """'.64 vs .71 reducer', 'from .71 to .64 reducer': one of a list of factors before the piece that has them."""
    after = tokens[at + 1 : at + 4]
    kinds = [token.kind for token in after]
    if kinds[:2] == ["JOIN", "NUMBER"] and is_put_on_lens(tokens, at + 2):
        return True  # '0.71 vs 0.64 on a 35 f1.4'
    return kinds[:1] in (["JOIN"], ["PREP"]) and kinds[1:2] in (["NUMBER"], ["TIMES"]) and after[-1].value in OPTICS


def are_set_against(tokens: list[Token], at: int) -> bool:
    """'.71 against .8 in stops': two factors of reducers set against each other, where nothing else is told."""
    around = [at + 2, at - 2]
    if any(token.kind in ("PIECE", "MEASURE", "LENGTH") for token in tokens):
        return False
    for other in around:
        join = tokens[(at + other) // 2] if 0 <= other < len(tokens) else None
        if join is not None and join.kind == "JOIN" and join.value in ("vs", "or") and tokens[other].numbers:
            return all(_REDUCES[0] < tokens[one].numbers[0] <= _REDUCES[1] for one in (at, other))
    return False


def with_zoom_ratios(tokens: list[Token]) -> list[Token]:
    """'12-120 10x': how many times a zoom is longer at its long end tells that it is one, and of no size."""
    out: list[Token] = []
    for token in tokens:
        ends = out[-1].numbers if out and out[-1].kind == "RANGE" else ()
        ratio = max(ends) / min(ends) if len(ends) == 2 and min(ends) > 0 else 0.0
        if token.kind == "TIMES" and ratio and abs(token.numbers[0] / ratio - 1) < _ROUNDED:
            token = token.as_("KIND", value="zoom")
        out.append(token)
    return out


def with_zooms_set(tokens: list[Token]) -> list[Token]:
    """'a 24-70 at 35', '12-120 zoom set to 25': what a zoom is set to is its focal length."""
    out = list(tokens)
    for at, ends in enumerate(out[:-2]):
        drawn = at > 0 and out[at - 1].kind == "PIECE" and out[at - 1].value in DRAWN  # 'helicoid 17-31 at 24 mm'
        if ends.kind != "RANGE" or ends.unit not in ("", "mm") or len(ends.numbers) != 2 or drawn:
            continue
        link = next((n for n in range(at + 1, len(out) - 1) if out[n].kind not in _OF_ZOOM), len(out) - 1)
        link = _past_glass(out, link)
        if link + 1 >= len(out) or out[link].value != "at":
            continue
        number, after = out[link + 1], out[link + 2] if link + 2 < len(out) else None
        low, high = min(ends.numbers), max(ends.numbers)
        metric = number.may_be_mm
        zooms = low >= _SHORTEST and high >= low * _LEAST_ZOOM and (after is None or after.kind not in _MEASURED)
        if metric and zooms and low <= number.numbers[0] <= high:
            named = any(one.value == "zoom" for one in out[at + 1 : link])
            out[at] = ends.as_("CUE") if named else ends.as_("KIND", value="zoom")
            out[link + 1] = number.as_("FOCAL", unit="mm")
            out[link] = out[link].as_("CUE")
    return out


def _past_glass(tokens: list[Token], at: int) -> int:
    """'18-35 with a 0.71 booster at 24': what it is set to may stand behind the glass that is told with it."""
    row = [one.kind for one in tokens[at : at + 4] if one.kind != "DET"]
    glass = next((n for n in range(at, min(at + 4, len(tokens))) if tokens[n].kind == "PIECE"), None)
    optical = glass is not None and tokens[glass].value in OPTICS
    return glass + 1 if glass is not None and optical and row[:1] == ["PREP"] else at


def as_extender(tokens: list[Token], at: int, told: frozenset[str]) -> Token:
    """'flip the 2x in', 'with the 1.4x', 'one with glass in, 1.2x': by its article, or as glass is spoken of."""
    before = tokens[at - 1] if at else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    known = before is not None and before.kind == "DET" and before.value == "the"
    if any(token.kind == "LIMIT" and token.value == _WITH_GLASS for token in tokens) and not told & _OF_SIZE:
        return tokens[at].as_("TIMES", unit=TELECONVERTER)
    rest = [one for one in tokens[at + 1 : at + 5] if one.kind not in ("DET", "CUE")]
    if after is not None and after.kind == "KIND" and after.value == "zoom":
        return tokens[at].as_("CUE")  # 'a 20x zoom' is of no size
    known = known or (_placed_on_lens(rest) and (before is None or before.kind in ("STOP", "DET")))
    if not known or tokens[at].numbers[0] not in EXTENDERS or told & (_OF_SIZE | {"effective-f"}):
        return tokens[at]
    if after is not None and (after.kind in _OF_OTHERS or CROP in after.groups):
        return tokens[at]
    return tokens[at].as_("TIMES", unit=TELECONVERTER)


def _placed_on_lens(rest: list[Token]) -> bool:
    """'... behind the crop lens', '... on a 50': whether what follows is what glass is put on."""
    placed = len(rest) > 1 and rest[0].kind == "PREP" and rest[0].value in _ON
    return placed and (rest[1].kind in LENSLIKE or any(one.kind == "LENS" for one in rest[1:3]))


def is_extender_named(tokens: list[Token], at: int) -> bool:
    """'300 f/4 with the 1.4': beside a lens that has its stop, the factor of an extender known by its article."""
    back = tokens[max(0, at - 2) : at]
    named = [one.kind for one in back] == ["PREP", "DET"] and back[0].value == "with" and back[1].value == "the"
    stopped = any(one.kind in ("FNUM", "COMBO") for one in tokens[:at])
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    return named and stopped and tokens[at].numbers[0] in EXTENDERS and (after is None or after.kind not in _OF_OTHERS)


def is_put_on_lens(tokens: list[Token], at: int) -> bool:
    """'0.71 on a 50/1.8', 'a .64 behind my 35': the factor of a reducer, told alone before the lens that it goes on."""
    number = tokens[at].numbers[0]
    before, after = tokens[at - 1] if at else None, [one for one in tokens[at + 1 : at + 4] if one.kind != "DET"]
    begins = before is None or before.kind in ("STOP", "DET", "CUE", "JOIN")
    placed = len(after) > 1 and after[0].kind == "PREP" and after[0].value in _ON and after[1].kind in LENSLIKE
    return begins and placed and _REDUCES[0] <= number <= _REDUCES[1] and number not in STOPS


def with_factors_left(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'0.71 behind a full frame lens', 'stick a .71 in': where nothing small is measured, such a number is a reducer's.

    The 'in' behind it is no inch where an article leads it and nothing follows that is so wide.
    """
    measured = any(token.kind in _SMALL and token.value != _MAKES for token in tokens)
    if told & _OF_SMALL or measured or any(token.kind == "PIECE" for token in tokens):
        return tokens
    out = list(tokens)
    for at, token in enumerate(out):
        before = out[at - 1] if at else None
        after = out[at + 1] if at + 1 < len(out) else None
        led = before is not None and (before.kind == "DET" or before.text.casefold() == "a")
        opens = before is None or before.kind in _OPENING or led
        ends = after is None or after.kind in _CLOSING
        number = token.numbers[0] if token.numbers else 0.0
        if token.kind == "NUMBER" and "." in token.text and opens and ends and is_reducing(number):
            out[at] = token.as_("TIMES")
        elif token.kind == "LENGTH" and token.unit == "in" and led and ends and is_reducing(number / MM_PER_INCH):
            out[at] = token.as_("TIMES", numbers=(round(number / MM_PER_INCH, 4),), unit="", ids=(), implies=())
    return out


def is_reducing(number: float) -> bool:
    return _REDUCES[0] < number <= _REDUCES[1] and number not in STOPS


_LEAST_FOCAL: Final = 12.0  # mm, of a bare number before glass
_CONVERTER, _EXTENDER = "convert", "teleconverter"


def with_glass_behind(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'85/1.4 x0.71', 'OM 85mm 2x tc': a factor, or glass, right behind what tells a lens goes with the lens."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        behind = token.kind == "TIMES" and bool(out) and out[-1].kind in ("COMBO", "FNUM")
        factor = behind and _is_of_glass(token.numbers[0], told)
        if factor or (_begins_glass(tokens, at) and _ends_lens(out)):
            out.append(Token("PREP", "", token.column, value="with"))
        out.append(token)
    return out


def _begins_glass(tokens: list[Token], at: int) -> bool:
    """Whether a reducer or a converter is told from here on: '2x tc', 'reducer 0.71'."""
    token, after = tokens[at], tokens[at + 1] if at + 1 < len(tokens) else None
    if token.kind == "DET" and after is not None and after.kind != "DET":
        return _begins_glass(tokens, at + 1)
    if token.kind == "PIECE":
        return token.value in OPTICS
    glass = after is not None and after.kind == "PIECE"
    named = glass and after is not None and (after.value in OPTICS or after.text.casefold().startswith("convert"))
    return named and token.kind in ("TIMES", "NUMBER")


def _ends_lens(out: list[Token]) -> bool:
    """Whether what was read last are the numbers of a lens, with its mount behind them or not."""
    last = out[-1] if out else None
    if last is not None and last.kind == "MOUNT" and len(out) > 1:
        last = out[-2]
    if last is None:
        return False
    metric = last.is_mm
    bare = last.kind == "NUMBER" and last.text.isdecimal() and last.numbers[0] >= _LEAST_FOCAL
    return metric or bare or last.kind in ("COMBO", "FNUM", "FOCAL")


def _is_of_glass(factor: float, told: frozenset[str]) -> bool:
    reduces = _REDUCES[0] < factor <= _REDUCES[1] and factor not in STOPS
    return reduces or (_EXTENDS[0] <= factor <= _EXTENDS[1] and not told & _OF_SIZE)


def with_factors_in(tokens: list[Token]) -> list[Token]:
    """'put a focal reducer 0.71 in': no inches, but by how much it reduces, and where it is put.

    'the adapter has 1.4x glass': glass that is told by its factor alone.
    """
    for at in range(1, len(tokens)):
        if _is_glass_by_factor(tokens[at - 1], tokens[at]):
            piece = "focal-reducer" if is_reducing(tokens[at - 1].numbers[0]) else "corrective-glass"
            tokens[at] = tokens[at].as_("PIECE", value=piece)
        elif _is_converter(tokens, at):
            _tell_converter(tokens, at)
        elif _is_converter_led(tokens, at):
            tokens[at - 1] = tokens[at - 1].as_("PIECE", value=_EXTENDER)
            tokens[at] = tokens[at].as_("TIMES", unit=TELECONVERTER)
    reducer = any(token.kind == "PIECE" and token.value == "focal-reducer" for token in tokens)
    return [_factor_in(token) if reducer and _is_put_in(token) else token for token in tokens]


def _is_converter(tokens: list[Token], at: int) -> bool:
    """'1.4 converter': glass that is told by the factor before it; '85 and 2 converters' are two."""
    factor, glass = tokens[at - 1], tokens[at]
    named = glass.kind == "PIECE" and glass.text.casefold().startswith(_CONVERTER) and not is_plural(glass)
    return named and factor.kind in ("NUMBER", "TIMES") and factor.numbers[0] in EXTENDERS


def _is_converter_led(tokens: list[Token], at: int) -> bool:
    """'converter 1.4, one stop or half?': told by the bare factor behind it, which no ring is as thin as."""
    glass, factor = tokens[at - 1], tokens[at]
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    named = glass.kind == "PIECE" and glass.text.casefold().startswith(_CONVERTER) and not is_plural(glass)
    bare = factor.kind == "NUMBER" and "." in factor.text and factor.numbers[0] in EXTENDERS
    return named and bare and (after is None or after.kind not in _OF_OTHERS)


def _tell_converter(tokens: list[Token], at: int) -> None:
    """The factor in its part; what joins it to the numbers of a lens is a 'with': '400 plus 1.4 converter'."""
    tokens[at - 1] = tokens[at - 1].as_("TIMES", unit=TELECONVERTER)
    tokens[at] = tokens[at].as_("PIECE", value=_EXTENDER)
    if at > 2 and tokens[at - 2].kind == "JOIN" and tokens[at - 2].value in ("and", "+"):
        before = tokens[at - 3]
        is_focal = before.kind in ("NUMBER", "LENGTH") and before.numbers[0] >= _LEAST_FOCAL
        if is_focal or before.kind in ("COMBO", "FNUM"):
            tokens[at - 2] = tokens[at - 2].as_("PREP", value="with")


def _is_put_in(token: Token) -> bool:
    unit = token.text.partition(" ")[2].casefold()
    return token.kind == "LENGTH" and unit == "in" and is_reducing(token.numbers[0] / MM_PER_INCH)


def _factor_in(token: Token) -> Token:
    factor = round(token.numbers[0] / MM_PER_INCH, 6)
    return token.as_("NUMBER", text=token.text.split(" ")[0], value="", unit="", numbers=(factor,))


def _is_glass_by_factor(factor: Token, glass: Token) -> bool:
    named = glass.kind == "LENS" and glass.text.casefold() == _GLASS
    extends = factor.kind == "TIMES" and _EXTENDS[0] <= factor.numbers[0] <= _EXTENDS[1]
    return named and (extends or (factor.kind == "TIMES" and is_reducing(factor.numbers[0])))
