"""Which mounts are left by what was seen alone: the kind of camera, how the lens is held, who works its iris."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import how_rare
from engine.answers.parts.said import mentions
from engine.answers.seat.seen import kinds_said, looks_so
from engine.facts.kinds import ACCESSORIES
from engine.facts.records import Mount
from grammar.questions import Question

MOST: Final = 8
FEW: Final = 4  # mounts of one format that may be told by it alone
UNFOCUSED: Final = "no-focusing"  # trait of mounts whose lenses are focused by the body
_KINDS: Final = ("slr", "rangefinder", "medium-format", "cine", "video", "industrial")
_HELD: Final = ("coupled-bayonet", "coupled-breech", "coupled-lugs")


def by_features(question: Question, knowledge: Knowledge) -> list[Mount]:
    """The mounts that nothing seen speaks against, those met most first; none where too little was seen to tell.

    Both the kind of camera and how the lens is held must be told, or a format that few mounts alone are of.
    """
    if not (kinds_said(question, _KINDS) and mentions(question, *_HELD)):
        return _by_format(question, knowledge)
    left = [
        mount for mount in knowledge.catalogue.mounts.values()
        if mount.kind not in ACCESSORIES and mount.coupling != "screw" and looks_so(mount, question)
    ]  # fmt: skip
    formats = {lens.format for lens in question.lenses if lens.format}
    left = [mount for mount in left if formats & set(mount.formats)] or left  # 'a 6x7 lens'
    if mentions(question, "no-focus-ring"):
        left = [mount for mount in left if UNFOCUSED in mount.traits] or left
    return sorted(left, key=lambda mount: how_rare(mount, knowledge))[:MOST]


def formats_told(question: Question) -> set[str]:
    """The formats that lens or camera are told to be of, where no mount names them."""
    told = {thing.format for thing in (*question.lenses, *question.bodies) if thing.format and not thing.ids}
    return told | {id_ for thing in question.frames for id_ in thing.ids}


def _by_format(question: Question, knowledge: Knowledge) -> list[Mount]:
    """The few mounts that are of cameras for the one format told alone: 'from a camera for 110 film'."""
    told = formats_told(question)
    alone = [
        mount for mount in knowledge.catalogue.mounts.values()
        if mount.formats and set(mount.formats) <= told and mount.kind not in ACCESSORIES and looks_so(mount, question)
    ]  # fmt: skip
    return sorted(alone, key=lambda mount: how_rare(mount, knowledge)) if len(alone) <= FEW else []
