"""Which condition is about which body or format, where a question names several; and old conditions with new ones."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.own.demanding import Clauses
from grammar.own.sifting import Mark
from grammar.questions import Demand, Question
from grammar.things.casting import Part
from grammar.words.atoms import Runs

_SMALL: Final = frozenset(["and", "but", "the", "ones", "one", "which", "who", "so", "then", "ok", "what", "about"])
Groups = tuple[tuple[Demand, ...], ...]  # one of them must hold whole


def anywhere(groups: Groups) -> Groups:
    return tuple(tuple(replace(demand, bodies=(), frames=()) for demand in group) for group in groups)


def joined(old: Groups, new: Groups) -> Groups:
    """The conditions of before and the new ones; a new one takes the place of one on the same quantity."""
    if not new or not old:
        return new or old
    return tuple(
        (*(demand for demand in one if all(demand.quantity != other.quantity for other in more)), *more)
        for one in old
        for more in new
    )


def placed(groups: Groups, found: Clauses, bodies: list[Part], heard: Heard) -> Groups:
    """Each condition with the bodies and formats that stand behind it; alike for all of them, none is told apart."""
    frames = [part for part in heard.cast.frames if part.formats]
    whole = [part for part in bodies if not part.is_bare]
    if len(whole) + len(frames) < 2:
        return groups
    if not frames and whole[-1].noun.join == "or" and len({part.noun.listed for part in whole}) == 1:
        # 'cover the dory or the skiff'
        return tuple(
            tuple(replace(demand, bodies=(n,)) for demand in group) for group in groups for n in range(len(whole))
        )
    starts = sorted(found.columns.values())

    def behind(demand: Demand, parts: list[Part]) -> tuple[int, ...]:
        start = found.columns.get(id(demand))
        if start is None:
            return ()
        end = next((other for other in starts if other > start), 10**6)
        return tuple(n for n, part in enumerate(parts) if start < part.noun.column < end)

    def with_places(group: tuple[Demand, ...]) -> tuple[Demand, ...]:
        rows: list[tuple[Demand, tuple[int, ...], tuple[int, ...]]] = []
        for demand in reversed(group):
            of_body, of_frame = behind(demand, whole), behind(demand, frames)
            if not (of_body or of_frame) and rows:
                of_body, of_frame = rows[-1][1:]  # 'cover and reach infinity on the skiff'
            rows.append((demand, of_body, of_frame))
        return tuple(replace(demand, bodies=one, frames=other) for demand, one, other in reversed(rows))

    return tuple(with_places(group) for group in groups)


def the_others(before: Question | None, marks: list[Mark], runs: Runs, text: str) -> Question | None:
    """'and which ones don't?': the one condition of before, denied; None where the text says anything else."""
    told = before.sought if before is not None else None
    if before is None or told is None or len(told.any_of) != 1 or len(told.any_of[0]) != 1:
        return None
    said = {n for mark in marks if mark.does in ("those", "not", "that") for n in range(mark.at, mark.after)}
    rest = [atom.text for n, atom in enumerate(runs.atoms) if atom.is_word and n not in said]
    if not any(mark.does == "not" for mark in marks) or any(word not in _SMALL for word in rest):
        return None
    demand = told.any_of[0][0]
    says = demand.says.removeprefix("do not ") if demand.negated else f"do not {demand.says}"
    other = replace(demand, negated=not demand.negated, says=says)
    return before.with_(
        text=text, follows=True, sought=replace(told, any_of=((other,),), why=False),
        lenses=() if told.why else before.lenses,
    )  # fmt: skip
