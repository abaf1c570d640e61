"""'flange is 45.5. C/Y or K?': which of the mounts named has the distance that was measured, where that tells."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import registers_of
from engine.answers.parts.said import number
from engine.answers.parts.wording import listed, small_mm
from engine.base.interval import is_known
from engine.facts.records import Mount
from grammar.questions import Question

_PAPER: Final = "register-by-paper"
_LOOKS: Final = "Count the lugs, measure the throat, look for lever, pin and contacts: that tells them apart."


def either_of(question: Question, knowledge: Knowledge) -> Answer | None:
    """The answer where two or more mounts are named for one lens and its distance is told; None otherwise."""
    told, facts = number(question, "flange_to_image"), knowledge.catalogue
    ids = dict.fromkeys(thing.ids[0] for thing in question.lenses if thing.kind == "mount" and thing.ids)
    named = [mount for name in ids if is_known((mount := facts.mounts[name]).register_mm)]
    if told is None or question.bodies or len(named) < 2 or len(named) < len(ids):
        return None
    good = facts.assumptions[_PAPER].value.greatest
    near = [mount for mount in named if _off(mount, told) <= good]
    others = [_with_register(mount) for mount in named if mount not in near]
    if len(near) == 1:
        text = f"{small_mm(told)} from flange to image: {_with_register(near[0])}, not {listed(others, 'or')}."
    elif near:
        rest = f" It is not {listed(others, 'or')}." if others else ""
        both = listed([_with_register(mount) for mount in near])
        text = f"{small_mm(told)} from flange to image does not tell: {both} are too near to each other.{rest} {_LOOKS}"
    else:
        text = f"{small_mm(told)} from flange to image: neither; {listed(others)}. Measure again, set to infinity."
    lenses = tuple(lens for lens in question.lenses if len(near) == 1 and lens.ids[:1] == (near[0].id,))
    return Answer(
        question.text, "identify-mount", ANSWERED, (Line("head", text),), question=question,
        quantities=registers_of(named), learnt=question.with_(lenses=lenses[:1]) if lenses else None,
    )  # fmt: skip


def _off(mount: Mount, told: float) -> float:
    return abs(mount.register_mm.nominal - told) if is_known(mount.register_mm) else 0.0


def _with_register(mount: Mount) -> str:
    return f"{mount.designation} ({small_mm(mount.register_mm.nominal)})" if is_known(mount.register_mm) else ""
