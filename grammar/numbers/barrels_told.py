"""The tube that a lens is itself: 'projection lens, smooth 42.5 tube'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.widths_behind import BARREL, with_widths_behind
from grammar.things.casting import SPACER
from grammar.words.groups import FAT, HOLDING, OUTER, RATHER, SCREW, SMOOTH, WITHOUT
from grammar.words.tokens import Token

_WIDTHS: Final = (20.0, 130.0)  # mm, of barrels
_PROJECTS: Final = ("KIND", "projector")
_PLAIN: Final = "plain"  # said of the tube of such a lens; elsewhere of a tube that stands between
_THREAD_NEAR: Final = 3  # tokens from a thread to how wide it is
_LIT: Final = frozenset(["FNUM", "COMBO", "SHUTTER", "ISO", "FPS"])  # beside which it is light that is outside
_NEAR: Final = 2  # tokens between the word for what it is like, its width and the tube
_WIDE: Final = frozenset(["JOIN", "CUE", "KIND", "FILLER", "PREP", "DET"])


def with_barrels_told(tokens: list[Token]) -> list[Token]:
    """The width of a smooth tube becomes KEYED, and the tube is no piece that stands between."""
    tokens = _of_fat_lenses(with_widths_behind(tokens))
    _tell_threadless(tokens)
    _tell_of_projectors(tokens)
    _tell_outside(tokens)
    _tell_only_a_tube(tokens)
    thrown = any((one.kind, one.value) == _PROJECTS for one in tokens)
    if thrown:
        _tell_across(tokens)
    for at, token in enumerate(tokens):
        if SMOOTH not in token.groups and not (thrown and token.text.casefold() == _PLAIN):
            continue
        tube = next((n for n in range(at + 1, min(len(tokens), at + 2 + _NEAR)) if _is_tube(tokens[n])), None)
        if tube is None:  # 'the tube is smooth, 52.5 mm', 'tube without any thread, 42.5 outside'
            tube = next((n for n in range(at - 1, max(-1, at - 2 - _NEAR), -1) if _is_tube(tokens[n])), None)
            width = next((n for n in range(at + 1, at + 3 + _NEAR) if _is_width(tokens, n)), None)
            if tube is not None and width is not None and all(one.kind in _WIDE for one in tokens[at + 1 : width]):
                tokens[width] = tokens[width].as_("KEYED", value=BARREL, unit="mm")
                tokens[tube] = tokens[tube].as_("CUE")
            elif tube is not None and _is_of_lens(tokens, tube):
                tokens[tube] = tokens[tube].as_("CUE")
            continue
        width = next(
            (n for n in (*range(at + 1, tube), *range(tube + 1, tube + 2 + _NEAR)) if _is_width(tokens, n)), None
        )
        if width is not None and all(one.kind in _WIDE for one in tokens[tube + 1 : width]):
            tokens[width] = tokens[width].as_("KEYED", value=BARREL, unit="mm")
            tokens[tube] = tokens[tube].as_("CUE")
        elif _is_of_lens(tokens, tube):
            tokens[tube] = tokens[tube].as_("CUE")
    return tokens


def _of_fat_lenses(tokens: list[Token]) -> list[Token]:
    """'32 mm fat C lens': how wide the lens is, as no seat is so thick."""
    out = list(tokens)
    for at in range(len(tokens) - 2):
        size, fat, lens = tokens[at : at + 3]
        wide = size.is_mm and _WIDTHS[0] <= size.numbers[0] <= _WIDTHS[1] and FAT in fat.groups
        if wide and fat.kind in ("MEASURE", "FILLER") and lens.kind in ("MOUNT", "LENS", "KIND"):
            out[at], out[at + 1] = size.as_("KEYED", value=BARREL, unit="mm"), fat.as_("FILLER")
    return out


def _tell_only_a_tube(tokens: list[Token]) -> None:
    """'its just a tube, 62.5 mm across': what is only that is the lens itself, and so wide."""
    for at, token in enumerate(tokens[2:], 2):
        only = tokens[at - 1].kind in ("LETTER", "DET") and RATHER in tokens[at - 2].groups
        width = at + 1 + (tokens[at + 1 : at + 2] != [] and tokens[at + 1].kind == "JOIN")
        after = tokens[width + 1] if width + 1 < len(tokens) else None
        if _is_tube(token) and only and _is_width(tokens, width) and after is not None and OUTER in after.groups:
            tokens[width] = tokens[width].as_("KEYED", value=BARREL, unit="mm")
            tokens[at], tokens[width + 1] = token.as_("CUE"), after.as_("FILLER")
            return


def _tell_across(tokens: list[Token]) -> None:
    """'a projector lens 150mm f3.5, 52.5 across': such a lens has no thread, so it is so wide."""
    screw = any(one.kind in ("MOUNTWORD", "MOUNT", "PIECE", "BODY") for one in tokens)
    stop = next((at for at, one in enumerate(tokens) if one.kind in ("FNUM", "COMBO")), None)
    for at in range(stop + 1 if stop is not None and not screw else len(tokens), len(tokens) - 1):
        after = tokens[at + 1]
        if _is_width(tokens, at) and OUTER in after.groups and not tokens[at].numbers[0].is_integer():
            tokens[at], tokens[at + 1] = tokens[at].as_("KEYED", value=BARREL, unit="mm"), after.as_("FILLER")
            return


def _is_of_lens(tokens: list[Token], tube: int) -> bool:
    """'old brass lens, 150 mm, smooth tube': of no length of its own, where a lens is told."""
    sized = tube and tokens[tube - 1].kind in ("LENGTH", "NUMBER", "RANGE")
    return not sized and any(one.kind in ("LENS", "KIND", "COMBO") for one in tokens)


def _tell_threadless(tokens: list[Token]) -> None:
    """'tube without any thread, 42.5mm outside': so wide, where it is told to be so across."""
    for at, token in enumerate(tokens):
        if token.kind != "MOUNTWORD" or SCREW not in token.groups or not _is_denied(tokens, at):
            continue
        tube = next((n for n in range(at - 1, max(-1, at - 3 - _NEAR), -1) if _is_tube(tokens[n])), None)
        for width in range(at + 1, at + 2 + _NEAR) if tube is not None else ():
            after = tokens[width + 1] if width + 1 < len(tokens) else None
            if _is_width(tokens, width) and after is not None and OUTER in after.groups:
                tokens[width] = tokens[width].as_("KEYED", value=BARREL, unit="mm")
                tokens[width + 1] = after.as_("FILLER")
                tokens[tube or 0] = tokens[tube or 0].as_("CUE")
                return
        if tube is not None and tube + 2 >= at and _is_of_lens(tokens, tube):
            tokens[tube] = tokens[tube].as_("CUE")  # 'a 150 mm lens, tube no thread'


def _tell_behind(tokens: list[Token], barrel: int) -> None:
    """'projector barrel 52.5 smooth, 90mm f2.4', 'projection barrel of 62.5': the width behind, of no lens."""
    width = next((n for n in range(barrel + 1, len(tokens)) if tokens[n].kind not in ("PREP", "VERB", "DET")), None)
    if width is None or width > barrel + _NEAR or not _is_width(tokens, width):
        return
    focal = any(one.kind in ("LENGTH", "COMBO", "NUMBER", "FOCAL") for one in tokens[width + 1 :])
    if focal or not tokens[width].numbers[0].is_integer():
        tokens[width] = tokens[width].as_("KEYED", value=BARREL, unit="mm")
        tokens[barrel] = tokens[barrel].as_("KIND", value=_PROJECTS[1], ids=())


def _tell_of_projectors(tokens: list[Token]) -> None:
    """'a sleeve for a 42.5 projector barrel': a barrel that is so wide, where something is made to hold it."""
    made = any(HOLDING in one.groups for one in tokens)
    for at in range(len(tokens)):
        of_barrel = tokens[at].kind == "MOUNT" and tokens[at].text.casefold().endswith(BARREL)
        if of_barrel and len(tokens[at].ids) > 1 and not (at and _is_width(tokens, at - 1)):
            _tell_behind(tokens, at)
        if not of_barrel or len(tokens[at].ids) == 1 or not at or not _is_width(tokens, at - 1):
            continue
        if made or not tokens[at - 1].numbers[0].is_integer():
            tokens[at - 1] = tokens[at - 1].as_("KEYED", value=BARREL, unit="mm")
            tokens[at] = tokens[at].as_("KIND", value=_PROJECTS[1], ids=())


def _tell_outside(tokens: list[Token]) -> None:
    """'no mount, 62.5 mm outside', '62.5 across outside': how wide the barrel is; '50 mm outside' is in the sun."""
    bare = any(one.kind == "MOUNTWORD" and _is_said_no(tokens, at) for at, one in enumerate(tokens))
    lit = any(one.kind in _LIT for one in tokens)
    for at, token in enumerate(tokens):
        if token.kind != "LIGHT" or OUTER not in token.groups or not at or lit:
            continue
        if any(_is_thread(tokens, place) for place in range(max(0, at - 1 - _THREAD_NEAR), at)):
            continue  # 'a thread 20.2 outside'
        across = tokens[at - 1].kind == "MEASURE"
        width = at - 1 - across
        if width >= 0 and _is_width(tokens, width) and (bare or across or not tokens[width].numbers[0].is_integer()):
            tokens[width] = tokens[width].as_("KEYED", value=BARREL, unit="mm")
            tokens[width + 1 : at + 1] = [one.as_("FILLER") for one in tokens[width + 1 : at + 1]]
            return


def _is_thread(tokens: list[Token], at: int) -> bool:
    return tokens[at].kind == "MOUNTWORD" and SCREW in tokens[at].groups and not _is_said_no(tokens, at)


def _is_said_no(tokens: list[Token], at: int) -> bool:
    return _is_denied(tokens, at) or any(one.text.casefold() == "no" for one in tokens[max(0, at - 2) : at])


def _is_denied(tokens: list[Token], at: int) -> bool:
    """'no thread', 'without any thread'."""
    return any(WITHOUT in one.groups for one in tokens[max(0, at - 2) : at])


def _is_tube(token: Token) -> bool:
    return token.kind == "PIECE" and token.value == SPACER


def _is_width(tokens: list[Token], at: int) -> bool:
    token = tokens[at] if at < len(tokens) else None
    metric = token is not None and token.may_be_mm
    return token is not None and metric and not token.text.isalpha() and _WIDTHS[0] <= token.numbers[0] <= _WIDTHS[1]
