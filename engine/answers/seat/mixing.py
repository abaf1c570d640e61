"""Mounts named side by side: what comes of putting one straight into the other, and what tells them apart."""

from __future__ import annotations

from engine.answers.parts.answer import Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import nearest
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side, setup_of
from engine.answers.seat.standin import as_listed
from engine.answers.seat.telling import life_line, seat_line
from engine.chains.walk import Chain
from grammar.questions import Question, Thing

MOST_MIXED = 3
SURE = 9.0  # what shares less with the question is beside the point here
# advice that the lines about the mounts have told already
_TOLD = frozenset({"cross-thread", "measure-register", "one-name-two-seats", "small-disc", "measure-pitch"})


def named_advice(question: Question, mounts: list[str], knowledge: Knowledge) -> list[Line]:
    """Advice on the trap itself (a pin, a prism), where the question is about one; else how the mount is told."""
    rows = [row for row in nearest(question.text, knowledge.catalogue, 1, SURE) if row.id not in _TOLD]
    if not rows and len(mounts) == 1:
        known = knowledge.catalogue.advice.values()
        rows = [row for row in known if row.mounts[:1] == (mounts[0],) and not row.plainly][:1]
    return [Line(row.severity, f"{row.topic}: {row.says}") for row in rows]


def traps_of_the_same(mounts: list[str], knowledge: Knowledge) -> list[Line]:
    """What may do harm though the mount is the same: dangers that are told of these mounts first."""
    rows = [row for row in knowledge.catalogue.advice.values() if row.plainly and {*row.mounts[:1]} & {*mounts}]
    return [Line(row.severity, f"{row.topic}: {row.says}") for row in rows]


def set_apart(mounts: list[str], knowledge: Knowledge) -> Told:
    """What tells them apart: the measurement, and the light that a prism is allowed for."""
    facts = knowledge.catalogue
    known = [facts.mounts[name] for name in mounts]
    text = (
        "Fit tells nothing of focus. To tell them apart measure: thread or throat across, ten pitches, and from flange "
        "to the image of a far window."
    )
    lines = [Line("text", text)]
    rows: list[Quantity] = []
    if any("prism-behind" in mount.traits for mount in known):
        light = facts.assumptions["prism-light"].value
        rows.append(Quantity("light_difference_stops", light, "prism"))
        text = (
            f"Lenses corrected for a prism behind them pass about {light.nominal:.2f} stop more than marked without "
            "it, and are soft wide open; both reach infinity where the registers are alike."
        )
        lines.append(Line("text", text))
    return Told(tuple(lines), tuple(rows))


def mixed(mounts: list[str], knowledge: Knowledge) -> tuple[ListedChain, ...]:
    """Each of two or three put straight into another, where they go together."""
    rows: list[ListedChain] = []
    for lens in mounts[:MOST_MIXED]:
        for joint in knowledge.joints.onward(lens):
            if joint.rear not in mounts[:MOST_MIXED]:
                continue
            one = lens_side(Thing("mount", (lens,), lens), knowledge.catalogue)
            other = body_side(Thing("mount", (joint.rear,), joint.rear), knowledge.catalogue)
            if isinstance(one, LensSide) and isinstance(other, BodySide):
                judged = knowledge.judge_chain(Chain((joint,), {}), setup_of(one, other, knowledge.catalogue))
                names = (one.mount.designation, other.mount.designation)
                rows.append(as_listed(judged, f"{names[0]} lens straight into {names[1]}", len(rows) + 1))
    return tuple(rows)


def mixed_lines(chains: tuple[ListedChain, ...], feet: bool) -> list[Line]:
    return [
        Line("fact", f"{row.title}: {life_line(row.listed.judged, feet)}; {seat_line(row.listed.judged)}")
        for row in chains
    ]  # fmt: skip
