"""One mount in the place of that of before: 'an X body instead of the E', 'swap the MFT for an L'."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard, hear
from grammar.questions import Question, Thing
from grammar.words.groups import IN_PLACE_OF, SWAPS
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import Token

_NAMES: Final = frozenset(["MOUNT", "LETTER"])
_NOUNS: Final = frozenset(["BODY", "LENS"])
_SET: Final = ("LENGTH", "FNUM", "COMBO", "PIECE")  # beside these an old mount tells of more than whose place is taken
_PAIR: Final = 2
_ARTICLE: Final = "a"
_NO: Final = "no"


def with_stood_in(heard: Heard, before: Question, lexicon: Lexicon) -> Heard:
    """The line with the new mount alone, told to be of what the old one was; the same where nothing is exchanged so."""
    tokens = heard.line.tokens
    named = [n for n, one in enumerate(tokens) if one.kind in _NAMES and not _is_article(tokens, n)]
    if len(named) != _PAIR or not (before.lenses and before.bodies):
        return heard
    sides = [(n, side) for n in named for side in ("body", "lens") if set(tokens[n].ids[:1]) & _ids(before, side)]
    if len(sides) != 1:
        return heard  # neither is of before, or both are
    old, side = sides[0]
    new = next(n for n in named if n != old)
    said = _behind(heard, old, new, side) if _leads(tokens, old, new) else _swapped(tokens, old, new, side)
    if said is None:
        return heard
    said = _beside_others(tokens[new], tokens[old], side, before, lexicon) or said
    again = hear(said, lexicon, before.intent)
    return again.as_typed(heard)


def _beside_others(new: Token, old: Token, side: str, before: Question, lexicon: Lexicon) -> str:
    """'and FD instead of K' after a K and an M42 lens: both that are now; nothing after one alone."""
    things = before.bodies if side == "body" else before.lenses
    rest = [one for one in things if not set(old.ids[:1]) & set(one.ids)]
    if len(things) < _PAIR or not all(one.kind == "mount" and one.id for one in rest):
        return ""
    gone = next((one for one in things if one not in rest), None)
    names = [f"{_focal(gone)}{new.text}", *(f"{_focal(one)}{lexicon.name_for(one.kind, one.id or '')}" for one in rest)]
    return f"{'on' if side == 'body' else 'with'} " + " and ".join(f"{name} {side}" for name in names)


def _focal(thing: Thing | None) -> str:
    focal = thing.focal_length_mm if thing is not None else None
    return f"{focal:g} mm " if focal is not None else ""


def _behind(heard: Heard, old: int, new: int, side: str) -> str:
    """'an X body instead of the E': what is said without whose place is taken."""
    tokens = heard.line.tokens
    first = max(n for n in range(old) if _is_marker(tokens, n, old))
    last = old + (old + 1 < len(tokens) and tokens[old + 1].kind in _NOUNS)
    kept = [one for n, one in enumerate(tokens) if not first <= n <= last]
    headed = new + 1 < len(tokens) and tokens[new + 1].kind in _NOUNS
    words = [f"{one.text} {side}" if one is tokens[new] and not headed else one.text for one in kept]
    return " ".join(words)


def _swapped(tokens: tuple[Token, ...], old: int, new: int, side: str) -> str | None:
    """'swap the MFT for an L': the new one on its own, where nothing else is told beside the two."""
    swaps = any(SWAPS in one.groups for one in tokens[: min(old, new)])
    if not swaps or any(one.kind in _SET for one in tokens):
        return None
    return f"{'on' if side == 'body' else 'with'} {tokens[new].text} {side}"


def _leads(tokens: tuple[Token, ...], old: int, new: int) -> bool:
    """Whether 'instead of', 'in place of' or the like stands before the old one, with nothing but its like between."""
    at = [n for n in range(old) if _is_marker(tokens, n, old)]
    return bool(at) and not at[-1] < new < old and not any(one.kind in _SET for one in tokens[at[-1] : old])


def _is_marker(tokens: tuple[Token, ...], at: int, old: int) -> bool:
    """Whether it is such words, or a 'no' right before the old one: 'no G, its an XCD'."""
    token = tokens[at]
    return (IN_PLACE_OF in token.groups and " " in token.text) or (at == old - 1 and token.text.casefold() == _NO)


def _is_article(tokens: tuple[Token, ...], at: int) -> bool:
    """'a Z', 'a K': no A-mount."""
    behind = tokens[at + 1] if at + 1 < len(tokens) else None
    return tokens[at].text == _ARTICLE and behind is not None and (behind.kind in _NAMES or behind.kind in _NOUNS)


def _ids(before: Question, side: str) -> set[str]:
    things: tuple[Thing, ...] = before.bodies if side == "body" else before.lenses
    return {id_ for one in things for id_ in one.ids[:1]}
