"""Small words that join or measure: 'and a 75 mm f/2' begins another lens, 'three metres' is a length."""

from __future__ import annotations

from typing import Final

from engine.base.units import MM_PER_FOOT, MM_PER_INCH
from grammar.things.phrases import TOWARDS
from grammar.things.standins import STANDIN
from grammar.words.groups import (
    BEARS,
    EXCHANGES,
    FOCUSING,
    LIKE_THAT,
    PUT_AWAY,
    SCREW_CRESTS,
    THERE_IS,
    WHICH_ONE,
    WITHOUT,
)
from grammar.words.tokens import Token

_OF_RINGS: Final = frozenset(["PIECE", "ADAPTER"])
_FORGOTTEN: Final = 4  # tokens at most from the word to the piece
_DESCRIBING: Final = frozenset(
    ["BODY", "MOUNT", "KIND", "LETTER", "LENGTH", "FNUM", "COMBO", "FORMAT", "TRAIT", "RANGE"]
)
# units that are written out behind a number in words, in mm; and the short forms of those
_UNITS: Final = {
    "mm": 1.0, "millimetre": 1.0, "millimetres": 1.0, "millimeter": 1.0, "millimeters": 1.0, "cm": 10.0,
    "centimetre": 10.0, "centimetres": 10.0, "centimeter": 10.0, "centimeters": 10.0, "m": 1000.0, "metre": 1000.0,
    "metres": 1000.0, "meter": 1000.0, "meters": 1000.0, "foot": MM_PER_FOOT, "feet": MM_PER_FOOT,
    "inch": MM_PER_INCH, "inches": MM_PER_INCH,
}  # fmt: skip
_SIZED: Final = frozenset(["DET", "LENGTH", "NUMBER"])  # before the piece: 'the 5 mm ring'
_NONE: Final = "no"
_ANY_ONE: Final = frozenset(["one", "one's", "ones"])
_BE: Final = "be"
_AS: Final = frozenset(["as", "like"])  # before 'a mount', where something else serves as one
_A_MOUNT: Final = "a mount"  # as one writes the mount A in a hurry, and any mount
_AND_A: Final = frozenset(["and a", "plus a"])
_OF_LENS: Final = frozenset(["LENS", "LENGTH", "COMBO", "KIND", "RANGE"])
_ASKING: Final = frozenset(["CUE"])
_LED: Final = frozenset(["MOUNT", "KIND", "LENGTH", "COMBO", "TRAIT"])
# what a lens is told by in two words, in either order
_TOLD_SHORT: Final = (
    ["MOUNT", "NUMBER"],
    ["LETTER", "NUMBER"],
    ["LENGTH", "MOUNT"],
    ["LENGTH", "LETTER"],
    ["COMBO", "MOUNT"],
)
_FIGURES: Final = frozenset(["NUMBER", "FNUM", "COMBO", "LENGTH"])
_ONE: Final = ("a ", "an ")  # how a length of one unit begins that stands for the unit alone: 'of a mm'
_UNIT_OF: Final = {1.0: "mm", 10.0: "cm", 1000.0: "m", MM_PER_FOOT: "ft", MM_PER_INCH: "in"}


def _plain_camera(tokens: tuple[Token, ...]) -> tuple[Token, ...]:
    """'from an autofocus rangefinder camera': how such a camera focuses tells no more of it."""
    return tuple(
        token.as_("FILLER")
        if 0 < at < len(tokens) - 1
        and token.kind == "CUE"
        and FOCUSING in token.groups
        and tokens[at - 1].kind in ("PREP", "DET", "LETTER")
        and tokens[at + 1].kind in ("KIND", "BODY")
        else token
        for at, token in enumerate(tokens)
    )


def _still_there(tokens: tuple[Token, ...]) -> tuple[Token, ...]:
    """'forgot the 5 mm ring was still in': what is forgotten to be there is there."""
    out = list(tokens)
    for at, token in enumerate(tokens):
        piece = next((n for n in range(at + 1, min(at + _FORGOTTEN, len(tokens))) if tokens[n].kind in _OF_RINGS), None)
        after = tokens[piece + 1] if piece is not None and piece + 1 < len(tokens) else None
        without = token.kind == "PREP" and token.value == "without"
        if without and after is not None and after.kind == "VERB" and after.value == "be":
            out[at] = token.as_("CUE")
    return tuple(out)


def _missing(tokens: tuple[Token, ...]) -> tuple[Token, ...]:
    """'with the 5 mm ring missing': what is there no longer, told behind it."""
    out = list(tokens)
    for at, token in enumerate(tokens[:-2]):
        behind = [n for n in range(at + 1, min(at + _FORGOTTEN, len(tokens))) if tokens[n].kind not in _SIZED]
        if (token.kind, token.value) != ("PREP", "with") or len(behind) < 2 or tokens[behind[0]].kind not in _OF_RINGS:
            continue
        gone = behind[0] + 1
        if behind[1] == gone and PUT_AWAY in tokens[gone].groups and tokens[gone].kind != "PREP":
            out[at], out[gone] = token.as_("PREP", value="without"), tokens[gone].as_("FILLER", value="")
    return tuple(out)


def _left_out(tokens: tuple[Token, ...]) -> tuple[Token, ...]:
    """'with no 5 mm ring': a piece told by its length that is none is left out, and not there."""
    out = list(tokens)
    for at, token in enumerate(tokens):
        asked = at > 0 and THERE_IS in tokens[at - 1].groups
        kinds = [one.kind for one in tokens[at + 1 : at + 3]]
        sized = kinds[:1] == ["LENGTH"] and kinds[1:] and kinds[1] in _OF_RINGS
        named = kinds[:1] == ["ADAPTER"] and tokens[at + 1].text[:1].isdigit()
        if token.kind == "CUE" and WITHOUT in token.groups and (sized or named) and not asked:
            out[at] = token.as_("PREP", value="without")
            if at and tokens[at - 1].kind in ("PREP", "JOIN"):
                out[at - 1] = tokens[at - 1].as_("FILLER")
    return tuple(out)


def with_small_words(tokens: tuple[Token, ...]) -> tuple[Token, ...]:
    """The tokens with 'and a' before another lens as a join, and lengths in words as lengths."""
    out: list[Token] = []
    skip = False
    tokens = _counted_over(_plain_camera(_articles(_vague(_left_out(_missing(_still_there(tokens)))))))
    for at, token in enumerate(tokens):
        if skip:
            skip = False  # the unit of a length in words
            continue
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        if token.kind == "NUMBER" and token.text.casefold() in _ANY_ONE and at and WHICH_ONE in tokens[at - 1].groups:
            out.append(token.as_("CUE"))  # 'which one is off' tells no number
            continue
        if token.kind == "MEASURE" and at and tokens[at - 1].text.casefold() == _NONE:
            out.append(token.as_("FILLER", value=""))  # 'no flange, just a 12 mm thread' tells none
            continue
        length = _in_words(token, after)
        if length is not None:
            out.append(length)
            skip = True
            continue
        if token.kind == "PREP" and token.value == "to" and after is not None and after.text.casefold() == _BE:
            out.append(token.as_("CUE"))  # 'does it have to be C': nothing is put on it
            continue
        if BEARS in token.groups and at and tokens[at - 1].kind in _OF_LENS and after is not None:
            named = after.kind == "MOUNT" and not any(one.kind in _ASKING for one in tokens[:at])
            out.append(token.as_("DET", value="") if named else token)  # '6mm lens says CS': the mount is the lens's
            continue
        if token.kind == "ORDINAL" and _begins_another(tokens, at):
            out.append(token.as_("FILLER"))
            continue
        if BEARS in token.groups and after is not None and _is_engraved(tokens, at):
            out.append(token.as_("VERB", value=_BE))  # 'another one, 6mm, says CS on it': told of that
            continue
        if token.kind == "FILLER" and LIKE_THAT in token.groups and after is not None and after.kind in _FIGURES:
            out.append(token.as_("CUE"))  # 'on m4/3 blur like 1.4': what follows is of another
            continue
        if (
            token.kind == "PREP"
            and token.text.casefold() in _AND_A
            and (_begins_a_lens(tokens, at + 1) or _is_another(tokens, at))
        ):
            out.append(token.as_("JOIN", value="and"))
        else:
            out.append(token)
    return tuple(out)


def _begins_another(tokens: tuple[Token, ...], at: int) -> bool:
    """'second one, a 10x microscope objective': one thing more is told, and none of a list is picked."""
    if any(one.kind not in ("JOIN", "FILLER", "DET") for one in tokens[:at]):
        return False
    behind = tokens[at + 1 : at + 3]
    return len(behind) == 2 and behind[0].text == "," and behind[1].text.casefold() in ("a", "an")


def _is_engraved(tokens: tuple[Token, ...], at: int) -> bool:
    """Whether a mount, or a letter that stands for one, is what is read on a lens: 'the other says D on it'."""
    if any(one.kind in _ASKING for one in tokens[:at]):
        return False
    named, behind = tokens[at + 1], tokens[at + 2] if at + 2 < len(tokens) else None
    ends = behind is None or behind.kind in ("STOP", "JOIN", "MEASURE") or behind.value == "on"
    letter = named.kind == "LETTER" and named.text not in ("a", "i", "I") and ends
    return letter or (named.kind == "MOUNT" and at > 0 and not any(one.kind == "BODY" for one in tokens[:at]))


def _counted_over(tokens: tuple[Token, ...]) -> tuple[Token, ...]:
    """'8 threads in 1/4 inch': what crests are counted over is a length, and no size of film."""
    return tuple(
        token.as_("LENGTH", ids=(), implies=())
        if token.kind == "LENGTH"
        and token.unit == "in"
        and any(SCREW_CRESTS in one.groups for one in tokens[max(0, at - _FORGOTTEN) : at])
        else token
        for at, token in enumerate(tokens)
    )


def _articles(tokens: tuple[Token, ...]) -> tuple[Token, ...]:
    """'a projector lens and one MD 45': a 'one' that leads a description stands for no number.

    Nor is 'a mount' of 'a mount swap' named A, nor that of 'a lens without a mount'.
    """
    out = list(tokens)
    for at, token in enumerate(tokens[:-1]):
        before, after = tokens[at - 1] if at else None, tokens[at + 1]
        leads = before is None or before.kind in ("JOIN", "STOP") or before.text.casefold() in _AND_A
        described = after.kind in _LED or (after.kind == "NUMBER" and after.text.isdecimal())
        if STANDIN in token.implies and token.kind == "NUMBER" and leads and described:
            out[at] = token.as_("DET", implies=())
        any_mount = token.kind == "MOUNT" and token.text == _A_MOUNT
        if any_mount and before is not None and (before.kind, before.value) == ("PREP", "without"):
            out[at - 1 : at + 1] = [before.as_("FILLER"), token.as_("FILLER", value="", ids=())]
        elif any_mount and (EXCHANGES in after.groups or (before is not None and before.text.casefold() in _AS)):
            out[at] = token.as_("FILLER", value="", ids=())
    return tuple(out)


def _vague(tokens: tuple[Token, ...]) -> tuple[Token, ...]:
    """'0.something of a mm', 'some fraction of a mm': no length is told; such words become filler."""
    out = list(tokens)
    for at, token in enumerate(tokens):
        row = tokens[at : at + 3]
        begun = [one.kind for one in row[:2]] == ["NUMBER", "STOP"] and len(row) > 2 and row[2].text.isalpha()
        if begun and row[2].column == token.column + len(token.text) + 1:
            out[at : at + 3] = [one.as_("FILLER") for one in row]
        before = tokens[at - 1] if at else None
        part = before is not None and before.kind == "PREP" and before.value == "of"
        if part and token.kind == "LENGTH" and token.text.casefold().startswith(_ONE):
            out[at] = token.as_("FILLER")
    return tuple(out)


def _in_words(token: Token, unit: Token | None) -> Token | None:
    """'three metres' as a length in mm; None for anything else, as the mount of 'one M adapter'."""
    factor = _UNITS.get(unit.text.casefold()) if unit is not None else None
    if token.kind != "NUMBER" or not token.text.isalpha() or factor is None or unit is None or unit.text == "M":
        return None
    return token.as_(
        "LENGTH", numbers=(token.numbers[0] * factor,), unit=_UNIT_OF[factor], text=f"{token.text} {unit.text}"
    )


def _begins_a_lens(tokens: tuple[Token, ...], at: int) -> bool:
    """Whether what follows has the numbers of a lens, or is described up to a lens with nothing else between."""
    kinds = [token.kind for token in tokens[at : at + 2]]
    if kinds == ["LENGTH", "FNUM"] or kinds[:1] == ["COMBO"]:
        return True
    for token in tokens[at:]:
        if token.kind == "LENS" or (token.kind == "KIND" and _ends_lens(token)):
            return True
        if STANDIN in token.implies:
            return True
        if token.kind not in _DESCRIBING and token.kind not in ("FILLER", "DET", "UNKNOWN"):
            return False
    return False


def _ends_lens(token: Token) -> bool:
    return token.text.casefold().endswith(("lens", "lenses"))


def _is_another(tokens: tuple[Token, ...], at: int) -> bool:
    """'MDs and a K on L', 'a 10 and a 16 tube': between two mounts, or two numbers, that are of what follows."""
    kinds = [token.kind for token in tokens[at - 1 : at + 3]] if at else []
    if kinds in (["NUMBER", "PREP", "NUMBER", "PIECE"], ["LENGTH", "PREP", "LENGTH", "PIECE"]):
        return True  # 'on a 10 and a 16 tube'
    if kinds[:2] == ["LENS", "PREP"] or (kinds[:2] == ["KIND", "PREP"] and _ends_lens(tokens[at - 1])):
        told = sorted(kinds[2:])  # 'an unmarked lens and a 135 M42', 'a projector lens and an M42 58'
        combined = [one.kind for one in tokens[at + 1 : at + 2]] == ["COMBO"]
        return told in _TOLD_SHORT or combined or kinds[2:] == ["MOUNT", "LENS"]
    led = at + 2 < len(tokens) and tokens[at + 2].value in TOWARDS
    return led and kinds[:1] == ["MOUNT"] and kinds[2:] in (["MOUNT", "PREP"], ["LETTER", "PREP"])
