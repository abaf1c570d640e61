"""Descriptions that stand side by side with no word between, each made one of its own: 'M42 EF', 'two 25 mm tubes'."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.things.casting import SPACER
from grammar.things.phrases import Noun
from grammar.things.powers import each_power
from grammar.words.tokens import Token, is_plural

_THINGS: Final = frozenset(["LENS", "BODY"])
_OF_LENS: Final = frozenset(["COMBO", "FNUM", "FOCAL"])  # numbers that no body has
_OF_CHIP: Final = frozenset(["FNUM", "COMBO", "LENGTH", "FOCAL"])  # before a chip: numbers of the lens
_LEAST: Final = 20.0  # mm, of a lens told behind the two mounts that it goes from and to
FILTER: Final = "filter"  # has no length of its own where a mount stands between
_SLOWEST: Final = 22.0  # f-number of any lens wide open; larger numbers told by a second are widths
_THICKEST_RING: Final = 47.0  # mm, between any two mounts
_ARTICLES: Final = frozenset(["a", "an", "the", "my", "this", "that"])
_OF_LENS_ALONE: Final = frozenset(["KIND", "MOUNT", "TRAIT", "FNUM", "FORMAT"])  # what tells of a lens by its length


def split(noun: Noun) -> list[Noun]:
    """'M42 EF' without a head or a link is two things that only stand side by side."""
    return next((found for way in _WAYS if (found := way(noun))), [noun])


def _by_lengths_behind(noun: Noun) -> list[Noun]:
    """'tubes 7mm, 14mm and 28mm' are three; 'a 12 mm tube, 20 mm, 36 mm' too."""
    lengths = [token for token in noun.tails if token.implies[0] == "LENGTH"]
    if noun.heads != "PIECE" or len(lengths) < 2:
        return []
    others = [token for token in noun.tails if token not in lengths]
    own = [token.as_("TAIL", implies=("LENGTH",)) for token in noun.mods if token.kind == "LENGTH"]
    rest = [token for token in noun.mods if token.kind not in ("COUNT", "LENGTH")]
    return [
        replace(noun, mods=rest, tails=[*others, length], column=noun.column + n)
        for n, length in enumerate([*own, *lengths])
    ]


def _by_second_name(noun: Noun) -> list[Noun]:
    """'avocet skiff card': where a second thing begins."""
    second = _second_name(noun)
    if not second:
        return []
    one = replace(noun, head=None, tails=[], mods=noun.mods[:second])
    other = replace(noun, role="", join="", mods=noun.mods[second:], column=noun.mods[second].column)
    return [one, *split(other)]


def _by_lens_behind_pair(noun: Noun) -> list[Noun]:
    """'LTM-E 28mm f2.8': the ring, and the lens behind it."""
    behind = _lens_behind_pair(noun)
    if not behind:
        return []
    rest = [token for token in noun.mods if token not in behind]
    text = " ".join(token.text for token in behind)
    lens = replace(
        noun, role="", join="", head=None, tails=[], pair=[], mods=behind, column=behind[0].column, text=text
    )
    return [replace(noun, mods=rest, text=noun.text.removesuffix(text).rstrip()), lens]


def _by_lens_beside_piece(noun: Noun) -> list[Noun]:
    """'80mm enlarger 150mm bellows', '50 f2 m42 ring': a lens, with a piece."""
    beside = _lens_beside_piece(noun) or _lens_before_piece(noun) or _stop_before_piece(noun)
    if beside is None:
        return []
    return [
        replace(noun, head=None, tails=[], pair=[], mods=noun.mods[:beside]),
        replace(noun, role="with", join="", mods=noun.mods[beside:], column=noun.column + beside),
    ]


def _by_count(noun: Noun) -> list[Noun]:
    """'two 25 mm tubes' are two pieces."""
    count = noun.first("COUNT")
    if noun.head is None or noun.head.value != SPACER or count is None or not noun.first("LENGTH"):
        return []
    uncounted = [token for token in noun.mods if token.kind != "COUNT"]
    return [replace(noun, mods=uncounted, column=noun.column + n) for n in range(int(count.numbers[0]))]


def _by_lens_before_body(noun: Noun) -> list[Noun]:
    """'AR 57 1.2 body E', '50 f2 full frame body': no body has a focal length, so a lens stands before it."""
    numbered = [
        at
        for at, token in enumerate(noun.mods)
        if token.kind in _OF_LENS or _is_lens_of(noun.mods, at) or _leads_mount(noun, at)
    ]
    if noun.heads != "BODY" or not numbered:
        return []
    at = numbered[-1] + 1
    mounts = [token for token in noun.mods[at:] if token.kind == "MOUNT"]
    at += len(mounts) > 1 and noun.mods[at] is mounts[0]  # 'a 25 mm C mount an E body'
    lens = replace(noun, head=None, tails=[], mods=noun.mods[:at])
    return [lens, replace(noun, role="", join="", mods=noun.mods[at:], column=noun.column + at)]


def _by_lens_before_frame(noun: Noun) -> list[Noun]:
    """'10 mm f/1.8 1/2.3 chip' is a lens and a frame."""
    if noun.heads != "FRAME" or not noun.first("FORMAT") or not noun.first("LENGTH", "COMBO", "FOCAL"):
        return []
    places = range(len(noun.mods))
    if not (noun.first("FNUM", "COMBO", "FOCAL") or any(_is_before_frame(noun.mods, at) for at in places)):
        return []
    numbers = [token for token in noun.mods if token.kind in _OF_CHIP]
    rest = [token for token in noun.mods if token.kind not in _OF_CHIP]
    lens = replace(noun, mods=numbers, head=None, tails=[], text=" ".join(token.text for token in numbers))
    return [lens, replace(noun, role="on", mods=rest, join="", column=rest[0].column)]


def _by_mounts_of_several(noun: Noun) -> list[Noun]:
    """'M42 OM FD lenses' are as many."""
    mounts = noun.all("MOUNT")
    if len(mounts) < 2 or len(mounts) != len(noun.mods) or noun.heads not in _THINGS or not _is_plural(noun):
        return []
    return [
        replace(noun, mods=[mount], column=mount.column, text=mount.text, join="and" if n else noun.join)
        for n, mount in enumerate(mounts)
    ]


def _by_mounts(noun: Noun) -> list[Noun]:
    """'M42 EF': a thing each."""
    mounts = noun.all("MOUNT")
    if len(mounts) < 2 or noun.head is not None or noun.pair:
        return []
    at = next(index for index, token in enumerate(noun.mods) if token is mounts[1])
    join = "and" if len(mounts) > 2 or noun.join == "and" else ""  # three or more are a list without its commas
    rear = replace(noun, role="", mods=noun.mods[at:], column=mounts[1].column, text=mounts[1].text, join=join)
    return [replace(noun, mods=noun.mods[:at], text=mounts[0].text), *split(rear)]


# how a description may be of several things; the first that makes any of it is right
_WAYS: Final = (
    _by_lengths_behind, _by_second_name, _by_lens_behind_pair, each_power, _by_lens_beside_piece, _by_count,
    _by_lens_before_body, _by_lens_before_frame, _by_mounts_of_several, _by_mounts,
)  # fmt: skip


def _second_name(noun: Noun) -> int:
    """Where in it a second thing begins: 'avocet skiff card', 'avocet MFT', '25 mm C mount skiff'; 0: nowhere.

    A lens of one's own has its mount, and a body has no numbers of a lens.
    """
    for at, token in enumerate(noun.mods[1:], start=1):
        before = noun.mods[:at]
        lens = any(one.kind == "NAMED" and one.unit == "lens" for one in before)
        body = any(one.kind == "NAMED" and one.unit == "body" for one in before)
        named = token.kind == "NAMED" and token.unit
        numbered = any(one.kind in _OF_CHIP for one in before)
        if (named == "body" and (lens or numbered)) or (named == "lens" and body):
            return at
        if lens and token.kind in ("MOUNT", "FORMAT"):
            return at
    return 0


def _is_lens_of(mods: list[Token], at: int) -> bool:
    """'85mm APS-C body', '50 mm MFT body': a focal length before the frame or the mount; '35mm F body' is of film."""
    token, behind = mods[at], {one.kind for one in mods[at + 1 :]}
    metric = token.is_mm
    return metric and ("FORMAT" in behind or ("MOUNT" in behind and not token.ids))


def _is_before_frame(mods: list[Token], at: int) -> bool:
    """'25mm 1" sensor': a focal length; '35mm full frame sensor' is of film."""
    return not mods[at].ids and "FORMAT" in {one.kind for one in mods[at + 1 :]} and _is_lens_of(mods, at)


def _leads_mount(noun: Noun, at: int) -> bool:
    """'58 mm an X body': a length before all else that tells of a body is that of a lens."""
    token, behind = noun.mods[at], noun.mods[at + 1 :]
    return at == 0 and token.is_mm and any(one.kind == "MOUNT" for one in behind)


def _is_plural(noun: Noun) -> bool:
    return noun.head is not None and is_plural(noun.head)


def _lens_behind_pair(noun: Noun) -> list[Token]:
    """'LTM-E 28mm f2.8', 'M42-E 50mm': a whole length behind a pair, as long as a lens, and the stop behind that."""
    if not noun.pair or noun.head is not None or noun.tails:
        return []
    end = max(token.column for token in noun.pair)
    behind = [token for token in noun.mods if token.column > end and token.kind in ("LENGTH", *_OF_LENS)]
    first = behind[0] if behind else None
    if first is None or first.kind == "FNUM":
        return []
    whole = first.numbers[0] == int(first.numbers[0]) and "." not in first.text
    return behind if first.kind != "LENGTH" or (first.unit == "mm" and whole and first.numbers[0] >= _LEAST) else []


def _lens_beside_piece(noun: Noun) -> int | None:
    """'80mm enlarger 150mm bellows': where in it the piece begins; no piece has two lengths."""
    lengths = [at for at, token in enumerate(noun.mods) if token.kind == "LENGTH" and token.unit in ("mm", "cm")]
    if noun.heads != "PIECE" or len(lengths) != 2 or lengths[1] != len(noun.mods) - 1:
        return None
    described = [token.kind for token in noun.mods[lengths[0] + 1 : lengths[1]]]
    return lengths[1] if described and set(described) <= _OF_LENS_ALONE else None


def _stop_before_piece(noun: Noun) -> int | None:
    """'50 f2 m42 ring', 'm42 50/2 E ring': no piece has a focal length with a stop, so a lens stands before it.

    A mount behind them is left to the piece; the lens has it from there where it has no other. A pair is the piece's.
    """
    if noun.heads != "PIECE":
        return None
    for at, token in enumerate(noun.mods):
        lengths = [n for n in (at - 1, at + 1) if 0 <= n < len(noun.mods) and _is_focal(noun.mods[n], before=n < at)]
        if token.kind == "FNUM" and lengths:
            return max(at, *lengths[:1]) + 1
        if token.kind == "COMBO" and len(token.numbers) > 1 and token.numbers[1] <= _SLOWEST < token.numbers[0]:
            return at + 1
    first = noun.mods[0] if noun.mods else None
    if first is None or first.kind != "LENGTH" or first.unit != "mm" or not (len(noun.mods) > 1 or noun.pair):
        return None
    return 1 if _is_too_long(noun, first.numbers[0]) else None


def _is_too_long(noun: Noun, length: float) -> bool:
    """'50mm m42 ring', '50mm m42 tube 10mm': a length that the piece has not, or that it has not of two."""
    tail = next((token.numbers[0] for token in noun.tails if token.implies[0] == "LENGTH"), None)
    if tail is not None:
        return tail < length and length >= _LEAST and noun.first("MOUNT") is not None
    value = noun.head.value if noun.head is not None else ""
    return value == FILTER or (value == "adapter" and length > _THICKEST_RING)


def _is_focal(token: Token, before: bool) -> bool:
    """A length behind the stop may be that of the piece: 'f2 50mm tube'."""
    return token.kind == "FOCAL" or (before and token.kind == "LENGTH" and token.unit in ("mm", "cm", "in"))


def _names_lens(token: Token) -> bool:
    """'manual lens', 'old lens': a trait that is told with the lens it is of."""
    return token.text.casefold().endswith(("lens", "lenses"))


def _lens_before_piece(noun: Noun) -> int | None:
    """'my 35 since the new adapter', '135 manual lens mft ring': an article between begins another, a lens ends one."""
    at = next((n for n, token in enumerate(noun.mods) if token.kind in ("FOCAL", "COMBO") or token.is_mm), None)
    if at is None or noun.heads != "PIECE" or noun.head is None:
        return None
    ends = [n + 1 for n, token in enumerate(noun.mods) if n > at and token.kind == "TRAIT" and _names_lens(token)]
    if ends or noun.mods[at].kind != "FOCAL":
        return ends[0] if ends else None
    behind = noun.mods[at + 1] if at + 1 < len(noun.mods) else noun.head
    end = noun.mods[at].column + len(noun.mods[at].text)
    between = noun.text[end - noun.column : behind.column - noun.column].casefold().split()
    return at + 1 if _ARTICLES & {*between} else None
