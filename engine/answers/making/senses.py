"""What a bare number is of, by the facts of the mounts named: a register said again, or the length of their ring.

Words have had their say before (the reader's measures and rows); here are the numbers that no word claimed.
"""

from __future__ import annotations

from typing import Final

from engine.answers.found.infinite_objective import with_infinite_objective
from engine.answers.found.narrowing import UNCLAIMED
from engine.answers.found.thread_alone import as_thread_alone
from engine.answers.making.body_by_register import with_body_by_register
from engine.answers.making.body_measured import with_body_measured, with_body_under_lens, with_register_of_body
from engine.answers.making.cup_depth import as_depth, with_error_by_sign
from engine.answers.making.frame_lines import with_frame_lines
from engine.answers.making.helicoid_travel import with_travel
from engine.answers.making.length_decides import by_its_length
from engine.answers.making.length_of_pair import with_length_of_pair
from engine.answers.making.lens_not_ring import (
    with_lens_behind_ring,
    with_lens_beside_thread,
    with_lens_drawing,
    with_lens_told,
    with_register_measured,
)
from engine.answers.making.ring_in_talk import with_ring_in_talk
from engine.answers.making.ring_named import with_ring_named, with_second_as_body, with_sides_by_ring
from engine.answers.making.rings_behind_bare import rings_behind_bare
from engine.answers.making.rings_by_length import rings_by_length, rings_to_next
from engine.answers.making.rings_chosen import with_rings_chosen
from engine.answers.making.thread_width import with_width_of_thread
from engine.answers.making.turned_out import with_turned_out
from engine.answers.making.whole_ring import (
    REGISTERS,
    in_inches,
    is_told_alone,
    with_difference_told,
    with_each_off,
    with_shim_laid,
    with_whole_ring,
)
from engine.answers.parts.near_enough import ring_made_mm
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.parts.said import mentions, numbers
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from grammar.kinds import MACRO_DISTANCE, SEATED, SHIM_CALIBRATION
from grammar.questions import Question, Thing

MEASURED: Final = "flange_to_image"  # 'registers 52 and 44' says them again as well
THICKNESS: Final = "thickness"
_GAUGED_MM: Final = 1.5  # what a seat on its ring is off by at most, where its depth is gauged
_SEVERAL: Final = 2
_SPACER, _EXTENSION = "extension-tube", "extension"
_OF_RINGS: Final = SEATED | {SHIM_CALIBRATION, MACRO_DISTANCE}
_THICKEST_DISC: Final = 3.0  # mm, of one where the registers leave no room
_LENGTH, _SHORTEST = "length", 8.0  # mm, of a lens told by its focal length alone
_LEAST: Final = 5.0  # no register is shorter
_REMEDY: Final = "remedy"  # the topic of what would put a chain right
_FLAT: Final = (0.0, 0.0)  # mm
_THINNEST: Final = 0.4  # mm; what two mounts differ by is no ring between them where it is less
_FLUSH: Final = frozenset(["flat", "flush"])  # right before a ring that adds nothing
_RINGS: Final = ("adapter", "plain", "ring", "recessed", "", None)


def by_facts(question: Question, facts: Catalogue) -> Question:
    """The question with its unclaimed numbers in the sense that the mounts named allow, and a length in its ring."""
    question = with_infinite_objective(with_each_off(with_shim_laid(question), facts), facts)
    question = with_width_of_thread(question, facts)
    question = rings_behind_bare(with_lens_behind_ring(with_lens_drawing(question)))
    question = with_lens_beside_thread(question, _widths(question, facts))
    question = with_frame_lines(as_thread_alone(question, facts), facts)
    question = with_turned_out(with_sides_by_ring(with_second_as_body(question), facts), facts)
    question = with_body_measured(_registers_told(with_ring_named(question), facts), facts)
    question = with_body_by_register(with_stop_of_mount(with_register_of_body(question, facts), facts), facts)
    question = by_its_length(with_flush_rings(question, facts), facts)
    lens, body = lens_side(_mount(question.lens), facts), body_side(question.body, facts)
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)):
        return rings_by_length(question, facts, None)
    one, other = lens.mount.register_mm, body.mount.register_mm
    right = one.nominal - other.nominal if is_known(one) and is_known(other) else None
    question = rings_to_next(rings_by_length(question, facts, right), facts)
    if right is None or not (is_known(one) and is_known(other)):
        return _in_ring(_in_rings(question, facts))
    question = with_error_by_sign(question, right)
    question = in_inches(with_body_under_lens(question, one.nominal, other.nominal), right, facts)
    question = with_travel(with_register_measured(question, one.nominal, right), right)
    question = with_difference_told(with_rings_chosen(question, right), right)
    question = with_length_of_pair(with_lens_told(question, right), right)
    made = ring_made_mm(right, facts)
    question = _claimed(_gauged(question, one.nominal, other.nominal), one.nominal, other.nominal, made)
    question = with_ring_in_talk(with_whole_ring(_with_sum_told(question, right, made), right, made), right, made)
    return as_depth(_in_ring(_in_rings(question, facts)), right)


def _widths(question: Question, facts: Catalogue) -> dict[str, float]:
    """How wide the threads of the lens's mount are, mm, by mount."""
    mounts = [facts.mounts[id_] for id_ in (question.lens.ids if question.lens else ()) if id_ in facts.mounts]
    threads = [(one.id, facts.threads.get(one.thread or "")) for one in mounts]
    return {id_: of.major_mm.nominal for id_, of in threads if of is not None and is_known(of.major_mm)}


def _gauged(question: Question, lens_mm: float, body_mm: float) -> Question:
    """A number about as long as the lens's register, gauged from its seat to the sensor: the ring is the rest of it."""
    if not mentions(question, "gauged-depth"):
        return question
    told = [one for one in numbers(question, *UNCLAIMED, THICKNESS, MEASURED) if abs(one - lens_mm) <= _GAUGED_MM]
    if len(told) != 1 or abs(told[0] - (lens_mm - body_mm)) <= _GAUGED_MM:
        return question
    moved = _moved(question, {MEASURED: told})
    rest = moved.rest(THICKNESS, MEASURED)
    return moved.with_(values=(*rest, (THICKNESS, f"{told[0] - body_mm:.6g} mm")))


def _in_rings(question: Question, facts: Catalogue) -> Question:
    """'LTM>M is 1.05 and M>E 9.82': of several rings each has the number that is near what it must be."""
    told = {size.id: size.register_mm for size in facts.mounts.values()}
    pieces = list(question.adapters)
    taken: list[float] = []
    ended = [n for n, one in enumerate(pieces) if one.front and one.rear]
    joining = [n for n in ended if pieces[n].thickness_mm is None and pieces[n].piece in _RINGS]
    if len(ended) < _SEVERAL:
        return question
    bare = {one.focal_length_mm: one for one in question.lenses[1:] if not (one.ids or one.f_number or one.lens_kind)}
    for n in joining:
        front, rear = told.get(pieces[n].front[0]), told.get(pieces[n].rear[0])
        if front is None or rear is None or not (is_known(front) and is_known(rear)):
            continue
        right = front.nominal - rear.nominal
        open_numbers = [one for one in (*numbers(question, *UNCLAIMED, THICKNESS), *bare) if one and one not in taken]
        near = [one for one in open_numbers if right > 0 and abs(one - right) <= ring_made_mm(right, facts)]
        disc = right <= 0 and len(joining) == 1 and len(open_numbers) == 1 and 0 < open_numbers[0] <= _THICKEST_DISC
        near = open_numbers if disc else near  # 'M42 to Z 29.46 plus an Exakta to M42 disc of 0.3'
        if len(near) == 1:
            pieces[n] = replace(pieces[n], thickness_mm=(near[0], near[0]))
            taken += near
    if not taken:
        return question
    gone = [one for focal, one in bare.items() if focal in taken]
    lenses = tuple(one for one in question.lenses if one not in gone)
    moved = _with_focal_left(_moved(question.with_(lenses=lenses), {THICKNESS: taken}))
    return moved.with_(adapters=tuple(pieces), values=moved.rest(THICKNESS))


def _with_sum_told(question: Question, right: float, made_mm: float) -> Question:
    """'LTM on Z: thin one 1.03, fat one 11.75': numbers that come to what the ring must be are its parts."""
    drawn = numbers(question, _EXTENSION) if not question.adapters else ()  # '20 mm + 6.2 mm of rings'
    open_numbers = [*numbers(question, *UNCLAIMED), *drawn]
    sizes = [one.thickness_mm[0] for one in question.adapters if one.is_of_one_length and one.thickness_mm]
    loose = all(one.is_of_one_length and not (one.front or one.ids) for one in question.adapters)
    whole, fine = sum((*open_numbers, *sizes)), any(one != int(one) for one in (*open_numbers, *sizes))
    several = len(open_numbers) + len(sizes) > 1 and bool(open_numbers)
    near = abs(whole - right) <= made_mm and right > 1
    focal = question.lens.focal_length_mm if question.lens is not None else None
    asked = question.intent in _OF_RINGS and focal is not None and question.off_word is None
    if not (several and fine and loose and near and asked) or any(one >= right for one in open_numbers):
        return question
    parts = tuple(Thing(words=f"{one:g} mm spacer", thickness_mm=(one, one), piece=_SPACER) for one in open_numbers)
    held = tuple(replace(one, piece=_SPACER) for one in question.adapters)
    return question.with_(adapters=(*held, *parts), values=question.rest(*UNCLAIMED, _LENGTH, _EXTENSION))


def _with_focal_left(question: Question) -> Question:
    """'FD-EF 2 mm, EF-E 26. 50mm.': the length that is of no ring is that of the lens."""
    told, lens = numbers(question, _LENGTH), question.lens
    if lens is None or lens.focal_length_mm is not None or len(told) != 1 or not _SHORTEST <= told[0] == int(told[0]):
        return question
    lenses = tuple(replace(one, focal_length_mm=told[0]) if one is lens else one for one in question.lenses)
    return question.with_(lenses=lenses, values=question.rest(_LENGTH))


def _registers_told(question: Question, facts: Catalogue) -> Question:
    """'FD 42, E 18': numbers beside two mounts that are the registers of both are no focal lengths."""
    things = (*question.lenses, *question.bodies)
    known = {id_: facts.mounts[id_].register_mm for thing in things for id_ in thing.ids if id_ in facts.mounts}
    sizes = {id_: size.nominal for id_, size in known.items() if is_known(size)}

    def is_register(told: float | None, of: Thing) -> bool:
        return bool(told) and any(_rounds(told or 0.0, sizes[id_]) for id_ in of.ids if id_ in sizes)

    own = {thing: thing.focal_length_mm for thing in things if is_register(thing.focal_length_mm, thing)}
    rest = [thing for thing in things if thing not in own]
    others = [one for one in numbers(question, *UNCLAIMED) if any(is_register(one, thing) for thing in rest)]
    lengths = [one for one in numbers(question, THICKNESS) if any(is_register(one, thing) for thing in rest)]
    if not own or len(own) + len(others) + len(lengths) < 2:
        return question
    if lengths:  # 'pl 52 to ef 44: thickness' asks for it
        question = question.without(THICKNESS)
    lenses, bodies = (
        tuple(replace(one, focal_length_mm=None) if one in own else one for one in row)
        for row in (question.lenses, question.bodies)
    )
    told = ", ".join(f"{size:g} mm" for size in own.values())
    return question.with_(lenses=lenses, bodies=bodies, values=(*question.values, (REGISTERS, told)))


def with_flush_rings(question: Question, facts: Catalogue) -> Question:
    """'a flat D to C ring': of no length of its own, where the right seat would lie inside the body.

    What would work in its place is a ring of those mounts as they are made.
    """
    if question.topic == _REMEDY:
        made = (replace(one, thickness_mm=None) if one.thickness_mm == _FLAT else one for one in question.adapters)
        return question.with_(adapters=tuple(made))

    def flush(thing: Thing) -> Thing:
        led = question.text[: thing.column - 1].split()[-1:] if thing.column else []
        sunk = _right_seat(thing, facts) < -_THINNEST
        return replace(thing, thickness_mm=_FLAT) if led and led[0].casefold() in _FLUSH and sunk else thing

    told = tuple(one if one.thickness_mm is not None else flush(one) for one in question.adapters)
    return question if told == question.adapters else question.with_(adapters=told)


def _right_seat(thing: Thing, facts: Catalogue) -> float:
    """What the registers of the mounts that a ring joins leave for it, mm; 0 where that is not known."""
    if not (thing.front and thing.rear) or thing.piece not in _RINGS:
        return 0.0
    front, rear = (facts.mounts[ids[0]].register_mm for ids in (thing.front, thing.rear))
    return front.nominal - rear.nominal if is_known(front) and is_known(rear) else 0.0


def with_stop_of_mount(question: Question, facts: Catalogue) -> Question:
    """The lens as wide as all of its mount are, where these have no iris and no stop is told."""
    lens = question.lens
    mount = facts.mounts.get(lens.id or "") if lens is not None and lens.kind == "mount" else None
    if lens is None or mount is None or not is_known(mount.f_number) or lens.f_number is not None:
        return question
    told = replace(lens, f_number=mount.f_number.nominal)
    return question.with_(lenses=tuple(told if one is lens else one for one in question.lenses))


def _mount(thing: Thing | None) -> Thing | None:
    return replace(thing, focal_length_mm=None) if thing is not None else None


def _claimed(question: Question, lens_mm: float, body_mm: float, made_mm: float) -> Question:
    """Numbers that are a register as rounded are no news; one near the difference of the two is a ring's length."""
    open_numbers = numbers(question, *UNCLAIMED, MEASURED)
    again = [one for one in open_numbers if one >= _LEAST and (_rounds(one, lens_mm) or _rounds(one, body_mm))]
    right, measured = lens_mm - body_mm, numbers(question, MEASURED)
    least = 0.0 if question.adapters else _THINNEST
    fresh = [one for one in open_numbers if one not in (*again, *measured) and right > least]
    near = [one for one in fresh if abs(one - right) <= made_mm]
    if len(near) == _SEVERAL and sum(_rounds(one, right) for one in near) == 1:
        near = [one for one in near if not _rounds(one, right)]  # 'says 25.46 but i get 25.60'
    said = {THICKNESS: near} if len(near) == 1 and not _has_length(question) else {}
    if said and is_told_alone(question, near[0], right):
        return _moved(question, {REGISTERS: near})
    if len(again) > 1 or (again and again[0] not in measured and (said or question.said(REGISTERS))):
        said[REGISTERS] = again
    question = _moved(question, said) if said else question
    return _without_difference(question, right) if REGISTERS in said else question


def _without_difference(question: Question, right: float) -> Question:
    """'12.29 on 17.526, sits 5.2 out': beside both registers, what they differ by is no ring."""
    told = numbers(question, THICKNESS)
    if right >= 0 or len(told) != 1 or not _rounds(told[0], -right):
        return question
    return question.without(THICKNESS)


def _rounds(told: float, true: float) -> bool:
    """Whether the number told is the true one, or what is left of it after rounding."""
    places = len(f"{told:g}".partition(".")[2])
    return abs(told - true) <= 0.5 * 10.0**-places + 1e-9


def _has_length(question: Question) -> bool:
    return question.said(THICKNESS) is not None or any(one.thickness_mm is not None for one in question.adapters)


def _moved(question: Question, said: dict[str, list[float]]) -> Question:
    """The numbers under the keys of what they are, and no longer among those unclaimed."""
    taken = {one for rows in said.values() for one in rows}
    values = []
    for key, text in question.values:
        if key in (*UNCLAIMED, MEASURED):
            text = ", ".join(one for one in text.split(", ") if float(one.split(" ")[0]) not in taken)
        if text:
            values.append((key, text))
    told = [(key, ", ".join(f"{one:.6g} mm" for one in rows)) for key, rows in said.items()]
    return question.with_(values=(*values, *told))


def _in_ring(question: Question) -> Question:
    """A thickness told beside one ring that was named without it is that ring's; not where it tells of an error."""
    told = numbers(question, THICKNESS)
    rings = [one for one in question.adapters if one.piece in _RINGS and one.kind != "adapter"]
    if len(told) != 1 or len(rings) != 1 or rings[0].thickness_mm is not None or question.off_word:
        return question
    ring = replace(rings[0], thickness_mm=(told[0], told[0]))
    return question.with_(
        adapters=tuple(ring if one is rings[0] else one for one in question.adapters),
        values=question.rest(THICKNESS),
    )
