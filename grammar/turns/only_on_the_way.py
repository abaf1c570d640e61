"""Whether what seems to teach one's own gear is only said on the way, of what is talked about."""

from __future__ import annotations

from typing import Final

from grammar.hearing import hear
from grammar.kinds import BUY_PLAN, IDENTIFY_MOUNT, PICTURED
from grammar.questions import Question, Taught, Unread
from grammar.turns.said_plainly import said_plainly
from grammar.words.lexicon import Lexicon

_REGISTER: Final = "register"  # key of the gear file
_OWN: Final = frozenset(["lens", "body"])  # kinds of things that stand in the gear file


def is_only_said(told: Question | Unread, text: str, lexicon: Lexicon, before: Question | None) -> bool:
    """Whether nothing of it is to be kept, or forgotten."""
    return _only_described(told, before) or _only_measured(told, before) or _only_left_out(told, text, lexicon, before)


def _only_described(told: Question | Unread, before: Question | None) -> bool:
    """'I have an E-mount camera': a thing without a name is talked about, not kept, where it is what was asked for.

    So is a body of which too little is told for the gear file.
    """
    if isinstance(told, Unread) or told.intent != "teach" or told.taught is None:
        return False
    taught = told.taught
    if taught.id or taught.name:
        return False
    if before is not None and _is_of_the_plan(taught, before):
        return True
    if taught.section == "bodies":
        keys = {key for key, _ in taught.fields}
        return "format" not in keys or (before is not None and not any(body.ids for body in before.bodies))
    pictured = before is not None and before.intent in PICTURED and before.taught is None
    if pictured and "image_circle" in dict(taught.fields):
        return True  # 'image circle i measured 13.5' after whether a lens covers
    if taught.section != "lenses" or before is None or not any(body.ids for body in before.bodies):
        return False
    if before.taught is None and _REGISTER in dict(taught.fields):
        return True  # 'its register is really 45.2' of a lens that only stands in the question before
    if before.taught is None and not any(one.kind in _OWN for one in (*before.lenses, *before.bodies)):
        return True  # 'i have another one, 6 mm f/1.2 CS' after a lens on a body that are only talked about
    return not any(lens.ids for lens in before.lenses)


def _is_of_the_plan(taught: Taught, before: Question) -> bool:
    """'I also have a K lens' in a plan: told of what is bought for, and kept only where it has a name."""
    keys = {key for key, _ in taught.fields}
    return before.intent == BUY_PLAN and taught.section == "lenses" and keys <= {"mount", "focal_length", "f_number"}


def _only_measured(told: Question | Unread, before: Question | None) -> bool:
    """'register comes to 17.5' of a lens that is identified: a measure of it, and nothing of one's own to be kept."""
    measured = isinstance(told, Unread) and any(sign.isdigit() for sign in told.text)
    return measured and before is not None and before.intent == IDENTIFY_MOUNT


def _only_left_out(told: Question | Unread, text: str, lexicon: Lexicon, before: Question | None) -> bool:
    """'forget the Z body' of several that were asked about: nothing of one's own that is to be forgotten."""
    if not isinstance(told, Unread) or before is None:
        return False
    heard = hear(text, lexicon, before.intent)
    return said_plainly(heard, before, lexicon) is not heard
