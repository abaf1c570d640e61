"""'flange is 45.5. C/Y or K?': which of the mounts named has the distance that was measured, where that tells."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import registers_of
from engine.answers.parts.said import number
from engine.answers.parts.wording import listed, small_mm, trimmed
from engine.base.interval import is_known
from engine.facts.records import Mount
from engine.physics import calibration
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
    lines, threads = _by_thread(named, knowledge)
    lenses = tuple(lens for lens in question.lenses if len(near) == 1 and lens.ids[:1] == (near[0].id,))
    return Answer(
        question.text, "identify-mount", ANSWERED, (Line("head", text), *lines), question=question,
        quantities=(*registers_of(named), *threads), learnt=question.with_(lenses=lenses[:1]) if lenses else None,
    )  # fmt: skip


def _by_thread(named: list[Mount], knowledge: Knowledge) -> tuple[list[Line], list[Quantity]]:
    """What the thread tells besides, where the mounts named are cut with pitches apart."""
    threads = [knowledge.catalogue.threads.get(mount.thread or "") for mount in named]
    cut = {one.id: one for one in threads if one is not None and is_known(one.pitch_mm)}
    pitches = {one.pitch_mm.nominal for one in cut.values() if is_known(one.pitch_mm)}
    if len(pitches) < len(named):
        return [], []
    rows: list[Quantity] = []
    told = []
    for mount, thread in zip(named, cut.values(), strict=True):
        ten = calibration.length_of_spaces_mm(thread.pitch_mm)
        if is_known(ten) and is_known(thread.pitch_mm):
            rows.append(Quantity("thread_pitch_mm", thread.pitch_mm, mount.id))
            rows.append(Quantity("ten_pitches_mm", ten, mount.id))
            told.append(f"{mount.designation} is {thread.designation}, ten pitches {trimmed(ten.nominal, 2)} mm")
    return [Line("fact", f"The thread must say the same: {listed(told)}.", 1)], rows


def _off(mount: Mount, told: float) -> float:
    return abs(mount.register_mm.nominal - told) if is_known(mount.register_mm) else 0.0


def _with_register(mount: Mount) -> str:
    return f"{mount.designation} ({small_mm(mount.register_mm.nominal)})" if is_known(mount.register_mm) else ""
