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
_ARTICLES: Final = frozenset(["a", "an", "the", "my", "this", "that"])
_OF_LENS_ALONE: Final = frozenset(["KIND", "MOUNT", "TRAIT", "FNUM", "FORMAT"])  # what tells of a lens by its length


def split(noun: Noun) -> list[Noun]:
    """'M42 EF' without a head or a link is two things that only stand side by side."""
    lengths = [token for token in noun.tails if token.implies[0] == "LENGTH"]
    uncounted = [token for token in noun.mods if token.kind != "COUNT"]
    if noun.heads == "PIECE" and len(lengths) > 1:
        # 'tubes 7mm, 14mm and 28mm' are three
        others = [token for token in noun.tails if token not in lengths]
        own = [
            token.as_("TAIL", implies=("LENGTH",)) for token in noun.mods if token.kind == "LENGTH"
        ]  # 'a 12 mm tube, 20 mm, 36 mm'
        uncounted = [token for token in uncounted if token.kind != "LENGTH"]
        return [
            replace(noun, mods=uncounted, tails=[*others, length], column=noun.column + n)
            for n, length in enumerate([*own, *lengths])
        ]
    powers = each_power(noun)
    if powers:
        return powers
    beside = _lens_beside_piece(noun) or _lens_before_piece(noun)
    if beside is not None:
        return [
            replace(noun, head=None, tails=[], mods=noun.mods[:beside]),
            replace(noun, role="with", join="", mods=noun.mods[beside:], column=noun.column + beside),
        ]
    count = noun.first("COUNT")
    if noun.head is not None and noun.head.value == SPACER and count is not None and noun.first("LENGTH"):
        # 'two 25 mm tubes' are two pieces
        return [replace(noun, mods=uncounted, column=noun.column + n) for n in range(int(count.numbers[0]))]
    numbered = [
        at
        for at, token in enumerate(noun.mods)
        if token.kind in _OF_LENS or _is_lens_of(noun.mods, at) or _leads_mount(noun, at)
    ]
    if noun.heads == "BODY" and numbered:
        # 'AR 57 1.2 body E', '50 f2 full frame body': no body has a focal length, so a lens stands before it
        at = numbered[-1] + 1
        lens = replace(noun, head=None, tails=[], mods=noun.mods[:at])
        return [lens, replace(noun, role="", join="", mods=noun.mods[at:], column=noun.column + at)]
    if (
        noun.heads == "FRAME"
        and (
            noun.first("FNUM", "COMBO", "FOCAL") or any(_is_before_frame(noun.mods, at) for at in range(len(noun.mods)))
        )
        and noun.first("FORMAT")
        and noun.first("LENGTH", "COMBO", "FOCAL")
    ):
        # '10 mm f/1.8 1/2.3 chip' is a lens and a frame
        numbers = [token for token in noun.mods if token.kind in _OF_CHIP]
        rest = [token for token in noun.mods if token.kind not in _OF_CHIP]
        lens = replace(noun, mods=numbers, head=None, tails=[], text=" ".join(token.text for token in numbers))
        return [lens, replace(noun, role="on", mods=rest, join="", column=rest[0].column)]
    mounts = noun.all("MOUNT")
    if len(mounts) > 1 and len(mounts) == len(noun.mods) and noun.heads in _THINGS and _is_plural(noun):
        # 'M42 OM FD lenses' are as many
        return [
            replace(noun, mods=[mount], column=mount.column, text=mount.text, join="and" if n else noun.join)
            for n, mount in enumerate(mounts)
        ]
    if len(mounts) < 2 or noun.head is not None or noun.pair:
        return [noun]
    at = next(index for index, token in enumerate(noun.mods) if token is mounts[1])
    join = "and" if len(mounts) > 2 or noun.join == "and" else ""  # three or more are a list without its commas
    other = replace(noun, role="", mods=noun.mods[at:], column=mounts[1].column, text=mounts[1].text, join=join)
    return [replace(noun, mods=noun.mods[:at], text=mounts[0].text), *split(other)]


def _is_lens_of(mods: list[Token], at: int) -> bool:
    """'85mm APS-C body', '50 mm MFT body': a focal length before the frame or the mount; '35mm F body' is of film."""
    token, behind = mods[at], {one.kind for one in mods[at + 1 :]}
    metric = token.kind == "LENGTH" and token.unit == "mm"
    return metric and ("FORMAT" in behind or ("MOUNT" in behind and not token.ids))


def _is_before_frame(mods: list[Token], at: int) -> bool:
    """'25mm 1" sensor': a focal length; '35mm full frame sensor' is of film."""
    return not mods[at].ids and "FORMAT" in {one.kind for one in mods[at + 1 :]} and _is_lens_of(mods, at)


def _leads_mount(noun: Noun, at: int) -> bool:
    """'58 mm an X body': a length before all else that tells of a body is that of a lens."""
    token, behind = noun.mods[at], noun.mods[at + 1 :]
    return at == 0 and token.kind == "LENGTH" and token.unit == "mm" and any(one.kind == "MOUNT" for one in behind)


def _is_plural(noun: Noun) -> bool:
    return noun.head is not None and is_plural(noun.head)


def _lens_beside_piece(noun: Noun) -> int | None:
    """'80mm enlarger 150mm bellows': where in it the piece begins; no piece has two lengths."""
    lengths = [at for at, token in enumerate(noun.mods) if token.kind == "LENGTH" and token.unit in ("mm", "cm")]
    if noun.heads != "PIECE" or len(lengths) != 2 or lengths[1] != len(noun.mods) - 1:
        return None
    described = [token.kind for token in noun.mods[lengths[0] + 1 : lengths[1]]]
    return lengths[1] if described and set(described) <= _OF_LENS_ALONE else None


def _lens_before_piece(noun: Noun) -> int | None:
    """'my 35 since the new adapter': an article between them begins another description."""
    at = next((n for n, token in enumerate(noun.mods) if token.kind == "FOCAL"), None)
    if at is None or noun.heads != "PIECE" or noun.head is None:
        return None
    behind = noun.mods[at + 1] if at + 1 < len(noun.mods) else noun.head
    end = noun.mods[at].column + len(noun.mods[at].text)
    between = noun.text[end - noun.column : behind.column - noun.column].casefold().split()
    return at + 1 if _ARTICLES & {*between} else None
