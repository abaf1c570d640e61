"""How sure it is which mount a lens has: what was measured, how many mounts that leaves, and what decides."""

from __future__ import annotations

import re

from engine.answers.identify import identify
from engine.answers.parts.answer import ANSWERED, Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import listed
from grammar.questions import Question

_MEASURES = {
    "thread": "a thread of {}", "pitch": "a pitch of {}", "flange_to_image": "{} from flange to image",
    "barrel": "a barrel of {}", "throat": "a throat of {}",
}  # fmt: skip
_NOT = "not "
_FROM = "register_mm"  # the quantity of which each mount that is left has one


def how_sure_which(question: Question, before: Question, knowledge: Knowledge) -> Answer:
    """As sure as the measures are: one mount left, or several, with the measurement that would tell them apart."""
    found = identify(before, knowledge)
    left = dict.fromkeys(row.case for row in found.quantities or () if row.name == _FROM and row.case)
    mounts = (knowledge.catalogue.mounts[id_].designation for id_ in left if id_ in knowledge.catalogue.mounts)
    off = [line.text for line in found.lines if line.text.startswith(_NOT)]  # what one of the measures speaks against
    names = [name for name in mounts if not any(text.startswith(f"{_NOT}{name}:") for text in off)]
    told = [text.format(_rounded(value)) for key, text in _MEASURES.items() if (value := before.said(key)) is not None]
    by = f"by {listed(told)}" if told else "by what was seen alone"
    if len(names) == 1:
        head = f"As sure as the measures: {by} only {names[0]} fits, of the mounts known here."
    elif names:
        head = f"Not sure yet: {by} it may be any of {len(names)}: {listed(names, 'or')}."
    else:
        head = f"Not sure: {by} no single mount is told."
    lines = [Line("head", head)]
    lines.append(Line("text", "A ruler on paper is good to 0.7 mm, calipers on crests read 0.1 to 0.2 mm small."))
    lines += [line for line in found.lines if line.kind == "ask"]
    return Answer(question.text, question.intent, ANSWERED, tuple(lines), question=question)


def _rounded(value: str) -> str:
    """'0.769231 mm' as it is told: no more than three figures behind the point."""
    return re.sub(r"\d+\.\d+", lambda found: f"{float(found[0]):.4g}", value)
