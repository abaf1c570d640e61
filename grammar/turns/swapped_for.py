"""A number of before in whose place another is put, by words on both sides: 'swap the 50 for a 35', '8 rather than 4'.

What the first was of, the second is of.
"""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard, hear
from grammar.intents import Weighed
from grammar.questions import Question
from grammar.things.casting import SPACER
from grammar.turns.number_roles import LENS, RING, ROLES, STOP, TUBE, length_of, numbers_told
from grammar.words.groups import RATHER_THAN, SWAPS_FOR
from grammar.words.lexicon import Lexicon

_OLD: Final = r"(?:the |my |that |a |an )?f?/?(\d*\.?\d+) ?(?:mm)?"
_NEW: Final = r"(?:the |my |that |a |an )?f?/?(\d*\.?\d+) ?(?:mm)?"
_NOUN: Final = r"(?: (?:lens|ring|tube|spacer|one))?"
_OF: Final = frozenset([LENS, STOP, RING])


def with_swapped(heard: Heard, before: Question, lexicon: Lexicon) -> Heard:
    """The line with what the new number is of written out; the same where the old one was told of nothing such."""
    groups = lexicon.words.groups
    swaps = rf"\b{groups.one_of(SWAPS_FOR)}(?: out)? {_OLD}{_NOUN} (?:for|with|by|to|against) {_NEW}{_NOUN}(?![\w.])"
    found = re.search(swaps, heard.text, re.IGNORECASE)
    old, new = (found[1], found[2]) if found is not None else ("", "")
    if found is None:
        instead = rf"(?<![\w./]){_NEW}{_NOUN} {groups.one_of(RATHER_THAN)} {_OLD}{_NOUN}(?![\w.])"
        found = re.search(instead, heard.text, re.IGNORECASE)
        alone = found is not None and found[0] == heard.text.strip(" .,!?")  # that is read as a number alone
        old, new = (found[2], found[1]) if found is not None and not alone else ("", "")
    says = _says(float(old), float(new), before) if old and new else None
    if found is None or says is None:
        return heard
    text = f"{heard.text[: found.start()]}{says}{heard.text[found.end() :]}"
    again = hear(text, lexicon, before.intent).as_typed(heard)
    return again if "?" in heard.text else replace(again, weighed=Weighed((), {}))


def _says(old: float, new: float, before: Question) -> str | None:
    """The new number written out as what the old one is of; None where that is open, or the tubes' own matter."""
    if any(one.piece == SPACER and length_of(one) == (old, old) for one in before.adapters):
        return None
    told = (*numbers_told(before), *((LENS, lens.focal_length_mm) for lens in before.lenses[1:]))
    names = {RING if name == TUBE else name for name, value in told if value == old and (name in _OF or name == TUBE)}
    if len(names) != 1 or old == new:
        return None
    name = names.pop()
    if name == RING:
        return f"{new:g} mm ring"
    return next((row.says.format(f"{new:g}") for row in ROLES if row.name == name and row.fits(new)), None)
