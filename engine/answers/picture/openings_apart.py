"""Which of the mounts or rings named leaves the wider opening, where it is asked what either shades of a frame."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import listed, small_mm
from engine.answers.picture.frames import frames_named
from engine.base.interval import Interval, is_known
from engine.facts.records import Mount
from grammar.questions import Question

PAIR = 2
APART_MM = 1.0  # that sets two openings apart


def openings_apart(question: Question, knowledge: Knowledge) -> Told:
    """The opening of each, as wide as the facts have it, against the diagonal of the frame."""
    frames = frames_named(question, knowledge.catalogue)
    named = _mounts(question, knowledge)
    screwed = (
        bool(frames) and len(question.bodies) < PAIR and all(mount.thread for mount in named)
    )  # of screws on a frame nothing else sets apart
    shades = mentions(question, "shades-corners")
    if not screwed and not shades and not mentions(question, "throats-asked"):
        return Told()
    mounts = [(mount, mount.throat_mm) for mount in named]
    wide = sorted((size.nominal, mount.designation) for mount, size in mounts if is_known(size))
    if len(wide) > PAIR and len(wide) == len(mounts):
        listed_ = listed([f"{name} {small_mm(size)}" for size, name in reversed(wide)])
        rows = [Quantity("throat_mm", Interval.exact(size), name) for size, name in reversed(wide)]
        return Told((Line("head", f"By the width of the throat, widest first: {listed_}."),), tuple(rows))
    if len(mounts) != PAIR or len(wide) != PAIR:
        return Told()
    if wide[1][0] - wide[0][0] < APART_MM:
        alike = f"{wide[0][1]} and {wide[1][1]} are as wide, {small_mm(wide[0][0])}: neither shades more."
        return Told((Line("head", alike),))
    (less, narrow), (more, broad) = wide
    text = (
        f"{broad} has the wider opening, {small_mm(more)} against {small_mm(less)} of {narrow}; a ring leaves some"
        f" millimetres less clear{'. The wider shades the corners less' if shades or frames else ''}"
    )
    text += f": {frames[0].name} is {small_mm(frames[0].diagonal_mm)} across." if frames else "."
    rows = [Quantity("throat_mm", Interval.exact(size), name) for size, name in wide]
    return Told((Line("head", text),), tuple(rows))


def _mounts(question: Question, knowledge: Knowledge) -> list[Mount]:
    """The mounts of lenses, bodies and rings named, each once; fewer or more than two set nothing apart."""
    ids = [thing.id for thing in (*question.lenses, *question.bodies) if thing.kind == "mount"]
    ids += [end for thing in question.adapters for ends in (thing.front, thing.rear) for end in ends[:1]]
    known = knowledge.catalogue.mounts
    return [known[id_] for id_ in dict.fromkeys(ids) if id_ is not None and id_ in known]
