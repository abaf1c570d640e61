"""'the ring measures 27.3' after a lens on a body: beside what is written, what comes of that ring between the two."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.answer import Answer, Line
from engine.base.compact import replace
from grammar.kinds import FOCUS_VERDICT
from grammar.questions import OFF, Question, Thing

_MM: Final = re.compile(r"(\d+(?:\.\d+)?) mm")
_MOST_LINES: Final = 4
WITH_IT: Final = "With it between the two:"


def judged_with(taught: Question, before: Question | None) -> Question | None:
    """The lens and body of before with the ring that is told; None where no ring is, or not of those two."""
    told = taught.taught
    if told is None or before is None or told.section != "adapters" or told.id or told.name:
        return None
    fields = dict(told.fields)
    thick = _MM.fullmatch(fields.get("thickness", ""))
    paired = any(lens.ids for lens in before.lenses) and any(body.ids for body in before.bodies)
    if thick is None or not paired or fields.keys() & {"front", "rear"} or taught.intent != "teach":
        return None
    length = float(thick[1])
    ring = Thing(words=f"{length:g} mm ring", thickness_mm=(length, length), piece="adapter")
    values = before.rest("thickness", OFF)
    return before.with_(
        text=taught.text, intent=FOCUS_VERDICT, adapters=(ring,), values=values, topic=None, number=None,
        wants="", instead=(), follows=True,
    )  # fmt: skip


def beside(proposed: Answer, judged: Answer) -> Answer:
    """What comes of the ring, in its first lines, and then the proposal."""
    lines = tuple(replace(line, depth=line.depth + 1) for line in judged.lines[:_MOST_LINES])
    return replace(proposed, lines=(Line("text", WITH_IT), *lines, *proposed.lines))
