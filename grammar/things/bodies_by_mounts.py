"""Several bodies told by a row of their mounts: 'three cameras in the club, mounts EF, L and E'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token, is_plural

_BETWEEN: Final = frozenset(["VERB", "PREP", "DET", "FILLER", "JOIN", "MARK"])
_LISTING: Final = frozenset(["JOIN", "DET"])
_OF_OTHERS: Final = frozenset(["LENS", "PIECE", "BODY", "KIND", "LINK"])
_SIZES: Final = frozenset(["NUMBER", "LENGTH", "FOCAL", "COMBO"])  # behind the mount of a lens
_FAR: Final = 7  # tokens from the cameras to the word for their mounts


def with_bodies_by_mounts(tokens: list[Token]) -> list[Token]:
    """Each mount of the row with the word for a body behind it."""
    for at, token in enumerate(tokens):
        if token.kind != "BODY" or token.ids or not is_plural(token) or (at and tokens[at - 1].kind == "MOUNT"):
            continue
        word = at + 1
        while word < len(tokens) and tokens[word].kind in _BETWEEN:
            word += 1
        if word >= len(tokens) or word - at > _FAR or tokens[word].kind != "MOUNTWORD" or not is_plural(tokens[word]):
            continue
        places: list[int] = []
        end = word + 1
        while end < len(tokens) and (tokens[end].kind in ("MOUNT", "MARK") or tokens[end].kind in _LISTING):
            places.extend([end] if tokens[end].kind == "MOUNT" else [])
            end += 1
        if places and end == places[-1] + 1 < len(tokens) and tokens[end].kind in _SIZES:
            places.pop()  # 'mounts Z and X and an M42 50': the last is a lens
        if len(places) < 2 or (end < len(tokens) and tokens[end].kind in _OF_OTHERS):
            continue
        out: list[Token] = []
        for place, one in enumerate(tokens):
            out.extend([] if place == word else [one])
            out.extend([token] if place in places else [])
        return out
    return tokens
