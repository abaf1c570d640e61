"""A question about lenses on bodies that are all known: one pair, each of several, or each meaning of a shared name."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.found.same_name import NO_FOCUSING, UNFOCUSED
from engine.answers.parts.answer import Answer
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, Missing, body_side, lens_side
from engine.answers.parts.said import number, numbers
from engine.answers.seat.described import TUBE
from engine.answers.seat.forced import TUBES
from engine.answers.shims.bare_sensor import glass_gone_mm, without_glass
from engine.answers.ways.autofocus_asked import with_autofocus_first
from engine.answers.ways.iris_asked import with_iris_first
from engine.answers.ways.limit_told import focal_first, with_length_doubted
from engine.answers.ways.pair import one_pair
from engine.base.compact import compact, replace
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from grammar.questions import BODY_REGISTER, CLEAR_DEPTH, Question, Thing


@compact
class Sides:
    """The question with its parts in their places, and what each lens and body named stands for."""

    question: Question
    lenses: Sequence[LensSide | Missing]
    bodies: Sequence[BodySide | Missing]


def sides_of(question: Question, facts: Catalogue) -> Sides:
    """What the question's lenses and bodies stand for; one that is not named, or not well enough, is missing."""
    question = _as_bare(_with_extension(_with_roles(question, facts)))
    return Sides(
        question,
        [lens_side(thing, facts) for thing in question.lenses or (None,)],
        [body_side(thing, facts) for thing in question.bodies or (None,)],
    )


def of_known(sides: Sides, knowledge: Knowledge, intent: str | None = None) -> Answer | None:
    """The chains of every lens on every body that is known; None where no lens or no body is."""
    question, facts = sides.question, knowledge.catalogue
    lenses = [as_measured(side, question) for side in sides.lenses if isinstance(side, LensSide)]
    bodies = [
        without_glass(body_as_measured(side, question), question, facts)
        for side in sides.bodies
        if isinstance(side, BodySide)
    ]
    if not lenses or not bodies:
        return None
    if len(lenses) < len(sides.lenses):
        from engine.answers.ways.left_over import with_those_without_mount  # only where several are told of

        rest = replace(sides, lenses=[side for side in sides.lenses if isinstance(side, LensSide)])
        known = [
            thing for thing, side in zip(question.lenses, sides.lenses, strict=False) if isinstance(side, LensSide)
        ]
        rest = replace(rest, question=question.with_(lenses=tuple(known)))
        answer = of_known(rest, knowledge, intent)
        if answer is not None:
            return with_those_without_mount(answer, question, sides.lenses, bodies[0], knowledge)
    meanings = _meanings(question.lens, lenses, knowledge)
    if len(lenses) > 1 or len(bodies) > 1:
        from engine.answers.ways.several import each_pair  # only where there are several

        return each_pair(question, lenses, bodies, knowledge)
    if len(meanings) > 1:
        from engine.answers.ways.meanings import likeliest  # only where a name is shared

        return likeliest(question, meanings, bodies[0], knowledge, one_pair)
    told = one_pair(question, lenses[0], bodies[0], knowledge, intent)
    told = focal_first(told, question, lenses[0]) or told
    told = with_length_doubted(told, question, lenses[0], bodies[0], facts)
    return with_iris_first(with_autofocus_first(told, question), question, knowledge)


def as_measured(side: LensSide, question: Question) -> LensSide:
    """The lens with what was told of it: flange to image, whatever its register is, barrel, rear, nearest mark."""
    lens, measured, barrel = side.lens, number(question, "flange_to_image"), number(question, "barrel")
    if measured is not None and measured > 0:
        lens = replace(lens, register_mm=Interval.exact(measured))
    if barrel is not None and barrel > 0:
        lens = replace(lens, collar_mm=Interval.exact(barrel))
    reach = number(question, "rear_reach")
    if reach is not None and reach > 0:
        lens = replace(lens, rear_reach_mm=Interval.exact(reach))
    weight = number(question, "weight")
    if weight is not None and weight > 0 and not is_known(lens.weight_g):
        lens = replace(lens, weight_g=Interval.exact(weight))
    near = number(question, "close_focus")
    if near is not None and not is_known(lens.close_focus_mm):
        lens = replace(lens, close_focus_mm=Interval.exact(near))
    return side if lens is side.lens else replace(side, lens=lens)


def body_as_measured(side: BodySide, question: Question) -> BodySide:
    """The body with the register that was measured on it, and what it was told to leave free behind its flange."""
    measured, free, body = number(question, BODY_REGISTER), number(question, CLEAR_DEPTH), side.body
    if measured is not None:
        body = replace(body, register_mm=Interval.exact(measured))
    if free is not None:
        body = replace(body, clear_depth_mm=Interval.exact(free))
    return side if body is side.body else replace(side, body=body)


def _with_roles(question: Question, facts: Catalogue) -> Question:
    """Two mounts and no body: the lens comes first, what it shall go on second.

    A lens without a mount and two bodies: the mount of the longer register is the lens's.
    """
    lens, bodies = question.lens, question.bodies
    if lens is not None and not lens.ids and len(question.lenses) == 1 and len(bodies) == 2:
        known = [facts.mounts[id_] for thing in bodies if thing.kind == "mount" for id_ in thing.ids[:1]]
        registers = [mount.register_mm for mount in known]
        if len(known) == 2 and is_known(registers[0]) and is_known(registers[1]):
            longer = 0 if registers[0].nominal > registers[1].nominal else 1
            meant = replace(lens, kind="mount", ids=(known[longer].id,))
            return replace(question, lenses=(meant,), bodies=(bodies[1 - longer],))
    told = [thing for thing in question.lenses if thing.kind == "mount" and thing.ids]
    if question.bodies or len(question.lenses) != 2 or len(told) != 2 or told[0].ids == told[1].ids:
        return question
    if _is_plainly_lens(told[1]):
        return question
    return replace(question, lenses=question.lenses[:1], bodies=question.lenses[1:])


def _is_plainly_lens(thing: Thing) -> bool:
    """Whether what was told of a thing is of lenses alone: 'an M42 58 and a 75 mm enlarger lens'."""
    numbers = thing.focal_length_mm or thing.f_number or thing.lens_kind
    return bool(numbers) or thing.words.casefold().endswith((" lens", " glass", " one"))


def _with_extension(question: Question) -> Question:
    """'20 mm of extension' between a lens and a body is a tube of that length."""
    said = numbers(question, "extension")
    tubes = any(thing.piece == TUBE and thing.thickness_mm is not None for thing in question.adapters)
    if len(said) != 1 or tubes or not (question.lenses and question.bodies):
        return question
    tube = Thing("", (), f"{said[0]:g} mm tube", thickness_mm=(said[0], said[0]), piece=TUBE)
    bare = tuple(thing for thing in question.adapters if thing.piece != TUBE)
    return replace(question, adapters=(*bare, tube))


def _as_bare(question: Question) -> Question:
    """Where glass is gone from the sensor and no piece is named, it is asked of the plain ring, not of a way around."""
    if glass_gone_mm(question) is None or any(thing.piece in TUBES for thing in question.adapters):
        return question
    limits = question.limits if question.limits.pieces else replace(question.limits, pieces=1)
    kept = tuple(thing for thing in question.adapters if thing.piece != "filter")
    return replace(question, limits=limits, adapters=kept)


def _meanings(thing: Thing | None, known: list[LensSide], knowledge: Knowledge) -> list[LensSide]:
    """Every lens that an ambiguous designation may stand for, where registers differ and none is the likelier."""
    if thing is None or thing.kind != "mount" or not thing.ambiguous or len(known) != 1:
        return []
    if UNFOCUSED in thing.traits and NO_FOCUSING in knowledge.catalogue.mounts[thing.ids[0]].traits:
        return []  # that it has no focusing tells which it is
    shared = (row for row in knowledge.catalogue.shared.values() if row.mounts[0] in thing.ids and row.likely)
    if any(row.likely == thing.id and set(thing.ids) <= set(row.mounts) for row in shared):
        return []
    out: dict[float, LensSide] = {}
    for id_ in thing.ids:
        side = lens_side(replace(thing, ids=(id_,)), knowledge.catalogue)
        if isinstance(side, LensSide) and is_known(side.mount.register_mm):
            out.setdefault(side.mount.register_mm.nominal, side)
    return list(out.values())
