"""A ring that stands between a lens and a body: how long it is, and whether it is still that pair that is spoken of."""

from __future__ import annotations

from typing import Final

from grammar.questions import Question, Thing

CUP: Final = "recessed"  # the kind of piece whose seat lies inside the body's
ASKS_VERDICT: Final = "asks-verdict"  # phrases that are mentioned
ASKS_CLOSE: Final = "asks-close"


def length_of(piece: Thing) -> float:
    """How long a piece is that is described by its length, in mm; 0 where none was said."""
    return (piece.thickness_mm or (0.0,))[0]


def are_named(things: tuple[Thing, ...]) -> bool:
    """Whether any of them is known by a mount or a name."""
    return any(one.ids for one in things)


def is_other_body(got: Question, before: Question) -> bool:
    """Whether another body is named than before, on which other rings stand."""
    told = [one.ids for one in got.bodies if one.ids]
    return bool(told) and told != [one.ids for one in before.bodies]


def is_same_body(got: Question, before: Question) -> bool:
    """Whether no body is told, or just that of before."""
    return [one.ids for one in got.bodies] in ([], [one.ids for one in before.bodies])
