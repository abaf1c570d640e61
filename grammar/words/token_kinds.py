"""Which kinds of tokens, units and joining words readings ask for together: what may be a length, what is a choice."""

from __future__ import annotations

from typing import Final

LENGTHS: Final = frozenset(["NUMBER", "LENGTH"])  # kinds of tokens that may be a length
SIZES: Final = LENGTHS | {"FOCAL"}  # or a focal length
CLAUSE_ENDS: Final = frozenset(["JOIN", "STOP", "MARK"])
HEADS: Final = frozenset(["LENS", "BODY", "PIECE", "FRAME", "MOUNTWORD"])  # what a description is of
METRES: Final = frozenset(["m", "ft"])  # units of a distance
CHOICES: Final = frozenset(["or", "vs"])  # what joins things of which one is to be chosen
