"""The image circle told of a lens: 'disc 22 mm across', 'a 28 mm dia circle', 'covers 24 mm', '13.5 mm coverage'."""

from __future__ import annotations

from typing import Final

from grammar.kinds import COVERAGE
from grammar.numbers.measured_lengths import OWN, is_plausible
from grammar.words.groups import ASKED_AHEAD, COVER, COVERING, LIGHTS_UP
from grammar.words.token_kinds import SIZES
from grammar.words.tokens import Token

CIRCLE: Final = "circle"
_MADE_FOR: Final = "made-for"
_IT: Final = frozenset(["it", "they", "only", "these", "those"])
_ENDS: Final = frozenset([".", ",", ";"])
_ACROSS: Final = frozenset(["diameter", "size"])  # what is measured across anything, and of a circle is the circle
_SMALL: Final = frozenset(["CUE", "DET", "PREP"])
_LINKING: Final = frozenset(["be", "of", "the", "at", "equals", "", "its"])  # values of the small words within
_FRAMES: Final = frozenset(["FORMAT", "AREA", "FRAME", "BODY", "MOUNT", "LETTER", "CROP"])
_FOCALS: Final = frozenset(["COMBO", "FOCAL", "RANGE", "FNUM"])
_LIT: Final = frozenset(["cover", "vignette", "disc", "circle-word", "image-circle", "crop", "drawn-frame"])  # cues
_AFTER: Final = "after-coverage"
_SHAPE: Final = "ASPECT"
_TOLD: Final = frozenset(["LENS", "KIND", "MOUNT", "PIECE", "MEASURE", "KEYED", "TRAIT"])
_THINGS: Final = frozenset(["LENS", "KIND", "PIECE", "BODY", "MOUNT", "MOUNTWORD", "THREAD", "KEYED"])
_NEAR: Final = 4
_FAR: Final = 9  # tokens from a disc to what is said of it
_FILM: Final = 30.0  # mm; a width of film from here up is rather named by it than a circle as large
_LEAST: Final = 3.5  # mm
_MOST: Final = 400.0


def with_circles_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The lengths that are those of an image circle become KEYED. `told`: what the cues of the line tell."""
    out = list(tokens)
    for at, token in enumerate(tokens):
        if token.kind == "MEASURE" and token.value == CIRCLE and "ahead" not in token.implies:
            _tell_across(out, at)
            _tell_of(out, at)
    for at, token in enumerate(tokens):
        if token.kind == "MEASURE" and token.value == CIRCLE and "ahead" in token.implies:
            _tell_thrown(out, at, told)
        elif token.kind == "CUE" and _is_told_of_lens(tokens, at):
            out[at] = token.as_("PREP", value=_MADE_FOR)
        elif token.kind == "CUE" and COVERING in token.groups:
            _tell_covered(out, at)
        elif token.kind == "CUE" and token.text.casefold() == COVERAGE:
            _tell_coverage(out, at)
    if _AFTER in told and any(token.kind == _SHAPE for token in out):
        _tell_supposed(out)
    return out


def _is_told_of_lens(tokens: list[Token], at: int) -> bool:
    """'they cover super 35. how much of full frame is lit': the lens's own, beside what is asked of another."""
    if COVER not in tokens[at].groups or at == 0:
        return False
    frame = at + 1 + (at + 1 < len(tokens) and tokens[at + 1].value == "only")
    framed = frame < len(tokens) and tokens[frame].kind == "FORMAT"
    lens = tokens[at - 1].kind == "LENS" or tokens[at - 1].value in _IT or tokens[at - 1].text.casefold() in _IT
    asked = any(ASKED_AHEAD in one.groups for one in tokens[:at] if one.kind == "CUE")
    ends = [n for n in range(frame + 1, min(len(tokens), frame + 3)) if tokens[n].text in _ENDS]
    rest = tokens[ends[0] + 1 :] if ends else []
    other = any(one.kind in ("FORMAT", "FRAME", "BODY", "MOUNT") or one.text.casefold() == "frame" for one in rest)
    return framed and lens and not asked and other and any(LIGHTS_UP in one.groups for one in rest)


def _tell_supposed(tokens: list[Token]) -> None:
    """'what 16:9 is left, say 11mm' after whether a lens covers: the one length, and no lens, is its circle."""
    sizes = [at for at, token in enumerate(tokens) if token.kind == "LENGTH" and _may_be_circle(token)]
    others = any(one.kind in _TOLD or one.kind in _FOCALS for one in tokens)
    if len(sizes) == 1 and not others and (sizes[0] == 0 or tokens[sizes[0] - 1].kind in ("CUE", "JOIN", "STOP")):
        tokens[sizes[0]] = tokens[sizes[0]].as_("KEYED", value=CIRCLE, unit=tokens[sizes[0]].unit or "mm", ids=())


def _tell_across(tokens: list[Token], at: int) -> None:
    """'disc 22 mm across', '28 mm dia image circle', 'diameter of the circle is 24': two words measure one thing."""
    first, last = _run(tokens, at)
    across = [n for n in range(first, last + 1) if _is_across(tokens[n])]
    sizes = [n for n in range(first, last + 1) if _may_be_circle(tokens[n])]
    if not across or not sizes:
        size = _size_said_of(tokens, at) if not sizes else None
        size = size if size is not None or sizes else _size_told_next(tokens, at)
        if size is not None:
            _key(tokens, size, at, *([size + 1] if size + 1 < len(tokens) and _is_across(tokens[size + 1]) else []))
        return
    near = min(across, key=lambda n: abs(n - at))
    between = [n for n in sizes if min(at, near) < n < max(at, near)]
    size = min(between or sizes, key=lambda n: (abs(n - at), n < at))
    _key(tokens, size, at, near)


def _tell_of(tokens: list[Token], at: int) -> None:
    """'circle of 27 mm: MFT ok?': a mount behind it is no lens's, where nothing else of one is told there."""
    if at + 2 >= len(tokens) or tokens[at].kind != "MEASURE" or tokens[at + 1].value != "of":
        return
    row = [one.kind for one in tokens[at + 3 : at + 5]]
    lens = any(kind in ("LENS", "KIND", "PIECE", "FNUM", "MOUNTWORD") for kind in row)
    if tokens[at + 2].kind == "LENGTH" and _may_be_circle(tokens[at + 2]) and not lens:
        _key(tokens, at + 2, at)


def _size_said_of(tokens: list[Token], at: int) -> int | None:
    """'the bright disc of my zoom on paper is 15 mm across': the length behind what says how large it is."""
    for place in range(at + 1, min(len(tokens) - 1, at + _FAR)):
        token = tokens[place]
        if token.kind in ("STOP", "JOIN"):
            return None
        says = token.kind == "CUE" and token.value == "be"
        if says or (token.kind == "MEASURE" and token.value == "size"):
            size = place + 1
            return size if _may_be_circle(tokens[size]) and not _goes_on(tokens, size) else None
    return None


def _size_told_next(tokens: list[Token], at: int) -> int | None:
    """'throws a bright circle; I measure 24 mm diameter': the next length across, with no other thing between."""
    for place in range(at + 1, min(len(tokens), at + _FAR)):
        token = tokens[place]
        if _may_be_circle(token) or (token.kind == "LENGTH" and token.unit == "in" and token.numbers[0] >= _LEAST):
            beside = [tokens[n] for n in (place - 1, place + 1) if 0 <= n < len(tokens)]
            return place if any(map(_is_across, beside)) and not _goes_on(tokens, place) else None
        if token.kind in _THINGS:
            return None
    return None


def _run(tokens: list[Token], at: int) -> tuple[int, int]:
    """The first and the last of the tokens around that only measure, or link what does."""
    first = last = at
    while first > max(0, at - _NEAR) and _measures(tokens[first - 1]):
        first -= 1
    while last + 1 < min(len(tokens), at + _NEAR + 1) and _measures(tokens[last + 1]):
        last += 1
    return first, last


def _measures(token: Token) -> bool:
    linking = token.kind in _SMALL and token.value in _LINKING and not token.text.startswith((",", "."))
    return linking or _is_across(token) or _may_be_circle(token)


def _is_across(token: Token) -> bool:
    wide = token.kind == "KIND" and token.text.casefold() == "wide"
    return wide or (token.kind == "MEASURE" and token.value in _ACROSS)


def _tell_thrown(tokens: list[Token], at: int, told: frozenset[str]) -> None:
    """'it throws 43 mm on APS-C': where a frame is spoken of, no length from the seat to the image."""
    size = at + 1
    lit = size < len(tokens) and (told & _LIT or _has_frame(tokens, size))
    if lit and _may_be_circle(tokens[size]) and not _goes_on(tokens, size):
        _key(tokens, size, at)


def _tell_covered(tokens: list[Token], at: int) -> None:
    """'covers 24 mm' beside a frame; 'covers 35 mm' is that of the film, and 'covers 25 mm lens' one's own gear."""
    size = at + 1
    framed = size < len(tokens) and (_has_frame(tokens, size) or _has_focal(tokens, size))
    if not framed or not _may_be_circle(tokens[size]) or _goes_on(tokens, size):
        return
    of_film = bool(tokens[size].ids) and (tokens[size].numbers[0] > _FILM or not _has_frame(tokens, size))
    if not of_film:
        _key(tokens, size, at)


def _tell_coverage(tokens: list[Token], at: int) -> None:
    """'13.5 mm coverage', 'coverage of 28 mm', where the lens has its focal length told besides."""
    behind = at + 1 + (at + 1 < len(tokens) and tokens[at + 1].value in ("of", "be", "equals"))
    for size in (at - 1, behind):
        fits = 0 <= size < len(tokens) and _may_be_circle(tokens[size]) and not tokens[size].ids
        own = fits and size > at and _goes_on(tokens, size)
        if fits and not own and _has_focal(tokens, size):
            _key(tokens, size, at)
            return


def _may_be_circle(token: Token) -> bool:
    bare = token.kind in SIZES and token.unit in ("", "mm", "cm") and not token.text.isalpha()
    return bare and len(token.numbers) == 1 and _LEAST <= token.numbers[0] <= _MOST


def _goes_on(tokens: list[Token], at: int) -> bool:
    """Whether the number goes on to describe a thing of its own: 'covers 25 mm lenses'."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    across = after is not None and _is_across(after)
    return after is not None and not across and after.kind in (OWN | {"FNUM", "MEASURE"}) - {"BODY", "MOUNT"}


def _has_frame(tokens: list[Token], but: int) -> bool:
    return any(one.kind in _FRAMES for at, one in enumerate(tokens) if at != but)


def _has_focal(tokens: list[Token], but: int) -> bool:
    """Whether a focal length is told by another number than this."""
    others = [one for at, one in enumerate(tokens) if at != but]
    return any(one.kind in _FOCALS or one.is_mm for one in others)


def _key(tokens: list[Token], size: int, *words: int) -> None:
    token = tokens[size]
    if not is_plausible(tokens[words[0]], token.numbers[0]):
        return
    tokens[size] = token.as_("KEYED", value=CIRCLE, unit=token.unit or "mm", ids=())
    for word in words:
        tokens[word] = tokens[word].as_("CUE")
