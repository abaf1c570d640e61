"""Whether a follow-up asks which of two mounts a lens has that is being identified."""

from __future__ import annotations

from grammar.hearing import Heard
from grammar.kinds import IDENTIFY_MOUNT
from grammar.questions import Question


def chooses_between(heard: Heard, before: Question) -> bool:
    """'does it have to be C or can it be CS' while a lens is identified: it may have either, and none is a body."""
    parts = (*heard.cast.lenses, *heard.cast.bodies)
    either = any(token.kind == "JOIN" and token.value == "or" for token in heard.line.tokens)
    mounts = len(parts) > 1 and all(part.has_mount and not part.focal for part in parts)
    placed = any(part.noun.role in ("on", "to") for part in parts)
    return before.intent == IDENTIFY_MOUNT and not before.bodies and either and mounts and not placed
