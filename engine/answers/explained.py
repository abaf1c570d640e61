"""Where the numbers of a 'why' come from: registers of the mounts named and what they differ by, glass, a far limit."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import combinations
from typing import Final

from engine.answers.close.close_rows import light_rows
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import distance_mm, focals, mentions, number, stop, tells_limit
from engine.answers.parts.wording import ranged, small_mm, times, trimmed
from engine.answers.picture.filter_effects import index_of_glass
from engine.answers.picture.frames import frames_of
from engine.answers.picture.glass_light import why_of_factor
from engine.answers.seat.among_bodies import among_bodies, among_lenses
from engine.answers.seat.couplings import couplings_apart
from engine.answers.seat.pairs_explained import SEVERAL, of_pairs
from engine.answers.seat.spacing import FAR_AT_A_MARK, errors_of_limit, errors_of_mark, far_limits, usual_focals
from engine.answers.shims.bare_sensor import THICKEST_MM, glass_told, shift_of
from engine.answers.shims.forgiving import is_error
from engine.answers.shims.scale_pair import by_scale_pair
from engine.answers.ways.same_error import set_apart
from engine.base.interval import Interval, is_known
from engine.facts.records import Mount
from engine.physics.coverage import FULL_FRAME_DIAGONAL_MM
from grammar.questions import Question

_NUMBER: Final = re.compile(r"(?<![\w./])(\d+(?:\.(\d+))?)(?: ?mm)?(?![\w/])")
_NOT_OF_SEAT: Final = frozenset(["iris", "colour", "smear", "vignette", "disc", "cover", "damage", "sure"])  # topics
LOST: Final = "infinity"  # the topic of a reason why there is none
SHORTEST_MM: Final = 3.5  # of focal lengths
LONG_MM: Final = 12.0  # of those that registers seldom differ by
_MISTOLD_MM: Final = 1.5  # that a register is told amiss by, where the facts know of it
_LEAST_MM: Final = 0.3  # what is less is a tolerance and no difference of registers
_TELLING_DIGITS: Final = 2  # behind the point, from which a number is no round one
_NEAR_SHARE: Final = 0.06  # of a focal length that is likened to another
_SLACK_MM: Final = 0.006  # beside what rounding to the digits typed may do


def explained(question: Question, knowledge: Knowledge) -> Told:
    """Every number that can be accounted for, one line each; nothing where none can."""
    for told in (by_scale_pair(question, knowledge)[0], set_apart(question, knowledge)):
        if told.lines:
            return told
    if len({(one.front, one.rear) for one in question.adapters if one.front and one.rear}) >= SEVERAL:
        told = _of_pair(question, knowledge)  # rings set against each other
        if told.lines:
            return told
    told = Told()
    for part in (_of_light, why_of_factor, _of_registers, _of_glass, _of_crop, _of_limit):
        told += part(question, knowledge)
    coupled, first = _of_couplings(question, knowledge)
    apart = len(mounts_named(question, knowledge)) > SEVERAL  # each of them has its own reason
    told = told if told.lines and not apart else told + _of_pair(question, knowledge)
    return _of_added(question, knowledge) + (coupled + told if first else told + coupled)


def _of_couplings(question: Question, knowledge: Knowledge) -> tuple[Told, bool]:
    """Why the one of two mounts that are named does not go into the other by itself."""
    mounts = mounts_named(question, knowledge)
    asked = len(mounts) == SEVERAL and question.topic not in _NOT_OF_SEAT
    return couplings_apart(mounts[0], mounts[1], question, knowledge) if asked else (Told(), False)


def mounts_named(question: Question, knowledge: Knowledge) -> list[Mount]:
    """The mounts of lens and body, and of both ends of the rings, each once."""
    ids = [thing.ids[0] for thing in (*question.lenses, *question.bodies) if thing.kind == "mount" and thing.ids]
    ids += [end[0] for thing in question.adapters for end in (thing.front, thing.rear) if end]
    return [knowledge.catalogue.mounts[one] for one in dict.fromkeys(ids) if one in knowledge.catalogue.mounts]


def _numbers(question: Question) -> Iterator[tuple[str, float, float]]:
    """Each number as typed, its value, and how far it may be off by its rounding."""
    # 'only 8 mm between the two' is rather what sets the two apart than a lens
    lenses = [focal for focal in focals(question) if focal >= (SHORTEST_MM if len(question.lenses) < 2 else LONG_MM)]
    for found in _NUMBER.finditer(question.text):
        value = float(found[1])
        if value >= _LEAST_MM and value not in lenses:
            yield found[1], value, 0.5 * 10.0 ** -len(found[2] or "") + _SLACK_MM if found[2] else _SLACK_MM


def _of_registers(question: Question, knowledge: Knowledge) -> Told:
    mounts = mounts_named(question, knowledge)
    known = [(mount, mount.register_mm) for mount in mounts if is_known(mount.register_mm)]
    typed_mm = [value for _, value, _ in _numbers(question)]
    near = [any(abs(register.nominal - one) <= _SLACK_MM for one in typed_mm) for _, register in known]
    if len(known) == SEVERAL and all(near):
        return Told()  # '19.25 is longer than 18': they are known, and what they leave is asked
    told = _not_so_long(known, question) if known else _registers_alone(question, knowledge)
    for typed, value, slack in _numbers(question):
        told += _register_itself(typed, value, known)
        for (one, first), (other, second) in combinations(known, 2):
            if abs(abs(first.nominal - second.nominal) - value) <= slack:
                rows = ((one, first), (other, second))
                shorter, longer = sorted(rows, key=lambda row: row[1].nominal)
                told += _difference(typed, longer, shorter, question.lens.ids if question.lens is not None else ())
    return told


def _register_itself(typed: str, value: float, known: list[tuple[Mount, Interval]]) -> Told:
    """'why 17.526 for C': the number is the register of the mount that is named."""
    is_round = len(typed.partition(".")[2]) < _TELLING_DIGITS
    for mount, register in known:
        if not is_round and abs(register.nominal - value) <= _SLACK_MM:
            return _named_register(typed, mount, register)
    return Told()


def _named_register(typed: str, mount: Mount, register: Interval) -> Told:
    note = f" {mount.register_note}" if mount.register_note else ""
    text = f"{typed} mm is the register of {mount.designation}, flange to image.{note}"
    return Told((Line("head", text),), (Quantity("register_mm", register, mount.id),))


def _not_so_long(known: Sequence[tuple[Mount, Interval]], question: Question) -> Told:
    """'half the world says MFT is 20': of one mount named, a number near its register, of which the facts tell."""
    if len(known) != 1 or not known[0][0].register_note:
        return Told()
    mount, register = known[0]
    for typed, value, slack in _numbers(question):
        off = value - register.nominal
        if slack < abs(off) <= _MISTOLD_MM:
            text = f"{mount.designation} is {trimmed(register.nominal, 3)} mm and not {typed}: {mount.register_note}"
            rows = (
                Quantity("register_mm", register, mount.id),
                Quantity("register_difference_mm", Interval.exact(abs(off)), f"{typed} mm, {mount.id}"),
            )
            return Told((Line("head", text),), rows)
    return Told()


def _registers_alone(question: Question, knowledge: Knowledge) -> Told:
    """'why 17.526 and not 17.5': where no mount is named, a number to the hundredth that is the register of some."""
    told = Told()
    for typed, value, _ in _numbers(question):
        if len(typed.partition(".")[2]) < _TELLING_DIGITS:
            continue
        alike = [
            (mount, mount.register_mm)
            for mount in knowledge.catalogue.mounts.values()
            if is_known(mount.register_mm) and abs(mount.register_mm.nominal - value) <= _SLACK_MM
        ]
        for mount, register in alike[:1]:
            told += _named_register(typed, mount, register)
    return told


def _difference(
    typed: str, longer: tuple[Mount, Interval], shorter: tuple[Mount, Interval], lens: tuple[str, ...]
) -> Told:  # fmt: skip
    """What a difference of two registers is for the one on the other, and what comes of it for the lens asked about."""
    (one, first), (other, second) = longer, shorter
    by = first - second
    text = (
        f"{typed} mm is what the registers differ by: {one.designation} {trimmed(first.nominal, 3)} less "
        f"{other.designation} {trimmed(second.nominal, 3)} is {small_mm(by.nominal)}."
    )
    if other.id not in lens:
        text += f" A lens of {one.designation} needs a ring of that thickness on {other.designation}."
    if one.id not in lens:
        text += (
            f" A lens of {other.designation} in a seat of {one.designation} sits that much too far out, as on an "
            "extension tube, unless its own seat is sunk as deep."
        )
    rows = (
        Quantity("register_difference_mm", by, f"{one.id}, {other.id}"),
        Quantity("register_error_mm", by, f"{other.id} flush in {one.id}"),
        Quantity("ring_thickness_mm", by, f"{one.id} to {other.id}"),
    )
    return Told((Line("head", text),), rows)


def _of_pair(question: Question, knowledge: Knowledge) -> Told:
    """What room the registers of each lens and body that are named leave for a ring."""
    thing = question.lens
    mount = knowledge.catalogue.mounts.get(thing.id or "") if thing is not None and thing.kind == "mount" else None
    body = knowledge.catalogue.mounts.get(question.body.id or "") if question.body is not None else None
    if body is not None and len(question.bodies) == 1 and not any(lens.ids for lens in question.lenses):
        return among_lenses(body, question, knowledge)
    if mount is not None and not any(body.ids for body in question.bodies) and len(question.adapters) < SEVERAL:
        return among_bodies(mount, question, knowledge)
    seen = question.is_of_a_fault or mentions(question, "too-dark", "seen-in-picture", "no-ring-on-lens")
    return Told() if question.topic in _NOT_OF_SEAT or seen else of_pairs(question, knowledge)


def _of_glass(question: Question, knowledge: Knowledge) -> Told:
    """What a plate of the thickness told does to the focus, whether it was put in or taken out."""
    gone = glass_told(question, knowledge)
    if gone.lines:
        return gone
    filters = [one.thickness_mm[0] for one in question.adapters if one.piece == "filter" and one.thickness_mm]
    told = number(question, "glass") or next(iter(filters), None)
    size = number(question, "filter_thread")
    if told is None and mentions(question, "nd-or-filter", "sensor-glass") and mentions(question, "at-the-sensor"):
        told = number(question, "thickness")  # 'a 2 mm thick ND behind the lens'
    thick = told if told is not None else size if size is not None and size <= THICKEST_MM else None
    index = index_of_glass(question, knowledge)[0]
    shift = shift_of(thick, knowledge.catalogue, index) if thick is not None else None
    if thick is None or shift is None:
        return Told()
    text = (
        f"{trimmed(thick, 2)} mm of glass between lens and sensor moves the focus back by {ranged(shift, small_mm)}, "
        "t(1 - 1/n): put in, the lens must sit so much farther out for infinity, and taken out so much nearer. Before "
        "the lens it moves nothing."
    )
    return Told((Line("head", text),), (Quantity("glass_shift_mm", shift),))


def _of_crop(question: Question, knowledge: Knowledge) -> Told:
    """'why is my 35 on mft like a 70': the focal length told besides is that times the crop factor of the body."""
    lenses = [focal for focal in focals(question) if focal >= SHORTEST_MM]
    said = [float(one[1]) for one in _NUMBER.finditer(question.text)]
    for form in frames_of(question, knowledge.catalogue):
        factor = FULL_FRAME_DIAGONAL_MM / form.diagonal_mm
        for focal in lenses:
            like = next(
                (
                    one
                    for one in said
                    if _is_other(one, focal, question) and abs(one / (focal * factor) - 1) <= _NEAR_SHARE
                ),
                None,
            )
            if like is not None and abs(factor - 1) > _NEAR_SHARE:
                text = (
                    f"{trimmed(like, 1)} is {trimmed(focal, 1)} times the crop factor of {form.name}, "
                    f"{trimmed(factor, 2)}: the lens stays {trimmed(focal, 1)} mm, the smaller frame takes only the "
                    "middle of its picture."
                )
                rows = (
                    Quantity("equivalent_focal_mm", Interval.exact(focal * factor), form.name),
                    Quantity("crop_factor", Interval.exact(factor), form.name),
                )
                return Told((Line("head", text),), rows)
    return Told()


def _is_other(one: float, focal: float, question: Question) -> bool:
    """Whether a number may be what a lens is like: none that another lens is told by, unless it is likened to that."""
    films = [thing.format for thing in (*question.lenses, *question.bodies)]  # '10 mm, off a 16mm film camera'
    other = one != focal and f"{one:g}mm" not in films
    return other and (one not in focals(question) or mentions(question, "likened-view"))


def _of_added(question: Question, knowledge: Knowledge) -> Told:
    """'adding 1 mm kills infinity', 'half a mm, why does it matter so much': how far lenses still see, so far out."""
    added = number(question, "length", "thickness")
    lost = question.topic == LOST and not (question.lenses or question.adapters)
    bare = lost or mentions(question, "proud-of-its-seat")
    small = bool(added) and mentions(question, "so-small-an-error", "error-spoken")
    close = mentions(question, "sits-too-close")
    if not (bare or small) or not added or not is_error(added, knowledge) or close:
        return Told()
    text = (
        f"{small_mm(added)} more between lens and body sets the lens that much too far out, and its focus ring has no"
        f" way back behind infinity: it ends at about f x f / {small_mm(added)}, with the square of the focal length."
    )
    lenses = [one for one in focals(question) if one >= SHORTEST_MM] or usual_focals(knowledge.catalogue)
    told = far_limits(lenses, added, knowledge.catalogue, question.feet, 1)
    return Told((Line("head", text),)) + told


def _of_light(question: Question, knowledge: Knowledge) -> Told:
    """'why so dark at 1:1': the light that a magnification costs, where it is asked of light."""
    m = number(question, "magnification")
    if not m or question.distance_mm is not None or not mentions(question, "gets-dark"):
        return Told()
    told = light_rows(m, stop(question), times(m), None)
    text = (
        "Drawn out for close up, the lens stands farther from the sensor and spreads the same light over a larger "
        f"image: at {times(m)} the f-number that counts is N(1 + m), {trimmed(1 + m, 2)} times the one set."
    )
    return Told((Line("head", text),)) + told


def _of_limit(question: Question, knowledge: Knowledge) -> Told:
    limit = distance_mm(question)
    if limit is None or not tells_limit(question):
        return Told()
    marked = mentions(question, FAR_AT_A_MARK) or question.said("mark") is not None
    tell = errors_of_mark if marked else errors_of_limit
    return tell(focals(question), limit, knowledge.catalogue, question.feet, 1)
