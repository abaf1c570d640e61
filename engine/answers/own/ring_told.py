"""'the ring measures 27.3' after a lens on a body: beside what is written, what comes of that ring between the two."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.answer import Answer, Line
from engine.base.compact import replace
from grammar.kinds import CHAIN, FOCUS_VERDICT
from grammar.questions import OFF, Question, Thing
from grammar.turns.whom import known_with

_MM: Final = re.compile(r"(\d+(?:\.\d+)?) mm")
_MOST_LINES: Final = 4
_ENDS: Final = ("front", "rear")  # the two mounts of a ring
WITH_IT: Final = "With it between the two:"


def judged_with(taught: Question, before: Question | None, unwritten: bool = False) -> Question | None:
    """The lens and body of before with the ring that is told; None where no ring is, or not of those two.

    `unwritten`: nothing can be written; then a lens that is told comes to those of before.
    """
    told = taught.taught
    if unwritten and told is not None and told.section == "lenses" and not told.name:
        return _with_lens(taught, before)
    if told is None or before is None or told.section != "adapters" or told.id or told.name:
        return None
    fields = dict(told.fields)
    thick = _MM.fullmatch(fields.get("thickness", ""))
    paired = any(lens.ids for lens in before.lenses) and any(body.ids for body in before.bodies)
    ends = {end: fields[end] for end in _ENDS if end in fields}
    apart = ends and not (_is_of(ends.get("front"), before.lenses) and _is_of(ends.get("rear"), before.bodies))
    if thick is None or not paired or apart or taught.intent != "teach":
        return None
    length = float(thick[1])
    ring = Thing(words=f"{length:g} mm ring", thickness_mm=(length, length), piece="adapter")
    values = before.rest("thickness", OFF)
    return before.with_(
        text=taught.text, intent=FOCUS_VERDICT, adapters=(ring,), values=values, topic=None, number=None,
        wants="", instead=(), follows=True,
    )  # fmt: skip


def _is_of(mount: str | None, things: tuple[Thing, ...]) -> bool:
    return any(mount in thing.ids for thing in things)


def _with_lens(taught: Question, before: Question | None) -> Question | None:
    """'I also have an MD 28/2.8' after other lenses: how all of them are put on."""
    new = taught.lenses[0] if len(taught.lenses) == 1 else None
    if new is None or before is None or not before.lenses or taught.intent != "teach":
        return None
    if not new.ids or new in before.lenses or not all(one.ids for one in before.lenses):
        return None
    lenses = (*before.lenses, new)
    return before.with_(
        text=taught.text, intent=CHAIN, lenses=lenses, known=known_with(before.known or before.lenses, lenses),
        adapters=(), values=(), topic=None, number=None, wants="", instead=(), follows=True, f_number=None,
    )  # fmt: skip


def beside(proposed: Answer, judged: Answer) -> Answer:
    """What comes of the ring, in its first lines, and then the proposal."""
    lines = tuple(replace(line, depth=line.depth + 1) for line in judged.lines[:_MOST_LINES])
    return replace(proposed, lines=(Line("text", WITH_IT), *lines, *proposed.lines))
