"""What was seen of an unmarked lens in the turns before, which still holds when more of it is told or asked."""

from __future__ import annotations

from typing import Final

from grammar.kinds import IDENTIFY_MOUNT
from grammar.questions import Question
from grammar.turns.sticking import is_open

_SEEN: Final = ("seen-", "coupled-", "no-screw", "no-thread", "no-focus-ring")  # how keys begin of what is seen
_ROUGHLY: Final = "roughly"  # of the width of a thread, as long as that is not measured anew
_COUPLED: Final = ("coupled-", "no-screw", "no-thread")  # of which only what was said last holds


def with_seen_kept(got: Question, before: Question) -> Question:
    """'the ring is on the lens' after 'three lugs, a lever': the phrases of what was seen before still tell."""
    if not (got.follows and before.intent == IDENTIFY_MOUNT):
        return got
    if got.intent != IDENTIFY_MOUNT and any(lens.ids for lens in got.lenses):
        return got  # which mount it is was told meanwhile
    anew = any(one.key.startswith(_COUPLED) for one in got.mentioned)
    said = f"{before.text} {before.asked}"
    thread = before.said("thread")
    held = (*_SEEN, _ROUGHLY) if thread is not None and (got.said("thread") or "").startswith(thread) else _SEEN
    kept = (one for one in before.mentioned if one.key.startswith(held) and one.at < len(said))
    phrases = dict.fromkeys(said[one.at : one.end] for one in kept if not (anew and one.key.startswith(_COUPLED)))
    if got.intent != IDENTIFY_MOUNT:
        return got.with_(asked="; ".join(phrases))  # 'will that go on E': what may be it is of that coupling
    pieces = tuple(piece for piece in got.adapters if not is_open(piece))  # 'the aperture ring' is of the lens
    return got.with_(asked="; ".join(phrases), adapters=pieces)
