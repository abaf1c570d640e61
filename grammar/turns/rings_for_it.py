"""'an X ring for that?' after a lens: the one mount told of the ring is that of the body which the lens shall go on."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard, hear
from grammar.questions import RING, Question
from grammar.things.casting import SPACER, Part
from grammar.turns.answer_told import RIGHT, told_as
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import Token

_FOR: Final = "for"
_ONE: Final = "one"
_NO_RING: Final = ("held-direct", "only-no-ring", "flush")  # mentioned where nothing stands between
_THAT: Final = frozenset(["it", "that", "this", "them", "these", "those"])
_DEALT: Final = "off-topic"  # the cue of shops and sellers
_ONES: Final = (_ONE, "ones")
_BETWEEN: Final = frozenset(["PREP", "AT", "DET", "VERB", "FILLER", "JOIN", "MARK"])  # 'one that is 28', 'one here, 29'
_FEW: Final = 3  # words between the two
# by so much, or such a share, may a ring be off the right one that is offered for it
_SOLD_MM, _SOLD = 2.5, 0.12
_LEAST_LENS_MM: Final = 12.0  # from which a whole length behind an 'and' is rather that of another lens
_LENGTHS: Final = frozenset(["NUMBER", "LENGTH"])


def with_ring_for_it(heard: Heard, before: Question) -> Heard:
    """The text with the body that the ring is for; as it was where the ring tells of no body, or not of a lens."""
    cast = heard.cast
    ring = cast.pieces[0] if len(cast.pieces) == 1 else None
    if ring is None or len(ring.mounts) != 1 or cast.bodies or not before.lenses:
        return heard
    lent = [part for part in cast.lenses if part.by_piece]
    mine = {id_ for lens in before.lenses for id_ in lens.ids}
    if len(lent) != len(cast.lenses) or not ring.is_host or mine & set(ring.mounts[0].ids):
        return heard
    if not _is_for_it(heard) and not _is_on_another(ring, before, cast.hosts):
        return heard
    body = Part("body", ring.noun, mounts=list(ring.mounts), is_host=True)
    return replace(heard, cast=replace(cast, lenses=[], bodies=[body], pieces=[replace(ring, mounts=[])]))


def _is_on_another(ring: Part, before: Question, hosts: frozenset[str]) -> bool:
    """'what does the E ring cost' after a lens on EF: the ring that puts that lens on E."""
    stood = any(body.ids for body in before.bodies) and all(lens.ids for lens in before.lenses)
    return stood and not any(hosts & set(lens.ids[:1]) for lens in before.lenses) and ring.mounts[0].ids[0] in hosts


def _is_for_it(heard: Heard) -> bool:
    said = f" {' '.join(token.text.casefold() for token in heard.line.tokens)} "
    return any(f" {_FOR} {that} " in said for that in _THAT)


def with_ring_meant(heard: Heard, before: Question, lexicon: Lexicon) -> Heard:
    """'with the 5 mm one?' after a lens with no ring, or with its ring left off: the text with that ring."""
    off = {RING, SPACER} & set(before.limits.without) or before.limits.pieces == 0
    if not (off or before.mentions(*_NO_RING)) or before.adapters or not before.bodies:
        return heard
    for sized, one in pairwise(heard.line.tokens):
        metric = sized.kind == "NUMBER" or sized.is_mm
        if metric and sized.text[:1].isdigit() and one.text.casefold() == _ONE:
            text = f"{heard.text[: one.column - 1]}ring{heard.text[one.end :]}"
            again = hear(text, lexicon, before.intent)
            return replace(again, line=replace(again.line, text=heard.text))
    return heard


def ring_of_length(heard: Heard, before: Question) -> str | None:
    """'found one of 27 mm, will it do' after a ring of 27.46 mm: the text with a ring of that length.

    None where 'one' has no length beside it, or one that no ring for the pair has.
    """
    tokens, cast = heard.line.tokens, heard.cast
    named = cast.bodies or cast.pieces or any(part.has_mount_or_kind or part.f_number for part in cast.lenses)
    pair = any(one.ids for one in before.lenses) and any(one.ids for one in before.bodies)
    sizes = [at for at, one in enumerate(tokens) if _is_size(one)]
    told = "thickness" in heard.readings.values  # 'the one I bought is 22.3 mm thick' is as plain as can be
    if named or told or not pair or len(sizes) != 1 or heard.tells("adding") or heard.tells("same"):
        return None
    size, ones = tokens[sizes[0]], [at for at, one in enumerate(tokens) if _is_one(one)]
    if len(ones) != 1 or not _is_beside(tokens, ones[0], sizes[0]) or not _is_nearly_right(tokens, size, before):
        return None
    first, last = sorted((tokens[ones[0]], size), key=lambda one: one.column)
    start, end = first.column - 1, last.end or last.column - 1 + len(last.text)
    article = "" if first is size or (start and tokens[min(ones[0], sizes[0]) - 1].kind == "DET") else "a "
    led = "" if heard.tells(_DEALT) else heard.text[:start]  # 'the seller has'
    return f"{led}{article}{size.numbers[0]:g} mm ring{heard.text[end:]}"


def _is_one(token: Token) -> bool:
    words = token.text.casefold().split()
    return bool(words) and words[-1] in _ONES


def _is_size(token: Token) -> bool:
    return token.kind in _LENGTHS and token.text[:1].isdigit() and token.unit in ("", "mm")


def _is_beside(tokens: tuple[Token, ...], one: int, size: int) -> bool:
    """'a 27 mm one', 'one of 27 mm', 'one here, 27 mm'."""
    between = tokens[min(one, size) + 1 : max(one, size)]
    return (not between and size < one) or (
        size > one and len(between) <= _FEW and all(token.kind in _BETWEEN for token in between)
    )


def _is_nearly_right(tokens: tuple[Token, ...], size: Token, before: Question) -> bool:
    """Whether it is about as long as the ring that was told, and neither that of the lens nor of another lens."""
    length = size.numbers[0]
    turns = [turn for turn in (before, before.prior) if turn is not None and turn.lenses == before.lenses]
    right = [value for turn in turns for value in told_as(turn, RIGHT)]
    own = before.lens is not None and before.lens.focal_length_mm == length
    another = tokens[0].kind == "JOIN" and length >= _LEAST_LENS_MM and length == int(length)
    return not own and not another and any(abs(length - one) <= max(_SOLD_MM, _SOLD * one) for one in right[:1])
